//! Plain drawings of droppings, our own: stool, white part and clear part, each with a line and a shape of its own.

use leptos::prelude::*;

use crate::domain::journal::entries::Droppings;

/// A part of a drawing: its class in the style sheet and its line.
type Part = (&'static str, &'static str);

const PUDDLE: &str = "M6 36C4 22 20 10 34 12s26 12 22 24-12 10-26 10S8 46 6 36z";
const WIDE_PUDDLE: &str = "M2 34C0 14 20 2 36 4s28 16 25 30-18 13-31 13S4 46 2 34z";
const COIL: &str = "M13 38c2 7 37 7 38 0s-36-8-38 0zM17 31c2 6 29 6 30 0s-28-7-30 0zM21 24c2 5 21 5 22 0s-20-6-22 0z";
const CAP: &str = "M25 19c1-8 13-9 15-2s-4 7-8 7-8-1-7-5z";
const SPREAD: &str = "M8 34c0-9 14-15 26-13s22 6 19 15-14 9-24 7-21 0-21-9z";
const SMALL_COIL: &str = "M25 36c1 4 14 4 15 0s-14-5-15 0zM28 31c1 3 8 3 9 0s-8-4-9 0z";
const DOTS: &str = "M20 39h.1M32 41h.1M43 39h.1M26 32h.1M38 32h.1M32 25h.1";
const DROPS: &str = "M14 28h.1M50 30h.1M54 36h.1M20 45h.1M45 22h.1";
const BERRY: &str = "M52 8a5 5 0 1 0 .1 0M52 8c0-3 2-5 5-5";

/// The parts of a look, lowest first.
const fn parts(look: Droppings) -> &'static [Part] {
    match look {
        Droppings::Normal => &[("urine", PUDDLE), ("stool", COIL), ("urates", CAP)],
        Droppings::SmallOrFew => &[("stool", SMALL_COIL)],
        Droppings::Watery => &[("urine", WIDE_PUDDLE), ("stool", COIL), ("urates", CAP)],
        Droppings::WetAfterFruit => &[
            ("urine", WIDE_PUDDLE),
            ("stool", COIL),
            ("urates", CAP),
            ("food", BERRY),
        ],
        Droppings::LiquidStool => &[("spread", SPREAD), ("urates", CAP)],
        Droppings::EmeraldGreen => &[("urine", PUDDLE), ("green", SPREAD), ("urates", CAP)],
        Droppings::TarBlack | Droppings::GreenOrBlack => &[("tar", SPREAD)],
        Droppings::LimeUrates => &[("urine", PUDDLE), ("stool", COIL), ("lime", CAP)],
        Droppings::Undigested => &[("urine", PUDDLE), ("stool", COIL), ("dots", DOTS)],
        Droppings::Bloody | Droppings::RedAfterFood => &[
            ("urine", PUDDLE),
            ("stool", COIL),
            ("urates", CAP),
            ("blood", DROPS),
        ],
    }
}

fn drawing(parts: &'static [Part]) -> impl IntoView {
    let parts = parts.iter().map(|(class, line)| {
        view! { <path class=format!("dropping__{class}") d=*line></path> }
    });
    view! {
        <svg class="dropping" viewBox="0 0 64 50" aria-hidden="true">{parts.collect_view()}</svg>
    }
}

/// A look, as it lies on the paper.
#[component]
pub fn DroppingsDrawing(
    /// What is seen.
    look: Droppings,
) -> impl IntoView {
    drawing(parts(look))
}

/// The three parts, each with its name.
#[component]
pub fn DroppingsParts(
    /// Stool, white part, clear part.
    names: [&'static str; 3],
) -> impl IntoView {
    const ALONE: [&[Part]; 3] = [&[("stool", COIL)], &[("urates", CAP)], &[("urine", PUDDLE)]];
    let parts = ALONE.into_iter().zip(names).map(|(parts, name)| {
        view! { <li>{drawing(parts)} <span>{name}</span></li> }
    });
    view! { <ul class="dropping-parts">{parts.collect_view()}</ul> }
}

//! Plain drawings of droppings, our own: stool, white part and clear part, each with a line and a shape of its own.

use leptos::prelude::*;

use crate::domain::journal::entries::Droppings;

/// A part of a drawing: its class in the style sheet and its line.
type Part = (&'static str, &'static str);

const PUDDLE: &str = "M5 33C3 20 18 8 34 9s28 13 25 26-14 12-28 12S7 45 5 33z";
const WIDE_PUDDLE: &str = "M2 32C0 14 16 2 34 3s30 15 28 30-16 15-31 15S4 46 2 32z";
const COIL: &str = "M14 36C17 43 30 44 40 41C52 37 53 26 43 22C33 18 20 21 21 28C22 34 32 35 36 31";
const CAP: &str = "M20 17C22 9 37 8 39 14C40 19 34 21 30 20C26 24 18 23 20 17Z";
const SPREAD: &str = "M8 34c0-9 14-15 26-13s22 6 19 15-14 9-24 7-21 0-21-9z";
const LOW_CAP: &str = "M24 22C26 14 41 13 43 19C44 24 38 26 34 25C30 29 22 28 24 22Z";
const SMALL_COIL: &str = "M25 33C29 28 36 35 40 30";
const DOTS: &str = "M17 39h.1M29 42h.1M41 39.500h.1M47.500 29h.1M36 21h.1M24 26h.1";
const DROPS: &str = "M12 24h.1M52 33h.1M48 42h.1M20 45h.1M46 16h.1";
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
        Droppings::LiquidStool => &[("spread", SPREAD), ("urates", LOW_CAP)],
        Droppings::EmeraldGreen => &[("urine", PUDDLE), ("green", SPREAD), ("urates", LOW_CAP)],
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

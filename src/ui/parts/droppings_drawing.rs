//! Plain drawings of droppings, our own: stool, white part and clear part, each with a line and a shape of its own.

use leptos::prelude::*;

use crate::domain::journal::entries::Droppings;

/// A part of a drawing: its class in the style sheet and its line.
type Part = (&'static str, &'static str);

const PUDDLE: &str = "M10 32C8 22 22 12 36 14s22 14 16 22-38 10-42-4z";
const WIDE_PUDDLE: &str = "M4 30C2 14 20 4 38 6s26 16 20 28-50 12-54-4z";
const COIL: &str = "M20 36c8 4 22 3 25-2s-3-9-11-9-14 4-9 7 16 1 14-4";
const CAP: &str = "M25 21c2-7 13-8 17-2s-2 8-8 8-11-1-9-6z";
const SPREAD: &str = "M10 30c0-9 12-15 24-13s22 6 18 15-13 8-22 6-20 2-20-8z";
const SMALL_COIL: &str = "M26 33c6 3 13 1 13-2s-8-3-8 0";
const DOTS: &str = "M23 36h.1M32 38h.1M41 35h.1M29 26h.1M38 29h.1";
const DROPS: &str = "M16 24h.1M47 26h.1M51 33h.1M22 40h.1M42 22h.1";
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
        <svg class="dropping" viewBox="0 0 64 48" aria-hidden="true">{parts.collect_view()}</svg>
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

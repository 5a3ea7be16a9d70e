//! The shape of a level: ring, half disc, diamond, triangle, octagon.

use leptos::prelude::*;

use crate::domain::warnings::level::Level;

/// The outline of a level's shape in a box of 24.
pub const fn shape(level: Level) -> &'static str {
    match level {
        Level::Settled => {
            "M12 3a9 9 0 1 0 0 18a9 9 0 1 0 0-18zM12 7a5 5 0 1 1 0 10a5 5 0 1 1 0-10z"
        }
        Level::Watch => "M2 15a10 10 0 0 1 20 0z",
        Level::CallBreeder => "M12 1L23 12L12 23L1 12z",
        Level::VetToday => "M12 2L23 21H1z",
        Level::Emergency => "M8 1.5h8L22.5 8v8L16 22.5H8L1.5 16V8z",
    }
}

/// The name of a level in attributes that the style sheet looks at.
pub const fn level_name(level: Level) -> &'static str {
    match level {
        Level::Settled => "settled",
        Level::Watch => "watch",
        Level::CallBreeder => "call",
        Level::VetToday => "vet",
        Level::Emergency => "emergency",
    }
}

/// A level's shape; its word stands beside it.
#[component]
pub fn LevelMark(
    /// The level.
    level: Level,
) -> impl IntoView {
    view! {
        <svg class="level-mark" viewBox="0 0 24 24" aria-hidden="true" data-level=level_name(level)>
            <path d=shape(level) fill-rule="evenodd"></path>
        </svg>
    }
}

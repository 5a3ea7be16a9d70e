//! The shape of a level: ring, half disc, diamond, triangle, octagon.

use leptos::prelude::*;

use crate::domain::warnings::level::Level;
use crate::share::level_shape::level_shape;

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
            <path d=level_shape(level) fill-rule="evenodd"></path>
        </svg>
    }
}

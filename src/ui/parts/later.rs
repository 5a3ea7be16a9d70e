//! Parts of a screen that come with a later piece of the program than the screen itself.

use leptos::prelude::*;

/// Draws a part of a screen.
pub type Part = fn() -> AnyView;

/// The report of the chick on screen with one tap, once the piece that can write it is here; copied freely.
#[derive(Debug, Clone, Copy)]
pub struct ReportPart(pub RwSignal<Option<Part>>);

impl ReportPart {
    /// It is not here yet.
    pub fn new() -> Self {
        Self(RwSignal::new(None))
    }

    /// The part, from any component below the app; follows.
    pub fn here() -> Option<Part> {
        use_context::<Self>()?.0.get()
    }
}

impl Default for ReportPart {
    fn default() -> Self {
        Self::new()
    }
}

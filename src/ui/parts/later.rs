//! Parts of a screen that come with a later piece of the program than the screen itself.

use leptos::prelude::*;

/// Draws a part of a screen.
pub type Part = fn() -> AnyView;

/// What the first piece of the program shows of the second.
#[derive(Debug, Clone, Copy)]
pub struct DueParts {
    /// [`ChickName`](crate::ui::parts::shell::ChickName).
    pub chick_name: Part,
    /// [`Banners`](crate::ui::parts::shell::Banners).
    pub banners: Part,
    /// [`StatusLine`](crate::ui::parts::shell::StatusLine).
    pub status_line: Part,
    /// [`BottomBar`](crate::ui::parts::shell::BottomBar).
    pub places: Part,
    /// [`Templates`](crate::ui::screens::first_start::Templates).
    pub templates: Part,
}

/// Those parts, once they are here.
pub type LaterDueParts = RwSignal<Option<DueParts>>;

impl DueParts {
    /// One of the parts, from any component below the app; nothing before they are here. Follows.
    pub fn draw(part: fn(Self) -> Part) -> Option<AnyView> {
        let parts = use_context::<LaterDueParts>()?.get()?;
        Some(part(parts)())
    }
}

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

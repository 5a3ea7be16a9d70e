//! Plain line drawings of the feed guide, our own.

use leptos::prelude::*;

/// What is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DrawingKind {
    /// The chick from the side, its crop empty and full.
    Crop,
    /// A filled syringe, no air at the tip.
    Syringe,
    /// The beak from the front, the syringe from the bird's left side.
    Beak,
}

impl DrawingKind {
    /// Lines in ink.
    const fn ink(self) -> &'static str {
        match self {
            Self::Crop => {
                "M30 110C28 76 38 46 62 38C82 32 98 42 100 58C101 68 96 74 92 80C88 92 90 104 94 116M100 56L114 62L100 68M66 52h.1M190 110C188 76 198 46 222 38C242 32 258 42 260 58C261 68 256 74 252 80M250 112L254 116M260 56L274 62L260 68M226 52h.1"
            }
            Self::Syringe => {
                "M40 60H220V96H40zM220 72H244L262 78L244 84H220M40 66H16M16 52V104M70 60V68M100 60V68M130 60V68M160 60V68M190 60V68"
            }
            Self::Beak => {
                "M160 24C122 24 100 52 100 82C100 112 126 132 160 132C194 132 220 112 220 82C220 52 194 24 160 24zM136 74h.1M184 74h.1M142 84C148 78 172 78 178 84L160 122zM148 112C154 120 166 120 172 112"
            }
        }
    }

    /// What matters, in the colour of the lamp.
    const fn lamp(self) -> &'static str {
        match self {
            Self::Crop => {
                "M92 80C96 88 94 98 90 106M252 80C272 84 276 108 250 112C240 108 240 90 252 80z"
            }
            Self::Syringe => "M84 66H218V90H84z",
            Self::Beak => "M290 84L192 106M202 98L190 107L204 110",
        }
    }
}

/// A drawing; the sentence beside it says the same.
#[component]
pub fn Drawing(
    /// What is drawn.
    kind: DrawingKind,
) -> impl IntoView {
    view! {
        <svg class="drawing" viewBox="0 0 300 150" aria-hidden="true">
            <path class="drawing__ink" d=kind.ink()></path>
            <path class="drawing__lamp" d=kind.lamp()></path>
        </svg>
    }
}

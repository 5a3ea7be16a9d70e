//! Plain line drawings of the feed guide, our own.

use leptos::prelude::*;

use crate::domain::plan::care_plan::Tool;

/// What is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DrawingKind {
    /// A filled syringe, its rod along its axis, no air at the tip.
    Syringe,
    /// A bent spoon from the side and from above, filled.
    Spoon,
}

impl DrawingKind {
    /// The tool that a plan gives with.
    pub const fn of_tool(tool: Tool) -> Self {
        match tool {
            Tool::Syringe => Self::Syringe,
            Tool::Spoon | Tool::BentSpoon => Self::Spoon,
        }
    }

    /// Lines in ink.
    const fn ink(self) -> &'static str {
        match self {
            Self::Syringe => {
                "M58 54H222V96H58zM222 66H240V84H222M240 71L280 74V76L240 79M84 75H26M26 54V96M58 42V108M100 54V64M130 54V64M160 54V64M190 54V64M76 54V96M84 54V96"
            }
            Self::Spoon => {
                "M24 40H150C166 40 172 52 186 52H236C252 52 262 46 272 34M24 100H140C156 100 162 84 176 82L250 88C266 90 266 110 250 112L176 118C162 116 156 100 140 100"
            }
        }
    }

    /// What matters, in the colour of the lamp.
    const fn lamp(self) -> &'static str {
        match self {
            Self::Syringe => "M84 75H221",
            Self::Spoon => "M184 44H238M182 100H246",
        }
    }

    /// How broad what matters is: food fills its tool.
    const fn breadth(self) -> &'static str {
        match self {
            Self::Syringe => "34",
            Self::Spoon => "12",
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
            <path class="drawing__lamp drawing__food" stroke-width=kind.breadth() d=kind.lamp()></path>
            <path class="drawing__ink" d=kind.ink()></path>
        </svg>
    }
}

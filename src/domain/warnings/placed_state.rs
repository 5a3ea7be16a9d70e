//! How a placed chick is, as far as a phone knows that may only follow it.

use crate::domain::time::moment::Lived;
use crate::domain::warnings::level::Level;

/// How a chick is, as far as this phone knows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PlacedState {
    /// At this level today.
    Now(Level),
    /// At this level when it was last heard of, more than a day ago.
    On(Level, Lived),
    /// A report is overdue.
    Silent {
        /// The level at the last report and when that was; `None` when nothing was ever heard.
        last: Option<(Level, Lived)>,
        /// Whole days since then, or since it came home.
        days: i64,
    },
    /// Nothing was heard yet, and nothing is overdue.
    Unheard,
    /// It died.
    Died,
}

impl PlacedState {
    /// The level at the last report; `None` when there was none.
    pub const fn level(self) -> Option<Level> {
        match self {
            Self::Now(level)
            | Self::On(level, _)
            | Self::Silent {
                last: Some((level, _)),
                ..
            } => Some(level),
            Self::Silent { last: None, .. } | Self::Unheard | Self::Died => None,
        }
    }

    /// The level where it is today's, which alone has a colour.
    pub const fn level_now(self) -> Option<Level> {
        match self {
            Self::Now(level) => Some(level),
            Self::On(..) | Self::Silent { .. } | Self::Unheard | Self::Died => None,
        }
    }

    /// Whether somebody is to look after it or ask for it: a level of call, or silence.
    pub fn needs_somebody(self) -> bool {
        self.need().0
    }

    /// How much it needs somebody: a level of call first, then silence, then the rest.
    pub fn need(self) -> (bool, Level, bool) {
        let level = self.level().unwrap_or(Level::Settled);
        let is_silent = match self {
            Self::Silent { .. } => true,
            Self::Now(_) | Self::On(..) | Self::Unheard | Self::Died => false,
        };
        let call = if level.is_call() {
            level
        } else {
            Level::Settled
        };
        let is_watched = level == Level::Watch;
        (is_silent || level.is_call(), call, is_silent || is_watched)
    }
}

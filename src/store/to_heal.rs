//! What waits to be healed by `heal.rs`.

use std::collections::BTreeSet;

use crate::store::line::{Line, Name};

/// What only the second copy has.
#[derive(Debug, Default)]
pub(super) struct ToHeal {
    /// The latest first, so that a step takes the oldest from the end.
    pub(super) lines: Vec<Line>,
    /// The names of lines whose own key holds something else, as a damaged text.
    pub(super) taken: BTreeSet<Name>,
}

impl ToHeal {
    /// The record lines.
    pub(super) fn texts(&self) -> impl Iterator<Item = &str> {
        self.lines.iter().map(|line| line.text.as_str())
    }
}

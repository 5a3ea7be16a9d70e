//! What comes before a feed.

use crate::domain::journal::signs::Sign;

/// What is to be done before a feed, most pressing first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum First {
    /// It has just arrived: warmth and quiet.
    Settle,
    /// It is overheated: cool and air.
    Cool,
    /// A trace is left after the night: warmth, then another look.
    Warm,
    /// Say whether this sign is still there.
    IsItGone(Sign),
    /// Weigh it while the crop is empty.
    Weigh,
    /// Look at the crop.
    LookAtCrop,
}

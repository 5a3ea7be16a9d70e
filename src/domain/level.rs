//! How worried to be, and what a rule found.

use crate::domain::evidence::Standing;
use crate::domain::signs::Sign;
use crate::domain::units::{Celsius, Grams, Millilitres};

/// How worried to be, calmest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Level {
    /// Nothing stands out.
    Settled,
    /// Look again and note it.
    Watch,
    /// Ring the breeder today.
    RingBreeder,
    /// See an avian vet today.
    VetToday,
    /// Emergency: now.
    Emergency,
}

impl Level {
    /// Every level, calmest first.
    pub const ALL: [Self; 5] = [
        Self::Settled,
        Self::Watch,
        Self::RingBreeder,
        Self::VetToday,
        Self::Emergency,
    ];

    /// Whether somebody is to be rung.
    pub fn is_call(self) -> bool {
        self >= Self::RingBreeder
    }
}

/// A measured or counted value in a finding.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Value {
    /// Per cent, 0 to 100.
    Pct(f64),
    /// A mass.
    Grams(Grams),
    /// A volume.
    Ml(Millilitres),
    /// A temperature.
    Celsius(Celsius),
    /// A stretch of time, minutes.
    Minutes(i64),
    /// A count.
    Count(usize),
    /// A ratio to the chick's own usual value.
    Times(f64),
    /// Something seen, which has no number.
    Seen,
}

/// What one rule found. Numbers only; the words are elsewhere.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Finding {
    /// The rule.
    pub rule: RuleId,
    /// How worried to be.
    pub level: Level,
    /// What was seen.
    pub value: Value,
    /// The limit it was held against.
    pub limit: Value,
    /// Standing of the limit that decided the level.
    pub standing: Standing,
}

/// The rules, each with its own file in `domain/rules`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum RuleId {
    /// Loss against the handover weight.
    HandoverLoss,
    /// Loss from one morning to the next.
    OneDayLoss,
    /// Feeds of the plan that were not noted.
    MissedFeeds,
    /// No weighing for a day and a half.
    NoWeighing,
    /// A feed over the volume ceiling.
    VolumeOverCeiling,
    /// Two feeds too close together.
    GapTooShort,
    /// A sign that somebody saw.
    SignSeen(Sign),
}

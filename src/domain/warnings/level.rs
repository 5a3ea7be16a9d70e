//! How worried to be, and what a rule found.

use crate::domain::journal::entries::Droppings;
use crate::domain::journal::signs::Sign;
use crate::domain::quantity::evidence::Standing;
use crate::domain::quantity::units::{Celsius, Grams, Millilitres};

/// How worried to be, calmest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Level {
    /// Nothing stands out.
    Settled,
    /// Look again and note it.
    Watch,
    /// Call the breeder today.
    CallBreeder,
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
        Self::CallBreeder,
        Self::VetToday,
        Self::Emergency,
    ];

    /// Whether somebody is to be rung.
    pub fn is_call(self) -> bool {
        self >= Self::CallBreeder
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

/// The rules, each with its own file in `domain/rules`. Of two findings at the same level the earlier
/// one here is shown first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum RuleId {
    /// A crop that stands still together with a bad sign.
    CropStatic,
    /// A sign that somebody saw.
    SignSeen(Sign),
    /// Formula was served too hot.
    ServedHot,
    /// Lighter and dull.
    DullLoss,
    /// No feed since the chick left on its journey.
    TransitGap,
    /// Food left in the crop after the night.
    CropOvernight,
    /// Food left in the crop when the next feed is due.
    CropLate,
    /// Feeds that the chick refused.
    RefusedFeeds,
    /// Feeds of the plan that are known not to have been given.
    MissedFeeds,
    /// Too little food in a day.
    DayIntake,
    /// No food was noted for long.
    NoFoodNoted,
    /// Loss against the highest weight since the handover.
    PeakLoss,
    /// Loss against the handover weight.
    HandoverLoss,
    /// Loss of a weaned bird against its own stable level.
    StableLoss,
    /// Loss day after day, faster than weaning takes.
    FallingWeight,
    /// Loss over the journey.
    ArrivalLoss,
    /// Loss from one morning to the next.
    OneDayLoss,
    /// No gain in a growing chick.
    GrowthStalled,
    /// What the droppings looked like.
    DroppingsSeen(Droppings),
    /// Fewer droppings in a day than this bird usually makes.
    FewDroppings,
    /// A crop slower than this chick's own usual time.
    CropSlow,
    /// A feed over the volume ceiling.
    VolumeOverCeiling,
    /// Two feeds too close together.
    GapTooShort,
    /// Formula was served too cool.
    ServedCold,
    /// A room too cool or too warm.
    RoomTemperature,
    /// No weighing for a day and a half.
    NoWeighing,
    /// No vet has been noted since the arrival.
    VetVisitDue,
}

impl RuleId {
    /// Whether the rule reminds of something to be done and judges nothing: it raises no level.
    pub const fn is_reminder(self) -> bool {
        matches!(self, Self::VetVisitDue)
    }

    /// Whether the rule judges what the scale told.
    pub const fn is_of_weight(self) -> bool {
        matches!(
            self,
            Self::DullLoss
                | Self::PeakLoss
                | Self::HandoverLoss
                | Self::StableLoss
                | Self::FallingWeight
                | Self::ArrivalLoss
                | Self::OneDayLoss
                | Self::GrowthStalled
        )
    }
}

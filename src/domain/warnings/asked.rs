//! What an owner asks about most when something is wrong, and how worried to be before more is known.

use crate::domain::journal::signs::Sign;
use crate::domain::warnings::level::{Finding, Level, RuleId};
use crate::domain::warnings::rules::{Concern, concern, sign_seen};

/// What is asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Asked {
    /// It does not take its feed.
    WontEat,
    /// Food is left in the crop in the morning.
    FoodLeft,
    /// It weighs less.
    WeightDown,
    /// A sign that was seen.
    Sign(Sign),
}

impl Asked {
    /// What is asked about most. Ours.
    pub const MOST: [Self; 6] = [
        Self::WontEat,
        Self::FoodLeft,
        Self::WeightDown,
        Self::Sign(Sign::LabouredBreathing),
        Self::Sign(Sign::Cold),
        Self::Sign(Sign::FedTooHot),
    ];

    /// The rule whose advice answers it.
    pub const fn rule(self) -> RuleId {
        match self {
            Self::WontEat => RuleId::RefusedFeeds,
            Self::FoodLeft => RuleId::CropOvernight,
            Self::WeightDown => RuleId::HandoverLoss,
            Self::Sign(sign) => RuleId::SignSeen(sign),
        }
    }

    /// How worried to be: of a sign as its rule says; else as the chick's own findings about it say, and at
    /// least so worried that somebody looks again. Food left after the whole night is for a vet until the crop
    /// was looked at, as a quarter of a crop is.
    pub fn level(self, findings: &[Finding]) -> Level {
        let (about, least) = match self {
            Self::Sign(sign) => return sign_seen::level(sign),
            Self::WontEat => (Concern::Intake, Level::Watch),
            Self::FoodLeft => (Concern::Crop, Level::VetToday),
            Self::WeightDown => (Concern::Weight, Level::Watch),
        };
        let found = findings
            .iter()
            .filter(|finding| concern(finding.rule) == Some(about));
        found
            .map(|finding| finding.level)
            .max()
            .unwrap_or(least)
            .max(least)
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::quantity::evidence::Standing;
    use crate::domain::warnings::asked::*;
    use crate::domain::warnings::level::Value;

    fn found(rule: RuleId, level: Level) -> Finding {
        let (value, limit) = (Value::Seen, Value::Seen);
        Finding {
            rule,
            level,
            value,
            limit,
            standing: Standing::Ours,
        }
    }

    #[test]
    fn what_is_known_of_the_chick_decides_and_never_calms_below_a_second_look() {
        assert_eq!(Asked::WeightDown.level(&[]), Level::Watch);
        let loss = found(RuleId::PeakLoss, Level::VetToday);
        assert_eq!(Asked::WeightDown.level(&[loss]), Level::VetToday);
        assert_eq!(Asked::WontEat.level(&[loss]), Level::Watch);
        // The ladder of the morning: a quarter is for the vet, half an emergency.
        assert_eq!(Asked::FoodLeft.level(&[]), Level::VetToday);
        let half = found(RuleId::CropOvernight, Level::Emergency);
        assert_eq!(Asked::FoodLeft.level(&[half]), Level::Emergency);
    }

    #[test]
    fn a_sign_keeps_the_level_of_its_rule() {
        for asked in Asked::MOST {
            if let Asked::Sign(sign) = asked {
                assert_eq!(asked.level(&[]), sign_seen::level(sign));
            }
        }
    }
}

//! *Watches* for food that stays in the crop together with a bad sign.
//!
//! *Limit* food after the night, or a quarter or more 6 h after a feed, and the crop smells sour or holds
//! gas, or food came up, or the chick is dull, limp or cold; or a crop a quarter full or more that is
//! hard or doughy: emergency.
//!
//! *Why* a standing crop with these signs is stasis or blood poisoning; a young bird has hours.
//!
//! *Sources* emergency when a full crop comes with a sour smell, vomiting, lethargy or gas: pages of
//! avian vets; stasis as the commonest trouble: Rivera 2008. How long each look counts: ours.
//!
//! *Wrong when* solid food was just eaten and feels hard.

use crate::domain::feeding::crop;
use crate::domain::journal::entries::CropFeel;
use crate::domain::journal::signs::Sign;
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::crop_ladder::{self, CropAllows, LATE_MINUTES};
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, sign_seen};

/// The rule.
pub const RULE: Rule = Rule {
    name: "crop-static",
    limits: &[
        Limit::new(Level::Emergency, Value::Seen),
        Limit::new(Level::Emergency, Value::Minutes(LATE_MINUTES)),
    ],
    standing: Standing::Published,
    source: "pages of avian vets on crop stasis; Rivera 2008",
    check,
};

/// Whether a sign makes food that stays an emergency.
pub(crate) fn is_bad(sign: Sign) -> bool {
    matches!(
        sign,
        Sign::SourCrop
            | Sign::Vomiting
            | Sign::BroughtBackOnce
            | Sign::Dull
            | Sign::Limp
            | Sign::Cold
    )
}

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let (now, chick) = (facts.now, facts.chick);
    let Some(rung) = crop_ladder::rung(now, chick) else {
        return Vec::new();
    };
    let is_left = rung.allows != CropAllows::Feed
        && (rung.is_morning || rung.minutes.is_none_or(|minutes| minutes >= LATE_MINUTES));
    let has_bad_sign = sign_seen::present(now, chick)
        .iter()
        .any(|seen| is_bad(seen.what));
    let is_hard = crop::latest_look(now, chick)
        .is_some_and(|look| look.what.feel == CropFeel::Firm && !look.what.state.is_nearly_empty());
    let is_static = is_hard || is_left && has_bad_sign;
    let finding = Finding {
        rule: RuleId::CropStatic,
        level: Level::Emergency,
        value: Value::Seen,
        limit: Value::Seen,
        standing: Standing::Published,
    };
    is_static.then_some(finding).into_iter().collect()
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, CropState};
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::warnings::rules::crop_static::*;
    use crate::domain::warnings::rules::trial::{crop, level_of, macaw, sign};

    /// Fed at 06:00, looked at at noon, and perhaps a sign seen at 13:00.
    fn level(state: CropState, seen: Option<Sign>) -> Option<Level> {
        let mut script = macaw();
        script.feed(1, 6, 0, Slot::Morning, 80);
        script.note(1, 12, 0, crop(state));
        if let Some(seen) = seen {
            script.note(1, 13, 0, sign(seen));
        }
        level_of(&RULE, &script, script.at(1, 13, 30))
    }

    #[test]
    fn food_that_stays_with_any_bad_sign_is_an_emergency() {
        for seen in Sign::ALL.into_iter().filter(|sign| is_bad(*sign)) {
            for state in [CropState::Quarter, CropState::HalfOrMore] {
                assert_eq!(level(state, Some(seen)), Some(Level::Emergency), "{seen:?}");
            }
            assert_eq!(level(CropState::Trace, Some(seen)), None);
            assert_eq!(level(CropState::Flat, Some(seen)), None);
        }
    }

    #[test]
    fn food_alone_and_a_mild_sign_are_other_rules() {
        assert_eq!(level(CropState::HalfOrMore, None), None);
        assert_eq!(level(CropState::HalfOrMore, Some(Sign::BegsAllDay)), None);
    }

    #[test]
    fn a_trace_after_the_night_counts_too() {
        let mut script = macaw();
        script.feed(1, 21, 0, Slot::Bedtime, 80);
        script.note(2, 7, 0, crop(CropState::Trace));
        script.note(2, 7, 5, sign(Sign::Dull));
        let now = script.at(2, 7, 10);
        assert_eq!(level_of(&RULE, &script, now), Some(Level::Emergency));
    }

    #[test]
    fn a_hard_crop_is_an_emergency_by_itself() {
        let level = |state| {
            let mut script = macaw();
            script.feed(1, 7, 0, Slot::Morning, 80);
            let feel = CropFeel::Firm;
            script.note(1, 9, 0, Change::CropSeen { state, feel });
            level_of(&RULE, &script, script.at(1, 9, 0))
        };
        assert_eq!(level(CropState::Quarter), Some(Level::Emergency));
        assert_eq!(level(CropState::Trace), None);
    }

    #[test]
    fn a_look_of_yesterday_no_longer_counts() {
        let mut script = macaw();
        script.feed(1, 5, 0, Slot::Morning, 80);
        script.note(1, 12, 0, crop(CropState::HalfOrMore));
        script.note(2, 11, 0, sign(Sign::Dull));
        let level = |minute| level_of(&RULE, &script, script.at(2, 12, minute));
        assert_eq!(level(0), Some(Level::Emergency));
        assert_eq!(level(1), None);
    }
}

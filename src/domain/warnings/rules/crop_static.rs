//! *Watches* for a crop that stands still together with a bad sign.
//!
//! *Limit* the last look of the day found it not moving, or food after the night, and the crop smells
//! sour or holds gas, or the chick vomited, is dull or limp: emergency.
//!
//! *Why* a standing crop with these signs is stasis or blood poisoning; a young bird has hours.
//!
//! *Sources* emergency when a full crop comes with a sour smell, vomiting, lethargy or gas: pages of
//! avian vets; stasis as the commonest trouble: Rivera 2008. How long each look counts: ours.
//!
//! *Wrong when* the crop was felt soon after a feed and could not be smaller yet.

use crate::domain::feeding::crop;
use crate::domain::journal::entries::CropState;
use crate::domain::journal::signs::Sign;
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, crop_overnight, sign_seen};

/// The rule.
pub const RULE: Rule = Rule {
    name: "crop-static",
    limits: &[Limit::new(Level::Emergency, Value::Seen)],
    standing: Standing::Published,
    source: "pages of avian vets on crop stasis; Rivera 2008",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let (now, chick) = (facts.now, facts.chick);
    let is_still = crop::latest_look(now, chick).is_some_and(|look| {
        look.what.state == CropState::NotMoving
            && now.minutes_since(look.at) <= crop::LOOK_SHOWN_MINUTES
    });
    let is_static = is_still || !(crop_overnight::RULE.check)(facts).is_empty();
    let is_bad = |sign: Sign| {
        matches!(
            sign,
            Sign::SourCrop | Sign::Vomiting | Sign::Dull | Sign::Limp
        )
    };
    let has_bad_sign = sign_seen::present(now, chick)
        .iter()
        .any(|seen| is_bad(seen.what));
    if !is_static || !has_bad_sign {
        return Vec::new();
    }
    vec![Finding {
        rule: RuleId::CropStatic,
        level: Level::Emergency,
        value: Value::Seen,
        limit: Value::Seen,
        standing: Standing::Published,
    }]
}

#[cfg(test)]
mod tests {
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::warnings::rules::crop_static::*;
    use crate::domain::warnings::rules::trial::{crop, level_of, macaw, sign};

    fn level(state: CropState, seen: Option<Sign>) -> Option<Level> {
        let mut script = macaw();
        script.note(1, 12, 0, crop(state));
        if let Some(seen) = seen {
            script.note(1, 13, 0, sign(seen));
        }
        level_of(&RULE, &script, script.at(1, 13, 30))
    }

    #[test]
    fn a_still_crop_with_any_bad_sign_is_an_emergency() {
        for seen in [Sign::SourCrop, Sign::Vomiting, Sign::Dull, Sign::Limp] {
            let found = level(CropState::NotMoving, Some(seen));
            assert_eq!(found, Some(Level::Emergency), "{seen:?}");
            assert_eq!(level(CropState::Emptying, Some(seen)), None);
            assert_eq!(level(CropState::Empty, Some(seen)), None);
        }
    }

    #[test]
    fn a_still_crop_alone_and_a_mild_sign_are_other_rules() {
        assert_eq!(level(CropState::NotMoving, None), None);
        assert_eq!(level(CropState::NotMoving, Some(Sign::BegsAllDay)), None);
    }

    #[test]
    fn food_after_the_night_counts_as_still() {
        let mut script = macaw();
        script.feed(1, 21, 0, Slot::Bedtime, 80);
        script.note(2, 7, 0, crop(CropState::Emptying));
        script.note(2, 7, 5, sign(Sign::Dull));
        let now = script.at(2, 7, 10);
        assert_eq!(level_of(&RULE, &script, now), Some(Level::Emergency));
    }

    #[test]
    fn a_look_of_yesterday_no_longer_counts() {
        let mut script = macaw();
        script.note(1, 12, 0, crop(CropState::NotMoving));
        script.note(2, 11, 0, sign(Sign::Dull));
        let level = |minute| level_of(&RULE, &script, script.at(2, 12, minute));
        assert_eq!(level(0), Some(Level::Emergency));
        assert_eq!(level(1), None);
    }
}

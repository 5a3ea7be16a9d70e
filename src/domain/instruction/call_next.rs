//! Whether the call is the next act, also where a feed goes on.
//!
//! A chick that is losing weight is fed although a vet is to see it today. Who reads of two acts does the one that
//! stands out, so the call is that one.

use crate::domain::feeding::feeding_streak::{
    AFTER_LONGEST_GAP_MINUTES, last_food, longest_gap_minutes,
};
use crate::domain::instruction::lifting::advice_in_force;
use crate::domain::journal::chick::Chick;
use crate::domain::plan::care_plan::Role;
use crate::domain::time::moment::Moment;
use crate::domain::warnings::level::{Finding, Level, RuleId};

/// Without food for longer than this the breeder is called at any hour, minutes: 12 h. Source: breeders' pages; standing:
/// common practice. Where the plan's longest gap and two hours are longer, these count.
pub const WITHOUT_FOOD_MINUTES: i64 = 12 * 60;

/// Whether somebody is to be called before anything else is done: from *Vet today* up, and the breeder where it has
/// not eaten for long or its crop does not empty. Not once who was to be called said that it may be fed, unless
/// something was seen after that.
pub fn is_call_next(now: Moment, chick: &Chick, level: Level, findings: &[Finding]) -> bool {
    let is_now = match level {
        Level::Settled | Level::Watch => false,
        Level::CallBreeder => is_hungry(now, chick) || findings.iter().any(is_of_full_crop),
        Level::VetToday | Level::Emergency => true,
    };
    is_now && !is_told(now, chick, level)
}

fn is_hungry(now: Moment, chick: &Chick) -> bool {
    let since = last_food(now, chick).unwrap_or_else(|| chick.home_since());
    longest_gap_minutes(now, chick).is_some_and(|gap| {
        let longest = WITHOUT_FOOD_MINUTES.max(gap + AFTER_LONGEST_GAP_MINUTES);
        now.minutes_since(since) > longest
    })
}

fn is_of_full_crop(finding: &Finding) -> bool {
    let is_of_crop = matches!(
        finding.rule,
        RuleId::CropOvernight | RuleId::CropLate | RuleId::CropStatic | RuleId::CropSlow
    );
    is_of_crop && finding.level.is_call()
}

/// Whether the latest word that holds lets it be fed, of somebody whom this level calls, with nothing seen since.
fn is_told(now: Moment, chick: &Chick, level: Level) -> bool {
    let word = advice_in_force(now, chick).filter(|advice| advice.what.may_feed);
    word.is_some_and(|word| {
        let is_asked = match word.what.who {
            Role::AvianVet | Role::EmergencyVet => true,
            Role::Breeder => level <= Level::CallBreeder,
        };
        let is_new = |at: Moment| word.at < at && at <= now;
        let is_seen = chick.signs.iter().any(|sign| is_new(sign.at))
            || chick.weighings.iter().any(|weighing| is_new(weighing.at))
            || chick.droppings.iter().any(|droppings| is_new(droppings.at));
        is_asked && !is_seen
    })
}

#[cfg(test)]
mod tests {
    use crate::domain::instruction::call_next::*;
    use crate::domain::journal::entries::Change;
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::journal::signs::Sign;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::quantity::evidence::Standing;
    use crate::domain::warnings::level::Value;
    use crate::domain::warnings::rules::trial::macaw;

    /// Fed at 07:00 of day 1.
    fn fed() -> Scenario {
        let mut script = macaw();
        script.feed(1, 7, 0, Slot::Morning, 80);
        script
    }

    fn is_next(script: &Scenario, hour: i32, minute: i32, level: Level) -> bool {
        is_call_next(
            script.at(1, hour, minute),
            &script.chick().unwrap(),
            level,
            &[],
        )
    }

    const fn word(who: Role) -> Change {
        Change::AdviceNoted {
            who,
            about: String::new(),
            may_feed: true,
            ml: None,
            until: None,
        }
    }

    #[test]
    fn a_call_comes_first_from_the_vet_s_levels_up() {
        let script = fed();
        assert!(!is_next(&script, 8, 0, Level::Watch));
        assert!(!is_next(&script, 8, 0, Level::CallBreeder));
        assert!(is_next(&script, 8, 0, Level::VetToday));
        assert!(is_next(&script, 8, 0, Level::Emergency));
    }

    #[test]
    fn the_breeder_is_called_at_any_hour_once_it_is_without_food_for_longer_than_twelve_hours() {
        // Fed at 07:00, 14:00 and 21:00: the longest gap is 10 h, and with two more it is 12 h as well.
        let script = fed();
        assert!(!is_next(&script, 19, 0, Level::CallBreeder));
        assert!(is_next(&script, 19, 1, Level::CallBreeder));
        assert!(!is_next(&script, 19, 1, Level::Watch));
    }

    #[test]
    fn the_breeder_is_called_at_any_hour_about_a_crop_that_does_not_empty() {
        let script = fed();
        let chick = script.chick().unwrap();
        let of = |rule, level| {
            let (value, limit, standing) = (Value::Seen, Value::Seen, Standing::Ours);
            let finding = Finding {
                rule,
                level,
                value,
                limit,
                standing,
            };
            is_call_next(script.at(1, 8, 0), &chick, Level::CallBreeder, &[finding])
        };
        assert!(of(RuleId::CropLate, Level::CallBreeder));
        assert!(!of(RuleId::CropLate, Level::Watch));
        assert!(!of(RuleId::HandoverLoss, Level::CallBreeder));
    }

    #[test]
    fn who_was_told_feeds_until_something_is_seen_after_that() {
        let mut script = fed();
        script.note(1, 9, 0, word(Role::Breeder));
        assert!(!is_next(&script, 20, 0, Level::CallBreeder));
        assert!(
            is_next(&script, 20, 0, Level::VetToday),
            "not hers to say at a vet's level"
        );
        script.note(1, 10, 0, word(Role::AvianVet));
        assert!(!is_next(&script, 20, 0, Level::VetToday));
        let sign = Sign::BegsAllDay;
        script.note(1, 11, 0, Change::SignSeen { sign });
        assert!(is_next(&script, 20, 0, Level::VetToday));
        script.note(1, 12, 0, word(Role::EmergencyVet));
        assert!(!is_next(&script, 20, 0, Level::VetToday));
        script.weigh(1, 900);
        assert!(
            !is_next(&script, 20, 0, Level::VetToday),
            "weighed at 06:45, before that word"
        );
    }
}

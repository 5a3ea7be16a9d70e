//! *Watches* the temperature at which feeds were served.
//!
//! *Limit* above 41.0 °C: watch; above 41.5 °C: call the breeder; 43.3 °C (110 °F) and more: vet today,
//! without waiting for marks. After a day the burn stays at watch for 14 days.
//!
//! *Why* hot formula burns the crop from inside, and the burn shows days later as a wet or red patch.
//!
//! *Sources* burns above 110 °F: Rivera 2008. Crop feeding at 39 to 41 °C, marks up to 10 days later
//! and a case on day 12: Vet Times, 18 Feb 2019. 41.5 °C (a guard band for kitchen thermometers), and
//! what is done below 43.3 °C: ours.
//!
//! *Wrong when* the thermometer was still in the hot water, or reads high.

use std::cmp::Reverse;

use crate::domain::journal::chick::FeedOutcome;
use crate::domain::quantity::evidence::Standing;
use crate::domain::quantity::units::Celsius;
use crate::domain::time::moment::Moment;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule};

/// The highest temperature of the allowed window.
pub const WINDOW_TO: Celsius = Celsius::tenths_held(410);
/// Above this formula is not served.
pub const REFUSE_ABOVE: Celsius = Celsius::tenths_held(415);
/// From here on formula burns, 110 °F.
pub const BURN_FROM: Celsius = Celsius::tenths_held(433);

/// A hot feed counts for this long, minutes. Ours.
const SHOWN_MINUTES: i64 = 24 * 60;
/// A burning feed is watched for this long, minutes: 14 days.
const MARKS_MINUTES: i64 = 14 * 24 * 60;

/// The rule.
pub const RULE: Rule = Rule {
    name: "served-hot",
    limits: &[
        Limit::new(Level::Watch, Value::Celsius(WINDOW_TO)),
        Limit::new(Level::CallBreeder, Value::Celsius(REFUSE_ABOVE)),
        Limit::new(Level::VetToday, Value::Celsius(BURN_FROM)),
        Limit::new(Level::VetToday, Value::Celsius(BURN_FROM)),
        Limit::new(Level::Watch, Value::Minutes(MARKS_MINUTES)),
    ],
    standing: Standing::Ours,
    source: "43.3 °C: Rivera 2008; marks for up to two weeks: Vet Times, 18 Feb 2019; below 43.3 °C: our own",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let served = facts.chick.feeds.iter().filter_map(|feed| {
        let FeedOutcome::Given {
            taken, served_at, ..
        } = feed.what.outcome
        else {
            return None;
        };
        let served_at = served_at.filter(|_| taken.tenths() > 0 && feed.at <= facts.now)?;
        hot(facts.now, feed.at, served_at)
    });
    served
        .max_by_key(|finding| (finding.level, Reverse(finding.standing)))
        .into_iter()
        .collect()
}

fn hot(now: Moment, at: Moment, served: Celsius) -> Option<Finding> {
    let minutes = now.minutes_since(at);
    let is_today = minutes <= SHOWN_MINUTES;
    let (level, limit, standing) = if served >= BURN_FROM && is_today {
        (Level::VetToday, BURN_FROM, Standing::Published)
    } else if served >= BURN_FROM && minutes <= MARKS_MINUTES {
        (Level::Watch, BURN_FROM, Standing::Published)
    } else if served > REFUSE_ABOVE && is_today {
        (Level::CallBreeder, REFUSE_ABOVE, Standing::Ours)
    } else if served > WINDOW_TO && is_today {
        (Level::Watch, WINDOW_TO, Standing::Ours)
    } else {
        return None;
    };
    Some(Finding {
        rule: RuleId::ServedHot,
        level,
        value: Value::Celsius(served),
        limit: Value::Celsius(limit),
        standing,
    })
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, Response};
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::quantity::units::Millilitres;
    use crate::domain::warnings::rules::served_hot::*;
    use crate::domain::warnings::rules::trial::{level_of, macaw, served};

    fn level_at(tenths: i32) -> Option<Level> {
        let mut script = macaw();
        script.note(1, 21, 0, served(tenths));
        level_of(&RULE, &script, script.at(1, 22, 0))
    }

    #[test]
    fn each_step_is_reached_at_its_own_value() {
        assert_eq!(level_at(410), None);
        assert_eq!(level_at(411), Some(Level::Watch));
        assert_eq!(level_at(415), Some(Level::Watch));
        assert_eq!(level_at(416), Some(Level::CallBreeder));
        assert_eq!(level_at(432), Some(Level::CallBreeder));
        // 110 °F = (110 - 32) / 1.8 = 43.33 °C
        assert_eq!(level_at(433), Some(Level::VetToday));
        assert_eq!(level_at(500), Some(Level::VetToday));
    }

    #[test]
    fn a_burning_feed_is_watched_for_two_weeks() {
        let mut script = macaw();
        script.note(1, 21, 0, served(440));
        let level = |day, minute| level_of(&RULE, &script, script.at(day, 21, minute));
        assert_eq!(level(2, 0), Some(Level::VetToday));
        assert_eq!(level(2, 1), Some(Level::Watch));
        assert_eq!(level(15, 0), Some(Level::Watch));
        assert_eq!(level(15, 1), None);
    }

    #[test]
    fn a_good_feed_afterwards_does_not_hide_a_hot_one() {
        let mut script = macaw();
        script.note(1, 21, 0, served(440));
        script.note(2, 7, 0, served(400));
        script.note(2, 14, 0, served(412));
        let now = script.at(2, 15, 0);
        assert_eq!(level_of(&RULE, &script, now), Some(Level::VetToday));
    }

    #[test]
    fn hot_formula_of_which_nothing_was_taken_burns_nothing() {
        let mut script = macaw();
        let refused = Change::Fed {
            counts_as: Some(Slot::Bedtime),
            taken: Millilitres::whole(0),
            offered: Millilitres::whole(80),
            served_at: Some(Celsius::tenths_held(440)),
            response: Response::Slow,
        };
        script.note(1, 21, 0, refused);
        assert_eq!(level_of(&RULE, &script, script.at(1, 22, 0)), None);
    }
}

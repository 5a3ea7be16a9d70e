//! *Watches* for a weight that falls faster than that of a healthy chick, as all readings together tell it.
//!
//! *Limit* a loss of at least 0.6 % a day beyond a healthy one, begun in the last three weeks: watch when the
//! readings are 12 times as likely with it as without; call the breeder when they are 100 times as likely.
//! What was eaten counts with them: a day on which less than 85 % of the planned food was taken, every feed noted
//! and no solids swallowed, is the likelier the faster the loss.
//!
//! *Why* a chick that eats too little loses day after day. All readings together tell it days before the
//! loss reaches its limit, and no single bad reading makes or hides it.
//!
//! *Sources* the ratio: Willsky & Jones 1976. 0.6 % a day and both odds are ours, chosen on made-up chicks.
//! Healthy is what a chick of its stage loses: 0.36 % a day from peak to weaning in ten hand-reared chicks
//! (Groffen 2008, 75 g of 375 g in 55 days), none once it is weaned. What missing food takes: worked out from
//! 78 kcal a day at 1 kg and 2 kcal in a gram of tissue.
//!
//! *Wrong when* two or three mornings in a row had food in the crop and the next ones had not; when the scale
//! is much worse than its steps; or when a fat chick is weaned fast.

use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, pct_finding};
use crate::domain::weight::fall::{CALL_ODDS, LEAST_SHARE, WATCH_ODDS};
use crate::domain::weight::readings;

/// A weighing counts for this long, minutes. Ours.
const SHOWN_MINUTES: i64 = 36 * 60;

/// Slowest loss that is looked for, per cent a day.
pub const PACE_PCT: f64 = LEAST_SHARE * 100.0;

/// The rule.
pub const RULE: Rule = Rule {
    name: "falling-weight",
    limits: &[
        Limit::new(Level::Watch, Value::Pct(PACE_PCT)),
        Limit::new(Level::Watch, Value::Count(WATCH_ODDS)),
        Limit::new(Level::CallBreeder, Value::Count(CALL_ODDS)),
    ],
    standing: Standing::Ours,
    source: "likelihood ratio: Willsky & Jones 1976; pace and odds: our own, tried on made-up chicks",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let is_recent = readings::latest_empty(facts.now, facts.chick)
        .is_some_and(|latest| facts.now.minutes_since(latest.at) <= SHOWN_MINUTES);
    let fall = facts.trend.fall.filter(|_| is_recent);
    let pace = facts.trend.now.and_then(|now| now.pace);
    let Some((fall, pace)) = fall.zip(pace) else {
        return Vec::new();
    };
    let level = if fall.is_as_likely(CALL_ODDS) {
        Level::CallBreeder
    } else if fall.is_as_likely(WATCH_ODDS) {
        Level::Watch
    } else {
        return Vec::new();
    };
    let (rule, standing) = (RuleId::FallingWeight, Standing::Ours);
    vec![pct_finding(
        rule,
        level,
        -pace.pct_per_day,
        PACE_PCT,
        standing,
    )]
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::quantity::units::Percent;
    use crate::domain::warnings::level::Value;
    use crate::domain::warnings::rules::falling_weight::*;
    use crate::domain::warnings::rules::trial::{found, level_of, macaw, plan, with_plan};

    /// Steady for a week, then so many grams less every day.
    fn falling(mut script: Scenario, grams_a_day: i32) -> Scenario {
        for day in 1..=7 {
            script.weigh(day, 1_000);
        }
        for day in 8..=12 {
            script.weigh(day, 1_000 - (day - 7) * grams_a_day);
        }
        script
    }

    #[test]
    fn two_per_cent_a_day_are_a_call_on_the_third_morning() {
        let script = falling(macaw(), 20);
        let level = |day| level_of(&RULE, &script, script.at(day, 8, 0));
        assert_eq!(level(7), None);
        assert!(level(8) < Some(Level::CallBreeder));
        assert_eq!(level(10), Some(Level::CallBreeder));
        let Value::Pct(loss) = found(&RULE, &script, script.at(10, 8, 0))[0].value else {
            panic!("the pace is in per cent")
        };
        // 2 % of 1,000 g a day; the likeliest pace is told, not one that lags
        assert!((1.5..=2.5).contains(&loss), "{loss}");
    }

    #[test]
    fn four_per_cent_a_day_are_a_call_on_the_second_morning() {
        let script = falling(macaw(), 40);
        let level = |day| level_of(&RULE, &script, script.at(day, 8, 0));
        assert_eq!(level(9), Some(Level::CallBreeder));
    }

    #[test]
    fn a_healthy_pace_is_not_told() {
        // 0.36 % a day from peak to weaning (Groffen 2008)
        let script = falling(macaw(), 4);
        for day in 1..=12 {
            assert_eq!(
                level_of(&RULE, &script, script.at(day, 8, 0)),
                None,
                "{day}"
            );
        }
    }

    #[test]
    fn a_chick_that_gains_less_than_before_does_not_fall() {
        let mut script = macaw();
        let grams = [900, 930, 960, 990, 1_020, 1_030, 1_036, 1_040, 1_042, 1_043];
        for (day, grams) in (1..).zip(grams) {
            script.weigh(day, grams);
            assert_eq!(
                level_of(&RULE, &script, script.at(day, 8, 0)),
                None,
                "{day}"
            );
        }
    }

    #[test]
    fn a_fast_pace_is_a_call_also_far_from_the_breeders_limit() {
        let mut plan = plan();
        plan.loss_limit = Percent::whole(15);
        let script = falling(with_plan(plan), 20);
        assert_eq!(
            level_of(&RULE, &script, script.at(10, 8, 0)),
            Some(Level::CallBreeder)
        );
    }

    #[test]
    fn an_old_reading_tells_none_of_today() {
        let script = falling(macaw(), 20);
        let level = |hour, minute| level_of(&RULE, &script, script.at(13, hour, minute));
        // weighed on day 12 at 06:45
        assert_eq!(level(18, 45), Some(Level::CallBreeder));
        assert_eq!(level(18, 46), None);
    }
}

//! *Watches* the change from one morning's empty-crop weight to the next.
//!
//! *Limit* 3 %: watch; 5 %: ring the breeder; 10 %: vet today.
//!
//! *Why* a loss of this size in a single day is more than the scale's noise and more than weaning.
//!
//! *Sources* 5 % called significant and 10 % called an alarm for any parrot on avian weighing pages
//! (read); that they apply to a single day and the 3 % step: ours.
//!
//! Where the earlier reading lies above what four readings or more before it made expect, the loss
//! counts from there, so that a morning with food in the crop makes no loss on the next one: ours; on made-up
//! healthy chicks most false calls of this rule came so.
//!
//! *Wrong when* the first of the two crops was not empty and there are few readings.

use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, level_reached, pct_finding};
use crate::domain::weight::loss;
use crate::domain::weight::readings;
use crate::domain::weight::trend;

/// The rule.
pub const RULE: Rule = Rule {
    name: "one-day-loss",
    limits: &[
        Limit::new(Level::Watch, Value::Pct(3.0)),
        Limit::new(Level::RingBreeder, Value::Pct(5.0)),
        Limit::new(Level::VetToday, Value::Pct(10.0)),
    ],
    standing: Standing::Ours,
    source: "5 % and 10 % as significant and alarming losses: avian weighing pages; for a single day: ours",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let Some(loss) = loss_pct(facts) else {
        return Vec::new();
    };
    let is_recent = readings::latest_empty(facts.now, facts.chick)
        .is_some_and(|latest| facts.now.minutes_since(latest.at) < 36 * 60);
    let reached = level_reached(loss, RULE.limits).filter(|_| is_recent);
    reached
        .map(|(limit, level)| pct_finding(RuleId::OneDayLoss, level, loss, limit, Standing::Ours))
        .into_iter()
        .collect()
}

/// Loss in per cent of the earlier reading, or of what was expected before it when that is lower.
fn loss_pct(facts: &Facts<'_>) -> Option<f64> {
    let read = loss::one_day_loss_pct(facts.now, facts.chick)?;
    let latest_g = readings::latest_empty(facts.now, facts.chick)?
        .what
        .weight
        .as_g();
    let before = loss::day_before(facts.now, facts.chick)?
        .at
        .plus_seconds(-1);
    let from_level = trend::expected_reading(before, facts.chick)
        .map(|(level_g, _)| 100.0 * (level_g - latest_g) / level_g);
    Some(from_level.map_or(read, |from_level| from_level.min(read)))
}

#[cfg(test)]
mod tests {
    use crate::domain::warnings::level::Value;
    use crate::domain::warnings::rules::one_day_loss::*;
    use crate::domain::warnings::rules::trial::{found, level_of, macaw};

    /// The level at a weight on the morning after 1,000 g.
    fn level_at(grams: i32) -> Option<Level> {
        let mut script = macaw();
        script.weigh(1, 1_000).weigh(2, grams);
        level_of(&RULE, &script, script.at(2, 8, 0))
    }

    #[test]
    fn each_step_is_reached_at_its_own_value() {
        assert_eq!(level_at(971), None);
        assert_eq!(level_at(970), Some(Level::Watch));
        assert_eq!(level_at(951), Some(Level::Watch));
        assert_eq!(level_at(950), Some(Level::RingBreeder));
        assert_eq!(level_at(901), Some(Level::RingBreeder));
        assert_eq!(level_at(900), Some(Level::VetToday));
    }

    #[test]
    fn coming_back_from_a_full_crop_is_no_loss() {
        let mut script = macaw();
        for day in 1..=5 {
            script.weigh(day, 1_000);
        }
        script.weigh(6, 1_075).weigh(7, 1_000);
        assert_eq!(level_of(&RULE, &script, script.at(7, 8, 0)), None);
        script.weigh(8, 925);
        assert_eq!(
            level_of(&RULE, &script, script.at(8, 8, 0)),
            Some(Level::RingBreeder)
        );
    }

    #[test]
    fn a_loss_over_two_days_is_not_a_loss_in_one() {
        let mut script = macaw();
        script.weigh(1, 1_000).weigh(3, 940);
        assert_eq!(level_of(&RULE, &script, script.at(3, 8, 0)), None);
    }

    #[test]
    fn a_weighing_of_a_day_and_a_half_ago_no_longer_counts() {
        let mut script = macaw();
        script.weigh(1, 1_000).weigh(2, 940);
        assert_eq!(
            level_of(&RULE, &script, script.at(3, 18, 44)),
            Some(Level::RingBreeder)
        );
        assert_eq!(level_of(&RULE, &script, script.at(3, 18, 45)), None);
    }

    #[test]
    fn a_loss_after_a_full_crop_is_counted_from_what_was_expected_before_it() {
        // five mornings at 1,000 g: 985 g are 1.5 % below them, and 4.4 % below the full crop's 1,030 g
        let after_full_crop = |grams| {
            let mut script = macaw();
            for day in 1..=5 {
                script.weigh(day, 1_000);
            }
            script.weigh(6, 1_030).weigh(7, grams);
            found(&RULE, &script, script.at(7, 8, 0))
        };
        assert_eq!(after_full_crop(985), Vec::new());
        let loss = after_full_crop(960)[0].value;
        let Value::Pct(loss) = loss else {
            panic!("{loss:?}")
        };
        assert!((3.0..=5.0).contains(&loss), "{loss}");
    }
}

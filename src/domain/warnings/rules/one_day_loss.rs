//! *Watches* the change from one morning's empty-crop weight to the next.
//!
//! *Limit* 3 %: watch; 5 %: call the breeder, with any sign vet today; 10 %: vet today.
//!
//! *Why* a loss of this size in a single day is more than the scale's noise and more than weaning.
//!
//! *Sources* 5 % called significant and 10 % called an alarm for any parrot on avian weighing pages
//! (read); that they apply to a single day, and the 3 % step: ours. 5 % with any other sign: common
//! practice. The same bird at the same hour varies by 2 to 3 %: a research institute's page.
//!
//! Where the earlier reading lies above what four readings or more before it made expect, the loss
//! counts from there, so that a morning with food in the crop makes no loss on the next one: ours; on made-up
//! healthy chicks most false calls of this rule came so.
//!
//! *Wrong when* the first of the two crops was not empty and there are few readings.

use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, level_reached, pct_finding, sign_seen};
use crate::domain::weight::loss;
use crate::domain::weight::readings;

/// Loss in a day that wants a call, and with any sign the vet, per cent.
pub(crate) const RING_PCT: f64 = 5.0;

/// The rule.
pub const RULE: Rule = Rule {
    name: "one-day-loss",
    limits: &[
        Limit::new(Level::Watch, Value::Pct(3.0)),
        Limit::new(Level::CallBreeder, Value::Pct(RING_PCT)),
        Limit::new(Level::VetToday, Value::Pct(10.0)),
    ],
    standing: Standing::Ours,
    source: "5 % and 10 % as significant and alarming losses: avian weighing pages; for a single day: our own",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let Some(loss) = loss_pct(facts) else {
        return Vec::new();
    };
    let is_recent = readings::latest_empty(facts.now, facts.chick)
        .is_some_and(|latest| facts.now.minutes_since(latest.at) < 36 * 60);
    let reached = level_reached(loss, RULE.limits).filter(|_| is_recent);
    let has_sign = !sign_seen::present(facts.now, facts.chick).is_empty();
    reached
        .map(|(limit, level)| match level {
            Level::CallBreeder if has_sign => (limit, Level::VetToday),
            Level::Settled
            | Level::Watch
            | Level::CallBreeder
            | Level::VetToday
            | Level::Emergency => (limit, level),
        })
        .map(|(limit, level)| pct_finding(RuleId::OneDayLoss, level, loss, limit, Standing::Ours))
        .into_iter()
        .collect()
}

/// Loss in per cent of the earlier reading, or of what was expected before it when that is lower.
fn loss_pct(facts: &Facts<'_>) -> Option<f64> {
    let read = loss::one_day_loss_pct(facts.now, facts.chick)?;
    let latest = facts.trend.latest?;
    let below = |expected_g: f64| 100.0 * (expected_g - latest.sitting.grams) / expected_g;
    Some(
        latest
            .expected_g
            .map_or(read, |expected_g| below(expected_g).min(read)),
    )
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, CropAtWeighing};
    use crate::domain::journal::signs::Sign;
    use crate::domain::quantity::units::Grams;
    use crate::domain::warnings::level::Value;
    use crate::domain::warnings::rules::one_day_loss::*;
    use crate::domain::warnings::rules::trial::{found, level_of, macaw, sign};

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
        assert_eq!(level_at(950), Some(Level::CallBreeder));
        assert_eq!(level_at(901), Some(Level::CallBreeder));
        assert_eq!(level_at(900), Some(Level::VetToday));
    }

    #[test]
    fn two_weighings_of_one_sitting_count_as_their_mean() {
        let second = |grams: i32| {
            let mut script = macaw();
            script.weigh(1, 1_000).weigh(2, 940);
            let weight = Grams::whole(grams);
            let crop = CropAtWeighing::Empty;
            script.note(2, 6, 50, Change::Weighed { weight, crop });
            level_of(&RULE, &script, script.at(2, 7, 0))
        };
        // with 940 g: means of 950 g and 951 g, 5 % and less
        assert_eq!(second(960), Some(Level::CallBreeder));
        assert_eq!(second(962), Some(Level::Watch));
        assert_eq!(second(1_002), None);
    }

    #[test]
    fn five_per_cent_with_any_sign_are_for_the_vet() {
        let level = |grams| {
            let mut script = macaw();
            script.weigh(1, 1_000).weigh(2, grams);
            script.note(2, 7, 0, sign(Sign::BegsAllDay));
            level_of(&RULE, &script, script.at(2, 7, 5))
        };
        assert_eq!(level(951), Some(Level::Watch));
        assert_eq!(level(950), Some(Level::VetToday));
        assert_eq!(level(949), Some(Level::VetToday));
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
            Some(Level::CallBreeder)
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
            Some(Level::CallBreeder)
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

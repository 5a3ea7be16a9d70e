//! *Watches* the empty-crop weighings of the first 24 h at home against the handover weight.
//!
//! *Limit* more than 4 %: watch; 5 %: call the breeder.
//!
//! *Why* a journey costs a little water and food; a larger loss so soon means that the chick came cold,
//! dry or ill.
//!
//! *Sources* 2 to 4 % under the breeder's last figure, from an empty crop and another scale: common practice; a
//! call from 5 % on: worked out from the one-day limits.
//!
//! *Wrong when* the breeder's scale and the one at home differ.

use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, pct_finding};
use crate::domain::weight::loss;
use crate::domain::weight::readings;

/// Weighings this long after the arrival count, minutes.
const FIRST_MINUTES: i64 = 24 * 60;
/// A weighing counts for this long, minutes. Ours.
const SHOWN_MINUTES: i64 = 36 * 60;
/// Loss that is expected, per cent.
const EXPECTED_PCT: f64 = 4.0;
/// Loss that wants a call, per cent.
const RING_PCT: f64 = 5.0;

/// The rule.
pub const RULE: Rule = Rule {
    name: "arrival-loss",
    limits: &[
        Limit::new(Level::Watch, Value::Minutes(FIRST_MINUTES)),
        Limit::new(Level::Watch, Value::Pct(EXPECTED_PCT)),
        Limit::new(Level::CallBreeder, Value::Pct(RING_PCT)),
    ],
    standing: Standing::CommonPractice,
    source: "common practice of breeders",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let chick = facts.chick;
    let is_first = chick
        .arrived
        .as_ref()
        .zip(readings::latest_empty(facts.now, chick))
        .is_some_and(|(arrived, latest)| {
            (0..=FIRST_MINUTES).contains(&latest.at.minutes_since(arrived.at))
                && facts.now.minutes_since(latest.at) <= SHOWN_MINUTES
        });
    let loss = loss::handover_loss_pct(facts.now, chick).filter(|_| is_first);
    let reached = loss.and_then(|loss| {
        if loss >= RING_PCT - 1e-9 {
            Some((loss, RING_PCT, Level::CallBreeder))
        } else if loss > EXPECTED_PCT + 1e-9 {
            Some((loss, EXPECTED_PCT, Level::Watch))
        } else {
            None
        }
    });
    let standing = Standing::CommonPractice;
    reached
        .map(|(loss, limit, level)| pct_finding(RuleId::ArrivalLoss, level, loss, limit, standing))
        .into_iter()
        .collect()
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::Change;
    use crate::domain::warnings::rules::arrival_loss::*;
    use crate::domain::warnings::rules::trial::{level_of, macaw};

    /// The level of a first morning at a weight, against a handover weight of 1,000 g.
    fn level_at(grams: i32) -> Option<Level> {
        let mut script = macaw();
        script.note(0, 18, 0, Change::Arrived).weigh(1, grams);
        level_of(&RULE, &script, script.at(1, 8, 0))
    }

    #[test]
    fn four_per_cent_is_expected_and_five_is_a_call() {
        assert_eq!(level_at(960), None);
        assert_eq!(level_at(959), Some(Level::Watch));
        assert_eq!(level_at(951), Some(Level::Watch));
        assert_eq!(level_at(950), Some(Level::CallBreeder));
        assert_eq!(level_at(900), Some(Level::CallBreeder));
    }

    #[test]
    fn weighings_after_the_first_day_are_other_rules() {
        let mut script = macaw();
        script.note(0, 6, 0, Change::Arrived).weigh(1, 940);
        assert_eq!(level_of(&RULE, &script, script.at(1, 8, 0)), None);
        let mut script = macaw();
        script.weigh(1, 940);
        assert_eq!(level_of(&RULE, &script, script.at(1, 8, 0)), None);
    }

    #[test]
    fn a_weighing_counts_for_a_day_and_a_half() {
        let mut script = macaw();
        script.note(0, 18, 0, Change::Arrived).weigh(1, 950);
        let level = |minute| level_of(&RULE, &script, script.at(2, 18, minute));
        assert_eq!(level(45), Some(Level::CallBreeder));
        assert_eq!(level(46), None);
    }
}

//! *Watches* the change from one morning's empty-crop weight to the next.
//!
//! *Limit* 3 %: watch; 5 %: ring the breeder; 10 %: vet today.
//!
//! *Why* a loss of this size in a single day is more than the scale's noise and more than weaning.
//!
//! *Sources* 5 % called significant and 10 % called an alarm for any parrot on avian weighing pages
//! (read); that they apply to a single day and the 3 % step: ours.
//!
//! *Wrong when* the first of the two crops was not empty.

use crate::domain::evidence::Standing;
use crate::domain::level::{Finding, Level, RuleId};
use crate::domain::rules::{Facts, Rule, level_reached, pct_finding};
use crate::domain::weight;

/// Limits in per cent of the earlier weight.
const LIMITS: [(f64, Level); 3] = [
    (3.0, Level::Watch),
    (5.0, Level::RingBreeder),
    (10.0, Level::VetToday),
];

/// The rule.
pub const RULE: Rule = Rule {
    name: "one-day-loss",
    limits: "loss from one morning to the next: watch at 3 %, ring the breeder at 5 %, vet today at 10 %",
    standing: Standing::Ours,
    source: "5 % and 10 % as significant and alarming losses: avian weighing pages; for a single day: ours",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let Some(loss) = weight::one_day_loss_pct(facts.now, facts.chick) else {
        return Vec::new();
    };
    let is_recent = weight::latest_empty(facts.now, facts.chick)
        .is_some_and(|latest| facts.now.minutes_since(latest.at) < 36 * 60);
    let reached = level_reached(loss, &LIMITS).filter(|_| is_recent);
    reached
        .map(|(limit, level)| pct_finding(RuleId::OneDayLoss, level, loss, limit, Standing::Ours))
        .into_iter()
        .collect()
}

#[cfg(test)]
mod tests {
    use crate::domain::rules::one_day_loss::*;
    use crate::domain::rules::trial::{level_of, macaw};

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
}

//! *Watches* the latest empty-crop weight of a weaned bird against its own stable level.
//!
//! *Limit* 5 %: watch; 10 %: call the breeder; 15 %: vet today; 20 %: emergency. For a bird whose level
//! is below 150 g 10 % is vet today. The level is the median of the mornings of the fourteen days before;
//! where that of the fourteen days up to the weaning is higher, that one counts.
//!
//! *Why* a weaned bird keeps its weight within a few per cent; one that loses a tenth of it eats too
//! little or is ill. A level that follows the weight alone would follow a slow loss down.
//!
//! *Sources* the weight of a weaned parrot is flat and then rises slowly (research-institute weight
//! chart). 10, 15 and 20 % of the total, and the tighter limit for small birds, which have little in
//! reserve: ours, as for the peak. 5 % and the two medians: ours.
//!
//! *Wrong when* two weighings of the last fourteen days had food in the crop.

use crate::domain::homecoming::life_stage;
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{
    Facts, Limit, Rule, SMALL_BELOW, days, level_reached, pct_finding,
};
use crate::domain::weight::mornings::{self, FLAT_DAYS};
use crate::domain::weight::readings;
use crate::domain::weight::sittings;

/// The limits of a bird whose level is below [`SMALL_BELOW`].
const SMALL_LIMITS: &[Limit] = &[
    Limit::new(Level::Watch, Value::Pct(5.0)),
    Limit::new(Level::VetToday, Value::Pct(10.0)),
    Limit::new(Level::Emergency, Value::Pct(20.0)),
];

/// The rule.
pub const RULE: Rule = Rule {
    name: "stable-loss",
    limits: &[
        Limit::new(Level::Watch, days(FLAT_DAYS)),
        Limit::new(Level::Watch, Value::Pct(5.0)),
        Limit::new(Level::CallBreeder, Value::Pct(10.0)),
        Limit::new(Level::VetToday, Value::Grams(SMALL_BELOW)),
        Limit::new(Level::VetToday, Value::Pct(15.0)),
        Limit::new(Level::Emergency, Value::Pct(20.0)),
    ],
    standing: Standing::Ours,
    source: "flat after weaning: weight chart of a research institute; all limits: our own",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let (Some(loss), Some(level_g)) = (loss_pct(facts), level_g(facts)) else {
        return Vec::new();
    };
    let limits = if level_g < SMALL_BELOW.as_g() {
        SMALL_LIMITS
    } else {
        RULE.limits
    };
    let reached = level_reached(loss, limits);
    let finding =
        |(limit, level)| pct_finding(RuleId::StableLoss, level, loss, limit, Standing::Ours);
    reached.map(finding).into_iter().collect()
}

/// The bird's own level before its latest weighing, grams; `None` when it is not weaned.
fn level_g(facts: &Facts<'_>) -> Option<f64> {
    let (now, chick) = (facts.now, facts.chick);
    let latest = readings::latest_empty(now, chick)?.lived().day;
    let weaned = life_stage::weaned_on(now, chick, facts.zone)?;
    let mornings = mornings::mornings(now, chick);
    let at_weaning = mornings::level_g(&mornings, weaned.plus(1 - FLAT_DAYS), weaned);
    let before = mornings::level_g(&mornings, latest.plus(-FLAT_DAYS), latest.plus(-1));
    [at_weaning, before]
        .into_iter()
        .flatten()
        .max_by(f64::total_cmp)
}

fn loss_pct(facts: &Facts<'_>) -> Option<f64> {
    let level_g = level_g(facts)?;
    let latest = sittings::latest(facts.now, facts.chick)?;
    Some((level_g - latest.grams) / level_g * 100.0)
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::Change;
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::warnings::rules::stable_loss::*;
    use crate::domain::warnings::rules::trial::{found, level_of, macaw};

    /// Weaned on day 34 at this weight, which was weighed every morning from day 20.
    fn weaned(grams: i32) -> Scenario {
        let mut script = macaw();
        script.feed(20, 7, 0, Slot::Morning, 80);
        for slot in [Slot::Morning, Slot::Midday, Slot::Bedtime] {
            let by_breeder = true;
            script.note(20, 12, 0, Change::FeedDropped { slot, by_breeder });
        }
        script.note(22, 9, 0, Change::DrinkingSeen);
        for day in 20..=34 {
            script.weigh(day, grams);
        }
        script
    }

    fn level_at(usual: i32, grams: i32) -> Option<Level> {
        let mut script = weaned(usual);
        script.weigh(41, grams);
        level_of(&RULE, &script, script.at(41, 8, 0))
    }

    #[test]
    fn each_step_is_reached_at_its_own_value() {
        // of 900 g: 855, 810, 765 and 720 g
        assert_eq!(level_at(900, 856), None);
        assert_eq!(level_at(900, 855), Some(Level::Watch));
        assert_eq!(level_at(900, 811), Some(Level::Watch));
        assert_eq!(level_at(900, 810), Some(Level::CallBreeder));
        assert_eq!(level_at(900, 766), Some(Level::CallBreeder));
        assert_eq!(level_at(900, 765), Some(Level::VetToday));
        assert_eq!(level_at(900, 721), Some(Level::VetToday));
        assert_eq!(level_at(900, 720), Some(Level::Emergency));
    }

    #[test]
    fn a_small_bird_is_seen_at_ten_per_cent() {
        assert_eq!(level_at(100, 90), Some(Level::VetToday));
        assert_eq!(level_at(100, 91), Some(Level::Watch));
        assert_eq!(level_at(150, 135), Some(Level::CallBreeder));
    }

    #[test]
    fn a_slow_loss_is_held_against_the_weight_at_the_weaning() {
        // 900 g, then 2 % a week: after five weeks 814 g, 9.6 % less, after six 797 g, 11.4 % less
        let mut script = weaned(900);
        for (week, grams) in (1..).zip([882, 864, 847, 830, 814, 797]) {
            script.weigh(34 + 7 * week, grams);
        }
        let level = |day| level_of(&RULE, &script, script.at(day, 8, 0));
        assert_eq!(level(69), Some(Level::Watch));
        assert_eq!(level(76), Some(Level::CallBreeder));
    }

    #[test]
    fn a_bird_that_grew_after_weaning_is_held_against_its_newer_level() {
        let mut script = weaned(900);
        script.weigh(60, 1_000).weigh(67, 1_000).weigh(74, 900);
        let level = level_of(&RULE, &script, script.at(74, 8, 0));
        assert_eq!(level, Some(Level::CallBreeder));
    }

    #[test]
    fn a_chick_that_is_not_weaned_has_no_stable_level() {
        let mut script = macaw();
        for day in 1..=20 {
            script.weigh(day, 900);
        }
        script.weigh(21, 700);
        assert!(found(&RULE, &script, script.at(21, 8, 0)).is_empty());
    }
}

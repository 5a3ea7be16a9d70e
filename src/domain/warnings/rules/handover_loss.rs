//! *Watches* the latest empty-crop weight against the handover weight.
//!
//! *Limit* the plan's loss limit (10 % unless the breeder says otherwise, within 3 to 15 %): call the breeder;
//! half as much again, at most 15 %: vet today (below 150 g at most 10 %); twice as much, at most 20 %:
//! emergency; nine tenths of it (9 %): watch.
//!
//! The plan's limit is what the breeder asked for, so a single reading counts, also where the trend
//! still doubts it.
//!
//! *Why* a chick that loses this much takes in too little or is ill, and has little to lose.
//!
//! *Sources* 10 %: Duerr & Gage (eds), Hand-Rearing Birds, 2nd ed. 2020, p. 599, a drop of around
//! 10 % from the maximum before fledging; Watchbird Nov/Dec 1999, which reports that macaw chicks
//! lost more. 15 %, 20 %, the watch level, the bounds of a plan's limit and the tighter one of small birds,
//! which have little in reserve: ours.
//!
//! *Wrong when* the handover weight was taken with food in the crop, or on another scale. The finding
//! stays until the next empty-crop weighing, however old the last one is.

use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, SMALL_BELOW, level_reached, pct_finding};
use crate::domain::weight::loss;

/// The published limit, per cent.
const PUBLISHED_PCT: f64 = 10.0;
/// Part of the plan's limit that is watched.
const WATCH_TIMES: f64 = 0.9;
/// Multiple of the plan's limit that is for the vet.
const VET_TIMES: f64 = 1.5;
/// Multiple of the plan's limit that is an emergency.
const EMERGENCY_TIMES: f64 = 2.0;

/// The plan's limit lies within these, per cent.
const LEAST_PCT: f64 = 3.0;
/// The most that a plan may ask for, where the vet's level begins, per cent.
const MOST_PCT: f64 = 15.0;

/// The rule.
pub const RULE: Rule = Rule {
    name: "handover-loss",
    limits: &[
        Limit::new(Level::Watch, Value::Times(WATCH_TIMES)),
        Limit::new(Level::Watch, Value::Pct(PUBLISHED_PCT * WATCH_TIMES)),
        Limit::new(Level::CallBreeder, Value::Pct(PUBLISHED_PCT)),
        Limit::new(Level::CallBreeder, Value::Pct(LEAST_PCT)),
        Limit::new(Level::CallBreeder, Value::Pct(MOST_PCT)),
        Limit::new(Level::VetToday, Value::Times(VET_TIMES)),
        Limit::new(Level::VetToday, Value::Pct(PUBLISHED_PCT * VET_TIMES)),
        Limit::new(Level::VetToday, Value::Grams(SMALL_BELOW)),
        Limit::new(Level::VetToday, Value::Pct(PUBLISHED_PCT)),
        Limit::new(Level::Emergency, Value::Times(EMERGENCY_TIMES)),
        Limit::new(
            Level::Emergency,
            Value::Pct(PUBLISHED_PCT * EMERGENCY_TIMES),
        ),
    ],
    standing: Standing::Ours,
    source: "10 %: Duerr & Gage 2020, p. 599; the steps around it: our own; another limit: the breeder's",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let Some(loss) = loss::handover_loss_pct(facts.now, facts.chick) else {
        return Vec::new();
    };
    let limit = facts.chick.plan.loss_limit_in_force().as_pct();
    let reference = facts.chick.plan.reference.map(|reference| reference.weight);
    let vet_at_most = if reference.is_some_and(|weight| weight < SMALL_BELOW) {
        PUBLISHED_PCT
    } else {
        PUBLISHED_PCT * VET_TIMES
    };
    let vet = (limit * VET_TIMES).min(vet_at_most);
    let emergency = (limit * EMERGENCY_TIMES).min(PUBLISHED_PCT * EMERGENCY_TIMES);
    let limits = [
        Limit::new(Level::Watch, Value::Pct(limit * WATCH_TIMES)),
        Limit::new(Level::CallBreeder, Value::Pct(limit)),
        Limit::new(Level::VetToday, Value::Pct(vet)),
        Limit::new(Level::Emergency, Value::Pct(emergency)),
    ];
    let reached = level_reached(loss, &limits).map(|(reached, level)| {
        let is_published = (reached - PUBLISHED_PCT).abs() < 1e-9;
        let standing = match level {
            Level::CallBreeder if is_published => Standing::Published,
            Level::CallBreeder => Standing::CommonPractice,
            Level::Settled | Level::Watch | Level::VetToday | Level::Emergency => Standing::Ours,
        };
        pct_finding(RuleId::HandoverLoss, level, loss, reached, standing)
    });
    reached.into_iter().collect()
}

#[cfg(test)]
mod tests {
    use crate::domain::plan::care_plan::Reference;
    use crate::domain::quantity::units::{Grams, Percent};
    use crate::domain::warnings::rules::handover_loss::*;
    use crate::domain::warnings::rules::trial::{found, level_of, plan, with_plan};

    /// The level at a weight, with a handover weight of 1,000 g and a limit in per cent.
    fn level_at(grams: i32, limit: i32) -> Option<Level> {
        let mut plan = plan();
        plan.loss_limit = Percent::whole(limit);
        let mut script = with_plan(plan);
        script.weigh(1, grams);
        level_of(&RULE, &script, script.at(1, 8, 0))
    }

    #[test]
    fn each_step_is_reached_at_its_own_value() {
        assert_eq!(level_at(1_020, 10), None);
        assert_eq!(level_at(911, 10), None);
        assert_eq!(level_at(910, 10), Some(Level::Watch));
        assert_eq!(level_at(901, 10), Some(Level::Watch));
        assert_eq!(level_at(900, 10), Some(Level::CallBreeder));
        assert_eq!(level_at(851, 10), Some(Level::CallBreeder));
        assert_eq!(level_at(850, 10), Some(Level::VetToday));
        assert_eq!(level_at(801, 10), Some(Level::VetToday));
        assert_eq!(level_at(800, 10), Some(Level::Emergency));
    }

    #[test]
    fn the_breeders_limit_moves_every_step() {
        assert_eq!(level_at(951, 5), Some(Level::Watch));
        assert_eq!(level_at(950, 5), Some(Level::CallBreeder));
        assert_eq!(level_at(900, 5), Some(Level::Emergency));
    }

    #[test]
    fn no_limit_of_a_plan_lies_above_the_vets_levels() {
        // 15 % of 1,000 g: the vet's level, with no call before it; 25 % of an older plan counts as 15 %
        for limit in [15, 25] {
            assert_eq!(level_at(851, limit), Some(Level::Watch), "{limit}");
            assert_eq!(level_at(850, limit), Some(Level::VetToday), "{limit}");
            assert_eq!(level_at(801, limit), Some(Level::VetToday), "{limit}");
            assert_eq!(level_at(800, limit), Some(Level::Emergency), "{limit}");
        }
        // 1 % of an older plan counts as 3 %
        assert_eq!(level_at(971, 1), Some(Level::Watch));
        assert_eq!(level_at(970, 1), Some(Level::CallBreeder));
    }

    #[test]
    fn a_bird_below_150_g_is_for_the_vet_at_ten_per_cent() {
        let level = |reference: i32, grams: i32| {
            let mut plan = plan();
            plan.reference = plan.reference.map(|card| Reference {
                weight: Grams::whole(reference),
                ..card
            });
            let mut script = with_plan(plan);
            script.weigh(1, grams);
            level_of(&RULE, &script, script.at(1, 8, 0))
        };
        assert_eq!(level(100, 91), Some(Level::Watch));
        assert_eq!(level(100, 90), Some(Level::VetToday));
        assert_eq!(level(100, 89), Some(Level::VetToday));
        assert_eq!(level(150, 135), Some(Level::CallBreeder));
    }

    #[test]
    fn only_the_ten_per_cent_is_called_published() {
        let mut script = with_plan(plan());
        script.weigh(1, 890);
        let standing = found(&RULE, &script, script.at(1, 8, 0))[0].standing;
        assert_eq!(standing, Standing::Published);
        script.weigh(2, 840);
        let standing = found(&RULE, &script, script.at(2, 8, 0))[0].standing;
        assert_eq!(standing, Standing::Ours);
    }

    #[test]
    fn another_limit_than_the_published_one_is_the_breeders() {
        let mut plan = plan();
        plan.loss_limit = Percent::whole(5);
        let mut script = with_plan(plan);
        script.weigh(1, 950);
        let standing = found(&RULE, &script, script.at(1, 8, 0))[0].standing;
        assert_eq!(standing, Standing::CommonPractice);
    }

    #[test]
    fn without_a_handover_weight_there_is_nothing_to_compare() {
        let mut plan = plan();
        plan.reference = None;
        let mut script = with_plan(plan);
        script.weigh(1, 500);
        assert_eq!(level_of(&RULE, &script, script.at(1, 8, 0)), None);
    }
}

//! *Watches* the latest empty-crop weight against the handover weight.
//!
//! *Limit* the plan's loss limit (10 % unless the breeder says otherwise): ring the breeder; half as
//! much again (15 %): vet today; twice as much (20 %): emergency; seven tenths of it (7 %): watch.
//!
//! *Why* a chick that loses this much takes in too little or is ill, and has little to lose.
//!
//! *Sources* 10 %: Duerr & Gage (eds), Hand-Rearing Birds, 2nd ed. 2020, p. 599, a drop of around
//! 10 % from the maximum before fledging; Watchbird Nov/Dec 1999, which reports that macaw chicks
//! lost more. 15 %, 20 % and the watch level: ours.
//!
//! *Wrong when* the handover weight was taken with food in the crop, or on another scale.

use crate::domain::evidence::Standing;
use crate::domain::level::{Finding, Level, RuleId};
use crate::domain::rules::{Facts, Rule, level_reached, pct_finding};
use crate::domain::weight;

/// The rule.
pub const RULE: Rule = Rule {
    name: "handover-loss",
    limits: "loss against the handover weight: watch at 0.7 × the plan's limit, ring the breeder at the limit (10 %), vet today at 1.5 × (15 %), emergency at 2 × (20 %)",
    standing: Standing::Ours,
    source: "10 %: Duerr & Gage 2020, p. 599; the steps around it: ours",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let Some(loss) = weight::handover_loss_pct(facts.now, facts.chick) else {
        return Vec::new();
    };
    let limit = facts.chick.plan.loss_limit.as_pct();
    let limits = [
        (limit * 0.7, Level::Watch),
        (limit, Level::RingBreeder),
        (limit * 1.5, Level::VetToday),
        (limit * 2.0, Level::Emergency),
    ];
    let reached = level_reached(loss, &limits).map(|(reached, level)| {
        let standing = if level == Level::RingBreeder {
            Standing::Published
        } else {
            Standing::Ours
        };
        pct_finding(RuleId::HandoverLoss, level, loss, reached, standing)
    });
    reached.into_iter().collect()
}

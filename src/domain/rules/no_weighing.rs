//! *Watches* how long ago the chick was last weighed with an empty crop.
//!
//! *Limit* 36 h: watch; 72 h: ring the breeder.
//!
//! *Why* weight is the only early sign an owner can measure; every other rule is blind without it.
//!
//! *Sources* weighing daily during hand-feeding: Duerr & Gage 2020, p. 599. 36 h and 72 h: ours.
//!
//! *Wrong when* the weighing was done and not noted.

use crate::domain::evidence::Standing;
use crate::domain::level::{Finding, Level, RuleId, Value};
use crate::domain::rules::{Facts, Rule};
use crate::domain::weight;

/// Minutes without an empty-crop weighing that want a look, 36 h.
pub const WATCH_MINUTES: i64 = 36 * 60;
/// Minutes without an empty-crop weighing that want a call, 72 h.
pub const RING_MINUTES: i64 = 72 * 60;

/// The rule.
pub const RULE: Rule = Rule {
    name: "no-weighing",
    limits: "no empty-crop weighing: watch at 36 h, ring the breeder at 72 h",
    standing: Standing::Ours,
    source: "daily weighing: Duerr & Gage 2020, p. 599; the hours: ours",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let chick = facts.chick;
    let start = chick
        .arrived
        .as_ref()
        .map_or(chick.added_at, |arrived| arrived.at.max(chick.added_at));
    let since = weight::latest_empty(facts.now, chick).map_or(start, |weighing| weighing.at);
    let minutes = facts.now.minutes_since(since);
    let (level, limit) = match minutes {
        RING_MINUTES.. => (Level::RingBreeder, RING_MINUTES),
        WATCH_MINUTES.. => (Level::Watch, WATCH_MINUTES),
        _ => return Vec::new(),
    };
    vec![Finding {
        rule: RuleId::NoWeighing,
        level,
        value: Value::Minutes(minutes),
        limit: Value::Minutes(limit),
        standing: Standing::Ours,
    }]
}

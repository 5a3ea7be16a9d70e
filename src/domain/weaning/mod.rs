//! Weaning: which feed may go next, what speaks against it, and when a feed is to come back.
//!
//! **Invariants.** The app offers a drop only when every check says yes; what is not known is never a
//! yes. Age is shown and never decides. A feed is to be offered again whenever a trigger holds and a
//! feed is gone, settle-in or not. The breeder may decide otherwise: that is an entry, not an offer.

pub mod criteria;
pub mod facts;
pub mod stage;
mod three_days;
pub mod triggers;

use crate::domain::journal::chick::Chick;
use crate::domain::plan::care_plan::Slot;
use crate::domain::plan::species::Weeks;
use crate::domain::time::moment::{Age, Day, Moment};
use crate::domain::weaning::criteria::{Check, Criterion};
use crate::domain::weaning::facts::{Answer, WeaningFacts};
use crate::domain::weaning::stage::Stage;
use crate::domain::weaning::triggers::{Trigger, TriggerCheck};
use crate::domain::weight::mornings::{self, Morning};

/// What the app says about dropping a feed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Verdict {
    /// This feed may be dropped.
    MayDrop(Slot),
    /// No feed may be dropped yet.
    NotYet {
        /// The criteria that are not met, the weightiest first; those answered no before those not
        /// known.
        reasons: Vec<Criterion>,
        /// The first day on which all of them can be met, if all goes well from now on; `None` when
        /// no day can be named.
        earliest_day: Option<Day>,
    },
    /// A feed that was dropped is to be offered again.
    BringBack {
        /// The feed dropped last.
        slot: Slot,
        /// Why.
        triggers: Vec<Trigger>,
    },
    /// No feed is left.
    NothingToDrop,
}

/// The chick's age beside its species' usual ages. For information: it decides nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AgeNote {
    /// The age.
    pub age: Age,
    /// Ages at which the species is commonly weaned.
    pub window: Option<Weeks>,
}

/// Weaning at one moment.
#[derive(Debug, Clone, PartialEq)]
pub struct Weaning {
    /// How far it has come.
    pub stage: Stage,
    /// What the app says.
    pub verdict: Verdict,
    /// The feeds still given, in the order in which they go.
    pub order: Vec<Slot>,
    /// The feeds of the plan that are dropped, in the order in which they went.
    pub dropped: Vec<Slot>,
    /// What must hold before the next feed goes; empty when no feed is left.
    pub checks: Vec<Check>,
    /// What brings the last dropped feed back; empty when none is dropped.
    pub triggers: Vec<TriggerCheck>,
    /// Mornings with an unchanged weight that would make the weight steady; `None` when it is.
    pub steady_mornings_needed: Option<i32>,
    /// The age, when the hatch day is known.
    pub age: Option<AgeNote>,
    /// Whether somebody is to be rung before anything else is done.
    pub is_call_first: bool,
}

impl Weaning {
    /// The feed that goes next.
    pub fn next(&self) -> Option<Slot> {
        self.order.first().copied()
    }

    /// The check of one criterion.
    pub fn check(&self, criterion: Criterion) -> Option<&Check> {
        self.checks
            .iter()
            .find(|check| check.criterion == criterion)
    }

    /// The check of one trigger.
    pub fn trigger(&self, trigger: Trigger) -> Option<&TriggerCheck> {
        self.triggers.iter().find(|check| check.trigger == trigger)
    }
}

/// Judges where weaning stands and what may be done.
pub fn assess(facts: &WeaningFacts<'_>) -> Weaning {
    let chick = facts.chick;
    let today = facts.today();
    let mornings = mornings::mornings(facts.now, chick);
    let order = feeds_in_order(facts.now, chick);
    let mut dropped = chick.dropped_slots(facts.now);
    dropped.retain(|slot| chick.plan.feed(*slot).is_some());
    let checks = order
        .first()
        .map(|slot| criteria::checks(facts, &mornings, *slot))
        .unwrap_or_default();
    let triggers = dropped
        .last()
        .map(|slot| triggers::checks(facts, *slot))
        .unwrap_or_default();
    let held: Vec<Trigger> = triggers
        .iter()
        .filter(|check| check.answer == Answer::Yes)
        .map(|check| check.trigger)
        .collect();
    let verdict = match (dropped.last(), order.first()) {
        (Some(slot), _) if !held.is_empty() && !facts.is_feeding_forbidden => Verdict::BringBack {
            slot: *slot,
            triggers: held,
        },
        (_, Some(_)) if facts.is_feeding_forbidden => Verdict::NotYet {
            reasons: vec![Criterion::NobodyToCall],
            earliest_day: None,
        },
        (_, None) => Verdict::NothingToDrop,
        (_, Some(slot)) => drop_verdict(*slot, &checks),
    };
    let age = chick
        .plan
        .hatched
        .and_then(|hatched| Age::on(today, hatched))
        .map(|age| AgeNote {
            age,
            window: chick
                .plan
                .species
                .profile()
                .weaning
                .map(|weaning| weaning.value),
        });
    Weaning {
        stage: stage::stage(facts, &mornings, &order, &dropped),
        verdict,
        order,
        dropped,
        checks,
        triggers,
        steady_mornings_needed: steady_mornings_needed(&mornings, today),
        age,
        is_call_first: facts.level.is_call(),
    }
}

/// Whether the screen may offer to drop this feed without the breeder's decision.
pub fn may_offer_drop(weaning: &Weaning, slot: Slot) -> bool {
    weaning.verdict == Verdict::MayDrop(slot)
}

fn drop_verdict(slot: Slot, checks: &[Check]) -> Verdict {
    let reasons = criteria::reasons(checks);
    if reasons.is_empty() {
        Verdict::MayDrop(slot)
    } else {
        Verdict::NotYet {
            reasons,
            earliest_day: criteria::earliest_day(checks),
        }
    }
}

fn steady_mornings_needed(mornings: &[Morning], today: Day) -> Option<i32> {
    let slope = mornings::slope_pct_per_day(mornings, today);
    let is_steady = slope.is_some_and(mornings::is_steady);
    (!is_steady).then(|| mornings::steady_mornings_needed(mornings, today))
}

/// The feeds still given, in the plan's drop order; feeds that the plan's order leaves out come after
/// it in the usual order.
fn feeds_in_order(now: Moment, chick: &Chick) -> Vec<Slot> {
    let in_force: Vec<Slot> = chick
        .feeds_in_force(now)
        .into_iter()
        .map(|feed| feed.slot)
        .collect();
    let mut order: Vec<Slot> = Vec::new();
    for slot in chick.plan.drop_order.iter().chain(&Slot::DROP_ORDER) {
        if in_force.contains(slot) && !order.contains(slot) {
            order.push(*slot);
        }
    }
    order
}

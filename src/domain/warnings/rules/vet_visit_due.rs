//! *Watches* whether a vet was rung or seen after the arrival.
//!
//! *Limit* nobody noted one 72 h after the arrival: watch, for two weeks. A reminder: it raises no level.
//!
//! *Why* a first look finds what a first-time owner cannot see, and the vet knows the chick when it is
//! ill one day.
//!
//! *Sources* a first visit within 48 to 72 h: common practice (breeders' contracts; 24 h to 7 days are
//! given). That any call noted to a vet counts, and the two weeks: ours.
//!
//! *Wrong when* the visit took place and was not noted.

use crate::domain::journal::chick::Chick;
use crate::domain::plan::care_plan::Role;
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, minutes_finding};

/// The first visit is due this long after the arrival, minutes.
const DUE_MINUTES: i64 = 72 * 60;
/// The finding ends this long after the arrival, minutes: two weeks.
const SHOWN_MINUTES: i64 = 14 * 24 * 60;

/// The rule.
pub const RULE: Rule = Rule {
    name: "vet-visit-due",
    limits: &[
        Limit::new(Level::Watch, Value::Minutes(DUE_MINUTES)),
        Limit::new(Level::Watch, Value::Minutes(SHOWN_MINUTES)),
    ],
    standing: Standing::CommonPractice,
    source: "first visit within 48 to 72 h: breeders' contracts",
    check,
};

/// Whether a vet was called or seen since the arrival; `None` while nobody noted that it arrived.
pub fn is_vet_seen(chick: &Chick) -> Option<bool> {
    let arrived = chick.arrived.as_ref()?;
    let is_vet = |whom: Role| match whom {
        Role::AvianVet | Role::EmergencyVet => true,
        Role::Breeder => false,
    };
    let mut calls = chick.calls.iter();
    Some(calls.any(|call| call.at >= arrived.at && is_vet(call.what.whom)))
}

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let Some(arrived) = &facts.chick.arrived else {
        return Vec::new();
    };
    let is_seen = is_vet_seen(facts.chick) == Some(true);
    let minutes = facts.now.minutes_since(arrived.at);
    if is_seen || !(DUE_MINUTES..=SHOWN_MINUTES).contains(&minutes) {
        return Vec::new();
    }
    vec![minutes_finding(
        RuleId::VetVisitDue,
        Level::Watch,
        minutes,
        DUE_MINUTES,
        Standing::CommonPractice,
    )]
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::Change;
    use crate::domain::warnings::rules::trial::{level_of, macaw};
    use crate::domain::warnings::rules::vet_visit_due::*;

    fn called(whom: Role) -> Change {
        let agreed = String::new();
        Change::Called { whom, agreed }
    }

    #[test]
    fn the_visit_is_due_after_three_days_and_asked_for_two_weeks() {
        let mut script = macaw();
        script.note(0, 12, 0, Change::Arrived);
        let level = |day, hour, minute| level_of(&RULE, &script, script.at(day, hour, minute));
        assert_eq!(level(3, 11, 59), None);
        assert_eq!(level(3, 12, 0), Some(Level::Watch));
        assert_eq!(level(14, 12, 0), Some(Level::Watch));
        assert_eq!(level(14, 12, 1), None);
    }

    #[test]
    fn a_vet_ends_it_and_the_breeder_or_a_call_before_the_arrival_does_not() {
        let mut script = macaw();
        script.note(0, 11, 0, called(Role::AvianVet));
        script.note(0, 12, 0, Change::Arrived);
        script.note(1, 9, 0, called(Role::Breeder));
        let now = script.at(4, 9, 0);
        assert_eq!(level_of(&RULE, &script, now), Some(Level::Watch));
        script.note(2, 9, 0, called(Role::AvianVet));
        assert_eq!(level_of(&RULE, &script, now), None);
    }

    #[test]
    fn before_the_arrival_no_visit_is_due() {
        let script = macaw();
        assert_eq!(level_of(&RULE, &script, script.at(9, 9, 0)), None);
    }
}

//! *Watches* whether a vet has seen it after the arrival.
//!
//! *Limit* nobody noted a visit 72 h after the arrival: watch, for two weeks. A reminder: it raises no level.
//!
//! *Why* a first look finds what a first-time owner cannot see, and the vet knows the chick when it is
//! ill one day.
//!
//! *Sources* a first visit within 48 to 72 h: common practice (breeders' contracts; 24 h to 7 days are
//! given). That an appointment still to come answers it, and the two weeks: ours.
//!
//! *Wrong when* the visit took place and was not noted.

use crate::domain::homecoming::vet_visit::{VetContact, booked};
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

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let Some(arrived) = &facts.chick.arrived else {
        return Vec::new();
    };
    let is_seen = VetContact::of(facts.chick).is_seen();
    let booked = booked(facts.now, facts.zone.lived(facts.now), facts.chick);
    let is_to_come = booked.is_some_and(|booked| !booked.is_past);
    let minutes = facts.now.minutes_since(arrived.at);
    if is_seen || is_to_come || !(DUE_MINUTES..=SHOWN_MINUTES).contains(&minutes) {
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
    use crate::domain::plan::care_plan::Role;
    use crate::domain::time::moment::{Lived, Offset, WallTime};
    use crate::domain::warnings::rules::trial::{level_of, macaw};
    use crate::domain::warnings::rules::vet_visit_due::*;

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
    fn a_visit_ends_it_and_a_call_or_a_visit_before_the_arrival_does_not() {
        let seen = || Change::VetSeen {
            said: String::new(),
        };
        let mut script = macaw();
        script.note(0, 11, 0, seen());
        script.note(0, 12, 0, Change::Arrived);
        let (whom, agreed) = (Role::AvianVet, String::new());
        script.note(2, 9, 0, Change::Called { whom, agreed });
        let now = script.at(4, 9, 0);
        assert_eq!(level_of(&RULE, &script, now), Some(Level::Watch));
        script.note(4, 8, 0, seen());
        assert_eq!(level_of(&RULE, &script, now), None);
    }

    #[test]
    fn an_appointment_answers_it_until_its_time() {
        let mut script = macaw();
        script.note(0, 12, 0, Change::Arrived);
        let on = Lived {
            day: script.at(5, 0, 0).lived(Offset::UTC).day,
            time: WallTime::from_hour(10),
        };
        script.note(1, 9, 0, Change::VetBooked { on });
        let level = |day, hour, minute| level_of(&RULE, &script, script.at(day, hour, minute));
        assert_eq!(level(5, 9, 59), None);
        assert_eq!(level(5, 10, 0), Some(Level::Watch));
    }

    #[test]
    fn before_the_arrival_no_visit_is_due() {
        let script = macaw();
        assert_eq!(level_of(&RULE, &script, script.at(9, 9, 0)), None);
    }
}

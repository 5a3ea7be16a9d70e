//! What is known of a vet since the chick came home: a call, a visit, an appointment. A call is no visit.

use crate::domain::journal::chick::{Chick, Noted};
use crate::domain::plan::care_plan::Role;
use crate::domain::time::moment::{Day, Lived, Moment};

/// Days for which an appointment that has passed is asked about. Ours: as long as a first visit is asked for.
const ASKED_DAYS: i32 = 14;

/// The most that a vet has done for a chick since it came home.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum VetContact {
    /// Nobody noted that it arrived, so nothing is counted.
    NotHome,
    /// Neither a call nor a visit is noted.
    None,
    /// A vet was called last on this day, and has not seen it.
    Called(Day),
    /// A vet saw it last on this day.
    Seen(Day),
}

impl VetContact {
    /// Since the arrival of a chick.
    pub fn of(chick: &Chick) -> Self {
        let Some(arrived) = &chick.arrived else {
            return Self::NotHome;
        };
        let is_vet = |whom: Role| match whom {
            Role::AvianVet | Role::EmergencyVet => true,
            Role::Breeder => false,
        };
        let mut visits = chick.vet_visits.iter().rev();
        if let Some(visit) = visits.find(|visit| visit.at >= arrived.at) {
            return Self::Seen(visit.lived().day);
        }
        let mut calls = chick.calls.iter().rev();
        let call = calls.find(|call| call.at >= arrived.at && is_vet(call.what.whom));
        call.map_or(Self::None, |call| Self::Called(call.lived().day))
    }

    /// Whether a vet saw it.
    pub const fn is_seen(self) -> bool {
        match self {
            Self::Seen(_) => true,
            Self::NotHome | Self::None | Self::Called(_) => false,
        }
    }
}

/// An appointment that is still open.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Booked {
    /// For when.
    pub on: Lived,
    /// Whether its time has passed, so that it is asked whether a vet saw it.
    pub is_past: bool,
}

/// The appointment noted last, until a visit is noted after it, and for two weeks after its day.
///
/// `lived` is the day and time where the chick is, at `now`.
pub fn booked(now: Moment, lived: Lived, chick: &Chick) -> Option<Booked> {
    let noted = chick.vet_booked.as_ref().filter(|noted| noted.at <= now)?;
    let is_over = |visit: &Noted<String>| noted.at < visit.at;
    let is_open = !chick.vet_visits.iter().any(is_over);
    let is_shown = lived.day.since(noted.what.day) <= ASKED_DAYS;
    (is_open && is_shown).then_some(Booked {
        on: noted.what,
        is_past: noted.what <= lived,
    })
}

#[cfg(test)]
mod tests {
    use crate::domain::homecoming::vet_visit::*;
    use crate::domain::journal::entries::Change;
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::time::moment::{Offset, WallTime};
    use crate::domain::warnings::rules::trial::macaw;

    fn called(whom: Role) -> Change {
        let agreed = String::new();
        Change::Called { whom, agreed }
    }

    fn seen(said: &str) -> Change {
        Change::VetSeen {
            said: said.to_owned(),
        }
    }

    #[test]
    fn a_call_is_no_visit_and_one_before_the_arrival_counts_for_nothing() {
        let mut script = macaw();
        let day = |script: &Scenario, day| script.at(day, 12, 0).lived(Offset::UTC).day;
        script.note(0, 11, 0, seen("healthy"));
        assert_eq!(
            VetContact::of(&script.chick().unwrap()),
            VetContact::NotHome
        );
        script.note(0, 12, 0, Change::Arrived);
        assert_eq!(VetContact::of(&script.chick().unwrap()), VetContact::None);
        script.note(1, 9, 0, called(Role::Breeder));
        assert_eq!(VetContact::of(&script.chick().unwrap()), VetContact::None);
        script.note(2, 9, 0, called(Role::EmergencyVet));
        let contact = VetContact::of(&script.chick().unwrap());
        assert_eq!(contact, VetContact::Called(day(&script, 2)));
        assert!(!contact.is_seen());
        script.note(3, 9, 0, seen(""));
        script.note(4, 9, 0, called(Role::AvianVet));
        let contact = VetContact::of(&script.chick().unwrap());
        assert_eq!(contact, VetContact::Seen(day(&script, 3)));
        assert!(contact.is_seen());
    }

    #[test]
    fn an_appointment_stands_until_the_visit_and_is_asked_about_for_two_weeks() {
        let mut script = macaw();
        script.note(0, 12, 0, Change::Arrived);
        let on = Lived {
            day: script.at(3, 0, 0).lived(Offset::UTC).day,
            time: WallTime::from_minutes(10 * 60 + 30),
        };
        script.note(1, 9, 0, Change::VetBooked { on });
        let open = |script: &Scenario, day, hour, minute| {
            let now = script.at(day, hour, minute);
            booked(now, now.lived(Offset::UTC), &script.chick().unwrap())
        };
        let told = |is_past| Some(Booked { on, is_past });
        assert_eq!(open(&script, 1, 8, 59), None);
        assert_eq!(open(&script, 3, 10, 29), told(false));
        assert_eq!(open(&script, 3, 10, 30), told(true));
        assert_eq!(open(&script, 17, 23, 59), told(true));
        assert_eq!(open(&script, 18, 0, 0), None);
        script.note(3, 11, 0, seen("healthy"));
        assert_eq!(open(&script, 3, 12, 0), None);
        // Another one is made there.
        let again = Lived {
            day: on.day.plus(30),
            ..on
        };
        script.note(3, 11, 5, Change::VetBooked { on: again });
        assert_eq!(open(&script, 3, 12, 0).map(|booked| booked.on), Some(again));
    }
}

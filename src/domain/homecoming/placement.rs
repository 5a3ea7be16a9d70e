//! Where a breeder's chick is: with her, reserved, on the way, placed, weaned, put away.
//!
//! **Invariant.** Only what was noted moves a chick from one group to the next; a chick that left is never
//! told to be with its breeder, unless it was given back.

use crate::domain::homecoming::departure::is_back;
use crate::domain::homecoming::life_stage::LifeStage;
use crate::domain::journal::chick::Chick;
use crate::domain::time::moment::Moment;

/// A group of a breeder's chicks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Place {
    /// It has not left, and nobody is named who takes it; or it was given back.
    WithMe,
    /// It has not left, and its owner is named.
    Reserved,
    /// Between leaving and arriving.
    OnTheWay,
    /// In its new home, not weaned.
    Placed,
    /// In its new home, weaned.
    Weaned,
    /// Grown or dead, or put away by whoever follows it.
    Archived,
}

impl Place {
    /// Every group in the order of a life.
    pub const ALL: [Self; 6] = [
        Self::WithMe,
        Self::Reserved,
        Self::OnTheWay,
        Self::Placed,
        Self::Weaned,
        Self::Archived,
    ];

    /// Whether somebody else carries the chick.
    pub const fn is_elsewhere(self) -> bool {
        match self {
            Self::WithMe | Self::Reserved => false,
            Self::OnTheWay | Self::Placed | Self::Weaned | Self::Archived => true,
        }
    }
}

/// The group of a chick in this stage at `now`.
pub fn place(now: Moment, stage: LifeStage, chick: &Chick, is_put_away: bool) -> Place {
    if is_put_away {
        return Place::Archived;
    }
    match stage {
        LifeStage::Grown | LifeStage::Died => Place::Archived,
        LifeStage::WithBreeder if chick.plan.owner_name.is_empty() => Place::WithMe,
        LifeStage::WithBreeder => Place::Reserved,
        LifeStage::OnTheWay => Place::OnTheWay,
        LifeStage::SettlingIn | LifeStage::Weaning | LifeStage::Weaned if is_back(now, chick) => {
            Place::WithMe
        }
        LifeStage::SettlingIn | LifeStage::Weaning => Place::Placed,
        LifeStage::Weaned => Place::Weaned,
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::homecoming::departure::left_at;
    use crate::domain::homecoming::life_stage::life_stage;
    use crate::domain::homecoming::placement::*;
    use crate::domain::journal::entries::{Carer, Change, ChickId};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::{CarePlan, ClockShift, Journey, Slot};
    use crate::domain::plan::species::Species;
    use crate::domain::time::moment::{Day, Offset};

    fn handed(to: Carer) -> Change {
        let name = String::new();
        Change::HandedOver { to, name }
    }

    /// A chick that its breeder typed in on day 0 as being with her.
    fn bred(plan: CarePlan) -> Scenario {
        let day = Day::from_date(2026, 11, 2).unwrap();
        let mut script = Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC);
        let sets = vec![script.journal().entries()[0].id];
        let said_by = String::new();
        script.note(0, 5, 0, Change::PartAgreed { sets, said_by });
        script.note(0, 5, 0, handed(Carer::Breeder));
        script
    }

    fn macaw() -> CarePlan {
        CarePlan::default_for(Species::GreenWingedMacaw)
    }

    fn stage(script: &Scenario, day: i32) -> LifeStage {
        let chick = script.chick().unwrap();
        life_stage(script.at(day, 12, 0), &chick, &script.zone())
    }

    fn group(script: &Scenario, day: i32) -> Place {
        let now = script.at(day, 12, 0);
        place(now, stage(script, day), &script.chick().unwrap(), false)
    }

    #[test]
    fn a_breeder_s_chick_stays_with_her_until_something_says_that_it_left() {
        let mut script = bred(macaw());
        assert_eq!(group(&script, 0), Place::WithMe);
        script.weigh(40, 1_000);
        assert_eq!(group(&script, 40), Place::WithMe, "weighing is no leaving");
        assert_eq!(left_at(&script.chick().unwrap()), None);
        let mut arrived = script.clone();
        arrived.note(41, 9, 0, Change::Arrived);
        assert_eq!(group(&arrived, 41), Place::Placed);
        assert_eq!(
            left_at(&arrived.chick().unwrap()),
            Some(script.at(41, 9, 0))
        );
        let mut given = script.clone();
        given.note(41, 10, 0, handed(Carer::Owner));
        assert_eq!(group(&given, 41), Place::Placed);
        assert_eq!(left_at(&given.chick().unwrap()), Some(script.at(41, 10, 0)));
        let sets = vec![script.chick().unwrap().plans.added().id];
        script.note(41, 11, 0, Change::PartTaken { sets });
        assert_eq!(group(&script, 41), Place::Placed, "its owner took the card");
    }

    #[test]
    fn a_chick_given_back_is_with_its_breeder_until_it_is_handed_on() {
        let mut script = bred(macaw());
        script.note(41, 10, 0, handed(Carer::Owner));
        assert_eq!(group(&script, 50), Place::Placed);
        script.note(51, 10, 0, handed(Carer::Breeder));
        assert_eq!(group(&script, 50), Place::Placed, "not before");
        assert_eq!(group(&script, 51), Place::WithMe);
        script.note(60, 10, 0, handed(Carer::Owner));
        assert_eq!(group(&script, 60), Place::Placed);
    }

    /// Who typed a chick in without saying that it is with its breeder is asked for feeds.
    #[test]
    fn a_chick_that_nobody_noted_to_be_with_its_breeder_is_at_home() {
        let day = Day::from_date(2026, 11, 2).unwrap();
        let script = Scenario::new(ChickId([7; 12]), macaw(), day, Offset::UTC);
        assert_eq!(stage(&script, 0), LifeStage::SettlingIn);
        let mut handed_back = script.clone();
        handed_back.note(3, 9, 0, handed(Carer::Breeder));
        assert_eq!(stage(&handed_back, 3), LifeStage::SettlingIn);
    }

    #[test]
    fn an_owner_s_name_reserves_and_a_journey_takes_it_on_the_way() {
        let mut plan = macaw();
        plan.owner_name = "Mira".to_owned();
        assert_eq!(group(&bred(plan.clone()), 1), Place::Reserved);
        let left = bred(macaw()).at(2, 8, 0);
        plan.journey = Some(Journey {
            left,
            expected: left.plus_minutes(600),
            breeder_offset: Offset::UTC,
            shift: ClockShift::AtOnce,
            last_fed: None,
        });
        let script = bred(plan);
        assert_eq!(group(&script, 1), Place::Reserved);
        assert_eq!(group(&script, 2), Place::OnTheWay);
        assert_eq!(left_at(&script.chick().unwrap()), Some(left));
    }

    #[test]
    fn what_is_grown_dead_or_put_away_is_archived() {
        let script = bred(macaw());
        let chick = script.chick().unwrap();
        let place = |stage, is_put_away| place(script.at(1, 12, 0), stage, &chick, is_put_away);
        assert_eq!(place(LifeStage::Weaned, false), Place::Weaned);
        for stage in LifeStage::ALL {
            assert_eq!(place(stage, true), Place::Archived);
        }
        for stage in [LifeStage::Grown, LifeStage::Died] {
            assert_eq!(place(stage, false), Place::Archived);
        }
        let elsewhere = Place::ALL.map(Place::is_elsewhere);
        assert_eq!(elsewhere, [false, false, true, true, true, true]);
    }

    /// On the owner's phone the note that the breeder has it is never there: it is no part of a card.
    #[test]
    fn a_card_does_not_carry_where_the_chick_was() {
        let mut script = bred(macaw());
        script.feed(0, 7, 0, Slot::Morning, 60);
        let journal = script.journal();
        let card = journal.entries_of_plan(ChickId([7; 12]));
        let is_handed = |change: &Change| matches!(change, Change::HandedOver { .. });
        assert!(!card.iter().any(|entry| is_handed(&entry.change)));
    }
}

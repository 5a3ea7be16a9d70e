//! The made-up chick for a first look. Every number in it is invented.

use crate::domain::journal::entries::{
    Change, ChickId, CropFeel, CropState, Droppings, Journal, Response, SolidsEaten,
};
use crate::domain::journal::scenario::Scenario;
use crate::domain::plan::care_plan::{CarePlan, Contact, PlannedFeed, Reference, Role};
use crate::domain::plan::species::Species;
use crate::domain::quantity::units::{Grams, Millilitres};
use crate::domain::time::moment::{Day, Moment};
use crate::domain::time::zone::Zone;

/// Days that the made-up chick has been in its new home.
const DAYS: i32 = 12;

/// Morning weights of the days, g: a dip after the move, then a slow healthy loss.
const MORNINGS: [i32; 12] = [
    1_040, 1_028, 1_021, 1_018, 1_022, 1_025, 1_023, 1_019, 1_016, 1_014, 1_013, 1_012,
];

/// What the made-up chick's people have typed, in the language of whoever looks at it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Typed {
    /// Number of its ring.
    pub ring: &'static str,
    /// Name of the breeder.
    pub breeder: &'static str,
    /// Name of the avian vet.
    pub vet: &'static str,
    /// Solid foods on offer.
    pub solids: &'static str,
    /// The solid food that it eats of.
    pub food: &'static str,
    /// What was agreed on the first visit.
    pub visit: &'static str,
}

/// The journal of the made-up chick, its last entries this morning.
pub fn journal(now: Moment, zone: &Zone, typed: Typed) -> Journal {
    let today = zone.lived(now).day;
    let plan = plan(today, typed);
    let offset = zone.offset_at(now);
    let mut script = Scenario::new(ChickId(*b"made-up-chck"), plan, today.plus(-DAYS), offset);
    script.note(0, 12, 0, Change::Arrived);
    script.note(
        2,
        10,
        0,
        Change::VetSeen {
            said: typed.visit.to_owned(),
        },
    );
    for (day, grams) in (1..=DAYS).zip(MORNINGS) {
        script.weigh(day, grams);
        script.food(day, 7, 5, 60);
        script.note(
            day,
            9,
            30,
            Change::DroppingsSeen {
                look: Droppings::Normal,
            },
        );
        match day % 3 {
            0 => script.note(day, 14, 0, refused()),
            _ => script.note(day, 14, 5, part_taken()),
        };
        let food = typed.food.to_owned();
        script.note(
            day,
            16,
            0,
            Change::SolidsSeen {
                what: food,
                eaten: SolidsEaten::Little,
            },
        );
        script.note(
            day,
            20,
            30,
            Change::CropSeen {
                state: CropState::Flat,
                feel: CropFeel::Soft,
            },
        );
        script.food(day, 21, 0, 60);
    }
    let until_now = script
        .journal()
        .entries()
        .iter()
        .filter(|entry| entry.at <= now)
        .cloned()
        .collect();
    Journal::from_entries(until_now)
}

/// A feed of 60 ml that was not wanted.
const fn refused() -> Change {
    Change::FeedRefused {
        counts_as: None,
        offered: Millilitres::whole(60),
    }
}

/// The breeder's plan for it, as it stands on `today`.
fn plan(today: Day, typed: Typed) -> CarePlan {
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    "Saffron".clone_into(&mut plan.name);
    typed.ring.clone_into(&mut plan.ring);
    plan.hatched = Some(today.plus(-93));
    plan.reference = Some(Reference {
        weight: Grams::whole(1_040),
        day: today.plus(-DAYS),
    });
    plan.feeds = plan
        .feeds
        .iter()
        .map(|feed| PlannedFeed {
            volume: Millilitres::whole(60),
            ..*feed
        })
        .collect();
    plan.contacts = vec![
        contact(Role::Breeder, typed.breeder, "555 0100"),
        contact(Role::AvianVet, typed.vet, "555 0101"),
    ];
    typed.solids.clone_into(&mut plan.solids);
    plan.unconfirmed.clear();
    plan
}

/// A midday feed of 60 ml of which 25 ml were wanted.
fn part_taken() -> Change {
    let (taken, offered) = (Millilitres::whole(25), Millilitres::whole(60));
    Change::Fed {
        counts_as: None,
        taken,
        offered,
        served_at: None,
        response: Response::Slow,
    }
}

fn contact(role: Role, name: &str, number: &str) -> Contact {
    Contact {
        role,
        name: name.to_owned(),
        number: number.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::demo;
    use crate::domain::journal::entries::Journal;
    use crate::domain::outlook::outlook;
    use crate::domain::time::moment::{Moment, Offset};
    use crate::domain::time::zone::Zone;
    use crate::words::Language;

    #[test]
    fn the_made_up_chick_is_sound_at_every_hour_of_a_day() {
        let zone = Zone::fixed(Offset::from_minutes(-300));
        for hour in 0..24 {
            let now = Moment::from_seconds(1_790_000_000).plus_minutes(hour * 60);
            let journal = demo::journal(now, &zone, Language::English.demo_typed());
            assert!(journal.entries().iter().all(|entry| entry.at <= now));
            let mut checked = Journal::default();
            for entry in journal.entries() {
                assert_eq!(checked.append(now, entry.clone()), Ok(()));
            }
            let chick = journal.chicks()[0];
            assert!(
                outlook(now, &journal, chick, &zone)
                    .unwrap()
                    .next_feed
                    .is_some()
            );
        }
    }
}

//! A chick typed in by its owner and the breeder's card of the same bird are told as one.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

use perchlight::domain::journal::chick::Chick;
use perchlight::domain::journal::entries::{
    Change, ChickId, CropAtWeighing, Entry, EntryId, Journal, Refusal,
};
use perchlight::domain::plan::care_plan::{CarePlan, Contact, Reference, Role};
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::{Grams, Millilitres};
use perchlight::domain::time::moment::{Moment, Offset};

const TYPED: ChickId = ChickId([1; 12]);
const CARD: ChickId = ChickId([2; 12]);

fn at(hour: i64) -> Moment {
    Moment::from_seconds(1_793_600_000).plus_minutes(60 * hour)
}

fn entry(number: u8, hour: i64, chick: ChickId, change: Change) -> Entry {
    Entry {
        at: at(hour),
        id: EntryId([number; 12]),
        chick,
        noted_at: at(hour),
        offset: Offset::UTC,
        by: String::new(),
        change,
    }
}

fn plan(ml: i32, contacts: Vec<Contact>) -> Box<CarePlan> {
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    for feed in &mut plan.feeds {
        feed.volume = Millilitres::whole(ml);
    }
    plan.contacts = contacts;
    Box::new(plan)
}

fn contact(role: Role) -> Contact {
    Contact {
        role,
        name: String::new(),
        number: "5550100".to_owned(),
    }
}

fn weighed(grams: i32) -> Change {
    let (weight, crop) = (Grams::whole(grams), CropAtWeighing::Empty);
    Change::Weighed { weight, crop }
}

/// Typed in at hour 0 with 60 ml and a vet, home and weighed; the card of 80 ml comes at hour 5.
fn two() -> Vec<Entry> {
    let mut typed = plan(60, vec![contact(Role::AvianVet)]);
    let day = at(0).lived(Offset::UTC).day;
    let weight = Grams::whole(990);
    typed.reference = Some(Reference { weight, day });
    vec![
        entry(1, 0, TYPED, Change::ChickAdded(typed)),
        entry(2, 1, TYPED, Change::Arrived),
        entry(3, 2, TYPED, weighed(1_000)),
        entry(
            4,
            5,
            CARD,
            Change::ChickAdded(plan(80, vec![contact(Role::Breeder)])),
        ),
        entry(5, 6, CARD, weighed(1_010)),
    ]
}

fn same(number: u8) -> Entry {
    let (typed, card) = (TYPED, CARD);
    entry(number, 7, CARD, Change::SameChick { typed, card })
}

#[test]
fn two_chicks_are_two_until_somebody_says_that_they_are_one() {
    let journal = Journal::from_entries(two());
    assert_eq!(journal.chicks(), [TYPED, CARD]);
    assert_eq!(
        Chick::from_journal(&journal, CARD).unwrap().weighings.len(),
        1
    );
}

#[test]
fn joined_the_notes_of_both_stand_under_the_cards_id_and_plan() {
    let mut journal = Journal::from_entries(two());
    journal.append(at(7), same(6)).unwrap();
    assert_eq!(journal.chicks(), [CARD]);
    assert_eq!(journal.leading_id(TYPED), CARD);
    let chick = Chick::from_journal(&journal, CARD).unwrap();
    assert_eq!(Chick::from_journal(&journal, TYPED), None);
    let weights: Vec<i32> = chick
        .weighings
        .iter()
        .map(|weighing| weighing.what.weight.tenths())
        .collect();
    assert_eq!(weights, [10_000, 10_100]);
    assert_eq!(chick.arrived.unwrap().at, at(1));
    assert_eq!(chick.added_at, at(0));
    // the breeder's 80 ml; the vet and the weight that only the owner typed
    assert!(
        chick
            .plan
            .feeds
            .iter()
            .all(|feed| feed.volume == Millilitres::whole(80))
    );
    assert!(chick.plan.contact(Role::Breeder).is_some());
    assert!(chick.plan.contact(Role::AvianVet).is_some());
    assert_eq!(chick.plan.reference.unwrap().weight, Grams::whole(990));
}

#[test]
fn joining_is_the_same_in_whatever_order_it_came_in_and_can_be_undone() {
    let mut entries = two();
    entries.push(same(6));
    let forward = Journal::from_entries(entries.clone());
    entries.reverse();
    let mut backward = Journal::default();
    for one in entries {
        backward.insert(one);
    }
    assert_eq!(forward, backward);
    let mut journal = forward;
    let id = EntryId([6; 12]);
    let undo = entry(7, 8, CARD, Change::Retracted { id });
    journal.append(at(8), undo).unwrap();
    assert_eq!(journal.chicks(), [TYPED, CARD]);
    let typed = Chick::from_journal(&journal, TYPED).unwrap();
    assert!(
        typed
            .plan
            .feeds
            .iter()
            .all(|feed| feed.volume == Millilitres::whole(60))
    );
}

#[test]
fn a_chick_is_joined_neither_with_itself_nor_with_one_that_is_not_here() {
    let join = |typed, card| {
        let mut journal = Journal::from_entries(two());
        journal.append(at(7), entry(6, 7, CARD, Change::SameChick { typed, card }))
    };
    assert_eq!(join(CARD, CARD), Err(Refusal::NoSuchChick));
    assert_eq!(join(ChickId([9; 12]), CARD), Err(Refusal::NoSuchChick));
}

/// Twins: each came with a card of its own, which somebody took here.
#[test]
fn two_cards_are_never_joined_and_a_typed_chick_gets_one_card_only() {
    let mut journal = Journal::from_entries(two());
    let join = |number, typed, card| entry(number, 9, card, Change::SameChick { typed, card });
    let taken = |number, chick, id| {
        let sets = vec![EntryId([id; 12])];
        entry(number, 8, chick, Change::PartTaken { sets })
    };
    journal.append(at(8), taken(20, CARD, 4)).unwrap();
    let mut twins = journal.clone();
    twins.append(at(8), taken(21, TYPED, 1)).unwrap();
    for (typed, card) in [(TYPED, CARD), (CARD, TYPED)] {
        let refused = twins.append(at(9), join(22, typed, card));
        assert_eq!(refused, Err(Refusal::NotTyped));
    }
    assert_eq!(twins.chicks(), [TYPED, CARD]);
    // The other way round neither, and nothing is joined a second time.
    assert_eq!(
        journal.append(at(9), join(22, CARD, TYPED)),
        Err(Refusal::NotTyped)
    );
    journal.append(at(9), join(23, TYPED, CARD)).unwrap();
    assert_eq!(
        journal.append(at(9), join(24, TYPED, CARD)),
        Err(Refusal::NotTyped)
    );
    assert_eq!(journal.chicks(), [CARD]);
}

#[test]
fn what_is_erased_of_a_joined_chick_is_all_of_it_and_nothing_of_another() {
    let mut journal = Journal::from_entries(two());
    journal.append(at(7), same(6)).unwrap();
    let chicks = journal.of_chick(CARD).iter().map(|one| one.chick).collect();
    let other = ChickId([3; 12]);
    let theirs = entry(30, 8, other, Change::ChickAdded(plan(60, Vec::new())));
    journal.append(at(8), theirs.clone()).unwrap();
    assert_eq!(journal.without(&chicks).entries(), [theirs]);
}

#[test]
fn two_joins_that_meet_in_a_ring_lose_no_chick() {
    let mut entries = two();
    entries.push(same(6));
    let (typed, card) = (CARD, TYPED);
    entries.push(entry(7, 8, TYPED, Change::SameChick { typed, card }));
    let journal = Journal::from_entries(entries);
    assert_eq!(journal.chicks(), [CARD]);
    let chick = Chick::from_journal(&journal, CARD).unwrap();
    assert_eq!(chick.weighings.len(), 2);
}

#[test]
fn every_entry_of_both_goes_into_a_report_and_back_out_when_the_join_is_undone() {
    let mut journal = Journal::from_entries(two());
    let ids = |journal: &Journal, chick| journal.of_chick(chick).len();
    assert_eq!((ids(&journal, CARD), ids(&journal, TYPED)), (2, 3));
    journal.append(at(7), same(6)).unwrap();
    assert_eq!((ids(&journal, CARD), ids(&journal, TYPED)), (6, 0));
}

//! What a chick is, told by its journal: every kind of entry, corrections, and the questions asked of it.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

#[path = "common/entries.rs"]
mod entries;

use std::fmt::Debug;

use entries::{KINDS, change, kind};
use perchlight::domain::journal::chick::{
    Advice, Call, Chick, CropLook, DroppingsCount, FeedNote, FeedOutcome, Mix, Noted, SolidsLook,
    WeaningStep, Weighing,
};
use perchlight::domain::journal::entries::{
    Change, ChickId, CropAtWeighing, CropFeel, CropState, Droppings, Entry, EntryId, Journal,
    Paper, Response, SolidsEaten, WhyPassedOver,
};
use perchlight::domain::journal::signs::Sign;
use perchlight::domain::plan::care_plan::{CarePlan, ClockShift, Journey, Role, Slot};
use perchlight::domain::plan::parts::{PartKind, Side};
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::{Celsius, Grams, Millilitres};
use perchlight::domain::time::moment::{Day, Moment, Offset};
use proptest::collection::vec;
use proptest::prelude::*;

const CHICK: ChickId = ChickId([7; 12]);
/// Number of the entry that adds the chick, at minute 0.
const ADDED: u8 = 0;

/// Minutes after the chick was added.
fn at(minute: i64) -> Moment {
    Moment::from_seconds(1_790_000_000).plus_minutes(minute)
}

const fn id(number: u8) -> EntryId {
    EntryId([number; 12])
}

fn entry(number: u8, minute: i64, change: Change) -> Entry {
    Entry {
        at: at(minute),
        id: id(number),
        chick: CHICK,
        noted_at: at(minute),
        offset: Offset::from_minutes(60),
        by: String::new(),
        change,
    }
}

fn plan() -> CarePlan {
    CarePlan::default_for(Species::GreenWingedMacaw)
}

/// What a carer sets first of all.
fn part_set(plan: &CarePlan, kind: PartKind) -> Change {
    Change::PartSet {
        part: Box::new(plan.part(kind)),
        replaces: Vec::new(),
        side: Side::Owner,
        is_carer: true,
    }
}

/// A chick with that plan and changes, numbered from 1, each at its minute.
fn with_plan(plan: CarePlan, changes: &[(i64, Change)]) -> Chick {
    let added = entry(ADDED, 0, Change::ChickAdded(Box::new(plan)));
    let noted = changes
        .iter()
        .zip(1..)
        .map(|((minute, change), number)| entry(number, *minute, change.clone()));
    let journal = Journal::from_entries(std::iter::once(added).chain(noted).collect());
    Chick::from_journal(&journal, CHICK).expect("the chick was added")
}

fn chick(changes: &[(i64, Change)]) -> Chick {
    with_plan(plan(), changes)
}

fn weighed(grams: i32) -> Change {
    Change::Weighed {
        weight: Grams::whole(grams),
        crop: CropAtWeighing::Empty,
    }
}

fn fed(taken: i32) -> Change {
    Change::Fed {
        counts_as: Some(Slot::Morning),
        taken: Millilitres::whole(taken),
        offered: Millilitres::whole(80),
        served_at: Some(Celsius::whole(40)),
        response: Response::Eager,
    }
}

const fn dropped(slot: Slot) -> Change {
    Change::FeedDropped {
        slot,
        by_breeder: false,
    }
}

const fn back(slot: Slot) -> Change {
    Change::FeedBroughtBack { slot }
}

const fn taken_back(number: u8) -> Change {
    Change::Retracted { id: id(number) }
}

/// The list holds one thing, with its entry, moment and offset as noted by [`chick`].
fn assert_only<T: PartialEq + Debug>(list: &[Noted<T>], what: T) {
    let offset = Offset::from_minutes(60);
    let (id, at) = (id(1), at(5));
    assert_eq!(
        list,
        [Noted {
            id,
            at,
            offset,
            what
        }]
    );
}

/// The chick after one change, and how many things all its lists then hold.
fn after(change: Change) -> Chick {
    let chick = chick(&[(5, change)]);
    assert_eq!(things(&chick), 1, "{chick:?}");
    chick
}

fn things(chick: &Chick) -> usize {
    usize::from(chick.arrived.is_some())
        + chick.weighings.len()
        + chick.feeds.len()
        + chick.crops.len()
        + chick.droppings.len()
        + chick.droppings_counts.len()
        + chick.solids.len()
        + chick.signs.len()
        + chick.signs_gone.len()
        + chick.weaning.len()
        + chick.mixes.len()
        + chick.stock.len()
        + chick.rooms.len()
        + chick.calls.len()
        + chick.vet_visits.len()
        + chick.advice.len()
        + chick.same_food.len()
}

#[test]
fn a_chick_that_was_added_has_its_plan_and_nothing_else() {
    let chick = chick(&[]);
    assert_eq!(
        (chick.id, chick.added_at, chick.plan_since),
        (CHICK, at(0), at(0))
    );
    assert_eq!(chick.plan, plan());
    assert_eq!(things(&chick), 0);
}

#[test]
fn a_chick_that_was_never_added_is_none() {
    let journal = Journal::from_entries(vec![entry(1, 5, weighed(900))]);
    assert_eq!(Chick::from_journal(&journal, CHICK), None);
    assert_eq!(Chick::from_journal(&Journal::default(), CHICK), None);
}

#[test]
fn a_plan_that_was_set_replaces_the_one_before() {
    let mut later = plan();
    later.name = "Second".to_owned();
    let chick = chick(&[(5, part_set(&later, PartKind::Chick))]);
    assert_eq!(
        (chick.plan, chick.plan_since, chick.added_at),
        (later, at(5), at(0))
    );
}

#[test]
fn each_feed_is_one_feed_with_what_became_of_it() {
    let slot = Slot::Morning;
    let given = FeedOutcome::Given {
        taken: Millilitres::whole(70),
        offered: Millilitres::whole(80),
        served_at: Some(Celsius::whole(40)),
        response: Response::Eager,
    };
    let note = |outcome| FeedNote {
        counts_as: Some(slot),
        outcome,
        by: String::new(),
    };
    assert_only(&after(fed(70)).feeds, note(given));
    let offered = Millilitres::whole(80);
    let refused = FeedOutcome::Refused { offered };
    let counts_as = Some(slot);
    assert_only(
        &after(Change::FeedRefused { counts_as, offered }).feeds,
        note(refused),
    );
    let (why, day) = (WhyPassedOver::Advised, Day::from_number(20_000));
    let left_out = FeedOutcome::PassedOver { why, day };
    assert_only(
        &after(Change::FeedPassedOver { slot, day, why }).feeds,
        note(left_out),
    );
    assert_eq!(given.taken(), Millilitres::whole(70));
    assert!(given.is_food());
    assert_eq!(refused.taken(), Millilitres::whole(0));
    assert!(!refused.is_food());
    assert!(!left_out.is_food());
}

#[test]
fn each_thing_seen_is_in_its_own_list() {
    let (weight, crop) = (Grams::whole(900), CropAtWeighing::NotSure);
    assert_only(
        &after(Change::Weighed { weight, crop }).weighings,
        Weighing { weight, crop },
    );
    let (state, feel) = (CropState::Quarter, CropFeel::Soft);
    assert_only(
        &after(Change::CropSeen { state, feel }).crops,
        CropLook { state, feel },
    );
    let look = Droppings::Watery;
    assert_only(&after(Change::DroppingsSeen { look }).droppings, look);
    let (paper, count) = (Paper::Night, 3);
    assert_only(
        &after(Change::DroppingsCounted { paper, count }).droppings_counts,
        DroppingsCount { paper, count },
    );
    let (what, eaten) = ("peas".to_owned(), SolidsEaten::Meal);
    let seen = Change::SolidsSeen {
        what: what.clone(),
        eaten,
    };
    assert_only(&after(seen).solids, SolidsLook { what, eaten });
    let sign = Sign::Vomiting;
    assert_only(&after(Change::SignSeen { sign }).signs, sign);
    let gone = after(Change::SignGone { sign }).signs_gone;
    assert_eq!(gone, [(sign, at(5))].into());
    let room = Celsius::whole(25);
    assert_only(&after(Change::RoomSeen { room }).rooms, room);
}

#[test]
fn each_thing_done_or_decided_is_in_its_own_list() {
    let slot = Slot::Midday;
    for by_breeder in [false, true] {
        let chick = after(Change::FeedDropped { slot, by_breeder });
        assert_only(&chick.weaning, WeaningStep::Dropped { slot, by_breeder });
    }
    assert_only(
        &after(back(slot)).weaning,
        WeaningStep::BroughtBack { slot },
    );
    let [powder, water, fat_supplement] = [20, 60, 1].map(Grams::whole);
    let mixed = Change::MixMade {
        powder,
        water,
        fat_supplement,
    };
    assert_only(
        &after(mixed).mixes,
        Mix {
            powder,
            water,
            fat_supplement,
        },
    );
    assert_only(&after(Change::StockOpened { powder }).stock, powder);
    let (whom, agreed) = (Role::Breeder, "ring again at six".to_owned());
    let called = Change::Called {
        whom,
        agreed: agreed.clone(),
    };
    assert_only(&after(called).calls, Call { whom, agreed });
    let said = "healthy".to_owned();
    let seen = Change::VetSeen { said: said.clone() };
    assert_only(&after(seen).vet_visits, said);
    let (who, about) = (Role::AvianVet, "thin mix".to_owned());
    let (ml, until) = (Some(Millilitres::whole(30)), Some(at(90)));
    let advised = Change::AdviceNoted {
        who,
        about: about.clone(),
        may_feed: true,
        ml,
        until,
    };
    let advice = Advice {
        who,
        about,
        may_feed: true,
        ml,
        until,
    };
    assert_only(&after(advised).advice, advice);
    assert_eq!(after(Change::Arrived).arrived.unwrap().at, at(5));
}

#[test]
fn a_remark_and_a_retraction_of_nothing_change_nothing() {
    let text = "quiet day".to_owned();
    assert_eq!(chick(&[(5, Change::Noted { text })]), chick(&[]));
    assert_eq!(chick(&[(5, taken_back(99))]), chick(&[]));
}

#[test]
fn what_belongs_to_another_chick_is_left_out() {
    let mut other = entry(2, 5, weighed(300));
    other.chick = ChickId([8; 12]);
    let added = entry(ADDED, 0, Change::ChickAdded(Box::new(plan())));
    let journal = Journal::from_entries(vec![added, other]);
    assert_eq!(Chick::from_journal(&journal, CHICK), Some(chick(&[])));
}

#[test]
fn what_was_taken_back_does_not_count_and_counts_again_when_that_is_undone() {
    let weighings = |changes: &[(i64, Change)]| chick(changes).weighings.len();
    let (noted, undo, redo) = ((5, weighed(900)), (6, taken_back(1)), (7, taken_back(2)));
    assert_eq!(weighings(std::slice::from_ref(&noted)), 1);
    assert_eq!(weighings(&[noted.clone(), undo.clone()]), 0);
    assert_eq!(weighings(&[noted.clone(), undo.clone(), redo.clone()]), 1);
    assert_eq!(weighings(&[noted, undo, redo, (8, taken_back(3))]), 0);
}

#[test]
fn a_plan_taken_back_leaves_the_one_before_in_force() {
    let mut later = plan();
    later.name = "Second".to_owned();
    let set = (5, part_set(&later, PartKind::Chick));
    assert_eq!(chick(&[set, (6, taken_back(1))]), chick(&[]));
}

#[test]
fn the_later_of_two_arrivals_counts_until_it_is_taken_back() {
    let arrived = |changes: &[(i64, Change)]| chick(changes).arrived.map(|arrived| arrived.at);
    let (first, second) = ((5, Change::Arrived), (9, Change::Arrived));
    assert_eq!(arrived(&[]), None);
    assert_eq!(arrived(&[first.clone(), second.clone()]), Some(at(9)));
    assert_eq!(arrived(&[second.clone(), first.clone()]), Some(at(9)));
    assert_eq!(arrived(&[first, second, (10, taken_back(2))]), Some(at(5)));
}

#[test]
fn each_list_is_in_order_of_time_whenever_it_was_noted() {
    let chick = chick(&[(30, weighed(903)), (10, weighed(901)), (20, weighed(902))]);
    let weights: Vec<i32> = chick
        .weighings
        .iter()
        .map(|noted| noted.what.weight.tenths())
        .collect();
    assert_eq!(weights, [9_010, 9_020, 9_030]);
}

#[test]
fn feeds_are_dropped_in_the_order_in_which_they_went_from_that_moment_on() {
    let chick = chick(&[(10, dropped(Slot::Midday)), (20, dropped(Slot::Morning))]);
    assert_eq!(chick.dropped_slots(at(9)), []);
    assert_eq!(chick.dropped_slots(at(10)), [Slot::Midday]);
    assert_eq!(chick.dropped_slots(at(20)), [Slot::Midday, Slot::Morning]);
    let in_force = |minute| -> Vec<Slot> {
        let feeds = chick.feeds_in_force(at(minute));
        feeds.into_iter().map(|feed| feed.slot).collect()
    };
    // the default plan has morning, midday and bedtime
    assert_eq!(in_force(9), [Slot::Morning, Slot::Midday, Slot::Bedtime]);
    assert_eq!(in_force(10), [Slot::Morning, Slot::Bedtime]);
    assert_eq!(in_force(20), [Slot::Bedtime]);
}

#[test]
fn a_feed_brought_back_is_given_again_and_may_be_dropped_again() {
    let midday = Slot::Midday;
    let chick = chick(&[
        (10, dropped(midday)),
        (20, dropped(Slot::Morning)),
        (30, back(midday)),
        (40, dropped(midday)),
    ]);
    assert_eq!(chick.dropped_slots(at(30)), [Slot::Morning]);
    assert_eq!(chick.dropped_slots(at(40)), [Slot::Morning, midday]);
}

#[test]
fn a_feed_dropped_twice_is_dropped_once_and_one_brought_back_undropped_stays() {
    let midday = Slot::Midday;
    let twice = chick(&[
        (10, dropped(midday)),
        (11, dropped(midday)),
        (12, back(midday)),
    ]);
    assert_eq!(twice.dropped_slots(at(11)), [midday]);
    assert_eq!(twice.dropped_slots(at(12)), []);
    let never = chick(&[(10, back(midday))]);
    assert_eq!(never.feeds_in_force(at(10)), plan().feeds);
}

#[test]
fn a_drop_taken_back_never_was() {
    let chick = chick(&[(10, dropped(Slot::Midday)), (20, taken_back(1))]);
    assert_eq!(chick.dropped_slots(at(15)), []);
    assert_eq!(chick.weaning, []);
}

#[test]
fn a_sign_is_there_until_it_is_noted_as_gone_after_it_was_seen() {
    let sign = Sign::Dull;
    let (seen, gone) = (Change::SignSeen { sign }, Change::SignGone { sign });
    let sightings = |changes: &[(i64, Change)]| -> Vec<Moment> {
        let present = chick(changes).signs_present(at(0));
        present.into_iter().map(|seen| seen.at).collect()
    };
    assert_eq!(sightings(&[(10, seen.clone())]), [at(10)]);
    assert_eq!(sightings(&[(10, seen.clone()), (11, gone.clone())]), []);
    assert_eq!(sightings(&[(10, seen.clone()), (10, gone.clone())]), []);
    assert_eq!(
        sightings(&[(9, gone.clone()), (10, seen.clone())]),
        [at(10)]
    );
    let again = [(10, seen.clone()), (11, gone.clone()), (12, seen.clone())];
    assert_eq!(sightings(&again), [at(12)]);
    let gone_twice = [(10, seen.clone()), (11, gone.clone()), (12, gone.clone())];
    assert_eq!(chick(&gone_twice).signs_gone, [(sign, at(12))].into());
    assert_eq!(
        sightings(&[(10, seen), (11, gone), (12, taken_back(2))]),
        [at(10)]
    );
}

#[test]
fn a_sign_seen_twice_is_told_once_with_its_latest_sighting_and_others_stay() {
    let seen = |sign| Change::SignSeen { sign };
    let changes = [
        (10, seen(Sign::Dull)),
        (20, seen(Sign::Cold)),
        (30, seen(Sign::Dull)),
    ];
    let told = |from| -> Vec<(Sign, Moment)> {
        let present = chick(&changes).signs_present(at(from));
        present
            .into_iter()
            .map(|seen| (seen.what, seen.at))
            .collect()
    };
    assert_eq!(told(0), [(Sign::Cold, at(20)), (Sign::Dull, at(30))]);
    assert_eq!(told(20), [(Sign::Cold, at(20)), (Sign::Dull, at(30))]);
    assert_eq!(told(21), [(Sign::Dull, at(30))]);
    assert_eq!(told(31), []);
    let one_gone = [
        changes.as_slice(),
        &[(40, Change::SignGone { sign: Sign::Dull })],
    ]
    .concat();
    let left = chick(&one_gone).signs_present(at(0));
    assert_eq!(
        left.iter().map(|seen| seen.what).collect::<Vec<_>>(),
        [Sign::Cold]
    );
}

#[test]
fn home_is_the_arrival_else_the_expected_one_else_the_adding_never_before_it() {
    let expecting = |minute| {
        let mut plan = plan();
        plan.journey = Some(Journey {
            left: at(-600),
            expected: at(minute),
            breeder_offset: Offset::UTC,
            shift: ClockShift::AtOnce,
            last_fed: None,
        });
        plan
    };
    let arrived = |minute| [(minute, Change::Arrived)];
    assert_eq!(chick(&[]).home_since(), at(0));
    assert_eq!(chick(&arrived(7)).home_since(), at(7));
    assert_eq!(with_plan(expecting(9), &[]).home_since(), at(9));
    assert_eq!(with_plan(expecting(9), &arrived(7)).home_since(), at(7));
    assert_eq!(with_plan(expecting(-9), &[]).home_since(), at(0));
    assert_eq!(chick(&arrived(-7)).home_since(), at(0));
}

#[test]
fn the_last_feed_given_put_something_in_and_lies_not_ahead() {
    let slot = Slot::Morning;
    let (why, day) = (WhyPassedOver::NotFit, Day::from_number(20_000));
    let chick = chick(&[
        (10, fed(80)),
        (20, fed(0)),
        (30, Change::refused(Some(slot))),
        (40, Change::FeedPassedOver { slot, day, why }),
        (50, fed(1)),
    ]);
    let last = |minute| chick.last_given(at(minute)).map(|feed| feed.at);
    assert_eq!(last(9), None);
    assert_eq!(last(10), Some(at(10)));
    assert_eq!(last(49), Some(at(10)));
    assert_eq!(last(50), Some(at(50)));
}

/// Up to 40 changes of any kind but the adding, at any minute of a week, many at the same one.
fn changes() -> impl Strategy<Value = Vec<Entry>> {
    let retraction = (0_u8..45).prop_map(taken_back);
    let noted = (0_i64..168, prop_oneof![8 => change(), 2 => retraction]);
    vec(noted, 0..40).prop_map(|noted| {
        let numbered = noted.into_iter().zip(1..);
        numbered
            .filter(|((_, change), _)| kind(change) != 0)
            .map(|((hour, change), number)| entry(number, hour * 60, change))
            .collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn the_order_in_which_entries_came_makes_no_other_chick(
        (entries, shuffled) in changes().prop_flat_map(|mut entries| {
            entries.push(entry(ADDED, 0, Change::ChickAdded(Box::new(plan()))));
            (Just(entries.clone()), Just(entries).prop_shuffle())
        }),
        cut in 0_usize..40,
    ) {
        let whole = Chick::from_journal(&Journal::from_entries(entries), CHICK);
        let (one, other) = shuffled.split_at(cut.min(shuffled.len()));
        let mut joined = Journal::from_entries(one.to_vec());
        joined.join(&Journal::from_entries(other.to_vec()));
        prop_assert_eq!(&Chick::from_journal(&joined, CHICK), &whole);
        let mut one_by_one = Journal::default();
        for entry in shuffled {
            one_by_one.insert(entry);
        }
        prop_assert_eq!(&Chick::from_journal(&one_by_one, CHICK), &whole);
    }

    #[test]
    fn each_entry_adds_at_most_one_thing(change in change()) {
        prop_assert!(kind(&change) < KINDS);
        prop_assert!(things(&chick(&[(5, change)])) <= 1);
    }

    #[test]
    fn taking_a_later_entry_back_leaves_the_chick_as_it_was(change in change()) {
        prop_assume!(change.retracts() != Some(id(ADDED)));
        prop_assert_eq!(chick(&[(5, change), (6, taken_back(1))]), chick(&[]));
    }
}

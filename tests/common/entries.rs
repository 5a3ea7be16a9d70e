//! Arbitrary sound entries of every kind, for property tests.

#![allow(dead_code, reason = "each test file uses its own part of these")]

use std::collections::BTreeSet;

use perchlight::domain::journal::entries::{
    Carer, Change, ChickId, CropAtWeighing, CropFeel, CropState, Droppings, Entry, EntryId, Paper,
    Response, SameFoodAnswer, SolidsEaten, WhyPassedOver,
};
use perchlight::domain::journal::photo::{MOST_PHOTO_BYTES, Photo, PhotoHash, PhotoOf};
use perchlight::domain::journal::signs::Sign;
use perchlight::domain::plan::care_plan::{
    CarePlan, ClockShift, Contact, Journey, PlanField, PlannedFeed, PowderLabel, Reference, Role,
    Slot, Tool,
};
use perchlight::domain::plan::parts::{PartKind, Side};
use perchlight::domain::plan::species::Species;
use perchlight::domain::plan::topic::{Topic, said_of};
use perchlight::domain::quantity::units::{Celsius, Grams, Millilitres, Percent};
use perchlight::domain::time::moment::{CARE_DAY_STARTS, Day, Lived, Moment, Offset, WallTime};
use proptest::collection::{btree_map, btree_set, vec};
use proptest::option;
use proptest::prelude::*;
use proptest::sample::{select, subsequence};

/// How many kinds of change there are.
pub(crate) const KINDS: usize = 36;

/// The number of a change's kind, 0 to `KINDS - 1`; a new kind must be added here and to the fixtures.
pub(crate) fn kind(change: &Change) -> usize {
    match change {
        Change::ChickAdded(_) => 0,
        Change::PartSet { .. } => 1,
        Change::PartTaken { .. } => 27,
        Change::PartAgreed { .. } => 28,
        Change::DroppingsCounted { .. } => 29,
        Change::PhotoTaken(_) => 30,
        Change::VisitReason { .. } => 31,
        Change::Arrived => 2,
        Change::Weighed { .. } => 3,
        Change::WeightStands { .. } => 32,
        Change::VetSeen { .. } => 33,
        Change::VetBooked { .. } => 34,
        Change::Remarked { .. } => 35,
        Change::Fed { .. } => 4,
        Change::FeedRefused { .. } => 5,
        Change::FeedPassedOver { .. } => 6,
        Change::CropSeen { .. } => 7,
        Change::DroppingsSeen { .. } => 8,
        Change::SolidsSeen { .. } => 9,
        Change::SignSeen { .. } => 10,
        Change::SignGone { .. } => 11,
        Change::FeedDropped { .. } => 12,
        Change::FeedBroughtBack { .. } => 13,
        Change::MixMade { .. } => 14,
        Change::StockOpened { .. } => 15,
        Change::Called { .. } => 16,
        Change::RoomSeen { .. } => 17,
        Change::Noted { .. } => 18,
        Change::Retracted { .. } => 19,
        Change::DrinkingSeen => 20,
        Change::Grown => 21,
        Change::Died => 22,
        Change::HandedOver { .. } => 23,
        Change::SameChick { .. } => 24,
        Change::AdviceNoted { .. } => 25,
        Change::SameFood { .. } => 26,
    }
}

/// Any entry that the journal could hold.
pub(crate) fn entry() -> impl Strategy<Value = Entry> {
    let when = (moment(), moment(), any::<bool>(), offset());
    let who = (any::<[u8; 12]>(), any::<[u8; 12]>(), text(60));
    (when, who, change()).prop_map(|((at, noted_at, is_noted_at_once, offset), who, change)| {
        let (id, chick, by) = who;
        Entry {
            at,
            id: EntryId(id),
            chick: ChickId(chick),
            noted_at: if is_noted_at_once { at } else { noted_at },
            offset,
            by,
            change,
        }
    })
}

/// Any change of any kind that passes the journal's own checks.
pub(crate) fn change() -> impl Strategy<Value = Change> {
    // Boxed: side by side they overflow the stack of a test's thread.
    prop_oneof![
        1 => plan().prop_map(|plan| Change::ChickAdded(Box::new(plan))).boxed(),
        1 => part_set().boxed(),
        1 => vec(id(), 0..4).prop_map(|sets| Change::PartTaken { sets }).boxed(),
        1 => (vec(id(), 0..4), text(60))
            .prop_map(|(sets, said_by)| Change::PartAgreed { sets, said_by })
            .boxed(),
        2 => weighing_and_feeding().boxed(),
        2 => seeing().boxed(),
        2 => deciding().boxed(),
    ]
}

fn part_set() -> impl Strategy<Value = Change> {
    let sides = select(&[Side::Breeder, Side::Owner]);
    let set = (
        plan(),
        select(&PartKind::ALL),
        vec(id(), 0..4),
        sides,
        any::<bool>(),
    );
    set.prop_map(|(plan, kind, replaces, side, is_carer)| Change::PartSet {
        part: Box::new(plan.part(kind)),
        replaces,
        side,
        is_carer,
    })
}

fn id() -> impl Strategy<Value = EntryId> {
    any::<[u8; 12]>().prop_map(EntryId)
}

fn weighing_and_feeding() -> impl Strategy<Value = Change> {
    prop_oneof![
        (50..=30_000, crop_at_weighing()).prop_map(|(tenths, crop)| Change::Weighed {
            weight: Grams::tenths_held(tenths),
            crop,
        }),
        (
            option::of(slot()),
            0..=3_000_i32,
            0..=3_000_i32,
            option::of(celsius()),
            response()
        )
            .prop_map(|(counts_as, one, other, served_at, response)| Change::Fed {
                counts_as,
                taken: Millilitres::tenths_held(one.min(other)),
                offered: Millilitres::tenths_held(one.max(other)),
                served_at,
                response,
            }),
        (option::of(slot()), 0..=3_000_i32).prop_map(|(counts_as, offered)| {
            let offered = Millilitres::tenths_held(offered);
            Change::FeedRefused { counts_as, offered }
        }),
        (slot(), 0..40_000_i32, why()).prop_map(|(slot, day, why)| {
            let day = Day::from_number(day);
            Change::FeedPassedOver { slot, day, why }
        }),
        (vec(any::<[u8; 12]>().prop_map(EntryId), 2..5), same_food())
            .prop_map(|(notes, answer)| Change::SameFood { notes, answer }),
        (grams(), grams(), grams()).prop_map(|(powder, water, fat_supplement)| Change::MixMade {
            powder,
            water,
            fat_supplement,
        }),
        grams().prop_map(|powder| Change::StockOpened { powder }),
    ]
}

fn seeing() -> impl Strategy<Value = Change> {
    prop_oneof![
        Just(Change::Arrived),
        Just(Change::DrinkingSeen),
        (crop_state(), crop_feel()).prop_map(|(state, feel)| Change::CropSeen { state, feel }),
        droppings().prop_map(|look| Change::DroppingsSeen { look }),
        (select(&Paper::ALL), any::<u8>())
            .prop_map(|(paper, count)| Change::DroppingsCounted { paper, count }),
        (text(1_000), eaten()).prop_map(|(what, eaten)| Change::SolidsSeen { what, eaten }),
        select(&Sign::ALL).prop_map(|sign| Change::SignSeen { sign }),
        select(&Sign::ALL).prop_map(|sign| Change::SignGone { sign }),
        celsius().prop_map(|room| Change::RoomSeen { room }),
        (
            select(&PhotoOf::ALL),
            any::<[u8; 32]>(),
            1..=MOST_PHOTO_BYTES
        )
            .prop_map(|(of, hash, bytes)| {
                let hash = PhotoHash(hash);
                Change::PhotoTaken(Photo { of, hash, bytes })
            }),
    ]
}

fn deciding() -> impl Strategy<Value = Change> {
    prop_oneof![
        (slot(), any::<bool>())
            .prop_map(|(slot, by_breeder)| Change::FeedDropped { slot, by_breeder }),
        slot().prop_map(|slot| Change::FeedBroughtBack { slot }),
        (role(), text(1_000)).prop_map(|(whom, agreed)| Change::Called { whom, agreed }),
        (
            role(),
            text(1_000),
            any::<bool>(),
            option::of(0..=3_000_i32),
            option::of(moment())
        )
            .prop_map(|(who, about, may_feed, ml, until)| Change::AdviceNoted {
                who,
                about,
                may_feed,
                ml: ml.map(Millilitres::tenths_held),
                until,
            }),
        text(1_000).prop_map(|text| Change::Noted { text }),
        text(1_000).prop_map(|text| Change::VisitReason { text }),
        text(1_000).prop_map(|said| Change::VetSeen { said }),
        text(1_000).prop_map(|text| Change::Remarked { text }),
        (day(), 0..1_440_i32).prop_map(|(day, minutes)| Change::VetBooked {
            on: Lived {
                day,
                time: WallTime::from_minutes(minutes),
            },
        }),
        any::<[u8; 12]>().prop_map(|id| Change::Retracted { id: EntryId(id) }),
        any::<[u8; 12]>().prop_map(|id| Change::WeightStands { id: EntryId(id) }),
        Just(Change::Grown),
        Just(Change::Died),
        (carer(), text(60)).prop_map(|(to, name)| Change::HandedOver { to, name }),
        (any::<[u8; 12]>(), any::<[u8; 12]>()).prop_map(|(typed, card)| Change::SameChick {
            typed: ChickId(typed),
            card: ChickId(card),
        }),
    ]
}

fn carer() -> impl Strategy<Value = Carer> {
    select(&[Carer::Owner, Carer::Breeder, Carer::Sitter, Carer::Clinic])
}

/// Any plan without faults.
pub(crate) fn plan() -> impl Strategy<Value = CarePlan> {
    let chick = (
        select(&Species::ALL),
        text(60),
        text(60),
        option::of(day()),
        option::of(reference()),
    );
    let mix = (
        percent(),
        grams(),
        option::of(label()),
        option::of(grams()),
        grams(),
        (-400..=500_i32).prop_map(Celsius::tenths_held),
    );
    let feeds = (feeds(), serving(), tool(), 10..=20_000, 10..=250);
    let weaning = (
        subsequence(&Slot::ALL, 0..=6).prop_shuffle(),
        any::<u8>(),
        any::<u8>(),
        window(),
    );
    let rest = (
        option::of(journey()),
        vec(contact(), 0..=6),
        text(1_000),
        text(1_000),
        subsequence(&PlanField::ALL, 0..=9),
    );
    let new = (
        option::of(reference()),
        option::of(grams()),
        option::of(1..=1_440_u16),
        btree_set(1..=1_440_u16, 0..=4),
        any::<bool>(),
        option::of(any::<u8>()),
        (text(60), text(60), text(1_000)),
        btree_map(select(&Topic::ALL), text(1_000), 0..=3),
    );
    (chick, mix, feeds, weaning, rest, new).prop_map(|(chick, mix, feeds, weaning, rest, new)| {
        CarePlan {
            peak: new.0,
            target: new.1,
            shortest_gap_minutes: new.2,
            retries_minutes: new.3.into_iter().collect(),
            ask_before_drop: new.4,
            report_days: new.5,
            breeder_hours: new.6.0,
            owner_name: new.6.1,
            owner_number: "+1 555 0100".to_owned(),
            note_for_chick: new.6.2,
            said: said_of(new.7),
            species: chick.0,
            name: chick.1,
            ring: chick.2,
            hatched: chick.3,
            reference: chick.4,
            scale_step: mix.4,
            feeds: feeds.0,
            powder_fraction: mix.0,
            fat_supplement_per_100_ml: mix.1,
            powder_label: mix.2,
            ten_spoons: mix.3,
            mixing_water: mix.5,
            serve_from: feeds.1.0,
            serve_to: feeds.1.1,
            tool: feeds.2,
            syringe: Millilitres::tenths_held(feeds.3),
            loss_limit: Percent::tenths_held(feeds.4),
            drop_order: weaning.0,
            settle_in_days: weaning.1,
            waiting_days: weaning.2,
            room_from: weaning.3.0,
            room_to: weaning.3.1,
            journey: rest.0,
            contacts: rest.1,
            solids: rest.2,
            note: rest.3,
            unconfirmed: rest.4.into_iter().collect(),
        }
    })
}

fn feeds() -> impl Strategy<Value = Vec<PlannedFeed>> {
    (0..=6_usize)
        .prop_flat_map(|count| {
            (
                subsequence(&Slot::ALL, count),
                btree_set(0..1_440_i32, count),
                vec(5..=3_000_i32, count),
            )
        })
        .prop_map(
            |(slots, minutes, tenths): (Vec<Slot>, BTreeSet<i32>, Vec<i32>)| {
                let parts = slots.into_iter().zip(minutes).zip(tenths);
                parts
                    .map(|((slot, minutes), tenths)| PlannedFeed {
                        slot,
                        // from the beginning of the day of care on
                        time: WallTime::from_minutes(CARE_DAY_STARTS.minutes() + minutes),
                        volume: Millilitres::tenths_held(tenths),
                    })
                    .collect()
            },
        )
}

fn window() -> impl Strategy<Value = (Celsius, Celsius)> {
    (-400..=1_200_i32, 1..=100_i32)
        .prop_map(|(low, width)| (Celsius::tenths_held(low), Celsius::tenths_held(low + width)))
}

/// 37 to 41 °C is what a plan may serve at.
fn serving() -> impl Strategy<Value = (Celsius, Celsius)> {
    (370..=409_i32).prop_flat_map(|low| {
        (low + 1..=410_i32)
            .prop_map(move |high| (Celsius::tenths_held(low), Celsius::tenths_held(high)))
    })
}

fn reference() -> impl Strategy<Value = Reference> {
    (grams(), day()).prop_map(|(weight, day)| Reference { weight, day })
}

fn label() -> impl Strategy<Value = PowderLabel> {
    (any::<u16>(), percent(), percent()).prop_map(|(energy_kcal, fat, protein)| PowderLabel {
        energy_kcal,
        fat,
        protein,
    })
}

fn journey() -> impl Strategy<Value = Journey> {
    let shift = select(&[ClockShift::AtOnce, ClockShift::Gradual]);
    let last_fed = option::of((moment(), (0..3_000_i32).prop_map(Millilitres::tenths_held)));
    (moment(), moment(), offset(), shift, last_fed).prop_map(
        |(left, expected, breeder_offset, shift, last_fed)| Journey {
            left,
            expected,
            breeder_offset,
            shift,
            last_fed,
        },
    )
}

fn contact() -> impl Strategy<Value = Contact> {
    (role(), text(60), "\\+?[0-9]{3,20}").prop_map(|(role, name, number)| Contact {
        role,
        name,
        number,
    })
}

/// Text of any characters at all, line breaks and controls too.
fn text(most: usize) -> impl Strategy<Value = String> {
    let letter = prop_oneof![
        6 => any::<char>(),
        3 => proptest::char::range(' ', '~'),
        1 => select(&['"', '\\', '\n', '\r', '\t', '\0', '|', '\u{2028}', '\u{7f}', '🦜']),
    ];
    vec(letter, 0..=most.min(40)).prop_map(|letters| letters.into_iter().collect())
}

fn moment() -> impl Strategy<Value = Moment> {
    prop_oneof![
        8 => Moment::EARLIEST.seconds()..=Moment::LATEST.seconds(),
        1 => Just(Moment::EARLIEST.seconds()),
        1 => Just(Moment::LATEST.seconds()),
    ]
    .prop_map(Moment::from_seconds)
}

/// 1990-01-01 to 2199-12-31, the days that a date field can give.
fn day() -> impl Strategy<Value = Day> {
    (7_305..=84_005).prop_map(Day::from_number)
}

fn offset() -> impl Strategy<Value = Offset> {
    (-1_440..=1_440).prop_map(Offset::from_minutes)
}

fn grams() -> impl Strategy<Value = Grams> {
    (Grams::LOW..=Grams::HIGH).prop_map(Grams::tenths_held)
}

fn celsius() -> impl Strategy<Value = Celsius> {
    (Celsius::LOW..=Celsius::HIGH).prop_map(Celsius::tenths_held)
}

fn percent() -> impl Strategy<Value = Percent> {
    (Percent::LOW..=Percent::HIGH).prop_map(Percent::tenths_held)
}

fn slot() -> impl Strategy<Value = Slot> {
    select(&Slot::ALL)
}

fn role() -> impl Strategy<Value = Role> {
    select(&[Role::Breeder, Role::AvianVet, Role::EmergencyVet])
}

fn tool() -> impl Strategy<Value = Tool> {
    select(&Tool::ALL)
}

fn crop_at_weighing() -> impl Strategy<Value = CropAtWeighing> {
    use CropAtWeighing::{AfterFeed, Empty, NotSure};
    select(&[Empty, AfterFeed, NotSure])
}

fn response() -> impl Strategy<Value = Response> {
    select(&[Response::Eager, Response::Slow, Response::NotNoted])
}

fn why() -> impl Strategy<Value = WhyPassedOver> {
    use WhyPassedOver::{Advised, CropNotEmpty, NotFit, NotKnown, NotPossible};
    select(&[CropNotEmpty, NotFit, Advised, NotPossible, NotKnown])
}

fn same_food() -> impl Strategy<Value = SameFoodAnswer> {
    use SameFoodAnswer::{NotedTwice, TwoFeeds, TwoParts};
    select(&[NotedTwice, TwoParts, TwoFeeds])
}

fn crop_state() -> impl Strategy<Value = CropState> {
    select(&CropState::ALL)
}

fn crop_feel() -> impl Strategy<Value = CropFeel> {
    select(&[CropFeel::Soft, CropFeel::Firm, CropFeel::NotNoted])
}

fn droppings() -> impl Strategy<Value = Droppings> {
    select(&Droppings::ALL)
}

fn eaten() -> impl Strategy<Value = SolidsEaten> {
    select(&[SolidsEaten::Played, SolidsEaten::Little, SolidsEaten::Meal])
}

//! Every saved version ever released still opens, and the present one never changes by accident.
//!
//! `fixtures/saved-v1.json` and `fixtures/saved-words-v1.json` were written by hand and are never edited:
//! they stand for what lies on people's phones. A new version gets files of its own beside them.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

#[path = "common/entries.rs"]
mod entries;

use std::collections::BTreeSet;

use perchlight::domain::journal::entries::{
    Carer, Change, ChickId, CropAtWeighing, CropFeel, CropState, Droppings, Entry, EntryId, Paper,
    Response, SameFoodAnswer, SolidsEaten, WhyPassedOver,
};
use perchlight::domain::journal::photo::{Photo, PhotoHash, PhotoOf};
use perchlight::domain::journal::signs::Sign;
use perchlight::domain::plan::care_plan::{
    CarePlan, ClockShift, Contact, Journey, PlanField, PlannedFeed, PowderLabel, Reference, Role,
    Slot, Tool,
};
use perchlight::domain::plan::parts::{PartKind, Side};
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::{Celsius, Grams, Millilitres, Percent};
use perchlight::domain::time::moment::{Day, Lived, Moment, Offset, WallTime};
use perchlight::store::saved::{
    Limits, entries_from_text, entries_to_text, entry_from_text, entry_to_text,
};
use serde_json::Value;

const SAVED_V1: &str = include_str!("fixtures/saved-v1.json");
const WORDS_V1: &str = include_str!("fixtures/saved-words-v1.json");

fn saved_v1() -> Vec<Entry> {
    entries_from_text(SAVED_V1, Limits::FILE).unwrap()
}

/// The entry of the fixture whose id ends in `number`.
fn entry(number: u8, offset_min: i32, change: Change) -> Entry {
    let mut id = [0; 12];
    id[11] = number;
    Entry {
        // 2026-11-01T07:00:00Z
        at: Moment::from_seconds(1_793_516_400),
        id: EntryId(id),
        chick: ChickId(*b"chick-id-one"),
        noted_at: Moment::from_seconds(1_793_516_400),
        offset: Offset::from_minutes(offset_min),
        by: String::new(),
        change,
    }
}

fn feed(slot: Slot, hour: u16, minute: u16, tenth_ml: i32) -> PlannedFeed {
    PlannedFeed {
        slot,
        time: WallTime::new(hour, minute).unwrap(),
        volume: Millilitres::tenths_held(tenth_ml),
    }
}

fn full_plan() -> CarePlan {
    CarePlan {
        species: Species::GreenWingedMacaw,
        name: "Ruby".to_owned(),
        ring: "PB 26-014".to_owned(),
        hatched: Day::from_date(2026, 8, 22),
        reference: Some(Reference {
            weight: Grams::whole(1_040),
            day: Day::from_date(2026, 10, 31).unwrap(),
        }),
        scale_step: Grams::whole(1),
        feeds: vec![
            feed(Slot::Morning, 7, 0, 600),
            feed(Slot::Midday, 14, 0, 600),
            feed(Slot::Bedtime, 21, 30, 655),
        ],
        powder_fraction: Percent::whole(25),
        fat_supplement_per_100_ml: Grams::whole(2),
        powder_label: Some(PowderLabel {
            energy_kcal: 430,
            fat: Percent::tenths_held(105),
            protein: Percent::whole(22),
        }),
        ten_spoons: Some(Grams::tenths_held(825)),
        serve_from: Celsius::whole(39),
        serve_to: Celsius::tenths_held(405),
        tool: Tool::Syringe,
        syringe: Millilitres::whole(30),
        loss_limit: Percent::whole(10),
        drop_order: vec![Slot::Midday, Slot::Morning, Slot::Bedtime],
        settle_in_days: 7,
        waiting_days: 5,
        room_from: Celsius::whole(24),
        room_to: Celsius::whole(27),
        journey: Some(Journey {
            // 2026-10-31T18:00:00Z and 2026-11-01T07:00:00Z
            left: Moment::from_seconds(1_793_469_600),
            expected: Moment::from_seconds(1_793_516_400),
            breeder_offset: Offset::from_minutes(-300),
            shift: ClockShift::Gradual,
            last_fed: None,
        }),
        contacts: vec![
            Contact {
                role: Role::Breeder,
                name: "B. Example".to_owned(),
                number: "+1 555 010 0199".to_owned(),
            },
            Contact {
                role: Role::AvianVet,
                name: "Bird clinic".to_owned(),
                number: "5550100".to_owned(),
            },
        ],
        solids: "pellets, \"soft\" corn".to_owned(),
        note: "Holds his head high.\nBegs at the door.".to_owned(),
        unconfirmed: [PlanField::Room, PlanField::Tool].into(),
        ..CarePlan::default_for(Species::GreenWingedMacaw)
    }
}

fn bare_plan() -> CarePlan {
    CarePlan {
        room_from: Celsius::whole(26),
        room_to: Celsius::whole(26),
        unconfirmed: BTreeSet::new(),
        ..CarePlan::default_for(Species::Cockatiel)
    }
}

/// What the fixture says, in the order of its lines.
#[expect(clippy::too_many_lines, reason = "one of every kind of change")]
fn expected_v1() -> Vec<Entry> {
    let (morning, midday, bedtime) = (Slot::Morning, Slot::Midday, Slot::Bedtime);
    let ml = Millilitres::tenths_held;
    let text = str::to_owned;
    let mut added = entry(1, -300, Change::ChickAdded(Box::new(full_plan())));
    added.at = Moment::from_seconds(1_793_469_600);
    added.noted_at = Moment::from_seconds(1_793_470_000);
    added.by = text("Ann");
    let mut set = entry(
        2,
        0,
        Change::PartSet {
            part: Box::new(bare_plan().part(PartKind::Home)),
            replaces: vec![EntryId(*b"a-former-set")],
            side: Side::Owner,
            is_carer: true,
        },
    );
    set.chick = ChickId(*b"chick-id-two");
    let mut arrived = entry(3, -480, Change::Arrived);
    arrived.by = text("Ann");
    let later = [
        Change::Weighed {
            weight: Grams::whole(1_012),
            crop: CropAtWeighing::Empty,
        },
        Change::Fed {
            counts_as: Some(morning),
            taken: ml(550),
            offered: ml(600),
            served_at: Some(Celsius::tenths_held(402)),
            response: Response::Eager,
        },
        Change::Fed {
            counts_as: Some(bedtime),
            taken: ml(600),
            offered: ml(600),
            served_at: None,
            response: Response::NotNoted,
        },
        Change::refused(Some(midday)),
        Change::FeedPassedOver {
            slot: midday,
            day: Day::from_number(20_000),
            why: WhyPassedOver::CropNotEmpty,
        },
        Change::CropSeen {
            state: CropState::Quarter,
            feel: CropFeel::Soft,
        },
        Change::DroppingsSeen {
            look: Droppings::SmallOrFew,
        },
        Change::SolidsSeen {
            what: text("Möhre | corn"),
            eaten: SolidsEaten::Little,
        },
        Change::SignSeen {
            sign: Sign::ClickCleared,
        },
        Change::SignGone {
            sign: Sign::ClickCleared,
        },
        Change::FeedDropped {
            slot: midday,
            by_breeder: true,
        },
        Change::FeedBroughtBack { slot: midday },
        Change::MixMade {
            powder: Grams::whole(20),
            water: Grams::whole(60),
            fat_supplement: Grams::tenths_held(12),
        },
        Change::StockOpened {
            powder: Grams::whole(1_000),
        },
        Change::Called {
            whom: Role::Breeder,
            agreed: text("weigh again tonight"),
        },
        Change::RoomSeen {
            room: Celsius::tenths_held(-15),
        },
        Change::Noted {
            text: String::new(),
        },
        Change::Retracted {
            id: EntryId([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 4]),
        },
        Change::DrinkingSeen,
        Change::Grown,
        Change::Died,
        Change::HandedOver {
            to: Carer::Clinic,
            name: text("A. Example"),
        },
        Change::SameChick {
            typed: ChickId([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1]),
            card: ChickId(*b"chick-id-one"),
        },
        Change::AdviceNoted {
            who: Role::AvianVet,
            about: text("thin mix"),
            may_feed: true,
            ml: Some(ml(300)),
            until: Some(Moment::from_seconds(1_793_520_000)),
        },
        Change::PartTaken {
            sets: vec![EntryId(*b"a-former-set")],
        },
        Change::SameFood {
            notes: [5, 6]
                .map(|last| EntryId([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, last]))
                .into(),
            answer: SameFoodAnswer::NotedTwice,
        },
        Change::PartAgreed {
            sets: vec![EntryId(*b"a-former-set")],
            said_by: text("B. Example"),
        },
        Change::DroppingsCounted {
            paper: Paper::Day,
            count: 18,
        },
        Change::PhotoTaken(Photo {
            of: PhotoOf::Droppings,
            // of the three bytes "abc": FIPS 180-4, the example of SHA-256
            hash: PhotoHash::from_hex(
                "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
            )
            .unwrap(),
            bytes: 143_210,
        }),
        Change::VisitReason {
            text: text("food left this morning"),
        },
        Change::WeightStands {
            id: EntryId([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 3]),
        },
        Change::VetSeen {
            said: text("healthy"),
        },
        Change::VetBooked {
            on: Lived {
                day: Day::from_date(2026, 12, 3).unwrap(),
                time: WallTime::from_minutes(10 * 60 + 30),
            },
        },
        Change::Remarked {
            text: text("call about the cage"),
        },
    ];
    let later = (4..)
        .zip(later)
        .map(|(number, change)| entry(number, -480, change));
    [added, set, arrived].into_iter().chain(later).collect()
}

#[test]
fn version_one_opens_and_says_what_was_noted() {
    assert_eq!(saved_v1(), expected_v1());
}

#[test]
fn version_one_is_still_written_byte_for_byte() {
    // Line breaks stand in the fixture for the reader's sake only.
    assert_eq!(entries_to_text(&expected_v1()), SAVED_V1.replace('\n', ""));
}

#[test]
fn version_one_holds_every_kind_of_change() {
    let kinds: BTreeSet<usize> = saved_v1()
        .iter()
        .map(|entry| entries::kind(&entry.change))
        .collect();
    assert_eq!(kinds, (0..entries::KINDS).collect());
}

/// The word that `entry` has at the place of `path` in its saved text.
fn word_at(entry: &Entry, path: &str) -> String {
    let value: Value = serde_json::from_str(&entry_to_text(entry)).unwrap();
    value.pointer(path).unwrap().as_str().unwrap().to_owned()
}

/// Whether `words` are, in order, what stands at `path` in the entries of `changes`, there and back.
fn assert_words(name: &str, path: &str, changes: Vec<Change>) {
    let words: Value = serde_json::from_str(WORDS_V1).unwrap();
    let words: Vec<&str> = words[name]
        .as_array()
        .unwrap()
        .iter()
        .map(|word| word.as_str().unwrap())
        .collect();
    let entries: Vec<Entry> = changes
        .into_iter()
        .map(|change| entry(9, 0, change))
        .collect();
    let written: Vec<String> = entries.iter().map(|entry| word_at(entry, path)).collect();
    assert_eq!(written, words, "{name}");
    for entry in entries {
        assert_eq!(entry_from_text(&entry_to_text(&entry)), Ok(entry), "{name}");
    }
}

fn with_plan(change: impl Fn(&mut CarePlan)) -> Change {
    let mut plan = full_plan();
    change(&mut plan);
    Change::ChickAdded(Box::new(plan))
}

#[test]
fn the_words_for_what_was_seen_never_change() {
    let weight = Grams::whole(1_000);
    let crops = [
        CropAtWeighing::Empty,
        CropAtWeighing::AfterFeed,
        CropAtWeighing::NotSure,
    ];
    assert_words(
        "crop at weighing",
        "/crop",
        crops.map(|crop| Change::Weighed { weight, crop }).into(),
    );
    let states = CropState::ALL;
    let feel = CropFeel::Soft;
    assert_words(
        "crop state",
        "/state",
        states.map(|state| Change::CropSeen { state, feel }).into(),
    );
    let feels = [CropFeel::Soft, CropFeel::Firm, CropFeel::NotNoted];
    let state = CropState::Flat;
    assert_words(
        "crop feel",
        "/feel",
        feels.map(|feel| Change::CropSeen { state, feel }).into(),
    );
    let looks = Droppings::ALL;
    assert_words(
        "droppings",
        "/look",
        looks.map(|look| Change::DroppingsSeen { look }).into(),
    );
    assert_words(
        "paper",
        "/paper",
        Paper::ALL
            .map(|paper| Change::DroppingsCounted { paper, count: 3 })
            .into(),
    );
    let hash = PhotoHash([0; 32]);
    assert_words(
        "photo of",
        "/of",
        PhotoOf::ALL
            .map(|of| Change::PhotoTaken(Photo { of, hash, bytes: 1 }))
            .into(),
    );
    let eaten = [SolidsEaten::Played, SolidsEaten::Little, SolidsEaten::Meal];
    let what = String::new;
    assert_words(
        "solids eaten",
        "/eaten",
        eaten
            .map(|eaten| Change::SolidsSeen {
                what: what(),
                eaten,
            })
            .into(),
    );
    assert_words(
        "sign",
        "/sign",
        Sign::ALL.map(|sign| Change::SignSeen { sign }).into(),
    );
}

#[test]
fn the_words_for_feeds_never_change() {
    assert_words(
        "slot",
        "/slot",
        Slot::ALL.map(|slot| Change::refused(Some(slot))).into(),
    );
    let (slot, day) = (Slot::Midday, Day::from_number(20_000));
    let whys = [
        WhyPassedOver::CropNotEmpty,
        WhyPassedOver::NotFit,
        WhyPassedOver::Advised,
        WhyPassedOver::NotPossible,
        WhyPassedOver::NotKnown,
    ];
    assert_words(
        "why passed over",
        "/why",
        whys.map(|why| Change::FeedPassedOver { slot, day, why })
            .into(),
    );
    let responses = [Response::Eager, Response::Slow, Response::NotNoted];
    let fed = |response| Change::Fed {
        counts_as: Some(slot),
        taken: Millilitres::whole(1),
        offered: Millilitres::whole(1),
        served_at: None,
        response,
    };
    assert_words("response", "/response", responses.map(fed).into());
}

#[test]
fn the_words_of_the_plan_never_change() {
    let roles = [Role::Breeder, Role::AvianVet, Role::EmergencyVet];
    let called = |whom| Change::Called {
        whom,
        agreed: String::new(),
    };
    assert_words("role", "/whom", roles.map(called).into());
    let carers = [Carer::Owner, Carer::Breeder, Carer::Sitter, Carer::Clinic];
    let handed = |to| Change::HandedOver {
        to,
        name: String::new(),
    };
    assert_words("carer", "/to", carers.map(handed).into());
    assert_words(
        "role",
        "/plan/contacts/0/role",
        roles
            .map(|role| with_plan(|plan| plan.contacts[0].role = role))
            .into(),
    );
    assert_words(
        "tool",
        "/plan/tool",
        Tool::ALL
            .map(|tool| with_plan(|plan| plan.tool = tool))
            .into(),
    );
    let shifts = [ClockShift::AtOnce, ClockShift::Gradual];
    let shifted = |shift| {
        with_plan(|plan| plan.journey = plan.journey.map(|journey| Journey { shift, ..journey }))
    };
    assert_words(
        "clock shift",
        "/plan/journey/shift",
        shifts.map(shifted).into(),
    );
    let unconfirmed = |field| with_plan(|plan| plan.unconfirmed = [field].into());
    assert_words(
        "plan field",
        "/plan/unconfirmed/0",
        PlanField::ALL.map(unconfirmed).into(),
    );
    let species = |species| with_plan(|plan| plan.species = species);
    assert_words("species", "/plan/species", Species::ALL.map(species).into());
    let dropped = |slot| with_plan(|plan| plan.drop_order = vec![slot]);
    assert_words("slot", "/plan/drop_order/0", Slot::ALL.map(dropped).into());
    let fed = |slot| with_plan(|plan| plan.feeds = vec![feed(slot, 7, 0, 100)]);
    assert_words("slot", "/plan/feeds/0/slot", Slot::ALL.map(fed).into());
}

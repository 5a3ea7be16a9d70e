//! What of a card a QR code holds: never too much, whole parts only, and nothing twice once the whole card
//! comes.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::print_stdout,
    reason = "a test may stop at the first surprise, and this one tells its numbers"
)]

#[path = "common/entries.rs"]
mod entries;

use std::collections::BTreeSet;

use perchlight::domain::journal::demo;
use perchlight::domain::journal::entries::{Change, ChickId, Entry, EntryId, Journal};
use perchlight::domain::journal::incoming::incoming;
use perchlight::domain::outlook::{Outlook, outlook};
use perchlight::domain::plan::care_plan::{
    CarePlan, ClockShift, Contact, Journey, PlannedFeed, PowderLabel, Reference, Role, Slot, Tool,
};
use perchlight::domain::plan::parts::{Author, PartKind};
use perchlight::domain::plan::species::Species;
use perchlight::domain::plan::topic::Topic;
use perchlight::domain::quantity::units::{Celsius, Grams, Millilitres, Percent};
use perchlight::domain::time::moment::{Day, Moment, Offset, WallTime};
use perchlight::domain::time::zone::Zone;
use perchlight::share::card::{MOST_QR_BYTES, QrCard, card_to_link_text, qr_card};
use perchlight::share::import::{Imported, read_text};
use perchlight::share::qr::{self, Correction};
use perchlight::words::Language;
use proptest::prelude::*;

const CHICK: ChickId = ChickId(*b"a-test-chick");
/// As long as addresses of project pages usually are.
const APP: &str = "https://somebody.example.org/perchlight/#";

fn start() -> Moment {
    let day = Day::from_date(2026, 11, 12).unwrap();
    Moment::EARLIEST.plus_minutes((i64::from(day.number()) - 7_305) * 1_440 + 540)
}

/// A breeder's phone: the chick is typed in and said to be hers.
struct Breeder {
    journal: Journal,
    noted: u8,
}

impl Breeder {
    fn with(plan: CarePlan) -> Self {
        let journal = Journal::from_entries(Vec::new());
        let mut breeder = Self { journal, noted: 0 };
        let added = breeder.note(Change::ChickAdded(Box::new(plan)));
        breeder.note(Change::PartAgreed {
            sets: vec![added],
            said_by: String::new(),
        });
        breeder
    }

    fn note(&mut self, change: Change) -> EntryId {
        self.noted += 1;
        let at = start().plus_minutes(i64::from(self.noted));
        let id = EntryId([self.noted; 12]);
        let entry = Entry {
            at,
            id,
            chick: CHICK,
            noted_at: at,
            offset: Offset::from_minutes(60),
            by: "Ana".to_owned(),
            change,
        };
        self.journal.append(at, entry).unwrap();
        id
    }

    fn edit(&mut self, change: impl Fn(&mut CarePlan)) {
        let plans = self.journal.plans(CHICK).unwrap();
        let mut new = plans.now().unwrap().1.clone();
        change(&mut new);
        for set in plans.sets(&new, Author::BREEDER) {
            self.note(set);
        }
    }

    fn card(&self) -> Vec<Entry> {
        self.journal.entries_of_plan(CHICK)
    }
}

/// Every field filled, each text as long as may be, of this character.
fn fullest(letter: char) -> CarePlan {
    let text = |length: usize| letter.to_string().repeat(length);
    let day = Day::from_date(2026, 11, 12).unwrap();
    let contact = |role| Contact {
        role,
        name: text(CarePlan::SHORT_TEXT),
        number: "+1 555 010 0100".to_owned(),
    };
    let weight = |grams| Reference {
        weight: Grams::whole(grams),
        day,
    };
    let mut plan = CarePlan::default_for(Species::HyacinthMacaw);
    for topic in Topic::ALL {
        plan.say(topic, &text(CarePlan::LONG_TEXT));
    }
    let volume = Millilitres::whole(35);
    let feeds = plan.feeds[0];
    plan.feeds = Slot::ALL
        .into_iter()
        .zip(2..)
        .map(|(slot, place)| PlannedFeed {
            slot,
            time: WallTime::from_minutes(place * 190 + 7),
            volume,
        })
        .collect();
    assert_ne!(plan.feeds[0], feeds);
    CarePlan {
        name: text(CarePlan::SHORT_TEXT),
        ring: text(CarePlan::SHORT_TEXT),
        hatched: Some(day.plus(-80)),
        reference: Some(weight(1_010)),
        peak: Some(weight(1_040)),
        target: Some(Grams::whole(1_200)),
        scale_step: Grams::whole(2),
        shortest_gap_minutes: Some(250),
        retries_minutes: vec![30, 60, 120, 240],
        powder_fraction: Percent::whole(28),
        fat_supplement_per_100_ml: Grams::whole(3),
        powder_label: Some(PowderLabel {
            energy_kcal: 450,
            fat: Percent::whole(12),
            protein: Percent::whole(22),
        }),
        ten_spoons: Some(Grams::whole(42)),
        mixing_water: Celsius::whole(42),
        serve_from: Celsius::whole(38),
        serve_to: Celsius::whole(40),
        tool: Tool::BentSpoon,
        syringe: Millilitres::whole(60),
        loss_limit: Percent::whole(6),
        drop_order: Slot::ALL.to_vec(),
        settle_in_days: 9,
        waiting_days: 6,
        ask_before_drop: true,
        room_from: Celsius::whole(23),
        room_to: Celsius::whole(26),
        journey: Some(Journey {
            left: start(),
            expected: start().plus_minutes(300),
            breeder_offset: Offset::from_minutes(60),
            shift: ClockShift::Gradual,
            last_fed: Some((start().plus_minutes(-40), Millilitres::whole(60))),
        }),
        contacts: [Role::Breeder, Role::Breeder, Role::AvianVet, Role::AvianVet]
            .into_iter()
            .chain([Role::EmergencyVet, Role::EmergencyVet])
            .map(contact)
            .collect(),
        breeder_hours: text(CarePlan::SHORT_TEXT),
        report_days: Some(2),
        owner_name: text(CarePlan::SHORT_TEXT),
        owner_number: "+1 555 010 0109".to_owned(),
        solids: text(CarePlan::LONG_TEXT),
        note: text(CarePlan::LONG_TEXT),
        note_for_chick: text(CarePlan::LONG_TEXT),
        unconfirmed: BTreeSet::new(),
        ..plan
    }
}

/// The made-up chick's card, the default of each species, the fullest, and one edited many times.
fn cards() -> Vec<(String, Vec<Entry>)> {
    let mut cards = Vec::new();
    for language in Language::ALL {
        let zone = Zone::fixed(Offset::UTC);
        let journal = demo::journal(start(), &zone, language.demo_typed());
        let chick = *journal.chicks().first().unwrap();
        cards.push((
            format!("made up, {language:?}"),
            journal.entries_of_plan(chick),
        ));
    }
    for species in Species::ALL {
        let card = Breeder::with(CarePlan::default_for(species)).card();
        cards.push((format!("{species:?}"), card));
    }
    cards.push(("fullest".to_owned(), Breeder::with(fullest('n')).card()));
    let mut edited = Breeder::with(fullest('n'));
    for times in 1..=9 {
        edited.edit(|plan| {
            plan.feeds[0].volume = Millilitres::whole(30 + times);
            plan.loss_limit = Percent::whole(5 + times % 3);
            plan.room_from = Celsius::whole(18 + times % 4);
            plan.note = format!("changed {times} times");
        });
    }
    cards.push(("fullest, edited".to_owned(), edited.card()));
    cards
}

fn judged(journal: &Journal, chick: ChickId) -> Outlook {
    let zone = Zone::fixed(Offset::from_minutes(60));
    outlook(start().plus_minutes(3_000), journal, chick, &zone).unwrap()
}

/// What the picture of this card says when another program reads it.
fn scanned(card: &QrCard) -> String {
    let picture = qr::picture(&format!("{APP}{}", card.text()), "").unwrap();
    assert_eq!(picture.correction, Correction::Medium);
    let modules = qr_modules(&picture.svg);
    let side = modules.len();
    let mut image = rqrr::PreparedImage::prepare_from_greyscale(side * 4, side * 4, |x, y| {
        if modules[y / 4][x / 4] { 0 } else { 255 }
    });
    let (_, text) = image.detect_grids()[0].decode().unwrap();
    text
}

/// The dark modules of a drawing: `M<x> <y>h<width>v1…` is a run of them.
fn qr_modules(svg: &str) -> Vec<Vec<bool>> {
    let (_, after) = svg.split_once("viewBox=\"0 0 ").unwrap();
    let side: usize = after.split(' ').next().unwrap().parse().unwrap();
    let mut dark = vec![vec![false; side]; side];
    let (_, path) = svg.split_once("<path d=\"").unwrap();
    let path = path.split('"').next().unwrap();
    for run in path.split('M').skip(1) {
        let (place, width) = run.split_once('h').unwrap();
        let (x, y) = place.split_once(' ').unwrap();
        let (x, y): (usize, usize) = (x.parse().unwrap(), y.parse().unwrap());
        let width: usize = width.split('v').next().unwrap().parse().unwrap();
        dark[y][x..x + width].fill(true);
    }
    dark
}

/// What is read of the picture as it stands on paper, 61 mm wide without its clear margin: taken at 150 dpi,
/// turned by some degrees, each point the mean of nine around it, and made larger, as a camera sees it that
/// comes nearer until it has read it.
fn read_from_paper(card: &QrCard, degrees: f64) -> Option<String> {
    let picture = qr::picture(&format!("{APP}{}", card.text()), "").unwrap();
    let modules = qr_modules(&picture.svg);
    let whole = f64::from(u32::try_from(modules.len()).unwrap());
    // 61 mm at 150 dots in 25.4 mm are 360 dots.
    let dots = 61.0 / 25.4 * 150.0 / (whole - 8.0);
    let side = (whole * dots).ceil();
    let (sin, cos) = degrees.to_radians().sin_cos();
    let is_dark = |x: f64, y: f64| {
        let (x, y) = (x - side / 2.0, y - side / 2.0);
        let (x, y) = (
            x * cos - y * sin + side / 2.0,
            x * sin + y * cos + side / 2.0,
        );
        let (x, y) = ((x / dots).floor(), (y / dots).floor());
        let is_on = (0.0..whole).contains(&x) && (0.0..whole).contains(&y);
        is_on && modules[whole_number(y)][whole_number(x)]
    };
    let side = whole_number(side);
    let decimal = |at: usize| f64::from(u32::try_from(at).unwrap());
    let light = |x: usize, y: usize| {
        let around = [-0.4, 0.0, 0.4];
        let points = around
            .iter()
            .flat_map(|dx| around.iter().map(move |dy| (dx, dy)));
        let dark =
            points.filter(|(dx, dy)| is_dark(decimal(x) + 0.5 + **dx, decimal(y) + 0.5 + **dy));
        255.0 - 255.0 * decimal(dark.count()) / 9.0
    };
    let lights: Vec<Vec<f64>> = (0..=side)
        .map(|y| (0..=side).map(|x| light(x, y)).collect())
        .collect();
    [3, 2, 4].into_iter().find_map(|times: usize| {
        let large = times * side;
        let mut image = rqrr::PreparedImage::prepare_from_greyscale(large, large, |x, y| {
            let (left, top) = (x / times, y / times);
            let part = |at: usize| decimal(at % times) / decimal(times);
            let (right, low) = (part(x), part(y));
            let row = |y: usize| lights[y][left] * (1.0 - right) + lights[y][left + 1] * right;
            let mixed = row(top) * (1.0 - low) + row(top + 1) * low;
            u8::try_from(whole_number(mixed)).unwrap()
        });
        let grids = image.detect_grids();
        grids.first()?.decode().ok().map(|(_, text)| text)
    })
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::as_conversions,
    reason = "a whole number that is not below zero"
)]
fn whole_number(number: f64) -> usize {
    number as usize
}

/// The law of a short card: joined with the whole one, in whatever order, it is the whole one.
fn assert_joins(whole: &[Entry], short: &QrCard) {
    let alone = Journal::from_entries(whole.to_vec());
    let part = Journal::from_entries(short.entries.clone());
    for (first, then) in [(&part, &alone), (&alone, &part)] {
        let mut joined = first.clone();
        joined.join(then);
        assert_eq!(joined, alone);
        let mut one_by_one = first.clone();
        for entry in then.entries() {
            one_by_one.insert(entry.clone());
        }
        assert_eq!(one_by_one, alone);
        assert!(part.entries().iter().all(|entry| joined.holds(entry)));
        assert_eq!(joined.clone().join(&part), 0);
    }
}

#[test]
fn every_card_has_a_qr_code_of_560_bytes_or_less_that_joins_the_whole_card() {
    for (name, whole) in cards() {
        let short = qr_card(&whole).unwrap();
        let (bytes, link) = (short.bytes(), card_to_link_text(&whole).len());
        println!(
            "{name}: {bytes} bytes, whole: {}, link {link}",
            short.is_whole
        );
        assert!(bytes <= MOST_QR_BYTES && bytes <= 560, "{name}: {bytes}");
        let expected = if short.is_whole {
            Imported::Card(whole.clone())
        } else {
            Imported::ShortCard(short.entries.clone())
        };
        assert_eq!(read_text(&scanned(&short)), Ok(expected), "{name}");
        assert_joins(&whole, &short);
        // The same answer for the chick, whether it came by QR code and link or by link alone.
        let chick = whole[0].chick;
        let taken = |sent: &[&[Entry]]| {
            let mut journal = Journal::default();
            for entries in sent {
                journal.join(&Journal::from_entries(entries.to_vec()));
            }
            judged(&journal, chick)
        };
        assert_eq!(taken(&[&short.entries, &whole]), taken(&[&whole]), "{name}");
    }
}

/// The squares of a usual card and of the longest. Whoever holds a phone over paper turns it a little until it
/// reads.
#[test]
fn a_code_is_read_from_paper_at_150_dpi_blurred_and_turned() {
    let cards = cards().into_iter();
    for (name, whole) in
        cards.filter(|(name, _)| name == "made up, English" || name == "fullest, edited")
    {
        let short = qr_card(&whole).unwrap();
        let mut turned = [2.0, -2.0].into_iter();
        let read = turned.find_map(|degrees| read_from_paper(&short, degrees));
        assert_eq!(read, Some(format!("{APP}{}", short.text())), "{name}");
    }
}

/// Two days at home need who it is, what it is fed and how warm, the weight to call at, and whom to call.
#[test]
fn the_fullest_plan_leaves_out_whole_parts_and_none_of_the_first_two_days() {
    let plan = fullest('n');
    let short = qr_card(&Breeder::with(plan.clone()).card()).unwrap();
    assert!(!short.is_whole);
    let journal = Journal::from_entries(short.entries);
    let got = journal.plan_of(CHICK).unwrap();
    for kind in [
        PartKind::Chick,
        PartKind::Feeds,
        PartKind::Formula,
        PartKind::Weight,
        PartKind::People,
        PartKind::Journey,
    ] {
        assert!(got.holds(kind), "{kind:?}");
    }
    for kind in PartKind::ALL.into_iter().filter(|kind| got.holds(*kind)) {
        let mut whole = plan.clone();
        whole.said.clone_from(&got.said);
        assert_eq!(got.part(kind), whole.part(kind), "{kind:?}");
    }
    // What is left out is said not to be confirmed.
    assert!(!got.holds(PartKind::Words));
    let left_out = PartKind::ALL.into_iter().filter(|kind| !got.holds(*kind));
    for kind in left_out {
        let open = |plan: &CarePlan| {
            let fields = plan.unconfirmed.iter().copied();
            fields.filter(|field| field.part() == kind).count()
        };
        assert_eq!(open(&got), open(&CarePlan::blank()), "{kind:?}");
    }
}

/// 60 letters of four bytes each for name and ring alone are 480 bytes.
#[test]
fn where_even_the_least_does_not_fit_there_is_no_qr_code() {
    assert_eq!(qr_card(&Breeder::with(fullest('🦜')).card()), None);
}

#[test]
fn a_changed_plan_is_seen_from_its_qr_code_and_an_old_code_says_that_it_is_old() {
    let mut breeder = Breeder::with(fullest('n'));
    let old = qr_card(&breeder.card()).unwrap();
    breeder.edit(|plan| plan.feeds[0].volume = Millilitres::whole(33));
    let new = qr_card(&breeder.card()).unwrap();
    let now = start().plus_minutes(100);
    let owner = Journal::from_entries(breeder.card());
    let found = incoming(&owner, &old.entries, true, now);
    assert!(found[0].is_older && found[0].changes.is_empty() && found[0].taken.is_empty());
    let found = incoming(&owner, &new.entries, true, now);
    assert!(!found[0].is_older && found[0].changes.is_empty());

    let mut owner = Journal::from_entries(old.entries);
    let found = incoming(&owner, &new.entries, true, now);
    assert_eq!((found[0].changes.len(), found[0].is_older), (1, false));
    owner.join(&Journal::from_entries(new.entries));
    let feed = owner.plan_of(CHICK).unwrap().feeds[0];
    assert_eq!(feed.volume, Millilitres::whole(33));
}

/// Whoever scanned both codes of a card that was edited in between and then got the card has what the card holds.
#[test]
fn two_codes_of_an_edited_card_and_the_card_are_the_card_in_whatever_order() {
    let mut breeder = Breeder::with(fullest('n'));
    let old = qr_card(&breeder.card()).unwrap();
    breeder.edit(|plan| plan.feeds[0].volume = Millilitres::whole(33));
    let whole = breeder.card();
    let new = qr_card(&whole).unwrap();
    assert_ne!(old.entries, new.entries);
    let alone = Journal::from_entries(whole.clone());
    let sent = [&old.entries, &new.entries, &whole];
    for order in [
        [0, 1, 2],
        [0, 2, 1],
        [1, 0, 2],
        [1, 2, 0],
        [2, 0, 1],
        [2, 1, 0],
    ] {
        let mut journal = Journal::default();
        for place in order {
            journal.join(&Journal::from_entries(sent[place].clone()));
        }
        assert_eq!(journal, alone, "{order:?}");
    }
}

proptest! {
    #[test]
    fn whatever_a_plan_holds_its_qr_code_joins_the_whole_card(
        mut plan in entries::plan(),
        mut other in entries::plan(),
    ) {
        // A day that is not reached yet is refused.
        (plan.hatched, other.hatched) = (None, None);
        let mut breeder = Breeder::with(plan);
        breeder.edit(|plan| plan.clone_from(&other));
        let whole = breeder.card();
        if let Some(short) = qr_card(&whole) {
            prop_assert!(short.bytes() <= 560);
            assert_joins(&whole, &short);
        }
    }
}

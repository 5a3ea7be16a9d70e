//! How large what is sent grows: the card's picture, three weeks as a link, a year as a file.
//!
//! `cargo test --no-default-features --test exchange_sizes -- --nocapture` prints the sizes.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a test may stop at the first surprise, and this one tells its numbers"
)]

use std::collections::BTreeSet;

use perchlight::domain::journal::demo;
use perchlight::domain::journal::entries::{Change, ChickId, Droppings};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::outlook::outlook;
use perchlight::domain::plan::care_plan::{CarePlan, Contact, Reference, Role, Slot};
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::Grams;
use perchlight::domain::time::moment::{Day, Moment, Offset};
use perchlight::domain::time::zone::Zone;
use perchlight::share::card::{card_to_link_text, card_to_qr_text};
use perchlight::share::html_file::report_html;
use perchlight::share::link::{MOST_CHARACTERS, entries_to_link_text};
use perchlight::share::qr;
use perchlight::store::saved::entries_to_text;
use perchlight::words::Language;
use perchlight::words::format::Writing;

const CHICK: ChickId = ChickId(*b"a-test-chick");
/// As long as addresses of project pages usually are.
const APP: &str = "https://somebody.example.org/perchlight/#";
/// Version 20 has 3 px a module on a screen 320 px wide: 97 modules and the quiet zone of 8 (ISO/IEC
/// 18004, 5.3.8: 17 + 4 × version modules).
const LARGEST_VERSION: usize = 20;

/// A plan as a breeder fills it: every short field, two lines of solids, three of remarks.
fn plan() -> CarePlan {
    let day = Day::from_date(2026, 11, 1).unwrap();
    let contact = |role, name: &str, number: &str| Contact {
        role,
        name: name.to_owned(),
        number: number.to_owned(),
    };
    CarePlan {
        name: "Ember".to_owned(),
        ring: "GB 26-0142".to_owned(),
        hatched: Some(day.plus(-90)),
        reference: Some(Reference {
            weight: Grams::whole(1_040),
            day,
        }),
        contacts: vec![
            contact(Role::Breeder, "Example breeder", "+1 555 010 0100"),
            contact(Role::AvianVet, "Made-up avian clinic", "+1 555 010 0101"),
            contact(
                Role::EmergencyVet,
                "Made-up night clinic",
                "+1 555 010 0102",
            ),
        ],
        solids: "Soaked pellets, cooked sweet potato, corn, pomegranate".to_owned(),
        note:
            "Hold the head level from her left side. She shakes her head when she has had enough."
                .to_owned(),
        unconfirmed: BTreeSet::new(),
        ..CarePlan::default_for(Species::GreenWingedMacaw)
    }
}

/// Days of three feeds, one weighing and one look at the droppings.
fn days(count: i32) -> Scenario {
    let start = Day::from_date(2026, 11, 1).unwrap();
    let mut script = Scenario::new(CHICK, plan(), start, Offset::from_minutes(0));
    for day in 0..count {
        script.weigh(day, 1_000 + day % 9);
        for (hour, slot) in [(7, Slot::Morning), (14, Slot::Midday), (21, Slot::Bedtime)] {
            script.feed(day, hour, day % 30, slot, 50);
        }
        let look = Droppings::Normal;
        script.note(day, 9, 0, Change::DroppingsSeen { look });
    }
    script
}

#[test]
fn the_picture_of_a_full_card_can_be_read_from_a_small_screen() {
    let entries = days(0).journal().entries_of_plan(CHICK);
    let text = format!("{APP}{}", card_to_qr_text(&entries));
    // Of the drawing itself: its width is that of the modules and four clear ones at each side.
    let picture = qr::picture(&text, "").unwrap();
    let (_, size) = picture.svg.split_once("viewBox=\"0 0 ").unwrap();
    let width: usize = size.split(' ').next().unwrap().parse().unwrap();
    let version = (width - 8 - 17) / 4;
    println!(
        "card: QR version {version}, {} characters; as a link {}",
        text.len(),
        card_to_link_text(&entries).len()
    );
    assert!(version <= LARGEST_VERSION, "version {version}");
}

/// Ours: what a messenger shows without cutting a link.
#[test]
fn the_card_of_the_made_up_chick_stays_within_560_bytes() {
    let now = Moment::from_seconds(1_795_600_000);
    let zone = Zone::fixed(Offset::UTC);
    let journal = demo::journal(now, &zone, Language::English.demo_typed());
    let entries = journal.entries_of_plan(*journal.chicks().first().unwrap());
    let link = card_to_link_text(&entries);
    println!("card of the made-up chick: {} bytes", link.len());
    assert!(link.len() <= 560, "{}", link.len());
}

#[test]
fn three_weeks_fit_into_a_link() {
    let script = days(21);
    let journal = script.journal();
    let link = entries_to_link_text(journal.entries()).unwrap();
    println!(
        "three weeks: {} entries, a link of {} characters",
        journal.entries().len(),
        link.len()
    );
    assert!(link.len() <= MOST_CHARACTERS, "{}", link.len());
}

/// Ours: a messenger takes 16 MB and more; a telephone opens 1.5 MB at once.
#[test]
fn a_year_is_a_file_that_can_be_sent() {
    let script = days(365);
    let journal = script.journal();
    let now = script.at(364, 22, 0);
    let outlook = outlook(now, &journal, CHICK, &script.zone()).unwrap();
    let writing = Writing::metric(Language::English);
    let page = report_html(writing, &outlook, journal.entries(), None).len();
    let backup = entries_to_text(journal.entries()).len();
    println!(
        "a year: {} entries, report {page} bytes, backup {backup} bytes",
        journal.entries().len()
    );
    assert!(backup < page && page < 1_500_000, "{page}");
}

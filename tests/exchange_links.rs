//! Cards and entries as links: there and back, one form only, nothing hostile taken, short enough.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

#[path = "common/entries.rs"]
mod entries;

use std::collections::BTreeSet;

use perchlight::domain::journal::demo;
use perchlight::domain::journal::entries::{
    Change, ChickId, CropAtWeighing, Entry, EntryId, Journal, Response,
};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::plan::care_plan::{CarePlan, Contact, PlanField, Reference, Role, Slot};
use perchlight::domain::plan::plan_line::plan_difference;
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::{Celsius, Grams, Millilitres};
use perchlight::domain::time::moment::{Day, Moment, Offset};
use perchlight::domain::time::zone::Zone;
use perchlight::share::card::{card_to_link_text, card_to_qr_text};
use perchlight::share::import::{Imported, read_text};
use perchlight::share::link::{
    MOST_CHARACTERS, entries_since, entries_to_link_text, entries_to_send,
};
use perchlight::share::{base64url, digits, qr};
use perchlight::store::import_error::ImportError;
use perchlight::store::saved::entries_to_text;
use perchlight::words::Language;
use perchlight::words::format::Writing;
use proptest::collection::vec;
use proptest::prelude::*;

const CHICK: ChickId = ChickId(*b"a-test-chick");

/// A card as a breeder writes it: name, ring, hatch day, weight, own volumes, two contacts, solids.
fn typical_plan() -> CarePlan {
    let mut plan = CarePlan::default_for(Species::BlueAndYellowMacaw);
    "Saffron".clone_into(&mut plan.name);
    "EXAMPLE 01".clone_into(&mut plan.ring);
    let day = |month, day| Day::from_date(2026, month, day).unwrap();
    plan.hatched = Some(day(8, 1));
    plan.reference = Some(Reference {
        weight: Grams::whole(1_040),
        day: day(11, 1),
    });
    let contact = |role, name: &str, number: &str| Contact {
        role,
        name: name.to_owned(),
        number: number.to_owned(),
    };
    plan.contacts = vec![
        contact(Role::Breeder, "Example breeder", "+1 555 010 0100"),
        contact(Role::AvianVet, "Example avian vet", "+1 555 010 0101"),
    ];
    "soaked pellets, cooked sweet potato, papaya".clone_into(&mut plan.solids);
    "Likes to be fed from the left. Bedtime feed last to go.".clone_into(&mut plan.note);
    plan.unconfirmed = BTreeSet::from([PlanField::Room]);
    plan
}

/// The entries of a card: the chick with this plan, added on the day after the handover weight's.
fn added(chick: ChickId, plan: CarePlan) -> Vec<Entry> {
    let day = Day::from_date(2026, 11, 2).unwrap();
    let script = Scenario::new(chick, plan, day, Offset::UTC);
    script.journal().entries().to_vec()
}

fn card(chick: ChickId, plan: CarePlan) -> Imported {
    Imported::Card(added(chick, plan))
}

fn three_weeks() -> Vec<Entry> {
    let now = Moment::from_seconds(1_795_000_000);
    let mut entries = Vec::new();
    for days in [0, 11] {
        let zone = Zone::fixed(Offset::from_minutes(-300));
        let typed = Language::English.demo_typed();
        let journal = demo::journal(now.plus_minutes(-days * 1_440), &zone, typed);
        entries.extend(journal.entries().iter().cloned().map(|mut entry| {
            entry.id.0[0] ^= u8::try_from(days).unwrap();
            entry
        }));
    }
    entries.retain(|entry| entry.change.plan().is_none_or(|_| entry.id.0[0] & 1 == 1));
    Journal::from_entries(entries).entries().to_vec()
}

proptest! {
    #[test]
    fn a_card_comes_back_as_it_was_by_link_and_by_digits(
        plan in entries::plan(),
        id in any::<[u8; 12]>(),
    ) {
        let chick = ChickId(id);
        let entries = added(chick, plan.clone());
        let link = card_to_link_text(&entries);
        prop_assert_eq!(&link, &card_to_link_text(&entries));
        prop_assert_eq!(read_text(&link), Ok(card(chick, plan.clone())));
        prop_assert_eq!(read_text(&card_to_qr_text(&entries)), Ok(card(chick, plan)));
    }

    #[test]
    fn a_link_lives_through_messages_that_break_lines_and_add_words(
        plan in entries::plan(),
        width in 1..80_usize,
    ) {
        let entries = added(CHICK, plan.clone());
        let link = card_to_link_text(&entries);
        let lines: Vec<&str> = link.as_bytes().chunks(width)
            .map(|line| str::from_utf8(line).unwrap()).collect();
        let prefix_is_whole = width >= 6;
        let wrapped = format!("Hello, please open\r\n{}\r\nSee you soon", lines.join("\r\n"));
        if prefix_is_whole {
            prop_assert_eq!(read_text(&wrapped), Ok(card(CHICK, plan.clone())));
        }
        let url = format!("\n  https://example.org/perchlight/#{link}  \n");
        prop_assert_eq!(read_text(&url), Ok(card(CHICK, plan.clone())));
        // A full stop or a bracket is no part of the link it stands behind.
        let digits = card_to_qr_text(&entries);
        for text in [format!("(see {link})."), format!("(see {digits}), please")] {
            prop_assert_eq!(read_text(&text), Ok(card(CHICK, plan.clone())));
        }
    }

    #[test]
    fn entries_come_back_as_a_set_in_the_order_of_a_journal(
        noted in vec(entries::entry(), 0..12),
    ) {
        let expected = Journal::from_entries(noted.clone());
        let mut turned = noted.clone();
        turned.reverse();
        let Some(link) = entries_to_link_text(&noted) else {
            return Ok(());
        };
        prop_assert_eq!(entries_to_link_text(&turned), Some(link.clone()));
        let taken = read_text(&link);
        prop_assert_eq!(&taken, &Ok(Imported::Entries(expected.entries().to_vec())));
        let Ok(Imported::Entries(back)) = taken else { panic!() };
        prop_assert_eq!(entries_to_link_text(&back), Some(link));
    }

    #[test]
    fn no_bytes_make_the_reader_panic(
        bytes in vec(any::<u8>(), 0..400),
        letter in "[a-z]",
        text in ".{0,200}",
    ) {
        let as_letters = base64url::encode(&bytes);
        let as_digits = digits::encode(&bytes);
        for text in [
            format!("pl1{letter}.{as_letters}"),
            format!("pl1q.{as_digits}"),
            format!("{{\"v\":1,\"entries\":{text}}}"),
            format!("<script type=\"application/json\" id=\"perchlight-data\" data-crc32=\"{text}"),
            text,
        ] {
            prop_assert!(read_text(&text).is_err());
        }
    }

    #[test]
    fn two_plans_that_differ_are_told_apart_in_words(
        old in entries::plan(),
        new in entries::plan(),
    ) {
        prop_assert_eq!(plan_difference(&old, &old), vec![]);
        let parts = plan_difference(&old, &new);
        let is_same = CarePlan { unconfirmed: new.unconfirmed.clone(), ..old.clone() } == new;
        prop_assert_eq!(parts.is_empty(), is_same);
        for language in Language::ALL {
            let lines = Writing::metric(language).plan_changes(&old, &new);
            prop_assert_eq!(lines.len(), parts.len());
            prop_assert!(lines.iter().all(|line| line.contains(" → ")));
        }
    }

    /// The check sum is right here, so what stops them is the reading of the values.
    #[test]
    fn content_of_any_bytes_under_a_right_check_sum_never_panics(
        content in vec(any::<u8>(), 0..300),
        kind in 1..=3_u8,
    ) {
        let text = sealed(1, kind, &content);
        let taken = read_text(&text);
        if let Ok(Imported::Card(entries)) = taken {
            let faulty = |entry: &Entry| entry.change.plan().is_some_and(|plan| !plan.faults().is_empty());
            prop_assert!(!entries.iter().any(faulty));
        }
    }
}

/// The envelope written by hand, from the description of the form: version, kind, length, content,
/// CRC-32 lowest byte first.
fn sealed(version: u8, kind: u8, content: &[u8]) -> String {
    let mut bytes = vec![version, kind];
    bytes.extend(seven_bits_a_byte(u64::try_from(content.len()).unwrap()));
    bytes.extend(content);
    let sum = perchlight::checksum::crc32(&bytes);
    bytes.extend(sum.to_le_bytes());
    let letter = ['c', 'p', 'e'][usize::from(kind - 1)];
    format!("pl1{letter}.{}", base64url::encode(&bytes))
}

/// A number in groups of seven bits, lowest first, all but the last with the highest bit set.
fn seven_bits_a_byte(mut number: u64) -> Vec<u8> {
    let mut bytes = Vec::new();
    while number >= 128 {
        bytes.push(u8::try_from(number % 128 + 128).unwrap());
        number /= 128;
    }
    bytes.push(u8::try_from(number).unwrap());
    bytes
}

#[test]
fn every_flipped_bit_of_a_card_is_refused() {
    let link = card_to_link_text(&added(CHICK, typical_plan()));
    let bytes = base64url::decode(link.strip_prefix("pl1c.").unwrap()).unwrap();
    for bit in 0..bytes.len() * 8 {
        let mut flipped = bytes.clone();
        flipped[bit / 8] ^= 1 << (bit % 8);
        let text = format!("pl1c.{}", base64url::encode(&flipped));
        assert!(read_text(&text).is_err(), "bit {bit}");
        let text = format!("pl1q.{}", digits::encode(&flipped));
        assert!(read_text(&text).is_err(), "bit {bit} of the digits");
    }
}

#[test]
fn a_card_cut_off_anywhere_is_called_cut_off() {
    for link in [
        card_to_link_text(&added(CHICK, typical_plan())),
        card_to_qr_text(&added(CHICK, typical_plan())),
        entries_to_link_text(&three_weeks()).unwrap(),
    ] {
        for length in 5..link.len() {
            let text = &link[..length];
            assert_eq!(read_text(text), Err(ImportError::Truncated), "{text}");
        }
        for length in 0..5 {
            assert_eq!(read_text(&link[..length]), Err(ImportError::NotOurs));
        }
        assert_eq!(read_text(&format!("{link}0")), Err(ImportError::Damaged));
    }
}

#[test]
fn each_reason_for_a_refusal_is_told_apart() {
    let content = [0_u8; 20];
    assert_eq!(read_text(""), Err(ImportError::NotOurs));
    assert_eq!(read_text("plan for tomorrow."), Err(ImportError::NotOurs));
    assert_eq!(read_text("apl1c.AAAA"), Err(ImportError::NotOurs));
    assert_eq!(read_text("{\"a\":1}"), Err(ImportError::NotOurs));
    assert_eq!(
        read_text("<!doctype html><p>Hello"),
        Err(ImportError::NotOurs)
    );
    let newer = |version| Err(ImportError::Newer { version });
    assert_eq!(read_text("pl2c.AAAA"), newer(2));
    assert_eq!(read_text(&sealed(9, 1, &content)), newer(9));
    assert_eq!(read_text("{\"v\":99,\"entries\":[]}"), newer(99));
    assert_eq!(read_text("pl1z.AAAA"), Err(ImportError::WrongKind));
    let swapped = sealed(1, 1, &content).replace("pl1c", "pl1e");
    assert_eq!(read_text(&swapped), Err(ImportError::WrongKind));
    let backup = entries_to_text(&three_weeks());
    assert_eq!(read_text(&backup[..500]), Err(ImportError::Truncated));
    let damaged = backup.replacen("\"g10\":", "\"g11\":", 1);
    assert_eq!(read_text(&damaged), Err(ImportError::Damaged));
    // 65,537 bytes are announced, one more than are taken: 1 + 128 × (0 + 128 × 4).
    let announced = |lowest| {
        let bytes = [1, 3, lowest, 0x80, 4, 0];
        read_text(&format!("pl1e.{}", base64url::encode(&bytes)))
    };
    assert_eq!(announced(0x81), Err(ImportError::TooLarge));
    assert_eq!(announced(0x80), Err(ImportError::Truncated));
    assert_eq!(
        read_text(&" ".repeat((32 << 20) + 1)),
        Err(ImportError::TooLarge)
    );
}

/// How mail programs show the text that somebody answers to: a mark before each line, lines broken at 72,
/// marks that are not seen where a word may be broken.
#[test]
fn a_link_in_an_answered_mail_is_understood() {
    let entries = added(CHICK, typical_plan());
    let link = format!(
        "https://example.org/perchlight/#{}",
        card_to_link_text(&entries)
    );
    let broken = |mark: &str, width: usize, end: &str| {
        let lines = link.as_bytes().chunks(width);
        let lines = lines.map(|line| format!("{mark}{}", str::from_utf8(line).unwrap()));
        let lines = lines.collect::<Vec<_>>().join(end);
        format!(
            "On Tue, 3 Nov, Ana wrote:\r\n{mark}The card:\r\n{lines}\r\n{mark}See you\r\n\r\nThanks!"
        )
    };
    let marked = link
        .replace("pl1c.", "pl1c.\u{ad}")
        .replacen("AA", "A\u{ad}A\u{200b}", 1);
    for text in [
        broken("> ", 72, "\r\n"),
        broken(">> ", 72, "\n"),
        broken("> > >", 40, "\n"),
        broken("\u{a0}> ", 72, "\r\n"),
        // Broken within the few letters that say what it is: 34 + 3 characters before the version.
        broken("> ", 35, "\n"),
        broken("", 35, "\r\n"),
        // Quoted-printable ends a line that goes on with `=`.
        broken("", 75, "=\r\n"),
        format!("<{link}>"),
        format!("\u{2068}{link}\u{2069} \u{2190} the card"),
        marked,
    ] {
        assert_eq!(
            read_text(&text),
            Ok(Imported::Card(entries.clone())),
            "{text}"
        );
    }
    // What is missing stays missing, whatever stands before the lines.
    let cut = broken("> ", 72, "\n")
        .split_once("\r\n> See")
        .unwrap()
        .0
        .to_owned();
    assert_eq!(
        read_text(&cut[..cut.len() - 3]),
        Err(ImportError::Truncated)
    );
}

#[test]
fn many_beginnings_of_a_link_take_no_time() {
    let text = "pl1".repeat(1 << 20);
    assert_eq!(read_text(&text), Err(ImportError::NotOurs));
}

/// What the first version of the form says, byte by byte, worked out by hand from its description;
/// cards at breeders' and in messages must stay readable.
#[test]
fn the_first_form_of_a_card_stays_readable() {
    let mut plan = CarePlan::default_for(Species::GreyParrot);
    plan.feeds.truncate(1);
    plan.feeds[0].volume = Millilitres::whole(30);
    "Pip".clone_into(&mut plan.name);
    plan.hatched = Day::from_date(2024, 1, 2);
    plan.unconfirmed.clear();
    let at = Moment::from_seconds(20_759 * 86_400);
    let entry = Entry {
        at,
        id: EntryId([9; 12]),
        chick: CHICK,
        noted_at: at,
        offset: Offset::UTC,
        by: String::new(),
        change: Change::ChickAdded(Box::new(plan)),
    };
    // One entry: kind 17 and another chick than before (32); minutes since 1990, twice; id, chick.
    let mut content = vec![1, 17 + 32];
    content.extend(seven_bits_a_byte((20_759 - 7_305) * 1_440 * 2));
    content.extend([9; 12]);
    content.extend(CHICK.0);
    // Species 10; name (bit 0) and hatch day (bit 2); one feed: morning is slot 1 of 1,440 minutes,
    // 07:00 are 420 more, 1,860 = 68 + 14 × 128; 300 tenths with sign are 600 = 88 + 4 × 128.
    content.extend([10, 0b101, 1, 68 + 128, 14, 88 + 128, 4]);
    content.extend([3, b'P', b'i', b'p']);
    // One day after 2024-01-01, with sign.
    content.push(2);
    let entries = vec![entry];
    assert_eq!(card_to_link_text(&entries), sealed(1, 1, &content));
    assert_eq!(
        read_text(&sealed(1, 1, &content)),
        Ok(Imported::Card(entries))
    );
}

/// As for a card: two entries worked out by hand from the description of the form.
#[test]
fn the_first_form_of_entries_stays_readable() {
    // 2026-11-02 is day 20,759 from 1970, 1990-01-01 is day 7,305.
    let morning = Moment::from_seconds(20_759 * 86_400 + (6 * 60 + 45) * 60);
    let entry = |at, id, change| Entry {
        at,
        id: EntryId([id; 12]),
        chick: CHICK,
        noted_at: at,
        offset: Offset::UTC,
        by: String::new(),
        change,
    };
    let weight = Grams::whole(1_012);
    let crop = CropAtWeighing::Empty;
    let fed = Change::Fed {
        counts_as: Some(Slot::Bedtime),
        taken: Millilitres::whole(55),
        offered: Millilitres::whole(60),
        served_at: Some(Celsius::whole(40)),
        response: Response::Eager,
    };
    let entries = vec![
        entry(morning, 1, Change::Weighed { weight, crop }),
        entry(morning.plus_minutes(855), 2, fed),
    ];
    // Two entries. The first: kind 0 and another chick than before (32); minutes since 1990, twice;
    // id, chick; 10,120 tenths more than before, with sign.
    let mut content = vec![2, 32];
    content.extend(seven_bits_a_byte(((20_759 - 7_305) * 1_440 + 405) * 2));
    content.extend([1; 12]);
    content.extend(CHICK.0);
    content.extend(seven_bits_a_byte(20_240));
    // The second: kind 1, 855 minutes later, id; bedtime is slot 5 of 6, eager 0 of 3, in part 1 of
    // 2, with a temperature of its own 2 of 3; 55 ml, 5 ml more were offered, 40 °C.
    content.push(1);
    content.extend(seven_bits_a_byte(1_710));
    content.extend([2; 12]);
    content.push(5 + 6 * (3 * (1 + 2 * 2)));
    content.extend([1_100, 100, 800].into_iter().flat_map(seven_bits_a_byte));
    let link = sealed(1, 3, &content);
    assert_eq!(entries_to_link_text(&entries), Some(link.clone()));
    assert_eq!(read_text(&link), Ok(Imported::Entries(entries)));
}

/// Limits: a QR code of version 20 at most, 15 aimed at; 412 bytes are what version 15 holds at M.
#[test]
fn a_typical_card_fits_a_small_qr_code_and_three_weeks_fit_a_link() {
    let plan = typical_plan();
    let text = format!(
        "https://example.org/perchlight/#{}",
        card_to_qr_text(&added(CHICK, plan))
    );
    let picture = qr::picture(&text, "card").unwrap();
    assert!(picture.version <= 15, "{}", picture.version);
    let weeks = three_weeks();
    let link = entries_to_link_text(&weeks).unwrap();
    assert!(link.len() <= MOST_CHARACTERS);
    assert_eq!(read_text(&link), Ok(Imported::Entries(weeks)));
}

/// The aim for 60 weighings and 60 feeds is 600 bytes beside their ids of 12 bytes each.
#[test]
fn sixty_weighings_and_sixty_feeds_take_600_bytes_beside_their_ids() {
    let plan = CarePlan::default_for(Species::BlueAndYellowMacaw);
    let day = Day::from_date(2026, 11, 1).unwrap();
    let mut script = Scenario::new(CHICK, plan, day, Offset::from_minutes(-300));
    for day in 1..=60 {
        script.weigh(day, 1_040 - day % 7 * 3);
        script.feed(day, 21, day % 11, Slot::Bedtime, 60 - day / 20 * 10);
    }
    let entries: Vec<Entry> = script.journal().entries()[1..].to_vec();
    assert_eq!(entries.len(), 120);
    let link = entries_to_link_text(&entries).unwrap();
    let bytes = base64url::decode(link.strip_prefix("pl1e.").unwrap()).unwrap();
    assert!(bytes.len() - 120 * 12 <= 600, "{}", bytes.len());
}

#[test]
fn a_report_since_a_day_keeps_what_still_holds_and_what_takes_it_back() {
    let plan = CarePlan::default_for(Species::GreyParrot);
    let day = Day::from_date(2026, 11, 1).unwrap();
    let mut script = Scenario::new(CHICK, plan, day, Offset::UTC);
    let (slot, by_breeder) = (Slot::Midday, false);
    script.note(0, 12, 0, Change::Arrived);
    script.weigh(1, 400);
    script.note(2, 12, 0, Change::FeedDropped { slot, by_breeder });
    let dropped = script.journal().entries().last().unwrap().id;
    script.note(2, 13, 0, Change::Retracted { id: dropped });
    let first = script.journal().entries().last().unwrap().id;
    script.note(2, 14, 0, Change::Retracted { id: first });
    script.weigh(9, 401);
    let entries = script.journal().entries().to_vec();
    let sent = entries_since(&entries, CHICK, script.at(9, 0, 0));
    // All but the weighing of day 1.
    let expected: Vec<Entry> = entries
        .iter()
        .filter(|entry| entry.at != script.at(1, 6, 45))
        .cloned()
        .collect();
    assert_eq!(sent, expected);
    assert_eq!(
        entries_since(&entries, ChickId([9; 12]), script.at(0, 0, 0)),
        []
    );
}

/// A breeder's remark, also one that she took back, is hers: no link of hers may hold a letter of it.
#[test]
fn a_remark_of_the_breeder_s_own_goes_to_nobody_else() {
    let plan = CarePlan::default_for(Species::GreyParrot);
    let day = Day::from_date(2026, 11, 1).unwrap();
    let mut script = Scenario::new(CHICK, plan, day, Offset::UTC);
    script.note(0, 12, 0, Change::Arrived);
    let text = "eats well".to_owned();
    script.note(1, 9, 0, Change::Noted { text });
    let before = script.journal().entries().to_vec();
    let text = "call about the cage".to_owned();
    script.note(1, 10, 0, Change::Remarked { text });
    let remark = script.journal().entries().last().unwrap().id;
    script.note(1, 11, 0, Change::Retracted { id: remark });
    let journal = script.journal();
    assert_eq!(journal.entries().len(), before.len() + 2);
    assert_eq!(entries_to_send(&journal, CHICK), before);
    assert_eq!(entries_to_send(&journal, ChickId([9; 12])), []);
    // Her backup has it.
    let backup = entries_to_text(journal.entries());
    assert!(backup.contains("call about the cage"));
}

#[test]
fn what_was_noted_later_about_an_earlier_time_is_new_too() {
    let plan = CarePlan::default_for(Species::GreyParrot);
    let day = Day::from_date(2026, 11, 1).unwrap();
    let mut script = Scenario::new(CHICK, plan, day, Offset::UTC);
    script.weigh(1, 400).weigh(2, 401);
    let mut entries = script.journal().entries().to_vec();
    let sent_at = script.at(3, 12, 0);
    let is_of_day_2 = |entry: &Entry| entry.at == script.at(2, 6, 45);
    let sent = |entries: &[Entry]| {
        entries_since(entries, CHICK, sent_at)
            .iter()
            .any(is_of_day_2)
    };
    assert!(!sent(&entries));
    for entry in entries.iter_mut().filter(|entry| is_of_day_2(entry)) {
        entry.noted_at = script.at(3, 12, 0);
    }
    assert!(sent(&entries));
}

#[test]
fn too_many_entries_for_a_link_are_sent_as_a_file() {
    let one = three_weeks().pop().unwrap();
    let many = (0..2_100_u32).map(|number| {
        let mut entry = one.clone();
        entry.id.0[..4].copy_from_slice(&number.to_be_bytes());
        entry
    });
    let many: Vec<Entry> = many.collect();
    assert_eq!(entries_to_link_text(&many), None);
    assert_eq!(entries_to_link_text(&many[..1_000]), None);
    assert!(entries_to_link_text(&many[..300]).is_some());
}

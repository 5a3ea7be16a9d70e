//! What the fuzz targets share: envelopes around hostile bytes, and what must hold of whatever was
//! taken in. Each target is a function here, so that tests/seeds.rs tries the same without the fuzzer.
//!
//! Each target wraps its bytes in a correct check sum as well, since otherwise the sum would turn nearly
//! everything away and nothing behind it would be tried.

pub mod seeds;

use perchlight::checksum::crc32;
use perchlight::domain::formula::serving_heat::TemperatureUnit;
use perchlight::domain::journal::entries::{Change, Entry, Journal};
use perchlight::domain::outlook::outlook;
use perchlight::domain::plan::care_plan::CarePlan;
use perchlight::domain::time::moment::{Moment, Offset};
use perchlight::domain::time::zone::Zone;
use perchlight::domain::warnings::plan_checks::plan_checks;
use perchlight::share::base64url;
use perchlight::share::card::{card_to_link_text, card_to_qr_text};
use perchlight::share::card_paper::card_html;
use perchlight::share::data_block;
use perchlight::share::html_file::report_html;
use perchlight::share::import::{Imported, read_text};
use perchlight::share::link::entries_to_link_text;
use perchlight::share::table_of::{droppings_csv, feeds_csv, weights_csv};
use perchlight::share::vet_page::vet_page_html;
use perchlight::share::weight_picture::weight_picture;
use perchlight::store::line::{Line, entries_in, read_each};
use perchlight::store::record::encode;
use perchlight::store::saved::backup::backup_to_text;
use perchlight::store::saved::{Limits, entries_from_text, entries_to_text};
use perchlight::words::Language;
use perchlight::words::format::{MassUnit, Writing};

/// More entries than this are not shown by every page, as that would only slow the search down.
const MOST_SHOWN: usize = 300;

/// Links: the first byte chooses the kind, the rest is content with a right check sum.
pub fn link_text(bytes: &[u8]) {
    if let Some((kind, content)) = bytes.split_first() {
        read_and_show(&sealed_link(*kind, content));
    }
}

/// Files: the text as a plain backup, and as the data of a page with a right check sum.
pub fn file_text(json: &str) {
    read_and_show(json);
    read_and_show(&format!(
        "<!DOCTYPE html>{}</html>",
        data_block::write(json)
    ));
}

/// Pasted texts: anything, as it is.
pub fn pasted_text(text: &str) {
    read_and_show(text);
}

/// Record lines: the text as a line, and as the content of a line with a right check sum.
pub fn record_line(text: &str) {
    let entries = entries_in(text);
    let read: Vec<_> = read_each(text).flatten().map(|line| line.entry).collect();
    assert!(read.len() <= text.lines().count() && entries.len() <= text.lines().count());
    if let Ok(line) = Line::read(&encode(text)) {
        // What is taken is written the same way again, under the same name or a settled one.
        let again = Line::of(&line.entry).expect("an entry that was read can be written");
        assert_eq!(again.entry, line.entry);
        assert_eq!(Line::of(&again.entry), Ok(again));
    }
}

/// A link of this form whose version, kind, length and check sum are right.
fn sealed_link(kind: u8, content: &[u8]) -> String {
    let (letter, code) = [('c', 1), ('e', 3)][usize::from(kind % 2)];
    let mut bytes = vec![1, code];
    let mut length = content.len();
    while length >= 0x80 {
        bytes.push(u8::try_from(length & 0x7f).expect("seven bits") | 0x80);
        length >>= 7;
    }
    bytes.push(u8::try_from(length).expect("seven bits"));
    bytes.extend(content);
    let sum = crc32(&bytes);
    bytes.extend(sum.to_le_bytes());
    format!("pl1{letter}.{}", base64url::encode(&bytes))
}

/// Reads a text; whatever is taken must come out the same again and be shown without a panic.
fn read_and_show(text: &str) {
    match read_text(text) {
        Err(_) => {}
        Ok(Imported::Card(entries) | Imported::ShortCard(entries)) => {
            let settled = Journal::from_entries(entries.clone()).entries().to_vec();
            assert_eq!(
                read_text(&card_to_link_text(&entries)),
                Ok(Imported::Card(settled.clone()))
            );
            assert_eq!(
                read_text(&card_to_qr_text(&entries)),
                Ok(Imported::Card(settled))
            );
            show_entries(&entries);
        }
        Ok(Imported::Entries(entries)) => {
            let again = entries_from_text(&entries_to_text(&entries), Limits::FILE);
            assert_eq!(again.as_ref(), Ok(&entries));
            if let Some(link) = entries_to_link_text(&entries) {
                // In a link the entries stand in the journal's order, each once.
                let settled = Journal::from_entries(entries.clone()).entries().to_vec();
                assert_eq!(read_text(&link), Ok(Imported::Entries(settled)));
            }
            show_entries(&entries);
        }
        Ok(Imported::OfBreeder(entries, of_breeder)) => {
            let again = read_text(&backup_to_text(&entries, &of_breeder));
            assert_eq!(
                again,
                Ok(Imported::OfBreeder(entries.clone(), of_breeder.clone()))
            );
            assert_eq!(of_breeder.joined(&of_breeder), *of_breeder);
            show_entries(&entries);
        }
    }
}

const WRITINGS: [Writing; 2] = [
    Writing::metric(Language::English),
    Writing {
        mass: MassUnit::Ounce,
        temperature: TemperatureUnit::Fahrenheit,
        ..Writing::metric(Language::Spanish)
    },
];

fn show_plan(plan: &CarePlan) {
    for writing in WRITINGS {
        let lines = writing.plan_lines(plan);
        assert!(!lines.is_empty());
        for check in plan_checks(plan) {
            assert!(!writing.plan_check(check).is_empty());
        }
    }
}

fn show_entries(entries: &[Entry]) {
    let journal = Journal::from_entries(entries.to_vec());
    if entries.len() > MOST_SHOWN {
        return;
    }
    let zone = Zone::fixed(Offset::from_minutes(0));
    for chick in journal.chicks() {
        let last = entries.iter().map(|entry| entry.at).max();
        let later = last.map(|last| last.plus_seconds(3_600));
        for now in [Some(Moment::from_seconds(1_800_000_000)), later] {
            let Some(outlook) = now.and_then(|now| outlook(now, &journal, chick, &zone)) else {
                continue;
            };
            for writing in WRITINGS {
                is_whole(&report_html(writing, &outlook, entries, None));
                is_whole(&vet_page_html(writing, &outlook));
                let card = journal.entries_of_plan(chick);
                is_whole(&card_html(
                    writing,
                    "https://example.org/",
                    &outlook.chick,
                    &card,
                    (outlook.now, outlook.offset),
                ));
                weight_picture(writing, &outlook);
                assert!(!weights_csv(writing.language, &outlook.chick).is_empty());
                assert!(!droppings_csv(writing.language, &outlook.chick).is_empty());
                assert!(!feeds_csv(writing.language, &outlook).is_empty());
            }
        }
    }
    for entry in entries {
        if let Change::ChickAdded(plan) = &entry.change {
            show_plan(plan);
        }
    }
}

/// A page of ours, in which no typed text has begun an element: scripts hold data only.
fn is_whole(page: &str) {
    assert!(page.trim_end().ends_with("</html>"));
    let scripts = page.matches("<script").count();
    assert_eq!(
        scripts,
        page.matches("<script type=\"application/json\"").count()
    );
    assert!(scripts <= 1 && !page.contains("<iframe") && !page.contains("<object"));
}

//! Pages, tables and calendars read back strictly, with hostile text in every field that people type.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "a test may stop at the first surprise"
)]

pub mod readers;

use std::collections::BTreeSet;
use std::num::NonZeroU32;

use perchlight::domain::journal::entries::{
    Carer, Change, ChickId, Droppings, Entry, Journal, Paper, SolidsEaten,
};
use perchlight::domain::journal::photo::{Photo, PhotoHash, PhotoOf};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::journal::signs::Sign;
use perchlight::domain::outlook::{Outlook, outlook};
use perchlight::domain::plan::care_plan::{CarePlan, Contact, Reference, Role, Slot};
use perchlight::domain::plan::parts::Author;
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::{Grams, Millilitres};
use perchlight::domain::time::moment::{Day, Lived, Offset, WallTime};
use perchlight::share::calendar_of::{calendar_removal_text, calendar_text};
use perchlight::share::card_paper::card_html;
use perchlight::share::html_file::{report_html, report_with_photos_html};
use perchlight::share::import::{Imported, read_text};
use perchlight::share::link::entries_to_link_text;
use perchlight::share::photos::Pictures;
use perchlight::share::table_of::{droppings_csv, feeds_csv, weights_csv};
use perchlight::share::vet_page::{vet_page_html, vet_page_with_photos_html};
use perchlight::share::weight_picture::weight_picture;
use perchlight::store::import_error::ImportError;
use perchlight::words::Language;
use perchlight::words::format::Writing;

use readers::calendar::{Component, calendar};
use readers::csv_records;
use readers::page::{Element, elements};

const CHICK: ChickId = ChickId(*b"a-test-chick");
const APP: &str = "https://example.org/perchlight/";

/// What people, or somebody who means harm, may type. Each is short enough for a name.
const HOSTILE: [&str; 14] = [
    "<script>alert(1)</script>",
    "</script><script>alert(1)//",
    "\"><img src=x onerror=alert(1)>",
    "' onmouseover='alert(1)",
    "<!-- <svg onload=alert(1)>",
    "&lt;b&gt; &amp; &#x3c;",
    "=cmd|' /C calc'!A0",
    "+1+1, \"quoted\"",
    "@SUM(A1)\t-2",
    "one\r\ntwo\nthree\rfour",
    "x\r\nBEGIN:VEVENT\r\nSUMMARY:no",
    "line\u{2028}paragraph\u{2029}end",
    "abc\u{202e}txt.exe\u{2066}\u{200f}",
    "nul\0 bell\u{7} \u{fffe} ]]> {{x}} ${y} \\",
];

/// Characters that turn the text after them around: Unicode Standard Annex 9, section 2.
const TURNING: [char; 9] = [
    '\u{202a}', '\u{202b}', '\u{202c}', '\u{202d}', '\u{202e}', '\u{2066}', '\u{2067}', '\u{2068}',
    '\u{2069}',
];

/// A text as it is shown where no markup isolates it.
fn unturned(text: &str) -> String {
    text.replace(TURNING, "\u{fffd}")
}

/// A week of a chick in which every typed field holds `text`.
fn script(text: &str) -> Scenario {
    let text = text.to_owned();
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    let day = Day::from_date(2026, 11, 1).unwrap();
    plan.name.clone_from(&text);
    plan.ring.clone_from(&text);
    plan.solids.clone_from(&text);
    plan.note.clone_from(&text);
    plan.hatched = Some(day.plus(-90));
    plan.reference = Some(Reference {
        weight: Grams::whole(1_040),
        day,
    });
    plan.contacts = vec![Contact {
        role: Role::Breeder,
        name: text.clone(),
        number: "+1 (555) 010-0199".to_owned(),
    }];
    let mut script = Scenario::new(CHICK, plan, day, Offset::from_minutes(-300));
    script.note(0, 12, 0, Change::Arrived);
    for day in 1..=6 {
        script.weigh(day, 1_040 - 25 * day);
        script.feed(day, 7, 0, Slot::Morning, 60);
    }
    let what = text.clone();
    let eaten = SolidsEaten::Little;
    let (paper, count) = (Paper::Night, 3);
    script.note(6, 7, 30, Change::DroppingsCounted { paper, count });
    script.note(6, 9, 0, Change::SolidsSeen { what, eaten });
    let whom = Role::Breeder;
    let agreed = text.clone();
    script.note(6, 9, 5, Change::Called { whom, agreed });
    script.note(6, 9, 10, Change::Noted { text });
    script.note(6, 9, 15, Change::SignSeen { sign: Sign::Dull });
    script
}

fn entries(script: &Scenario, by: &str) -> Vec<Entry> {
    let mut entries = script.journal().entries().to_vec();
    for entry in &mut entries {
        by.clone_into(&mut entry.by);
    }
    entries
}

fn seen(script: &Scenario) -> Outlook {
    let now = script.at(6, 10, 0);
    outlook(now, &script.journal(), CHICK, &script.zone()).unwrap()
}

/// Elements that the pages use; nothing that loads or runs.
const KNOWN: [&str; 46] = [
    "html",
    "head",
    "meta",
    "title",
    "style",
    "body",
    "header",
    "h1",
    "h2",
    "p",
    "ul",
    "li",
    "dl",
    "dt",
    "dd",
    "table",
    "caption",
    "thead",
    "tbody",
    "tr",
    "th",
    "td",
    "bdi",
    "a",
    "figure",
    "script",
    "svg",
    "path",
    "rect",
    "circle",
    "line",
    "polyline",
    "polygon",
    "text",
    "g",
    "ellipse",
    "desc",
    "defs",
    "clipPath",
    "tspan",
    "div",
    "span",
    "strong",
    "b",
    "img",
    "figcaption",
];

fn check_page(page: &str, text: &str, times: usize) -> Vec<Element> {
    let elements = elements(page);
    for element in &elements {
        assert!(KNOWN.contains(&element.name.as_str()), "{}", element.name);
        for (name, value) in &element.attributes {
            assert!(!name.starts_with("on"), "{name}");
            if name == "href" || name == "src" || name == "xlink:href" {
                let is_photo = name == "src" && value.starts_with("data:image/jpeg;base64,");
                let is_safe = value.starts_with("tel:+") || value.starts_with(APP) || is_photo;
                assert!(is_safe, "{value}");
            }
        }
        if element.name == "script" {
            assert_eq!(element.value("type"), Some("application/json"));
            serde_json::from_str::<serde_json::Value>(&element.text).unwrap();
        }
    }
    let policy = elements
        .iter()
        .find(|element| element.value("http-equiv") == Some("Content-Security-Policy"));
    assert!(
        policy
            .unwrap()
            .value("content")
            .unwrap()
            .starts_with("default-src 'none'")
    );
    // XML's characters only; the others are shown as replaced.
    let shown: String = text
        .chars()
        .map(|c| match c {
            '\0' | '\u{7}' | '\u{fffe}' => '\u{fffd}',
            c => c,
        })
        .collect();
    let typed = elements
        .iter()
        .filter(|element| element.name == "bdi" && element.text.contains(&shown));
    assert!(
        typed.count() >= times,
        "{text:?} is not shown {times} times"
    );
    elements
}

#[test]
fn hostile_text_is_shown_as_text_in_every_page_and_language() {
    for text in HOSTILE {
        let script = script(text);
        let (outlook, entries) = (seen(&script), entries(&script, text));
        for language in Language::ALL {
            let writing = Writing::metric(language);
            // Title, ring, contact twice, solids twice, note twice, call, and who noted each.
            check_page(&report_html(writing, &outlook, &entries, None), text, 10);
            check_page(&vet_page_html(writing, &outlook), text, 6);
            let card = card_html(
                writing,
                APP,
                &outlook.chick,
                &script.journal().entries_of_plan(CHICK),
                (outlook.now, outlook.offset),
            );
            check_page(&card, text, 6);
        }
    }
}

#[test]
fn the_weight_picture_shows_a_hostile_name_as_text_alone() {
    for text in HOSTILE {
        let outlook = seen(&script(text));
        for language in Language::ALL {
            let picture = weight_picture(Writing::metric(language), &outlook).unwrap();
            let elements = elements(&format!("<!doctype html>{}", picture.svg));
            for element in &elements {
                let known = [
                    "svg", "g", "rect", "text", "circle", "line", "polyline", "polygon", "path",
                ];
                assert!(known.contains(&element.name.as_str()), "{}", element.name);
                let is_handler = |(name, _): &(String, String)| name.starts_with("on");
                assert!(!element.attributes.iter().any(is_handler));
                assert!(element.value("href").is_none() && element.value("style").is_none());
            }
            // The title alone holds the name, and as much of each word as fits on a line.
            let word = text.split([' ', '\0']).next().unwrap();
            let start: String = word.chars().take(30).collect();
            let is_title = |element: &&Element| element.value("font-weight") == Some("700");
            let title: Vec<&Element> = elements.iter().filter(is_title).collect();
            assert!(title[0].text.starts_with(&start), "{text:?}");
        }
    }
}

#[test]
fn report_and_card_are_taken_in_again_whatever_was_typed() {
    for text in HOSTILE {
        let script = script(text);
        let (outlook, entries) = (seen(&script), entries(&script, text));
        let report = report_html(Writing::metric(Language::English), &outlook, &entries, None);
        let expected = Journal::from_entries(entries.clone());
        assert_eq!(
            read_text(&report),
            Ok(Imported::Entries(expected.entries().to_vec()))
        );
        let link = entries_to_link_text(&entries).unwrap();
        assert_eq!(
            read_text(&link),
            Ok(Imported::Entries(expected.entries().to_vec()))
        );
        let plan = script.journal().entries_of_plan(CHICK);
        let card = card_html(
            Writing::metric(Language::Spanish),
            "",
            &outlook.chick,
            &plan,
            (outlook.now, outlook.offset),
        );
        assert_eq!(read_text(&card), Ok(Imported::Card(plan)));
    }
}

#[test]
fn a_report_that_was_cut_or_altered_is_refused() {
    let script = script("Pip");
    let report = report_html(
        Writing::metric(Language::English),
        &seen(&script),
        &entries(&script, ""),
        None,
    );
    let data = report.find("perchlight-data").unwrap();
    let digit = report[data..].find("\"g10\":").unwrap() + data + "\"g10\":".len();
    let mut altered = report.clone();
    let other = if report[digit..].starts_with('1') {
        "2"
    } else {
        "1"
    };
    altered.replace_range(digit..=digit, other);
    assert_eq!(read_text(&altered), Err(ImportError::Damaged));
    for cut in [digit, report.rfind("</script>").unwrap() + 3, data + 25] {
        assert_eq!(read_text(&report[..cut]), Err(ImportError::Truncated));
    }
    assert_eq!(read_text(&report[..60]), Err(ImportError::NotOurs));
    let vet_page = vet_page_html(Writing::metric(Language::English), &seen(&script));
    assert_eq!(read_text(&vet_page), Err(ImportError::WrongKind));
}

#[test]
fn a_report_can_be_read_with_scripts_off() {
    let script = script("Pip");
    let outlook = seen(&script);
    let page = report_html(
        Writing::metric(Language::English),
        &outlook,
        &entries(&script, ""),
        None,
    );
    let elements = check_page(&page, "Pip", 6);
    let with = |name: &str, text: &str| {
        let mut named = elements.iter().filter(|element| element.name == name);
        assert!(
            named.any(|element| element.text.contains(text)),
            "{name}: {text}"
        );
    };
    with("p", "Vet today");
    with("li", "below handover");
    // 1,040 − 6 × 25 = 890 g; 150 of 1,040 are 14.4 %.
    with("td", "890\u{a0}g");
    with("td", "14.4\u{a0}% below handover");
    with("dd", "1040\u{a0}g, 1 Nov 2026");
    with("p", "not veterinary advice");
    let rows = elements
        .iter()
        .filter(|element| element.name == "tr")
        .count();
    // Three headings, six weighings, six feeds; plan, arrival, droppings, solids, call, note and sign.
    assert_eq!(rows, 3 + 6 + 6 + 7);
    with("td", "Droppings: 3 (the night's paper)");
    assert_eq!(
        elements
            .iter()
            .filter(|element| element.name == "svg")
            .count(),
        1
    );
}

#[test]
fn the_vet_page_keeps_the_order_of_the_questions() {
    let script = script("Pip");
    let page = vet_page_html(Writing::metric(Language::English), &seen(&script));
    let elements = check_page(&page, "Pip", 3);
    let headings = elements.iter().filter(|element| element.name == "h2");
    let headings: Vec<&str> = headings.map(|element| element.text.as_str()).collect();
    let expected = ["Reason for the visit", "Surroundings", "Diet", "Not known"];
    assert_eq!(headings, expected);
    let texts = |name: &'static str| {
        let named = elements.iter().filter(move |element| element.name == name);
        named.map(move |element| element.text.replace('\u{a0}', " "))
    };
    assert!(texts("dd").any(|text| text.ends_with("(Ara chloropterus)")));
    // 1,040 − 6 × 25 = 890 g, 150 g or 14.4 % below handover; 60 of the three feeds of 8 % of 1,200 g, held to
    // 95 ml: the morning's 60 of 95 ml so far.
    let row: Vec<String> = texts("td").take(7).collect();
    assert_eq!(row[..3], ["Sat 7 Nov", "890", "\u{2212}14.4"]);
    assert!(
        row[6].starts_with("fluffed up, lethargic; Called: Breeder"),
        "{}",
        row[6]
    );
    assert!(texts("p").any(|text| text.contains("crop this morning; droppings in the last 24 h")));
    assert!(!page.contains("<script"), "the vet page carries no data");
}

#[test]
fn a_sign_seen_again_after_it_was_gone_is_not_called_gone() {
    let mut script = script("Pip");
    let sign = Sign::Dull;
    let gone_lines = |script: &Scenario| {
        let page = vet_page_html(Writing::metric(Language::English), &seen(script));
        page.matches("lethargic (gone)").count()
    };
    script.note(6, 9, 20, Change::SignGone { sign });
    assert_eq!(gone_lines(&script), 1);
    script.note(6, 9, 30, Change::SignSeen { sign });
    assert_eq!(gone_lines(&script), 0);
}

#[test]
fn entries_taken_back_are_not_shown_but_stay_in_the_data() {
    let mut script = script("Pip");
    let text = "typed by mistake".to_owned();
    script.note(6, 9, 40, Change::Noted { text });
    let journal = script.journal();
    let wrong = journal.entries().last().unwrap().id;
    script.note(6, 9, 41, Change::Retracted { id: wrong });
    let page = report_html(
        Writing::metric(Language::English),
        &seen(&script),
        script.journal().entries(),
        None,
    );
    let visible = page.split("<script").next().unwrap();
    assert!(!visible.contains("typed by mistake"));
    assert!(page.contains("typed by mistake"));
}

#[test]
fn tables_stay_tables_whatever_was_typed() {
    for text in HOSTILE {
        let shown = unturned(text);
        let outlook = seen(&script(text));
        for language in Language::ALL {
            for (table, columns, rows) in [
                (weights_csv(language, &outlook.chick), 6, 6),
                (feeds_csv(language, &outlook), 9, 6),
                (droppings_csv(language, &outlook.chick), 6, 1),
            ] {
                let records = csv_records(table.strip_prefix('\u{feff}').unwrap()).unwrap();
                assert_eq!(records.len(), rows + 1);
                for record in &records[1..] {
                    assert_eq!(record.len(), columns);
                    let is_typed = record[0] == shown || record[0] == format!("'{shown}");
                    assert!(is_typed, "{}", record[0]);
                    let first = record[0].chars().next().unwrap();
                    assert!(!"=+-@\t\r".contains(first), "{}", record[0]);
                }
            }
        }
    }
}

#[test]
fn a_table_of_weighings_holds_plain_numbers() {
    let outlook = seen(&script("Pip"));
    let table = weights_csv(Language::English, &outlook.chick);
    let records = csv_records(table.strip_prefix('\u{feff}').unwrap()).unwrap();
    let headings = [
        "chick",
        "date",
        "time",
        "weight (g)",
        "crop",
        "loss since handover (%)",
    ];
    assert_eq!(records[0], headings);
    // 25 g of 1,040 g are 2.404 %.
    assert_eq!(
        records[1],
        ["Pip", "2026-11-02", "06:45", "1015", "crop empty", "2.4"]
    );
}

#[test]
fn a_table_of_droppings_holds_looks_and_counts_in_order_of_time() {
    let mut script = script("Pip");
    let look = Droppings::LiquidStool;
    let (paper, count) = (Paper::Day, 18);
    script.note(40, 21, 0, Change::DroppingsCounted { paper, count });
    script.note(40, 9, 30, Change::DroppingsSeen { look });
    let chick = script.chick().unwrap();
    let rows = |language| {
        let table = droppings_csv(language, &chick);
        csv_records(table.strip_prefix('\u{feff}').unwrap()).unwrap()
    };
    let english = rows(Language::English);
    assert_eq!(
        english[0],
        ["chick", "date", "time", "look", "count", "paper"]
    );
    let last = &english[english.len() - 2..];
    let liquid = "stool itself liquid, without form (diarrhoea)";
    assert_eq!(last[0][2..], ["09:30", liquid, "", ""]);
    assert_eq!(last[1][2..], ["21:00", "", "18", "the day's paper"]);
    assert_eq!(rows(Language::Spanish).len(), english.len());
}

#[test]
fn the_vet_page_tells_what_number_of_droppings_is_usual() {
    let mut script = script("Pip");
    let page = |script: &Scenario, at| {
        let outlook = outlook(
            at,
            &script.journal(),
            script.chick().unwrap().id,
            &script.zone(),
        );
        vet_page_html(Writing::metric(Language::English), &outlook.unwrap())
    };
    // The median of 18, 40 and 20 is 20.
    for (day, count) in (40..).zip([18, 40, 20, 9]) {
        let paper = Paper::Day;
        assert!(!page(&script, script.at(day, 22, 0)).contains("about 20"));
        script.note(day, 21, 0, Change::DroppingsCounted { paper, count });
    }
    let page = page(&script, script.at(43, 22, 0));
    assert!(page.contains("about 20"), "{page}");
    assert!(
        page.contains("not noted; 9") || page.contains("<bdi>9</bdi>"),
        "{page}"
    );
}

#[test]
fn the_reason_for_the_visit_stands_on_the_vet_page_as_last_written() {
    let mut script = script("Pip");
    let reason = |script: &Scenario, language| {
        let page = vet_page_html(Writing::metric(language), &seen(script));
        let elements = check_page(&page, "Pip", 3);
        let mut asked = elements
            .into_iter()
            .filter(|element| element.value("class") == Some("asked"));
        asked.next().unwrap().text.replace('\u{a0}', " ")
    };
    assert_eq!(reason(&script, Language::English), "Not written.");
    assert_eq!(reason(&script, Language::Spanish), "Sin escribir.");
    for (minute, text) in [
        (20, "limp since dawn"),
        (40, "half of the bedtime feed left"),
        (50, ""),
    ] {
        let text = text.to_owned();
        script.note(6, 9, minute, Change::VisitReason { text });
        if minute == 40 {
            let expected = "half of the bedtime feed left (Sat 7 Nov, 09:40)";
            assert_eq!(reason(&script, Language::English), expected);
        }
    }
    assert_eq!(reason(&script, Language::English), "Not written.");
}

/// The smallest bytes that begin and end as a JPEG does: ISO/IEC 10918-1, table B.1, SOI and EOI.
const JPEG: [u8; 4] = [0xff, 0xd8, 0xff, 0xd9];

#[test]
fn photos_stand_on_pages_as_pictures_and_no_link_carries_one() {
    let mut script = script("Pip");
    let [here, away] = [[1; 32], [2; 32]].map(PhotoHash);
    let photo = |of, hash| Change::PhotoTaken(Photo { of, hash, bytes: 4 });
    script.note(6, 9, 20, photo(PhotoOf::Droppings, here));
    script.note(6, 9, 30, photo(PhotoOf::Crop, away));
    let (outlook, entries) = (seen(&script), entries(&script, ""));
    let pictures = Pictures::from([(here, JPEG.to_vec())]);
    let writing = Writing::metric(Language::English);
    for page in [
        vet_page_with_photos_html(writing, &outlook, &pictures),
        report_with_photos_html(writing, &outlook, &entries, None, &pictures),
    ] {
        let elements = check_page(&page, "Pip", 3);
        let shown: Vec<&Element> = elements.iter().filter(|one| one.name == "img").collect();
        assert_eq!(shown.len(), 1);
        // RFC 4648, section 4: the 32 bits ff d8 ff d9 in groups of six are / 9 j / 2 and Q, with two of padding.
        assert_eq!(
            shown[0].value("src"),
            Some("data:image/jpeg;base64,/9j/2Q==")
        );
        let caption = "Photo of the droppings, Sat 7 Nov, 09:20";
        assert_eq!(shown[0].value("alt"), Some(caption));
        let not_here =
            "not on this phone (a backup file brings them): Photo of the crop, Sat 7 Nov, 09:30.";
        assert!(
            elements
                .iter()
                .any(|one| one.name == "p" && one.text.ends_with(not_here))
        );
    }
    // The entry goes by link: what it shows, 32 bytes of hash and a size beside the 12 of its id.
    let link = entries_to_link_text(&entries).unwrap();
    assert_eq!(read_text(&link), Ok(Imported::Entries(entries)));
}

fn days(count: u32) -> NonZeroU32 {
    NonZeroU32::new(count).unwrap()
}

#[test]
fn a_calendar_stays_one_event_a_feed_whatever_was_typed() {
    for text in HOSTILE {
        let script = script(text);
        let outlook = seen(&script);
        for language in Language::ALL {
            let writing = Writing::metric(language);
            let file = calendar_text(writing, &outlook, &script.zone(), days(14)).unwrap();
            let calendar = calendar(&file);
            // Its feeds, and the weighing.
            assert_eq!(calendar.parts.len(), outlook.chick.plan.feeds.len() + 1);
            for event in &calendar.parts {
                assert_eq!(event.name, "VEVENT");
                assert_eq!(event.value("RRULE"), "FREQ=DAILY;COUNT=14");
                assert_eq!(event.parts.len(), 1);
                assert_eq!(event.parts[0].name, "VALARM");
                // It is dull: the vet is asked before any feed.
                let title = event.text("SUMMARY");
                let is_held = title.contains("Perchlight");
                assert!(
                    is_held != event.value("UID").ends_with("-weighing@perchlight"),
                    "{title}"
                );
            }
        }
    }
}

/// A title in a calendar has no markup: a name of another script stands between isolates (first strong isolate and its
/// end: Unicode Standard Annex 9, section 2.7), and what overrides is shown in its place.
#[test]
fn a_name_in_a_calendar_turns_nothing_but_itself() {
    let titles = |name: &str| {
        let mut script = calm();
        let mut plan = script.chick().unwrap().plan;
        name.clone_into(&mut plan.name);
        script.set_plan(0, 13, 0, &plan, Author::OWNER);
        let events = events(&script, 6, 10, 0, 7);
        let titles = events.iter().map(|event| event.text("SUMMARY"));
        titles.collect::<Vec<String>>()
    };
    let hebrew = titles("\u{5e8}\u{5d5}\u{5d1}\u{5d9}");
    let isolated = "\u{2068}\u{5e8}\u{5d5}\u{5d1}\u{5d9}\u{2069}";
    assert!(!hebrew.is_empty() && hebrew.iter().all(|title| title.contains(isolated)));
    for title in titles("\u{202e}Saffron\u{2067}\u{2069}") {
        assert!(title.contains("\u{fffd}Saffron\u{fffd}\u{fffd}"), "{title}");
        assert!(!title.contains(TURNING), "{title}");
    }
}

#[test]
fn an_appointment_is_an_event_until_a_visit_is_noted() {
    let mut script = calm();
    let on = Lived {
        day: Day::from_date(2026, 11, 10).unwrap(),
        time: WallTime::from_minutes(10 * 60 + 30),
    };
    let visit = |script: &Scenario| {
        let events = events(script, 6, 10, 30, 7).into_iter();
        let mut visits = events.filter(|event| event.value("UID").ends_with("-vet@perchlight"));
        visits.next().map(|event| {
            let title = event.text("SUMMARY");
            (
                event.value("DTSTART").to_owned(),
                title,
                event.value("STATUS").to_owned(),
            )
        })
    };
    assert_eq!(visit(&script), None);
    script.note(6, 9, 0, Change::VetBooked { on });
    let told = |status: &str| {
        let at = "20261110T103000".to_owned();
        Some((at, "Saffron: vet".to_owned(), status.to_owned()))
    };
    assert_eq!(visit(&script), told("CONFIRMED"));
    let said = String::new();
    script.note(6, 10, 0, Change::VetSeen { said });
    assert_eq!(visit(&script), told("CANCELLED"));
}

#[test]
fn the_vet_page_tells_a_visit_from_a_call() {
    let mut script = script("Pip");
    let text = |script: &Scenario| {
        let page = vet_page_html(Writing::metric(Language::English), &seen(script));
        check_page(&page, "Pip", 3)
            .iter()
            .map(|element| element.text.replace('\u{a0}', " "))
            .collect::<Vec<_>>()
            .join("\n")
    };
    let (whom, agreed) = (Role::AvianVet, "come at noon".to_owned());
    script.note(6, 9, 20, Change::Called { whom, agreed });
    assert!(!text(&script).contains("Seen by a vet"));
    let said = "crop empty, bright".to_owned();
    script.note(6, 9, 40, Change::VetSeen { said });
    let text = text(&script);
    assert!(text.contains("Seen by a vet"), "{text}");
    assert!(
        text.contains("Sat 7 Nov, 09:40: crop empty, bright"),
        "{text}"
    );
    assert!(text.contains("Sat 7 Nov, 09:20: come at noon"), "{text}");
}

/// A chick that is well: weighed at 06:45, fed at 07:00, 14:00 and 21:00 from 2 to 6 November, at 07:00 on the 7th.
fn calm() -> Scenario {
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    let day = Day::from_date(2026, 11, 1).unwrap();
    "Saffron".clone_into(&mut plan.name);
    plan.hatched = Some(day.plus(-90));
    let weight = Grams::whole(1_040);
    plan.reference = Some(Reference { weight, day });
    for feed in &mut plan.feeds {
        feed.volume = Millilitres::whole(60);
    }
    let mut script = Scenario::new(CHICK, plan, day, Offset::from_minutes(-300));
    script.note(0, 12, 0, Change::Arrived);
    for day in 1..=6 {
        script.weigh(day, 1_040).feed(day, 7, 0, Slot::Morning, 60);
        if day < 6 {
            script.feed(day, 14, 0, Slot::Midday, 60);
            script.feed(day, 21, 0, Slot::Bedtime, 60);
        }
    }
    script
}

/// The events of a calendar made at a moment, for so many days.
fn events(script: &Scenario, day: i32, hour: i32, minute: i32, count: u32) -> Vec<Component> {
    let now = script.at(day, hour, minute);
    let seen = outlook(now, &script.journal(), CHICK, &script.zone()).unwrap();
    let writing = Writing::metric(Language::English);
    let file = calendar_text(writing, &seen, &script.zone(), days(count)).unwrap();
    let events = calendar(&file).parts;
    let names: BTreeSet<&str> = events.iter().map(|event| event.value("UID")).collect();
    assert_eq!(names.len(), events.len(), "a name stands twice");
    events
}

/// Start and title of each event that takes place, by its start, with plain spaces.
fn told(events: &[Component]) -> Vec<(String, String)> {
    let kept = events
        .iter()
        .filter(|event| event.value("STATUS") == "CONFIRMED");
    let mut told: Vec<(String, String)> = kept
        .map(|event| {
            let title = event.text("SUMMARY").replace('\u{a0}', " ");
            (event.value("DTSTART").to_owned(), title)
        })
        .collect();
    told.sort();
    told
}

fn sequence(event: &Component) -> u32 {
    event.value("SEQUENCE").parse().unwrap()
}

#[test]
fn calendar_events_float_start_ahead_and_follow_the_plan() {
    let mut script = calm();
    let first = events(&script, 6, 10, 0, 7);
    // It is 10:00 on 7 November: the morning feed is given and the weight taken, the others are still to come.
    let feed = "Feed Saffron: 60 ml at 39.0–40.5 °C".to_owned();
    let weigh = "Saffron: feel the crop and weigh".to_owned();
    let expected = [
        ("20261107T140000".to_owned(), feed.clone()),
        ("20261107T210000".to_owned(), feed.clone()),
        ("20261108T063000".to_owned(), weigh),
        ("20261108T070000".to_owned(), feed),
    ];
    assert_eq!(told(&first), expected);
    let (slot, by_breeder) = (Slot::Midday, true);
    script.note(6, 10, 20, Change::FeedDropped { slot, by_breeder });
    let second = events(&script, 6, 10, 30, 7);
    let starts: Vec<String> = told(&second).into_iter().map(|(start, _)| start).collect();
    assert_eq!(
        starts,
        ["20261107T210000", "20261108T063000", "20261108T070000"]
    );
    // What was dropped is cancelled under its own name by a later sequence, without a word of feeding, and rings
    // no more.
    let gone: Vec<&Component> = second
        .iter()
        .filter(|event| event.value("STATUS") == "CANCELLED")
        .collect();
    assert_eq!(gone.len(), 1);
    let midday = first
        .iter()
        .find(|event| event.value("DTSTART") == "20261107T140000");
    assert_eq!(gone[0].value("UID"), midday.unwrap().value("UID"));
    assert!(sequence(gone[0]) > sequence(midday.unwrap()));
    assert_eq!(gone[0].text("SUMMARY"), "No longer given: midday");
    assert!(gone[0].parts.is_empty());
    // Brought back, it takes place again.
    script.note(6, 11, 0, Change::FeedBroughtBack { slot });
    assert_eq!(told(&events(&script, 6, 11, 10, 7)), expected);
    let now = script.at(6, 12, 0);
    let later = outlook(now, &script.journal(), CHICK, &script.zone()).unwrap();
    let file = calendar_removal_text(Writing::metric(Language::English), &later).unwrap();
    let removal = calendar(&file).parts;
    let removed: BTreeSet<&str> = removal.iter().map(|event| event.value("UID")).collect();
    assert_eq!(removed.len(), removal.len(), "a name stands twice");
    assert!(
        first
            .iter()
            .all(|event| removed.contains(event.value("UID")))
    );
    assert!(
        removal
            .iter()
            .all(|event| event.value("STATUS") == "CANCELLED")
    );
}

#[test]
fn while_food_is_kept_back_no_title_asks_for_a_feed() {
    let mut script = calm();
    let sign = Sign::Dull;
    script.note(6, 10, 20, Change::SignSeen { sign });
    for (_, title) in told(&events(&script, 6, 10, 30, 14)) {
        let is_weighing = title == "Saffron: feel the crop and weigh";
        let is_held = title.starts_with(
            "Saffron: nothing to eat before you look in Perchlight. As of 7 Nov 2026, 10:30: ",
        );
        assert!(is_weighing || is_held, "{title}");
    }
}

#[test]
fn what_the_vet_allows_until_a_time_is_told_until_then() {
    let mut script = calm();
    let advice = |may_feed, ml: Option<i32>, until| Change::AdviceNoted {
        who: Role::AvianVet,
        about: String::new(),
        may_feed,
        ml: ml.map(Millilitres::whole),
        until,
    };
    // Until noon of 8 November 30 ml a feed: bedtime of the 7th and the morning after; midday of the 8th is the
    // plan's again, and so are the others from the 9th and the 8th on.
    let noon = Some(script.at(7, 12, 0));
    script.note(6, 15, 0, advice(true, Some(30), noon));
    script.feed(6, 14, 0, Slot::Midday, 60);
    let found = told(&events(&script, 6, 15, 10, 7));
    let of = |ml: i32| format!("Feed Saffron: {ml} ml at 39.0–40.5 °C");
    let feeds: Vec<(&str, &str)> = found
        .iter()
        .filter(|(_, title)| title.starts_with("Feed"))
        .map(|(start, title)| (start.as_str(), title.as_str()))
        .collect();
    assert_eq!(
        feeds,
        [
            ("20261107T210000", &*of(30)),
            ("20261108T070000", &*of(30)),
            ("20261108T140000", &*of(60)),
            ("20261108T210000", &*of(60)),
            ("20261109T070000", &*of(60)),
        ]
    );
    // No food until then: the same times, and nothing that asks for a feed before.
    script.note(6, 15, 20, advice(false, None, noon));
    let found = told(&events(&script, 6, 15, 30, 7));
    let early: Vec<&str> = found
        .iter()
        .filter(|(start, _)| start.as_str() < "20261108T120000")
        .map(|(_, title)| title.as_str())
        .collect();
    assert_eq!(early.len(), 3, "{found:?}");
    assert!(
        early.iter().all(|title| !title.starts_with("Feed")),
        "{early:?}"
    );
    assert_eq!(
        found.iter().filter(|(_, title)| *title == of(60)).count(),
        3
    );
}

/// The vet's "no food until noon" is followed by "as planned": what stood in the calendar for itself goes.
#[test]
fn a_word_that_is_lifted_early_leaves_nothing_of_itself_in_the_calendar() {
    let mut script = calm();
    let advice = |may_feed, until| Change::AdviceNoted {
        who: Role::AvianVet,
        about: String::new(),
        may_feed,
        ml: None,
        until,
    };
    script.feed(6, 14, 0, Slot::Midday, 60);
    script.note(6, 15, 0, advice(false, Some(script.at(7, 12, 0))));
    let held = events(&script, 6, 15, 10, 7);
    let single = |event: &&Component| {
        event.value("UID").starts_with("2026-") && event.value("STATUS") == "CONFIRMED"
    };
    let held: BTreeSet<&str> = held
        .iter()
        .filter(single)
        .map(|event| event.value("UID"))
        .collect();
    // Bedtime of the 7th and the morning of the 8th.
    assert_eq!(held.len(), 2);
    script.note(6, 16, 0, advice(true, None));
    let lifted = events(&script, 6, 16, 10, 7);
    assert_eq!(told(&lifted).len(), 4);
    let gone = |name: &&str| {
        let mut named = lifted.iter().filter(|event| event.value("UID") == *name);
        named.all(|event| event.value("STATUS") == "CANCELLED")
            && lifted.iter().any(|event| event.value("UID") == *name)
    };
    assert!(held.iter().all(gone));
}

#[test]
fn a_chick_at_the_clinic_is_neither_fed_nor_weighed_by_the_calendar() {
    let mut script = calm();
    let (to, name) = (Carer::Clinic, String::new());
    script.note(6, 10, 20, Change::HandedOver { to, name });
    let found = events(&script, 6, 10, 30, 7);
    // Three feeds and the weighing.
    assert_eq!(found.len(), 4);
    assert!(
        found
            .iter()
            .all(|event| event.value("STATUS") == "CANCELLED")
    );
}

#[test]
fn alarms_do_not_ring_before_the_chick_is_there() {
    let mut plan = CarePlan::default_for(Species::GreyParrot);
    let day = Day::from_date(2026, 11, 1).unwrap();
    let at = |day, hour| {
        let plan = CarePlan::default_for(Species::GreyParrot);
        let start = Day::from_date(2026, 11, 1).unwrap();
        Scenario::new(CHICK, plan, start, Offset::UTC).at(day, hour, 0)
    };
    plan.journey = Some(perchlight::domain::plan::care_plan::Journey {
        left: at(3, 6),
        expected: at(3, 18),
        breeder_offset: Offset::UTC,
        shift: perchlight::domain::plan::care_plan::ClockShift::AtOnce,
        last_fed: None,
    });
    let script = Scenario::new(CHICK, plan, day, Offset::UTC);
    let outlook = outlook(script.at(1, 9, 0), &script.journal(), CHICK, &script.zone()).unwrap();
    let file = calendar_text(
        Writing::metric(Language::English),
        &outlook,
        &script.zone(),
        days(7),
    )
    .unwrap();
    let calendar = calendar(&file);
    let starts: Vec<&str> = calendar
        .parts
        .iter()
        .map(|event| event.value("DTSTART"))
        .collect();
    // The first feed at home, at 21:00 of the 4th, is a smaller one and stands for itself: 8 % of 450 g are 36 ml,
    // rounded down to 35, and three quarters of it at most.
    let mut titles = calendar
        .parts
        .iter()
        .filter(|event| event.value("DTSTART") == "20261104T210000");
    let title = titles.next().unwrap().text("SUMMARY");
    assert!(
        !title.contains("35\u{a0}ml") && title.contains("ml at"),
        "{title}"
    );
    let expected = [
        "20261104T210000",
        "20261105T063000",
        "20261105T070000",
        "20261105T140000",
        "20261105T210000",
    ];
    let mut starts = starts;
    starts.sort_unstable();
    assert_eq!(starts, expected);
}

/// From New York to Los Angeles, 3 h behind, an hour a day: a feed of 07:00 falls on 05:00 on the first
/// day after it left and on 06:00 on the second (UTC-5 and UTC-8, IANA, file northamerica).
#[test]
fn the_days_in_which_feeds_move_to_the_new_clock_ring_at_their_own_times() {
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    let day = Day::from_date(2026, 11, 24).unwrap();
    let (east, west) = (Offset::from_minutes(-300), Offset::from_minutes(-480));
    let at = |day, hour| {
        let plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let start = Day::from_date(2026, 11, 24).unwrap();
        Scenario::new(CHICK, plan, start, west).at(day, hour, 0)
    };
    // Leaves on the 24th at 15:00 in New York and is expected at 18:00 in Los Angeles.
    plan.journey = Some(perchlight::domain::plan::care_plan::Journey {
        left: at(0, 12),
        expected: at(0, 18),
        breeder_offset: east,
        shift: perchlight::domain::plan::care_plan::ClockShift::Gradual,
        last_fed: None,
    });
    let script = Scenario::new(CHICK, plan, day, west);
    let seen = outlook(at(0, 13), &script.journal(), CHICK, &script.zone()).unwrap();
    let writing = Writing::metric(Language::English);
    let file = calendar_text(writing, &seen, &script.zone(), days(7)).unwrap();
    let added = calendar(&file);
    let mut told: Vec<(&str, Option<&str>)> = added
        .parts
        .iter()
        .map(|event| {
            let rule = event.has("RRULE").then(|| event.value("RRULE"));
            (event.value("DTSTART"), rule)
        })
        .collect();
    // On the 24th bedtime is still the breeder's, 21:00 there and 18:00 here, as it arrives; the week
    // begins for each feed with the first one at home.
    let count = |count: &str| format!("FREQ=DAILY;COUNT={count}");
    let (bedtime, others, weighing) = (count("4"), count("5"), count("7"));
    told.sort_unstable();
    assert_eq!(
        told,
        [
            ("20261125T050000", None),
            ("20261125T063000", Some(&*weighing)),
            ("20261125T120000", None),
            ("20261125T190000", None),
            ("20261126T060000", None),
            ("20261126T130000", None),
            ("20261126T200000", None),
            ("20261127T070000", Some(&*others)),
            ("20261127T140000", Some(&*others)),
            ("20261127T210000", Some(&*bedtime)),
        ]
    );
    let names: BTreeSet<&str> = added.parts.iter().map(|event| event.value("UID")).collect();
    assert_eq!(names.len(), added.parts.len(), "a name stands twice");
    let file = calendar_removal_text(writing, &seen).unwrap();
    let removal = calendar(&file);
    let gone = |name: &str| removal.parts.iter().any(|event| event.value("UID") == name);
    assert!(names.into_iter().all(gone));
    // The last day of moving: what has passed does not begin at its wall time before the next day.
    let seen = outlook(at(2, 6), &script.journal(), CHICK, &script.zone()).unwrap();
    let file = calendar_text(writing, &seen, &script.zone(), days(7)).unwrap();
    let starts: BTreeSet<String> = calendar(&file)
        .parts
        .iter()
        .map(|event| event.value("DTSTART").to_owned())
        .collect();
    assert!(starts.contains("20261126T130000"), "{starts:?}");
    assert!(starts.contains("20261127T070000"), "{starts:?}");
    assert!(!starts.contains("20261126T070000"), "{starts:?}");
}

/// Ours: a file that a messenger takes; most take 16 MB and more.
#[test]
fn a_year_of_records_is_a_file_that_can_be_sent() {
    let mut script = script("Pip");
    for day in 7..=365 {
        script.weigh(day, 1_000 + day % 9);
        for (hour, slot) in [(7, Slot::Morning), (14, Slot::Midday), (21, Slot::Bedtime)] {
            script.feed(day, hour, day % 30, slot, 50);
        }
        let look = Droppings::Normal;
        script.note(day, 9, 0, Change::DroppingsSeen { look });
    }
    let entries = script.journal().entries().to_vec();
    let now = script.at(365, 22, 0);
    let outlook = outlook(now, &script.journal(), CHICK, &script.zone()).unwrap();
    let page = report_html(Writing::metric(Language::English), &outlook, &entries, None);
    assert!(entries.len() > 1_800, "{}", entries.len());
    assert!(page.len() < 1_500_000, "{} bytes", page.len());
    assert_eq!(read_text(&page), Ok(Imported::Entries(entries)));
}

#[test]
fn every_refusal_has_a_sentence_of_its_own_in_each_language() {
    let version = 2;
    let errors = [
        ImportError::NotOurs,
        ImportError::Newer { version },
        ImportError::Damaged,
        ImportError::Truncated,
        ImportError::TooLarge,
        ImportError::WrongKind,
    ];
    for language in Language::ALL {
        let said: BTreeSet<&str> = errors
            .iter()
            .map(|error| language.import_error(error))
            .collect();
        assert_eq!(said.len(), errors.len());
        assert!(said.iter().all(|sentence| sentence.ends_with('.')));
    }
}

//! What holds for all values and all bytes: there and back, one form only, never a panic.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

pub mod readers;

use perchlight::checksum::crc32;
use perchlight::share::csv::{Cell, push_row};
use perchlight::share::varint::{ByteReader, ByteWriter};
use perchlight::share::{base64url, digits, icalendar, markup, phone};
use proptest::collection::vec;
use proptest::prelude::{Just, Strategy, any, prop_oneof};
use proptest::{prop_assert, prop_assert_eq, proptest};

use readers::{csv_records, seconds_of_duration, unescaped, unfolded};

/// Text rich in the characters that formats treat apart.
fn tricky_text() -> impl Strategy<Value = String> {
    let character = prop_oneof![
        any::<char>(),
        prop_oneof![
            Just(','),
            Just('"'),
            Just('\r'),
            Just('\n'),
            Just(';'),
            Just('\\'),
            Just('='),
            Just('%'),
            Just('&'),
            Just('<'),
            Just('\''),
            Just('\t'),
            Just('-'),
            Just(' '),
        ],
    ];
    vec(character, 0..40).prop_map(String::from_iter)
}

/// A value of each kind that the writer knows.
#[derive(Clone, Debug)]
enum Item {
    Unsigned(u64),
    Signed(i64),
    Text(String),
    Raw(Vec<u8>),
}

fn item() -> impl Strategy<Value = Item> {
    prop_oneof![
        any::<u64>().prop_map(Item::Unsigned),
        (0..300_u64).prop_map(Item::Unsigned),
        any::<i64>().prop_map(Item::Signed),
        (-300..300_i64).prop_map(Item::Signed),
        tricky_text().prop_map(Item::Text),
        vec(any::<u8>(), 0..20).prop_map(Item::Raw),
    ]
}

proptest! {
    #[test]
    fn bytes_come_back_from_base64url_and_digits(bytes in vec(any::<u8>(), 0..80)) {
        let letters = base64url::encode(&bytes);
        prop_assert!(letters.bytes().all(|c| c.is_ascii_alphanumeric() || b"-_".contains(&c)));
        prop_assert_eq!(base64url::decode(&letters).unwrap(), bytes.clone());
        let figures = digits::encode(&bytes);
        prop_assert!(figures.bytes().all(|c| c.is_ascii_digit()));
        prop_assert_eq!(digits::decode(&figures).unwrap(), bytes);
    }

    #[test]
    fn a_text_is_read_as_base64url_only_in_its_one_form(text in "[A-Za-z0-9_-]{0,12}") {
        if let Ok(bytes) = base64url::decode(&text) {
            prop_assert_eq!(base64url::encode(&bytes), text);
        }
    }

    #[test]
    fn a_text_is_read_as_digits_only_in_its_one_form(text in "[0-9]{0,16}") {
        if let Ok(bytes) = digits::decode(&text) {
            prop_assert_eq!(digits::encode(&bytes), text);
        }
    }

    #[test]
    fn any_text_is_decoded_or_refused_without_a_panic(text in tricky_text()) {
        let letters = base64url::decode(&text).is_ok();
        let figures = digits::decode(&text).is_ok();
        prop_assert!(!letters || text.is_ascii());
        prop_assert!(!figures || text.is_ascii());
        if let Ok(number) = phone::number(&text) {
            let unsigned = number.strip_prefix('+').unwrap_or(&number);
            prop_assert!(unsigned.bytes().all(|c| c.is_ascii_digit()));
        }
    }

    #[test]
    fn values_come_back_from_bytes(items in vec(item(), 0..12)) {
        let mut writer = ByteWriter::default();
        for item in &items {
            match item {
                Item::Unsigned(value) => writer.unsigned(*value),
                Item::Signed(value) => writer.signed(*value),
                Item::Text(text) => writer.text(text, 160).unwrap(),
                Item::Raw(bytes) => {
                    writer.count(bytes.len());
                    writer.raw(bytes);
                }
            }
        }
        let bytes = writer.finish();
        let mut reader = ByteReader::new(&bytes);
        for item in &items {
            match item {
                Item::Unsigned(value) => {
                    prop_assert_eq!(reader.unsigned(0..=u64::MAX).unwrap(), *value);
                }
                Item::Signed(value) => {
                    prop_assert_eq!(reader.signed(i64::MIN..=i64::MAX).unwrap(), *value);
                }
                Item::Text(text) => prop_assert_eq!(reader.text(160).unwrap(), text),
                Item::Raw(raw) => {
                    let count = reader.count(20).unwrap();
                    prop_assert_eq!(reader.raw(count).unwrap(), raw);
                }
            }
        }
        prop_assert!(reader.finish().is_ok());
    }

    /// Reads whatever comes and writes it again: the bytes taken must be the bytes written.
    #[test]
    fn any_bytes_are_read_in_their_one_form_or_refused(
        bytes in vec(prop_oneof![any::<u8>(), 0..4_u8, Just(0x80), Just(0xFF)], 0..60),
        kinds in vec(0..5_u8, 1..12),
    ) {
        let mut reader = ByteReader::new(&bytes);
        let mut writer = ByteWriter::default();
        let mut is_whole = true;
        for kind in kinds {
            let read = match kind {
                0 => reader.unsigned(0..=u64::MAX).map(|value| writer.unsigned(value)),
                1 => reader.signed(i64::MIN..=i64::MAX).map(|value| writer.signed(value)),
                2 => reader.text(40).map(|text| writer.text(text, 40).unwrap()),
                3 => reader.count(40).map(|count| writer.count(count)),
                _ => reader.raw(3).map(|raw| writer.raw(raw)),
            };
            if read.is_err() {
                is_whole = false;
                break;
            }
        }
        let written = writer.finish();
        prop_assert!(bytes.starts_with(&written));
        if is_whole && reader.finish().is_ok() {
            prop_assert_eq!(written, bytes);
        }
    }

    #[test]
    fn a_single_damaged_byte_changes_the_checksum(
        bytes in vec(any::<u8>(), 1..60),
        place in any::<proptest::sample::Index>(),
        damage in 1..=u8::MAX,
    ) {
        let mut damaged = bytes.clone();
        let at = place.index(bytes.len());
        damaged[at] ^= damage;
        prop_assert!(crc32(&damaged) != crc32(&bytes));
    }

    #[test]
    fn records_come_back_from_csv(rows in vec(vec(tricky_text(), 1..5), 0..5)) {
        let mut table = String::new();
        for row in &rows {
            let cells: Vec<Cell<'_>> = row.iter().map(|text| Cell::Exact(text)).collect();
            push_row(&mut table, &cells);
        }
        prop_assert_eq!(csv_records(&table).unwrap(), rows);
    }

    #[test]
    fn no_typed_cell_begins_like_a_formula(text in tricky_text()) {
        let mut table = String::new();
        push_row(&mut table, &[Cell::Typed(&text)]);
        // What turns text around is shown in its place (Unicode Standard Annex 9, section 2).
        let shown = |c| match c {
            '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' => '\u{fffd}',
            _ => c,
        };
        let text: String = text.chars().map(shown).collect();
        let cell = csv_records(&table).unwrap().remove(0).remove(0);
        prop_assert!(!cell.starts_with(['=', '+', '-', '@', '\t', '\r']));
        prop_assert_eq!(cell.strip_prefix('\'').filter(|_| cell != text).unwrap_or(&cell), text);
    }

    #[test]
    fn calendar_text_comes_back_through_escapes_and_folds(text in tricky_text()) {
        let line = format!("SUMMARY:{}", icalendar::escape(&text));
        let folded = icalendar::fold(&line);
        prop_assert!(folded.split("\r\n").all(|part| part.len() <= 75));
        let back = unfolded(&folded);
        let lines = text.replace("\r\n", "\n").replace('\r', "\n");
        let kept: String = lines
            .chars()
            .filter(|c| matches!(c, '\n' | '\t') || !c.is_ascii_control())
            .collect();
        prop_assert_eq!(unescaped(back.strip_prefix("SUMMARY:").unwrap()), kept);
    }

    #[test]
    fn durations_mean_their_seconds(
        seconds in prop_oneof![-700_000..700_000_i64, (-60..60_i64).prop_map(|n| n * 86_400)],
    ) {
        prop_assert_eq!(seconds_of_duration(&icalendar::duration(seconds)), seconds);
    }

    #[test]
    fn escaped_markup_holds_no_markup(text in tricky_text()) {
        let safe = markup::escape(&text);
        prop_assert!(!safe.contains(['<', '>', '"', '\'', '\0']));
        let plain = safe
            .replace("&lt;", "<")
            .replace("&gt;", ">")
            .replace("&quot;", "\"")
            .replace("&#39;", "'")
            .replace("&amp;", "&");
        prop_assert_eq!(plain.chars().count(), text.chars().count());
    }
}

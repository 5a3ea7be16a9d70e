//! Text and byte formats against `encoding.json` and `formats.json`.
//!
//! Not used, as Perchlight does not do it: base64 with padding or `+` and `/`, other CRCs,
//! Adler-32 and inflating or deflating. Compression was measured before it was left out: 60
//! weighings and 60 feeds with a card take 590 bytes as columns of varints, and 488 deflated.
//! Those 17 % cost 13.7 kB of program and a second way in for hostile bytes, while digits
//! (`share::digits`) save 22 % in a QR code for nothing. The deflated samples still serve here as
//! base64url.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

pub mod common;
pub mod readers;

use perchlight::checksum::crc32;
use perchlight::share::csv::{Cell, push_row};
use perchlight::share::{base64url, icalendar, qr};
use serde_json::Value;

use common::checks_file;
use readers::{bytes_of_hex, cases, csv_records, seconds_of_duration, text_of, unfolded};

fn hex(number: u32) -> String {
    format!("{number:08X}")
}

fn assert_base64url(bytes: &[u8], text: &str) {
    assert_eq!(base64url::encode(bytes), text);
    assert_eq!(base64url::decode(text).as_deref(), Ok(bytes), "{text}");
}

/// Every string below `value`, however deep.
fn strings(value: &Value) -> Vec<&str> {
    match value {
        Value::String(text) => vec![text],
        Value::Array(items) => items.iter().flat_map(strings).collect(),
        Value::Object(fields) => fields.values().flat_map(strings).collect(),
        Value::Null | Value::Bool(_) | Value::Number(_) => vec![],
    }
}

#[test]
fn base64url_agrees_with_the_rfc_vectors() {
    let file = checks_file("encoding.json");
    for case in cases(&file, "rfc4648") {
        assert_base64url(
            text_of(case, "text").as_bytes(),
            text_of(case, "base64url_nopad"),
        );
    }
    let example = &file["rfc7515_appendix_c"];
    let bytes: Vec<u8> = serde_json::from_value(example["bytes"].clone()).unwrap();
    assert_base64url(&bytes, text_of(example, "base64url_nopad"));
}

#[test]
fn base64url_that_is_not_strict_is_refused() {
    let file = checks_file("encoding.json");
    for case in cases(&file, "must_reject_base64url_strict") {
        let text = text_of(case, "text");
        assert!(base64url::decode(text).is_err(), "{text}: {}", case["why"]);
    }
}

#[test]
fn base64url_of_foreign_data_comes_back_to_the_character() {
    let file = checks_file("encoding.json");
    let samples: Vec<&str> = cases(&file, "cases")
        .iter()
        .chain(cases(&file, "texts"))
        .flat_map(|case| strings(&case["raw_deflate_b64url"]))
        .chain(
            cases(&file, "must_reject_deflate")
                .iter()
                .map(|case| text_of(case, "raw_deflate_b64url")),
        )
        .chain([text_of(&file["expansion"], "raw_deflate_b64url")])
        .collect();
    assert!(!samples.is_empty());
    for text in samples {
        assert_eq!(base64url::encode(&base64url::decode(text).unwrap()), text);
    }
}

#[test]
fn the_checksum_gives_the_check_value_of_the_catalogue() {
    let file = checks_file("encoding.json");
    let ours: Vec<&Value> = cases(&file, "crc_check_values")
        .iter()
        .filter(|case| text_of(case, "name") == "CRC-32/ISO-HDLC")
        .collect();
    assert!(!ours.is_empty());
    for case in ours {
        let sum = crc32(text_of(case, "input_ascii").as_bytes());
        assert_eq!(hex(sum), text_of(case, "check_hex"));
    }
}

#[test]
fn bytes_have_the_expected_base64url_and_checksum() {
    let file = checks_file("encoding.json");
    for case in cases(&file, "bytes") {
        let bytes = bytes_of_hex(text_of(case, "hex"));
        assert_base64url(&bytes, text_of(case, "base64url_nopad"));
        assert_eq!(hex(crc32(&bytes)), text_of(case, "crc32_hex"));
    }
}

#[test]
fn texts_have_the_expected_encodings() {
    let file = checks_file("encoding.json");
    for case in cases(&file, "cases").iter().chain(cases(&file, "texts")) {
        let text = text_of(case, "text");
        assert_base64url(text.as_bytes(), text_of(case, "base64url_nopad"));
        assert_eq!(hex(crc32(text.as_bytes())), text_of(case, "crc32_hex"));
    }
}

#[test]
fn every_case_of_the_second_set_holds() {
    let file = checks_file("formats.json");
    for case in cases(&file, "cases") {
        let (input, expected) = (&case["input"], &case["expected"]);
        match text_of(input, "kind") {
            "base64" => assert_base64url(&input_bytes(input), text_of(expected, "base64url_nopad")),
            "crc32" => {
                let sum = crc32(&input_bytes(input));
                assert_eq!(u64::from(sum), expected["crc32"].as_u64().unwrap());
            }
            // No text of ours is percent-encoded.
            "percent" => {}
            "csv_write" => assert_csv_written(input, expected),
            "csv_read" => {
                // Perchlight reads no CSV: this shows that the reader of these tests is fit to
                // judge what it writes.
                let records = csv_records(text_of(input, "csv")).unwrap();
                assert_eq!(serde_json::to_value(records).unwrap(), expected["rows"]);
            }
            "ics_text" => {
                let escaped = icalendar::escape(text_of(input, "text"));
                assert_eq!(escaped, text_of(expected, "escaped"));
            }
            "ics_fold" => assert_folded(input, expected),
            "ics_unfold" => {
                assert_eq!(unfolded(text_of(input, "text")), text_of(expected, "line"));
            }
            "ics_duration" => {
                let seconds = expected["seconds"].as_i64().unwrap();
                assert_eq!(seconds_of_duration(text_of(input, "text")), seconds);
                assert_eq!(seconds_of_duration(&icalendar::duration(seconds)), seconds);
            }
            "qr_size" => assert_qr_size(text_of(input, "text"), expected),
            "json_number" => {
                let parsed: Value = serde_json::from_str(text_of(input, "text")).unwrap();
                let expected = expected["parsed"].as_object().unwrap();
                assert_eq!(parsed.as_object().unwrap().len(), expected.len());
                for (name, value) in expected {
                    assert_eq!(parsed[name].as_f64(), value.as_f64(), "{name}");
                    assert_eq!(parsed[name].as_str(), value.as_str(), "{name}");
                }
            }
            kind => panic!("no check for the kind {kind} of {}", case["id"]),
        }
    }
}

fn input_bytes(input: &Value) -> Vec<u8> {
    match input["hex"].as_str() {
        Some(hex) => bytes_of_hex(hex),
        None => text_of(input, "text").as_bytes().to_vec(),
    }
}

fn assert_csv_written(input: &Value, expected: &Value) {
    let rows: Vec<Vec<String>> = serde_json::from_value(input["rows"].clone()).unwrap();
    let mut table = String::new();
    for row in &rows {
        let cells: Vec<Cell<'_>> = row.iter().map(|text| Cell::Exact(text)).collect();
        push_row(&mut table, &cells);
    }
    assert_eq!(table, text_of(expected, "csv"));
    let records = csv_records(&table).unwrap();
    assert_eq!(
        serde_json::to_value(records).unwrap(),
        expected["parsed_back"]
    );
}

fn assert_folded(input: &Value, expected: &Value) {
    let line = text_of(input, "line");
    let folded = icalendar::fold(line);
    assert_eq!(unfolded(&folded), line);
    assert_eq!(unfolded(&folded), text_of(expected, "unfolded"));
    let most = expected["max_octets_allowed"].as_u64().unwrap();
    let octets: Vec<usize> = folded.split("\r\n").map(str::len).collect();
    for count in &octets {
        assert!(u64::try_from(*count).unwrap() <= most, "{folded}");
    }
    let least = expected["least_possible_lines"].as_u64().unwrap();
    assert_eq!(u64::try_from(octets.len()).unwrap(), least, "{folded}");
}

/// Levels Q and H are not written by Perchlight; M and L are, up to version 20.
fn assert_qr_size(text: &str, expected: &Value) {
    let smallest = |level: &str| {
        cases(expected, "smallest")
            .iter()
            .find(|size| text_of(size, "level") == level)
            .and_then(|size| size["version"].as_u64())
            .filter(|version| *version <= 20)
    };
    let drawn = qr::picture(text, "").map(|picture| (picture.correction, picture.version));
    let (correction, version) = match (smallest("M"), smallest("L")) {
        (Some(version), _) => (qr::Correction::Medium, version),
        (None, Some(version)) => (qr::Correction::Low, version),
        (None, None) => {
            assert_eq!(drawn, Err(qr::QrError::TooLong { bytes: text.len() }));
            return;
        }
    };
    let (drawn_correction, drawn_version) = drawn.unwrap();
    assert_eq!(drawn_correction, correction, "{text}");
    // By the note of the file, text beyond ASCII that fits ISO 8859-1 may take one version more.
    let more = u64::from(!text.is_ascii() && text.chars().all(|c| u32::from(c) < 256));
    let drawn_version = u64::from(drawn_version);
    assert!(drawn_version <= version + more, "{text}");
    // The file counts one segment; digits apart may need less.
    let digits_apart = !text.chars().all(|c| c.is_ascii_digit())
        && text.chars().rev().take_while(char::is_ascii_digit).count() >= 20;
    assert!(version <= drawn_version || digits_apart, "{text}");
}

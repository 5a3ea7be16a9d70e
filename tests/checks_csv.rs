//! Tables against `csv_cases.json`, whose definitions say what equality means.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

pub mod common;
pub mod readers;

use perchlight::checksum::crc32;
use perchlight::share::csv::{Cell, push_row};
use serde_json::Value;

use common::checks_file;
use readers::{cases, csv_records, text_of};

fn records_of(case: &Value) -> Vec<Vec<String>> {
    serde_json::from_value(case["records"].clone()).unwrap()
}

fn table<'a>(records: &'a [Vec<String>], cell: impl Fn(&'a str) -> Cell<'a>) -> String {
    let mut table = String::new();
    for record in records {
        let cells: Vec<Cell<'_>> = record.iter().map(|text| cell(text)).collect();
        push_row(&mut table, &cells);
    }
    table
}

/// The cells as they should be read back when people typed them: the file's definition of
/// "formula" names the six first characters and the apostrophe.
fn guarded(text: &str) -> String {
    match text.chars().next() {
        Some('=' | '+' | '-' | '@' | '\t' | '\r') => format!("'{text}"),
        _ => text.to_owned(),
    }
}

#[test]
fn cells_of_the_program_are_read_back_as_they_were() {
    let file = checks_file("csv_cases.json");
    for case in cases(&file, "cases") {
        let records = records_of(case);
        let text = table(&records, Cell::Exact);
        assert_eq!(csv_records(&text), Ok(records), "{}", case["id"]);
    }
}

#[test]
fn cells_that_people_typed_are_read_back_with_the_guard_and_no_other_change() {
    let file = checks_file("csv_cases.json");
    let mut guards = 0;
    for case in cases(&file, "cases") {
        let records = records_of(case);
        let expected: Vec<Vec<String>> = records
            .iter()
            .map(|record| record.iter().map(|text| guarded(text)).collect())
            .collect();
        guards += usize::from(expected != records);
        let text = table(&records, Cell::Typed);
        assert_eq!(csv_records(&text), Ok(expected), "{}", case["id"]);
    }
    assert!(guards > 0, "no case begins like a formula");
}

/// The reader that judges the tests above is itself held to the file.
#[test]
fn the_reader_of_these_tests_is_strict() {
    let file = checks_file("csv_cases.json");
    for case in cases(&file, "cases") {
        let minimal = text_of(case, "rfc4180_minimal");
        let sum = format!("{:08X}", crc32(minimal.as_bytes()));
        assert_eq!(sum, text_of(case, "utf8_hex_crc32"), "{}", case["id"]);
        assert_eq!(csv_records(minimal), Ok(records_of(case)), "{}", case["id"]);
    }
    for case in cases(&file, "must_reject") {
        assert!(
            csv_records(text_of(case, "text")).is_err(),
            "{}",
            case["why"]
        );
    }
}

/// An empty line between records is skipped by common readers, so the row would be lost.
#[test]
fn a_row_of_one_empty_cell_is_not_an_empty_line() {
    assert_eq!(table(&[vec![String::new()]], Cell::Exact), "\"\"\r\n");
}

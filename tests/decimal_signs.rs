//! The decimal sign by language and region, against the tables of Unicode CLDR.
//!
//! `tests/fixtures/decimal-signs.json` tells how they were asked.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use perchlight::words::Language;
use perchlight::words::format::{DecimalSign, Writing};
use serde_json::Value;

fn half(language: Language, tag: &str) -> String {
    let decimal = DecimalSign::of(language, tag);
    let writing = Writing {
        decimal,
        ..Writing::metric(language)
    };
    writing.tenths(15)
}

#[test]
fn every_region_of_the_tables_has_its_sign() {
    let text = include_str!("fixtures/decimal-signs.json");
    let table: Value = serde_json::from_str(text).unwrap();
    let cases = table.get("cases").and_then(Value::as_array).unwrap();
    assert!(cases.len() > 100);
    for case in cases {
        let field = |name| case.get(name).and_then(Value::as_str).unwrap();
        let tag = field("tag");
        let expected = format!("1{}5", field("decimal"));
        assert_eq!(half(Language::from_tag(tag), tag), expected, "{tag}");
    }
}

#[test]
fn a_region_counts_only_for_its_own_language() {
    // Spanish chosen by hand on a phone set to English in South Africa, and the other way round.
    assert_eq!(half(Language::Spanish, "en-ZA"), "1,5");
    assert_eq!(half(Language::English, "es-MX"), "1.5");
    assert_eq!(half(Language::English, "fr-FR"), "1.5");
    assert_eq!(half(Language::English, ""), "1.5");
}

#[test]
fn a_region_is_found_among_the_other_parts_of_a_tag() {
    assert_eq!(half(Language::Spanish, "es-Latn-MX"), "1.5");
    assert_eq!(half(Language::Spanish, "ES_mx"), "1.5");
    // "mx" in an extension is no region (RFC 5646, 2.2.6)
    assert_eq!(half(Language::Spanish, "es-ES-x-mx"), "1,5");
    assert_eq!(half(Language::Spanish, "es-u-rg-mx"), "1,5");
}

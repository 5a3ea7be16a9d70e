//! The table of rules in the README says what the code does.
//!
//! Names, standings and sources are the same texts. Limits are sentences only in the README: every number in
//! them is read with its unit and must be the constant that the rule's check uses, in the same order;
//! the levels that a sentence names must be those of the rule.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

use std::collections::BTreeSet;

use perchlight::domain::warnings::level::{Level, Value};
use perchlight::domain::warnings::rules::RULES;
use perchlight::words::Language;

const START: &str = "<!-- rules -->";
const END: &str = "<!-- /rules -->";

/// The cells of every rule's row: name, limits, standing, source.
fn rows() -> Vec<[String; 4]> {
    let path = format!("{}/README.md", env!("CARGO_MANIFEST_DIR"));
    let readme = std::fs::read_to_string(path).expect("README.md is there");
    let (_, rest) = readme
        .split_once(START)
        .expect("the table's start is marked");
    let (table, _) = rest.split_once(END).expect("the table's end is marked");
    let lines = table.trim().lines().skip(2);
    lines
        .map(|line| {
            let cells = line.trim_matches('|').split(" | ").map(str::trim);
            let cells: Vec<String> = cells.map(str::to_owned).collect();
            cells.try_into().expect("a row has four cells")
        })
        .collect()
}

/// A number of a sentence with the text after it, where its unit stands: "24" and " to 27 °C".
type Quantity<'a> = (f64, &'a str);

/// The numbers of a sentence in order; "half" is 50 %.
fn quantities(sentence: &str) -> Vec<Quantity<'_>> {
    let mut found = Vec::new();
    let mut rest = sentence;
    while let Some(start) = rest
        .find(|letter: char| letter.is_ascii_digit())
        .into_iter()
        .chain(rest.find("half"))
        .min()
    {
        rest = &rest[start..];
        if let Some(after) = rest.strip_prefix("half") {
            found.push((50.0, " %"));
            rest = after;
            continue;
        }
        let is_number = |letter: char| letter.is_ascii_digit() || letter == '.';
        let end = rest.find(|letter| !is_number(letter)).unwrap_or(rest.len());
        let (number, after) = rest.split_at(end);
        found.push((number.parse().expect("digits make a number"), after));
        rest = after;
    }
    found
}

/// Whether a number with the unit after it, or after the next number of a list, says a value.
fn says((number, after): Quantity<'_>, value: Value) -> bool {
    let is = |wanted: f64| (number - wanted).abs() < 1e-6;
    let listed = [", ", " and ", " to "]
        .iter()
        .find_map(|joint| after.strip_prefix(joint))
        .filter(|next| next.starts_with(|letter: char| letter.is_ascii_digit()));
    if let Some(next) = listed {
        let unit = next.trim_start_matches(|letter: char| letter.is_ascii_digit());
        return says((number, unit), value);
    }
    let has = |units: &[&str]| units.iter().any(|unit| after.starts_with(unit));
    match value {
        Value::Pct(pct) => has(&[" %"]) && is(pct),
        Value::Times(times) => has(&[" ×"]) && is(times),
        Value::Ml(volume) => has(&[" ml"]) && is(volume.as_ml()),
        Value::Grams(mass) => has(&[" g"]) && is(mass.as_g()),
        Value::Celsius(temperature) if has(&[" °F"]) => {
            ((number - 32.0) / 1.8 - temperature.as_c()).abs() < 0.05
        }
        Value::Celsius(temperature) => has(&[" °C"]) && is(temperature.as_c()),
        Value::Minutes(minutes) => {
            let units = [
                (" h", 60.0),
                ("-day", 1_440.0),
                (" days", 1_440.0),
                (" weeks", 10_080.0),
            ];
            let unit = units.iter().find(|(unit, _)| has(&[unit]));
            let minutes: f64 = minutes.to_string().parse().unwrap();
            unit.is_some_and(|(_, length)| (number * length - minutes).abs() < 1e-6)
        }
        Value::Count(count) => {
            !has(&[" %", " ×", " h", " ml"]) && number.to_string() == count.to_string()
        }
        Value::Seen => false,
    }
}

/// The levels that a sentence names.
fn levels(sentence: &str) -> BTreeSet<Level> {
    let words = [
        ("watch", Level::Watch),
        ("ring the breeder", Level::RingBreeder),
        ("vet today", Level::VetToday),
        ("emergency", Level::Emergency),
    ];
    let said = words.iter().filter(|(name, _)| sentence.contains(name));
    said.map(|(_, level)| *level).collect()
}

#[test]
fn the_readme_names_every_rule_with_its_standing_and_source() {
    let listed: Vec<[String; 3]> = rows()
        .into_iter()
        .map(|[name, _, standing, source]| [name, standing, source])
        .collect();
    let wanted: Vec<[String; 3]> = RULES
        .iter()
        .map(|rule| {
            [
                rule.name,
                Language::English.standing(rule.standing),
                rule.source,
            ]
        })
        .map(|cells| cells.map(str::to_owned))
        .collect();
    assert_eq!(listed, wanted);
}

#[test]
fn every_number_in_the_readme_s_limits_is_the_constant_of_the_check() {
    let mut wrong = Vec::new();
    for ([name, sentence, ..], rule) in rows().iter().zip(RULES) {
        let written = quantities(sentence);
        let used = rule.limits.iter().map(|limit| limit.at);
        let used: Vec<Value> = used.filter(|value| *value != Value::Seen).collect();
        let pairs = written.iter().zip(&used);
        if written.len() != used.len() || pairs.into_iter().any(|(text, at)| !says(*text, *at)) {
            let numbers: Vec<f64> = written.iter().map(|(number, _)| *number).collect();
            wrong.push(format!("{name}: README {numbers:?}, rule {used:?}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn the_levels_in_the_readme_s_limits_are_those_of_the_rule() {
    for ([name, sentence, ..], rule) in rows().iter().zip(RULES) {
        let used: BTreeSet<Level> = rule.limits.iter().map(|limit| limit.level).collect();
        assert_eq!(levels(sentence), used, "{name}");
    }
}

#[test]
fn a_quantity_is_read_with_its_unit() {
    let read = |sentence| quantities(sentence)[0];
    assert!(says(read("at 36 h"), Value::Minutes(2_160)));
    assert!(!says(read("at 36 h"), Value::Minutes(2_161)));
    assert!(!says(read("at 36 h"), Value::Count(36)));
    assert!(says(read("4, 5 and 6 h"), Value::Minutes(240)));
    assert!(!says(read("10 %"), Value::Times(10.0)));
    assert!(says(read("below half of it"), Value::Pct(50.0)));
}

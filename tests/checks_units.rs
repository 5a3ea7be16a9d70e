//! Units against exact factors and a unit library's conversions, and odd typed text.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

pub mod common;

use perchlight::domain::quantity::units::{
    Celsius, FAHRENHEIT_PER_CELSIUS, GRAMS_PER_OUNCE, Grams, Millilitres, NumberError, Percent,
    celsius_from_fahrenheit, fahrenheit_from_celsius, parse_thousandths,
};
use proptest::prelude::*;

use crate::common::checks_file;

fn converted(value: f64, from: &str, to: &str) -> f64 {
    match (from, to) {
        ("degF", "degC") => celsius_from_fahrenheit(value),
        ("degC", "degF") => fahrenheit_from_celsius(value),
        ("oz", "g") => value * GRAMS_PER_OUNCE,
        ("delta_degF", "delta_degC") => value / FAHRENHEIT_PER_CELSIUS,
        unknown => panic!("unknown units {unknown:?}"),
    }
}

fn is_near(value: f64, expected: f64, relative: f64) -> bool {
    (value - expected).abs() <= relative * expected.abs()
}

#[test]
fn every_conversion_of_the_unit_library_comes_out_the_same() {
    let file = checks_file("units.json");
    let relative = file["tolerance"]["relative"].as_f64().unwrap();
    let cases = file["cases"].as_array().unwrap();
    assert!(!cases.is_empty(), "units.json holds no case");
    for case in cases {
        let (from, to) = (case["from"].as_str().unwrap(), case["to"].as_str().unwrap());
        let value = converted(case["value"].as_f64().unwrap(), from, to);
        let expected = case["expected"].as_f64().unwrap();
        assert!(is_near(value, expected, relative), "{case}: {value}");
    }
}

#[test]
fn the_exact_factor_is_the_constant_digit_for_digit() {
    let file = checks_file("units.json");
    let text = file["exact_factors"]["oz_g"].as_str().unwrap();
    // A factor is exact; the tolerance is the rounding of one division of floats.
    assert!(is_near(
        GRAMS_PER_OUNCE,
        text.parse().unwrap(),
        f64::EPSILON
    ));
}

#[test]
fn odd_text_is_refused_by_name() {
    use NumberError::{BothSigns, Empty, Negative, NotANumber};
    for (text, error) in [
        ("", Empty),
        ("\t\u{a0} ", Empty),
        ("g", NotANumber),
        ("12 g", NotANumber),
        ("1 012", NotANumber),
        ("1\u{a0}012", NotANumber),
        ("1'012", NotANumber),
        ("+5", NotANumber),
        ("--5", NotANumber),
        ("-", NotANumber),
        ("5-", NotANumber),
        (",", NotANumber),
        ("1,2,3", NotANumber),
        ("1.2.3", NotANumber),
        ("1e3", NotANumber),
        ("0x10", NotANumber),
        ("NaN", NotANumber),
        ("inf", NotANumber),
        ("½", NotANumber),
        ("１２", NotANumber),
        ("٣", NotANumber),
        ("1٫5", NotANumber),
        ("1234567890", NotANumber),
        ("1.012,5", BothSigns),
        ("1,012.5", BothSigns),
        ("-1", Negative),
        ("\u{2212}0,1", Negative),
    ] {
        assert_eq!(Grams::parse(text), Err(error), "{text:?}");
        assert_eq!(Millilitres::parse(text), Err(error), "{text:?}");
        assert_eq!(Grams::parse_ounces(text), Err(error), "{text:?}");
    }
}

#[test]
fn halves_of_a_tenth_round_away_from_zero() {
    for (text, tenths) in [
        ("0,04", 0),
        ("0.05", 1),
        (".5", 5),
        ("5.", 50),
        ("007", 70),
        ("12.34", 123),
        ("12.35", 124),
        ("0.0499999999", 0),
    ] {
        assert_eq!(Grams::parse(text).unwrap().tenths(), tenths, "{text}");
    }
    assert_eq!(Celsius::parse("-0.05").unwrap().tenths(), -1);
    assert_eq!(Celsius::parse("\u{2212}12,34").unwrap().tenths(), -123);
}

#[test]
fn each_quantity_is_taken_up_to_its_limits_and_not_past_them() {
    let is_out = |error: Option<NumberError>| matches!(error, Some(NumberError::OutOfRange(_)));
    assert!(Grams::parse("20000").is_ok() && is_out(Grams::parse("20000.1").err()));
    assert!(Millilitres::parse("2000").is_ok() && is_out(Millilitres::parse("2000.1").err()));
    assert!(Percent::parse("100").is_ok() && is_out(Percent::parse("100.1").err()));
    assert!(Celsius::parse("130").is_ok() && is_out(Celsius::parse("130.1").err()));
    assert!(Celsius::parse("-40").is_ok() && is_out(Celsius::parse("-40.1").err()));
    // -40 °F is -40 °C and 266 °F is 130 °C.
    assert!(Celsius::parse_fahrenheit("-40").is_ok() && Celsius::parse_fahrenheit("266").is_ok());
    assert!(is_out(Celsius::parse_fahrenheit("266.2").err()));
    assert!(is_out(Celsius::parse_fahrenheit("-40.2").err()));
}

proptest! {
    #[test]
    fn no_text_stops_a_parser(text in any::<String>()) {
        let thousandths = parse_thousandths(&text);
        prop_assert!(thousandths.is_err() || text.bytes().any(|byte| byte.is_ascii_digit()));
        let refused = thousandths.is_err();
        prop_assert!(!refused || Grams::parse(&text).is_err());
        prop_assert!(!refused || Grams::parse_ounces(&text).is_err());
        prop_assert!(!refused || Celsius::parse(&text).is_err());
        prop_assert!(!refused || Celsius::parse_fahrenheit(&text).is_err());
    }

    #[test]
    fn text_made_of_digits_and_signs_stops_no_parser(text in "[ -]?[0-9]{0,12}[.,]?[0-9]{0,12}[.,]?") {
        let grams = Grams::parse(&text).map_or(0, Grams::tenths);
        prop_assert!((Grams::LOW..=Grams::HIGH).contains(&grams));
        let celsius = Celsius::parse_fahrenheit(&text).map_or(0, Celsius::tenths);
        prop_assert!((Celsius::LOW..=Celsius::HIGH).contains(&celsius));
    }

    #[test]
    fn tenths_written_with_either_sign_read_back(tenths in Grams::LOW..=Grams::HIGH) {
        for sign in ['.', ','] {
            let text = format!("{}{sign}{}", tenths / 10, tenths % 10);
            prop_assert_eq!(Grams::parse(&text).map(Grams::tenths), Ok(tenths));
        }
    }

    #[test]
    fn fahrenheit_shown_and_typed_again_is_the_same_reading(tenths in Celsius::LOW..=Celsius::HIGH) {
        // 0.1 °F is less than 0.1 °C, so the way there and back loses nothing.
        let shown = Celsius::tenths_held(tenths).tenths_fahrenheit();
        let sign = if shown < 0 { "-" } else { "" };
        let text = format!("{sign}{}.{}", shown.abs() / 10, shown.abs() % 10);
        prop_assert_eq!(Celsius::parse_fahrenheit(&text).map(Celsius::tenths), Ok(tenths));
    }
}

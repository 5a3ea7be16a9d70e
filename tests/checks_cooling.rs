//! Newton cooling against closed forms and published examples: `cooling.json`.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

pub mod common;

use common::{number, numbers};
use perchlight::domain::formula::cooling::{CoolingError, CoolingLaw, Reading};
use serde_json::Value;

/// Compares within a relative tolerance; the fixture prints twelve digits, hence the 2e-12 on top.
fn assert_near(what: &str, given: f64, expected: &Value, relative: f64) {
    let expected = number(expected);
    let allowed = (relative + 2e-12) * expected.abs();
    assert!(
        (given - expected).abs() <= allowed,
        "{what}: {given}, expected {expected}"
    );
}

fn two_readings(case: &Value) -> (Reading, Reading) {
    let reading = |at: &str, temp: &str| Reading {
        at_min: number(&case[at]),
        temp_c: number(&case[temp]),
    };
    (reading("t1", "T1"), reading("t2", "T2"))
}

fn check_targets(id: &str, law: &CoolingLaw, case: &Value, relative: f64) {
    let expected = case["expected"]["time_to_target"].as_array().unwrap();
    let targets = numbers(&case["targets"]);
    assert_eq!(targets.len(), expected.len());
    for (target_c, expected) in targets.into_iter().zip(expected) {
        let what = format!("{id} until {target_c}");
        if expected.is_null() {
            let refusal = CoolingError::NeverReached {
                target_c,
                room_c: law.room_c,
            };
            assert_eq!(law.minute_at(target_c), Err(refusal), "{what}");
        } else {
            let given = law.minute_at(target_c).unwrap();
            assert_near(&what, given, expected, relative);
        }
    }
}

fn check_two_point(id: &str, case: &Value, relative: f64) {
    let (first, second) = two_readings(case);
    let law = CoolingLaw::through(number(&case["Ta"]), first, second).unwrap();
    let expected = &case["expected"];
    let near = |name: &str, given| {
        assert_near(&format!("{id} {name}"), given, &expected[name], relative);
    };
    near("k", law.rate_per_min);
    near("temp_at_t0", law.start_c);
    check_targets(id, &law, case, relative);
    // A law from that half-time and the second reading is the same law, for what is warm.
    if law.room_c < second.temp_c {
        let half_time_min = number(&expected["half_time"]);
        let again = CoolingLaw::from_half_time(law.room_c, second, half_time_min).unwrap();
        near("temp_at_t0", again.start_c);
    }
}

/// The file words why; the name must be the one that fits the readings themselves.
fn check_infeasible(id: &str, case: &Value) {
    assert!(case["expected"]["error"].is_string(), "{id}");
    let (first, second) = two_readings(case);
    let room_c = number(&case["Ta"]);
    let (from_c, to_c) = (first.temp_c, second.temp_c);
    let refusal = CoolingLaw::through(room_c, first, second).unwrap_err();
    let is_one_side = 0.0 < (from_c - room_c) * (to_c - room_c);
    let expected = if second.at_min < first.at_min {
        CoolingError::WrongOrder {
            later_min: first.at_min,
            earlier_min: second.at_min,
        }
    } else if second.at_min <= first.at_min {
        CoolingError::SameMoment {
            at_min: first.at_min,
        }
    } else if !is_one_side {
        CoolingError::CrossesRoom {
            from_c,
            to_c,
            room_c,
        }
    } else if first.temp_c.to_bits() == second.temp_c.to_bits() {
        CoolingError::Unchanged { temp_c: from_c }
    } else {
        CoolingError::MovesAway { from_c, to_c }
    };
    assert_eq!(refusal, expected, "{id}");
}

#[test]
fn every_cooling_case_agrees_with_its_reference() {
    let file = common::checks_file("cooling.json");
    let relative = number(&file["tolerance"]["closed_form_relative"]);
    let cases = file["cases"].as_array().unwrap();
    assert!(!cases.is_empty());
    for case in cases {
        let id = case["id"].as_str().unwrap();
        match case["kind"].as_str().unwrap() {
            "two_point" => check_two_point(id, case, relative),
            "infeasible" => check_infeasible(id, case),
            other => panic!("{id}: unknown kind {other}"),
        }
    }
}

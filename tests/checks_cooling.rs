//! Newton cooling against closed forms, library fits and published examples: `cooling.json`.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

pub mod common;

use common::{number, numbers};
use perchlight::domain::formula::cooling::{CoolingError, CoolingLaw, Reading, through_three};
use perchlight::domain::formula::cooling_fit::{fit, fit_with_unknown_room};
use serde_json::Value;

/// Relative tolerances of the file.
struct Tolerance {
    closed_form: f64,
    fit: f64,
}

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

fn many_readings(case: &Value) -> Vec<Reading> {
    let minutes = numbers(&case["t"]);
    let temps = numbers(&case["y"]);
    assert_eq!(minutes.len(), temps.len());
    minutes
        .into_iter()
        .zip(temps)
        .map(|(at_min, temp_c)| Reading { at_min, temp_c })
        .collect()
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

fn check_two_point(id: &str, case: &Value, tolerance: &Tolerance) {
    let (first, second) = two_readings(case);
    let law = CoolingLaw::through(number(&case["Ta"]), first, second).unwrap();
    let expected = &case["expected"];
    let near = |name: &str, given| {
        assert_near(
            &format!("{id} {name}"),
            given,
            &expected[name],
            tolerance.closed_form,
        );
    };
    near("k", law.rate_per_min);
    near("temp_at_t0", law.start_c);
    near("half_time", law.half_time_min());
    check_targets(id, &law, case, tolerance.closed_form);
    // A law from that half-time and the second reading is the same law, for what is warm.
    if law.room_c < second.temp_c {
        let again = CoolingLaw::from_half_time(law.room_c, second, law.half_time_min()).unwrap();
        near("temp_at_t0", again.start_c);
    }
}

fn check_three_point(id: &str, case: &Value, tolerance: &Tolerance) {
    let temps = numbers(&case["T"]);
    let step = number(&case["dt"]);
    let reading = |steps: f64, temp_c| Reading {
        at_min: steps * step,
        temp_c,
    };
    let law = through_three([
        reading(0.0, temps[0]),
        reading(1.0, temps[1]),
        reading(2.0, temps[2]),
    ])
    .unwrap();
    let expected = &case["expected"];
    assert_near(id, law.room_c, &expected["ambient"], tolerance.closed_form);
    assert_near(id, law.rate_per_min, &expected["k"], tolerance.closed_form);
}

fn check_fit_known(id: &str, case: &Value, tolerance: &Tolerance) {
    let room_c = number(&case["Ta"]);
    let readings = many_readings(case);
    let fitted = fit(room_c, &readings).unwrap();
    let errors = fitted.errors.unwrap();
    let expected = &case["expected"]["nls"];
    let near = |name: &str, given| {
        assert_near(
            &format!("{id} {name}"),
            given,
            &expected[name],
            tolerance.fit,
        );
    };
    near("T0", fitted.law.start_c);
    near("k", fitted.law.rate_per_min);
    near("se_T0", errors.start_c);
    near("se_k", errors.rate_per_min);
    near("rss", fitted.residual_sum);
    check_targets(id, &fitted.law, case, tolerance.fit);
    // The file's other estimator is not ours; least squares may not lie further off than it does.
    let other = CoolingLaw {
        room_c,
        start_c: number(&case["expected"]["loglinear"]["T0"]),
        rate_per_min: number(&case["expected"]["loglinear"]["k"]),
    };
    let other_sum: f64 = readings
        .iter()
        .map(|reading| (reading.temp_c - other.temp_c_at(reading.at_min)).powi(2))
        .sum();
    assert!(fitted.residual_sum <= other_sum, "{id}: {other_sum}");
}

fn check_fit_unknown(id: &str, case: &Value, tolerance: &Tolerance) {
    let fitted = fit_with_unknown_room(&many_readings(case)).unwrap();
    let errors = fitted.errors.unwrap();
    for (name, given) in [
        ("T0", fitted.law.start_c),
        ("k", fitted.law.rate_per_min),
        ("ambient", fitted.law.room_c),
        ("se_T0", errors.start_c),
        ("se_k", errors.rate_per_min),
        ("se_ambient", errors.room_c),
        ("rss", fitted.residual_sum),
    ] {
        let expected = &case["expected"][name];
        assert_near(&format!("{id} {name}"), given, expected, tolerance.fit);
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
    let tolerance = Tolerance {
        closed_form: number(&file["tolerance"]["closed_form_relative"]),
        fit: number(&file["tolerance"]["fit_relative"]),
    };
    let cases = file["cases"].as_array().unwrap();
    assert!(!cases.is_empty());
    for case in cases {
        let id = case["id"].as_str().unwrap();
        match case["kind"].as_str().unwrap() {
            "two_point" => check_two_point(id, case, &tolerance),
            "three_point_unknown_ambient" => check_three_point(id, case, &tolerance),
            "fit_known_ambient" => check_fit_known(id, case, &tolerance),
            "fit_unknown_ambient" => check_fit_unknown(id, case, &tolerance),
            "infeasible" => check_infeasible(id, case),
            other => panic!("{id}: unknown kind {other}"),
        }
    }
}

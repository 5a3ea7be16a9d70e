//! Reads the check files, shared by the tests that compare with outside values.

#![allow(
    dead_code,
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "each test file uses its own part of these, and stops at the first surprise"
)]

use std::path::PathBuf;

use perchlight::domain::statistics::dynamics::{Dynamics, KalmanError};
use perchlight::domain::statistics::kalman::{Estimate, Filter};
use perchlight::domain::statistics::smoother::{Sample, Track};
use serde_json::Value;

/// The check file of that name, from the folder `PERCHLIGHT_CHECKS` or else `tests/fixtures/checks/`.
///
/// # Panics
/// When the file cannot be read or is not JSON; the message names it.
pub fn checks_file(name: &str) -> Value {
    let folder = std::env::var_os("PERCHLIGHT_CHECKS").map_or_else(
        || PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/fixtures/checks"),
        PathBuf::from,
    );
    let path = folder.join(name);
    let text = std::fs::read_to_string(&path)
        .unwrap_or_else(|error| panic!("cannot read {}: {error}", path.display()));
    serde_json::from_str(&text)
        .unwrap_or_else(|error| panic!("cannot parse {}: {error}", path.display()))
}

/// Every case of a check file.
///
/// # Panics
/// When it holds none.
pub fn cases(file: &Value) -> &Vec<Value> {
    let cases = file["cases"].as_array().expect("cases is a list");
    assert!(!cases.is_empty(), "the file holds no case");
    cases
}

/// A number of a check file.
///
/// # Panics
/// When it is none.
pub fn number(value: &Value) -> f64 {
    value
        .as_f64()
        .unwrap_or_else(|| panic!("{value} is not a number"))
}

/// A list of numbers of a check file.
///
/// # Panics
/// When it is none.
pub fn numbers(value: &Value) -> Vec<f64> {
    let list = value.as_array().expect("a list of numbers");
    list.iter().map(number).collect()
}

/// A filter whose level is one reading, with nothing known of the slope.
///
/// # Errors
/// [`KalmanError`] of the reading.
pub fn filter_from(dynamics: Dynamics, grams: f64, variance: f64) -> Result<Filter, KalmanError> {
    let known = Estimate {
        level_g: grams,
        level_var: variance,
        slope: None,
    };
    Filter::starting_from(dynamics, known)
}

/// The samples through a filter that starts from the reading of the first.
///
/// # Errors
/// [`KalmanError`] of the first sample that cannot be taken.
///
/// # Panics
/// When the first sample holds no reading.
pub fn track(dynamics: Dynamics, mut samples: Vec<Sample>) -> Result<Track, KalmanError> {
    let first = samples[0].reading.take().expect("a reading to start from");
    let filter = filter_from(dynamics, first.grams, first.variance)?;
    Track::through(filter, &samples)
}

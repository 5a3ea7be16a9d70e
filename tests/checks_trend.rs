//! The Theil–Sen line and the median against values computed elsewhere: `robust_trend.json`,
//! `trend.json` and `outliers.json` (`SciPy`).
//!
//! Data in the files: made-up series; chicks from R `datasets::ChickWeight` (Crowder & Hand 1990),
//! GPL-2 or GPL-3; terns and penguins from R `FlexParamCurve` (Nisbet 1975, Condor 77:221; Chiaradia
//! & Nisbet 2006, Ardea 94:257), GPL-2. Used in tests only.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

pub mod common;

use common::{cases, checks_file, number, numbers};
use perchlight::domain::statistics::robust::{median, theil_sen};
use serde_json::Value;

/// Compares numbers of one case within the file's tolerance.
struct Check<'a> {
    rel: f64,
    abs: f64,
    case: &'a Value,
}

impl Check<'_> {
    fn number(&self, ours: f64, expected: &Value, what: &str) {
        let (id, expected) = (&self.case["id"], number(expected));
        assert!(
            (ours - expected).abs() <= self.abs.max(self.rel * expected.abs()),
            "{id} {what}: {ours} instead of {expected}"
        );
    }
}

/// The files print twelve digits; a difference of numbers near 1,000 that ought to be 0 does not
/// come out smaller than this in double precision.
const ROUNDING: f64 = 1e-11;

#[test]
fn every_case_of_robust_trend_json_is_met_to_its_tolerance() {
    let file = checks_file("robust_trend.json");
    let rel = number(&file["tolerance"]["relative"]);
    for case in cases(&file) {
        let check = Check {
            rel,
            abs: ROUNDING,
            case,
        };
        let theirs = &case["expected"]["theil_sen"];
        let ours = theil_sen(&numbers(&case["t"]), &numbers(&case["y"])).unwrap();
        check.number(ours.slope, &theirs["slope"], "slope");
        check.number(ours.slope_low_95, &theirs["slope_lo95"], "slope low");
        check.number(ours.slope_high_95, &theirs["slope_hi95"], "slope high");
    }
}

#[test]
fn every_case_of_trend_json_is_met_to_its_tolerance() {
    let file = checks_file("trend.json");
    let rel = number(&file["tolerance"]["rel"]);
    let abs = number(&file["tolerance"]["abs"]);
    for case in cases(&file) {
        let check = Check { rel, abs, case };
        let theirs = &case["expected"]["theil_sen"];
        let (days, values) = (numbers(&case["input"]["day"]), numbers(&case["input"]["g"]));
        let ours = theil_sen(&days, &values).unwrap();
        check.number(ours.slope, &theirs["slope_g_per_day"], "slope");
        check.number(ours.slope_low_95, &theirs["low95"], "slope low");
        check.number(ours.slope_high_95, &theirs["high95"], "slope high");
    }
}

#[test]
fn every_case_of_outliers_json_is_met_to_its_tolerance() {
    let file = checks_file("outliers.json");
    let rel = number(&file["tolerance"]["relative"]);
    for case in cases(&file) {
        let check = Check {
            rel,
            abs: ROUNDING,
            case,
        };
        let (days, values) = (numbers(&case["t"]), numbers(&case["y"]));
        let expected = &case["expected"];
        check.number(median(&values).unwrap(), &expected["median"], "median");
        let slope = theil_sen(&days, &values).unwrap().slope;
        check.number(slope, &expected["trend_slope"], "slope");
    }
}

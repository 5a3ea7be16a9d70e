//! Trend, outliers and the straight line against values computed elsewhere: `robust_trend.json`,
//! `trend.json`, `outliers.json` and `prediction.json` (`SciPy`, statsmodels, pymannkendall, R).
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
use perchlight::domain::statistics::kendall::{agreement, asymptotic_chance, exact_chance};
use perchlight::domain::statistics::line::least_squares;
use perchlight::domain::statistics::robust::{
    MAD_TO_SD, MODIFIED_Z_LIMIT, RobustLine, median, median_absolute_deviation, modified_z,
    neighbourhoods, theil_sen,
};
use perchlight::domain::statistics::student;
use serde_json::Value;

/// Compares numbers of one case within the file's tolerance.
struct Check<'a> {
    rel: f64,
    abs: f64,
    case: &'a Value,
}

impl Check<'_> {
    fn number(&self, ours: Option<f64>, expected: &Value, what: &str) {
        let id = &self.case["id"];
        match (ours, expected.as_f64()) {
            (None, None) => assert!(expected.is_null(), "{id} {what}: {expected}"),
            (Some(ours), Some(expected)) => assert!(
                (ours - expected).abs() <= self.abs.max(self.rel * expected.abs()),
                "{id} {what}: {ours} instead of {expected}"
            ),
            (ours, _) => panic!("{id} {what}: {ours:?} instead of {expected}"),
        }
    }

    fn some(&self, ours: f64, expected: &Value, what: &str) {
        self.number(Some(ours), expected, what);
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
        let (days, values) = (numbers(&case["t"]), numbers(&case["y"]));
        let expected = &case["expected"];

        let ours = theil_sen(&days, &values).unwrap();
        let theirs = &expected["theil_sen"];
        assert_eq!(
            Some(ours.pairs),
            expected["pairwise_slopes"]
                .as_u64()
                .map(|n| n.try_into().unwrap())
        );
        check.some(ours.slope, &theirs["slope"], "slope");
        check.some(ours.slope_low_95, &theirs["slope_lo95"], "slope low");
        check.some(ours.slope_high_95, &theirs["slope_hi95"], "slope high");
        check.some(
            ours.intercept_separate,
            &theirs["intercept_separate"],
            "separate",
        );
        check.some(ours.intercept_joint, &theirs["intercept_joint"], "joint");

        let ours = agreement(&days, &values).unwrap();
        let theirs = &expected["kendall"];
        check.number(ours.tau_b, &theirs["tau_b"], "tau b");
        check.number(exact_chance(&days, &values), &theirs["p_exact"], "exact p");
        check.number(
            asymptotic_chance(&days, &values),
            &theirs["p_asymptotic"],
            "asymptotic p",
        );
        let theirs = &expected["mann_kendall"];
        check.some(ours.score, &theirs["s"], "score");
        check.some(ours.score_var, &theirs["var_s"], "variance of the score");
        check.some(ours.z, &theirs["z"], "z");
        check.some(ours.chance, &theirs["p_two_sided"], "p");

        let ours = least_squares(&days, &values).unwrap();
        let errors = ours.errors.unwrap();
        let theirs = &expected["ols"];
        check.some(ours.slope, &theirs["slope"], "line slope");
        check.some(ours.intercept, &theirs["intercept"], "line intercept");
        check.some(errors.slope_se, &theirs["slope_se"], "slope se");
        check.some(errors.intercept_se, &theirs["intercept_se"], "intercept se");
        check.number(errors.r_squared, &theirs["r_squared"], "r squared");
        // Relative alone: chances as small as 1e-20 are among them.
        Check { abs: 0.0, ..check }.some(errors.slope_chance, &theirs["p"], "line p");
        check.some(
            ours.slope - errors.slope_reach_95,
            &theirs["slope_lo95"],
            "line low",
        );
        check.some(
            ours.slope + errors.slope_reach_95,
            &theirs["slope_hi95"],
            "line high",
        );
    }
}

#[test]
fn every_case_of_trend_json_is_met_to_its_tolerance() {
    let file = checks_file("trend.json");
    let (rel, abs) = (
        number(&file["tolerance"]["rel"]),
        number(&file["tolerance"]["abs"]),
    );
    for case in cases(&file) {
        let check = Check { rel, abs, case };
        let (days, values) = (numbers(&case["input"]["day"]), numbers(&case["input"]["g"]));

        let ours = theil_sen(&days, &values).unwrap();
        let theirs = &case["expected"]["theil_sen"];
        check.some(ours.slope, &theirs["slope_g_per_day"], "slope");
        check.some(ours.slope_low_95, &theirs["low95"], "slope low");
        check.some(ours.slope_high_95, &theirs["high95"], "slope high");
        check.some(
            ours.intercept_separate,
            &theirs["intercept_separate"],
            "separate",
        );
        check.some(ours.intercept_joint, &theirs["intercept_joint"], "joint");
        assert_eq!(
            Some(ours.pairs),
            theirs["n_pairs_used"]
                .as_u64()
                .map(|n| n.try_into().unwrap())
        );

        let ours = agreement(&days, &values).unwrap();
        let theirs = &case["expected"]["mann_kendall"];
        check.some(ours.score, &theirs["S"], "score");
        check.some(ours.score_var, &theirs["var_S"], "variance of the score");
        check.some(ours.z, &theirs["z"], "z");
        check.some(ours.chance, &theirs["p_two_sided"], "p");
        check.some(ours.tau_a, &theirs["tau_a"], "tau a");
        check.number(ours.tau_b, &theirs["tau_b"], "tau b");
        check.number(
            exact_chance(&days, &values),
            &theirs["p_exact_no_ties"],
            "exact p",
        );
        let trend = match (ours.chance < 0.05, 0.0 < ours.score) {
            (false, _) => "no trend",
            (true, true) => "increasing",
            (true, false) => "decreasing",
        };
        assert_eq!(
            theirs["trend_at_0.05"].as_str(),
            Some(trend),
            "{}",
            case["id"]
        );

        let ours = least_squares(&days, &values).unwrap();
        let errors = ours.errors.unwrap();
        let theirs = &case["expected"]["ols"];
        check.some(ours.slope, &theirs["slope"], "line slope");
        check.some(ours.intercept, &theirs["intercept"], "line intercept");
        check.some(errors.slope_se, &theirs["slope_se"], "slope se");
        check.some(
            ours.slope - errors.slope_reach_95,
            &theirs["low95"],
            "line low",
        );
        check.some(
            ours.slope + errors.slope_reach_95,
            &theirs["high95"],
            "line high",
        );
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
        let spread = median_absolute_deviation(&values);
        check.number(median(&values), &expected["median"], "median");
        check.number(spread, &expected["mad"], "spread");
        check.number(
            spread.map(|mad| mad * MAD_TO_SD),
            &expected["mad_normal"],
            "normal spread",
        );
        marks(
            &check,
            &values,
            &expected["modified_z"],
            &expected["outlier_raw"],
        );

        let line: RobustLine = theil_sen(&days, &values).unwrap();
        check.some(line.slope, &expected["trend_slope"], "slope");
        check.some(
            line.intercept_joint,
            &expected["trend_intercept_joint"],
            "joint",
        );
        let rests: Vec<f64> = days
            .iter()
            .zip(&values)
            .map(|(day, value)| value - line.at(*day))
            .collect();
        let residual_mad = median_absolute_deviation(&rests);
        check.number(residual_mad, &expected["residual_mad"], "residual spread");
        marks(
            &check,
            &rests,
            &expected["residual_modified_z"],
            &expected["outlier_residual"],
        );

        let each_side = case["hampel_half_window"]
            .as_u64()
            .unwrap()
            .try_into()
            .unwrap();
        let ours = neighbourhoods(&values, each_side).unwrap();
        let theirs = expected["hampel"].as_array().unwrap();
        assert_eq!(ours.len(), theirs.len());
        for (ours, theirs) in ours.iter().zip(theirs) {
            check.some(ours.median, &theirs["median"], "window median");
            check.some(ours.sd, &theirs["sigma"], "window sd");
            assert_eq!(
                Some(ours.is_outlier),
                theirs["outlier"].as_bool(),
                "{}",
                case["id"]
            );
        }
    }
}

fn marks(check: &Check<'_>, values: &[f64], expected_z: &Value, expected_marks: &Value) {
    let (expected_z, expected_marks) = (
        expected_z.as_array().unwrap(),
        expected_marks.as_array().unwrap(),
    );
    assert_eq!(values.len(), expected_z.len());
    assert_eq!(values.len(), expected_marks.len());
    let ours = modified_z(values);
    for (index, (z, mark)) in expected_z.iter().zip(expected_marks).enumerate() {
        let ours = ours.as_ref().map(|ours| ours[index]);
        check.number(ours, z, "modified z");
        let marked = ours.is_some_and(|z| MODIFIED_Z_LIMIT < z.abs());
        assert_eq!(Some(marked), mark.as_bool(), "{} {index}", check.case["id"]);
    }
}

#[test]
fn every_case_of_prediction_json_is_met_to_its_tolerance() {
    let file = checks_file("prediction.json");
    let rel = number(&file["tolerance"]["relative"]);
    let chance_abs = number(&file["tolerance"]["probability_abs"]);
    for case in cases(&file) {
        let check = Check {
            rel,
            abs: ROUNDING,
            case,
        };
        let (days, values) = (numbers(&case["t"]), numbers(&case["y"]));
        let expected = &case["expected"];
        let line = least_squares(&days, &values).unwrap();
        let errors = line.errors.unwrap();
        let limit = (1.0 - number(&case["loss_fraction"])) * number(&case["reference_g"]);
        assert_eq!(
            Some(errors.degrees),
            expected["df"].as_u64().map(|df| df.try_into().unwrap())
        );
        check.some(line.slope, &expected["slope"], "slope");
        check.some(line.intercept, &expected["intercept"], "intercept");
        check.some(errors.slope_se, &expected["slope_se"], "slope se");
        check.some(errors.sd, &expected["sigma"], "sd");
        check.number(
            student::half_width(0.95, errors.degrees),
            &expected["t_crit95"],
            "t",
        );
        check.some(limit, &expected["threshold_g"], "limit");
        check.number(
            line.day_below(limit),
            &expected["crossing_day_of_mean"],
            "crossing",
        );
        let rows = expected["rows"].as_array().unwrap();
        assert!(!rows.is_empty(), "{}", case["id"]);
        for row in rows {
            let ours = line.predict(number(&row["day"])).unwrap();
            check.some(ours.mean, &row["mean"], "mean");
            check.some(ours.reading_se, &row["se_new"], "se");
            check.some(
                ours.mean - ours.reading_reach_95,
                &row["pi_lo95"],
                "reading low",
            );
            check.some(
                ours.mean + ours.reading_reach_95,
                &row["pi_hi95"],
                "reading high",
            );
            check.some(ours.mean - ours.mean_reach_95, &row["ci_lo95"], "mean low");
            check.some(ours.mean + ours.mean_reach_95, &row["ci_hi95"], "mean high");
            let chances = Check {
                abs: chance_abs,
                rel: 0.0,
                case,
            };
            chances.number(
                ours.chance_below(limit),
                &row["p_below_threshold"],
                "chance",
            );
        }
    }
}

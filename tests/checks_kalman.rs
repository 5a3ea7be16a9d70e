//! Level and slope against values computed elsewhere.
//!
//! `kalman.json`: statsmodels and dense least squares. The file starts without any knowledge; there the
//! first reading makes the level, so the filter here starts from that reading.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::float_cmp,
    reason = "a test may stop at the first surprise"
)]

pub mod common;

use common::{cases, checks_file, number, numbers};
use perchlight::domain::statistics::dynamics::Dynamics;
use perchlight::domain::statistics::kalman::{Estimate, Slope};
use perchlight::domain::statistics::smoother::{Reading, Sample};
use serde_json::Value;

/// How far apart two numbers may lie, and where they come from.
struct Tolerance {
    rel: f64,
    abs: f64,
}

impl Tolerance {
    fn check(&self, ours: Option<f64>, expected: &Value, at: &str) {
        match (ours, expected.as_f64()) {
            (None, None) => assert!(expected.is_null(), "{at}: {expected} is not a number"),
            (Some(ours), Some(expected)) => assert!(
                (ours - expected).abs() <= self.abs.max(self.rel * expected.abs()),
                "{at}: {ours} instead of {expected}"
            ),
            (ours, _) => panic!("{at}: {ours:?} instead of {expected}"),
        }
    }
}

fn samples(days: &Value, weights: &Value, variance: f64) -> Vec<Sample> {
    let (days, weights) = (days.as_array().unwrap(), weights.as_array().unwrap());
    assert_eq!(days.len(), weights.len());
    let sample = |(day, weight): (&Value, &Value)| Sample {
        day: number(day),
        reading: weight.as_f64().map(|grams| Reading { grams, variance }),
    };
    days.iter().zip(weights).map(sample).collect()
}

fn level(estimate: Option<Estimate>) -> Option<f64> {
    estimate.map(|estimate| estimate.level_g)
}

fn level_var(estimate: Option<Estimate>) -> Option<f64> {
    estimate.map(|estimate| estimate.level_var)
}

fn slope(estimate: Option<Estimate>) -> Option<Slope> {
    estimate.and_then(|estimate| estimate.slope)
}

#[test]
fn every_case_of_kalman_json_is_met_to_its_tolerance() {
    let file = checks_file("kalman.json");
    let tolerance = Tolerance {
        rel: number(&file["tolerance"]["rel"]),
        abs: number(&file["tolerance"]["abs"]),
    };
    for case in cases(&file) {
        let (input, expected) = (&case["input"], &case["expected"]);
        let reading_var = number(&input["variances"]["var_scale"]);
        let samples = samples(&input["day"], &input["g"], reading_var);
        let variances = &input["variances"];
        let dynamics = Dynamics::trend(
            number(&variances["var_level_per_day"]),
            number(&variances["var_slope_per_day"]),
        )
        .unwrap();
        let track = common::track(dynamics, samples).unwrap();
        let id = &case["id"];
        let k = usize::try_from(expected["k"].as_u64().unwrap()).unwrap();
        let steps = expected["steps"].as_array().unwrap();
        assert_eq!(track.steps().len(), steps.len(), "{id}");
        for ((ours, smoothed), theirs) in track.steps().iter().zip(track.smoothed()).zip(steps) {
            let check = |ours, key: &str| {
                tolerance.check(
                    ours,
                    &theirs[key],
                    &format!("{id} day {} {key}", theirs["day"]),
                );
            };
            check(level(ours.filtered), "filtered_level");
            check(level_var(ours.filtered), "filtered_level_var");
            // With fewer readings than unknowns the file has no smoothed values.
            if k <= steps.len() {
                check(level(smoothed), "smoothed_level");
                check(level_var(smoothed), "smoothed_level_var");
            }
            let filtered_slope = slope(ours.filtered);
            check(
                filtered_slope.map(|slope| slope.g_per_day),
                "filtered_slope",
            );
            check(filtered_slope.map(|slope| slope.var), "filtered_slope_var");
            check(
                filtered_slope.map(|slope| slope.level_cov),
                "filtered_level_slope_cov",
            );
            check(
                slope(smoothed).map(|slope| slope.g_per_day),
                "smoothed_slope",
            );
            check(slope(smoothed).map(|slope| slope.var), "smoothed_slope_var");
            check(
                ours.innovation.map(|innovation| innovation.expected_g),
                "pred_mean",
            );
            check(
                ours.innovation.map(|innovation| innovation.expected_var),
                "pred_var_of_obs",
            );
            check(
                ours.innovation.map(|innovation| innovation.standardised),
                "std_innovation",
            );
        }
        let limit_g = number(&input["limit_g"]);
        let forecasts = expected["forecast"].as_array().unwrap();
        let horizons = numbers(&input["horizons_days"]);
        assert!(!horizons.is_empty(), "{id}");
        for days in horizons {
            let ours = track.filter().forecast(days);
            let theirs = forecasts
                .iter()
                .find(|theirs| number(&theirs["days_ahead"]) == days);
            // A slope that is not known yet has no forecast in the file either.
            assert_eq!(ours.is_some(), theirs.is_some(), "{id} in {days} days");
            let Some((ours, theirs)) = ours.zip(theirs) else {
                continue;
            };
            let check = |ours, key: &str| {
                tolerance.check(
                    Some(ours),
                    &theirs[key],
                    &format!("{id} in {days} days {key}"),
                );
            };
            check(ours.level_g, "level_mean");
            check(ours.level_var, "level_var");
            check(ours.level_var + reading_var, "reading_var");
            check(
                ours.chance_level_below(limit_g).unwrap(),
                "p_level_below_limit",
            );
        }
        let key = "loglik_without_first_k";
        tolerance.check(
            Some(track.log_likelihood()),
            &expected[key],
            &format!("{id} {key}"),
        );
    }
}

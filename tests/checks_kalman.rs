//! Level and slope against values computed elsewhere.
//!
//! `kalman.json`: statsmodels and dense least squares, both the continuous and the daily form.
//! `smoothing.json`: only its local linear trend is used by the project. The same file's moving
//! averages (EWMA), Holt's method and LOWESS are other answers to the same question and are not
//! used, so they do not exist here and are not checked.

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
use perchlight::domain::statistics::kalman::{Estimate, Filter, Slope};
use perchlight::domain::statistics::smoother::{Reading, Sample, Track};
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

fn dynamics(input: &Value) -> Dynamics {
    let variances = &input["variances"];
    let level_per_day = number(&variances["var_level_per_day"]);
    let slope_per_day = || number(&variances["var_slope_per_day"]);
    let made = match (input["model"].as_str(), input["form"].as_str()) {
        (Some("local_level"), _) => Dynamics::level(level_per_day),
        (Some("local_trend"), Some("continuous")) => {
            Dynamics::trend(level_per_day, slope_per_day())
        }
        (Some("local_trend"), Some("daily")) => {
            Dynamics::trend_by_day(level_per_day, slope_per_day())
        }
        other => panic!("{other:?} is not a known form"),
    };
    made.unwrap()
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
        let track = Track::through(Filter::new(dynamics(input)), &samples).unwrap();
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
            let reading_below = ours.chance_reading_below(limit_g, reading_var).unwrap();
            check(reading_below, "p_reading_below_limit");
        }
        let key = "loglik_without_first_k";
        tolerance.check(
            Some(track.log_likelihood()),
            &expected[key],
            &format!("{id} {key}"),
        );
    }
}

#[test]
fn every_trend_of_smoothing_json_is_met_to_its_tolerance() {
    let file = checks_file("smoothing.json");
    // The file's tolerance is relative alone; its slopes start at exactly 0 and twelve digits are
    // printed, so a zero gets the room that a value of 1 would have.
    let rel = number(&file["tolerance"]["relative"]);
    let tolerance = Tolerance { rel, abs: rel };
    for case in cases(&file) {
        let parameters = &case["parameters"];
        let reading_var = number(&parameters["sigma2_irregular"]);
        let dynamics = Dynamics::trend_by_day(
            number(&parameters["sigma2_level"]),
            number(&parameters["sigma2_trend"]),
        )
        .unwrap();
        let prior = Estimate {
            level_g: number(&parameters["prior_mean"][0]),
            level_var: number(&parameters["prior_level_var"]),
            slope: Some(Slope {
                g_per_day: number(&parameters["prior_mean"][1]),
                var: number(&parameters["prior_trend_var"]),
                level_cov: 0.0,
            }),
        };
        let samples = samples(&case["t"], &case["y"], reading_var);

        let known = Filter::starting_from(dynamics, prior).unwrap();
        let track = Track::through(known, &samples).unwrap();
        let filtered: Vec<_> = track.steps().iter().map(|step| step.filtered).collect();
        let smoothed = track.smoothed();
        let expected = &case["expected"]["llt_known_prior"];
        let at = |key: &str| format!("{} known prior {key}", case["id"]);
        let check_all = |ours: &[Option<f64>], key: &str| {
            let theirs = expected[key].as_array().unwrap();
            assert_eq!(ours.len(), theirs.len(), "{}", at(key));
            for (ours, theirs) in ours.iter().zip(theirs) {
                tolerance.check(*ours, theirs, &at(key));
            }
        };
        let rate = |estimate: Option<Estimate>| slope(estimate).map(|slope| slope.g_per_day);
        let rate_var = |estimate: Option<Estimate>| slope(estimate).map(|slope| slope.var);
        for (ours, name) in [(&filtered, "filtered"), (&smoothed, "smoothed")] {
            let each = |value: &dyn Fn(Option<Estimate>) -> Option<f64>| -> Vec<_> {
                ours.iter().copied().map(value).collect()
            };
            check_all(&each(&level), &format!("{name}_level"));
            check_all(&each(&rate), &format!("{name}_trend"));
            check_all(&each(&level_var), &format!("{name}_level_var"));
            check_all(&each(&rate_var), &format!("{name}_trend_var"));
        }
        check_forecasts(&track, expected, reading_var, &tolerance, &at("forecast"));
        tolerance.check(
            Some(track.log_likelihood()),
            &expected["loglik"],
            &at("loglik"),
        );

        let track = Track::through(Filter::new(dynamics), &samples).unwrap();
        let expected = &case["expected"]["llt_exact_diffuse"];
        let at = format!("{} unknown start", case["id"]);
        let smoothed = track.smoothed();
        assert_eq!(
            smoothed.len(),
            expected["smoothed_level"].as_array().unwrap().len(),
            "{at}"
        );
        for (index, ours) in smoothed.iter().enumerate() {
            tolerance.check(level(*ours), &expected["smoothed_level"][index], &at);
            tolerance.check(rate(*ours), &expected["smoothed_trend"][index], &at);
        }
        let last = track.filter().estimate();
        tolerance.check(level(last), &expected["filtered_level_last"], &at);
        tolerance.check(rate(last), &expected["filtered_trend_last"], &at);
        check_forecasts(&track, expected, reading_var, &tolerance, &at);
    }
}

fn check_forecasts(
    track: &Track,
    expected: &Value,
    reading_var: f64,
    tolerance: &Tolerance,
    at: &str,
) {
    let means = expected["forecast_mean"].as_array().unwrap();
    let errors = expected["forecast_se"].as_array().unwrap();
    assert_eq!(means.len(), errors.len(), "{at}");
    assert!(!means.is_empty(), "{at}");
    let mut days = 0.0;
    for (mean, error) in means.iter().zip(errors) {
        days += 1.0;
        let ours = track.filter().forecast(days).unwrap();
        tolerance.check(Some(ours.level_g), mean, at);
        tolerance.check(Some((ours.level_var + reading_var).sqrt()), error, at);
    }
}

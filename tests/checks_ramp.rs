//! A ramp against likelihood ratios worked out elsewhere.
//!
//! `ramp.json`: dense covariances of all readings, without a filter; `ramp.py` beside it made it.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

pub mod common;

use common::{cases, checks_file, number, numbers};
use perchlight::domain::statistics::change::RampSearch;
use perchlight::domain::statistics::dynamics::Dynamics;
use perchlight::domain::statistics::kalman::{Estimate, Filter, Slope};
use serde_json::Value;

fn search(model: &Value) -> RampSearch {
    let of = |name: &str| number(&model[name]);
    let dynamics = Dynamics::trend(of("v_level"), of("v_slope")).unwrap();
    let known = Estimate {
        level_g: of("level"),
        level_var: of("level_var"),
        slope: Some(Slope {
            g_per_day: of("slope"),
            var: of("slope_var"),
            level_cov: of("cov"),
        }),
    };
    let filter = Filter::starting_from(dynamics, known).unwrap();
    RampSearch::following(filter, of("most"))
}

#[test]
fn the_likeliest_ramp_after_each_reading_is_that_of_the_whole_covariance() {
    let file = checks_file("ramp.json");
    let (rel, abs) = (
        number(&file["tolerance"]["rel"]),
        number(&file["tolerance"]["abs"]),
    );
    for case in cases(&file) {
        let (model, id) = (&case["model"], &case["id"]);
        let (days, grams) = (numbers(&case["day"]), numbers(&case["weight_g"]));
        let scale = numbers(&model["scale"]);
        let mut search = search(model);
        search.update(grams[0], scale[0]).unwrap();
        assert_eq!(search.likeliest(number(&model["least"])), None, "{id}");
        for (place, expected) in (1..).zip(case["after_each"].as_array().unwrap()) {
            search.predict(days[place] - days[place - 1]).unwrap();
            search
                .update(grams[place], scale[place % scale.len()])
                .unwrap();
            let ramp = search.likeliest(number(&model["least"])).unwrap();
            for (ours, name) in [
                (ramp.ln_ratio, "ln_ratio"),
                (ramp.g_per_day, "g_per_day"),
                (ramp.days, "days"),
            ] {
                let theirs = number(&expected[name]);
                assert!(
                    (ours - theirs).abs() <= abs.max(rel * theirs.abs()),
                    "{id}, reading {place}, {name}: {ours} instead of {theirs}"
                );
            }
        }
    }
}

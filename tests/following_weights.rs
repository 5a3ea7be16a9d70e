//! What following a weight must do beyond the check files: readings of different quality, readings
//! at one moment, wild readings, and everything that cannot be answered.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::float_cmp,
    reason = "a test may stop at the first surprise"
)]

pub mod common;

use common::{filter_from, track};
use perchlight::domain::statistics::dynamics::{Dynamics, KalmanError};
use perchlight::domain::statistics::kalman::{Estimate, Filter, Slope};
use perchlight::domain::statistics::smoother::{Reading, Sample, Track};
use proptest::prelude::{ProptestConfig, Strategy, prop};
use proptest::{prop_assert, proptest};

fn dynamics() -> Dynamics {
    Dynamics::trend(4.0, 0.5).unwrap()
}

/// A filter that starts from a first reading.
fn trend(grams: f64, variance: f64) -> Filter {
    filter_from(dynamics(), grams, variance).unwrap()
}

/// The inverse of a symmetric positive matrix, by Gauss and Jordan.
fn inverse(mut matrix: Vec<Vec<f64>>) -> Vec<Vec<f64>> {
    let size = matrix.len();
    let unit = |row: usize| (0..size).map(move |column| f64::from(u8::from(row == column)));
    let mut inverse: Vec<Vec<f64>> = (0..size).map(|row| unit(row).collect()).collect();
    for pivot in 0..size {
        let divisor = matrix[pivot][pivot];
        for column in 0..size {
            matrix[pivot][column] /= divisor;
            inverse[pivot][column] /= divisor;
        }
        for row in (0..size).filter(|row| *row != pivot) {
            let factor = matrix[row][pivot];
            for column in 0..size {
                matrix[row][column] -= factor * matrix[pivot][column];
                inverse[row][column] -= factor * inverse[pivot][column];
            }
        }
    }
    inverse
}

/// Mean and variance of level and slope at each sample, all at once: the precision of the whole
/// path is written down from the model's formulas and inverted. No recursion, no start.
fn path_at_once(level_var: f64, slope_var: f64, samples: &[Sample]) -> Vec<[f64; 4]> {
    let origin = 1_000.0;
    let size = 2 * samples.len();
    let mut precision = vec![vec![0.0; size]; size];
    let mut pull = vec![0.0; size];
    for (index, sample) in samples.iter().enumerate() {
        if let Some(reading) = sample.reading {
            precision[2 * index][2 * index] += 1.0 / reading.variance;
            pull[2 * index] += (reading.grams - origin) / reading.variance;
        }
    }
    for (index, pair) in samples.windows(2).enumerate() {
        let h = pair[1].day - pair[0].day;
        let noise = inverse(vec![
            vec![
                level_var * h + slope_var * h.powi(3) / 3.0,
                slope_var * h * h / 2.0,
            ],
            vec![slope_var * h * h / 2.0, slope_var * h],
        ]);
        // What the noise made of the step: the later level and slope less the earlier ones.
        let step = [[-1.0, -h, 1.0, 0.0], [0.0, -1.0, 0.0, 1.0]];
        for row in 0..4 {
            for column in 0..4 {
                for (one, left) in step.iter().enumerate() {
                    for (other, right) in step.iter().enumerate() {
                        precision[2 * index + row][2 * index + column] +=
                            left[row] * noise[one][other] * right[column];
                    }
                }
            }
        }
    }
    let covariance = inverse(precision);
    let mean = |row: usize| -> f64 {
        covariance[row]
            .iter()
            .zip(&pull)
            .map(|(one, other)| one * other)
            .sum()
    };
    (0..samples.len())
        .map(|index| {
            let (level, slope) = (2 * index, 2 * index + 1);
            [
                origin + mean(level),
                covariance[level][level],
                mean(slope),
                covariance[slope][slope],
            ]
        })
        .collect()
}

fn series() -> impl Strategy<Value = Vec<Sample>> {
    // Gaps of 0.05 to 4 days, 850 to 1,150 g, scale sd of about 1 to 20 g; every fourth moment is
    // only asked about.
    let sample = (0.05..4.0, 850.0..1_150.0, 1.0..400.0, 0..4);
    prop::collection::vec(sample, 2..9).prop_map(|rows| {
        let mut day = 0.0;
        let mut samples = Vec::new();
        for (index, (gap, grams, variance, kind)) in rows.into_iter().enumerate() {
            day += gap;
            let is_read = kind != 0 || index < 1;
            let reading = is_read.then_some(Reading { grams, variance });
            samples.push(Sample { day, reading });
        }
        let last = Reading {
            grams: 1_000.0,
            variance: 25.0,
        };
        samples.push(Sample {
            day: day + 1.0,
            reading: Some(last),
        });
        samples
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn hindsight_agrees_with_the_whole_path_solved_at_once(
        samples in series(), level_var in 0.1..20.0, slope_var in 0.05..5.0,
    ) {
        let dynamics = Dynamics::trend(level_var, slope_var).unwrap();
        let track = track(dynamics, samples.clone()).unwrap();
        let expected = path_at_once(level_var, slope_var, &samples);
        // Weights near 1,000 g: a millionth is a milligram. The dense inverse is the rougher one.
        let near = |ours: f64, theirs: f64| (ours - theirs).abs() <= 1e-6 * theirs.abs().max(1.0);
        for (ours, theirs) in track.smoothed().iter().zip(&expected) {
            let ours = ours.unwrap();
            let slope = ours.slope.unwrap();
            prop_assert!(near(ours.level_g, theirs[0]), "{ours:?} {theirs:?}");
            prop_assert!(near(ours.level_var, theirs[1]), "{ours:?} {theirs:?}");
            prop_assert!(near(slope.g_per_day, theirs[2]), "{ours:?} {theirs:?}");
            prop_assert!(near(slope.var, theirs[3]), "{ours:?} {theirs:?}");
        }
        // At the end there is nothing to come, so filter and hindsight are one.
        let last = track.filter().estimate().unwrap();
        let theirs = expected.last().unwrap();
        prop_assert!(near(last.level_g, theirs[0]) && near(last.level_var, theirs[1]));
    }

    #[test]
    fn whatever_is_put_in_nothing_that_is_not_a_number_comes_out(
        steps in prop::collection::vec(
            (proptest::num::f64::ANY, proptest::num::f64::ANY, proptest::num::f64::ANY), 0..8,
        ),
    ) {
        let mut filter = trend(700.0, 4.0);
        let mut samples = Vec::new();
        let mut day = 0.0;
        for (days, grams, variance) in steps {
            if filter.predict(days).is_ok() {
                day += days;
                let taken = filter.update(grams, variance).is_ok();
                let reading = taken.then_some(Reading { grams, variance });
                samples.push(Sample { day, reading });
            }
            if let Some(now) = filter.estimate() {
                prop_assert!(is_sound(&now), "{now:?}");
            }
            if let Some(ahead) = filter.forecast(1.0) {
                prop_assert!(ahead.level_g.is_finite() && ahead.level_var.is_finite());
            }
        }
        // Sums of such days may differ from their steps by more than any of them, so a track may
        // refuse what the steps took.
        if let Ok(track) = Track::through(trend(700.0, 4.0), &samples) {
            prop_assert!(track.smoothed().iter().flatten().all(is_sound));
        }
    }
}

fn is_sound(estimate: &Estimate) -> bool {
    let parts = estimate.slope.map_or([0.0; 3], |slope| {
        [slope.g_per_day, slope.var, slope.level_cov]
    });
    let mut all = parts
        .into_iter()
        .chain([estimate.level_g, estimate.level_var]);
    all.all(f64::is_finite)
}

#[test]
fn two_readings_at_one_moment_count_as_their_weighted_mean() {
    // Precisions 1/4 and 1/12 add up to 1/3; the mean is (3 · 700 + 1 · 708) / 4 = 702.
    let mut filter = trend(700.0, 4.0);
    let second = filter.update(708.0, 12.0).unwrap().unwrap();
    assert_eq!(
        (second.expected_g, second.expected_var, second.standardised),
        (700.0, 16.0, 2.0)
    );
    let now = filter.estimate().unwrap();
    assert!((now.level_g - 702.0).abs() < 1e-12 && (now.level_var - 3.0).abs() < 1e-12);
    assert_eq!(now.slope, None);
    let samples = [(700.0, 4.0), (708.0, 12.0)].map(|(grams, variance)| Sample {
        day: 3.0,
        reading: Some(Reading { grams, variance }),
    });
    for hindsight in track(dynamics(), samples.to_vec()).unwrap().smoothed() {
        let hindsight = hindsight.unwrap();
        assert!((hindsight.level_g - 702.0).abs() < 1e-12);
        assert!((hindsight.level_var - 3.0).abs() < 1e-12);
        assert_eq!(hindsight.slope, None);
    }
}

#[test]
fn a_rough_reading_at_the_start_widens_the_slope_by_its_own_variance() {
    // h = 2, Q = [[4·2 + 0.5·8/3, 1], [1, 1]]: slope variance
    // (100 + 9 + 9.333333) / 4 - 2 · 1 / 2 + 1 = 29.583333; covariance 9 / 2.
    let mut filter = trend(700.0, 100.0);
    filter.predict(2.0).unwrap();
    filter.update(712.0, 9.0).unwrap();
    let slope = filter.estimate().unwrap().slope.unwrap();
    assert_eq!((slope.g_per_day, slope.level_cov), (6.0, 4.5));
    assert!((slope.var - 355.0 / 12.0).abs() < 1e-12, "{slope:?}");
}

#[test]
fn one_reading_says_the_weight_now_but_nothing_of_tomorrow() {
    let mut filter = trend(700.0, 4.0);
    assert_eq!(filter.estimate().map(|now| now.level_g), Some(700.0));
    assert_eq!(filter.forecast(1.0), None);
    filter.predict(1.0).unwrap();
    assert_eq!(filter.estimate(), None);
    assert_eq!(filter.innovation(700.0, 4.0), None);
}

/// Level variance 25 after a day: 7 known at the start, 16 of the day's wandering, 2 · 0.5 of the
/// covariance and 1 of the slope; Q has no slope part here.
fn a_day_on() -> Filter {
    let known = Estimate {
        level_g: 1_040.0,
        level_var: 7.0,
        slope: Some(Slope {
            g_per_day: 0.0,
            var: 1.0,
            level_cov: 0.5,
        }),
    };
    let mut filter = Filter::starting_from(Dynamics::trend(16.0, 0.0).unwrap(), known).unwrap();
    filter.predict(1.0).unwrap();
    filter
}

#[test]
fn a_wild_reading_is_let_in_so_wide_that_it_hardly_moves_the_level() {
    let mut filter = a_day_on();
    // 1,400 g lies 360 g off: 4 sd of a spread of 90 g.
    let tempered = filter.tempered_variance(1_400.0, 16.0, 4.0);
    assert_eq!(tempered, 8_100.0 - 25.0);
    let innovation = filter.update(1_400.0, tempered).unwrap().unwrap();
    assert_eq!(innovation.standardised, 4.0);
    // Moved by 360 · 25 / 8100 = 1.11 g, not by 360 · 25 / 41 = 219.5 g.
    let level = filter.estimate().unwrap().level_g;
    assert!((level - (1_040.0 + 10.0 / 9.0)).abs() < 1e-9, "{level}");
}

#[test]
fn a_reading_within_the_limit_keeps_its_own_variance() {
    let filter = a_day_on();
    // 4 sd of sqrt(25 + 16) g is 25.6 g.
    assert_eq!(filter.tempered_variance(1_065.0, 16.0, 4.0), 16.0);
    assert!(16.0 < filter.tempered_variance(1_066.0, 16.0, 4.0));
    assert!(16.0 < filter.tempered_variance(1_014.0, 16.0, 4.0));
}

#[test]
fn asking_in_between_changes_nothing() {
    let reading = |day, grams| Sample {
        day,
        reading: Some(Reading {
            grams,
            variance: 16.0,
        }),
    };
    let asked = |day| Sample { day, reading: None };
    let readings = [
        reading(0.0, 700.0),
        reading(2.0, 712.0),
        reading(5.0, 724.0),
    ];
    let plain = track(dynamics(), readings.to_vec()).unwrap();
    let often = vec![
        readings[0],
        asked(0.5),
        asked(1.0),
        readings[1],
        asked(4.0),
        readings[2],
    ];
    let often = track(dynamics(), often).unwrap();
    let smoothed = often.smoothed();
    for (index, expected) in [0, 3, 5].into_iter().zip(plain.smoothed()) {
        let (ours, expected) = (smoothed[index].unwrap(), expected.unwrap());
        assert!((ours.level_g - expected.level_g).abs() < 1e-9);
        assert!((ours.level_var - expected.level_var).abs() < 1e-9);
    }
    // Between the readings hindsight still answers.
    assert!(smoothed.iter().all(Option::is_some));
    assert!((often.log_likelihood() - plain.log_likelihood()).abs() < 1e-9);
    // The filter could not know the level between the first two readings.
    assert_eq!(often.steps()[1].filtered, None);
}

#[test]
fn no_samples_make_an_empty_track() {
    let track = Track::through(trend(700.0, 4.0), &[]).unwrap();
    assert_eq!(track.steps().len(), 0);
    assert_eq!(track.smoothed(), Vec::new());
    assert_eq!(track.log_likelihood(), 0.0);
}

#[test]
fn what_cannot_be_is_refused_by_name_and_changes_nothing() {
    assert_eq!(
        Dynamics::trend(-1.0, 0.5),
        Err(KalmanError::NegativeVariance(-1.0))
    );
    assert!(matches!(
        Dynamics::trend(1.0, f64::NAN),
        Err(KalmanError::NotFinite(_))
    ));
    let mut filter = trend(700.0, 4.0);
    let before = filter.estimate();
    assert_eq!(filter.predict(-0.5), Err(KalmanError::BackInTime(-0.5)));
    assert_eq!(filter.update(710.0, 0.0), Err(KalmanError::NoVariance(0.0)));
    assert!(matches!(
        filter.update(f64::NAN, 4.0),
        Err(KalmanError::NotFinite(_))
    ));
    assert!(matches!(
        filter.update(f64::INFINITY, 4.0),
        Err(KalmanError::NotFinite(_))
    ));
    assert_eq!(filter.estimate(), before);
    let slope = Slope {
        g_per_day: 0.0,
        var: 1.0,
        level_cov: 3.0,
    };
    let known = Estimate {
        level_g: 700.0,
        level_var: 4.0,
        slope: Some(slope),
    };
    let started = Filter::starting_from(dynamics(), known);
    assert_eq!(started.unwrap_err(), KalmanError::ImpossibleCovariance(3.0));
}

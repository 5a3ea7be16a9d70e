//! The growth curve of a species against rows derived from published growth constants.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use perchlight::domain::weight::growth_curve::GrowthCurve;

#[test]
fn a_logistic_from_hatching_meets_the_rows_derived_from_published_constants() {
    // Growth constants and adult masses: AnAge (Human Ageing Genomic Resources). Hatching masses
    // are assumed (from memory). The rows are DERIVED from these with the formula by hand, not
    // weighed: they check the function, not the birds. Weights are printed to whole grams, the
    // turn to a tenth of a day.
    let rows = [
        (
            "Ara chloropterus",
            1220.0,
            24.0,
            0.112,
            34.9,
            [107.0, 385.0, 841.0, 1115.0, 1197.0],
        ),
        (
            "Ara ararauna",
            1030.0,
            20.0,
            0.126,
            31.1,
            [107.0, 415.0, 821.0, 987.0, 1022.0],
        ),
        (
            "Ara macao",
            1040.0,
            22.0,
            0.120,
            32.0,
            [108.0, 399.0, 800.0, 985.0, 1029.0],
        ),
        (
            "Ara militaris",
            1134.0,
            22.0,
            0.120,
            32.7,
            [109.0, 412.0, 854.0, 1069.0, 1121.0],
        ),
        (
            "Psittacus erithacus",
            333.0,
            13.0,
            0.128,
            25.0,
            [65.0, 198.0, 299.0, 327.0, 332.0],
        ),
        (
            "Cacatua alba",
            570.0,
            18.0,
            0.130,
            26.3,
            [95.0, 316.0, 504.0, 558.0, 568.0],
        ),
    ];
    for (species, adult_g, hatch_g, rate, turn_day, weights) in rows {
        let curve = GrowthCurve::from_hatching(adult_g, hatch_g, rate).unwrap();
        assert!(
            (curve.turn_day - turn_day).abs() <= 0.051,
            "{species}: {}",
            curve.turn_day
        );
        for (day, weight) in [14.0, 28.0, 42.0, 56.0, 70.0].into_iter().zip(weights) {
            let ours = curve.weight_g(day);
            assert!((ours - weight).abs() <= 0.51, "{species} day {day}: {ours}");
        }
    }
}

#[test]
fn a_chick_a_tenth_lighter_than_its_curve_is_expected_to_stay_so() {
    let curve = GrowthCurve::from_hatching(1220.0, 24.0, 0.112).unwrap();
    let days = [20.0, 30.0, 40.0];
    let grams = days.map(|day| 0.9 * curve.weight_g(day));
    let chick = curve.scaled_to(&days, &grams).unwrap();
    assert!((chick.adult_g - 1_098.0).abs() < 1e-9, "{chick:?}");
    assert_eq!(chick.turn_day.to_bits(), curve.turn_day.to_bits());
    assert_eq!(curve.scaled_to(&[], &[]), None);
    assert_eq!(curve.scaled_to(&[1.0], &[f64::NAN]), None);
    assert_eq!(curve.scaled_to(&[1.0], &[-30.0]), None);
}

//! Published tables and hand calculations for mixing, energy, warmth and cooling.
//!
//! Rows marked derived were reckoned by hand from published figures; the arithmetic stands beside.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

use perchlight::domain::formula::cooling::{CoolingLaw, Reading};
use perchlight::domain::formula::energy::energy_band;
use perchlight::domain::formula::food_components::PEANUT_BUTTER;
use perchlight::domain::formula::heat_balance::{HeatPart, WATER_SPECIFIC_HEAT, needed_c};
use perchlight::domain::formula::mixing::{
    MixAmounts, MixWanted, mix_amounts, mix_density_g_per_ml, share_of_volume_recipe,
};
use perchlight::domain::formula::nutrition::{
    MixContents, PEANUT_KCAL_PER_G, SUPPLEMENT_G_PER_TEASPOON, SUPPLEMENT_KCAL_PER_G, mix_contents,
};
use perchlight::domain::formula::powder::Powder;
use perchlight::domain::quantity::units::celsius_from_fahrenheit;

/// Half of the last printed digit, and a billionth for the last digits of a double.
fn assert_prints(what: &str, given: f64, printed: f64, last_digit: f64) {
    assert!(
        (given - printed).abs() <= last_digit * 0.5 + 1e-9,
        "{what}: {given}, printed {printed}"
    );
}

fn regular_powder(kcal_per_g: f64) -> Powder {
    Powder {
        kcal_per_g,
        ..Powder::USUAL
    }
}

/// 100 ml of powder and water, with that supplement.
fn hundred_ml(powder_fraction: f64, supplement_g: f64, powder: &Powder) -> MixContents {
    let wanted = MixWanted {
        volume_ml: 100.0,
        allowance_ml: 0.0,
        powder_fraction,
        supplement_g_per_100_ml: supplement_g,
    };
    mix_contents(&mix_amounts(&wanted).unwrap(), powder).unwrap()
}

/// Derived: powder share in per cent = b / (b + r), bulk density b in g/ml, water parts r by volume.
#[test]
fn recipes_by_volume_give_the_shares_of_the_conversion_table() {
    let water_parts = [1.0, 1.25, 1.5, 2.0, 2.5, 3.0];
    for (bulk, printed) in [
        (0.45, [31.0, 26.5, 23.1, 18.4, 15.3, 13.0]),
        (0.50, [33.3, 28.6, 25.0, 20.0, 16.7, 14.3]),
        (0.55, [35.5, 30.6, 26.8, 21.6, 18.0, 15.5]),
        (0.60, [37.5, 32.4, 28.6, 23.1, 19.4, 16.7]),
    ] {
        for (parts, printed_pct) in water_parts.iter().zip(printed) {
            let given_pct = 100.0 * share_of_volume_recipe(bulk, *parts).unwrap();
            assert_prints(&format!("{bulk} 1:{parts}"), given_pct, printed_pct, 0.1);
        }
    }
}

/// Derived: dry matter = powder share x 0.91 at 9 % moisture.
#[test]
fn dry_matter_follows_the_powder_fraction() {
    let powder = regular_powder(3.6);
    // 22.75 and 27.3: printed as 22.8 and 27.3.
    for (share, printed_pct) in [(0.20, 18.2), (0.25, 22.8), (0.30, 27.3)] {
        let given = hundred_ml(share, 0.0, &powder).dry_matter_pct;
        assert_prints(&format!("{share}"), given, printed_pct, 0.1);
    }
}

/// Derived: kcal/g x powder share x density, with the density rounded to 1.062 and 1.077 g/ml.
#[test]
fn a_millilitre_of_mix_holds_the_energy_of_its_powder() {
    for (kcal_per_g, share, printed) in [
        (3.6, 0.25, 0.956),
        (3.85, 0.25, 1.022),
        (3.6, 0.30, 1.163),
        (3.85, 0.30, 1.244),
    ] {
        let given = hundred_ml(share, 0.0, &regular_powder(kcal_per_g)).kcal_per_ml;
        // The rounded density alone is worth 0.0005 of 1.062: one in the last digit.
        assert_prints(&format!("{kcal_per_g} {share}"), given, printed, 0.002);
    }
}

/// Derived: 26.6 g powder with 12 % fat in 100 ml, peanut butter of 51.36 % fat and 5.98 kcal/g.
#[test]
fn peanut_butter_lifts_fat_and_energy_as_in_the_table() {
    let powder = regular_powder(3.6);
    let plain_kcal = hundred_ml(0.25, 0.0, &powder).kcal;
    for (supplement_g, fat_pct, more_kcal) in [
        (2.0, 14.8, 12.0),
        (2.5, 15.4, 15.0),
        (3.0, 16.0, 18.0),
        (5.0, 18.2, 30.0),
    ] {
        let contents = hundred_ml(0.25, supplement_g, &powder);
        let what = format!("{supplement_g} g");
        assert_prints(&what, contents.fat_pct_as_fed, fat_pct, 0.1);
        assert_prints(&what, contents.kcal - plain_kcal, more_kcal, 1.0);
        assert_prints(&what, contents.supplement_g_per_100_ml, supplement_g, 1e-6);
    }
    // 2.5 x 0.9877 / (26.55 x 0.91 + 2.5 x 0.9877) = 9.3 %
    let at_cap = hundred_ml(0.25, 2.5, &powder);
    let share_pct = 100.0 * at_cap.supplement_share_of_dry_matter;
    assert_prints("share of dry matter", share_pct, 9.3, 0.1);
}

/// USDA National Nutrient Database for Standard Reference, release 28 (public domain).
///
/// Both rows of smooth peanut butter; the numbers of the app must be those of the file.
#[test]
fn peanut_butter_is_what_the_food_table_says() {
    let rows: Vec<&str> = include_str!("fixtures/checks/data/food_sr28.csv")
        .lines()
        .filter(|line| line.contains("Peanut butter, smooth"))
        .collect();
    assert_eq!(rows.len(), 2);
    for row in rows {
        // The description is quoted and holds commas; the figures follow it.
        let (_, figures) = row.rsplit_once("\",").unwrap();
        let figures: Vec<f64> = figures
            .split(',')
            .take(14)
            .map(|figure| figure.parse().unwrap())
            .collect();
        let [water, kcal, protein, fat, carbohydrate, fibre] = figures[..6] else {
            panic!("six figures: {row}");
        };
        let ash = figures[7];
        assert_prints("water", 100.0 * PEANUT_BUTTER.water_share, water, 1e-9);
        assert_prints(
            "protein",
            100.0 * PEANUT_BUTTER.protein_share,
            protein,
            1e-9,
        );
        assert_prints("fat", 100.0 * PEANUT_BUTTER.fat_share, fat, 1e-9);
        assert_prints("fibre", 100.0 * PEANUT_BUTTER.fibre_share, fibre, 1e-9);
        assert_prints("ash", 100.0 * PEANUT_BUTTER.ash_share, ash, 1e-9);
        let net_pct = 100.0 * PEANUT_BUTTER.carbohydrate_share;
        assert_prints("carbohydrate", net_pct, carbohydrate - fibre, 1e-9);
        assert_prints("kcal", 100.0 * SUPPLEMENT_KCAL_PER_G, kcal, 1e-9);
        let (per_protein, per_fat, per_carbohydrate) = PEANUT_KCAL_PER_G;
        let sum = protein * per_protein + fat * per_fat + carbohydrate * per_carbohydrate;
        assert_prints("kcal by factors", sum, kcal, 1.0);
        // Two tablespoons weigh 32 g, and a tablespoon holds three teaspoons.
        assert!(row.contains("2 tbsp=32 g"));
        assert_prints("teaspoon", 6.0 * SUPPLEMENT_G_PER_TEASPOON, 32.0, 1e-9);
    }
    // An older release of the same table: 25.09 protein, 50.39 fat, 19.56 carbohydrate, 588 kcal.
    let (per_protein, per_fat, per_carbohydrate) = PEANUT_KCAL_PER_G;
    let older = 25.09 * per_protein + 50.39 * per_fat + 19.56 * per_carbohydrate;
    assert_prints("release 24", older, 588.0, 1.0);
}

/// Derived from Choi & Okos 1986 at 40 C, powder with 9 % water, 20 protein, 12 fat, 5 fibre, 6 ash,
/// 48 carbohydrate.
#[test]
fn mixes_have_the_density_of_the_table() {
    for (share, printed) in [(0.20, 1.047), (0.25, 1.062), (0.30, 1.077)] {
        let given = mix_density_g_per_ml(share);
        assert_prints(&format!("{share}"), given, printed, 0.001);
    }
    // By hand, 25 %: 1 / (0.25 x 0.74153 + 0.75 x 1.00879) = 1.0616 g/ml.
    assert_prints("by hand", mix_density_g_per_ml(0.25), 1.0616, 0.0001);
}

/// Derived: (water 4.18 x Tw + powder 1.85 x Tp) / (both capacities), powder at 20 C, no loss.
#[test]
fn water_and_powder_meet_where_the_table_says() {
    for (share, printed_c) in [(0.20, 42.8), (0.25, 43.5), (0.30, 44.4)] {
        let MixAmounts {
            powder_g, water_g, ..
        } = MixAmounts::of_mass(100.0, share);
        let powder = HeatPart::powder(powder_g, 20.0);
        let given = needed_c(40.5, water_g * WATER_SPECIFIC_HEAT, &[powder]).unwrap();
        assert_prints(&format!("{share} needed"), given, printed_c, 0.1);
    }
}

/// Definition of the Fahrenheit scale, printed to a tenth.
#[test]
fn fahrenheit_turns_into_celsius_as_printed() {
    for (temp_f, printed_c) in [
        (32.0, 0.0),
        (100.0, 37.8),
        (102.0, 38.9),
        (104.0, 40.0),
        (105.0, 40.6),
        (106.0, 41.1),
        (108.0, 42.2),
        (110.0, 43.3),
        (115.0, 46.1),
        (120.0, 48.9),
        (212.0, 100.0),
    ] {
        let given = celsius_from_fahrenheit(temp_f);
        assert_prints(&format!("{temp_f} F"), given, printed_c, 0.1);
    }
}

/// Derived by Newton's law from estimated half-times: minutes from 41.0 to 38.5 C at 22 C.
#[test]
fn syringes_and_cup_cool_through_the_window_in_the_minutes_of_the_table() {
    for (vessel, half_time_min, printed_min) in [
        ("60 ml", 26.0, 5.4),
        ("35 ml", 23.0, 4.7),
        ("20 ml", 19.0, 3.9),
        ("10 ml", 15.0, 3.1),
        ("cup", 41.0, 8.4),
    ] {
        let reading = Reading {
            at_min: 0.0,
            temp_c: 41.0,
        };
        let law = CoolingLaw::from_half_time(22.0, reading, half_time_min).unwrap();
        // Half-times are printed to the minute: half of one in 15 is 3.3 % of the time.
        let last_digit = 0.1 + 2.0 * printed_min * 0.5 / half_time_min;
        let given = law.minute_at(38.5).unwrap();
        assert_prints(vessel, given, printed_min, last_digit);
    }
}

/// Weight in g; basal, maintenance, growth low and high in kcal a day, as printed.
type EnergyRow = (f64, f64, f64, f64, f64);

/// Duerr & Gage 2020, *Hand-Rearing Birds*, Table B.2, non-passerine chicks.
const PRINTED_ENERGY: [EnergyRow; 20] = [
    (30.0, 5.6, 8.4, 13.0, 25.0),
    (40.0, 7.0, 10.5, 16.0, 31.0),
    (50.0, 8.2, 12.4, 19.0, 37.0),
    (60.0, 9.5, 14.2, 21.0, 43.0),
    (70.0, 10.6, 15.9, 24.0, 48.0),
    (80.0, 11.7, 17.6, 26.0, 53.0),
    (90.0, 12.8, 19.2, 29.0, 58.0),
    (100.0, 13.9, 20.8, 31.0, 62.0),
    (120.0, 15.9, 23.9, 36.0, 72.0),
    (140.0, 17.9, 26.8, 40.0, 80.0),
    (160.0, 19.7, 29.6, 44.0, 89.0),
    (180.0, 21.6, 32.3, 48.0, 97.0),
    (200.0, 23.3, 35.0, 52.0, 105.0),
    (225.0, 25.5, 38.2, 57.0, 115.0),
    (250.0, 27.6, 41.4, 62.0, 124.0),
    (275.0, 29.6, 44.4, 67.0, 133.0),
    (300.0, 31.6, 47.4, 71.0, 142.0),
    (350.0, 35.5, 53.2, 80.0, 160.0),
    (400.0, 39.2, 58.8, 88.0, 177.0),
    (450.0, 42.9, 64.3, 96.0, 193.0),
];

/// Derived by the same formula beyond the printed table.
const DERIVED_ENERGY: [EnergyRow; 5] = [
    (600.0, 53.2, 79.8, 120.0, 239.0),
    (900.0, 72.1, 108.1, 162.0, 324.0),
    (1000.0, 78.0, 117.0, 176.0, 351.0),
    (1200.0, 89.4, 134.1, 201.0, 402.0),
    (1500.0, 105.7, 158.6, 238.0, 476.0),
];

#[test]
fn energy_is_what_the_table_prints_for_every_weight() {
    for (weight_g, basal, maintenance, low, high) in
        PRINTED_ENERGY.into_iter().chain(DERIVED_ENERGY)
    {
        let band = energy_band(weight_g).unwrap();
        let what = format!("{weight_g} g");
        assert_prints(&what, band.basal_kcal_per_day, basal, 0.1);
        assert_prints(&what, band.maintenance_kcal_per_day, maintenance, 0.1);
        assert_prints(&what, band.growth_low_kcal_per_day, low, 1.0);
        assert_prints(&what, band.growth_high_kcal_per_day, high, 1.0);
    }
}

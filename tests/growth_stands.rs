//! Where young chicks stand against the growth of their species.

#![allow(
    clippy::unwrap_used,
    clippy::float_cmp,
    reason = "a test may stop at the first surprise"
)]

use perchlight::domain::journal::entries::{Change, ChickId, CropAtWeighing};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::plan::care_plan::CarePlan;
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::Grams;
use perchlight::domain::time::moment::{Day, Offset};
use perchlight::domain::weight::trend::weight_trend;

/// A chick that hatched on day 0, weighed at midnight.
fn young_chick(species: Species, readings: &[(i32, i32)]) -> Scenario {
    let mut plan = CarePlan::default_for(species);
    plan.hatched = Some(hatch_day());
    let mut script = Scenario::new(ChickId([9; 12]), plan, hatch_day(), Offset::UTC);
    for (day, grams) in readings {
        let crop = CropAtWeighing::Empty;
        let weight = Grams::whole(*grams);
        script.note(*day, 0, 0, Change::Weighed { weight, crop });
    }
    script
}

fn hatch_day() -> Day {
    Day::from_date(2026, 9, 1).unwrap()
}

#[test]
fn a_young_chick_stands_against_its_species_curve_and_its_own() {
    // Rows of logistic curves worked out by hand from assumed weights at hatching, growth constants
    // and adult weights; rounded to 1 g, so 1 g is allowed.
    for (species, day_28_g, day_42_g) in [
        (Species::GreenWingedMacaw, 385, 841),
        (Species::BlueAndYellowMacaw, 415, 821),
        (Species::ScarletMacaw, 399, 800),
        (Species::MilitaryMacaw, 412, 854),
        (Species::GreyParrot, 198, 299),
        (Species::WhiteCockatoo, 316, 504),
    ] {
        let script = young_chick(species, &[(28, day_28_g * 9 / 10), (42, day_42_g * 9 / 10)]);
        let chick = script.chick().unwrap();
        let at = |day: i32| weight_trend(script.at(day, 0, 0), &chick).growth;
        let stand = at(42).unwrap();
        assert_eq!(stand.age_days, 42.0);
        assert!(
            (stand.expected_g - f64::from(day_42_g)).abs() <= 1.0,
            "{species:?} {stand:?}"
        );
        assert!(stand.low_g < stand.high_g && stand.is_growing);
        // At nine tenths of the curve on both days, it is on the way to nine tenths of the adult.
        let adult_g = species.profile().growth_adult.unwrap().value.as_g();
        assert!(
            (stand.own_curve.adult_g - 0.9 * adult_g).abs() < 0.005 * adult_g,
            "{stand:?}"
        );
    }
}

#[test]
fn a_chick_is_growing_until_its_age_or_its_weight_says_otherwise() {
    // Green-winged: 95 % of the adult weight at 34.9 + ln(19) / 0.112 = 61.2 days; of 1,220 g that
    // is 1,159 g. Losing does not end growing: it is what a rule must see.
    let stand_on = |day: i32, readings: &[(i32, i32)]| {
        let script = young_chick(Species::GreenWingedMacaw, readings);
        weight_trend(script.at(day, 0, 0), &script.chick().unwrap()).growth
    };
    assert!(
        stand_on(61, &[(58, 1_000), (59, 980), (60, 960), (61, 940)])
            .unwrap()
            .is_growing
    );
    assert!(!stand_on(61, &[(61, 1_200)]).unwrap().is_growing);
    assert_eq!(stand_on(62, &[(62, 1_000)]), None);
}

#[test]
fn without_a_hatch_day_or_a_curve_of_the_species_there_is_no_stand() {
    let growth = |plan: CarePlan| {
        let mut script = Scenario::new(ChickId([9; 12]), plan, hatch_day(), Offset::UTC);
        script.weigh(30, 400);
        weight_trend(script.at(30, 7, 0), &script.chick().unwrap()).growth
    };
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    assert_eq!(growth(plan.clone()), None);
    plan.hatched = Some(hatch_day());
    assert!(growth(plan.clone()).is_some());
    plan.species = Species::HyacinthMacaw;
    assert_eq!(growth(plan), None);
}

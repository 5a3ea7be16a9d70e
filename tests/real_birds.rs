//! Real birds that were well, judged as if each were a chick at home.
//!
//! Each series is scaled to a first weight of 1,000 g, its first weight being that of the handover; the birds
//! are of other kinds and of no known hatch day here, so that what is judged is loss, not growth.
//! `chickweight.csv`: R `datasets::ChickWeight`, GPL-2 or later (Crowder & Hand 1990). `tern.csv`: R
//! `FlexParamCurve` 1.5-6 `tern.data`, GPL-2 (Nisbet 1975; Nisbet et al. 1978). `penguin.csv`: the same package,
//! `penguin.data` (Chiaradia & Nisbet 2006).

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

use std::collections::BTreeMap;

use perchlight::domain::journal::entries::{Change, ChickId, CropAtWeighing};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::outlook::outlook;
use perchlight::domain::plan::care_plan::{CarePlan, Reference};
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::count::rounded;
use perchlight::domain::quantity::units::Grams;
use perchlight::domain::time::moment::{Day, Offset};
use perchlight::domain::warnings::rules::rule;

const CHICK: ChickId = ChickId([9; 12]);

/// Day and weight of each bird, in a file whose last two columns they are.
fn birds(file: &str) -> BTreeMap<String, Vec<(i32, f64)>> {
    let root = env!("CARGO_MANIFEST_DIR");
    let text =
        std::fs::read_to_string(format!("{root}/tests/fixtures/checks/data/{file}")).unwrap();
    let mut birds: BTreeMap<String, Vec<(i32, f64)>> = BTreeMap::new();
    for line in text.lines().skip(1) {
        let fields: Vec<&str> = line.split(',').collect();
        let [bird, .., day, grams] = fields.as_slice() else {
            continue;
        };
        let Ok(grams) = grams.parse() else { continue };
        let weights = birds.entry((*bird).to_owned()).or_default();
        weights.push((day.parse().unwrap(), grams));
    }
    birds
}

/// The rules on weight that call for a bird, with the days since its first weight.
fn calls(weights: &[(i32, f64)]) -> Vec<(i32, &'static str)> {
    let start = Day::from_date(2026, 3, 2).unwrap();
    let (first_day, first_g) = *weights.first().unwrap();
    let scaled = |grams: f64| Grams::tenths_held(rounded(grams / first_g * 10_000.0));
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    let weight = scaled(first_g);
    plan.reference = Some(Reference { weight, day: start });
    let mut script = Scenario::new(CHICK, plan, start, Offset::UTC);
    script.note(0, 5, 30, Change::Arrived);
    let mut found = Vec::new();
    for (day, grams) in weights {
        let day = day - first_day;
        let (weight, crop) = (scaled(*grams), CropAtWeighing::Empty);
        script.note(day, 6, 45, Change::Weighed { weight, crop });
        let now = script.at(day, 8, 0);
        let outlook = outlook(now, &script.journal(), CHICK, &script.zone()).unwrap();
        let calling = outlook.findings.iter();
        let calling = calling.filter(|found| found.rule.is_of_weight() && found.level.is_call());
        found.extend(calling.map(|found| (day, rule(found.rule).name)));
    }
    found
}

#[test]
fn chicks_that_grow_are_never_a_call() {
    let birds = birds("chickweight.csv");
    assert_eq!(birds.len(), 8);
    let grown = birds.iter().filter(|(bird, _)| *bird != "18");
    for (bird, weights) in grown {
        assert_eq!(calls(weights), [], "{bird}: {weights:?}");
    }
}

/// The only chick here that lost weight: 39 g, then 35 g two days later, its last weight. The file does not say
/// what became of it.
#[test]
fn a_chick_that_lost_a_tenth_in_two_days_is_a_call_at_once() {
    let birds = birds("chickweight.csv");
    assert_eq!(calls(&birds["18"]), [(2, "handover-loss")]);
}

/// Wild chicks are weighed with what their parents have just brought: their weight jumps by a tenth and more
/// from day to day, which no chick weighed with an empty crop does. They cannot be without a call; but none of it
/// comes without a loss.
#[test]
fn a_wild_chick_weighed_with_its_food_is_a_call_only_after_a_loss() {
    for file in ["tern.csv", "penguin.csv"] {
        let birds = birds(file);
        assert_eq!(birds.len(), 2);
        for (bird, weights) in &birds {
            let first_day = weights.first().unwrap().0;
            for (day, rule) in calls(weights) {
                let until = weights.iter().take_while(|(of, _)| of - first_day <= day);
                let until: Vec<f64> = until.map(|(_, grams)| *grams).collect();
                let (highest, last) = (
                    until.iter().copied().fold(0.0, f64::max),
                    until.last().unwrap(),
                );
                assert!(last / highest <= 0.95, "{file} {bird}, day {day}: {rule}");
            }
        }
    }
}

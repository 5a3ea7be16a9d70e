//! What the feeds of a day hold, beside the textbook band: to see a slip in plan or label.
//!
//! Never a feeding command: a chick's own crop and appetite decide.

use crate::domain::formula::energy::energy_band;
use crate::domain::formula::mixing::{MixWanted, mix_amounts};
use crate::domain::formula::nutrition::mix_contents;
use crate::domain::formula::powder::Powder;
use crate::domain::journal::chick::Chick;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::Moment;
use crate::domain::weight::readings;

/// The energy of a day's feeds, kcal.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DayEnergy {
    /// All feeds of the day that are still given.
    pub volume: Millilitres,
    /// What they hold.
    pub kcal: i32,
    /// Textbook band of a growing chick of its weight, low and high end.
    pub growth_kcal: (i32, i32),
    /// Whether the plan holds the powder's label; else a usual powder is taken.
    pub has_label: bool,
}

/// The energy of the feeds in force at `now`, for the latest empty-crop weight or else the handover
/// weight; `None` without a feed, a weight or a mix that can be made.
pub fn day_energy(now: Moment, chick: &Chick) -> Option<DayEnergy> {
    let plan = &chick.plan;
    let latest = readings::latest_empty(now, chick).map(|latest| latest.what.weight);
    let weight = latest.or(plan.reference.map(|reference| reference.weight))?;
    let feeds = chick.feeds_in_force(now);
    let tenths = feeds.iter().map(|feed| feed.volume.tenths());
    let tenths = tenths.fold(0, i32::saturating_add);
    if tenths == 0 {
        return None;
    }
    // A litre of it: only the energy of a millilitre counts.
    let amounts = mix_amounts(&MixWanted::of_plan(plan, 1_000.0, 0.0)).ok()?;
    let contents = mix_contents(&amounts, &Powder::of_plan(plan)?).ok()?;
    let band = energy_band(weight.as_g()).ok()?;
    Some(DayEnergy {
        volume: Millilitres::tenths_held(tenths),
        kcal: rounded(contents.kcal_in_ml(f64::from(tenths) / 10.0)),
        growth_kcal: (
            rounded(band.growth_low_kcal_per_day),
            rounded(band.growth_high_kcal_per_day),
        ),
        has_label: plan.powder_label.is_some(),
    })
}

#[cfg(test)]
mod tests {
    use crate::domain::formula::day_energy::*;
    use crate::domain::plan::care_plan::{CarePlan, PlannedFeed, Reference, Slot};
    use crate::domain::quantity::units::{Grams, Percent};
    use crate::domain::warnings::rules::trial::{day_zero, plan, with_plan};

    fn energy(change: impl FnOnce(&mut CarePlan)) -> Option<DayEnergy> {
        let mut plan = plan();
        plan.reference = Some(Reference {
            weight: Grams::whole(900),
            day: day_zero(),
        });
        for feed in &mut plan.feeds {
            feed.volume = Millilitres::whole(90);
        }
        change(&mut plan);
        let script = with_plan(plan);
        day_energy(script.at(0, 12, 0), &script.chick().unwrap())
    }

    #[test]
    fn three_feeds_of_90_ml_for_a_chick_of_900_g() {
        // 78 x 0.9^0.75 = 72.1 kcal at rest, x 1.5 = 108.1 to hold weight, x 1.5 and x 3 to grow:
        // 162 to 324 (Quesenberry 1989; Duerr & Gage 2020, table B.2). 270 ml x 1.062 g/ml x 0.25
        // x 3.6 kcal/g (a usual powder, ours) = 258.
        let day = energy(|_| {}).unwrap();
        assert_eq!(day.volume, Millilitres::whole(270));
        assert_eq!(day.kcal, 258);
        assert_eq!(day.growth_kcal, (162, 324));
        assert!(!day.has_label);
    }

    #[test]
    fn the_latest_empty_weighing_counts_before_the_handover_weight() {
        let mut script = with_plan(plan());
        script.weigh(1, 900);
        let day = day_energy(script.at(1, 12, 0), &script.chick().unwrap()).unwrap();
        assert_eq!(day.growth_kcal, (162, 324));
    }

    #[test]
    fn the_label_and_the_fat_supplement_count() {
        // 270 ml x 1.062 x 0.25 x 4.0 kcal/g = 286.7
        let label = energy(|plan| {
            plan.powder_label = Some(crate::domain::plan::care_plan::PowderLabel {
                energy_kcal: 400,
                fat: Percent::whole(16),
                protein: Percent::whole(20),
            });
        });
        let label = label.unwrap();
        assert!(label.has_label);
        assert_eq!(label.kcal, 287);
        // 2 g in 100 ml: 5.98 kcal/g (USDA SR28) x 2 = 12.0 kcal more in some 101.7 ml
        let fat = energy(|plan| plan.fat_supplement_per_100_ml = Grams::whole(2));
        let with_fat = f64::from(fat.unwrap().kcal);
        let expected = 270.0 * (26.55 * 3.6 + 12.0) / 101.7;
        assert!((with_fat - expected).abs() < 2.0, "{with_fat} {expected}");
    }

    #[test]
    fn without_feeds_or_weight_nothing_is_said() {
        assert_eq!(energy(|plan| plan.feeds.clear()), None);
        assert_eq!(energy(|plan| plan.reference = None), None);
        let small = PlannedFeed {
            slot: Slot::Morning,
            time: crate::domain::time::moment::WallTime::from_minutes(420),
            volume: Millilitres::tenths_held(5),
        };
        assert_eq!(energy(|plan| plan.feeds = vec![small]).unwrap().kcal, 0);
    }
}

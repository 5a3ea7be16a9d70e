//! Loss against the handover weight and in a day, on empty-crop weighings; those of one sitting count as their
//! middle.

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::CropAtWeighing;
use crate::domain::time::moment::Moment;
use crate::domain::weight::sittings::{self, Sitting};

/// Two morning readings this far apart make a one-day change, minutes. Ours: a day, give or take six
/// hours.
pub const ONE_DAY_MINUTES: std::ops::RangeInclusive<i64> = 18 * 60..=30 * 60;

/// Loss of the latest empty-crop weight against the handover weight, per cent; below zero for a gain.
pub fn handover_loss_pct(now: Moment, chick: &Chick) -> Option<f64> {
    let reference = chick.plan.reference?.weight.as_g();
    let latest = sittings::latest(now, chick)?;
    (0.0 < reference).then(|| pct_below(latest.grams, reference))
}

/// Loss between the two latest empty-crop weights that are a day apart, per cent; below zero for a
/// gain. `None` when there are no two such weights.
pub fn one_day_loss_pct(now: Moment, chick: &Chick) -> Option<f64> {
    let before = day_before(now, chick)?.grams;
    let latest = sittings::latest(now, chick)?;
    (0.0 < before).then(|| pct_below(latest.grams, before))
}

/// The empty-crop weight a day before the latest one, up to `now`.
pub fn day_before(now: Moment, chick: &Chick) -> Option<Sitting> {
    let latest = sittings::latest(now, chick)?;
    let before = chick.weighings.iter().rev().find(|earlier| {
        earlier.what.crop == CropAtWeighing::Empty
            && ONE_DAY_MINUTES.contains(&latest.at.minutes_since(earlier.at))
    })?;
    sittings::latest(before.at, chick)
}

fn pct_below(grams: f64, reference: f64) -> f64 {
    100.0 * (reference - grams) / reference
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, ChickId};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::{CarePlan, Reference};
    use crate::domain::plan::species::Species;
    use crate::domain::quantity::units::Grams;
    use crate::domain::time::moment::{Day, Offset};
    use crate::domain::weight::loss::*;

    fn scenario() -> Scenario {
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let day = Day::from_date(2026, 11, 2).unwrap();
        plan.reference = Some(Reference {
            weight: Grams::whole(1_040),
            day,
        });
        Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC)
    }

    #[test]
    fn loss_is_judged_on_empty_crop_readings_only() {
        let mut script = scenario();
        script.weigh(1, 1_012);
        let full = Change::Weighed {
            weight: Grams::whole(1_100),
            crop: CropAtWeighing::AfterFeed,
        };
        script.note(1, 8, 0, full);
        let unsure = Change::Weighed {
            weight: Grams::whole(900),
            crop: CropAtWeighing::NotSure,
        };
        script.note(1, 9, 0, unsure);
        let chick = script.chick().unwrap();
        // (1040 - 1012) / 1040 = 2.6923 %
        let loss = handover_loss_pct(script.at(1, 12, 0), &chick).unwrap();
        assert!((loss - 2.692_3).abs() < 1e-4);
    }

    #[test]
    fn a_one_day_loss_needs_two_readings_a_day_apart() {
        let mut script = scenario();
        script.weigh(1, 1_000).weigh(3, 950);
        assert_eq!(
            one_day_loss_pct(script.at(3, 12, 0), &script.chick().unwrap()),
            None
        );
        script.weigh(2, 980);
        // (980 - 950) / 980 = 3.061 %
        let loss = one_day_loss_pct(script.at(3, 12, 0), &script.chick().unwrap()).unwrap();
        assert!((loss - 3.061_2).abs() < 1e-4);
    }
}

//! Loss against the handover weight, in a day, and from the peak, on empty-crop readings.

use crate::domain::journal::chick::{Chick, Noted, Weighing};
use crate::domain::journal::entries::CropAtWeighing;
use crate::domain::quantity::order::sorted;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::{Day, Moment};
use crate::domain::weight::readings::latest_empty;

/// Two morning readings this far apart make a one-day change, minutes. Ours: a day, give or take six
/// hours.
pub const ONE_DAY_MINUTES: std::ops::RangeInclusive<i64> = 18 * 60..=30 * 60;

/// Loss of the latest empty-crop reading against the handover weight, per cent; below zero for a gain.
pub fn handover_loss_pct(now: Moment, chick: &Chick) -> Option<f64> {
    let reference = chick.plan.reference?.weight;
    latest_empty(now, chick)?
        .what
        .weight
        .since(reference)
        .loss_pct_of(reference)
}

/// The highest whole-gram weight at which the plan has the breeder called: the handover weight less the
/// plan's limit; `None` without a handover weight.
pub fn call_weight(chick: &Chick) -> Option<Grams> {
    let reference = i64::from(chick.plan.reference?.weight.tenths());
    let left = 1_000 - i64::from(chick.plan.loss_limit_in_force().tenths());
    // tenths of a gram times thousandths, to whole grams
    let grams = i32::try_from(reference * left / 10_000).ok()?;
    Some(Grams::tenths_held(grams.saturating_mul(10)))
}

/// Loss between the two latest empty-crop readings that are a day apart, per cent; below zero for a
/// gain. `None` when there are no two such readings.
pub fn one_day_loss_pct(now: Moment, chick: &Chick) -> Option<f64> {
    let latest = latest_empty(now, chick)?.what.weight;
    let before = day_before(now, chick)?.what.weight;
    latest.since(before).loss_pct_of(before)
}

/// The empty-crop reading a day before the latest one, up to `now`.
pub fn day_before(now: Moment, chick: &Chick) -> Option<&Noted<Weighing>> {
    let latest = latest_empty(now, chick)?;
    chick.weighings.iter().rev().find(|earlier| {
        earlier.what.crop == CropAtWeighing::Empty
            && ONE_DAY_MINUTES.contains(&latest.at.minutes_since(earlier.at))
    })
}

/// Empty-crop readings over which a peak is a median, civil days.
pub const PEAK_DAYS: i32 = 3;

/// Highest weight, grams: the breeder's on the card, or the highest median of the empty-crop readings of
/// [`PEAK_DAYS`] days in a row since the handover, so that one reading with food in the crop makes no false
/// peak; the higher of the two.
///
/// `None` without the breeder's until one such stretch holds three readings. Readings before the chick came home do not
/// count.
///
/// Source: smoothing over three days, ours; that a chick peaks about the start of weaning and then
/// falls: Doneley 2018.
pub fn peak_g(now: Moment, chick: &Chick) -> Option<f64> {
    let home = chick.home_since();
    let readings: Vec<(Day, i32)> = chick
        .weighings
        .iter()
        .filter(|weighing| weighing.what.crop == CropAtWeighing::Empty)
        .filter(|weighing| home <= weighing.at && weighing.at <= now)
        .map(|weighing| (weighing.lived().day, weighing.what.weight.tenths()))
        .collect();
    let median_up_to = |count: usize| {
        let up_to = readings.get(..count)?;
        let (last, _) = *up_to.last()?;
        let tenths: Vec<i32> = up_to
            .iter()
            .rev()
            .take_while(|(day, _)| last.since(*day) < PEAK_DAYS)
            .map(|(_, tenths)| *tenths)
            .collect();
        let tenths = sorted(tenths);
        let middle = tenths.len() / 2;
        let upper = tenths.get(middle).filter(|_| tenths.len() >= 3)?;
        let lower = if tenths.len().is_multiple_of(2) {
            tenths.get(middle - 1)?
        } else {
            upper
        };
        Some(f64::from(lower + upper) / 20.0)
    };
    let of_card = chick.plan.peak.map(|peak| peak.weight.as_g());
    (1..=readings.len())
        .filter_map(median_up_to)
        .chain(of_card)
        .max_by(f64::total_cmp)
}

/// Loss of the latest empty-crop reading against [`peak_g`], per cent; below zero for a gain.
pub fn peak_loss_pct(now: Moment, chick: &Chick) -> Option<f64> {
    let peak = peak_g(now, chick).filter(|peak| *peak > 0.0)?;
    let latest = latest_empty(now, chick)?.what.weight.as_g();
    Some((peak - latest) / peak * 100.0)
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
    use crate::domain::weight::readings::readings;

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
    fn the_plan_s_limit_is_told_as_a_weight_in_whole_grams() {
        // 10 % below 1040 g is 936 g; below 1017 g it is 915.3 g.
        let mut chick = scenario().chick().unwrap();
        assert_eq!(call_weight(&chick), Some(Grams::whole(936)));
        let day = Day::from_date(2026, 11, 2).unwrap();
        let weight = Grams::whole(1_017);
        chick.plan.reference = Some(Reference { weight, day });
        assert_eq!(call_weight(&chick), Some(Grams::whole(915)));
        chick.plan.reference = None;
        assert_eq!(call_weight(&chick), None);
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
        assert_eq!(readings(&chick).len(), 2);
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

    #[test]
    fn a_peak_is_the_highest_median_of_three_days_and_needs_three_readings() {
        let mut script = scenario();
        script.weigh(1, 1_030).weigh(2, 1_050);
        let peak = |script: &Scenario, day| peak_g(script.at(day, 12, 0), &script.chick().unwrap());
        assert_eq!(peak(&script, 2), None);
        // 1,030, 1,050 and 1,140 (food in the crop after all): the middle one is 1,050
        script.weigh(3, 1_140);
        assert_eq!(peak(&script, 3), Some(1_050.0));
        // 1,050, 1,140 and 1,060: 1,060
        script.weigh(4, 1_060);
        assert_eq!(peak(&script, 4), Some(1_060.0));
        script.weigh(5, 1_000).weigh(6, 954);
        assert_eq!(peak(&script, 6), Some(1_060.0));
        // (1060 - 954) / 1060 = 10 %
        let loss = peak_loss_pct(script.at(6, 12, 0), &script.chick().unwrap()).unwrap();
        assert!((loss - 10.0).abs() < 1e-9);
    }

    #[test]
    fn readings_before_coming_home_make_no_peak() {
        let mut script = scenario();
        script.weigh(1, 1_100).weigh(2, 1_100).weigh(3, 1_100);
        script.note(3, 12, 0, Change::Arrived);
        script.weigh(4, 1_030);
        assert_eq!(peak_g(script.at(4, 12, 0), &script.chick().unwrap()), None);
    }

    #[test]
    fn readings_far_apart_make_no_peak() {
        let mut script = scenario();
        script.weigh(1, 1_030).weigh(4, 1_050).weigh(7, 1_070);
        assert_eq!(peak_g(script.at(7, 12, 0), &script.chick().unwrap()), None);
    }
}

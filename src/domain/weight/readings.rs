//! Weight now: which readings count, loss against the handover weight, loss in a day.

use crate::domain::journal::chick::{Chick, Noted, Weighing};
use crate::domain::journal::entries::{CropAtWeighing, EntryId};
use crate::domain::quantity::order::sorted;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::{Day, Lived, Moment, Offset};
use crate::domain::weight::trend;

/// Grams that a millilitre of formula adds, at 25 % powder.
///
/// Source: component densities of Choi & Okos 1986 give 1.062 g/ml at 40 °C; 1.06 is used.
pub const FORMULA_G_PER_ML: f64 = 1.06;

/// Food counts as still in the crop for this long after a feed, minutes. Ours, from a usual emptying
/// time of 4 h.
pub const CROP_MINUTES: i64 = 240;

/// Two morning readings this far apart make a one-day change, minutes. Ours: a day, give or take six
/// hours.
pub const ONE_DAY_MINUTES: std::ops::RangeInclusive<i64> = 18 * 60..=30 * 60;

/// A weighing that counts, with the food in the crop taken off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// The entry it comes from.
    pub id: EntryId,
    /// When.
    pub at: Moment,
    /// The wall clock's offset then.
    pub offset: Offset,
    /// Weight without food, grams.
    pub grams: f64,
    /// Standard deviation of that weight, grams.
    pub sd_g: f64,
    /// Whether the crop was empty, so that the number is the scale's own.
    pub is_empty_crop: bool,
}

impl Reading {
    /// The day and wall time at which it was taken, as it was lived then.
    pub fn lived(&self) -> Lived {
        self.at.lived(self.offset)
    }
}

/// The readings that count: those that say what the crop held.
///
/// An after-feed reading is reduced by the food given in the [`CROP_MINUTES`] before it and carries
/// half of that mass as extra uncertainty (ours). Without a noted feed its uncertainty is 5 % (ours).
pub fn readings(chick: &Chick) -> Vec<Reading> {
    chick
        .weighings
        .iter()
        .filter_map(|weighing| reading(chick, weighing))
        .collect()
}

fn reading(chick: &Chick, weighing: &Noted<Weighing>) -> Option<Reading> {
    let raw = weighing.what.weight.as_g();
    let scale_sd = scale_sd_g(raw, chick.plan.scale_step);
    let (grams, sd_g) = match weighing.what.crop {
        CropAtWeighing::Empty => (raw, scale_sd),
        CropAtWeighing::AfterFeed => {
            let food = food_in_crop_g(chick, weighing.at);
            let food_sd = if food > 0.0 { food / 2.0 } else { raw * 0.05 };
            (raw - food, scale_sd.hypot(food_sd))
        }
        CropAtWeighing::NotSure => return None,
    };
    Some(Reading {
        id: weighing.id,
        at: weighing.at,
        offset: weighing.offset,
        grams,
        sd_g,
        is_empty_crop: weighing.what.crop == CropAtWeighing::Empty,
    })
}

/// Standard deviation of an empty-crop weighing, grams: 1 % of the weight (ours, from the 10 to 20 g
/// that an adult large parrot's weight varies) with the scale's step.
pub fn scale_sd_g(grams: f64, step: Grams) -> f64 {
    // The rounding error of a step is uniform, with standard deviation step/√12.
    (grams * 0.01).hypot(step.as_g() / 12.0_f64.sqrt())
}

fn food_in_crop_g(chick: &Chick, at: Moment) -> f64 {
    let until = chick.feeds.partition_point(|feed| feed.at <= at);
    let in_crop = chick
        .feeds
        .iter()
        .take(until)
        .rev()
        .take_while(|feed| at.minutes_since(feed.at) < CROP_MINUTES);
    in_crop
        .map(|feed| feed.what.outcome.taken().as_ml() * FORMULA_G_PER_ML)
        .sum()
}

/// The latest reading with an empty crop, up to `now`.
pub fn latest_empty(now: Moment, chick: &Chick) -> Option<&Noted<Weighing>> {
    chick
        .weighings
        .iter()
        .rev()
        .find(|weighing| weighing.at <= now && weighing.what.crop == CropAtWeighing::Empty)
}

/// Loss of the latest empty-crop reading against the handover weight, per cent; below zero for a gain.
pub fn handover_loss_pct(now: Moment, chick: &Chick) -> Option<f64> {
    let reference = chick.plan.reference?.weight;
    latest_empty(now, chick)?
        .what
        .weight
        .since(reference)
        .loss_pct_of(reference)
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

/// Highest weight since the handover, grams: the highest median of the empty-crop readings of
/// [`PEAK_DAYS`] days in a row, so that one reading with food in the crop makes no false peak.
///
/// `None` until one such stretch holds three readings. Readings before the chick came home do not
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
    (1..=readings.len())
        .filter_map(median_up_to)
        .max_by(f64::total_cmp)
}

/// Loss of the latest empty-crop reading against [`peak_g`], per cent; below zero for a gain.
pub fn peak_loss_pct(now: Moment, chick: &Chick) -> Option<f64> {
    let peak = peak_g(now, chick).filter(|peak| *peak > 0.0)?;
    let latest = latest_empty(now, chick)?.what.weight.as_g();
    Some((peak - latest) / peak * 100.0)
}

/// A typed weight that does not fit what is known, and what may have been meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Doubt {
    /// The last weight known: a reading, or the handover weight.
    pub last: Grams,
    /// What may have been meant: a slip of ten or a thousand, or ounces for grams.
    pub meant: Option<Grams>,
}

/// Whether a typed weight is so far off that it is asked about before it is kept.
///
/// Asked beyond 4 standard deviations of what is expected, at least 15 % (ours), which a confirmed
/// reading then passes: it is kept and counts for less, never dropped. The least of 15 % leaves room
/// for a full crop, which is asked about apart. Expected is what the trend says or, before it has
/// enough readings, the last weight.
pub fn doubt(now: Moment, chick: &Chick, typed: Grams) -> Option<Doubt> {
    let known = chick
        .weighings
        .iter()
        .rev()
        .find(|weighing| weighing.at <= now);
    let last = known
        .map(|weighing| weighing.what.weight)
        .or(chick.plan.reference.map(|reference| reference.weight))?;
    let (expected, sd) = trend::expected_reading(now, chick).unwrap_or_else(|| {
        let days = known.map_or(1.0, |weighing| now.days_since(weighing.at).max(1.0));
        let sd = scale_sd_g(last.as_g(), chick.plan.scale_step) * days.sqrt();
        (last.as_g(), sd)
    });
    let allowed = (4.0 * sd).max(expected * 0.15);
    let is_near = |grams: f64| (grams - expected).abs() <= allowed;
    if is_near(typed.as_g()) {
        return None;
    }
    let slips = [
        10.0,
        0.1,
        1_000.0,
        crate::domain::quantity::units::GRAMS_PER_OUNCE,
    ];
    let meant = slips
        .iter()
        .map(|factor| typed.as_g() * factor)
        .find(|grams| is_near(*grams));
    Some(Doubt {
        last,
        meant: meant
            .map(|grams| Grams::tenths_held(crate::domain::quantity::count::rounded(grams * 10.0))),
    })
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, ChickId};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::{CarePlan, Reference, Slot};
    use crate::domain::plan::species::Species;
    use crate::domain::time::moment::{Day, Offset};
    use crate::domain::weight::readings::*;

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
        assert_eq!(readings(&chick).len(), 2);
    }

    #[test]
    fn an_after_feed_reading_loses_the_food_it_holds() {
        let mut script = scenario();
        script.feed(1, 7, 0, Slot::Morning, 90);
        let full = Change::Weighed {
            weight: Grams::whole(1_100),
            crop: CropAtWeighing::AfterFeed,
        };
        script.note(1, 7, 30, full.clone());
        script.note(1, 11, 0, full);
        let readings = readings(&script.chick().unwrap());
        // 90 ml × 1.06 g/ml = 95.4 g; the trade's rule of thumb says a 90 ml feed adds about 95 g
        assert!((readings[0].grams - (1_100.0 - 95.4)).abs() < 1e-9);
        assert!(readings[0].sd_g > 47.0);
        // four hours later nothing is taken off
        assert!((readings[1].grams - 1_100.0).abs() < 1e-9);
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

    #[test]
    fn a_slip_of_ten_or_a_decimal_comma_for_thousands_is_asked_about() {
        let mut script = scenario();
        script.weigh(1, 1_020);
        let chick = script.chick().unwrap();
        let asked = |tenths| doubt(script.at(2, 7, 0), &chick, Grams::tenths_held(tenths));
        assert_eq!(asked(10_120), None);
        assert_eq!(asked(101_200).unwrap().meant, Some(Grams::whole(1_012)));
        assert_eq!(asked(1_012).unwrap().meant, Some(Grams::whole(1_012)));
        assert_eq!(asked(10).unwrap().meant, Some(Grams::whole(1_000)));
        // 36 oz typed as grams: 36 × 28.3495 = 1020.6 g
        assert_eq!(asked(360).unwrap().meant, Some(Grams::tenths_held(10_206)));
        assert_eq!(asked(14_000).unwrap().meant, None);
        assert_eq!(asked(14_000).unwrap().last, Grams::whole(1_020));
    }
}

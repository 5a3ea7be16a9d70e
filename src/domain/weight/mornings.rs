//! Morning weights: one a day, their slope, and whether they are flat.

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::CropAtWeighing;
use crate::domain::quantity::order::sorted_by;
use crate::domain::statistics::robust;
use crate::domain::time::moment::{Day, Moment};

/// Days that the slope looks back, today among them.
///
/// Common practice: "no loss over 1 % a day over 5 days".
pub const SLOPE_DAYS: i32 = 5;

/// Fewest mornings that make a slope. Ours.
pub const LEAST_MORNINGS: usize = 3;

/// Days in a row over which weights are smoothed before they are called flat. Ours: one reading with
/// food in the crop then spoils nothing.
pub const SMOOTHED_DAYS: i32 = 3;

/// Steepest slope for a drop, per cent a day: a loss of 1 %. Common practice.
pub const MOST_LOSS_PCT_PER_DAY: f64 = -1.0;

/// One day's empty-crop weight: the median of that day's readings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Morning {
    /// The day, as it was lived.
    pub day: Day,
    /// Weight, grams.
    pub grams: f64,
}

/// The days with an empty-crop weighing up to `now`, in order, one weight each.
pub fn mornings(now: Moment, chick: &Chick) -> Vec<Morning> {
    let readings: Vec<(Day, f64)> = chick
        .weighings
        .iter()
        .filter(|weighing| weighing.at <= now && weighing.what.crop == CropAtWeighing::Empty)
        .map(|weighing| (weighing.lived().day, weighing.what.weight.as_g()))
        .collect();
    // A flight across the date line can live a day twice.
    let readings = sorted_by(readings, |(one, _), (other, _)| one.cmp(other));
    readings
        .chunk_by(|(day, _), (next, _)| day == next)
        .filter_map(|same_day| {
            if let [(day, grams)] = *same_day {
                return Some(Morning { day, grams });
            }
            let (day, _) = *same_day.first()?;
            let grams: Vec<f64> = same_day.iter().map(|(_, grams)| *grams).collect();
            let grams = robust::median(&grams)?;
            Some(Morning { day, grams })
        })
        .collect()
}

fn stretch_up_to(mornings: &[Morning], last: usize) -> Option<&[Morning]> {
    let up_to = mornings.get(..=last)?;
    let day = up_to.last()?.day;
    let first = up_to.partition_point(|morning| day.since(morning.day) >= SMOOTHED_DAYS);
    up_to.get(first..)
}

fn median_of(mornings: &[Morning]) -> Option<f64> {
    let grams: Vec<f64> = mornings.iter().map(|morning| morning.grams).collect();
    robust::median(&grams)
}

/// Whether a slope in per cent a day is no steeper a loss than the limit.
pub(crate) fn is_steady(slope_pct_per_day: f64) -> bool {
    slope_pct_per_day >= MOST_LOSS_PCT_PER_DAY - 1e-9
}

/// Robust slope of the mornings of the last [`SLOPE_DAYS`], per cent of their median a day; below zero
/// for a loss.
///
/// `None` with fewer than [`LEAST_MORNINGS`].
pub fn slope_pct_per_day(mornings: &[Morning], today: Day) -> Option<f64> {
    slope_over(mornings, today, SLOPE_DAYS, LEAST_MORNINGS)
}

/// Days over which a weight that fell is called level again. Common practice: "levelling" is a flat week.
pub const LEVEL_DAYS: i32 = 7;

/// Steepest slope of a level weight, up or down, per cent a day. Ours, below half of the 0.36 % a day that
/// healthy chicks lose on average (from Groffen 2008: 75 g of 375 g in 55 days).
pub const LEVEL_PCT_PER_DAY: f64 = 0.2;

/// Fewest mornings in [`LEVEL_DAYS`] that tell. Ours.
const LEAST_LEVEL_MORNINGS: usize = 5;

/// Whether the weight of the last [`LEVEL_DAYS`] was level.
pub fn is_level(mornings: &[Morning], today: Day) -> bool {
    slope_over(mornings, today, LEVEL_DAYS, LEAST_LEVEL_MORNINGS)
        .is_some_and(|slope| slope.abs() <= LEVEL_PCT_PER_DAY + 1e-9)
}

/// Loss a day between the three days up to `today` and the three before them, per cent; below zero for a gain.
///
/// `None` without a morning on two of each three days.
pub fn three_day_loss_pct_per_day(mornings: &[Morning], today: Day) -> Option<f64> {
    let mean = |last: Day| {
        let days = between(mornings, last.plus(1 - SMOOTHED_DAYS), last);
        let sum: f64 = days.iter().map(|morning| morning.grams).sum();
        let mean = sum / f64::from(u32::try_from(days.len()).ok()?);
        (days.len() >= 2 && mean > 0.0).then_some(mean)
    };
    let (latest, before) = (mean(today)?, mean(today.plus(-SMOOTHED_DAYS))?);
    Some((before - latest) / before * 100.0 / f64::from(SMOOTHED_DAYS))
}

fn slope_over(mornings: &[Morning], today: Day, days: i32, least: usize) -> Option<f64> {
    let recent = since(mornings, today.plus(1 - days));
    if recent.len() < least {
        return None;
    }
    let days: Vec<f64> = recent
        .iter()
        .map(|morning| f64::from(morning.day.since(today)))
        .collect();
    let grams: Vec<f64> = recent.iter().map(|morning| morning.grams).collect();
    let line = robust::theil_sen(&days, &grams)?;
    let middle = robust::median(&grams).filter(|middle| *middle > 0.0)?;
    Some(line.slope / middle * 100.0)
}

/// How many more mornings at the latest weight make the slope no steeper than the limit for a drop.
pub fn steady_mornings_needed(mornings: &[Morning], today: Day) -> i32 {
    let first = next_weighing_day(mornings, today);
    let grams = mornings.last().map_or(1.0, |morning| morning.grams);
    let mut ahead = since(mornings, today.plus(1 - SLOPE_DAYS)).to_vec();
    for needed in 1..SLOPE_DAYS {
        let day = first.plus(needed - 1);
        ahead.push(Morning { day, grams });
        let is_steady = slope_pct_per_day(&ahead, day).is_some_and(is_steady);
        if is_steady {
            return needed;
        }
    }
    // Five mornings at one weight have no slope.
    SLOPE_DAYS
}

/// The day of the next weighing that is due: today, or tomorrow once today's is there.
pub fn next_weighing_day(mornings: &[Morning], today: Day) -> Day {
    let is_weighed = mornings.last().is_some_and(|morning| morning.day >= today);
    today.plus(i32::from(is_weighed))
}

/// Furthest that a smoothed morning lies from the median of all of them, per cent, from `first` to
/// `last`. A morning with no other in the two days before it is not smoothed and does not count.
///
/// `None` when none counts.
pub fn spread_pct(mornings: &[Morning], first: Day, last: Day) -> Option<f64> {
    let window = between(mornings, first, last);
    let middle = median_of(window).filter(|middle| *middle > 0.0)?;
    (0..window.len())
        .filter_map(|place| stretch_up_to(window, place))
        .filter(|stretch| stretch.len() > 1)
        .filter_map(median_of)
        .map(|smoothed| ((smoothed - middle) / middle * 100.0).abs())
        .max_by(f64::total_cmp)
}

/// The mornings from `first` to `last`.
pub fn between(mornings: &[Morning], first: Day, last: Day) -> &[Morning] {
    let end = mornings.partition_point(|morning| morning.day <= last);
    since(mornings.get(..end).unwrap_or_default(), first)
}

fn since(mornings: &[Morning], first: Day) -> &[Morning] {
    let start = mornings.partition_point(|morning| morning.day < first);
    mornings.get(start..).unwrap_or_default()
}

/// Days over which a weight is called flat. Common practice.
pub const FLAT_DAYS: i32 = 14;

/// Furthest that the weight may lie from its middle in these days, per cent. Common practice: "flat
/// within ±2 %"; that weights smoothed over three days are held against it: ours.
pub const FLAT_PCT: f64 = 2.0;

/// Fewest mornings in each half of the fourteen days that tell whether a weight is flat. Ours.
const LEAST_IN_EACH_HALF: usize = 3;

/// Furthest that a smoothed morning lies from the middle of the [`FLAT_DAYS`] up to `last`, per cent.
///
/// `None` with fewer than three mornings in either week.
pub fn flat_spread_pct(mornings: &[Morning], last: Day) -> Option<f64> {
    let first = last.plus(1 - FLAT_DAYS);
    let middle = first.plus(FLAT_DAYS / 2);
    let in_first_half = between(mornings, first, middle.plus(-1)).len();
    let in_second_half = between(mornings, middle, last).len();
    let is_known = in_first_half.min(in_second_half) >= LEAST_IN_EACH_HALF;
    spread_pct(mornings, first, last).filter(|_| is_known)
}

/// Whether a spread in per cent is within [`FLAT_PCT`].
pub fn is_flat(spread_pct: f64) -> bool {
    spread_pct <= FLAT_PCT + 1e-9
}

/// The median of the mornings from `first` to `last`, grams; `None` when there is none.
pub fn level_g(mornings: &[Morning], first: Day, last: Day) -> Option<f64> {
    median_of(between(mornings, first, last))
}

#[cfg(test)]
mod tests {
    use crate::domain::weight::mornings::*;

    fn from_grams(grams: &[f64]) -> (Vec<Morning>, Day) {
        let first = Day::from_date(2026, 11, 2).unwrap();
        let mornings = (0..).zip(grams).map(|(ahead, grams)| Morning {
            day: first.plus(ahead),
            grams: *grams,
        });
        let mornings: Vec<Morning> = mornings.collect();
        let last = mornings.last().unwrap().day;
        (mornings, last)
    }

    #[test]
    fn three_days_are_held_against_the_three_before() {
        let loss = |grams: &[f64]| {
            let (mornings, last) = from_grams(grams);
            three_day_loss_pct_per_day(&mornings, last)
        };
        // means of 1,000 g and 970 g: 3 % in three days
        let falling = loss(&[1_010.0, 1_000.0, 990.0, 980.0, 970.0, 960.0]).unwrap();
        assert!((falling - 1.0).abs() < 1e-9, "{falling}");
        assert_eq!(loss(&[1_000.0, 990.0, 980.0, 970.0]), None);
    }

    #[test]
    fn a_week_is_level_within_a_fifth_of_a_per_cent_a_day() {
        let is_level = |per_day: f64, days: i32| {
            let grams: Vec<f64> = (0..days)
                .map(|day| 1_000.0 + per_day * f64::from(day - days / 2))
                .collect();
            let (mornings, last) = from_grams(&grams);
            is_level(&mornings, last)
        };
        assert!(is_level(-1.9, 7));
        assert!(is_level(-2.0, 7));
        assert!(!is_level(-2.1, 7));
        assert!(!is_level(2.1, 7));
        assert!(is_level(0.0, 5));
        assert!(!is_level(0.0, 4));
    }
}

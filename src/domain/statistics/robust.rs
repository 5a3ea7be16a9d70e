//! Statistics that one wild reading cannot spoil.
//!
//! Everything here refuses infinite values and values that are not a number: the answer is `None`.

use crate::domain::quantity::count;
use crate::domain::quantity::order::sorted_by;
use crate::domain::statistics::normal;

/// Makes the median absolute deviation comparable with a standard deviation: `1 / Φ⁻¹(3/4)`.
pub const MAD_TO_SD: f64 = 1.482_602_218_505_602;

/// `Φ⁻¹(3/4)`, to the four digits that the rule of the modified z is stated with.
///
/// Source: Iglewicz & Hoaglin (1993), as in NIST/SEMATECH e-Handbook 1.3.5.17.
const MODIFIED_Z_FACTOR: f64 = 0.6745;

/// A modified z further from 0 than this marks an outlier.
///
/// Source: as for [`modified_z`].
pub const MODIFIED_Z_LIMIT: f64 = 3.5;

/// A reading further from its window's median than this many robust standard deviations is marked.
///
/// Source: Hampel's three-sigma rule in the common form; Pearson (2002), from memory.
const HAMPEL_LIMIT_SD: f64 = 3.0;

/// The middle value, or the mean of the two middle ones; `None` for no values.
///
/// # Examples
/// ```
/// use perchlight::domain::statistics::robust::median;
/// assert_eq!(median(&[3.0, 1.0, 2.0, 100.0]), Some(2.5));
/// assert_eq!(median(&[]), None);
/// ```
pub fn median(values: &[f64]) -> Option<f64> {
    all_finite(values)?;
    sorted_median(&sorted(values.to_vec()))
}

/// Median of the distances from the median, not scaled; `None` for no values.
///
/// Times [`MAD_TO_SD`] it estimates the standard deviation of normal values.
pub fn median_absolute_deviation(values: &[f64]) -> Option<f64> {
    let centre = median(values)?;
    let distances = values.iter().map(|value| (value - centre).abs());
    median(&distances.collect::<Vec<_>>())
}

/// How far each value lies from the median, by the values' own spread.
///
/// `None` where the spread is 0: then the rule says nothing and marks nothing.
///
/// # Formula
/// `0.6745 (x - median) / MAD`; see [`MODIFIED_Z_LIMIT`].
///
/// Source: Iglewicz & Hoaglin (1993), as in NIST/SEMATECH e-Handbook 1.3.5.17.
pub fn modified_z(values: &[f64]) -> Option<Vec<f64>> {
    let centre = median(values)?;
    let spread = median_absolute_deviation(values)?;
    let scaled = |value: &f64| MODIFIED_Z_FACTOR * (value - centre) / spread;
    (0.0 < spread).then(|| values.iter().map(scaled).collect())
}

/// What the neighbours of one reading say about it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Neighbourhood {
    /// Median of the window.
    pub median: f64,
    /// Robust standard deviation of the window.
    pub sd: f64,
    /// Whether the reading lies more than three of these from the median.
    pub is_outlier: bool,
}

/// Compares each value with a window around it, cut at the ends (Hampel's filter, which only marks).
///
/// `each_side` is the number of neighbours before and after. Where they all agree, any difference
/// is marked.
pub fn neighbourhoods(values: &[f64], each_side: usize) -> Option<Vec<Neighbourhood>> {
    let judge = |(index, value): (usize, &f64)| {
        let first = index.saturating_sub(each_side);
        let last = (index.saturating_add(each_side)).min(values.len().saturating_sub(1));
        let window = values.get(first..=last)?;
        let median = median(window)?;
        let sd = MAD_TO_SD * median_absolute_deviation(window)?;
        Some(Neighbourhood {
            median,
            sd,
            is_outlier: HAMPEL_LIMIT_SD * sd < (value - median).abs(),
        })
    };
    values.iter().enumerate().map(judge).collect()
}

/// A straight line through readings that up to 29 % of them cannot turn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RobustLine {
    /// Change a day: median of the slopes of all pairs.
    pub slope: f64,
    /// Lower end of the slope's 95 % interval.
    pub slope_low_95: f64,
    /// Upper end of the slope's 95 % interval.
    pub slope_high_95: f64,
    /// Value at day 0 by which half of the readings lie above the line.
    pub intercept_joint: f64,
    /// Value at day 0 from the median day and the median reading.
    pub intercept_separate: f64,
    /// Pairs of different days that the slope was taken from.
    pub pairs: usize,
}

impl RobustLine {
    /// The line at a day, with the joint intercept.
    pub fn at(&self, day: f64) -> f64 {
        self.intercept_joint + self.slope * day
    }
}

/// The Theil–Sen line through readings at uneven days.
///
/// Work and memory grow with the square of the count: 60 readings make 1,770 slopes, 1,000 make
/// half a million. Give it the last few weeks, not the whole life.
///
/// `None` when the lists differ in length or no two readings lie on different days.
///
/// # Formula
/// Median of `(y_j - y_i) / (t_j - t_i)` over pairs of different days. The 95 % interval takes the
/// sorted slopes at the ranks `(N ± z σ) / 2`, rounded half to even, with
/// `σ² = [n(n-1)(2n+5) - Σ c(c-1)(2c+5)] / 18` over the ties `c` of days and of readings.
///
/// Source: Sen (1968), Journal of the American Statistical Association 63:1379, eq. 2.6.
pub fn theil_sen(days: &[f64], values: &[f64]) -> Option<RobustLine> {
    all_finite(days)?;
    all_finite(values)?;
    if days.len() != values.len() {
        return None;
    }
    let mut slopes = Vec::with_capacity(days.len() * days.len().saturating_sub(1) / 2);
    for (index, (day, value)) in days.iter().zip(values).enumerate() {
        let before = days.iter().zip(values).take(index);
        slopes.extend(before.filter_map(|(earlier, past)| {
            let gap = day - earlier;
            (gap != 0.0).then(|| (value - past) / gap)
        }));
    }
    let slopes = sorted(slopes);
    let slope = sorted_median(&slopes)?;
    let (pairs, readings) = (count::as_f64(slopes.len()), count::as_f64(days.len()));
    let variance = readings * (readings - 1.0) * (2.0 * readings + 5.0) / 18.0
        - tie_correction(days)
        - tie_correction(values);
    let reach = normal::Z_95 * variance.max(0.0).sqrt();
    let at_rank = |rank: f64| slopes.get(whole(rank.clamp(0.0, pairs - 1.0))).copied();
    let rests = days
        .iter()
        .zip(values)
        .map(|(day, value)| value - slope * day);
    Some(RobustLine {
        slope,
        slope_low_95: at_rank(((pairs - reach) / 2.0).round_ties_even() - 1.0)?,
        slope_high_95: at_rank(pairs.midpoint(reach).round_ties_even())?,
        intercept_joint: median(&rests.collect::<Vec<_>>())?,
        intercept_separate: median(values)? - slope * median(days)?,
        pairs: slopes.len(),
    })
}

/// What equal values take off the variance of a sum of signs: `Σ c(c-1)(2c+5) / 18`.
pub(crate) fn tie_correction(values: &[f64]) -> f64 {
    let ties = tie_sizes(values).into_iter();
    ties.map(|size| size * (size - 1.0) * (2.0 * size + 5.0) / 18.0)
        .sum()
}

/// How many values share each value.
pub(crate) fn tie_sizes(values: &[f64]) -> Vec<f64> {
    let sorted = sorted(values.to_vec());
    let groups = sorted.chunk_by(|one, next| next - one == 0.0);
    groups.map(|group| count::as_f64(group.len())).collect()
}

/// `None` unless every value is finite.
pub(crate) fn all_finite(values: &[f64]) -> Option<()> {
    values.iter().all(|value| value.is_finite()).then_some(())
}

/// A whole number that is at least 0 as a place in a list.
pub(crate) fn whole(number: f64) -> usize {
    usize::try_from(count::rounded(number)).unwrap_or_default()
}

fn sorted(values: Vec<f64>) -> Vec<f64> {
    sorted_by(values, f64::total_cmp)
}

fn sorted_median(sorted: &[f64]) -> Option<f64> {
    let upper = sorted.get(sorted.len() / 2)?;
    if sorted.len() % 2 == 1 {
        return Some(*upper);
    }
    let lower = sorted.get((sorted.len() / 2).checked_sub(1)?)?;
    Some(lower.midpoint(*upper))
}

#[cfg(test)]
mod tests {
    use crate::domain::statistics::robust::{
        MAD_TO_SD, median, median_absolute_deviation, modified_z, neighbourhoods, theil_sen,
    };

    #[test]
    fn no_values_and_values_that_are_not_finite_have_no_answer() {
        for values in [&[][..], &[1.0, f64::NAN], &[f64::INFINITY, 1.0]] {
            assert_eq!(median(values), None);
            assert_eq!(median_absolute_deviation(values), None);
            assert_eq!(modified_z(values), None);
        }
        assert_eq!(theil_sen(&[0.0, f64::NAN], &[1.0, 2.0]), None);
        assert_eq!(neighbourhoods(&[1.0, f64::NAN], 1), None);
        assert_eq!(neighbourhoods(&[], 3), Some(Vec::new()));
    }

    #[test]
    fn a_line_needs_two_different_days_and_as_many_values_as_days() {
        assert_eq!(theil_sen(&[], &[]), None);
        assert_eq!(theil_sen(&[1.0], &[700.0]), None);
        assert_eq!(theil_sen(&[1.0, 1.0], &[700.0, 710.0]), None);
        assert_eq!(theil_sen(&[0.0, -0.0], &[700.0, 710.0]), None);
        assert_eq!(theil_sen(&[1.0, 2.0], &[700.0]), None);
        let line = theil_sen(&[1.0, 3.0], &[700.0, 710.0]).unwrap();
        assert_eq!((line.slope, line.at(5.0)), (5.0, 720.0));
    }

    #[test]
    fn three_wild_readings_of_eleven_do_not_turn_the_line() {
        // 8 of 11 readings lie on 600 + 10 t: 28 of the 55 pairs, more than half.
        let days: Vec<f64> = (0..11).map(f64::from).collect();
        let mut values: Vec<f64> = days.iter().map(|day| 600.0 + 10.0 * day).collect();
        (values[2], values[5], values[8]) = (1_000.0, 60.0, 5_000.0);
        assert_eq!(theil_sen(&days, &values).unwrap().slope, 10.0);
    }

    #[test]
    fn the_factor_of_the_mad_is_one_over_the_upper_quartile_of_the_normal() {
        let quartile = crate::domain::statistics::normal::quantile(0.75).unwrap();
        assert!((MAD_TO_SD * quartile - 1.0).abs() < 1e-14);
    }
}

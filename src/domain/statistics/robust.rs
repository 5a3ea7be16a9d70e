//! Statistics that one wild reading cannot spoil.
//!
//! Everything here refuses infinite values and values that are not a number: the answer is `None`.

use crate::domain::quantity::count;
use crate::domain::quantity::order::sorted_by;
use crate::domain::statistics::normal;

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

/// A straight line through readings that up to 29 % of them cannot turn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RobustLine {
    /// Change a day: median of the slopes of all pairs.
    pub slope: f64,
    /// Lower end of the slope's 95 % interval.
    pub slope_low_95: f64,
    /// Upper end of the slope's 95 % interval.
    pub slope_high_95: f64,
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
    Some(RobustLine {
        slope,
        slope_low_95: at_rank(((pairs - reach) / 2.0).round_ties_even() - 1.0)?,
        slope_high_95: at_rank(pairs.midpoint(reach).round_ties_even())?,
    })
}

/// What equal values take off the variance of a sum of signs: `Σ c(c-1)(2c+5) / 18`.
fn tie_correction(values: &[f64]) -> f64 {
    let ties = tie_sizes(values).into_iter();
    ties.map(|size| size * (size - 1.0) * (2.0 * size + 5.0) / 18.0)
        .sum()
}

/// How many values share each value.
fn tie_sizes(values: &[f64]) -> Vec<f64> {
    let sorted = sorted(values.to_vec());
    let groups = sorted.chunk_by(|one, next| next - one == 0.0);
    groups.map(|group| count::as_f64(group.len())).collect()
}

/// `None` unless every value is finite.
pub(crate) fn all_finite(values: &[f64]) -> Option<()> {
    values.iter().all(|value| value.is_finite()).then_some(())
}

/// A whole number that is at least 0 as a place in a list.
fn whole(number: f64) -> usize {
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
    use crate::domain::statistics::robust::{median, theil_sen};

    #[test]
    fn no_values_and_values_that_are_not_finite_have_no_answer() {
        for values in [&[][..], &[1.0, f64::NAN], &[f64::INFINITY, 1.0]] {
            assert_eq!(median(values), None);
        }
        assert_eq!(theil_sen(&[0.0, f64::NAN], &[1.0, 2.0]), None);
    }

    #[test]
    fn a_line_needs_two_different_days_and_as_many_values_as_days() {
        assert_eq!(theil_sen(&[], &[]), None);
        assert_eq!(theil_sen(&[1.0], &[700.0]), None);
        assert_eq!(theil_sen(&[1.0, 1.0], &[700.0, 710.0]), None);
        assert_eq!(theil_sen(&[0.0, -0.0], &[700.0, 710.0]), None);
        assert_eq!(theil_sen(&[1.0, 2.0], &[700.0]), None);
        assert_eq!(theil_sen(&[1.0, 3.0], &[700.0, 710.0]).unwrap().slope, 5.0);
    }

    #[test]
    fn three_wild_readings_of_eleven_do_not_turn_the_line() {
        // 8 of 11 readings lie on 600 + 10 t: 28 of the 55 pairs, more than half.
        let days: Vec<f64> = (0..11).map(f64::from).collect();
        let mut values: Vec<f64> = days.iter().map(|day| 600.0 + 10.0 * day).collect();
        (values[2], values[5], values[8]) = (1_000.0, 60.0, 5_000.0);
        assert_eq!(theil_sen(&days, &values).unwrap().slope, 10.0);
    }
}

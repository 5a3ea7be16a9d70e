//! Whether values rise or fall with the days at all, by order alone.

use crate::domain::quantity::count;
use crate::domain::statistics::{normal, robust};

/// How the order of values agrees with the order of their days, and how likely that is by chance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Agreement {
    /// Pairs in the same order less pairs in the opposite order.
    pub score: f64,
    /// Variance of the score by chance, with the ties of the values taken off (Mann–Kendall).
    pub score_var: f64,
    /// Score in standard deviations, with the continuity correction; 0 when all values are equal.
    pub z: f64,
    /// Chance of a score this far from 0 in a random order, by `z`, 0 to 1.
    pub chance: f64,
    /// Score as a share of all pairs, -1 to 1.
    pub tau_a: f64,
    /// Score as a share of the pairs without ties, -1 to 1; `None` when all days or values are equal.
    pub tau_b: Option<f64>,
}

/// Kendall's tau and the Mann–Kendall test of values at their days.
///
/// `None` for fewer than 2 readings, lists of different length or values that are not finite.
/// Work grows with the square of the count.
///
/// # Formula
/// `S = Σ sign(t_j - t_i) sign(y_j - y_i)`,
/// `var = [n(n-1)(2n+5) - Σ c(c-1)(2c+5)] / 18` over the ties `c` of the values,
/// `z = (S - sign S) / sqrt var`.
///
/// Source: Mann (1945), Econometrica 13:245; Kendall (1975), Rank Correlation Methods; from memory.
pub fn agreement(days: &[f64], values: &[f64]) -> Option<Agreement> {
    let score = score(days, values)?;
    let readings = count::as_f64(days.len());
    let score_var = readings * (readings - 1.0) * (2.0 * readings + 5.0) / 18.0
        - robust::tie_correction(values);
    let z = if score == 0.0 || score_var <= 0.0 {
        0.0
    } else {
        (score - score.signum()) / score_var.sqrt()
    };
    let pairs = readings * (readings - 1.0) / 2.0;
    let untied = ((pairs - tied_pairs(days)) * (pairs - tied_pairs(values))).sqrt();
    Some(Agreement {
        score,
        score_var,
        z,
        chance: 2.0 * normal::chance_below(-z.abs())?,
        tau_a: score / pairs,
        tau_b: (0.0 < untied).then(|| score / untied),
    })
}

/// Chance of a tau this far from 0 in a random order, for long lists and with any ties.
///
/// No continuity correction, and the ties of the days count too, which sets it apart from
/// [`Agreement::chance`]. `None` as there, and when all days or all values are equal.
///
/// Source: Kendall (1975), Rank Correlation Methods, eq. 4.4; from memory.
pub fn asymptotic_chance(days: &[f64], values: &[f64]) -> Option<f64> {
    let score = score(days, values)?;
    let readings = count::as_f64(days.len());
    let ordered = readings * (readings - 1.0);
    let triples = |list: &[f64]| -> f64 {
        let ties = robust::tie_sizes(list).into_iter();
        ties.map(|size| size * (size - 1.0) * (size - 2.0)).sum()
    };
    let mut variance = ordered * (2.0 * readings + 5.0) / 18.0
        - robust::tie_correction(days)
        - robust::tie_correction(values)
        + 2.0 * tied_pairs(days) * tied_pairs(values) / ordered;
    if 2.0 < readings {
        variance += triples(days) * triples(values) / (9.0 * ordered * (readings - 2.0));
    }
    (0.0 < variance).then_some(())?;
    Some(2.0 * normal::chance_below(-score.abs() / variance.sqrt())?)
}

/// Chance of a tau this far from 0 in a random order, counted over all orders.
///
/// `None` as for [`agreement`], and with any tie among days or values. Work grows with the cube of
/// the count: for tens of readings, not thousands.
///
/// # Formula
/// The share of the orders of `n` things that have at most so many pairs turned round, twice.
///
/// Source: Kendall (1975), Rank Correlation Methods, ch. 5; from memory.
pub fn exact_chance(days: &[f64], values: &[f64]) -> Option<f64> {
    let score = score(days, values)?;
    if 0.0 < tied_pairs(days) + tied_pairs(values) {
        return None;
    }
    let pairs = days.len() * (days.len() - 1) / 2;
    let turned = robust::whole((count::as_f64(pairs) - score.abs()) / 2.0);
    if pairs <= 2 * turned {
        return Some(1.0);
    }
    // Share of orders of the first `taken` things by the number of pairs turned round.
    let mut shares = vec![1.0];
    for taken in 2..=days.len() {
        let length = (shares.len() + taken - 1).min(turned + 1);
        let mut window = 0.0;
        let mut next = Vec::with_capacity(length);
        for index in 0..length {
            window += shares.get(index).copied().unwrap_or_default();
            if let Some(leaving) = index.checked_sub(taken) {
                window -= shares.get(leaving).copied().unwrap_or_default();
            }
            next.push(window / count::as_f64(taken));
        }
        shares = next;
    }
    Some((2.0 * shares.iter().sum::<f64>()).min(1.0))
}

fn score(days: &[f64], values: &[f64]) -> Option<f64> {
    robust::all_finite(days)?;
    robust::all_finite(values)?;
    if days.len() != values.len() || days.len() < 2 {
        return None;
    }
    let mut score = 0.0;
    for (index, (day, value)) in days.iter().zip(values).enumerate() {
        for (earlier, past) in days.iter().zip(values).take(index) {
            score += sign(day - earlier) * sign(value - past);
        }
    }
    Some(score)
}

fn sign(value: f64) -> f64 {
    if value == 0.0 { 0.0 } else { value.signum() }
}

fn tied_pairs(values: &[f64]) -> f64 {
    let ties = robust::tie_sizes(values).into_iter();
    ties.map(|size| size * (size - 1.0) / 2.0).sum()
}

#[cfg(test)]
mod tests {
    use crate::domain::statistics::kendall::{agreement, asymptotic_chance, exact_chance};

    #[test]
    fn exact_chances_of_three_and_four_readings_are_those_counted_by_hand() {
        // Of the 6 orders of three things, 1, 2, 2 and 1 have 0, 1, 2 and 3 pairs turned round.
        let none_turned = exact_chance(&[0.0, 1.0, 2.0], &[1.0, 2.0, 3.0]).unwrap();
        assert!((none_turned - 2.0 / 6.0).abs() < 1e-15);
        assert_eq!(exact_chance(&[0.0, 1.0, 2.0], &[1.0, 3.0, 2.0]), Some(1.0));
        // Of the 24 orders of four things 1 has none turned round, 3 have one: 2 (1 + 3) / 24.
        let one_turned = exact_chance(&[0.0, 1.0, 2.0, 3.0], &[1.0, 2.0, 4.0, 3.0]).unwrap();
        assert!((one_turned - 8.0 / 24.0).abs() < 1e-15);
    }

    #[test]
    fn equal_weights_show_no_trend_and_too_few_have_no_answer() {
        let flat = agreement(&[0.0, 1.0, 2.0], &[950.0; 3]).unwrap();
        assert_eq!(
            (flat.score, flat.z, flat.chance, flat.tau_b),
            (0.0, 0.0, 1.0, None)
        );
        assert_eq!(asymptotic_chance(&[0.0, 1.0, 2.0], &[950.0; 3]), None);
        assert_eq!(exact_chance(&[0.0, 1.0, 2.0], &[950.0; 3]), None);
        assert_eq!(agreement(&[0.0], &[950.0]), None);
        assert_eq!(agreement(&[0.0, 1.0], &[950.0]), None);
        assert_eq!(agreement(&[0.0, 1.0], &[950.0, f64::NAN]), None);
    }
}

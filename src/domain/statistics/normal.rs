//! The normal distribution: chances, good far out in the tail.

use std::f64::consts::FRAC_1_SQRT_2;

/// Standard deviations on each side that hold 95 % of a normal distribution.
///
/// Source: NIST/SEMATECH e-Handbook 1.3.6.7.1 (1.96); the digits are the exact quantile of 0.975.
pub const Z_95: f64 = 1.959_963_984_540_054;

/// Chance that a standard normal value is below `z`, 0 to 1; not a number gives `None`.
///
/// # Formula
/// `erfc(-z / sqrt 2) / 2`
///
/// # Examples
/// ```
/// use perchlight::domain::statistics::normal;
/// assert_eq!(normal::chance_below(0.0), Some(0.5));
/// assert_eq!(normal::chance_below(f64::NAN), None);
/// ```
pub fn chance_below(z: f64) -> Option<f64> {
    (!z.is_nan()).then(|| libm::erfc(-z * FRAC_1_SQRT_2) / 2.0)
}

/// Chance that a normal value of this mean and variance is below `limit`.
///
/// With variance 0 the value is certain: 1 when the mean is below the limit, 0 when above, and
/// one half when it lies on it, which is the limit of the formula. `None` when the variance is
/// negative or something is not a number.
pub fn chance_below_limit(limit: f64, mean: f64, variance: f64) -> Option<f64> {
    if 0.0 < variance {
        return chance_below((limit - mean) / variance.sqrt());
    }
    let certain = variance == 0.0 && !limit.is_nan() && !mean.is_nan();
    certain.then(|| match mean.total_cmp(&limit) {
        std::cmp::Ordering::Less => 1.0,
        std::cmp::Ordering::Equal => 0.5,
        std::cmp::Ordering::Greater => 0.0,
    })
}

#[cfg(test)]
mod tests {
    use crate::domain::statistics::normal::{chance_below, chance_below_limit};

    /// z and the chance below it. Source: mpmath 1.4.1, `ncdf` with 40 digits.
    const CHANCES: [(f64, f64); 12] = [
        (-37.0, 5.725_571_222_524_577e-300),
        (-20.0, 2.753_624_118_606_233_7e-89),
        (-8.0, 6.220_960_574_271_784e-16),
        (-5.0, 2.866_515_718_791_939e-7),
        (-3.0, 0.001_349_898_031_630_094_6),
        (-2.83, 0.002_327_400_206_731_554_5),
        (-2.82, 0.002_401_182_474_189_251_6),
        (-1.0, 0.158_655_253_931_457_05),
        (-0.1, 0.460_172_162_722_971),
        (0.5, 0.691_462_461_274_013_1),
        (1.5, 0.933_192_798_731_141_9),
        (4.0, 0.999_968_328_758_166_9),
    ];

    #[test]
    fn chances_agree_with_a_forty_digit_table_to_a_trillionth_also_in_the_tail() {
        for (z, chance) in CHANCES {
            let ours = chance_below(z).unwrap();
            assert!((ours - chance).abs() <= 1e-12 * chance, "{z}: {ours}");
        }
    }

    #[test]
    fn infinite_limits_are_certain_and_nonsense_has_no_chance() {
        assert_eq!(chance_below(f64::INFINITY), Some(1.0));
        assert_eq!(chance_below(f64::NEG_INFINITY), Some(0.0));
        assert_eq!(chance_below(f64::NAN), None);
    }

    #[test]
    fn a_certain_value_is_below_on_or_above_the_limit() {
        assert_eq!(chance_below_limit(900.0, 899.0, 0.0), Some(1.0));
        assert_eq!(chance_below_limit(900.0, 900.0, 0.0), Some(0.5));
        assert_eq!(chance_below_limit(900.0, 901.0, 0.0), Some(0.0));
        assert_eq!(chance_below_limit(900.0, 901.0, -1.0), None);
        assert_eq!(chance_below_limit(f64::NAN, 901.0, 1.0), None);
    }
}

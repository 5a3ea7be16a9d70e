//! Student's t distribution with a whole number of degrees of freedom.

use std::f64::consts::PI;

use crate::domain::quantity::count;
use crate::domain::statistics::normal;

/// Steps after which a continued fraction or a search is given up; none met needs a tenth of it.
const MOST_STEPS: u32 = 1_000;

/// Chance that a t value lies further from 0 than `t`, on either side; relative error near 1e-13.
///
/// `None` with no degree of freedom or when `t` is not a number.
///
/// # Formula
/// `I_x(df / 2, 1 / 2)` at `x = df / (df + t^2)`, the regularised incomplete beta function.
///
/// Source: Abramowitz & Stegun (1964) 26.7.1 and 26.5.8.
pub fn chance_further_out(t: f64, degrees: usize) -> Option<f64> {
    if degrees == 0 || t.is_nan() {
        return None;
    }
    if t.is_infinite() {
        return Some(0.0);
    }
    let df = count::as_f64(degrees);
    let (outer, inner) = (df / (df + t * t), t * t / (df + t * t));
    let weight = outer.powf(df / 2.0) * inner.sqrt() / beta_with_half(degrees);
    Some(if outer < (df / 2.0 + 1.0) / (df / 2.0 + 2.5) {
        weight * beta_fraction(outer, df / 2.0, 0.5) * 2.0 / df
    } else {
        1.0 - weight * beta_fraction(inner, 0.5, df / 2.0) * 2.0
    })
}

/// Chance that a t value is below `t`, 0 to 1; small chances keep their digits.
///
/// `None` with no degree of freedom or when `t` is not a number.
pub fn chance_below(t: f64, degrees: usize) -> Option<f64> {
    let outer = chance_further_out(t, degrees)? / 2.0;
    Some(if t < 0.0 { outer } else { 1.0 - outer })
}

/// The distance from 0 that holds this share of t values between its two sides.
///
/// `None` with no degree of freedom or unless `0 < share < 1`. A share of 0.95 gives the factor of
/// a 95 % interval.
///
/// # Examples
/// ```
/// use perchlight::domain::statistics::student;
/// // NIST/SEMATECH e-Handbook 1.3.6.7.2: 2.228 for 10 degrees of freedom.
/// let factor = student::half_width(0.95, 10).unwrap();
/// assert!((factor - 2.228).abs() < 0.0005);
/// ```
pub fn half_width(share: f64, degrees: usize) -> Option<f64> {
    if !(0.0 < share && share < 1.0) || degrees == 0 {
        return None;
    }
    let df = count::as_f64(degrees);
    // The normal value lies inside, and the distribution is concave there: Newton's steps climb
    // towards the answer and never pass it.
    let mut t = normal::quantile(share.midpoint(1.0))?;
    for _ in 0..MOST_STEPS {
        let density =
            (1.0 + t * t / df).powf(-(df + 1.0) / 2.0) / (df.sqrt() * beta_with_half(degrees));
        let step = (chance_further_out(t, degrees)? - (1.0 - share)) / (2.0 * density);
        t += step;
        if step.abs() <= 1e-14 * t {
            break;
        }
    }
    Some(t)
}

/// Beta function of half the degrees of freedom and one half.
///
/// From `B(1/2, 1/2) = pi` or `B(1, 1/2) = 2` by `B(a + 1, 1/2) = B(a, 1/2) a / (a + 1/2)`.
fn beta_with_half(degrees: usize) -> f64 {
    let (start, first) = if degrees % 2 == 1 { (PI, 1) } else { (2.0, 2) };
    (first..degrees).step_by(2).fold(start, |beta, halves| {
        beta * count::as_f64(halves) / count::as_f64(halves + 1)
    })
}

/// Continued fraction of the incomplete beta function, by Lentz's forward method.
fn beta_fraction(x: f64, a: f64, b: f64) -> f64 {
    let mut inverse = 1.0 / (1.0 - (a + b) * x / (a + 1.0));
    let mut ratio = 1.0;
    let mut value = inverse;
    for step in 1..MOST_STEPS {
        let m = f64::from(step);
        let even = m * (b - m) * x / ((a + 2.0 * m - 1.0) * (a + 2.0 * m));
        inverse = 1.0 / (1.0 + even * inverse);
        ratio = 1.0 + even / ratio;
        value *= inverse * ratio;
        let odd = -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 2.0 * m + 1.0));
        inverse = 1.0 / (1.0 + odd * inverse);
        ratio = 1.0 + odd / ratio;
        value *= inverse * ratio;
        if (inverse * ratio - 1.0).abs() < 1e-16 {
            break;
        }
    }
    value
}

#[cfg(test)]
mod tests {
    use std::f64::consts::PI;

    use crate::domain::statistics::student::{chance_below, chance_further_out, half_width};

    /// t, degrees of freedom, chance on both sides further out. Source: mpmath 1.4.1,
    /// `betainc(df/2, 1/2, 0, df/(df+t^2), regularized=True)` with 40 digits.
    const CHANCES: [(f64, usize, f64); 8] = [
        (0.1, 1, 0.936_548_965_138_892_9),
        (0.5, 2, 0.666_666_666_666_666_6),
        (1.0, 3, 0.391_002_218_955_770_64),
        (2.5, 3, 0.087_706_647_008_065_55),
        (2.0, 7, 0.085_619_328_562_976_08),
        (30.0, 12, 1.177_318_190_701_894_8e-12),
        (119.0, 12, 8.313_548_317_154_803e-20),
        (3.0, 998, 0.002_766_844_012_033_575),
    ];

    #[test]
    fn chances_agree_with_a_forty_digit_table() {
        for (t, degrees, chance) in CHANCES {
            let ours = chance_further_out(t, degrees).unwrap();
            assert!(
                (ours - chance).abs() <= 1e-12 * chance,
                "{t}, {degrees}: {ours}"
            );
        }
    }

    #[test]
    fn one_degree_of_freedom_is_the_arc_tangent() {
        for t in [-30.0_f64, -1.0, -0.2, 0.0, 0.7, 5.0] {
            let exact = 0.5 + t.atan() / PI;
            assert!((chance_below(t, 1).unwrap() - exact).abs() < 1e-14, "{t}");
        }
    }

    #[test]
    fn half_widths_agree_with_the_printed_table() {
        // Source: NIST/SEMATECH e-Handbook 1.3.6.7.2, column 0.975, three decimals (from memory).
        for (degrees, printed) in [
            (1, 12.706),
            (2, 4.303),
            (5, 2.571),
            (30, 2.042),
            (100, 1.984),
        ] {
            let ours = half_width(0.95, degrees).unwrap();
            assert!((ours - printed).abs() <= 0.0005, "{degrees}: {ours}");
        }
    }

    #[test]
    fn nothing_to_go_by_gives_no_chance() {
        assert_eq!(chance_below(1.0, 0), None);
        assert_eq!(chance_below(f64::NAN, 3), None);
        assert_eq!(half_width(0.95, 0), None);
        assert_eq!(half_width(1.0, 3), None);
        assert_eq!(half_width(0.0, 3), None);
        assert_eq!(chance_further_out(f64::INFINITY, 3), Some(0.0));
    }
}

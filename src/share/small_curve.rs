//! The small curve of a weight beside its number: which way it goes, and how far it is from a call.

use crate::domain::quantity::count::rounded;

/// Width and height of the picture, in its own units.
pub const SIZE: (i32, i32) = (76, 36);
/// Room around the curve for the dot at its end.
const EDGE: f64 = 5.0;

/// A curve, ready to draw.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SmallCurve {
    /// The line as an SVG path.
    pub line: String,
    /// Where the last weight stands, in the picture's own units.
    pub last: (i32, i32),
    /// The height of the weight at which somebody is called.
    pub call: Option<i32>,
}

/// The curve through days and grams in order, with the weight at which somebody is called; `None` with fewer
/// than two weights.
pub fn small_curve(points: &[(f64, f64)], call_g: Option<f64>) -> Option<SmallCurve> {
    let ((first, _), (last, _)) = (*points.first()?, *points.last()?);
    let days = last - first;
    if days <= 0.0 {
        return None;
    }
    let grams = points.iter().map(|(_, grams)| *grams).chain(call_g);
    let (low, high) = grams.fold((f64::MAX, f64::MIN), |(low, high), grams| {
        (low.min(grams), high.max(grams))
    });
    // What weighs the same all the time lies in the middle.
    let (low, range) = if high - low < 1.0 {
        (low - 1.0, 2.0)
    } else {
        (low, high - low)
    };
    let (width, height) = (f64::from(SIZE.0), f64::from(SIZE.1));
    let across = |day: f64| rounded(EDGE + (width - 2.0 * EDGE) * (day - first) / days);
    let down = |grams: f64| rounded(height - EDGE - (height - 2.0 * EDGE) * (grams - low) / range);
    let places: Vec<(i32, i32)> = points
        .iter()
        .map(|(day, grams)| (across(*day), down(*grams)))
        .collect();
    let pieces = places.iter().map(|(x, y)| format!("{x} {y}"));
    let line = format!("M{}", pieces.collect::<Vec<_>>().join("L"));
    Some(SmallCurve {
        line,
        last: *places.last()?,
        call: call_g.map(down),
    })
}

#[cfg(test)]
mod tests {
    use crate::share::small_curve::*;

    #[test]
    fn the_curve_runs_from_edge_to_edge_and_the_call_weight_lies_below_it() {
        // 1,000 g on top (y = 5), 900 g at the foot (y = 36 - 5); day 0 at x = 5, day 4 at x = 76 - 5.
        let curve = small_curve(&[(0.0, 1_000.0), (2.0, 950.0), (4.0, 1_000.0)], Some(900.0));
        let curve = curve.unwrap();
        assert_eq!(curve.line, "M5 5L38 18L71 5");
        assert_eq!((curve.last, curve.call), ((71, 5), Some(31)));
    }

    #[test]
    fn a_level_weight_lies_in_the_middle_and_one_weight_is_no_curve() {
        let curve = small_curve(&[(0.0, 900.0), (1.0, 900.0)], None).unwrap();
        assert_eq!((curve.line.as_str(), curve.call), ("M5 18L71 18", None));
        assert_eq!(small_curve(&[(0.0, 900.0)], None), None);
        assert_eq!(small_curve(&[], Some(900.0)), None);
        assert_eq!(small_curve(&[(1.0, 900.0), (1.0, 910.0)], None), None);
    }
}

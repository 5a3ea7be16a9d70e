//! The ordinary straight line through readings, and what it says about days to come.

use crate::domain::quantity::count;
use crate::domain::statistics::{robust, student};

/// Share of an interval that holds the truth.
const SHARE: f64 = 0.95;

/// Least-squares line through values at their days.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// Change a day.
    pub slope: f64,
    /// Value at day 0.
    pub intercept: f64,
    /// What the readings say about the errors; `None` for 2 readings, which any line fits.
    pub errors: Option<Errors>,
    mean_day: f64,
    day_spread: f64,
    readings: usize,
}

/// How sure a line is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Errors {
    /// Readings less 2.
    pub degrees: usize,
    /// Standard deviation of the readings around the line.
    pub sd: f64,
    /// Standard error of the slope.
    pub slope_se: f64,
    /// Standard error of the intercept.
    pub intercept_se: f64,
    /// Distance from the slope to either end of its 95 % interval.
    pub slope_reach_95: f64,
    /// Chance of a slope this far from 0 if there were none, 0 to 1.
    pub slope_chance: f64,
    /// Share of the values' variance that the line takes up; `None` when all values are equal.
    pub r_squared: Option<f64>,
    reach_factor: f64,
}

/// What a line says about one day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prediction {
    /// The line at that day.
    pub mean: f64,
    /// Distance to either end of the 95 % interval for the line.
    pub mean_reach_95: f64,
    /// Distance to either end of the 95 % interval for a new reading.
    pub reading_reach_95: f64,
    /// Standard error of a new reading around [`mean`](Self::mean).
    pub reading_se: f64,
    degrees: usize,
}

impl Prediction {
    /// Chance that one new reading is below `limit`, 0 to 1, by Student's t.
    ///
    /// `None` when the limit is not a number. A line without any error is certain.
    pub fn chance_below(&self, limit: f64) -> Option<f64> {
        let gap = limit - self.mean;
        let deviations = if gap == 0.0 {
            0.0
        } else {
            gap / self.reading_se
        };
        student::chance_below(deviations, self.degrees)
    }
}

/// The least-squares line.
///
/// `None` for fewer than 2 different days, lists of different length or values that are not finite.
///
/// Source: NIST/SEMATECH e-Handbook 4.1.4.1 and 4.5.1; any statistics book.
pub fn least_squares(days: &[f64], values: &[f64]) -> Option<Line> {
    robust::all_finite(days)?;
    robust::all_finite(values)?;
    if days.len() != values.len() || days.len() < 2 {
        return None;
    }
    let readings = count::as_f64(days.len());
    let mean_day = days.iter().sum::<f64>() / readings;
    let mean_value = values.iter().sum::<f64>() / readings;
    let pairs = || days.iter().zip(values);
    let square = |value: f64| value * value;
    let day_spread: f64 = days.iter().map(|day| square(day - mean_day)).sum();
    let both: f64 = pairs()
        .map(|(day, value)| (day - mean_day) * (value - mean_value))
        .sum();
    if day_spread <= 0.0 {
        return None;
    }
    let slope = both / day_spread;
    let intercept = mean_value - slope * mean_day;
    let left: f64 = pairs()
        .map(|(day, value)| square(value - mean_value - slope * (day - mean_day)))
        .sum();
    let value_spread: f64 = values.iter().map(|value| square(value - mean_value)).sum();
    Some(Line {
        slope,
        intercept,
        errors: errors(days.len(), slope, left, mean_day, day_spread, value_spread),
        mean_day,
        day_spread,
        readings: days.len(),
    })
}

fn errors(
    readings: usize,
    slope: f64,
    left: f64,
    mean_day: f64,
    day_spread: f64,
    value_spread: f64,
) -> Option<Errors> {
    let degrees = readings.checked_sub(2)?;
    let reach_factor = student::half_width(SHARE, degrees)?;
    let sd = (left / count::as_f64(degrees)).sqrt();
    let slope_se = sd / day_spread.sqrt();
    let of_intercept = 1.0 / count::as_f64(readings) + mean_day * mean_day / day_spread;
    let deviations = if slope == 0.0 { 0.0 } else { slope / slope_se };
    Some(Errors {
        degrees,
        sd,
        slope_se,
        intercept_se: sd * of_intercept.sqrt(),
        slope_reach_95: reach_factor * slope_se,
        slope_chance: student::chance_further_out(deviations, degrees)?,
        r_squared: (0.0 < value_spread).then(|| 1.0 - left / value_spread),
        reach_factor,
    })
}

impl Line {
    /// What the line says about a day, past or to come; `None` for 2 readings or no finite day.
    pub fn predict(&self, day: f64) -> Option<Prediction> {
        let errors = self.errors?;
        let away = day - self.mean_day;
        let of_mean = 1.0 / count::as_f64(self.readings) + away * away / self.day_spread;
        let reading_se = errors.sd * (1.0 + of_mean).sqrt();
        day.is_finite().then(|| Prediction {
            mean: self.intercept + self.slope * day,
            mean_reach_95: errors.reach_factor * errors.sd * of_mean.sqrt(),
            reading_reach_95: errors.reach_factor * reading_se,
            reading_se,
            degrees: errors.degrees,
        })
    }

    /// The day on which the line falls through `limit`; `None` unless it falls. It may be past.
    pub fn day_below(&self, limit: f64) -> Option<f64> {
        (self.slope < 0.0 && limit.is_finite()).then(|| (limit - self.intercept) / self.slope)
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::statistics::line::least_squares;

    #[test]
    fn two_readings_make_a_line_without_errors() {
        let line = least_squares(&[0.0, 2.0], &[700.0, 690.0]).unwrap();
        assert_eq!(
            (line.slope, line.intercept, line.errors),
            (-5.0, 700.0, None)
        );
        assert_eq!(line.predict(3.0), None);
        assert_eq!(line.day_below(650.0), Some(10.0));
    }

    #[test]
    fn a_perfect_line_is_certain_on_both_sides_of_the_limit() {
        let line = least_squares(&[0.0, 1.0, 2.0], &[700.0, 690.0, 680.0]).unwrap();
        let tomorrow = line.predict(3.0).unwrap();
        assert_eq!(tomorrow.mean, 670.0);
        assert_eq!(tomorrow.chance_below(669.0), Some(0.0));
        assert_eq!(tomorrow.chance_below(670.0), Some(0.5));
        assert_eq!(tomorrow.chance_below(671.0), Some(1.0));
        assert_eq!(tomorrow.chance_below(f64::NAN), None);
    }

    #[test]
    fn a_line_that_does_not_fall_meets_no_limit_and_one_day_makes_no_line() {
        let flat = least_squares(&[0.0, 1.0], &[700.0, 700.0]).unwrap();
        assert_eq!(flat.day_below(650.0), None);
        assert_eq!(least_squares(&[1.0, 1.0], &[700.0, 710.0]), None);
        assert_eq!(least_squares(&[1.0], &[700.0]), None);
        assert_eq!(least_squares(&[1.0, 2.0], &[700.0]), None);
        assert_eq!(least_squares(&[1.0, f64::NAN], &[700.0, 710.0]), None);
    }
}

//! Which way a weight goes, in the few words that a sentence has room for.

use crate::domain::weight::mornings::{LEVEL_PCT_PER_DAY, MOST_LOSS_PCT_PER_DAY};
use crate::domain::weight::trend::PlainSlope;

/// Which way a weight goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Course {
    /// No steeper than [`LEVEL_PCT_PER_DAY`].
    Steady,
    /// Steady, but for the last morning.
    SteadyUntilToday,
    /// Gains so many grams a day.
    Gaining(f64),
    /// Loses so many grams a day.
    Losing(f64),
}

impl Course {
    /// The course of a slope; `last_loss_pct` is the loss from the morning before to the last one, per
    /// cent, which sets the last morning apart beyond the steepest loss of a steady weight (1 %), in
    /// either direction.
    pub fn of(slope: &PlainSlope, last_loss_pct: Option<f64>) -> Self {
        let grams = slope.g_per_day.value;
        if slope.pct_per_day.value.abs() > LEVEL_PCT_PER_DAY {
            return if grams < 0.0 {
                Self::Losing(-grams)
            } else {
                Self::Gaining(grams)
            };
        }
        let is_apart = last_loss_pct.is_some_and(|loss| loss.abs() > -MOST_LOSS_PCT_PER_DAY);
        if is_apart {
            Self::SteadyUntilToday
        } else {
            Self::Steady
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::weight::course::*;
    use crate::domain::weight::trend::Interval;

    fn course(pct_per_day: f64, last_loss_pct: f64) -> Course {
        let flat = |value| Interval {
            value,
            low: value,
            high: value,
        };
        // Of 1,000 g, so that 1 % is 10 g.
        let slope = PlainSlope {
            g_per_day: flat(pct_per_day * 10.0),
            pct_per_day: flat(pct_per_day),
            readings: 8,
        };
        Course::of(&slope, Some(last_loss_pct))
    }

    #[test]
    fn a_slope_up_to_a_fifth_of_a_per_cent_a_day_is_steady() {
        assert_eq!(course(0.2, 0.0), Course::Steady);
        assert_eq!(course(-0.2, 0.0), Course::Steady);
        assert_eq!(course(0.3, 0.0), Course::Gaining(3.0));
        assert_eq!(course(-0.3, 0.0), Course::Losing(3.0));
    }

    #[test]
    fn one_morning_more_than_a_per_cent_off_stands_apart() {
        assert_eq!(course(0.0, 1.0), Course::Steady);
        assert_eq!(course(0.0, 1.2), Course::SteadyUntilToday);
        assert_eq!(course(0.0, -1.2), Course::SteadyUntilToday);
    }
}

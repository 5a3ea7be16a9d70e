//! From when until when cooling formula may be fed.

use crate::domain::formula::cooling::{CoolingError, CoolingLaw, Reading};
use crate::domain::formula::serving_heat::Serving;

/// Half-time taken before a second reading, 25 min: the distance to the room halves in that time.
///
/// Standing: ours, an estimate for a full 60 ml syringe; no published value for syringes was found.
pub const USUAL_HALF_TIME_MIN: f64 = 25.0;

/// Half-times to allow for before a second reading, 18 to 41 min, quick and slow.
///
/// Standing: ours, estimates: a 60 ml syringe in moving air, 150 ml in an open cup. Smaller syringes
/// are quicker (10 ml about 15 min).
pub const HALF_TIME_BOUNDS_MIN: (f64, f64) = (18.0, 41.0);

/// Minutes at which cooling formula passes both ends of a serving window; below zero is in the past.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ServingWindow {
    /// No longer too warm.
    pub ready_min: f64,
    /// Must be fed by now.
    pub feed_by_min: f64,
}

/// The window before a second reading, for a usual vessel and for both bounds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GuessedWindow {
    /// For the quickest cooling, [`HALF_TIME_BOUNDS_MIN`]`.0`: feed by this one.
    pub quick: ServingWindow,
    /// For [`USUAL_HALF_TIME_MIN`].
    pub usual: ServingWindow,
    /// For the slowest cooling, [`HALF_TIME_BOUNDS_MIN`]`.1`: surely ready by this one.
    pub slow: ServingWindow,
}

impl CoolingLaw {
    /// When cooling formula may be fed.
    ///
    /// # Errors
    /// [`CoolingError::NotWarmerThanRoom`] when the formula started no warmer than the room,
    /// [`CoolingError::NeverReached`] in a room as warm as the coldest formula.
    pub fn serving_window(&self, serving: Serving) -> Result<ServingWindow, CoolingError> {
        self.checked_warm(self.start_c)?;
        Ok(ServingWindow {
            ready_min: self.minute_at(serving.to_c)?,
            feed_by_min: self.minute_at(serving.from_c)?,
        })
    }
}

/// When formula may be fed, from one reading and a guessed half-time with wide bounds.
///
/// # Errors
/// As [`CoolingLaw::from_half_time`] and [`CoolingLaw::serving_window`].
pub fn guessed_window(
    room_c: f64,
    reading: Reading,
    serving: Serving,
) -> Result<GuessedWindow, CoolingError> {
    let window = |half_time_min| {
        CoolingLaw::from_half_time(room_c, reading, half_time_min)?.serving_window(serving)
    };
    Ok(GuessedWindow {
        quick: window(HALF_TIME_BOUNDS_MIN.0)?,
        usual: window(USUAL_HALF_TIME_MIN)?,
        slow: window(HALF_TIME_BOUNDS_MIN.1)?,
    })
}

#[cfg(test)]
mod tests {
    use crate::domain::formula::cooling::{CoolingError, CoolingLaw, Reading};
    use crate::domain::formula::serving_heat::Serving;
    use crate::domain::formula::serving_window::guessed_window;

    const SERVING: Serving = Serving {
        from_c: 38.0,
        to_c: 41.0,
    };

    fn reading(at_min: f64, temp_c: f64) -> Reading {
        Reading { at_min, temp_c }
    }

    #[test]
    fn formula_no_warmer_than_the_room_has_no_window() {
        for temp_c in [21.9, 22.0] {
            assert_eq!(
                guessed_window(22.0, reading(0.0, temp_c), SERVING),
                Err(CoolingError::NotWarmerThanRoom {
                    temp_c,
                    room_c: 22.0
                })
            );
        }
        assert!(guessed_window(22.0, reading(0.0, 22.1), SERVING).is_ok());
        let warming = CoolingLaw::through(22.0, reading(0.0, 10.0), reading(5.0, 15.0)).unwrap();
        assert!(matches!(
            warming.serving_window(SERVING),
            Err(CoolingError::NotWarmerThanRoom { .. })
        ));
    }

    #[test]
    fn a_room_as_warm_as_the_coldest_formula_is_refused() {
        assert!(guessed_window(37.9, reading(0.0, 44.0), SERVING).is_ok());
        for room_c in [38.0, 38.1] {
            assert_eq!(
                guessed_window(room_c, reading(0.0, 44.0), SERVING),
                Err(CoolingError::NeverReached {
                    target_c: 38.0,
                    room_c
                })
            );
        }
    }

    #[test]
    fn the_quick_bound_is_first_and_each_window_runs_forward() {
        let guessed = guessed_window(22.0, reading(0.0, 44.0), SERVING).unwrap();
        assert!(guessed.quick.feed_by_min < guessed.usual.feed_by_min);
        assert!(guessed.usual.ready_min < guessed.slow.ready_min);
        for window in [guessed.quick, guessed.usual, guessed.slow] {
            assert!(window.ready_min < window.feed_by_min);
        }
    }
}

//! How formula cools in the cup or syringe: when it is ready and when it is too cold.
//!
//! Newton's law, one lump in still air. Minutes count from any moment that the caller picks; all
//! readings and answers of one law share it.

use thiserror::Error;

/// Why a cooling law or a time cannot be told.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum CoolingError {
    /// A reading, the room or a half-time is not a finite number.
    #[error("a time or temperature is not a number")]
    NotANumber,
    /// Two readings at one moment: the same reading twice, or two that contradict.
    #[error("two readings at minute {at_min}")]
    SameMoment {
        /// The moment.
        at_min: f64,
    },
    /// A later reading stands before an earlier one.
    #[error("reading at minute {later_min} stands before the one at minute {earlier_min}")]
    WrongOrder {
        /// Minute of the reading given first.
        later_min: f64,
        /// Minute of the reading given after it.
        earlier_min: f64,
    },
    /// Both readings are the same: no cooling seen yet, wait longer.
    #[error("temperature did not change from {temp_c} C")]
    Unchanged {
        /// The temperature.
        temp_c: f64,
    },
    /// The reading moved away from the room's temperature: measured unevenly, or warmed.
    #[error("temperature moved from {from_c} to {to_c} C, away from the room")]
    MovesAway {
        /// The earlier temperature.
        from_c: f64,
        /// The later temperature.
        to_c: f64,
    },
    /// The readings lie at or on both sides of the room's temperature.
    #[error("readings {from_c} and {to_c} C are not on one side of the room at {room_c} C")]
    CrossesRoom {
        /// The earlier temperature.
        from_c: f64,
        /// The later temperature.
        to_c: f64,
        /// The room.
        room_c: f64,
    },
    /// The formula is no warmer than the room: it will not cool.
    #[error("formula at {temp_c} C is not warmer than the room at {room_c} C")]
    NotWarmerThanRoom {
        /// The formula.
        temp_c: f64,
        /// The room.
        room_c: f64,
    },
    /// A half-time is zero or below.
    #[error("half-time must be above 0 min: {given_min}")]
    HalfTime {
        /// The half-time given.
        given_min: f64,
    },
    /// The target is the room's temperature or lies beyond it.
    #[error("{target_c} C is never reached in a room at {room_c} C")]
    NeverReached {
        /// The temperature asked for.
        target_c: f64,
        /// The room.
        room_c: f64,
    },
}

/// One temperature at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// Minutes since the caller's zero.
    pub at_min: f64,
    /// Temperature in Celsius.
    pub temp_c: f64,
}

/// A cooling curve: `T(t) = room + (start - room) x exp(-rate x t)`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoolingLaw {
    /// The room, in Celsius.
    pub room_c: f64,
    /// The temperature at minute zero, in Celsius.
    pub start_c: f64,
    /// Share of the distance to the room lost, in 1/min, above 0.
    pub rate_per_min: f64,
}

impl CoolingLaw {
    /// The law through two readings in a room of known temperature.
    ///
    /// Also holds for a cold thing that warms up in the room.
    ///
    /// # Formula
    /// `rate = ln((T1 - room) / (T2 - room)) / (t2 - t1)`.
    ///
    /// # Errors
    /// [`CoolingError::NotANumber`], [`CoolingError::SameMoment`], [`CoolingError::WrongOrder`],
    /// [`CoolingError::CrossesRoom`], [`CoolingError::Unchanged`], [`CoolingError::MovesAway`].
    ///
    /// # Examples
    /// ```
    /// use perchlight::domain::formula::cooling::{CoolingLaw, Reading};
    /// // From 62 to 42 C in a room at 22 C the distance halves in 10 min; in 10 more it halves again.
    /// let first = Reading { at_min: 0.0, temp_c: 62.0 };
    /// let second = Reading { at_min: 10.0, temp_c: 42.0 };
    /// let law = CoolingLaw::through(22.0, first, second).unwrap();
    /// assert!((law.temp_c_at(20.0) - 32.0).abs() < 1e-9);
    /// assert!(CoolingLaw::through(22.0, second, first).is_err());
    /// ```
    pub fn through(room_c: f64, first: Reading, second: Reading) -> Result<Self, CoolingError> {
        if !room_c.is_finite() {
            return Err(CoolingError::NotANumber);
        }
        checked_order(&[first, second])?;
        let first_above_c = first.temp_c - room_c;
        let second_above_c = second.temp_c - room_c;
        let (from_c, to_c) = (first.temp_c, second.temp_c);
        let ratio = first_above_c / second_above_c;
        if !(0.0 < ratio && ratio.is_finite()) {
            return Err(CoolingError::CrossesRoom {
                from_c,
                to_c,
                room_c,
            });
        }
        let rate_per_min = ratio.ln() / (second.at_min - first.at_min);
        if rate_per_min < 0.0 {
            return Err(CoolingError::MovesAway { from_c, to_c });
        }
        if rate_per_min <= 0.0 {
            return Err(CoolingError::Unchanged { temp_c: from_c });
        }
        Ok(Self::from_rate(room_c, first, rate_per_min))
    }

    /// The law through one reading when the half-time is taken from elsewhere.
    ///
    /// # Errors
    /// [`CoolingError::NotANumber`], [`CoolingError::HalfTime`] at or below zero,
    /// [`CoolingError::NotWarmerThanRoom`].
    pub fn from_half_time(
        room_c: f64,
        reading: Reading,
        half_time_min: f64,
    ) -> Result<Self, CoolingError> {
        let numbers = [room_c, reading.at_min, reading.temp_c, half_time_min];
        if !numbers.iter().all(|number| number.is_finite()) {
            return Err(CoolingError::NotANumber);
        }
        if half_time_min <= 0.0 {
            return Err(CoolingError::HalfTime {
                given_min: half_time_min,
            });
        }
        let rate_per_min = std::f64::consts::LN_2 / half_time_min;
        let law = Self::from_rate(room_c, reading, rate_per_min);
        law.checked_warm(reading.temp_c)?;
        Ok(law)
    }

    fn from_rate(room_c: f64, reading: Reading, rate_per_min: f64) -> Self {
        let above_c = reading.temp_c - room_c;
        Self {
            room_c,
            start_c: room_c + above_c * (rate_per_min * reading.at_min).exp(),
            rate_per_min,
        }
    }

    /// Refuses formula that will not cool.
    ///
    /// # Errors
    /// [`CoolingError::NotWarmerThanRoom`].
    pub fn checked_warm(&self, temp_c: f64) -> Result<(), CoolingError> {
        if self.room_c < temp_c {
            return Ok(());
        }
        Err(CoolingError::NotWarmerThanRoom {
            temp_c,
            room_c: self.room_c,
        })
    }

    /// Temperature at that minute, in Celsius.
    pub fn temp_c_at(&self, at_min: f64) -> f64 {
        self.room_c + (self.start_c - self.room_c) * (-self.rate_per_min * at_min).exp()
    }

    /// Minute at which the curve passes `target_c`; below zero is before the caller's zero.
    ///
    /// # Formula
    /// `ln((start - room) / (target - room)) / rate`.
    ///
    /// # Errors
    /// [`CoolingError::NeverReached`] when the target is the room's temperature or beyond it.
    pub fn minute_at(&self, target_c: f64) -> Result<f64, CoolingError> {
        let ratio = (self.start_c - self.room_c) / (target_c - self.room_c);
        if 0.0 < ratio && ratio.is_finite() {
            return Ok(ratio.ln() / self.rate_per_min);
        }
        Err(CoolingError::NeverReached {
            target_c,
            room_c: self.room_c,
        })
    }
}

/// Refuses readings that are not numbers, out of order, or two at one moment.
fn checked_order(readings: &[Reading]) -> Result<(), CoolingError> {
    let is_number = |reading: &Reading| reading.at_min.is_finite() && reading.temp_c.is_finite();
    if !readings.iter().all(is_number) {
        return Err(CoolingError::NotANumber);
    }
    for (earlier, later) in readings.iter().zip(readings.iter().skip(1)) {
        if later.at_min < earlier.at_min {
            return Err(CoolingError::WrongOrder {
                later_min: earlier.at_min,
                earlier_min: later.at_min,
            });
        }
        if later.at_min <= earlier.at_min {
            return Err(CoolingError::SameMoment {
                at_min: later.at_min,
            });
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use crate::domain::formula::cooling::{CoolingError, CoolingLaw, Reading};

    fn reading(at_min: f64, temp_c: f64) -> Reading {
        Reading { at_min, temp_c }
    }

    #[test]
    fn each_bad_pair_of_readings_has_its_own_name() {
        let through = |first, second| CoolingLaw::through(22.0, first, second).unwrap_err();
        let first = reading(5.0, 44.0);
        assert_eq!(
            through(first, first),
            CoolingError::SameMoment { at_min: 5.0 }
        );
        assert_eq!(
            through(first, reading(4.0, 43.0)),
            CoolingError::WrongOrder {
                later_min: 5.0,
                earlier_min: 4.0
            }
        );
        assert_eq!(
            through(first, reading(9.0, 44.0)),
            CoolingError::Unchanged { temp_c: 44.0 }
        );
        assert_eq!(
            through(first, reading(9.0, 44.1)),
            CoolingError::MovesAway {
                from_c: 44.0,
                to_c: 44.1
            }
        );
        for at_or_below_room_c in [22.0, 21.9] {
            assert_eq!(
                through(first, reading(9.0, at_or_below_room_c)),
                CoolingError::CrossesRoom {
                    from_c: 44.0,
                    to_c: at_or_below_room_c,
                    room_c: 22.0
                }
            );
        }
        assert_eq!(
            through(first, reading(9.0, f64::NAN)),
            CoolingError::NotANumber
        );
    }

    #[test]
    fn a_half_time_of_zero_or_less_is_refused() {
        for given_min in [0.0, -1.0] {
            assert_eq!(
                CoolingLaw::from_half_time(22.0, reading(0.0, 44.0), given_min),
                Err(CoolingError::HalfTime { given_min })
            );
        }
    }
}

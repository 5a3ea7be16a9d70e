//! Where a weight stands and where it goes: level and slope from readings at uneven times.
//!
//! A Kalman filter over [`Dynamics`], with readings `y = L + N(0, v_reading)`. It starts
//! from a known level; a slope that is not known then is made by the first later reading. The variances
//! are given, not estimated, and each reading brings its own.
//!
//! Source: Harvey (1989), Forecasting, Structural Time Series Models and the Kalman Filter, ch. 9
//! (continuous time), and Durbin & Koopman (2012), ch. 5 (slope without a prior); from memory.

use std::f64::consts::TAU;

use crate::domain::statistics::dynamics::{
    Dynamics, KalmanError, Noise, above_zero, at_least_zero, finite,
};
use crate::domain::statistics::normal;

/// Readings closer than a minute count as taken at the same moment while the slope is unknown.
///
/// Ours: two readings seconds apart say nothing about grams a day and would give a slope with a
/// variance so large that rounding errors spoil what follows.
pub const SAME_MOMENT_DAYS: f64 = 1.0 / 1_440.0;

/// The level in grams and, once known, the slope.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// Most likely weight, g.
    pub level_g: f64,
    /// Variance of the level, g².
    pub level_var: f64,
    /// `None` while one moment's readings are all there is.
    pub slope: Option<Slope>,
}

impl Estimate {
    pub(crate) fn is_finite(&self) -> bool {
        let is_sound = |slope: Slope| {
            slope.g_per_day.is_finite() && slope.var.is_finite() && slope.level_cov.is_finite()
        };
        self.level_g.is_finite() && self.level_var.is_finite() && self.slope.is_none_or(is_sound)
    }
}

/// The slope of a level, and how it hangs together with the level.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slope {
    /// Most likely gain or loss, g/day.
    pub g_per_day: f64,
    /// Variance of the slope, (g/day)².
    pub var: f64,
    /// Covariance of level and slope, g²/day.
    pub level_cov: f64,
}

/// The level some days ahead.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Forecast {
    /// Expected level, g.
    pub level_g: f64,
    /// Variance of the level, g².
    pub level_var: f64,
}

impl Forecast {
    /// Chance that the level, free of scale noise, is below `limit_g`; `None` if that is not a number.
    pub fn chance_level_below(&self, limit_g: f64) -> Option<f64> {
        normal::chance_below_limit(limit_g, self.level_g, self.level_var)
    }
}

/// How a reading lay to what was expected of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Innovation {
    /// The reading that was expected, g.
    pub expected_g: f64,
    /// Variance of the expected reading, scale noise included, g².
    pub expected_var: f64,
    /// Distance of the reading from the expected one, in standard deviations.
    pub standardised: f64,
}

impl Innovation {
    /// Natural logarithm of the density at which this reading was expected.
    pub fn log_likelihood(&self) -> f64 {
        -0.5 * ((TAU * self.expected_var).ln() + self.standardised * self.standardised)
    }
}

/// Level and slope as both are known together.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Joint {
    pub(crate) level_g: f64,
    pub(crate) slope: Slope,
    pub(crate) level_var: f64,
}

/// What the readings so far say.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Belief {
    /// The level was known some days ago; nothing is known of the slope since.
    LevelOnly {
        level_g: f64,
        level_var: f64,
        days_since: f64,
    },
    Joint(Joint),
}

/// One pass through the readings, a step at a time.
///
/// # Examples
/// ```
/// use perchlight::domain::statistics::dynamics::Dynamics;
/// use perchlight::domain::statistics::kalman::{Estimate, Filter};
/// let known = Estimate { level_g: 700.0, level_var: 16.0, slope: None };
/// let mut filter = Filter::starting_from(Dynamics::trend(4.0, 0.5)?, known)?;
/// filter.predict(3.0)?;
/// filter.update(724.0, 16.0)?;
/// // Two weights make a straight line: 24 g in 3 days.
/// assert_eq!(filter.estimate().and_then(|now| now.slope).map(|slope| slope.g_per_day), Some(8.0));
/// assert!(filter.update(f64::NAN, 16.0).is_err());
/// # Ok::<(), perchlight::domain::statistics::dynamics::KalmanError>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Filter {
    pub(crate) dynamics: Dynamics,
    pub(crate) belief: Belief,
}

impl Filter {
    /// A filter that starts from something known, such as a first reading.
    ///
    /// Without a slope in `known` the slope starts unknown.
    ///
    /// # Errors
    /// [`KalmanError`] when a value is not finite or a variance is impossible.
    pub fn starting_from(dynamics: Dynamics, known: Estimate) -> Result<Self, KalmanError> {
        let level_g = finite(known.level_g)?;
        let level_var = above_zero(known.level_var)?;
        let belief = match known.slope {
            Some(slope) => {
                finite(slope.g_per_day)?;
                at_least_zero(slope.var)?;
                if level_var * slope.var < finite(slope.level_cov)? * slope.level_cov {
                    return Err(KalmanError::ImpossibleCovariance(slope.level_cov));
                }
                Belief::Joint(Joint {
                    level_g,
                    slope,
                    level_var,
                })
            }
            None => Belief::LevelOnly {
                level_g,
                level_var,
                days_since: 0.0,
            },
        };
        Ok(Self { dynamics, belief })
    }

    /// Goes ahead by some days, at least 0.
    ///
    /// # Errors
    /// [`KalmanError::BackInTime`] or [`KalmanError::NotFinite`].
    pub fn predict(&mut self, days: f64) -> Result<(), KalmanError> {
        if finite(days)? < 0.0 {
            return Err(KalmanError::BackInTime(days));
        }
        self.belief = match self.belief {
            Belief::LevelOnly {
                level_g,
                level_var,
                days_since,
            } => Belief::LevelOnly {
                level_g,
                level_var,
                days_since: finite(days_since + days)?,
            },
            Belief::Joint(joint) => Belief::Joint(joint.ahead(days, self.dynamics.noise(days))?),
        };
        Ok(())
    }

    /// How a reading of this variance lies to what is expected now, without taking it in.
    ///
    /// `None` while the readings so far do not make an expectation, or if the variance is not above 0.
    pub fn innovation(&self, reading_g: f64, reading_var: f64) -> Option<Innovation> {
        let now = self.estimate()?;
        let expected_var = finite(now.level_var + above_zero(reading_var).ok()?).ok()?;
        Some(Innovation {
            expected_g: now.level_g,
            expected_var,
            standardised: (finite(reading_g).ok()? - now.level_g) / expected_var.sqrt(),
        })
    }

    /// The variance with which a wild reading may be taken in: wide enough that it lies no more
    /// than `most_sd` (above 0) standard deviations off. Any other reading keeps its own.
    ///
    /// A wild reading then still counts, but moves the level by no more than
    /// `most_sd² · level_var / distance`: the wilder, the less.
    pub fn tempered_variance(&self, reading_g: f64, reading_var: f64, most_sd: f64) -> f64 {
        match (self.estimate(), self.innovation(reading_g, reading_var)) {
            (Some(now), Some(innovation)) if most_sd < innovation.standardised.abs() => {
                let allowed_sd = (reading_g - innovation.expected_g) / most_sd;
                (allowed_sd * allowed_sd - now.level_var).max(reading_var)
            }
            (Some(_) | None, Some(_) | None) => reading_var,
        }
    }

    /// Takes in a reading in grams with its variance in g²; says how it lay to the expected one.
    ///
    /// The answer holds `None` for the reading that makes the slope.
    ///
    /// # Errors
    /// [`KalmanError::NotFinite`] or [`KalmanError::NoVariance`].
    pub fn update(
        &mut self,
        reading_g: f64,
        reading_var: f64,
    ) -> Result<Option<Innovation>, KalmanError> {
        finite(reading_g)?;
        above_zero(reading_var)?;
        let innovation = self.innovation(reading_g, reading_var);
        self.belief = match self.belief {
            Belief::LevelOnly {
                level_g,
                level_var,
                days_since,
            } if days_since < SAME_MOMENT_DAYS => {
                let gain = level_var / (level_var + reading_var);
                Belief::LevelOnly {
                    level_g: level_g + gain * (reading_g - level_g),
                    level_var: gain * reading_var,
                    days_since: 0.0,
                }
            }
            Belief::LevelOnly {
                level_g,
                level_var,
                days_since: days,
            } => {
                let noise = self.dynamics.noise(days);
                let slope = Slope {
                    g_per_day: (reading_g - level_g) / days,
                    var: (level_var + reading_var + noise.level) / (days * days)
                        - 2.0 * noise.cross / days
                        + noise.slope,
                    level_cov: reading_var / days,
                };
                let joint = Joint {
                    level_g: reading_g,
                    slope,
                    level_var: reading_var,
                };
                Belief::Joint(joint.finite()?)
            }
            Belief::Joint(joint) => Belief::Joint(joint.with(reading_g, reading_var)?),
        };
        Ok(innovation)
    }

    /// The level now and, once known, the slope; `None` while the level is not known.
    pub fn estimate(&self) -> Option<Estimate> {
        match self.belief {
            Belief::LevelOnly {
                level_g,
                level_var,
                days_since,
            } if days_since < SAME_MOMENT_DAYS => Some(Estimate {
                level_g,
                level_var,
                slope: None,
            }),
            Belief::LevelOnly { .. } => None,
            Belief::Joint(joint) => Some(joint.estimate()),
        }
    }

    /// The level some days ahead, with no reading in between.
    ///
    /// `None` while the slope is not known, and for days that cannot be stepped over.
    pub fn forecast(&self, days: f64) -> Option<Forecast> {
        let mut ahead = *self;
        ahead.predict(days).ok()?;
        match ahead.belief {
            Belief::LevelOnly { .. } => None,
            Belief::Joint(joint) => Some(Forecast {
                level_g: joint.level_g,
                level_var: joint.level_var,
            }),
        }
    }
}

impl Joint {
    fn ahead(self, days: f64, noise: Noise) -> Result<Self, KalmanError> {
        let Slope {
            g_per_day,
            var,
            level_cov,
        } = self.slope;
        Self {
            level_g: self.level_g + days * g_per_day,
            slope: Slope {
                g_per_day,
                var: var + noise.slope,
                level_cov: level_cov + days * var + noise.cross,
            },
            level_var: self.level_var + days * (2.0 * level_cov + days * var) + noise.level,
        }
        .finite()
    }

    fn with(self, reading_g: f64, reading_var: f64) -> Result<Self, KalmanError> {
        let expected_var = self.level_var + reading_var;
        let surprise = reading_g - self.level_g;
        let (level_gain, slope_gain) = (
            self.level_var / expected_var,
            self.slope.level_cov / expected_var,
        );
        Self {
            level_g: self.level_g + level_gain * surprise,
            slope: Slope {
                g_per_day: self.slope.g_per_day + slope_gain * surprise,
                var: (self.slope.var - slope_gain * self.slope.level_cov).max(0.0),
                level_cov: self.slope.level_cov * (reading_var / expected_var),
            },
            level_var: level_gain * reading_var,
        }
        .finite()
    }

    fn finite(self) -> Result<Self, KalmanError> {
        let Slope {
            g_per_day,
            var,
            level_cov,
        } = self.slope;
        for value in [self.level_g, self.level_var, g_per_day, var, level_cov] {
            finite(value)?;
        }
        Ok(self)
    }

    pub(crate) fn estimate(self) -> Estimate {
        Estimate {
            level_g: self.level_g,
            level_var: self.level_var,
            slope: Some(self.slope),
        }
    }
}

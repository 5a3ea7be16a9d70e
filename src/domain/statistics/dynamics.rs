//! How a weight is expected to wander between readings, and what a filter over it refuses.
//!
//! # Formula
//! Level `L` and slope `B`, in days and grams: `dL = B dt + sqrt(v_level) dW1`,
//! `dB = sqrt(v_slope) dW2`. Over `h` days `F = [[1, h], [0, 1]]` and
//! `Q = v_level [[h, 0], [0, 0]] + v_slope [[h^3/3, h^2/2], [h^2/2, h]]`.
//!
//! Source: Harvey (1989), Forecasting, Structural Time Series Models and the Kalman Filter, ch. 9;
//! from memory.

use thiserror::Error;

/// Why a filter cannot take what it was given. The filter is then as it was before.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
pub enum KalmanError {
    /// A day, a reading or a variance is infinite or not a number, or the answer would be.
    #[error("value is not a finite number: {0}")]
    NotFinite(f64),
    /// A variance of the weight's own movement is below 0.
    #[error("variance is below 0: {0}")]
    NegativeVariance(f64),
    /// A variance of a reading, or of the level to start from, is not above 0.
    #[error("variance is not above 0: {0}")]
    NoVariance(f64),
    /// A covariance is larger than its two variances allow.
    #[error("covariance is too large for its variances: {0}")]
    ImpossibleCovariance(f64),
    /// The filter was asked to go back in time.
    #[error("days to go ahead are below 0: {0}")]
    BackInTime(f64),
}

/// How the level and the slope are expected to wander. Variances in g² (level) and (g/day)² (slope) per day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dynamics {
    level_var_per_day: f64,
    slope_var_per_day: f64,
}

/// What the movement adds to the variances over some days.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Noise {
    pub(crate) level: f64,
    pub(crate) cross: f64,
    pub(crate) slope: f64,
}

impl Dynamics {
    /// A level with a slope, both wandering in continuous time.
    ///
    /// # Errors
    /// [`KalmanError`] when a variance is negative or not finite.
    pub fn trend(level_var_per_day: f64, slope_var_per_day: f64) -> Result<Self, KalmanError> {
        Ok(Self {
            level_var_per_day: at_least_zero(level_var_per_day)?,
            slope_var_per_day: at_least_zero(slope_var_per_day)?,
        })
    }

    pub(crate) fn noise(&self, days: f64) -> Noise {
        let (level, slope) = (self.level_var_per_day * days, self.slope_var_per_day * days);
        Noise {
            level: level + slope * days * days / 3.0,
            cross: slope * days / 2.0,
            slope,
        }
    }
}

pub(crate) fn finite(value: f64) -> Result<f64, KalmanError> {
    if value.is_finite() {
        Ok(value)
    } else {
        Err(KalmanError::NotFinite(value))
    }
}

pub(crate) fn at_least_zero(variance: f64) -> Result<f64, KalmanError> {
    if finite(variance)? < 0.0 {
        Err(KalmanError::NegativeVariance(variance))
    } else {
        Ok(variance)
    }
}

pub(crate) fn above_zero(variance: f64) -> Result<f64, KalmanError> {
    if finite(variance)? <= 0.0 {
        Err(KalmanError::NoVariance(variance))
    } else {
        Ok(variance)
    }
}

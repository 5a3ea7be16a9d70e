//! When a level began to fall faster than a filter expects: a ramp of unknown start and pace.
//!
//! # Formula
//! A [`Filter`] that knows nothing of a ramp leaves innovations `r` with variance `v`. Had the level begun
//! `k` days ago to lose 1 g a day more, each later innovation would lie off by a known share `s` of it: what
//! the ramp has taken so far, less what the filter has followed of it. A ramp of `b` grams a day then is
//! more likely than none by
//!
//! `ln ratio = b Σ r s / v - b² Σ s² / (2 v)`,
//!
//! largest at `b = Σ (r s / v) / Σ (s² / v)`, and no slower ramp than the least one is asked about. Of all
//! starts the one with the largest ratio counts.
//!
//! Source: Willsky & Jones (1976), A generalized likelihood ratio approach to the detection and estimation of
//! jumps in linear systems, IEEE Transactions on Automatic Control 21:108; Basseville & Nikiforov (1993),
//! Detection of Abrupt Changes, ch. 7 (additive changes in state-space models); both from memory. The tests hold it
//! against the same ratio worked out without a filter, from the covariances of all readings at once.

use crate::domain::statistics::dynamics::{Dynamics, KalmanError};
use crate::domain::statistics::kalman::{Estimate, Filter};

/// A ramp that may have begun.
#[derive(Debug, Clone, Copy)]
struct Start {
    /// Days since it began.
    days: f64,
    /// What the filter has followed of a ramp of 1 g a day: its level, g, and its slope, g/day.
    followed: (f64, f64),
    /// `Σ r s / v`.
    pull: f64,
    /// `Σ s² / v`.
    weight: f64,
}

/// The most likely ramp.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ramp {
    /// Natural logarithm of how much more likely it is than none.
    pub ln_ratio: f64,
    /// What is lost a day beyond what was expected, g/day, above 0.
    pub g_per_day: f64,
    /// Days since it began, or since the first reading it could be seen in.
    pub days: f64,
}

/// A filter with every ramp that may have begun in the last days.
///
/// # Examples
/// ```
/// use perchlight::domain::statistics::change::RampSearch;
/// use perchlight::domain::statistics::dynamics::Dynamics;
/// use perchlight::domain::statistics::kalman::{Estimate, Filter, Slope};
/// let slope = Some(Slope { g_per_day: 0.0, var: 1.0, level_cov: 0.0 });
/// let known = Estimate { level_g: 1_000.0, level_var: 25.0, slope };
/// let mut search = RampSearch::following(Filter::starting_from(Dynamics::trend(1.0, 0.1)?, known)?, 21.0);
/// for grams in [1_000.0, 1_002.0, 970.0, 941.0] {
///     search.predict(1.0)?;
///     search.update(grams, 64.0)?;
/// }
/// let ramp = search.likeliest(6.0);
/// assert!(ramp.is_some_and(|ramp| 4.0 < ramp.ln_ratio && ramp.days == 2.0));
/// # Ok::<(), perchlight::domain::statistics::dynamics::KalmanError>(())
/// ```
#[derive(Debug, Clone)]
pub struct RampSearch {
    filter: Filter,
    starts: Vec<Start>,
    most_days: f64,
}

impl RampSearch {
    /// Looks for ramps that begin from now on, each for so many days at most.
    pub const fn following(filter: Filter, most_days: f64) -> Self {
        Self {
            filter,
            starts: Vec::new(),
            most_days,
        }
    }

    /// The filter, which knows of no ramp.
    pub const fn filter(&self) -> &Filter {
        &self.filter
    }

    /// From now on level and slope are expected to wander so.
    pub const fn wander(&mut self, dynamics: Dynamics) {
        self.filter.dynamics = dynamics;
    }

    /// Goes ahead by some days, at least 0; a ramp may begin now and after each day of them.
    ///
    /// # Errors
    /// [`KalmanError`] as of [`Filter::predict`].
    pub fn predict(&mut self, days: f64) -> Result<(), KalmanError> {
        let parts = days.min(self.most_days).round().max(1.0);
        let step = days / parts;
        let mut gone = 0.0;
        while gone < parts {
            self.starts.push(Start {
                days: 0.0,
                followed: (0.0, 0.0),
                pull: 0.0,
                weight: 0.0,
            });
            self.filter.predict(step)?;
            for start in &mut self.starts {
                start.days += step;
                start.followed.0 += step * start.followed.1;
            }
            gone += 1.0;
        }
        let most = self.most_days + 1e-9;
        self.starts.retain(|start| start.days <= most);
        Ok(())
    }

    /// Takes in a reading in grams with its variance in g².
    ///
    /// # Errors
    /// [`KalmanError`] as of [`Filter::update`].
    pub fn update(&mut self, reading_g: f64, reading_var: f64) -> Result<(), KalmanError> {
        let expected = self.filter.estimate();
        let innovation = self.filter.update(reading_g, reading_var)?;
        let Some((expected, innovation)) = expected.zip(innovation) else {
            return Ok(());
        };
        let (level_gain, slope_gain) = gains(&expected, innovation.expected_var);
        let off_g = reading_g - innovation.expected_g;
        for start in &mut self.starts {
            let share = -start.days - start.followed.0;
            start.pull += off_g * share / innovation.expected_var;
            start.weight += share * share / innovation.expected_var;
            start.followed.0 += level_gain * share;
            start.followed.1 += slope_gain * share;
        }
        Ok(())
    }

    /// Takes in evidence of another kind, for the ramps that began at least so many days ago: something that
    /// lies `off` what is usual, with variance `var`, and would lie `share` off for each gram lost a day.
    pub fn tell(&mut self, began_days: f64, off: f64, share: f64, var: f64) {
        let began = began_days - 1e-9;
        for start in self.starts.iter_mut().filter(|start| began <= start.days) {
            start.pull += off * share / var;
            start.weight += share * share / var;
        }
    }

    /// The most likely ramp of at least so many grams a day; `None` before a reading.
    pub fn likeliest(&self, least_g_per_day: f64) -> Option<Ramp> {
        let seen = self.starts.iter().filter(|start| 0.0 < start.weight);
        let ramps = seen.map(|start| {
            let pace = (start.pull / start.weight).max(least_g_per_day);
            Ramp {
                ln_ratio: pace * (start.pull - pace * start.weight / 2.0),
                g_per_day: pace,
                days: start.days,
            }
        });
        ramps.max_by(|one, other| one.ln_ratio.total_cmp(&other.ln_ratio))
    }
}

fn gains(expected: &Estimate, expected_var: f64) -> (f64, f64) {
    let slope = expected.slope.map_or(0.0, |slope| slope.level_cov);
    (expected.level_var / expected_var, slope / expected_var)
}

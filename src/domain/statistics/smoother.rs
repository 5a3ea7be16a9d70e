//! A whole series through the Kalman filter, and every moment of it again in hindsight.

use crate::domain::statistics::dynamics::{Dynamics, KalmanError};
use crate::domain::statistics::kalman::{Belief, Estimate, Filter, Innovation, Joint, Slope};

/// A weight that was read, with the variance of its scale and crop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// The weight, g.
    pub grams: f64,
    /// Its variance, g², above 0.
    pub variance: f64,
}

/// A moment of a series: with a reading, or without one to ask what the level was then.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// Days since any fixed moment; never below the sample before.
    pub day: f64,
    /// What was read.
    pub reading: Option<Reading>,
}

/// What the filter made of one sample.
#[derive(Clone, Copy, Debug)]
pub struct Step {
    /// The moment and its reading.
    pub sample: Sample,
    /// How the reading lay to the expected one; `None` without a reading or while starting.
    pub innovation: Option<Innovation>,
    /// Level and slope as known at that moment; `None` while the level is not known.
    pub filtered: Option<Estimate>,
    belief: Belief,
}

/// A series that has gone through the filter.
#[derive(Clone, Debug)]
pub struct Track {
    steps: Vec<Step>,
    filter: Filter,
}

impl Track {
    /// Takes the samples through a filter that stands at the first of them.
    ///
    /// One pass, no allocation but the answer.
    ///
    /// # Errors
    /// [`KalmanError`] of the first sample that cannot be taken; days that go back are one.
    pub fn through(mut filter: Filter, samples: &[Sample]) -> Result<Self, KalmanError> {
        let mut steps = Vec::with_capacity(samples.len());
        let mut day = samples.first().map_or(0.0, |sample| sample.day);
        for &sample in samples {
            filter.predict(sample.day - day)?;
            day = sample.day;
            let innovation = match sample.reading {
                Some(reading) => filter.update(reading.grams, reading.variance)?,
                None => None,
            };
            steps.push(Step {
                sample,
                innovation,
                filtered: filter.estimate(),
                belief: filter.belief,
            });
        }
        Ok(Self { steps, filter })
    }

    /// What the filter made of each sample, in the order given.
    pub fn steps(&self) -> &[Step] {
        &self.steps
    }

    /// The filter after the last sample, for a forecast or the next reading.
    pub fn filter(&self) -> Filter {
        self.filter
    }

    /// Natural logarithm of the density of the readings, without those that make the start.
    pub fn log_likelihood(&self) -> f64 {
        let innovations = self.steps.iter().filter_map(|step| step.innovation);
        innovations
            .map(|innovation| innovation.log_likelihood())
            .sum()
    }

    /// Level and slope at each sample as the whole series, also what came later, tells it.
    ///
    /// `None` where even the whole series does not say the level, or the numbers run out of range.
    ///
    /// # Formula
    /// From the end back to the start the later readings are gathered as information
    /// (precision `P⁻¹` and `P⁻¹ x`), which may be none: `Λ' = Fᵀ (I + Λ Q)⁻¹ Λ F`. At each sample
    /// they join what the filter knew. Nothing is divided by a variance that may be 0 or unknown,
    /// so the start needs no large number in place of "unknown".
    ///
    /// Source: Fraser & Potter (1969), two-filter smoother; from memory.
    pub fn smoothed(&self) -> Vec<Option<Estimate>> {
        let origin_g = self.steps.first().map(|step| match step.belief {
            Belief::LevelOnly { level_g, .. } => level_g,
            Belief::Joint(joint) => joint.level_g,
        });
        let hindsight = Hindsight {
            dynamics: self.filter.dynamics,
            origin_g: origin_g.unwrap_or_default(),
        };
        let mut later = Information::default();
        let mut later_day = self.steps.last().map_or(0.0, |step| step.sample.day);
        let mut estimates = Vec::with_capacity(self.steps.len());
        for step in self.steps.iter().rev() {
            later = hindsight.earlier(later, later_day - step.sample.day);
            later_day = step.sample.day;
            let joined = hindsight.joined(step.belief, later);
            estimates.push(joined.filter(Estimate::is_finite));
            if let Some(reading) = step.sample.reading {
                later.level += 1.0 / reading.variance;
                later.level_pull += (reading.grams - hindsight.origin_g) / reading.variance;
            }
        }
        estimates.reverse();
        estimates
    }
}

/// Precision of level and slope, and precision times their value, counted from an origin.
#[derive(Clone, Copy, Debug, Default)]
struct Information {
    level: f64,
    cross: f64,
    slope: f64,
    level_pull: f64,
    slope_pull: f64,
}

impl Information {
    fn and(self, other: Self) -> Self {
        Self {
            level: self.level + other.level,
            cross: self.cross + other.cross,
            slope: self.slope + other.slope,
            level_pull: self.level_pull + other.level_pull,
            slope_pull: self.slope_pull + other.slope_pull,
        }
    }
}

/// Share of the largest possible determinant below which two readings count as one moment's.
const SINGULAR_SHARE: f64 = 1e-12;

struct Hindsight {
    dynamics: Dynamics,
    origin_g: f64,
}

impl Hindsight {
    /// The same information seen some days earlier.
    fn earlier(&self, later: Information, days: f64) -> Information {
        let noise = self.dynamics.noise(days);
        let top_left = 1.0 + later.level * noise.level + later.cross * noise.cross;
        let top_right = later.level * noise.cross + later.cross * noise.slope;
        let bottom_left = later.cross * noise.level + later.slope * noise.cross;
        let bottom_right = 1.0 + later.cross * noise.cross + later.slope * noise.slope;
        let determinant = top_left * bottom_right - top_right * bottom_left;
        let level = (bottom_right * later.level - top_right * later.cross) / determinant;
        let cross = (bottom_right * later.cross - top_right * later.slope) / determinant;
        let slope = (top_left * later.slope - bottom_left * later.cross) / determinant;
        let level_pull =
            (bottom_right * later.level_pull - top_right * later.slope_pull) / determinant;
        let slope_pull =
            (top_left * later.slope_pull - bottom_left * later.level_pull) / determinant;
        Information {
            level,
            cross: cross + days * level,
            slope: slope + days * (2.0 * cross + days * level),
            level_pull,
            slope_pull: slope_pull + days * level_pull,
        }
    }

    fn joined(&self, belief: Belief, later: Information) -> Option<Estimate> {
        match belief {
            Belief::LevelOnly {
                level_g,
                level_var,
                days_since: days,
            } => {
                // The old level is today's less `days` of slope, with the noise of those days.
                let noise = self.dynamics.noise(days);
                let variance =
                    level_var + noise.level - 2.0 * days * noise.cross + days * days * noise.slope;
                let pull = (level_g - self.origin_g) / variance;
                self.informed(later.and(Information {
                    level: 1.0 / variance,
                    cross: -days / variance,
                    slope: days * days / variance,
                    level_pull: pull,
                    slope_pull: -days * pull,
                }))
            }
            Belief::Joint(joint) => Some(self.corrected(joint, later)),
        }
    }

    fn informed(&self, all: Information) -> Option<Estimate> {
        let determinant = all.level * all.slope - all.cross * all.cross;
        if SINGULAR_SHARE * all.level * all.slope < determinant {
            let level_cov = -all.cross / determinant;
            let (level_var, var) = (all.slope / determinant, all.level / determinant);
            return Some(Estimate {
                level_g: self.origin_g + level_var * all.level_pull + level_cov * all.slope_pull,
                level_var,
                slope: Some(Slope {
                    g_per_day: level_cov * all.level_pull + var * all.slope_pull,
                    var,
                    level_cov,
                }),
            });
        }
        (0.0 < all.level && all.slope == 0.0).then(|| Estimate {
            level_g: self.origin_g + all.level_pull / all.level,
            level_var: 1.0 / all.level,
            slope: None,
        })
    }

    fn corrected(&self, joint: Joint, later: Information) -> Estimate {
        let Slope {
            g_per_day,
            var,
            level_cov,
        } = joint.slope;
        let top_left = 1.0 + joint.level_var * later.level + level_cov * later.cross;
        let top_right = joint.level_var * later.cross + level_cov * later.slope;
        let bottom_left = level_cov * later.level + var * later.cross;
        let bottom_right = 1.0 + level_cov * later.cross + var * later.slope;
        let determinant = top_left * bottom_right - top_right * bottom_left;
        let smooth_level_var =
            (bottom_right * joint.level_var - top_right * level_cov) / determinant;
        let smooth_cov = (bottom_right * level_cov - top_right * var) / determinant;
        let smooth_slope_var = (top_left * var - bottom_left * level_cov) / determinant;
        let level = joint.level_g - self.origin_g;
        let level_pull = later.level_pull - later.level * level - later.cross * g_per_day;
        let slope_pull = later.slope_pull - later.cross * level - later.slope * g_per_day;
        Joint {
            level_g: joint.level_g + smooth_level_var * level_pull + smooth_cov * slope_pull,
            slope: Slope {
                g_per_day: g_per_day + smooth_cov * level_pull + smooth_slope_var * slope_pull,
                var: smooth_slope_var,
                level_cov: smooth_cov,
            },
            level_var: smooth_level_var,
        }
        .estimate()
    }
}

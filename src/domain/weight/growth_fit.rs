//! Fits growth curves to weighings, and says when the adult weight cannot be told from them.
//!
//! The adult weight is the hard part: before the weights have bent, a heavier adult always fits a
//! little better. So the fit first walks over adult weights from below the heaviest reading to far
//! above it, fits rate and turn for each, and starts from every valley it has seen.

use thiserror::Error;

use crate::domain::quantity::count;
use crate::domain::statistics::normal_equations::{Normal, Three};
use crate::domain::statistics::{line, robust};
use crate::domain::weight::growth_curve::{GrowthCurve, Shape};

/// Fewest readings for a fit: three values and two to judge them by.
pub const FEWEST_READINGS: usize = 5;

/// An adult weight this many times the heaviest reading counts as run away.
///
/// Ours: the reading says nothing of the adult long before that.
pub const RUN_AWAY_FACTOR: f64 = 60.0;

/// The adult weight is known when its standard error is below this share of it, and it is below
/// [`KNOWN_FACTOR`] times the heaviest reading.
///
/// Ours: one standard error of a quarter leaves half to double open in the 95 % range.
pub const KNOWN_SHARE: f64 = 0.25;

/// See [`KNOWN_SHARE`]. Ours.
pub const KNOWN_FACTOR: f64 = 2.0;

/// Lightest adult weight tried, as a share of the heaviest reading.
const LIGHTEST_FACTOR: f64 = 0.6;

/// Step from one tried adult weight to the next.
const FACTOR_STEP: f64 = 1.12;

/// Steps after which a descent is given up; the valleys met need fewer than a hundred.
const MOST_STEPS: u32 = 500;

/// A descent ends when no value moves by more than this share.
const SMALL_SHARE: f64 = 1e-13;

/// Why there is no fit.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
pub enum NoFit {
    /// Fewer than [`FEWEST_READINGS`].
    #[error("readings are fewer than 5: {0}")]
    TooFewReadings(usize),
    /// Lists of different length, a value that is not finite, or a weight that is not above 0.
    #[error("readings are not weights above 0, each with its day")]
    UnusableReadings,
    /// The weights have not bent yet: the more the adult weighs, the better the fit.
    #[error("adult weight runs beyond 60 times the heaviest reading")]
    AdultUnbounded,
    /// The weights do not rise towards anything.
    #[error("weights follow no growth curve")]
    NotGrowing,
}

/// Variances and covariances of a fit's values, in the units of the values.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Uncertainty {
    /// Variance of the adult weight, g².
    pub adult_var: f64,
    /// Variance of the rate, 1/day².
    pub rate_var: f64,
    /// Variance of the turn, day².
    pub turn_var: f64,
    /// Covariance of adult weight and rate.
    pub adult_rate_cov: f64,
    /// Covariance of adult weight and turn.
    pub adult_turn_cov: f64,
    /// Covariance of rate and turn.
    pub rate_turn_cov: f64,
}

/// A curve fitted to readings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// The fitted curve.
    pub curve: GrowthCurve,
    /// How sure its values are.
    pub uncertainty: Uncertainty,
    /// Sum of squared distances of the readings from the curve, g².
    pub rss: f64,
    /// Standard deviation of the readings around the curve, g.
    pub sd: f64,
    /// Share of the readings' variance that the curve takes up; `None` when all are equal.
    pub r_squared: Option<f64>,
    /// Akaike's criterion for few readings; `None` for 5 readings or a perfect fit.
    pub aicc: Option<f64>,
    /// The heaviest reading, g.
    pub heaviest_g: f64,
}

impl Fit {
    /// Whether the adult weight may be shown; see [`KNOWN_SHARE`].
    pub fn is_adult_known(&self) -> bool {
        self.uncertainty.adult_var.sqrt() < KNOWN_SHARE * self.curve.adult_g
            && self.curve.adult_g < KNOWN_FACTOR * self.heaviest_g
    }
}

/// A curve with its adult weight held, and what is left over.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeldFit {
    /// The fitted curve.
    pub curve: GrowthCurve,
    /// Sum of squared distances of the readings from the curve, g².
    pub rss: f64,
}

/// The best curve of this shape through weights at their days, by least squares.
///
/// # Formula
/// Levenberg–Marquardt; standard errors from `RSS / (n - 3) · (JᵀJ)⁻¹`;
/// `AICc = n ln(RSS / n) + 2 K + 2 K (K + 1) / (n - K - 1)` with `K = 4` (the variance counts).
///
/// # Errors
/// [`NoFit`] says why there is none. Ask [`Fit::is_adult_known`] before showing an adult weight.
///
/// Source: Marquardt (1963); Burnham & Anderson (2002) for the criterion; from memory.
pub fn fit(shape: Shape, days: &[f64], grams: &[f64]) -> Result<Fit, NoFit> {
    let readings = Readings::checked(days, grams)?;
    if days.len() < FEWEST_READINGS {
        return Err(NoFit::TooFewReadings(days.len()));
    }
    let mut tried = Vec::new();
    let mut factor = LIGHTEST_FACTOR;
    while factor < RUN_AWAY_FACTOR * FACTOR_STEP {
        tried.extend(readings.held(shape, factor.min(RUN_AWAY_FACTOR) * readings.heaviest_g));
        factor *= FACTOR_STEP;
    }
    let valleys = tried.windows(3).filter_map(|window| match window {
        [before, here, after] if here.rss <= before.rss && here.rss <= after.rss => Some(*here),
        _ => None,
    });
    let best = valleys
        .filter_map(|valley| readings.descend(valley.curve, Adult::Free))
        .filter(|found| found.curve.adult_g < RUN_AWAY_FACTOR * readings.heaviest_g)
        .min_by(|one, other| one.rss.total_cmp(&other.rss));
    let at_edge = tried.last().ok_or(NoFit::NotGrowing)?;
    match best {
        Some(found) if found.rss <= at_edge.rss => readings.judged(found.curve),
        Some(_) => Err(NoFit::AdultUnbounded),
        None if tried.first().is_some_and(|first| at_edge.rss < first.rss) => {
            Err(NoFit::AdultUnbounded)
        }
        None => Err(NoFit::NotGrowing),
    }
}

/// The best rate and turn for a given adult weight in grams, by least squares.
///
/// # Errors
/// [`NoFit`]; two readings are enough here.
pub fn fit_with_adult(
    shape: Shape,
    adult_g: f64,
    days: &[f64],
    grams: &[f64],
) -> Result<HeldFit, NoFit> {
    let readings = Readings::checked(days, grams)?;
    if !(adult_g.is_finite() && 0.0 < adult_g) {
        return Err(NoFit::UnusableReadings);
    }
    readings.held(shape, adult_g).ok_or(NoFit::NotGrowing)
}

/// How much each of several fits to the same readings is to be believed, from their criteria; sums to 1.
///
/// # Formula
/// `exp(-Δ / 2) / Σ exp(-Δ / 2)`, `Δ` the distance from the lowest.
///
/// Source: Burnham & Anderson (2002), Model Selection and Multimodel Inference, 2.9; from memory.
pub fn akaike_weights(aicc: &[f64]) -> Option<Vec<f64>> {
    robust::all_finite(aicc)?;
    let lowest = aicc.iter().copied().reduce(f64::min)?;
    let odds: Vec<f64> = aicc
        .iter()
        .map(|value| ((lowest - value) / 2.0).exp())
        .collect();
    let sum: f64 = odds.iter().sum();
    Some(odds.iter().map(|odd| odd / sum).collect())
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Adult {
    Free,
    Held,
}

struct Readings<'a> {
    days: &'a [f64],
    grams: &'a [f64],
    heaviest_g: f64,
}

impl<'a> Readings<'a> {
    fn checked(days: &'a [f64], grams: &'a [f64]) -> Result<Self, NoFit> {
        let are_weights = grams
            .iter()
            .all(|weight| weight.is_finite() && 0.0 < *weight);
        let are_days = robust::all_finite(days).is_some();
        let heaviest_g = grams.iter().copied().reduce(f64::max);
        match heaviest_g {
            Some(heaviest_g) if are_weights && are_days && days.len() == grams.len() => Ok(Self {
                days,
                grams,
                heaviest_g,
            }),
            Some(_) => Err(NoFit::UnusableReadings),
            None => Err(NoFit::TooFewReadings(0)),
        }
    }

    fn held(&self, shape: Shape, adult_g: f64) -> Option<HeldFit> {
        self.descend(self.straightened(shape, adult_g)?, Adult::Held)
    }

    /// Rate and turn from a straight line through the readings bent straight.
    fn straightened(&self, shape: Shape, adult_g: f64) -> Option<GrowthCurve> {
        // Readings above the adult weight tried have no place on the curve; near the top they tell
        // little and would weigh much.
        let placed = |weight: &f64| (weight / adult_g).clamp(1e-9, 0.97);
        let bent: Vec<f64> = self
            .grams
            .iter()
            .map(|weight| shape.u_at(placed(weight)))
            .collect();
        let straight = line::least_squares(self.days, &bent)?;
        (0.0 < straight.slope).then(|| GrowthCurve {
            shape,
            adult_g,
            rate_per_day: straight.slope,
            turn_day: -straight.intercept / straight.slope,
        })
    }

    /// Levenberg–Marquardt from a start to the bottom of its valley.
    fn descend(&self, start: GrowthCurve, adult: Adult) -> Option<HeldFit> {
        let mut curve = start;
        let mut here = self.normal(&curve, adult);
        let mut damping = 1e-3;
        for _ in 0..MOST_STEPS {
            let step = here.factored(damping).map(|factor| factor.solve(here.pull));
            let next = step.and_then(|step| moved(&curve, step));
            let there = next.map(|next| (next, self.normal(&next, adult)));
            match there {
                Some((next, there)) if there.rss <= here.rss => {
                    let is_small = is_small(&curve, &next);
                    (curve, here) = (next, there);
                    damping /= 10.0;
                    if is_small {
                        break;
                    }
                }
                Some(_) | None => damping *= 10.0,
            }
            if 1e12 < damping {
                break;
            }
        }
        here.rss.is_finite().then_some(HeldFit {
            curve,
            rss: here.rss,
        })
    }

    fn normal(&self, curve: &GrowthCurve, adult: Adult) -> Normal {
        let mut sums = Normal::default();
        for (day, weight) in self.days.iter().zip(self.grams) {
            let (share, rise) = curve.shape.share_and_rise(curve.u(*day));
            let left = weight - curve.adult_g * share;
            let by_adult = if adult == Adult::Free { share } else { 0.0 };
            let by_rate = curve.adult_g * rise * (day - curve.turn_day);
            let by_turn = -curve.adult_g * rise * curve.rate_per_day;
            sums.rss += left * left;
            sums.adult += by_adult * by_adult;
            sums.rate += by_rate * by_rate;
            sums.turn += by_turn * by_turn;
            sums.adult_rate += by_adult * by_rate;
            sums.adult_turn += by_adult * by_turn;
            sums.rate_turn += by_rate * by_turn;
            sums.pull.adult += by_adult * left;
            sums.pull.rate += by_rate * left;
            sums.pull.turn += by_turn * left;
        }
        if adult == Adult::Held {
            // A row of its own that moves nothing.
            sums.adult = 1.0;
        }
        sums
    }

    fn judged(&self, curve: GrowthCurve) -> Result<Fit, NoFit> {
        let normal = self.normal(&curve, Adult::Free);
        let factor = normal.factored(0.0).ok_or(NoFit::NotGrowing)?;
        let readings = count::as_f64(self.days.len());
        let variance = normal.rss / (readings - 3.0);
        let unit = |adult, rate, turn| factor.solve(Three { adult, rate, turn });
        let (adult, rate, turn) = (
            unit(1.0, 0.0, 0.0),
            unit(0.0, 1.0, 0.0),
            unit(0.0, 0.0, 1.0),
        );
        let mean = self.grams.iter().sum::<f64>() / readings;
        let spread: f64 = self
            .grams
            .iter()
            .map(|weight| (weight - mean) * (weight - mean))
            .sum();
        let aicc = readings * (normal.rss / readings).ln() + 8.0 + 40.0 / (readings - 5.0);
        Ok(Fit {
            curve,
            uncertainty: Uncertainty {
                adult_var: variance * adult.adult,
                rate_var: variance * rate.rate,
                turn_var: variance * turn.turn,
                adult_rate_cov: variance * adult.rate,
                adult_turn_cov: variance * adult.turn,
                rate_turn_cov: variance * rate.turn,
            },
            rss: normal.rss,
            sd: variance.sqrt(),
            r_squared: (0.0 < spread).then(|| 1.0 - normal.rss / spread),
            aicc: aicc.is_finite().then_some(aicc),
            heaviest_g: self.heaviest_g,
        })
    }
}

fn moved(curve: &GrowthCurve, step: Three) -> Option<GrowthCurve> {
    let next = GrowthCurve {
        shape: curve.shape,
        adult_g: curve.adult_g + step.adult,
        rate_per_day: curve.rate_per_day + step.rate,
        turn_day: curve.turn_day + step.turn,
    };
    (0.0 < next.adult_g && 0.0 < next.rate_per_day && next.turn_day.is_finite()).then_some(next)
}

fn is_small(from: &GrowthCurve, to: &GrowthCurve) -> bool {
    (to.adult_g - from.adult_g).abs() <= SMALL_SHARE * to.adult_g
        && (to.rate_per_day - from.rate_per_day).abs() <= SMALL_SHARE * to.rate_per_day
        && (to.turn_day - from.turn_day).abs() * to.rate_per_day <= SMALL_SHARE
}

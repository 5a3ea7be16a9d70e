//! Whether a weight has begun to fall faster than that of a healthy chick.
//!
//! The readings go through a filter that knows only healthy chicks ([`healthy`]); what it does not
//! expect is searched for a ramp of at least [`LEAST_SHARE`] a day ([`RampSearch`]).
//!
//! **High readings.** Food in the crop only adds, so a reading far above the expected one counts
//! little, unless the next one is as high. **Low readings** far below count little while nobody weighed again.

use crate::domain::journal::chick::Chick;
use crate::domain::quantity::count;
use crate::domain::statistics::change::{Ramp, RampSearch};
use crate::domain::statistics::dynamics::{Dynamics, KalmanError};
use crate::domain::statistics::kalman::{Estimate, Filter, Slope};
use crate::domain::statistics::robust;
use crate::domain::time::moment::{Day, Moment, Offset};
use crate::domain::weight::eaten;
use crate::domain::weight::healthy;
use crate::domain::weight::noise::Noise;
use crate::domain::weight::sittings::Sitting;

/// Slowest loss beyond a healthy one that is looked for, as a share of the weight a day. Ours: slower ones
/// are told from healthy weaning by the limits only.
pub const LEAST_SHARE: f64 = 0.006;

/// How many times as likely as in a healthy chick the readings must be with a fall to be watched. Ours, chosen
/// on made-up chicks.
pub const WATCH_ODDS: usize = 12;

/// The same for a call. Ours, chosen on made-up chicks.
pub const CALL_ODDS: usize = 100;

/// How long ago a fall may have begun, days. Ours.
pub const MOST_DAYS: f64 = 21.0;

/// Days before the last weighing whose food is evidence of it. Ours.
const EATEN_DAYS: i32 = 14;

/// Fewest sittings that tell of a fall. Ours.
pub const FEWEST_SITTINGS: usize = 3;

/// Fewest sittings that make another one expected. Ours.
const FEWEST_EXPECTING: usize = 2;

/// A reading further above the expected one than this may have food in the crop, standard deviations. Ours: one
/// healthy morning in forty lies as high.
pub const HIGH_SD: f64 = 2.0;

/// A single reading so far below the expected one may be a slip, standard deviations. Ours.
const LOW_SD: f64 = 4.0;

/// As many readings as what is assumed of the noise is worth. Ours.
const WORTH: f64 = 10.0;

/// A reading's part in learning the noise is at most that of one so far off, squared standard deviations. Ours.
const MOST_SQUARE: f64 = 6.0;

/// What an older reading's part in learning the noise keeps at each new one. Ours: half after 23.
const KEPT: f64 = 0.97;

/// The highest level.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PeakLevel {
    /// When.
    pub at: Moment,
    /// Most likely level then, g.
    pub grams: f64,
    /// Its standard deviation, g.
    pub sd_g: f64,
}

/// The most likely fall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fall {
    /// Natural logarithm of how much more likely the readings are with it than in a healthy chick.
    pub ln_ratio: f64,
    /// Loss in all since it began, the healthy part too, g/day; below zero for a gain.
    pub g_per_day: f64,
    /// Days since it began, to the last reading.
    pub days: f64,
}

impl Fall {
    /// Whether the readings are at least so many times as likely with it as in a healthy chick.
    pub fn is_as_likely(&self, odds: usize) -> bool {
        count::as_f64(odds).ln() <= self.ln_ratio
    }
}

/// The readings as they lie to a healthy chick's.
#[derive(Debug, Clone)]
pub struct Judged {
    search: RampSearch,
    usual_g: f64,
    last: Moment,
    offset: Offset,
    noise: Noise,
    sittings: usize,
    learned: Learned,
    /// How far the last sitting lies above the expected one, standard deviations; `None` for the first one.
    pub last_off_sd: Option<f64>,
    /// The weight that was expected of the last sitting, g; `None` with fewer than `FEWEST_EXPECTING` before it.
    pub last_expected_g: Option<f64>,
    /// The highest level so far.
    pub peak: PeakLevel,
    was_high: bool,
    /// Moment and weight of the sittings of the last [`MOST_DAYS`], g.
    recent: Vec<(Moment, f64)>,
}

/// The noise as the readings tell it.
#[derive(Debug, Clone, Copy)]
struct Learned {
    squares: f64,
    readings: f64,
}

impl Learned {
    /// The variance of a reading as a multiple of what is assumed, at least 1.
    fn times(self) -> f64 {
        (self.squares / self.readings).max(1.0)
    }

    fn take(&mut self, square: f64) {
        self.squares = self.squares * KEPT + square.min(MOST_SQUARE);
        self.readings = self.readings * KEPT + 1.0;
    }
}

/// Judges the sittings since the chick came home; `None` without one, or when the numbers run out of range.
pub fn judged(chick: &Chick, sittings: &[Sitting], noise: Noise) -> Option<Judged> {
    let (home, handover) = (chick.home_since(), chick.plan.reference);
    let at_home = sittings.partition_point(|sitting| {
        let is_earlier = |day: Day| sitting.lived().day < day;
        sitting.at < home || handover.is_some_and(|handover| is_earlier(handover.day))
    });
    let sittings = sittings.get(at_home..)?;
    let first = sittings.first()?;
    let grams: Vec<f64> = sittings.iter().map(|sitting| sitting.grams).collect();
    let usual_g = robust::median(&grams)?;
    let mut judged = Judged::starting_from(chick, first, usual_g, noise).ok()?;
    for sitting in sittings.iter().skip(1) {
        judged.go_to(chick, sitting.at).ok()?;
        judged
            .take(sitting.grams, f64::from(sitting.weighings))
            .ok()?;
        judged.offset = sitting.offset;
    }
    judged.tell_eaten(chick);
    Some(judged)
}

impl Judged {
    fn starting_from(
        chick: &Chick,
        first: &Sitting,
        usual_g: f64,
        noise: Noise,
    ) -> Result<Self, KalmanError> {
        let pace = healthy::pace(chick, first.at, first.lived().day);
        let sd_g = noise.sd_g(first.grams, f64::from(first.weighings));
        let known = Estimate {
            level_g: first.grams,
            level_var: sd_g * sd_g,
            slope: Some(Slope {
                g_per_day: pace.share * usual_g,
                var: (pace.sd * usual_g).powi(2),
                level_cov: 0.0,
            }),
        };
        let mut filter = Filter::starting_from(Dynamics::trend(0.0, 0.0)?, known)?;
        let handed_over = chick.plan.reference.map(|reference| {
            let days = first.lived().day.since(reference.day);
            (reference.weight.as_g(), days)
        });
        let is_near = |(_, days): &(f64, i32)| (0..healthy::HANDOVER_DAYS).contains(days);
        if let Some((grams, days)) = handed_over.filter(is_near) {
            let days = f64::from(days);
            let share =
                healthy::HANDOVER_SHARE.powi(2) + healthy::DIP_SHARE.powi(2) * days.max(0.5);
            let expected_g = grams + pace.share * usual_g * days;
            filter.update(expected_g, share * usual_g * usual_g)?;
        }
        Ok(Self {
            search: RampSearch::following(filter, MOST_DAYS),
            usual_g,
            last: first.at,
            offset: first.offset,
            noise,
            sittings: 1,
            learned: Learned {
                squares: WORTH,
                readings: WORTH,
            },
            last_off_sd: None,
            last_expected_g: None,
            peak: PeakLevel {
                at: first.at,
                grams: first.grams,
                sd_g,
            },
            was_high: false,
            recent: vec![(first.at, first.grams)],
        })
    }

    /// How a healthy chick's weight wanders from the last sitting on.
    fn wandering(&self, chick: &Chick) -> Result<Dynamics, KalmanError> {
        let square = |share: f64| (share * self.usual_g).powi(2);
        let is_dipping = self.last.minutes_since(chick.home_since()) < healthy::DIP_MINUTES;
        let day = self.last.lived(self.offset).day;
        let level = if is_dipping {
            healthy::DIP_SHARE
        } else {
            healthy::LEVEL_SHARE
        };
        let pace = if healthy::is_growing(chick, day) {
            healthy::GROWING_PACE_SHARE
        } else {
            healthy::PACE_SHARE
        };
        let slope = self.search.filter().estimate().and_then(|now| now.slope);
        let gain_g = slope.map_or(0.0, |slope| slope.g_per_day.max(0.0));
        let ending = (healthy::GAIN_ENDS * gain_g).powi(2);
        Dynamics::trend(square(level), square(pace) + ending)
    }

    fn go_to(&mut self, chick: &Chick, at: Moment) -> Result<(), KalmanError> {
        self.search.wander(self.wandering(chick)?);
        self.search.predict(at.days_since(self.last))?;
        self.last = at;
        let is_recent = |(before, _): &(Moment, f64)| at.days_since(*before) <= MOST_DAYS + 1.0;
        self.recent.retain(is_recent);
        Ok(())
    }

    fn take(&mut self, grams: f64, weighings: f64) -> Result<(), KalmanError> {
        let Some(expected) = self.search.filter().estimate() else {
            return Ok(());
        };
        let own_sd = self.noise.sd_g(grams, weighings);
        let own = own_sd * own_sd * self.learned.times();
        let off = grams - expected.level_g;
        let expected_var = expected.level_var + own;
        let off_sd = off / expected_var.sqrt();
        let is_high = HIGH_SD < off_sd;
        let variance = if is_high && !self.was_high {
            expected_var * (off_sd / HIGH_SD).powi(4) - expected.level_var
        } else if off_sd < -LOW_SD && weighings < 2.0 {
            expected_var * (off_sd / LOW_SD).powi(2) - expected.level_var
        } else {
            own
        };
        self.search.update(grams, variance)?;
        let assumed = expected.level_var + own_sd * own_sd;
        self.learned.take(off * off / assumed);
        self.last_off_sd = Some(off_sd);
        self.last_expected_g = (FEWEST_EXPECTING <= self.sittings).then_some(expected.level_g);
        self.was_high = is_high;
        self.sittings += 1;
        self.recent.push((self.last, grams));
        let level = self.search.filter().estimate();
        // The first levels are little more than single readings.
        let is_first = self.sittings <= FEWEST_SITTINGS;
        if let Some(level) = level.filter(|level| is_first || self.peak.grams < level.level_g) {
            self.peak = PeakLevel {
                at: self.last,
                grams: level.level_g,
                sd_g: level.level_var.sqrt(),
            };
        }
        Ok(())
    }

    /// Takes in what was eaten: a chick that loses weight for want of food left that part of it.
    fn tell_eaten(&mut self, chick: &Chick) {
        let today = self.last.lived(self.offset).day;
        for less in eaten::less_eaten(chick, today, self.offset, EATEN_DAYS) {
            // What is left on a day is missing from the morning of that day on.
            let began_days = f64::from(today.since(less.day)) - 0.3;
            let share = -1.0 / (eaten::STARVED_SHARE * self.usual_g);
            self.search
                .tell(began_days, less.off, share, eaten::DAY_SD * eaten::DAY_SD);
        }
    }

    /// The most likely fall; `None` with fewer than [`FEWEST_SITTINGS`], and while the weight does not fall by
    /// [`LEAST_SHARE`] a day in all: a growing chick that gains less than before is no case for it.
    pub fn fall(&self) -> Option<Fall> {
        let least = LEAST_SHARE * self.usual_g;
        let ramp: Ramp = self.search.likeliest(least)?;
        let fall = Fall {
            ln_ratio: ramp.ln_ratio,
            g_per_day: -self.gain_since(ramp.days)?,
            days: ramp.days,
        };
        (FEWEST_SITTINGS <= self.sittings && least <= fall.g_per_day).then_some(fall)
    }

    /// Gain a day along the straight line through the sittings from so many days before the last one on, g.
    fn gain_since(&self, days: f64) -> Option<f64> {
        let ago = |at: Moment| -self.last.days_since(at);
        // Weighed an hour later than on the day before is a day all the same.
        let since = self.recent.iter().filter(|(at, _)| -days - 0.3 < ago(*at));
        let (mut sums, mut count) = ((0.0, 0.0), 0.0);
        for (at, grams) in since.clone() {
            sums = (sums.0 + ago(*at), sums.1 + grams);
            count += 1.0;
        }
        let (mut product, mut square) = (0.0, 0.0);
        for (at, grams) in since {
            let day = ago(*at) - sums.0 / count;
            product += day * grams;
            square += day * day;
        }
        (0.0 < square).then(|| product / square)
    }

    /// The highest weight of a next reading, confirmed at `at`, with which the fall is at least so likely; `None`
    /// when none is.
    pub fn falls_from(&self, chick: &Chick, at: Moment, odds: usize) -> Option<f64> {
        let mut ahead = self.clone();
        ahead.go_to(chick, at.max(self.last)).ok()?;
        let expected = ahead.search.filter().estimate()?;
        let falls = |grams: f64| {
            let mut then = ahead.clone();
            let is_taken = then.take(grams, 2.0).is_ok();
            let fall = then.fall().filter(|_| is_taken);
            fall.is_some_and(|fall| fall.is_as_likely(odds))
        };
        let (mut low, mut high) = (expected.level_g * 0.5, expected.level_g * 1.1);
        if !falls(low) {
            return None;
        }
        for _ in 0..16 {
            let middle = f64::midpoint(low, high);
            if falls(middle) {
                low = middle;
            } else {
                high = middle;
            }
        }
        Some(low)
    }
}

//! Where a chick's weight stands and where it goes: level, pace, chances, loss from the peak.
//!
//! Nothing is foretold from fewer than [`FEWEST_READINGS`] readings, and nothing is said of today
//! when the last reading is older than [`STALE_DAYS`].

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::EntryId;
use crate::domain::quantity::count;
use crate::domain::statistics::kalman::{Estimate, Filter, Slope};
use crate::domain::statistics::normal::Z_95;
use crate::domain::time::moment::Moment;
use crate::domain::weight::crossing::{self, Crossing};
use crate::domain::weight::fall::{self, Fall, Judged, PeakLevel};
use crate::domain::weight::growth_stand::{self, GrowthStand};
use crate::domain::weight::level::{LevelNow, Pace};
use crate::domain::weight::noise::Noise;
use crate::domain::weight::readings::{self, Reading};
use crate::domain::weight::sittings::{self, Sitting};
use crate::domain::weight::weight_filter::{self, Point};

/// Fewest readings for a slope or a forecast. Ours.
pub const FEWEST_READINGS: usize = 4;

/// Days after the last reading beyond which nothing is said of the level now. Ours.
pub const STALE_DAYS: f64 = 7.0;

/// Days that the fan reaches ahead.
pub const FAN_DAYS: f64 = 3.0;

/// The fan ends where half of its 95 % width is more than this share of the level: beyond it would
/// be guesswork. Ours: half of the usual loss limit of 10 %.
pub const FAN_SHARE: f64 = 0.05;

/// Days between two points of the fan.
const FAN_STEP_DAYS: f64 = 0.5;

/// A value with its 95 % interval.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interval {
    /// Most likely value.
    pub value: f64,
    /// Lower end of the 95 % interval.
    pub low: f64,
    /// Upper end of the 95 % interval.
    pub high: f64,
}

impl Interval {
    fn of(value: f64, sd: f64) -> Self {
        Self {
            value,
            low: value - Z_95 * sd,
            high: value + Z_95 * sd,
        }
    }
}

/// Gain or loss a day, for plain words: the pace of [`LevelNow`] with its uncertainty.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlainSlope {
    /// Gain, below zero for a loss, g/day.
    pub g_per_day: Interval,
    /// The same in per cent of the level a day.
    pub pct_per_day: Interval,
    /// Readings that it was taken from.
    pub readings: usize,
}

/// Chances, 0 to 1, that the level lies below the loss limit, if things go on as they do.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BelowLimit {
    /// The limit: the handover weight less the plan's loss limit, g.
    pub limit_g: f64,
    /// Chance now.
    pub now: f64,
    /// Chances in 1, 2 and 3 days.
    pub in_days: [f64; 3],
}

/// Where the weight stands and where it goes.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WeightTrend {
    /// Readings that count, up to now.
    pub readings: usize,
    /// The level now; `None` without a reading or when the last one is older than [`STALE_DAYS`].
    pub now: Option<LevelNow>,
    /// The pace in plain words; `None` with fewer than [`FEWEST_READINGS`].
    pub slope: Option<PlainSlope>,
    /// Chances of being below the limit; `None` without a pace or without a handover weight.
    pub below_limit: Option<BelowLimit>,
    /// When the limit is reached at this pace; `None` when it is not in sight or already passed.
    pub crossing: Option<Crossing>,
    /// The highest level on the card or since the chick came home.
    pub peak: Option<PeakLevel>,
    /// Loss from the peak to the latest empty-crop weight, per cent.
    pub peak_loss_pct: Option<f64>,
    /// Loss from the peak to the level now, per cent: how certain that loss is.
    pub peak_loss_of_level_pct: Option<Interval>,
    /// Loss from the handover weight to the level now, per cent; below zero for a gain.
    pub handover_loss_pct: Option<Interval>,
    /// The level in hindsight from the first reading to the last, at least every half day.
    pub path: Vec<Point>,
    /// The level to come, from the last reading to at most [`FAN_DAYS`] after now.
    pub fan: Vec<Point>,
    /// Whether the fan ends early because more would be guesswork.
    pub is_fan_cut: bool,
    /// Entries of the readings that are doubted.
    pub doubted: Vec<EntryId>,
    /// Where the chick stands against its species' growth, while it is young enough.
    pub growth: Option<GrowthStand>,
    /// The latest empty-crop weighing, with those repeated around it.
    pub latest: Option<Latest>,
    /// The most likely fall, while the weight falls; see [`fall`].
    pub fall: Option<Fall>,
    /// The highest weight of the next morning, weighed twice, with which a fall is likely enough for a call, g.
    pub falls_from_g: Option<f64>,
}

/// The latest sitting and how it counts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Latest {
    /// The sitting.
    pub sitting: Sitting,
    /// Whether it counts: weighed again, or nobody did in time.
    pub is_confirmed: bool,
    /// How far it lies above what was expected, standard deviations; `None` for a first one.
    pub off_sd: Option<f64>,
    /// The weight that was expected of it, g; `None` with few before it.
    pub expected_g: Option<f64>,
}

impl Point {
    /// Lower end of the 95 % band, g.
    pub fn low_95(&self) -> f64 {
        self.grams - Z_95 * self.sd_g
    }

    /// Upper end of the 95 % band, g.
    pub fn high_95(&self) -> f64 {
        self.grams + Z_95 * self.sd_g
    }
}

/// The trend of a chick's weight at `now`, from the readings up to then.
pub fn weight_trend(now: Moment, chick: &Chick) -> WeightTrend {
    let noise = Noise::of(now, chick);
    let sittings = sittings::sittings(now, chick);
    let judged = fall::judged(chick, &sittings, noise);
    let latest = sittings.last().map(|sitting| Latest {
        sitting: *sitting,
        is_confirmed: sitting.is_confirmed(now, noise),
        off_sd: judged.as_ref().and_then(|judged| judged.last_off_sd),
        expected_g: judged.as_ref().and_then(|judged| judged.last_expected_g),
    });
    let next = latest.map(|latest| now.max(latest.sitting.at.plus_minutes(24 * 60)));
    let falls_from_g = judged
        .as_ref()
        .zip(next)
        .and_then(|(judged, next)| judged.falls_from(chick, next, fall::CALL_ODDS));
    let of_sittings = WeightTrend {
        latest,
        fall: judged.as_ref().and_then(Judged::fall),
        falls_from_g,
        ..WeightTrend::default()
    };
    let readings = readings_until(now, chick, noise);
    let filtered = weight_filter::assimilate(&readings);
    let (Some(last), Some(filtered)) = (readings.last(), filtered) else {
        return of_sittings;
    };
    let path = filtered.path(&readings).unwrap_or_default();
    let paced = paced(filtered.last, of_sittings.fall);
    let filter_now = filter_at(now, last, paced);
    let level = filter_now
        .as_ref()
        .and_then(|filter| level_now(filter, readings.len()));
    let doubted = filtered.doubted_entries(&readings);
    let peak = peak(chick, noise, judged.as_ref());
    let mut trend = WeightTrend {
        readings: readings.len(),
        now: level,
        slope: level.and_then(|level| plain_slope(level, readings.len())),
        peak,
        peak_loss_pct: peak.zip(latest).map(|(peak, latest)| {
            (100.0 * (peak.grams - latest.sitting.grams) / peak.grams).max(0.0)
        }),
        peak_loss_of_level_pct: peak.zip(level).map(|(peak, level)| loss(peak, level)),
        growth: growth_stand::growth_stand(now, chick, &readings, &doubted, level),
        path,
        doubted,
        ..of_sittings
    };
    let reference = chick
        .plan
        .reference
        .map(|reference| reference.weight.as_g());
    let reference = reference.filter(|grams| 0.0 < *grams);
    trend.handover_loss_pct = reference.zip(level).map(|(reference, level)| {
        let loss_pct = 100.0 * (reference - level.grams) / reference;
        Interval::of(loss_pct, 100.0 * level.sd_g / reference)
    });
    let Some(filter) = filter_now.filter(|_| level.is_some_and(|level| level.pace.is_some()))
    else {
        return trend;
    };
    (trend.fan, trend.is_fan_cut) = fan(now, last, &paced);
    if let Some(reference) = reference {
        let limit_g = reference * (1.0 - chick.plan.loss_limit_in_force().as_pct() / 100.0);
        trend.below_limit = below_limit(&filter, limit_g);
        let estimate = filter.estimate();
        trend.crossing = estimate.and_then(|today| crossing::crossing(now, &today, limit_g));
    }
    trend
}

/// The empty-crop reading that is expected at `now`, and its standard deviation, both in grams.
///
/// `None` with fewer than [`FEWEST_READINGS`], and when the last is older than [`STALE_DAYS`].
pub fn expected_reading(now: Moment, chick: &Chick) -> Option<(f64, f64)> {
    let noise = Noise::of(now, chick);
    let readings = readings_until(now, chick, noise);
    if readings.len() < FEWEST_READINGS {
        return None;
    }
    let filtered = weight_filter::assimilate(&readings)?;
    let level = filter_at(now, readings.last()?, filtered.last)?.estimate()?;
    let scale_sd = noise.sd_g(level.level_g, 1.0);
    let sd = level.level_var.max(0.0).sqrt().hypot(scale_sd);
    Some((level.level_g, sd))
}

fn readings_until(now: Moment, chick: &Chick, noise: Noise) -> Vec<Reading> {
    let mut readings = readings::readings(chick, noise);
    readings.retain(|reading| reading.at <= now);
    readings
}

fn filter_at(now: Moment, last: &Reading, mut filter: Filter) -> Option<Filter> {
    let days = now.days_since(last.at);
    filter.predict(days).ok()?;
    (days <= STALE_DAYS).then_some(filter)
}

fn level_now(filter: &Filter, readings: usize) -> Option<LevelNow> {
    let estimate = filter.estimate()?;
    let pace = estimate.slope.filter(|_| FEWEST_READINGS <= readings);
    (0.0 < estimate.level_g).then(|| LevelNow {
        grams: estimate.level_g,
        sd_g: estimate.level_var.max(0.0).sqrt(),
        pace: pace.map(|slope| Pace {
            g_per_day: slope.g_per_day,
            sd_g_per_day: slope.var.max(0.0).sqrt(),
            pct_per_day: 100.0 * slope.g_per_day / estimate.level_g,
        }),
    })
}

/// The pace in plain words.
fn plain_slope(level: LevelNow, readings: usize) -> Option<PlainSlope> {
    let pace = level.pace?;
    let g_per_day = Interval::of(pace.g_per_day, pace.sd_g_per_day);
    let per_pct = level.grams / 100.0;
    Some(PlainSlope {
        g_per_day,
        pct_per_day: Interval {
            value: g_per_day.value / per_pct,
            low: g_per_day.low / per_pct,
            high: g_per_day.high / per_pct,
        },
        readings,
    })
}

/// The filter with the pace of a fall that is likely enough to be watched: it is told days before the filter,
/// which knows no sudden turn, has followed it.
fn paced(filter: Filter, fall: Option<Fall>) -> Filter {
    let likely = fall.filter(|fall| fall.is_as_likely(fall::WATCH_ODDS));
    let paced = likely.and_then(|fall| {
        let estimate = filter.estimate()?;
        let slope = Slope {
            g_per_day: -fall.g_per_day,
            ..estimate.slope?
        };
        let known = Estimate {
            slope: Some(slope),
            ..estimate
        };
        Filter::starting_from(filter.dynamics, known).ok()
    });
    paced.unwrap_or(filter)
}

/// The highest level since the chick came home, or the breeder's on the card, whichever is higher.
///
/// The level is that of [`fall`], which lets no single full crop raise it.
fn peak(chick: &Chick, noise: Noise, judged: Option<&Judged>) -> Option<PeakLevel> {
    let of_card = chick.plan.peak.map(|peak| PeakLevel {
        at: Moment::from_seconds(i64::from(peak.day.number()) * 86_400 + 43_200),
        grams: peak.weight.as_g(),
        sd_g: noise.sd_g(peak.weight.as_g(), 1.0),
    });
    let own = judged.map(|judged| judged.peak);
    let is_higher = |own: &PeakLevel| of_card.is_none_or(|card| card.grams < own.grams);
    own.filter(is_higher).or(of_card)
}

/// Loss from the peak, per cent. Peak and level are taken as independent, which makes the interval
/// too wide rather than too narrow while the peak is recent.
fn loss(peak: PeakLevel, level: LevelNow) -> Interval {
    let left = level.grams / peak.grams;
    let sd = left * (level.sd_g / level.grams).hypot(peak.sd_g / peak.grams);
    Interval::of(100.0 * (1.0 - left), 100.0 * sd)
}

fn below_limit(filter: &Filter, limit_g: f64) -> Option<BelowLimit> {
    let chance = |days: f64| filter.forecast(days)?.chance_level_below(limit_g);
    Some(BelowLimit {
        limit_g,
        now: chance(0.0)?,
        in_days: [chance(1.0)?, chance(2.0)?, chance(3.0)?],
    })
}

fn fan(now: Moment, last: &Reading, filter: &Filter) -> (Vec<Point>, bool) {
    let end = now.days_since(last.at) + FAN_DAYS;
    let steps = (end / FAN_STEP_DAYS).ceil();
    let days = (0..=count::rounded(steps)).map(|step| (f64::from(step) * FAN_STEP_DAYS).min(end));
    let mut points = Vec::new();
    for day in days {
        let Some(ahead) = filter.forecast(day) else {
            break;
        };
        let point = Point {
            at: last.at.plus_seconds(count::whole(day * 86_400.0)),
            grams: ahead.level_g,
            sd_g: ahead.level_var.max(0.0).sqrt(),
            is_reading: false,
        };
        if point.grams * FAN_SHARE < point.high_95() - point.grams {
            break;
        }
        points.push(point);
    }
    let is_cut = count::as_f64(points.len()) <= steps;
    if points.len() < 2 {
        points.clear();
    }
    (points, is_cut)
}

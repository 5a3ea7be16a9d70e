//! A chick's readings through the level-and-slope filter: how its weight is expected to wander,
//! which readings are doubted, and the level in hindsight.
//!
//! **Doubt.** A reading more than [`DOUBT_SD`] standard deviations off what was expected is taken in
//! so wide that it hardly moves the level. It is never dropped. When the next reading that is at
//! least a crop's emptying time later lies nearer to the doubted one than to what was expected, both
//! were right: the weight has really moved, and both count in full. Weighed again before that, the
//! doubted ones count together as one.

use crate::domain::journal::entries::EntryId;
use crate::domain::statistics::dynamics::{Dynamics, KalmanError};
use crate::domain::statistics::kalman::{Estimate, Filter, Slope};
use crate::domain::statistics::robust;
use crate::domain::statistics::smoother::{self, Sample, Track};
use crate::domain::time::moment::Moment;
use crate::domain::weight::readings::{CROP_MINUTES, Reading};

/// How far the level wanders of itself, as a share of the weight, per square root of a day. Ours.
///
/// Small beside a reading's own 1 %, which already holds the 10 to 20 g that a bird's weight varies
/// from morning to morning. Fitted by maximum likelihood to logarithms of published weights it is 0
/// for domestic chicks (Crowder & Hand 1990) and 4.6 % for little penguin chicks (Chiaradia & Nisbet
/// 2006), whose weight jumps by a tenth and more between weighings.
pub const LEVEL_SHARE: f64 = 0.003;

/// How far the daily gain or loss wanders, as a share of the weight per day, per square root of a day.
///
/// Ours, chosen for a chick near its peak. Over 50 days it makes 2.1 % a day; a green-winged macaw
/// goes from a gain of 3.3 % a day (days 34 to 41 of one hand-reared chick) to a loss near 0.4 %
/// (10 % in four weeks) in about that time. Faster phases wander more: that chick's earlier gains
/// by 0.8 %; fitted as for [`LEVEL_SHARE`], domestic chicks by 1.8 %, common terns (Nisbet 1975) by
/// 2.1 %, little penguins by 0.1 to 0.7 %. More would widen every forecast beyond use. A chick that
/// falls ill from one day to the next is followed with a lag of about two days, so the rules on
/// single readings stand beside this.
pub const SLOPE_SHARE: f64 = 0.003;

/// Standard deviation of the daily gain before anything is known of it, as a share of the weight.
///
/// Ours: growth of 10 % a day in the steepest phase (Duerr & Gage 2020, p. 599) and losses of 5 % a
/// day both lie within what it allows, and two readings minutes apart say no more than they can.
pub const FIRST_SLOPE_SHARE: f64 = 0.03;

/// A reading further than this from the expected one is doubted, standard deviations. Ours.
pub const DOUBT_SD: f64 = 4.0;

/// Days between two points of the level's path.
const PATH_STEP_DAYS: f64 = 0.5;

/// Most points of the path between two readings: a long gap is drawn coarser.
const MOST_BETWEEN: f64 = 28.0;

/// What the readings say once all are taken in.
#[derive(Debug, Clone)]
pub(crate) struct FilteredReadings {
    /// The filter at the first reading.
    first: Filter,
    /// The filter after the last reading.
    pub(crate) last: Filter,
    /// The variance with which each reading was taken in, g².
    variances: Vec<f64>,
    /// Whether each reading is doubted.
    doubted: Vec<bool>,
}

/// A doubted reading that the next ones may still bear out.
#[derive(Debug, Clone, Copy)]
struct Doubt {
    place: usize,
    reading: Reading,
    /// The filter at its moment, before it was taken in.
    before: Filter,
    /// Doubted readings from here on, this one too: weighings of one crop's filling.
    readings: f64,
}

impl Doubt {
    fn is_settled_by(&self, later: &Reading) -> bool {
        CROP_MINUTES <= later.at.minutes_since(self.reading.at)
    }

    /// Whether a later reading lies nearer to the doubted one than to what a filter expects.
    fn is_shared_by(&self, later: &Reading, filter: &Filter) -> bool {
        let expected = filter.estimate().map(|expected| expected.level_g);
        expected.is_some_and(|expected| {
            (later.grams - self.reading.grams).abs() < (later.grams - expected).abs()
        })
    }
}

/// Takes the readings in; `None` without one, or when the numbers run out of range.
pub(crate) fn assimilate(readings: &[Reading]) -> Option<FilteredReadings> {
    let grams: Vec<f64> = readings.iter().map(|reading| reading.grams).collect();
    let usual_g = robust::median(&grams)?;
    let first = first_filter(readings.first()?, usual_g).ok()?;
    let mut filtered = FilteredReadings {
        first,
        last: first,
        variances: readings.iter().map(variance).collect(),
        doubted: vec![false; readings.len()],
    };
    let mut doubt: Option<Doubt> = None;
    for (place, pair) in (1..).zip(readings.windows(2)) {
        let [before, reading] = pair else { continue };
        filtered.last.predict(gap_days(before, reading)).ok()?;
        doubt = filtered.take(readings, place, reading, doubt).ok()?;
    }
    Some(filtered)
}

impl FilteredReadings {
    /// Takes a reading in; returns the doubt that is still open after it.
    fn take(
        &mut self,
        readings: &[Reading],
        place: usize,
        reading: &Reading,
        open: Option<Doubt>,
    ) -> Result<Option<Doubt>, KalmanError> {
        let settled = open.filter(|doubt| doubt.is_settled_by(reading));
        if let Some(doubt) = settled.filter(|doubt| doubt.is_shared_by(reading, &self.last)) {
            self.take_again(readings, doubt, place, false)?;
            return Ok(None);
        }
        let open = open.filter(|doubt| !doubt.is_settled_by(reading));
        if let Some(mut doubt) = open.filter(|doubt| doubt.is_shared_by(reading, &doubt.before)) {
            doubt.readings += 1.0;
            self.set(place, variance(reading), true);
            self.take_again(readings, doubt, place, true)?;
            return Ok(Some(doubt));
        }
        let (own, before) = (variance(reading), self.last);
        let taken = before.tempered_variance(reading.grams, own, DOUBT_SD);
        self.set(place, taken, own < taken);
        self.last.update(reading.grams, taken)?;
        let new = (own < taken).then_some(Doubt {
            place,
            reading: *reading,
            before,
            readings: 1.0,
        });
        Ok(open.or(new))
    }

    /// Takes the readings from the doubted one to `place` in again: each in full, or those that
    /// stay doubted together as one.
    fn take_again(
        &mut self,
        readings: &[Reading],
        doubt: Doubt,
        place: usize,
        stays_doubted: bool,
    ) -> Result<(), KalmanError> {
        self.last = doubt.before;
        let mut earlier = doubt.reading;
        for (index, reading) in readings
            .iter()
            .enumerate()
            .take(place + 1)
            .skip(doubt.place)
        {
            self.last.predict(gap_days(&earlier, reading))?;
            earlier = *reading;
            let own = variance(reading);
            let is_doubted = stays_doubted && self.doubted.get(index) == Some(&true);
            let taken = if is_doubted {
                let tempered = doubt.before.tempered_variance(reading.grams, own, DOUBT_SD);
                doubt.readings * tempered
            } else {
                own
            };
            self.last.update(reading.grams, taken)?;
            self.set(index, taken, is_doubted);
        }
        Ok(())
    }

    fn set(&mut self, place: usize, variance: f64, is_doubted: bool) {
        if let Some(held) = self.variances.get_mut(place) {
            *held = variance;
        }
        if let Some(held) = self.doubted.get_mut(place) {
            *held = is_doubted;
        }
    }

    /// The entries of the readings that are doubted, in order of time.
    pub(crate) fn doubted_entries(&self, readings: &[Reading]) -> Vec<EntryId> {
        let pairs = readings.iter().zip(&self.doubted);
        pairs
            .filter_map(|(reading, is_doubted)| is_doubted.then_some(reading.id))
            .collect()
    }

    /// The level in hindsight at each reading and between them, with the moment of each.
    ///
    /// `None` when the numbers run out of range.
    pub(crate) fn path(&self, readings: &[Reading]) -> Option<Vec<Point>> {
        let start = readings.first()?.at;
        let mut moments = vec![(start, None)];
        for (place, pair) in (1..).zip(readings.windows(2)) {
            let [before, reading] = pair else { continue };
            let gap = gap_days(before, reading);
            let parts = (gap / PATH_STEP_DAYS).ceil().clamp(1.0, MOST_BETWEEN);
            let step_seconds = crate::domain::quantity::count::whole(gap * 86_400.0 / parts);
            let mut at = before.at.plus_seconds(step_seconds);
            for _ in 1..crate::domain::quantity::count::rounded(parts) {
                moments.push((at, None));
                at = at.plus_seconds(step_seconds);
            }
            moments.push((reading.at, Some((place, reading.grams))));
        }
        let samples: Vec<Sample> = moments
            .iter()
            .map(|(at, reading)| Sample {
                day: at.days_since(start),
                reading: reading.and_then(|(place, grams)| {
                    let variance = *self.variances.get(place)?;
                    Some(smoother::Reading { grams, variance })
                }),
            })
            .collect();
        let track = Track::through(self.first, &samples).ok()?;
        let points = moments.iter().zip(track.smoothed());
        let points = points.filter_map(|((at, reading), estimate)| {
            let estimate = estimate?;
            Some(Point {
                at: *at,
                grams: estimate.level_g,
                sd_g: estimate.level_var.max(0.0).sqrt(),
                is_reading: reading.is_some() || *at == start,
            })
        });
        Some(points.collect())
    }
}

/// The level at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// When.
    pub at: Moment,
    /// Most likely level, g.
    pub grams: f64,
    /// Its standard deviation, g.
    pub sd_g: f64,
    /// Whether there was a reading at that moment.
    pub is_reading: bool,
}

fn first_filter(reading: &Reading, usual_g: f64) -> Result<Filter, KalmanError> {
    let square = |share: f64| (share * usual_g) * (share * usual_g);
    let dynamics = Dynamics::trend(square(LEVEL_SHARE), square(SLOPE_SHARE))?;
    Filter::starting_from(
        dynamics,
        Estimate {
            level_g: reading.grams,
            level_var: variance(reading),
            slope: Some(Slope {
                g_per_day: 0.0,
                var: square(FIRST_SLOPE_SHARE),
                level_cov: 0.0,
            }),
        },
    )
}

fn variance(reading: &Reading) -> f64 {
    reading.sd_g * reading.sd_g
}

fn gap_days(before: &Reading, after: &Reading) -> f64 {
    after.at.days_since(before.at)
}

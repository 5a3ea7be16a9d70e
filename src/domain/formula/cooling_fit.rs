//! The cooling law that lies nearest to many readings, and how far it can be trusted.

use crate::domain::formula::cooling::{CoolingError, CoolingLaw, Reading, checked_order};
use crate::domain::quantity::count;

/// Most steps that the search takes; good readings need fewer than ten.
const MOST_STEPS: u32 = 100;

/// Relative change of every unknown at which the search has arrived.
const ARRIVED: f64 = 1e-11;

/// Rates at which the search for an unknown room starts, in 1/min: half-times of 7 h down to 1 min.
const FIRST_RATES_PER_MIN: [f64; 10] = [
    0.001_67, 0.0033, 0.0067, 0.013, 0.027, 0.053, 0.11, 0.21, 0.43, 0.69,
];

/// A fitted law with its standard errors.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoolingFit {
    /// The law.
    pub law: CoolingLaw,
    /// Standard errors, where there are more readings than unknowns.
    pub errors: Option<FitErrors>,
    /// Sum of the squared distances of the readings from the law, in kelvin squared.
    pub residual_sum: f64,
}

/// Standard errors of a fitted law; zero for a room that was given.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FitErrors {
    /// Of the temperature at minute zero, in kelvin.
    pub start_c: f64,
    /// Of the rate, in 1/min.
    pub rate_per_min: f64,
    /// Of the room, in kelvin.
    pub room_c: f64,
    /// Covariances of (start, rate, room).
    covariance: [[f64; 3]; 3],
}

impl CoolingFit {
    /// Standard error of [`CoolingLaw::minute_at`], in minutes, by the delta method.
    ///
    /// None where there are no errors or the target is never reached. The scatter of the readings
    /// only: a room that was read wrongly is not in it.
    pub fn minute_error_at(&self, target_c: f64) -> Option<f64> {
        let errors = self.errors?;
        let at_min = self.law.minute_at(target_c).ok()?;
        let start_above_c = self.law.start_c - self.law.room_c;
        let target_above_c = target_c - self.law.room_c;
        let rate_per_min = self.law.rate_per_min;
        let gradient = [
            1.0 / (rate_per_min * start_above_c),
            -at_min / rate_per_min,
            (1.0 / target_above_c - 1.0 / start_above_c) / rate_per_min,
        ];
        let variance: f64 = errors
            .covariance
            .iter()
            .zip(gradient)
            .map(|(row, outer)| outer * dot(row, &gradient))
            .sum();
        Some(variance.max(0.0).sqrt())
    }
}

/// The law nearest to the readings in a room of known temperature, by least squares on temperatures.
///
/// # Errors
/// [`CoolingError::TooFewReadings`] below two; readings out of order as [`checked_order`];
/// [`CoolingError::NotWarmerThanRoom`] when a reading is not above the room;
/// [`CoolingError::NoCurve`] when the best law does not cool.
pub fn fit(room_c: f64, readings: &[Reading]) -> Result<CoolingFit, CoolingError> {
    checked_readings(readings, 2)?;
    if !room_c.is_finite() {
        return Err(CoolingError::NotANumber);
    }
    if let Some(cold) = readings.iter().find(|reading| reading.temp_c <= room_c) {
        return Err(CoolingError::NotWarmerThanRoom {
            temp_c: cold.temp_c,
            room_c,
        });
    }
    let first = line_through_logarithms(room_c, readings);
    descend(first, readings, Room::Known)
}

/// The law nearest to the readings when the room's temperature is unknown too.
///
/// Needs a long look at the curve: over a few minutes room and rate cannot be told apart, which the
/// standard errors then show.
///
/// # Errors
/// [`CoolingError::TooFewReadings`] below three; readings out of order as [`checked_order`];
/// [`CoolingError::NoCurve`] when the best law does not cool.
pub fn fit_with_unknown_room(readings: &[Reading]) -> Result<CoolingFit, CoolingError> {
    checked_readings(readings, 3)?;
    let mut nearest: Option<CoolingLaw> = None;
    for rate_per_min in FIRST_RATES_PER_MIN {
        let Some(law) = line_for_rate(rate_per_min, readings) else {
            continue;
        };
        if nearest.is_none_or(|best| residual_sum(&law, readings) < residual_sum(&best, readings)) {
            nearest = Some(law);
        }
    }
    descend(
        nearest.ok_or(CoolingError::NoCurve)?,
        readings,
        Room::Unknown,
    )
}

#[derive(Clone, Copy, PartialEq)]
enum Room {
    Known,
    Unknown,
}

fn checked_readings(readings: &[Reading], needed: usize) -> Result<(), CoolingError> {
    if readings.len() < needed {
        return Err(CoolingError::TooFewReadings {
            needed,
            given: readings.len(),
        });
    }
    checked_order(readings)
}

fn residual_sum(law: &CoolingLaw, readings: &[Reading]) -> f64 {
    readings
        .iter()
        .map(|reading| (reading.temp_c - law.temp_c_at(reading.at_min)).powi(2))
        .sum()
}

/// Straight line `value = level + slope x place` by least squares; none when all places are one.
fn line(points: impl Iterator<Item = (f64, f64)> + Clone) -> Option<(f64, f64)> {
    let n = count::as_f64(points.clone().count());
    let mean_place = points.clone().map(|(place, _)| place).sum::<f64>() / n;
    let mean_value = points.clone().map(|(_, value)| value).sum::<f64>() / n;
    let mut square = 0.0;
    let mut product = 0.0;
    for (place, value) in points {
        square += (place - mean_place).powi(2);
        product += (place - mean_place) * (value - mean_value);
    }
    let slope = product / square;
    slope
        .is_finite()
        .then_some((mean_value - slope * mean_place, slope))
}

/// A first guess with a known room: a line through the logarithms of the distances to the room.
fn line_through_logarithms(room_c: f64, readings: &[Reading]) -> CoolingLaw {
    let points = readings
        .iter()
        .map(|reading| (reading.at_min, (reading.temp_c - room_c).ln()));
    let (level, slope) = line(points).unwrap_or((0.0, 0.0));
    CoolingLaw {
        room_c,
        start_c: room_c + level.exp(),
        rate_per_min: -slope,
    }
}

/// A first guess with an unknown room: for one rate, the nearest start and room.
fn line_for_rate(rate_per_min: f64, readings: &[Reading]) -> Option<CoolingLaw> {
    let points = readings
        .iter()
        .map(|reading| ((-rate_per_min * reading.at_min).exp(), reading.temp_c));
    let (room_c, above_c) = line(points)?;
    Some(CoolingLaw {
        room_c,
        start_c: room_c + above_c,
        rate_per_min,
    })
}

/// Gauss-Newton steps, halved while they lead uphill, from `first` to the nearest law.
fn descend(
    first: CoolingLaw,
    readings: &[Reading],
    room: Room,
) -> Result<CoolingFit, CoolingError> {
    let mut law = first;
    for _ in 0..MOST_STEPS {
        let (normal, pull) = normal_equations(&law, readings, room);
        let inverse = inverse(&normal).ok_or(CoolingError::NoCurve)?;
        let step = inverse.map(|row| dot(&row, &pull));
        let here = residual_sum(&law, readings);
        let is_no_worse = |next: &CoolingLaw| residual_sum(next, readings) <= here;
        let mut share = 1.0;
        let mut next = stepped(&law, step, share);
        while ARRIVED < share && !is_no_worse(&next) {
            share /= 2.0;
            next = stepped(&law, step, share);
        }
        if has_arrived(&law, step) || !is_no_worse(&next) {
            break;
        }
        law = next;
    }
    if !(0.0 < law.rate_per_min && law.room_c < law.start_c && law.start_c.is_finite()) {
        return Err(CoolingError::NoCurve);
    }
    let residual_sum = residual_sum(&law, readings);
    Ok(CoolingFit {
        law,
        errors: fit_errors(&law, readings, room, residual_sum),
        residual_sum,
    })
}

fn stepped(law: &CoolingLaw, step: [f64; 3], share: f64) -> CoolingLaw {
    let [start, rate, room] = step;
    CoolingLaw {
        start_c: law.start_c + share * start,
        rate_per_min: law.rate_per_min + share * rate,
        room_c: law.room_c + share * room,
    }
}

fn has_arrived(law: &CoolingLaw, step: [f64; 3]) -> bool {
    let sizes = [law.start_c, law.rate_per_min, law.room_c];
    step.iter()
        .zip(sizes)
        .all(|(change, size)| change.abs() <= ARRIVED * size.abs())
}

/// The normal matrix of (start, rate, room) and its right side; a known room has a row of its own.
fn normal_equations(
    law: &CoolingLaw,
    readings: &[Reading],
    room: Room,
) -> ([[f64; 3]; 3], [f64; 3]) {
    let mut normal = [[0.0; 3]; 3];
    let mut pull = [0.0; 3];
    for reading in readings {
        let left = (-law.rate_per_min * reading.at_min).exp();
        let room_gradient = match room {
            Room::Known => 0.0,
            Room::Unknown => 1.0 - left,
        };
        let rate_gradient = -reading.at_min * (law.start_c - law.room_c) * left;
        let gradient = [left, rate_gradient, room_gradient];
        let residual = reading.temp_c - law.temp_c_at(reading.at_min);
        for ((row, target), outer) in normal.iter_mut().zip(&mut pull).zip(gradient) {
            *target += outer * residual;
            for (cell, inner) in row.iter_mut().zip(gradient) {
                *cell += outer * inner;
            }
        }
    }
    if room == Room::Known {
        let [_, _, [.., own]] = &mut normal;
        *own = 1.0;
    }
    (normal, pull)
}

/// Standard errors by `s^2 (J'J)^-1` with `s^2 = residual sum / (readings - unknowns)`.
fn fit_errors(
    law: &CoolingLaw,
    readings: &[Reading],
    room: Room,
    residual_sum: f64,
) -> Option<FitErrors> {
    let unknowns = match room {
        Room::Known => 2,
        Room::Unknown => 3,
    };
    let spare = readings
        .len()
        .checked_sub(unknowns)
        .filter(|spare| 0 < *spare)?;
    let (normal, _) = normal_equations(law, readings, room);
    let scale = residual_sum / count::as_f64(spare);
    let mut covariance = inverse(&normal)?.map(|row| row.map(|cell| cell * scale));
    if room == Room::Known {
        let [_, _, [.., own]] = &mut covariance;
        *own = 0.0;
    }
    let [[start, ..], [_, rate, _], [.., room]] = covariance;
    Some(FitErrors {
        start_c: start.sqrt(),
        rate_per_min: rate.sqrt(),
        room_c: room.sqrt(),
        covariance,
    })
}

fn dot(left: &[f64; 3], right: &[f64; 3]) -> f64 {
    left.iter().zip(right).map(|(one, other)| one * other).sum()
}

/// Inverse of a symmetric 3 x 3 matrix by cofactors, on rows scaled to one on the diagonal.
fn inverse(matrix: &[[f64; 3]; 3]) -> Option<[[f64; 3]; 3]> {
    let [[xx, xy, xz], [_, yy, yz], [_, _, zz]] = *matrix;
    let (x_size, y_size, z_size) = (xx.sqrt(), yy.sqrt(), zz.sqrt());
    let (xy, xz, yz) = (
        xy / (x_size * y_size),
        xz / (x_size * z_size),
        yz / (y_size * z_size),
    );
    let determinant = 1.0 - xy * xy - xz * xz - yz * yz + 2.0 * xy * xz * yz;
    // Correlations nearer to one leave no digit of a double; not a number ends here too.
    if determinant.is_nan() || determinant <= 1e-14 {
        return None;
    }
    let cell = |cofactor: f64, scale: f64| cofactor / (determinant * scale);
    let upper = cell(xz * yz - xy, x_size * y_size);
    let corner = cell(xy * yz - xz, x_size * z_size);
    let lower = cell(xy * xz - yz, y_size * z_size);
    Some([
        [cell(1.0 - yz * yz, xx), upper, corner],
        [upper, cell(1.0 - xz * xz, yy), lower],
        [corner, lower, cell(1.0 - xy * xy, zz)],
    ])
}

#[cfg(test)]
mod tests {
    use crate::domain::formula::cooling::{CoolingError, CoolingLaw, Reading};
    use crate::domain::formula::cooling_fit::{fit, fit_with_unknown_room};

    const LAW: CoolingLaw = CoolingLaw {
        room_c: 22.0,
        start_c: 46.0,
        rate_per_min: 0.03,
    };

    fn on_the_curve(minutes: &[f64]) -> Vec<Reading> {
        let reading = |at_min: &f64| Reading {
            at_min: *at_min,
            temp_c: LAW.temp_c_at(*at_min),
        };
        minutes.iter().map(reading).collect()
    }

    #[test]
    fn readings_on_a_curve_give_the_curve_back() {
        // 1e-6 relative: what a tenth of a millikelvin in the readings would leave.
        let readings = on_the_curve(&[0.0, 3.0, 7.0, 20.0, 45.0, 80.0]);
        for fitted in [fit(22.0, &readings), fit_with_unknown_room(&readings)] {
            let law = fitted.unwrap().law;
            assert!((law.start_c / LAW.start_c - 1.0).abs() < 1e-6);
            assert!((law.rate_per_min / LAW.rate_per_min - 1.0).abs() < 1e-6);
            assert!((law.room_c / LAW.room_c - 1.0).abs() < 1e-6);
        }
    }

    #[test]
    fn as_many_readings_as_unknowns_give_a_law_without_errors() {
        let two = fit(22.0, &on_the_curve(&[0.0, 6.0])).unwrap();
        assert_eq!(two.errors, None);
        assert_eq!(two.minute_error_at(40.0), None);
        let three = fit(22.0, &on_the_curve(&[0.0, 6.0, 9.0])).unwrap();
        assert!(three.errors.is_some());
    }

    #[test]
    fn too_few_readings_are_counted() {
        let one = on_the_curve(&[0.0]);
        let two = on_the_curve(&[0.0, 6.0]);
        let too_few = |needed, given| Err(CoolingError::TooFewReadings { needed, given });
        assert_eq!(fit(22.0, &one), too_few(2, 1));
        assert_eq!(fit_with_unknown_room(&two), too_few(3, 2));
    }

    #[test]
    fn readings_that_do_not_cool_are_refused() {
        let flat = [0.0, 2.0, 4.0].map(|at_min| Reading {
            at_min,
            temp_c: 44.0,
        });
        let rising = [0.0, 2.0, 4.0].map(|at_min| Reading {
            at_min,
            temp_c: 44.0 + at_min,
        });
        for readings in [flat, rising] {
            assert_eq!(fit(22.0, &readings), Err(CoolingError::NoCurve));
            assert!(fit_with_unknown_room(&readings).is_err());
        }
        assert_eq!(
            fit(44.0, &flat),
            Err(CoolingError::NotWarmerThanRoom {
                temp_c: 44.0,
                room_c: 44.0
            })
        );
    }

    #[test]
    fn the_error_of_a_minute_grows_with_the_scatter() {
        // Scatter of +d, -d, -d, +d: the errors are proportional to d in first order.
        let scattered = |d: f64| {
            let mut readings = on_the_curve(&[0.0, 3.0, 6.0, 9.0]);
            for (reading, sign) in readings.iter_mut().zip([1.0, -1.0, -1.0, 1.0]) {
                reading.temp_c += sign * d;
            }
            fit(22.0, &readings).unwrap().minute_error_at(38.0).unwrap()
        };
        let small = scattered(0.01);
        assert!(0.0 < small);
        assert!((scattered(0.02) / small - 2.0).abs() < 0.01);
    }
}

//! How the weight of a healthy chick moves in each part of its life.
//!
//! A chick that grows gains by several per cent a day and ever less; one that is being weaned loses slowly;
//! one that is weaned keeps its weight; in the first days in a new home it may dip and come back.

use crate::domain::journal::chick::Chick;
use crate::domain::plan::species::Species;
use crate::domain::time::moment::{Age, Day, Moment};

/// No chick counts as growing at this age, days: 11 weeks.
pub const LATEST_GROWTH_DAYS: i32 = 77;

/// A chick of a species without weaning ages counts as growing up to this age, days: 6 weeks.
const GROWTH_DAYS: i32 = 42;

/// A chick counts as growing up to this part of its species' first weaning age, per cent.
pub const GROWING_PCT: i32 = 50;

/// The age in days from which a chick of this species no longer counts as growing: half of
/// the first week of weaning (ours), 11 weeks at most, 6 weeks for species without weaning ages.
pub fn growth_days(species: Species) -> i32 {
    species.profile().weaning.map_or(GROWTH_DAYS, |weeks| {
        (weeks.value.from * 7 * GROWING_PCT / 100).min(LATEST_GROWTH_DAYS)
    })
}

/// Whether a chick counts as growing by its age on a day; not without a hatch day.
pub fn is_growing(chick: &Chick, day: Day) -> bool {
    let age = chick.plan.hatched.and_then(|hatched| Age::on(day, hatched));
    age.is_some_and(|age| age.days() < growth_days(chick.plan.species))
}

/// A pace that is expected before any weight of it is known, shares of the weight a day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pace {
    /// Gain; below zero for a loss.
    pub share: f64,
    /// Its standard deviation.
    pub sd: f64,
}

/// A growing chick: growth of 10 % a day in the steepest phase (Duerr & Gage 2020, p. 599) and none at its
/// peak both lie within it.
const GROWING: Pace = Pace {
    share: 0.0,
    sd: 0.03,
};

/// A chick that is being weaned: 0.36 % of the peak a day in ten hand-reared Spix's macaws (Groffen 2008: 75 g
/// of 375 g in 55 days), none before it begins: between them. The standard deviation is ours.
const WEANING: Pace = Pace {
    share: -0.001_5,
    sd: 0.002,
};

/// A weaned bird: flat, then a slow rise (weight chart of a research institute). The standard deviation is ours.
const WEANED: Pace = Pace {
    share: 0.0,
    sd: 0.001_5,
};

/// The pace that is expected of a chick first weighed on a day.
pub fn pace(chick: &Chick, at: Moment, day: Day) -> Pace {
    if is_growing(chick, day) {
        GROWING
    } else if chick.feeds_in_force(at).is_empty() {
        WEANED
    } else {
        WEANING
    }
}

/// How far the level wanders of itself, as a share of the weight, per square root of a day. Ours.
pub const LEVEL_SHARE: f64 = 0.003;

/// The same in the first days at home, when a chick dips and comes back: 2 to 4 % under the breeder's
/// last weight are expected then (common practice).
pub const DIP_SHARE: f64 = 0.012;

/// How long the weight may dip after the arrival, minutes: 3 days. Common practice: a chick that eats a
/// little less in a new home does so for two or three days.
pub const DIP_MINUTES: i64 = 3 * 24 * 60;

/// How far the daily loss of a healthy chick wanders, as a share of the weight per day, per square root of a
/// day. Ours: over seven weeks it makes 0.35 % a day, as much as a whole weaning takes.
pub const PACE_SHARE: f64 = 0.000_5;

/// The same of a growing chick, whose gain falls by about a tenth of itself a day (logistic growth with
/// 0.112 a day, `AnAge`, green-winged macaw).
pub const GROWING_PACE_SHARE: f64 = 0.003;

/// How fast a gain ends, as a share of it, per square root of a day; a chick that gained is not expected to
/// go on for ever. Ours.
pub const GAIN_ENDS: f64 = 0.3;

/// How far the handover weight lies off what the scale at home would have shown, as a share of it. Ours:
/// another scale on another day.
pub const HANDOVER_SHARE: f64 = 0.015;

/// Most days from the handover to the first weight at home for which it counts as a weight before it. Ours.
pub const HANDOVER_DAYS: i32 = 3;

//! Which weighings count, and what a chick weighs without the food in its crop.

use crate::domain::journal::chick::{Chick, Noted, Weighing};
use crate::domain::journal::entries::{CropAtWeighing, EntryId};
use crate::domain::time::moment::{Lived, Moment, Offset};
use crate::domain::weight::noise::{Noise, SITTING_MINUTES};

/// Grams that a millilitre of formula adds, at 25 % powder.
///
/// Source: component densities of Choi & Okos 1986 give 1.062 g/ml at 40 °C; 1.06 is used.
pub const FORMULA_G_PER_ML: f64 = 1.06;

/// Food counts as still in the crop for this long after a feed, minutes. Ours, from a usual emptying
/// time of 4 h.
pub const CROP_MINUTES: i64 = 240;

/// A weighing that counts, with the food in the crop taken off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// The entry it comes from.
    pub id: EntryId,
    /// When.
    pub at: Moment,
    /// The wall clock's offset then.
    pub offset: Offset,
    /// Weight without food, grams.
    pub grams: f64,
    /// Standard deviation of that weight, grams.
    pub sd_g: f64,
    /// Whether the crop was empty, so that the number is the scale's own.
    pub is_empty_crop: bool,
}

impl Reading {
    /// The day and wall time at which it was taken, as it was lived then.
    pub fn lived(&self) -> Lived {
        self.at.lived(self.offset)
    }
}

/// The readings that count: those that say what the crop held.
///
/// An after-feed reading is reduced by the food given in the [`CROP_MINUTES`] before it and carries
/// half of that mass as extra uncertainty (ours). Without a noted feed its uncertainty is 5 % (ours).
///
/// Weighings of one sitting share the bird's own variation: each carries so much of it that all together are
/// as uncertain as their middle.
pub fn readings(chick: &Chick, noise: Noise) -> Vec<Reading> {
    let counted = chick.weighings.iter();
    let counted = counted.filter_map(|weighing| reading(chick, noise, weighing));
    let mut readings: Vec<Reading> = counted.collect();
    let is_together = |before: &Reading, after: &Reading| {
        let is_near = after.at.minutes_since(before.at) <= SITTING_MINUTES;
        is_near && before.is_empty_crop && after.is_empty_crop
    };
    for sitting in readings.chunk_by_mut(is_together) {
        let weighings = f64::from(u32::try_from(sitting.len()).unwrap_or(1));
        for reading in sitting.iter_mut().filter(|_| 1.0 < weighings) {
            let middle = noise.sd_g(reading.grams, weighings);
            reading.sd_g = middle * weighings.sqrt();
        }
    }
    readings
}

fn reading(chick: &Chick, noise: Noise, weighing: &Noted<Weighing>) -> Option<Reading> {
    let raw = weighing.what.weight.as_g();
    let scale_sd = noise.sd_g(raw, 1.0);
    let (grams, sd_g) = match weighing.what.crop {
        CropAtWeighing::Empty => (raw, scale_sd),
        CropAtWeighing::AfterFeed => {
            let food = food_in_crop_g(chick, weighing.at);
            let food_sd = if food > 0.0 { food / 2.0 } else { raw * 0.05 };
            (raw - food, scale_sd.hypot(food_sd))
        }
        CropAtWeighing::NotSure => return None,
    };
    Some(Reading {
        id: weighing.id,
        at: weighing.at,
        offset: weighing.offset,
        grams,
        sd_g,
        is_empty_crop: weighing.what.crop == CropAtWeighing::Empty,
    })
}

fn food_in_crop_g(chick: &Chick, at: Moment) -> f64 {
    let until = chick.feeds.partition_point(|feed| feed.at <= at);
    let in_crop = chick
        .feeds
        .iter()
        .take(until)
        .rev()
        .take_while(|feed| at.minutes_since(feed.at) < CROP_MINUTES);
    in_crop
        .map(|feed| feed.what.outcome.taken().as_ml() * FORMULA_G_PER_ML)
        .sum()
}

/// The latest reading with an empty crop, up to `now`.
pub fn latest_empty(now: Moment, chick: &Chick) -> Option<&Noted<Weighing>> {
    chick
        .weighings
        .iter()
        .rev()
        .find(|weighing| weighing.at <= now && weighing.what.crop == CropAtWeighing::Empty)
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, ChickId};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::{CarePlan, Reference, Slot};
    use crate::domain::plan::species::Species;
    use crate::domain::quantity::units::Grams;
    use crate::domain::time::moment::{Day, Offset};
    use crate::domain::weight::readings::*;

    fn scenario() -> Scenario {
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let day = Day::from_date(2026, 11, 2).unwrap();
        plan.reference = Some(Reference {
            weight: Grams::whole(1_040),
            day,
        });
        Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC)
    }

    #[test]
    fn an_after_feed_reading_loses_the_food_it_holds() {
        let mut script = scenario();
        script.feed(1, 7, 0, Slot::Morning, 90);
        let full = Change::Weighed {
            weight: Grams::whole(1_100),
            crop: CropAtWeighing::AfterFeed,
        };
        script.note(1, 7, 30, full.clone());
        script.note(1, 11, 0, full);
        let chick = script.chick().unwrap();
        let readings = readings(&chick, Noise::of(script.at(1, 12, 0), &chick));
        // 90 ml × 1.06 g/ml = 95.4 g; the trade's rule of thumb says a 90 ml feed adds about 95 g
        assert!((readings[0].grams - (1_100.0 - 95.4)).abs() < 1e-9);
        assert!(readings[0].sd_g > 47.0);
        // four hours later nothing is taken off
        assert!((readings[1].grams - 1_100.0).abs() < 1e-9);
    }
}

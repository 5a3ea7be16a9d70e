//! Weighings that belong together: repeated within half an hour they are one reading, their middle.

use crate::domain::journal::chick::{Chick, Noted, Weighing};
use crate::domain::journal::entries::{CropAtWeighing, EntryId};
use crate::domain::quantity::count;
use crate::domain::quantity::units::Grams;
use crate::domain::statistics::robust;
use crate::domain::time::moment::{Lived, Moment, Offset};
use crate::domain::weight::noise::{Noise, SITTING_MINUTES};

/// Two weighings further apart than this many standard deviations of their difference want a third. Ours.
const MOST_APART_SD: f64 = 2.5;

/// Empty-crop weighings that belong together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sitting {
    /// The entry of the last of them.
    pub id: EntryId,
    /// When the first of them was made.
    pub first_at: Moment,
    /// When the last of them was made.
    pub at: Moment,
    /// The wall clock's offset then.
    pub offset: Offset,
    /// The middle of them, g: the mean of two, the median of more.
    pub grams: f64,
    /// How many.
    pub weighings: u32,
    /// How far the furthest two lie apart, g.
    pub apart_g: f64,
    /// Whether somebody said that the last of them counts as it is.
    pub stands: bool,
}

impl Sitting {
    /// The day and wall time of the last of them, as it was lived then.
    pub fn lived(&self) -> Lived {
        self.at.lived(self.offset)
    }

    /// The middle of them, to a tenth of a gram.
    pub fn weight(&self) -> Grams {
        Grams::tenths_held(count::rounded(self.grams * 10.0))
    }

    /// The same as one weighing.
    pub fn noted(&self) -> Noted<Weighing> {
        Noted {
            id: self.id,
            at: self.at,
            offset: self.offset,
            what: Weighing {
                weight: self.weight(),
                crop: CropAtWeighing::Empty,
            },
        }
    }

    /// Until when another weighing is waited for.
    pub fn waits_until(&self) -> Moment {
        self.at.plus_minutes(SITTING_MINUTES)
    }

    /// Whether it counts at `now`: weighed again, and no further apart than the scale can be; or nobody
    /// wants to, or did in [`SITTING_MINUTES`].
    pub fn is_confirmed(&self, now: Moment, noise: Noise) -> bool {
        let allowed = MOST_APART_SD * 2.0_f64.sqrt() * noise.scale_sd_g(self.grams);
        let is_agreed = match self.weighings {
            ..2 => false,
            2 => self.apart_g <= allowed,
            3.. => true,
        };
        is_agreed || self.stands || self.waits_until() <= now
    }
}

/// Every sitting up to `now`, in order.
pub fn sittings(now: Moment, chick: &Chick) -> Vec<Sitting> {
    let until = chick
        .weighings
        .partition_point(|weighing| weighing.at <= now);
    let known = chick.weighings.get(..until).unwrap_or_default();
    let empty: Vec<&Noted<Weighing>> = known.iter().filter(|weighing| is_empty(weighing)).collect();
    empty
        .chunk_by(|before, after| after.at.minutes_since(before.at) <= SITTING_MINUTES)
        .filter_map(|together| joined(chick, together))
        .collect()
}

/// The latest sitting up to `now`.
pub fn latest(now: Moment, chick: &Chick) -> Option<Sitting> {
    let until = chick
        .weighings
        .partition_point(|weighing| weighing.at <= now);
    let mut empty = chick
        .weighings
        .get(..until)?
        .iter()
        .rev()
        .filter(|weighing| is_empty(weighing));
    let mut together = vec![empty.next()?];
    for weighing in empty {
        let is_near =
            |later: &&Noted<Weighing>| later.at.minutes_since(weighing.at) <= SITTING_MINUTES;
        if !together.first().is_some_and(is_near) {
            break;
        }
        together.insert(0, weighing);
    }
    joined(chick, &together)
}

fn is_empty(weighing: &Noted<Weighing>) -> bool {
    weighing.what.crop == CropAtWeighing::Empty
}

fn joined(chick: &Chick, together: &[&Noted<Weighing>]) -> Option<Sitting> {
    let last = together.last()?;
    let grams: Vec<f64> = together
        .iter()
        .map(|weighing| weighing.what.weight.as_g())
        .collect();
    let low = grams.iter().copied().min_by(f64::total_cmp)?;
    let high = grams.iter().copied().max_by(f64::total_cmp)?;
    Some(Sitting {
        id: last.id,
        first_at: together.first()?.at,
        at: last.at,
        offset: last.offset,
        grams: robust::median(&grams)?,
        weighings: u32::try_from(grams.len()).unwrap_or(u32::MAX),
        apart_g: high - low,
        stands: chick.standing.contains(&last.id),
    })
}

//! Which planned feed each sitting counts for: the one that a person said, else the one that its time
//! tells.

use std::collections::{BTreeMap, BTreeSet};

use crate::domain::feeding::matching::matched;
use crate::domain::feeding::scheduled::ScheduledFeed;
use crate::domain::feeding::sittings::Sitting;
use crate::domain::plan::care_plan::Slot;
use crate::domain::quantity::order::set_of;
use crate::domain::time::moment::Moment;

/// Longest before its time that food is the feed a person said it is, 6 h. Ours.
pub const SAID_EARLY_MINUTES: i64 = 6 * 60;

/// How long after its time it still is: until the next day's could be meant.
pub const SAID_LATE_MINUTES: i64 = 24 * 60 - SAID_EARLY_MINUTES;

/// A sitting, and what it counts for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Counted {
    /// What was offered.
    pub sitting: Sitting,
    /// The place of its planned feed; `None` for extra food.
    pub place: Option<usize>,
}

/// The sittings with the places of their planned feeds, in order. Those of one feed are one sitting.
///
/// `try_minutes` after a small sitting that nobody named, one that was named is another try at it, where
/// both are the same feed.
pub fn counted(
    scheduled: &[ScheduledFeed],
    sittings: Vec<Sitting>,
    try_minutes: i64,
) -> Vec<Counted> {
    let mut all: Vec<Counted> = sittings
        .into_iter()
        .map(|sitting| {
            let said = sitting.counts_as;
            let place = said.and_then(|slot| place_said(scheduled, slot, sitting.at));
            Counted { sitting, place }
        })
        .collect();
    let taken = set_of(all.iter().filter_map(|one| one.place));
    let tries = named_tries(&all, try_minutes);
    if !tries.is_empty() {
        let of_tries = set_of(tries.iter().map(|(_, place)| *place));
        let others = taken.iter().copied();
        let others = set_of(others.filter(|place| !of_tries.contains(place)));
        let by_time = by_time(scheduled, &all, &others);
        for (index, place) in tries {
            if by_time.contains(&(index, place))
                && let Some(small) = all.get_mut(index)
            {
                small.place = Some(place);
            }
        }
    }
    for (index, place) in by_time(scheduled, &all, &taken) {
        if let Some(one) = all.get_mut(index) {
            one.place = Some(place);
        }
    }
    joined(all)
}

/// The last feed of that name whose time had come at `at` or was at most [`SAID_EARLY_MINUTES`] away.
fn place_said(scheduled: &[ScheduledFeed], slot: Slot, at: Moment) -> Option<usize> {
    let latest = at.plus_minutes(SAID_EARLY_MINUTES);
    let end = scheduled.partition_point(|feed| feed.planned <= latest);
    let before = scheduled.iter().enumerate().take(end).rev();
    before
        .take_while(|(_, feed)| at.minutes_since(feed.planned) < SAID_LATE_MINUTES)
        .find(|(_, feed)| feed.slot == slot)
        .map(|(place, _)| place)
}

/// The small sittings that nobody named, each with the place of the next one that was named, if that
/// came soon enough to be another try at it.
fn named_tries(all: &[Counted], try_minutes: i64) -> Vec<(usize, usize)> {
    let small = all.iter().enumerate().filter(|(_, one)| {
        let sitting = &one.sitting;
        sitting.counts_as.is_none() && sitting.is_little()
    });
    small
        .filter_map(|(index, one)| {
            let until = one.sitting.latest.plus_minutes(try_minutes);
            let named = all
                .iter()
                .skip(index + 1)
                .take_while(|later| later.sitting.at <= until)
                .find(|later| later.sitting.counts_as.is_some())?;
            Some((index, named.place?))
        })
        .collect()
}

/// The sittings that have no place and that nobody named, each with the place that its time tells among
/// those not `taken`.
fn by_time(
    scheduled: &[ScheduledFeed],
    all: &[Counted],
    taken: &BTreeSet<usize>,
) -> Vec<(usize, usize)> {
    let free: Vec<(usize, Moment)> = scheduled
        .iter()
        .enumerate()
        .filter(|(place, _)| !taken.contains(place))
        .map(|(place, feed)| (place, feed.planned))
        .collect();
    let open: Vec<(usize, Moment)> = all
        .iter()
        .enumerate()
        .filter(|(_, one)| one.sitting.counts_as.is_none() && one.place.is_none())
        .map(|(index, one)| (index, one.sitting.at))
        .collect();
    let moments = |list: &[(usize, Moment)]| list.iter().map(|(_, at)| *at).collect::<Vec<_>>();
    let found = matched(&moments(&open), &moments(&free));
    open.into_iter()
        .zip(found)
        .filter_map(|((index, _), place)| Some((index, free.get(place?)?.0)))
        .collect()
}

/// Puts together the sittings of one feed.
fn joined(all: Vec<Counted>) -> Vec<Counted> {
    let mut joined: Vec<Counted> = Vec::with_capacity(all.len());
    let mut of_feed: BTreeMap<usize, usize> = BTreeMap::new();
    for one in all {
        let same = one.place.and_then(|place| of_feed.get(&place));
        if let Some(earlier) = same.and_then(|index| joined.get_mut(*index)) {
            earlier.sitting.join(&one.sitting);
        } else {
            of_feed.extend(one.place.map(|place| (place, joined.len())));
            joined.push(one);
        }
    }
    joined
}

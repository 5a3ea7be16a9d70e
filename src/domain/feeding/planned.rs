//! The feeds that the plan wants: which of them are in force on which day, when, and how far apart.
//!
//! Wall times in the night the clocks change follow the zone table; with a journey in the plan they go
//! from the breeder's clock to the owner's. A feed is in force only from the moment its plan was set.

use crate::domain::feeding::feeding_streak::longest_gap_minutes;
use crate::domain::feeding::scheduled::{FeedState, LATE_MINUTES, ScheduledFeed};
use crate::domain::homecoming::journey::{FeedMoments, feed_moments, is_doubled};
use crate::domain::journal::chick::Chick;
use crate::domain::plan::care_plan::{CarePlan, PlannedFeed, Slot};
use crate::domain::quantity::order::sorted_by;
use crate::domain::time::moment::{Day, Moment, WallTime};
use crate::domain::time::zone::Zone;

/// Shortest gap over the night, 6 h. Source: avian pediatric nutrition page of a US animal clinic
/// (crop schedule 06:00 to 24:00, "then at least 6 h off").
pub const NIGHT_GAP_MINUTES: i64 = 360;

/// Longest gap that a day feed must keep to the one before, 4 h: a usual crop emptying time (same
/// page, its worked example). Shorter plans keep three quarters of their own gap: ours.
pub const DAY_GAP_MINUTES: i64 = 240;

/// Most by which a journey west makes a gap longer than the plan's longest, minutes: as much as the clocks
/// of autumn do. Ours.
pub const LONGER_GAP_MINUTES: i64 = 60;

/// Longest time that it takes until feeds moved by a journey stand at their wall times again, days: one
/// feed a day, half a day by an hour a day, and two days to spare.
const LONGEST_SPREAD_DAYS: i32 = 14;

/// The feeds that the plan wanted or wants on the days of care from `first` to `last`, in order, none of
/// them given yet.
pub fn planned_feeds(
    now: Moment,
    chick: &Chick,
    zone: &Zone,
    first: Day,
    last: Day,
) -> Vec<ScheduledFeed> {
    let journey = chick.plan.journey;
    let mut scheduled: Vec<ScheduledFeed> = Vec::new();
    let mut after_leaving: Vec<ScheduledFeed> = Vec::new();
    // Who drops a feed that is late, or brings it back, means the one of this day too.
    let is_dropped = |slot: Slot, at: Moment| {
        let at = at.plus_minutes(LATE_MINUTES).min(now);
        chick.dropped_slots(at).contains(&slot)
    };
    let moments = |day: Day, feed: &PlannedFeed| match &journey {
        None => FeedMoments {
            at_breeder: Some(zone.moment_of_care(day, feed.time)),
            at_owner: None,
        },
        Some(journey) => feed_moments(feed.time.civil_day(day), feed.time, zone, journey),
    };
    let mut day = first.plus(-run_up_days(zone, first));
    while day <= last {
        for slot in Slot::ALL {
            let of_day = |moment: &dyn Fn(&PlannedFeed) -> Option<Moment>| {
                let found = in_force(chick, slot, moment);
                let found = found.filter(|(_, at)| !is_dropped(slot, *at));
                found.map(|(feed, at)| planned(feed, day, at))
            };
            scheduled.extend(of_day(&|feed| moments(day, feed).at_breeder));
            after_leaving.extend(of_day(&|feed| moments(day, feed).at_owner));
        }
        day = day.plus(1);
    }
    let count = chick.feeds_in_force(now).len();
    after_leaving.retain(|feed| {
        !scheduled.iter().any(|before| {
            before.slot == feed.slot && is_doubled(before.planned, feed.planned, count)
        })
    });
    scheduled.append(&mut after_leaving);
    let mut scheduled = sorted_by(scheduled, |one, other| one.planned.cmp(&other.planned));
    spread_long_day(&mut scheduled, chick, zone);
    scheduled.retain(|feed| feed.day >= first);
    keep_gaps(&mut scheduled, &chick.plan);
    scheduled
}

/// The feed of a slot as the plan in force at its time wants it, and that time; `moment` tells the time
/// of one day.
///
/// A feed that was added for an hour that had passed is not in force that day. One that was moved there
/// is, from then on.
fn in_force(
    chick: &Chick,
    slot: Slot,
    moment: impl Fn(&PlannedFeed) -> Option<Moment>,
) -> Option<(PlannedFeed, Moment)> {
    let turns = chick.plans.turns();
    let ends = turns.iter().skip(1).map(|(from, _)| *from);
    let mut was_to_come = None;
    let plans = turns.iter().zip(ends.chain([Moment::LATEST]));
    for (place, ((from, plan), end)) in plans.enumerate() {
        let feed = plan.feed(slot);
        let at = feed.and_then(|feed| Some((*feed, moment(feed)?)));
        if let Some((feed, at)) = at.filter(|(_, at)| *at < end) {
            let is_in_force = place == 0 || at >= *from;
            let is_moved = was_to_come.is_some_and(|before| before >= *from);
            return (is_in_force || is_moved)
                .then(|| (feed, if place == 0 { at } else { at.max(*from) }));
        }
        was_to_come = at.map(|(_, at)| at);
    }
    None
}

/// How many days before `first` feeds are to be told, so that those moved by a journey west stand where
/// they stood yesterday.
fn run_up_days(zone: &Zone, first: Day) -> i32 {
    let offset = |day: Day| {
        let noon = zone.moment_of(day, WallTime::from_hour(12));
        i64::from(zone.offset_at(noon).minutes())
    };
    let now = offset(first);
    let mut days = (1..=LONGEST_SPREAD_DAYS).map(|days| offset(first.plus(-days)));
    if days.any(|then| (then - now).abs() > LONGER_GAP_MINUTES) {
        LONGEST_SPREAD_DAYS
    } else {
        0
    }
}

/// Brings feeds forward that a journey west moved too far from the one before.
fn spread_long_day(scheduled: &mut [ScheduledFeed], chick: &Chick, zone: &Zone) {
    let mut before: Option<(Moment, bool)> = None;
    for feed in scheduled {
        let mut is_moved = false;
        if let Some((earlier, was_moved)) = before {
            let offset = |at| i64::from(zone.offset_at(at).minutes());
            let put_back = offset(earlier) - offset(feed.planned);
            if was_moved || put_back > LONGER_GAP_MINUTES {
                // A drop makes a gap longer, a feed brought back makes it shorter.
                let gaps = [earlier, feed.planned].map(|at| longest_gap_minutes(at, chick));
                let gap = gaps.into_iter().flatten().max().unwrap_or(24 * 60);
                let latest = earlier.plus_minutes(gap + LONGER_GAP_MINUTES);
                is_moved = latest < feed.planned;
                feed.planned = feed.planned.min(latest);
                feed.due = feed.planned;
            }
        }
        before = Some((feed.planned, is_moved));
    }
}

/// Sets the shortest gap before each feed. The plan's own holds as far as its times allow; without one it is
/// three quarters of their distance, [`DAY_GAP_MINUTES`] at most. No night is shorter than
/// [`NIGHT_GAP_MINUTES`]. Feeds that a journey east brought nearer to each other by more than an hour keep
/// the gap of their wall times: a crop empties no faster there.
fn keep_gaps(scheduled: &mut [ScheduledFeed], plan: &CarePlan) {
    let own = plan.shortest_gap_minutes.map(i64::from);
    let wall = |slot| {
        plan.feed(slot)
            .map(|feed| i64::from(feed.time.care_minutes()))
    };
    let mut before: Option<(Day, Slot, Moment)> = None;
    for feed in scheduled {
        if let Some((day, slot, due)) = before {
            let apart = feed.planned.minutes_since(due).max(0);
            let by_wall = wall(feed.slot)
                .zip(wall(slot))
                .map(|(own, before)| own - before);
            let by_wall = by_wall.filter(|by_wall| by_wall - apart > LONGER_GAP_MINUTES);
            let apart = by_wall.unwrap_or(apart);
            let own = own.map(|own| own.min(apart));
            feed.gap_minutes = if day == feed.day {
                own.unwrap_or(DAY_GAP_MINUTES.min(apart * 3 / 4))
            } else {
                own.map_or(NIGHT_GAP_MINUTES, |own| own.max(NIGHT_GAP_MINUTES))
            };
            if plan.journey.is_some() {
                feed.due = feed.planned.max(due.plus_minutes(feed.gap_minutes));
            }
        }
        before = Some((feed.day, feed.slot, feed.due));
    }
}

const fn planned(feed: PlannedFeed, day: Day, planned: Moment) -> ScheduledFeed {
    ScheduledFeed {
        slot: feed.slot,
        day,
        planned,
        due: planned,
        not_before: None,
        gap_minutes: 0,
        volume: feed.volume,
        is_first_home: false,
        left_out: None,
        state: FeedState::Upcoming,
    }
}

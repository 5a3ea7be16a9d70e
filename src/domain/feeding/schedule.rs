//! Feeds due: from the plan's wall times, what was noted, and the gaps a crop needs.
//!
//! A late feed moves the next one and is never doubled. Wall times in the night the clocks change
//! follow the zone table; with a journey in the plan they go from the breeder's clock to the owner's.
//! The first feed after a journey is smaller, and is the one that was missed on the way.

use crate::domain::homecoming::first_days::SETTLE_MINUTES;
use crate::domain::homecoming::first_days::{first_feed_since, first_feed_volumes};
use crate::domain::homecoming::journey::{FeedMoments, feed_moments, is_doubled};
use crate::domain::homecoming::transit::{TransitLevels, fed_before};
use crate::domain::journal::chick::{Chick, FeedNote, FeedOutcome, Noted};
use crate::domain::plan::care_plan::{PlannedFeed, Slot};
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::{Day, Moment};
use crate::domain::time::zone::Zone;

/// Shortest gap over the night, 6 h. Source: avian pediatric nutrition page of a US animal clinic
/// (crop schedule 06:00 to 24:00, "then at least 6 h off").
pub const NIGHT_GAP_MINUTES: i64 = 360;

/// Longest gap that a day feed must keep to the one before, 4 h: a usual crop emptying time (same
/// page, its worked example). Shorter plans keep three quarters of their own gap: ours.
pub const DAY_GAP_MINUTES: i64 = 240;

/// A feed may be given this long before it is due. Ours.
pub const EARLY_MINUTES: i64 = 30;

/// A feed is late from this long after it is due. Ours.
pub const LATE_MINUTES: i64 = 60;

/// Most by which a feed missed on the way, given after the arrival, may move the next one, minutes; a
/// chick that arrives later waits for the next feed instead. Ours: bedtime by two hours at most.
pub const FIRST_FEED_MOVES_NEXT_MINUTES: i64 = 120;

/// Longest before its time that food noted under a feed's own name is that feed, 6 h. Ours.
pub const OWN_NAME_EARLY_MINUTES: i64 = 6 * 60;

/// How long after its time it still is: until the next day's could be meant.
pub const OWN_NAME_LATE_MINUTES: i64 = 24 * 60 - OWN_NAME_EARLY_MINUTES;

/// Where a feed of a day stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum FeedState {
    /// Not yet due.
    Upcoming,
    /// May be given now.
    Due,
    /// More than [`LATE_MINUTES`] after it was due, and still time to give it.
    Late,
    /// Nothing was noted, and it is too near the next feed to give it now.
    NotNoted,
    /// Something was noted.
    Done(Noted<FeedNote>),
}

/// One feed on one day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ScheduledFeed {
    /// Which feed.
    pub slot: Slot,
    /// The civil day it belongs to.
    pub day: Day,
    /// When the plan wants it.
    pub planned: Moment,
    /// When it is due after what came before.
    pub due: Moment,
    /// The shortest gap to the feed before, minutes.
    pub gap_minutes: i64,
    /// How much the plan wants; at the first feed after a journey the most of it.
    pub volume: Millilitres,
    /// Whether it is the first feed after the arrival: smaller and thinner.
    pub is_first_home: bool,
    /// Where it stands.
    pub state: FeedState,
}

impl ScheduledFeed {
    /// Makes it the first feed after the arrival.
    fn set_first_home(&mut self) {
        self.is_first_home = true;
        (_, self.volume) = first_feed_volumes(self.volume);
    }

    /// Whether it is still to be given.
    pub const fn is_open(&self) -> bool {
        matches!(
            self.state,
            FeedState::Upcoming | FeedState::Due | FeedState::Late
        )
    }

    /// Whether it may be given from `now` on.
    pub fn is_due(&self, now: Moment) -> bool {
        self.due.plus_minutes(-EARLY_MINUTES) <= now
    }

    /// Whether food was noted of it.
    pub fn was_food(&self) -> bool {
        self.outcome().is_some_and(|outcome| outcome.is_food())
    }

    /// What became of it, when something was noted.
    pub const fn outcome(&self) -> Option<FeedOutcome> {
        if let FeedState::Done(note) = &self.state {
            Some(note.what.outcome)
        } else {
            None
        }
    }
}

/// Every feed of the plan from `first` to `last`, in order, as it stands at `now`.
///
/// Days before the chick was added hold only what was noted.
pub fn feeds(now: Moment, chick: &Chick, zone: &Zone, first: Day, last: Day) -> Vec<ScheduledFeed> {
    let mut scheduled = planned_feeds(now, chick, zone, first, last);
    for note in &chick.feeds {
        let place = place_of_note(&scheduled, note.what.slot, note.at);
        let feed = place.and_then(|place| scheduled.get_mut(place));
        // The latest note of a feed counts, but a refusal does not replace food that went in before it.
        if let Some(feed) = feed.filter(|feed| note.what.outcome.is_food() || !feed.was_food()) {
            feed.state = FeedState::Done(note.clone());
        }
    }
    move_after_late_feeds(&mut scheduled, chick);
    if let Some(index) = first_feed_home(&mut scheduled, now, chick, zone)
        && let Some(feed) = scheduled.get_mut(index)
    {
        feed.set_first_home();
    }
    // What food has put off past the next one's own time is left to that one.
    let is_put_off: Vec<bool> = scheduled
        .iter()
        .zip(scheduled.iter().skip(1))
        .map(|(feed, next)| !feed.is_first_home && feed.due >= next.planned)
        .collect();
    let too_late: Vec<Moment> = scheduled
        .iter()
        .zip(scheduled.iter().skip(1))
        .map(|(feed, next)| {
            if feed.is_first_home {
                last_chance_before(next)
            } else {
                next.planned.plus_minutes(-next.gap_minutes)
            }
        })
        .collect();
    let too_late = too_late.into_iter().map(Some).chain([None]);
    let is_put_off = is_put_off.into_iter().chain([false]);
    for ((feed, too_late), is_put_off) in scheduled.iter_mut().zip(too_late).zip(is_put_off) {
        if feed.outcome().is_some() {
            continue;
        }
        if is_put_off {
            feed.state = FeedState::NotNoted;
            continue;
        }
        let last_moment = too_late.map_or(Moment::LATEST, |moment| {
            moment.max(feed.due.plus_minutes(LATE_MINUTES))
        });
        feed.state = if !feed.is_due(now) {
            FeedState::Upcoming
        } else if now <= feed.due.plus_minutes(LATE_MINUTES) {
            FeedState::Due
        } else if now < last_moment {
            FeedState::Late
        } else {
            FeedState::NotNoted
        };
    }
    // A chick whose arrival nobody noted may be at home or not: nothing is moved, but whatever is open is
    // a first feed.
    let may_be_home = chick.arrived.is_none() && first_feed_since(now, chick).is_some();
    let mut open = scheduled.iter_mut().filter(|feed| feed.is_open());
    if let Some(feed) = open.next().filter(|_| may_be_home) {
        feed.set_first_home();
    }
    let since = chick
        .arrived
        .as_ref()
        .map_or(chick.added_at, |arrived| arrived.at.max(chick.added_at));
    scheduled
        .retain(|feed| feed.outcome().is_some() || feed.is_first_home || feed.planned >= since);
    scheduled
}

/// Which of the feeds a note of `slot` at `at` is of: the last of that name whose time had come or was
/// at most [`OWN_NAME_EARLY_MINUTES`] away. What was given long before a feed's time is no reason to leave
/// it out, whatever it was called.
pub fn place_of_note(scheduled: &[ScheduledFeed], slot: Slot, at: Moment) -> Option<usize> {
    scheduled.iter().rposition(|feed| {
        let late_by = at.minutes_since(feed.planned);
        feed.slot == slot && (-OWN_NAME_EARLY_MINUTES..OWN_NAME_LATE_MINUTES).contains(&late_by)
    })
}

/// The next feed to give: the first that is open, from yesterday's last to the day after tomorrow.
pub fn next_feed(now: Moment, chick: &Chick, zone: &Zone) -> Option<ScheduledFeed> {
    let today = zone.lived(now).day;
    feeds(now, chick, zone, today.plus(-1), today.plus(2))
        .into_iter()
        .find(ScheduledFeed::is_open)
}

/// The feeds from `first` to `last` that do not fall on their wall time yet: after a journey they move
/// towards it a little each day.
pub fn feeds_on_the_move(
    now: Moment,
    chick: &Chick,
    zone: &Zone,
    first: Day,
    last: Day,
) -> Vec<ScheduledFeed> {
    let mut found = feeds(now, chick, zone, first, last);
    found.retain(|feed| {
        let planned = chick.plan.feed(feed.slot);
        planned.is_some_and(|planned| zone.moment_of(feed.day, planned.time) != feed.planned)
    });
    found
}

fn planned_feeds(
    now: Moment,
    chick: &Chick,
    zone: &Zone,
    first: Day,
    last: Day,
) -> Vec<ScheduledFeed> {
    let journey = chick.plan.journey;
    let mut scheduled: Vec<ScheduledFeed> = Vec::new();
    let mut after_leaving: Vec<ScheduledFeed> = Vec::new();
    let mut day = first;
    while day <= last {
        let of_day = |slot| chick.plans.feed_of(slot, |time| zone.moment_of(day, time));
        for feed in Slot::ALL.into_iter().filter_map(of_day) {
            let moments = match &journey {
                None => FeedMoments {
                    at_breeder: Some(zone.moment_of(day, feed.time)),
                    at_owner: None,
                },
                Some(journey) => feed_moments(day, feed.time, zone, journey),
            };
            // Dropping a late feed, or bringing it back, counts for this day too.
            let is_in_force = |at: &Moment| {
                let at = at.plus_minutes(LATE_MINUTES).min(now);
                !chick.dropped_slots(at).contains(&feed.slot)
            };
            let at = |moment: Option<Moment>| {
                let moment = moment.filter(is_in_force);
                moment.map(|at| planned_feed(feed, day, at))
            };
            scheduled.extend(at(moments.at_breeder));
            after_leaving.extend(at(moments.at_owner));
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
    let mut before: Option<(Day, Moment)> = None;
    for feed in &mut scheduled {
        if let Some((day, at)) = before {
            feed.gap_minutes = if day == feed.day {
                DAY_GAP_MINUTES.min(feed.planned.minutes_since(at).max(0) * 3 / 4)
            } else {
                NIGHT_GAP_MINUTES
            };
            if journey.is_some() {
                feed.due = feed.planned.max(at.plus_minutes(feed.gap_minutes));
            }
        }
        before = Some((feed.day, feed.due));
    }
    scheduled
}

const fn planned_feed(feed: PlannedFeed, day: Day, planned: Moment) -> ScheduledFeed {
    ScheduledFeed {
        slot: feed.slot,
        day,
        planned,
        due: planned,
        gap_minutes: 0,
        volume: feed.volume,
        is_first_home: false,
        state: FeedState::Upcoming,
    }
}

/// Which feed is the first after the arrival, as long as none was given; it is due once the chick is
/// warm.
///
/// It is the last feed that fell due on the way, unless it would move the next one too far. Else it is
/// the next one, brought forward so far that the chick waits no longer than a journey is planned for.
fn first_feed_home(
    scheduled: &mut [ScheduledFeed],
    now: Moment,
    chick: &Chick,
    zone: &Zone,
) -> Option<usize> {
    let arrived = first_feed_since(now, chick).filter(|_| chick.arrived.is_some())?;
    let warm = arrived.plus_minutes(SETTLE_MINUTES);
    let is_not_done = |feed: &ScheduledFeed| feed.outcome().is_none();
    let next = scheduled
        .iter()
        .position(|feed| feed.planned > arrived && is_not_done(feed))?;
    // What was tried at home, as with a crop that was not empty, is not asked for at once again.
    let tried = |feed: &Noted<FeedNote>| arrived <= feed.at && feed.at <= now;
    let is_tried = chick.feeds.iter().any(tried);
    let journey = chick.plan.journey;
    let journey = journey.filter(|journey| journey.left < arrived && !is_tried);
    let Some(journey) = journey else {
        return Some(next);
    };
    let last_chance = last_chance_before(scheduled.get(next)?);
    let missed = next.checked_sub(1).filter(|_| warm.max(now) < last_chance);
    if let Some(index) = missed
        && let Some(feed) = scheduled.get_mut(index)
        && feed.planned > journey.left
        && is_not_done(feed)
    {
        feed.due = feed.due.max(warm);
        return Some(index);
    }
    let longest = TransitLevels::of_plan(&chick.plan, &journey, zone).plan;
    let hungry = fed_before(now, chick, &journey).plus_minutes(longest);
    let feed = scheduled.get_mut(next)?;
    feed.due = feed.due.min(warm.max(hungry).max(last_chance));
    Some(next)
}

/// Until when the first feed at home may be given before `next` as one of its own.
fn last_chance_before(next: &ScheduledFeed) -> Moment {
    let moved_to = next.planned.plus_minutes(FIRST_FEED_MOVES_NEXT_MINUTES);
    moved_to.plus_minutes(-next.gap_minutes)
}

/// Keeps each feed's gap to the food before it: up to its planned time whatever was given, after it
/// what was given under the name of an earlier feed.
fn move_after_late_feeds(scheduled: &mut [ScheduledFeed], chick: &Chick) {
    let is_food = |note: &Noted<FeedNote>| note.what.outcome.is_food();
    let mut earlier: Option<Moment> = None;
    for feed in scheduled.iter_mut() {
        let mut notes = chick.feeds.iter().rev();
        let before = notes.find(|note| note.at <= feed.planned && is_food(note));
        let before = before.map(|note| note.at).max(earlier);
        if let Some(at) = before {
            feed.due = feed.due.max(at.plus_minutes(feed.gap_minutes));
        }
        if let FeedState::Done(own) = &feed.state
            && is_food(own)
        {
            earlier = earlier.max(Some(own.at));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::feeding::schedule::*;
    use crate::domain::journal::entries::{Change, ChickId};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::CarePlan;
    use crate::domain::plan::species::Species;
    use crate::domain::time::moment::{Offset, WallTime};

    /// Three feeds a day: morning 07:00, midday 14:00, bedtime 21:00.
    fn scenario() -> Scenario {
        let plan = CarePlan::default_for(Species::GreenWingedMacaw);
        Scenario::new(
            ChickId([7; 12]),
            plan,
            Day::from_date(2026, 11, 2).unwrap(),
            Offset::UTC,
        )
    }

    fn next(script: &Scenario, now: Moment) -> ScheduledFeed {
        next_feed(now, &script.chick().unwrap(), &script.zone()).unwrap()
    }

    #[test]
    fn a_feed_is_due_from_half_an_hour_before_to_an_hour_after() {
        let mut script = scenario();
        script.feed(0, 7, 0, Slot::Morning, 60);
        let state = |hour, minute| next(&script, script.at(0, hour, minute)).state;
        assert_eq!(next(&script, script.at(0, 8, 0)).slot, Slot::Midday);
        assert_eq!(state(13, 29), FeedState::Upcoming);
        assert_eq!(state(13, 30), FeedState::Due);
        assert_eq!(state(15, 0), FeedState::Due);
        assert_eq!(state(15, 1), FeedState::Late);
    }

    #[test]
    fn a_feed_too_near_the_next_one_is_no_longer_offered() {
        let mut script = scenario();
        script.feed(0, 7, 0, Slot::Morning, 60);
        // bedtime at 21:00 keeps 4 h, so midday may be given until 17:00
        assert_eq!(next(&script, script.at(0, 16, 59)).slot, Slot::Midday);
        assert_eq!(next(&script, script.at(0, 17, 0)).slot, Slot::Bedtime);
    }

    #[test]
    fn a_late_feed_moves_the_next_one() {
        let mut script = scenario();
        script.feed(0, 11, 30, Slot::Morning, 60);
        let midday = next(&script, script.at(0, 12, 0));
        assert_eq!(
            (midday.slot, midday.due),
            (Slot::Midday, script.at(0, 15, 30))
        );
        assert_eq!(midday.planned, script.at(0, 14, 0));
    }

    #[test]
    fn a_feed_so_late_that_the_next_ones_time_has_passed_moves_it_too() {
        // the day's feeds keep four hours: 14:05 and 18:05
        let mut script = scenario();
        script.feed(0, 14, 5, Slot::Morning, 60);
        let midday = next(&script, script.at(0, 14, 10));
        assert_eq!(
            (midday.slot, midday.due),
            (Slot::Midday, script.at(0, 18, 5))
        );
        assert_eq!(midday.state, FeedState::Upcoming);
    }

    #[test]
    fn food_at_a_feeds_own_time_under_another_name_moves_it() {
        let mut script = scenario();
        script.feed(0, 14, 0, Slot::Bedtime, 60);
        let midday = next(&script, script.at(0, 14, 10));
        assert_eq!(
            (midday.slot, midday.due),
            (Slot::Midday, script.at(0, 18, 0))
        );
    }

    #[test]
    fn a_bedtime_feed_after_midnight_belongs_to_the_evening_and_leaves_six_hours() {
        let mut script = scenario();
        script.feed(1, 1, 30, Slot::Bedtime, 60);
        let morning = next(&script, script.at(1, 2, 0));
        assert_eq!(
            (morning.slot, morning.due),
            (Slot::Morning, script.at(1, 7, 30))
        );
    }

    #[test]
    fn a_dropped_feed_is_no_longer_due_and_comes_back_when_brought_back() {
        let mut script = scenario();
        script.feed(0, 7, 0, Slot::Morning, 60);
        script.note(
            0,
            8,
            0,
            Change::FeedDropped {
                slot: Slot::Midday,
                by_breeder: false,
            },
        );
        assert_eq!(next(&script, script.at(0, 10, 0)).slot, Slot::Bedtime);
        script.note(0, 9, 0, Change::FeedBroughtBack { slot: Slot::Midday });
        assert_eq!(next(&script, script.at(0, 10, 0)).slot, Slot::Midday);
    }

    #[test]
    fn the_days_before_a_chick_was_added_are_empty() {
        let script = scenario();
        let day = Day::from_date(2026, 11, 2).unwrap();
        let chick = script.chick().unwrap();
        assert_eq!(
            feeds(
                script.at(0, 6, 0),
                &chick,
                &script.zone(),
                day.plus(-3),
                day.plus(-1)
            ),
            []
        );
    }

    #[test]
    fn feeds_that_are_planned_close_together_keep_three_quarters_of_their_time() {
        // three hours apart: 180 min × 3/4 = 135 min; seven hours apart: 4 h at most
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        plan.feeds[1].time = WallTime::from_minutes(10 * 60);
        let day = Day::from_date(2026, 11, 2).unwrap();
        let mut script = Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC);
        script.feed(1, 7, 0, Slot::Morning, 80);
        assert_eq!(next(&script, script.at(1, 9, 0)).gap_minutes, 135);
        script.feed(1, 10, 0, Slot::Midday, 80);
        assert_eq!(next(&script, script.at(1, 12, 0)).gap_minutes, 240);
    }

    #[test]
    fn a_feed_that_was_refused_late_moves_no_other() {
        let mut script = scenario();
        script.feed(1, 7, 0, Slot::Morning, 80);
        let slot = Slot::Midday;
        script.note(1, 18, 30, Change::FeedRefused { slot });
        let bedtime = next(&script, script.at(1, 19, 0));
        assert_eq!(bedtime.due, script.at(1, 21, 0));
        // taken at the same time, it moves the bedtime feed by the four hours of the day
        let mut script = scenario();
        script.feed(1, 7, 0, Slot::Morning, 80);
        script.feed(1, 18, 30, Slot::Midday, 80);
        let bedtime = next(&script, script.at(1, 19, 0));
        assert_eq!(bedtime.due, script.at(1, 22, 30));
    }

    fn dropped(slot: Slot) -> Change {
        let by_breeder = true;
        Change::FeedDropped { slot, by_breeder }
    }

    #[test]
    fn a_feed_dropped_in_the_afternoon_is_gone_that_day_and_one_brought_back_is_there() {
        let mut script = scenario();
        script.feed(0, 7, 0, Slot::Morning, 60);
        script.feed(0, 14, 0, Slot::Midday, 40);
        script.note(0, 15, 30, dropped(Slot::Bedtime));
        let morning = next(&script, script.at(0, 15, 40));
        assert_eq!(
            (morning.slot, morning.due),
            (Slot::Morning, script.at(1, 7, 0))
        );
        let slot = Slot::Bedtime;
        script.note(0, 16, 0, Change::FeedBroughtBack { slot });
        let bedtime = next(&script, script.at(0, 16, 10));
        assert_eq!((bedtime.slot, bedtime.due), (slot, script.at(0, 21, 0)));
    }

    #[test]
    fn a_feed_dropped_within_an_hour_of_its_time_was_not_missed() {
        let seen = |minute| {
            let mut script = scenario();
            script.feed(0, 7, 0, Slot::Morning, 60);
            script.note(0, 15, minute, dropped(Slot::Midday));
            let day = script.zone().lived(script.at(0, 12, 0)).day;
            let chick = script.chick().unwrap();
            let found = feeds(script.at(0, 18, 0), &chick, &script.zone(), day, day);
            found.iter().any(|feed| feed.slot == Slot::Midday)
        };
        assert!(!seen(0));
        assert!(seen(1));
    }

    /// One feed a day, at 20:00.
    fn one_a_day() -> Scenario {
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        plan.feeds.retain(|feed| feed.slot == Slot::Bedtime);
        plan.feeds[0].time = WallTime::from_minutes(20 * 60);
        let day = Day::from_date(2026, 11, 2).unwrap();
        Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC)
    }

    #[test]
    fn food_in_the_morning_takes_the_place_of_last_nights_feed_and_never_of_the_one_to_come() {
        for was_fed in [false, true] {
            let mut script = one_a_day();
            if was_fed {
                script.feed(0, 20, 0, Slot::Bedtime, 60);
            }
            script.feed(1, 9, 30, Slot::Bedtime, 60);
            let tonight = next(&script, script.at(1, 9, 40));
            assert_eq!(tonight.due, script.at(1, 20, 0));
            assert_eq!(tonight.state, FeedState::Upcoming);
        }
    }

    #[test]
    fn food_under_its_own_name_is_a_feed_from_six_hours_before_its_time() {
        let after = |hour, minute| {
            let mut script = one_a_day();
            script.feed(0, 20, 0, Slot::Bedtime, 60);
            script.feed(1, hour, minute, Slot::Bedtime, 60);
            next(&script, script.at(1, 15, 0)).day
        };
        let day = Day::from_date(2026, 11, 3).unwrap();
        assert_eq!(after(13, 59), day);
        assert_eq!(after(14, 0), day.plus(1));
    }

    #[test]
    fn a_feed_put_off_past_the_next_ones_time_is_left_to_that_one() {
        // four hours after 16:59 are 20:59, after 17:00 they are the bedtime feed's 21:00
        let after = |hour, minute| {
            let mut script = scenario();
            script.feed(0, hour, minute, Slot::Morning, 60);
            let feed = next(&script, script.at(0, 17, 30));
            (feed.slot, feed.due)
        };
        let script = scenario();
        assert_eq!(after(16, 59), (Slot::Midday, script.at(0, 20, 59)));
        assert_eq!(after(17, 0), (Slot::Bedtime, script.at(0, 21, 0)));
    }

    #[test]
    fn what_was_refused_afterwards_undoes_no_food_and_a_second_try_undoes_the_refusal() {
        let slot = Slot::Midday;
        let outcome = |first_is_food: bool| {
            let mut script = scenario();
            for is_food in [first_is_food, !first_is_food] {
                if is_food {
                    script.feed(0, 14, 0, slot, 40);
                } else {
                    script.note(0, 14, 20, Change::FeedRefused { slot });
                }
            }
            let day = script.zone().lived(script.at(0, 12, 0)).day;
            let chick = script.chick().unwrap();
            let found = feeds(script.at(0, 15, 0), &chick, &script.zone(), day, day);
            let midday = found.into_iter().find(|feed| feed.slot == slot);
            midday.and_then(|feed| feed.outcome()).unwrap()
        };
        assert!(outcome(true).is_food());
        assert!(outcome(false).is_food());
    }
}

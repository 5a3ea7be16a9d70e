//! Feeds due: from the plan's wall times, what was eaten, and the gaps a crop needs.
//!
//! A late feed moves the next one and is never doubled. A feed without a note is a question and not a
//! fact. The first feed after a journey is smaller, and is the one that was missed on the way.

use crate::domain::feeding::counted::{Counted, counted};
use crate::domain::feeding::feeding_streak::{AFTER_LONGEST_GAP_MINUTES, longest_gap_minutes};
use crate::domain::feeding::matching::window_start;
use crate::domain::feeding::planned::{NIGHT_GAP_MINUTES, planned_feeds};
use crate::domain::feeding::scheduled::{FeedState, LATE_MINUTES, ScheduledFeed};
use crate::domain::feeding::sittings::{Sitting, TRY_MINUTES, sittings, try_minutes};
use crate::domain::homecoming::first_days::{SETTLE_MINUTES, first_feed_since};
use crate::domain::homecoming::transit::{TransitLevels, fed_before};
use crate::domain::journal::chick::{Chick, FeedNote, FeedOutcome, Noted};
use crate::domain::journal::entries::{Journal, WhyPassedOver};
use crate::domain::journal::signs::Sign;
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::{Age, CARE_DAY_STARTS, Day, Moment, WallTime};
use crate::domain::time::zone::Zone;

/// Most by which a feed missed on the way, given after the arrival, may move the next one, minutes; a
/// chick that arrives later waits for the next feed instead. Ours: bedtime by two hours at most.
pub const FIRST_FEED_MOVES_NEXT_MINUTES: i64 = 120;

/// A chick is feathered from this age, days: 8 weeks. Common practice. Younger, no night is left without
/// its last feed.
pub const FEATHERED_FROM_DAYS: i32 = 56;

/// After a night without its last feed the first one is due from here on. Common practice.
const EARLY_MORNING: WallTime = WallTime::from_hour(6);

/// Every feed of the plan on the days of care from `first` to `last`, in order, as it stands at `now`.
///
/// Days before the chick was added hold only what was noted.
pub fn feeds(now: Moment, chick: &Chick, zone: &Zone, first: Day, last: Day) -> Vec<ScheduledFeed> {
    // A day more on either side, so that no window ends with the list.
    let (before, after) = (first.plus(-1), last.plus(1));
    let mut scheduled = planned_feeds(now, chick, zone, before, after);
    let from = zone.moment_of(before, CARE_DAY_STARTS);
    let until = now.plus_minutes(Journal::CLOCK_SLACK_MINUTES);
    let sittings = counted(&scheduled, sittings(chick, from, until), try_minutes(chick));
    mark_notes(&mut scheduled, chick, &sittings);
    move_after_food(&mut scheduled, zone, &sittings);
    if let Some(index) = first_feed_home(&mut scheduled, now, chick, zone)
        && let Some(feed) = scheduled.get_mut(index)
    {
        feed.set_first_home();
    }
    settle(&mut scheduled, now, chick, zone, &sittings);
    // Who drops a feed means the one that is still open too.
    let dropped = chick.dropped_slots(now);
    scheduled.retain(|feed| !feed.is_open() || !dropped.contains(&feed.slot));
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
    scheduled.retain(|feed| {
        let is_noted = feed.sitting().is_some() || feed.left_out.is_some();
        (first..=last).contains(&feed.day)
            && (is_noted || feed.is_first_home || feed.planned >= since)
    });
    scheduled
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
        planned.is_some_and(|planned| zone.moment_of_care(feed.day, planned.time) != feed.planned)
    });
    found
}

/// Puts what was offered, and what was left out, to the feeds.
fn mark_notes(scheduled: &mut [ScheduledFeed], chick: &Chick, sittings: &[Counted]) {
    for Counted { sitting, place } in sittings {
        let Some(feed) = place.and_then(|place| scheduled.get_mut(place)) else {
            continue;
        };
        let sitting = sitting.clone();
        feed.state = if sitting.is_feed(feed.volume) {
            FeedState::Done(sitting)
        } else {
            FeedState::Refused(sitting)
        };
    }
    for note in &chick.feeds {
        if let FeedOutcome::PassedOver { why, day } = note.what.outcome {
            let is_of = |feed: &&mut ScheduledFeed| {
                feed.day == day && Some(feed.slot) == note.what.counts_as
            };
            if let Some(feed) = scheduled.iter_mut().find(is_of) {
                feed.left_out = Some(why);
            }
        }
    }
}

/// Keeps each feed's gap to the food before it. What counts for a later feed moves no earlier one, and
/// less than a quarter of a feed moves none.
fn move_after_food(scheduled: &mut [ScheduledFeed], zone: &Zone, sittings: &[Counted]) {
    let ends = scheduled.iter().skip(1).map(|next| next.planned);
    let ends: Vec<Moment> = ends.chain([Moment::LATEST]).collect();
    for (place, (feed, end)) in scheduled.iter_mut().zip(ends).enumerate() {
        let until = feed.sitting().map_or(end, |own| own.at);
        let before = sittings.iter().filter(|before| match before.place {
            Some(counted) => counted < place,
            None => before.sitting.at < until,
        });
        let before = before
            .filter(|before| before.sitting.is_feed(feed.volume))
            .filter_map(|before| before.sitting.food_at);
        let Some(fed) = before.max() else { continue };
        let midnight = zone.moment_of(feed.day.plus(1), WallTime::from_hour(0));
        let mut rested = fed.plus_minutes(feed.gap_minutes);
        if rested > midnight.max(feed.planned) && fed < midnight {
            rested = fed.plus_minutes(NIGHT_GAP_MINUTES);
        }
        feed.due = feed.due.max(rested);
        feed.not_before = Some(rested);
    }
}

/// After food, the next feed that is not put off is due at most the plan's longest gap and
/// [`AFTER_LONGEST_GAP_MINUTES`] later, but not before its own day of care: a feed given early, or one that
/// puts off the next, leaves no longer wait.
fn bring_forward(feed: &mut ScheduledFeed, eaten: Moment, chick: &Chick, zone: &Zone) {
    // A drop makes the gap longer, a feed brought back makes it shorter.
    let gaps = [eaten, feed.planned].map(|at| longest_gap_minutes(at, chick));
    if let Some(gap) = gaps.into_iter().flatten().max()
        && feed.sitting().is_none()
    {
        let latest = eaten.plus_minutes(gap + AFTER_LONGEST_GAP_MINUTES);
        let latest = latest.max(zone.moment_of(feed.day, CARE_DAY_STARTS));
        let rested = feed.not_before.unwrap_or(latest);
        feed.due = feed.due.min(latest.max(rested));
    }
}

/// Says of each feed where it stands, one after the other.
fn settle(
    scheduled: &mut [ScheduledFeed],
    now: Moment,
    chick: &Chick,
    zone: &Zone,
    sittings: &[Counted],
) {
    let planned: Vec<Moment> = scheduled.iter().map(|feed| feed.planned).collect();
    let last_noted = scheduled.iter().rposition(|feed| feed.sitting().is_some());
    let try_minutes = try_minutes(chick);
    let mut was_missing = None;
    let mut eaten = None;
    for place in 0..scheduled.len() {
        let end = last_moment(scheduled, place, &planned, now, chick, zone, sittings);
        let next = scheduled.get(place + 1).map(|next| next.planned);
        let is_past = last_noted.is_some_and(|noted| noted > place);
        let is_night_feed = scheduled.get(place).is_some_and(|feed| {
            is_to_be_fed_at_night(scheduled, feed.day, now, chick, zone, sittings)
        });
        let Some(feed) = scheduled.get_mut(place) else {
            continue;
        };
        if let Some((day, missed)) = was_missing
            && day < feed.day
            && feed.sitting().is_none()
        {
            let early = zone.moment_of(feed.day, EARLY_MORNING);
            let eaten = sittings.iter().rev().find_map(|fed| fed.sitting.food_at);
            let rested = eaten.map_or(early, |eaten| eaten.plus_minutes(NIGHT_GAP_MINUTES));
            // A feed since then stands for the missed one, whichever it counts for.
            let mut since = sittings.iter().rev().map(|fed| &fed.sitting);
            let is_made_up = since.any(|fed| fed.at > missed && fed.is_feed(feed.volume));
            if !is_made_up {
                feed.due = feed.due.min(early.max(rested));
            }
        }
        if let Some(eaten) = eaten {
            // A feed given so early that it counts for none is food all the same.
            let extra = sittings.iter().filter(|one| one.place.is_none());
            let extra = extra
                .map(|one| &one.sitting)
                .filter(|fed| fed.at < feed.planned && fed.is_feed(feed.volume));
            let extra = extra.filter_map(|fed| fed.food_at).max();
            bring_forward(feed, extra.map_or(eaten, |fed| fed.max(eaten)), chick, zone);
        }
        let midnight = zone.moment_of(feed.day.plus(1), WallTime::from_hour(0));
        let sleeps = feed.planned <= midnight && midnight < feed.due && !is_night_feed;
        let is_put_off =
            !feed.is_first_home && (sleeps || next.is_some_and(|next| feed.due >= next));
        feed.state = match std::mem::replace(&mut feed.state, FeedState::Upcoming) {
            FeedState::Refused(sitting) => {
                let until = sitting.latest.plus_minutes(try_minutes).min(end);
                let again = try_again(&sitting, chick).filter(|again| *again < until);
                match again.filter(|_| now < until && !is_past) {
                    Some(again) => {
                        let lacking = feed.volume.tenths() - sitting.taken.tenths();
                        feed.volume = Millilitres::tenths_held(lacking);
                        feed.due = again;
                        feed.not_before = Some(again);
                        FeedState::TryAgain(sitting)
                    }
                    None => FeedState::Refused(sitting),
                }
            }
            FeedState::Done(sitting) => FeedState::Done(sitting),
            FeedState::Upcoming
            | FeedState::Due
            | FeedState::Late
            | FeedState::TryAgain(_)
            | FeedState::Unanswered
            | FeedState::PutOff
            | FeedState::OnTheWay
            | FeedState::LeftOut(_) => {
                let is_late = feed.minutes_to_go(now) < -LATE_MINUTES;
                match feed.left_out {
                    Some(why) if why != WhyPassedOver::NotPossible => FeedState::LeftOut(why),
                    Some(_) | None if is_put_off => FeedState::PutOff,
                    Some(_) | None if !feed.is_due(now) => FeedState::Upcoming,
                    Some(why) if is_past || now >= end => FeedState::LeftOut(why),
                    Some(_) | None if !is_late && !is_past => FeedState::Due,
                    Some(_) | None if is_on_the_way(feed, now, chick) => FeedState::OnTheWay,
                    None if is_past || now >= end => FeedState::Unanswered,
                    Some(_) | None => FeedState::Late,
                }
            }
        };
        was_missing = feed.is_missing().then_some((feed.day, feed.planned));
        eaten = match &feed.state {
            FeedState::Done(sitting) => sitting.food_at,
            FeedState::PutOff => eaten,
            FeedState::Upcoming
            | FeedState::Due
            | FeedState::Late
            | FeedState::TryAgain(_)
            | FeedState::Refused(_)
            | FeedState::Unanswered
            | FeedState::OnTheWay
            | FeedState::LeftOut(_) => None,
        };
    }
}

/// Whether a feed that was not noted fell on the way: somebody else's, or nobody's, as the journey was
/// planned.
fn is_on_the_way(feed: &ScheduledFeed, now: Moment, chick: &Chick) -> bool {
    let Some(journey) = chick.plan.journey else {
        return false;
    };
    let home = chick
        .arrived
        .as_ref()
        .map_or(journey.expected, |arrived| arrived.at);
    let is_open_again =
        now >= home && chick.arrived.is_none() && feed.due.plus_minutes(TRY_MINUTES) > now;
    journey.left < feed.planned && feed.planned <= home && !feed.is_first_home && !is_open_again
}

/// When a feed that was refused is to be offered again, as long after its latest try as the plan says; `None` when every try is over. None follows food
/// that came back, or a feed that went down wrong.
fn try_again(sitting: &Sitting, chick: &Chick) -> Option<Moment> {
    let forbids = |sign: Sign| {
        matches!(
            sign,
            Sign::BroughtBackOnce
                | Sign::Vomiting
                | Sign::ClickCleared
                | Sign::ClickStays
                | Sign::WentDownWrong
        )
    };
    let seen = chick.signs.iter().rev();
    let mut seen = seen.take_while(|seen| seen.at >= sitting.at);
    let has_come_home = chick
        .arrived
        .as_ref()
        .is_some_and(|arrived| arrived.at >= sitting.latest);
    if has_come_home || seen.any(|seen| forbids(seen.what)) {
        return None;
    }
    let waits = &chick.plan.retries_minutes;
    let wait = waits.get(sitting.tries.checked_sub(1)?)?;
    Some(sitting.latest.plus_minutes(i64::from(*wait)))
}

/// Until when a feed may be given as itself.
///
/// Where nobody knows whether it was given, that is until its food would count for the next one. A feed
/// known not to have been given may move the next one until midnight, or as far as the plan itself goes.
/// After midnight a feathered chick that had half of the day's food sleeps.
fn last_moment(
    scheduled: &[ScheduledFeed],
    place: usize,
    planned: &[Moment],
    now: Moment,
    chick: &Chick,
    zone: &Zone,
    sittings: &[Counted],
) -> Moment {
    let (Some(feed), Some(next)) = (scheduled.get(place), scheduled.get(place + 1)) else {
        return Moment::LATEST;
    };
    if feed.is_first_home {
        return last_chance_before(next).max(feed.due.plus_minutes(LATE_MINUTES));
    }
    let midnight = zone.moment_of(feed.day.plus(1), WallTime::from_hour(0));
    let counts_for_next = window_start(planned, place + 1).unwrap_or(next.planned);
    let is_known = feed.left_out.is_some();
    let end = if next.day == feed.day {
        let after = scheduled.get(place + 2);
        let after = after.map_or(Moment::LATEST, |after| after.planned);
        let moved_to = next.planned.max(midnight).min(after);
        let end = if is_known {
            next.planned
        } else {
            counts_for_next
        };
        end.min(moved_to.plus_minutes(-next.gap_minutes))
    } else if is_to_be_fed_at_night(scheduled, feed.day, now, chick, zone, sittings) {
        counts_for_next
    } else {
        midnight
    };
    // A try has its own end.
    if feed.sitting().is_some() {
        end
    } else {
        end.max(feed.due.plus_minutes(LATE_MINUTES))
    }
}

/// Whether a chick is to be fed after midnight: in pin feathers, or with less than half of the day's food.
fn is_to_be_fed_at_night(
    scheduled: &[ScheduledFeed],
    day: Day,
    now: Moment,
    chick: &Chick,
    zone: &Zone,
    sittings: &[Counted],
) -> bool {
    let age = chick
        .plan
        .hatched
        .and_then(|hatched| Age::on(zone.lived(now).day, hatched));
    let is_in_pins = age.is_some_and(|age| age.days() < FEATHERED_FROM_DAYS);
    let starts = |day: Day| zone.moment_of(day, CARE_DAY_STARTS);
    let of_day = sittings
        .iter()
        .map(|counted| &counted.sitting)
        .filter(|sitting| (starts(day)..starts(day.plus(1))).contains(&sitting.at));
    let taken: i32 = of_day.map(|sitting| sitting.taken.tenths()).sum();
    let of_day = scheduled.iter().filter(|feed| feed.day == day);
    let wanted: i32 = of_day.map(|feed| feed.volume.tenths()).sum();
    is_in_pins || taken * 2 < wanted
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
    let is_not_done = |feed: &ScheduledFeed| feed.sitting().is_none() && feed.left_out.is_none();
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

#[cfg(test)]
mod tests {
    use crate::domain::feeding::schedule::*;
    use crate::domain::journal::entries::{Change, ChickId, Response};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::CarePlan;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::plan::species::Species;
    use crate::domain::time::moment::Offset;

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
    fn a_feed_without_a_note_is_asked_about_and_offered_until_food_would_count_for_the_next() {
        let mut script = scenario();
        script.food(0, 7, 0, 60);
        // three hours before bedtime food counts for it
        let midday = next(&script, script.at(0, 17, 59));
        assert_eq!((midday.slot, midday.is_asked()), (Slot::Midday, true));
        let now = script.at(0, 18, 0);
        assert_eq!(next(&script, now).slot, Slot::Bedtime);
        let chick = script.chick().unwrap();
        let day = Day::from_date(2026, 11, 2).unwrap();
        let found = feeds(now, &chick, &script.zone(), day, day);
        assert_eq!(found[1].state, FeedState::Unanswered);
        assert!(found[1].is_asked() && !found[1].is_missing());
    }

    #[test]
    fn a_feed_known_not_to_have_been_given_is_offered_while_the_next_one_moves_to_midnight_at_most()
    {
        let mut script = scenario();
        script.food(0, 7, 0, 60);
        script.leave_out(0, 17, 30, Slot::Midday, WhyPassedOver::NotPossible);
        // 24:00 less the four hours of the day
        let midday = next(&script, script.at(0, 19, 59));
        assert_eq!(midday.slot, Slot::Midday);
        assert!(midday.is_missing() && !midday.is_asked());
        assert_eq!(next(&script, script.at(0, 20, 0)).slot, Slot::Bedtime);
        script.feed(0, 19, 50, Slot::Midday, 60);
        let bedtime = next(&script, script.at(0, 20, 0));
        assert_eq!(bedtime.due, script.at(0, 23, 50));
    }

    #[test]
    fn a_refused_feed_is_offered_again_twice_and_then_counts_as_missed() {
        let mut script = scenario();
        script.food(0, 7, 0, 60);
        script.note(0, 14, 0, Change::refused(None));
        let again = next(&script, script.at(0, 14, 1));
        assert!(matches!(again.state, FeedState::TryAgain(_)));
        assert_eq!(
            (again.slot, again.due),
            (Slot::Midday, script.at(0, 14, 45))
        );
        script.note(0, 14, 50, Change::refused(None));
        // two and a half hours later
        let again = next(&script, script.at(0, 15, 0));
        assert_eq!(
            (again.slot, again.due),
            (Slot::Midday, script.at(0, 17, 20))
        );
        script.note(0, 17, 25, Change::refused(None));
        let bedtime = next(&script, script.at(0, 17, 30));
        assert_eq!(
            (bedtime.slot, bedtime.due),
            (Slot::Bedtime, script.at(0, 21, 0))
        );
        let chick = script.chick().unwrap();
        let day = Day::from_date(2026, 11, 2).unwrap();
        let found = feeds(script.at(0, 17, 30), &chick, &script.zone(), day, day);
        assert!(found[1].is_missing());
    }

    fn with_plan(edit: impl FnOnce(&mut CarePlan)) -> Scenario {
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        edit(&mut plan);
        let day = Day::from_date(2026, 11, 2).unwrap();
        Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC)
    }

    #[test]
    fn the_plan_says_when_a_refused_feed_is_offered_again() {
        let mut script = with_plan(|plan| plan.retries_minutes = vec![30, 200]);
        script.food(0, 7, 0, 60);
        script.note(0, 14, 0, Change::refused(None));
        assert_eq!(next(&script, script.at(0, 14, 1)).due, script.at(0, 14, 30));
        script.note(0, 14, 30, Change::refused(None));
        // 200 min after the second try
        let again = next(&script, script.at(0, 17, 55));
        assert_eq!(
            (again.slot, again.due),
            (Slot::Midday, script.at(0, 17, 50))
        );
        script.note(0, 17, 50, Change::refused(None));
        assert_eq!(next(&script, script.at(0, 17, 55)).slot, Slot::Bedtime);
        let mut script = with_plan(|plan| plan.retries_minutes = Vec::new());
        script.food(0, 7, 0, 60);
        script.note(0, 14, 0, Change::refused(None));
        assert_eq!(next(&script, script.at(0, 14, 1)).slot, Slot::Bedtime);
    }

    #[test]
    fn the_plans_shortest_gap_is_kept_where_its_own_times_allow() {
        let due_after = |gap, hour| {
            let mut script = with_plan(|plan| plan.shortest_gap_minutes = Some(gap));
            script.feed(0, hour, 30, Slot::Morning, 60);
            let next = next(&script, script.at(0, hour, 40));
            next.due.minutes_since(script.at(0, 0, 0))
        };
        // 11:30 and five hours; 12:30 and two hours; 7:30 and eight hours, of which the plan leaves seven
        assert_eq!(due_after(300, 11), 990);
        assert_eq!(due_after(120, 12), 870);
        assert_eq!(due_after(480, 7), 870);
        // Bedtime 21:00, the night of ten hours: six at least, and what the plan says above that.
        let morning_after = |gap| {
            let mut script = with_plan(|plan| plan.shortest_gap_minutes = Some(gap));
            script.feed(1, 1, 30, Slot::Bedtime, 60);
            let next = next(&script, script.at(1, 2, 0));
            next.due.minutes_since(script.at(1, 0, 0))
        };
        assert_eq!(morning_after(120), 450);
        assert_eq!(morning_after(420), 510);
    }

    #[test]
    fn another_try_offers_what_is_lacking_and_none_follows_food_that_came_back() {
        let mut script = scenario();
        script.food(0, 7, 0, 60);
        let (taken, offered) = (Millilitres::whole(10), Millilitres::whole(60));
        let little = Change::Fed {
            counts_as: None,
            taken,
            offered,
            served_at: None,
            response: Response::Slow,
        };
        script.note(0, 14, 0, little);
        // the default plan of a green-winged macaw: less than a quarter of 95 ml
        let planned = script.chick().unwrap().plan.feeds[1].volume;
        let again = next(&script, script.at(0, 14, 10));
        assert_eq!(again.volume.tenths(), planned.tenths() - 100);
        let sign = Sign::BroughtBackOnce;
        script.note(0, 14, 15, Change::SignSeen { sign });
        assert_eq!(next(&script, script.at(0, 14, 20)).slot, Slot::Bedtime);
    }

    #[test]
    fn after_midnight_a_chick_sleeps_when_half_of_the_day_is_in_and_eats_when_it_is_not() {
        let script = |feeds: &[i32]| {
            let mut script = scenario();
            for hour in feeds {
                script.food(0, *hour, 0, 95);
            }
            script
        };
        let slot = |feeds: &[i32], hour| {
            let script = script(feeds);
            let next = next(&script, script.at(1, hour, 0));
            (next.slot, next.due.minutes_since(script.at(1, 0, 0)))
        };
        assert_eq!(slot(&[7, 14], 1), (Slot::Morning, 420));
        assert_eq!(slot(&[7], 1), (Slot::Bedtime, -180));
        // known not to have been given, the first feed is early
        let mut script = script(&[7, 14]);
        script.leave_out(0, 23, 55, Slot::Bedtime, WhyPassedOver::NotPossible);
        let morning = next(&script, script.at(1, 1, 0));
        assert_eq!(
            (morning.slot, morning.due),
            (Slot::Morning, script.at(1, 6, 0))
        );
        // It is planned at 07:00 and late from then on.
        let to_go = |hour, minute| morning.minutes_to_go(script.at(1, hour, minute));
        assert_eq!([to_go(5, 20), to_go(6, 0), to_go(6, 50)], [40, 0, 0]);
        assert_eq!([to_go(7, 0), to_go(7, 10)], [0, -10]);
        let state = |hour, minute| next(&script, script.at(1, hour, minute)).state;
        assert_eq!(state(8, 0), FeedState::Due);
        assert_eq!(state(8, 1), FeedState::Late);
    }

    #[test]
    fn a_feed_that_would_fall_after_midnight_keeps_six_hours_or_is_left_to_the_morning() {
        let after = |hours: &[i32]| {
            let mut script = scenario();
            for hour in hours {
                script.food(0, *hour, 0, 95);
            }
            script.feed(0, 20, 30, Slot::Midday, 95);
            let next = next(&script, script.at(0, 20, 40));
            (next.slot, next.due.minutes_since(script.at(1, 0, 0)))
        };
        assert_eq!(after(&[7]), (Slot::Morning, 420));
        // a third of the day's food only: six hours after 20:30
        assert_eq!(after(&[]), (Slot::Bedtime, 150));
    }

    #[test]
    fn extra_food_moves_the_next_feed_and_counts_for_none() {
        let mut script = scenario();
        script.food(0, 7, 0, 95).food(0, 10, 0, 95);
        let midday = next(&script, script.at(0, 10, 10));
        assert_eq!(
            (midday.slot, midday.due),
            (Slot::Midday, script.at(0, 14, 0))
        );
        script.food(0, 10, 55, 95);
        let midday = next(&script, script.at(0, 11, 0));
        // four hours after the last food
        assert_eq!(
            (midday.slot, midday.due),
            (Slot::Midday, script.at(0, 14, 55))
        );
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
        script.note(1, 18, 30, Change::refused(Some(slot)));
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
                    script.note(0, 14, 20, Change::refused(Some(slot)));
                }
            }
            let day = script.zone().lived(script.at(0, 12, 0)).day;
            let chick = script.chick().unwrap();
            let found = feeds(script.at(0, 15, 0), &chick, &script.zone(), day, day);
            let midday = found.into_iter().find(|feed| feed.slot == slot);
            midday.unwrap()
        };
        assert!(outcome(true).was_food());
        assert!(outcome(false).was_food());
    }
}

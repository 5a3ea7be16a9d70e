//! The feeds that are still given as a calendar file, and the file that takes them out again.

use std::num::NonZeroU32;

use crate::domain::feeding::schedule::feeds_on_the_move;
use crate::domain::feeding::scheduled::ScheduledFeed;
use crate::domain::homecoming::journey::LONGEST_SHIFT_DAYS;
use crate::domain::journal::entries::ChickId;
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::{PlannedFeed, Slot};
use crate::domain::time::moment::{Day, Lived, Moment, Offset, WallTime};
use crate::domain::time::zone::Zone;
use crate::share::icalendar::{CalendarError, CalendarTime, Event, Purpose, Repeat, calendar_file};
use crate::store::id_text::id_to_text;
use crate::words::format::Writing;

/// How long before the feed the alarm rings: time to weigh, mix and warm. Ours.
const ALARM_MINUTES: u32 = 15;
/// How long a feed takes in the calendar. Ours.
const FEED_MINUTES: u32 = 30;

/// One daily event for each feed that is still given, for so many days, wall-clock time; and one for
/// each feed of the days in which their times still move, after a journey.
///
/// The names of the events stay the same in every later file, and their sequence rises with the
/// minute, so that a new plan or more days replace what is there. Before the chick arrives the events
/// start with its arrival.
///
/// # Errors
/// [`CalendarError`] for a day that no calendar has.
pub fn calendar_text(
    writing: Writing,
    outlook: &Outlook,
    zone: &Zone,
    days: NonZeroU32,
) -> Result<String, CalendarError> {
    let (now, chick) = (outlook.now, &outlook.chick);
    let days = i32::try_from(days.get()).unwrap_or(i32::MAX);
    let home = chick.home_since().max(now);
    let day = zone.lived(home).day;
    let moving = feeds_on_the_move(now, chick, zone, day.plus(-1), day.plus(days - 1));
    let mut events = Vec::new();
    let to_come = |feed: &&ScheduledFeed| feed.planned > home && feed.is_open();
    for feed in moving.iter().filter(to_come) {
        let planned = PlannedFeed {
            slot: feed.slot,
            time: zone.lived(feed.planned).time,
            volume: feed.volume,
        };
        events.push(Event {
            uid: uid_on(chick.id, feed.slot, feed.day),
            ..event(writing, outlook, planned, zone.lived(feed.planned).day)?
        });
    }
    for feed in chick.feeds_in_force(now) {
        let first = first_day(outlook, feed);
        let of_feed = moving.iter().filter(|moved| moved.slot == feed.slot);
        let settled = of_feed.map(|moved| moved.day.plus(1)).max();
        let start = settled.map_or(first, |settled| settled.max(first));
        let left = u32::try_from(days - start.since(first)).unwrap_or_default();
        if let Some(times) = NonZeroU32::new(left) {
            events.push(Event {
                repeat: Repeat::DailyTimes(times),
                ..event(writing, outlook, feed, start)?
            });
        }
    }
    calendar_file(&events, Purpose::Add)
}

/// The file that takes the events of every feed of this chick out again, given or dropped.
///
/// # Errors
/// As for [`calendar_text`].
pub fn calendar_removal_text(writing: Writing, outlook: &Outlook) -> Result<String, CalendarError> {
    let plan = &outlook.chick.plan;
    let days = plan.journey.map(|journey| {
        let left = journey.left.lived(Offset::UTC).day;
        // A day either side, for clocks that are a day ahead or behind.
        (-1..=LONGEST_SHIFT_DAYS + 1).map(move |days| left.plus(days))
    });
    let days: Vec<Day> = days.into_iter().flatten().collect();
    let mut events = Vec::new();
    for slot in Slot::ALL {
        let planned = plan.feed(slot).copied();
        let feed = planned.unwrap_or(PlannedFeed {
            slot,
            time: outlook.lived.time,
            volume: plan.syringe,
        });
        let daily = event(writing, outlook, feed, first_day(outlook, feed))?;
        let of_days = days.iter().filter(|_| planned.is_some());
        events.extend(of_days.map(|day| Event {
            uid: uid_on(outlook.chick.id, slot, *day),
            ..daily.clone()
        }));
        events.push(daily);
    }
    calendar_file(&events, Purpose::Remove)
}

/// A feed that is given once, on this day.
fn event(
    writing: Writing,
    outlook: &Outlook,
    feed: PlannedFeed,
    day: Day,
) -> Result<Event, CalendarError> {
    let minutes = outlook.now.minutes_since(Moment::EARLIEST);
    let utc = outlook.now.lived(Offset::UTC);
    Ok(Event {
        uid: uid(outlook.chick.id, feed.slot),
        sequence: u32::try_from(minutes).unwrap_or_default(),
        written_at_utc: calendar_time(utc.day, utc.time)?,
        start: calendar_time(day, feed.time)?,
        duration_minutes: FEED_MINUTES,
        repeat: Repeat::Once,
        summary: writing.feed_title(&outlook.chick.plan, feed.volume),
        description: description(writing, outlook),
        alarm_minutes_before: Some(ALARM_MINUTES),
    })
}

/// The note of an event; while food is kept back, that comes first, with when it was so.
fn description(writing: Writing, outlook: &Outlook) -> String {
    let note = writing.language.calendar_note();
    if outlook.instruction.forbids() {
        let (as_of, line) = (
            writing.as_of(outlook.lived),
            writing.instruction_line(outlook),
        );
        format!("{as_of}: {line} {note}")
    } else {
        note.to_owned()
    }
}

/// The name of a feed's event; never to be changed, or a second import would double every alarm.
fn uid(chick: ChickId, slot: Slot) -> String {
    let slot = match slot {
        Slot::EarlyMorning => "early-morning",
        Slot::Morning => "morning",
        Slot::Midday => "midday",
        Slot::Afternoon => "afternoon",
        Slot::Evening => "evening",
        Slot::Bedtime => "bedtime",
    };
    format!("{}-{slot}@perchlight", id_to_text(chick.0))
}

/// The name of the event of one feed on one day of the plan; never to be changed either.
fn uid_on(chick: ChickId, slot: Slot, day: Day) -> String {
    format!("{}-{}", day.iso(), uid(chick, slot))
}

/// The first day of a feed that is still to come: not one whose time is over or that is done.
fn first_day(outlook: &Outlook, feed: PlannedFeed) -> Day {
    let Lived { day, time } = outlook.lived;
    let utc = outlook.now.lived(Offset::UTC);
    let offset = day.since(utc.day) * 1_440 + time.minutes() - utc.time.minutes();
    let home = outlook.chick.home_since().max(outlook.now);
    let home = home.lived(Offset::from_minutes(offset));
    let is_done = outlook
        .feeds
        .iter()
        .any(|one| one.slot == feed.slot && one.day == home.day && !one.is_open());
    if home.time < feed.time && !is_done {
        home.day
    } else {
        home.day.plus(1)
    }
}

fn calendar_time(day: Day, time: WallTime) -> Result<CalendarTime, CalendarError> {
    let (year, month, date) = day.date();
    let (hour, minute) = time.hour_and_minute();
    CalendarTime::new(
        u16::try_from(year).unwrap_or_default(),
        u8::try_from(month).unwrap_or_default(),
        u8::try_from(date).unwrap_or_default(),
        u8::try_from(hour).unwrap_or_default(),
        u8::try_from(minute).unwrap_or_default(),
    )
}

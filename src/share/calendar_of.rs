//! The feeds that are still given as a calendar file, and the file that takes them out again.

use std::num::NonZeroU32;

use crate::domain::journal::ChickId;
use crate::domain::moment::{Day, Lived, Moment, Offset, WallTime};
use crate::domain::outlook::Outlook;
use crate::domain::plan::{PlannedFeed, Slot};
use crate::share::icalendar::{CalendarError, CalendarTime, Event, Purpose, Repeat, calendar_file};
use crate::store::saved::id_to_text;
use crate::words::format::Writing;

/// How long before the feed the alarm rings: time to weigh, mix and warm. Ours.
const ALARM_MINUTES: u32 = 15;
/// How long a feed takes in the calendar. Ours.
const FEED_MINUTES: u32 = 30;

/// One daily event for each feed that is still given, for so many days, wall-clock time.
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
    days: NonZeroU32,
) -> Result<String, CalendarError> {
    let feeds = outlook.chick.feeds_in_force(outlook.now);
    let event = |feed: &PlannedFeed| event(writing, outlook, *feed, Repeat::DailyTimes(days));
    let events: Result<Vec<Event>, CalendarError> = feeds.iter().map(event).collect();
    calendar_file(&events?, Purpose::Add)
}

/// The file that takes the events of every feed of this chick out again, given or dropped.
///
/// # Errors
/// As for [`calendar_text`].
pub fn calendar_removal_text(writing: Writing, outlook: &Outlook) -> Result<String, CalendarError> {
    let plan = &outlook.chick.plan;
    let events = Slot::ALL.into_iter().map(|slot| {
        let feed = plan.feed(slot).copied();
        let feed = feed.unwrap_or(PlannedFeed {
            slot,
            time: outlook.lived.time,
            volume: plan.syringe,
        });
        event(writing, outlook, feed, Repeat::Once)
    });
    let events: Result<Vec<Event>, CalendarError> = events.collect();
    calendar_file(&events?, Purpose::Remove)
}

fn event(
    writing: Writing,
    outlook: &Outlook,
    feed: PlannedFeed,
    repeat: Repeat,
) -> Result<Event, CalendarError> {
    let minutes = outlook.now.minutes_since(Moment::EARLIEST);
    let start = calendar_time(first_day(outlook, feed), feed.time)?;
    let utc = outlook.now.lived(Offset::UTC);
    Ok(Event {
        uid: uid(outlook.chick.id, feed.slot),
        sequence: u32::try_from(minutes).unwrap_or_default(),
        written_at_utc: calendar_time(utc.day, utc.time)?,
        start,
        duration_minutes: FEED_MINUTES,
        repeat,
        summary: writing.feed_title(&outlook.chick.plan, feed.volume),
        description: writing.language.calendar_note().to_owned(),
        alarm_minutes_before: Some(ALARM_MINUTES),
    })
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

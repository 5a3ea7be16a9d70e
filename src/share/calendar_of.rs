//! The feeds that are still given as a calendar file, and the file that takes them out again.

use std::num::NonZeroU32;

use crate::domain::feeding::schedule;
use crate::domain::feeding::schedule::feeds_on_the_move;
use crate::domain::feeding::scheduled::ScheduledFeed;
use crate::domain::homecoming::first_days::first_feed_volumes;
use crate::domain::homecoming::journey::LONGEST_SHIFT_DAYS;
use crate::domain::homecoming::life_stage::{LifeStage, Reminder};
use crate::domain::homecoming::vet_visit::booked;
use crate::domain::instruction::answer::Instruction;
use crate::domain::instruction::holds::Why;
use crate::domain::instruction::lifting::{advice_in_force, advised_volume};
use crate::domain::journal::entries::{Carer, ChickId};
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::{PlannedFeed, Role, Slot};
use crate::domain::quantity::order::set_of;
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::{Day, Lived, Moment, Offset, WallTime};
use crate::domain::time::zone::Zone;
use crate::share::icalendar::{
    CalendarError, CalendarTime, Event, Purpose, Repeat, Status, calendar_file,
};
use crate::store::id_text::id_to_text;
use crate::words::format::Writing;
use crate::words::names::isolated;

/// How long before the feed the alarm rings: time to weigh, mix and warm. Ours.
const ALARM_MINUTES: u32 = 15;
/// How long a feed takes in the calendar. Ours.
const FEED_MINUTES: u32 = 30;
/// How long before the first feed the weighing is. Ours: the crop is still empty, and nobody hurries.
const WEIGHING_MINUTES_BEFORE: i32 = 30;
/// How long it takes in the calendar. Ours.
const WEIGHING_MINUTES: u32 = 10;
/// How long a visit to the vet takes in the calendar, and how long before it the alarm rings. Ours: time to
/// pack the chick warm and to get there.
const VISIT_MINUTES: u32 = 30;
const VISIT_ALARM_MINUTES: u32 = 90;
/// Days on either side for which a removal names single feeds: what a file holds and what one before held.
/// Ours.
const SINGLE_DAYS: i32 = 15;

/// A daily event for the weighing and one for each feed that is still given, for so many days, wall-clock
/// time; one for each feed of the days in which their times still move, after a journey, and for each that
/// the instruction or somebody's word makes another than the plan's. What is no longer given is cancelled.
///
/// The names of the events stay the same in every later file, and their sequence rises with the
/// minute, so that a new plan or more days replace what is there. Before the chick arrives the events
/// start with its arrival. While food is kept back no title asks for a feed.
///
/// # Errors
/// [`CalendarError`] for a day that no calendar has.
pub fn calendar_text(
    writing: Writing,
    outlook: &Outlook,
    zone: &Zone,
    days: NonZeroU32,
) -> Result<String, CalendarError> {
    let chick = &outlook.chick;
    let is_at_clinic = chick
        .handed_over
        .last()
        .is_some_and(|handed| handed.what.to == Carer::Clinic);
    // Before it leaves its breeder the calendar begins with its arrival.
    let is_to_come = outlook.stage == LifeStage::WithBreeder && chick.plan.journey.is_some();
    let is_fed = (outlook.stage.reminds(Reminder::Feed) || is_to_come) && !is_at_clinic;
    let feeds = if is_fed {
        chick.feeds_in_force(outlook.now)
    } else {
        Vec::new()
    };
    let mut events = if is_fed {
        added(writing, outlook, zone, &feeds, days)?
    } else {
        Vec::new()
    };
    events.extend(cancelled(writing, outlook, &feeds, is_fed)?);
    let names = set_of(events.iter().map(|event| event.uid.clone()));
    let mut former = formerly_single(writing, outlook, &feeds)?;
    former.retain(|event| !names.contains(&event.uid));
    events.extend(former);
    events.extend(visit(writing, outlook)?);
    calendar_file(&events, Purpose::Add)
}

fn added(
    writing: Writing,
    outlook: &Outlook,
    zone: &Zone,
    feeds: &[PlannedFeed],
    days: NonZeroU32,
) -> Result<Vec<Event>, CalendarError> {
    let (now, chick) = (outlook.now, &outlook.chick);
    let days = i32::try_from(days.get()).unwrap_or(i32::MAX);
    let home = chick.home_since().max(now);
    let day = zone.lived(home).day;
    let moving = feeds_on_the_move(now, chick, zone, day.plus(-1), day.plus(days - 1));
    let mut events: Vec<Event> = weighing(writing, outlook, days)?.into_iter().collect();
    let mut single = Vec::new();
    let to_come = |feed: &&ScheduledFeed| feed.planned > home && feed.is_open();
    for feed in moving.iter().filter(to_come) {
        single.push((feed.slot, feed.day, zone.lived(feed.planned), feed.volume));
    }
    // The first feed at home is smaller than the plan's, and so for itself; before it has arrived it is the first
    // after the arrival that is expected.
    let around_home = schedule::feeds(now, chick, zone, day.plus(-1), day.plus(1));
    let is_to_arrive = chick.arrived.is_none()
        && chick
            .plan
            .journey
            .is_some_and(|journey| now < journey.expected);
    let next = around_home.iter().find(to_come).filter(|_| is_to_arrive);
    let first_home = around_home.iter().filter(to_come);
    let first_home = first_home.filter(|feed| feed.is_first_home).chain(next);
    for feed in first_home {
        let (_, smaller) = first_feed_volumes(feed.volume);
        let volume = if feed.is_first_home {
            feed.volume
        } else {
            smaller
        };
        single.retain(|(slot, day, ..)| (*slot, *day) != (feed.slot, feed.day));
        single.push((feed.slot, feed.day, zone.lived(feed.planned), volume));
    }
    for feed in feeds {
        let first = first_day(outlook, *feed);
        let told = single.iter().map(|(slot, day, ..)| (*slot, *day));
        let told = told.chain(moving.iter().map(|moved| (moved.slot, moved.day)));
        let told = told.filter(|(slot, _)| *slot == feed.slot);
        let settled = told.map(|(_, day)| day.plus(1)).max();
        let mut start = settled.map_or(first, |settled| settled.max(first));
        let last = first.plus(days);
        // Until a word on feeding ends, each feed is told for itself; then it is the plan's again.
        let until = word_until(outlook);
        while start < last && until.is_some_and(|until| zone.moment_of(start, feed.time) < until) {
            let lived = Lived {
                day: start,
                time: feed.time,
            };
            single.push((feed.slot, start, lived, feed.volume));
            start = start.plus(1);
        }
        let left = u32::try_from(last.since(start)).unwrap_or_default();
        if let Some(times) = NonZeroU32::new(left) {
            let title = if until.is_some() {
                writing.feed_title(&chick.plan, feed.volume)
            } else {
                title(writing, outlook, feed.volume)
            };
            events.push(Event {
                repeat: Repeat::DailyTimes(times),
                summary: title,
                ..event(writing, outlook, *feed, start)?
            });
        }
    }
    for (slot, day, at, volume) in single {
        let time = at.time;
        let planned = PlannedFeed { slot, time, volume };
        events.push(Event {
            uid: uid_on(chick.id, slot, day),
            ..event(writing, outlook, planned, at.day)?
        });
    }
    Ok(events)
}

/// Until when the latest word on feeding makes the feeds others than the plan's; `None` where there is none, or
/// none that ends, or where something else keeps food back.
fn word_until(outlook: &Outlook) -> Option<Moment> {
    let (now, chick) = (outlook.now, &outlook.chick);
    let is_said = match outlook.instruction {
        Instruction::DoNotFeed { why, .. } | Instruction::AskFirst { why, .. } => {
            matches!(why, Why::Said(_))
        }
        Instruction::Feed { .. }
        | Instruction::WaitUntil { .. }
        | Instruction::First(_)
        | Instruction::Nothing(_) => advised_volume(now, chick).is_some(),
    };
    let advice = advice_in_force(now, chick).filter(|_| is_said)?;
    advice.what.until.filter(|until| now < *until)
}

/// What a feed is called: not a feed while food is kept back, and no more than was last said.
fn title(writing: Writing, outlook: &Outlook, volume: Millilitres) -> String {
    let (now, chick) = (outlook.now, &outlook.chick);
    if outlook.instruction.forbids() {
        return writing.held_feed_title(outlook);
    }
    let most = advised_volume(now, chick);
    let volume = most.map_or(volume, |most| most.min(volume));
    writing.feed_title(&chick.plan, volume)
}

/// The weighing of each morning, before the first feed of the plan; `None` without a feed.
fn weighing(
    writing: Writing,
    outlook: &Outlook,
    days: i32,
) -> Result<Option<Event>, CalendarError> {
    let chick = &outlook.chick;
    let (Some(first), Ok(times)) = (chick.plan.feeds.first(), u32::try_from(days)) else {
        return Ok(None);
    };
    let before = first.time.minutes() - WEIGHING_MINUTES_BEFORE;
    let time = WallTime::from_minutes(before.max(0));
    let planned = PlannedFeed { time, ..*first };
    let is_done = outlook.weight.is_weighed_today;
    let today = outlook.lived.day;
    let start = first_day_at(outlook, time, |day| is_done && day == today);
    let repeat = NonZeroU32::new(times).map_or(Repeat::Once, Repeat::DailyTimes);
    Ok(Some(Event {
        uid: weighing_uid(chick.id),
        repeat,
        duration_minutes: WEIGHING_MINUTES,
        summary: writing.weighing_title(&chick.plan),
        alarm_minutes_before: Some(0),
        description: writing.language.calendar_weigh_note().to_owned(),
        ..event(writing, outlook, planned, start)?
    }))
}

/// The appointment at the vet's while it lies ahead; cancelled where a visit was noted before it.
fn visit(writing: Writing, outlook: &Outlook) -> Result<Option<Event>, CalendarError> {
    let chick = &outlook.chick;
    let noted = chick.vet_booked.as_ref().map(|noted| noted.what);
    let Some(on) = noted.filter(|on| outlook.lived < *on) else {
        return Ok(None);
    };
    let is_open = booked(outlook.now, outlook.lived, chick).is_some();
    let planned = PlannedFeed {
        slot: Slot::Bedtime,
        time: on.time,
        volume: Millilitres::whole(0),
    };
    let vet = chick.plan.contact(Role::AvianVet);
    let vet = vet.map(|vet| format!("{} {}", isolated(&vet.name), vet.number));
    Ok(Some(Event {
        uid: visit_uid(chick.id),
        duration_minutes: VISIT_MINUTES,
        alarm_minutes_before: Some(VISIT_ALARM_MINUTES),
        summary: writing.visit_title(&chick.plan),
        status: if is_open {
            Status::Confirmed
        } else {
            Status::Cancelled
        },
        description: vet.unwrap_or_default().trim().to_owned(),
        ..event(writing, outlook, planned, on.day)?
    }))
}

/// What is no longer given of all that was ever planned, and the weighing of a chick that is not fed here.
fn cancelled(
    writing: Writing,
    outlook: &Outlook,
    feeds: &[PlannedFeed],
    is_fed: bool,
) -> Result<Vec<Event>, CalendarError> {
    let chick = &outlook.chick;
    let turns = chick.plans.turns().iter();
    let plans = turns.map(|(_, plan)| plan).chain([&chick.plan]);
    let ever = set_of(plans.flat_map(|plan| plan.feeds.iter().map(|feed| feed.slot)));
    let is_given = |slot: &Slot| feeds.iter().any(|feed| feed.slot == *slot);
    let mut events = Vec::new();
    for slot in ever.into_iter().filter(|slot| !is_given(slot)) {
        let time = chick
            .plan
            .feed(slot)
            .map_or(outlook.lived.time, |feed| feed.time);
        let volume = Millilitres::whole(0);
        let planned = PlannedFeed { slot, time, volume };
        let event = Event {
            status: Status::Cancelled,
            summary: writing.cancelled_title(slot),
            description: String::new(),
            ..event(writing, outlook, planned, outlook.lived.day)?
        };
        let moved = days_on_the_move(outlook).into_iter();
        let moved = moved.map(|day| Event {
            uid: uid_on(chick.id, slot, day),
            ..event.clone()
        });
        events.extend(moved);
        events.push(event);
    }
    if !is_fed && let Some(weighing) = weighing(writing, outlook, 1)? {
        events.push(Event {
            status: Status::Cancelled,
            repeat: Repeat::Once,
            ..weighing
        });
    }
    Ok(events)
}

/// Feeds still to come that an earlier file may have told for themselves, because of a word on feeding that ended later:
/// cancelled, for where they are the plan's again.
fn formerly_single(
    writing: Writing,
    outlook: &Outlook,
    feeds: &[PlannedFeed],
) -> Result<Vec<Event>, CalendarError> {
    let (zone, today) = (&outlook.zone, outlook.lived.day);
    let words = outlook.chick.advice.iter().filter_map(|advice| {
        let until = advice.what.until.filter(|until| outlook.now < *until)?;
        Some(zone.lived(until).day)
    });
    let Some(last) = words.max() else {
        return Ok(Vec::new());
    };
    let days = (0..=last.since(today).min(SINGLE_DAYS)).map(|days| today.plus(days));
    let mut events = Vec::new();
    for day in days {
        for feed in feeds {
            events.push(Event {
                uid: uid_on(outlook.chick.id, feed.slot, day),
                status: Status::Cancelled,
                summary: writing.cancelled_title(feed.slot),
                description: String::new(),
                ..event(writing, outlook, *feed, day)?
            });
        }
    }
    Ok(events)
}

/// The days in which feeds may have been told one by one after a journey.
fn days_on_the_move(outlook: &Outlook) -> Vec<Day> {
    let journey = outlook.chick.plan.journey;
    let days = journey.map(|journey| {
        let left = journey.left.lived(Offset::UTC).day;
        // A day either side, for clocks that are a day ahead or behind.
        (-1..=LONGEST_SHIFT_DAYS + 1).map(move |days| left.plus(days))
    });
    days.into_iter().flatten().collect()
}

/// The latest days and those to come for which a feed may have been told for itself: of a word on feeding, or
/// the first at home.
fn days_told_singly(outlook: &Outlook) -> Vec<Day> {
    let around = (-SINGLE_DAYS..=SINGLE_DAYS).map(|days| outlook.lived.day.plus(days));
    let days = set_of(around.chain(days_on_the_move(outlook)));
    days.into_iter().collect()
}

/// The file that takes the events of every feed of this chick out again, given or dropped.
///
/// # Errors
/// As for [`calendar_text`].
pub fn calendar_removal_text(writing: Writing, outlook: &Outlook) -> Result<String, CalendarError> {
    let plan = &outlook.chick.plan;
    let days = days_told_singly(outlook);
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
    events.extend(weighing(writing, outlook, 1)?);
    events.extend(visit(writing, outlook)?);
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
        summary: title(writing, outlook, feed.volume),
        status: Status::Confirmed,
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

/// The name of the weighing's event; never to be changed either.
fn weighing_uid(chick: ChickId) -> String {
    format!("{}-weighing@perchlight", id_to_text(chick.0))
}

/// The name of the appointment's event; never to be changed either.
fn visit_uid(chick: ChickId) -> String {
    format!("{}-vet@perchlight", id_to_text(chick.0))
}

/// The first day of a feed that is still to come: not one whose time is over or that is done.
fn first_day(outlook: &Outlook, feed: PlannedFeed) -> Day {
    first_day_at(outlook, feed.time, |day| {
        let mut feeds = outlook.feeds.iter();
        feeds.any(|one| one.slot == feed.slot && one.day == day && !one.is_open())
    })
}

/// The first day on which this time is still to come at home, or the one after it where it is done on that.
fn first_day_at(outlook: &Outlook, time: WallTime, is_done: impl Fn(Day) -> bool) -> Day {
    let Lived {
        day,
        time: time_now,
    } = outlook.lived;
    let utc = outlook.now.lived(Offset::UTC);
    let offset = day.since(utc.day) * 1_440 + time_now.minutes() - utc.time.minutes();
    let home = outlook.chick.home_since().max(outlook.now);
    let home = home.lived(Offset::from_minutes(offset));
    if home.time < time && !is_done(home.day) {
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

//! Calendar files against `ics_text.json` and `rrule.json`, and the rules of RFC 5545 for what we
//! write.
//!
//! `rrule.json` also gives instants. Our times float, so the telephone's calendar makes the
//! instants; there is nothing of ours to compare with them. Rules that we never write (weekly,
//! every third day, several hours, days left out) are compared through what we would write in
//! their place: a daily event for each run of days at one hour, a single one for a lone day.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

pub mod common;
pub mod readers;

use std::num::NonZeroU32;

use chrono::{Datelike, Days, NaiveDateTime, NaiveTime, Timelike};
use perchlight::share::icalendar::{
    CalendarError, CalendarTime, Event, Purpose, Repeat, Status, calendar_file, escape, fold,
};
use serde_json::Value;

use common::checks_file;
use readers::calendar::{Component, calendar};
use readers::{cases, seconds_of_duration, text_of, unescaped, unfolded};

fn time(at: NaiveDateTime) -> CalendarTime {
    CalendarTime::new(
        at.year().try_into().unwrap(),
        at.month().try_into().unwrap(),
        at.day().try_into().unwrap(),
        at.hour().try_into().unwrap(),
        at.minute().try_into().unwrap(),
    )
    .unwrap()
}

fn wall(text: &str) -> NaiveDateTime {
    NaiveDateTime::parse_from_str(text, "%Y-%m-%dT%H:%M").expect(text)
}

fn event(start: NaiveDateTime, repeat: Repeat) -> Event {
    Event {
        uid: "slot-1@perchlight".to_owned(),
        sequence: 3,
        written_at_utc: time(wall("2026-11-25T06:05")),
        start: time(start),
        duration_minutes: 30,
        repeat,
        status: Status::Confirmed,
        summary: "Feed Pip, 45 ml at 40 °C".to_owned(),
        description: "Crop empty first;\nstop when the head turns away".to_owned(),
        alarm_minutes_before: Some(5),
    }
}

fn written(event: &Event, purpose: Purpose) -> Component {
    calendar(&calendar_file(std::slice::from_ref(event), purpose).unwrap())
}

#[test]
fn text_is_escaped_and_folded_as_the_check_file_says() {
    let file = checks_file("ics_text.json");
    for case in cases(&file, "cases") {
        let (name, text) = (text_of(case, "property"), text_of(case, "text"));
        let escaped = escape(text);
        assert_eq!(escaped, text_of(case, "escaped"), "{}", case["id"]);
        assert_eq!(unescaped(&escaped), text.replace("\r\n", "\n"));
        let line = format!("{name}:{escaped}");
        let folded = fold(&line);
        assert_eq!(unfolded(&folded), line);
        assert_eq!(unfolded(text_of(case, "one_valid_folding")), line);
        let octets = case["unfolded_octets"].as_u64().unwrap();
        assert_eq!(u64::try_from(line.len()).unwrap(), octets);
        assert!(folded.split("\r\n").all(|part| part.len() <= 75));
        let must_fold = case["must_fold"].as_bool().unwrap();
        assert_eq!(folded.contains("\r\n"), must_fold, "{}", case["id"]);
    }
}

/// The wall times of an event by RFC 5545, section 3.3.10, for the parts that we write.
fn expanded(event: &Component) -> Vec<NaiveDateTime> {
    let moment = |text: &str| NaiveDateTime::parse_from_str(text, "%Y%m%dT%H%M%S").expect(text);
    let start = moment(event.value("DTSTART"));
    if !event.has("RRULE") {
        return vec![start];
    }
    let end = event.value("RRULE").strip_prefix("FREQ=DAILY;").unwrap();
    let (part, value) = end.split_once('=').unwrap();
    let times = (0..).map(|day| start + Days::new(day));
    match part {
        "COUNT" => times.take(value.parse().unwrap()).collect(),
        "UNTIL" => times.take_while(|at| *at <= moment(value)).collect(),
        _ => panic!("{end}"),
    }
}

/// The wall times of a rule of the check file, by the parts that occur there.
fn days_of_rule(case: &Value) -> Vec<NaiveDateTime> {
    let start = wall(text_of(case, "dtstart"));
    let parts: Vec<(&str, &str)> = text_of(case, "rrule")
        .split(';')
        .map(|part| part.split_once('=').unwrap())
        .collect();
    let part = |name: &str| {
        parts
            .iter()
            .find(|(key, _)| *key == name)
            .map(|(_, value)| *value)
    };
    for (name, _) in &parts {
        let known = [
            "FREQ", "COUNT", "INTERVAL", "BYDAY", "BYHOUR", "BYMINUTE", "BYSECOND",
        ];
        assert!(known.contains(name), "{name}");
    }
    let interval: usize = part("INTERVAL").map_or(1, |value| value.parse().unwrap());
    let hours: Vec<NaiveTime> = part("BYHOUR").map_or(vec![start.time()], |hours| {
        hours
            .split(',')
            .map(|hour| start.time().with_hour(hour.parse().unwrap()).unwrap())
            .collect()
    });
    let weekdays = part("BYDAY").map(|days| days.split(',').collect::<Vec<_>>());
    let is_daily = match part("FREQ") {
        Some("DAILY") => true,
        Some("WEEKLY") => false,
        other => panic!("{other:?}"),
    };
    assert!(is_daily || (interval == 1 && weekdays.is_some()));
    let excluded: Vec<NaiveDateTime> = cases_or_none(&case["exdate"]);
    (0..)
        .step_by(if is_daily { interval } else { 1 })
        .map(|day| start.date() + Days::new(day))
        .filter(|date| {
            let name = ["MO", "TU", "WE", "TH", "FR", "SA", "SU"]
                [usize::try_from(date.weekday().num_days_from_monday()).unwrap()];
            weekdays.as_ref().is_none_or(|days| days.contains(&name))
        })
        .flat_map(|date| hours.iter().map(move |hour| date.and_time(*hour)))
        .filter(|at| *at >= start)
        .take(part("COUNT").unwrap().parse().unwrap())
        .filter(|at| !excluded.contains(at))
        .collect()
}

fn cases_or_none(list: &Value) -> Vec<NaiveDateTime> {
    let texts: Vec<String> = serde_json::from_value(list.clone()).unwrap();
    texts.iter().map(|text| wall(text)).collect()
}

/// Runs of days one after the other at the same hour, as start and number of days.
fn runs(mut times: Vec<NaiveDateTime>) -> Vec<(NaiveDateTime, u32)> {
    times.sort_by_key(|at| (at.time(), at.date()));
    let mut runs: Vec<(NaiveDateTime, u32)> = vec![];
    for at in times {
        match runs.last_mut() {
            Some((start, days)) if *start + Days::new(u64::from(*days)) == at => *days += 1,
            _ => runs.push((at, 1)),
        }
    }
    runs
}

#[test]
fn repeating_events_fall_on_the_expected_wall_times() {
    let file = checks_file("rrule.json");
    let mut daily = 0;
    for case in cases(&file, "cases") {
        let expected = cases_or_none(&case["local"]);
        assert_eq!(
            u64::try_from(expected.len()).unwrap(),
            case["count"].as_u64().unwrap()
        );
        for is_counted in [true, false] {
            let mut times = vec![];
            for (start, days) in runs(days_of_rule(case)) {
                let repeat = match NonZeroU32::new(days) {
                    _ if days == 1 => Repeat::Once,
                    Some(days) if is_counted => Repeat::DailyTimes(days),
                    _ => {
                        let last = start + Days::new(u64::from(days - 1));
                        Repeat::DailyUntil(time(last))
                    }
                };
                daily += u32::from(days > 1);
                let file = written(&event(start, repeat), Purpose::Add);
                times.extend(expanded(&file.parts[0]));
            }
            times.sort();
            assert_eq!(times, expected, "{}", case["id"]);
        }
    }
    assert!(daily > 0, "no case needs a repeating event");
}

/// RFC 5545, sections 3.4, 3.6, 3.6.1 and 3.6.6: what must be there, once.
#[test]
fn an_added_event_has_all_that_the_standard_asks_for() {
    let start = wall("2026-11-26T07:00");
    let event = event(start, Repeat::DailyTimes(NonZeroU32::new(7).unwrap()));
    let file = written(&event, Purpose::Add);
    assert_eq!(
        (file.name.as_str(), file.value("VERSION")),
        ("VCALENDAR", "2.0")
    );
    assert!(!file.value("PRODID").is_empty() && !file.has("METHOD"));
    let read = &file.parts[0];
    assert_eq!(read.name, "VEVENT");
    assert_eq!(read.text("UID"), event.uid);
    assert_eq!(read.value("SEQUENCE"), "3");
    assert_eq!(read.value("DTSTAMP"), "20261125T060500Z");
    assert_eq!(read.value("DTSTART"), "20261126T070000");
    assert_eq!(seconds_of_duration(read.value("DURATION")), 30 * 60);
    assert_eq!(read.value("RRULE"), "FREQ=DAILY;COUNT=7");
    assert_eq!(read.text("SUMMARY"), event.summary);
    assert_eq!(read.text("DESCRIPTION"), event.description);
    assert_eq!(read.value("STATUS"), "CONFIRMED");
    let alarm = &read.parts[0];
    assert_eq!(
        (alarm.name.as_str(), alarm.value("ACTION")),
        ("VALARM", "DISPLAY")
    );
    assert_eq!(alarm.text("DESCRIPTION"), event.summary);
    assert_eq!(seconds_of_duration(alarm.value("TRIGGER")), -5 * 60);
}

#[test]
fn an_alarm_can_ring_at_the_start_or_not_at_all() {
    let mut event = event(wall("2026-11-26T07:00"), Repeat::Once);
    event.alarm_minutes_before = Some(0);
    let file = written(&event, Purpose::Add);
    let trigger = file.parts[0].parts[0].value("TRIGGER");
    assert_eq!(seconds_of_duration(trigger), 0);
    event.alarm_minutes_before = None;
    event.description = String::new();
    let file = written(&event, Purpose::Add);
    assert!(file.parts[0].parts.is_empty() && !file.parts[0].has("DESCRIPTION"));
}

/// RFC 5546, section 3.2.5: a removal names the event by its UID and a sequence.
#[test]
fn a_removal_cancels_the_event_and_rings_no_more() {
    let event = event(wall("2026-11-26T07:00"), Repeat::Once);
    let file = written(&event, Purpose::Remove);
    assert_eq!(file.value("METHOD"), "CANCEL");
    let read = &file.parts[0];
    assert_eq!(read.value("STATUS"), "CANCELLED");
    assert_eq!(read.text("UID"), event.uid);
    assert!(read.has("SEQUENCE") && read.has("DTSTAMP") && read.parts.is_empty());
}

/// RFC 5545, section 3.8.1.11: "CANCELLED" says that the event was cancelled; among events that are not, without a
/// method for the whole file.
#[test]
fn one_event_can_be_cancelled_among_others_and_rings_no_more() {
    let kept = event(wall("2026-11-26T07:00"), Repeat::Once);
    let cancelled = Event {
        uid: "slot-2@perchlight".to_owned(),
        status: Status::Cancelled,
        ..kept.clone()
    };
    let file = calendar(&calendar_file(&[kept, cancelled], Purpose::Add).unwrap());
    assert!(!file.has("METHOD"));
    let said: Vec<(&str, usize)> = file
        .parts
        .iter()
        .map(|event| (event.value("STATUS"), event.parts.len()))
        .collect();
    assert_eq!(said, [("CONFIRMED", 1), ("CANCELLED", 0)]);
}

#[test]
fn an_event_without_a_name_or_a_title_is_refused() {
    let mut event = event(wall("2026-11-26T07:00"), Repeat::Once);
    let summary = std::mem::replace(&mut event.summary, " ".to_owned());
    let uid = event.uid.clone();
    let refused = calendar_file(std::slice::from_ref(&event), Purpose::Add);
    assert_eq!(refused, Err(CalendarError::NoSummary { uid }));
    event.uid = String::new();
    event.summary.clone_from(&summary);
    let refused = calendar_file(&[event], Purpose::Add);
    assert_eq!(refused, Err(CalendarError::NoUid { summary }));
}

/// Text that people typed must not end its line and start a property of its own.
#[test]
fn typed_text_cannot_leave_its_property() {
    let mut event = event(wall("2026-11-26T07:00"), Repeat::Once);
    event.summary = "Pip\r\nRRULE:FREQ=HOURLY\rX:1\n\u{7}END:VEVENT".to_owned();
    let file = written(&event, Purpose::Add);
    assert!(!file.parts[0].has("RRULE"));
    let text = "Pip\nRRULE:FREQ=HOURLY\nX:1\nEND:VEVENT";
    assert_eq!(file.parts[0].text("SUMMARY"), text);
}

/// Gregorian rule for leap years: 2000 was one, 1900 and 2100 are not.
#[test]
fn dates_and_times_hold_at_their_limits() {
    let is_sound =
        |year, month, day, hour, minute| CalendarTime::new(year, month, day, hour, minute).is_ok();
    assert!(is_sound(2000, 2, 29, 0, 0) && !is_sound(1900, 2, 29, 0, 0));
    assert!(is_sound(2028, 2, 29, 0, 0) && !is_sound(2100, 2, 29, 0, 0));
    assert!(is_sound(2026, 4, 30, 23, 59) && !is_sound(2026, 4, 31, 0, 0));
    assert!(is_sound(2026, 12, 31, 0, 0) && !is_sound(2026, 12, 32, 0, 0));
    assert!(!is_sound(2026, 0, 1, 0, 0) && !is_sound(2026, 13, 1, 0, 0));
    assert!(!is_sound(2026, 1, 0, 0, 0) && !is_sound(2026, 1, 1, 24, 0));
    assert!(!is_sound(2026, 1, 1, 0, 60) && !is_sound(0, 1, 1, 0, 0));
    assert!(is_sound(9999, 1, 1, 0, 0) && !is_sound(10_000, 1, 1, 0, 0));
}

//! Calendar files: feeds that ring in the telephone's own calendar.
//!
//! Our own writer of the few parts that are needed: the library at hand brings a clock and a
//! parser that the first load has no room for.

use std::num::NonZeroU32;

use thiserror::Error;

use crate::words::names::unturned;

/// The most octets of a line, its CR LF not counted. Source: RFC 5545, section 3.1.
const MOST_OCTETS: usize = 75;
/// Names the program that wrote the file.
const PRODUCT: &str = "-//Perchlight//Perchlight//EN";

/// Why a calendar cannot be written.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
pub enum CalendarError {
    /// A date that no calendar has, or a time that no clock shows.
    #[error("{year}-{month}-{day} {hour}:{minute} is not a date and time")]
    Time {
        /// Year, 1 to 9999.
        year: u16,
        /// Month, 1 to 12.
        month: u8,
        /// Day of the month, from 1.
        day: u8,
        /// Hour, 0 to 23.
        hour: u8,
        /// Minute, 0 to 59.
        minute: u8,
    },
    /// An event without a name of its own, which no second import could replace.
    #[error("event {summary:?} has no uid")]
    NoUid {
        /// Its title.
        summary: String,
    },
    /// An event without a title, whose alarm would say nothing.
    #[error("event {uid:?} has no summary")]
    NoSummary {
        /// Its name.
        uid: String,
    },
}

/// A date and a time of day, to the minute, in the Gregorian calendar.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct CalendarTime {
    year: u16,
    month: u8,
    day: u8,
    hour: u8,
    minute: u8,
}

impl CalendarTime {
    /// A date of the years 1 to 9999 and a time of day.
    ///
    /// # Errors
    /// [`CalendarError::Time`] when there is no such date or time.
    ///
    /// # Examples
    /// ```
    /// use perchlight::share::icalendar::CalendarTime;
    ///
    /// assert!(CalendarTime::new(2028, 2, 29, 7, 0).is_ok());
    /// assert!(CalendarTime::new(2027, 2, 29, 7, 0).is_err());
    /// ```
    pub fn new(
        year: u16,
        month: u8,
        day: u8,
        hour: u8,
        minute: u8,
    ) -> Result<CalendarTime, CalendarError> {
        let days = days_in_month(year, month);
        let is_sound =
            (1..=9999).contains(&year) && (1..=days).contains(&day) && hour <= 23 && minute <= 59;
        if !is_sound {
            return Err(CalendarError::Time {
                year,
                month,
                day,
                hour,
                minute,
            });
        }
        Ok(CalendarTime {
            year,
            month,
            day,
            hour,
            minute,
        })
    }

    /// The form of RFC 5545, section 3.3.5, without a zone: floating.
    fn floating(self) -> String {
        let CalendarTime {
            year,
            month,
            day,
            hour,
            minute,
        } = self;
        format!("{year:04}{month:02}{day:02}T{hour:02}{minute:02}00")
    }
}

fn days_in_month(year: u16, month: u8) -> u8 {
    let is_leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if is_leap => 29,
        2 => 28,
        _ => 0,
    }
}

/// How often an event comes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Repeat {
    /// Once.
    Once,
    /// Every day, so many times in all.
    DailyTimes(NonZeroU32),
    /// Every day up to and with this wall-clock time.
    DailyUntil(CalendarTime),
}

/// What a calendar should do with the events.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Purpose {
    /// Take them in; an event already there under the same name with a lower sequence is
    /// replaced.
    Add,
    /// Take them out. Not every calendar does that from a file: tell the user how to delete them
    /// by hand.
    Remove,
}

/// Whether an event is to be there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// It takes place.
    Confirmed,
    /// It no longer does: a calendar that has it under this name takes it out, and it rings no more.
    Cancelled,
}

/// One event, at a wall-clock time wherever the telephone is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Event {
    /// Its name, the same in every later file.
    pub uid: String,
    /// Raised with every change.
    pub sequence: u32,
    /// When the file was written, in UTC.
    pub written_at_utc: CalendarTime,
    /// When it starts, wall clock.
    pub start: CalendarTime,
    /// How long it lasts.
    pub duration_minutes: u32,
    /// How often it comes.
    pub repeat: Repeat,
    /// Its title, with all that matters: many calendars show nothing else.
    pub summary: String,
    /// More words; may be empty.
    pub description: String,
    /// Whether it takes place.
    pub status: Status,
    /// How long before the start the alarm rings; none for no alarm.
    pub alarm_minutes_before: Option<u32>,
}

/// The calendar file for the events, CR LF at the end of each line.
///
/// Times float: breakfast stays at seven on a journey and when clocks change. An event does not
/// mark its time as busy.
///
/// # Errors
/// [`CalendarError::NoUid`] and [`CalendarError::NoSummary`].
///
/// Source: RFC 5545; RFC 5546, section 3.2.5, for removal. `DIFFERENCE`: removal wants an
/// `ORGANIZER`, left out, as with one some calendars take the feed for an invitation.
pub fn calendar_file(events: &[Event], purpose: Purpose) -> Result<String, CalendarError> {
    let mut file = String::new();
    push_line(&mut file, "BEGIN:VCALENDAR");
    push_line(&mut file, "VERSION:2.0");
    push_line(&mut file, &format!("PRODID:{PRODUCT}"));
    push_line(&mut file, "CALSCALE:GREGORIAN");
    if purpose == Purpose::Remove {
        push_line(&mut file, "METHOD:CANCEL");
    }
    for event in events {
        push_event(&mut file, event, purpose)?;
    }
    push_line(&mut file, "END:VCALENDAR");
    Ok(file)
}

fn push_event(file: &mut String, event: &Event, purpose: Purpose) -> Result<(), CalendarError> {
    if event.uid.trim().is_empty() {
        let summary = event.summary.clone();
        return Err(CalendarError::NoUid { summary });
    }
    if event.summary.trim().is_empty() {
        let uid = event.uid.clone();
        return Err(CalendarError::NoSummary { uid });
    }
    push_line(file, "BEGIN:VEVENT");
    push_text(file, "UID", &event.uid);
    push_line(
        file,
        &format!("DTSTAMP:{}Z", event.written_at_utc.floating()),
    );
    push_line(file, &format!("SEQUENCE:{}", event.sequence));
    push_line(file, &format!("DTSTART:{}", event.start.floating()));
    push_line(
        file,
        &format!("DURATION:{}", duration(minutes(event.duration_minutes))),
    );
    match event.repeat {
        Repeat::Once => {}
        Repeat::DailyTimes(times) => push_line(file, &format!("RRULE:FREQ=DAILY;COUNT={times}")),
        Repeat::DailyUntil(last) => {
            push_line(file, &format!("RRULE:FREQ=DAILY;UNTIL={}", last.floating()));
        }
    }
    push_text(file, "SUMMARY", &event.summary);
    if !event.description.is_empty() {
        push_text(file, "DESCRIPTION", &event.description);
    }
    push_line(file, "TRANSP:TRANSPARENT");
    match (purpose, event.status) {
        (Purpose::Add, Status::Confirmed) => {
            push_line(file, "STATUS:CONFIRMED");
            if let Some(before) = event.alarm_minutes_before {
                push_alarm(file, &event.summary, before);
            }
        }
        (Purpose::Remove, Status::Confirmed | Status::Cancelled)
        | (Purpose::Add, Status::Cancelled) => {
            push_line(file, "STATUS:CANCELLED");
        }
    }
    push_line(file, "END:VEVENT");
    Ok(())
}

fn push_alarm(file: &mut String, words: &str, minutes_before: u32) {
    push_line(file, "BEGIN:VALARM");
    push_line(file, "ACTION:DISPLAY");
    push_text(file, "DESCRIPTION", words);
    push_line(
        file,
        &format!("TRIGGER:{}", duration(-minutes(minutes_before))),
    );
    push_line(file, "END:VALARM");
}

fn push_text(file: &mut String, name: &str, text: &str) {
    push_line(file, &format!("{name}:{}", escape(&unturned(text))));
}

fn push_line(file: &mut String, line: &str) {
    file.push_str(&fold(line));
    file.push_str("\r\n");
}

fn minutes(count: u32) -> i64 {
    i64::from(count) * 60
}

/// Text as the value of a property of type TEXT.
///
/// Any line end becomes `\n`; control characters, which the format has no place for, are dropped.
///
/// # Examples
/// ```
/// assert_eq!(perchlight::share::icalendar::escape("a,b;c\\d\r\ne:"), r"a\,b\;c\\d\ne:");
/// ```
///
/// Source: RFC 5545, section 3.3.11.
pub fn escape(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    let mut characters = text.chars().peekable();
    while let Some(character) = characters.next() {
        match character {
            '\\' | ';' | ',' => {
                escaped.push('\\');
                escaped.push(character);
            }
            '\n' => escaped.push_str("\\n"),
            '\r' => {
                if characters.peek() != Some(&'\n') {
                    escaped.push_str("\\n");
                }
            }
            '\t' => escaped.push(character),
            _ if character.is_ascii_control() => {}
            _ => escaped.push(character),
        }
    }
    escaped
}

/// A content line as lines of at most 75 octets, each after the first beginning with a space.
///
/// No character is split, and there are as few lines as that allows.
///
/// Source: RFC 5545, section 3.1.
pub fn fold(line: &str) -> String {
    let mut folded = String::with_capacity(line.len() + line.len() / 24);
    let mut octets = 0;
    for character in line.chars() {
        if octets + character.len_utf8() > MOST_OCTETS {
            folded.push_str("\r\n ");
            octets = 1;
        }
        folded.push(character);
        octets += character.len_utf8();
    }
    folded
}

/// A length of time in seconds as a value of type DURATION.
///
/// # Examples
/// ```
/// use perchlight::share::icalendar::duration;
///
/// assert_eq!(duration(15 * 86_400 + 5 * 3_600 + 20), "P15DT5H0M20S");
/// assert_eq!(duration(-300), "-PT5M");
/// assert_eq!(duration(0), "PT0S");
/// ```
///
/// Source: RFC 5545, section 3.3.6; the first example is its own. The grammar there wants the
/// minutes between hours and seconds even when they are none.
pub fn duration(seconds: i64) -> String {
    const WEEK: u64 = 604_800;
    let sign = if seconds < 0 { "-" } else { "" };
    let total = seconds.unsigned_abs();
    if total > 0 && total.is_multiple_of(WEEK) {
        return format!("{sign}P{}W", total / WEEK);
    }
    let (days, in_day) = (total / 86_400, total % 86_400);
    let (hours, minutes, rest) = (in_day / 3_600, in_day / 60 % 60, in_day % 60);
    let mut text = format!("{sign}P");
    if days > 0 {
        push_unit(&mut text, days, 'D');
    }
    if in_day > 0 || days == 0 {
        text.push('T');
    }
    if hours > 0 {
        push_unit(&mut text, hours, 'H');
    }
    if minutes > 0 || (hours > 0 && rest > 0) {
        push_unit(&mut text, minutes, 'M');
    }
    if rest > 0 || total == 0 {
        push_unit(&mut text, rest, 'S');
    }
    text
}

fn push_unit(text: &mut String, count: u64, letter: char) {
    text.push_str(&count.to_string());
    text.push(letter);
}

#[cfg(test)]
mod tests {
    use crate::share::icalendar::*;

    /// Days of the months in the Gregorian calendar, ISO 8601, section 3.2.1: February has 29 in 2028,
    /// which 4 divides, and 28 in 2100, which 100 divides and 400 does not.
    #[test]
    fn each_month_ends_on_its_last_day() {
        let ends_on = |year, month, last| {
            let is_there = |day| CalendarTime::new(year, month, day, 7, 0).is_ok();
            assert!(is_there(last), "{year}-{month}-{last}");
            assert!(!is_there(last + 1), "{year}-{month}");
        };
        let lasts = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
        for (month, last) in (1..).zip(lasts) {
            ends_on(2027, month, last);
        }
        for (year, last) in [(2028, 29), (2100, 28), (2000, 29)] {
            ends_on(year, 2, last);
        }
    }

    /// RFC 5545, section 3.3.6: 15 days, 5 hours and 20 seconds, and 7 weeks, are its own examples; the
    /// others follow its grammar, in which hours and seconds want the minutes between them.
    #[test]
    fn durations_are_written_by_the_grammar() {
        let (hour, day, week) = (3_600, 86_400, 604_800);
        for (seconds, text) in [
            (0, "PT0S"),
            (20, "PT20S"),
            (15 * 60, "PT15M"),
            (15 * 60 + 20, "PT15M20S"),
            (hour, "PT1H"),
            (hour + 60, "PT1H1M"),
            (hour + 20, "PT1H0M20S"),
            (day, "P1D"),
            (day + 20, "P1DT20S"),
            (8 * day, "P8D"),
            (15 * day + 5 * hour + 20, "P15DT5H0M20S"),
            (7 * week, "P7W"),
        ] {
            assert_eq!(duration(seconds), text);
            if seconds > 0 {
                assert_eq!(duration(-seconds), format!("-{text}"));
            }
        }
    }

    /// RFC 5545, section 3.1: a tab is white space and may stand in a text; other control characters
    /// may not.
    #[test]
    fn a_tab_stays_and_other_control_characters_go() {
        assert_eq!(escape("a\tb\u{7}c\u{1b}d"), "a\tbcd");
    }
}

//! Laws of wall times that hold in every zone, and calendar days against chrono.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

#[path = "common/zones.rs"]
pub mod zones;

use std::sync::LazyLock;

use chrono::{Datelike, NaiveDate};
use perchlight::domain::time::moment::{Age, Day, Lived, Moment, Offset, WallTime};
use perchlight::domain::time::zone::{Occurrence, Zone};
use proptest::prelude::*;

/// Zones with gaps, overlaps, half hours, midnight gaps, two-hour shifts and a day that never was.
static ZONES: LazyLock<Vec<Zone>> = LazyLock::new(|| {
    [
        "America/New_York",
        "America/St_Johns",
        "America/Phoenix",
        "America/Sao_Paulo",
        "Europe/London",
        "Asia/Beirut",
        "Asia/Kathmandu",
        "Australia/Lord_Howe",
        "Antarctica/Troll",
        "Pacific/Easter",
        "Pacific/Apia",
        "Pacific/Kiritimati",
    ]
    .map(zones::zone)
    .into()
});

/// Days from 1990-01-03 to 2199-12-29: a wall time of any zone is then a moment within range.
fn days() -> impl Strategy<Value = Day> {
    (7_307..=84_002_i32).prop_map(Day::from_number)
}

fn times() -> impl Strategy<Value = WallTime> {
    (0..1_440_i32).prop_map(WallTime::from_minutes)
}

/// A day on or next to a change of the clocks, or any day.
fn days_near_changes(zone: &Zone, day: Day) -> Day {
    let noon = WallTime::from_minutes(720);
    (0..400)
        .map(|later| day.plus(later))
        .find(|&later| {
            zone.moment_of(later.plus(1), noon)
                .minutes_since(zone.moment_of(later, noon))
                != 1_440
        })
        .filter(|later| later.number() < 84_002)
        .unwrap_or(day)
}

fn assert_laws(zone: &Zone, day: Day, time: WallTime) -> Result<(), TestCaseError> {
    let wanted = Lived { day, time };
    let (moment, occurrence) = zone.resolve(day, time);
    prop_assert_eq!(moment, zone.moment_of(day, time));
    match occurrence {
        Occurrence::Once => prop_assert_eq!(zone.lived(moment), wanted),
        Occurrence::Twice(second) => {
            prop_assert!(moment < second);
            prop_assert_eq!((zone.lived(moment), zone.lived(second)), (wanted, wanted));
        }
        // RFC 5545, 3.3.5: a time in a gap is read with the offset before it and so lands later.
        Occurrence::Never => prop_assert!(wanted < zone.lived(moment)),
    }
    Ok(())
}

proptest! {
    #[test]
    fn a_wall_time_that_occurs_is_lived_at_its_moment(
        index in 0..12_usize, day in days(), time in times(),
    ) {
        let zone = &ZONES[index];
        assert_laws(zone, day, time)?;
        assert_laws(zone, days_near_changes(zone, day), time)?;
        assert_laws(zone, days_near_changes(zone, day).plus(1), time)?;
    }

    #[test]
    fn every_moment_is_the_first_or_second_of_its_own_wall_time(
        index in 0..12_usize, minute in 10_522_080..120_962_880_i64,
    ) {
        let zone = &ZONES[index];
        let moment = Moment::from_seconds(minute * 60);
        let lived = zone.lived(moment);
        let (first, occurrence) = zone.resolve(lived.day, lived.time);
        prop_assert!(first == moment || occurrence == Occurrence::Twice(moment));
    }

    #[test]
    fn later_wall_times_that_occur_once_are_later_moments(
        index in 0..12_usize, day in days(), time in times(), step in 1..3_000_i32,
    ) {
        let zone = &ZONES[index];
        for day in [day, days_near_changes(zone, day)] {
            let total = time.minutes() + step;
            let (later_day, later_time) =
                (day.plus(total / 1_440), WallTime::from_minutes(total));
            let (earlier, first) = zone.resolve(day, time);
            let (later, second) = zone.resolve(later_day, later_time);
            if first == Occurrence::Once && second == Occurrence::Once {
                prop_assert!(earlier < later);
            }
        }
    }

    #[test]
    fn a_fixed_zone_shows_every_wall_time_once(
        offset in -1_440..=1_440_i32, day in days(), time in times(),
    ) {
        let zone = Zone::fixed(Offset::from_minutes(offset));
        let (moment, occurrence) = zone.resolve(day, time);
        prop_assert_eq!(occurrence, Occurrence::Once);
        prop_assert_eq!(zone.lived(moment), Lived { day, time });
    }

    #[test]
    fn no_text_stops_the_parsers_of_days_and_times(text in any::<String>()) {
        for text in [text.as_str(), &format!("{text}:30"), &format!("2026-{text}")] {
            if let Some(time) = WallTime::parse(text) {
                prop_assert!((0..1_440).contains(&time.minutes()));
            }
            if let Some(day) = Day::parse_iso(text) {
                prop_assert_eq!(day.iso(), text.trim());
            }
        }
    }

    #[test]
    fn text_that_looks_like_days_and_times_is_read_as_written(text in "[0-9 +.:-]{0,11}") {
        if let Some(time) = WallTime::parse(&text) {
            let digits = |text: &str| text.replace(|sign: char| !sign.is_ascii_digit(), "");
            let (shown, typed) = (digits(&time.text()), digits(&text));
            prop_assert!(shown == typed || shown == format!("0{typed}"), "{text:?}");
        }
        if let Some(day) = Day::parse_iso(&text) {
            prop_assert_eq!(day.iso(), text.trim());
        }
    }

    #[test]
    fn an_age_is_the_number_of_days_that_chrono_counts(hatched in days(), days in 0..400_i32) {
        let today = hatched.plus(days);
        let age = Age::on(today, hatched).map(Age::days).unwrap();
        let counted = chrono_date(today).signed_duration_since(chrono_date(hatched));
        prop_assert_eq!(i64::from(age), counted.num_days());
    }
}

fn chrono_date(day: Day) -> NaiveDate {
    NaiveDate::parse_from_str(&day.iso(), "%Y-%m-%d").unwrap()
}

#[test]
fn every_day_of_the_range_is_the_date_and_weekday_that_chrono_gives() {
    let epoch = NaiveDate::from_ymd_opt(1970, 1, 1).unwrap();
    let first = NaiveDate::from_ymd_opt(1990, 1, 1).unwrap();
    let mut count = 0;
    for date in first.iter_days().take_while(|date| date.year() < 2200) {
        let day = Day::from_date(date.year(), date.month(), date.day()).unwrap();
        let number = date.signed_duration_since(epoch).num_days();
        assert_eq!(i64::from(day.number()), number, "{date}");
        assert_eq!(Day::from_number(day.number()), day, "{date}");
        assert_eq!(day.date(), (date.year(), date.month(), date.day()));
        assert_eq!(day.iso(), date.format("%Y-%m-%d").to_string());
        assert_eq!(Day::parse_iso(&day.iso()), Some(day));
        let weekday = date.weekday().num_days_from_monday();
        assert_eq!(u32::try_from(day.weekday()), Ok(weekday), "{date}");
        count += 1;
    }
    // 210 years with 51 leap days (1992 to 2196, less 2100).
    assert_eq!(count, 76_701);
}

#[test]
fn every_minute_of_the_day_is_read_back_as_written() {
    for minutes in 0..1_440 {
        let time = WallTime::from_minutes(minutes);
        assert_eq!(WallTime::parse(&time.text()), Some(time));
        assert_eq!(WallTime::parse(&time.text().replace(':', "")), Some(time));
    }
}

#[test]
fn the_day_that_samoa_left_out_does_not_occur() {
    // IANA, file australasia: Pacific/Apia went from 2011-12-29 to 2011-12-31 at midnight.
    let zone = zones::zone("Pacific/Apia");
    let skipped = Day::from_date(2011, 12, 30).unwrap();
    let seven = WallTime::new(7, 0).unwrap();
    let (moment, occurrence) = zone.resolve(skipped, seven);
    assert_eq!(occurrence, Occurrence::Never);
    let lived = Lived {
        day: skipped.plus(1),
        time: seven,
    };
    assert_eq!(zone.lived(moment), lived);
}

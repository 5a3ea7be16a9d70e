//! Wall times, feed schedules, journeys and ages against the IANA database as other programs read it.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

pub mod common;
#[path = "common/zones.rs"]
pub mod zones;

use perchlight::domain::homecoming::journey::{
    FeedMoments, MOST_SHIFT_PER_DAY, feed_moments, shift_on_day, total_shift_min,
};
use perchlight::domain::plan::care_plan::{ClockShift, Journey};
use perchlight::domain::time::moment::{Age, Day, Lived, Moment, WallTime};
use perchlight::domain::time::zone::{Occurrence, Zone};
use serde_json::Value;

use crate::common::checks_file;
use crate::zones::zone;

fn text<'a>(value: &'a Value, key: &str) -> &'a str {
    value[key]
        .as_str()
        .unwrap_or_else(|| panic!("no text {key} in {value}"))
}

fn whole(value: &Value, key: &str) -> i32 {
    let number = value[key].as_i64().map(i32::try_from);
    number
        .unwrap_or_else(|| panic!("no whole {key} in {value}"))
        .unwrap()
}

fn list<'a>(value: &'a Value, key: &str) -> &'a [Value] {
    let list = value[key]
        .as_array()
        .unwrap_or_else(|| panic!("no list {key} in {value}"));
    assert!(!list.is_empty(), "{key} is empty in {value}");
    list
}

fn cases(file: &Value) -> &[Value] {
    list(file, "cases")
}

fn day(text: &str) -> Day {
    Day::parse_iso(text).unwrap_or_else(|| panic!("no day {text}"))
}

fn time(text: &str) -> WallTime {
    WallTime::parse(text).unwrap_or_else(|| panic!("no time {text}"))
}

/// `YYYY-MM-DDTHH:MM`.
fn wall(text: &str) -> (Day, WallTime) {
    let (date, clock) = text.split_once('T').expect("a date and a time");
    (day(date), time(clock))
}

/// `YYYY-MM-DDTHH:MM:00Z`.
fn utc(text: &str) -> Moment {
    let minutes = text.strip_suffix(":00Z").expect("a whole minute of UTC");
    let (day, time) = wall(minutes);
    Moment::from_seconds(i64::from(day.number()) * 86_400 + i64::from(time.minutes()) * 60)
}

fn written(lived: Lived) -> String {
    format!("{}T{}", lived.day.iso(), lived.time.text())
}

/// Minutes ahead of UTC from `+05:30`.
fn offset_min(text: &str) -> i32 {
    let sign = if text.starts_with('-') { -1 } else { 1 };
    sign * time(&text[1..]).minutes()
}

fn assert_occurs(zone: &Zone, at: (Day, WallTime), kind: &str, second: Option<Moment>, id: &str) {
    let (first, occurrence) = zone.resolve(at.0, at.1);
    let expected = match (kind, second) {
        ("ok" | "unique", _) => Occurrence::Once,
        ("nonexistent" | "gap", _) => Occurrence::Never,
        ("ambiguous" | "overlap", Some(second)) => Occurrence::Twice(second),
        ("ambiguous" | "overlap", None) => {
            assert!(matches!(occurrence, Occurrence::Twice(_)), "{id}");
            return;
        }
        (unknown, _) => panic!("{id}: unknown kind {unknown}"),
    };
    assert_eq!(
        (first, occurrence),
        (zone.moment_of(at.0, at.1), expected),
        "{id}"
    );
}

#[test]
fn every_case_of_times_holds() {
    let file = checks_file("times.json");
    for case in cases(&file) {
        let (id, input, expected) = (text(case, "id"), &case["input"], &case["expected"]);
        match text(input, "kind") {
            "wall" => check_wall(id, input, expected),
            "schedule" => check_schedule(id, input, expected),
            "travel" => check_travel(id, input, expected),
            "instant" => check_instant(id, input, expected),
            "elapsed" => check_elapsed(id, input, expected),
            "age" => check_age(id, input, expected),
            unknown => panic!("{id}: unknown kind {unknown}"),
        }
    }
}

fn check_wall(id: &str, input: &Value, expected: &Value) {
    let zone = zone(text(input, "zone"));
    let (day, time) = wall(text(input, "wall"));
    let moment = zone.moment_of(day, time);
    assert_eq!(moment, utc(text(expected, "compatible_utc")), "{id}");
    assert_eq!(
        written(zone.lived(moment)),
        text(expected, "compatible_wall"),
        "{id}"
    );
    let offset = zone.offset_at(moment).minutes();
    assert_eq!(offset, whole(expected, "compatible_offset_min"), "{id}");
    let later = utc(text(expected, "later_utc"));
    assert_occurs(&zone, (day, time), text(expected, "kind"), Some(later), id);
}

fn check_schedule(id: &str, input: &Value, expected: &Value) {
    let zone = zone(text(input, "zone"));
    let first = day(text(input, "first_date"));
    let wanted = (0..whole(input, "days")).flat_map(|days| {
        let clocks = list(input, "times").iter();
        clocks.map(move |clock| (first.plus(days), time(clock.as_str().unwrap())))
    });
    let wanted: Vec<(Day, WallTime)> = wanted.collect();
    let feeds = list(expected, "feeds");
    assert_eq!(wanted.len(), feeds.len(), "{id}");
    for (&(day, time), feed) in wanted.iter().zip(feeds) {
        let moment = zone.moment_of(day, time);
        assert_eq!(
            written(Lived { day, time }),
            text(feed, "wall_wanted"),
            "{id}"
        );
        assert_eq!(moment, utc(text(feed, "utc")), "{id}: {feed}");
        assert_eq!(
            written(zone.lived(moment)),
            text(feed, "wall_actual"),
            "{id}"
        );
        let offset = zone.offset_at(moment).minutes();
        assert_eq!(offset, whole(feed, "offset_min"), "{id}");
        assert_occurs(&zone, (day, time), text(feed, "kind"), None, id);
    }
    let moments = wanted.iter().map(|&(day, time)| zone.moment_of(day, time));
    assert_gaps(id, &moments.collect::<Vec<_>>(), feeds);
}

/// Real hours between feeds; the file gives them in fractions of an hour, exact to the minute.
fn assert_gaps(id: &str, moments: &[Moment], feeds: &[Value]) {
    assert_eq!(moments.len(), feeds.len(), "{id}");
    assert!(feeds[0]["hours_since_previous"].is_null(), "{id}");
    for (pair, feed) in moments.windows(2).zip(&feeds[1..]) {
        let hours = feed["hours_since_previous"].as_f64().unwrap();
        let gap = pair[1].days_since(pair[0]) * 24.0;
        // 12 significant digits are printed; a minute is 0.0167 h.
        assert!((gap - hours).abs() < 1e-9, "{id}: {gap} h, {feed}");
    }
}

fn check_travel(id: &str, input: &Value, expected: &Value) {
    let home = zone(text(input, "home"));
    let away = zone(text(input, "away"));
    let left = utc(text(input, "departure_utc"));
    let first = day(text(input, "first_date"));
    let clocks: Vec<WallTime> = list(input, "times")
        .iter()
        .map(|clock| time(clock.as_str().unwrap()))
        .collect();
    let labels: Vec<(Day, WallTime)> = (0..whole(input, "days"))
        .flat_map(|days| clocks.iter().map(move |&clock| (first.plus(days), clock)))
        .collect();
    let journey = |shift| Journey {
        left,
        expected: left,
        breeder_offset: home.offset_at(left),
        shift,
        last_fed: None,
    };
    let total = total_shift_min(&journey(ClockShift::AtOnce), &away);
    assert_eq!(total, whole(expected, "shift_min"), "{id}");
    let moved = |shift| {
        let moments = labels
            .iter()
            .map(|&(day, time)| feed_moments(day, time, &away, &journey(shift)))
            .flat_map(FeedMoments::in_order);
        let mut moments: Vec<Moment> = moments.collect();
        moments.sort_unstable();
        moments
    };
    let most_per_day = whole(input, "gradual_min_per_day");
    let policies = expected["policies"].as_object().unwrap();
    assert!(!policies.is_empty(), "{id}: no policy");
    for (policy, feeds) in policies {
        let at_home = |&(day, time): &(Day, WallTime)| home.moment_of(day, time);
        let gradual = |&(day, time): &(Day, WallTime)| {
            let days = day.since(home.lived(left).day);
            let shift = shift_on_day(total, days, most_per_day);
            home.moment_of(day, time).plus_minutes(i64::from(shift))
        };
        let id = format!("{id}, {policy}");
        let moments: Vec<Moment> = match policy.as_str() {
            "keep_home_clock" => labels.iter().map(at_home).collect(),
            "switch_at_once" => moved(ClockShift::AtOnce),
            "gradual" => {
                let moments: Vec<Moment> = labels.iter().map(gradual).collect();
                // DIFFERENCE: past half a day the product goes the short way round the clock.
                if most_per_day == MOST_SHIFT_PER_DAY.value && total.abs() <= 720 {
                    assert_eq!(moved(ClockShift::Gradual), moments, "{id}");
                }
                moments
            }
            unknown => panic!("{id}: unknown policy {unknown}"),
        };
        let feeds = feeds.as_array().unwrap();
        assert_gaps(&id, &moments, feeds);
        for (&moment, feed) in moments.iter().zip(feeds) {
            assert_eq!(moment, utc(text(feed, "utc")), "{id}");
            assert_eq!(written(home.lived(moment)), text(feed, "home_wall"), "{id}");
            assert_eq!(written(away.lived(moment)), text(feed, "away_wall"), "{id}");
        }
    }
}

fn check_instant(id: &str, input: &Value, expected: &Value) {
    let zone = zone(text(input, "zone"));
    let moment = utc(text(input, "utc"));
    let lived = zone.lived(moment);
    assert_eq!(written(lived), text(expected, "wall"), "{id}");
    assert_eq!(lived.day.iso(), text(expected, "date"), "{id}");
    // ISO 8601 counts Monday as 1, Perchlight as 0.
    assert_eq!(
        lived.day.weekday() + 1,
        whole(expected, "weekday_iso"),
        "{id}"
    );
    let offset = zone.offset_at(moment).minutes();
    assert_eq!(offset, whole(expected, "offset_min"), "{id}");
}

fn check_elapsed(id: &str, input: &Value, expected: &Value) {
    let moment = |wall_key, zone_key| {
        let (day, time) = wall(text(input, wall_key));
        zone(text(input, zone_key)).moment_of(day, time)
    };
    let from = moment("from_wall", "from_zone");
    let to = moment("to_wall", "to_zone");
    assert_eq!(from, utc(text(expected, "from_utc")), "{id}");
    assert_eq!(to, utc(text(expected, "to_utc")), "{id}");
    let hours = expected["hours"].as_f64().unwrap();
    // 12 significant digits are printed; a minute is 0.0167 h.
    assert!((to.days_since(from) * 24.0 - hours).abs() < 1e-9, "{id}");
}

fn check_age(id: &str, input: &Value, expected: &Value) {
    let on = day(text(input, "on"));
    let age = Age::on(on, day(text(input, "hatch"))).unwrap();
    assert_eq!(age.days(), whole(expected, "days"), "{id}");
    let weeks_and_days = (whole(expected, "weeks"), whole(expected, "rest_days"));
    assert_eq!(age.weeks_and_days(), weeks_and_days, "{id}");
    // Perchlight counts no ISO weeks; its weekday is the third part of one.
    let iso_weekday = expected["iso_week"][2].as_i64().unwrap();
    assert_eq!(i64::from(on.weekday() + 1), iso_weekday, "{id}");
}

#[test]
fn every_case_of_time_zones_holds() {
    let file = checks_file("time_zones.json");
    for case in cases(&file) {
        check_zone_day(case);
    }
}

fn check_zone_day(case: &Value) {
    let id = text(case, "id");
    let zone = zone(text(case, "zone"));
    let day = day(text(case, "date"));
    let midnight = WallTime::from_minutes(0);
    let first = zone.moment_of(day, midnight);
    assert_eq!(first, utc(text(case, "first_instant_utc")), "{id}");
    let first_time = zone.lived(first).time;
    assert_eq!(first_time.text(), text(case, "first_wall_time"), "{id}");
    let length = zone.moment_of(day.plus(1), midnight).minutes_since(first);
    assert_eq!(Some(length), case["day_length_minutes"].as_i64(), "{id}");
    let mut previous: Option<Moment> = None;
    for row in list(case, "times") {
        let time = time(text(row, "wall"));
        let moment = zone.moment_of(day, time);
        assert_eq!(moment, utc(text(row, "utc")), "{id}: {row}");
        assert_eq!(
            written(zone.lived(moment)),
            text(row, "effective_local"),
            "{id}"
        );
        let second = row["utc_second_occurrence"].as_str().map(utc);
        let kind = text(row, "kind");
        assert_eq!(kind == "overlap", second.is_some(), "{id}: {row}");
        assert_occurs(&zone, (day, time), kind, second, id);
        // The offset used is the one that makes the wall time wanted out of the moment.
        let wanted = Moment::from_seconds(i64::from(day.number()) * 86_400)
            .plus_minutes(i64::from(time.minutes()));
        let used = wanted.minutes_since(moment);
        assert_eq!(
            used,
            i64::from(offset_min(text(row, "offset_used"))),
            "{id}"
        );
        let gap = previous.map(|previous| moment.minutes_since(previous));
        assert_eq!(gap, row["minutes_since_previous"].as_i64(), "{id}: {row}");
        previous = Some(moment);
    }
}

#[test]
fn every_feed_of_the_recurrence_rules_falls_where_the_calendar_puts_it() {
    let file = checks_file("rrule.json");
    for case in cases(&file) {
        let id = text(case, "id");
        let zone = zone(text(case, "zone"));
        let (local, instants) = (list(case, "local"), list(case, "utc"));
        assert_eq!(local.len(), instants.len(), "{id}");
        let count = u64::try_from(local.len()).ok();
        assert_eq!(count, case["count"].as_u64(), "{id}");
        for (local, instant) in local.iter().zip(instants) {
            let (day, time) = wall(local.as_str().unwrap());
            let moment = zone.moment_of(day, time);
            assert_eq!(moment, utc(instant.as_str().unwrap()), "{id}: {local}");
        }
    }
}

//! Moments, civil days, wall times and ages; the only file that names chrono.

use chrono::{Datelike, NaiveDate};

/// A point in time, whole seconds since 1970-01-01T00:00:00Z.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Moment(i64);

impl Moment {
    /// The earliest moment taken, 1990-01-01T00:00:00Z: no chick in hand is older.
    pub const EARLIEST: Self = Self(631_152_000);
    /// The latest moment taken, 2200-01-01T00:00:00Z.
    pub const LATEST: Self = Self(7_258_118_400);

    /// A moment from seconds since 1970-01-01T00:00:00Z, held within the range taken.
    pub const fn from_seconds(seconds: i64) -> Self {
        if seconds < Self::EARLIEST.0 {
            Self::EARLIEST
        } else if seconds > Self::LATEST.0 {
            Self::LATEST
        } else {
            Self(seconds)
        }
    }

    /// Seconds since 1970-01-01T00:00:00Z.
    pub const fn seconds(self) -> i64 {
        self.0
    }

    /// The moment `minutes` later, or earlier when below zero.
    #[must_use]
    pub const fn plus_minutes(self, minutes: i64) -> Self {
        Self::from_seconds(self.0.saturating_add(minutes.saturating_mul(60)))
    }

    /// The moment `seconds` later, or earlier when below zero.
    #[must_use]
    pub const fn plus_seconds(self, seconds: i64) -> Self {
        Self::from_seconds(self.0.saturating_add(seconds))
    }

    /// Whole minutes since `earlier`, cut towards minus infinity; below zero when it is later.
    pub const fn minutes_since(self, earlier: Self) -> i64 {
        (self.0 - earlier.0).div_euclid(60)
    }

    /// Days since `earlier` as a float.
    pub fn days_since(self, earlier: Self) -> f64 {
        // Whole days and the rest apart: the seconds of 68 years and more do not fit in an i32.
        let seconds = self.0 - earlier.0;
        let days = i32::try_from(seconds.div_euclid(86_400)).unwrap_or(0);
        let rest = i32::try_from(seconds.rem_euclid(86_400)).unwrap_or(0);
        (f64::from(days) * 86_400.0 + f64::from(rest)) / 86_400.0
    }

    /// The wall time lived at this moment under an offset from UTC.
    pub fn lived(self, offset: Offset) -> Lived {
        let local = self.0 + i64::from(offset.0) * 60;
        let day = i32::try_from(local.div_euclid(86_400)).unwrap_or(0);
        let minute = u16::try_from(local.rem_euclid(86_400) / 60).unwrap_or(0);
        Lived {
            day: Day(day),
            time: WallTime(minute),
        }
    }
}

/// Minutes that the wall clock is ahead of UTC, -1,440 to 1,440.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Offset(i16);

impl Offset {
    /// Universal time.
    pub const UTC: Self = Self(0);

    /// An offset from minutes, held within one day either way.
    pub fn from_minutes(minutes: i32) -> Self {
        Self(i16::try_from(minutes.clamp(-1_440, 1_440)).unwrap_or(0))
    }

    /// Minutes ahead of UTC.
    pub fn minutes(self) -> i32 {
        i32::from(self.0)
    }
}

/// A day and wall time as a person lives it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Lived {
    /// The civil day.
    pub day: Day,
    /// The time on the wall.
    pub time: WallTime,
}

impl Lived {
    /// The day of care that this belongs to.
    pub fn care_day(self) -> Day {
        self.day.plus(-i32::from(self.time < CARE_DAY_STARTS))
    }
}

/// A civil date, not a midnight instant: whole days since 1970-01-01.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Day(i32);

impl Day {
    /// The day with this number, counted from 1970-01-01, held within 1990 to 2200.
    pub fn from_number(number: i32) -> Self {
        Self(number.clamp(7_305, 84_006))
    }

    /// Days since 1970-01-01.
    pub const fn number(self) -> i32 {
        self.0
    }

    /// The day of a calendar date; `None` when there is no such date or it is outside 1990 to 2199.
    ///
    /// # Examples
    /// ```
    /// use perchlight::domain::time::moment::Day;
    /// assert_eq!(Day::from_date(2026, 2, 29), None);
    /// assert_eq!(Day::from_date(2026, 8, 22).map(|day| day.date()), Some((2026, 8, 22)));
    /// ```
    pub fn from_date(year: i32, month: u32, day: u32) -> Option<Self> {
        if !(1990..2200).contains(&year) {
            return None;
        }
        let date = NaiveDate::from_ymd_opt(year, month, day)?;
        Some(Self(date.num_days_from_ce() - UNIX_EPOCH_FROM_CE))
    }

    /// A day from `YYYY-MM-DD`, as date fields give it: four, two and two digits, spaces around it.
    ///
    /// # Examples
    /// ```
    /// use perchlight::domain::time::moment::Day;
    /// assert_eq!(Day::parse_iso("2026-08-22"), Day::from_date(2026, 8, 22));
    /// assert_eq!(Day::parse_iso("2026-8-+2"), None);
    /// ```
    pub fn parse_iso(text: &str) -> Option<Self> {
        let mut parts = text.trim().splitn(3, '-');
        let mut digits = |count: usize| {
            parts.next().filter(|part| {
                part.len() == count && part.bytes().all(|byte| byte.is_ascii_digit())
            })
        };
        let year = digits(4)?.parse().ok()?;
        let month = digits(2)?.parse().ok()?;
        let day = digits(2)?.parse().ok()?;
        Self::from_date(year, month, day)
    }

    /// Year, month (1 to 12) and day of the month.
    pub fn date(self) -> (i32, u32, u32) {
        let from_ce = self.0.saturating_add(UNIX_EPOCH_FROM_CE);
        let date = NaiveDate::from_num_days_from_ce_opt(from_ce).unwrap_or_default();
        (date.year(), date.month(), date.day())
    }

    /// `YYYY-MM-DD`.
    pub fn iso(self) -> String {
        let (year, month, day) = self.date();
        format!("{year:04}-{month:02}-{day:02}")
    }

    /// Day of the week, 0 for Monday to 6 for Sunday.
    pub const fn weekday(self) -> i32 {
        // 1970-01-01 was a Thursday.
        (self.0.rem_euclid(7) + 3) % 7
    }

    /// The day `days` later, or earlier when below zero.
    #[must_use]
    pub const fn plus(self, days: i32) -> Self {
        Self(self.0.saturating_add(days))
    }

    /// Days from `earlier` to this day; below zero when it is later.
    pub const fn since(self, earlier: Self) -> i32 {
        self.0.saturating_sub(earlier.0)
    }
}

/// Days from 0001-01-01 (day 1 of the common era) to 1970-01-01.
const UNIX_EPOCH_FROM_CE: i32 = 719_163;

/// The wall time at which a day of care begins: bedtime at 00:00 is a feed of the evening before. Ours.
pub const CARE_DAY_STARTS: WallTime = WallTime(4 * 60);

/// A time on the wall clock, whole minutes since midnight, 0 to 1,439.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct WallTime(u16);

impl WallTime {
    /// A wall time from hours and minutes; `None` outside 00:00 to 23:59.
    pub const fn new(hour: u16, minute: u16) -> Option<Self> {
        if hour > 23 || minute > 59 {
            None
        } else {
            Some(Self(hour * 60 + minute))
        }
    }

    /// A full hour, 0 to 23; later hours are 23.
    pub const fn from_hour(hour: u16) -> Self {
        Self(if hour > 23 { 23 } else { hour } * 60)
    }

    /// A wall time from minutes since midnight, wrapped round the day.
    pub fn from_minutes(minutes: i32) -> Self {
        Self(u16::try_from(minutes.rem_euclid(1_440)).unwrap_or(0))
    }

    /// A wall time from `HH:MM`, `H.MM` or `HHMM`, as people and time fields give it.
    ///
    /// # Examples
    /// ```
    /// use perchlight::domain::time::moment::WallTime;
    /// assert_eq!(WallTime::parse("7:05"), WallTime::new(7, 5));
    /// assert_eq!(WallTime::parse("24:00"), None);
    /// ```
    pub fn parse(text: &str) -> Option<Self> {
        let text = text.trim();
        let (hour, minute) = match text.split_once([':', '.']) {
            Some(parts) => parts,
            None if text.len() == 4 && text.is_ascii() => text.split_at_checked(2)?,
            None => return None,
        };
        let is_plain = |part: &str| {
            matches!(part.len(), 1 | 2) && part.bytes().all(|byte| byte.is_ascii_digit())
        };
        if !is_plain(hour) || !is_plain(minute) || minute.len() != 2 {
            return None;
        }
        Self::new(hour.parse().ok()?, minute.parse().ok()?)
    }

    /// Minutes since midnight.
    pub fn minutes(self) -> i32 {
        i32::from(self.0)
    }

    /// Minutes since the day of care began, 0 to 1,439: a time before [`CARE_DAY_STARTS`] is a late one.
    pub fn care_minutes(self) -> i32 {
        (self.minutes() - CARE_DAY_STARTS.minutes()).rem_euclid(1_440)
    }

    /// The civil day on which this time of a day of care falls.
    pub fn civil_day(self, care_day: Day) -> Day {
        care_day.plus(i32::from(self < CARE_DAY_STARTS))
    }

    /// Hour (0 to 23) and minute (0 to 59).
    pub const fn hour_and_minute(self) -> (u16, u16) {
        (self.0 / 60, self.0 % 60)
    }

    /// `HH:MM` on the 24-hour clock.
    pub fn text(self) -> String {
        let (hour, minute) = self.hour_and_minute();
        format!("{hour:02}:{minute:02}")
    }
}

/// Age in whole days since the hatch day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Age(i32);

impl Age {
    /// The age on `today`; `None` before the hatch day.
    pub fn on(today: Day, hatched: Day) -> Option<Self> {
        let days = today.since(hatched);
        (days >= 0).then_some(Self(days))
    }

    /// Whole days.
    pub const fn days(self) -> i32 {
        self.0
    }

    /// Whole weeks and the days over.
    pub const fn weeks_and_days(self) -> (i32, i32) {
        (self.0 / 7, self.0 % 7)
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::time::moment::*;

    #[test]
    fn the_first_of_january_1970_was_a_thursday() {
        assert_eq!(Day(0).weekday(), 3);
        assert_eq!(Day(0).date(), (1970, 1, 1));
    }

    #[test]
    fn times_that_are_no_times_are_refused() {
        for text in [
            "",
            "7",
            "24:00",
            "12:60",
            "-1:00",
            "12:5",
            "ab:cd",
            "12:300",
            "１２:００",
        ] {
            assert_eq!(WallTime::parse(text), None, "{text}");
        }
        assert_eq!(WallTime::parse("2130"), WallTime::new(21, 30));
        assert_eq!(WallTime::parse("7.30"), WallTime::new(7, 30));
    }

    #[test]
    fn a_moment_west_of_greenwich_is_lived_on_the_day_before() {
        // 2026-01-01T02:00:00Z is 21:00 the evening before at UTC-5.
        let moment = Moment::from_seconds(1_767_232_800);
        let lived = moment.lived(Offset::from_minutes(-300));
        assert_eq!(lived.day.date(), (2025, 12, 31));
        assert_eq!(lived.time, WallTime::new(21, 0).unwrap());
    }

    #[test]
    fn days_between_moments_keep_their_sign_and_size_over_the_whole_range() {
        // 1990-01-01 to 2200-01-01: 210 years with 51 leap days (1992 to 2196, less 2100) = 76,701.
        assert_eq!(Moment::LATEST.days_since(Moment::EARLIEST), 76_701.0);
        assert_eq!(Moment::EARLIEST.days_since(Moment::LATEST), -76_701.0);
    }

    #[test]
    fn only_plain_iso_dates_are_days() {
        for text in [
            "",
            "2026",
            "2026-08",
            "2026-8-22",
            "+2026-08-22",
            "2026-+8-22",
            "2026-08-22-01",
            "2026-08-22T00:00",
            "002026-08-22",
            "2026-02-29",
            "2026-13-01",
            "1989-12-31",
            "2200-01-01",
            "２０２６-08-22",
        ] {
            assert_eq!(Day::parse_iso(text), None, "{text}");
        }
        assert_eq!(Day::parse_iso(" 2028-02-29 ").unwrap().iso(), "2028-02-29");
    }

    #[test]
    fn a_day_far_outside_the_range_stops_nothing() {
        let last = Day::from_number(i32::MAX).plus(i32::MAX);
        let first = Day::from_number(i32::MIN).plus(i32::MIN);
        for day in [first, last] {
            assert!((0..7).contains(&day.weekday()));
            assert!((1..=12).contains(&day.date().1));
        }
        assert_eq!(last.since(first), i32::MAX);
    }

    #[test]
    fn age_counts_whole_days_from_the_hatch_day() {
        let hatched = Day::from_date(2026, 8, 22).unwrap();
        assert_eq!(Age::on(hatched, hatched).map(Age::days), Some(0));
        assert_eq!(
            Age::on(hatched.plus(93), hatched).map(Age::weeks_and_days),
            Some((13, 2))
        );
        assert_eq!(Age::on(hatched.plus(-1), hatched), None);
    }
}

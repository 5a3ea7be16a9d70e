//! How feed times move from the breeder's clock to the owner's.
//!
//! A chick flown west feels its owner's 07:00 hours later than its breeder's. Either all times are
//! the owner's from the departure on, or they move a little each day.

use crate::domain::plan::care_plan::{ClockShift, Journey};
use crate::domain::quantity::evidence::{Cited, Standing};
use crate::domain::time::moment::{Day, Moment, Offset, WallTime};
use crate::domain::time::zone::Zone;

/// Most minutes by which feed times move in a day under [`ClockShift::Gradual`].
pub const MOST_SHIFT_PER_DAY: Cited<i32> = Cited::new(
    60,
    Standing::Ours,
    "an hour keeps the longest night of a feathered chick within an hour of its own; not tested",
);

/// Minutes in half a day, the longest way round the clock.
const HALF_DAY: i32 = 720;

/// Most days that a gradual shift takes: half a day, the longest way round, by that much a day.
pub const LONGEST_SHIFT_DAYS: i32 = HALF_DAY / MOST_SHIFT_PER_DAY.value;

/// Minutes by which feeds come later than on the breeder's clock, `days_since_departure` days after
/// the breeder's civil day of departure; below zero when they come earlier.
///
/// `total_shift_min` is above zero for a journey west. Up to the day of departure nothing has moved;
/// then each day moves by `most_per_day_min` more, until the whole shift is done.
///
/// # Examples
/// ```
/// use perchlight::domain::homecoming::journey::shift_on_day;
/// assert_eq!(shift_on_day(180, 2, 60), 120);
/// assert_eq!(shift_on_day(-180, 9, 60), -180);
/// ```
pub fn shift_on_day(total_shift_min: i32, days_since_departure: i32, most_per_day_min: i32) -> i32 {
    let moved = days_since_departure
        .max(0)
        .saturating_mul(most_per_day_min.max(0));
    let size = i32::try_from(total_shift_min.unsigned_abs()).unwrap_or(i32::MAX);
    moved.min(size) * total_shift_min.signum()
}

/// Minutes that the owner's clock is behind the breeder's when the chick leaves, above zero for a
/// journey west.
pub fn total_shift_min(journey: &Journey, owner: &Zone) -> i32 {
    journey.breeder_offset.minutes() - owner.offset_at(journey.left).minutes()
}

/// The moments of one wall time of one day of the plan, before and after the chick leaves.
///
/// Both are there when a clock put back by a journey west shows the time twice, none when a journey
/// east skips it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FeedMoments {
    /// Up to the departure, at the breeder's.
    pub at_breeder: Option<Moment>,
    /// After the departure, on the way or at the owner's.
    pub at_owner: Option<Moment>,
}

impl FeedMoments {
    /// The moments there are, earlier first.
    pub fn in_order(self) -> impl Iterator<Item = Moment> {
        self.at_breeder.into_iter().chain(self.at_owner)
    }
}

/// Whether a feed at the breeder's and the one of the same slot after leaving are one feed, for a plan
/// of `feeds_a_day` feeds.
///
/// They are when they lie nearer than a day shared out among the feeds, 12 h at most: a day that the
/// journey makes that much longer has room for one feed more, a shorter one has not. Ours.
pub fn is_doubled(at_breeder: Moment, at_owner: Moment, feeds_a_day: usize) -> bool {
    let feeds_a_day = i64::try_from(feeds_a_day).unwrap_or(1).max(2);
    at_owner.minutes_since(at_breeder) < 1_440 / feeds_a_day
}

/// When the feed planned for `time` on `day` falls, in the owner's zone and with the plan's journey.
///
/// The breeder's clock keeps its offset of the departure. Under [`ClockShift::Gradual`] `day` is
/// the plan's day: once the shift is done it is the owner's civil day, and the owner's clock is
/// followed through its own changes. A shift of more than half a day goes the short way round the
/// clock (over the date line), so that no chick is moved by 23 h to gain one.
pub fn feed_moments(day: Day, time: WallTime, owner: &Zone, journey: &Journey) -> FeedMoments {
    let breeder = Zone::fixed(journey.breeder_offset);
    let (before, after) = match journey.shift {
        ClockShift::AtOnce => (breeder.moment_of(day, time), owner.moment_of(day, time)),
        ClockShift::Gradual => {
            let moment = gradual_moment(day, time, owner, journey);
            (moment, moment)
        }
    };
    FeedMoments {
        at_breeder: (before <= journey.left).then_some(before),
        at_owner: (after > journey.left).then_some(after),
    }
}

fn gradual_moment(day: Day, time: WallTime, owner: &Zone, journey: &Journey) -> Moment {
    let breeder = Zone::fixed(journey.breeder_offset);
    let whole = total_shift_min(journey, owner);
    let total = short_way_min(whole);
    let breeder_day = day.plus((whole - total) / (2 * HALF_DAY));
    let days_since_departure = breeder_day.since(breeder.lived(journey.left).day);
    let shift = shift_on_day(total, days_since_departure, MOST_SHIFT_PER_DAY.value);
    if shift == total && days_since_departure > 0 {
        owner.moment_of(day, time)
    } else {
        breeder
            .moment_of(breeder_day, time)
            .plus_minutes(i64::from(shift))
    }
}

/// The same change of the clock by at most half a day; half a day itself keeps its sign.
fn short_way_min(shift_min: i32) -> i32 {
    if shift_min.abs() <= HALF_DAY {
        shift_min
    } else {
        HALF_DAY - (HALF_DAY - shift_min).rem_euclid(2 * HALF_DAY)
    }
}

/// Longest journey that is taken, minutes: two days. Ours, to catch a slip of the date.
pub const LONGEST_MINUTES: i64 = 2 * 1_440;

/// What is wrong with a journey as typed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum JourneyFault {
    /// It arrives no later than it leaves.
    ArrivesBeforeLeaving,
    /// It takes longer than [`LONGEST_MINUTES`].
    TooLong,
}

/// What is wrong with a journey that leaves and arrives then; `None` when it can be taken.
pub fn journey_fault(left: Moment, expected: Moment) -> Option<JourneyFault> {
    match expected.minutes_since(left) {
        ..=0 => Some(JourneyFault::ArrivesBeforeLeaving),
        1..=LONGEST_MINUTES => None,
        _ => Some(JourneyFault::TooLong),
    }
}

/// Farthest offset from UTC that any wall clock keeps, minutes: UTC+14 (IANA, Pacific/Kiritimati).
const FARTHEST_OFFSET_MIN: i32 = 14 * 60;

/// An offset from UTC as typed: `-4`, `+5:30`, `UTC-03:30`, `0`.
///
/// `None` for anything else, and beyond 14 h either way.
///
/// # Examples
/// ```
/// use perchlight::domain::homecoming::journey::parse_offset;
/// assert_eq!(parse_offset("-3:30").map(|offset| offset.minutes()), Some(-210));
/// assert_eq!(parse_offset("15"), None);
/// ```
pub fn parse_offset(text: &str) -> Option<Offset> {
    let text = text.trim().trim_start_matches("UTC").trim_start();
    let (sign, digits) = match text.strip_prefix(['-', '\u{2212}']) {
        Some(digits) => (-1, digits),
        None => (1, text.strip_prefix('+').unwrap_or(text)),
    };
    let (hours, minutes) = digits.split_once(':').unwrap_or((digits, "00"));
    let is_plain = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
    if hours.is_empty() || hours.len() > 2 || minutes.len() != 2 {
        return None;
    }
    if !is_plain(hours) || !is_plain(minutes) {
        return None;
    }
    let (hours, minutes): (i32, i32) = (hours.parse().ok()?, minutes.parse().ok()?);
    let total = hours * 60 + minutes;
    (minutes < 60 && total <= FARTHEST_OFFSET_MIN).then(|| Offset::from_minutes(sign * total))
}

/// An offset from UTC as it is typed: `-4`, `+5:30`, `+0`.
pub fn offset_text(offset: Offset) -> String {
    let sign = if offset.minutes() < 0 { '-' } else { '+' };
    let size = offset.minutes().abs();
    let hours = size / 60;
    match size % 60 {
        0 => format!("{sign}{hours}"),
        minutes => format!("{sign}{hours}:{minutes:02}"),
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use crate::domain::homecoming::journey::*;
    use crate::domain::time::zone::OffsetChange;

    fn journey(breeder_min: i32, left: Moment, shift: ClockShift) -> Journey {
        Journey {
            left,
            expected: left.plus_minutes(360),
            breeder_offset: Offset::from_minutes(breeder_min),
            shift,
            last_fed: None,
        }
    }

    fn day() -> Day {
        Day::from_date(2026, 6, 11).unwrap()
    }

    fn at(day: Day, hour: u16) -> Moment {
        Zone::fixed(Offset::UTC).moment_of(day, WallTime::new(hour, 0).unwrap())
    }

    #[test]
    fn a_shift_is_done_in_steps_of_the_most_a_day_and_never_more() {
        // 150 minutes at 60 a day: 0, 60, 120, 150, 150
        let west: Vec<i32> = (-1..=4).map(|days| shift_on_day(150, days, 60)).collect();
        assert_eq!(west, [0, 0, 60, 120, 150, 150]);
        let east: Vec<i32> = (0..=3).map(|days| shift_on_day(-150, days, 60)).collect();
        assert_eq!(east, [0, -60, -120, -150]);
        assert_eq!(shift_on_day(0, 5, 60), 0);
        assert_eq!(shift_on_day(180, i32::MAX, 60), 180);
        assert_eq!(shift_on_day(180, 5, 0), 0);
    }

    #[test]
    fn a_journey_east_skips_the_times_that_no_clock_showed() {
        // Left at 18:00Z from UTC-7; 12:00 there is 19:00Z, 12:00 at UTC-4 was 16:00Z.
        let journey = journey(-420, at(day(), 18), ClockShift::AtOnce);
        let owner = Zone::fixed(Offset::from_minutes(-240));
        let noon = WallTime::new(12, 0).unwrap();
        let moments = feed_moments(day(), noon, &owner, &journey);
        assert_eq!(moments.in_order().count(), 0);
    }

    #[test]
    fn a_journey_west_shows_a_time_twice() {
        // Left at 18:00Z from UTC-4, where 12:00 was 16:00Z; 12:00 at UTC-7 is 19:00Z.
        let journey = journey(-240, at(day(), 18), ClockShift::AtOnce);
        let owner = Zone::fixed(Offset::from_minutes(-420));
        let noon = WallTime::new(12, 0).unwrap();
        let moments = feed_moments(day(), noon, &owner, &journey);
        let expected = [at(day(), 16), at(day(), 19)];
        assert_eq!(moments.in_order().collect::<Vec<_>>(), expected);
    }

    #[test]
    fn a_time_shown_twice_is_one_feed_unless_the_day_is_long_enough_for_one_more() {
        // Three feeds a day are 8 h apart on the average.
        let noon = at(day(), 12);
        let doubled = |minutes, feeds| is_doubled(noon, noon.plus_minutes(minutes), feeds);
        assert_eq!([doubled(479, 3), doubled(480, 3)], [true, false]);
        assert_eq!([doubled(719, 2), doubled(720, 2)], [true, false]);
        // One feed a day: 12 h at most.
        assert_eq!([doubled(719, 1), doubled(720, 1)], [true, false]);
    }

    #[test]
    fn a_journey_ends_after_it_begins_and_within_two_days() {
        let fault = |minutes| journey_fault(at(day(), 12), at(day(), 12).plus_minutes(minutes));
        assert_eq!(fault(-1), Some(JourneyFault::ArrivesBeforeLeaving));
        assert_eq!(fault(0), Some(JourneyFault::ArrivesBeforeLeaving));
        assert_eq!([fault(1), fault(2_880)], [None, None]);
        assert_eq!(fault(2_881), Some(JourneyFault::TooLong));
    }

    #[test]
    fn offsets_are_read_as_people_write_them() {
        let minutes = |text| parse_offset(text).map(Offset::minutes);
        for (text, expected) in [
            ("-4", -240),
            ("\u{2212}7", -420),
            ("+5:30", 330),
            (" UTC-03:30 ", -210),
            ("UTC", 0),
            ("0", 0),
            ("14", 840),
            ("-14:00", -840),
        ] {
            let expected = (text != "UTC").then_some(expected);
            assert_eq!(minutes(text), expected, "{text}");
        }
        for text in [
            "", "+", "14:01", "15", "-15", "4:60", "4:5", "4.5", "--4", "123", "x", "1:",
        ] {
            assert_eq!(minutes(text), None, "{text}");
        }
    }

    #[test]
    fn over_the_date_line_the_clock_is_moved_by_the_hour_it_differs() {
        // UTC+13 to UTC-10 is 23 h west by date and 1 h east by the clock. Day 0 at the breeder's
        // is the 11th; 07:00 of the owner's 11th is 17:00Z, which is 06:00 of the breeder's 12th.
        let journey = journey(780, at(day(), 3), ClockShift::Gradual);
        let owner = Zone::fixed(Offset::from_minutes(-600));
        let morning = WallTime::new(7, 0).unwrap();
        let moments = feed_moments(day(), morning, &owner, &journey);
        assert_eq!(moments.in_order().collect::<Vec<_>>(), [at(day(), 17)]);
    }

    #[test]
    fn once_the_shift_is_done_the_owners_clock_is_followed_through_its_changes() {
        let change = OffsetChange {
            from: at(day().plus(20), 7),
            offset: Offset::from_minutes(-240),
        };
        let owner = Zone::new(Offset::from_minutes(-300), vec![change]);
        let journey = journey(-240, at(day(), 18), ClockShift::Gradual);
        let time = WallTime::new(8, 0).unwrap();
        let moment = |days| feed_moments(day().plus(days), time, &owner, &journey).at_owner;
        assert_eq!(moment(1), Some(at(day().plus(1), 13)));
        assert_eq!(moment(21), Some(at(day().plus(21), 12)));
    }

    proptest! {
        #[test]
        fn every_offset_is_read_as_it_is_written(minutes in -840..=840_i32) {
            let offset = Offset::from_minutes(minutes);
            prop_assert_eq!(parse_offset(&offset_text(offset)), Some(offset));
        }

        #[test]
        fn a_gradual_shift_never_moves_a_feed_by_more_than_the_most_a_day(
            breeder in -720..=840_i32,
            owner in -720..=840_i32,
            left_hour in 0..24_u16,
            minutes in 0..1_440_i32,
        ) {
            let journey = journey(breeder, at(day(), left_hour), ClockShift::Gradual);
            let zone = Zone::fixed(Offset::from_minutes(owner));
            let time = WallTime::from_minutes(minutes);
            let moments: Vec<Moment> = (-3..20)
                .map(|days| feed_moments(day().plus(days), time, &zone, &journey))
                .flat_map(FeedMoments::in_order)
                .collect();
            prop_assert_eq!(moments.len(), 23);
            for pair in moments.windows(2) {
                let gap = pair[1].minutes_since(pair[0]);
                prop_assert!((1_380..=1_500).contains(&gap), "{gap}");
            }
            // Half a day at an hour a day is done on the twelfth day.
            prop_assert_eq!(moments[22], zone.moment_of(day().plus(19), time));
        }
    }
}

//! What food in the crop means: how much is felt, how long after the last feed, by day or after the
//! night.
//!
//! *Sources* a crop almost empty after 4 to 6 h, stasis when it is not after 6 h, some food normal by
//! day: Doneley 2018, pp. 592 and 594. Food left in the morning for the vet: a research institute's
//! page. Most of the last feed left at the next one as an emergency: pages of vets. The hours of each
//! step, and that a trace may wait: ours, from those.

use crate::domain::feeding::crop;
use crate::domain::journal::chick::{Chick, CropLook, Noted};
use crate::domain::journal::entries::CropState;
use crate::domain::time::moment::{Day, Moment, Offset};
use crate::domain::warnings::level::Level;

/// From so long after a feed on, minutes, food that is left is a matter for the breeder.
pub const LATE_MINUTES: i64 = 6 * 60;

/// From so long after a feed on, minutes, it is a matter for the vet.
pub const LONG_MINUTES: i64 = 8 * 60;

/// From so long after a feed on, minutes, a trace that stays is a matter for the vet.
pub const TRACE_MINUTES: i64 = 10 * 60;

/// The crop is looked at again after so long, minutes.
pub const AGAIN_MINUTES: i64 = 60;

/// A crop half full that is no smaller after so long, minutes, is a matter for the vet.
pub const NO_SMALLER_MINUTES: i64 = 120;

/// A day of care begins at this wall time, minutes of the day: a feed at midnight is the last one of
/// the evening before.
const CARE_DAY_FROM: i64 = 4 * 60;

/// What the latest look at the crop allows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CropAllows {
    /// A feed, when one is due.
    Feed,
    /// No feed before another look at this moment.
    Wait(Moment),
    /// Warmth, and no feed before another look at this moment.
    Warmth(Moment),
    /// No feed before somebody was asked or the crop was seen empty.
    Nothing,
}

/// Where the latest look stands on the ladder.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rung {
    /// When the crop was looked at.
    pub seen: Moment,
    /// Minutes since the feed before the look; `None` when none was noted.
    pub minutes: Option<i64>,
    /// The hours that were passed, minutes; nothing below the first of them.
    pub limit: i64,
    /// Whether a night lies between that feed and the look.
    pub is_morning: bool,
    /// What it allows.
    pub allows: CropAllows,
    /// How worried to be.
    pub level: Level,
}

/// The rung of the latest look; `None` when the crop was flat, or nobody looked for a day.
pub fn rung(now: Moment, chick: &Chick) -> Option<Rung> {
    let look = crop::latest_look(now, chick)?;
    let is_recent = now.minutes_since(look.at) <= crop::LOOK_SHOWN_MINUTES;
    if look.what.state == CropState::Flat || !is_recent {
        return None;
    }
    let again = look.at.plus_minutes(AGAIN_MINUTES);
    let feed = crop::food_seen(now, chick).map(|seen| seen.feed);
    let Some(feed) = feed else {
        let allows = if look.what.state.is_nearly_empty() {
            CropAllows::Feed
        } else {
            CropAllows::Wait(again)
        };
        return Some(Rung {
            seen: look.at,
            minutes: None,
            limit: 0,
            is_morning: false,
            allows,
            level: Level::Settled,
        });
    };
    let minutes = look.at.minutes_since(feed.at);
    let is_morning = care_day(feed.at, feed.offset) != care_day(look.at, look.offset);
    let limit = match (look.what.state, minutes) {
        (_, ..LATE_MINUTES) => 0,
        (_, ..LONG_MINUTES) => LATE_MINUTES,
        (CropState::Trace, TRACE_MINUTES..) => TRACE_MINUTES,
        (_, LONG_MINUTES..) => LONG_MINUTES,
    };
    let is_late = minutes >= LATE_MINUTES;
    let is_long = minutes >= LONG_MINUTES;
    let (allows, level) = match look.what.state {
        CropState::Flat => (CropAllows::Feed, Level::Settled),
        CropState::Trace if !is_morning => (CropAllows::Feed, Level::Settled),
        CropState::Trace if !is_long => (CropAllows::Wait(again), Level::Settled),
        CropState::Trace if minutes >= TRACE_MINUTES && is_same_before(chick, look, feed.at) => {
            (CropAllows::Nothing, Level::VetToday)
        }
        CropState::Trace => (CropAllows::Warmth(again), Level::Watch),
        CropState::Quarter if !is_late => (CropAllows::Wait(again), Level::Settled),
        CropState::Quarter if is_morning && is_long => (CropAllows::Nothing, Level::VetToday),
        CropState::HalfOrMore if !is_late => {
            let late = feed.at.plus_minutes(LATE_MINUTES);
            (CropAllows::Wait(late), Level::Settled)
        }
        CropState::HalfOrMore if is_long => (CropAllows::Nothing, Level::Emergency),
        CropState::HalfOrMore if now.minutes_since(look.at) >= NO_SMALLER_MINUTES => {
            (CropAllows::Nothing, Level::VetToday)
        }
        CropState::Quarter | CropState::HalfOrMore => (CropAllows::Nothing, Level::CallBreeder),
    };
    Some(Rung {
        seen: look.at,
        minutes: Some(minutes),
        limit,
        is_morning,
        allows,
        level,
    })
}

/// The day of care of a moment, where the wall clock has this offset.
pub fn care_day(at: Moment, offset: Offset) -> Day {
    at.plus_minutes(-CARE_DAY_FROM).lived(offset).day
}

/// Whether an earlier look after that feed had found food too.
fn is_same_before(chick: &Chick, look: &Noted<CropLook>, fed: Moment) -> bool {
    chick.crops.iter().any(|earlier| {
        earlier.at > fed
            && earlier.what.state != CropState::Flat
            && look.at.minutes_since(earlier.at) >= AGAIN_MINUTES
    })
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::warnings::crop_ladder::*;
    use crate::domain::warnings::rules::trial::{crop, macaw};

    /// What a look so many minutes after a feed at this hour of day 1 says at once.
    fn seen(hour: i32, minutes: i32, state: CropState) -> (CropAllows, Level) {
        let mut script = macaw();
        script.feed(1, hour, 0, Slot::Bedtime, 80);
        script.note(1, hour, minutes, crop(state));
        at(&script, script.at(1, hour, minutes)).unwrap()
    }

    fn at(script: &Scenario, now: Moment) -> Option<(CropAllows, Level)> {
        rung(now, &script.chick().unwrap()).map(|rung| (rung.allows, rung.level))
    }

    /// The table of the trade's dossier: rows what is felt, columns under 6 h, 6 to under 8 h, 8 h and
    /// more after the last feed; a feed at 23:00 is looked at in the morning, one at 06:00 by day.
    #[test]
    fn each_cell_of_the_ladder_holds_at_its_limits() {
        use CropAllows::{Feed, Nothing};
        use CropState::{HalfOrMore, Quarter, Trace};
        use Level::{CallBreeder, Emergency, Settled, VetToday, Watch};
        // after the night
        for (minutes, state, level) in [
            (359, Quarter, Settled),
            (360, Quarter, CallBreeder),
            (479, Quarter, CallBreeder),
            (480, Quarter, VetToday),
            (359, HalfOrMore, Settled),
            (360, HalfOrMore, CallBreeder),
            (479, HalfOrMore, CallBreeder),
            (480, HalfOrMore, Emergency),
            (479, Trace, Settled),
            (480, Trace, Watch),
        ] {
            let (allows, found) = seen(23, minutes, state);
            assert_eq!(found, level, "{state:?} after {minutes} min");
            assert_eq!(
                allows == Nothing,
                level >= CallBreeder,
                "{state:?} {minutes}"
            );
            assert_ne!(allows, Feed);
        }
        // by day
        for (minutes, state, level) in [
            (359, Quarter, Settled),
            (360, Quarter, CallBreeder),
            (600, Quarter, CallBreeder),
            (479, HalfOrMore, CallBreeder),
            (480, HalfOrMore, Emergency),
        ] {
            let (allows, found) = seen(6, minutes, state);
            assert_eq!(found, level, "{state:?} after {minutes} min by day");
            assert_ne!(allows, Feed);
        }
        for minutes in [200, 360, 600] {
            assert_eq!(seen(6, minutes, Trace), (Feed, Settled));
        }
    }

    #[test]
    fn a_flat_crop_is_on_no_rung_and_so_is_a_look_of_yesterday() {
        let mut script = macaw();
        script.feed(1, 21, 0, Slot::Bedtime, 80);
        script.note(2, 7, 0, crop(CropState::HalfOrMore));
        assert!(at(&script, script.at(3, 7, 0)).is_some());
        assert_eq!(at(&script, script.at(3, 7, 1)), None);
        script.note(2, 9, 0, crop(CropState::Flat));
        assert_eq!(at(&script, script.at(2, 9, 0)), None);
    }

    #[test]
    fn half_a_crop_that_is_no_smaller_in_two_hours_is_for_the_vet() {
        let mut script = macaw();
        script.feed(1, 23, 0, Slot::Bedtime, 80);
        script.note(2, 5, 30, crop(CropState::HalfOrMore));
        let level = |minute| at(&script, script.at(2, 5, minute)).unwrap().1;
        assert_eq!(level(30 + 119), Level::CallBreeder);
        assert_eq!(level(30 + 120), Level::VetToday);
    }

    #[test]
    fn a_trace_that_stays_is_for_the_vet_after_ten_hours() {
        let level = |first: i32, second: i32| {
            let mut script = macaw();
            script.feed(1, 21, 0, Slot::Bedtime, 80);
            script.note(1, 21, first, crop(CropState::Trace));
            script.note(1, 21, second, crop(CropState::Trace));
            at(&script, script.at(1, 21, second)).unwrap().1
        };
        assert_eq!(level(500, 599), Level::Watch);
        assert_eq!(level(500, 600), Level::VetToday);
        assert_eq!(level(541, 600), Level::Watch, "looked at twice in an hour");
    }

    #[test]
    fn a_midnight_feed_belongs_to_the_evening_before() {
        let is_morning = |hour| {
            let mut script = macaw();
            script.feed(1, hour, 0, Slot::Bedtime, 80);
            script.note(1, hour + 7, 0, crop(CropState::Quarter));
            let now = script.at(1, hour + 7, 0);
            rung(now, &script.chick().unwrap()).unwrap().is_morning
        };
        assert!(is_morning(0));
        assert!(is_morning(3));
        assert!(!is_morning(4));
    }

    #[test]
    fn food_without_a_noted_feed_waits_for_another_look() {
        let mut script = macaw();
        script.note(1, 7, 0, crop(CropState::HalfOrMore));
        let again = script.at(1, 8, 0);
        let now = script.at(1, 7, 0);
        assert_eq!(
            at(&script, now),
            Some((CropAllows::Wait(again), Level::Settled))
        );
    }
}

//! Which feed a note is of: what the plan and the hour say, beside the name it is noted under.
//!
//! Food noted under a later feed's name would take that feed's place, and the chick would miss it.
//! Nothing is corrected here: a person is asked.

use crate::domain::feeding::schedule::{FeedState, ScheduledFeed, feeds, place_of_note};
use crate::domain::journal::chick::Chick;
use crate::domain::plan::care_plan::Slot;
use crate::domain::time::moment::Moment;
use crate::domain::time::zone::Zone;

/// From this long before the next feed's time it is meant, though the one before has no note and is too
/// late to be given. Ours.
pub const NEXT_IS_NEAR_MINUTES: i64 = 120;

/// Up to this long after its time a feed without a note may be noted beside a later one. Ours: half a day.
const FILLED_IN_MINUTES: i64 = 12 * 60;

/// Why a feed is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Meaning {
    /// Its time has come, and it has no note.
    Due,
    /// It has no note, and it is too near the next one.
    Missed,
    /// It was noted last, and the note is nearer to it than to the next one: the rest of this feed, or
    /// another try at it.
    Again,
    /// It comes next.
    Next,
}

/// What the hour says about a note.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FeedMeant {
    /// The feed that something at that moment is most likely of.
    pub feed: ScheduledFeed,
    /// Why.
    pub meaning: Meaning,
}

/// The question which of two feeds a note is of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WhichFeed {
    /// The one that the hour speaks for.
    pub meant: FeedMeant,
    /// The other: the one named, else the next.
    pub other: Slot,
}

/// The feed that something at `at` is most likely of. `None` when the plan has no feed near.
pub fn feed_meant(at: Moment, chick: &Chick, zone: &Zone) -> Option<FeedMeant> {
    meant_of(at, &feeds_around(at, chick, zone)).map(|(meant, _)| meant)
}

/// What to ask before something at `at` is noted under the name `named`; `None` when the name will do.
pub fn which_feed(at: Moment, named: Slot, chick: &Chick, zone: &Zone) -> Option<WhichFeed> {
    let feeds = feeds_around(at, chick, zone);
    let (meant, next) = meant_of(at, &feeds)?;
    let is_meant = meant.feed.slot == named;
    let place = place_of_note(&feeds, named, at).and_then(|place| feeds.get(place));
    let is_filled_in = |place: &ScheduledFeed| {
        place.outcome().is_none()
            && place.planned < meant.feed.planned
            && at.minutes_since(place.planned) <= FILLED_IN_MINUTES
    };
    let other = match meant.meaning {
        Meaning::Missed if is_meant => next,
        Meaning::Due | Meaning::Missed => Some(named),
        Meaning::Again | Meaning::Next => {
            // A feed that was dropped stands nowhere, and food under its name takes no feed's place.
            let is_given = feeds.iter().any(|feed| feed.slot == named);
            (is_given && !place.is_some_and(is_filled_in)).then_some(named)
        }
    };
    let other = other.filter(|other| *other != meant.feed.slot)?;
    Some(WhichFeed { meant, other })
}

/// The feed that a guide begun at `now` is for: what is due, else what was missed or not taken, while
/// the next one is far away.
pub fn feed_to_give(now: Moment, next: &ScheduledFeed, chick: &Chick, zone: &Zone) -> Slot {
    let meant = feed_meant(now, chick, zone).filter(|_| !next.is_due(now));
    let tried_again = meant.filter(|meant| {
        !meant.feed.was_food() && matches!(meant.meaning, Meaning::Missed | Meaning::Again)
    });
    tried_again.map_or(next.slot, |meant| meant.feed.slot)
}

/// Whether something is noted already of the feed that `named` means at `at`.
pub fn is_noted(at: Moment, named: Slot, chick: &Chick, zone: &Zone) -> bool {
    let feeds = feeds_around(at, chick, zone);
    place_of_note(&feeds, named, at)
        .and_then(|place| feeds.get(place))
        .is_some_and(|feed| feed.outcome().is_some())
}

/// A note belongs to a feed of the day before, of its own day or of the day after.
fn feeds_around(at: Moment, chick: &Chick, zone: &Zone) -> Vec<ScheduledFeed> {
    let day = zone.lived(at).day;
    feeds(at, chick, zone, day.plus(-1), day.plus(1))
}

/// The feed that is meant, and which one comes next.
fn meant_of(at: Moment, feeds: &[ScheduledFeed]) -> Option<(FeedMeant, Option<Slot>)> {
    let noted_by_then =
        |feed: &ScheduledFeed| matches!(&feed.state, FeedState::Done(note) if note.at <= at);
    let noted = feeds.iter().rposition(noted_by_then);
    // What was passed by before a later feed was noted is past.
    let after = feeds.iter().skip(noted.unwrap_or_default());
    let mut due = None;
    let mut next = None;
    for feed in after.filter(|feed| feed.outcome().is_none()) {
        if feed.is_due(at) {
            due = Some(feed);
        } else {
            next = Some(feed);
            break;
        }
    }
    let is_near = |next: &&ScheduledFeed| next.due.plus_minutes(-NEXT_IS_NEAR_MINUTES) <= at;
    let is_missed = due.is_some_and(|due| due.state == FeedState::NotNoted);
    let noted = noted.and_then(|noted| feeds.get(noted));
    let is_again = |noted: &&ScheduledFeed| {
        let until_next = next.map(|next| next.due.minutes_since(at));
        until_next.is_none_or(|until_next| at.minutes_since(noted.planned) < until_next)
    };
    let (feed, meaning) = match (due, next.filter(is_near), noted.filter(is_again)) {
        (Some(due), None, _) if is_missed => (due, Meaning::Missed),
        (Some(due), _, _) if !is_missed => (due, Meaning::Due),
        (None, _, Some(noted)) => (noted, Meaning::Again),
        (_, _, _) => (next?, Meaning::Next),
    };
    let feed = feed.clone();
    Some((FeedMeant { feed, meaning }, next.map(|next| next.slot)))
}

#[cfg(test)]
mod tests {
    use crate::domain::feeding::feed_meant::Meaning::*;
    use crate::domain::feeding::feed_meant::*;
    use crate::domain::journal::entries::{Change, ChickId, WhyPassedOver};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::CarePlan;
    use crate::domain::plan::species::Species;
    use crate::domain::time::moment::{Day, Offset};

    /// Three feeds a day: morning 07:00, midday 14:00, bedtime 21:00. Day 0 was given in full but for
    /// its bedtime feed.
    fn scenario() -> Scenario {
        let plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let day = Day::from_date(2026, 11, 2).unwrap();
        let mut script = Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC);
        script.feed(0, 7, 0, Slot::Morning, 60);
        script.feed(0, 14, 0, Slot::Midday, 40);
        script
    }

    fn with_bedtime() -> Scenario {
        let mut script = scenario();
        script.feed(0, 21, 0, Slot::Bedtime, 60);
        script
    }

    fn told(meant: &FeedMeant, script: &Scenario) -> (Slot, i32, Meaning) {
        let first = script.zone().lived(script.at(0, 0, 0)).day;
        let day = meant.feed.day.number() - first.number();
        (meant.feed.slot, day, meant.meaning)
    }

    fn meant(script: &Scenario, hour: i32, minute: i32) -> (Slot, i32, Meaning) {
        let at = script.at(1, hour, minute);
        let meant = feed_meant(at, &script.chick().unwrap(), &script.zone());
        told(&meant.unwrap(), script)
    }

    fn asked(
        script: &Scenario,
        hour: i32,
        minute: i32,
        named: Slot,
    ) -> Option<((Slot, i32, Meaning), Slot)> {
        let at = script.at(1, hour, minute);
        which_feed(at, named, &script.chick().unwrap(), &script.zone())
            .map(|which| (told(&which.meant, script), which.other))
    }

    fn guided(script: &Scenario, hour: i32, minute: i32) -> Slot {
        let (now, chick) = (script.at(1, hour, minute), script.chick().unwrap());
        let next =
            crate::domain::feeding::schedule::next_feed(now, &chick, &script.zone()).unwrap();
        feed_to_give(now, &next, &chick, &script.zone())
    }

    #[test]
    fn the_feed_whose_time_has_come_is_meant() {
        let script = with_bedtime();
        assert_eq!(meant(&script, 6, 29), (Slot::Morning, 1, Next));
        assert_eq!(meant(&script, 6, 30), (Slot::Morning, 1, Due));
        // too late from 10:00, four hours before the midday feed; that one is near from 12:00
        assert_eq!(meant(&script, 9, 59), (Slot::Morning, 1, Due));
        assert_eq!(meant(&script, 10, 0), (Slot::Morning, 1, Missed));
        assert_eq!(meant(&script, 11, 59), (Slot::Morning, 1, Missed));
        assert_eq!(meant(&script, 12, 0), (Slot::Midday, 1, Next));
        assert_eq!(meant(&script, 13, 30), (Slot::Midday, 1, Due));
    }

    #[test]
    fn in_the_night_the_bedtime_feed_without_a_note_is_meant_until_the_morning_is_near() {
        // too late from 01:00, six hours before the morning feed; that one is near from 05:00
        let script = scenario();
        assert_eq!(meant(&script, 0, 59), (Slot::Bedtime, 0, Due));
        assert_eq!(meant(&script, 2, 30), (Slot::Bedtime, 0, Missed));
        assert_eq!(meant(&script, 5, 0), (Slot::Morning, 1, Next));
        let missed = (Slot::Bedtime, 0, Missed);
        let answers = Some((missed, Slot::Morning));
        assert_eq!(asked(&script, 2, 30, Slot::Bedtime), answers);
        assert_eq!(asked(&script, 2, 30, Slot::Morning), answers);
        let midday = Slot::Midday;
        assert_eq!(asked(&script, 2, 30, midday), Some((missed, midday)));
        assert_eq!(asked(&script, 6, 20, Slot::Morning), None);
        assert_eq!(asked(&script, 0, 59, Slot::Bedtime), None);
    }

    #[test]
    fn what_was_passed_by_before_a_later_note_is_not_meant() {
        let mut script = scenario();
        script.feed(1, 7, 0, Slot::Morning, 60);
        assert_eq!(meant(&script, 6, 59), (Slot::Bedtime, 0, Missed));
        assert_eq!(meant(&script, 7, 0), (Slot::Morning, 1, Again));
    }

    #[test]
    fn between_two_feeds_the_nearer_one_is_meant() {
        let mut script = with_bedtime();
        script.feed(1, 7, 0, Slot::Morning, 60);
        // half of the way from 07:00 to 14:00
        assert_eq!(meant(&script, 10, 29), (Slot::Morning, 1, Again));
        assert_eq!(meant(&script, 10, 30), (Slot::Midday, 1, Next));
    }

    #[test]
    fn a_name_that_the_hour_agrees_with_is_not_asked_about() {
        let mut script = with_bedtime();
        assert_eq!(asked(&script, 7, 5, Slot::Morning), None);
        script.feed(1, 7, 5, Slot::Morning, 60);
        assert_eq!(asked(&script, 11, 0, Slot::Midday), None);
        assert_eq!(asked(&script, 14, 0, Slot::Midday), None);
    }

    #[test]
    fn another_name_is_asked_about_while_a_feed_is_due() {
        let script = with_bedtime();
        let morning = (Slot::Morning, 1, Due);
        for named in [Slot::Midday, Slot::Bedtime] {
            assert_eq!(asked(&script, 7, 5, named), Some((morning, named)));
        }
        let midday = (Slot::Midday, 1, Due);
        let asked = asked(&script, 13, 30, Slot::Morning);
        assert_eq!(asked, Some((midday, Slot::Morning)));
    }

    #[test]
    fn a_later_feeds_name_is_asked_about_while_an_earlier_one_is_to_come() {
        let mut script = with_bedtime();
        script.feed(1, 7, 5, Slot::Morning, 60);
        let midday = (Slot::Midday, 1, Next);
        let asked = asked(&script, 11, 0, Slot::Bedtime);
        assert_eq!(asked, Some((midday, Slot::Bedtime)));
    }

    #[test]
    fn a_later_feeds_name_is_asked_about_on_the_first_day_too() {
        let plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let day = Day::from_date(2026, 11, 2).unwrap();
        let mut script = Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC);
        script.feed(0, 7, 0, Slot::Morning, 60);
        let (at, chick) = (script.at(0, 11, 0), script.chick().unwrap());
        let which = which_feed(at, Slot::Bedtime, &chick, &script.zone()).unwrap();
        assert_eq!(told(&which.meant, &script), (Slot::Midday, 0, Next));
        assert_eq!(which.other, Slot::Bedtime);
    }

    #[test]
    fn a_second_try_is_of_the_feed_that_was_refused_and_the_next_ones_name_is_asked_about() {
        let mut script = with_bedtime();
        let slot = Slot::Midday;
        script.feed(1, 7, 0, Slot::Morning, 60);
        script.note(1, 14, 0, Change::FeedRefused { slot });
        let again = (slot, 1, Again);
        assert_eq!(meant(&script, 15, 0), again);
        assert_eq!(asked(&script, 15, 0, slot), None);
        let bedtime = Slot::Bedtime;
        for (hour, minute) in [(14, 40), (15, 0)] {
            let asked = asked(&script, hour, minute, bedtime);
            assert_eq!(asked, Some((again, bedtime)));
        }
        // from half of the way to 21:00 the bedtime feed is meant
        assert_eq!(asked(&script, 17, 30, bedtime), None);
    }

    #[test]
    fn a_guide_before_its_time_is_for_what_was_not_taken_and_never_for_what_was() {
        let mut script = with_bedtime();
        let slot = Slot::Midday;
        script.feed(1, 7, 0, Slot::Morning, 60);
        assert_eq!(guided(&script, 8, 0), Slot::Midday);
        let why = WhyPassedOver::CropNotEmpty;
        script.note(1, 14, 0, Change::FeedPassedOver { slot, why });
        assert_eq!(guided(&script, 15, 0), Slot::Midday);
        assert_eq!(guided(&script, 20, 30), Slot::Bedtime);
        script.feed(1, 15, 0, Slot::Midday, 40);
        assert_eq!(guided(&script, 15, 30), Slot::Bedtime);
        assert_eq!(guided(&scenario(), 2, 30), Slot::Bedtime);
        assert_eq!(guided(&scenario(), 6, 0), Slot::Morning);
    }

    #[test]
    fn noting_afterwards_looks_at_that_hour() {
        let mut script = with_bedtime();
        script.feed(1, 14, 0, Slot::Midday, 40);
        script.feed(1, 21, 0, Slot::Bedtime, 60);
        assert_eq!(asked(&script, 7, 10, Slot::Morning), None);
        let morning = (Slot::Morning, 1, Due);
        let asked = asked(&script, 7, 10, Slot::Midday);
        assert_eq!(asked, Some((morning, Slot::Midday)));
    }

    #[test]
    fn a_feed_that_was_forgotten_may_be_noted_beside_a_later_one() {
        let mut script = with_bedtime();
        script.feed(1, 14, 0, Slot::Midday, 40);
        assert_eq!(asked(&script, 15, 0, Slot::Morning), None);
    }

    #[test]
    fn a_second_helping_is_told_as_noted_already_and_not_asked_about() {
        let mut script = with_bedtime();
        script.feed(1, 7, 0, Slot::Morning, 60);
        let noted = |hour, named| {
            let at = script.at(1, hour, 30);
            is_noted(at, named, &script.chick().unwrap(), &script.zone())
        };
        assert_eq!(asked(&script, 7, 30, Slot::Morning), None);
        assert!(noted(7, Slot::Morning));
        // the midday feed of 14:00 from six hours before it
        assert!(noted(7, Slot::Midday));
        assert!(!noted(8, Slot::Midday));
        // half past midnight belongs to the bedtime feed of the evening before
        assert!(noted(0, Slot::Bedtime));
        assert!(!noted(20, Slot::Bedtime));
    }

    #[test]
    fn a_dropped_feeds_name_is_not_asked_about_while_none_is_due() {
        let mut script = with_bedtime();
        script.feed(1, 7, 0, Slot::Morning, 60);
        let slot = Slot::Midday;
        let by_breeder = true;
        script.note(0, 15, 0, Change::FeedDropped { slot, by_breeder });
        assert_eq!(asked(&script, 14, 0, Slot::Midday), None);
        let bedtime = (Slot::Bedtime, 1, Due);
        let asked = asked(&script, 21, 0, Slot::Midday);
        assert_eq!(asked, Some((bedtime, Slot::Midday)));
    }
}

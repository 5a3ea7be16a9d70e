//! Which feed a note is of: what the plan and the hour say, beside the name it is noted under.
//!
//! Food noted under a later feed's name would take that feed's place, and the chick would miss it.
//! Nothing is corrected here: a person is asked.

use crate::domain::chick::Chick;
use crate::domain::moment::Moment;
use crate::domain::plan::Slot;
use crate::domain::schedule::{EARLY_MINUTES, FeedState, ScheduledFeed, feeds, place_of_note};
use crate::domain::zone::Zone;

/// What the hour says about a note.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FeedMeant {
    /// The feed that something at that moment is most likely of.
    pub feed: ScheduledFeed,
    /// Whether its time had come; else it is the next one.
    pub is_due: bool,
}

/// The feed that something at `at` is most likely of: the last one whose time had come and of which
/// nothing was noted, else the next to come. `None` when the plan has no feed near.
pub fn feed_meant(at: Moment, chick: &Chick, zone: &Zone) -> Option<FeedMeant> {
    meant_of(at, &feeds_around(at, chick, zone))
}

/// The feed to ask about before something at `at` is noted under the name `named`: one whose time had
/// come, or that comes before the one named. `None` when the name will do.
pub fn feed_to_ask_about(at: Moment, named: Slot, chick: &Chick, zone: &Zone) -> Option<FeedMeant> {
    let feeds = feeds_around(at, chick, zone);
    let meant = meant_of(at, &feeds).filter(|meant| meant.feed.slot != named)?;
    let place = place_of_note(&feeds, named, at).and_then(|place| feeds.get(place));
    let is_skipped = place.is_some_and(|place| place.planned > meant.feed.planned);
    (meant.is_due || is_skipped).then_some(meant)
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

fn meant_of(at: Moment, feeds: &[ScheduledFeed]) -> Option<FeedMeant> {
    let noted_by_then =
        |feed: &ScheduledFeed| matches!(&feed.state, FeedState::Done(note) if note.at <= at);
    // What was passed by before a later feed was noted is past.
    let left = feeds
        .iter()
        .rposition(noted_by_then)
        .map_or(0, |last| last + 1);
    let left = feeds.iter().skip(left);
    let mut left = left.filter(|feed| feed.outcome().is_none()).peekable();
    let mut meant = FeedMeant {
        feed: left.peek().copied()?.clone(),
        is_due: false,
    };
    for feed in left.take_while(|feed| feed.due.plus_minutes(-EARLY_MINUTES) <= at) {
        meant = FeedMeant {
            feed: feed.clone(),
            is_due: true,
        };
    }
    Some(meant)
}

#[cfg(test)]
mod tests {
    use crate::domain::feed_meant::*;
    use crate::domain::journal::{Change, ChickId};
    use crate::domain::moment::{Day, Offset};
    use crate::domain::plan::CarePlan;
    use crate::domain::scenario::Scenario;
    use crate::domain::species::Species;

    /// Three feeds a day: morning 07:00, midday 14:00, bedtime 21:00. Day 0 was given in full.
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

    fn told(meant: &FeedMeant, script: &Scenario) -> (Slot, i32, bool) {
        let first = script.zone().lived(script.at(0, 0, 0)).day;
        let day = meant.feed.day.number() - first.number();
        (meant.feed.slot, day, meant.is_due)
    }

    fn meant(script: &Scenario, day: i32, hour: i32, minute: i32) -> (Slot, i32, bool) {
        let at = script.at(day, hour, minute);
        let meant = feed_meant(at, &script.chick().unwrap(), &script.zone());
        told(&meant.unwrap(), script)
    }

    fn asked(script: &Scenario, hour: i32, minute: i32, named: Slot) -> Option<(Slot, i32, bool)> {
        let at = script.at(1, hour, minute);
        feed_to_ask_about(at, named, &script.chick().unwrap(), &script.zone())
            .map(|meant| told(&meant, script))
    }

    #[test]
    fn the_last_feed_whose_time_had_come_is_meant_else_the_next() {
        let script = with_bedtime();
        assert_eq!(meant(&script, 1, 6, 29), (Slot::Morning, 1, false));
        assert_eq!(meant(&script, 1, 6, 30), (Slot::Morning, 1, true));
        assert_eq!(meant(&script, 1, 13, 29), (Slot::Morning, 1, true));
        assert_eq!(meant(&script, 1, 13, 30), (Slot::Midday, 1, true));
    }

    #[test]
    fn in_the_night_the_bedtime_feed_without_a_note_is_meant() {
        assert_eq!(meant(&scenario(), 1, 2, 30), (Slot::Bedtime, 0, true));
        assert_eq!(meant(&with_bedtime(), 1, 2, 30), (Slot::Morning, 1, false));
    }

    #[test]
    fn what_was_passed_by_before_a_later_note_is_not_meant() {
        let mut script = scenario();
        script.feed(1, 7, 0, Slot::Morning, 60);
        assert_eq!(meant(&script, 1, 6, 59), (Slot::Bedtime, 0, true));
        assert_eq!(meant(&script, 1, 7, 0), (Slot::Midday, 1, false));
        assert_eq!(meant(&script, 1, 10, 0), (Slot::Midday, 1, false));
    }

    #[test]
    fn a_name_that_the_hour_agrees_with_is_not_asked_about() {
        let mut script = with_bedtime();
        assert_eq!(asked(&script, 7, 5, Slot::Morning), None);
        script.feed(1, 7, 5, Slot::Morning, 60);
        assert_eq!(asked(&script, 11, 0, Slot::Midday), None);
        assert_eq!(asked(&script, 17, 30, Slot::Midday), None);
    }

    #[test]
    fn a_later_feeds_name_is_asked_about_while_an_earlier_one_is_due() {
        let script = with_bedtime();
        let morning = Some((Slot::Morning, 1, true));
        assert_eq!(asked(&script, 7, 5, Slot::Midday), morning);
        assert_eq!(asked(&script, 7, 5, Slot::Bedtime), morning);
    }

    #[test]
    fn a_later_feeds_name_is_asked_about_while_an_earlier_one_is_to_come() {
        let mut script = with_bedtime();
        script.feed(1, 7, 5, Slot::Morning, 60);
        let midday = Some((Slot::Midday, 1, false));
        assert_eq!(asked(&script, 11, 0, Slot::Bedtime), midday);
    }

    #[test]
    fn an_earlier_feeds_name_is_asked_about_when_the_time_of_the_next_has_come() {
        let script = with_bedtime();
        let midday = Some((Slot::Midday, 1, true));
        assert_eq!(asked(&script, 13, 29, Slot::Morning), None);
        assert_eq!(asked(&script, 13, 30, Slot::Morning), midday);
    }

    #[test]
    fn at_night_the_morning_feeds_name_is_asked_about_while_bedtime_has_no_note() {
        let bedtime = Some((Slot::Bedtime, 0, true));
        assert_eq!(asked(&scenario(), 2, 30, Slot::Morning), bedtime);
        assert_eq!(asked(&scenario(), 2, 30, Slot::Bedtime), None);
    }

    #[test]
    fn noting_afterwards_looks_at_that_hour() {
        let mut script = with_bedtime();
        script.feed(1, 14, 0, Slot::Midday, 40);
        script.feed(1, 21, 0, Slot::Bedtime, 60);
        assert_eq!(asked(&script, 7, 10, Slot::Morning), None);
        let morning = Some((Slot::Morning, 1, true));
        assert_eq!(asked(&script, 7, 10, Slot::Midday), morning);
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
        assert!(!noted(7, Slot::Midday));
        // half past midnight is nearer to the bedtime feed of the evening before
        assert!(noted(0, Slot::Bedtime));
        assert!(!noted(20, Slot::Bedtime));
    }

    #[test]
    fn a_dropped_feeds_name_is_not_asked_about_while_none_is_due() {
        let mut script = with_bedtime();
        script.feed(1, 7, 0, Slot::Morning, 60);
        let slot = Slot::Midday;
        let by_breeder = true;
        script.note(1, 8, 0, Change::FeedDropped { slot, by_breeder });
        assert_eq!(asked(&script, 14, 0, Slot::Midday), None);
        let bedtime = Some((Slot::Bedtime, 1, true));
        assert_eq!(asked(&script, 21, 0, Slot::Midday), bedtime);
    }
}

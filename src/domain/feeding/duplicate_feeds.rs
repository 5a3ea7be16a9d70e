//! The same feed noted twice, as when two carers each note it on their own phone.

use crate::domain::feeding::schedule::{EARLY_MINUTES, LATE_MINUTES};
use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::EntryId;

/// Notes this near to each other can be of one feed: from as early as it may be given to as late as
/// it counts as on time.
const WINDOW_MINUTES: i64 = EARLY_MINUTES + LATE_MINUTES;

/// Pairs of notes, earlier first, of the same feed on the same lived day within its window. A person
/// decides which of the two to take back: nothing is guessed.
pub fn doubles(chick: &Chick) -> Vec<(EntryId, EntryId)> {
    let mut pairs = Vec::new();
    for (place, first) in chick.feeds.iter().enumerate() {
        let later = chick.feeds.iter().skip(place + 1);
        let within = later.take_while(|next| next.at.minutes_since(first.at) <= WINDOW_MINUTES);
        let double = within
            .filter(|next| next.what.slot == first.what.slot)
            .find(|next| next.lived().day == first.lived().day);
        pairs.extend(double.map(|double| (first.id, double.id)));
    }
    pairs
}

#[cfg(test)]
mod tests {
    use crate::domain::feeding::duplicate_feeds::*;
    use crate::domain::journal::entries::{Change, ChickId};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::{CarePlan, Slot};
    use crate::domain::plan::species::Species;
    use crate::domain::time::moment::{Day, Offset};

    fn scenario() -> Scenario {
        let plan = CarePlan::default_for(Species::GreyParrot);
        let day = Day::from_date(2026, 11, 2).unwrap();
        Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC)
    }

    fn pairs(script: &Scenario) -> Vec<(EntryId, EntryId)> {
        doubles(&script.chick().unwrap())
    }

    #[test]
    fn the_same_feed_noted_twice_within_its_window_is_a_pair() {
        let mut script = scenario();
        script.feed(1, 7, 0, Slot::Morning, 30);
        script.feed(1, 8, 30, Slot::Morning, 30);
        let feeds = script.chick().unwrap().feeds;
        assert_eq!(pairs(&script), [(feeds[0].id, feeds[1].id)]);
    }

    #[test]
    fn beyond_the_window_and_for_another_feed_there_is_no_pair() {
        let mut script = scenario();
        script.feed(1, 7, 0, Slot::Morning, 30);
        script.feed(1, 8, 31, Slot::Morning, 30);
        script.feed(1, 8, 40, Slot::Midday, 30);
        assert_eq!(pairs(&script), []);
    }

    #[test]
    fn either_side_of_midnight_is_two_feeds() {
        let mut script = scenario();
        script.feed(1, 23, 50, Slot::Bedtime, 30);
        script.feed(2, 0, 10, Slot::Bedtime, 30);
        assert_eq!(pairs(&script), []);
    }

    #[test]
    fn a_refusal_on_one_phone_and_a_feed_on_the_other_are_a_pair_too() {
        let mut script = scenario();
        let slot = Slot::Midday;
        script.note(1, 14, 0, Change::FeedRefused { slot });
        script.feed(1, 14, 20, slot, 30);
        assert_eq!(pairs(&script).len(), 1);
    }
}

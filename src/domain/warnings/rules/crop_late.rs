//! *Watches* for food left in the crop when the next feed is due.
//!
//! *Limit* a look at or after the due time that finds food: watch; 2 h after it, when the last look
//! found the crop no smaller: ring the breeder, and this feed is left out.
//!
//! *Why* food that stays ferments; food on top of it stretches the crop and stops it.
//!
//! *Sources* food still there when the next feed is due as the first alarm: pages of avian vets; a crop
//! that does not get smaller in 4 to 6 h stands still: common practice. 2 h: ours.
//!
//! *Wrong when* the last feed was unusually large: a bright chick may wait 2 h once. Nobody looked
//! again: the last look counts.

use crate::domain::feeding::crop::{self, FoodSeen};
use crate::domain::feeding::schedule::{FeedState, ScheduledFeed};
use crate::domain::journal::entries::CropState;
use crate::domain::quantity::evidence::Standing;
use crate::domain::time::moment::Moment;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, minutes_finding};

/// So long after the due time the breeder is rung, minutes.
const RING_MINUTES: i64 = 120;

/// The rule.
pub const RULE: Rule = Rule {
    name: "crop-late",
    limits: &[
        Limit::new(Level::Watch, Value::Seen),
        Limit::new(Level::RingBreeder, Value::Minutes(RING_MINUTES)),
    ],
    standing: Standing::Ours,
    source: "food left at the next feed: pages of avian vets; 2 h: ours",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let Some(seen) = crop::food_seen(facts.now, facts.chick) else {
        return Vec::new();
    };
    let Some(due) = due_after(facts.feeds, &seen) else {
        return Vec::new();
    };
    let seen_after = seen.look.at.minutes_since(due);
    if seen_after < 0 {
        return Vec::new();
    }
    // Food given on top ends the wait, not what was seen before it.
    let until = seen.fed_again.map_or(facts.now, |fed| fed.min(facts.now));
    let waited = until.minutes_since(due);
    let is_still = seen.look.what.state == CropState::NotMoving;
    let (level, minutes, standing) = if is_still && waited >= RING_MINUTES {
        (Level::RingBreeder, waited, Standing::Ours)
    } else {
        (Level::Watch, seen_after, Standing::Published)
    };
    let rule = RuleId::CropLate;
    vec![minutes_finding(
        rule,
        level,
        minutes,
        RING_MINUTES,
        standing,
    )]
}

/// When the first feed after the one that was seen in the crop was due.
fn due_after(feeds: &[ScheduledFeed], seen: &FoodSeen<'_>) -> Option<Moment> {
    let is_own = |feed: &ScheduledFeed| match &feed.state {
        FeedState::Done(note) => note.id == seen.feed.id,
        FeedState::Upcoming | FeedState::Due | FeedState::Late | FeedState::NotNoted => false,
    };
    feeds
        .iter()
        .filter(|feed| !is_own(feed))
        .map(|feed| feed.due)
        .find(|due| *due > seen.feed.at)
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, WhyPassedOver};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::warnings::rules::crop_late::*;
    use crate::domain::warnings::rules::trial::{crop, level_of, macaw};

    /// Fed on day 1 at 07:00, next feed due at 14:00, crop seen so many minutes after 14:00.
    fn seen(minutes: i32, state: CropState) -> Scenario {
        let mut script = macaw();
        script.feed(1, 7, 0, Slot::Morning, 80);
        script.note(1, 14, minutes, crop(state));
        script
    }

    fn level(script: &Scenario, minutes: i32) -> Option<Level> {
        level_of(&RULE, script, script.at(1, 14, minutes))
    }

    #[test]
    fn food_at_the_due_time_is_a_look_and_two_hours_later_a_call() {
        assert_eq!(level(&seen(-1, CropState::NotMoving), 0), None);
        let script = seen(0, CropState::NotMoving);
        assert_eq!(level(&script, 0), Some(Level::Watch));
        assert_eq!(level(&script, 119), Some(Level::Watch));
        assert_eq!(level(&script, 120), Some(Level::RingBreeder));
    }

    #[test]
    fn a_crop_that_gets_smaller_may_wait() {
        assert_eq!(
            level(&seen(125, CropState::Emptying), 130),
            Some(Level::Watch)
        );
        assert_eq!(
            level(&seen(120, CropState::NotMoving), 120),
            Some(Level::RingBreeder)
        );
        assert_eq!(level(&seen(120, CropState::Empty), 130), None);
    }

    #[test]
    fn leaving_the_feed_out_does_not_end_it() {
        let mut script = seen(0, CropState::NotMoving);
        let (slot, why) = (Slot::Midday, WhyPassedOver::CropNotEmpty);
        script.note(1, 14, 5, Change::FeedPassedOver { slot, why });
        assert_eq!(level(&script, 120), Some(Level::RingBreeder));
    }

    #[test]
    fn a_feed_on_top_of_it_ends_the_wait_but_not_the_finding() {
        let mut script = seen(0, CropState::NotMoving);
        script.feed(1, 14, 30, Slot::Midday, 80);
        assert_eq!(level(&script, 150), Some(Level::Watch));
    }

    #[test]
    fn a_feed_given_early_is_not_its_own_next_feed() {
        let mut script = macaw();
        script.feed(1, 20, 30, Slot::Bedtime, 80);
        script.note(1, 21, 30, crop(CropState::NotMoving));
        assert_eq!(level_of(&RULE, &script, script.at(1, 23, 30)), None);
    }

    #[test]
    fn a_feed_given_when_another_was_due_is_waited_for_until_the_one_after() {
        let mut script = macaw();
        script.feed(1, 14, 0, Slot::Morning, 80);
        script.note(1, 15, 0, crop(CropState::NotMoving));
        assert_eq!(level(&script, 60), None);
    }
}

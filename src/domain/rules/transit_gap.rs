//! *Watches* the hours since the chick left the breeder, until the first feed is noted.
//!
//! *Limit* 8 h: watch; 10 h: ring the breeder; 12 h: emergency.
//!
//! *Why* a feathered chick can wait as long as it waits over a night, and hardly longer; it is stressed
//! and may be cold.
//!
//! *Sources* plan for 8 h at most, alarm at 10 h, emergency at 12 h: common practice for feathered
//! chicks of 8 to 12 weeks; breeders give 6 to 12 h.
//!
//! *Wrong when* the chick was fed on the way and nobody noted it. Ends 24 h after the arrival, noted or
//! expected, where the missed feeds take over; silent on a phone that got the card a day or more after
//! the chick left.

use crate::domain::evidence::Standing;
use crate::domain::level::{Finding, Level, RuleId};
use crate::domain::rules::{Facts, Rule, minutes_finding};

/// A plan's journey without a feed takes this long at most, minutes.
const WATCH_MINUTES: i64 = 8 * 60;
/// From here on the breeder is rung, minutes.
const RING_MINUTES: i64 = 10 * 60;
/// From here on it is an emergency, minutes.
const EMERGENCY_MINUTES: i64 = 12 * 60;
/// Ends so long after the arrival, minutes. Ours.
const SHOWN_MINUTES: i64 = 24 * 60;

/// The rule.
pub const RULE: Rule = Rule {
    name: "transit-gap",
    limits: "no feed since the chick left on its journey: watch at 8 h, ring the breeder at 10 h, emergency at 12 h",
    standing: Standing::CommonPractice,
    source: "common practice for feathered chicks of 8 to 12 weeks",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let (now, chick) = (facts.now, facts.chick);
    let Some(journey) = chick.plan.journey else {
        return Vec::new();
    };
    let arrival = chick
        .arrived
        .as_ref()
        .map_or(journey.expected, |arrived| arrived.at);
    let is_fed = chick
        .last_given(now)
        .is_some_and(|feed| feed.at >= journey.left);
    let is_over = now.minutes_since(arrival.max(journey.left)) > SHOWN_MINUTES;
    let is_late_card = chick.added_at.minutes_since(journey.left) >= SHOWN_MINUTES;
    if is_fed || is_over || is_late_card {
        return Vec::new();
    }
    let minutes = now.minutes_since(journey.left);
    let (level, limit) = match minutes {
        EMERGENCY_MINUTES.. => (Level::Emergency, EMERGENCY_MINUTES),
        RING_MINUTES.. => (Level::RingBreeder, RING_MINUTES),
        WATCH_MINUTES.. => (Level::Watch, WATCH_MINUTES),
        _ => return Vec::new(),
    };
    let standing = Standing::CommonPractice;
    vec![minutes_finding(
        RuleId::TransitGap,
        level,
        minutes,
        limit,
        standing,
    )]
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::Change;
    use crate::domain::moment::Offset;
    use crate::domain::plan::{ClockShift, Journey, Slot};
    use crate::domain::rules::transit_gap::*;
    use crate::domain::rules::trial::{level_of, macaw, plan, with_plan};
    use crate::domain::scenario::Scenario;

    /// Left on day 0 at 06:00, expected at 12:00; the card came at 05:00.
    fn on_its_way() -> Scenario {
        left_at(6)
    }

    /// Left on day 0 at an hour, six hours on the way.
    fn left_at(hour: i32) -> Scenario {
        let mut plan = plan();
        let script = macaw();
        plan.journey = Some(Journey {
            left: script.at(0, hour, 0),
            expected: script.at(0, hour + 6, 0),
            breeder_offset: Offset::UTC,
            shift: ClockShift::AtOnce,
        });
        with_plan(plan)
    }

    fn level(script: &Scenario, hour: i32, minute: i32) -> Option<Level> {
        level_of(&RULE, script, script.at(0, hour, minute))
    }

    #[test]
    fn eight_ten_and_twelve_hours_without_a_feed() {
        let script = on_its_way();
        assert_eq!(level(&script, 13, 59), None);
        assert_eq!(level(&script, 14, 0), Some(Level::Watch));
        assert_eq!(level(&script, 15, 59), Some(Level::Watch));
        assert_eq!(level(&script, 16, 0), Some(Level::RingBreeder));
        assert_eq!(level(&script, 17, 59), Some(Level::RingBreeder));
        assert_eq!(level(&script, 18, 0), Some(Level::Emergency));
    }

    #[test]
    fn the_first_feed_ends_it_and_an_arrival_does_not() {
        let mut script = on_its_way();
        script.note(0, 15, 0, Change::Arrived);
        assert_eq!(level(&script, 16, 0), Some(Level::RingBreeder));
        script.feed(0, 16, 0, Slot::Midday, 40);
        assert_eq!(level(&script, 16, 30), None);
    }

    #[test]
    fn a_feed_before_leaving_does_not_end_it() {
        let mut script = on_its_way();
        script.feed(0, 5, 30, Slot::Morning, 80);
        assert_eq!(level(&script, 18, 0), Some(Level::Emergency));
    }

    #[test]
    fn a_card_that_came_a_day_late_tells_nothing_of_the_journey() {
        // the card comes on day 0 at 05:00
        assert_eq!(level(&left_at(-18), 6, 0), Some(Level::Emergency));
        assert_eq!(level(&left_at(-19), 6, 0), None);
    }

    #[test]
    fn a_day_after_the_arrival_other_rules_take_over() {
        let script = on_its_way();
        assert_eq!(level(&script, 36, 0), Some(Level::Emergency));
        assert_eq!(level(&script, 36, 1), None);
    }

    #[test]
    fn before_leaving_there_is_no_transit() {
        assert_eq!(level(&on_its_way(), 5, 30), None);
    }
}

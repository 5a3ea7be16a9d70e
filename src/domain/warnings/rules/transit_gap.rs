//! *Watches* the hours since the last feed before the chick left the breeder, until a feed is noted.
//!
//! *Limit* more than 8 h, or than the night of its plan: watch; 10 h: call the breeder; 12 h:
//! emergency. Below six weeks of age: 4, 5 and 6 h; at six to eight weeks in a large species: 6, 7.5 and 9 h.
//!
//! *Why* a feathered chick can wait as long as it waits over a night, and hardly longer; it is stressed
//! and may be cold.
//!
//! *Sources* plan for 8 h at most, alarm at 10 h, emergency at 12 h: common practice for feathered
//! chicks of 8 to 12 weeks; breeders give 6 to 12 h. Chicks in down or pins: 4 to 5 h, and 6 h while the pins open, are
//! common practice; their other steps are ours.
//!
//! *Wrong when* the chick was fed on the way and nobody noted it. Without a feed noted in the day before
//! leaving, the hours count from the leaving. Ends 24 h after the arrival, noted or
//! expected, where the missed feeds take over; silent on a phone that got the card a day or more after
//! the chick left.

use crate::domain::homecoming::transit::{
    Cover, DOWN_OR_PINS, FEATHERED, LARGE_FEATHERED_FROM_DAYS, OPENING_PINS, PINS_OPEN_FROM_DAYS,
    TransitLevels, TransitVerdict, fed_before,
};
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, days, minutes_finding};

/// The finding ends this long after the arrival, minutes. Ours.
const SHOWN_MINUTES: i64 = 24 * 60;

/// The rule.
pub const RULE: Rule = Rule {
    name: "transit-gap",
    limits: &[
        Limit::new(Level::Watch, Value::Minutes(FEATHERED.value.plan)),
        Limit::new(Level::CallBreeder, Value::Minutes(FEATHERED.value.alarm)),
        Limit::new(Level::Emergency, Value::Minutes(FEATHERED.value.emergency)),
        Limit::new(Level::Watch, days(PINS_OPEN_FROM_DAYS)),
        Limit::new(Level::Watch, Value::Minutes(DOWN_OR_PINS.value.plan)),
        Limit::new(Level::CallBreeder, Value::Minutes(DOWN_OR_PINS.value.alarm)),
        Limit::new(
            Level::Emergency,
            Value::Minutes(DOWN_OR_PINS.value.emergency),
        ),
        Limit::new(Level::Watch, days(PINS_OPEN_FROM_DAYS)),
        Limit::new(Level::Watch, days(LARGE_FEATHERED_FROM_DAYS)),
        Limit::new(Level::Watch, Value::Minutes(OPENING_PINS.value.plan)),
        Limit::new(Level::CallBreeder, Value::Minutes(OPENING_PINS.value.alarm)),
        Limit::new(
            Level::Emergency,
            Value::Minutes(OPENING_PINS.value.emergency),
        ),
    ],
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
    if now < journey.left || is_fed || is_over || is_late_card {
        return Vec::new();
    }
    let minutes = now.minutes_since(fed_before(now, chick, &journey));
    let levels = TransitLevels::of_plan(&chick.plan, &journey, facts.zone);
    let (level, limit) = match levels.verdict(minutes) {
        TransitVerdict::Emergency => (Level::Emergency, levels.emergency),
        TransitVerdict::Alarm => (Level::CallBreeder, levels.alarm),
        TransitVerdict::LongerThanPlanned => (Level::Watch, levels.plan),
        TransitVerdict::AsPlanned => return Vec::new(),
    };
    let standing = match levels.cover {
        Cover::Feathered => Standing::CommonPractice,
        Cover::DownOrPins | Cover::OpeningPins => Standing::Ours,
    };
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
    use crate::domain::journal::entries::Change;
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::{ClockShift, Journey, Slot};
    use crate::domain::time::moment::Offset;
    use crate::domain::warnings::rules::transit_gap::*;
    use crate::domain::warnings::rules::trial::{level_of, macaw, plan, with_plan};

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
            last_fed: None,
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
        assert_eq!(level(&script, 14, 0), None);
        assert_eq!(level(&script, 14, 1), Some(Level::Watch));
        assert_eq!(level(&script, 15, 59), Some(Level::Watch));
        assert_eq!(level(&script, 16, 0), Some(Level::CallBreeder));
        assert_eq!(level(&script, 17, 59), Some(Level::CallBreeder));
        assert_eq!(level(&script, 18, 0), Some(Level::Emergency));
    }

    #[test]
    fn the_first_feed_ends_it_and_an_arrival_does_not() {
        let mut script = on_its_way();
        script.note(0, 15, 0, Change::Arrived);
        assert_eq!(level(&script, 16, 0), Some(Level::CallBreeder));
        script.feed(0, 16, 0, Slot::Midday, 40);
        assert_eq!(level(&script, 16, 30), None);
    }

    #[test]
    fn a_feed_before_leaving_does_not_end_it_but_is_what_it_counts_from() {
        let mut script = on_its_way();
        script.feed(0, 5, 30, Slot::Morning, 80);
        assert_eq!(level(&script, 13, 30), None);
        assert_eq!(level(&script, 13, 31), Some(Level::Watch));
        assert_eq!(level(&script, 17, 29), Some(Level::CallBreeder));
        assert_eq!(level(&script, 17, 30), Some(Level::Emergency));
    }

    #[test]
    fn a_chick_in_pins_is_judged_at_four_five_and_six_hours() {
        let mut plan = left_at(6).chick().unwrap().plan;
        let script = macaw();
        let day = script.zone().lived(script.at(0, 6, 0)).day;
        plan.hatched = Some(day.plus(-41));
        let script = with_plan(plan);
        assert_eq!(level(&script, 10, 0), None);
        assert_eq!(level(&script, 10, 1), Some(Level::Watch));
        assert_eq!(level(&script, 11, 0), Some(Level::CallBreeder));
        assert_eq!(level(&script, 12, 0), Some(Level::Emergency));
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

    #[test]
    fn the_hours_before_leaving_are_no_transit_however_long_the_last_feed_is_ago() {
        // leaves on day 1 at 06:00, fed last on day 0 at 17:00
        let mut script = left_at(30);
        script.feed(0, 17, 0, Slot::Bedtime, 80);
        assert_eq!(level(&script, 29, 59), None);
        assert_eq!(level(&script, 30, 0), Some(Level::Emergency));
    }
}

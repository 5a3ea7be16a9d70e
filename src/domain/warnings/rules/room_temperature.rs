//! *Watches* the last room temperature noted in 24 h.
//!
//! *Limit* outside the plan's range (24 to 27 °C unless the breeder says otherwise; once it is being weaned from 22 °C): watch; also below
//! 21 °C or above 30 °C: call the breeder. Below 21 °C or above 30 °C within the plan's range: watch.
//! In down or pins, where the breeder has named no range: 28 to 31 °C, and a call below 26 °C and above 32 °C.
//!
//! *Why* in a cool room the crop slows and the chick burns its food for warmth; in a hot one it pants
//! and dries out.
//!
//! *Sources* 75 to 80 °F (24 to 27 °C) for feathered chicks: Watchbird, Parrot pediatrics; 22 to 24 °C with full wing feathers, 28 to 31 °C in pins: a husbandry manual of 1999; 80 to 90 °F (26.7 to 32.2 °C) from
//! day 10 to the fourth week: Watchbird. That weaning tells it, warn below
//! 21 °C and above 30 °C, and the call: ours.
//!
//! *Wrong when* the thermometer hangs away from the chick's own warm spot.

use crate::domain::feeding::feeding_streak;
use crate::domain::homecoming::transit::Cover;
use crate::domain::plan::care_plan::{CarePlan, PlanField};
use crate::domain::quantity::evidence::Standing;
use crate::domain::quantity::units::Celsius;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule};

/// Below this no unweaned chick is kept.
const LOWEST: Celsius = Celsius::tenths_held(210);
/// Low end in a chick that is being weaned: feathered, it keeps itself warm. Common practice.
const FEATHERED_FROM: Celsius = Celsius::tenths_held(220);
/// Above this no chick is kept.
const HIGHEST: Celsius = Celsius::tenths_held(300);
/// The range in down or pins.
const IN_PINS: (Celsius, Celsius) = (Celsius::whole(28), Celsius::whole(31));
/// Below the first and above the second no chick in down or pins is kept.
const IN_PINS_EXTREMES: (Celsius, Celsius) = (Celsius::whole(26), Celsius::whole(32));
/// A reading counts for this long, minutes. Ours.
const SHOWN_MINUTES: i64 = 24 * 60;

/// The rule.
pub const RULE: Rule = Rule {
    name: "room-temperature",
    limits: &[
        Limit::new(Level::Watch, Value::Celsius(CarePlan::ROOM_FROM)),
        Limit::new(Level::Watch, Value::Celsius(CarePlan::ROOM_TO)),
        Limit::new(Level::Watch, Value::Celsius(FEATHERED_FROM)),
        Limit::new(Level::CallBreeder, Value::Celsius(LOWEST)),
        Limit::new(Level::CallBreeder, Value::Celsius(HIGHEST)),
        Limit::new(Level::Watch, Value::Celsius(IN_PINS.0)),
        Limit::new(Level::Watch, Value::Celsius(IN_PINS.1)),
        Limit::new(Level::CallBreeder, Value::Celsius(IN_PINS_EXTREMES.0)),
        Limit::new(Level::CallBreeder, Value::Celsius(IN_PINS_EXTREMES.1)),
    ],
    standing: Standing::Ours,
    source: "24 to 27 °C: Watchbird, Parrot pediatrics; 28 to 31 °C in pins: a husbandry manual, 1999; 21, 26, 30 and 32 °C and the call: our own",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let (now, plan) = (facts.now, &facts.chick.plan);
    let latest = facts.chick.rooms.iter().rev().find(|seen| seen.at <= now);
    let Some(seen) = latest.filter(|seen| now.minutes_since(seen.at) <= SHOWN_MINUTES) else {
        return Vec::new();
    };
    let room = seen.what;
    let today = facts.zone.lived(now).day;
    let is_in_pins = Cover::on(today, plan) == Cover::DownOrPins;
    let ((from, to), (lowest, highest)) =
        if is_in_pins && plan.unconfirmed.contains(&PlanField::Room) {
            (IN_PINS, IN_PINS_EXTREMES)
        } else if feeding_streak::is_weaning(now, today, facts.chick) {
            let from = plan.room_from.min(FEATHERED_FROM);
            ((from, plan.room_to), (LOWEST, HIGHEST))
        } else {
            ((plan.room_from, plan.room_to), (LOWEST, HIGHEST))
        };
    let of_plan = passed(room, from, to);
    let (level, limit) = match (of_plan, passed(room, lowest, highest)) {
        (Some(_), Some(limit)) => (Level::CallBreeder, limit),
        (Some(limit), None) | (None, Some(limit)) => (Level::Watch, limit),
        (None, None) => return Vec::new(),
    };
    vec![Finding {
        rule: RuleId::RoomTemperature,
        level,
        value: Value::Celsius(room),
        limit: Value::Celsius(limit),
        standing: Standing::Ours,
    }]
}

/// The end of a range beyond which the room is.
fn passed(room: Celsius, from: Celsius, to: Celsius) -> Option<Celsius> {
    if room < from {
        Some(from)
    } else if room > to {
        Some(to)
    } else {
        None
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::Change;
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::warnings::rules::room_temperature::*;
    use crate::domain::warnings::rules::trial::{aged, found, level_of, plan, with_plan};

    /// A room, in tenths of a degree, seen on day 1 at 08:00, with the plan's range starting at `from`.
    fn seen(tenths: i32, from: i32) -> Scenario {
        let mut plan = plan();
        plan.room_from = Celsius::whole(from);
        let mut script = with_plan(plan);
        let room = Celsius::tenths_held(tenths);
        script.note(1, 8, 0, Change::RoomSeen { room });
        script
    }

    fn level_at(tenths: i32, from: i32) -> Option<Level> {
        let script = seen(tenths, from);
        level_of(&RULE, &script, script.at(1, 9, 0))
    }

    #[test]
    fn the_plans_range_is_watched_and_its_extremes_are_a_call() {
        assert_eq!(level_at(240, 24), None);
        assert_eq!(level_at(270, 24), None);
        assert_eq!(level_at(239, 24), Some(Level::Watch));
        assert_eq!(level_at(271, 24), Some(Level::Watch));
        assert_eq!(level_at(210, 24), Some(Level::Watch));
        assert_eq!(level_at(209, 24), Some(Level::CallBreeder));
        assert_eq!(level_at(300, 24), Some(Level::Watch));
        assert_eq!(level_at(301, 24), Some(Level::CallBreeder));
    }

    #[test]
    fn a_chick_of_weaning_age_may_be_kept_at_22_degrees() {
        // green-winged macaw, weaned from 16 weeks on
        let level = |weeks, tenths| {
            let mut script = aged(weeks);
            let room = Celsius::tenths_held(tenths);
            script.note(1, 8, 0, Change::RoomSeen { room });
            level_of(&RULE, &script, script.at(1, 9, 0))
        };
        assert_eq!(level(15, 239), Some(Level::Watch));
        assert_eq!(level(16, 239), None);
        assert_eq!(level(16, 220), None);
        assert_eq!(level(16, 219), Some(Level::Watch));
    }

    #[test]
    fn a_chick_in_pins_is_kept_warmer_unless_the_breeder_says_otherwise() {
        let level = |weeks, tenths| {
            let mut script = aged(weeks);
            let room = Celsius::tenths_held(tenths);
            script.note(1, 8, 0, Change::RoomSeen { room });
            level_of(&RULE, &script, script.at(1, 9, 0))
        };
        // 28 to 31 °C up to the sixth week, 24 to 27 °C from then on
        assert_eq!(level(5, 310), None);
        assert_eq!(level(5, 280), None);
        assert_eq!(level(5, 311), Some(Level::Watch));
        assert_eq!(level(5, 279), Some(Level::Watch));
        assert_eq!(level(5, 260), Some(Level::Watch));
        assert_eq!(level(5, 259), Some(Level::CallBreeder));
        assert_eq!(level(5, 320), Some(Level::Watch));
        assert_eq!(level(5, 321), Some(Level::CallBreeder));
        assert_eq!(level(6, 270), None);
        assert_eq!(level(6, 280), Some(Level::Watch));
    }

    #[test]
    fn a_breeder_who_keeps_it_cooler_is_heard_but_told() {
        assert_eq!(level_at(205, 20), Some(Level::Watch));
        assert_eq!(level_at(199, 20), Some(Level::CallBreeder));
        assert_eq!(level_at(220, 20), None);
    }

    #[test]
    fn only_the_last_reading_of_a_day_counts() {
        let mut script = with_plan(plan());
        let room = |degrees| Change::RoomSeen {
            room: Celsius::whole(degrees),
        };
        script.note(1, 8, 0, room(18));
        assert!(level_of(&RULE, &script, script.at(2, 8, 0)).is_some());
        assert_eq!(level_of(&RULE, &script, script.at(2, 8, 1)), None);
        script.note(1, 10, 0, room(25));
        assert_eq!(level_of(&RULE, &script, script.at(1, 11, 0)), None);
    }

    #[test]
    fn the_limit_told_is_the_one_that_was_passed() {
        let limit_at = |tenths| {
            let script = seen(tenths, 24);
            found(&RULE, &script, script.at(1, 9, 0))[0].limit
        };
        assert_eq!(limit_at(239), Value::Celsius(Celsius::whole(24)));
        assert_eq!(limit_at(271), Value::Celsius(Celsius::whole(27)));
        assert_eq!(limit_at(209), Value::Celsius(Celsius::whole(21)));
        assert_eq!(limit_at(301), Value::Celsius(Celsius::whole(30)));
    }
}

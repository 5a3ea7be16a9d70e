//! *Watches* the last room temperature noted in 24 h.
//!
//! *Limit* outside the plan's range (24 to 27 °C unless the breeder says otherwise): watch; also below
//! 21 °C or above 30 °C: ring the breeder. Below 21 °C or above 30 °C within the plan's range: watch.
//!
//! *Why* in a cool room the crop slows and the chick burns its food for warmth; in a hot one it pants
//! and dries out.
//!
//! *Sources* 75 to 80 °F (24 to 27 °C) for feathered chicks: Watchbird, Parrot pediatrics. Warn below
//! 21 °C and above 30 °C, and the call: ours.
//!
//! *Wrong when* the thermometer hangs away from the chick's own warm spot.

use crate::domain::evidence::Standing;
use crate::domain::level::{Finding, Level, RuleId, Value};
use crate::domain::rules::{Facts, Rule};
use crate::domain::units::Celsius;

/// Below this no unweaned chick is kept.
const LOWEST: Celsius = Celsius::tenths_held(210);
/// Above this no chick is kept.
const HIGHEST: Celsius = Celsius::tenths_held(300);
/// A reading counts for this long, minutes. Ours.
const SHOWN_MINUTES: i64 = 24 * 60;

/// The rule.
pub const RULE: Rule = Rule {
    name: "room-temperature",
    limits: "room outside the plan's range (24 to 27 °C): watch; also below 21 °C or above 30 °C: ring the breeder",
    standing: Standing::Ours,
    source: "24 to 27 °C: Watchbird, Parrot pediatrics; 21 °C, 30 °C and the call: ours",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let (now, plan) = (facts.now, &facts.chick.plan);
    let latest = facts.chick.rooms.iter().rev().find(|seen| seen.at <= now);
    let Some(seen) = latest.filter(|seen| now.minutes_since(seen.at) <= SHOWN_MINUTES) else {
        return Vec::new();
    };
    let room = seen.what;
    let is_outside_plan = room < plan.room_from || room > plan.room_to;
    let extreme = if room < LOWEST {
        Some(LOWEST)
    } else if room > HIGHEST {
        Some(HIGHEST)
    } else {
        None
    };
    let plan_limit = if room < plan.room_from {
        plan.room_from
    } else {
        plan.room_to
    };
    let (level, limit) = match (is_outside_plan, extreme) {
        (true, Some(limit)) => (Level::RingBreeder, limit),
        (true, None) => (Level::Watch, plan_limit),
        (false, Some(limit)) => (Level::Watch, limit),
        (false, None) => return Vec::new(),
    };
    vec![Finding {
        rule: RuleId::RoomTemperature,
        level,
        value: Value::Celsius(room),
        limit: Value::Celsius(limit),
        standing: Standing::Ours,
    }]
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::Change;
    use crate::domain::rules::room_temperature::*;
    use crate::domain::rules::trial::{level_of, plan, with_plan};

    /// The level of a room, in tenths of a degree, with the plan's range starting at `from`.
    fn level_at(tenths: i32, from: i32) -> Option<Level> {
        let mut plan = plan();
        plan.room_from = Celsius::whole(from);
        let mut script = with_plan(plan);
        let room = Celsius::tenths_held(tenths);
        script.note(1, 8, 0, Change::RoomSeen { room });
        level_of(&RULE, &script, script.at(1, 9, 0))
    }

    #[test]
    fn the_plans_range_is_watched_and_its_extremes_are_a_call() {
        assert_eq!(level_at(240, 24), None);
        assert_eq!(level_at(270, 24), None);
        assert_eq!(level_at(239, 24), Some(Level::Watch));
        assert_eq!(level_at(271, 24), Some(Level::Watch));
        assert_eq!(level_at(210, 24), Some(Level::Watch));
        assert_eq!(level_at(209, 24), Some(Level::RingBreeder));
        assert_eq!(level_at(300, 24), Some(Level::Watch));
        assert_eq!(level_at(301, 24), Some(Level::RingBreeder));
    }

    #[test]
    fn a_breeder_who_keeps_it_cooler_is_heard_but_told() {
        assert_eq!(level_at(205, 20), Some(Level::Watch));
        assert_eq!(level_at(199, 20), Some(Level::RingBreeder));
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
}

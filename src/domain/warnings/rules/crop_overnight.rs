//! *Watches* for food left in the crop after the night.
//!
//! *Limit* 8 h after a feed given between 17:00 and 03:00; 12 h after any other feed: vet today.
//!
//! *Why* the crop must be empty once in 24 h. Food that is still there in the morning ferments; the
//! crop stands still or is infected.
//!
//! *Sources* formula left in the morning, 6 to 8 h after a last feed no later than midnight: pages of
//! avian vets; not empty in 12 h on two feeds a day: common practice. The evening's hours: ours.
//!
//! *Wrong when* the last feed was very large (8 to 12 h are seen then).

use crate::domain::feeding::crop::{self, FoodSeen};
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, minutes_finding};

/// Longest time for an evening feed, minutes.
const NIGHT_MINUTES: i64 = 8 * 60;
/// Longest time for any feed, minutes.
const ANY_MINUTES: i64 = 12 * 60;
/// An evening feed is given from this wall time on, minutes of the day.
const EVENING_FROM: i32 = 17 * 60;
/// An evening feed is given before this wall time, minutes of the day.
const EVENING_TO: i32 = 3 * 60;

/// The rule.
pub const RULE: Rule = Rule {
    name: "crop-overnight",
    limits: &[
        Limit::new(Level::VetToday, Value::Minutes(NIGHT_MINUTES)),
        Limit::new(Level::VetToday, Value::Minutes(ANY_MINUTES)),
    ],
    standing: Standing::CommonPractice,
    source: "formula left 6 to 8 h later in the morning: pages of avian vets; 12 h: common practice; what counts as evening: ours",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let seen = crop::food_seen(facts.now, facts.chick);
    seen.and_then(|seen| overdue(&seen)).into_iter().collect()
}

fn overdue(seen: &FoodSeen<'_>) -> Option<Finding> {
    let fed = seen.feed.lived().time.minutes();
    let is_evening = !(EVENING_TO..EVENING_FROM).contains(&fed);
    let (limit, standing) = if is_evening {
        (NIGHT_MINUTES, Standing::Published)
    } else {
        (ANY_MINUTES, Standing::CommonPractice)
    };
    let minutes = seen.minutes();
    let (rule, level) = (RuleId::CropOvernight, Level::VetToday);
    (minutes >= limit).then(|| minutes_finding(rule, level, minutes, limit, standing))
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::CropState;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::warnings::rules::crop_overnight::*;
    use crate::domain::warnings::rules::trial::{crop, level_of, macaw};

    /// Fed on day 1 at an hour, crop seen with food so many minutes later.
    fn level(hour: i32, slot: Slot, minutes: i32, state: CropState) -> Option<Level> {
        let mut script = macaw();
        script.feed(1, hour, 0, slot, 80);
        script.note(1, hour, minutes, crop(state));
        level_of(&RULE, &script, script.at(1, hour, minutes))
    }

    #[test]
    fn an_evening_feed_is_gone_after_eight_hours() {
        let bedtime = |minutes, state| level(21, Slot::Bedtime, minutes, state);
        assert_eq!(bedtime(479, CropState::NotMoving), None);
        assert_eq!(bedtime(480, CropState::Emptying), Some(Level::VetToday));
        assert_eq!(bedtime(600, CropState::NotMoving), Some(Level::VetToday));
        assert_eq!(bedtime(600, CropState::Empty), None);
    }

    #[test]
    fn a_day_feed_is_gone_after_twelve_hours() {
        let morning = |minutes| level(7, Slot::Morning, minutes, CropState::Emptying);
        assert_eq!(morning(719), None);
        assert_eq!(morning(720), Some(Level::VetToday));
    }

    #[test]
    fn a_feed_after_midnight_is_an_evening_feed() {
        let after_midnight = |hour| {
            let mut script = macaw();
            script.feed(1, hour, 0, Slot::Bedtime, 80);
            script.note(1, hour + 8, 0, crop(CropState::Emptying));
            level_of(&RULE, &script, script.at(1, hour + 8, 0))
        };
        assert_eq!(after_midnight(2), Some(Level::VetToday));
        assert_eq!(after_midnight(3), None);
        assert_eq!(after_midnight(17), Some(Level::VetToday));
        assert_eq!(after_midnight(16), None);
    }

    #[test]
    fn feeding_on_top_of_it_does_not_hide_it() {
        let mut script = macaw();
        script.feed(1, 21, 0, Slot::Bedtime, 80);
        script.note(2, 6, 45, crop(CropState::NotMoving));
        script.feed(2, 7, 0, Slot::Morning, 80);
        let now = script.at(2, 8, 0);
        assert_eq!(level_of(&RULE, &script, now), Some(Level::VetToday));
    }
}

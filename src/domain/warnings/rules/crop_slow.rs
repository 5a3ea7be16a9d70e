//! *Watches* how long food was seen in the crop, against this chick's own usual time.
//!
//! *Limit* 1.25 times its own median emptying time: watch. Silent until three feeds were timed.
//!
//! *Why* a crop that slows down is an early sign of illness, of cool or thick formula or a cool room.
//!
//! *Sources* crop stasis as the commonest trouble of hand-fed chicks: Rivera 2008; emptying in about
//! 4 h: avian pediatric nutrition page of a US animal clinic. 1.25: ours, from the 1.5 that common
//! practice calls slow.
//!
//! *Wrong when* the last feed was larger than usual, or was the last before the night.

use crate::domain::feeding::crop;
use crate::domain::quantity::count::as_f64;
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule};

/// Slow from this multiple of the usual time on.
const SLOW_TIMES: f64 = 1.25;

/// The rule.
pub const RULE: Rule = Rule {
    name: "crop-slow",
    limits: &[Limit::new(Level::Watch, Value::Times(SLOW_TIMES))],
    standing: Standing::Ours,
    source: "crop stasis: Rivera 2008; 1.25: our own, below the 1.5 of common practice",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let seen = crop::food_seen(facts.now, facts.chick);
    let food = seen.filter(|seen| !seen.look.what.state.is_nearly_empty());
    let times = food.and_then(|seen| {
        let usual = crop::usual_minutes(seen.feed.at, facts.chick)?;
        let usual = usize::try_from(usual).ok().filter(|usual| *usual > 0)?;
        let minutes = usize::try_from(seen.minutes()).ok()?;
        Some(as_f64(minutes) / as_f64(usual))
    });
    times
        .filter(|times| *times >= SLOW_TIMES - 1e-9)
        .map(|times| Finding {
            rule: RuleId::CropSlow,
            level: Level::Watch,
            value: Value::Times(times),
            limit: Value::Times(SLOW_TIMES),
            standing: Standing::Ours,
        })
        .into_iter()
        .collect()
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::CropState;
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::warnings::rules::crop_slow::*;
    use crate::domain::warnings::rules::trial::{crop, level_of, macaw};

    /// Mornings with a crop empty after 4 h; a look on day 9 so many minutes after the feed.
    fn level(days: i32, minutes: i32, state: CropState) -> Option<Level> {
        let mut script: Scenario = macaw();
        for day in 1..=days {
            script.feed(day, 7, 0, Slot::Morning, 80);
            script.note(day, 11, 0, crop(CropState::Flat));
        }
        script.feed(9, 7, 0, Slot::Morning, 80);
        script.note(9, 7, minutes, crop(state));
        level_of(&RULE, &script, script.at(9, 7, minutes + 10))
    }

    #[test]
    fn a_quarter_more_than_usual_is_slow() {
        // 1.25 × 240 min = 300 min
        assert_eq!(level(3, 299, CropState::Quarter), None);
        assert_eq!(level(3, 300, CropState::Quarter), Some(Level::Watch));
        assert_eq!(level(3, 340, CropState::HalfOrMore), Some(Level::Watch));
        assert_eq!(level(3, 340, CropState::Flat), None);
        assert_eq!(level(3, 340, CropState::Trace), None);
    }

    #[test]
    fn two_timed_feeds_make_no_usual_time() {
        assert_eq!(level(2, 340, CropState::HalfOrMore), None);
    }
}

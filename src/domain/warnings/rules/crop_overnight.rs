//! *Watches* for food left in the crop after the night.
//!
//! *Limit* a quarter 6 h after the last feed: call the breeder; at 8 h: vet today. Half or more at 6 h:
//! call the breeder, vet today when no smaller 2 h later; at 8 h: emergency. A trace at 8 h: watch, and
//! vet today when it is still there at 10 h. A day of care begins at 04:00.
//!
//! *Why* the crop must be empty once in 24 h. Food that is still there in the morning ferments; the
//! crop stands still or is infected. A chick that looks bright is no comfort.
//!
//! *Sources* almost empty after 4 to 6 h, stasis beyond 6 h: Doneley 2018, pp. 592 and 594; the vet at
//! once for somebody without experience: a research institute's page. The bands: ours.
//!
//! *Wrong when* the chick ate from its dish at dawn.

use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::crop_ladder::{
    self, LATE_MINUTES, LONG_MINUTES, NO_SMALLER_MINUTES, TRACE_MINUTES,
};
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::crop_late::finding;
use crate::domain::warnings::rules::{Facts, Limit, Rule};

/// The rule.
pub const RULE: Rule = Rule {
    name: "crop-overnight",
    limits: &[
        Limit::new(Level::CallBreeder, Value::Minutes(LATE_MINUTES)),
        Limit::new(Level::VetToday, Value::Minutes(LONG_MINUTES)),
        Limit::new(Level::CallBreeder, Value::Minutes(LATE_MINUTES)),
        Limit::new(Level::VetToday, Value::Minutes(NO_SMALLER_MINUTES)),
        Limit::new(Level::Emergency, Value::Minutes(LONG_MINUTES)),
        Limit::new(Level::Watch, Value::Minutes(LONG_MINUTES)),
        Limit::new(Level::VetToday, Value::Minutes(TRACE_MINUTES)),
    ],
    standing: Standing::Ours,
    source: "6 h: Doneley 2018, pp. 592 and 594; the vet in the morning: a research institute's page; the bands: our own",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let rung = crop_ladder::rung(facts.now, facts.chick);
    let in_the_morning = rung.filter(|rung| rung.is_morning);
    in_the_morning
        .and_then(|rung| finding(RuleId::CropOvernight, &rung))
        .into_iter()
        .collect()
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::CropState;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::warnings::rules::crop_overnight::*;
    use crate::domain::warnings::rules::trial::{crop, level_of, macaw};

    /// Fed at 21:00 on day 1, looked at so many minutes later.
    fn level(minutes: i32, state: CropState) -> Option<Level> {
        let mut script = macaw();
        script.feed(1, 21, 0, Slot::Bedtime, 80);
        script.note(1, 21, minutes, crop(state));
        level_of(&RULE, &script, script.at(1, 21, minutes))
    }

    #[test]
    fn a_quarter_left_after_the_night_is_for_the_vet() {
        assert_eq!(level(479, CropState::Quarter), Some(Level::CallBreeder));
        assert_eq!(level(480, CropState::Quarter), Some(Level::VetToday));
        assert_eq!(level(600, CropState::Flat), None);
    }

    #[test]
    fn half_left_after_the_night_is_an_emergency_and_a_trace_is_not() {
        assert_eq!(level(479, CropState::HalfOrMore), Some(Level::CallBreeder));
        assert_eq!(level(480, CropState::HalfOrMore), Some(Level::Emergency));
        assert_eq!(level(479, CropState::Trace), None);
        assert_eq!(level(480, CropState::Trace), Some(Level::Watch));
    }

    #[test]
    fn a_look_by_day_is_another_rule() {
        let mut script = macaw();
        script.feed(1, 7, 0, Slot::Morning, 80);
        script.note(1, 16, 0, crop(CropState::HalfOrMore));
        assert_eq!(level_of(&RULE, &script, script.at(1, 16, 0)), None);
    }

    #[test]
    fn feeding_on_top_of_it_does_not_hide_it() {
        let mut script = macaw();
        script.feed(1, 21, 0, Slot::Bedtime, 80);
        script.note(2, 6, 45, crop(CropState::Quarter));
        script.feed(2, 7, 0, Slot::Morning, 80);
        let now = script.at(2, 8, 0);
        assert_eq!(level_of(&RULE, &script, now), Some(Level::VetToday));
    }
}

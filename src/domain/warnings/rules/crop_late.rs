//! *Watches* for food that stays in the crop by day.
//!
//! *Limit* a quarter or more 6 h after the last feed: call the breeder, no feed. Half or more: vet today
//! when it is no smaller 2 h later, emergency 8 h after the feed.
//!
//! *Why* food that stays ferments; food on top of it stretches the crop and stops it.
//!
//! *Sources* not empty after more than 6 h as a sign of stasis: Doneley 2018, p. 594; most of the last
//! feed left at the next one: pages of vets. 2 h and 8 h: ours.
//!
//! *Wrong when* solid food was eaten since the feed.

use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::crop_ladder::{
    self, LATE_MINUTES, LONG_MINUTES, NO_SMALLER_MINUTES, Rung,
};
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, minutes_finding};

/// The rule.
pub const RULE: Rule = Rule {
    name: "crop-late",
    limits: &[
        Limit::new(Level::CallBreeder, Value::Minutes(LATE_MINUTES)),
        Limit::new(Level::VetToday, Value::Minutes(NO_SMALLER_MINUTES)),
        Limit::new(Level::Emergency, Value::Minutes(LONG_MINUTES)),
    ],
    standing: Standing::Ours,
    source: "6 h: Doneley 2018, p. 594; 2 h and 8 h: our own",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let rung = crop_ladder::rung(facts.now, facts.chick);
    let by_day = rung.filter(|rung| !rung.is_morning);
    by_day
        .and_then(|rung| finding(RuleId::CropLate, &rung))
        .into_iter()
        .collect()
}

/// The finding of a rung that is worth one.
pub(crate) fn finding(rule: RuleId, rung: &Rung) -> Option<Finding> {
    let minutes = rung.minutes.filter(|_| rung.level > Level::Settled)?;
    let standing = if rung.level == Level::CallBreeder {
        Standing::Published
    } else {
        Standing::Ours
    };
    Some(minutes_finding(
        rule, rung.level, minutes, rung.limit, standing,
    ))
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::CropState;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::warnings::rules::crop_late::*;
    use crate::domain::warnings::rules::trial::{crop, level_of, macaw};

    /// Fed at 07:00, looked at so many minutes later.
    fn level(minutes: i32, state: CropState) -> Option<Level> {
        let mut script = macaw();
        script.feed(1, 7, 0, Slot::Morning, 80);
        script.note(1, 7, minutes, crop(state));
        level_of(&RULE, &script, script.at(1, 7, minutes))
    }

    #[test]
    fn food_that_stays_six_hours_by_day_is_a_call() {
        assert_eq!(level(359, CropState::Quarter), None);
        assert_eq!(level(360, CropState::Quarter), Some(Level::CallBreeder));
        assert_eq!(level(360, CropState::HalfOrMore), Some(Level::CallBreeder));
        assert_eq!(level(480, CropState::HalfOrMore), Some(Level::Emergency));
        assert_eq!(level(600, CropState::Trace), None);
    }

    #[test]
    fn a_feed_on_top_of_it_does_not_hide_it() {
        let mut script = macaw();
        script.feed(1, 7, 0, Slot::Morning, 80);
        script.note(1, 13, 30, crop(CropState::Quarter));
        script.feed(1, 14, 0, Slot::Midday, 80);
        let now = script.at(1, 15, 0);
        assert_eq!(level_of(&RULE, &script, now), Some(Level::CallBreeder));
    }
}

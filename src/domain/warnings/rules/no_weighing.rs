//! *Watches* how long ago the chick was last weighed with an empty crop.
//!
//! *Limit* 36 h: watch; 72 h: call the breeder; counted from the coming home at the earliest. A weaned bird
//! is weighed once a week: watch after 10 days, never a call.
//!
//! *Why* weight is the only early sign an owner can measure; every other rule is blind without it.
//!
//! *Sources* weighing daily during hand-feeding: Duerr & Gage 2020, p. 599. 36 h, 72 h and 10 days: ours.
//!
//! *Wrong when* the weighing was done and not noted.

use crate::domain::homecoming::life_stage::LifeStage;
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule};
use crate::domain::weight::readings;

/// Minutes without an empty-crop weighing that want a look, 36 h.
pub const WATCH_MINUTES: i64 = 36 * 60;
/// Minutes without an empty-crop weighing that want a call, 72 h.
pub const RING_MINUTES: i64 = 72 * 60;

/// Minutes without a weighing of a weaned bird that want a look, 10 days: a weekly weighing may be three
/// days late.
pub const WEANED_MINUTES: i64 = 10 * 24 * 60;

/// The rule.
pub const RULE: Rule = Rule {
    name: "no-weighing",
    limits: &[
        Limit::new(Level::Watch, Value::Minutes(WATCH_MINUTES)),
        Limit::new(Level::CallBreeder, Value::Minutes(RING_MINUTES)),
        Limit::new(Level::Watch, Value::Minutes(WEANED_MINUTES)),
    ],
    standing: Standing::Ours,
    source: "daily weighing: Duerr & Gage 2020, p. 599; the hours: our own",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let chick = facts.chick;
    let home = chick.home_since();
    let since =
        readings::latest_empty(facts.now, chick).map_or(home, |weighing| home.max(weighing.at));
    let minutes = facts.now.minutes_since(since);
    let limits: &[(i64, Level)] = match facts.stage {
        LifeStage::Weaned => &[(WEANED_MINUTES, Level::Watch)],
        LifeStage::WithBreeder
        | LifeStage::OnTheWay
        | LifeStage::SettlingIn
        | LifeStage::Weaning => &[
            (RING_MINUTES, Level::CallBreeder),
            (WATCH_MINUTES, Level::Watch),
        ],
        LifeStage::Grown | LifeStage::Died => &[],
    };
    let Some((limit, level)) = limits.iter().copied().find(|(limit, _)| minutes >= *limit) else {
        return Vec::new();
    };
    vec![Finding {
        rule: RuleId::NoWeighing,
        level,
        value: Value::Minutes(minutes),
        limit: Value::Minutes(limit),
        standing: Standing::Ours,
    }]
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, CropAtWeighing};
    use crate::domain::quantity::units::Grams;
    use crate::domain::warnings::rules::no_weighing::*;
    use crate::domain::warnings::rules::trial::{level_of, macaw};

    #[test]
    fn a_day_and_a_half_is_a_look_and_three_days_are_a_call() {
        let mut script = macaw();
        script.weigh(1, 1_000);
        let level = |day, hour, minute| level_of(&RULE, &script, script.at(day, hour, minute));
        // weighed on day 1 at 06:45
        assert_eq!(level(2, 18, 44), None);
        assert_eq!(level(2, 18, 45), Some(Level::Watch));
        assert_eq!(level(4, 6, 44), Some(Level::Watch));
        assert_eq!(level(4, 6, 45), Some(Level::CallBreeder));
    }

    #[test]
    fn a_weighing_with_food_in_the_crop_does_not_count() {
        let mut script = macaw();
        script.weigh(1, 1_000);
        let full = Change::Weighed {
            weight: Grams::whole(1_080),
            crop: CropAtWeighing::AfterFeed,
        };
        script.note(2, 8, 0, full);
        assert_eq!(
            level_of(&RULE, &script, script.at(2, 18, 45)),
            Some(Level::Watch)
        );
    }

    #[test]
    fn the_hours_before_the_arrival_do_not_count() {
        let mut script = macaw();
        script.weigh(1, 1_000).note(3, 12, 0, Change::Arrived);
        let level = |day, hour| level_of(&RULE, &script, script.at(day, hour, 0));
        assert_eq!(level(4, 23), None);
        assert_eq!(level(5, 0), Some(Level::Watch));
    }
}

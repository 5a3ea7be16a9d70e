//! *Watches* the temperature at which feeds were served, at the low end.
//!
//! *Limit* below 38.0 °C (100.4 °F): watch; two feeds in a row: call the breeder.
//!
//! *Why* cool formula chills the chick and slows or stops the crop.
//!
//! *Sources* the low end of warm feeding is given as 37 to 38.9 °C, with refusal of cool food: Duerr &
//! Gage 2020, p. 190 (another protocol), and hobby pages. 38.0 °C and the steps: ours.
//!
//! *Wrong when* the breeder's plan serves cooler on purpose: then the plan's own low end counts.

use crate::domain::journal::chick::FeedOutcome;
use crate::domain::quantity::evidence::Standing;
use crate::domain::quantity::units::Celsius;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule};

/// The lowest temperature of the allowed window.
pub const WINDOW_FROM: Celsius = Celsius::tenths_held(380);

/// Cold feeds in a row that want a call.
const RING_FEEDS: usize = 2;

/// The last feed counts for this long, minutes. Ours.
const SHOWN_MINUTES: i64 = 24 * 60;

/// The rule.
pub const RULE: Rule = Rule {
    name: "served-cold",
    limits: &[
        Limit::new(Level::Watch, Value::Celsius(WINDOW_FROM)),
        Limit::new(Level::CallBreeder, Value::Count(RING_FEEDS)),
    ],
    standing: Standing::Ours,
    source: "cool food is refused: Duerr & Gage 2020, p. 190; 38.0 °C and the steps: our own",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let (now, chick) = (facts.now, facts.chick);
    let limit = WINDOW_FROM.min(chick.plan.serve_from);
    let recent = chick
        .feeds
        .iter()
        .rev()
        .skip_while(|feed| feed.at > now)
        .take_while(|feed| now.minutes_since(feed.at) <= SHOWN_MINUTES);
    let served = recent.filter_map(|feed| match feed.what.outcome {
        FeedOutcome::Given { served_at, .. } => served_at,
        FeedOutcome::Refused { .. } | FeedOutcome::PassedOver { .. } => None,
    });
    let cold: Vec<Celsius> = served.take_while(|served| *served < limit).collect();
    let level = match cold.len() {
        0 => return Vec::new(),
        1..RING_FEEDS => Level::Watch,
        RING_FEEDS.. => Level::CallBreeder,
    };
    cold.first()
        .map(|latest| Finding {
            rule: RuleId::ServedCold,
            level,
            value: Value::Celsius(*latest),
            limit: Value::Celsius(limit),
            standing: Standing::Ours,
        })
        .into_iter()
        .collect()
}

#[cfg(test)]
mod tests {
    use crate::domain::warnings::rules::served_cold::*;
    use crate::domain::warnings::rules::trial::{level_of, macaw, plan, served, with_plan};

    #[test]
    fn thirty_eight_degrees_are_warm_enough() {
        let level_at = |tenths| {
            let mut script = macaw();
            script.note(1, 21, 0, served(tenths));
            level_of(&RULE, &script, script.at(1, 22, 0))
        };
        assert_eq!(level_at(380), None);
        assert_eq!(level_at(379), Some(Level::Watch));
        assert_eq!(level_at(200), Some(Level::Watch));
    }

    #[test]
    fn a_cool_feed_counts_for_a_day() {
        let mut script = macaw();
        script.note(1, 21, 0, served(370));
        let level = |minute| level_of(&RULE, &script, script.at(2, 21, minute));
        assert_eq!(level(0), Some(Level::Watch));
        assert_eq!(level(1), None);
    }

    #[test]
    fn two_in_a_row_are_a_call_and_a_warm_one_ends_it() {
        let mut script = macaw();
        script
            .note(1, 21, 0, served(370))
            .note(2, 7, 0, served(370));
        let now = script.at(2, 8, 0);
        assert_eq!(level_of(&RULE, &script, now), Some(Level::CallBreeder));
        script.note(2, 14, 0, served(400));
        assert_eq!(level_of(&RULE, &script, script.at(2, 15, 0)), None);
    }

    #[test]
    fn a_plan_that_serves_cooler_moves_the_limit_down_only() {
        let level_at = |serve_from, tenths| {
            let mut plan = plan();
            plan.serve_from = Celsius::tenths_held(serve_from);
            let mut script = with_plan(plan);
            script.note(1, 21, 0, served(tenths));
            level_of(&RULE, &script, script.at(1, 22, 0))
        };
        assert_eq!(level_at(370, 375), None);
        assert_eq!(level_at(370, 369), Some(Level::Watch));
        assert_eq!(level_at(390, 385), None);
    }

    #[test]
    fn a_feed_that_is_still_to_come_says_nothing_yet() {
        let mut script = macaw();
        script.note(1, 21, 0, served(370));
        let level = |hour, minute| level_of(&RULE, &script, script.at(1, hour, minute));
        assert_eq!(level(20, 59), None);
        assert_eq!(level(21, 0), Some(Level::Watch));
    }
}

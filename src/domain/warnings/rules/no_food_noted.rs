//! *Watches* for silence: how long ago food was last noted, where nothing tells that a feed was not given.
//!
//! *Limit* the plan's longest gap and 2 h: watch, and "Has it eaten?" is asked; 24 h: call the breeder (2 h
//! after the question where that is later). Not while the chick is on its way as planned.
//!
//! *Why* a feed without a note was mostly given, but a chick that nobody has fed tells nothing either.
//!
//! *Sources* 24 h without food as an alarm: common practice; the longest gap and 2 h: ours.
//!
//! *Wrong when* the feeds were given and not noted.

use crate::domain::feeding::feeding_streak::{self, AFTER_LONGEST_GAP_MINUTES};
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::missed_feeds::FOODLESS_MINUTES;
use crate::domain::warnings::rules::{Facts, Limit, Rule, minutes_finding};

/// The rule.
pub const RULE: Rule = Rule {
    name: "no-food-noted",
    limits: &[
        Limit::new(Level::Watch, Value::Minutes(AFTER_LONGEST_GAP_MINUTES)),
        Limit::new(Level::CallBreeder, Value::Minutes(FOODLESS_MINUTES)),
    ],
    standing: Standing::Ours,
    source: "24 h: common practice; the longest gap and 2 h: our own",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let (now, chick) = (facts.now, facts.chick);
    let row = feeding_streak::foodless_row(now, chick, facts.feeds);
    let is_told = row.missed + row.refused + row.tries > 0;
    let Some(longest) = feeding_streak::longest_gap_minutes(now, chick).filter(|_| !is_told) else {
        return Vec::new();
    };
    let ask = longest + AFTER_LONGEST_GAP_MINUTES;
    let call = FOODLESS_MINUTES.max(ask + AFTER_LONGEST_GAP_MINUTES);
    // Whatever little went in was noted, and the journey has its own rule.
    let noted = chick.last_given(now).map(|food| food.at);
    let since = row.since.max(chick.home_since());
    let minutes = now.minutes_since(noted.map_or(since, |noted| noted.max(since)));
    let rule = RuleId::NoFoodNoted;
    if minutes >= call {
        vec![minutes_finding(
            rule,
            Level::CallBreeder,
            minutes,
            call,
            Standing::Ours,
        )]
    } else if minutes >= ask {
        vec![minutes_finding(
            rule,
            Level::Watch,
            minutes,
            ask,
            Standing::Ours,
        )]
    } else {
        Vec::new()
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, WhyPassedOver};
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::warnings::rules::no_food_noted::*;
    use crate::domain::warnings::rules::trial::{day_zero, level_of, macaw};

    #[test]
    fn two_hours_after_the_longest_gap_it_asks_and_at_a_day_it_calls() {
        // feeds at 07:00, 14:00 and 21:00: the longest gap is the night of 10 h
        let mut script = macaw();
        script.food(1, 21, 0, 80);
        let level = |day, hour, minute| level_of(&RULE, &script, script.at(day, hour, minute));
        assert_eq!(level(2, 8, 59), None);
        assert_eq!(level(2, 9, 0), Some(Level::Watch));
        assert_eq!(level(2, 20, 59), Some(Level::Watch));
        assert_eq!(level(2, 21, 0), Some(Level::CallBreeder));
    }

    #[test]
    fn a_feed_known_not_to_have_been_given_is_no_silence_and_not_knowing_is() {
        let with = |why| {
            let mut script = macaw();
            script.food(1, 21, 0, 80);
            let (slot, day) = (Slot::Morning, day_zero().plus(2));
            script.note(2, 9, 0, Change::FeedPassedOver { slot, day, why });
            level_of(&RULE, &script, script.at(2, 9, 30))
        };
        assert_eq!(with(WhyPassedOver::NotPossible), None);
        assert_eq!(with(WhyPassedOver::NotKnown), Some(Level::Watch));
        assert_eq!(with(WhyPassedOver::Advised), None);
    }
}

//! *Watches* feeds that the chick refused, in a row up to now.
//!
//! *Limit* a refusal: watch, and it is offered again (after 45 min, then after 2.5 h). Only after its last
//! try it counts as a feed not given, with the limits of missed feeds. A chick that is being weaned and
//! swallowed solids since its last formula is watched only.
//!
//! *Why* one refusal is often cool formula or a tired chick; more of them mean illness, heat or cold.
//!
//! *Sources* the tries, three feeds or 24 h: common practice.
//!
//! *Wrong when* food was taken and not noted.

use crate::domain::feeding::feeding_streak;
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::missed_feeds::{
    RING_FEEDS, VET_FEEDS, WATCH_FEEDS, finding, is_weaning_itself,
};
use crate::domain::warnings::rules::{Facts, Limit, Rule};

/// The rule.
pub const RULE: Rule = Rule {
    name: "refused-feeds",
    limits: &[
        Limit::new(Level::Watch, Value::Count(WATCH_FEEDS)),
        Limit::new(Level::CallBreeder, Value::Count(RING_FEEDS)),
        Limit::new(Level::VetToday, Value::Count(VET_FEEDS)),
    ],
    standing: Standing::CommonPractice,
    source: "common practice",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let row = feeding_streak::foodless_row(facts.now, facts.chick, facts.feeds);
    let rule = RuleId::RefusedFeeds;
    if row.refused == 0 && row.tries == 0 {
        return Vec::new();
    }
    let feeds = row.refused.max(usize::from(row.tries > 0));
    if is_weaning_itself(facts, &row) {
        return vec![Finding {
            rule,
            level: Level::Watch,
            value: Value::Count(feeds),
            limit: Value::Count(WATCH_FEEDS),
            standing: Standing::CommonPractice,
        }];
    }
    vec![finding(facts, rule, &row, feeds)]
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, Response, SolidsEaten};
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::quantity::units::Millilitres;
    use crate::domain::warnings::rules::refused_feeds::*;
    use crate::domain::warnings::rules::trial::{aged, level_of};

    /// A chick of `weeks` weeks, weighed at `grams` on day 2, fed at 03:00, that refused the feeds of 07:00,
    /// 10:30 and 14:00; and its level after each, when no further try belongs to it.
    fn levels(weeks: i32, grams: i32) -> [Option<Level>; 3] {
        let mut script = aged(weeks);
        script.food(2, 3, 0, 80).weigh(2, grams);
        let feeds = [
            (7, 0, Slot::Morning),
            (10, 30, Slot::Midday),
            (14, 0, Slot::Bedtime),
        ];
        feeds.map(|(hour, minute, slot)| {
            script.note(2, hour, minute, Change::refused(Some(slot)));
            level_of(&RULE, &script, script.at(2, hour + 3, minute))
        })
    }

    #[test]
    fn one_two_and_three_refusals_of_a_chick_too_young_to_be_weaned() {
        // at 17:00 the last food is 14 h ago as well
        let (watch, ring, vet) = (Level::Watch, Level::CallBreeder, Level::VetToday);
        assert_eq!(levels(12, 1_000), [watch, ring, vet].map(Some));
    }

    #[test]
    fn a_refusal_is_watched_while_it_is_to_be_offered_again() {
        let mut script = aged(12);
        script.food(2, 3, 0, 80);
        script.note(2, 7, 0, Change::refused(None));
        assert_eq!(
            level_of(&RULE, &script, script.at(2, 7, 1)),
            Some(Level::Watch)
        );
        script.food(2, 7, 50, 80);
        assert_eq!(level_of(&RULE, &script, script.at(2, 8, 0)), None);
    }

    #[test]
    fn in_the_first_day_here_the_first_try_that_fails_is_for_the_breeder() {
        let mut script = aged(12);
        script.food(2, 3, 0, 80).note(2, 6, 0, Change::Arrived);
        script.note(2, 7, 0, Change::refused(None));
        assert_eq!(
            level_of(&RULE, &script, script.at(2, 7, 1)),
            Some(Level::Watch)
        );
        script.note(2, 7, 45, Change::refused(None));
        assert_eq!(
            level_of(&RULE, &script, script.at(2, 7, 46)),
            Some(Level::CallBreeder)
        );
    }

    #[test]
    fn age_alone_excuses_no_chick() {
        // green-winged macaws are weaned from 16 weeks on
        let (watch, ring, vet) = (Level::Watch, Level::CallBreeder, Level::VetToday);
        assert_eq!(levels(16, 990), [watch, ring, vet].map(Some));
    }

    #[test]
    fn solids_since_the_last_formula_excuse_a_chick_that_is_being_weaned() {
        let level = |eats: bool| {
            let mut script = aged(20);
            script.food(1, 21, 0, 80);
            if eats {
                let (what, eaten) = (String::new(), SolidsEaten::Little);
                script.note(2, 9, 0, Change::SolidsSeen { what, eaten });
            }
            script.note(2, 21, 0, Change::refused(Some(Slot::Bedtime)));
            level_of(&RULE, &script, script.at(2, 21, 5))
        };
        assert_eq!(level(false), Some(Level::VetToday));
        assert_eq!(level(true), Some(Level::Watch));
    }

    #[test]
    fn one_refusal_and_a_day_without_food_are_for_the_vet() {
        let mut script = aged(12);
        script.feed(1, 14, 0, Slot::Midday, 80);
        script.note(1, 21, 0, Change::refused(Some(Slot::Bedtime)));
        let level = |hour, minute| level_of(&RULE, &script, script.at(2, hour, minute));
        assert_eq!(level(1, 59), Some(Level::Watch));
        // 12 h, as long as the plan's night and 2 h
        assert_eq!(level(2, 0), Some(Level::CallBreeder));
        assert_eq!(level(13, 59), Some(Level::CallBreeder));
        assert_eq!(level(14, 0), Some(Level::VetToday));
    }

    #[test]
    fn a_feed_of_which_nothing_was_taken_counts_as_refused_and_food_ends_the_row() {
        let mut script = aged(12);
        let nothing = Change::Fed {
            counts_as: Some(Slot::Morning),
            taken: Millilitres::whole(0),
            offered: Millilitres::whole(80),
            served_at: None,
            response: Response::Slow,
        };
        script.feed(1, 21, 0, Slot::Bedtime, 80);
        script.note(2, 7, 0, nothing);
        let slot = Slot::Midday;
        script.note(2, 14, 0, Change::refused(Some(slot)));
        let now = script.at(2, 14, 30);
        assert_eq!(level_of(&RULE, &script, now), Some(Level::CallBreeder));
        script.feed(2, 14, 45, Slot::Midday, 20);
        assert_eq!(level_of(&RULE, &script, script.at(2, 15, 0)), None);
    }
}

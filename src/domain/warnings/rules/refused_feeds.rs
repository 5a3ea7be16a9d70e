//! *Watches* feeds that the chick refused, in a row up to now.
//!
//! *Limit* a refusal: watch, and it is offered again (after 45 min, then after 2.5 h). Only after its last
//! try it counts as a feed not given, with the limits of missed feeds. In a chick that is being weaned
//! (old enough for its species, or a feed dropped) and was weighed in the last 36 h above 90 % of its peak
//! and handover weight: watch only.
//!
//! *Why* one refusal is often cool formula or a tired chick; more of them mean illness, heat or cold.
//!
//! *Sources* the tries, three feeds or 24 h: common practice. Refusals as a normal part of weaning, and
//! 90 % of the peak: weaning articles; Duerr & Gage 2020, p. 599. That a weighing counts for 36 h: ours.
//!
//! *Wrong when* food was taken and not noted.

use crate::domain::feeding::feeding_streak;
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::missed_feeds::{
    RING_FEEDS, VET_FEEDS, WATCH_FEEDS, finding, is_normal,
};
use crate::domain::warnings::rules::{Facts, Limit, Rule};

/// The rule.
pub const RULE: Rule = Rule {
    name: "refused-feeds",
    limits: &[
        Limit::new(Level::Watch, Value::Count(WATCH_FEEDS)),
        Limit::new(Level::CallBreeder, Value::Count(RING_FEEDS)),
        Limit::new(Level::VetToday, Value::Count(VET_FEEDS)),
        Limit::new(Level::Watch, Value::Pct(feeding_streak::NORMAL_SHARE_PCT)),
    ],
    standing: Standing::CommonPractice,
    source: "common practice; 90 % of the peak: Duerr & Gage 2020, p. 599",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let row = feeding_streak::foodless_row(facts.now, facts.chick, facts.feeds);
    let rule = RuleId::RefusedFeeds;
    if row.refused == 0 && row.tries == 0 {
        return Vec::new();
    }
    if !is_normal(facts) {
        return vec![finding(
            facts,
            rule,
            &row,
            row.refused.max(usize::from(row.tries > 0)),
        )];
    }
    vec![Finding {
        rule,
        level: Level::Watch,
        value: Value::Count(row.refused + usize::from(row.tries > 0)),
        limit: Value::Count(WATCH_FEEDS),
        standing: Standing::Published,
    }]
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, Response};
    use crate::domain::journal::scenario::Scenario;
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
    fn a_weaning_chick_above_ninety_per_cent_is_only_watched() {
        // green-winged macaws are weaned from 16 weeks on
        let (watch, ring, vet) = (Level::Watch, Level::CallBreeder, Level::VetToday);
        assert_eq!(levels(15, 950), [watch, ring, vet].map(Some));
        assert_eq!(levels(16, 901), [watch, watch, watch].map(Some));
        assert_eq!(levels(16, 900), [watch, ring, vet].map(Some));
    }

    #[test]
    fn a_weaning_chick_far_below_its_peak_is_not_excused() {
        let mut script = aged(20);
        script.weigh(0, 1_100).weigh(1, 1_100).weigh(2, 1_100);
        // (1100 - 985) / 1100 = 10.5 %, but only 1.5 % below the handover weight
        script.feed(2, 22, 0, Slot::Bedtime, 80).weigh(3, 985);
        for (slot, hour) in [(Slot::Morning, 7), (Slot::Midday, 14)] {
            script.note(3, hour, 0, Change::refused(Some(slot)));
        }
        let now = script.at(3, 14, 30);
        assert_eq!(level_of(&RULE, &script, now), Some(Level::CallBreeder));
    }

    #[test]
    fn without_a_weighing_of_the_last_day_and_a_half_weaning_excuses_nothing() {
        let mut script = aged(20);
        script.weigh(1, 1_000).feed(1, 22, 0, Slot::Bedtime, 80);
        for (slot, hour) in [(Slot::Morning, 7), (Slot::Midday, 14)] {
            script.note(2, hour, 0, Change::refused(Some(slot)));
        }
        let level = |hour, minute| level_of(&RULE, &script, script.at(2, hour, minute));
        assert_eq!(level(18, 45), Some(Level::Watch));
        assert_eq!(level(18, 46), Some(Level::CallBreeder));
    }

    #[test]
    fn a_dropped_feed_means_weaning_at_any_age() {
        let mut script: Scenario = aged(12);
        let (slot, by_breeder) = (Slot::Midday, true);
        script.feed(1, 22, 0, Slot::Bedtime, 80).weigh(2, 950);
        script.note(2, 6, 50, Change::FeedDropped { slot, by_breeder });
        for (slot, hour) in [(Slot::Morning, 7), (Slot::Bedtime, 21)] {
            script.note(2, hour, 0, Change::refused(Some(slot)));
        }
        let now = script.at(2, 21, 30);
        // the weighing is from 06:45 of the same day
        assert_eq!(level_of(&RULE, &script, now), Some(Level::Watch));
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

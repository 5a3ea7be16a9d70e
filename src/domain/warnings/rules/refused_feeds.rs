//! *Watches* feeds that the chick refused, in a row up to now.
//!
//! *Limit* one: watch; two: ring the breeder; three, or 24 h without food: vet today. In a chick that
//! is being weaned (old enough for its species, or a feed dropped) and was weighed in the last 36 h
//! above 90 % of its peak and handover weight: watch only.
//!
//! *Why* one refusal is often cool formula or a tired chick; more of them mean illness, heat or cold.
//!
//! *Sources* one, two, three feeds or 24 h: common practice. Refusals as a normal part of weaning, and
//! 90 % of the peak: weaning articles; Duerr & Gage 2020, p. 599. That a weighing counts for 36 h: ours.
//!
//! *Wrong when* food was taken and not noted. A chick on two feeds a day that refused one reaches 24 h
//! when the next is due.

use crate::domain::feeding::feeding_streak;
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::missed_feeds::{
    FOODLESS_MINUTES, RING_FEEDS, VET_FEEDS, WATCH_FEEDS,
};
use crate::domain::warnings::rules::{Facts, Limit, Rule, minutes_finding};

/// The rule.
pub const RULE: Rule = Rule {
    name: "refused-feeds",
    limits: &[
        Limit::new(Level::Watch, Value::Count(WATCH_FEEDS)),
        Limit::new(Level::RingBreeder, Value::Count(RING_FEEDS)),
        Limit::new(Level::VetToday, Value::Count(VET_FEEDS)),
        Limit::new(Level::VetToday, Value::Minutes(FOODLESS_MINUTES)),
        Limit::new(Level::Watch, Value::Pct(feeding_streak::NORMAL_SHARE_PCT)),
    ],
    standing: Standing::CommonPractice,
    source: "common practice; 90 % of the peak: Duerr & Gage 2020, p. 599",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let (now, chick) = (facts.now, facts.chick);
    let row = feeding_streak::foodless_row(now, chick, facts.feeds);
    let rule = RuleId::RefusedFeeds;
    if row.refused == 0 {
        return Vec::new();
    }
    let is_normal = feeding_streak::is_refusal_normal(now, facts.zone.lived(now).day, chick);
    let minutes = now.minutes_since(row.since);
    let (level, limit, standing) = match row.refused {
        _ if is_normal => (Level::Watch, WATCH_FEEDS, Standing::Published),
        ..VET_FEEDS if minutes >= FOODLESS_MINUTES => {
            return vec![minutes_finding(
                rule,
                Level::VetToday,
                minutes,
                FOODLESS_MINUTES,
                Standing::CommonPractice,
            )];
        }
        ..RING_FEEDS => (Level::Watch, WATCH_FEEDS, Standing::CommonPractice),
        RING_FEEDS..VET_FEEDS => (Level::RingBreeder, RING_FEEDS, Standing::CommonPractice),
        VET_FEEDS.. => (Level::VetToday, VET_FEEDS, Standing::CommonPractice),
    };
    let (value, limit) = (Value::Count(row.refused), Value::Count(limit));
    vec![Finding {
        rule,
        level,
        value,
        limit,
        standing,
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

    const FEEDS: [(i32, i32, Slot); 4] = [
        (2, 7, Slot::Morning),
        (2, 14, Slot::Midday),
        (2, 21, Slot::Bedtime),
        (3, 7, Slot::Morning),
    ];

    /// A chick of `weeks` weeks, weighed at `grams` on day 2, fed at 22:00 on day 1, that refused the
    /// next `count` feeds; and its level half an hour after the last refusal.
    fn level(weeks: i32, grams: i32, count: usize) -> Option<Level> {
        let mut script = aged(weeks);
        script.feed(1, 22, 0, Slot::Bedtime, 80).weigh(2, grams);
        let mut now = script.at(2, 6, 50);
        for (day, hour, slot) in FEEDS.into_iter().take(count) {
            script.note(day, hour, 0, Change::FeedRefused { slot });
            now = script.at(day, hour, 30);
        }
        level_of(&RULE, &script, now)
    }

    #[test]
    fn one_two_and_three_refusals_of_a_chick_too_young_to_be_weaned() {
        assert_eq!(level(12, 1_000, 0), None);
        assert_eq!(level(12, 1_000, 1), Some(Level::Watch));
        assert_eq!(level(12, 1_000, 2), Some(Level::RingBreeder));
        assert_eq!(level(12, 1_000, 3), Some(Level::VetToday));
        assert_eq!(level(12, 1_000, 4), Some(Level::VetToday));
    }

    #[test]
    fn a_weaning_chick_above_ninety_per_cent_is_only_watched() {
        // green-winged macaws are weaned from 16 weeks on
        assert_eq!(level(15, 950, 2), Some(Level::RingBreeder));
        assert_eq!(level(16, 950, 2), Some(Level::Watch));
        assert_eq!(level(16, 901, 3), Some(Level::Watch));
        assert_eq!(level(16, 900, 3), Some(Level::VetToday));
        assert_eq!(level(16, 900, 2), Some(Level::RingBreeder));
    }

    #[test]
    fn a_weaning_chick_far_below_its_peak_is_not_excused() {
        let mut script = aged(20);
        script.weigh(0, 1_100).weigh(1, 1_100).weigh(2, 1_100);
        // (1100 - 985) / 1100 = 10.5 %, but only 1.5 % below the handover weight
        script.feed(2, 22, 0, Slot::Bedtime, 80).weigh(3, 985);
        for (slot, hour) in [(Slot::Morning, 7), (Slot::Midday, 14)] {
            script.note(3, hour, 0, Change::FeedRefused { slot });
        }
        let now = script.at(3, 14, 30);
        assert_eq!(level_of(&RULE, &script, now), Some(Level::RingBreeder));
    }

    #[test]
    fn without_a_weighing_of_the_last_day_and_a_half_weaning_excuses_nothing() {
        let mut script = aged(20);
        script.weigh(1, 1_000).feed(1, 22, 0, Slot::Bedtime, 80);
        for (slot, hour) in [(Slot::Morning, 7), (Slot::Midday, 14)] {
            script.note(2, hour, 0, Change::FeedRefused { slot });
        }
        let level = |hour, minute| level_of(&RULE, &script, script.at(2, hour, minute));
        assert_eq!(level(18, 45), Some(Level::Watch));
        assert_eq!(level(18, 46), Some(Level::RingBreeder));
    }

    #[test]
    fn a_dropped_feed_means_weaning_at_any_age() {
        let mut script: Scenario = aged(12);
        let (slot, by_breeder) = (Slot::Midday, true);
        script.feed(1, 22, 0, Slot::Bedtime, 80).weigh(2, 950);
        script.note(2, 6, 50, Change::FeedDropped { slot, by_breeder });
        for (slot, hour) in [(Slot::Morning, 7), (Slot::Bedtime, 21)] {
            script.note(2, hour, 0, Change::FeedRefused { slot });
        }
        let now = script.at(2, 21, 30);
        // the weighing is from 06:45 of the same day
        assert_eq!(level_of(&RULE, &script, now), Some(Level::Watch));
    }

    #[test]
    fn one_refusal_and_a_day_without_food_are_for_the_vet() {
        let mut script = aged(12);
        script.feed(1, 14, 0, Slot::Midday, 80);
        script.note(
            1,
            21,
            0,
            Change::FeedRefused {
                slot: Slot::Bedtime,
            },
        );
        let level = |hour, minute| level_of(&RULE, &script, script.at(2, hour, minute));
        assert_eq!(level(13, 59), Some(Level::Watch));
        assert_eq!(level(14, 0), Some(Level::VetToday));
    }

    #[test]
    fn a_feed_of_which_nothing_was_taken_counts_as_refused_and_food_ends_the_row() {
        let mut script = aged(12);
        let nothing = Change::Fed {
            slot: Slot::Morning,
            taken: Millilitres::whole(0),
            offered: Millilitres::whole(80),
            served_at: None,
            response: Response::Slow,
        };
        script.feed(1, 21, 0, Slot::Bedtime, 80);
        script.note(2, 7, 0, nothing);
        let slot = Slot::Midday;
        script.note(2, 14, 0, Change::FeedRefused { slot });
        let now = script.at(2, 14, 30);
        assert_eq!(level_of(&RULE, &script, now), Some(Level::RingBreeder));
        script.feed(2, 14, 45, Slot::Midday, 20);
        assert_eq!(level_of(&RULE, &script, script.at(2, 15, 0)), None);
    }
}

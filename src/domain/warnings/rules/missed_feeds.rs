//! *Watches* feeds of the plan that were not given or not noted, in a row up to now.
//!
//! *Limit* one: watch; two: ring the breeder; three, or two and 24 h without food: vet today. A feed
//! passed over counts unless breeder or vet advised it. Once a feed was missed, feeds refused in the
//! same row count too, unless they are a normal part of weaning.
//!
//! *Why* a part-weaned chick cannot make up for feeds by itself, and a feed is never doubled.
//!
//! *Sources* three feeds or 24 h without food as an alarm: common practice; one and two: ours.
//!
//! *Wrong when* the feeds were given and not noted.

use crate::domain::feeding::feeding_streak;
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, minutes_finding};

/// Time without food that is for the vet, minutes.
pub const FOODLESS_MINUTES: i64 = 24 * 60;

/// Feeds in a row that are watched.
pub(crate) const WATCH_FEEDS: usize = 1;
/// Feeds in a row that want a call.
pub(crate) const RING_FEEDS: usize = 2;
/// Feeds in a row that are for the vet.
pub(crate) const VET_FEEDS: usize = 3;

/// The rule.
pub const RULE: Rule = Rule {
    name: "missed-feeds",
    limits: &[
        Limit::new(Level::Watch, Value::Count(WATCH_FEEDS)),
        Limit::new(Level::RingBreeder, Value::Count(RING_FEEDS)),
        Limit::new(Level::VetToday, Value::Count(VET_FEEDS)),
        Limit::new(Level::VetToday, Value::Count(RING_FEEDS)),
        Limit::new(Level::VetToday, Value::Minutes(FOODLESS_MINUTES)),
    ],
    standing: Standing::Ours,
    source: "three feeds or 24 h: common practice; one and two: ours",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let (now, chick) = (facts.now, facts.chick);
    let row = feeding_streak::foodless_row(now, chick, facts.feeds);
    if row.missed == 0 {
        return Vec::new();
    }
    let is_normal = feeding_streak::is_refusal_normal(now, facts.zone.lived(now).day, chick);
    let feeds = if is_normal {
        row.missed
    } else {
        row.missed + row.refused
    };
    let minutes = now.minutes_since(row.since);
    let rule = RuleId::MissedFeeds;
    let (level, limit, standing) = match feeds {
        ..RING_FEEDS => (Level::Watch, WATCH_FEEDS, Standing::Ours),
        RING_FEEDS..VET_FEEDS if minutes >= FOODLESS_MINUTES => {
            return vec![minutes_finding(
                rule,
                Level::VetToday,
                minutes,
                FOODLESS_MINUTES,
                Standing::CommonPractice,
            )];
        }
        RING_FEEDS..VET_FEEDS => (Level::RingBreeder, RING_FEEDS, Standing::Ours),
        VET_FEEDS.. => (Level::VetToday, VET_FEEDS, Standing::CommonPractice),
    };
    let (value, limit) = (Value::Count(feeds), Value::Count(limit));
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
    use crate::domain::journal::entries::{Change, WhyPassedOver};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::{ClockShift, Journey, Slot};
    use crate::domain::time::moment::Offset;
    use crate::domain::warnings::rules::missed_feeds::*;
    use crate::domain::warnings::rules::trial::{aged, level_of, macaw, plan, with_plan};

    /// Fed on the evening of day 1; feeds at 07:00, 14:00 and 21:00 are late after an hour.
    fn fed() -> Scenario {
        let mut script = macaw();
        script.feed(1, 21, 0, Slot::Bedtime, 80);
        script
    }

    fn level(script: &Scenario, day: i32, hour: i32, minute: i32) -> Option<Level> {
        level_of(&RULE, script, script.at(day, hour, minute))
    }

    #[test]
    fn one_two_and_three_feeds_in_a_row() {
        let script = fed();
        assert_eq!(level(&script, 2, 8, 0), None);
        assert_eq!(level(&script, 2, 8, 1), Some(Level::Watch));
        assert_eq!(level(&script, 2, 15, 0), Some(Level::Watch));
        assert_eq!(level(&script, 2, 15, 1), Some(Level::RingBreeder));
        // 24 h after the last food the third feed is only due
        assert_eq!(level(&script, 2, 20, 59), Some(Level::RingBreeder));
        assert_eq!(level(&script, 2, 21, 0), Some(Level::VetToday));
        assert_eq!(level(&script, 2, 22, 1), Some(Level::VetToday));
        assert_eq!(level(&script, 5, 12, 0), Some(Level::VetToday));
    }

    #[test]
    fn food_ends_the_row() {
        let mut script = fed();
        script.feed(2, 14, 0, Slot::Midday, 80);
        assert_eq!(level(&script, 2, 15, 30), None);
    }

    #[test]
    fn a_refusal_does_not_end_the_row_and_counts_in_it() {
        let mut script = fed();
        let slot = Slot::Midday;
        script.note(2, 14, 0, Change::FeedRefused { slot });
        assert_eq!(level(&script, 2, 14, 30), Some(Level::RingBreeder));
        assert_eq!(level(&script, 2, 22, 1), Some(Level::VetToday));
    }

    #[test]
    fn refusals_that_are_part_of_weaning_do_not_count_in_the_row() {
        let mut script = aged(20);
        script.feed(1, 22, 0, Slot::Bedtime, 80).weigh(2, 950);
        for (hour, slot) in [(7, Slot::Morning), (14, Slot::Midday)] {
            script.note(2, hour, 0, Change::FeedRefused { slot });
        }
        assert_eq!(level(&script, 2, 22, 1), Some(Level::Watch));
    }

    #[test]
    fn a_feed_left_out_on_advice_is_not_missed_and_others_are() {
        let with = |why| {
            let mut script = fed();
            let slot = Slot::Morning;
            script.note(2, 7, 0, Change::FeedPassedOver { slot, why });
            level(&script, 2, 10, 0)
        };
        assert_eq!(with(WhyPassedOver::Advised), None);
        assert_eq!(with(WhyPassedOver::CropNotEmpty), Some(Level::Watch));
        assert_eq!(with(WhyPassedOver::NotFit), Some(Level::Watch));
        assert_eq!(with(WhyPassedOver::NotPossible), Some(Level::Watch));
    }

    #[test]
    fn no_feed_is_missed_before_the_chick_is_home() {
        let mut plan = plan();
        let script = macaw();
        plan.journey = Some(Journey {
            left: script.at(3, 8, 0),
            expected: script.at(3, 16, 0),
            breeder_offset: Offset::UTC,
            shift: ClockShift::AtOnce,
            last_fed: None,
        });
        let mut script = with_plan(plan);
        assert_eq!(level(&script, 3, 15, 30), None);
        // when nobody notes the arrival, the expected one counts
        assert_eq!(level(&script, 3, 22, 1), Some(Level::Watch));
        script.note(3, 21, 30, Change::Arrived);
        assert_eq!(level(&script, 3, 22, 1), None);
    }
}

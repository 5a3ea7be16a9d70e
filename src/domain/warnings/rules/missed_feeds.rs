//! *Watches* feeds of the plan that are known not to have been given, in a row up to now.
//!
//! *Limit* in a chick past its peak one: watch, two: call the breeder, three: vet today; in one that still
//! grows, or that is in its first day here, a step earlier. 12 h since the last food, or the plan's
//! longest gap and 2 h where that is later: call the breeder; 24 h: vet today. A chick in pin feathers:
//! vet today at 8 h, or the longest gap and 2 h. Feeds left out count unless breeder or vet advised it;
//! feeds refused in the same row count too, unless they are a normal part of weaning.
//!
//! *Why* a part-weaned chick cannot make up for feeds by itself, and a feed is never doubled.
//!
//! *Sources* three feeds or 24 h without food as an alarm: common practice; the other steps: ours.
//!
//! *Wrong when* somebody fed it and noted that it was not. A feed without a note is no missed feed: the
//! app asks.

use crate::domain::feeding::feeding_streak::{self, AFTER_LONGEST_GAP_MINUTES, FoodlessRow};
use crate::domain::feeding::schedule::FEATHERED_FROM_DAYS;
use crate::domain::quantity::evidence::Standing;
use crate::domain::time::moment::Age;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, minutes_finding};
use crate::domain::weight::healthy::growth_days;

/// Solids seen so long ago still tell that a chick weans itself, minutes: a day and a half. Ours.
const SOLIDS_MINUTES: i64 = 36 * 60;

/// Time without food that is for the vet, minutes.
pub const FOODLESS_MINUTES: i64 = 24 * 60;

/// Time without food, after a feed refused or not given, that is for the breeder, minutes. Ours.
pub const HUNGRY_MINUTES: i64 = 12 * 60;

/// Time without food, after a feed refused or not given, that is for the vet in a chick in pin feathers,
/// minutes. Common practice.
pub const HUNGRY_IN_PINS_MINUTES: i64 = 8 * 60;

/// Feeds in a row that are watched in a chick past its peak.
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
        Limit::new(Level::CallBreeder, Value::Count(RING_FEEDS)),
        Limit::new(Level::VetToday, Value::Count(VET_FEEDS)),
        Limit::new(Level::CallBreeder, Value::Minutes(HUNGRY_MINUTES)),
        Limit::new(Level::VetToday, Value::Minutes(FOODLESS_MINUTES)),
        Limit::new(Level::VetToday, Value::Minutes(HUNGRY_IN_PINS_MINUTES)),
        Limit::new(
            Level::CallBreeder,
            Value::Minutes(AFTER_LONGEST_GAP_MINUTES),
        ),
    ],
    standing: Standing::Ours,
    source: "three feeds, 24 h, and 8 h in pin feathers: common practice; the rest: our own",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let row = feeding_streak::foodless_row(facts.now, facts.chick, facts.feeds);
    if row.missed == 0 {
        return Vec::new();
    }
    let refused = if is_weaning_itself(facts, &row) {
        0
    } else {
        row.refused
    };
    vec![finding(
        facts,
        RuleId::MissedFeeds,
        &row,
        row.missed + refused,
    )]
}

/// Whether refusals are the chick's own way of weaning: it is being weaned and was seen to swallow solids
/// since its last formula, in the last [`SOLIDS_MINUTES`].
pub(crate) fn is_weaning_itself(facts: &Facts<'_>, row: &FoodlessRow) -> bool {
    let (now, chick) = (facts.now, facts.chick);
    let today = facts.zone.lived(now).day;
    let since = row.since.max(now.plus_minutes(-SOLIDS_MINUTES));
    let mut solids = chick.solids.iter().rev();
    feeding_streak::is_weaning(now, today, chick)
        && solids.any(|look| look.at > since && look.what.eaten.is_swallowed())
}

/// What a row of so many feeds without food means, by their count or by the hours, whichever is worse.
pub(crate) fn finding(facts: &Facts<'_>, rule: RuleId, row: &FoodlessRow, feeds: usize) -> Finding {
    let (now, chick) = (facts.now, facts.chick);
    let age = chick.plan.hatched;
    let age = age.and_then(|hatched| Age::on(facts.zone.lived(now).day, hatched));
    let is_younger = |days: i32| age.is_some_and(|age| age.days() < days);
    let is_growing = is_younger(growth_days(chick.plan.species))
        && !feeding_streak::is_weaning(now, facts.zone.lived(now).day, chick);
    let longest = feeding_streak::longest_gap_minutes(now, chick).unwrap_or_default();
    let after_gap = longest + AFTER_LONGEST_GAP_MINUTES;
    let hungry = HUNGRY_MINUTES.max(after_gap);
    let pins = HUNGRY_IN_PINS_MINUTES.max(after_gap);
    let minutes = now.minutes_since(row.since);
    let by_hours = |level, limit, standing| minutes_finding(rule, level, minutes, limit, standing);
    let by_count = |level, limit, standing| Finding {
        rule,
        level,
        value: Value::Count(feeds),
        limit: Value::Count(limit),
        standing,
    };
    let has_eaten = is_weaning_itself(facts, row);
    let is_new = chick
        .arrived
        .as_ref()
        .is_some_and(|arrived| now.minutes_since(arrived.at) < FOODLESS_MINUTES);
    let early = usize::from(is_growing || is_new && (row.tries > 1 || row.refused > 0));
    match feeds + early {
        VET_FEEDS.. if feeds > 0 => {
            by_count(Level::VetToday, VET_FEEDS - early, Standing::CommonPractice)
        }
        _ if minutes >= FOODLESS_MINUTES && !has_eaten => {
            by_hours(Level::VetToday, FOODLESS_MINUTES, Standing::CommonPractice)
        }
        _ if is_younger(FEATHERED_FROM_DAYS) && minutes >= pins => {
            by_hours(Level::VetToday, pins, Standing::CommonPractice)
        }
        RING_FEEDS => by_count(Level::CallBreeder, RING_FEEDS - early, Standing::Ours),
        _ if minutes >= hungry => by_hours(Level::CallBreeder, hungry, Standing::Ours),
        _ => by_count(Level::Watch, WATCH_FEEDS, Standing::Ours),
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, SolidsEaten, WhyPassedOver};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::warnings::rules::missed_feeds::*;
    use crate::domain::warnings::rules::refused_feeds;
    use crate::domain::warnings::rules::trial::{aged, level_of, macaw};

    const NOT_GIVEN: WhyPassedOver = WhyPassedOver::NotPossible;

    /// Fed on the evening of day 1 at 22:00; the plan's longest gap is the night of 10 h, so that 12 h
    /// without food are for the breeder.
    fn fed(mut script: Scenario) -> Scenario {
        script.food(1, 22, 0, 80);
        script
    }

    fn level(script: &Scenario, day: i32, hour: i32, minute: i32) -> Option<Level> {
        level_of(&RULE, script, script.at(day, hour, minute))
    }

    /// The levels right after one, two and three feeds were noted as not given: 08:30, 15:30 and 22:30.
    fn levels(mut script: Scenario) -> [Option<Level>; 3] {
        [(8, Slot::Morning), (15, Slot::Midday), (22, Slot::Bedtime)].map(|(hour, slot)| {
            script.leave_out(2, hour, 30, slot, NOT_GIVEN);
            level(&script, 2, hour, 31)
        })
    }

    #[test]
    fn one_two_and_three_feeds_in_a_row() {
        let (watch, ring, vet) = (Level::Watch, Level::CallBreeder, Level::VetToday);
        assert_eq!(levels(fed(macaw())), [watch, ring, vet].map(Some));
        // up to 56 days a green-winged macaw grows: half of the 16 weeks at which weaning begins
        assert_eq!(levels(fed(aged(7))), [ring, vet, vet].map(Some));
    }

    #[test]
    fn a_feed_without_a_note_is_no_missed_feed() {
        let script = fed(macaw());
        for hour in [8, 15, 22] {
            assert_eq!(level(&script, 2, hour, 30), None);
        }
    }

    #[test]
    fn twelve_hours_are_for_the_breeder_and_a_day_is_for_the_vet() {
        let mut script = fed(macaw());
        script.leave_out(2, 8, 30, Slot::Morning, NOT_GIVEN);
        assert_eq!(level(&script, 2, 9, 59), Some(Level::Watch));
        assert_eq!(level(&script, 2, 10, 0), Some(Level::CallBreeder));
        assert_eq!(level(&script, 2, 21, 59), Some(Level::CallBreeder));
        assert_eq!(level(&script, 2, 22, 0), Some(Level::VetToday));
    }

    #[test]
    fn food_ends_the_row_and_a_taste_of_it_is_as_good_as_a_refusal() {
        let after = |rule, ml| {
            let mut script = fed(macaw());
            script.leave_out(2, 8, 30, Slot::Morning, NOT_GIVEN);
            script.food(2, 9, 0, ml);
            level_of(rule, &script, script.at(2, 9, 30))
        };
        // a quarter of 80 ml
        let both = [&RULE, &refused_feeds::RULE];
        assert_eq!(both.map(|rule| after(rule, 20)), [None, None]);
        assert_eq!(both.map(|rule| after(rule, 19)), [None, Some(Level::Watch)]);
    }

    #[test]
    fn a_refusal_does_not_end_the_row_and_counts_in_it_once_its_tries_are_over() {
        let mut script = fed(macaw());
        script.leave_out(2, 8, 30, Slot::Morning, NOT_GIVEN);
        script.note(2, 9, 0, Change::refused(Some(Slot::Midday)));
        assert_eq!(level(&script, 2, 9, 30), Some(Level::Watch));
        // three hours after the latest try none belongs to it
        assert_eq!(level(&script, 2, 12, 0), Some(Level::CallBreeder));
    }

    #[test]
    fn refusals_that_are_part_of_weaning_do_not_count_in_the_row() {
        let level = |weeks| {
            let mut script = aged(weeks);
            script.food(2, 3, 0, 80).weigh(2, 950);
            let (what, eaten) = (String::new(), SolidsEaten::Little);
            script.note(2, 7, 0, Change::SolidsSeen { what, eaten });
            script.leave_out(2, 8, 30, Slot::Morning, NOT_GIVEN);
            script.note(2, 9, 0, Change::refused(Some(Slot::Midday)));
            level_of(&RULE, &script, script.at(2, 12, 30))
        };
        assert_eq!(level(20), Some(Level::Watch));
        assert_eq!(level(12), Some(Level::CallBreeder));
    }

    #[test]
    fn a_feed_left_out_on_advice_is_not_missed_and_others_are() {
        let with = |why| {
            let mut script = fed(macaw());
            script.leave_out(2, 7, 0, Slot::Morning, why);
            level(&script, 2, 9, 0)
        };
        assert_eq!(with(WhyPassedOver::Advised), None);
        assert_eq!(with(WhyPassedOver::NotKnown), None);
        assert_eq!(with(WhyPassedOver::CropNotEmpty), Some(Level::Watch));
        assert_eq!(with(WhyPassedOver::NotFit), Some(Level::Watch));
        assert_eq!(with(WhyPassedOver::NotPossible), Some(Level::Watch));
    }
}

//! *Watches* for mornings without gain in a chick that should still be growing.
//!
//! *Limit* a day: watch; two days: call the breeder. A day is a civil day and at least 18 h.
//!
//! *Why* a growing chick gains every day; one that stands still is ill, cold or underfed.
//!
//! *Sources* no gain or a loss for more than two days in a row as a concern: Duerr & Gage 2020, p. 599.
//! One day: ours. Until when a chick counts as growing: ours, from the ages at which adult weight is
//! reached (6 to 8 weeks: same page; 8 to 11 weeks in large macaws: common practice). It ends while a
//! chick still gains about 1 % a day: later the scale's own 1 % makes two mornings without gain
//! common, one call in seven weeks of a made-up healthy chick.
//!
//! *Wrong when* the chick has reached its peak early and falls as it should.

use crate::domain::journal::chick::{Noted, Weighing};
use crate::domain::journal::entries::CropAtWeighing;
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, days, whole};
use crate::domain::weight::healthy::{self, GROWING_PCT, LATEST_GROWTH_DAYS};
use crate::domain::weight::readings;

/// A weighing counts for this long, minutes. Ours.
const SHOWN_MINUTES: i64 = 36 * 60;

/// Days without gain that are watched.
const WATCH_DAYS: usize = 1;
/// Days without gain that want a call.
const RING_DAYS: usize = 2;

/// The rule.
pub const RULE: Rule = Rule {
    name: "growth-stalled",
    limits: &[
        Limit::new(Level::Watch, Value::Pct(whole(GROWING_PCT))),
        Limit::new(Level::Watch, days(LATEST_GROWTH_DAYS)),
        Limit::new(Level::Watch, Value::Count(WATCH_DAYS)),
        Limit::new(Level::CallBreeder, Value::Count(RING_DAYS)),
    ],
    standing: Standing::Published,
    source: "two days: Duerr & Gage 2020, p. 599; one day and the age up to which it counts: our own",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let (now, chick) = (facts.now, facts.chick);
    let Some(latest) = readings::latest_empty(now, chick) else {
        return Vec::new();
    };
    let species = chick.plan.species;
    let is_young = healthy::is_growing(chick, latest.lived().day);
    let is_growing = is_young
        && latest.what.weight < species.profile().adult.value
        && chick.dropped_slots(now).is_empty();
    if !is_growing || now.minutes_since(latest.at) > SHOWN_MINUTES {
        return Vec::new();
    }
    let stalled = chick
        .weighings
        .iter()
        .rev()
        .filter(|earlier| earlier.what.crop == CropAtWeighing::Empty && earlier.at < latest.at)
        .take_while(|earlier| earlier.what.weight >= latest.what.weight)
        .last()
        .map_or(0, |earlier| days_between(earlier, latest));
    let stalled = usize::try_from(stalled).unwrap_or_default();
    let (level, limit, standing) = match stalled {
        ..WATCH_DAYS => return Vec::new(),
        WATCH_DAYS..RING_DAYS => (Level::Watch, WATCH_DAYS, Standing::Ours),
        RING_DAYS.. => (Level::CallBreeder, RING_DAYS, Standing::Published),
    };
    vec![Finding {
        rule: RuleId::GrowthStalled,
        level,
        value: Value::Count(stalled),
        limit: Value::Count(limit),
        standing,
    }]
}

/// Days between two weighings: civil days, each with 18 h at least.
fn days_between(earlier: &Noted<Weighing>, later: &Noted<Weighing>) -> i64 {
    let civil = i64::from(later.lived().day.since(earlier.lived().day));
    let full = (later.at.minutes_since(earlier.at) + 6 * 60) / (24 * 60);
    civil.min(full)
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::Change;
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::quantity::units::Grams;
    use crate::domain::warnings::rules::growth_stalled::*;
    use crate::domain::warnings::rules::trial::{aged, level_of};

    fn weighed(grams: i32, crop: CropAtWeighing) -> Change {
        let weight = Grams::whole(grams);
        Change::Weighed { weight, crop }
    }

    fn level(script: &Scenario, day: i32) -> Option<Level> {
        level_of(&RULE, script, script.at(day, 8, 0))
    }

    #[test]
    fn a_growing_chick_may_not_stand_still_for_two_days() {
        let mut script = aged(7);
        script.weigh(1, 800).weigh(2, 830);
        assert_eq!(level(&script, 2), None);
        script.weigh(3, 830);
        assert_eq!(level(&script, 3), Some(Level::Watch));
        script.weigh(4, 829);
        assert_eq!(level(&script, 4), Some(Level::CallBreeder));
        script.weigh(5, 828);
        assert_eq!(level(&script, 5), Some(Level::CallBreeder));
        script.weigh(6, 831);
        assert_eq!(level(&script, 6), None);
    }

    #[test]
    fn two_weighings_of_one_night_are_no_day() {
        let mut script = aged(7);
        let evening = weighed(830, CropAtWeighing::Empty);
        script.note(1, 20, 0, evening).weigh(2, 825);
        assert_eq!(level(&script, 2), None);
    }

    #[test]
    fn a_chick_past_its_growth_may_stand_still() {
        // half of 16 weeks are 56 days; day 3 is day 55 or 56
        let stalled = |hatched_before: i32| {
            let mut plan = crate::domain::warnings::rules::trial::plan();
            plan.hatched =
                Some(crate::domain::warnings::rules::trial::day_zero().plus(-hatched_before));
            let mut script = crate::domain::warnings::rules::trial::with_plan(plan);
            script.weigh(1, 900).weigh(2, 900).weigh(3, 900);
            level(&script, 3)
        };
        assert_eq!(stalled(52), Some(Level::CallBreeder));
        assert_eq!(stalled(53), None);
    }

    #[test]
    fn a_chick_at_adult_weight_or_with_a_feed_dropped_may_stand_still() {
        // mean adult mass 1,214 g (Dunning 2008)
        let mut script = aged(7);
        script.weigh(1, 1_214).weigh(2, 1_214);
        assert_eq!(level(&script, 2), None);
        script.weigh(3, 1_213);
        assert_eq!(level(&script, 3), Some(Level::CallBreeder));
        let slot = Slot::Midday;
        let by_breeder = true;
        script.note(3, 7, 0, Change::FeedDropped { slot, by_breeder });
        assert_eq!(level(&script, 3), None);
    }

    #[test]
    fn a_reading_with_food_in_the_crop_is_no_earlier_weight() {
        let mut script = aged(7);
        script.weigh(1, 800).weigh(3, 825);
        script.note(2, 12, 0, weighed(900, CropAtWeighing::AfterFeed));
        assert_eq!(level(&script, 3), None);
    }

    #[test]
    fn eighteen_hours_from_one_day_to_the_next_are_a_day() {
        // the second weighing is on day 2 at 06:45
        let level_from = |minute| {
            let mut script = aged(7);
            let first = weighed(830, CropAtWeighing::Empty);
            script.note(1, 12, minute, first).weigh(2, 830);
            level(&script, 2)
        };
        assert_eq!(level_from(45), Some(Level::Watch));
        assert_eq!(level_from(46), None);
    }

    #[test]
    fn it_is_told_for_a_day_and_a_half() {
        let mut script = aged(7);
        script.weigh(1, 830).weigh(2, 830);
        let level = |minute| level_of(&RULE, &script, script.at(3, 18, minute));
        assert_eq!(level(45), Some(Level::Watch));
        assert_eq!(level(46), None);
    }
}

//! *Watches* the time between sittings that put food into the chick, over the last 12 h.
//!
//! *Limit* the gap that the schedule keeps: 4 h by day or three quarters of a shorter plan's own
//! gap, 6 h over the night. Watch below it; below half of it: call the breeder.
//!
//! *Why* food on top of food stretches the crop and slows it.
//!
//! *Sources* feed when the crop is empty or nearly so, and 6 h off at night: avian pediatric nutrition
//! page of a US animal clinic; overfilling leads to stasis: Rivera 2008. The steps: ours.
//!
//! *Wrong when* a feed was split into parts more than an hour apart. Parts within an hour that together are
//! no more than a feed of the plan count as one. Less than a quarter of a feed does not count, nor do two
//! notes that may be of the same food, as long as nobody has said.

use crate::domain::feeding::planned::{DAY_GAP_MINUTES, NIGHT_GAP_MINUTES};
use crate::domain::feeding::scheduled::ScheduledFeed;
use crate::domain::feeding::sittings::{Sitting, sittings};
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, minutes_finding, whole};

/// The finding is shown for this long after the second feed, minutes. Ours.
const SHOWN_MINUTES: i64 = 12 * 60;

/// Part of the schedule's gap below which the breeder is rung, per cent.
const RING_PCT: i32 = 50;

/// Food that goes in within this time stretches the crop together, minutes. Ours.
pub const PARTS_MINUTES: i64 = 60;

/// The rule.
pub const RULE: Rule = Rule {
    name: "gap-too-short",
    limits: &[
        Limit::new(Level::Watch, Value::Minutes(DAY_GAP_MINUTES)),
        Limit::new(Level::Watch, Value::Minutes(NIGHT_GAP_MINUTES)),
        Limit::new(Level::CallBreeder, Value::Pct(whole(RING_PCT))),
    ],
    standing: Standing::Ours,
    source: "6 h at night: clinic page on avian pediatric nutrition; stasis from overfilling: Rivera 2008; the steps: our own",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let (now, chick) = (facts.now, facts.chick);
    let least = chick
        .feeds_in_force(now)
        .into_iter()
        .map(|feed| feed.volume)
        .min();
    let mut given = sittings(chick, now.plus_minutes(-2 * SHOWN_MINUTES), now);
    given.retain(|sitting| least.is_none_or(|least| sitting.is_feed(least)));
    let pairs = given.iter().zip(given.iter().skip(1));
    pairs
        .filter(|(_, latest)| now.minutes_since(latest.at) <= SHOWN_MINUTES)
        .filter_map(|(before, latest)| short_gap(facts, before, latest))
        .max_by_key(|finding| finding.level)
        .into_iter()
        .collect()
}

fn short_gap(facts: &Facts<'_>, before: &Sitting, latest: &Sitting) -> Option<Finding> {
    let holds = |feed: &ScheduledFeed, part: &Sitting| {
        let own = feed.sitting();
        own.is_some_and(|own| part.notes.iter().all(|note| own.notes.contains(note)))
    };
    let own = facts.feeds.iter().find(|feed| holds(feed, latest));
    // A named try at the same feed.
    if before.is_little() && own.is_some_and(|own| holds(own, before)) {
        return None;
    }
    let own = own.map(|feed| feed.gap_minutes);
    // Extra food keeps at least the shortest gap there is.
    let shortest = facts.feeds.iter().map(|feed| feed.gap_minutes);
    let wanted = own.or(shortest.filter(|gap| *gap > 0).min())?;
    let gap = latest.fed_from?.minutes_since(before.food_at?);
    let largest = facts
        .chick
        .plan
        .feeds
        .iter()
        .map(|feed| feed.volume.tenths());
    let together = before.taken.tenths() + latest.taken.tenths();
    let is_one_feed = gap <= PARTS_MINUTES && largest.max().is_some_and(|feed| together <= feed);
    if is_one_feed || gap >= wanted {
        return None;
    }
    let far_too_short = wanted * i64::from(RING_PCT) / 100;
    let (level, limit) = if gap < far_too_short {
        (Level::CallBreeder, far_too_short)
    } else {
        (Level::Watch, wanted)
    };
    let rule = RuleId::GapTooShort;
    Some(minutes_finding(rule, level, gap, limit, Standing::Ours))
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, SameFoodAnswer};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::warnings::rules::gap_too_short::*;
    use crate::domain::warnings::rules::trial::{found, level_of, macaw};

    /// Morning feed on day 1 at 09:00, midday feed at the given time, seen at 18:00.
    fn by_day(hour: i32, minute: i32) -> Option<Level> {
        let mut script = macaw();
        script.feed(1, 9, 0, Slot::Morning, 80);
        script.feed(1, hour, minute, Slot::Midday, 80);
        level_of(&RULE, &script, script.at(1, 18, 0))
    }

    #[test]
    fn four_hours_by_day_and_half_of_that_for_a_call() {
        assert_eq!(by_day(13, 0), None);
        assert_eq!(by_day(12, 59), Some(Level::Watch));
        assert_eq!(by_day(11, 0), Some(Level::Watch));
        assert_eq!(by_day(10, 59), Some(Level::CallBreeder));
    }

    #[test]
    fn six_hours_over_the_night() {
        let by_night = |hour, minute| {
            let mut script = macaw();
            script.feed(1, 23, 0, Slot::Bedtime, 80);
            script.feed(2, hour, minute, Slot::Morning, 80);
            level_of(&RULE, &script, script.at(2, 8, 0))
        };
        assert_eq!(by_night(5, 0), None);
        assert_eq!(by_night(4, 59), Some(Level::Watch));
    }

    #[test]
    fn a_later_feed_does_not_hide_an_earlier_short_gap() {
        let mut script = macaw();
        script.feed(1, 9, 0, Slot::Morning, 80);
        script.feed(1, 10, 30, Slot::Midday, 80);
        script.feed(1, 20, 0, Slot::Bedtime, 80);
        let level = |hour, minute| level_of(&RULE, &script, script.at(1, hour, minute));
        assert_eq!(level(22, 30), Some(Level::CallBreeder));
        assert_eq!(level(22, 31), None);
    }

    #[test]
    fn two_parts_of_one_feed_are_one_feed_and_a_double_feed_is_not() {
        let parts = |minutes, ml| {
            let mut script: Scenario = macaw();
            script.feed(1, 7, 0, Slot::Morning, ml);
            script.feed(1, 7, minutes, Slot::Morning, ml);
            level_of(&RULE, &script, script.at(1, 9, 0))
        };
        // the plan's feed is 80 ml
        assert_eq!(parts(60, 40), None);
        assert_eq!(parts(61, 40), Some(Level::CallBreeder));
        assert_eq!(parts(46, 41), Some(Level::CallBreeder));
        assert_eq!(parts(46, 80), Some(Level::CallBreeder));
    }

    #[test]
    fn two_notes_that_may_be_of_one_feed_are_judged_once_somebody_has_said() {
        let level = |answer: Option<SameFoodAnswer>| {
            let mut script: Scenario = macaw();
            script
                .food(1, 7, 0, 80)
                .by("Ana")
                .food(1, 7, 40, 80)
                .by("Ben");
            let notes = script.chick().unwrap().feeds;
            let notes = notes.iter().map(|note| note.id).collect();
            if let Some(answer) = answer {
                script.note(1, 8, 0, Change::SameFood { notes, answer });
            }
            level_of(&RULE, &script, script.at(1, 9, 0))
        };
        assert_eq!(level(None), None);
        assert_eq!(level(Some(SameFoodAnswer::NotedTwice)), None);
        assert_eq!(
            level(Some(SameFoodAnswer::TwoFeeds)),
            Some(Level::CallBreeder)
        );
    }

    #[test]
    fn a_feed_that_was_refused_is_no_feed() {
        let mut script = macaw();
        script.feed(1, 9, 0, Slot::Morning, 80);
        let slot = Slot::Midday;
        script.note(1, 12, 0, Change::refused(Some(slot)));
        script.feed(1, 13, 30, Slot::Midday, 80);
        assert_eq!(level_of(&RULE, &script, script.at(1, 18, 0)), None);
    }

    #[test]
    fn half_of_the_gap_is_the_limit_of_the_call() {
        let limit_at = |hour, minute| {
            let mut script = macaw();
            script.feed(1, 9, 0, Slot::Morning, 80);
            script.feed(1, hour, minute, Slot::Midday, 80);
            found(&RULE, &script, script.at(1, 18, 0))[0].limit
        };
        assert_eq!(limit_at(10, 59), Value::Minutes(120));
        assert_eq!(limit_at(12, 59), Value::Minutes(240));
    }
}

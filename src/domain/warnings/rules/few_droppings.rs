//! *Watches* how many droppings lay on the papers of the day, against this bird's own usual number.
//!
//! *Limit* half of its own median or less in one day: call the breeder. None at all: vet today, as no
//! dropping for 8 waking hours is. Silent about half until three days were counted.
//!
//! *Why* fewer droppings tell that less goes in or passes, before the weight does. Birds differ too
//! much for one number: macaws make 15 to 50 a day.
//!
//! *Sources* waking hours only, as parrots hold at night: Duerr & Gage 2020, p. 588. None for 8 waking
//! hours: common practice. Half of the bird's own number and the three days in which it is learned: ours, as
//! pages on macaws disagree (15 to 20, 40 to 50). That a day is whole from 18:00 on and its paper counted
//! before 12:00 is of the day before, the 28 days of which the median is taken and the 36 h for which a count
//! stands: ours.
//!
//! *Wrong when* the paper was changed in between and not counted, or two people noted the same count. By
//! chance alone (Poisson) a bird of 20 a day makes 10 or fewer on one day in 93.

use std::collections::BTreeMap;

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::Paper;
use crate::domain::quantity::evidence::Standing;
use crate::domain::statistics::robust::median;
use crate::domain::time::moment::{Day, Moment, WallTime};
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule};

/// Few from this part of the usual number down.
const FEW_TIMES: f64 = 0.5;
/// Fewest counted days that make a usual number.
const USUAL_DAYS: usize = 3;
/// How far back days count for the usual number. Ours: what a chick eats changes while it is weaned.
const WINDOW_DAYS: i32 = 28;
/// A day counted before this time is not over. Ours.
const WHOLE_FROM: WallTime = WallTime::from_hour(18);
/// A count stands for this long without a later one, minutes. Ours.
const SHOWN_MINUTES: i64 = 36 * 60;

/// The rule.
pub const RULE: Rule = Rule {
    name: "few-droppings",
    limits: &[
        Limit::new(Level::CallBreeder, Value::Times(FEW_TIMES)),
        Limit::new(Level::CallBreeder, Value::Count(USUAL_DAYS)),
        Limit::new(Level::VetToday, Value::Seen),
    ],
    standing: Standing::Ours,
    source: "no droppings at night: Duerr & Gage 2020, p. 588; none for 8 waking hours: common practice; half, and the days it is learned from: our own",
    check,
};

/// The droppings of a day: how many, and when the last of them were counted.
#[derive(Debug, Clone, Copy)]
struct Counted {
    count: u16,
    at: Moment,
    is_whole: bool,
}

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let (now, chick) = (facts.now, facts.chick);
    latest(now, chick)
        .and_then(|(day, counted)| found(now, chick, day, counted))
        .into_iter()
        .collect()
}

fn found(now: Moment, chick: &Chick, day: Day, counted: Counted) -> Option<Finding> {
    let finding = |level, value, limit, standing| Finding {
        rule: RuleId::FewDroppings,
        level,
        value,
        limit,
        standing,
    };
    if counted.count == 0 {
        let none = finding(
            Level::VetToday,
            Value::Seen,
            Value::Seen,
            Standing::CommonPractice,
        );
        return (!was_seen_since(now, chick, counted.at)).then_some(none);
    }
    let times = f64::from(counted.count) / usual(now, chick, day)?;
    let (value, limit) = (Value::Times(times), Value::Times(FEW_TIMES));
    let is_few = times <= FEW_TIMES + 1e-9;
    is_few.then(|| finding(Level::CallBreeder, value, limit, Standing::Ours))
}

/// Whether a dropping was looked at or counted after `from`.
fn was_seen_since(now: Moment, chick: &Chick, from: Moment) -> bool {
    let looks = chick.droppings.iter().map(|look| look.at);
    let counts = chick
        .droppings_counts
        .iter()
        .filter(|one| one.what.count > 0);
    looks
        .chain(counts.map(|one| one.at))
        .any(|at| from < at && at <= now)
}

/// The latest whole day, while its count stands.
fn latest(now: Moment, chick: &Chick) -> Option<(Day, Counted)> {
    let (day, counted) = whole_days(now, chick).pop()?;
    (now.minutes_since(counted.at) <= SHOWN_MINUTES).then_some((day, counted))
}

/// Every day whose papers were counted in the evening or the morning after, papers changed in between added up.
fn whole_days(now: Moment, chick: &Chick) -> Vec<(Day, Counted)> {
    let mut days: BTreeMap<Day, Counted> = BTreeMap::new();
    let counts = chick.droppings_counts.iter().filter(|one| one.at <= now);
    for one in counts.filter(|one| one.what.paper == Paper::Day) {
        let lived = one.lived();
        let is_morning = lived.time < Paper::MORNING_ENDS;
        let of_day = lived.day.plus(-i32::from(is_morning));
        let day = days.entry(of_day).or_insert(Counted {
            count: 0,
            at: one.at,
            is_whole: false,
        });
        day.count = day.count.saturating_add(u16::from(one.what.count));
        day.at = one.at;
        day.is_whole = is_morning || lived.time >= WHOLE_FROM;
    }
    let whole = days.into_iter().filter(|(_, counted)| counted.is_whole);
    whole.collect()
}

/// This bird's own usual number of droppings in a day, as the latest whole day is held against it; `None`
/// while too few days were counted.
pub fn usual_now(now: Moment, chick: &Chick) -> Option<f64> {
    let (day, _) = whole_days(now, chick).pop()?;
    usual(now, chick, day)
}

/// The median of the whole days counted in the [`WINDOW_DAYS`] before `day`; `None` with fewer than
/// [`USUAL_DAYS`].
fn usual(now: Moment, chick: &Chick, day: Day) -> Option<f64> {
    let days = whole_days(now, chick);
    let window = day.plus(-WINDOW_DAYS)..day;
    let before = days.iter().filter(|(day, _)| window.contains(day));
    let counts: Vec<f64> = before
        .map(|(_, counted)| f64::from(counted.count))
        .collect();
    median(&counts).filter(|_| counts.len() >= USUAL_DAYS)
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, Droppings};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::warnings::rules::few_droppings::*;
    use crate::domain::warnings::rules::trial::{droppings, level_of, macaw};

    fn count(paper: Paper, count: u8) -> Change {
        Change::DroppingsCounted { paper, count }
    }

    /// So many days of these counts at 21:00, from day 1 on.
    fn days(counts: &[u8]) -> Scenario {
        let mut script = macaw();
        for (day, number) in (1..).zip(counts) {
            script.note(day, 21, 0, count(Paper::Day, *number));
        }
        script
    }

    fn level(script: &Scenario, day: i32, hour: i32) -> Option<Level> {
        level_of(&RULE, script, script.at(day, hour, 5))
    }

    #[test]
    fn half_of_its_own_median_is_a_call() {
        // The median of 18, 20 and 40 is 20, half of it 10.
        for (number, found) in [
            (9, Some(Level::CallBreeder)),
            (10, Some(Level::CallBreeder)),
            (11, None),
            (60, None),
        ] {
            let script = days(&[18, 40, 20, number]);
            assert_eq!(level(&script, 4, 21), found, "{number}");
        }
        // Of four days, 18, 20, 23 and 40, it is 21.5 and half of it 10.75.
        let level_of_fifth = |number| level(&days(&[18, 40, 20, 23, number]), 5, 21);
        assert_eq!(level_of_fifth(10), Some(Level::CallBreeder));
        assert_eq!(level_of_fifth(11), None);
    }

    #[test]
    fn two_days_make_no_usual_number() {
        assert_eq!(level(&days(&[20, 20, 5]), 3, 21), None);
        assert_eq!(
            level(&days(&[20, 20, 20, 5]), 4, 21),
            Some(Level::CallBreeder)
        );
    }

    #[test]
    fn the_nights_paper_is_no_part_of_the_day() {
        let mut script = days(&[20, 20, 20]);
        // Parrots hold at night.
        script.note(4, 7, 0, count(Paper::Night, 2));
        assert_eq!(level(&script, 4, 8), None);
        script.note(4, 21, 0, count(Paper::Day, 10));
        assert_eq!(level(&script, 4, 21), Some(Level::CallBreeder));
    }

    #[test]
    fn a_day_is_judged_from_six_in_the_evening_with_all_its_papers() {
        let mut script = days(&[20, 20, 20]);
        script.note(4, 17, 59, count(Paper::Day, 8));
        assert_eq!(level(&script, 4, 17), None);
        assert_eq!(level(&script, 4, 18), None);
        let mut early = script.clone();
        early.note(4, 18, 0, count(Paper::Day, 2));
        assert_eq!(level(&early, 4, 18), Some(Level::CallBreeder));
        script.note(4, 18, 0, count(Paper::Day, 3));
        assert_eq!(level(&script, 4, 18), None);
    }

    #[test]
    fn a_bedtime_after_midnight_is_of_the_day_before() {
        let mut script = days(&[20, 20, 20]);
        script.note(5, 0, 0, count(Paper::Day, 9));
        assert_eq!(level(&script, 5, 0), Some(Level::CallBreeder));
        script.note(5, 21, 0, count(Paper::Day, 20));
        assert_eq!(level(&script, 5, 21), None);
    }

    /// Who forgot at bedtime counts the day's paper in the morning, and it is judged then.
    #[test]
    fn the_days_paper_counted_only_the_next_morning_is_of_the_day_before() {
        let mut script = days(&[20, 20, 20]);
        script.note(5, 7, 0, count(Paper::Day, 10));
        assert_eq!(level(&script, 5, 7), Some(Level::CallBreeder));
        script.note(5, 21, 0, count(Paper::Day, 11));
        assert_eq!(level(&script, 5, 21), None);
        // From 12:00 on it is of the day itself, which is not over.
        let level_at = |hour, minute| {
            let mut script = days(&[20, 20, 20]);
            script.note(5, hour, minute, count(Paper::Day, 10));
            level_of(&RULE, &script, script.at(5, 12, 5))
        };
        assert_eq!(level_at(11, 59), Some(Level::CallBreeder));
        assert_eq!(level_at(12, 0), None);
    }

    #[test]
    fn days_of_more_than_four_weeks_ago_tell_nothing() {
        let script = |day| {
            let mut script = days(&[20, 20, 20]);
            script.note(day, 21, 0, count(Paper::Day, 5));
            script
        };
        // Day 29 less 28 days is day 1.
        assert_eq!(level(&script(29), 29, 21), Some(Level::CallBreeder));
        assert_eq!(level(&script(30), 30, 21), None);
    }

    #[test]
    fn a_count_stands_for_a_day_and_a_half() {
        let script = days(&[20, 20, 20, 5]);
        let level = |minute| level_of(&RULE, &script, script.at(6, 9, minute));
        assert_eq!(level(0), Some(Level::CallBreeder));
        assert_eq!(level(1), None);
    }

    #[test]
    fn none_in_a_whole_day_is_for_the_vet_until_one_is_seen() {
        let mut script = days(&[0]);
        assert_eq!(level(&script, 1, 21), Some(Level::VetToday));
        script.note(2, 7, 0, count(Paper::Night, 0));
        assert_eq!(level(&script, 2, 7), Some(Level::VetToday));
        let mut counted = script.clone();
        counted.note(2, 8, 0, count(Paper::Night, 1));
        assert_eq!(level(&counted, 2, 8), None);
        script.note(2, 8, 0, droppings(Droppings::Normal));
        assert_eq!(level(&script, 2, 8), None);
        // Before the evening it is no day.
        let mut noon = macaw();
        noon.note(1, 12, 0, count(Paper::Day, 0));
        assert_eq!(level(&noon, 1, 12), None);
    }
}

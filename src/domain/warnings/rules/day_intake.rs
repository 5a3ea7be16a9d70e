//! *Watches* how much of a day's food was taken.
//!
//! *Limit* below 70 % of what was asked of this home: watch; below 50 %: call the breeder; neither in a chick
//! that is being weaned and was seen to swallow solids that day. Less than 12 % of its weight on each of two days,
//! and no solids swallowed: call the breeder. Only days on which every feed is answered count, the latest of today and
//! yesterday.
//!
//! *Why* feeds of a few millilitres look like feeding, note by note. An ill chick eats less before it
//! weighs less.
//!
//! *Sources* 12 %: worked out; a macaw of 900 g needs about 108 kcal a day to hold its weight, 113 ml of a mix
//! with 25 % powder at 0.956 kcal/ml. The shares of the day, and that solids excuse them: ours.
//!
//! *Wrong when* food was taken and not noted, or solids eaten and not noted.

use crate::domain::feeding::feeding_streak;
use crate::domain::feeding::scheduled::{FeedState, ScheduledFeed};
use crate::domain::journal::entries::WhyPassedOver;
use crate::domain::quantity::evidence::Standing;
use crate::domain::time::moment::Day;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, days, pct_finding};

/// Share of what was asked for below which a day is watched, per cent. Ours.
const WATCH_PCT: f64 = 70.0;
/// Share of what was asked for below which somebody is called, per cent. Ours.
const RING_PCT: f64 = 50.0;
/// Food of a day below which formula alone cannot hold the weight, per cent of it; 1 ml weighs 1 g.
pub const HOLDING_PCT: f64 = 12.0;
/// Days in a row below that which want a call.
const HOLDING_DAYS: i32 = 2;

/// The rule.
pub const RULE: Rule = Rule {
    name: "day-intake",
    limits: &[
        Limit::new(Level::Watch, Value::Pct(WATCH_PCT)),
        Limit::new(Level::CallBreeder, Value::Pct(RING_PCT)),
        Limit::new(Level::CallBreeder, Value::Pct(HOLDING_PCT)),
        Limit::new(Level::CallBreeder, days(HOLDING_DAYS)),
    ],
    standing: Standing::Ours,
    source: "12 % of the weight is what formula alone needs to hold it: worked out; the rest: our own",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let today = facts.zone.lived(facts.now).day;
    let Some((day, taken, asked)) = latest_day(facts.feeds, today) else {
        return Vec::new();
    };
    let share = f64::from(taken) * 100.0 / f64::from(asked);
    let is_weaning = feeding_streak::is_weaning(facts.now, day, facts.chick);
    let level = if is_weaning && has_eaten_solids(facts, day) {
        None
    } else if share < RING_PCT {
        Some((Level::CallBreeder, share, RING_PCT))
    } else {
        // A full day of small feeds holds no weight either.
        held(facts, day)
            .map(|of_weight| (Level::CallBreeder, of_weight, HOLDING_PCT))
            .or((share < WATCH_PCT).then_some((Level::Watch, share, WATCH_PCT)))
    };
    let (rule, standing) = (RuleId::DayIntake, Standing::Ours);
    level
        .map(|(level, pct, limit)| pct_finding(rule, level, pct, limit, standing))
        .into_iter()
        .collect()
}

/// The latest of today and yesterday on which every feed is answered, with what was taken and what was asked
/// for, tenths of a millilitre.
pub fn latest_day(feeds: &[ScheduledFeed], today: Day) -> Option<(Day, i32, i32)> {
    let mut days = [today, today.plus(-1)].into_iter();
    days.find_map(|day| of_day(feeds, day).map(|(taken, asked)| (day, taken, asked)))
}

/// What was taken and what was asked for on a day, tenths of a millilitre; `None` while a feed of it is not
/// answered, or when none was asked for.
fn of_day(feeds: &[ScheduledFeed], day: Day) -> Option<(i32, i32)> {
    let (mut taken, mut asked) = (0, 0);
    for feed in feeds.iter().filter(|feed| feed.day == day) {
        let of_feed = match &feed.state {
            FeedState::Done(sitting) | FeedState::Refused(sitting) => sitting.taken.tenths(),
            FeedState::OnTheWay
            | FeedState::PutOff
            | FeedState::LeftOut(WhyPassedOver::Advised) => continue,
            FeedState::LeftOut(
                WhyPassedOver::CropNotEmpty | WhyPassedOver::NotFit | WhyPassedOver::NotPossible,
            ) => 0,
            FeedState::LeftOut(WhyPassedOver::NotKnown)
            | FeedState::Upcoming
            | FeedState::Due
            | FeedState::Late
            | FeedState::TryAgain(_)
            | FeedState::Unanswered => return None,
        };
        taken += of_feed;
        asked += feed.volume.tenths();
    }
    (asked > 0).then_some((taken, asked))
}

/// The larger share of the weight that was taken on the last days up to `day`, when it was too little on each of
/// them and no solids were seen to be swallowed.
fn held(facts: &Facts<'_>, day: Day) -> Option<f64> {
    let weight = facts.trend.latest?.sitting.weight();
    let mut most: f64 = 0.0;
    for back in 0..HOLDING_DAYS {
        let day = day.plus(-back);
        let (taken, _) = of_day(facts.feeds, day)?;
        most = most.max(f64::from(taken) * 100.0 / f64::from(weight.tenths().max(1)));
        if has_eaten_solids(facts, day) {
            return None;
        }
    }
    (most < HOLDING_PCT - 1e-9).then_some(most)
}

fn has_eaten_solids(facts: &Facts<'_>, day: Day) -> bool {
    let mut looks = facts.chick.solids.iter();
    looks.any(|look| {
        look.at <= facts.now && look.lived().day == day && look.what.eaten.is_swallowed()
    })
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, SolidsEaten};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::quantity::units::Millilitres;
    use crate::domain::warnings::rules::day_intake::*;
    use crate::domain::warnings::rules::trial::{aged, found, level_of, plan, with_plan};

    const DAY: [(i32, Slot); 3] = [(7, Slot::Morning), (14, Slot::Midday), (21, Slot::Bedtime)];

    fn solids(eaten: SolidsEaten) -> Change {
        let what = String::new();
        Change::SolidsSeen { what, eaten }
    }

    /// A day of three feeds with so many millilitres each.
    fn fed(script: &mut Scenario, day: i32, each: [i32; 3]) {
        for ((hour, slot), ml) in DAY.into_iter().zip(each) {
            script.feed(day, hour, 0, slot, ml);
        }
    }

    #[test]
    fn a_day_is_watched_below_seventy_per_cent_and_a_call_below_fifty() {
        // of 240 ml: 70 % are 168 ml, 50 % are 120 ml
        let level = |each| {
            let mut script = with_plan(plan());
            fed(&mut script, 1, each);
            level_of(&RULE, &script, script.at(1, 22, 0))
        };
        assert_eq!(level([56, 56, 57]), None);
        assert_eq!(level([56, 56, 56]), None);
        assert_eq!(level([56, 56, 55]), Some(Level::Watch));
        assert_eq!(level([40, 40, 40]), Some(Level::Watch));
        assert_eq!(level([40, 40, 39]), Some(Level::CallBreeder));
    }

    #[test]
    fn a_day_counts_only_once_every_feed_is_answered() {
        let mut script = with_plan(plan());
        script.feed(1, 7, 0, Slot::Morning, 30);
        script.feed(1, 14, 0, Slot::Midday, 30);
        assert_eq!(level_of(&RULE, &script, script.at(1, 15, 0)), None);
        script.feed(1, 21, 0, Slot::Bedtime, 30);
        let level = |day, hour| level_of(&RULE, &script, script.at(day, hour, 0));
        assert_eq!(level(1, 22), Some(Level::CallBreeder));
        assert_eq!(level(2, 6), Some(Level::CallBreeder));
        assert_eq!(level(3, 6), None);
    }

    #[test]
    fn solids_excuse_a_chick_of_weaning_age_and_no_younger_one() {
        let level = |weeks, eaten| {
            let mut script = aged(weeks);
            fed(&mut script, 1, [39, 40, 40]);
            script.note(1, 16, 0, solids(eaten));
            level_of(&RULE, &script, script.at(1, 22, 0))
        };
        assert_eq!(level(20, SolidsEaten::Little), None);
        assert_eq!(level(20, SolidsEaten::Played), Some(Level::CallBreeder));
        assert_eq!(level(10, SolidsEaten::Meal), Some(Level::CallBreeder));
    }

    #[test]
    fn two_days_below_twelve_per_cent_of_the_weight_without_solids_are_a_call() {
        // 1,000 g: 12 % are 120 ml
        let level = |first: [i32; 3], second: [i32; 3], seen: Option<SolidsEaten>| {
            let mut plan = plan();
            for feed in &mut plan.feeds {
                feed.volume = Millilitres::whole(40);
            }
            let mut script = with_plan(plan);
            script.weigh(1, 1_000).weigh(2, 1_000);
            fed(&mut script, 1, first);
            fed(&mut script, 2, second);
            if let Some(eaten) = seen {
                script.note(1, 16, 0, solids(eaten));
            }
            level_of(&RULE, &script, script.at(2, 22, 0))
        };
        let (enough, less) = ([40, 40, 40], [40, 40, 39]);
        assert_eq!(level(less, less, None), Some(Level::CallBreeder));
        assert_eq!(level(enough, less, None), None);
        assert_eq!(level(less, enough, None), None);
        assert_eq!(level(less, less, Some(SolidsEaten::Little)), None);
        let played = Some(SolidsEaten::Played);
        assert_eq!(level(less, less, played), Some(Level::CallBreeder));
    }

    #[test]
    fn five_millilitres_a_feed_do_not_look_like_feeding() {
        let mut script = with_plan(plan());
        fed(&mut script, 1, [5, 5, 5]);
        let now = script.at(2, 1, 0);
        assert!(
            found(&RULE, &script, now)
                .iter()
                .all(|found| found.level.is_call())
        );
    }
}

//! What must hold before a feed goes. All of it, or no feed goes; the bird's age is not in it.
//!
//! *Sources* of the list: common practice of the trade (three days refusing or taking less than half;
//! solids on three days; at least 90 % of the peak and no loss over 1 % a day over five days; normal
//! droppings; no move or illness for a week; one drop in five to seven days). How each is read from
//! what was noted: ours.

use crate::domain::journal::chick::{Chick, Noted};
use crate::domain::journal::signs::Sign;
use crate::domain::plan::care_plan::Slot;
use crate::domain::quantity::evidence::Standing;
use crate::domain::time::moment::{Day, Moment};
use crate::domain::warnings::level::Value;
use crate::domain::warnings::rules::{no_weighing, sign_seen};
use crate::domain::weaning::facts::{Answer, WeaningFacts, last_feed_change};
use crate::domain::weaning::three_days::{self, ThreeDays};
use crate::domain::weight::mornings::{self, Morning};
use crate::domain::weight::readings;

/// Least weight for a drop, per cent of the peak, unless it has come to a level week below a fat peak.
///
/// Source: a fall of about 10 % from the peak, Watchbird Nov/Dec 1999; Duerr & Gage 2020, p. 599.
pub const LEAST_PCT_OF_PEAK: f64 = 90.0;

/// Days without trouble before a drop. Common practice ("no move, illness, new home in the last 7
/// days"); that any sign counts but one
/// harmless return of food, and until it is noted as gone: ours.
pub const DAYS_WITHOUT_TROUBLE: i64 = 7;

/// Fewest days between two changes of the feeds, whatever the plan says. Common practice: one drop in
/// five to seven days.
pub const LEAST_WAITING_DAYS: i64 = 5;

/// One thing that must hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Criterion {
    /// The next feed was refused, or less than half of it taken, three days in a row.
    FeedUnwanted,
    /// Solids were swallowed three days in a row.
    SolidsEaten,
    /// The weight is near enough to its peak.
    WeightNearPeak,
    /// The weight does not fall faster than the limit.
    WeightSteady,
    /// Droppings were seen and as usual three days in a row.
    DroppingsNormal,
    /// No sign of trouble for a week.
    NoTrouble,
    /// The days to settle in are over.
    SettledIn,
    /// The days since the feeds last changed are over.
    Waited,
    /// Nobody is to be rung.
    NobodyToCall,
}

impl Criterion {
    /// Every criterion, in the order of the list on screen.
    pub const ALL: [Self; 9] = [
        Self::FeedUnwanted,
        Self::SolidsEaten,
        Self::WeightNearPeak,
        Self::WeightSteady,
        Self::DroppingsNormal,
        Self::NoTrouble,
        Self::SettledIn,
        Self::Waited,
        Self::NobodyToCall,
    ];

    /// Every criterion, the weightiest reason against a drop first. Ours.
    pub const BY_WEIGHT: [Self; 9] = [
        Self::NobodyToCall,
        Self::WeightNearPeak,
        Self::WeightSteady,
        Self::NoTrouble,
        Self::DroppingsNormal,
        Self::SettledIn,
        Self::Waited,
        Self::SolidsEaten,
        Self::FeedUnwanted,
    ];
}

/// One criterion, judged.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Check {
    /// Which one.
    pub criterion: Criterion,
    /// What was found: days as a count, a share or a slope in per cent; `None` when there is nothing
    /// to measure.
    pub value: Option<Value>,
    /// What it is held against, in the same unit.
    pub limit: Value,
    /// Whether it holds.
    pub answer: Answer,
    /// The first day on which it can hold; `None` when it does, or when no day can be named.
    pub met_from: Option<Day>,
    /// Standing of the limit.
    pub standing: Standing,
}

/// Every criterion for dropping `slot`, in the order of [`Criterion::ALL`].
pub fn checks(facts: &WeaningFacts<'_>, mornings: &[Morning], slot: Slot) -> Vec<Check> {
    let unwanted = three_days::feed_unwanted(facts, slot);
    let solids = three_days::solids_eaten(facts);
    let droppings = three_days::droppings_normal(facts);
    let common = Standing::CommonPractice;
    vec![
        of_three_days(Criterion::FeedUnwanted, unwanted, common),
        of_three_days(Criterion::SolidsEaten, solids, common),
        weight_near_peak(facts, mornings),
        weight_steady(facts, mornings),
        of_three_days(Criterion::DroppingsNormal, droppings, Standing::Ours),
        no_trouble(facts),
        settled_in(facts),
        waited(facts),
        nobody_to_ring(facts),
    ]
}

/// The criteria that are not met, the weightiest first; those answered no before those not known.
pub(crate) fn reasons(checks: &[Check]) -> Vec<Criterion> {
    let with_answer = |wanted: Answer| {
        Criterion::BY_WEIGHT.into_iter().filter(move |criterion| {
            checks
                .iter()
                .any(|check| check.criterion == *criterion && check.answer == wanted)
        })
    };
    with_answer(Answer::No)
        .chain(with_answer(Answer::NotEnoughData))
        .collect()
}

/// The first day on which every criterion can hold; `None` when one of them names no day.
pub(crate) fn earliest_day(checks: &[Check]) -> Option<Day> {
    let missing = checks.iter().filter(|check| check.answer != Answer::Yes);
    let days: Option<Vec<Day>> = missing.map(|check| check.met_from).collect();
    days?.into_iter().max()
}

fn of_three_days(criterion: Criterion, days: ThreeDays, standing: Standing) -> Check {
    let limit = usize::try_from(three_days::DAYS).unwrap_or_default();
    Check {
        criterion,
        value: Some(Value::Count(days.days_for)),
        limit: Value::Count(limit),
        answer: days.answer,
        met_from: days.met_from,
        standing,
    }
}

/// Whether an empty-crop weighing is recent enough to judge by: no older than the rule about missing
/// weighings allows.
fn is_weighed_lately(facts: &WeaningFacts<'_>) -> bool {
    readings::latest_empty(facts.now, facts.chick)
        .is_some_and(|latest| facts.now.minutes_since(latest.at) < no_weighing::WATCH_MINUTES)
}

fn weight_near_peak(facts: &WeaningFacts<'_>, mornings: &[Morning]) -> Check {
    let is_late = !is_weighed_lately(facts);
    let (answer, met_from) = match facts.pct_of_peak {
        None => (Answer::NotEnoughData, None),
        // A share written as 90 % is 90 % but for the float's last digits.
        Some(pct) if pct < LEAST_PCT_OF_PEAK - 1e-9 && !facts.has_come_to_a_level() => {
            (Answer::No, None)
        }
        Some(_) if is_late => {
            let next = mornings::next_weighing_day(mornings, facts.today());
            (Answer::NotEnoughData, Some(next))
        }
        Some(_) => (Answer::Yes, None),
    };
    Check {
        criterion: Criterion::WeightNearPeak,
        value: facts.pct_of_peak.map(Value::Pct),
        limit: Value::Pct(LEAST_PCT_OF_PEAK),
        answer,
        met_from,
        standing: Standing::Published,
    }
}

fn weight_steady(facts: &WeaningFacts<'_>, mornings: &[Morning]) -> Check {
    let today = facts.today();
    let slope = mornings::slope_pct_per_day(mornings, today);
    let answer = match slope {
        Some(slope) if !mornings::is_steady(slope) => Answer::No,
        Some(_) if is_weighed_lately(facts) => Answer::Yes,
        Some(_) | None => Answer::NotEnoughData,
    };
    let next = mornings::next_weighing_day(mornings, today);
    let ahead = match (answer, slope) {
        (Answer::Yes, _) => None,
        (Answer::NotEnoughData, Some(_)) => Some(1),
        (Answer::No, _) | (Answer::NotEnoughData, None) => {
            Some(mornings::steady_mornings_needed(mornings, today))
        }
    };
    Check {
        criterion: Criterion::WeightSteady,
        value: slope.map(Value::Pct),
        limit: Value::Pct(mornings::MOST_LOSS_PCT_PER_DAY),
        answer,
        met_from: ahead.map(|needed| next.plus(needed - 1)),
        standing: Standing::CommonPractice,
    }
}

/// A criterion that time alone meets: `days` whole days after `since`.
fn days_over(
    facts: &WeaningFacts<'_>,
    criterion: Criterion,
    since: Option<Moment>,
    days: i64,
    standing: Standing,
) -> Check {
    let end = since.map(|since| since.plus_minutes(days * 1_440));
    let met_from = end
        .filter(|end| facts.now < *end)
        .map(|end| facts.zone.lived(end).day);
    let passed = since.map(|since| facts.now.minutes_since(since).div_euclid(1_440).max(0));
    Check {
        criterion,
        value: passed.map(|passed| Value::Count(usize::try_from(passed).unwrap_or_default())),
        limit: Value::Count(usize::try_from(days).unwrap_or_default()),
        answer: if met_from.is_none() {
            Answer::Yes
        } else {
            Answer::No
        },
        met_from,
        standing,
    }
}

fn settled_in(facts: &WeaningFacts<'_>) -> Check {
    let days = i64::from(facts.chick.plan.settle_in_days);
    let home = Some(facts.chick.home_since());
    let standing = Standing::CommonPractice;
    days_over(facts, Criterion::SettledIn, home, days, standing)
}

/// The first day after the settle-in days; `None` when they are over.
pub(crate) fn settling_until(facts: &WeaningFacts<'_>) -> Option<Day> {
    settled_in(facts).met_from
}

fn no_trouble(facts: &WeaningFacts<'_>) -> Check {
    let chick = facts.chick;
    let signs = chick.signs.iter().filter(|seen| seen.at <= facts.now);
    let last = signs
        .filter(|seen| is_trouble(chick, seen))
        .map(|seen| {
            let gone = chick.signs_gone.get(&seen.what).copied();
            gone.filter(|gone| seen.at <= *gone && *gone <= facts.now)
                .unwrap_or(seen.at)
        })
        .max();
    days_over(
        facts,
        Criterion::NoTrouble,
        last,
        DAYS_WITHOUT_TROUBLE,
        Standing::Ours,
    )
}

/// Any sign but food that came back once just after a feed, which healthy chicks near their peak do: Groffen 2008.
fn is_trouble(chick: &Chick, seen: &Noted<Sign>) -> bool {
    seen.what != Sign::BroughtBackOnce || sign_seen::is_return_again(chick, seen)
}

fn waited(facts: &WeaningFacts<'_>) -> Check {
    let days = i64::from(facts.chick.plan.waiting_days).max(LEAST_WAITING_DAYS);
    let since = last_feed_change(facts.now, facts.chick);
    let standing = Standing::CommonPractice;
    days_over(facts, Criterion::Waited, since, days, standing)
}

fn nobody_to_ring(facts: &WeaningFacts<'_>) -> Check {
    let calls = facts
        .findings
        .iter()
        .filter(|finding| finding.level.is_call())
        .count()
        .max(usize::from(facts.level.is_call()));
    Check {
        criterion: Criterion::NobodyToCall,
        value: Some(Value::Count(calls)),
        limit: Value::Count(0),
        answer: if calls == 0 { Answer::Yes } else { Answer::No },
        met_from: None,
        standing: Standing::Ours,
    }
}

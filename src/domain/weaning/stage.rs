//! How far weaning has come.

use crate::domain::homecoming::life_stage;
use crate::domain::plan::care_plan::Slot;
use crate::domain::time::moment::Day;
use crate::domain::weaning::criteria::settling_until;
use crate::domain::weaning::facts::{Answer, WeaningFacts};
use crate::domain::weight::mornings::{self, Morning};

/// Days of weighing after a chick is weaned, four weeks. Common practice.
pub const WEIGH_ON_DAYS: i32 = 28;

/// How far weaning has come.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Stage {
    /// New in its home: no feed goes yet.
    SettlingIn {
        /// The first day after it.
        until: Day,
    },
    /// Every feed of the plan is given.
    FullPlan,
    /// Some feeds are dropped, more than one is left.
    Weaning {
        /// How many feeds are left.
        feeds_left: usize,
    },
    /// One feed is left.
    LastFeed {
        /// Which.
        slot: Slot,
    },
    /// No feed is left, and it is too early to call the chick weaned.
    NoFormula {
        /// The last day with formula, or on which the last feed was dropped.
        since: Day,
        /// Days since then.
        days: i32,
        /// Whether the weight is flat.
        weight: Flatness,
        /// Whether it was seen to drink.
        has_drunk: bool,
    },
    /// Weaned; to be weighed on.
    AfterWeaning {
        /// The day from which it counts as weaned.
        weaned: Day,
        /// The last day of the weighings.
        weigh_until: Day,
    },
    /// Weaned and weighed on: nothing is left to do.
    Done {
        /// The day from which it counts as weaned.
        weaned: Day,
    },
}

/// Whether a weight is flat over [`mornings::FLAT_DAYS`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Flatness {
    /// Furthest that a smoothed weight lies from the middle, per cent.
    pub spread_pct: Option<f64>,
    /// Whether that is within [`mornings::FLAT_PCT`].
    pub answer: Answer,
}

/// The stage at one moment.
pub(crate) fn stage(
    facts: &WeaningFacts<'_>,
    mornings: &[Morning],
    order: &[Slot],
    dropped: &[Slot],
) -> Stage {
    if let Some(until) = settling_until(facts) {
        return Stage::SettlingIn { until };
    }
    match order {
        [] => without_formula(facts, mornings),
        [slot] => Stage::LastFeed { slot: *slot },
        _ if dropped.is_empty() => Stage::FullPlan,
        _ => Stage::Weaning {
            feeds_left: order.len(),
        },
    }
}

fn without_formula(facts: &WeaningFacts<'_>, mornings: &[Morning]) -> Stage {
    let (now, chick, zone) = (facts.now, facts.chick, facts.zone);
    let today = facts.today();
    let since = life_stage::without_formula_since(now, chick, zone).unwrap_or(today);
    match life_stage::weaned_on(now, chick, zone) {
        None => Stage::NoFormula {
            since,
            days: today.since(since),
            weight: flatness(mornings, today),
            has_drunk: chick.drinking.iter().any(|seen| seen.at <= now),
        },
        Some(weaned) if today.since(weaned) > WEIGH_ON_DAYS => Stage::Done { weaned },
        Some(weaned) => Stage::AfterWeaning {
            weaned,
            weigh_until: weaned.plus(WEIGH_ON_DAYS),
        },
    }
}

fn flatness(mornings: &[Morning], last: Day) -> Flatness {
    let spread_pct = mornings::flat_spread_pct(mornings, last);
    let answer = match spread_pct {
        None => Answer::NotEnoughData,
        Some(spread) if mornings::is_flat(spread) => Answer::Yes,
        Some(_) => Answer::No,
    };
    Flatness { spread_pct, answer }
}

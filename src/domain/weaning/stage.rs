//! How far weaning has come.

use crate::domain::plan::care_plan::Slot;
use crate::domain::time::moment::Day;
use crate::domain::weaning::criteria::settling_until;
use crate::domain::weaning::facts::{Answer, WeaningFacts, last_feed_change};
use crate::domain::weaning::mornings::{self, Morning};

/// Days without formula before a chick counts as weaned. Common practice.
pub const WEANED_DAYS: i32 = 14;

/// Furthest that the weight may lie from its middle in these days, per cent. Common practice: "flat
/// within ±2 %"; that weights smoothed over three days are held against it: ours.
pub const FLAT_PCT: f64 = 2.0;

/// Days of weighing after a chick is weaned, four weeks. Common practice.
pub const WEIGH_ON_DAYS: i32 = 28;

/// Fewest mornings in each half of the fourteen days that tell whether a weight is flat. Ours.
const LEAST_IN_EACH_HALF: usize = 3;

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

/// Whether a weight is flat over [`WEANED_DAYS`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Flatness {
    /// Furthest that a smoothed weight lies from the middle, per cent.
    pub spread_pct: Option<f64>,
    /// Whether that is within [`FLAT_PCT`].
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
    let today = facts.today();
    let chick = facts.chick;
    let given = chick.last_given(facts.now).map(|feed| feed.lived().day);
    let changed = last_feed_change(facts.now, chick).unwrap_or(chick.plan_since);
    let changed = facts.zone.lived(changed).day;
    let since = given.map_or(changed, |given| given.max(changed));
    let days = today.since(since);
    let weaned = (WEANED_DAYS..=days)
        .map(|day| since.plus(day))
        .find(|day| flatness(mornings, *day).answer == Answer::Yes);
    match weaned {
        None => Stage::NoFormula {
            since,
            days,
            weight: flatness(mornings, today),
        },
        Some(weaned) if today.since(weaned) > WEIGH_ON_DAYS => Stage::Done { weaned },
        Some(weaned) => Stage::AfterWeaning {
            weaned,
            weigh_until: weaned.plus(WEIGH_ON_DAYS),
        },
    }
}

/// Whether the weight is flat over the [`WEANED_DAYS`] up to `last`, that day among them.
fn flatness(mornings: &[Morning], last: Day) -> Flatness {
    let first = last.plus(1 - WEANED_DAYS);
    let middle = first.plus(WEANED_DAYS / 2);
    let in_first_half = mornings::between(mornings, first, middle.plus(-1)).len();
    let in_second_half = mornings::between(mornings, middle, last).len();
    let is_known = in_first_half.min(in_second_half) >= LEAST_IN_EACH_HALF;
    let spread_pct = mornings::spread_pct(mornings, first, last).filter(|_| is_known);
    let answer = match spread_pct {
        None => Answer::NotEnoughData,
        Some(spread) if spread <= FLAT_PCT + 1e-9 => Answer::Yes,
        Some(_) => Answer::No,
    };
    Flatness { spread_pct, answer }
}

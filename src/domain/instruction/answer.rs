//! The one answer to "may I feed now".
//!
//! **Invariant.** A feed is never the answer while anything keeps it back.

use crate::domain::feeding::feeding_streak::longest_gap_minutes;
use crate::domain::instruction::first::First;
use crate::domain::instruction::holds::{Demand, Hold, HoldFacts, Why};
use crate::domain::instruction::lifting::advised_volume;
use crate::domain::plan::care_plan::{Role, Slot};
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::Moment;
use crate::domain::warnings::level::Level;

/// The answer to "may I feed now".
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Instruction {
    /// Feed.
    Feed {
        /// Which feed of the plan.
        slot: Slot,
        /// How much, at most.
        volume: Millilitres,
    },
    /// Wait.
    WaitUntil {
        /// Until when.
        until: Moment,
        /// What for.
        why: Why,
    },
    /// Do this first.
    First(First),
    /// Ask somebody before any feed.
    AskFirst {
        /// Whom.
        who: Role,
        /// Why.
        why: Why,
        /// How worried to be.
        level: Level,
        /// Whether food has been kept back for longer than the plan's longest gap: ask again.
        is_call_again: bool,
    },
    /// Do not feed.
    DoNotFeed {
        /// Why.
        why: Why,
        /// How worried to be: who is to be called.
        level: Level,
        /// Whether food has been kept back for longer than the plan's longest gap: call again.
        is_call_again: bool,
    },
    /// There is nothing to feed.
    Nothing(Nothing),
}

impl Instruction {
    /// Whether it forbids feeding until somebody said or saw otherwise.
    pub const fn forbids(&self) -> bool {
        matches!(self, Self::DoNotFeed { .. } | Self::AskFirst { .. })
    }

    /// The level of the call that it wants; `None` when nobody is to be called.
    pub fn call(&self) -> Option<Level> {
        let (level, is_call_again) = match self {
            Self::AskFirst {
                level,
                is_call_again,
                ..
            }
            | Self::DoNotFeed {
                level,
                is_call_again,
                ..
            } => (*level, *is_call_again),
            Self::Feed { .. } | Self::WaitUntil { .. } | Self::First(_) | Self::Nothing(_) => {
                return None;
            }
        };
        let level = if is_call_again {
            level.max(Level::CallBreeder)
        } else {
            level
        };
        level.is_call().then_some(level)
    }
}

/// Why there is nothing to feed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Nothing {
    /// No feed is in force.
    NoFeed,
    /// Nobody has said yet when and how much is fed.
    NotKnown,
    /// It is away and not yet expected here.
    Away,
}

/// The one answer, from everything that keeps food back.
pub fn instruction(facts: &HoldFacts<'_>, holds: &[Hold]) -> Instruction {
    let Some(next) = facts.next else {
        let is_known = facts.chick.plan.are_feeds_known() || facts.chick.grown.is_some();
        return Instruction::Nothing(if is_known {
            Nothing::NoFeed
        } else {
            Nothing::NotKnown
        });
    };
    let is_due = next.is_due(facts.now);
    for hold in holds {
        let (why, level) = (hold.why, hold.level);
        let is_call_again = is_call_again(facts, hold);
        match hold.demand {
            Demand::DoNotFeed => {
                return Instruction::DoNotFeed {
                    why,
                    level,
                    is_call_again,
                };
            }
            Demand::Ask(who) => {
                return Instruction::AskFirst {
                    who,
                    why,
                    level,
                    is_call_again,
                };
            }
            Demand::First(_) | Demand::Wait(_) if facts.is_away => break,
            Demand::First(first) if is_due || hold.is_against_food() => {
                return Instruction::First(first);
            }
            Demand::Wait(until) if is_due || until > next.due => {
                return Instruction::WaitUntil { until, why };
            }
            Demand::First(_) | Demand::Wait(_) => {}
        }
    }
    if facts.is_away {
        return Instruction::Nothing(Nothing::Away);
    }
    if is_due {
        let most = advised_volume(facts.now, facts.chick);
        let volume = most.map_or(next.volume, |most| most.min(next.volume));
        let slot = next.slot;
        return Instruction::Feed { slot, volume };
    }
    Instruction::WaitUntil {
        until: next.due,
        why: Why::NotYetDue,
    }
}

/// Whether food has been kept back for longer than the plan's longest gap since it began, or since
/// somebody was last spoken to.
fn is_call_again(facts: &HoldFacts<'_>, hold: &Hold) -> bool {
    let (now, chick) = (facts.now, facts.chick);
    let calls = chick.calls.iter().map(|call| call.at);
    let words = chick.advice.iter().map(|advice| advice.at);
    let spoken = calls.chain(words).filter(|at| *at <= now).max();
    let since = spoken.map_or(hold.since, |spoken| spoken.max(hold.since));
    longest_gap_minutes(now, chick).is_some_and(|gap| now.minutes_since(since) > gap)
}

//! Whether the call is the next act, also where a feed goes on.
//!
//! A chick that is losing weight is fed although a vet is to see it today. Who reads of two acts does the one that
//! stands out, so the call is that one.

use crate::domain::feeding::feeding_streak::{
    AFTER_LONGEST_GAP_MINUTES, last_food, longest_gap_minutes,
};
use crate::domain::instruction::lifting::advice_in_force;
use crate::domain::journal::chick::Chick;
use crate::domain::plan::care_plan::Role;
use crate::domain::time::moment::Moment;
use crate::domain::warnings::level::{Finding, Level, RuleId};

/// Without food for longer than this the breeder is called at any hour, minutes: 12 h. Source: breeders' pages; standing:
/// common practice. Where the plan's longest gap and two hours are longer, these count.
pub const WITHOUT_FOOD_MINUTES: i64 = 12 * 60;

/// Whether somebody is to be called before anything else is done: from *Vet today* up, and the breeder where it has
/// not eaten for long or its crop does not empty. Not once who was to be called said that it may be fed, unless
/// something was seen after that.
pub fn is_call_next(now: Moment, chick: &Chick, level: Level, findings: &[Finding]) -> bool {
    let is_now = match level {
        Level::Settled | Level::Watch => false,
        Level::CallBreeder => is_hungry(now, chick) || findings.iter().any(is_of_full_crop),
        Level::VetToday | Level::Emergency => true,
    };
    is_now && !is_told(now, chick, level)
}

fn is_hungry(now: Moment, chick: &Chick) -> bool {
    let since = last_food(now, chick).unwrap_or_else(|| chick.home_since());
    longest_gap_minutes(now, chick).is_some_and(|gap| {
        let longest = WITHOUT_FOOD_MINUTES.max(gap + AFTER_LONGEST_GAP_MINUTES);
        now.minutes_since(since) > longest
    })
}

fn is_of_full_crop(finding: &Finding) -> bool {
    let is_of_crop = matches!(
        finding.rule,
        RuleId::CropOvernight | RuleId::CropLate | RuleId::CropStatic | RuleId::CropSlow
    );
    is_of_crop && finding.level.is_call()
}

/// Whether the latest word that holds lets it be fed, of somebody whom this level calls, with nothing seen since.
fn is_told(now: Moment, chick: &Chick, level: Level) -> bool {
    let word = advice_in_force(now, chick).filter(|advice| advice.what.may_feed);
    word.is_some_and(|word| {
        let is_asked = match word.what.who {
            Role::AvianVet | Role::EmergencyVet => true,
            Role::Breeder => level <= Level::CallBreeder,
        };
        let is_new = |at: Moment| word.at < at && at <= now;
        let is_seen = chick.signs.iter().any(|sign| is_new(sign.at))
            || chick.weighings.iter().any(|weighing| is_new(weighing.at))
            || chick.droppings.iter().any(|droppings| is_new(droppings.at));
        is_asked && !is_seen
    })
}

//! *Watches* what the droppings looked like.
//!
//! *Limit* blood: vet today, for 24 h whatever is seen later. Undigested food: watch; on two days: vet
//! today. Green, black or watery: watch; over more than 24 h: vet today. Small, dark or few: watch; over
//! more than 24 h: ring the breeder. A spell ends with usual droppings or 36 h without a look.
//!
//! *Why* droppings show the gut, the liver and how much went in, before the weight does.
//!
//! *Sources* the levels but the last: common practice of avian vets and breeders. Small, dark or few,
//! and when a spell ends: ours.
//!
//! *Wrong when* coloured or wet food was eaten.

use std::collections::BTreeSet;

use crate::domain::journal::chick::{Chick, Noted};
use crate::domain::journal::entries::Droppings;
use crate::domain::journal::signs::Sign;
use crate::domain::quantity::evidence::Standing;
use crate::domain::quantity::order::sorted_by;
use crate::domain::time::moment::{Day, Moment};
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, minutes_finding};

/// Blood counts for this long, minutes; a spell is long when it lasts longer than this.
pub(crate) const DAY_MINUTES: i64 = 24 * 60;
/// Days with undigested food that are for the vet.
const UNDIGESTED_DAYS: usize = 2;
/// A spell ends when nobody looked for this long, minutes. Ours.
const SPELL_MINUTES: i64 = 36 * 60;

/// Looks older than this are not read, minutes: 14 days.
const LOOKS_MINUTES: i64 = 14 * 24 * 60;

/// The rule.
pub const RULE: Rule = Rule {
    name: "droppings-seen",
    limits: &[
        Limit::new(Level::Watch, Value::Seen),
        Limit::new(Level::VetToday, Value::Seen),
        Limit::new(Level::VetToday, Value::Count(UNDIGESTED_DAYS)),
        Limit::new(Level::VetToday, Value::Minutes(DAY_MINUTES)),
        Limit::new(Level::RingBreeder, Value::Minutes(DAY_MINUTES)),
    ],
    standing: Standing::Ours,
    source: "common practice of avian vets and breeders; small, dark or few: ours",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let (now, chick) = (facts.now, facts.chick);
    let looks = looks(now, chick);
    [
        blood(now, &looks),
        undigested(now, &looks),
        colour(now, &looks),
        few(now, &looks),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Every look of the two weeks up to `now` in order of time; undigested food noted as a sign is a look too.
fn looks(now: Moment, chick: &Chick) -> Vec<Noted<Droppings>> {
    let as_look = |seen: &Noted<Sign>| Noted {
        id: seen.id,
        at: seen.at,
        offset: seen.offset,
        what: Droppings::Undigested,
    };
    let signs = chick
        .signs
        .iter()
        .filter(|seen| seen.what == Sign::UndigestedFood)
        .map(as_look);
    let droppings = chick.droppings.iter().cloned();
    let is_recent = |at: Moment| (0..=LOOKS_MINUTES).contains(&now.minutes_since(at));
    let looks: Vec<Noted<Droppings>> = droppings
        .chain(signs)
        .filter(|look| is_recent(look.at))
        .collect();
    sorted_by(looks, |one, other| {
        (one.at, one.id).cmp(&(other.at, other.id))
    })
}

/// The looks of one kind since the last usual droppings, when the last of them is recent.
fn spell(
    now: Moment,
    looks: &[Noted<Droppings>],
    is_kind: impl Fn(Droppings) -> bool,
) -> Vec<&Noted<Droppings>> {
    let mut spell: Vec<&Noted<Droppings>> = Vec::new();
    let mut next = now;
    let since_usual = looks
        .iter()
        .rev()
        .take_while(|look| look.what != Droppings::Normal);
    for look in since_usual.filter(|look| is_kind(look.what)) {
        if next.minutes_since(look.at) > SPELL_MINUTES {
            break;
        }
        next = look.at;
        spell.push(look);
    }
    spell
}

fn blood(now: Moment, looks: &[Noted<Droppings>]) -> Option<Finding> {
    let is_seen = looks
        .iter()
        .rev()
        .take_while(|look| now.minutes_since(look.at) <= DAY_MINUTES)
        .any(|look| look.what == Droppings::Bloody);
    is_seen.then_some(Finding {
        rule: RuleId::DroppingsSeen(Droppings::Bloody),
        level: Level::VetToday,
        value: Value::Seen,
        limit: Value::Seen,
        standing: Standing::CommonPractice,
    })
}

fn undigested(now: Moment, looks: &[Noted<Droppings>]) -> Option<Finding> {
    let spell = spell(now, looks, |look| look == Droppings::Undigested);
    let days: BTreeSet<Day> = spell.iter().map(|look| look.lived().day).collect();
    let days = days.len().min(UNDIGESTED_DAYS);
    let level = match days {
        0 => return None,
        1..UNDIGESTED_DAYS => Level::Watch,
        UNDIGESTED_DAYS.. => Level::VetToday,
    };
    Some(Finding {
        rule: RuleId::DroppingsSeen(Droppings::Undigested),
        level,
        value: Value::Count(days),
        limit: Value::Count(UNDIGESTED_DAYS),
        standing: Standing::CommonPractice,
    })
}

fn colour(now: Moment, looks: &[Noted<Droppings>]) -> Option<Finding> {
    let is_kind = |look| matches!(look, Droppings::GreenOrBlack | Droppings::Watery);
    let standing = Standing::CommonPractice;
    lasting(&spell(now, looks, is_kind), Level::VetToday, standing)
}

fn few(now: Moment, looks: &[Noted<Droppings>]) -> Option<Finding> {
    let is_kind = |look| look == Droppings::SmallOrFew;
    let standing = Standing::Ours;
    lasting(&spell(now, looks, is_kind), Level::RingBreeder, standing)
}

/// Watch for a spell, `level` when it lasts more than a day from its first look to its last.
fn lasting(spell: &[&Noted<Droppings>], level: Level, standing: Standing) -> Option<Finding> {
    let (latest, first) = (spell.first()?, spell.last()?);
    let minutes = latest.at.minutes_since(first.at);
    let level = if minutes > DAY_MINUTES {
        level
    } else {
        Level::Watch
    };
    let rule = RuleId::DroppingsSeen(latest.what);
    Some(minutes_finding(rule, level, minutes, DAY_MINUTES, standing))
}

#[cfg(test)]
mod tests {
    use crate::domain::warnings::rules::droppings_seen::*;
    use crate::domain::warnings::rules::trial::{droppings, found, level_of, macaw, sign};

    /// The level after a look at day 1, 08:00, and a second one so many minutes later.
    fn twice(first: Droppings, second: Droppings, minutes: i32) -> Option<Level> {
        let mut script = macaw();
        script.note(1, 8, 0, droppings(first));
        script.note(1, 8, minutes, droppings(second));
        level_of(&RULE, &script, script.at(1, 8, minutes + 5))
    }

    #[test]
    fn bad_colour_or_water_for_more_than_a_day_is_for_the_vet() {
        use Droppings::{GreenOrBlack, Normal, Watery};
        assert_eq!(twice(GreenOrBlack, GreenOrBlack, 1_440), Some(Level::Watch));
        assert_eq!(
            twice(GreenOrBlack, GreenOrBlack, 1_441),
            Some(Level::VetToday)
        );
        assert_eq!(twice(GreenOrBlack, Watery, 1_441), Some(Level::VetToday));
        assert_eq!(twice(Normal, Watery, 1_441), Some(Level::Watch));
        assert_eq!(twice(Watery, Normal, 60), None);
    }

    #[test]
    fn few_droppings_for_more_than_a_day_are_a_call() {
        use Droppings::SmallOrFew;
        assert_eq!(twice(SmallOrFew, SmallOrFew, 1_440), Some(Level::Watch));
        assert_eq!(
            twice(SmallOrFew, SmallOrFew, 1_441),
            Some(Level::RingBreeder)
        );
    }

    #[test]
    fn undigested_food_once_is_a_look_and_on_two_days_for_the_vet() {
        use Droppings::Undigested;
        // 08:00 and 23:59 of the same day, then 00:00 of the next
        assert_eq!(twice(Undigested, Undigested, 959), Some(Level::Watch));
        assert_eq!(twice(Undigested, Undigested, 960), Some(Level::VetToday));
    }

    #[test]
    fn undigested_food_noted_as_a_sign_counts_as_a_look() {
        let mut script = macaw();
        script.note(1, 8, 0, sign(Sign::UndigestedFood));
        script.note(2, 8, 0, droppings(Droppings::Undigested));
        let now = script.at(2, 9, 0);
        assert_eq!(level_of(&RULE, &script, now), Some(Level::VetToday));
    }

    #[test]
    fn blood_counts_for_a_day_whatever_follows() {
        let mut script = macaw();
        script.note(1, 8, 0, droppings(Droppings::Bloody));
        script.note(1, 9, 0, droppings(Droppings::Normal));
        let level = |minute| level_of(&RULE, &script, script.at(2, 8, minute));
        assert_eq!(level(0), Some(Level::VetToday));
        assert_eq!(level(1), None);
    }

    #[test]
    fn a_spell_ends_after_a_day_and_a_half_without_a_look() {
        let mut script = macaw();
        script.note(1, 8, 0, droppings(Droppings::Watery));
        let level = |script: &crate::domain::journal::scenario::Scenario, minute| {
            level_of(&RULE, script, script.at(2, 20, minute))
        };
        assert_eq!(level(&script, 0), Some(Level::Watch));
        assert_eq!(level(&script, 1), None);
        script.note(2, 20, 1, droppings(Droppings::Watery));
        assert_eq!(level(&script, 2), Some(Level::Watch));
    }

    #[test]
    fn different_troubles_are_different_findings() {
        let mut script = macaw();
        script.note(1, 8, 0, droppings(Droppings::Bloody));
        script.note(1, 9, 0, droppings(Droppings::Watery));
        script.note(1, 10, 0, droppings(Droppings::SmallOrFew));
        assert_eq!(found(&RULE, &script, script.at(1, 11, 0)).len(), 3);
    }
}

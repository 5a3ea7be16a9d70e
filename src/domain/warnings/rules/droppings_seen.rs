//! *Watches* what the droppings looked like.
//!
//! *Limit* red without red food, tar-like, or yellow-green urates: vet today, for 24 h whatever is seen
//! later. Emerald green: call the breeder, with a weight that a rule watches vet today, also for 24 h. Undigested
//! food: watch; on two days: vet today. The stool itself liquid: watch; over more than 12 h: vet today. Much
//! water around a formed stool: watch; over more than 24 h: vet today; wet after fruit or
//! red after red food: watch for 24 h, never more. Small, dark or few: watch; over more than 24 h: ring the
//! breeder. Green or black, as older notes have it: as emerald green, over more than 24 h vet today. A spell ends
//! with usual droppings or 36 h without a look.
//!
//! *Why* droppings show the gut, the liver and how much went in, before the weight does. Emerald green is
//! bile in a bird that does not eat; tar is blood, or a day without solid food; yellow-green urates
//! mean the liver. Much water is urine, normal for hours after fruit or fright; a stool without form is
//! diarrhoea. With a dull chick it is for the vet at once, by the sign of that.
//!
//! *Sources* emerald green, yellow-green urates, red food and tar: avian vets' pages on droppings; wetness
//! after fruit or fright: an aviculturist's article on weaning. Liquid stool as true diarrhoea: a bird
//! rescue's page. Undigested food, watery, 12 h and 24 h of it: common practice. The other hours, small,
//! dark or few, and when a spell ends: ours.
//!
//! *Wrong when* greens or dyed food made the colour and nobody thought of it.

use crate::domain::journal::chick::{Chick, Noted};
use crate::domain::journal::entries::Droppings;
use crate::domain::journal::signs::Sign;
use crate::domain::quantity::evidence::Standing;
use crate::domain::quantity::order::{set_of, sorted_by};
use crate::domain::time::moment::Moment;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{
    Facts, Limit, Rule, falling_weight, handover_loss, minutes_finding, one_day_loss,
};

/// Blood counts for this long, minutes; a spell is long when it lasts longer than this.
pub(crate) const DAY_MINUTES: i64 = 24 * 60;
/// Liquid stool for longer than this is for the vet, minutes.
pub const LIQUID_MINUTES: i64 = 12 * 60;
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
        Limit::new(Level::CallBreeder, Value::Seen),
        Limit::new(Level::VetToday, Value::Count(UNDIGESTED_DAYS)),
        Limit::new(Level::VetToday, Value::Minutes(LIQUID_MINUTES)),
        Limit::new(Level::VetToday, Value::Minutes(DAY_MINUTES)),
        Limit::new(Level::CallBreeder, Value::Minutes(DAY_MINUTES)),
    ],
    standing: Standing::Ours,
    source: "colours: avian vets' pages on droppings; liquid: a bird rescue's page; undigested, watery, 12 h and 24 h: common practice; other hours, small, dark or few: our own",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let (now, chick) = (facts.now, facts.chick);
    let looks = looks(now, chick);
    let seen = |look, level| lately(now, &looks, look, level);
    let green = if is_lighter(facts) {
        Level::VetToday
    } else {
        Level::CallBreeder
    };
    [
        seen(Droppings::Bloody, Level::VetToday),
        seen(Droppings::TarBlack, Level::VetToday),
        seen(Droppings::LimeUrates, Level::VetToday),
        seen(Droppings::EmeraldGreen, green),
        seen(Droppings::WetAfterFruit, Level::Watch),
        seen(Droppings::RedAfterFood, Level::Watch),
        undigested(now, &looks),
        green_or_black(now, &looks, green),
        liquid(now, &looks),
        watery(now, &looks),
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

/// Whether a rule watches the weight of this chick.
fn is_lighter(facts: &Facts<'_>) -> bool {
    [
        one_day_loss::RULE,
        falling_weight::RULE,
        handover_loss::RULE,
    ]
    .iter()
    .any(|rule| !(rule.check)(facts).is_empty())
}

/// A look of the last day, whatever was seen after it.
fn lately(
    now: Moment,
    looks: &[Noted<Droppings>],
    wanted: Droppings,
    level: Level,
) -> Option<Finding> {
    let is_seen = looks
        .iter()
        .rev()
        .take_while(|look| now.minutes_since(look.at) <= DAY_MINUTES)
        .any(|look| look.what == wanted);
    is_seen.then_some(Finding {
        rule: RuleId::DroppingsSeen(wanted),
        level,
        value: Value::Seen,
        limit: Value::Seen,
        standing: Standing::CommonPractice,
    })
}

fn undigested(now: Moment, looks: &[Noted<Droppings>]) -> Option<Finding> {
    let spell = spell(now, looks, |look| look == Droppings::Undigested);
    let days = set_of(spell.iter().map(|look| look.lived().day));
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

fn green_or_black(now: Moment, looks: &[Noted<Droppings>], first: Level) -> Option<Finding> {
    let spell = spell(now, looks, |look| look == Droppings::GreenOrBlack);
    let found = lasting(
        &spell,
        Level::VetToday,
        DAY_MINUTES,
        Standing::CommonPractice,
    )?;
    Some(Finding {
        level: found.level.max(first),
        ..found
    })
}

fn liquid(now: Moment, looks: &[Noted<Droppings>]) -> Option<Finding> {
    let spell = spell(now, looks, |look| look == Droppings::LiquidStool);
    lasting(
        &spell,
        Level::VetToday,
        LIQUID_MINUTES,
        Standing::CommonPractice,
    )
}

fn watery(now: Moment, looks: &[Noted<Droppings>]) -> Option<Finding> {
    let is_kind = |look| look == Droppings::Watery;
    let standing = Standing::CommonPractice;
    lasting(
        &spell(now, looks, is_kind),
        Level::VetToday,
        DAY_MINUTES,
        standing,
    )
}

fn few(now: Moment, looks: &[Noted<Droppings>]) -> Option<Finding> {
    let is_kind = |look| look == Droppings::SmallOrFew;
    let standing = Standing::Ours;
    lasting(
        &spell(now, looks, is_kind),
        Level::CallBreeder,
        DAY_MINUTES,
        standing,
    )
}

/// Watch for a spell, `level` when it lasts more than `limit` minutes from its first look to its last.
fn lasting(
    spell: &[&Noted<Droppings>],
    level: Level,
    limit: i64,
    standing: Standing,
) -> Option<Finding> {
    let (latest, first) = (spell.first()?, spell.last()?);
    let minutes = latest.at.minutes_since(first.at);
    let level = if minutes > limit { level } else { Level::Watch };
    let rule = RuleId::DroppingsSeen(latest.what);
    Some(minutes_finding(rule, level, minutes, limit, standing))
}

#[cfg(test)]
mod tests {
    use crate::domain::warnings::rules::droppings_seen::*;
    use crate::domain::warnings::rules::trial::{droppings, found, ladder, level_of, macaw, sign};

    /// The level after a look at day 1, 08:00, and a second one so many minutes later.
    fn twice(first: Droppings, second: Droppings, minutes: i32) -> Option<Level> {
        let mut script = macaw();
        script.note(1, 8, 0, droppings(first));
        script.note(1, 8, minutes, droppings(second));
        level_of(&RULE, &script, script.at(1, 8, minutes + 5))
    }

    #[test]
    fn water_for_more_than_a_day_is_for_the_vet() {
        use Droppings::{Normal, Watery};
        assert_eq!(twice(Watery, Watery, 1_440), Some(Level::Watch));
        assert_eq!(twice(Watery, Watery, 1_441), Some(Level::VetToday));
        assert_eq!(twice(Normal, Watery, 1_441), Some(Level::Watch));
        assert_eq!(twice(Watery, Normal, 60), None);
    }

    #[test]
    fn liquid_stool_for_more_than_twelve_hours_is_for_the_vet() {
        use Droppings::{LiquidStool, Normal, Watery};
        assert_eq!(twice(LiquidStool, LiquidStool, 719), Some(Level::Watch));
        assert_eq!(twice(LiquidStool, LiquidStool, 720), Some(Level::Watch));
        assert_eq!(twice(LiquidStool, LiquidStool, 721), Some(Level::VetToday));
        assert_eq!(twice(LiquidStool, Normal, 721), None);
        // Much water is no liquid stool: 12 h of it are watched.
        assert_eq!(twice(Watery, Watery, 721), Some(Level::Watch));
    }

    #[test]
    fn liquid_stool_and_a_dull_chick_are_for_the_vet_at_once() {
        let mut script = macaw();
        script.note(1, 8, 0, droppings(Droppings::LiquidStool));
        script.note(1, 8, 1, sign(Sign::Dull));
        assert_eq!(ladder(&script, script.at(1, 8, 5)).0, Level::VetToday);
    }

    #[test]
    fn an_older_note_of_green_or_black_is_a_call_and_after_a_day_for_the_vet() {
        use Droppings::GreenOrBlack;
        let level = |minutes| twice(GreenOrBlack, GreenOrBlack, minutes);
        assert_eq!(level(1_440), Some(Level::CallBreeder));
        assert_eq!(level(1_441), Some(Level::VetToday));
    }

    #[test]
    fn tar_yellow_green_urates_and_blood_are_for_the_vet_at_once_and_for_a_day() {
        for look in [
            Droppings::TarBlack,
            Droppings::LimeUrates,
            Droppings::Bloody,
        ] {
            let mut script = macaw();
            script.note(1, 8, 0, droppings(look));
            script.note(1, 9, 0, droppings(Droppings::Normal));
            let level = |day, minute| level_of(&RULE, &script, script.at(day, 8, minute));
            assert_eq!(level(1, 0), Some(Level::VetToday), "{look:?}");
            assert_eq!(level(2, 0), Some(Level::VetToday), "{look:?}");
            assert_eq!(level(2, 1), None, "{look:?}");
        }
    }

    #[test]
    fn emerald_green_is_a_call_and_with_a_lighter_chick_for_the_vet() {
        // 970 g after 1,000 g: 3.0 %, the least that is watched in one day
        let level = |grams| {
            let mut script = macaw();
            script.weigh(1, 1_000).weigh(2, grams);
            script.note(2, 8, 0, droppings(Droppings::EmeraldGreen));
            level_of(&RULE, &script, script.at(2, 8, 5))
        };
        assert_eq!(level(971), Some(Level::CallBreeder));
        assert_eq!(level(970), Some(Level::VetToday));
        assert_eq!(level(969), Some(Level::VetToday));
    }

    #[test]
    fn what_food_explains_is_watched_for_a_day_and_never_more() {
        for look in [Droppings::WetAfterFruit, Droppings::RedAfterFood] {
            assert_eq!(twice(look, look, 1_441), Some(Level::Watch), "{look:?}");
            let mut script = macaw();
            script.note(1, 8, 0, droppings(look));
            let level = |minute| level_of(&RULE, &script, script.at(2, 8, minute));
            assert_eq!(level(0), Some(Level::Watch), "{look:?}");
            assert_eq!(level(1), None, "{look:?}");
        }
    }

    #[test]
    fn few_droppings_for_more_than_a_day_are_a_call() {
        use Droppings::SmallOrFew;
        assert_eq!(twice(SmallOrFew, SmallOrFew, 1_440), Some(Level::Watch));
        assert_eq!(
            twice(SmallOrFew, SmallOrFew, 1_441),
            Some(Level::CallBreeder)
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

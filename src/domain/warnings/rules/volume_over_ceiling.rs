//! *Watches* the plan's feeds and every feed of the last 24 h against the chick's weight. Feeds within
//! an hour of each other count together, so that a feed given twice is seen.
//!
//! *Limit* 12 % of the latest empty-crop weight, or the species' own ceiling (120 ml for large
//! macaws, 150 ml for the hyacinth): call the breeder above it. Above 10 %: watch.
//!
//! *Why* a stretched crop empties slowly and can stop.
//!
//! *Sources* about 10 % of body weight as the maximum: avian pediatric nutrition page of a US animal
//! clinic; Duerr & Gage 2020, p. 210 (10 % of morning weight, another protocol). 12 % and the
//! absolute ceilings: ours.
//!
//! *Wrong when* the last weight is old or was read wrongly.

use crate::domain::feeding::sittings::{Sitting, sittings};
use crate::domain::plan::species::{HYACINTH_CEILING, LARGE_MACAW_CEILING};
use crate::domain::quantity::evidence::Standing;
use crate::domain::quantity::units::{Grams, Millilitres};
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::gap_too_short::PARTS_MINUTES;
use crate::domain::warnings::rules::{Facts, Limit, Rule, whole};
use crate::domain::weight::readings;

/// Usual most, per cent of the empty-crop weight (1 ml counted as 1 g).
pub const USUAL_PCT: i32 = 10;
/// Ceiling, per cent of the empty-crop weight.
pub const CEILING_PCT: i32 = 12;

/// The rule.
pub const RULE: Rule = Rule {
    name: "volume-over-ceiling",
    limits: &[
        Limit::new(Level::Watch, Value::Pct(whole(USUAL_PCT))),
        Limit::new(Level::CallBreeder, Value::Pct(whole(CEILING_PCT))),
        Limit::new(Level::CallBreeder, Value::Ml(LARGE_MACAW_CEILING)),
        Limit::new(Level::CallBreeder, Value::Ml(HYACINTH_CEILING)),
    ],
    standing: Standing::Ours,
    source: "10 %: clinic page on avian pediatric nutrition; Duerr & Gage 2020, p. 210; 12 % and the ceilings: our own",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let chick = facts.chick;
    let weighed = readings::latest_empty(facts.now, chick).map(|weighing| weighing.what.weight);
    let Some(weight) = weighed.or(chick.plan.reference.map(|reference| reference.weight)) else {
        return Vec::new();
    };
    let planned = chick
        .feeds_in_force(facts.now)
        .into_iter()
        .map(|feed| feed.volume)
        .max();
    let Some(most) = planned.max(most_given(facts)) else {
        return Vec::new();
    };
    let usual = share(weight, USUAL_PCT);
    let ceiling = ceiling(
        weight,
        chick
            .plan
            .species
            .profile()
            .feed_ceiling
            .map(|ceiling| ceiling.value),
    );
    let (level, limit, standing) = if most > ceiling {
        (Level::CallBreeder, ceiling, Standing::Ours)
    } else if most > usual {
        (Level::Watch, usual, Standing::Published)
    } else {
        return Vec::new();
    };
    let (value, limit) = (Value::Ml(most), Value::Ml(limit));
    vec![Finding {
        rule: RuleId::VolumeOverCeiling,
        level,
        value,
        limit,
        standing,
    }]
}

/// The most that went in within [`PARTS_MINUTES`], over the last 24 h. Of two notes that may be of the same
/// food the larger counts.
fn most_given(facts: &Facts<'_>) -> Option<Millilitres> {
    let from = facts.now.plus_minutes(-24 * 60 + 1);
    let given = sittings(facts.chick, from, facts.now);
    let together = |last: &Sitting| {
        let near = given
            .iter()
            .filter(|sitting| (0..=PARTS_MINUTES).contains(&last.at.minutes_since(sitting.at)));
        Millilitres::tenths_held(near.map(|sitting| sitting.taken.tenths()).sum())
    };
    given.iter().map(together).max()
}

/// A share of a weight as a volume, 1 ml counted as 1 g.
pub fn share(weight: Grams, pct: i32) -> Millilitres {
    Millilitres::tenths_held(weight.tenths() * pct / 100)
}

/// The most one feed may hold: 12 % of the weight, and the species' own ceiling.
pub fn ceiling(weight: Grams, species: Option<Millilitres>) -> Millilitres {
    let by_weight = share(weight, CEILING_PCT);
    species.map_or(by_weight, |species| species.min(by_weight))
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::Change;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::warnings::rules::trial::{level_of, macaw, plan, with_plan};
    use crate::domain::warnings::rules::volume_over_ceiling::*;

    /// The level of a feed of so many tenths of a millilitre at 950 g.
    fn level_at(tenth_ml: i32) -> Option<Level> {
        let mut script = macaw();
        let volume = Millilitres::tenths_held(tenth_ml);
        script.weigh(1, 950);
        let fed = Change::Fed {
            counts_as: None,
            taken: volume,
            offered: volume,
            served_at: None,
            response: crate::domain::journal::entries::Response::Eager,
        };
        script.note(1, 7, 0, fed);
        level_of(&RULE, &script, script.at(1, 8, 0))
    }

    #[test]
    fn a_tenth_is_usual_and_twelve_per_cent_the_ceiling() {
        // of 950 g: 95 ml and 114 ml
        assert_eq!(level_at(950), None);
        assert_eq!(level_at(951), Some(Level::Watch));
        assert_eq!(level_at(1_140), Some(Level::Watch));
        assert_eq!(level_at(1_141), Some(Level::CallBreeder));
    }

    #[test]
    fn the_species_ceiling_holds_for_heavy_chicks() {
        // 12 % of 1,200 g would be 144 ml; large macaws stop at 120 ml
        let level = |ml| {
            let mut script = macaw();
            script.weigh(1, 1_200).feed(1, 7, 0, Slot::Morning, ml);
            level_of(&RULE, &script, script.at(1, 8, 0))
        };
        assert_eq!(level(120), None);
        assert_eq!(level(121), Some(Level::CallBreeder));
    }

    #[test]
    fn a_refusal_afterwards_does_not_hide_a_feed_too_large() {
        let mut script = macaw();
        script.weigh(1, 950).feed(1, 7, 0, Slot::Morning, 115);
        let slot = Slot::Midday;
        script.note(1, 14, 0, Change::refused(Some(slot)));
        let level = |day, hour| level_of(&RULE, &script, script.at(day, hour, 0));
        assert_eq!(level(1, 15), Some(Level::CallBreeder));
        assert_eq!(level(2, 7), None);
    }

    #[test]
    fn two_feeds_within_an_hour_count_together() {
        let level = |minute| {
            let mut script = macaw();
            script.weigh(1, 950).feed(1, 7, 0, Slot::Morning, 80);
            script.feed(1, 8, minute, Slot::Morning, 80);
            level_of(&RULE, &script, script.at(1, 9, 0))
        };
        assert_eq!(level(0), Some(Level::CallBreeder));
        assert_eq!(level(1), None);
    }

    #[test]
    fn a_plan_above_the_ceiling_is_told_before_anything_is_given() {
        let mut plan = plan();
        for feed in &mut plan.feeds {
            feed.volume = Millilitres::whole(121);
        }
        // without a weighing the handover weight of 1,000 g counts
        let script = with_plan(plan);
        let now = script.at(0, 6, 0);
        assert_eq!(level_of(&RULE, &script, now), Some(Level::CallBreeder));
    }

    #[test]
    fn a_feed_that_is_still_to_come_is_not_counted() {
        let mut script = macaw();
        script.weigh(1, 950).feed(1, 7, 0, Slot::Morning, 115);
        let level = |hour, minute| level_of(&RULE, &script, script.at(1, hour, minute));
        assert_eq!(level(6, 59), None);
        assert_eq!(level(7, 0), Some(Level::CallBreeder));
    }
}

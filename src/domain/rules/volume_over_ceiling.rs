//! *Watches* the plan's feeds and the latest feed given against the chick's weight.
//!
//! *Limit* 12 % of the latest empty-crop weight, or the species' own ceiling (120 ml for large
//! macaws, 150 ml for the hyacinth): ring the breeder. 10 %: watch.
//!
//! *Why* a stretched crop empties slowly and can stop.
//!
//! *Sources* about 10 % of body weight as the maximum: avian pediatric nutrition page of a US animal
//! clinic; Duerr & Gage 2020, p. 210 (10 % of morning weight, another protocol). 12 % and the
//! absolute ceilings: ours.
//!
//! *Wrong when* the last weight is old or was read wrongly.

use crate::domain::chick::FeedOutcome;
use crate::domain::evidence::Standing;
use crate::domain::level::{Finding, Level, RuleId, Value};
use crate::domain::rules::{Facts, Rule};
use crate::domain::units::{Grams, Millilitres};
use crate::domain::weight;

/// Usual most, per cent of the empty-crop weight (1 ml counted as 1 g).
pub const USUAL_PCT: i32 = 10;
/// Ceiling, per cent of the empty-crop weight.
pub const CEILING_PCT: i32 = 12;

/// The rule.
pub const RULE: Rule = Rule {
    name: "volume-over-ceiling",
    limits: "one feed against the empty-crop weight: watch above 10 %, ring the breeder above 12 % or above the species' ceiling (120 ml large macaws, 150 ml hyacinth)",
    standing: Standing::Ours,
    source: "10 %: clinic page on avian pediatric nutrition; Duerr & Gage 2020, p. 210; 12 % and the ceilings: ours",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let chick = facts.chick;
    let weighed = weight::latest_empty(facts.now, chick).map(|weighing| weighing.what.weight);
    let Some(weight) = weighed.or(chick.plan.reference.map(|reference| reference.weight)) else {
        return Vec::new();
    };
    let planned = chick
        .feeds_in_force(facts.now)
        .into_iter()
        .map(|feed| feed.volume)
        .max();
    let recent = chick
        .feeds
        .iter()
        .rev()
        .find(|feed| facts.now.minutes_since(feed.at) < 24 * 60);
    let given = recent.and_then(|feed| match feed.what.outcome {
        FeedOutcome::Given { taken, .. } => Some(taken),
        FeedOutcome::Refused | FeedOutcome::PassedOver(_) => None,
    });
    let Some(most) = planned.max(given) else {
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
        (Level::RingBreeder, ceiling, Standing::Ours)
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

/// A share of a weight as a volume, 1 ml counted as 1 g.
pub fn share(weight: Grams, pct: i32) -> Millilitres {
    Millilitres::tenths_held(weight.tenths() * pct / 100)
}

/// The most one feed may hold: 12 % of the weight, and the species' own ceiling.
pub fn ceiling(weight: Grams, species: Option<Millilitres>) -> Millilitres {
    let by_weight = share(weight, CEILING_PCT);
    species.map_or(by_weight, |species| species.min(by_weight))
}

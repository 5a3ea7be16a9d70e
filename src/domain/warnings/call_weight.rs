//! The highest weight of the next morning at which somebody would be called.

use crate::domain::homecoming::life_stage::LifeStage;
use crate::domain::journal::chick::{Chick, Noted, Weighing};
use crate::domain::journal::entries::{CropAtWeighing, EntryId};
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::quantity::count;
use crate::domain::quantity::order::sorted_by;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::{Moment, Offset};
use crate::domain::warnings::rules::one_day_loss;
use crate::domain::warnings::rules::peak_loss;
use crate::domain::warnings::rules::{self, Facts};
use crate::domain::weight::sittings::Sitting;
use crate::domain::weight::trend;

/// Halvings between a weight that calls and one that does not.
const HALVINGS: u32 = 8;

/// The highest weight, weighed twice a day after the latest one or now, whichever is later, at which any rule on
/// the weight calls; to a gram below.
///
/// `None` before the first empty-crop weight, and for a bird that no such rule holds for.
///
/// The limits of the rules are tried from the highest down; where one does not call, as that of a peak that
/// the other readings doubt, the weight that does is searched between it and the next.
pub fn call_weight(facts: &Facts<'_>) -> Option<Grams> {
    match facts.stage {
        LifeStage::WithBreeder
        | LifeStage::OnTheWay
        | LifeStage::SettlingIn
        | LifeStage::Weaning
        | LifeStage::Weaned => {}
        LifeStage::Grown | LifeStage::Died => return None,
    }
    let latest = facts.trend.latest?.sitting;
    let mut tomorrow = Tomorrow::after(facts, &latest);
    let plan = &facts.chick.plan;
    let handover = plan.reference.map(|reference| {
        let limit = plan.loss_limit_in_force().as_pct();
        left(reference.weight.as_g(), limit)
    });
    let peak = facts
        .trend
        .peak
        .map(|peak| left(peak.grams, peak_loss::RING_PCT));
    let day = left(latest.grams, one_day_loss::RING_PCT);
    let stable = left(latest.grams, 2.0 * one_day_loss::RING_PCT);
    let tried = [
        handover,
        peak,
        Some(day),
        facts.trend.falls_from_g,
        Some(stable),
    ];
    let tried = tried.into_iter().flatten().collect();
    let tried = sorted_by(tried, |one: &f64, other| other.total_cmp(one));
    let mut above: Option<f64> = None;
    for grams in tried {
        // To a gram below, as a scale shows it.
        let grams = (grams + 1e-9).floor();
        if tomorrow.calls_at(grams) {
            let found = above.map_or(grams, |above| tomorrow.highest_between(grams, above));
            return Some(Grams::tenths_held(count::rounded(found * 10.0)));
        }
        above = Some(grams);
    }
    None
}

/// The weight at which the plan's limit calls, before any weighing at home; to a gram below, as a scale shows
/// it. `None` for a plan without a handover weight.
pub fn call_weight_at_handover(plan: &CarePlan) -> Option<Grams> {
    let weight = plan.reference?.weight;
    let grams = left(weight.as_g(), plan.loss_limit_in_force().as_pct());
    Some(Grams::tenths_held(count::rounded(
        (grams + 1e-9).floor() * 10.0,
    )))
}

fn left(grams: f64, loss_pct: f64) -> f64 {
    grams * (1.0 - loss_pct / 100.0)
}

/// The chick on the next morning, to be weighed at one weight after another.
struct Tomorrow<'a> {
    facts: &'a Facts<'a>,
    chick: Chick,
    at: Moment,
    offset: Offset,
}

impl<'a> Tomorrow<'a> {
    fn after(facts: &'a Facts<'a>, latest: &Sitting) -> Self {
        let at = facts.now.max(latest.at.plus_minutes(24 * 60));
        let mut chick = facts.chick.clone();
        chick.weighings.retain(|weighing| weighing.at < at);
        Self {
            facts,
            chick,
            at,
            offset: latest.offset,
        }
    }

    /// Whether a rule on the weight would call at so many grams, weighed twice.
    fn calls_at(&mut self, grams: f64) -> bool {
        let weighed = self.chick.weighings.len();
        let now = self.at.plus_minutes(1);
        for at in [self.at, now] {
            self.chick.weighings.push(Noted {
                id: EntryId([u8::MAX; 12]),
                at,
                offset: self.offset,
                what: Weighing {
                    weight: Grams::tenths_held(count::rounded(grams * 10.0)),
                    crop: CropAtWeighing::Empty,
                },
            });
        }
        let found = rules::found(&Facts {
            now,
            chick: &self.chick,
            trend: &trend::weight_trend(now, &self.chick),
            ..*self.facts
        });
        self.chick.weighings.truncate(weighed);
        found
            .iter()
            .any(|finding| finding.rule.is_of_weight() && finding.level.is_call())
    }

    fn highest_between(&mut self, calls: f64, does_not: f64) -> f64 {
        let (mut low, mut high) = (calls, does_not);
        for _ in 0..HALVINGS {
            if high - low <= 1.0 {
                break;
            }
            let middle = f64::midpoint(low, high).floor();
            if self.calls_at(middle) {
                low = middle;
            } else {
                high = middle;
            }
        }
        low
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::warnings::call_weight::call_weight;
    use crate::domain::warnings::rules::trial::{judged, macaw, on_facts};

    fn call_g(script: &Scenario, day: i32) -> f64 {
        on_facts(script, script.at(day, 8, 0), call_weight)
            .unwrap()
            .as_g()
    }

    /// Whether the ladder calls on the next morning at so many grams, weighed twice.
    fn calls(script: &Scenario, day: i32, grams: i32) -> bool {
        let mut script = script.clone();
        script.weigh(day, grams).weigh(day, grams);
        let found = judged(&script, script.at(day, 8, 0)).findings;
        found
            .iter()
            .any(|finding| finding.rule.is_of_weight() && finding.level.is_call())
    }

    #[test]
    fn it_is_the_highest_weight_at_which_the_ladder_calls() {
        // steady; falling slowly; higher than the handover weight
        let courses: [[i32; 6]; 3] = [
            [1_001, 998, 1_000, 1_002, 999, 1_000],
            [1_000, 996, 991, 987, 984, 979],
            [1_041, 1_043, 1_044, 1_041, 1_043, 1_042],
        ];
        for course in courses {
            let mut script = macaw();
            for (day, grams) in (1..).zip(course) {
                script.weigh(day, grams);
            }
            let found = crate::domain::quantity::count::rounded(call_g(&script, 6));
            assert!(calls(&script, 7, found), "{course:?}: {found}");
            assert!(!calls(&script, 7, found + 2), "{course:?}: {found}");
        }
    }

    #[test]
    fn without_a_weight_there_is_none() {
        let script = macaw();
        assert_eq!(on_facts(&script, script.at(1, 8, 0), call_weight), None);
    }
}

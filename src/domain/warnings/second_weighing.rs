//! A second weighing: no call rests on one reading that nobody confirmed.
//!
//! A call for the breeder that the latest reading alone would make is at watch until it was weighed again, somebody
//! said that it counts as it is, or [`SITTING_MINUTES`](crate::domain::weight::noise::SITTING_MINUTES) are over. The vet's levels never wait.
//! Asked for is it as well when the reading lies far below the expected one, and while the weight is watched as falling.

use crate::domain::quantity::order::sorted_by;
use crate::domain::time::moment::Moment;
use crate::domain::warnings::level::{Finding, Level};
use crate::domain::warnings::rules::{self, Facts};
use crate::domain::weight::fall::{Fall, WATCH_ODDS};
use crate::domain::weight::trend::{self, Latest};

/// A reading this far below the expected one is weighed again, standard deviations. Ours: one healthy morning in
/// forty.
pub const LOW_SD: f64 = 2.0;

/// Another weighing is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SecondWeighing {
    /// How many were made, at least 1. From 2 on they differ by more than the scale can.
    pub weighings: u32,
    /// From here on it counts as it is.
    pub until: Moment,
}

/// What all rules say together.
#[derive(Debug, Clone, PartialEq)]
pub struct Judgement {
    /// The level that the findings add up to.
    pub level: Level,
    /// Every finding, most worrying first.
    pub findings: Vec<Finding>,
    /// Whether the latest weight is to be weighed again.
    pub second_weighing: Option<SecondWeighing>,
}

/// Every finding that holds in the chick's stage, most worrying first, and the level they add up to.
pub fn judgement(facts: &Facts<'_>) -> Judgement {
    let (findings, second_weighing) = waiting(facts, rules::found(facts));
    let findings = sorted_by(findings, |first, second| {
        second
            .level
            .cmp(&first.level)
            .then(first.rule.cmp(&second.rule))
    });
    Judgement {
        level: rules::raised(&findings),
        findings,
        second_weighing,
    }
}

/// The findings without the calls that wait, and whether another weighing is asked for.
fn waiting(facts: &Facts<'_>, findings: Vec<Finding>) -> (Vec<Finding>, Option<SecondWeighing>) {
    let unconfirmed = facts.trend.latest.filter(|latest| !latest.is_confirmed);
    let Some(latest) = unconfirmed else {
        return (findings, None);
    };
    let second = SecondWeighing {
        weighings: latest.sitting.weighings,
        until: latest.sitting.waits_until(),
    };
    let is_low = latest.off_sd.is_some_and(|off_sd| off_sd < -LOW_SD);
    let is_call = findings.iter().any(is_weight_call);
    let falls = |fall: Fall| fall.is_as_likely(WATCH_ODDS);
    let is_falling = facts.trend.fall.is_some_and(falls);
    let is_first = latest.sitting.weighings < 2;
    let asked = (is_low || is_falling || is_call || !is_first).then_some(second);
    if !is_call || called_before(facts, &latest) {
        return (findings, asked);
    }
    let waits =
        |finding: &Finding| finding.rule.is_of_weight() && finding.level == Level::CallBreeder;
    let findings = findings.into_iter().map(|finding| {
        let level = if waits(&finding) {
            Level::Watch
        } else {
            finding.level
        };
        Finding { level, ..finding }
    });
    (findings.collect(), asked)
}

fn is_weight_call(finding: &Finding) -> bool {
    finding.rule.is_of_weight() && finding.level.is_call()
}

/// Whether the weights before this sitting called already: then nothing is taken back while it waits.
fn called_before(facts: &Facts<'_>, latest: &Latest) -> bool {
    let mut chick = facts.chick.clone();
    chick
        .weighings
        .retain(|weighing| weighing.at < latest.sitting.first_at);
    let trend = trend::weight_trend(facts.now, &chick);
    let before = Facts {
        chick: &chick,
        trend: &trend,
        ..*facts
    };
    rules::found(&before).iter().any(is_weight_call)
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, CropAtWeighing};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::quantity::units::Grams;
    use crate::domain::warnings::level::{Level, RuleId};
    use crate::domain::warnings::rules::trial::{judged, macaw};

    fn steady() -> Scenario {
        let mut script = macaw();
        for day in 1..=5 {
            script.weigh(day, 945);
        }
        script
    }

    fn again(script: &mut Scenario, day: i32, minute: i32, grams: i32) {
        let weight = Grams::whole(grams);
        let crop = CropAtWeighing::Empty;
        script.note(day, 6, minute, Change::Weighed { weight, crop });
    }

    /// Level of the weight and how many weighings were made of those that are asked for, on day 6.
    fn at(script: &Scenario, hour: i32, minute: i32) -> (Option<Level>, Option<u32>) {
        let all = judged(script, script.at(6, hour, minute));
        let of_weight = all
            .findings
            .iter()
            .filter(|finding| finding.rule.is_of_weight());
        let level = of_weight.map(|finding| finding.level).max();
        (level, all.second_weighing.map(|second| second.weighings))
    }

    #[test]
    fn no_call_rests_on_one_reading_until_half_an_hour_is_over() {
        // 10.5 % below the handover weight of 1,000 g, 5.3 % in a day; weighed at 06:45
        let mut script = steady();
        script.weigh(6, 895);
        assert_eq!(at(&script, 6, 46), (Some(Level::Watch), Some(1)));
        assert_eq!(at(&script, 7, 14), (Some(Level::Watch), Some(1)));
        assert_eq!(at(&script, 7, 15), (Some(Level::CallBreeder), None));
    }

    #[test]
    fn a_weight_that_nobody_wants_to_weigh_again_calls_at_once() {
        let mut script = steady();
        script.weigh(6, 895);
        let journal = script.journal();
        let id = journal.entries().iter().max_by_key(|entry| entry.at);
        let id = id.expect("it was weighed").id;
        assert_eq!(at(&script, 6, 47), (Some(Level::Watch), Some(1)));
        script.note(6, 6, 46, Change::WeightStands { id });
        assert_eq!(at(&script, 6, 47), (Some(Level::CallBreeder), None));
    }

    #[test]
    fn the_mean_of_two_counts_at_once() {
        let mut script = steady();
        script.weigh(6, 895);
        again(&mut script, 6, 50, 899);
        assert_eq!(at(&script, 6, 51), (Some(Level::CallBreeder), None));
        let mut script = steady();
        script.weigh(6, 915);
        again(&mut script, 6, 50, 943);
        // 929 g: 1.7 % in a day
        assert!(at(&script, 6, 51).0 < Some(Level::CallBreeder));
    }

    #[test]
    fn two_that_differ_by_more_than_the_scale_can_want_a_third_and_the_middle_counts() {
        let mut script = steady();
        script.weigh(6, 895);
        again(&mut script, 6, 50, 960);
        assert_eq!(at(&script, 6, 51).1, Some(2));
        again(&mut script, 6, 55, 950);
        assert_eq!(at(&script, 6, 56), (None, None));
    }

    #[test]
    fn the_vets_levels_do_not_wait() {
        let mut script = steady();
        script.weigh(6, 840);
        assert!(Some(Level::VetToday) <= at(&script, 6, 46).0);
    }

    #[test]
    fn a_call_that_was_there_before_is_not_taken_back() {
        let mut script = macaw();
        for (day, grams) in (1..).zip([945, 945, 895, 895, 895, 895]) {
            script.weigh(day, grams);
        }
        let before = judged(&script, script.at(5, 20, 0));
        assert_eq!(before.level, Level::CallBreeder);
        assert_eq!(at(&script, 6, 46), (Some(Level::CallBreeder), Some(1)));
    }

    #[test]
    fn an_expected_weight_is_not_asked_about() {
        let mut script = steady();
        script.weigh(6, 941);
        assert_eq!(at(&script, 6, 46), (None, None));
        let found = judged(&script, script.at(6, 6, 46)).findings;
        assert!(
            found
                .iter()
                .all(|finding| finding.rule != RuleId::FallingWeight)
        );
    }
}

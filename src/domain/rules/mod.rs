//! The ladder of warnings: one rule a file, and the two rules that raise the level.
//!
//! **Invariants.** A rule sees [`Facts`] and answers with numbers. It never says to give more food
//! than the plan. Each rule names its limits, their standing and their source.

pub mod gap_too_short;
pub mod handover_loss;
pub mod missed_feeds;
pub mod no_weighing;
pub mod one_day_loss;
pub mod sign_seen;
pub mod volume_over_ceiling;

use crate::domain::chick::Chick;
use crate::domain::evidence::Standing;
use crate::domain::level::{Finding, Level, RuleId, Value};
use crate::domain::moment::Moment;
use crate::domain::schedule::ScheduledFeed;
use crate::domain::signs::Sign;
use crate::domain::zone::Zone;

/// What a rule may look at.
#[derive(Debug, Clone, Copy)]
pub struct Facts<'a> {
    /// Now.
    pub now: Moment,
    /// The zone the phone is in.
    pub zone: &'a Zone,
    /// The chick.
    pub chick: &'a Chick,
    /// Feeds from the day before yesterday to tomorrow.
    pub feeds: &'a [ScheduledFeed],
}

/// One rule of the ladder.
#[derive(Debug, Clone, Copy)]
pub struct Rule {
    /// Its name in the manual: its file's, with hyphens.
    pub name: &'static str,
    /// Its limits in words of the manual.
    pub limits: &'static str,
    /// How well founded the limits are.
    pub standing: Standing,
    /// Where they come from.
    pub source: &'static str,
    /// Looks, and tells every finding.
    pub check: fn(&Facts<'_>) -> Vec<Finding>,
}

/// Every rule, in the order of the manual.
pub const RULES: &[Rule] = &[
    handover_loss::RULE,
    one_day_loss::RULE,
    no_weighing::RULE,
    missed_feeds::RULE,
    gap_too_short::RULE,
    volume_over_ceiling::RULE,
    sign_seen::RULE,
];

/// Every finding, most worrying first, and the level they add up to.
pub fn evaluate(facts: &Facts<'_>) -> (Level, Vec<Finding>) {
    let mut findings: Vec<Finding> = RULES.iter().flat_map(|rule| (rule.check)(facts)).collect();
    findings.sort_by(|first, second| {
        second
            .level
            .cmp(&first.level)
            .then(first.rule.cmp(&second.rule))
    });
    (raised(&findings), findings)
}

/// The level that findings add up to: the highest of them, two at *Ring the breeder* make *Vet
/// today*, and *Vet today* with a dull chick makes *Emergency*. Both raising rules are ours.
pub fn raised(findings: &[Finding]) -> Level {
    let highest = findings
        .iter()
        .map(|finding| finding.level)
        .max()
        .unwrap_or(Level::Settled);
    let calls = findings
        .iter()
        .filter(|finding| finding.level == Level::RingBreeder)
        .count();
    let level = if calls >= 2 {
        highest.max(Level::VetToday)
    } else {
        highest
    };
    let is_dull = findings
        .iter()
        .any(|finding| matches!(finding.rule, RuleId::SignSeen(Sign::Dull | Sign::Limp)));
    if level == Level::VetToday && is_dull && findings.len() >= 2 {
        Level::Emergency
    } else {
        level
    }
}

/// The level of the highest limit that `value` reaches; limits rise with their levels.
pub(crate) fn level_reached(value: f64, limits: &[(f64, Level)]) -> Option<(f64, Level)> {
    // A limit written as 10 % is reached by a loss that is 10 % but for the float's last digits.
    limits
        .iter()
        .rev()
        .find(|(limit, _)| value >= *limit - 1e-9)
        .copied()
}

/// A finding in per cent.
pub(crate) const fn pct_finding(
    rule: RuleId,
    level: Level,
    pct: f64,
    limit: f64,
    standing: Standing,
) -> Finding {
    Finding {
        rule,
        level,
        value: Value::Pct(pct),
        limit: Value::Pct(limit),
        standing,
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::rules::*;

    fn finding(rule: RuleId, level: Level) -> Finding {
        Finding {
            rule,
            level,
            value: Value::Seen,
            limit: Value::Seen,
            standing: Standing::Ours,
        }
    }

    #[test]
    fn nothing_found_is_settled() {
        assert_eq!(raised(&[]), Level::Settled);
    }

    #[test]
    fn one_call_stays_a_call_and_two_make_vet_today() {
        let call = finding(RuleId::HandoverLoss, Level::RingBreeder);
        let watch = finding(RuleId::NoWeighing, Level::Watch);
        assert_eq!(raised(&[call, watch]), Level::RingBreeder);
        assert_eq!(raised(&[call, call]), Level::VetToday);
    }

    #[test]
    fn vet_today_with_a_dull_chick_is_an_emergency() {
        let vet = finding(RuleId::HandoverLoss, Level::VetToday);
        let dull = finding(RuleId::SignSeen(Sign::Dull), Level::VetToday);
        assert_eq!(raised(&[vet]), Level::VetToday);
        assert_eq!(raised(&[dull]), Level::VetToday);
        assert_eq!(raised(&[vet, dull]), Level::Emergency);
    }

    #[test]
    fn a_limit_is_reached_at_its_own_value() {
        let limits = [(10.0, Level::RingBreeder), (15.0, Level::VetToday)];
        assert_eq!(level_reached(9.99, &limits), None);
        assert_eq!(
            level_reached(10.0, &limits),
            Some((10.0, Level::RingBreeder))
        );
        assert_eq!(
            level_reached(14.99, &limits),
            Some((10.0, Level::RingBreeder))
        );
        assert_eq!(level_reached(15.0, &limits), Some((15.0, Level::VetToday)));
    }
}

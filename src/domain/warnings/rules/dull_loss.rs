//! *Watches* for a loss of any size while the chick is dull or limp.
//!
//! *Limit* any loss, against the handover weight, the peak or the morning before: vet today.
//!
//! *Why* a bird hides illness as long as it can; dull and lighter together mean that it no longer can.
//!
//! *Sources* any loss with other signs as an alarm for any parrot: avian vets' pages on weighing. The
//! 36 h for which a weighing counts: ours.
//!
//! *Wrong when* the chick was only sleepy, or the loss is no more than the scale's noise.

use crate::domain::journal::signs::Sign;
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, pct_finding, sign_seen};
use crate::domain::weight::loss;
use crate::domain::weight::readings;

/// A weighing counts for this long, minutes. Ours.
const SHOWN_MINUTES: i64 = 36 * 60;

/// The rule.
pub const RULE: Rule = Rule {
    name: "dull-loss",
    limits: &[Limit::new(Level::VetToday, Value::Seen)],
    standing: Standing::Published,
    source: "avian vets' pages on weighing: any loss with other signs",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let (now, chick) = (facts.now, facts.chick);
    let is_dull = sign_seen::present(now, chick)
        .iter()
        .any(|seen| matches!(seen.what, Sign::Dull | Sign::Limp));
    let is_recent = readings::latest_empty(now, chick)
        .is_some_and(|latest| now.minutes_since(latest.at) <= SHOWN_MINUTES);
    if !is_dull || !is_recent {
        return Vec::new();
    }
    let losses = [
        loss::handover_loss_pct(now, chick),
        facts.trend.peak_loss_pct,
        loss::one_day_loss_pct(now, chick),
    ];
    let worst = losses.into_iter().flatten().max_by(f64::total_cmp);
    let (rule, level, standing) = (RuleId::DullLoss, Level::VetToday, Standing::Published);
    worst
        .filter(|loss| *loss > 1e-9)
        .map(|loss| pct_finding(rule, level, loss, 0.0, standing))
        .into_iter()
        .collect()
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::Change;
    use crate::domain::warnings::rules::dull_loss::*;
    use crate::domain::warnings::rules::trial::{ladder, level_of, macaw, sign};

    #[test]
    fn any_loss_of_a_dull_chick_is_for_the_vet() {
        let level = |grams, seen| {
            let mut script = macaw();
            script.weigh(1, grams).note(1, 8, 0, sign(seen));
            level_of(&RULE, &script, script.at(1, 9, 0))
        };
        assert_eq!(level(1_000, Sign::Dull), None);
        assert_eq!(level(999, Sign::Dull), Some(Level::VetToday));
        assert_eq!(level(999, Sign::Limp), Some(Level::VetToday));
        assert_eq!(level(900, Sign::BegsAllDay), None);
    }

    #[test]
    fn a_weighing_of_a_day_and_a_half_ago_tells_nothing_of_now() {
        let mut script = macaw();
        script.weigh(1, 900).note(2, 17, 0, sign(Sign::Dull));
        let level = |minute| level_of(&RULE, &script, script.at(2, 18, minute));
        assert_eq!(level(45), Some(Level::VetToday));
        assert_eq!(level(46), None);
    }

    #[test]
    fn a_small_loss_and_dullness_alone_do_not_add_up_to_an_emergency() {
        let mut script = macaw();
        script.note(1, 6, 0, Change::Arrived).weigh(1, 990);
        script.note(1, 6, 50, sign(Sign::Dull));
        assert_eq!(ladder(&script, script.at(1, 6, 55)).0, Level::VetToday);
    }
}

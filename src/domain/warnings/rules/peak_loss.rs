//! *Watches* the latest empty-crop weight against the highest weight since the handover.
//!
//! *Limit* 10 %: ring the breeder; 15 %: vet today; 20 %: emergency.
//!
//! A reading at 10 % is at watch only while four readings or more say with less than 90 % certainty
//! that so much is lost; from 15 % on the reading counts alone.
//!
//! *Why* a chick falls from its peak while it is weaned, but one that falls this far takes in too
//! little or is ill. No feed is dropped from 10 % on.
//!
//! *Sources* about 10 % of the peak: Watchbird Nov/Dec 1999 (which reports that macaw chicks lost a
//! great deal more); around 10 % from the maximum before fledging: Duerr & Gage 2020, p. 599. 15 % and
//! 20 %: ours.
//! DIFFERENCE: healthy large macaws are said to lose 10 to 25 % (recalled, not read again); we ring
//! earlier, since a first-time owner cannot tell these from ill ones.
//!
//! *Wrong when* a large macaw loses more than usual and is well; or when three morning weighings in a
//! row had food in the crop, so that the peak is too high. The 90 %: ours; the highest of many readings
//! lies above the true peak, and on made-up healthy chicks this rule alone rang more often than a
//! reading below 90 % of the handover weight.

use crate::domain::quantity::evidence::Standing;
use crate::domain::statistics::normal;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, days, level_reached, pct_finding};
use crate::domain::weight::loss;
use crate::domain::weight::trend::WeightTrend;

/// Loss that wants a call, per cent of the peak.
const RING_PCT: f64 = 10.0;
/// Chance that the loss is at least [`RING_PCT`], from which a reading at it is believed.
const BELIEVED: f64 = 0.9;

/// The rule.
pub const RULE: Rule = Rule {
    name: "peak-loss",
    limits: &[
        Limit::new(Level::Watch, days(loss::PEAK_DAYS)),
        Limit::new(Level::RingBreeder, Value::Pct(RING_PCT)),
        Limit::new(Level::VetToday, Value::Pct(15.0)),
        Limit::new(Level::Emergency, Value::Pct(20.0)),
    ],
    standing: Standing::Ours,
    source: "10 %: Watchbird Nov/Dec 1999; Duerr & Gage 2020, p. 599; 15 % and 20 %: ours",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let loss = loss::peak_loss_pct(facts.now, facts.chick);
    let is_doubtful = believed(facts.trend).is_some_and(|chance| chance < BELIEVED);
    let reached = loss.and_then(|loss| {
        let (limit, level) = level_reached(loss, RULE.limits)?;
        let is_waiting = is_doubtful && level == Level::RingBreeder;
        let level = if is_waiting { Level::Watch } else { level };
        Some((loss, (limit, level)))
    });
    reached
        .map(|(loss, (limit, level))| {
            let standing = if level == Level::RingBreeder {
                Standing::Published
            } else {
                Standing::Ours
            };
            pct_finding(RuleId::PeakLoss, level, loss, limit, standing)
        })
        .into_iter()
        .collect()
}

/// Chance that the loss from the peak is at least [`RING_PCT`]; `None` while there is no pace.
fn believed(trend: &WeightTrend) -> Option<f64> {
    trend.now?.pace?;
    let loss = trend.peak_loss_pct?;
    let sd = (loss.high - loss.value) / normal::Z_95;
    Some(1.0 - normal::chance_below_limit(RING_PCT, loss.value, sd * sd)?)
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::warnings::rules::peak_loss::*;
    use crate::domain::warnings::rules::trial::{found, level_of, macaw};
    use crate::domain::weight::level::{LevelNow, Pace};
    use crate::domain::weight::trend::Interval;

    /// The level at a weight after a peak of 1,100 g.
    fn level_at(grams: i32) -> Option<Level> {
        let mut script = macaw();
        script.weigh(1, 1_100).weigh(2, 1_100).weigh(3, 1_100);
        script.weigh(8, grams);
        level_of(&RULE, &script, script.at(8, 12, 0))
    }

    #[test]
    fn ten_fifteen_and_twenty_per_cent_are_reached_at_their_own_value() {
        // of 1,100 g: 990 g, 935 g and 880 g
        assert_eq!(level_at(991), None);
        assert_eq!(level_at(990), Some(Level::Watch));
        assert_eq!(level_at(936), Some(Level::RingBreeder));
        assert_eq!(level_at(935), Some(Level::VetToday));
        assert_eq!(level_at(881), Some(Level::VetToday));
        assert_eq!(level_at(880), Some(Level::Emergency));
        assert_eq!(level_at(700), Some(Level::Emergency));
    }

    #[test]
    fn a_reading_at_ten_per_cent_rings_when_the_others_bear_it_out() {
        let mut script = macaw();
        script.weigh(1, 1_100).weigh(2, 1_100).weigh(3, 1_100);
        script.weigh(4, 1_100).weigh(5, 980);
        let level = |script: &Scenario, day| level_of(&RULE, script, script.at(day, 8, 0));
        assert_eq!(level(&script, 5), Some(Level::Watch));
        // three mornings in a row 12 % below the peak
        script.weigh(6, 968).weigh(7, 968).weigh(8, 968);
        assert_eq!(level(&script, 8), Some(Level::RingBreeder));
    }

    #[test]
    fn one_full_crop_reading_makes_no_peak() {
        let mut script = macaw();
        script.weigh(1, 1_000).weigh(2, 1_120).weigh(3, 1_000);
        assert_eq!(level_of(&RULE, &script, script.at(3, 12, 0)), None);
    }

    #[test]
    fn only_the_call_at_ten_per_cent_is_called_published() {
        let mut script = macaw();
        script.weigh(1, 1_100).weigh(2, 1_100).weigh(3, 1_100);
        script.weigh(4, 1_100).weigh(5, 980);
        let standing = |script: &Scenario, day| {
            let found = found(&RULE, script, script.at(day, 8, 0));
            (found[0].level, found[0].standing)
        };
        assert_eq!(standing(&script, 5), (Level::Watch, Standing::Ours));
        script.weigh(6, 968).weigh(7, 968).weigh(8, 968);
        let expected = (Level::RingBreeder, Standing::Published);
        assert_eq!(standing(&script, 8), expected);
    }

    #[test]
    fn the_chance_is_that_of_a_normal_distribution() {
        // a loss of 10.25 % with a standard deviation of 0.5 %: half of one above the limit of 10 %, below
        // which 30.85 % lie (table of the normal distribution)
        let trend = WeightTrend {
            now: Some(LevelNow {
                grams: 1_000.0,
                sd_g: 5.0,
                pace: Some(Pace {
                    g_per_day: 0.0,
                    sd_g_per_day: 1.0,
                    pct_per_day: 0.0,
                }),
            }),
            peak_loss_pct: Some(Interval {
                value: 10.25,
                low: 9.27,
                high: 11.23,
            }),
            ..WeightTrend::default()
        };
        assert!((believed(&trend).unwrap() - 0.6915).abs() < 5e-4);
    }
}

//! *Watches* how fast the weight falls, as all readings together tell it.
//!
//! *Limit* a loss of more than 0.7 % a day that is at least 70 % certain: watch; call the breeder when
//! it is at least 88 % certain and the chance of being below the plan's loss limit within 3 days is one
//! in four or more as well, or when the mean of three days lies more than 1 % a day below that of the three before.
//!
//! *Why* a chick that eats too little loses day after day. The pace tells it days before the loss
//! reaches its limit, and no single bad reading makes or hides it.
//!
//! *Sources* all these numbers are ours. 0.7 % a day is more than a healthy weaning takes: 10 % of the
//! peak (Duerr & Gage 2020, p. 599) over four weeks at its steepest is 0.5 % a day; 0.36 % a day is what ten hand-reared chicks lost from peak to weaning
//! (Groffen 2008, 75 g of 375 g in 55 days). 1 % a day: common practice. Chances and pace
//! were chosen on made-up chicks: illness is told in about two thirds of the days that a reading below
//! 90 % needs; all rules together then make 1.4 times its false calls.
//!
//! *Wrong when* two or three mornings in a row had food in the crop and the next ones had not; or when
//! the scale is coarser than 1 %.

use crate::domain::quantity::evidence::Standing;
use crate::domain::statistics::normal;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule, days, pct_finding};
use crate::domain::weight::mornings;
use crate::domain::weight::readings;

/// Loss a day that healthy weaning stays below, per cent.
pub const PACE_PCT: f64 = 0.7;
/// Chance that the loss a day is more than that, from which it is watched, so that a watch comes
/// before a call.
pub const WATCH_CHANCE: f64 = 0.70;
/// Chance that the loss a day is more than that, from which somebody may be rung.
pub const PACE_CHANCE: f64 = 0.88;
/// Chance of being below the plan's limit within `LIMIT_DAYS`, from which somebody is rung.
pub const LIMIT_CHANCE: f64 = 0.25;
/// Days ahead at which the plan's limit is asked about, 1 to 3.
const LIMIT_DAYS: usize = 3;

/// Loss a day over two times three days, from which somebody is rung, per cent. Common practice.
const THREE_DAY_PCT: f64 = 1.0;

/// A weighing counts for this long, minutes. Ours.
const SHOWN_MINUTES: i64 = 36 * 60;

/// The rule.
pub const RULE: Rule = Rule {
    name: "falling-weight",
    limits: &[
        Limit::new(Level::Watch, Value::Pct(PACE_PCT)),
        Limit::new(Level::Watch, Value::Pct(WATCH_CHANCE * 100.0)),
        Limit::new(Level::CallBreeder, Value::Pct(PACE_CHANCE * 100.0)),
        Limit::new(Level::CallBreeder, Value::Count(LIMIT_DAYS)),
        Limit::new(Level::CallBreeder, Value::Pct(LIMIT_CHANCE * 100.0)),
        Limit::new(Level::CallBreeder, days(mornings::SMOOTHED_DAYS)),
        Limit::new(Level::CallBreeder, Value::Pct(THREE_DAY_PCT)),
    ],
    standing: Standing::Ours,
    source: "0.7 % a day is more than 10 % over a weaning (Duerr & Gage 2020, p. 599); pace and chances: our own, tried on made-up chicks",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let is_recent = readings::latest_empty(facts.now, facts.chick)
        .is_some_and(|latest| facts.now.minutes_since(latest.at) <= SHOWN_MINUTES);
    let Some((loss_pct, chance)) = loss_pct_per_day(facts).filter(|_| is_recent) else {
        return Vec::new();
    };
    if chance < WATCH_CHANCE {
        return Vec::new();
    }
    let below_limit = facts
        .trend
        .below_limit
        .and_then(|below| below.in_days.get(LIMIT_DAYS - 1).copied());
    let is_near_limit = below_limit.is_some_and(|below| LIMIT_CHANCE <= below);
    let today = facts.zone.lived(facts.now).day;
    let of_days = mornings::mornings(facts.now, facts.chick);
    let of_days = mornings::three_day_loss_pct_per_day(&of_days, today);
    let is_fast = of_days.is_some_and(|loss| loss > THREE_DAY_PCT + 1e-9);
    let level = if (is_near_limit || is_fast) && PACE_CHANCE <= chance {
        Level::CallBreeder
    } else {
        Level::Watch
    };
    let (rule, standing) = (RuleId::FallingWeight, Standing::Ours);
    vec![pct_finding(rule, level, loss_pct, PACE_PCT, standing)]
}

/// The most likely loss a day in per cent, and the chance that it is above [`PACE_PCT`].
fn loss_pct_per_day(facts: &Facts<'_>) -> Option<(f64, f64)> {
    let now = facts.trend.now?;
    let pace = now.pace?;
    let slowest_g_per_day = -PACE_PCT / 100.0 * now.grams;
    let variance = pace.sd_g_per_day * pace.sd_g_per_day;
    // The pace is a gain: a faster loss lies below.
    let faster = 1.0 - normal::chance_below_limit(pace.g_per_day, slowest_g_per_day, variance)?;
    Some((-pace.pct_per_day, faster))
}

#[cfg(test)]
mod tests {
    use crate::domain::homecoming::life_stage::LifeStage;
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::quantity::units::Percent;
    use crate::domain::warnings::level::Value;
    use crate::domain::warnings::rules::falling_weight::*;
    use crate::domain::warnings::rules::trial::{found, level_of, macaw, plan, with_plan};
    use crate::domain::weight::level::{LevelNow, Pace};
    use crate::domain::weight::trend::{BelowLimit, WeightTrend};

    /// The level of a chick weighed today whose trend says that it weighs 1,000 g, loses so many
    /// per cent a day with that standard deviation, and passes the limit with that chance.
    fn level_at(loss_pct: f64, sd_pct: f64, in_three_days: f64) -> Option<Level> {
        let mut script = macaw();
        script.weigh(1, 1_000);
        let (chick, zone) = (script.chick().unwrap(), script.zone());
        let trend = WeightTrend {
            now: Some(LevelNow {
                grams: 1_000.0,
                sd_g: 8.0,
                pace: Some(Pace {
                    g_per_day: -10.0 * loss_pct,
                    sd_g_per_day: 10.0 * sd_pct,
                    pct_per_day: -loss_pct,
                }),
            }),
            below_limit: Some(BelowLimit {
                limit_g: 900.0,
                now: 0.0,
                in_days: [0.0, 0.0, in_three_days],
            }),
            ..WeightTrend::default()
        };
        let facts = Facts {
            now: script.at(1, 8, 0),
            zone: &zone,
            chick: &chick,
            feeds: &[],
            trend: &trend,
            stage: LifeStage::Weaning,
        };
        check(&facts).first().map(|finding| finding.level)
    }

    #[test]
    fn a_pace_counts_when_it_is_certain_enough() {
        // 70 % of a normal distribution lie below 0.524 standard deviations (table of the normal
        // distribution): 0.7 % + 0.524 × 0.4 % = 0.91 % a day.
        assert_eq!(level_at(0.90, 0.4, 0.0), None);
        assert_eq!(level_at(0.92, 0.4, 0.0), Some(Level::Watch));
        assert_eq!(level_at(0.69, 0.0, 0.0), None);
        assert_eq!(level_at(0.71, 0.0, 0.0), Some(Level::Watch));
        assert_eq!(level_at(-2.0, 0.4, 0.0), None);
    }

    #[test]
    fn a_limit_near_by_makes_it_a_call() {
        assert_eq!(level_at(1.5, 0.4, 0.249), Some(Level::Watch));
        assert_eq!(level_at(1.5, 0.4, 0.25), Some(Level::CallBreeder));
        assert_eq!(level_at(1.5, 0.4, 0.251), Some(Level::CallBreeder));
        // and certain enough: 88 % lie below 1.175 standard deviations, 0.7 % + 1.175 × 0.4 % = 1.17 %
        assert_eq!(level_at(1.16, 0.4, 0.9), Some(Level::Watch));
        assert_eq!(level_at(1.18, 0.4, 0.9), Some(Level::CallBreeder));
        // a chick near the limit that keeps its weight is no case for this rule
        assert_eq!(level_at(0.2, 0.4, 0.9), None);
    }

    /// Steady for a week, then so many grams less every day.
    fn falling(mut script: Scenario, grams_a_day: i32) -> Scenario {
        for day in 1..=7 {
            script.weigh(day, 1_000);
        }
        for day in 8..=11 {
            script.weigh(day, 1_000 - (day - 7) * grams_a_day);
        }
        script
    }

    #[test]
    fn two_per_cent_a_day_are_told_before_the_loss_reaches_its_limit() {
        // day 11: 8 % below the handover weight of 1,000 g
        let script = falling(macaw(), 20);
        let level = |day| level_of(&RULE, &script, script.at(day, 8, 0));
        assert_eq!(level(7), None);
        assert_eq!(level(11), Some(Level::CallBreeder));
        let Value::Pct(loss) = found(&RULE, &script, script.at(11, 8, 0))[0].value else {
            panic!("the pace is in per cent")
        };
        // steady until day 7, then 2 % a day: what the readings together tell lies between
        assert!((0.7..=2.5).contains(&loss), "{loss}");
    }

    #[test]
    fn a_healthy_pace_is_not_told() {
        let script = falling(macaw(), 4);
        assert_eq!(level_of(&RULE, &script, script.at(11, 8, 0)), None);
    }

    #[test]
    fn a_fast_pace_is_a_call_also_far_from_the_breeders_limit() {
        let level = |grams_a_day| {
            let mut plan = plan();
            plan.loss_limit = Percent::whole(15);
            let script = falling(with_plan(plan), grams_a_day);
            level_of(&RULE, &script, script.at(11, 8, 0))
        };
        // day 11: days 6 to 8 have a mean of 1,000 - d/3, days 9 to 11 of 1,000 - 3d; the loss is 8d/3 in three
        // days: 0.98 % a day for d = 11, 1.80 % for d = 20
        assert!(level(11) < Some(Level::CallBreeder));
        assert_eq!(level(20), Some(Level::CallBreeder));
    }

    #[test]
    fn three_readings_tell_no_pace_and_an_old_one_none_of_today() {
        let mut script = macaw();
        script.weigh(1, 1_000).weigh(2, 960).weigh(3, 920);
        assert_eq!(level_of(&RULE, &script, script.at(3, 8, 0)), None);
        let script = falling(macaw(), 20);
        let level = |hour, minute| level_of(&RULE, &script, script.at(12, hour, minute));
        // weighed on day 11 at 06:45
        assert_eq!(level(18, 45), Some(Level::CallBreeder));
        assert_eq!(level(18, 46), None);
    }
}

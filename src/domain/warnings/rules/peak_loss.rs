//! *Watches* the latest empty-crop weight against the highest one: the peak on the breeder's card, or the
//! highest since the handover.
//!
//! *Limit* 10 %: call the breeder; 15 %: vet today; 20 %: emergency while it falls or shows any sign, vet today when
//! it was level for seven days; 25 %: emergency. A bird whose peak is below 150 g: vet today at 10 %, emergency at 20 %.
//!
//! A loss from 10 % on is at watch when the weight was level for seven days and there is no sign, and while
//! four readings or more say with less than 90 % certainty that so much is lost; from 15 % on the reading
//! counts alone.
//!
//! *Why* a chick falls from its peak while it is weaned, but one that falls this far takes in too
//! little or is ill. Between 15 and 20 % the loss is common in large parrots; have it checked.
//!
//! *Sources* about 10 % of the peak: Watchbird Nov/Dec 1999 (which reports that macaw chicks lost a
//! great deal more); around 10 % from the maximum before fledging: Duerr & Gage 2020, p. 599. 20 % on average in ten
//! hand-reared Spix's macaws that all weaned: Groffen 2008. 10 to 15 % as ordinary: a vet's handout. How high a peak is depends on the
//! feeding: International Zoo Yearbook 44, 2010. The steps, the level week and the small birds: ours.
//!
//! *Wrong when* a large macaw loses more than usual and is well; or when three morning weighings in a
//! row had food in the crop, so that the peak is too high. The 90 %: ours; the highest of many readings
//! lies above the true peak, and on made-up healthy chicks this rule alone rang more often than a
//! reading below 90 % of the handover weight.

use crate::domain::quantity::evidence::Standing;
use crate::domain::statistics::normal;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{
    Facts, Limit, Rule, SMALL_BELOW, days, level_reached, pct_finding, sign_seen,
};
use crate::domain::weight::mornings::{self, LEVEL_DAYS, LEVEL_PCT_PER_DAY};
use crate::domain::weight::trend::WeightTrend;

/// Loss that wants a call, and in a small bird the vet, per cent of the peak.
pub(crate) const RING_PCT: f64 = 10.0;
/// Loss that is for the vet, per cent of the peak.
const VET_PCT: f64 = 15.0;
/// Loss that is an emergency unless the weight is level and there is no sign, per cent of the peak.
const FALLING_PCT: f64 = 20.0;
/// Loss that is an emergency in any case, per cent of the peak.
const EMERGENCY_PCT: f64 = 25.0;
/// Fewest readings that make a peak where the breeder's card has none. Ours: one reading with food in the crop
/// then makes no false one.
const FEWEST_READINGS: usize = 3;
/// Chance that the loss is at least [`RING_PCT`], from which a reading at it is believed.
const BELIEVED: f64 = 0.9;

/// The limits of a bird whose peak is [`SMALL_BELOW`] or more.
const LIMITS: &[Limit] = &[
    Limit::new(Level::CallBreeder, Value::Pct(RING_PCT)),
    Limit::new(Level::VetToday, Value::Pct(VET_PCT)),
    Limit::new(Level::Emergency, Value::Pct(FALLING_PCT)),
    Limit::new(Level::Emergency, Value::Pct(EMERGENCY_PCT)),
];

/// The limits of a small bird.
const SMALL_LIMITS: &[Limit] = &[
    Limit::new(Level::VetToday, Value::Pct(RING_PCT)),
    Limit::new(Level::Emergency, Value::Pct(FALLING_PCT)),
];

/// The rule.
pub const RULE: Rule = Rule {
    name: "peak-loss",
    limits: &[
        Limit::new(Level::Watch, Value::Count(FEWEST_READINGS)),
        Limit::new(Level::CallBreeder, Value::Pct(RING_PCT)),
        Limit::new(Level::Watch, days(LEVEL_DAYS)),
        Limit::new(Level::Watch, Value::Pct(LEVEL_PCT_PER_DAY)),
        Limit::new(Level::VetToday, Value::Pct(VET_PCT)),
        Limit::new(Level::VetToday, Value::Grams(SMALL_BELOW)),
        Limit::new(Level::VetToday, Value::Pct(RING_PCT)),
        Limit::new(Level::Emergency, Value::Pct(FALLING_PCT)),
        Limit::new(Level::Emergency, Value::Pct(EMERGENCY_PCT)),
    ],
    standing: Standing::Ours,
    source: "10 %: Watchbird Nov/Dec 1999; Duerr & Gage 2020, p. 599; 20 % on average in weaned chicks: Groffen 2008; the steps: our own",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let (now, chick) = (facts.now, facts.chick);
    let trend = facts.trend;
    let is_small = trend
        .peak
        .is_some_and(|peak| peak.grams < SMALL_BELOW.as_g());
    let limits = if is_small { SMALL_LIMITS } else { LIMITS };
    let is_known = chick.plan.peak.is_some() || FEWEST_READINGS <= trend.readings;
    let reached = trend
        .peak_loss_pct
        .filter(|_| is_known)
        .and_then(|loss| level_reached(loss, limits).map(|(limit, level)| (loss, limit, level)));
    let Some((loss, limit, level)) = reached else {
        return Vec::new();
    };
    let is_doubtful = believed(facts.trend).is_some_and(|chance| chance < BELIEVED);
    let today = facts.zone.lived(now).day;
    let is_level = mornings::is_level(&mornings::mornings(now, chick), today)
        && sign_seen::present(now, chick).is_empty();
    let level = match level {
        Level::CallBreeder if is_doubtful || is_level => Level::Watch,
        Level::Emergency if is_level && !is_small && limit < EMERGENCY_PCT => Level::VetToday,
        Level::Settled | Level::Watch | Level::CallBreeder | Level::VetToday | Level::Emergency => {
            level
        }
    };
    let standing = if level == Level::CallBreeder {
        Standing::Published
    } else {
        Standing::Ours
    };
    vec![pct_finding(RuleId::PeakLoss, level, loss, limit, standing)]
}

/// Chance that the loss from the peak is at least [`RING_PCT`]; `None` while there is no pace.
fn believed(trend: &WeightTrend) -> Option<f64> {
    trend.now?.pace?;
    let loss = trend.peak_loss_of_level_pct?;
    let sd = (loss.high - loss.value) / normal::Z_95;
    Some(1.0 - normal::chance_below_limit(RING_PCT, loss.value, sd * sd)?)
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::journal::signs::Sign;
    use crate::domain::plan::care_plan::Reference;
    use crate::domain::quantity::units::Grams;
    use crate::domain::warnings::rules::peak_loss::*;
    use crate::domain::warnings::rules::trial::{
        day_zero, found, level_of, macaw, plan, sign, with_plan,
    };
    use crate::domain::weight::level::{LevelNow, Pace};
    use crate::domain::weight::trend::Interval;

    /// The level on day 16 after a peak of 1,100 g on the card and a week, or its last days, at one weight.
    fn level_after_week(grams: i32, seen: Option<Sign>) -> Option<Level> {
        let mut plan = plan();
        plan.peak = Some(Reference {
            weight: Grams::whole(1_100),
            day: day_zero().plus(-7),
        });
        let mut script = with_plan(plan);
        for day in 10..=16 {
            script.weigh(day, grams);
        }
        if let Some(seen) = seen {
            script.note(16, 7, 0, sign(seen));
        }
        level_of(&RULE, &script, script.at(16, 8, 0))
    }

    #[test]
    fn a_loss_that_was_level_for_a_week_is_watched_or_for_the_vet() {
        // of 1,100 g: 10 % are 990 g, 15 % 935 g, 20 % 880 g, 25 % 825 g
        assert_eq!(level_after_week(991, None), None);
        assert_eq!(level_after_week(990, None), Some(Level::Watch));
        assert_eq!(level_after_week(936, None), Some(Level::Watch));
        assert_eq!(level_after_week(935, None), Some(Level::VetToday));
        assert_eq!(level_after_week(880, None), Some(Level::VetToday));
        assert_eq!(level_after_week(826, None), Some(Level::VetToday));
        assert_eq!(level_after_week(825, None), Some(Level::Emergency));
        let seen = Some(Sign::BegsAllDay);
        assert_eq!(level_after_week(968, seen), Some(Level::CallBreeder));
        assert_eq!(level_after_week(880, seen), Some(Level::Emergency));
    }

    #[test]
    fn the_peak_on_the_card_counts_from_the_first_weighing() {
        let mut plan = plan();
        plan.peak = Some(Reference {
            weight: Grams::whole(1_200),
            day: day_zero().plus(-14),
        });
        let mut script = with_plan(plan);
        // of 1,200 g: 15 % are 1,020 g
        script.weigh(1, 1_021);
        let level = |script: &Scenario, day| level_of(&RULE, script, script.at(day, 8, 0));
        assert_eq!(level(&script, 1), Some(Level::CallBreeder));
        script.weigh(2, 1_020);
        assert_eq!(level(&script, 2), Some(Level::VetToday));
    }

    #[test]
    fn a_small_bird_is_for_the_vet_at_ten_per_cent() {
        let level = |peak: i32, grams: i32| {
            let mut plan = plan();
            plan.peak = Some(Reference {
                weight: Grams::whole(peak),
                day: day_zero(),
            });
            let mut script = with_plan(plan);
            script.weigh(1, grams);
            level_of(&RULE, &script, script.at(1, 8, 0))
        };
        assert_eq!(level(100, 91), None);
        assert_eq!(level(100, 90), Some(Level::VetToday));
        assert_eq!(level(100, 81), Some(Level::VetToday));
        assert_eq!(level(100, 80), Some(Level::Emergency));
        assert_eq!(level(150, 135), Some(Level::CallBreeder));
    }

    /// The level at a weight after a peak of 1,100 g on the card.
    fn level_at(grams: i32) -> Option<Level> {
        let mut plan = plan();
        let weight = Grams::whole(1_100);
        plan.peak = plan.reference.map(|reference| Reference {
            weight,
            ..reference
        });
        let mut script = with_plan(plan);
        script.weigh(1, 1_100).weigh(2, 1_100).weigh(3, 1_100);
        script.weigh(8, grams);
        level_of(&RULE, &script, script.at(8, 12, 0))
    }

    #[test]
    fn ten_fifteen_and_twenty_per_cent_are_reached_at_their_own_value() {
        // of 1,100 g: 990 g, 935 g and 880 g
        assert_eq!(level_at(991), None);
        assert_eq!(level_at(990), Some(Level::Watch));
        assert_eq!(level_at(936), Some(Level::CallBreeder));
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
        assert_eq!(level(&script, 8), Some(Level::CallBreeder));
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
        let expected = (Level::CallBreeder, Standing::Published);
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
            peak_loss_of_level_pct: Some(Interval {
                value: 10.25,
                low: 9.27,
                high: 11.23,
            }),
            ..WeightTrend::default()
        };
        assert!((believed(&trend).unwrap() - 0.6915).abs() < 5e-4);
    }
}

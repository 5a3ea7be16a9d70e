//! The ladder of warnings: one rule a file, and the two rules that raise the level.
//!
//! **Invariants.** A rule sees [`Facts`] and answers with numbers, never at *Settled*. It never says to
//! give more food than the plan. Each rule names its limits, their standing and their source.

pub mod arrival_loss;
pub mod crop_late;
pub mod crop_overnight;
pub mod crop_slow;
pub mod crop_static;
pub mod day_intake;
pub mod droppings_seen;
pub mod dull_loss;
pub mod falling_weight;
pub mod few_droppings;
pub mod gap_too_short;
pub mod growth_stalled;
pub mod handover_loss;
pub mod missed_feeds;
pub mod no_food_noted;
pub mod no_weighing;
pub mod one_day_loss;
pub mod peak_loss;
pub mod refused_feeds;
pub mod room_temperature;
pub mod served_cold;
pub mod served_hot;
pub mod sign_seen;
pub mod stable_loss;
pub mod stages;
pub mod transit_gap;
#[cfg(test)]
pub(crate) mod trial;
pub mod vet_visit_due;
pub mod volume_over_ceiling;

use crate::domain::feeding::scheduled::ScheduledFeed;
use crate::domain::homecoming::life_stage::LifeStage;
use crate::domain::journal::chick::Chick;
use crate::domain::journal::signs::{Sign, SignGroup};
use crate::domain::quantity::evidence::Standing;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::Moment;
use crate::domain::time::zone::Zone;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::weight::trend::WeightTrend;

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
    /// Where the weight stands and goes at that moment.
    pub trend: &'a WeightTrend,
    /// Where the chick stands in its life: what does not hold there is not found.
    pub stage: LifeStage,
}

/// One limit of a rule: a number that decides, and the level it decides about.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limit {
    /// The level.
    pub level: Level,
    /// The number; [`Value::Seen`] where seeing it is enough.
    pub at: Value,
}

impl Limit {
    /// A limit.
    pub const fn new(level: Level, at: Value) -> Self {
        Self { level, at }
    }
}

/// One rule of the ladder.
#[derive(Debug, Clone, Copy)]
pub struct Rule {
    /// Its name in the manual: its file's, with hyphens.
    pub name: &'static str,
    /// Every limit, from the constants of its check, in the order in which the manual names them.
    pub limits: &'static [Limit],
    /// How well founded the limits are: the weakest that decides a call. A finding has its own.
    pub standing: Standing,
    /// Where they come from.
    pub source: &'static str,
    /// Every finding of this rule.
    pub check: fn(&Facts<'_>) -> Vec<Finding>,
}

/// Every rule, in the order of the manual.
pub const RULES: &[Rule] = &[
    handover_loss::RULE,
    peak_loss::RULE,
    falling_weight::RULE,
    arrival_loss::RULE,
    one_day_loss::RULE,
    dull_loss::RULE,
    stable_loss::RULE,
    growth_stalled::RULE,
    no_weighing::RULE,
    missed_feeds::RULE,
    refused_feeds::RULE,
    day_intake::RULE,
    no_food_noted::RULE,
    transit_gap::RULE,
    gap_too_short::RULE,
    volume_over_ceiling::RULE,
    served_hot::RULE,
    served_cold::RULE,
    crop_slow::RULE,
    crop_late::RULE,
    crop_overnight::RULE,
    crop_static::RULE,
    droppings_seen::RULE,
    few_droppings::RULE,
    sign_seen::RULE,
    room_temperature::RULE,
    vet_visit_due::RULE,
];

/// The rule that a finding comes from.
pub const fn rule(id: RuleId) -> &'static Rule {
    match id {
        RuleId::HandoverLoss => &handover_loss::RULE,
        RuleId::PeakLoss => &peak_loss::RULE,
        RuleId::StableLoss => &stable_loss::RULE,
        RuleId::FallingWeight => &falling_weight::RULE,
        RuleId::ArrivalLoss => &arrival_loss::RULE,
        RuleId::OneDayLoss => &one_day_loss::RULE,
        RuleId::DullLoss => &dull_loss::RULE,
        RuleId::GrowthStalled => &growth_stalled::RULE,
        RuleId::NoWeighing => &no_weighing::RULE,
        RuleId::MissedFeeds => &missed_feeds::RULE,
        RuleId::RefusedFeeds => &refused_feeds::RULE,
        RuleId::DayIntake => &day_intake::RULE,
        RuleId::NoFoodNoted => &no_food_noted::RULE,
        RuleId::TransitGap => &transit_gap::RULE,
        RuleId::GapTooShort => &gap_too_short::RULE,
        RuleId::VolumeOverCeiling => &volume_over_ceiling::RULE,
        RuleId::ServedHot => &served_hot::RULE,
        RuleId::ServedCold => &served_cold::RULE,
        RuleId::CropSlow => &crop_slow::RULE,
        RuleId::CropLate => &crop_late::RULE,
        RuleId::CropOvernight => &crop_overnight::RULE,
        RuleId::CropStatic => &crop_static::RULE,
        RuleId::DroppingsSeen(_) => &droppings_seen::RULE,
        RuleId::FewDroppings => &few_droppings::RULE,
        RuleId::SignSeen(_) => &sign_seen::RULE,
        RuleId::RoomTemperature => &room_temperature::RULE,
        RuleId::VetVisitDue => &vet_visit_due::RULE,
    }
}

/// Every finding that holds in the chick's stage.
pub(crate) fn found(facts: &Facts<'_>) -> Vec<Finding> {
    let findings = RULES.iter().flat_map(|rule| (rule.check)(facts));
    findings
        .filter(|finding| stages::holds(finding.rule, facts.stage))
        .collect()
}

/// What a finding is about. Two findings about the same thing are one reason to ring, not two.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Concern {
    /// Weight.
    Weight,
    /// Food that did not go in.
    Intake,
    /// Crop and swallowing.
    Crop,
    /// Droppings.
    Droppings,
    /// Breathing.
    Breathing,
    /// Behaviour and warmth.
    Behaviour,
    /// Heat of a feed, or a feed that went wrong.
    FeedingAccident,
    /// Injury and poison.
    Injury,
}

/// What a rule is about; `None` for rules that watch the care and not the chick.
///
/// Ours. A loss against the handover weight is nearly always a loss against the peak too, and a feed
/// refused is followed by one not given: counted apart they would raise the level of one and the same
/// trouble. Silence, a missing weighing, a short gap, a large feed, the room or a missing vet visit are no signs
/// in the chick, so they call the breeder but raise nothing.
pub const fn concern(rule: RuleId) -> Option<Concern> {
    match rule {
        RuleId::HandoverLoss
        | RuleId::StableLoss
        | RuleId::PeakLoss
        | RuleId::FallingWeight
        | RuleId::ArrivalLoss
        | RuleId::OneDayLoss
        | RuleId::DullLoss
        | RuleId::GrowthStalled => Some(Concern::Weight),
        RuleId::MissedFeeds | RuleId::RefusedFeeds | RuleId::DayIntake | RuleId::TransitGap => {
            Some(Concern::Intake)
        }
        RuleId::CropSlow | RuleId::CropLate | RuleId::CropOvernight | RuleId::CropStatic => {
            Some(Concern::Crop)
        }
        RuleId::DroppingsSeen(_) | RuleId::FewDroppings => Some(Concern::Droppings),
        RuleId::ServedHot => Some(Concern::FeedingAccident),
        RuleId::SignSeen(sign) => Some(match sign.group() {
            SignGroup::Breathing => Concern::Breathing,
            SignGroup::Crop => Concern::Crop,
            SignGroup::Droppings => Concern::Droppings,
            SignGroup::Behaviour => Concern::Behaviour,
            SignGroup::FeedingAccident => Concern::FeedingAccident,
            SignGroup::Injury => Concern::Injury,
        }),
        RuleId::NoWeighing
        | RuleId::NoFoodNoted
        | RuleId::GapTooShort
        | RuleId::VolumeOverCeiling
        | RuleId::ServedCold
        | RuleId::RoomTemperature
        | RuleId::VetVisitDue => None,
    }
}

/// The level that findings add up to: the highest of them apart from reminders, two concerns at *Call the breeder* make
/// *Vet today*, and *Vet today* with a dull chick makes *Emergency*. Both raising rules are ours.
///
/// A dull chick is at *Vet today* by itself and with any loss; only another reason for *Vet today*, or
/// two concerns at *Call the breeder*, makes it an emergency.
pub fn raised(findings: &[Finding]) -> Level {
    let highest = findings
        .iter()
        .filter(|finding| !finding.rule.is_reminder())
        .map(|finding| finding.level)
        .max()
        .unwrap_or(Level::Settled);
    let mut concerns = findings
        .iter()
        .filter(|finding| finding.level == Level::CallBreeder)
        .filter_map(|finding| concern(finding.rule));
    let first = concerns.next();
    let are_several = concerns.any(|other| Some(other) != first);
    let level = if are_several {
        highest.max(Level::VetToday)
    } else {
        highest
    };
    let is_dull = findings.iter().any(|finding| means_dull(finding.rule));
    let is_vet_without = are_several
        || findings
            .iter()
            .any(|finding| finding.level == Level::VetToday && !means_dull(finding.rule));
    if is_dull && is_vet_without {
        Level::Emergency
    } else {
        level
    }
}

/// Why a level is above that of every finding.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Raise {
    /// Two concerns at *Call the breeder*.
    TwoConcerns,
    /// A dull chick with another reason for the vet.
    DullToo,
}

/// What raised the level that [`raised`] gives above the highest of the findings.
pub fn raise_of(findings: &[Finding]) -> Option<Raise> {
    let level = raised(findings);
    if level == Level::Settled || findings.iter().any(|finding| finding.level >= level) {
        return None;
    }
    if level == Level::Emergency {
        Some(Raise::DullToo)
    } else {
        Some(Raise::TwoConcerns)
    }
}

const fn means_dull(rule: RuleId) -> bool {
    matches!(
        rule,
        RuleId::SignSeen(Sign::Dull | Sign::Limp) | RuleId::DullLoss
    )
}

/// The highest of the limits in per cent that `pct` reaches, and its level; limits rise with their
/// levels.
pub(crate) fn level_reached(pct: f64, limits: &[Limit]) -> Option<(f64, Level)> {
    let mut in_pct = limits.iter().rev().filter_map(|limit| match limit.at {
        Value::Pct(at) => Some((at, limit.level)),
        Value::Grams(_)
        | Value::Ml(_)
        | Value::Celsius(_)
        | Value::Minutes(_)
        | Value::Count(_)
        | Value::Times(_)
        | Value::Seen => None,
    });
    // A limit written as 10 % is reached by a loss that is 10 % but for the float's last digits.
    in_pct.find(|(at, _)| pct >= at - 1e-9)
}

/// A whole number in a constant; `f64::from` is not const.
#[expect(clippy::as_conversions, reason = "every i32 is an f64")]
pub(crate) const fn whole(number: i32) -> f64 {
    number as f64
}

/// A stretch of so many days.
#[expect(
    clippy::as_conversions,
    reason = "every i32 is an i64, and i64::from is not const"
)]
pub(crate) const fn days(days: i32) -> Value {
    Value::Minutes(days as i64 * 24 * 60)
}

/// A bird below this has little in reserve: 5 % of 100 g is one dropping. Its vet's level is tighter; ours.
pub(crate) const SMALL_BELOW: Grams = Grams::whole(150);

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

/// A finding in minutes.
pub(crate) const fn minutes_finding(
    rule: RuleId,
    level: Level,
    minutes: i64,
    limit: i64,
    standing: Standing,
) -> Finding {
    Finding {
        rule,
        level,
        value: Value::Minutes(minutes),
        limit: Value::Minutes(limit),
        standing,
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::warnings::rules::*;

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
        let loss = finding(RuleId::HandoverLoss, Level::CallBreeder);
        let crop = finding(RuleId::CropLate, Level::CallBreeder);
        let watch = finding(RuleId::CropSlow, Level::Watch);
        assert_eq!(raised(&[loss, watch]), Level::CallBreeder);
        assert_eq!(raised(&[loss, crop]), Level::VetToday);
    }

    #[test]
    fn two_calls_about_the_same_thing_are_one_reason() {
        let handover = finding(RuleId::HandoverLoss, Level::CallBreeder);
        let peak = finding(RuleId::PeakLoss, Level::CallBreeder);
        assert_eq!(raised(&[handover, peak]), Level::CallBreeder);
        let refused = finding(RuleId::RefusedFeeds, Level::CallBreeder);
        let missed = finding(RuleId::MissedFeeds, Level::CallBreeder);
        assert_eq!(raised(&[refused, missed]), Level::CallBreeder);
        assert_eq!(raised(&[refused, missed, peak]), Level::VetToday);
    }

    #[test]
    fn a_call_about_the_care_raises_nothing() {
        let loss = finding(RuleId::HandoverLoss, Level::CallBreeder);
        let unweighed = finding(RuleId::NoWeighing, Level::CallBreeder);
        let gap = finding(RuleId::GapTooShort, Level::CallBreeder);
        assert_eq!(raised(&[loss, unweighed, gap]), Level::CallBreeder);
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
    fn two_calls_with_a_dull_chick_are_an_emergency() {
        let loss = finding(RuleId::HandoverLoss, Level::CallBreeder);
        let crop = finding(RuleId::CropLate, Level::CallBreeder);
        let dull = finding(RuleId::SignSeen(Sign::Dull), Level::VetToday);
        assert_eq!(raised(&[dull, loss]), Level::VetToday);
        assert_eq!(raised(&[dull, loss, crop]), Level::Emergency);
    }

    #[test]
    fn a_level_above_every_finding_says_what_raised_it() {
        let loss = finding(RuleId::HandoverLoss, Level::CallBreeder);
        let crop = finding(RuleId::CropLate, Level::CallBreeder);
        let vet = finding(RuleId::PeakLoss, Level::VetToday);
        let dull = finding(RuleId::SignSeen(Sign::Dull), Level::VetToday);
        let breath = finding(RuleId::SignSeen(Sign::LabouredBreathing), Level::Emergency);
        assert_eq!(raise_of(&[]), None);
        assert_eq!(raise_of(&[loss]), None);
        assert_eq!(raise_of(&[loss, crop]), Some(Raise::TwoConcerns));
        assert_eq!(raise_of(&[loss, crop, vet]), None);
        assert_eq!(raise_of(&[vet, dull]), Some(Raise::DullToo));
        assert_eq!(raise_of(&[dull, loss, crop]), Some(Raise::DullToo));
        assert_eq!(raise_of(&[vet, dull, breath]), None);
    }

    #[test]
    fn a_dull_chick_that_lost_weight_or_was_not_weighed_stays_at_vet_today() {
        let dull = finding(RuleId::SignSeen(Sign::Dull), Level::VetToday);
        let lighter = finding(RuleId::DullLoss, Level::VetToday);
        let unweighed = finding(RuleId::NoWeighing, Level::Watch);
        assert_eq!(raised(&[dull, lighter, unweighed]), Level::VetToday);
    }

    #[test]
    fn a_limit_is_reached_at_its_own_value() {
        let limits = [(Level::CallBreeder, 10.0), (Level::VetToday, 15.0)]
            .map(|(level, pct)| Limit::new(level, Value::Pct(pct)));
        assert_eq!(level_reached(9.99, &limits), None);
        assert_eq!(
            level_reached(10.0, &limits),
            Some((10.0, Level::CallBreeder))
        );
        assert_eq!(
            level_reached(14.99, &limits),
            Some((10.0, Level::CallBreeder))
        );
        assert_eq!(level_reached(15.0, &limits), Some((15.0, Level::VetToday)));
    }

    #[test]
    fn every_rule_is_listed_once_under_its_own_name() {
        let names: std::collections::BTreeSet<&str> = RULES.iter().map(|rule| rule.name).collect();
        assert_eq!(names.len(), RULES.len());
        for name in names {
            let file = format!(
                "{}/src/domain/warnings/rules/{}.rs",
                env!("CARGO_MANIFEST_DIR"),
                name.replace('-', "_")
            );
            assert!(std::path::Path::new(&file).exists(), "{file}");
        }
    }
}

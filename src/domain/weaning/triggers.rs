//! What brings a dropped feed back. Any one of them is enough, also while the chick settles in.
//!
//! *Sources* of the list: common practice of the trade (a loss of 3 % in the three days after the
//! drop, below 90 % of the peak, begging for two days, small, dark or few droppings, illness). How
//! each is read from what was noted: ours.

use crate::domain::journal::chick::Chick;
use crate::domain::journal::chick::WeaningStep;
use crate::domain::journal::entries::{CropAtWeighing, Droppings};
use crate::domain::journal::signs::Sign;
use crate::domain::plan::care_plan::Slot;
use crate::domain::quantity::evidence::Standing;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::{Day, Moment};
use crate::domain::warnings::level::{Finding, RuleId, Value};
use crate::domain::warnings::rules::no_weighing;
use crate::domain::weaning::criteria::LEAST_PCT_OF_PEAK;
use crate::domain::weaning::facts::{Answer, WeaningFacts, dropped_at};
use crate::domain::weight::readings;

/// Loss after a drop that brings the feed back, per cent of the weight at the drop. Common practice.
pub const LOSS_SINCE_DROP_PCT: f64 = 3.0;

/// Days after a drop in which that loss counts. Common practice.
pub const DAYS_AFTER_DROP: i32 = 3;

/// Days of begging that bring a feed back. Common practice.
pub const BEGGING_DAYS: usize = 2;

/// Days, today among them, in which the days of begging must lie. Ours.
pub const BEGGING_WITHIN_DAYS: i32 = 3;

/// How long a look at the droppings counts, minutes: two days. Ours.
pub const DROPPINGS_MINUTES: i64 = 2 * 1_440;

/// One reason to offer a dropped feed again.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Trigger {
    /// Lost too much in the days after the drop.
    LossSinceDrop,
    /// Too far below the peak.
    BelowPeak,
    /// Begs all day.
    BegsAllDay,
    /// Droppings small, dark or few.
    DroppingsSmall,
    /// Ill: somebody is to be rung about the chick.
    Illness,
}

impl Trigger {
    /// Every trigger, in the order of the list on screen.
    pub const ALL: [Self; 5] = [
        Self::LossSinceDrop,
        Self::BelowPeak,
        Self::BegsAllDay,
        Self::DroppingsSmall,
        Self::Illness,
    ];
}

/// One trigger, judged.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TriggerCheck {
    /// Which one.
    pub trigger: Trigger,
    /// What was found: per cent or a count; `None` when there is nothing to measure.
    pub value: Option<Value>,
    /// What it is held against, in the same unit.
    pub limit: Value,
    /// Whether it brings the feed back.
    pub answer: Answer,
    /// Standing of the limit.
    pub standing: Standing,
}

/// Every trigger for a dropped feed, in the order of [`Trigger::ALL`].
pub fn checks(facts: &WeaningFacts<'_>, slot: Slot) -> Vec<TriggerCheck> {
    vec![
        loss_since_drop(facts, slot),
        below_peak(facts),
        begs_all_day(facts),
        droppings_small(facts),
        illness(facts),
    ]
}

fn known(is_held: bool) -> Answer {
    if is_held { Answer::Yes } else { Answer::No }
}

fn loss_since_drop(facts: &WeaningFacts<'_>, slot: Slot) -> TriggerCheck {
    let loss = dropped_at(facts.now, facts.chick, slot)
        .and_then(|dropped| loss_since_drop_pct(facts, *dropped));
    TriggerCheck {
        trigger: Trigger::LossSinceDrop,
        value: loss.map(Value::Pct),
        limit: Value::Pct(LOSS_SINCE_DROP_PCT),
        answer: loss.map_or(Answer::NotEnoughData, |loss| {
            known(loss >= LOSS_SINCE_DROP_PCT - 1e-9)
        }),
        standing: Standing::CommonPractice,
    }
}

/// Loss of the last weighing in the days after the drop, per cent of the weight at the drop; less
/// when the weight has come back since.
fn loss_since_drop_pct(facts: &WeaningFacts<'_>, dropped: Moment) -> Option<f64> {
    let at_drop = weight_at_drop(facts.chick, dropped)?;
    let last_day = facts.zone.lived(dropped).day.plus(DAYS_AFTER_DROP);
    let mut after = facts
        .chick
        .weighings
        .iter()
        .rev()
        .filter(|weighing| dropped < weighing.at && weighing.at <= facts.now)
        .filter(|weighing| weighing.what.crop == CropAtWeighing::Empty);
    let loss = |weight: Grams| weight.since(at_drop).loss_pct_of(at_drop);
    let latest = loss(after.clone().next()?.what.weight)?;
    let in_time = after.find(|weighing| weighing.lived().day <= last_day)?;
    Some(loss(in_time.what.weight)?.min(latest))
}

/// The last empty-crop weight before the drop, if it was recent; else the first within a day after it.
fn weight_at_drop(chick: &Chick, dropped: Moment) -> Option<Grams> {
    let before = readings::latest_empty(dropped, chick)
        .filter(|latest| dropped.minutes_since(latest.at) < no_weighing::WATCH_MINUTES);
    let mut weighings = chick.weighings.iter();
    let after = weighings.find(|weighing| {
        weighing.what.crop == CropAtWeighing::Empty
            && (0..1_440).contains(&weighing.at.minutes_since(dropped))
    });
    before.or(after).map(|weighing| weighing.what.weight)
}

fn below_peak(facts: &WeaningFacts<'_>) -> TriggerCheck {
    TriggerCheck {
        trigger: Trigger::BelowPeak,
        value: facts.pct_of_peak.map(Value::Pct),
        limit: Value::Pct(LEAST_PCT_OF_PEAK),
        answer: facts.pct_of_peak.map_or(Answer::NotEnoughData, |pct| {
            known(pct < LEAST_PCT_OF_PEAK - 1e-9 && !facts.has_come_to_a_level())
        }),
        standing: Standing::Published,
    }
}

/// When a feed was last brought back: what was seen before that has been answered.
fn last_brought_back(facts: &WeaningFacts<'_>) -> Option<Moment> {
    let steps = facts.chick.weaning.iter().rev();
    steps
        .filter(|step| step.at <= facts.now)
        .find(|step| matches!(step.what, WeaningStep::BroughtBack { .. }))
        .map(|step| step.at)
}

fn begs_all_day(facts: &WeaningFacts<'_>) -> TriggerCheck {
    let answered = last_brought_back(facts);
    let gone = facts.chick.signs_gone.get(&Sign::BegsAllDay).copied();
    let from = facts.today().plus(1 - BEGGING_WITHIN_DAYS);
    let seen = facts.chick.signs.iter().filter(|seen| {
        seen.what == Sign::BegsAllDay
            && seen.at <= facts.now
            && answered.is_none_or(|answered| answered < seen.at)
            && gone.is_none_or(|gone| gone < seen.at)
    });
    let mut days: Vec<Day> = seen
        .map(|seen| seen.lived().day)
        .filter(|day| *day >= from)
        .collect();
    days.dedup();
    TriggerCheck {
        trigger: Trigger::BegsAllDay,
        value: Some(Value::Count(days.len())),
        limit: Value::Count(BEGGING_DAYS),
        answer: known(days.len() >= BEGGING_DAYS),
        standing: Standing::CommonPractice,
    }
}

fn droppings_small(facts: &WeaningFacts<'_>) -> TriggerCheck {
    let answered = last_brought_back(facts);
    let mut looks = facts.chick.droppings.iter().rev();
    let latest = looks
        .find(|look| look.at <= facts.now)
        .filter(|look| facts.now.minutes_since(look.at) < DROPPINGS_MINUTES)
        .filter(|look| answered.is_none_or(|answered| answered < look.at));
    TriggerCheck {
        trigger: Trigger::DroppingsSmall,
        value: latest.map(|_| Value::Seen),
        limit: Value::Seen,
        answer: latest.map_or(Answer::NotEnoughData, |look| {
            known(look.what == Droppings::SmallOrFew)
        }),
        standing: Standing::CommonPractice,
    }
}

fn illness(facts: &WeaningFacts<'_>) -> TriggerCheck {
    let is_ill = |finding: &&Finding| finding.level.is_call() && is_of_the_chick(finding.rule);
    let count = facts.findings.iter().filter(is_ill).count();
    TriggerCheck {
        trigger: Trigger::Illness,
        value: Some(Value::Count(count)),
        limit: Value::Count(1),
        answer: known(count >= 1),
        standing: Standing::CommonPractice,
    }
}

/// Whether a finding is about the chick's state, not about what people did or left undone: a feed too
/// large or too soon is no reason for one more. Ours.
const fn is_of_the_chick(rule: RuleId) -> bool {
    match rule {
        RuleId::CropStatic
        | RuleId::SignSeen(_)
        | RuleId::DullLoss
        | RuleId::CropOvernight
        | RuleId::CropLate
        | RuleId::RefusedFeeds
        | RuleId::DayIntake
        | RuleId::HandoverLoss
        | RuleId::StableLoss
        | RuleId::ArrivalLoss
        | RuleId::OneDayLoss
        | RuleId::FallingWeight
        | RuleId::GrowthStalled
        | RuleId::DroppingsSeen(_)
        | RuleId::FewDroppings
        | RuleId::CropSlow => true,
        // The weight against the peak brings a feed back by itself.
        RuleId::PeakLoss
        | RuleId::ServedHot
        | RuleId::TransitGap
        | RuleId::MissedFeeds
        | RuleId::VolumeOverCeiling
        | RuleId::GapTooShort
        | RuleId::ServedCold
        | RuleId::RoomTemperature
        | RuleId::NoFoodNoted
        | RuleId::NoWeighing
        | RuleId::VetVisitDue => false,
    }
}

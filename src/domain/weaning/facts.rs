//! What a judgement of weaning sees, and how a question is answered.

use crate::domain::feeding::feeding_streak;
use crate::domain::journal::chick::{Chick, WeaningStep};
use crate::domain::plan::care_plan::{PlannedFeed, Slot};
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::{Day, Moment};
use crate::domain::time::zone::Zone;
use crate::domain::warnings::level::{Finding, Level};
use crate::domain::weight::mornings;

/// Least share of the plan's target weight at which a level week counts. Ours.
const TARGET_SHARE: f64 = 0.9;

/// What is known for the judgement.
#[derive(Debug, Clone, Copy)]
pub struct WeaningFacts<'a> {
    /// Now.
    pub now: Moment,
    /// The zone the phone is in.
    pub zone: &'a Zone,
    /// The chick.
    pub chick: &'a Chick,
    /// The level that all findings add up to.
    pub level: Level,
    /// Every finding.
    pub findings: &'a [Finding],
    /// Whether a feed is forbidden now, or only after somebody was asked: none is then offered again.
    pub is_feeding_forbidden: bool,
    /// The smoothed weight now, per cent of the smoothed peak, from a weighing of the last days.
    pub pct_of_peak: Option<f64>,
}

impl WeaningFacts<'_> {
    /// Whether a chick that is being weaned has come to a level week, at 90 % or more of the weight it should come to
    /// when the plan names one. A fat peak then locks no weaning up: how high a peak is depends on the feeding
    /// (International Zoo Yearbook 44, 2010); that a level week counts instead: ours.
    pub(crate) fn has_come_to_a_level(&self) -> bool {
        let mornings = mornings::mornings(self.now, self.chick);
        let latest = mornings.last().map(|morning| morning.grams);
        let target = self.chick.plan.target.map(Grams::as_g);
        let is_near_target = target
            .zip(latest)
            .is_none_or(|(target, latest)| latest >= TARGET_SHARE * target);
        feeding_streak::is_weaning(self.now, self.today(), self.chick)
            && mornings::is_level(&mornings, self.today())
            && is_near_target
    }

    /// The day lived now.
    pub(crate) fn today(&self) -> Day {
        self.zone.lived(self.now).day
    }
}

/// The answer to one question.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Answer {
    /// Yes.
    Yes,
    /// No.
    No,
    /// Too little was noted to say.
    NotEnoughData,
}

/// When the set of feeds last changed: a feed dropped, brought back, or gone from or come into the plan.
pub(crate) fn last_feed_change(now: Moment, chick: &Chick) -> Option<Moment> {
    let step = chick.weaning.iter().rev().find(|step| step.at <= now);
    let slots = |feeds: &[PlannedFeed]| feeds.iter().map(|feed| feed.slot).collect::<Vec<_>>();
    let plans = chick.plans.turns();
    let plans = plans.iter().zip(plans.iter().skip(1));
    let mut changed = plans
        .filter(|((_, before), (from, plan))| {
            *from <= now && slots(&before.feeds) != slots(&plan.feeds)
        })
        .map(|(_, (from, _))| *from);
    step.map(|step| step.at).max(changed.next_back())
}

/// When a slot was last dropped, up to `now`.
pub(crate) fn dropped_at(now: Moment, chick: &Chick, wanted: Slot) -> Option<&Moment> {
    let is_drop = |step: &WeaningStep| match step {
        WeaningStep::Dropped { slot, .. } => *slot == wanted,
        WeaningStep::BroughtBack { .. } => false,
    };
    let drops = chick.weaning.iter().rev();
    drops
        .filter(|step| step.at <= now && is_drop(&step.what))
        .map(|step| &step.at)
        .next()
}

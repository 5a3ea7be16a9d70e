//! One made-up chick from the handover on: what the owner notes, and who rings on which morning.

use perchlight::domain::journal::entries::{Change, ChickId, CropAtWeighing, Response};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::outlook::{Outlook, outlook};
use perchlight::domain::plan::care_plan::{CarePlan, Reference};
use perchlight::domain::quantity::count;
use perchlight::domain::quantity::units::{Grams, Millilitres};
use perchlight::domain::time::moment::{Day, Offset};
use perchlight::domain::warnings::level::{Level, RuleId};
use perchlight::domain::warnings::rules::concern;
use perchlight::domain::weight::doubt::doubt;

use crate::simulator::chances::Chances;
use crate::simulator::habit::Habit;
use crate::simulator::life::{Bird, Fate, Life};
use crate::simulator::paper::Paper;

const CHICK: ChickId = ChickId(*b"made-up-macw");

/// Share of the typed weights that the app asks about and the owner then types rightly. Assumed.
/// Both paper rules read the same, righted weights, which is more than paper can do.
const RIGHTED: f64 = 0.8;

/// Share of the second weighings asked for that are made. Assumed.
const WEIGHED_AGAIN: f64 = 0.8;

/// How an owner notes what was eaten.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Notes {
    /// The full feed, whatever was eaten: the judge has weights alone.
    Full,
    /// What was eaten.
    Exact,
    /// Nothing.
    Nothing,
}

/// A way of warning.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Way {
    /// One reading below 90 % of the handover weight.
    Single,
    /// The median of three readings below 90 %.
    Median,
    /// Perchlight's ladder.
    Perchlight,
}

/// On which mornings each way rings, from day 1 to the last.
#[derive(Clone, Debug, Default)]
pub(crate) struct Watched {
    /// The last day on which the chick is well; `None` when it stays so.
    pub(crate) onset: Option<i32>,
    single: Vec<bool>,
    median: Vec<bool>,
    perchlight: Vec<bool>,
    /// The mornings on which Perchlight is at watch because of the chick.
    pub(crate) at_watch: Vec<bool>,
    /// The mornings on which a second weighing was asked for.
    pub(crate) asked: Vec<bool>,
    /// Logarithm of how much likelier the readings are with a fall, each morning; least without one.
    pub(crate) ln_ratios: Vec<f64>,
    /// The mornings on which Perchlight rings for another reason than a fall.
    pub(crate) others: Vec<bool>,
    /// How far each kept reading lies off the healthy curve, as a share of it.
    pub(crate) off: Vec<Option<f64>>,
}

impl Watched {
    /// Whether a way rings, morning by morning from day 1.
    pub(crate) fn calls(&self, way: Way) -> &[bool] {
        match way {
            Way::Single => &self.single,
            Way::Median => &self.median,
            Way::Perchlight => &self.perchlight,
        }
    }
}

/// The level of what is found about the chick. A call for a missing weighing or a missing note is one about the
/// owner; paper has none.
fn level(outlook: &Outlook) -> Level {
    let findings = outlook.findings.iter();
    let of_chick = findings.filter(|finding| concern(finding.rule).is_some());
    of_chick
        .map(|finding| finding.level)
        .max()
        .unwrap_or(Level::Settled)
}

/// Whether it rings for another reason than a fall.
fn calls_otherwise(outlook: &Outlook) -> bool {
    let mut others = outlook
        .findings
        .iter()
        .filter(|finding| concern(finding.rule).is_some() && finding.rule != RuleId::FallingWeight);
    others.any(|finding| finding.level.is_call())
}

/// The plan that the breeder hands over: three feeds of 6 % of the weight, or none.
fn plan(handover: Grams, life: &Life, bird: Bird, fate: Fate, habit: Habit, day: Day) -> CarePlan {
    let mut plan = CarePlan::default_for(bird.species());
    plan.hatched = Some(day.plus(-life.age_days));
    plan.reference = Some(Reference {
        weight: handover,
        day,
    });
    plan.scale_step = Grams::tenths_held(habit.step_tenths(handover.as_g()));
    // A growing chick is fed for the weight that it is on the way to.
    let fed_for_g = life
        .curve
        .last()
        .copied()
        .unwrap_or_default()
        .max(handover.as_g());
    for feed in &mut plan.feeds {
        feed.volume = Millilitres::tenths_held(count::rounded(fed_for_g * 0.6));
    }
    if fate == Fate::IsWeaned {
        plan.feeds.clear();
    }
    plan
}

/// Notes weight and food as the owner does.
struct Owner {
    script: Scenario,
    habit: Habit,
    notes: Notes,
    /// Chances that no other way of warning draws from.
    own: Chances,
}

impl Owner {
    fn weigh(&mut self, day: i32, minute: i32, tenths: i32) {
        let weight = Grams::tenths_held(tenths);
        let crop = CropAtWeighing::Empty;
        self.script
            .note(day, 6, minute, Change::Weighed { weight, crop });
    }

    fn outlook(&self, day: i32, hour: i32, minute: i32) -> Option<Outlook> {
        let now = self.script.at(day, hour, minute);
        outlook(now, &self.script.journal(), CHICK, &self.script.zone())
    }

    /// Weighs again while the app asks and the owner will; whether the app asked.
    fn weigh_again(&mut self, day: i32, on_scale: f64, true_g: f64) -> bool {
        let mut minute = 10;
        let mut is_asked = false;
        let mut is_answered = self.own.happens(WEIGHED_AGAIN);
        while minute < 20 {
            let outlook = self.outlook(day, 6, minute);
            let asks = outlook.is_some_and(|outlook| outlook.weight.second_weighing.is_some());
            is_asked |= asks;
            if !asks || !is_answered {
                break;
            }
            minute += 5;
            let tenths = self.habit.again(on_scale, true_g, &mut self.own);
            self.weigh(day, minute, tenths);
            is_answered = self.own.happens(WEIGHED_AGAIN);
        }
        is_asked
    }

    /// Feeds at an hour; what is eaten is a share of what is offered.
    fn feed(&mut self, day: i32, hour: i32, offered: Millilitres, leaves: f64) {
        // A healthy chick leaves a few per cent, and half of one feed in thirty. Assumed.
        let eaten = (0.97 + 0.05 * self.own.normal()).clamp(0.6, 1.0);
        let half = if self.own.happens(1.0 / 30.0) {
            0.5
        } else {
            1.0
        };
        let eaten = (eaten * half * (1.0 - leaves)).max(0.0);
        let taken = match self.notes {
            Notes::Nothing => return,
            Notes::Full => offered,
            Notes::Exact => {
                Millilitres::tenths_held(count::rounded(f64::from(offered.tenths()) * eaten))
            }
        };
        let counts_as = None;
        let change = if taken.tenths() == 0 {
            Change::FeedRefused { counts_as, offered }
        } else {
            Change::Fed {
                counts_as,
                taken,
                offered,
                served_at: None,
                response: Response::Eager,
            }
        };
        self.script.note(day, hour, 0, change);
    }
}

/// Watches one chick every morning at 08:00, its weighing and first feed noted.
pub(crate) fn watch(
    (fate, bird): (Fate, Bird),
    habit: Habit,
    notes: Notes,
    chances: &mut Chances,
) -> Watched {
    let life = Life::drawn(fate, bird, chances);
    let day_zero = Day::from_number(20_000);
    let start_g = life.grams.first().copied().unwrap_or_default();
    // The breeder weighs with care: 0.5 % off, assumed.
    let step = habit.step_tenths(start_g).min(10);
    let handover = start_g * (1.0 + 0.005 * chances.normal()) * 10.0 / f64::from(step);
    let handover = Grams::tenths_held(count::rounded(handover) * step);
    let plan = plan(handover, &life, bird, fate, habit, day_zero);
    let feed = plan.feeds.first().map(|feed| feed.volume);
    let feed_ml = feed.map_or(0.0, Millilitres::as_ml);
    let own = Chances::of(chances.clone().bits(), 1);
    let mut script = Scenario::new(CHICK, plan, day_zero, Offset::UTC);
    script.note(0, 12, 0, Change::Arrived);
    if feed.is_none() {
        script.note(0, 12, 1, Change::DrinkingSeen);
    }
    let mut owner = Owner {
        script,
        habit,
        notes,
        own,
    };
    let (mut paper, mut watched) = (Paper::default(), Watched::default());
    watched.onset = life.onset;
    for (day, true_g) in (1..).zip(life.grams.iter().skip(1)) {
        let mut is_asked = false;
        let mut off = None;
        if let Some((on_scale, typed)) = habit.typed(*true_g, feed_ml, chances) {
            let kept = righted(&owner.script, day, typed, *true_g, chances);
            owner.weigh(day, 9, kept);
            is_asked = owner.weigh_again(day, on_scale, *true_g);
            let kept_g = f64::from(kept) / 10.0;
            paper.read(day, kept_g);
            let healthy = life.curve.get(usize::try_from(day).unwrap_or_default());
            off = healthy.map(|healthy| kept_g / healthy - 1.0);
        }
        let leaves = |day: i32| {
            let is_ill = life.onset.is_some_and(|onset| onset <= day);
            if is_ill { life.leaves } else { 0.0 }
        };
        if let Some(feed) = feed {
            owner.feed(day, 7, feed, leaves(day));
        }
        let Some(outlook) = owner.outlook(day, 8, 0) else {
            continue;
        };
        let level = level(&outlook);
        watched.single.push(paper.single_calls(handover.as_g()));
        watched.median.push(paper.median_calls(handover.as_g()));
        watched.perchlight.push(level.is_call());
        watched.at_watch.push(level == Level::Watch);
        watched.asked.push(is_asked);
        let fall = outlook.weight.trend.fall;
        watched
            .ln_ratios
            .push(fall.map_or(f64::MIN, |fall| fall.ln_ratio));
        watched.others.push(calls_otherwise(&outlook));
        watched.off.push(off);
        if let Some(feed) = feed {
            owner.feed(day, 14, feed, leaves(day));
            owner.feed(day, 21, feed, leaves(day));
        }
    }
    watched
}

/// What is kept of a typed weight, tenths of a gram: the app asks about an unlikely one.
fn righted(script: &Scenario, day: i32, typed: i32, true_g: f64, chances: &mut Chances) -> i32 {
    let Some(chick) = script.chick() else {
        return typed;
    };
    let is_asked = doubt(script.at(day, 6, 9), &chick, Grams::tenths_held(typed)).is_some();
    // An unlikely weight that is true is weighed again and kept, so nothing changes then.
    if is_asked && chances.happens(RIGHTED) {
        count::rounded(true_g) * 10
    } else {
        typed
    }
}

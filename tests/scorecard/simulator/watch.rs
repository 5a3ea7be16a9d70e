//! One made-up chick from the handover on: what the owner notes, and who rings on which morning.

use perchlight::domain::journal::chick::Chick;
use perchlight::domain::journal::entries::{Change, ChickId};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::outlook::{Outlook, outlook};
use perchlight::domain::plan::care_plan::{CarePlan, Reference};
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::count;
use perchlight::domain::quantity::units::{Grams, Millilitres};
use perchlight::domain::time::moment::{Day, Offset};
use perchlight::domain::warnings::level::RuleId;
use perchlight::domain::weight::doubt::doubt;

use crate::simulator::chances::Chances;
use crate::simulator::habit::Habit;
use crate::simulator::life::{DAYS, Fate, Life};
use crate::simulator::paper::Paper;

const CHICK: ChickId = ChickId(*b"made-up-macw");

/// Share of the typed weights that the app asks about and the owner then types rightly. Assumed.
/// Both paper rules read the same, righted weights, which is more than paper can do.
const RIGHTED: f64 = 0.8;

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

impl Way {
    /// Every way.
    pub(crate) const ALL: [Self; 3] = [Self::Single, Self::Median, Self::Perchlight];
}

/// On which mornings each way rings, from day 1 to the last.
#[derive(Clone, Debug, Default)]
pub(crate) struct Watched {
    /// The last day on which the chick is well; `None` when it stays so.
    pub(crate) onset: Option<i32>,
    single: Vec<bool>,
    median: Vec<bool>,
    perchlight: Vec<bool>,
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

/// Whether the ladder rings because of the chick. A call for a missing weighing is one about the
/// owner; paper has none.
fn is_call(outlook: &Outlook) -> bool {
    outlook
        .findings
        .iter()
        .any(|finding| finding.level.is_call() && finding.rule != RuleId::NoWeighing)
}

/// The plan that the breeder hands over: three feeds of 6 % of the weight.
fn plan(handover: Grams, age_days: i32, habit: Habit, day: Day) -> CarePlan {
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    plan.hatched = Some(day.plus(-age_days));
    plan.reference = Some(Reference {
        weight: handover,
        day,
    });
    plan.scale_step = Grams::whole(habit.step_g());
    for feed in &mut plan.feeds {
        feed.volume = Millilitres::whole(count::rounded(handover.as_g() * 0.06));
    }
    plan
}

/// Watches one chick every morning at 08:00, its weighing and first feed noted.
pub(crate) fn watch(fate: Fate, habit: Habit, chances: &mut Chances) -> Watched {
    let life = Life::drawn(fate, chances);
    let day_zero = Day::from_number(20_000);
    let start_g = life.grams.first().copied().unwrap_or_default();
    // The breeder weighs with care: 0.5 % off, assumed.
    let handover = Grams::whole(count::rounded(start_g * (1.0 + 0.005 * chances.normal())));
    let plan = plan(handover, life.age_days, habit, day_zero);
    let feeds = plan.feeds.clone();
    let feed_ml = feeds.first().map_or(0.0, |feed| feed.volume.as_ml());
    let mut script = Scenario::new(CHICK, plan, day_zero, Offset::UTC);
    script.note(0, 12, 0, Change::Arrived);
    let (mut paper, mut watched) = (Paper::default(), Watched::default());
    watched.onset = life.onset;
    for (day, true_g) in (1..=DAYS).zip(life.grams.iter().skip(1)) {
        if let Some(typed) = habit.typed(*true_g, feed_ml, chances) {
            let kept = righted(&script, day, typed, *true_g, chances);
            script.weigh(day, kept);
            paper.read(day, f64::from(kept));
        }
        let feed = |script: &mut Scenario, hour: i32| {
            script.food(day, hour, 0, count::rounded(feed_ml));
        };
        feed(&mut script, 7);
        let now = script.at(day, 8, 0);
        let Some(outlook) = outlook(now, &script.journal(), CHICK, &script.zone()) else {
            continue;
        };
        watched.single.push(paper.single_calls(handover.as_g()));
        watched.median.push(paper.median_calls(handover.as_g()));
        watched.perchlight.push(is_call(&outlook));
        feed(&mut script, 14);
        feed(&mut script, 21);
    }
    watched
}

/// What is kept of a typed weight: the app asks about an unlikely one.
fn righted(script: &Scenario, day: i32, typed: i32, true_g: f64, chances: &mut Chances) -> i32 {
    let Some(chick): Option<Chick> = script.chick() else {
        return typed;
    };
    let is_asked = doubt(script.at(day, 6, 45), &chick, Grams::whole(typed)).is_some();
    // An unlikely weight that is true is weighed again and kept, so nothing changes then.
    if is_asked && chances.happens(RIGHTED) {
        count::rounded(true_g)
    } else {
        typed
    }
}

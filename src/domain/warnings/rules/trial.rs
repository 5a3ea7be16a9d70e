//! What the tests of the rules share: a healthy chick to begin with, and one rule's answer.

use crate::domain::feeding::schedule;
use crate::domain::homecoming::life_stage::life_stage;
use crate::domain::journal::entries::{Change, ChickId, CropFeel, CropState, Droppings, Response};
use crate::domain::journal::scenario::Scenario;
use crate::domain::journal::signs::Sign;
use crate::domain::plan::care_plan::{CarePlan, Reference, Slot};
use crate::domain::plan::species::Species;
use crate::domain::quantity::units::{Celsius, Grams, Millilitres};
use crate::domain::time::moment::{Day, Moment, Offset};
use crate::domain::warnings::level::{Finding, Level, Value};
use crate::domain::warnings::rules::{Facts, Rule};
use crate::domain::warnings::second_weighing::{Judgement, judgement};
use crate::domain::weight::trend;

/// Day 0 of the scripts.
pub(crate) fn day_zero() -> Day {
    Day::from_date(2026, 11, 2).unwrap()
}

/// The plan of a green-winged macaw of 12 weeks and 1,000 g on three feeds of 80 ml: 07:00, 14:00 and
/// 21:00. It is too young to be weaned (16 weeks) and too old to grow.
pub(crate) fn plan() -> CarePlan {
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    plan.hatched = Some(day_zero().plus(-84));
    plan.reference = Some(Reference {
        weight: Grams::whole(1_000),
        day: day_zero(),
    });
    for feed in &mut plan.feeds {
        feed.volume = Millilitres::whole(80);
    }
    plan
}

/// A script with that plan, the chick added on day 0 at 05:00.
pub(crate) fn macaw() -> Scenario {
    with_plan(plan())
}

/// A script with another plan.
pub(crate) fn with_plan(plan: CarePlan) -> Scenario {
    Scenario::new(ChickId([7; 12]), plan, day_zero(), Offset::UTC)
}

/// A script with the chick of that plan at `weeks` weeks on day 0.
pub(crate) fn aged(weeks: i32) -> Scenario {
    let mut plan = plan();
    plan.hatched = Some(day_zero().plus(-7 * weeks));
    with_plan(plan)
}

/// Everything that one rule finds.
pub(crate) fn found(rule: &Rule, script: &Scenario, now: Moment) -> Vec<Finding> {
    let found = on_facts(script, now, |facts| (rule.check)(facts));
    for finding in &found {
        assert!(is_listed(rule, finding), "{finding:?}");
    }
    found
}

/// Rules whose limit is a part of the chick's weight, of its plan or schedule, or no number at all.
const OF_THIS_CHICK: [&str; 10] = [
    "dull-loss",
    "gap-too-short",
    "handover-loss",
    "missed-feeds",
    "no-food-noted",
    "refused-feeds",
    "room-temperature",
    "served-cold",
    "transit-gap",
    "volume-over-ceiling",
];

/// Whether a finding's level and limit are among those that its rule lists for the manual.
fn is_listed(rule: &Rule, finding: &Finding) -> bool {
    let is_same = |at: Value| match (at, finding.limit) {
        (Value::Pct(listed), Value::Pct(used)) => (listed - used).abs() < 1e-9,
        (listed, used) => listed == used,
    };
    let has_level = rule.limits.iter().any(|limit| limit.level == finding.level);
    let has_limit = rule.limits.iter().any(|limit| is_same(limit.at));
    has_level && (has_limit || OF_THIS_CHICK.contains(&rule.name))
}

/// The level of one rule's only finding; `None` when it finds nothing.
pub(crate) fn level_of(rule: &Rule, script: &Scenario, now: Moment) -> Option<Level> {
    let found = found(rule, script, now);
    assert!(found.len() <= 1, "{found:?}");
    found.first().map(|finding| finding.level)
}

/// Level and findings of the whole ladder.
pub(crate) fn ladder(script: &Scenario, now: Moment) -> (Level, Vec<Finding>) {
    let judged = judged(script, now);
    (judged.level, judged.findings)
}

/// What the whole ladder says.
pub(crate) fn judged(script: &Scenario, now: Moment) -> Judgement {
    on_facts(script, now, judgement)
}

/// What is made of the facts of a moment.
pub(crate) fn on_facts<T>(script: &Scenario, now: Moment, ask: impl Fn(&Facts<'_>) -> T) -> T {
    let (chick, zone) = (script.chick().unwrap(), script.zone());
    let today = zone.lived(now).day;
    let feeds = schedule::feeds(now, &chick, &zone, today.plus(-2), today.plus(1));
    ask(&Facts {
        now,
        zone: &zone,
        chick: &chick,
        feeds: &feeds,
        trend: &trend::weight_trend(now, &chick),
        stage: life_stage(now, &chick, &zone),
    })
}

/// A look at the crop.
pub(crate) const fn crop(state: CropState) -> Change {
    Change::CropSeen {
        state,
        feel: CropFeel::NotNoted,
    }
}

/// A look at the droppings.
pub(crate) const fn droppings(look: Droppings) -> Change {
    Change::DroppingsSeen { look }
}

/// A sign seen.
pub(crate) const fn sign(sign: Sign) -> Change {
    Change::SignSeen { sign }
}

/// A bedtime feed of 80 ml served at so many tenths of a degree Celsius.
pub(crate) const fn served(tenths: i32) -> Change {
    Change::Fed {
        counts_as: Some(Slot::Bedtime),
        taken: Millilitres::whole(80),
        offered: Millilitres::whole(80),
        served_at: Some(Celsius::tenths_held(tenths)),
        response: Response::Eager,
    }
}

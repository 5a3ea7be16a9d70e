//! A chick that is ready to lose a feed, day by day, and ways to spoil it.

use perchlight::domain::journal::chick::Chick;
use perchlight::domain::journal::entries::{
    Change, ChickId, CropAtWeighing, Droppings, Response, SolidsEaten,
};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::journal::signs::Sign;
use perchlight::domain::plan::care_plan::{CarePlan, Reference, Slot};
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::{Grams, Millilitres};
use perchlight::domain::time::moment::{Day, Moment, Offset};
use perchlight::domain::warnings::level::Value;
use perchlight::domain::warnings::level::{Finding, Level};
use perchlight::domain::weaning::criteria::Criterion;
use perchlight::domain::weaning::facts::{Answer, WeaningFacts};
use perchlight::domain::weaning::{Verdict, Weaning, assess};

/// The chick of every script.
pub(crate) const CHICK: ChickId = ChickId([7; 12]);

/// Day 0 of every script.
pub(crate) fn day_zero() -> Day {
    Day::from_date(2026, 11, 2).unwrap()
}

/// A day of a script.
pub(crate) fn day(number: i32) -> Day {
    day_zero().plus(number)
}

/// Feeds at 07:00, 14:00 and 21:00, dropped midday first and bedtime last; 7 days to settle in and 5
/// between drops; handed over at 1,000 g.
pub(crate) fn plan() -> CarePlan {
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    plan.hatched = Some(day(-90));
    plan.reference = Some(Reference {
        weight: Grams::whole(1_000),
        day: day_zero(),
    });
    for feed in &mut plan.feeds {
        feed.volume = Millilitres::whole(60);
    }
    plan
}

/// A script of this plan in which the chick arrived on day 0 at 12:00.
pub(crate) fn arrived(plan: CarePlan) -> Scenario {
    let mut script = Scenario::new(CHICK, plan, day_zero(), Offset::UTC);
    script.note(0, 12, 0, Change::Arrived);
    script
}

/// A feed of 60 ml offered.
pub(crate) fn took(slot: Slot, ml: i32) -> Change {
    offered(slot, ml, 60)
}

/// A feed with what was taken and offered.
pub(crate) fn offered(slot: Slot, taken: i32, offered: i32) -> Change {
    Change::Fed {
        counts_as: Some(slot),
        taken: Millilitres::whole(taken),
        offered: Millilitres::whole(offered),
        served_at: None,
        response: Response::NotNoted,
    }
}

/// Solids watched.
pub(crate) fn solids(eaten: SolidsEaten) -> Change {
    Change::SolidsSeen {
        what: "papaya".to_owned(),
        eaten,
    }
}

/// Droppings looked at.
pub(crate) fn droppings(look: Droppings) -> Change {
    Change::DroppingsSeen { look }
}

/// A feed dropped on the app's offer.
pub(crate) fn dropped(slot: Slot) -> Change {
    let by_breeder = false;
    Change::FeedDropped { slot, by_breeder }
}

/// A sign seen.
pub(crate) fn sign(sign: Sign) -> Change {
    Change::SignSeen { sign }
}

/// A morning weighing in tenths of a gram, with the crop empty.
pub(crate) fn weighed(tenths: i32) -> Change {
    Change::Weighed {
        weight: Grams::tenths_held(tenths),
        crop: CropAtWeighing::Empty,
    }
}

/// What a good day leaves out.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Without {
    /// Nothing.
    Nothing,
    /// The weighing.
    Weight,
    /// Any note of the midday feed.
    Midday,
    /// The look at solids.
    Solids,
    /// The look at the droppings.
    Droppings,
}

/// Notes the days from `first` to `last` of a chick that is ready, each without one thing: 1,000 g,
/// midday refused, the other feeds taken, solids eaten at 16:00, droppings as usual at 09:30.
pub(crate) fn good_days(script: &mut Scenario, first: i32, last: i32, without: Without) {
    for day in first..=last {
        if without != Without::Weight {
            script.weigh(day, 1_000);
        }
        script.feed(day, 7, 0, Slot::Morning, 60);
        if without != Without::Droppings {
            script.note(day, 9, 30, droppings(Droppings::Normal));
        }
        if without != Without::Midday {
            script.note(day, 14, 0, Change::refused(Some(Slot::Midday)));
        }
        if without != Without::Solids {
            script.note(day, 16, 0, solids(SolidsEaten::Little));
        }
        script.feed(day, 21, 0, Slot::Bedtime, 60);
    }
}

/// A chick that is ready to lose its midday feed on the evening of day 9.
pub(crate) fn ready() -> Scenario {
    let mut script = arrived(plan());
    good_days(&mut script, 1, 9, Without::Nothing);
    script
}

/// The same, with one thing left out from day 7 on.
pub(crate) fn ready_without(without: Without) -> Scenario {
    let mut script = arrived(plan());
    good_days(&mut script, 1, 6, Without::Nothing);
    good_days(&mut script, 7, 9, without);
    script
}

/// The chick of a script as it was noted up to `now`.
pub(crate) fn chick_at(script: &Scenario, now: Moment) -> Chick {
    let entries = script.journal().entries().to_vec();
    let known = entries.into_iter().filter(|entry| entry.at <= now);
    let journal = perchlight::domain::journal::entries::Journal::from_entries(known.collect());
    Chick::from_journal(&journal, CHICK).unwrap()
}

/// The judgement with the findings and the share of the peak given.
pub(crate) fn judged(
    script: &Scenario,
    now: Moment,
    findings: &[Finding],
    pct_of_peak: Option<f64>,
) -> Weaning {
    assess(&WeaningFacts {
        now,
        zone: &script.zone(),
        chick: &chick_at(script, now),
        level: findings
            .iter()
            .map(|finding| finding.level)
            .max()
            .unwrap_or(Level::Settled),
        findings,
        is_feeding_forbidden: false,
        pct_of_peak,
    })
}

/// The judgement at an hour of a day, nothing found and the weight at its peak.
pub(crate) fn at(script: &Scenario, day: i32, hour: i32, minute: i32) -> Weaning {
    judged(script, script.at(day, hour, minute), &[], Some(100.0))
}

/// The judgement on the evening of day 9.
pub(crate) fn evening(script: &Scenario) -> Weaning {
    at(script, 9, 22, 0)
}

/// The answer of one criterion.
pub(crate) fn answer(weaning: &Weaning, criterion: Criterion) -> Answer {
    weaning.check(criterion).unwrap().answer
}

/// The count that one criterion found.
pub(crate) fn count(weaning: &Weaning, criterion: Criterion) -> usize {
    match weaning.check(criterion).unwrap().value {
        Some(Value::Count(count)) => count,
        other => panic!("{criterion:?}: {other:?} is no count"),
    }
}

/// The one criterion that stops the drop.
pub(crate) fn only_reason(weaning: &Weaning) -> Criterion {
    match &weaning.verdict {
        Verdict::NotYet { reasons, .. } if reasons.len() == 1 => reasons[0],
        other => panic!("{other:?}"),
    }
}

/// The earliest day, by its number in the script.
pub(crate) fn earliest(weaning: &Weaning) -> Option<i32> {
    match &weaning.verdict {
        Verdict::NotYet { earliest_day, .. } => earliest_day.map(|day| day.since(day_zero())),
        other => panic!("{other:?}"),
    }
}

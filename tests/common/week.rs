//! A scripted week of one chick, and what it leaves in a place.

#![allow(dead_code, reason = "each test file uses its own part of these")]

use std::collections::{BTreeMap, BTreeSet};

use perchlight::domain::journal::entries::{
    Change, ChickId, CropAtWeighing, CropFeel, CropState, Entry, EntryId, Response,
};
use perchlight::domain::plan::care_plan::{CarePlan, Slot};
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::{Celsius, Grams, Millilitres};
use perchlight::domain::time::moment::{Moment, Offset};
use perchlight::store::key_value::KeyValue;
use perchlight::store::line::{Line, Name};
use perchlight::store::open::{Opened, open};
use perchlight::store::{Store, StoreError};

use crate::memory::MemoryKeyValue;

/// Monday 2026-11-02T00:00:00Z.
const MONDAY: i64 = 1_793_577_600;

pub(crate) fn on_day(day: i64, minute: i64) -> Moment {
    Moment::from_seconds(MONDAY + day * 86_400 + minute * 60)
}

pub(crate) fn entry(number: u8, at: Moment, change: Change) -> Entry {
    Entry {
        at,
        id: EntryId([number; 12]),
        chick: ChickId([1; 12]),
        noted_at: at,
        offset: Offset::from_minutes(-300),
        by: "Ann".to_owned(),
        change,
    }
}

pub(crate) fn weighed(grams: i32) -> Change {
    Change::Weighed {
        weight: Grams::whole(grams),
        crop: CropAtWeighing::Empty,
    }
}

pub(crate) fn fed(slot: Slot) -> Change {
    Change::Fed {
        counts_as: Some(slot),
        taken: Millilitres::whole(55),
        offered: Millilitres::whole(60),
        served_at: Some(Celsius::whole(40)),
        response: Response::Eager,
    }
}

/// What somebody does: notes one act, or reaches the end of a day.
#[derive(Debug, Clone)]
pub(crate) enum Step {
    Act(Vec<Entry>),
    DayEnds(Moment),
}

/// A chick is added and arrives; `days` days of weighing, feeds and a correction in one act.
pub(crate) fn script(days: i64) -> Vec<Step> {
    let mut number = 0;
    let mut next = |at, change| {
        number += 1;
        entry(number, at, change)
    };
    let plan = Box::new(CarePlan::default_for(Species::GreenWingedMacaw));
    let mut steps = vec![
        Step::Act(vec![next(on_day(0, 300), Change::ChickAdded(plan))]),
        Step::Act(vec![next(on_day(0, 400), Change::Arrived)]),
    ];
    for day in 0..days {
        let wrong = next(on_day(day, 420), weighed(101));
        let right = next(on_day(day, 420), weighed(1_010));
        let retraction = next(on_day(day, 425), Change::Retracted { id: wrong.id });
        let (state, feel) = (CropState::Quarter, CropFeel::Soft);
        steps.extend([
            Step::Act(vec![wrong]),
            Step::Act(vec![retraction, right]),
            Step::Act(vec![next(on_day(day, 430), fed(Slot::Morning))]),
            Step::Act(vec![next(
                on_day(day, 600),
                Change::CropSeen { state, feel },
            )]),
            Step::Act(vec![next(on_day(day, 1_260), fed(Slot::Bedtime))]),
            Step::DayEnds(on_day(day, 1_300)),
        ]);
    }
    // The week after, so that the scripted one is finished.
    steps.push(Step::DayEnds(on_day(days + 7, 0)));
    steps
}

pub(crate) fn all_entries(steps: &[Step]) -> Vec<Entry> {
    let acts = steps.iter().map(|step| match step {
        Step::Act(act) => act.clone(),
        Step::DayEnds(_) => Vec::new(),
    });
    acts.flatten().collect()
}

pub(crate) fn run<K: KeyValue>(store: &mut Store<K>, step: &Step) -> Result<(), StoreError> {
    match step {
        Step::Act(act) => store.keep(act),
        Step::DayEnds(now) => store.fold_finished_weeks(*now).map(|_| ()),
    }
}

/// A place in which `steps` were done without fault, and what it took.
pub(crate) fn kept(steps: &[Step]) -> (MemoryKeyValue, usize) {
    let place = MemoryKeyValue::new();
    let mut store = open(place.clone()).store;
    for step in steps {
        run(&mut store, step).unwrap();
    }
    let writes = place.writes();
    (place, writes)
}

pub(crate) fn reopened(place: &MemoryKeyValue) -> Opened<MemoryKeyValue> {
    place.restart();
    let opened = open(place.clone());
    assert_eq!(place.writes(), 0, "opening wrote");
    opened
}

pub(crate) fn texts(place: &MemoryKeyValue) -> BTreeMap<String, String> {
    let keys = place.keys("").unwrap();
    keys.into_iter()
        .map(|key| (key.clone(), place.get(&key).unwrap().unwrap()))
        .collect()
}

/// The lines that a second copy holds of these entries.
pub(crate) fn second_copy(entries: &[Entry]) -> Vec<Line> {
    entries
        .iter()
        .map(|entry| Line::of(entry).unwrap())
        .collect()
}

/// Heals a first copy from a second one, as the app does; how many lines were lacking.
pub(crate) fn heal<K: KeyValue>(store: &mut Store<K>, mut second: Vec<Line>) -> usize {
    let names: BTreeSet<Name> = second.iter().map(|line| line.name).collect();
    let unknown = store.unknown(&names);
    second.retain(|line| unknown.contains(&line.name));
    store.set_to_heal(second);
    while store.heal_step(on_day(30, 0)).unwrap() {}
    unknown.len()
}

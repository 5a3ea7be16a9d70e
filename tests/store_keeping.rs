//! What the store promises without any fault: tabs, copies, newer builds, folding, settings and space.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

#[path = "common/entries.rs"]
mod entries;
#[path = "common/memory.rs"]
mod memory;
#[path = "common/week.rs"]
mod week;

use std::collections::BTreeSet;
use std::time::Instant;

use perchlight::domain::journal::entries::{Change, CropFeel, CropState, Entry, Journal};
use perchlight::domain::plan::care_plan::{CarePlan, Slot};
use perchlight::domain::plan::species::Species;
use perchlight::domain::time::moment::Moment;
use perchlight::store::StoreError;
use perchlight::store::key_value::{ENTRY, FOLDED_ON, KeyValue, QUARANTINE, ROOT, SEGMENT};
use perchlight::store::line::{Line, Name, entries_in};
use perchlight::store::open::{Report, open};
use perchlight::store::record::encode;
use perchlight::store::saved::entry_to_text;
use perchlight::store::saved_error::SavedError;
use perchlight::store::setting::Setting;
use proptest::prelude::*;

use crate::memory::MemoryKeyValue;
use crate::week::{
    Step, all_entries, entry, fed, heal, kept, on_day, reopened, run, script, second_copy, texts,
    weighed,
};

#[test]
fn two_tabs_over_one_place_lose_nothing() {
    let steps = script(7);
    for every in 2..6 {
        let place = MemoryKeyValue::new();
        let mut first = open(place.clone()).store;
        let mut second = open(place.clone()).store;
        for (count, step) in steps.iter().enumerate() {
            match step {
                Step::DayEnds(_) => {
                    run(&mut first, step).unwrap();
                    place.remove(FOLDED_ON).unwrap();
                    run(&mut second, step).unwrap();
                }
                Step::Act(_) if count % every == 0 => run(&mut second, step).unwrap(),
                Step::Act(_) => run(&mut first, step).unwrap(),
            }
        }
        let journal = reopened(&place).journal;
        assert_eq!(
            journal,
            Journal::from_entries(all_entries(&steps)),
            "every {every}"
        );
    }
}

#[test]
fn another_tab_hears_what_was_kept() {
    let steps = script(1);
    let place = MemoryKeyValue::new();
    let mut first = open(place.clone()).store;
    let mut second = open(MemoryKeyValue::new()).store;
    let mut heard = Vec::new();
    let mut before = texts(&place);
    for step in &steps {
        run(&mut first, step).unwrap();
        let now = texts(&place);
        for (key, text) in now.iter().filter(|(key, _)| !before.contains_key(*key)) {
            heard.extend(second.entries_from_event(Some(key), Some(text)));
        }
        before = now;
    }
    assert_eq!(
        Journal::from_entries(heard),
        Journal::from_entries(all_entries(&steps))
    );
    // It lies in the place that both share, so there is nothing to write.
    let all = second_copy(&all_entries(&steps));
    assert_eq!(heal(&mut second, all.clone()), 0);
    let line = encode(&entry_to_text(&entry(1, on_day(0, 0), Change::Arrived)));
    assert_eq!(
        second.entries_from_event(Some("other/v1/entry/x"), Some(&line)),
        []
    );
    assert_eq!(
        second.entries_from_event(Some(&format!("{ENTRY}x")), Some(&line[1..])),
        []
    );
    assert_eq!(
        second.entries_from_event(Some(&format!("{ENTRY}x")), None),
        []
    );
    // Cleared in the other tab: what is still in memory can be written again.
    assert_eq!(second.entries_from_event(None, None), []);
    assert_eq!(heal(&mut second, all.clone()), all.len());
}

#[test]
fn the_same_id_with_other_content_keeps_both() {
    let place = MemoryKeyValue::new();
    let mut store = open(place.clone()).store;
    let first = entry(1, on_day(0, 420), weighed(1_000));
    let other = entry(1, on_day(0, 420), weighed(1_010));
    store.keep(std::slice::from_ref(&first)).unwrap();
    store.keep(std::slice::from_ref(&other)).unwrap();
    store.keep(std::slice::from_ref(&first)).unwrap();
    assert_eq!(place.keys(ENTRY).unwrap().len(), 2);
    assert_eq!(
        reopened(&place).journal,
        Journal::from_entries(vec![first, other])
    );
}

#[test]
fn records_of_a_newer_build_are_left_alone_and_nothing_is_written() {
    let (place, _) = kept(&script(1)[..4]);
    let newer = entry_to_text(&entry(99, on_day(0, 500), Change::Arrived));
    let newer = encode(&newer.replace("\"v\":1", "\"v\":2"));
    let key = format!("{ENTRY}newer");
    place.set(&key, &newer).unwrap();
    let before = texts(&place);
    let mut opened = reopened(&place);
    assert_eq!(opened.journal.entries().len(), 5);
    assert_eq!(opened.report.newer_version, Some(2));
    let found = &opened.report.unreadable[0];
    assert_eq!((&found.key, &found.text), (&key, &newer));
    assert_eq!(found.why, SavedError::Newer { version: 2 }.into());
    let refused = StoreError::NewerVersion { version: 2 };
    let act = [entry(98, on_day(0, 500), Change::Arrived)];
    assert_eq!(opened.store.keep(&act), Err(refused.clone()));
    assert_eq!(opened.store.unkept().count(), 1);
    assert_eq!(
        opened.store.fold_finished_weeks(on_day(30, 0)),
        Err(refused)
    );
    assert_eq!(texts(&place), before);
}

#[test]
fn an_entry_that_cannot_be_saved_is_said_and_holds_nothing_up() {
    let place = MemoryKeyValue::new();
    let mut store = open(place.clone()).store;
    let mut long = entry(1, on_day(0, 0), Change::Arrived);
    long.by = "x".repeat(1_001);
    let refused = SavedError::BadText { field: "by" };
    assert_eq!(
        store.keep(&[long]),
        Err(StoreError::NotSavable(refused.into()))
    );
    let good = entry(2, on_day(0, 0), Change::Arrived);
    assert!(store.keep(std::slice::from_ref(&good)).is_err());
    assert_eq!(store.unkept().count(), 1);
    assert_eq!(reopened(&place).journal.entries(), [good]);
}

#[test]
fn weeks_are_folded_when_finished_and_once_a_day() {
    let steps = script(7);
    let acts: Vec<Step> = steps
        .into_iter()
        .filter(|step| matches!(step, Step::Act(_)))
        .collect();
    let (place, _) = kept(&acts);
    let loose = place.keys(ENTRY).unwrap().len();
    let mut store = reopened(&place).store;
    // Sunday 23:59 is still the same week.
    let folded = store.fold_finished_weeks(on_day(6, 1_439)).unwrap();
    assert_eq!((folded.segments, folded.removed), (0, 0));
    let folded = store.fold_finished_weeks(on_day(7, 0)).unwrap();
    assert_eq!((folded.segments, folded.removed), (1, loose));
    // A late note for that week waits for the next day and makes a segment of its own.
    let late = entry(
        200,
        on_day(3, 0),
        Change::Noted {
            text: "late".to_owned(),
        },
    );
    store.keep(&[late]).unwrap();
    assert_eq!(store.fold_finished_weeks(on_day(7, 5)).unwrap().segments, 0);
    assert_eq!(store.fold_finished_weeks(on_day(8, 0)).unwrap().segments, 1);
    let keys = place.keys(SEGMENT).unwrap();
    assert_eq!(keys.len(), 2);
    assert!(
        keys.iter()
            .all(|key| key.starts_with(&format!("{SEGMENT}2026-11-02."))),
        "{keys:?}"
    );
    assert_eq!(
        reopened(&place).journal.entries().len(),
        all_entries(&acts).len() + 1
    );
}

#[test]
fn settings_stay_apart_from_the_journal() {
    let place = MemoryKeyValue::new();
    let mut store = open(place.clone()).store;
    assert_eq!(store.read_setting(Setting::Carer), Ok(None));
    store.write_setting(Setting::Carer, "Ann\nB.").unwrap();
    let opened = reopened(&place);
    assert_eq!(
        opened.store.read_setting(Setting::Carer),
        Ok(Some("Ann\nB.".to_owned()))
    );
    assert!(opened.journal.is_empty());
    assert_eq!(opened.report, Report::default());
}

#[test]
fn the_union_of_two_copies_that_lack_different_entries_is_whole() {
    let steps = script(2);
    let all = all_entries(&steps);
    for split in 1..5 {
        let part = |keep: bool| -> Vec<Entry> {
            let kept = all
                .iter()
                .enumerate()
                .filter(|(count, _)| (count % split == 0) == keep);
            kept.map(|(_, entry)| entry.clone()).collect()
        };
        let place = MemoryKeyValue::new();
        let mut store = open(place.clone()).store;
        store.keep(&part(true)).unwrap();
        let second = second_copy(&part(false));
        let mut names: BTreeSet<Name> = second.iter().map(|line| line.name).collect();
        assert_eq!(heal(&mut store, second), names.len());
        let journal = reopened(&place).journal;
        assert_eq!(journal, Journal::from_entries(all.clone()));
        // The other way round, and then neither lacks anything.
        let missing = store.lacking_in(&names, journal.entries());
        let name_of = |(name, _): &(String, String)| Name::from_text(name).unwrap();
        names.extend(missing.iter().map(name_of));
        assert_eq!(names.len(), all.len());
        assert_eq!(store.lacking_in(&names, journal.entries()), []);
        assert_eq!(store.unknown(&names), BTreeSet::new());
    }
}

/// The storage budget is 8 % of what browsers give an origin, 5,242,880 UTF-16 units, after a year.
#[test]
fn a_year_of_entries_stays_below_the_storage_budget() {
    let place = MemoryKeyValue::new();
    let mut store = open(place.clone()).store;
    let plan = Box::new(CarePlan::default_for(Species::GreenWingedMacaw));
    let mut id = 0_u32;
    let mut next = |day, minute, change| {
        id += 1;
        let mut entry = entry(0, on_day(day, minute), change);
        entry.id.0[..4].copy_from_slice(&id.to_be_bytes());
        entry.noted_at = entry.at.plus_seconds(45);
        entry
    };
    store.keep(&[next(0, 0, Change::ChickAdded(plan))]).unwrap();
    for day in 0..365 {
        let (state, feel) = (CropState::Flat, CropFeel::Soft);
        let acts = [
            next(day, 420, weighed(1_010)),
            next(day, 430, fed(Slot::Morning)),
            next(day, 600, Change::CropSeen { state, feel }),
            next(day, 840, fed(Slot::Midday)),
            next(day, 1_100, Change::CropSeen { state, feel }),
            next(day, 1_260, fed(Slot::Bedtime)),
        ];
        for entry in acts {
            store.keep(&[entry]).unwrap();
        }
    }
    let loose = place.units();
    store.fold_finished_weeks(on_day(400, 0)).unwrap();
    let folded = place.units();
    assert_eq!(reopened(&place).journal.entries().len(), 2_191);
    assert!(folded < loose);
    assert!(folded < 5_242_880 * 8 / 100, "{folded} units");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn acts_of_any_entries_come_back_whole(
        acts in prop::collection::vec(prop::collection::vec(entries::entry(), 1..4), 1..6),
        now in 7_305_i64..84_005,
    ) {
        let place = MemoryKeyValue::new();
        let mut store = open(place.clone()).store;
        for act in &acts {
            prop_assert_eq!(store.keep(act), Ok(()));
        }
        let whole = Journal::from_entries(acts.concat());
        prop_assert_eq!(&open(place.clone()).journal, &whole);
        store.fold_finished_weeks(Moment::from_seconds(now * 86_400)).unwrap();
        let opened = open(place);
        prop_assert_eq!(&opened.journal, &whole);
        prop_assert_eq!(opened.report.unreadable, []);
        prop_assert_eq!(entries_in(&store.everything_as_text()).len(), whole.entries().len());
    }

    #[test]
    fn any_texts_under_our_keys_open_without_panic_and_stay(
        texts_found in prop::collection::vec(("[a-z0-9.]{0,8}", ".{0,60}", 0..4_usize), 0..8),
    ) {
        let place = MemoryKeyValue::new();
        for (tail, text, kind) in texts_found {
            let prefix = [ENTRY, SEGMENT, QUARANTINE, ROOT][kind];
            place.set(&format!("{prefix}{tail}"), &text).unwrap();
        }
        let before = texts(&place);
        let mut opened = reopened(&place);
        prop_assert!(opened.journal.is_empty());
        let act = [entry(1, on_day(0, 0), Change::Arrived)];
        prop_assert_eq!(opened.store.keep(&act), Ok(()));
        opened.store.fold_finished_weeks(on_day(30, 0)).unwrap();
        let after = texts(&place);
        for (key, text) in before.iter().filter(|(key, _)| *key != FOLDED_ON) {
            prop_assert_eq!(after.get(key), Some(text));
        }
    }
}

/// A long journal: so many weighings, a few each day.
fn weighings(count: u16) -> Vec<Entry> {
    let entry = |number: u16| {
        let mut entry = entry(0, on_day(i64::from(number) / 9 - 3_003, 0), weighed(1_000));
        entry.id.0[..2].copy_from_slice(&number.to_be_bytes());
        entry
    };
    (0..count).map(entry).collect()
}

/// 9 entries a day are 63 a week, so 20,000 entries are 318 weeks: one write for each, and one key more
/// for every entry of the week that is not over.
#[test]
fn a_cleared_first_copy_is_healed_a_week_at_a_write_in_steps() {
    let all = weighings(20_000);
    let place = MemoryKeyValue::new();
    let mut store = open(place.clone()).store;
    store.set_to_heal(second_copy(&all));
    let (mut steps, mut most) = (1, 0);
    let mut before = 0;
    while store.heal_step(on_day(-3_003 + 20_000 / 9, 0)).unwrap() {
        steps += 1;
        let held: usize = texts(&place)
            .values()
            .map(|text| text.lines().count())
            .sum();
        most = most.max(held - before);
        before = held;
    }
    assert!(!store.is_to_heal());
    assert!(
        (20_000 / 400..20_000 / 300).contains(&steps),
        "{steps} steps"
    );
    // 300 lines are reached within the fifth week.
    assert_eq!(most, 5 * 63);
    let singly = place.keys(ENTRY).unwrap().len();
    assert!(singly < 63, "{singly} of the last week");
    assert!(place.writes() <= 319 + singly, "{} writes", place.writes());
    let opened = reopened(&place);
    assert_eq!(opened.report, Report::default());
    assert_eq!(opened.journal, Journal::from_entries(all));
    assert_eq!(heal(&mut store, second_copy(opened.journal.entries())), 0);
}

/// Four times the entries take four times as long; sixteen times where every entry looks at all others.
#[test]
fn healing_either_copy_takes_time_in_proportion_to_its_entries() {
    let time = |count| {
        let all = weighings(count);
        let second = second_copy(&all);
        let start = Instant::now();
        let mut store = open(MemoryKeyValue::new()).store;
        heal(&mut store, second);
        assert_eq!(store.lacking_in(&BTreeSet::new(), &all).len(), all.len());
        start.elapsed()
    };
    let shortest = |count| (0..3).map(|_| time(count)).min().unwrap();
    let (short, long) = (shortest(5_000), shortest(20_000));
    assert!(long < short * 9, "{short:?} and {long:?}");
}

#[test]
fn what_cannot_be_healed_now_waits_and_stands_in_the_text_of_everything() {
    let all = weighings(700);
    let place = MemoryKeyValue::new();
    let mut store = open(place.clone()).store;
    store.set_to_heal(second_copy(&all));
    place.set_quota(Some(100_000));
    while store.heal_step(on_day(30, 0)) == Ok(true) {}
    let kept = reopened(&place).journal.entries().len();
    assert!(0 < kept && kept < all.len(), "{kept}");
    let whole = Journal::from_entries(all);
    let saved = entries_in(&store.everything_as_text());
    assert_eq!(Journal::from_entries(saved), whole);
    place.set_quota(None);
    while store.heal_step(on_day(30, 0)).unwrap() {}
    assert_eq!(reopened(&place).journal, whole);
}

#[test]
fn the_second_copy_is_sent_what_was_noted_and_nothing_of_the_made_up_chick() {
    let steps = script(1);
    let place = MemoryKeyValue::new();
    let mut store = open(place.clone()).store;
    run(&mut store, &steps[0]).unwrap();
    place.set_blocked(true);
    run(&mut store, &steps[1]).unwrap_err();
    let kept = all_entries(&steps[..2]);
    let mut on_screen = kept.clone();
    on_screen.push(entry(200, on_day(0, 500), Change::Arrived));
    let lines = store.lacking_in(&BTreeSet::new(), &on_screen);
    let sent: Vec<Entry> = lines
        .iter()
        .flat_map(|(_, line)| entries_in(line))
        .collect();
    assert_eq!(sent, kept);
}

#[test]
fn nothing_is_written_once_the_second_copy_tells_of_a_newer_build() {
    let place = MemoryKeyValue::new();
    let mut store = open(place.clone()).store;
    store.found_newer(2);
    let refused = Err(StoreError::NewerVersion { version: 2 });
    assert_eq!(
        store.keep(&[entry(1, on_day(0, 500), Change::Arrived)]),
        refused
    );
    assert_eq!(texts(&place).len(), 0);
}

#[test]
fn a_name_is_read_back_only_as_it_is_written() {
    let name = Name::of(&entry(1, on_day(0, 0), Change::Arrived));
    let text = name.text();
    assert_eq!(Name::from_text(&text), Some(name));
    for wrong in [
        &text[1..],
        &text[..text.len() - 1],
        &text.replace('.', ""),
        &text.to_uppercase(),
        "",
    ] {
        assert_eq!(Name::from_text(wrong), None, "{wrong}");
    }
}

#[test]
fn a_name_is_the_id_and_the_checksum_of_the_payload() {
    let entry = entry(0, on_day(0, 0), Change::Arrived);
    let line = Line::of(&entry).unwrap();
    assert_eq!(Name::of(&entry), line.name);
    // 16 letters A stand for 96 zero bits (RFC 4648, table 2); the checksum begins the line.
    assert_eq!(
        line.name.text(),
        format!("AAAAAAAAAAAAAAAA.{}", &line.text[..8])
    );
}

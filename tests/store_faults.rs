//! A scripted week is kept in a place that fails at every point; nothing acknowledged may be lost.
//!
//! The faults are those that the authors of `SQLite` list under "How `SQLite` is tested": the Nth write
//! fails, the program is stopped after write N, only part of write N arrives, a bit flips, the place is
//! full, the place is forbidden. After each the journal opened again must be the one before or after the
//! interrupted act.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

#[path = "common/fault_lines.rs"]
mod fault_lines;
#[path = "common/memory.rs"]
mod memory;
#[path = "common/week.rs"]
mod week;

use std::collections::BTreeSet;

use perchlight::domain::journal::entries::{Entry, Journal};
use perchlight::share::import::{Imported, read_text};
use perchlight::store::StoreError;
use perchlight::store::import_error::ImportError;
use perchlight::store::key_value::{
    ENTRY, FOLDED_ON, KeyValue, KeyValueError, QUARANTINE, ROOT, SEGMENT,
};
use perchlight::store::line::{LineError, entries_in};
use perchlight::store::open::{Opened, Report, open};
use perchlight::store::setting::Setting;
use perchlight::words::Language;

use crate::fault_lines::{is_whole_run, tell};
use crate::memory::{Fault, MemoryKeyValue};
use crate::week::{
    Step, all_entries, heal, kept, on_day, reopened, run, script, second_copy, texts,
};

#[test]
fn a_week_without_faults_opens_as_it_was_noted() {
    let steps = script(7);
    let (place, _) = kept(&steps);
    let opened = reopened(&place);
    assert_eq!(opened.journal, Journal::from_entries(all_entries(&steps)));
    assert_eq!(opened.report, Report::default());
    assert_eq!(opened.store.unkept().count(), 0);
    // Folded: no small key is left, and one week is one segment.
    assert_eq!(place.keys(ENTRY).unwrap().len(), 0);
    assert_eq!(place.keys(SEGMENT).unwrap().len(), 1);
    assert!(texts(&place).keys().all(|key| key.starts_with(ROOT)));
}

#[test]
fn a_failed_write_leaves_everything_in_the_copy_or_in_memory() {
    let steps = script(if is_whole_run() { 7 } else { 3 });
    let (_, writes) = kept(&steps);
    assert!(writes > 15, "{writes}");
    for number in 1..=writes {
        let place = MemoryKeyValue::new();
        let mut store = open(place.clone()).store;
        place.set_fault(Fault::FailWrite(number));
        let mut noted = Vec::new();
        let mut failed = 0;
        for step in &steps {
            let answer = run(&mut store, step);
            noted.extend(all_entries(std::slice::from_ref(step)));
            let kept = open(place.clone()).journal;
            let mut with_memory = kept.clone();
            store
                .unkept()
                .for_each(|entry| with_memory.insert(entry.clone()));
            assert_eq!(
                with_memory,
                Journal::from_entries(noted.clone()),
                "write {number}"
            );
            failed += usize::from(answer.is_err());
            if answer.is_ok() && matches!(step, Step::Act(_)) {
                assert_eq!(kept, with_memory, "acknowledged, write {number}");
            }
        }
        assert_eq!(failed, 1, "write {number}");
        // What failed was tried again with the next act.
        assert_eq!(store.retry(), Ok(()));
        let journal = reopened(&place).journal;
        assert_eq!(
            journal,
            Journal::from_entries(all_entries(&steps)),
            "write {number}"
        );
    }
    let said = Language::English.keep_browser_only();
    tell("write N of a scripted week fails, each N", writes, said);
}

/// Does `steps` until the fault stops the program; gives the journals before and after that step.
fn run_until_stopped(place: &MemoryKeyValue, fault: Fault, steps: &[Step]) -> (Journal, Journal) {
    let mut store = open(place.clone()).store;
    place.set_fault(fault);
    let mut before = Journal::default();
    for step in steps {
        let mut after = before.clone();
        let entries = all_entries(std::slice::from_ref(step));
        after.join(&Journal::from_entries(entries));
        if run(&mut store, step).is_err() {
            return (before, after);
        }
        before = after;
    }
    (before.clone(), before)
}

#[test]
fn a_program_stopped_after_any_write_opens_as_before_or_after_the_act() {
    let steps = script(if is_whole_run() { 7 } else { 3 });
    let (_, writes) = kept(&steps);
    for number in 0..=writes {
        let place = MemoryKeyValue::new();
        let (before, after) = run_until_stopped(&place, Fault::StopAfter(number), &steps);
        let opened = reopened(&place);
        assert!(
            [&before, &after].contains(&&opened.journal),
            "write {number}"
        );
        assert_eq!(opened.report.unreadable, [], "write {number}");
        assert_goes_on(opened, &place, &steps);
    }
    let said = "opens as before or after the act";
    tell("stopped after write N, each N", writes + 1, said);
}

/// Everything can still be kept and folded, and is then there.
fn assert_goes_on(mut opened: Opened<MemoryKeyValue>, place: &MemoryKeyValue, steps: &[Step]) {
    let entries = all_entries(steps);
    heal(&mut opened.store, second_copy(&entries));
    opened.store.fold_finished_weeks(on_day(30, 0)).unwrap();
    let again = reopened(place);
    assert_eq!(again.journal, Journal::from_entries(entries));
    let loose = place.keys(ENTRY).unwrap();
    let damaged: BTreeSet<&String> = again
        .report
        .unreadable
        .iter()
        .map(|found| &found.key)
        .collect();
    assert!(loose.iter().all(|key| damaged.contains(key)), "{loose:?}");
}

/// How many bytes the write of this number puts; none for a removal.
fn length_of_write(number: usize, steps: &[Step]) -> usize {
    let after = |number| {
        let place = MemoryKeyValue::new();
        run_until_stopped(&place, Fault::StopAfter(number), steps);
        place.restart();
        texts(&place)
    };
    let before = after(number - 1);
    let after = after(number);
    let changed = after
        .iter()
        .find(|(key, text)| before.get(*key) != Some(text));
    changed.map_or(0, |(_, text)| text.len())
}

#[test]
fn a_write_torn_at_any_length_opens_as_before_or_after_the_act() {
    let steps = script(1);
    let (_, writes) = kept(&steps);
    let (mut torn, mut trials) = (0, 0);
    for number in 1..=writes {
        for bytes in 0..=length_of_write(number, &steps) {
            let place = MemoryKeyValue::new();
            let fault = Fault::TearWrite { number, bytes };
            let (before, after) = run_until_stopped(&place, fault, &steps);
            let opened = reopened(&place);
            let is_before = opened.journal == before;
            assert!(
                is_before || opened.journal == after,
                "write {number}, {bytes} bytes"
            );
            torn += opened.report.unreadable.len();
            trials += 1;
            if bytes % 50 == 0 {
                assert_goes_on(opened, &place, &steps);
            }
        }
    }
    assert!(torn > 1_000, "{torn}");
    let said = Language::English.keep_damaged();
    tell("a write torn at each length", trials, said);
}

#[test]
fn a_write_cut_in_silence_is_noticed_and_never_acknowledged() {
    let steps = script(1);
    let (_, writes) = kept(&steps);
    let mut trials = 0;
    for number in 1..=writes {
        let every = if is_whole_run() { 1 } else { 29 };
        for bytes in (0..=length_of_write(number, &steps)).step_by(every) {
            trials += 1;
            let place = MemoryKeyValue::new();
            let mut store = open(place.clone()).store;
            place.set_fault(Fault::CutWrite { number, bytes });
            for step in &steps {
                if run(&mut store, step).is_ok() {
                    let opened = open(place.clone());
                    let is_kept = |entry: &Entry| opened.journal.entries().contains(entry);
                    let entries = all_entries(std::slice::from_ref(step));
                    assert!(entries.iter().all(is_kept), "write {number}, {bytes} bytes");
                }
            }
            assert_eq!(store.retry(), Ok(()));
            let opened = reopened(&place);
            let journal = Journal::from_entries(all_entries(&steps));
            assert_eq!(opened.journal, journal, "write {number}, {bytes} bytes");
        }
    }
    let said = Language::English.keep_browser_only();
    tell("a value cut in silence at each length", trials, said);
}

#[test]
fn every_flipped_bit_is_reported_and_healed_from_the_second_copy() {
    let mut steps = script(1);
    let mut trials = 0;
    for is_folded in [false, true] {
        if !is_folded {
            steps.retain(|step| matches!(step, Step::Act(_)));
        }
        let steps = if is_folded { script(1) } else { steps.clone() };
        let whole = Journal::from_entries(all_entries(&steps));
        let (place, _) = kept(&steps);
        let second = second_copy(whole.entries());
        for (key, text) in texts(&place) {
            if key == FOLDED_ON {
                continue;
            }
            // In a long text every seventh bit: all eight places of a byte, spread over its bytes.
            let is_long = text.len() > 500 && !is_whole_run();
            for bit in (0..text.len() * 8).step_by(if is_long { 7 } else { 1 }) {
                trials += 1;
                place.flip_bit(&key, bit);
                let mut opened = reopened(&place);
                assert!(!opened.report.unreadable.is_empty(), "{key} bit {bit}");
                assert!(
                    opened
                        .report
                        .unreadable
                        .iter()
                        .all(|found| found.key == key)
                );
                let found = opened.journal.entries();
                assert!(found.iter().all(|entry| whole.entries().contains(entry)));
                // One line, or two where the line break between them is hit.
                assert!(whole.entries().len() - found.len() <= 2, "{key} bit {bit}");
                let damaged = place.get(&key).unwrap().unwrap();
                if bit % 61 == 0 {
                    heal(&mut opened.store, second.clone());
                    let again = reopened(&place);
                    assert_eq!(again.journal, whole, "{key} bit {bit}");
                    let texts = texts(&place);
                    assert!(
                        texts.values().any(|text| *text == damaged),
                        "damaged text gone"
                    );
                    for key in texts.keys().filter(|key| key.starts_with(QUARANTINE)) {
                        place.remove(key).unwrap();
                    }
                }
                place.set(&key, &text).unwrap();
            }
        }
    }
    let said = Language::English.keep_damaged();
    tell("each bit of each entry and week flipped", trials, said);
}

#[test]
fn a_week_cut_between_two_lines_is_reported_and_healed() {
    let steps = script(1);
    let whole = Journal::from_entries(all_entries(&steps));
    let (place, _) = kept(&steps);
    let key = &place.keys(SEGMENT).unwrap()[0];
    let text = place.get(key).unwrap().unwrap();
    let (cut, _) = text.rsplit_once('\n').unwrap();
    place.set(key, cut).unwrap();
    let mut opened = reopened(&place);
    assert_eq!(opened.journal.entries().len(), whole.entries().len() - 1);
    let found = &opened.report.unreadable[0];
    assert!(matches!(found.why, LineError::Name { .. }), "{found:?}");
    assert_eq!((&found.key, found.text.as_str()), (key, cut));
    assert_eq!(heal(&mut opened.store, second_copy(whole.entries())), 1);
    assert_eq!(reopened(&place).journal, whole);
}

#[test]
fn a_full_place_keeps_what_it_has_and_the_rest_waits_in_memory() {
    let steps = script(1);
    let (place, _) = kept(&steps);
    let needed = place.units() * 2;
    let quotas: Vec<usize> = (0..needed).step_by(61).collect();
    for quota in &quotas {
        let quota = *quota;
        let place = MemoryKeyValue::new();
        place.set_quota(Some(quota));
        let mut store = open(place.clone()).store;
        let mut noted = Vec::new();
        for step in &steps {
            let answer = run(&mut store, step);
            if let Err(error) = &answer {
                assert_eq!(*error, StoreError::Storage(KeyValueError::Full));
            }
            noted.extend(all_entries(std::slice::from_ref(step)));
            let mut found = open(place.clone()).journal;
            if answer.is_ok() && matches!(step, Step::Act(_)) {
                assert_eq!(store.unkept().count(), 0);
            }
            store.unkept().for_each(|entry| found.insert(entry.clone()));
            assert_eq!(found, Journal::from_entries(noted.clone()), "quota {quota}");
        }
        assert_eq!(entries_in(&store.everything_as_text()).len(), noted.len());
        place.set_quota(None);
        assert_eq!(store.retry(), Ok(()));
        assert_eq!(reopened(&place).journal, Journal::from_entries(noted));
    }
    let said = Language::English.keep_full();
    tell("a quota of each size", quotas.len(), said);
}

#[test]
fn a_blocked_place_is_said_and_the_app_goes_on_in_memory() {
    let place = MemoryKeyValue::new();
    place.set_blocked(true);
    let Opened {
        mut store,
        journal,
        report,
    } = open(place.clone());
    assert!(journal.is_empty());
    assert_eq!(report.storage, Some(KeyValueError::Blocked));
    let steps = script(1);
    let blocked = Err(StoreError::Storage(KeyValueError::Blocked));
    for step in &steps {
        assert_eq!(run(&mut store, step), blocked);
    }
    let entries = all_entries(&steps);
    assert_eq!(store.unkept().cloned().collect::<Vec<_>>(), entries);
    assert_eq!(entries_in(&store.everything_as_text()), entries);
    assert_eq!(
        store.write_setting(Setting::Theme, "night"),
        Err(KeyValueError::Blocked.into())
    );
    assert_eq!(
        store.read_setting(Setting::Theme),
        Ok(Some("night".to_owned()))
    );
    place.set_blocked(false);
    assert_eq!(store.retry(), Ok(()));
    assert_eq!(reopened(&place).journal, Journal::from_entries(entries));
}

#[test]
fn what_is_whole_in_the_file_of_everything_can_be_taken_in_again() {
    let steps = script(1);
    let (place, _) = kept(&steps);
    let text = open(place).store.everything_as_text();
    let taken = |text: &str| match read_text(text) {
        Ok(Imported::Entries(entries)) => Journal::from_entries(entries),
        other => panic!("{other:?}"),
    };
    let whole = Journal::from_entries(all_entries(&steps));
    assert_eq!(taken(&text), whole);
    // Saved by a program that ends lines in its own way and puts a byte order mark in front.
    assert_eq!(
        taken(&format!("\u{feff}{}", text.replace('\n', "\r\n"))),
        whole
    );
    let records = entries_in(&text).len();
    let first = text.lines().find(|line| !entries_in(line).is_empty());
    let damaged = text.replacen(first.unwrap(), "damaged", 1);
    assert_eq!(entries_in(&damaged).len(), records - 1);
    assert!(taken(&damaged).entries().len() < whole.entries().len());
    let none = text.lines().next().unwrap();
    assert_eq!(read_text(none), Err(ImportError::Damaged));
}

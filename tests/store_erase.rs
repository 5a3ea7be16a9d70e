//! Erasing one chick's record loses no entry of another, wherever it is interrupted.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

#[path = "common/memory.rs"]
mod memory;
#[path = "common/week.rs"]
mod week;

use std::collections::BTreeSet;

use perchlight::domain::journal::entries::{ChickId, Entry, Journal};
use perchlight::store::Store;
use perchlight::store::key_value::{ENTRY, KeyValue, QUARANTINE, SEGMENT};
use perchlight::store::open::{Report, open};

use crate::memory::{Fault, MemoryKeyValue};
use crate::week::{entry, on_day, reopened, texts, weighed};

const GONE: ChickId = ChickId([1; 12]);
const STAYS: ChickId = ChickId([2; 12]);

fn of(chick: ChickId, number: u8, day: i64) -> Entry {
    let at = on_day(day, i64::from(number));
    let mut entry = entry(number, at, weighed(900 + i32::from(number)));
    entry.chick = chick;
    entry
}

/// Two chicks: acts of one and of both, one week folded into a segment of both, one not.
fn two_chicks() -> (MemoryKeyValue, Vec<Entry>) {
    let place = MemoryKeyValue::new();
    let mut store = open(place.clone()).store;
    let acts = [
        vec![of(GONE, 1, 0)],
        vec![of(STAYS, 2, 0)],
        vec![of(GONE, 3, 1), of(STAYS, 4, 1)],
        vec![of(GONE, 5, 8)],
    ];
    for act in &acts {
        store.keep(act).unwrap();
    }
    store.fold_finished_weeks(on_day(9, 0)).unwrap();
    let later = [
        vec![of(GONE, 6, 9), of(STAYS, 7, 9)],
        vec![of(GONE, 8, 9)],
        vec![of(STAYS, 9, 9)],
    ];
    for act in &later {
        store.keep(act).unwrap();
    }
    let all = acts.iter().chain(&later).flatten().cloned().collect();
    (place, all)
}

fn erase(store: &mut Store<MemoryKeyValue>) -> bool {
    store.erase(&BTreeSet::from([GONE])).is_ok()
}

fn only(all: &[Entry], chick: ChickId) -> Vec<Entry> {
    let entries = all.iter().filter(|entry| entry.chick == chick);
    Journal::from_entries(entries.cloned().collect())
        .entries()
        .to_vec()
}

#[test]
fn what_is_erased_is_gone_and_the_other_chick_is_whole() {
    let (place, all) = two_chicks();
    assert_eq!(place.keys(SEGMENT).unwrap().len(), 1);
    let mut store = open(place.clone()).store;
    assert_eq!(store.erase(&BTreeSet::from([GONE])).unwrap(), 5);
    let opened = reopened(&place);
    assert_eq!(opened.journal.entries(), only(&all, STAYS));
    assert_eq!(opened.report, Report::default());
    // Nothing of it is left anywhere, not set aside either.
    assert_eq!(place.keys(QUARANTINE).unwrap(), Vec::<String>::new());
    for entry in only(&all, GONE) {
        let line = perchlight::store::saved::entry_to_text(&entry);
        assert!(texts(&place).values().all(|text| !text.contains(&line)));
    }
    // What came back from elsewhere is taken in again.
    store.keep(&only(&all, GONE)).unwrap();
    assert_eq!(reopened(&place).journal.entries().len(), all.len());
}

#[test]
fn whichever_write_fails_no_entry_of_the_other_chick_is_lost_and_the_next_try_ends_it() {
    let (place, all) = two_chicks();
    place.restart();
    let mut store = open(place.clone()).store;
    assert!(erase(&mut store));
    let writes = place.writes();
    // A segment and an act of both are written and removed, one act of the chick alone is removed.
    assert!(writes >= 5, "{writes}");
    let kept = only(&all, STAYS);
    let whole = kept.iter().collect::<BTreeSet<_>>();
    for number in 1..=writes {
        for fault in [
            Fault::FailWrite(number),
            Fault::StopAfter(number - 1),
            Fault::TearWrite { number, bytes: 40 },
            Fault::CutWrite { number, bytes: 40 },
        ] {
            let (place, _) = two_chicks();
            let mut store = open(place.clone()).store;
            place.set_fault(fault);
            erase(&mut store);
            place.restart();
            let opened = open(place.clone());
            let found: BTreeSet<&Entry> = opened.journal.entries().iter().collect();
            assert!(whole.is_subset(&found), "{fault:?}");
            let mut store = opened.store;
            assert!(erase(&mut store), "{fault:?}");
            let found = reopened(&place).journal;
            assert_eq!(found.entries(), kept, "{fault:?}");
        }
    }
}

#[test]
fn what_cannot_be_read_stays_and_is_still_told() {
    let (place, all) = two_chicks();
    let key = place.keys(SEGMENT).unwrap().remove(0);
    place.flip_bit(&key, 8 * 30);
    let before = open(place.clone()).report.unreadable.len();
    let mut store = open(place.clone()).store;
    assert!(erase(&mut store));
    let opened = reopened(&place);
    assert!(opened.report.unreadable.len() >= before && before > 0);
    assert!(
        opened
            .journal
            .entries()
            .iter()
            .all(|entry| entry.chick == STAYS)
    );
    assert!(
        only(&all, STAYS)
            .iter()
            .filter(|entry| !opened.journal.holds(entry))
            .count()
            <= 1
    );
    assert!(!place.keys(ENTRY).unwrap().is_empty());
}

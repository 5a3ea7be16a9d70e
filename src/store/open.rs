//! Reading the first copy at start. Nothing is written here.

use std::collections::BTreeSet;

use crate::domain::journal::entries::{Entry, Journal};
use crate::store::Store;
use crate::store::key_value::{ENTRY, KeyValue, KeyValueError, QUARANTINE, SEGMENT};
use crate::store::line::{LineError, Name, check_week, named_entry, read_act};
use crate::store::record::{decode, split};

/// What opening found.
#[derive(Debug)]
pub struct Opened<K> {
    /// The store, ready to keep.
    pub store: Store<K>,
    /// Every entry that could be read.
    pub journal: Journal,
    /// What could not.
    pub report: Report,
}

/// What could not be read. Every text named here stays where it is.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Report {
    /// The place itself did not answer.
    pub storage: Option<KeyValueError>,
    /// Texts that are damaged or not understood.
    pub unreadable: Vec<Unreadable>,
    /// The highest version found that is newer than this build; nothing is written then.
    pub newer_version: Option<i64>,
    /// Keys of texts set aside earlier, whose entries were healed.
    pub set_aside: Vec<String>,
}

/// A text that gives no entry, for the person to save.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unreadable {
    /// Where it stands.
    pub key: String,
    /// The text as found: the whole of an act, the one line of a week, or the whole
    /// week where lines are missing.
    pub text: String,
    /// Why it gives no entry.
    pub why: LineError,
}

/// Opens the first copy.
///
/// Never fails: a blocked place gives an empty journal, the reason in the report, and a store that goes
/// on in memory.
pub fn open<K: KeyValue>(keys: K) -> Opened<K> {
    let mut reading = Reading::default();
    if let Err(error) = reading.read(&keys) {
        reading.report.storage = Some(error);
    }
    let Reading {
        entries,
        held,
        report,
    } = reading;
    Opened {
        store: Store::new(keys, held, report.newer_version),
        journal: Journal::from_entries(entries),
        report,
    }
}

#[derive(Default)]
struct Reading {
    entries: Vec<Entry>,
    held: BTreeSet<Name>,
    report: Report,
}

impl Reading {
    fn read<K: KeyValue>(&mut self, keys: &K) -> Result<(), KeyValueError> {
        for key in keys.keys(SEGMENT)? {
            let text = keys.get(&key)?.unwrap_or_default();
            self.read_week(&key, &text);
        }
        for key in keys.keys(ENTRY)? {
            let text = keys.get(&key)?.unwrap_or_default();
            let name = key.strip_prefix(ENTRY).unwrap_or_default();
            match read_act(name, &text) {
                Ok(lines) => lines
                    .into_iter()
                    .for_each(|line| self.take(line.name, line.entry)),
                Err(why) => self.report_unreadable(&key, &text, why),
            }
        }
        self.report.set_aside = keys.keys(QUARANTINE)?;
        Ok(())
    }

    /// Each line counts for itself. A text cut between two lines is seen by its name. Where the whole
    /// week is as its name says, no line's own checksum needs to be worked out again.
    fn read_week(&mut self, key: &str, text: &str) {
        let name = key.strip_prefix(SEGMENT).unwrap_or_default();
        let week = check_week(name, text);
        let parts = if week.is_ok() { split } else { decode };
        let before = self.report.unreadable.len();
        for text in text.lines() {
            let entry = parts(text).map_err(LineError::from).and_then(named_entry);
            match entry {
                Ok((name, entry)) => self.take(name, entry),
                Err(why) => self.report_unreadable(key, text, why),
            }
        }
        if self.report.unreadable.len() == before
            && let Err(why) = week
        {
            self.report_unreadable(key, text, why);
        }
    }

    fn take(&mut self, name: Name, entry: Entry) {
        self.held.insert(name);
        self.entries.push(entry);
    }

    fn report_unreadable(&mut self, key: &str, text: &str, why: LineError) {
        let newer = why.newer_version();
        self.report.newer_version = self.report.newer_version.max(newer);
        self.report.unreadable.push(Unreadable {
            key: key.to_owned(),
            text: text.to_owned(),
            why,
        });
    }
}

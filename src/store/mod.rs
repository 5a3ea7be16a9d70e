//! Where the journal is kept, and what may never happen to it.
//!
//! **Invariants.** Opening writes nothing. An act is kept whole or not at all. What was kept is never
//! written over with anything else: a key names its content. What cannot be read stays where it is and
//! is reported, never replaced by an empty start. What cannot be kept stays in memory, is listed, and is
//! tried again.
//!
//! Two copies, one union: [`Store`] over a [`key_value::KeyValue`] place is the first copy and answers
//! at once; `second_copy` (feature `ui`) is the second; [`save_state`] tells what may be shown as kept.

pub mod backup_due;
pub mod breeder_text;
#[cfg(feature = "ui")]
pub mod browser;
pub mod chick_times;
pub mod cup_text;
pub mod draft_text;
pub mod erase;
pub mod fold;
pub mod glance_text;
pub mod guide_text;
pub mod heal;
pub mod id_text;
pub mod import_error;
pub mod json;
pub mod key_value;
pub mod line;
pub mod migrate;
pub mod open;
#[cfg(feature = "ui")]
pub mod photo_store;
pub mod record;
pub mod save_state;
pub mod saved;
pub mod saved_error;
#[cfg(feature = "ui")]
pub mod second_copy;
pub mod sent_text;
pub mod setting;
mod to_heal;

use std::collections::{BTreeMap, BTreeSet};
use std::mem;

use thiserror::Error;

use crate::checksum::crc32;
use crate::domain::journal::entries::Entry;
use crate::domain::quantity::order::set_of;
use crate::store::key_value::{ENTRY, KeyValue, KeyValueError, QUARANTINE, ROOT, SEGMENT};
use crate::store::line::{Line, LineError, Name, act_of, read_act, read_each};
use crate::store::record::{checksum_text, encode};
use crate::store::saved::entry_to_text;
use crate::store::setting::Setting;
use crate::store::to_heal::ToHeal;

/// The first line of [`Store::everything_as_text`].
pub const EVERYTHING: &str = "Perchlight: everything kept in this browser";

/// Why something is not kept in the first copy.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum StoreError {
    /// The place did not do it.
    #[error(transparent)]
    Storage(#[from] KeyValueError),
    /// The place said yes, but holds something else.
    #[error("key {key:?} does not hold what was just written")]
    ReadBack {
        /// The key.
        key: String,
    },
    /// A later build of the app wrote here; this build must not.
    #[error(
        "the records were written by version {version} of the saved form, newer than this build"
    )]
    NewerVersion {
        /// The version found.
        version: i64,
    },
    /// The entry holds a value that the saved form does not take.
    #[error("the entry cannot be saved: {0}")]
    NotSavable(#[from] LineError),
}

/// The first copy of the journal.
#[derive(Debug)]
pub struct Store<K> {
    keys: K,
    held: BTreeSet<Name>,
    unkept: Vec<Vec<Entry>>,
    to_heal: ToHeal,
    newer_version: Option<i64>,
    settings: BTreeMap<Setting, String>,
}

impl<K: KeyValue> Store<K> {
    /// Before it is opened: it holds nothing, and gives settings only.
    pub fn unopened(keys: K) -> Self {
        Self::new(keys, BTreeSet::new(), None)
    }

    /// Takes the place of this one, which was not opened, with the settings that wait in its memory.
    pub fn open_as(&mut self, opened: Self) {
        let settings = mem::take(&mut self.settings);
        *self = opened;
        self.settings = settings;
    }

    fn new(keys: K, held: BTreeSet<Name>, newer_version: Option<i64>) -> Self {
        Self {
            keys,
            held,
            unkept: Vec::new(),
            to_heal: ToHeal::default(),
            newer_version,
            settings: BTreeMap::new(),
        }
    }

    /// Keeps what was noted in one act, whole or not at all, and tries again what was not kept before.
    ///
    /// # Errors
    /// The first [`StoreError`]; what is not kept is then in [`Store::unkept`]. Without an error
    /// everything ever handed over is in the first copy.
    pub fn keep(&mut self, act: &[Entry]) -> Result<(), StoreError> {
        if !act.is_empty() {
            self.unkept.push(act.to_vec());
        }
        self.retry()
    }

    /// Tries again to keep what is not kept yet.
    ///
    /// # Errors
    /// As for [`Store::keep`].
    pub fn retry(&mut self) -> Result<(), StoreError> {
        let mut first_error = None;
        for act in mem::take(&mut self.unkept) {
            if let Err(error) = self.write_act(&act) {
                self.unkept.push(act);
                first_error.get_or_insert(error);
            }
        }
        first_error.map_or(Ok(()), Err)
    }

    /// What is only in memory so far.
    pub fn unkept(&self) -> impl Iterator<Item = &Entry> {
        self.unkept.iter().flatten()
    }

    /// Which lines of the second copy, of those named `stored`, this one lacks; all others need not be
    /// read.
    pub fn unknown(&self, stored: &BTreeSet<Name>) -> BTreeSet<Name> {
        stored.difference(&self.held).copied().collect()
    }

    /// Whether a second copy that holds `stored` has everything that was ever handed over to be kept.
    pub fn is_whole_in(&self, stored: &BTreeSet<Name>) -> bool {
        self.unkept.is_empty() && self.held.is_subset(stored)
    }

    /// The names and lines that the second copy, which holds `stored`, lacks of `entries`. Entries that
    /// were never handed over to be kept, as those of the made-up chick, stay out of it; one that cannot
    /// be saved is left to the first copy's own report.
    pub fn lacking_in(&self, stored: &BTreeSet<Name>, entries: &[Entry]) -> Vec<(String, String)> {
        let waiting = set_of(self.unkept().map(Name::of));
        let line = |entry: &Entry| {
            let payload = entry_to_text(entry);
            let (id, checksum) = (entry.id, crc32(payload.as_bytes()));
            let name = Name { id, checksum };
            if stored.contains(&name) {
                None
            } else if self.held.contains(&name) {
                Some((name.text(), encode(&payload)))
            } else if waiting.contains(&name) {
                let line = Line::of(entry).ok()?;
                Some((name.text(), line.text))
            } else {
                None
            }
        };
        entries.iter().filter_map(line).collect()
    }

    /// Told by the second copy: a later build of the app wrote there, so this build writes nothing.
    pub fn found_newer(&mut self, version: i64) {
        self.newer_version = self.newer_version.max(Some(version));
    }

    /// The version of a later build of the app, when it wrote here; nothing is written then.
    pub const fn newer_version(&self) -> Option<i64> {
        self.newer_version
    }

    /// The entries that another tab has just kept, from the key and new text of a `storage` event.
    ///
    /// Without a key everything was cleared there: what the second copy holds is then healed at the next
    /// start. Texts that are not ours or not whole give no entry.
    pub fn entries_from_event(&mut self, key: Option<&str>, text: Option<&str>) -> Vec<Entry> {
        let Some(key) = key else {
            self.held.clear();
            return Vec::new();
        };
        let text = text.unwrap_or_default();
        let lines: Vec<Line> = if let Some(name) = key.strip_prefix(ENTRY) {
            read_act(name, text).unwrap_or_default()
        } else if key.starts_with(SEGMENT) {
            read_each(text).filter_map(Result::ok).collect()
        } else {
            Vec::new()
        };
        self.held.extend(lines.iter().map(|line| line.name));
        lines.into_iter().map(|line| line.entry).collect()
    }

    /// Everything of ours in this place and in memory as plain text, damaged or not, to be saved by the
    /// person. [`line::entries_in`] finds the whole entries in it.
    pub fn everything_as_text(&self) -> String {
        let mut text = format!("{EVERYTHING}\n");
        match self.keys.keys(ROOT) {
            Ok(keys) => {
                for key in keys {
                    let value = match self.keys.get(&key) {
                        Ok(value) => value.unwrap_or_default(),
                        Err(error) => error.to_string(),
                    };
                    text.extend(["\n# ", key.as_str(), "\n", value.as_str(), "\n"]);
                }
            }
            Err(error) => text.extend(["\n# ", error.to_string().as_str(), "\n"]),
        }
        text.push_str("\n# only in memory\n");
        for entry in self.unkept() {
            text.push_str(&encode(&entry_to_text(entry)));
            text.push('\n');
        }
        for line in self.to_heal.texts() {
            text.extend([line, "\n"]);
        }
        text
    }

    fn write_act(&mut self, act: &[Entry]) -> Result<(), StoreError> {
        self.check_version()?;
        let mut lines = act.iter().map(Line::of).collect::<Result<Vec<_>, _>>()?;
        lines.retain(|line| !self.held.contains(&line.name));
        let Some((name, text)) = act_of(&lines) else {
            return Ok(());
        };
        self.put(&format!("{ENTRY}{}", name.text()), &text)?;
        self.held.extend(lines.iter().map(|line| line.name));
        Ok(())
    }

    /// Writes a text, reads it back, and sets aside first what else stood there.
    fn put(&self, key: &str, text: &str) -> Result<(), StoreError> {
        if let Some(other) = self.keys.get(key)? {
            if other == text {
                return Ok(());
            }
            let tail = key.strip_prefix(ROOT).unwrap_or(key);
            let checksum = checksum_text(crc32(other.as_bytes()));
            self.write(&format!("{QUARANTINE}{tail}.{checksum}"), &other)?;
        }
        self.write(key, text)
    }

    fn write(&self, key: &str, text: &str) -> Result<(), StoreError> {
        self.keys.set(key, text)?;
        if self.keys.get(key)?.is_some_and(|found| found == text) {
            Ok(())
        } else {
            let key = key.to_owned();
            Err(StoreError::ReadBack { key })
        }
    }

    fn check_version(&self) -> Result<(), StoreError> {
        let newer = self.newer_version;
        newer.map_or(Ok(()), |version| Err(StoreError::NewerVersion { version }))
    }

    /// The text of a setting; `None` when it was never written.
    ///
    /// A setting written while the place did not answer is given back from memory.
    ///
    /// # Errors
    /// [`StoreError::Storage`] when the place cannot be read.
    pub fn read_setting(&self, setting: Setting) -> Result<Option<String>, StoreError> {
        if let Some(text) = self.settings.get(&setting) {
            return Ok(Some(text.clone()));
        }
        Ok(self.keys.get(&setting.key())?)
    }

    /// Writes a setting. When that does not go, it holds until the app is closed.
    ///
    /// # Errors
    /// [`StoreError::Storage`] when it was not written.
    pub fn write_setting(&mut self, setting: Setting, text: &str) -> Result<(), StoreError> {
        self.settings.insert(setting, text.to_owned());
        self.keys.set(&setting.key(), text)?;
        self.settings.remove(&setting);
        Ok(())
    }
}

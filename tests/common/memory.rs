//! A place in memory that can be told to fail like a real one.

#![allow(dead_code, reason = "each test file uses its own part of this")]

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;

use perchlight::store::key_value::{KeyValue, KeyValueError};

/// What goes wrong, counted from the first write after it was set; writes count from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Fault {
    /// This write answers with an error and changes nothing.
    FailWrite(usize),
    /// After this many writes the program is stopped: whatever it asks for fails.
    StopAfter(usize),
    /// Only the first bytes of this write arrive, then the program is stopped.
    TearWrite {
        /// Which write.
        number: usize,
        /// How many bytes arrive.
        bytes: usize,
    },
    /// Only the first bytes of this write arrive, and the place says that all went well.
    CutWrite {
        /// Which write.
        number: usize,
        /// How many bytes arrive.
        bytes: usize,
    },
}

#[derive(Debug, Default)]
struct Disk {
    texts: BTreeMap<String, String>,
    fault: Option<Fault>,
    writes: usize,
    is_stopped: bool,
    is_blocked: bool,
    quota: Option<usize>,
}

/// A place in memory. Clones share it, like two tabs of one browser.
#[derive(Debug, Clone, Default)]
pub(crate) struct MemoryKeyValue(Rc<RefCell<Disk>>);

impl MemoryKeyValue {
    /// An empty place without faults.
    pub(crate) fn new() -> Self {
        Self::default()
    }

    /// Sets a fault and begins to count writes anew.
    pub(crate) fn set_fault(&self, fault: Fault) {
        let mut disk = self.0.borrow_mut();
        disk.fault = Some(fault);
        disk.writes = 0;
    }

    /// Starts the program again: the texts stay, faults are gone, writes are counted anew.
    pub(crate) fn restart(&self) {
        let mut disk = self.0.borrow_mut();
        disk.fault = None;
        disk.writes = 0;
        disk.is_stopped = false;
    }

    /// Writes and removals since the count began, failed ones too.
    pub(crate) fn writes(&self) -> usize {
        self.0.borrow().writes
    }

    /// Forbids or allows everything.
    pub(crate) fn set_blocked(&self, is_blocked: bool) {
        self.0.borrow_mut().is_blocked = is_blocked;
    }

    /// Limits keys and texts together to this many UTF-16 units, as browsers count.
    pub(crate) fn set_quota(&self, units: Option<usize>) {
        self.0.borrow_mut().quota = units;
    }

    /// Changes one bit of the text under `key`, counted from its first byte; text that is no longer
    /// text gets replacement characters.
    pub(crate) fn flip_bit(&self, key: &str, bit: usize) {
        let mut disk = self.0.borrow_mut();
        if let Some(text) = disk.texts.get_mut(key) {
            let mut bytes = text.clone().into_bytes();
            if let Some(byte) = bytes.get_mut(bit / 8) {
                *byte ^= 1 << (bit % 8);
            }
            *text = String::from_utf8_lossy(&bytes).into_owned();
        }
    }

    /// Keys and texts together in UTF-16 units.
    pub(crate) fn units(&self) -> usize {
        self.0.borrow().units()
    }
}

impl Disk {
    fn units(&self) -> usize {
        let units = |text: &str| text.encode_utf16().count();
        self.texts
            .iter()
            .map(|(key, text)| units(key) + units(text))
            .sum()
    }

    fn check(&self) -> Result<(), KeyValueError> {
        if self.is_blocked {
            Err(KeyValueError::Blocked)
        } else if self.is_stopped {
            Err(KeyValueError::Other("stopped".to_owned()))
        } else {
            Ok(())
        }
    }

    fn write(&mut self, key: &str, text: Option<&str>) -> Result<(), KeyValueError> {
        self.check()?;
        self.writes += 1;
        let count = self.writes;
        let mut text = text;
        match self.fault {
            Some(Fault::FailWrite(number)) if number == count => {
                return Err(KeyValueError::Other("failed".to_owned()));
            }
            Some(Fault::StopAfter(number)) if number < count => {
                self.is_stopped = true;
                return self.check();
            }
            Some(Fault::TearWrite { number, bytes }) if number == count => {
                self.is_stopped = true;
                text = text.map(|text| prefix(text, bytes));
            }
            Some(Fault::CutWrite { number, bytes }) if number == count => {
                text = text.map(|text| prefix(text, bytes));
            }
            Some(_) | None => {}
        }
        self.put(key, text)?;
        self.check()
    }

    fn put(&mut self, key: &str, text: Option<&str>) -> Result<(), KeyValueError> {
        let before = self.texts.remove(key);
        let Some(text) = text else {
            return Ok(());
        };
        self.texts.insert(key.to_owned(), text.to_owned());
        if self.quota.is_some_and(|quota| self.units() > quota) {
            self.texts.remove(key);
            self.texts
                .extend(before.map(|before| (key.to_owned(), before)));
            return Err(KeyValueError::Full);
        }
        Ok(())
    }
}

/// The first `bytes` of `text`, fewer where they would end inside a character.
fn prefix(text: &str, bytes: usize) -> &str {
    let ends = text
        .char_indices()
        .map(|(start, letter)| start + letter.len_utf8());
    let end = ends.take_while(|end| *end <= bytes).last();
    text.get(..end.unwrap_or_default()).unwrap_or_default()
}

impl KeyValue for MemoryKeyValue {
    fn get(&self, key: &str) -> Result<Option<String>, KeyValueError> {
        let disk = self.0.borrow();
        disk.check()?;
        Ok(disk.texts.get(key).cloned())
    }

    fn set(&self, key: &str, text: &str) -> Result<(), KeyValueError> {
        self.0.borrow_mut().write(key, Some(text))
    }

    fn remove(&self, key: &str) -> Result<(), KeyValueError> {
        self.0.borrow_mut().write(key, None)
    }

    fn keys(&self, prefix: &str) -> Result<Vec<String>, KeyValueError> {
        let disk = self.0.borrow();
        disk.check()?;
        let keys = disk.texts.keys().filter(|key| key.starts_with(prefix));
        Ok(keys.cloned().collect())
    }
}

//! Erasing the whole record of a chick from the first copy: the one act that takes kept entries away.
//!
//! **Invariant.** Where a text holds entries of other chicks too, these are written under a new key and read
//! back before the old key goes, so an interruption at any point leaves every one of them in at least one
//! place. What cannot be read may be anybody's and stays.

use std::collections::BTreeSet;

use crate::checksum::crc32;
use crate::domain::journal::entries::ChickId;
use crate::store::key_value::{ENTRY, KeyValue, QUARANTINE, SEGMENT};
use crate::store::line::{Line, Name, act_of, read_act, week_name};
use crate::store::record::checksum_text;
use crate::store::{Store, StoreError};

/// A text without the lines of what is erased.
struct Rest<'text> {
    erased: BTreeSet<Name>,
    lines: Vec<&'text str>,
}

impl<'text> Rest<'text> {
    /// `None` when the text holds nothing of these chicks.
    fn of(text: &'text str, chicks: &BTreeSet<ChickId>) -> Option<Self> {
        let mut rest = Self {
            erased: BTreeSet::new(),
            lines: Vec::new(),
        };
        for text in text.lines() {
            match Line::read(text) {
                Ok(line) if chicks.contains(&line.entry.chick) => {
                    rest.erased.insert(line.name);
                }
                Ok(_) | Err(_) => rest.lines.push(text),
            }
        }
        (!rest.erased.is_empty()).then_some(rest)
    }
}

impl<K: KeyValue> Store<K> {
    /// Erases every entry of these chicks: a chick, and the typed one that its card has joined. Returns how
    /// many lines went.
    ///
    /// # Errors
    /// [`StoreError`]; what was erased until then is gone, all else stays, and the next call goes on.
    pub fn erase(&mut self, chicks: &BTreeSet<ChickId>) -> Result<usize, StoreError> {
        self.check_version()?;
        for act in &mut self.unkept {
            act.retain(|entry| !chicks.contains(&entry.chick));
        }
        self.unkept.retain(|act| !act.is_empty());
        let lines = &mut self.to_heal.lines;
        lines.retain(|line| !chicks.contains(&line.entry.chick));
        let mut count = 0;
        for prefix in [SEGMENT, ENTRY, QUARANTINE] {
            for key in self.keys.keys(prefix)? {
                let name = key.strip_prefix(prefix).unwrap_or_default();
                let text = self.keys.get(&key)?.unwrap_or_default();
                let Some(rest) = Rest::of(&text, chicks) else {
                    continue;
                };
                if let Some((name, text)) = renamed(prefix, name, &text, &rest.lines) {
                    self.put(&format!("{prefix}{name}"), &text)?;
                }
                self.keys.remove(&key)?;
                count += rest.erased.len();
                for name in rest.erased {
                    self.held.remove(&name);
                }
            }
        }
        Ok(count)
    }
}

/// Under which name the rest of a text stands, and as what; `None` when nothing is left.
fn renamed(prefix: &str, name: &str, text: &str, lines: &[&str]) -> Option<(String, String)> {
    let rest = lines.join("\n");
    if lines.is_empty() {
        return None;
    }
    if prefix == SEGMENT {
        let monday = name.split('.').next().unwrap_or_default();
        return Some((week_name(monday, &rest), rest));
    }
    if prefix == ENTRY && read_act(name, text).is_ok() {
        let lines: Vec<Line> = lines
            .iter()
            .filter_map(|line| Line::read(line).ok())
            .collect();
        let (name, text) = act_of(&lines)?;
        return Some((name.text(), text));
    }
    // What was damaged before stays damaged, under a name of its own.
    Some((
        format!("{name}.{}", checksum_text(crc32(rest.as_bytes()))),
        rest,
    ))
}

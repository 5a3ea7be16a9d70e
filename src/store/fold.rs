//! Folding finished weeks: many small keys become one, so that thousands of entries open quickly.

use std::collections::{BTreeMap, BTreeSet};

use crate::domain::time::moment::{Day, Moment};
use crate::store::key_value::{ENTRY, FOLDED_ON, KeyValue, SEGMENT};
use crate::store::line::{Line, read_act, week_name};
use crate::store::{Store, StoreError};

/// What folding did.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Folded {
    /// Segments written.
    pub segments: usize,
    /// Small keys removed.
    pub removed: usize,
}

impl<K: KeyValue> Store<K> {
    /// Folds the small keys of finished weeks into one segment a week, at most once a day.
    ///
    /// A segment is named by its week and its checksum and is never written again; entries noted later
    /// for the same week make another one. It is read back before its small keys go, so an
    /// interruption at any point leaves every entry in at least one place. What cannot be read is left
    /// alone.
    ///
    /// To be called at the end of an act, when the second copy has everything, and never at start: a
    /// large write delays the next small ones on their way to the disk.
    ///
    /// # Errors
    /// [`StoreError`]; what was folded until then stays, and the next call goes on.
    pub fn fold_finished_weeks(&mut self, now: Moment) -> Result<Folded, StoreError> {
        self.check_version()?;
        let today = Day::from_number(days(now)).iso();
        if self.keys.get(FOLDED_ON)?.is_some_and(|day| day == today) {
            return Ok(Folded::default());
        }
        let finished = self.finished_acts(week(now))?;
        let mut weeks: BTreeMap<i32, BTreeSet<&str>> = BTreeMap::new();
        for line in finished.iter().flat_map(|(_, lines)| lines) {
            let texts = weeks.entry(week(line.entry.at)).or_default();
            texts.insert(&line.text);
        }
        let mut folded = Folded::default();
        for (week, lines) in weeks {
            let monday = monday(week);
            let segmented = self.segments_of(&monday)?;
            let mut lines: Vec<&str> = lines.into_iter().collect();
            lines.retain(|line| !segmented.lines().any(|found| found == *line));
            if lines.is_empty() {
                continue;
            }
            let text = lines.join("\n");
            self.put(&format!("{SEGMENT}{}", week_name(&monday, &text)), &text)?;
            folded.segments += 1;
        }
        // Every line of these acts now stands in a segment that was read back, or an error has left.
        for (key, _) in &finished {
            self.keys.remove(key)?;
            folded.removed += 1;
        }
        self.write(FOLDED_ON, &today)?;
        Ok(folded)
    }

    /// The texts of all segments of one week, below each other. A line that is the same as a whole one
    /// is whole, so none needs to be read.
    fn segments_of(&self, monday: &str) -> Result<String, StoreError> {
        let mut texts = String::new();
        for key in self.keys.keys(&format!("{SEGMENT}{monday}."))? {
            texts.push_str(&self.keys.get(&key)?.unwrap_or_default());
            texts.push('\n');
        }
        Ok(texts)
    }

    fn finished_acts(&self, this_week: i32) -> Result<Vec<(String, Vec<Line>)>, StoreError> {
        let mut acts = Vec::new();
        for key in self.keys.keys(ENTRY)? {
            let text = self.keys.get(&key)?.unwrap_or_default();
            let name = key.strip_prefix(ENTRY).unwrap_or_default();
            let Ok(lines) = read_act(name, &text) else {
                continue;
            };
            if lines.iter().all(|line| week(line.entry.at) < this_week) {
                acts.push((key, lines));
            }
        }
        Ok(acts)
    }
}

/// 1970-01-01 was a Thursday.
const DAYS_FROM_MONDAY: i32 = 3;

fn days(moment: Moment) -> i32 {
    i32::try_from(moment.seconds().div_euclid(86_400)).unwrap_or(i32::MAX)
}

/// The week of a moment, Monday to Sunday in universal time, counted from the one of 1970-01-01.
pub(super) fn week(moment: Moment) -> i32 {
    (days(moment) + DAYS_FROM_MONDAY).div_euclid(7)
}

/// The Monday of such a week, as in the name of its segment.
pub(super) fn monday(week: i32) -> String {
    Day::from_number(week * 7 - DAYS_FROM_MONDAY).iso()
}

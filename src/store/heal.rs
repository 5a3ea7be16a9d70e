//! Healing the first copy with what only the second has, in steps: thousands of lines in one go would
//! leave the screen without an answer for seconds.

use crate::domain::quantity::order::{set_of, sorted_by};
use crate::domain::time::moment::Moment;
use crate::store::fold::{monday, week};
use crate::store::key_value::{ENTRY, KeyValue, SEGMENT};
use crate::store::line::{Line, Name, week_name};
use crate::store::to_heal::ToHeal;
use crate::store::{Store, StoreError};

/// A step ends with the week in which it has written this many lines. Ours: about 30 ms on a slow phone.
const LINES_A_STEP: usize = 300;

impl<K: KeyValue> Store<K> {
    /// Takes the lines that only the second copy has, to be written by [`Store::heal_step`].
    pub fn set_to_heal(&mut self, lines: Vec<Line>) {
        // Where the keys cannot be read, the first step will say so.
        let keys = self.keys.keys(ENTRY).unwrap_or_default().into_iter();
        let names = keys.filter_map(|key| Name::from_text(key.strip_prefix(ENTRY)?));
        self.to_heal = ToHeal {
            taken: set_of(names),
            lines: sorted_by(lines, |one, other| other.entry.at.cmp(&one.entry.at)),
        };
    }

    /// Whether anything is left to heal.
    pub fn is_to_heal(&self) -> bool {
        !self.to_heal.lines.is_empty()
    }

    /// Writes some of what is to heal, the oldest first: the lines of a finished week as one segment, as
    /// [`Store::fold_finished_weeks`] would fold them, any other under its own key. Whether
    /// anything is left.
    ///
    /// A damaged text under the own key of a line is set aside, and the line takes its place.
    ///
    /// # Errors
    /// [`StoreError`]; what was not written is left for the next step.
    pub fn heal_step(&mut self, now: Moment) -> Result<bool, StoreError> {
        self.check_version()?;
        let mut written = 0;
        while written < LINES_A_STEP
            && let Some(oldest) = self.to_heal.lines.last()
        {
            let number = week(oldest.entry.at);
            let lines = &self.to_heal.lines;
            let is_later = |line: &Line| week(line.entry.at) != number;
            let rest = lines
                .iter()
                .rposition(is_later)
                .map_or(0, |place| place + 1);
            let lines = self.to_heal.lines.split_off(rest);
            let answer = self.heal_week(&lines, &monday(number), number < week(now));
            if answer.is_err() {
                self.to_heal.lines.extend(lines);
                answer?;
            } else {
                written += lines.len();
            }
        }
        Ok(self.is_to_heal())
    }

    fn heal_week(
        &mut self,
        lines: &[Line],
        monday: &str,
        is_finished: bool,
    ) -> Result<(), StoreError> {
        let lacking = lines.iter().filter(|line| !self.held.contains(&line.name));
        let is_for_itself = |line: &&Line| !is_finished || self.to_heal.taken.contains(&line.name);
        let (single, folded): (Vec<&Line>, Vec<&Line>) = lacking.partition(is_for_itself);
        for line in single {
            self.put(&format!("{ENTRY}{}", line.name.text()), &line.text)?;
            self.held.insert(line.name);
        }
        let texts: Vec<&str> = set_of(folded.iter().map(|line| line.text.as_str()))
            .into_iter()
            .collect();
        if !texts.is_empty() {
            let text = texts.join("\n");
            self.put(&format!("{SEGMENT}{}", week_name(monday, &text)), &text)?;
            self.held.extend(folded.iter().map(|line| line.name));
        }
        Ok(())
    }
}

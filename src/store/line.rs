//! One entry as one record line, the name under which a copy keeps it, and the way back.

use thiserror::Error;

use crate::checksum::crc32;
use crate::domain::journal::entries::{Entry, EntryId};
use crate::store::id_text::{id_from_text, id_to_text};
use crate::store::record::{
    Record, RecordError, checksum_from_text, checksum_text, decode, encode,
};
use crate::store::saved::{entry_from_text, entry_to_text};
use crate::store::saved_error::SavedError;

/// Why a line gives no entry.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum LineError {
    /// The line is damaged.
    #[error(transparent)]
    Record(#[from] RecordError),
    /// The line is whole, but its entry is not taken.
    #[error(transparent)]
    Saved(#[from] SavedError),
    /// What stands under a name is not what the name says; lines may be missing.
    #[error("the text under {name:?} belongs under {belongs:?}")]
    Name {
        /// The name found.
        name: String,
        /// The name that fits the text.
        belongs: String,
    },
}

impl LineError {
    /// The version of an entry that a later build of the app wrote.
    pub fn newer_version(&self) -> Option<i64> {
        if let Self::Saved(SavedError::Newer { version }) = self {
            Some(*version)
        } else {
            None
        }
    }
}

/// An entry's id with the checksum of its content: the same id with other content has another name, so
/// that neither overwrites the other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Name {
    /// The entry's id.
    pub id: EntryId,
    /// CRC-32 of what is kept under the name.
    pub checksum: u32,
}

impl Name {
    /// The name of an entry's own line.
    pub fn of(entry: &Entry) -> Self {
        Self {
            id: entry.id,
            checksum: crc32(entry_to_text(entry).as_bytes()),
        }
    }

    /// The name as it stands in keys: `<id>.<checksum>`.
    pub fn text(self) -> String {
        format!("{}.{}", id_to_text(self.id.0), checksum_text(self.checksum))
    }

    /// The name of such a text; `None` for any other.
    pub fn from_text(text: &str) -> Option<Self> {
        let (id, checksum) = text.split_once('.')?;
        Some(Self {
            id: EntryId(id_from_text(id)?),
            checksum: checksum_from_text(checksum)?,
        })
    }
}

/// An entry with its line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    /// Its name.
    pub name: Name,
    /// The record line.
    pub text: String,
    /// The entry.
    pub entry: Entry,
}

impl Line {
    /// The line of an entry, read back once to see that it says the same.
    ///
    /// # Errors
    /// [`LineError`] when the entry holds a value that the saved form does not take, as a text too long.
    pub fn of(entry: &Entry) -> Result<Self, LineError> {
        let line = Self::read(&encode(&entry_to_text(entry)))?;
        if line.entry == *entry {
            Ok(line)
        } else {
            Err(SavedError::NotTheSame.into())
        }
    }

    /// The entry of a line.
    ///
    /// # Errors
    /// [`LineError`] for a damaged line or an entry that is not taken.
    pub fn read(text: &str) -> Result<Self, LineError> {
        let (name, entry) = named_entry(decode(text)?)?;
        let text = text.to_owned();
        Ok(Self { name, text, entry })
    }
}

/// The entry of a record, with its name.
///
/// # Errors
/// [`LineError::Saved`] for an entry that is not taken.
pub fn named_entry(record: Record<'_>) -> Result<(Name, Entry), LineError> {
    let entry = entry_from_text(record.payload)?;
    let name = Name {
        id: entry.id,
        checksum: record.checksum,
    };
    Ok((name, entry))
}

/// Every line of a text, each for itself.
pub fn read_each(text: &str) -> impl Iterator<Item = Result<Line, LineError>> {
    text.lines().map(Line::read)
}

/// What was noted in one act, as one text with the name that fits it; `None` for no line.
///
/// One line has its own name. Several have the id of the first and the checksum of the whole text, so
/// that a text cut between two lines does not pass for a smaller act.
pub fn act_of(lines: &[Line]) -> Option<(Name, String)> {
    let mut name = lines.first()?.name;
    let texts: Vec<&str> = lines.iter().map(|line| line.text.as_str()).collect();
    let text = texts.join("\n");
    if texts.len() > 1 {
        name.checksum = crc32(text.as_bytes());
    }
    Some((name, text))
}

/// The lines of the act that stands under `name`: it counts whole or not at all.
///
/// # Errors
/// [`LineError`] of the first line that gives no entry, or [`LineError::Name`].
pub fn read_act(name: &str, text: &str) -> Result<Vec<Line>, LineError> {
    let lines = text
        .split('\n')
        .map(Line::read)
        .collect::<Result<Vec<_>, _>>()?;
    let belongs = act_of(&lines).map(|(name, _)| name.text());
    check_name(name, belongs.unwrap_or_default())?;
    Ok(lines)
}

/// The name of a finished week's text: `<its Monday>.<checksum>`.
pub fn week_name(monday: &str, text: &str) -> String {
    format!("{monday}.{}", checksum_text(crc32(text.as_bytes())))
}

/// Whether the text of a finished week is all that was written under `name`.
///
/// # Errors
/// [`LineError::Name`] when it is not.
pub fn check_week(name: &str, text: &str) -> Result<(), LineError> {
    let monday = name.split('.').next().unwrap_or_default();
    check_name(name, week_name(monday, text))
}

fn check_name(name: &str, belongs: String) -> Result<(), LineError> {
    if name == belongs {
        Ok(())
    } else {
        let name = name.to_owned();
        Err(LineError::Name { name, belongs })
    }
}

/// The entries that stand in a text in whole lines, whatever else stands there: for a rescue file, or
/// for the lines of a second copy.
pub fn entries_in(text: &str) -> Vec<Entry> {
    read_each(text)
        .filter_map(|line| line.ok().map(|line| line.entry))
        .collect()
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::ChickId;
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::{CarePlan, Slot};
    use crate::domain::plan::species::Species;
    use crate::domain::time::moment::{Day, Offset};
    use crate::store::line::*;

    /// Names are keys of what is kept: another rule for them would leave old acts unread.
    #[test]
    fn one_line_keeps_its_own_name_and_several_have_that_of_the_first_and_of_all() {
        let plan = CarePlan::default_for(Species::GreyParrot);
        let day = Day::from_date(2026, 11, 2).unwrap();
        let mut script = Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC);
        script.weigh(1, 400).feed(1, 7, 0, Slot::Morning, 30);
        let entries = script.journal().entries().to_vec();
        let lines: Vec<Line> = entries
            .iter()
            .map(|entry| Line::of(entry).unwrap())
            .collect();
        let (name, text) = act_of(&lines[..1]).unwrap();
        assert_eq!((name, &text), (Name::of(&entries[0]), &lines[0].text));
        let (name, text) = act_of(&lines).unwrap();
        let (id, checksum) = (entries[0].id, crc32(text.as_bytes()));
        assert_eq!(name, Name { id, checksum });
        assert_eq!(text.lines().count(), 3);
        assert_eq!(act_of(&[]), None);
    }
}

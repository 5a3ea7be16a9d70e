//! The saved form of entries: JSON with literal field names and literal words for every choice.
//!
//! **Invariants.** Nothing here follows from a Rust name, so renaming code never loses a season. The
//! same entry always gives the same text. Reading goes through the checked constructors of the domain:
//! a value out of range, an unknown word and an unknown field are errors, never a default.
//!
//! Quantities are whole tenths, marked by the unit and 10: `g10`, `ml10`, `c10`, `pct10`. Moments are
//! seconds since 1970-01-01T00:00:00Z, `tz` is minutes ahead of UTC, `late_s` how many seconds later it
//! was typed. A field that is empty, or 0 for `late_s`, or the same as taken for `of_ml10`, is left
//! out: names and values are short, as a browser gives little space and every entry has them.
//!
//! Written and read by hand over [`Json`] instead of derived: the text of the words stays in one table,
//! errors name the field, and the program stays small.

pub mod backup;
mod change;
mod fields;
mod plan;
mod tags;

use crate::domain::journal::entries::{ChickId, Entry, EntryId, check_change};
use crate::store::id_text::id_to_text;
use crate::store::json::{Bounds, Json};
use crate::store::migrate::to_current;
use crate::store::saved::change::{read_change, write_change};
use crate::store::saved::fields::{Fields, ObjectText, moment_at};
use crate::store::saved_error::{SavedError, VERSION};

/// How much a reader of foreign text takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// Most bytes of text.
    pub bytes: usize,
    /// Most entries.
    pub entries: usize,
}

impl Limits {
    /// For a file that a person chose. Ours: more than ten years of one household.
    pub const FILE: Self = Self {
        bytes: 32 << 20,
        entries: 100_000,
    };
    /// For a link or pasted text. Ours: three weeks of records many times over.
    pub const LINK: Self = Self {
        bytes: 64 << 10,
        entries: 2_000,
    };
}

/// Deepest nesting taken; list, entry, plan, feeds and one feed make six.
const MOST_LEVELS: usize = 8;
/// Most commas and brackets an entry may need; a full plan has about 90.
const MOST_MARKS_AN_ENTRY: usize = 160;

/// The text of an entry: one line, and the same line for the same entry.
pub fn entry_to_text(entry: &Entry) -> String {
    let mut object = ObjectText::new();
    object.number("v", VERSION);
    object.text("id", &id_to_text(entry.id.0));
    object.text("chick", &id_to_text(entry.chick.0));
    object.number("at", entry.at.seconds());
    let late_s = entry.noted_at.seconds() - entry.at.seconds();
    if late_s != 0 {
        object.number("late_s", late_s);
    }
    object.number("tz", i64::from(entry.offset.minutes()));
    if !entry.by.is_empty() {
        object.text("by", &entry.by);
    }
    write_change(&mut object, &entry.change);
    object.finish()
}

/// The entry of a text of any version known.
///
/// # Errors
/// [`SavedError`]; [`SavedError::Newer`] means that the text is sound but not for this build.
pub fn entry_from_text(text: &str) -> Result<Entry, SavedError> {
    entry_from_value(parse(text, Limits::LINK)?)
}

/// The text of many entries, for a backup or a link.
pub fn entries_to_text(entries: &[Entry]) -> String {
    let lines: Vec<String> = entries.iter().map(entry_to_text).collect();
    let mut object = ObjectText::new();
    object.number("v", VERSION);
    object.list("entries", &lines);
    object.finish()
}

/// The entries of a text, all or none.
///
/// The size is checked first, nesting and number of values while the text is read.
///
/// # Errors
/// [`SavedError`] for the first thing that is wrong.
pub fn entries_from_text(text: &str, limits: Limits) -> Result<Vec<Entry>, SavedError> {
    entries_of(fields_of_many(text, limits)?, limits)
}

/// The fields of a text of many entries, once its version is known to be one that is read here.
fn fields_of_many(text: &str, limits: Limits) -> Result<Fields<'_>, SavedError> {
    let value = parse(text, limits)?;
    let version = value.get("v").and_then(Json::whole);
    let version = version.filter(|version| *version >= 1);
    let version = version.ok_or(SavedError::NoVersion)?;
    if version > VERSION {
        return Err(SavedError::Newer { version });
    }
    let mut fields = Fields::new(value, "the whole text")?;
    fields.number("v")?;
    Ok(fields)
}

/// The entries, and nothing else left in the fields.
fn entries_of(mut fields: Fields<'_>, limits: Limits) -> Result<Vec<Entry>, SavedError> {
    let entries = fields.list("entries")?;
    fields.finish()?;
    if entries.len() > limits.entries {
        let limit = limits.entries;
        return Err(SavedError::TooMany { limit });
    }
    entries.into_iter().map(entry_from_value).collect()
}

fn entry_from_value(value: Json<'_>) -> Result<Entry, SavedError> {
    let mut fields = Fields::new(to_current(value)?, "the entry")?;
    fields.number("v")?;
    let id = EntryId(fields.id("id")?);
    let chick = ChickId(fields.id("chick")?);
    let at = fields.moment("at")?;
    let late_s = fields.optional("late_s", Fields::number)?.unwrap_or(0);
    let noted_at =
        moment_at(at.seconds().saturating_add(late_s)).ok_or(SavedError::OutOfRange {
            field: "late_s",
            value: late_s,
        })?;
    let offset = fields.offset("tz")?;
    let by = fields.optional("by", Fields::text)?.unwrap_or_default();
    let change = read_change(&mut fields)?;
    fields.finish()?;
    check_change(&change).map_err(SavedError::Refused)?;
    Ok(Entry {
        at,
        id,
        chick,
        noted_at,
        offset,
        by,
        change,
    })
}

fn parse(text: &str, limits: Limits) -> Result<Json<'_>, SavedError> {
    if text.len() > limits.bytes {
        let (bytes, limit) = (text.len(), limits.bytes);
        return Err(SavedError::TooLarge { bytes, limit });
    }
    let bounds = Bounds {
        levels: MOST_LEVELS,
        marks: limits.entries.saturating_mul(MOST_MARKS_AN_ENTRY),
        entries: limits.entries,
    };
    Json::read(text, bounds)
}

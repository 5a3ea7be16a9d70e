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

mod change;
mod fields;
mod plan;
mod tags;

use thiserror::Error;

use crate::domain::journal::entries::{ChickId, Entry, EntryId, Refusal, check_change};
use crate::store::json::{Bounds, Json};
use crate::store::migrate::{VERSION, to_current};
use crate::store::saved::change::{read_change, write_change};
use crate::store::saved::fields::{Fields, ObjectText, moment_at};

/// Why a saved text is not taken.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum SavedError {
    /// It is not JSON.
    #[error("the text is not JSON")]
    NotJson,
    /// It carries no version from 1 up.
    #[error("the text carries no version from 1 up")]
    NoVersion,
    /// A later build of the app wrote it.
    #[error("version {version} is newer than this build of the app, which knows {VERSION}")]
    Newer {
        /// The version found.
        version: i64,
    },
    /// A field is not there.
    #[error("field {field} is missing")]
    Missing {
        /// Its name.
        field: &'static str,
    },
    /// A field holds another kind of value than it should.
    #[error("field {field} holds another kind of value")]
    WrongKind {
        /// Its name.
        field: &'static str,
    },
    /// A field that this version does not have.
    #[error("field {field:?} is unknown")]
    UnknownField {
        /// Its name as found.
        field: String,
    },
    /// A word that this version does not have.
    #[error("field {field} holds the unknown word {tag:?}")]
    UnknownTag {
        /// The field's name.
        field: &'static str,
        /// The word as found.
        tag: String,
    },
    /// A number outside the range of its field.
    #[error("field {field} holds {value}, which is out of range")]
    OutOfRange {
        /// The field's name.
        field: &'static str,
        /// The number as found.
        value: i64,
    },
    /// A text that is no id, day or time, or is too long for its field.
    #[error("field {field} holds a text that does not fit it")]
    BadText {
        /// The field's name.
        field: &'static str,
    },
    /// Written and read back it says something else.
    #[error("the entry does not come back as it was written")]
    NotTheSame,
    /// The entry contradicts itself.
    #[error("the entry is refused: {0:?}")]
    Refused(Refusal),
    /// The text is larger than the caller takes.
    #[error("the text has {bytes} bytes, more than {limit}")]
    TooLarge {
        /// Bytes found.
        bytes: usize,
        /// Most bytes taken.
        limit: usize,
    },
    /// The text holds more entries or values than the caller takes.
    #[error("the text holds more than {limit} entries, or more values than they need")]
    TooMany {
        /// Most entries taken.
        limit: usize,
    },
    /// The text is nested deeper than any entry.
    #[error("the text is nested deeper than {limit} levels")]
    TooDeep {
        /// Most levels taken.
        limit: usize,
    },
}

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
    let value = parse(text, limits)?;
    let version = value.get("v").and_then(Json::whole);
    let version = version.filter(|version| *version >= 1);
    let version = version.ok_or(SavedError::NoVersion)?;
    if version > VERSION {
        return Err(SavedError::Newer { version });
    }
    let mut fields = Fields::new(value, "the whole text")?;
    fields.number("v")?;
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

/// The letters of base64url for 6 bits each. Source: RFC 4648, table 2.
const ALPHABET: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// The 6 bits of a letter of base64url: the table the other way round, by its runs.
fn sextet(letter: u8) -> Option<u32> {
    let number = match letter {
        b'A'..=b'Z' => letter - b'A',
        b'a'..=b'z' => letter - b'a' + 26,
        b'0'..=b'9' => letter - b'0' + 52,
        b'-' => 62,
        b'_' => 63,
        _ => return None,
    };
    Some(number.into())
}

/// An id as 16 characters of base64url (RFC 4648, section 5): 96 bits, 6 a character, no padding.
///
/// # Examples
/// ```
/// use perchlight::store::saved::{id_from_text, id_to_text};
/// // RFC 4648, section 10: "foobar" is "Zm9vYmFy".
/// assert_eq!(id_to_text(*b"foobarfoobar"), "Zm9vYmFyZm9vYmFy");
/// assert_eq!(id_from_text("Zm9vYmFyZm9vYmFy"), Some(*b"foobarfoobar"));
/// assert_eq!(id_from_text("Zm9vYmFyZm9vYmF"), None);
/// ```
pub fn id_to_text(id: [u8; 12]) -> String {
    let mut text = String::with_capacity(16);
    for three in id.chunks(3) {
        let bits = three
            .iter()
            .fold(0_u32, |bits, byte| (bits << 8) | u32::from(*byte));
        for place in [18, 12, 6, 0] {
            let letter = usize::try_from((bits >> place) & 63).unwrap_or_default();
            text.extend(ALPHABET.get(letter).map(|byte| char::from(*byte)));
        }
    }
    text
}

/// The id of 16 characters of base64url; `None` for any other text.
pub fn id_from_text(text: &str) -> Option<[u8; 12]> {
    if text.len() != 16 {
        return None;
    }
    let mut id = [0; 12];
    for (three, letters) in id.chunks_mut(3).zip(text.as_bytes().chunks(4)) {
        let mut bits = 0_u32;
        for letter in letters {
            bits = (bits << 6) | sextet(*letter)?;
        }
        let [_, bytes @ ..] = bits.to_be_bytes();
        three.copy_from_slice(&bytes);
    }
    Some(id)
}

//! Why a saved text is not taken, and the version of the saved form that this build writes.

use thiserror::Error;

use crate::domain::journal::entries::Refusal;

/// The version written today.
pub const VERSION: i64 = 1;

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

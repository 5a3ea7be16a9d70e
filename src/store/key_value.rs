//! Text under keys, as a browser keeps it, and the names of all keys.
//!
//! **Invariant.** The names are literal. A key made from a type's or module's name would change with
//! the build, and the journal under it would be gone.

use thiserror::Error;

/// Where everything of ours begins: a host may serve other pages from the same origin.
pub const ROOT: &str = "perchlight/v1/";
/// Before the name of one kept act: one entry, or several that hold only together.
pub const ENTRY: &str = "perchlight/v1/entry/";
/// Before the name of a finished week.
pub const SEGMENT: &str = "perchlight/v1/segment/";
/// Before the name of a text that could not be read and made room for a healed one.
pub const QUARANTINE: &str = "perchlight/v1/quarantine/";
/// Before the name of a value of this device.
pub const SETTING: &str = "perchlight/v1/setting/";
/// The day on which weeks were last folded.
pub const FOLDED_ON: &str = "perchlight/v1/folded-on";

/// Why a place did not do what was asked.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum KeyValueError {
    /// The person or the browser forbids this page to keep anything.
    #[error("the browser does not let this page keep anything")]
    Blocked,
    /// The place is full; the old value stays.
    #[error("the browser's space for this page is full")]
    Full,
    /// Anything else, by the name the browser gives it.
    #[error("the browser's storage answered: {0}")]
    Other(String),
}

/// A place that keeps text under keys.
pub trait KeyValue {
    /// The text under `key`; `None` when there is none.
    ///
    /// # Errors
    /// [`KeyValueError`] when the place cannot be read.
    fn get(&self, key: &str) -> Result<Option<String>, KeyValueError>;

    /// Puts `text` under `key`, in place of what was there.
    ///
    /// # Errors
    /// [`KeyValueError`] when nothing was written; the old value then stays.
    fn set(&self, key: &str, text: &str) -> Result<(), KeyValueError>;

    /// Takes `key` and its text away; no error when it was not there.
    ///
    /// # Errors
    /// [`KeyValueError`] when the place cannot be written.
    fn remove(&self, key: &str) -> Result<(), KeyValueError>;

    /// Every key that begins with `prefix`, in order of the alphabet.
    ///
    /// # Errors
    /// [`KeyValueError`] when the place cannot be read.
    fn keys(&self, prefix: &str) -> Result<Vec<String>, KeyValueError>;
}

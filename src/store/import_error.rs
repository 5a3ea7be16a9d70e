//! Why a text that somebody sent is not taken in.

use thiserror::Error;

/// Why a text is not taken. Nothing was changed.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum ImportError {
    /// Nothing of ours is in it.
    #[error("the text holds no card, report or backup")]
    NotOurs,
    /// A later build of the app wrote it.
    #[error("version {version} is newer than this build of the app")]
    Newer {
        /// The version found.
        version: u32,
    },
    /// It is whole, but something in it was altered.
    #[error("the text was altered on its way")]
    Damaged,
    /// Its end is missing.
    #[error("the text was cut off")]
    Truncated,
    /// It is larger than anything of ours.
    #[error("the text is larger than any card, report or backup")]
    TooLarge,
    /// It is ours, but of a kind that this build does not know, or its prefix and its content
    /// disagree.
    #[error("the text is of a kind that is not known here")]
    WrongKind,
}

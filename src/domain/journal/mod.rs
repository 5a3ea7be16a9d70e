//! The append-only set of entries, and one chick as a fold of them.
//!
//! **Never:** an entry is never edited or taken out; the order in which entries arrived never matters.
//!
//! **Left out:** judgement: what an entry means for the chick is asked further up.

pub mod carers;
pub mod chick;
pub mod demo;
pub mod entries;
pub mod incoming;
pub mod photo;
pub mod plan_record;
pub mod scenario;
pub mod signs;

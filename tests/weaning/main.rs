//! Weaning from outside: every criterion and trigger at its limit, the stages, and what must hold
//! for any journal.
//!
//! The limits are those of the trade's common practice, as the doc of each constant says.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::wildcard_enum_match_arm,
    reason = "a test may stop at the first surprise"
)]

mod criteria;
mod lives;
mod safety;
mod script;
mod stages;
mod triggers;
mod weights;
mod words;

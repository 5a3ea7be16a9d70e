//! May I feed now: what forbids it, and a feed step by step.
//!
//! **Never:** a feed is never offered while something forbids it.
//!
//! **Left out:** anything that happens between two feeds.

pub mod answer;
pub mod call_next;
pub mod feed_session;
pub mod first;
pub mod holds;
pub mod lifting;

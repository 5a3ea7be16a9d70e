//! Feeds due, which feed a note belongs to, the crop, and how much one feed may be.
//!
//! **Never:** a missed feed is never doubled; a gap the crop needs is never shortened.
//!
//! **Left out:** whether the chick may be fed at all: `instruction` answers that.

pub mod crop;
pub mod duplicate_feeds;
pub mod feed_meant;
pub mod feeding_streak;
pub mod schedule;
pub mod volume;

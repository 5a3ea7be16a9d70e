//! Feeds due, which feed a note belongs to, the crop, and how much one feed may be.
//!
//! **Never:** a missed feed is never doubled; a gap the crop needs is never shortened.
//!
//! **Left out:** whether the chick may be fed at all: `instruction` answers that.

pub mod counted;
pub mod crop;
pub mod day_food;
pub mod feeding_streak;
pub mod food;
pub mod lived_zone;
pub mod matching;
pub mod planned;
pub mod same_food;
pub mod schedule;
pub mod scheduled;
pub mod sittings;
pub mod volume;

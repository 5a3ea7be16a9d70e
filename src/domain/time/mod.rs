//! Moments, civil days, wall times and the table of offsets of the owner's zone.
//!
//! **Never:** no clock is read; a day, once lived, never moves.
//!
//! **Left out:** zones by name and calendars other than the civil one.

pub mod moment;
pub mod zone;

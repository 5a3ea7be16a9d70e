//! Numbers with units: weights, volumes, temperatures, shares, counts, and how well a number is founded.
//!
//! **Never:** a value outside its range, or a reading used as a change, never comes to exist.
//!
//! **Left out:** birds, time, and how a number is written for people.

pub mod count;
pub mod evidence;
pub mod order;
pub mod units;

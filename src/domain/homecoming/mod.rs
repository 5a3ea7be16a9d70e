//! The journey, what is due on the way, and the first days in the new home.
//!
//! **Never:** a chick on its way is never told to be late for a feed.
//!
//! **Left out:** how feeds of an ordinary day are due.

pub mod first_days;
pub mod journey;
pub mod transit;

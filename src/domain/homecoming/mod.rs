//! The journey, what is due on the way, the first days in the new home, and the stages of a life.
//!
//! **Never:** a chick on its way is never told to be late for a feed.
//!
//! **Left out:** how feeds of an ordinary day are due.

pub mod clutch;
pub mod departure;
pub mod first_days;
pub mod first_weeks;
pub mod journey;
pub mod life_stage;
pub mod placement;
pub mod reports;
pub mod since_report;
pub mod transit;
pub mod vet_visit;

//! Everything Perchlight knows about chicks: units, plans, feeds, weights, warnings.
//!
//! **Invariants.** No clock, no input or output, no serde, no words for users: the moment and the
//! zone are arguments, answers are numbers and named variants. Nothing here panics.

pub mod chick;
pub mod count;
pub mod crop;
pub mod evidence;
pub mod guards;
pub mod intake;
pub mod journal;
pub mod level;
pub mod moment;
pub mod outlook;
pub mod plan;
pub mod rules;
pub mod scenario;
pub mod schedule;
pub mod signs;
pub mod species;
pub mod units;
pub mod weight;
pub mod zone;

//! Everything Perchlight knows about chicks: units, plans, feeds, weights, warnings.
//!
//! **Invariants.** No clock, no input or output, no serde, no words for users: the moment and the
//! zone are arguments, answers are numbers and named variants. Nothing here panics.

pub mod chick;
pub mod count;
pub mod demo;
pub mod dynamics;
pub mod evidence;
pub mod growth_curve;
pub mod growth_fit;
pub mod growth_stand;
pub mod journal;
pub mod kalman;
pub mod kendall;
pub mod level;
pub mod line;
pub mod moment;
pub mod normal;
mod normal_equations;
pub mod outlook;
pub mod plan;
pub mod robust;
pub mod rules;
pub mod scenario;
pub mod schedule;
pub mod signs;
pub mod species;
pub mod student;
pub mod track;
pub mod units;
pub mod weight;
pub mod weight_crossing;
pub mod weight_filter;
pub mod weight_trend;
pub mod zone;

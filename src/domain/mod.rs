//! Everything Perchlight knows about chicks: units, plans, feeds, weights, warnings.
//!
//! **Invariants.** No clock, no input or output, no serde, no words for users: the moment and the
//! zone are arguments, answers are numbers and named variants. Nothing here panics.

pub mod count;
pub mod dynamics;
pub mod growth_curve;
pub mod growth_fit;
pub mod kalman;
pub mod kendall;
pub mod line;
pub mod normal;
mod normal_equations;
pub mod robust;
pub mod student;
pub mod track;

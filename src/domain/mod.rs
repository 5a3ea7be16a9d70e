//! Everything Perchlight knows about chicks: units, plans, feeds, weights, warnings.
//!
//! **Invariants.** No clock, no input or output, no serde, no words for users: the moment and the
//! zone are arguments, answers are numbers and named variants. Nothing here panics.

pub mod cooling;
pub mod cooling_fit;
pub mod count;
pub mod energy;
pub mod food_components;
pub mod heat_balance;
pub mod mixing;
pub mod nutrition;
pub mod powder;
pub mod serving_heat;
pub mod serving_window;
pub mod volume;
pub mod weighing_out;

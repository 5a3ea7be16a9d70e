//! Everything Perchlight knows about chicks: units, plans, feeds, weights, warnings.
//!
//! **Invariants.** No clock, no input or output, no serde, no words for users: the moment and the
//! zone are arguments, answers are numbers and named variants. Nothing here panics.

pub mod chick;
pub mod cooling;
pub mod cooling_fit;
pub mod count;
pub mod crop;
pub mod demo;
pub mod doubles;
pub mod dynamics;
pub mod energy;
pub mod evidence;
pub mod first_days;
pub mod food_components;
pub mod growth_curve;
pub mod growth_fit;
pub mod growth_stand;
pub mod guards;
pub mod guide;
pub mod heat_balance;
pub mod intake;
pub mod journal;
pub mod journey;
pub mod kalman;
pub mod kendall;
pub mod level;
pub mod line;
pub mod mixing;
pub mod moment;
pub mod normal;
mod normal_equations;
pub mod nutrition;
pub mod outlook;
pub mod plan;
pub mod powder;
pub mod robust;
pub mod rules;
pub mod scenario;
pub mod schedule;
pub mod serving_heat;
pub mod serving_window;
pub mod signs;
pub mod species;
pub mod stock;
pub mod student;
pub mod track;
pub mod transit;
pub mod units;
pub mod volume;
pub mod weaning;
pub mod weighing_out;
pub mod weight;
pub mod weight_crossing;
pub mod weight_filter;
pub mod weight_trend;
pub mod zone;

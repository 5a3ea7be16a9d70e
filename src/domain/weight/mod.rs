//! Readings, level and pace, peak and loss, when a limit is reached, and the growth curve.
//!
//! **Never:** a reading with food in the crop never passes for an empty weight; a loss is never told without its reference.
//!
//! **Left out:** which loss is worth a call: the rules say that.

pub mod course;
pub mod crossing;
pub mod doubt;
pub mod eaten;
pub mod fall;
pub mod growth_curve;
pub mod growth_stand;
pub mod healthy;
pub mod level;
pub mod loss;
pub mod mornings;
pub mod noise;
pub mod readings;
pub mod sittings;
pub mod trend;
pub mod typed;
pub mod weight_filter;

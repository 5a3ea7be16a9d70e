//! The ladder of levels, one rule a file, and what is doubtful in a plan.
//!
//! **Never:** a rule never answers *Settled* and never speaks in prose.
//!
//! **Left out:** what to do and say about a finding: `words` holds that.

pub mod asked;
pub mod call_weight;
pub mod crop_ladder;
pub mod level;
pub mod placed_state;
pub mod plan_checks;
pub mod rules;
pub mod second_weighing;
pub mod whom_to_call;

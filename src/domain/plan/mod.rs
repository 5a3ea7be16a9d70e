//! What the breeder hands over, its template and the species table.
//!
//! **Never:** a plan with a fault is never taken; a default never passes for a confirmed value; a set that
//! comes in late never rolls back what was written after it.
//!
//! **Left out:** what was done with the plan, and any judgement of it by the rules.

pub mod ask_first;
pub mod care_plan;
pub mod partial;
pub mod parts;
pub mod plan_line;
pub mod set_tree;
pub mod species;
pub mod template;
pub mod topic;
pub mod usual_times;

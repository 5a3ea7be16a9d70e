//! What the breeder hands over, its template and the species table.
//!
//! **Never:** a plan with a fault is never taken; a default never passes for a confirmed value.
//!
//! **Left out:** what was done with the plan, and any judgement of it by the rules.

pub mod care_plan;
pub mod plan_part;
pub mod species;
pub mod template;

//! Everything Perchlight knows about chicks, in rooms. A room knows nothing of those below it in this
//! list's reverse: `quantity` and `time` know only themselves, `outlook` knows all.
//!
//! **Invariants.** No clock, no input or output, no serde, no words for users: the moment and the
//! zone are arguments, answers are numbers and named variants. Nothing here panics.

pub mod feeding;
pub mod formula;
pub mod homecoming;
pub mod instruction;
pub mod journal;
pub mod outlook;
pub mod plan;
pub mod quantity;
pub mod statistics;
pub mod time;
pub mod warnings;
pub mod weaning;
pub mod weight;

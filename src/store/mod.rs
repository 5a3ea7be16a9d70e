//! Where the journal is kept, and what may never happen to it.

pub mod line;
pub mod migrate;
pub mod record;
pub mod saved;

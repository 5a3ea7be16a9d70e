//! Where the journal is kept, and what may never happen to it.

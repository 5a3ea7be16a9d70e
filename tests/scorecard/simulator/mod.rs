//! Made-up chicks: how they truly weigh, how their owner weighs them, and what each way of warning
//! makes of it. Parameters carry a source or say "assumed".

pub(crate) mod chances;
pub(crate) mod habit;
pub(crate) mod life;
pub(crate) mod limit;
pub(crate) mod paper;
pub(crate) mod score;
pub(crate) mod watch;

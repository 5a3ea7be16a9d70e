//! Normal chances, ramps, the level-and-slope filter and its smoother, medians and the Theil–Sen line.
//!
//! **Never:** no bird is named; "no data" is `None`, never zero or NaN.
//!
//! **Left out:** limits and verdicts: the rooms above decide what a number means.

pub mod change;
pub mod dynamics;
pub mod kalman;
pub mod normal;
pub mod robust;
pub mod smoother;

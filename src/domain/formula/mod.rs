//! Mixing, powder, energy and stock; how warm the mix is, and for how long.
//!
//! **Never:** never more than the plan's amount, never a mix outside the serving window called ready.
//!
//! **Left out:** medicine, doses and brands.

pub mod cooling;
pub mod day_energy;
pub mod energy;
pub mod food_components;
pub mod heat_balance;
pub mod mixing;
pub mod nutrition;
pub mod powder;
pub mod serving_heat;
pub mod serving_window;
pub mod stock;
pub mod weighing_out;

//! What leaves the phone and comes back: links, files, pictures, calendar and table.

pub mod chart_of;
pub mod weight_chart;

//! What leaves the phone and comes back: links, files, pictures, calendar and table.

pub mod weight_chart;

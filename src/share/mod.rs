//! What leaves the phone and comes back: links, files, pictures, calendar and table.

pub mod base64url;
pub mod chart_of;
pub mod csv;
pub mod digits;
pub mod icalendar;
pub mod markup;
pub mod percent;
pub mod phone;
pub mod qr;
pub mod varint;
pub mod weight_chart;

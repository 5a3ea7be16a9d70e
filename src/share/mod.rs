//! What leaves the phone and comes back: links, files, pictures, calendar and table.

pub mod base64url;
pub mod card;
pub mod chart_of;
mod code;
pub mod csv;
pub mod data_block;
pub mod digits;
mod entry_bytes;
mod envelope;
pub mod icalendar;
pub mod link;
pub mod markup;
pub mod percent;
pub mod phone;
pub mod placed;
mod plan_bytes;
pub mod plan_part;
pub mod qr;
pub mod take;
mod unpack;
pub mod varint;
pub mod weight_chart;

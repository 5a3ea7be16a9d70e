//! Perchlight carries out a breeder's handover card for a part-weaned, hand-fed parrot chick.
//!
//! Reading order: [`domain`] holds every rule and number and touches nothing outside itself;
//! [`store`] keeps the journal; [`share`] writes and reads what leaves the phone; `ui` (feature
//! `ui`) shows it.

#![cfg_attr(
    test,
    allow(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::panic,
        clippy::indexing_slicing,
        clippy::float_cmp,
        reason = "a test may stop at the first surprise"
    )
)]

pub mod checksum;
pub mod domain;
pub mod share;
pub mod store;
#[cfg(feature = "ui")]
pub mod ui;
pub mod words;

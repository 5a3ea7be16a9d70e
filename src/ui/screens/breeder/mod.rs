//! The screens of a breeder of many chicks: her list, one chick, the next card, her details, reports at once.

pub mod chick;
pub mod chicks;
pub mod details;
pub mod from_backup;
pub mod new_card;
pub mod reports;
pub mod row;

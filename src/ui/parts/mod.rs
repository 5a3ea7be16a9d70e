//! Pieces that several screens are made of.

pub mod advice_form;
pub mod arrival;
pub mod call_card;
pub mod card_drawing;
pub mod chart_card;
pub mod choice;
pub mod copy_button;
pub mod correct;
pub mod day_strip;
pub mod drawing;
pub mod field;
pub mod file_delivery;
pub mod file_field;
pub mod finding_card;
pub mod instruction_card;
pub mod lamp;
pub mod level_mark;
pub mod life;
pub mod other_chicks;
pub mod page;
pub mod plan_checks;
pub mod questions;
pub mod ruler;
pub mod shell;
pub mod to_do;
pub mod when;

//! The screens, one a file.

pub mod backup;
pub mod breeder;
pub mod card_received;
pub mod first_groups;
pub mod first_start;
pub mod first_weeks;
pub mod for_vet;
pub mod guide;
pub mod handover;
pub mod home;
pub mod import;
pub mod journal;
pub mod log_feed;
pub mod now;
pub mod observation;
pub mod plan_form;
pub mod settings;
pub mod sources;
pub mod two_carers;
pub mod weaning;
pub mod weigh;
pub mod weigh_result;
pub mod weight;
pub mod weight_picture;
pub mod wrong;

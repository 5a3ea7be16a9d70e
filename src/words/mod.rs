//! Every word a person reads, in each language, and how numbers and dates are written.
//!
//! **Invariants.** Words are data: no rule and no limit lives here. Each file holds one screen's or one
//! topic's words as a struct with a constant for each language, so that a missing text does not
//! compile. Screens and exports hold no words of their own.

/// Texts of one screen: each is a method of [`Language`] with its English and its Spanish.
macro_rules! texts {
    ($($name:ident: $english:literal, $spanish:literal;)*) => {
        impl crate::words::Language {
            $(
                #[doc = concat!("\"", $english, "\"")]
                pub const fn $name(self) -> &'static str {
                    self.pick($english, $spanish)
                }
            )*
        }
    };
}

pub mod advice;
pub mod breeder;
pub mod call;
pub mod card;
pub mod carers;
pub mod clinical;
pub mod demo;
pub mod droppings;
pub mod entries;
pub mod exchange;
pub mod faults;
pub mod first_start;
pub mod first_weeks;
pub mod format;
pub mod growth;
pub mod guide;
pub mod home;
pub mod instruction;
pub mod journal;
pub mod journey;
pub mod life;
pub mod manual;
pub mod mixing;
pub mod names;
pub mod now;
pub mod photos;
pub mod plan_change;
pub mod plan_checks;
pub mod report;
pub mod rules;
pub mod screens;
pub mod sentences;
pub mod signs;
pub mod since_report;
pub mod sources;
pub mod terms;
pub mod vet_visit;
pub mod weaning;
pub mod weigh;
pub mod weight;

/// A language of the app.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Language {
    /// English.
    English,
    /// Spanish.
    Spanish,
}

impl Language {
    /// Every language.
    pub const ALL: [Self; 2] = [Self::English, Self::Spanish];

    /// The language of a BCP 47 tag such as `es-MX`; English for any other.
    pub fn from_tag(tag: &str) -> Self {
        let primary = tag.split(['-', '_']).next().unwrap_or_default();
        if primary.eq_ignore_ascii_case("es") {
            Self::Spanish
        } else {
            Self::English
        }
    }

    /// Its BCP 47 tag.
    pub const fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::Spanish => "es",
        }
    }

    /// One of two texts, by language.
    pub const fn pick(self, english: &'static str, spanish: &'static str) -> &'static str {
        match self {
            Self::English => english,
            Self::Spanish => spanish,
        }
    }
}

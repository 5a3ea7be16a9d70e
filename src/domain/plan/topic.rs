//! What a breeder says of a chick in her own words, topic by topic.

use std::collections::BTreeMap;

/// What something is said about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Topic {
    /// Cock or hen, and how that is known.
    Sex,
    /// Whether it flies, or how it was clipped.
    Wings,
    /// Tests made, certificates, hatch certificate.
    Papers,
    /// How it takes food: eager or slow, from which side, in how many draws.
    TakesFood,
    /// How round its crop gets after a full feed.
    RoundCrop,
    /// What the breeder wants done after one refusal.
    AfterRefusal,
    /// The powder by its name.
    PowderName,
    /// The recipe as the breeder says it, by volume or by weight.
    Recipe,
    /// How it sleeps: light, cover, company.
    Night,
    /// Whether and how it bathes.
    Bath,
}

impl Topic {
    /// Every topic, in the order in which a card is read.
    pub const ALL: [Self; 10] = [
        Self::Sex,
        Self::Wings,
        Self::Papers,
        Self::TakesFood,
        Self::RoundCrop,
        Self::AfterRefusal,
        Self::PowderName,
        Self::Recipe,
        Self::Night,
        Self::Bath,
    ];

    /// Whether it tells of one bird only, and is left out of the card of the next one.
    pub const fn is_of_chick(self) -> bool {
        match self {
            Self::Sex | Self::Wings | Self::Papers | Self::TakesFood | Self::RoundCrop => true,
            Self::AfterRefusal | Self::PowderName | Self::Recipe | Self::Night | Self::Bath => {
                false
            }
        }
    }
}

/// What is said about topics; nothing but spaces says nothing.
pub fn said_of(texts: impl IntoIterator<Item = (Topic, String)>) -> BTreeMap<Topic, String> {
    let mut said = BTreeMap::new();
    for (topic, text) in texts {
        if !text.trim().is_empty() {
            said.insert(topic, text);
        }
    }
    said
}

//! Names as people typed them: two chicks of one name told apart, and text that runs the other way kept from
//! turning what stands around it.

use crate::domain::plan::species::Species;
use crate::domain::time::moment::Day;
use crate::words::Language;
use crate::words::format::Writing;

/// What tells a chick apart from others of its name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Named {
    /// Its name; may be empty.
    pub name: String,
    /// Its ring or chip number; may be empty.
    pub ring: String,
    /// Its species.
    pub species: Species,
    /// Who has it; may be empty.
    pub owner: String,
    /// Its hatch day, when known.
    pub hatched: Option<Day>,
}

impl Named {
    /// Whether two names read the same: letters large or small, and spaces around them, tell nothing apart.
    fn is_namesake(&self, other: &Self) -> bool {
        let plain = |name: &str| harmless(name).trim().to_lowercase();
        plain(&self.name) == plain(&other.name)
    }
}

impl Writing {
    /// What is said beside the name of a chick because `others` have the same one: its ring, species, owner or hatch
    /// day, the first that tells it from all of them, else all that is known. Empty when it alone has its name.
    pub fn beside_name<'a>(self, one: &Named, others: impl Iterator<Item = &'a Named>) -> String {
        let namesakes: Vec<&Named> = others.filter(|other| one.is_namesake(other)).collect();
        if namesakes.is_empty() {
            return String::new();
        }
        let facts = |named: &Named| {
            let hatched = named.hatched.map(|day| self.hatched_on(day));
            [
                harmless(&named.ring),
                self.language.species(named.species).to_owned(),
                harmless(&named.owner),
                hatched.unwrap_or_default(),
            ]
        };
        let others: Vec<[String; 4]> = namesakes.into_iter().map(facts).collect();
        let own: Vec<String> = facts(one).into();
        let mut telling = own.iter().enumerate().filter(|(place, fact)| {
            let is_other = |other: &[String; 4]| other.get(*place) != Some(*fact);
            !fact.trim().is_empty() && others.iter().all(is_other)
        });
        let telling = telling.next().map(|(_, fact)| fact.clone());
        telling.unwrap_or_else(|| {
            let known = own.into_iter().filter(|fact| !fact.trim().is_empty());
            known.collect::<Vec<_>>().join(", ")
        })
    }

    /// "hatched 24 Aug".
    pub fn hatched_on(self, day: Day) -> String {
        let day = self.day_and_month(day);
        match self.language {
            Language::English => format!("hatched {day}"),
            Language::Spanish => format!("nacido el {day}"),
        }
    }
}

/// Whether a character turns the text after it around.
///
/// Source: Unicode Standard Annex 9, section 2: embeddings, overrides and isolates.
const fn turns_text(character: char) -> bool {
    matches!(character, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// A typed text whose characters that turn text around are shown as U+FFFD.
///
/// # Examples
/// ```
/// assert_eq!(perchlight::words::names::harmless("Re\u{202e}x"), "Re\u{fffd}x");
/// ```
pub fn harmless(text: &str) -> String {
    let shown = |character| {
        if turns_text(character) {
            char::REPLACEMENT_CHARACTER
        } else {
            character
        }
    };
    text.chars().map(shown).collect()
}

/// The same of a text in which [`isolated`] ones may stand already: their isolates stay.
pub fn unturned(text: &str) -> String {
    let shown = |character| match character {
        '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2067}' => char::REPLACEMENT_CHARACTER,
        _ => character,
    };
    text.chars().map(shown).collect()
}

/// A typed text to stand within a sentence that no markup can hold: harmless, and between isolates where it has
/// letters outside the Latin script's blocks.
///
/// Source: Unicode Standard Annex 9, section 2.7: first strong isolate, U+2068, to its end, U+2069.
pub fn isolated(text: &str) -> String {
    let text = harmless(text);
    // Every right-to-left script begins at U+0590.
    if text
        .chars()
        .any(|letter| '\u{590}' <= letter && letter.is_alphabetic())
    {
        format!("\u{2068}{text}\u{2069}")
    } else {
        text
    }
}

#[cfg(test)]
mod tests {
    use crate::words::names::*;

    fn chick(name: &str, ring: &str, species: Species, owner: &str, hatched: Option<i32>) -> Named {
        Named {
            name: name.to_owned(),
            ring: ring.to_owned(),
            species,
            owner: owner.to_owned(),
            hatched: hatched.map(Day::from_number),
        }
    }

    fn beside(one: &Named, others: &[Named]) -> String {
        Writing::metric(Language::English).beside_name(one, others.iter())
    }

    #[test]
    fn who_alone_has_a_name_is_told_by_it() {
        let ruby = chick("Ruby", "GB 1", Species::ScarletMacaw, "", None);
        assert_eq!(
            beside(
                &ruby,
                &[chick("Rubin", "GB 2", Species::ScarletMacaw, "", None)]
            ),
            ""
        );
    }

    #[test]
    fn namesakes_are_told_apart_by_the_first_thing_that_differs() {
        let macaw = Species::ScarletMacaw;
        let ringed = chick("Ruby", "GB 1", macaw, "Mira", Some(20_000));
        assert_eq!(
            beside(
                &ringed,
                &[chick(" ruby", "GB 2", macaw, "Mira", Some(20_000))]
            ),
            "GB 1"
        );
        let same_ring = chick("Ruby", "GB 1", Species::Cockatiel, "Mira", Some(20_000));
        assert_eq!(beside(&ringed, &[same_ring]), "Scarlet macaw");
        let other_owner = chick("RUBY", "GB 1", macaw, "Tom", Some(20_000));
        assert_eq!(beside(&ringed, &[other_owner]), "Mira");
        // Day 20,000 since 1970 is 2024-10-04: 54 years have 19,723 days, and 2024-01-01 + 277 days is 4 October.
        let other_day = chick("Ruby", "GB 1", macaw, "Mira", Some(20_001));
        assert_eq!(beside(&ringed, &[other_day]), "hatched 4 Oct");
        // Nothing tells them apart: everything known is said.
        let twin = ringed.clone();
        assert_eq!(
            beside(&ringed, &[twin]),
            "GB 1, Scarlet macaw, Mira, hatched 4 Oct"
        );
        // Of three, what one of the others shares tells nothing.
        let others = [
            chick("Ruby", "GB 1", macaw, "Tom", None),
            chick("Ruby", "", Species::Cockatiel, "Lea", None),
        ];
        assert_eq!(beside(&ringed, &others), "Mira");
    }

    #[test]
    fn what_turns_text_around_is_shown_and_never_obeyed() {
        for code in (0x202a_u32..=0x202e).chain(0x2066..=0x2069) {
            let character = char::from_u32(code).unwrap();
            assert_eq!(harmless(&format!("a{character}b")), "a\u{fffd}b");
        }
        // Isolates of ours stay in a text that is whole; what overrides never does.
        assert_eq!(
            unturned("\u{2068}a\u{2069}\u{202e}b\u{2067}"),
            "\u{2068}a\u{2069}\u{fffd}b\u{fffd}"
        );
        for around in ['\u{2029}', '\u{202f}', '\u{2065}', '\u{206a}', '\u{200f}'] {
            assert_eq!(harmless(&around.to_string()), around.to_string());
        }
    }

    #[test]
    fn a_name_of_another_script_stands_between_isolates_and_a_latin_one_does_not() {
        assert_eq!(isolated("Ember É"), "Ember É");
        assert_eq!(isolated("\u{5e8}\u{5d5}"), "\u{2068}\u{5e8}\u{5d5}\u{2069}");
        assert_eq!(isolated("\u{202e}Ember"), "\u{fffd}Ember");
    }
}

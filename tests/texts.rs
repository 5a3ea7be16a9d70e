//! Every text has its other language, calls are never rings, and the Spanish keeps to its terms.

#![allow(
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test may stop at the first surprise"
)]

#[path = "texts/found.rs"]
mod found;
#[path = "texts/page.rs"]
mod page;

use perchlight::words::Language;
use perchlight::words::format::Writing;
use perchlight::words::manual::EACH_RULE;

use crate::found::{Found, all_texts};

/// Words that sound like the telephone or the leg, and others that say nothing to a first-time owner.
const NOT_ENGLISH: [&str; 9] = [
    "ring the",
    "ring a",
    "ring an",
    "ring your",
    "ringing",
    "rang",
    "rung",
    "ours",
    "taken in",
];

/// Words that mean meat, toilet, bank, stove or pigeon somewhere, that are a breeder's jargon, or that only
/// one side of the sea says.
const NOT_SPANISH: [&str; 29] = [
    "pollo",
    "pollos",
    "taza",
    "tazas",
    "excremento",
    "excrementos",
    "tarjeta",
    "tarjetas",
    "salga",
    "narinas",
    "cabecea",
    "cabeceo",
    "balanza",
    "estufa",
    "sala",
    "manoseo",
    "lecho",
    "tiritando",
    "acalorado",
    "embolado",
    "chasquea",
    "silba",
    "devolvió",
    "jeringuilla",
    "nuestro",
    "nuestra",
    "usted sigue",
    "incorpore",
    "registros",
];

/// The words of a text in lower case, with a blank before and after each; braces stay.
fn plain(text: &str) -> String {
    let parts = text.split(|letter: char| !letter.is_alphanumeric() && letter != '{');
    let parts: Vec<String> = parts
        .filter(|part| !part.is_empty())
        .map(str::to_lowercase)
        .collect();
    format!(" {} ", parts.join(" "))
}

fn place(text: &Found) -> String {
    format!("src/words/{}:{} {}", text.file, text.line, text.name)
}

#[test]
fn every_text_has_its_other_language() {
    let found = all_texts().unwrap();
    // The files hold far more; a reader that lost its way would find few.
    assert!(found.len() > 900, "{}", found.len());
    for text in &found {
        // The English of a source is the rule's own line; the page of rules has both.
        let is_source = text.file == "sources.rs" && text.name == "source";
        assert!(
            is_source || !text.english.is_empty(),
            "no English: {}",
            place(text)
        );
        assert!(!text.spanish.is_empty(), "no Spanish: {}", place(text));
    }
}

#[test]
fn the_page_holds_every_text_of_both_languages() {
    let found = all_texts().unwrap();
    let page = page::page(&found);
    for text in &found {
        for line in text.english.iter().chain(&text.spanish) {
            assert!(page.contains(&page::escaped(line)), "{}", place(text));
        }
    }
}

#[test]
fn english_calls_and_does_not_ring() {
    for text in all_texts().unwrap() {
        for line in &text.english {
            let line = plain(line);
            for not in NOT_ENGLISH {
                assert!(
                    !line.contains(&format!(" {not} ")),
                    "{not}: {}: {line}",
                    place(&text)
                );
            }
        }
    }
}

#[test]
fn spanish_keeps_to_its_terms() {
    for text in all_texts().unwrap() {
        for line in &text.spanish {
            let line = plain(line);
            for not in NOT_SPANISH {
                assert!(
                    !line.contains(&format!(" {not} ")),
                    "{not}: {}: {line}",
                    place(&text)
                );
            }
        }
    }
}

/// "en dos horas" can mean within two hours; after two hours is "dentro de dos horas".
#[test]
fn spanish_after_is_dentro_de() {
    for text in all_texts().unwrap() {
        for line in &text.spanish {
            let line = plain(line);
            for after in [
                "mire otra vez en",
                "mire el buche en",
                "mida otra vez en media",
                "mida otra vez en unos",
            ] {
                assert!(!line.contains(after), "{}: {line}", place(&text));
            }
            assert!(!line.contains("a las {"), "{}: {line}", place(&text));
        }
    }
}

#[test]
fn each_rule_has_its_texts_source_and_standing_in_both_languages() {
    for language in Language::ALL {
        let parts = Writing::metric(language).manual();
        let (_, rows) = parts.first().unwrap();
        assert_eq!(rows.len(), EACH_RULE.len());
        for row in rows {
            let standing = row.standing.split_once(": ");
            let (standing, source) = standing.unwrap_or_else(|| panic!("{}", row.id));
            for text in [row.name, &row.sentence, row.wrong_when, standing, source] {
                assert!(
                    text.chars().filter(|letter| letter.is_alphabetic()).count() > 3,
                    "{}: {text}",
                    row.id
                );
            }
        }
    }
}

//! Nouns after numbers, in both languages, against the plural rules of Unicode CLDR.
//!
//! CLDR 44, Language Plural Rules, cardinal: English `one` is `i = 1 and v = 0`, Spanish `one` is
//! `n = 1`; every other whole number is `other` (Spanish `many` begins at a million). So 0 takes the
//! plural in both, and 21 and 101 do too, unlike in some other languages.

#![allow(
    clippy::indexing_slicing,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test may stop at the first surprise"
)]

use perchlight::domain::time::moment::{Age, Day};
use perchlight::words::Language;
use perchlight::words::format::Writing;

const COUNTS: [i32; 7] = [0, 1, 2, 5, 21, 60, 101];

/// Whether CLDR puts a whole number of this size into the category `one`.
fn is_one(count: i32) -> bool {
    count == 1
}

/// A sentence with a count, and the noun that follows it: English one and other, Spanish one and other.
struct Counted {
    text: fn(Writing, i32) -> String,
    nouns: [&'static str; 4],
    from: i32,
}

fn size(count: i32) -> usize {
    usize::try_from(count).unwrap()
}

const SENTENCES: [Counted; 9] = [
    Counted {
        text: |writing, count| writing.days(count),
        nouns: ["day", "days", "día", "días"],
        from: 0,
    },
    Counted {
        // Whole weeks, so that no days follow.
        text: |writing, count| {
            let hatched = Day::from_date(2020, 1, 1).unwrap();
            writing.age(Age::on(hatched.plus(count * 7), hatched).unwrap())
        },
        nouns: ["week", "weeks", "semana", "semanas"],
        from: 1,
    },
    Counted {
        text: |writing, count| writing.draws(&vec![300; size(count)]),
        nouns: ["syringeful", "syringefuls", "jeringa", "jeringas"],
        from: 0,
    },
    Counted {
        text: |writing, count| writing.feeds_left(size(count)),
        nouns: ["feed", "feeds", "toma", "tomas"],
        from: 0,
    },
    Counted {
        text: |writing, count| writing.backup_preview(size(count), 0),
        nouns: ["entry", "entries", "anotación", "anotaciones"],
        from: 0,
    },
    Counted {
        text: |writing, count| writing.backup_preview(size(count), size(count)),
        nouns: ["entry", "entries", "anotación", "anotaciones"],
        from: 1,
    },
    Counted {
        text: |writing, count| writing.backup_checked(size(count), 0, 0, true),
        nouns: ["entry", "entries", "anotación", "anotaciones"],
        from: 0,
    },
    Counted {
        text: |writing, count| writing.backup_checked(300, size(count), 0, false),
        nouns: ["entry", "entries", "anotación", "anotaciones"],
        from: 1,
    },
    Counted {
        text: |writing, count| writing.quiet_days(Some(i64::from(count))),
        nouns: ["day", "days", "día", "días"],
        from: 1,
    },
];

fn words(text: &str) -> Vec<String> {
    let parts = text.split(|letter: char| !letter.is_alphanumeric());
    parts
        .filter(|part| !part.is_empty())
        .map(str::to_owned)
        .collect()
}

#[test]
fn a_noun_after_a_number_has_the_form_that_cldr_asks_for() {
    for sentence in SENTENCES {
        let (english, spanish) = sentence.nouns.split_at(2);
        for count in COUNTS.into_iter().filter(|count| sentence.from <= *count) {
            for (language, nouns) in [(Language::English, english), (Language::Spanish, spanish)] {
                let text = (sentence.text)(Writing::metric(language), count);
                let wanted = nouns[usize::from(!is_one(count))];
                let pair = [count.to_string(), wanted.to_owned()];
                let found = words(&text).windows(2).any(|two| two == pair);
                assert!(found, "{count} {wanted} in {text:?}");
            }
        }
    }
}

#[test]
fn a_verb_and_a_pronoun_follow_the_number_too() {
    let english = Writing::metric(Language::English);
    assert_eq!(
        english.backup_preview(1, 1),
        "It holds 1 entry; new here: 1."
    );
    assert_eq!(
        english.backup_preview(1, 0),
        "It holds 1 entry. It is here already."
    );
    let one = english.backup_checked(300, 1, 0, false);
    assert!(one.contains("1 entry of this phone is missing"), "{one}");
    let two = english.backup_checked(300, 2, 0, false);
    assert!(two.contains("2 entries of this phone are missing"), "{two}");
    let spanish = Writing::metric(Language::Spanish);
    let one = spanish.backup_checked(300, 1, 0, false);
    assert!(one.contains("le falta 1 anotación"), "{one}");
    let two = spanish.backup_checked(300, 2, 0, false);
    assert!(two.contains("le faltan 2 anotaciones"), "{two}");
}

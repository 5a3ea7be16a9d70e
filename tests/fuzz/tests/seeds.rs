//! Every seed, and seeds that were damaged at random, through the functions that the fuzzer calls.
//! The fuzzer itself searches longer and by what the program does with them: `make fuzz`.

use std::collections::BTreeSet;

use perchlight_fuzz::seeds::{Seed, seeds};
use perchlight_fuzz::{file_text, link_text, pasted_text, record_line};
use proptest::collection::vec;
use proptest::prelude::{ProptestConfig, Strategy, any, prop_oneof};
use proptest::proptest;
use proptest::sample::{Index, select};

/// Characters that open, close and part in the forms that are read.
const SIGNS: [&str; 14] = [
    "{",
    "}",
    "[",
    "]",
    "\"",
    ",",
    ":",
    "|",
    "\n",
    ".",
    "<",
    "\\",
    "-",
    "99999999999999999999",
];

fn feed(target: &str, bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    match target {
        "link_text" => link_text(bytes),
        "file_text" => file_text(&text),
        "pasted_text" => pasted_text(&text),
        "record_line" => record_line(&text),
        unknown => panic!("no target is called {unknown}"),
    }
}

/// One change of a text.
#[derive(Clone, Debug)]
enum Damage {
    Byte(Index, u8),
    Sign(Index, &'static str),
    Cut(Index),
    Gone(Index, usize),
    Twice(Index, usize),
}

fn damage() -> impl Strategy<Value = Damage> {
    prop_oneof![
        (any::<Index>(), any::<u8>()).prop_map(|(place, byte)| Damage::Byte(place, byte)),
        (any::<Index>(), select(&SIGNS)).prop_map(|(place, sign)| Damage::Sign(place, sign)),
        any::<Index>().prop_map(Damage::Cut),
        (any::<Index>(), 1..40_usize).prop_map(|(place, length)| Damage::Gone(place, length)),
        (any::<Index>(), 1..40_usize).prop_map(|(place, length)| Damage::Twice(place, length)),
    ]
}

fn damaged(mut bytes: Vec<u8>, damages: &[Damage]) -> Vec<u8> {
    for damage in damages {
        let size = bytes.len();
        if size == 0 {
            break;
        }
        let end = |at: usize, length: usize| size.min(at + length);
        match damage {
            Damage::Byte(place, byte) => bytes[place.index(size)] = *byte,
            Damage::Sign(place, sign) => {
                let at = place.index(size);
                bytes.splice(at..at, sign.bytes());
            }
            Damage::Cut(place) => bytes.truncate(place.index(size)),
            Damage::Gone(place, length) => {
                let at = place.index(size);
                bytes.drain(at..end(at, *length));
            }
            Damage::Twice(place, length) => {
                let at = place.index(size);
                let part = bytes[at..end(at, *length)].to_vec();
                bytes.splice(at..at, part);
            }
        }
    }
    bytes
}

fn of_target(target: &str) -> Vec<Seed> {
    seeds()
        .into_iter()
        .filter(|seed| seed.target == target)
        .collect()
}

#[test]
fn every_target_has_seeds_and_stands_them() {
    let targets: BTreeSet<&str> = seeds().iter().map(|seed| seed.target).collect();
    assert_eq!(
        targets,
        BTreeSet::from(["file_text", "link_text", "pasted_text", "record_line"])
    );
    for seed in seeds() {
        feed(seed.target, &seed.bytes);
    }
}

fn stands_damage(target: &'static str, cases: u32) {
    let strategy = (select(of_target(target)), vec(damage(), 1..5));
    proptest!(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(cases) }, |((seed, damages) in strategy)| {
        feed(target, &damaged(seed.bytes, &damages));
    });
}

#[test]
fn damaged_links_are_read_or_refused() {
    stands_damage("link_text", 1000);
}

#[test]
fn damaged_files_are_read_or_refused() {
    stands_damage("file_text", 1000);
}

#[test]
fn damaged_pasted_texts_are_read_or_refused() {
    stands_damage("pasted_text", 1000);
}

#[test]
fn damaged_record_lines_are_read_or_refused() {
    stands_damage("record_line", 4000);
}

//! How good are the warnings? `make scorecard`, or with the table put into the developers' page:
//! `cargo bench --no-default-features --bench scorecard -- --write`.

#![allow(
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a table for people; it may stop at the first surprise"
)]

mod curve;
mod simulator;
mod table;

use std::sync::Mutex;

use crate::simulator::score::{Chicks, HEALTHY, ILL, Kind, chicks};

/// The limits were chosen on the chicks of seed 1 alone (300 a kind); these are others.
const SEED: u64 = 20_261_125;

/// The seed that the limits were chosen on: `-- --tune 300`.
const TUNING_SEED: u64 = 1;

/// Made-up chicks of each kind.
const CHICKS: u32 = 2_000;

/// The page that holds the table, between its marks.
const PAGE: &str = "DEVELOPERS.md";
/// The picture of other odds.
const PICTURE: &str = ".build/readme/judging.svg";
const START: &str = "<!-- scorecard -->";
const END: &str = "<!-- /scorecard -->";

/// Every kind, two at a time.
fn watched(kinds: &[Kind], seed: u64, count: u32) -> Vec<Chicks> {
    let next = Mutex::new(kinds.iter().enumerate());
    let done = Mutex::new(Vec::new());
    let work = || {
        loop {
            let kind = next.lock().expect("no thread stops").next();
            let Some((place, kind)) = kind else { break };
            let chicks = chicks(*kind, seed, count, true);
            done.lock().expect("no thread stops").push((place, chicks));
        }
    };
    std::thread::scope(|scope| {
        scope.spawn(work);
        work();
    });
    let mut done = done.into_inner().expect("no thread stops");
    done.sort_by_key(|(place, _)| *place);
    done.into_iter().map(|(_, chicks)| chicks).collect()
}

fn main() {
    let arguments: Vec<String> = std::env::args().collect();
    let after = |name: &str| {
        let place = arguments.iter().position(|argument| argument == name)?;
        arguments.get(place + 1)?.parse().ok()
    };
    let (seed, count) = after("--tune").map_or((SEED, CHICKS), |count| (TUNING_SEED, count));
    let kinds: Vec<Kind> = HEALTHY
        .into_iter()
        .chain(ILL.map(|(kind, _)| kind))
        .collect();
    let mut watched = watched(&kinds, seed, count);
    let ill = watched.split_off(HEALTHY.len());
    let healthy: Vec<_> = HEALTHY.into_iter().zip(watched).collect();
    let ill: Vec<_> = ILL.into_iter().zip(ill).collect();
    let text = table::markdown(&healthy, &ill, seed, count);
    println!("{text}");
    let not_fat: Vec<&Chicks> = healthy
        .iter()
        .rev()
        .skip(1)
        .map(|(_, chicks)| chicks)
        .collect();
    let of_ill: Vec<_> = ill
        .iter()
        .map(|((kind, _), chicks)| (*kind, chicks))
        .collect();
    let picture = curve::svg(&not_fat, &of_ill);
    if arguments.iter().any(|argument| argument == "--write") {
        println!("{}", written(&text));
        let path = format!("{}/{PICTURE}", env!("CARGO_MANIFEST_DIR"));
        match std::fs::write(&path, picture) {
            Ok(()) => println!("{PICTURE} holds this curve now"),
            Err(error) => println!("{PICTURE} could not be written: {error}"),
        }
    }
}

/// Puts the text between the marks of the page, and says what came of it.
fn written(text: &str) -> String {
    let path = format!("{}/{PAGE}", env!("CARGO_MANIFEST_DIR"));
    let Ok(page) = std::fs::read_to_string(&path) else {
        return format!("{PAGE} is not there: nothing written");
    };
    let parts = page.split_once(START).and_then(|(before, rest)| {
        let (_, after) = rest.split_once(END)?;
        Some((before, after))
    });
    let Some((before, after)) = parts else {
        return format!("{PAGE} has no marks {START} and {END}: nothing written");
    };
    let page = format!("{before}{START}\n{text}{END}{after}");
    match std::fs::write(&path, page) {
        Ok(()) => format!("{PAGE} holds this table now"),
        Err(error) => format!("{PAGE} could not be written: {error}"),
    }
}

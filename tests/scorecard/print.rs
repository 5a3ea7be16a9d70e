//! How good are the warnings? `make scorecard`, or with the table put into the developers' page:
//! `cargo bench --no-default-features --bench scorecard -- --write`.

#![allow(
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a table for people; it may stop at the first surprise"
)]

mod simulator;
mod table;

use crate::simulator::score::{HEALTHY, ILL, Kind, Score, score};

/// The limits were chosen on the chicks of seed 1 alone (300 a kind); these are others.
const SEED: u64 = 20_261_125;

/// Made-up chicks of each kind.
const CHICKS: u32 = 2_000;

/// The page that holds the table, between its marks.
const PAGE: &str = "DEVELOPERS.md";
const START: &str = "<!-- scorecard -->";
const END: &str = "<!-- /scorecard -->";

fn scores(kinds: &'static [Kind]) -> Vec<(Kind, [Score; 3])> {
    kinds
        .iter()
        .map(|kind| (*kind, score(*kind, SEED, CHICKS)))
        .collect()
}

fn main() {
    // Half of the kinds on another thread: the run takes a minute alone.
    let ill = std::thread::spawn(|| scores(&ILL));
    let healthy = scores(&HEALTHY);
    let ill = ill.join().expect("the simulation ends");
    let text = table::markdown(&healthy, &ill, SEED, CHICKS);
    println!("{text}");
    if std::env::args().any(|argument| argument == "--write") {
        println!("{}", written(&text));
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

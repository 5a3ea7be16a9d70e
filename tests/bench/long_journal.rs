//! Prints what a browser's first copy holds after years: a JSON object of keys and texts, with finished
//! weeks folded, for `make measure`. `cargo bench --no-default-features --bench long_journal -- 20000 20782`
//! makes 20,000 entries, the last of them on the day before day 20,782 since 1970-01-01.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a text for a program; it may stop at the first surprise"
)]

#[path = "../common/memory.rs"]
mod memory;
mod script;

use std::collections::BTreeMap;

use perchlight::domain::time::moment::Day;
use perchlight::store::key_value::KeyValue;
use perchlight::store::open::open;

use crate::memory::MemoryKeyValue;
use crate::script::{days_of, script};

fn main() {
    let numbers: Vec<i32> = std::env::args()
        .filter_map(|word| word.parse().ok())
        .collect();
    let [entries, today] = numbers.as_slice() else {
        println!("two numbers are needed: entries and today");
        return;
    };
    let entries = usize::try_from(*entries).expect("a count");
    let days = days_of(entries);
    let script = script(entries, Day::from_number(today - 1 - days));
    let place = MemoryKeyValue::new();
    let mut store = open(place.clone()).store;
    for entry in script.journal().entries() {
        store.keep(std::slice::from_ref(entry)).unwrap();
    }
    store
        .fold_finished_weeks(script.at(days + 1, 0, 0))
        .unwrap();
    let keys = place.keys("").unwrap().into_iter();
    let texts: BTreeMap<String, Option<String>> = keys
        .map(|key| (key.clone(), place.get(&key).unwrap()))
        .collect();
    println!("{}", serde_json::to_string(&texts).unwrap());
}

//! How long one outlook takes on a long journal: `cargo bench --no-default-features --bench outlook`.
//!
//! Prints medians. The budget is 2 ms on 5,000 entries.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a table for people; it may stop at the first surprise"
)]

mod script;

use std::hint::black_box;
use std::time::{Duration, Instant};

use perchlight::domain::feeding::schedule;
use perchlight::domain::journal::chick::Chick;
use perchlight::domain::journal::entries::Journal;
use perchlight::domain::outlook::outlook;
use perchlight::domain::time::moment::{Day, Moment};
use perchlight::domain::warnings::rules;
use perchlight::domain::warnings::second_weighing;
use perchlight::domain::weight::trend::weight_trend;
use perchlight::share::chart_of::chart_of;

use crate::script::{CHICK, days_of, script};

fn median(mut work: impl FnMut()) -> Duration {
    work();
    let mut times: Vec<Duration> = (0..31)
        .map(|_| {
            let start = Instant::now();
            work();
            start.elapsed()
        })
        .collect();
    times.sort();
    times.get(times.len() / 2).copied().unwrap_or_default()
}

fn row(entries: usize) {
    let days = days_of(entries);
    let script = script(entries, Day::from_date(2026, 1, 1).unwrap());
    let (zone, now): (_, Moment) = (script.zone(), script.at(days, 22, 0));
    let journal: Journal = script.journal();
    let chick = Chick::from_journal(&journal, CHICK).unwrap();
    let today = zone.lived(now).day;
    let feeds = schedule::feeds(now, &chick, &zone, today.plus(-2), today.plus(1));
    let ready = outlook(now, &journal, CHICK, &zone).unwrap();
    let facts = rules::Facts {
        now,
        zone: &zone,
        chick: &chick,
        feeds: &feeds,
        trend: &ready.weight.trend,
        stage: ready.stage,
    };
    let times = [
        median(|| {
            black_box(outlook(black_box(now), &journal, CHICK, &zone));
        }),
        median(|| {
            black_box(Chick::from_journal(black_box(&journal), CHICK));
        }),
        median(|| {
            black_box(schedule::next_feed(black_box(now), &chick, &zone));
        }),
        median(|| {
            black_box(second_weighing::judgement(black_box(&facts)));
        }),
        median(|| {
            black_box(weight_trend(black_box(now), &chick));
        }),
        median(|| {
            black_box(chart_of(black_box(&ready)));
        }),
    ];
    print!("{:>8}", journal.entries().len());
    for time in times {
        print!("{:>12.3}", time.as_secs_f64() * 1_000.0);
    }
    println!();
}

fn main() {
    println!("milliseconds, median of 31");
    println!(
        "{:>8}{:>12}{:>12}{:>12}{:>12}{:>12}{:>12}",
        "entries", "outlook", "chick", "next feed", "rules", "trend", "chart"
    );
    for entries in [500, 5_000, 50_000] {
        row(entries);
    }
}

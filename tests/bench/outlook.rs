//! How long one outlook takes on a long journal: `cargo bench --no-default-features --bench outlook`.
//!
//! Prints medians. The budget is 2 ms on 5,000 entries.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a table for people; it may stop at the first surprise"
)]

use std::hint::black_box;
use std::time::{Duration, Instant};

use perchlight::domain::chick::Chick;
use perchlight::domain::journal::{
    Change, ChickId, CropAtWeighing, CropFeel, CropState, Journal, SolidsEaten,
};
use perchlight::domain::moment::{Day, Moment, Offset};
use perchlight::domain::outlook::outlook;
use perchlight::domain::plan::{CarePlan, Reference, Slot};
use perchlight::domain::scenario::Scenario;
use perchlight::domain::species::Species;
use perchlight::domain::units::Grams;
use perchlight::domain::weight_trend::weight_trend;
use perchlight::domain::{rules, schedule};
use perchlight::share::chart_of::chart_of;

const CHICK: ChickId = ChickId(*b"bench-chick!");

/// Entries a day: three feeds, a morning weighing, one after a feed, three crop looks, solids.
const A_DAY: usize = 9;

fn script(entries: usize) -> (Scenario, i32) {
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    let start = Day::from_date(2026, 1, 1).unwrap();
    plan.reference = Some(Reference {
        weight: Grams::whole(1_040),
        day: start,
    });
    plan.hatched = Some(start.plus(-70));
    let mut script = Scenario::new(CHICK, plan, start, Offset::UTC);
    let days = i32::try_from(entries / A_DAY).unwrap();
    for day in 1..=days {
        let grams = 1_020 + (day * 7919) % 21 - 10;
        let crop = |state| Change::CropSeen {
            state,
            feel: CropFeel::Soft,
        };
        script.weigh(day, grams);
        script.feed(day, 7, 0, Slot::Morning, 60);
        let full = Change::Weighed {
            weight: Grams::whole(grams + 62),
            crop: CropAtWeighing::AfterFeed,
        };
        script.note(day, 7, 20, full);
        script.note(day, 11, 0, crop(CropState::Emptying));
        script.feed(day, 14, 0, Slot::Midday, 40);
        let solids = Change::SolidsSeen {
            what: "sweet potato".to_owned(),
            eaten: SolidsEaten::Little,
        };
        script.note(day, 16, 0, solids);
        script.note(day, 18, 0, crop(CropState::Emptying));
        script.note(day, 20, 30, crop(CropState::Empty));
        script.feed(day, 21, 0, Slot::Bedtime, 60);
    }
    (script, days)
}

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
    let (script, days) = script(entries);
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
            black_box(rules::evaluate(black_box(&facts)));
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

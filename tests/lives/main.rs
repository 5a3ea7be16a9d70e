//! Whole lives of made-up chicks: owners who note late, twice and wrongly, on two phones, undo, edit
//! the plan, take old cards, travel, forget for days. After every act the laws are asked.
//!
//! `proptest-state-machine` draws and shrinks; the acts, the phones and the laws are ours. `LIVES` says
//! how many lives are drawn.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::manual_assert,
    clippy::match_same_arms,
    reason = "a test may stop at the first surprise, and each change has its own line in the laws"
)]

mod acts;
mod counts;
#[path = "../common/fault_lines.rs"]
#[allow(dead_code, reason = "how many lives are drawn is said by LIVES")]
mod fault_lines;
mod healthy;
mod home;
mod ill;
mod laws;
mod life;
mod pages;
#[path = "../scorecard/simulator/mod.rs"]
#[allow(dead_code, reason = "the simulator scores ways of warning too")]
mod simulator;

use std::io::Write as _;
use std::thread;
use std::time::Instant;

use perchlight::domain::journal::entries::CropState;
use proptest::prelude::*;
use proptest::test_runner::{Config, RngSeed, TestRunner};
use proptest_state_machine::{ReferenceStateMachine, StateMachineTest};

use crate::acts::{Act, Edit, Who, act};
use crate::counts::Counts;
use crate::life::Life;

/// Lives of one run when `LIVES` does not say.
const USUAL_LIVES: u32 = 200;

/// Seed of the lives when `SEED` does not say: every run draws the same ones.
const USUAL_SEED: u64 = 20_261_127;

fn number<T: std::str::FromStr>(name: &str) -> Option<T> {
    std::env::var(name).ok()?.parse().ok()
}

/// The lives are drawn in two halves, which run beside each other: this seed or the next.
fn lives(half: u64) -> Config {
    Config {
        cases: number("LIVES").unwrap_or(USUAL_LIVES).div_ceil(2),
        rng_seed: RngSeed::Fixed(number("SEED").unwrap_or(USUAL_SEED) + half),
        max_shrink_iters: 4_000,
        failure_persistence: None,
        ..Config::default()
    }
}

/// Any act may follow any other: one that cannot be done does nothing.
#[derive(Debug, Clone)]
struct Acts;

impl ReferenceStateMachine for Acts {
    type State = ();
    type Transition = Act;

    fn init_state() -> BoxedStrategy<()> {
        Just(()).boxed()
    }

    fn transitions((): &()) -> BoxedStrategy<Act> {
        act().boxed()
    }

    fn apply((): (), _: &Act) {}
}

impl StateMachineTest for Life {
    type SystemUnderTest = Self;
    type Reference = Acts;

    fn init_test((): &()) -> Self {
        Self::begun()
    }

    fn apply(mut life: Self, (): &(), act: Act) -> Self {
        life.lives_through(act);
        life
    }
}

/// Draws one half of the lives and lives through them.
fn half_of_the_lives(half: u64) -> Counts {
    let config = lives(half);
    let drawn = Acts::sequential_strategy(1..60);
    let lived = TestRunner::new(config.clone()).run(&drawn, |(start, acts, seen)| {
        Life::test_sequential(config.clone(), start, acts, seen);
        Ok(())
    });
    if let Err(broken) = lived {
        panic!("half {half}: {broken}");
    }
    counts::so_far()
}

#[test]
fn the_laws_hold_after_every_act_of_a_life() {
    let begun = Instant::now();
    let halves = [0, 1].map(|half| thread::spawn(move || half_of_the_lives(half)));
    // Both are lived through to their end, whichever breaks a law.
    let [one, other] = halves.map(thread::JoinHandle::join);
    let (one, other) = (one.expect("the laws hold"), other.expect("the laws hold"));
    let Counts { lives, acts, laws } = one + other;
    let told = format!(
        "{acts} acts, {laws} laws asked, {} s",
        begun.elapsed().as_secs()
    );
    fault_lines::tell("lives of made-up chicks", lives, &told);
    // Not by `println!`, which is kept back where all is well.
    writeln!(std::io::stdout(), "{lives} lives, {told}").unwrap();
}

/// Lives that broke a law once, as short as they came.
fn lived_through(lives: impl IntoIterator<Item = Vec<Act>>) {
    for acts in lives {
        let mut life = Life::begun();
        for act in acts {
            life.lives_through(act);
        }
    }
}

#[test]
fn a_journey_west_leaves_nobody_without_an_instruction() {
    let lives = [
        // 14 h between two feeds of one day
        vec![
            Act::OrdinaryDays(1),
            Act::Travelled(-7),
            Act::OrdinaryDays(1),
        ],
        // one feed a day is left: the days that were told began after the journey
        vec![
            Act::Feed {
                who: Who::Owner,
                late_minutes: 0,
                share_pct: 100,
                noted_after: 233,
            },
            Act::Dropped,
            Act::Wait(480),
            Act::Feed {
                who: Who::Owner,
                late_minutes: 0,
                share_pct: 100,
                noted_after: 31,
            },
            Act::Travelled(-2),
            Act::Dropped,
            Act::OrdinaryDays(6),
        ],
        // bedtime was given half an hour early, and then the clock went back by three
        vec![
            Act::Silence(26),
            Act::OrdinaryDays(1),
            Act::Wait(390),
            Act::Feed {
                who: Who::Owner,
                late_minutes: 0,
                share_pct: 100,
                noted_after: 0,
            },
            Act::Travelled(-3),
            Act::Wait(24),
            Act::Wait(456),
            Act::Feed {
                who: Who::Owner,
                late_minutes: 0,
                share_pct: 100,
                noted_after: 0,
            },
        ],
    ];
    lived_through(lives);
}

#[test]
fn a_feed_that_was_missed_is_made_up_for_once() {
    // one feed a day is left and was hardly touched: in the morning it is made up for, and the screen
    // asked again every six hours, as that food was early for bedtime
    let hardly_touched = Act::Feed {
        who: Who::Owner,
        late_minutes: 30,
        share_pct: 5,
        noted_after: 180,
    };
    lived_through([vec![
        Act::Silence(11),
        Act::Travelled(6),
        Act::OrdinaryDays(1),
        Act::Travelled(2),
        Act::OrdinaryDays(1),
        Act::Dropped,
        Act::Wait(293),
        Act::Silence(49),
        Act::Dropped,
        Act::Silence(5),
        Act::BreederEdits(Edit::BedtimeVolume(1)),
        Act::Wait(157),
        hardly_touched,
        Act::OrdinaryDays(1),
    ]]);
}

#[test]
fn food_that_nobody_asked_for_puts_off_the_next_feed_by_the_longest_gap_at_most() {
    let fed = |who, late_minutes, share_pct, noted_after| Act::Feed {
        who,
        late_minutes,
        share_pct,
        noted_after,
    };
    lived_through([
        // a second try so late that it is bedtime's feed, three hours early
        vec![
            Act::Wait(90),
            fed(Who::Owner, 23, 5, 116),
            Act::Crop(CropState::Flat),
            fed(Who::Owner, 131, 100, 0),
            Act::OrdinaryDays(1),
        ],
        // the partner gave midday's feed too, three hours after the owner
        vec![
            Act::Wait(90),
            fed(Who::Owner, 89, 100, 63),
            fed(Who::Partner, 118, 100, 0),
            Act::Joined,
            Act::OrdinaryDays(1),
        ],
    ]);
}

#[test]
fn a_feed_is_asked_for_once_however_near_or_early_it_falls() {
    lived_through([
        // midday's feed fell an hour before bedtime: food so near to the other filled neither, and the
        // screen asked again every 45 minutes
        vec![
            Act::Crop(CropState::Trace),
            Act::Travelled(7),
            Act::OrdinaryDays(1),
        ],
        // the one feed was brought back after a day without: its food came too early to count for it
        vec![
            Act::Travelled(2),
            Act::Dropped,
            Act::Wait(24),
            Act::Wait(160),
            Act::Dropped,
            Act::OrdinaryDays(1),
            Act::Dropped,
            Act::Wait(297),
            Act::BroughtBack,
            Act::OrdinaryDays(1),
        ],
    ]);
}

#[test]
fn what_a_flight_east_pushes_into_the_day_is_of_the_day_before() {
    lived_through([
        // bedtime at nine was yet to come when the clock went from eight to three in the morning
        vec![
            Act::Wait(90),
            Act::Feed {
                who: Who::Owner,
                late_minutes: 0,
                share_pct: 100,
                noted_after: 56,
            },
            Act::Wait(334),
            Act::Travelled(7),
            Act::OrdinaryDays(1),
        ],
        // it is a millilitre more than the morning's feed, for which it came to count
        vec![
            Act::Edited(Who::Owner, Edit::BedtimeVolume(1)),
            Act::Wait(61),
            Act::Travelled(8),
            Act::OrdinaryDays(1),
        ],
    ]);
}

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
mod healthy;
mod home;
mod ill;
mod laws;
mod life;
mod pages;
#[path = "../scorecard/simulator/mod.rs"]
#[allow(dead_code, reason = "the simulator scores ways of warning too")]
mod simulator;

use proptest::prelude::*;
use proptest::test_runner::{Config, RngSeed};
use proptest_state_machine::{ReferenceStateMachine, StateMachineTest, prop_state_machine};

use crate::acts::{Act, Who, act};
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

prop_state_machine! {
    #![proptest_config(lives(0))]

    #[test]
    fn the_laws_hold_after_every_act_of_a_life(sequential 1..60 => Life);
}

prop_state_machine! {
    #![proptest_config(lives(1))]

    #[test]
    fn the_laws_hold_after_every_act_of_another_life(sequential 1..60 => Life);
}

/// Lives that broke a law once, as short as they came.
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
    for acts in lives {
        let mut life = Life::begun();
        for act in acts {
            life.lives_through(act);
        }
    }
}

//! How much was lived through and asked: a run that asks nothing holds every law.

use std::cell::Cell;
use std::ops::Add;

/// What one thread lived through.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Counts {
    pub(crate) lives: usize,
    pub(crate) acts: usize,
    /// How often a law was asked, each time it was.
    pub(crate) laws: usize,
}

impl Add for Counts {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self {
            lives: self.lives + other.lives,
            acts: self.acts + other.acts,
            laws: self.laws + other.laws,
        }
    }
}

thread_local! {
    static COUNTS: Cell<Counts> = const { Cell::new(Counts { lives: 0, acts: 0, laws: 0 }) };
}

fn count(lives: usize, acts: usize, laws: usize) {
    COUNTS.set(COUNTS.get() + Counts { lives, acts, laws });
}

pub(crate) fn a_life() {
    count(1, 0, 0);
}

pub(crate) fn an_act() {
    count(0, 1, 0);
}

pub(crate) fn a_law() {
    count(0, 0, 1);
}

/// What this thread lived through until now.
pub(crate) fn so_far() -> Counts {
    COUNTS.get()
}

//! From mornings that ring to days of delay and false calls.

use perchlight::domain::quantity::count;

use crate::simulator::chances::Chances;
use crate::simulator::habit::Habit;
use crate::simulator::life::{DAYS, Fate, Speed};
use crate::simulator::watch::{Watched, Way, watch};

/// An illness not found in so many days counts as never found.
pub(crate) const FOUND_WITHIN: i32 = 14;

/// A call after at least so many mornings without one is a new one: who was rung yesterday is not
/// rung anew for the same reason. Assumed.
const QUIET_DAYS: usize = 3;

/// A row of the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Kind {
    /// What the table calls it.
    pub(crate) name: &'static str,
    /// What happens.
    pub(crate) fate: Fate,
    /// How it is weighed; `None` for every habit in turn.
    pub(crate) habit: Option<Habit>,
}

const fn kind(name: &'static str, fate: Fate, habit: Option<Habit>) -> Kind {
    Kind { name, fate, habit }
}

/// Chicks that stay well.
pub(crate) const HEALTHY: [Kind; 7] = [
    kind("growing", Fate::Grows, Some(Habit::Careful)),
    kind("weaning", Fate::Weans, Some(Habit::Careful)),
    kind("dip in the new home", Fate::Dips, Some(Habit::Careful)),
    kind(
        "three mornings of ten missed",
        Fate::Weans,
        Some(Habit::Misses),
    ),
    kind(
        "now and then a full crop",
        Fate::Weans,
        Some(Habit::CropNotEmpty),
    ),
    kind("coarse scale", Fate::Weans, Some(Habit::CoarseScale)),
    kind("typing errors", Fate::Weans, Some(Habit::Mistypes)),
];

/// Chicks that fall ill, weighed in all these ways.
pub(crate) const ILL: [Kind; 3] = [
    kind("ill, 3 to 5 % a day", Fate::FallsIll(Speed::Fast), None),
    kind(
        "ill, 1.5 to 2.5 % a day",
        Fate::FallsIll(Speed::Middling),
        None,
    ),
    kind("ill, 0.7 to 1.2 % a day", Fate::FallsIll(Speed::Slow), None),
];

/// How one way of warning did with one kind of chick.
#[derive(Clone, Debug, Default)]
pub(crate) struct Score {
    false_calls: usize,
    well_days: usize,
    /// Days from the onset to the first call; what was never found stands last.
    delays: Vec<Option<i32>>,
}

impl Score {
    fn take(&mut self, way: Way, watched: &Watched) {
        let calls = watched.calls(way);
        let well = watched.onset.unwrap_or(DAYS);
        let well = usize::try_from(well).unwrap_or_default().min(calls.len());
        let (before, after) = calls.split_at(well);
        self.well_days += before.len();
        self.false_calls += new_calls(before);
        if watched.onset.is_some() {
            let found = after.iter().position(|rings| *rings);
            let delay = found.and_then(|place| i32::try_from(place + 1).ok());
            self.delays.push(delay.filter(|days| *days <= FOUND_WITHIN));
        }
    }

    /// The scores of several kinds as one.
    pub(crate) fn joined<'a>(scores: impl Iterator<Item = &'a Self>) -> Self {
        scores.fold(Self::default(), |mut all, score| {
            all.false_calls += score.false_calls;
            all.well_days += score.well_days;
            all.delays.extend(&score.delays);
            all
        })
    }

    /// False calls in a hundred weeks of a chick that is well.
    pub(crate) fn false_calls_per_100_weeks(&self) -> f64 {
        700.0 * count::as_f64(self.false_calls) / count::as_f64(self.well_days.max(1))
    }

    /// Days from the onset until this share of the chicks is found; `None` when it never is.
    pub(crate) fn delay(&self, share: f64) -> Option<i32> {
        let mut delays = self.delays.clone();
        delays.sort_by_key(|delay| delay.unwrap_or(i32::MAX));
        let place = count::rounded((share * count::as_f64(delays.len())).ceil()) - 1;
        delays.get(usize::try_from(place).ok()?).copied().flatten()
    }

    /// Mean days from the onset to the call; a chick never found counts as found a day too late.
    pub(crate) fn mean_delay(&self) -> f64 {
        let days = self
            .delays
            .iter()
            .map(|delay| delay.unwrap_or(FOUND_WITHIN + 1));
        f64::from(days.sum::<i32>()) / count::as_f64(self.delays.len().max(1))
    }

    /// Share of the ill chicks that are never found, per cent.
    pub(crate) fn never_found_pct(&self) -> f64 {
        let missed = self.delays.iter().filter(|delay| delay.is_none()).count();
        100.0 * count::as_f64(missed) / count::as_f64(self.delays.len().max(1))
    }
}

fn new_calls(calls: &[bool]) -> usize {
    let mut quiet = QUIET_DAYS;
    let mut new = 0;
    for rings in calls {
        if *rings && QUIET_DAYS <= quiet {
            new += 1;
        }
        quiet = if *rings { 0 } else { quiet + 1 };
    }
    new
}

/// How each way of warning does with so many chicks of one kind.
pub(crate) fn score(kind: Kind, seed: u64, chicks: u32) -> [Score; 3] {
    let mut scores: [Score; 3] = Default::default();
    for number in 0..chicks {
        let mut chances = Chances::of(seed, number);
        let in_turn = Habit::ALL
            .into_iter()
            .cycle()
            .nth(usize::try_from(number % 5).unwrap_or(0));
        let habit = kind.habit.or(in_turn).unwrap_or(Habit::Careful);
        let watched = watch(kind.fate, habit, &mut chances);
        for (score, way) in scores.iter_mut().zip(Way::ALL) {
            score.take(way, &watched);
        }
    }
    scores
}

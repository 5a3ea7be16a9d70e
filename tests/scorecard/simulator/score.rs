//! From mornings that ring to days of delay and false calls.

use perchlight::domain::quantity::count;

use crate::simulator::chances::Chances;
use crate::simulator::habit::Habit;
use crate::simulator::life::{Bird, Fate, Speed};
use crate::simulator::limit;
use crate::simulator::watch::{Notes, Watched, Way, watch};

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
    /// To what bird.
    pub(crate) bird: Bird,
    /// How it is weighed; `None` for every habit in turn.
    pub(crate) habit: Option<Habit>,
}

const fn macaw(name: &'static str, fate: Fate, habit: Habit) -> Kind {
    kind(name, fate, Bird::Macaw, Some(habit))
}

const fn kind(name: &'static str, fate: Fate, bird: Bird, habit: Option<Habit>) -> Kind {
    Kind {
        name,
        fate,
        bird,
        habit,
    }
}

/// How many of [`HEALTHY`] were in the table from the first; the limit rings as often as a single reading in these.
pub(crate) const FIRST_KINDS: usize = 7;

/// Chicks that stay well.
pub(crate) const HEALTHY: [Kind; 13] = [
    macaw("growing", Fate::Grows, Habit::Careful),
    macaw("weaning", Fate::Weans, Habit::Careful),
    macaw("dip in the new home", Fate::Dips, Habit::Careful),
    macaw("three mornings of ten missed", Fate::Weans, Habit::Misses),
    macaw("now and then a full crop", Fate::Weans, Habit::CropNotEmpty),
    macaw("coarse scale", Fate::Weans, Habit::CoarseScale),
    macaw("typing errors", Fate::Weans, Habit::Mistypes),
    macaw("two scales", Fate::Weans, Habit::TwoScales),
    macaw("dip at fledging", Fate::Fledges, Habit::Careful),
    macaw("weaned, eight weeks", Fate::IsWeaned, Habit::Careful),
    kind(
        "weaning, 350 g",
        Fate::Weans,
        Bird::Small,
        Some(Habit::Careful),
    ),
    kind(
        "weaning, 90 g",
        Fate::Weans,
        Bird::Smallest,
        Some(Habit::Careful),
    ),
    macaw("fat peak, eight weeks", Fate::WasFat, Habit::Careful),
];

/// Chicks that fall ill, weighed in all these ways, and the middle of what they lose a day.
pub(crate) const ILL: [(Kind, f64); 3] = [
    (ill("ill, 3 to 5 % a day", Speed::Fast), 0.04),
    (ill("ill, 1.5 to 2.5 % a day", Speed::Middling), 0.02),
    (ill("ill, 0.7 to 1.2 % a day", Speed::Slow), 0.0095),
];

const fn ill(name: &'static str, speed: Speed) -> Kind {
    kind(name, Fate::FallsIll(speed), Bird::Macaw, None)
}

/// How one way of warning did with one kind of chick.
#[derive(Clone, Debug, Default)]
pub(crate) struct Score {
    /// False calls and well days of each chick.
    well: Vec<(usize, usize)>,
    /// Well days at watch.
    watch_days: usize,
    /// Second weighings asked for on well days.
    asked: usize,
    /// Days from the onset to the first call; what was never found stands last.
    delays: Vec<Option<i32>>,
}

/// A value and half of its 95 % interval, from the spread between chicks.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Estimate {
    /// The value.
    pub(crate) value: f64,
    /// Half of the interval.
    pub(crate) half: f64,
}

fn mean(values: &[f64]) -> Estimate {
    let count = count::as_f64(values.len().max(2));
    let value = values.iter().sum::<f64>() / count;
    let square = |each: &f64| (each - value) * (each - value);
    let variance = values.iter().map(square).sum::<f64>() / (count - 1.0);
    Estimate {
        value,
        half: 1.96 * (variance / count).sqrt(),
    }
}

impl Score {
    fn take(&mut self, calls: &[bool], watched: &Watched) {
        let well = watched.onset.and_then(|onset| usize::try_from(onset).ok());
        let well = well.unwrap_or(calls.len()).min(calls.len());
        let (before, after) = calls.split_at(well);
        self.well.push((new_calls(before), before.len()));
        if watched.onset.is_some() {
            let found = after.iter().position(|rings| *rings);
            let delay = found.and_then(|place| i32::try_from(place + 1).ok());
            self.delays.push(delay.filter(|days| *days <= FOUND_WITHIN));
        }
    }

    fn take_watched(&mut self, watched: &Watched) {
        let well = watched.onset.and_then(|onset| usize::try_from(onset).ok());
        let of_well = |days: &[bool]| {
            let days = days.iter().take(well.unwrap_or(usize::MAX));
            days.filter(|yes| **yes).count()
        };
        self.take(watched.calls(Way::Perchlight), watched);
        self.watch_days += of_well(&watched.at_watch);
        self.asked += of_well(&watched.asked);
    }

    /// The scores of several kinds as one.
    pub(crate) fn joined<'a>(scores: impl Iterator<Item = &'a Self>) -> Self {
        scores.fold(Self::default(), |mut all, score| {
            all.well.extend(&score.well);
            all.watch_days += score.watch_days;
            all.asked += score.asked;
            all.delays.extend(&score.delays);
            all
        })
    }

    fn well_days(&self) -> f64 {
        count::as_f64(self.well.iter().map(|(_, days)| days).sum::<usize>().max(1))
    }

    /// False calls in a hundred weeks of a chick that is well.
    pub(crate) fn false_calls_per_100_weeks(&self) -> Estimate {
        let chicks = count::as_f64(self.well.len().max(1));
        let each: Vec<f64> = self
            .well
            .iter()
            .map(|(calls, _)| count::as_f64(*calls))
            .collect();
        let days = self.well_days() / chicks;
        let Estimate { value, half } = mean(&each);
        Estimate {
            value: 700.0 * value / days,
            half: 700.0 * half / days,
        }
    }

    /// One of so many well days is at watch.
    pub(crate) fn days_for_one_at_watch(&self) -> f64 {
        self.well_days() / count::as_f64(self.watch_days.max(1))
    }

    /// Second weighings asked for in a hundred weeks of a chick that is well.
    pub(crate) fn asked_per_100_weeks(&self) -> f64 {
        700.0 * count::as_f64(self.asked) / self.well_days()
    }

    /// Days from the onset until this share of the chicks is found; `None` when it never is.
    pub(crate) fn delay(&self, share: f64) -> Option<i32> {
        let mut delays = self.delays.clone();
        delays.sort_by_key(|delay| delay.unwrap_or(i32::MAX));
        let place = count::rounded((share * count::as_f64(delays.len())).ceil()) - 1;
        delays.get(usize::try_from(place).ok()?).copied().flatten()
    }

    /// Mean days from the onset to the call; a chick never found counts as found a day too late.
    pub(crate) fn mean_delay(&self) -> Estimate {
        let days = |delay: &Option<i32>| f64::from(delay.unwrap_or(FOUND_WITHIN + 1));
        mean(&self.delays.iter().map(days).collect::<Vec<f64>>())
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

/// The made-up chicks of one kind.
#[derive(Clone, Debug)]
pub(crate) struct Chicks {
    /// From weights alone.
    weights: Vec<(Habit, Watched)>,
    /// The same chicks whose owners note what was eaten exactly, as the full feed, or not at all, a third each
    /// (assumed).
    eaten: Vec<Watched>,
}

/// Watches so many chicks of one kind; with what was eaten, or from weights alone.
pub(crate) fn chicks(kind: Kind, seed: u64, chicks: u32, with_eaten: bool) -> Chicks {
    let mut all = Chicks {
        weights: Vec::new(),
        eaten: Vec::new(),
    };
    for number in 0..chicks {
        let of_turn = |turns: u32| usize::try_from(number % turns).unwrap_or(0);
        let in_turn = Habit::ALL.into_iter().nth(of_turn(5));
        let habit = kind.habit.or(in_turn).unwrap_or(Habit::Careful);
        let watch = |notes| {
            let mut chances = Chances::of(seed, number);
            watch((kind.fate, kind.bird), habit, notes, &mut chances)
        };
        let weights = watch(Notes::Full);
        if with_eaten {
            // Another turn than that of the habits: three and five share no factor.
            all.eaten.push(match of_turn(3) {
                0 => watch(Notes::Exact),
                1 => weights.clone(),
                _ => watch(Notes::Nothing),
            });
        }
        all.weights.push((habit, weights));
    }
    all
}

impl Chicks {
    /// How a way of warning does, from weights alone.
    pub(crate) fn score(&self, way: Way) -> Score {
        let mut score = Score::default();
        for (_, watched) in &self.weights {
            match way {
                Way::Single | Way::Median => score.take(watched.calls(way), watched),
                Way::Perchlight => score.take_watched(watched),
            }
        }
        score
    }

    /// How Perchlight would do, from weights alone, with other odds for a call of a fall.
    pub(crate) fn score_with_odds(&self, odds: f64) -> Score {
        let mut score = Score::default();
        for (_, watched) in &self.weights {
            let mornings = watched.ln_ratios.iter().zip(&watched.others);
            let calls = mornings.map(|(ratio, other)| *other || odds.ln() <= *ratio);
            score.take(&calls.collect::<Vec<bool>>(), watched);
        }
        score
    }

    /// How Perchlight does with what was eaten.
    pub(crate) fn score_with_eaten(&self) -> Score {
        let mut score = Score::default();
        for watched in &self.eaten {
            score.take_watched(watched);
        }
        score
    }

    /// What the limit makes of them for a fall of so large a share a day.
    pub(crate) fn ln_ratios(&self, a_day: f64) -> Vec<Vec<f64>> {
        let each = self.weights.iter();
        each.map(|(habit, watched)| limit::ln_ratios(&watched.off, habit.noise(), a_day))
            .collect()
    }

    /// How the limit does with a threshold.
    pub(crate) fn score_limit(&self, ratios: &[Vec<f64>], threshold: f64) -> Score {
        let mut score = Score::default();
        for ((_, watched), ratios) in self.weights.iter().zip(ratios) {
            let calls: Vec<bool> = ratios.iter().map(|ratio| threshold <= *ratio).collect();
            score.take(&calls, watched);
        }
        score
    }
}

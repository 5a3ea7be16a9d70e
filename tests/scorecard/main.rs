//! A small scorecard: what the table of the large one claims holds for a few chicks as well.
//!
//! The margins are wide enough for 25 chicks a kind: a wrong sign, a rule left out or a limit passed
//! by mistake fails, the luck of the seed does not.

#![allow(
    clippy::float_cmp,
    reason = "the same seed gives the same numbers to the last digit"
)]

mod simulator;

use crate::simulator::score::{Chicks, FIRST_KINDS, HEALTHY, ILL, Kind, Score, chicks};
use crate::simulator::watch::Way;

const SEED: u64 = 77;
const CHICKS: u32 = 25;

fn all(kinds: &[Kind]) -> Vec<Chicks> {
    let chicks = kinds.iter().map(|kind| chicks(*kind, SEED, CHICKS, false));
    chicks.collect()
}

fn joined(chicks: &[Chicks], way: Way) -> Score {
    let scores: Vec<Score> = chicks.iter().map(|chicks| chicks.score(way)).collect();
    Score::joined(scores.iter())
}

#[test]
fn perchlight_tells_an_illness_earlier_than_both_paper_rules() {
    for (kind, a_day) in ILL {
        let chicks = chicks(kind, SEED, CHICKS, true);
        let [single, median, perchlight] =
            [Way::Single, Way::Median, Way::Perchlight].map(|way| chicks.score(way));
        let half = |score: &Score| score.delay(0.5).unwrap_or(i32::MAX);
        assert!(half(&perchlight) < half(&single), "{}", kind.name);
        assert!(half(&perchlight) < half(&median), "{}", kind.name);
        let days = |score: &Score| score.mean_delay().value;
        let (single, median, eaten) = (
            days(&single),
            days(&median),
            days(&chicks.score_with_eaten()),
        );
        let perchlight_days = days(&perchlight);
        let told = format!("{}: {perchlight_days} {eaten} {single} {median}", kind.name);
        assert!(perchlight_days <= 0.85 * single, "{told}");
        assert!(perchlight_days <= 0.75 * median, "{told}");
        assert!(eaten <= perchlight_days, "{told}");
        // Each of these chicks passes the limit within the days that count.
        assert!(perchlight.never_found_pct() <= 5.0, "{told}");
        // Smaller odds call sooner, larger ones later.
        let with = |odds| days(&chicks.score_with_odds(odds));
        assert!(with(5.0) < with(5_000.0), "{told}");
        // Nobody who must not know the pace does better than a judge that knows everything.
        let limit = chicks.score_limit(&chicks.ln_ratios(a_day), 3.0);
        assert!(days(&limit) <= perchlight_days, "{told}");
    }
}

/// Most false calls in a hundred healthy weeks beyond those of a single reading below 90 %.
///
/// The ladder holds that reading itself, since the plan's limit rings on one that was confirmed, so what the other
/// rules add is what counts. On the tuning seed they added 0.2, with a standard deviation near 0.6 for so few chicks.
const MOST_ADDED: f64 = 2.2;

#[test]
fn perchlight_adds_few_false_calls_to_those_of_a_reading_below_ninety_per_cent() {
    let (first, _) = HEALTHY.split_at(FIRST_KINDS);
    let chicks = all(first);
    let [single, median, perchlight] = [Way::Single, Way::Median, Way::Perchlight]
        .map(|way| joined(&chicks, way).false_calls_per_100_weeks().value);
    assert!(
        0.0 < median,
        "made-up chicks that nothing rings for say nothing"
    );
    assert!(perchlight <= single + MOST_ADDED, "{perchlight} {single}");
    let watched = joined(&chicks, Way::Perchlight).days_for_one_at_watch();
    assert!(10.0 <= watched, "one day of {watched} at watch");
    assert!(joined(&chicks, Way::Perchlight).asked_per_100_weeks() < 100.0);
}

#[test]
fn the_same_seed_tells_the_same_and_another_seed_something_else() {
    let [.., (kind, _)] = ILL;
    let delays = |seed| {
        chicks(kind, seed, 10, false)
            .score(Way::Perchlight)
            .mean_delay()
            .value
    };
    assert_eq!(delays(SEED), delays(SEED));
    assert_ne!(delays(SEED), delays(SEED + 1));
}

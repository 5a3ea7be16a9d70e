//! A small scorecard: what the table of the large one claims holds for a few chicks as well.
//!
//! The margins are wide enough for 25 chicks a kind: a wrong sign, a rule left out or a limit passed
//! by mistake fails, the luck of the seed does not.

mod simulator;

use crate::simulator::score::{HEALTHY, ILL, Kind, Score, score};

const SEED: u64 = 77;
const CHICKS: u32 = 25;

fn all(kinds: &[Kind]) -> [Score; 3] {
    let scores: Vec<[Score; 3]> = kinds
        .iter()
        .map(|kind| score(*kind, SEED, CHICKS))
        .collect();
    [0, 1, 2].map(|way| Score::joined(scores.iter().filter_map(|of_kind| of_kind.get(way))))
}

#[test]
fn perchlight_tells_an_illness_earlier_than_both_paper_rules() {
    for kind in ILL {
        let [single, median, perchlight] = score(kind, SEED, CHICKS);
        let half = |score: &Score| score.delay(0.5).unwrap_or(i32::MAX);
        assert!(half(&perchlight) < half(&single), "{}", kind.name);
        assert!(half(&perchlight) < half(&median), "{}", kind.name);
        let (single, median) = (single.mean_delay(), median.mean_delay());
        let perchlight_days = perchlight.mean_delay();
        let told = format!("{}: {perchlight_days} {single} {median}", kind.name);
        assert!(perchlight_days <= 0.8 * single, "{told}");
        assert!(perchlight_days <= 0.7 * median, "{told}");
        // Each of these chicks passes the limit within the days that count.
        assert!(perchlight.never_found_pct() <= 5.0, "{told}");
    }
}

/// Most false calls in a hundred healthy weeks beyond those of a single reading below 90 %.
///
/// The ladder holds that reading itself, since the plan's limit rings on one, so what the other rules
/// add is what counts. Over 60 seeds, 25 chicks a kind, they added 1.5 (sd 0.45, at most 2.5); this is
/// four sd above the mean. With a ring on every single reading 10 % below the peak, this seed adds 4.0 and fails.
const MOST_ADDED: f64 = 3.3;

#[test]
fn perchlight_adds_few_false_calls_to_those_of_a_reading_below_ninety_per_cent() {
    let [single, median, perchlight] = all(&HEALTHY).map(|score| score.false_calls_per_100_weeks());
    assert!(
        0.0 < median,
        "made-up chicks that nothing rings for say nothing"
    );
    assert!(perchlight <= single + MOST_ADDED, "{perchlight} {single}");
}

#[test]
fn the_same_seed_tells_the_same_and_another_seed_something_else() {
    let [kind, ..] = ILL;
    let delays = |seed| score(kind, seed, 10).map(|score| score.mean_delay().to_bits());
    assert_eq!(delays(SEED), delays(SEED));
    assert_ne!(delays(SEED), delays(SEED + 1));
}

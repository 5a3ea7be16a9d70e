//! How far weaning has come.

use perchlight::domain::journal::entries::Change;
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::plan::care_plan::Slot;
use perchlight::domain::plan::species::Weeks;
use perchlight::domain::time::moment::Day;
use perchlight::domain::weaning::Verdict;
use perchlight::domain::weaning::facts::Answer;
use perchlight::domain::weaning::stage::Stage;

use crate::script::{Without, arrived, at, day, dropped, evening, good_days, plan, ready};

/// Weaned of formula: all three feeds were dropped, the last on day 20 at 10:00; weighed every
/// morning since at the given weight.
fn without_formula(last_day: i32, grams: impl Fn(i32) -> i32) -> Scenario {
    let mut script = ready();
    script.note(9, 22, 10, dropped(Slot::Midday));
    script.note(15, 10, 0, dropped(Slot::Morning));
    script.note(20, 10, 0, dropped(Slot::Bedtime));
    script.note(21, 10, 0, Change::DrinkingSeen);
    for day in 10..=last_day {
        script.weigh(day, grams(day));
    }
    script
}

fn stage(script: &Scenario, day: i32) -> Stage {
    at(script, day, 12, 0).stage
}

#[test]
fn a_chick_settles_in_for_the_days_of_its_plan() {
    let script = arrived(plan());
    assert_eq!(stage(&script, 3), Stage::SettlingIn { until: day(7) });
    assert_eq!(stage(&script, 7), Stage::FullPlan);
}

#[test]
fn stages_follow_the_feeds_left() {
    let script = without_formula(20, |_| 1_000);
    assert_eq!(stage(&script, 9), Stage::FullPlan);
    assert_eq!(stage(&script, 10), Stage::Weaning { feeds_left: 2 });
    let slot = Slot::Bedtime;
    assert_eq!(stage(&script, 15), Stage::LastFeed { slot });
    assert!(matches!(
        stage(&script, 20),
        Stage::NoFormula { days: 0, .. }
    ));
    let weaning = at(&script, 20, 12, 0);
    assert_eq!(weaning.verdict, Verdict::NothingToDrop);
    assert!(weaning.checks.is_empty());
    assert_eq!(weaning.dropped, [Slot::Midday, Slot::Morning, slot]);
}

#[test]
fn fourteen_days_without_formula_and_a_flat_weight_are_weaned() {
    let script = without_formula(70, |_| 960);
    let Stage::NoFormula { since, days, .. } = stage(&script, 33) else {
        panic!("{:?}", stage(&script, 33));
    };
    assert_eq!((since, days), (day(20), 13));
    let weaned = Stage::AfterWeaning {
        weaned: day(34),
        weigh_until: day(62),
    };
    assert_eq!(stage(&script, 34), weaned);
    assert_eq!(stage(&script, 62), weaned);
    assert_eq!(stage(&script, 63), Stage::Done { weaned: day(34) });
}

fn flat_answer(grams: impl Fn(i32) -> i32) -> Answer {
    let script = without_formula(34, grams);
    match stage(&script, 34) {
        Stage::NoFormula { weight, .. } => weight.answer,
        Stage::AfterWeaning { .. } => Answer::Yes,
        other => panic!("{other:?}"),
    }
}

#[test]
fn two_per_cent_from_the_middle_is_flat_and_more_is_not() {
    // Days 21 to 34, ten mornings at 1,000 g, then four at another weight: the middle is 1,000 g and
    // the last three mornings' median is the other weight.
    for (grams, expected) in [
        (981, Answer::Yes),
        (980, Answer::Yes),
        (979, Answer::No),
        (1_020, Answer::Yes),
        (1_021, Answer::No),
    ] {
        let found = flat_answer(|day| if day > 30 { grams } else { 1_000 });
        assert_eq!(found, expected, "{grams} g");
    }
}

#[test]
fn one_odd_morning_does_not_make_a_weight_uneven() {
    let found = flat_answer(|day| if day == 27 { 1_080 } else { 1_000 });
    assert_eq!(found, Answer::Yes);
}

#[test]
fn a_weight_that_was_hardly_taken_is_not_called_flat() {
    let mut script = without_formula(20, |_| 1_000);
    for day in [21, 22, 28, 29, 30, 34] {
        script.weigh(day, 1_000);
    }
    let Stage::NoFormula { weight, .. } = stage(&script, 34) else {
        panic!("{:?}", stage(&script, 34));
    };
    assert_eq!(weight.answer, Answer::NotEnoughData);
    // one more in the first of the two weeks
    script.weigh(26, 1_000);
    assert!(matches!(stage(&script, 34), Stage::AfterWeaning { .. }));
}

#[test]
fn a_weight_that_becomes_flat_later_is_weaned_later() {
    // Falls by 10 g a day to day 30, then stays.
    let script = without_formula(60, |day| 1_300 - 10 * day.min(30));
    assert!(matches!(stage(&script, 34), Stage::NoFormula { .. }));
    let Stage::AfterWeaning { weaned, .. } = stage(&script, 50) else {
        panic!("{:?}", stage(&script, 50));
    };
    assert!(weaned > day(34) && weaned <= day(44), "{weaned:?}");
}

#[test]
fn formula_given_again_starts_the_fourteen_days_again() {
    let mut script = without_formula(40, |_| 1_000);
    script.feed(30, 21, 0, Slot::Bedtime, 30);
    assert!(matches!(
        stage(&script, 40),
        Stage::NoFormula { days: 10, .. }
    ));
    script.note(
        35,
        9,
        0,
        Change::FeedBroughtBack {
            slot: Slot::Bedtime,
        },
    );
    let slot = Slot::Bedtime;
    assert_eq!(stage(&script, 40), Stage::LastFeed { slot });
}

#[test]
fn age_is_shown_with_the_species_window_and_changes_nothing_else() {
    let weaning = |hatched: Option<Day>| {
        let mut plan = plan();
        plan.hatched = hatched;
        let mut script = arrived(plan);
        good_days(&mut script, 1, 9, Without::Nothing);
        evening(&script)
    };
    let young = weaning(Some(day(-60)));
    // Green-winged macaw: commonly 16 to 26 weeks.
    let note = young.age.unwrap();
    assert_eq!(
        (note.age.days(), note.window),
        (69, Some(Weeks { from: 16, to: 26 }))
    );
    for hatched in [None, Some(day(-400))] {
        let mut other = weaning(hatched);
        other.age = young.age;
        assert_eq!(other, young);
    }
}

//! What must hold for any journal: when a drop is never offered, and when a feed always comes back.

use perchlight::domain::journal::chick::Chick;
use perchlight::domain::journal::entries::{Change, Droppings, Journal, SolidsEaten};
use perchlight::domain::outlook::outlook;
use perchlight::domain::plan::care_plan::Slot;
use perchlight::domain::weaning::facts::WeaningFacts;
use perchlight::domain::weaning::{Verdict, assess};
use proptest::collection::vec;
use proptest::prelude::{Just, ProptestConfig, Strategy};
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use proptest::{prop_assert, prop_assert_eq, proptest};

use crate::lives::{Life, OneDay, one_day};
use crate::script::{CHICK, arrived, day, day_zero, plan};

/// Lives all days; tells how many drops were offered and feeds brought back.
fn live_all(mut life: Life, days: &[OneDay]) -> Result<(usize, usize, Journal), String> {
    let mut grams = 1_000;
    for (number, today) in (1..).zip(days) {
        grams += today.change_g;
        life.live(number, grams.max(500), days)?;
    }
    Ok((life.offers, life.bring_backs, life.script.journal()))
}

fn orders() -> impl Strategy<Value = Vec<Slot>> {
    Just(vec![Slot::Midday, Slot::Morning, Slot::Bedtime]).prop_shuffle()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn drops_are_offered_only_when_all_is_well_and_feeds_always_come_back(
        days in vec(one_day(), 10..30),
        settle_in in 0_u8..12,
        waiting in 0_u8..9,
        order in orders(),
        hatched in 0_i32..400,
    ) {
        let life = Life::new(settle_in, waiting, order, hatched);
        if let Err(what) = live_all(life, &days) {
            prop_assert!(false, "{what}");
        }
    }

    // The ladder may ask for a call sooner for a young chick that refuses food; with the same
    // findings, age changes nothing.
    #[test]
    fn age_never_decides(
        days in vec(one_day(), 10..20),
        hatched in 0_i32..2_000,
    ) {
        let order = vec![Slot::Midday, Slot::Morning, Slot::Bedtime];
        let (_, _, journal) = live_all(Life::new(7, 5, order, 90), &days).unwrap();
        let script = arrived(plan());
        let zone = script.zone();
        for number in 1..=i32::try_from(days.len()).unwrap() {
            let now = script.at(number, 22, 0);
            let seen = outlook(now, &journal, CHICK, &zone).unwrap();
            let verdict = |hatched| {
                let mut chick = Chick::clone(&seen.chick);
                chick.plan.hatched = hatched;
                assess(&WeaningFacts {
                    now,
                    zone: &zone,
                    chick: &chick,
                    level: seen.level,
                    findings: &seen.findings,
                    is_feeding_forbidden: false,
                    pct_of_peak: Some(96.0),
                })
                .verdict
            };
            let known = verdict(Some(day(-90)));
            prop_assert_eq!(&known, &verdict(Some(day(-hatched))));
            prop_assert_eq!(&known, &verdict(None));
        }
    }

    #[test]
    fn with_nothing_noted_no_feed_goes_at_any_age(
        hatched in 0_i32..4_000,
        day in 0_i32..400,
    ) {
        let life = Life::new(0, 0, Slot::ALL.to_vec(), hatched);
        let verdict = life.outlook(life.script.at(day, 13, 0)).weaning.verdict;
        let is_not_yet = matches!(verdict, Verdict::NotYet { .. });
        prop_assert!(is_not_yet, "{:?}", verdict);
    }
}

#[test]
fn the_random_lives_are_led_to_drops_and_back() {
    let mut runner = TestRunner::deterministic();
    let (mut offers, mut bring_backs) = (0, 0);
    for _ in 0..64 {
        let days = vec(one_day(), 25).new_tree(&mut runner).unwrap().current();
        let order = vec![Slot::Midday, Slot::Morning, Slot::Bedtime];
        let (offered, back, _) = live_all(Life::new(5, 5, order, 100), &days).unwrap();
        offers += offered;
        bring_backs += back;
    }
    assert!(offers >= 20, "{offers} offers");
    assert!(bring_backs >= 20, "{bring_backs} feeds brought back");
}

#[test]
fn a_chick_that_weans_itself_is_led_through_every_feed() {
    let good = OneDay {
        weighed: true,
        change_g: 0,
        taken: [0; 3],
        solids: Some(SolidsEaten::Meal),
        droppings: Some(Droppings::Normal),
        sign: None,
        follows_offer: true,
        breeder_drops: None,
        brings_back: None,
    };
    let order = vec![Slot::Midday, Slot::Morning, Slot::Bedtime];
    let mut life = Life::new(7, 5, order, 120);
    let days = vec![good; 30];
    for day in 1..=30 {
        life.live(day, 1_000, &days).unwrap();
    }
    let steps: Vec<i32> = life
        .script
        .journal()
        .entries()
        .iter()
        .filter(|entry| matches!(entry.change, Change::FeedDropped { .. }))
        .map(|entry| entry.lived().day.since(day_zero()))
        .collect();
    // The week to settle in ends on day 7 at 12:00; then five days from drop to drop.
    assert_eq!(steps, [7, 12, 17]);
    assert_eq!(life.gone, [Slot::Midday, Slot::Morning, Slot::Bedtime]);
}

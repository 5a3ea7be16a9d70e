//! A healthy life of 26 weeks, fully noted, rings nobody, and once weaned nothing stands out.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

use perchlight::domain::homecoming::life_stage::LifeStage;
use perchlight::domain::journal::entries::{Change, ChickId, Droppings, Paper, SolidsEaten};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::outlook::{Outlook, outlook};
use perchlight::domain::plan::care_plan::{CarePlan, Reference, Slot};
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::{Grams, Millilitres};
use perchlight::domain::time::moment::{Day, Offset};

const CHICK: ChickId = ChickId([7; 12]);

const DAYS: i32 = 26 * 7;

/// The feeds, their hours, and the day on which each is given up, at 11:00.
const FEEDS: [(Slot, i32, i32); 3] = [
    (Slot::Midday, 14, 21),
    (Slot::Morning, 7, 35),
    (Slot::Bedtime, 21, 49),
];

/// Bedtime was given last on day 48 and dropped on day 49: fourteen days later.
const WEANED: i32 = 63;

/// From here on it is weighed once a week: daily to weaning and four weeks on is common practice.
const WEEKLY_FROM: i32 = WEANED + 28;

/// Weight without noise, g: 8 % down from the handover over the six weeks from the second on, by a drop
/// of around 10 % from the maximum (Duerr & Gage 2020, p. 599), then flat.
fn grams(day: i32) -> i32 {
    1_000 - 80 * (day - 7).clamp(0, 42) / 42
}

fn life(weighed_until: i32) -> Scenario {
    let start = Day::from_date(2026, 11, 2).unwrap();
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    plan.hatched = Some(start.plus(-84));
    let weight = Grams::whole(1_000);
    plan.reference = Some(Reference { weight, day: start });
    for feed in &mut plan.feeds {
        feed.volume = Millilitres::whole(80);
    }
    let mut script = Scenario::new(CHICK, plan, start, Offset::UTC);
    script.note(0, 5, 30, Change::Arrived);
    for day in 0..DAYS {
        let is_weighed = day < WEEKLY_FROM || day % 7 == 0;
        if is_weighed && day < weighed_until {
            script.weigh(day, grams(day));
        }
        for (slot, hour, dropped) in FEEDS {
            // On the day itself the feeds before 11:00 are still given.
            if day < dropped || (day == dropped && hour < 11) {
                script.feed(day, hour, 0, slot, 80);
            }
            if day == dropped {
                let by_breeder = true;
                script.note(day, 11, 0, Change::FeedDropped { slot, by_breeder });
            }
        }
        let look = Droppings::Normal;
        script.note(day, 10, 0, Change::DroppingsSeen { look });
        // 14 to 22 a day, three in the night.
        let counts = [(7, Paper::Night, 3), (21, Paper::Day, 14 + day % 9)];
        for (hour, paper, count) in counts {
            let count = u8::try_from(count).unwrap();
            script.note(day, hour, 30, Change::DroppingsCounted { paper, count });
        }
        let (what, eaten) = ("pellets".to_owned(), SolidsEaten::Meal);
        script.note(day, 10, 1, Change::SolidsSeen { what, eaten });
    }
    let said = "healthy".to_owned();
    script.note(2, 11, 0, Change::VetSeen { said });
    script.note(50, 9, 0, Change::DrinkingSeen);
    script
}

fn seen(script: &Scenario, day: i32, hour: i32) -> Outlook {
    let journal = script.journal();
    outlook(script.at(day, hour, 0), &journal, CHICK, &script.zone()).unwrap()
}

#[test]
fn a_healthy_life_of_26_weeks_rings_nobody_and_once_weaned_nothing_stands_out() {
    let script = life(DAYS);
    let (journal, zone) = (script.journal(), script.zone());
    for day in 1..DAYS {
        for hour in [4, 12, 20, 23] {
            let now = script.at(day, hour, 0);
            let outlook = outlook(now, &journal, CHICK, &zone).unwrap();
            let findings = &outlook.findings;
            assert!(
                !outlook.level.is_call(),
                "day {day}, {hour} h: {findings:?}"
            );
            if outlook.stage == LifeStage::Weaned {
                assert!(findings.is_empty(), "day {day}, {hour} h: {findings:?}");
                assert!(!outlook.is_to_be_weighed());
            }
            assert_eq!(
                outlook.stage == LifeStage::Weaned,
                day >= WEANED,
                "day {day}"
            );
        }
    }
}

/// Nobody is nagged for ever: a weaned bird that is weighed no more is asked about and never rung for.
#[test]
fn a_weaned_bird_that_is_no_longer_weighed_is_a_look_and_never_a_call() {
    let script = life(WEEKLY_FROM);
    // weighed last on day 90 at 06:45; ten days later
    assert!(seen(&script, 100, 6).findings.is_empty());
    let later = seen(&script, 100, 7);
    assert!(!later.findings.is_empty());
    for day in [101, 120, 181] {
        let level = seen(&script, day, 12).level;
        assert!(!level.is_call(), "day {day}: {level:?}");
    }
}

#[test]
fn nothing_is_found_or_asked_for_once_it_died() {
    let mut script = life(20);
    script.note(24, 9, 0, Change::Died);
    assert!(
        seen(&script, 24, 8).level.is_call(),
        "not weighed for four days"
    );
    let after = seen(&script, 24, 10);
    assert_eq!(after.stage, LifeStage::Died);
    assert!(after.findings.is_empty());
    assert!(!after.is_to_be_weighed());
    assert_eq!(after.next_feed, None);
}

//! What holds of the ladder for every journal: it never panics, never answers *Settled* in a finding,
//! and more loss, more feeds missed or refused and more time without food never lower the level.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

use proptest::prelude::*;

use perchlight::domain::formula::serving_heat::TemperatureUnit;

use perchlight::domain::journal::entries::{
    Change, ChickId, CropAtWeighing, CropFeel, CropState, Droppings, Paper, Response, SolidsEaten,
    WhyPassedOver,
};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::journal::signs::Sign;
use perchlight::domain::outlook::{Outlook, outlook};
use perchlight::domain::plan::care_plan::{
    CarePlan, ClockShift, Journey, PlannedFeed, Reference, Role, Slot,
};
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::{Celsius, Grams, Millilitres};
use perchlight::domain::time::moment::{Day, Offset, WallTime};
use perchlight::domain::warnings::level::{Level, Value};
use perchlight::words::Language;
use perchlight::words::call::what_to_say;
use perchlight::words::format::{MassUnit, Writing};
use perchlight::words::rules::finding_title;
use perchlight::words::sources::source_line;

const CHICK: ChickId = ChickId([7; 12]);

fn day_zero() -> Day {
    Day::from_date(2026, 11, 2).unwrap()
}

fn look(script: &Scenario, day: i32, minute: i32) -> Outlook {
    let now = script.at(day, 0, minute);
    outlook(now, &script.journal(), CHICK, &script.zone()).unwrap()
}

fn plans() -> impl Strategy<Value = CarePlan> {
    let slots = proptest::sample::subsequence(Slot::ALL.to_vec(), 0..=6);
    let species = proptest::sample::select(Species::ALL.to_vec());
    let hatched = proptest::option::of(0..300_i32);
    let reference = proptest::option::of(30..1_600_i32);
    let journey = proptest::option::of((-3_000..3_000_i64, -600..2_000_i64));
    (species, slots, hatched, reference, journey).prop_map(
        |(species, slots, hatched, reference, journey)| {
            let mut plan = CarePlan::default_for(species);
            plan.feeds = slots
                .into_iter()
                .map(|slot| PlannedFeed {
                    slot,
                    time: WallTime::from_minutes(usual_hour(slot) * 60),
                    volume: plan.feeds[0].volume,
                })
                .collect();
            plan.hatched = hatched.map(|days| day_zero().plus(-days));
            plan.reference = reference.map(|grams| Reference {
                weight: Grams::whole(grams),
                day: day_zero(),
            });
            plan.journey = journey.map(|(left, takes)| {
                let start = Scenario::new(CHICK, plan.clone(), day_zero(), Offset::UTC);
                let left = start.at(1, 0, 0).plus_minutes(left);
                Journey {
                    left,
                    expected: left.plus_minutes(takes),
                    breeder_offset: Offset::UTC,
                    shift: ClockShift::AtOnce,
                    last_fed: None,
                }
            });
            plan
        },
    )
}

const fn usual_hour(slot: Slot) -> i32 {
    match slot {
        Slot::EarlyMorning => 5,
        Slot::Morning => 8,
        Slot::Midday => 12,
        Slot::Afternoon => 16,
        Slot::Evening => 19,
        Slot::Bedtime => 23,
    }
}

fn changes() -> impl Strategy<Value = Change> {
    use proptest::sample::select;
    let slot = || select(Slot::ALL.to_vec());
    let crops = [
        CropAtWeighing::Empty,
        CropAtWeighing::AfterFeed,
        CropAtWeighing::NotSure,
    ];
    let looks = Droppings::ALL;
    let whys = [
        WhyPassedOver::CropNotEmpty,
        WhyPassedOver::NotFit,
        WhyPassedOver::Advised,
        WhyPassedOver::NotPossible,
        WhyPassedOver::NotKnown,
    ];
    let celsius = (-400..1_300_i32).prop_map(Celsius::tenths_held);
    prop_oneof![
        Just(Change::Arrived),
        (50..30_000_i32, select(crops.to_vec())).prop_map(|(tenths, crop)| Change::Weighed {
            weight: Grams::tenths_held(tenths),
            crop,
        }),
        (
            proptest::option::of(slot()),
            0..3_000_i32,
            proptest::option::of(celsius.clone())
        )
            .prop_map(|(slot, tenths, served_at)| Change::Fed {
                counts_as: slot,
                taken: Millilitres::tenths_held(tenths),
                offered: Millilitres::tenths_held(tenths),
                served_at,
                response: Response::Slow,
            }),
        proptest::option::of(slot()).prop_map(Change::refused),
        (slot(), 0..14_i32, select(whys.to_vec())).prop_map(|(slot, day, why)| {
            let day = day_zero().plus(day);
            Change::FeedPassedOver { slot, day, why }
        }),
        select(CropState::ALL.to_vec()).prop_map(|state| Change::CropSeen {
            state,
            feel: CropFeel::NotNoted,
        }),
        select(looks.to_vec()).prop_map(|look| Change::DroppingsSeen { look }),
        (select(Paper::ALL.to_vec()), 0..40_u8)
            .prop_map(|(paper, count)| Change::DroppingsCounted { paper, count }),
        select(Sign::ALL.to_vec()).prop_map(|sign| Change::SignSeen { sign }),
        select(Sign::ALL.to_vec()).prop_map(|sign| Change::SignGone { sign }),
        (slot(), any::<bool>())
            .prop_map(|(slot, by_breeder)| Change::FeedDropped { slot, by_breeder }),
        slot().prop_map(|slot| Change::FeedBroughtBack { slot }),
        celsius.prop_map(|room| Change::RoomSeen { room }),
        select(vec![Role::Breeder, Role::AvianVet]).prop_map(|whom| Change::Called {
            whom,
            agreed: String::new(),
        }),
        Just(Change::SolidsSeen {
            what: String::new(),
            eaten: SolidsEaten::Little,
        }),
    ]
}

/// A plan, notes on any minute of twelve days, and the offset in which they are lived.
fn journals() -> impl Strategy<Value = Scenario> {
    let notes = proptest::collection::vec((0..12 * 1_440_i32, changes()), 0..80);
    (plans(), notes, -720..840_i32).prop_map(|(plan, notes, offset)| {
        let offset = Offset::from_minutes(offset);
        let mut script = Scenario::new(CHICK, plan, day_zero(), offset);
        for (minute, change) in notes {
            script.note(0, 0, minute, change);
        }
        script
    })
}

/// A macaw of `weeks` weeks and 1,000 g, home on day 0, on three feeds a day.
fn settled(weeks: i32, slots: usize) -> Scenario {
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    plan.hatched = Some(day_zero().plus(-7 * weeks));
    plan.reference = Some(Reference {
        weight: Grams::whole(1_000),
        day: day_zero(),
    });
    plan.feeds.drain(..3 - slots);
    Scenario::new(CHICK, plan, day_zero(), Offset::UTC)
}

/// What becomes of the last feeds of a run.
#[derive(Debug, Clone, Copy)]
enum Instead {
    Nothing,
    Refusal,
}

/// Feeds at their times on days 0 to 5, the last `count` before `minute` of day 5 left out or refused.
fn with_last_feeds(weeks: i32, slots: usize, minute: i32, count: usize, instead: Instead) -> Level {
    let mut script = settled(weeks, slots);
    for day in 0..=5 {
        script.weigh(day, 1_000);
    }
    let feeds = script.chick().unwrap().plan.feeds;
    let mut times: Vec<(i32, i32, Slot)> = (0..=5)
        .flat_map(|day| {
            feeds
                .iter()
                .map(move |feed| (day, feed.time.minutes(), feed.slot))
        })
        .filter(|(day, time, _)| day * 1_440 + time <= 5 * 1_440 + minute)
        .collect();
    let kept = times.len().saturating_sub(count);
    let last = times.split_off(kept);
    for (day, time, slot) in times {
        script.feed(day, 0, time, slot, 80);
    }
    for (day, time, slot) in last {
        match instead {
            Instead::Nothing => {}
            Instead::Refusal => {
                script.note(day, 0, time, Change::refused(Some(slot)));
            }
        }
    }
    look(&script, 5, minute).level
}

proptest! {
    #[test]
    fn any_journal_has_an_answer_and_no_finding_is_settled(
        script in journals(),
        minute in 0..14 * 1_440_i32,
    ) {
        let outlook = look(&script, 0, minute);
        let highest = outlook.findings.iter().map(|finding| finding.level).max();
        prop_assert!(outlook.level >= highest.unwrap_or(Level::Settled));
        let levels: Vec<Level> = outlook.findings.iter().map(|finding| finding.level).collect();
        prop_assert!(levels.is_sorted_by(|first, second| first >= second));
        for finding in &outlook.findings {
            prop_assert!(finding.level != Level::Settled);
            for value in [finding.value, finding.limit] {
                if let Value::Pct(number) | Value::Times(number) = value {
                    prop_assert!(number.is_finite(), "{finding:?}");
                }
            }
        }
        let holds = &outlook.holds;
        prop_assert!(holds.is_sorted_by(|first, second| first.level >= second.level));
    }

    #[test]
    fn any_journal_can_be_read_out(script in journals(), minute in 0..14 * 1_440_i32) {
        let outlook = look(&script, 0, minute);
        for language in Language::ALL {
            let writing = Writing {
                mass: MassUnit::Ounce,
                temperature: TemperatureUnit::Fahrenheit,
                ..Writing::metric(language)
            };
            for line in what_to_say(writing, &outlook) {
                prop_assert!(line.ends_with('.') && !line.contains(['{', '}']), "{line}");
            }
            for finding in &outlook.findings {
                let title = finding_title(writing, finding);
                prop_assert!(!title.is_empty() && !title.contains(['{', '}']), "{title}");
                prop_assert!(!source_line(language, finding).is_empty());
            }
        }
    }

    #[test]
    fn a_lower_weight_never_lowers_the_level(
        weeks in 5..30_i32,
        days in 1..6_i32,
        heavier in 500..1_300_i32,
        lost in 0..400_i32,
    ) {
        let level = |grams| {
            let mut script = settled(weeks, 3);
            script.note(0, 6, 0, Change::Arrived);
            for day in 0..days {
                script.weigh(day, 1_000 + day * 5);
            }
            script.weigh(days, grams);
            look(&script, days, 8 * 60).level
        };
        let (before, after) = (level(heavier), level(heavier - lost));
        prop_assert!(after >= before, "{heavier} g: {before:?}, {lost} g less: {after:?}");
    }

    #[test]
    fn more_missed_or_refused_feeds_never_lower_the_level(
        weeks in 8..30_i32,
        // One feed of 80 ml is less than 12 % of the weight: a call of its own, as long as it is noted.
        slots in 2..=3_usize,
        minute in 0..1_440_i32,
        count in 0..8_usize,
    ) {
        for instead in [Instead::Nothing, Instead::Refusal] {
            let fewer = with_last_feeds(weeks, slots, minute, count, instead);
            let more = with_last_feeds(weeks, slots, minute, count + 1, instead);
            prop_assert!(more >= fewer, "{instead:?}: {count} {fewer:?}, one more {more:?}");
        }
    }

    #[test]
    fn time_without_a_note_never_lowers_the_level(
        weeks in 8..30_i32,
        slots in 1..=3_usize,
        minute in 0..5 * 1_440_i32,
        more in 0..2 * 1_440_i32,
    ) {
        let mut script = settled(weeks, slots);
        script.weigh(0, 1_000).feed(0, 21, 0, Slot::Bedtime, 80);
        let (earlier, later) = (minute + 22 * 60, minute + 22 * 60 + more);
        let (before, after) = (look(&script, 0, earlier).level, look(&script, 0, later).level);
        prop_assert!(after >= before, "{before:?} at {earlier} min, {after:?} at {later} min");
    }
}

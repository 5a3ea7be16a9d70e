//! Each criterion below, at and above its limit.

use perchlight::domain::journal::entries::{Change, Droppings, SolidsEaten, WhyPassedOver};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::journal::signs::Sign;
use perchlight::domain::plan::care_plan::{PlannedFeed, Slot};
use perchlight::domain::plan::parts::Author;
use perchlight::domain::quantity::evidence::Standing;
use perchlight::domain::quantity::units::Grams;
use perchlight::domain::time::moment::WallTime;
use perchlight::domain::warnings::level::{Finding, Level, RuleId, Value};
use perchlight::domain::weaning::criteria::Criterion;
use perchlight::domain::weaning::facts::Answer;
use perchlight::domain::weaning::{Verdict, may_offer_drop};

use crate::script::{
    CHICK, Without, answer, arrived, at, count, day_zero, dropped, droppings, earliest, evening,
    good_days, judged, offered, only_reason, plan, ready, ready_without, sign, solids, took,
};

#[test]
fn a_ready_chick_may_lose_its_first_feed_and_no_other() {
    let weaning = evening(&ready());
    assert_eq!(weaning.verdict, Verdict::MayDrop(Slot::Midday));
    assert_eq!(weaning.order, [Slot::Midday, Slot::Morning, Slot::Bedtime]);
    assert!(may_offer_drop(&weaning, Slot::Midday));
    assert!(!may_offer_drop(&weaning, Slot::Morning));
    assert!(!may_offer_drop(&weaning, Slot::Bedtime));
    let criteria: Vec<Criterion> = weaning.checks.iter().map(|check| check.criterion).collect();
    assert_eq!(criteria, Criterion::ALL);
}

#[test]
fn each_criterion_that_is_not_met_stops_the_drop_by_itself() {
    let cases = [
        (
            Without::Midday,
            Criterion::FeedUnwanted,
            Answer::NotEnoughData,
        ),
        (
            Without::Solids,
            Criterion::SolidsEaten,
            Answer::NotEnoughData,
        ),
        (
            Without::Droppings,
            Criterion::DroppingsNormal,
            Answer::NotEnoughData,
        ),
    ];
    for (without, criterion, expected) in cases {
        let weaning = evening(&ready_without(without));
        assert_eq!(only_reason(&weaning), criterion);
        assert_eq!(answer(&weaning, criterion), expected, "{criterion:?}");
    }
    let unweighed = evening(&ready_without(Without::Weight));
    let Verdict::NotYet { reasons, .. } = unweighed.verdict else {
        panic!("{:?}", unweighed.verdict);
    };
    assert_eq!(
        reasons,
        [Criterion::WeightNearPeak, Criterion::WeightSteady]
    );
}

#[test]
fn less_than_half_is_a_feed_not_wanted_and_half_is_not() {
    for (ml, expected) in [(29, Answer::Yes), (30, Answer::No), (31, Answer::No)] {
        let mut script = ready_without(Without::Midday);
        for day in 7..=9 {
            script.note(day, 14, 0, took(Slot::Midday, ml));
        }
        let weaning = evening(&script);
        assert_eq!(
            answer(&weaning, Criterion::FeedUnwanted),
            expected,
            "{ml} ml"
        );
    }
}

#[test]
fn a_chick_that_takes_all_of_a_small_offer_still_wants_the_feed() {
    let mut script = ready_without(Without::Midday);
    for day in 7..=9 {
        script.note(day, 14, 0, offered(Slot::Midday, 20, 20));
    }
    assert_eq!(
        answer(&evening(&script), Criterion::FeedUnwanted),
        Answer::No
    );
}

#[test]
fn two_days_refused_and_one_passed_over_are_not_three() {
    let mut script = ready_without(Without::Midday);
    script.note(7, 14, 0, Change::refused(Some(Slot::Midday)));
    script.leave_out(8, 14, 0, Slot::Midday, WhyPassedOver::NotPossible);
    script.note(9, 14, 0, Change::refused(Some(Slot::Midday)));
    let weaning = evening(&script);
    assert_eq!(
        answer(&weaning, Criterion::FeedUnwanted),
        Answer::NotEnoughData
    );
    assert_eq!(count(&weaning, Criterion::FeedUnwanted), 2);
    // refused on day 9; two more days in a row are needed: 10 and 11
    assert_eq!(earliest(&weaning), Some(11));
}

#[test]
fn a_feed_refused_and_taken_at_a_second_try_is_wanted() {
    let mut script = ready();
    script.note(9, 15, 0, took(Slot::Midday, 60));
    assert_eq!(
        answer(&evening(&script), Criterion::FeedUnwanted),
        Answer::No
    );
    // and the other way round
    let mut script = ready_without(Without::Midday);
    for day in 7..=9 {
        script.note(day, 14, 0, took(Slot::Midday, 60));
        script.note(day, 14, 20, Change::refused(Some(Slot::Midday)));
    }
    assert_eq!(
        answer(&evening(&script), Criterion::FeedUnwanted),
        Answer::No
    );
}

#[test]
fn refusing_another_feed_says_nothing_about_this_one() {
    let mut script = ready_without(Without::Midday);
    for day in 7..=9 {
        script.note(day, 14, 0, took(Slot::Midday, 60));
        script.note(day, 7, 5, Change::refused(Some(Slot::Morning)));
    }
    let weaning = evening(&script);
    assert_eq!(only_reason(&weaning), Criterion::FeedUnwanted);
    assert!(!may_offer_drop(&weaning, Slot::Morning));
}

#[test]
fn a_feed_still_to_come_today_is_not_a_feed_missed() {
    let mut script = arrived(plan());
    good_days(&mut script, 1, 8, Without::Nothing);
    // the morning of day 9: the three feeds before today's decide
    script.weigh(9, 1_000);
    let weaning = at(&script, 9, 8, 0);
    assert_eq!(weaning.verdict, Verdict::MayDrop(Slot::Midday));
}

#[test]
fn a_bedtime_feed_refused_after_midnight_belongs_to_the_evening() {
    let mut plan = plan();
    plan.drop_order = vec![Slot::Bedtime, Slot::Morning, Slot::Midday];
    let mut script = arrived(plan);
    for day in 7..=9 {
        script.note(day + 1, 0, 30, Change::refused(Some(Slot::Bedtime)));
    }
    let weaning = at(&script, 10, 6, 0);
    assert_eq!(answer(&weaning, Criterion::FeedUnwanted), Answer::Yes);
}

#[test]
fn playing_with_solids_is_not_eating_them() {
    for (eaten, expected) in [
        (SolidsEaten::Played, Answer::No),
        (SolidsEaten::Little, Answer::Yes),
        (SolidsEaten::Meal, Answer::Yes),
    ] {
        let mut script = ready_without(Without::Solids);
        for day in 7..=9 {
            script.note(day, 16, 0, solids(eaten));
        }
        // seen on the morning after, when day 9 is over
        let weaning = at(&script, 10, 6, 0);
        assert_eq!(
            answer(&weaning, Criterion::SolidsEaten),
            expected,
            "{eaten:?}"
        );
    }
}

#[test]
fn solids_on_two_of_three_days_are_not_enough() {
    let mut script = ready_without(Without::Solids);
    script.note(7, 16, 0, solids(SolidsEaten::Meal));
    script.note(8, 16, 0, solids(SolidsEaten::Meal));
    let weaning = evening(&script);
    // days 6, 7 and 8: today can still speak
    assert_eq!(answer(&weaning, Criterion::SolidsEaten), Answer::Yes);
    let weaning = at(&script, 10, 6, 0);
    assert_eq!(
        answer(&weaning, Criterion::SolidsEaten),
        Answer::NotEnoughData
    );
    assert_eq!(count(&weaning, Criterion::SolidsEaten), 2);
}

#[test]
fn one_bad_look_at_the_droppings_in_three_days_stops_the_drop() {
    for look in [
        Droppings::SmallOrFew,
        Droppings::Watery,
        Droppings::GreenOrBlack,
        Droppings::Undigested,
        Droppings::Bloody,
        Droppings::EmeraldGreen,
        Droppings::TarBlack,
        Droppings::LimeUrates,
        Droppings::LiquidStool,
    ] {
        for (day, expected) in [(6, Answer::Yes), (7, Answer::No), (9, Answer::No)] {
            let mut script = ready();
            script.note(day, 8, 0, droppings(look));
            let weaning = evening(&script);
            let found = answer(&weaning, Criterion::DroppingsNormal);
            assert_eq!(found, expected, "{look:?} on day {day}");
        }
    }
    for look in [Droppings::WetAfterFruit, Droppings::RedAfterFood] {
        let mut script = ready();
        script.note(9, 8, 0, droppings(look));
        let weaning = evening(&script);
        let found = answer(&weaning, Criterion::DroppingsNormal);
        assert_eq!(found, Answer::Yes, "{look:?}: food explains it");
    }
}

#[test]
fn no_feed_goes_before_the_settle_in_days_are_over() {
    let mut script = arrived(plan());
    good_days(&mut script, 1, 6, Without::Nothing);
    script.weigh(7, 1_000);
    // arrived on day 0 at 12:00
    let weaning = at(&script, 7, 11, 59);
    assert_eq!(only_reason(&weaning), Criterion::SettledIn);
    assert_eq!(earliest(&weaning), Some(7));
    assert_eq!(
        at(&script, 7, 12, 0).verdict,
        Verdict::MayDrop(Slot::Midday)
    );
}

#[test]
fn a_chick_whose_arrival_is_not_noted_settles_in_from_when_it_was_added() {
    let mut script = Scenario::new(
        CHICK,
        plan(),
        day_zero(),
        perchlight::domain::time::moment::Offset::UTC,
    );
    good_days(&mut script, 0, 6, Without::Nothing);
    script.weigh(7, 1_000);
    assert_eq!(only_reason(&at(&script, 7, 4, 59)), Criterion::SettledIn);
    assert_eq!(at(&script, 7, 7, 0).verdict, Verdict::MayDrop(Slot::Midday));
}

#[test]
fn no_second_feed_goes_within_the_waiting_days() {
    // (the plan's days, the days that hold): never fewer than five
    for (planned, held) in [(0, 5), (5, 5), (6, 6)] {
        let mut plan = plan();
        plan.waiting_days = planned;
        let mut script = arrived(plan);
        good_days(&mut script, 1, 16, Without::Nothing);
        for day in 1..=16 {
            script.note(day, 7, 10, Change::refused(Some(Slot::Morning)));
        }
        script.note(10, 10, 0, dropped(Slot::Midday));
        let before = at(&script, 10 + held, 9, 59);
        assert_eq!(answer(&before, Criterion::Waited), Answer::No);
        assert_eq!(
            answer(&at(&script, 10 + held, 10, 0), Criterion::Waited),
            Answer::Yes
        );
    }
}

#[test]
fn a_feed_brought_back_starts_the_waiting_days_again() {
    let mut script = ready();
    script.note(9, 15, 30, dropped(Slot::Midday));
    script.note(9, 20, 0, Change::FeedBroughtBack { slot: Slot::Midday });
    let weaning = evening(&script);
    assert_eq!(only_reason(&weaning), Criterion::Waited);
    assert_eq!(earliest(&weaning), Some(14));
}

#[test]
fn a_feed_that_a_new_plan_leaves_out_counts_as_a_drop() {
    let mut script = ready();
    let mut fewer = plan();
    fewer.feeds.retain(|feed| feed.slot != Slot::Midday);
    script.set_plan(9, 15, 0, &fewer, Author::OWNER);
    for day in 7..=9 {
        script.note(day, 7, 10, Change::refused(Some(Slot::Morning)));
    }
    let weaning = evening(&script);
    assert_eq!(weaning.next(), Some(Slot::Morning));
    // the midday feed was last noted on day 9
    assert_eq!(answer(&weaning, Criterion::Waited), Answer::No);
}

#[test]
fn a_sign_of_trouble_stops_drops_for_a_week() {
    let kinds = Sign::ALL.into_iter();
    for kind in kinds.filter(|kind| *kind != Sign::BroughtBackOnce) {
        let mut script = arrived(plan());
        good_days(&mut script, 1, 9, Without::Nothing);
        script.note(2, 21, 30, sign(kind));
        let weaning = at(&script, 9, 21, 29);
        assert_eq!(only_reason(&weaning), Criterion::NoTrouble, "{kind:?}");
        let weaning = at(&script, 9, 21, 30);
        assert_eq!(weaning.verdict, Verdict::MayDrop(Slot::Midday), "{kind:?}");
    }
}

#[test]
fn trouble_lasts_until_it_is_noted_as_gone() {
    let mut script = ready();
    script.note(1, 8, 0, sign(Sign::Dull));
    assert_eq!(evening(&script).verdict, Verdict::MayDrop(Slot::Midday));
    script.note(4, 8, 0, Change::SignGone { sign: Sign::Dull });
    let weaning = evening(&script);
    assert_eq!(only_reason(&weaning), Criterion::NoTrouble);
    assert_eq!(earliest(&weaning), Some(11));
}

#[test]
fn anything_to_ring_about_stops_the_drop() {
    let script = ready();
    for level in Level::ALL {
        let finding = Finding {
            rule: RuleId::NoWeighing,
            level,
            value: Value::Seen,
            limit: Value::Seen,
            standing: Standing::Ours,
        };
        let weaning = judged(&script, script.at(9, 22, 0), &[finding], Some(100.0));
        if level < Level::CallBreeder {
            assert_eq!(weaning.verdict, Verdict::MayDrop(Slot::Midday), "{level:?}");
            assert!(!weaning.is_call_first);
        } else {
            assert_eq!(only_reason(&weaning), Criterion::NobodyToCall, "{level:?}");
            assert_eq!(earliest(&weaning), None);
            assert!(weaning.is_call_first);
        }
    }
}

#[test]
fn feeds_go_in_the_plans_order_and_those_it_leaves_out_go_last() {
    let mut plan = plan();
    plan.drop_order = vec![Slot::Morning];
    let evening_feed = PlannedFeed {
        slot: Slot::Evening,
        ..plan.feeds[2]
    };
    plan.feeds.insert(2, evening_feed);
    let weaning = at(&arrived(plan), 9, 22, 0);
    // The rest in the trade's order, bedtime last.
    assert_eq!(
        weaning.order,
        [Slot::Morning, Slot::Midday, Slot::Evening, Slot::Bedtime]
    );
}

#[test]
fn what_is_answered_no_comes_before_what_is_not_known() {
    let mut script = ready_without(Without::Solids);
    script.note(9, 14, 10, took(Slot::Midday, 60));
    let weaning = at(&script, 10, 6, 0);
    let Verdict::NotYet { reasons, .. } = &weaning.verdict else {
        panic!("{:?}", weaning.verdict);
    };
    assert_eq!(reasons, &[Criterion::FeedUnwanted, Criterion::SolidsEaten]);
}

#[test]
fn a_feed_left_out_today_ends_a_row_of_refusals() {
    let mut script = ready_without(Without::Midday);
    for day in 6..=8 {
        script.note(day, 14, 0, Change::refused(Some(Slot::Midday)));
    }
    // not yet noted today, the three days before count
    let noon = at(&script, 9, 12, 0);
    assert_eq!(answer(&noon, Criterion::FeedUnwanted), Answer::Yes);
    script.leave_out(9, 14, 0, Slot::Midday, WhyPassedOver::NotPossible);
    let weaning = evening(&script);
    assert_eq!(
        answer(&weaning, Criterion::FeedUnwanted),
        Answer::NotEnoughData
    );
}

#[test]
fn three_days_that_agree_have_no_day_still_to_come() {
    let weaning = evening(&ready());
    for criterion in [
        Criterion::FeedUnwanted,
        Criterion::SolidsEaten,
        Criterion::DroppingsNormal,
    ] {
        let mut checks = weaning.checks.iter();
        let check = checks.find(|check| check.criterion == criterion).unwrap();
        assert_eq!((check.answer, check.met_from), (Answer::Yes, None));
    }
}

/// One feed a day at this time, refused at these days, hours and minutes; the answer at 23:00 of day 9.
fn one_feed(hour: i32, minute: i32, refused: [(i32, i32, i32); 3]) -> Answer {
    let slot = Slot::Bedtime;
    let mut plan = plan();
    plan.feeds.retain(|feed| feed.slot == slot);
    plan.feeds[0].time = WallTime::from_minutes(hour * 60 + minute);
    let mut script = arrived(plan);
    for (day, hour, minute) in refused {
        script.note(day, hour, minute, Change::refused(Some(slot)));
    }
    answer(&at(&script, 9, 23, 0), Criterion::FeedUnwanted)
}

#[test]
fn a_refusal_belongs_to_the_last_feed_whose_time_had_come_or_was_six_hours_away() {
    // half an hour after midnight it is the evening's, an hour and a half late it is still today's
    let refused = [(8, 0, 30), (9, 0, 30), (9, 21, 0)];
    assert_eq!(one_feed(21, 0, refused), Answer::Yes);
    let refused = [(7, 22, 30), (8, 22, 30), (9, 22, 30)];
    assert_eq!(one_feed(21, 0, refused), Answer::Yes);
    // planned half an hour after midnight, refused just before it
    let refused = [(6, 23, 50), (7, 23, 50), (9, 0, 20)];
    assert_eq!(one_feed(0, 30, refused), Answer::Yes);
    // six hours before it is the day's own, a minute more and it is that of the day before
    let refused = [(7, 21, 0), (8, 15, 0), (9, 15, 0)];
    assert_eq!(one_feed(21, 0, refused), Answer::Yes);
    let refused = [(8, 14, 59), (9, 14, 59), (9, 21, 0)];
    assert_eq!(one_feed(21, 0, refused), Answer::Yes);
    let refused = [(8, 2, 59), (9, 2, 59), (9, 9, 0)];
    assert_eq!(one_feed(9, 0, refused), Answer::Yes);
}

#[test]
fn a_sign_seen_again_counts_from_then_and_not_from_when_it_was_first_gone() {
    let mut script = ready();
    script.note(2, 10, 0, sign(Sign::Vomiting));
    script.note(
        2,
        20,
        0,
        Change::SignGone {
            sign: Sign::Vomiting,
        },
    );
    let calm = evening(&script);
    assert_eq!(answer(&calm, Criterion::NoTrouble), Answer::Yes);
    script.note(8, 10, 0, sign(Sign::Vomiting));
    assert_eq!(
        answer(
            &judged(&script, script.at(9, 22, 0), &[], Some(100.0)),
            Criterion::NoTrouble
        ),
        Answer::No
    );
}

#[test]
fn food_that_came_back_once_stops_no_drop_and_twice_does() {
    let mut script = ready();
    script.note(7, 10, 0, sign(Sign::BroughtBackOnce));
    let once = evening(&script);
    assert_eq!(answer(&once, Criterion::NoTrouble), Answer::Yes);
    script.note(8, 10, 0, sign(Sign::BroughtBackOnce));
    let twice = evening(&script);
    assert_eq!(answer(&twice, Criterion::NoTrouble), Answer::No);
}

#[test]
fn a_level_week_below_a_fat_peak_locks_no_weaning_up() {
    // 88 % of the peak; steps of 1 g a day on 1,000 g are 0.1 % a day, of 3 g 0.3 %
    let near_peak = |step: i32, target: Option<i32>, weeks: i32| {
        let mut plan = plan();
        plan.target = target.map(Grams::whole);
        plan.hatched = plan.hatched.map(|day| day.plus(-7 * weeks));
        let mut script = arrived(plan);
        for day in 3..=9 {
            script.weigh(day, 1_000 - step * day);
        }
        let now = script.at(9, 22, 0);
        answer(
            &judged(&script, now, &[], Some(88.0)),
            Criterion::WeightNearPeak,
        )
    };
    assert_eq!(near_peak(1, None, 10), Answer::Yes);
    assert_eq!(near_peak(3, None, 10), Answer::No);
    // 991 g: 90 % of 1,101 g, below 90 % of 1,102 g
    assert_eq!(near_peak(1, Some(1_101), 10), Answer::Yes);
    assert_eq!(near_peak(1, Some(1_102), 10), Answer::No);
    assert_eq!(near_peak(1, None, 0), Answer::No, "too young to be weaned");
}

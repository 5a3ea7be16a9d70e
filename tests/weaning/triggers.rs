//! Each trigger that brings a feed back, below, at and above its limit.

use perchlight::domain::journal::entries::{Change, Droppings};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::journal::signs::Sign;
use perchlight::domain::plan::care_plan::Slot;
use perchlight::domain::quantity::evidence::Standing;
use perchlight::domain::warnings::level::{Finding, Level, RuleId, Value};
use perchlight::domain::weaning::facts::Answer;
use perchlight::domain::weaning::triggers::Trigger;
use perchlight::domain::weaning::{Verdict, Weaning};

use crate::script::{
    Without, arrived, at, dropped, droppings, good_days, judged, plan, ready, sign, weighed,
};

fn answer(weaning: &Weaning, trigger: Trigger) -> Answer {
    weaning.trigger(trigger).unwrap().answer
}

fn bring_back(slot: Slot, trigger: Trigger) -> Verdict {
    Verdict::BringBack {
        slot,
        triggers: vec![trigger],
    }
}

/// Midday was dropped on day 9 at 10:00, at 1,000 g.
fn without_midday() -> Scenario {
    let mut script = ready();
    script.note(9, 10, 0, dropped(Slot::Midday));
    script
}

fn finding(rule: RuleId, level: Level) -> Finding {
    Finding {
        rule,
        level,
        value: Value::Seen,
        limit: Value::Seen,
        standing: Standing::Ours,
    }
}

#[test]
fn with_every_feed_given_there_is_nothing_to_bring_back() {
    let ill = finding(RuleId::SignSeen(Sign::Limp), Level::Emergency);
    let script = ready();
    let weaning = judged(&script, script.at(9, 22, 0), &[ill], Some(70.0));
    assert!(weaning.triggers.is_empty());
    assert!(matches!(weaning.verdict, Verdict::NotYet { .. }));
}

#[test]
fn nothing_is_brought_back_from_a_chick_that_does_well() {
    let mut script = without_midday();
    good_days(&mut script, 10, 11, Without::Midday);
    let weaning = at(&script, 11, 22, 0);
    assert!(matches!(weaning.verdict, Verdict::NotYet { .. }));
    let listed: Vec<Trigger> = weaning.triggers.iter().map(|check| check.trigger).collect();
    assert_eq!(listed, Trigger::ALL);
    for trigger in Trigger::ALL {
        assert_eq!(answer(&weaning, trigger), Answer::No, "{trigger:?}");
    }
}

#[test]
fn a_loss_of_three_per_cent_in_three_days_brings_the_feed_back() {
    // of 1,000.0 g at the drop: 2.9, 3.0 and 3.1 %
    for (tenths, expected) in [
        (9_710, Answer::No),
        (9_700, Answer::Yes),
        (9_690, Answer::Yes),
    ] {
        for day in 10..=12 {
            let mut script = without_midday();
            script.note(day, 6, 45, weighed(tenths));
            let weaning = at(&script, day, 7, 0);
            assert_eq!(
                answer(&weaning, Trigger::LossSinceDrop),
                expected,
                "{tenths} on {day}"
            );
            assert_eq!(
                weaning.verdict == bring_back(Slot::Midday, Trigger::LossSinceDrop),
                expected == Answer::Yes
            );
        }
    }
}

#[test]
fn a_loss_from_the_fourth_day_on_is_not_the_drops() {
    let mut script = without_midday();
    script.weigh(12, 990).weigh(13, 960);
    assert_eq!(
        answer(&at(&script, 13, 7, 0), Trigger::LossSinceDrop),
        Answer::No
    );
}

#[test]
fn a_loss_counts_from_the_feeds_own_drop_and_not_from_what_was_changed_after_it() {
    let mut script = without_midday();
    script.note(9, 11, 0, dropped(Slot::Morning));
    // 3.5 % of 1,000 g before the morning feed came back, nothing after it
    script.weigh(10, 965);
    let slot = Slot::Morning;
    script.note(10, 10, 0, Change::FeedBroughtBack { slot });
    script.weigh(11, 965);
    let weaning = at(&script, 11, 7, 0);
    assert_eq!(
        weaning.verdict,
        bring_back(Slot::Midday, Trigger::LossSinceDrop)
    );
}

#[test]
fn a_loss_that_was_regained_no_longer_brings_the_feed_back() {
    let mut script = without_midday();
    script.weigh(12, 965);
    assert_eq!(
        answer(&at(&script, 14, 7, 0), Trigger::LossSinceDrop),
        Answer::Yes
    );
    script.weigh(14, 985);
    assert_eq!(
        answer(&at(&script, 14, 7, 0), Trigger::LossSinceDrop),
        Answer::No
    );
}

#[test]
fn without_a_weighing_before_and_after_the_drop_the_loss_is_not_known() {
    let weaning = at(&without_midday(), 10, 6, 0);
    assert_eq!(
        answer(&weaning, Trigger::LossSinceDrop),
        Answer::NotEnoughData
    );
    let mut script = arrived(plan());
    script.weigh(5, 1_000);
    script.note(9, 10, 0, dropped(Slot::Midday));
    script.weigh(11, 900);
    assert_eq!(
        answer(&at(&script, 11, 7, 0), Trigger::LossSinceDrop),
        Answer::NotEnoughData
    );
}

#[test]
fn below_ninety_per_cent_of_the_peak_brings_the_feed_back() {
    let mut script = without_midday();
    let level = judged(&script, script.at(9, 22, 0), &[], Some(89.9));
    assert_eq!(
        answer(&level, Trigger::BelowPeak),
        Answer::No,
        "a level week"
    );
    // with the 1,000 g of each day a median of 1,000 - 2.5 g a day: 0.25 % a day
    for day in 3..=9 {
        script.note(day, 6, 50, weighed((1_000 - 5 * day) * 10));
    }
    let judge = |pct| judged(&script, script.at(9, 22, 0), &[], pct);
    assert_eq!(answer(&judge(Some(90.0)), Trigger::BelowPeak), Answer::No);
    assert_eq!(
        judge(Some(89.9)).verdict,
        bring_back(Slot::Midday, Trigger::BelowPeak)
    );
    assert_eq!(
        answer(&judge(None), Trigger::BelowPeak),
        Answer::NotEnoughData
    );
}

#[test]
fn begging_on_two_days_brings_the_feed_back_and_one_day_does_not() {
    let mut script = without_midday();
    script.note(10, 10, 0, sign(Sign::BegsAllDay));
    script.note(10, 18, 0, sign(Sign::BegsAllDay));
    assert_eq!(
        answer(&at(&script, 11, 7, 0), Trigger::BegsAllDay),
        Answer::No
    );
    script.note(12, 10, 0, sign(Sign::BegsAllDay));
    assert_eq!(
        at(&script, 12, 11, 0).verdict,
        bring_back(Slot::Midday, Trigger::BegsAllDay)
    );
    // day 10 is no longer among the last three
    assert_eq!(
        answer(&at(&script, 13, 7, 0), Trigger::BegsAllDay),
        Answer::No
    );
}

#[test]
fn begging_that_is_gone_no_longer_counts() {
    let mut script = without_midday();
    script.note(10, 10, 0, sign(Sign::BegsAllDay));
    script.note(11, 10, 0, sign(Sign::BegsAllDay));
    script.note(
        11,
        20,
        0,
        Change::SignGone {
            sign: Sign::BegsAllDay,
        },
    );
    assert_eq!(
        answer(&at(&script, 11, 19, 0), Trigger::BegsAllDay),
        Answer::Yes
    );
    assert_eq!(
        answer(&at(&script, 11, 21, 0), Trigger::BegsAllDay),
        Answer::No
    );
}

#[test]
fn small_dark_or_few_droppings_bring_the_feed_back() {
    let mut script = without_midday();
    script.note(10, 10, 0, droppings(Droppings::SmallOrFew));
    let weaning = at(&script, 12, 9, 59);
    assert_eq!(
        weaning.verdict,
        bring_back(Slot::Midday, Trigger::DroppingsSmall)
    );
    // two days later the look is too old to say
    let weaning = at(&script, 12, 10, 0);
    assert_eq!(
        answer(&weaning, Trigger::DroppingsSmall),
        Answer::NotEnoughData
    );
    script.note(10, 18, 0, droppings(Droppings::Normal));
    assert_eq!(
        answer(&at(&script, 11, 7, 0), Trigger::DroppingsSmall),
        Answer::No
    );
}

#[test]
fn an_illness_brings_the_feed_back_and_a_feed_too_large_does_not() {
    let script = without_midday();
    let judge = |found: Finding| judged(&script, script.at(9, 22, 0), &[found], Some(100.0));
    let dull = RuleId::SignSeen(Sign::Dull);
    let weaning = judge(finding(dull, Level::VetToday));
    assert_eq!(weaning.verdict, bring_back(Slot::Midday, Trigger::Illness));
    assert!(weaning.is_call_first);
    let loss = judge(finding(RuleId::HandoverLoss, Level::CallBreeder));
    assert_eq!(loss.verdict, bring_back(Slot::Midday, Trigger::Illness));
    assert_eq!(
        answer(&judge(finding(dull, Level::Watch)), Trigger::Illness),
        Answer::No
    );
    for rule in [
        RuleId::MissedFeeds,
        RuleId::NoWeighing,
        RuleId::VolumeOverCeiling,
        RuleId::GapTooShort,
        RuleId::TransitGap,
        RuleId::ServedHot,
        RuleId::ServedCold,
        RuleId::RoomTemperature,
        RuleId::VetVisitDue,
    ] {
        let weaning = judge(finding(rule, Level::VetToday));
        assert_eq!(answer(&weaning, Trigger::Illness), Answer::No, "{rule:?}");
        assert!(matches!(weaning.verdict, Verdict::NotYet { .. }));
    }
}

#[test]
fn the_latest_drop_comes_back_first_and_the_evidence_is_then_used_up() {
    let mut script = ready();
    let by_breeder = true;
    for (day, slot) in [(9, Slot::Midday), (10, Slot::Morning)] {
        script.note(day, 10, 0, Change::FeedDropped { slot, by_breeder });
    }
    script.note(10, 12, 0, sign(Sign::BegsAllDay));
    script.note(11, 12, 0, sign(Sign::BegsAllDay));
    script.note(11, 12, 5, droppings(Droppings::SmallOrFew));
    let both = vec![Trigger::BegsAllDay, Trigger::DroppingsSmall];
    assert_eq!(
        at(&script, 11, 13, 0).verdict,
        Verdict::BringBack {
            slot: Slot::Morning,
            triggers: both
        }
    );
    script.note(
        11,
        14,
        0,
        Change::FeedBroughtBack {
            slot: Slot::Morning,
        },
    );
    let weaning = at(&script, 11, 15, 0);
    assert_eq!(weaning.dropped, [Slot::Midday]);
    assert!(matches!(weaning.verdict, Verdict::NotYet { .. }));
}

#[test]
fn a_feed_comes_back_also_while_the_chick_settles_in() {
    let mut script = arrived(plan());
    script.weigh(1, 1_000);
    let by_breeder = true;
    let slot = Slot::Midday;
    script.note(1, 10, 0, Change::FeedDropped { slot, by_breeder });
    script.weigh(2, 969);
    assert_eq!(
        at(&script, 2, 7, 0).verdict,
        bring_back(slot, Trigger::LossSinceDrop)
    );
}

#[test]
fn begging_and_droppings_count_again_after_a_feed_was_brought_back() {
    let slot = Slot::Morning;
    let mut script = without_midday();
    script.note(9, 11, 0, dropped(slot));
    script.note(10, 8, 0, Change::FeedBroughtBack { slot });
    // in the minute of that step it was still what the step answered
    script.note(10, 8, 0, sign(Sign::BegsAllDay));
    script.note(10, 8, 0, droppings(Droppings::SmallOrFew));
    script.note(11, 8, 0, sign(Sign::BegsAllDay));
    let weaning = at(&script, 11, 9, 0);
    assert_eq!(answer(&weaning, Trigger::BegsAllDay), Answer::No);
    assert_eq!(
        answer(&weaning, Trigger::DroppingsSmall),
        Answer::NotEnoughData
    );
    script.note(12, 8, 0, sign(Sign::BegsAllDay));
    let weaning = at(&script, 12, 9, 0);
    assert_eq!(answer(&weaning, Trigger::BegsAllDay), Answer::Yes);
}

#[test]
fn begging_counts_again_after_it_was_gone() {
    let mut script = without_midday();
    let gone = Change::SignGone {
        sign: Sign::BegsAllDay,
    };
    script.note(10, 8, 0, gone);
    script.note(10, 8, 0, sign(Sign::BegsAllDay));
    script.note(11, 8, 0, sign(Sign::BegsAllDay));
    let weaning = at(&script, 11, 9, 0);
    assert_eq!(answer(&weaning, Trigger::BegsAllDay), Answer::No);
    script.note(12, 8, 0, sign(Sign::BegsAllDay));
    let weaning = at(&script, 12, 9, 0);
    assert_eq!(answer(&weaning, Trigger::BegsAllDay), Answer::Yes);
}

#[test]
fn the_weight_at_the_drop_is_of_the_day_and_a_half_before_or_of_the_day_after() {
    // dropped on day 9 at 10:00; 36 h before is day 7, 22:00
    let loss = |hour, minute| {
        let mut script = arrived(plan());
        script.note(7, hour, minute, weighed(10_000));
        script.note(9, 10, 0, dropped(Slot::Midday));
        script.note(9, 18, 0, weighed(9_600));
        script.note(11, 6, 45, weighed(9_600));
        answer(&at(&script, 11, 7, 0), Trigger::LossSinceDrop)
    };
    assert_eq!(loss(22, 1), Answer::Yes);
    // too old: the weight of the evening after the drop stands for it, and nothing was lost since
    assert_eq!(loss(22, 0), Answer::No);
}

#[test]
fn a_weighing_in_the_minute_of_the_drop_is_the_weight_at_it() {
    let mut script = arrived(plan());
    script.note(9, 10, 0, dropped(Slot::Midday));
    script.note(9, 10, 0, weighed(10_000));
    let weaning = at(&script, 9, 11, 0);
    assert_eq!(
        answer(&weaning, Trigger::LossSinceDrop),
        Answer::NotEnoughData
    );
}

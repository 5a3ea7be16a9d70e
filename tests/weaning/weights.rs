//! The criteria of weight below, at and above their limits.

use perchlight::domain::journal::entries::{Change, CropAtWeighing};
use perchlight::domain::plan::care_plan::Slot;
use perchlight::domain::quantity::units::Grams;
use perchlight::domain::warnings::level::Value;
use perchlight::domain::weaning::criteria::Criterion;
use perchlight::domain::weaning::facts::Answer;
use perchlight::domain::weaning::{Verdict, Weaning};
use perchlight::domain::weight::mornings::{Morning, mornings, steady_mornings_needed};

use crate::script::{
    Without, answer, arrived, at, day, earliest, evening, good_days, judged, only_reason, plan,
    ready, ready_without, weighed,
};

#[test]
fn ninety_per_cent_of_the_peak_is_enough_and_less_is_not() {
    let script = ready();
    let now = script.at(9, 22, 0);
    for (pct, expected) in [(89.9, Answer::No), (90.0, Answer::Yes), (90.1, Answer::Yes)] {
        let weaning = judged(&script, now, &[], Some(pct));
        assert_eq!(
            answer(&weaning, Criterion::WeightNearPeak),
            expected,
            "{pct} %"
        );
    }
    let weaning = judged(&script, now, &[], Some(89.9));
    assert_eq!(earliest(&weaning), None);
    let weaning = judged(&script, now, &[], None);
    assert_eq!(only_reason(&weaning), Criterion::WeightNearPeak);
    assert_eq!(
        answer(&weaning, Criterion::WeightNearPeak),
        Answer::NotEnoughData
    );
}

#[test]
fn a_weight_of_a_day_and_a_half_ago_is_too_old() {
    let mut script = ready_without(Without::Weight);
    script.weigh(7, 1_000).weigh(8, 1_000);
    // weighed on day 8 at 06:45; 36 h later is day 9, 18:45
    for (hour, minute, expected) in [(18, 44, Answer::Yes), (18, 45, Answer::NotEnoughData)] {
        let weaning = at(&script, 9, hour, minute);
        assert_eq!(answer(&weaning, Criterion::WeightNearPeak), expected);
        assert_eq!(answer(&weaning, Criterion::WeightSteady), expected);
    }
}

/// A chick weighed on days 5 to 9, its middle weight 1,000 g.
fn with_slope(tenths_a_day: i32) -> Weaning {
    let mut script = arrived(plan());
    good_days(&mut script, 1, 4, Without::Nothing);
    good_days(&mut script, 5, 9, Without::Weight);
    for day in 5..=9 {
        script.note(day, 6, 45, weighed(10_000 + tenths_a_day * (day - 7)));
    }
    evening(&script)
}

#[test]
fn a_loss_of_one_per_cent_a_day_is_steady_and_more_is_not() {
    // of 1,000 g: 9.9, 10 and 10.1 g a day
    for (tenths, expected) in [(-99, Answer::Yes), (-100, Answer::Yes), (-101, Answer::No)] {
        let weaning = with_slope(tenths);
        assert_eq!(
            answer(&weaning, Criterion::WeightSteady),
            expected,
            "{tenths}"
        );
        assert_eq!(
            weaning.steady_mornings_needed.is_none(),
            expected == Answer::Yes
        );
    }
    assert_eq!(with_slope(200).verdict, Verdict::MayDrop(Slot::Midday));
    let Some(Value::Pct(slope)) = with_slope(-150)
        .check(Criterion::WeightSteady)
        .unwrap()
        .value
    else {
        panic!("a slope is a share");
    };
    assert!((slope + 1.5).abs() < 1e-9);
}

#[test]
fn one_full_crop_reading_does_not_hide_a_fall() {
    let mut script = arrived(plan());
    good_days(&mut script, 1, 4, Without::Nothing);
    good_days(&mut script, 5, 9, Without::Weight);
    for (day, grams) in (5..=9).zip([1_030, 1_015, 1_000, 985, 1_060]) {
        script.weigh(day, grams);
    }
    // Six of the ten pairs lie on -15 g a day, so that is their median; so it was before the last.
    assert_eq!(
        answer(&evening(&script), Criterion::WeightSteady),
        Answer::No
    );
}

#[test]
fn two_mornings_make_no_slope_and_three_do() {
    let mut script = arrived(plan());
    script.weigh(8, 1_000);
    let weaning = evening(&script);
    assert_eq!(
        answer(&weaning, Criterion::WeightSteady),
        Answer::NotEnoughData
    );
    // mornings of days 10 and 11 make three
    assert_eq!(weaning.steady_mornings_needed, Some(2));
    script.weigh(9, 1_000);
    assert_eq!(
        answer(&evening(&script), Criterion::WeightSteady),
        Answer::NotEnoughData
    );
    script.weigh(7, 1_000);
    assert_eq!(
        answer(&evening(&script), Criterion::WeightSteady),
        Answer::Yes
    );
}

#[test]
fn a_steady_fall_needs_two_more_mornings_at_the_last_weight() {
    // 1050, 1035, 1020, 1005, 990: -15 a day, 1.5 %. With one more 990 the median of the ten slopes of
    // the last five mornings is still -15. With two more, 1020 1005 990 990 990, the slopes are -15
    // (three times), -10, -7.5 (twice), -5 and 0 (three times): median -7.5, 0.8 % of 990.
    let mut script = arrived(plan());
    good_days(&mut script, 1, 4, Without::Nothing);
    good_days(&mut script, 5, 9, Without::Weight);
    for (day, grams) in (5..=9).zip([1_050, 1_035, 1_020, 1_005, 990]) {
        script.weigh(day, grams);
    }
    let weaning = evening(&script);
    assert_eq!(only_reason(&weaning), Criterion::WeightSteady);
    assert_eq!(weaning.steady_mornings_needed, Some(2));
    assert_eq!(earliest(&weaning), Some(11));
}

#[test]
fn a_full_crop_and_a_weighing_still_to_come_are_no_mornings() {
    let mut script = arrived(plan());
    script.weigh(1, 1_000).weigh(2, 1_001);
    let crop = CropAtWeighing::AfterFeed;
    let weight = Grams::whole(1_050);
    script.note(2, 9, 0, Change::Weighed { weight, crop });
    script.weigh(3, 1_002);
    let found = mornings(script.at(2, 12, 0), &script.chick().unwrap());
    let grams: Vec<f64> = found.iter().map(|morning| morning.grams).collect();
    assert_eq!(grams, [1_000.0, 1_001.0]);
}

#[test]
fn the_mornings_behind_count_in_how_many_more_must_be_steady() {
    // 1,000 g to 840 g in five mornings. With two more at 840 g the slopes of all pairs of the last
    // five have the median -20 g a day, 2.4 %; with three more it is none.
    let fall = [1_000.0, 960.0, 920.0, 880.0, 840.0];
    let mornings: Vec<Morning> = (5..)
        .zip(fall)
        .map(|(number, grams)| Morning {
            day: day(number),
            grams,
        })
        .collect();
    assert_eq!(steady_mornings_needed(&mornings, day(9)), 3);
}

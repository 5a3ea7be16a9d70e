//! What the trend of a chick's weight says, on scripted and on simulated chicks.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::float_cmp,
    reason = "a test may stop at the first surprise"
)]

use perchlight::domain::journal::entries::{Change, ChickId, CropAtWeighing};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::plan::care_plan::{CarePlan, Reference, Slot};
use perchlight::domain::plan::parts::Author;
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::Grams;
use perchlight::domain::time::moment::{Day, Offset};
use perchlight::domain::weight::doubt::doubt;
use perchlight::domain::weight::trend::{WeightTrend, expected_reading, weight_trend};
use proptest::prelude::{ProptestConfig, prop};
use proptest::{prop_assert, proptest};

/// A chick of this handover weight on day 0; the limit lies 10 % below it.
fn chick_of(handover_g: i32) -> Scenario {
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    let day = Day::from_date(2026, 11, 2).unwrap();
    let weight = Grams::whole(handover_g);
    plan.reference = Some(Reference { weight, day });
    Scenario::new(ChickId([9; 12]), plan, day, Offset::UTC)
}

/// The mornings from day 1 on.
fn weighed(handover_g: i32, mornings: &[i32]) -> Scenario {
    let mut script = chick_of(handover_g);
    for (day, grams) in (1..).zip(mornings) {
        script.weigh(day, *grams);
    }
    script
}

/// The trend a minute after the weighing of a day.
fn trend_on(script: &Scenario, day: i32) -> WeightTrend {
    weight_trend(script.at(day, 6, 46), &script.chick().unwrap())
}

#[test]
fn a_chick_without_a_reading_has_no_trend() {
    assert_eq!(trend_on(&chick_of(1_040), 1), WeightTrend::default());
}

#[test]
fn one_reading_says_the_level_and_grows_vague_within_a_day() {
    let script = weighed(1_000, &[1_000]);
    let at_once = weight_trend(script.at(1, 6, 45), &script.chick().unwrap());
    let now = at_once.now.unwrap();
    // 0.5 % of the bird, 0.866 % of the scale and one and a half of its steps of 1 g.
    let scale = 5.0_f64.powi(2) + 8.66_f64.powi(2) + 1.5_f64.powi(2);
    assert_eq!(now.grams, 1_000.0);
    assert!((now.sd_g - scale.sqrt()).abs() < 1e-9);
    // A day on: 3² + 30² + 3²/3 g² more, from level, first slope (3 %) and slope (0.3 %).
    let next_day = weight_trend(script.at(2, 6, 45), &script.chick().unwrap());
    let sd_g = next_day.now.unwrap().sd_g;
    assert!((sd_g - (scale + 912.0).sqrt()).abs() < 1e-9, "{sd_g}");
}

#[test]
fn fewer_than_four_readings_foretell_nothing() {
    for mornings in [&[1_000][..], &[1_000, 960], &[1_000, 960, 920]] {
        let trend = trend_on(&weighed(1_040, mornings), 3);
        assert_eq!(trend.readings, mornings.len());
        assert!(trend.now.is_some_and(|now| now.pace.is_none()));
        assert!(trend.handover_loss_pct.is_some() && trend.peak.is_some());
        assert_eq!(
            (trend.slope, trend.below_limit, trend.crossing),
            (None, None, None)
        );
        assert_eq!(trend.fan, []);
    }
    let four = trend_on(&weighed(1_040, &[1_000, 990, 980, 970]), 4);
    assert!(four.slope.is_some() && four.below_limit.is_some() && !four.fan.is_empty());
}

#[test]
fn readings_minutes_apart_give_their_mean_and_no_wild_forecast() {
    let mut script = chick_of(1_000);
    for (minute, grams) in [(0, 1_000), (5, 1_012), (10, 996), (15, 1_008)] {
        let crop = CropAtWeighing::Empty;
        let weight = Grams::whole(grams);
        script.note(1, 7, minute, Change::Weighed { weight, crop });
    }
    let trend = weight_trend(script.at(1, 7, 15), &script.chick().unwrap());
    let now = trend.now.unwrap();
    assert!((now.grams - 1_004.0).abs() < 1.0, "{now:?}");
    // The pace stays what was thought possible at first, 3 % a day, and the fan ends within a day.
    let pace = now.pace.unwrap();
    assert!(
        pace.g_per_day.abs() < 3.0 && (pace.sd_g_per_day - 30.0).abs() < 0.5,
        "{pace:?}"
    );
    assert!(trend.is_fan_cut);
    assert!(
        trend
            .fan
            .iter()
            .all(|point| point.at <= script.at(2, 7, 15))
    );
}

#[test]
fn a_steady_chick_is_far_from_its_limit() {
    let script = weighed(1_000, &[1_002, 997, 1_001, 999, 1_003, 998, 1_000, 1_000]);
    let trend = trend_on(&script, 8);
    let now = trend.now.unwrap();
    // Eight readings say more than one, whose standard deviation is 10 g.
    assert!(
        (now.grams - 1_000.0).abs() < 3.0 && now.sd_g < 9.0,
        "{now:?}"
    );
    let pace = now.pace.unwrap();
    assert!(pace.g_per_day.abs() < pace.sd_g_per_day);
    let below = trend.below_limit.unwrap();
    assert_eq!(below.limit_g, 900.0);
    assert!(
        below.in_days.iter().all(|chance| *chance < 0.01),
        "{below:?}"
    );
    assert_eq!((trend.crossing, trend.doubted), (None, Vec::new()));
    assert!(!trend.is_fan_cut);
    let fan_end = trend.fan.last().unwrap();
    assert_eq!(fan_end.at, script.at(11, 6, 46));
}

#[test]
fn the_pace_in_words_is_the_pace_of_the_level() {
    let trend = trend_on(&weighed(1_040, &[1_000, 990, 985, 970]), 4);
    let (slope, now) = (trend.slope.unwrap(), trend.now.unwrap());
    let pace = now.pace.unwrap();
    assert_eq!(slope.g_per_day.value, pace.g_per_day);
    // 95 % of a normal distribution lie within 1.96 standard deviations.
    let half = slope.g_per_day.high - pace.g_per_day;
    assert!((half - 1.96 * pace.sd_g_per_day).abs() < 1e-3);
    assert!((slope.pct_per_day.value - pace.pct_per_day).abs() < 1e-9);
    assert_eq!(slope.readings, 4);
}

#[test]
fn a_sudden_fall_is_told_at_its_own_pace() {
    // Ten steady mornings, then 30 g a day.
    let mut script = weighed(
        1_000,
        &[1_001, 999, 1_000, 1_002, 998, 1_001, 999, 1_000, 1_001, 999],
    );
    for (day, grams) in (11..).zip([969, 941, 908]) {
        script.weigh(day, grams);
    }
    let slope = trend_on(&script, 13).slope.unwrap();
    assert!((slope.g_per_day.value + 30.0).abs() < 8.0, "{slope:?}");
}

#[test]
fn a_falling_chick_reaches_its_limit_when_the_straight_line_does() {
    // 1,040 g at handover, 10 g less every morning: 960 g on day 8, the limit of 936 g 2.4 days on.
    let mornings: Vec<i32> = (1..=8).map(|day| 1_040 - 10 * day).collect();
    let script = weighed(1_040, &mornings);
    let chick = script.chick().unwrap();
    let trend = trend_on(&script, 8);
    let below = trend.below_limit.unwrap();
    assert!(
        below.now < below.in_days[0] && below.in_days.is_sorted(),
        "{below:?}"
    );
    assert!(
        below.in_days[0] < 0.5 && 0.5 < below.in_days[2],
        "{below:?}"
    );
    let crossing = trend.crossing.unwrap();
    let likely = crossing.likely.days_since(script.at(8, 6, 45));
    assert!((likely - 2.4).abs() < 0.6, "{likely}");
    let latest = crossing.latest.unwrap();
    assert!(crossing.earliest < crossing.likely && crossing.likely < latest);
    // Waiting until the likely day, with no reading in between, the odds are even.
    let chance = weight_trend(crossing.likely, &chick)
        .below_limit
        .unwrap()
        .now;
    assert!((chance - 0.5).abs() < 1e-4, "{chance}");
    // Loss from the handover weight: 80 g of 1,040 g are 7.7 %.
    let loss = trend.handover_loss_pct.unwrap();
    assert!(
        (loss.value - 100.0 * 80.0 / 1_040.0).abs() < 0.3,
        "{loss:?}"
    );
    assert!(loss.low < loss.value && loss.value < loss.high);
}

#[test]
fn a_limit_already_passed_or_weeks_away_has_no_day() {
    let passed: Vec<i32> = (1..=8).map(|day| 960 - 10 * day).collect();
    let trend = trend_on(&weighed(1_040, &passed), 8);
    assert_eq!(trend.crossing, None);
    assert!(trend.below_limit.is_some_and(|below| 0.99 < below.now));
    // 2 g a day from 1,040 g need 52 days to 936 g.
    let slow: Vec<i32> = (1..=12).map(|day| 1_040 - 2 * day).collect();
    assert_eq!(trend_on(&weighed(1_040, &slow), 12).crossing, None);
}

#[test]
fn a_chick_that_falls_ill_is_followed_within_three_mornings() {
    // Ten steady mornings, then 3 % a day; the limit of 936 g lies half a day after the last.
    let mut mornings = vec![1_040; 10];
    mornings.extend([1_010, 980, 950]);
    let trend = trend_on(&weighed(1_040, &mornings), 13);
    assert_eq!(trend.doubted, []);
    assert!(
        trend
            .below_limit
            .is_some_and(|below| 0.5 < below.in_days[2])
    );
    assert!(
        trend
            .crossing
            .is_some_and(|crossing| crossing.latest.is_some())
    );
}

#[test]
fn one_reading_ten_per_cent_off_is_doubted_and_counts_for_less() {
    let plain: [i32; 10] = [
        1_000, 1_003, 998, 1_001, 997, 1_002, 1_000, 999, 1_001, 1_000,
    ];
    for (day, wild) in [(6_usize, 1_100), (6, 900), (10, 1_100), (10, 900)] {
        let mut mornings = plain;
        mornings[day - 1] = wild;
        let script = weighed(1_000, &mornings);
        let trend = trend_on(&script, 10);
        let doubted = script.chick().unwrap().weighings[day - 1].id;
        assert_eq!(trend.doubted, [doubted], "{wild} on day {day}");
        let level = trend.now.unwrap().grams;
        let without = trend_on(&weighed(1_000, &plain), 10).now.unwrap().grams;
        // On the day itself it moves by 4² · level variance / distance; four days later by less
        // than half of a reading's own 10 g.
        let before = weighed(1_000, &plain[..9]).chick().unwrap();
        let (expected, sd) = expected_reading(script.at(10, 6, 45), &before).unwrap();
        let level_var = sd * sd - (expected * expected / 10_000.0 + 1.0 / 12.0);
        let moved = 16.0 * level_var / (f64::from(wild) - expected);
        if day == 10 {
            let off = level - (expected + moved);
            assert!(
                off.abs() < 0.5,
                "{wild}: {level} instead of {expected} + {moved}"
            );
        } else {
            assert!((level - without).abs() < 5.0, "{wild}: {level}, {without}");
        }
        // A peak of 1,100 g that never was would make a loss of 9 %.
        let loss_pct = trend.peak_loss_pct.unwrap();
        assert!(wild < 1_000 || loss_pct < 2.0, "on day {day}: {loss_pct}");
    }
}

#[test]
fn a_weight_that_really_has_moved_is_believed_from_the_second_morning() {
    let script = weighed(1_000, &[1_000, 1_002, 999, 1_001, 1_000, 1_000, 920, 915]);
    let first = trend_on(&script, 7);
    assert_eq!(first.doubted.len(), 1);
    assert!(950.0 < first.now.unwrap().grams);
    let second = trend_on(&script, 8);
    assert_eq!(second.doubted, []);
    assert!(second.now.unwrap().grams < 940.0, "{:?}", second.now);
}

#[test]
fn weighing_again_within_the_hour_bears_nothing_out() {
    // The crop that was called empty and was not is still full ten minutes later.
    let mut script = weighed(1_000, &[1_000, 1_002, 999, 1_001, 1_000, 1_000, 1_090]);
    let weight = Grams::whole(1_090);
    let crop = CropAtWeighing::Empty;
    script.note(7, 6, 55, Change::Weighed { weight, crop });
    script.weigh(8, 1_000);
    let trend = trend_on(&script, 8);
    assert!(!trend.doubted.is_empty());
    assert!(
        (trend.now.unwrap().grams - 1_000.0).abs() < 15.0,
        "{:?}",
        trend.now
    );
}

#[test]
fn missing_days_widen_the_band_and_a_week_of_them_ends_the_forecast() {
    let mut script = weighed(1_000, &[1_000, 1_001, 999, 1_000, 1_000]);
    script.weigh(11, 1_000);
    let trend = trend_on(&script, 11);
    let sd_at = |day: i32| {
        let at = script.at(day, 6, 45);
        trend.path.iter().find(|point| point.at == at).unwrap().sd_g
    };
    assert!(sd_at(5) < sd_at(8), "{} {}", sd_at(5), sd_at(8));
    let gaps = trend
        .path
        .windows(2)
        .map(|pair| pair[1].at.days_since(pair[0].at));
    assert!(gaps.clone().all(|gap| 0.0 < gap && gap <= 0.5 + 1e-9));
    let later = |day| weight_trend(script.at(day, 6, 45), &script.chick().unwrap());
    let (fresh, old, stale) = (later(11), later(18), later(19));
    assert!(fresh.now.unwrap().sd_g < old.now.unwrap().sd_g);
    assert_eq!(
        (stale.now, stale.below_limit, stale.peak_loss_of_level_pct),
        (None, None, None)
    );
    assert_eq!(stale.fan, []);
    assert!(stale.peak.is_some() && stale.path.len() == trend.path.len());
}

#[test]
fn an_after_feed_reading_moves_the_level_less_than_a_morning_one() {
    let steady = [1_000, 1_000, 1_000, 1_000, 1_000];
    let level_after = |crop, grams| {
        let mut script = weighed(1_000, &steady);
        script.feed(6, 6, 30, Slot::Morning, 90);
        let weight = Grams::tenths_held(grams);
        script.note(6, 6, 45, Change::Weighed { weight, crop });
        trend_on(&script, 6).now.unwrap().grams
    };
    // 90 ml weigh 95.4 g, so both say 1,030 g of chick.
    let full = level_after(CropAtWeighing::AfterFeed, 11_254);
    let empty = level_after(CropAtWeighing::Empty, 10_300);
    assert!(
        1_000.0 < full && full < 1_005.0 && 1_008.0 < empty,
        "{full} {empty}"
    );
}

#[test]
fn the_peak_is_the_highest_level_since_handover() {
    // 1,100 g at the breeder's, 1,080 g from the handover on day 5 on, then 10 g a day less.
    let mut mornings = vec![1_100; 4];
    mornings.extend([1_080, 1_080, 1_080, 1_080, 1_070, 1_060, 1_050]);
    let mut script = weighed(1_100, &mornings);
    let whole = trend_on(&script, 11).peak.unwrap();
    assert!((whole.grams - 1_100.0).abs() < 3.0, "{whole:?}");
    let mut plan = script.chick().unwrap().plan;
    let day = Day::from_date(2026, 11, 7).unwrap();
    plan.reference = Some(Reference {
        weight: Grams::whole(1_080),
        day,
    });
    script.set_plan(11, 6, 0, &plan, Author::OWNER);
    let trend = trend_on(&script, 11);
    let peak = trend.peak.unwrap();
    assert!((peak.grams - 1_080.0).abs() < 3.0, "{peak:?}");
    // (1080 - 1050) / 1080 = 2.8 %
    let loss = trend.peak_loss_pct.unwrap();
    assert!((loss - 100.0 * 30.0 / 1_080.0).abs() < 0.3, "{loss:?}");
    // While it rises, the peak is now and nothing is lost.
    let rising = trend_on(&weighed(1_000, &[1_000, 1_010, 1_020, 1_030, 1_040]), 5);
    assert_eq!(rising.peak.unwrap().at, script.at(5, 6, 45));
    assert_eq!(rising.peak_loss_pct.unwrap(), 0.0);
}

#[test]
fn a_typed_weight_is_held_against_the_expected_one_not_against_a_wild_last_one() {
    let script = weighed(1_000, &[1_000, 1_002, 998, 1_000, 1_000, 1_200]);
    let chick = script.chick().unwrap();
    let asked = |grams| doubt(script.at(7, 6, 45), &chick, Grams::whole(grams));
    // 1,000 g lies 16.7 % below the last reading, which would be asked about without the trend.
    assert_eq!(asked(1_000), None);
    // 15 % of the expected weight are allowed at least; 1,300 g lies well beyond.
    assert_eq!(
        asked(1_300).map(|doubt| doubt.last),
        Some(Grams::whole(1_200))
    );
    assert!(asked(100).is_some_and(|doubt| doubt.meant == Some(Grams::whole(1_000))));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn whatever_was_weighed_every_number_is_sound(
        weighings in prop::collection::vec((0_i32..4_000, 50_i32..30_000, 0_u8..3), 0..30),
        wait in 0_i32..20_000,
    ) {
        let mut script = chick_of(1_000);
        script.feed(1, 0, 0, Slot::Morning, 90);
        let mut minute = 0;
        for (gap, tenths, crop) in weighings {
            minute += gap;
            let crop = [CropAtWeighing::Empty, CropAtWeighing::AfterFeed, CropAtWeighing::NotSure]
                [usize::from(crop)];
            script.note(1, 0, minute, Change::Weighed { weight: Grams::tenths_held(tenths), crop });
        }
        let trend = weight_trend(script.at(1, 0, minute + wait), &script.chick().unwrap());
        for point in trend.path.iter().chain(&trend.fan) {
            prop_assert!(point.grams.is_finite() && point.sd_g.is_finite(), "{point:?}");
        }
        prop_assert!(trend.path.is_sorted_by(|one, next| one.at <= next.at));
        prop_assert!(trend.fan.is_sorted_by(|one, next| one.at < next.at));
        if let Some(now) = trend.now {
            prop_assert!(now.grams.is_finite() && 0.0 < now.sd_g, "{now:?}");
        }
        if let Some(below) = trend.below_limit {
            let all = below.in_days.iter().chain([&below.now]);
            prop_assert!(all.copied().all(|chance| (0.0..=1.0).contains(&chance)), "{below:?}");
        }
        if let Some(crossing) = trend.crossing {
            prop_assert!(crossing.earliest <= crossing.likely);
            prop_assert!(crossing.latest.is_none_or(|latest| crossing.likely <= latest));
        }
        for interval in trend.peak_loss_of_level_pct.iter().chain(&trend.handover_loss_pct) {
            prop_assert!(interval.low <= interval.value && interval.value <= interval.high);
        }
        prop_assert!(trend.peak_loss_pct.is_none_or(f64::is_finite));
    }
}

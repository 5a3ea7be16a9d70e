//! Whether the intervals of the weight trend hold the truth of simulated chicks. The chicks are
//! made up: their curve is none of the model's own, only the scale's 1 % is.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use perchlight::domain::journal::entries::ChickId;
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::plan::care_plan::{CarePlan, Reference};
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::count;
use perchlight::domain::quantity::units::Grams;
use perchlight::domain::time::moment::{Day, Offset};
use perchlight::domain::weight::trend::weight_trend;

/// Chances for made-up chicks: a linear congruential generator.
///
/// Multiplier and increment: Knuth, The Art of Computer Programming 2, 3.3.4 (MMIX); from memory.
struct Chances(u64);

impl Chances {
    /// Even between 0 and 1.
    fn even(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        f64::from(u32::try_from(self.0 >> 32).unwrap()) / 4_294_967_296.0
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.even()
    }

    /// Standard normal: the sum of twelve even values less six.
    fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.even()).sum::<f64>() - 6.0
    }
}

/// A made-up chick: rises towards a peak, then loses a little every day while weaning.
struct Truth {
    start_g: f64,
    rise: f64,
    rise_days: f64,
    loss_a_day: f64,
}

impl Truth {
    fn drawn(chances: &mut Chances) -> Self {
        Self {
            start_g: chances.between(800.0, 1_300.0),
            rise: chances.between(0.0, 0.08),
            rise_days: chances.between(5.0, 15.0),
            loss_a_day: chances.between(0.0, 0.005),
        }
    }

    fn grams(&self, day: f64) -> f64 {
        let risen = self.rise * (1.0 - (-day / self.rise_days).exp());
        self.start_g * (1.0 + risen - self.loss_a_day * day)
    }
}

/// A chick handed over on day 0.
fn chick_of(weight: Grams) -> Scenario {
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    let day = Day::from_date(2026, 11, 2).unwrap();
    plan.reference = Some(Reference { weight, day });
    Scenario::new(ChickId([9; 12]), plan, day, Offset::UTC)
}

/// What became of 200 made-up chicks after three weeks, 15 % of mornings missed.
#[derive(Default)]
struct Score {
    level_held: u32,
    fan_end_held: u32,
    peak_loss_held: u32,
    pace_held: u32,
    falsely_doubted: usize,
    rightly_doubted: usize,
}

fn score(wild_share: f64) -> Score {
    let mut chances = Chances(20_261_102);
    let mut score = Score::default();
    for _ in 0..200 {
        let truth = Truth::drawn(&mut chances);
        let mut script = chick_of(Grams::whole(count::rounded(truth.grams(0.0))));
        let mut wild = Vec::new();
        for day in 1..=21 {
            let is_missed = day < 21 && chances.even() < 0.15;
            let is_wild = chances.even() < wild_share;
            let grams = truth.grams(morning(day)) * (1.0 + 0.01 * chances.normal());
            if is_missed {
                continue;
            }
            script.weigh(
                day,
                count::rounded(if is_wild { grams * 1.1 } else { grams }),
            );
            if is_wild {
                wild.push(script.journal().entries().last().unwrap().id);
            }
        }
        let trend = weight_trend(script.at(21, 6, 45), &script.chick().unwrap());
        let (now, true_g) = (trend.now.unwrap(), truth.grams(morning(21)));
        let fan_end = trend.fan.last().unwrap();
        let ahead_g = truth.grams(fan_end.at.days_since(script.at(0, 0, 0)));
        let mornings = (10..=210).map(|tenth| truth.grams(morning(0) + f64::from(tenth) / 10.0));
        let true_loss_pct = 100.0 * (1.0 - true_g / mornings.fold(0.0, f64::max));
        let (loss, pace) = (trend.peak_loss_of_level_pct.unwrap(), now.pace.unwrap());
        let true_pace = truth.grams(morning(21) + 0.5) - truth.grams(morning(21) - 0.5);
        let is_held =
            |value: f64, middle: f64, sd: f64| u32::from((value - middle).abs() <= 1.96 * sd);
        score.level_held += is_held(true_g, now.grams, now.sd_g);
        score.fan_end_held += is_held(ahead_g, fan_end.grams, fan_end.sd_g);
        score.peak_loss_held += u32::from(loss.low <= true_loss_pct && true_loss_pct <= loss.high);
        score.pace_held += is_held(true_pace, pace.g_per_day, pace.sd_g_per_day);
        let right = trend
            .doubted
            .iter()
            .filter(|doubted| wild.contains(doubted))
            .count();
        score.rightly_doubted += right;
        score.falsely_doubted += trend.doubted.len() - right;
    }
    score
}

/// Days from the start of day 0 to the weighing of a day, 06:45.
fn morning(day: i32) -> f64 {
    f64::from(day) + 6.75 / 24.0
}

#[test]
fn nine_of_ten_intervals_hold_the_truth_of_made_up_chicks() {
    let score = score(0.0);
    assert!(180 <= score.level_held, "{}", score.level_held);
    assert!(180 <= score.fan_end_held, "{}", score.fan_end_held);
    assert!(180 <= score.peak_loss_held, "{}", score.peak_loss_held);
    assert!(180 <= score.pace_held, "{}", score.pace_held);
    // Of 3,600 normal readings 0.2 lie beyond four standard deviations.
    assert!(score.falsely_doubted <= 2, "{}", score.falsely_doubted);
}

#[test]
fn one_wild_reading_in_fifty_leaves_the_level_of_most_made_up_chicks_right() {
    let score = score(0.02);
    assert!(180 <= score.level_held, "{}", score.level_held);
    assert!(180 <= score.fan_end_held, "{}", score.fan_end_held);
    // About 72 of the readings are 10 % too high; most must be seen, and few others doubted.
    assert!(45 <= score.rightly_doubted, "{}", score.rightly_doubted);
    assert!(score.falsely_doubted <= 8, "{}", score.falsely_doubted);
}

//! What was eaten on past days, as evidence beside the weight: an ill chick eats less before it weighs less.

use crate::domain::journal::chick::Chick;
use crate::domain::quantity::order::sorted;
use crate::domain::time::moment::{Day, Moment, Offset};

/// A day on which this part of what was planned was taken, or more, tells nothing: many owners note the full
/// feed whatever was left. Ours.
pub const TELLING_BELOW: f64 = 0.85;

/// Days whose middle is what this chick usually takes. Ours.
const USUAL_DAYS: i32 = 7;

/// How far a healthy day lies off the usual one, as a share of the planned food. Ours; days with solids, on
/// which a chick leaves formula, do not count.
pub const DAY_SD: f64 = 0.12;

/// What a chick loses a day that eats nothing, as a share of its weight.
///
/// Worked out: about 78 kcal a day at 1 kg, and 2 kcal in a gram of lost tissue with its water.
pub const STARVED_SHARE: f64 = 0.04;

/// A day on which less was taken than usual.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LessEaten {
    /// The day.
    pub day: Day,
    /// What was taken less the usual, as a share of the planned food; below zero.
    pub off: f64,
}

/// The days before `today`, at most `days` of them, on which clearly less was taken than usual.
///
/// Only days count on which every planned feed has a note of food or of a refusal and no solids were
/// swallowed: who eats solids leaves formula.
pub fn less_eaten(chick: &Chick, today: Day, offset: Offset, days: i32) -> Vec<LessEaten> {
    let shares = (1..=days).filter_map(|ago| {
        let day = today.plus(-ago);
        share(chick, day, offset).map(|share| (day, share))
    });
    let shares: Vec<(Day, f64)> = shares.collect();
    let low = shares.iter().filter(|(_, share)| *share < TELLING_BELOW);
    low.map(|(day, share)| {
        let before = shares
            .iter()
            .filter(|(other, _)| (1..=USUAL_DAYS).contains(&day.since(*other)));
        let thousandths =
            before.map(|(_, share)| crate::domain::quantity::count::rounded(share * 1_000.0));
        let before = sorted(thousandths.collect());
        let middle = before.get(before.len() / 2).copied().unwrap_or(1_000);
        LessEaten {
            day: *day,
            off: (share - f64::from(middle) / 1_000.0).min(0.0),
        }
    })
    .collect()
}

/// Days over which the share of the plan is told. Ours: one bad day does not hide in them, and one feed more or
/// less is no news.
pub const TOLD_DAYS: i32 = 3;

/// What was taken of the planned food on the last [`TOLD_DAYS`] whole days before `today`, per cent; `None` when no
/// day of them has a note for every planned feed. Formula alone: solids are not weighed.
pub fn eaten_pct(chick: &Chick, today: Day, offset: Offset) -> Option<f64> {
    let days = (1..=TOLD_DAYS).filter_map(|ago| of_day(chick, today.plus(-ago), offset));
    let (taken, asked) = days.fold((0, 0), |sum, food| (sum.0 + food.taken, sum.1 + food.asked));
    (0 < asked).then(|| f64::from(taken) * 100.0 / f64::from(asked))
}

/// Food of a day, tenths of a millilitre.
struct DayFood {
    start: Moment,
    end: Moment,
    taken: i32,
    asked: i32,
}

/// The food of a day; `None` unless every planned feed has a note of food or of a refusal.
fn of_day(chick: &Chick, day: Day, offset: Offset) -> Option<DayFood> {
    let start = Moment::from_seconds(i64::from(day.number()) * 86_400)
        .plus_minutes(-i64::from(offset.minutes()));
    let end = start.plus_minutes(24 * 60);
    let planned = chick.feeds_in_force(start.plus_minutes(12 * 60));
    let asked: i32 = planned.iter().map(|feed| feed.volume.tenths()).sum();
    let from = chick.feeds.partition_point(|feed| feed.at < start);
    let until = chick.feeds.partition_point(|feed| feed.at < end);
    let notes = chick.feeds.get(from..until)?;
    let taken = notes.iter().map(|feed| feed.what.outcome.taken().tenths());
    let food = DayFood {
        start,
        end,
        taken: taken.sum(),
        asked,
    };
    (0 < asked && planned.len() <= notes.len()).then_some(food)
}

/// The share of the planned food that was taken on a day without solids; `None` when it is not known.
fn share(chick: &Chick, day: Day, offset: Offset) -> Option<f64> {
    let food = of_day(chick, day, offset)?;
    let has_solids = chick
        .solids
        .iter()
        .any(|look| (food.start..food.end).contains(&look.at) && look.what.eaten.is_swallowed());
    (!has_solids).then(|| f64::from(food.taken) / f64::from(food.asked))
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, ChickId, Response};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::CarePlan;
    use crate::domain::plan::species::Species;
    use crate::domain::quantity::units::Millilitres;
    use crate::domain::time::moment::{Day, Offset};
    use crate::domain::weight::eaten::*;

    /// Three feeds of 80 ml; on each day so many ml of each are taken.
    fn eaten(days: &[i32]) -> Vec<LessEaten> {
        let (chick, today) = fed(days);
        less_eaten(&chick, today, Offset::UTC, 14)
    }

    /// The chick, and the day after the last of these.
    fn fed(days: &[i32]) -> (Chick, Day) {
        let start = Day::from_date(2026, 11, 2).unwrap();
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        for feed in &mut plan.feeds {
            feed.volume = Millilitres::whole(80);
        }
        let mut script = Scenario::new(ChickId([7; 12]), plan, start, Offset::UTC);
        for (day, ml) in (0..).zip(days) {
            for hour in [7, 14, 21] {
                let (taken, offered) = (Millilitres::whole(*ml), Millilitres::whole(80));
                let change = Change::Fed {
                    counts_as: None,
                    taken,
                    offered,
                    served_at: None,
                    response: Response::Eager,
                };
                script.note(day, hour, 0, change);
            }
        }
        let today = start.plus(i32::try_from(days.len()).unwrap());
        (script.chick().unwrap(), today)
    }

    #[test]
    fn the_share_of_the_plan_is_told_over_the_last_three_days_that_are_known() {
        let pct = |days: &[i32]| {
            let (chick, today) = fed(days);
            eaten_pct(&chick, today, Offset::UTC)
        };
        // 80 + 60 + 40 of 3 × 80 ml at each of three feeds: 540 / 720 = 75 %; the day before them is too old.
        assert_eq!(pct(&[10, 80, 60, 40]), Some(75.0));
        assert_eq!(pct(&[60]), Some(75.0), "one day is known");
        assert_eq!(pct(&[]), None);
        let (chick, today) = fed(&[80, 80]);
        // Two days later only the second of them lies within three days; five days later none.
        assert_eq!(eaten_pct(&chick, today.plus(2), Offset::UTC), Some(100.0));
        assert_eq!(eaten_pct(&chick, today.plus(3), Offset::UTC), None);
    }

    #[test]
    fn a_day_is_held_against_the_chicks_own_usual_one() {
        // 76 of 80 ml are 95 %, 60 are 75 %
        let less = eaten(&[76, 76, 76, 60]);
        assert_eq!(less.len(), 1);
        assert!((less[0].off + 0.2).abs() < 1e-9, "{less:?}");
    }

    #[test]
    fn full_feeds_and_missing_notes_tell_nothing() {
        assert_eq!(eaten(&[80, 80, 80, 72]), []);
        assert_eq!(eaten(&[]), []);
    }
}

//! Powder in the house: what is left, how long it lasts, when to order more.

use crate::domain::journal::chick::Chick;
use crate::domain::quantity::evidence::{Cited, Standing};
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::Moment;

/// Days of use that the pace is taken from. Ours: a week evens out refused feeds.
pub const PACE_DAYS: i64 = 7;

/// Days kept in hand when ordering: shipping and a reserve. Ours.
pub const SHIPPING_DAYS: Cited<i32> = Cited::new(
    7,
    Standing::Ours,
    "ours: five days of shipping and two in reserve",
);

/// What is known of the powder.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stock {
    /// What should be left of the powder last opened or weighed.
    pub left: Grams,
    /// Powder used in a day over the last week; `None` before anything was mixed in it.
    pub per_day: Option<Grams>,
    /// Whole days that it lasts at this pace.
    pub days_left: Option<i32>,
    /// Days until it is to be ordered; 0 when it is time.
    pub order_in_days: Option<i32>,
}

/// The powder left of what was last opened, by what was really mixed; `None` when none was noted.
pub fn stock(now: Moment, chick: &Chick) -> Option<Stock> {
    let opened = chick.stock.iter().rev().find(|stock| stock.at <= now)?;
    let mixes = chick.mixes.iter().filter(|mix| mix.at <= now);
    let used_tenths = |from: Moment| -> i32 {
        mixes
            .clone()
            .filter(|mix| mix.at >= from)
            .map(|mix| mix.what.powder.tenths())
            .fold(0, i32::saturating_add)
    };
    let left = Grams::tenths_held(opened.what.tenths().saturating_sub(used_tenths(opened.at)));
    let week_ago = now.plus_minutes(-PACE_DAYS * 1_440);
    let first = mixes.clone().map(|mix| mix.at).find(|at| *at >= week_ago);
    // The days that the week's mixes span, at least one.
    let days = first.map(|first| i32::try_from(now.minutes_since(first) / 1_440 + 1).unwrap_or(1));
    let per_day = days.map(|days| Grams::tenths_held(used_tenths(week_ago) / days.max(1)));
    let per_day = per_day.filter(|per_day| per_day.tenths() > 0);
    let days_left = per_day.map(|per_day| left.tenths() / per_day.tenths());
    let order_in_days = days_left.map(|days| (days - SHIPPING_DAYS.value).max(0));
    Some(Stock {
        left,
        per_day,
        days_left,
        order_in_days,
    })
}

#[cfg(test)]
mod tests {
    use crate::domain::formula::stock::*;
    use crate::domain::journal::entries::{Change, ChickId};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::CarePlan;
    use crate::domain::plan::species::Species;
    use crate::domain::time::moment::{Day, Offset};

    fn scenario() -> Scenario {
        let plan = CarePlan::default_for(Species::GreenWingedMacaw);
        Scenario::new(
            ChickId([7; 12]),
            plan,
            Day::from_date(2026, 11, 2).unwrap(),
            Offset::UTC,
        )
    }

    fn mix(powder: i32) -> Change {
        let zero = Grams::whole(0);
        Change::MixMade {
            powder: Grams::whole(powder),
            water: zero,
            fat_supplement: zero,
        }
    }

    #[test]
    fn nothing_is_said_before_powder_was_noted() {
        let script = scenario();
        assert_eq!(stock(script.at(1, 8, 0), &script.chick().unwrap()), None);
    }

    #[test]
    fn days_left_follow_from_what_was_really_mixed() {
        let mut script = scenario();
        script.note(
            0,
            6,
            0,
            Change::StockOpened {
                powder: Grams::whole(500),
            },
        );
        for day in 0..5 {
            script.note(day, 7, 0, mix(20)).note(day, 21, 0, mix(20));
        }
        let known = stock(script.at(4, 22, 0), &script.chick().unwrap()).unwrap();
        // ten mixes of 20 g: 300 g left; 200 g in five days: 40 g a day; 7 days; order when 7 are left
        assert_eq!(known.left, Grams::whole(300));
        assert_eq!(known.per_day, Some(Grams::whole(40)));
        assert_eq!((known.days_left, known.order_in_days), (Some(7), Some(0)));
    }

    #[test]
    fn what_is_weighed_again_counts_from_there() {
        let mut script = scenario();
        script.note(
            0,
            6,
            0,
            Change::StockOpened {
                powder: Grams::whole(500),
            },
        );
        script.note(0, 7, 0, mix(20));
        script.note(
            1,
            6,
            0,
            Change::StockOpened {
                powder: Grams::whole(900),
            },
        );
        let known = stock(script.at(1, 8, 0), &script.chick().unwrap()).unwrap();
        assert_eq!(known.left, Grams::whole(900));
    }

    #[test]
    fn more_used_than_opened_leaves_nothing() {
        let mut script = scenario();
        script.note(
            0,
            6,
            0,
            Change::StockOpened {
                powder: Grams::whole(10),
            },
        );
        script.note(0, 7, 0, mix(20));
        let known = stock(script.at(0, 8, 0), &script.chick().unwrap()).unwrap();
        assert_eq!((known.left, known.days_left), (Grams::whole(0), Some(0)));
    }
}

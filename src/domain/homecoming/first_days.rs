//! The first weeks in the new home: settle-in, the first vet visit, the wait apart from other birds.

use crate::domain::journal::chick::Chick;
use crate::domain::quantity::evidence::{Cited, Standing};
use crate::domain::quantity::units::{Millilitres, Percent};
use crate::domain::time::moment::{Day, Moment};
use crate::domain::time::zone::Zone;

/// Days within which an avian vet sees the chick. Source: breeder contracts, 48 to 72 h.
pub const VET_DAYS: Cited<i32> =
    Cited::new(3, Standing::CommonPractice, "breeder contracts, 48 to 72 h");

/// Days apart from other birds. Sources read: 30 days at least on an avian clinic's page, 30 to 90 for
/// large parrots; 45 is ours between them.
pub const QUARANTINE_DAYS: Cited<i32> = Cited::new(
    45,
    Standing::Ours,
    "30 to 90 days on avian vets' pages; 45 is ours between them",
);

/// Warm and quiet time after the arrival before the first feed, minutes: 30 of the 30 to 60 that are
/// common practice. Source for the order warm, hydrate, feed: Duerr & Gage 2020, pp. 5 and 590.
pub const SETTLE_MINUTES: i64 = 30;

/// Share of the usual volume at the first feed, per cent. Common practice.
pub const FIRST_FEED_PCT: Cited<(i32, i32)> = Cited::new(
    (50, 75),
    Standing::CommonPractice,
    "breeders' practice after a journey",
);

/// Powder in the mix of the first feed, 20 % by mass: a little thinner than usual. Common practice.
pub const FIRST_FEED_POWDER: Cited<Percent> = Cited::new(
    Percent::whole(20),
    Standing::CommonPractice,
    "breeders' practice after a journey",
);

/// A first feed is waited for so long after the arrival, minutes: a day; then somebody fed it and did
/// not note it. Ours.
const FIRST_FEED_WITHIN_MINUTES: i64 = 24 * 60;

/// Since when the chick waits at home for its first feed after the journey: its arrival, or when that
/// was not noted the time it was expected; `None` before it, once a feed was given after it, and a day
/// later.
pub fn first_feed_since(now: Moment, chick: &Chick) -> Option<Moment> {
    let noted = chick.arrived.as_ref().map(|arrived| arrived.at);
    let arrived = noted.or(chick.plan.journey.map(|journey| journey.expected))?;
    let is_fed = chick.last_given(now).is_some_and(|feed| feed.at > arrived);
    let is_new = (0..=FIRST_FEED_WITHIN_MINUTES).contains(&now.minutes_since(arrived));
    (is_new && !is_fed).then_some(arrived)
}

/// The least and the most of a usual volume at the first feed, down to whole millilitres.
pub fn first_feed_volumes(usual: Millilitres) -> (Millilitres, Millilitres) {
    let (least, most) = FIRST_FEED_PCT.value;
    let share = |pct: i32| Millilitres::tenths_held((usual.tenths() * pct / 1_000 * 10).max(5));
    (share(least), share(most))
}

/// The powder share of the first feed: thinner than a plan of `usual`, never thicker.
pub fn first_feed_powder(usual: Percent) -> Percent {
    usual.min(FIRST_FEED_POWDER.value)
}

/// The dates that count from the arrival.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FirstDays {
    /// The day it arrived.
    pub arrived: Day,
    /// The first day on which a feed may be dropped.
    pub settled_on: Day,
    /// The day by which an avian vet has seen it.
    pub vet_by: Day,
    /// The first day on which it may meet other birds.
    pub apart_until: Day,
}

/// The dates of a chick; `None` before its arrival was noted.
pub fn first_days(chick: &Chick, zone: &Zone) -> Option<FirstDays> {
    let arrived = chick
        .arrived
        .as_ref()
        .map(|arrived| zone.lived(arrived.at).day)?;
    Some(FirstDays {
        arrived,
        settled_on: arrived.plus(i32::from(chick.plan.settle_in_days)),
        vet_by: arrived.plus(VET_DAYS.value),
        apart_until: arrived.plus(QUARANTINE_DAYS.value),
    })
}

#[cfg(test)]
mod tests {
    use crate::domain::homecoming::first_days::*;
    use crate::domain::journal::entries::{Change, ChickId};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::{CarePlan, Slot};
    use crate::domain::plan::species::Species;
    use crate::domain::time::moment::Offset;

    #[test]
    fn every_date_counts_from_the_day_of_arrival() {
        let plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let day = Day::from_date(2026, 11, 2).unwrap();
        let mut script = Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC);
        assert_eq!(first_days(&script.chick().unwrap(), &script.zone()), None);
        script.note(1, 15, 0, Change::Arrived);
        let dates = first_days(&script.chick().unwrap(), &script.zone()).unwrap();
        assert_eq!(dates.arrived.date(), (2026, 11, 3));
        assert_eq!(dates.settled_on.date(), (2026, 11, 10));
        assert_eq!(dates.vet_by.date(), (2026, 11, 6));
        assert_eq!(dates.apart_until.date(), (2026, 12, 18));
    }

    #[test]
    fn the_first_feed_is_waited_for_from_the_arrival_until_it_was_given() {
        let plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let day = Day::from_date(2026, 11, 2).unwrap();
        let mut script = Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC);
        script.feed(1, 7, 0, Slot::Morning, 60);
        let since = |script: &Scenario, day, hour, minute| {
            first_feed_since(script.at(day, hour, minute), &script.chick().unwrap())
        };
        assert_eq!(since(&script, 1, 15, 0), None);
        script.note(1, 15, 0, Change::Arrived);
        let arrived = Some(script.at(1, 15, 0));
        assert_eq!(since(&script, 1, 14, 59), None);
        assert_eq!(since(&script, 1, 15, 0), arrived);
        assert_eq!(since(&script, 2, 15, 0), arrived);
        assert_eq!(since(&script, 2, 15, 1), None);
        script.note(1, 15, 40, Change::refused(Some(Slot::Midday)));
        assert_eq!(since(&script, 1, 16, 0), arrived);
        script.feed(1, 16, 30, Slot::Midday, 30);
        assert_eq!(since(&script, 1, 16, 31), None);
    }

    #[test]
    fn the_first_feed_is_half_to_three_quarters_and_no_thicker_than_a_fifth() {
        let volumes = |ml| first_feed_volumes(Millilitres::whole(ml));
        let ml = Millilitres::whole;
        assert_eq!(volumes(60), (ml(30), ml(45)));
        // 52.5 and 78.75 ml
        assert_eq!(volumes(105), (ml(52), ml(78)));
        assert_eq!(
            volumes(1),
            (Millilitres::tenths_held(5), Millilitres::tenths_held(5))
        );
        let powder = |pct| first_feed_powder(Percent::whole(pct)).tenths();
        assert_eq!([powder(19), powder(20), powder(25)], [190, 200, 200]);
    }
}

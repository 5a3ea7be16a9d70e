//! Hours on the way without a feed, and when they are too many.

use crate::domain::journal::chick::Chick;
use crate::domain::plan::care_plan::{CarePlan, Journey};
use crate::domain::quantity::evidence::{Cited, Standing};
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::{Age, Day, Moment};
use crate::domain::time::zone::Zone;

/// A chick is in down or closed pins up to this age, 42 days. Source: macaw breeders' pages, pin
/// feathers open from the sixth week; standing: common practice. Smaller parrots are feathered earlier.
pub const PINS_OPEN_FROM_DAYS: i32 = 42;

/// A chick of a large species is feathered from this age, 56 days: 8 weeks and the body covered. Common practice.
pub const LARGE_FEATHERED_FROM_DAYS: i32 = 56;

/// A species of this mean adult mass or more is large. Ours, between the Amazons and the great cockatoos and
/// macaws.
const LARGE_FROM: Grams = Grams::whole(700);

/// A feed noted at most this long before leaving counts as the last one before it, minutes: a day. Ours.
const LAST_FEED_WITHIN_MINUTES: i64 = 24 * 60;

/// A journey is no longer shown this long after the expected arrival, minutes: a day. Ours.
pub const TOLD_MINUTES: i64 = 24 * 60;

/// What covers the chick, which tells how long it can go without a feed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Cover {
    /// Down or closed pins: up to about six weeks in a large macaw. Should not travel at all.
    DownOrPins,
    /// Pins that open: six to eight weeks in a large species.
    OpeningPins,
    /// Feathered: about eight to twelve weeks.
    Feathered,
}

impl Cover {
    /// What covers a plan's chick on a day, by its age; feathered when that is not known.
    pub fn on(day: Day, plan: &CarePlan) -> Self {
        let age = plan.hatched.and_then(|hatched| Age::on(day, hatched));
        let is_large = plan.species.profile().adult.value >= LARGE_FROM;
        match age {
            Some(age) if age.days() < PINS_OPEN_FROM_DAYS => Self::DownOrPins,
            Some(age) if is_large && age.days() < LARGE_FEATHERED_FROM_DAYS => Self::OpeningPins,
            Some(_) | None => Self::Feathered,
        }
    }
}

/// Levels of the time without a feed, minutes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TransitLevels {
    /// The chick they are for.
    pub cover: Cover,
    /// The longest time to plan.
    pub plan: i64,
    /// From here on somebody must act.
    pub alarm: i64,
    /// From here on it is an emergency.
    pub emergency: i64,
}

/// Levels for a feathered chick: plan at most 8 h, alarm at 10 h, emergency at 12 h.
pub const FEATHERED: Cited<TransitLevels> = Cited::new(
    TransitLevels {
        cover: Cover::Feathered,
        plan: 480,
        alarm: 600,
        emergency: 720,
    },
    Standing::CommonPractice,
    "feathered chicks of 8 to 12 weeks go 6 to 12 h; levels to be confirmed by a vet",
);

/// Levels for a chick in down or pins: plan at most 4 h, alarm at 5 h, emergency at 6 h.
pub const DOWN_OR_PINS: Cited<TransitLevels> = Cited::new(
    TransitLevels {
        cover: Cover::DownOrPins,
        plan: 240,
        alarm: 300,
        emergency: 360,
    },
    Standing::Ours,
    "4 to 5 h are common practice; the emergency is ours, half the feathered chick's",
);

/// Levels for a large chick whose pins open: plan at most 6 h; alarm and emergency midway between those before
/// and after, 7.5 h and 9 h.
pub const OPENING_PINS: Cited<TransitLevels> = Cited::new(
    TransitLevels {
        cover: Cover::OpeningPins,
        plan: 360,
        alarm: 450,
        emergency: 540,
    },
    Standing::Ours,
    "6 h at 6 to 8 weeks is common practice; alarm and emergency are ours, midway",
);

/// How a time on the way without a feed is judged.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum TransitVerdict {
    /// Up to the longest time to plan.
    AsPlanned,
    /// Longer than should be planned.
    LongerThanPlanned,
    /// At the alarm or past it.
    Alarm,
    /// At the emergency or past it.
    Emergency,
}

/// A chick between leaving and arriving.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Transit {
    /// The journey.
    pub journey: Journey,
    /// Whether it has left.
    pub has_left: bool,
    /// The last feed, or the leaving when none was noted.
    pub fed_at: Moment,
    /// Minutes since then.
    pub minutes: i64,
    /// Minutes that it will be at the expected arrival.
    pub minutes_at_arrival: i64,
    /// When these are too many.
    pub levels: TransitLevels,
}

impl Transit {
    /// How the time up to the expected arrival is judged.
    pub const fn planned_verdict(&self) -> TransitVerdict {
        self.levels.verdict(self.minutes_at_arrival)
    }
}

/// Where a chick is on its way; `None` without a journey, once it has arrived, or a day after it was
/// expected.
pub fn transit(now: Moment, chick: &Chick, zone: &Zone) -> Option<Transit> {
    let journey = chick.plan.journey?;
    let is_told = now.minutes_since(journey.expected) <= TOLD_MINUTES;
    if chick.arrived.is_some() || !is_told {
        return None;
    }
    let fed_at = fed_before(now, chick, &journey);
    Some(Transit {
        journey,
        has_left: journey.left <= now,
        fed_at,
        minutes: now.minutes_since(fed_at),
        minutes_at_arrival: journey.expected.minutes_since(fed_at),
        levels: TransitLevels::of_plan(&chick.plan, &journey, zone),
    })
}

/// The moment from which the hours without a feed count: the last feed, noted up to `now` or written on
/// the card; without either the leaving, which stands for the last feed before it.
pub fn fed_before(now: Moment, chick: &Chick, journey: &Journey) -> Moment {
    let noted = chick.last_given(now).map(|feed| feed.at);
    let on_card = journey.last_fed.map(|(at, _)| at);
    noted
        .max(on_card.filter(|at| *at <= journey.left))
        .filter(|at| journey.left.minutes_since(*at) <= LAST_FEED_WITHIN_MINUTES)
        .unwrap_or(journey.left)
}

impl TransitLevels {
    /// The levels for a plan's chick on a journey: by its age when it leaves, feathered when that is
    /// not known, and by the night of its plan.
    pub fn of_plan(plan: &CarePlan, journey: &Journey, zone: &Zone) -> Self {
        let cover = Cover::on(zone.lived(journey.left).day, plan);
        Self::of(cover, plan.night_minutes().unwrap_or_default())
    }

    /// The levels for a chick whose longest gap over the night is `night_gap_minutes`, 0 or more.
    ///
    /// No journey is planned longer than the chick's own night. Alarm and emergency stay.
    pub fn of(cover: Cover, night_gap_minutes: i64) -> Self {
        let levels = match cover {
            Cover::DownOrPins => DOWN_OR_PINS.value,
            Cover::OpeningPins => OPENING_PINS.value,
            Cover::Feathered => FEATHERED.value,
        };
        Self {
            plan: levels.plan.min(night_gap_minutes.max(0)),
            ..levels
        }
    }

    /// The verdict on a time without a feed, minutes since the last feed before leaving.
    ///
    /// # Examples
    /// ```
    /// use perchlight::domain::homecoming::transit::{Cover, TransitLevels, TransitVerdict};
    /// let levels = TransitLevels::of(Cover::Feathered, 600);
    /// assert_eq!(levels.verdict(480), TransitVerdict::AsPlanned);
    /// assert_eq!(levels.verdict(600), TransitVerdict::Alarm);
    /// ```
    pub const fn verdict(&self, minutes: i64) -> TransitVerdict {
        if self.emergency <= minutes {
            TransitVerdict::Emergency
        } else if self.alarm <= minutes {
            TransitVerdict::Alarm
        } else if self.plan < minutes {
            TransitVerdict::LongerThanPlanned
        } else {
            TransitVerdict::AsPlanned
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::homecoming::transit::*;
    use crate::domain::journal::entries::Change;
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::{ClockShift, Slot};
    use crate::domain::plan::species::Species;
    use crate::domain::quantity::units::Millilitres;
    use crate::domain::time::moment::Offset;
    use crate::domain::warnings::rules::trial::{macaw, plan, with_plan};

    /// Leaves on day 0 at 10:00, six hours on the way; the card came at 05:00.
    fn script(change: impl FnOnce(&mut CarePlan)) -> Scenario {
        let mut plan = plan();
        let left = macaw().at(0, 10, 0);
        plan.journey = Some(Journey {
            left,
            expected: left.plus_minutes(360),
            breeder_offset: Offset::UTC,
            shift: ClockShift::AtOnce,
            last_fed: None,
        });
        change(&mut plan);
        with_plan(plan)
    }

    fn at(script: &Scenario, day: i32, hour: i32) -> Option<Transit> {
        let chick = script.chick().unwrap();
        transit(script.at(day, hour, 0), &chick, &script.zone())
    }

    #[test]
    fn the_hours_count_from_the_last_feed_noted_else_from_leaving() {
        let mut script = script(|_| {});
        let before = at(&script, 0, 9).unwrap();
        assert!(!before.has_left);
        assert_eq!((before.minutes, before.minutes_at_arrival), (-60, 360));
        script.feed(0, 7, 0, Slot::Morning, 80);
        let way = at(&script, 0, 12).unwrap();
        assert!(way.has_left);
        assert_eq!((way.minutes, way.minutes_at_arrival), (300, 540));
        assert_eq!(way.planned_verdict(), TransitVerdict::LongerThanPlanned);
        script.feed(0, 12, 0, Slot::Midday, 40);
        assert_eq!(at(&script, 0, 13).unwrap().minutes, 60);
    }

    /// Fed at 07:00 by the card, left at 10:00, home at 15:45: 8 h 45 min without a feed, not 5 h 45.
    #[test]
    fn the_last_feed_at_the_breeders_is_that_of_the_card() {
        let script = script(|plan| {
            let journey = plan.journey.as_mut().unwrap();
            let fed = journey.left.plus_minutes(-180);
            journey.last_fed = Some((fed, Millilitres::whole(80)));
        });
        let (chick, now) = (script.chick().unwrap(), script.at(0, 15, 45));
        let way = transit(now, &chick, &script.zone()).unwrap();
        assert_eq!(way.minutes, 8 * 60 + 45);
    }

    #[test]
    fn a_feed_more_than_a_day_before_leaving_tells_nothing() {
        let day = |hour| {
            let mut script = script(|plan| {
                let journey = plan.journey.as_mut().unwrap();
                journey.left = journey.left.plus_minutes(1_440);
                journey.expected = journey.expected.plus_minutes(1_440);
            });
            script.feed(0, hour, 0, Slot::Morning, 80);
            at(&script, 1, 11).unwrap().minutes
        };
        assert_eq!(day(9), 60);
        assert_eq!(day(10), 25 * 60);
    }

    #[test]
    fn the_arrival_ends_it_and_so_does_a_day_after_the_expected_one() {
        let mut script = script(|_| {});
        assert!(at(&script, 1, 16).is_some());
        assert_eq!(at(&script, 1, 17), None);
        script.note(0, 15, 0, Change::Arrived);
        assert_eq!(at(&script, 0, 15), None);
    }

    #[test]
    fn down_pins_and_feathers_have_their_own_levels_by_age_and_size() {
        let levels = |species, days: i32| {
            let script = script(|plan| {
                plan.species = species;
                let day = macaw().zone().lived(macaw().at(0, 10, 0)).day;
                plan.hatched = Some(day.plus(-days));
            });
            at(&script, 0, 10).unwrap().levels.alarm
        };
        let (large, small) = (Species::GreenWingedMacaw, Species::GreyParrot);
        assert_eq!(levels(large, 41), 300);
        assert_eq!(levels(large, 42), 450);
        assert_eq!(levels(large, 55), 450);
        assert_eq!(levels(large, 56), 600);
        assert_eq!(levels(small, 41), 300);
        assert_eq!(levels(small, 42), 600);
    }

    #[test]
    fn a_plan_with_a_short_night_is_not_sent_on_a_longer_journey() {
        // 06:00 and 23:00: a night of 7 h
        let script = script(|plan| {
            let (first, last) = (0, plan.feeds.len() - 1);
            plan.feeds[first].time = crate::domain::time::moment::WallTime::new(6, 0).unwrap();
            plan.feeds[last].time = crate::domain::time::moment::WallTime::new(23, 0).unwrap();
        });
        assert_eq!(at(&script, 0, 10).unwrap().levels.plan, 420);
    }

    /// Verdicts one minute below, at and one minute above each of three hours.
    fn verdicts(levels: TransitLevels, hours: [i64; 3]) -> [[TransitVerdict; 3]; 3] {
        hours.map(|hour| [-1, 0, 1].map(|off| levels.verdict(hour * 60 + off)))
    }

    #[test]
    fn a_feathered_chick_is_judged_at_eight_ten_and_twelve_hours() {
        use TransitVerdict::{Alarm, AsPlanned, Emergency, LongerThanPlanned};
        let levels = TransitLevels::of(Cover::Feathered, 600);
        assert_eq!(
            verdicts(levels, [8, 10, 12]),
            [
                [AsPlanned, AsPlanned, LongerThanPlanned],
                [LongerThanPlanned, Alarm, Alarm],
                [Alarm, Emergency, Emergency],
            ]
        );
    }

    #[test]
    fn a_chick_in_pins_is_judged_at_four_five_and_six_hours() {
        use TransitVerdict::{Alarm, AsPlanned, Emergency, LongerThanPlanned};
        let levels = TransitLevels::of(Cover::DownOrPins, 480);
        assert_eq!(
            verdicts(levels, [4, 5, 6]),
            [
                [AsPlanned, AsPlanned, LongerThanPlanned],
                [LongerThanPlanned, Alarm, Alarm],
                [Alarm, Emergency, Emergency],
            ]
        );
    }

    #[test]
    fn a_chick_whose_pins_open_is_judged_at_six_seven_and_a_half_and_nine_hours() {
        use TransitVerdict::{Alarm, AsPlanned, Emergency, LongerThanPlanned};
        let levels = TransitLevels::of(Cover::OpeningPins, 480);
        let at = |minutes| levels.verdict(minutes);
        assert_eq!([at(360), at(361)], [AsPlanned, LongerThanPlanned]);
        assert_eq!([at(449), at(450)], [LongerThanPlanned, Alarm]);
        assert_eq!([at(539), at(540)], [Alarm, Emergency]);
    }

    #[test]
    fn no_journey_is_planned_longer_than_the_chicks_own_night() {
        let levels = TransitLevels::of(Cover::Feathered, 420);
        assert_eq!(levels.verdict(419), TransitVerdict::AsPlanned);
        assert_eq!(levels.verdict(420), TransitVerdict::AsPlanned);
        assert_eq!(levels.verdict(421), TransitVerdict::LongerThanPlanned);
        assert_eq!(levels.verdict(599), TransitVerdict::LongerThanPlanned);
        assert_eq!(levels.verdict(600), TransitVerdict::Alarm);
    }

    #[test]
    fn a_gap_below_zero_plans_no_time_at_all() {
        let levels = TransitLevels::of(Cover::Feathered, -5);
        assert_eq!(levels.verdict(0), TransitVerdict::AsPlanned);
        assert_eq!(levels.verdict(1), TransitVerdict::LongerThanPlanned);
    }
}

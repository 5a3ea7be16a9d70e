//! Where a chick stands in its life, from being with its breeder to being grown.
//!
//! Worked out from what was noted, never set. Whether a phone has given the chick away for some days is
//! a matter of that phone, not of the chick's life.

use crate::domain::homecoming::departure::has_not_left;
use crate::domain::homecoming::transit::TOLD_MINUTES;
use crate::domain::journal::chick::{Chick, WeaningStep};
use crate::domain::time::moment::{Day, Moment};
use crate::domain::time::zone::Zone;
use crate::domain::weight::mornings;

/// Days without formula before a chick counts as weaned. Common practice.
pub const WEANED_DAYS: i32 = 14;

/// A stage of a chick's life.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LifeStage {
    /// It has not left its breeder.
    WithBreeder,
    /// Between leaving and arriving.
    OnTheWay,
    /// In the plan's days to settle in.
    SettlingIn,
    /// Fed by hand, or without formula for too short a time to be called weaned.
    Weaning,
    /// [`WEANED_DAYS`] without formula, a flat weight, and seen to drink.
    Weaned,
    /// Grown, because somebody said so.
    Grown,
    /// It died.
    Died,
}

impl LifeStage {
    /// Every stage in the order of a life.
    pub const ALL: [Self; 7] = [
        Self::WithBreeder,
        Self::OnTheWay,
        Self::SettlingIn,
        Self::Weaning,
        Self::Weaned,
        Self::Grown,
        Self::Died,
    ];

    /// Whether a reminder is made in this stage. A new stage or reminder does not compile until this
    /// answers for it.
    pub const fn reminds(self, reminder: Reminder) -> bool {
        match (reminder, self) {
            (Reminder::Feed, Self::OnTheWay | Self::SettlingIn | Self::Weaning)
            | (Reminder::Weighing, Self::SettlingIn | Self::Weaning)
            | (
                Reminder::Backup,
                Self::WithBreeder
                | Self::OnTheWay
                | Self::SettlingIn
                | Self::Weaning
                | Self::Weaned
                | Self::Grown,
            )
            | (
                Reminder::Homecoming,
                Self::WithBreeder | Self::OnTheWay | Self::SettlingIn | Self::Weaning,
            )
            | (
                Reminder::Report,
                Self::OnTheWay | Self::SettlingIn | Self::Weaning | Self::Weaned,
            )
            | (Reminder::Drinking, Self::Weaning) => true,
            (Reminder::Feed, Self::WithBreeder | Self::Weaned | Self::Grown | Self::Died)
            | (
                Reminder::Weighing,
                Self::WithBreeder | Self::OnTheWay | Self::Weaned | Self::Grown | Self::Died,
            )
            | (Reminder::Backup, Self::Died)
            | (Reminder::Homecoming, Self::Weaned | Self::Grown | Self::Died)
            | (Reminder::Report, Self::WithBreeder | Self::Grown | Self::Died)
            | (
                Reminder::Drinking,
                Self::WithBreeder
                | Self::OnTheWay
                | Self::SettlingIn
                | Self::Weaned
                | Self::Grown
                | Self::Died,
            ) => false,
        }
    }
}

/// Something that is said without being asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Reminder {
    /// The next feed, and its place in a calendar.
    Feed,
    /// The weighing of this morning.
    Weighing,
    /// A backup that is due.
    Backup,
    /// Whether it is home.
    Homecoming,
    /// A report to whoever follows the chick.
    Report,
    /// Whether it was seen to drink.
    Drinking,
}

/// The stage at `now`. Formula given after a chick was weaned, or said to be grown, is weaning again.
pub fn life_stage(now: Moment, chick: &Chick, zone: &Zone) -> LifeStage {
    let is_over = |at: Option<Moment>| at.is_some_and(|at| at <= now);
    if is_over(chick.died.as_ref().map(|died| died.at)) {
        return LifeStage::Died;
    }
    if !is_over(chick.arrived.as_ref().map(|arrived| arrived.at))
        && let Some(journey) = chick.plan.journey
    {
        if now < journey.left {
            return LifeStage::WithBreeder;
        }
        if now.minutes_since(journey.expected) <= TOLD_MINUTES {
            return LifeStage::OnTheWay;
        }
    } else if has_not_left(chick) {
        return LifeStage::WithBreeder;
    }
    let fed_at = chick.last_given(now).map(|feed| feed.at);
    let grown_at = chick.grown.as_ref().map(|grown| grown.at);
    if is_over(grown_at) && fed_at <= grown_at {
        return LifeStage::Grown;
    }
    let settled = chick
        .home_since()
        .plus_minutes(i64::from(chick.plan.settle_in_days) * 1_440);
    if now < settled {
        LifeStage::SettlingIn
    } else if weaned_on(now, chick, zone).is_some() {
        LifeStage::Weaned
    } else {
        LifeStage::Weaning
    }
}

/// The last day with formula or on which a feed was given up; `None` while a feed is still given.
pub fn without_formula_since(now: Moment, chick: &Chick, zone: &Zone) -> Option<Day> {
    if !chick.feeds_in_force(now).is_empty() || !chick.plan.are_feeds_known() {
        return None;
    }
    let fed = chick.last_given(now).map(|feed| feed.lived().day);
    let is_drop = |step: &WeaningStep| match step {
        WeaningStep::Dropped { .. } => true,
        WeaningStep::BroughtBack { .. } => false,
    };
    let mut steps = chick.weaning.iter().rev();
    let dropped = steps.find(|step| step.at <= now && is_drop(&step.what));
    let dropped = dropped.map(|step| zone.lived(step.at).day);
    fed.max(dropped).or(Some(zone.lived(chick.plan_since).day))
}

/// The first day from which the chick counts as weaned at `now`; `None` when it does not.
pub fn weaned_on(now: Moment, chick: &Chick, zone: &Zone) -> Option<Day> {
    let since = without_formula_since(now, chick, zone)?;
    let drank = chick.drinking.first().filter(|seen| seen.at <= now)?;
    let first = since.plus(WEANED_DAYS).max(drank.lived().day);
    let mornings = mornings::mornings(now, chick);
    let is_flat =
        |day: &Day| mornings::flat_spread_pct(&mornings, *day).is_some_and(mornings::is_flat);
    let days = zone.lived(now).day.since(first);
    (0..=days).map(|day| first.plus(day)).find(is_flat)
}

/// Whether all that makes a chick weaned is there but for a note that it was seen to drink.
pub fn is_drinking_asked(now: Moment, chick: &Chick, zone: &Zone) -> bool {
    let is_seen = chick.drinking.iter().any(|seen| seen.at <= now);
    let since = without_formula_since(now, chick, zone);
    let today = zone.lived(now).day;
    let is_time = since.is_some_and(|since| today.since(since) >= WEANED_DAYS);
    is_time && !is_seen && life_stage(now, chick, zone).reminds(Reminder::Drinking)
}

#[cfg(test)]
mod tests {
    use crate::domain::homecoming::life_stage::*;
    use crate::domain::journal::entries::Change;
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::{ClockShift, Journey, Slot};
    use crate::domain::time::moment::Offset;
    use crate::domain::warnings::rules::trial::{macaw, plan, with_plan};

    fn stage(script: &Scenario, day: i32, hour: i32) -> LifeStage {
        let chick = script.chick().unwrap();
        life_stage(script.at(day, hour, 0), &chick, &script.zone())
    }

    /// Fed last on day 20, every feed dropped, weighed every morning since at 950 g.
    fn without_formula(last_day: i32) -> Scenario {
        let mut script = macaw();
        for day in 1..=last_day {
            script.weigh(day, 950);
        }
        script.feed(20, 7, 0, Slot::Morning, 80);
        for slot in [Slot::Morning, Slot::Midday, Slot::Bedtime] {
            let by_breeder = true;
            script.note(20, 12, 0, Change::FeedDropped { slot, by_breeder });
        }
        script
    }

    #[test]
    fn a_journey_is_with_the_breeder_on_the_way_and_settling_in() {
        let mut plan = plan();
        let left = macaw().at(1, 10, 0);
        plan.journey = Some(Journey {
            left,
            expected: left.plus_minutes(360),
            breeder_offset: Offset::UTC,
            shift: ClockShift::AtOnce,
            last_fed: None,
        });
        let mut script = with_plan(plan);
        assert_eq!(stage(&script, 1, 9), LifeStage::WithBreeder);
        assert_eq!(stage(&script, 1, 10), LifeStage::OnTheWay);
        assert_eq!(stage(&script, 1, 17), LifeStage::OnTheWay);
        script.note(1, 16, 0, Change::Arrived);
        assert_eq!(stage(&script, 1, 15), LifeStage::OnTheWay);
        assert_eq!(stage(&script, 1, 16), LifeStage::SettlingIn);
        // seven days of the default plan
        assert_eq!(stage(&script, 8, 15), LifeStage::SettlingIn);
        assert_eq!(stage(&script, 8, 16), LifeStage::Weaning);
    }

    #[test]
    fn fourteen_days_without_formula_a_flat_weight_and_a_drink_are_weaned() {
        let mut script = without_formula(40);
        assert_eq!(
            stage(&script, 40, 12),
            LifeStage::Weaning,
            "nobody saw it drink"
        );
        script.note(22, 9, 0, Change::DrinkingSeen);
        assert_eq!(stage(&script, 33, 12), LifeStage::Weaning);
        assert_eq!(stage(&script, 34, 12), LifeStage::Weaned);
        assert_eq!(stage(&script, 40, 12), LifeStage::Weaned);
        script.feed(41, 9, 0, Slot::Morning, 20);
        assert_eq!(stage(&script, 41, 12), LifeStage::Weaning, "formula again");
    }

    #[test]
    fn weekly_weighing_keeps_a_weaned_bird_weaned() {
        let mut script = without_formula(34);
        script.note(22, 9, 0, Change::DrinkingSeen).weigh(41, 940);
        assert_eq!(stage(&script, 180, 12), LifeStage::Weaned);
    }

    #[test]
    fn drinking_is_asked_after_fourteen_days_until_it_was_seen() {
        let asked = |script: &Scenario, day| {
            let chick = script.chick().unwrap();
            is_drinking_asked(script.at(day, 12, 0), &chick, &script.zone())
        };
        let mut script = without_formula(40);
        assert!(!asked(&script, 33));
        assert!(asked(&script, 34));
        script.note(36, 9, 0, Change::DrinkingSeen);
        assert!(asked(&script, 35));
        assert!(!asked(&script, 36));
    }

    #[test]
    fn grown_is_said_and_formula_ends_it_and_death_ends_all() {
        let mut script = without_formula(34);
        script.note(22, 9, 0, Change::DrinkingSeen);
        assert_eq!(
            stage(&script, 179, 12),
            LifeStage::Weaned,
            "time alone is not grown"
        );
        script.note(180, 9, 0, Change::Grown);
        assert_eq!(stage(&script, 179, 12), LifeStage::Weaned);
        assert_eq!(stage(&script, 180, 12), LifeStage::Grown);
        script.feed(181, 9, 0, Slot::Morning, 20);
        assert_eq!(stage(&script, 181, 12), LifeStage::Weaning);
        script.note(182, 9, 0, Change::Died);
        assert_eq!(stage(&script, 182, 12), LifeStage::Died);
    }

    #[test]
    fn a_chick_that_died_is_never_reminded_of() {
        let reminders = [
            Reminder::Feed,
            Reminder::Weighing,
            Reminder::Backup,
            Reminder::Homecoming,
            Reminder::Report,
            Reminder::Drinking,
        ];
        assert!(reminders.iter().all(|one| !LifeStage::Died.reminds(*one)));
    }
}

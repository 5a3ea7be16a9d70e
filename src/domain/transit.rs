//! Hours on the way without a feed, and when they are too many.

use crate::domain::evidence::{Cited, Standing};

/// What covers the chick, which tells how long it can go without a feed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Cover {
    /// Down or pins: up to about six weeks in a large macaw. Should not travel at all.
    DownOrPins,
    /// Feathered: about eight to twelve weeks.
    Feathered,
}

/// Levels of the time without a feed, minutes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TransitLevels {
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
        plan: 240,
        alarm: 300,
        emergency: 360,
    },
    Standing::Ours,
    "4 to 5 h are common practice; the emergency is ours, half the feathered chick's",
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

impl TransitLevels {
    /// The levels for a chick whose longest gap over the night is `night_gap_minutes`, 0 or more.
    ///
    /// No journey is planned longer than the chick's own night. Alarm and emergency stay.
    pub fn of(cover: Cover, night_gap_minutes: i64) -> Self {
        let levels = match cover {
            Cover::DownOrPins => DOWN_OR_PINS.value,
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
    /// use perchlight::domain::transit::{Cover, TransitLevels, TransitVerdict};
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
    use crate::domain::transit::*;

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

//! One feed, step by step: where it stands, which readings were taken, what was given so far.
//!
//! The state is small and plain, so that it can be put away at each step and found again after a call,
//! a locked screen or a reload.

use crate::domain::cooling::{CoolingError, CoolingLaw, Reading};
use crate::domain::moment::Moment;
use crate::domain::plan::{CarePlan, Slot};
use crate::domain::serving_heat::{ServingVerdict, serving_verdict};
use crate::domain::serving_window::{
    GuessedWindow, ServingWindow, USUAL_HALF_TIME_MIN, guessed_window,
};
use crate::domain::units::{Celsius, Millilitres};

/// A guide that was not touched for this long is over: mixed food is thrown away after an hour.
///
/// Source: breeder pages, strict end of 1 h to 24 h; standing: common practice.
pub const MIX_KEEPS_MINUTES: i64 = 60;

/// A step of the feed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Step {
    /// Is the crop empty?
    Crop,
    /// Powder, water, supplement.
    Mix,
    /// Cool to the window.
    Warmth,
    /// Fill the syringes.
    DrawUp,
    /// Hold the head, from the bird's left.
    Hold,
    /// Does it bob and swallow?
    Response,
    /// Give, draw by draw.
    Give,
    /// What is normal now, and what is not.
    After,
}

impl Step {
    /// Every step in order.
    pub const ALL: [Self; 8] = [
        Self::Crop,
        Self::Mix,
        Self::Warmth,
        Self::DrawUp,
        Self::Hold,
        Self::Response,
        Self::Give,
        Self::After,
    ];

    /// The step after this one.
    #[must_use]
    pub fn next(self) -> Option<Self> {
        Self::ALL.into_iter().find(|step| *step > self)
    }

    /// Its place, from 1.
    pub fn number(self) -> usize {
        Self::ALL
            .into_iter()
            .take_while(|step| *step <= self)
            .count()
    }
}

/// A temperature of the cup.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CupReading {
    /// When.
    pub at: Moment,
    /// How warm.
    pub cup: Celsius,
}

/// One feed under way.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Guide {
    /// Which feed of the plan.
    pub slot: Slot,
    /// The step on screen.
    pub step: Step,
    /// When the feed was begun.
    pub begun: Moment,
    /// How much is to be offered.
    pub volume: Millilitres,
    /// The room, for cooling.
    pub room: Celsius,
    /// When it was mixed.
    pub mixed: Option<Moment>,
    /// Readings of this cup, in order of time.
    pub readings: Vec<CupReading>,
    /// What went into the chick so far.
    pub given: Millilitres,
}

/// Why a reading is not taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ReadingRefusal {
    /// It does not fit the readings before it: warmer again, or at the same time.
    Cooling(CoolingError),
}

/// When the cup may be fed, counted from now.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum CupOutlook {
    /// Nothing was measured yet.
    NotMeasured,
    /// One reading: a usual cup, with its bounds.
    Guessed(GuessedWindow),
    /// Two readings or more: this cup.
    Measured(ServingWindow),
    /// It cannot be told: the room is too near, or the cup too cold.
    Unknown,
}

impl Guide {
    /// A feed begun now, for the plan's volume.
    pub fn begin(now: Moment, plan: &CarePlan, slot: Slot) -> Self {
        let volume = plan
            .feed(slot)
            .map_or(Millilitres::whole(0), |feed| feed.volume);
        let room = Celsius::tenths_held(plan.room_from.tenths().midpoint(plan.room_to.tenths()));
        Self {
            slot,
            step: Step::Crop,
            begun: now,
            volume,
            room,
            mixed: None,
            readings: Vec::new(),
            given: Millilitres::whole(0),
        }
    }

    /// Whether the mix is too old to be fed.
    pub fn is_stale(&self, now: Moment) -> bool {
        let since = self.mixed.unwrap_or(self.begun);
        now.minutes_since(since) >= MIX_KEEPS_MINUTES
    }

    /// The cup was mixed: readings of an earlier cup no longer count.
    pub fn mix(&mut self, now: Moment) {
        self.mixed = Some(now);
        self.readings.clear();
    }

    /// Takes a reading of the cup.
    ///
    /// # Errors
    /// [`ReadingRefusal`] when it does not fit the readings before it; nothing is changed.
    pub fn measure(&mut self, now: Moment, cup: Celsius) -> Result<(), ReadingRefusal> {
        if let Some(last) = self.readings.last() {
            let minutes = |moment: Moment| moment.days_since(self.begun) * 1_440.0;
            let first = Reading {
                at_min: minutes(last.at),
                temp_c: last.cup.as_c(),
            };
            let second = Reading {
                at_min: minutes(now),
                temp_c: cup.as_c(),
            };
            CoolingLaw::through(self.room.as_c(), first, second)
                .map_err(ReadingRefusal::Cooling)?;
        }
        self.readings.push(CupReading { at: now, cup });
        Ok(())
    }

    /// The cup goes into the warm bath: it is measured anew from there.
    pub fn warm_again(&mut self) {
        self.readings.clear();
    }

    /// What the latest reading means.
    pub fn verdict(&self) -> Option<ServingVerdict> {
        self.readings
            .last()
            .map(|reading| serving_verdict(reading.cup.as_c()))
    }

    /// Whether the cup may be fed now by the latest reading, which is not older than five minutes, and
    /// by the age of the mix.
    ///
    /// Five minutes: ours; a filled syringe crosses the window in about that time.
    pub fn may_feed(&self, now: Moment) -> bool {
        let is_fresh = self
            .readings
            .last()
            .is_some_and(|reading| now.minutes_since(reading.at) < 5);
        is_fresh && !self.is_stale(now) && self.verdict().is_some_and(ServingVerdict::is_feedable)
    }

    /// The temperature of the cup now, by its own cooling or that of a usual cup.
    pub fn cup_now_c(&self, now: Moment) -> Option<f64> {
        let law = self.law()?;
        Some(law.temp_c_at(self.minutes(now)))
    }

    /// When the cup may be fed, in minutes since the feed was begun.
    pub fn cup_outlook(&self) -> CupOutlook {
        match self.readings.as_slice() {
            [] => CupOutlook::NotMeasured,
            [only] => guessed_window(self.room.as_c(), self.reading(*only))
                .map_or(CupOutlook::Unknown, CupOutlook::Guessed),
            _ => self
                .law()
                .and_then(|law| law.serving_window().ok())
                .map_or(CupOutlook::Unknown, CupOutlook::Measured),
        }
    }

    /// Minutes since the feed was begun.
    pub fn minutes(&self, moment: Moment) -> f64 {
        moment.days_since(self.begun) * 1_440.0
    }

    fn reading(&self, reading: CupReading) -> Reading {
        Reading {
            at_min: self.minutes(reading.at),
            temp_c: reading.cup.as_c(),
        }
    }

    fn law(&self) -> Option<CoolingLaw> {
        let room = self.room.as_c();
        match self.readings.as_slice() {
            [] => None,
            [only] => {
                CoolingLaw::from_half_time(room, self.reading(*only), USUAL_HALF_TIME_MIN).ok()
            }
            [.., before, last] => {
                CoolingLaw::through(room, self.reading(*before), self.reading(*last)).ok()
            }
        }
    }

    /// When the mix is to be thrown away; `None` before it was mixed.
    pub fn discard_by(&self) -> Option<Moment> {
        self.mixed
            .map(|mixed| mixed.plus_minutes(MIX_KEEPS_MINUTES))
    }

    /// Takes back what was counted wrongly, down to nothing.
    pub fn take_back(&mut self, volume: Millilitres) {
        let given = self.given.tenths().saturating_sub(volume.tenths()).max(0);
        self.given = Millilitres::tenths_held(given);
    }

    /// Counts what went into the chick, at most what was offered.
    pub fn give(&mut self, volume: Millilitres) {
        let given = self
            .given
            .tenths()
            .saturating_add(volume.tenths())
            .min(self.volume.tenths());
        self.given = Millilitres::tenths_held(given);
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::guide::*;
    use crate::domain::species::Species;

    fn now() -> Moment {
        Moment::from_seconds(1_790_000_000)
    }

    fn guide() -> Guide {
        let plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let mut guide = Guide::begin(now(), &plan, Slot::Bedtime);
        guide.room = Celsius::whole(22);
        guide
    }

    fn c(tenths: i32) -> Celsius {
        Celsius::tenths_held(tenths)
    }

    #[test]
    fn the_steps_follow_each_other_and_end() {
        assert_eq!(Step::Crop.next(), Some(Step::Mix));
        assert_eq!(Step::After.next(), None);
        assert_eq!(Step::After.number(), 8);
    }

    #[test]
    fn two_readings_tell_when_the_cup_is_ready() {
        let mut guide = guide();
        guide.mix(now());
        guide.measure(now(), c(480)).unwrap();
        guide.measure(now().plus_minutes(10), c(425)).unwrap();
        // k = ln(26/20.5)/10 = 0.023767/min; 41 °C after ln(26/19)/k = 13.197 min
        let CupOutlook::Measured(window) = guide.cup_outlook() else {
            panic!("two readings")
        };
        assert!((window.ready_min - 13.197).abs() < 0.01, "{window:?}");
    }

    #[test]
    fn a_reading_that_rises_is_refused_and_a_warm_bath_begins_anew() {
        let mut guide = guide();
        guide.mix(now());
        guide.measure(now(), c(370)).unwrap();
        assert!(guide.measure(now().plus_minutes(3), c(400)).is_err());
        assert_eq!(guide.readings.len(), 1);
        guide.warm_again();
        assert_eq!(guide.measure(now().plus_minutes(3), c(400)), Ok(()));
    }

    #[test]
    fn a_cup_may_be_fed_inside_the_window_by_a_fresh_reading_only() {
        for (tenths, is_fed) in [
            (379, false),
            (380, true),
            (400, true),
            (410, true),
            (411, false),
            (433, false),
        ] {
            let mut guide = guide();
            guide.measure(now(), c(tenths)).unwrap();
            assert_eq!(guide.may_feed(now()), is_fed, "{tenths}");
        }
        let mut guide = guide();
        guide.measure(now(), c(400)).unwrap();
        assert!(guide.may_feed(now().plus_seconds(299)));
        assert!(!guide.may_feed(now().plus_minutes(5)));
    }

    #[test]
    fn no_more_is_counted_than_was_offered() {
        let mut guide = guide();
        guide.volume = Millilitres::whole(60);
        guide.give(Millilitres::whole(35));
        guide.give(Millilitres::whole(35));
        assert_eq!(guide.given, Millilitres::whole(60));
    }

    #[test]
    fn a_draw_taken_back_no_longer_counts_and_never_goes_below_nothing() {
        let mut guide = guide();
        guide.volume = Millilitres::whole(60);
        guide.give(Millilitres::whole(35));
        guide.take_back(Millilitres::whole(5));
        assert_eq!(guide.given, Millilitres::whole(30));
        guide.take_back(Millilitres::whole(31));
        assert_eq!(guide.given, Millilitres::whole(0));
    }

    #[test]
    fn a_mix_is_thrown_away_after_an_hour() {
        let mut guide = guide();
        assert_eq!(guide.discard_by(), None);
        guide.mix(now().plus_minutes(5));
        assert_eq!(guide.discard_by(), Some(now().plus_minutes(65)));
        assert!(!guide.is_stale(now().plus_minutes(64)));
        assert!(guide.is_stale(now().plus_minutes(65)));
        guide.measure(now().plus_minutes(64), c(400)).unwrap();
        assert!(guide.may_feed(now().plus_minutes(64)));
        assert!(!guide.may_feed(now().plus_minutes(65)));
    }
}

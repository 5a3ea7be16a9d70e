//! One feed, step by step: where it stands, which readings were taken, what was given so far.
//!
//! The state is small and plain, so that it can be put away at each step and found again after a call,
//! a locked screen or a reload.

use crate::domain::formula::cooling::{CoolingError, CoolingLaw, Reading};
use crate::domain::formula::serving_heat::{Serving, ServingVerdict};
use crate::domain::formula::serving_window::{
    GuessedWindow, ServingWindow, USUAL_HALF_TIME_MIN, guessed_window,
};
use crate::domain::instruction::first::First;
use crate::domain::instruction::holds::{Demand, Hold};
use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::ChickId;
use crate::domain::plan::care_plan::{CarePlan, Slot};
use crate::domain::quantity::units::{Celsius, Millilitres};
use crate::domain::time::moment::Moment;

/// A guide that was not touched for this long is over: mixed food is thrown away after an hour.
///
/// Source: breeder pages, strict end of 1 h to 24 h; standing: common practice.
pub const MIX_KEEPS_MINUTES: i64 = 60;

/// A guide that was begun this long ago is over, minutes. Ours: by then the next feed may be near.
pub const UNDER_WAY_MINUTES: i64 = 6 * 60;

/// A note of the same feed ends the guide when its time is at most this long before the guide was begun,
/// or later, minutes. Ours: times are typed a little early.
pub const NOTED_BEFORE_MINUTES: i64 = 60;

/// A reading is good for this long, minutes. Ours: a filled syringe crosses the window in about that
/// time.
pub const READING_MINUTES: i64 = 5;

/// Readings less than this far apart, seconds, are of several places of one stirred cup. Ours: a cup of
/// 150 ml cools by 0.6 °C in that time, hardly more than a kitchen thermometer can tell.
pub const SAME_STIR_SECONDS: i64 = 120;

/// The last reading counts as the serving temperature for this long, minutes. Ours: a feed takes no
/// longer.
pub const FEED_TAKES_MINUTES: i64 = 20;

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

    /// The step before this one.
    #[must_use]
    pub fn before(self) -> Option<Self> {
        Self::ALL.into_iter().rev().find(|step| *step < self)
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
pub struct FeedSession {
    /// Whose feed it is.
    pub chick: ChickId,
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

/// How a reading was taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Taken {
    /// It goes on from the readings before it, or is the first.
    Fits,
    /// It is another place of the same cup, no hotter than the one before: the hottest counts.
    OtherPlace,
    /// It is warmer than the one before: what was read before no longer counts, least of all as cool
    /// enough to give.
    Alone,
}

/// Why a reading is not taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ReadingRefusal {
    /// It tells nothing beside the readings before it: the same again, or colder than the room.
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

impl FeedSession {
    /// A feed begun now, for the plan's volume.
    pub fn begin(now: Moment, chick: ChickId, plan: &CarePlan, slot: Slot) -> Self {
        let volume = planned(plan, slot);
        let room = Celsius::tenths_held(plan.room_from.tenths().midpoint(plan.room_to.tenths()));
        Self {
            chick,
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

    /// Whether this feed of this chick is still under way: begun lately, in its plan, and not noted
    /// elsewhere meanwhile.
    pub fn is_under_way(&self, now: Moment, chick: &Chick) -> bool {
        let noted_from = self.begun.plus_minutes(-NOTED_BEFORE_MINUTES);
        let is_noted = chick.feeds.iter().any(|note| {
            note.at >= noted_from && note.what.counts_as.is_none_or(|slot| slot == self.slot)
        });
        self.chick == chick.id
            && now.minutes_since(self.begun) < UNDER_WAY_MINUTES
            && chick.plan.feed(self.slot).is_some()
            && !is_noted
    }

    /// What forbids going on now: until the last draw is given a chick may fall ill, or somebody else
    /// may note what was seen or fed. The first step is a look at the crop itself.
    pub fn holds(&self, holds: &[Hold]) -> Vec<Hold> {
        let is_look = |hold: &Hold| hold.demand == Demand::First(First::LookAtCrop);
        let stops = |hold: &&Hold| {
            let is_late_look = is_look(hold) && self.step > Step::Crop;
            self.step <= Step::Give && (hold.is_against_food() || is_late_look)
        };
        holds.iter().filter(stops).copied().collect()
    }

    /// Offers what the plan of this feed wants now, never less than was given: it may have changed
    /// since, as by the arrival.
    pub fn offer_anew(&mut self, plan: &CarePlan) {
        let wanted = planned(plan, self.slot);
        self.volume = if self.given.tenths() == 0 {
            wanted
        } else {
            self.volume.min(wanted.max(self.given))
        };
    }

    /// Whether the cup must be measured again before anything is drawn up or given: before the first draw
    /// without a fresh reading, and at any time after a warm bath.
    pub fn is_to_be_measured(&self, now: Moment, serving: Serving) -> bool {
        let is_before_giving = (Step::DrawUp..=Step::Give).contains(&self.step);
        let is_first = self.given.tenths() == 0 && !self.may_feed(now, serving);
        is_before_giving && (is_first || self.readings.is_empty())
    }

    /// How warm it was served, for a feed that ends now; `None` when the last reading is too old to
    /// tell.
    pub fn served_at(&self, now: Moment) -> Option<Celsius> {
        let last = self.readings.last()?;
        (now.minutes_since(last.at) <= FEED_TAKES_MINUTES).then_some(last.cup)
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

    /// Takes a reading of the cup. A warmer one than before always counts: it may be a hot spot.
    ///
    /// # Errors
    /// [`ReadingRefusal`] when it tells nothing beside the readings before it; nothing is changed.
    pub fn measure(&mut self, now: Moment, cup: Celsius) -> Result<Taken, ReadingRefusal> {
        let mut taken = Taken::Fits;
        if let Some(last) = self.readings.last() {
            let is_same_stir = now.seconds() - last.at.seconds() < SAME_STIR_SECONDS;
            if is_same_stir && self.room < cup && cup <= last.cup {
                return Ok(Taken::OtherPlace);
            }
            let minutes = |moment: Moment| moment.days_since(self.begun) * 1_440.0;
            let first = Reading {
                at_min: minutes(last.at),
                temp_c: last.cup.as_c(),
            };
            let second = Reading {
                at_min: minutes(now),
                temp_c: cup.as_c(),
            };
            if let Err(error) = CoolingLaw::through(self.room.as_c(), first, second) {
                if cup <= last.cup {
                    return Err(ReadingRefusal::Cooling(error));
                }
                self.readings.clear();
                taken = Taken::Alone;
            }
        }
        self.readings.push(CupReading { at: now, cup });
        Ok(taken)
    }

    /// The cup goes into the warm bath: it is measured anew from there.
    pub fn warm_again(&mut self) {
        self.readings.clear();
    }

    /// What the latest reading means in the plan's window.
    pub fn verdict(&self, serving: Serving) -> Option<ServingVerdict> {
        self.readings
            .last()
            .map(|reading| serving.verdict(reading.cup.as_c()))
    }

    /// Whether the cup may be fed now by the latest reading, which is younger than
    /// [`READING_MINUTES`], and by the age of the mix.
    pub fn may_feed(&self, now: Moment, serving: Serving) -> bool {
        let is_fresh = self
            .readings
            .last()
            .is_some_and(|reading| now.minutes_since(reading.at) < READING_MINUTES);
        let verdict = self.verdict(serving);
        is_fresh && !self.is_stale(now) && verdict.is_some_and(ServingVerdict::is_feedable)
    }

    /// The temperature of the cup now, by its own cooling or that of a usual cup.
    pub fn cup_now_c(&self, now: Moment) -> Option<f64> {
        let law = self.law()?;
        Some(law.temp_c_at(self.minutes(now)))
    }

    /// When the cup may be fed, in minutes since the feed was begun.
    pub fn cup_outlook(&self, serving: Serving) -> CupOutlook {
        match self.readings.as_slice() {
            [] => CupOutlook::NotMeasured,
            [only] => guessed_window(self.room.as_c(), self.reading(*only), serving)
                .map_or(CupOutlook::Unknown, CupOutlook::Guessed),
            _ => self
                .law()
                .and_then(|law| law.serving_window(serving).ok())
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

/// What a plan wants of a feed; nothing of one that it does not have.
fn planned(plan: &CarePlan, slot: Slot) -> Millilitres {
    plan.feed(slot)
        .map_or(Millilitres::whole(0), |feed| feed.volume)
}

#[cfg(test)]
mod tests {
    use crate::domain::instruction::feed_session::*;
    use crate::domain::instruction::holds::Why;
    use crate::domain::journal::entries::Change;
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::journal::signs::Sign;
    use crate::domain::plan::species::Species;
    use crate::domain::time::moment::{Day, Offset};
    use crate::domain::warnings::level::Level;

    const CHICK: ChickId = ChickId([7; 12]);

    const SERVING: Serving = Serving {
        from_c: 38.0,
        to_c: 41.0,
    };

    fn now() -> Moment {
        Moment::from_seconds(1_790_000_000)
    }

    fn guide() -> FeedSession {
        let plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let mut guide = FeedSession::begin(now(), CHICK, &plan, Slot::Bedtime);
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
        assert_eq!(Step::After.before(), Some(Step::Give));
        assert_eq!(Step::Crop.before(), None);
        assert_eq!(Step::After.number(), 8);
    }

    #[test]
    fn two_readings_tell_when_the_cup_is_ready() {
        let mut guide = guide();
        guide.mix(now());
        guide.measure(now(), c(480)).unwrap();
        guide.measure(now().plus_minutes(10), c(425)).unwrap();
        // k = ln(26/20.5)/10 = 0.023767/min; 41 °C after ln(26/19)/k = 13.197 min
        let CupOutlook::Measured(window) = guide.cup_outlook(SERVING) else {
            panic!("two readings")
        };
        assert!((window.ready_min - 13.197).abs() < 0.01, "{window:?}");
    }

    #[test]
    fn a_warmer_reading_stands_alone_and_takes_the_leave_to_feed_back() {
        for seconds in [0, 15, 180] {
            let mut guide = guide();
            guide.mix(now());
            guide.measure(now(), c(450)).unwrap();
            guide.measure(now().plus_minutes(5), c(402)).unwrap();
            let later = now().plus_minutes(5).plus_seconds(seconds);
            assert!(guide.may_feed(later, SERVING));
            assert_eq!(
                guide.measure(later, c(480)),
                Ok(Taken::Alone),
                "{seconds} s"
            );
            assert_eq!(guide.readings.len(), 1);
            assert!(!guide.may_feed(later, SERVING));
        }
    }

    #[test]
    fn a_reading_that_tells_nothing_new_is_refused_and_a_warm_bath_begins_anew() {
        let mut guide = guide();
        guide.mix(now());
        guide.measure(now(), c(370)).unwrap();
        // the same again, colder than the room of 22 °C
        for (minutes, tenths) in [(3, 370), (0, 219), (3, 219)] {
            let reading = guide.measure(now().plus_minutes(minutes), c(tenths));
            assert!(reading.is_err(), "{tenths} after {minutes} min");
        }
        assert_eq!(guide.readings.len(), 1);
        guide.warm_again();
        let reading = guide.measure(now().plus_minutes(3), c(400));
        assert_eq!(reading, Ok(Taken::Fits));
    }

    #[test]
    fn readings_less_than_two_minutes_apart_are_places_of_one_cup_and_the_hottest_counts() {
        let second = |seconds| {
            let mut guide = guide();
            guide.mix(now());
            guide.measure(now(), c(415)).unwrap();
            let later = now().plus_seconds(seconds);
            let taken = guide.measure(later, c(400)).unwrap();
            (taken, guide.may_feed(later, SERVING))
        };
        assert_eq!(second(0), (Taken::OtherPlace, false));
        assert_eq!(second(119), (Taken::OtherPlace, false));
        assert_eq!(second(120), (Taken::Fits, true));
        assert_eq!(second(121), (Taken::Fits, true));
    }

    #[test]
    fn a_cup_from_the_warm_bath_is_measured_also_in_the_middle_of_a_feed() {
        let mut guide = guide();
        guide.volume = Millilitres::whole(60);
        guide.measure(now(), c(400)).unwrap();
        guide.step = Step::Give;
        guide.give(Millilitres::whole(30));
        assert!(!guide.is_to_be_measured(now(), SERVING));
        guide.warm_again();
        assert!(guide.is_to_be_measured(now(), SERVING));
        guide.measure(now(), c(400)).unwrap();
        assert!(!guide.is_to_be_measured(now(), SERVING));
    }

    /// The midday feed of 14:00, begun at 13:50.
    fn at_midday() -> (Scenario, FeedSession) {
        let plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let day = Day::from_date(2026, 11, 2).unwrap();
        let mut script = Scenario::new(CHICK, plan.clone(), day, Offset::UTC);
        script.feed(1, 7, 0, Slot::Morning, 60);
        let guide = FeedSession::begin(script.at(1, 13, 50), CHICK, &plan, Slot::Midday);
        (script, guide)
    }

    #[test]
    fn a_feed_noted_elsewhere_is_no_longer_under_way() {
        let (script, guide) = at_midday();
        let is_under_way = |script: &Scenario, hour, minute| {
            guide.is_under_way(script.at(1, hour, minute), &script.chick().unwrap())
        };
        assert!(is_under_way(&script, 19, 49));
        assert!(!is_under_way(&script, 19, 50));
        // noted for the time it began, for up to an hour before, or refused
        for (hour, minute, is_over) in [(13, 49, true), (12, 50, true), (12, 49, false)] {
            let (mut script, _) = at_midday();
            script.note(1, hour, minute, Change::refused(Some(Slot::Midday)));
            assert_eq!(is_under_way(&script, 14, 0), !is_over, "{hour}:{minute}");
        }
        let (mut script, _) = at_midday();
        script.feed(1, 13, 55, Slot::Bedtime, 60);
        assert!(is_under_way(&script, 14, 0), "another feed");
    }

    #[test]
    fn a_guide_belongs_to_its_chick_and_its_plan() {
        let (script, mut guide) = at_midday();
        let mut chick = script.chick().unwrap();
        let now = script.at(1, 14, 0);
        assert!(guide.is_under_way(now, &chick));
        guide.chick = ChickId([8; 12]);
        assert!(!guide.is_under_way(now, &chick));
        guide.chick = CHICK;
        chick.plan.feeds.retain(|feed| feed.slot != Slot::Midday);
        assert!(!guide.is_under_way(now, &chick));
    }

    #[test]
    fn what_forbids_a_feed_forbids_it_up_to_the_last_draw() {
        let (_, mut guide) = at_midday();
        let hold = |demand| Hold {
            why: Why::Sign(Sign::Cold),
            demand,
            level: Level::Emergency,
            since: now(),
        };
        let look = Demand::First(First::LookAtCrop);
        let weigh = Demand::First(First::Weigh);
        for step in Step::ALL {
            guide.step = step;
            let stops = |demand| !guide.holds(&[hold(demand)]).is_empty();
            assert_eq!(stops(Demand::DoNotFeed), step != Step::After, "{step:?}");
            let is_after_look = step != Step::Crop && step != Step::After;
            assert_eq!(stops(look), is_after_look, "{step:?}");
            assert!(!stops(weigh), "{step:?}");
        }
    }

    #[test]
    fn a_feed_is_offered_by_the_plan_of_now_and_never_below_what_was_given() {
        let (_, mut guide) = at_midday();
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let mut offered = |guide: &mut FeedSession, ml| {
            for feed in &mut plan.feeds {
                feed.volume = Millilitres::whole(ml);
            }
            guide.offer_anew(&plan);
            guide.volume
        };
        assert_eq!(offered(&mut guide, 45), Millilitres::whole(45));
        assert_eq!(offered(&mut guide, 60), Millilitres::whole(60));
        guide.give(Millilitres::whole(30));
        assert_eq!(offered(&mut guide, 70), Millilitres::whole(60));
        assert_eq!(offered(&mut guide, 45), Millilitres::whole(45));
        assert_eq!(offered(&mut guide, 20), Millilitres::whole(30));
    }

    #[test]
    fn a_cup_is_measured_again_before_the_first_draw_but_not_in_the_middle() {
        let mut guide = guide();
        guide.measure(now(), c(400)).unwrap();
        for step in Step::ALL {
            guide.step = step;
            let is_asked = (Step::DrawUp..=Step::Give).contains(&step);
            assert!(
                !guide.is_to_be_measured(now().plus_seconds(299), SERVING),
                "{step:?}"
            );
            assert_eq!(
                guide.is_to_be_measured(now().plus_minutes(5), SERVING),
                is_asked,
                "{step:?}"
            );
        }
        guide.step = Step::Give;
        guide.volume = Millilitres::whole(60);
        guide.give(Millilitres::whole(30));
        assert!(!guide.is_to_be_measured(now().plus_minutes(5), SERVING));
    }

    #[test]
    fn an_old_reading_does_not_tell_how_warm_it_was_served() {
        let mut guide = guide();
        assert_eq!(guide.served_at(now()), None);
        guide.measure(now(), c(400)).unwrap();
        assert_eq!(guide.served_at(now().plus_minutes(20)), Some(c(400)));
        assert_eq!(guide.served_at(now().plus_minutes(21)), None);
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
            assert_eq!(guide.may_feed(now(), SERVING), is_fed, "{tenths}");
        }
        let mut guide = guide();
        guide.measure(now(), c(400)).unwrap();
        assert!(guide.may_feed(now().plus_seconds(299), SERVING));
        assert!(!guide.may_feed(now().plus_minutes(5), SERVING));
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
        assert!(guide.may_feed(now().plus_minutes(64), SERVING));
        assert!(!guide.may_feed(now().plus_minutes(65), SERVING));
    }
}

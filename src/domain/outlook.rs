//! Everything the screens show of one chick at one moment, worked out once.

use std::sync::Arc;

use crate::domain::feeding::food::{self, FoodNames};
use crate::domain::feeding::lived_zone::lived_zone;
use crate::domain::feeding::same_food;
use crate::domain::feeding::schedule;
use crate::domain::feeding::scheduled::{FeedState, ScheduledFeed};
use crate::domain::homecoming::first_days::first_feed_powder;
use crate::domain::homecoming::life_stage::{LifeStage, Reminder, life_stage};
use crate::domain::homecoming::transit::{Transit, transit};
use crate::domain::instruction::answer::{Instruction, instruction};
use crate::domain::instruction::call_next::is_call_next;
use crate::domain::instruction::first::First;
use crate::domain::instruction::holds::{Demand, Hold, HoldFacts, Why, holds};
use crate::domain::instruction::lifting::advised_volume;
use crate::domain::journal::chick::{Chick, Noted, Weighing};
use crate::domain::journal::entries::{ChickId, Journal};
use crate::domain::plan::care_plan::{CarePlan, Role, Slot};
use crate::domain::quantity::units::{Grams, Millilitres};
use crate::domain::time::moment::{Age, Day, Lived, Moment, Offset, WallTime};
use crate::domain::time::zone::Zone;
use crate::domain::warnings::call_weight::call_weight;
use crate::domain::warnings::crop_ladder;
use crate::domain::warnings::level::{Finding, Level};
use crate::domain::warnings::rules::Facts;
use crate::domain::warnings::second_weighing::{Judgement, SecondWeighing, judgement};
use crate::domain::weaning::facts::WeaningFacts;
use crate::domain::weaning::{self, Verdict, Weaning};
use crate::domain::weight::loss;
use crate::domain::weight::trend::{WeightTrend, weight_trend};

/// One chick at one moment.
#[derive(Debug, Clone, PartialEq)]
pub struct Outlook {
    /// The moment.
    pub now: Moment,
    /// The wall time lived at that moment.
    pub lived: Lived,
    /// The wall clock's offset at that moment.
    pub offset: Offset,
    /// The zone the phone is in, and past days as they were lived.
    pub zone: Zone,
    /// The chick.
    pub chick: Arc<Chick>,
    /// Its age, when the hatch day is known.
    pub age: Option<Age>,
    /// Where it stands in its life.
    pub stage: LifeStage,
    /// How worried to be.
    pub level: Level,
    /// Why, most worrying first.
    pub findings: Vec<Finding>,
    /// Feeds from the day before yesterday to tomorrow.
    pub feeds: Vec<ScheduledFeed>,
    /// The next feed to give; none in a stage in which nobody is reminded of feeds.
    pub next_feed: Option<ScheduledFeed>,
    /// The one answer to "may I feed now".
    pub instruction: Instruction,
    /// Everything that keeps food back now, most worrying first.
    pub holds: Vec<Hold>,
    /// Where it is on its way to the new home.
    pub transit: Option<Transit>,
    /// Weight now.
    pub weight: WeightNow,
    /// Which feed may go next, or is to come back.
    pub weaning: Weaning,
}

impl Outlook {
    /// The day lived at a moment near now, at the offset in force now.
    pub fn day_of(&self, moment: Moment) -> Day {
        moment.lived(self.offset).day
    }

    /// The planned feed of every note of food there is.
    pub fn food(&self) -> FoodNames {
        food::food_of(self.now, &self.chick, &self.zone)
    }

    /// Whether it has left the breeder and is not yet expected: no feed is due here.
    pub fn is_away(&self) -> bool {
        is_away(self.now, self.transit)
    }

    /// Whether the weighing of this day is still ahead: none was made, and the first feed is the next.
    /// After a feed the crop holds food, so the next empty-crop weight is that of the next morning.
    pub fn is_to_be_weighed(&self) -> bool {
        let is_weighing = |hold: &Hold| hold.demand == Demand::First(First::Weigh);
        self.stage.reminds(Reminder::Weighing) && self.holds.iter().any(is_weighing)
    }

    /// Whether the last feed of the evening was not eaten and is over: nothing more is offered before the first
    /// feed of the day that comes.
    pub fn is_left_to_sleep(&self) -> bool {
        let Some(next) = self.next_feed.as_ref() else {
            return false;
        };
        let earlier = self.feeds.iter();
        let earlier = earlier.filter(|feed| feed.planned < next.planned);
        let last = earlier.max_by_key(|feed| feed.planned);
        let last = last.filter(|last| last.day < next.day);
        let is_over = last.is_some_and(|last| match last.state {
            FeedState::Refused(_) | FeedState::LeftOut(_) | FeedState::Unanswered => true,
            FeedState::Upcoming
            | FeedState::Due
            | FeedState::Late
            | FeedState::TryAgain(_)
            | FeedState::PutOff
            | FeedState::OnTheWay
            | FeedState::Done(_) => false,
        });
        is_over && !next.is_first_home && !next.is_due(self.now)
    }

    /// The feed that ended the day, from then until the morning begins: the chick sleeps and nothing is due.
    ///
    /// It is the last feed of the plan's day, given in the evening, with nothing left to be asked; the night is over with whatever is noted
    /// of the morning, or [`MORNING_MINUTES`] before the first feed. Any level above *Settled* ends it.
    pub fn night(&self) -> Option<Night> {
        let next = self.next_feed.as_ref()?;
        let in_force = self.chick.feeds_in_force(self.now);
        let (first, last) = (in_force.first()?.slot, in_force.last()?.slot);
        let is_calm = self.level == Level::Settled
            && next.slot == first
            && !next.is_due(self.now)
            && next.due.minutes_since(self.now) > MORNING_MINUTES
            && matches!(
                self.instruction,
                Instruction::WaitUntil {
                    why: Why::NotYetDue,
                    ..
                }
            );
        let evening = next.day.plus(-1);
        let is_asked = |feed: &ScheduledFeed| feed.day >= evening && feed.is_asked();
        let is_calm = is_calm
            && !self.feeds.iter().any(is_asked)
            && same_food::questions(self.now, &self.chick).is_empty();
        let mut feeds = self.feeds.iter();
        let given = feeds.find(|feed| feed.slot == last && feed.day == evening)?;
        let FeedState::Done(sitting) = &given.state else {
            return None;
        };
        let at = sitting.at.lived(self.offset);
        let has_begun = at.day > evening || at.time >= EVENING_STARTS;
        let morning = |at: Moment| {
            sitting.at < at && at <= self.now && at.lived(self.offset).care_day() > evening
        };
        let is_over = self
            .chick
            .weighings
            .iter()
            .any(|weighing| morning(weighing.at))
            || self.chick.crops.iter().any(|crop| morning(crop.at));
        (is_calm && has_begun && !is_over).then_some(Night {
            slot: last,
            at: at.time,
            taken: sitting.taken,
            next: next.slot,
            due: next.due,
        })
    }

    /// Whether the first feed of this day is still ahead: the crop is then empty, or ought to be.
    pub fn is_before_first_feed(&self) -> bool {
        is_first_of_day(
            self.now,
            &self.chick,
            self.next_feed.as_ref(),
            self.lived.day,
        )
    }

    /// The moments after this one at which it is asked again whether the answer is still the same: every
    /// `AHEAD_STEP_MINUTES`, and last a second before what is waited for.
    pub fn moments_ahead(&self) -> impl Iterator<Item = Moment> + use<> {
        let now = self.now;
        let end = match self.instruction {
            Instruction::WaitUntil { until, .. } => until,
            Instruction::Feed { .. }
            | Instruction::First(_)
            | Instruction::AskFirst { .. }
            | Instruction::DoNotFeed { .. }
            | Instruction::Nothing(_) => now.plus_minutes(AHEAD_MINUTES),
        };
        let end = end.min(now.plus_minutes(AHEAD_MINUTES)).plus_seconds(-1);
        let steps = 1..=AHEAD_MINUTES / AHEAD_STEP_MINUTES;
        let moments = steps.map(move |step| now.plus_minutes(step * AHEAD_STEP_MINUTES));
        moments.take_while(move |at| *at < end).chain([end])
    }

    /// The outlook of another moment if nothing is noted until then; `zone` as it was given for this one.
    #[must_use]
    pub fn at(&self, then: Moment, zone: &Zone) -> Self {
        outlook_of(then, Arc::clone(&self.chick), zone)
    }

    /// Whether another moment has the same answer: what to do about the same feed, and how worried to be.
    pub fn answers_as(&self, other: &Self) -> bool {
        let feed = |outlook: &Self| {
            let next = outlook.next_feed.as_ref();
            next.map(|feed| (feed.slot, feed.due))
        };
        self.instruction == other.instruction
            && self.level == other.level
            && self.is_call_next() == other.is_call_next()
            && feed(self) == feed(other)
    }

    /// Whether the call is the next act, also where a feed goes on: [`is_call_next`].
    pub fn is_call_next(&self) -> bool {
        is_call_next(self.now, &self.chick, self.level, &self.findings)
    }

    /// The name of the breeder, where a feed may go and the plan wants that asked before; empty when nobody typed it.
    pub fn ask_before_drop(&self) -> Option<&str> {
        let plan = &self.chick.plan;
        let is_asked = plan.ask_before_drop && matches!(self.weaning.verdict, Verdict::MayDrop(_));
        let name = plan
            .contact(Role::Breeder)
            .map(|breeder| breeder.name.trim());
        is_asked.then(|| name.unwrap_or_default())
    }

    /// The level that the scale alone says. What calls for another reason is no word about the weight,
    /// neither a bad nor a good one: `None` then.
    pub fn weight_level(&self) -> Option<Level> {
        let findings = self.findings.iter();
        let of_weight = findings.filter(|finding| finding.rule.is_of_weight());
        let is_settled = self.level == Level::Settled;
        of_weight
            .map(|finding| finding.level)
            .max()
            .or(is_settled.then_some(Level::Settled))
    }

    /// The plan as it is for the feed of a slot: that of the first feed after the arrival is smaller and
    /// thinner, and another try offers what is lacking.
    pub fn plan_of_feed(&self, slot: Slot) -> CarePlan {
        let mut plan = self.chick.plan.clone();
        let next = self.next_feed.as_ref().filter(|feed| feed.slot == slot);
        let Some(next) = next else {
            return plan;
        };
        if next.is_first_home {
            plan.powder_fraction = first_feed_powder(plan.powder_fraction);
        }
        let most = advised_volume(self.now, &self.chick);
        for feed in plan.feeds.iter_mut().filter(|feed| feed.slot == slot) {
            feed.volume = most.map_or(next.volume, |most| most.min(next.volume));
        }
        plan
    }
}

fn is_away(now: Moment, transit: Option<Transit>) -> bool {
    transit.is_some_and(|way| way.has_left && now < way.journey.expected)
}

/// Whether the next feed is the first of this day.
fn is_first_of_day(now: Moment, chick: &Chick, next: Option<&ScheduledFeed>, today: Day) -> bool {
    let in_force = chick.feeds_in_force(now);
    let first = in_force.first().zip(next);
    first.is_some_and(|(first, next)| next.slot == first.slot && next.day == today)
}

/// Minutes before the first feed at which the night is over. Ours: time to feel the crop and weigh.
pub const MORNING_MINUTES: i64 = 60;

/// How far ahead the answer is looked for. Ours: a night.
const AHEAD_MINUTES: i64 = 12 * 60;

/// How often on the way there. Ours.
const AHEAD_STEP_MINUTES: i64 = 5;

/// Wall time from which a last feed ends the day. Ours.
const EVENING_STARTS: WallTime = WallTime::from_hour(18);

/// A night without anything to do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Night {
    /// The feed that ended the day.
    pub slot: Slot,
    /// When it was given.
    pub at: WallTime,
    /// How much it took.
    pub taken: Millilitres,
    /// The feed of the morning.
    pub next: Slot,
    /// When that is due.
    pub due: Moment,
}

/// Weight at one moment.
#[derive(Debug, Clone, PartialEq)]
pub struct WeightNow {
    /// The highest weight of the next morning, weighed twice, at which a rule on the weight calls.
    pub call_at: Option<Grams>,
    /// The latest weight with an empty crop, the middle of those that were weighed together.
    pub latest: Option<Noted<Weighing>>,
    /// Loss against the handover weight, per cent; below zero for a gain.
    pub handover_loss_pct: Option<f64>,
    /// Loss since the morning before, per cent; below zero for a gain.
    pub one_day_loss_pct: Option<f64>,
    /// Whether an empty-crop weighing of today is there.
    pub is_weighed_today: bool,
    /// Whether the latest weight is to be weighed again.
    pub second_weighing: Option<SecondWeighing>,
    /// Level, pace, chances and path.
    pub trend: WeightTrend,
}

/// The outlook of a chick; `None` when the journal has no such chick.
pub fn outlook(now: Moment, journal: &Journal, chick: ChickId, zone: &Zone) -> Option<Outlook> {
    let chick = Chick::from_journal(journal, chick)?;
    Some(outlook_of(now, Arc::new(chick), zone))
}

fn outlook_of(now: Moment, chick: Arc<Chick>, zone: &Zone) -> Outlook {
    let zone = &lived_zone(&chick, zone);
    let lived = zone.lived(now);
    let mut feeds = schedule::feeds(now, &chick, zone, lived.day.plus(-2), lived.day.plus(2));
    let stage = life_stage(now, &chick, zone);
    let next_feed = feeds
        .iter()
        .find(|feed| feed.is_open())
        .filter(|_| stage.reminds(Reminder::Feed))
        .cloned();
    feeds.retain(|feed| feed.day <= lived.day.plus(1));
    let trend = weight_trend(now, &chick);
    let facts = Facts {
        now,
        zone,
        chick: &chick,
        feeds: &feeds,
        trend: &trend,
        stage,
    };
    let (judgement, call_at) = (judgement(&facts), call_weight(&facts));
    let Judgement {
        level,
        findings,
        second_weighing,
    } = judgement;
    let latest = trend.latest.map(|latest| latest.sitting.noted());
    let weight = WeightNow {
        second_weighing,
        call_at,
        is_weighed_today: latest
            .as_ref()
            .is_some_and(|latest| latest.lived().day == lived.day),
        latest,
        handover_loss_pct: loss::handover_loss_pct(now, &chick),
        one_day_loss_pct: loss::one_day_loss_pct(now, &chick),
        trend,
    };
    let transit = transit(now, &chick, zone);
    let is_away = is_away(now, transit);
    let is_first = is_first_of_day(now, &chick, next_feed.as_ref(), lived.day);
    let facts = HoldFacts {
        now,
        today: crop_ladder::care_day(now, zone.offset_at(now)),
        chick: &chick,
        findings: &findings,
        next: next_feed.as_ref(),
        is_away,
        is_to_be_weighed: is_first && !weight.is_weighed_today && !is_away,
    };
    let holds = holds(&facts);
    let instruction = instruction(&facts, &holds);
    // What keeps food back longer than its finding lasts keeps the level as well.
    let level = instruction.call().map_or(level, |call| call.max(level));
    let weaning = weaning::assess(&WeaningFacts {
        now,
        zone,
        chick: &chick,
        level,
        findings: &findings,
        is_feeding_forbidden: instruction.forbids(),
        pct_of_peak: weight.trend.peak_loss_pct.map(|loss| 100.0 - loss),
    });
    let age = chick
        .plan
        .hatched
        .and_then(|hatched| Age::on(lived.day, hatched));
    Outlook {
        now,
        lived,
        offset: zone.offset_at(now),
        zone: zone.clone(),
        age,
        stage,
        level,
        findings,
        feeds,
        next_feed,
        instruction,
        holds,
        transit,
        chick,
        weight,
        weaning,
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, CropFeel, CropState};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::journal::signs::Sign;
    use crate::domain::outlook::*;
    use crate::domain::warnings::rules::trial::macaw;

    fn is_to_be_weighed(script: &Scenario, day: i32, hour: i32) -> bool {
        let now = script.at(day, hour, 0);
        let chick = script.journal().chicks()[0];
        outlook(now, &script.journal(), chick, &script.zone())
            .unwrap()
            .is_to_be_weighed()
    }

    /// Until when the answer of a moment holds, as the page before the app is told.
    fn holds_until(script: &Scenario, now: Moment) -> Moment {
        let (journal, zone) = (script.journal(), script.zone());
        let chick = journal.chicks()[0];
        let at = |at| outlook(at, &journal, chick, &zone).unwrap();
        let first = at(now);
        let ahead = first.moments_ahead();
        let held = ahead.take_while(|moment| {
            let then = at(*moment);
            assert_eq!(first.at(*moment, &zone), then);
            first.answers_as(&then)
        });
        let until = held.last().unwrap_or(now);
        // Asked far more often than it was looked for, nothing else is answered before then.
        for second in (0..until.seconds() - now.seconds()).step_by(20) {
            assert!(first.answers_as(&at(now.plus_seconds(second))), "{second}");
        }
        until
    }

    #[test]
    fn an_answer_is_told_for_as_long_as_it_is_the_same() {
        // fed at 07:00, 14:00 and 21:00
        let mut script = macaw();
        script.weigh(1, 1010);
        script.feed(1, 7, 0, Slot::Morning, 80);
        script.feed(1, 14, 0, Slot::Midday, 80);
        let waiting = holds_until(&script, script.at(1, 14, 30));
        assert!(waiting <= script.at(1, 21, 0), "a feed is due then");
        assert!(waiting >= script.at(1, 15, 0), "{waiting:?}");
        // Due at 21:00: whatever it says then ends before the next feed is the one to give.
        let due = holds_until(&script, script.at(1, 21, 0));
        assert!(due < script.at(2, 7, 0), "{due:?}");
        let away = script.at(1, 21, 0).plus_minutes(AHEAD_MINUTES);
        assert!(due < away);
    }

    #[test]
    fn after_the_last_try_of_the_evening_a_chick_is_left_to_sleep() {
        // fed at 07:00, 14:00 and 21:00; tried again 45 min and 2.5 h after a refusal
        let mut script = macaw();
        script.feed(1, 7, 0, Slot::Morning, 80);
        script.feed(1, 14, 0, Slot::Midday, 80);
        let sleeps = |script: &Scenario, day: i32, hour: i32, minute: i32| {
            let now = script.at(day, hour, minute);
            let chick = script.journal().chicks()[0];
            let outlook = outlook(now, &script.journal(), chick, &script.zone());
            outlook.unwrap().is_left_to_sleep()
        };
        assert!(!sleeps(&script, 1, 20, 0));
        script.note(1, 21, 0, Change::refused(None));
        assert!(!sleeps(&script, 1, 21, 10), "a try is still to come");
        script.note(1, 21, 50, Change::refused(None));
        assert!(sleeps(&script, 1, 23, 59));
        assert!(sleeps(&script, 2, 5, 0));
        assert!(
            !sleeps(&script, 2, 6, 0),
            "the first feed of the day may go"
        );
        script.feed(1, 22, 0, Slot::Bedtime, 80);
        assert!(!sleeps(&script, 1, 23, 59), "it ate");
    }

    #[test]
    fn a_chick_is_to_be_weighed_before_its_first_feed_and_not_at_bedtime() {
        // fed at 07:00, 14:00 and 21:00
        let mut script = macaw();
        assert!(is_to_be_weighed(&script, 1, 6));
        script.feed(1, 7, 0, Slot::Morning, 80);
        assert!(!is_to_be_weighed(&script, 1, 8));
        script.feed(1, 14, 0, Slot::Midday, 80);
        assert!(!is_to_be_weighed(&script, 1, 20));
        script.feed(1, 21, 0, Slot::Bedtime, 80);
        assert!(!is_to_be_weighed(&script, 1, 22));
        assert!(is_to_be_weighed(&script, 2, 6));
        script.weigh(2, 1_000);
        assert!(!is_to_be_weighed(&script, 2, 7));
    }

    fn night(script: &Scenario, day: i32, hour: i32, minute: i32) -> Option<Night> {
        let now = script.at(day, hour, minute);
        let chick = script.journal().chicks()[0];
        let outlook = outlook(now, &script.journal(), chick, &script.zone());
        outlook.unwrap().night()
    }

    /// Fed at 07:00, 14:00 and 21:00 of day 1, all of it noted.
    fn fed_all_day() -> Scenario {
        let mut script = macaw();
        script.weigh(1, 1_040);
        script.feed(1, 7, 0, Slot::Morning, 80);
        script.feed(1, 14, 0, Slot::Midday, 80);
        script
    }

    #[test]
    fn the_night_begins_with_the_bedtime_feed_and_ends_an_hour_before_the_morning_s() {
        let mut script = fed_all_day();
        assert_eq!(night(&script, 1, 15, 0), None);
        script.feed(1, 21, 4, Slot::Bedtime, 55);
        let found = night(&script, 1, 22, 40).unwrap();
        assert_eq!((found.slot, found.next), (Slot::Bedtime, Slot::Morning));
        assert_eq!(found.at.text(), "21:04");
        assert_eq!(found.taken, Millilitres::whole(55));
        assert_eq!(found.due, script.at(2, 7, 0));
        assert!(night(&script, 2, 5, 59).is_some());
        assert_eq!(night(&script, 2, 6, 0), None);
    }

    #[test]
    fn the_first_look_of_the_morning_and_any_level_end_the_night() {
        let mut script = fed_all_day();
        script.feed(1, 21, 0, Slot::Bedtime, 80);
        let mut looked = script.clone();
        looked.note(
            2,
            5,
            0,
            Change::CropSeen {
                state: CropState::Flat,
                feel: CropFeel::Soft,
            },
        );
        assert!(night(&looked, 2, 4, 59).is_some());
        assert_eq!(night(&looked, 2, 5, 1), None);
        let mut seen = script.clone();
        seen.note(
            1,
            23,
            0,
            Change::SignSeen {
                sign: Sign::BegsAllDay,
            },
        );
        assert_eq!(night(&seen, 1, 23, 1), None);
        // A bedtime feed that was refused ends no day.
        let mut refused = fed_all_day();
        refused.note(
            1,
            21,
            0,
            Change::FeedRefused {
                counts_as: Some(Slot::Bedtime),
                offered: Millilitres::whole(80),
            },
        );
        assert_eq!(night(&refused, 1, 21, 10), None);
    }
}

//! One planned feed of one day, and where it stands.

use crate::domain::feeding::sittings::Sitting;
use crate::domain::homecoming::first_days::first_feed_volumes;
use crate::domain::journal::entries::WhyPassedOver;
use crate::domain::plan::care_plan::Slot;
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::{Day, Moment};

/// A feed may be given this long before it is due. Ours.
pub const EARLY_MINUTES: i64 = 30;

/// A feed is late from this long after it is due. Ours.
pub const LATE_MINUTES: i64 = 60;

/// Where a feed of a day stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum FeedState {
    /// Not yet due.
    Upcoming,
    /// May be given now.
    Due,
    /// More than [`LATE_MINUTES`] after it was due, and still time to give it.
    Late,
    /// It was refused, and is to be offered again.
    TryAgain(Sitting),
    /// Nothing was noted, and it is too late to give it: was it given?
    Unanswered,
    /// Food given late has put it off past the next one's time, or past midnight while the chick had half
    /// of the day's food: it is left to the next one.
    PutOff,
    /// It fell on the way to the new home.
    OnTheWay,
    /// It was left out.
    LeftOut(WhyPassedOver),
    /// It was refused, and every try is over.
    Refused(Sitting),
    /// It was given.
    Done(Sitting),
}

/// One feed on one day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ScheduledFeed {
    /// Which feed.
    pub slot: Slot,
    /// The day of care it belongs to.
    pub day: Day,
    /// When the plan wants it.
    pub planned: Moment,
    /// When it is due after what came before.
    pub due: Moment,
    /// Not before this, however early it may be given: the gap to the food before it.
    pub not_before: Option<Moment>,
    /// The shortest gap to the feed before, minutes.
    pub gap_minutes: i64,
    /// How much the plan wants; at the first feed after a journey the most of it, at another try what is
    /// lacking.
    pub volume: Millilitres,
    /// Whether it is the first feed after the arrival: smaller and thinner.
    pub is_first_home: bool,
    /// Why it was left out, as far as that was noted; it may be open all the same.
    pub left_out: Option<WhyPassedOver>,
    /// Where it stands.
    pub state: FeedState,
}

impl ScheduledFeed {
    /// Makes it the first feed after the arrival.
    pub(crate) fn set_first_home(&mut self) {
        self.is_first_home = true;
        (_, self.volume) = first_feed_volumes(self.volume);
    }

    /// Whether it is still to be given.
    pub const fn is_open(&self) -> bool {
        match self.state {
            FeedState::Upcoming | FeedState::Due | FeedState::Late | FeedState::TryAgain(_) => true,
            FeedState::Unanswered
            | FeedState::PutOff
            | FeedState::OnTheWay
            | FeedState::LeftOut(_)
            | FeedState::Refused(_)
            | FeedState::Done(_) => false,
        }
    }

    /// Whether it may be given from `now` on.
    pub fn is_due(&self, now: Moment) -> bool {
        let early = self.due.plus_minutes(-EARLY_MINUTES);
        self.not_before.map_or(early, |gap| gap.max(early)) <= now
    }

    /// Whole minutes until it is due, rounded up; 0 while it may be given and is not late, below 0 once it is. A
    /// feed that was brought forward, as after a night without its last one, is not late before its planned
    /// time; the first after the arrival is.
    pub fn minutes_to_go(&self, now: Moment) -> i64 {
        let to_go = |at: Moment| at.minutes_since(now.plus_seconds(-59));
        if self.is_first_home || now < self.due {
            to_go(self.due)
        } else {
            to_go(self.due.max(self.planned)).min(0)
        }
    }

    /// Whether somebody is to be asked if it was given.
    pub fn is_asked(&self) -> bool {
        self.left_out.is_none() && matches!(self.state, FeedState::Late | FeedState::Unanswered)
    }

    /// Whether it is known not to have been given: left out, or refused at every try. A feed that breeder
    /// or vet said to leave out is not missing.
    pub fn is_missing(&self) -> bool {
        let is_left_out = match self.left_out {
            Some(WhyPassedOver::Advised | WhyPassedOver::NotKnown) | None => false,
            Some(
                WhyPassedOver::CropNotEmpty | WhyPassedOver::NotFit | WhyPassedOver::NotPossible,
            ) => true,
        };
        match self.state {
            FeedState::Refused(_) => true,
            FeedState::Late | FeedState::Unanswered | FeedState::LeftOut(_) => is_left_out,
            FeedState::Upcoming
            | FeedState::Due
            | FeedState::TryAgain(_)
            | FeedState::PutOff
            | FeedState::OnTheWay
            | FeedState::Done(_) => false,
        }
    }

    /// Whether it was given.
    pub const fn was_food(&self) -> bool {
        matches!(self.state, FeedState::Done(_))
    }

    /// What was offered of it.
    pub const fn sitting(&self) -> Option<&Sitting> {
        match &self.state {
            FeedState::TryAgain(sitting)
            | FeedState::Refused(sitting)
            | FeedState::Done(sitting) => Some(sitting),
            FeedState::Upcoming
            | FeedState::Due
            | FeedState::Late
            | FeedState::Unanswered
            | FeedState::PutOff
            | FeedState::OnTheWay
            | FeedState::LeftOut(_) => None,
        }
    }
}

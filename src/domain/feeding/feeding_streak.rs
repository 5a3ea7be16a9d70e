//! Food that did not go in: feeds in a row that were refused or not given.

use crate::domain::feeding::scheduled::{FeedState, ScheduledFeed};
use crate::domain::feeding::sittings::sittings;
use crate::domain::journal::chick::{Chick, FeedOutcome};
use crate::domain::journal::entries::WhyPassedOver;
use crate::domain::plan::care_plan;
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::{Age, Day, Moment};

/// So long after the plan's own longest gap at the earliest, minutes. Ours.
pub const AFTER_LONGEST_GAP_MINUTES: i64 = 120;

/// The feeds in a row, up to now, that put nothing into the chick.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FoodlessRow {
    /// Feeds that it refused at every try.
    pub refused: usize,
    /// Tries at a feed that is still to be offered again; none when no feed is.
    pub tries: usize,
    /// Feeds known not to have been given.
    pub missed: usize,
    /// The last food, or the feed that breeder or vet said to leave out, or the coming home.
    pub since: Moment,
}

/// The feeds in a row that put nothing into the chick, from `feeds` as they stand at `now`. Feeds of which
/// nobody knows are not among them.
///
/// Neither kind ends the row of the other; food ends both, and so does a feed left out on advice. Less
/// than a quarter of a feed is no food here.
pub fn foodless_row(now: Moment, chick: &Chick, feeds: &[ScheduledFeed]) -> FoodlessRow {
    let since = last_food(now, chick).unwrap_or_else(|| chick.home_since());
    let mut row = FoodlessRow {
        refused: 0,
        tries: 0,
        missed: 0,
        since,
    };
    for feed in feeds {
        match (&feed.state, feed.sitting()) {
            (FeedState::Done(_), _) => {}
            (_, Some(own)) if own.at <= since || own.at > now => {}
            (FeedState::Refused(_), _) => row.refused += 1,
            (_, Some(own)) => row.tries = own.tries,
            (_, None) => {
                let is_expected = feed.due <= now && feed.due > since;
                row.missed += usize::from(is_expected && feed.is_missing());
            }
        }
    }
    row
}

/// The last food of a quarter of a feed or more up to `now`, or the last feed that breeder or vet said to
/// leave out.
pub fn last_food(now: Moment, chick: &Chick) -> Option<Moment> {
    let smallest = chick.plan.feeds.iter().map(|feed| feed.volume).min();
    let smallest = smallest.unwrap_or(Millilitres::whole(0));
    let fed = [2, 30].into_iter().find_map(|days| {
        let recent = sittings(chick, now.plus_minutes(-days * 1_440), now);
        let mut fed = recent.iter().rev();
        fed.find_map(|sitting| sitting.food_at.filter(|_| sitting.is_feed(smallest)))
    });
    let is_advised = |outcome: FeedOutcome| match outcome {
        FeedOutcome::PassedOver { why, .. } => why == WhyPassedOver::Advised,
        FeedOutcome::Given { .. } | FeedOutcome::Refused { .. } => false,
    };
    let mut notes = chick.feeds.iter().rev();
    let advised = notes.find(|note| note.at <= now && is_advised(note.what.outcome));
    fed.max(advised.map(|note| note.at))
}

/// Longest time between two feeds still given, minutes; `None` when none is.
pub fn longest_gap_minutes(now: Moment, chick: &Chick) -> Option<i64> {
    care_plan::longest_gap_minutes(&chick.feeds_in_force(now))
}

/// Whether the chick is being weaned: old enough for its species on `today`, or a feed was given up.
pub fn is_weaning(now: Moment, today: Day, chick: &Chick) -> bool {
    let first_week = chick.plan.species.profile().weaning;
    let age = chick.plan.hatched.and_then(|day| Age::on(today, day));
    let is_of_age = first_week
        .zip(age)
        .is_some_and(|(weeks, age)| age.days() >= weeks.value.from * 7);
    is_of_age || !chick.dropped_slots(now).is_empty()
}

//! Food that did not go in: feeds in a row that were refused or not given, and when a refusal is part
//! of weaning.

use crate::domain::feeding::schedule::{FeedState, ScheduledFeed};
use crate::domain::journal::chick::{Chick, FeedOutcome, Noted};
use crate::domain::journal::entries::WhyPassedOver;
use crate::domain::time::moment::{Age, Day, Moment};
use crate::domain::weight::loss;
use crate::domain::weight::readings;

/// A weighing tells whether a refusal is part of weaning when it is no older than this, minutes:
/// 36 h. Ours, as long as a missing weighing goes without a finding.
pub const WEIGHED_WITHIN_MINUTES: i64 = 36 * 60;

/// Share of peak and handover weight above which a weaning chick's refusals are normal, per cent.
///
/// Source: weaning articles and Duerr & Gage 2020, p. 599: down to 90 % of the maximum is expected.
pub const NORMAL_SHARE_PCT: f64 = 90.0;

/// The feeds in a row, up to now, that put nothing into the chick.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FoodlessRow {
    /// Feeds that it refused.
    pub refused: usize,
    /// Feeds that were not given or not noted.
    pub missed: usize,
    /// The last food, or the feed that breeder or vet said to leave out, or the coming home.
    pub since: Moment,
}

/// The feeds in a row that put nothing into the chick, from `feeds` as they stand at `now`.
///
/// Neither kind ends the row of the other; food ends both, and so does a feed left out on advice.
pub fn foodless_row(now: Moment, chick: &Chick, feeds: &[ScheduledFeed]) -> FoodlessRow {
    let advised = FeedOutcome::PassedOver(WhyPassedOver::Advised);
    let ends_row = |outcome: FeedOutcome| outcome.is_food() || outcome == advised;
    let since = chick
        .feeds
        .iter()
        .rev()
        .find(|feed| feed.at <= now && ends_row(feed.what.outcome))
        .map_or_else(|| chick.home_since(), |feed| feed.at);
    let mut row = FoodlessRow {
        refused: 0,
        missed: 0,
        since,
    };
    for feed in feeds {
        let is_expected = feed.due <= now && feed.due > since;
        match &feed.state {
            FeedState::Late | FeedState::NotNoted if is_expected => row.missed += 1,
            FeedState::Done(note) if since < note.at && note.at <= now => match note.what.outcome {
                FeedOutcome::PassedOver(_) => row.missed += 1,
                FeedOutcome::Refused | FeedOutcome::Given { .. } => row.refused += 1,
            },
            FeedState::Upcoming
            | FeedState::Due
            | FeedState::Late
            | FeedState::NotNoted
            | FeedState::Done(_) => {}
        }
    }
    row
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

/// Whether refusals are a normal part of weaning: the chick is being weaned and a weighing of the
/// last [`WEIGHED_WITHIN_MINUTES`] stands above [`NORMAL_SHARE_PCT`] of both peak and handover weight.
pub fn is_refusal_normal(now: Moment, today: Day, chick: &Chick) -> bool {
    let is_fresh = readings::latest_empty(now, chick)
        .map(|weighing: &Noted<_>| now.minutes_since(weighing.at) <= WEIGHED_WITHIN_MINUTES);
    let losses = [
        loss::handover_loss_pct(now, chick),
        loss::peak_loss_pct(now, chick),
    ];
    let worst = losses.into_iter().flatten().max_by(f64::total_cmp);
    is_weaning(now, today, chick)
        && is_fresh == Some(true)
        && worst.is_some_and(|loss| loss < 100.0 - NORMAL_SHARE_PCT - 1e-9)
}

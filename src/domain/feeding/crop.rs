//! How fast the crop empties: from the looks at it after each feed, and this chick's own usual time.

use crate::domain::journal::chick::{Chick, CropLook, FeedNote, Noted};
use crate::domain::journal::entries::CropState;
use crate::domain::quantity::order::sorted;
use crate::domain::time::moment::Moment;

/// How far back feeds count for the usual time, minutes: 14 days. Ours; older feeds were other
/// volumes of a younger chick.
pub const USUAL_WINDOW_MINUTES: i64 = 14 * 24 * 60;

/// Fewest feeds that make a usual time. Ours.
pub const USUAL_FEEDS: usize = 3;

/// A look so short before the next feed, minutes, tells that the crop was empty by then, not when it
/// became so. Ours.
pub const LOOK_BEFORE_FEED_MINUTES: i64 = 30;

/// How long a look that found food counts without a later look, minutes: 24 h. Ours.
pub const LOOK_SHOWN_MINUTES: i64 = 24 * 60;

/// How long one feed stayed in the crop, as far as somebody looked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Emptying {
    /// When the feed was given.
    pub fed: Moment,
    /// Minutes until the last look that found food; `None` when no look did.
    pub food_until: Option<i64>,
    /// Minutes until the first look that found the crop empty: the longest that emptying can have taken.
    pub empty_by: Option<i64>,
}

/// Food that was found in the crop by the latest look.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FoodSeen<'a> {
    /// The look.
    pub look: &'a Noted<CropLook>,
    /// The last feed given before it.
    pub feed: &'a Noted<FeedNote>,
    /// When the next feed was given on top of it, if one was.
    pub fed_again: Option<Moment>,
}

impl FoodSeen<'_> {
    /// Minutes from the feed to the look.
    pub fn minutes(&self) -> i64 {
        self.look.at.minutes_since(self.feed.at)
    }
}

/// The emptying of each feed given from `from` up to `now`, in order.
///
/// A look in the same minute as a feed was made before it: nobody feels for an empty crop after.
pub fn emptyings(from: Moment, now: Moment, chick: &Chick) -> Vec<Emptying> {
    let given: Vec<Moment> = given(now, chick)
        .map(|feed| feed.at)
        .filter(|fed| *fed >= from)
        .collect();
    let ends = given.iter().skip(1).copied().chain([now]);
    let first_look = chick.crops.partition_point(|look| look.at < from);
    let crops = chick.crops.get(first_look..).unwrap_or_default();
    given
        .iter()
        .zip(ends)
        .map(|(fed, end)| {
            let looks = || {
                crops
                    .iter()
                    .filter(move |look| *fed < look.at && look.at <= end)
            };
            let is_empty = |look: &&Noted<CropLook>| look.what.state.is_nearly_empty();
            let minutes = |look: &Noted<CropLook>| look.at.minutes_since(*fed);
            Emptying {
                fed: *fed,
                food_until: looks().rfind(|look| !is_empty(look)).map(minutes),
                empty_by: looks().find(is_empty).map(minutes),
            }
        })
        .collect()
}

/// This chick's own median emptying time in minutes, from feeds given before `before`.
///
/// An emptying time is the first look that found the crop empty, so it is an upper bound. With
/// few looks the usual time comes out too long, so that warnings come late, never too early. A look just before the
/// next feed ([`LOOK_BEFORE_FEED_MINUTES`]) would give the time between two feeds and does not count.
/// `None` with fewer than [`USUAL_FEEDS`] such feeds in the [`USUAL_WINDOW_MINUTES`] before.
pub fn usual_minutes(before: Moment, chick: &Chick) -> Option<i64> {
    let from = before.plus_minutes(-USUAL_WINDOW_MINUTES);
    let emptyings = emptyings(from, before, chick);
    let next = emptyings.iter().skip(1).map(|next| Some(next.fed));
    let minutes: Vec<i64> = emptyings
        .iter()
        .zip(next.chain([None]))
        .filter(|(emptying, _)| emptying.fed < before)
        .filter_map(|(emptying, next)| {
            let empty_by = emptying.empty_by?;
            let looked = emptying.fed.plus_minutes(empty_by);
            let is_for_next =
                next.is_some_and(|next| next.minutes_since(looked) <= LOOK_BEFORE_FEED_MINUTES);
            (!is_for_next).then_some(empty_by)
        })
        .collect();
    if minutes.len() < USUAL_FEEDS {
        return None;
    }
    let minutes = sorted(minutes);
    let middle = minutes.len() / 2;
    let upper = *minutes.get(middle)?;
    if minutes.len() % 2 == 1 {
        return Some(upper);
    }
    Some(i64::midpoint(*minutes.get(middle - 1)?, upper))
}

/// The latest look at the crop, up to `now`.
pub fn latest_look(now: Moment, chick: &Chick) -> Option<&Noted<CropLook>> {
    chick.crops.iter().rev().find(|look| look.at <= now)
}

/// Food that the latest look found, when that look is no older than [`LOOK_SHOWN_MINUTES`].
///
/// A later look that found the crop empty ends it; a feed given on top does not. `None` when no feed
/// before the look was noted.
pub fn food_seen(now: Moment, chick: &Chick) -> Option<FoodSeen<'_>> {
    let look = latest_look(now, chick)?;
    let is_recent = now.minutes_since(look.at) <= LOOK_SHOWN_MINUTES;
    if look.what.state == CropState::Flat || !is_recent {
        return None;
    }
    let feed = given(now, chick)
        .filter(|feed| feed.at < look.at)
        .max_by_key(|feed| feed.at)?;
    let fed_again = given(now, chick)
        .map(|feed| feed.at)
        .find(|fed| *fed >= look.at);
    Some(FoodSeen {
        look,
        feed,
        fed_again,
    })
}

fn given(now: Moment, chick: &Chick) -> impl Iterator<Item = &Noted<FeedNote>> {
    chick
        .feeds
        .iter()
        .filter(move |feed| feed.at <= now && feed.what.outcome.is_food())
}

#[cfg(test)]
mod tests {
    use crate::domain::feeding::crop::*;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::warnings::rules::trial::{crop, macaw};

    #[test]
    fn a_feed_is_empty_by_the_first_look_that_finds_it_so() {
        let mut script = macaw();
        script.feed(1, 7, 0, Slot::Morning, 80);
        script.note(1, 9, 0, crop(CropState::Quarter));
        script.note(1, 11, 0, crop(CropState::Flat));
        script.note(1, 13, 0, crop(CropState::Flat));
        let emptyings = emptyings(
            script.at(1, 0, 0),
            script.at(1, 14, 0),
            &script.chick().unwrap(),
        );
        assert_eq!(
            emptyings,
            [Emptying {
                fed: script.at(1, 7, 0),
                food_until: Some(120),
                empty_by: Some(240),
            }]
        );
    }

    #[test]
    fn a_look_in_the_minute_of_a_feed_belongs_to_the_feed_before() {
        let mut script = macaw();
        script.feed(1, 7, 0, Slot::Morning, 80);
        script.note(1, 14, 0, crop(CropState::Flat));
        script.feed(1, 14, 0, Slot::Midday, 80);
        let emptyings = emptyings(
            script.at(1, 0, 0),
            script.at(1, 15, 0),
            &script.chick().unwrap(),
        );
        assert_eq!(emptyings[0].empty_by, Some(420));
        assert_eq!(emptyings[1].empty_by, None);
    }

    #[test]
    fn food_found_in_the_minute_of_a_feed_is_of_the_feed_before() {
        let mut script = macaw();
        script.feed(1, 7, 0, Slot::Morning, 80);
        script.note(1, 14, 0, crop(CropState::HalfOrMore));
        script.feed(1, 14, 0, Slot::Midday, 80);
        let chick = script.chick().unwrap();
        let seen = food_seen(script.at(1, 15, 0), &chick).unwrap();
        assert_eq!(seen.minutes(), 420);
        assert_eq!(seen.fed_again, Some(script.at(1, 14, 0)));
    }

    #[test]
    fn a_look_just_before_the_next_feed_does_not_time_the_one_before() {
        // three midday feeds at 14:00 after morning ones at 07:00, each looked at before it
        for (minutes_before, usual) in [(30, None), (31, Some(389))] {
            let mut script = macaw();
            for day in 1..=3 {
                script.feed(day, 7, 0, Slot::Morning, 80);
                script.note(day, 13, 60 - minutes_before, crop(CropState::Flat));
                script.feed(day, 14, 0, Slot::Midday, 80);
            }
            let chick = script.chick().unwrap();
            assert_eq!(usual_minutes(script.at(4, 0, 0), &chick), usual);
        }
    }

    #[test]
    fn the_usual_time_is_the_median_of_at_least_three_feeds() {
        let mut script = macaw();
        for (day, hours) in [(1, 4), (2, 6)] {
            script.feed(day, 7, 0, Slot::Morning, 80);
            script.note(day, 7 + hours, 0, crop(CropState::Flat));
        }
        let usual = |script: &crate::domain::journal::scenario::Scenario, day| {
            usual_minutes(script.at(day, 0, 0), &script.chick().unwrap())
        };
        assert_eq!(usual(&script, 4), None);
        script.feed(3, 7, 0, Slot::Morning, 80);
        script.note(3, 12, 0, crop(CropState::Flat));
        // 4, 5 and 6 h: the middle one is 5 h
        assert_eq!(usual(&script, 4), Some(300));
        script.feed(4, 7, 0, Slot::Morning, 80);
        script.note(4, 15, 0, crop(CropState::Flat));
        // 4, 5, 6 and 8 h: between 5 and 6 h
        assert_eq!(usual(&script, 5), Some(330));
        // fourteen days after the third feed only the third and fourth still count
        assert_eq!(usual(&script, 17), None);
    }

    #[test]
    fn food_found_counts_until_an_empty_look_or_a_day_without_any() {
        let mut script = macaw();
        script.feed(1, 7, 0, Slot::Morning, 80);
        script.note(1, 12, 0, crop(CropState::HalfOrMore));
        script.feed(1, 14, 0, Slot::Midday, 80);
        let chick = script.chick().unwrap();
        let seen = food_seen(script.at(2, 12, 0), &chick).unwrap();
        assert_eq!(seen.minutes(), 300);
        assert_eq!(seen.fed_again, Some(script.at(1, 14, 0)));
        assert_eq!(food_seen(script.at(2, 12, 1), &chick), None);
        script.note(1, 18, 0, crop(CropState::Flat));
        let chick = script.chick().unwrap();
        assert_eq!(food_seen(script.at(1, 19, 0), &chick), None);
    }
}

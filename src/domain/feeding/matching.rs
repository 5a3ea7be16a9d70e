//! Which planned feed a sitting counts for, by its time alone.
//!
//! The order of both is kept. As many sittings as can count do; of those ways the one that lies nearest
//! to the planned times in all, and then the one with the earlier feeds. All three rules are ours.

use crate::domain::time::moment::Moment;

/// A sitting counts for a planned feed from this long before it, minutes; from half-way to the feed
/// before where that is later. Ours.
pub const EARLY_WINDOW_MINUTES: i64 = 180;

/// Sittings nearer than this never fill two planned feeds, minutes. Ours.
pub const APART_MINUTES: i64 = 120;

/// From when a sitting can count for the planned feed at `place`.
pub fn window_start(planned: &[Moment], place: usize) -> Option<Moment> {
    let at = *planned.get(place)?;
    let early = at.plus_minutes(-EARLY_WINDOW_MINUTES);
    let before = place.checked_sub(1).and_then(|before| planned.get(before));
    let half_way = before.map(|before| {
        let between = at.seconds() - before.seconds();
        at.plus_seconds(-between / 2)
    });
    Some(half_way.map_or(early, |half_way| half_way.max(early)))
}

/// For each sitting, in order of time, the place of the planned feed that it counts for.
///
/// `planned` is in order too. The last one's window ends with the list, so a caller adds a day.
pub fn matched(sittings: &[Moment], planned: &[Moment]) -> Vec<Option<usize>> {
    let mut links: Vec<Link> = Vec::new();
    let mut states = vec![State::default()];
    let mut first = 0;
    for (sitting, at) in sittings.iter().enumerate() {
        while planned.get(first + 1).is_some_and(|next| next <= at) {
            first += 1;
        }
        let mut place = first;
        let mut found: Vec<State> = Vec::new();
        while window_start(planned, place).is_some_and(|start| start <= *at) {
            let before = best(states.iter().filter(|state| state.can_take(place, *at)));
            if let Some((before, distance)) = before.zip(planned.get(place)) {
                let distance = at.seconds().abs_diff(distance.seconds());
                links.push(Link {
                    sitting,
                    place,
                    before: before.link,
                });
                found.push(State {
                    unmatched: before.unmatched,
                    distance: before.distance + distance,
                    places: before.places + place,
                    last: Some((place, *at)),
                    link: links.len().checked_sub(1),
                });
            }
            place += 1;
        }
        for state in &mut states {
            state.unmatched += 1;
        }
        states.extend(found);
        // What no longer hinders anything differs only in how good it is.
        let is_past = |state: &State| state.can_take(first, *at);
        let past = best(states.iter().filter(|state| is_past(state))).cloned();
        states.retain(|state| !is_past(state));
        if let Some(past) = past {
            states.insert(0, past);
        }
    }
    let mut counted = vec![None; sittings.len()];
    let mut link = best(states.iter()).and_then(|state| state.link);
    while let Some(at) = link.and_then(|link| links.get(link)) {
        if let Some(place) = counted.get_mut(at.sitting) {
            *place = Some(at.place);
        }
        link = at.before;
    }
    counted
}

/// One sitting put to one planned feed, after those before it.
struct Link {
    sitting: usize,
    place: usize,
    before: Option<usize>,
}

/// One way to match the sittings so far.
#[derive(Clone, Default)]
struct State {
    unmatched: usize,
    distance: u64,
    places: usize,
    last: Option<(usize, Moment)>,
    link: Option<usize>,
}

impl State {
    fn can_take(&self, place: usize, at: Moment) -> bool {
        self.last
            .is_none_or(|(last, then)| last < place && at.minutes_since(then) >= APART_MINUTES)
    }
}

/// The best of several ways; of equals the one with the earlier sittings, which stands first.
fn best<'a>(states: impl Iterator<Item = &'a State>) -> Option<&'a State> {
    states.min_by_key(|state| (state.unmatched, state.distance, state.places))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use crate::domain::feeding::matching::*;

    fn at(minute: i64) -> Moment {
        Moment::from_seconds(1_790_000_000).plus_minutes(minute)
    }

    fn moments(minutes: &[i64]) -> Vec<Moment> {
        minutes.iter().map(|minute| at(*minute)).collect()
    }

    /// Feeds at 07:00, 14:00 and 21:00, and 07:00 of the next day.
    const DAY: [i64; 4] = [420, 840, 1_260, 1_860];

    fn by_hour(sittings: &[i64]) -> Vec<Option<usize>> {
        matched(&moments(sittings), &moments(&DAY))
    }

    #[test]
    fn food_counts_from_three_hours_before_until_the_next_planned_time() {
        assert_eq!(by_hour(&[239]), [None]);
        assert_eq!(by_hour(&[240]), [Some(0)]);
        // 11:00 is three hours before 14:00 and four after 07:00
        assert_eq!(by_hour(&[659]), [Some(0)]);
        assert_eq!(by_hour(&[660]), [Some(1)]);
        assert_eq!(by_hour(&[964]), [Some(1)]);
        // half-way between feeds three hours apart, the earlier feed
        let planned = moments(&[360, 540, 720]);
        assert_eq!(matched(&moments(&[450]), &planned), [Some(0)]);
        assert_eq!(matched(&moments(&[451]), &planned), [Some(1)]);
    }

    #[test]
    fn as_many_count_as_can_and_two_near_to_each_other_fill_one() {
        // 13:00 alone is the midday feed; with one at 15:00 it was a late morning feed
        assert_eq!(by_hour(&[780]), [Some(1)]);
        assert_eq!(by_hour(&[780, 900]), [Some(0), Some(1)]);
        // 15:00 and 17:00: one is the midday feed, and no bedtime feed is given before 18:00
        assert_eq!(by_hour(&[900, 1_020]), [Some(1), None]);
        // 16:00 and 19:00 are both before 21:00: midday and bedtime
        assert_eq!(by_hour(&[960, 1_140]), [Some(1), Some(2)]);
        // 18:30 alone is nearer to bedtime; with one at 22:00 it was the midday feed
        assert_eq!(by_hour(&[1_110]), [Some(2)]);
        assert_eq!(by_hour(&[1_110, 1_320]), [Some(1), Some(2)]);
        // less than two hours apart
        assert_eq!(by_hour(&[1_110, 1_229]), [None, Some(2)]);
        assert_eq!(by_hour(&[1_110, 1_230]), [Some(1), Some(2)]);
    }

    /// Every way there is, tried one by one: the fewest left over, then the least distance, then the
    /// earliest feeds.
    fn best_by_trial(sittings: &[i64], planned: &[i64]) -> (usize, i64, usize) {
        fn go(
            sittings: &[i64],
            planned: &[i64],
            first: usize,
            last: Option<i64>,
        ) -> (usize, i64, usize) {
            let Some((at, rest)) = sittings.split_first() else {
                return (0, 0, 0);
            };
            let (left, distance, places) = go(rest, planned, first, last);
            let mut best = (left + 1, distance, places);
            for place in first..planned.len() {
                let feed = planned[place];
                let half_way = place.checked_sub(1).map_or(i64::MIN, |before| {
                    // rounded up, as a half minute after
                    feed - (feed - planned[before]) / 2
                });
                let is_in = (feed - 180).max(half_way) <= *at
                    && planned.get(place + 1).is_none_or(|next| at < next);
                if is_in && last.is_none_or(|last| at - last >= 120) {
                    let (left, distance, places) = go(rest, planned, place + 1, Some(*at));
                    best = best.min((left, distance + (at - feed).abs(), places + place));
                }
            }
            best
        }
        go(sittings, planned, 0, None)
    }

    fn sorted_minutes(most: usize, until: i64, step: i64) -> impl Strategy<Value = Vec<i64>> {
        prop::collection::btree_set(0..until / step, 0..most)
            .prop_map(move |set| set.into_iter().map(|minute| minute * step).collect())
    }

    proptest! {
        #[test]
        fn it_is_as_good_as_the_best_of_all_ways_and_keeps_the_order(
            sittings in sorted_minutes(9, 1_800, 10),
            planned in sorted_minutes(7, 1_800, 20),
        ) {
            let found = matched(&moments(&sittings), &moments(&planned));
            let places: Vec<usize> = found.iter().flatten().copied().collect();
            prop_assert!(places.is_sorted_by(|one, next| one < next), "{found:?}");
            let taken: Vec<(i64, usize)> = sittings
                .iter()
                .zip(&found)
                .filter_map(|(at, place)| Some((*at, (*place)?)))
                .collect();
            for pair in taken.windows(2) {
                prop_assert!(pair[1].0 - pair[0].0 >= 120);
            }
            let distance: i64 = taken.iter().map(|(at, place)| (at - planned[*place]).abs()).sum();
            let left = sittings.len() - taken.len();
            prop_assert_eq!(
                (left, distance, places.iter().sum::<usize>()),
                best_by_trial(&sittings, &planned)
            );
        }
    }
}

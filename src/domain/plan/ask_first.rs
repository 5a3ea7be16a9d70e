//! What of a breeder's plan an owner cannot change alone: it could harm the chick before she hears of it.

use crate::domain::plan::care_plan::{PlannedFeed, Slot, longest_gap_minutes};
use crate::domain::plan::parts::{FeedsPart, FormulaPart, Part};

/// A change that has to be asked for, or that the breeder said on the telephone. Which these are is ours.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum AskFirst {
    /// More in one feed, or a feed that she did not plan.
    MoreFood(Slot),
    /// A feed of hers is gone.
    FeedRemoved(Slot),
    /// Less in a whole day: fewer millilitres, or less powder in them.
    LessInADay,
    /// A longer wait without food: between two planned feeds, over the night too, or the shortest gap.
    LongerGap,
    /// A higher temperature to serve at, at either end, or hotter water to mix with.
    HotterFood,
    /// More loss before the breeder wants a call.
    LooserLimit,
}

/// What of `new` has to be asked for where the breeder's part is `old`; nothing for two different parts.
pub fn ask_first(old: &Part, new: &Part) -> Vec<AskFirst> {
    if let (Part::Feeds(old), Part::Feeds(new)) = (old, new) {
        of_feeds(old, new)
    } else if let (Part::Formula(old), Part::Formula(new)) = (old, new) {
        of_formula(old, new)
    } else if let (Part::Weight(old), Part::Weight(new)) = (old, new) {
        let is_looser = new.loss_limit > old.loss_limit;
        is_looser
            .then_some(AskFirst::LooserLimit)
            .into_iter()
            .collect()
    } else {
        Vec::new()
    }
}

fn of_feeds(old: &FeedsPart, new: &FeedsPart) -> Vec<AskFirst> {
    let volume = |feeds: &[PlannedFeed], slot| {
        let mut feeds = feeds.iter();
        let feed = feeds.find(|feed| feed.slot == slot);
        feed.map(|feed| feed.volume.tenths())
    };
    let mut asked = Vec::new();
    for slot in Slot::ALL {
        match (volume(&old.feeds, slot), volume(&new.feeds, slot)) {
            (old, Some(new)) if old.is_none_or(|old| new > old) => {
                asked.push(AskFirst::MoreFood(slot));
            }
            (Some(_), None) => asked.push(AskFirst::FeedRemoved(slot)),
            (Some(_) | None, Some(_)) | (None, None) => {}
        }
    }
    let day = |part: &FeedsPart| {
        part.feeds
            .iter()
            .map(|feed| feed.volume.tenths())
            .sum::<i32>()
    };
    if day(new) < day(old) {
        asked.push(AskFirst::LessInADay);
    }
    let is_longer = longest_gap_minutes(&new.feeds) > longest_gap_minutes(&old.feeds);
    if is_longer || new.shortest_gap_minutes > old.shortest_gap_minutes {
        asked.push(AskFirst::LongerGap);
    }
    asked
}

fn of_formula(old: &FormulaPart, new: &FormulaPart) -> Vec<AskFirst> {
    let is_thinner = new.powder_fraction < old.powder_fraction;
    let is_hotter = new.serve_from > old.serve_from
        || new.serve_to > old.serve_to
        || new.mixing_water > old.mixing_water;
    let thinner = is_thinner.then_some(AskFirst::LessInADay);
    let hotter = is_hotter.then_some(AskFirst::HotterFood);
    [thinner, hotter].into_iter().flatten().collect()
}

#[cfg(test)]
mod tests {
    use crate::domain::plan::ask_first::*;
    use crate::domain::plan::care_plan::CarePlan;
    use crate::domain::plan::parts::PartKind;
    use crate::domain::plan::species::Species;
    use crate::domain::quantity::units::{Celsius, Millilitres, Percent};
    use crate::domain::time::moment::WallTime;

    /// 50 ml at 07:00, 14:00 and 21:00, 25 % powder, 39.0 to 40.5 °C, a call at 10 % of loss.
    fn plan() -> CarePlan {
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        for feed in &mut plan.feeds {
            feed.volume = Millilitres::whole(50);
        }
        plan
    }

    fn asked(kind: PartKind, change: impl Fn(&mut CarePlan)) -> Vec<AskFirst> {
        let (old, mut new) = (plan(), plan());
        change(&mut new);
        ask_first(&old.part(kind), &new.part(kind))
    }

    fn with_volumes(tenths: [i32; 3]) -> Vec<AskFirst> {
        asked(PartKind::Feeds, |plan| {
            for (feed, tenths) in plan.feeds.iter_mut().zip(tenths) {
                feed.volume = Millilitres::tenths_held(tenths);
            }
        })
    }

    #[test]
    fn a_tenth_of_a_millilitre_more_is_asked_for_and_so_is_less_in_the_day() {
        use AskFirst::{LessInADay, MoreFood};
        assert_eq!(with_volumes([500, 500, 500]), []);
        assert_eq!(with_volumes([500, 501, 500]), [MoreFood(Slot::Midday)]);
        assert_eq!(with_volumes([500, 499, 500]), [LessInADay]);
        // 49.9 + 50.1 + 50 is what it was in the day, and yet more at once.
        assert_eq!(with_volumes([499, 501, 500]), [MoreFood(Slot::Midday)]);
    }

    #[test]
    fn a_feed_more_and_a_feed_less_are_asked_for() {
        use AskFirst::{FeedRemoved, LessInADay, LongerGap, MoreFood};
        let more = asked(PartKind::Feeds, |plan| {
            plan.feeds.push(PlannedFeed {
                slot: Slot::Evening,
                time: WallTime::from_minutes(18 * 60),
                volume: Millilitres::whole(5),
            });
        });
        assert_eq!(more, [MoreFood(Slot::Evening)]);
        // Without midday it waits 14 h by day, where the night's 10 h were the longest.
        let less = asked(PartKind::Feeds, |plan| {
            plan.feeds.remove(1);
        });
        assert_eq!(less, [FeedRemoved(Slot::Midday), LessInADay, LongerGap]);
    }

    #[test]
    fn a_minute_more_than_the_longest_gap_is_asked_for() {
        // From 21:00 to 07:00 are 10 h; at 20:59 it is a minute more, at 21:01 a minute less.
        for (minutes, is_asked) in [(-1, true), (0, false), (1, false)] {
            let found = asked(PartKind::Feeds, |plan| {
                plan.feeds[2].time = WallTime::from_minutes(21 * 60 + minutes);
            });
            assert_eq!(found == [AskFirst::LongerGap], is_asked, "{minutes}");
            assert_eq!(found.is_empty(), !is_asked, "{minutes}");
        }
        // A bedtime feed after midnight belongs to the same round: 00:00 to 07:00 are 7 h, 14:00 to 00:00 10 h.
        let late = asked(PartKind::Feeds, |plan| {
            plan.feeds[2].time = WallTime::from_minutes(0);
        });
        assert_eq!(late, []);
    }

    #[test]
    fn a_longer_shortest_gap_is_asked_for() {
        let gap = |old, new| {
            let part = |minutes| {
                let mut plan = plan();
                plan.shortest_gap_minutes = minutes;
                plan.part(PartKind::Feeds)
            };
            ask_first(&part(old), &part(new))
        };
        assert_eq!(gap(Some(240), Some(239)), []);
        assert_eq!(gap(Some(240), Some(240)), []);
        assert_eq!(gap(Some(240), Some(241)), [AskFirst::LongerGap]);
        assert_eq!(gap(None, Some(1)), [AskFirst::LongerGap]);
    }

    #[test]
    fn a_tenth_of_a_degree_hotter_is_asked_for_and_so_is_thinner_food() {
        let formula = |powder, from, to| {
            asked(PartKind::Formula, |plan| {
                plan.powder_fraction = Percent::tenths_held(powder);
                plan.serve_from = Celsius::tenths_held(from);
                plan.serve_to = Celsius::tenths_held(to);
            })
        };
        assert_eq!(formula(250, 390, 405), []);
        assert_eq!(formula(250, 389, 404), []);
        assert_eq!(formula(250, 390, 406), [AskFirst::HotterFood]);
        assert_eq!(formula(250, 391, 405), [AskFirst::HotterFood]);
        assert_eq!(formula(249, 390, 405), [AskFirst::LessInADay]);
        assert_eq!(formula(251, 390, 405), []);
    }

    #[test]
    fn a_tenth_of_a_per_cent_looser_is_asked_for() {
        let limit = |tenths| {
            asked(PartKind::Weight, |plan| {
                plan.loss_limit = Percent::tenths_held(tenths);
            })
        };
        assert_eq!(limit(99), []);
        assert_eq!(limit(100), []);
        assert_eq!(limit(101), [AskFirst::LooserLimit]);
    }
}

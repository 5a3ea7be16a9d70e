//! Which planned feed each note of food counts for: the one view that screens, reports and tables read.

use std::collections::BTreeMap;

use crate::domain::feeding::counted::{Counted, counted};
use crate::domain::feeding::planned::planned_feeds;
use crate::domain::feeding::schedule::feeds;
use crate::domain::feeding::scheduled::ScheduledFeed;
use crate::domain::feeding::sittings::{sittings, try_minutes};
use crate::domain::journal::chick::{Chick, FeedNote, FeedOutcome, Noted};
use crate::domain::journal::entries::EntryId;
use crate::domain::plan::care_plan::Slot;
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::{Day, Moment};
use crate::domain::time::zone::Zone;

/// The planned feed of each note of food, refusal or feed left out. A note that is not in it is of extra
/// food, which counts for no feed.
pub type FoodNames = BTreeMap<EntryId, Slot>;

/// The planned feed of each note from the day of care `first` on.
pub fn food_since(first: Day, now: Moment, chick: &Chick, zone: &Zone) -> FoodNames {
    let last = zone.lived(now).day.plus(1);
    let planned = planned_feeds(now, chick, zone, first.plus(-1), last);
    let from = planned
        .first()
        .map_or(Moment::LATEST, |feed| feed.planned.plus_minutes(-24 * 60));
    let sittings = sittings(chick, from, Moment::LATEST);
    let said = chick.feeds.iter();
    let mut names = FoodNames::new();
    names.extend(said.filter_map(|note| Some((note.id, note.what.counts_as?))));
    for Counted { sitting, place } in counted(&planned, sittings, try_minutes(chick)) {
        if let Some(feed) = place.and_then(|place| planned.get(place)) {
            names.extend(sitting.notes.iter().map(|id| (*id, feed.slot)));
        }
    }
    names
}

/// The planned feed of every note there is.
pub fn food_of(now: Moment, chick: &Chick, zone: &Zone) -> FoodNames {
    let first = chick.feeds.first().map_or(now, |note| note.at);
    food_since(zone.lived(first).day.plus(-1), now, chick, zone)
}

/// The planned feed that food noted at `at` counts for: by its time, or as a person said; `None` for extra
/// food.
pub fn counts_for(
    at: Moment,
    said: Option<Slot>,
    chick: &Chick,
    zone: &Zone,
) -> Option<ScheduledFeed> {
    // A note as any other, beside those there are.
    let id = EntryId([u8::MAX; 12]);
    let most = chick.plan.feeds.iter().map(|feed| feed.volume).max();
    let note = Noted {
        id,
        at,
        offset: zone.offset_at(at),
        what: FeedNote {
            counts_as: said,
            outcome: FeedOutcome::Refused {
                offered: most.unwrap_or(Millilitres::whole(0)),
            },
            by: String::new(),
        },
    };
    let mut with_note = chick.clone();
    let place = with_note.feeds.partition_point(|other| other.at <= at);
    with_note.feeds.insert(place, note);
    let day = zone.lived(at).care_day();
    feeds(at, &with_note, zone, day.plus(-1), day.plus(1))
        .into_iter()
        .find(|feed| feed.sitting().is_some_and(|own| own.notes.contains(&id)))
}

/// What is to be noted as said by a person who gives food at `at` as this feed: nothing when its time
/// tells the same.
pub fn said(at: Moment, slot: Slot, chick: &Chick, zone: &Zone) -> Option<Slot> {
    let by_time = counts_for(at, None, chick, zone).map(|feed| feed.slot);
    (by_time != Some(slot)).then_some(slot)
}

/// The feed that a guide begun at `now` is for: what is due, else what food would count for now.
pub fn feed_to_give(now: Moment, next: &ScheduledFeed, chick: &Chick, zone: &Zone) -> Slot {
    let by_time = if next.is_due(now) {
        None
    } else {
        counts_for(now, None, chick, zone)
    };
    by_time.map_or(next.slot, |feed| feed.slot)
}

//! The zone that a chick lived in: a phone knows the rules of the place where it is, and none of the places
//! where it was.

use crate::domain::feeding::matching::EARLY_WINDOW_MINUTES;
use crate::domain::feeding::planned::LONGER_GAP_MINUTES;
use crate::domain::journal::chick::Chick;
use crate::domain::time::moment::{Moment, Offset};
use crate::domain::time::zone::Zone;

/// The phone's zone, with past days as their notes of food tell them.
///
/// Each note carries the offset that it was lived at. Where that differs from the phone's, it is the one in
/// force from the note before it on. Where the clock was put back, it is in force after it too, as long as
/// food is early for a planned feed: the last feed at home is that one still, whatever clock comes then.
pub fn lived_zone(chick: &Chick, phone: &Zone) -> Zone {
    let home = chick.home_since();
    let mut stretches: Vec<(Moment, Option<Offset>)> = Vec::new();
    let mut from = Moment::EARLIEST;
    let mut latest = None;
    for note in chick.feeds.iter().filter(|note| note.at >= home) {
        let until = note.at.plus_minutes(EARLY_WINDOW_MINUTES);
        let put_back = |at| i64::from(note.offset.minutes() - phone.offset_at(at).minutes());
        let is_other =
            note.offset != phone.offset_at(note.at) || put_back(until) > LONGER_GAP_MINUTES;
        let own = is_other.then_some(note.offset);
        if own != latest {
            stretches.push((from.min(note.at), own));
            latest = own;
        }
        from = if put_back(until) > LONGER_GAP_MINUTES {
            until
        } else {
            note.at.plus_seconds(1)
        };
    }
    if latest.is_some() {
        stretches.push((from, None));
    }
    phone.but_for(&stretches)
}

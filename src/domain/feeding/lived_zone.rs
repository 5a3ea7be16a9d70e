//! The zone that a chick lived in: a phone knows the rules of the place where it is, and none of the places
//! where it was.

use crate::domain::journal::chick::Chick;
use crate::domain::time::moment::Moment;
use crate::domain::time::zone::Zone;

/// The phone's zone, with past days as their notes of food tell them.
///
/// Each note carries the offset that it was lived at. Where that differs from the phone's, the clock ran so
/// much otherwise from the note before it on; before the first note at home as at that one, and after the
/// last note as the phone's does.
pub fn lived_zone(chick: &Chick, phone: &Zone) -> Zone {
    let home = chick.home_since();
    let mut shifts: Vec<(Moment, i32)> = Vec::new();
    let mut from = Moment::EARLIEST;
    let mut shift = 0;
    for note in chick.feeds.iter().filter(|note| note.at >= home) {
        let own = note.offset.minutes() - phone.offset_at(note.at).minutes();
        if own != shift {
            shifts.push((from, own));
            shift = own;
        }
        from = note.at.plus_seconds(1);
    }
    if shift != 0 {
        shifts.push((from, 0));
    }
    phone.shifted(&shifts)
}

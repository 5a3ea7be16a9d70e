//! The question what two notes of food near to each other are: the same food noted twice, one feed in two
//! parts, or two feeds.

use crate::domain::feeding::sittings::sittings;
use crate::domain::journal::chick::{Chick, FeedNote, Noted};
use crate::domain::journal::entries::EntryId;
use crate::domain::time::moment::Moment;

/// So long back it is still asked, minutes: two days. Ours; later nobody remembers, and the larger amount
/// goes on to count.
pub const ASKED_MINUTES: i64 = 2 * 24 * 60;

/// The notes of each question that nobody has answered, latest question first.
pub fn questions(now: Moment, chick: &Chick) -> Vec<Vec<EntryId>> {
    let recent = sittings(chick, now.plus_minutes(-ASKED_MINUTES), Moment::LATEST);
    let asked = recent.into_iter().rev().map(|sitting| sitting.asked);
    asked.filter(|notes| !notes.is_empty()).collect()
}

/// The notes of a question with what they say, in order.
pub fn notes_of<'a>(chick: &'a Chick, asked: &[EntryId]) -> Vec<&'a Noted<FeedNote>> {
    let notes = chick.feeds.iter();
    notes.filter(|note| asked.contains(&note.id)).collect()
}

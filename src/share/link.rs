//! Entries of a journal as a link, when they are few enough.

use std::collections::BTreeSet;

use crate::domain::journal::entries::{Change, ChickId, Entry, EntryId, Journal};
use crate::domain::quantity::order::set_of;
use crate::domain::time::moment::Moment;
use crate::share::entry_bytes::{read_entries, write_entries};
use crate::share::envelope::{Kind, MOST_BYTES, seal};
use crate::share::unpack::UnpackError;
use crate::share::varint::{ByteReader, ByteWriter};

/// Most characters of a link's text. Ours: browsers take far more, but messages get unwieldy.
pub const MOST_CHARACTERS: usize = 8_000;

/// Entries as the text after `#` in a link; `None` when they are too many and a file is to be sent.
///
/// The same entries always give the same text, in whatever order they come.
pub fn entries_to_link_text(entries: &[Entry]) -> Option<String> {
    let mut writer = ByteWriter::default();
    write_entries(&mut writer, entries);
    let bytes = writer.finish();
    let text = (bytes.len() <= MOST_BYTES).then(|| seal(Kind::Entries, &bytes))?;
    (text.len() <= MOST_CHARACTERS).then_some(text)
}

/// The entries of one chick that may go to somebody else: all but the remarks that are the breeder's alone.
pub fn entries_to_send(journal: &Journal, chick: ChickId) -> Vec<Entry> {
    let of_chick = journal.of_chick(chick).into_iter();
    let (own, sent): (Vec<&Entry>, Vec<&Entry>) =
        of_chick.partition(|entry| matches!(entry.change, Change::Remarked { .. }));
    let own: BTreeSet<EntryId> = set_of(own.into_iter().map(|entry| entry.id));
    let takes_back_own = |entry: &Entry| {
        let target = entry.change.retracts();
        target.is_some_and(|id| own.contains(&id))
    };
    let sent = sent.into_iter().filter(|entry| !takes_back_own(entry));
    sent.cloned().collect()
}

/// The entries of one chick that a phone lacks which had everything at `from`: what happened or was
/// noted since then. Of the time before it also gets what still holds, its plans, arrival and dropped
/// feeds, with whatever takes these back, so that it can judge the chick without the rest.
pub fn entries_since(entries: &[Entry], chick: ChickId, from: Moment) -> Vec<Entry> {
    let journal = Journal::from_entries(entries.to_vec());
    let of_chick = set_of(journal.of_chick(chick).into_iter().map(|entry| entry.id));
    let is_sent = |entry: &&Entry| {
        let still_holds = matches!(
            entry.change,
            Change::ChickAdded(_)
                | Change::PartSet { .. }
                | Change::PartTaken { .. }
                | Change::PartAgreed { .. }
                | Change::Arrived
                | Change::FeedDropped { .. }
                | Change::FeedBroughtBack { .. }
                | Change::DrinkingSeen
                | Change::Grown
                | Change::Died
                | Change::HandedOver { .. }
                | Change::SameChick { .. }
        );
        of_chick.contains(&entry.id) && (still_holds || entry.at.max(entry.noted_at) >= from)
    };
    let mut sent: BTreeSet<&Entry> = set_of(entries.iter().filter(is_sent));
    let mut ids: BTreeSet<EntryId> = set_of(sent.iter().map(|entry| entry.id));
    // A retraction can itself be retracted, so until nothing is added.
    loop {
        let takes_back = |entry: &&Entry| {
            let target = entry.change.retracts();
            target.is_some_and(|id| ids.contains(&id)) && !sent.contains(entry)
        };
        let more: Vec<&Entry> = entries.iter().filter(takes_back).collect();
        if more.is_empty() {
            return sent.into_iter().cloned().collect();
        }
        ids.extend(more.iter().map(|entry| entry.id));
        sent.extend(more);
    }
}

pub(crate) fn entries_of_bytes(bytes: &[u8]) -> Result<Vec<Entry>, UnpackError> {
    let mut reader = ByteReader::new(bytes);
    let entries = read_entries(&mut reader)?;
    reader.finish()?;
    Ok(entries)
}

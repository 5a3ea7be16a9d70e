//! The handover card: what another phone needs to have a chick's plan, as text short enough for a link
//! and a QR code.
//!
//! It carries entries and not the plan they make, so that an older card, joined like everything else,
//! rolls nothing back.

use crate::domain::journal::entries::{Entry, Journal};
use crate::share::entry_bytes::write_entries;
use crate::share::envelope::{Kind, seal, seal_as_digits};
use crate::share::link::entries_of_bytes;
use crate::share::unpack::UnpackError;
use crate::share::varint::ByteWriter;

/// A card as the text after `#` in a link: letters, digits, `-`, `_` and one point.
///
/// `entries` are those of [`Journal::entries_of_plan`]; the same ones always give the same text.
pub fn card_to_link_text(entries: &[Entry]) -> String {
    seal(Kind::Card, &card_bytes(entries))
}

/// A card as the text after `#` in a QR code: longer to read, but a fifth fewer squares.
pub fn card_to_qr_text(entries: &[Entry]) -> String {
    seal_as_digits(Kind::Card, &card_bytes(entries))
}

fn card_bytes(entries: &[Entry]) -> Vec<u8> {
    let mut writer = ByteWriter::default();
    write_entries(&mut writer, entries);
    writer.finish()
}

/// The entries of a card: of one chick, which one of them adds.
pub(crate) fn card_of_bytes(bytes: &[u8]) -> Result<Vec<Entry>, UnpackError> {
    let entries = entries_of_bytes(bytes)?;
    let chicks = Journal::from_entries(entries.clone()).chicks();
    let is_of_one = |chick| entries.iter().all(|entry| entry.chick == chick);
    match chicks[..] {
        [chick] if is_of_one(chick) => Ok(entries),
        _ => Err(UnpackError::OutOfPlace),
    }
}

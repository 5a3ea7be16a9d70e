//! Entries of a journal as a link, when they are few enough.

use crate::domain::journal::Entry;
use crate::share::entry_bytes::{MOST_ENTRIES, read_entries, write_entries};
use crate::share::envelope::{Kind, MOST_BYTES, seal};
use crate::share::unpack::UnpackError;
use crate::share::varint::{ByteReader, ByteWriter};

/// Most characters of a link's text. Ours: browsers take far more, but messages get unwieldy.
pub const MOST_CHARACTERS: usize = 8_000;

/// Entries as the text after `#` in a link; `None` when they are too many and a file is to be sent.
///
/// The same entries always give the same text, in whatever order they come.
pub fn entries_to_link_text(entries: &[Entry]) -> Option<String> {
    if entries.len() > MOST_ENTRIES {
        return None;
    }
    let mut writer = ByteWriter::default();
    write_entries(&mut writer, entries);
    let bytes = writer.finish();
    let text = (bytes.len() <= MOST_BYTES).then(|| seal(Kind::Entries, &bytes))?;
    (text.len() <= MOST_CHARACTERS).then_some(text)
}

pub(crate) fn entries_of_bytes(bytes: &[u8]) -> Result<Vec<Entry>, UnpackError> {
    let mut reader = ByteReader::new(bytes);
    let entries = read_entries(&mut reader)?;
    reader.finish()?;
    Ok(entries)
}

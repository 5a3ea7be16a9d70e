//! Taking in what somebody sent: a link, a pasted text, a file.

use crate::checksum::crc32;
use crate::domain::journal::entries::Entry;
use crate::share::card::card_of_bytes;
use crate::share::data_block::{self, DataBlock};
use crate::share::envelope::{self, Kind};
use crate::share::link::entries_of_bytes;
use crate::store::EVERYTHING;
use crate::store::import_error::ImportError;
use crate::store::line::entries_in;
use crate::store::saved::backup::{OfBreeder, backup_from_text};
use crate::store::saved::{Limits, entries_from_text};
use crate::store::saved_error::SavedError;

/// What a text holds. Nothing is taken in yet: whoever reads it shows it first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Imported {
    /// A handover card: the entries that make the plan of one chick.
    Card(Vec<Entry>),
    /// The parts of a card that fit into a QR code; the whole card adds the others.
    ShortCard(Vec<Entry>),
    /// Entries of a journal: a report, a backup, another carer's notes.
    Entries(Vec<Entry>),
    /// A breeder's backup: entries, and what she typed once for all of her chicks.
    OfBreeder(Vec<Entry>, Box<OfBreeder>),
}

/// What a pasted text, a whole link or the text of a file holds.
///
/// A page of ours is known by its data block, a plain backup by its brace, everything that a browser
/// held by its first line, anything else by the prefix of a link; words around a link, line breaks within it
/// and the marks of an answered mail do no harm. Size is looked at
/// before anything is made of the text, and every value goes through the checks of the domain.
///
/// # Errors
/// [`ImportError`]; nothing is taken by halves, but for the text of everything that a browser held: it
/// is saved when something there is damaged, and gives every entry that is whole.
///
/// # Examples
/// ```
/// use perchlight::domain::journal::entries::ChickId;
/// use perchlight::domain::journal::scenario::Scenario;
/// use perchlight::domain::plan::care_plan::CarePlan;
/// use perchlight::domain::plan::species::Species;
/// use perchlight::domain::time::moment::{Day, Offset};
/// use perchlight::share::card::card_to_link_text;
/// use perchlight::share::import::{Imported, read_text};
/// use perchlight::store::import_error::ImportError;
///
/// let (chick, plan) = (ChickId([7; 12]), CarePlan::default_for(Species::ScarletMacaw));
/// let script = Scenario::new(chick, plan, Day::from_number(20_000), Offset::UTC);
/// let entries = script.journal().entries_of_plan(chick);
/// let link = format!("https://example.org/app/#{}", card_to_link_text(&entries));
/// assert_eq!(read_text(&format!("The card:\n{link}\nSee you!")), Ok(Imported::Card(entries)));
/// assert_eq!(read_text(&link[..60]), Err(ImportError::Truncated));
/// assert_eq!(read_text("Good morning"), Err(ImportError::NotOurs));
/// ```
pub fn read_text(text: &str) -> Result<Imported, ImportError> {
    if text.len() > Limits::FILE.bytes {
        return Err(ImportError::TooLarge);
    }
    let text = text.trim_start_matches('\u{feff}').trim();
    match data_block::find(text) {
        Some(block) => read_block(&block?),
        None if text.starts_with('{') => read_backup(text),
        None if text.starts_with(EVERYTHING) => read_everything(text),
        None => read_link(text),
    }
}

/// Most links that are read out of one pasted text. Ours: a season of reports.
const MOST_LINKS: usize = 200;

/// What a pasted text holds when it may hold several links: each of them, in their order, the same one once.
///
/// A text that is a page, a backup or everything that a browser held is one; so is one without any link, which
/// then says that it is not ours.
pub fn read_texts(text: &str) -> Vec<Result<Imported, ImportError>> {
    let is_one = text.trim_start_matches('\u{feff}').trim_start();
    let is_one = is_one.starts_with('{') || is_one.starts_with(EVERYTHING);
    if is_one || Limits::FILE.bytes < text.len() || data_block::find(text).is_some() {
        return vec![read_text(text)];
    }
    let mut found = Vec::new();
    for link in envelope::each(text).into_iter().take(MOST_LINKS) {
        let read = read_link(link);
        if !found.contains(&read) {
            found.push(read);
        }
    }
    if found.is_empty() {
        found.push(read_text(text));
    }
    found
}

/// The whole entries in a text of everything that a browser held, which may be damaged in parts.
fn read_everything(text: &str) -> Result<Imported, ImportError> {
    let entries = entries_in(text);
    if entries.is_empty() {
        Err(ImportError::Damaged)
    } else if Limits::FILE.entries < entries.len() {
        Err(ImportError::TooLarge)
    } else {
        Ok(Imported::Entries(entries))
    }
}

/// A page's data: entries as JSON, or a card as a JSON text.
fn read_block(block: &DataBlock<'_>) -> Result<Imported, ImportError> {
    if crc32(block.json.as_bytes()) != block.sum {
        return Err(ImportError::Damaged);
    }
    if block.json.starts_with('{') {
        read_json(block.json)
    } else {
        read_link(block.json)
    }
}

/// A backup's file. What a breeder typed stands in no page and in no link, so it is read here alone.
fn read_backup(json: &str) -> Result<Imported, ImportError> {
    match backup_from_text(json, Limits::FILE) {
        Ok(backup) => Ok(match backup.of_breeder {
            Some(of_breeder) => Imported::OfBreeder(backup.entries, Box::new(of_breeder)),
            None => Imported::Entries(backup.entries),
        }),
        Err(error) => Err(of_saved(json, &error)),
    }
}

fn read_json(json: &str) -> Result<Imported, ImportError> {
    match entries_from_text(json, Limits::FILE) {
        Ok(entries) => Ok(Imported::Entries(entries)),
        Err(error) => Err(of_saved(json, &error)),
    }
}

fn of_saved(json: &str, error: &SavedError) -> ImportError {
    match error {
        SavedError::NotJson if !json.starts_with("{\"v\":") => ImportError::NotOurs,
        SavedError::NotJson if !json.ends_with('}') => ImportError::Truncated,
        SavedError::NoVersion | SavedError::TooDeep { .. } => ImportError::NotOurs,
        SavedError::Newer { version } => ImportError::Newer {
            version: u32::try_from(*version).unwrap_or(u32::MAX),
        },
        SavedError::TooLarge { .. } | SavedError::TooMany { .. } => ImportError::TooLarge,
        SavedError::NotJson
        | SavedError::Missing { .. }
        | SavedError::WrongKind { .. }
        | SavedError::UnknownField { .. }
        | SavedError::UnknownTag { .. }
        | SavedError::OutOfRange { .. }
        | SavedError::BadText { .. }
        | SavedError::NotTheSame
        | SavedError::Refused(_) => ImportError::Damaged,
    }
}

fn read_link(text: &str) -> Result<Imported, ImportError> {
    let (kind, bytes) = envelope::open(text).unwrap_or(Err(ImportError::NotOurs))?;
    let taken = match kind {
        Kind::Card => card_of_bytes(&bytes).map(Imported::Card),
        Kind::ShortCard => card_of_bytes(&bytes).map(Imported::ShortCard),
        Kind::Entries => entries_of_bytes(&bytes).map(Imported::Entries),
    };
    taken.or(Err(ImportError::Damaged))
}

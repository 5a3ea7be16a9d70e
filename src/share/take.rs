//! Taking in what somebody sent: a link, a pasted text, a file.

use crate::checksum::crc32;
use crate::domain::journal::entries::{ChickId, Entry};
use crate::domain::plan::care_plan::CarePlan;
use crate::share::card::card_of_bytes;
use crate::share::data_block::{self, DataBlock};
use crate::share::envelope::{self, Kind};
use crate::share::link::entries_of_bytes;
use crate::store::saved::{Limits, SavedError, entries_from_text};
use crate::store::take_error::TakeError;

/// What a text holds. Nothing is taken in yet: whoever reads it shows it first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Taken {
    /// A handover card.
    Card {
        /// The chick.
        chick: ChickId,
        /// Its plan.
        plan: Box<CarePlan>,
    },
    /// A changed plan for a chick that should be here already.
    PlanChange {
        /// The chick.
        chick: ChickId,
        /// The new plan.
        plan: Box<CarePlan>,
    },
    /// Entries of a journal: a report, a backup, another carer's notes.
    Entries(Vec<Entry>),
}

/// What a pasted text, a whole link or the text of a file holds.
///
/// A page of ours is known by its data block, a plain backup by its brace, anything else by the
/// prefix of a link; words around a link and line breaks within it do no harm. Size is looked at
/// before anything is made of the text, and every value goes through the checks of the domain.
///
/// # Errors
/// [`TakeError`]; nothing is taken by halves.
///
/// # Examples
/// ```
/// use perchlight::domain::journal::entries::ChickId;
/// use perchlight::domain::plan::care_plan::CarePlan;
/// use perchlight::domain::plan::species::Species;
/// use perchlight::share::card::card_to_link_text;
/// use perchlight::share::take::{Taken, read_text};
/// use perchlight::store::take_error::TakeError;
///
/// let (chick, plan) = (ChickId([7; 12]), CarePlan::default_for(Species::ScarletMacaw));
/// let link = format!("https://example.org/app/#{}", card_to_link_text(chick, &plan));
/// let card = Taken::Card { chick, plan: Box::new(plan) };
/// assert_eq!(read_text(&format!("The card:\n{link}\nSee you!")), Ok(card));
/// assert_eq!(read_text(&link[..60]), Err(TakeError::Truncated));
/// assert_eq!(read_text("Good morning"), Err(TakeError::NotOurs));
/// ```
pub fn read_text(text: &str) -> Result<Taken, TakeError> {
    if text.len() > Limits::FILE.bytes {
        return Err(TakeError::TooLarge);
    }
    let text = text.trim_start_matches('\u{feff}').trim();
    match data_block::find(text) {
        Some(block) => read_block(&block?),
        None if text.starts_with('{') => read_json(text),
        None => read_link(text),
    }
}

/// A page's data: entries as JSON, or a card as a JSON text.
fn read_block(block: &DataBlock<'_>) -> Result<Taken, TakeError> {
    if crc32(block.json.as_bytes()) != block.sum {
        return Err(TakeError::Damaged);
    }
    if block.json.starts_with('{') {
        read_json(block.json)
    } else {
        read_link(block.json)
    }
}

fn read_json(json: &str) -> Result<Taken, TakeError> {
    match entries_from_text(json, Limits::FILE) {
        Ok(entries) => Ok(Taken::Entries(entries)),
        Err(error) => Err(of_saved(json, &error)),
    }
}

fn of_saved(json: &str, error: &SavedError) -> TakeError {
    match error {
        SavedError::NotJson if !json.starts_with("{\"v\":") => TakeError::NotOurs,
        SavedError::NotJson if !json.ends_with('}') => TakeError::Truncated,
        SavedError::NoVersion | SavedError::TooDeep { .. } => TakeError::NotOurs,
        SavedError::Newer { version } => TakeError::Newer {
            version: u32::try_from(*version).unwrap_or(u32::MAX),
        },
        SavedError::TooLarge { .. } | SavedError::TooMany { .. } => TakeError::TooLarge,
        SavedError::NotJson
        | SavedError::Missing { .. }
        | SavedError::WrongKind { .. }
        | SavedError::UnknownField { .. }
        | SavedError::UnknownTag { .. }
        | SavedError::OutOfRange { .. }
        | SavedError::BadText { .. }
        | SavedError::NotTheSame
        | SavedError::Refused(_) => TakeError::Damaged,
    }
}

fn read_link(text: &str) -> Result<Taken, TakeError> {
    let (kind, bytes) = envelope::open(text).unwrap_or(Err(TakeError::NotOurs))?;
    let taken = match kind {
        Kind::Card => card_of_bytes(&bytes).map(|(chick, plan)| Taken::Card {
            chick,
            plan: Box::new(plan),
        }),
        Kind::PlanChange => card_of_bytes(&bytes).map(|(chick, plan)| Taken::PlanChange {
            chick,
            plan: Box::new(plan),
        }),
        Kind::Entries => entries_of_bytes(&bytes).map(Taken::Entries),
    };
    taken.or(Err(TakeError::Damaged))
}

//! A correction of what was noted: what is right is noted at its time, what was wrong is taken back and
//! stays to be read.

use leptos::prelude::GetUntracked;

use crate::domain::journal::entries::{Change, EntryId, Refusal};
use crate::domain::time::moment::Moment;
use crate::ui::clock;
use crate::ui::state::AppState;

/// Notes `right` at the moment of the entry that was wrong and takes that one back: one act, one Undo.
///
/// # Errors
/// A [`Refusal`]; nothing was then changed.
pub fn correct(
    state: AppState,
    wrong: EntryId,
    at: Moment,
    right: Change,
    said: String,
) -> Result<(), Refusal> {
    let chick = state.chick.get_untracked().ok_or(Refusal::NoSuchChick)?;
    let taken_back = (clock::now(), Change::Retracted { id: wrong });
    let ids = state.dispatch_for(chick, vec![(at, right), taken_back])?;
    state.say(said, ids);
    Ok(())
}

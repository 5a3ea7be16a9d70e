//! Taking in what somebody sent, once it was shown.

use leptos::prelude::*;

use crate::domain::journal::entries::{Change, ChickId, Entry};
use crate::domain::journal::incoming::Incoming;
use crate::store::setting::Setting;
use crate::ui::clock;
use crate::ui::route::Route;
use crate::ui::state::AppState;

/// Whether its owner typed the chick in, as being at home.
fn is_typed(state: AppState, chick: ChickId) -> bool {
    let journal = state.journal;
    journal.with_untracked(|journal| journal.check_typed(chick).is_ok())
}

/// Takes entries in, and says of a card that it was taken.
pub fn take_in(state: AppState, entries: &[Entry], found: &[Incoming], is_card: bool) {
    let writing = state.writing_now();
    if state.is_demo.get_untracked() {
        state.leave_demo();
    }
    let count = state.import(entries.to_vec(), true);
    let mut undo = Vec::new();
    for one in found.iter().filter(|one| !one.taken.is_empty()) {
        let sets = one.taken.clone();
        match state.dispatch_for(one.chick, vec![(clock::now(), Change::PartTaken { sets })]) {
            Ok(ids) => undo.extend(ids.into_iter().filter(|_| one.old.is_some())),
            Err(refusal) => return state.say_refusal(&refusal),
        }
    }
    let mut said = writing.backup_preview(entries.len(), count);
    for one in found.iter().filter(|one| one.old.is_none()) {
        if is_card {
            state.card_taken(one.chick);
        } else if !state.copies.is_bred_here(one.chick) {
            state.set_of_phone(Setting::AskRole, one.chick, Some(clock::now()));
            if !is_typed(state, one.chick) {
                state.ask_home(one.chick);
            }
        }
    }
    // A report is about its own chick, whichever was on screen.
    if let [one] = found {
        let chick = state
            .journal
            .with_untracked(|journal| journal.leading_id(one.chick));
        if state.shows_removed(chick) {
            return;
        }
        state.show_chick(chick);
        if is_card {
            said.clone_from(&one.new.name);
        }
    }
    state.say(said, undo);
    state.go(Route::Now);
}

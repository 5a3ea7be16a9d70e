//! The records of a chick for another phone, as links.

use leptos::prelude::*;

use crate::domain::journal::entries::{ChickId, Entry};
use crate::domain::time::moment::Moment;
use crate::share::link::{entries_since, entries_to_link_text, entries_to_send};
use crate::ui::parts::copy_button::CopyButton;
use crate::ui::platform;
use crate::ui::state::AppState;

/// When the records of a chick were last sent from here; never in the example.
pub fn last_sent(state: AppState, chick: ChickId) -> Option<Moment> {
    let last = state.copies.last_sent(chick);
    last.filter(|_| !state.is_demo.get_untracked())
}

/// All records of a chick, under a word, and what is new since the last sending.
///
/// That moment stays as it was when the screen was opened, so that a second tap copies the same again.
pub fn records_links(state: AppState, chick: ChickId, word: &'static str) -> impl IntoView {
    let remember = move |()| {
        if !state.is_demo.get_untracked() {
            state.copies.remember_sent(chick);
        }
    };
    let all = move || {
        let journal = state.journal.get_untracked();
        let entries: Vec<Entry> = entries_to_send(&journal, chick);
        entries_to_link_text(&entries).map(|text| platform::link_to(&text))
    };
    let newer = last_sent(state, chick).map(|last| {
        let lived = state.zone.with_untracked(|zone| zone.lived(last));
        let text = move || {
            let journal = state.journal.get_untracked();
            let text = entries_to_link_text(&entries_since(
                &entries_to_send(&journal, chick),
                chick,
                last,
            ));
            text.map(|text| platform::link_to(&text))
        };
        let word = state.writing_now().only_new_since(lived);
        view! { <CopyButton word text=Box::new(text) done=remember /> }
    });
    view! {
        <div class="acts">
            <CopyButton word text=Box::new(all) done=remember />
            {newer}
        </div>
    }
}

//! Two carers of one chick: who did what, and what is new for the other phone as one link.

use leptos::prelude::*;

use crate::domain::journal::carers::notes_since;
use crate::share::link::{entries_since, entries_to_link_text};
use crate::ui::parts::copy_button::CopyButton;
use crate::ui::platform;
use crate::ui::state::AppState;

/// Minutes that "who did what" looks back: two days.
const LOOKS_BACK_MINUTES: i64 = 2 * 1_440;

/// The section for a chick that this phone cares for; `None` for one it only follows.
///
/// The moment of the last sending stays as it was when the screen was opened, so that a second tap copies the same
/// again.
pub fn two_carers(state: AppState) -> Option<impl IntoView> {
    let writing = state.writing_now();
    let say = writing.language;
    let chick = state.chick.get().filter(|chick| state.is_with_me(*chick))?;
    let is_demo = state.is_demo.get_untracked();
    let remember = move |()| {
        if !is_demo {
            state.copies.remember_sent(chick);
        }
    };
    let link_since = move |from| {
        let journal = state.journal.get_untracked();
        let text = if let Some(from) = from {
            entries_to_link_text(&entries_since(journal.entries(), chick, from))
        } else {
            let entries: Vec<_> = journal.of_chick(chick).into_iter().cloned().collect();
            entries_to_link_text(&entries)
        };
        text.map(|text| format!("{}#{text}", platform::page_address()))
    };
    let last = state.copies.last_sent(chick).filter(|_| !is_demo);
    let newer = last.map(|last| {
        let lived = state.zone.with_untracked(|zone| zone.lived(last));
        let text = Box::new(move || link_since(Some(last)));
        view! { <CopyButton word=writing.only_new_since(lived) text done=remember /> }
    });
    let since = state.now.get_untracked().plus_minutes(-LOOKS_BACK_MINUTES);
    let noted = state
        .journal
        .with(|journal| notes_since(journal, chick, since));
    let rows = noted
        .iter()
        .map(|notes| view! { <li>{writing.carer_notes(notes)}</li> });
    let rows = rows.collect_view();
    let none = noted.is_empty().then(|| say.carers_none());
    Some(view! {
        <details class="group" id="two-carers">
            <summary>{say.carers_title()}</summary>
            <p>{say.life_role_both_said()}</p>
            <div class="acts">
                {newer}
                <CopyButton word=say.carers_all() text=Box::new(move || link_since(None)) done=remember />
            </div>
            <p class="hint">{say.carers_hint()}</p>
            <h3>{say.carers_who()}</h3>
            <ul class="plain-list">{rows}</ul>
            {none.map(|none| view! { <p>{none}</p> })}
        </details>
    })
}

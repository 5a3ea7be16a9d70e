//! Two carers of one chick: who did what, and what is new for the other phone as one link.

use leptos::prelude::*;

use crate::domain::journal::carers::notes_since;
use crate::ui::parts::records_links::records_links;
use crate::ui::state::AppState;

/// Minutes that "who did what" looks back: two days.
const LOOKS_BACK_MINUTES: i64 = 2 * 1_440;

/// The section for a chick that this phone cares for; `None` for one it only follows.
pub fn two_carers(state: AppState) -> Option<impl IntoView> {
    let writing = state.writing_now();
    let say = writing.language;
    let chick = state.chick.get().filter(|chick| state.is_with_me(*chick))?;
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
            {records_links(state, chick, say.carers_all())}
            <p class="hint">{say.carers_hint()}</p>
            <h3>{say.carers_who()}</h3>
            <ul class="plain-list">{rows}</ul>
            {none.map(|none| view! { <p>{none}</p> })}
        </details>
    })
}

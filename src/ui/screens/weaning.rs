//! Weaning: which feeds there still are, which are given up, and which would go next.

use leptos::prelude::*;

use crate::domain::plan::Slot;
use crate::ui::parts::page::Heading;
use crate::ui::state::AppState;

/// The plan's order and how far it has come.
#[component]
pub fn WeaningScreen() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let body =
        move || {
            state.outlook.get().map(|outlook| {
                let dropped = outlook.chick.dropped_slots(outlook.now);
                let order: Vec<Slot> = outlook.chick.plan.drop_order.clone();
                let rows = order.into_iter().map(|slot| {
                let is_dropped = dropped.contains(&slot);
                let word = if is_dropped { say.entry_dropped() } else { say.weaning_still_given() };
                view! { <li data-dropped=is_dropped.to_string()>{say.feed(slot)} ": " {word}</li> }
            });
                let rows = rows.collect_view();
                view! {
                    <h2>{say.weaning_order()}</h2>
                    <ol class="plain-list">{rows}</ol>
                }
            })
        };
    view! {
        <Heading text=say.weaning_title() />
        {body}
        <p class="hint">{say.weaning_age()}</p>
    }
}

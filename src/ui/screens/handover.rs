//! What goes out and comes in: for now the backup.

use leptos::prelude::*;

use crate::domain::moment::Moment;
use crate::store::saved::entries_to_text;
use crate::ui::parts::page::Heading;
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::state::AppState;

/// Cards, reports, backup.
#[component]
pub fn HandoverScreen() -> impl IntoView {
    let say = AppState::here().language();
    view! {
        <Heading text=say.handover_title() />
        <Backup />
        <section class="group">
            <h2>{say.handover_backup_in()}</h2>
            <a class="button" href=Route::TakeIn.to_hash()>{say.start_card()} " / " {say.handover_backup_in()}</a>
        </section>
    }
}

#[component]
fn Backup() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let saved_at = RwSignal::new(state.copies.last_backup());
    let last = move || {
        let lived = saved_at.get().map(|seconds| {
            state
                .zone
                .with(|zone| zone.lived(Moment::from_seconds(seconds)))
        });
        lived.map_or_else(
            || say.handover_never().to_owned(),
            |lived| writing.lived(lived),
        )
    };
    let save = move |_| {
        let text = state
            .journal
            .with_untracked(|journal| entries_to_text(journal.entries()));
        let day = state
            .zone
            .with_untracked(|zone| zone.lived(crate::ui::clock::now()))
            .day;
        let name = format!("perchlight-backup-{}.json", day.iso());
        if platform::download(&name, "application/json", &text) && !state.is_demo.get_untracked() {
            state.copies.remember_backup();
            saved_at.set(state.copies.last_backup());
        }
    };
    view! {
        <section class="group">
            <h2>{say.handover_backup()}</h2>
            <p>{say.handover_backup_text()}</p>
            <p>{say.handover_last_backup()} ": " {last}</p>
            <button type="button" class="button button--main" on:click=save>{say.handover_backup_out()}</button>
        </section>
    }
}

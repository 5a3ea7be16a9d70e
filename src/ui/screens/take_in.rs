//! Take in what somebody sent: a pasted text or a file, shown before anything changes.

use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;

use crate::domain::journal::{Entry, Journal};
use crate::store::saved::{Limits, entries_from_text};
use crate::ui::parts::page::Page;
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::state::AppState;

/// Take in a pasted text or a file.
#[component]
pub fn TakeInScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let text = RwSignal::new(String::new());
    let fault = RwSignal::new(String::new());
    let preview = RwSignal::new(None::<Vec<Entry>>);
    let read = move |typed: &str| {
        preview.set(None);
        fault.set(String::new());
        if typed.trim().is_empty() {
            return fault.set(say.fault_text_needed().to_owned());
        }
        match entries_from_text(typed.trim(), Limits::FILE) {
            Ok(entries) => preview.set(Some(entries)),
            Err(error) => fault.set(format!(
                "{} {}",
                say.saved_error(&error),
                say.handover_nothing_changed()
            )),
        }
    };
    let choose = move |event: web_sys::Event| {
        let input: Option<HtmlInputElement> =
            event.target().and_then(|target| target.dyn_into().ok());
        let Some(file) = input
            .and_then(|input| input.files())
            .and_then(|files| files.get(0))
        else {
            return;
        };
        spawn_local(async move {
            match platform::read_file(file).await {
                Some(content) => read(&content),
                None => fault.set(format!(
                    "{} {}",
                    say.fault_file(),
                    say.handover_nothing_changed()
                )),
            }
        });
    };
    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        read(&text.get_untracked());
    };
    let back = if state.chick.get_untracked().is_some() {
        Route::Handover
    } else {
        Route::Start
    };
    view! {
        <Page title=say.start_card() back>
            <form class="form" on:submit=submit>
                <div class="field">
                    <label for="paste">{say.handover_paste()}</label>
                    <textarea
                        id="paste"
                        rows="5"
                        aria-describedby="paste-fault"
                        prop:value=move || text.get()
                        on:input=move |event| text.set(event_target_value(&event))
                    ></textarea>
                </div>
                <button type="submit" class="button">{say.handover_read()}</button>
                <div class="field">
                    <label for="file">{say.handover_file()}</label>
                    <input id="file" type="file" accept=".json,.html,.txt,application/json,text/html,text/plain" on:change=choose />
                </div>
                <p class="fault" id="paste-fault" role="alert">{move || fault.get()}</p>
                <Preview preview />
            </form>
        </Page>
    }
}

/// What it would bring, and the button that takes it in.
#[component]
fn Preview(preview: RwSignal<Option<Vec<Entry>>>) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    move || {
        preview.get().map(|entries| {
            let all = entries.len();
            let new = state.journal.with_untracked(|journal| {
                entries.iter().filter(|entry| journal.entries().binary_search(entry).is_err()).count()
            });
            let names = names_of(&entries);
            let take = move |_| {
                if state.is_demo.get_untracked() {
                    state.leave_demo();
                }
                let count = state.take_in(entries.clone(), true);
                state.say(writing.backup_preview(all, count), Vec::new());
                state.go(Route::Now);
            };
            view! {
                <section class="question">
                    <p><strong>{names}</strong></p>
                    <p>{writing.backup_preview(all, new)}</p>
                    <button type="button" class="button button--main" on:click=take>{say.handover_take()}</button>
                </section>
            }
        })
    }
}

fn names_of(entries: &[Entry]) -> String {
    let journal = Journal::from_entries(entries.to_vec());
    let names = journal.chicks().into_iter().filter_map(|id| {
        crate::domain::chick::Chick::from_journal(&journal, id).map(|chick| chick.plan.name)
    });
    names.collect::<Vec<_>>().join(", ")
}

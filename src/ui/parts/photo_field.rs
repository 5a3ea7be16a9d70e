//! Fields that take a photo or choose some, and what became of them.

use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use web_sys::{File, HtmlInputElement};

use crate::domain::journal::entries::{Change, EntryId};
use crate::domain::journal::photo::PhotoOf;
use crate::ui::photo;
use crate::ui::state::AppState;

/// Takes a photo of one kind, or chooses some; each is noted once its picture is on the disk.
#[component]
pub fn PhotoField(
    /// What they show.
    #[prop(into)]
    of: Signal<PhotoOf>,
) -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let answer = RwSignal::new(String::new());
    let choose = move |event: web_sys::Event| {
        let input: Option<HtmlInputElement> =
            event.target().and_then(|target| target.dyn_into().ok());
        let Some(input) = input else { return };
        let files = input.files();
        let count = files.as_ref().map_or(0, web_sys::FileList::length);
        let files: Vec<File> = (0..count)
            .filter_map(|place| files.as_ref()?.get(place))
            .collect();
        // The same file chosen again is taken again.
        input.set_value("");
        if !files.is_empty() {
            answer.set(say.photo_keeping().to_owned());
            spawn_local(keep_all(state, files, of.get_untracked(), answer));
        }
    };
    view! {
        <div class="field">
            <label for="photo-take">{say.photo_take()}</label>
            <input id="photo-take" type="file" accept="image/*" capture="environment" on:change=choose />
        </div>
        <div class="field">
            <label for="photo-choose">{say.photo_choose()}</label>
            <input id="photo-choose" type="file" accept="image/*" multiple on:change=choose />
        </div>
        <p class="hint photo__answer" role="status">{move || answer.get()}</p>
        <p class="hint">{say.photos_honest()}</p>
    }
}

/// Keeps files one after the other; the first that cannot be kept ends it, and says why.
async fn keep_all(state: AppState, files: Vec<File>, of: PhotoOf, answer: RwSignal<String>) {
    let writing = state.writing_now();
    let say = writing.language;
    let count = files.len();
    let mut noted: Vec<EntryId> = Vec::new();
    let mut fault = None;
    for file in files {
        let kept = photo::keep(&file, of).await;
        let kept = kept.map_err(|fault| say.photo_fault(fault));
        let change = kept.map(Change::PhotoTaken);
        let id = change.and_then(|change| {
            state
                .dispatch(change)
                .map_err(|refusal| say.refusal(&refusal))
        });
        match id {
            Ok(id) => noted.push(id),
            Err(why) => {
                fault = Some(why);
                break;
            }
        }
    }
    let told = writing.photos_kept(noted.len(), count);
    let said = match fault {
        Some(why) if count == 1 => why.to_owned(),
        Some(why) => format!("{told} {why}"),
        None => told,
    };
    // The screen may have gone by now; the notice stands on whichever is there.
    answer.try_set(said.clone());
    if !noted.is_empty() {
        state.say(said, noted);
    }
}

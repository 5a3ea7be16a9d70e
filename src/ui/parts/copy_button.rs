//! A button that puts a text on the clipboard.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::ui::platform;
use crate::ui::state::AppState;

/// Copies a text, made on the tap, and says so.
#[component]
pub fn CopyButton(
    /// Its label.
    #[prop(into)]
    word: String,
    /// Makes the text; `None` when it is too long for a link.
    text: Box<dyn Fn() -> Option<String>>,
    /// What else is done once the text was copied.
    #[prop(optional, into)]
    done: Option<Callback<()>>,
) -> impl IntoView {
    let say = AppState::here().language();
    let shown = RwSignal::new(word);
    let copy = move |_| {
        let Some(text) = text() else {
            return shown.set(say.exchange_too_long().to_owned());
        };
        spawn_local(async move {
            if platform::copy(text).await {
                shown.set(say.now_copied().to_owned());
                if let Some(done) = done {
                    done.run(());
                }
            }
        });
    };
    view! { <button type="button" class="button" on:click=copy>{move || shown.get()}</button> }
}

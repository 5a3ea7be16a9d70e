//! A field that reads a chosen file.

use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use web_sys::{File, HtmlInputElement};

use crate::ui::photo::entries_text;
use crate::ui::platform;

/// Files of ours by ending and type; a telephone may know only one of them.
const OURS: &str = ".json,.html,.txt,application/json,text/html,text/plain";

/// A field for a file of ours.
#[component]
pub fn FileField(
    /// Id, unique on the page.
    id: &'static str,
    /// Its label.
    label: &'static str,
    /// Takes the text of each chosen file; `None` when it cannot be read.
    read: Callback<Option<String>>,
    /// Whether several can be chosen at once.
    #[prop(optional)]
    multiple: bool,
    /// Takes the file itself before.
    #[prop(optional)]
    chosen: Option<Callback<File>>,
) -> impl IntoView {
    let choose = move |event: web_sys::Event| {
        let input: Option<HtmlInputElement> =
            event.target().and_then(|target| target.dyn_into().ok());
        let Some(input) = input else { return };
        let Some(list) = input.files() else { return };
        let files: Vec<_> = (0..list.length()).filter_map(|at| list.get(at)).collect();
        // The same file chosen again, perhaps changed since, is read again.
        input.set_value("");
        spawn_local(async move {
            for file in files {
                if let Some(chosen) = chosen {
                    chosen.run(file.clone());
                }
                let text = match entries_text(&file).await {
                    Some(entries) => Some(entries),
                    None => platform::read_file(file).await,
                };
                read.run(text);
            }
        });
    };
    view! {
        <div class="field">
            <label for=id>{label}</label>
            <input id=id type="file" accept=OURS multiple=multiple on:change=choose />
        </div>
    }
}

//! The app on screen.

use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// Puts the app in place of the page's first content.
pub fn start() {
    let place = document().get_element_by_id("app");
    let Some(place) = place.and_then(|place| place.dyn_into::<web_sys::HtmlElement>().ok()) else { return };
    place.set_inner_html("");
    mount_to(place, App).forget();
}

/// The whole app.
#[component]
pub fn App() -> impl IntoView {
    if let Some(root) = document().document_element() {
        let told = root.set_attribute("data-started", "true");
        if told.is_err() {
            leptos::logging::warn!("the page's root could not be changed");
        }
    }
    view! {
        <main class="main">
            <h1>"Perchlight"</h1>
        </main>
        <nav class="bottom-bar" aria-label="Places">
            <a class="bottom-bar__place" href="#/now">"Now"</a>
            <a class="bottom-bar__place" href="#/weight">"Weight"</a>
            <a class="bottom-bar__place" href="#/weaning">"Weaning"</a>
            <a class="bottom-bar__place" href="#/journal">"Journal"</a>
            <a class="bottom-bar__place" href="#/handover">"Handover"</a>
        </nav>
    }
}

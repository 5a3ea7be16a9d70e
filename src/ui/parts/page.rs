//! The frame of a screen that was reached from another one.

use leptos::prelude::*;

use crate::ui::route::Route;
use crate::ui::state::AppState;

/// A heading that takes the focus when its screen opens.
#[component]
pub fn Heading(
    /// Its text.
    #[prop(into)]
    text: String,
) -> impl IntoView {
    view! { <h1 class="heading" tabindex="-1">{text}</h1> }
}

/// A screen with a way back on top.
#[component]
pub fn Page(
    /// Its heading.
    #[prop(into)]
    title: String,
    /// Where Back leads.
    back: Route,
    /// What stands at the end of its head.
    #[prop(optional, into)]
    beside: Option<ViewFn>,
    /// What is pressed here, pinned below what scrolls.
    #[prop(optional, into)]
    dock: Option<ViewFn>,
    /// Its content.
    children: Children,
) -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let has_dock = dock.is_some();
    view! {
        <div class="page" class:scroll=has_dock>
            <header class="page__head">
                <a
                    class="page__back"
                    href=back.to_hash()
                    on:click=move |event| {
                        event.prevent_default();
                        state.go(back);
                    }
                >
                    <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
                        <path d="M15 4L7 12L15 20"></path>
                    </svg>
                    <span class="only-read">{say.back()}</span>
                </a>
                <Heading text=title />
                {beside.map(|beside| beside.run())}
            </header>
            {children()}
        </div>
        {dock.map(|dock| view! { <div class="dock">{dock.run()}</div> })}
    }
}

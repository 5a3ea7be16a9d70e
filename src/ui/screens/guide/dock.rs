//! What the thumb presses in the guide: Stop at the left on every step, the way on beside it.

use leptos::prelude::*;

use crate::ui::screens::guide::under_way::Feed;

/// The pinned row: Stop, and what a step puts beside it.
#[component]
pub fn GuideDock(
    /// The feed under way.
    feed: Feed,
    /// The way on.
    children: Children,
) -> impl IntoView {
    let say = feed.state.language();
    view! {
        <div class="dock guide__dock">
            <button
                type="button"
                class="button guide__stop"
                aria-pressed=move || feed.is_stopping.get().to_string()
                on:click=move |_| feed.stop_or_go_on()
            >
                {say.guide_stop()}
            </button>
            {children()}
        </div>
    }
}

/// Stop, and the one big button to the next step.
#[component]
pub fn Forward(
    /// The feed under way.
    feed: Feed,
    /// Its word.
    word: &'static str,
) -> impl IntoView {
    view! {
        <GuideDock feed>
            <button type="button" class="button button--main guide__next" on:click=move |_| feed.step_on()>{word}</button>
        </GuideDock>
    }
}

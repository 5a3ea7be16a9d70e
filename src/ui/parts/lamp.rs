//! The lamp of the next act, our own drawing: an outline while nothing is due, lit when it is.

use leptos::prelude::*;

/// A lamp on its cord. Decorative: the words beside it say the same.
#[component]
pub fn Lamp(
    /// Whether the act it hangs above is the next one.
    is_lit: bool,
) -> impl IntoView {
    let light = is_lit.then(|| {
        view! {
            <linearGradient id="lamp-light" x1="0" y1="0" x2="0" y2="1">
                <stop class="hanging-lamp__near" offset="0"></stop>
                <stop class="hanging-lamp__far" offset="1"></stop>
            </linearGradient>
            <path class="hanging-lamp__light" fill="url(#lamp-light)" d="M23 54H65L86 120H2z"></path>
        }
    });
    view! {
        <svg class="hanging-lamp" viewBox="0 0 88 120" aria-hidden="true">
            {light}
            <path class="hanging-lamp__line" d="M44 0V26"></path>
            <path class="hanging-lamp__bulb" d="M32 53a12 6 0 0 0 24 0z"></path>
            <path class="hanging-lamp__shade" d="M35 26H53C56 38 62 44 67 53H21C26 44 32 38 35 26z"></path>
        </svg>
    }
}

//! The lamp of the next act, our own drawing: an outline while nothing is due, lit when it is.

use leptos::prelude::*;

/// Cones of light.
const CONES: i32 = 12;

/// A lamp on its cord. Decorative: the words beside it say the same.
#[component]
pub fn Lamp(
    /// Whether the act it hangs above is the next one.
    is_lit: bool,
) -> impl IntoView {
    // Light that fades with its way: cones that lie over one another, each a little longer.
    let cone = |step: i32| {
        let (wide, down) = (21 * step / CONES, 54 + 66 * step / CONES);
        let d = format!("M23 54H65L{} {down}H{}z", 65 + wide, 23 - wide);
        view! { <path class="hanging-lamp__light" d=d></path> }
    };
    let light = is_lit.then(|| (1..=CONES).map(cone).collect_view());
    view! {
        <svg class="hanging-lamp" viewBox="0 0 88 120" aria-hidden="true">
            {light}
            <path class="hanging-lamp__line" d="M44 0V26"></path>
            <path class="hanging-lamp__bulb" d="M32 53a12 6 0 0 0 24 0z"></path>
            <path class="hanging-lamp__shade" d="M35 26H53C56 38 62 44 67 53H21C26 44 32 38 35 26z"></path>
        </svg>
    }
}

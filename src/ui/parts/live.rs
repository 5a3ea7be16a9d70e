//! Parts of a view that follow what they read.
//!
//! A closure named in `view!` compiles its effect anew, 1 kB each time. Here one effect serves the
//! whole program, and only what is drawn is its own.

use leptos::prelude::*;

/// What `draw` draws, drawn anew whenever something changes that it reads.
pub fn live<V: IntoView + 'static>(mut draw: impl FnMut() -> V + Send + 'static) -> AnyView {
    view! { {move || draw().into_any()} }.into_any()
}

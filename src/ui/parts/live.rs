//! Parts of a view that follow what they read.
//!
//! A closure named in `view!` compiles its effect anew, 1 kB each time, as `Effect::watch` does, and
//! `For` its list, 5 kB. Here one of each serves the whole program, and only what is drawn or done is
//! its own.

use std::hash::{DefaultHasher, Hash, Hasher};
use std::mem;

use leptos::prelude::*;

/// What `draw` draws, drawn anew whenever something changes that it reads.
pub fn live<V: IntoView + 'static>(mut draw: impl FnMut() -> V + Send + 'static) -> AnyView {
    view! { {move || draw().into_any()} }.into_any()
}

/// Calls `act` with what `read` reads, each time it may have changed; not for what it reads at first.
pub fn on_change<T: 'static>(read: impl Fn() -> T + 'static, mut act: impl FnMut(T) + 'static) {
    let mut is_first = true;
    whenever(move || {
        let read = read();
        if !mem::take(&mut is_first) {
            untrack(|| act(read));
        }
    });
}

/// Does `act` now and whenever something changes that it reads.
pub fn whenever(act: impl FnMut() + 'static) {
    let act: Box<dyn FnMut()> = Box::new(act);
    Effect::new(act);
}

/// A line of a list with what tells it from the others, not drawn yet.
type Undrawn = (u64, Box<dyn FnOnce() -> AnyView + Send>);

/// A list that follows what `items` reads. A line stays on screen as it is while an item has its key.
pub fn listed<T: Send + 'static, K: Hash, V: IntoView + 'static>(
    items: impl Fn() -> Vec<T> + Send + 'static,
    key: impl Fn(&T) -> K + Send + 'static,
    draw: impl Fn(T) -> V + Clone + Send + 'static,
) -> AnyView {
    let undrawn = move |item: T| -> Undrawn {
        let mut hasher = DefaultHasher::new();
        key(&item).hash(&mut hasher);
        let draw = draw.clone();
        (hasher.finish(), Box::new(move || draw(item).into_any()))
    };
    let lines = move || items().into_iter().map(&undrawn).collect();
    let lines: Box<dyn Fn() -> Vec<Undrawn> + Send> = Box::new(lines);
    view! { <For each=lines key=|(key, _)| *key let:line>{(line.1)()}</For> }.into_any()
}

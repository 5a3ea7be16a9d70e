//! Buttons with a word and nothing else.
//!
//! A handler in `view!` compiles the element anew for each closure, 1 kB each time. Here one button
//! serves the whole program, and only what it does is its own.

use leptos::ev::MouseEvent;
use leptos::prelude::*;

/// A plain button that does `act`.
pub fn button(word: impl Into<String>, act: impl FnMut(MouseEvent) + 'static) -> AnyView {
    drawn(word.into(), false, Box::new(act))
}

/// The main button of a screen.
pub fn main_button(word: impl Into<String>, act: impl FnMut(MouseEvent) + 'static) -> AnyView {
    drawn(word.into(), true, Box::new(act))
}

fn drawn(word: String, is_main: bool, act: Box<dyn FnMut(MouseEvent)>) -> AnyView {
    view! { <button type="button" class="button" class:button--main=is_main on:click=act>{word}</button> }.into_any()
}

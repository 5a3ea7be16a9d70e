//! One of a few, as real radio buttons.

use leptos::prelude::*;

/// One of a few answers to a question.
#[component]
pub fn Choice(
    /// The question.
    legend: &'static str,
    /// Name of the group, unique on the page.
    name: &'static str,
    /// The answers.
    options: Vec<&'static str>,
    /// Which one is chosen.
    chosen: RwSignal<Option<usize>>,
    /// What is wrong, below the answers.
    #[prop(optional, into)]
    fault: Signal<String>,
) -> impl IntoView {
    let options = options.into_iter().enumerate().map(|(index, label)| {
        view! {
            <label class="choice__option">
                <input
                    type="radio"
                    name=name
                    prop:checked=move || chosen.get() == Some(index)
                    on:change=move |_| chosen.set(Some(index))
                />
                <span>{label}</span>
            </label>
        }
    });
    view! {
        <fieldset class="choice">
            <legend>{legend}</legend>
            <div class="choice__options">{options.collect_view()}</div>
            <p class="fault" role="alert">{move || fault.get()}</p>
        </fieldset>
    }
}

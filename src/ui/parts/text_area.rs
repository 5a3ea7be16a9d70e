//! A labelled field for a text of several lines.

use leptos::prelude::*;

/// A text of several lines, with its label.
#[component]
pub fn TextArea(
    /// Id, unique on the page.
    id: &'static str,
    /// Its label.
    label: &'static str,
    /// Lines that are seen at once.
    rows: &'static str,
    /// The typed text.
    text: RwSignal<String>,
    /// A remark below it.
    #[prop(optional)]
    hint: &'static str,
    /// What is wrong.
    #[prop(optional, into)]
    fault: Signal<String>,
) -> impl IntoView {
    let (hint_id, fault_id) = (format!("{id}-hint"), format!("{id}-fault"));
    let described_by = if hint.is_empty() {
        fault_id.clone()
    } else {
        format!("{hint_id} {fault_id}")
    };
    view! {
        <div class="field">
            <label for=id>{label}</label>
            <textarea
                id=id
                rows=rows
                aria-describedby=described_by
                aria-invalid=move || (!fault.get().is_empty()).to_string()
                prop:value=move || text.get()
                on:input=move |event| text.set(event_target_value(&event))
            ></textarea>
            {(!hint.is_empty()).then(|| view! { <p class="hint" id=hint_id>{hint}</p> })}
            <p class="fault" id=fault_id role="alert">{move || fault.get()}</p>
        </div>
    }
}

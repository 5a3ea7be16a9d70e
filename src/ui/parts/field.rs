//! A labelled field with its unit and what is wrong with it.

use leptos::prelude::*;

/// What kind of text a field takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FieldKind {
    /// A decimal number.
    Number,
    /// A short text.
    Text,
    /// A telephone number.
    Telephone,
    /// A day.
    Day,
    /// A time of day.
    Time,
}

impl FieldKind {
    const fn input_type(self) -> &'static str {
        match self {
            Self::Number | Self::Text => "text",
            Self::Telephone => "tel",
            Self::Day => "date",
            Self::Time => "time",
        }
    }

    const fn input_mode(self) -> &'static str {
        match self {
            Self::Number => "decimal",
            Self::Telephone => "tel",
            Self::Text | Self::Day | Self::Time => "text",
        }
    }
}

/// A labelled field. The typed text stays as it is typed; `fault` says what is wrong with it.
#[component]
pub fn Field(
    /// Id, unique on the page.
    id: &'static str,
    /// Its label.
    #[prop(into)]
    label: String,
    /// What it takes.
    kind: FieldKind,
    /// The typed text.
    text: RwSignal<String>,
    /// Its unit.
    #[prop(optional, into)]
    unit: String,
    /// A remark below it.
    #[prop(optional, into)]
    hint: String,
    /// What is wrong.
    #[prop(optional, into)]
    fault: Signal<String>,
) -> impl IntoView {
    let fault_id = format!("{id}-fault");
    let has_hint = !hint.is_empty();
    let has_unit = !unit.is_empty();
    view! {
        <div class="field" data-kind=kind.input_mode()>
            <label for=id>{label}</label>
            <div class="field__line">
                <input
                    id=id
                    type=kind.input_type()
                    inputmode=kind.input_mode()
                    autocomplete="off"
                    aria-describedby=fault_id.clone()
                    aria-invalid=move || (!fault.get().is_empty()).to_string()
                    data-empty=move || text.with(String::is_empty).to_string()
                    prop:value=move || text.get()
                    on:input=move |event| text.set(event_target_value(&event))
                />
                {has_unit.then(|| view! { <span class="field__unit">{unit}</span> })}
            </div>
            {has_hint.then(|| view! { <p class="hint">{hint}</p> })}
            <p class="fault" id=fault_id role="alert">{move || fault.get()}</p>
        </div>
    }
}

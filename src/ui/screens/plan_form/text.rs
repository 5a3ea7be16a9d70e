//! What is typed in one field of the plan, and what is wrong with it.

use leptos::prelude::*;

use crate::ui::parts::field::{Field, FieldKind};

/// A field's text and what is wrong with it.
#[derive(Debug, Clone, Copy)]
pub struct Text {
    /// As it was typed.
    pub text: RwSignal<String>,
    /// What is wrong; empty when nothing is.
    pub fault: RwSignal<String>,
}

impl Text {
    /// A field that holds `text`.
    pub fn new(text: String) -> Self {
        Self {
            text: RwSignal::new(text),
            fault: RwSignal::new(String::new()),
        }
    }

    /// The text without spaces around it.
    pub fn get(self) -> String {
        self.text.get_untracked().trim().to_owned()
    }

    /// Whether nothing was typed.
    pub fn is_empty(self) -> bool {
        self.get().is_empty()
    }

    /// The value of `parsed`, or its fault beside the field.
    pub fn take<T>(self, parsed: Result<T, String>) -> Option<T> {
        match parsed {
            Ok(value) => {
                self.fault.set(String::new());
                Some(value)
            }
            Err(fault) => {
                self.fault.set(fault);
                None
            }
        }
    }
}

/// A field is at fault and says so itself.
#[derive(Debug)]
pub struct AtFault;

/// The value of a field that may stay empty.
///
/// # Errors
/// What `parse` says of a text that is there.
pub fn optional<T, F: Into<String>>(
    text: Text,
    parse: impl FnOnce(&str) -> Result<T, F>,
) -> Result<Option<T>, String> {
    let typed = text.get();
    if typed.is_empty() {
        Ok(None)
    } else {
        parse(&typed).map(Some).map_err(Into::into)
    }
}

/// Whether one of these fields is or was at fault: what hides them must then open and stay so.
pub fn is_any_at_fault(texts: Vec<Text>) -> Memo<bool> {
    Memo::new(move |before| {
        let is_at_fault = texts.iter().any(|text| !text.fault.get().is_empty());
        is_at_fault || before == Some(&true)
    })
}

/// A labelled field of this form.
#[component]
pub fn TextField(
    /// Id, unique on the page.
    id: &'static str,
    /// Its label.
    #[prop(into)]
    label: String,
    /// What was typed.
    text: Text,
    /// What it takes.
    kind: FieldKind,
    /// Its unit.
    #[prop(optional)]
    unit: &'static str,
    /// A remark below it.
    #[prop(optional, into)]
    hint: String,
) -> impl IntoView {
    view! { <Field id label kind text=text.text unit hint fault=text.fault /> }
}

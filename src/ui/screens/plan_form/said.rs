//! What the breeder says in her own words, topic by topic.

use leptos::prelude::*;

use crate::domain::plan::care_plan::CarePlan;
use crate::domain::plan::topic::Topic;
use crate::ui::parts::field::FieldKind;
use crate::ui::screens::plan_form::text::{Text, TextField};
use crate::ui::state::AppState;

/// What is typed, a field a topic.
#[derive(Debug, Clone, Copy)]
pub struct SaidText([Text; Topic::ALL.len()]);

const fn id(topic: Topic) -> &'static str {
    match topic {
        Topic::Sex => "sex",
        Topic::Wings => "wings",
        Topic::Papers => "papers",
        Topic::TakesFood => "takes-food",
        Topic::RoundCrop => "round-crop",
        Topic::AfterRefusal => "after-refusal",
        Topic::PowderName => "powder-name",
        Topic::Recipe => "recipe",
        Topic::Night => "night",
        Topic::Bath => "bath",
    }
}

impl SaidText {
    /// The fields of a plan.
    pub fn new(plan: &CarePlan) -> Self {
        Self(Topic::ALL.map(|topic| Text::new(plan.said(topic).to_owned())))
    }

    /// Puts what was typed into a plan.
    pub fn put(self, plan: &mut CarePlan) {
        for (topic, text) in Topic::ALL.into_iter().zip(self.0) {
            plan.say(topic, &text.get());
        }
    }
}

/// The fields.
#[component]
pub fn SaidRows(
    /// What is typed.
    said: SaidText,
) -> impl IntoView {
    let say = AppState::here().language();
    let rows = Topic::ALL.into_iter().zip(said.0).map(|(topic, text)| {
        view! { <TextField id=id(topic) label=say.topic(topic) text=text kind=FieldKind::Text hint=say.optional() /> }
    });
    view! { {rows.collect_view()} }
}

//! What the breeder or a vet said about feeding, noted where it is missed.

use leptos::prelude::*;

use crate::domain::journal::entries::Change;
use crate::domain::plan::care_plan::Role;
use crate::domain::quantity::units::{Millilitres, parse_thousandths};
use crate::ui::clock;
use crate::ui::parts::choice::Choice;
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::state::AppState;

const WHO: [Role; 3] = [Role::Breeder, Role::AvianVet, Role::EmergencyVet];

/// "The breeder or vet said…": who, whether it may be fed, how much, for how long, in their words.
#[component]
pub fn AdviceForm() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let (who, may) = (RwSignal::new(None), RwSignal::new(None));
    let text = || RwSignal::new(String::new());
    let (ml, hours, about) = (text(), text(), text());
    let (ml_fault, hours_fault, fault) = (text(), text(), text());
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        for fault in [ml_fault, hours_fault, fault] {
            fault.set(String::new());
        }
        let who = who
            .get_untracked()
            .and_then(|index: usize| WHO.get(index).copied());
        let Some((who, may)) = who.zip(may.get_untracked()) else {
            return fault.set(say.fault_choose().to_owned());
        };
        let is_typed = |text: RwSignal<String>| !text.with_untracked(|text| text.trim().is_empty());
        let most = is_typed(ml).then(|| Millilitres::parse(&ml.get_untracked()));
        let most = match most.transpose() {
            Ok(most) => most,
            Err(error) => return ml_fault.set(writing.number_error(error)),
        };
        let minutes = is_typed(hours).then(|| parse_thousandths(&hours.get_untracked()));
        let minutes = match minutes.transpose() {
            Ok(thousandths) => thousandths.map(|thousandths| thousandths * 60 / 1_000),
            Err(error) => return hours_fault.set(writing.number_error(error)),
        };
        let change = Change::AdviceNoted {
            who,
            about: about.get_untracked().trim().to_owned(),
            may_feed: may == 0,
            ml: most,
            until: minutes.map(|minutes| clock::now().plus_minutes(minutes)),
        };
        state.note(change, say.role(who).to_owned());
    };
    view! {
        <details class="when" data-advice-form="true">
            <summary>{say.advice_title()}</summary>
            <form class="form" on:submit=keep>
                <Choice legend=say.advice_who() name="advice-who" options=WHO.map(|who| say.role(who)).to_vec() chosen=who />
                <Choice legend=say.advice_may() name="advice-may" options=vec![say.advice_yes(), say.advice_no()] chosen=may />
                <Field id="advice-ml" label=say.advice_ml() kind=FieldKind::Number text=ml unit="ml" fault=ml_fault />
                <Field id="advice-hours" label=say.advice_hours() kind=FieldKind::Number text=hours unit="h" fault=hours_fault />
                <Field id="advice-text" label=say.advice_text() kind=FieldKind::Text text=about />
                <p class="hint">{say.advice_bound()}</p>
                <p class="fault" role="alert">{move || fault.get()}</p>
                <button type="submit" class="button">{say.keep()}</button>
            </form>
        </details>
    }
}

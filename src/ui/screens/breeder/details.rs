//! What a breeder says once for every chick: who she is, when she can be called, what she wants of every owner.

use leptos::prelude::*;

use crate::domain::plan::care_plan::{CarePlan, Contact, PlanFault, Role, is_phone_number};
use crate::domain::plan::species::Species;
use crate::domain::plan::topic::Topic;
use crate::ui::parts::field::FieldKind;
use crate::ui::parts::page::Page;
use crate::ui::route::Route;
use crate::ui::screens::first_start::Caution;
use crate::ui::screens::plan_form::text::{Text, TextField, optional};
use crate::ui::state::AppState;

/// Everything typed on this screen.
#[derive(Debug, Clone, Copy)]
struct Details {
    name: Text,
    number: Text,
    hours: Text,
    second_name: Text,
    second_number: Text,
    after_refusal: Text,
    report_days: Text,
    note: Text,
    ask: RwSignal<bool>,
}

impl Details {
    fn of(own: &CarePlan) -> Self {
        let contact = |place: usize| {
            let mut breeders = own.contacts.iter().filter(|one| one.role == Role::Breeder);
            let contact = breeders.nth(place);
            let (name, number) = contact
                .map(|one| (one.name.clone(), one.number.clone()))
                .unwrap_or_default();
            (Text::new(name), Text::new(number))
        };
        let ((name, number), (second_name, second_number)) = (contact(0), contact(1));
        let days = own.report_days.map(|days| days.to_string());
        Self {
            name,
            number,
            hours: Text::new(own.breeder_hours.clone()),
            second_name,
            second_number,
            after_refusal: Text::new(own.said(Topic::AfterRefusal).to_owned()),
            report_days: Text::new(days.unwrap_or_default()),
            note: Text::new(own.note.clone()),
            ask: RwSignal::new(own.ask_before_drop),
        }
    }

    /// As typed; `None` when a field is at fault, which then says so.
    fn typed(self, state: AppState) -> Option<CarePlan> {
        let say = state.language();
        let name = self.name.take(if self.name.is_empty() {
            Err(say.fault_name_needed().to_owned())
        } else {
            Ok(self.name.get())
        });
        let number = |text: Text, is_needed: bool| {
            let typed = text.get();
            let is_sound = is_phone_number(&typed) || (!is_needed && typed.is_empty());
            let fault = say.plan_fault(PlanFault::ContactNumber);
            text.take(if is_sound {
                Ok(typed)
            } else {
                Err(fault.to_owned())
            })
        };
        let (first, second) = (number(self.number, true), number(self.second_number, false));
        let days = self.report_days.take(optional(self.report_days, |text| {
            let days = text
                .parse::<u8>()
                .ok()
                .filter(|days| (1..=60).contains(days));
            days.ok_or(say.fault_days())
        }));
        let (name, first, second, report_days) = (name?, first?, second?, days?);
        let contact = |name: String, number: String| Contact {
            role: Role::Breeder,
            name,
            number,
        };
        let mut own = CarePlan::default_for(Species::GreenWingedMacaw);
        own.contacts = vec![contact(name, first)];
        if !(self.second_name.is_empty() && second.is_empty()) {
            own.contacts.push(contact(self.second_name.get(), second));
        }
        own.breeder_hours = self.hours.get();
        own.report_days = report_days;
        own.note = self.note.get();
        own.say(Topic::AfterRefusal, &self.after_refusal.get());
        own.ask_before_drop = self.ask.get_untracked();
        Some(own)
    }
}

/// A breeder's own details.
#[component]
pub fn DetailsScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let known = state.copies.own_words();
    let own = known.unwrap_or_else(|| CarePlan::default_for(Species::GreenWingedMacaw));
    let before = own.contacts.first().map(|contact| contact.name.clone());
    let details = Details::of(&own);
    let fault = RwSignal::new(String::new());
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let Some(own) = details.typed(state) else {
            return fault.set(say.fault_look_above().to_owned());
        };
        let carer = state.copies.carer();
        if carer.is_empty() || before.as_ref() == Some(&carer) {
            state.copies.remember_carer(&details.name.get());
        }
        state.copies.remember_own_words(&own);
        state.say(say.breeder_saved().to_owned(), Vec::new());
        state.go(Route::Chicks);
    };
    let back = if state.copies.is_breeder() {
        Route::Chicks
    } else {
        Route::Start
    };
    view! {
        <Page
            title=say.breeder_details()
            back
            dock=move || view! { <button type="submit" form="details" class="button button--main">{say.breeder_save()}</button> }.into_any()
        >
            <p class="hint">{say.breeder_details_hint()}</p>
            <form class="form" id="details" on:submit=keep novalidate>
                <TextField id="own-name" label=say.breeder_name() text=details.name kind=FieldKind::Text />
                <TextField id="own-number" label=say.breeder_number() text=details.number kind=FieldKind::Telephone />
                <TextField id="own-hours" label=say.breeder_hours() text=details.hours kind=FieldKind::Text hint=say.optional() />
                <fieldset class="contact-row">
                    <legend>{say.breeder_second()}</legend>
                    <TextField id="second-name" label=say.plan_contact_name() text=details.second_name kind=FieldKind::Text />
                    <TextField id="second-number" label=say.plan_contact_number() text=details.second_number kind=FieldKind::Telephone />
                </fieldset>
                <fieldset class="group">
                    <legend>{say.breeder_words()}</legend>
                    <TextField id="after-refusal" label=say.breeder_after_refusal() text=details.after_refusal kind=FieldKind::Text hint=say.optional() />
                    <label class="choice__option">
                        <input
                            type="checkbox"
                            id="ask-before-drop"
                            prop:checked=move || details.ask.get()
                            on:change=move |event| details.ask.set(event_target_checked(&event))
                        />
                        <span>{say.breeder_ask()}</span>
                    </label>
                    <TextField id="own-report-days" label=say.plan_part_report_days() text=details.report_days kind=FieldKind::Number hint=say.optional() />
                    <TextField id="own-note" label=say.breeder_note() text=details.note kind=FieldKind::Text hint=say.optional() />
                </fieldset>
                <p class="fault" role="alert">{move || fault.get()}</p>
            </form>
            <Caution />
        </Page>
    }
}

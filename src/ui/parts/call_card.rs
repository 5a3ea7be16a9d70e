//! Whom to ring, and what to say.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::domain::journal::entries::Change;
use crate::domain::plan::care_plan::{CarePlan, Contact, Role};
use crate::domain::warnings::level::Level;
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::state::AppState;

/// The people to ring at a level, first to ring first.
fn contacts_for(level: Level, plan: Option<&CarePlan>) -> Vec<Contact> {
    let has_no_vet = plan.is_some_and(|plan| plan.contact(Role::AvianVet).is_none());
    let roles: &[Role] = match level {
        Level::Settled | Level::Watch | Level::RingBreeder => &[Role::Breeder, Role::AvianVet],
        Level::VetToday if has_no_vet => &[Role::EmergencyVet, Role::Breeder],
        Level::VetToday => &[Role::AvianVet, Role::Breeder],
        Level::Emergency => &[Role::EmergencyVet, Role::AvianVet, Role::Breeder],
    };
    roles
        .iter()
        .flat_map(|role| {
            plan.into_iter()
                .flat_map(|plan| plan.contacts_with_number(*role))
        })
        .cloned()
        .collect()
}

/// Call buttons for a level, each with its number in plain text; without a plan there is no chick yet.
pub fn call_buttons(level: Level, plan: Option<&CarePlan>) -> impl IntoView + use<> {
    let state = AppState::here();
    let say = state.language();
    let contacts = contacts_for(level, plan);
    let is_empty = contacts.is_empty();
    let has_vet = contacts.iter().any(|contact| contact.role != Role::Breeder);
    let has_chick = plan.is_some();
    let needs_vet = level >= Level::VetToday && !has_vet;
    let buttons = contacts.into_iter().map(|contact| {
        let role = contact.role;
        let note_call = move |_| {
            // A refused note must not stand in the way of the call itself.
            let noted = state.dispatch(Change::Called {
                whom: role,
                agreed: String::new(),
            });
            if let Ok(id) = noted {
                state.say(say.role(role).to_owned(), vec![id]);
            }
        };
        let link = tel_link(&contact.number);
        view! {
            <a class="call" href=link on:click=note_call>
                <span class="call__who">{say.now_call()} " " {say.role(role)}</span>
                <span class="call__number">{contact.name} " " <span class="call__digits">{contact.number}</span></span>
            </a>
        }
    });
    view! {
        <div class="calls">
            {needs_vet.then(|| view! { <p><strong>{say.now_no_vet()}</strong></p> })}
            {(needs_vet && has_chick).then(|| view! {
                <a class="button" href=Route::Plan.to_hash()>{say.now_add_number()}</a>
            })}
            {buttons.collect_view()}
            {is_empty.then(|| view! { <p class="hint">{say.now_no_number()}</p> })}
        </div>
    }
}

/// A `tel:` address: digits and a leading plus only, so that nothing else can hide in it (RFC 3966).
fn tel_link(number: &str) -> String {
    let plus = if number.trim_start().starts_with('+') {
        "+"
    } else {
        ""
    };
    let digits: String = number.chars().filter(char::is_ascii_digit).collect();
    format!("tel:{plus}{digits}")
}

/// The facts in spoken order, ready to be read out or copied.
#[component]
pub fn WhatToSay(
    /// One sentence a line.
    lines: Vec<String>,
) -> impl IntoView {
    let say = AppState::here().language();
    let is_copied = RwSignal::new(false);
    let text = lines.join("\n");
    let copy = move |_| {
        let text = text.clone();
        spawn_local(async move { is_copied.set(platform::copy(text).await) });
    };
    let lines = lines.into_iter().map(|line| view! { <p>{line}</p> });
    view! {
        <details class="what-to-say">
            <summary>{say.now_what_to_say()}</summary>
            <div class="what-to-say__lines">{lines.collect_view()}</div>
            <button type="button" class="button" on:click=copy>
                {move || if is_copied.get() { say.now_copied() } else { say.now_copy() }}
            </button>
        </details>
    }
}

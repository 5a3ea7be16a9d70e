//! Whom to ring, and what to say.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::domain::journal::entries::Change;
use crate::domain::plan::care_plan::{CarePlan, Role};
use crate::domain::warnings::level::Level;
use crate::domain::warnings::whom_to_call::{Callee, whom_to_call};
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::state::AppState;

/// Call buttons for a level, each with its number in plain text; without a plan there is no chick yet.
pub fn call_buttons(level: Level, plan: Option<&CarePlan>) -> impl IntoView + use<> {
    let state = AppState::here();
    let say = state.language();
    let is_breeder = state.is_breeder_here();
    let callees = plan.map(|plan| whom_to_call(level, plan, is_breeder));
    let callees = callees.unwrap_or_default();
    let is_empty = callees.is_empty();
    let is_vet = |callee: &Callee| match callee {
        Callee::Contact(contact) => contact.role != Role::Breeder,
        Callee::Owner { .. } => false,
    };
    let has_vet = callees.iter().any(is_vet);
    let has_chick = plan.is_some();
    let needs_vet = level >= Level::VetToday && !has_vet;
    let buttons = callees.into_iter().map(|callee| {
        let (role, name, number) = match callee {
            Callee::Contact(contact) => (Some(contact.role), contact.name, contact.number),
            Callee::Owner { name, number } => (None, name, number),
        };
        let note_call = move |_| {
            let Some(whom) = role else { return };
            // A refused note must not stand in the way of the call itself.
            let noted = state.dispatch(Change::Called {
                whom,
                agreed: String::new(),
            });
            if let Ok(id) = noted {
                state.say(say.role(whom).to_owned(), vec![id]);
            }
        };
        let link = tel_link(&number);
        let who = role.map_or(say.plan_part_owner(), |role| say.role(role));
        view! {
            <a class="call" href=link on:click=note_call>
                <span class="call__who">{say.now_call()} " " {who}</span>
                <span class="call__number">{name} " " <span class="call__digits">{number}</span></span>
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

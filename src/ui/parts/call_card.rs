//! Whom to ring, and what to say.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::domain::journal::entries::{Change, ChickId};
use crate::domain::plan::care_plan::{CarePlan, Role};
use crate::domain::warnings::level::Level;
use crate::domain::warnings::whom_to_call::{Callee, is_practice_closed, whom_to_call};
use crate::ui::parts::button::button;
use crate::ui::parts::level_mark::level_name;
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::state::AppState;

/// Whose call link was tapped. A tap is no call made: nothing is noted before somebody was reached.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Calling {
    /// For which chick.
    pub chick: Option<ChickId>,
    /// The number.
    pub number: String,
    /// Nobody answered.
    pub is_unanswered: bool,
}

/// The call link that was tapped last and is not answered for yet; kept beside the screens, which are
/// drawn anew while the telephone rings.
#[derive(Debug, Clone, Copy)]
pub struct Calls(RwSignal<Option<Calling>>);

impl Calls {
    /// Gives every screen the one place for it.
    pub fn provide() {
        provide_context(Self(RwSignal::new(None)));
    }

    fn here() -> RwSignal<Option<Calling>> {
        use_context::<Self>().map_or_else(|| RwSignal::new(None), |calls| calls.0)
    }
}

/// Call buttons for a level, each with its number in plain text; without a plan there is no chick yet.
pub fn call_buttons(level: Level, plan: Option<&CarePlan>) -> impl IntoView + use<> {
    let state = AppState::here();
    let say = state.language();
    let is_breeder = state.is_breeder_here();
    let now = state.now.get_untracked();
    let is_closed = state
        .zone
        .with_untracked(|zone| is_practice_closed(zone.lived(now)));
    let callees = plan.map(|plan| whom_to_call(level, plan, is_breeder, is_closed));
    let callees = callees.unwrap_or_default();
    let is_empty = callees.is_empty();
    let is_vet = |callee: &Callee| match callee {
        Callee::Contact(contact) => contact.role != Role::Breeder,
        Callee::Owner { .. } => false,
    };
    let has_vet = callees.iter().any(is_vet);
    let has_chick = state.chick.get_untracked().is_some();
    let needs_vet = level >= Level::VetToday && !has_vet;
    let buttons = callees.into_iter().map(|callee| {
        let (role, name, number) = match callee {
            Callee::Contact(contact) => (Some(contact.role), contact.name, contact.number),
            Callee::Owner { name, number } => (None, name, number),
        };
        let link = tel_link(&number);
        let who = role.map_or(say.call_owner(), |role| say.call_role(role));
        let asked = role.filter(|_| has_chick);
        let asked = asked.map(|whom| view! { <Reached whom number=number.clone() /> });
        let (tapped, calls) = (number.clone(), Calls::here());
        let ask = move |_| {
            let chick = state.chick.get_untracked();
            let number = tapped.clone();
            let is_unanswered = false;
            calls.set(Some(Calling {
                chick,
                number,
                is_unanswered,
            }));
        };
        view! {
            <a class="call" href=link on:click=ask>
                <span class="call__who">{who}</span>
                <span class="call__number">{name} " " <span class="call__digits">{number}</span></span>
            </a>
            {asked}
        }
    });
    view! {
        <div class="calls" data-level=level_name(level)>
            {needs_vet.then(|| view! { <p><strong>{say.now_no_vet()}</strong></p> })}
            {(needs_vet && has_chick).then(|| view! {
                <a class="button" href=Route::Plan.to_hash()>{say.now_add_number()}</a>
            })}
            <div class="calls__list">{buttons.collect_view()}</div>
            {(is_empty && has_chick).then(|| view! { <p class="hint">{say.now_no_number()}</p> })}
        </div>
    }
}

/// After a tap on a call link: whether somebody was reached, which is then noted, or what to do next.
#[component]
fn Reached(
    /// Who was called.
    whom: Role,
    /// The number tapped.
    number: String,
) -> impl IntoView {
    let state = AppState::here();
    let (say, calls) = (state.language(), Calls::here());
    let yes = move |_| {
        calls.set(None);
        let noted = state.dispatch(Change::Called {
            whom,
            agreed: String::new(),
        });
        match noted {
            Ok(id) => state.say(say.role(whom).to_owned(), vec![id]),
            Err(refusal) => state.say_refusal(&refusal),
        }
    };
    let no = move |_| {
        let unanswered = |calling: &mut Option<Calling>| {
            if let Some(calling) = calling {
                calling.is_unanswered = true;
            }
        };
        calls.update(unanswered);
    };
    move || {
        let calling = calls.get()?;
        if calling.chick != state.chick.get() || calling.number != number {
            return None;
        }
        Some(if calling.is_unanswered {
            view! { <p class="question" role="status"><strong>{say.call_unanswered(whom)}</strong></p> }.into_any()
        } else {
            view! {
                <div class="question" role="status" data-reached="true">
                    <p>{say.call_reached()}</p>
                    {button(say.call_yes(), yes)}
                    {button(say.call_no(), no)}
                </div>
            }
            .into_any()
        })
    }
}

/// A `tel:` address: digits and a leading plus only, so that nothing else can hide in it (RFC 3966).
pub fn tel_link(number: &str) -> String {
    let plus = if number.trim_start().starts_with('+') {
        "+"
    } else {
        ""
    };
    let digits: String = number.chars().filter(char::is_ascii_digit).collect();
    format!("tel:{plus}{digits}")
}

/// The facts in spoken order, ready to be read out or copied; where a vet is to see it, the way to the vet's page.
#[component]
pub fn WhatToSay(
    /// One sentence a line.
    lines: Vec<String>,
    /// The level that it is said about.
    level: Level,
) -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let is_for_vet = Level::VetToday <= level && state.chick.get_untracked().is_some();
    let show = is_for_vet.then(|| {
        view! { <a class="button show-vet" href=Route::ForVet.to_hash()>{say.now_show_vet()}</a> }
    });
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
        {show}
    }
}

//! Noting that a vet saw it, and when the next visit is.

use leptos::prelude::*;

use crate::domain::homecoming::vet_visit::booked;
use crate::domain::journal::entries::Change;
use crate::domain::time::moment::{Day, Lived, WallTime};
use crate::ui::clock;
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::parts::when::{When, WhenText};
use crate::ui::state::AppState;

/// What is known of visits, the form of one that was, and that of one to come.
#[component]
pub fn VetVisits() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let known = move || {
        state.outlook.with(|outlook| {
            let outlook = outlook.as_ref()?;
            let booked = booked(outlook.now, outlook.lived, &outlook.chick);
            let booked = booked.map(|booked| writing.visit_open(booked));
            let seen = writing.vet_saw(outlook);
            let seen = seen.map(|seen| format!("{}: {seen}", say.vet_saw()));
            let lines = [seen, booked].into_iter().flatten();
            let lines = lines.map(|line| view! { <li><bdi>{line}</bdi></li> });
            Some(lines.collect_view())
        })
    };
    view! {
        <section class="group" id="visits">
            <h2>{say.vet_visits()}</h2>
            <ul class="plain-list">{known}</ul>
            <Seen />
            <Appointment />
        </section>
    }
}

#[component]
fn Seen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let (said, fault) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let when = WhenText::now(state);
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        fault.set(String::new());
        let Some(at) = when.moment(state) else { return };
        let text = said.get_untracked().trim().to_owned();
        match state.dispatch_at(at, Change::VetSeen { said: text }) {
            Ok(id) => {
                said.set(String::new());
                state.say(say.entry_vet_seen().to_owned(), vec![id]);
            }
            Err(refusal) => fault.set(say.refusal(&refusal).to_owned()),
        }
    };
    view! {
        <details class="group">
            <summary>{say.vet_saw_it()}</summary>
            <form class="form" on:submit=keep>
                <Field id="vet-said" label=say.vet_said() kind=FieldKind::Text text=said fault />
                <When when />
                <button type="submit" class="button">{say.vet_saw_keep()}</button>
            </form>
        </details>
    }
}

#[component]
fn Appointment() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let text = || RwSignal::new(String::new());
    let (day, time, day_fault, time_fault) = (text(), text(), text(), text());
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        day_fault.set(String::new());
        time_fault.set(String::new());
        let Some(on_day) = day.with_untracked(|day| Day::parse_iso(day)) else {
            return day_fault.set(say.fault_no_date().to_owned());
        };
        let Some(at_time) = time.with_untracked(|time| WallTime::parse(time)) else {
            return time_fault.set(say.fault_no_time().to_owned());
        };
        let on = Lived {
            day: on_day,
            time: at_time,
        };
        let lived = state.zone.with_untracked(|zone| zone.lived(clock::now()));
        if on <= lived {
            return day_fault.set(say.vet_book_ahead().to_owned());
        }
        if state.note(Change::VetBooked { on }, writing.visit_booked(on)) {
            day.set(String::new());
            time.set(String::new());
        }
    };
    view! {
        <details class="group">
            <summary>{say.vet_book()}</summary>
            <form class="form" on:submit=keep novalidate>
                <Field id="vet-day" label=say.log_day() kind=FieldKind::Day text=day fault=day_fault />
                <Field id="vet-time" label=say.log_time() kind=FieldKind::Time text=time fault=time_fault />
                <button type="submit" class="button">{say.vet_book_keep()}</button>
            </form>
        </details>
    }
}

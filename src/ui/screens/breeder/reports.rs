//! Several reports at once: many links in one text, many files; shown before anything is imported.

use leptos::prelude::*;

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::{ChickId, Entry, Journal};
use crate::domain::quantity::order::set_of;
use crate::share::import::{Imported, read_texts};
use crate::store::import_error::ImportError;
use crate::store::setting::Setting;
use crate::ui::clock;
use crate::ui::parts::button::main_button;
use crate::ui::parts::chick_name::{beside_name, name_shown, named};
use crate::ui::parts::file_field::FileField;
use crate::ui::parts::page::Page;
use crate::ui::parts::text_area::TextArea;
use crate::ui::route::Route;
use crate::ui::state::AppState;

/// What was read so far: entries of each text, or why it cannot be read.
type Read = Result<Vec<Entry>, String>;

/// Takes in what several owners sent.
#[component]
pub fn ReportsScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let text = RwSignal::new(String::new());
    let read = RwSignal::new(Vec::<Read>::new());
    let add = move |more: Vec<Result<Imported, ImportError>>| {
        let more = more.into_iter().map(|one| match one {
            Ok(
                Imported::Entries(entries)
                | Imported::OfBreeder(entries, _)
                | Imported::Card(entries)
                | Imported::ShortCard(entries),
            ) => Ok(entries),
            Err(error) => Err(say.import_error(&error).to_owned()),
        });
        read.update(|read| {
            for one in more {
                if !read.contains(&one) {
                    read.push(one);
                }
            }
        });
    };
    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let typed = text.get_untracked();
        if !typed.trim().is_empty() {
            add(read_texts(&typed));
            text.set(String::new());
        }
    };
    let read_file = Callback::new(move |content: Option<String>| match content {
        Some(content) => add(read_texts(&content)),
        None => read.update(|read| read.push(Err(say.fault_file().to_owned()))),
    });
    let dock = move || {
        let has_any = read.with(|read| read.iter().any(Result::is_ok));
        has_any.then(|| {
            main_button(say.breeder_reports_take(), move |_| {
                take(state, &read.get_untracked());
            })
        })
    };
    view! {
        <Page title=say.breeder_import() back=Route::Chicks dock=move || view! { {dock} }.into_any()>
            <p class="hint">{say.breeder_reports_hint()}</p>
            <form class="form" on:submit=submit>
                <TextArea id="paste" label=say.breeder_reports_paste() rows="5" text />
                <button type="submit" class="button">{say.breeder_reports_read()}</button>
                <FileField id="files" label=say.breeder_reports_files() read=read_file multiple=true />
            </form>
            {move || read.with(|read| (!read.is_empty()).then(|| preview(state, read)))}
        </Page>
    }
}

/// The chicks of what was read, each with how much of it is new here, then what could not be read.
fn preview(state: AppState, read: &[Read]) -> impl IntoView + use<> {
    let writing = state.writing_now();
    let say = writing.language;
    let entries: Vec<Entry> = read.iter().flatten().flatten().cloned().collect();
    let mut joined = state.journal.get_untracked();
    let is_new = |entry: &&Entry| !state.journal.with_untracked(|journal| journal.holds(entry));
    let fresh: Vec<Entry> = entries.iter().filter(is_new).cloned().collect();
    let fresh = Journal::from_entries(fresh);
    joined.join(&fresh);
    let of = |id: ChickId| joined.leading_id(id);
    let chicks = set_of(entries.iter().map(|entry| of(entry.chick)));
    let named: Vec<_> = joined
        .chicks()
        .into_iter()
        .filter_map(|id| Some((id, named(&Chick::from_journal(&joined, id)?))))
        .collect();
    let lines = chicks.into_iter().map(|id| {
        let new = fresh.entries().iter().filter(|entry| of(entry.chick) == id);
        let count = new.count();
        let is_known = state.journal.with_untracked(|journal| journal.chicks().contains(&id));
        let said = match (is_known, count) {
            (false, _) => say.breeder_reports_unknown().to_owned(),
            (true, 0) => say.breeder_reports_older().to_owned(),
            (true, _) => writing.new_entries(count),
        };
        let name = named.iter().find(|(known, _)| *known == id);
        let name = name.map(|(_, named)| named.name.clone()).unwrap_or_default();
        view! { <li><strong>{name_shown(&name)}</strong> {beside_name(&named, id)} ": " {said}</li> }
    });
    let lines: Vec<_> = lines.collect();
    let faults = read.iter().filter_map(|one| one.as_ref().err());
    let faults: Vec<_> = faults
        .map(|fault| view! { <li class="fault">{say.breeder_reports_failed()} ": " {fault.clone()}</li> })
        .collect();
    let texts = read.iter().filter(|one| one.is_ok()).count();
    view! {
        <section class="question" aria-live="polite">
            <p>{writing.reports_found(texts, fresh.entries().len())}</p>
            <ul class="plain-list">{lines} {faults}</ul>
        </section>
    }
}

/// Takes all of it in. A chick that is new here is one that somebody else carries.
fn take(state: AppState, read: &[Read]) {
    let writing = state.writing_now();
    let entries: Vec<Entry> = read.iter().flatten().flatten().cloned().collect();
    let known = state.journal.with_untracked(Journal::chicks);
    let texts = read.iter().filter(|one| one.is_ok()).count();
    if state.is_demo.get_untracked() {
        state.leave_demo();
    }
    let count = state.import(entries, true);
    for id in state.journal.with_untracked(Journal::chicks) {
        if !known.contains(&id) {
            state.set_of_phone(Setting::Followed, id, Some(clock::now()));
        }
    }
    state.follow_what_left();
    state.say(writing.reports_found(texts, count), Vec::new());
    state.go(Route::Chicks);
}

//! Everything noted, by day, newest first; corrected by taking back.

use leptos::prelude::*;

use crate::domain::journal::{Change, Entry, EntryId};
use crate::domain::moment::Day;
use crate::ui::clock;
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::parts::page::Heading;
use crate::ui::state::AppState;
use crate::words::format::Writing;

/// Days shown at first, and more each time they are asked for.
const DAYS_AT_A_TIME: usize = 14;

/// One line, ready to show.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Line {
    id: EntryId,
    day: Day,
    time: String,
    words: String,
    by: String,
    is_retracted: bool,
}

/// Everything by day.
#[component]
pub fn JournalScreen() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let search = RwSignal::new(String::new());
    let days_shown = RwSignal::new(DAYS_AT_A_TIME);
    let lines = Memo::new(move |_| {
        let wanted = search.get().trim().to_lowercase();
        let lines = state.journal.with(|journal| {
            let retracted = journal.retracted();
            let entries = journal
                .entries()
                .iter()
                .rev()
                .filter(|entry| Some(entry.chick) == state.chick.get());
            let lines = entries.filter(|entry| entry.change.retracts().is_none());
            lines
                .map(|entry| line(entry, retracted.contains(&entry.id), writing))
                .collect::<Vec<_>>()
        });
        lines
            .into_iter()
            .filter(|line| wanted.is_empty() || line.words.to_lowercase().contains(&wanted))
            .collect::<Vec<_>>()
    });
    let days = Memo::new(move |_| {
        let mut days = lines.with(|lines| lines.iter().map(|line| line.day).collect::<Vec<_>>());
        days.dedup();
        days
    });
    let shown = move || {
        days.get()
            .into_iter()
            .take(days_shown.get())
            .collect::<Vec<_>>()
    };
    let empty = move || {
        lines.with(Vec::is_empty).then(|| {
            let text = if search.get().is_empty() {
                say.journal_none()
            } else {
                say.journal_no_match()
            };
            view! { <p>{text}</p> }
        })
    };
    let more = move || {
        (days.with(Vec::len) > days_shown.get()).then(|| {
            let show_more = move |_| days_shown.update(|count| *count += DAYS_AT_A_TIME);
            view! { <button type="button" class="button" on:click=show_more>{say.journal_show_more()}</button> }
        })
    };
    view! {
        <Heading text=say.journal_title() />
        <NoteForm />
        <Field id="search" label=say.journal_search() kind=FieldKind::Text text=search />
        {empty}
        <For each=shown key=|day| *day let:day>
            <section class="journal-day">
                <h2>{writing.day(day)}</h2>
                <ul class="journal-day__lines">
                    <For
                        each=move || {
                            lines.get().into_iter().filter(|line| line.day == day).collect::<Vec<_>>()
                        }
                        key=|line| (line.id, line.is_retracted)
                        let:line
                    >
                        <JournalLine line />
                    </For>
                </ul>
            </section>
        </For>
        {more}
    }
}

fn line(entry: &Entry, is_retracted: bool, writing: Writing) -> Line {
    let lived = entry.lived();
    Line {
        id: entry.id,
        day: lived.day,
        time: writing.time(lived.time),
        words: writing.change(&entry.change),
        by: entry.by.clone(),
        is_retracted,
    }
}

#[component]
fn JournalLine(line: Line) -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let id = line.id;
    let label = format!("{} {} {}", say.remove(), line.time, line.words);
    let act = if line.is_retracted {
        view! { <span class="journal-line__gone">{say.journal_retracted()}</span> }.into_any()
    } else {
        view! {
            <button type="button" class="button button--small" aria-label=label on:click=move |_| state.take_back(&[id])>
                {say.remove()}
            </button>
        }
        .into_any()
    };
    view! {
        <li class="journal-line" data-retracted=line.is_retracted.to_string()>
            <span class="journal-line__time">{line.time}</span>
            <span class="journal-line__words">
                {line.words}
                <span class="journal-line__by">{line.by}</span>
            </span>
            {act}
        </li>
    }
}

#[component]
fn NoteForm() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let (text, fault) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let note = text.get_untracked().trim().to_owned();
        if note.is_empty() {
            return fault.set(say.fault_text_needed().to_owned());
        }
        match state.dispatch_at(clock::now(), Change::Noted { text: note.clone() }) {
            Ok(id) => {
                text.set(String::new());
                fault.set(String::new());
                state.say(note, vec![id]);
            }
            Err(refusal) => fault.set(say.refusal(&refusal).to_owned()),
        }
    };
    view! {
        <details class="group">
            <summary>{say.journal_note()}</summary>
            <form class="form" on:submit=keep>
                <Field id="note" label=say.journal_note_field() kind=FieldKind::Text text fault />
                <button type="submit" class="button">{say.keep()}</button>
            </form>
        </details>
    }
}

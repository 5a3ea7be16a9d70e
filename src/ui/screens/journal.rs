//! Everything noted, by day, newest first; corrected by taking back.

use leptos::prelude::*;

use crate::domain::feeding::food::FoodNames;
use crate::domain::journal::entries::{Change, ChickId, Entry, EntryId, Journal};
use crate::domain::time::moment::Day;
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
    time: String,
    words: String,
    by: String,
    is_retracted: bool,
    can_be_removed: bool,
}

/// The newest days and whether there are more.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Shown {
    days: Vec<(Day, Vec<Line>)>,
    has_more: bool,
}

/// Everything by day.
#[component]
pub fn JournalScreen() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let search = RwSignal::new(String::new());
    let days_shown = RwSignal::new(DAYS_AT_A_TIME);
    let names = Memo::new(move |_| {
        let outlook = state.outlook.get();
        outlook.map_or_else(FoodNames::new, |outlook| outlook.food())
    });
    // Only what is shown is put into words: a journal of years has tens of thousands of lines.
    let shown = Memo::new(move |_| {
        let wanted = search.get().trim().to_lowercase();
        let chick = state.chick.get();
        let names = names.get();
        state
            .journal
            .with(|journal| newest(journal, chick, &wanted, days_shown.get(), &names, writing))
    });
    let days =
        move || shown.with(|shown| shown.days.iter().map(|(day, _)| *day).collect::<Vec<_>>());
    let lines_of = move |day| {
        shown.with(|shown| {
            let found = shown.days.iter().find(|(found, _)| *found == day);
            found.map(|(_, lines)| lines.clone()).unwrap_or_default()
        })
    };
    let empty = move || {
        shown.with(|shown| shown.days.is_empty()).then(|| {
            let text = if search.get().is_empty() {
                say.journal_none()
            } else {
                say.journal_no_match()
            };
            view! { <p>{text}</p> }
        })
    };
    let more = move || {
        shown.with(|shown| shown.has_more).then(|| {
            let show_more = move |_| days_shown.update(|count| *count += DAYS_AT_A_TIME);
            view! { <button type="button" class="button" on:click=show_more>{say.journal_show_more()}</button> }
        })
    };
    view! {
        <Heading text=say.journal_title() />
        <NoteForm />
        <Field id="search" label=say.journal_search() kind=FieldKind::Text text=search />
        {empty}
        <For each=days key=|day| *day let:day>
            <section class="journal-day">
                <h2>{writing.day(day)}</h2>
                <ul class="journal-day__lines">
                    <For
                        each=move || lines_of(day)
                        key=|line| (line.id, line.is_retracted, line.can_be_removed)
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

/// The newest days of a chick, as many as asked for, with the lines that hold `wanted`.
fn newest(
    journal: &Journal,
    chick: Option<ChickId>,
    wanted: &str,
    most_days: usize,
    names: &FoodNames,
    writing: Writing,
) -> Shown {
    let retracted = journal.retracted();
    let mut days: Vec<(Day, Vec<Line>)> = Vec::new();
    let entries = chick
        .map(|chick| journal.of_chick(chick))
        .unwrap_or_default();
    let entries = entries.into_iter().rev();
    for entry in entries.filter(|entry| entry.change.retracts().is_none()) {
        let line = line(
            journal,
            entry,
            retracted.contains(&entry.id),
            names,
            writing,
        );
        if !wanted.is_empty() && !line.words.to_lowercase().contains(wanted) {
            continue;
        }
        let day = entry.lived().day;
        // After a flight days may come once more, so each is looked for.
        if let Some((_, lines)) = days.iter_mut().find(|(found, _)| *found == day) {
            lines.push(line);
        } else if days.len() == most_days {
            return Shown {
                days,
                has_more: true,
            };
        } else {
            days.push((day, vec![line]));
        }
    }
    Shown {
        days,
        has_more: false,
    }
}

fn line(
    journal: &Journal,
    entry: &Entry,
    is_retracted: bool,
    names: &FoodNames,
    writing: Writing,
) -> Line {
    Line {
        id: entry.id,
        time: writing.time(entry.lived().time),
        words: writing.change(&entry.change, names.get(&entry.id).copied()),
        by: entry.by.clone(),
        is_retracted,
        can_be_removed: journal.check_undo(entry.id).is_ok(),
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
    } else if !line.can_be_removed {
        ().into_any()
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

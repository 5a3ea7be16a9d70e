//! Everything noted, by day, newest first; a line opens to its details, its correction and its removal.

use leptos::prelude::*;

use crate::domain::feeding::food::FoodNames;
use crate::domain::feeding::sittings::{Sitting, sittings};
use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::{
    Change, ChickId, CropAtWeighing, Entry, EntryId, Journal, Response,
};
use crate::domain::quantity::units::{Millilitres, NumberError};
use crate::domain::time::moment::{Day, Moment};
use crate::ui::clock;
use crate::ui::parts::button::button;
use crate::ui::parts::correct::correct;
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::parts::live::{listed, live};
use crate::ui::parts::page::Heading;
use crate::ui::photo::PhotoPicture;
use crate::ui::platform;
use crate::ui::state::AppState;
use crate::words::format::Writing;

/// Days shown at first, and more each time they are asked for.
const DAYS_AT_A_TIME: usize = 14;

/// One line, ready to show.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Line {
    id: EntryId,
    at: Moment,
    time: String,
    words: String,
    by: String,
    is_retracted: bool,
    can_be_removed: bool,
    facts: Vec<(&'static str, String)>,
    /// What it said before it was corrected.
    before: Vec<String>,
    change: Change,
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
    let empty = live(move || {
        shown.with(|shown| shown.days.is_empty()).then(|| {
            let text = if search.get().is_empty() {
                say.journal_none()
            } else {
                say.journal_no_match()
            };
            view! { <p>{text}</p> }
        })
    });
    let more = live(move || {
        shown.with(|shown| shown.has_more).then(|| {
            let show_more = move |_| days_shown.update(|count| *count += DAYS_AT_A_TIME);
            button(say.journal_show_more(), show_more)
        })
    });
    let correcting = RwSignal::new(None::<EntryId>);
    // Beside the list one line is shown, the newest at first.
    let is_beside = platform::is_wide();
    let newest = shown.with_untracked(|shown| Some(shown.days.first()?.1.first()?.id));
    let opened = newest.filter(|_| is_beside);
    let of_day = move |day| {
        let come_to = move || {
            state
                .outlook
                .with(|outlook| sums(&outlook.as_ref()?.chick, day, writing))
        };
        let key = |line: &Line| {
            let corrections = line.before.len();
            (line.id, line.is_retracted, line.can_be_removed, corrections)
        };
        let row = move |line| view! { <JournalLine line correcting opened is_beside /> };
        view! {
            <section class="journal-day">
                <header class="journal-day__head">
                    <h2>{writing.day(day)}</h2>
                    <p class="hint">{live(come_to)}</p>
                </header>
                <ul class="unfolds journal-day__lines">{listed(move || lines_of(day), key, row)}</ul>
            </section>
        }
    };
    view! {
        <div class="page journal">
        <div class="only-read"><Heading text=say.journal_title() /></div>
        <Field id="search" label=say.journal_search() kind=FieldKind::Text text=search />
        <NoteForm />
        {empty}
        {listed(days, |day| *day, of_day)}
        {more}
        </div>
    }
}

/// What a day comes to: food taken of what was offered, and the last weight with an empty crop.
fn sums(chick: &Chick, day: Day, writing: Writing) -> Option<String> {
    let is_of_day = |moment: Moment, offset| moment.lived(offset).day == day;
    let notes = chick
        .feeds
        .iter()
        .filter(|note| is_of_day(note.at, note.offset));
    let (from, until) = (
        notes.clone().map(|note| note.at).min(),
        notes.map(|note| note.at).max(),
    );
    let food = from.zip(until).map(|(from, until)| {
        let sittings = sittings(chick, from, until);
        let sum = |of: fn(&Sitting) -> Millilitres| {
            let tenths = sittings.iter().map(|sitting| of(sitting).tenths());
            Millilitres::tenths_held(tenths.fold(0, i32::saturating_add))
        };
        let (taken, offered) = (sum(|sitting| sitting.taken), sum(|sitting| sitting.offered));
        writing.taken_of(taken, offered)
    });
    let mut weighings = chick.weighings.iter().rev();
    let weighing = weighings.find(|weighing| {
        weighing.what.crop == CropAtWeighing::Empty && is_of_day(weighing.at, weighing.offset)
    });
    let weight = weighing.map(|weighing| writing.mass(weighing.what.weight));
    let sums: Vec<String> = [food, weight].into_iter().flatten().collect();
    (!sums.is_empty()).then(|| sums.join(" \u{b7} "))
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
    let entries: Vec<&Entry> = entries
        .into_iter()
        .rev()
        .filter(|entry| entry.change.retracts().is_none())
        .collect();
    // Of one moment, so that a note and its correction are met together.
    for (entry, same) in entries
        .chunk_by(|one, other| one.at == other.at)
        .flat_map(|same| same.iter().map(move |entry| (entry, same)))
    {
        let is_retracted = retracted.contains(&entry.id);
        let of_it = |other: &&&Entry| is_correction(entry, other);
        let mut others = same.iter().filter(of_it);
        // What was corrected is told at what is right now.
        if is_retracted && others.any(|other| !retracted.contains(&other.id)) {
            continue;
        }
        let wrong = same.iter().filter(of_it);
        let wrong = wrong.filter(|other| !is_retracted && retracted.contains(&other.id));
        let before =
            wrong.map(|wrong| writing.change(&wrong.change, names.get(&entry.id).copied()));
        let line = Line {
            before: before.collect(),
            ..line(journal, entry, is_retracted, names, writing)
        };
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

/// Whether two notes are one with its correction: of the same kind and at the same moment.
fn is_correction(one: &Entry, other: &Entry) -> bool {
    let is_of_kind = matches!(
        (&one.change, &other.change),
        (Change::Weighed { .. }, Change::Weighed { .. }) | (Change::Fed { .. }, Change::Fed { .. })
    );
    is_of_kind && one.at == other.at && one.id != other.id
}

fn line(
    journal: &Journal,
    entry: &Entry,
    is_retracted: bool,
    names: &FoodNames,
    writing: Writing,
) -> Line {
    let lived = entry.lived();
    let noted = entry.noted_at.lived(entry.offset);
    let mut facts = facts(&entry.change, writing);
    let is_same_day = noted.day == lived.day;
    let said = writing.noted_at(noted, is_same_day, &entry.by);
    facts.push((writing.language.journal_noted(), said));
    Line {
        id: entry.id,
        at: entry.at,
        time: writing.time(lived.time),
        words: writing.change(&entry.change, names.get(&entry.id).copied()),
        by: entry.by.clone(),
        is_retracted,
        can_be_removed: !is_retracted && journal.check_undo(entry.id).is_ok(),
        facts,
        before: Vec::new(),
        change: entry.change.clone(),
    }
}

/// What a line has no room for.
fn facts(change: &Change, writing: Writing) -> Vec<(&'static str, String)> {
    let say = writing.language;
    let Change::Fed {
        taken,
        offered,
        served_at,
        response,
        ..
    } = change
    else {
        return Vec::new();
    };
    let served = served_at.map(|served| (say.journal_served(), writing.temperature(served)));
    let ate = (*response != Response::NotNoted)
        .then(|| (say.journal_response(), say.response(*response).to_owned()));
    let taken = (say.journal_taken(), writing.taken_of(*taken, *offered));
    [Some(taken), served, ate].into_iter().flatten().collect()
}

#[component]
fn JournalLine(
    line: Line,
    correcting: RwSignal<Option<EntryId>>,
    opened: Option<EntryId>,
    is_beside: bool,
) -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let (id, of_form) = (line.id, line.clone());
    let is_correcting = move || correcting.get() == Some(id);
    let open_or_close = move |_| {
        correcting.update(|open| *open = open.is_none_or(|open| open != id).then_some(id));
    };
    let can_be_corrected =
        line.can_be_removed && matches!(line.change, Change::Weighed { .. } | Change::Fed { .. });
    let facts = line
        .facts
        .into_iter()
        .map(|(name, fact)| view! { <dt>{name}</dt> <dd>{fact}</dd> });
    let before = line.before.into_iter().map(|wrong| {
        view! { <dt>{say.journal_was()}</dt> <dd><s>{wrong}</s></dd> }
    });
    let correction = can_be_corrected.then(|| {
        view! {
            <button
                type="button"
                class="button"
                aria-expanded=move || is_correcting().to_string()
                on:click=open_or_close
            >
                {say.weight_correct()}
            </button>
        }
    });
    let removal = line
        .can_be_removed
        .then(|| button(say.remove(), move |_| state.take_back(&[id])));
    let photo = if let Change::PhotoTaken(photo) = &line.change {
        Some(*photo)
    } else {
        None
    };
    // Its picture is fetched when the line is opened.
    let is_open = RwSignal::new(false);
    let picture = live(move || {
        let photo = photo.filter(|_| is_open.get());
        photo.map(|photo| view! { <PhotoPicture photo /> })
    });
    let gone = line.is_retracted.then(|| {
        view! { <span class="journal-line__gone">{say.journal_retracted()}</span> }
    });
    view! {
        <li class="journal-line" data-retracted=line.is_retracted.to_string()>
            <details class="unfold" name=is_beside.then_some("line") open=opened == Some(id) on:toggle=move |_| is_open.set(true)>
                <summary>
                    <span class="journal-line__time">{line.time}</span>
                    <span class="journal-line__words">
                        {line.words}
                        <span class="journal-line__by">{line.by}</span>
                    </span>
                    {gone}
                </summary>
                <div class="unfold__more">
                    {picture}
                    <dl class="facts">{before.collect_view()} {facts.collect_view()}</dl>
                    <div class="acts">{correction} {removal}</div>
                    {move || is_correcting().then(|| view! { <Correction line=of_form.clone() /> })}
                </div>
            </details>
        </li>
    }
}

/// The right number for one that was typed wrongly.
#[component]
fn Correction(line: Line) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let (label, unit, typed) = if let Change::Fed { taken, .. } = &line.change {
        let typed = writing.tenths(taken.tenths());
        (say.journal_right_volume(), say.plan_volume(), typed)
    } else if let Change::Weighed { weight, .. } = &line.change {
        let typed = writing.mass_typed(*weight);
        (say.weight_right(), writing.mass_unit(), typed)
    } else {
        return ().into_any();
    };
    let (text, fault) = (RwSignal::new(typed), RwSignal::new(String::new()));
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let right = match corrected(&line.change, &text.get_untracked(), writing) {
            Ok(right) => right,
            Err(error) => return fault.set(writing.number_error(error)),
        };
        let said = writing.change(&right, None);
        if let Err(refusal) = correct(state, line.id, line.at, right, said) {
            fault.set(say.refusal(&refusal).to_owned());
        }
    };
    view! {
        <form class="form" on:submit=keep>
            <Field id="right-number" label kind=FieldKind::Number text unit fault />
            <button type="submit" class="button">{say.keep()}</button>
        </form>
    }
    .into_any()
}

/// The change with the number typed in place of its own.
fn corrected(change: &Change, typed: &str, writing: Writing) -> Result<Change, NumberError> {
    let mut right = change.clone();
    if let Change::Weighed { weight, .. } = &mut right {
        *weight = writing.read_mass(typed)?;
    } else if let Change::Fed { taken, offered, .. } = &mut right {
        *taken = Millilitres::parse(typed)?;
        *offered = (*offered).max(*taken);
    }
    Ok(right)
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

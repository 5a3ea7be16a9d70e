//! Take in what somebody sent: a link, a pasted text or a file, shown before anything changes.

use leptos::prelude::*;

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::{Change, ChickId, Entry, Journal};
use crate::domain::plan::care_plan::CarePlan;
use crate::share::import::{Imported, read_text};
use crate::ui::clock;
use crate::ui::parts::copy_button::CopyButton;
use crate::ui::parts::file_field::FileField;
use crate::ui::parts::page::Page;
use crate::ui::parts::plan_checks::plan_checks;
use crate::ui::route::Route;
use crate::ui::screens::first_start::Caution;
use crate::ui::state::AppState;

/// What was typed or sent, and what it would bring.
#[derive(Debug, Clone, Copy)]
struct Sent {
    state: AppState,
    text: RwSignal<String>,
    fault: RwSignal<String>,
    preview: RwSignal<Option<Imported>>,
}

impl Sent {
    fn new(state: AppState) -> Self {
        Self {
            state,
            text: RwSignal::new(String::new()),
            fault: RwSignal::new(String::new()),
            preview: RwSignal::new(None),
        }
    }

    /// Reads a text; what it would bring is shown, or what is wrong with it.
    fn read(self, text: &str) {
        self.preview.set(None);
        self.fault.set(String::new());
        let say = self.state.language();
        if text.trim().is_empty() {
            return self.fault.set(say.fault_text_needed().to_owned());
        }
        match read_text(text) {
            Ok(taken) => self.preview.set(Some(taken)),
            Err(error) => self.refuse(say.import_error(&error)),
        }
    }

    /// Reads the text of a file; `None` when it is not a text.
    fn read_file(self, content: Option<String>) {
        match content {
            Some(content) => self.read(&content),
            None => self.refuse(self.state.language().fault_file()),
        }
    }

    fn refuse(self, why: &str) {
        let unchanged = self.state.language().handover_nothing_changed();
        self.fault.set(format!("{why} {unchanged}"));
    }

    /// The field for a pasted text and the one for a file.
    fn form(self) -> AnyView {
        let say = self.state.language();
        let (text, fault) = (self.text, self.fault);
        let submit = move |event: web_sys::SubmitEvent| {
            event.prevent_default();
            self.read(&text.get_untracked());
        };
        let read_file = Callback::new(move |content| self.read_file(content));
        view! {
            <form class="form" on:submit=submit>
                <div class="field">
                    <label for="paste">{say.handover_paste()}</label>
                    <textarea
                        id="paste"
                        rows="5"
                        aria-describedby="paste-fault"
                        aria-invalid=move || (!fault.get().is_empty()).to_string()
                        prop:value=move || text.get()
                        on:input=move |event| text.set(event_target_value(&event))
                    ></textarea>
                </div>
                <button type="submit" class="button">{say.handover_read()}</button>
                <FileField id="file" label=say.handover_file() read=read_file />
                <p class="fault" id="paste-fault" role="alert">{move || fault.get()}</p>
            </form>
        }
        .into_any()
    }
}

/// Take in a pasted text or a file.
#[component]
pub fn ImportScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let sent = Sent::new(state);
    let landed = state.take_link();
    if let Some(link) = landed.clone() {
        sent.read(&link);
        sent.text.set(link);
    }
    let back = if state.chick.get_untracked().is_some() {
        Route::Handover
    } else {
        Route::Start
    };
    // Who opens a link wants to see what it holds; the way to something else stands below.
    let is_shown_first = sent.preview.with_untracked(Option::is_some);
    let form = sent.form();
    let shown = (move || sent.preview.get().map(preview_of)).into_any();
    let parts = if is_shown_first {
        let another = view! {
            <details class="group">
                <summary>{say.take_another()}</summary>
                {form}
            </details>
        };
        [shown, another.into_any()]
    } else {
        [form, shown]
    };
    view! {
        <Page title=say.handover_take_in() back>
            <p class="hint">{say.exchange_paste_hint()}</p>
            {landed.map(|link| view! {
                <p class="acts"><CopyButton word=say.exchange_copy_link() text=Box::new(move || Some(link.clone())) /></p>
            })}
            {parts}
        </Page>
    }
}

/// What it would bring, and the button that takes it in.
fn preview_of(taken: Imported) -> AnyView {
    match taken {
        Imported::Card { chick, plan } => plan_preview(chick, *plan, true),
        Imported::PlanChange { chick, plan } => plan_preview(chick, *plan, false),
        Imported::Entries(entries) => entries_preview(entries),
    }
}

/// A card or a changed plan: every line of a new one, old → new where the chick is here already.
fn plan_preview(chick: ChickId, plan: CarePlan, is_card: bool) -> AnyView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let old = state
        .journal
        .with_untracked(|journal| Chick::from_journal(journal, chick))
        .map(|chick| chick.plan);
    let name = plan.name.clone();
    let checks = plan_checks(writing, &plan);
    let (lines, word, change): (Vec<String>, &'static str, Option<Change>) = match old {
        Some(old) => {
            let changes = writing.plan_changes(&old, &plan);
            let change = (!changes.is_empty()).then(|| Change::PlanSet(Box::new(plan)));
            (changes, say.exchange_take_plan(), change)
        }
        None if is_card => {
            let lines = writing
                .plan_lines(&plan)
                .into_iter()
                .map(|(label, value)| format!("{label}: {value}"));
            (
                lines.collect(),
                say.exchange_take_card(),
                Some(Change::ChickAdded(Box::new(plan))),
            )
        }
        None => (vec![say.exchange_plan_of_other().to_owned()], "", None),
    };
    let is_empty = lines.is_empty();
    // Who opens a card has not seen the first screen.
    let is_first = is_card && !state.copies.is_caution_accepted();
    let caution = is_first.then(|| view! { <Caution /> });
    let take = change.map(|change| {
        let is_new = matches!(change, Change::ChickAdded(_));
        let take = move |_| {
            if state.is_demo.get_untracked() {
                state.leave_demo();
            }
            match state.dispatch_for(chick, vec![(clock::now(), change.clone())]) {
                Ok(ids) => {
                    state.show_chick(chick);
                    state.say(name.clone(), ids.into_iter().filter(|_| !is_new).collect());
                    state.go(Route::Now);
                }
                Err(refusal) => state.say_refusal(&refusal),
            }
        };
        view! { <button type="button" class="button button--main" on:click=take>{word}</button> }
    });
    let lines = lines
        .into_iter()
        .map(|line| view! { <li>{line}</li> })
        .collect_view();
    view! {
        <section class="question" aria-live="polite">
            <ul class="plain-list">{lines}</ul>
            {is_empty.then(|| view! { <p>{say.exchange_no_change()}</p> })}
            {checks}
            {caution}
            {take}
        </section>
    }
    .into_any()
}

/// Entries of a journal: how many, how many of them new.
fn entries_preview(entries: Vec<Entry>) -> AnyView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let all = entries.len();
    let new = state
        .journal
        .with_untracked(|journal| entries.iter().filter(|entry| !journal.holds(entry)).count());
    let names = names_of(&entries);
    let take = move |_| {
        if state.is_demo.get_untracked() {
            state.leave_demo();
        }
        let count = state.import(entries.clone(), true);
        // A report is about its own chick, whichever was on screen.
        if let [chick] = Journal::from_entries(entries.clone()).chicks()[..] {
            state.show_chick(chick);
        }
        state.say(writing.backup_preview(all, count), Vec::new());
        state.go(Route::Now);
    };
    view! {
        <section class="question" aria-live="polite">
            <p><strong>{names}</strong></p>
            <p>{writing.backup_preview(all, new)}</p>
            <button type="button" class="button button--main" on:click=take>{say.handover_take()}</button>
        </section>
    }
    .into_any()
}

fn names_of(entries: &[Entry]) -> String {
    let journal = Journal::from_entries(entries.to_vec());
    let names = journal
        .chicks()
        .into_iter()
        .filter_map(|id| Chick::from_journal(&journal, id).map(|chick| chick.plan.name));
    names.collect::<Vec<_>>().join(", ")
}

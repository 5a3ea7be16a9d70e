//! Take in what somebody sent: a link, a pasted text or a file, shown before anything changes.

use leptos::prelude::*;

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::{Change, ChickId, Entry};
use crate::domain::journal::incoming::{Incoming, incoming};
use crate::share::import::{Imported, read_text};
use crate::store::setting::Setting;
use crate::ui::clock;
use crate::ui::parts::chick_name::{beside_name, name_shown, named_chicks};
use crate::ui::parts::copy_button::CopyButton;
use crate::ui::parts::file_field::FileField;
use crate::ui::parts::page::Page;
use crate::ui::parts::plan_checks::plan_checks;
use crate::ui::route::Route;
use crate::ui::screens::first_start::Caution;
use crate::ui::state::AppState;
use crate::words::format::Writing;
use crate::words::names::Named;

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

/// What it would bring of each chick, old → new with who wrote it when, and the button that takes it in.
fn preview_of(taken: Imported) -> AnyView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let (entries, is_card) = match taken {
        Imported::Card(entries) | Imported::ShortCard(entries) => (entries, true),
        Imported::Entries(entries) => (entries, false),
    };
    let found = state
        .journal
        .with_untracked(|journal| incoming(journal, &entries, is_card, clock::now()));
    let changes_nothing =
        |one: &Incoming| one.changes.is_empty() && one.proposals == 0 && one.taken.is_empty();
    let is_known = found.iter().all(|one| one.old.is_some());
    let is_idle = is_card && is_known && found.iter().all(changes_nothing);
    let word = match (is_card, is_known) {
        (true, true) => say.exchange_take_plan(),
        (true, false) => say.exchange_take_card(),
        (false, _) => say.handover_take(),
    };
    let count = (!is_card).then(|| {
        let is_new = |entry: &&Entry| {
            state
                .journal
                .with_untracked(|journal| !journal.holds(entry))
        };
        writing.backup_preview(entries.len(), entries.iter().filter(is_new).count())
    });
    // Who opens a card has not seen the first screen.
    let caution = (is_card && !state.copies.is_caution_accepted()).then(|| view! { <Caution /> });
    let chicks = found.iter().map(|one| chick_preview(writing, one, is_card));
    let chicks: Vec<AnyView> = chicks.collect();
    let take = (!is_idle).then(|| {
        let take = move |_| take_in(state, &entries, &found, is_card);
        view! { <button type="button" class="button button--main" on:click=take>{word}</button> }
    });
    view! {
        <section class="question" aria-live="polite">
            {chicks}
            {count.map(|count| view! { <p>{count}</p> })}
            {caution}
            {take}
        </section>
    }
    .into_any()
}

/// What would come in of one chick.
fn chick_preview(writing: Writing, one: &Incoming, is_card: bool) -> AnyView {
    let lines = if one.old.is_some() || is_card {
        writing.incoming(one)
    } else {
        Vec::new()
    };
    let drops = AppState::here()
        .journal
        .with_untracked(|journal| Chick::from_journal(journal, one.chick))
        .map(|chick| chick.drops(clock::now()));
    let stays = drops.unwrap_or_default().into_iter();
    let stays = stays.filter(|(slot, _)| one.new.feed(*slot).is_some());
    let stays: Vec<String> = stays
        .map(|(slot, on)| {
            format!(
                "{}: {}",
                writing.language.feed(slot),
                writing.stays_dropped(on)
            )
        })
        .collect();
    let is_same = one.old.is_some() && lines.is_empty() && one.proposals == 0;
    let is_answer = is_same && !one.taken.is_empty();
    let nothing = (is_same && is_card).then(|| {
        let said = if is_answer {
            writing.language.plan_answers().to_owned()
        } else {
            writing.nothing_changes(one)
        };
        view! { <p>{said}</p> }
    });
    let waits =
        (one.proposals > 0).then(|| view! { <p>{writing.proposals_wait(one.proposals)}</p> });
    let lines = lines
        .into_iter()
        .chain(stays)
        .map(|line| view! { <li>{line}</li> });
    let named = named_chicks(AppState::here());
    let own = (
        one.chick,
        Named {
            name: one.new.name.clone(),
            ring: one.new.ring.clone(),
            species: one.new.species,
            owner: one.new.owner_name.clone(),
            hatched: one.new.hatched,
        },
    );
    let others = named.into_iter().filter(|(id, _)| *id != one.chick);
    let beside = beside_name(&others.chain([own]).collect::<Vec<_>>(), one.chick);
    let version = one.old.is_none().then(|| writing.plan_version(one.version));
    view! {
        <p><strong>{name_shown(&one.new.name)}</strong> " " {beside}</p>
        <p class="hint">{version}</p>
        <ul class="plain-list">{lines.collect_view()}</ul>
        {nothing}
        {waits}
        {is_card.then(|| plan_checks(writing, &one.new))}
    }
    .into_any()
}

/// Whether its owner typed the chick in, as being at home.
fn is_typed(state: AppState, chick: ChickId) -> bool {
    let journal = state.journal;
    journal.with_untracked(|journal| journal.check_typed(chick).is_ok())
}

/// Takes entries in, and says of a card that it was taken.
fn take_in(state: AppState, entries: &[Entry], found: &[Incoming], is_card: bool) {
    let writing = state.writing_now();
    if state.is_demo.get_untracked() {
        state.leave_demo();
    }
    let count = state.import(entries.to_vec(), true);
    let mut undo = Vec::new();
    for one in found.iter().filter(|one| !one.taken.is_empty()) {
        let sets = one.taken.clone();
        match state.dispatch_for(one.chick, vec![(clock::now(), Change::PartTaken { sets })]) {
            Ok(ids) => undo.extend(ids.into_iter().filter(|_| one.old.is_some())),
            Err(refusal) => return state.say_refusal(&refusal),
        }
    }
    let mut said = writing.backup_preview(entries.len(), count);
    for one in found.iter().filter(|one| one.old.is_none()) {
        if is_card {
            state.card_taken(one.chick);
        } else {
            state.set_of_phone(Setting::AskRole, one.chick, Some(clock::now()));
            if !is_typed(state, one.chick) {
                state.ask_home(one.chick);
            }
        }
    }
    // A report is about its own chick, whichever was on screen.
    if let [one] = found {
        let chick = state
            .journal
            .with_untracked(|journal| journal.leading_id(one.chick));
        if state.shows_removed(chick) {
            return;
        }
        state.show_chick(chick);
        if is_card {
            said.clone_from(&one.new.name);
        }
    }
    state.say(said, undo);
    state.go(Route::Now);
}

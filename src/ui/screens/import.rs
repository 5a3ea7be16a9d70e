//! Take in what somebody sent: a link, a pasted text or a file, shown before anything changes.

use leptos::prelude::*;
use leptos::task::spawn_local;
use web_sys::File;

use crate::domain::journal::entries::Entry;
use crate::domain::journal::incoming::{Incoming, incoming};
use crate::share::import::{Imported, read_text};
use crate::store::saved::backup::OfBreeder;
use crate::ui::clock;
use crate::ui::parts::button::main_button;
use crate::ui::parts::chick_name::{beside_name, name_shown, named_chicks};
use crate::ui::parts::copy_button::CopyButton;
use crate::ui::parts::file_field::FileField;
use crate::ui::parts::page::Page;
use crate::ui::parts::take_in::take_in;
use crate::ui::parts::text_area::TextArea;
use crate::ui::photo;
use crate::ui::photo::entries_text;
use crate::ui::route::Route;
use crate::ui::screens::breeder::from_backup::BreedersWords;
use crate::ui::screens::card_received::{card_received, stays_dropped};
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
    /// The file it came in, which may hold photos.
    file: StoredValue<Option<File>, LocalStorage>,
}

impl Sent {
    fn new(state: AppState) -> Self {
        Self {
            state,
            text: RwSignal::new(String::new()),
            fault: RwSignal::new(String::new()),
            preview: RwSignal::new(None),
            file: StoredValue::new_local(None),
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
            self.file.set_value(None);
            self.read(&text.get_untracked());
        };
        let chosen = Callback::new(move |file| self.file.set_value(Some(file)));
        let read_file = Callback::new(move |content| self.read_file(content));
        view! {
            <form class="form" on:submit=submit>
                <TextArea id="paste" label=say.handover_paste() rows="5" text fault />
                <button type="submit" class="button">{say.handover_read()}</button>
                <FileField id="file" label=say.handover_file() read=read_file chosen />
            </form>
        }
        .into_any()
    }
}

/// Take in a pasted text or a file.
#[component]
pub fn ImportScreen() -> impl IntoView {
    let state = AppState::here();
    let sent = Sent::new(state);
    let landed = StoredValue::new(state.take_link());
    if let Some(link) = landed.get_value() {
        sent.read(&link);
        sent.text.set(link);
    }
    move || match sent.preview.get() {
        Some(Imported::Card(entries)) => card_received(state, entries, false, below(&sent, landed)),
        Some(Imported::ShortCard(entries)) => {
            card_received(state, entries, true, below(&sent, landed))
        }
        Some(Imported::Entries(entries)) => page(&sent, landed, Some((entries, None))),
        Some(Imported::OfBreeder(entries, of_breeder)) => {
            page(&sent, landed, Some((entries, Some(*of_breeder))))
        }
        None => page(&sent, landed, None),
    }
}

/// What stands below a card: the way to another text, and the link for another browser of this phone.
fn below(sent: &Sent, landed: StoredValue<Option<String>>) -> AnyView {
    let say = sent.state.language();
    let again = landed.get_value().map(|link| {
        view! {
            <p class="hint">{say.exchange_paste_hint()}</p>
            <p class="acts"><CopyButton word=say.exchange_copy_link() text=Box::new(move || Some(link.clone())) /></p>
        }
    });
    view! {
        {again}
        <details class="group">
            <summary>{say.take_another()}</summary>
            {sent.form()}
        </details>
    }
    .into_any()
}

/// Entries, and what a breeder typed once where they are her backup.
type Brought = (Vec<Entry>, Option<OfBreeder>);

/// The form, and below it what entries would bring.
fn page(sent: &Sent, landed: StoredValue<Option<String>>, brought: Option<Brought>) -> AnyView {
    let state = sent.state;
    let say = state.language();
    let back = if state.chick.get_untracked().is_some() {
        Route::Handover
    } else {
        Route::Start
    };
    let again = landed.get_value().map(|link| {
        view! {
            <p class="acts"><CopyButton word=say.exchange_copy_link() text=Box::new(move || Some(link.clone())) /></p>
        }
    });
    let (form, file) = (sent.form(), sent.file);
    view! {
        <Page title=say.handover_take_in() back>
            <p class="hint">{say.exchange_paste_hint()}</p>
            {again}
            {form}
            {brought.map(|(entries, of_breeder)| preview_of(entries, of_breeder, file))}
        </Page>
    }
    .into_any()
}

/// What entries would bring of each chick, old → new with who wrote it when, and the button that takes them in, with
/// the photos of the file that they came in.
fn preview_of(
    entries: Vec<Entry>,
    of_breeder: Option<OfBreeder>,
    file: StoredValue<Option<File>, LocalStorage>,
) -> AnyView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let found = state
        .journal
        .with_untracked(|journal| incoming(journal, &entries, false, clock::now()));
    let is_new = |entry: &&Entry| {
        state
            .journal
            .with_untracked(|journal| !journal.holds(entry))
    };
    let count = writing.backup_preview(entries.len(), entries.iter().filter(is_new).count());
    let chicks = found.iter().map(|one| chick_preview(writing, one));
    let chicks: Vec<AnyView> = chicks.collect();
    let of_breeder = of_breeder.map(|of_breeder| BreedersWords::new(state, of_breeder));
    let take = move |_| {
        if let Some(of_breeder) = of_breeder {
            of_breeder.take();
        }
        take_in(state, &entries, &found, false);
        file.with_value(|file| take_photos(state, file.clone()));
    };
    view! {
        <section class="question" aria-live="polite">
            {chicks}
            <p>{count}</p>
            {of_breeder.map(BreedersWords::shown)}
            {main_button(say.handover_take(), take)}
        </section>
    }
    .into_any()
}

/// What would come in of one chick.
fn chick_preview(writing: Writing, one: &Incoming) -> AnyView {
    let lines = match one.old {
        Some(_) => writing.incoming(one),
        None => Vec::new(),
    };
    let lines = lines.into_iter().chain(stays_dropped(writing, one));
    let lines = lines.map(|line| view! { <li><bdi>{line}</bdi></li> });
    let waits =
        (one.proposals > 0).then(|| view! { <p>{writing.proposals_wait(one.proposals)}</p> });
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
        {waits}
    }
    .into_any()
}

/// Takes the photos of a backup in that entries name, and says how many there were.
fn take_photos(state: AppState, file: Option<File>) {
    let Some(file) = file else { return };
    let journal = state.journal.get_untracked();
    let writing = state.writing_now();
    spawn_local(async move {
        if entries_text(&file).await.is_none() {
            return;
        }
        let said = match photo::take_in(&file, &journal).await {
            Ok(taken) => writing.photos_taken_in(taken.kept, taken.left),
            Err(fault) => writing.language.photo_fault(fault).to_owned(),
        };
        state.say(said, Vec::new());
    });
}

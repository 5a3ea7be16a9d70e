//! The backup: saved, read back to check it, and the reminder of it.

use leptos::prelude::*;
use leptos::task::spawn_local;
use web_sys::File;

use crate::checksum::crc32;
use crate::domain::journal::entries::{Change, Entry, Journal};
use crate::domain::time::moment::Moment;
use crate::share::file_name::{FileKind, file_name};
use crate::share::import::{Imported, read_text};
use crate::store::backup_due::{Backups, is_backup_due, put_off};
use crate::store::saved::backup::{OfBreeder, backup_to_text};
use crate::ui::parts::button::button;
use crate::ui::parts::file_delivery::FileDelivery;
use crate::ui::parts::file_field::FileField;
use crate::ui::parts::live::live;
use crate::ui::photo;
use crate::ui::route::Route;
use crate::ui::state::AppState;
use crate::ui::{clock, platform};

/// Save a backup, read it back, and when that was last done.
#[component]
pub fn Backup() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let delivery = FileDelivery::new(say);
    let saved_sum = RwSignal::new(None::<u32>);
    let answer = RwSignal::new(String::new());
    let checked_at = RwSignal::new(state.copies.last_backup());
    let last = live(move || {
        let lived = checked_at
            .get()
            .map(|checked| state.zone.with(|zone| zone.lived(checked)));
        lived.map_or_else(
            || say.handover_never().to_owned(),
            |lived| writing.lived(lived),
        )
    });
    let make = move || {
        let text = text_now(state);
        let now = clock::now();
        let day = state.zone.with_untracked(|zone| zone.lived(now)).day;
        saved_sum.set(Some(crc32(text.as_bytes())));
        let name = file_name("", FileKind::Backup, day);
        platform::text_file(&name, FileKind::Backup.media_type(), &text)
    };
    let held = move |text: &str, entries: Vec<Entry>, of_breeder: &OfBreeder| {
        let count = entries.len();
        let read = Journal::from_entries(entries);
        let lacks = state
            .journal
            .with_untracked(|journal| missing(journal, &read));
        let sum = crc32(text.as_bytes());
        let is_same = saved_sum.get_untracked() == Some(sum);
        let has_words = *of_breeder == of_breeder_now(state);
        let checked = writing.backup_checked(count, lacks, sum, is_same);
        answer.set(if has_words {
            checked
        } else {
            format!("{} {checked}", say.backup_lacks_words())
        });
        if lacks == 0 && has_words && !state.is_demo.get_untracked() {
            state.copies.remember_backup();
            checked_at.set(state.copies.last_backup());
        }
    };
    let check = move |text: Option<String>| {
        let Some(text) = text else {
            return answer.set(say.fault_file().to_owned());
        };
        match read_text(&text) {
            Ok(Imported::Entries(entries)) => held(&text, entries, &OfBreeder::default()),
            Ok(Imported::OfBreeder(entries, of_breeder)) => held(&text, entries, &of_breeder),
            Ok(Imported::Card(_) | Imported::ShortCard(_)) => {
                answer.set(say.backup_is_card().to_owned());
            }
            Err(error) => answer.set(say.import_error(&error).to_owned()),
        }
    };
    let sum = live(move || saved_sum.get().map(|sum| writing.checksum(sum)));
    let to_share_sheet = FileKind::Backup.is_for_share_sheet();
    view! {
        <section class="group" id="backup">
            <h2>{say.handover_backup()}</h2>
            <p>{say.handover_backup_text()}</p>
            {state.copies.is_breeder().then(|| view! { <p>{say.backup_of_breeder()}</p> })}
            <p>{say.handover_last_backup()} ": " {last}</p>
            <div class="acts">{delivery.button(say.handover_backup_out(), to_share_sheet, Box::new(make))}</div>
            {delivery.answer()}
            <BackupWithPhotos />
            <p class="hint">{sum}</p>
            <FileField id="backup-check" label=say.backup_check() read=Callback::new(check) />
            <p class="hint">{say.backup_check_hint()}</p>
            <p role="status" class="backup__answer">{move || answer.get()}</p>
        </section>
    }
}

/// Everything on this phone as the text of a backup.
fn text_now(state: AppState) -> String {
    let of_breeder = of_breeder_now(state);
    state
        .journal
        .with_untracked(|journal| backup_to_text(journal.entries(), &of_breeder))
}

/// What a breeder typed once; nothing beside the made-up chick.
fn of_breeder_now(state: AppState) -> OfBreeder {
    if state.is_demo.get_untracked() {
        return OfBreeder::default();
    }
    state.copies.of_breeder()
}

/// A backup with every photo: made first, as it may take a while, and then saved by a tap of its own.
#[component]
fn BackupWithPhotos() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let kind = FileKind::PhotoBackup;
    let has_photos = state.journal.with_untracked(|journal| {
        let is_photo = |entry: &Entry| matches!(entry.change, Change::PhotoTaken(_));
        journal.entries().iter().any(is_photo)
    });
    let made = RwSignal::new_local(None::<File>);
    let answer = RwSignal::new(String::new());
    let delivery = FileDelivery::new(say);
    let prepare = move |_| {
        let text = text_now(state);
        let day = state
            .zone
            .with_untracked(|zone| zone.lived(clock::now()))
            .day;
        let name = file_name("", kind, day);
        made.set(None);
        answer.set(say.photos_backup_working().to_owned());
        spawn_local(async move {
            match photo::backup_file(&text, &name, kind.media_type()).await {
                Ok((file, count)) => {
                    answer.try_set(writing.photos_in_file(count));
                    made.try_set(Some(file));
                }
                Err(fault) => {
                    answer.try_set(say.photo_fault(fault).to_owned());
                }
            }
        });
    };
    let save = live(move || {
        made.get().map(|_| {
            let make = move || made.get_untracked();
            delivery.button(
                say.photos_backup_save(),
                kind.is_for_share_sheet(),
                Box::new(make),
            )
        })
    });
    has_photos.then(|| {
        view! {
            <div class="acts">
                {button(say.photos_backup(), prepare)}
                {save}
            </div>
            <p class="hint" role="status">{move || answer.get()}</p>
            {delivery.answer()}
        }
    })
}

/// How many entries of `journal` are not in `read`.
fn missing(journal: &Journal, read: &Journal) -> usize {
    let entries = journal.entries().iter();
    entries.filter(|entry| !read.holds(entry)).count()
}

/// Whether a backup is due and was not put off.
pub fn is_due(state: AppState, now: Moment) -> bool {
    let last_checked = state.copies.last_backup();
    let is_since = |noted_at: Moment| last_checked.is_none_or(|last| last < noted_at);
    let noted_since = state.journal.with_untracked(|journal| {
        let entries = journal.entries().iter();
        entries.filter(|entry| is_since(entry.noted_at)).count()
    });
    let backups = Backups {
        last_checked,
        noted_since,
        put_off_until: state.copies.nudge_put_off_until(),
    };
    is_backup_due(now, backups) && !state.is_demo.get_untracked()
}

/// The line that reminds of a backup, which can be put off.
pub fn backup_nudge(state: AppState) -> impl IntoView {
    let say = state.language();
    let is_shown = RwSignal::new(true);
    let later = move |_| {
        state.copies.put_nudge_off(put_off(clock::now()));
        is_shown.set(false);
    };
    move || {
        is_shown.get().then(|| {
            view! {
                <div class="nudge">
                    <a class="row" href=Route::Handover.to_hash()>{say.handover_nudge()}</a>
                    {button(say.handover_nudge_later(), later)}
                </div>
            }
        })
    }
}

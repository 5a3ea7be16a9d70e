//! What goes out: the card, the report, the vet page, the calendar, tables, the backup; and the table
//! of placed chicks.

use std::num::NonZeroU32;
use std::sync::Arc;

use leptos::prelude::*;

use crate::domain::doubles::doubles;
use crate::domain::moment::Moment;
use crate::domain::outlook::{Outlook, outlook};
use crate::share::calendar_of::{calendar_removal_text, calendar_text};
use crate::share::card::{card_to_link_text, card_to_qr_text, plan_change_to_link_text};
use crate::share::file_name::{FileKind, file_name};
use crate::share::html_file::{card_html, report_html};
use crate::share::link::entries_to_link_text;
use crate::share::placed::rows;
use crate::share::qr;
use crate::share::table_of::{feeds_csv, weights_csv};
use crate::share::vet_page::vet_page_html;
use crate::store::saved::entries_to_text;
use crate::ui::parts::level_mark::LevelMark;
use crate::ui::parts::page::Heading;
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::state::AppState;
use crate::words::format::Writing;

/// Days for which feeds go into the calendar.
const CALENDAR_DAYS: NonZeroU32 = NonZeroU32::MIN.saturating_add(13);

/// Cards, reports, backup.
#[component]
pub fn HandoverScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let of_chick = move || {
        state.outlook.get().map(|outlook| {
            view! {
                {doubles_of(&outlook)}
                {files_of(&outlook)}
                {card_of(&outlook)}
            }
        })
    };
    view! {
        <Heading text=say.handover_title() />
        <p class="acts">
            <a class="button" href=Route::TakeIn.to_hash()>{say.handover_take_in()}</a>
        </p>
        {of_chick}
        <Placed />
        <Backup />
    }
}

/// A button that hands a text out as a download.
fn file_button(
    word: &'static str,
    name: String,
    mime: &'static str,
    text: String,
) -> impl IntoView {
    let state = AppState::here();
    let hand_out = move |_| {
        if !platform::download(&name, mime, &text) {
            state.say(state.language().handover_no_file().to_owned(), Vec::new());
        }
    };
    view! { <button type="button" class="button" on:click=hand_out>{word}</button> }
}

/// Report, vet page, calendar and tables of one chick.
fn files_of(outlook: &Outlook) -> impl IntoView + use<> {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let chick = &outlook.chick;
    let (name, day) = (chick.plan.name.as_str(), outlook.lived.day);
    let entries: Vec<_> = state.journal.with_untracked(|journal| {
        journal
            .entries()
            .iter()
            .filter(|entry| entry.chick == chick.id)
            .cloned()
            .collect()
    });
    let file = |word, kind: FileKind, text: String| {
        file_button(word, file_name(name, kind, day), kind.media_type(), text)
    };
    let calendar = calendar_text(writing, outlook, CALENDAR_DAYS).ok();
    let removal = calendar_removal_text(writing, outlook).ok();
    let link = entries_to_link_text(&entries).map(|text| link_to(&text));
    view! {
        <section class="group">
            <h2>{say.handover_send()}</h2>
            <p class="hint">{say.handover_send_hint()}</p>
            <div class="acts">
                {file(say.handover_report(), FileKind::Report, report_html(writing, outlook, &entries))}
                {link.map(|link| view! { <CopyButton word=say.handover_report_link() text=link /> })}
                {file(say.handover_vet_page(), FileKind::VetPage, vet_page_html(writing, outlook))}
            </div>
            <h2>{say.handover_calendar()}</h2>
            <p class="hint">{say.handover_calendar_hint()} " " {say.exchange_alert_on()} " " {say.exchange_old_first()}</p>
            <div class="acts">
                {calendar.map(|text| file(say.handover_calendar_add(), FileKind::Calendar, text))}
                {removal.map(|text| file(say.handover_calendar_remove(), FileKind::CalendarRemoval, text))}
            </div>
            <h2>{say.handover_tables()}</h2>
            <div class="acts">
                {file(say.handover_weights_table(), FileKind::Weights, weights_csv(say, chick))}
                {file(say.handover_feeds_table(), FileKind::Feeds, feeds_csv(say, chick))}
            </div>
        </section>
    }
}

/// The handover card of the chick on screen: link, picture, file.
fn card_of(outlook: &Outlook) -> impl IntoView + use<> {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    let (id, plan) = (outlook.chick.id, &outlook.chick.plan);
    let picture = qr::picture(&link_to(&card_to_qr_text(id, plan)), say.exchange_card())
        .map(|picture| picture.svg)
        .ok();
    let picture = picture.map_or_else(
        || view! { <p>{say.exchange_too_long()}</p> }.into_any(),
        |svg| view! { <div class="qr" inner_html=svg></div> }.into_any(),
    );
    let html = card_html(writing, &platform::page_address(), id, plan);
    let name = file_name(&plan.name, FileKind::Card, outlook.lived.day);
    let has_defaults = !plan.unconfirmed.is_empty();
    view! {
        <details class="group">
            <summary>{say.exchange_card()}</summary>
            <p class="hint">{say.exchange_anyone()}</p>
            {has_defaults.then(|| view! { <p class="fault">{say.plan_unconfirmed()}</p> })}
            {picture}
            <div class="acts">
                <CopyButton word=say.handover_card_link() text=link_to(&card_to_link_text(id, plan)) />
                {file_button(say.handover_card_file(), name, FileKind::Card.media_type(), html)}
                <CopyButton word=say.handover_plan_link() text=link_to(&plan_change_to_link_text(id, plan)) />
            </div>
        </details>
    }
}

/// A text of ours as a link to this app: everything stands after `#`, so that it never leaves the phone.
fn link_to(text: &str) -> String {
    format!("{}#{text}", platform::page_address())
}

/// Copies a text and says so.
#[component]
fn CopyButton(word: &'static str, text: String) -> impl IntoView {
    let say = AppState::here().language();
    let is_copied = RwSignal::new(false);
    let copy = move |_| {
        let text = text.clone();
        leptos::task::spawn_local(async move { is_copied.set(platform::copy(text).await) });
    };
    view! {
        <button type="button" class="button" on:click=copy>
            {move || if is_copied.get() { say.now_copied() } else { word }}
        </button>
    }
}

/// Feeds that two phones have noted both; one tap takes one of them back.
fn doubles_of(outlook: &Outlook) -> impl IntoView + use<> {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let chick = &outlook.chick;
    let rows = doubles(chick).into_iter().filter_map(|(first, second)| {
        let words = |id| {
            let feed = chick.feeds.iter().find(|feed| feed.id == id)?;
            Some(format!("{} {}", writing.lived(feed.lived()), say.feed(feed.what.slot)))
        };
        let text = format!("{} / {}", words(first)?, words(second)?);
        Some(view! {
            <li>
                {text}
                <button type="button" class="button" on:click=move |_| state.take_back(&[second])>{say.remove()}</button>
            </li>
        })
    });
    let rows: Vec<_> = rows.collect();
    (!rows.is_empty()).then(|| {
        view! {
            <section class="question">
                <p>{say.exchange_double()}</p>
                <ul class="plain-list">{rows}</ul>
            </section>
        }
    })
}

/// Every chick of this phone at a glance, the most worrying first.
#[component]
fn Placed() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let table = move || {
        let now = state.outlook.get().map(|outlook| outlook.now)?;
        let outlooks: Vec<Outlook> = state.journal.with_untracked(|journal| {
            let chicks = journal.chicks().into_iter();
            chicks
                .filter_map(|id| {
                    state
                        .zone
                        .with_untracked(|zone| outlook(now, journal, id, zone))
                })
                .collect()
        });
        (outlooks.len() > 1).then(|| placed_table(&outlooks, writing))
    };
    view! { {table} <p class="hint">{say.handover_placed_hint()}</p> }
}

fn placed_table(outlooks: &[Outlook], writing: Writing) -> impl IntoView + use<> {
    let state = AppState::here();
    let say = writing.language;
    let rows = rows(outlooks).into_iter().map(|row| {
        let loss = row.handover_loss_pct.map(|loss| writing.against_handover(loss));
        let weighed = row.last_weighed.map(|lived| writing.lived(lived));
        let id = row.chick;
        let show = move |_| {
            state.show_chick(id);
            state.go(Route::Now);
        };
        view! {
            <li class="placed">
                <button type="button" class="sign" on:click=show>
                    <LevelMark level=row.level />
                    <span>
                        <strong>{row.name}</strong>
                        ": " {say.level(row.level)}
                        <span class="hint placed__more">
                            {[loss, weighed].into_iter().flatten().collect::<Vec<_>>().join(" · ")}
                            " · " {writing.feeds_left(row.feeds_left)} " · " {writing.quiet_days(row.quiet_days)}
                        </span>
                    </span>
                </button>
            </li>
        }
    });
    view! {
        <section class="group">
            <h2>{say.exchange_placed()}</h2>
            <ul class="plain-list">{rows.collect_view()}</ul>
        </section>
    }
}

#[component]
fn Backup() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let saved_at = RwSignal::new(state.copies.last_backup());
    let last = move || {
        let lived = saved_at.get().map(|seconds| {
            state
                .zone
                .with(|zone| zone.lived(Moment::from_seconds(seconds)))
        });
        lived.map_or_else(
            || say.handover_never().to_owned(),
            |lived| writing.lived(lived),
        )
    };
    let save = move |_| {
        let text = state
            .journal
            .with_untracked(|journal| entries_to_text(journal.entries()));
        let day = state
            .zone
            .with_untracked(|zone| zone.lived(crate::ui::clock::now()))
            .day;
        let name = format!("perchlight-backup-{}.json", day.iso());
        if platform::download(&name, "application/json", &text) && !state.is_demo.get_untracked() {
            state.copies.remember_backup();
            saved_at.set(state.copies.last_backup());
        }
    };
    view! {
        <section class="group">
            <h2>{say.handover_backup()}</h2>
            <p>{say.handover_backup_text()}</p>
            <p>{say.handover_last_backup()} ": " {last}</p>
            <button type="button" class="button button--main" on:click=save>{say.handover_backup_out()}</button>
        </section>
    }
}

/// One quiet line on the first screen when a backup is due: after the first ten entries, then when
/// seven days and twenty entries have passed (ours).
pub fn backup_nudge(state: AppState, outlook: &Arc<Outlook>) -> impl IntoView + use<> {
    let say = state.language();
    let last = state.copies.last_backup().map(Moment::from_seconds);
    let entries = state.journal.with_untracked(|journal| {
        let noted = journal
            .entries()
            .iter()
            .filter(|entry| last.is_none_or(|last| entry.noted_at > last));
        noted.count()
    });
    let is_old = last.is_none_or(|last| outlook.now.days_since(last) >= 7.0);
    let is_due =
        is_old && entries >= if last.is_some() { 20 } else { 10 } && !state.is_demo.get_untracked();
    is_due.then(|| view! { <p class="hint"><a href=Route::Handover.to_hash()>{say.handover_nudge()}</a></p> })
}

//! What goes out: the card, the report, the vet page, the calendar, tables; and the table of placed
//! chicks.

use std::num::NonZeroU32;
use std::sync::Arc;
use std::time::Duration;

use leptos::prelude::*;
use leptos::task::spawn_local;
use web_sys::File;

use crate::domain::homecoming::life_stage::Reminder;
use crate::domain::journal::entries::{Entry, Journal};
use crate::domain::outlook::Outlook;
use crate::domain::plan::parts::Side;
use crate::domain::time::moment::Moment;
use crate::domain::time::zone::Zone;
use crate::domain::warnings::plan_checks::{Stop, stops};
use crate::share::calendar_of::{calendar_removal_text, calendar_text};
use crate::share::card::{card_to_link_text, qr_card};
use crate::share::card_paper::card_html;
use crate::share::file_name::{FileKind, file_name};
use crate::share::html_file::report_with_photos_html;
use crate::share::link::{entries_since, entries_to_link_text, entries_to_send};
use crate::share::photos::Pictures;
use crate::share::placed::{Placed, rows};
use crate::share::qr;
use crate::share::table_of::{droppings_csv, feeds_csv, weights_csv};
use crate::share::vet_page::vet_page_with_photos_html;
use crate::ui::parts::button::button;
use crate::ui::parts::copy_button::CopyButton;
use crate::ui::parts::file_delivery::FileDelivery;
use crate::ui::parts::level_mark::LevelMark;
use crate::ui::parts::live::{live, whenever};
use crate::ui::parts::other_chicks::judged_chicks;
use crate::ui::parts::page::Heading;
use crate::ui::parts::plan_checks::plan_checks;
use crate::ui::parts::questions::same_food;
use crate::ui::parts::records_links::{last_sent, records_links};
use crate::ui::photo::fetched_pictures;
use crate::ui::platform::{self, Told};
use crate::ui::route::Route;
use crate::ui::screens::backup::Backup;
use crate::ui::screens::two_carers::two_carers;
use crate::ui::state::AppState;
use crate::words::format::Writing;

/// When the photos of a report are fetched that the first screen offers, so that no start waits for them. Ours.
const AFTER_START: Duration = Duration::from_secs(3);
/// Days for which feeds go into the calendar.
const CALENDAR_DAYS: NonZeroU32 = NonZeroU32::MIN.saturating_add(13);

/// Cards, reports, backup.
#[component]
pub fn HandoverScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let doubles = live(move || state.outlook.get().map(|outlook| same_food(&outlook)));
    // Built anew for another plan only, so that an opened card stays open when the minute passes.
    let carded = Memo::new_with_compare(move |_| state.outlook.get(), is_other_plan);
    let of_chick = live(move || {
        carded.get().map(|outlook| {
            let (files, card) = (files(state), card_of(state, &outlook));
            let (told, proposals) = (told_of(state, &outlook), proposals_of(state, &outlook));
            view! { {told} {proposals} {files} {card} }
        })
    });
    view! {
        <Heading text=say.handover_title() />
        <div class="columns">
            <div class="column">
                <p class="acts">
                    <a class="button" href=Route::Import.to_hash()>{say.handover_take_in()}</a>
                </p>
                {doubles}
                {of_chick}
            </div>
            <div class="column">
                {move || two_carers(state)}
                <Placed />
                <Backup />
            </div>
        </div>
    }
}

fn is_other_plan(old: Option<&Option<Arc<Outlook>>>, new: Option<&Option<Arc<Outlook>>>) -> bool {
    let chick = |outlook: Option<&Option<Arc<Outlook>>>| {
        outlook
            .and_then(Option::as_ref)
            .map(|outlook| (outlook.chick.id, outlook.chick.plans.clone()))
    };
    chick(old) != chick(new)
}

/// A text about the chick on screen; `None` when there is none to be made.
type TextOf = fn(Writing, &Outlook, &Beside<'_>) -> Option<String>;

/// What a text may need beside the outlook.
struct Beside<'a> {
    /// Every entry about the chick.
    entries: &'a [Entry],
    /// The zone the phone is in.
    zone: &'a Zone,
    /// When the records of the chick were last sent.
    last: Option<Moment>,
    /// Pictures of photos that are here.
    pictures: &'a Pictures,
}

/// The text about the chick on screen, made now.
fn text_now(state: AppState, pictures: &Pictures, text_of: TextOf) -> Option<String> {
    let outlook = state.outlook.get_untracked()?;
    let entries = state
        .journal
        .with_untracked(|journal| entries_to_send(journal, outlook.chick.id));
    let (entries, last) = (&entries, last_sent(state, outlook.chick.id));
    let of = |zone: &Zone| {
        let beside = Beside {
            entries,
            zone,
            last,
            pictures,
        };
        text_of(state.writing_now(), &outlook, &beside)
    };
    state.zone.with_untracked(of)
}

/// Report, vet page, calendar and tables of the chick on screen, each made when it is asked for.
fn files(state: AppState) -> impl IntoView {
    let say = state.language();
    // Feeds go into the calendar of whoever gives them.
    let is_reminded = state.outlook.get_untracked().is_some_and(|outlook| {
        outlook.stage.reminds(Reminder::Feed) && state.is_with_me(outlook.chick.id)
    });
    // Whoever bred the chick is sent reports.
    let is_sender = !state.is_breeder_here();
    let [sent, dated, listed] = [(); 3].map(|()| FileDelivery::new(say));
    view! {
        <section class="group">
            <h2>{say.handover_send()}</h2>
            <p class="hint">{say.handover_send_hint()}</p>
            {is_sender.then(|| view! { <ReportButton /> })}
            <div class="acts">
                {file_button(sent, say.handover_report(), FileKind::Report, report_text)}
                {file_button(sent, say.handover_vet_page(), FileKind::VetPage, |writing, outlook, beside| {
                    Some(vet_page_with_photos_html(writing, outlook, beside.pictures))
                })}
                <a class="button" href=Route::ForVet.to_hash()>{say.vet_link()}</a>
            </div>
            {sent.answer()}
            {records_by_link(state)}
            <h2>{say.handover_calendar()}</h2>
            <p class="hint">{say.handover_calendar_hint()} " " {say.exchange_alert_on()} " " {say.exchange_old_first()}</p>
            <div class="acts">
                {is_reminded.then(|| file_button(dated, say.handover_calendar_add(), FileKind::Calendar, |writing, outlook, beside| {
                    calendar_text(writing, outlook, beside.zone, CALENDAR_DAYS).ok()
                }))}
                {file_button(dated, say.handover_calendar_remove(), FileKind::CalendarRemoval, |writing, outlook, _| {
                    calendar_removal_text(writing, outlook).ok()
                })}
            </div>
            {dated.answer()}
            <h2>{say.handover_tables()}</h2>
            <div class="acts">
                {file_button(listed, say.handover_weights_table(), FileKind::Weights, |writing, outlook, _| {
                    Some(weights_csv(writing.language, &outlook.chick))
                })}
                {file_button(listed, say.handover_feeds_table(), FileKind::Feeds, |writing, outlook, _| {
                    Some(feeds_csv(writing.language, outlook))
                })}
                {file_button(listed, say.handover_droppings_table(), FileKind::Droppings, |writing, outlook, _| {
                    Some(droppings_csv(writing.language, &outlook.chick))
                })}
            </div>
            {listed.answer()}
        </section>
    }
}

/// The report for the breeder, with one tap: plain words with a link that holds what is new, or the file where
/// that is too much. Once it is out of the app it counts as sent.
#[component]
pub fn ReportButton(
    /// Whether the file stands beside the words.
    #[prop(optional)]
    has_file: bool,
) -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let delivery = FileDelivery::new(say);
    let answer = RwSignal::new("");
    let pictures = pictures_for(state, FileKind::Report, AFTER_START);
    let file_of_report = move || {
        pictures.with_value(|pictures| file_now(state, FileKind::Report, pictures, report_text))
    };
    let remember = move || {
        let chick = state.chick.get_untracked();
        if let Some(chick) = chick.filter(|_| !state.is_demo.get_untracked()) {
            state.copies.remember_sent(chick);
        }
    };
    whenever(move || {
        if delivery.is_out() {
            remember();
        }
    });
    let send = move |_| {
        answer.set("");
        let Some(words) = text_now(state, &Pictures::new(), report_words) else {
            return delivery.hand_out(file_of_report(), true);
        };
        spawn_local(async move {
            let told = platform::tell(words).await;
            answer.set(match told {
                Told::Shared => say.hand_shared(),
                Told::Cancelled => say.hand_cancelled(),
                Told::Copied => say.report_copied(),
                Told::NotTaken => say.hand_no_file(),
            });
            match told {
                Told::Shared | Told::Copied => remember(),
                Told::Cancelled => {}
                Told::NotTaken => delivery.hand_out(file_of_report(), true),
            }
        });
    };
    let file = has_file.then(|| {
        file_button(
            delivery,
            say.report_as_file(),
            FileKind::Report,
            report_text,
        )
    });
    view! {
        <div class="report-out">
            {button(say.todo_send_report(), send)}
            {file}
            <p class="hint handed" role="status">{move || answer.get()}</p>
            {delivery.answer()}
        </div>
    }
}

/// The line of a report with a link to what is new since the last one; `None` where that is too much.
fn report_words(writing: Writing, outlook: &Outlook, beside: &Beside<'_>) -> Option<String> {
    let chick = outlook.chick.id;
    let since = beside.last.unwrap_or(Moment::EARLIEST);
    let link = entries_to_link_text(&entries_since(beside.entries, chick, since))?;
    Some(format!(
        "{}\n{}",
        writing.report_line(outlook),
        platform::link_to(&link)
    ))
}

#[expect(clippy::unnecessary_wraps, reason = "one of several texts")]
fn report_text(writing: Writing, outlook: &Outlook, beside: &Beside<'_>) -> Option<String> {
    Some(report_with_photos_html(
        writing,
        outlook,
        beside.entries,
        beside.last,
        beside.pictures,
    ))
}

/// Pictures of photos of the chick on screen, fetched after a time, for a file that shows them.
fn pictures_for(
    state: AppState,
    kind: FileKind,
    after: Duration,
) -> StoredValue<Pictures, LocalStorage> {
    let outlook = state.outlook.get_untracked();
    let shown = outlook.filter(|_| kind.shows_photos());
    let now = shown
        .as_ref()
        .map_or(Moment::EARLIEST, |outlook| outlook.now);
    fetched_pictures(after, now, shown.map(|outlook| outlook.chick.clone()))
}

/// The records of the chick on screen as a link, with words where only what is new can go.
fn records_by_link(state: AppState) -> Option<impl IntoView> {
    let say = state.language();
    let chick = state.chick.get_untracked()?;
    let has_newer = last_sent(state, chick).is_some();
    let hint = has_newer.then(|| view! { <p class="hint">{say.handover_only_new_hint()}</p> });
    Some(view! { {records_links(state, chick, say.handover_report_link())} {hint} })
}

/// A button for a file about the chick on screen.
fn file_button(
    delivery: FileDelivery,
    word: &'static str,
    kind: FileKind,
    text_of: TextOf,
) -> AnyView {
    let state = AppState::here();
    let pictures = pictures_for(state, kind, Duration::ZERO);
    let make = move || pictures.with_value(|pictures| file_now(state, kind, pictures, text_of));
    delivery.button(word, kind.is_for_share_sheet(), Box::new(make))
}

/// A file about the chick on screen, made now.
fn file_now(state: AppState, kind: FileKind, pictures: &Pictures, text_of: TextOf) -> Option<File> {
    let text = text_now(state, pictures, text_of)?;
    let outlook = state.outlook.get_untracked()?;
    let name = file_name(&outlook.chick.plan.name, kind, outlook.lived.day);
    platform::text_file(&name, kind.media_type(), &text)
}

/// The handover card of the chick on screen: link, picture, file.
pub fn card_of(state: AppState, outlook: &Outlook) -> impl IntoView + use<> {
    let writing = state.writing_now();
    let say = writing.language;
    let (id, plan) = (outlook.chick.id, &outlook.chick.plan);
    let card = move || {
        state
            .journal
            .with_untracked(|journal| journal.entries_of_plan(id))
    };
    let picture = qr_card(&card()).and_then(|card| {
        let picture = qr::picture(&platform::link_to(&card.text()), say.exchange_card()).ok()?;
        Some((picture.svg, card.is_whole))
    });
    let picture = picture.map_or_else(
        || view! { <p>{say.exchange_too_long()}</p> }.into_any(),
        |(svg, is_whole)| {
            let short = (!is_whole).then(|| view! { <p class="hint">{say.card_short_hint()}</p> });
            view! { <div class="qr" inner_html=svg></div> {short} }.into_any()
        },
    );
    let delivery = FileDelivery::new(say);
    let stops = stops(plan);
    let may_go = RwSignal::new(stops.is_empty());
    let stopped = live(move || (!may_go.get()).then(|| stopped(writing, &stops, may_go)));
    view! {
        <details class="group">
            <summary>{say.exchange_card()}</summary>
            <p class="hint">{writing.plan_version(outlook.chick.plans.version())} ". " {say.exchange_anyone()}</p>
            {plan_checks(writing, plan)}
            {writing.fat_need(plan.species).map(|need| view! { <p class="hint">{need}</p> })}
            {unconfirmed(state, outlook)}
            {stopped}
            <div class="card-out" hidden=move || !may_go.get()>
            {picture}
            <div class="acts">
                <CopyButton word=say.handover_card_link() text=Box::new(move || {
                    Some(platform::link_to(&card_to_link_text(&card())))
                }) />
                {file_button(delivery, say.handover_card_file(), FileKind::Card, |writing, outlook, beside| {
                    let chick = &outlook.chick;
                    let journal = Journal::from_entries(beside.entries.to_vec());
                    let card = journal.entries_of_plan(chick.id);
                    let at = (outlook.now, outlook.offset);
                    Some(card_html(writing, &platform::page_address(), chick, &card, at))
                })}
            </div>
            {delivery.answer()}
            </div>
            <div class="acts">
                {button(say.handover_template(), move |_| state.start_from(id))}
            </div>
            <p class="hint">{say.handover_template_hint()}</p>
        </details>
    }
}

/// Other values for the plan that wait for an answer, field by field, with who wrote them when.
pub fn proposals_of(state: AppState, outlook: &Outlook) -> Option<impl IntoView + use<>> {
    let writing = state.writing_now();
    let say = writing.language;
    let chick = &outlook.chick;
    let (id, author) = (chick.id, state.author(chick.id));
    let proposals = chick.proposals();
    if proposals.is_empty() {
        return None;
    }
    let rows = proposals.into_iter().map(|proposal| {
        let lines = writing.proposal(&chick.plan, &proposal).into_iter();
        let lines = lines.map(|line| view! { <li>{line}</li> });
        let who = writing.written(&proposal.by, proposal.lived);
        let answer = move |is_taken| {
            let plans = state.journal.with_untracked(|journal| journal.plans(id));
            let change = plans.and_then(|plans| plans.answer(proposal.id, is_taken, author));
            if let Some(change) = change {
                let said = match (proposal.is_asked, is_taken) {
                    (true, true) => say.plan_agreed(),
                    (true, false) => say.plan_not_so(),
                    (false, true) => say.plan_taken(),
                    (false, false) => say.plan_declined(),
                };
                state.note(change, said.to_owned());
            }
        };
        // What an owner asks for is answered by the breeder, what a breeder far away proposes by who has the
        // chick.
        let (is_mine, yes, no, until) = if proposal.is_asked {
            let is_mine = author.side == Side::Breeder;
            (
                is_mine,
                say.plan_yes(),
                say.plan_no(),
                say.plan_waits_for_breeder(),
            )
        } else {
            let is_mine = author.is_carer;
            (
                is_mine,
                say.plan_take(),
                say.plan_decline(),
                say.plan_waits_for_owner(),
            )
        };
        let acts = is_mine.then(|| yes_and_no([yes, no], answer));
        let waits = (!is_mine).then(|| view! { <p class="hint">{until}</p> });
        view! {
            <li>
                <p>{who}</p>
                <ul class="plain-list">{lines.collect_view()}</ul>
                {acts}
                {waits}
            </li>
        }
    });
    let rows: Vec<_> = rows.collect();
    Some(view! {
        <section class="question" id="proposals">
            <p>{say.plan_proposals()}</p>
            <ul class="plain-list">{rows}</ul>
        </section>
    })
}

fn yes_and_no(
    [yes, no]: [&'static str; 2],
    answer: impl Fn(bool) + Copy + 'static,
) -> impl IntoView {
    view! {
        <div class="acts">
            {button(yes, move |_| answer(true))}
            {button(no, move |_| answer(false))}
        </div>
    }
}

/// What the owner changed in the breeder's parts without asking: her phone asks for her answer.
pub fn told_of(state: AppState, outlook: &Outlook) -> Option<impl IntoView + use<>> {
    let writing = state.writing_now();
    let say = writing.language;
    let chick = &outlook.chick;
    let (id, author) = (chick.id, state.author(chick.id));
    let told = chick.plans.not_agreed();
    if told.is_empty() {
        return None;
    }
    let rows = told.into_iter().map(|set| {
        let lines = writing.not_agreed(&chick.plan, &set).into_iter();
        let lines = lines.map(|line| view! { <li>{line}</li> });
        let answer = move |is_agreed| {
            let plans = state.journal.with_untracked(|journal| journal.plans(id));
            let change = plans.and_then(|plans| plans.answer_told(set.kind, is_agreed, author));
            if let Some(change) = change {
                let said = if is_agreed {
                    say.plan_agreed()
                } else {
                    say.plan_not_so()
                };
                state.note(change, said.to_owned());
            }
        };
        let (is_hers, is_declined) = (author.side == Side::Breeder, set.is_declined);
        let said = match (is_declined, is_hers) {
            (true, _) => say.plan_told_declined(),
            (false, true) => say.plan_told_breeder(),
            (false, false) => say.plan_told_owner(),
        };
        let acts =
            (is_hers && !is_declined).then(|| yes_and_no([say.plan_yes(), say.plan_no()], answer));
        view! {
            <li>
                <p>{said}</p>
                <ul class="plain-list">{lines.collect_view()}</ul>
                {acts}
            </li>
        }
    });
    let rows: Vec<_> = rows.collect();
    Some(view! {
        <section class="question" id="not-agreed">
            <ul class="plain-list">{rows}</ul>
        </section>
    })
}

/// What keeps a card from going out, and how it goes out all the same.
fn stopped(writing: Writing, stops: &[Stop], may_go: RwSignal<bool>) -> impl IntoView + use<> {
    let say = writing.language;
    let lines = stops
        .iter()
        .map(|stop| view! { <li class="fault">{writing.plan_stop(*stop)}</li> });
    let lines = lines.collect_view();
    let again = stops.iter().all(|stop| stop.may_be_said_again()).then(|| {
        let send = move |_| may_go.set(true);
        button(say.plan_stop_again(), send)
    });
    view! {
        <div class="question" data-ask="stop">
            <p><strong>{say.plan_stop()}</strong></p>
            <ul class="plain-list">{lines}</ul>
            <div class="acts">
                <a class="button" href=Route::Plan.to_hash()>{say.plan_stop_change()}</a>
                {again}
            </div>
        </div>
    }
}

/// The defaults that nobody has confirmed, each with the act that confirms it.
fn unconfirmed(state: AppState, outlook: &Outlook) -> Option<impl IntoView + use<>> {
    let (id, author) = (outlook.chick.id, state.author(outlook.chick.id));
    let plan = outlook.chick.plans.as_left_by(author)?;
    let writing = state.writing_now();
    let say = writing.language;
    if plan.unconfirmed.is_empty() {
        return None;
    }
    let fields = plan.unconfirmed.clone().into_iter().map(|field| {
        let line = writing.field_lines(&plan, field);
        let label = format!("{line}: {}", say.plan_confirm());
        let mut confirmed = plan.clone();
        confirmed.unconfirmed.remove(&field);
        let confirm = move |_| match state.set_plan(id, &confirmed) {
            Ok(ids) => state.say(say.plan_confirmed().to_owned(), ids),
            Err(refusal) => state.say_refusal(&refusal),
        };
        view! {
            <li class="confirm">
                <span>{line}</span>
                <button type="button" class="button" aria-label=label on:click=confirm>{say.plan_confirm()}</button>
            </li>
        }
    });
    let fields = fields.collect_view();
    Some(view! {
        <div class="question">
            <p class="fault">{say.plan_unconfirmed()}</p>
            <ul class="plain-list">{fields}</ul>
        </div>
    })
}

/// Every chick of this phone at a glance, the most worrying first.
#[component]
fn Placed() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let table = live(move || {
        state.outlook.get()?;
        let now = state.now.get_untracked();
        let outlooks = judged_chicks(state, now, |_| true);
        let is_table = outlooks.len() > 1 || outlooks.iter().any(|one| one.followed.is_some());
        is_table.then(|| placed_table(now, &outlooks, writing))
    });
    view! { {table} <p class="hint">{say.handover_placed_hint()}</p> }
}

fn placed_table(now: Moment, outlooks: &[Placed], writing: Writing) -> impl IntoView + use<> {
    let state = AppState::here();
    let say = writing.language;
    let rows = rows(now, outlooks).into_iter().map(|row| {
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
                    {row.state.level_now().map(|level| view! { <LevelMark level /> })}
                    <span>
                        <strong>{row.name}</strong>
                        ": " {writing.placed_state(row.state)}
                        <span class="hint placed__more">
                            {[loss, weighed].into_iter().flatten().collect::<Vec<_>>().join(" · ")}
                            " · " {writing.feeds_left(row.feeds_left)}
                            {row.quiet_days.map(|days| format!(" · {}", writing.quiet_days(Some(days))))}
                            " · " {writing.plan_version(row.plan)}
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

//! What is to be done apart from feeds: one quiet line that opens to a list. Reminders judge nothing, so they
//! never wear the shape of a level.

use leptos::prelude::*;

use crate::domain::formula::stock::stock;
use crate::domain::homecoming::first_days::first_days;
use crate::domain::homecoming::first_weeks::for_today;
use crate::domain::homecoming::life_stage::Reminder;
use crate::domain::homecoming::reports::report_due;
use crate::domain::homecoming::vet_visit::booked;
use crate::domain::journal::entries::Change;
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::Role;
use crate::domain::weaning::Verdict;
use crate::ui::parts::button::button;
use crate::ui::parts::later::ReportPart;
use crate::ui::parts::live::live;
use crate::ui::route::Route;
use crate::ui::screens::backup::{backup_nudge, is_due};
use crate::ui::state::AppState;
use crate::words::exchange::labelled;

/// One thing to do: its short name and its line.
type Item = (&'static str, AnyView);

/// The quiet line, its list, and the report with one tap where one is due.
pub fn to_do(outlook: &Outlook) -> impl IntoView + use<> {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let report = report(state, outlook);
    let is_report = report.is_some();
    let items: Vec<Item> = [
        report,
        vet_visit(state, outlook),
        feed_may_go(state, outlook),
        numbers(state, outlook),
        phone(state, outlook),
        powder(state, outlook),
        backup(state, outlook),
        apart(state, outlook),
    ]
    .into_iter()
    .flatten()
    .collect();
    let names: Vec<&str> = items.iter().map(|(name, _)| *name).collect();
    let (count, names) = (items.len(), names.join(", "));
    let lines = items.into_iter().map(|(_, line)| view! { <li>{line}</li> });
    let send = live(move || {
        is_report.then(|| match ReportPart::here() {
            Some(draw) => draw(),
            None => view! { <a class="button" href=Route::Handover.to_hash()>{say.todo_send_report()}</a> }.into_any(),
        })
    });
    view! {
        <div class="to-do">
            <details class="to-do__list">
                <summary>
                    <span>
                        <strong>{writing.to_do(count)}</strong>
                        <span class="to-do__names">{names}</span>
                    </span>
                </summary>
                <ul class="rows">
                    {lines.collect_view()}
                    {card_of_today(state, outlook)}
                    <li><a class="row" href=Route::Home.to_hash()>{say.now_home()}</a></li>
                    <li><a class="row" href=Route::FirstWeeks(None).to_hash()>{say.weeks_title()}</a></li>
                </ul>
            </details>
            {send}
        </div>
    }
}

fn row(route: Route, words: String) -> AnyView {
    view! { <a class="row" href=route.to_hash()>{words}</a> }.into_any()
}

fn report(state: AppState, outlook: &Outlook) -> Option<Item> {
    let sent = state.copies.last_sent(outlook.chick.id);
    let is_breeder = state.is_breeder_here();
    let due = report_due(&outlook.chick, outlook.stage, sent).filter(|_| !is_breeder)?;
    (due <= outlook.now).then(|| {
        let (writing, say) = (state.writing_now(), state.language());
        let line = writing.report_due(due.lived(outlook.offset));
        (say.todo_report(), row(Route::Handover, line))
    })
}

/// The appointment that lies ahead or has passed, or the first visit once it is due.
fn vet_visit(state: AppState, outlook: &Outlook) -> Option<Item> {
    let (writing, say, chick) = (state.writing_now(), state.language(), &outlook.chick);
    let booked = booked(outlook.now, outlook.lived, chick);
    let mut findings = outlook.findings.iter();
    let is_due = findings.any(|finding| finding.rule.is_reminder());
    let (name, line) = match booked {
        Some(booked) => (say.todo_vet_booked(), writing.visit_open(booked)),
        None if is_due => {
            let dates = state.zone.with_untracked(|zone| first_days(chick, zone))?;
            let [_, vet, _] = writing.first_dates(dates, outlook.lived.day);
            (say.todo_vet(), vet)
        }
        None => return None,
    };
    let called = writing.vet_called(chick).filter(|_| booked.is_none());
    let called = called.map(|called| labelled(say.vet_called(), &called));
    let is_asked = booked.is_none_or(|booked| booked.is_past);
    let seen = move |_| {
        let said = String::new();
        state.note(Change::VetSeen { said }, say.entry_vet_seen().to_owned());
    };
    let seen = is_asked.then(|| button(say.vet_saw_it(), seen));
    let line = view! {
        <div class="to-do__act">
            <p>{line}</p>
            {called.map(|called| view! { <p>{called}</p> })}
            <div class="acts">
                {seen}
                <a class="button" href=Route::ForVet.to_hash()>{say.todo_visit()}</a>
            </div>
        </div>
    };
    Some((name, line.into_any()))
}

fn feed_may_go(state: AppState, outlook: &Outlook) -> Option<Item> {
    let writing = state.writing_now();
    let say = writing.language;
    let ask = state.ask_before_drop(outlook);
    match outlook.weaning.verdict {
        Verdict::MayDrop(_) => {
            let line = writing.weaning_answer(&outlook.weaning, ask);
            let name = if ask.is_some() {
                say.todo_drop_ask()
            } else {
                say.todo_drop()
            };
            Some((name, row(Route::Weaning, line)))
        }
        Verdict::NotYet { .. } | Verdict::BringBack { .. } | Verdict::NothingToDrop => None,
    }
}

fn numbers(state: AppState, outlook: &Outlook) -> Option<Item> {
    let say = state.language();
    let is_open = !outlook.chick.plan.unconfirmed.is_empty();
    is_open.then(|| {
        (
            say.todo_numbers(),
            row(Route::Plan, say.plan_unconfirmed().to_owned()),
        )
    })
}

fn phone(state: AppState, outlook: &Outlook) -> Option<Item> {
    let say = state.language();
    let plan = &outlook.chick.plan;
    let is_there = |role| plan.contact(role).is_some();
    let is_whole = is_there(Role::Breeder) && is_there(Role::AvianVet);
    let is_owner = !state.is_breeder_here();
    (!is_whole && is_owner).then(|| {
        (
            say.todo_phone(),
            row(Route::Plan, say.todo_phone_line().to_owned()),
        )
    })
}

fn powder(state: AppState, outlook: &Outlook) -> Option<Item> {
    let say = state.language();
    let stock = stock(outlook.now, &outlook.chick)?;
    (stock.order_in_days? == 0).then(|| {
        let line = say.home_powder_order().to_owned();
        (say.todo_powder(), row(Route::Home, line))
    })
}

fn backup(state: AppState, outlook: &Outlook) -> Option<Item> {
    let is_due = outlook.stage.reminds(Reminder::Backup) && is_due(state, outlook.now);
    is_due.then(|| {
        (
            state.language().todo_backup(),
            backup_nudge(state).into_any(),
        )
    })
}

/// The days apart from other birds, and the other dates that count from the arrival, until they are over.
fn apart(state: AppState, outlook: &Outlook) -> Option<Item> {
    let (writing, say, today) = (state.writing_now(), state.language(), outlook.lived.day);
    let dates = state
        .zone
        .with_untracked(|zone| first_days(&outlook.chick, zone))?;
    (today < dates.apart_until).then(|| {
        let [settling, vet, apart] = writing.first_dates(dates, today);
        let settling = (today < dates.settled_on).then_some(settling);
        let vet = (today <= dates.vet_by).then_some(vet);
        let lines = [settling, vet, Some(apart)].into_iter().flatten();
        let lines = lines.map(|line| view! { <p>{line}</p> }).collect_view();
        (
            say.todo_apart(),
            view! { <div class="to-do__act">{lines}</div> }.into_any(),
        )
    })
}

/// The one card of the first weeks that is most wanted today.
fn card_of_today(state: AppState, outlook: &Outlook) -> impl IntoView + use<> {
    let zone = state.zone;
    let cards = zone.with_untracked(|zone| for_today(outlook.now, &outlook.chick, zone));
    let card = *cards.first()?;
    let line = state.writing_now().weeks_line(card);
    let place = Route::FirstWeeks(Some(card)).to_hash();
    Some(view! { <li><a class="row quiet-link" href=place>{line}</a></li> })
}

//! A card that somebody sent: what matters of it, before any of it is taken.

use std::time::Duration;

use leptos::prelude::*;

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::Entry;
use crate::domain::journal::incoming::{Incoming, incoming};
use crate::domain::time::moment::Age;
use crate::domain::warnings::plan_checks::{CheckVerdict, PlanCheck, plan_checks as checks_of};
use crate::ui::clock;
use crate::ui::parts::button::main_button;
use crate::ui::parts::named::with_names;
use crate::ui::parts::plan_checks::plan_checks;
use crate::ui::parts::take_in::take_in;
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::state::AppState;
use crate::words::card::breeder_name;
use crate::words::format::Writing;

/// What a card would do here.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Case {
    /// Its chick is new here.
    New,
    /// It changes the plan, or answers what was asked.
    Changes,
    /// The plan here is newer.
    Older,
    /// Everything of it is here.
    Known,
}

impl Case {
    const fn of(one: &Incoming) -> Self {
        if one.old.is_none() {
            Self::New
        } else if !one.changes.is_empty() || one.proposals > 0 || !one.taken.is_empty() {
            Self::Changes
        } else if one.is_older {
            Self::Older
        } else {
            Self::Known
        }
    }
}

/// The card with these entries: its sender, what matters most, the rest folded, and the act that takes it.
pub fn card_received(
    state: AppState,
    entries: Vec<Entry>,
    is_short: bool,
    below: AnyView,
) -> AnyView {
    let writing = state.writing_now();
    let say = writing.language;
    let found = state
        .journal
        .with_untracked(|journal| incoming(journal, &entries, true, clock::now()));
    // A card is of one chick.
    let Some(one) = found.first().cloned() else {
        return below;
    };
    // Whoever opens a card hears first whose it is.
    set_timeout(platform::focus_heading, Duration::ZERO);
    let case = Case::of(&one);
    let name = match one.new.name.as_str() {
        "" => say.card_chick().to_owned(),
        name => name.to_owned(),
    };
    let names = [("by", breeder_name(say, &one.new)), ("name", name)];
    let (title, take) = match case {
        Case::New => (say.card_sends(), Some(say.card_take())),
        Case::Changes => (say.card_changes(), Some(say.exchange_take_plan())),
        Case::Older => (say.card_is_older(), None),
        Case::Known => (say.card_is_known(), None),
    };
    let back = match state.chick.get_untracked() {
        Some(_) => Route::Now,
        None => Route::Start,
    };
    let body = body(state, writing, case, &one);
    let some_older =
        (case == Case::Changes && one.is_older).then(|| view! { <p>{say.card_some_older()}</p> });
    let short = is_short.then(|| view! { <p class="hint">{say.card_is_short()}</p> });
    let is_new = case == Case::New;
    let caution = is_new.then(|| view! { <p class="caution">{say.card_caution()}</p> });
    let is_usual = is_new && !one.new.unconfirmed.is_empty();
    let usual = is_usual.then(|| view! { <p class="fault">{say.card_usual()}</p> });
    let law = is_new.then(|| view! { <p class="hint">{say.caution_text()}</p> });
    let take = take.map(|word| {
        let take = move |_| {
            // The caution stands beside the act.
            if is_new {
                state.copies.accept_caution();
            }
            take_in(state, &entries, &found, true);
        };
        main_button(word, take)
    });
    let title = with_names(title, &names);
    let checks = || plan_checks(writing, &one.new);
    let in_order = |check: &CheckVerdict| matches!(check, CheckVerdict::InOrder);
    let mut verdicts = checks_of(&one.new).into_iter().map(PlanCheck::verdict);
    let doubtful = !verdicts.all(|verdict| in_order(&verdict));
    view! {
        <div class="page scroll">
            <header class="page__head">
                <h1 class="heading" tabindex="-1">{title}</h1>
            </header>
            <section class="question card-in" data-card=data_of(case)>
                {body}
                {usual}
                {caution}
                {some_older}
                {short}
                {doubtful.then(&checks)}
                <details class="group">
                    <summary>{say.card_everything()}</summary>
                    {everything(writing, &one)}
                    {(!doubtful).then(&checks)}
                    {law}
                </details>
            </section>
            {below}
        </div>
        <div class="dock">
            <a class="button" href=back.to_hash()>{if take.is_some() { say.card_not_now() } else { say.back() }}</a>
            {take}
        </div>
    }
    .into_any()
}

const fn data_of(case: Case) -> &'static str {
    match case {
        Case::New => "new",
        Case::Changes => "changes",
        Case::Older => "older",
        Case::Known => "known",
    }
}

/// What matters of it: the lines of a new card, what an other one changes, or why it changes nothing.
fn body(state: AppState, writing: Writing, case: Case, one: &Incoming) -> AnyView {
    let say = writing.language;
    match case {
        Case::New => {
            let plan = &one.new;
            let day = one.version.lived.day;
            let today = state
                .zone
                .with_untracked(|zone| zone.lived(clock::now()))
                .day;
            let age = plan.hatched.and_then(|hatched| Age::on(today, hatched));
            let age = age
                .map(|age| format!(", {}", writing.age(age)))
                .unwrap_or_default();
            let written = writing.card_written(day, one.version.number);
            let lines = writing.first_lines(plan).into_iter().map(|line| {
                let comma = if line.rest.is_empty() { "" } else { ", " };
                view! {
                    <div class="card-in__line">
                        <dt>{line.label}</dt>
                        <dd><strong><bdi>{line.first}</bdi></strong> {comma} <bdi>{line.rest}</bdi></dd>
                    </div>
                }
            });
            view! {
                <p class="card-in__who">{say.species(plan.species)} {age} ". " {written} "."</p>
                <dl class="card-in__lines">{lines.collect_view()}</dl>
            }
            .into_any()
        }
        Case::Changes => {
            let lines = writing
                .incoming(one)
                .into_iter()
                .chain(stays_dropped(writing, one));
            let lines: Vec<_> = lines
                .map(|line| view! { <li><bdi>{line}</bdi></li> })
                .collect();
            let is_answer = lines.is_empty() && one.proposals == 0;
            let answer = is_answer.then(|| view! { <p>{say.plan_answers()}</p> });
            let waits = (one.proposals > 0)
                .then(|| view! { <p>{writing.proposals_wait(one.proposals)}</p> });
            view! { <ul class="plain-list">{lines}</ul> {answer} {waits} }.into_any()
        }
        Case::Older | Case::Known => view! { <p>{writing.nothing_changes(one)}</p> }.into_any(),
    }
}

/// Feeds that were dropped here and stay so, whatever the card says of them.
pub fn stays_dropped(writing: Writing, one: &Incoming) -> Vec<String> {
    let chick = AppState::here()
        .journal
        .with_untracked(|journal| Chick::from_journal(journal, one.chick));
    let drops = chick
        .map(|chick| chick.drops(clock::now()))
        .unwrap_or_default();
    let drops = drops
        .into_iter()
        .filter(|(slot, _)| one.new.feed(*slot).is_some());
    let line = |(slot, on)| {
        let feed = writing.language.feed(slot);
        format!("{feed}: {}", writing.stays_dropped(on))
    };
    drops.map(line).collect()
}

/// Every line of the card.
fn everything(writing: Writing, one: &Incoming) -> impl IntoView + use<> {
    let lines = writing
        .plan_lines(&one.new)
        .into_iter()
        .map(|(label, value)| {
            view! { <li>{label} ": " <bdi>{value}</bdi></li> }
        });
    view! { <ul class="plain-list">{lines.collect_view()}</ul> }
}

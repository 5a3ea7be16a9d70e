//! What is due, what is wrong, and the way to everything that can be noted.

use std::sync::Arc;

use leptos::prelude::*;

use crate::domain::homecoming::first_weeks::for_today;
use crate::domain::homecoming::life_stage::Reminder;
use crate::domain::instruction::answer::Instruction;
use crate::domain::instruction::first::First;
use crate::domain::outlook::Outlook;
use crate::domain::warnings::level::Level;
use crate::domain::warnings::rules::{Raise, raise_of};
use crate::domain::weaning::Verdict;
use crate::ui::parts::arrival::{first_feed, on_the_way, settling_in};
use crate::ui::parts::call_card::{WhatToSay, call_buttons};
use crate::ui::parts::day_strip::day_strip;
use crate::ui::parts::finding_card::FindingCard;
use crate::ui::parts::instruction_card::instruction_card;
use crate::ui::parts::level_mark::{LevelMark, level_name};
use crate::ui::parts::life::{LifeQuestions, WithMe, not_with_me, with_me};
use crate::ui::parts::other_chicks::other_chicks;
use crate::ui::parts::questions::{same_food, was_it_given};
use crate::ui::route::Route;
use crate::ui::screens::backup::backup_nudge;
use crate::ui::screens::guide::feed_under_way;
use crate::ui::state::AppState;
use crate::words::call::what_to_say;

/// What is due and what is wrong.
#[component]
pub fn NowScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let with_me = with_me(state);
    let body = move || {
        let outlook = state.outlook.get()?;
        Some(match with_me.get() {
            WithMe::Yes => view! { <NowBody outlook /> }.into_any(),
            other @ (WithMe::Followed | WithMe::Away | WithMe::Died) => {
                not_with_me(other, &outlook).into_any()
            }
        })
    };
    let is_here = Memo::new(move |_| with_me.get() == WithMe::Yes);
    let acts = move || is_here.get().then(|| small_acts(state));
    view! {
        <h1 class="only-read" tabindex="-1">{say.bar_now()}</h1>
        <LifeQuestions with_me />
        {body}
        {acts}
    }
}

/// Everything that can be noted of a chick that is with the holder of this phone.
fn small_acts(state: AppState) -> impl IntoView {
    let say = state.language();
    view! {
        <nav class="small-acts" aria-label=say.journal_note()>
            <SmallAct route=Route::Weigh word=say.now_weigh() />
            <SmallAct route=Route::Crop word=say.now_crop() />
            <SmallAct route=Route::Droppings word=say.now_droppings() />
            <SmallAct route=Route::Solids word=say.now_solids() />
            <SmallAct route=Route::Home word=say.now_home() />
        </nav>
        <a class="wrong-link" href=Route::Wrong.to_hash()>
            <span aria-hidden="true">"!"</span>
            {say.now_wrong()}
        </a>
    }
}

#[component]
fn SmallAct(route: Route, word: &'static str) -> impl IntoView {
    view! { <a class="button" href=route.to_hash()>{word}</a> }
}

#[component]
fn NowBody(outlook: Arc<Outlook>) -> impl IntoView {
    let say = AppState::here().language();
    let nudged = Arc::clone(&outlook);
    let is_away = outlook.is_away();
    let is_held = outlook.instruction.forbids();
    let is_asked = outlook.instruction == Instruction::First(First::Weigh);
    let is_to_be_weighed = outlook.is_to_be_weighed() && !is_asked && !is_held;
    let has_defaults = !outlook.chick.plan.unconfirmed.is_empty();
    let next = outlook.next_feed.as_ref();
    let is_due = next.is_some_and(|feed| feed.due <= outlook.now);
    let steps = (!is_held).then(|| first_feed(&outlook)).into_any();
    let next = (!is_away || is_held).then(|| instruction_card(&outlook));
    let next = next.into_any();
    // What to press stands above what to read, but not before the chick is warm.
    let feeds = if is_due || is_held {
        [next, steps]
    } else {
        [steps, next]
    };
    // What forbids a feed stands above every question.
    let (before, after) = if is_held {
        (Some(feeds), None)
    } else {
        (None, Some(feeds))
    };
    let is_calm = outlook.level < Level::VetToday;
    view! {
        <LampBand outlook=Arc::clone(&outlook) />
        {before}
        {other_chicks(&outlook)}
        {feed_under_way(&outlook)}
        {on_the_way(&outlook)}
        {same_food(&outlook)}
        {was_it_given(&outlook)}
        {after}
        {coming_back(&outlook)}
        {from_breeder(&outlook)}
        {day_strip(&outlook)}
        {settling_in(&outlook)}
        {is_calm.then(|| card_of_today(&outlook))}
        {is_to_be_weighed.then(|| view! { <p class="hint">{say.now_weigh_first()}</p> })}
        {(is_calm && nudged.stage.reminds(Reminder::Backup)).then(|| backup_nudge(AppState::here(), &nudged))}
        {has_defaults.then(|| {
            view! { <p class="hint"><a href=Route::Plan.to_hash()>{say.plan_unconfirmed()}</a></p> }
        })}
    }
}

/// A feed that is to be offered again, with its reason and the way to it.
fn coming_back(outlook: &Outlook) -> impl IntoView + use<> {
    let writing = AppState::here().writing_now();
    let is_coming_back = matches!(outlook.weaning.verdict, Verdict::BringBack { .. });
    is_coming_back.then(|| {
        view! {
            <section class="question" data-back="true">
                <p>{writing.weaning_answer(&outlook.weaning)}</p>
                <a class="button" href=Route::Weaning.to_hash()>{writing.language.bar_weaning()}</a>
            </section>
        }
    })
}

/// The one card of the first weeks that is most wanted today.
fn card_of_today(outlook: &Outlook) -> impl IntoView + use<> {
    let state = AppState::here();
    let zone = state.zone;
    let cards = zone.with_untracked(|zone| for_today(outlook.now, &outlook.chick, zone));
    let card = *cards.first()?;
    let line = state.writing_now().weeks_line(card);
    let place = Route::FirstWeeks(Some(card)).to_hash();
    Some(view! { <a class="quiet-link" href=place>{line}</a> })
}

/// What the breeder wrote beside the numbers.
fn from_breeder(outlook: &Outlook) -> impl IntoView + use<> {
    let say = AppState::here().language();
    let plan = &outlook.chick.plan;
    let notes = [&plan.note_for_chick, &plan.note].into_iter();
    let notes = notes.filter(|note| !note.trim().is_empty()).cloned();
    let notes: Vec<_> = notes
        .map(|note| view! { <p class="as-typed">{note}</p> })
        .collect();
    (!notes.is_empty()).then(|| {
        view! {
            <section class="group" data-note="true">
                <h2>{say.plan_part_note()}</h2>
                {notes}
            </section>
        }
    })
}

/// The level, the one most important finding, and from a call level up the call buttons.
#[component]
fn LampBand(outlook: Arc<Outlook>) -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let level = outlook.level;
    let mut findings = outlook.findings.clone().into_iter();
    let first = findings.next();
    let more: Vec<_> = findings.collect();
    let first = first.map(|finding| view! { <FindingCard finding /> });
    let raised = raise_of(&outlook.findings).map(|raise| {
        let why = match raise {
            Raise::TwoConcerns => say.raised_two(),
            Raise::DullToo => say.raised_dull(),
        };
        view! { <p>{why}</p> }
    });
    let held = outlook.instruction.forbids().then(|| {
        let title = state.writing_now().instruction_title(&outlook);
        view! { <h2 class="next-feed__held">{title}</h2> }
    });
    let more_count = more.len();
    let more = (more_count > 0).then(|| {
        let cards = more
            .into_iter()
            .map(|finding| view! { <FindingCard finding /> });
        view! {
            <details class="more-findings">
                <summary>{say.now_more_findings()} " (" {more_count} ")"</summary>
                {cards.collect_view()}
            </details>
        }
    });
    let calls = level.is_call().then(|| {
        let lines = what_to_say(state.writing_now(), &outlook);
        view! {
            {call_buttons(level, Some(&outlook.chick.plan))}
            <WhatToSay lines />
        }
    });
    view! {
        <section class="lamp-band" data-level=level_name(level)>
            <p class="lamp" data-level=level_name(level)>
                <LevelMark level />
                <span class="lamp__word">{say.level(level)}</span>
            </p>
            {held}
            {raised}
            {first}
            {calls}
            {more}
        </section>
    }
}

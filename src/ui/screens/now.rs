//! What is due, what is wrong, and the way to everything that can be noted.

use std::sync::Arc;

use leptos::prelude::*;

use crate::domain::outlook::{Night, Outlook};
use crate::domain::plan::topic::Topic;
use crate::domain::warnings::rules::{Raise, raise_of};
use crate::domain::weaning::Verdict;
use crate::ui::parts::arrival::{first_feed, on_the_way};
use crate::ui::parts::breeders_word::breeders_words;
use crate::ui::parts::button::button;
use crate::ui::parts::call_card::{WhatToSay, call_buttons};
use crate::ui::parts::day_strip::day_strip;
use crate::ui::parts::finding_card::FindingCard;
use crate::ui::parts::instruction_card::{alarm, dock, instruction_card, lines_of_title};
use crate::ui::parts::level_mark::{LevelMark, level_name};
use crate::ui::parts::life::{LifeQuestions, WithMe, not_with_me, with_me};
use crate::ui::parts::live::live;
use crate::ui::parts::other_chicks::other_chicks;
use crate::ui::parts::questions::{same_food, was_it_given};
use crate::ui::parts::to_do::to_do;
use crate::ui::route::Route;
use crate::ui::screens::guide::feed_under_way;
use crate::ui::state::AppState;
use crate::words::call::what_to_say;

/// What is due and what is wrong.
#[component]
pub fn NowScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let with_me = with_me(state);
    // They outlive the minutes, in which the rest is drawn anew.
    let is_asking = RwSignal::new(false);
    let is_opened = RwSignal::new(false);
    let night = Memo::new(move |_| {
        let is_shown = with_me.get() == WithMe::Yes && !is_opened.get();
        state.outlook.get().filter(|_| is_shown)?.night()
    });
    let body = live(move || {
        let outlook = state.outlook.get()?;
        Some(match with_me.get() {
            WithMe::Yes => match night.get() {
                Some(night) => view! { <Tonight outlook night /> }.into_any(),
                None => view! { <NowBody outlook is_asking /> }.into_any(),
            },
            other @ (WithMe::Followed | WithMe::Away | WithMe::Died) => {
                not_with_me(other, &outlook).into_any()
            }
        })
    });
    let pressed = live(move || {
        let outlook = state.outlook.get()?;
        let is_here = with_me.get() == WithMe::Yes;
        is_here.then(|| {
            if night.get().is_some() {
                night_dock(state, is_opened).into_any()
            } else {
                dock(&outlook, is_asking)
            }
        })
    });
    view! {
        <div class="scroll">
            <h1 class="only-read" tabindex="-1">{say.bar_now()}</h1>
            <LifeQuestions with_me night />
            {body}
            <LifeQuestions with_me night is_below=true />
        </div>
        {pressed}
    }
}

/// The two ways on from the night.
fn night_dock(state: AppState, is_opened: RwSignal<bool>) -> impl IntoView {
    let say = state.language();
    view! {
        <div class="dock">
            <a class="button" href=Route::Journal.to_hash()>{say.night_note()}</a>
            {button(say.night_show(), move |_| is_opened.set(true))}
        </div>
    }
}

/// What is noted most, each with its drawing.
fn small_acts(state: AppState) -> impl IntoView {
    let say = state.language();
    let acts = [
        (
            Route::Weigh,
            say.now_weigh(),
            "M3 6h18M6 6a6 5.500 0 0 0 12 0M9 16h6l2 5H7zM12 11.500V16",
        ),
        (
            Route::Crop,
            say.now_crop(),
            "M9 2C9 8 5 10 5 15a7 7 0 0 0 14 0C19 10 15 8 15 2",
        ),
        (
            Route::Droppings,
            say.now_droppings(),
            "M4.500 15.500C6 19.500 13 19.500 17 18C21.500 16 21.500 11.500 17.500 10C13 8.500 7.500 10 8.500 13C9.500 15.500 13 15 14.500 13.500M9 6.500C10 4 14.500 4 15 6.500",
        ),
        (
            Route::Solids,
            say.now_solids(),
            "M3 11h18a9 9 0 0 1-18 0zM9 7c-1-2 0-4 2-5 1 2 0 4-2 5zM14 7c0-2 2-3 4-3 0 2-2 3-4 3z",
        ),
    ];
    let acts = acts.map(|(route, word, icon)| {
        view! {
            <a class="button small-act" href=route.to_hash()>
                <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
                    <path d=icon></path>
                </svg>
                <span>{word}</span>
            </a>
        }
    });
    view! { <nav class="small-acts" aria-label=say.journal_note()>{acts.collect_view()}</nav> }
}

#[component]
fn NowBody(
    outlook: Arc<Outlook>,
    /// Whether a feed before its time is asked about.
    is_asking: RwSignal<bool>,
) -> impl IntoView {
    let state = AppState::here();
    let is_held = outlook.instruction.forbids();
    if is_held {
        return view! {
            <section class="lamp-band" data-level=level_name(outlook.level)>
                {alarm(&outlook)}
                <Raised outlook=Arc::clone(&outlook) />
                <Findings outlook=Arc::clone(&outlook) is_behind=true />
            </section>
            {other_chicks(&outlook)}
            {feed_under_way(&outlook)}
            {same_food(&outlook)}
        }
        .into_any();
    }
    let is_away = outlook.is_away();
    let next = outlook.next_feed.as_ref();
    let is_due = next.is_some_and(|feed| feed.due <= outlook.now);
    let steps = first_feed(&outlook).into_any();
    let card = (!is_away)
        .then(|| instruction_card(&outlook, is_asking))
        .into_any();
    // What to do now stands above what to read, but not before the chick is warm.
    let feeds = if is_due { [card, steps] } else { [steps, card] };
    // A call stands above everything; what is calm below what is next.
    let band = view! { <LampBand outlook=Arc::clone(&outlook) /> }.into_any();
    let is_call = outlook.level.is_call();
    let (above, below) = if is_call {
        (Some(band), None)
    } else {
        (None, Some(band))
    };
    // While a feed is due, nothing else stands before what is noted with it.
    let is_lit = next.is_some_and(|feed| feed.is_due(outlook.now)) && !is_away;
    view! {
        {above}
        {other_chicks(&outlook)}
        {feed_under_way(&outlook)}
        {on_the_way(&outlook)}
        {same_food(&outlook)}
        {was_it_given(&outlook)}
        {feeds}
        {below}
        {coming_back(&outlook)}
        {is_lit.then(|| small_acts(state))}
        {day_strip(&outlook)}
        {to_do(&outlook)}
        {from_breeder(&outlook)}
        {(!is_lit).then(|| small_acts(state))}
    }
    .into_any()
}

/// A feed that is to be offered again, with its reason and the way to it.
fn coming_back(outlook: &Outlook) -> impl IntoView + use<> {
    let writing = AppState::here().writing_now();
    let is_coming_back = matches!(outlook.weaning.verdict, Verdict::BringBack { .. });
    is_coming_back.then(|| {
        view! {
            <section class="question" data-back="true">
                <p>{writing.weaning_answer(&outlook.weaning, None)}</p>
                <a class="button" href=Route::Weaning.to_hash()>{writing.language.bar_weaning()}</a>
            </section>
        }
    })
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

/// The level and, while nobody is to be called, the weight in one sentence; each finding opens to what to do.
/// From a call level up the reason stands open with whom to call.
#[component]
fn LampBand(outlook: Arc<Outlook>) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let level = outlook.level;
    let lamp = view! {
        <LevelMark level />
        <span class="lamp__word">{say.level(level)}</span>
    };
    if level.is_call() {
        let lines = what_to_say(writing, &outlook);
        // The calls stand in the dock, where one is the next act.
        let (act, calls) = if outlook.is_call_next() {
            let title = lines_of_title(say.call_now(level));
            (
                view! { <h2 class="next-feed__held">{title}</h2> }.into_any(),
                None,
            )
        } else {
            let calls = call_buttons(level, Some(&outlook.chick.plan));
            (view! { <p>{say.call_when()}</p> }.into_any(), Some(calls))
        };
        return view! {
            <section class="lamp-band lamp-band--call" data-level=level_name(level)>
                <p class="lamp" data-level=level_name(level)>{lamp}</p>
                {act}
                <Raised outlook=Arc::clone(&outlook) />
                <Findings outlook=Arc::clone(&outlook) />
                {calls}
                <WhatToSay lines level />
            </section>
        }
        .into_any();
    }
    view! {
        <section class="lamp-band" data-level=level_name(level)>
            <a class="state" href=Route::Weight.to_hash()>
                <LevelMark level />
                <span><strong class="lamp__word">{say.level(level)} "."</strong> " " {writing.weight_today(&outlook)}</span>
            </a>
            <Findings outlook=Arc::clone(&outlook) />
        </section>
    }
    .into_any()
}

/// Why the level is above that of every finding.
#[component]
fn Raised(outlook: Arc<Outlook>) -> impl IntoView {
    let say = AppState::here().language();
    raise_of(&outlook.findings).map(|raise| {
        let why = match raise {
            Raise::TwoConcerns => say.raised_two(),
            Raise::DullToo => say.raised_dull(),
        };
        view! { <p>{why}</p> }
    })
}

/// The first finding, and the others behind one line; reminders stand in what is to do.
#[component]
fn Findings(
    outlook: Arc<Outlook>,
    /// Whether the first stands behind that line too, its reason being told already.
    #[prop(optional)]
    is_behind: bool,
) -> impl IntoView {
    let say = AppState::here().language();
    let findings = outlook.findings.clone().into_iter();
    let mut findings = findings.filter(|finding| !finding.rule.is_reminder());
    let first = if is_behind { None } else { findings.next() };
    let more: Vec<_> = findings.collect();
    let count = more.len();
    let first = first.map(|finding| view! { <FindingCard finding /> });
    let more = (count > 0).then(|| {
        let cards = more
            .into_iter()
            .map(|finding| view! { <FindingCard finding /> });
        view! {
            <details class="more-findings">
                <summary>{say.now_more_findings()} " (" {count} ")"</summary>
                {cards.collect_view()}
            </details>
        }
    });
    view! { {first} {more} }
}

/// The night after the last feed: hours, not a countdown, and nothing that shines.
#[component]
fn Tonight(outlook: Arc<Outlook>, night: Night) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let due = state.zone.with_untracked(|zone| zone.lived(night.due)).time;
    let wait = live(move || {
        let minutes = night.due.minutes_since(state.now.get().plus_seconds(-59));
        writing.feed_in(night.next, minutes)
    });
    view! {
        <section class="tonight lamp-band" data-level=level_name(outlook.level)>
            <div class="next-feed" data-state="upcoming">
                <h2 class="tonight__until">{say.night_until()}</h2>
                <p class="tonight__hour">{writing.time(due)}</p>
                <p class="tonight__wait">{wait}</p>
            </div>
            {other_chicks(&outlook)}
            {feed_under_way(&outlook)}
            <p>{writing.given_tonight(night.slot, night.at, night.taken)}</p>
            <p>{say.night_sleeps()}</p>
            {breeders_words(&[Topic::Night])}
            <div class="tonight__morning">
                <p class="hint">{say.night_morning()}</p>
                <p>{say.night_order()}</p>
            </div>
        </section>
    }
}

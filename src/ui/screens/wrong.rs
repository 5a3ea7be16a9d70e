//! Something's wrong: the signs by what one sees. Each answers at once, with or without a chick.

use std::time::Duration;

use leptos::prelude::*;

use crate::domain::homecoming::first_weeks::Card;
use crate::domain::journal::entries::Change;
use crate::domain::journal::signs::{Sign, SignGroup};
use crate::domain::warnings::level::Level;
use crate::domain::warnings::rules::sign_seen::level;
use crate::ui::parts::call_card::{WhatToSay, call_buttons};
use crate::ui::parts::level_mark::{LevelMark, level_name};
use crate::ui::parts::page::Page;
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::screens::first_weeks::card_links;
use crate::ui::screens::guide::under_way::note_what_went_in;
use crate::ui::state::AppState;
use crate::words::call::what_to_say;
use crate::words::signs::sign as words_of;

const GROUPS: [SignGroup; 6] = [
    SignGroup::Breathing,
    SignGroup::FeedingAccident,
    SignGroup::Crop,
    SignGroup::Behaviour,
    SignGroup::Droppings,
    SignGroup::Injury,
];

/// Cards for what is no sign by itself, or is seen only by who knows where to look.
const CARDS: [Card; 3] = [Card::Refusal, Card::ReturnedFood, Card::CropBurn];

/// Something's wrong.
#[component]
pub fn WrongScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let back = if state.chick.get_untracked().is_some() {
        Route::Now
    } else {
        Route::Start
    };
    let chosen = RwSignal::new(None);
    let groups = GROUPS.map(|group| {
        let signs = Sign::ALL.into_iter().filter(move |sign| sign.group() == group);
        let buttons = signs.map(|sign| {
            view! {
                <li>
                    <button
                        type="button"
                        class="sign"
                        aria-expanded=move || (chosen.get() == Some(sign)).to_string()
                        on:click=move |_| {
                            chosen.update(|now| *now = if *now == Some(sign) { None } else { Some(sign) });
                            set_timeout(|| platform::to_top(".sign[aria-expanded='true']"), Duration::ZERO);
                        }
                    >
                        <LevelMark level=level(sign) />
                        {words_of(say, sign).seen}
                    </button>
                    {move || (chosen.get() == Some(sign)).then(|| view! { <Answer sign /> })}
                </li>
            }
        });
        view! {
            <section class="sign-group">
                <h2>{crate::words::signs::group(say, group)}</h2>
                <ul>{buttons.collect_view()}</ul>
            </section>
        }
    });
    view! {
        <Page title=say.wrong_title() back>
            <p>{say.wrong_intro()}</p>
            <p class="hint">{say.caution_short()}</p>
            {groups.collect_view()}
            <section class="sign-group">
                <h2>{say.weeks_title()}</h2>
                {card_links(&CARDS)}
            </section>
        </Page>
    }
}

/// Level, first action, what not to do, whom to ring.
#[component]
fn Answer(sign: Sign) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let words = words_of(say, sign);
    let level = level(sign);
    let outlook = state.outlook.get_untracked();
    let plan = outlook.as_ref().map(|outlook| outlook.chick.plan.clone());
    let lines = outlook.map(|outlook| {
        let mut lines = vec![words.seen.to_owned()];
        lines.extend(what_to_say(writing, &outlook));
        lines
    });
    let lines = lines.unwrap_or_else(|| vec![words.seen.to_owned()]);
    let has_chick = plan.is_some();
    let calls = (level > Level::Settled).then(|| call_buttons(level, plan.as_ref()));
    let more = Card::of_sign(sign).map(|card| {
        let line = writing.weeks_line(card);
        view! { <a class="quiet-link" href=Route::FirstWeeks(Some(card)).to_hash()>{line}</a> }
    });
    let note = has_chick.then(|| {
        let note = move |_| {
            note_what_went_in(state);
            state.note(Change::SignSeen { sign }, words.seen.to_owned());
        };
        let gone = move |_| {
            state.note(Change::SignGone { sign }, say.wrong_gone().to_owned());
        };
        view! {
            <div class="acts">
                <button type="button" class="button" on:click=note>{say.wrong_note()}</button>
                <button type="button" class="button" on:click=gone>{say.wrong_gone()}</button>
            </div>
        }
    });
    view! {
        <div class="answer" role="alert" data-level=level_name(level)>
            <p class="lamp" data-level=level_name(level)>
                <LevelMark level />
                <span class="lamp__word">{say.level_for(level, state.is_breeder_here())}</span>
            </p>
            <p><strong>{say.wrong_first()} ": "</strong> {words.first}</p>
            {calls}
            <p><strong>{say.finding_avoid()} ": "</strong> {words.avoid}</p>
            <WhatToSay lines />
            {note}
            {more}
        </div>
    }
}

//! Help: whom to call, what is seen most, and every sign by what one sees. Each answers at once, with or without
//! a chick.

use std::sync::Arc;

use leptos::prelude::*;

use crate::domain::homecoming::first_weeks::Card;
use crate::domain::journal::entries::Change;
use crate::domain::journal::signs::{Sign, SignGroup};
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::{CarePlan, Contact, PlanFault, Role, is_phone_number};
use crate::domain::plan::species::Species;
use crate::domain::warnings::asked::Asked;
use crate::domain::warnings::level::Level;
use crate::store::draft_text::{Draft, draft_from_text, draft_to_text};
use crate::ui::parts::button::button;
use crate::ui::parts::call_card::{WhatToSay, call_buttons};
use crate::ui::parts::field::FieldKind;
use crate::ui::parts::level_mark::{LevelMark, level_name};
use crate::ui::parts::live::live;
use crate::ui::parts::page::Heading;
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::screens::first_weeks::card_links;
use crate::ui::screens::guide::under_way::note_what_went_in;
use crate::ui::screens::plan_form::text::{Text, TextField};
use crate::ui::state::AppState;
use crate::words::Language;
use crate::words::advice::advice;
use crate::words::call::what_to_say;
use crate::words::format::Writing;
use crate::words::now::sentences;
use crate::words::signs::{group, group_hint, sign as words_of};

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

/// Fields of the draft of a new chick.
const BREEDER_NUMBER: &str = "breeder-number";
const VET_NUMBER: &str = "vet-number";

/// The answer, which takes the focus when a sign is tapped.
const ANSWER: &str = "answer";

/// Help.
#[component]
pub fn WrongScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let chosen = RwSignal::new(None::<Asked>);
    let most = Asked::MOST.map(|asked| {
        let word = most_word(say, asked);
        view! { <li>{asked_button(chosen, asked, word)}</li> }
    });
    let groups = GROUPS.map(|of| {
        let signs = Sign::ALL.into_iter().filter(move |sign| sign.group() == of);
        let buttons = signs.map(|sign| {
            let word = words_of(say, sign).seen;
            view! { <li>{asked_button(chosen, Asked::Sign(sign), word)}</li> }
        });
        view! {
            <details class="sign-group">
                <summary>
                    <span>
                        <strong>{group(say, of)}</strong>
                        <span class="to-do__names">{group_hint(say, of)}</span>
                    </span>
                </summary>
                <ul>{buttons.collect_view()}</ul>
            </details>
        }
    });
    // Chosen once: the clock does not take the page away from under the finger.
    let outlook = state.outlook.get_untracked();
    let has_chick = outlook.is_some();
    let numbers = RwSignal::new(draft_from_text(&state.copies.draft()));
    let of_plan = outlook.as_ref().map(|outlook| outlook.chick.plan.clone());
    let plan = move || of_plan.clone().or_else(|| numbers.with(plan_of_draft));
    let (of_answer, plan_of_answer) = (outlook.clone(), plan.clone());
    let pressed = live(move || {
        let plan = plan_of_answer();
        let asked = chosen.get()?;
        Some(dock_of(asked, of_answer.as_deref(), plan.as_ref()))
    });
    let top = live(move || match chosen.get() {
        Some(asked) => view! { <Answer asked outlook=outlook.clone() /> }.into_any(),
        None => {
            view! { <div class="help-calls">{call_buttons(Level::VetToday, plan().as_ref())}</div> }
                .into_any()
        }
    });
    view! {
        <div class="scroll page--help">
            <Heading text=say.wrong_title() />
            <div class="columns">
                <div class="column column--stays">
                    {top}
                    {(!has_chick).then(|| view! { <NumbersHere numbers /> })}
                </div>
                <div class="column">
                    <h2 class="help-question">{say.wrong_seen()}</h2>
                    <ul class="most-seen">{most.collect_view()}</ul>
                    <h2>{say.wrong_all()}</h2>
                    <div class="rows">{groups.collect_view()}</div>
                    <section class="sign-group">
                        <h2>{say.weeks_title()}</h2>
                        {card_links(&CARDS)}
                    </section>
                    <p class="hint">{say.wrong_unsure()}</p>
                </div>
            </div>
        </div>
        {pressed}
    }
}

/// The telephone numbers typed before there is a chick, as a plan that holds nothing else.
fn plan_of_draft(draft: &Draft) -> Option<CarePlan> {
    let fields = [
        (Role::Breeder, "breeder", BREEDER_NUMBER),
        (Role::AvianVet, "", VET_NUMBER),
    ];
    let typed = |field: &str| draft.get(field).cloned().unwrap_or_default();
    let contacts = fields.into_iter().filter_map(|(role, name, number)| {
        let (name, number) = (typed(name), typed(number));
        is_phone_number(&number).then_some(Contact { role, name, number })
    });
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    plan.contacts = contacts.collect();
    (!plan.contacts.is_empty()).then_some(plan)
}

/// On a phone without a chick: the numbers that are missing, typed in here. The first start takes them over.
#[component]
fn NumbersHere(numbers: RwSignal<Draft>) -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let (vet, breeder) = (Text::new(String::new()), Text::new(String::new()));
    let is_missing = move |field: &str| numbers.with(|typed| !typed.contains_key(field));
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let read = |text: Text| {
            let is_sound = text.is_empty() || is_phone_number(&text.get());
            let fault = say.plan_fault(PlanFault::ContactNumber).to_owned();
            text.take(if is_sound { Ok(text.get()) } else { Err(fault) })
        };
        let (Some(of_vet), Some(of_breeder)) = (read(vet), read(breeder)) else {
            return;
        };
        // What the first start holds by now, and not what it held when Help was opened.
        let mut draft = draft_from_text(&state.copies.draft());
        for (field, number) in [(VET_NUMBER, of_vet), (BREEDER_NUMBER, of_breeder)] {
            if !number.is_empty() {
                draft.insert(field.to_owned(), number);
            }
        }
        state.copies.remember_draft(&draft_to_text(&draft));
        numbers.set(draft);
    };
    let field = move |field, label, text| {
        is_missing(field).then(|| {
            view! { <TextField id=field label=label text=text kind=FieldKind::Telephone /> }
        })
    };
    move || {
        (is_missing(VET_NUMBER) || is_missing(BREEDER_NUMBER)).then(|| {
            view! {
                <form class="form group" on:submit=keep novalidate>
                    {field(VET_NUMBER, say.group_vet_number(), vet)}
                    {field(BREEDER_NUMBER, say.group_breeder_number(), breeder)}
                    <button type="submit" class="button">{say.keep()}</button>
                </form>
            }
        })
    }
}

/// What is tapped; its answer stands on top of the page.
fn asked_button(
    chosen: RwSignal<Option<Asked>>,
    asked: Asked,
    word: &'static str,
) -> impl IntoView {
    let is_chosen = move || chosen.get() == Some(asked);
    let choose = move |_| {
        chosen.update(|now| {
            *now = if *now == Some(asked) {
                None
            } else {
                Some(asked)
            }
        });
        set_timeout(
            || {
                platform::reveal(ANSWER);
                platform::to_heading();
            },
            std::time::Duration::ZERO,
        );
    };
    view! {
        <button type="button" class="sign" aria-expanded=move || is_chosen().to_string() on:click=choose>
            {word}
        </button>
    }
}

/// What is asked about most, in a word or two.
const fn most_word(say: Language, asked: Asked) -> &'static str {
    match asked {
        Asked::WontEat => say.wrong_wont_eat(),
        Asked::FoodLeft => say.wrong_food_left(),
        Asked::WeightDown => say.wrong_weight_down(),
        Asked::Sign(Sign::LabouredBreathing) => say.wrong_breathing(),
        Asked::Sign(Sign::Cold) => say.wrong_cold(),
        Asked::Sign(Sign::FedTooHot) => say.wrong_fed_hot(),
        Asked::Sign(sign) => words_of(say, sign).seen,
    }
}

/// What was seen, in one sentence.
fn seen(writing: Writing, asked: Asked, outlook: Option<&Outlook>) -> String {
    let say = writing.language;
    match asked {
        Asked::Sign(sign) => words_of(say, sign).seen.to_owned(),
        Asked::WeightDown => outlook.map_or_else(
            || say.wrong_weight_down().to_owned(),
            |outlook| writing.weight_today(outlook),
        ),
        Asked::WontEat | Asked::FoodLeft => most_word(say, asked).to_owned(),
    }
}

/// What to do first and not to do, one instruction a line.
fn first_aid(say: Language, asked: Asked) -> Vec<String> {
    let (first, avoid) = match asked {
        Asked::Sign(sign) => {
            let words = words_of(say, sign);
            (words.first, words.avoid)
        }
        Asked::WontEat | Asked::FoodLeft | Asked::WeightDown => {
            let words = advice(say, asked.rule());
            (words.act, words.avoid)
        }
    };
    [first, avoid].into_iter().flat_map(sentences).collect()
}

fn level_of(asked: Asked, outlook: Option<&Outlook>) -> Level {
    let findings = outlook.map(|outlook| outlook.findings.as_slice());
    asked.level(findings.unwrap_or_default())
}

/// Whom to call about what was seen.
fn dock_of(
    asked: Asked,
    outlook: Option<&Outlook>,
    plan: Option<&CarePlan>,
) -> impl IntoView + use<> {
    let level = level_of(asked, outlook);
    view! { <div class="dock dock--calls">{call_buttons(level, plan)}</div> }
}

/// Level, what was seen, what to do; whom to call stands in the dock.
#[component]
fn Answer(asked: Asked, outlook: Option<Arc<Outlook>>) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let level = level_of(asked, outlook.as_deref());
    let seen = seen(writing, asked, outlook.as_deref());
    let lines: Vec<String> = std::iter::once(seen.clone())
        .chain(
            outlook
                .iter()
                .flat_map(|outlook| what_to_say(writing, outlook)),
        )
        .collect();
    let has_chick = outlook.is_some();
    let aid = first_aid(say, asked).into_iter();
    let aid = aid.map(|line| view! { <li>{line}</li> }).collect_view();
    let card = match asked {
        Asked::WontEat => Some(Card::Refusal),
        Asked::Sign(sign) => Card::of_sign(sign),
        Asked::FoodLeft | Asked::WeightDown => None,
    };
    let card = card.map(|card| {
        let line = writing.weeks_line(card);
        view! { <a class="row quiet-link" href=Route::FirstWeeks(Some(card)).to_hash()>{line}</a> }
    });
    let look = match asked {
        Asked::FoodLeft => Some((Route::Crop, say.wrong_look())),
        Asked::WeightDown => Some((Route::Weigh, say.wrong_weigh())),
        Asked::WontEat | Asked::Sign(_) => None,
    };
    let look = look.filter(|_| has_chick);
    let look = look.map(|(route, word)| view! { <a class="row" href=route.to_hash()>{word}</a> });
    let note = match asked {
        Asked::Sign(sign) if has_chick => Some(noting(state, sign, seen.clone())),
        Asked::Sign(_) | Asked::WontEat | Asked::FoodLeft | Asked::WeightDown => None,
    };
    view! {
        <div class="answer" data-level=level_name(level)>
            <h2 class="lamp" id=ANSWER tabindex="-1" data-level=level_name(level)>
                <LevelMark level />
                <span class="lamp__word">{say.level_for(level, state.is_breeder_here())}</span>
            </h2>
            <p><strong>{seen}</strong></p>
            <ul class="first-aid__lines">{aid}</ul>
        </div>
        {note}
        <div class="rows">
            <WhatToSay lines level />
            {look}
            {card}
        </div>
    }
}

fn noting(state: AppState, sign: Sign, seen: String) -> impl IntoView {
    let say = state.language();
    let note = move |_| {
        note_what_went_in(state);
        state.note(Change::SignSeen { sign }, seen.clone());
    };
    let gone = move |_| {
        state.note(Change::SignGone { sign }, say.wrong_gone().to_owned());
    };
    view! {
        <div class="acts">
            {button(say.wrong_note(), note)}
            {button(say.wrong_gone(), gone)}
        </div>
    }
}

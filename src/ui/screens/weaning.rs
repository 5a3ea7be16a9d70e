//! Weaning: the answer first, then what it rests on, then what would bring a feed back.

use std::sync::Arc;

use leptos::prelude::*;

use crate::domain::homecoming::life_stage::LifeStage;
use crate::domain::journal::entries::Change;
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::Slot;
use crate::domain::weaning::facts::Answer;
use crate::domain::weaning::{Verdict, may_offer_drop};
use crate::ui::parts::page::Heading;
use crate::ui::state::AppState;

/// Weaning.
#[component]
pub fn WeaningScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let body = move || {
        state
            .outlook
            .get()
            .map(|outlook| view! { <WeaningBody outlook /> })
    };
    view! {
        <Heading text=say.weaning_title() />
        {body}
    }
}

/// A check's answer in attributes that the style sheet looks at.
const fn answer_name(answer: Answer) -> &'static str {
    match answer {
        Answer::Yes => "yes",
        Answer::No => "no",
        Answer::NotEnoughData => "unknown",
    }
}

/// One check: what was found, and whether it holds.
struct Line {
    answer: Answer,
    text: String,
    more: Option<String>,
}

fn list(lines: Vec<Line>) -> impl IntoView {
    let rows = lines.into_iter().map(|line| {
        let mark = match line.answer {
            Answer::Yes => "\u{2713}",
            Answer::No => "\u{2717}",
            Answer::NotEnoughData => "?",
        };
        view! {
            <li class="check" data-answer=answer_name(line.answer)>
                <span class="check__mark" aria-hidden="true">{mark}</span>
                <span>
                    {line.text}
                    {line.more.map(|more| view! { <span class="hint">{more}</span> })}
                </span>
            </li>
        }
    });
    view! { <ul class="checks">{rows.collect_view()}</ul> }
}

#[component]
fn WeaningBody(outlook: Arc<Outlook>) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let weaning = &outlook.weaning;
    // Who only follows a chick is told how it stands and not what to do.
    let is_with_me = state.is_with_me(outlook.chick.id);
    let next = weaning.next();
    let checks = weaning.checks.iter().filter_map(|check| {
        Some(Line {
            answer: check.answer,
            text: writing.weaning_check_line(check, next?),
            more: writing.weaning_check_change(check),
        })
    });
    let checks: Vec<Line> = checks.collect();
    // A mark means the same in both lists: what brings a feed back and is not seen stands well.
    let triggers = weaning.triggers.iter().map(|check| Line {
        answer: match check.answer {
            Answer::Yes => Answer::No,
            Answer::No => Answer::Yes,
            Answer::NotEnoughData => Answer::NotEnoughData,
        },
        text: writing.weaning_trigger_line(check),
        more: None,
    });
    let triggers: Vec<Line> = triggers.collect();
    let is_coming_back = matches!(weaning.verdict, Verdict::BringBack { .. });
    let has_checks = !checks.is_empty() && !is_coming_back;
    let has_triggers = !triggers.is_empty();
    let age = weaning
        .age
        .map(|note| writing.weaning_age_line(note, outlook.chick.plan.species));
    let order = (!weaning.order.is_empty() && !is_coming_back)
        .then(|| say.weaning_order_text(&weaning.order));
    view! {
        {is_with_me.then(|| view! {
            <p class="weaning__answer">{writing.weaning_answer(weaning)}</p>
            <Acts outlook=Arc::clone(&outlook) />
            {grown(&outlook)}
        })}
        {(weaning.verdict != Verdict::NothingToDrop).then(|| view! { <p>{writing.weaning_stage(&weaning.stage)}</p> })}
        {say.weaned_look_for(&weaning.stage).map(|advice| view! { <p>{advice}</p> })}
        {order.map(|order| view! { <p>{order}</p> })}
        {has_checks.then(|| view! {
            <section class="group">
                <h2>{say.weaning_checks_title()}</h2>
                {list(checks)}
            </section>
        })}
        {has_triggers.then(|| view! {
            <section class="group">
                <h2>{say.weaning_triggers_title()}</h2>
                {list(triggers)}
            </section>
        })}
        <p class="hint">{age} " " {say.weaning_age_caution()}</p>
        <BreederDecides outlook />
    }
}

/// Said by a person only: from then on nobody is reminded of the scale.
fn grown(outlook: &Outlook) -> Option<impl IntoView + use<>> {
    let say = AppState::here().language();
    let text = say.life_grown_act().to_owned();
    (outlook.stage == LifeStage::Weaned).then(|| view! { <Decide change=Change::Grown text /> })
}

/// What the answer offers: dropping the next feed, or offering one again.
#[component]
fn Acts(outlook: Arc<Outlook>) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let offered = outlook
        .weaning
        .next()
        .filter(|slot| may_offer_drop(&outlook.weaning, *slot));
    let drop = offered.map(|slot| {
        view! {
            <p class="hint">{say.weaning_drop_text()}</p>
            <Decide change=Change::FeedDropped { slot, by_breeder: false } text=say.weaning_drop_act(slot) />
        }
    });
    let back = if let Verdict::BringBack { slot, .. } = outlook.weaning.verdict {
        Some(slot)
    } else {
        None
    };
    let back = back.map(|slot| {
        view! {
            <p class="hint">{say.weaning_bring_back_text()}</p>
            <Decide change=Change::FeedBroughtBack { slot } text=say.weaning_bring_back_act(slot) />
        }
    });
    view! { {drop} {back} }
}

/// One big button that notes a decision.
#[component]
fn Decide(change: Change, text: String) -> impl IntoView {
    let state = AppState::here();
    let said = text.clone();
    let decide = move |_| {
        state.note(change.clone(), said.clone());
    };
    view! { <button type="button" class="button button--main" on:click=decide>{text}</button> }
}

/// The breeder's decision stands above the checks and is noted as such.
#[component]
fn BreederDecides(outlook: Arc<Outlook>) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let button = |change: Change, text: String| {
        let said = text.clone();
        let decide = move |_| {
            state.note(change.clone(), said.clone());
        };
        view! { <button type="button" class="button" on:click=decide>{text}</button> }
    };
    let drops = outlook.weaning.order.clone().into_iter().map(|slot: Slot| {
        button(
            Change::FeedDropped {
                slot,
                by_breeder: true,
            },
            say.weaning_drop_act(slot),
        )
    });
    let backs = outlook
        .weaning
        .dropped
        .clone()
        .into_iter()
        .map(|slot: Slot| {
            button(
                Change::FeedBroughtBack { slot },
                say.weaning_bring_back_act(slot),
            )
        });
    let buttons: Vec<_> = drops.chain(backs).collect();
    view! {
        <details class="group">
            <summary>{say.weaning_breeder_act()}</summary>
            <p>{say.weaning_breeder_text()}</p>
            <div class="acts">{buttons}</div>
        </details>
    }
}

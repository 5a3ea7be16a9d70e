//! What is left for the page to show before the app is there: the answer as it was, until when it is sure to
//! be the same, whom to call, and what to do first. It comes with [`Piece::Due`](crate::ui::pieces::Piece).

use std::sync::Arc;
use std::time::Duration;

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::domain::instruction::answer::Instruction;
use crate::domain::instruction::holds::Why;
use crate::domain::journal::signs::Sign;
use crate::domain::outlook::Outlook;
use crate::domain::time::moment::{CARE_DAY_STARTS, Moment};
use crate::domain::warnings::level::Level;
use crate::domain::warnings::whom_to_call::{Callee, is_practice_closed, whom_to_call};
use crate::store::glance_text::{Glance, GlanceCall};
use crate::ui::parts::call_card::tel_link;
use crate::ui::parts::level_mark::level_name;
use crate::ui::platform;
use crate::ui::state::AppState;
use crate::words::format::Writing;
use crate::words::now::sentences;
use crate::words::signs::sign as words_of;

/// What is shown first of all signs where none keeps food back now.
const SIGNS: [Sign; 3] = [Sign::LabouredBreathing, Sign::Cold, Sign::FedTooHot];

/// Screens work out everything anew each minute, so an answer is the same for so long.
const SURE_SECONDS: i64 = 60;

/// What was noted comes first: the time ahead is looked at when it is kept, a little later.
const LOOKED_AHEAD_AFTER: Duration = Duration::from_millis(300);

/// Leaves the answer of now at once, and how long it holds as soon as that is worked out.
pub fn leave_a_glance(state: AppState) {
    let is_mine = |outlook: &Arc<Outlook>| state.is_with_me(outlook.chick.id);
    let outlook = state.outlook.get_untracked().filter(is_mine);
    let Some(outlook) = outlook.filter(|_| !state.is_demo.get_untracked()) else {
        return;
    };
    let until = outlook.now.plus_seconds(SURE_SECONDS);
    write(state, &outlook, until);
    if !outlook.instruction.forbids() {
        let noted = entries_noted(state);
        let look = move || spawn_local(look_ahead(state, outlook, noted));
        set_timeout(look, LOOKED_AHEAD_AFTER);
    }
}

/// When the page is looked away from, the answer may be another than at the last act.
pub fn leave_a_glance_when_left(state: AppState) {
    let leave = move |_: web_sys::Event| {
        let until = state.program.get_value().glance_until.get_untracked();
        let is_over = until.is_none_or(|until| until < state.now.get_untracked());
        if document().hidden() && is_over {
            leave_a_glance(state);
        }
    };
    // It listens as long as the page lives.
    drop(window_event_listener_untyped("visibilitychange", leave));
}

fn write(state: AppState, outlook: &Outlook, until: Moment) {
    state.program.get_value().glance_until.set(Some(until));
    let glance = glance(state, outlook, until);
    state.copies.remember_glance(&glance.to_text());
}

fn entries_noted(state: AppState) -> usize {
    let journal = state.journal;
    journal.with_untracked(|journal| journal.entries().len())
}

/// Goes ahead in time until the answer is another, unless more than `noted` entries are there by then.
async fn look_ahead(state: AppState, outlook: Arc<Outlook>, noted: usize) {
    let chick = outlook.chick.id;
    let is_over = || entries_noted(state) != noted || state.chick.get_untracked() != Some(chick);
    let mut until = outlook.now.plus_seconds(SURE_SECONDS);
    for at in outlook.moments_ahead() {
        platform::next_task().await;
        if is_over() {
            return;
        }
        let then = state.zone.with_untracked(|zone| outlook.at(at, zone));
        if !outlook.answers_as(&then) {
            break;
        }
        until = at.max(until);
    }
    write(state, &outlook, until);
}

fn glance(state: AppState, outlook: &Outlook, until: Moment) -> Glance {
    let writing = state.writing_now();
    let say = writing.language;
    let is_waiting = matches!(
        outlook.instruction,
        Instruction::WaitUntil {
            why: Why::NotYetDue,
            ..
        }
    );
    let next = outlook.next_feed.as_ref();
    let weight = outlook.weight.latest.as_ref().map(|latest| {
        let weight = writing.mass(latest.what.weight);
        let when = writing.lived(latest.lived());
        format!("{}: {weight}, {when}", say.weigh_field())
    });
    let is_closed = is_practice_closed(outlook.lived);
    let level = outlook.level.max(Level::VetToday);
    let plan = &outlook.chick.plan;
    let callees = whom_to_call(level, plan, state.is_breeder_here(), is_closed);
    Glance {
        as_of: writing.as_of(outlook.lived),
        name: plan.name.clone(),
        at: outlook.now,
        until: (!outlook.instruction.forbids()).then_some(until),
        due: next
            .filter(|_| is_waiting && !outlook.is_call_next())
            .map(|feed| feed.due),
        level: (level_name(outlook.level), say.level(outlook.level)),
        answer: answer(writing, outlook),
        known: weight.into_iter().collect(),
        aid: aid(writing, outlook),
        calls: callees
            .into_iter()
            .map(|callee| {
                let (who, name, number) = match callee {
                    Callee::Contact(of) => (say.call_role(of.role), of.name, of.number),
                    Callee::Owner { name, number } => (say.call_owner(), name, number),
                };
                GlanceCall {
                    who: who.to_owned(),
                    link: tel_link(&number),
                    number: format!("{name} {number}"),
                }
            })
            .collect(),
    }
}

/// The answer of the first screen, without what needs the rest of that screen.
fn answer(writing: Writing, outlook: &Outlook) -> Vec<String> {
    let say = writing.language;
    let next = outlook.next_feed.as_ref().map(|feed| {
        let time = feed.due.lived(outlook.offset).time;
        (
            writing.feed_at(feed.slot, time),
            writing.volume(feed.volume),
        )
    });
    let mut lines = Vec::new();
    let is_held = outlook.instruction.forbids();
    if outlook.is_call_next() && !is_held {
        lines.extend(sentences(say.call_now(outlook.level)));
        lines.push(say.now_call_then_feed().to_owned());
    }
    match outlook.instruction {
        Instruction::Feed { volume, .. } => {
            let is_night = outlook.lived.time < CARE_DAY_STARTS;
            lines.extend(next.map(|(feed, _)| feed));
            lines.push(writing.volume(volume));
            let condition = if is_night {
                say.night_only()
            } else {
                say.now_condition()
            };
            lines.push(condition.to_owned());
        }
        Instruction::WaitUntil {
            why: Why::NotYetDue,
            ..
        } => {
            if let Some((feed, volume)) = next {
                lines.push(feed);
                lines.push(format!("{volume}. {}", say.now_nothing_before()));
            }
        }
        Instruction::DoNotFeed { why, .. } | Instruction::AskFirst { why, .. } => {
            let title = writing.instruction_title(outlook).unwrap_or_default();
            lines.extend(sentences(&title));
            lines.push(format!("{}.", writing.held_why(why)));
        }
        Instruction::WaitUntil { .. } | Instruction::First(_) | Instruction::Nothing(_) => {
            lines.extend(writing.instruction_title(outlook));
        }
    }
    lines
}

/// What to do first: about what keeps food back, else about what is seen most of what cannot wait.
fn aid(writing: Writing, outlook: &Outlook) -> Vec<(String, String)> {
    match outlook.instruction {
        Instruction::DoNotFeed { why, .. } | Instruction::AskFirst { why, .. } => {
            let lines = writing.first_aid(why).into_iter();
            lines.map(|line| (String::new(), line)).collect()
        }
        Instruction::Feed { .. }
        | Instruction::WaitUntil { .. }
        | Instruction::First(_)
        | Instruction::Nothing(_) => {
            let lines = SIGNS.map(|sign| {
                let words = words_of(writing.language, sign);
                let act = format!("{} {}", words.first, words.avoid);
                (format!("{}.", words.seen), act)
            });
            lines.to_vec()
        }
    }
}

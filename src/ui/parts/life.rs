//! Who cares for a chick, the questions about where it is, and what stands on its page when it is not
//! with the holder of this phone.

use std::sync::Arc;

use leptos::ev::MouseEvent;
use leptos::prelude::*;

use crate::domain::homecoming::life_stage::{LifeStage, Reminder, is_drinking_asked};
use crate::domain::homecoming::reports::report_due;
use crate::domain::journal::chick::HandedOver;
use crate::domain::journal::entries::{Carer, Change, ChickId, Journal};
use crate::domain::outlook::{Night, Outlook};
use crate::domain::time::moment::Moment;
use crate::share::placed::{Placed, placed_state};
use crate::store::setting::Setting;
use crate::ui::clock;
use crate::ui::parts::button::{button, main_button};
use crate::ui::parts::choice::Choice;
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::parts::level_mark::LevelMark;
use crate::ui::parts::live::on_change;
use crate::ui::parts::role_asked::role_asked;
use crate::ui::parts::when::{When, WhenText};
use crate::ui::photo::forget_photos;
use crate::ui::route::Route;
use crate::ui::state::AppState;

/// Minutes until a question that was answered with "not yet" is asked again: a day.
const ASKED_AGAIN_MINUTES: i64 = 1_440;

const CARERS: [Carer; 4] = [Carer::Owner, Carer::Breeder, Carer::Sitter, Carer::Clinic];

/// Whether the chick on screen is with the holder of this phone.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WithMe {
    /// Yes: this phone cares for it.
    Yes,
    /// No: this phone follows it.
    Followed,
    /// Not for some days.
    Away,
    /// It died.
    Died,
}

/// Where the chick on screen is; follows.
pub fn with_me(state: AppState) -> Memo<WithMe> {
    Memo::new(move |_| {
        let is_dead = state
            .outlook
            .get()
            .is_some_and(|outlook| outlook.stage == LifeStage::Died);
        let is_in = |setting| {
            let id = state.chick.get();
            let is_in = id.is_some_and(|id| state.of_phone.at(setting, id).is_some());
            is_in && !state.is_demo.get()
        };
        if is_dead {
            WithMe::Died
        } else if is_in(Setting::Followed) {
            WithMe::Followed
        } else if is_in(Setting::Away) {
            WithMe::Away
        } else {
            WithMe::Yes
        }
    })
}

/// A question that is asked on the first screen until it is answered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Question {
    Role,
    Home,
    Left,
    Back,
    Same,
    Drinking,
}

impl Question {
    /// Whether the morning is early enough: not for who holds the phone, nor for whether the chick is home.
    const fn can_wait(self) -> bool {
        match self {
            Self::Role | Self::Home => false,
            Self::Left | Self::Back | Self::Same | Self::Drinking => true,
        }
    }
}

/// The questions about the chick on screen, above everything else but a call; at night what can wait is not asked.
/// They stay as they are while the minutes pass, so that nothing half typed is lost.
#[component]
pub fn LifeQuestions(
    /// Where the chick is.
    with_me: Memo<WithMe>,
    /// The night without anything to do, while it is shown.
    night: Memo<Option<Night>>,
    /// Whether these are the ones below what to do.
    #[prop(optional)]
    is_below: bool,
) -> impl IntoView {
    let state = AppState::here();
    let asked = Memo::new(move |_| {
        let with_me = with_me.get();
        let is_after_call = with_me == WithMe::Yes && is_calling(state);
        let is_night = night.with(Option::is_some);
        let asked = asked(state, with_me).filter(|_| is_after_call == is_below);
        asked.filter(|(_, question)| !is_night || !question.can_wait())
    });
    move || {
        let (id, question) = asked.get()?;
        Some(match question {
            Question::Role => role_asked(state, id).into_any(),
            Question::Home => home(state, id).into_any(),
            Question::Left => left(state, id).into_any(),
            Question::Back => back(state, id).into_any(),
            Question::Same => same(state, id).into_any(),
            Question::Drinking => drinking(state, id).into_any(),
        })
    }
}

/// Whether somebody is to be called about the chick on screen: that comes before any question.
fn is_calling(state: AppState) -> bool {
    let outlook = state.outlook.get();
    outlook.is_some_and(|outlook| outlook.level.is_call() || outlook.instruction.forbids())
}

/// The most urgent open question.
fn asked(state: AppState, with_me: WithMe) -> Option<(ChickId, Question)> {
    let outlook = state.outlook.get()?;
    let (chick, now) = (&outlook.chick, outlook.now);
    // By the clock itself: the outlook is of the minute's start, and a question may have been asked since.
    let is_due = |setting| {
        let from = state.of_phone.at(setting, chick.id);
        from.is_some_and(|from| from <= clock::now())
    };
    let question = match with_me {
        WithMe::Died | WithMe::Followed => return None,
        WithMe::Away => is_due(Setting::Away).then_some(Question::Back)?,
        WithMe::Yes => {
            // Who is on the way is asked there.
            let is_on_the_way = outlook.transit.is_some_and(|way| way.has_left);
            let is_home_asked = chick.arrived.is_none()
                && !is_on_the_way
                && is_due(Setting::AskHome)
                && outlook.stage.reminds(Reminder::Homecoming);
            if is_due(Setting::AskRole) {
                Question::Role
            } else if is_home_asked {
                Question::Home
            } else if handed(state, &outlook).is_some() {
                Question::Left
            } else if is_due(Setting::AskSame) {
                Question::Same
            } else {
                let zone = state.zone;
                let is_asked = zone.with(|zone| is_drinking_asked(now, chick, zone));
                is_asked.then_some(Question::Drinking)?
            }
        }
    };
    Some((chick.id, question))
}

/// The handing over noted on this phone that is not answered yet; one that was taken back asks nothing.
fn handed(state: AppState, outlook: &Outlook) -> Option<HandedOver> {
    let at = state.of_phone.at(Setting::Leaving, outlook.chick.id)?;
    let handed = outlook.chick.handed_over.iter();
    handed
        .rev()
        .find(|handed| handed.at == at)
        .map(|handed| handed.what.clone())
}

fn later() -> Moment {
    clock::now().plus_minutes(ASKED_AGAIN_MINUTES)
}

fn named(state: AppState, id: ChickId, pattern: &str) -> String {
    state.writing_now().about(pattern, &state.name_of(id))
}

fn home(state: AppState, id: ChickId) -> impl IntoView {
    let say = state.language();
    let when = WhenText::now(state);
    let yes = move |_| {
        let Some(at) = when.moment(state) else { return };
        match state.dispatch_at(at, Change::Arrived) {
            Ok(noted) => {
                state.set_of_phone(Setting::AskHome, id, None);
                state.say(say.entry_arrived().to_owned(), vec![noted]);
            }
            Err(refusal) => when.say_fault(say.refusal(&refusal)),
        }
    };
    let not_yet = move |_| state.set_of_phone(Setting::AskHome, id, Some(later()));
    view! {
        <section class="question" data-ask="home">
            <h2>{named(state, id, say.life_home())}</h2>
            <When when />
            <div class="acts">
                {main_button(say.life_home_yes(), yes)}
                {button(say.life_home_not_yet(), not_yet)}
            </div>
        </section>
    }
}

fn left(state: AppState, id: ChickId) -> impl IntoView {
    let say = state.language();
    let yes = move |_| {
        let outlook = state.outlook.get_untracked();
        let handed = outlook.and_then(|outlook| untrack(|| handed(state, &outlook)));
        match handed.map(|handed| handed.to) {
            Some(Carer::Owner | Carer::Breeder) => {
                state.set_of_phone(Setting::Followed, id, Some(clock::now()));
            }
            Some(Carer::Sitter | Carer::Clinic) => {
                state.set_of_phone(Setting::Away, id, Some(later()));
            }
            None => {}
        }
        state.set_of_phone(Setting::Leaving, id, None);
    };
    let no = move |_| {
        let at = state.of_phone.at_untracked(Setting::Leaving, id);
        let outlook = state.outlook.get_untracked();
        let entry = outlook.and_then(|outlook| {
            let mut handed = outlook.chick.handed_over.iter();
            handed
                .find(|handed| Some(handed.at) == at)
                .map(|handed| handed.id)
        });
        state.set_of_phone(Setting::Leaving, id, None);
        if let Some(entry) = entry {
            state.take_back(&[entry]);
        }
    };
    view! {
        <section class="question" data-ask="left">
            <h2>{named(state, id, say.life_left())}</h2>
            <p class="hint">{say.life_left_hint()}</p>
            <div class="acts">
                {main_button(say.life_left_yes(), yes)}
                {button(say.life_left_no(), no)}
            </div>
        </section>
    }
}

fn back(state: AppState, id: ChickId) -> impl IntoView {
    let say = state.language();
    view! {
        <section class="question" data-ask="back">
            <h2>{named(state, id, say.life_back())}</h2>
            <div class="acts">
                {main_button(say.life_back_yes(), move |_| is_back(state, id))}
                {button(say.life_home_not_yet(), move |_| {
                    state.set_of_phone(Setting::Away, id, Some(later()));
                })}
            </div>
        </section>
    }
}

fn is_back(state: AppState, id: ChickId) {
    state.set_of_phone(Setting::Away, id, None);
}

fn same(state: AppState, id: ChickId) -> impl IntoView {
    let say = state.language();
    let answered = move || state.set_of_phone(Setting::AskSame, id, None);
    let others = state.typed_chicks().into_iter();
    let others = others.filter(|typed| *typed != id);
    let others = others.map(|typed| {
        let join = move |_| {
            let said = say.entry_same_chick().to_owned();
            let card = id;
            if state.note(Change::SameChick { typed, card }, said) {
                answered();
            }
        };
        button(named(state, typed, say.life_same_as()), join)
    });
    view! {
        <section class="question" data-ask="same">
            <h2>{named(state, id, say.life_same())}</h2>
            <p class="hint">{say.life_same_hint()}</p>
            <div class="acts">
                {others.collect_view()}
                {button(say.life_same_no(), move |_| answered())}
            </div>
        </section>
    }
}

fn drinking(state: AppState, id: ChickId) -> impl IntoView {
    let say = state.language();
    let yes = move |_| {
        state.note(Change::DrinkingSeen, say.entry_drinking().to_owned());
    };
    view! {
        <section class="question" data-ask="drinking">
            <h2>{named(state, id, say.life_drinking())}</h2>
            <p class="hint">{say.life_drinking_hint()}</p>
            <div class="acts">{button(say.life_drinking_yes(), yes)}</div>
        </section>
    }
}

/// What stands on the first screen of a chick that is not with the holder of this phone.
pub fn not_with_me(with_me: WithMe, outlook: &Arc<Outlook>) -> Option<AnyView> {
    let state = AppState::here();
    match with_me {
        WithMe::Yes => None,
        WithMe::Died => Some(died(state, outlook).into_any()),
        WithMe::Away => Some(away(state, outlook).into_any()),
        WithMe::Followed => Some(followed(state, outlook).into_any()),
    }
}

fn died(state: AppState, outlook: &Outlook) -> impl IntoView + use<> {
    let say = state.language();
    let name = &outlook.chick.plan.name;
    view! {
        <section class="group" data-life="died">
            <p>{state.writing_now().about(say.life_died(), name)}</p>
            <p class="hint">{say.life_died_hint()}</p>
            <div class="acts">
                <a class="button" href=Route::Handover.to_hash()>{say.life_send_record()}</a>
            </div>
        </section>
    }
}

fn away(state: AppState, outlook: &Outlook) -> impl IntoView + use<> {
    let say = state.language();
    let (id, name) = (outlook.chick.id, &outlook.chick.plan.name);
    view! {
        <section class="group" data-life="away">
            <p>{state.writing_now().about(say.life_paused(), name)}</p>
            <p class="hint">{say.life_paused_hint()}</p>
            <div class="acts">
                {button(say.life_back_yes(), move |_| is_back(state, id))}
                <a class="button" href=Route::Handover.to_hash()>{say.life_send_record()}</a>
            </div>
        </section>
    }
}

/// State at the last report, days of silence, plan, and the way to remarks of one's own.
fn followed(state: AppState, outlook: &Arc<Outlook>) -> impl IntoView + use<> {
    let writing = state.writing_now();
    let say = writing.language;
    let chick = &outlook.chick;
    let now = state.now.get_untracked();
    let heard = state.journal.with_untracked(|journal| {
        crate::domain::homecoming::reports::last_heard(now, journal, chick.id)
    });
    let placed = Placed {
        outlook: outlook.as_ref().clone(),
        followed: Some(heard),
    };
    let shown = placed_state(now, &placed);
    let mark = shown.level_now().map(|level| view! { <LevelMark level /> });
    let days = heard.map(|heard| now.minutes_since(heard).max(0) / 1_440);
    let due = report_due(chick, outlook.stage, heard)
        .map(|due| writing.report_due(due.lived(outlook.offset)));
    let figures = writing.figures(outlook).into_iter();
    let figures = figures.map(|(label, value)| view! { <li>{label} ": " {value}</li> });
    view! {
        <section class="group" data-life="followed">
            <p class="hint">{writing.about(say.life_followed(), &chick.plan.name)}</p>
            <h2>{mark} " " {writing.placed_state(shown)}</h2>
            <p>{writing.quiet_days(days)} ". " {due}</p>
            <p class="hint">{say.life_followed_hint()}</p>
            <ul class="plain-list">{figures.collect_view()}</ul>
            <div class="acts">
                <a class="button" href=Route::Import.to_hash()>{say.handover_take_in()}</a>
                <a class="button" href=Route::Journal.to_hash()>{say.journal_note()}</a>
                <a class="button" href=Route::Plan.to_hash()>{say.life_plan_of()}</a>
            </div>
        </section>
    }
}

/// Acts about the chick on screen that must not happen with one tap: role, handing over, death, removal.
#[component]
pub fn ThisChick() -> impl IntoView {
    let state = AppState::here();
    move || {
        let id = state.chick.get().filter(|_| !state.is_demo.get())?;
        let say = state.language();
        let is_alive = state
            .outlook
            .get_untracked()
            .is_none_or(|outlook| outlook.stage != LifeStage::Died);
        let alive = is_alive
            .then(|| view! { {role(state, id)} {handing_over(state, id)} {death(state, id)} });
        let remove = move |_| {
            state.set_removed(id, true);
            state.notice.set(None);
        };
        Some(view! {
            <section class="group">
                <h2>{state.name_of(id)}</h2>
                {alive}
                {spelled_out(
                    named(state, id, say.life_remove()),
                    named(state, id, say.life_remove_sure()),
                    say.life_remove_act().to_owned(),
                    remove,
                )}
            </section>
        })
    }
}

/// An act behind a fold that says what it does.
fn spelled_out(
    title: String,
    text: String,
    act: String,
    done: impl FnMut(MouseEvent) + 'static,
) -> impl IntoView {
    view! {
        <details class="group">
            <summary>{title}</summary>
            <p>{text}</p>
            <div class="acts">{button(act, done)}</div>
        </details>
    }
}

fn role(state: AppState, id: ChickId) -> impl IntoView {
    let say = state.language();
    let is_followed = state.of_phone.at_untracked(Setting::Followed, id).is_some();
    let chosen = RwSignal::new(Some(usize::from(is_followed)));
    on_change(
        move || chosen.get(),
        move |chosen| {
            let at = (chosen == Some(1)).then(clock::now);
            state.set_of_phone(Setting::Followed, id, at);
        },
    );
    let options = vec![say.life_role_carer(), say.life_role_follower()];
    view! { <Choice legend=say.life_role() name="role" options chosen /> }
}

fn handing_over(state: AppState, id: ChickId) -> impl IntoView {
    let say = state.language();
    let chosen = RwSignal::new(None::<usize>);
    let (name, fault) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let hand = move |_| {
        let to = chosen.get_untracked();
        let Some(to) = to.and_then(|index| CARERS.get(index).copied()) else {
            return fault.set(say.fault_choose().to_owned());
        };
        let (now, name) = (clock::now(), name.get_untracked().trim().to_owned());
        let change = Change::HandedOver { to, name };
        match state.dispatch_at(now, change) {
            Ok(entry) => {
                state.set_of_phone(Setting::Leaving, id, Some(now));
                state.say(say.handed_to(to).to_owned(), vec![entry]);
                state.go(Route::Now);
            }
            Err(refusal) => state.say_refusal(&refusal),
        }
    };
    let options = CARERS.map(|to| say.carer(to)).to_vec();
    view! {
        <details class="group">
            <summary>{named(state, id, say.life_hand())}</summary>
            <Choice legend=say.life_hand_to() name="hand-to" options chosen fault />
            <Field id="hand-name" label=say.life_hand_name() kind=FieldKind::Text text=name hint=say.optional() />
            <div class="acts">{button(say.life_hand_act(), hand)}</div>
        </details>
    }
}

fn death(state: AppState, id: ChickId) -> impl IntoView {
    let say = state.language();
    let note = move |_| {
        if state.note(Change::Died, say.entry_died().to_owned()) {
            state.go(Route::Now);
        }
    };
    spelled_out(
        say.life_died_act().to_owned(),
        named(state, id, say.life_died_sure()),
        named(state, id, say.life_died_note()),
        note,
    )
}

/// The chicks removed from this phone, each with the way back.
#[component]
pub fn RemovedChicks() -> impl IntoView {
    let state = AppState::here();
    move || {
        let say = state.language();
        let here = state.journal.with(Journal::chicks);
        let mut removed = state.of_phone.chicks(Setting::Removed);
        removed.retain(|id| here.contains(id));
        if removed.is_empty() || state.is_demo.get() {
            return None;
        }
        let buttons = removed.into_iter().map(|id| {
            let again = move |_| {
                state.set_removed(id, false);
                state.show_chick(id);
            };
            view! {
                <div class="acts">{button(named(state, id, say.life_show_again()), again)}</div>
                {erasing(state, id)}
            }
        });
        Some(view! {
            <section class="group" data-life="removed">
                <h2>{say.life_removed()}</h2>
                <p class="hint">{say.life_removed_hint()}</p>
                {buttons.collect_view()}
            </section>
        })
    }
}

/// The act that erases a removed chick: what goes is said, and its name is typed.
fn erasing(state: AppState, id: ChickId) -> impl IntoView {
    let say = state.language();
    let (name, fault) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let erase = move |_| {
        let typed = name.get_untracked();
        if typed.trim() == named(state, id, "{name}") {
            state.erase_chick(id, forget_photos);
        } else {
            fault.set(say.life_erase_wrong().to_owned());
        }
    };
    view! {
        <details class="group" data-erase="true">
            <summary>{named(state, id, say.life_erase())}</summary>
            <p>{named(state, id, say.life_erase_sure())}</p>
            <Field
                id="erase-name"
                label=named(state, id, say.life_erase_name())
                kind=FieldKind::Text
                text=name
                fault=fault
            />
            <div class="acts">{button(say.life_erase_act(), erase)}</div>
        </details>
    }
}

//! Weaning: the answer first, then the path with the bird where it stands, then what would bring a feed back.

use std::sync::Arc;

use leptos::prelude::*;

use crate::domain::homecoming::life_stage::LifeStage;
use crate::domain::journal::chick::WeaningStep;
use crate::domain::journal::entries::{Change, CropState};
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::{Role, Slot};
use crate::domain::quantity::order::{sorted, sorted_by};
use crate::domain::time::moment::Day;
use crate::domain::weaning::facts::Answer;
use crate::domain::weaning::stage::Stage;
use crate::domain::weaning::{Verdict, may_offer_drop};
use crate::ui::parts::bird::Bird;
use crate::ui::parts::button::{button, main_button};
use crate::ui::parts::call_card::tel_link;
use crate::ui::parts::live::live;
use crate::ui::parts::page::Heading;
use crate::ui::route::Route;
use crate::ui::state::AppState;
use crate::words::weaning::path::{Far, how_far};

/// Weaning.
#[component]
pub fn WeaningScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    // What is open stays open: only what changes the judgement draws the screen anew.
    let outlook = Memo::new_with_compare(
        move |_| state.outlook.get(),
        |before: Option<&Option<Arc<Outlook>>>, now| seen(before) != seen(now),
    );
    let body = live(move || {
        outlook
            .get()
            .map(|outlook| view! { <WeaningBody outlook /> })
    });
    let pressed = live(move || {
        let outlook = outlook.get()?;
        state
            .is_with_me(outlook.chick.id)
            .then(|| acts(&outlook))
            .flatten()
    });
    view! {
        <div class="scroll weaning">
            <div class="only-read"><Heading text=say.weaning_title() /></div>
            {body}
        </div>
        {pressed}
    }
}

/// What of an outlook is on this screen.
fn seen(outlook: Option<&Option<Arc<Outlook>>>) -> Option<impl PartialEq + use<'_>> {
    let outlook = outlook?.as_ref()?;
    let now = outlook.lived.day;
    Some((&outlook.weaning, &outlook.chick, outlook.stage, now))
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
    let age = weaning
        .age
        .map(|note| writing.weaning_age_line(note, outlook.chick.plan.species));
    view! {
        {is_with_me.then(|| view! {
            {answer(&writing.weaning_answer(weaning, state.ask_before_drop(&outlook)), &weaning.verdict)}
            {joy(&outlook)}
            {hint(&outlook)}
            {grown(&outlook)}
        })}
        {(weaning.verdict != Verdict::NothingToDrop).then(|| view! { <p class="hint">{writing.weaning_stage(&weaning.stage)}</p> })}
        {say.weaned_look_for(&weaning.stage).map(|advice| view! { <p>{advice}</p> })}
        {path(&outlook)}
        {back(&outlook)}
        <p class="hint">{age} " " {say.weaning_age_caution()}</p>
        <BreederDecides outlook=Arc::clone(&outlook) />
    }
}

/// The answer; a short "Not yet." stands out before its reason.
fn answer(said: &str, verdict: &Verdict) -> impl IntoView + use<> {
    let is_not_yet = matches!(verdict, Verdict::NotYet { .. });
    let cut = said.find(". ").filter(|_| is_not_yet);
    let (short, reason) = cut.map_or(("", said), |cut| said.split_at(cut + 1));
    let (short, reason) = (short.to_owned(), reason.to_owned());
    view! { <p class="weaning__answer"><strong>{short}</strong>{reason}</p> }
}

/// The line for the last feed given up, while the chick is not yet called weaned.
fn joy(outlook: &Outlook) -> Option<impl IntoView + use<>> {
    let writing = AppState::here().writing_now();
    let Stage::NoFormula { .. } = outlook.weaning.stage else {
        return None;
    };
    let home = home(outlook)?;
    let feeds = outlook.chick.feeds.iter();
    let feeds = feeds.filter(|feed| feed.what.outcome.is_food()).count();
    let days = outlook.lived.day.since(home);
    let said = writing.eats_by_itself(&writing.name_of(&outlook.chick), days, feeds);
    Some(view! { <p class="weaning__joy">{said}</p> })
}

/// The day on which it came home.
fn home(outlook: &Outlook) -> Option<Day> {
    let arrived = outlook.chick.arrived.as_ref();
    let handed = outlook.chick.plan.reference.map(|handed| handed.day);
    arrived.map(|arrived| arrived.lived().day).or(handed)
}

/// Said by a person only: from then on nobody is reminded of the scale.
fn grown(outlook: &Outlook) -> Option<impl IntoView + use<>> {
    let say = AppState::here().language();
    let text = say.life_grown_act().to_owned();
    (outlook.stage == LifeStage::Weaned)
        .then(|| view! { <Decide change=Change::Grown text is_main=false /> })
}

/// Where a step of the path lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Place {
    Done,
    Now,
    Ahead,
}

impl Place {
    const fn name(self) -> &'static str {
        match self {
            Self::Done => "done",
            Self::Now => "now",
            Self::Ahead => "ahead",
        }
    }
}

/// A step of the path that is no card.
fn step(place: Place, title: String, more: String) -> AnyView {
    view! {
        <li class="step" data-place=place.name()>
            <span class="step__mark" aria-hidden="true"></span>
            <span>
                <strong>{title}</strong>
                <span class="hint step__more">{more}</span>
            </span>
        </li>
    }
    .into_any()
}

/// The steps of weaning, the bird where it stands.
fn path(outlook: &Outlook) -> impl IntoView + use<> {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    let weaning = &outlook.weaning;
    let home = home(outlook);
    let began = home
        .map(|home| writing.home_since(home))
        .unwrap_or_default();
    let all = outlook.chick.plan.feeds.len();
    let mut steps = Vec::new();
    if !weaning.dropped.is_empty() {
        steps.push(step(Place::Done, say.feeds_a_day(all), began.clone()));
    }
    for slot in &weaning.dropped {
        let day = dropped_on(outlook, *slot);
        let more = day
            .map(|day| writing.given_up_on(day, home))
            .unwrap_or_default();
        steps.push(step(Place::Done, say.feed_given_up(*slot), more));
    }
    if weaning.order.is_empty() {
        steps.push(step(
            Place::Now,
            say.path_weaned().to_owned(),
            String::new(),
        ));
    } else {
        steps.push(card(outlook));
    }
    let earliest = match &weaning.verdict {
        Verdict::NotYet { earliest_day, .. } => *earliest_day,
        Verdict::MayDrop(_) | Verdict::BringBack { .. } | Verdict::NothingToDrop => None,
    };
    let last = weaning.order.len().saturating_sub(1);
    for (place, slot) in weaning.order.iter().enumerate() {
        let title = if place == 0 && place != last {
            say.feed_goes_next(*slot)
        } else {
            say.feed_goes_later(*slot, place == last)
        };
        let more = earliest.filter(|_| place == 0);
        let more = more.map(|day| writing.earliest_on(day)).unwrap_or_default();
        steps.push(step(Place::Ahead, title, more));
    }
    if !weaning.order.is_empty() {
        let more = say.path_weaned_hint().to_owned();
        steps.push(step(Place::Ahead, say.path_weaned().to_owned(), more));
    }
    view! { <ol class="steps" aria-label=say.path_title()>{steps}</ol> }
}

/// On which day a feed was dropped last.
fn dropped_on(outlook: &Outlook, wanted: Slot) -> Option<Day> {
    let mut steps = outlook.chick.weaning.iter().rev();
    let found = steps.find(|step| match step.what {
        WeaningStep::Dropped { slot, .. } => slot == wanted && step.at <= outlook.now,
        WeaningStep::BroughtBack { .. } => false,
    });
    found.map(|step| step.lived().day)
}

/// Where the chick stands: its feeds, what is missing to the next step, what is counted how.
fn card(outlook: &Outlook) -> AnyView {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    let weaning = &outlook.weaning;
    // In the order of the day, not of their going.
    let slots = sorted(weaning.order.clone());
    let names: Vec<&str> = slots.into_iter().map(|slot| say.slot(slot)).collect();
    let is_coming_back = matches!(weaning.verdict, Verdict::BringBack { .. });
    let next = weaning.next().filter(|_| !is_coming_back);
    let mut checks: Vec<(Far, String)> = Vec::new();
    let mut lines = Vec::new();
    for check in &weaning.checks {
        let Some(next) = next else { break };
        checks.push((
            how_far(check),
            say.weaning_check_name(check.criterion, next),
        ));
        lines.push(Line {
            answer: check.answer,
            text: writing.weaning_check_line(check, next),
            more: writing.weaning_check_change(check),
        });
    }
    // What is missing stands first.
    let is_met = |(far, _): &(Far, String)| *far == Far::Holds;
    let checks = sorted_by(checks, |one, other| is_met(one).cmp(&is_met(other)));
    let rows = checks.into_iter().map(|(far, name)| {
        let (mark, answer) = match far {
            Far::Holds => ("\u{2713}".to_owned(), "yes"),
            Far::Of(count) => (count, "count"),
            Far::NotYet => ("\u{2013}".to_owned(), "count"),
        };
        view! {
            <li class="need" data-answer=answer>
                <span class="need__mark">{mark}</span>
                <span>{name}</span>
            </li>
        }
    });
    let all = (!lines.is_empty()).then(|| {
        view! {
            <details class="fold">
                <summary>{say.path_all_checks()}</summary>
                <p class="hint">{say.weaning_checks_title()}</p>
                {list(lines)}
            </details>
        }
    });
    let is_ready = matches!(weaning.verdict, Verdict::MayDrop(_));
    view! {
        <li class="step" data-place="now">
            <span class="step__bird"><Bird crop=CropState::Flat /></span>
            <div class="step__card" data-ready=is_ready.to_string()>
                <h2>{say.feeds_a_day(weaning.order.len())}</h2>
                <p class="hint">{names.join(", ")}</p>
                <ul class="needs">{rows.collect_view()}</ul>
                {all}
            </div>
        </li>
    }
    .into_any()
}

/// What would bring a feed back: quiet while nothing of it is seen.
fn back(outlook: &Outlook) -> Option<AnyView> {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    let weaning = &outlook.weaning;
    if weaning.triggers.is_empty() {
        return None;
    }
    let is_any = weaning
        .triggers
        .iter()
        .any(|check| check.answer == Answer::Yes);
    // A mark means the same in every list: what brings a feed back and is not seen stands well.
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
    Some(if is_any {
        view! {
            <section class="group">
                <h2>{say.weaning_triggers_title()}</h2>
                {list(triggers)}
            </section>
        }
        .into_any()
    } else {
        view! {
            <section class="stays">
                <h2>
                    <span class="check__mark" aria-hidden="true">"\u{2713}"</span>
                    {say.path_stays()}
                </h2>
                <p>{say.path_none_seen()} ". " {say.path_comes_back()}</p>
                {list(triggers)}
            </section>
        }
        .into_any()
    })
}

/// What an offer means, beside the answer.
fn hint(outlook: &Outlook) -> Option<impl IntoView + use<>> {
    let say = AppState::here().language();
    let text = match outlook.weaning.verdict {
        Verdict::MayDrop(_) if AppState::here().ask_before_drop(outlook).is_some() => {
            say.weaning_ask_text()
        }
        Verdict::MayDrop(_) => say.weaning_drop_text(),
        Verdict::BringBack { .. } => say.weaning_bring_back_text(),
        Verdict::NotYet { .. } | Verdict::NothingToDrop => return None,
    };
    Some(view! { <p class="hint">{text}</p> })
}

/// What the answer offers, under the thumb: dropping the next feed, or offering one again.
fn acts(outlook: &Outlook) -> Option<AnyView> {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    if let Some(name) = AppState::here().ask_before_drop(outlook) {
        let breeder = outlook.chick.plan.contact(Role::Breeder);
        let word = writing.ask_breeder(name);
        let to = breeder.map_or_else(
            || Route::Handover.to_hash(),
            |breeder| tel_link(&breeder.number),
        );
        let ask =
            view! { <div class="dock"><a class="button button--main" href=to>{word}</a></div> };
        return Some(ask.into_any());
    }
    let offered = outlook
        .weaning
        .next()
        .filter(|slot| may_offer_drop(&outlook.weaning, *slot));
    let drop = offered.map(|slot| {
        let by_breeder = false;
        let change = Change::FeedDropped { slot, by_breeder };
        (change, say.weaning_drop_act(slot))
    });
    let back = if let Verdict::BringBack { slot, .. } = outlook.weaning.verdict {
        let change = Change::FeedBroughtBack { slot };
        Some((change, say.weaning_bring_back_act(slot)))
    } else {
        None
    };
    let (change, text) = drop.or(back)?;
    Some(view! { <div class="dock"><Decide change text is_main=true /></div> }.into_any())
}

/// A button that notes a decision.
#[component]
fn Decide(change: Change, text: String, is_main: bool) -> impl IntoView {
    let state = AppState::here();
    let said = text.clone();
    let decide = move |_| {
        state.note(change.clone(), said.clone());
    };
    if is_main {
        main_button(text, decide)
    } else {
        button(text, decide)
    }
}

/// The breeder's decision stands above the checks and is noted as such.
#[component]
fn BreederDecides(outlook: Arc<Outlook>) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let noting = |change: Change, text: String| {
        let said = text.clone();
        let decide = move |_| {
            state.note(change.clone(), said.clone());
        };
        button(text, decide)
    };
    let drops = outlook.weaning.order.clone().into_iter().map(|slot: Slot| {
        noting(
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
            noting(
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

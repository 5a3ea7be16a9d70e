//! The one answer to "may I feed now", and the ways on from it.

use leptos::prelude::*;

use crate::domain::feeding::scheduled::{FeedState, ScheduledFeed};
use crate::domain::feeding::volume::draws as draw_list;
use crate::domain::instruction::answer::{Instruction, Nothing};
use crate::domain::instruction::first::First;
use crate::domain::instruction::holds::{Demand, Hold, Why};
use crate::domain::instruction::lifting::{advice_in_force, may_be_gone};
use crate::domain::journal::entries::{Change, Response};
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::Tool;
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::CARE_DAY_STARTS;
use crate::domain::warnings::level::{Level, RuleId};
use crate::ui::parts::advice_form::AdviceForm;
use crate::ui::parts::button::button;
use crate::ui::parts::call_card::{WhatToSay, call_buttons};
use crate::ui::parts::lamp::Lamp;
use crate::ui::parts::level_mark::{LevelMark, level_name};
use crate::ui::parts::live::live;
use crate::ui::parts::questions::given_or_still_to_give;
use crate::ui::route::Route;
use crate::ui::state::AppState;
use crate::words::call::what_to_say;
use crate::words::now::sentences;

/// The answer and its reason; what is to be pressed stands in the [`dock`], or here where that holds the calls.
pub fn instruction_card(outlook: &Outlook, is_asking: RwSignal<bool>) -> AnyView {
    let say = AppState::here().language();
    let next = outlook.next_feed.as_ref();
    let advice = advice(outlook);
    let acts = outlook.is_call_next().then(|| {
        let (_, acts) = ways(outlook, is_asking, false)?;
        Some(view! { <div class="acts">{acts}</div> }.into_any())
    });
    let acts = acts.flatten();
    let card = match (outlook.instruction, next) {
        (Instruction::First(First::LookAtCrop), Some(next)) => {
            next_feed(outlook, next, Some(say.first_crop()), acts).into_any()
        }
        (Instruction::First(First::Settle), Some(next)) => {
            next_feed(outlook, next, Some(say.first(First::Settle)), acts).into_any()
        }
        (Instruction::First(First::Weigh), Some(next)) => {
            next_feed(outlook, next, Some(say.now_weigh_first()), acts).into_any()
        }
        (
            Instruction::Feed { .. }
            | Instruction::WaitUntil {
                why: Why::NotYetDue,
                ..
            },
            Some(next),
        ) => next_feed(outlook, next, None, acts).into_any(),
        (Instruction::Nothing(Nothing::NotKnown), _) => not_known(outlook).into_any(),
        (Instruction::Nothing(Nothing::NoFeed | Nothing::Away), _) | (_, None) => view! {
            <section class="next-feed">
                <p class="next-feed__detail">{say.no_feed(outlook.stage)}</p>
            </section>
        }
        .into_any(),
        (
            Instruction::WaitUntil { .. }
            | Instruction::First(_)
            | Instruction::AskFirst { .. }
            | Instruction::DoNotFeed { .. },
            Some(_),
        ) => held(outlook, acts).into_any(),
    };
    view! { {card} {advice} }.into_any()
}

/// Nobody has said when and how much: whom to ask, and where to type it.
fn not_known(outlook: &Outlook) -> impl IntoView + use<> {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    let calls = (!outlook.is_call_next())
        .then(|| call_buttons(Level::CallBreeder, Some(&outlook.chick.plan)));
    view! {
        <section class="next-feed" data-state="held" data-unknown="true" aria-label=say.now_next()>
            <h2 class="next-feed__held">{writing.instruction_title(outlook)}</h2>
            {calls}
            <a class="button" href=Route::Plan.to_hash()>{say.now_type_amounts()}</a>
        </section>
    }
}

/// What is offered now, as far as the answer allows it.
fn volume_now(outlook: &Outlook, feed: &ScheduledFeed) -> Millilitres {
    match outlook.instruction {
        Instruction::Feed { volume, .. } => volume,
        Instruction::WaitUntil { .. }
        | Instruction::First(_)
        | Instruction::AskFirst { .. }
        | Instruction::DoNotFeed { .. }
        | Instruction::Nothing(_) => feed.volume,
    }
}

/// The next feed with its countdown and what is to be done before it, by a lamp that is lit when it may be given.
/// After a call neither lamp nor countdown: `acts` are the ways to it.
fn next_feed(
    outlook: &Outlook,
    feed: &ScheduledFeed,
    lead: Option<&'static str>,
    acts: Option<AnyView>,
) -> impl IntoView + use<> {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let due = feed.due;
    let of_clock = feed.clone();
    let countdown = Memo::new(move |_| writing.countdown(of_clock.minutes_to_go(state.now.get())));
    let countdown = live(move || spaced(&countdown.get()));
    let time = state.zone.with_untracked(|zone| zone.lived(due)).time;
    let is_due = feed.is_due(outlook.now);
    let volume = volume_now(outlook, feed);
    let state_name = match feed.state {
        FeedState::Due => "due",
        FeedState::Late => "late",
        FeedState::TryAgain(_) if is_due => "due",
        FeedState::Upcoming | FeedState::TryAgain(_) => "upcoming",
        FeedState::Unanswered
        | FeedState::PutOff
        | FeedState::OnTheWay
        | FeedState::LeftOut(_)
        | FeedState::Refused(_)
        | FeedState::Done(_) => "done",
    };
    let again = matches!(feed.state, FeedState::TryAgain(_));
    let again =
        again.then(|| view! { <p class="hint" data-again="true">{say.now_try_again()}</p> });
    let question = given_or_still_to_give(outlook, feed);
    let lead = lead.or_else(|| outlook.is_to_be_weighed().then(|| say.now_weigh_first()));
    let is_night = outlook.lived.time < CARE_DAY_STARTS && is_due;
    let is_after_call = outlook.is_call_next();
    let solids = Some(say.now_solids_in_reach()).filter(|_| !outlook.chick.plan.solids.is_empty());
    let (detail, condition) = match (is_due, is_night) {
        (true, true) => (
            writing.volume_in_draws(volume, &draws(outlook, volume)),
            Some(say.night_only()),
        ),
        (true, false) => (
            writing.volume_in_draws(volume, &draws(outlook, volume)),
            Some(say.now_condition()),
        ),
        (false, _) => (
            format!(
                "{}. {} {}",
                writing.volume(volume),
                say.now_nothing_before(),
                solids.unwrap_or_default()
            ),
            outlook.is_left_to_sleep().then(|| say.night_sleep()),
        ),
    };
    // A lame chick is for the vet and hungry all the same.
    let planned = match (is_after_call, outlook.level.is_call()) {
        (true, _) => Some(view! { <p><strong>{say.now_call_then_feed()}</strong></p> }.into_any()),
        (false, true) => Some(view! { <p class="hint">{say.now_as_planned()}</p> }.into_any()),
        (false, false) => None,
    };
    let (before, after) = if is_after_call {
        (planned, None)
    } else {
        (None, planned)
    };
    let hanging = (!is_after_call).then(|| {
        view! {
            <Lamp is_lit=is_due />
        }
    });
    let countdown =
        (!is_after_call).then(|| view! { <p class="next-feed__countdown">{countdown}</p> });
    let is_lit = is_due && !is_after_call;
    view! {
        <section class="next-feed" data-state=state_name data-lit=is_lit.to_string() aria-label=say.now_next()>
            {hanging}
            <h2 class="next-feed__name">{writing.feed_at(feed.slot, time)}</h2>
            {countdown}
            <p class="next-feed__detail">{detail}</p>
            {before}
            {again}
            {question}
            {lead.map(|lead| view! { <p class="next-feed__lead"><strong>{lead}</strong></p> })}
            {condition.map(|condition| view! { <p class="next-feed__condition">{condition}</p> })}
            {after}
            {acts}
        </section>
    }
}

/// Numbers large, units half as large; words without a number all large.
fn spaced(text: &str) -> impl IntoView + use<> {
    let is_number = |part: &str| part.starts_with(|first: char| first.is_ascii_digit());
    let has_number = is_number(text);
    let parts = text.split([' ', '\u{a0}']).enumerate();
    let parts = parts.map(|(index, part)| {
        let space = if index == 0 { "" } else { "\u{a0}" };
        view! { <span class:unit=has_number && !is_number(part)>{space} {part.to_owned()}</span> }
    });
    parts.collect_view()
}

fn draws(outlook: &Outlook, volume: Millilitres) -> Vec<i32> {
    let plan = &outlook.chick.plan;
    if plan.tool != Tool::Syringe || plan.syringe.tenths() == 0 {
        return Vec::new();
    }
    draw_list(volume.tenths(), plan.syringe.tenths())
}

/// What the thumb presses: the calls where one comes first, else the ways to feed and to note it.
pub fn dock(outlook: &Outlook, is_asking: RwSignal<bool>) -> AnyView {
    if outlook.instruction.forbids() || outlook.is_call_next() {
        let calls = call_buttons(outlook.level, Some(&outlook.chick.plan));
        return view! { <div class="dock dock--calls">{calls}</div> }.into_any();
    }
    ways(outlook, is_asking, true).map_or_else(
        || ().into_any(),
        |(is_two, acts)| view! { <div class="dock" class:dock--two=is_two>{acts}</div> }.into_any(),
    )
}

/// The ways to feed and to note it, as far as the answer leaves them, and whether they take two rows. The first of them
/// is filled where `is_main` and it is the next act.
fn ways(outlook: &Outlook, is_asking: RwSignal<bool>, is_main: bool) -> Option<(bool, AnyView)> {
    let say = AppState::here().language();
    let feed = outlook.next_feed.as_ref()?;
    let is_due = feed.is_due(outlook.now);
    let main = move |route: Route, word| {
        view! { <a class="button dock__whole" class:button--main=is_main href=route.to_hash()>{word}</a> }
    };
    Some(match outlook.instruction {
        Instruction::Feed { .. } | Instruction::First(First::LookAtCrop) if is_due => {
            let act = main(Route::Guide, say.now_feed_steps());
            (true, view! { {act} {noting(outlook, feed)} }.into_any())
        }
        Instruction::First(First::Weigh) => {
            let log = Route::Log(is_due.then_some(feed.slot)).to_hash();
            let acts = view! {
                {main(Route::Weigh, say.first_weigh())}
                <a class="button" href=log>{say.now_log_feed()}</a>
                <a class="button" href=Route::Guide.to_hash()>{say.now_feed()}</a>
            };
            (true, acts.into_any())
        }
        Instruction::Feed { .. }
        | Instruction::First(First::LookAtCrop)
        | Instruction::WaitUntil {
            why: Why::NotYetDue,
            ..
        } => (false, before_its_time(outlook, feed, is_asking).into_any()),
        Instruction::WaitUntil { .. } | Instruction::First(_) => {
            let of_crop = outlook
                .holds
                .iter()
                .any(|hold| hold.is_against_food() && is_of_crop(hold));
            let look = of_crop.then(|| view! { <a class="button" href=Route::Crop.to_hash()>{say.guide_look_again()}</a> });
            let acts = view! {
                <a class="button" href=Route::Log(None).to_hash()>{say.now_log_feed()}</a>
                {look}
            };
            (false, acts.into_any())
        }
        Instruction::AskFirst { .. } | Instruction::DoNotFeed { .. } | Instruction::Nothing(_) => {
            return None;
        }
    })
}

/// The plan's amount with one tap, and the way to any other.
fn noting(outlook: &Outlook, feed: &ScheduledFeed) -> impl IntoView + use<> {
    let state = AppState::here();
    let writing = state.writing_now();
    let (slot, volume) = (feed.slot, volume_now(outlook, feed));
    let given = move |_| {
        let change = Change::Fed {
            counts_as: Some(slot),
            taken: volume,
            offered: volume,
            served_at: None,
            response: Response::NotNoted,
        };
        state.note(change, writing.feed_noted(Some(slot), volume));
    };
    view! {
        {button(writing.amount_given(volume), given)}
        <a class="button" href=Route::Log(Some(slot)).to_hash()>{writing.language.now_other_amount()}</a>
    }
}

/// Before its time a feed is asked about first.
fn before_its_time(
    outlook: &Outlook,
    feed: &ScheduledFeed,
    is_asking: RwSignal<bool>,
) -> impl IntoView + use<> {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let time = state.zone.with_untracked(|zone| zone.lived(feed.due)).time;
    let wait = writing.minutes(feed.due.minutes_since(outlook.now));
    let asked = writing.before_its_time(feed.slot, time, &wait);
    let question = live(move || {
        is_asking.get().then(|| {
            view! { <p class="dock__whole" role="alert">{asked.clone()}</p> }
        })
    });
    let acts = live(move || {
        if is_asking.get() {
            view! {
                <a class="button" href=Route::Guide.to_hash()>{say.now_all_the_same()}</a>
                {button(say.now_not_yet(), move |_| is_asking.set(false))}
            }
            .into_any()
        } else {
            view! {
                <a class="button" href=Route::Log(None).to_hash()>{say.now_log_feed()}</a>
                {button(say.now_feed(), move |_| is_asking.set(true))}
            }
            .into_any()
        }
    });
    view! { {question} {acts} }
}

/// What keeps food back without a call: no countdown, no way to feed.
fn held(outlook: &Outlook, acts: Option<AnyView>) -> impl IntoView + use<> {
    let state = AppState::here();
    let against: Vec<Hold> = outlook
        .holds
        .iter()
        .filter(|hold| hold.is_against_food())
        .copied()
        .collect();
    let title = state.writing_now().instruction_title(outlook);
    view! {
        <section class="next-feed" data-state="held" aria-label=state.language().now_next()>
            <h2 class="next-feed__held">{title}</h2>
            {hold_list(&against)}
            {acts}
        </section>
    }
}

/// Each sentence in a part of its own.
pub fn lines_of_title(title: &str) -> impl IntoView + use<> {
    let lines = sentences(title).into_iter();
    let lines = lines.map(|line| view! { <span>{line}</span> " " });
    lines.collect_view()
}

/// Do not feed: level, act and reason in one card, then what to do until somebody answers, with the calls in the
/// [`dock`]. Nothing else stands here.
pub fn alarm(outlook: &Outlook) -> impl IntoView + use<> {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let (why, is_call_again) = match outlook.instruction {
        Instruction::AskFirst {
            why, is_call_again, ..
        }
        | Instruction::DoNotFeed {
            why, is_call_again, ..
        } => (why, is_call_again),
        Instruction::Feed { .. }
        | Instruction::WaitUntil { .. }
        | Instruction::First(_)
        | Instruction::Nothing(_) => return ().into_any(),
    };
    let level = outlook.level;
    let title = writing.instruction_title(outlook).unwrap_or_default();
    let is_first = |hold: &&Hold| hold.why == why;
    let first = outlook.holds.iter().find(is_first).copied();
    let others = outlook
        .holds
        .iter()
        .filter(|hold| hold.is_against_food() && hold.why != why);
    let others: Vec<Hold> = others.copied().collect();
    let aid = writing
        .first_aid(why)
        .into_iter()
        .map(|line| view! { <li>{line}</li> });
    let until = if level >= Level::VetToday {
        say.now_until_answer()
    } else {
        say.now_until_breeder()
    };
    let again = is_call_again.then(|| view! { <p><strong>{say.held_again()}</strong></p> });
    let others = (!others.is_empty()).then(|| {
        view! {
            <details class="group">
                <summary>{say.held_others()} " (" {others.len()} ")"</summary>
                {hold_list(&others)}
            </details>
        }
    });
    let is_of_crop = outlook
        .holds
        .iter()
        .any(|hold| hold.is_against_food() && is_of_crop(hold));
    view! {
        <section class="next-feed alarm" data-state="held" data-level=level_name(level) aria-label=say.now_next()>
            <p class="lamp" data-level=level_name(level)>
                <LevelMark level />
                <span class="lamp__word">{say.level(level)}</span>
            </p>
            <h2 class="next-feed__held">{lines_of_title(&title)}</h2>
            <p>{writing.held_why(why)} "."</p>
            {again}
        </section>
        <section class="first-aid">
            <h2>{until}</h2>
            <ul class="first-aid__lines">{aid.collect_view()}</ul>
            {first.map(|hold| is_it_gone(&hold))}
        </section>
        {others}
        <div class="rows">
            <WhatToSay lines=what_to_say(writing, outlook) level />
            <AdviceForm />
            <a class="row" href=Route::Log(None).to_hash()>{say.now_log_feed()}</a>
            {is_of_crop.then(|| view! { <a class="row" href=Route::Crop.to_hash()>{say.guide_look_again()}</a> })}
        </div>
    }
    .into_any()
}

/// Whether a look at the crop may end it.
fn is_of_crop(hold: &Hold) -> bool {
    match hold.why {
        Why::FoodInCrop | Why::FedLately | Why::First(First::LookAtCrop | First::Warm) => true,
        Why::Found(finding) => matches!(
            finding.rule,
            RuleId::CropOvernight | RuleId::CropLate | RuleId::CropStatic | RuleId::CropSlow
        ),
        Why::Sign(_) | Why::Said(_) | Why::FoodCameBack | Why::NotYetDue | Why::First(_) => false,
    }
}

/// Everything that keeps food back, each with its reason and what to do.
pub fn hold_list(holds: &[Hold]) -> impl IntoView + use<> {
    let writing = AppState::here().writing_now();
    let items: Vec<_> = holds
        .iter()
        .map(|hold| {
            view! {
                <li class="guard" data-level=level_name(hold.level)>
                    <LevelMark level=hold.level />
                    <span>
                        <strong>{writing.held_why(hold.why)} ". "</strong>
                        {writing.held_act(hold.why)}
                        {is_it_gone(hold)}
                    </span>
                </li>
            }
        })
        .collect();
    view! { <ul class="plain-list">{items}</ul> }
}

/// The answers to whether a sign is still there: where it may be seen to be gone, and after long both.
fn is_it_gone(hold: &Hold) -> impl IntoView + use<> {
    let (sign, is_old) = match (hold.why, hold.demand) {
        (_, Demand::First(First::IsItGone(sign))) => (sign, true),
        (Why::Sign(sign), _) if may_be_gone(sign) => (sign, false),
        _ => return ().into_any(),
    };
    let state = AppState::here();
    let say = state.language();
    let gone = move |_| {
        state.note(Change::SignGone { sign }, say.wrong_gone().to_owned());
    };
    let still = move |_| {
        state.note(Change::SignSeen { sign }, say.held_still().to_owned());
    };
    view! {
        <span class="acts">
            {button(say.held_gone(), gone)}
            {is_old.then(|| button(say.held_still(), still))}
        </span>
    }
    .into_any()
}

/// What the breeder or a vet said, as long as it holds.
fn advice(outlook: &Outlook) -> impl IntoView + use<> {
    let writing = AppState::here().writing_now();
    let advice = advice_in_force(outlook.now, &outlook.chick);
    advice.map(
        |advice| view! { <p class="hint" data-advice="true">{writing.advice_line(advice)}</p> },
    )
}

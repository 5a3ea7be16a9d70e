//! The one answer to "may I feed now", and the ways on from it.

use leptos::prelude::*;

use crate::domain::feeding::scheduled::{FeedState, ScheduledFeed};
use crate::domain::feeding::volume::draws as draw_list;
use crate::domain::instruction::answer::Instruction;
use crate::domain::instruction::first::First;
use crate::domain::instruction::holds::{Demand, Hold, Why};
use crate::domain::instruction::lifting::{advice_in_force, may_be_gone};
use crate::domain::journal::entries::Change;
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::Tool;
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::CARE_DAY_STARTS;
use crate::domain::warnings::level::RuleId;
use crate::ui::parts::advice_form::AdviceForm;
use crate::ui::parts::call_card::call_buttons;
use crate::ui::parts::level_mark::{LevelMark, level_name};
use crate::ui::parts::questions::given_or_still_to_give;
use crate::ui::route::Route;
use crate::ui::state::AppState;
use crate::words::format::Writing;

/// The answer, its reason, and what can be done about it.
pub fn instruction_card(outlook: &Outlook) -> AnyView {
    let say = AppState::here().language();
    let next = outlook.next_feed.as_ref();
    let advice = advice(outlook);
    let card = match (outlook.instruction, next) {
        (Instruction::Feed { .. }, Some(next)) => {
            let act = Some((Route::Guide, say.now_feed()));
            next_feed(outlook, next, None, act, true).into_any()
        }
        (
            Instruction::WaitUntil {
                why: Why::NotYetDue,
                ..
            },
            Some(next),
        ) => {
            let act = Some((Route::Guide, say.now_feed()));
            next_feed(outlook, next, None, act, false).into_any()
        }
        (Instruction::First(First::LookAtCrop), Some(next)) => {
            let act = Some((Route::Guide, say.now_feed()));
            next_feed(outlook, next, Some(say.first_crop()), act, true).into_any()
        }
        (Instruction::First(First::Weigh), Some(next)) => {
            let act = Some((Route::Weigh, say.first_weigh()));
            next_feed(outlook, next, None, act, true).into_any()
        }
        (Instruction::First(First::Settle), Some(next)) => {
            let lead = Some(say.first(First::Settle));
            next_feed(outlook, next, lead, None, false).into_any()
        }
        (Instruction::Nothing(_), _) | (_, None) => {
            view! { <section class="next-feed"><p>{say.no_feed(outlook.stage)}</p></section> }
                .into_any()
        }
        (
            Instruction::WaitUntil { .. }
            | Instruction::First(_)
            | Instruction::AskFirst { .. }
            | Instruction::DoNotFeed { .. },
            Some(_),
        ) => held(outlook).into_any(),
    };
    view! { {card} {advice} }.into_any()
}

/// The next feed with its countdown, what is to be done before it, and the two ways to have it done.
fn next_feed(
    outlook: &Outlook,
    feed: &ScheduledFeed,
    lead: Option<&'static str>,
    act: Option<(Route, &'static str)>,
    is_filled: bool,
) -> impl IntoView + use<> {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let due = feed.due;
    let of_clock = feed.clone();
    let countdown = move || writing.countdown(of_clock.minutes_to_go(state.now.get()));
    let time = state.zone.with_untracked(|zone| zone.lived(due)).time;
    let volume = match outlook.instruction {
        Instruction::Feed { volume, .. } => volume,
        Instruction::WaitUntil { .. }
        | Instruction::First(_)
        | Instruction::AskFirst { .. }
        | Instruction::DoNotFeed { .. }
        | Instruction::Nothing(_) => feed.volume,
    };
    let detail = format!(
        "{} · {}{}",
        writing.time(time),
        writing.volume(volume),
        draws(outlook, volume, writing)
    );
    let state_name = match feed.state {
        FeedState::Due => "due",
        FeedState::Late => "late",
        FeedState::TryAgain(_) if feed.is_due(outlook.now) => "due",
        FeedState::Upcoming | FeedState::TryAgain(_) => "upcoming",
        FeedState::Unanswered
        | FeedState::PutOff
        | FeedState::OnTheWay
        | FeedState::LeftOut(_)
        | FeedState::Refused(_)
        | FeedState::Done(_) => "done",
    };
    // What is due is logged as itself, also where its time alone would tell another feed.
    let logged = feed.is_due(outlook.now).then_some(feed.slot);
    let again = matches!(feed.state, FeedState::TryAgain(_));
    let again =
        again.then(|| view! { <p class="hint" data-again="true">{say.now_try_again()}</p> });
    let question = given_or_still_to_give(outlook, feed);
    let is_night = outlook.lived.time < CARE_DAY_STARTS && feed.is_due(outlook.now);
    let night = if is_night {
        Some(say.night_only())
    } else {
        outlook.is_left_to_sleep().then(|| say.night_sleep())
    };
    let night = night.map(|night| view! { <p><strong>{night}</strong></p> });
    let is_other = act.is_some_and(|(route, _)| route != Route::Guide);
    let act = act.map(|(route, word)| {
        view! { <a class="button" class:button--main=is_filled href=route.to_hash()>{word}</a> }
    });
    view! {
        <section class="next-feed" data-state=state_name aria-label=say.now_next()>
            <h2 class="next-feed__name">{say.feed(feed.slot)}</h2>
            <p class="next-feed__countdown">{countdown}</p>
            <p class="next-feed__detail">{detail}</p>
            {again}
            {question}
            {lead.map(|lead| view! { <p class="next-feed__lead"><strong>{lead}</strong></p> })}
            {night}
            <div class="next-feed__acts">
                <a class="button" href=Route::Log(logged).to_hash()>{say.now_log()}</a>
                {is_other.then(|| view! { <a class="button" href=Route::Guide.to_hash()>{say.now_feed()}</a> })}
                {act}
            </div>
        </section>
    }
}

fn draws(outlook: &Outlook, volume: Millilitres, writing: Writing) -> String {
    let plan = &outlook.chick.plan;
    if plan.tool != Tool::Syringe || plan.syringe.tenths() == 0 {
        return String::new();
    }
    let list = draw_list(volume.tenths(), plan.syringe.tenths());
    format!(" · {}", writing.draws(&list))
}

/// What keeps food back: no countdown, no way to feed.
fn held(outlook: &Outlook) -> impl IntoView + use<> {
    let state = AppState::here();
    let say = state.language();
    // Where the level calls by itself, the buttons stand above.
    let level = outlook.level;
    let call = outlook.instruction.call();
    let call = call.filter(|call| !level.is_call() || *call > level);
    let calls = call.map(|call| call_buttons(call, Some(&outlook.chick.plan)));
    let again = match outlook.instruction {
        Instruction::AskFirst { is_call_again, .. }
        | Instruction::DoNotFeed { is_call_again, .. } => is_call_again,
        Instruction::Feed { .. }
        | Instruction::WaitUntil { .. }
        | Instruction::First(_)
        | Instruction::Nothing(_) => false,
    };
    let again = again.then(|| view! { <p><strong>{say.held_again()}</strong></p> });
    let against: Vec<Hold> = outlook
        .holds
        .iter()
        .filter(|hold| hold.is_against_food())
        .copied()
        .collect();
    let is_of_crop = against.iter().any(is_of_crop);
    // What forbids stands right under the level.
    let is_forbidden = outlook.instruction.forbids();
    let title = (!is_forbidden).then(|| {
        let title = state.writing_now().instruction_title(outlook);
        view! { <h2 class="next-feed__held">{title}</h2> }
    });
    view! {
        <section class="next-feed" data-state="held" aria-label=say.now_next()>
            {title}
            {again}
            {calls}
            {hold_list(&against)}
            <div class="next-feed__acts">
                <a class="button" href=Route::Log(None).to_hash()>{say.now_log()}</a>
                {is_of_crop.then(|| view! { <a class="button" href=Route::Crop.to_hash()>{say.guide_look_again()}</a> })}
            </div>
        </section>
        {is_forbidden.then(|| view! { <AdviceForm /> })}
    }
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
            <button type="button" class="button" on:click=gone>{say.held_gone()}</button>
            {is_old.then(|| view! { <button type="button" class="button" on:click=still>{say.held_still()}</button> })}
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

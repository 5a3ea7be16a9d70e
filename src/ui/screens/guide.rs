//! One feed, one step a screen: what to see, one big button, and Stop always in the same place.

use leptos::prelude::*;

use crate::domain::feeding::food::feed_to_give;
use crate::domain::formula::serving_heat::Serving;
use crate::domain::instruction::answer::{Instruction, Nothing};
use crate::domain::instruction::feed_session::{FeedSession, Step};
use crate::domain::instruction::holds::Hold;
use crate::domain::outlook::Outlook;
use crate::domain::time::moment::Moment;
use crate::domain::warnings::level::Level;
use crate::ui::parts::button::{button, main_button};
use crate::ui::parts::call_card::call_buttons;
use crate::ui::parts::instruction_card::lines_of_title;
use crate::ui::parts::live::live;
use crate::ui::parts::page::{Heading, Page};
use crate::ui::route::Route;
use crate::ui::screens::guide::crop_step::CropStep;
use crate::ui::screens::guide::dock::GuideDock;
use crate::ui::screens::guide::give_steps::{
    AfterStep, DrawUpStep, GiveStep, HoldStep, ResponseStep,
};
use crate::ui::screens::guide::guarded::guarded;
use crate::ui::screens::guide::mix_step::MixStep;
use crate::ui::screens::guide::stop::StopSheet;
use crate::ui::screens::guide::under_way::Feed;
use crate::ui::screens::guide::warmth_step::WarmthStep;
use crate::ui::state::AppState;
use crate::ui::{clock, platform};
use crate::words::rules::finding_title;

pub mod crop_step;
pub mod dock;
pub mod give_steps;
pub mod guarded;
pub mod mix_step;
pub mod stop;
pub mod under_way;
pub mod warmth_step;

/// The feed guide: the feed that was under way, else the next one.
#[component]
pub fn GuideScreen() -> impl IntoView {
    let state = AppState::here();
    let now = clock::now();
    let Some(outlook) = state.outlook.get_untracked() else {
        return ().into_any();
    };
    let kept = under_way_now(now, &outlook).map(|mut guide| {
        guide.offer_anew(&outlook.plan_of_feed(guide.slot));
        guide
    });
    let guide = kept.or_else(|| {
        let next = outlook.next_feed.as_ref()?;
        let zone = state.zone;
        let slot = zone.with_untracked(|zone| feed_to_give(now, next, &outlook.chick, zone));
        Some(FeedSession::begin(
            now,
            outlook.chick.id,
            &outlook.plan_of_feed(slot),
            slot,
        ))
    });
    let Some(guide) = guide else {
        return nothing_to_feed(&outlook);
    };
    let feed = Feed {
        state,
        guide: RwSignal::new(guide),
        counted: RwSignal::new(Vec::new()),
        is_stopping: RwSignal::new(false),
        is_weighed_later: RwSignal::new(false),
        is_called_later: RwSignal::new(false),
        serving: Serving::of(outlook.chick.plan.serve_from, outlook.chick.plan.serve_to),
    };
    state.notice.set(None);
    platform::keep_screen_on();
    let slot = feed.guide.with_untracked(|guide| guide.slot);
    let plan = StoredValue::new(outlook.plan_of_feed(slot));
    let step = Memo::new(move |_| feed.guide.with(|guide| guide.step));
    let holds = Memo::new(move |_| {
        let outlook = state.outlook.get();
        outlook.map_or_else(Vec::new, |outlook| {
            feed.guide.with(|guide| guide.holds(&outlook.holds))
        })
    });
    let is_to_be_measured = Memo::new(move |_| {
        feed.guide
            .with(|guide| guide.is_to_be_measured(state.now.get(), feed.serving))
    });
    let call = call_to_make(&feed, step, holds);
    let is_to_be_weighed = Memo::new(move |_| {
        let due = |outlook: &Outlook| outlook.is_to_be_weighed();
        let is_due = state
            .outlook
            .with(|outlook| outlook.as_deref().is_some_and(due));
        is_due && step.get() == Step::Crop && !feed.is_weighed_later.get()
    });
    let body = live(move || {
        if feed.is_stopping.get() {
            return view! { <StopSheet feed /> }.into_any();
        }
        let holds = holds.get();
        if !holds.is_empty() {
            return view! {
                            <div class="scroll guide__step">
            {guarded(&holds)}
                            </div>
            <GuideDock feed>
                                <p class="hint guide__beside">{state.language().caution_short()}</p>
                            </GuideDock>
                        }
            .into_any();
        }
        if let Some(level) = call.get() {
            return view! { <CallFirst feed level /> }.into_any();
        }
        if is_to_be_weighed.get() {
            return view! { <WeighFirst feed /> }.into_any();
        }
        if is_to_be_measured.get() {
            return view! { <MeasureAgain feed /> }.into_any();
        }
        let (syringe, tool) = plan.with_value(|plan| (plan.syringe, plan.tool));
        match step.get() {
            Step::Crop => view! { {before_its_time(state)} <CropStep feed /> }.into_any(),
            Step::Mix => view! { <MixStep feed plan /> }.into_any(),
            Step::Warmth => view! { <WarmthStep feed /> }.into_any(),
            Step::DrawUp => view! { <DrawUpStep feed syringe tool /> }.into_any(),
            Step::Hold => view! { <HoldStep feed /> }.into_any(),
            Step::Response => view! { <ResponseStep feed /> }.into_any(),
            Step::Give => view! { <GiveStep feed syringe /> }.into_any(),
            Step::After => view! { <AfterStep feed /> }.into_any(),
        }
    });
    view! { <div class="guide"><GuideHead feed step call is_to_be_weighed /> {body}</div> }
        .into_any()
}

/// Why no feed can begin.
fn nothing_to_feed(outlook: &Outlook) -> AnyView {
    let say = AppState::here().language();
    let why = match outlook.instruction {
        Instruction::Nothing(Nothing::NotKnown) => say.now_not_known(),
        Instruction::Nothing(Nothing::NoFeed | Nothing::Away)
        | Instruction::Feed { .. }
        | Instruction::WaitUntil { .. }
        | Instruction::First(_)
        | Instruction::AskFirst { .. }
        | Instruction::DoNotFeed { .. } => say.no_feed(outlook.stage),
    };
    view! { <Page title=say.now_next() back=Route::Now><p>{why}</p></Page> }.into_any()
}

/// The level of the call that comes before the first step, unless it was passed by.
fn call_to_make(feed: &Feed, step: Memo<Step>, holds: Memo<Vec<Hold>>) -> Memo<Option<Level>> {
    let feed = *feed;
    Memo::new(move |_| {
        let outlook = feed.state.outlook.get()?;
        let is_next = outlook.is_call_next()
            && step.get() == Step::Crop
            && !feed.is_called_later.get()
            && holds.with(Vec::is_empty);
        is_next.then_some(outlook.level)
    })
}

/// Says when the next feed is due, where that is not yet.
fn before_its_time(state: AppState) -> impl IntoView {
    let writing = state.writing_now();
    move || {
        let outlook = state.outlook.get()?;
        let next = outlook.next_feed.as_ref()?;
        let wait = next.due.minutes_since(outlook.now);
        let due = state.zone.with(|zone| zone.lived(next.due)).time;
        (!next.is_due(outlook.now)).then(|| {
            let said = writing.before_its_time(next.slot, due, &writing.minutes(wait));
            view! { <p class="hint" data-early="true"><strong>{said}</strong></p> }
        })
    }
}

/// The cup was measured too long ago to be given.
#[component]
fn MeasureAgain(feed: Feed) -> impl IntoView {
    let say = feed.state.language();
    let slot = feed.guide.with_untracked(|guide| guide.slot);
    view! {
            <div class="scroll guide__step">
    <div class="question" role="alert">
                <p>{say.guide_heat_old()}</p>
                <a class="button" href=Route::Log(Some(slot)).to_hash()>{say.guide_given_already()}</a>
            </div>
            </div>
    <GuideDock feed>
                {main_button(say.guide_heat_again(), move |_| feed.measure_again())}
            </GuideDock>
        }
}

/// The call before the feed: that is offered once it was read.
#[component]
fn CallFirst(feed: Feed, level: Level) -> impl IntoView {
    let state = feed.state;
    let say = state.language();
    let outlook = state.outlook.get_untracked();
    let plan = outlook.as_ref().map(|outlook| outlook.chick.plan.clone());
    let why = outlook
        .as_ref()
        .and_then(|outlook| outlook.findings.first());
    let why = why.map(|finding| finding_title(state.writing_now(), finding));
    let later = move |_| {
        feed.is_called_later.set(true);
        request_animation_frame(platform::focus_heading);
    };
    view! {
        <div class="scroll guide__step" data-call-first="true">
            <p class="guide__lead">{lines_of_title(say.call_now(level))}</p>
            <p class="hint">{why}</p>
            <p>{say.now_call_then_feed()}</p>
        </div>
        <GuideDock feed>
            {call_buttons(level, plan.as_ref())}
            <button type="button" class="button" on:click=later>{say.guide_call_later()}</button>
        </GuideDock>
    }
}

/// The scale before the first feed of the day: only then is the crop empty.
#[component]
fn WeighFirst(feed: Feed) -> impl IntoView {
    let say = feed.state.language();
    let later = move |_| {
        feed.is_weighed_later.set(true);
        request_animation_frame(platform::focus_heading);
    };
    view! {
            <div class="scroll guide__step">
    <p class="guide__lead">{say.guide_weigh_lead()}</p>
            {button(say.guide_weigh_later(), later)}
            </div>
    <GuideDock feed>
                {main_button(say.now_weigh(), move |_| feed.weigh())}
            </GuideDock>
        }
}

/// Which feed and step this is, with the way back.
#[component]
fn GuideHead(
    feed: Feed,
    step: Memo<Step>,
    call: Memo<Option<Level>>,
    is_to_be_weighed: Memo<bool>,
) -> impl IntoView {
    let writing = feed.state.writing_now();
    let say = writing.language;
    let name = live(move || {
        feed.guide.with(|guide| {
            let volume = writing.volume(guide.volume);
            format!("{}, {volume}", say.feed(guide.slot))
        })
    });
    let place = live(move || format!("{}/{}", step.get().number(), Step::ALL.len()));
    let bars = Step::ALL.map(|one| {
        view! { <span data-done=move || (one <= step.get()).to_string()></span> }
    });
    view! {
        <header class="guide__head">
            <button type="button" class="page__back" aria-label=say.back() on:click=move |_| feed.step_back()>
                <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
                    <path d="M15 4L7 12L15 20"></path>
                </svg>
            </button>
            <p class="hint guide__feed">{name}</p>
            <p class="hint">{place}</p>
        </header>
        <div class="guide__bars" aria-hidden="true">{bars.collect_view()}</div>
        {move || {
            let step = step.get();
            let text = if feed.is_stopping.get() {
                say.guide_stop_title()
            } else if let Some(level) = call.get() {
                say.level(level)
            } else if is_to_be_weighed.get() {
                say.guide_weigh_title()
            } else {
                say.guide_step(step)
            };
            view! { <Heading text /> }
        }}
        <StaleMix feed step />
    }
}

/// Says on every step with mixed food until when it may be given; then, that it is too old, with the
/// way to begin anew.
#[component]
fn StaleMix(feed: Feed, step: Memo<Step>) -> impl IntoView {
    let writing = feed.state.writing_now();
    let say = writing.language;
    let is_stale = Memo::new(move |_| {
        let has_mix = (Step::Warmth..=Step::Give).contains(&step.get());
        let now = feed.state.now.get();
        let is_held = feed.state.outlook.with(|outlook| {
            let outlook = outlook.as_ref();
            outlook.is_some_and(|outlook| outlook.instruction.forbids())
        });
        (has_mix && !is_held).then(|| feed.guide.with(|guide| guide.is_stale(now)))
    });
    let keeps = move || {
        let (mixed, until) = feed
            .guide
            .with(|guide| guide.mixed.zip(guide.discard_by()))?;
        let time = |moment| feed.state.zone.with(|zone| zone.lived(moment)).time;
        Some(writing.mix_keeps(time(mixed), time(until)))
    };
    move || {
        is_stale.get().map(|is_stale| {
            if is_stale {
                view! {
                    <div class="question" role="alert">
                        <p>{say.guide_stale()}</p>
                        {button(say.guide_anew(), move |_| feed.begin_anew())}
                    </div>
                }
                .into_any()
            } else {
                view! { <p class="hint" data-keeps="true">{keeps}</p> }.into_any()
            }
        })
    }
}

/// The feed of this chick that is under way.
fn under_way_now(now: Moment, outlook: &Outlook) -> Option<FeedSession> {
    let guide = AppState::here().copies.guide(outlook.chick.id);
    guide.filter(|guide| guide.is_under_way(now, &outlook.chick))
}

/// A band for the Now screen while a feed is under way.
pub fn feed_under_way(outlook: &Outlook) -> impl IntoView + use<> {
    let say = AppState::here().language();
    under_way_now(outlook.now, outlook).map(|guide| {
        let is_stale = guide.is_stale(outlook.now);
        let is_forbidden = !guide.holds(&outlook.holds).is_empty();
        let (stands, way) = if is_forbidden {
            (say.do_not_feed(), say.guide_see_why())
        } else {
            (say.guide_step(guide.step), say.guide_go_on())
        };
        view! {
            <section class="question">
                <p>{say.feed(guide.slot)} ": " {stands}</p>
                {(is_stale && !is_forbidden).then(|| view! { <p>{say.guide_stale()}</p> })}
                <a class="button" href=Route::Guide.to_hash()>{way}</a>
            </section>
        }
    })
}

//! From the filled syringe to the journal.

use leptos::prelude::*;

use crate::domain::feeding::volume::{draws, draws_for_small_hand};
use crate::domain::journal::entries::{Change, Droppings, Response};
use crate::domain::plan::care_plan::Tool;
use crate::domain::plan::topic::Topic;
use crate::domain::quantity::units::Millilitres;
use crate::ui::parts::bird::BirdFront;
use crate::ui::parts::breeders_word::breeders_words;
use crate::ui::parts::button::button;
use crate::ui::parts::choice::Choice;
use crate::ui::parts::drawing::{Drawing, DrawingKind};
use crate::ui::parts::live::live;
use crate::ui::screens::guide::dock::{Forward, GuideDock};
use crate::ui::screens::guide::under_way::Feed;

/// Fill the syringes.
#[component]
pub fn DrawUpStep(
    /// The feed under way.
    feed: Feed,
    /// Size of the syringe.
    syringe: Millilitres,
    /// What the plan gives with.
    tool: Tool,
) -> impl IntoView {
    let writing = feed.state.writing_now();
    let say = writing.language;
    let volume = feed.guide.with_untracked(|guide| guide.volume);
    let small = writing.sum_of(&draws_for_small_hand(volume.tenths(), syringe.tenths()));
    let usual = writing.sum_of(&draws(volume.tenths(), syringe.tenths()));
    let is_smaller = small != usual;
    view! {
            <div class="scroll guide__step">
    <Drawing kind=DrawingKind::of_tool(tool) />
            <p class="guide__lead">{say.guide_draw_lead()}</p>
            <p class="guide__number guide__number--large">{usual}</p>
            {is_smaller.then(|| view! { <p class="hint">{say.guide_draw_small_hand()} ": " {small}</p> })}
            </div>
    <Forward feed word=say.guide_next() />
        }
}

/// Hold the head, from the bird's left.
#[component]
pub fn HoldStep(
    /// The feed under way.
    feed: Feed,
) -> impl IntoView {
    let say = feed.state.language();
    view! {
            <div class="scroll guide__step">
    <BirdFront />
            <p class="guide__lead">{say.guide_hold_lead()}</p>
            </div>
    <Forward feed word=say.guide_hold_ready() />
        }
}

/// Does it bob and swallow?
#[component]
pub fn ResponseStep(
    /// The feed under way.
    feed: Feed,
) -> impl IntoView {
    let say = feed.state.language();
    view! {
            <div class="scroll guide__step">
    <p class="guide__lead">{say.guide_response_lead()}</p>
            <p class="hint">{say.guide_response_never()}</p>
            {breeders_words(&[Topic::TakesFood, Topic::AfterRefusal])}
            <BirdFront />
            {button(say.guide_response_no(), move |_| feed.refused())}
            </div>
    <Forward feed word=say.guide_response_yes() />
        }
}

/// Give, draw by draw.
#[component]
pub fn GiveStep(
    /// The feed under way.
    feed: Feed,
    /// Size of the syringe.
    syringe: Millilitres,
) -> impl IntoView {
    let writing = feed.state.writing_now();
    let say = writing.language;
    let volume = feed.guide.with_untracked(|guide| guide.volume);
    let counted = live(move || {
        feed.guide
            .with(|guide| writing.given_of(guide.given, guide.volume))
    });
    let take_back = live(move || {
        let draw = feed.last_draw(syringe)?;
        Some(button(writing.take_back(draw), move |_| {
            feed.take_back(draw);
        }))
    });
    let next_draw = live(move || {
        let left = feed
            .guide
            .with(|guide| guide.volume.tenths() - guide.given.tenths());
        let draw = draws(left, syringe.tenths())
            .first()
            .copied()
            .filter(|tenths| *tenths > 0)?;
        let draw = Millilitres::tenths_held(draw);
        let give = move |_| feed.give(draw);
        Some(view! {
            <button type="button" class="button button--main guide__next" on:click=give>
                "+ " {writing.volume(draw)} " " {say.guide_given()}
            </button>
        })
    });
    let small = (volume.tenths() > 50).then(|| {
        let five = Millilitres::whole(5);
        view! {
            <button type="button" class="button" on:click=move |_| feed.give(five)>
                "+ " {writing.volume(five)}
            </button>
        }
    });
    let is_all = Memo::new(move |_| feed.guide.with(|guide| guide.given >= guide.volume));
    view! {
            <div class="scroll guide__step">
    <p class="guide__number" role="status">{counted}</p>
            <p class="guide__lead">{say.guide_give_lead()}</p>
            <div class="acts guide__acts">
                {small}
                {take_back}
                <button
                    type="button"
                    class="button"
                    class:button--main=is_all
                    on:click=move |_| feed.step_on()
                >
                    {say.guide_give_done()}
                </button>
            </div>
            </div>
    <GuideDock feed>{next_draw} <p class="hint guide__beside" hidden=move || !is_all.get()>{say.guide_all_given()}</p></GuideDock>
        }
}

/// What is normal now, and what is not.
#[component]
pub fn AfterStep(
    /// The feed under way.
    feed: Feed,
) -> impl IntoView {
    let writing = feed.state.writing_now();
    let say = writing.language;
    let counted = live(move || {
        feed.guide
            .with(|guide| writing.given_of(guide.given, guide.volume))
    });
    let droppings = RwSignal::new(None);
    let log = move |_| {
        // The look first: the note of the feed ends the guide. A look at the crop is not noted here, as one in
        // the minute of a feed tells of the feed before it.
        let seen = droppings.get_untracked();
        let seen = seen.and_then(|index: usize| Droppings::OFFERED.get(index));
        if let Some(look) = seen.copied() {
            feed.look(Change::DroppingsSeen { look });
        }
        if feed.guide.with_untracked(|guide| guide.given.tenths() == 0) {
            feed.refused();
        } else {
            let is_whole = feed
                .guide
                .with_untracked(|guide| guide.given == guide.volume);
            feed.log(if is_whole {
                Response::Eager
            } else {
                Response::NotNoted
            });
        }
    };
    let looks = Droppings::OFFERED.map(|look| say.droppings(look)).to_vec();
    view! {
            <div class="scroll guide__step">
    <p class="guide__number">{counted}</p>
            <p class="guide__lead">{say.guide_after_clean()}</p>
            <p>{say.guide_after_lead()}</p>
            <p><strong>{say.guide_after_not()}</strong></p>
            <p>{say.guide_after_crop()}</p>
            <Choice legend=say.guide_after_droppings() name="after-droppings" options=looks chosen=droppings />
            <p class="hint">{say.guide_after_throw()}</p>
            </div>
    <GuideDock feed>
                <button type="button" class="button button--main guide__next" on:click=log>{say.guide_after_log()}</button>
            </GuideDock>
        }
}

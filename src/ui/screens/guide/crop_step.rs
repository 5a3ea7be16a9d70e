//! The first step: how much is in the crop?

use leptos::prelude::*;

use crate::domain::instruction::feed_session::Step;
use crate::domain::journal::entries::{Change, CropFeel, CropState};
use crate::domain::journal::signs::Sign;
use crate::domain::plan::topic::Topic;
use crate::domain::warnings::rules::sign_seen::level;
use crate::ui::parts::bird::Bird;
use crate::ui::parts::breeders_word::breeders_words;
use crate::ui::parts::button::button;
use crate::ui::parts::call_card::call_buttons;
use crate::ui::parts::level_mark::{LevelMark, level_name};
use crate::ui::parts::live::live;
use crate::ui::route::Route;
use crate::ui::screens::guide::dock::GuideDock;
use crate::ui::screens::guide::under_way::Feed;
use crate::words::signs::sign as words_of;

/// How much is in the crop? What was seen is noted, and decides whether the feed goes on.
#[component]
pub fn CropStep(
    /// The feed under way.
    feed: Feed,
) -> impl IntoView {
    let say = feed.state.language();
    let seen = move |crop: CropState| {
        let said = format!("{}: {}", say.now_crop(), say.crop_state(crop));
        if !feed.state.note(
            Change::CropSeen {
                state: crop,
                feel: CropFeel::NotNoted,
            },
            said,
        ) {
            return;
        }
        let outlook = feed.state.outlook.get_untracked();
        let may_go_on = outlook.is_some_and(|outlook| {
            let mut next = feed.guide.get_untracked();
            next.step = Step::Mix;
            next.holds(&outlook.holds).is_empty()
        });
        if may_go_on {
            feed.state.notice.set(None);
            feed.step_on();
        } else {
            feed.state.go(Route::Now);
        }
    };
    let answers = CropState::ALL.map(|crop| {
        let id = id_of(crop);
        view! {
            <button type="button" class="crop-card" aria-describedby=id on:click=move |_| seen(crop)>
                <Bird crop />
                <strong>{say.crop_state(crop)}</strong>
                <span class="hint" id=id aria-hidden="true">{say.crop_state_feel(crop)}</span>
            </button>
        }
    });
    view! {
            <div class="scroll guide__step">
    <p class="guide__under">{say.guide_crop_look()}</p>
            <p class="hint">{say.guide_crop_cold()}</p>
            <div class="crop-cards">{answers.collect_view()}</div>
            {breeders_words(&[Topic::RoundCrop])}
            <NotSoft feed />
            </div>
    <GuideDock feed>
                <p class="hint guide__beside">{say.guide_crop_tap()}</p>
            </GuideDock>
        }
}

/// The id of what a crop feels like, for those who hear the page.
const fn id_of(crop: CropState) -> &'static str {
    match crop {
        CropState::Flat => "feels-flat",
        CropState::Trace => "feels-trace",
        CropState::Quarter => "feels-quarter",
        CropState::HalfOrMore => "feels-half",
    }
}

/// A crop that no picture shows, with the answer of Help at once.
#[component]
fn NotSoft(feed: Feed) -> impl IntoView {
    let state = feed.state;
    let say = state.language();
    let (sign, is_open) = (Sign::SourCrop, RwSignal::new(false));
    let answer = live(move || {
        is_open.get().then(|| {
            let words = words_of(say, sign);
            let level = level(sign);
            let plan = state.outlook.get_untracked();
            let plan = plan.map(|outlook| outlook.chick.plan.clone());
            let note = move |_| {
                state.note(Change::SignSeen { sign }, words.seen.to_owned());
            };
            view! {
                <div class="answer" role="alert" data-level=level_name(level)>
                    <p class="lamp" data-level=level_name(level)>
                        <LevelMark level />
                        <span>{say.level(level)}</span>
                    </p>
                    <p><strong>{words.first}</strong></p>
                    {call_buttons(level, plan.as_ref())}
                    <p>{words.avoid}</p>
                    {button(say.wrong_note(), note)}
                </div>
            }
        })
    });
    view! {
        <button
            type="button"
            class="row-button"
            aria-expanded=move || is_open.get().to_string()
            on:click=move |_| is_open.update(|is_open| *is_open = !*is_open)
        >
            {say.guide_crop_hard()}
        </button>
        {answer}
    }
}

//! The first step: how much is in the crop?

use leptos::prelude::*;

use crate::domain::instruction::feed_session::Step;
use crate::domain::journal::entries::{Change, CropFeel, CropState};
use crate::ui::parts::drawing::{Drawing, DrawingKind};
use crate::ui::route::Route;
use crate::ui::screens::guide::under_way::Feed;

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
        let is_main = crop == CropState::Flat;
        view! {
            <button type="button" class="button" class:button--main=is_main on:click=move |_| seen(crop)>{say.crop_state(crop)}</button>
        }
    });
    view! {
        <Drawing kind=DrawingKind::Crop />
        <p class="guide__lead">{say.guide_crop_look()}</p>
        <p class="hint">{say.guide_crop_cold()}</p>
        <div class="acts">{answers.collect_view()}</div>
    }
}

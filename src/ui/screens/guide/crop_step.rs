//! The first step: is the crop empty?

use leptos::prelude::*;

use crate::domain::journal::entries::{Change, CropFeel, CropState};
use crate::ui::parts::drawing::{Drawing, DrawingKind};
use crate::ui::route::Route;
use crate::ui::screens::guide::under_way::Feed;

/// Is the crop empty?
#[component]
pub fn CropStep(
    /// The feed under way.
    feed: Feed,
) -> impl IntoView {
    let say = feed.state.language();
    let is_full = RwSignal::new(false);
    let empty = move |_| {
        let change = Change::CropSeen {
            state: CropState::Empty,
            feel: CropFeel::NotNoted,
        };
        if feed.state.dispatch(change).is_ok() {
            feed.step_on();
        }
    };
    let full = move |_| is_full.set(true);
    let warning = move || is_full.get().then(|| view! { <FullCrop feed /> });
    view! {
        <Drawing kind=DrawingKind::Crop />
        <p class="guide__lead">{say.guide_crop_look()}</p>
        <p class="hint">{say.guide_crop_cold()}</p>
        {warning}
        {move || {
            (!is_full.get())
                .then(|| {
                    view! {
                        <button type="button" class="button" on:click=full>{say.guide_crop_full()}</button>
                        <button type="button" class="button button--main guide__next" on:click=empty>
                            {say.guide_crop_empty()}
                        </button>
                    }
                })
        }}
    }
}

/// A full crop ends the feed for now; what was seen is noted.
#[component]
fn FullCrop(feed: Feed) -> impl IntoView {
    let say = feed.state.language();
    let note = move |state: CropState| {
        let said = format!("{}: {}", say.now_crop(), say.crop_state(state));
        let feel = CropFeel::NotNoted;
        if feed.state.note(Change::CropSeen { state, feel }, said) {
            feed.state.go(Route::Now);
        }
    };
    view! {
        <div class="question" role="alert">
            <p>{say.guide_crop_wait()}</p>
            <div class="acts">
                <button type="button" class="button" on:click=move |_| note(CropState::Emptying)>
                    {say.crop_state(CropState::Emptying)}
                </button>
                <button type="button" class="button" on:click=move |_| note(CropState::NotMoving)>
                    {say.crop_state(CropState::NotMoving)}
                </button>
            </div>
        </div>
    }
}

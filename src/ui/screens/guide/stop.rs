//! Stop: the ways out of a feed.

use leptos::prelude::*;

use crate::domain::journal::entries::WhyPassedOver;
use crate::ui::parts::button::button;
use crate::ui::route::Route;
use crate::ui::screens::guide::dock::GuideDock;
use crate::ui::screens::guide::under_way::Feed;

const REASONS: [WhyPassedOver; 4] = [
    WhyPassedOver::CropNotEmpty,
    WhyPassedOver::NotFit,
    WhyPassedOver::Advised,
    WhyPassedOver::NotPossible,
];

/// The three ways out.
#[component]
pub fn StopSheet(
    /// The feed under way.
    feed: Feed,
) -> impl IntoView {
    let say = feed.state.language();
    let slot = feed.guide.with_untracked(|guide| guide.slot);
    let reasons = REASONS.map(|why| button(say.why_passed_over(why), move |_| feed.leave_out(why)));
    view! {
            <div class="scroll guide__step">
    <section class="group" aria-label=say.guide_stop_title()>
                <a class="wrong-link" href=Route::Wrong.to_hash()>
                    <span aria-hidden="true">"!"</span>
                    {say.now_wrong()}
                </a>
                {button(say.guide_wait(), move |_| feed.state.go(Route::Now))}
                <p class="hint">{say.guide_wait_hint()}</p>
                <a class="button" href=Route::Log(Some(slot)).to_hash()>{say.guide_given_already()}</a>
                <h2>{say.guide_leave()}</h2>
                <div class="acts">{reasons.collect_view()}</div>
                {button(say.guide_anew(), move |_| feed.begin_anew())}
            </section>
            </div>
    <GuideDock feed>
                <button type="button" class="button" data-go-on="true" on:click=move |_| feed.stop_or_go_on()>
                    {say.guide_go_on()}
                </button>
            </GuideDock>
        }
}

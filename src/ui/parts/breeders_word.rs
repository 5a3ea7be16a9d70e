//! What the breeder says of a topic, in her own words, beside what it is about.

use leptos::prelude::*;

use crate::domain::plan::topic::Topic;
use crate::ui::state::AppState;

/// What the plan on screen says of these topics, marked as the breeder's words; nothing where it says nothing.
pub fn breeders_words(topics: &[Topic]) -> AnyView {
    let state = AppState::here();
    let say = state.language();
    let plan = state.outlook.get_untracked();
    let said = topics.iter().filter_map(|topic| {
        let text = plan.as_ref()?.chick.plan.said(*topic).to_owned();
        (!text.is_empty()).then(|| {
            view! {
                <p class="breeders-word">
                    <span class="hint">{say.plan_part_note()} ": "</span>
                    <bdi>{text}</bdi>
                </p>
            }
        })
    });
    said.collect::<Vec<_>>().into_any()
}

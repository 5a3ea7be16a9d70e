//! What forbids a feed, at whichever step it is met.

use leptos::prelude::*;

use crate::domain::instruction::holds::Hold;
use crate::ui::parts::call_card::call_buttons;
use crate::ui::parts::instruction_card::hold_list;
use crate::ui::route::Route;
use crate::ui::state::AppState;

/// What forbids a feed now, each with its reason and what to do; there is no way on from here but Stop.
pub fn guarded(holds: &[Hold]) -> impl IntoView + use<> {
    let state = AppState::here();
    let say = state.language();
    let most = holds.first().map(|hold| {
        let outlook = state.outlook.get_untracked();
        let offset = outlook.map(|outlook| outlook.offset);
        let writing = state.writing_now();
        writing.held_title(hold.demand, |moment| {
            let lived = offset.map(|offset| moment.lived(offset));
            lived
                .map(|lived| writing.the_time(lived.time))
                .unwrap_or_default()
        })
    });
    let call = holds
        .iter()
        .filter(|hold| hold.is_against_food())
        .map(|hold| hold.level)
        .max();
    let plan = state.outlook.get_untracked();
    let plan = plan.map(|outlook| outlook.chick.plan.clone());
    let numbers = call
        .filter(|level| level.is_call())
        .map(|level| call_buttons(level, plan.as_ref()));
    let call = call.and_then(|level| say.held_call(level));
    view! {
        <section class="question" role="alert">
            <h2>{most}</h2>
            {call.map(|call| view! { <p><strong>{call}</strong></p> })}
            {numbers}
            {hold_list(holds)}
            <div class="acts">
                <a class="button" href=Route::Crop.to_hash()>{say.guide_look_again()}</a>
                <a class="button" href=Route::Wrong.to_hash()>{say.now_wrong()}</a>
            </div>
        </section>
    }
}

//! What forbids a feed, at whichever step it is met.

use leptos::prelude::*;

use crate::domain::instruction::guards::Guard;
use crate::ui::parts::level_mark::{LevelMark, level_name};
use crate::ui::route::Route;
use crate::words::Language;
use crate::words::guards::{guard, title};

/// What forbids a feed now, each with its reason and what to do; there is no way on from here but Stop.
pub fn guarded(say: Language, guards: Vec<Guard>) -> impl IntoView {
    let cards = guards.into_iter().map(|forbids| {
        let words = guard(say, forbids);
        view! {
            <li class="guard" data-level=level_name(forbids.level())>
                <LevelMark level=forbids.level() />
                <span>
                    <strong>{words.why} ". "</strong>
                    {words.act}
                </span>
            </li>
        }
    });
    view! {
        <section class="question" role="alert">
            <h2>{title(say)}</h2>
            <ul class="plain-list">{cards.collect_view()}</ul>
            <div class="acts">
                <a class="button" href=Route::Crop.to_hash()>{say.guide_look_again()}</a>
                <a class="button" href=Route::Wrong.to_hash()>{say.now_wrong()}</a>
            </div>
            <p class="hint">{say.caution_short()}</p>
        </section>
    }
}

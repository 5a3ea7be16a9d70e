//! Where the numbers come from: every rule and number with its standing and source, to read and to print.

use std::time::Duration;

use leptos::prelude::*;

use crate::domain::journal::signs::Sign;
use crate::domain::warnings::rules::sign_seen;
use crate::ui::parts::button::button;
use crate::ui::parts::level_mark::LevelMark;
use crate::ui::parts::page::Page;
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::state::AppState;
use crate::words::manual::{Part, Row};
use crate::words::signs::sign;

/// Where the numbers come from.
#[component]
pub fn SourcesScreen(
    /// The place of the rule that it opens at, in the order of the ladder.
    place: Option<u8>,
) -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let parts = state.writing_now().manual();
    if let Some(place) = place {
        let show = move || platform::reveal(&format!("rule-{place}"));
        set_timeout(show, Duration::ZERO);
    }
    let signs = Sign::ALL.map(|seen| {
        view! {
            <li class="source">
                <LevelMark level=sign_seen::level(seen) />
                {format!(" {}: {}", say.level(sign_seen::level(seen)), sign(say, seen).seen)}
            </li>
        }
    });
    view! {
        <Page title=say.manual_title() back=Route::Settings>
            <p>{say.manual_lead()}</p>
            {parts.into_iter().map(part).collect_view()}
            <section class="group">
                <h2>{say.manual_signs()}</h2>
                <ul class="plain-list">{signs.collect_view()}</ul>
            </section>
            <div class="acts">
                {button(say.manual_print(), |_| platform::print())}
            </div>
        </Page>
    }
}

fn part((heading, rows): Part) -> impl IntoView {
    let rows = rows.into_iter().enumerate().map(row);
    view! {
        <section class="group">
            <h2>{heading}</h2>
            {rows.collect_view()}
        </section>
    }
}

fn row((place, row): (usize, Row)) -> impl IntoView {
    let say = AppState::here().language();
    let is_rule = !row.id.is_empty();
    let id = is_rule.then(|| format!("rule-{place}"));
    let wrong = is_rule.then(|| {
        view! { <p><strong>{say.manual_wrong()}</strong> " " {row.wrong_when}</p> }
    });
    view! {
        <div class="source" data-rule=is_rule.then_some(row.id)>
            {is_rule.then(|| view! { <h3 id=id tabindex="-1">{row.name}</h3> })}
            <p>{row.sentence}</p>
            {wrong}
            <p class="hint">{row.standing}</p>
        </div>
    }
}

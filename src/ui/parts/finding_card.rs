//! A finding in words: what was seen, the limit, why it matters, what to do and what not.

use leptos::prelude::*;

use crate::domain::warnings::level::Finding;
use crate::ui::parts::level_mark::{LevelMark, level_name};
use crate::ui::route::Route;
use crate::ui::state::AppState;
use crate::words::advice::advice;
use crate::words::manual::place_of;
use crate::words::rules::{call_first, finding_title};
use crate::words::sources::source_line;

/// One finding, closed to its title until it is opened.
#[component]
pub fn FindingCard(
    /// The finding.
    finding: Finding,
    /// Whether it starts open.
    #[prop(optional)]
    is_open: bool,
) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let words = advice(say, finding.rule);
    view! {
        <details class="finding" data-level=level_name(finding.level) open=is_open>
            <summary>
                <LevelMark level=finding.level />
                <span class="finding__title">{finding_title(writing, &finding)}</span>
            </summary>
            <dl class="finding__advice">
                <dt>{say.finding_do()}</dt>
                <dd>{call_first(say, finding.level)} " " {words.act}</dd>
                <dt>{say.finding_avoid()}</dt>
                <dd>{words.avoid}</dd>
                <dt>{say.finding_why()}</dt>
                <dd>{words.why}</dd>
                <dt>{say.finding_limit()}</dt>
                <dd>
                    <p>
                        {source_line(say, &finding)} " "
                        <a href=Route::Sources(place_of(finding.rule)).to_hash()>{say.manual_title()}</a>
                    </p>
                </dd>
            </dl>
        </details>
    }
}

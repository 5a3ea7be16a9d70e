//! Other chicks of this phone about which somebody is to be rung.

use std::time::Duration;

use leptos::prelude::*;

use crate::domain::homecoming::departure::left_at;
use crate::domain::homecoming::reports::last_heard;
use crate::domain::journal::entries::ChickId;
use crate::domain::outlook::{Outlook, outlook};
use crate::domain::time::moment::Moment;
use crate::share::placed::{Placed, PlacedRow, rows};
use crate::store::setting::Setting;
use crate::ui::parts::chick_name::{beside_name, named_chicks};
use crate::ui::parts::level_mark::{LevelMark, level_name};
use crate::ui::route::Route;
use crate::ui::state::AppState;
use crate::words::names::harmless;

/// The chicks of this phone that `is_wanted`: those it cares for as they are now, those it follows as
/// they were last heard of. Chicks that are away for some days are with another phone.
pub fn judged_chicks(
    state: AppState,
    now: Moment,
    is_wanted: impl Fn(ChickId) -> bool,
) -> Vec<Placed> {
    let chicks = untrack(|| state.chicks());
    let is_of = |setting, id| state.of_phone.at_untracked(setting, id).is_some();
    state.journal.with_untracked(|journal| {
        let wanted = chicks.into_iter().filter(|id| is_wanted(*id));
        let judged = wanted
            .filter(|id| !is_of(Setting::Away, *id))
            .filter_map(|id| {
                let zone = state.zone;
                let judge = |at| zone.with_untracked(|zone| outlook(at, journal, id, zone));
                let heard = is_of(Setting::Followed, id).then(|| last_heard(now, journal, id));
                let outlook = judge(heard.flatten().unwrap_or(now))?;
                // What was noted before it left is no news of its new home.
                let left = left_at(&outlook.chick).unwrap_or(Moment::EARLIEST);
                if heard.flatten().is_some_and(|heard| heard < left) {
                    let (outlook, followed) = (judge(now)?, Some(None));
                    return Some(Placed { outlook, followed });
                }
                let followed = heard;
                Some(Placed { outlook, followed })
            });
        judged.collect()
    })
}

/// One line for each other chick that needs somebody: at a level of call, or silent. It leads to that
/// chick.
///
/// They are judged once the chick on screen is drawn: a breeder follows many.
pub fn other_chicks(shown: &Outlook) -> impl IntoView + use<> {
    let state = AppState::here();
    let writing = state.writing_now();
    let (now, on_screen) = (state.now.get_untracked(), shown.chick.id);
    let found = RwSignal::new(Vec::<PlacedRow>::new());
    let has_others = untrack(|| state.chicks().len() > 1);
    if has_others {
        let judge = move || {
            let others = judged_chicks(state, now, |id| id != on_screen);
            let calls = rows(now, &others).into_iter();
            // Nothing to show any more when another screen has come meanwhile.
            let _gone = found.try_set(calls.filter(|row| row.state.needs_somebody()).collect());
        };
        set_timeout(judge, Duration::ZERO);
    }
    move || {
        let named = if found.with(Vec::is_empty) {
            Vec::new()
        } else {
            named_chicks(state)
        };
        let lines = found.get().into_iter().map(|row| {
            let (id, placed) = (row.chick, row.state);
            let level = placed.level_now();
            let beside = beside_name(&named, id);
            let show = move |_| {
                state.show_chick(id);
                state.go(Route::Now);
            };
            view! {
                <button type="button" class="sign" data-level=level.map(level_name) data-other="true" on:click=show>
                    {level.map(|level| view! { <LevelMark level /> })}
                    <span><strong><bdi>{harmless(&row.name)}</bdi></strong> {beside} ": " {writing.placed_state(placed)}</span>
                </button>
            }
        });
        lines.collect_view()
    }
}

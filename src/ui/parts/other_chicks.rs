//! Other chicks of this phone about which somebody is to be rung.

use std::time::Duration;

use leptos::prelude::*;

use crate::domain::journal::entries::ChickId;
use crate::domain::outlook::{Outlook, outlook};
use crate::domain::time::moment::Moment;
use crate::share::placed::{PlacedRow, last_heard, rows};
use crate::ui::parts::level_mark::{LevelMark, level_name};
use crate::ui::route::Route;
use crate::ui::state::AppState;

/// The chicks of this phone that `is_wanted`, each judged as it was last heard of.
pub fn judged_chicks(
    state: AppState,
    now: Moment,
    is_wanted: impl Fn(ChickId) -> bool,
) -> Vec<Outlook> {
    state.journal.with_untracked(|journal| {
        let wanted = journal.chicks().into_iter().filter(|id| is_wanted(*id));
        let judged = wanted.filter_map(|id| {
            let heard = last_heard(now, journal, id);
            let zone = state.zone;
            zone.with_untracked(|zone| outlook(heard, journal, id, zone))
        });
        judged.collect()
    })
}

/// One line for each other chick at a level that calls for somebody; it leads to that chick.
///
/// They are judged once the chick on screen is drawn: a breeder follows many.
pub fn other_chicks(shown: &Outlook) -> impl IntoView + use<> {
    let state = AppState::here();
    let say = state.language();
    let (now, on_screen) = (shown.now, shown.chick.id);
    let found = RwSignal::new(Vec::<PlacedRow>::new());
    let has_others = state
        .journal
        .with_untracked(|journal| journal.chicks().len() > 1);
    if has_others {
        let judge = move || {
            let others = judged_chicks(state, now, |id| id != on_screen);
            let calls = rows(now, &others).into_iter();
            // Nothing to show any more when another screen has come meanwhile.
            let _gone = found.try_set(calls.filter(|row| row.level.is_call()).collect());
        };
        set_timeout(judge, Duration::ZERO);
    }
    move || {
        let lines = found.get().into_iter().map(|row| {
            let (id, level) = (row.chick, row.level);
            let show = move |_| {
                state.show_chick(id);
                state.go(Route::Now);
            };
            view! {
                <button type="button" class="sign" data-level=level_name(level) data-other="true" on:click=show>
                    <LevelMark level />
                    <span><strong>{row.name}</strong> ": " {say.level(level)}</span>
                </button>
            }
        });
        lines.collect_view()
    }
}

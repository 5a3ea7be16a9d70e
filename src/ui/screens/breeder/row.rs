//! One chick in a breeder's list: what stands in a card of the list and in a row of the table.

use leptos::prelude::*;

use crate::domain::homecoming::placement::Place;
use crate::domain::journal::entries::ChickId;
use crate::domain::warnings::level::Level;
use crate::domain::warnings::placed_state::PlacedState;
use crate::share::breeder_table::{BreederRow, breeder_rows};
use crate::share::small_curve::{SIZE, SmallCurve};
use crate::store::setting::Setting;
use crate::ui::parts::call_card::tel_link;
use crate::ui::parts::level_mark::LevelMark;
use crate::ui::parts::other_chicks::judged_chicks;
use crate::ui::state::AppState;
use crate::words::names::{Named, harmless};

/// Every chick of this phone as its breeder sees it, and what stands beside the names of namesakes.
pub fn rows_now(state: AppState) -> Vec<(BreederRow, String)> {
    let now = state.now.get_untracked();
    let judged = judged_chicks(state, now, |_| true);
    let is_put_away = |id| state.of_phone.at_untracked(Setting::PutAway, id).is_some();
    let rows = breeder_rows(now, &judged, |chick| is_put_away(chick.id));
    let named = rows.iter().map(|row| (row.row.chick, named_of(row)));
    let named: Vec<(ChickId, Named)> = named.collect();
    let writing = state.writing_now();
    let beside = rows.iter().map(|row| {
        let others = named.iter().filter(|(id, _)| *id != row.row.chick);
        writing.beside_name(&named_of(row), others.map(|(_, named)| named))
    });
    let beside: Vec<String> = beside.collect();
    rows.into_iter().zip(beside).collect()
}

fn named_of(row: &BreederRow) -> Named {
    Named {
        name: row.row.name.clone(),
        ring: row.row.ring.clone(),
        species: row.species,
        owner: row.owner.clone(),
        hatched: row.hatched,
    }
}

/// The shape of the level where it is today's; a broken ring where nothing is known.
pub fn mark(row: &BreederRow) -> AnyView {
    match row.row.state {
        PlacedState::Now(Level::Settled) if !row.place.is_elsewhere() => {
            view! { <span class="level-mark" aria-hidden="true"></span> }.into_any()
        }
        PlacedState::Now(level) => view! { <LevelMark level /> }.into_any(),
        PlacedState::Silent { .. } | PlacedState::Unheard => view! {
            <svg class="level-mark level-mark--unknown" viewBox="0 0 24 24" aria-hidden="true">
                <circle cx="12" cy="12" r="8"></circle>
            </svg>
        }
        .into_any(),
        PlacedState::On(..) | PlacedState::Died => {
            view! { <span class="level-mark" aria-hidden="true"></span> }.into_any()
        }
    }
}

/// The small curve; decorative, as its numbers stand beside it.
pub fn curve(curve: Option<&SmallCurve>) -> Option<impl IntoView + use<>> {
    let curve = curve?;
    let call = curve.call.map(|y| {
        view! { <path class="small-curve__call" d=format!("M0 {y}H{}", SIZE.0)></path> }
    });
    let (x, y) = curve.last;
    Some(view! {
        <svg class="small-curve" viewBox=format!("0 0 {} {}", SIZE.0, SIZE.1) aria-hidden="true">
            {call}
            <path class="small-curve__line" d=curve.line.clone()></path>
            <circle class="small-curve__last" cx=x cy=y r="4"></circle>
        </svg>
    })
}

/// A tap calls the owner; what stands there when no number is known.
pub fn owner_call(state: AppState, row: &BreederRow) -> AnyView {
    let say = state.language();
    let owner = harmless(&row.owner);
    if row.owner_number.is_empty() {
        let known = if owner.is_empty() {
            "\u{2013}".to_owned()
        } else {
            owner
        };
        return view! { <span class="owner-call"><bdi>{known}</bdi></span> }.into_any();
    }
    let spoken = if owner.is_empty() {
        say.breeder_owner().to_owned()
    } else {
        owner.clone()
    };
    view! {
        <a class="owner-call" href=tel_link(&row.owner_number) aria-label=format!("{} {spoken}", say.breeder_call())>
            <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
                <path d="M5 3h4l2 5l-3 2a11 11 0 0 0 6 6l2-3l5 2v4a2 2 0 0 1-2 2A16 16 0 0 1 3 5a2 2 0 0 1 2-2z"></path>
            </svg>
            <bdi>{owner}</bdi>
        </a>
    }
    .into_any()
}

/// The facts of a row beside its state, in one line.
pub fn facts(state: AppState, row: &BreederRow) -> String {
    let writing = state.writing_now();
    let say = writing.language;
    let weight = row.weight.map(|weight| {
        let change = row
            .row
            .handover_loss_pct
            .map(|loss| writing.handover_change(loss));
        let change = change
            .map(|change| format!(", {change}"))
            .unwrap_or_default();
        format!("{}{change}", writing.mass(weight))
    });
    let labelled = |label: &str, value: String| format!("{label}: {value}");
    let eaten = labelled(say.breeder_column_eaten(), writing.eaten(row.eaten_pct));
    let plan = writing.plan_held(row.row.plan.number, row.is_plan_current);
    let plan = labelled(say.breeder_column_plan(), plan);
    let report = labelled(
        say.breeder_column_report(),
        writing.heard(row.row.quiet_days),
    );
    let vet = labelled(say.breeder_column_vet(), vet_word(state, row));
    let asks = Some(writing.asks(row.asks)).filter(|asks| !asks.is_empty());
    let told = match row.place {
        Place::WithMe | Place::Reserved => vec![weight],
        Place::OnTheWay => vec![weight, Some(report)],
        Place::Placed => vec![
            weight,
            asks,
            Some(eaten),
            Some(report),
            Some(plan),
            Some(vet),
        ],
        Place::Weaned | Place::Archived => vec![weight, asks, Some(report), Some(plan), Some(vet)],
    };
    told.into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

/// Whether a vet saw it, or was called.
pub fn vet_word(state: AppState, row: &BreederRow) -> String {
    state.writing_now().vet_contact(row.vet)
}

/// Ring, species and age in one line.
pub fn of_bird(state: AppState, row: &BreederRow) -> String {
    let writing = state.writing_now();
    let species = Some(writing.language.species(row.species).to_owned());
    let ring = Some(harmless(&row.row.ring)).filter(|ring| !ring.is_empty());
    let age = row.age.map(|age| writing.short_age(age));
    let told = [species, ring, age].into_iter().flatten();
    told.collect::<Vec<_>>().join(", ")
}

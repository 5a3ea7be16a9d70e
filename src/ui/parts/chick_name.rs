//! Names of chicks on screen: typed text kept from turning what stands around it, namesakes told apart.

use leptos::prelude::*;

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::ChickId;
use crate::ui::state::AppState;
use crate::words::format::Writing;
use crate::words::names::{Named, harmless};

/// What tells the chicks of this phone apart; not followed.
pub fn named_chicks(state: AppState) -> Vec<(ChickId, Named)> {
    let chicks = untrack(|| state.chicks());
    state.journal.with_untracked(|journal| {
        let known = chicks.into_iter();
        let named = known.filter_map(|id| Some((id, named(&Chick::from_journal(journal, id)?))));
        named.collect()
    })
}

/// What tells a chick apart.
pub fn named(chick: &Chick) -> Named {
    let plan = &chick.plan;
    Named {
        name: plan.name.clone(),
        ring: plan.ring.clone(),
        species: plan.species,
        owner: plan.owner_name.clone(),
        hatched: plan.hatched,
    }
}

/// What stands beside the name of a chick that has a namesake among these; nothing for any other.
pub fn beside_name(named: &[(ChickId, Named)], id: ChickId) -> Option<AnyView> {
    let writing = AppState::here().writing_now();
    let beside = beside(writing, named, id)?;
    Some(view! { <bdi class="beside-name">{beside}</bdi> }.into_any())
}

/// The same as a text.
pub fn beside(writing: Writing, named: &[(ChickId, Named)], id: ChickId) -> Option<String> {
    let (_, own) = named.iter().find(|(known, _)| *known == id)?;
    let others = named.iter().filter(|(known, _)| *known != id);
    let beside = writing.beside_name(own, others.map(|(_, named)| named));
    (!beside.is_empty()).then_some(beside)
}

/// A typed name on screen.
pub fn name_shown(name: &str) -> impl IntoView + use<> {
    view! { <bdi>{harmless(name)}</bdi> }
}

//! The list of species in the form of a new chick and in that of its plan.

use leptos::prelude::*;

use crate::domain::plan::species::Species;
use crate::ui::state::AppState;

/// The species, chosen from the list of those that are known here.
#[component]
pub fn SpeciesField(
    /// The place of the chosen one in [`Species::ALL`].
    chosen: RwSignal<Option<usize>>,
    /// What is wrong.
    fault: RwSignal<String>,
) -> impl IntoView {
    let say = AppState::here().language();
    let known = Species::ALL.into_iter().enumerate();
    let known = known.map(move |(index, species)| {
        view! {
            <option value=index.to_string() selected=move || chosen.get() == Some(index)>
                {say.species(species)}
            </option>
        }
    });
    let choose = move |event| chosen.set(event_target_value(&event).parse().ok());
    view! {
        <div class="field">
            <label for="species">{say.plan_species()}</label>
            <select
                id="species"
                on:change=choose
                aria-describedby="species-fault"
                aria-invalid=move || (!fault.get().is_empty()).to_string()
            >
                <option value="" selected=move || chosen.get().is_none()>"…"</option>
                {known.collect_view()}
            </select>
            <p class="fault" id="species-fault" role="alert">{move || fault.get()}</p>
        </div>
    }
}

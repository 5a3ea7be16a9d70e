//! What a breeder's backup brings beside the records: her details, standing words and templates.

use leptos::prelude::*;

use crate::domain::plan::care_plan::{CarePlan, Role};
use crate::domain::plan::plan_line::PlanLine;
use crate::domain::plan::species::Species;
use crate::store::saved::backup::OfBreeder;
use crate::ui::state::AppState;
use crate::words::exchange::labelled;

/// What a backup brings, and whether it may stand in place of what is here.
#[derive(Debug, Clone, Copy)]
pub struct BreedersWords {
    state: AppState,
    file: StoredValue<OfBreeder>,
    replaces: RwSignal<bool>,
}

impl BreedersWords {
    /// Nothing that is here is replaced unless somebody says so.
    pub fn new(state: AppState, file: OfBreeder) -> Self {
        Self {
            state,
            file: StoredValue::new(file),
            replaces: RwSignal::new(false),
        }
    }

    /// Takes it in as it was shown.
    pub fn take(self) {
        let copies = self.state.copies;
        let here = copies.of_breeder();
        let taken = self.file.with_value(|file| {
            if self.replaces.get_untracked() {
                here.replaced_by(file)
            } else {
                here.joined(file)
            }
        });
        if taken != here {
            copies.remember_of_breeder(&taken);
        }
    }

    /// What comes in where there was nothing, in a line.
    fn in_short(self, species: Option<Species>, plan: &CarePlan) -> String {
        let writing = self.state.writing_now();
        if species.is_some() {
            return writing.template_lines(plan).join("; ");
        }
        let people = writing.plan_value(plan, PlanLine::Contact(Role::Breeder));
        people.unwrap_or_default()
    }

    /// What comes in, what is other here, and the way to have the backup's in its place.
    pub fn shown(self) -> AnyView {
        let writing = self.state.writing_now();
        let say = writing.language;
        let here = self.state.copies.of_breeder();
        let (joined, wanted) = self
            .file
            .with_value(|file| (here.joined(file), here.replaced_by(file)));
        let title = |species: Option<Species>| {
            species.map_or(say.breeder_in_backup_own(), |species| say.species(species))
        };
        let change = |species, old, new| {
            labelled(title(species), &writing.plan_changes(old, new).join("; "))
        };
        let new = plans(&joined).into_iter();
        let new = new.filter_map(|(species, plan)| match of(&here, species) {
            Some(old) => (old != plan).then(|| change(species, old, plan)),
            None => Some(labelled(title(species), &self.in_short(species, plan))),
        });
        let new: Vec<String> = new.collect();
        let other = plans(&wanted).into_iter().filter_map(|(species, there)| {
            let kept = of(&joined, species)?;
            (kept != there).then(|| change(species, kept, there))
        });
        let other: Vec<String> = other.collect();
        let is_same = new.is_empty() && other.is_empty();
        let list = |lines: Vec<String>| {
            let lines = lines.into_iter();
            let lines = lines.map(|line| view! { <li><bdi>{line}</bdi></li> });
            view! { <ul class="plain-list">{lines.collect_view()}</ul> }
        };
        let replaces = self.replaces;
        let choice = (!other.is_empty()).then(|| {
            view! {
                <p>{say.breeder_in_backup_stays()} ":"</p>
                {list(other)}
                <label class="choice__option">
                    <input
                        type="checkbox"
                        id="use-backup"
                        prop:checked=move || replaces.get()
                        on:change=move |event| replaces.set(event_target_checked(&event))
                    />
                    <span>{say.breeder_in_backup_use()}</span>
                </label>
            }
        });
        view! {
            <section class="group" id="of-breeder">
                <h2>{say.breeder_in_backup()}</h2>
                {is_same.then(|| view! { <p>{say.breeder_in_backup_same()}</p> })}
                {list(new)}
                {choice}
            </section>
        }
        .into_any()
    }
}

/// Her own words, or her template of a species.
fn of(kept: &OfBreeder, species: Option<Species>) -> Option<&CarePlan> {
    let found = plans(kept).into_iter().find(|(of, _)| *of == species);
    found.map(|(_, plan)| plan)
}

/// Her own words, then each template by its species.
fn plans(kept: &OfBreeder) -> Vec<(Option<Species>, &CarePlan)> {
    let own = kept.own.iter().map(|own| (None, own));
    let templates = kept.templates.iter();
    own.chain(templates.map(|one| (Some(one.species), one)))
        .collect()
}

//! The next card from a template: only what belongs to this one chick is typed.

use leptos::prelude::*;

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::{ChickId, Refusal};
use crate::domain::plan::care_plan::{CarePlan, PlanFault, Reference, is_phone_number};
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::Day;
use crate::ui::parts::field::FieldKind;
use crate::ui::parts::live::live;
use crate::ui::parts::page::Page;
use crate::ui::route::Route;
use crate::ui::screens::plan_form::text::{Text, TextField, optional};
use crate::ui::state::AppState;
use crate::ui::{clock, platform};
use crate::words::format::Writing;

/// What is typed of one chick.
#[derive(Debug, Clone, Copy)]
struct OfChick {
    name: Text,
    ring: Text,
    weight: Text,
    hatched: Text,
    owner: Text,
    number: Text,
}

impl OfChick {
    fn empty() -> Self {
        let empty = || Text::new(String::new());
        Self {
            name: empty(),
            ring: empty(),
            weight: empty(),
            hatched: empty(),
            owner: empty(),
            number: empty(),
        }
    }

    /// The template with what was typed; `None` when a field is at fault, which then says so.
    fn put(self, writing: Writing, today: Day, mut plan: CarePlan) -> Option<CarePlan> {
        let say = writing.language;
        let name = self.name.take(if self.name.is_empty() {
            Err(say.fault_name_needed().to_owned())
        } else {
            Ok(self.name.get())
        });
        let weight = self.weight.take(optional(self.weight, |text| {
            let weight = writing
                .read_mass(text)
                .map_err(|error| writing.number_error(error))?;
            if (Grams::whole(5)..=Grams::whole(3_000)).contains(&weight) {
                Ok(weight)
            } else {
                Err(say.refusal(&Refusal::WeightOutOfRange).to_owned())
            }
        }));
        let hatched = self.hatched.take(optional(self.hatched, |text| {
            let day = Day::parse_iso(text).ok_or(say.fault_no_date())?;
            match today.since(day) {
                ..0 => Err(say.fault_day_ahead()),
                0..=730 => Ok(day),
                _ => Err(say.fault_hatched_long_ago()),
            }
        }));
        let number = self.number.take(optional(self.number, |text| {
            let fault = say.plan_fault(PlanFault::ContactNumber);
            if is_phone_number(text) {
                Ok(text.to_owned())
            } else {
                Err(fault)
            }
        }));
        let (name, weight, hatched, number) = (name?, weight?, hatched?, number?);
        plan.name = name;
        plan.ring = self.ring.get();
        plan.hatched = hatched;
        plan.reference = weight.map(|weight| Reference { weight, day: today });
        plan.owner_name = self.owner.get();
        plan.owner_number = number.unwrap_or_default();
        Some(plan)
    }
}

/// The next card. Without a template it is typed in full.
#[component]
pub fn NewCardScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let templates = state.copies.templates();
    if templates.is_empty() {
        return view! {
            <Page title=say.breeder_new_card() back=Route::Chicks>
                <p>{say.breeder_first_card()}</p>
                <div class="acts">
                    <a class="button button--main" href=Route::WholePlan.to_hash()>{say.start_type()}</a>
                </div>
            </Page>
        }
        .into_any();
    }
    from_template(state, templates).into_any()
}

fn from_template(state: AppState, templates: Vec<CarePlan>) -> impl IntoView {
    let writing = state.writing_now();
    let say = writing.language;
    let own = state.copies.own_words();
    let templates = templates.into_iter().map(|template| match &own {
        Some(own) => template.with_own_words(own),
        None => template,
    });
    let templates = StoredValue::new(templates.collect::<Vec<CarePlan>>());
    let chosen = RwSignal::new(0_usize);
    let template = move || templates.with_value(|templates| templates.get(chosen.get()).cloned());
    let of_chick = OfChick::empty();
    let fault = RwSignal::new(String::new());
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        fault.set(String::new());
        let now = clock::now();
        let today = state.zone.with_untracked(|zone| zone.lived(now)).day;
        let Some(template) = untrack(template) else {
            return;
        };
        let Some(plan) = of_chick.put(writing, today, template.clone()) else {
            return fault.set(say.fault_look_above().to_owned());
        };
        let (chick, name) = (ChickId(platform::random_id()), plan.name.clone());
        match state.add_chick(chick, plan, true) {
            Ok(_) => {
                state.copies.remember_template(&template);
                state.show_chick(chick);
                state.say(name, Vec::new());
                state.go(Route::Chick);
            }
            Err(refusal) => fault.set(say.refusal(&refusal).to_owned()),
        }
    };
    let options = templates.with_value(|templates| {
        let options = templates.iter().enumerate().map(|(place, template)| {
            view! { <option value=place.to_string()>{say.species(template.species)}</option> }
        });
        options.collect::<Vec<_>>()
    });
    let choose = move |event| chosen.set(event_target_value(&event).parse().unwrap_or_default());
    let lines = live(move || {
        let lines = template().map(|template| writing.template_lines(&template));
        let lines = lines.unwrap_or_default().into_iter();
        lines
            .map(|line| view! { <li>{line}</li> })
            .collect::<Vec<_>>()
    });
    let dock = move || {
        view! { <button type="submit" form="new-card" class="button button--main">{say.breeder_make_card()}</button> }
    };
    view! {
        <Page title=say.breeder_new_card() back=Route::Chicks dock>
            <form class="form" id="new-card" on:submit=keep novalidate>
                <div class="field">
                    <label for="template">{say.breeder_template()}</label>
                    <select id="template" on:change=choose>{options}</select>
                </div>
                <TextField id="name" label=say.plan_name() text=of_chick.name kind=FieldKind::Text />
                <TextField id="ring" label=say.plan_ring() text=of_chick.ring kind=FieldKind::Text />
                <TextField
                    id="handover-weight"
                    label=say.breeder_weight_today()
                    text=of_chick.weight
                    kind=FieldKind::Number
                    unit=writing.mass_unit()
                />
                <TextField id="hatched" label=say.plan_hatched() text=of_chick.hatched kind=FieldKind::Day hint=say.optional() />
                {hatched_near(state, of_chick.hatched)}
                <section class="group">
                    <h2>{say.breeder_from_template()}</h2>
                    <ul class="plain-list">{lines}</ul>
                </section>
                <details class="group">
                    <summary>{say.breeder_for_whom()}</summary>
                    <TextField id="owner" label=say.breeder_owner() text=of_chick.owner kind=FieldKind::Text />
                    <TextField id="owner-number" label=say.plan_contact_number() text=of_chick.number kind=FieldKind::Telephone />
                </details>
                <p class="fault" role="alert">{move || fault.get()}</p>
                <div class="acts">
                    <a class="button" href=Route::WholePlan.to_hash()>{say.breeder_other_species()}</a>
                </div>
            </form>
        </Page>
    }
}

/// Days before and after the last hatching that are offered with one tap. Ours: a clutch hatches within days.
const NEAR_DAYS: std::ops::RangeInclusive<i32> = -3..=4;

/// The days around the hatch day of the chick added last, each one tap; none is chosen by itself.
fn hatched_near(state: AppState, hatched: Text) -> Option<impl IntoView> {
    let writing = state.writing_now();
    let now = clock::now();
    let today = state.zone.with_untracked(|zone| zone.lived(now)).day;
    let last = state.journal.with_untracked(|journal| {
        let chicks = journal.chicks().into_iter().rev();
        let mut days = chicks.filter_map(|id| Chick::from_journal(journal, id)?.plan.hatched);
        days.next()
    })?;
    let days = NEAR_DAYS
        .map(|near| last.plus(near))
        .filter(|day| *day <= today);
    let chips = days.map(|day| {
        let is_on = move || (hatched.text.get() == day.iso()).to_string();
        let choose = move |_| hatched.text.set(day.iso());
        view! {
            <button type="button" class="chip" aria-pressed=is_on on:click=choose>{writing.day_and_month(day)}</button>
        }
    });
    Some(view! { <div class="chips" data-near="true">{chips.collect::<Vec<_>>()}</div> })
}

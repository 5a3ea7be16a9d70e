//! The numbers of a plan beside their limits.

use leptos::prelude::*;

use crate::domain::plan::care_plan::{CarePlan, PlannedFeed, Reference, Slot};
use crate::domain::plan::species::Species;
use crate::domain::quantity::units::{Millilitres, Percent};
use crate::domain::time::moment::{Day, WallTime};
use crate::domain::warnings::plan_checks::{CheckVerdict, PlanCheck};
use crate::words::format::Writing;

/// The checks of a plan, a line each.
pub fn plan_checks(writing: Writing, plan: &CarePlan) -> AnyView {
    let checks = crate::domain::warnings::plan_checks::plan_checks(plan).into_iter();
    let lines = checks.map(|check| {
        let class = match check.verdict() {
            CheckVerdict::InOrder => "hint",
            CheckVerdict::Unusual | CheckVerdict::Over => "fault",
        };
        view! { <li class=class>{writing.plan_check(check)}</li> }
    });
    view! {
        <div class="plan-checks">
            <p class="plan-checks__title">{writing.language.plan_checked()}</p>
            <ul class="plain-list">{lines.collect_view()}</ul>
        </div>
    }
    .into_any()
}

/// What stands in a plan's form so far.
#[derive(Debug, Clone)]
pub struct TypedNumbers {
    /// The species, once chosen.
    pub species: Option<Species>,
    /// The handover weight.
    pub weight: String,
    /// Slot, time and volume of each feed.
    pub feeds: Vec<(Slot, String, String)>,
    /// The water to mix with, and the share of powder.
    pub mix: (String, String),
    /// Both ends of the serving window.
    pub window: (String, String),
}

/// The checks of what is typed so far; nothing before a species and a feed stand there. What cannot be
/// read yet is left out, as its field says so itself.
pub fn typed_checks(writing: Writing, typed: &TypedNumbers) -> Option<AnyView> {
    typed_plan(writing, typed).map(|plan| plan_checks(writing, &plan))
}

/// The check of the largest amount typed so far where it is past its usual limit, once a weight stands there.
pub fn typed_doubt(writing: Writing, typed: &TypedNumbers) -> Option<PlanCheck> {
    let plan = typed_plan(writing, typed).filter(|plan| plan.reference.is_some())?;
    let checks = crate::domain::warnings::plan_checks::plan_checks(&plan);
    let is_doubt = |check: &PlanCheck| {
        matches!(check, PlanCheck::LargestFeed { .. }) && check.verdict() != CheckVerdict::InOrder
    };
    checks.into_iter().find(is_doubt)
}

fn typed_plan(writing: Writing, typed: &TypedNumbers) -> Option<CarePlan> {
    let mut plan = CarePlan::default_for(typed.species?);
    let feeds = typed.feeds.iter().filter_map(|(slot, time, volume)| {
        Some(PlannedFeed {
            slot: *slot,
            time: WallTime::parse(time)?,
            volume: Millilitres::parse(volume).ok()?,
        })
    });
    plan.feeds = feeds.collect();
    plan.reference = writing
        .read_mass(&typed.weight)
        .ok()
        .map(|weight| Reference {
            weight,
            day: Day::from_number(0),
        });
    let (water, powder) = &typed.mix;
    if let (Ok(water), Ok(powder)) = (writing.read_temperature(water), Percent::parse(powder)) {
        (plan.mixing_water, plan.powder_fraction) = (water, powder);
    }
    let (from, to) = &typed.window;
    if let (Ok(from), Ok(to)) = (writing.read_temperature(from), writing.read_temperature(to)) {
        (plan.serve_from, plan.serve_to) = (from, to);
    }
    Some(plan).filter(|plan| !plan.feeds.is_empty())
}

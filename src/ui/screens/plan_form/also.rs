//! What a breeder may add: more weights, waits, hours, reports, the owner, words for this chick.

use leptos::prelude::*;

use crate::domain::plan::care_plan::{CarePlan, PlanFault, Reference, is_phone_number};
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::Day;
use crate::ui::parts::field::FieldKind;
use crate::ui::screens::plan_form::text::{AtFault, Text, TextField, optional};
use crate::ui::state::AppState;
use crate::words::format::Writing;

/// The fields as typed.
#[derive(Debug, Clone, Copy)]
pub struct AlsoText {
    known: StoredValue<[Option<Grams>; 2]>,
    peak: Text,
    peak_day: Text,
    target: Text,
    scale: Text,
    gap: Text,
    retries: Text,
    ask: RwSignal<bool>,
    hours: Text,
    report_days: Text,
    owner_name: Text,
    owner_number: Text,
    note: Text,
}

impl AlsoText {
    /// The fields of a plan.
    pub fn new(writing: Writing, plan: &CarePlan) -> Self {
        let mass = |weight: Option<Grams>| {
            Text::new(weight.map_or_else(String::new, |weight| writing.mass_typed(weight)))
        };
        let number = |number: Option<String>| Text::new(number.unwrap_or_default());
        let peak = plan.peak.map(|peak| peak.weight);
        let retries: Vec<String> = plan.retries_minutes.iter().map(u16::to_string).collect();
        Self {
            known: StoredValue::new([peak, plan.target]),
            peak: mass(peak),
            peak_day: number(plan.peak.map(|peak| peak.day.iso())),
            target: mass(plan.target),
            scale: mass(Some(plan.scale_step)),
            gap: number(plan.shortest_gap_minutes.map(|minutes| minutes.to_string())),
            retries: Text::new(retries.join(", ")),
            ask: RwSignal::new(plan.ask_before_drop),
            hours: Text::new(plan.breeder_hours.clone()),
            report_days: number(plan.report_days.map(|days| days.to_string())),
            owner_name: Text::new(plan.owner_name.clone()),
            owner_number: Text::new(plan.owner_number.clone()),
            note: Text::new(plan.note_for_chick.clone()),
        }
    }

    /// Every field.
    pub const fn all(self) -> [Text; 11] {
        [
            self.peak,
            self.peak_day,
            self.target,
            self.scale,
            self.gap,
            self.retries,
            self.hours,
            self.report_days,
            self.owner_name,
            self.owner_number,
            self.note,
        ]
    }

    /// Puts what was typed into a plan.
    ///
    /// # Errors
    /// [`AtFault`] when a field says what is wrong with it.
    pub fn put(self, writing: Writing, plan: &mut CarePlan) -> Result<(), AtFault> {
        let say = writing.language;
        let [known_peak, known_target] = self.known.get_value();
        let peak = weight(writing, self.peak, known_peak);
        let peak_day = self.peak_day.take(optional(self.peak_day, |text| {
            Day::parse_iso(text).ok_or(say.fault_no_date())
        }));
        let target = weight(writing, self.target, known_target);
        let scale = weight(writing, self.scale, Some(plan.scale_step));
        let waits = || say.plan_fault(PlanFault::Waits);
        let gap = self.gap.take(optional(self.gap, |text| {
            text.parse::<u16>().or(Err(waits()))
        }));
        let retries = self.retries.get();
        let retries = retries
            .split([',', ';', ' '])
            .filter(|text| !text.is_empty());
        let retries: Result<Vec<u16>, _> = retries.map(str::parse::<u16>).collect();
        let retries = self.retries.take(retries.or(Err(waits().to_owned())));
        let report_days = self.report_days.take(optional(self.report_days, |text| {
            let days = text.parse::<u8>().ok();
            let days = days.filter(|days| (1..=60).contains(days));
            days.ok_or(say.fault_days())
        }));
        let owner_number = self.owner_number.get();
        let is_sound = owner_number.is_empty() || is_phone_number(&owner_number);
        let fault = || say.plan_fault(PlanFault::ContactNumber).to_owned();
        let owner_number = self
            .owner_number
            .take(is_sound.then_some(owner_number).ok_or_else(fault));
        let (peak, peak_day) = (peak?, peak_day.ok_or(AtFault)?);
        if peak.is_some() && peak_day.is_none() {
            self.peak_day.fault.set(say.fault_no_date().to_owned());
            return Err(AtFault);
        }
        plan.peak = peak
            .zip(peak_day)
            .map(|(weight, day)| Reference { weight, day });
        plan.target = target?;
        plan.scale_step = scale?.unwrap_or(plan.scale_step);
        plan.shortest_gap_minutes = gap.ok_or(AtFault)?;
        plan.retries_minutes = retries.ok_or(AtFault)?;
        plan.ask_before_drop = self.ask.get_untracked();
        plan.breeder_hours = self.hours.get();
        plan.report_days = report_days.ok_or(AtFault)?;
        plan.owner_name = self.owner_name.get();
        plan.owner_number = owner_number.ok_or(AtFault)?;
        plan.note_for_chick = self.note.get();
        if plan.faults().contains(&PlanFault::Waits) {
            self.retries.fault.set(waits().to_owned());
            return Err(AtFault);
        }
        Ok(())
    }
}

/// A weight that may stay empty; who has not touched it has not rounded it either.
fn weight(writing: Writing, text: Text, known: Option<Grams>) -> Result<Option<Grams>, AtFault> {
    let weight = text.take(optional(text, |typed| {
        let same = known.filter(|known| writing.mass_typed(*known) == typed);
        let read = || {
            writing
                .read_mass(typed)
                .map_err(|error| writing.number_error(error))
        };
        same.map_or_else(read, Ok)
    }));
    weight.ok_or(AtFault)
}

/// The fields that a breeder may add.
#[component]
pub fn AlsoRows(
    /// What is typed.
    also: AlsoText,
) -> impl IntoView {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    let (optional, mass) = (say.optional(), writing.mass_unit());
    view! {
        <TextField id="peak" label=say.plan_part_peak() text=also.peak kind=FieldKind::Number unit=mass hint=optional />
        <TextField id="peak-day" label=say.plan_weight_day() text=also.peak_day kind=FieldKind::Day />
        <TextField id="target" label=say.plan_part_target() text=also.target kind=FieldKind::Number unit=mass hint=optional />
        <TextField id="scale" label=say.plan_part_scale() text=also.scale kind=FieldKind::Number unit=mass />
        <TextField id="gap" label=say.plan_part_gap() text=also.gap kind=FieldKind::Number unit="min" hint=optional />
        <TextField id="retries" label=say.plan_part_retries() text=also.retries kind=FieldKind::Text unit="min" />
        <label class="choice__option">
            <input
                type="checkbox"
                prop:checked=move || also.ask.get()
                on:change=move |event| also.ask.set(event_target_checked(&event))
            />
            <span>{say.plan_ask_me()}</span>
        </label>
        <TextField id="hours" label=say.plan_part_hours() text=also.hours kind=FieldKind::Text hint=optional />
        <TextField id="report-days" label=say.plan_part_report_days() text=also.report_days kind=FieldKind::Number hint=optional />
        <TextField id="owner-name" label=say.plan_owner_name() text=also.owner_name kind=FieldKind::Text hint=optional />
        <TextField id="owner-number" label=say.plan_owner_number() text=also.owner_number kind=FieldKind::Telephone hint=optional />
        <TextField id="note-for-chick" label=say.plan_part_note_for_chick() text=also.note kind=FieldKind::Text hint=optional />
    }
}

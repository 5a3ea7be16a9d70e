//! The care plan's saved form.

use crate::domain::plan::care_plan::{
    CarePlan, Contact, Journey, PlannedFeed, PowderLabel, Reference,
};
use crate::domain::plan::topic::{Topic, said_of};
use crate::domain::quantity::order::set_of;
use crate::domain::quantity::units::{Celsius, Grams, Millilitres, Percent};
use crate::store::json::Json;
use crate::store::saved::fields::{Fields, ObjectText};
use crate::store::saved_error::SavedError;

/// The plan as an object.
pub(crate) fn plan_to_text(plan: &CarePlan) -> String {
    let mut object = ObjectText::new();
    object.tag("species", plan.species);
    object.text("name", &plan.name);
    object.text("ring", &plan.ring);
    if let Some(hatched) = plan.hatched {
        object.text("hatched", &hatched.iso());
    }
    if let Some(reference) = plan.reference {
        object.json("reference", &reference_to_text(reference));
    }
    object.tenths("scale_step_g10", plan.scale_step.tenths());
    let feeds: Vec<String> = plan.feeds.iter().copied().map(feed_to_text).collect();
    object.list("feeds", &feeds);
    object.tenths("powder_pct10", plan.powder_fraction.tenths());
    object.tenths(
        "fat_g10_per_100_ml",
        plan.fat_supplement_per_100_ml.tenths(),
    );
    if let Some(label) = &plan.powder_label {
        object.json("label_per_100_g", &label_to_text(label));
    }
    if let Some(ten_spoons) = plan.ten_spoons {
        object.tenths("ten_spoons_g10", ten_spoons.tenths());
    }
    object.tenths("serve_from_c10", plan.serve_from.tenths());
    object.tenths("serve_to_c10", plan.serve_to.tenths());
    object.tag("tool", plan.tool);
    object.tenths("syringe_ml10", plan.syringe.tenths());
    object.tenths("loss_limit_pct10", plan.loss_limit.tenths());
    object.tags("drop_order", plan.drop_order.iter().copied());
    object.number("settle_in_days", i64::from(plan.settle_in_days));
    object.number("waiting_days", i64::from(plan.waiting_days));
    object.tenths("room_from_c10", plan.room_from.tenths());
    object.tenths("room_to_c10", plan.room_to.tenths());
    if let Some(journey) = &plan.journey {
        object.json("journey", &journey_to_text(journey));
    }
    let contacts: Vec<String> = plan.contacts.iter().map(contact_to_text).collect();
    object.list("contacts", &contacts);
    object.text("solids", &plan.solids);
    object.text("note", &plan.note);
    if let Some(peak) = plan.peak {
        object.json("peak", &reference_to_text(peak));
    }
    if let Some(target) = plan.target {
        object.tenths("target_g10", target.tenths());
    }
    if let Some(gap) = plan.shortest_gap_minutes {
        object.number("shortest_gap_min", i64::from(gap));
    }
    let retries: Vec<String> = plan.retries_minutes.iter().map(u16::to_string).collect();
    if plan.retries_minutes != CarePlan::RETRIES_MINUTES {
        object.list("retries_min", &retries);
    }
    if plan.ask_before_drop {
        object.flag("ask_before_drop", true);
    }
    object.text_if_any("breeder_hours", &plan.breeder_hours);
    if let Some(days) = plan.report_days {
        object.number("report_days", i64::from(days));
    }
    object.text_if_any("owner_name", &plan.owner_name);
    object.text_if_any("owner_number", &plan.owner_number);
    object.text_if_any("note_for_chick", &plan.note_for_chick);
    if plan.mixing_water != CarePlan::MIXING_WATER {
        object.tenths("mixing_water_c10", plan.mixing_water.tenths());
    }
    let said = plan.said.iter().map(|(topic, text)| {
        let mut object = ObjectText::new();
        object.tag("topic", *topic);
        object.text("text", text);
        object.finish()
    });
    let said: Vec<String> = said.collect();
    if !said.is_empty() {
        object.list("said", &said);
    }
    object.tags("unconfirmed", plan.unconfirmed.iter().copied());
    object.finish()
}

/// The plan of an object; its faults are for the caller to look at.
pub(crate) fn read_plan(mut fields: Fields<'_>) -> Result<CarePlan, SavedError> {
    let mut plan = CarePlan {
        species: fields.tag("species")?,
        name: fields.text("name")?,
        ring: fields.text("ring")?,
        hatched: fields.optional("hatched", Fields::day)?,
        reference: fields.optional("reference", read_reference)?,
        scale_step: grams(&mut fields, "scale_step_g10")?,
        feeds: each(fields.list("feeds")?, "feeds", read_feed)?,
        powder_fraction: percent(&mut fields, "powder_pct10")?,
        fat_supplement_per_100_ml: grams(&mut fields, "fat_g10_per_100_ml")?,
        powder_label: fields.optional("label_per_100_g", read_label)?,
        ten_spoons: fields.optional("ten_spoons_g10", grams)?,
        serve_from: celsius(&mut fields, "serve_from_c10")?,
        serve_to: celsius(&mut fields, "serve_to_c10")?,
        tool: fields.tag("tool")?,
        syringe: millilitres(&mut fields, "syringe_ml10")?,
        loss_limit: percent(&mut fields, "loss_limit_pct10")?,
        drop_order: fields.tags("drop_order")?,
        settle_in_days: fields.small("settle_in_days")?,
        waiting_days: fields.small("waiting_days")?,
        room_from: celsius(&mut fields, "room_from_c10")?,
        room_to: celsius(&mut fields, "room_to_c10")?,
        journey: fields.optional("journey", read_journey)?,
        contacts: each(fields.list("contacts")?, "contacts", read_contact)?,
        solids: fields.text("solids")?,
        note: fields.text("note")?,
        peak: fields.optional("peak", read_reference)?,
        target: fields.optional("target_g10", grams)?,
        shortest_gap_minutes: fields.optional("shortest_gap_min", Fields::small)?,
        retries_minutes: fields
            .optional("retries_min", minutes)?
            .unwrap_or(CarePlan::RETRIES_MINUTES.into()),
        ask_before_drop: fields
            .optional("ask_before_drop", Fields::flag)?
            .unwrap_or_default(),
        breeder_hours: fields
            .optional("breeder_hours", Fields::text)?
            .unwrap_or_default(),
        report_days: fields.optional("report_days", Fields::small)?,
        owner_name: fields
            .optional("owner_name", Fields::text)?
            .unwrap_or_default(),
        owner_number: fields
            .optional("owner_number", Fields::text)?
            .unwrap_or_default(),
        note_for_chick: fields
            .optional("note_for_chick", Fields::text)?
            .unwrap_or_default(),
        mixing_water: fields
            .optional("mixing_water_c10", celsius)?
            .unwrap_or(CarePlan::MIXING_WATER),
        said: fields
            .optional("said", |fields, field| {
                each(fields.list(field)?, field, read_said)
            })?
            .map(said_of)
            .unwrap_or_default(),
        unconfirmed: set_of(fields.tags("unconfirmed")?),
    };
    fields.finish()?;
    (plan.serve_from, plan.serve_to) = CarePlan::serving_held(plan.serve_from, plan.serve_to);
    Ok(plan)
}

fn read_said(fields: &mut Fields<'_>) -> Result<(Topic, String), SavedError> {
    Ok((fields.tag("topic")?, fields.text("text")?))
}

fn minutes(fields: &mut Fields<'_>, field: &'static str) -> Result<Vec<u16>, SavedError> {
    let values = fields.list(field)?;
    let minutes = values.iter().map(|value| {
        let value = value.whole().ok_or(SavedError::WrongKind { field })?;
        u16::try_from(value).or(Err(SavedError::OutOfRange { field, value }))
    });
    minutes.collect()
}

fn each<T>(
    values: Vec<Json<'_>>,
    field: &'static str,
    read: fn(&mut Fields<'_>) -> Result<T, SavedError>,
) -> Result<Vec<T>, SavedError> {
    let mut parts = Vec::new();
    for value in values {
        let mut fields = Fields::new(value, field)?;
        parts.push(read(&mut fields)?);
        fields.finish()?;
    }
    Ok(parts)
}

fn reference_to_text(reference: Reference) -> String {
    let mut object = ObjectText::new();
    object.tenths("g10", reference.weight.tenths());
    object.text("day", &reference.day.iso());
    object.finish()
}

fn read_reference(fields: &mut Fields<'_>, field: &'static str) -> Result<Reference, SavedError> {
    let mut fields = fields.object(field)?;
    let reference = Reference {
        weight: grams(&mut fields, "g10")?,
        day: fields.day("day")?,
    };
    fields.finish()?;
    Ok(reference)
}

fn feed_to_text(feed: PlannedFeed) -> String {
    let mut object = ObjectText::new();
    object.tag("slot", feed.slot);
    object.text("time", &feed.time.text());
    object.tenths("ml10", feed.volume.tenths());
    object.finish()
}

fn read_feed(fields: &mut Fields<'_>) -> Result<PlannedFeed, SavedError> {
    Ok(PlannedFeed {
        slot: fields.tag("slot")?,
        time: fields.wall_time("time")?,
        volume: millilitres(fields, "ml10")?,
    })
}

fn label_to_text(label: &PowderLabel) -> String {
    let mut object = ObjectText::new();
    object.number("kcal", i64::from(label.energy_kcal));
    object.tenths("fat_pct10", label.fat.tenths());
    object.tenths("protein_pct10", label.protein.tenths());
    object.finish()
}

fn read_label(fields: &mut Fields<'_>, field: &'static str) -> Result<PowderLabel, SavedError> {
    let mut fields = fields.object(field)?;
    let label = PowderLabel {
        energy_kcal: fields.small("kcal")?,
        fat: percent(&mut fields, "fat_pct10")?,
        protein: percent(&mut fields, "protein_pct10")?,
    };
    fields.finish()?;
    Ok(label)
}

fn journey_to_text(journey: &Journey) -> String {
    let mut object = ObjectText::new();
    object.number("left", journey.left.seconds());
    object.number("expected", journey.expected.seconds());
    object.number("breeder_tz", i64::from(journey.breeder_offset.minutes()));
    object.tag("shift", journey.shift);
    if let Some((at, volume)) = journey.last_fed {
        object.number("last_fed", at.seconds());
        object.tenths("last_fed_ml10", volume.tenths());
    }
    object.finish()
}

fn read_journey(fields: &mut Fields<'_>, field: &'static str) -> Result<Journey, SavedError> {
    let mut fields = fields.object(field)?;
    let journey = Journey {
        left: fields.moment("left")?,
        expected: fields.moment("expected")?,
        breeder_offset: fields.offset("breeder_tz")?,
        shift: fields.tag("shift")?,
        last_fed: match fields.optional("last_fed", Fields::moment)? {
            Some(at) => Some((at, millilitres(&mut fields, "last_fed_ml10")?)),
            None => None,
        },
    };
    fields.finish()?;
    Ok(journey)
}

fn contact_to_text(contact: &Contact) -> String {
    let mut object = ObjectText::new();
    object.tag("role", contact.role);
    object.text("name", &contact.name);
    object.text("number", &contact.number);
    object.finish()
}

fn read_contact(fields: &mut Fields<'_>) -> Result<Contact, SavedError> {
    Ok(Contact {
        role: fields.tag("role")?,
        name: fields.text("name")?,
        number: fields.text("number")?,
    })
}

fn grams(fields: &mut Fields<'_>, field: &'static str) -> Result<Grams, SavedError> {
    fields.tenths(field, Grams::from_tenths)
}

fn millilitres(fields: &mut Fields<'_>, field: &'static str) -> Result<Millilitres, SavedError> {
    fields.tenths(field, Millilitres::from_tenths)
}

fn celsius(fields: &mut Fields<'_>, field: &'static str) -> Result<Celsius, SavedError> {
    fields.tenths(field, Celsius::from_tenths)
}

fn percent(fields: &mut Fields<'_>, field: &'static str) -> Result<Percent, SavedError> {
    fields.tenths(field, Percent::from_tenths)
}

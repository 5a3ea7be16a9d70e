//! A care plan in words: line by line, and old → new.

use crate::domain::plan::care_plan::{CarePlan, ClockShift, PlanField, Role};
use crate::domain::plan::plan_part::{PlanPart, plan_difference};
use crate::domain::quantity::units::Celsius;
use crate::words::Language;
use crate::words::format::Writing;

impl Writing {
    /// A plan line by line: label and value; parts that hold nothing are left out, and defaults that
    /// nobody has confirmed are marked.
    pub fn plan_lines(self, plan: &CarePlan) -> Vec<(String, String)> {
        let line = |part| {
            let value = self.plan_value(plan, part)?;
            let is_default = field_of(part).is_some_and(|field| plan.unconfirmed.contains(&field));
            let mark = if is_default {
                format!(" ({})", self.language.plan_default())
            } else {
                String::new()
            };
            Some((self.plan_label(part).to_owned(), format!("{value}{mark}")))
        };
        PlanPart::ALL.into_iter().filter_map(line).collect()
    }

    /// The lines of a plan that are defaults which nobody has confirmed.
    pub fn unconfirmed_lines(self, plan: &CarePlan) -> Vec<String> {
        let is_default = |part: &PlanPart| {
            field_of(*part).is_some_and(|field| plan.unconfirmed.contains(&field))
        };
        let line = |part| {
            let value = self.plan_value(plan, part)?;
            Some(format!("{}: {value}", self.plan_label(part)))
        };
        let parts = PlanPart::ALL.into_iter().filter(is_default);
        parts.filter_map(line).collect()
    }

    /// What a new plan changes, a line each: "Bedtime feed: 21:00, 60 ml → 21:00, 50 ml".
    pub fn plan_changes(self, old: &CarePlan, new: &CarePlan) -> Vec<String> {
        let parts = plan_difference(old, new).into_iter();
        parts.map(|part| self.plan_change(old, new, part)).collect()
    }

    /// One part of a plan, old → new.
    pub fn plan_change(self, old: &CarePlan, new: &CarePlan, part: PlanPart) -> String {
        let value = |plan| {
            let value = self.plan_value(plan, part);
            value.unwrap_or_else(|| self.language.plan_part_none().to_owned())
        };
        let label = self.plan_label(part);
        format!("{label}: {} → {}", value(old), value(new))
    }

    /// The name of a part.
    pub const fn plan_label(self, part: PlanPart) -> &'static str {
        let say = self.language;
        match part {
            PlanPart::Species => say.plan_part_species(),
            PlanPart::Name => say.plan_part_name(),
            PlanPart::Ring => say.plan_ring(),
            PlanPart::Hatched => say.plan_part_hatched(),
            PlanPart::Reference => say.plan_part_reference(),
            PlanPart::Feed(slot) => say.feed(slot),
            PlanPart::PowderShare => say.plan_part_powder(),
            PlanPart::FatSupplement => say.plan_part_fat(),
            PlanPart::PowderLabel => say.plan_part_label(),
            PlanPart::TenSpoons => say.plan_part_spoons(),
            PlanPart::ServingWindow => say.plan_part_serving(),
            PlanPart::Tool => say.plan_part_tool(),
            PlanPart::Syringe => say.plan_part_syringe(),
            PlanPart::ScaleStep => say.plan_part_scale(),
            PlanPart::LossLimit => say.plan_part_loss(),
            PlanPart::DropOrder => say.plan_part_order(),
            PlanPart::SettleIn => say.plan_part_settle(),
            PlanPart::Waiting => say.plan_waiting(),
            PlanPart::Room => say.plan_part_room(),
            PlanPart::Journey => say.plan_part_journey(),
            PlanPart::Contact(role) => say.role(role),
            PlanPart::Solids => say.plan_solids(),
            PlanPart::Note => say.plan_part_note(),
        }
    }

    /// What a part holds; `None` for nothing.
    pub fn plan_value(self, plan: &CarePlan, part: PlanPart) -> Option<String> {
        let typed = |text: &str| (!text.is_empty()).then(|| text.to_owned());
        Some(match part {
            PlanPart::Species => self.language.species(plan.species).to_owned(),
            PlanPart::Name => typed(&plan.name)?,
            PlanPart::Ring => typed(&plan.ring)?,
            PlanPart::Hatched => self.date(plan.hatched?),
            PlanPart::Reference => {
                let reference = plan.reference?;
                let (weight, day) = (self.mass(reference.weight), self.date(reference.day));
                format!("{weight}, {day}")
            }
            PlanPart::Feed(slot) => {
                let feed = plan.feed(slot)?;
                format!("{}, {}", self.time(feed.time), self.volume(feed.volume))
            }
            PlanPart::PowderShare => self.pct(plan.powder_fraction.as_pct()),
            PlanPart::FatSupplement => {
                let fat = plan.fat_supplement_per_100_ml;
                (fat.tenths() > 0).then(|| self.mass(fat))?
            }
            PlanPart::PowderLabel => {
                let label = plan.powder_label?;
                let (fat, protein) = (label.fat.as_pct(), label.protein.as_pct());
                self.label_line(label.energy_kcal, &self.pct(fat), &self.pct(protein))
            }
            PlanPart::TenSpoons => self.mass(plan.ten_spoons?),
            PlanPart::ServingWindow => self.warmth(plan.serve_from, plan.serve_to),
            PlanPart::Tool => self.language.tool(plan.tool).to_owned(),
            PlanPart::Syringe => self.volume(plan.syringe),
            PlanPart::ScaleStep => self.mass(plan.scale_step),
            PlanPart::LossLimit => self.pct(plan.loss_limit.as_pct()),
            PlanPart::DropOrder => {
                let slots = plan.drop_order.iter().map(|slot| self.language.slot(*slot));
                let slots: Vec<&str> = slots.collect();
                typed(&slots.join(", "))?
            }
            PlanPart::SettleIn => self.days(i32::from(plan.settle_in_days)),
            PlanPart::Waiting => self.days(i32::from(plan.waiting_days)),
            PlanPart::Room => self.warmth(plan.room_from, plan.room_to),
            PlanPart::Journey => {
                let journey = plan.journey?;
                let offset = journey.breeder_offset;
                let (left, expected) = (journey.left.lived(offset), journey.expected.lived(offset));
                let (left, expected) = (self.lived(left), self.lived(expected));
                let shift = match journey.shift {
                    ClockShift::AtOnce => self.language.plan_part_at_once(),
                    ClockShift::Gradual => self.language.plan_part_gradual(),
                };
                format!("{left} – {expected}; {shift}")
            }
            PlanPart::Contact(role) => typed(&contacts(plan, role))?,
            PlanPart::Solids => typed(&plan.solids)?,
            PlanPart::Note => typed(&plan.note)?,
        })
    }

    /// A range of temperatures in the chosen unit: "39.0–40.5 °C".
    pub fn warmth(self, from: Celsius, to: Celsius) -> String {
        let (from, to) = (self.temperature_number(from), self.temperature(to));
        format!("{from}–{to}")
    }

    fn label_line(self, energy_kcal: u16, fat: &str, protein: &str) -> String {
        match self.language {
            Language::English => {
                format!("{energy_kcal}\u{a0}kcal, {fat} fat, {protein} protein in 100\u{a0}g")
            }
            Language::Spanish => {
                format!("{energy_kcal}\u{a0}kcal, {fat} grasa, {protein} proteína en 100\u{a0}g")
            }
        }
    }
}

/// The people of a role with their numbers.
fn contacts(plan: &CarePlan, role: Role) -> String {
    let people = plan.contacts.iter().filter(|contact| contact.role == role);
    let people = people.map(|contact| {
        let parts = [contact.name.as_str(), contact.number.as_str()];
        let parts: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        parts.join(", ")
    });
    let people: Vec<String> = people.collect();
    people.join("; ")
}

/// The field whose default a part may still hold.
const fn field_of(part: PlanPart) -> Option<PlanField> {
    match part {
        PlanPart::Feed(_) => Some(PlanField::Feeds),
        PlanPart::PowderShare => Some(PlanField::PowderShare),
        PlanPart::ServingWindow => Some(PlanField::ServingWindow),
        PlanPart::LossLimit => Some(PlanField::LossLimit),
        PlanPart::DropOrder => Some(PlanField::DropOrder),
        PlanPart::SettleIn => Some(PlanField::SettleIn),
        PlanPart::Waiting => Some(PlanField::WaitingDays),
        PlanPart::Room => Some(PlanField::Room),
        PlanPart::Tool | PlanPart::Syringe => Some(PlanField::Tool),
        PlanPart::Species
        | PlanPart::Name
        | PlanPart::Ring
        | PlanPart::Hatched
        | PlanPart::Reference
        | PlanPart::FatSupplement
        | PlanPart::PowderLabel
        | PlanPart::TenSpoons
        | PlanPart::ScaleStep
        | PlanPart::Journey
        | PlanPart::Contact(_)
        | PlanPart::Solids
        | PlanPart::Note => None,
    }
}

texts! {
    plan_part_none: "none", "nada";
    plan_part_species: "Species", "Especie";
    plan_part_name: "Name", "Nombre";
    plan_part_hatched: "Hatched", "Nació";
    plan_part_reference: "Handover weight, crop empty", "Peso en la entrega, buche vacío";
    plan_part_powder: "Powder in the mix, by weight", "Polvo en la mezcla, en peso";
    plan_part_fat: "Fat supplement in 100 ml of mix", "Suplemento graso en 100 ml de mezcla";
    plan_part_label: "Powder label", "Etiqueta del polvo";
    plan_part_spoons: "Powder in ten level spoons", "Polvo en diez cucharas rasas";
    plan_part_serving: "Serve at", "Dar a";
    plan_part_tool: "Given with", "Se da con";
    plan_part_syringe: "Syringe", "Jeringa";
    plan_part_scale: "Scale shows steps of", "La báscula marca pasos de";
    plan_part_loss: "Loss that wants a call", "Pérdida que pide una llamada";
    plan_part_order: "Feeds to go, in this order", "Tomas que se quitan, por orden";
    plan_part_settle: "Days to settle in without dropping a feed", "Días de adaptación sin quitar tomas";
    plan_part_room: "Room", "Habitación";
    plan_part_journey: "Journey, breeder's clock", "Viaje, hora del criador";
    plan_part_at_once: "feeds by the new clock at once", "tomas con la hora nueva desde el primer día";
    plan_part_gradual: "feeds move by an hour a day at most", "las tomas se mueven como mucho una hora al día";
    plan_part_note: "From the breeder", "Del criador";
}

#[cfg(test)]
mod tests {
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::plan::species::Species;
    use crate::domain::quantity::units::Millilitres;
    use crate::words::plan_change::*;

    #[test]
    fn a_changed_volume_is_one_line_from_old_to_new() {
        let old = CarePlan::default_for(Species::GreenWingedMacaw);
        let mut new = old.clone();
        for feed in &mut new.feeds {
            if feed.slot == Slot::Bedtime {
                feed.volume = Millilitres::whole(50);
            }
        }
        let was = old.feed(Slot::Bedtime).unwrap().volume.tenths() / 10;
        let changes = Writing::metric(Language::English).plan_changes(&old, &new);
        let line = format!("Bedtime feed: 21:00, {was}\u{a0}ml → 21:00, 50\u{a0}ml");
        assert_eq!(changes, [line]);
    }

    #[test]
    fn a_feed_taken_out_and_a_number_put_in_are_told_as_none() {
        let old = CarePlan::default_for(Species::GreyParrot);
        let mut new = old.clone();
        new.feeds.remove(1);
        "5 gold".clone_into(&mut new.ring);
        let changes = Writing::metric(Language::Spanish).plan_changes(&old, &new);
        assert_eq!(changes.len(), 2, "{changes:?}");
        assert_eq!(changes[0], "Número de anilla o chip: nada → 5 gold");
        assert!(changes[1].starts_with("Toma del mediodía: 14:00, "));
        assert!(changes[1].ends_with(" → nada"));
    }

    #[test]
    fn a_default_is_marked_until_somebody_confirms_it() {
        let mut plan = CarePlan::default_for(Species::GreyParrot);
        let room = |plan: &CarePlan| {
            let lines = Writing::metric(Language::English).plan_lines(plan);
            lines
                .into_iter()
                .find(|(label, _)| label == "Room")
                .unwrap()
                .1
        };
        let mark = " (default, not confirmed by the breeder)";
        assert_eq!(room(&plan), format!("24.0–27.0\u{a0}°C{mark}"));
        plan.unconfirmed.clear();
        assert_eq!(room(&plan), "24.0–27.0\u{a0}°C");
    }
}

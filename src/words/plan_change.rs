//! A care plan in words: line by line, and old → new.

use crate::domain::journal::chick::Chick;
use crate::domain::journal::incoming::{ChangedLine, Incoming};
use crate::domain::journal::plan_record::{NotAgreed, PlanVersion, Proposal};
use crate::domain::plan::ask_first::AskFirst;
use crate::domain::plan::care_plan::{CarePlan, ClockShift, PlanField, Reference, Role};
use crate::domain::plan::parts::PartKind;
use crate::domain::plan::plan_line::{PlanLine, plan_difference};
use crate::domain::quantity::units::Celsius;
use crate::domain::time::moment::Lived;
use crate::words::Language;
use crate::words::exchange::labelled;
use crate::words::format::Writing;

impl Language {
    /// What a part of the plan is about.
    pub const fn plan_part(self, kind: PartKind) -> &'static str {
        match kind {
            PartKind::Chick => self.part_chick(),
            PartKind::People => self.part_people(),
            PartKind::Vets => self.part_vets(),
            PartKind::Equipment => self.part_equipment(),
            PartKind::Feeds => self.part_feeds(),
            PartKind::Formula => self.part_formula(),
            PartKind::Weight => self.part_weight(),
            PartKind::Weaning => self.part_weaning(),
            PartKind::Home => self.part_home(),
            PartKind::Journey => self.part_journey(),
            PartKind::Words => self.part_words(),
        }
    }
}

impl Writing {
    /// A plan line by line: label and value; parts that hold nothing are left out, and defaults that
    /// nobody has confirmed are marked.
    pub fn plan_lines(self, plan: &CarePlan) -> Vec<(String, String)> {
        let line = |part| {
            let value = self.plan_value(plan, part)?;
            let is_default = part
                .field()
                .is_some_and(|field| plan.unconfirmed.contains(&field));
            let mark = if is_default {
                format!(" ({})", self.language.plan_default())
            } else {
                String::new()
            };
            Some((self.plan_label(part).to_owned(), format!("{value}{mark}")))
        };
        PlanLine::ALL.into_iter().filter_map(line).collect()
    }

    /// What a plan says in a field that nobody has confirmed: "Bedtime feed: 21:00, 60 ml; …".
    pub fn field_lines(self, plan: &CarePlan, field: PlanField) -> String {
        let line = |part: PlanLine| {
            let value = self.plan_value(plan, part)?;
            let label = self.plan_label(part);
            (part.field() == Some(field)).then(|| format!("{label}: {value}"))
        };
        let lines = PlanLine::ALL.into_iter().filter_map(line);
        lines.collect::<Vec<_>>().join("; ")
    }

    /// What a new plan changes, a line each: "Bedtime feed: 21:00, 60 ml → 21:00, 50 ml".
    pub fn plan_changes(self, old: &CarePlan, new: &CarePlan) -> Vec<String> {
        let parts = plan_difference(old, new).into_iter();
        parts.map(|part| self.plan_change(old, new, part)).collect()
    }

    /// A plan's short name: "Plan 4, 12 Nov 2026", and whether the breeder has yet to agree to it.
    pub fn plan_version(self, version: PlanVersion) -> String {
        let plan = self.language.plan_word();
        let day = self.date(version.lived.day);
        let mark = if version.is_agreed {
            ""
        } else {
            self.language.plan_mark_not_agreed()
        };
        format!("{plan} {}, {day}{mark}", version.number)
    }

    /// What an owner did and told, a line each: the breeder's value, what holds now, and who set it when.
    pub fn not_agreed(self, plan: &CarePlan, set: &NotAgreed) -> Vec<String> {
        let who = self.written(&set.by, set.lived);
        let lines = set.lines.iter();
        lines
            .map(|line| format!("{} ({who})", self.plan_change(&set.plan, plan, *line)))
            .collect()
    }

    /// What of the plan is not agreed, and what is asked for, a line each.
    pub fn plan_open(self, chick: &Chick) -> Vec<String> {
        let say = self.language;
        let told = chick.plans.not_agreed();
        let told = told
            .iter()
            .flat_map(|set| self.not_agreed(&chick.plan, set));
        let told = told.map(|line| labelled(say.plan_not_agreed(), &line));
        let asked = chick.proposals();
        let asked = asked.iter().filter(|proposal| proposal.is_asked);
        let asked = asked.flat_map(|proposal| self.proposal(&chick.plan, proposal));
        let asked = asked.map(|line| labelled(say.plan_asked(), &line));
        told.chain(asked).collect()
    }

    /// Why something has to be asked for.
    pub fn ask_first(self, asked: AskFirst) -> String {
        let say = self.language;
        match asked {
            AskFirst::MoreFood(slot) => labelled(say.plan_ask_more(), say.feed(slot)),
            AskFirst::FeedRemoved(slot) => labelled(say.plan_ask_removed(), say.feed(slot)),
            AskFirst::LessInADay => say.plan_ask_less().to_owned(),
            AskFirst::LongerGap => say.plan_ask_gap().to_owned(),
            AskFirst::HotterFood => say.plan_ask_hotter().to_owned(),
            AskFirst::LooserLimit => say.plan_ask_looser().to_owned(),
        }
    }

    /// What somebody proposes, a line each.
    pub fn proposal(self, plan: &CarePlan, proposal: &Proposal) -> Vec<String> {
        let lines = proposal.lines.iter();
        lines
            .map(|line| self.plan_change(plan, &proposal.plan, *line))
            .collect()
    }

    /// Who wrote something, and when: "Ann, 12 Nov 19:30".
    pub fn written(self, by: &str, lived: Lived) -> String {
        name_and_number(by, &self.lived(lived))
    }

    /// What would come in of a chick that is here, a line each with who wrote it when.
    pub fn incoming(self, incoming: &Incoming) -> Vec<String> {
        let Some(old) = &incoming.old else {
            let lines = self.plan_lines(&incoming.new).into_iter();
            return lines
                .map(|(label, value)| format!("{label}: {value}"))
                .collect();
        };
        let line = |changed: &ChangedLine| {
            let change = self.plan_change(old, &incoming.new, changed.line);
            format!("{change} ({})", self.written(&changed.by, changed.lived))
        };
        incoming.changes.iter().map(line).collect()
    }

    /// Why nothing of the plan changes.
    pub fn nothing_changes(self, incoming: &Incoming) -> String {
        let day = self.date(incoming.version.lived.day);
        match (self.language, incoming.is_older) {
            (_, false) => self.language.exchange_no_change().to_owned(),
            (Language::English, true) => format!("Older than yours ({day}): nothing to change."),
            (Language::Spanish, true) => {
                format!("Más antiguo que el suyo ({day}): no hay nada que cambiar.")
            }
        }
    }

    /// How much waits for an answer.
    pub fn proposals_wait(self, count: usize) -> String {
        match (self.language, count) {
            (Language::English, 1) => {
                "1 other value for the plan waits for your answer. Nothing changes until then."
                    .to_owned()
            }
            (Language::English, _) => {
                format!(
                    "{count} other values for the plan wait for your answer. Nothing changes until then."
                )
            }
            (Language::Spanish, 1) => {
                "1 valor distinto para el plan espera su respuesta. Hasta entonces no cambia nada."
                    .to_owned()
            }
            (Language::Spanish, _) => {
                format!(
                    "{count} valores distintos para el plan esperan su respuesta. Hasta entonces no cambia nada."
                )
            }
        }
    }

    /// One part of a plan, old → new.
    pub fn plan_change(self, old: &CarePlan, new: &CarePlan, part: PlanLine) -> String {
        let value = |plan| {
            let value = self.plan_value(plan, part);
            value.unwrap_or_else(|| self.language.plan_part_none().to_owned())
        };
        let label = self.plan_label(part);
        format!("{label}: {} → {}", value(old), value(new))
    }

    /// The name of a part.
    pub const fn plan_label(self, part: PlanLine) -> &'static str {
        let say = self.language;
        match part {
            PlanLine::Species => say.plan_part_species(),
            PlanLine::Name => say.plan_part_name(),
            PlanLine::Ring => say.plan_ring(),
            PlanLine::Hatched => say.plan_part_hatched(),
            PlanLine::Reference => say.plan_part_reference(),
            PlanLine::Feed(slot) => say.feed(slot),
            PlanLine::PowderShare => say.plan_part_powder(),
            PlanLine::FatSupplement => say.plan_part_fat(),
            PlanLine::PowderLabel => say.plan_part_label(),
            PlanLine::TenSpoons => say.plan_part_spoons(),
            PlanLine::MixingWater => say.plan_part_water(),
            PlanLine::ServingWindow => say.plan_part_serving(),
            PlanLine::Tool => say.plan_part_tool(),
            PlanLine::Syringe => say.plan_part_syringe(),
            PlanLine::ScaleStep => say.plan_part_scale(),
            PlanLine::LossLimit => say.plan_part_loss(),
            PlanLine::DropOrder => say.plan_part_order(),
            PlanLine::SettleIn => say.plan_part_settle(),
            PlanLine::Waiting => say.plan_waiting(),
            PlanLine::Room => say.plan_part_room(),
            PlanLine::Journey => say.plan_part_journey(),
            PlanLine::Contact(role) => say.role(role),
            PlanLine::Solids => say.plan_solids(),
            PlanLine::Said(topic) => say.topic(topic),
            PlanLine::Note => say.plan_part_note(),
            PlanLine::NoteForChick => say.plan_part_note_for_chick(),
            PlanLine::Peak => say.plan_part_peak(),
            PlanLine::Target => say.plan_part_target(),
            PlanLine::ShortestGap => say.plan_part_gap(),
            PlanLine::Retries => say.plan_part_retries(),
            PlanLine::AskBeforeDrop => say.plan_part_ask(),
            PlanLine::BreederHours => say.plan_part_hours(),
            PlanLine::ReportDays => say.plan_part_report_days(),
            PlanLine::Owner => say.plan_part_owner(),
        }
    }

    /// What a part holds; `None` for nothing.
    pub fn plan_value(self, plan: &CarePlan, part: PlanLine) -> Option<String> {
        let typed = |text: &str| (!text.is_empty()).then(|| text.to_owned());
        Some(match part {
            PlanLine::Species => self.language.species(plan.species).to_owned(),
            PlanLine::Name => typed(&plan.name)?,
            PlanLine::Ring => typed(&plan.ring)?,
            PlanLine::Hatched => self.date(plan.hatched?),
            PlanLine::Reference => self.reference(plan.reference?),
            PlanLine::Feed(slot) => {
                let feed = plan.feed(slot)?;
                format!("{}, {}", self.time(feed.time), self.volume(feed.volume))
            }
            PlanLine::PowderShare => self.powder_share(plan.powder_fraction.as_pct()),
            PlanLine::FatSupplement => {
                let fat = plan.fat_supplement_per_100_ml;
                (fat.tenths() > 0).then(|| self.mass(fat))?
            }
            PlanLine::PowderLabel => {
                let label = plan.powder_label?;
                let (fat, protein) = (label.fat.as_pct(), label.protein.as_pct());
                self.label_line(label.energy_kcal, &self.pct(fat), &self.pct(protein))
            }
            PlanLine::TenSpoons => self.mass(plan.ten_spoons?),
            PlanLine::MixingWater => self.temperature(plan.mixing_water),
            PlanLine::ServingWindow => self.warmth(plan.serve_from, plan.serve_to),
            PlanLine::Tool => self.language.tool(plan.tool).to_owned(),
            PlanLine::Syringe => self.volume(plan.syringe),
            PlanLine::ScaleStep => self.mass(plan.scale_step),
            PlanLine::LossLimit => self.pct(plan.loss_limit.as_pct()),
            PlanLine::DropOrder => {
                let slots = plan.drop_order.iter().map(|slot| self.language.slot(*slot));
                let slots: Vec<&str> = slots.collect();
                typed(&slots.join(", "))?
            }
            PlanLine::SettleIn => self.days(i32::from(plan.settle_in_days)),
            PlanLine::Waiting => self.days(i32::from(plan.waiting_days)),
            PlanLine::Room => self.warmth(plan.room_from, plan.room_to),
            PlanLine::Journey => {
                let journey = plan.journey?;
                let offset = journey.breeder_offset;
                let (left, expected) = (journey.left.lived(offset), journey.expected.lived(offset));
                let (left, expected) = (self.lived(left), self.lived(expected));
                let shift = match journey.shift {
                    ClockShift::AtOnce => self.language.plan_part_at_once(),
                    ClockShift::Gradual => self.language.plan_part_gradual(),
                };
                let fed = journey.last_fed.map(|(at, volume)| {
                    let (at, volume) = (self.lived(at.lived(offset)), self.volume(volume));
                    format!("; {} {at}, {volume}", self.language.plan_part_last_fed())
                });
                format!("{left} – {expected}; {shift}{}", fed.unwrap_or_default())
            }
            PlanLine::Contact(role) => typed(&contacts(plan, role))?,
            PlanLine::Solids => typed(&plan.solids)?,
            PlanLine::Said(topic) => typed(plan.said(topic))?,
            PlanLine::Note => typed(&plan.note)?,
            PlanLine::NoteForChick => typed(&plan.note_for_chick)?,
            PlanLine::Peak => self.reference(plan.peak?),
            PlanLine::Target => self.mass(plan.target?),
            PlanLine::ShortestGap => self.minutes(i64::from(plan.shortest_gap_minutes?)),
            PlanLine::Retries => {
                let retries = plan.retries_minutes.iter();
                let retries = retries.map(|minutes| self.minutes(i64::from(*minutes)));
                typed(&retries.collect::<Vec<_>>().join(", "))?
            }
            PlanLine::AskBeforeDrop => {
                let ask = plan.ask_before_drop;
                ask.then(|| self.language.plan_part_ask_yes().to_owned())?
            }
            PlanLine::BreederHours => typed(&plan.breeder_hours)?,
            PlanLine::ReportDays => self.days(i32::from(plan.report_days?)),
            PlanLine::Owner => typed(&name_and_number(&plan.owner_name, &plan.owner_number))?,
        })
    }

    fn reference(self, reference: Reference) -> String {
        let (weight, day) = (self.mass(reference.weight), self.date(reference.day));
        format!("{weight}, {day}")
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
    let people = people.map(|contact| name_and_number(&contact.name, &contact.number));
    let people: Vec<String> = people.collect();
    people.join("; ")
}

fn name_and_number(name: &str, number: &str) -> String {
    let parts: Vec<&str> = [name, number]
        .into_iter()
        .filter(|part| !part.is_empty())
        .collect();
    parts.join(", ")
}

texts! {
    plan_ask_me: "Ask the breeder before any feed is dropped", "Preguntar al criador antes de quitar cualquier toma";
    plan_owner_name: "Owner's name", "Nombre del dueño";
    plan_owner_number: "Owner's number", "Teléfono del dueño";
    plan_second_contact: "If the breeder does not answer", "Si el criador no contesta";
    plan_is_breeder: "I am the breeder of this chick", "Soy el criador de este polluelo";
    plan_is_proposed: "Send the card: the change holds once the owner accepts it.", "Envíe la ficha: el cambio vale cuando el dueño lo acepte.";
    plan_proposals: "Other values for the plan: nothing changes until you answer.", "Otros valores para el plan: nada cambia hasta que responda.";
    plan_take: "Accept", "Aceptar";
    plan_decline: "Keep our value", "Dejar el actual";
    plan_taken: "Accepted into the plan", "Aceptado en el plan";
    plan_mark_not_agreed: ", not agreed", ", sin acuerdo del criador";
    plan_not_agreed: "Not agreed", "Sin acuerdo del criador";
    plan_asked: "Asked for", "Pedido";
    plan_ask_more: "more food than the breeder gave", "más comida de la que dio el criador";
    plan_ask_removed: "a feed less", "una toma menos";
    plan_ask_less: "less food in a day", "menos comida al día";
    plan_ask_gap: "a longer wait without food", "más tiempo sin comer";
    plan_ask_hotter: "hotter food", "comida más caliente";
    plan_ask_looser: "more loss before a call", "más pérdida antes de llamar";
    plan_ask_title: "Did the breeder say so?", "¿Lo dijo el criador?";
    plan_ask_only: "This could harm the chick. Ask the breeder for it, or note what the breeder said by telephone (our own rule):", "Esto podría dañar al polluelo. Pídaselo al criador, o anote lo que dijo por teléfono (norma propia):";
    plan_ask_ask: "Not yet: ask first. Nothing changes until the breeder answers.", "Todavía no: preguntar antes. Nada cambia hasta que el criador responda.";
    plan_ask_said: "Yes, by telephone.", "Sí, por teléfono.";
    plan_ask_tell: "No: change it now and tell the breeder. It is marked \"not agreed\" until the breeder answers.", "No: cambiarlo ya y avisar al criador. Queda marcado «sin acuerdo del criador» hasta que responda.";
    plan_ask_who: "Who said it on the telephone?", "¿Quién lo dijo por teléfono?";
    plan_is_asked: "Now send a report: nothing changes until the breeder answers.", "Ahora envíe un informe: nada cambia hasta que el criador responda.";
    plan_is_told: "Now send a report to the breeder: this is changed, but not agreed yet.", "Ahora envíe un informe al criador: está cambiado, pero aún sin su acuerdo.";
    plan_waits_for_breeder: "Send a report: this waits for the breeder's answer.", "Envíe un informe: esto espera la respuesta del criador.";
    plan_told_breeder: "The owner changed this without asking. Do you agree?", "El dueño cambió esto sin preguntar. ¿Está de acuerdo?";
    plan_told_owner: "Send a report: the breeder has not agreed to this yet.", "Envíe un informe: el criador aún no está de acuerdo con esto.";
    plan_told_declined: "The breeder's value waits until the owner accepts it.", "El valor del criador espera a que el dueño lo acepte.";
    plan_yes: "Yes, I agree", "Sí, de acuerdo";
    plan_answers: "It answers what you asked for. The value of the plan stays as it is.", "Responde a lo que usted pidió. El valor del plan sigue igual.";
    plan_no: "No, keep my value", "No, dejar mi valor";
    plan_agreed: "Agreed. Send the card to the owner.", "De acuerdo. Envíe la ficha al dueño.";
    plan_not_so: "Your value stands. Send the card to the owner.", "Se mantiene su valor. Envíe la ficha al dueño.";
    plan_declined: "The plan stays as it is", "El plan queda como está";
    plan_waits_for_owner: "Send the card: this waits until the owner accepts it.", "Envíe la ficha: esto espera hasta que el dueño lo acepte.";
    part_chick: "the chick", "el polluelo";
    part_people: "the breeder", "el criador";
    part_vets: "vets and owner", "veterinarios y dueño";
    part_equipment: "scale, spoons, syringe", "báscula, cucharas, jeringa";
    part_feeds: "feeds", "tomas";
    part_formula: "formula", "papilla";
    part_weight: "weight", "peso";
    part_weaning: "weaning", "destete";
    part_home: "room", "habitación";
    part_journey: "journey", "viaje";
    part_words: "breeder's notes", "notas del criador";
    plan_word: "Plan", "Plan";
    plan_part_none: "none", "nada";
    plan_part_species: "Species", "Especie";
    plan_part_name: "Name", "Nombre";
    plan_part_hatched: "Hatched", "Nació";
    plan_part_reference: "Handover weight, crop empty", "Peso en la entrega, buche vacío";
    plan_part_powder: "Powder in the formula, by weight", "Polvo en la papilla preparada, en peso";
    plan_part_fat: "Fat supplement in 100 ml of formula", "Suplemento graso en 100 ml de papilla";
    plan_part_label: "Powder label", "Etiqueta de la papilla";
    plan_part_spoons: "Powder in ten level spoons", "Peso de diez cucharas rasas de papilla en polvo";
    plan_part_water: "Water to mix with", "Agua para preparar la papilla";
    plan_part_serving: "Feed at", "Dar a";
    plan_part_tool: "Given with", "Se da con";
    plan_part_syringe: "Syringe", "Jeringa";
    plan_part_scale: "Scale reads in steps of", "La báscula marca de";
    plan_part_loss: "Call the breeder at this weight loss", "Llamar al criador si pierde";
    plan_part_order: "Feeds to drop, in this order", "Tomas que se quitan, por orden";
    plan_earlier: "Let it go earlier", "Quitar antes";
    plan_part_settle: "Days to settle in without dropping a feed", "Días de adaptación sin quitar tomas";
    plan_part_room: "Room", "Habitación";
    plan_part_last_fed: "last fed", "última toma";
    plan_part_journey: "Journey, breeder's clock", "Viaje, hora del criador";
    plan_part_at_once: "feeds by the new time from the first day", "tomas con la hora nueva desde el primer día";
    plan_part_gradual: "feeds move by an hour a day at most", "las tomas se mueven como máximo una hora al día";
    plan_part_peak: "Highest weight so far", "Peso más alto hasta ahora";
    plan_part_target: "Weight it should come to", "Peso al que debe llegar";
    plan_part_gap: "Shortest gap between two feeds", "Intervalo más corto entre dos tomas";
    plan_part_retries: "After a refusal, offer again after", "Si no la quiso, volver a ofrecerla después de";
    plan_part_ask: "Before any feed is dropped", "Antes de quitar cualquier toma";
    plan_part_ask_yes: "ask the breeder", "preguntar al criador";
    plan_part_hours: "Breeder takes calls", "Horario para llamar al criador";
    plan_part_report_days: "Days between two reports", "Días entre dos informes";
    plan_part_owner: "Owner", "Dueño";
    plan_part_note_for_chick: "From the breeder, for this chick", "Del criador, para este polluelo";
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
        assert_eq!(changes[0], "Anilla (anillo) o chip: nada → 5 gold");
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
        let mark = " (usual value, not confirmed by the breeder)";
        assert_eq!(room(&plan), format!("24.0–27.0\u{a0}°C{mark}"));
        plan.unconfirmed.clear();
        assert_eq!(room(&plan), "24.0–27.0\u{a0}°C");
    }
}

//! Words of the report, the card on paper, the vet page, the calendar and the tables.

use crate::domain::journal::chick::Chick;
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::{CarePlan, Slot};
use crate::domain::plan::topic::Topic;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::{Lived, Moment};
use crate::domain::warnings::rules::few_droppings;
use crate::words::Language;
use crate::words::format::Writing;
use crate::words::names::isolated;

impl Writing {
    /// A name to call the chick by in a title.
    pub fn name_of(self, chick: &Chick) -> String {
        if chick.plan.name.is_empty() {
            self.language.species(chick.plan.species).to_owned()
        } else {
            chick.plan.name.clone()
        }
    }

    /// How many droppings a day this bird usually makes, as far as they were counted.
    pub fn usual_droppings(self, now: Moment, chick: &Chick) -> Option<(String, String)> {
        let usual = few_droppings::usual_now(now, chick)?;
        let (label, number) = (self.language.vet_usual_droppings(), rounded(usual));
        let about = match self.language {
            Language::English => format!("about {number}"),
            Language::Spanish => format!("unas {number}"),
        };
        Some((label.to_owned(), about))
    }

    /// When a page was made.
    pub fn made_at(self, lived: Lived) -> String {
        let (date, time) = (self.date(lived.day), self.the_time(lived.time));
        match self.language {
            Language::English => format!("Made with Perchlight on {date}, {time}."),
            Language::Spanish => format!("Hecho con Perchlight el {date} a {time}."),
        }
    }

    /// The figures of a chick: what it weighs, what it lost, what it is still fed.
    pub fn figures(self, outlook: &Outlook) -> Vec<(String, String)> {
        let say = self.language;
        let chick = &outlook.chick;
        let limit = self.pct(chick.plan.loss_limit_in_force().as_pct());
        let latest = outlook.weight.latest.as_ref().map(|latest| {
            let (mass, lived) = (self.mass(latest.what.weight), self.lived(latest.lived()));
            format!("{mass}, {lived}")
        });
        let reference = chick.plan.reference.map(|reference| {
            let (mass, day) = (self.mass(reference.weight), self.date(reference.day));
            format!("{mass}, {day}")
        });
        let loss = outlook.weight.handover_loss_pct;
        let one_day = outlook
            .weight
            .one_day_loss_pct
            .map(|loss| format!("{}\u{a0}%", self.signed_pct(loss)));
        let feeds = chick.feeds_in_force(outlook.now);
        let feeds: Vec<String> = feeds
            .iter()
            .map(|feed| format!("{} {}", self.time(feed.time), self.volume(feed.volume)))
            .collect();
        let pairs = [
            (say.report_latest(), latest),
            (say.plan_part_reference(), reference),
            (
                say.weight_against(),
                loss.map(|loss| self.against_handover(loss)),
            ),
            (say.report_one_day(), one_day),
            (say.plan_part_loss(), Some(limit)),
            (say.report_still_fed(), Some(feeds.join(", "))),
        ];
        let there = pairs.into_iter().filter_map(|(label, value)| {
            let value = value.filter(|value| !value.is_empty())?;
            Some((label.to_owned(), value))
        });
        there.collect()
    }

    /// Who the patient is.
    pub fn signalment(self, outlook: &Outlook) -> Vec<(String, String)> {
        let say = self.language;
        let plan = &outlook.chick.plan;
        let profile = plan.species.profile();
        let species = format!("{} ({})", say.species(plan.species), profile.latin);
        let age = outlook.age.zip(plan.hatched);
        let age = age.map(|(age, hatched)| format!("{} ({})", self.age(age), self.date(hatched)));
        let home = outlook.chick.arrived.as_ref();
        let pairs = [
            (say.plan_part_species(), Some(species)),
            (say.vet_age(), age),
            (
                say.vet_sex(),
                Some(plan.said(Topic::Sex).to_owned()).filter(|sex| !sex.is_empty()),
            ),
            (
                say.vet_ring(),
                Some(plan.ring.clone()).filter(|ring| !ring.is_empty()),
            ),
            (
                say.vet_rearing(),
                Some(say.life_stage(outlook.stage).to_owned()),
            ),
            (
                say.vet_home_since(),
                home.map(|arrived| self.home_since_day(arrived.lived().day, outlook.lived.day)),
            ),
            (say.vet_saw(), self.vet_saw(outlook)),
            (say.vet_called(), self.vet_called(&outlook.chick)),
            (say.vet_book(), self.visit_ahead(outlook)),
        ];
        let there = pairs
            .into_iter()
            .filter_map(|(label, value)| Some((label.to_owned(), value?)));
        there.collect()
    }

    /// What stands for a feed in the calendar while food is kept back, with when it was so.
    pub fn held_feed_title(self, outlook: &Outlook) -> String {
        let name = self.calendar_name(&outlook.chick.plan);
        let as_of = self.as_of(outlook.lived);
        let title = self.instruction_title(outlook).unwrap_or_default();
        match self.language {
            Language::English => {
                format!("{name}: nothing to eat before you look in Perchlight. {as_of}: {title}")
            }
            Language::Spanish => {
                format!("{name}: nada de comer antes de mirar en Perchlight. {as_of}: {title}")
            }
        }
    }

    /// The title of the weighing in the calendar.
    pub fn weighing_title(self, plan: &CarePlan) -> String {
        let name = self.calendar_name(plan);
        match self.language {
            Language::English => format!("{name}: feel the crop and weigh"),
            Language::Spanish => format!("{name}: palpar el buche y pesar"),
        }
    }

    /// The title of a feed that is no longer given, for calendars that go on showing it.
    pub fn cancelled_title(self, slot: Slot) -> String {
        let slot = self.language.slot(slot);
        match self.language {
            Language::English => format!("No longer given: {slot}"),
            Language::Spanish => format!("Ya no se da: {slot}"),
        }
    }

    /// What a chick is called in a calendar, whose titles hold no markup.
    pub(crate) fn calendar_name(self, plan: &CarePlan) -> String {
        if plan.name.is_empty() {
            self.language.pick("The chick", "El polluelo").to_owned()
        } else {
            isolated(&plan.name)
        }
    }

    /// The title of a feed in the telephone's own calendar, with all that matters.
    pub fn feed_title(self, plan: &CarePlan, volume: Millilitres) -> String {
        let (volume, window) = (
            self.volume(volume),
            self.warmth(plan.serve_from, plan.serve_to),
        );
        match (self.language, plan.name.as_str()) {
            (Language::English, "") => format!("Feed the chick: {volume} at {window}"),
            (Language::English, name) => {
                format!("Feed {}: {volume} at {window}", isolated(name))
            }
            (Language::Spanish, "") => format!("Toma del polluelo: {volume} a {window}"),
            (Language::Spanish, name) => {
                format!("Toma de {}: {volume} a {window}", isolated(name))
            }
        }
    }
}

texts! {
    report_nothing_found: "Nothing unusual in what was noted.", "Nada anormal en lo anotado.";
    report_figures: "Numbers", "Cifras";
    report_chart_key: "Full dots: crop empty. Hollow dots: after a feed, or crop not looked at. Dashed line: handover weight. Hatched: below the loss limit.", "Puntos llenos: buche vacío. Puntos huecos: tras una toma o buche sin comprobar. Línea de trazos: peso en la entrega. Rayado: por debajo del límite de pérdida.";
    report_latest: "Last weight, crop empty", "Último peso, buche vacío";
    report_one_day: "Since the morning before", "Desde la mañana anterior";
    report_still_fed: "Feeds given now", "Tomas que se dan ahora";
    report_feed: "Feed", "Toma";
    report_feeds: "Feeds", "Tomas";
    report_offered: "Offered", "Ofrecido";
    report_served: "Temperature", "Temperatura";
    report_how: "How it ate", "Cómo comió";
    report_notes: "Everything else noted", "Todo lo demás anotado";
    report_what: "What", "Qué";
    report_by: "By", "Por";
    report_cautions: "Please remember", "Recuerde";
    report_holds_data: "Keep this file as a backup: it holds the records themselves, and Perchlight can import them. Anyone who has it can read them.", "Guarde este archivo como copia de seguridad: lleva todos los datos, y Perchlight puede importarlos. Quien lo tenga puede leerlos.";
    card_code: "QR code of this card", "Código QR de esta ficha";
    card_scan: "Scan with the phone's camera, or open this file in Perchlight.", "Escanee con la cámara del teléfono o abra este archivo en Perchlight.";
    card_too_long: "Send the link or this file: the card holds too much for a QR code.", "Envíe el enlace o este archivo: la ficha lleva demasiado para un código QR.";
    card_anyone: "Anyone with this card or its link can read what it says.", "Quien tenga esta ficha o su enlace puede leer lo que dice.";
    calendar_note: "Look first: is the crop empty? If not, or if the chick is not well, do not feed: open Perchlight. Check that the alert of this event is on.", "Mire primero: ¿está vacío el buche? Si no, o si el polluelo no está bien, no le dé de comer: abra Perchlight. Compruebe que el aviso de este evento está activo.";
    calendar_weigh_note: "Before the first food of the day, crop empty, on the same scale. Food left in the crop? Nothing to eat: open Perchlight.", "Antes de la primera comida del día, con el buche vacío y en la misma báscula. ¿Queda comida en el buche? Nada de comer: abra Perchlight.";
    table_chick: "chick", "polluelo";
    table_date: "date", "fecha";
    table_time: "time", "hora";
    table_weight: "weight (g)", "peso (g)";
    table_crop: "crop", "buche";
    table_loss: "loss since handover (%)", "pérdida desde la entrega (%)";
    table_feed: "feed", "toma";
    table_outcome: "outcome", "resultado";
    table_taken: "taken (ml)", "tomado (ml)";
    table_offered: "offered (ml)", "ofrecido (ml)";
    table_served: "served at (°C)", "temperatura (°C)";
    table_response: "response", "respuesta";
    table_look: "look", "aspecto";
    table_count: "count", "número";
    table_paper: "paper", "papel";
    table_given: "given", "dada";
}

//! Words of the report, the card on paper, the vet page, the calendar and the tables.

use crate::domain::journal::chick::Chick;
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::Lived;
use crate::words::Language;
use crate::words::format::Writing;

impl Writing {
    /// A name to call the chick by in a title.
    pub(crate) fn name_of(self, chick: &Chick) -> String {
        if chick.plan.name.is_empty() {
            self.language.species(chick.plan.species).to_owned()
        } else {
            chick.plan.name.clone()
        }
    }

    /// When a page was made.
    pub fn made_at(self, lived: Lived) -> String {
        let (date, time) = (self.date(lived.day), self.time(lived.time));
        match self.language {
            Language::English => format!("Made with Perchlight on {date}, {time}."),
            Language::Spanish => format!("Hecho con Perchlight el {date}, {time}."),
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
        let one_day = outlook.weight.one_day_loss_pct.map(|loss| {
            let sign = if loss > 0.0 { "\u{2212}" } else { "+" };
            format!("{sign}{}", self.pct(loss.abs()))
        });
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
        let age = outlook.age.map(|age| self.age(age));
        let home = outlook.chick.arrived.as_ref();
        let pairs = [
            (say.plan_part_species(), Some(species)),
            (say.vet_age(), age),
            (
                say.plan_part_hatched(),
                plan.hatched.map(|day| self.date(day)),
            ),
            (
                say.plan_ring(),
                Some(plan.ring.clone()).filter(|ring| !ring.is_empty()),
            ),
            (
                say.vet_rearing(),
                Some(say.life_stage(outlook.stage).to_owned()),
            ),
            (
                say.vet_home_since(),
                home.map(|arrived| self.date(arrived.lived().day)),
            ),
        ];
        let there = pairs
            .into_iter()
            .filter_map(|(label, value)| Some((label.to_owned(), value?)));
        there.collect()
    }

    /// The title of a feed in the telephone's own calendar, with all that matters.
    pub fn feed_title(self, plan: &CarePlan, volume: Millilitres) -> String {
        let (volume, window) = (
            self.volume(volume),
            self.warmth(plan.serve_from, plan.serve_to),
        );
        match (self.language, plan.name.as_str()) {
            (Language::English, "") => format!("Feed the chick: {volume} at {window}"),
            (Language::English, name) => format!("Feed {name}: {volume} at {window}"),
            (Language::Spanish, "") => format!("Toma del pollo: {volume} a {window}"),
            (Language::Spanish, name) => format!("Toma de {name}: {volume} a {window}"),
        }
    }
}

texts! {
    report_nothing_found: "Nothing stands out in what was noted.", "Nada llama la atención en lo anotado.";
    report_figures: "Figures", "Cifras";
    report_chart_key: "Full dots: crop empty. Hollow dots: after a feed, or crop not known. Dashed line: handover weight. Hatched: below the loss limit.", "Puntos llenos: buche vacío. Puntos huecos: tras una toma o buche sin comprobar. Línea de trazos: peso en la entrega. Rayado: por debajo del límite de pérdida.";
    report_latest: "Last weight, crop empty", "Último peso, buche vacío";
    report_one_day: "Since the morning before", "Desde la mañana anterior";
    report_still_fed: "Feeds given now", "Tomas actuales";
    report_feed: "Feed", "Toma";
    report_feeds: "Feeds", "Tomas";
    report_offered: "Offered", "Ofrecido";
    report_served: "Served at", "Dada a";
    report_how: "How", "Cómo";
    report_notes: "Everything else noted", "Todo lo demás anotado";
    report_what: "What", "Qué";
    report_by: "By", "Por";
    report_cautions: "Please remember", "Recuerde";
    report_holds_data: "This file carries the records themselves. Whoever has it can read them, and Perchlight can take them in: keep it as a backup.", "Este archivo lleva los registros mismos. Quien lo tenga puede leerlos, y Perchlight puede incorporarlos: guárdelo como copia.";
    card_code: "QR code of this card", "Código QR de esta tarjeta";
    card_scan: "Scan with the phone's camera, or open this file in Perchlight.", "Escanee con la cámara del teléfono o abra este archivo en Perchlight.";
    card_too_long: "This card says too much for a QR code: send its link or this file.", "Esta tarjeta dice demasiado para un código QR: envíe su enlace o este archivo.";
    card_anyone: "Anyone with this card or its link can read what it says.", "Quien tenga esta tarjeta o su enlace puede leer lo que dice.";
    vet_reason: "What is seen", "Qué se observa";
    vet_feeding: "Feeding and formula", "Alimentación y papilla";
    vet_emptying: "Usual time to empty", "Tiempo usual de vaciado";
    vet_signs: "Signs", "Señales";
    vet_none: "Nothing noted.", "Nada anotado.";
    vet_gone: " (no longer there)", " (ya no está)";
    vet_environment: "Environment and calls", "Entorno y llamadas";
    vet_age: "Age", "Edad";
    vet_rearing: "Rearing", "Cría";
    vet_home_since: "In this home since", "En este hogar desde";
    calendar_note: "Is the crop empty? If not, or if the chick is not well, do not feed: open Perchlight. Check that the alert of this event is on.", "¿Está vacío el buche? Si no, o si el pollo no está bien, no dé de comer: abra Perchlight. Compruebe que el aviso de este evento está activo.";
    table_chick: "chick", "pollo";
    table_date: "date", "fecha";
    table_time: "time", "hora";
    table_weight: "weight (g)", "peso (g)";
    table_crop: "crop", "buche";
    table_loss: "loss since handover (%)", "pérdida desde la entrega (%)";
    table_feed: "feed", "toma";
    table_outcome: "outcome", "resultado";
    table_taken: "taken (ml)", "tomado (ml)";
    table_offered: "offered (ml)", "ofrecido (ml)";
    table_served: "served at (°C)", "dada a (°C)";
    table_response: "response", "respuesta";
    table_given: "given", "dada";
}

//! Words of the card on its way: received, on paper, in a QR code.

use crate::domain::homecoming::reports::DAILY_DAYS;
use crate::domain::plan::care_plan::{CarePlan, Contact, Role};
use crate::domain::plan::topic::Topic;
use crate::domain::quantity::units::{Celsius, Grams, Millilitres, Percent};
use crate::domain::time::moment::Day;
use crate::domain::warnings::call_weight::call_weight_at_handover;
use crate::words::Language;
use crate::words::format::{MassUnit, Writing};

/// A line of what matters on a card: what it is about, what is read first, and what goes with it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CardLine {
    /// What it is about.
    pub label: &'static str,
    /// What is read first.
    pub first: String,
    /// What goes with it; may be empty.
    pub rest: String,
}

/// Most characters of the breeder's own words in such a line.
const MOST_SAID: usize = 120;

impl Writing {
    /// The lines of a card that matter most: feeds, warmth, weight, a refusal, reports, whom to call.
    pub fn first_lines(self, plan: &CarePlan) -> Vec<CardLine> {
        let say = self.language;
        let line = |label, (first, rest): (String, String)| CardLine { label, first, rest };
        let lines = [
            Some(line(say.card_feeds(), self.card_feeds_line(plan))),
            Some(line(
                say.card_serve(),
                (
                    self.warmth(plan.serve_from, plan.serve_to),
                    self.card_powder(plan.powder_fraction),
                ),
            )),
            self.card_weight(plan)
                .map(|both| line(say.card_weight(), both)),
            Some(line(
                say.card_refused(),
                (self.card_after_refusal(plan), String::new()),
            )),
            Some(line(say.card_report(), self.card_reports(plan))),
            breeder(plan).map(|breeder| line(say.card_call(), number_and_hours(plan, breeder))),
        ];
        lines.into_iter().flatten().collect()
    }

    fn card_feeds_line(self, plan: &CarePlan) -> (String, String) {
        let volumes: Vec<String> = plan
            .feeds
            .iter()
            .map(|feed| self.volume(feed.volume))
            .collect();
        let times = plan.feeds.iter().map(|feed| self.time(feed.time));
        let is_same = volumes.windows(2).all(|two| two.first() == two.last());
        let tool = self.language.tool(plan.tool).to_lowercase();
        let (first, mut rest) = match volumes.first() {
            None => (self.language.card_ask_feeds().to_owned(), String::new()),
            Some(volume) if is_same => {
                let each = self.language.pick("each", "cada una");
                let times: Vec<String> = times.collect();
                (times.join(", "), format!("{volume} {each}, {tool}"))
            }
            Some(_) => {
                let both = times.zip(&volumes);
                let both: Vec<String> = both
                    .map(|(time, volume)| format!("{time} {volume}"))
                    .collect();
                (both.join(", "), tool)
            }
        };
        if let Some((at, volume)) = plan.journey.and_then(|journey| journey.last_fed) {
            let offset = plan.journey.map(|journey| journey.breeder_offset);
            let at = offset
                .map(|offset| self.lived(at.lived(offset)))
                .unwrap_or_default();
            let last = self.language.card_last_fed();
            rest = format!("{rest}. {last} {at}, {}", self.volume(volume));
        }
        (first, rest)
    }

    fn card_powder(self, share: Percent) -> String {
        let share = match share.tenths() % 10 {
            0 => format!("{}\u{a0}%", share.tenths() / 10),
            _ => self.pct(share.as_pct()),
        };
        match self.language {
            Language::English => format!("{share} powder"),
            Language::Spanish => format!("{share} de polvo"),
        }
    }

    fn card_weight(self, plan: &CarePlan) -> Option<(String, String)> {
        let reference = plan.reference?;
        let call =
            call_weight_at_handover(plan).map(|grams| self.call_named(plan, &self.mass(grams)));
        Some((self.mass(reference.weight), call.unwrap_or_default()))
    }

    fn call_named(self, plan: &CarePlan, mass: &str) -> String {
        let whom = breeder_name(self.language, plan);
        match self.language {
            Language::English => format!("call {whom} at {mass}"),
            Language::Spanish => format!("llame a {whom} con {mass}"),
        }
    }

    /// What to do after a refusal: as the breeder says it, else the waits before the next offers.
    pub fn card_after_refusal(self, plan: &CarePlan) -> String {
        let said = plan.said(Topic::AfterRefusal);
        if !said.is_empty() {
            return shortened(said, MOST_SAID);
        }
        let waits = plan.retries_minutes.iter();
        let waits: Vec<String> = waits.map(|wait| self.minutes(i64::from(*wait))).collect();
        let and = self.language.pick(" and ", " y ");
        match (self.language, waits.is_empty()) {
            (Language::English, false) => format!("offer it again after {}", waits.join(and)),
            (Language::Spanish, false) => {
                format!("vuelva a ofrecerla a los {}", waits.join(and))
            }
            (Language::English, true) => "wait for the next feed".to_owned(),
            (Language::Spanish, true) => "espere a la toma siguiente".to_owned(),
        }
    }

    fn card_reports(self, plan: &CarePlan) -> (String, String) {
        let often = match (self.language, plan.report_days) {
            (Language::English, Some(1)) => "every day".to_owned(),
            (Language::English, Some(days)) => format!("every {days} days"),
            (Language::English, None) => format!("every day for {DAILY_DAYS} days"),
            (Language::Spanish, Some(1)) => "cada día".to_owned(),
            (Language::Spanish, Some(days)) => format!("cada {days} días"),
            (Language::Spanish, None) => format!("cada día durante {DAILY_DAYS} días"),
        };
        let home = plan.journey.map(|journey| {
            let home = journey.expected.lived(journey.breeder_offset).day;
            self.day(home.plus(i32::from(plan.report_days.unwrap_or(1))))
        });
        let first = home.map(|day| format!("{} {day}", self.language.card_first_report()));
        (often, first.unwrap_or_default())
    }

    /// Whom to call first: "Call Ana first".
    pub fn card_call_first(self, whom: &str) -> String {
        match self.language {
            Language::English => format!("Call {whom} first"),
            Language::Spanish => format!("Llame primero a {whom}"),
        }
    }

    /// The first feed at home: less than usual, after so many minutes warm and quiet.
    pub fn card_first_feed(self, least: Millilitres, most: Millilitres, minutes: i64) -> String {
        let range = format!("{}–{}", self.tenths(least.tenths()), self.volume(most));
        let minutes = self.minutes(minutes);
        match self.language {
            Language::English => {
                format!("First feed at home: {range}, after {minutes} warm and quiet.")
            }
            Language::Spanish => {
                format!("Primera toma en casa: {range}, después de {minutes} al calor y tranquilo.")
            }
        }
    }

    /// Grams, whatever unit weights are shown in: what goes into a cup is too little for ounces.
    pub fn grams(self, mass: Grams) -> String {
        let metric = Self {
            mass: MassUnit::Gram,
            ..self
        };
        metric.mass(mass)
    }

    /// Powder and water: "16 g + 48 g water".
    pub fn card_mix(self, powder: &str, water: &str) -> String {
        match self.language {
            Language::English => format!("{powder} + {water} water"),
            Language::Spanish => format!("{powder} + {water} de agua"),
        }
    }

    /// For how much the mix is, and how warm the water.
    pub fn card_water(self, volume: Millilitres, water: Celsius) -> String {
        let (volume, water) = (self.volume(volume), self.temperature(water));
        match self.language {
            Language::English => format!("for {volume}. Water at {water}, then let it cool"),
            Language::Spanish => format!("para {volume}. Agua a {water}; después, deje que enfríe"),
        }
    }

    /// The label of the weight to call at.
    pub fn card_call_at(self, whom: &str) -> String {
        match self.language {
            Language::English => format!("Call {whom} at"),
            Language::Spanish => format!("Llame a {whom} con"),
        }
    }

    /// The handover weight, beside the weight to call at.
    pub fn card_handover(self, weight: Grams) -> String {
        let weight = self.mass(weight);
        match self.language {
            Language::English => format!("handover {weight}, crop empty"),
            Language::Spanish => format!("entrega {weight}, buche vacío"),
        }
    }

    /// What is never done, and what is a call at once.
    pub fn card_never(self) -> String {
        let hottest = self.temperature(CarePlan::SERVE_WITHIN.1);
        match self.language {
            Language::English => format!(
                "Never feed a cold chick, a crop that is still full, or food hotter than {hottest}. Never double a missed feed. Gasping, cold, limp, or food left after the night: call the vet at once."
            ),
            Language::Spanish => format!(
                "Nunca le dé papilla si está frío, si el buche sigue lleno o si la papilla pasa de {hottest}. Nunca doble una toma perdida. Si boquea, está frío, no se tiene en pie o le queda comida después de la noche: llame ya al veterinario."
            ),
        }
    }

    /// When a card was written, and its plan's number: "Written Wed 18 Nov, plan 3".
    pub fn card_written(self, day: Day, number: usize) -> String {
        let day = self.day(day);
        match self.language {
            Language::English => format!("Written {day}, plan {number}"),
            Language::Spanish => format!("Escrita el {day}, plan {number}"),
        }
    }
}

fn number_and_hours(plan: &CarePlan, breeder: &Contact) -> (String, String) {
    let hours = [breeder.name.as_str(), plan.breeder_hours.as_str()];
    let hours = hours.into_iter().filter(|text| !text.is_empty());
    (breeder.number.clone(), hours.collect::<Vec<_>>().join(", "))
}

/// The breeder to be called first.
pub(crate) fn breeder(plan: &CarePlan) -> Option<&Contact> {
    plan.contact(Role::Breeder)
}

/// The breeder's name, or a word for the breeder.
pub fn breeder_name(say: Language, plan: &CarePlan) -> String {
    let mut named = plan.contacts.iter();
    let named = named.find(|contact| contact.role == Role::Breeder && !contact.name.is_empty());
    named.map_or_else(
        || say.card_breeder().to_owned(),
        |contact| contact.name.clone(),
    )
}

/// The first characters of a longer text, up to a word's end.
pub(crate) fn shortened(text: &str, most: usize) -> String {
    if text.chars().count() <= most {
        return text.to_owned();
    }
    let start: String = text.chars().take(most).collect();
    let end = start.rfind(char::is_whitespace).unwrap_or(start.len());
    format!("{}…", start.get(..end).unwrap_or(&start))
}

texts! {
    card_sends: "{by} sends you {name}’s card", "{by} le envía la ficha de {name}";
    card_changes: "{by} changes {name}’s plan", "{by} cambia el plan de {name}";
    card_is_older: "An older card for {name}", "Una ficha anterior de {name}";
    card_is_known: "You have this card for {name}", "Ya tiene esta ficha de {name}";
    card_breeder: "your breeder", "su criador";
    card_chick: "the chick", "el polluelo";
    card_take: "Take it", "Importarla";
    card_not_now: "Not now", "Ahora no";
    card_everything: "Everything on the card", "Toda la ficha";
    card_usual: "The breeder has not confirmed every number. The usual values are marked under \"Everything on the card\": ask before the first feed.", "El criador no ha confirmado todos los números. Los valores habituales están señalados en «Toda la ficha»: pregunte antes de la primera toma.";
    card_caution: "Not veterinary advice: the breeder and an avian vet decide. Hand-feeding can burn, choke or starve a chick: learn it in person first.", "No sustituye al veterinario: deciden el criador y un veterinario de aves. Dar de comer a mano puede quemar, ahogar o matar de hambre a un polluelo: apréndalo antes en persona.";
    card_some_older: "Part of it is older than what you have. That part stays as you have it.", "Una parte es anterior a la que tiene. Esa parte queda como la tiene.";
    card_is_short: "This code holds what the first two days need. Ask for the card’s link or file too: it adds the rest.", "Este código lleva lo necesario para los dos primeros días. Pida también el enlace o el archivo de la ficha: añade el resto.";
    card_scan_short: "Scan with the phone’s camera: the square holds what the first two days need. The link or file of the card adds the rest.", "Escanee con la cámara: el cuadro lleva lo necesario para los dos primeros días. El enlace o el archivo de la ficha añade el resto.";
    card_vet: "Vet: at once for the signs below, or no answer in 30 minutes", "Veterinario: ya ante las señales de abajo, o si no contestan en 30 minutos";
    card_vet_night: "Out of hours", "Urgencias";
    card_tick: "Feeds: tick when given, write the ml if less", "Tomas: marque las dadas; anote los ml si fue menos";
    card_mix_label: "Mix", "Preparar";
    card_measured: "measured in the cup, stirred", "medido en el vaso, removido";
    card_not_advice: "Not veterinary advice. Anyone who holds this card can read it.", "No sustituye al veterinario. Quien tenga esta ficha puede leerla.";
    card_cut: "Long texts are cut here. The card’s link and file hold all of them.", "Aquí se cortan los textos largos. El enlace y el archivo de la ficha los llevan enteros.";
    card_feeds: "Feeds", "Tomas";
    card_serve: "Serve at", "Servir a";
    card_weight: "Weight", "Peso";
    card_refused: "If refused", "Si no quiere";
    card_report: "Report", "Informe";
    card_call: "Call", "Llamar a";
    card_last_fed: "Last fed", "Última toma:";
    card_first_report: "the first on", "el primero, el";
    card_ask_feeds: "None on this card. Ask before you feed.", "No hay ninguna en esta ficha. Pregunte antes de darle de comer.";
    card_short_hint: "The QR code holds what the first two days need. Send the link or the file too: it adds the rest.", "El código QR lleva lo necesario para los dos primeros días. Envíe también el enlace o el archivo: añade el resto.";
}

#[cfg(test)]
mod tests {
    use crate::domain::plan::care_plan::Reference;
    use crate::domain::warnings::rules::trial::plan;
    use crate::words::card::*;

    fn lines(plan: &CarePlan, language: Language) -> Vec<(String, String)> {
        let lines = Writing::metric(language).first_lines(plan).into_iter();
        let spaced = |text: &str| text.replace('\u{a0}', " ");
        lines
            .map(|line| (spaced(&line.first), spaced(&line.rest)))
            .collect()
    }

    #[test]
    fn the_six_lines_that_matter_are_told_with_the_breeder_s_name() {
        let mut plan = plan();
        plan.contacts = vec![Contact {
            role: Role::Breeder,
            name: "Ana".to_owned(),
            number: "+1 555 0100".to_owned(),
        }];
        plan.reference = plan.reference.map(|reference| Reference {
            weight: Grams::whole(1_010),
            ..reference
        });
        let told = lines(&plan, Language::English);
        assert_eq!(told.len(), 6);
        assert_eq!(told[0].0, "07:00, 14:00, 21:00");
        assert_eq!(told[0].1, "80 ml each, syringe");
        assert_eq!(told[1].1, "25 % powder");
        // 10 % of 1,010 g are 101 g.
        assert_eq!(
            told[2],
            ("1010 g".to_owned(), "call Ana at 909 g".to_owned())
        );
        assert_eq!(told[3].0, "offer it again after 45 min and 2 h 30 min");
        assert_eq!(told[5], ("+1 555 0100".to_owned(), "Ana".to_owned()));
        plan.feeds[1].volume = Millilitres::whole(40);
        plan.report_days = Some(2);
        plan.say(Topic::AfterRefusal, "Wait an hour, then half.");
        let told = lines(&plan, Language::Spanish);
        assert_eq!(told[0].0, "07:00 80 ml, 14:00 40 ml, 21:00 80 ml");
        assert_eq!(told[2].1, "llame a Ana con 909 g");
        assert_eq!(told[3].0, "Wait an hour, then half.");
        assert_eq!(told[4].0, "cada 2 días");
    }

    #[test]
    fn a_card_without_feeds_says_to_ask() {
        let mut plan = plan();
        plan.feeds.clear();
        let told = lines(&plan, Language::English);
        assert_eq!(told[0].0, "None on this card. Ask before you feed.");
    }

    #[test]
    fn a_long_text_is_cut_at_the_end_of_a_word() {
        assert_eq!(shortened("one two three", 9), "one two…");
        assert_eq!(shortened("one two", 9), "one two");
    }
}

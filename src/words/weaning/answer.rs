//! The answer of the weaning screen, as sentences.

use crate::domain::plan::care_plan::Slot;
use crate::domain::time::moment::Day;
use crate::domain::warnings::level::Value;
use crate::domain::weaning::criteria::{Check, Criterion};
use crate::domain::weaning::facts::Answer;
use crate::domain::weaning::{Verdict, Weaning};
use crate::words::Language;
use crate::words::format::Writing;

impl Writing {
    /// The answer first: what may be done and the weightiest reason. "Not yet. Weight is 91.2 % of peak
    /// and falling by 1.4 % a day; two more steady mornings needed." `ask` is the name of the breeder who wants to be
    /// asked before a feed goes, if it is so; it may be empty.
    pub fn weaning_answer(self, weaning: &Weaning, ask: Option<&str>) -> String {
        match &weaning.verdict {
            Verdict::MayDrop(slot) => match ask {
                Some(name) => self.could_go(*slot, name),
                None => self.may_drop(*slot),
            },
            Verdict::NotYet {
                reasons,
                earliest_day,
            } => self.not_yet(weaning, reasons, *earliest_day),
            Verdict::BringBack { slot, .. } => self.bring_back(weaning, *slot),
            Verdict::NothingToDrop => self.weaning_stage(&weaning.stage),
        }
    }

    fn may_drop(self, slot: Slot) -> String {
        let feed = self.language.the_feed(slot);
        match self.language {
            Language::English => format!("You may drop {feed}: every check below says yes."),
            Language::Spanish => {
                format!("Puede quitar {feed}: se cumple todo lo de abajo.")
            }
        }
    }

    /// "The midday feed could go next. Ask Ana first."
    fn could_go(self, slot: Slot, name: &str) -> String {
        let feed = self.language.the_feed(slot);
        let name = name.trim();
        match (self.language, name.is_empty()) {
            (Language::English, is_unnamed) => {
                let feed = feed.strip_prefix('t').unwrap_or(&feed);
                let whom = if is_unnamed { "the breeder" } else { name };
                format!("T{feed} could go next. Ask {whom} first.")
            }
            (Language::Spanish, true) => {
                format!("Se podría quitar {feed}. Pregunte antes al criador.")
            }
            (Language::Spanish, false) => {
                format!("Se podría quitar {feed}. Pregunte antes a {name}.")
            }
        }
    }

    fn not_yet(self, weaning: &Weaning, reasons: &[Criterion], earliest: Option<Day>) -> String {
        let mut text = self.language.pick("Not yet.", "Todavía no.").to_owned();
        let first = reasons
            .first()
            .and_then(|criterion| weaning.check(*criterion));
        if let (Some(check), Some(next)) = (first, weaning.next()) {
            text.push(' ');
            text.push_str(&self.weaning_reason(weaning, check, next));
        }
        if let Some(day) = earliest {
            let (at_the_earliest, day) = (
                self.language
                    .pick(" At the earliest on ", " Como pronto, el "),
                self.day(day),
            );
            text.push_str(at_the_earliest);
            text.push_str(&day);
            text.push('.');
        }
        text
    }

    fn bring_back(self, weaning: &Weaning, slot: Slot) -> String {
        let feed = self.language.the_feed(slot);
        let reasons: Vec<String> = weaning
            .triggers
            .iter()
            .filter(|check| check.answer == Answer::Yes)
            .map(|check| self.weaning_trigger_reason(check))
            .collect();
        let reasons = reasons.join("; ");
        match (self.language, weaning.is_call_first) {
            (Language::English, false) => format!("Offer {feed} again: {reasons}."),
            (Language::English, true) => {
                format!("Call first. If your breeder or vet agrees, offer {feed} again: {reasons}.")
            }
            (Language::Spanish, false) => format!("Vuelva a ofrecer {feed}: {reasons}."),
            (Language::Spanish, true) => format!(
                "Llame primero. Si el criador o el veterinario está de acuerdo, vuelva a ofrecer {feed}: {reasons}."
            ),
        }
    }

    /// Why one criterion stops the next drop, as a sentence.
    pub fn weaning_reason(self, weaning: &Weaning, check: &Check, next: Slot) -> String {
        let is_english = self.language == Language::English;
        let feed = self.language.the_feed(next);
        let count = counted(check.value);
        let limit = counted(Some(check.limit));
        let ago = self.days_ago(check.value);
        match check.criterion {
            Criterion::NobodyToCall if is_english => "First make the call that is due.".to_owned(),
            Criterion::NobodyToCall => "Primero haga la llamada pendiente.".to_owned(),
            Criterion::WeightNearPeak => self.reason_of_peak(check),
            Criterion::WeightSteady => self.reason_of_slope(weaning, check),
            Criterion::NoTrouble if is_english => {
                format!("{limit} days without a sign of illness are needed. The last sign: {ago}.")
            }
            Criterion::NoTrouble => {
                format!("Hacen falta {limit} días sin señales de enfermedad. La última: {ago}.")
            }
            Criterion::DroppingsNormal if is_english => {
                format!("Droppings were as usual on {count} of the last {limit} days.")
            }
            Criterion::DroppingsNormal => {
                format!("Las heces fueron normales en {count} de los últimos {limit} días.")
            }
            Criterion::SettledIn if is_english => {
                format!("The chick is still settling in: {count} of {limit} days.")
            }
            Criterion::SettledIn => format!("Todavía se está adaptando: {count} de {limit} días."),
            Criterion::Waited if is_english => {
                format!(
                    "{limit} days are needed between two changes of the feeds. The last change: {ago}."
                )
            }
            Criterion::Waited => {
                format!("Hacen falta {limit} días entre dos cambios de tomas. El último: {ago}.")
            }
            Criterion::SolidsEaten if is_english => {
                format!("Solids were eaten on {count} of the last {limit} days.")
            }
            Criterion::SolidsEaten => {
                format!("Comió sólidos en {count} de los últimos {limit} días.")
            }
            Criterion::FeedUnwanted if is_english => format!(
                "On {count} of the last {limit} days the chick refused {feed} or took less than half."
            ),
            Criterion::FeedUnwanted => format!(
                "En {count} de los últimos {limit} días no quiso {feed} o tomó menos de la mitad."
            ),
        }
    }

    fn reason_of_peak(self, check: &Check) -> String {
        let limit = self.share(check.limit);
        let is_english = self.language == Language::English;
        match (check.value, check.answer) {
            (Some(value), Answer::No) if is_english => {
                let pct = self.share(value);
                format!("Weight is {pct} of its highest; at least {limit} is needed.")
            }
            (Some(value), Answer::No) => {
                let pct = self.share(value);
                format!("El peso es un {pct} de su máximo; hace falta al menos un {limit}.")
            }
            _ if is_english => "Weigh with an empty crop: there is no recent weight.".to_owned(),
            _ => "Pese con el buche vacío: no hay un peso reciente.".to_owned(),
        }
    }

    fn reason_of_slope(self, weaning: &Weaning, check: &Check) -> String {
        let is_english = self.language == Language::English;
        let needed = self.steady_mornings(weaning.steady_mornings_needed.unwrap_or(1));
        let of_peak = weaning
            .check(Criterion::WeightNearPeak)
            .and_then(|check| check.value)
            .map(|value| self.share(value));
        let Some(Value::Pct(slope)) = check.value.filter(|_| check.answer == Answer::No) else {
            return match self.language {
                Language::English => format!("Too few morning weights to see a trend; {needed}."),
                Language::Spanish => {
                    format!("Pocos pesos de la mañana para ver una tendencia; {needed}.")
                }
            };
        };
        let fall = self.pct(slope.abs());
        match of_peak {
            Some(pct) if is_english => {
                format!("Weight is {pct} of its highest and falling by {fall} a day; {needed}.")
            }
            Some(pct) => {
                format!("El peso es un {pct} de su máximo y baja un {fall} al día; {needed}.")
            }
            None if is_english => format!("Weight is falling by {fall} a day; {needed}."),
            None => format!("El peso baja un {fall} al día; {needed}."),
        }
    }

    fn days_ago(self, value: Option<Value>) -> String {
        let Some(Value::Count(days)) = value else {
            return String::new();
        };
        let days = i32::try_from(days).unwrap_or(i32::MAX);
        match (self.language, days) {
            (_, 0) => self
                .language
                .pick("less than a day ago", "hace menos de un día")
                .to_owned(),
            (Language::English, _) => format!("{} ago", self.days(days)),
            (Language::Spanish, _) => format!("hace {}", self.days(days)),
        }
    }

    fn steady_mornings(self, needed: i32) -> String {
        let word = match (self.language, needed) {
            (Language::English, 1) => "one",
            (Language::English, 2) => "two",
            (Language::English, 3) => "three",
            (Language::English, 4) => "four",
            (Language::English, _) => "five",
            (Language::Spanish, 1) => "una",
            (Language::Spanish, 2) => "dos",
            (Language::Spanish, 3) => "tres",
            (Language::Spanish, 4) => "cuatro",
            (Language::Spanish, _) => "cinco",
        };
        match (self.language, needed) {
            (Language::English, 1) => format!("{word} more steady morning needed"),
            (Language::English, _) => format!("{word} more steady mornings needed"),
            (Language::Spanish, 1) => format!("falta {word} mañana estable más"),
            (Language::Spanish, _) => format!("faltan {word} mañanas estables más"),
        }
    }

    /// A share with its sign; empty for any other kind of value.
    pub(crate) fn share(self, value: Value) -> String {
        if let Value::Pct(pct) = value {
            self.pct(pct)
        } else {
            String::new()
        }
    }
}

/// A count in figures; a dash for none, and for any other kind of value.
pub(crate) fn counted(value: Option<Value>) -> String {
    if let Some(Value::Count(count)) = value {
        count.to_string()
    } else {
        "–".to_owned()
    }
}

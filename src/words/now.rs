//! Words of the first screen: the next feed, one sentence of state, what is left to do, the night.

use crate::domain::homecoming::life_stage::{LifeStage, Reminder};
use crate::domain::journal::chick::{Noted, Weighing};
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::{Role, Slot};
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::{Grams, Millilitres};
use crate::domain::time::moment::WallTime;
use crate::domain::warnings::level::Level;
use crate::domain::weight::loss::day_before;
use crate::words::Language;
use crate::words::format::Writing;

/// Before this hour what was weighed today was weighed this morning.
const NOON: i32 = 12 * 60;

texts! {
    now_feed_steps: "Feed now, step by step", "Dar la toma paso a paso";
    now_log_feed: "Log a feed", "Anotar una toma";
    now_other_amount: "Other amount", "Otra cantidad";
    now_all_the_same: "Feed all the same", "Dar la toma igualmente";
    now_not_yet: "Not yet", "Todavía no";
    now_nothing_before: "Nothing to feed before then.", "Hasta entonces no hay que darle nada.";
    now_solids_in_reach: "Keep solids and water in reach.", "Deje sólidos y agua a su alcance.";
    now_condition: "Only if the crop is empty, and the chick is warm and bright.", "Solo si el buche está vacío y el polluelo está tibio y activo.";
    now_call_then_feed: "Call first. Then feed as planned, unless they say otherwise.", "Llame primero. Luego siga con las tomas del plan, salvo que le digan otra cosa.";
    call_when: "Warm, bright, eating, and its crop empties? Call in their hours. If not, call now, even if it is late. No answer in 30 minutes? Call the vet.", "¿Está tibio, activo, come y el buche se le vacía? Llame en su horario. Si no, llame ya, aunque sea tarde. ¿No contesta en 30 minutos? Llame al veterinario.";
    now_not_weighed: "No weight noted yet.", "Aún no hay ningún peso anotado.";
    now_until_answer: "Until the vet answers", "Hasta que conteste el veterinario";
    now_until_breeder: "Until the breeder answers", "Hasta que conteste el criador";
    strip_now: "now", "ahora";

    todo_none: "Nothing else to do", "Nada más que hacer";
    todo_report: "report to the breeder", "informe para el criador";
    todo_vet: "first vet visit", "primera visita al veterinario";
    todo_numbers: "numbers to confirm", "números por confirmar";
    todo_backup: "backup", "copia de seguridad";
    todo_powder: "powder", "papilla";
    todo_apart: "keep apart", "cuarentena";
    todo_drop_ask: "ask about a feed", "preguntar por una toma";
    todo_drop: "a feed may go", "se puede quitar una toma";
    now_show_vet: "Show the vet", "Enseñárselo al veterinario";
    todo_vet_booked: "vet appointment", "cita con el veterinario";
    todo_visit: "Visit or appointment…", "Visita o cita…";
    todo_send_report: "Send report", "Enviar informe";

    night_until: "Nothing to feed until", "No hay que darle nada hasta las";
    night_sleeps: "It sleeps now. Let it.", "Ahora duerme. Déjelo dormir.";
    night_morning: "In the morning, before the feed:", "Por la mañana, antes de la toma:";
    night_order: "Feel the crop. Weigh. Then feed.", "Palpe el buche. Pese. Luego dé la toma.";
    night_note: "Note something", "Anotar algo";
    night_show: "Show everything", "Mostrar todo";
}

impl Language {
    /// The call that is the next act, one instruction a sentence; empty where nobody is to be called.
    pub const fn call_now(self, level: Level) -> &'static str {
        match level {
            Level::Settled | Level::Watch => "",
            Level::CallBreeder => self.pick(
                "Call the breeder now, whatever the hour. No answer in 30 minutes? Call the vet.",
                "Llame ya al criador, sea la hora que sea. ¿No contesta en 30 minutos? Llame al veterinario.",
            ),
            Level::VetToday => self.pick(
                "Call the vet now. This cannot wait until tomorrow. Closed? Call the out-of-hours vet.",
                "Llame ya al veterinario. Esto no puede esperar a mañana. ¿Está cerrado? Llame a urgencias (guardia).",
            ),
            Level::Emergency => self.pick(
                "Call the vet now and set off. Closed? Call the out-of-hours vet.",
                "Llame ya al veterinario y póngase en camino. ¿Está cerrado? Llame a urgencias (guardia).",
            ),
        }
    }
}

/// Most letters of a breeder's name in the sentence on the first screen; one with more is "the breeder" there.
const MOST_OF_A_NAME: usize = 16;

impl Writing {
    /// The next feed with its time: "Bedtime feed at 21:00".
    pub fn feed_at(self, slot: Slot, time: WallTime) -> String {
        let (feed, time) = (self.language.feed(slot), self.the_time(time));
        match self.language {
            Language::English => format!("{feed} at {time}"),
            Language::Spanish => format!("{feed}, prevista a {time}"),
        }
    }

    /// Logs the plan's amount: "60 ml given".
    pub fn amount_given(self, volume: Millilitres) -> String {
        let volume = self.volume(volume);
        match self.language {
            Language::English => format!("{volume} given"),
            Language::Spanish => format!("Tomó {volume}"),
        }
    }

    /// A volume in draws: "60 ml, two draws of 30", "50 ml, draws of 30 and 20 ml".
    pub fn volume_in_draws(self, volume: Millilitres, tenths: &[i32]) -> String {
        let whole = self.volume(volume);
        let Some((first, rest)) = tenths.split_first().filter(|(_, rest)| !rest.is_empty()) else {
            return whole;
        };
        if rest.iter().all(|other| other == first) {
            let (count, each) = (tenths.len(), self.volume(Millilitres::tenths_held(*first)));
            return match self.language {
                Language::English => format!("{whole}: {count} draws of {each}"),
                Language::Spanish => format!("{whole}: {count} jeringas de {each}"),
            };
        }
        let sum = self.sum_of(tenths);
        match self.language {
            Language::English => format!("{whole}: draws of {sum}"),
            Language::Spanish => format!("{whole}: jeringas de {sum}"),
        }
    }

    /// How many things are to do: "To do (2)".
    pub fn to_do(self, count: usize) -> String {
        if count == 0 {
            return self.language.todo_none().to_owned();
        }
        match self.language {
            Language::English => format!("To do ({count})"),
            Language::Spanish => format!("Por hacer ({count})"),
        }
    }

    /// The weight in one sentence and whom to call at which: "998 g this morning, 12 g less than yesterday:
    /// normal while weaning. Call Ana at 909 g."
    pub fn weight_today(self, outlook: &Outlook) -> String {
        let Some(latest) = &outlook.weight.latest else {
            return self.language.now_not_weighed().to_owned();
        };
        let weight = self.mass(latest.what.weight);
        let when = self.weighed_when(outlook, latest);
        let change = self.weight_change(outlook, latest);
        let call = self.call_at(outlook).unwrap_or_default();
        format!("{weight} {when}{change}.{call}")
    }

    fn weighed_when(self, outlook: &Outlook, latest: &Noted<Weighing>) -> String {
        let (lived, say) = (latest.lived(), self.language);
        match outlook.lived.day.since(lived.day) {
            0 if lived.time.minutes() < NOON => say.pick("this morning", "esta mañana").to_owned(),
            0 => say.pick("today", "hoy").to_owned(),
            1 => say.pick("yesterday", "ayer").to_owned(),
            _ => {
                let day = self.day(lived.day);
                match say {
                    Language::English => format!("on {day}"),
                    Language::Spanish => format!("el {day}"),
                }
            }
        }
    }

    fn weight_change(self, outlook: &Outlook, latest: &Noted<Weighing>) -> String {
        let say = self.language;
        let Some(before) = day_before(outlook.now, &outlook.chick) else {
            return String::new();
        };
        let change = latest.what.weight.tenths() - rounded(before.grams * 10.0);
        let is_of_today = outlook.lived.day == latest.lived().day;
        let than = match (say, is_of_today) {
            (Language::English, true) => "yesterday",
            (Language::English, false) => "the day before",
            (Language::Spanish, true) => "ayer",
            (Language::Spanish, false) => "el día anterior",
        };
        if change == 0 {
            return match say {
                Language::English => format!(", the same as {than}"),
                Language::Spanish => format!(", igual que {than}"),
            };
        }
        let size = self.mass(Grams::tenths_held(change.saturating_abs()));
        let is_less = change < 0;
        let change = match (say, is_less) {
            (Language::English, true) => format!(", {size} less than {than}"),
            (Language::English, false) => format!(", {size} more than {than}"),
            (Language::Spanish, true) => format!(", {size} menos que {than}"),
            (Language::Spanish, false) => format!(", {size} más que {than}"),
        };
        let is_usual =
            is_less && outlook.level == Level::Settled && outlook.stage == LifeStage::Weaning;
        let usual =
            is_usual.then(|| say.pick(": normal while weaning", ": normal durante el destete"));
        format!("{change}{}", usual.unwrap_or_default())
    }

    /// At which weight the breeder is called, by the plan.
    fn call_at(self, outlook: &Outlook) -> Option<String> {
        let plan = &outlook.chick.plan;
        let limit = outlook
            .weight
            .call_at
            .filter(|_| outlook.stage.reminds(Reminder::Weighing))?;
        let limit = self.mass(limit);
        let name = plan.contacts_with_number(Role::Breeder).next();
        let name = name
            .map(|breeder| breeder.name.trim())
            // A long one would push what is noted with a feed from the screen.
            .filter(|name| (1..=MOST_OF_A_NAME).contains(&name.chars().count()));
        let who = name.unwrap_or_else(|| self.language.pick("the breeder", "al criador"));
        Some(match (self.language, name) {
            (Language::English, _) => format!(" Call {who} at {limit}."),
            (Language::Spanish, None) => format!(" Llame {who} si baja a {limit}."),
            (Language::Spanish, Some(_)) => format!(" Llame a {who} si baja a {limit}."),
        })
    }

    /// The last feed of the evening: "Bedtime feed given at 21:04, 55 ml."
    pub fn given_tonight(self, slot: Slot, time: WallTime, taken: Millilitres) -> String {
        let (feed, at, taken) = (
            self.language.feed(slot),
            self.the_time(time),
            self.volume(taken),
        );
        match self.language {
            Language::English => format!("{feed} given at {at}, {taken}."),
            Language::Spanish => format!("{feed}: dada a {at}, {taken}."),
        }
    }

    /// "Morning feed, in 8 h 20 min".
    pub fn feed_in(self, slot: Slot, minutes: i64) -> String {
        let (feed, span) = (self.language.feed(slot), self.minutes(minutes));
        match self.language {
            Language::English => format!("{feed}, in {span}"),
            Language::Spanish => format!("{feed}, dentro de {span}"),
        }
    }
}

/// A text in its sentences, one instruction a line. A question stays with its answer.
pub fn sentences(text: &str) -> Vec<String> {
    let mut lines = Vec::new();
    let mut rest = text.trim();
    while let Some((end, _)) = rest
        .match_indices(". ")
        .find(|(end, _)| rest.get(end + 2..).is_some_and(begins_sentence))
    {
        let (line, after) = rest.split_at(end + 1);
        lines.push(line.to_owned());
        rest = after.trim_start();
    }
    if !rest.is_empty() {
        lines.push(rest.to_owned());
    }
    lines
}

fn begins_sentence(text: &str) -> bool {
    let first = text.chars().next();
    first.is_some_and(|first| first.is_uppercase() || first == '¿' || first == '¡')
}

#[cfg(test)]
mod tests {
    use crate::words::now::*;

    #[test]
    fn a_text_comes_apart_into_sentences_and_a_number_does_not() {
        let lines =
            sentences("Stop. Cool it to 43.3 °C at most. Closed? Call the other vet. Wait.");
        assert_eq!(
            lines,
            [
                "Stop.",
                "Cool it to 43.3 °C at most.",
                "Closed? Call the other vet.",
                "Wait."
            ]
        );
        assert_eq!(
            sentences("Mire. ¿Lleno? No dé la toma."),
            ["Mire.", "¿Lleno? No dé la toma."]
        );
        assert!(sentences("").is_empty());
    }

    #[test]
    fn a_feed_is_written_in_the_draws_that_it_takes() {
        let writing = Writing::metric(Language::English);
        let ml = |tenths| Millilitres::tenths_held(tenths);
        let plain = |text: String| text.replace('\u{a0}', " ");
        // a syringe of 30 ml: 60 = 30 + 30, 50 = 30 + 20, 25 at once
        assert_eq!(
            plain(writing.volume_in_draws(ml(600), &[300, 300])),
            "60 ml: 2 draws of 30 ml"
        );
        assert_eq!(
            plain(writing.volume_in_draws(ml(500), &[300, 200])),
            "50 ml: draws of 30 ml + 20 ml"
        );
        assert_eq!(plain(writing.volume_in_draws(ml(250), &[250])), "25 ml");
        assert_eq!(plain(writing.volume_in_draws(ml(250), &[])), "25 ml");
    }
}

//! Each criterion as a line with its number, and what would change its answer.

use crate::domain::plan::care_plan::Slot;
use crate::domain::weaning::criteria::{Check, Criterion};
use crate::domain::weaning::facts::Answer;
use crate::words::Language;
use crate::words::format::Writing;
use crate::words::weaning::answer::counted;

impl Writing {
    /// One criterion with its number and limit; its answer stands beside it.
    pub fn weaning_check_line(self, check: &Check, next: Slot) -> String {
        let say = self.language;
        let days = self.of_days(check);
        let value = check.value.map(|value| self.share(value));
        let limit = self.share(check.limit);
        let value = value.unwrap_or_else(|| say.pick("not known", "sin datos").to_owned());
        match (check.criterion, say) {
            (Criterion::FeedUnwanted, Language::English) => {
                format!("{}: refused or under half taken, {days}", say.feed(next))
            }
            (Criterion::FeedUnwanted, Language::Spanish) => {
                format!("{}: rechazada o menos de la mitad, {days}", say.feed(next))
            }
            (Criterion::SolidsEaten, Language::English) => format!("Solids eaten, {days}"),
            (Criterion::SolidsEaten, Language::Spanish) => format!("Comió sólidos, {days}"),
            (Criterion::WeightNearPeak, Language::English) => {
                format!("Weight against its peak: {value} (at least {limit})")
            }
            (Criterion::WeightNearPeak, Language::Spanish) => {
                format!("Peso frente a su máximo: {value} (al menos {limit})")
            }
            (Criterion::WeightSteady, Language::English) => {
                format!("Weight change a day, over five days: {value} (not below {limit})")
            }
            (Criterion::WeightSteady, Language::Spanish) => {
                format!("Cambio de peso al día, en cinco días: {value} (no menos de {limit})")
            }
            (Criterion::DroppingsNormal, Language::English) => {
                format!("Droppings as usual, {days}")
            }
            (Criterion::DroppingsNormal, Language::Spanish) => {
                format!("Excrementos normales, {days}")
            }
            (Criterion::NoTrouble, Language::English) => self.since(
                check,
                "No sign of trouble was noted",
                "Days without a sign of trouble",
            ),
            (Criterion::NoTrouble, Language::Spanish) => self.since(
                check,
                "No se anotó ninguna señal de alarma",
                "Días sin señales de alarma",
            ),
            (Criterion::SettledIn, Language::English) => {
                self.since(check, "At home", "Days since it came home")
            }
            (Criterion::SettledIn, Language::Spanish) => {
                self.since(check, "En casa", "Días desde que llegó a casa")
            }
            (Criterion::Waited, Language::English) => self.since(
                check,
                "No feed was changed yet",
                "Days since the feeds last changed",
            ),
            (Criterion::Waited, Language::Spanish) => self.since(
                check,
                "Aún no se cambió ninguna toma",
                "Días desde el último cambio de tomas",
            ),
            (Criterion::NobodyToRing, Language::English) => {
                format!("Nothing to ring about: {} found", counted(check.value))
            }
            (Criterion::NobodyToRing, Language::Spanish) => {
                format!(
                    "Ningún motivo para llamar: {} hallados",
                    counted(check.value)
                )
            }
        }
    }

    fn of_days(self, check: &Check) -> String {
        let (count, limit) = (counted(check.value), counted(Some(check.limit)));
        match self.language {
            Language::English => format!("{count} of {limit} days"),
            Language::Spanish => format!("{count} de {limit} días"),
        }
    }

    fn since(self, check: &Check, never: &str, days: &str) -> String {
        if check.value.is_none() {
            return never.to_owned();
        }
        let (count, limit) = (counted(check.value), counted(Some(check.limit)));
        let at_least = self.language.pick("at least", "al menos");
        format!("{days}: {count} ({at_least} {limit})")
    }

    /// What would turn the answer of a criterion into a yes, with its first day when there is one;
    /// `None` when it is a yes.
    pub fn weaning_check_change(self, check: &Check) -> Option<String> {
        if check.answer == Answer::Yes {
            return None;
        }
        let act = self.language.weaning_act(check.criterion);
        let Some(day) = check.met_from else {
            return Some(act.to_owned());
        };
        let day = self.day(day);
        Some(match self.language {
            Language::English => format!("{act} On {day} at the earliest."),
            Language::Spanish => format!("{act} Como pronto, el {day}."),
        })
    }
}

impl Language {
    const fn weaning_act(self, criterion: Criterion) -> &'static str {
        match criterion {
            Criterion::FeedUnwanted => self.pick(
                "Go on offering the feed as planned and note what is taken; it goes when the chick leaves it.",
                "Siga ofreciendo la toma según el plan y anote lo que toma; se quita cuando el pollo la deja.",
            ),
            Criterion::SolidsEaten => self.pick(
                "Keep solids within reach and note each day what was swallowed; playing does not count.",
                "Deje sólidos al alcance y anote cada día lo que tragó; jugar no cuenta.",
            ),
            Criterion::WeightNearPeak => self.pick(
                "Weigh every morning with an empty crop; below the limit the weight must come back up first, or hold level for a week at weaning age.",
                "Pese cada mañana con el buche vacío; por debajo del límite, primero debe recuperar peso, o mantenerlo una semana en edad de destete.",
            ),
            Criterion::WeightSteady => self.pick(
                "Weigh every morning with an empty crop; the weight must hold.",
                "Pese cada mañana con el buche vacío; el peso debe mantenerse.",
            ),
            Criterion::DroppingsNormal => self.pick(
                "Look at the droppings every day and note them.",
                "Mire los excrementos cada día y anótelos.",
            ),
            Criterion::NoTrouble => self.pick(
                "A week without trouble; note a sign as gone when it is.",
                "Una semana sin problemas; anote que la señal pasó cuando pase.",
            ),
            Criterion::SettledIn => self.pick(
                "Only time: everything stays as the chick knows it.",
                "Solo tiempo: todo sigue como el pollo lo conoce.",
            ),
            Criterion::Waited => self.pick(
                "Only time: one change after another.",
                "Solo tiempo: un cambio después de otro.",
            ),
            Criterion::NobodyToRing => self.pick(
                "Ring, and do what breeder or vet say.",
                "Llame y haga lo que digan el criador o el veterinario.",
            ),
        }
    }
}

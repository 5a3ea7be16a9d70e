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
                format!(
                    "{}: no la quiso o tomó menos de la mitad, {days}",
                    say.feed(next)
                )
            }
            (Criterion::SolidsEaten, Language::English) => format!("Solids eaten, {days}"),
            (Criterion::SolidsEaten, Language::Spanish) => format!("Comió alimento sólido, {days}"),
            (Criterion::WeightNearPeak, Language::English) => {
                format!("Weight compared with its highest: {value} (at least {limit})")
            }
            (Criterion::WeightNearPeak, Language::Spanish) => {
                format!("Peso frente a su máximo: {value} (al menos {limit})")
            }
            (Criterion::WeightSteady, Language::English) => {
                format!("Weight change a day, over five days: {value} (no less than {limit})")
            }
            (Criterion::WeightSteady, Language::Spanish) => {
                format!("Cambio de peso al día, en cinco días: {value} (no menos de {limit})")
            }
            (Criterion::DroppingsNormal, Language::English) => {
                format!("Droppings as usual, {days}")
            }
            (Criterion::DroppingsNormal, Language::Spanish) => {
                format!("Heces normales, {days}")
            }
            (Criterion::NoTrouble, Language::English) => self.since(
                check,
                "No sign of illness was noted",
                "Days without a sign of illness",
            ),
            (Criterion::NoTrouble, Language::Spanish) => self.since(
                check,
                "No se anotó ninguna señal de enfermedad",
                "Días sin señales de enfermedad",
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
            (Criterion::NobodyToCall, Language::English) => {
                format!("Reasons to call: {}", counted(check.value))
            }
            (Criterion::NobodyToCall, Language::Spanish) => {
                format!("Motivos para llamar: {}", counted(check.value))
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
                "Go on offering the feed as planned. Note how much it takes. The feed goes when the chick no longer wants it.",
                "Siga ofreciendo la toma según el plan. Anote cuánto toma. Se quita cuando el polluelo ya no la quiere.",
            ),
            Criterion::SolidsEaten => self.pick(
                "Keep solids within reach. Each day, note what it swallowed; playing with food does not count.",
                "Deje alimento sólido a su alcance. Anote cada día lo que tragó; jugar con la comida no cuenta.",
            ),
            Criterion::WeightNearPeak => self.pick(
                "Weigh every morning with an empty crop. The weight must first come back up to the limit, or stay level for a week at weaning age.",
                "Pese cada mañana con el buche vacío. Primero tiene que recuperar peso hasta el límite, o mantenerlo una semana en edad de destete.",
            ),
            Criterion::WeightSteady => self.pick(
                "Weigh every morning with an empty crop. The weight must stay the same.",
                "Pese cada mañana con el buche vacío. El peso debe mantenerse.",
            ),
            Criterion::DroppingsNormal => self.pick(
                "Look at the droppings every day and note how they look.",
                "Mire las heces cada día y anote cómo son.",
            ),
            Criterion::NoTrouble => self.pick(
                "Wait for a week without signs of illness. When a sign is gone, note it as gone.",
                "Espere una semana sin señales de enfermedad. Cuando ya no tenga la señal, anótelo.",
            ),
            Criterion::SettledIn => self.pick(
                "Just wait: change nothing in these days.",
                "Solo espere: en estos días no cambie nada.",
            ),
            Criterion::Waited => self.pick(
                "Just wait: one change at a time.",
                "Solo espere: un cambio cada vez.",
            ),
            Criterion::NobodyToCall => self.pick(
                "Call, and do what your breeder or vet says.",
                "Llame y haga lo que diga el criador o el veterinario.",
            ),
        }
    }
}

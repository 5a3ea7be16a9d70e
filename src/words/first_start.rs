//! A new chick, one question group a screen.

use crate::domain::warnings::plan_checks::PlanCheck;
use crate::words::Language;
use crate::words::format::Writing;

texts! {
    group_who: "Who is coming home?", "¿Quién llega a casa?";
    group_hatched: "When did it hatch?", "¿Cuándo nació?";
    group_hatched_hint: "The day is on its ring or in its papers, or ask the breeder.", "El día está en la anilla (anillo) o en los papeles, o pregunte al criador.";
    group_fed: "How is it fed today?", "¿Cómo se le da hoy?";
    group_fed_hint: "As the breeder does it now.", "Como lo hace ahora el criador.";
    group_feeds_a_day: "Feeds a day", "Tomas al día";
    group_when: "When, and how much", "A qué hora y cuánto";
    group_tool: "Fed with", "Se le da con";
    group_weight: "What did it weigh at handover?", "¿Cuánto pesaba en la entrega?";
    group_weight_hint: "With an empty crop, as the breeder wrote it down. Every later weight is compared with it.", "Con el buche vacío, como lo apuntó el criador. Cada peso posterior se compara con este.";
    group_call: "Whom do you call?", "¿A quién llama?";
    group_call_hint: "With these, help is one tap away. An avian vet treats parrots: ask before you need one.", "Con esto, la ayuda está a un toque. Un veterinario de aves trata loros: pregunte antes de que haga falta.";
    group_breeder: "The breeder's name", "Nombre del criador";
    group_breeder_number: "The breeder's telephone", "Teléfono del criador";
    group_vet_number: "The vet's telephone", "Teléfono del veterinario";
    group_not_sure: "Not sure", "No lo sé";
    group_next: "Next", "Siguiente";
    group_start: "Start", "Empezar";
    group_all_fields: "I am the breeder: every field at once", "Soy el criador: todos los campos a la vez";
    group_draft: "What you typed before is still here.", "Lo que escribió antes sigue aquí.";
    group_amount_needed: "Type every amount, or tap Not sure.", "Escriba todas las cantidades o toque «No lo sé».";
    group_day_needed: "Choose the day, or tap Not sure.", "Elija el día o toque «No lo sé».";
    group_weight_needed: "Type the weight, or tap Not sure.", "Escriba el peso o toque «No lo sé».";
    group_number_needed: "Type the breeder's number, or tap Not sure.", "Escriba el teléfono del criador o toque «No lo sé».";
    todo_phone: "telephone numbers", "teléfonos";
    todo_phone_line: "Type in the telephone numbers of the breeder and an avian vet.", "Escriba los teléfonos del criador y de un veterinario de aves.";
}

impl Writing {
    /// What an owner is told whose largest amount does not fit the weight; `None` for any other check.
    pub fn amount_doubt(self, check: PlanCheck) -> Option<String> {
        let PlanCheck::LargestFeed {
            most,
            weight,
            usual,
            ..
        } = check
        else {
            return None;
        };
        let (most, weight) = (self.volume(most), self.mass(weight));
        let usual = self.volume(usual);
        Some(match self.language {
            Language::English => format!(
                "{most} is a lot for {weight}: usual is up to {usual}. Ask the breeder about both numbers."
            ),
            Language::Spanish => format!(
                "{most} es mucho para {weight}: lo habitual es hasta {usual}. Pregunte al criador por los dos números."
            ),
        })
    }

    /// Which group of questions is on screen, of how many; both from 1.
    pub fn group_of(self, place: usize, count: usize) -> String {
        match self.language {
            Language::English => format!("{place} of {count}"),
            Language::Spanish => format!("{place} de {count}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::quantity::units::{Grams, Millilitres};
    use crate::domain::warnings::plan_checks::PlanCheck;
    use crate::words::Language;
    use crate::words::format::Writing;

    #[test]
    fn an_amount_that_is_much_for_the_weight_is_told_with_both_numbers() {
        let writing = Writing::metric(Language::English);
        // 10 % of 400 g.
        let usual = Millilitres::whole(40);
        let doubt = writing.amount_doubt(PlanCheck::LargestFeed {
            most: Millilitres::whole(60),
            weight: Grams::whole(400),
            usual,
            by_weight: Millilitres::whole(48),
            by_species: None,
        });
        let doubt = doubt.map(|doubt| doubt.replace('\u{a0}', " "));
        assert_eq!(
            doubt.as_deref(),
            Some(
                "60 ml is a lot for 400 g: usual is up to 40 ml. Ask the breeder about both numbers."
            )
        );
        assert_eq!(writing.amount_doubt(PlanCheck::NoWeight), None);
    }
}

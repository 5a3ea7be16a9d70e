//! Words for what leaves the phone and comes back: refusals, previews, file names, shared labels.

use crate::share::take::{TakeError, Taken};
use crate::words::Language;
use crate::words::format::Writing;

impl Language {
    /// Why a text was not taken in, and what to do.
    pub const fn take_error(self, error: &TakeError) -> &'static str {
        match error {
            TakeError::NotOurs => self.pick(
                "There is no Perchlight card, report or backup in this. Copy the whole message, or choose the file you were sent.",
                "Aquí no hay ninguna tarjeta, informe ni copia de Perchlight. Copie el mensaje entero o elija el archivo que le enviaron.",
            ),
            TakeError::Newer { .. } => self.pick(
                "It was made by a newer version of Perchlight. Update first, then open it again.",
                "Lo hizo una versión más nueva de Perchlight. Actualice primero y ábralo de nuevo.",
            ),
            TakeError::Damaged => self.pick(
                "Something in it was altered on its way. Nothing was taken in. Ask for it again, best as a file.",
                "Algo cambió por el camino. No se tomó nada. Pídalo de nuevo, mejor como archivo.",
            ),
            TakeError::Truncated => self.pick(
                "Its end is missing. Nothing was taken in. Copy all of it, up to the last character, or ask for the file.",
                "Le falta el final. No se tomó nada. Cópielo entero, hasta el último carácter, o pida el archivo.",
            ),
            TakeError::TooLarge => self.pick(
                "It is larger than any card, report or backup. Nothing was taken in.",
                "Es más grande que cualquier tarjeta, informe o copia. No se tomó nada.",
            ),
            TakeError::WrongKind => self.pick(
                "It is from Perchlight, but of a kind that cannot be taken in here.",
                "Es de Perchlight, pero de una clase que aquí no se puede tomar.",
            ),
        }
    }
}

impl Writing {
    /// What was found in a text, before it is taken in.
    pub fn taken(self, taken: &Taken) -> String {
        let say = self.language;
        match taken {
            Taken::Card { plan, .. } => labelled(say.exchange_card(), &plan.name),
            Taken::PlanChange { plan, .. } => labelled(say.exchange_plan_change(), &plan.name),
            Taken::Entries(entries) => match (say, entries.len()) {
                (Language::English, 1) => "Records: 1 entry".to_owned(),
                (Language::English, count) => format!("Records: {count} entries"),
                (Language::Spanish, 1) => "Registros: 1 anotación".to_owned(),
                (Language::Spanish, count) => format!("Registros: {count} anotaciones"),
            },
        }
    }
}

/// A label and what it stands for; the label alone when there is nothing.
pub(crate) fn labelled(label: &str, text: &str) -> String {
    if text.is_empty() {
        label.to_owned()
    } else {
        format!("{label}: {text}")
    }
}

texts! {
    exchange_card: "Handover card", "Tarjeta de entrega";
    exchange_plan_change: "Changed plan", "Plan cambiado";
}

//! Two carers of one chick.

use crate::domain::journal::carers::CarerNotes;
use crate::words::Language;
use crate::words::format::Writing;

texts! {
    carers_title: "Two carers", "Dos cuidadores";
    carers_all: "Copy everything for the other phone", "Copiar todo para el otro teléfono";
    carers_hint: "The first time: everything. The other phone opens the link, or imports it, and answers \"We both care for it\". On an iPhone the installed app and Safari count as two phones.", "La primera vez: todo. En el otro teléfono se abre el enlace, o se importa, y se responde «Lo cuidamos entre los dos». En un iPhone la app instalada y Safari cuentan como dos teléfonos.";
    carers_who: "Who did what, last two days", "Quién hizo qué, últimos dos días";
    carers_none: "Nothing noted.", "Nada anotado.";
    carers_unnamed: "No name", "Sin nombre";
}

impl Writing {
    /// "Olive: 2 feeds, 1 weight".
    pub fn carer_notes(self, notes: &CarerNotes) -> String {
        let say = self.language;
        let by = if notes.by.is_empty() {
            say.carers_unnamed()
        } else {
            &notes.by
        };
        let [feed, weight, other] = match say {
            Language::English => [
                ("feed", "feeds"),
                ("weight", "weights"),
                ("other note", "other notes"),
            ],
            Language::Spanish => [
                ("toma", "tomas"),
                ("peso", "pesos"),
                ("nota más", "notas más"),
            ],
        };
        let counts = [
            (notes.feeds, feed),
            (notes.weights, weight),
            (notes.others, other),
        ];
        let counts = counts.into_iter().filter(|(count, _)| *count > 0);
        let counts = counts.map(|(count, (one, many))| {
            let word = if count == 1 { one } else { many };
            format!("{count} {word}")
        });
        format!("{by}: {}", counts.collect::<Vec<_>>().join(", "))
    }
}

//! What a weight means right after the scale, and what comes next.

use crate::domain::quantity::units::{Grams, NumberError};
use crate::domain::time::moment::{Day, Lived, WallTime};
use crate::domain::warnings::level::Level;
use crate::words::Language;
use crate::words::format::Writing;

texts! {
    weigh_done: "Done", "Listo";
    weigh_chart: "Chart", "Gráfico";
    weigh_again: "Weigh again", "Pesar otra vez";
    weigh_not_now: "Not now", "Ahora no";
    weigh_again_title: "Weigh once more now", "Pese otra vez ahora";
    weigh_again_text: "That is a big step, and one reading alone may be the scale. Lift the chick off, wait for 0, put it back.", "Es un cambio grande, y una sola pesada puede ser cosa de la báscula. Levante al polluelo, espere a que marque 0 y vuelva a ponerlo.";
    weigh_third_title: "Weigh a third time now", "Pese una tercera vez ahora";
    weigh_third_text: "The two weights differ by more than the scale can. Weigh again: of three the middle one counts. Is the scale level, and does it show 0?", "Los dos pesos difieren más de lo que puede fallar la báscula. Pese otra vez: de tres vale el de en medio. ¿Está nivelada la báscula y marca 0?";
    weigh_again_help: "No call for one reading. Dull, fluffed up, cold, or food left in the crop: tap Help now.", "Por una sola pesada no hace falta llamar. Si está decaído, esponjado o frío, o queda comida en el buche: toque «Ayuda» ya.";
    weigh_full_title: "Was the crop full?", "¿Tenía el buche lleno?";
    weigh_full_text: "That is more than was expected. Feel the crop. With food in it this weight is not compared.", "Es más de lo esperado. Palpe el buche. Si hay comida, este peso no se compara.";
    weigh_full_yes: "Yes, food in it", "Sí, tenía comida";
    weigh_full_no: "No, it was empty", "No, estaba vacío";
    weigh_call_first: "Call first. Do not wait to weigh again.", "Llame primero. No espere a pesar otra vez.";
    weigh_fine: "Nothing to do but the usual.", "Siga como siempre.";
    weigh_watch: "Weigh again tomorrow before the first feed, and watch how it eats.", "Vuelva a pesar mañana antes de la primera toma y observe cómo come.";
    weigh_not_compared: "Not compared: there may be food in the crop.", "No se compara: puede haber comida en el buche.";
    weigh_first: "The first weight here. The next mornings are compared with it.", "El primer peso aquí. Los próximos días se comparan con él.";
    weigh_ruler: "Where this weight stands", "Dónde queda este peso";
    weigh_mark_call: "call", "llamar";
    weigh_mark_now: "now", "ahora";
    weigh_mark_before: "before", "antes";
    weigh_mark_handover: "handover", "entrega";
}

impl Writing {
    /// The last weighing, below an empty field: "Yesterday 998 g, 06:48".
    pub fn last_weighing(self, weight: Grams, when: Lived, today: Day) -> String {
        let (weight, time) = (self.mass(weight), self.time(when.time));
        format!("{} {weight}, {time}", self.near_day(when.day, today))
    }

    /// "Today", "Yesterday", else the day: `Mon 30 Nov:`.
    fn near_day(self, day: Day, today: Day) -> String {
        let say = self.language;
        match today.since(day) {
            0 => say.pick("Today", "Hoy").to_owned(),
            1 => say.pick("Yesterday", "Ayer").to_owned(),
            _ => format!("{}:", self.day(day)),
        }
    }

    /// How far a weight is from the one before: "37 g less than yesterday (−3.7 %)".
    pub fn changed_since(self, weight: Grams, before: Grams, day: Day, today: Day) -> String {
        let apart = weight.tenths() - before.tenths();
        let grams = self.mass(Grams::tenths_held(apart.saturating_abs()));
        let loss = weight.since(before).loss_pct_of(before).unwrap_or_default();
        let pct = self.pct_change(-loss);
        let when = match (self.language, today.since(day)) {
            (Language::English, 0) => "earlier today".to_owned(),
            (Language::English, 1) => "yesterday".to_owned(),
            (Language::English, _) => format!("on {}", self.day(day)),
            (Language::Spanish, 0) => "antes hoy".to_owned(),
            (Language::Spanish, 1) => "ayer".to_owned(),
            (Language::Spanish, _) => format!("el {}", self.day(day)),
        };
        match (self.language, apart.signum()) {
            (Language::English, 0) => format!("The same as {when}"),
            (Language::English, ..0) => format!("{grams} less than {when} ({pct})"),
            (Language::English, _) => format!("{grams} more than {when} ({pct})"),
            (Language::Spanish, 0) => format!("Igual que {when}"),
            (Language::Spanish, ..0) => format!("{grams} menos que {when} ({pct})"),
            (Language::Spanish, _) => format!("{grams} más que {when} ({pct})"),
        }
    }

    /// A weight typed with a sign between thousands, as it is understood, beside what it means.
    pub fn understood(self, weight: Grams, meaning: Option<String>) -> String {
        let weight = self.mass(weight);
        meaning.map_or_else(|| weight.clone(), |meaning| format!("{weight}: {meaning}"))
    }

    /// What the field says of a sign that may part thousands or tenths, while it is typed.
    pub fn thousands_or_tenths(self) -> String {
        self.number_error(NumberError::ThousandsOrDecimals)
    }

    /// A weight with its time, before how far it is kept: "961 g, 06:46."
    pub fn noted_weight(self, weight: Grams, time: WallTime) -> String {
        format!("{}, {}.", self.mass(weight), self.time(time))
    }

    /// What to do after a weighing that calls nobody.
    pub fn weigh_next(self, level: Level) -> &'static str {
        let say = self.language;
        match level {
            Level::Settled => say.weigh_fine(),
            Level::Watch => say.weigh_watch(),
            Level::CallBreeder | Level::VetToday | Level::Emergency => say.weigh_call_first(),
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::quantity::units::Grams;
    use crate::domain::time::moment::Day;
    use crate::words::Language;
    use crate::words::format::Writing;

    #[test]
    fn a_weight_is_held_against_the_one_before() {
        let today = Day::from_date(2026, 12, 5).unwrap();
        let said = |grams: i32, days: i32| {
            let english = Writing::metric(Language::English);
            let before = Grams::whole(998);
            let said = english.changed_since(Grams::whole(grams), before, today.plus(-days), today);
            said.replace('\u{a0}', " ")
        };
        // 37 / 998 = 3.71 %; 12 / 998 = 1.20 %
        assert_eq!(said(961, 1), "37 g less than yesterday (\u{2212}3.7 %)");
        assert_eq!(said(1_010, 5), "12 g more than on Mon 30 Nov (+1.2 %)");
        assert_eq!(said(998, 0), "The same as earlier today");
    }
}

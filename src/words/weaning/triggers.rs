//! Each trigger that brings a feed back: as a line with its number, and as a reason.

use crate::domain::warnings::level::Value;
use crate::domain::weaning::facts::Answer;
use crate::domain::weaning::triggers::{Trigger, TriggerCheck};
use crate::words::Language;
use crate::words::format::Writing;
use crate::words::weaning::answer::counted;

impl Writing {
    /// One trigger with its number and limit; its answer stands beside it.
    pub fn weaning_trigger_line(self, check: &TriggerCheck) -> String {
        let say = self.language;
        let unknown = || say.pick("not known", "sin datos").to_owned();
        let value = check.value.map_or_else(unknown, |value| self.share(value));
        let limit = self.share(check.limit);
        let (count, least) = (counted(check.value), counted(Some(check.limit)));
        match (check.trigger, say) {
            (Trigger::LossSinceDrop, Language::English) => {
                format!("Weight lost in the three days after the drop: {value} (from {limit})")
            }
            (Trigger::LossSinceDrop, Language::Spanish) => {
                format!(
                    "Peso perdido en los tres días después de quitarla: {value} (desde {limit})"
                )
            }
            (Trigger::BelowPeak, Language::English) => {
                format!("Weight compared with its highest: {value} (below {limit})")
            }
            (Trigger::BelowPeak, Language::Spanish) => {
                format!("Peso frente a su máximo: {value} (por debajo de {limit})")
            }
            (Trigger::BegsAllDay, Language::English) => {
                format!("Days of begging all day: {count} (from {least})")
            }
            (Trigger::BegsAllDay, Language::Spanish) => {
                format!("Días en que pidió comida sin parar: {count} (desde {least})")
            }
            (Trigger::DroppingsSmall, _) => {
                let seen = match check.answer {
                    Answer::Yes => say.pick("yes", "sí"),
                    Answer::No => say.pick("not at the last look", "no la última vez"),
                    Answer::NotEnoughData => say.pick(
                        "not looked at for two days",
                        "sin mirar desde hace dos días",
                    ),
                };
                let what = say.pick(
                    "Droppings small, dark or few",
                    "Heces pequeñas, oscuras o pocas",
                );
                format!("{what}: {seen}")
            }
            (Trigger::Illness, Language::English) => {
                format!("Reasons to call about the chick: {count} (from {least})")
            }
            (Trigger::Illness, Language::Spanish) => {
                format!("Motivos para llamar por el polluelo: {count} (desde {least})")
            }
        }
    }

    /// One trigger that holds, within a sentence.
    pub fn weaning_trigger_reason(self, check: &TriggerCheck) -> String {
        let pct = self.share(check.value.unwrap_or(Value::Seen));
        match (check.trigger, self.language) {
            (Trigger::LossSinceDrop, Language::English) => {
                format!("it lost {pct} in the days after the drop")
            }
            (Trigger::LossSinceDrop, Language::Spanish) => {
                format!("perdió un {pct} en los días después de quitarla")
            }
            (Trigger::BelowPeak, Language::English) => {
                format!("its weight is {pct} of its highest")
            }
            (Trigger::BelowPeak, Language::Spanish) => format!("su peso es un {pct} del máximo"),
            (Trigger::BegsAllDay, Language::English) => "it begs all day".to_owned(),
            (Trigger::BegsAllDay, Language::Spanish) => "pide comida todo el día".to_owned(),
            (Trigger::DroppingsSmall, Language::English) => {
                "droppings are small, dark or few".to_owned()
            }
            (Trigger::DroppingsSmall, Language::Spanish) => {
                "las heces son pequeñas, oscuras o pocas".to_owned()
            }
            (Trigger::Illness, Language::English) => "it may be ill".to_owned(),
            (Trigger::Illness, Language::Spanish) => "puede estar enfermo".to_owned(),
        }
    }
}

//! The path of weaning: its steps, what is missing to the next, and the line for the last feed given up.

use crate::domain::plan::care_plan::Slot;
use crate::domain::time::moment::Day;
use crate::domain::warnings::level::Value;
use crate::domain::weaning::criteria::{Check, Criterion};
use crate::domain::weaning::facts::Answer;
use crate::words::Language;
use crate::words::format::Writing;

texts! {
    path_title: "Step by step", "Paso a paso";
    path_all_checks: "How each is counted", "Cómo se cuenta cada cosa";
    path_last: "goes last", "se quita la última";
    path_weaned: "Weaned", "Destetado";
    path_weaned_hint: "then weighed every morning for four weeks", "después se pesa cada mañana cuatro semanas";
    path_none_seen: "None of these seen", "No se ve nada de esto";
    path_stays: "The feed can stay away", "La toma puede seguir quitada";
    path_comes_back: "It comes back with any of these:", "Vuelve con cualquiera de estas cosas:";
}

impl Language {
    /// One criterion in a few words; beside it stands how far it is.
    pub fn weaning_check_name(self, criterion: Criterion, next: Slot) -> String {
        match criterion {
            Criterion::FeedUnwanted => {
                let feed = self.the_feed(next);
                match self {
                    Self::English => format!("days with {feed} refused or under half taken"),
                    Self::Spanish => {
                        format!("días en que no quiso {feed} o tomó menos de la mitad")
                    }
                }
            }
            Criterion::SolidsEaten => self
                .pick("days with solids eaten", "días en que comió sólidos")
                .to_owned(),
            Criterion::WeightNearPeak => self
                .pick("weight near its highest", "peso cerca de su máximo")
                .to_owned(),
            Criterion::WeightSteady => self.pick("weight steady", "peso estable").to_owned(),
            Criterion::DroppingsNormal => self
                .pick("days with droppings as usual", "días con heces normales")
                .to_owned(),
            Criterion::NoTrouble => self
                .pick(
                    "no sign of illness for a week",
                    "una semana sin señales de enfermedad",
                )
                .to_owned(),
            Criterion::SettledIn => self.pick("days at home", "días en casa").to_owned(),
            Criterion::Waited => self
                .pick("days since the last change", "días desde el último cambio")
                .to_owned(),
            Criterion::NobodyToCall => self
                .pick("nobody to call", "nadie a quien llamar")
                .to_owned(),
        }
    }

    /// The step that the chick stands on or began with: how many feeds a day.
    pub fn feeds_a_day(self, count: usize) -> String {
        match (self, count) {
            (Self::English, 1) => "One feed a day".to_owned(),
            (Self::English, _) => format!("{count} feeds a day"),
            (Self::Spanish, 1) => "Una toma al día".to_owned(),
            (Self::Spanish, _) => format!("{count} tomas al día"),
        }
    }

    /// A feed that was given up.
    pub fn feed_given_up(self, slot: Slot) -> String {
        match self {
            Self::English => format!("{} given up", self.feed(slot)),
            Self::Spanish => format!("{}, quitada", self.feed(slot)),
        }
    }

    /// The feed that goes next.
    pub fn feed_goes_next(self, slot: Slot) -> String {
        match self {
            Self::English => format!("{} goes next", self.feed(slot)),
            Self::Spanish => format!("{}: la próxima", self.feed(slot)),
        }
    }

    /// A feed that goes later, or last.
    pub fn feed_goes_later(self, slot: Slot, is_last: bool) -> String {
        let feed = self.feed(slot);
        match (self, is_last) {
            (_, true) => format!("{feed} {}", self.path_last()),
            (Self::English, false) => format!("{feed} goes later"),
            (Self::Spanish, false) => format!("{feed}: más tarde"),
        }
    }
}

/// How far a criterion is, in the place of a mark.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Far {
    /// It holds.
    Holds,
    /// So many of so many.
    Of(String),
    /// Not yet, without a count.
    NotYet,
}

/// How far a criterion is.
pub fn how_far(check: &Check) -> Far {
    match (check.answer, check.value, check.limit) {
        (Answer::Yes, _, _) => Far::Holds,
        (Answer::No | Answer::NotEnoughData, Some(Value::Count(count)), Value::Count(limit))
            if count < limit =>
        {
            Far::Of(format!("{count}/{limit}"))
        }
        (Answer::NotEnoughData, None, Value::Count(limit)) => Far::Of(format!("0/{limit}")),
        (Answer::No | Answer::NotEnoughData, _, _) => Far::NotYet,
    }
}

impl Writing {
    /// Since when the chick is home.
    pub fn home_since(self, day: Day) -> String {
        let day = self.day(day);
        match self.language {
            Language::English => format!("home since {day}"),
            Language::Spanish => format!("en casa desde el {day}"),
        }
    }

    /// On which day a feed was given up, and the how-manieth day at home that was.
    pub fn given_up_on(self, day: Day, home: Option<Day>) -> String {
        let at_home = home.map(|home| day.since(home)).filter(|days| *days > 0);
        let day = self.day(day);
        match (self.language, at_home) {
            (_, None) => day,
            (Language::English, Some(days)) => format!("{day}, day {days}"),
            (Language::Spanish, Some(days)) => format!("{day}, día {days}"),
        }
    }

    /// The first day on which the next feed can go.
    pub fn earliest_on(self, day: Day) -> String {
        let day = self.day(day);
        match self.language {
            Language::English => format!("{day} at the earliest"),
            Language::Spanish => format!("como pronto, el {day}"),
        }
    }

    /// The last feed is given up: said once, quietly.
    pub fn eats_by_itself(self, name: &str, days: i32, feeds: usize) -> String {
        let days = self.days(days);
        match self.language {
            Language::English => {
                format!("{name} eats by itself now. {days}, {feeds} feeds. Well fed.")
            }
            Language::Spanish => {
                format!("{name} ya come por sí solo. {days}, {feeds} tomas. Buen trabajo.")
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::quantity::evidence::Standing;
    use crate::words::weaning::path::*;

    fn far(answer: Answer, value: Option<Value>, limit: Value) -> Far {
        how_far(&Check {
            criterion: Criterion::SolidsEaten,
            value,
            limit,
            answer,
            met_from: None,
            standing: Standing::Ours,
        })
    }

    #[test]
    fn what_is_missing_is_counted_and_what_holds_is_not() {
        let of = |count, limit| {
            Some(far(
                Answer::No,
                Some(Value::Count(count)),
                Value::Count(limit),
            ))
        };
        assert_eq!(of(1, 3), Some(Far::Of("1/3".to_owned())));
        // Three of three days that do not hold for another reason are no progress to be shown.
        assert_eq!(of(3, 3), Some(Far::NotYet));
        let three = Value::Count(3);
        assert_eq!(far(Answer::Yes, Some(three), three), Far::Holds);
        assert_eq!(
            far(Answer::NotEnoughData, None, three),
            Far::Of("0/3".to_owned())
        );
        assert_eq!(
            far(Answer::No, Some(Value::Pct(91.2)), Value::Pct(95.0)),
            Far::NotYet
        );
    }
}

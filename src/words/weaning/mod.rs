//! Words of weaning: the answer first, then how far it has come, the order, the acts.

pub mod answer;
pub mod checks;
pub mod path;
pub mod triggers;

use crate::domain::homecoming::life_stage::WEANED_DAYS;
use crate::domain::plan::care_plan::Slot;
use crate::domain::plan::species::Species;
use crate::domain::weaning::AgeNote;
use crate::domain::weaning::stage::{Flatness, Stage};
use crate::domain::weight::mornings::FLAT_PCT;
use crate::words::Language;
use crate::words::format::Writing;

impl Language {
    /// Heading of the list of criteria.
    pub const fn weaning_checks_title(self) -> &'static str {
        self.pick(
            "A feed may go when all of these hold",
            "Se puede quitar una toma cuando se cumple todo esto",
        )
    }

    /// Heading of the list of triggers.
    pub const fn weaning_triggers_title(self) -> &'static str {
        self.pick(
            "Any of these brings the feed back",
            "La toma se vuelve a ofrecer si pasa algo de esto",
        )
    }

    /// The caution that age never decides.
    pub const fn weaning_age_caution(self) -> &'static str {
        self.pick(
            "Age never decides: the chick shows when it is ready.",
            "La edad nunca decide: el polluelo muestra cuándo está listo.",
        )
    }

    /// What an offer means where the breeder wants to be asked.
    pub const fn weaning_ask_text(self) -> &'static str {
        self.pick(
            "The plan says: ask the breeder before a feed goes. Then note below what the breeder said.",
            "El plan dice: pregunte al criador antes de quitar una toma. Luego anote abajo lo que dijo.",
        )
    }

    /// The act of noting the breeder's own decision.
    pub const fn weaning_breeder_act(self) -> &'static str {
        self.pick(
            "My breeder or vet says: drop it now",
            "Mi criador o veterinario dice: quítela ya",
        )
    }

    /// What that act means.
    pub const fn weaning_breeder_text(self) -> &'static str {
        self.pick(
            "Call first. Your breeder or avian vet may decide against these checks. The drop is noted as theirs, and the feed still comes back if one of the reasons below holds.",
            "Llame primero. Su criador o su veterinario puede decidir otra cosa. La toma se anota como quitada por decisión suya, y se vuelve a ofrecer igual si pasa algo de lo de abajo.",
        )
    }

    /// How a feed is offered again.
    pub const fn weaning_bring_back_text(self) -> &'static str {
        self.pick(
            "Offer the planned amount. Only to an empty crop, never by force. Going back a step is not a failure: the feed can go again later.",
            "Ofrezca la cantidad del plan. Solo con el buche vacío, nunca a la fuerza. Volver un paso atrás no es un fracaso: la toma puede quitarse más adelante.",
        )
    }

    /// How a feed is dropped.
    pub const fn weaning_drop_text(self) -> &'static str {
        self.pick(
            "Keep solids and water within reach all day. Weigh every morning. You may also wait: there is no hurry.",
            "Deje alimento sólido y agua a su alcance todo el día. Pese cada mañana. También puede esperar: no hay prisa.",
        )
    }

    /// What to look for in a chick that gets no formula any more, which nothing here measures.
    pub const fn weaned_look_for(self, stage: &Stage) -> Option<&'static str> {
        match stage {
            Stage::NoFormula { .. } | Stage::AfterWeaning { .. } | Stage::Done { .. } => Some(self.pick(
                "Look also: is the crop full of solids at bedtime, and does it drink? Perchlight cannot see either. Note the drinking under Solids.",
                "Mire también: ¿tiene el buche lleno de alimento sólido por la noche, y bebe? Perchlight no puede ver ninguna de las dos cosas. Anote que bebe en «Sólidos».",
            )),
            Stage::SettlingIn { .. }
            | Stage::FullPlan
            | Stage::Weaning { .. }
            | Stage::LastFeed { .. } => None,
        }
    }

    /// A feed within a sentence: "the bedtime feed".
    pub fn the_feed(self, slot: Slot) -> String {
        match self {
            Self::English => format!("the {} feed", self.slot(slot)),
            Self::Spanish => {
                let feed = self.feed(slot);
                format!("la t{}", feed.strip_prefix('T').unwrap_or(feed))
            }
        }
    }

    /// The act of dropping a feed.
    pub fn weaning_drop_act(self, slot: Slot) -> String {
        format!("{} {}", self.pick("Drop", "Quitar"), self.the_feed(slot))
    }

    /// The act of offering a feed again.
    pub fn weaning_bring_back_act(self, slot: Slot) -> String {
        let feed = self.the_feed(slot);
        match self {
            Self::English => format!("Offer {feed} again"),
            Self::Spanish => format!("Volver a ofrecer {feed}"),
        }
    }

    /// The feeds still given, in the order in which they go: "Next to go: midday. Then morning,
    /// bedtime last."; empty when none is left.
    pub fn weaning_order_text(self, order: &[Slot]) -> String {
        let Some((next, rest)) = order.split_first() else {
            return String::new();
        };
        let next = self.slot(*next);
        let rest: Vec<&str> = rest.iter().map(|slot| self.slot(*slot)).collect();
        let (next_text, then, last) = match self {
            Self::English => ("Next to go", "Then", "last"),
            Self::Spanish => ("La próxima en quitarse", "Después", "la última"),
        };
        let next = format!("{next_text}: {next}.");
        match rest.as_slice() {
            [] => next,
            rest => format!("{next} {then} {} {last}.", rest.join(", ")),
        }
    }
}

impl Writing {
    /// The act of asking the breeder, by name where there is one.
    pub fn ask_breeder(self, name: &str) -> String {
        match (self.language, name.trim()) {
            (Language::English, "") => "Ask the breeder".to_owned(),
            (Language::Spanish, "") => "Preguntar al criador".to_owned(),
            (Language::English, name) => format!("Ask {name}"),
            (Language::Spanish, name) => format!("Preguntar a {name}"),
        }
    }

    /// The name of a stage, with its numbers.
    pub fn weaning_stage(self, stage: &Stage) -> String {
        let say = self.language;
        match stage {
            Stage::SettlingIn { until } => {
                let until = self.day(*until);
                match say {
                    Language::English => format!("Settling in until {until}."),
                    Language::Spanish => format!("Adaptándose hasta el {until}."),
                }
            }
            Stage::FullPlan => say
                .pick("All feeds are still given.", "Aún se dan todas las tomas.")
                .to_owned(),
            Stage::Weaning { feeds_left } => match say {
                Language::English => format!("Weaning: {feeds_left} feeds left."),
                Language::Spanish => format!("En destete: quedan {feeds_left} tomas."),
            },
            Stage::LastFeed { slot } => {
                let slot = say.slot(*slot);
                match say {
                    Language::English => format!("The last feed: {slot}."),
                    Language::Spanish => format!("La última toma: {slot}."),
                }
            }
            Stage::NoFormula {
                days,
                weight,
                has_drunk,
                ..
            } => {
                let drinking = if *has_drunk {
                    say.pick("Seen to drink.", "Se le ha visto beber.")
                } else {
                    say.pick(
                        "Not yet seen to drink: it counts as weaned once somebody has seen it.",
                        "Aún no se le ha visto beber: cuenta como destetado cuando alguien lo haya visto.",
                    )
                };
                let (formula, flat) = (self.no_formula(*days), self.flatness(*weight));
                format!("{formula} {flat} {drinking}")
            }
            Stage::AfterWeaning {
                weaned,
                weigh_until,
            } => {
                let (weaned, until) = (self.date(*weaned), self.date(*weigh_until));
                match say {
                    Language::English => format!(
                        "Weaned since {weaned}: 14 days without formula, a steady weight, and seen to drink. Weigh every morning until {until}."
                    ),
                    Language::Spanish => format!(
                        "Destetado desde el {weaned}: 14 días sin papilla, peso estable y se le ha visto beber. Pese cada mañana hasta el {until}."
                    ),
                }
            }
            Stage::Done { weaned } => {
                let weaned = self.date(*weaned);
                match say {
                    Language::English => {
                        format!("Weaned since {weaned}, and weighed on for four weeks.")
                    }
                    Language::Spanish => {
                        format!("Destetado desde el {weaned} y pesado cuatro semanas más.")
                    }
                }
            }
        }
    }

    fn no_formula(self, days: i32) -> String {
        match self.language {
            Language::English => {
                format!(
                    "No formula for {}; weaned from {WEANED_DAYS}.",
                    self.days(days)
                )
            }
            Language::Spanish => format!(
                "Sin papilla desde hace {}; destetado a partir de {WEANED_DAYS}.",
                self.days(days)
            ),
        }
    }

    fn flatness(self, weight: Flatness) -> String {
        let limit = self.pct(FLAT_PCT);
        match (self.language, weight.spread_pct) {
            (Language::English, Some(spread)) => {
                let spread = self.pct(spread);
                format!(
                    "In these days the weight stayed within {spread} of its average (limit {limit})."
                )
            }
            (Language::Spanish, Some(spread)) => {
                let spread = self.pct(spread);
                format!(
                    "En estos días el peso no se apartó más de un {spread} de su media (límite {limit})."
                )
            }
            (Language::English, None) => {
                format!("Too few morning weights in these days to call it steady (limit {limit}).")
            }
            (Language::Spanish, None) => format!(
                "En estos días hay pocos pesos de la mañana para saber si es estable (límite {limit})."
            ),
        }
    }

    /// The age beside the species' usual ages.
    pub fn weaning_age_line(self, note: AgeNote, species: Species) -> String {
        let age = self.age(note.age);
        let species = self.language.species(species);
        match (self.language, note.window) {
            (Language::English, Some(weeks)) => format!(
                "{age} old. {species}: commonly weaned at {} to {} weeks.",
                weeks.from, weeks.to
            ),
            (Language::Spanish, Some(weeks)) => format!(
                "Tiene {age}. {species}: suele destetarse entre las {} y las {} semanas.",
                weeks.from, weeks.to
            ),
            (Language::English, None) => {
                format!("{age} old. {species}: no usual weaning age is known here.")
            }
            (Language::Spanish, None) => {
                format!("Tiene {age}. {species}: aquí no consta una edad habitual de destete.")
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::time::moment::Day;
    use crate::words::weaning::*;

    #[test]
    fn a_chick_without_formula_is_looked_at_further_and_one_with_it_is_not() {
        let weaned = Day::from_date(2026, 11, 2).unwrap();
        let weigh_until = weaned.plus(28);
        for language in Language::ALL {
            let advice = |stage: Stage| language.weaned_look_for(&stage).is_some();
            assert!(advice(Stage::AfterWeaning {
                weaned,
                weigh_until
            }));
            assert!(advice(Stage::Done { weaned }));
            assert!(!advice(Stage::FullPlan));
            let slot = Slot::Bedtime;
            assert!(!advice(Stage::LastFeed { slot }));
        }
    }
}

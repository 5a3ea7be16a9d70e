//! Words of weaning: the answer first, then how far it has come, the order, the acts.

pub mod answer;
pub mod checks;
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
            "Before a feed goes, all of these",
            "Antes de quitar una toma, todo esto",
        )
    }

    /// Heading of the list of triggers.
    pub const fn weaning_triggers_title(self) -> &'static str {
        self.pick(
            "Any of these brings the feed back",
            "Cualquiera de estas cosas devuelve la toma",
        )
    }

    /// The caution that age never decides.
    pub const fn weaning_age_caution(self) -> &'static str {
        self.pick(
            "Age never decides. The chick shows when it is ready.",
            "La edad nunca decide. El pollo muestra cuándo está listo.",
        )
    }

    /// The act of noting the breeder's own decision.
    pub const fn weaning_breeder_act(self) -> &'static str {
        self.pick(
            "The breeder decided otherwise",
            "El criador decidió otra cosa",
        )
    }

    /// What that act means.
    pub const fn weaning_breeder_text(self) -> &'static str {
        self.pick(
            "Your breeder or avian vet may decide against these checks. Ring first. The drop is then noted as decided by the breeder, and the feed still comes back if a reason below holds.",
            "Su criador o su veterinario de aves puede decidir en contra de estas comprobaciones. Llame antes. La toma se anota entonces como quitada por decisión del criador, y vuelve igualmente si se cumple un motivo de abajo.",
        )
    }

    /// How a feed is offered again.
    pub const fn weaning_bring_back_text(self) -> &'static str {
        self.pick(
            "Offer the planned amount, only to an empty crop and never by force. Going back a step is not a failure: the feed can go again later.",
            "Ofrezca la cantidad del plan, solo con el buche vacío y nunca a la fuerza. Volver un paso atrás no es un fracaso: la toma puede quitarse más adelante.",
        )
    }

    /// How a feed is dropped.
    pub const fn weaning_drop_text(self) -> &'static str {
        self.pick(
            "Keep solids and water within reach all day, and weigh every morning. You may also wait: there is no hurry.",
            "Deje sólidos y agua al alcance todo el día y pese cada mañana. También puede esperar: no hay prisa.",
        )
    }

    /// What to look for in a chick that gets no formula any more, which nothing here measures.
    pub const fn weaned_look_for(self, stage: &Stage) -> Option<&'static str> {
        match stage {
            Stage::NoFormula { .. } | Stage::AfterWeaning { .. } | Stage::Done { .. } => Some(self.pick(
                "Look also for a crop full of solids at bedtime, and for drinking. Perchlight cannot see either: note the drinking under Solids.",
                "Compruebe también que a la noche el buche esté lleno de sólidos y que beba. Perchlight no puede ver ninguna de las dos cosas: anote que bebe en Sólidos.",
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
                .pick("Every feed is given.", "Se dan todas las tomas.")
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
                        "Not yet seen to drink: a chick counts as weaned once somebody saw it.",
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
                        "Weaned since {weaned}: 14 days without formula, a flat weight, and seen to drink. Weigh every morning until {until}."
                    ),
                    Language::Spanish => format!(
                        "Destetado desde el {weaned}: 14 días sin papilla, un peso parejo y se le ha visto beber. Pese cada mañana hasta el {until}."
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
                format!("Weight within {spread} of its middle over these days (limit {limit}).")
            }
            (Language::Spanish, Some(spread)) => {
                let spread = self.pct(spread);
                format!("Peso dentro del {spread} de su medio en estos días (límite {limit}).")
            }
            (Language::English, None) => {
                format!("Too few morning weights over these days to call it flat (limit {limit}).")
            }
            (Language::Spanish, None) => format!(
                "Pocos pesos de la mañana en estos días para llamarlo parejo (límite {limit})."
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
                format!("{age} old. {species}: no usual age is known here.")
            }
            (Language::Spanish, None) => {
                format!("Tiene {age}. {species}: aquí no consta una edad habitual.")
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

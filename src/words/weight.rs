//! What a weight means, in one sentence, and the names on its chart.

use crate::domain::homecoming::life_stage::LifeStage;
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::Role;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::Day;
use crate::domain::warnings::level::Level;
use crate::domain::weight::course::Course;
use crate::words::Language;
use crate::words::format::{MassUnit, Writing};

texts! {
    weight_more: "More", "Más";
    weight_more_hint: "how sure this is, range, forecast", "qué seguridad tiene, margen, pronóstico";
    weight_send: "Send chart", "Enviar gráfico";
    weight_sending: "Drawing the chart. Tap again in a moment.", "Dibujando el gráfico. Toque otra vez en un momento.";
    weight_earlier: "Weighing before", "Pesada anterior";
    weight_later: "Next weighing", "Pesada siguiente";
    weight_steps: "Weight chart. The arrow keys go from weighing to weighing.", "Gráfico de peso. Las flechas van de pesada en pesada.";
    weight_now_more: "Not the weight alone. See Now.", "No es solo por el peso. Vea «Ahora».";
    weight_now_other: "Not because of the weight. See Now.", "No es por el peso. Vea «Ahora».";
    weight_correct: "Correct", "Corregir";
    weight_right: "Right weight", "Peso correcto";
    weight_food_off: "after a feed, with the food taken off", "tras una toma, con la comida descontada";
    weight_doubted: "may be wrong: it does not fit the others", "dudosa: no encaja con las demás";
}

/// What a weight means.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WeightState {
    /// The weight.
    pub weight: String,
    /// Where it stands and which way it goes; empty before there is anything to compare.
    pub stands: String,
    /// Whether that is normal, and at which weight to call.
    pub means: String,
}

impl WeightState {
    /// All of it in one line.
    pub fn whole(&self) -> String {
        let stands = if self.stands.is_empty() {
            format!("{}.", self.weight)
        } else {
            format!("{}: {}", self.weight, self.stands)
        };
        format!("{stands} {}", self.means).trim_end().to_owned()
    }
}

/// The same with a large first letter, as a sentence begins.
fn first_large(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

impl Writing {
    /// What the last weight with an empty crop means; `None` before the first one.
    pub fn weight_state(self, outlook: &Outlook) -> Option<WeightState> {
        let latest = outlook.weight.latest.as_ref()?;
        let weight = latest.what.weight;
        let day = latest.lived().day;
        let is_today = day == outlook.lived.day;
        let slope = outlook.weight.trend.slope.as_ref();
        let course = slope.map(|slope| Course::of(slope, outlook.weight.one_day_loss_pct));
        let course = course.map(|course| self.course(course, is_today));
        let said = [self.stands(weight, outlook), course];
        let said: Vec<String> = said.into_iter().flatten().collect();
        let mut stands = said.join(", ");
        if !stands.is_empty() {
            stands.push('.');
        }
        let mut told = self.mass(weight);
        if !is_today {
            told = format!("{}, {told}", self.day(day));
        }
        // Where the level is higher, that says whom to call.
        let own = outlook.weight_level();
        let own = own.filter(|level| !level.is_call() || *level == outlook.level);
        let meaning = own.map(|level| self.level_meaning(level, outlook.stage));
        let call = outlook
            .weight
            .call_at
            .map(|limit| self.call_below(limit, weight, outlook));
        let means = [meaning, call].into_iter().flatten();
        Some(WeightState {
            weight: told,
            stands: first_large(&stands),
            means: means.collect::<Vec<_>>().join(" "),
        })
    }

    /// "12 g (1.2 %) below handover".
    fn stands(self, weight: Grams, outlook: &Outlook) -> Option<String> {
        let loss_pct = outlook.weight.handover_loss_pct?;
        let reference = outlook.chick.plan.reference?;
        let apart = weight.tenths() - reference.weight.tenths();
        let grams = self.mass(Grams::tenths_held(apart.saturating_abs()));
        let pct = self.pct(loss_pct.abs());
        Some(match (self.language, apart.signum()) {
            (Language::English, 0) => "the same as at handover".to_owned(),
            (Language::English, ..0) => format!("{grams} ({pct}) below handover"),
            (Language::English, _) => format!("{grams} ({pct}) above handover"),
            (Language::Spanish, 0) => "lo mismo que en la entrega".to_owned(),
            (Language::Spanish, ..0) => format!("{grams} ({pct}) menos que en la entrega"),
            (Language::Spanish, _) => format!("{grams} ({pct}) más que en la entrega"),
        })
    }

    fn course(self, course: Course, is_today: bool) -> String {
        let say = self.language;
        let grams = |grams: f64| self.mass(self.rounded_mass(grams));
        match (say, course) {
            (_, Course::Steady) => say.pick("steady", "estable").to_owned(),
            (_, Course::SteadyUntilToday) if is_today => say
                .pick("steady until today", "estable hasta hoy")
                .to_owned(),
            (_, Course::SteadyUntilToday) => say
                .pick(
                    "steady until the last weighing",
                    "estable hasta la última pesada",
                )
                .to_owned(),
            (Language::English, Course::Gaining(gain)) => {
                format!("gaining {} a day", grams(gain))
            }
            (Language::English, Course::Losing(loss)) => format!("losing {} a day", grams(loss)),
            (Language::Spanish, Course::Gaining(gain)) => {
                format!("gana {} al día", grams(gain))
            }
            (Language::Spanish, Course::Losing(loss)) => format!("pierde {} al día", grams(loss)),
        }
    }

    /// Whole grams; ounces keep their tenth.
    fn rounded_mass(self, grams: f64) -> Grams {
        match self.mass {
            MassUnit::Gram => Grams::tenths_held(rounded(grams).saturating_mul(10)),
            MassUnit::Ounce => Grams::tenths_held(rounded(grams * 10.0)),
        }
    }

    fn level_meaning(self, level: Level, stage: LifeStage) -> String {
        let say = self.language;
        if level != Level::Settled {
            return format!("{}.", say.level(level));
        }
        let normal = match stage {
            LifeStage::Weaning => say.pick("Normal while weaning.", "Normal durante el destete."),
            LifeStage::SettlingIn => {
                say.pick("Normal while settling in.", "Normal durante la adaptación.")
            }
            LifeStage::WithBreeder
            | LifeStage::OnTheWay
            | LifeStage::Weaned
            | LifeStage::Grown
            | LifeStage::Died => say.pick("Normal.", "Normal."),
        };
        normal.to_owned()
    }

    fn call_below(self, limit: Grams, weight: Grams, outlook: &Outlook) -> String {
        let contacts = &outlook.chick.plan.contacts;
        let breeder = contacts.iter().find(|one| one.role == Role::Breeder);
        let name = breeder.map(|one| one.name.as_str());
        let name = name.filter(|name| !name.is_empty());
        let limit = self.mass(self.rounded_mass(limit.as_g()));
        let is_past = weight.as_g() <= outlook.weight.call_at.map_or(0.0, Grams::as_g);
        match (self.language, is_past) {
            (Language::English, true) => format!("The weight to call at is {limit}."),
            (Language::Spanish, true) => format!("El peso para llamar es {limit}."),
            (Language::English, false) => {
                format!("Call {} at {limit}.", name.unwrap_or("the breeder"))
            }
            (Language::Spanish, false) => {
                format!(
                    "Llame a {} si baja a {limit}.",
                    name.unwrap_or("su criador")
                )
            }
        }
    }

    /// Names the handover weight on the chart.
    pub fn handover_name(self, grams: f64) -> String {
        let weight = self.mass(self.rounded_mass(grams));
        match self.language {
            Language::English => format!("handover {weight}"),
            Language::Spanish => format!("entrega {weight}"),
        }
    }

    /// Names the weight to call at on the chart.
    pub fn call_name(self, grams: f64) -> String {
        let weight = self.mass(self.rounded_mass(grams));
        match self.language {
            Language::English => format!("call at {weight}"),
            Language::Spanish => format!("llamar: {weight}"),
        }
    }

    /// A change of weight with its sign: `−12 g`, `+2 g`, `0 g`.
    pub fn mass_change(self, grams: f64) -> String {
        let size = Grams::tenths_held(rounded(grams.abs() * 10.0));
        let sign = match size.tenths() {
            0 => "",
            _ if grams < 0.0 => "\u{2212}",
            _ => "+",
        };
        format!("{sign}{}", self.mass(size))
    }

    /// A change in per cent with its sign: `−1.2 %`.
    pub fn pct_change(self, pct: f64) -> String {
        let sign = if rounded(pct * 10.0) > 0 { "+" } else { "" };
        format!("{sign}{}", self.pct(pct))
    }

    /// A change since the weighing before, in the line above the chart.
    pub fn change_since(self, pct: f64, before: Day) -> String {
        let (pct, before) = (self.pct_change(pct), self.day_and_month(before));
        match self.language {
            Language::English => format!("{pct} since {before}"),
            Language::Spanish => format!("{pct} desde el {before}"),
        }
    }

    /// A feed dropped, below the chart.
    pub fn feed_dropped_on(self, feed: &str, day: Day) -> String {
        let day = self.day_and_month(day);
        match self.language {
            Language::English => format!("{day}: {feed} dropped"),
            Language::Spanish => format!("{day}: {feed}, quitada"),
        }
    }

    /// How many weighings there are.
    pub fn all_weighings(self, count: usize) -> String {
        match self.language {
            Language::English => format!("All {count} weighings"),
            Language::Spanish => format!("Las {count} pesadas"),
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::words::Language;
    use crate::words::format::*;

    #[test]
    fn a_change_has_its_sign_and_no_change_has_none() {
        let english = Writing::metric(Language::English);
        let said = [-12.0, 2.0, 0.04, -0.04].map(|grams| {
            let said = english.mass_change(grams);
            said.replace('\u{a0}', " ")
        });
        assert_eq!(said, ["\u{2212}12 g", "+2 g", "0 g", "0 g"]);
        let said = [-1.23, 0.2, 0.01].map(|pct| {
            let said = english.pct_change(pct);
            said.replace('\u{a0}', " ")
        });
        assert_eq!(said, ["\u{2212}1.2 %", "+0.2 %", "0.0 %"]);
    }
}

//! The page "Where the numbers come from": every rule of the ladder with its limits, every number of the
//! guide and of a new plan, each with its standing and source.
//!
//! **Invariants.** No number stands in a text here: each is the constant that decides, put in its place.

pub mod numbers;
pub mod rules;

use crate::domain::journal::entries::Droppings;
use crate::domain::journal::signs::Sign;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::{RuleId, Value};
use crate::domain::warnings::rules::{RULES, Rule, rule};
use crate::words::Language;
use crate::words::format::Writing;
use crate::words::manual::numbers::{Group, Number};
use crate::words::manual::rules::{RuleText, rule_text};
use crate::words::sources::source;

/// One rule id of each rule, in the order of [`RULES`].
pub const EACH_RULE: [RuleId; RULES.len()] = [
    RuleId::HandoverLoss,
    RuleId::PeakLoss,
    RuleId::FallingWeight,
    RuleId::ArrivalLoss,
    RuleId::OneDayLoss,
    RuleId::DullLoss,
    RuleId::StableLoss,
    RuleId::GrowthStalled,
    RuleId::NoWeighing,
    RuleId::MissedFeeds,
    RuleId::RefusedFeeds,
    RuleId::DayIntake,
    RuleId::NoFoodNoted,
    RuleId::TransitGap,
    RuleId::GapTooShort,
    RuleId::VolumeOverCeiling,
    RuleId::ServedHot,
    RuleId::ServedCold,
    RuleId::CropSlow,
    RuleId::CropLate,
    RuleId::CropOvernight,
    RuleId::CropStatic,
    RuleId::DroppingsSeen(Droppings::Normal),
    RuleId::FewDroppings,
    RuleId::SignSeen(Sign::Dull),
    RuleId::RoomTemperature,
    RuleId::VetVisitDue,
];

/// The place of a rule in [`EACH_RULE`], which is the place of its row.
pub fn place_of(id: RuleId) -> Option<u8> {
    let same = |other: &RuleId| rule(*other).name == rule(id).name;
    let place = EACH_RULE.iter().position(same)?;
    u8::try_from(place).ok()
}

/// A row of the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// The rule's name, as in an address; empty for a row that is no rule.
    pub id: &'static str,
    /// What it is called; empty where the sentence says it.
    pub name: &'static str,
    /// The numbers in a sentence.
    pub sentence: String,
    /// How well founded they are, and where they come from.
    pub standing: String,
    /// When it is wrong; empty where nothing is judged.
    pub wrong_when: &'static str,
}

/// A part of the page: a heading and its rows.
pub type Part = (&'static str, Vec<Row>);

impl Writing {
    /// The whole page.
    pub fn manual(self) -> Vec<Part> {
        let rules = EACH_RULE.into_iter().map(|id| self.rule_row(id)).collect();
        let groups = numbers::groups().into_iter().map(|group| {
            let Group { heading, numbers } = group;
            let rows = numbers.iter().map(|number| self.number_row(number));
            (picked(self.language, heading), rows.collect())
        });
        let first = (self.language.manual_rules(), rules);
        std::iter::once(first).chain(groups).collect()
    }

    /// The row of a rule.
    pub fn rule_row(self, id: RuleId) -> Row {
        let Rule {
            name,
            standing,
            limits,
            ..
        } = *rule(id);
        let text: RuleText = rule_text(self.language, id);
        let values = limits.iter().map(|limit| limit.at);
        let values: Vec<Value> = values.filter(|value| *value != Value::Seen).collect();
        Row {
            id: name,
            name: text.name,
            sentence: self.filled(text.limits, &values),
            standing: self.founded(standing, source(self.language, id)),
            wrong_when: text.wrong_when,
        }
    }

    fn number_row(self, number: &Number) -> Row {
        let sentence = picked(self.language, number.sentence);
        Row {
            id: "",
            name: "",
            sentence: self.filled(sentence, &number.values),
            standing: self.founded(number.standing, picked(self.language, number.source)),
            wrong_when: "",
        }
    }

    fn founded(self, standing: Standing, source: &str) -> String {
        format!("{}: {source}.", capital(self.language.standing(standing)))
    }

    /// A sentence with its numbers.
    fn filled(self, sentence: &str, values: &[Value]) -> String {
        let numbered = values.iter().enumerate();
        numbered.fold(sentence.to_owned(), |sentence, (place, value)| {
            sentence.replace(&format!("{{{place}}}"), &self.limit(*value))
        })
    }

    /// A limit with its unit; several whole days as days.
    fn limit(self, value: Value) -> String {
        const DAY: i64 = 24 * 60;
        match value {
            Value::Pct(pct) => format!("{}\u{a0}%", self.trimmed(pct)),
            Value::Grams(mass) => self.mass(mass),
            Value::Ml(volume) => self.volume(volume),
            Value::Celsius(temperature) => self.temperature(temperature),
            Value::Minutes(minutes) if minutes % DAY == 0 && minutes > DAY => {
                self.days_of(minutes / DAY)
            }
            Value::Minutes(minutes) => self.minutes(minutes),
            Value::Count(count) => count.to_string(),
            Value::Times(times) => format!("{}\u{a0}×", self.trimmed(times)),
            Value::Seen => String::new(),
        }
    }

    /// A number from zero up with as many decimals as it has, at most two.
    fn trimmed(self, value: f64) -> String {
        let hundredths = rounded(value * 100.0);
        let decimals = format!("{:02}", hundredths % 100);
        let (whole, decimals) = (hundredths / 100, decimals.trim_end_matches('0'));
        if decimals.is_empty() {
            whole.to_string()
        } else {
            format!("{whole}{}{decimals}", self.decimal_sign())
        }
    }
}

const fn picked(language: Language, [english, spanish]: [&'static str; 2]) -> &'static str {
    language.pick(english, spanish)
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|first| first.to_uppercase().to_string());
    first.unwrap_or_default() + letters.as_str()
}

texts! {
    manual_title: "Where the numbers come from", "De dónde salen los números";
    manual_rules: "Rules of the warnings", "Reglas de los avisos";
    manual_wrong: "It can be wrong when:", "Puede fallar cuando:";
    manual_lead: "Every limit, and how sure it is. \u{201c}Our own\u{201d} means chosen on the safe side and not tested on birds. Your breeder and avian vet decide.", "Cada límite y cuánto se sabe de él. «Valor propio»: elegido del lado seguro y sin probar en aves. Deciden el criador y el veterinario de aves.";
    manual_signs: "Signs and their level", "Las señales y su nivel";
    manual_print: "Print this page", "Imprimir esta página";
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use crate::domain::warnings::level::Level;
    use crate::words::manual::*;

    #[test]
    fn each_rule_has_its_row_in_the_order_of_the_ladder() {
        let names: Vec<&str> = EACH_RULE.iter().map(|id| rule(*id).name).collect();
        let ladder: Vec<&str> = RULES.iter().map(|rule| rule.name).collect();
        assert_eq!(names, ladder);
    }

    /// The places of a sentence in the order in which they stand, and the text between them.
    fn places(sentence: &str) -> (Vec<usize>, String) {
        let mut parts = sentence.split('{');
        let mut text = parts.next().unwrap_or_default().to_owned();
        let mut places = Vec::new();
        for part in parts {
            let (place, rest) = part.split_once('}').expect("a place is closed");
            places.push(place.parse().expect("a place is a number"));
            text.push_str(rest);
        }
        (places, text)
    }

    fn holds_each_number(sentence: &str, values: &[Value]) {
        let (places, text) = places(sentence);
        let all: Vec<usize> = (0..values.len()).collect();
        assert_eq!(places, all, "{sentence}");
        // Volumes named only to say what a number is per are no limits.
        let text = text.replace("100 ml", "");
        assert!(
            !text.contains(|letter: char| letter.is_ascii_digit()),
            "{sentence}"
        );
    }

    #[test]
    fn a_sentence_has_a_place_for_each_limit_in_order_and_no_number_of_its_own() {
        for language in Language::ALL {
            for id in EACH_RULE {
                let values = rule(id).limits.iter().map(|limit| limit.at);
                let values: Vec<Value> = values.filter(|at| *at != Value::Seen).collect();
                holds_each_number(rule_text(language, id).limits, &values);
            }
            for number in numbers::groups().iter().flat_map(|group| &group.numbers) {
                holds_each_number(picked(language, number.sentence), &number.values);
            }
        }
    }

    #[test]
    fn the_levels_that_a_sentence_names_are_those_of_the_rule() {
        for language in Language::ALL {
            for id in EACH_RULE {
                let sentence = rule_text(language, id).limits.to_lowercase();
                let names = |level: &Level| {
                    sentence.contains(language.level(*level).to_lowercase().as_str())
                };
                let said: BTreeSet<Level> = Level::ALL.into_iter().filter(names).collect();
                let limits = rule(id).limits.iter();
                let used: BTreeSet<Level> = limits.map(|limit| limit.level).collect();
                assert_eq!(said, used, "{sentence}");
            }
        }
    }

    #[test]
    fn numbers_are_written_as_each_language_writes_them() {
        let row = |language, id| Writing::metric(language).rule_row(id).sentence;
        // 0.9 times, and 9 % of the default limit of 10 %
        let english = row(Language::English, RuleId::HandoverLoss);
        assert!(
            english.starts_with("Watch at 0.9\u{a0}× the plan's limit (9\u{a0}%)"),
            "{english}"
        );
        let spanish = row(Language::Spanish, RuleId::CropSlow);
        assert!(spanish.contains("1,25\u{a0}×"), "{spanish}");
        // 72 h are three days
        let days = row(Language::English, RuleId::NoWeighing);
        assert!(
            days.contains("after 36\u{a0}h, call the breeder after 3 days"),
            "{days}"
        );
    }
}

//! One line for each finding, with its number and limit, and whom to ring.

use crate::domain::journal::entries::Droppings;
use crate::domain::quantity::count::rounded;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::day_intake::HOLDING_PCT;
use crate::words::Language;
use crate::words::format::Writing;

/// A finding in one line: "Weight 10.4 % below handover (limit 10.0 %)".
pub fn finding_title(writing: Writing, finding: &Finding) -> String {
    if let RuleId::SignSeen(sign) = finding.rule {
        return crate::words::signs::sign(writing.language, sign)
            .seen
            .to_owned();
    }
    title_pattern(writing.language, finding)
        .replace("{value}", &amount(writing, finding.value))
        .replace("{limit}", &amount(writing, finding.limit))
}

/// Whom to ring, in one sentence, said before anything else that is to be done.
pub const fn call_first(language: Language, level: Level) -> &'static str {
    match level {
        Level::Settled => language.pick("Nothing stands out.", "Nada llama la atención."),
        Level::Watch => language.pick(
            "No call needed for this alone; ring if you are unsure.",
            "Por esto solo no hace falta llamar; llame si tiene dudas.",
        ),
        Level::RingBreeder => language.pick("Ring the breeder today.", "Llame hoy al criador."),
        Level::VetToday => language.pick(
            "Ring an avian vet and be seen today.",
            "Llame a un veterinario de aves y vaya hoy.",
        ),
        Level::Emergency => language.pick(
            "Ring an avian vet now and set off.",
            "Llame ahora a un veterinario de aves y salga.",
        ),
    }
}

/// A value or limit with its unit; a ratio as a whole per cent, something seen as nothing.
fn amount(writing: Writing, value: Value) -> String {
    match value {
        Value::Pct(pct) => writing.pct(pct),
        Value::Grams(mass) => writing.mass(mass),
        Value::Ml(volume) => writing.volume(volume),
        Value::Celsius(temperature) => writing.temperature(temperature),
        Value::Minutes(minutes) => writing.minutes(minutes),
        Value::Count(count) => count.to_string(),
        Value::Times(times) => format!("{}\u{a0}%", rounded(times * 100.0)),
        Value::Seen => String::new(),
    }
}

const fn is_one(value: Value) -> bool {
    matches!(value, Value::Count(1))
}

fn is_of_weight(limit: Value) -> bool {
    limit == Value::Pct(HOLDING_PCT)
}

const fn is_time(value: Value) -> bool {
    matches!(value, Value::Minutes(_))
}

#[expect(clippy::too_many_lines, reason = "a table of one row a rule")]
fn title_pattern(language: Language, finding: &Finding) -> &'static str {
    match finding.rule {
        RuleId::HandoverLoss => language.pick(
            "Weight {value} below handover (limit {limit})",
            "Peso {value} por debajo del de entrega (límite {limit})",
        ),
        RuleId::StableLoss => language.pick(
            "Weight {value} below its usual level (limit {limit})",
            "Peso {value} por debajo de su nivel habitual (límite {limit})",
        ),
        RuleId::PeakLoss => language.pick(
            "Weight {value} below its peak (limit {limit})",
            "Peso {value} por debajo de su máximo (límite {limit})",
        ),
        RuleId::FallingWeight => language.pick(
            "Losing {value} a day (limit {limit})",
            "Pierde {value} al día (límite {limit})",
        ),
        RuleId::ArrivalLoss => language.pick(
            "Weight {value} below handover on the first day (limit {limit})",
            "Peso {value} por debajo del de entrega el primer día (límite {limit})",
        ),
        RuleId::OneDayLoss => language.pick(
            "{value} lost in one day (limit {limit})",
            "Perdió {value} en un día (límite {limit})",
        ),
        RuleId::DullLoss => language.pick(
            "Dull, and {value} lighter (limit: any loss)",
            "Decaído y {value} más ligero (límite: cualquier pérdida)",
        ),
        RuleId::GrowthStalled if is_one(finding.value) => language.pick(
            "No gain for 1 day (limit {limit})",
            "Sin ganar peso 1 día (límite {limit})",
        ),
        RuleId::GrowthStalled => language.pick(
            "No gain for {value} days (limit {limit})",
            "Sin ganar peso {value} días (límite {limit})",
        ),
        RuleId::NoWeighing => language.pick(
            "Not weighed for {value} (limit {limit})",
            "Sin pesar desde hace {value} (límite {limit})",
        ),
        RuleId::MissedFeeds | RuleId::RefusedFeeds if is_time(finding.value) => language.pick(
            "No food for {value} (limit {limit})",
            "Sin comer desde hace {value} (límite {limit})",
        ),
        RuleId::MissedFeeds if is_one(finding.value) => language.pick(
            "1 feed not given (limit {limit})",
            "1 toma sin dar (límite {limit})",
        ),
        RuleId::MissedFeeds => language.pick(
            "{value} feeds in a row not given (limit {limit})",
            "{value} tomas seguidas sin dar (límite {limit})",
        ),
        RuleId::DayIntake if is_of_weight(finding.limit) => language.pick(
            "Two days of food below {limit} of its weight, no solids noted: {value}",
            "Dos días de comida por debajo del {limit} de su peso, sin sólidos anotados: {value}",
        ),
        RuleId::DayIntake => language.pick(
            "Took {value} of the day's food (limit {limit})",
            "Tomó el {value} de la comida del día (límite {limit})",
        ),
        RuleId::NoFoodNoted => language.pick(
            "Has it eaten? No food noted for {value} (limit {limit})",
            "¿Ha comido? Sin comida anotada desde hace {value} (límite {limit})",
        ),
        RuleId::RefusedFeeds if is_one(finding.value) => language.pick(
            "1 feed refused (limit {limit})",
            "Rechazó 1 toma (límite {limit})",
        ),
        RuleId::RefusedFeeds => language.pick(
            "{value} feeds in a row refused (limit {limit})",
            "Rechazó {value} tomas seguidas (límite {limit})",
        ),
        RuleId::TransitGap => language.pick(
            "{value} since the last feed before the journey (limit {limit})",
            "{value} desde la última toma antes del viaje (límite {limit})",
        ),
        RuleId::GapTooShort => language.pick(
            "Only {value} between two feeds (limit {limit})",
            "Solo {value} entre dos tomas (límite {limit})",
        ),
        RuleId::VolumeOverCeiling => language.pick(
            "{value} in one feed (limit {limit})",
            "{value} en una toma (límite {limit})",
        ),
        RuleId::ServedHot => language.pick(
            "Formula served too hot: {value} (limit {limit})",
            "Papilla dada demasiado caliente: {value} (límite {limit})",
        ),
        RuleId::ServedCold => language.pick(
            "Formula served too cool: {value} (limit {limit})",
            "Papilla dada demasiado fría: {value} (límite {limit})",
        ),
        RuleId::CropSlow => language.pick(
            "Food in the crop at {value} of its usual time (limit {limit})",
            "Comida en el buche al {value} de su tiempo habitual (límite {limit})",
        ),
        RuleId::CropLate => language.pick(
            "By day, food in the crop {value} after the last feed (limit {limit})",
            "De día, comida en el buche {value} después de la última toma (límite {limit})",
        ),
        RuleId::CropOvernight => language.pick(
            "After the night, food in the crop {value} after the last feed (limit {limit})",
            "Después de la noche, comida en el buche {value} después de la última toma (límite {limit})",
        ),
        RuleId::CropStatic => language.pick(
            "Crop standing still, with a bad sign",
            "Buche parado, con una mala señal",
        ),
        RuleId::DroppingsSeen(look) => droppings_pattern(language, look, finding.value),
        RuleId::SignSeen(_) => "",
        RuleId::RoomTemperature => language.pick(
            "Room at {value} (limit {limit})",
            "Habitación a {value} (límite {limit})",
        ),
        RuleId::VetVisitDue => language.pick(
            "No vet noted {value} after the arrival (limit {limit})",
            "Sin veterinario anotado {value} después de la llegada (límite {limit})",
        ),
    }
}

const fn droppings_pattern(language: Language, look: Droppings, value: Value) -> &'static str {
    let is_first = matches!(value, Value::Minutes(0));
    match look {
        Droppings::Normal => language.pick("Droppings as usual", "Excrementos como siempre"),
        Droppings::SmallOrFew if is_first => language.pick(
            "Droppings small, dark or few (limit {limit})",
            "Excrementos pequeños, oscuros o pocos (límite {limit})",
        ),
        Droppings::SmallOrFew => language.pick(
            "Droppings small, dark or few for {value} (limit {limit})",
            "Excrementos pequeños, oscuros o pocos desde hace {value} (límite {limit})",
        ),
        Droppings::Watery if is_first => language.pick(
            "Droppings watery (limit {limit})",
            "Excrementos aguados (límite {limit})",
        ),
        Droppings::Watery => language.pick(
            "Droppings watery for {value} (limit {limit})",
            "Excrementos aguados desde hace {value} (límite {limit})",
        ),
        Droppings::GreenOrBlack if is_first => language.pick(
            "Droppings green or black (limit {limit})",
            "Excrementos verdes o negros (límite {limit})",
        ),
        Droppings::GreenOrBlack => language.pick(
            "Droppings green or black for {value} (limit {limit})",
            "Excrementos verdes o negros desde hace {value} (límite {limit})",
        ),
        Droppings::Undigested if is_one(value) => language.pick(
            "Undigested food in the droppings on 1 day (limit {limit})",
            "Comida sin digerir en los excrementos 1 día (límite {limit})",
        ),
        Droppings::Undigested => language.pick(
            "Undigested food in the droppings on {value} days (limit {limit})",
            "Comida sin digerir en los excrementos {value} días (límite {limit})",
        ),
        Droppings::Bloody => language.pick("Blood in the droppings", "Sangre en los excrementos"),
        Droppings::EmeraldGreen => language.pick(
            "Droppings emerald green, little stool",
            "Excrementos verde esmeralda, con poca materia",
        ),
        Droppings::TarBlack => language.pick(
            "Droppings black-green and sticky, like tar",
            "Excrementos negro verdoso y pegajosos, como alquitrán",
        ),
        Droppings::LimeUrates => language.pick(
            "The white part of the droppings is yellow-green",
            "La parte blanca de los excrementos es amarillo verdosa",
        ),
        Droppings::WetAfterFruit => language.pick(
            "Droppings wet after fruit or a fright",
            "Excrementos muy húmedos tras fruta o un susto",
        ),
        Droppings::RedAfterFood => language.pick(
            "Droppings red after red food",
            "Excrementos rojos tras comida roja",
        ),
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::signs::Sign;
    use crate::domain::quantity::evidence::Standing;
    use crate::domain::quantity::units::{Celsius, Millilitres};
    use crate::domain::warnings::rules::trial;
    use crate::words::rules::*;
    use crate::words::sources::source_line;

    fn title(rule: RuleId, value: Value, limit: Value) -> String {
        let finding = Finding {
            rule,
            level: Level::RingBreeder,
            value,
            limit,
            standing: Standing::Ours,
        };
        finding_title(Writing::metric(Language::English), &finding).replace('\u{a0}', " ")
    }

    #[test]
    fn a_title_carries_its_number_and_its_limit() {
        let title = title;
        assert_eq!(
            title(RuleId::HandoverLoss, Value::Pct(10.4), Value::Pct(10.0)),
            "Weight 10.4 % below handover (limit 10.0 %)"
        );
        assert_eq!(
            title(RuleId::MissedFeeds, Value::Count(1), Value::Count(1)),
            "1 feed not given (limit 1)"
        );
        assert_eq!(
            title(
                RuleId::RefusedFeeds,
                Value::Minutes(1_500),
                Value::Minutes(1_440)
            ),
            "No food for 25 h (limit 24 h)"
        );
        assert_eq!(
            title(RuleId::CropSlow, Value::Times(1.302), Value::Times(1.25)),
            "Food in the crop at 130 % of its usual time (limit 125 %)"
        );
        let (hot, burn) = (Celsius::tenths_held(441), Celsius::tenths_held(433));
        assert_eq!(
            title(RuleId::ServedHot, Value::Celsius(hot), Value::Celsius(burn)),
            "Formula served too hot: 44.1 °C (limit 43.3 °C)"
        );
        let (given, most) = (Millilitres::whole(121), Millilitres::whole(120));
        assert_eq!(
            title(RuleId::VolumeOverCeiling, Value::Ml(given), Value::Ml(most)),
            "121 ml in one feed (limit 120 ml)"
        );
        assert_eq!(
            title(RuleId::SignSeen(Sign::Dull), Value::Seen, Value::Seen),
            "Fluffed and dull; voice or food does not rouse it (not a nap)"
        );
    }

    #[test]
    fn every_finding_of_a_bad_day_has_a_filled_title_and_a_source_in_each_language() {
        let mut script = trial::macaw();
        script.weigh(1, 1_000).weigh(2, 1_000).weigh(3, 1_000);
        script.note(4, 7, 0, trial::served(440)).weigh(4, 780);
        script.note(4, 8, 0, trial::served(370));
        for (minute, look) in Droppings::ALL.into_iter().enumerate() {
            let minute = i32::try_from(minute).unwrap();
            script.note(4, 9, minute, trial::droppings(look));
        }
        for sign in Sign::ALL {
            script.note(4, 10, 0, trial::sign(sign));
        }
        let (level, findings) = trial::ladder(&script, script.at(4, 11, 0));
        assert_eq!(level, Level::Emergency);
        assert!(findings.len() > Sign::ALL.len() + 5, "{findings:?}");
        for language in Language::ALL {
            for finding in &findings {
                let title = finding_title(Writing::metric(language), finding);
                assert!(!title.is_empty() && !title.contains(['{', '}']), "{title}");
                let source = source_line(language, finding);
                assert!(
                    source.contains(language.standing(finding.standing)),
                    "{source}"
                );
            }
        }
    }

    #[test]
    fn each_level_of_call_names_whom_to_ring() {
        assert!(call_first(Language::English, Level::RingBreeder).contains("breeder"));
        assert!(call_first(Language::English, Level::VetToday).contains("avian vet"));
        assert!(call_first(Language::English, Level::Emergency).contains("now"));
        for level in Level::ALL {
            let (first, second) = (Language::English, Language::Spanish);
            assert_ne!(call_first(first, level), call_first(second, level));
        }
    }
}

//! One line for each finding, with its number and limit, and whom to call.

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
    let pattern = title_pattern(writing.language, finding);
    // A limit of one feed or one day says nothing beside the number itself.
    let pattern = match finding.limit {
        Value::Count(_) => without_limit(pattern),
        Value::Pct(_)
        | Value::Grams(_)
        | Value::Ml(_)
        | Value::Celsius(_)
        | Value::Minutes(_)
        | Value::Times(_)
        | Value::Seen => pattern.to_owned(),
    };
    pattern
        .replace("{value}", &amount(writing, finding.value))
        .replace("{limit}", &amount(writing, finding.limit))
}

fn without_limit(pattern: &str) -> String {
    let Some((before, after)) = pattern.split_once("{limit})") else {
        return pattern.to_owned();
    };
    let before = before.rsplit_once(" (").map_or(before, |(kept, _)| kept);
    format!("{before}{after}")
}

/// From here on a stretch of time is told in days, minutes: two days.
const IN_DAYS_MINUTES: i64 = 2 * 24 * 60;

/// Whom to call, in one sentence, said before anything else that is to be done.
pub const fn call_first(language: Language, level: Level) -> &'static str {
    match level {
        Level::Settled => language.pick("No call needed.", "No hace falta llamar."),
        Level::Watch => language.pick(
            "No call needed for this alone. Not sure? Call.",
            "Por esto solo no hace falta llamar. ¿Tiene dudas? Llame.",
        ),
        Level::CallBreeder => language.pick("Call the breeder. Warm, bright, eating, and its crop empties? In their hours. If not, call now, even if it is late. No answer in 30 minutes? Call the vet.", "Llame al criador. ¿Está tibio, activo, come y el buche se le vacía? En su horario. Si no, llame ya, aunque sea tarde. ¿No contesta en 30 minutos? Llame al veterinario."),
        Level::VetToday => language.pick(
            "Call your vet now: this cannot wait until tomorrow. Closed? Call the out-of-hours vet. Ask: do you treat parrots?",
            "Llame ya al veterinario: esto no puede esperar a mañana. ¿Está cerrado? Llame a urgencias (guardia). Pregunte si tratan loros.",
        ),
        Level::Emergency => language.pick(
            "Call the vet now and set off. Closed? Call the out-of-hours vet.",
            "Llame ya al veterinario y póngase en camino. ¿Está cerrado? Llame a urgencias (guardia).",
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
        Value::Minutes(minutes) if minutes >= IN_DAYS_MINUTES => {
            writing.days_of(minutes / (24 * 60))
        }
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
            "Pesa un {value} menos que en la entrega (límite {limit})",
        ),
        RuleId::StableLoss => language.pick(
            "Weight {value} below its usual (limit {limit})",
            "Pesa un {value} menos que de costumbre (límite {limit})",
        ),
        RuleId::PeakLoss => language.pick(
            "Weight {value} below its highest (limit {limit})",
            "Pesa un {value} menos que su máximo (límite {limit})",
        ),
        RuleId::FallingWeight => language.pick(
            "Loses {value} a day (limit {limit})",
            "Pierde un {value} al día (límite {limit})",
        ),
        RuleId::ArrivalLoss => language.pick(
            "Weight {value} below handover on the first day (limit {limit})",
            "El primer día pesa un {value} menos que en la entrega (límite {limit})",
        ),
        RuleId::OneDayLoss => language.pick(
            "Lost {value} in one day (limit {limit})",
            "Perdió un {value} en un día (límite {limit})",
        ),
        RuleId::DullLoss => language.pick(
            "Dull, and {value} lighter (limit: any loss)",
            "Decaído y con un {value} menos de peso (límite: cualquier pérdida)",
        ),
        RuleId::GrowthStalled if is_one(finding.value) => language.pick(
            "No gain for 1 day (limit {limit})",
            "Lleva 1 día sin ganar peso (límite {limit})",
        ),
        RuleId::GrowthStalled => language.pick(
            "No gain for {value} days (limit {limit})",
            "Lleva {value} días sin ganar peso (límite {limit})",
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
            "In two days it took food of only {value} of its weight a day (limit {limit}), no solids noted",
            "En dos días tomó comida por solo el {value} de su peso al día (límite {limit}), sin sólidos anotados",
        ),
        RuleId::DayIntake => language.pick(
            "Took only {value} of the day's food (limit {limit})",
            "Tomó solo el {value} de la comida del día (límite {limit})",
        ),
        RuleId::NoFoodNoted => language.pick(
            "Has it eaten? No food noted for {value} (limit {limit})",
            "¿Ha comido? Sin comida anotada desde hace {value} (límite {limit})",
        ),
        RuleId::RefusedFeeds if is_one(finding.value) => language.pick(
            "1 feed refused (limit {limit})",
            "No quiso 1 toma (límite {limit})",
        ),
        RuleId::RefusedFeeds => language.pick(
            "{value} feeds in a row refused (limit {limit})",
            "No quiso {value} tomas seguidas (límite {limit})",
        ),
        RuleId::TransitGap => language.pick(
            "{value} without food, since before the journey (limit {limit})",
            "{value} sin comer, desde antes del viaje (límite {limit})",
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
            "Formula given too hot: {value} (limit {limit})",
            "Papilla dada demasiado caliente: {value} (límite {limit})",
        ),
        RuleId::ServedCold => language.pick(
            "Formula given too cool: {value} (limit {limit})",
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
            "Crop does not empty, and there is a bad sign",
            "El buche no se vacía y hay otra señal grave",
        ),
        RuleId::DroppingsSeen(look) => droppings_pattern(language, look, finding.value),
        RuleId::FewDroppings if finding.value == Value::Seen => language.pick(
            "No dropping on the paper of the whole day",
            "Ninguna deposición en el papel de todo el día",
        ),
        RuleId::FewDroppings => language.pick(
            "Only {value} of its usual number of droppings in a day (limit {limit})",
            "Solo el {value} de sus heces habituales en un día (límite {limit})",
        ),
        RuleId::SignSeen(_) => "",
        RuleId::RoomTemperature => language.pick(
            "Room at {value} (limit {limit})",
            "Habitación a {value} (límite {limit})",
        ),
        RuleId::VetVisitDue => language.pick(
            "No vet visit noted {value} after the arrival (limit {limit})",
            "Sin visita al veterinario anotada {value} después de la llegada (límite {limit})",
        ),
    }
}

const fn droppings_pattern(language: Language, look: Droppings, value: Value) -> &'static str {
    let is_first = matches!(value, Value::Minutes(0));
    match look {
        Droppings::Normal => language.pick("Droppings as usual", "Heces como siempre"),
        Droppings::SmallOrFew if is_first => language.pick(
            "Droppings small, dark or few (limit {limit})",
            "Heces pequeñas, oscuras o pocas (límite {limit})",
        ),
        Droppings::SmallOrFew => language.pick(
            "Droppings small, dark or few for {value} (limit {limit})",
            "Heces pequeñas, oscuras o pocas desde hace {value} (límite {limit})",
        ),
        Droppings::Watery if is_first => language.pick(
            "Much water around the droppings (limit {limit})",
            "Mucha agua alrededor de las heces (límite {limit})",
        ),
        Droppings::Watery => language.pick(
            "Much water around the droppings for {value} (limit {limit})",
            "Mucha agua alrededor de las heces desde hace {value} (límite {limit})",
        ),
        Droppings::LiquidStool if is_first => language.pick(
            "Stool liquid, without form (limit {limit})",
            "Heces líquidas, sin forma (límite {limit})",
        ),
        Droppings::LiquidStool => language.pick(
            "Stool liquid, without form, for {value} (limit {limit})",
            "Heces líquidas, sin forma, desde hace {value} (límite {limit})",
        ),
        Droppings::GreenOrBlack if is_first => language.pick(
            "Droppings green or black (limit {limit})",
            "Heces verdes o negras (límite {limit})",
        ),
        Droppings::GreenOrBlack => language.pick(
            "Droppings green or black for {value} (limit {limit})",
            "Heces verdes o negras desde hace {value} (límite {limit})",
        ),
        Droppings::Undigested if is_one(value) => language.pick(
            "Undigested food in the droppings on 1 day (limit {limit})",
            "Comida sin digerir en las heces 1 día (límite {limit})",
        ),
        Droppings::Undigested => language.pick(
            "Undigested food in the droppings on {value} days (limit {limit})",
            "Comida sin digerir en las heces {value} días (límite {limit})",
        ),
        Droppings::Bloody => language.pick("Blood in the droppings", "Sangre en las heces"),
        Droppings::EmeraldGreen => language.pick(
            "Droppings emerald green, hardly any solid part",
            "Heces verde esmeralda, casi sin parte sólida",
        ),
        Droppings::TarBlack => language.pick(
            "Droppings black-green and sticky, like tar",
            "Heces negro verdosas y pegajosas, como alquitrán",
        ),
        Droppings::LimeUrates => language.pick(
            "The white part of the droppings is yellow-green",
            "La parte blanca de las heces es amarillo verdosa",
        ),
        Droppings::WetAfterFruit => language.pick(
            "Droppings wet after fruit or a fright",
            "Heces muy húmedas tras comer fruta o un susto",
        ),
        Droppings::RedAfterFood => language.pick(
            "Droppings red after red food",
            "Heces rojas tras comer algo rojo",
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
            level: Level::CallBreeder,
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
            "1 feed not given"
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
            title(RuleId::FewDroppings, Value::Times(0.4), Value::Times(0.5)),
            "Only 40 % of its usual number of droppings in a day (limit 50 %)"
        );
        assert_eq!(
            title(RuleId::FewDroppings, Value::Seen, Value::Seen),
            "No dropping on the paper of the whole day"
        );
        assert_eq!(
            title(RuleId::CropSlow, Value::Times(1.302), Value::Times(1.25)),
            "Food in the crop at 130 % of its usual time (limit 125 %)"
        );
        let (hot, burn) = (Celsius::tenths_held(441), Celsius::tenths_held(433));
        assert_eq!(
            title(RuleId::ServedHot, Value::Celsius(hot), Value::Celsius(burn)),
            "Formula given too hot: 44.1 °C (limit 43.3 °C)"
        );
        let (given, most) = (Millilitres::whole(121), Millilitres::whole(120));
        assert_eq!(
            title(RuleId::VolumeOverCeiling, Value::Ml(given), Value::Ml(most)),
            "121 ml in one feed (limit 120 ml)"
        );
        assert_eq!(
            title(RuleId::SignSeen(Sign::Dull), Value::Seen, Value::Seen),
            "Fluffed up and sleepy for over an hour, does not perk up for your voice or food (not a nap)"
        );
    }

    #[test]
    fn two_days_and_more_are_told_in_days() {
        let title = |minutes| {
            let finding = Finding {
                rule: RuleId::VetVisitDue,
                level: Level::Watch,
                value: Value::Minutes(minutes),
                limit: Value::Minutes(72 * 60),
                standing: Standing::Ours,
            };
            finding_title(Writing::metric(Language::English), &finding)
        };
        // 226 h 25 min are 9 days and 10 hours.
        assert_eq!(
            title(226 * 60 + 25),
            "No vet visit noted 9 days after the arrival (limit 3 days)"
        );
        assert!(title(47 * 60 + 59).contains("47\u{a0}h 59\u{a0}min"));
        assert!(title(48 * 60).contains("2 days after"));
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
    fn each_level_of_call_names_whom_to_call() {
        assert!(call_first(Language::English, Level::CallBreeder).contains("breeder"));
        assert!(call_first(Language::English, Level::VetToday).contains("treat parrots"));
        assert!(call_first(Language::English, Level::Emergency).contains("now"));
        for level in Level::ALL {
            let (first, second) = (Language::English, Language::Spanish);
            assert_ne!(call_first(first, level), call_first(second, level));
        }
    }
}

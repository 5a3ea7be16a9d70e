//! The numbers of the feed guide, of the first days and of weaning, and what a new plan begins with, for
//! the page "Where the numbers come from". Each number is the constant that the app uses.

use crate::domain::feeding::planned::{DAY_GAP_MINUTES, NIGHT_GAP_MINUTES};
use crate::domain::feeding::sittings::{SITTING_MINUTES, TRY_MINUTES};
use crate::domain::formula::heat_balance::hottest_water;
use crate::domain::formula::mixing::USUAL_POWDER_SHARE;
use crate::domain::formula::nutrition::{
    SUPPLEMENT_CAP_G_PER_100_ML, TOO_THICK_ABOVE, TOO_THIN_BELOW, VOLUME_ABOVE_PCT,
};
use crate::domain::formula::serving_heat::{
    BATH_AT_MOST_C, BATH_C, BLOCK_ABOVE_C, BURN_C, WARMEST_C,
};
use crate::domain::formula::serving_window::USUAL_HALF_TIME_MIN;
use crate::domain::homecoming::first_days::{
    FIRST_FEED_PCT, FIRST_FEED_POWDER, QUARANTINE_DAYS, SETTLE_MINUTES, VET_DAYS,
};
use crate::domain::homecoming::journey::MOST_SHIFT_PER_DAY;
use crate::domain::homecoming::life_stage::WEANED_DAYS;
use crate::domain::homecoming::reports::{DAILY_DAYS, OVERDUE_MINUTES};
use crate::domain::instruction::feed_session::{
    MIX_KEEPS_MINUTES, READING_MINUTES, SAME_STIR_SECONDS,
};
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::plan::species::Species;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::evidence::Standing;
use crate::domain::quantity::units::{Celsius, Grams, Percent};
use crate::domain::warnings::level::Value;
use crate::domain::weaning::criteria::{
    DAYS_WITHOUT_TROUBLE, LEAST_PCT_OF_PEAK, LEAST_WAITING_DAYS,
};
use crate::domain::weaning::triggers::{BEGGING_DAYS, DAYS_AFTER_DROP, LOSS_SINCE_DROP_PCT};
use crate::domain::weight::mornings::{FLAT_PCT, MOST_LOSS_PCT_PER_DAY};
use crate::domain::weight::readings::CROP_MINUTES;

/// A number of the app with its sentence, standing and source.
#[derive(Debug, Clone, PartialEq)]
pub struct Number {
    /// English, then Spanish; `{0}`, `{1}` … stand for the values.
    pub sentence: [&'static str; 2],
    /// The values, in order.
    pub values: Vec<Value>,
    /// How well founded it is: the weakest of the row.
    pub standing: Standing,
    /// Where it comes from, English, then Spanish.
    pub source: [&'static str; 2],
}

/// Numbers that belong together.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    /// Its heading, English, then Spanish.
    pub heading: [&'static str; 2],
    /// Its rows.
    pub numbers: Vec<Number>,
}

const OURS: [&str; 2] = ["chosen on the safe side", "elegido del lado seguro"];
const TRADE: [&str; 2] = ["what breeders do", "lo que hacen los criadores"];

fn number(
    sentence: [&'static str; 2],
    values: Vec<Value>,
    standing: Standing,
    source: [&'static str; 2],
) -> Number {
    Number {
        sentence,
        values,
        standing,
        source,
    }
}

fn celsius(degrees: f64) -> Value {
    Value::Celsius(Celsius::tenths_held(rounded(degrees * 10.0)))
}

fn days(days: i64) -> Value {
    Value::Minutes(days * 24 * 60)
}

/// Every number that the page shows, in groups.
pub fn groups() -> Vec<Group> {
    vec![
        Group {
            heading: ["The feed", "La toma"],
            numbers: [formula(), food()].concat(),
        },
        Group {
            heading: ["Coming home", "La llegada"],
            numbers: homecoming(),
        },
        Group {
            heading: ["Weaning", "El destete"],
            numbers: weaning(),
        },
        Group {
            heading: [
                "What a new plan begins with",
                "Con qué empieza un plan nuevo",
            ],
            numbers: defaults(),
        },
    ]
}

#[expect(clippy::too_many_lines, reason = "a table of one entry a number")]
fn formula() -> Vec<Number> {
    vec![
        number(
            [
                "Formula is fed at {0} at most, whatever the plan says.",
                "La papilla se da como máximo a {0}, diga lo que diga el plan.",
            ],
            vec![celsius(WARMEST_C)],
            Standing::Published,
            [
                "39 to 41 °C: Vet Times, 18 Feb 2019",
                "39 a 41 °C: Vet Times, 18 feb 2019",
            ],
        ),
        number(
            [
                "A cold cup stands in a bath at {0}, never above {1}.",
                "Un vaso frío se calienta al baño maría a {0}, nunca a más de {1}.",
            ],
            vec![celsius(BATH_C), celsius(BATH_AT_MOST_C)],
            Standing::Ours,
            [
                "breeders warm the cup in a bowl of warm water; a hotter bath can burn at the edge",
                "los criadores calientan el vaso en un cuenco de agua tibia; más caliente, el borde puede quemar",
            ],
        ),
        number(
            [
                "Readings less than {0} apart are of several places of one cup: the hottest counts.",
                "Medidas con menos de {0} entre ellas son de varias zonas del mismo vaso: vale la más caliente.",
            ],
            vec![Value::Minutes(SAME_STIR_SECONDS / 60)],
            Standing::Ours,
            [
                "a cup cools by about half a degree in that time",
                "en ese tiempo un vaso se enfría medio grado",
            ],
        ),
        number(
            [
                "A powder share above {0} is asked about: was it parts by volume?",
                "Si el polvo pasa de {0}, la aplicación pregunta: ¿eran partes por volumen?",
            ],
            vec![Value::Pct(VOLUME_ABOVE_PCT)],
            Standing::Ours,
            [
                "one part of powder to two of water is a fifth or less by weight",
                "una parte de polvo por dos de agua es en peso una quinta parte o menos",
            ],
        ),
        number(
            [
                "Up to {0}: stir, wait and measure again. Above it the guide lets nothing be fed.",
                "Hasta {0}: remueva, espere y vuelva a medir. Por encima, la guía no deja dar nada.",
            ],
            vec![celsius(BLOCK_ABOVE_C)],
            Standing::Ours,
            [
                "further below the burn than a kitchen thermometer can be wrong",
                "queda por debajo de la quemadura más que el error de un termómetro de cocina",
            ],
        ),
        number(
            [
                "Formula of {0} burns the crop.",
                "La papilla a {0} quema el buche.",
            ],
            vec![celsius(BURN_C)],
            Standing::Published,
            ["Rivera 2008", "Rivera 2008"],
        ),
        number(
            [
                "A temperature counts for {0}, then it is measured again.",
                "Una temperatura vale {0}; después se mide otra vez.",
            ],
            vec![Value::Minutes(READING_MINUTES)],
            Standing::Ours,
            OURS,
        ),
        number(
            [
                "Before a second reading, cooling is estimated: half of the way to the room in {0}.",
                "Antes de la segunda medida el enfriado se estima: la mitad del camino hasta la habitación en {0}.",
            ],
            vec![Value::Minutes(i64::from(rounded(USUAL_HALF_TIME_MIN)))],
            Standing::Ours,
            [
                "for a 60 ml syringe: no measured curve was found",
                "para una jeringa de 60 ml: no se encontró ninguna curva medida",
            ],
        ),
        number(
            [
                "Mixed formula is thrown away after {0}.",
                "La papilla preparada se tira después de {0}.",
            ],
            vec![Value::Minutes(MIX_KEEPS_MINUTES)],
            Standing::CommonPractice,
            [
                "breeders' pages; the strict end of 1 to 24 h",
                "páginas de criadores; lo más estricto de 1 a 24 h",
            ],
        ),
        number(
            [
                "Formula with less than {0} powder is called thin, with more than {1} thick.",
                "La papilla con menos de {0} de polvo es muy líquida; con más de {1}, muy espesa.",
            ],
            vec![
                Value::Pct(TOO_THIN_BELOW * 100.0),
                Value::Pct(TOO_THICK_ABOVE * 100.0),
            ],
            Standing::Ours,
            [
                "10 % solids killed, 20 to 30 % grew well: Roudybush & Grau 1986; the exact limits: our own",
                "con 10 % de sólidos murieron, con 20 a 30 % crecieron bien: Roudybush & Grau 1986; los límites exactos: propios",
            ],
        ),
        number(
            [
                "Fat supplement: at most {0} in 100 ml.",
                "Suplemento graso: como máximo {0} en 100 ml.",
            ],
            vec![Value::Grams(grams_of(SUPPLEMENT_CAP_G_PER_100_ML))],
            Standing::Ours,
            ["about half a teaspoon", "una media cucharadita"],
        ),
        number(
            [
                "For {0} after a feed, the food is taken off the weight.",
                "Lo que comió se resta del peso durante {0} después de la toma.",
            ],
            vec![Value::Minutes(CROP_MINUTES)],
            Standing::Ours,
            [
                "from a usual emptying time; the weight of formula: Choi & Okos 1986",
                "del tiempo habitual de vaciado; el peso de la papilla: Choi & Okos 1986",
            ],
        ),
    ]
}

fn food() -> Vec<Number> {
    let [first, second] = CarePlan::RETRIES_MINUTES;
    vec![
        number(
            [
                "Shortest gap between two feeds: {0} by day (less where the plan's feeds are closer together), {1} over the night.",
                "Intervalo mínimo entre dos tomas: {0} de día (menos si las tomas del plan van más seguidas) y {1} de noche.",
            ],
            vec![
                Value::Minutes(DAY_GAP_MINUTES),
                Value::Minutes(NIGHT_GAP_MINUTES),
            ],
            Standing::Published,
            [
                "page of an animal clinic on avian pediatric nutrition",
                "página de una clínica sobre nutrición de polluelos",
            ],
        ),
        number(
            [
                "A refused feed is offered again after {0}, then after {1}.",
                "Una toma rechazada se vuelve a ofrecer después de {0} y otra vez después de {1}.",
            ],
            vec![
                Value::Minutes(i64::from(first)),
                Value::Minutes(i64::from(second)),
            ],
            Standing::CommonPractice,
            [
                "the first: common practice, 30 to 60 min; the second: a breeder's sheet, 2 to 3 h",
                "la primera: práctica común, 30 a 60 min; la segunda: hoja de un criador, 2 a 3 h",
            ],
        ),
        number(
            [
                "Notes within {0} are one feed; a try within {1} of a small feed belongs to it.",
                "Lo anotado en {0} es una sola toma; un intento en {1} después de una toma pequeña es parte de ella.",
            ],
            vec![Value::Minutes(SITTING_MINUTES), Value::Minutes(TRY_MINUTES)],
            Standing::Ours,
            OURS,
        ),
    ]
}

fn homecoming() -> Vec<Number> {
    let (least, most) = FIRST_FEED_PCT.value;
    vec![
        number(
            [
                "After the arrival: {0} warm and quiet, then the first feed.",
                "Al llegar: {0} al calor y en calma; después la primera toma.",
            ],
            vec![Value::Minutes(SETTLE_MINUTES)],
            Standing::CommonPractice,
            [
                "30 to 60 min are common practice; warm, then water, then food: Duerr & Gage 2020, pp. 5 and 590",
                "30 a 60 min son práctica común; calor, agua y comida: Duerr & Gage 2020, pp. 5 y 590",
            ],
        ),
        number(
            [
                "The first feed: {0} to {1} of the usual volume, with {2} powder.",
                "La primera toma: de {0} a {1} de lo habitual, con {2} de polvo.",
            ],
            vec![
                Value::Pct(f64::from(least)),
                Value::Pct(f64::from(most)),
                Value::Pct(FIRST_FEED_POWDER.value.as_pct()),
            ],
            FIRST_FEED_PCT.standing,
            TRADE,
        ),
        number(
            [
                "An avian vet sees it within {0}.",
                "Un veterinario de aves lo ve antes de que pasen {0}.",
            ],
            vec![days(i64::from(VET_DAYS.value))],
            VET_DAYS.standing,
            [
                "breeders' contracts, 48 to 72 h",
                "contratos de criadores, 48 a 72 h",
            ],
        ),
        number(
            [
                "It stays apart from other birds for {0}.",
                "Está separado de otras aves durante {0}.",
            ],
            vec![days(i64::from(QUARANTINE_DAYS.value))],
            QUARANTINE_DAYS.standing,
            [
                "30 to 90 days on avian vets' pages; the number between them: our own",
                "30 a 90 días en páginas de veterinarios de aves; el valor entre ellos: propio",
            ],
        ),
        number(
            [
                "After a flight the feeds move by at most {0} a day, if the plan says so.",
                "Después de un vuelo las tomas se mueven como máximo {0} al día, si lo dice el plan.",
            ],
            vec![Value::Minutes(i64::from(MOST_SHIFT_PER_DAY.value))],
            MOST_SHIFT_PER_DAY.standing,
            OURS,
        ),
        number(
            [
                "A report is due daily for {0}; {1} late counts as silence.",
                "Un informe al día durante {0}; con {1} de retraso cuenta como silencio.",
            ],
            vec![days(DAILY_DAYS), Value::Minutes(OVERDUE_MINUTES)],
            Standing::Ours,
            [
                "daily: common practice; the hours: our own",
                "a diario: práctica común; las horas: valor propio",
            ],
        ),
    ]
}

fn weaning() -> Vec<Number> {
    vec![
        number(
            [
                "A feed may go when the weight is at least {0} of the peak and falls by at most {1} a day.",
                "Una toma puede quitarse si el peso es al menos un {0} del máximo y baja como máximo un {1} al día.",
            ],
            vec![
                Value::Pct(LEAST_PCT_OF_PEAK),
                Value::Pct(-MOST_LOSS_PCT_PER_DAY),
            ],
            Standing::CommonPractice,
            [
                "the peak: Duerr & Gage 2020, p. 599; the pace: common practice",
                "el máximo: Duerr & Gage 2020, p. 599; el ritmo: práctica común",
            ],
        ),
        number(
            [
                "{0} without signs of illness before it; at least {1} between two drops.",
                "{0} sin señales de enfermedad antes; al menos {1} entre dos tomas quitadas.",
            ],
            vec![days(DAYS_WITHOUT_TROUBLE), days(LEAST_WAITING_DAYS)],
            Standing::CommonPractice,
            TRADE,
        ),
        number(
            [
                "A dropped feed comes back after a loss of {0} within {1}, or after {2} days of begging all day.",
                "Una toma quitada se vuelve a ofrecer si pierde un {0} en {1}, o si pide comida todo el día {2} días.",
            ],
            vec![
                Value::Pct(LOSS_SINCE_DROP_PCT),
                days(i64::from(DAYS_AFTER_DROP)),
                Value::Count(BEGGING_DAYS),
            ],
            Standing::CommonPractice,
            TRADE,
        ),
        number(
            [
                "Weaned: {0} without formula, weight steady within ±{1}, and seen to drink.",
                "Destetado: {0} sin papilla, peso estable (±{1}) y se le vio beber.",
            ],
            vec![days(i64::from(WEANED_DAYS)), Value::Pct(FLAT_PCT)],
            Standing::CommonPractice,
            TRADE,
        ),
    ]
}

fn defaults() -> Vec<Number> {
    // What does not depend on the species is the same in every default plan.
    let plan = CarePlan::default_for(Species::GreenWingedMacaw);
    vec![
        number(
            ["Feed at {0} to {1}.", "Dar a {0}–{1}."],
            vec![
                Value::Celsius(plan.serve_from),
                Value::Celsius(plan.serve_to),
            ],
            Standing::Ours,
            [
                "within Vet Times, 18 Feb 2019 (39 to 41 °C)",
                "dentro de Vet Times, 18 feb 2019 (39 a 41 °C)",
            ],
        ),
        number(
            [
                "Mix with water at {0}; a plan may say up to {1}. With {2} powder the app asks above {3}, with {4} above {5}, with {6} above {7}: the mix could burn the crop.",
                "Prepare con agua a {0}; un plan puede decir hasta {1}. Con {2} de polvo la aplicación pregunta por encima de {3}, con {4} por encima de {5}, con {6} por encima de {7}: la papilla podría quemar el buche.",
            ],
            water_values(&plan),
            Standing::Ours,
            [
                "breeders mix at 43 to 49 °C and let it cool; the limits keep the mix under 43 °C with powder at 20 °C",
                "los criadores usan agua de 43 a 49 °C y la dejan enfriar; con los límites, la papilla queda por debajo de 43 °C si el polvo está a 20 °C",
            ],
        ),
        number(
            [
                "A plan serves within {0} to {1}.",
                "Un plan da la papilla entre {0} y {1}.",
            ],
            vec![
                Value::Celsius(CarePlan::SERVE_WITHIN.0),
                Value::Celsius(CarePlan::SERVE_WITHIN.1),
            ],
            Standing::Ours,
            [
                "vets and breeders serve at 38 to 41 °C",
                "veterinarios y criadores la dan a 38–41 °C",
            ],
        ),
        number(
            ["{0} powder by weight.", "{0} de polvo, en peso."],
            vec![Value::Pct(USUAL_POWDER_SHARE * 100.0)],
            Standing::Ours,
            [
                "20 to 30 % solids grow well: Roudybush & Grau 1986",
                "con 20 a 30 % de sólidos crecen bien: Roudybush & Grau 1986",
            ],
        ),
        number(
            [
                "Call the breeder at a loss of {0} from the handover weight.",
                "Llamar al criador si pierde un {0} del peso de entrega.",
            ],
            vec![Value::Pct(plan.loss_limit.as_pct())],
            Standing::Published,
            ["Duerr & Gage 2020, p. 599", "Duerr & Gage 2020, p. 599"],
        ),
        number(
            [
                "Settle in for {0}; wait {1} after each drop.",
                "{0} de adaptación; esperar {1} tras quitar una toma.",
            ],
            vec![
                days(i64::from(plan.settle_in_days)),
                days(i64::from(plan.waiting_days)),
            ],
            Standing::CommonPractice,
            TRADE,
        ),
        number(
            ["A room of {0} to {1}.", "Una habitación de {0} a {1}."],
            vec![Value::Celsius(plan.room_from), Value::Celsius(plan.room_to)],
            Standing::Published,
            [
                "Watchbird, Parrot pediatrics",
                "Watchbird, Parrot pediatrics",
            ],
        ),
    ]
}

fn water_values(plan: &CarePlan) -> Vec<Value> {
    let limits = [20, 25, 30].into_iter().filter_map(|pct| {
        let hottest = hottest_water(Percent::whole(pct))?;
        Some([Value::Pct(f64::from(pct)), Value::Celsius(hottest)])
    });
    [plan.mixing_water, CarePlan::HOTTEST_WATER]
        .map(Value::Celsius)
        .into_iter()
        .chain(limits.flatten())
        .collect()
}

fn grams_of(grams: f64) -> Grams {
    Grams::tenths_held(rounded(grams * 10.0))
}

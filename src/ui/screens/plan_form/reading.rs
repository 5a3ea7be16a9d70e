//! What a typed field of a new plan stands for, or what is wrong with it.

use crate::domain::journal::entries::Refusal;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::Day;
use crate::words::Language;
use crate::words::format::Writing;

/// The day on which a chick hatched, seen from `today`.
///
/// # Errors
/// What is wrong with the text.
pub fn hatched(say: Language, today: Day, text: &str) -> Result<Day, &'static str> {
    let day = Day::parse_iso(text).ok_or(say.fault_no_date())?;
    match today.since(day) {
        ..0 => Err(say.fault_day_ahead()),
        0..=730 => Ok(day),
        _ => Err(say.fault_hatched_long_ago()),
    }
}

/// The weight at handover, in the units of `writing`.
///
/// # Errors
/// What is wrong with the text.
pub fn handover_weight(writing: Writing, text: &str) -> Result<Grams, String> {
    let weight = writing
        .read_mass(text)
        .map_err(|error| writing.number_error(error))?;
    if (Grams::whole(5)..=Grams::whole(3_000)).contains(&weight) {
        Ok(weight)
    } else {
        let refusal = writing.language.refusal(&Refusal::WeightOutOfRange);
        Err(refusal.to_owned())
    }
}

/// The day of that weighing, not after `today` and not before it hatched.
///
/// # Errors
/// What is wrong with the text.
pub fn weighed_day(
    say: Language,
    today: Day,
    hatched: Option<Day>,
    text: &str,
) -> Result<Day, &'static str> {
    match Day::parse_iso(text) {
        None => Err(say.fault_no_date()),
        Some(day) if day > today => Err(say.fault_day_ahead()),
        Some(day) if hatched.is_some_and(|hatched| day < hatched) => {
            Err(say.fault_weighed_before_hatching())
        }
        Some(day) => Ok(day),
    }
}

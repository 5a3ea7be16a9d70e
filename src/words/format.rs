//! Numbers with their units, wall times, dates and ages, by language and chosen unit.

use crate::domain::formula::serving_heat::TemperatureUnit;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::{Celsius, GRAMS_PER_OUNCE, Grams, Millilitres, NumberError};
use crate::domain::time::moment::{Age, Day, Lived, WallTime};
use crate::words::Language;

/// Unit of mass on screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MassUnit {
    /// Grams.
    Gram,
    /// Ounces avoirdupois.
    Ounce,
}

/// The sign between the whole and its tenths.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DecimalSign {
    /// `84.5`.
    Point,
    /// `84,5`.
    Comma,
}

impl DecimalSign {
    /// Regions that write Spanish with a point.
    /// Source: Unicode CLDR 48, decimal sign of every region that it has for the language.
    const SPANISH_POINT: &'static str = "419 BR BZ CU DO GT HN MX NI PA PE PR SV US";

    /// Regions that write English with a comma. Source: as above.
    const ENGLISH_COMMA: &'static str =
        "AT BE CZ DE DK EE ES FI FR GE HU ID IT LT LV NL NO PL PT RO SE SI SK UA ZA";

    /// The sign where nothing is known of the region.
    const fn usual(language: Language) -> Self {
        match language {
            Language::English => Self::Point,
            Language::Spanish => Self::Comma,
        }
    }

    /// The sign for a person who reads `language` on a device set to a BCP 47 tag such as `es-MX`: that
    /// of the tag's region when the tag is of this language.
    pub fn of(language: Language, tag: &str) -> Self {
        let usual = Self::usual(language);
        let (others, other) = match language {
            Language::English => (Self::ENGLISH_COMMA, Self::Comma),
            Language::Spanish => (Self::SPANISH_POINT, Self::Point),
        };
        let mut parts = tag.split(['-', '_']);
        let is_of_language = parts
            .next()
            .is_some_and(|primary| primary.eq_ignore_ascii_case(language.tag()));
        // A part of one letter begins an extension (RFC 5646, 2.2.6), in which no region stands.
        let is_other = parts.take_while(|part| part.len() > 1).any(|part| {
            others
                .split(' ')
                .any(|region| region.eq_ignore_ascii_case(part))
        });
        if is_of_language && is_other {
            other
        } else {
            usual
        }
    }
}

/// How values are written for one person.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Writing {
    /// The language.
    pub language: Language,
    /// Decimal sign.
    pub decimal: DecimalSign,
    /// Unit of mass.
    pub mass: MassUnit,
    /// Unit of temperature.
    pub temperature: TemperatureUnit,
}

impl Writing {
    /// In grams and degrees Celsius, with the language's usual decimal sign.
    pub const fn metric(language: Language) -> Self {
        Self {
            language,
            decimal: DecimalSign::usual(language),
            mass: MassUnit::Gram,
            temperature: TemperatureUnit::Celsius,
        }
    }

    /// A mass typed in the chosen unit.
    ///
    /// # Errors
    /// [`NumberError`] for text that is no mass.
    pub fn read_mass(self, text: &str) -> Result<Grams, NumberError> {
        match self.mass {
            MassUnit::Gram => Grams::parse(text),
            MassUnit::Ounce => Grams::parse_ounces(text),
        }
    }

    /// A temperature typed in the chosen unit.
    ///
    /// # Errors
    /// [`NumberError`] for text that is no temperature.
    pub fn read_temperature(self, text: &str) -> Result<Celsius, NumberError> {
        match self.temperature {
            TemperatureUnit::Celsius => Celsius::parse(text),
            TemperatureUnit::Fahrenheit => Celsius::parse_fahrenheit(text),
        }
    }

    /// Tenths as a decimal number: `84.5` or `84,5`; whole numbers without a decimal, and
    /// thousands set apart by a thin space from 10,000 on.
    pub fn tenths(self, tenths: i32) -> String {
        let sign = if tenths < 0 { "\u{2212}" } else { "" };
        let whole = grouped((tenths / 10).unsigned_abs());
        match (tenths % 10).unsigned_abs() {
            0 => format!("{sign}{whole}"),
            decimal => format!("{sign}{whole}{}{decimal}", self.decimal_sign()),
        }
    }

    /// A float rounded to one decimal, which is always written.
    pub fn one_decimal(self, value: f64) -> String {
        let tenths = rounded(value * 10.0);
        let sign = if tenths < 0 { "\u{2212}" } else { "" };
        let whole = grouped((tenths / 10).unsigned_abs());
        format!(
            "{sign}{whole}{}{}",
            self.decimal_sign(),
            (tenths % 10).unsigned_abs()
        )
    }

    /// What parts whole units from tenths.
    pub(crate) const fn decimal_sign(self) -> char {
        match self.decimal {
            DecimalSign::Point => '.',
            DecimalSign::Comma => ',',
        }
    }

    /// A share: `2.7 %`.
    pub fn pct(self, pct: f64) -> String {
        format!("{}\u{a0}%", self.one_decimal(pct))
    }

    /// A mass in the chosen unit: `1012 g`, `35.7 oz`.
    pub fn mass(self, mass: Grams) -> String {
        format!("{}\u{a0}{}", self.mass_number(mass), self.mass_unit())
    }

    /// The number of a mass in the chosen unit.
    pub fn mass_number(self, mass: Grams) -> String {
        match self.mass {
            MassUnit::Gram => self.tenths(mass.tenths()),
            MassUnit::Ounce => self.one_decimal(mass.as_g() / GRAMS_PER_OUNCE),
        }
    }

    /// The number of a mass as it is typed: without a space between thousands.
    pub fn mass_typed(self, mass: Grams) -> String {
        self.mass_number(mass).replace('\u{202f}', "")
    }

    /// The sign of the chosen unit of mass.
    pub const fn mass_unit(self) -> &'static str {
        match self.mass {
            MassUnit::Gram => "g",
            MassUnit::Ounce => "oz",
        }
    }

    /// A volume: `60 ml`.
    pub fn volume(self, volume: Millilitres) -> String {
        format!("{}\u{a0}ml", self.tenths(volume.tenths()))
    }

    /// A size of data: `143 kB`, whole kilobytes of 1,000 bytes, rounded up.
    pub fn kilobytes(self, bytes: u32) -> String {
        format!("{}\u{a0}kB", bytes.div_ceil(1_000))
    }

    /// A temperature in the chosen unit: `40.0 °C`, `104.0 °F`.
    pub fn temperature(self, temperature: Celsius) -> String {
        format!(
            "{}\u{a0}{}",
            self.temperature_number(temperature),
            self.temperature_unit()
        )
    }

    /// The number of a temperature in the chosen unit.
    pub fn temperature_number(self, temperature: Celsius) -> String {
        match self.temperature {
            TemperatureUnit::Celsius => self.one_decimal(temperature.as_c()),
            TemperatureUnit::Fahrenheit => {
                self.one_decimal(f64::from(temperature.tenths_fahrenheit()) / 10.0)
            }
        }
    }

    /// The sign of the chosen unit of temperature.
    pub const fn temperature_unit(self) -> &'static str {
        match self.temperature {
            TemperatureUnit::Celsius => "°C",
            TemperatureUnit::Fahrenheit => "°F",
        }
    }

    /// A stretch of time: `1 h 20 min`, `45 min`; below zero as its size.
    pub fn minutes(self, minutes: i64) -> String {
        let minutes = minutes.unsigned_abs();
        match (minutes / 60, minutes % 60) {
            (0, minutes) => format!("{minutes}\u{a0}min"),
            (hours, 0) => format!("{hours}\u{a0}h"),
            (hours, minutes) => format!("{hours}\u{a0}h {minutes}\u{a0}min"),
        }
    }

    /// A wall time on the 24-hour clock.
    pub fn time(self, time: WallTime) -> String {
        time.text()
    }

    /// A wall time after "at" or "until" in a sentence: `21:00`, in Spanish `las 21:00` and `la 1:00`.
    pub fn the_time(self, time: WallTime) -> String {
        let time = self.time(time);
        match self.language {
            Language::English => time,
            Language::Spanish => {
                let time = match time.strip_prefix('0') {
                    Some(rest) => rest.to_owned(),
                    None => time,
                };
                let article = if time.starts_with("1:") { "la" } else { "las" };
                format!("{article} {time}")
            }
        }
    }

    /// A day and wall time in a sentence: `Mon 2 Nov, 07:10`, `el lun 2 nov a las 7:10`.
    pub fn on_lived(self, lived: Lived) -> String {
        match self.language {
            Language::English => self.lived(lived),
            Language::Spanish => {
                let (day, time) = (self.day(lived.day), self.the_time(lived.time));
                format!("el {day} a {time}")
            }
        }
    }

    /// A day without its year: `Mon 2 Nov`, `lun 2 nov`.
    pub fn day(self, day: Day) -> String {
        let (_, month, date) = day.date();
        let weekday = usize::try_from(day.weekday())
            .ok()
            .and_then(|index| self.weekdays().get(index));
        let month = usize::try_from(month)
            .ok()
            .and_then(|month| self.months().get(month.checked_sub(1)?));
        format!("{} {date} {}", weekday.unwrap_or(&""), month.unwrap_or(&""))
    }

    /// A day without weekday and year: `2 Nov`, `2 nov`.
    pub fn day_and_month(self, day: Day) -> String {
        let day = self.day(day);
        let short = day.split_once(' ').map(|(_, short)| short.to_owned());
        short.unwrap_or(day)
    }

    /// A day with its year: `2 Nov 2026`.
    pub fn date(self, day: Day) -> String {
        let (year, month, date) = day.date();
        let month = usize::try_from(month)
            .ok()
            .and_then(|month| self.months().get(month.checked_sub(1)?));
        format!("{date} {} {year}", month.unwrap_or(&""))
    }

    /// A day and wall time: `Mon 2 Nov, 07:10`.
    pub fn lived(self, lived: Lived) -> String {
        format!("{}, {}", self.day(lived.day), self.time(lived.time))
    }

    /// An age: `13 weeks 2 days`.
    pub fn age(self, age: Age) -> String {
        let (weeks, days) = age.weeks_and_days();
        let weeks_word = |count| match (self.language, count) {
            (Language::English, 1) => "week",
            (Language::English, _) => "weeks",
            (Language::Spanish, 1) => "semana",
            (Language::Spanish, _) => "semanas",
        };
        match (weeks, days) {
            (0, days) => self.days(days),
            (weeks, 0) => format!("{weeks} {}", weeks_word(weeks)),
            (weeks, days) => {
                let and = self.language.pick("", "y ");
                format!("{weeks} {} {and}{}", weeks_word(weeks), self.days(days))
            }
        }
    }

    /// A number of days: `1 day`, `5 days`.
    pub fn days(self, days: i32) -> String {
        let word = match (self.language, days) {
            (Language::English, 1) => "day",
            (Language::English, _) => "days",
            (Language::Spanish, 1) => "día",
            (Language::Spanish, _) => "días",
        };
        format!("{days} {word}")
    }

    const fn weekdays(self) -> &'static [&'static str] {
        match self.language {
            Language::English => &["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"],
            Language::Spanish => &["lun", "mar", "mié", "jue", "vie", "sáb", "dom"],
        }
    }

    const fn months(self) -> &'static [&'static str] {
        match self.language {
            Language::English => &[
                "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
            ],
            Language::Spanish => &[
                "ene", "feb", "mar", "abr", "may", "jun", "jul", "ago", "sept", "oct", "nov", "dic",
            ],
        }
    }
}

/// A whole number with its thousands set apart by a narrow space from 10,000 on (SI brochure, 9th
/// ed., 5.4.4: four digits are commonly left together).
fn grouped(whole: u32) -> String {
    if whole < 10_000 {
        return whole.to_string();
    }
    format!("{}\u{202f}{:03}", whole / 1_000, whole % 1_000)
}

#[cfg(test)]
mod tests {
    use crate::words::format::*;

    #[test]
    fn decimals_follow_the_language() {
        assert_eq!(Writing::metric(Language::English).tenths(845), "84.5");
        assert_eq!(Writing::metric(Language::Spanish).tenths(845), "84,5");
        assert_eq!(Writing::metric(Language::English).tenths(-5), "\u{2212}0.5");
        assert_eq!(
            Writing::metric(Language::English).mass(Grams::whole(1_012)),
            "1012\u{a0}g"
        );
        assert_eq!(Writing::metric(Language::English).pct(2.692), "2.7\u{a0}%");
        assert_eq!(Writing::metric(Language::English).one_decimal(-0.04), "0.0");
    }

    #[test]
    fn chosen_units_are_converted() {
        let mut american = Writing::metric(Language::English);
        american.mass = MassUnit::Ounce;
        american.temperature = TemperatureUnit::Fahrenheit;
        // 1012 / 28.3495 = 35.697; 40 × 1.8 + 32 = 104
        assert_eq!(american.mass(Grams::whole(1_012)), "35.7\u{a0}oz");
        assert_eq!(american.temperature(Celsius::whole(40)), "104.0\u{a0}°F");
    }

    #[test]
    fn one_is_singular() {
        let english = Writing::metric(Language::English);
        assert_eq!(english.days(1), "1 day");
        assert_eq!(english.days(0), "0 days");
        assert_eq!(Writing::metric(Language::Spanish).days(1), "1 día");
    }

    #[test]
    fn days_and_times_are_written_out() {
        let day = Day::from_date(2026, 11, 2).unwrap();
        assert_eq!(Writing::metric(Language::English).day(day), "Mon 2 Nov");
        assert_eq!(Writing::metric(Language::Spanish).day(day), "lun 2 nov");
        let short = Writing::metric(Language::English).day_and_month(day);
        assert_eq!(short, "2 Nov");
        assert_eq!(
            Writing::metric(Language::English).minutes(80),
            "1\u{a0}h 20\u{a0}min"
        );
        assert_eq!(
            Writing::metric(Language::English).minutes(-45),
            "45\u{a0}min"
        );
    }

    /// 1 oz is 28.349 523 125 g (NIST SP 811, B.8); 104 °F is 40 °C.
    #[test]
    fn what_is_typed_is_read_in_the_unit_chosen() {
        let metric = Writing::metric(Language::English);
        let other = Writing {
            mass: MassUnit::Ounce,
            temperature: TemperatureUnit::Fahrenheit,
            ..metric
        };
        assert_eq!(metric.read_mass("40"), Ok(Grams::whole(40)));
        assert_eq!(other.read_mass("40"), Ok(Grams::tenths_held(11_340)));
        assert_eq!(metric.read_temperature("40"), Ok(Celsius::whole(40)));
        assert_eq!(other.read_temperature("104"), Ok(Celsius::whole(40)));
        assert_eq!(other.read_mass("-1"), Err(NumberError::Negative));
        assert_eq!(metric.read_temperature(""), Err(NumberError::Empty));
    }
}

//! Masses, volumes, temperatures and shares as whole tenths, and how typed text becomes one.
//!
//! A reading and a change are two types. Tenths are the grain of kitchen and bird scales (1 g, some
//! 0.1 g), of syringes (1 ml, some 0.1 ml) and of probe thermometers (0.1 °C), so that equality,
//! order and saving are exact.

use thiserror::Error;

use crate::domain::quantity::count::rounded;

/// Grams in one ounce avoirdupois, exact. Source: NIST SP 811 (2008), appendix B.8.
pub const GRAMS_PER_OUNCE: f64 = 28.349_523_125;
/// Degrees Fahrenheit in a difference of one degree Celsius, exact. Source: NIST SP 811 (2008), B.8.
pub const FAHRENHEIT_PER_CELSIUS: f64 = 1.8;

/// Why typed text is not a quantity.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum NumberError {
    /// Nothing but spaces was typed.
    #[error("no number was given")]
    Empty,
    /// Something other than digits with one decimal sign.
    #[error("the text is not a plain number")]
    NotANumber,
    /// A point and a comma together, so that thousands and decimals cannot be told apart.
    #[error("the text has both a point and a comma")]
    BothSigns,
    /// A sign before three digits, where thousands and decimals would both be in range.
    #[error("the sign before the last three digits could mark thousands or decimals")]
    ThousandsOrDecimals,
    /// A minus sign where only a positive quantity makes sense.
    #[error("the number is below zero")]
    Negative,
    /// A number outside the range of its quantity.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
}

/// A value outside the range of its quantity, all in tenths of the unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
#[error("{value} tenths is not in the range of {low}..={high} tenths")]
pub struct OutOfRange {
    /// The value given.
    pub value: i64,
    /// The lowest value that is taken.
    pub low: i32,
    /// The highest value that is taken.
    pub high: i32,
}

/// Thousandths of a typed decimal number; digits past the third decimal are cut.
///
/// Takes a decimal point or a decimal comma and spaces around it, never both signs, no exponent and
/// at most nine digits before the sign.
///
/// # Errors
/// [`NumberError::Empty`], [`NumberError::NotANumber`] or [`NumberError::BothSigns`].
///
/// # Examples
/// ```
/// use perchlight::domain::quantity::units::{NumberError, parse_thousandths};
/// assert_eq!(parse_thousandths(" 84,5 "), Ok(84_500));
/// assert_eq!(parse_thousandths("1,012.5"), Err(NumberError::BothSigns));
/// ```
pub fn parse_thousandths(text: &str) -> Result<i64, NumberError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(NumberError::Empty);
    }
    if text.contains('.') && text.contains(',') {
        return Err(NumberError::BothSigns);
    }
    let (is_negative, digits) = match text.strip_prefix(['-', '\u{2212}']) {
        Some(rest) => (true, rest),
        None => (false, text),
    };
    let (whole, decimals) = digits.split_once(['.', ',']).unwrap_or((digits, ""));
    let all_digits = |part: &str| part.bytes().all(|byte| byte.is_ascii_digit());
    if whole.len() + decimals.len() == 0
        || whole.len() > 9
        || !all_digits(whole)
        || !all_digits(decimals)
    {
        return Err(NumberError::NotANumber);
    }
    let digit_value = |byte: u8| i64::from(byte.saturating_sub(b'0'));
    let whole = whole
        .bytes()
        .fold(0_i64, |sum, byte| sum * 10 + digit_value(byte));
    let decimals = decimals
        .bytes()
        .chain(*b"000")
        .take(3)
        .fold(0_i64, |sum, byte| sum * 10 + digit_value(byte));
    let thousandths = whole * 1000 + decimals;
    Ok(if is_negative {
        -thousandths
    } else {
        thousandths
    })
}

/// The whole number that typed text means when its sign marks thousands, as in `1,012`; `None` when
/// it cannot mean that.
///
/// Text has passed [`parse_thousandths`]. A group of thousands follows one to three digits that do
/// not start with a zero.
fn with_thousands(text: &str) -> Option<i64> {
    let (whole, group) = text.trim().split_once(['.', ','])?;
    if group.len() != 3 || !(1..=3).contains(&whole.len()) || whole.starts_with('0') {
        return None;
    }
    Some(whole.parse::<i64>().ok()? * 1000 + group.parse::<i64>().ok()?)
}

/// Thousandths as a float in whole units, exact.
fn units_from_thousandths(thousandths: i64) -> f64 {
    let whole = i32::try_from(thousandths.div_euclid(1000)).unwrap_or(i32::MAX);
    let rest = i32::try_from(thousandths.rem_euclid(1000)).unwrap_or(0);
    (f64::from(whole) * 1000.0 + f64::from(rest)) / 1000.0
}

/// Tenths from thousandths, half away from zero.
const fn tenths_from_thousandths(thousandths: i64) -> i64 {
    if thousandths < 0 {
        (thousandths - 50) / 100
    } else {
        (thousandths + 50) / 100
    }
}

macro_rules! reading {
    ($(#[$doc:meta])* $name:ident, $low:expr, $high:expr) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(i32);

        impl $name {
            /// The lowest value taken, in tenths.
            pub const LOW: i32 = $low;
            /// The highest value taken, in tenths.
            pub const HIGH: i32 = $high;

            /// A value from whole tenths.
            ///
            /// # Errors
            /// [`OutOfRange`] outside `LOW..=HIGH`.
            pub fn from_tenths(tenths: i64) -> Result<Self, OutOfRange> {
                match i32::try_from(tenths) {
                    Ok(value) if ($low..=$high).contains(&value) => Ok(Self(value)),
                    Ok(_) | Err(_) => Err(OutOfRange { value: tenths, low: $low, high: $high }),
                }
            }

            /// A value from whole units, held within the range; for constants.
            pub const fn whole(units: i32) -> Self {
                Self::tenths_held(units.saturating_mul(10))
            }

            /// A value from tenths, held within the range; for constants and rounded results.
            pub const fn tenths_held(tenths: i32) -> Self {
                if tenths < $low {
                    Self($low)
                } else if tenths > $high {
                    Self($high)
                } else {
                    Self(tenths)
                }
            }

            /// The value in exact tenths.
            pub const fn tenths(self) -> i32 {
                self.0
            }

            /// The value in whole units as a float, for physics.
            pub fn as_f64(self) -> f64 {
                f64::from(self.0) / 10.0
            }

            /// A value from typed text in the quantity's own unit.
            ///
            /// `1,012` is refused where 1,012 and 1.012 are both in range: somebody's thousands
            /// would become a thousandth, and neither kitchen scales nor syringes give three
            /// decimals.
            ///
            /// # Errors
            /// [`NumberError`] for text that is no number, has two meanings or is out of range.
            pub fn parse(text: &str) -> Result<Self, NumberError> {
                let thousandths = parse_thousandths(text)?;
                if thousandths < 0 && $low >= 0 {
                    return Err(NumberError::Negative);
                }
                let as_decimals = Self::from_tenths(tenths_from_thousandths(thousandths))?;
                match with_thousands(text).map(|units| Self::from_tenths(units * 10)) {
                    Some(Ok(_)) => Err(NumberError::ThousandsOrDecimals),
                    Some(Err(_)) | None => Ok(as_decimals),
                }
            }
        }
    };
}

reading! {
    /// A mass in tenths of a gram, 0 to 20,000 g: a bird on the scale, powder, water.
    Grams, 0, 200_000
}
reading! {
    /// A volume in tenths of a millilitre, 0 to 2,000 ml: a feed, a syringe.
    Millilitres, 0, 20_000
}
reading! {
    /// A temperature in tenths of a degree Celsius, -40 to 130 °C.
    Celsius, -400, 1_300
}
reading! {
    /// A share in tenths of a per cent, 0 to 100 %.
    Percent, 0, 1_000
}

impl Grams {
    /// Mass in grams as a float.
    pub fn as_g(self) -> f64 {
        self.as_f64()
    }

    /// A mass from text typed in ounces avoirdupois, rounded to 0.1 g.
    ///
    /// # Errors
    /// [`NumberError`] as for [`Grams::parse`].
    pub fn parse_ounces(text: &str) -> Result<Self, NumberError> {
        let thousandths = parse_thousandths(text)?;
        if thousandths < 0 {
            return Err(NumberError::Negative);
        }
        let ounces = units_from_thousandths(thousandths);
        Ok(Self::from_tenths(i64::from(rounded(
            ounces * GRAMS_PER_OUNCE * 10.0,
        )))?)
    }

    /// The change from `earlier` to this reading.
    pub const fn since(self, earlier: Self) -> GramsChange {
        GramsChange(self.0 - earlier.0)
    }
}

impl Millilitres {
    /// Volume in millilitres as a float.
    pub fn as_ml(self) -> f64 {
        self.as_f64()
    }
}

impl Celsius {
    /// Temperature in degrees Celsius as a float.
    pub fn as_c(self) -> f64 {
        self.as_f64()
    }

    /// A temperature from text typed in degrees Fahrenheit, rounded to 0.1 °C.
    ///
    /// # Errors
    /// [`NumberError`] as for [`Celsius::parse`].
    pub fn parse_fahrenheit(text: &str) -> Result<Self, NumberError> {
        let thousandths = parse_thousandths(text)?;
        let fahrenheit = units_from_thousandths(thousandths);
        Ok(Self::from_tenths(i64::from(rounded(
            celsius_from_fahrenheit(fahrenheit) * 10.0,
        )))?)
    }

    /// The temperature in tenths of a degree Fahrenheit, rounded.
    pub fn tenths_fahrenheit(self) -> i32 {
        rounded(fahrenheit_from_celsius(self.as_c()) * 10.0)
    }
}

impl Percent {
    /// The share in per cent as a float.
    pub fn as_pct(self) -> f64 {
        self.as_f64()
    }
}

/// A change of mass in tenths of a gram; below zero is a loss.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct GramsChange(i32);

impl GramsChange {
    /// The loss in per cent of `reference`, below zero for a gain; `None` for a reference of 0 g.
    pub fn loss_pct_of(self, reference: Grams) -> Option<f64> {
        if reference.tenths() == 0 {
            return None;
        }
        Some(-f64::from(self.0) * 100.0 / f64::from(reference.tenths()))
    }
}

/// Degrees Celsius from degrees Fahrenheit: `(F - 32) / 1.8`. Source: NIST SP 811 (2008), B.8.
pub fn celsius_from_fahrenheit(fahrenheit: f64) -> f64 {
    (fahrenheit - 32.0) / FAHRENHEIT_PER_CELSIUS
}

/// Degrees Fahrenheit from degrees Celsius: `C × 1.8 + 32`. Source: NIST SP 811 (2008), B.8.
pub fn fahrenheit_from_celsius(celsius: f64) -> f64 {
    celsius * FAHRENHEIT_PER_CELSIUS + 32.0
}

#[cfg(test)]
mod tests {
    use crate::domain::quantity::units::*;

    #[test]
    fn a_decimal_comma_and_a_decimal_point_mean_the_same() {
        assert_eq!(Grams::parse("1012,5"), Grams::parse("1012.5"));
        assert_eq!(Grams::parse("1012,5").unwrap().tenths(), 10_125);
    }

    #[test]
    fn text_that_is_no_number_is_told_apart() {
        assert_eq!(Grams::parse("  "), Err(NumberError::Empty));
        assert_eq!(Grams::parse("abc"), Err(NumberError::NotANumber));
        assert_eq!(Grams::parse("1e3"), Err(NumberError::NotANumber));
        assert_eq!(Grams::parse("."), Err(NumberError::NotANumber));
        assert_eq!(Grams::parse("-5"), Err(NumberError::Negative));
        assert_eq!(Grams::parse("1.0,5"), Err(NumberError::BothSigns));
        assert_eq!(Grams::parse("9999999999"), Err(NumberError::NotANumber));
        assert!(matches!(
            Grams::parse("20000.1"),
            Err(NumberError::OutOfRange(_))
        ));
        assert_eq!(Grams::parse("20000").unwrap().tenths(), 200_000);
    }

    #[test]
    fn a_weight_typed_with_a_sign_for_thousands_is_never_taken_as_one_gram() {
        // The keeper of a 1,012 g bird saw 1.0 g and an alarm over a loss of 99.9 %.
        let refused = Err(NumberError::ThousandsOrDecimals);
        assert_eq!(Grams::parse("1,012"), refused);
        assert_eq!(Grams::parse(" 1.012 "), refused);
        assert_eq!(Grams::parse("20,000"), refused);
        assert_eq!(
            Millilitres::parse("1.500"),
            Err(NumberError::ThousandsOrDecimals)
        );
        // 20,001 g and 60,125 ml are out of range, 0,500 and 1012,500 group no thousands.
        assert_eq!(Grams::parse("20,001").unwrap().tenths(), 200);
        assert_eq!(Millilitres::parse("60.125").unwrap().tenths(), 601);
        assert_eq!(Grams::parse("0,500").unwrap().tenths(), 5);
        assert_eq!(Grams::parse("1012,500").unwrap().tenths(), 10_125);
        assert_eq!(Celsius::parse("40.125").unwrap().tenths(), 401);
        assert_eq!(Grams::parse_ounces("1.012").unwrap().tenths(), 287);
    }

    #[test]
    fn a_far_too_low_fahrenheit_reading_is_told_as_too_low() {
        let Err(NumberError::OutOfRange(error)) = Celsius::parse_fahrenheit("-999999999") else {
            panic!("taken");
        };
        assert!(error.value < i64::from(error.low));
    }

    #[test]
    fn a_fahrenheit_reading_lands_on_the_tenth_of_a_degree() {
        // (104 - 32) / 1.8 = 40.0; (110 - 32) / 1.8 = 43.33
        assert_eq!(Celsius::parse_fahrenheit("104").unwrap().tenths(), 400);
        assert_eq!(Celsius::parse_fahrenheit("110").unwrap().tenths(), 433);
        assert_eq!(Celsius::tenths_held(400).tenths_fahrenheit(), 1_040);
    }

    #[test]
    fn ounces_become_tenths_of_a_gram() {
        // 36 oz × 28.349523125 = 1020.58 g
        assert_eq!(Grams::parse_ounces("36").unwrap().tenths(), 10_206);
    }

    #[test]
    fn a_loss_is_a_positive_share_of_the_reference() {
        // (1040 - 1012) / 1040 = 2.692 %
        let loss = Grams::whole(1012)
            .since(Grams::whole(1040))
            .loss_pct_of(Grams::whole(1040))
            .unwrap();
        assert!((loss - 2.692_307).abs() < 1e-5);
        assert_eq!(
            Grams::whole(5)
                .since(Grams::whole(4))
                .loss_pct_of(Grams::whole(0)),
            None
        );
    }
}

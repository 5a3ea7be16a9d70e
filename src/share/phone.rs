//! Links that call someone.

use thiserror::Error;

/// The most digits of an international number. Source: ITU-T E.164, section 6.
const MOST_INTERNATIONAL_DIGITS: usize = 15;
/// The most digits of any other number, with a carrier's prefix before it. Ours.
const MOST_DIGITS: usize = 20;
/// The fewest digits: emergency numbers have three. Ours.
const FEWEST_DIGITS: usize = 3;

/// Why a text is not a number to call.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq)]
pub enum PhoneError {
    /// A character that is no digit, no usual separator and no leading plus.
    #[error("character {found:?} at byte {at} does not belong in a telephone number")]
    Character {
        /// Bytes before it.
        at: usize,
        /// The character.
        found: char,
    },
    /// Too few or too many digits.
    #[error("telephone number has {digits} digits, not {fewest} to {most}")]
    Digits {
        /// How many it has.
        digits: usize,
        /// The fewest allowed.
        fewest: usize,
        /// The most allowed.
        most: usize,
    },
}

/// The digits of a number as people write it, with its leading plus if it has one.
///
/// Spaces, hyphens, points, slashes and brackets are dropped. In a number with a plus, `(0)` is
/// dropped whole: many people write it for the zero that is dialled only within the country, and
/// kept it would ring someone else. Nothing else is guessed; letters, extensions and second
/// numbers are refused.
///
/// # Errors
/// [`PhoneError`].
///
/// # Examples
/// ```
/// assert_eq!(
///     perchlight::share::phone::number("+1 (555) 010-0199").as_deref(),
///     Ok("+15550100199"),
/// );
/// ```
///
/// Source: RFC 3966, section 3 (visual separators); ITU-T E.123 for `(0)`. `DIFFERENCE`: RFC 3966
/// wants a `phone-context` for numbers without a plus; telephones dial them as typed, from memory.
pub fn number(text: &str) -> Result<String, PhoneError> {
    let international = text.trim_start().starts_with('+');
    let mut cleaned = String::with_capacity(text.len());
    let mut skipped_until = 0;
    for (at, character) in text.char_indices() {
        let rest = text.get(at..).unwrap_or_default();
        if at < skipped_until {
            continue;
        }
        if international && rest.starts_with("(0)") {
            skipped_until = at + "(0)".len();
            continue;
        }
        match character {
            '0'..='9' => cleaned.push(character),
            '+' if cleaned.is_empty() && international => cleaned.push('+'),
            '-' | '.' | '/' | '(' | ')' | '\u{2010}' | '\u{2011}' | '\u{2013}' => {}
            space if space.is_whitespace() => {}
            found => return Err(PhoneError::Character { at, found }),
        }
    }
    let most = if international {
        MOST_INTERNATIONAL_DIGITS
    } else {
        MOST_DIGITS
    };
    let digits = cleaned.len() - usize::from(international);
    if digits < FEWEST_DIGITS || most < digits {
        return Err(PhoneError::Digits {
            digits,
            fewest: FEWEST_DIGITS,
            most,
        });
    }
    Ok(cleaned)
}

/// A link that calls the number, cleaned as by [`number`].
///
/// # Errors
/// [`PhoneError`].
///
/// Source: RFC 3966.
pub fn call_link(text: &str) -> Result<String, PhoneError> {
    Ok(format!("tel:{}", number(text)?))
}

#[cfg(test)]
mod tests {
    use crate::share::phone::{PhoneError, call_link, number};

    /// Numbers for fiction and examples: North America's 555-0100 to 0199, Britain's
    /// 01632 960000 to 960999, both from memory of the regulators' lists; RFC 3966 uses
    /// +1-201-555-0123.
    #[test]
    fn numbers_as_people_write_them_become_links() {
        let table = [
            ("+1-201-555-0123", "tel:+12015550123"),
            (" +44 (0)1632 960 961 ", "tel:+441632960961"),
            ("(01632) 960961", "tel:01632960961"),
            ("555.0100", "tel:5550100"),
            ("112", "tel:112"),
            ("+44\u{a0}1632\u{2011}960961", "tel:+441632960961"),
        ];
        for (written, link) in table {
            assert_eq!(call_link(written).as_deref(), Ok(link), "{written}");
        }
    }

    #[test]
    fn a_bracketed_zero_stays_in_a_number_without_plus() {
        assert_eq!(number("(0)1632 960961").as_deref(), Ok("01632960961"));
    }

    #[test]
    fn what_is_not_one_plain_number_is_refused() {
        let table = [
            ("555-0100 ext 7", 9, 'e'),
            ("5550100;phone-context=x", 7, ';'),
            ("1-800-PARROT", 6, 'P'),
            ("++15550100", 1, '+'),
            ("555+0100", 3, '+'),
            ("*31#5550100", 0, '*'),
            ("55\u{0665}0100", 2, '\u{0665}'),
            ("javascript:alert(1)", 0, 'j'),
        ];
        for (text, at, found) in table {
            let refused = Err(PhoneError::Character { at, found });
            assert_eq!(number(text), refused, "{text}");
        }
    }

    #[test]
    fn the_count_of_digits_is_kept_below_at_and_above_its_limits() {
        let digits = |text: &str| number(text).map(|cleaned| cleaned.len());
        let refused = |digits, most| {
            Err(PhoneError::Digits {
                digits,
                fewest: 3,
                most,
            })
        };
        assert_eq!(digits(""), refused(0, 20));
        assert_eq!(digits("11"), refused(2, 20));
        assert_eq!(digits("+"), refused(0, 15));
        assert_eq!(digits("+123456789012345"), Ok(16));
        assert_eq!(digits("+1234567890123456"), refused(16, 15));
        assert_eq!(digits(&"1".repeat(20)), Ok(20));
        assert_eq!(digits(&"1".repeat(21)), refused(21, 20));
    }
}

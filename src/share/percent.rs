//! Text within a link: percent-encoding.

use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, percent_decode_str, utf8_percent_encode};
use thiserror::Error;

/// Why a percent-encoded text cannot be read.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq)]
pub enum PercentError {
    /// A percent sign without two hexadecimal digits after it.
    #[error("percent sign at byte {at} has no two hexadecimal digits after it")]
    Escape {
        /// Bytes before the percent sign.
        at: usize,
    },
    /// The bytes written are not UTF-8.
    #[error("percent-encoded bytes are not utf-8 from byte {at} of the decoded text on")]
    NotUtf8 {
        /// Decoded bytes that are sound.
        at: usize,
    },
}

/// Every byte but the unreserved ones: letters, digits, `-`, `.`, `_` and `~`.
const RESERVED: &AsciiSet = &NON_ALPHANUMERIC
    .remove(b'-')
    .remove(b'.')
    .remove(b'_')
    .remove(b'~');

/// Text with every byte escaped that RFC 3986 does not call unreserved.
///
/// # Examples
/// ```
/// assert_eq!(perchlight::share::percent::encode("40 °C"), "40%20%C2%B0C");
/// ```
///
/// Source: RFC 3986, sections 2.1 and 2.3.
pub fn encode(text: &str) -> String {
    utf8_percent_encode(text, RESERVED).to_string()
}

/// The text that [`encode`] wrote.
///
/// Characters that need no escape to be understood are taken as they stand, since browsers and
/// messengers undo some escapes. `+` is a plus sign, not a space.
///
/// # Errors
/// [`PercentError::Escape`] for a broken escape, [`PercentError::NotUtf8`] when the bytes are not
/// text.
///
/// # Examples
/// ```
/// use perchlight::share::percent::{PercentError, decode};
///
/// assert_eq!(decode("40%20%c2%b0C").as_deref(), Ok("40 °C"));
/// assert_eq!(decode("100%"), Err(PercentError::Escape { at: 3 }));
/// ```
///
/// Source: RFC 3986, section 2.1 (either case of hexadecimal digits is read).
pub fn decode(text: &str) -> Result<String, PercentError> {
    let mut pieces = text.split('%');
    let mut at = pieces.next().map_or(0, str::len);
    for piece in pieces {
        let digits = piece.bytes().take(2).filter(u8::is_ascii_hexdigit).count();
        if digits < 2 {
            return Err(PercentError::Escape { at });
        }
        at += 1 + piece.len();
    }
    match percent_decode_str(text).decode_utf8() {
        Ok(decoded) => Ok(decoded.into_owned()),
        Err(error) => Err(PercentError::NotUtf8 {
            at: error.valid_up_to(),
        }),
    }
}

#[cfg(test)]
mod tests {
    use crate::share::percent::{PercentError, decode};

    #[test]
    fn a_broken_escape_is_told_with_its_place() {
        for (text, at) in [("%", 0), ("a%2", 1), ("%41%4g", 3), ("%%41", 0), ("é%é", 2)] {
            assert_eq!(decode(text), Err(PercentError::Escape { at }), "{text}");
        }
    }

    #[test]
    fn bytes_that_are_no_text_are_refused() {
        assert_eq!(decode("a%FF"), Err(PercentError::NotUtf8 { at: 1 }));
    }
}

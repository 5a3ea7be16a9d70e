//! Bytes as letters, digits, `-` and `_`, which pass through a link unchanged.

use base64::{DecodeError, Engine, engine::general_purpose::URL_SAFE_NO_PAD};
use thiserror::Error;

/// Why a text is not base64url; places are bytes from the start of the text, the first being 0.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq)]
pub enum Base64UrlError {
    /// A character that is not in the alphabet; padding and white space count as such.
    #[error("character {found:?} at byte {at} is not base64url")]
    Character {
        /// Where it stands.
        at: usize,
        /// The character.
        found: char,
    },
    /// The last group has one character, which cannot hold a byte: something was cut off.
    #[error("base64url of {length} characters ends within a byte")]
    Length {
        /// Characters in the text.
        length: usize,
    },
    /// The last character carries bits that belong to no byte, so another text means the same.
    #[error("the last base64url character, at byte {at}, has bits left over")]
    BitsLeftOver {
        /// Where it stands.
        at: usize,
    },
}

/// Bytes as base64url without padding.
///
/// # Examples
/// ```
/// assert_eq!(perchlight::share::base64url::encode(&[3, 236, 255, 224, 193]), "A-z_4ME");
/// ```
///
/// Source: RFC 4648, section 5; the example is RFC 7515, appendix C.
pub fn encode(bytes: &[u8]) -> String {
    URL_SAFE_NO_PAD.encode(bytes)
}

/// The bytes that [`encode`] wrote; the only text for those bytes.
///
/// # Errors
/// [`Base64UrlError`], with the place, for any text that [`encode`] does not write.
///
/// # Examples
/// ```
/// use perchlight::share::base64url::{Base64UrlError, decode};
///
/// assert_eq!(decode("Zm9v"), Ok(b"foo".to_vec()));
/// assert_eq!(decode("Zm v"), Err(Base64UrlError::Character { at: 2, found: ' ' }));
/// ```
///
/// Source: RFC 4648, sections 3.2, 3.3, 3.5 and 5.
pub fn decode(text: &str) -> Result<Vec<u8>, Base64UrlError> {
    URL_SAFE_NO_PAD
        .decode(text)
        .map_err(|error| refusal(text, &error))
}

fn refusal(text: &str, error: &DecodeError) -> Base64UrlError {
    let stranger = text
        .char_indices()
        .find(|(_, c)| !(c.is_ascii_alphanumeric() || *c == '-' || *c == '_'));
    if let Some((at, found)) = stranger {
        return Base64UrlError::Character { at, found };
    }
    match error {
        DecodeError::InvalidLastSymbol(at, _) => Base64UrlError::BitsLeftOver { at: *at },
        DecodeError::InvalidLength(_)
        | DecodeError::InvalidByte(_, _)
        | DecodeError::InvalidPadding => Base64UrlError::Length { length: text.len() },
    }
}

#[cfg(test)]
mod tests {
    use crate::share::base64url::{Base64UrlError, decode};

    #[test]
    fn each_kind_of_damage_is_told_with_its_place() {
        let character = |at, found| Err(Base64UrlError::Character { at, found });
        assert_eq!(decode("ab+/"), character(2, '+'));
        assert_eq!(decode("Zg=="), character(2, '='));
        assert_eq!(decode("Zm9v\n"), character(4, '\n'));
        assert_eq!(decode("Zm9é"), character(3, 'é'));
        assert_eq!(decode("abcde"), Err(Base64UrlError::Length { length: 5 }));
        // The two letters that only this alphabet has are no strangers: Z is 25, h is 33, B is 1.
        for (text, at) in [("Zm9vZh", 5), ("-B", 1), ("_B", 1)] {
            assert_eq!(decode(text), Err(Base64UrlError::BitsLeftOver { at }));
        }
    }
}

//! One line for one entry, with a checksum and its length, so that damage is seen.
//!
//! `<CRC-32 of the payload, 8 lower-case hexadecimal digits>|<length in bytes>|<payload>`. The payload
//! holds no line break, so lines can stand below each other in one text.

use thiserror::Error;

use crate::checksum::crc32;

/// A line taken apart, found whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Record<'line> {
    /// CRC-32 of the payload.
    pub checksum: u32,
    /// The text of the entry.
    pub payload: &'line str,
}

/// Why a line is not a whole record.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum RecordError {
    /// It does not have the three parts.
    #[error("the line of {length} bytes is not checksum, length and payload")]
    Shape {
        /// Bytes of the line.
        length: usize,
    },
    /// It is shorter or longer than it says.
    #[error("the payload has {found} bytes but says {said:?}")]
    Length {
        /// The length as written.
        said: String,
        /// Bytes found.
        found: usize,
    },
    /// Its content was changed.
    #[error("the payload's checksum is {found} but says {said:?}")]
    Checksum {
        /// The checksum as written.
        said: String,
        /// The checksum found.
        found: String,
    },
}

/// The line for `payload`, which must hold no line break.
///
/// # Examples
/// ```
/// use perchlight::store::record;
/// // 0xCBF43926 is the published check value of these nine digits.
/// assert_eq!(record::encode("123456789"), "cbf43926|9|123456789");
/// assert_eq!(record::decode("cbf43926|9|123456789").unwrap().payload, "123456789");
/// ```
pub fn encode(payload: &str) -> String {
    format!(
        "{}|{}|{payload}",
        checksum_text(crc32(payload.as_bytes())),
        payload.len()
    )
}

/// The parts of a line.
///
/// # Errors
/// [`RecordError`] when a single bit differs from what [`encode`] writes.
pub fn decode(line: &str) -> Result<Record<'_>, RecordError> {
    let record = split(line)?;
    let found = crc32(record.payload.as_bytes());
    if record.checksum != found {
        return Err(RecordError::Checksum {
            said: checksum_text(record.checksum),
            found: checksum_text(found),
        });
    }
    Ok(record)
}

/// The parts of a line of which it is known that no bit differs: it stands in a text whose own checksum
/// was found right. The payload's is not worked out again.
///
/// # Errors
/// [`RecordError::Shape`] or [`RecordError::Length`].
pub fn split(line: &str) -> Result<Record<'_>, RecordError> {
    let shape = || RecordError::Shape { length: line.len() };
    let (said_sum, rest) = line.split_once('|').ok_or_else(shape)?;
    let (said_length, payload) = rest.split_once('|').ok_or_else(shape)?;
    // As text, since "+7" and "07" are damage too.
    if said_length != payload.len().to_string() {
        return Err(RecordError::Length {
            said: said_length.to_owned(),
            found: payload.len(),
        });
    }
    let checksum = checksum_from_text(said_sum).ok_or_else(shape)?;
    Ok(Record { checksum, payload })
}

/// The checksum of eight lower-case hexadecimal digits; `None` for any other text.
pub fn checksum_from_text(text: &str) -> Option<u32> {
    let is_digit = |byte: u8| byte.is_ascii_digit() || (b'a'..=b'f').contains(&byte);
    if text.len() != 8 || !text.bytes().all(is_digit) {
        return None;
    }
    u32::from_str_radix(text, 16).ok()
}

/// A checksum as it stands in lines and keys.
pub fn checksum_text(checksum: u32) -> String {
    format!("{checksum:08x}")
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use crate::store::record::{decode, encode};

    #[test]
    fn every_flipped_bit_of_a_line_is_seen() {
        let line = encode(r#"{"v":1,"did":"weighed","g10":10120}"#);
        for bit in 0..line.len() * 8 {
            let mut bytes = line.clone().into_bytes();
            bytes[bit / 8] ^= 1 << (bit % 8);
            let flipped = String::from_utf8_lossy(&bytes);
            assert!(decode(&flipped).is_err(), "bit {bit}: {flipped}");
        }
    }

    #[test]
    fn every_shortened_line_is_seen() {
        let line = encode(r#"{"v":1,"did":"arrived"}"#);
        for length in 0..line.len() {
            assert!(decode(&line[..length]).is_err(), "{length} bytes");
        }
        assert!(decode(&format!("{line} ")).is_err());
    }

    proptest! {
        #[test]
        fn a_line_gives_its_payload_back(payload in "[^\n]{0,200}") {
            let line = encode(&payload);
            prop_assert_eq!(decode(&line).unwrap().payload, payload);
        }

        #[test]
        fn any_text_is_answered_without_panic(text in ".*") {
            if let Ok(record) = decode(&text) {
                prop_assert_eq!(encode(record.payload), text);
            }
        }
    }
}

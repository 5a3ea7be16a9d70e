//! Ids as text: 12 bytes in 16 letters of base64url.
//!
//! By hand and not by the crate that links use: every start needs it, and the crate is 4.9 kB.

/// The letters of base64url for 6 bits each. Source: RFC 4648, table 2.
const ALPHABET: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// The 6 bits of a letter of base64url: the table the other way round, by its runs.
fn sextet(letter: u8) -> Option<u32> {
    let number = match letter {
        b'A'..=b'Z' => letter - b'A',
        b'a'..=b'z' => letter - b'a' + 26,
        b'0'..=b'9' => letter - b'0' + 52,
        b'-' => 62,
        b'_' => 63,
        _ => return None,
    };
    Some(number.into())
}

/// An id as 16 characters of base64url (RFC 4648, section 5): 96 bits, 6 a character, no padding.
///
/// # Examples
/// ```
/// use perchlight::store::id_text::{id_from_text, id_to_text};
/// // RFC 4648, section 10: "foobar" is "Zm9vYmFy".
/// assert_eq!(id_to_text(*b"foobarfoobar"), "Zm9vYmFyZm9vYmFy");
/// assert_eq!(id_from_text("Zm9vYmFyZm9vYmFy"), Some(*b"foobarfoobar"));
/// assert_eq!(id_from_text("Zm9vYmFyZm9vYmF"), None);
/// ```
pub fn id_to_text(id: [u8; 12]) -> String {
    let mut text = String::with_capacity(16);
    for three in id.chunks(3) {
        let bits = three
            .iter()
            .fold(0_u32, |bits, byte| (bits << 8) | u32::from(*byte));
        for place in [18, 12, 6, 0] {
            let letter = usize::try_from((bits >> place) & 63).unwrap_or_default();
            text.extend(ALPHABET.get(letter).map(|byte| char::from(*byte)));
        }
    }
    text
}

/// The id of 16 characters of base64url; `None` for any other text.
pub fn id_from_text(text: &str) -> Option<[u8; 12]> {
    if text.len() != 16 {
        return None;
    }
    let mut id = [0; 12];
    for (three, letters) in id.chunks_mut(3).zip(text.as_bytes().chunks(4)) {
        let mut bits = 0_u32;
        for letter in letters {
            bits = (bits << 6) | sextet(*letter)?;
        }
        let [_, bytes @ ..] = bits.to_be_bytes();
        three.copy_from_slice(&bytes);
    }
    Some(id)
}

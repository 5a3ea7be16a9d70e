//! A backup with photos as one text, a line each: the mark, the entries as in a backup, then the pictures.
//!
//! Read line by line, since hundreds of pictures are more than a phone has room for at once. Whether a picture
//! is that of its hash is for whoever keeps it to see: the browser computes SHA-256.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;

use crate::domain::journal::photo::{MOST_PHOTO_BYTES, PhotoHash};

/// The first line.
pub const MARK: &str = "perchlight-photos 1";

/// Most bytes of a picture's line: 64 digits, a space, and base64 of the largest picture.
pub const MOST_LINE: usize = 64 + 1 + 200_000_usize.div_ceil(3) * 4;

/// The lines before the pictures; `entries` is the text of a backup, which holds no line break.
pub fn head(entries: &str) -> String {
    format!("{MARK}\n{entries}\n")
}

/// The line of a picture: its hash and its bytes in base64 (RFC 4648, section 4).
///
/// # Examples
/// ```
/// use perchlight::domain::journal::photo::PhotoHash;
/// use perchlight::share::photo_file::{picture_line, read_picture_line};
/// // RFC 4648, section 10: "foobar" is "Zm9vYmFy".
/// let line = picture_line(PhotoHash([0x1f; 32]), b"foobar");
/// assert_eq!(line, format!("{} Zm9vYmFy\n", "1f".repeat(32)));
/// assert_eq!(read_picture_line(&line), Some((PhotoHash([0x1f; 32]), b"foobar".to_vec())));
/// ```
pub fn picture_line(hash: PhotoHash, picture: &[u8]) -> String {
    format!("{} {}\n", hash.to_hex(), STANDARD.encode(picture))
}

/// The hash and the bytes of a line; `None` for any other line, a damaged one or one too long.
pub fn read_picture_line(line: &str) -> Option<(PhotoHash, Vec<u8>)> {
    let line = line.trim_end_matches(['\r', '\n']);
    if line.len() > MOST_LINE {
        return None;
    }
    let (hash, picture) = line.split_once(' ')?;
    let (hash, picture) = (PhotoHash::from_hex(hash)?, STANDARD.decode(picture).ok()?);
    let bytes = u32::try_from(picture.len()).ok()?;
    (1..=MOST_PHOTO_BYTES)
        .contains(&bytes)
        .then_some((hash, picture))
}

/// Whether a picture is a JPEG by its first bytes: ISO/IEC 10918-1, table B.1, SOI and the next marker.
pub fn is_jpeg(picture: &[u8]) -> bool {
    picture.starts_with(&[0xff, 0xd8, 0xff])
}

/// Lines of a text that comes in pieces.
#[derive(Debug, Default)]
pub struct Lines {
    rest: Vec<u8>,
}

impl Lines {
    /// The whole lines that end with these bytes, without their line breaks.
    ///
    /// A line that is no text, or longer than `most` bytes, comes as an empty one, so that its place is known.
    pub fn push(&mut self, bytes: &[u8], most: usize) -> Vec<String> {
        let mut lines = Vec::new();
        for part in bytes.split_inclusive(|byte| *byte == b'\n') {
            // One byte above the most tells that it is too long; no more is held.
            let room = (most + 2).saturating_sub(self.rest.len());
            self.rest.extend(part.iter().take(room));
            if part.ends_with(b"\n") {
                lines.push(self.taken(most));
            }
        }
        lines
    }

    /// What comes after the last line break; `None` for nothing.
    pub fn finish(mut self, most: usize) -> Option<String> {
        (!self.rest.is_empty()).then(|| self.taken(most))
    }

    fn taken(&mut self, most: usize) -> String {
        let line = String::from_utf8(std::mem::take(&mut self.rest)).unwrap_or_default();
        let line = line.trim_end_matches(['\r', '\n']);
        if line.len() > most {
            String::new()
        } else {
            line.to_owned()
        }
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use crate::share::photo_file::*;

    #[test]
    fn a_damaged_a_huge_and_an_empty_picture_are_refused() {
        let hash = "ab".repeat(32);
        for line in [
            String::new(),
            hash.clone(),
            format!("{hash} "),
            format!("{hash} Zm9vYmF"),
            format!("{hash} Zm9v!mFy"),
            format!("{} Zm9vYmFy", &hash[2..]),
            picture_line(PhotoHash([1; 32]), &vec![0; 200_001]),
        ] {
            assert_eq!(read_picture_line(&line), None, "{line:.80}");
        }
        let largest = vec![7; 200_000];
        let line = picture_line(PhotoHash([1; 32]), &largest);
        assert!(line.len() <= MOST_LINE + 1);
        assert_eq!(
            read_picture_line(&line),
            Some((PhotoHash([1; 32]), largest))
        );
    }

    proptest! {
        #[test]
        fn lines_are_the_same_in_whatever_pieces_they_come(
            lines in prop::collection::vec("[a-z]{0,12}", 1..6),
            cut in 1..9_usize,
        ) {
            let text = lines.join("\n");
            let mut reader = Lines::default();
            let mut read: Vec<String> = Vec::new();
            for piece in text.as_bytes().chunks(cut) {
                read.extend(reader.push(piece, 100));
            }
            read.extend(reader.finish(100));
            // A last line that is empty cannot be told from none.
            let mut expected = lines;
            if expected.last().is_some_and(String::is_empty) {
                expected.pop();
            }
            prop_assert_eq!(read, expected);
        }

        #[test]
        fn a_line_too_long_is_an_empty_one_in_its_place(before in "[a-z]{1,5}", length in 11..90_usize) {
            let text = format!("{before}\n{}\nend\n", "x".repeat(length));
            let mut reader = Lines::default();
            let read = reader.push(text.as_bytes(), 10);
            prop_assert_eq!(read, vec![before, String::new(), "end".to_owned()]);
        }
    }
}

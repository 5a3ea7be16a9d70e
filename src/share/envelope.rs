//! The envelope of a link: a prefix that says what it is, and bytes that say whether they are whole.
//!
//! Text: `pl`, the version, a letter for the kind, a point, then the bytes as base64url; or `q` for
//! the kind and the bytes as digits, for QR codes. Bytes: version, kind, length of the content, the
//! content, CRC-32 of all before it, lowest byte first. This part stays the same in every version,
//! so that an older build can tell a newer link from a damaged one.

use crate::checksum::crc32;
use crate::share::varint::{ByteReader, ByteWriter};
use crate::share::{base64url, digits};
use crate::store::import_error::ImportError;

/// The version of links that this build writes and reads.
pub(crate) const VERSION: u8 = 1;
/// Most bytes of content taken. Ours: three weeks of records many times over.
pub(crate) const MOST_BYTES: usize = 64 << 10;
/// The letter for bytes written as digits, whatever kind they hold.
const DIGITS: char = 'q';

/// What a link holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    /// A handover card.
    Card,
    /// The parts of a handover card that fit into a QR code.
    ShortCard,
    /// Entries of a journal.
    Entries,
}

impl Kind {
    const ALL: [Self; 3] = [Self::Card, Self::ShortCard, Self::Entries];

    const fn letter(self) -> char {
        match self {
            Self::Card => 'c',
            Self::ShortCard => 's',
            Self::Entries => 'e',
        }
    }

    const fn code(self) -> u8 {
        match self {
            Self::Card => 1,
            Self::ShortCard => 4,
            Self::Entries => 3,
        }
    }
}

/// Content as the text that follows `#` in a link.
pub(crate) fn seal(kind: Kind, content: &[u8]) -> String {
    let text = base64url::encode(&sealed(kind, content));
    format!("pl{VERSION}{}.{text}", kind.letter())
}

/// Bytes that content takes in its envelope.
pub(crate) fn sealed_bytes(kind: Kind, content: &[u8]) -> usize {
    sealed(kind, content).len()
}

/// Content as digits, for the end of a QR code's text.
pub(crate) fn seal_as_digits(kind: Kind, content: &[u8]) -> String {
    let text = digits::encode(&sealed(kind, content));
    format!("pl{VERSION}{DIGITS}.{text}")
}

fn sealed(kind: Kind, content: &[u8]) -> Vec<u8> {
    let mut writer = ByteWriter::default();
    writer.raw(&[VERSION, kind.code()]);
    writer.count(content.len());
    writer.raw(content);
    let mut bytes = writer.finish();
    let sum = crc32(&bytes);
    bytes.extend(sum.to_le_bytes());
    bytes
}

/// The kind and content of the first link in a text; `None` when there is none.
///
/// White space within the link is passed over, as messengers break long lines, and so is what mail
/// programs put into a text that is answered or forwarded; words after the link do not matter.
pub(crate) fn open(text: &str) -> Option<Result<(Kind, Vec<u8>), ImportError>> {
    let text = without_marks(text);
    let mut prefixes = prefixes(&text);
    prefixes.next().map(|(_, prefix)| prefix.open())
}

/// The text of each link in a text, from its beginning up to the next one.
pub(crate) fn each(text: &str) -> Vec<&str> {
    let starts: Vec<usize> = prefixes(text).map(|(at, _)| at).collect();
    let ends = starts.iter().copied().skip(1).chain([text.len()]);
    let links = starts.iter().zip(ends);
    links
        .filter_map(|(start, end)| text.get(*start..end))
        .collect()
}

/// Where links begin, and with what.
fn prefixes(text: &str) -> impl Iterator<Item = (usize, Prefix<'_>)> {
    text.match_indices("pl").filter_map(|(at, _)| {
        let (before, rest) = text.split_at_checked(at)?;
        let is_start = before
            .chars()
            .next_back()
            .is_none_or(|before| !before.is_ascii_alphanumeric());
        let found = Prefix::read(rest)?;
        is_start.then_some((at, found))
    })
}

/// A text without the marks of mail programs and messengers: `>` before a line, `=` at its end, and
/// characters that are not seen.
///
/// Source: RFC 3676, 4.5 (quoted lines); RFC 2045, 6.7 (soft line breaks).
fn without_marks(text: &str) -> String {
    let mut bare = String::with_capacity(text.len());
    for line in text.lines() {
        let line = line.trim_start_matches(|c: char| c == '>' || c.is_whitespace());
        let line = line.trim_end();
        let line = line.strip_suffix('=').unwrap_or(line);
        bare.extend(line.chars().filter(|c| !is_unseen(*c)));
        bare.push('\n');
    }
    bare
}

/// Whether a character only says where a word may be broken or in which direction it is read.
const fn is_unseen(character: char) -> bool {
    matches!(character,
        '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{2069}' | '\u{feff}')
}

struct Prefix<'a> {
    version: u32,
    letter: char,
    rest: &'a str,
}

impl<'a> Prefix<'a> {
    fn read(text: &'a str) -> Option<Self> {
        // No further than the longest prefix, which may be broken into lines: a text may hold many
        // beginnings.
        let point = text.bytes().take(12).position(|byte| byte == b'.')?;
        let (head, rest) = (text.get(..point)?, text.get(point + 1..)?);
        let head = head.replace('\n', "");
        let head = head.strip_prefix("pl")?;
        let letter = head.chars().next_back().filter(char::is_ascii_lowercase)?;
        let number = head.strip_suffix(letter)?;
        let is_number = number.bytes().all(|byte| byte.is_ascii_digit());
        let version = number.parse().ok().filter(|_| is_number)?;
        Some(Self {
            version,
            letter,
            rest,
        })
    }

    fn open(&self) -> Result<(Kind, Vec<u8>), ImportError> {
        if self.version > u32::from(VERSION) {
            let version = self.version;
            return Err(ImportError::Newer { version });
        }
        let kind = Kind::ALL
            .into_iter()
            .find(|kind| kind.letter() == self.letter);
        if kind.is_none() && self.letter != DIGITS {
            return Err(ImportError::WrongKind);
        }
        let form = kind.map_or(Form::Digits, |_| Form::Base64Url);
        let bytes = self.bytes(form)?;
        unsealed(kind, &bytes)
    }

    /// The bytes of the text that follows: as many characters as their own length asks for.
    fn bytes(&self, form: Form) -> Result<Vec<u8>, ImportError> {
        let mut text = String::new();
        let mut whole = None;
        for byte in self.rest.bytes() {
            if byte.is_ascii_whitespace() {
                if whole == Some(text.len()) {
                    break;
                }
                continue;
            }
            if !form.has(byte) {
                break;
            }
            text.push(char::from(byte));
            if whole.is_some_and(|whole| text.len() > whole) {
                return Err(ImportError::Damaged);
            }
            if text.len() == form.characters_for(HEAD_BYTES) {
                let head = Head::of(&form.decode(&text)?)?;
                whole = Some(form.characters_for(head.whole()));
            }
        }
        if whole == Some(text.len()) {
            form.decode(&text)
        } else {
            Err(ImportError::Truncated)
        }
    }
}

/// How bytes are written as text.
#[derive(Clone, Copy)]
enum Form {
    Base64Url,
    Digits,
}

impl Form {
    const fn has(self, byte: u8) -> bool {
        match self {
            Self::Base64Url => byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'_'),
            Self::Digits => byte.is_ascii_digit(),
        }
    }

    /// Characters that so many bytes take.
    const fn characters_for(self, bytes: usize) -> usize {
        match self {
            // Six bits a character.
            Self::Base64Url => bytes.saturating_mul(4).div_ceil(3),
            // Two bytes in five digits, a last one in three.
            Self::Digits => bytes / 2 * 5 + bytes % 2 * 3,
        }
    }

    fn decode(self, text: &str) -> Result<Vec<u8>, ImportError> {
        match self {
            Self::Base64Url => base64url::decode(text).or(Err(ImportError::Damaged)),
            Self::Digits => digits::decode(text).or(Err(ImportError::Damaged)),
        }
    }
}

/// Enough bytes to know the length of the content: version, kind and a length of up to three bytes,
/// filled up to whole groups of either form.
const HEAD_BYTES: usize = 6;
/// Bytes of the check sum.
const SUM_BYTES: usize = 4;

/// What the first bytes announce.
struct Head {
    version: u8,
    kind: u8,
    bytes: usize,
    content: usize,
}

impl Head {
    fn of(bytes: &[u8]) -> Result<Self, ImportError> {
        let mut reader = ByteReader::new(bytes);
        let mut byte = || reader.raw(1).ok()?.first().copied();
        let (Some(version), Some(kind)) = (byte(), byte()) else {
            return Err(ImportError::Truncated);
        };
        let length = reader
            .unsigned(0..=u32::MAX)
            .or(Err(ImportError::Damaged))?;
        let content = usize::try_from(length).unwrap_or(usize::MAX);
        if content > MOST_BYTES {
            return Err(ImportError::TooLarge);
        }
        let mut head = ByteWriter::default();
        head.unsigned(length);
        Ok(Self {
            version,
            kind,
            bytes: 2 + head.finish().len(),
            content,
        })
    }

    const fn whole(&self) -> usize {
        self.bytes + self.content + SUM_BYTES
    }
}

fn unsealed(kind: Option<Kind>, bytes: &[u8]) -> Result<(Kind, Vec<u8>), ImportError> {
    let head = Head::of(bytes)?;
    let (summed, sum) = bytes.split_last_chunk().ok_or(ImportError::Truncated)?;
    if bytes.len() != head.whole() || crc32(summed) != u32::from_le_bytes(*sum) {
        return Err(ImportError::Damaged);
    }
    if head.version > VERSION {
        let version = u32::from(head.version);
        return Err(ImportError::Newer { version });
    }
    let found = Kind::ALL.into_iter().find(|any| any.code() == head.kind);
    let found = found.filter(|found| kind.is_none_or(|kind| kind == *found));
    let content = summed.get(head.bytes..).unwrap_or_default();
    Ok((found.ok_or(ImportError::WrongKind)?, content.to_vec()))
}

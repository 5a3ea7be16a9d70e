//! Numbers and text as few bytes, and back from bytes that nobody vouches for.
//!
//! **Invariants.** What [`ByteWriter`] writes is the only form of those values that [`ByteReader`]
//! takes, so writing what was read gives the same bytes. The reader never panics, never takes
//! memory for more than the bytes at hand, and says what is wrong and where.
//!
//! Our own: the codecs at hand also read longer forms of a number, so one content could have
//! two check sums.

use std::ops::RangeInclusive;

use thiserror::Error;

/// Why bytes cannot be read, or a text not written; `at` is in bytes from the start.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
pub enum BytesError {
    /// The bytes stop before the value is whole.
    #[error("bytes end at {at}, {missing} or more are missing")]
    Ended {
        /// Where the value that is not whole begins.
        at: usize,
        /// The least that is missing, bytes.
        missing: usize,
    },
    /// A number that needs more than 64 bits.
    #[error("number at byte {at} is over 64 bits")]
    Over64Bits {
        /// Where it begins.
        at: usize,
    },
    /// A number written longer than needed.
    #[error("number at byte {at} is not in its shortest form")]
    NotShortest {
        /// Where it begins.
        at: usize,
    },
    /// A number without sign outside what the place allows.
    #[error("number {value} at byte {at} is outside {least} to {most}")]
    UnsignedRange {
        /// Where it begins.
        at: usize,
        /// What it says.
        value: u64,
        /// The least allowed.
        least: u64,
        /// The most allowed.
        most: u64,
    },
    /// A number with sign outside what the place allows.
    #[error("number {value} at byte {at} is outside {least} to {most}")]
    SignedRange {
        /// Where it begins.
        at: usize,
        /// What it says.
        value: i64,
        /// The least allowed.
        least: i64,
        /// The most allowed.
        most: i64,
    },
    /// A count of items beyond what the place allows or the bytes at hand could hold.
    #[error("count {count} at byte {at} is over {most}")]
    Count {
        /// Where it begins.
        at: usize,
        /// What it says.
        count: u64,
        /// The most allowed, or the bytes that follow if they are fewer.
        most: usize,
    },
    /// A text longer than the place allows.
    #[error("text of {length} bytes at byte {at} is over {most}")]
    TextLength {
        /// Where its length stands.
        at: usize,
        /// Its length, bytes of UTF-8.
        length: u64,
        /// The most allowed, bytes.
        most: usize,
    },
    /// A text that is not UTF-8.
    #[error("text at byte {at} is not utf-8")]
    NotUtf8 {
        /// Where its first unsound byte stands.
        at: usize,
    },
    /// Bytes after the last value.
    #[error("{count} bytes follow the end at byte {at}")]
    LeftOver {
        /// Where they begin.
        at: usize,
        /// How many there are.
        count: usize,
    },
}

/// Writes values one after the other.
///
/// # Examples
/// ```
/// use perchlight::share::varint::{ByteReader, ByteWriter};
///
/// let mut writer = ByteWriter::default();
/// writer.unsigned(300_u32);
/// writer.signed(-2);
/// writer.text("Pip", 40)?;
/// let bytes = writer.finish();
/// assert_eq!(bytes, [0xAC, 0x02, 0x03, 3, b'P', b'i', b'p']);
///
/// let mut reader = ByteReader::new(&bytes);
/// assert_eq!(reader.unsigned(0..=1000_u32)?, 300);
/// assert_eq!(reader.signed(-9..=9)?, -2);
/// assert_eq!(reader.text(40)?, "Pip");
/// reader.finish()?;
/// # Ok::<(), perchlight::share::varint::BytesError>(())
/// ```
///
/// By hand: 300 = 2 × 128 + 44, and 44 + 0x80 = 0xAC. A sign goes to the lowest bit, so that 0,
/// -1, 1, -2 become 0, 1, 2, 3.
///
/// Source: DWARF 5, section 7.6, "Variable Length Data" (unsigned LEB128).
#[derive(Clone, Debug, Default)]
pub struct ByteWriter {
    bytes: Vec<u8>,
}

impl ByteWriter {
    /// A whole number without sign, seven bits a byte, lowest first.
    pub fn unsigned(&mut self, value: impl Into<u64>) {
        let mut rest: u64 = value.into();
        loop {
            let [lowest, ..] = rest.to_le_bytes();
            rest >>= 7;
            if rest == 0 {
                self.bytes.push(lowest & 0x7F);
                return;
            }
            self.bytes.push(lowest | 0x80);
        }
    }

    /// A whole number with sign; those near zero take the fewest bytes.
    pub fn signed(&mut self, value: impl Into<i64>) {
        let value: i64 = value.into();
        self.unsigned(((value << 1) ^ (value >> 63)).cast_unsigned());
    }

    /// A text with its length before it.
    ///
    /// # Errors
    /// [`BytesError::TextLength`] when it is over `most` bytes of UTF-8; nothing is written then.
    pub fn text(&mut self, text: &str, most: usize) -> Result<(), BytesError> {
        let length = wide(text.len());
        if text.len() > most {
            let at = self.bytes.len();
            return Err(BytesError::TextLength { at, length, most });
        }
        self.unsigned(length);
        self.bytes.extend_from_slice(text.as_bytes());
        Ok(())
    }

    /// How many items follow.
    pub fn count(&mut self, count: usize) {
        self.unsigned(wide(count));
    }

    /// Bytes as they are, without their length.
    pub fn raw(&mut self, bytes: &[u8]) {
        self.bytes.extend_from_slice(bytes);
    }

    /// All that was written.
    pub fn finish(self) -> Vec<u8> {
        self.bytes
    }
}

/// Reads what [`ByteWriter`] wrote, one value after the other; for bytes from anywhere.
#[derive(Clone, Debug)]
pub struct ByteReader<'a> {
    rest: &'a [u8],
    at: usize,
}

impl<'a> ByteReader<'a> {
    /// Starts at the first byte.
    pub fn new(bytes: &'a [u8]) -> Self {
        ByteReader { rest: bytes, at: 0 }
    }

    /// A whole number without sign within `range`.
    ///
    /// # Errors
    /// [`BytesError::Ended`], [`BytesError::Over64Bits`], [`BytesError::NotShortest`] or
    /// [`BytesError::UnsignedRange`].
    pub fn unsigned<T>(&mut self, range: RangeInclusive<T>) -> Result<T, BytesError>
    where
        T: Copy + Into<u64> + TryFrom<u64>,
    {
        let at = self.at;
        let (least, most) = ((*range.start()).into(), (*range.end()).into());
        let value = self.number()?;
        let outside = BytesError::UnsignedRange {
            at,
            value,
            least,
            most,
        };
        if value < least || most < value {
            return Err(outside);
        }
        T::try_from(value).ok().ok_or(outside)
    }

    /// A whole number with sign within `range`.
    ///
    /// # Errors
    /// [`BytesError::Ended`], [`BytesError::Over64Bits`], [`BytesError::NotShortest`] or
    /// [`BytesError::SignedRange`].
    pub fn signed<T>(&mut self, range: RangeInclusive<T>) -> Result<T, BytesError>
    where
        T: Copy + Into<i64> + TryFrom<i64>,
    {
        let at = self.at;
        let (least, most) = ((*range.start()).into(), (*range.end()).into());
        let folded = self.number()?;
        let value = (folded >> 1).cast_signed() ^ -(folded & 1).cast_signed();
        let outside = BytesError::SignedRange {
            at,
            value,
            least,
            most,
        };
        if value < least || most < value {
            return Err(outside);
        }
        T::try_from(value).ok().ok_or(outside)
    }

    /// How many items follow, at most `most` and at most one for each byte left: an item takes
    /// a byte or more, so a short text cannot ask for much memory.
    ///
    /// # Errors
    /// As [`ByteReader::unsigned`], with [`BytesError::Count`] for the range.
    pub fn count(&mut self, most: usize) -> Result<usize, BytesError> {
        let at = self.at;
        let count = self.number()?;
        let most = most.min(self.rest.len());
        match usize::try_from(count) {
            Ok(items) if items <= most => Ok(items),
            _ => Err(BytesError::Count { at, count, most }),
        }
    }

    /// A text of at most `most` bytes of UTF-8, still in its place.
    ///
    /// # Errors
    /// As [`ByteReader::unsigned`], with [`BytesError::TextLength`] for the range, and
    /// [`BytesError::NotUtf8`].
    pub fn text(&mut self, most: usize) -> Result<&'a str, BytesError> {
        let at = self.at;
        let length = self.number()?;
        let bytes = match usize::try_from(length) {
            Ok(size) if size <= most => self.raw(size)?,
            _ => return Err(BytesError::TextLength { at, length, most }),
        };
        str::from_utf8(bytes).map_err(|error| BytesError::NotUtf8 {
            at: self.at - bytes.len() + error.valid_up_to(),
        })
    }

    /// The next `size` bytes as they are.
    ///
    /// # Errors
    /// [`BytesError::Ended`].
    pub fn raw(&mut self, size: usize) -> Result<&'a [u8], BytesError> {
        let Some((taken, rest)) = self.rest.split_at_checked(size) else {
            let missing = size - self.rest.len();
            return Err(BytesError::Ended {
                at: self.at,
                missing,
            });
        };
        self.rest = rest;
        self.at += size;
        Ok(taken)
    }

    /// Ends the reading.
    ///
    /// # Errors
    /// [`BytesError::LeftOver`] when bytes are left.
    pub fn finish(self) -> Result<(), BytesError> {
        match self.rest.len() {
            0 => Ok(()),
            count => Err(BytesError::LeftOver { at: self.at, count }),
        }
    }

    fn number(&mut self) -> Result<u64, BytesError> {
        let at = self.at;
        let mut value = 0;
        for (index, byte) in self.rest.iter().enumerate() {
            let bits = u64::from(byte & 0x7F);
            // The tenth byte has room for the 64th bit only.
            if index == 9 && *byte > 1 {
                return Err(BytesError::Over64Bits { at });
            }
            value |= bits << (index * 7);
            if byte & 0x80 == 0 {
                if bits == 0 && index > 0 {
                    return Err(BytesError::NotShortest { at });
                }
                self.raw(index + 1)?;
                return Ok(value);
            }
        }
        Err(BytesError::Ended { at, missing: 1 })
    }
}

/// A length as 64 bits; no machine of today has lengths beyond.
fn wide(length: usize) -> u64 {
    u64::try_from(length).unwrap_or(u64::MAX)
}

#[cfg(test)]
mod tests {
    use crate::share::varint::{ByteReader, ByteWriter, BytesError};

    fn number(bytes: &[u8]) -> Result<u64, BytesError> {
        ByteReader::new(bytes).unsigned(0..=u64::MAX)
    }

    /// Source: DWARF 5, table 7.7 ("Examples of unsigned LEB128 encodings"), from memory.
    #[test]
    fn numbers_are_written_as_the_dwarf_standard_shows() {
        let table: [(u64, &[u8]); 6] = [
            (2, &[2]),
            (127, &[127]),
            (128, &[0x80, 1]),
            (129, &[0x81, 1]),
            (130, &[0x82, 1]),
            (12_857, &[0xB9, 0x64]),
        ];
        for (value, bytes) in table {
            let mut writer = ByteWriter::default();
            writer.unsigned(value);
            assert_eq!(writer.finish(), bytes);
            assert_eq!(number(bytes), Ok(value));
        }
    }

    /// The extremes of two's complement: -2^63 has all of the 64 bits set after the fold, which
    /// is nine bytes of seven ones and one more bit.
    #[test]
    fn the_widest_numbers_pass_and_one_bit_more_does_not() {
        let mut widest = [0xFF; 10];
        widest[9] = 1;
        assert_eq!(number(&widest), Ok(u64::MAX));
        let least = ByteReader::new(&widest).signed(i64::MIN..=i64::MAX);
        assert_eq!(least, Ok(i64::MIN));
        for tenth in [2, 0x7F, 0x80, 0x81, 0xFF] {
            widest[9] = tenth;
            assert_eq!(number(&widest), Err(BytesError::Over64Bits { at: 0 }));
        }
    }

    #[test]
    fn a_number_longer_than_needed_is_refused() {
        for bytes in [&[0x80, 0][..], &[0xFF, 0x80, 0], &[0x80, 0x80, 0x80, 0]] {
            assert_eq!(number(bytes), Err(BytesError::NotShortest { at: 0 }));
        }
    }

    #[test]
    fn a_number_cut_off_is_refused() {
        for bytes in [&[][..], &[0x80], &[0xFF, 0xFF]] {
            assert_eq!(number(bytes), Err(BytesError::Ended { at: 0, missing: 1 }));
        }
    }

    #[test]
    fn a_range_holds_at_both_ends() {
        let read = |byte: u8| ByteReader::new(&[byte]).unsigned(5..=7_u8);
        let outside = |value| {
            Err(BytesError::UnsignedRange {
                at: 0,
                value,
                least: 5,
                most: 7,
            })
        };
        assert_eq!([read(4), read(8)], [outside(4), outside(8)]);
        assert_eq!([read(5), read(7)], [Ok(5), Ok(7)]);

        let read = |byte: u8| ByteReader::new(&[byte]).signed(-2..=1_i8);
        let outside = |value| {
            Err(BytesError::SignedRange {
                at: 0,
                value,
                least: -2,
                most: 1,
            })
        };
        // In order 0, -1, 1, -2, 2, -3.
        let expected = [Ok(0), Ok(-1), Ok(1), Ok(-2), outside(2), outside(-3)];
        assert_eq!([0, 1, 2, 3, 4, 5].map(read), expected);
    }

    #[test]
    fn a_count_is_held_to_the_limit_and_to_the_bytes_that_follow() {
        let read = |bytes: &[u8]| ByteReader::new(bytes).count(3);
        assert_eq!(read(&[3, 0, 0, 0]), Ok(3));
        let over = |count, most| Err(BytesError::Count { at: 0, count, most });
        assert_eq!(read(&[4, 0, 0, 0, 0]), over(4, 3));
        assert_eq!(read(&[3, 0, 0]), over(3, 2));
    }

    #[test]
    fn a_text_is_held_to_its_limit_on_both_sides() {
        let over = Err(BytesError::TextLength {
            at: 0,
            length: 4,
            most: 3,
        });
        let mut writer = ByteWriter::default();
        assert_eq!(
            writer.text("Pípi", 4).err().map(|error| error.to_string()),
            Some("text of 5 bytes at byte 0 is over 4".to_owned())
        );
        assert_eq!(writer.text("Pips", 3), over);
        assert_eq!(writer.text("Píp", 4), Ok(()));
        let bytes = writer.finish();
        assert_eq!(bytes, [4, b'P', 0xC3, 0xAD, b'p']);
        assert_eq!(ByteReader::new(&bytes).text(4), Ok("Píp"));
        assert_eq!(ByteReader::new(&bytes).text(3).map(|_| ()), over);
    }

    #[test]
    fn a_text_cut_off_or_not_utf8_is_refused_with_its_place() {
        let read = |bytes: &'static [u8]| ByteReader::new(bytes).text(usize::MAX);
        assert_eq!(
            read(&[3, b'a']),
            Err(BytesError::Ended { at: 1, missing: 2 })
        );
        assert_eq!(
            read(&[3, b'a', 0xC3, b'b']),
            Err(BytesError::NotUtf8 { at: 2 })
        );
        // Four bytes before it, its length, two letters.
        let mut reader = ByteReader::new(&[9, 9, 9, 9, 3, b'a', b'b', 0xC3]);
        assert_eq!(reader.raw(4).map(<[u8]>::len), Ok(4));
        assert_eq!(reader.text(3), Err(BytesError::NotUtf8 { at: 7 }));
    }

    #[test]
    fn bytes_after_the_end_are_refused() {
        let mut reader = ByteReader::new(&[1, 2, 3]);
        assert_eq!(reader.raw(1), Ok(&[1_u8][..]));
        assert_eq!(
            reader.finish(),
            Err(BytesError::LeftOver { at: 1, count: 2 })
        );
    }
}

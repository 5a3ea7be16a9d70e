//! Reading domain values out of bytes: choices, quantities, days, moments, ids and text, each in its
//! own range.

use thiserror::Error;

use crate::domain::journal::entries::Refusal;
use crate::domain::quantity::units::OutOfRange;
use crate::domain::time::moment::{Day, Moment, Offset};
use crate::share::code::Coded;
use crate::share::varint::{ByteReader, ByteWriter, BytesError};

/// Why bytes whose check sum is right are not taken all the same.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub(crate) enum UnpackError {
    /// The bytes themselves are not in order.
    #[error(transparent)]
    Bytes(#[from] BytesError),
    /// A choice of which this form knows nothing.
    #[error("number {code} stands for no choice here")]
    UnknownChoice {
        /// The number found.
        code: u8,
    },
    /// A quantity outside its range, tenths.
    #[error("{0:?}")]
    Quantity(OutOfRange),
    /// A day, moment or reference to something earlier that cannot be.
    #[error("a day, moment or place in a list is out of range")]
    OutOfPlace,
    /// The domain refuses what it says.
    #[error("refused: {0:?}")]
    Refused(Refusal),
}

/// A number without sign at byte `at` that is more than `most`.
#[cfg(test)]
pub(crate) const fn outside(at: usize, value: u64, most: u64) -> UnpackError {
    let least = 0;
    UnpackError::Bytes(BytesError::UnsignedRange {
        at,
        value,
        least,
        most,
    })
}

/// Most bytes of one text: a long text of the widest characters.
const MOST_TEXT_BYTES: usize = 4_000;
/// Days are counted from 2024-01-01, so that days of chicks at hand take two bytes.
const FIRST_DAY: i32 = 19_723;

pub(crate) fn write_choice(writer: &mut ByteWriter, choice: impl Coded) {
    writer.unsigned(choice.code());
}

pub(crate) fn read_choice<T: Coded>(reader: &mut ByteReader<'_>) -> Result<T, UnpackError> {
    choice(reader.unsigned(0..=u8::MAX)?)
}

pub(crate) fn choice<T: Coded>(code: u8) -> Result<T, UnpackError> {
    T::from_code(code).ok_or(UnpackError::UnknownChoice { code })
}

pub(crate) fn read_tenths<T>(
    reader: &mut ByteReader<'_>,
    make: fn(i64) -> Result<T, OutOfRange>,
) -> Result<T, UnpackError> {
    let tenths: i64 = reader.signed(i64::MIN..=i64::MAX)?;
    make(tenths).map_err(UnpackError::Quantity)
}

pub(crate) fn write_day(writer: &mut ByteWriter, day: Day) {
    writer.signed(day.number() - FIRST_DAY);
}

pub(crate) fn read_day(reader: &mut ByteReader<'_>) -> Result<Day, UnpackError> {
    let number: i32 = reader.signed(-100_000..=100_000)?;
    let number = number + FIRST_DAY;
    let day = Day::from_number(number);
    if day.number() == number {
        Ok(day)
    } else {
        Err(UnpackError::OutOfPlace)
    }
}

/// The moment so many seconds after another one.
pub(crate) fn moment_after(start: Moment, seconds: i64) -> Result<Moment, UnpackError> {
    let wanted = start.seconds().checked_add(seconds);
    let wanted = wanted.ok_or(UnpackError::OutOfPlace)?;
    let moment = Moment::from_seconds(wanted);
    if moment.seconds() == wanted {
        Ok(moment)
    } else {
        Err(UnpackError::OutOfPlace)
    }
}

pub(crate) fn read_seconds(reader: &mut ByteReader<'_>) -> Result<i64, UnpackError> {
    Ok(reader.signed(i64::MIN..=i64::MAX)?)
}

pub(crate) fn read_offset(reader: &mut ByteReader<'_>) -> Result<Offset, UnpackError> {
    Ok(Offset::from_minutes(reader.signed(-1_440..=1_440)?))
}

pub(crate) fn read_id(reader: &mut ByteReader<'_>) -> Result<[u8; 12], UnpackError> {
    let bytes = reader.raw(12)?;
    bytes.first_chunk().copied().ok_or(UnpackError::OutOfPlace)
}

pub(crate) fn write_text(writer: &mut ByteWriter, text: &str) {
    writer.count(text.len());
    writer.raw(text.as_bytes());
}

pub(crate) fn read_text(reader: &mut ByteReader<'_>) -> Result<String, UnpackError> {
    Ok(reader.text(MOST_TEXT_BYTES)?.to_owned())
}

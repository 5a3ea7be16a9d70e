//! CRC-32, which tells a damaged text from a whole one.
//!
//! A module of its own at the top, as both the store (kept entries) and share (links and files)
//! need it and neither may name the other. Our own 20 lines: the usual crate carries 17 kB of
//! tables (measured, compressed wasm) to be fast at sizes that never occur here.

/// CRC-32 of IEEE 802.3 (`CRC-32/ISO-HDLC` in the catalogue of CRCs).
///
/// It finds every single burst of damage of up to 32 bits and misses other damage once in 2^32.
/// It is no protection against someone who changes a text on purpose.
///
/// # Formula
/// Remainder by 0x04C11DB7, bits reflected in and out, started at and combined with 0xFFFFFFFF;
/// taken four bits at a time.
///
/// # Examples
/// ```
/// assert_eq!(perchlight::checksum::crc32(b"123456789"), 0xCBF4_3926);
/// assert_eq!(perchlight::checksum::crc32(b""), 0);
/// ```
///
/// Source: IEEE 802.3, section 3.2.9; RFC 1952, section 8.
pub fn crc32(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(u32::MAX, |sum, byte| {
        four_bits(four_bits(sum ^ u32::from(*byte)))
    })
}

/// The 16 remainders of four bits.
const REMAINDERS: [u32; 16] = [
    remainder(0),
    remainder(1),
    remainder(2),
    remainder(3),
    remainder(4),
    remainder(5),
    remainder(6),
    remainder(7),
    remainder(8),
    remainder(9),
    remainder(10),
    remainder(11),
    remainder(12),
    remainder(13),
    remainder(14),
    remainder(15),
];

/// The polynomial 0x04C11DB7 with its bits reversed.
const POLYNOMIAL_REVERSED: u32 = 0xEDB8_8320;

const fn remainder(bits: u32) -> u32 {
    let mut rest = bits;
    let mut step = 0;
    while step < 4 {
        rest = if rest & 1 == 1 {
            (rest >> 1) ^ POLYNOMIAL_REVERSED
        } else {
            rest >> 1
        };
        step += 1;
    }
    rest
}

fn four_bits(sum: u32) -> u32 {
    let [lowest, ..] = sum.to_le_bytes();
    let index = usize::from(lowest & 0x0F);
    (sum >> 4) ^ REMAINDERS.get(index).copied().unwrap_or(0)
}

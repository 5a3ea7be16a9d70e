//! CRC-32 as used by gzip, PNG and Ethernet.

/// CRC-32 of `bytes`: polynomial 0x04C11DB7 reflected, all ones in, all ones out.
///
/// A start reads every byte kept, so long texts go by whole bytes, over a table of 256 values that is
/// made from the sixteen below; short ones are done before such a table is.
///
/// Source: ISO/IEC 3309 and ITU-T V.42, 8.1.1.6.2. The usual check value, the sum of the nine digits
/// below, is 0xCBF43926.
///
/// # Examples
/// ```
/// assert_eq!(perchlight::checksum::crc32(b"123456789"), 0xCBF4_3926);
/// assert_eq!(perchlight::checksum::crc32(b""), 0);
/// ```
pub fn crc32(bytes: &[u8]) -> u32 {
    let mut sum = u32::MAX;
    if bytes.len() < LONG {
        for byte in bytes {
            sum = after_byte(sum ^ u32::from(*byte));
        }
        return !sum;
    }
    let mut table = [0; 256];
    for (start, value) in (0..).zip(&mut table) {
        *value = after_byte(start);
    }
    for byte in bytes {
        let [lowest, ..] = sum.to_le_bytes();
        let value = table.get(usize::from(lowest ^ *byte)).copied();
        sum = (sum >> 8) ^ value.unwrap_or_default();
    }
    !sum
}

/// From this length on the larger table is worth its making.
const LONG: usize = 1_024;

/// What a sum becomes by eight steps.
fn after_byte(sum: u32) -> u32 {
    let sum = (sum >> 4) ^ after_four_bits(sum);
    (sum >> 4) ^ after_four_bits(sum)
}

/// What the lowest four bits of a sum become.
fn after_four_bits(sum: u32) -> u32 {
    let index = usize::try_from(sum & 15).unwrap_or_default();
    TABLE.get(index).copied().unwrap_or_default()
}

const TABLE: [u32; 16] = [
    0x0000_0000,
    0x1DB7_1064,
    0x3B6E_20C8,
    0x26D9_30AC,
    0x76DC_4190,
    0x6B6B_51F4,
    0x4DB2_6158,
    0x5005_713C,
    0xEDB8_8320,
    0xF00F_9344,
    0xD6D6_A3E8,
    0xCB61_B38C,
    0x9B64_C2B0,
    0x86D3_D2D4,
    0xA00A_E278,
    0xBDBD_F21C,
];

#[cfg(test)]
mod tests {
    use crate::checksum::{LONG, TABLE, crc32};

    /// Bit by bit, as the standard describes it.
    fn by_bits(bytes: &[u8]) -> u32 {
        let step = |sum: u32, _| (sum >> 1) ^ if sum & 1 == 1 { 0xEDB8_8320 } else { 0 };
        let sum = bytes.iter().fold(u32::MAX, |sum, byte| {
            (0..8).fold(sum ^ u32::from(*byte), step)
        });
        !sum
    }

    #[test]
    fn short_and_long_texts_have_the_sum_of_the_definition() {
        let bytes: Vec<u8> = (0..=255)
            .cycle()
            .map(|byte: u8| byte.wrapping_mul(89))
            .take(LONG + 9)
            .collect();
        for length in [0, 1, 255, LONG - 1, LONG, LONG + 9] {
            assert_eq!(
                crc32(&bytes[..length]),
                by_bits(&bytes[..length]),
                "{length}"
            );
        }
    }

    /// The definition, bit by bit.
    #[test]
    fn the_table_holds_four_steps_of_the_polynomial() {
        for (start, found) in (0_u32..).zip(TABLE) {
            let step = |sum: u32, _| {
                if sum & 1 == 1 {
                    (sum >> 1) ^ 0xEDB8_8320
                } else {
                    sum >> 1
                }
            };
            assert_eq!((0..4).fold(start, step), found, "{start}");
        }
    }
}

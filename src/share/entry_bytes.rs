//! Entries as few bytes: each as a difference to the one before, values to the last of their kind.
//!
//! Ids are sent whole. They are most of the bytes, but without them a second report would double
//! what the first one brought.

use crate::domain::journal::entries::{
    Change, ChickId, CropAtWeighing, Entry, EntryId, Journal, check_change,
};
use crate::domain::journal::photo::{Photo, PhotoHash};
use crate::domain::plan::care_plan::{CarePlan, Slot};
use crate::domain::quantity::units::{Celsius, Grams, Millilitres};
use crate::domain::time::moment::{Day, Lived, Moment, Offset, WallTime};
use crate::share::code::Coded;
use crate::share::plan_bytes::{read_plan, write_plan};
use crate::share::unpack::{
    UnpackError, choice, moment_after, read_choice, read_id, read_offset, read_seconds,
    read_tenths, read_text, write_choice, write_text,
};
use crate::share::varint::{ByteReader, ByteWriter};

/// Most entries taken from a link. Ours: three weeks of one household many times over.
pub(crate) const MOST_ENTRIES: usize = 2_000;

/// What the entry before was, for whatever does not change from one to the next.
struct Before {
    at: Moment,
    chick: ChickId,
    by: String,
    offset: Offset,
    late_s: i64,
    weight: i64,
    taken: i64,
    served: Option<i64>,
}

impl Before {
    fn new() -> Self {
        Self {
            at: Moment::EARLIEST,
            chick: ChickId([0; 12]),
            by: String::new(),
            offset: Offset::UTC,
            late_s: 0,
            weight: 0,
            taken: 0,
            served: None,
        }
    }
}

/// Which of an entry's surroundings differ from those of the entry before: one bit each, above the
/// five bits of its kind.
const CHICK: u16 = 1 << 5;
const BY: u16 = 1 << 6;
const OFFSET: u16 = 1 << 7;
const LATE: u16 = 1 << 8;
const KIND_BITS: u16 = CHICK - 1;
/// In the place of a kind: its number is this one or higher, and what it is above this follows the head.
const WIDER: u8 = 31;

/// Writes entries in the order of a journal, each once.
pub(crate) fn write_entries(writer: &mut ByteWriter, entries: &[Entry]) {
    let journal = Journal::from_entries(entries.to_vec());
    writer.count(journal.entries().len());
    let mut before = Before::new();
    for entry in journal.entries() {
        write_entry(writer, &mut before, entry);
    }
}

fn write_entry(writer: &mut ByteWriter, before: &mut Before, entry: &Entry) {
    let late_s = entry.noted_at.seconds() - entry.at.seconds();
    let differs = [
        (CHICK, entry.chick != before.chick),
        (BY, entry.by != before.by),
        (OFFSET, entry.offset != before.offset),
        (LATE, late_s != before.late_s),
    ];
    let bits = differs.iter().filter(|(_, differs)| *differs);
    let bits: u16 = bits.map(|(bit, _)| bit).sum();
    let kind = kind(&entry.change);
    writer.unsigned(bits + u16::from(kind.min(WIDER)));
    if let Some(above) = kind.checked_sub(WIDER) {
        writer.unsigned(above);
    }
    let seconds = entry.at.seconds().abs_diff(before.at.seconds());
    if seconds.is_multiple_of(60) {
        writer.unsigned(seconds / 60 * 2);
    } else {
        writer.unsigned(seconds * 2 + 1);
    }
    writer.raw(&entry.id.0);
    if bits & CHICK != 0 {
        writer.raw(&entry.chick.0);
    }
    if bits & BY != 0 {
        write_text(writer, &entry.by);
    }
    if bits & OFFSET != 0 {
        writer.signed(entry.offset.minutes());
    }
    if bits & LATE != 0 {
        writer.signed(late_s);
    }
    before.at = entry.at;
    before.chick = entry.chick;
    before.by.clone_from(&entry.by);
    before.offset = entry.offset;
    before.late_s = late_s;
    write_change(writer, before, &entry.change);
}

/// Reads entries.
///
/// # Errors
/// [`UnpackError`]; all or none are taken.
pub(crate) fn read_entries(reader: &mut ByteReader<'_>) -> Result<Vec<Entry>, UnpackError> {
    let count = reader.count(MOST_ENTRIES)?;
    let mut before = Before::new();
    let mut entries = Vec::with_capacity(count);
    for _ in 0..count {
        entries.push(read_entry(reader, &mut before)?);
    }
    Ok(entries)
}

fn read_entry(reader: &mut ByteReader<'_>, before: &mut Before) -> Result<Entry, UnpackError> {
    let head = reader.unsigned(0..=(LATE << 1) - 1)?;
    let [_, mut kind] = (head & KIND_BITS).to_be_bytes();
    if kind == WIDER {
        kind += reader.unsigned(0..=u8::MAX - WIDER)?;
    }
    // Whole minutes when the lowest bit is 0, else seconds.
    let step = reader.unsigned(0..=u64::from(u32::MAX) * 4)?;
    let seconds = step / 2 * if step % 2 == 0 { 60 } else { 1 };
    let seconds = i64::try_from(seconds).ok().ok_or(UnpackError::OutOfPlace)?;
    let id = EntryId(read_id(reader)?);
    before.at = moment_after(before.at, seconds)?;
    if head & CHICK != 0 {
        before.chick = ChickId(read_id(reader)?);
    }
    if head & BY != 0 {
        before.by = read_text(reader)?;
    }
    if head & OFFSET != 0 {
        before.offset = read_offset(reader)?;
    }
    if head & LATE != 0 {
        before.late_s = read_seconds(reader)?;
    }
    let noted_at = moment_after(before.at, before.late_s)?;
    let change = read_change(reader, before, kind)?;
    check_change(&change).map_err(UnpackError::Refused)?;
    Ok(Entry {
        at: before.at,
        id,
        chick: before.chick,
        noted_at,
        offset: before.offset,
        by: before.by.clone(),
        change,
    })
}

/// The number of a change's kind; a number, once released, never changes its meaning. Kinds noted once in a
/// life, or of which a link holds few, are those from [`WIDER`] on: they take a byte more.
const fn kind(change: &Change) -> u8 {
    match change {
        Change::Weighed { crop, .. } => match crop {
            CropAtWeighing::Empty => 0,
            CropAtWeighing::AfterFeed => 20,
            CropAtWeighing::NotSure => 21,
        },
        Change::Fed { counts_as, .. } => match counts_as {
            Some(_) => 1,
            None => 30,
        },
        Change::FeedRefused { .. } => 2,
        Change::FeedPassedOver { .. } => 3,
        Change::CropSeen { .. } => 4,
        Change::DroppingsSeen { .. } => 5,
        Change::DroppingsCounted { .. } => 32,
        Change::PhotoTaken(_) => 33,
        Change::VisitReason { .. } => 34,
        Change::WeightStands { .. } => 35,
        Change::VetSeen { .. } => 36,
        Change::VetBooked { .. } => 37,
        Change::Remarked { .. } => 38,
        Change::SolidsSeen { .. } => 6,
        Change::SignSeen { .. } => 7,
        Change::SignGone { .. } => 8,
        Change::FeedDropped { .. } => 9,
        Change::FeedBroughtBack { .. } => 10,
        Change::MixMade { .. } => 11,
        Change::StockOpened { .. } => 12,
        Change::Called { .. } => 13,
        Change::AdviceNoted { .. } => 22,
        Change::RoomSeen { .. } => 14,
        Change::Noted { .. } => 15,
        Change::Retracted { .. } => 16,
        Change::ChickAdded(_) => 17,
        Change::PartSet { .. } => 18,
        Change::PartTaken { .. } => 28,
        Change::PartAgreed { .. } => 25,
        Change::Arrived => 19,
        Change::DrinkingSeen => 23,
        Change::Grown => 24,
        Change::Died => WIDER,
        Change::HandedOver { .. } => 26,
        Change::SameChick { .. } => 27,
        Change::SameFood { .. } => 29,
    }
}

#[expect(clippy::too_many_lines, reason = "one arm a kind of change")]
fn write_change(writer: &mut ByteWriter, before: &mut Before, change: &Change) {
    match change {
        Change::Weighed { weight, .. } => {
            let tenths = i64::from(weight.tenths());
            writer.signed(tenths - before.weight);
            before.weight = tenths;
        }
        Change::Fed {
            counts_as,
            taken,
            offered,
            served_at,
            response,
        } => {
            let served = served_at.map(|served| i64::from(served.tenths()));
            let is_part = u8::from(taken != offered);
            let served_as = match served {
                None => 0,
                Some(_) if served == before.served => 1,
                Some(_) => 2,
            };
            let slot = counts_as.unwrap_or(Slot::EarlyMorning).code();
            writer.unsigned(slot + 6 * (response.code() + 3 * (is_part + 2 * served_as)));
            let tenths = i64::from(taken.tenths());
            writer.signed(tenths - before.taken);
            before.taken = tenths;
            if is_part == 1 {
                writer.signed(offered.tenths() - taken.tenths());
            }
            if let Some(served) = served {
                if served_as == 2 {
                    writer.signed(served);
                }
                before.served = Some(served);
            }
        }
        Change::FeedBroughtBack { slot } => write_choice(writer, *slot),
        Change::FeedRefused { counts_as, offered } => {
            writer.unsigned(counts_as.map_or(0, |slot| slot.code() + 1));
            writer.signed(offered.tenths());
        }
        Change::SameFood { notes, answer } => {
            write_choice(writer, *answer);
            writer.unsigned(u8::try_from(notes.len()).unwrap_or(u8::MAX));
            for id in notes {
                writer.raw(&id.0);
            }
        }
        Change::FeedPassedOver { slot, day, why } => {
            write_choice(writer, *slot);
            writer.signed(day.number());
            write_choice(writer, *why);
        }
        Change::CropSeen { state, feel } => {
            write_choice(writer, *state);
            write_choice(writer, *feel);
        }
        Change::DroppingsSeen { look } => write_choice(writer, *look),
        Change::DroppingsCounted { paper, count } => {
            write_choice(writer, *paper);
            writer.unsigned(*count);
        }
        Change::SolidsSeen { what, eaten } => {
            write_text(writer, what);
            write_choice(writer, *eaten);
        }
        Change::SignSeen { sign } | Change::SignGone { sign } => write_choice(writer, *sign),
        Change::FeedDropped { slot, by_breeder } => {
            write_choice(writer, *slot);
            writer.unsigned(u8::from(*by_breeder));
        }
        Change::MixMade {
            powder,
            water,
            fat_supplement,
        } => {
            for mass in [powder, water, fat_supplement] {
                writer.signed(mass.tenths());
            }
        }
        Change::StockOpened { powder } => writer.signed(powder.tenths()),
        Change::Called { whom, agreed } => {
            write_choice(writer, *whom);
            write_text(writer, agreed);
        }
        Change::AdviceNoted {
            who,
            about,
            may_feed,
            ml,
            until,
        } => {
            write_choice(writer, *who);
            write_text(writer, about);
            let holds = |is_held: bool, bit: u8| u8::from(is_held) * bit;
            let parts = holds(*may_feed, 1) + holds(ml.is_some(), 2) + holds(until.is_some(), 4);
            writer.unsigned(parts);
            if let Some(ml) = ml {
                writer.signed(ml.tenths());
            }
            if let Some(until) = until {
                writer.signed(until.seconds() - Moment::EARLIEST.seconds());
            }
        }
        Change::RoomSeen { room } => writer.signed(room.tenths()),
        Change::PhotoTaken(photo) => {
            write_choice(writer, photo.of);
            writer.raw(&photo.hash.0);
            writer.unsigned(photo.bytes);
        }
        Change::Noted { text }
        | Change::Remarked { text }
        | Change::VisitReason { text }
        | Change::VetSeen { said: text } => write_text(writer, text),
        Change::VetBooked { on } => {
            writer.signed(on.day.number());
            writer.unsigned(on.time.minutes().unsigned_abs());
        }
        Change::Retracted { id } | Change::WeightStands { id } => writer.raw(&id.0),
        Change::ChickAdded(plan) => write_plan(writer, plan),
        Change::PartSet {
            part,
            replaces,
            side,
            is_carer,
        } => {
            write_choice(writer, part.kind());
            write_choice(writer, *side);
            writer.unsigned(u8::from(*is_carer));
            write_ids(writer, replaces);
            write_plan(writer, &CarePlan::of_part(part.as_ref().clone()));
        }
        Change::PartTaken { sets } => write_ids(writer, sets),
        Change::PartAgreed { sets, said_by } => {
            write_ids(writer, sets);
            write_text(writer, said_by);
        }
        Change::HandedOver { to, name } => {
            write_choice(writer, *to);
            write_text(writer, name);
        }
        Change::SameChick { typed, card } => {
            writer.raw(&typed.0);
            writer.raw(&card.0);
        }
        Change::Arrived | Change::DrinkingSeen | Change::Grown | Change::Died => {}
    }
}

#[expect(clippy::too_many_lines, reason = "one arm a kind of change")]
fn read_change(
    reader: &mut ByteReader<'_>,
    before: &mut Before,
    kind: u8,
) -> Result<Change, UnpackError> {
    Ok(match kind {
        0 => read_weighed(reader, before, CropAtWeighing::Empty)?,
        20 => read_weighed(reader, before, CropAtWeighing::AfterFeed)?,
        21 => read_weighed(reader, before, CropAtWeighing::NotSure)?,
        1 => read_fed(reader, before, true)?,
        30 => read_fed(reader, before, false)?,
        2 => Change::FeedRefused {
            counts_as: said(reader.unsigned(0..=6_u8)?)?,
            offered: read_tenths(reader, Millilitres::from_tenths)?,
        },
        29 => {
            let answer = read_choice(reader)?;
            let count = reader.unsigned(0..=20_u8)?;
            let notes = (0..count).map(|_| read_id(reader).map(EntryId));
            Change::SameFood {
                notes: notes.collect::<Result<_, _>>()?,
                answer,
            }
        }
        3 => Change::FeedPassedOver {
            slot: read_choice(reader)?,
            day: Day::from_number(reader.signed(i32::MIN..=i32::MAX)?),
            why: read_choice(reader)?,
        },
        4 => Change::CropSeen {
            state: read_choice(reader)?,
            feel: read_choice(reader)?,
        },
        5 => Change::DroppingsSeen {
            look: read_choice(reader)?,
        },
        32 => Change::DroppingsCounted {
            paper: read_choice(reader)?,
            count: reader.unsigned(0..=u8::MAX)?,
        },
        33 => Change::PhotoTaken(Photo {
            of: read_choice(reader)?,
            hash: PhotoHash(read_hash(reader)?),
            bytes: reader.unsigned(0..=u32::MAX)?,
        }),
        34 => Change::VisitReason {
            text: read_text(reader)?,
        },
        38 => Change::Remarked {
            text: read_text(reader)?,
        },
        36 => Change::VetSeen {
            said: read_text(reader)?,
        },
        37 => Change::VetBooked {
            on: Lived {
                day: Day::from_number(reader.signed(i32::MIN..=i32::MAX)?),
                time: WallTime::from_minutes(reader.unsigned(0..=1_439_u16)?.into()),
            },
        },
        6 => Change::SolidsSeen {
            what: read_text(reader)?,
            eaten: read_choice(reader)?,
        },
        7 => Change::SignSeen {
            sign: read_choice(reader)?,
        },
        8 => Change::SignGone {
            sign: read_choice(reader)?,
        },
        9 => Change::FeedDropped {
            slot: read_choice(reader)?,
            by_breeder: reader.unsigned(0..=1_u8)? == 1,
        },
        10 => Change::FeedBroughtBack {
            slot: read_choice(reader)?,
        },
        11 => Change::MixMade {
            powder: read_tenths(reader, Grams::from_tenths)?,
            water: read_tenths(reader, Grams::from_tenths)?,
            fat_supplement: read_tenths(reader, Grams::from_tenths)?,
        },
        12 => Change::StockOpened {
            powder: read_tenths(reader, Grams::from_tenths)?,
        },
        13 => Change::Called {
            whom: read_choice(reader)?,
            agreed: read_text(reader)?,
        },
        22 => {
            let (who, about) = (read_choice(reader)?, read_text(reader)?);
            let parts = reader.unsigned(0..=7_u8)?;
            let ml = (parts & 2 != 0).then(|| read_tenths(reader, Millilitres::from_tenths));
            let ml = ml.transpose()?;
            let until = (parts & 4 != 0).then(|| {
                let seconds = read_seconds(reader)?;
                moment_after(Moment::EARLIEST, seconds)
            });
            Change::AdviceNoted {
                who,
                about,
                may_feed: parts & 1 != 0,
                ml,
                until: until.transpose()?,
            }
        }
        14 => Change::RoomSeen {
            room: read_tenths(reader, Celsius::from_tenths)?,
        },
        15 => Change::Noted {
            text: read_text(reader)?,
        },
        35 => Change::WeightStands {
            id: EntryId(read_id(reader)?),
        },
        16 => Change::Retracted {
            id: EntryId(read_id(reader)?),
        },
        17 => Change::ChickAdded(Box::new(read_plan(reader)?)),
        18 => {
            let kind = read_choice(reader)?;
            Change::PartSet {
                side: read_choice(reader)?,
                is_carer: reader.unsigned(0..=1_u8)? == 1,
                replaces: read_ids(reader)?,
                part: Box::new(read_plan(reader)?.part(kind)),
            }
        }
        28 => Change::PartTaken {
            sets: read_ids(reader)?,
        },
        25 => Change::PartAgreed {
            sets: read_ids(reader)?,
            said_by: read_text(reader)?,
        },
        19 => Change::Arrived,
        23 => Change::DrinkingSeen,
        24 => Change::Grown,
        WIDER => Change::Died,
        26 => Change::HandedOver {
            to: read_choice(reader)?,
            name: read_text(reader)?,
        },
        27 => Change::SameChick {
            typed: ChickId(read_id(reader)?),
            card: ChickId(read_id(reader)?),
        },
        code => return Err(UnpackError::UnknownChoice { code }),
    })
}

fn read_hash(reader: &mut ByteReader<'_>) -> Result<[u8; 32], UnpackError> {
    let bytes = reader.raw(32)?;
    bytes.first_chunk().copied().ok_or(UnpackError::OutOfPlace)
}

fn write_ids(writer: &mut ByteWriter, ids: &[EntryId]) {
    writer.count(ids.len());
    for id in ids {
        writer.raw(&id.0);
    }
}

fn read_ids(reader: &mut ByteReader<'_>) -> Result<Vec<EntryId>, UnpackError> {
    let count = reader.count(MOST_ENTRIES)?;
    (0..count).map(|_| Ok(EntryId(read_id(reader)?))).collect()
}

fn read_weighed(
    reader: &mut ByteReader<'_>,
    before: &mut Before,
    crop: CropAtWeighing,
) -> Result<Change, UnpackError> {
    let weight = Grams::from_tenths(after(before.weight, reader)?);
    let weight = weight.map_err(UnpackError::Quantity)?;
    before.weight = i64::from(weight.tenths());
    Ok(Change::Weighed { weight, crop })
}

fn read_fed(
    reader: &mut ByteReader<'_>,
    before: &mut Before,
    is_said: bool,
) -> Result<Change, UnpackError> {
    let choices = reader.unsigned(0..=6 * 3 * 2 * 3 - 1_u8)?;
    let (slot, response) = (choice(choices % 6)?, choice(choices / 6 % 3)?);
    let (is_part, served_as) = (choices / 18 % 2 == 1, choices / 36);
    let taken = Millilitres::from_tenths(after(before.taken, reader)?);
    let taken = taken.map_err(UnpackError::Quantity)?;
    before.taken = i64::from(taken.tenths());
    let offered = if is_part {
        Millilitres::from_tenths(after(before.taken, reader)?).map_err(UnpackError::Quantity)?
    } else {
        taken
    };
    let served = match served_as {
        0 => None,
        1 => Some(before.served.ok_or(UnpackError::OutOfPlace)?),
        _ => Some(reader.signed(i64::MIN..=i64::MAX)?),
    };
    before.served = served.or(before.served);
    let temperature = served.map(Celsius::from_tenths).transpose();
    Ok(Change::Fed {
        counts_as: is_said.then_some(slot),
        taken,
        offered,
        served_at: temperature.map_err(UnpackError::Quantity)?,
        response,
    })
}

/// The feed that a person said; 0 when nobody did.
fn said(code: u8) -> Result<Option<Slot>, UnpackError> {
    code.checked_sub(1).map(choice).transpose()
}

/// A value that is written as the difference to an earlier one.
fn after(earlier: i64, reader: &mut ByteReader<'_>) -> Result<i64, UnpackError> {
    let difference = reader.signed(i64::MIN..=i64::MAX)?;
    earlier
        .checked_add(difference)
        .ok_or(UnpackError::OutOfPlace)
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::Response;
    use crate::share::entry_bytes::*;
    use crate::share::unpack::outside;

    /// Above kind and surroundings, five and four bits, nothing has a meaning: the most is 511.
    #[test]
    fn a_head_with_an_unknown_bit_is_refused() {
        // One entry; 512 and 0 + 128 × 4 in groups of seven bits.
        let mut reader = ByteReader::new(&[1, 0x80, 4, 0]);
        assert_eq!(read_entries(&mut reader), Err(outside(1, 512, 511)));
    }

    fn noted(change: Change) -> Entry {
        Entry {
            change,
            ..fed(60, 401)
        }
    }

    /// The bytes of one entry, after it came back from them.
    fn bytes_of(entry: Entry) -> Vec<u8> {
        let entries = vec![entry];
        let mut writer = ByteWriter::default();
        write_entries(&mut writer, &entries);
        let bytes = writer.finish();
        assert_eq!(read_entries(&mut ByteReader::new(&bytes)), Ok(entries));
        bytes
    }

    /// Thirty-one kinds, 0 to 30, stand in the head's five bits; 31 says that the rest of the number follows.
    #[test]
    fn a_wider_kind_takes_one_byte_more_and_the_others_take_none() {
        let (grown, died) = (
            bytes_of(noted(Change::Grown)),
            bytes_of(noted(Change::Died)),
        );
        assert_eq!(grown.len() + 1, died.len());
        // One entry; the bit of another chick than before, 32, and the kind.
        assert_eq!(grown[..2], [1, 32 + 24]);
        assert_eq!(died[..3], [1, 32 + 31, 0]);
        assert_eq!(grown[2..], died[3..]);
        let agreed = Change::PartAgreed {
            sets: Vec::new(),
            said_by: String::new(),
        };
        // A card may hold it: no byte more than any kind of the head, and two for what is said in it.
        assert_eq!(grown.len() + 2, bytes_of(noted(agreed)).len());
    }

    #[test]
    fn an_unknown_wider_kind_is_refused() {
        // One entry; kind 31 and 100 above it; no minute later; an id.
        let mut bytes = vec![1, 31, 100, 0];
        bytes.extend([7; 12]);
        let read = read_entries(&mut ByteReader::new(&bytes));
        assert_eq!(read, Err(UnpackError::UnknownChoice { code: 131 }));
        // 225 above it would be 256: more than a kind's number can be.
        let mut reader = ByteReader::new(&[1, 31, 0xE1, 1]);
        assert_eq!(read_entries(&mut reader), Err(outside(2, 225, 224)));
    }

    /// Six feeds, three responses, in part or whole, three ways of a temperature: 108 choices from 0.
    #[test]
    fn a_feed_with_an_unknown_choice_is_refused() {
        let mut reader = ByteReader::new(&[108, 0, 0]);
        let read = read_fed(&mut reader, &mut Before::new(), true);
        assert_eq!(read, Err(outside(0, 108, 107)));
    }

    fn fed(second: i64, served: i64) -> Entry {
        let at = Moment::EARLIEST.plus_seconds(second);
        let taken = Millilitres::whole(40);
        let [_, _, _, _, _, _, _, id] = second.to_be_bytes();
        Entry {
            at,
            id: EntryId([id; 12]),
            chick: ChickId([7; 12]),
            noted_at: at,
            offset: Offset::UTC,
            by: String::new(),
            change: Change::Fed {
                counts_as: Some(Slot::Midday),
                taken,
                offered: taken,
                served_at: Celsius::from_tenths(served).ok(),
                response: Response::Eager,
            },
        }
    }

    #[test]
    fn a_temperature_as_before_takes_no_byte_and_comes_back() {
        let size = |second| {
            let entries = [fed(60, 401), second];
            let mut writer = ByteWriter::default();
            write_entries(&mut writer, &entries);
            let bytes = writer.finish();
            let read = read_entries(&mut ByteReader::new(&bytes));
            assert_eq!(read, Ok(entries.to_vec()));
            bytes.len()
        };
        // 402 tenths with a sign are 804, two groups of seven bits.
        assert_eq!(size(fed(120, 401)) + 2, size(fed(120, 402)));
    }
}

//! A care plan as few bytes.
//!
//! A field that holds what [`USUAL`] says is left out. Those values belong to this form and not to
//! the app: when a later build changes its own defaults, a card made before still says what its
//! breeder saw. Feeds and species always stand there.

use std::collections::{BTreeMap, BTreeSet};

use crate::domain::journal::entries::{Change, check_change};
use crate::domain::plan::care_plan::{
    CarePlan, Contact, Journey, PlanField, PlannedFeed, PowderLabel, Reference, Slot, Tool,
};
use crate::domain::plan::topic::{Topic, said_of};
use crate::domain::quantity::order::set_of;
use crate::domain::quantity::units::{Celsius, Grams, Millilitres, Percent};
use crate::domain::time::moment::{Moment, WallTime};
use crate::share::code::Coded;
use crate::share::unpack::{
    UnpackError, choice, moment_after, read_choice, read_day, read_offset, read_seconds,
    read_tenths, read_text, write_choice, write_day, write_text,
};
use crate::share::varint::{ByteReader, ByteWriter};

/// What a field that is left out holds.
struct Usual {
    scale_step: Grams,
    powder_fraction: Percent,
    fat_supplement_per_100_ml: Grams,
    serve: (Celsius, Celsius),
    mixing_water: Celsius,
    tool: Tool,
    syringe: Millilitres,
    loss_limit: Percent,
    drop_order: [Slot; 3],
    settle_in_days: u8,
    waiting_days: u8,
    room: (Celsius, Celsius),
}

const USUAL: Usual = Usual {
    scale_step: Grams::whole(1),
    powder_fraction: Percent::whole(25),
    fat_supplement_per_100_ml: Grams::whole(0),
    serve: (Celsius::whole(39), Celsius::tenths_held(405)),
    mixing_water: Celsius::whole(44),
    tool: Tool::Syringe,
    syringe: Millilitres::whole(30),
    loss_limit: Percent::whole(10),
    drop_order: [Slot::Midday, Slot::Morning, Slot::Bedtime],
    settle_in_days: 7,
    waiting_days: 5,
    room: (Celsius::whole(24), Celsius::whole(27)),
};

/// A field that can be left out: its bit. Those of nearly every card have the lowest seven.
#[derive(Clone, Copy)]
struct Field(u64);

impl Field {
    const NAME: Self = Self(1);
    const RING: Self = Self(1 << 1);
    const HATCHED: Self = Self(1 << 2);
    const REFERENCE: Self = Self(1 << 3);
    const CONTACTS: Self = Self(1 << 4);
    const UNCONFIRMED: Self = Self(1 << 5);
    const SOLIDS: Self = Self(1 << 6);
    const JOURNEY: Self = Self(1 << 7);
    const NOTE: Self = Self(1 << 8);
    const SCALE_STEP: Self = Self(1 << 9);
    const POWDER_SHARE: Self = Self(1 << 10);
    const FAT_SUPPLEMENT: Self = Self(1 << 11);
    const POWDER_LABEL: Self = Self(1 << 12);
    const TEN_SPOONS: Self = Self(1 << 13);
    const SERVE: Self = Self(1 << 14);
    const TOOL: Self = Self(1 << 15);
    const SYRINGE: Self = Self(1 << 16);
    const LOSS_LIMIT: Self = Self(1 << 17);
    const DROP_ORDER: Self = Self(1 << 18);
    const SETTLE_IN: Self = Self(1 << 19);
    const WAITING: Self = Self(1 << 20);
    const ROOM: Self = Self(1 << 21);
    const PEAK: Self = Self(1 << 22);
    const TARGET: Self = Self(1 << 23);
    const SHORTEST_GAP: Self = Self(1 << 24);
    const RETRIES: Self = Self(1 << 25);
    const ASK_BEFORE_DROP: Self = Self(1 << 26);
    const BREEDER_HOURS: Self = Self(1 << 27);
    const REPORT_DAYS: Self = Self(1 << 28);
    const OWNER_NAME: Self = Self(1 << 29);
    const OWNER_NUMBER: Self = Self(1 << 30);
    const NOTE_FOR_CHICK: Self = Self(1 << 31);
    const MIXING_WATER: Self = Self(1 << 32);
    const SAID: Self = Self(1 << 33);
}

/// Every bit that has a meaning.
const ALL_BITS: u64 = (1 << 34) - 1;

/// The fields that stand in the bytes, and their bytes: the two windows, then in the order of [`Field`].
#[derive(Default)]
struct Fields {
    bits: u64,
    writer: ByteWriter,
}

impl Fields {
    fn put(&mut self, field: Field, is_there: bool, write: impl FnOnce(&mut ByteWriter)) {
        if is_there {
            self.bits |= field.0;
            write(&mut self.writer);
        }
    }

    fn text(&mut self, field: Field, text: &str) {
        self.put(field, !text.is_empty(), |writer| write_text(writer, text));
    }

    fn tenths(&mut self, field: Field, tenths: i32, usual: i32) {
        self.put(field, tenths != usual, |writer| writer.signed(tenths));
    }

    fn small(&mut self, field: Field, value: u8, usual: u8) {
        self.put(field, value != usual, |writer| writer.unsigned(value));
    }

    fn window(&mut self, field: Field, window: (Celsius, Celsius), usual: (Celsius, Celsius)) {
        self.put(field, window != usual, |writer| {
            writer.signed(window.0.tenths());
            writer.signed(window.1.tenths() - window.0.tenths());
        });
    }
}

/// Writes a plan; one without faults is read back as it is.
pub(crate) fn write_plan(writer: &mut ByteWriter, plan: &CarePlan) {
    let mut fields = Fields::default();
    fields.window(Field::SERVE, (plan.serve_from, plan.serve_to), USUAL.serve);
    fields.window(Field::ROOM, (plan.room_from, plan.room_to), USUAL.room);
    fields.text(Field::NAME, &plan.name);
    fields.text(Field::RING, &plan.ring);
    if let Some(hatched) = plan.hatched {
        fields.put(Field::HATCHED, true, |writer| write_day(writer, hatched));
    }
    if let Some(reference) = plan.reference {
        fields.put(Field::REFERENCE, true, |writer| {
            write_reference(writer, reference);
        });
    }
    fields.put(Field::CONTACTS, !plan.contacts.is_empty(), |writer| {
        writer.count(plan.contacts.len());
        for contact in &plan.contacts {
            write_choice(writer, contact.role);
            write_text(writer, &contact.name);
            write_text(writer, &contact.number);
        }
    });
    let unconfirmed = plan.unconfirmed.iter().map(|field| 1_u32 << field.code());
    let unconfirmed: u32 = unconfirmed.sum();
    fields.put(Field::UNCONFIRMED, unconfirmed != 0, |writer| {
        writer.unsigned(unconfirmed);
    });
    fields.text(Field::SOLIDS, &plan.solids);
    if let Some(journey) = &plan.journey {
        fields.put(Field::JOURNEY, true, |writer| {
            write_journey(writer, journey);
        });
    }
    fields.text(Field::NOTE, &plan.note);
    write_numbers(&mut fields, plan);
    write_choice(writer, plan.species);
    writer.unsigned(fields.bits);
    writer.count(plan.feeds.len());
    for feed in &plan.feeds {
        let minutes = u32::try_from(feed.time.minutes()).unwrap_or_default();
        writer.unsigned(u32::from(feed.slot.code()) * 1_440 + minutes);
        writer.signed(feed.volume.tenths());
    }
    writer.raw(&fields.writer.finish());
}

fn write_numbers(fields: &mut Fields, plan: &CarePlan) {
    fields.tenths(
        Field::SCALE_STEP,
        plan.scale_step.tenths(),
        USUAL.scale_step.tenths(),
    );
    fields.tenths(
        Field::POWDER_SHARE,
        plan.powder_fraction.tenths(),
        USUAL.powder_fraction.tenths(),
    );
    fields.tenths(
        Field::FAT_SUPPLEMENT,
        plan.fat_supplement_per_100_ml.tenths(),
        USUAL.fat_supplement_per_100_ml.tenths(),
    );
    if let Some(label) = plan.powder_label {
        fields.put(Field::POWDER_LABEL, true, |writer| {
            writer.unsigned(label.energy_kcal);
            writer.signed(label.fat.tenths());
            writer.signed(label.protein.tenths());
        });
    }
    if let Some(ten_spoons) = plan.ten_spoons {
        fields.put(Field::TEN_SPOONS, true, |writer| {
            writer.signed(ten_spoons.tenths());
        });
    }
    fields.put(Field::TOOL, plan.tool != USUAL.tool, |writer| {
        write_choice(writer, plan.tool);
    });
    fields.tenths(
        Field::SYRINGE,
        plan.syringe.tenths(),
        USUAL.syringe.tenths(),
    );
    fields.tenths(
        Field::LOSS_LIMIT,
        plan.loss_limit.tenths(),
        USUAL.loss_limit.tenths(),
    );
    let is_usual = plan.drop_order == USUAL.drop_order;
    fields.put(Field::DROP_ORDER, !is_usual, |writer| {
        writer.count(plan.drop_order.len());
        plan.drop_order
            .iter()
            .for_each(|slot| write_choice(writer, *slot));
    });
    fields.small(Field::SETTLE_IN, plan.settle_in_days, USUAL.settle_in_days);
    fields.small(Field::WAITING, plan.waiting_days, USUAL.waiting_days);
    if let Some(peak) = plan.peak {
        fields.put(Field::PEAK, true, |writer| write_reference(writer, peak));
    }
    if let Some(target) = plan.target {
        fields.put(Field::TARGET, true, |writer| writer.signed(target.tenths()));
    }
    if let Some(gap) = plan.shortest_gap_minutes {
        fields.put(Field::SHORTEST_GAP, true, |writer| writer.unsigned(gap));
    }
    let is_usual = plan.retries_minutes == CarePlan::RETRIES_MINUTES;
    fields.put(Field::RETRIES, !is_usual, |writer| {
        writer.count(plan.retries_minutes.len());
        for minutes in &plan.retries_minutes {
            writer.unsigned(*minutes);
        }
    });
    fields.put(Field::ASK_BEFORE_DROP, plan.ask_before_drop, |_| {});
    fields.text(Field::BREEDER_HOURS, &plan.breeder_hours);
    if let Some(days) = plan.report_days {
        fields.put(Field::REPORT_DAYS, true, |writer| writer.unsigned(days));
    }
    fields.text(Field::OWNER_NAME, &plan.owner_name);
    fields.text(Field::OWNER_NUMBER, &plan.owner_number);
    fields.text(Field::NOTE_FOR_CHICK, &plan.note_for_chick);
    fields.tenths(
        Field::MIXING_WATER,
        plan.mixing_water.tenths(),
        USUAL.mixing_water.tenths(),
    );
    fields.put(Field::SAID, !plan.said.is_empty(), |writer| {
        writer.count(plan.said.len());
        for (topic, text) in &plan.said {
            write_choice(writer, *topic);
            write_text(writer, text);
        }
    });
}

fn write_journey(writer: &mut ByteWriter, journey: &Journey) {
    writer.signed(journey.left.seconds());
    writer.signed(journey.expected.seconds() - journey.left.seconds());
    writer.signed(journey.breeder_offset.minutes());
    write_choice(writer, journey.shift);
    writer.unsigned(u8::from(journey.last_fed.is_some()));
    if let Some((at, volume)) = journey.last_fed {
        writer.signed(at.seconds() - journey.left.seconds());
        writer.signed(volume.tenths());
    }
}

/// Reads a plan.
///
/// # Errors
/// [`UnpackError`]; [`UnpackError::Refused`] for a plan with faults.
pub(crate) fn read_plan(reader: &mut ByteReader<'_>) -> Result<CarePlan, UnpackError> {
    let species = read_choice(reader)?;
    let bits = reader.unsigned(0..=ALL_BITS)?;
    let count = reader.count(CarePlan::MOST_FEEDS)?;
    let mut feeds = Vec::with_capacity(count);
    for _ in 0..count {
        feeds.push(read_feed(reader)?);
    }
    let mut fields = Reading { bits, reader };
    let (serve_from, serve_to) = fields.or(Field::SERVE, USUAL.serve, window)?;
    let (serve_from, serve_to) = CarePlan::serving_held(serve_from, serve_to);
    let (room_from, room_to) = fields.or(Field::ROOM, USUAL.room, window)?;
    let plan = CarePlan {
        species,
        feeds,
        name: fields.text(Field::NAME)?,
        ring: fields.text(Field::RING)?,
        hatched: fields.optional(Field::HATCHED, read_day)?,
        reference: fields.optional(Field::REFERENCE, read_reference)?,
        contacts: fields.or(Field::CONTACTS, Vec::new(), read_contacts)?,
        unconfirmed: fields.or(Field::UNCONFIRMED, BTreeSet::new(), read_unconfirmed)?,
        solids: fields.text(Field::SOLIDS)?,
        journey: fields.optional(Field::JOURNEY, read_journey)?,
        note: fields.text(Field::NOTE)?,
        scale_step: fields.or(Field::SCALE_STEP, USUAL.scale_step, grams)?,
        powder_fraction: fields.or(Field::POWDER_SHARE, USUAL.powder_fraction, percent)?,
        fat_supplement_per_100_ml: fields.or(
            Field::FAT_SUPPLEMENT,
            USUAL.fat_supplement_per_100_ml,
            grams,
        )?,
        powder_label: fields.optional(Field::POWDER_LABEL, |reader| {
            Ok(PowderLabel {
                energy_kcal: reader.unsigned(0..=u16::MAX)?,
                fat: percent(reader)?,
                protein: percent(reader)?,
            })
        })?,
        ten_spoons: fields.optional(Field::TEN_SPOONS, grams)?,
        serve_from,
        serve_to,
        tool: fields.or(Field::TOOL, USUAL.tool, read_choice)?,
        syringe: fields.or(Field::SYRINGE, USUAL.syringe, |reader| {
            read_tenths(reader, Millilitres::from_tenths)
        })?,
        loss_limit: fields.or(Field::LOSS_LIMIT, USUAL.loss_limit, percent)?,
        drop_order: fields.or(Field::DROP_ORDER, USUAL.drop_order.into(), read_slots)?,
        settle_in_days: fields.or(Field::SETTLE_IN, USUAL.settle_in_days, small)?,
        waiting_days: fields.or(Field::WAITING, USUAL.waiting_days, small)?,
        room_from,
        room_to,
        peak: fields.optional(Field::PEAK, read_reference)?,
        target: fields.optional(Field::TARGET, grams)?,
        shortest_gap_minutes: fields.optional(Field::SHORTEST_GAP, minutes)?,
        retries_minutes: fields.or(Field::RETRIES, CarePlan::RETRIES_MINUTES.into(), |reader| {
            let count = reader.count(CarePlan::MOST_RETRIES)?;
            (0..count).map(|_| minutes(reader)).collect()
        })?,
        ask_before_drop: bits & Field::ASK_BEFORE_DROP.0 != 0,
        breeder_hours: fields.text(Field::BREEDER_HOURS)?,
        report_days: fields.optional(Field::REPORT_DAYS, small)?,
        owner_name: fields.text(Field::OWNER_NAME)?,
        owner_number: fields.text(Field::OWNER_NUMBER)?,
        note_for_chick: fields.text(Field::NOTE_FOR_CHICK)?,
        mixing_water: fields.or(Field::MIXING_WATER, USUAL.mixing_water, |reader| {
            read_tenths(reader, Celsius::from_tenths)
        })?,
        said: fields.or(Field::SAID, BTreeMap::new(), read_said)?,
    };
    let change = Change::ChickAdded(Box::new(plan));
    check_change(&change).map_err(UnpackError::Refused)?;
    change.plan().cloned().ok_or(UnpackError::OutOfPlace)
}

struct Reading<'a, 'b> {
    bits: u64,
    reader: &'a mut ByteReader<'b>,
}

impl<'b> Reading<'_, 'b> {
    fn optional<T>(
        &mut self,
        field: Field,
        read: impl FnOnce(&mut ByteReader<'b>) -> Result<T, UnpackError>,
    ) -> Result<Option<T>, UnpackError> {
        if self.bits & field.0 == 0 {
            return Ok(None);
        }
        read(self.reader).map(Some)
    }

    fn or<T>(
        &mut self,
        field: Field,
        usual: T,
        read: impl FnOnce(&mut ByteReader<'b>) -> Result<T, UnpackError>,
    ) -> Result<T, UnpackError> {
        Ok(self.optional(field, read)?.unwrap_or(usual))
    }

    fn text(&mut self, field: Field) -> Result<String, UnpackError> {
        self.or(field, String::new(), read_text)
    }
}

fn write_reference(writer: &mut ByteWriter, reference: Reference) {
    writer.signed(reference.weight.tenths());
    write_day(writer, reference.day);
}

fn read_reference(reader: &mut ByteReader<'_>) -> Result<Reference, UnpackError> {
    Ok(Reference {
        weight: grams(reader)?,
        day: read_day(reader)?,
    })
}

fn minutes(reader: &mut ByteReader<'_>) -> Result<u16, UnpackError> {
    Ok(reader.unsigned(0..=u16::MAX)?)
}

fn read_feed(reader: &mut ByteReader<'_>) -> Result<PlannedFeed, UnpackError> {
    let slot_and_minutes = reader.unsigned(0..=u16::MAX)?;
    let [_, slot] = (slot_and_minutes / 1_440).to_be_bytes();
    Ok(PlannedFeed {
        slot: choice(slot)?,
        time: WallTime::from_minutes(slot_and_minutes.into()),
        volume: read_tenths(reader, Millilitres::from_tenths)?,
    })
}

fn read_contacts(reader: &mut ByteReader<'_>) -> Result<Vec<Contact>, UnpackError> {
    let count = reader.count(CarePlan::MOST_CONTACTS)?;
    let mut contacts = Vec::with_capacity(count);
    for _ in 0..count {
        contacts.push(Contact {
            role: read_choice(reader)?,
            name: read_text(reader)?,
            number: read_text(reader)?,
        });
    }
    Ok(contacts)
}

fn read_said(reader: &mut ByteReader<'_>) -> Result<BTreeMap<Topic, String>, UnpackError> {
    let count = reader.count(Topic::ALL.len())?;
    let mut texts = Vec::with_capacity(count);
    for _ in 0..count {
        texts.push((read_choice(reader)?, read_text(reader)?));
    }
    Ok(said_of(texts))
}

fn read_unconfirmed(reader: &mut ByteReader<'_>) -> Result<BTreeSet<PlanField>, UnpackError> {
    let bits = reader.unsigned(0..=(1_u32 << PlanField::ALL.len()) - 1)?;
    let is_there = |field: &PlanField| bits & (1 << field.code()) != 0;
    Ok(set_of(PlanField::ALL.into_iter().filter(is_there)))
}

fn read_slots(reader: &mut ByteReader<'_>) -> Result<Vec<Slot>, UnpackError> {
    let count = reader.count(Slot::ALL.len())?;
    let mut slots = Vec::with_capacity(count);
    for _ in 0..count {
        slots.push(read_choice(reader)?);
    }
    Ok(slots)
}

fn read_journey(reader: &mut ByteReader<'_>) -> Result<Journey, UnpackError> {
    let seconds = read_seconds(reader)?;
    let epoch_to_earliest = Moment::EARLIEST.seconds();
    let since = seconds.checked_sub(epoch_to_earliest);
    let left = moment_after(Moment::EARLIEST, since.ok_or(UnpackError::OutOfPlace)?)?;
    Ok(Journey {
        left,
        expected: moment_after(left, read_seconds(reader)?)?,
        breeder_offset: read_offset(reader)?,
        shift: read_choice(reader)?,
        last_fed: if reader.unsigned(0..=1_u8)? == 1 {
            let at = moment_after(left, read_seconds(reader)?)?;
            Some((at, read_tenths(reader, Millilitres::from_tenths)?))
        } else {
            None
        },
    })
}

fn window(reader: &mut ByteReader<'_>) -> Result<(Celsius, Celsius), UnpackError> {
    let from = read_tenths(reader, Celsius::from_tenths)?;
    let width: i32 = reader.signed(-10_000..=10_000)?;
    let to = Celsius::from_tenths(i64::from(from.tenths() + width));
    Ok((from, to.map_err(UnpackError::Quantity)?))
}

fn grams(reader: &mut ByteReader<'_>) -> Result<Grams, UnpackError> {
    read_tenths(reader, Grams::from_tenths)
}

fn percent(reader: &mut ByteReader<'_>) -> Result<Percent, UnpackError> {
    read_tenths(reader, Percent::from_tenths)
}

fn small(reader: &mut ByteReader<'_>) -> Result<u8, UnpackError> {
    Ok(reader.unsigned(0..=u8::MAX)?)
}

#[cfg(test)]
mod tests {
    use crate::share::plan_bytes::*;
    use crate::share::unpack::outside;

    /// 33 fields have a bit each, so the most is 2^33 - 1 = 8,589,934,591.
    #[test]
    fn a_plan_with_an_unknown_field_is_refused() {
        // Species 10; 2^34 = 64 × 128^4 in groups of seven bits.
        let mut reader = ByteReader::new(&[10, 0x80, 0x80, 0x80, 0x80, 64, 0]);
        let read = read_plan(&mut reader);
        assert_eq!(read, Err(outside(1, 17_179_869_184, 17_179_869_183)));
    }

    /// Ten fields can be unconfirmed, so the most is 2^10 - 1 = 1,023.
    #[test]
    fn an_unknown_unconfirmed_field_is_refused() {
        // 1,024 is 8 × 128.
        let mut reader = ByteReader::new(&[0x80, 8]);
        let read = read_unconfirmed(&mut reader);
        assert_eq!(read, Err(outside(0, 1_024, 1_023)));
    }

    #[test]
    fn the_six_feeds_of_a_day_are_known_and_no_seventh() {
        // The last minute of the day at bedtime, 6 × 1,440 - 1 = 8,639 = 63 + 67 × 128, then 30.0 ml,
        // 600 with a sign.
        let mut reader = ByteReader::new(&[63 + 128, 67, 88 + 128, 4]);
        let feed = read_feed(&mut reader).unwrap();
        assert_eq!((feed.slot, feed.time.minutes()), (Slot::Bedtime, 1_439));
        // One minute more.
        let mut reader = ByteReader::new(&[64 + 128, 67, 88 + 128, 4]);
        let refusal = UnpackError::UnknownChoice { code: 6 };
        assert_eq!(read_feed(&mut reader), Err(refusal));
    }
}

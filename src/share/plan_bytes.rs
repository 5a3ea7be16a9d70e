//! A care plan as few bytes.
//!
//! A field that holds what [`USUAL`] says is left out. Those values belong to this form and not to
//! the app: when a later build changes its own defaults, a card made before still says what its
//! breeder saw. Feeds and species always stand there.

use std::collections::BTreeSet;

use crate::domain::journal::{Change, check_change};
use crate::domain::moment::{Moment, WallTime};
use crate::domain::plan::{
    CarePlan, Contact, Journey, PlanField, PlannedFeed, PowderLabel, Reference, Slot, Tool,
};
use crate::domain::units::{Celsius, Grams, Millilitres, Percent};
use crate::share::code::Coded;
use crate::share::unpack::{
    UnpackError, choice, moment_after, read_choice, read_day, read_offset, read_seconds,
    read_tenths, read_text, write_choice, write_day, write_text,
};
use crate::share::varint::{ByteReader, ByteWriter};

/// What a field that is left out holds.
struct Usual {
    scale_step: Grams,
    powder_share: Percent,
    fat_supplement_per_100_ml: Grams,
    serve: (Celsius, Celsius),
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
    powder_share: Percent::whole(25),
    fat_supplement_per_100_ml: Grams::whole(0),
    serve: (Celsius::whole(39), Celsius::tenths_held(405)),
    tool: Tool::Syringe,
    syringe: Millilitres::whole(30),
    loss_limit: Percent::whole(10),
    drop_order: [Slot::Midday, Slot::Morning, Slot::Bedtime],
    settle_in_days: 7,
    waiting_days: 5,
    room: (Celsius::whole(24), Celsius::whole(27)),
};

/// Which fields stand in the bytes: one bit each, those of nearly every card in the lowest seven.
#[derive(Clone, Copy)]
enum Field {
    Name,
    Ring,
    Hatched,
    Reference,
    Contacts,
    Unconfirmed,
    Solids,
    Journey,
    Note,
    ScaleStep,
    PowderShare,
    FatSupplement,
    PowderLabel,
    TenSpoons,
    Serve,
    Tool,
    Syringe,
    LossLimit,
    DropOrder,
    SettleIn,
    Waiting,
    Room,
}

impl Field {
    const fn bit(self) -> u32 {
        match self {
            Self::Name => 1,
            Self::Ring => 1 << 1,
            Self::Hatched => 1 << 2,
            Self::Reference => 1 << 3,
            Self::Contacts => 1 << 4,
            Self::Unconfirmed => 1 << 5,
            Self::Solids => 1 << 6,
            Self::Journey => 1 << 7,
            Self::Note => 1 << 8,
            Self::ScaleStep => 1 << 9,
            Self::PowderShare => 1 << 10,
            Self::FatSupplement => 1 << 11,
            Self::PowderLabel => 1 << 12,
            Self::TenSpoons => 1 << 13,
            Self::Serve => 1 << 14,
            Self::Tool => 1 << 15,
            Self::Syringe => 1 << 16,
            Self::LossLimit => 1 << 17,
            Self::DropOrder => 1 << 18,
            Self::SettleIn => 1 << 19,
            Self::Waiting => 1 << 20,
            Self::Room => 1 << 21,
        }
    }
}

/// Every bit that has a meaning.
const ALL_BITS: u32 = (1 << 22) - 1;

/// The fields that stand in the bytes, and their bytes: the two windows, then in the order of [`Field`].
#[derive(Default)]
struct Fields {
    bits: u32,
    writer: ByteWriter,
}

impl Fields {
    fn put(&mut self, field: Field, is_there: bool, write: impl FnOnce(&mut ByteWriter)) {
        if is_there {
            self.bits |= field.bit();
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
    fields.window(Field::Serve, (plan.serve_from, plan.serve_to), USUAL.serve);
    fields.window(Field::Room, (plan.room_from, plan.room_to), USUAL.room);
    fields.text(Field::Name, &plan.name);
    fields.text(Field::Ring, &plan.ring);
    if let Some(hatched) = plan.hatched {
        fields.put(Field::Hatched, true, |writer| write_day(writer, hatched));
    }
    if let Some(Reference { weight, day }) = plan.reference {
        fields.put(Field::Reference, true, |writer| {
            writer.signed(weight.tenths());
            write_day(writer, day);
        });
    }
    fields.put(Field::Contacts, !plan.contacts.is_empty(), |writer| {
        writer.count(plan.contacts.len());
        for contact in &plan.contacts {
            write_choice(writer, contact.role);
            write_text(writer, &contact.name);
            write_text(writer, &contact.number);
        }
    });
    let unconfirmed = plan.unconfirmed.iter().map(|field| 1_u32 << field.code());
    let unconfirmed: u32 = unconfirmed.sum();
    fields.put(Field::Unconfirmed, unconfirmed != 0, |writer| {
        writer.unsigned(unconfirmed);
    });
    fields.text(Field::Solids, &plan.solids);
    if let Some(journey) = &plan.journey {
        fields.put(Field::Journey, true, |writer| {
            write_journey(writer, journey);
        });
    }
    fields.text(Field::Note, &plan.note);
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
        Field::ScaleStep,
        plan.scale_step.tenths(),
        USUAL.scale_step.tenths(),
    );
    fields.tenths(
        Field::PowderShare,
        plan.powder_share.tenths(),
        USUAL.powder_share.tenths(),
    );
    fields.tenths(
        Field::FatSupplement,
        plan.fat_supplement_per_100_ml.tenths(),
        USUAL.fat_supplement_per_100_ml.tenths(),
    );
    if let Some(label) = plan.powder_label {
        fields.put(Field::PowderLabel, true, |writer| {
            writer.unsigned(label.energy_kcal);
            writer.signed(label.fat.tenths());
            writer.signed(label.protein.tenths());
        });
    }
    if let Some(ten_spoons) = plan.ten_spoons {
        fields.put(Field::TenSpoons, true, |writer| {
            writer.signed(ten_spoons.tenths());
        });
    }
    fields.put(Field::Tool, plan.tool != USUAL.tool, |writer| {
        write_choice(writer, plan.tool);
    });
    fields.tenths(
        Field::Syringe,
        plan.syringe.tenths(),
        USUAL.syringe.tenths(),
    );
    fields.tenths(
        Field::LossLimit,
        plan.loss_limit.tenths(),
        USUAL.loss_limit.tenths(),
    );
    let is_usual = plan.drop_order == USUAL.drop_order;
    fields.put(Field::DropOrder, !is_usual, |writer| {
        writer.count(plan.drop_order.len());
        plan.drop_order
            .iter()
            .for_each(|slot| write_choice(writer, *slot));
    });
    fields.small(Field::SettleIn, plan.settle_in_days, USUAL.settle_in_days);
    fields.small(Field::Waiting, plan.waiting_days, USUAL.waiting_days);
}

fn write_journey(writer: &mut ByteWriter, journey: &Journey) {
    writer.signed(journey.left.seconds());
    writer.signed(journey.expected.seconds() - journey.left.seconds());
    writer.signed(journey.breeder_offset.minutes());
    write_choice(writer, journey.shift);
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
    let (serve_from, serve_to) = fields.or(Field::Serve, USUAL.serve, window)?;
    let (room_from, room_to) = fields.or(Field::Room, USUAL.room, window)?;
    let plan = CarePlan {
        species,
        feeds,
        name: fields.text(Field::Name)?,
        ring: fields.text(Field::Ring)?,
        hatched: fields.optional(Field::Hatched, read_day)?,
        reference: fields.optional(Field::Reference, |reader| {
            Ok(Reference {
                weight: read_tenths(reader, Grams::from_tenths)?,
                day: read_day(reader)?,
            })
        })?,
        contacts: fields.or(Field::Contacts, Vec::new(), read_contacts)?,
        unconfirmed: fields.or(Field::Unconfirmed, BTreeSet::new(), read_unconfirmed)?,
        solids: fields.text(Field::Solids)?,
        journey: fields.optional(Field::Journey, read_journey)?,
        note: fields.text(Field::Note)?,
        scale_step: fields.or(Field::ScaleStep, USUAL.scale_step, grams)?,
        powder_share: fields.or(Field::PowderShare, USUAL.powder_share, percent)?,
        fat_supplement_per_100_ml: fields.or(
            Field::FatSupplement,
            USUAL.fat_supplement_per_100_ml,
            grams,
        )?,
        powder_label: fields.optional(Field::PowderLabel, |reader| {
            Ok(PowderLabel {
                energy_kcal: reader.unsigned(0..=u16::MAX)?,
                fat: percent(reader)?,
                protein: percent(reader)?,
            })
        })?,
        ten_spoons: fields.optional(Field::TenSpoons, grams)?,
        serve_from,
        serve_to,
        tool: fields.or(Field::Tool, USUAL.tool, read_choice)?,
        syringe: fields.or(Field::Syringe, USUAL.syringe, |reader| {
            read_tenths(reader, Millilitres::from_tenths)
        })?,
        loss_limit: fields.or(Field::LossLimit, USUAL.loss_limit, percent)?,
        drop_order: fields.or(Field::DropOrder, USUAL.drop_order.into(), read_slots)?,
        settle_in_days: fields.or(Field::SettleIn, USUAL.settle_in_days, small)?,
        waiting_days: fields.or(Field::Waiting, USUAL.waiting_days, small)?,
        room_from,
        room_to,
    };
    let change = Change::PlanSet(Box::new(plan));
    check_change(&change).map_err(UnpackError::Refused)?;
    change.plan().cloned().ok_or(UnpackError::OutOfPlace)
}

struct Reading<'a, 'b> {
    bits: u32,
    reader: &'a mut ByteReader<'b>,
}

impl<'b> Reading<'_, 'b> {
    fn optional<T>(
        &mut self,
        field: Field,
        read: impl FnOnce(&mut ByteReader<'b>) -> Result<T, UnpackError>,
    ) -> Result<Option<T>, UnpackError> {
        if self.bits & field.bit() == 0 {
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

fn read_feed(reader: &mut ByteReader<'_>) -> Result<PlannedFeed, UnpackError> {
    let slot_and_minutes = reader.unsigned(0..=6 * 1_440_u16 - 1)?;
    let [_, slot] = (slot_and_minutes / 1_440).to_be_bytes();
    Ok(PlannedFeed {
        slot: choice(slot)?,
        time: WallTime::from_minutes(i32::from(slot_and_minutes % 1_440)),
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

fn read_unconfirmed(reader: &mut ByteReader<'_>) -> Result<BTreeSet<PlanField>, UnpackError> {
    let bits = reader.unsigned(0..=(1_u32 << PlanField::ALL.len()) - 1)?;
    let is_there = |field: &PlanField| bits & (1 << field.code()) != 0;
    Ok(PlanField::ALL.into_iter().filter(is_there).collect())
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

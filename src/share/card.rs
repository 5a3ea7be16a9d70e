//! The handover card: one chick's plan as text short enough for a link and a QR code.

use crate::domain::journal::entries::ChickId;
use crate::domain::plan::care_plan::CarePlan;
use crate::share::envelope::{Kind, seal, seal_as_digits};
use crate::share::plan_bytes::{read_plan, write_plan};
use crate::share::unpack::{UnpackError, read_id};
use crate::share::varint::{ByteReader, ByteWriter};

/// A card as the text after `#` in a link: letters, digits, `-`, `_` and one point.
///
/// The same chick and plan always give the same text. A plan with faults is written as it is, and
/// refused by whoever reads it.
pub fn card_to_link_text(chick: ChickId, plan: &CarePlan) -> String {
    seal(Kind::Card, &card_bytes(chick, plan))
}

/// A card as the text after `#` in a QR code: longer to read, but a fifth fewer squares.
pub fn card_to_qr_text(chick: ChickId, plan: &CarePlan) -> String {
    seal_as_digits(Kind::Card, &card_bytes(chick, plan))
}

/// A changed plan for a chick that is on the other phone already, as the text after `#` in a link.
pub fn plan_change_to_link_text(chick: ChickId, plan: &CarePlan) -> String {
    seal(Kind::PlanChange, &card_bytes(chick, plan))
}

fn card_bytes(chick: ChickId, plan: &CarePlan) -> Vec<u8> {
    let mut writer = ByteWriter::default();
    writer.raw(&chick.0);
    write_plan(&mut writer, plan);
    writer.finish()
}

/// The chick and plan of a card or of a changed plan.
pub(crate) fn card_of_bytes(bytes: &[u8]) -> Result<(ChickId, CarePlan), UnpackError> {
    let mut reader = ByteReader::new(bytes);
    let chick = ChickId(read_id(&mut reader)?);
    let plan = read_plan(&mut reader)?;
    reader.finish()?;
    Ok((chick, plan))
}

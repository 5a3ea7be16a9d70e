//! A care plan part by part, so that a card can be shown line by line and two plans compared.

use crate::domain::plan::care_plan::{CarePlan, Contact, Role, Slot};

/// One line of a plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PlanPart {
    /// The species.
    Species,
    /// The chick's name.
    Name,
    /// Ring or chip number.
    Ring,
    /// Hatch day.
    Hatched,
    /// Handover weight and its day.
    Reference,
    /// A feed of the day: time and volume.
    Feed(Slot),
    /// Share of powder in the mix.
    PowderShare,
    /// Fat supplement.
    FatSupplement,
    /// What the powder's label says.
    PowderLabel,
    /// Powder in ten spoons.
    TenSpoons,
    /// Lowest and highest temperature to serve at.
    ServingWindow,
    /// What formula is given with.
    Tool,
    /// Size of the syringe.
    Syringe,
    /// Step of the scale.
    ScaleStep,
    /// Loss at which the breeder wants a call.
    LossLimit,
    /// Order in which feeds are dropped.
    DropOrder,
    /// Days after arrival without any drop.
    SettleIn,
    /// Days between two drops.
    Waiting,
    /// Lowest and highest room temperature.
    Room,
    /// The way to the new home.
    Journey,
    /// The people of a role.
    Contact(Role),
    /// Solid foods on offer.
    Solids,
    /// Anything else.
    Note,
}

impl PlanPart {
    /// Every part, in the order in which a card is read.
    pub const ALL: [Self; 30] = [
        Self::Species,
        Self::Name,
        Self::Ring,
        Self::Hatched,
        Self::Reference,
        Self::Feed(Slot::EarlyMorning),
        Self::Feed(Slot::Morning),
        Self::Feed(Slot::Midday),
        Self::Feed(Slot::Afternoon),
        Self::Feed(Slot::Evening),
        Self::Feed(Slot::Bedtime),
        Self::PowderShare,
        Self::FatSupplement,
        Self::PowderLabel,
        Self::TenSpoons,
        Self::ServingWindow,
        Self::Tool,
        Self::Syringe,
        Self::ScaleStep,
        Self::LossLimit,
        Self::DropOrder,
        Self::SettleIn,
        Self::Waiting,
        Self::Room,
        Self::Journey,
        Self::Contact(Role::Breeder),
        Self::Contact(Role::AvianVet),
        Self::Contact(Role::EmergencyVet),
        Self::Solids,
        Self::Note,
    ];

    fn is_same(self, one: &CarePlan, other: &CarePlan) -> bool {
        let people = |plan: &CarePlan, role| -> Vec<Contact> {
            let people = plan.contacts.iter().filter(|contact| contact.role == role);
            people.cloned().collect()
        };
        match self {
            Self::Species => one.species == other.species,
            Self::Name => one.name == other.name,
            Self::Ring => one.ring == other.ring,
            Self::Hatched => one.hatched == other.hatched,
            Self::Reference => one.reference == other.reference,
            Self::Feed(slot) => one.feed(slot) == other.feed(slot),
            Self::PowderShare => one.powder_fraction == other.powder_fraction,
            Self::FatSupplement => one.fat_supplement_per_100_ml == other.fat_supplement_per_100_ml,
            Self::PowderLabel => one.powder_label == other.powder_label,
            Self::TenSpoons => one.ten_spoons == other.ten_spoons,
            Self::ServingWindow => {
                (one.serve_from, one.serve_to) == (other.serve_from, other.serve_to)
            }
            Self::Tool => one.tool == other.tool,
            Self::Syringe => one.syringe == other.syringe,
            Self::ScaleStep => one.scale_step == other.scale_step,
            Self::LossLimit => one.loss_limit == other.loss_limit,
            Self::DropOrder => one.drop_order == other.drop_order,
            Self::SettleIn => one.settle_in_days == other.settle_in_days,
            Self::Waiting => one.waiting_days == other.waiting_days,
            Self::Room => (one.room_from, one.room_to) == (other.room_from, other.room_to),
            Self::Journey => one.journey == other.journey,
            Self::Contact(role) => people(one, role) == people(other, role),
            Self::Solids => one.solids == other.solids,
            Self::Note => one.note == other.note,
        }
    }
}

/// The parts in which two plans differ, in the order in which a card is read.
///
/// Whether a value is still an unconfirmed default is no difference by itself.
pub fn plan_difference(old: &CarePlan, new: &CarePlan) -> Vec<PlanPart> {
    let differs = |part: &PlanPart| !part.is_same(old, new);
    PlanPart::ALL.into_iter().filter(differs).collect()
}

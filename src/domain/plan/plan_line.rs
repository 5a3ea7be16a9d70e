//! A care plan line by line, so that a card can be read, two plans compared, and one line of one plan
//! put into another.

use crate::domain::plan::care_plan::{CarePlan, Contact, PlanField, Role, Slot};
use crate::domain::plan::parts::PartKind;
use crate::domain::plan::topic::Topic;
use crate::domain::quantity::order::{sorted, sorted_by};

/// One line of a plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PlanLine {
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
    /// Highest weight and its day.
    Peak,
    /// The weight it should come to.
    Target,
    /// A feed of the day: time and volume.
    Feed(Slot),
    /// Shortest gap between two feeds.
    ShortestGap,
    /// When a refused feed is offered again.
    Retries,
    /// Share of powder in the mix.
    PowderShare,
    /// Fat supplement.
    FatSupplement,
    /// What the powder's label says.
    PowderLabel,
    /// Powder in ten spoons.
    TenSpoons,
    /// How warm the water to mix with is.
    MixingWater,
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
    /// Whether to ask before any drop.
    AskBeforeDrop,
    /// Lowest and highest room temperature.
    Room,
    /// The way to the new home.
    Journey,
    /// The people of a role.
    Contact(Role),
    /// When the breeder can be rung.
    BreederHours,
    /// Days between two reports.
    ReportDays,
    /// The owner's own name and number.
    Owner,
    /// Solid foods on offer.
    Solids,
    /// What is said about a topic.
    Said(Topic),
    /// Anything else, for every chick.
    Note,
    /// Anything else, for this chick only.
    NoteForChick,
}

impl PlanLine {
    /// Every line, in the order in which a card is read.
    pub const ALL: [Self; 50] = [
        Self::Species,
        Self::Name,
        Self::Ring,
        Self::Hatched,
        Self::Reference,
        Self::Said(Topic::Sex),
        Self::Said(Topic::Wings),
        Self::Said(Topic::Papers),
        Self::Peak,
        Self::Target,
        Self::Feed(Slot::EarlyMorning),
        Self::Feed(Slot::Morning),
        Self::Feed(Slot::Midday),
        Self::Feed(Slot::Afternoon),
        Self::Feed(Slot::Evening),
        Self::Feed(Slot::Bedtime),
        Self::ShortestGap,
        Self::Retries,
        Self::Said(Topic::AfterRefusal),
        Self::Said(Topic::TakesFood),
        Self::Said(Topic::RoundCrop),
        Self::Said(Topic::PowderName),
        Self::Said(Topic::Recipe),
        Self::PowderShare,
        Self::FatSupplement,
        Self::PowderLabel,
        Self::TenSpoons,
        Self::MixingWater,
        Self::ServingWindow,
        Self::Tool,
        Self::Syringe,
        Self::ScaleStep,
        Self::LossLimit,
        Self::DropOrder,
        Self::SettleIn,
        Self::Waiting,
        Self::AskBeforeDrop,
        Self::Room,
        Self::Said(Topic::Night),
        Self::Said(Topic::Bath),
        Self::Journey,
        Self::Contact(Role::Breeder),
        Self::BreederHours,
        Self::ReportDays,
        Self::Owner,
        Self::Contact(Role::AvianVet),
        Self::Contact(Role::EmergencyVet),
        Self::Solids,
        Self::Note,
        Self::NoteForChick,
    ];

    /// Puts this line of `from` into `into`.
    pub fn copy(self, from: &CarePlan, into: &mut CarePlan) {
        match self {
            Self::Species => into.species = from.species,
            Self::Name => into.name.clone_from(&from.name),
            Self::Ring => into.ring.clone_from(&from.ring),
            Self::Hatched => into.hatched = from.hatched,
            Self::Reference => into.reference = from.reference,
            Self::Peak => into.peak = from.peak,
            Self::Target => into.target = from.target,
            Self::Feed(slot) => {
                into.feeds.retain(|feed| feed.slot != slot);
                into.feeds.extend(from.feed(slot));
                into.feeds = sorted(std::mem::take(&mut into.feeds));
            }
            Self::ShortestGap => into.shortest_gap_minutes = from.shortest_gap_minutes,
            Self::Retries => into.retries_minutes.clone_from(&from.retries_minutes),
            Self::PowderShare => into.powder_fraction = from.powder_fraction,
            Self::FatSupplement => {
                into.fat_supplement_per_100_ml = from.fat_supplement_per_100_ml;
            }
            Self::PowderLabel => into.powder_label = from.powder_label,
            Self::TenSpoons => into.ten_spoons = from.ten_spoons,
            Self::MixingWater => into.mixing_water = from.mixing_water,
            Self::ServingWindow => {
                (into.serve_from, into.serve_to) = (from.serve_from, from.serve_to);
            }
            Self::Tool => into.tool = from.tool,
            Self::Syringe => into.syringe = from.syringe,
            Self::ScaleStep => into.scale_step = from.scale_step,
            Self::LossLimit => into.loss_limit = from.loss_limit,
            Self::DropOrder => into.drop_order.clone_from(&from.drop_order),
            Self::SettleIn => into.settle_in_days = from.settle_in_days,
            Self::Waiting => into.waiting_days = from.waiting_days,
            Self::AskBeforeDrop => into.ask_before_drop = from.ask_before_drop,
            Self::Room => (into.room_from, into.room_to) = (from.room_from, from.room_to),
            Self::Journey => into.journey = from.journey,
            Self::Contact(role) => {
                let people = from.contacts.iter().filter(|contact| contact.role == role);
                into.contacts.retain(|contact| contact.role != role);
                into.contacts.extend(people.cloned());
                let by_role = |one: &Contact, other: &Contact| one.role.cmp(&other.role);
                into.contacts = sorted_by(std::mem::take(&mut into.contacts), by_role);
            }
            Self::BreederHours => into.breeder_hours.clone_from(&from.breeder_hours),
            Self::ReportDays => into.report_days = from.report_days,
            Self::Owner => {
                into.owner_name.clone_from(&from.owner_name);
                into.owner_number.clone_from(&from.owner_number);
            }
            Self::Solids => into.solids.clone_from(&from.solids),
            Self::Said(topic) => into.say(topic, from.said(topic)),
            Self::Note => into.note.clone_from(&from.note),
            Self::NoteForChick => into.note_for_chick.clone_from(&from.note_for_chick),
        }
    }

    /// The part of the plan in which it stands.
    pub const fn part(self) -> PartKind {
        match self {
            Self::Species | Self::Name | Self::Ring | Self::Hatched => PartKind::Chick,
            Self::Contact(role) => role.part(),
            Self::BreederHours | Self::ReportDays => PartKind::People,
            Self::Owner => PartKind::Vets,
            Self::TenSpoons | Self::Syringe | Self::ScaleStep => PartKind::Equipment,
            Self::Feed(_) | Self::ShortestGap | Self::Retries | Self::Tool => PartKind::Feeds,
            Self::PowderShare
            | Self::FatSupplement
            | Self::PowderLabel
            | Self::MixingWater
            | Self::ServingWindow => PartKind::Formula,
            Self::Reference | Self::Peak | Self::Target | Self::LossLimit => PartKind::Weight,
            Self::DropOrder
            | Self::SettleIn
            | Self::Waiting
            | Self::AskBeforeDrop
            | Self::Solids => PartKind::Weaning,
            Self::Room => PartKind::Home,
            Self::Journey => PartKind::Journey,
            Self::Said(topic) => topic.part(),
            Self::Note | Self::NoteForChick => PartKind::Words,
        }
    }

    /// The field whose default it may still hold.
    pub const fn field(self) -> Option<PlanField> {
        match self {
            Self::Feed(_) => Some(PlanField::Feeds),
            Self::PowderShare => Some(PlanField::PowderShare),
            Self::ServingWindow => Some(PlanField::ServingWindow),
            Self::MixingWater => Some(PlanField::MixingWater),
            Self::LossLimit => Some(PlanField::LossLimit),
            Self::DropOrder => Some(PlanField::DropOrder),
            Self::SettleIn => Some(PlanField::SettleIn),
            Self::Waiting => Some(PlanField::WaitingDays),
            Self::Room => Some(PlanField::Room),
            Self::Tool => Some(PlanField::Tool),
            Self::Species
            | Self::Name
            | Self::Ring
            | Self::Syringe
            | Self::Hatched
            | Self::Reference
            | Self::Peak
            | Self::Target
            | Self::ShortestGap
            | Self::Retries
            | Self::FatSupplement
            | Self::PowderLabel
            | Self::TenSpoons
            | Self::ScaleStep
            | Self::AskBeforeDrop
            | Self::Journey
            | Self::Contact(_)
            | Self::BreederHours
            | Self::ReportDays
            | Self::Owner
            | Self::Solids
            | Self::Said(_)
            | Self::Note
            | Self::NoteForChick => None,
        }
    }
}

/// The lines in which two plans differ, in the order in which a card is read.
///
/// Whether a value is still an unconfirmed default is no difference by itself.
pub fn plan_difference(old: &CarePlan, new: &CarePlan) -> Vec<PlanLine> {
    // The people of a plan stand in the order of their roles, however they were typed.
    let in_order = |plan: &CarePlan| {
        let mut plan = plan.clone();
        PlanLine::Contact(Role::Breeder).copy(&plan.clone(), &mut plan);
        plan
    };
    let (old, new) = (in_order(old), in_order(new));
    let differs = |line: &PlanLine| {
        let mut copied = old.clone();
        line.copy(&new, &mut copied);
        copied != old
    };
    PlanLine::ALL.into_iter().filter(differs).collect()
}

//! A care plan in parts, so that a change of one thing leaves all others as they are.
//!
//! A new field of the plan is added to [`CarePlan`] and to one list below; nothing else here changes.

use std::collections::{BTreeMap, BTreeSet};

use crate::domain::plan::care_plan::{
    CarePlan, Contact, Journey, PlanField, PlannedFeed, PowderLabel, Reference, Role, Slot, Tool,
};
use crate::domain::plan::species::Species;
use crate::domain::plan::topic::Topic;
use crate::domain::quantity::units::{Celsius, Grams, Millilitres, Percent};
use crate::domain::time::moment::Day;

/// Whose side somebody is on; also whose a part of the plan is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Side {
    /// Who reared the chick.
    Breeder,
    /// Who has it at home.
    Owner,
}

/// Who sets a part of a plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Author {
    /// On which side.
    pub side: Side,
    /// Whether that person cares for the chick now and does not ask: what a carer sets is in force at once.
    pub is_carer: bool,
}

impl Author {
    /// The owner, who has the chick.
    pub const OWNER: Self = Self {
        side: Side::Owner,
        is_carer: true,
    };
    /// The owner, who asks the breeder for another value: a set of hers that waits for her answer, and
    /// holds from then on.
    pub const OWNER_ASKING: Self = Self {
        side: Side::Owner,
        is_carer: false,
    };
    /// The breeder, before the chick leaves.
    pub const BREEDER: Self = Self {
        side: Side::Breeder,
        is_carer: true,
    };
    /// The breeder of a chick that has left: follows it and proposes.
    pub const BREEDER_AFAR: Self = Self {
        side: Side::Breeder,
        is_carer: false,
    };
}

macro_rules! parts {
    ($(
        $(#[$doc:meta])*
        $kind:ident($part:ident) of $side:ident {
            $($(#[$field_doc:meta])* $field:ident: $type:ty,)+
        } {
            $($(#[$picked_doc:meta])* $picked:ident: $picked_type:ty = $get:ident, $set:ident,)*
        }
    )+) => {
        /// What a part of the plan is about.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum PartKind {
            $($(#[$doc])* $kind,)+
        }

        impl PartKind {
            /// Every kind, in the order in which a plan is read.
            pub const ALL: [Self; [$(stringify!($kind)),+].len()] = [$(Self::$kind),+];

            /// Whose it is: of two plans that know nothing of each other, that side's holds.
            pub const fn side(self) -> Side {
                match self {
                    $(Self::$kind => Side::$side,)+
                }
            }
        }

        $(
            $(#[$doc])*
            #[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
            pub struct $part {
                $($(#[$field_doc])* pub $field: $type,)+
                $($(#[$picked_doc])* pub $picked: $picked_type,)*
            }
        )+

        /// One part of a plan.
        #[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Part {
            $($(#[$doc])* $kind($part),)+
        }

        impl Part {
            /// What it is about.
            pub const fn kind(&self) -> PartKind {
                match self {
                    $(Self::$kind(_) => PartKind::$kind,)+
                }
            }
        }

        impl CarePlan {
            /// One part of this plan.
            pub fn part(&self, kind: PartKind) -> Part {
                match kind {
                    $(PartKind::$kind => Part::$kind($part {
                        $($field: self.$field.clone(),)+
                        $($picked: self.$get(kind),)*
                    }),)+
                }
            }

            /// Puts a part in the place of this plan's own.
            pub fn set_part(&mut self, part: Part) {
                let kind = part.kind();
                match part {
                    $(Part::$kind(part) => {
                        $(self.$field = part.$field;)+
                        $(self.$set(kind, part.$picked);)*
                    })+
                }
            }
        }
    };
}

parts! {
    /// The bird itself.
    Chick(ChickPart) of Breeder {
        /// The species.
        species: Species,
        /// The chick's name.
        name: String,
        /// Ring or chip number.
        ring: String,
        /// The day it hatched, when known.
        hatched: Option<Day>,
    } {
        /// What is said about its topics.
        said: BTreeMap<Topic, String> = said_in, set_said_in,
    }
    /// Who reared it.
    People(PeoplePart) of Breeder {
        /// When the breeder can be rung.
        breeder_hours: String,
        /// Days between two reports, when the breeder wants others than usual.
        report_days: Option<u8>,
    } {
        /// The breeder, then the second contact.
        contacts: Vec<Contact> = contacts_of, set_contacts_of,
    }
    /// Who sees it when it is ill, and whose it is.
    Vets(VetsPart) of Owner {
        /// The owner's own name.
        owner_name: String,
        /// The owner's own number.
        owner_number: String,
    } {
        /// The vets.
        contacts: Vec<Contact> = contacts_of, set_contacts_of,
    }
    /// What is at hand in the new home.
    Equipment(EquipmentPart) of Owner {
        /// Step of the scale.
        scale_step: Grams,
        /// Powder in ten level spoons.
        ten_spoons: Option<Grams>,
        /// Nominal size of the syringe.
        syringe: Millilitres,
    } {}
    /// The feeds of a day and how they are given.
    Feeds(FeedsPart) of Breeder {
        /// Feeds in the order of the day.
        feeds: Vec<PlannedFeed>,
        /// What formula is given with.
        tool: Tool,
        /// Shortest gap between two feeds, minutes, when the breeder gives one.
        shortest_gap_minutes: Option<u16>,
        /// Minutes after a refusal at which the feed is offered again.
        retries_minutes: Vec<u16>,
    } {
        /// What is said about its topics.
        said: BTreeMap<Topic, String> = said_in, set_said_in,
        /// Fields that nobody has confirmed.
        unconfirmed: BTreeSet<PlanField> = unconfirmed_of, set_unconfirmed_of,
    }
    /// What formula is made of and how warm it is given.
    Formula(FormulaPart) of Breeder {
        /// Powder as a share of the mix by mass.
        powder_fraction: Percent,
        /// Fat supplement in 100 ml of mix.
        fat_supplement_per_100_ml: Grams,
        /// The powder's label.
        powder_label: Option<PowderLabel>,
        /// How warm the water is that the powder is stirred into.
        mixing_water: Celsius,
        /// Lowest temperature to serve at.
        serve_from: Celsius,
        /// Highest temperature to serve at.
        serve_to: Celsius,
    } {
        /// What is said about its topics.
        said: BTreeMap<Topic, String> = said_in, set_said_in,
        /// Fields that nobody has confirmed.
        unconfirmed: BTreeSet<PlanField> = unconfirmed_of, set_unconfirmed_of,
    }
    /// What later weights are judged against.
    Weight(WeightPart) of Breeder {
        /// Handover weight.
        reference: Option<Reference>,
        /// Highest weight so far and its day.
        peak: Option<Reference>,
        /// The weight it should come to.
        target: Option<Grams>,
        /// Loss against the handover weight at which the breeder wants a call.
        loss_limit: Percent,
    } {
        /// Fields that nobody has confirmed.
        unconfirmed: BTreeSet<PlanField> = unconfirmed_of, set_unconfirmed_of,
    }
    /// How feeds go.
    Weaning(WeaningPart) of Breeder {
        /// Order in which feeds are dropped.
        drop_order: Vec<Slot>,
        /// Days after arrival without any drop.
        settle_in_days: u8,
        /// Days between two drops.
        waiting_days: u8,
        /// Solid foods it knows.
        solids: String,
        /// Whether the breeder wants to be asked before any drop.
        ask_before_drop: bool,
    } {
        /// Fields that nobody has confirmed.
        unconfirmed: BTreeSet<PlanField> = unconfirmed_of, set_unconfirmed_of,
    }
    /// The room it lives in.
    Home(HomePart) of Breeder {
        /// Lowest room temperature.
        room_from: Celsius,
        /// Highest room temperature.
        room_to: Celsius,
    } {
        /// What is said about its topics.
        said: BTreeMap<Topic, String> = said_in, set_said_in,
        /// Fields that nobody has confirmed.
        unconfirmed: BTreeSet<PlanField> = unconfirmed_of, set_unconfirmed_of,
    }
    /// The way to the new home.
    Journey(JourneyPart) of Breeder {
        /// The way.
        journey: Option<Journey>,
    } {}
    /// In the breeder's words.
    Words(WordsPart) of Breeder {
        /// The breeder's standing text.
        note: String,
        /// What is said of this chick only.
        note_for_chick: String,
    } {}
}

impl CarePlan {
    /// A plan that holds one part and, beside it, nothing of anybody's.
    pub fn of_part(part: Part) -> Self {
        let mut plan = Self {
            feeds: Vec::new(),
            unconfirmed: BTreeSet::new(),
            ..Self::default_for(Species::GreenWingedMacaw)
        };
        plan.set_part(part);
        plan
    }

    fn contacts_of(&self, kind: PartKind) -> Vec<Contact> {
        let contacts = self.contacts.iter();
        contacts
            .filter(|contact| contact.role.part() == kind)
            .cloned()
            .collect()
    }

    fn set_contacts_of(&mut self, kind: PartKind, contacts: Vec<Contact>) {
        let mut others = std::mem::take(&mut self.contacts);
        others.retain(|contact| contact.role.part() != kind);
        // The breeder comes before the vets, as roles do.
        let (before, after): (Vec<Contact>, Vec<Contact>) = others
            .into_iter()
            .partition(|contact| contact.role.part() < kind);
        self.contacts = [before, contacts, after].concat();
    }

    fn said_in(&self, kind: PartKind) -> BTreeMap<Topic, String> {
        let mut said = self.said.clone();
        said.retain(|topic, _| topic.part() == kind);
        said
    }

    fn set_said_in(&mut self, kind: PartKind, said: BTreeMap<Topic, String>) {
        self.said.retain(|topic, _| topic.part() != kind);
        self.said.extend(said);
    }

    fn unconfirmed_of(&self, kind: PartKind) -> BTreeSet<PlanField> {
        let mut fields = self.unconfirmed.clone();
        fields.retain(|field| field.part() == kind);
        fields
    }

    fn set_unconfirmed_of(&mut self, kind: PartKind, fields: BTreeSet<PlanField>) {
        self.unconfirmed.retain(|field| field.part() != kind);
        self.unconfirmed.extend(fields);
    }
}

impl Role {
    /// The part of the plan in which such people stand.
    pub const fn part(self) -> PartKind {
        match self {
            Self::Breeder => PartKind::People,
            Self::AvianVet | Self::EmergencyVet => PartKind::Vets,
        }
    }
}

impl Topic {
    /// The part of the plan in which it stands.
    pub const fn part(self) -> PartKind {
        match self {
            Self::Sex | Self::Wings | Self::Papers => PartKind::Chick,
            Self::TakesFood | Self::RoundCrop | Self::AfterRefusal => PartKind::Feeds,
            Self::PowderName | Self::Recipe => PartKind::Formula,
            Self::Night | Self::Bath => PartKind::Home,
        }
    }
}

impl PlanField {
    /// The part of the plan in which it stands.
    pub const fn part(self) -> PartKind {
        match self {
            Self::Feeds | Self::Tool => PartKind::Feeds,
            Self::PowderShare | Self::ServingWindow | Self::MixingWater => PartKind::Formula,
            Self::LossLimit => PartKind::Weight,
            Self::DropOrder | Self::SettleIn | Self::WaitingDays => PartKind::Weaning,
            Self::Room => PartKind::Home,
        }
    }
}

/// The parts of `new` that are not the same in `old`.
pub fn changed_parts(old: &CarePlan, new: &CarePlan) -> Vec<Part> {
    let parts = PartKind::ALL.into_iter();
    parts
        .map(|kind| new.part(kind))
        .filter(|part| *part != old.part(part.kind()))
        .collect()
}

#[cfg(test)]
mod tests {
    use crate::domain::plan::parts::*;

    fn contact(role: Role, name: &str) -> Contact {
        Contact {
            role,
            name: name.to_owned(),
            number: "+1 555 0100".to_owned(),
        }
    }

    #[test]
    fn a_plan_put_together_from_the_parts_of_another_is_that_other() {
        let mut other = CarePlan::default_for(Species::ScarletMacaw);
        other.name = "Ember".to_owned();
        other.note_for_chick = "Hold her still.".to_owned();
        other.retries_minutes = vec![30];
        other.contacts = vec![contact(Role::Breeder, "A"), contact(Role::AvianVet, "B")];
        other.unconfirmed = [PlanField::Room].into();
        let mut plan = CarePlan::default_for(Species::Cockatiel);
        for kind in PartKind::ALL {
            plan.set_part(other.part(kind));
        }
        assert_eq!(plan, other);
        assert_eq!(changed_parts(&plan, &other), []);
    }

    #[test]
    fn the_vets_are_the_owner_s_and_the_breeder_s_number_stays_when_they_change() {
        let mut plan = CarePlan::default_for(Species::ScarletMacaw);
        plan.contacts = vec![contact(Role::Breeder, "A"), contact(Role::AvianVet, "B")];
        let mut new = plan.clone();
        new.contacts = vec![
            contact(Role::Breeder, "A"),
            contact(Role::EmergencyVet, "C"),
        ];
        let parts = changed_parts(&plan, &new);
        let kinds: Vec<PartKind> = parts.iter().map(Part::kind).collect();
        assert_eq!(kinds, [PartKind::Vets]);
        assert_eq!(PartKind::Vets.side(), Side::Owner);
        for part in parts {
            plan.set_part(part);
        }
        assert_eq!(plan.contacts, new.contacts);
    }
}

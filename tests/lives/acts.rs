//! What people do in a life: drawn, shrunk and printed by the state machine.

use perchlight::domain::journal::entries::{CropState, Droppings, Paper};
use perchlight::domain::journal::signs::Sign;
use proptest::prelude::*;

/// Whose phone an act happens on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Who {
    /// The owner's, a carer.
    Owner,
    /// The partner's, the second carer.
    Partner,
}

/// What an edit of the plan changes. None of them is about which feeds are dropped.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Edit {
    /// The vet's telephone number.
    VetNumber,
    /// The amount of the last feed of the day, by so many millilitres.
    BedtimeVolume(i8),
    /// The time of the last feed, by so many minutes.
    BedtimeTime(i8),
    /// "The breeder says these are right."
    Confirmed,
    /// The loss limit, per cent.
    LossLimit(u8),
}

/// One act of a life. An act that cannot be done at that moment does nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Act {
    /// So many days on which every feed asked for is given at its time and each morning is weighed.
    OrdinaryDays(u8),
    /// Nobody notes anything for so many hours.
    Silence(u8),
    /// The owner waits until something is asked for, or so many minutes.
    Wait(u16),
    /// The feed that is asked for is given so late, so much of it, and noted so many minutes later.
    Feed {
        who: Who,
        late_minutes: u8,
        share_pct: u8,
        noted_after: u8,
    },
    /// The other carer notes the last feed too, within 45 minutes of it.
    NotedTwice(u8),
    /// The chick refuses.
    Refused(Who),
    /// The feed is left out.
    PassedOver,
    /// It is weighed: its true weight, off by so many tenths of a per cent.
    Weighed(Who, i8),
    /// Somebody looks at the crop.
    Crop(CropState),
    /// A sign is seen.
    Seen(Sign),
    /// Every sign is gone.
    Gone,
    /// Droppings are looked at.
    Droppings(Droppings),
    /// So many droppings are counted on a paper.
    Counted(Paper, u8),
    /// The feed that goes next is dropped.
    Dropped,
    /// The feed that went last is brought back.
    BroughtBack,
    /// The plan is edited.
    Edited(Who, Edit),
    /// The breeder changes the plan and sends it.
    BreederEdits(Edit),
    /// The card of the handover is opened again.
    OldCard(Who),
    /// Both carers' phones take in what the other has.
    Joined,
    /// The breeder takes in a report of the owner.
    Reported,
    /// The last act is undone.
    Undone,
    /// The owner travels: the wall clock moves by so many hours.
    Travelled(i8),
    /// The wall clock moves by so many minutes, at most an hour.
    ClocksChanged(i8),
    /// Somebody was called.
    Called,
    /// A remark.
    Remark,
}

fn who() -> impl Strategy<Value = Who> {
    prop_oneof![3 => Just(Who::Owner), 1 => Just(Who::Partner)]
}

fn edit() -> impl Strategy<Value = Edit> {
    prop_oneof![
        Just(Edit::VetNumber),
        (-20_i8..=20).prop_map(Edit::BedtimeVolume),
        (-60_i8..=60).prop_map(Edit::BedtimeTime),
        Just(Edit::Confirmed),
        (5_u8..=15).prop_map(Edit::LossLimit),
    ]
}

/// Any act; everyday ones are drawn more often.
pub(crate) fn act() -> impl Strategy<Value = Act> {
    prop_oneof![
        6 => (1_u8..=7).prop_map(Act::OrdinaryDays),
        1 => (1_u8..=96).prop_map(Act::Silence),
        6 => (1_u16..=480).prop_map(Act::Wait),
        12 => (who(), 0_u8..=150, prop_oneof![3 => Just(100_u8), 1 => 5_u8..=100], 0_u8..=240).prop_map(
            |(who, late_minutes, share_pct, noted_after)| Act::Feed { who, late_minutes, share_pct, noted_after }
        ),
        3 => (0_u8..=44).prop_map(Act::NotedTwice),
        2 => who().prop_map(Act::Refused),
        1 => Just(Act::PassedOver),
        6 => (who(), -8_i8..=8).prop_map(|(who, off)| Act::Weighed(who, off)),
        3 => prop::sample::select(CropState::ALL.to_vec()).prop_map(Act::Crop),
        1 => prop::sample::select(Sign::ALL.to_vec()).prop_map(Act::Seen),
        2 => Just(Act::Gone),
        1 => prop_oneof![Just(Droppings::Normal), Just(Droppings::Watery), Just(Droppings::Bloody)].prop_map(Act::Droppings),
        2 => (prop::sample::select(Paper::ALL.to_vec()), 0_u8..=30).prop_map(|(paper, count)| Act::Counted(paper, count)),
        3 => Just(Act::Dropped),
        1 => Just(Act::BroughtBack),
        3 => (who(), edit()).prop_map(|(who, edit)| Act::Edited(who, edit)),
        2 => edit().prop_map(Act::BreederEdits),
        2 => who().prop_map(Act::OldCard),
        3 => Just(Act::Joined),
        1 => Just(Act::Reported),
        4 => Just(Act::Undone),
        1 => (-9_i8..=9).prop_map(Act::Travelled),
        1 => (-60_i8..=60).prop_map(Act::ClocksChanged),
        1 => Just(Act::Called),
        1 => Just(Act::Remark),
    ]
}

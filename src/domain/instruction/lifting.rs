//! What each sign and finding means for a feed, and what lifts it: what is seen, or somebody's word.
//!
//! **Invariants.** A breeder's word lifts only what stands at *Call the breeder*; no word lifts what was
//! seen after it.

use crate::domain::instruction::first::First;
use crate::domain::journal::chick::{Advice, Chick, Noted};
use crate::domain::journal::entries::Droppings;
use crate::domain::journal::signs::Sign;
use crate::domain::plan::care_plan::Role;
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::Moment;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::served_hot;

/// What lifts a hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Lift {
    /// It is seen to be gone; or a word, see [`may_lift`].
    Seen,
    /// The word of the breeder or of a vet, also when it is gone.
    Word,
    /// A vet's word only, also when it is gone.
    VetsWord,
}

/// What a sign or finding means for a feed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Answer {
    /// Nothing: it is fed as planned.
    Free,
    /// No food.
    Forbid(Lift),
    /// Ask first.
    Ask(Role, Lift),
    /// Do something first.
    First(First),
    /// No more at this sitting.
    NoMoreNow,
}

/// What each sign means for a feed.
///
/// Sources: facts on aspiration, burns and crop stasis: Rivera 2008; Duerr & Gage 2020, p. 5; pages of
/// avian vets. Who is asked, and what lifts it: ours.
pub(crate) const fn of_sign(sign: Sign) -> Answer {
    match sign {
        Sign::LabouredBreathing
        | Sign::WentDownWrong
        | Sign::ClickStays
        | Sign::CropPatch
        | Sign::Bleeding
        | Sign::SeizureOrTrauma
        | Sign::Prolapse
        | Sign::Shock
        | Sign::FeatherBleeds => Answer::Forbid(Lift::VetsWord),
        Sign::SourCrop | Sign::Limp | Sign::Cold | Sign::Vomiting => Answer::Forbid(Lift::Seen),
        Sign::FedTooHot | Sign::SwallowedObject => Answer::Ask(Role::AvianVet, Lift::VetsWord),
        Sign::Dull
        | Sign::Dehydrated
        | Sign::StaysOverheated
        | Sign::NoDroppingEightHours
        | Sign::BloodInDroppings
        | Sign::Wobbles
        | Sign::Discharge
        | Sign::MouthPlaques => Answer::Ask(Role::AvianVet, Lift::Seen),
        Sign::ClickCleared => Answer::Ask(Role::Breeder, Lift::Word),
        Sign::NoDroppingFourHours => Answer::Ask(Role::Breeder, Lift::Seen),
        Sign::Overheated => Answer::First(First::Cool),
        Sign::BroughtBackOnce => Answer::NoMoreNow,
        // It eats, and should: less food is no help against any of these.
        Sign::BadDroppingsOverADay
        | Sign::UndigestedFood
        | Sign::BegsAllDay
        | Sign::Lame
        | Sign::Bruised => Answer::Free,
    }
}

/// Whether what a sign keeps back is given free once it is seen to be gone.
pub fn may_be_gone(sign: Sign) -> bool {
    matches!(
        of_sign(sign),
        Answer::Forbid(Lift::Seen) | Answer::Ask(_, Lift::Seen) | Answer::First(_)
    )
}

/// What each finding means for a feed.
pub(crate) fn of_finding(finding: &Finding) -> Answer {
    match finding.rule {
        RuleId::CropStatic => Answer::Forbid(Lift::Seen),
        RuleId::CropOvernight | RuleId::CropLate if finding.level.is_call() => {
            Answer::Forbid(Lift::Seen)
        }
        RuleId::ServedHot => {
            let is_burn =
                matches!(finding.value, Value::Celsius(served) if served >= served_hot::BURN_FROM);
            if is_burn {
                Answer::Ask(Role::AvianVet, Lift::VetsWord)
            } else {
                Answer::Free
            }
        }
        RuleId::DroppingsSeen(look) => match look {
            Droppings::Bloody | Droppings::TarBlack => Answer::Ask(Role::AvianVet, Lift::Seen),
            Droppings::Normal
            | Droppings::SmallOrFew
            | Droppings::Watery
            | Droppings::GreenOrBlack
            | Droppings::Undigested
            | Droppings::EmeraldGreen
            | Droppings::LimeUrates
            | Droppings::WetAfterFruit
            | Droppings::RedAfterFood
            | Droppings::LiquidStool => Answer::Free,
        },
        // None at all is as no dropping for 8 waking hours; few come from little food.
        RuleId::FewDroppings => match finding.level {
            Level::VetToday | Level::Emergency => Answer::Ask(Role::AvianVet, Lift::Seen),
            Level::Settled | Level::Watch | Level::CallBreeder => Answer::Free,
        },
        RuleId::DullLoss => Answer::Ask(Role::AvianVet, Lift::Seen),
        // Weight is lost by too little food as well: only an emergency goes to the vet unfed.
        RuleId::PeakLoss
        | RuleId::HandoverLoss
        | RuleId::StableLoss
        | RuleId::FallingWeight
        | RuleId::ArrivalLoss
        | RuleId::OneDayLoss
        | RuleId::GrowthStalled => match finding.level {
            Level::Emergency => Answer::Ask(Role::EmergencyVet, Lift::Seen),
            Level::Settled | Level::Watch | Level::CallBreeder | Level::VetToday => Answer::Free,
        },
        // Hunger is no reason to keep food back. A sign is answered by itself, a trace in the crop and a
        // slow crop by the look; the rest is about the care.
        RuleId::SignSeen(_)
        | RuleId::CropOvernight
        | RuleId::CropLate
        | RuleId::RefusedFeeds
        | RuleId::MissedFeeds
        | RuleId::NoFoodNoted
        | RuleId::DayIntake
        | RuleId::TransitGap
        | RuleId::CropSlow
        | RuleId::VolumeOverCeiling
        | RuleId::GapTooShort
        | RuleId::ServedCold
        | RuleId::RoomTemperature
        | RuleId::NoWeighing
        | RuleId::VetVisitDue => Answer::Free,
    }
}

/// Every word about feeding that holds now, in order of time.
fn said(now: Moment, chick: &Chick) -> impl Iterator<Item = &Noted<Advice>> {
    chick
        .advice
        .iter()
        .filter(move |advice| advice.at <= now && advice.what.until.is_none_or(|until| now < until))
}

/// The latest word against a feed that nobody who may has taken back: a vet's ends with a vet's, a
/// breeder's with anybody's.
pub(crate) fn word_against(now: Moment, chick: &Chick) -> Option<&Noted<Advice>> {
    let is_vet = |advice: &Advice| advice.who != Role::Breeder;
    let refusals = said(now, chick).filter(|advice| !advice.what.may_feed);
    let standing = refusals.filter(|no| {
        !said(now, chick).any(|yes| {
            yes.what.may_feed && yes.at >= no.at && (is_vet(&yes.what) || !is_vet(&no.what))
        })
    });
    standing.last()
}

/// The latest word about feeding that holds now.
pub fn advice_in_force(now: Moment, chick: &Chick) -> Option<&Noted<Advice>> {
    said(now, chick).last()
}

/// The most that a feed may hold by the latest word, when it names an amount.
pub fn advised_volume(now: Moment, chick: &Chick) -> Option<Millilitres> {
    let latest = advice_in_force(now, chick)?;
    latest.what.ml.filter(|_| latest.what.may_feed)
}

/// Whether a word in force, given after what was seen, lifts it.
pub(crate) fn is_lifted(
    now: Moment,
    chick: &Chick,
    level: Level,
    lift: Lift,
    seen: Moment,
) -> bool {
    said(now, chick).any(|advice| {
        advice.what.may_feed && advice.at >= seen && may_lift(advice.what.who, level, lift)
    })
}

/// Whether somebody's word lifts what stands at this level.
const fn may_lift(who: Role, level: Level, lift: Lift) -> bool {
    match who {
        Role::AvianVet | Role::EmergencyVet => true,
        Role::Breeder => match (lift, level) {
            (Lift::Seen | Lift::Word, Level::Settled | Level::Watch | Level::CallBreeder) => true,
            (Lift::Seen | Lift::Word, Level::VetToday | Level::Emergency) | (Lift::VetsWord, _) => {
                false
            }
        },
    }
}

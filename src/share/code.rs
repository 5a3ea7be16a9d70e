//! The numbers that stand for choices in links. A number, once released, never changes its meaning.

use crate::domain::journal::entries::{
    Carer, CropAtWeighing, CropFeel, CropState, Droppings, Paper, Response, SameFoodAnswer,
    SolidsEaten, WhyPassedOver,
};
use crate::domain::journal::photo::PhotoOf;
use crate::domain::journal::signs::Sign;
use crate::domain::plan::care_plan::{ClockShift, PlanField, Role, Slot, Tool};
use crate::domain::plan::parts::{PartKind, Side};
use crate::domain::plan::species::Species;
use crate::domain::plan::topic::Topic;

/// A choice that is sent as a number.
pub(crate) trait Coded: Sized {
    /// Its number.
    fn code(self) -> u8;

    /// The choice of a number; `None` for a number that is not in the table.
    fn from_code(code: u8) -> Option<Self>;
}

macro_rules! numbers {
    ($kind:ty { $($variant:ident = $number:literal,)+ }) => {
        impl Coded for $kind {
            fn code(self) -> u8 {
                match self {
                    $(Self::$variant => $number,)+
                }
            }

            fn from_code(code: u8) -> Option<Self> {
                match code {
                    $($number => Some(Self::$variant),)+
                    _ => None,
                }
            }
        }
    };
}

numbers! { PartKind {
    Chick = 0,
    People = 1,
    Vets = 2,
    Equipment = 3,
    Feeds = 4,
    Formula = 5,
    Weight = 6,
    Weaning = 7,
    Home = 8,
    Journey = 9,
    Words = 10,
} }

numbers! { Side {
    Breeder = 0,
    Owner = 1,
} }

numbers! { CropAtWeighing {
    Empty = 0,
    AfterFeed = 1,
    NotSure = 2,
} }

numbers! { Response {
    Eager = 0,
    Slow = 1,
    NotNoted = 2,
} }

numbers! { WhyPassedOver {
    CropNotEmpty = 0,
    NotFit = 1,
    Advised = 2,
    NotPossible = 3,
    NotKnown = 4,
} }

numbers! { SameFoodAnswer {
    NotedTwice = 0,
    TwoParts = 1,
    TwoFeeds = 2,
} }

numbers! { CropState {
    Flat = 0,
    Trace = 1,
    Quarter = 2,
    HalfOrMore = 3,
} }

numbers! { CropFeel {
    Soft = 0,
    Firm = 1,
    NotNoted = 2,
} }

numbers! { Droppings {
    Normal = 0,
    SmallOrFew = 1,
    Watery = 2,
    GreenOrBlack = 3,
    Undigested = 4,
    Bloody = 5,
    EmeraldGreen = 6,
    TarBlack = 7,
    LimeUrates = 8,
    WetAfterFruit = 9,
    RedAfterFood = 10,
    LiquidStool = 11,
} }

numbers! { PhotoOf {
    Droppings = 0,
    Crop = 1,
    Skin = 2,
} }

numbers! { Paper {
    Day = 0,
    Night = 1,
} }

numbers! { SolidsEaten {
    Played = 0,
    Little = 1,
    Meal = 2,
} }

numbers! { Carer {
    Owner = 0,
    Breeder = 1,
    Sitter = 2,
    Clinic = 3,
} }

numbers! { Slot {
    EarlyMorning = 0,
    Morning = 1,
    Midday = 2,
    Afternoon = 3,
    Evening = 4,
    Bedtime = 5,
} }

numbers! { Topic {
    Sex = 0,
    Wings = 1,
    Papers = 2,
    TakesFood = 3,
    RoundCrop = 4,
    AfterRefusal = 5,
    PowderName = 6,
    Recipe = 7,
    Night = 8,
    Bath = 9,
} }

numbers! { Tool {
    Syringe = 0,
    Spoon = 1,
    BentSpoon = 2,
} }

numbers! { Role {
    Breeder = 0,
    AvianVet = 1,
    EmergencyVet = 2,
} }

numbers! { ClockShift {
    AtOnce = 0,
    Gradual = 1,
} }

numbers! { PlanField {
    Feeds = 0,
    PowderShare = 1,
    ServingWindow = 2,
    LossLimit = 3,
    DropOrder = 4,
    SettleIn = 5,
    WaitingDays = 6,
    Room = 7,
    Tool = 8,
    MixingWater = 9,
} }

numbers! { Sign {
    LabouredBreathing = 0,
    ClickCleared = 1,
    ClickStays = 2,
    SourCrop = 3,
    Vomiting = 4,
    BroughtBackOnce = 5,
    CropPatch = 6,
    NoDroppingFourHours = 7,
    NoDroppingEightHours = 8,
    BadDroppingsOverADay = 9,
    UndigestedFood = 10,
    BloodInDroppings = 11,
    Dull = 12,
    Limp = 13,
    Cold = 14,
    Overheated = 15,
    StaysOverheated = 16,
    Dehydrated = 17,
    BegsAllDay = 18,
    WentDownWrong = 19,
    FedTooHot = 20,
    Lame = 21,
    SwallowedObject = 22,
    Bleeding = 23,
    SeizureOrTrauma = 24,
    Prolapse = 25,
    Wobbles = 26,
    Discharge = 27,
    MouthPlaques = 28,
    Shock = 29,
    Bruised = 30,
    FeatherBleeds = 31,
} }

numbers! { Species {
    GreenWingedMacaw = 0,
    BlueAndYellowMacaw = 1,
    ScarletMacaw = 2,
    MilitaryMacaw = 3,
    GreatGreenMacaw = 4,
    HyacinthMacaw = 5,
    ChestnutFrontedMacaw = 6,
    BlueFrontedAmazon = 7,
    YellowCrownedAmazon = 8,
    SouthernMealyAmazon = 9,
    GreyParrot = 10,
    WhiteCockatoo = 11,
    SulphurCrestedCockatoo = 12,
    MoluccanCockatoo = 13,
    EclectusParrot = 14,
    Cockatiel = 15,
    SunParakeet = 16,
    GreenCheekedParakeet = 17,
} }

#[cfg(test)]
mod tests {
    use crate::share::code::*;

    /// The choices of a kind by number from 0 on, and the first number that stands for none.
    fn in_order<T: Coded>() -> (Vec<T>, u8) {
        let choices: Vec<T> = (0..=u8::MAX).map_while(T::from_code).collect();
        let end = u8::try_from(choices.len()).unwrap();
        assert!((end..=u8::MAX).all(|code| T::from_code(code).is_none()));
        (choices, end)
    }

    /// The lists are in the order in which the first version numbered them; new choices go to the
    /// end.
    #[test]
    fn every_choice_keeps_its_number() {
        assert_eq!(in_order::<Slot>(), (Slot::ALL.to_vec(), 6));
        assert_eq!(in_order::<PlanField>(), (PlanField::ALL.to_vec(), 10));
        assert_eq!(in_order::<Sign>(), (Sign::ALL.to_vec(), 32));
        assert_eq!(in_order::<Species>(), (Species::ALL.to_vec(), 18));
        assert_eq!(in_order::<Topic>(), (Topic::ALL.to_vec(), 10));
        let (tools, _) = in_order::<Tool>();
        assert_eq!(tools, Tool::ALL);
        for (place, sign) in (0..).zip(in_order::<Sign>().0) {
            assert_eq!(sign.code(), place);
        }
        for (place, species) in (0..).zip(Species::ALL) {
            assert_eq!(species.code(), place);
        }
    }
}

//! The words that stand for choices in saved texts. A word, once released, never changes its meaning.

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

/// A choice that is saved as a word.
pub(crate) trait Tagged: Sized {
    /// Its word.
    fn tag(self) -> &'static str;

    /// The choice of a word; `None` for a word that is not in the table.
    fn from_tag(text: &str) -> Option<Self>;
}

macro_rules! words {
    ($kind:ty { $($variant:ident = $word:literal,)+ }) => {
        impl Tagged for $kind {
            fn tag(self) -> &'static str {
                match self {
                    $(Self::$variant => $word,)+
                }
            }

            fn from_tag(text: &str) -> Option<Self> {
                match text {
                    $($word => Some(Self::$variant),)+
                    _ => None,
                }
            }
        }
    };
}

words! { PartKind {
    Chick = "chick",
    People = "people",
    Vets = "vets",
    Equipment = "equipment",
    Feeds = "feeds",
    Formula = "formula",
    Weight = "weight",
    Weaning = "weaning",
    Home = "home",
    Journey = "journey",
    Words = "words",
} }

words! { Side {
    Breeder = "breeder",
    Owner = "owner",
} }

words! { CropAtWeighing {
    Empty = "empty",
    AfterFeed = "after-feed",
    NotSure = "not-sure",
} }

words! { Response {
    Eager = "eager",
    Slow = "slow",
    NotNoted = "not-noted",
} }

words! { WhyPassedOver {
    CropNotEmpty = "crop-not-empty",
    NotFit = "not-fit",
    Advised = "advised",
    NotPossible = "not-possible",
    NotKnown = "not-known",
} }

words! { SameFoodAnswer {
    NotedTwice = "noted-twice",
    TwoParts = "two-parts",
    TwoFeeds = "two-feeds",
} }

words! { CropState {
    Flat = "flat",
    Trace = "trace",
    Quarter = "quarter",
    HalfOrMore = "half-or-more",
} }

words! { CropFeel {
    Soft = "soft",
    Firm = "firm",
    NotNoted = "not-noted",
} }

words! { Droppings {
    Normal = "normal",
    SmallOrFew = "small-or-few",
    Watery = "watery",
    GreenOrBlack = "green-or-black",
    Undigested = "undigested",
    Bloody = "bloody",
    EmeraldGreen = "emerald-green",
    TarBlack = "tar-black",
    LimeUrates = "lime-urates",
    WetAfterFruit = "wet-after-fruit",
    RedAfterFood = "red-after-food",
    LiquidStool = "liquid-stool",
} }

words! { PhotoOf {
    Droppings = "droppings",
    Crop = "crop",
    Skin = "skin",
} }

words! { Paper {
    Day = "day",
    Night = "night",
} }

words! { SolidsEaten {
    Played = "played",
    Little = "little",
    Meal = "meal",
} }

words! { Carer {
    Owner = "owner",
    Breeder = "breeder",
    Sitter = "sitter",
    Clinic = "clinic",
} }

words! { Slot {
    EarlyMorning = "early-morning",
    Morning = "morning",
    Midday = "midday",
    Afternoon = "afternoon",
    Evening = "evening",
    Bedtime = "bedtime",
} }

words! { Topic {
    Sex = "sex",
    Wings = "wings",
    Papers = "papers",
    TakesFood = "takes-food",
    RoundCrop = "round-crop",
    AfterRefusal = "after-refusal",
    PowderName = "powder-name",
    Recipe = "recipe",
    Night = "night",
    Bath = "bath",
} }

words! { Tool {
    Syringe = "syringe",
    Spoon = "spoon",
    BentSpoon = "bent-spoon",
} }

words! { Role {
    Breeder = "breeder",
    AvianVet = "avian-vet",
    EmergencyVet = "emergency-vet",
} }

words! { ClockShift {
    AtOnce = "at-once",
    Gradual = "gradual",
} }

words! { PlanField {
    Feeds = "feeds",
    PowderShare = "powder-share",
    ServingWindow = "serving-window",
    LossLimit = "loss-limit",
    DropOrder = "drop-order",
    SettleIn = "settle-in",
    WaitingDays = "waiting-days",
    Room = "room",
    Tool = "tool",
    MixingWater = "mixing-water",
} }

words! { Sign {
    LabouredBreathing = "laboured-breathing",
    ClickCleared = "click-cleared",
    ClickStays = "click-stays",
    SourCrop = "sour-crop",
    Vomiting = "vomiting",
    BroughtBackOnce = "brought-back-once",
    CropPatch = "crop-patch",
    NoDroppingFourHours = "no-dropping-four-hours",
    NoDroppingEightHours = "no-dropping-eight-hours",
    BadDroppingsOverADay = "bad-droppings-over-a-day",
    UndigestedFood = "undigested-food",
    BloodInDroppings = "blood-in-droppings",
    Dull = "dull",
    Limp = "limp",
    Cold = "cold",
    Overheated = "overheated",
    StaysOverheated = "stays-overheated",
    Dehydrated = "dehydrated",
    BegsAllDay = "begs-all-day",
    WentDownWrong = "went-down-wrong",
    FedTooHot = "fed-too-hot",
    Lame = "lame",
    SwallowedObject = "swallowed-object",
    Bleeding = "bleeding",
    SeizureOrTrauma = "seizure-or-trauma",
    Prolapse = "prolapse",
    Wobbles = "wobbles",
    Discharge = "discharge",
    MouthPlaques = "mouth-plaques",
    Shock = "shock",
    Bruised = "bruised",
    FeatherBleeds = "feather-bleeds",
} }

words! { Species {
    GreenWingedMacaw = "green-winged-macaw",
    BlueAndYellowMacaw = "blue-and-yellow-macaw",
    ScarletMacaw = "scarlet-macaw",
    MilitaryMacaw = "military-macaw",
    GreatGreenMacaw = "great-green-macaw",
    HyacinthMacaw = "hyacinth-macaw",
    ChestnutFrontedMacaw = "chestnut-fronted-macaw",
    BlueFrontedAmazon = "blue-fronted-amazon",
    YellowCrownedAmazon = "yellow-crowned-amazon",
    SouthernMealyAmazon = "southern-mealy-amazon",
    GreyParrot = "grey-parrot",
    WhiteCockatoo = "white-cockatoo",
    SulphurCrestedCockatoo = "sulphur-crested-cockatoo",
    MoluccanCockatoo = "moluccan-cockatoo",
    EclectusParrot = "eclectus-parrot",
    Cockatiel = "cockatiel",
    SunParakeet = "sun-parakeet",
    GreenCheekedParakeet = "green-cheeked-parakeet",
} }

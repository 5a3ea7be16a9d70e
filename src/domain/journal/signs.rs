//! Signs of trouble by what a person sees.

/// Where on the chick a sign is looked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SignGroup {
    /// Breathing.
    Breathing,
    /// Crop and swallowing.
    Crop,
    /// Droppings.
    Droppings,
    /// Behaviour and warmth.
    Behaviour,
    /// A feed that went wrong.
    FeedingAccident,
    /// Injury and poison.
    Injury,
}

/// A sign of trouble that an owner can see.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Sign {
    /// Breathes with open beak or bobbing tail at rest, not hot and not after flapping.
    LabouredBreathing,
    /// Clicked, wheezed or coughed at a feed and is clear again.
    ClickCleared,
    /// Clicks or wheezes for more than 5 minutes, or again.
    ClickStays,
    /// Crop smells sour, holds gas, or does not move with vomiting or a dull chick.
    SourCrop,
    /// Brought food up away from a feed, or flung, sour or slimy; or twice or more, as older notes have it.
    Vomiting,
    /// Brought formula back just after a feed, smooth, and is bright.
    BroughtBackOnce,
    /// Raw, weeping or leaking patch over the crop.
    CropPatch,
    /// No dropping for 4 waking hours after a feed: parrots hold at night.
    NoDroppingFourHours,
    /// No dropping for 8 waking hours.
    NoDroppingEightHours,
    /// Green, black or watery droppings for more than a day.
    BadDroppingsOverADay,
    /// Undigested food in droppings.
    UndigestedFood,
    /// Blood in droppings.
    BloodInDroppings,
    /// Fluffed and dull, and voice or food does not rouse it.
    Dull,
    /// Limp, or too weak to hold itself up.
    Limp,
    /// Feet and body cold, or shivering while dry.
    Cold,
    /// Panting with the wings held out.
    Overheated,
    /// Still overheated after 20 minutes of cooling.
    StaysOverheated,
    /// Skin wrinkled, mouth sticky, eyes sunken.
    Dehydrated,
    /// Begs all day.
    BegsAllDay,
    /// Formula went down wrong: gasping or blue.
    WentDownWrong,
    /// Was fed formula of 43.3 °C or more.
    FedTooHot,
    /// Lame, splayed leg, swollen toe or tight ring.
    Lame,
    /// Swallowed bedding, a toy or metal.
    SwallowedObject,
    /// Bleeding that goes on.
    Bleeding,
    /// Seizure, unconscious, dazed after a fall, bite of cat or dog, fumes.
    SeizureOrTrauma,
    /// Tissue hangs out of the vent.
    Prolapse,
    /// Wobbles, falls off the perch or tilts its head.
    Wobbles,
    /// Discharge from the nose or eyes.
    Discharge,
    /// White or yellow plaques in the mouth.
    MouthPlaques,
    /// Pale, weak and breathing fast after a fright or an accident.
    Shock,
    /// Bruise or swelling under the skin.
    Bruised,
    /// A broken blood feather bleeds.
    FeatherBleeds,
}

impl Sign {
    /// Every sign, in the order of their numbers.
    pub const ALL: [Self; 32] = [
        Self::LabouredBreathing,
        Self::ClickCleared,
        Self::ClickStays,
        Self::SourCrop,
        Self::Vomiting,
        Self::BroughtBackOnce,
        Self::CropPatch,
        Self::NoDroppingFourHours,
        Self::NoDroppingEightHours,
        Self::BadDroppingsOverADay,
        Self::UndigestedFood,
        Self::BloodInDroppings,
        Self::Dull,
        Self::Limp,
        Self::Cold,
        Self::Overheated,
        Self::StaysOverheated,
        Self::Dehydrated,
        Self::BegsAllDay,
        Self::WentDownWrong,
        Self::FedTooHot,
        Self::Lame,
        Self::SwallowedObject,
        Self::Bleeding,
        Self::SeizureOrTrauma,
        Self::Prolapse,
        Self::Wobbles,
        Self::Discharge,
        Self::MouthPlaques,
        Self::Shock,
        Self::Bruised,
        Self::FeatherBleeds,
    ];

    /// Where it is looked for.
    pub const fn group(self) -> SignGroup {
        match self {
            Self::LabouredBreathing | Self::ClickCleared | Self::ClickStays | Self::Discharge => {
                SignGroup::Breathing
            }
            Self::SourCrop
            | Self::Vomiting
            | Self::BroughtBackOnce
            | Self::CropPatch
            | Self::MouthPlaques => SignGroup::Crop,
            Self::NoDroppingFourHours
            | Self::NoDroppingEightHours
            | Self::BadDroppingsOverADay
            | Self::UndigestedFood
            | Self::BloodInDroppings
            | Self::Prolapse => SignGroup::Droppings,
            Self::Dull
            | Self::Limp
            | Self::Cold
            | Self::Overheated
            | Self::StaysOverheated
            | Self::Dehydrated
            | Self::BegsAllDay
            | Self::Wobbles => SignGroup::Behaviour,
            Self::WentDownWrong | Self::FedTooHot => SignGroup::FeedingAccident,
            Self::Lame
            | Self::SwallowedObject
            | Self::Bleeding
            | Self::FeatherBleeds
            | Self::Bruised
            | Self::Shock
            | Self::SeizureOrTrauma => SignGroup::Injury,
        }
    }
}

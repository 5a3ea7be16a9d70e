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
    /// Breathes with open beak or bobbing tail at rest.
    LabouredBreathing,
    /// Clicked, wheezed or coughed at a feed and is clear again.
    ClickCleared,
    /// Clicks or wheezes for more than 10 minutes, or again.
    ClickStays,
    /// Crop smells sour, holds gas, or does not move with vomiting or a dull chick.
    SourCrop,
    /// Vomited twice or more in a day.
    Vomiting,
    /// Brought formula back once, bright.
    BroughtBackOnce,
    /// Wet or red patch, scab or leak over the crop.
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
    /// Fluffed, dull, eyes shut.
    Dull,
    /// Limp, weak, on the floor.
    Limp,
    /// Cold to the touch or shivering.
    Cold,
    /// Panting, red, wings held out.
    Overheated,
    /// Still overheated after 20 minutes of cooling.
    StaysOverheated,
    /// Skin dry, red or wrinkled, mouth sticky, eyes sunken.
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
    /// Seizure, unconscious, fall, bite of cat or dog, fumes.
    SeizureOrTrauma,
}

impl Sign {
    /// Every sign, grouped.
    pub const ALL: [Self; 25] = [
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
    ];

    /// Where it is looked for.
    pub const fn group(self) -> SignGroup {
        match self {
            Self::LabouredBreathing | Self::ClickCleared | Self::ClickStays => SignGroup::Breathing,
            Self::SourCrop | Self::Vomiting | Self::BroughtBackOnce | Self::CropPatch => {
                SignGroup::Crop
            }
            Self::NoDroppingFourHours
            | Self::NoDroppingEightHours
            | Self::BadDroppingsOverADay
            | Self::UndigestedFood
            | Self::BloodInDroppings => SignGroup::Droppings,
            Self::Dull
            | Self::Limp
            | Self::Cold
            | Self::Overheated
            | Self::StaysOverheated
            | Self::Dehydrated
            | Self::BegsAllDay => SignGroup::Behaviour,
            Self::WentDownWrong | Self::FedTooHot => SignGroup::FeedingAccident,
            Self::Lame | Self::SwallowedObject | Self::Bleeding | Self::SeizureOrTrauma => {
                SignGroup::Injury
            }
        }
    }
}

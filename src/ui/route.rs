//! Which screen is shown, to and from the part of the address after `#`.

use crate::domain::homecoming::first_weeks::Card;
use crate::domain::plan::care_plan::Slot;

/// A screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Route {
    /// What is due and what is wrong.
    Now,
    /// Weight curve and table.
    Weight,
    /// Weaning.
    Weaning,
    /// Everything by day.
    Journal,
    /// Cards, reports, backup.
    Handover,
    /// Why a vet is to see it, photos, and the page for the vet.
    ForVet,
    /// Enter a weight.
    Weigh,
    /// Log a feed, preset to this slot or to the next one.
    Log(Option<Slot>),
    /// One feed, step by step.
    Guide,
    /// First days, powder, hygiene.
    Home,
    /// The cards of the first weeks, or one of them.
    FirstWeeks(Option<Card>),
    /// A look at the crop.
    Crop,
    /// A look at the droppings.
    Droppings,
    /// Solids seen.
    Solids,
    /// Something's wrong.
    Wrong,
    /// Chicks and settings.
    Settings,
    /// Change the plan.
    Plan,
    /// A new chick.
    Start,
    /// A new chick, typed in: one question group a screen.
    TypeIn,
    /// A breeder's chicks.
    Chicks,
    /// One of them.
    Chick,
    /// The next card from a template.
    NewCard,
    /// A breeder's own details.
    Breeder,
    /// Several reports at once.
    Reports,
    /// A new chick, typed in: every field of the plan.
    WholePlan,
    /// Take in a pasted text or a file.
    Import,
    /// Where the numbers come from, opened at the rule of this place or at its beginning.
    Sources(Option<u8>),
}

/// Routes with a fixed name.
const NAMED: [(&str, Route); 27] = [
    ("now", Route::Now),
    ("weight", Route::Weight),
    ("weaning", Route::Weaning),
    ("journal", Route::Journal),
    ("handover", Route::Handover),
    ("vet", Route::ForVet),
    ("weigh", Route::Weigh),
    ("log", Route::Log(None)),
    ("guide", Route::Guide),
    ("home", Route::Home),
    ("first-weeks", Route::FirstWeeks(None)),
    ("crop", Route::Crop),
    ("droppings", Route::Droppings),
    ("solids", Route::Solids),
    ("wrong", Route::Wrong),
    ("settings", Route::Settings),
    ("plan", Route::Plan),
    ("start", Route::Start),
    ("type-in", Route::TypeIn),
    ("chicks", Route::Chicks),
    ("chick", Route::Chick),
    ("new-card", Route::NewCard),
    ("my-details", Route::Breeder),
    ("reports", Route::Reports),
    ("whole-plan", Route::WholePlan),
    ("take-in", Route::Import),
    ("sources", Route::Sources(None)),
];

/// Names of slots in the address.
const SLOTS: [(&str, Slot); 6] = [
    ("early-morning", Slot::EarlyMorning),
    ("morning", Slot::Morning),
    ("midday", Slot::Midday),
    ("afternoon", Slot::Afternoon),
    ("evening", Slot::Evening),
    ("bedtime", Slot::Bedtime),
];

/// Names of cards in the address.
const CARDS: [(&str, Card); 26] = [
    ("carrier", Card::Carrier),
    ("first-night", Card::FirstNight),
    ("refusal", Card::Refusal),
    ("weighing", Card::Weighing),
    ("vet-visit", Card::VetVisit),
    ("perch", Card::Perch),
    ("fumes", Card::Air),
    ("room", Card::Room),
    ("other-birds", Card::OtherBirds),
    ("holding", Card::Holding),
    ("foods", Card::Foods),
    ("poisons", Card::Poisons),
    ("tool", Card::Tool),
    ("water", Card::Water),
    ("droppings", Card::Droppings),
    ("cleaning", Card::Cleaning),
    ("keel", Card::Keel),
    ("begging", Card::Begging),
    ("powder", Card::Powder),
    ("crop-burn", Card::CropBurn),
    ("returned-food", Card::ReturnedFood),
    ("flying", Card::Flying),
    ("bath", Card::Bath),
    ("second-carer", Card::SecondCarer),
    ("papers", Card::Papers),
    ("after-weaning", Card::AfterWeaning),
];

impl Route {
    /// The screen of an address fragment such as `#/weigh`; [`Route::Now`] for anything unknown.
    pub fn from_hash(hash: &str) -> Self {
        let path = hash.trim_start_matches('#').trim_start_matches('/');
        if let Some(name) = path.strip_prefix("log/") {
            return Self::Log(named(&SLOTS, name));
        }
        if let Some(place) = path.strip_prefix("sources/") {
            return Self::Sources(place.parse().ok());
        }
        if let Some(name) = path.strip_prefix("first-weeks/") {
            return Self::FirstWeeks(named(&CARDS, name));
        }
        named(&NAMED, path).unwrap_or(Self::Now)
    }

    /// The address fragment of this screen.
    pub fn to_hash(self) -> String {
        if let Self::Log(Some(slot)) = self {
            return format!("#/log/{}", name_of(&SLOTS, &slot));
        }
        if let Self::Sources(Some(place)) = self {
            return format!("#/sources/{place}");
        }
        if let Self::FirstWeeks(Some(card)) = self {
            return format!("#/first-weeks/{}", name_of(&CARDS, &card));
        }
        format!("#/{}", name_of(&NAMED, &self))
    }

    /// Whether the screen is of use before there is a chick.
    pub const fn needs_no_chick(self) -> bool {
        matches!(
            self,
            Self::Wrong
                | Self::Settings
                | Self::TypeIn
                | Self::WholePlan
                | Self::Import
                | Self::Start
                | Self::Handover
                | Self::Chicks
                | Self::NewCard
                | Self::Breeder
                | Self::Reports
                | Self::Sources(_)
                | Self::FirstWeeks(_)
        )
    }

    /// Whether it names the chick itself or is of all chicks, so that the bar above does not name the one on screen.
    pub const fn is_of_all_chicks(self) -> bool {
        matches!(
            self,
            Self::Chicks | Self::Chick | Self::NewCard | Self::Breeder | Self::Reports
        )
    }

    /// Whether one thing is done here to its end, so that no other place stands beside it.
    pub const fn stands_alone(self) -> bool {
        matches!(
            self,
            Self::Guide
                | Self::Wrong
                | Self::TypeIn
                | Self::WholePlan
                | Self::Import
                | Self::Start
                | Self::NewCard
                | Self::Breeder
                | Self::Reports
        )
    }

    /// Whether a half-typed form may be open here, so that nothing may reload by itself.
    pub const fn is_form(self) -> bool {
        match self {
            Self::Weigh
            | Self::Log(_)
            | Self::Guide
            | Self::Home
            | Self::Crop
            | Self::Droppings
            | Self::Solids
            | Self::Plan
            | Self::TypeIn
            | Self::WholePlan
            | Self::Import
            | Self::Chick
            | Self::NewCard
            | Self::Breeder
            | Self::Reports
            | Self::ForVet
            | Self::Journal => true,
            Self::Now
            | Self::Weight
            | Self::Weaning
            | Self::Handover
            | Self::Wrong
            | Self::Settings
            | Self::Chicks
            | Self::Sources(_)
            | Self::FirstWeeks(_)
            | Self::Start => false,
        }
    }
}

/// What a name in the address stands for.
fn named<T: Copy>(table: &[(&str, T)], name: &str) -> Option<T> {
    let mut rows = table.iter();
    rows.find(|(known, _)| *known == name)
        .map(|(_, what)| *what)
}

/// The name in the address; every table names all that it is asked for.
fn name_of<T: PartialEq>(table: &[(&'static str, T)], what: &T) -> &'static str {
    let mut rows = table.iter();
    rows.find(|(_, known)| known == what)
        .map_or("", |(name, _)| *name)
}

#[cfg(test)]
mod tests {
    use crate::ui::route::*;

    #[test]
    fn every_route_comes_back_from_its_address() {
        let slots = SLOTS.iter().map(|(_, slot)| Route::Log(Some(*slot)));
        let places = [0, 24].map(|place| Route::Sources(Some(place)));
        let cards = Card::ALL.map(|card| Route::FirstWeeks(Some(card)));
        let named = NAMED.iter().map(|(_, route)| *route);
        for route in named.chain(slots).chain(places).chain(cards) {
            assert_eq!(Route::from_hash(&route.to_hash()), route);
        }
    }

    #[test]
    fn an_unknown_address_shows_what_is_due() {
        assert_eq!(Route::from_hash("#/nowhere"), Route::Now);
        assert_eq!(Route::from_hash(""), Route::Now);
        let unknown_card = Route::from_hash("#/first-weeks/nothing");
        assert_eq!(unknown_card, Route::FirstWeeks(None));
    }
}

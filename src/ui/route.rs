//! Which screen is shown, to and from the part of the address after `#`.

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
    /// Enter a weight.
    Weigh,
    /// Log a feed, preset to this slot or to the next one.
    Log(Option<Slot>),
    /// One feed, step by step.
    Guide,
    /// First days, powder, hygiene.
    Home,
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
    /// A new chick, typed in.
    TypeIn,
    /// Take in a pasted text or a file.
    Import,
    /// Where the numbers come from, opened at the rule of this place or at its beginning.
    Sources(Option<u8>),
}

/// Routes with a fixed name.
const NAMED: [(&str, Route); 19] = [
    ("now", Route::Now),
    ("weight", Route::Weight),
    ("weaning", Route::Weaning),
    ("journal", Route::Journal),
    ("handover", Route::Handover),
    ("weigh", Route::Weigh),
    ("log", Route::Log(None)),
    ("guide", Route::Guide),
    ("home", Route::Home),
    ("crop", Route::Crop),
    ("droppings", Route::Droppings),
    ("solids", Route::Solids),
    ("wrong", Route::Wrong),
    ("settings", Route::Settings),
    ("plan", Route::Plan),
    ("start", Route::Start),
    ("type-in", Route::TypeIn),
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

impl Route {
    /// The screen of an address fragment such as `#/weigh`; [`Route::Now`] for anything unknown.
    pub fn from_hash(hash: &str) -> Self {
        let path = hash.trim_start_matches('#').trim_start_matches('/');
        if let Some(name) = path.strip_prefix("log/") {
            return Self::Log(
                SLOTS
                    .iter()
                    .find(|(slot, _)| *slot == name)
                    .map(|(_, slot)| *slot),
            );
        }
        if let Some(place) = path.strip_prefix("sources/") {
            return Self::Sources(place.parse().ok());
        }
        NAMED
            .iter()
            .find(|(name, _)| *name == path)
            .map_or(Self::Now, |(_, route)| *route)
    }

    /// The address fragment of this screen.
    pub fn to_hash(self) -> String {
        if let Self::Log(Some(slot)) = self {
            let name = SLOTS
                .iter()
                .find(|(_, known)| *known == slot)
                .map_or("", |(name, _)| *name);
            return format!("#/log/{name}");
        }
        if let Self::Sources(Some(place)) = self {
            return format!("#/sources/{place}");
        }
        let name = NAMED
            .iter()
            .find(|(_, route)| *route == self)
            .map_or("now", |(name, _)| *name);
        format!("#/{name}")
    }

    /// Whether the screen is of use before there is a chick.
    pub const fn needs_no_chick(self) -> bool {
        matches!(
            self,
            Self::Wrong
                | Self::Settings
                | Self::TypeIn
                | Self::Import
                | Self::Start
                | Self::Handover
                | Self::Sources(_)
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
            | Self::Import
            | Self::Journal => true,
            Self::Now
            | Self::Weight
            | Self::Weaning
            | Self::Handover
            | Self::Wrong
            | Self::Settings
            | Self::Sources(_)
            | Self::Start => false,
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::ui::route::*;

    #[test]
    fn every_route_comes_back_from_its_address() {
        let slots = SLOTS.iter().map(|(_, slot)| Route::Log(Some(*slot)));
        let places = [0, 24].map(|place| Route::Sources(Some(place)));
        let named = NAMED.iter().map(|(_, route)| *route);
        for route in named.chain(slots).chain(places) {
            assert_eq!(Route::from_hash(&route.to_hash()), route);
        }
    }

    #[test]
    fn an_unknown_address_shows_what_is_due() {
        assert_eq!(Route::from_hash("#/nowhere"), Route::Now);
        assert_eq!(Route::from_hash(""), Route::Now);
    }
}

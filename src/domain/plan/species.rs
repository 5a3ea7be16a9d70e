//! The species that Perchlight knows, each number with its source.

use crate::domain::quantity::evidence::{Cited, Standing};
use crate::domain::quantity::units::{Grams, Millilitres};

/// A species of parrot in the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Species {
    /// *Ara chloropterus*
    GreenWingedMacaw,
    /// *Ara ararauna*
    BlueAndYellowMacaw,
    /// *Ara macao*
    ScarletMacaw,
    /// *Ara militaris*
    MilitaryMacaw,
    /// *Ara ambiguus*
    GreatGreenMacaw,
    /// *Anodorhynchus hyacinthinus*
    HyacinthMacaw,
    /// *Ara severus*
    ChestnutFrontedMacaw,
    /// *Amazona aestiva*
    BlueFrontedAmazon,
    /// *Amazona ochrocephala*
    YellowCrownedAmazon,
    /// *Amazona farinosa*
    SouthernMealyAmazon,
    /// *Psittacus erithacus*
    GreyParrot,
    /// *Cacatua alba*
    WhiteCockatoo,
    /// *Cacatua galerita*
    SulphurCrestedCockatoo,
    /// *Cacatua moluccensis*
    MoluccanCockatoo,
    /// *Eclectus roratus*
    EclectusParrot,
    /// *Nymphicus hollandicus*
    Cockatiel,
    /// *Aratinga solstitialis*
    SunParakeet,
    /// *Pyrrhura molinae*
    GreenCheekedParakeet,
}

/// A CITES appendix, to be checked against the official list: listings change.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cites {
    /// Appendix I.
    I,
    /// Appendix II.
    II,
    /// In no appendix.
    NotListed,
}

/// Ages in whole weeks from hatching.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Weeks {
    /// The first week.
    pub from: i32,
    /// The last week.
    pub to: i32,
}

/// What is known of one species.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpeciesProfile {
    /// Scientific name.
    pub latin: &'static str,
    /// Mean adult mass.
    pub adult: Cited<Grams>,
    /// Lowest and highest adult mass of handbooks.
    pub adult_range: Cited<(Grams, Grams)>,
    /// Adult mass that goes with the growth constant.
    pub growth_adult: Option<Cited<Grams>>,
    /// Logistic growth constant, 1/day.
    pub growth_per_day: Option<Cited<f64>>,
    /// Ages at which hand-reared birds are commonly weaned. A guide, never a trigger.
    pub weaning: Option<Cited<Weeks>>,
    /// Widest ages given for weaning.
    pub weaning_widest: Option<Cited<Weeks>>,
    /// The most a single feed may hold whatever the weight.
    pub feed_ceiling: Option<Cited<Millilitres>>,
    /// CITES appendix.
    pub cites: Cited<Cites>,
}

const DUNNING: &str = "Dunning 2008, CRC Handbook of Avian Body Masses, as in the AVONET data set";
const HANDBOOKS: &str = "handbook ranges, from memory";
const ANAGE: &str = "AnAge data file (de Magalhaes & Costa 2009; Tacutu et al. 2018)";
const LOGISTIC: &str = "AnAge growth rate; read as logistic because a logistic fit of one green-winged chick gives 0.110";
const WEANING: &str = "trade practice by species; Clinical Avian Medicine 2006, table 3.2.1; a magazine's list of weaning ages";
const CEILING: &str = "ours: upper end of usual feeds for the genus";
const CITES: &str = "from memory; check the official list";

const fn weeks(from: i32, to: i32) -> Cited<Weeks> {
    Cited::new(Weeks { from, to }, Standing::CommonPractice, WEANING)
}

const fn growth(per_day: f64) -> Cited<f64> {
    Cited::new(per_day, Standing::Derived, LOGISTIC)
}

const fn growth_adult(grams: i32) -> Cited<Grams> {
    Cited::new(Grams::whole(grams), Standing::Published, ANAGE)
}

/// Most that one feed of a large macaw may hold, 120 ml. Ours.
pub const LARGE_MACAW_CEILING: Millilitres = Millilitres::whole(120);
/// Most that one feed of a hyacinth macaw may hold, 150 ml. Ours.
pub const HYACINTH_CEILING: Millilitres = Millilitres::whole(150);

const fn ceiling(most: Millilitres) -> Cited<Millilitres> {
    Cited::new(most, Standing::Ours, CEILING)
}

const fn adult(tenth_g: i32) -> Cited<Grams> {
    Cited::new(Grams::tenths_held(tenth_g), Standing::Published, DUNNING)
}

const fn range(low_g: i32, high_g: i32) -> Cited<(Grams, Grams)> {
    Cited::new(
        (Grams::whole(low_g), Grams::whole(high_g)),
        Standing::SecondHand,
        HANDBOOKS,
    )
}

const fn cites(appendix: Cites) -> Cited<Cites> {
    Cited::new(appendix, Standing::SecondHand, CITES)
}

impl Species {
    /// Every species, in the order of the lists on screen: macaws first.
    pub const ALL: [Self; 18] = [
        Self::GreenWingedMacaw,
        Self::BlueAndYellowMacaw,
        Self::ScarletMacaw,
        Self::MilitaryMacaw,
        Self::GreatGreenMacaw,
        Self::HyacinthMacaw,
        Self::ChestnutFrontedMacaw,
        Self::BlueFrontedAmazon,
        Self::YellowCrownedAmazon,
        Self::SouthernMealyAmazon,
        Self::GreyParrot,
        Self::WhiteCockatoo,
        Self::SulphurCrestedCockatoo,
        Self::MoluccanCockatoo,
        Self::EclectusParrot,
        Self::Cockatiel,
        Self::SunParakeet,
        Self::GreenCheekedParakeet,
    ];

    /// What is known of this species.
    #[expect(clippy::too_many_lines, reason = "a table of one row a species")]
    pub const fn profile(self) -> SpeciesProfile {
        match self {
            Self::GreenWingedMacaw => SpeciesProfile {
                latin: "Ara chloropterus",
                adult: adult(12140),
                adult_range: range(1050, 1710),
                growth_adult: Some(growth_adult(1220)),
                growth_per_day: Some(growth(0.112)),
                weaning: Some(weeks(16, 26)),
                weaning_widest: Some(weeks(14, 39)),
                feed_ceiling: Some(ceiling(LARGE_MACAW_CEILING)),
                cites: cites(Cites::II),
            },
            Self::BlueAndYellowMacaw => SpeciesProfile {
                latin: "Ara ararauna",
                adult: adult(11250),
                adult_range: range(900, 1380),
                growth_adult: Some(growth_adult(1030)),
                growth_per_day: Some(growth(0.126)),
                weaning: Some(weeks(14, 24)),
                weaning_widest: Some(weeks(12, 26)),
                feed_ceiling: Some(ceiling(LARGE_MACAW_CEILING)),
                cites: cites(Cites::II),
            },
            Self::ScarletMacaw => SpeciesProfile {
                latin: "Ara macao",
                adult: adult(10150),
                adult_range: range(900, 1490),
                growth_adult: Some(growth_adult(1040)),
                growth_per_day: Some(growth(0.120)),
                weaning: Some(weeks(14, 24)),
                weaning_widest: Some(weeks(12, 26)),
                feed_ceiling: Some(ceiling(LARGE_MACAW_CEILING)),
                cites: cites(Cites::I),
            },
            Self::MilitaryMacaw => SpeciesProfile {
                latin: "Ara militaris",
                adult: adult(11340),
                adult_range: range(860, 1200),
                growth_adult: Some(growth_adult(1134)),
                growth_per_day: Some(growth(0.120)),
                weaning: Some(weeks(14, 22)),
                weaning_widest: Some(weeks(12, 24)),
                feed_ceiling: Some(ceiling(LARGE_MACAW_CEILING)),
                cites: cites(Cites::I),
            },
            Self::GreatGreenMacaw => SpeciesProfile {
                latin: "Ara ambiguus",
                adult: adult(13000),
                adult_range: range(1260, 1400),
                growth_adult: Some(growth_adult(1300)),
                growth_per_day: Some(growth(0.119)),
                weaning: Some(weeks(16, 26)),
                weaning_widest: Some(weeks(15, 26)),
                feed_ceiling: Some(ceiling(LARGE_MACAW_CEILING)),
                cites: cites(Cites::I),
            },
            Self::HyacinthMacaw => SpeciesProfile {
                latin: "Anodorhynchus hyacinthinus",
                adult: adult(13310),
                adult_range: range(1200, 1700),
                growth_adult: Some(growth_adult(1330)),
                growth_per_day: None,
                weaning: Some(weeks(26, 40)),
                weaning_widest: Some(weeks(20, 40)),
                feed_ceiling: Some(ceiling(HYACINTH_CEILING)),
                cites: cites(Cites::I),
            },
            Self::ChestnutFrontedMacaw => SpeciesProfile {
                latin: "Ara severus",
                adult: adult(3430),
                adult_range: range(300, 430),
                growth_adult: Some(growth_adult(343)),
                growth_per_day: None,
                weaning: Some(weeks(11, 17)),
                weaning_widest: Some(weeks(11, 17)),
                feed_ceiling: None,
                cites: cites(Cites::II),
            },
            Self::BlueFrontedAmazon => SpeciesProfile {
                latin: "Amazona aestiva",
                adult: adult(4510),
                adult_range: range(370, 520),
                growth_adult: Some(growth_adult(451)),
                growth_per_day: Some(growth(0.181)),
                weaning: Some(weeks(12, 18)),
                weaning_widest: Some(weeks(9, 18)),
                feed_ceiling: None,
                cites: cites(Cites::II),
            },
            Self::YellowCrownedAmazon => SpeciesProfile {
                latin: "Amazona ochrocephala",
                adult: adult(4769),
                adult_range: range(380, 560),
                growth_adult: Some(growth_adult(430)),
                growth_per_day: Some(growth(0.158)),
                weaning: Some(weeks(12, 18)),
                weaning_widest: Some(weeks(9, 18)),
                feed_ceiling: None,
                cites: cites(Cites::II),
            },
            Self::SouthernMealyAmazon => SpeciesProfile {
                latin: "Amazona farinosa",
                adult: adult(6260),
                adult_range: range(535, 770),
                growth_adult: Some(growth_adult(626)),
                growth_per_day: None,
                weaning: Some(weeks(12, 18)),
                weaning_widest: Some(weeks(9, 18)),
                feed_ceiling: None,
                cites: cites(Cites::II),
            },
            Self::GreyParrot => SpeciesProfile {
                latin: "Psittacus erithacus",
                adult: adult(3330),
                adult_range: range(300, 550),
                growth_adult: Some(growth_adult(333)),
                growth_per_day: Some(growth(0.128)),
                weaning: Some(weeks(12, 18)),
                weaning_widest: Some(weeks(10, 20)),
                feed_ceiling: None,
                cites: cites(Cites::I),
            },
            Self::WhiteCockatoo => SpeciesProfile {
                latin: "Cacatua alba",
                adult: adult(5700),
                adult_range: range(440, 750),
                growth_adult: Some(growth_adult(570)),
                growth_per_day: Some(growth(0.130)),
                weaning: Some(weeks(16, 26)),
                weaning_widest: Some(weeks(12, 30)),
                feed_ceiling: None,
                cites: cites(Cites::II),
            },
            Self::SulphurCrestedCockatoo => SpeciesProfile {
                latin: "Cacatua galerita",
                adult: adult(7204),
                adult_range: range(650, 950),
                growth_adult: Some(growth_adult(800)),
                growth_per_day: None,
                weaning: Some(weeks(14, 22)),
                weaning_widest: Some(weeks(12, 22)),
                feed_ceiling: None,
                cites: cites(Cites::II),
            },
            Self::MoluccanCockatoo => SpeciesProfile {
                latin: "Cacatua moluccensis",
                adult: adult(8350),
                adult_range: range(775, 1000),
                growth_adult: Some(growth_adult(830)),
                growth_per_day: None,
                weaning: Some(weeks(16, 28)),
                weaning_widest: Some(weeks(16, 28)),
                feed_ceiling: None,
                cites: cites(Cites::I),
            },
            Self::EclectusParrot => SpeciesProfile {
                latin: "Eclectus roratus",
                adult: adult(4808),
                adult_range: range(370, 580),
                growth_adult: Some(growth_adult(440)),
                growth_per_day: Some(growth(0.128)),
                weaning: Some(weeks(12, 18)),
                weaning_widest: Some(weeks(10, 22)),
                feed_ceiling: None,
                cites: cites(Cites::II),
            },
            Self::Cockatiel => SpeciesProfile {
                latin: "Nymphicus hollandicus",
                adult: adult(946),
                adult_range: range(75, 125),
                growth_adult: Some(growth_adult(90)),
                growth_per_day: None,
                weaning: Some(weeks(6, 12)),
                weaning_widest: Some(weeks(6, 12)),
                feed_ceiling: None,
                cites: cites(Cites::NotListed),
            },
            Self::SunParakeet => SpeciesProfile {
                latin: "Aratinga solstitialis",
                adult: adult(1196),
                adult_range: range(100, 130),
                growth_adult: None,
                growth_per_day: None,
                weaning: Some(weeks(8, 12)),
                weaning_widest: Some(weeks(7, 12)),
                feed_ceiling: None,
                cites: cites(Cites::II),
            },
            Self::GreenCheekedParakeet => SpeciesProfile {
                latin: "Pyrrhura molinae",
                adult: adult(771),
                adult_range: range(60, 80),
                growth_adult: None,
                growth_per_day: None,
                weaning: Some(weeks(8, 11)),
                weaning_widest: Some(weeks(7, 12)),
                feed_ceiling: None,
                cites: cites(Cites::II),
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::plan::species::*;

    #[test]
    fn the_list_names_each_species_once() {
        let mut latin: Vec<_> = Species::ALL
            .iter()
            .map(|species| species.profile().latin)
            .collect();
        latin.sort_unstable();
        latin.dedup();
        assert_eq!(latin.len(), Species::ALL.len());
    }

    #[test]
    fn a_mean_mass_lies_within_its_handbook_range() {
        for species in Species::ALL {
            let profile = species.profile();
            let (low, high) = profile.adult_range.value;
            assert!(
                (low..=high).contains(&profile.adult.value),
                "{}",
                profile.latin
            );
        }
    }

    /// Weeks from the table of Clinical Avian Medicine 2006 joined with a magazine's list; a label, never a
    /// trigger.
    #[test]
    fn the_weaning_weeks_are_those_of_the_trades_lists_and_lie_within_the_widest() {
        use Species::{
            BlueAndYellowMacaw, ChestnutFrontedMacaw, Cockatiel, GreatGreenMacaw, GreenWingedMacaw,
            GreyParrot, HyacinthMacaw, MilitaryMacaw, MoluccanCockatoo, SulphurCrestedCockatoo,
            SunParakeet, WhiteCockatoo, YellowCrownedAmazon,
        };
        for (species, from, to) in [
            (GreenWingedMacaw, 16, 26),
            (BlueAndYellowMacaw, 14, 24),
            (HyacinthMacaw, 26, 40),
            (MilitaryMacaw, 14, 22),
            (GreatGreenMacaw, 16, 26),
            (ChestnutFrontedMacaw, 11, 17),
            (WhiteCockatoo, 16, 26),
            (MoluccanCockatoo, 16, 28),
            (SulphurCrestedCockatoo, 14, 22),
            (GreyParrot, 12, 18),
            (YellowCrownedAmazon, 12, 18),
            (SunParakeet, 8, 12),
            (Cockatiel, 6, 12),
        ] {
            let weeks = species.profile().weaning.map(|weeks| weeks.value);
            assert_eq!(weeks, Some(Weeks { from, to }), "{species:?}");
        }
        for species in Species::ALL {
            let profile = species.profile();
            let (usual, widest) = (profile.weaning.unwrap(), profile.weaning_widest.unwrap());
            assert!(widest.value.from <= usual.value.from, "{species:?}");
            assert!(usual.value.to <= widest.value.to, "{species:?}");
        }
    }
}

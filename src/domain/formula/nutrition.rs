//! What a mix holds: dry matter, fat, protein, energy; when it is out of bounds; how much fat
//! supplement a wanted share of fat takes.

use crate::domain::formula::food_components::PEANUT_BUTTER;
use crate::domain::formula::mixing::{
    MIX_C, MixAmounts, MixError, POWDER_SHARE, check, mix_density_g_per_ml,
};
use crate::domain::formula::powder::Powder;
use crate::domain::plan::species::Species;
use crate::domain::quantity::evidence::{Cited, Standing};

/// Below this powder share, 0.18, a feathered chick's formula is too thin.
///
/// Source: Roudybush & Grau 1986: 10 % solids killed, 20 % grew. Standing: the exact limit is ours.
pub const TOO_THIN_BELOW: f64 = 0.18;

/// Above this powder share, 0.33, formula is too thick: slow crop, too little water.
///
/// Source: Duerr & Gage 2020 p. 595 for the harm; 30 % solids grew well (Roudybush & Grau 1986).
/// Standing: the exact limit is ours.
pub const TOO_THICK_ABOVE: f64 = 0.33;

/// Most fat supplement, 2.5 g for 100 ml of powder and water. Standing: ours, about half a teaspoon.
pub const SUPPLEMENT_CAP_G_PER_100_ML: f64 = 2.5;

/// Most fat supplement as a share of the dry matter, 0.10. Standing: ours.
pub const SUPPLEMENT_CAP_OF_DRY_MATTER: f64 = 0.10;

/// Energy of smooth peanut butter, 5.98 kcal/g. Source: USDA SR28, NDB 16398.
pub const SUPPLEMENT_KCAL_PER_G: f64 = 5.98;

/// Energy of peanut protein, fat and carbohydrate, in kcal/g. Source: USDA SR28, NDB 16398.
pub const PEANUT_KCAL_PER_G: (f64, f64, f64) = (3.47, 8.37, 4.07);

/// Smooth peanut butter in one level teaspoon, 5.33 g. Source: USDA SR28: a tablespoon holds 16 g.
pub const SUPPLEMENT_G_PER_TEASPOON: f64 = 16.0 / 3.0;

/// Fat of the dry matter that can be asked for, in per cent.
///
/// Standing: ours. Crops of wild macaws hold about 23 to 29 % (Brightsmith et al. 2010, from memory).
pub const WANTED_FAT_PCT: (f64, f64) = (1.0, 40.0);

/// Slack on the caps, relative: only for the last digits of a double, so that a mix made at the cap
/// does not warn.
const ROUNDING: f64 = 1e-9;

/// From this share of powder on, in per cent, somebody may have typed parts by volume. Standing: ours; one
/// part of powder to two of water reads as 33 %, and by weight that is 17 to 20 %.
pub const VOLUME_ABOVE_PCT: f64 = 30.0;

/// How thick a mix looks. Source: common practice, for 15, 20, 25 and 30 % powder by weight.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Thickness {
    /// About 15 %.
    Cream,
    /// About 20 %.
    ThinYoghurt,
    /// About 25 %.
    ApplePuree,
    /// 30 % and more.
    ThickPorridge,
}

impl Thickness {
    /// The nearest of the four to a share of powder by weight, 0 to 1; half-way the thicker one.
    pub fn of(share: f64) -> Self {
        if share + ROUNDING < 0.175 {
            Self::Cream
        } else if share + ROUNDING < 0.225 {
            Self::ThinYoghurt
        } else if share + ROUNDING < 0.275 {
            Self::ApplePuree
        } else {
            Self::ThickPorridge
        }
    }
}

/// What a mix holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MixContents {
    /// Volume at 40 C with the supplement, in ml.
    pub volume_ml: f64,
    /// Powder over powder and water by mass, 0 to 1.
    pub powder_fraction: f64,
    /// Dry matter of the whole, in per cent by mass.
    pub dry_matter_pct: f64,
    /// Fat of the dry matter, in per cent: to compare with studies.
    pub fat_pct_of_dry_matter: f64,
    /// Fat of powder and supplement as they are, in per cent: to compare with a label.
    pub fat_pct_as_fed: f64,
    /// Protein of the dry matter, in per cent.
    pub protein_pct_of_dry_matter: f64,
    /// Supplement's dry matter over all dry matter, 0 to 1.
    pub supplement_share_of_dry_matter: f64,
    /// Supplement for 100 ml of powder and water, in g.
    pub supplement_g_per_100_ml: f64,
    /// Energy of the whole, in kcal.
    pub kcal: f64,
    /// Energy of a millilitre, in kcal/ml.
    pub kcal_per_ml: f64,
}

/// What a mix of that powder holds.
///
/// # Errors
/// [`MixError::NoPowder`], [`MixError::NoWater`].
pub fn mix_contents(amounts: &MixAmounts, powder: &Powder) -> Result<MixContents, MixError> {
    let plain_ml = amounts.volume_ml()?;
    let (powder_g, supplement_g) = (amounts.powder_g, amounts.supplement_g);
    let powder_dry_g = powder_g * (1.0 - powder.moisture_share);
    let supplement_dry_g = supplement_g * (1.0 - PEANUT_BUTTER.water_share);
    let dry_g = powder_dry_g + supplement_dry_g;
    let fat_g = powder_g * powder.fat_share + supplement_g * PEANUT_BUTTER.fat_share;
    let protein_g = powder_g * powder.protein_share + supplement_g * PEANUT_BUTTER.protein_share;
    let kcal = powder_g * powder.kcal_per_g + supplement_g * SUPPLEMENT_KCAL_PER_G;
    let volume_ml = plain_ml + supplement_g * PEANUT_BUTTER.volume_ml_per_g(MIX_C);
    Ok(MixContents {
        volume_ml,
        powder_fraction: amounts.powder_fraction()?,
        dry_matter_pct: 100.0 * dry_g / (powder_g + amounts.water_g + supplement_g),
        fat_pct_of_dry_matter: 100.0 * fat_g / dry_g,
        fat_pct_as_fed: 100.0 * fat_g / (powder_g + supplement_g),
        protein_pct_of_dry_matter: 100.0 * protein_g / dry_g,
        supplement_share_of_dry_matter: supplement_dry_g / dry_g,
        supplement_g_per_100_ml: 100.0 * supplement_g / plain_ml,
        kcal,
        kcal_per_ml: kcal / volume_ml,
    })
}

/// What is wrong with a mix.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum MixWarning {
    /// Powder share below [`TOO_THIN_BELOW`].
    TooThin {
        /// The powder share, 0 to 1.
        powder_fraction: f64,
    },
    /// Powder share above [`TOO_THICK_ABOVE`].
    TooThick {
        /// The powder share, 0 to 1.
        powder_fraction: f64,
    },
    /// Supplement above [`SUPPLEMENT_CAP_G_PER_100_ML`].
    SupplementOverVolumeCap {
        /// Supplement for 100 ml, in g.
        g_per_100_ml: f64,
    },
    /// Supplement above [`SUPPLEMENT_CAP_OF_DRY_MATTER`].
    SupplementOverDryMatterCap {
        /// Supplement over all dry matter, 0 to 1.
        share_of_dry_matter: f64,
    },
    /// A powder that is high in fat gets supplement on top.
    SupplementInHighFatPowder {
        /// Fat of the powder as fed, 0 to 1.
        fat_share: f64,
    },
}

impl MixContents {
    /// Energy of a feed or of a day's feeds, in kcal.
    pub fn kcal_in_ml(&self, fed_ml: f64) -> f64 {
        self.kcal_per_ml * fed_ml
    }

    /// All that is wrong with this mix of that powder, in the order of [`MixWarning`].
    pub fn warnings(&self, powder: &Powder) -> Vec<MixWarning> {
        let mut warnings = Vec::new();
        let powder_fraction = self.powder_fraction;
        if powder_fraction < TOO_THIN_BELOW * (1.0 - ROUNDING) {
            warnings.push(MixWarning::TooThin { powder_fraction });
        }
        if TOO_THICK_ABOVE * (1.0 + ROUNDING) < powder_fraction {
            warnings.push(MixWarning::TooThick { powder_fraction });
        }
        let g_per_100_ml = self.supplement_g_per_100_ml;
        if SUPPLEMENT_CAP_G_PER_100_ML * (1.0 + ROUNDING) < g_per_100_ml {
            warnings.push(MixWarning::SupplementOverVolumeCap { g_per_100_ml });
        }
        let share_of_dry_matter = self.supplement_share_of_dry_matter;
        if SUPPLEMENT_CAP_OF_DRY_MATTER * (1.0 + ROUNDING) < share_of_dry_matter {
            warnings.push(MixWarning::SupplementOverDryMatterCap {
                share_of_dry_matter,
            });
        }
        if 0.0 < g_per_100_ml && powder.is_high_fat() {
            warnings.push(MixWarning::SupplementInHighFatPowder {
                fat_share: powder.fat_share,
            });
        }
        warnings
    }
}

/// Which cap held a supplement back.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SupplementCap {
    /// [`SUPPLEMENT_CAP_G_PER_100_ML`].
    Volume,
    /// [`SUPPLEMENT_CAP_OF_DRY_MATTER`].
    DryMatter,
}

/// How much supplement a wanted share of fat takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SupplementNeed {
    /// Supplement for 100 ml of powder and water, in g; zero where the powder has the fat already.
    pub g_per_100_ml: f64,
    /// The cap that held it back, if one did.
    pub capped_by: Option<SupplementCap>,
    /// Fat of the dry matter that this reaches, in per cent.
    pub fat_pct_of_dry_matter: f64,
}

/// Supplement that lifts the fat of the dry matter to `wanted_pct`, held at the lower cap.
///
/// # Formula
/// `x = (w D - F) / (f - w d)`: dry matter `D` and fat `F` of the powder in 100 ml, fat `f` and dry
/// matter `d` of a gram of supplement, wanted share `w`.
///
/// # Errors
/// [`MixError::PowderShare`], [`MixError::WantedFat`] outside [`WANTED_FAT_PCT`].
pub fn supplement_for_fat(
    powder: &Powder,
    powder_fraction: f64,
    wanted_pct: f64,
) -> Result<SupplementNeed, MixError> {
    let refusal = MixError::PowderShare {
        given: powder_fraction,
    };
    check(powder_fraction, POWDER_SHARE, refusal)?;
    let refusal = MixError::WantedFat {
        given_pct: wanted_pct,
        low_pct: WANTED_FAT_PCT.0,
        high_pct: WANTED_FAT_PCT.1,
    };
    let wanted = check(wanted_pct, WANTED_FAT_PCT, refusal)? / 100.0;
    let powder_g = 100.0 * mix_density_g_per_ml(powder_fraction) * powder_fraction;
    let powder_dry_g = powder_g * (1.0 - powder.moisture_share);
    let powder_fat_g = powder_g * powder.fat_share;
    let supplement_dry = 1.0 - PEANUT_BUTTER.water_share;
    let supplement_fat = PEANUT_BUTTER.fat_share;
    let missing_g = wanted * powder_dry_g - powder_fat_g;
    let needed_g = (missing_g / (supplement_fat - wanted * supplement_dry)).max(0.0);
    let cap_share = SUPPLEMENT_CAP_OF_DRY_MATTER;
    let dry_cap_g = powder_dry_g * cap_share / (1.0 - cap_share) / supplement_dry;
    let (cap_g, cap) = if dry_cap_g < SUPPLEMENT_CAP_G_PER_100_ML {
        (dry_cap_g, SupplementCap::DryMatter)
    } else {
        (SUPPLEMENT_CAP_G_PER_100_ML, SupplementCap::Volume)
    };
    let g_per_100_ml = needed_g.min(cap_g);
    let fat_g = powder_fat_g + g_per_100_ml * supplement_fat;
    Ok(SupplementNeed {
        g_per_100_ml,
        capped_by: (cap_g < needed_g).then_some(cap),
        fat_pct_of_dry_matter: 100.0 * fat_g / (powder_dry_g + g_per_100_ml * supplement_dry),
    })
}

/// How much fat the chicks of a macaw usually get.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FatNeed {
    /// The most of all.
    Most,
    /// Between the two.
    Middling,
    /// A regular to medium powder.
    RegularToMedium,
}

/// How much fat the chicks of a species usually get; `None` where nothing was found about it.
///
/// Macaws as a whole are given formula with more fat (Duerr & Gage 2020, p. 595).
pub const fn fat_need(species: Species) -> Option<Cited<FatNeed>> {
    let need = match species {
        Species::GreenWingedMacaw | Species::GreatGreenMacaw | Species::HyacinthMacaw => {
            FatNeed::Most
        }
        Species::BlueAndYellowMacaw => FatNeed::Middling,
        Species::ScarletMacaw | Species::MilitaryMacaw => FatNeed::RegularToMedium,
        Species::ChestnutFrontedMacaw
        | Species::GreyParrot
        | Species::WhiteCockatoo
        | Species::BlueFrontedAmazon
        | Species::YellowCrownedAmazon
        | Species::SouthernMealyAmazon
        | Species::SulphurCrestedCockatoo
        | Species::MoluccanCockatoo
        | Species::EclectusParrot
        | Species::Cockatiel
        | Species::SunParakeet
        | Species::GreenCheekedParakeet => return None,
    };
    Some(Cited::new(
        need,
        Standing::CommonPractice,
        "breeders of macaws; they differ",
    ))
}

#[cfg(test)]
mod tests {
    use crate::domain::formula::mixing::{MixAmounts, MixError, MixWanted, mix_amounts};
    use crate::domain::formula::nutrition::{
        MixContents, MixWarning, SupplementCap, Thickness, mix_contents, supplement_for_fat,
    };
    use crate::domain::formula::powder::Powder;

    fn powder(fat_share: f64) -> Powder {
        Powder {
            protein_share: 0.20,
            fat_share,
            moisture_share: 0.09,
            kcal_per_g: 3.6,
        }
    }

    fn made(powder_fraction: f64, supplement_g_per_100_ml: f64) -> MixContents {
        let wanted = MixWanted {
            volume_ml: 90.0,
            allowance_ml: 5.0,
            powder_fraction,
            supplement_g_per_100_ml,
        };
        mix_contents(&mix_amounts(&wanted).unwrap(), &powder(0.12)).unwrap()
    }

    #[test]
    fn a_mix_looks_like_the_nearest_of_four() {
        let looks = |pct: f64| Thickness::of(pct / 100.0);
        for (pct, look) in [
            (15.0, Thickness::Cream),
            (17.4, Thickness::Cream),
            (17.5, Thickness::ThinYoghurt),
            (20.0, Thickness::ThinYoghurt),
            (22.4, Thickness::ThinYoghurt),
            (22.5, Thickness::ApplePuree),
            (25.0, Thickness::ApplePuree),
            (27.4, Thickness::ApplePuree),
            (27.5, Thickness::ThickPorridge),
            (30.0, Thickness::ThickPorridge),
        ] {
            assert_eq!(looks(pct), look, "{pct}");
        }
    }

    #[test]
    fn thickness_warns_beyond_its_limits_and_not_at_them() {
        let warnings = |share| made(share, 0.0).warnings(&powder(0.12));
        for fine in [0.18, 0.25, 0.33] {
            assert_eq!(warnings(fine), []);
        }
        assert!(matches!(warnings(0.179)[..], [MixWarning::TooThin { .. }]));
        assert!(matches!(warnings(0.331)[..], [MixWarning::TooThick { .. }]));
        // On the scale: 18 g in 100 g is the limit, 17 g in 100 g is below.
        let weighed = |powder_g: f64| {
            let water_g = 100.0 - powder_g;
            let amounts = MixAmounts {
                powder_g,
                water_g,
                supplement_g: 0.0,
            };
            mix_contents(&amounts, &powder(0.12))
                .unwrap()
                .warnings(&powder(0.12))
        };
        assert_eq!(weighed(18.0), []);
        assert_eq!(
            weighed(17.0),
            [MixWarning::TooThin {
                powder_fraction: 0.17
            }]
        );
        assert_eq!(weighed(33.0), []);
        assert_eq!(
            weighed(34.0),
            [MixWarning::TooThick {
                powder_fraction: 0.34
            }]
        );
    }

    #[test]
    fn the_supplement_warns_above_the_volume_cap_and_not_at_it() {
        let warnings = |g| made(0.25, g).warnings(&powder(0.12));
        assert_eq!(warnings(2.4), []);
        assert_eq!(warnings(2.5), []);
        assert!(matches!(
            warnings(2.51)[..],
            [MixWarning::SupplementOverVolumeCap { .. }]
        ));
    }

    #[test]
    fn the_supplement_warns_above_the_dry_matter_cap_and_not_at_it() {
        // 100 g powder hold 91 g dry matter; 91 / 9 g of dry supplement make a tenth of the whole.
        let at_cap_g = 91.0 / 9.0 / 0.9877;
        let warnings = |supplement_g: f64| {
            let amounts = MixAmounts {
                powder_g: 100.0,
                water_g: 300.0,
                supplement_g,
            };
            let contents = mix_contents(&amounts, &powder(0.12)).unwrap();
            let over_dry_matter = |warning: &MixWarning| {
                matches!(warning, MixWarning::SupplementOverDryMatterCap { .. })
            };
            contents.warnings(&powder(0.12)).iter().any(over_dry_matter)
        };
        assert!(!warnings(at_cap_g - 0.01));
        assert!(!warnings(at_cap_g));
        assert!(warnings(at_cap_g + 0.01));
    }

    #[test]
    fn a_high_fat_powder_warns_with_any_supplement_and_never_without() {
        let rich = powder(0.13);
        let flagged = [MixWarning::SupplementInHighFatPowder { fat_share: 0.13 }];
        assert_eq!(made(0.25, 0.1).warnings(&rich), flagged);
        assert_eq!(made(0.25, 0.0).warnings(&rich), []);
        assert_eq!(made(0.25, 0.1).warnings(&powder(0.129)), []);
    }

    #[test]
    fn the_supplement_reaches_the_wanted_fat_below_the_cap() {
        let need = supplement_for_fat(&powder(0.12), 0.25, 15.0).unwrap();
        assert_eq!(need.capped_by, None);
        assert!((need.fat_pct_of_dry_matter - 15.0).abs() < 1e-9);
        // The way back: a mix made with it holds that fat.
        let contents = made(0.25, need.g_per_100_ml);
        assert!((contents.fat_pct_of_dry_matter - 15.0).abs() < 1e-9);
    }

    #[test]
    fn the_supplement_stops_at_the_lower_cap() {
        let usual = supplement_for_fat(&powder(0.12), 0.25, 25.0).unwrap();
        assert_eq!(usual.capped_by, Some(SupplementCap::Volume));
        assert_eq!(usual.g_per_100_ml, 2.5);
        // 20 %: 100 x 1.047 x 0.2 = 20.94 g powder, 19.06 g dry; a ninth is 2.117 g, 2.144 g moist.
        let thin = supplement_for_fat(&powder(0.12), 0.20, 25.0).unwrap();
        assert_eq!(thin.capped_by, Some(SupplementCap::DryMatter));
        assert!((thin.g_per_100_ml - 2.144).abs() < 0.002);
        assert_eq!(made(0.20, thin.g_per_100_ml).warnings(&powder(0.12)), []);
    }

    #[test]
    fn a_powder_with_the_wanted_fat_gets_nothing_on_top() {
        // 12 of 91 is 13.19 %.
        let need = supplement_for_fat(&powder(0.12), 0.25, 13.0).unwrap();
        assert_eq!((need.g_per_100_ml, need.capped_by), (0.0, None));
        assert!((need.fat_pct_of_dry_matter - 13.19).abs() < 0.005);
    }

    #[test]
    fn a_fat_share_outside_the_range_is_refused() {
        for wanted_pct in [1.0, 40.0] {
            assert!(supplement_for_fat(&powder(0.12), 0.25, wanted_pct).is_ok());
        }
        for given_pct in [0.9, 40.1] {
            assert_eq!(
                supplement_for_fat(&powder(0.12), 0.25, given_pct),
                Err(MixError::WantedFat {
                    given_pct,
                    low_pct: 1.0,
                    high_pct: 40.0
                })
            );
        }
        let no_powder = supplement_for_fat(&powder(0.12), 0.0, 15.0);
        assert_eq!(no_powder, Err(MixError::PowderShare { given: 0.0 }));
    }
}

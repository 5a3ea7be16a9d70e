//! Powder, water and fat supplement for a wanted volume.
//!
//! Powder share means powder over powder and water, by mass. The supplement comes on top.

use thiserror::Error;

use crate::domain::formula::food_components::{Composition, REGULAR_POWDER};
use crate::domain::plan::care_plan::CarePlan;

/// What stays in cup and syringes, 5 ml. Standing: ours.
pub const USUAL_ALLOWANCE_ML: f64 = 5.0;

/// Powder share of a feathered chick's formula, 0.25 (1 : 3 by mass, 22.8 % dry matter).
///
/// Source: Roudybush & Grau 1986 (20 to 30 % solids grow well). Standing: the exact share is ours.
pub const USUAL_POWDER_SHARE: f64 = 0.25;

/// Temperature at which volumes are reckoned, 40 C: the aim for feeding.
pub const MIX_C: f64 = 40.0;

/// Volume that can be asked for, in ml. Standing: ours, to catch slips of typing.
pub const VOLUME_ML: (f64, f64) = (1.0, 1000.0);

/// Allowance that can be asked for, in ml. Standing: ours, to catch slips of typing.
pub const ALLOWANCE_ML: (f64, f64) = (0.0, 50.0);

/// Powder share that can be asked for, 0 to 1.
///
/// Standing: ours. Published dilutions run from 5 to 30 %; half powder is a paste.
pub const POWDER_SHARE: (f64, f64) = (0.05, 0.50);

/// Supplement that can be asked for, in g per 100 ml. Standing: ours; twice the cap.
pub const SUPPLEMENT_G_PER_100_ML: (f64, f64) = (0.0, 5.0);

/// Weight of ten level spoons of powder, in g.
///
/// Standing: ours. From half a teaspoon (2.5 ml) at 0.45 g/ml to a 40 ml scoop at 0.60 g/ml, rounded
/// outwards.
pub const TEN_SPOONS_G: (f64, f64) = (10.0, 250.0);

/// Weight of a millilitre of loose powder, in g/ml. Standing: common practice 0.45 to 0.60; ours wider.
pub const BULK_DENSITY_G_PER_ML: (f64, f64) = (0.30, 0.90);

/// Weight of a millilitre of loose powder that nobody has weighed, from light to heavy, in g/ml.
///
/// Standing: common practice. A label states 0.40 to 0.42 loosely packed, breeders 0.45 to 0.60.
pub const UNWEIGHED_G_PER_ML: (f64, f64) = (0.38, 0.60);

/// Volume of a level spoon, in ml. Standing: ours, from half a teaspoon to a large scoop.
pub const SPOON_ML: (f64, f64) = (2.0, 50.0);

/// Water parts for one part of powder by volume. Standing: ours; recipes run from 1 to 6.
pub const WATER_PARTS: (f64, f64) = (0.5, 12.0);

/// Why a mix is refused; every range holds its ends.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum MixError {
    /// The volume is outside [`VOLUME_ML`].
    #[error("volume is outside {} to {} ml: {given_ml}", VOLUME_ML.0, VOLUME_ML.1)]
    Volume {
        /// The volume given.
        given_ml: f64,
    },
    /// The allowance is outside [`ALLOWANCE_ML`].
    #[error("allowance is outside {} to {} ml: {given_ml}", ALLOWANCE_ML.0, ALLOWANCE_ML.1)]
    Allowance {
        /// The allowance given.
        given_ml: f64,
    },
    /// The powder share is outside [`POWDER_SHARE`].
    #[error("powder share is outside {} to {}: {given}", POWDER_SHARE.0, POWDER_SHARE.1)]
    PowderShare {
        /// The share given, 0 to 1.
        given: f64,
    },
    /// The supplement is outside [`SUPPLEMENT_G_PER_100_ML`].
    #[error("supplement is outside {} to {} g per 100 ml: {given_g}", SUPPLEMENT_G_PER_100_ML.0, SUPPLEMENT_G_PER_100_ML.1)]
    Supplement {
        /// The supplement given, per 100 ml.
        given_g: f64,
    },
    /// Ten level spoons are outside [`TEN_SPOONS_G`]; perhaps one spoon was weighed, or the cup too.
    #[error("ten level spoons are outside {} to {} g: {given_g}", TEN_SPOONS_G.0, TEN_SPOONS_G.1)]
    TenSpoons {
        /// The weight given.
        given_g: f64,
    },
    /// The spoon is outside [`SPOON_ML`].
    #[error("a spoon is outside {} to {} ml: {given_ml}", SPOON_ML.0, SPOON_ML.1)]
    Spoon {
        /// The volume given.
        given_ml: f64,
    },
    /// The bulk density is outside [`BULK_DENSITY_G_PER_ML`].
    #[error("bulk density is outside {} to {} g/ml: {given_g_per_ml}", BULK_DENSITY_G_PER_ML.0, BULK_DENSITY_G_PER_ML.1)]
    BulkDensity {
        /// The density given.
        given_g_per_ml: f64,
    },
    /// The water parts are outside [`WATER_PARTS`].
    #[error("water parts are outside {} to {}: {given}", WATER_PARTS.0, WATER_PARTS.1)]
    WaterParts {
        /// The parts given.
        given: f64,
    },
    /// There is no powder in the mix.
    #[error("powder must be above 0 g: {given_g}")]
    NoPowder {
        /// The powder given.
        given_g: f64,
    },
    /// There is no water in the mix.
    #[error("water must be above 0 g: {given_g}")]
    NoWater {
        /// The water given.
        given_g: f64,
    },
    /// The wanted fat is outside the range of `nutrition`.
    #[error("wanted fat of dry matter is outside {low_pct} to {high_pct} %: {given_pct}")]
    WantedFat {
        /// The fat given.
        given_pct: f64,
        /// Lowest that can be asked for.
        low_pct: f64,
        /// Highest that can be asked for.
        high_pct: f64,
    },
}

/// Refuses a figure outside its range; not a number is outside every range.
///
/// # Errors
/// The `refusal` given.
pub fn check(given: f64, (low, high): (f64, f64), refusal: MixError) -> Result<f64, MixError> {
    if low <= given && given <= high {
        return Ok(given);
    }
    Err(refusal)
}

/// What to mix.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MixWanted {
    /// Volume to be fed, in ml.
    pub volume_ml: f64,
    /// Made beyond it, for what stays in cup and syringes, in ml.
    pub allowance_ml: f64,
    /// Powder over powder and water by mass, 0 to 1.
    pub powder_fraction: f64,
    /// Fat supplement for each 100 ml of powder and water, in g.
    pub supplement_g_per_100_ml: f64,
}

impl MixWanted {
    /// So much of a plan's mix.
    pub fn of_plan(plan: &CarePlan, volume_ml: f64, allowance_ml: f64) -> Self {
        Self {
            volume_ml,
            allowance_ml,
            powder_fraction: plan.powder_fraction.as_pct() / 100.0,
            supplement_g_per_100_ml: plan.fat_supplement_per_100_ml.as_g(),
        }
    }
}

/// What goes into the cup.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MixAmounts {
    /// Powder, in g.
    pub powder_g: f64,
    /// Water, in g; a gram of water is a millilitre.
    pub water_g: f64,
    /// Fat supplement (smooth peanut butter), in g.
    pub supplement_g: f64,
}

/// Density of powder and water at 40 C, in g/ml, for a share from 0 (water) to 1.
///
/// # Formula
/// `1 / sum(share x volume of a gram)` with the components of a regular powder. 17 instead of 12 %
/// fat makes the usual mix 0.6 % lighter at most. Air whipped in makes it lighter too.
///
/// Source: Choi & Okos 1986 for the components.
pub fn mix_density_g_per_ml(powder_fraction: f64) -> f64 {
    let powder_ml = REGULAR_POWDER.volume_ml_per_g(MIX_C);
    let water_ml = Composition::WATER.volume_ml_per_g(MIX_C);
    1.0 / (powder_fraction * powder_ml + (1.0 - powder_fraction) * water_ml)
}

/// Amounts for a wanted volume with its allowance.
///
/// # Errors
/// [`MixError::Volume`], [`MixError::Allowance`], [`MixError::PowderShare`],
/// [`MixError::Supplement`].
///
/// # Examples
/// ```
/// use perchlight::domain::formula::mixing::{MixError, MixWanted, mix_amounts};
/// let wanted = MixWanted {
///     volume_ml: 100.0,
///     allowance_ml: 0.0,
///     powder_fraction: 0.25,
///     supplement_g_per_100_ml: 0.0,
/// };
/// // 100 ml x 1.062 g/ml x 0.25
/// assert!((mix_amounts(&wanted).unwrap().powder_g - 26.55).abs() < 0.05);
/// let none = MixWanted { powder_fraction: 0.0, ..wanted };
/// assert_eq!(mix_amounts(&none), Err(MixError::PowderShare { given: 0.0 }));
/// ```
pub fn mix_amounts(wanted: &MixWanted) -> Result<MixAmounts, MixError> {
    let given_ml = wanted.volume_ml;
    let volume_ml = check(given_ml, VOLUME_ML, MixError::Volume { given_ml })?;
    let given_ml = wanted.allowance_ml;
    let allowance_ml = check(given_ml, ALLOWANCE_ML, MixError::Allowance { given_ml })?;
    let given = wanted.powder_fraction;
    let share = check(given, POWDER_SHARE, MixError::PowderShare { given })?;
    let given_g = wanted.supplement_g_per_100_ml;
    let refusal = MixError::Supplement { given_g };
    let supplement_g = check(given_g, SUPPLEMENT_G_PER_100_ML, refusal)?;
    let made_ml = volume_ml + allowance_ml;
    Ok(MixAmounts {
        supplement_g: supplement_g * made_ml / 100.0,
        ..MixAmounts::of_mass(made_ml * mix_density_g_per_ml(share), share)
    })
}

impl MixAmounts {
    /// Powder and water that together weigh `total_g`.
    pub fn of_mass(total_g: f64, powder_fraction: f64) -> Self {
        Self {
            powder_g: total_g * powder_fraction,
            water_g: total_g * (1.0 - powder_fraction),
            supplement_g: 0.0,
        }
    }

    /// Powder over powder and water by mass, 0 to 1.
    ///
    /// # Errors
    /// [`MixError::NoPowder`], [`MixError::NoWater`].
    pub fn powder_fraction(&self) -> Result<f64, MixError> {
        let given_g = self.powder_g;
        check(
            given_g,
            (f64::MIN_POSITIVE, f64::MAX),
            MixError::NoPowder { given_g },
        )?;
        let given_g = self.water_g;
        check(
            given_g,
            (f64::MIN_POSITIVE, f64::MAX),
            MixError::NoWater { given_g },
        )?;
        Ok(self.powder_g / (self.powder_g + self.water_g))
    }

    /// Volume of powder and water at 40 C, in ml, without the supplement.
    ///
    /// # Errors
    /// As [`MixAmounts::powder_fraction`].
    pub fn volume_ml(&self) -> Result<f64, MixError> {
        let share = self.powder_fraction()?;
        Ok((self.powder_g + self.water_g) / mix_density_g_per_ml(share))
    }
}

/// Powder share of a recipe by volume, one part of loose powder to `water_parts` of water.
///
/// # Formula
/// `b / (b + r)` with the bulk density `b` in g/ml and the water parts `r`.
///
/// # Errors
/// [`MixError::BulkDensity`], [`MixError::WaterParts`].
pub fn share_of_volume_recipe(bulk_g_per_ml: f64, water_parts: f64) -> Result<f64, MixError> {
    let refusal = MixError::BulkDensity {
        given_g_per_ml: bulk_g_per_ml,
    };
    check(bulk_g_per_ml, BULK_DENSITY_G_PER_ML, refusal)?;
    let refusal = MixError::WaterParts { given: water_parts };
    check(water_parts, WATER_PARTS, refusal)?;
    Ok(bulk_g_per_ml / (bulk_g_per_ml + water_parts))
}

/// The powder share that a recipe by volume makes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum RecipeShare {
    /// The powder was weighed: this share, 0 to 1.
    Weighed(f64),
    /// It was not: from this share with a light powder to this with a heavy one, 0 to 1.
    Between(f64, f64),
}

/// What a recipe by volume makes by weight. `weighed` is the weight of ten level spoons of the powder,
/// in g, and what one such spoon holds, in ml.
///
/// # Errors
/// [`MixError::WaterParts`], [`MixError::TenSpoons`], [`MixError::Spoon`], [`MixError::BulkDensity`],
/// and [`MixError::PowderShare`] for a weighed recipe that no mix can be reckoned with.
pub fn recipe_share(
    water_parts: f64,
    weighed: Option<(f64, f64)>,
) -> Result<RecipeShare, MixError> {
    let Some((ten_spoons_g, given_ml)) = weighed else {
        let (light, heavy) = UNWEIGHED_G_PER_ML;
        let light = share_of_volume_recipe(light, water_parts)?;
        return Ok(RecipeShare::Between(
            light,
            share_of_volume_recipe(heavy, water_parts)?,
        ));
    };
    let given_g = ten_spoons_g;
    check(given_g, TEN_SPOONS_G, MixError::TenSpoons { given_g })?;
    check(given_ml, SPOON_ML, MixError::Spoon { given_ml })?;
    let given = share_of_volume_recipe(ten_spoons_g / (10.0 * given_ml), water_parts)?;
    check(given, POWDER_SHARE, MixError::PowderShare { given })?;
    Ok(RecipeShare::Weighed(given))
}

#[cfg(test)]
mod tests {
    use crate::domain::formula::mixing::{
        MixError, MixWanted, RecipeShare, mix_amounts, recipe_share, share_of_volume_recipe,
    };

    const WANTED: MixWanted = MixWanted {
        volume_ml: 90.0,
        allowance_ml: 5.0,
        powder_fraction: 0.25,
        supplement_g_per_100_ml: 0.0,
    };

    #[test]
    fn the_allowance_is_made_on_top() {
        let amounts = mix_amounts(&WANTED).unwrap();
        assert!((amounts.volume_ml().unwrap() - 95.0).abs() < 1e-9);
        assert!((amounts.powder_fraction().unwrap() - 0.25).abs() < 1e-12);
    }

    #[test]
    fn every_figure_is_taken_at_its_limits_and_refused_beyond() {
        let refused = |wanted: MixWanted| mix_amounts(&wanted).err();
        let volume = |ml| {
            refused(MixWanted {
                volume_ml: ml,
                ..WANTED
            })
        };
        let allowance = |ml| {
            refused(MixWanted {
                allowance_ml: ml,
                ..WANTED
            })
        };
        let share = |given| {
            refused(MixWanted {
                powder_fraction: given,
                ..WANTED
            })
        };
        let supplement = |g| {
            refused(MixWanted {
                supplement_g_per_100_ml: g,
                ..WANTED
            })
        };
        assert_eq!([1.0, 1000.0].map(volume), [None, None]);
        assert_eq!([0.0, 50.0].map(allowance), [None, None]);
        assert_eq!([0.05, 0.5].map(share), [None, None]);
        assert_eq!([0.0, 5.0].map(supplement), [None, None]);
        for given_ml in [0.0, 0.9, 1000.1, f64::INFINITY] {
            assert_eq!(volume(given_ml), Some(MixError::Volume { given_ml }));
        }
        for given_ml in [-0.1, 50.1] {
            assert_eq!(allowance(given_ml), Some(MixError::Allowance { given_ml }));
        }
        // 25 is per cent typed for a share.
        for given in [0.0, 0.049, 0.501, 25.0] {
            assert_eq!(share(given), Some(MixError::PowderShare { given }));
        }
        for given_g in [-0.1, 5.1, 20.0] {
            assert_eq!(supplement(given_g), Some(MixError::Supplement { given_g }));
        }
        assert!(share(f64::NAN).is_some());
    }

    #[test]
    fn a_recipe_by_volume_is_taken_at_its_limits_and_refused_beyond() {
        for (bulk, parts) in [(0.3, 0.5), (0.9, 12.0)] {
            assert!(share_of_volume_recipe(bulk, parts).is_ok());
        }
        for given_g_per_ml in [0.29, 0.91] {
            let refusal = MixError::BulkDensity { given_g_per_ml };
            assert_eq!(share_of_volume_recipe(given_g_per_ml, 2.0), Err(refusal));
        }
        for given in [0.49, 12.1] {
            let refusal = MixError::WaterParts { given };
            assert_eq!(share_of_volume_recipe(0.5, given), Err(refusal));
        }
    }

    #[test]
    fn a_weighed_recipe_has_one_share_and_an_unweighed_one_a_range() {
        // Ten spoons of 15 ml with 75 g: 0.5 g/ml; 0.5 / (0.5 + 2) = 0.2.
        let RecipeShare::Weighed(share) = recipe_share(2.0, Some((75.0, 15.0))).unwrap() else {
            panic!("weighed");
        };
        assert!((share - 0.2).abs() < 1e-12);
        // 0.38 / 2.38 and 0.60 / 2.60.
        let RecipeShare::Between(light, heavy) = recipe_share(2.0, None).unwrap() else {
            panic!("not weighed");
        };
        assert!((light - 0.1597).abs() < 5e-5 && (heavy - 0.2308).abs() < 5e-5);
    }

    #[test]
    fn each_figure_of_a_weighed_recipe_is_refused_by_name() {
        let refused = |parts, ten_g, spoon_ml| recipe_share(parts, Some((ten_g, spoon_ml))).err();
        assert_eq!(refused(2.0, 75.0, 15.0), None);
        let given = 12.1;
        assert_eq!(
            refused(given, 75.0, 15.0),
            Some(MixError::WaterParts { given })
        );
        assert_eq!(
            recipe_share(given, None),
            Err(MixError::WaterParts { given })
        );
        let given_g = 7.5;
        assert_eq!(
            refused(2.0, given_g, 15.0),
            Some(MixError::TenSpoons { given_g })
        );
        for given_ml in [1.9, 50.1] {
            assert_eq!(
                refused(2.0, 75.0, given_ml),
                Some(MixError::Spoon { given_ml })
            );
        }
        // 75 g in ten spoons of 5 ml are 1.5 g/ml: heavier than water.
        let given_g_per_ml = 1.5;
        assert_eq!(
            refused(2.0, 75.0, 5.0),
            Some(MixError::BulkDensity { given_g_per_ml })
        );
        // 0.5 / 10.5 is below 5 %.
        assert!(matches!(
            refused(10.0, 75.0, 15.0),
            Some(MixError::PowderShare { .. })
        ));
    }
}

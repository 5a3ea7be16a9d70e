//! What a bird of a given weight is likely to use in a day: a band to check a plan against.
//!
//! Never a feeding command. Measured birds lie well to either side of the formula, and a chick's
//! own crop and appetite decide.

use thiserror::Error;

/// Basal metabolic rate of a non-passerine of one kilogram, 78 kcal a day.
///
/// Source: Quesenberry, Mauldin & Hillyer 1989; Duerr & Gage 2020, Appendix B.
pub const BASAL_KCAL_PER_DAY_AT_1_KG: f64 = 78.0;

/// Power of the weight in kilograms in the basal rate, without unit. Source: as above.
pub const BASAL_WEIGHT_POWER: f64 = 0.75;

/// Maintenance as a multiple of the basal rate. Source: as above; 1.1 to 1.5 are quoted.
pub const MAINTENANCE_TIMES_BASAL: f64 = 1.5;

/// Growth as a multiple of maintenance, low and high end. Source: Duerr & Gage 2020, Table B.2.
pub const GROWTH_TIMES_MAINTENANCE: (f64, f64) = (1.5, 3.0);

/// Measured basal rates of three parrots as multiples of the formula, low and high end.
///
/// Source: `AnAge` data file: *Barnardius* 137 g (16 % below), *Eolophus* 268.7 g (11 % below),
/// *Cacatua galerita* 776.1 g (9 % above). Standing: the span of three birds, rounded outwards, not
/// a statistical interval.
pub const MEASURED_TIMES_FORMULA: (f64, f64) = (0.83, 1.10);

/// Weights the formula is used for, in grams: hatchling cockatiel to heaviest hyacinth macaw.
///
/// Standing: ours, to catch slips of typing.
pub const WEIGHT_G: (f64, f64) = (4.0, 3000.0);

/// Why no energy can be told.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum EnergyError {
    /// The weight is outside [`WEIGHT_G`] or not a number.
    #[error("weight is outside {low} to {high} g: {given_g}", low = WEIGHT_G.0, high = WEIGHT_G.1)]
    Weight {
        /// The weight given.
        given_g: f64,
    },
}

/// Textbook energy use of one bird, in kcal a day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EnergyBand {
    /// At rest, fasting, in the warm.
    pub basal_kcal_per_day: f64,
    /// To hold weight in a cage.
    pub maintenance_kcal_per_day: f64,
    /// Low end for a growing chick.
    pub growth_low_kcal_per_day: f64,
    /// High end for a growing chick.
    pub growth_high_kcal_per_day: f64,
}

/// Where a day's energy stands against the textbook band of a growing chick.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EnergyVerdict {
    /// Below maintenance: the bird loses weight unless it eats by itself.
    BelowMaintenance,
    /// From maintenance up to the growth band: holds weight, hardly grows.
    BelowGrowth,
    /// Within the growth band, both ends included.
    WithinGrowth,
    /// Above the growth band: check volume and powder.
    AboveGrowth,
}

/// Textbook energy use at `weight_g`.
///
/// # Formula
/// basal `78 x W^0.75` with `W` in kg; maintenance 1.5 x basal; growth 1.5 to 3.0 x maintenance.
///
/// # Errors
/// [`EnergyError::Weight`] outside [`WEIGHT_G`].
///
/// # Examples
/// ```
/// use perchlight::domain::formula::energy::{EnergyError, energy_band};
/// let band = energy_band(1000.0).unwrap();
/// assert!((band.maintenance_kcal_per_day - 117.0).abs() < 1e-9);
/// assert_eq!(energy_band(0.0), Err(EnergyError::Weight { given_g: 0.0 }));
/// ```
///
/// Source: Quesenberry, Mauldin & Hillyer 1989; Duerr & Gage 2020, Table B.2.
pub fn energy_band(weight_g: f64) -> Result<EnergyBand, EnergyError> {
    if !(WEIGHT_G.0 <= weight_g && weight_g <= WEIGHT_G.1) {
        return Err(EnergyError::Weight { given_g: weight_g });
    }
    let basal = BASAL_KCAL_PER_DAY_AT_1_KG * (weight_g / 1000.0).powf(BASAL_WEIGHT_POWER);
    let maintenance = basal * MAINTENANCE_TIMES_BASAL;
    Ok(EnergyBand {
        basal_kcal_per_day: basal,
        maintenance_kcal_per_day: maintenance,
        growth_low_kcal_per_day: maintenance * GROWTH_TIMES_MAINTENANCE.0,
        growth_high_kcal_per_day: maintenance * GROWTH_TIMES_MAINTENANCE.1,
    })
}

impl EnergyBand {
    /// Where `kcal_per_day` stands; not a number counts as below maintenance.
    pub fn verdict(&self, kcal_per_day: f64) -> EnergyVerdict {
        if self.growth_high_kcal_per_day < kcal_per_day {
            return EnergyVerdict::AboveGrowth;
        }
        if self.growth_low_kcal_per_day <= kcal_per_day {
            return EnergyVerdict::WithinGrowth;
        }
        if self.maintenance_kcal_per_day <= kcal_per_day {
            return EnergyVerdict::BelowGrowth;
        }
        EnergyVerdict::BelowMaintenance
    }

    /// What the bird must eat by itself to hold its weight beside `kcal_per_day` by hand.
    pub fn own_food_to_hold_kcal_per_day(&self, kcal_per_day: f64) -> f64 {
        (self.maintenance_kcal_per_day - kcal_per_day).max(0.0)
    }

    /// Low and high basal rate by [`MEASURED_TIMES_FORMULA`], in kcal a day.
    pub fn measured_basal_kcal_per_day(&self) -> (f64, f64) {
        let (low, high) = MEASURED_TIMES_FORMULA;
        (
            self.basal_kcal_per_day * low,
            self.basal_kcal_per_day * high,
        )
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::formula::energy::{
        EnergyBand, EnergyError, EnergyVerdict, WEIGHT_G, energy_band,
    };

    /// Round numbers, so that each limit is exact.
    const BAND: EnergyBand = EnergyBand {
        basal_kcal_per_day: 80.0,
        maintenance_kcal_per_day: 120.0,
        growth_low_kcal_per_day: 180.0,
        growth_high_kcal_per_day: 360.0,
    };

    #[test]
    fn each_end_of_the_band_belongs_to_the_band() {
        for (kcal_per_day, verdict) in [
            (0.0, EnergyVerdict::BelowMaintenance),
            (119.9, EnergyVerdict::BelowMaintenance),
            (120.0, EnergyVerdict::BelowGrowth),
            (179.9, EnergyVerdict::BelowGrowth),
            (180.0, EnergyVerdict::WithinGrowth),
            (360.0, EnergyVerdict::WithinGrowth),
            (360.1, EnergyVerdict::AboveGrowth),
            (f64::NAN, EnergyVerdict::BelowMaintenance),
        ] {
            assert_eq!(BAND.verdict(kcal_per_day), verdict, "{kcal_per_day}");
        }
    }

    #[test]
    fn nothing_more_is_needed_at_maintenance() {
        assert!((BAND.own_food_to_hold_kcal_per_day(119.0) - 1.0).abs() < 1e-12);
        assert_eq!(BAND.own_food_to_hold_kcal_per_day(120.0), 0.0);
        assert_eq!(BAND.own_food_to_hold_kcal_per_day(500.0), 0.0);
    }

    #[test]
    fn weights_outside_the_range_are_refused() {
        for given_g in [-1.0, 3.9, 3000.1, f64::INFINITY] {
            assert_eq!(energy_band(given_g), Err(EnergyError::Weight { given_g }));
        }
        assert!(matches!(
            energy_band(f64::NAN),
            Err(EnergyError::Weight { .. })
        ));
        assert!(energy_band(WEIGHT_G.0).is_ok());
        assert!(energy_band(WEIGHT_G.1).is_ok());
    }
}

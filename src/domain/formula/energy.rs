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

#[cfg(test)]
mod tests {
    use crate::domain::formula::energy::{EnergyError, WEIGHT_G, energy_band};

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

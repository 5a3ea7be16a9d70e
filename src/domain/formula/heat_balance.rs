//! Mixing warm and cold: how warm the water must be.
//!
//! Heat kept inside the parts; what the room takes during stirring is left out, so a real mix is a
//! little cooler than said here and must be measured.

use thiserror::Error;

/// Specific heat of poured water, 4.18 kJ/(kg K).
///
/// Source: Geankoplis, App. A.4-1, at 40 C; within 0.75 % of IAPWS-95 from 5 to 95 C.
pub const WATER_SPECIFIC_HEAT: f64 = 4.18;

/// Specific heat of hand-feeding powder, 1.85 kJ/(kg K).
///
/// Source: measured flours with 12 to 13.5 % water, 1.80 to 1.88 (Geankoplis). Standing: taken over
/// for powder; the component sum of Choi & Okos gives 1.94 to 1.97, 0.2 C more in the water needed.
pub const POWDER_SPECIFIC_HEAT: f64 = 1.85;

/// Range of a temperature that takes part in a mix, in Celsius: from a freezer to boiling water.
///
/// Standing: ours, to catch slips of typing. A pan in a worked example reaches 150 C.
pub const PART_C: (f64, f64) = (-30.0, 200.0);

/// Warmest water the app asks for, 60 C. Hotter than that, warm the cup or the powder first.
///
/// Standing: ours. 60 C scalds a hand in seconds (value from memory) and is far from the 43.5 C that
/// a usual mix needs.
pub const WARMEST_WATER_C: f64 = 60.0;

/// Why a mix cannot be reckoned.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum HeatError {
    /// A mass is negative, zero where water must be, or not a number.
    #[error("mass must be above 0 g: {given_g}")]
    Mass {
        /// The mass given.
        given_g: f64,
    },
    /// A heat capacity is negative or not a number.
    #[error("heat capacity must not be below 0 J/K: {given_j_per_k}")]
    HeatCapacity {
        /// The capacity given.
        given_j_per_k: f64,
    },
    /// A temperature is outside [`PART_C`].
    #[error("temperature is outside {low} to {high} C: {given_c}", low = PART_C.0, high = PART_C.1)]
    Temperature {
        /// The temperature given.
        given_c: f64,
    },
    /// The water would have to be hotter than [`WARMEST_WATER_C`].
    #[error("water would have to be above {WARMEST_WATER_C} C: {needed_c}")]
    WaterTooHot {
        /// The temperature that the water would need.
        needed_c: f64,
    },
    /// The water would have to be ice.
    #[error("water would have to be below 0 C: {needed_c}")]
    WaterFrozen {
        /// The temperature that the water would need.
        needed_c: f64,
    },
}

/// One thing that goes into the mix.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeatPart {
    /// Heat taken for one kelvin, in J/K: grams times kJ/(kg K).
    pub heat_capacity_j_per_k: f64,
    /// Temperature before mixing, in Celsius.
    pub temp_c: f64,
}

/// What a cup is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CupStuff {
    /// Polypropylene and the like, 1.9 kJ/(kg K).
    Plastic,
    /// Glass, china or stoneware, 0.84 kJ/(kg K).
    GlassOrChina,
    /// Stainless steel, 0.50 kJ/(kg K).
    Steel,
}

impl CupStuff {
    /// Every stuff.
    pub const ALL: [Self; 3] = [Self::Plastic, Self::GlassOrChina, Self::Steel];

    /// Specific heat in kJ/(kg K). Standing: handbook values from memory, within a tenth for a cup.
    const fn specific_heat(self) -> f64 {
        match self {
            Self::Plastic => 1.9,
            Self::GlassOrChina => 0.84,
            Self::Steel => 0.50,
        }
    }
}

impl HeatPart {
    /// An empty cup.
    pub fn cup(mass_g: f64, stuff: CupStuff, temp_c: f64) -> Self {
        Self::of(mass_g, stuff.specific_heat(), temp_c)
    }

    /// Any stuff of known specific heat.
    pub fn of(mass_g: f64, specific_heat_kj_per_kg_k: f64, temp_c: f64) -> Self {
        Self {
            heat_capacity_j_per_k: mass_g * specific_heat_kj_per_kg_k,
            temp_c,
        }
    }

    /// Powder, [`POWDER_SPECIFIC_HEAT`].
    pub fn powder(mass_g: f64, temp_c: f64) -> Self {
        Self::of(mass_g, POWDER_SPECIFIC_HEAT, temp_c)
    }

    fn checked(self) -> Result<Self, HeatError> {
        if !(0.0 <= self.heat_capacity_j_per_k && self.heat_capacity_j_per_k.is_finite()) {
            return Err(HeatError::HeatCapacity {
                given_j_per_k: self.heat_capacity_j_per_k,
            });
        }
        checked_temp(self.temp_c)?;
        Ok(self)
    }
}

fn checked_temp(given_c: f64) -> Result<f64, HeatError> {
    if PART_C.0 <= given_c && given_c <= PART_C.1 {
        return Ok(given_c);
    }
    Err(HeatError::Temperature { given_c })
}

fn checked_mass(given_g: f64) -> Result<f64, HeatError> {
    if 0.0 < given_g && given_g.is_finite() {
        return Ok(given_g);
    }
    Err(HeatError::Mass { given_g })
}

/// Temperature that `water` must have so that it and the `others` meet at `target_c`, in Celsius.
///
/// Of `water` only the heat capacity counts. The `others` are powder, supplement and, when its heat
/// capacity is known, the cup.
///
/// # Formula
/// `target + sum(capacity x (target - temperature)) / water's capacity`.
///
/// # Errors
/// [`HeatError::Mass`] when there is no water, [`HeatError::WaterTooHot`] above
/// [`WARMEST_WATER_C`], [`HeatError::WaterFrozen`] below 0 C, and as [`needed_c`] for parts out
/// of range.
///
/// # Examples
/// ```
/// use perchlight::domain::formula::heat_balance::{HeatPart, water_needed_c};
/// // 25 g powder at 20 C and 75 g water to land at 40.5 C: the trade table says 43.5 C.
/// let needed = water_needed_c(40.5, 75.0, &[HeatPart::powder(25.0, 20.0)]).unwrap();
/// assert!((needed - 43.5).abs() < 0.05);
/// ```
pub fn water_needed_c(target_c: f64, water_g: f64, others: &[HeatPart]) -> Result<f64, HeatError> {
    let water_j_per_k = checked_mass(water_g)? * WATER_SPECIFIC_HEAT;
    let needed_c = needed_c(target_c, water_j_per_k, others)?;
    if WARMEST_WATER_C < needed_c {
        return Err(HeatError::WaterTooHot { needed_c });
    }
    if needed_c < 0.0 {
        return Err(HeatError::WaterFrozen { needed_c });
    }
    Ok(needed_c)
}

/// As [`water_needed_c`] for any stuff of that heat capacity, without the limits of water.
///
/// # Errors
/// [`HeatError::HeatCapacity`], also for none at all, and [`HeatError::Temperature`].
pub fn needed_c(
    target_c: f64,
    heat_capacity_j_per_k: f64,
    others: &[HeatPart],
) -> Result<f64, HeatError> {
    let target_c = checked_temp(target_c)?;
    if !(0.0 < heat_capacity_j_per_k && heat_capacity_j_per_k.is_finite()) {
        return Err(HeatError::HeatCapacity {
            given_j_per_k: heat_capacity_j_per_k,
        });
    }
    let mut missing_j = 0.0;
    for part in others {
        let part = part.checked()?;
        missing_j += part.heat_capacity_j_per_k * (target_c - part.temp_c);
    }
    Ok(target_c + missing_j / heat_capacity_j_per_k)
}

#[cfg(test)]
mod tests {
    use crate::domain::formula::heat_balance::{
        CupStuff, HeatError, HeatPart, WARMEST_WATER_C, WATER_SPECIFIC_HEAT, needed_c,
        water_needed_c,
    };

    #[test]
    fn a_cold_cup_asks_for_warmer_water_and_the_warmer_water_lands_on_target() {
        let powder = HeatPart::powder(25.0, 20.0);
        // 100 g of glass at about 0.84 kJ/(kg K) (value from memory).
        let cup = HeatPart::of(100.0, 0.84, 20.0);
        let bare_c = water_needed_c(40.5, 75.0, &[powder]).unwrap();
        let in_cup_c = water_needed_c(40.5, 75.0, &[powder, cup]).unwrap();
        assert!(bare_c < in_cup_c);
        // 25 g x 1.85 and 100 g x 0.84 are 20.5 K below the target: 46.25 x 20.5 + 84 x 20.5 = 2670.1 J;
        // 75 g of water hold 313.5 J/K, so they start 8.517 K above it.
        assert!((in_cup_c - 49.017).abs() < 0.001, "{in_cup_c}");
    }

    #[test]
    fn a_cup_counts_by_what_it_is_made_of() {
        // 75 g of water hold 313.5 J/K; each cup of 100 g is 20 K below the target, 190, 84 and 50 J/K.
        let needed = |stuff| {
            water_needed_c(40.0, 75.0, &[HeatPart::cup(100.0, stuff, 20.0)]).unwrap() - 40.0
        };
        let warmer = CupStuff::ALL.map(needed);
        for (warmer, expected) in warmer.into_iter().zip([12.121, 5.359, 3.190]) {
            assert!((warmer - expected).abs() < 0.001, "{warmer}");
        }
    }

    /// Equal heat capacities: the water must be as far above the target as the other part is below.
    fn needed_beside_equal_water(other_c: f64) -> Result<f64, HeatError> {
        water_needed_c(
            40.0,
            50.0,
            &[HeatPart::of(50.0, WATER_SPECIFIC_HEAT, other_c)],
        )
    }

    #[test]
    fn water_up_to_the_warmest_is_asked_for_and_no_warmer() {
        assert!((needed_beside_equal_water(20.1).unwrap() - 59.9).abs() < 1e-9);
        assert_eq!(needed_beside_equal_water(20.0), Ok(WARMEST_WATER_C));
        let refused = needed_beside_equal_water(19.9);
        assert!(
            matches!(refused, Err(HeatError::WaterTooHot { needed_c }) if (needed_c - 60.1).abs() < 1e-9)
        );
    }

    #[test]
    fn ice_is_never_asked_for() {
        assert!((needed_beside_equal_water(79.9).unwrap() - 0.1).abs() < 1e-9);
        assert_eq!(needed_beside_equal_water(80.0), Ok(0.0));
        assert!(matches!(
            needed_beside_equal_water(80.1),
            Err(HeatError::WaterFrozen { .. })
        ));
    }

    #[test]
    fn bad_parts_are_refused_by_name() {
        assert_eq!(
            water_needed_c(40.0, 0.0, &[]),
            Err(HeatError::Mass { given_g: 0.0 })
        );
        assert_eq!(
            water_needed_c(40.0, 50.0, &[HeatPart::powder(-1.0, 20.0)]),
            Err(HeatError::HeatCapacity {
                given_j_per_k: -1.85
            })
        );
        for given_c in [-30.1, 200.1, f64::INFINITY] {
            assert_eq!(
                needed_c(40.0, 1.0, &[HeatPart::powder(1.0, given_c)]),
                Err(HeatError::Temperature { given_c })
            );
        }
        for edge_c in [-30.0, 200.0] {
            assert!(needed_c(40.0, 1.0, &[HeatPart::of(1.0, 1.0, edge_c)]).is_ok());
        }
        assert!(matches!(
            needed_c(40.0, 1.0, &[HeatPart::powder(1.0, f64::NAN)]),
            Err(HeatError::Temperature { .. })
        ));
    }
}

//! Mixing warm and cold: how warm the water must be.
//!
//! Heat kept inside the parts; what the room takes during stirring is left out, so a real mix is a
//! little cooler than said here and must be measured.

use thiserror::Error;

use crate::domain::formula::mixing::MixAmounts;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::{Celsius, Percent};

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

/// The hottest that a mix may start, 43.0 C: under the burn line of 43.3 C by what stirring leaves uneven.
///
/// Standing: ours, 0.3 C, the same guard as for a warm bath.
pub const HOTTEST_MIX_C: f64 = 43.0;

/// Powder as it stands in a kitchen, 20 C.
pub const POWDER_STANDS_AT_C: f64 = 20.0;

/// Why a mix cannot be reckoned.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum HeatError {
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

fn checked_capacity(given_j_per_k: f64) -> Result<f64, HeatError> {
    if 0.0 < given_j_per_k && given_j_per_k.is_finite() {
        return Ok(given_j_per_k);
    }
    Err(HeatError::HeatCapacity { given_j_per_k })
}

/// Where parts meet, in Celsius: the water first, then powder and, when its heat capacity is known, the
/// cup.
///
/// # Formula
/// `sum(capacity x temperature) / sum(capacity)`.
///
/// # Errors
/// [`HeatError::HeatCapacity`], also for nothing at all, and [`HeatError::Temperature`].
///
/// # Examples
/// ```
/// use perchlight::domain::formula::heat_balance::{HeatPart, WATER_SPECIFIC_HEAT, mix_c};
/// // 75 g water at 45 C and 25 g powder at 20 C: (313.5 x 45 + 46.25 x 20) / 359.75 = 41.79.
/// let water = HeatPart::of(75.0, WATER_SPECIFIC_HEAT, 45.0);
/// let met = mix_c(&[water, HeatPart::powder(25.0, 20.0)]).unwrap();
/// assert!((met - 41.79).abs() < 0.005);
/// ```
pub fn mix_c(parts: &[HeatPart]) -> Result<f64, HeatError> {
    let (mut heat_j, mut capacity_j_per_k) = (0.0, 0.0);
    for part in parts {
        let part = part.checked()?;
        heat_j += part.heat_capacity_j_per_k * part.temp_c;
        capacity_j_per_k += part.heat_capacity_j_per_k;
    }
    Ok(heat_j / checked_capacity(capacity_j_per_k)?)
}

/// The hottest water with which a mix of that share of powder, by weight, cannot reach the burn line of 43.3 C: with
/// powder from the kitchen and a cup that takes nothing it starts at [`HOTTEST_MIX_C`]. `None` for a mix
/// without water.
pub fn hottest_water(powder: Percent) -> Option<Celsius> {
    let amounts = MixAmounts::of_mass(100.0, powder.as_pct() / 100.0);
    let powder = HeatPart::powder(amounts.powder_g, POWDER_STANDS_AT_C);
    let water_j_per_k = amounts.water_g * WATER_SPECIFIC_HEAT;
    let hottest_c = needed_c(HOTTEST_MIX_C, water_j_per_k, &[powder]).ok()?;
    Celsius::from_tenths(rounded(hottest_c * 10.0).into()).ok()
}

/// Temperature that a stuff of that heat capacity must have so that it and the `others` meet at
/// `target_c`, in Celsius.
///
/// # Formula
/// `target + sum(capacity x (target - temperature)) / capacity`.
///
/// # Errors
/// [`HeatError::HeatCapacity`], also for none at all, and [`HeatError::Temperature`].
pub fn needed_c(
    target_c: f64,
    heat_capacity_j_per_k: f64,
    others: &[HeatPart],
) -> Result<f64, HeatError> {
    let target_c = checked_temp(target_c)?;
    let heat_capacity_j_per_k = checked_capacity(heat_capacity_j_per_k)?;
    let mut missing_j = 0.0;
    for part in others {
        let part = part.checked()?;
        missing_j += part.heat_capacity_j_per_k * (target_c - part.temp_c);
    }
    Ok(target_c + missing_j / heat_capacity_j_per_k)
}

#[cfg(test)]
mod tests {
    use crate::domain::formula::heat_balance::*;
    use crate::domain::formula::serving_heat::BURN_C;

    #[test]
    fn a_cold_cup_asks_for_warmer_water_and_the_warmer_water_lands_on_target() {
        let powder = HeatPart::powder(25.0, 20.0);
        // 100 g of glass at about 0.84 kJ/(kg K) (value from memory).
        let cup = HeatPart::of(100.0, 0.84, 20.0);
        let water_j_per_k = 75.0 * WATER_SPECIFIC_HEAT;
        let bare_c = needed_c(40.5, water_j_per_k, &[powder]).unwrap();
        let in_cup_c = needed_c(40.5, water_j_per_k, &[powder, cup]).unwrap();
        assert!(bare_c < in_cup_c);
        // 25 g x 1.85 and 100 g x 0.84 are 20.5 K below the target: 46.25 x 20.5 + 84 x 20.5 = 2670.1 J;
        // 75 g of water hold 313.5 J/K, so they start 8.517 K above it.
        assert!((in_cup_c - 49.017).abs() < 0.001, "{in_cup_c}");
        let water = HeatPart::of(75.0, WATER_SPECIFIC_HEAT, in_cup_c);
        assert!((mix_c(&[water, powder, cup]).unwrap() - 40.5).abs() < 1e-9);
    }

    #[test]
    fn a_cup_counts_by_what_it_is_made_of() {
        // 75 g of water hold 313.5 J/K; each cup of 100 g is 20 K below the target, 190, 84 and 50 J/K.
        let needed = |stuff| {
            let cup = HeatPart::cup(100.0, stuff, 20.0);
            needed_c(40.0, 75.0 * WATER_SPECIFIC_HEAT, &[cup]).unwrap() - 40.0
        };
        let warmer = CupStuff::ALL.map(needed);
        for (warmer, expected) in warmer.into_iter().zip([12.121, 5.359, 3.190]) {
            assert!((warmer - expected).abs() < 0.001, "{warmer}");
        }
    }

    /// 100 g of mix of 20, 25, 30 % hold 37, 46.25 and 55.5 J/K of powder, 23 K below 43 C, and 334.4,
    /// 313.5 and 292.6 J/K of water: 43 + 851 / 334.4 = 45.54, 43 + 1063.75 / 313.5 = 46.39,
    /// 43 + 1276.5 / 292.6 = 47.36.
    #[test]
    fn the_hottest_water_stays_under_the_burn_line_whatever_the_share() {
        for (pct, expected) in [(20, 455), (25, 464), (30, 474)] {
            let hottest = hottest_water(Percent::whole(pct)).unwrap();
            assert_eq!(hottest.tenths(), expected);
            let share = f64::from(pct) / 100.0;
            let starts_c = |water_c| {
                let water = HeatPart::of(100.0 * (1.0 - share), WATER_SPECIFIC_HEAT, water_c);
                mix_c(&[water, HeatPart::powder(100.0 * share, 20.0)]).unwrap()
            };
            assert!(starts_c(hottest.as_c()) < BURN_C);
            // A degree hotter reaches it: 0.84 to 0.90 of the degree arrive in the mix.
            assert!(BURN_C < starts_c(hottest.as_c() + 1.0));
        }
        assert_eq!(hottest_water(Percent::whole(0)).unwrap().tenths(), 430);
        assert_eq!(hottest_water(Percent::whole(100)), None);
    }

    #[test]
    fn bad_parts_are_refused_by_name() {
        let refused = Err(HeatError::HeatCapacity { given_j_per_k: 0.0 });
        assert_eq!(needed_c(40.0, 0.0, &[]), refused);
        assert_eq!(mix_c(&[]), refused);
        let negative = HeatPart::powder(-1.0, 20.0);
        let refused = Err(HeatError::HeatCapacity {
            given_j_per_k: -1.85,
        });
        assert_eq!(needed_c(40.0, 50.0, &[negative]), refused);
        assert_eq!(mix_c(&[negative]), refused);
        for given_c in [-30.1, 200.1, f64::INFINITY] {
            let part = HeatPart::powder(1.0, given_c);
            let refused = Err(HeatError::Temperature { given_c });
            assert_eq!(needed_c(40.0, 1.0, &[part]), refused);
            assert_eq!(mix_c(&[part]), refused);
        }
        for edge_c in [-30.0, 200.0] {
            assert_eq!(mix_c(&[HeatPart::of(1.0, 1.0, edge_c)]), Ok(edge_c));
        }
        assert!(matches!(
            mix_c(&[HeatPart::powder(1.0, f64::NAN)]),
            Err(HeatError::Temperature { .. })
        ));
    }
}

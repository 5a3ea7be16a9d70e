//! What food is made of, and how dense that makes it.
//!
//! Choi Y. & Okos M.R. 1986, *Food Engineering and Process Applications* 1:93-101: each component
//! has its own density, a polynomial of the temperature. Volumes add up. Coefficients read in several reproductions of the paper, not in the paper.

/// Composition of a food by mass; the shares are 0 to 1 and add up to 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Composition {
    /// Water, 0 to 1.
    pub water_share: f64,
    /// Protein, 0 to 1.
    pub protein_share: f64,
    /// Fat, 0 to 1.
    pub fat_share: f64,
    /// Carbohydrate without fibre, 0 to 1.
    pub carbohydrate_share: f64,
    /// Fibre, 0 to 1.
    pub fibre_share: f64,
    /// Ash (minerals), 0 to 1.
    pub ash_share: f64,
}

/// A regular hand-feeding powder: 9 % water, 20 protein, 12 fat, 48 carbohydrate, 5 fibre, 6 ash.
///
/// Standing: common practice of generic labels, not a measured product.
pub const REGULAR_POWDER: Composition = Composition {
    water_share: 0.09,
    protein_share: 0.20,
    fat_share: 0.12,
    carbohydrate_share: 0.48,
    fibre_share: 0.05,
    ash_share: 0.06,
};

/// Smooth peanut butter without salt, by mass; carbohydrate is the label's 22.31 % less 5.0 % fibre.
///
/// Source: USDA National Nutrient Database for Standard Reference, release 28, NDB 16398.
pub const PEANUT_BUTTER: Composition = Composition {
    water_share: 0.0123,
    protein_share: 0.2221,
    fat_share: 0.5136,
    carbohydrate_share: 0.1731,
    fibre_share: 0.05,
    ash_share: 0.0289,
};

/// Value, slope and curvature of a property over the temperature in degrees Celsius.
#[derive(Clone, Copy)]
struct Curve(f64, f64, f64);

impl Curve {
    fn at(self, temp_c: f64) -> f64 {
        let Self(value, slope, curvature) = self;
        value + temp_c * (slope + temp_c * curvature)
    }
}

/// Density in kg/m3 of water, protein, fat, carbohydrate, fibre, ash.
const DENSITIES: [Curve; 6] = [
    Curve(997.18, 3.1439e-3, -3.7574e-3),
    Curve(1329.9, -0.518_40, 0.0),
    Curve(925.59, -0.417_57, 0.0),
    Curve(1599.1, -0.310_46, 0.0),
    Curve(1311.5, -0.365_89, 0.0),
    Curve(2423.8, -0.280_63, 0.0),
];

impl Composition {
    /// Nothing but water.
    pub const WATER: Self = Self {
        water_share: 1.0,
        protein_share: 0.0,
        fat_share: 0.0,
        carbohydrate_share: 0.0,
        fibre_share: 0.0,
        ash_share: 0.0,
    };

    fn shares(&self) -> [f64; 6] {
        [
            self.water_share,
            self.protein_share,
            self.fat_share,
            self.carbohydrate_share,
            self.fibre_share,
            self.ash_share,
        ]
    }

    /// Room taken by one gram, in millilitres, at `temp_c` (-40 to 150 C).
    ///
    /// # Formula
    /// `sum of share / density`; a component takes the same room in a mix as alone, air is left out.
    ///
    /// Source: Choi & Okos 1986.
    pub fn volume_ml_per_g(&self, temp_c: f64) -> f64 {
        self.shares()
            .iter()
            .zip(DENSITIES)
            .map(|(share, density)| share * 1000.0 / density.at(temp_c))
            .sum()
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::formula::food_components::{Composition, PEANUT_BUTTER, REGULAR_POWDER};

    #[test]
    fn the_parts_of_each_built_in_food_add_up_to_the_whole() {
        for food in [REGULAR_POWDER, PEANUT_BUTTER, Composition::WATER] {
            let whole: f64 = food.shares().iter().sum();
            // USDA prints two decimals of per cent for six parts: 0.0003 at most.
            assert!((whole - 1.0).abs() < 0.000_3, "{food:?} adds up to {whole}");
        }
    }
}

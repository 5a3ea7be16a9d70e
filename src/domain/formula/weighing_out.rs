//! A mix as the kitchen scale and the spoon can measure it, and how far off that is.

use crate::domain::formula::mixing::{MixAmounts, MixError, TEN_SPOONS_G, check};
use crate::domain::quantity::count;

/// A billionth of a gram: 3.0 g must stay 3 whatever the last digits of a double say.
const LAST_DIGITS_G: f64 = 1e-9;

/// Amounts as they can be weighed, and how far they are from the amounts wanted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WeighedOut {
    /// What to weigh: whole grams of water and supplement, and of powder unless it is spooned.
    pub amounts: MixAmounts,
    /// Powder share less the share wanted; 0.01 is one point of per cent.
    pub share_error: f64,
    /// Volume of powder and water less the volume wanted, in ml.
    pub volume_error_ml: f64,
    /// Supplement less the supplement wanted, in g; never above zero.
    pub supplement_error_g: f64,
}

/// Powder counted in level half spoons, the rest weighed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpoonedOut {
    /// Half spoons of powder, at least one.
    pub half_spoons: i32,
    /// The amounts that this makes.
    pub weighed: WeighedOut,
}

/// A spoon whose powder has been weighed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spoon {
    /// Powder in one level spoon, in g.
    pub powder_g: f64,
}

impl Spoon {
    /// From the weight of ten level spoons of powder.
    ///
    /// # Errors
    /// [`MixError::TenSpoons`] outside [`TEN_SPOONS_G`].
    pub fn from_ten_level_spoons(given_g: f64) -> Result<Self, MixError> {
        let ten_g = check(given_g, TEN_SPOONS_G, MixError::TenSpoons { given_g })?;
        Ok(Self {
            powder_g: ten_g / 10.0,
        })
    }
}

impl MixAmounts {
    /// The same mix on a kitchen scale that shows whole grams.
    ///
    /// Powder goes up to the next gram, so that the feed is not short; water follows the powder, so
    /// that the share holds; the supplement goes down, so that no cap is passed.
    ///
    /// # Errors
    /// As [`MixAmounts::powder_fraction`].
    pub fn on_the_scale(&self) -> Result<WeighedOut, MixError> {
        let share = self.powder_fraction()?;
        let powder_g = count::rounded((self.powder_g - LAST_DIGITS_G).ceil()).max(1);
        self.weighed(share, f64::from(powder_g))
    }

    /// The same mix with powder by level half spoons, to the nearest, and the rest by the scale.
    ///
    /// # Errors
    /// As [`MixAmounts::powder_fraction`].
    pub fn in_spoons(&self, spoon: &Spoon) -> Result<SpoonedOut, MixError> {
        let share = self.powder_fraction()?;
        let half_spoons = count::rounded(2.0 * self.powder_g / spoon.powder_g).max(1);
        let powder_g = f64::from(half_spoons) * spoon.powder_g / 2.0;
        Ok(SpoonedOut {
            half_spoons,
            weighed: self.weighed(share, powder_g)?,
        })
    }

    fn weighed(&self, share: f64, powder_g: f64) -> Result<WeighedOut, MixError> {
        let water_g = count::rounded(powder_g * (1.0 - share) / share).max(1);
        let mut amounts = Self {
            powder_g,
            water_g: f64::from(water_g),
            supplement_g: 0.0,
        };
        // Less mix than wanted takes less supplement, more mix takes no more.
        let powder_ratio = powder_g / self.powder_g;
        let volume_ratio = amounts.volume_ml()? / self.volume_ml()?;
        let most_g = self.supplement_g * powder_ratio.min(volume_ratio).min(1.0);
        amounts.supplement_g = (most_g + LAST_DIGITS_G).floor();
        Ok(WeighedOut {
            amounts,
            share_error: amounts.powder_fraction()? - share,
            volume_error_ml: amounts.volume_ml()? - self.volume_ml()?,
            supplement_error_g: amounts.supplement_g - self.supplement_g,
        })
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::{prop_assert, prop_assert_eq, proptest};

    use crate::domain::formula::mixing::{MixAmounts, MixError, MixWanted, mix_amounts};
    use crate::domain::formula::nutrition::mix_contents;
    use crate::domain::formula::powder::Powder;
    use crate::domain::formula::weighing_out::Spoon;

    #[test]
    fn whole_grams_keep_the_share_and_say_how_far_off_they_are() {
        // 26.4 g powder goes up to 27; 27 x 3 = 81 g water: the share holds, 2.4 g of mix are left over.
        let wanted = MixAmounts {
            powder_g: 26.4,
            water_g: 79.2,
            supplement_g: 2.6,
        };
        let weighed = wanted.on_the_scale().unwrap();
        let whole = MixAmounts {
            powder_g: 27.0,
            water_g: 81.0,
            supplement_g: 2.0,
        };
        assert_eq!(weighed.amounts, whole);
        assert!(weighed.share_error.abs() < 1e-12);
        assert!((weighed.volume_error_ml - 2.4 / 1.062).abs() < 0.01);
        assert!((weighed.supplement_error_g + 0.6).abs() < 1e-12);
        // 5 g powder at 0.3 asks for 11.67 g water, 12 on the scale: 5 / 17 = 0.2941.
        let small = MixAmounts::of_mass(50.0 / 3.0, 0.3).on_the_scale().unwrap();
        assert!((small.share_error - (5.0 / 17.0 - 0.3)).abs() < 1e-12);
    }

    #[test]
    fn the_supplement_never_rounds_up() {
        for (wanted_g, weighed_g) in [(0.9, 0.0), (1.0, 1.0), (2.5, 2.0), (2.999, 2.0), (3.0, 3.0)]
        {
            let wanted = MixAmounts {
                powder_g: 25.0,
                water_g: 75.0,
                supplement_g: wanted_g,
            };
            assert_eq!(
                wanted.on_the_scale().unwrap().amounts.supplement_g,
                weighed_g
            );
        }
    }

    #[test]
    fn spoons_are_counted_in_halves_and_water_follows() {
        // Ten spoons of 74 g: 7.4 g each. 26.4 g is 3.57 spoons, so seven halves: 25.9 g.
        let spoon = Spoon::from_ten_level_spoons(74.0).unwrap();
        let wanted = MixAmounts {
            powder_g: 26.4,
            water_g: 79.2,
            supplement_g: 0.0,
        };
        let spooned = wanted.in_spoons(&spoon).unwrap();
        assert_eq!(spooned.half_spoons, 7);
        assert!((spooned.weighed.amounts.powder_g - 25.9).abs() < 1e-9);
        // 25.9 x 3 = 77.7
        assert_eq!(spooned.weighed.amounts.water_g, 78.0);
        assert!((spooned.weighed.share_error - (25.9 / 103.9 - 0.25)).abs() < 1e-12);
    }

    #[test]
    fn a_spoon_that_cannot_be_one_is_refused_with_its_range() {
        assert!(Spoon::from_ten_level_spoons(10.0).is_ok());
        assert!(Spoon::from_ten_level_spoons(250.0).is_ok());
        for given_g in [0.0, 9.9, 250.1, 800.0] {
            let refusal = MixError::TenSpoons { given_g };
            assert_eq!(Spoon::from_ten_level_spoons(given_g), Err(refusal));
        }
        let words = MixError::TenSpoons { given_g: 800.0 }.to_string();
        assert_eq!(words, "ten level spoons are outside 10 to 250 g: 800");
    }

    #[test]
    fn a_mix_without_powder_or_water_is_refused() {
        let mix = |powder_g, water_g| {
            MixAmounts {
                powder_g,
                water_g,
                supplement_g: 0.0,
            }
            .on_the_scale()
            .unwrap_err()
        };
        assert_eq!(mix(0.0, 75.0), MixError::NoPowder { given_g: 0.0 });
        assert_eq!(mix(-1.0, 75.0), MixError::NoPowder { given_g: -1.0 });
        assert_eq!(mix(25.0, 0.0), MixError::NoWater { given_g: 0.0 });
    }

    proptest! {
        #[test]
        fn a_mix_at_the_supplement_cap_stays_under_it_once_weighed_or_spooned(
            tenth_ml in 100..=3000_i32,
            ten_spoons_g in 10..=250_i32,
        ) {
            let powder = Powder {
                protein_share: 0.20,
                fat_share: 0.12,
                moisture_share: 0.09,
                kcal_per_g: 3.6,
            };
            let wanted = mix_amounts(&MixWanted {
                volume_ml: f64::from(tenth_ml) / 10.0,
                allowance_ml: 0.0,
                powder_fraction: 0.25,
                supplement_g_per_100_ml: 2.5,
            })
            .unwrap();
            let spoon = Spoon::from_ten_level_spoons(f64::from(ten_spoons_g)).unwrap();
            let on_the_scale = wanted.on_the_scale().unwrap();
            let in_spoons = wanted.in_spoons(&spoon).unwrap().weighed;
            // Half a gram of water is the most that the scale can leave out.
            prop_assert!(-0.5 < on_the_scale.volume_error_ml);
            for weighed in [on_the_scale, in_spoons] {
                let contents = mix_contents(&weighed.amounts, &powder).unwrap();
                let over_caps = contents.warnings(&powder);
                prop_assert_eq!(over_caps, []);
            }
        }
    }
}

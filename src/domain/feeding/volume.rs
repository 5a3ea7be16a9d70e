//! How much a feed may hold, and how many syringes that takes.
//!
//! Exact: millilitres and grams in tenths, as they are saved.

use thiserror::Error;

/// Usual feed, 10 per cent: ml for 100 g of empty-crop morning weight.
///
/// Source: Duerr & Gage 2020 p. 210 and a clinic's page on pediatric nutrition: about 10 % of body
/// weight.
pub const USUAL_PCT: i32 = 10;

/// Hard ceiling, 12 per cent: ml for 100 g of empty-crop morning weight, for chicks from 4 weeks.
///
/// Standing: ours, inside the 8 to 15 % quoted. Overfilling stretches the crop (Rivera 2008).
pub const CEILING_PCT: i32 = 12;

/// Most that a large macaw of the genus *Ara* gets, 120 ml in tenths. Standing: ours.
pub const LARGE_MACAW_CEILING_TENTH_ML: i32 = 1200;

/// Most that a hyacinth macaw gets, 150 ml in tenths. Standing: ours.
pub const HYACINTH_CEILING_TENTH_ML: i32 = 1500;

/// Largest syringe for a small hand, 35 ml in tenths. Standing: ours; a full 60 ml plunger stands
/// out too far for a child or a small hand to push slowly.
pub const SMALL_HAND_SYRINGE_TENTH_ML: i32 = 350;

/// Weights taken, 4 to 3000 g in tenths. Standing: ours, to catch slips of typing.
pub const WEIGHT_TENTH_G: (i32, i32) = (40, 30_000);

/// Volumes taken, 0.1 to 300 ml in tenths. Standing: ours, to catch slips of typing.
pub const FEED_TENTH_ML: (i32, i32) = (1, 3000);

/// Syringes taken, 1 to 150 ml in tenths. Standing: ours; 60 ml is the largest in common use.
pub const SYRINGE_TENTH_ML: (i32, i32) = (10, 1500);

/// Why a volume cannot be judged; every range holds its ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum VolumeError {
    /// The morning weight is outside [`WEIGHT_TENTH_G`].
    #[error("morning weight is outside {} to {} tenths of a gram: {given_tenth_g}", WEIGHT_TENTH_G.0, WEIGHT_TENTH_G.1)]
    Weight {
        /// The weight given.
        given_tenth_g: i32,
    },
    /// The adult mass is outside [`WEIGHT_TENTH_G`].
    #[error("adult mass is outside {} to {} tenths of a gram: {given_tenth_g}", WEIGHT_TENTH_G.0, WEIGHT_TENTH_G.1)]
    AdultMass {
        /// The mass given.
        given_tenth_g: i32,
    },
    /// The feed is outside [`FEED_TENTH_ML`].
    #[error("feed is outside {} to {} tenths of a millilitre: {given_tenth_ml}", FEED_TENTH_ML.0, FEED_TENTH_ML.1)]
    Feed {
        /// The volume given.
        given_tenth_ml: i32,
    },
}

/// What the absolute ceiling of a bird rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CeilingGroup {
    /// A large macaw of the genus *Ara*; the small ones belong to `OtherParrot`.
    LargeMacaw,
    /// A hyacinth macaw.
    Hyacinth,
    /// Any other parrot: [`CEILING_PCT`] of the adult mass. Standing: ours.
    OtherParrot {
        /// Mean adult mass, in tenths of a gram.
        adult_mass_tenth_g: i32,
    },
}

impl CeilingGroup {
    /// Most that a bird of this group gets in one feed whatever it weighs, in tenths of a ml.
    ///
    /// # Errors
    /// [`VolumeError::AdultMass`].
    pub fn ceiling_tenth_ml(self) -> Result<i32, VolumeError> {
        match self {
            Self::LargeMacaw => Ok(LARGE_MACAW_CEILING_TENTH_ML),
            Self::Hyacinth => Ok(HYACINTH_CEILING_TENTH_ML),
            Self::OtherParrot { adult_mass_tenth_g } => {
                let given_tenth_g = adult_mass_tenth_g;
                check(
                    given_tenth_g,
                    WEIGHT_TENTH_G,
                    VolumeError::AdultMass { given_tenth_g },
                )?;
                Ok(adult_mass_tenth_g * CEILING_PCT / 100)
            }
        }
    }
}

/// How much one feed may hold, in tenths of a millilitre, rounded down.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FeedLimits {
    /// [`USUAL_PCT`] of the morning weight, never above the absolute ceiling.
    pub usual_tenth_ml: i32,
    /// [`CEILING_PCT`] of the morning weight.
    pub weight_ceiling_tenth_ml: i32,
    /// The ceiling of the group.
    pub absolute_ceiling_tenth_ml: i32,
}

/// Where a planned feed stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum VolumeVerdict {
    /// Up to 10 % of the morning weight.
    WithinUsual,
    /// Above 10 % up to 12 %.
    AboveUsual,
    /// Above 12 % of the morning weight: too much.
    OverWeightCeiling,
    /// Above the most that a bird of this group gets: too much, whatever it weighs.
    OverAbsoluteCeiling,
}

/// The limits for a bird of that empty-crop morning weight.
///
/// # Errors
/// [`VolumeError::Weight`], [`VolumeError::AdultMass`].
///
/// # Examples
/// ```
/// use perchlight::domain::feeding::volume::{CeilingGroup, feed_limits};
/// // 900.0 g: 90.0 ml usual, 108.0 ml at most.
/// let limits = feed_limits(9000, CeilingGroup::LargeMacaw).unwrap();
/// assert_eq!((limits.usual_tenth_ml, limits.ceiling_tenth_ml()), (900, 1080));
/// ```
pub fn feed_limits(
    morning_weight_tenth_g: i32,
    group: CeilingGroup,
) -> Result<FeedLimits, VolumeError> {
    let given_tenth_g = morning_weight_tenth_g;
    check(
        given_tenth_g,
        WEIGHT_TENTH_G,
        VolumeError::Weight { given_tenth_g },
    )?;
    let absolute_ceiling_tenth_ml = group.ceiling_tenth_ml()?;
    let usual_tenth_ml = morning_weight_tenth_g * USUAL_PCT / 100;
    Ok(FeedLimits {
        usual_tenth_ml: usual_tenth_ml.min(absolute_ceiling_tenth_ml),
        weight_ceiling_tenth_ml: morning_weight_tenth_g * CEILING_PCT / 100,
        absolute_ceiling_tenth_ml,
    })
}

impl FeedLimits {
    /// The lower of both ceilings, in tenths of a millilitre.
    pub fn ceiling_tenth_ml(&self) -> i32 {
        self.weight_ceiling_tenth_ml
            .min(self.absolute_ceiling_tenth_ml)
    }

    /// Where a planned feed stands; over both ceilings counts as over the absolute one.
    ///
    /// # Errors
    /// [`VolumeError::Feed`].
    pub fn verdict(&self, planned_tenth_ml: i32) -> Result<VolumeVerdict, VolumeError> {
        let given_tenth_ml = planned_tenth_ml;
        check(
            given_tenth_ml,
            FEED_TENTH_ML,
            VolumeError::Feed { given_tenth_ml },
        )?;
        if self.absolute_ceiling_tenth_ml < planned_tenth_ml {
            return Ok(VolumeVerdict::OverAbsoluteCeiling);
        }
        if self.weight_ceiling_tenth_ml < planned_tenth_ml {
            return Ok(VolumeVerdict::OverWeightCeiling);
        }
        if self.usual_tenth_ml < planned_tenth_ml {
            return Ok(VolumeVerdict::AboveUsual);
        }
        Ok(VolumeVerdict::WithinUsual)
    }
}

/// Fillings of one syringe that make up a feed, in tenths of a millilitre, the fullest first.
///
/// Empty when the feed is outside [`FEED_TENTH_ML`] or the syringe outside [`SYRINGE_TENTH_ML`].
///
/// # Examples
/// ```
/// use perchlight::domain::feeding::volume::draws;
/// assert_eq!(draws(900, 600), [600, 300]);
/// assert!(draws(900, 0).is_empty());
/// ```
pub fn draws(feed_tenth_ml: i32, syringe_tenth_ml: i32) -> Vec<i32> {
    let is_feed = FEED_TENTH_ML.0 <= feed_tenth_ml && feed_tenth_ml <= FEED_TENTH_ML.1;
    let is_syringe =
        SYRINGE_TENTH_ML.0 <= syringe_tenth_ml && syringe_tenth_ml <= SYRINGE_TENTH_ML.1;
    let mut fillings = Vec::new();
    let mut left_tenth_ml = if is_feed && is_syringe {
        feed_tenth_ml
    } else {
        0
    };
    while 0 < left_tenth_ml {
        let filling = left_tenth_ml.min(syringe_tenth_ml);
        fillings.push(filling);
        left_tenth_ml -= filling;
    }
    fillings
}

/// As [`draws`], with no syringe above [`SMALL_HAND_SYRINGE_TENTH_ML`].
pub fn draws_for_small_hand(feed_tenth_ml: i32, syringe_tenth_ml: i32) -> Vec<i32> {
    draws(
        feed_tenth_ml,
        syringe_tenth_ml.min(SMALL_HAND_SYRINGE_TENTH_ML),
    )
}

fn check(given: i32, (low, high): (i32, i32), refusal: VolumeError) -> Result<(), VolumeError> {
    if low <= given && given <= high {
        return Ok(());
    }
    Err(refusal)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::{prop_assert, prop_assert_eq, proptest};

    use crate::domain::feeding::volume::{
        CeilingGroup, VolumeError, VolumeVerdict, draws, draws_for_small_hand, feed_limits,
    };

    fn verdict(weight_tenth_g: i32, group: CeilingGroup, planned_tenth_ml: i32) -> VolumeVerdict {
        feed_limits(weight_tenth_g, group)
            .unwrap()
            .verdict(planned_tenth_ml)
            .unwrap()
    }

    #[test]
    fn the_shares_of_weight_hold_at_each_limit() {
        // 900.0 g: 10 % is 90.0 ml, 12 % is 108.0 ml.
        for (planned_tenth_ml, expected) in [
            (899, VolumeVerdict::WithinUsual),
            (900, VolumeVerdict::WithinUsual),
            (901, VolumeVerdict::AboveUsual),
            (1079, VolumeVerdict::AboveUsual),
            (1080, VolumeVerdict::AboveUsual),
            (1081, VolumeVerdict::OverWeightCeiling),
            (1200, VolumeVerdict::OverWeightCeiling),
            (1201, VolumeVerdict::OverAbsoluteCeiling),
        ] {
            let given = verdict(9000, CeilingGroup::LargeMacaw, planned_tenth_ml);
            assert_eq!(given, expected, "{planned_tenth_ml}");
        }
    }

    #[test]
    fn the_absolute_ceiling_holds_for_a_heavy_bird_of_each_group() {
        // 1600.0 g: 12 % is 192.0 ml, so only the group's ceiling is left. 500.0 g adult: 60.0 ml.
        let other = CeilingGroup::OtherParrot {
            adult_mass_tenth_g: 5000,
        };
        for (group, ceiling) in [
            (CeilingGroup::LargeMacaw, 1200),
            (CeilingGroup::Hyacinth, 1500),
            (other, 600),
        ] {
            let over = VolumeVerdict::OverAbsoluteCeiling;
            assert_eq!(
                verdict(16_000, group, ceiling - 1),
                VolumeVerdict::WithinUsual
            );
            assert_eq!(verdict(16_000, group, ceiling), VolumeVerdict::WithinUsual);
            assert_eq!(verdict(16_000, group, ceiling + 1), over);
            assert_eq!(
                feed_limits(16_000, group).unwrap().ceiling_tenth_ml(),
                ceiling
            );
        }
    }

    #[test]
    fn limits_between_two_tenths_round_down() {
        // 333.3 g: 33.33 and 39.996 ml.
        let limits = feed_limits(3333, CeilingGroup::Hyacinth).unwrap();
        assert_eq!(
            (limits.usual_tenth_ml, limits.ceiling_tenth_ml()),
            (333, 399)
        );
    }

    #[test]
    fn figures_outside_their_range_are_refused_by_name() {
        let group = CeilingGroup::LargeMacaw;
        for given_tenth_g in [0, 39, 30_001] {
            let other = CeilingGroup::OtherParrot {
                adult_mass_tenth_g: given_tenth_g,
            };
            assert_eq!(
                feed_limits(given_tenth_g, group),
                Err(VolumeError::Weight { given_tenth_g })
            );
            assert_eq!(
                feed_limits(9000, other),
                Err(VolumeError::AdultMass { given_tenth_g })
            );
        }
        let limits = feed_limits(9000, group).unwrap();
        for given_tenth_ml in [-1, 0, 3001] {
            assert_eq!(
                limits.verdict(given_tenth_ml),
                Err(VolumeError::Feed { given_tenth_ml })
            );
        }
        assert!(feed_limits(40, group).is_ok() && feed_limits(30_000, group).is_ok());
        assert!(limits.verdict(1).is_ok() && limits.verdict(3000).is_ok());
    }

    #[test]
    fn a_feed_below_at_and_above_one_syringe_is_split_largest_first() {
        assert_eq!(draws(599, 600), [599]);
        assert_eq!(draws(600, 600), [600]);
        assert_eq!(draws(601, 600), [600, 1]);
        assert_eq!(draws(1200, 600), [600, 600]);
    }

    #[test]
    fn a_small_hand_gets_no_syringe_above_its_size() {
        assert_eq!(draws_for_small_hand(900, 600), [350, 350, 200]);
        assert_eq!(draws_for_small_hand(700, 351), [350, 350]);
        assert_eq!(draws_for_small_hand(700, 350), [350, 350]);
        assert_eq!(draws_for_small_hand(700, 349), [349, 349, 2]);
        assert_eq!(draws_for_small_hand(700, 200), [200, 200, 200, 100]);
    }

    #[test]
    fn a_feed_or_syringe_outside_its_range_gives_no_draws() {
        for (feed, syringe) in [(0, 600), (3001, 600), (900, 9), (900, 1501), (900, -1)] {
            assert!(draws(feed, syringe).is_empty(), "{feed} {syringe}");
        }
        assert_eq!(draws(3000, 10).len(), 300);
        assert_eq!(draws(1, 1500), [1]);
    }

    proptest! {
        #[test]
        fn draws_add_up_to_the_feed_in_as_few_fillings_as_can_be(feed in 1..=3000, syringe in 10..=1500) {
            let fillings = draws(feed, syringe);
            prop_assert_eq!(fillings.iter().sum::<i32>(), feed);
            prop_assert_eq!(i32::try_from(fillings.len()).unwrap(), (feed + syringe - 1) / syringe);
            prop_assert!(fillings.iter().all(|filling| 0 < *filling && *filling <= syringe));
            prop_assert!(fillings.is_sorted_by(|earlier, later| later <= earlier));
        }
    }
}

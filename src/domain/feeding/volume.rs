//! How many syringes a feed takes. Exact: millilitres in tenths, as they are saved.

/// Largest syringe for a small hand, 35 ml in tenths. Standing: ours; a full 60 ml plunger stands
/// out too far for a child or a small hand to push slowly.
pub const SMALL_HAND_SYRINGE_TENTH_ML: i32 = 350;

/// Volumes taken, 0.1 to 300 ml in tenths. Standing: ours, to catch slips of typing.
pub const FEED_TENTH_ML: (i32, i32) = (1, 3000);

/// Syringes taken, 1 to 150 ml in tenths. Standing: ours; 60 ml is the largest in common use.
pub const SYRINGE_TENTH_ML: (i32, i32) = (10, 1500);

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

#[cfg(test)]
mod tests {
    use proptest::prelude::{prop_assert, prop_assert_eq, proptest};

    use crate::domain::feeding::volume::{draws, draws_for_small_hand};

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

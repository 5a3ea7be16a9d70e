//! Whether a weight is weighed again at once, before it is believed.

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::CropAtWeighing;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::Moment;
use crate::domain::weight::trend;

/// A reading further off the expected one than this is weighed again, standard deviations. Ours: one
/// healthy morning in forty lies as low.
pub const OFF_SD: f64 = 2.0;

/// Weighings this near belong together, minutes. Ours.
pub const TOGETHER_MINUTES: i64 = 30;

/// What is asked of a reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Again {
    /// Nothing: it fits, or it is the second one.
    No,
    /// It is low, or calls: a second weighing.
    Low,
    /// It is high: whether the crop held food.
    High,
}

/// What is asked of an empty-crop reading, by what was known of the chick before it; `is_raising` says
/// that it calls where nothing called before.
pub fn again(before: &Chick, at: Moment, weight: Grams, is_raising: bool) -> Again {
    let is_near = |minutes: i64| (0..=TOGETHER_MINUTES).contains(&minutes);
    let is_second = before.weighings.iter().any(|weighing| {
        weighing.what.crop == CropAtWeighing::Empty && is_near(at.minutes_since(weighing.at))
    });
    if is_second {
        return Again::No;
    }
    let off_sd = trend::expected_reading(at, before)
        .map(|(expected, sd)| (weight.as_g() - expected) / sd.max(f64::MIN_POSITIVE));
    match off_sd {
        Some(off) if off < -OFF_SD => Again::Low,
        _ if is_raising => Again::Low,
        Some(off) if off > OFF_SD => Again::High,
        Some(_) | None => Again::No,
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::warnings::rules::trial::macaw;
    use crate::domain::weight::again::*;

    #[test]
    fn a_low_reading_is_weighed_again_once_and_a_high_one_asks_for_the_crop() {
        let mut script = macaw();
        for day in 1..=8 {
            script.weigh(day, 1_010);
        }
        let chick = script.chick().unwrap();
        let asked = |grams| again(&chick, script.at(9, 6, 45), Grams::whole(grams), false);
        assert_eq!(asked(1_008), Again::No);
        assert_eq!(asked(940), Again::Low);
        assert_eq!(asked(1_080), Again::High);
        let raising = again(&chick, script.at(9, 6, 45), Grams::whole(1_008), true);
        assert_eq!(raising, Again::Low);
        // 20 minutes after the last one
        let second = again(&chick, script.at(8, 7, 5), Grams::whole(940), true);
        assert_eq!(second, Again::No);
    }
}

//! How an owner weighs: what is missed, read wrongly or typed wrongly. All shares are assumed.

use perchlight::domain::quantity::count;

use crate::simulator::chances::Chances;

/// How an owner weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Habit {
    /// Every morning but one in thirty, 0.8 % off.
    Careful,
    /// Three mornings of ten are missed.
    Misses,
    /// One morning in fourteen there is still food in the crop, and it is noted as empty.
    CropNotEmpty,
    /// A kitchen scale: 1.6 % off, steps of 5 g.
    CoarseScale,
    /// One weight in thirty is typed with two digits changed round, or with one digit wrong.
    Mistypes,
}

impl Habit {
    /// Every habit.
    pub(crate) const ALL: [Self; 5] = [
        Self::Careful,
        Self::Misses,
        Self::CropNotEmpty,
        Self::CoarseScale,
        Self::Mistypes,
    ];

    /// Scale and handling, standard deviation as a share of the weight.
    const fn noise(self) -> f64 {
        match self {
            Self::Careful | Self::Misses | Self::CropNotEmpty | Self::Mistypes => 0.008,
            Self::CoarseScale => 0.016,
        }
    }

    /// The scale's steps, g.
    pub(crate) const fn step_g(self) -> i32 {
        match self {
            Self::Careful | Self::Misses | Self::CropNotEmpty | Self::Mistypes => 1,
            Self::CoarseScale => 5,
        }
    }

    /// What is typed on one morning, g; `None` when nobody weighs.
    pub(crate) fn typed(self, true_g: f64, feed_ml: f64, chances: &mut Chances) -> Option<i32> {
        let missed = if self == Self::Misses {
            0.3
        } else {
            1.0 / 30.0
        };
        if chances.happens(missed) {
            return None;
        }
        let mut grams = true_g * (1.0 + self.noise() * chances.normal());
        if self == Self::CropNotEmpty && chances.happens(1.0 / 14.0) {
            grams += feed_ml * 1.06 * chances.between(0.3, 1.0);
        }
        let step = f64::from(self.step_g());
        let read = count::rounded((grams / step).round() * step);
        let slips = self == Self::Mistypes && chances.happens(1.0 / 30.0);
        Some(if slips { slip(read, chances) } else { read })
    }
}

/// A slip of the fingers: the last two or the middle two digits change places, or one digit is any.
fn slip(read: i32, chances: &mut Chances) -> i32 {
    let (units, tens, hundreds) = (read % 10, read / 10 % 10, read / 100 % 10);
    let thousands = read / 1_000 * 1_000;
    let any = count::rounded(chances.between(-0.5, 9.49)).clamp(0, 9);
    match count::rounded(chances.between(-0.5, 3.49)) {
        0 => thousands + hundreds * 100 + units * 10 + tens,
        1 => thousands + tens * 100 + hundreds * 10 + units,
        2 => thousands + hundreds * 100 + any * 10 + units,
        _ => thousands + any * 100 + tens * 10 + units,
    }
}

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
    /// Two scales in turn that lie 1.5 % apart.
    TwoScales,
}

impl Habit {
    /// Every habit that the ill chicks are weighed with in turn.
    pub(crate) const ALL: [Self; 5] = [
        Self::Careful,
        Self::Misses,
        Self::CropNotEmpty,
        Self::CoarseScale,
        Self::Mistypes,
    ];

    /// Scale and handling, standard deviation as a share of the weight.
    pub(crate) const fn noise(self) -> f64 {
        match self {
            Self::Careful
            | Self::Misses
            | Self::CropNotEmpty
            | Self::Mistypes
            | Self::TwoScales => 0.008,
            Self::CoarseScale => 0.016,
        }
    }

    /// The scale's steps, tenths of a gram: 1 g from 150 g on, else a tenth (common practice).
    pub(crate) fn step_tenths(self, true_g: f64) -> i32 {
        match self {
            Self::CoarseScale => 50,
            Self::Careful
            | Self::Misses
            | Self::CropNotEmpty
            | Self::Mistypes
            | Self::TwoScales => {
                if true_g < 150.0 {
                    1
                } else {
                    10
                }
            }
        }
    }

    /// What lies on the scale on one morning, as this morning's scale shows it without noise, and what is typed of
    /// it, tenths of a gram; `None` when nobody weighs.
    pub(crate) fn typed(
        self,
        true_g: f64,
        feed_ml: f64,
        chances: &mut Chances,
    ) -> Option<(f64, i32)> {
        let missed = if self == Self::Misses {
            0.3
        } else {
            1.0 / 30.0
        };
        if chances.happens(missed) {
            return None;
        }
        let noise = self.noise() * chances.normal();
        let mut on_scale = true_g;
        if self == Self::CropNotEmpty && chances.happens(1.0 / 14.0) {
            on_scale += feed_ml * 1.06 * chances.between(0.3, 1.0);
        }
        if self == Self::TwoScales && chances.happens(0.5) {
            on_scale *= 1.015;
        }
        Some((
            on_scale,
            self.read(on_scale + true_g * noise, true_g, chances),
        ))
    }

    /// What is typed when the same is weighed again, tenths of a gram.
    pub(crate) fn again(self, on_scale: f64, true_g: f64, chances: &mut Chances) -> i32 {
        let noise = self.noise() * chances.normal();
        self.read(on_scale + true_g * noise, true_g, chances)
    }

    fn read(self, grams: f64, true_g: f64, chances: &mut Chances) -> i32 {
        let tenths = self.step_tenths(true_g);
        let step = f64::from(tenths) / 10.0;
        let steps = count::rounded((grams / step).round());
        let slips = self == Self::Mistypes && chances.happens(1.0 / 30.0);
        if slips {
            slip(count::rounded(f64::from(steps) * step), chances) * 10
        } else {
            steps * tenths
        }
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

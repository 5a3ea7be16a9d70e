//! How far a weighing lies off the weight: the bird, the scale and its steps.

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::CropAtWeighing;
use crate::domain::time::moment::Moment;

/// How far a bird's weight varies of itself from morning to morning, as a share of it. A second weighing
/// does not lessen this part.
///
/// Ours: with [`SCALE_SHARE`] it makes 1 % of a weighing, from the 10 to 20 g that an adult large parrot's
/// weight varies.
pub const BIRD_SHARE: f64 = 0.005;

/// How far scale and handling lie off before any weighing was repeated, as a share of the weight. Ours.
pub const SCALE_SHARE: f64 = 0.008_66;

/// How far a scale lies off in its own steps, so that a coarse one is trusted less. Ours: a cheap scale
/// comes back to within two or three of its steps.
pub const STEPS: f64 = 1.5;

/// Weighings of an empty crop no further apart than this are one sitting, minutes; so long is a second one
/// waited for. Ours: a bird that drinks or leaves a dropping is another weight by then.
pub const SITTING_MINUTES: i64 = 30;

/// Weighings after which the last digits tell the scale's step. Ours.
const TELLING_WEIGHINGS: usize = 8;

/// The steps of scales, tenths of a gram, coarsest first. Round weights tell of no coarser scale: they may be chance.
const SCALE_STEPS: [i32; 6] = [50, 20, 10, 5, 2, 1];

/// As many repeated weighings as what is assumed of the scale is worth. Ours.
const WORTH: f64 = 4.0;

/// Repeated weighings further apart than this count as so far apart, standard deviations: one of them
/// was a slip. Ours.
const MOST_APART_SD: f64 = 4.0;

/// What is known of a household's scale.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Noise {
    /// Scale and handling, as a share of the weight.
    scale_share: f64,
    /// The scale's steps, g.
    step_g: f64,
}

impl Noise {
    /// A scale of which only the step is known, g.
    pub const fn of_step(step_g: f64) -> Self {
        Self {
            scale_share: SCALE_SHARE,
            step_g,
        }
    }

    /// What the plan, the last digits and repeated weighings up to `now` tell.
    pub fn of(now: Moment, chick: &Chick) -> Self {
        let until = chick
            .weighings
            .partition_point(|weighing| weighing.at <= now);
        let known = chick.weighings.get(..until).unwrap_or_default();
        let tenths = known.iter().rev().take(TELLING_WEIGHINGS);
        let tenths: Vec<i32> = tenths
            .map(|weighing| weighing.what.weight.tenths())
            .collect();
        let told = SCALE_STEPS
            .into_iter()
            .find(|step| tenths.iter().all(|weight| weight % step == 0))
            .filter(|_| tenths.len() == TELLING_WEIGHINGS);
        let step_g = told.map_or(chick.plan.scale_step.as_g(), |step| f64::from(step) / 10.0);
        let unlearned = Self::of_step(step_g);
        let (mut sum, mut pairs) = (0.0, 0.0);
        for pair in known.windows(2) {
            let [first, second] = pair else { continue };
            let is_empty = [first, second]
                .iter()
                .all(|weighing| weighing.what.crop == CropAtWeighing::Empty);
            let is_repeated = second.at.minutes_since(first.at) <= SITTING_MINUTES;
            if is_empty && is_repeated && first.at < second.at {
                let (one, other) = (first.what.weight.as_g(), second.what.weight.as_g());
                let own = unlearned.scale_sd_g(one);
                // Two readings lie apart by twice the variance of one.
                let apart = ((one - other) / (own * 2.0_f64.sqrt())).abs();
                sum += apart.min(MOST_APART_SD).powi(2);
                pairs += 1.0;
            }
        }
        let times = ((WORTH + sum) / (WORTH + pairs)).sqrt();
        Self {
            scale_share: SCALE_SHARE * times,
            step_g: step_g * times,
        }
    }

    /// Standard deviation of one weighing on the scale, the bird's own part left out, g.
    pub fn scale_sd_g(self, grams: f64) -> f64 {
        (self.scale_share * grams).hypot(STEPS * self.step_g)
    }

    /// Standard deviation of the middle of so many empty-crop weighings of one sitting, g.
    pub fn sd_g(self, grams: f64, weighings: f64) -> f64 {
        let scale = self.scale_sd_g(grams) / weighings.max(1.0).sqrt();
        (BIRD_SHARE * grams).hypot(scale)
    }
}

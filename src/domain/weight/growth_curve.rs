//! Curves of growth towards an adult weight. None of them falls again after a peak.

use crate::domain::statistics::robust;

/// Form of a growth curve, with `u = k (t - turn)`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// `A exp(-exp(-u))`: steepest at 37 % of the adult weight.
    Gompertz,
    /// `A / (1 + exp(-u))`: steepest at half of the adult weight.
    Logistic,
    /// `A (1 - exp(-u))³`: the weight form of von Bertalanffy, steepest at 30 %.
    Bertalanffy,
}

impl Shape {
    /// Share of the adult weight at `u`, and its rise per unit of `u`.
    pub(crate) fn share_and_rise(self, u: f64) -> (f64, f64) {
        let fading = (-u).exp();
        match self {
            Self::Gompertz => {
                let share = (-fading).exp();
                // Far before the turn the share is 0 and `fading` infinite; their product is 0.
                (share, if share == 0.0 { 0.0 } else { share * fading })
            }
            Self::Logistic => {
                let share = 1.0 / (1.0 + fading);
                (share, share * (1.0 - share))
            }
            Self::Bertalanffy => {
                let length = 1.0 - fading;
                (length * length * length, 3.0 * length * length * fading)
            }
        }
    }

    /// Where the curve reaches a share of the adult weight; needs `0 < share < 1`.
    pub(crate) fn u_at(self, share: f64) -> f64 {
        match self {
            Self::Gompertz => -(-share.ln()).ln(),
            Self::Logistic => (share / (1.0 - share)).ln(),
            Self::Bertalanffy => -(1.0 - share.cbrt()).ln(),
        }
    }

    fn steepest_u(self) -> f64 {
        match self {
            Self::Gompertz | Self::Logistic => 0.0,
            Self::Bertalanffy => 3.0_f64.ln(),
        }
    }
}

/// A growth curve in grams over days. Day 0 is whatever the caller counts from, mostly hatching.
///
/// Use it up to the peak only: hand-reared parrots lose weight while weaning.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GrowthCurve {
    /// Form of the curve.
    pub shape: Shape,
    /// Adult weight that the curve runs towards, g.
    pub adult_g: f64,
    /// Growth constant `k`, 1/day.
    pub rate_per_day: f64,
    /// The day of `u = 0`: the steepest for Gompertz and logistic, weight 0 for von Bertalanffy.
    pub turn_day: f64,
}

impl GrowthCurve {
    /// The logistic curve of a species: from the weight at hatching (day 0) to the adult weight.
    ///
    /// `None` unless `0 < hatch_g < adult_g` and the rate is above 0, all finite.
    ///
    /// # Formula
    /// `W(t) = A / (1 + exp(-k (t - turn)))`, `turn = ln((A - W0) / W0) / k`
    ///
    /// # Examples
    /// ```
    /// use perchlight::domain::weight::growth_curve::GrowthCurve;
    /// let curve = GrowthCurve::from_hatching(1220.0, 24.0, 0.112).unwrap();
    /// assert!((curve.weight_g(0.0) - 24.0).abs() < 1e-9);
    /// assert!(GrowthCurve::from_hatching(24.0, 24.0, 0.112).is_none());
    /// ```
    pub fn from_hatching(adult_g: f64, hatch_g: f64, rate_per_day: f64) -> Option<Self> {
        robust::all_finite(&[adult_g, hatch_g, rate_per_day])?;
        let is_growth = 0.0 < hatch_g && hatch_g < adult_g && 0.0 < rate_per_day;
        is_growth.then(|| Self {
            shape: Shape::Logistic,
            adult_g,
            rate_per_day,
            turn_day: ((adult_g - hatch_g) / hatch_g).ln() / rate_per_day,
        })
    }

    /// Weight at a day, g.
    pub fn weight_g(&self, day: f64) -> f64 {
        self.adult_g * self.shape.share_and_rise(self.u(day)).0
    }

    /// Gain at a day, g/day.
    pub fn gain_g_per_day(&self, day: f64) -> f64 {
        self.adult_g * self.rate_per_day * self.shape.share_and_rise(self.u(day)).1
    }

    /// The day of the largest gain.
    pub fn steepest_day(&self) -> f64 {
        self.turn_day + self.shape.steepest_u() / self.rate_per_day
    }

    /// The day on which a share of the adult weight is reached; `None` unless `0 < share < 1`.
    pub fn day_at_share(&self, share: f64) -> Option<f64> {
        let is_between = 0.0 < share && share < 1.0;
        is_between.then(|| self.turn_day + self.shape.u_at(share) / self.rate_per_day)
    }

    /// The same curve made lighter or heavier as a whole, so that it fits this chick best.
    ///
    /// Only the adult weight is fitted (least squares); rate and turn stay those of the species.
    /// `None` for no readings, lists of different length, values that are not finite, or when the
    /// readings would make an adult weight that is not above 0.
    pub fn scaled_to(&self, days: &[f64], grams: &[f64]) -> Option<Self> {
        robust::all_finite(days)?;
        robust::all_finite(grams)?;
        if days.len() != grams.len() {
            return None;
        }
        let (mut both, mut square) = (0.0, 0.0);
        for (day, weight) in days.iter().zip(grams) {
            let share = self.shape.share_and_rise(self.u(*day)).0;
            both += share * weight;
            square += share * share;
        }
        let adult_g = both / square;
        (0.0 < square && 0.0 < adult_g).then_some(Self { adult_g, ..*self })
    }

    pub(crate) fn u(&self, day: f64) -> f64 {
        self.rate_per_day * (day - self.turn_day)
    }
}

/// The heaviest of some readings, and how far the last lies below it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Peak {
    /// When it was read first.
    pub day: f64,
    /// The heaviest reading, g.
    pub grams: f64,
    /// Loss from it to the last reading, per cent, 0 to 100.
    pub loss_pct: f64,
}

/// The heaviest reading of a list in the order of its days.
///
/// `None` for no readings, lists of different length, values that are not finite, or weights that
/// are not above 0.
pub fn peak(days: &[f64], grams: &[f64]) -> Option<Peak> {
    robust::all_finite(days)?;
    robust::all_finite(grams)?;
    let last = grams.last()?;
    if days.len() != grams.len() || grams.iter().any(|weight| *weight <= 0.0) {
        return None;
    }
    let heavier = |best: (f64, f64), next: (f64, f64)| if best.1 < next.1 { next } else { best };
    let pairs = days.iter().copied().zip(grams.iter().copied());
    let (day, heaviest) = pairs.reduce(heavier)?;
    Some(Peak {
        day,
        grams: heaviest,
        loss_pct: 100.0 * (heaviest - last) / heaviest,
    })
}

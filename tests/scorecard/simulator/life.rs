//! How a made-up parrot truly weighs with an empty crop.

use perchlight::domain::plan::species::Species;

use crate::simulator::chances::Chances;

/// Days that each chick is watched after the handover. Assumed: five weeks hold most of a weaning.
pub(crate) const DAYS: i32 = 35;

/// Days that a fat chick and a weaned one are watched: eight weeks.
pub(crate) const LONG_DAYS: i32 = 56;

/// What kind of bird.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Bird {
    /// A green-winged macaw of 1,214 g (Dunning 2008).
    Macaw,
    /// A chestnut-fronted macaw of 350 g (300 to 450 g, an aviary's weight table).
    Small,
    /// A cockatiel of 90 g (80 to 125 g, the same table).
    Smallest,
}

impl Bird {
    /// Its mean adult weight, g.
    const fn adult_g(self) -> f64 {
        match self {
            Self::Macaw => 1_214.0,
            Self::Small => 350.0,
            Self::Smallest => 90.0,
        }
    }

    /// Its species.
    pub(crate) const fn species(self) -> Species {
        match self {
            Self::Macaw => Species::GreenWingedMacaw,
            Self::Small => Species::ChestnutFrontedMacaw,
            Self::Smallest => Species::Cockatiel,
        }
    }

    /// Age at the handover of one that is being weaned, days: about its species' weaning. Assumed.
    const fn ages(self) -> (f64, f64) {
        match self {
            Self::Macaw => (84.0, 112.0),
            Self::Small => (63.0, 84.0),
            Self::Smallest => (42.0, 56.0),
        }
    }
}

/// What happens to a chick.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Fate {
    /// It grows: 6 to 9 weeks old at the handover (assumed).
    Grows,
    /// It is weaned and loses what healthy chicks lose.
    Weans,
    /// The same, with a dip after the move.
    Dips,
    /// It was fat and loses 15 to 20 % of its peak in eight weeks.
    WasFat,
    /// It loses some per cent in the week of its first flights and gains them again.
    Fledges,
    /// It is weaned, takes no formula and keeps its weight for eight weeks.
    IsWeaned,
    /// The same, and falls ill on a day of the second week.
    FallsIll(Speed),
}

/// How fast an illness takes weight.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Speed {
    /// 3 to 5 % a day.
    Fast,
    /// 1.5 to 2.5 % a day.
    Middling,
    /// 0.7 to 1.2 % a day.
    Slow,
}

impl Speed {
    /// Weight lost a day beyond that of weaning, shares of the handover weight.
    ///
    /// Assumed, from the energy a chick needs, 78 kcal a day at 1 kg, and 2 kcal a gram of lost
    /// tissue with its water: without any food about 4 % a day, on half of it 2 %, on three quarters
    /// 1 %.
    const fn loss_a_day(self) -> (f64, f64) {
        match self {
            Self::Fast => (0.03, 0.05),
            Self::Middling => (0.015, 0.025),
            Self::Slow => (0.007, 0.012),
        }
    }
}

/// Share of the weight lost a day without any food, assumed as in [`Speed`].
const STARVED_A_DAY: f64 = 0.04;

/// The true weights of one chick.
#[derive(Clone, Debug)]
pub(crate) struct Life {
    /// Age at the handover, days.
    pub(crate) age_days: i32,
    /// The last day on which it is well; `None` when it stays so.
    pub(crate) onset: Option<i32>,
    /// Share of its food that it leaves from the onset on.
    pub(crate) leaves: f64,
    /// What it would weigh while well and without the wandering of a day, on the same mornings, g.
    pub(crate) curve: Vec<f64>,
    /// True weight on the mornings of day 0 to the last, g.
    pub(crate) grams: Vec<f64>,
}

/// A healthy fall from the peak while weaning.
struct Fall {
    share: f64,
    from_day: f64,
    days: f64,
}

impl Fall {
    /// Total loss 8 % (sd 2 %, 3 to 12 %): a drop of around 10 % from the maximum, Duerr & Gage 2020,
    /// p. 599, and "only about 10 %", Watchbird Nov/Dec 1999. Large macaws are said to lose more.
    /// That it begins in the first week and takes 4 to 7 weeks: assumed.
    fn drawn(chances: &mut Chances) -> Self {
        Self {
            share: (0.08 + 0.02 * chances.normal()).clamp(0.03, 0.12),
            from_day: chances.between(0.0, 7.0),
            days: chances.between(28.0, 49.0),
        }
    }

    fn left(&self, day: f64) -> f64 {
        let part = ((day - self.from_day) / self.days).clamp(0.0, 1.0);
        1.0 - self.share * part * part * (3.0 - 2.0 * part)
    }
}

impl Life {
    /// The life of one chick with that fate.
    pub(crate) fn drawn(fate: Fate, bird: Bird, chances: &mut Chances) -> Self {
        // The spread of 8 %: assumed.
        let adult_g = bird.adult_g() * (1.0 + 0.08 * chances.normal());
        match fate {
            Fate::Grows => Self::growing(adult_g, chances),
            Fate::Weans => Self::weaned(adult_g, bird, chances, |_| 0.0),
            Fate::WasFat => {
                // 20 % on average in ten hand-reared Spix's macaws that all weaned (Groffen 2008).
                let share = chances.between(0.15, 0.20);
                let fall = Fall {
                    share,
                    from_day: 0.0,
                    days: f64::from(LONG_DAYS),
                };
                Self::along(adult_g, LONG_DAYS, bird, chances, |day| fall.left(day))
            }
            Fate::Fledges => {
                // "Large" in wild burrowing parrots, about 5 to 10 % in cockatiels, regained; 3 to 7 % within
                // 5 to 8 days and two weeks to gain it: assumed.
                let (depth, from) = (chances.between(0.03, 0.07), chances.between(5.0, 12.0));
                let days = chances.between(5.0, 8.0);
                let smooth = |part: f64| {
                    let part = part.clamp(0.0, 1.0);
                    part * part * (3.0 - 2.0 * part)
                };
                Self::along(adult_g, DAYS, bird, chances, move |day| {
                    let gone = day - from;
                    1.0 - depth * (smooth(gone / days) - smooth((gone - days) / 14.0))
                })
            }
            Fate::IsWeaned => Self::along(adult_g, LONG_DAYS, bird, chances, |_| 1.0),
            Fate::Dips => {
                // 1.5 to 4.5 % at the deepest, on the second or third day: up to 3 % in the first day
                // is expected by breeders (common practice); the rest assumed.
                let (depth, deepest) = (chances.between(0.015, 0.045), chances.between(1.5, 3.0));
                Self::weaned(adult_g, bird, chances, move |day| {
                    depth * (day / deepest) * (1.0 - day / deepest).exp()
                })
            }
            Fate::FallsIll(speed) => {
                let onset = if chances.happens(0.5) { 8 } else { 11 };
                let (low, high) = speed.loss_a_day();
                let a_day = chances.between(low, high);
                let life = Self::weaned(adult_g, bird, chances, move |day| {
                    // Nothing is asked of the model below half of the weight.
                    (a_day * (day - f64::from(onset)).max(0.0)).min(0.5)
                });
                let taken = |day: i32| adult_g * (a_day * f64::from(day - onset).max(0.0)).min(0.5);
                let curve = (0..).zip(&life.curve);
                Self {
                    onset: Some(onset),
                    curve: curve.map(|(day, grams)| grams + taken(day)).collect(),
                    leaves: (a_day / STARVED_A_DAY).min(1.0),
                    ..life
                }
            }
        }
    }

    /// Logistic growth with 0.112 a day from 24 g: growth constant from `AnAge`; its spread of 5 %
    /// and the hatching weight: assumed.
    fn growing(adult_g: f64, chances: &mut Chances) -> Self {
        let rate = 0.112 * (1.0 + 0.05 * chances.normal());
        let turn = ((adult_g - 24.0) / 24.0).ln() / rate;
        let age = chances.between(42.0, 63.0).floor();
        let grams = |day: i32| adult_g / (1.0 + (-rate * (age + f64::from(day) - turn)).exp());
        Self {
            age_days: perchlight::domain::quantity::count::rounded(age),
            onset: None,
            leaves: 0.0,
            curve: (0..=DAYS).map(grams).collect(),
            grams: wandering(DAYS, chances, grams),
        }
    }

    /// At its peak on the day of the handover.
    fn weaned(
        adult_g: f64,
        bird: Bird,
        chances: &mut Chances,
        extra_loss: impl Fn(f64) -> f64,
    ) -> Self {
        let fall = Fall::drawn(chances);
        Self::along(adult_g, DAYS, bird, chances, |day| {
            fall.left(day) - extra_loss(day)
        })
    }

    /// So much of the adult weight is left on each day.
    fn along(
        adult_g: f64,
        days: i32,
        bird: Bird,
        chances: &mut Chances,
        left: impl Fn(f64) -> f64,
    ) -> Self {
        let (from, to) = bird.ages();
        let age_days = perchlight::domain::quantity::count::rounded(chances.between(from, to));
        let grams = |day: i32| adult_g * left(f64::from(day));
        Self {
            age_days,
            onset: None,
            leaves: 0.0,
            curve: (0..=days).map(grams).collect(),
            grams: wandering(days, chances, grams),
        }
    }
}

/// Water and droppings let the weight of a healthy bird wander by 0.5 %, half of it from one day to
/// the next. Assumed; with the scale it makes the 10 to 20 g by which an adult large parrot's weight
/// varies (a magazine's vet page).
fn wandering(days: i32, chances: &mut Chances, grams: impl Fn(i32) -> f64) -> Vec<f64> {
    let mut off = 0.0;
    (0..=days)
        .map(|day| {
            off = 0.5 * off + 0.005 * 0.75_f64.sqrt() * chances.normal();
            grams(day) * (1.0 + off)
        })
        .collect()
}

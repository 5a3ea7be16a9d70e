//! Where a young chick stands against the growth of its species.
//!
//! The logistic curve has no loss after a peak, so nothing is said once the curve has come to
//! [`GROWN_SHARE`] of the adult weight: most part-weaned chicks are older.

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::EntryId;
use crate::domain::plan::species::Species;
use crate::domain::quantity::evidence::{Cited, Standing};
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::{Day, Lived, Moment};
use crate::domain::weight::growth_curve::GrowthCurve;
use crate::domain::weight::level::LevelNow;
use crate::domain::weight::readings::Reading;

/// Share of the adult weight from which a chick counts as grown. Ours.
pub const GROWN_SHARE: f64 = 0.95;

const ASSUMED_HATCH: &str = "assumed: weights at hatching are not measured ones";

const fn assumed(grams: i32) -> Cited<Grams> {
    Cited::new(Grams::whole(grams), Standing::Ours, ASSUMED_HATCH)
}

/// The weight at hatching that the curve of a species starts from: assumed, not measured.
///
/// `None` for species for which nothing was found to assume it from; they have no growth stand.
pub const fn hatch_weight(species: Species) -> Option<Cited<Grams>> {
    match species {
        Species::GreenWingedMacaw => Some(assumed(24)),
        Species::BlueAndYellowMacaw => Some(assumed(20)),
        Species::ScarletMacaw | Species::MilitaryMacaw => Some(assumed(22)),
        Species::GreyParrot => Some(assumed(13)),
        Species::WhiteCockatoo => Some(assumed(18)),
        Species::GreatGreenMacaw
        | Species::HyacinthMacaw
        | Species::ChestnutFrontedMacaw
        | Species::BlueFrontedAmazon
        | Species::YellowCrownedAmazon
        | Species::SouthernMealyAmazon
        | Species::SulphurCrestedCockatoo
        | Species::MoluccanCockatoo
        | Species::EclectusParrot
        | Species::Cockatiel
        | Species::SunParakeet
        | Species::GreenCheekedParakeet => None,
    }
}

/// Where a chick stands against the logistic growth of its species. Standing: ours, as the curve
/// starts from an assumed weight.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GrowthStand {
    /// Age, days since the start of the hatch day.
    pub age_days: f64,
    /// What the species' curve says for this age, g.
    pub expected_g: f64,
    /// The same for the lightest adult of the handbooks, g.
    pub low_g: f64,
    /// The same for the heaviest adult of the handbooks, g.
    pub high_g: f64,
    /// The species' curve made lighter or heavier to fit this chick; its adult weight is what the
    /// chick is on the way to.
    pub own_curve: GrowthCurve,
    /// Gain that this curve wants at this age, g/day.
    pub wanted_g_per_day: f64,
    /// Whether the weight should still be rising: the chick is younger and lighter than a grown one.
    ///
    /// By age and weight only. A growing chick that stands still or loses stays one: that is what a
    /// rule on stalled growth is there to see.
    pub is_growing: bool,
}

/// The growth stand at `now`.
///
/// `None` without a hatch day, a level, or a curve of the species, and once the species' curve has
/// reached [`GROWN_SHARE`] of the adult weight.
pub fn growth_stand(
    now: Moment,
    chick: &Chick,
    readings: &[Reading],
    doubted: &[EntryId],
    level: Option<LevelNow>,
) -> Option<GrowthStand> {
    let (hatched, level, last) = (chick.plan.hatched?, level?, readings.last()?);
    let profile = chick.plan.species.profile();
    let adult_g = profile.growth_adult?.value.as_g();
    let hatch_g = hatch_weight(chick.plan.species)?.value.as_g();
    let curve = GrowthCurve::from_hatching(adult_g, hatch_g, profile.growth_per_day?.value)?;
    let age_days = days_since_hatching(now.lived(last.offset), hatched);
    if age_days < 0.0 || curve.day_at_share(GROWN_SHARE)? <= age_days {
        return None;
    }
    let sound = readings
        .iter()
        .filter(|reading| !doubted.contains(&reading.id));
    let (days, grams): (Vec<f64>, Vec<f64>) = sound
        .map(|reading| (days_since_hatching(reading.lived(), hatched), reading.grams))
        .unzip();
    let own_curve = curve.scaled_to(&days, &grams)?;
    let with_adult = |adult: Grams| GrowthCurve {
        adult_g: adult.as_g(),
        ..curve
    };
    let (lightest, heaviest) = profile.adult_range.value;
    Some(GrowthStand {
        age_days,
        expected_g: curve.weight_g(age_days),
        low_g: with_adult(lightest).weight_g(age_days),
        high_g: with_adult(heaviest).weight_g(age_days),
        own_curve,
        wanted_g_per_day: own_curve.gain_g_per_day(age_days),
        is_growing: level.grams < GROWN_SHARE * adult_g,
    })
}

fn days_since_hatching(lived: Lived, hatched: Day) -> f64 {
    f64::from(lived.day.since(hatched)) + f64::from(lived.time.minutes()) / 1_440.0
}

//! Whether a typed weight may be a slip.

use crate::domain::journal::chick::Chick;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::Moment;
use crate::domain::weight::fall::HIGH_SD;
use crate::domain::weight::noise::Noise;
use crate::domain::weight::trend;

/// A typed weight that does not fit what is known, and what may have been meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Doubt {
    /// The last weight known: a reading, or the handover weight.
    pub last: Grams,
    /// What may have been meant: a slip of ten or a thousand, or ounces for grams.
    pub meant: Option<Grams>,
}

/// Whether a typed weight is so far off that it is asked about before it is kept.
///
/// Asked beyond 4 standard deviations of what is expected, at least 15 % (ours), which a confirmed
/// reading then passes: it is kept and counts for less, never dropped. The least of 15 % leaves room
/// for a full crop, which is asked about apart. Expected is what the trend says or, before it has
/// enough readings, the last weight.
pub fn doubt(now: Moment, chick: &Chick, typed: Grams) -> Option<Doubt> {
    let known = chick
        .weighings
        .iter()
        .rev()
        .find(|weighing| weighing.at <= now);
    let last = known
        .map(|weighing| weighing.what.weight)
        .or(chick.plan.reference.map(|reference| reference.weight))?;
    let (expected, sd) = trend::expected_reading(now, chick).unwrap_or_else(|| {
        let days = known.map_or(1.0, |weighing| now.days_since(weighing.at).max(1.0));
        let sd = Noise::of(now, chick).sd_g(last.as_g(), 1.0) * days.sqrt();
        (last.as_g(), sd)
    });
    let allowed = (4.0 * sd).max(expected * 0.15);
    let is_near = |grams: f64| (grams - expected).abs() <= allowed;
    if is_near(typed.as_g()) {
        return None;
    }
    let slips = [
        10.0,
        0.1,
        1_000.0,
        crate::domain::quantity::units::GRAMS_PER_OUNCE,
    ];
    let meant = slips
        .iter()
        .map(|factor| typed.as_g() * factor)
        .find(|grams| is_near(*grams));
    Some(Doubt {
        last,
        meant: meant
            .map(|grams| Grams::tenths_held(crate::domain::quantity::count::rounded(grams * 10.0))),
    })
}

/// Whether an empty-crop reading lies so far above what was expected that the crop may have held food.
pub fn is_high(before: &Chick, at: Moment, weight: Grams) -> bool {
    let expected = trend::expected_reading(at, before);
    expected.is_some_and(|(grams, sd)| weight.as_g() - grams > HIGH_SD * sd)
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::ChickId;
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::{CarePlan, Reference};
    use crate::domain::plan::species::Species;
    use crate::domain::time::moment::{Day, Offset};
    use crate::domain::weight::doubt::*;

    fn scenario() -> Scenario {
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let day = Day::from_date(2026, 11, 2).unwrap();
        plan.reference = Some(Reference {
            weight: Grams::whole(1_040),
            day,
        });
        Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC)
    }

    #[test]
    fn a_slip_of_ten_or_a_decimal_comma_for_thousands_is_asked_about() {
        let mut script = scenario();
        script.weigh(1, 1_020);
        let chick = script.chick().unwrap();
        let asked = |tenths| doubt(script.at(2, 7, 0), &chick, Grams::tenths_held(tenths));
        assert_eq!(asked(10_120), None);
        assert_eq!(asked(101_200).unwrap().meant, Some(Grams::whole(1_012)));
        assert_eq!(asked(1_012).unwrap().meant, Some(Grams::whole(1_012)));
        assert_eq!(asked(10).unwrap().meant, Some(Grams::whole(1_000)));
        // 36 oz typed as grams: 36 × 28.3495 = 1020.6 g
        assert_eq!(asked(360).unwrap().meant, Some(Grams::tenths_held(10_206)));
        assert_eq!(asked(14_000).unwrap().meant, None);
        assert_eq!(asked(14_000).unwrap().last, Grams::whole(1_020));
    }

    #[test]
    fn a_high_reading_asks_for_the_crop() {
        let mut script = scenario();
        for day in 1..=8 {
            script.weigh(day, 1_010);
        }
        let chick = script.chick().unwrap();
        let high = |grams| is_high(&chick, script.at(9, 6, 45), Grams::whole(grams));
        assert!(!high(1_012));
        assert!(!high(940));
        assert!(high(1_080));
    }
}

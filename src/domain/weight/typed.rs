//! A weight as it is typed, where the sign between thousands and hundreds is in doubt.

use crate::domain::journal::chick::Chick;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::Moment;
use crate::domain::weight::doubt::doubt;

/// What `1,010` or `1.010` means of a chick: a thousand and ten grams when that fits what is known of its
/// weight; `None` when nothing is known or it does not fit.
pub fn with_thousands(now: Moment, chick: &Chick, typed: &str) -> Option<Grams> {
    let is_known = chick.plan.reference.is_some() || !chick.weighings.is_empty();
    let digits = typed.trim().replace(['.', ','], "");
    let meant = Grams::parse(&digits).ok()?;
    (is_known && doubt(now, chick, meant).is_none()).then_some(meant)
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::ChickId;
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::{CarePlan, Reference};
    use crate::domain::plan::species::Species;
    use crate::domain::time::moment::{Day, Offset};
    use crate::domain::weight::typed::*;

    #[test]
    fn a_sign_of_thousands_is_understood_where_the_weight_fits() {
        let day = Day::from_date(2026, 11, 2).unwrap();
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let unknown = Scenario::new(ChickId([7; 12]), plan.clone(), day, Offset::UTC);
        let weight = Grams::whole(1_040);
        plan.reference = Some(Reference { weight, day });
        let script = Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC);
        let read = |script: &Scenario, typed| {
            with_thousands(script.at(1, 7, 0), &script.chick().unwrap(), typed)
        };
        assert_eq!(read(&script, "1,010"), Some(Grams::whole(1_010)));
        assert_eq!(read(&script, "1.010"), Some(Grams::whole(1_010)));
        // nearly twice the weight that it came with
        assert_eq!(read(&script, "1,990"), None);
        assert_eq!(read(&unknown, "1,010"), None);
    }
}

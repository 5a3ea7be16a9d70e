//! The first weeks in the new home: settle-in, the first vet visit, the wait apart from other birds.

use crate::domain::chick::Chick;
use crate::domain::evidence::{Cited, Standing};
use crate::domain::moment::Day;
use crate::domain::zone::Zone;

/// Days within which an avian vet sees the chick. Source: breeder contracts, 48 to 72 h.
pub const VET_DAYS: Cited<i32> =
    Cited::new(3, Standing::CommonPractice, "breeder contracts, 48 to 72 h");

/// Days apart from other birds. Sources read: 30 days at least on an avian clinic's page, 30 to 90 for
/// large parrots; 45 is ours between them.
pub const QUARANTINE_DAYS: Cited<i32> = Cited::new(
    45,
    Standing::Ours,
    "30 to 90 days on avian vets' pages; 45 is ours between them",
);

/// Share of the usual volume at the first feed, per cent. Common practice.
pub const FIRST_FEED_PCT: Cited<(i32, i32)> = Cited::new(
    (50, 75),
    Standing::CommonPractice,
    "breeders' practice after a journey",
);

/// The dates that count from the arrival.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FirstDays {
    /// The day it arrived.
    pub arrived: Day,
    /// The first day on which a feed may be dropped.
    pub settled_on: Day,
    /// The day by which an avian vet has seen it.
    pub vet_by: Day,
    /// The first day on which it may meet other birds.
    pub apart_until: Day,
}

/// The dates of a chick; `None` before its arrival was noted.
pub fn first_days(chick: &Chick, zone: &Zone) -> Option<FirstDays> {
    let arrived = chick
        .arrived
        .as_ref()
        .map(|arrived| zone.lived(arrived.at).day)?;
    Some(FirstDays {
        arrived,
        settled_on: arrived.plus(i32::from(chick.plan.settle_in_days)),
        vet_by: arrived.plus(VET_DAYS.value),
        apart_until: arrived.plus(QUARANTINE_DAYS.value),
    })
}

#[cfg(test)]
mod tests {
    use crate::domain::first_days::*;
    use crate::domain::journal::{Change, ChickId};
    use crate::domain::moment::Offset;
    use crate::domain::plan::CarePlan;
    use crate::domain::scenario::Scenario;
    use crate::domain::species::Species;

    #[test]
    fn every_date_counts_from_the_day_of_arrival() {
        let plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let day = Day::from_date(2026, 11, 2).unwrap();
        let mut script = Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC);
        assert_eq!(first_days(&script.chick().unwrap(), &script.zone()), None);
        script.note(1, 15, 0, Change::Arrived);
        let dates = first_days(&script.chick().unwrap(), &script.zone()).unwrap();
        assert_eq!(dates.arrived.date(), (2026, 11, 3));
        assert_eq!(dates.settled_on.date(), (2026, 11, 10));
        assert_eq!(dates.vet_by.date(), (2026, 11, 6));
        assert_eq!(dates.apart_until.date(), (2026, 12, 18));
    }
}

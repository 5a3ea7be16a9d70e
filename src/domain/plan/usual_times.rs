//! When chicks are usually fed, by how often: what a form of a new plan starts from.

use crate::domain::plan::care_plan::Slot;
use crate::domain::time::moment::WallTime;

/// Most feeds a day that have usual times: a part-weaned chick is on one to five.
pub const MOST_USUAL: usize = 5;

/// Feeds a day that a form starts from. Common practice at 9 to 12 weeks is two to three (see
/// [`crate::domain::plan::care_plan::CarePlan::default_for`]).
pub const USUAL: usize = 3;

/// The feeds of a day of `count`, 1 to [`MOST_USUAL`], with their usual times; a count outside gives the nearest.
///
/// Ours, within common practice: evenly over the day, at least eight hours of night, and the feed that goes
/// last, at bedtime, is there from the first.
pub fn usual_times(count: usize) -> Vec<(Slot, WallTime)> {
    let hours: &[(Slot, u16)] = match count {
        0 | 1 => &[(Slot::Bedtime, 21)],
        2 => &[(Slot::Morning, 7), (Slot::Bedtime, 21)],
        3 => &[(Slot::Morning, 7), (Slot::Midday, 14), (Slot::Bedtime, 21)],
        4 => &[
            (Slot::Morning, 7),
            (Slot::Midday, 12),
            (Slot::Afternoon, 17),
            (Slot::Bedtime, 22),
        ],
        _ => &[
            (Slot::EarlyMorning, 6),
            (Slot::Morning, 10),
            (Slot::Midday, 14),
            (Slot::Evening, 18),
            (Slot::Bedtime, 22),
        ],
    };
    let times = hours.iter();
    times
        .map(|(slot, hour)| (*slot, WallTime::from_hour(*hour)))
        .collect()
}

#[cfg(test)]
mod tests {
    use crate::domain::plan::care_plan::{CarePlan, PlannedFeed};
    use crate::domain::plan::species::Species;
    use crate::domain::plan::usual_times::*;
    use crate::domain::quantity::units::Millilitres;

    #[test]
    fn each_count_makes_a_plan_without_a_fault_and_with_a_whole_night() {
        for count in 1..=MOST_USUAL {
            let times = usual_times(count);
            assert_eq!(times.len(), count);
            let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
            let volume = Millilitres::whole(40);
            let feeds = times.into_iter();
            let feeds = feeds.map(|(slot, time)| PlannedFeed { slot, time, volume });
            plan.drop_order.clear();
            plan.set_feeds(feeds.collect());
            assert_eq!(plan.faults(), [], "{count}");
            assert!(plan.night_minutes() >= Some(8 * 60), "{count}");
            assert_eq!(plan.drop_order.last(), Some(&Slot::Bedtime), "{count}");
        }
    }
}

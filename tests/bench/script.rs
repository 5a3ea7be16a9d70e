//! A long journal of one made-up chick, for measuring.

use perchlight::domain::journal::entries::{
    Change, ChickId, CropAtWeighing, CropFeel, CropState, SolidsEaten,
};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::plan::care_plan::{CarePlan, Reference, Slot};
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::Grams;
use perchlight::domain::time::moment::{Day, Offset};

pub(crate) const CHICK: ChickId = ChickId(*b"bench-chick!");

/// Entries a day: three feeds, a morning weighing, one after a feed, three crop looks, solids.
const A_DAY: usize = 9;

/// How many days so many entries take.
pub(crate) fn days_of(entries: usize) -> i32 {
    i32::try_from(entries / A_DAY).unwrap()
}

/// So many entries from the day after `start` on.
pub(crate) fn script(entries: usize, start: Day) -> Scenario {
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    plan.reference = Some(Reference {
        weight: Grams::whole(1_040),
        day: start,
    });
    plan.hatched = Some(start.plus(-70));
    let mut script = Scenario::new(CHICK, plan, start, Offset::UTC);
    for day in 1..=days_of(entries) {
        let grams = 1_020 + (day * 7919) % 21 - 10;
        let crop = |state| Change::CropSeen {
            state,
            feel: CropFeel::Soft,
        };
        script.weigh(day, grams);
        script.feed(day, 7, 0, Slot::Morning, 60);
        let full = Change::Weighed {
            weight: Grams::whole(grams + 62),
            crop: CropAtWeighing::AfterFeed,
        };
        script.note(day, 7, 20, full);
        script.note(day, 11, 0, crop(CropState::Quarter));
        script.feed(day, 14, 0, Slot::Midday, 40);
        let solids = Change::SolidsSeen {
            what: "sweet potato".to_owned(),
            eaten: SolidsEaten::Little,
        };
        script.note(day, 16, 0, solids);
        script.note(day, 18, 0, crop(CropState::Quarter));
        script.note(day, 20, 30, crop(CropState::Flat));
        script.feed(day, 21, 0, Slot::Bedtime, 60);
    }
    script
}

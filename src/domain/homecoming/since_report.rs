//! What happened to a chick since its last report: what its breeder asks first.

use std::collections::BTreeSet;

use crate::domain::journal::chick::{Chick, FeedOutcome, Noted, WeaningStep};
use crate::domain::journal::entries::CropAtWeighing;
use crate::domain::journal::signs::Sign;
use crate::domain::quantity::order::set_of;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::{Day, Lived, Moment, Offset};

/// What happened since the last report, or since the coming home before the first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SinceReport {
    /// From when on.
    pub from: Lived,
    /// Whether that was a report.
    pub is_report: bool,
    /// Lowest and highest weight with an empty crop.
    pub weights: Option<(Grams, Grams)>,
    /// Offers that were refused.
    pub refusals: usize,
    /// Signs seen, each once, in the order of [`Sign`].
    pub signs: Vec<Sign>,
    /// Feeds dropped and brought back, by time.
    pub steps: Vec<Noted<WeaningStep>>,
    /// Whole days, today left out, on which nothing was noted of how it is.
    pub days_without_notes: i32,
}

/// What happened up to `now`, after `last`, when the last report went.
pub fn since_report(
    now: Moment,
    offset: Offset,
    chick: &Chick,
    last: Option<Moment>,
) -> SinceReport {
    let from = last.unwrap_or_else(|| chick.home_since());
    let is_new = |at: Moment| from <= at && at <= now;
    let weights = chick
        .weighings
        .iter()
        .filter(|weighing| weighing.what.crop == CropAtWeighing::Empty && is_new(weighing.at));
    let weights: Vec<Grams> = weights.map(|weighing| weighing.what.weight).collect();
    let lowest = weights.iter().min().copied();
    let refused = chick
        .feeds
        .iter()
        .filter(|feed| matches!(feed.what.outcome, FeedOutcome::Refused { .. }) && is_new(feed.at));
    let signs = chick.signs.iter().filter(|sign| is_new(sign.at));
    let signs: BTreeSet<Sign> = set_of(signs.map(|sign| sign.what));
    let steps = chick.weaning.iter().filter(|step| is_new(step.at));
    SinceReport {
        from: from.lived(offset),
        is_report: last.is_some(),
        weights: lowest.zip(weights.iter().max().copied()),
        refusals: refused.count(),
        signs: signs.into_iter().collect(),
        steps: steps.cloned().collect(),
        days_without_notes: days_without_notes(
            from.lived(offset).day,
            now.lived(offset).day,
            chick,
        ),
    }
}

fn days_without_notes(from: Day, today: Day, chick: &Chick) -> i32 {
    let mut noted: BTreeSet<Day> = BTreeSet::new();
    noted.extend(days(&chick.weighings));
    noted.extend(days(&chick.feeds));
    noted.extend(days(&chick.crops));
    noted.extend(days(&chick.droppings));
    noted.extend(days(&chick.droppings_counts));
    noted.extend(days(&chick.solids));
    noted.extend(days(&chick.signs));
    let between = (1..today.since(from)).map(|after| from.plus(after));
    let empty = between.filter(|day| !noted.contains(day)).count();
    i32::try_from(empty).unwrap_or(i32::MAX)
}

fn days<T>(notes: &[Noted<T>]) -> impl Iterator<Item = Day> {
    notes.iter().map(|note| note.lived().day)
}

#[cfg(test)]
mod tests {
    use crate::domain::homecoming::since_report::*;
    use crate::domain::journal::entries::{Change, CropAtWeighing};
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::warnings::rules::trial::macaw;

    #[test]
    fn it_tells_what_came_after_the_last_report_and_nothing_before() {
        let mut script = macaw();
        script.weigh(1, 1_020).weigh(2, 990).weigh(3, 1_001);
        script.note(
            3,
            20,
            0,
            Change::Weighed {
                weight: Grams::whole(1_060),
                crop: CropAtWeighing::AfterFeed,
            },
        );
        script.note(1, 8, 0, Change::refused(Some(Slot::Morning)));
        script.note(3, 8, 0, Change::refused(Some(Slot::Morning)));
        script.note(3, 9, 0, Change::SignSeen { sign: Sign::Dull });
        script.note(3, 10, 0, Change::SignSeen { sign: Sign::Dull });
        let slot = Slot::Midday;
        let by_breeder = true;
        script.note(3, 11, 0, Change::FeedDropped { slot, by_breeder });
        let chick = script.chick().unwrap();
        let last = script.at(1, 22, 0);
        let told = since_report(script.at(6, 9, 0), Offset::UTC, &chick, Some(last));
        assert_eq!(told.weights, Some((Grams::whole(990), Grams::whole(1_001))));
        assert_eq!((told.refusals, told.signs), (1, vec![Sign::Dull]));
        assert_eq!((told.steps.len(), told.is_report), (1, true));
        // Days 4 and 5; 2 and 3 have notes, 1 and 6 are not whole.
        assert_eq!(told.days_without_notes, 2);
        // Before the first report all since the coming home counts.
        let told = since_report(script.at(6, 9, 0), Offset::UTC, &chick, None);
        assert_eq!(told.weights, Some((Grams::whole(990), Grams::whole(1_020))));
        assert_eq!((told.refusals, told.is_report), (2, false));
    }
}

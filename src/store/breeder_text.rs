//! Plans that a breeder's device keeps beside its records, as text: her own words, and a template a species.
//!
//! Form: that of a backup, each plan adding a chick of its own, so that older texts are read as old backups are.

use crate::domain::journal::entries::{Change, ChickId, Entry, EntryId};
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::time::moment::{Moment, Offset};
use crate::store::saved::{Limits, entries_from_text, entries_to_text};

/// The text of these plans, in their order.
pub fn plans_to_text(plans: &[CarePlan]) -> String {
    let entries = (0_u8..).zip(plans).map(|(place, plan)| {
        let mut id = [0; 12];
        id[0] = place;
        Entry {
            at: Moment::from_seconds(i64::from(place)),
            id: EntryId(id),
            chick: ChickId(id),
            noted_at: Moment::from_seconds(i64::from(place)),
            offset: Offset::UTC,
            by: String::new(),
            change: Change::ChickAdded(Box::new(plan.clone())),
        }
    });
    entries_to_text(&entries.collect::<Vec<_>>())
}

/// The plans of a text; none of one that cannot be read, which is then written anew with the next change.
pub fn plans_from_text(text: &str) -> Vec<CarePlan> {
    let entries = entries_from_text(text, Limits::FILE).unwrap_or_default();
    let plans = entries.iter().filter_map(|entry| entry.change.plan());
    plans.cloned().collect()
}

#[cfg(test)]
mod tests {
    use crate::domain::plan::species::Species;
    use crate::store::breeder_text::*;

    #[test]
    fn every_plan_comes_back_in_its_order_and_a_broken_text_gives_none() {
        let mut plans: Vec<CarePlan> = Species::ALL.map(CarePlan::default_for).to_vec();
        plans.reverse();
        let text = plans_to_text(&plans);
        assert_eq!(plans_from_text(&text), plans);
        assert_eq!(plans_from_text(&text[1..]), []);
        assert_eq!(plans_from_text(""), []);
    }
}

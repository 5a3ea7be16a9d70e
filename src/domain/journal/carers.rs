//! Who did what: the notes of each carer since a moment.

use std::collections::BTreeMap;

use crate::domain::journal::entries::{Change, ChickId, Entry, Journal};
use crate::domain::quantity::order::sorted_by;
use crate::domain::time::moment::Moment;

/// What one carer noted.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct CarerNotes {
    /// What the carer is called; empty when no name was given.
    pub by: String,
    /// Feeds given, and those refused.
    pub feeds: usize,
    /// Weighings.
    pub weights: usize,
    /// Everything else that was seen or decided.
    pub others: usize,
}

/// The notes of each carer about a chick that happened since a moment, who noted most first. What was taken back
/// does not count, nor what only tells of the record itself.
pub fn notes_since(journal: &Journal, chick: ChickId, since: Moment) -> Vec<CarerNotes> {
    let retracted = journal.retracted();
    let mut carers: BTreeMap<&str, CarerNotes> = BTreeMap::new();
    let entries = journal.of_chick(chick).into_iter();
    for entry in entries.filter(|entry| entry.at >= since && !retracted.contains(&entry.id)) {
        count(entry, carers.entry(&entry.by).or_default());
    }
    let notes = carers.into_iter().map(|(by, notes)| CarerNotes {
        by: by.to_owned(),
        ..notes
    });
    let notes: Vec<CarerNotes> = notes.filter(|notes| notes.sum() > 0).collect();
    sorted_by(notes, |one, other| other.sum().cmp(&one.sum()))
}

/// The names of those who noted something about a chick, who noted last first.
pub fn carers(journal: &Journal, chick: ChickId) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for entry in journal.of_chick(chick).into_iter().rev() {
        if !entry.by.is_empty() && !names.contains(&entry.by) {
            names.push(entry.by.clone());
        }
    }
    names
}

impl CarerNotes {
    const fn sum(&self) -> usize {
        let seen = self.feeds.saturating_add(self.weights);
        seen.saturating_add(self.others)
    }
}

fn count(entry: &Entry, notes: &mut CarerNotes) {
    let is_food = matches!(
        entry.change,
        Change::Fed { .. } | Change::FeedRefused { .. }
    );
    let count = if is_food {
        &mut notes.feeds
    } else if matches!(entry.change, Change::Weighed { .. }) {
        &mut notes.weights
    } else if entry.change.is_of_care() {
        &mut notes.others
    } else {
        return;
    };
    *count = count.saturating_add(1);
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::carers::{CarerNotes, carers, notes_since};
    use crate::domain::journal::entries::{Change, CropAtWeighing, Entry, EntryId, Journal};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::quantity::units::Grams;

    fn noted(script: &Scenario, id: u8, by: &str, day: i32, change: Change) -> Entry {
        let first = script.journal().entries().first().cloned();
        let first = first.expect("the chick was added");
        let at = script.at(day, 7, 0);
        Entry {
            id: EntryId([id; 12]),
            at,
            noted_at: at,
            by: by.to_owned(),
            change,
            ..first
        }
    }

    fn weighed(grams: i32) -> Change {
        let (weight, crop) = (Grams::whole(grams), CropAtWeighing::Empty);
        Change::Weighed { weight, crop }
    }

    #[test]
    fn the_notes_of_each_carer_since_a_moment_are_counted_without_what_was_taken_back() {
        let script = crate::domain::warnings::rules::trial::macaw();
        let id = EntryId([3; 12]);
        let mut journal = Journal::from_entries(script.journal().entries().to_vec());
        let chick = journal.chicks().first().copied().expect("one chick");
        for entry in [
            noted(&script, 1, "Olive", 2, weighed(990)),
            noted(&script, 2, "Olive", 4, weighed(991)),
            noted(&script, 3, "Olive", 4, Change::refused(None)),
            noted(&script, 4, "Ben", 4, Change::refused(None)),
            noted(&script, 5, "Ben", 4, Change::DrinkingSeen),
            noted(&script, 6, "Olive", 4, Change::Retracted { id }),
        ] {
            journal.insert(entry);
        }
        let of = |by: &str, feeds, weights, others| CarerNotes {
            by: by.to_owned(),
            feeds,
            weights,
            others,
        };
        let since = script.at(4, 7, 0);
        let all = notes_since(&journal, chick, since);
        assert_eq!(all, [of("Ben", 1, 0, 1), of("Olive", 0, 1, 0)]);
        let later = script.at(4, 7, 1);
        assert_eq!(notes_since(&journal, chick, later), []);
        let names = carers(&journal, chick);
        assert!(names.contains(&"Olive".to_owned()) && names.contains(&"Ben".to_owned()));
    }
}

//! Notes of food put together into sittings: one sitting is what a person would call one feed.
//!
//! Two people may have noted the same food. Until somebody has said so, the larger amount counts and no
//! more, so that neither a gap nor a volume is judged by food that was perhaps never there.

use crate::domain::journal::chick::{Chick, FeedNote, FeedOutcome, Noted};
use crate::domain::journal::entries::{EntryId, SameFoodAnswer};
use crate::domain::plan::care_plan::{PlannedFeed, Slot};
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::Moment;

/// Notes this near to each other are one sitting, minutes. Ours.
pub const SITTING_MINUTES: i64 = 45;

/// After an offer of which less than half was taken, a try this long after the latest one still belongs
/// to it, minutes. Source: a breeder's feeding sheet, "try again after 2 to 3 h"; that it counts: ours.
pub const TRY_MINUTES: i64 = 180;

/// A try may come this long after its time, minutes: as long as [`TRY_MINUTES`] leaves of the usual
/// two and a half hours. Ours.
const LATE_TRY_MINUTES: i64 = 30;

/// So many of the latest sittings a note may belong to: more than are begun in [`TRY_MINUTES`]. Ours.
const NEAR_SITTINGS: usize = 8;

/// What was offered at one sitting.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sitting {
    /// Its notes, in order.
    pub notes: Vec<EntryId>,
    /// When it began: its first note.
    pub at: Moment,
    /// The latest try.
    pub latest: Moment,
    /// The first food; `None` when all was refused.
    pub fed_from: Option<Moment>,
    /// The last food; gap and crop hours run from there. `None` when all was refused.
    pub food_at: Option<Moment>,
    /// What counts as taken.
    pub taken: Millilitres,
    /// The most that was offered at one try; nothing when nobody noted it.
    pub offered: Millilitres,
    /// How often it was tried.
    pub tries: usize,
    /// The planned feed that a person said it is.
    pub counts_as: Option<Slot>,
    /// Notes of food that may be the same food, as long as nobody has answered.
    pub asked: Vec<EntryId>,
}

impl Sitting {
    /// Whether a quarter of `planned` or more was taken: a feed, not a taste of it.
    pub fn is_feed(&self, planned: Millilitres) -> bool {
        self.food_at.is_some() && self.taken.tenths() * 4 >= planned.tenths()
    }

    /// Whether so little was taken that another try is made: nothing, or less than half of the offer.
    pub const fn is_little(&self) -> bool {
        is_little(self.taken, self.offered)
    }

    /// Takes in a later sitting of the same feed.
    pub fn join(&mut self, later: &Self) {
        self.notes.extend(&later.notes);
        self.latest = self.latest.max(later.latest);
        self.fed_from = self.fed_from.or(later.fed_from);
        self.food_at = self.food_at.max(later.food_at);
        self.taken = Millilitres::tenths_held(self.taken.tenths() + later.taken.tenths());
        self.offered = self.offered.max(later.offered);
        self.tries += later.tries;
        self.asked.extend(&later.asked);
    }
}

/// The sittings of the notes from `from` up to `until`, in order of their beginning.
///
/// A sitting that was under way at `from` is told whole.
pub fn sittings(chick: &Chick, from: Moment, until: Moment) -> Vec<Sitting> {
    let mut first = chick.feeds.partition_point(|note| note.at < from);
    let try_minutes = try_minutes(chick);
    let longest = try_minutes.max(SITTING_MINUTES);
    while let Some((before, note)) = pair_at(&chick.feeds, first)
        && note.at.minutes_since(before.at) <= longest
    {
        first -= 1;
    }
    let mut groups: Vec<Group<'_>> = Vec::new();
    let notes = chick.feeds.iter().skip(first);
    for note in notes.take_while(|note| note.at <= until) {
        if matches!(note.what.outcome, FeedOutcome::PassedOver { .. }) {
            continue;
        }
        let is_near = |group: &&mut Group<'_>| note.at.minutes_since(group.latest()) <= longest;
        let mut near = groups.iter_mut().rev().take(NEAR_SITTINGS).filter(is_near);
        match near.find(|group| group.takes(note, chick, try_minutes)) {
            Some(group) => group.notes.push(note),
            None => groups.push(Group { notes: vec![note] }),
        }
    }
    let sittings = groups.iter().map(|group| group.sitting(chick));
    sittings.filter(|sitting| sitting.latest >= from).collect()
}

/// How long after the latest try another one belongs to it: [`TRY_MINUTES`] or half an hour after the
/// plan's longest wait where that is more, or half of the shortest time between two feeds still given
/// where that is less. Ours.
pub fn try_minutes(chick: &Chick) -> i64 {
    let feeds = chick.feeds_in_force(Moment::LATEST);
    let minutes = |feed: &PlannedFeed| i64::from(feed.time.care_minutes());
    let between = feeds.iter().zip(feeds.iter().skip(1));
    let shortest = between
        .map(|(feed, next)| minutes(next) - minutes(feed))
        .min();
    let longest_wait = chick.plan.retries_minutes.iter().max();
    let waited = longest_wait.map_or(0, |wait| i64::from(*wait) + LATE_TRY_MINUTES);
    let longest = TRY_MINUTES.max(waited);
    shortest.map_or(longest, |shortest| longest.min(shortest / 2))
}

fn pair_at(
    notes: &[Noted<FeedNote>],
    place: usize,
) -> Option<(&Noted<FeedNote>, &Noted<FeedNote>)> {
    notes.get(place.checked_sub(1)?).zip(notes.get(place))
}

/// The notes of one sitting.
struct Group<'a> {
    notes: Vec<&'a Noted<FeedNote>>,
}

impl Group<'_> {
    fn first(&self) -> Moment {
        self.notes.first().map_or(Moment::EARLIEST, |note| note.at)
    }

    fn latest(&self) -> Moment {
        self.notes.last().map_or(Moment::EARLIEST, |note| note.at)
    }

    fn counts_as(&self) -> Option<Slot> {
        self.notes.iter().find_map(|note| note.what.counts_as)
    }

    fn takes(&self, note: &Noted<FeedNote>, chick: &Chick, try_minutes: i64) -> bool {
        let said = self.counts_as().zip(note.what.counts_as);
        if said.is_some_and(|(one, other)| one != other) {
            return false;
        }
        let is_apart = |own: &&Noted<FeedNote>| {
            answer(chick, &[own.id, note.id]) == Some(SameFoodAnswer::TwoFeeds)
        };
        if self.notes.iter().any(is_apart) {
            return false;
        }
        // After a refusal the food begins the sitting anew: who notes it too means the same.
        let mut food = self.notes.iter().filter(|own| taken(own) > 0);
        let from = food.next().map_or(self.first(), |food| food.at);
        if note.at.minutes_since(from) <= SITTING_MINUTES {
            return true;
        }
        // What was named may be another feed: which one the time of this sitting tells is not known here.
        let is_apart = note.what.counts_as.is_some() && note.what.counts_as != self.counts_as();
        is_little(self.taken(chick).0, self.offered())
            && !is_apart
            && note.at.minutes_since(self.latest()) <= try_minutes
    }

    fn offered(&self) -> Millilitres {
        let offered = self.notes.iter().map(|note| offered(note.what.outcome));
        offered.max().unwrap_or(Millilitres::whole(0))
    }

    /// What counts as taken, and the notes that somebody is to be asked about.
    fn taken(&self, chick: &Chick) -> (Millilitres, Vec<EntryId>) {
        let food = self.notes.iter().filter(|note| taken(note) > 0);
        let food: Vec<&Noted<FeedNote>> = food.copied().collect();
        let sum: i32 = food.iter().map(|note| taken(note)).sum();
        let ids: Vec<EntryId> = food.iter().map(|note| note.id).collect();
        if !may_be_the_same(&food, chick) {
            return (Millilitres::tenths_held(sum), Vec::new());
        }
        let answer = answer(chick, &ids);
        match answer {
            Some(SameFoodAnswer::TwoParts | SameFoodAnswer::TwoFeeds) => {
                (Millilitres::tenths_held(sum), Vec::new())
            }
            Some(SameFoodAnswer::NotedTwice) | None => {
                let asked = if answer.is_none() { ids } else { Vec::new() };
                (Millilitres::tenths_held(largest(&food)), asked)
            }
        }
    }

    fn sitting(&self, chick: &Chick) -> Sitting {
        let (taken_in_all, asked) = self.taken(chick);
        let mut food = self.notes.iter().filter(|note| taken(note) > 0);
        let fed_from = food.clone().next().map(|note| note.at);
        Sitting {
            notes: self.notes.iter().map(|note| note.id).collect(),
            at: self.first(),
            latest: self.latest(),
            fed_from,
            food_at: food.next_back().map(|note| note.at),
            taken: taken_in_all,
            offered: self.offered(),
            tries: self.notes.len(),
            counts_as: self.counts_as(),
            asked,
        }
    }
}

const fn is_little(taken: Millilitres, offered: Millilitres) -> bool {
    taken.tenths() == 0 || taken.tenths() * 2 < offered.tenths()
}

fn taken(note: &Noted<FeedNote>) -> i32 {
    note.what.outcome.taken().tenths()
}

const fn offered(outcome: FeedOutcome) -> Millilitres {
    match outcome {
        FeedOutcome::Given { offered, .. } | FeedOutcome::Refused { offered } => offered,
        FeedOutcome::PassedOver { .. } => Millilitres::whole(0),
    }
}

/// Whether two of these notes may tell of the same food: two people wrote them, or nobody gave a name and
/// together they are more than a feed of the plan.
fn may_be_the_same(food: &[&Noted<FeedNote>], chick: &Chick) -> bool {
    let planned = chick.plan.feeds.iter().map(|feed| feed.volume.tenths());
    let planned = planned.max().unwrap_or_default();
    let may_be = |one: &Noted<FeedNote>, other: &Noted<FeedNote>| {
        let is_near = other.at.minutes_since(one.at) <= SITTING_MINUTES;
        let are_unnamed = one.what.by.is_empty() && other.what.by.is_empty();
        is_near
            && (one.what.by != other.what.by || are_unnamed && taken(one) + taken(other) > planned)
    };
    food.iter().zip(1..).any(|(one, next)| {
        let later = food.iter().skip(next);
        later.into_iter().any(|other| may_be(one, other))
    })
}

/// The most that one person noted; a note without a name stands alone.
fn largest(food: &[&Noted<FeedNote>]) -> i32 {
    let by_author = food.iter().map(|note| {
        let same = food.iter().filter(|other| {
            other.id == note.id || !note.what.by.is_empty() && other.what.by == note.what.by
        });
        same.map(|note| taken(note)).sum()
    });
    by_author.max().unwrap_or_default()
}

/// The latest answer about all of these notes.
fn answer(chick: &Chick, notes: &[EntryId]) -> Option<SameFoodAnswer> {
    let about = chick.same_food.iter().rev();
    about
        .filter(|said| notes.iter().all(|id| said.notes.contains(id)))
        .map(|said| said.answer)
        .next()
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use crate::domain::feeding::sittings::*;
    use crate::domain::journal::entries::{Change, ChickId, Journal, Response};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::warnings::rules::trial::macaw;

    fn found(script: &Scenario) -> Vec<Sitting> {
        sittings(&script.chick().unwrap(), Moment::EARLIEST, Moment::LATEST)
    }

    /// How much each sitting took, tenths of a millilitre.
    fn taken(script: &Scenario) -> Vec<i32> {
        let taken = found(script).into_iter();
        taken.map(|sitting| sitting.taken.tenths()).collect()
    }

    fn part(taken: i32, offered: i32) -> Change {
        Change::Fed {
            counts_as: None,
            taken: Millilitres::whole(taken),
            offered: Millilitres::whole(offered),
            served_at: None,
            response: Response::Slow,
        }
    }

    fn same(script: &Scenario, answer: SameFoodAnswer) -> Change {
        let notes = found(script)[0].notes.clone();
        Change::SameFood { notes, answer }
    }

    #[test]
    fn notes_within_three_quarters_of_an_hour_are_one_sitting_and_add_up() {
        let mut script = macaw();
        script
            .food(1, 7, 0, 40)
            .food(1, 7, 45, 40)
            .food(1, 7, 46, 10);
        assert_eq!(taken(&script), [800, 100]);
        assert_eq!(found(&script)[0].food_at, Some(script.at(1, 7, 45)));
    }

    #[test]
    fn a_try_within_three_hours_belongs_to_an_offer_of_which_less_than_half_was_taken() {
        let tried = |first, hour, minute| {
            let mut script = macaw();
            script.note(1, 14, 0, part(first, 80));
            script.note(1, hour, minute, part(30, 80));
            found(&script).len()
        };
        assert_eq!(tried(39, 17, 0), 1);
        assert_eq!(tried(39, 17, 1), 2);
        assert_eq!(tried(40, 17, 0), 2);
        // each try begins the three hours anew
        let mut script = macaw();
        for hour in [14, 16, 18] {
            script.note(1, hour, 30, Change::refused(None));
        }
        assert_eq!(found(&script)[0].tries, 3);
    }

    #[test]
    fn of_the_same_food_noted_by_two_people_the_larger_counts_until_somebody_says() {
        let mut script = macaw();
        script
            .food(1, 7, 0, 80)
            .by("Ana")
            .food(1, 7, 30, 70)
            .by("Ben");
        assert_eq!(taken(&script), [800]);
        assert_eq!(found(&script)[0].asked.len(), 2);
        for (answer, is_taken) in [
            (SameFoodAnswer::NotedTwice, vec![800]),
            (SameFoodAnswer::TwoParts, vec![1_500]),
            (SameFoodAnswer::TwoFeeds, vec![800, 700]),
        ] {
            let mut script = script.clone();
            script.note(1, 8, 0, same(&script, answer));
            assert_eq!(taken(&script), is_taken);
            assert_eq!(found(&script)[0].asked, []);
        }
    }

    #[test]
    fn one_person_who_notes_two_parts_is_not_asked_and_two_without_a_name_are_beyond_a_feed() {
        let asked = |names: [&str; 2], ml| {
            let mut script = macaw();
            script
                .food(1, 7, 0, ml)
                .by(names[0])
                .food(1, 7, 20, ml)
                .by(names[1]);
            found(&script)[0].asked.len()
        };
        assert_eq!(asked(["Ana", "Ana"], 80), 0);
        // a feed of the plan is 80 ml
        assert_eq!(asked(["", ""], 40), 0);
        assert_eq!(asked(["", ""], 41), 2);
        assert_eq!(asked(["Ana", "Ben"], 40), 2);
    }

    #[test]
    fn what_a_person_said_to_be_two_feeds_is_two_sittings() {
        let mut script = macaw();
        script
            .feed(1, 14, 0, Slot::Midday, 80)
            .feed(1, 14, 30, Slot::Bedtime, 80);
        assert_eq!(found(&script).len(), 2);
    }

    proptest! {
        #[test]
        fn the_order_of_noting_changes_nothing_and_each_note_is_in_one_sitting(
            notes in prop::collection::vec((0..2_880_i32, 0..9_i32, 0..3_usize), 0..20),
            turn in 0..20_usize,
            from in 0..2_880_i32,
        ) {
            let mut script = macaw();
            for (minute, tens, name) in &notes {
                script.note(1, 0, *minute, part(tens * 10, 80)).by(["", "Ana", "Ben"][*name]);
            }
            let mut entries = script.journal().entries().to_vec();
            let turn = turn.min(entries.len());
            entries.rotate_left(turn);
            let mut journal = Journal::default();
            for entry in entries {
                journal.insert(entry);
            }
            let again = Chick::from_journal(&journal, ChickId([7; 12])).unwrap();
            let all = found(&script);
            prop_assert_eq!(&all, &sittings(&again, Moment::EARLIEST, Moment::LATEST));
            let mut ids: Vec<EntryId> = all.iter().flat_map(|one| one.notes.clone()).collect();
            let count = ids.len();
            ids.sort_unstable();
            ids.dedup();
            prop_assert_eq!((count, ids.len()), (notes.len(), notes.len()));
            // looking back less far tells the same of what is seen
            let from = script.at(1, 0, from);
            let late: Vec<Sitting> = all.into_iter().filter(|one| one.latest >= from).collect();
            prop_assert_eq!(late, sittings(&again, from, Moment::LATEST));
        }
    }
}

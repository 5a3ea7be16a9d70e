//! What was noted on three days in a row: feeds refused, solids eaten, droppings seen.

use crate::domain::feeding::schedule::{OWN_NAME_EARLY_MINUTES, OWN_NAME_LATE_MINUTES};
use crate::domain::journal::chick::{FeedNote, FeedOutcome, Noted};
use crate::domain::journal::entries::{Droppings, SolidsEaten};
use crate::domain::plan::care_plan::{PlannedFeed, Slot};
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::{Day, Moment};
use crate::domain::weaning::facts::{Answer, WeaningFacts};

/// Days in a row that must agree.
///
/// Common practice for refused feeds and for solids; for droppings: ours.
pub(crate) const DAYS: i32 = 3;

/// What one day says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum DayMark {
    /// It speaks for a drop.
    For,
    /// It speaks against it.
    Against,
    /// Nothing was noted that says either.
    Unknown,
    /// Today, and it can still say something.
    Open,
}

/// What the last three days say; today counts once it has spoken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct ThreeDays {
    /// How many of the three speak for a drop.
    pub(crate) days_for: usize,
    /// Whether all three do.
    pub(crate) answer: Answer,
    /// The first day on which all three can; `None` when they do.
    pub(crate) met_from: Option<Day>,
}

fn three_days(today: Day, mark: impl Fn(Day) -> DayMark) -> ThreeDays {
    let is_today_open = mark(today) == DayMark::Open;
    let next = today.plus(i32::from(!is_today_open));
    // latest day first
    let marks: Vec<DayMark> = (1..=DAYS).map(|back| mark(next.plus(-back))).collect();
    let days_for = marks.iter().filter(|mark| **mark == DayMark::For).count();
    let in_a_row = marks
        .iter()
        .take_while(|mark| **mark == DayMark::For)
        .count();
    let missing = DAYS - i32::try_from(in_a_row).unwrap_or(DAYS);
    let answer = if missing == 0 {
        Answer::Yes
    } else if marks.contains(&DayMark::Against) {
        Answer::No
    } else {
        Answer::NotEnoughData
    };
    ThreeDays {
        days_for,
        answer,
        met_from: (missing > 0).then(|| next.plus(missing - 1)),
    }
}

/// Whether a feed was refused, or less than half of what was offered taken, three days in a row.
pub(crate) fn feed_unwanted(facts: &WeaningFacts<'_>, slot: Slot) -> ThreeDays {
    let today = facts.today();
    let Some(planned) = facts.chick.plan.feed(slot).copied() else {
        return three_days(today, |_| DayMark::Unknown);
    };
    let recent = recent(facts.now, &facts.chick.feeds);
    let recent: Vec<(Day, &FeedOutcome)> = recent
        .filter(|note| note.what.slot == slot)
        .map(|note| (feed_day(note, planned), &note.what.outcome))
        .collect();
    three_days(today, |day| {
        let outcomes = recent.iter().filter(|(noted, _)| *noted == day);
        feed_mark(outcomes.map(|(_, outcome)| *outcome), day == today)
    })
}

/// One day's notes of one feed. Parts of a feed add up, so a second try that is taken counts.
fn feed_mark<'a>(outcomes: impl Iterator<Item = &'a FeedOutcome>, is_today: bool) -> DayMark {
    let nothing = Millilitres::whole(0);
    let (mut is_noted, mut is_refused, mut taken_tenths) = (false, false, 0);
    let mut most_offered = nothing;
    for outcome in outcomes {
        is_noted = true;
        match outcome {
            FeedOutcome::Given { taken, offered, .. } => {
                taken_tenths += taken.tenths();
                most_offered = most_offered.max(*offered);
            }
            FeedOutcome::Refused => is_refused = true,
            FeedOutcome::PassedOver(_) => {}
        }
    }
    if most_offered > nothing {
        if taken_tenths * 2 < most_offered.tenths() {
            DayMark::For
        } else {
            DayMark::Against
        }
    } else if is_refused {
        DayMark::For
    } else if is_today && !is_noted {
        DayMark::Open
    } else {
        DayMark::Unknown
    }
}

/// The day that a note of a feed belongs to, as in [`place_of_note`](crate::domain::feeding::schedule::place_of_note): a bedtime feed after midnight is the
/// evening's.
fn feed_day(note: &Noted<FeedNote>, planned: PlannedFeed) -> Day {
    let lived = note.lived();
    let late_by = i64::from(lived.time.minutes() - planned.time.minutes());
    let is_of_next = late_by >= OWN_NAME_LATE_MINUTES;
    let is_of_last = late_by < -OWN_NAME_EARLY_MINUTES;
    lived
        .day
        .plus(i32::from(is_of_next) - i32::from(is_of_last))
}

/// Whether solids were swallowed on three days in a row.
pub(crate) fn solids_eaten(facts: &WeaningFacts<'_>) -> ThreeDays {
    let today = facts.today();
    let looks: Vec<(Day, bool)> = recent(facts.now, &facts.chick.solids)
        .map(|look| {
            let is_eaten = match look.what.eaten {
                SolidsEaten::Played => false,
                SolidsEaten::Little | SolidsEaten::Meal => true,
            };
            (look.lived().day, is_eaten)
        })
        .collect();
    three_days(today, |day| {
        if looks.contains(&(day, true)) {
            DayMark::For
        } else if day == today {
            // It played so far; it may still eat.
            DayMark::Open
        } else if looks.contains(&(day, false)) {
            DayMark::Against
        } else {
            DayMark::Unknown
        }
    })
}

/// Whether droppings were seen and as usual on three days in a row.
pub(crate) fn droppings_normal(facts: &WeaningFacts<'_>) -> ThreeDays {
    let today = facts.today();
    let looks: Vec<(Day, bool)> = recent(facts.now, &facts.chick.droppings)
        .map(|look| (look.lived().day, look.what == Droppings::Normal))
        .collect();
    three_days(today, |day| {
        if looks.contains(&(day, false)) {
            DayMark::Against
        } else if looks.contains(&(day, true)) {
            DayMark::For
        } else if day == today {
            DayMark::Open
        } else {
            DayMark::Unknown
        }
    })
}

/// What was noted in the days that can matter, latest first.
fn recent<T>(now: Moment, notes: &[Noted<T>]) -> impl Iterator<Item = &Noted<T>> {
    // Three days, today, and a day for flights and feeds after midnight.
    let from = now.plus_minutes(-(i64::from(DAYS) + 2) * 1_440);
    let notes = notes.iter().rev().filter(move |note| note.at <= now);
    notes.take_while(move |note| note.at >= from)
}

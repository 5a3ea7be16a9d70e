//! What was noted on three days in a row: feeds refused, solids eaten, droppings seen.

use crate::domain::feeding::schedule::feeds;
use crate::domain::feeding::scheduled::{FeedState, ScheduledFeed};
use crate::domain::journal::chick::Noted;
use crate::domain::plan::care_plan::Slot;
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
    let mut recent = feeds(facts.now, facts.chick, facts.zone, today.plus(-DAYS), today);
    recent.retain(|feed| feed.slot == slot);
    three_days(today, |day| {
        let mut of_day = recent.iter().filter(|feed| feed.day == day);
        // A day that a journey made longer may have the feed twice: the later one tells.
        of_day
            .next_back()
            .map_or(DayMark::Unknown, |feed| feed_mark(feed, day == today))
    })
}

/// What one day's feed says. Parts of a feed add up, so a second try that is taken counts.
fn feed_mark(feed: &ScheduledFeed, is_today: bool) -> DayMark {
    match (&feed.state, feed.sitting()) {
        (_, Some(sitting)) => {
            let (taken, offered) = (sitting.taken.tenths(), sitting.offered.tenths());
            if taken == 0 || taken * 2 < offered {
                DayMark::For
            } else {
                DayMark::Against
            }
        }
        (FeedState::Upcoming | FeedState::Due | FeedState::Late, None) if is_today => DayMark::Open,
        (_, None) => DayMark::Unknown,
    }
}

/// Whether solids were swallowed on three days in a row.
pub(crate) fn solids_eaten(facts: &WeaningFacts<'_>) -> ThreeDays {
    let today = facts.today();
    let looks: Vec<(Day, bool)> = recent(facts.now, &facts.chick.solids)
        .map(|look| (look.lived().day, look.what.eaten.is_swallowed()))
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
        .map(|look| (look.lived().day, look.what.is_usual()))
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

//! Wall times to moments and back, by a table of offsets.
//!
//! The table is made outside (from the browser's own rules, or from a zone database in tests) and
//! passed in like the clock. Wall times that do not exist or exist twice follow RFC 5545, 3.3.5: a
//! time in a gap takes the offset before the gap, a time that comes twice means the first.

use crate::domain::quantity::order::sorted;
use crate::domain::time::moment::{Day, Lived, Moment, Offset, WallTime};

/// The offsets of one place over a span of time.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Zone {
    first: Offset,
    changes: Vec<OffsetChange>,
}

/// From `from` on, the wall clock runs at `offset`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct OffsetChange {
    /// The first moment of the new offset.
    pub from: Moment,
    /// The new offset.
    pub offset: Offset,
}

/// How often a wall time occurs on its day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Occurrence {
    /// Once, as nearly always.
    Once,
    /// Never: clocks were put forward over it.
    Never,
    /// Twice: clocks were put back over it; the second time is this moment.
    Twice(Moment),
}

impl Zone {
    /// A zone whose offset never changes.
    pub const fn fixed(offset: Offset) -> Self {
        Self {
            first: offset,
            changes: Vec::new(),
        }
    }

    /// A zone from its first offset and its changes, which are put in order.
    pub fn new(first: Offset, changes: Vec<OffsetChange>) -> Self {
        let mut changes = sorted(changes);
        changes.dedup_by_key(|change| change.from);
        Self { first, changes }
    }

    /// This zone, but from each moment on the offset that is given with it, or the zone's own; the moments
    /// in order.
    ///
    /// # Examples
    /// ```
    /// use perchlight::domain::time::moment::{Moment, Offset};
    /// use perchlight::domain::time::zone::Zone;
    /// let noon = Moment::from_seconds(1_790_000_000);
    /// let there = Some(Offset::from_minutes(-420));
    /// let zone = Zone::fixed(Offset::UTC).but_for(&[(Moment::EARLIEST, there), (noon, None)]);
    /// assert_eq!(zone.offset_at(noon.plus_seconds(-1)).minutes(), -420);
    /// assert_eq!(zone.offset_at(noon), Offset::UTC);
    /// ```
    #[must_use]
    pub fn but_for(&self, stretches: &[(Moment, Option<Offset>)]) -> Self {
        if stretches.is_empty() {
            return self.clone();
        }
        let other_at = |moment: Moment| {
            let count = stretches.partition_point(|(from, _)| *from <= moment);
            let last = count.checked_sub(1).and_then(|last| stretches.get(last));
            last.and_then(|(_, offset)| *offset)
        };
        let moments = self.changes.iter().map(|change| change.from);
        let moments = moments.chain(stretches.iter().map(|(from, _)| *from));
        let changes = moments.map(|from| {
            let offset = other_at(from).unwrap_or_else(|| self.offset_at(from));
            OffsetChange { from, offset }
        });
        let mut zone = Self::new(self.first, changes.collect());
        zone.changes.dedup_by_key(|change| change.offset);
        zone
    }

    /// The offset in force at `moment`.
    pub fn offset_at(&self, moment: Moment) -> Offset {
        let count = self.changes.partition_point(|change| change.from <= moment);
        count
            .checked_sub(1)
            .and_then(|index| self.changes.get(index))
            .map_or(self.first, |change| change.offset)
    }

    /// The wall time lived at `moment`.
    pub fn lived(&self, moment: Moment) -> Lived {
        moment.lived(self.offset_at(moment))
    }

    /// The moment of a wall time on a day of care, which begins at
    /// [`CARE_DAY_STARTS`](crate::domain::time::moment::CARE_DAY_STARTS).
    ///
    /// A time that a journey east leaps over comes at most an hour after the leap, not hours later as the
    /// rule for gaps would have it. Ours.
    pub fn moment_of_care(&self, day: Day, time: WallTime) -> Moment {
        let (moment, occurrence) = self.resolve(time.civil_day(day), time);
        let leapt_over = |change: &&OffsetChange| change.from <= moment;
        match (occurrence, self.changes.iter().rev().find(leapt_over)) {
            (Occurrence::Never, Some(leap)) => moment.min(leap.from.plus_minutes(60)),
            (Occurrence::Never, None) | (Occurrence::Once | Occurrence::Twice(_), _) => moment,
        }
    }

    /// The moment of a wall time, by the RFC 5545 rule for gaps and overlaps.
    ///
    /// # Examples
    /// ```
    /// use perchlight::domain::time::moment::{Day, Moment, Offset, WallTime};
    /// use perchlight::domain::time::zone::{OffsetChange, Zone};
    /// // Clocks go from UTC-5 to UTC-4 at 2026-03-08T07:00:00Z; 02:30 does not exist that night.
    /// let spring = Moment::from_seconds(1_772_953_200);
    /// let zone = Zone::new(
    ///     Offset::from_minutes(-300),
    ///     vec![OffsetChange { from: spring, offset: Offset::from_minutes(-240) }],
    /// );
    /// let day = Day::from_date(2026, 3, 8).unwrap();
    /// let moment = zone.moment_of(day, WallTime::new(2, 30).unwrap());
    /// assert_eq!(zone.lived(moment).time, WallTime::new(3, 30).unwrap());
    /// ```
    pub fn moment_of(&self, day: Day, time: WallTime) -> Moment {
        self.resolve(day, time).0
    }

    /// The moment of a wall time, and how often that wall time occurs.
    pub fn resolve(&self, day: Day, time: WallTime) -> (Moment, Occurrence) {
        let local = i64::from(day.number()) * 86_400 + i64::from(time.minutes()) * 60;
        let at_offset =
            |offset: Offset| Moment::from_seconds(local - i64::from(offset.minutes()) * 60);
        let mut found: Option<Moment> = None;
        let mut before_gap = at_offset(self.first);
        let mut offset = self.first;
        let mut start: Option<Moment> = None;
        for end in self.changes.iter().map(Some).chain([None]) {
            let moment = at_offset(offset);
            let is_started = start.is_none_or(|start| start <= moment);
            let is_ended = end.is_some_and(|change| change.from <= moment);
            if is_started && !is_ended {
                match found {
                    None => found = Some(moment),
                    Some(first) => return (first, Occurrence::Twice(moment)),
                }
            }
            if is_started {
                before_gap = moment;
            }
            if let Some(change) = end {
                start = Some(change.from);
                offset = change.offset;
            }
        }
        found.map_or((before_gap, Occurrence::Never), |moment| {
            (moment, Occurrence::Once)
        })
    }
}

//! When to remind of a backup.
//!
//! Every number here is ours: often enough that a lost phone costs days and not weeks, seldom enough
//! to be read.

use crate::domain::time::moment::Moment;

/// Entries before the first reminder.
pub const FIRST_ENTRIES: usize = 10;
/// Entries since the last checked backup before the next reminder.
pub const NEXT_ENTRIES: usize = 20;
/// Days since the last checked backup before the next reminder.
pub const NEXT_DAYS: f64 = 7.0;
/// Days for which a reminder that was put off stays away.
pub const PUT_OFF_DAYS: i64 = 3;

/// What is known of backups.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Backups {
    /// When a backup was last read back and found whole; one that was only saved does not count.
    pub last_checked: Option<Moment>,
    /// Entries noted since then, or ever.
    pub noted_since: usize,
    /// Until when the reminder was put off.
    pub put_off_until: Option<Moment>,
}

/// Until when a reminder stays away that is put off now.
pub fn put_off(now: Moment) -> Moment {
    now.plus_seconds(PUT_OFF_DAYS * 86_400)
}

/// Whether to remind of a backup: after [`FIRST_ENTRIES`], then when both [`NEXT_DAYS`] and
/// [`NEXT_ENTRIES`] have passed since the last checked one; not while it is put off.
///
/// A time that lies further ahead than one can put it off, as after a clock that was set wrongly, does
/// not hold the reminder back.
///
/// # Examples
/// ```
/// use perchlight::store::backup_due::{Backups, is_backup_due};
/// use perchlight::domain::time::moment::Moment;
///
/// let never = Backups { last_checked: None, noted_since: 9, put_off_until: None };
/// let now = Moment::from_seconds(1_800_000_000);
/// assert!(!is_backup_due(now, never));
/// assert!(is_backup_due(now, Backups { noted_since: 10, ..never }));
/// ```
pub fn is_backup_due(now: Moment, backups: Backups) -> bool {
    let is_put_off = backups
        .put_off_until
        .is_some_and(|until| now < until && until <= put_off(now));
    let is_wanted = match backups.last_checked {
        None => FIRST_ENTRIES <= backups.noted_since,
        Some(last) => NEXT_ENTRIES <= backups.noted_since && NEXT_DAYS <= now.days_since(last),
    };
    is_wanted && !is_put_off
}

#[cfg(test)]
mod tests {
    use crate::domain::time::moment::Moment;
    use crate::store::backup_due::{Backups, is_backup_due, put_off};

    const DAY: i64 = 86_400;

    fn now() -> Moment {
        Moment::from_seconds(1_800_000_000)
    }

    fn is_due(checked_seconds_ago: Option<i64>, noted_since: usize) -> bool {
        let backups = Backups {
            last_checked: checked_seconds_ago.map(|ago| now().plus_seconds(-ago)),
            noted_since,
            put_off_until: None,
        };
        is_backup_due(now(), backups)
    }

    #[test]
    fn the_first_reminder_comes_with_the_tenth_entry() {
        assert!(!is_due(None, 0) && !is_due(None, 9));
        assert!(is_due(None, 10) && is_due(None, 11));
    }

    #[test]
    fn later_ones_want_seven_days_and_twenty_entries() {
        assert!(is_due(Some(7 * DAY), 20));
        assert!(!is_due(Some(7 * DAY - 1), 20));
        assert!(!is_due(Some(7 * DAY), 19));
        assert!(is_due(Some(7 * DAY + 1), 21));
    }

    #[test]
    fn put_off_it_stays_away_for_three_days() {
        let until = put_off(now());
        let at = |later: i64| {
            let backups = Backups {
                last_checked: None,
                noted_since: 10,
                put_off_until: Some(until),
            };
            is_backup_due(now().plus_seconds(later), backups)
        };
        assert!(!at(0) && !at(3 * DAY - 1));
        assert!(at(3 * DAY) && at(3 * DAY + 1));
        // The clock stood an hour ahead when it was put off, and was set right since.
        assert!(at(-3_600));
    }
}

//! What may be shown as kept: the answers of both copies, put together.
//!
//! The first copy answers at once but a killed browser can lose its last minute; only what the second
//! has taken is safe. So "kept" without reservation needs both.

use crate::domain::time::moment::Moment;

/// How long a second copy that could not be opened is left alone, in seconds. Ours: opening takes 2 s at
/// most, and somebody who notes act after act shall not wait through it each time.
const OPEN_AGAIN_AFTER_S: i64 = 10;

/// What the person is told about everything noted so far.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SaveState {
    /// Nothing was noted since the start; what was opened stays as it is.
    Unchanged,
    /// The second copy has not answered yet.
    Keeping,
    /// Both copies have everything.
    KeptInBoth,
    /// One copy has everything, the other is missing or lacks something.
    KeptInOne(Copy),
    /// At least one entry is in no copy.
    OnlyInMemory,
}

/// One of the two copies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Copy {
    /// Small keys, at once.
    First,
    /// The database, safe against a killed browser.
    Second,
}

/// How the first copy is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum First {
    Whole,
    /// It is being given what only the second has.
    Healing,
    Lacking,
}

/// How the second copy is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Second {
    Opening,
    CatchingUp,
    Whole,
    Lacking,
    /// It could not be opened or was closed, and was found so at this moment.
    Missing(Moment),
}

/// Puts the answers of both copies together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SaveTracker {
    has_noted: bool,
    first: First,
    second: Second,
    waiting: usize,
    was_noted_meanwhile: bool,
}

impl SaveTracker {
    /// At start: nothing noted, the second copy being opened.
    pub const fn new() -> Self {
        Self {
            has_noted: false,
            first: First::Whole,
            second: Second::Opening,
            waiting: 0,
            was_noted_meanwhile: false,
        }
    }

    /// Something was noted, and the first copy has everything or not.
    ///
    /// Where [`SaveTracker::sends_singly`] says so, the act goes to the second copy by itself, followed by
    /// one call of [`SaveTracker::second_answered`]. Where [`SaveTracker::is_behind`] says so, the second copy is
    /// to be caught up. Otherwise it is being opened or caught up already, and that goes round again.
    pub fn noted(&mut self, first_has_all: bool) {
        self.has_noted = true;
        self.first_tried_again(first_has_all);
        if self.second == Second::Whole {
            self.waiting += 1;
        }
        self.was_noted_meanwhile = true;
    }

    /// The first copy was tried again, or could not be read at the start.
    pub fn first_tried_again(&mut self, first_has_all: bool) {
        if self.first != First::Healing {
            self.first_healed(first_has_all);
        }
    }

    /// Whether the first copy is to be given now, step by step, what only the second has; it then counts
    /// as being healed. Not before anything was noted, since opening writes nothing, and not while the
    /// first copy takes nothing.
    #[must_use]
    pub fn begins_healing(&mut self) -> bool {
        let begins = self.has_noted && self.first == First::Whole;
        if begins {
            self.first = First::Healing;
        }
        begins
    }

    /// Nothing more is given to the first copy; it has everything now or not.
    pub fn first_healed(&mut self, first_has_all: bool) {
        self.first = if first_has_all {
            First::Whole
        } else {
            First::Lacking
        };
    }

    /// The second copy answered for one act.
    pub fn second_answered(&mut self, is_taken: bool) {
        self.waiting = self.waiting.saturating_sub(1);
        if !is_taken && self.second == Second::Whole {
            self.second = Second::Lacking;
        }
    }

    /// The second copy is open and is being sent everything that it lacks now.
    pub fn catching_up(&mut self) {
        self.second = Second::CatchingUp;
        self.was_noted_meanwhile = false;
    }

    /// The second copy answered to what it was sent in catching up. When this gives true, something was
    /// noted meanwhile and catching up must begin again.
    #[must_use]
    pub fn caught_up(&mut self, is_taken: bool) -> bool {
        let is_to_repeat = is_taken && self.was_noted_meanwhile;
        if !is_taken {
            self.second = Second::Lacking;
        } else if !is_to_repeat {
            self.second = Second::Whole;
        }
        is_to_repeat
    }

    /// The second copy cannot be opened, or is closed, at this moment.
    pub fn second_is_missing(&mut self, now: Moment) {
        self.second = Second::Missing(now);
    }

    /// Whether a missing second copy is to be opened again now; it then counts as being opened.
    ///
    /// To be asked after each act. Between two openings lie 10 s, unless the clock was set back.
    #[must_use]
    pub fn opens_again(&mut self, now: Moment) -> bool {
        let Second::Missing(since) = self.second else {
            return false;
        };
        let waited_s = now.seconds() - since.seconds();
        let is_to_open = !(0..OPEN_AGAIN_AFTER_S).contains(&waited_s);
        if is_to_open {
            self.second = Second::Opening;
        }
        is_to_open
    }

    /// Whether the next entry goes to the second copy by itself; otherwise it is to be caught up.
    pub fn sends_singly(&self) -> bool {
        self.second == Second::Whole
    }

    /// Whether the second copy lacks something and nobody is sending it.
    pub fn is_behind(&self) -> bool {
        self.second == Second::Lacking
    }

    /// What the person is told.
    pub fn state(&self) -> SaveState {
        if !self.has_noted && self.first != First::Lacking {
            return SaveState::Unchanged;
        }
        if self.first == First::Healing {
            return SaveState::Keeping;
        }
        match (self.second, self.first == First::Whole) {
            (Second::Opening | Second::CatchingUp, _) => SaveState::Keeping,
            (Second::Whole, _) if self.waiting > 0 => SaveState::Keeping,
            (Second::Whole, true) => SaveState::KeptInBoth,
            (Second::Whole, false) => SaveState::KeptInOne(Copy::Second),
            (Second::Lacking | Second::Missing(_), true) => SaveState::KeptInOne(Copy::First),
            (Second::Lacking | Second::Missing(_), false) => SaveState::OnlyInMemory,
        }
    }
}

impl Default for SaveTracker {
    fn default() -> Self {
        Self::new()
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::time::moment::Moment;
    use crate::store::save_state::{Copy, SaveState, SaveTracker};

    const fn at(seconds: i64) -> Moment {
        Moment::from_seconds(1_793_577_600 + seconds)
    }

    fn ready() -> SaveTracker {
        let mut tracker = SaveTracker::new();
        tracker.catching_up();
        assert!(!tracker.caught_up(true));
        tracker
    }

    #[test]
    fn nothing_is_claimed_before_anything_was_noted() {
        assert_eq!(SaveTracker::new().state(), SaveState::Unchanged);
        assert_eq!(ready().state(), SaveState::Unchanged);
    }

    #[test]
    fn kept_is_shown_only_after_the_second_copy_answered() {
        let mut tracker = ready();
        tracker.noted(true);
        assert_eq!(tracker.state(), SaveState::Keeping);
        tracker.second_answered(true);
        assert_eq!(tracker.state(), SaveState::KeptInBoth);
    }

    #[test]
    fn every_act_waits_for_its_own_answer() {
        let mut tracker = ready();
        tracker.noted(true);
        tracker.noted(true);
        tracker.second_answered(true);
        assert_eq!(tracker.state(), SaveState::Keeping);
        tracker.second_answered(true);
        assert_eq!(tracker.state(), SaveState::KeptInBoth);
    }

    #[test]
    fn an_entry_noted_while_the_second_copy_opens_waits_for_it() {
        let mut tracker = SaveTracker::new();
        tracker.noted(true);
        assert!(!tracker.sends_singly());
        assert_eq!(tracker.state(), SaveState::Keeping);
        tracker.catching_up();
        assert!(!tracker.caught_up(true));
        assert_eq!(tracker.state(), SaveState::KeptInBoth);
    }

    #[test]
    fn an_entry_noted_while_the_second_copy_catches_up_makes_it_begin_again() {
        let mut tracker = SaveTracker::new();
        tracker.catching_up();
        tracker.noted(true);
        assert!(tracker.caught_up(true));
        assert_eq!(tracker.state(), SaveState::Keeping);
        tracker.catching_up();
        assert!(!tracker.caught_up(true));
        assert_eq!(tracker.state(), SaveState::KeptInBoth);
    }

    #[test]
    fn while_the_second_copy_catches_up_nobody_begins_it_a_second_time() {
        let mut tracker = SaveTracker::new();
        tracker.catching_up();
        tracker.noted(true);
        assert!(!tracker.is_behind() && !tracker.sends_singly());
        // The first round does not hold the new entry, so its answer must not be taken for it.
        assert!(tracker.caught_up(true));
        assert_eq!(tracker.state(), SaveState::Keeping);
        tracker.catching_up();
        assert!(!tracker.caught_up(false));
        assert!(tracker.is_behind());
    }

    #[test]
    fn a_first_copy_that_cannot_be_read_is_said_before_anything_is_noted() {
        let mut tracker = SaveTracker::new();
        tracker.first_tried_again(false);
        assert_eq!(tracker.state(), SaveState::Keeping);
        tracker.catching_up();
        assert!(!tracker.caught_up(true));
        assert_eq!(tracker.state(), SaveState::KeptInOne(Copy::Second));
        tracker.second_is_missing(at(0));
        assert_eq!(tracker.state(), SaveState::OnlyInMemory);
    }

    #[test]
    fn a_missing_second_copy_is_said() {
        let mut tracker = SaveTracker::new();
        tracker.second_is_missing(at(0));
        tracker.noted(true);
        assert_eq!(tracker.state(), SaveState::KeptInOne(Copy::First));
        tracker.noted(false);
        assert_eq!(tracker.state(), SaveState::OnlyInMemory);
        tracker.first_tried_again(true);
        assert_eq!(tracker.state(), SaveState::KeptInOne(Copy::First));
    }

    #[test]
    fn one_refused_act_is_said_until_the_second_copy_caught_up() {
        let mut tracker = ready();
        tracker.noted(true);
        tracker.second_answered(false);
        assert_eq!(tracker.state(), SaveState::KeptInOne(Copy::First));
        tracker.noted(true);
        assert_eq!(tracker.state(), SaveState::KeptInOne(Copy::First));
        tracker.catching_up();
        assert!(!tracker.caught_up(true));
        assert_eq!(tracker.state(), SaveState::KeptInBoth);
    }

    #[test]
    fn a_full_first_copy_beside_a_whole_second_is_said() {
        let mut tracker = ready();
        tracker.noted(false);
        assert_eq!(tracker.state(), SaveState::Keeping);
        tracker.second_answered(true);
        assert_eq!(tracker.state(), SaveState::KeptInOne(Copy::Second));
    }

    /// Two seconds for opening, then ten in which it is left alone.
    #[test]
    fn a_second_copy_that_answered_late_is_opened_again_with_an_act_at_most_every_ten_seconds() {
        let mut tracker = SaveTracker::new();
        assert!(!tracker.opens_again(at(1)), "it is being opened");
        tracker.second_is_missing(at(2));
        tracker.noted(true);
        assert!(!tracker.opens_again(at(11)));
        assert_eq!(tracker.state(), SaveState::KeptInOne(Copy::First));
        tracker.noted(true);
        assert!(tracker.opens_again(at(12)));
        assert_eq!(tracker.state(), SaveState::Keeping);
        assert!(!tracker.opens_again(at(60)), "it is being opened");
        tracker.second_is_missing(at(61));
        assert_eq!(tracker.state(), SaveState::KeptInOne(Copy::First));
        assert!(!tracker.opens_again(at(70)));
        // The clock was set back to before it was found missing.
        assert!(tracker.opens_again(at(30)));
        tracker.catching_up();
        assert!(!tracker.caught_up(true));
        assert_eq!(tracker.state(), SaveState::KeptInBoth);
        assert!(!tracker.opens_again(at(9_999)), "it is open");
    }

    #[test]
    fn nothing_is_called_kept_in_both_while_the_first_copy_is_healed() {
        let mut tracker = ready();
        assert!(!tracker.begins_healing(), "opening writes nothing");
        tracker.noted(true);
        assert!(tracker.begins_healing());
        assert!(!tracker.begins_healing(), "it goes on already");
        tracker.second_answered(true);
        assert_eq!(tracker.state(), SaveState::Keeping);
        tracker.first_healed(false);
        assert_eq!(tracker.state(), SaveState::KeptInOne(Copy::Second));
        assert!(!tracker.begins_healing(), "it takes nothing");
        tracker.first_tried_again(true);
        assert!(tracker.begins_healing());
        tracker.first_healed(true);
        assert_eq!(tracker.state(), SaveState::KeptInBoth);
    }
}

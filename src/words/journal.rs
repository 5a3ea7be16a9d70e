//! The journal: what stands behind a line, and the sums of a day.

use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::{Lived, WallTime};
use crate::words::format::Writing;

texts! {
    journal_taken: "Taken", "Tomó";
    journal_served: "Served at", "Dada a";
    journal_response: "How it ate", "Cómo comió";
    journal_noted: "Noted", "Anotado";
    journal_right_volume: "Right amount taken", "Cantidad correcta";
    journal_was: "before", "antes";
}

impl Writing {
    /// When and by whom something was noted.
    pub fn noted_at(self, noted: Lived, is_same_day: bool, by: &str) -> String {
        let when = if is_same_day {
            self.time(noted.time)
        } else {
            self.lived(noted)
        };
        if by.is_empty() {
            return when;
        }
        let joint = self.language.pick("by", "por");
        format!("{when} {joint} {by}")
    }

    /// A correction: when and by whom.
    pub fn corrected_at(self, noted: WallTime, by: &str) -> String {
        let time = self.the_time(noted);
        let by_whom = if by.is_empty() {
            String::new()
        } else {
            format!(" {} {by}", self.language.pick("by", "por"))
        };
        let corrected = self.language.pick("corrected", "corregido a");
        format!("{corrected} {time}{by_whom}")
    }

    /// What was taken of what was offered in a day: "115 of 120 ml".
    pub fn taken_of(self, taken: Millilitres, offered: Millilitres) -> String {
        let offered = offered.max(taken);
        let number = self.tenths(taken.tenths());
        let of = self.language.pick("of", "de");
        format!("{number} {of} {}", self.volume(offered))
    }
}

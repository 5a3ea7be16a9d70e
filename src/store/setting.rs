//! Small values of this device that are no part of any journal.

use crate::store::key_value::SETTING;

/// A value of this device.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Setting {
    /// Units that quantities are shown in.
    Units,
    /// Day, night or as the device says.
    Theme,
    /// When the last backup was read back.
    LastBackup,
    /// Until when the reminder of a backup stays away.
    NudgeDismissed,
    /// What the person who notes is called.
    Carer,
    /// Where in the feed guide somebody stopped.
    GuideStep,
    /// When the records of each chick were last sent to another phone.
    Sent,
    /// The cup that formula is mixed in.
    Cup,
    /// The chick shown last.
    ChickShown,
    /// When the caution was accepted.
    CautionAccepted,
    /// What the page shows before the app is there.
    Glance,
    /// The chicks whose breeder holds this device.
    BredHere,
}

impl Setting {
    const fn word(self) -> &'static str {
        match self {
            Self::Units => "units",
            Self::Theme => "theme",
            Self::LastBackup => "last-backup",
            Self::NudgeDismissed => "nudge-dismissed",
            Self::Carer => "carer",
            Self::GuideStep => "guide-step",
            Self::Sent => "sent",
            Self::Cup => "cup",
            Self::ChickShown => "chick-shown",
            Self::CautionAccepted => "caution-accepted",
            Self::Glance => "glance",
            Self::BredHere => "bred-here",
        }
    }

    /// The key that holds it.
    pub fn key(self) -> String {
        format!("{SETTING}{}", self.word())
    }
}

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
    /// What a breeder says once for every chick; there is none on an owner's device.
    Breeder,
    /// A breeder's templates, one a species, the last used first.
    Templates,
    /// Chicks put away by who follows them: no report is asked for any more.
    PutAway,
    /// What was typed of a new chick before it was kept.
    Draft,
    /// Chicks that this device follows and does not care for.
    Followed,
    /// Chicks removed from this device; their records are still there.
    Removed,
    /// Chicks that are with somebody else for some days, and when to ask whether they are back.
    Away,
    /// Chicks handed over here, until it is answered whether they are gone.
    Leaving,
    /// Chicks whose card was taken in here.
    Card,
    /// Chicks of which it is asked whether they are home, and from when on.
    AskHome,
    /// Chicks of which it is asked whether they were typed in before.
    AskSame,
    /// Chicks of which a report came in here, until it is said who holds this device.
    AskRole,
}

/// The settings that are a list of chicks; none of them is ever sent or joined.
pub const OF_CHICKS: [Setting; 9] = [
    Setting::PutAway,
    Setting::Followed,
    Setting::Removed,
    Setting::Away,
    Setting::Leaving,
    Setting::Card,
    Setting::AskHome,
    Setting::AskSame,
    Setting::AskRole,
];

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
            Self::Breeder => "breeder",
            Self::Templates => "templates",
            Self::PutAway => "put-away",
            Self::Draft => "draft",
            Self::Followed => "followed",
            Self::Removed => "removed",
            Self::Away => "away",
            Self::Leaving => "leaving",
            Self::Card => "card",
            Self::AskHome => "ask-home",
            Self::AskSame => "ask-same",
            Self::AskRole => "ask-role",
        }
    }

    /// The key that holds it.
    pub fn key(self) -> String {
        format!("{SETTING}{}", self.word())
    }
}

//! Names for files that any telephone and computer takes.

use crate::domain::time::moment::Day;

/// Most characters of the chick's name in a file name. Ours.
const MOST_LETTERS: usize = 24;

/// What a file holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FileKind {
    /// A handover card.
    Card,
    /// A report, which is a backup too.
    Report,
    /// The page for the vet.
    VetPage,
    /// Feeds for a calendar.
    Calendar,
    /// The file that takes them out again.
    CalendarRemoval,
    /// The table of weighings.
    Weights,
    /// The table of feeds.
    Feeds,
    /// The table of droppings.
    Droppings,
    /// The table of all chicks.
    Chicks,
    /// The weight chart as a picture.
    WeightPicture,
    /// Every entry on the phone.
    Backup,
    /// The same with every photo.
    PhotoBackup,
}

impl FileKind {
    const fn name_and_ending(self) -> (&'static str, &'static str) {
        match self {
            Self::Card => ("card", "html"),
            Self::Report => ("report", "html"),
            Self::VetPage => ("vet-page", "html"),
            Self::Calendar => ("feeds", "ics"),
            Self::CalendarRemoval => ("feeds-remove", "ics"),
            Self::Weights => ("weights", "csv"),
            Self::Feeds => ("feeds", "csv"),
            Self::Droppings => ("droppings", "csv"),
            Self::Chicks => ("chicks", "csv"),
            Self::WeightPicture => ("weight", "png"),
            Self::Backup => ("backup", "json"),
            Self::PhotoBackup => ("backup-with-photos", "txt"),
        }
    }

    /// The media type to save and share it with. Source: RFC 2046, 5545, 4180 and
    /// 8259; PNG specification, 12.
    pub const fn media_type(self) -> &'static str {
        match self {
            Self::Card | Self::Report | Self::VetPage => "text/html",
            Self::Calendar | Self::CalendarRemoval => "text/calendar",
            Self::Weights | Self::Feeds | Self::Droppings | Self::Chicks => "text/csv",
            Self::WeightPicture => "image/png",
            Self::Backup => "application/json",
            Self::PhotoBackup => "text/plain",
        }
    }

    /// Whether photos stand in it as pictures.
    pub const fn shows_photos(self) -> bool {
        match self {
            Self::Report | Self::VetPage => true,
            Self::Card
            | Self::Calendar
            | Self::CalendarRemoval
            | Self::Weights
            | Self::Feeds
            | Self::Droppings
            | Self::Chicks
            | Self::WeightPicture
            | Self::Backup
            | Self::PhotoBackup => false,
        }
    }

    /// Whether a share sheet does any good: none of them offers the telephone's calendar.
    pub const fn is_for_share_sheet(self) -> bool {
        match self {
            Self::Calendar | Self::CalendarRemoval => false,
            Self::Card
            | Self::Report
            | Self::VetPage
            | Self::Weights
            | Self::Droppings
            | Self::Chicks
            | Self::Feeds
            | Self::WeightPicture
            | Self::Backup
            | Self::PhotoBackup => true,
        }
    }
}

/// The name of a file about a chick: small letters and digits of its name, what it holds, the day.
///
/// # Examples
/// ```
/// use perchlight::domain::time::moment::Day;
/// use perchlight::share::file_name::{FileKind, file_name};
///
/// let day = Day::parse_iso("2026-11-18").unwrap_or(Day::from_number(0));
/// let name = file_name("../Pip & Co", FileKind::Report, day);
/// assert_eq!(name, "perchlight-pip-co-report-2026-11-18.html");
/// assert_eq!(file_name("🦜", FileKind::Feeds, day), "perchlight-feeds-2026-11-18.csv");
/// ```
pub fn file_name(chick: &str, kind: FileKind, day: Day) -> String {
    let words = chick.split(|c: char| !c.is_ascii_alphanumeric());
    let words: Vec<&str> = words.filter(|word| !word.is_empty()).collect();
    let name: String = words.join("-").chars().take(MOST_LETTERS).collect();
    let name = name.trim_end_matches('-').to_ascii_lowercase();
    let (what, ending) = kind.name_and_ending();
    let day = day.iso();
    match name.as_str() {
        "" => format!("perchlight-{what}-{day}.{ending}"),
        name => format!("perchlight-{name}-{what}-{day}.{ending}"),
    }
}

//! Writes calendar files of a made-up chick into a folder, for readers in other languages:
//! `cargo run --no-default-features --example calendars -- FOLDER`. `check.py` beside it says what each
//! must hold.

use std::error::Error;
use std::fs;
use std::num::NonZeroU32;
use std::path::PathBuf;

use perchlight::domain::journal::entries::{Change, ChickId};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::outlook::{Outlook, outlook};
use perchlight::domain::plan::care_plan::{CarePlan, Slot};
use perchlight::domain::plan::species::Species;
use perchlight::domain::time::moment::{Day, Offset};
use perchlight::share::calendar_of::{calendar_removal_text, calendar_text};
use perchlight::words::Language;
use perchlight::words::format::Writing;

const CHICK: ChickId = ChickId(*b"a-test-chick");
const WRITING: Writing = Writing::metric(Language::English);
/// Everything that a TEXT value escapes (RFC 5545, 3.3.11), a character of four octets, and enough to
/// fold.
const NAME: &str = "Saffron, \"the loud; one\" \\ \u{1f99c} with a name so long that lines fold";
/// Days for which the app writes feeds.
const DAYS: NonZeroU32 = NonZeroU32::MIN.saturating_add(13);

fn seen(script: &Scenario, day: i32, hour: i32) -> Result<Outlook, Box<dyn Error>> {
    let now = script.at(day, hour, 0);
    let outlook = outlook(now, &script.journal(), CHICK, &script.zone());
    outlook.ok_or_else(|| "the chick is not there".into())
}

fn main() -> Result<(), Box<dyn Error>> {
    let folder = PathBuf::from(std::env::args().nth(1).ok_or("which folder?")?);
    fs::create_dir_all(&folder)?;
    let keep = |name: &str, text: String| fs::write(folder.join(name), text);
    // 20 October: the fourteen days hold the night in which Europe's clocks go back (25 October 2026).
    let start = Day::from_date(2026, 10, 20).ok_or("no such day")?;
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    NAME.clone_into(&mut plan.name);
    let mut script = Scenario::new(CHICK, plan, start, Offset::from_minutes(0));
    script.note(0, 4, 0, Change::Arrived);
    keep(
        "first.ics",
        calendar_text(WRITING, &seen(&script, 0, 6)?, &script.zone(), DAYS)?,
    )?;
    let (slot, by_breeder) = (Slot::Midday, true);
    script.note(3, 9, 0, Change::FeedDropped { slot, by_breeder });
    let later = seen(&script, 3, 10)?;
    keep(
        "changed.ics",
        calendar_text(WRITING, &later, &script.zone(), DAYS)?,
    )?;
    keep(
        "removal.ics",
        calendar_removal_text(WRITING, &seen(&script, 4, 10)?)?,
    )?;
    Ok(())
}

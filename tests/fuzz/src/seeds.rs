//! The first texts of each target: what the app itself sends and keeps.

use perchlight::domain::journal::chick::Chick;
use perchlight::domain::journal::demo;
use perchlight::domain::journal::entries::{Change, Entry, EntryId, Journal, Paper};
use perchlight::domain::time::moment::{Moment, Offset};
use perchlight::domain::time::zone::Zone;
use perchlight::share::base64url;
use perchlight::share::card::{card_to_link_text, card_to_qr_text};
use perchlight::share::card_paper::card_html;
use perchlight::share::link::entries_to_link_text;
use perchlight::store::line::Line;
use perchlight::store::saved::{entries_to_text, entry_to_text};
use perchlight::words::Language;
use perchlight::words::format::Writing;

const WRITING: Writing = Writing::metric(Language::English);

/// Bytes that a target begins its search from.
#[derive(Clone, Debug)]
pub struct Seed {
    /// The name of the target in `fuzz_targets/`.
    pub target: &'static str,
    /// The name of the seed's file in `corpus/`.
    pub name: String,
    /// What the target is given.
    pub bytes: Vec<u8>,
}

/// Entries, and after them some of those kinds whose numbers a link's head does not hold.
fn with_wider_kinds(entries: &[Entry]) -> Vec<Entry> {
    let last = entries.last().expect("there are entries");
    let (day, night) = (Paper::Day, Paper::Night);
    let wider = [
        Change::DroppingsCounted {
            paper: day,
            count: 18,
        },
        Change::DroppingsCounted {
            paper: night,
            count: u8::MAX,
        },
        Change::Died,
    ];
    let later = wider.into_iter().zip(200..).map(|(change, number)| Entry {
        id: EntryId([number; 12]),
        change,
        ..last.clone()
    });
    entries.iter().cloned().chain(later).collect()
}

/// Every seed of every target.
pub fn seeds() -> Vec<Seed> {
    let mut seeds = Vec::new();
    let now = Moment::from_seconds(1_795_600_000);
    let zone = Zone::fixed(Offset::from_minutes(0));
    let journal: Journal = demo::journal(now, &zone, Language::English.demo_typed());
    let entries = journal.entries();
    let few = &with_wider_kinds(&entries[..entries.len().min(12)]);
    let chick = journal.chicks()[0];
    let plan = journal.entries_of_plan(chick);
    let card = card_to_link_text(&plan);
    let records = entries_to_link_text(few).expect("a few entries fit into a link");
    let mut keep = |target, name: &str, bytes: &[u8]| {
        let (name, bytes) = (name.to_owned(), bytes.to_vec());
        seeds.push(Seed {
            target,
            name,
            bytes,
        });
    };
    for (kind, link) in [&card, &records].into_iter().enumerate() {
        let kind = u8::try_from(kind).expect("two kinds");
        let (_, text) = link.split_once('.').expect("a link has a point");
        let bytes = base64url::decode(text).expect("our own link");
        // Version, kind and length before the content, the check sum after it.
        let head = 2 + bytes[2..].iter().take_while(|byte| **byte >= 0x80).count() + 1;
        let content = &bytes[head..bytes.len() - 4];
        keep(
            "link_text",
            &format!("kind-{kind}"),
            &[&[kind], content].concat(),
        );
        keep(
            "pasted_text",
            &format!("link-{kind}"),
            format!("Hello:\n{link}\n").as_bytes(),
        );
    }
    keep("pasted_text", "digits", card_to_qr_text(&plan).as_bytes());
    let chick = Chick::from_journal(&journal, chick).expect("the chick is there");
    let page = card_html(WRITING, "", &chick, &plan, (Moment::EARLIEST, Offset::UTC));
    let end = page.find("<script").map_or("", |at| &page[at..]);
    keep("pasted_text", "page", end.as_bytes());
    keep("file_text", "backup", entries_to_text(few).as_bytes());
    keep("file_text", "one", entries_to_text(&few[..1]).as_bytes());
    keep("file_text", "card", format!("\"{card}\"").as_bytes());
    for (number, entry) in entries.iter().enumerate().step_by(7) {
        keep(
            "record_line",
            &format!("payload-{number}"),
            entry_to_text(entry).as_bytes(),
        );
    }
    let lines: Vec<String> = few
        .iter()
        .filter_map(|entry| Line::of(entry).ok())
        .map(|line| line.text)
        .collect();
    keep("record_line", "lines", lines.join("\n").as_bytes());
    seeds
}

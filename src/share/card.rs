//! The handover card: what another phone needs to have a chick's plan, as text short enough for a link
//! and a QR code.
//!
//! It carries entries and not the plan they make, so that an older card, joined like everything else,
//! rolls nothing back.

use std::collections::BTreeSet;

use crate::domain::journal::entries::{Change, Entry, EntryId, Journal};
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::plan::parts::PartKind;
use crate::domain::plan::topic::Topic;
use crate::domain::quantity::order::set_of;
use crate::share::entry_bytes::write_entries;
use crate::share::envelope::{Kind, seal, seal_as_digits, sealed_bytes};
use crate::share::link::entries_of_bytes;
use crate::share::unpack::UnpackError;
use crate::share::varint::ByteWriter;

/// A card as the text after `#` in a link: letters, digits, `-`, `_` and one point.
///
/// `entries` are those of [`Journal::entries_of_plan`]; the same ones always give the same text.
pub fn card_to_link_text(entries: &[Entry]) -> String {
    seal(Kind::Card, &card_bytes(entries))
}

/// A card as the text after `#` in a QR code: longer to read, but a fifth fewer squares.
pub fn card_to_qr_text(entries: &[Entry]) -> String {
    seal_as_digits(Kind::Card, &card_bytes(entries))
}

/// Most bytes of a card in a QR code, envelope and check sum among them. Ours: as digits, with an address of
/// some sixty characters, they fit version 20 at level M, whose squares are 0.6 mm wide in a code of 6 cm.
pub const MOST_QR_BYTES: usize = 560;

/// What a QR code holds at least: who the chick is, what it is fed, how warm, and the weight to call at.
const AT_LEAST: [PartKind; 4] = [
    PartKind::Chick,
    PartKind::Feeds,
    PartKind::Formula,
    PartKind::Weight,
];

/// What else it holds where there is room, in this order: what the first two days at home need.
const THEN: [Piece; 17] = [
    Piece::Part(PartKind::People),
    Piece::Part(PartKind::Journey),
    Piece::Said(Topic::AfterRefusal),
    Piece::Part(PartKind::Vets),
    Piece::Part(PartKind::Home),
    Piece::Part(PartKind::Equipment),
    Piece::Said(Topic::Recipe),
    Piece::Said(Topic::PowderName),
    Piece::Said(Topic::TakesFood),
    Piece::Said(Topic::Night),
    Piece::Said(Topic::RoundCrop),
    Piece::Part(PartKind::Weaning),
    Piece::Part(PartKind::Words),
    Piece::Said(Topic::Wings),
    Piece::Said(Topic::Sex),
    Piece::Said(Topic::Bath),
    Piece::Said(Topic::Papers),
];

/// What is taken or left out as a whole.
#[derive(Clone, Copy)]
enum Piece {
    Part(PartKind),
    Said(Topic),
}

/// What of a card a QR code holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct QrCard {
    /// Entries of the card under their own names, each as it is or with parts left out: joined with the
    /// whole card they are the whole card.
    pub entries: Vec<Entry>,
    /// Whether nothing was left out.
    pub is_whole: bool,
}

impl QrCard {
    /// As the text after `#` in a QR code: longer to read than a link, but a fifth fewer squares.
    pub fn text(&self) -> String {
        seal_as_digits(self.kind(), &card_bytes(&self.entries))
    }

    /// Bytes that it takes, without the address before it.
    pub fn bytes(&self) -> usize {
        sealed_bytes(self.kind(), &card_bytes(&self.entries))
    }

    const fn kind(&self) -> Kind {
        if self.is_whole {
            Kind::Card
        } else {
            Kind::ShortCard
        }
    }
}

/// What of the card with these entries fits into [`MOST_QR_BYTES`]: the whole card, or whole parts of its
/// plan, the most needed first. `None` when the least that is needed does not fit.
///
/// `entries` are those of [`Journal::entries_of_plan`].
pub fn qr_card(entries: &[Entry]) -> Option<QrCard> {
    let fits = |card: &QrCard| card.bytes() <= MOST_QR_BYTES;
    let whole = QrCard {
        entries: entries.to_vec(),
        is_whole: true,
    };
    if fits(&whole) {
        return Some(whole);
    }
    let journal = Journal::from_entries(entries.to_vec());
    let in_force = set_of(journal.plans(*journal.chicks().first()?)?.sets_in_force());
    let mut left = Left {
        in_force,
        kinds: AT_LEAST.into(),
        topics: BTreeSet::new(),
        names_older: true,
    };
    if !fits(&left.of(entries)) {
        left.names_older = false;
    }
    let mut card = Some(left.of(entries)).filter(fits)?;
    for piece in THEN {
        let mut more = left.clone();
        match piece {
            Piece::Part(kind) => more.kinds.insert(kind),
            Piece::Said(topic) => more.topics.insert(topic),
        };
        let longer = more.of(entries);
        if fits(&longer) {
            (left, card) = (more, longer);
        }
    }
    Some(card)
}

/// What is left of a card.
#[derive(Clone)]
struct Left {
    /// The sets of the card that hold.
    in_force: BTreeSet<EntryId>,
    kinds: BTreeSet<PartKind>,
    topics: BTreeSet<Topic>,
    /// Whether a set names those that it was written after. Without, a phone that has one of these asks
    /// about it, until it gets the whole card.
    names_older: bool,
}

impl Left {
    fn of(&self, entries: &[Entry]) -> QrCard {
        let sets = entries.iter().filter_map(|entry| {
            Some(Entry {
                change: self.set(entry)?,
                ..entry.clone()
            })
        });
        let mut sent: Vec<Entry> = sets.collect();
        let ids: BTreeSet<EntryId> = set_of(sent.iter().map(|entry| entry.id));
        let is_of_these = |entry: &&Entry| {
            matches!(&entry.change,
                Change::PartTaken { sets } | Change::PartAgreed { sets, .. } if sets.iter().any(|id| ids.contains(id)))
        };
        sent.extend(entries.iter().filter(is_of_these).cloned());
        QrCard {
            entries: Journal::from_entries(sent).entries().to_vec(),
            is_whole: false,
        }
    }

    /// What is left of an entry that adds the chick or sets a part.
    fn set(&self, entry: &Entry) -> Option<Change> {
        if let Change::ChickAdded(plan) = &entry.change {
            let plan = plan.with_only(&self.kinds, &self.topics);
            return Some(Change::ChickAdded(Box::new(plan)));
        }
        let Change::PartSet {
            part,
            replaces,
            side,
            is_carer,
        } = &entry.change
        else {
            return None;
        };
        let kind = part.kind();
        let is_sent = self.in_force.contains(&entry.id) && self.kinds.contains(&kind);
        let plan = is_sent.then(|| CarePlan::of_part(part.as_ref().clone()))?;
        let named = replaces.iter().filter(|_| self.names_older);
        Some(Change::PartSet {
            part: Box::new(plan.with_only(&self.kinds, &self.topics).part(kind)),
            replaces: named.copied().collect(),
            side: *side,
            is_carer: *is_carer,
        })
    }
}

fn card_bytes(entries: &[Entry]) -> Vec<u8> {
    let mut writer = ByteWriter::default();
    write_entries(&mut writer, entries);
    writer.finish()
}

/// The entries of a card: of one chick, which one of them adds.
pub(crate) fn card_of_bytes(bytes: &[u8]) -> Result<Vec<Entry>, UnpackError> {
    let entries = entries_of_bytes(bytes)?;
    let chicks = Journal::from_entries(entries.clone()).chicks();
    let is_of_one = |chick| entries.iter().all(|entry| entry.chick == chick);
    match chicks[..] {
        [chick] if is_of_one(chick) => Ok(entries),
        _ => Err(UnpackError::OutOfPlace),
    }
}

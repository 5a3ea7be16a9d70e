//! Phones around one chick: what each holds, what was given, and how time goes on.

use perchlight::domain::instruction::answer::Instruction;
use perchlight::domain::journal::chick::Chick;
use perchlight::domain::journal::entries::{
    Change, ChickId, CropAtWeighing, CropFeel, CropState, Entry, EntryId, Journal, Response,
    WhyPassedOver,
};
use perchlight::domain::journal::incoming::incoming;
use perchlight::domain::outlook::{Outlook, outlook};
use perchlight::domain::plan::care_plan::{CarePlan, Contact, Reference, Role};
use perchlight::domain::plan::parts::Author;
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::{Grams, Millilitres, Percent};
use perchlight::domain::time::moment::{Day, Moment, Offset, WallTime};
use perchlight::domain::time::zone::{OffsetChange, Zone};

use crate::acts::{Edit, Who};

pub(crate) const CHICK: ChickId = ChickId(*b"a made-up ck");

/// The weight of the chick, g: that of a green-winged macaw that is weaned (tests only).
const WEIGHT_G: i32 = 1_000;

/// One carer's phone, the other's and the breeder's.
#[derive(Debug, Clone)]
pub(crate) struct Home {
    pub(crate) now: Moment,
    pub(crate) zone: Zone,
    zone_changes: Vec<OffsetChange>,
    pub(crate) owner: Journal,
    pub(crate) partner: Journal,
    pub(crate) breeder: Journal,
    /// The entries of the card as it was handed over.
    card: Vec<Entry>,
    /// What the last act noted, and on whose phone.
    pub(crate) last: Option<(Who, Vec<EntryId>)>,
    count: u32,
}

impl Home {
    pub(crate) fn handed_over() -> Self {
        let day = Day::from_date(2026, 3, 2).unwrap();
        let now = Moment::from_seconds(i64::from(day.number()) * 86_400 + 12 * 3_600);
        let mut home = Self {
            now,
            zone: Zone::fixed(Offset::UTC),
            zone_changes: Vec::new(),
            owner: Journal::default(),
            partner: Journal::default(),
            breeder: Journal::default(),
            card: Vec::new(),
            last: None,
            count: 0,
        };
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        plan.hatched = Some(day.plus(-84));
        plan.reference = Some(Reference {
            weight: Grams::whole(WEIGHT_G),
            day,
        });
        for feed in &mut plan.feeds {
            feed.volume = Millilitres::whole(80);
        }
        let added = home.entry(now, now, "breeder", Change::ChickAdded(Box::new(plan)));
        home.card = vec![added.clone()];
        for journal in [&mut home.owner, &mut home.partner, &mut home.breeder] {
            journal.append(now, added.clone()).unwrap();
        }
        home.note(Who::Owner, now, Change::Arrived);
        home.joined();
        home.last = None;
        home
    }

    pub(crate) fn journal(&self, who: Who) -> &Journal {
        match who {
            Who::Owner => &self.owner,
            Who::Partner => &self.partner,
        }
    }

    fn journal_mut(&mut self, who: Who) -> &mut Journal {
        match who {
            Who::Owner => &mut self.owner,
            Who::Partner => &mut self.partner,
        }
    }

    pub(crate) fn outlook(&self, who: Who) -> Outlook {
        outlook(self.now, self.journal(who), CHICK, &self.zone).expect("the chick is there")
    }

    fn entry(&mut self, at: Moment, noted_at: Moment, by: &str, change: Change) -> Entry {
        self.count += 1;
        let mut id = [0; 12];
        // Ids fall in no order of time, as random ones do.
        let mixed = self.count.wrapping_mul(2_654_435_769);
        id[..4].copy_from_slice(&mixed.to_be_bytes());
        id[8..].copy_from_slice(&self.count.to_be_bytes());
        Entry {
            at,
            id: EntryId(id),
            chick: CHICK,
            noted_at,
            offset: self.zone.offset_at(at),
            by: by.to_owned(),
            change,
        }
    }

    /// Notes a change on a carer's phone; refused ones leave nothing.
    pub(crate) fn note(&mut self, who: Who, at: Moment, change: Change) -> bool {
        let by = match who {
            Who::Owner => "owner",
            Who::Partner => "partner",
        };
        let now = self.now;
        let entry = self.entry(at, now, by, change);
        let id = entry.id;
        let is_taken = self.journal_mut(who).append(now, entry).is_ok();
        if is_taken {
            self.last = Some((who, vec![id]));
        }
        is_taken
    }

    /// Food at its time; which feed it was nobody says.
    pub(crate) fn fed(
        &mut self,
        who: Who,
        at: Moment,
        taken: Millilitres,
        offered: Millilitres,
    ) -> bool {
        let change = Change::Fed {
            counts_as: None,
            taken,
            offered,
            served_at: None,
            response: Response::Eager,
        };
        self.note(who, at, change)
    }

    pub(crate) fn refused(&mut self, who: Who) {
        if let Instruction::Feed { volume, .. } = self.outlook(who).instruction {
            let (counts_as, offered) = (None, volume);
            self.note(who, self.now, Change::FeedRefused { counts_as, offered });
        }
    }

    pub(crate) fn passed_over(&mut self) {
        let next = self.outlook(Who::Owner).next_feed;
        if let Some(feed) = next.filter(|feed| feed.is_due(self.now)) {
            let (slot, day, why) = (feed.slot, feed.day, WhyPassedOver::NotPossible);
            self.note(
                Who::Owner,
                self.now,
                Change::FeedPassedOver { slot, day, why },
            );
        }
    }

    pub(crate) fn weighed(&mut self, who: Who, off_per_mille: i8) {
        self.weighed_at(who, WEIGHT_G + i32::from(off_per_mille) * WEIGHT_G / 1_000);
    }

    pub(crate) fn weighed_at(&mut self, who: Who, grams: i32) {
        let change = Change::Weighed {
            weight: Grams::whole(grams),
            crop: CropAtWeighing::Empty,
        };
        self.note(who, self.now, change);
    }

    pub(crate) fn crop_of(&mut self, who: Who, state: CropState) {
        let feel = CropFeel::Soft;
        self.note(who, self.now, Change::CropSeen { state, feel });
    }

    pub(crate) fn gone(&mut self) {
        let signs = self.chick(Who::Owner).signs_present(Moment::EARLIEST);
        let now = self.now;
        for seen in signs {
            self.note(Who::Owner, now, Change::SignGone { sign: seen.what });
        }
    }

    pub(crate) fn chick(&self, who: Who) -> Chick {
        Chick::from_journal(self.journal(who), CHICK).expect("the chick is there")
    }

    pub(crate) fn dropped(&mut self) {
        if let Some(slot) = self.outlook(Who::Owner).weaning.next() {
            let by_breeder = true;
            self.note(
                Who::Owner,
                self.now,
                Change::FeedDropped { slot, by_breeder },
            );
        }
    }

    pub(crate) fn brought_back(&mut self) {
        if let Some(slot) = self.outlook(Who::Owner).weaning.dropped.last().copied() {
            self.note(Who::Owner, self.now, Change::FeedBroughtBack { slot });
        }
    }

    fn edited_plan(plan: &CarePlan, edit: Edit, count: u32) -> CarePlan {
        let mut plan = plan.clone();
        match edit {
            Edit::VetNumber => {
                plan.contacts
                    .retain(|contact| contact.role != Role::AvianVet);
                plan.contacts.push(Contact {
                    role: Role::AvianVet,
                    name: "a vet".to_owned(),
                    number: format!("555 01{:02}", count % 100),
                });
            }
            Edit::BedtimeVolume(by) => {
                if let Some(feed) = plan.feeds.last_mut() {
                    let tenths = (feed.volume.tenths() + i32::from(by) * 10).clamp(200, 1_000);
                    feed.volume = Millilitres::tenths_held(tenths);
                }
            }
            Edit::BedtimeTime(by) => {
                if let Some(feed) = plan.feeds.last_mut() {
                    let minutes = (feed.time.minutes() + i32::from(by)).clamp(20 * 60, 23 * 60);
                    feed.time = WallTime::from_minutes(minutes);
                }
            }
            Edit::Confirmed => plan.unconfirmed.clear(),
            Edit::LossLimit(pct) => plan.loss_limit = Percent::whole(i32::from(pct)),
        }
        plan
    }

    pub(crate) fn edited(&mut self, who: Who, edit: Edit) {
        let plan = Self::edited_plan(&self.chick(who).plan, edit, self.count);
        let changes = self.chick(who).plans.sets(&plan, Author::OWNER);
        let mut ids = Vec::new();
        for change in changes {
            if self.note(who, self.now, change) {
                ids.extend(self.last.take().into_iter().flat_map(|(_, ids)| ids));
            }
        }
        self.last = Some((who, ids));
    }

    /// The breeder edits the plan on her own phone, and the owner takes the card that she sends.
    pub(crate) fn breeder_edits(&mut self, edit: Edit) {
        let chick = self.breeders_chick();
        // The form opens with what she last proposed.
        let left = chick
            .plans
            .as_left_by(Author::BREEDER_AFAR)
            .expect("the chick is there");
        let plan = Self::edited_plan(&left, edit, self.count);
        let now = self.now;
        for change in chick.plans.sets(&plan, Author::BREEDER_AFAR) {
            let entry = self.entry(now, now, "breeder", change);
            self.breeder.append(now, entry).unwrap();
        }
        let card = self.breeder.entries_of_plan(CHICK);
        self.takes(Who::Owner, &card);
    }

    /// A card is taken as the screen takes it: joined, and what it proposes is taken with it.
    fn takes(&mut self, who: Who, card: &[Entry]) {
        let found = incoming(self.journal(who), card, true, self.now);
        let card = Journal::from_entries(card.to_vec());
        self.journal_mut(who).join(&card);
        for one in found {
            let sets = one.taken;
            if !sets.is_empty() {
                self.note(who, self.now, Change::PartTaken { sets });
            }
        }
        self.last = None;
    }

    /// The card of the handover is opened again.
    pub(crate) fn old_card(&mut self, who: Who) {
        let card = self.card.clone();
        self.takes(who, &card);
    }

    pub(crate) fn joined(&mut self) {
        self.owner.join(&self.partner);
        self.partner.join(&self.owner);
    }

    pub(crate) fn reported(&mut self) {
        self.breeder.join(&self.owner);
    }

    pub(crate) fn breeders_chick(&self) -> Chick {
        Chick::from_journal(&self.breeder, CHICK).expect("the chick is there")
    }

    /// From now on the wall clock runs so much later.
    pub(crate) fn clock_moved(&mut self, minutes: i32) {
        let offset = self.zone.offset_at(self.now).minutes() + minutes;
        let offset = Offset::from_minutes(offset.clamp(-11 * 60, 12 * 60));
        let from = self.now;
        self.zone_changes.push(OffsetChange { from, offset });
        self.zone = Zone::new(Offset::UTC, self.zone_changes.clone());
    }
}

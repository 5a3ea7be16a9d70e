//! What was decided about a plan still holds, whatever is edited, joined, tapped again and undone.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

use perchlight::domain::feeding::scheduled::FeedState;
use perchlight::domain::journal::chick::Chick;
use perchlight::domain::journal::entries::{Change, ChickId, Entry, EntryId, Journal, Refusal};
use perchlight::domain::journal::incoming::incoming;
use perchlight::domain::journal::plan_record::PlanRecord;
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::outlook::outlook;
use perchlight::domain::plan::care_plan::{CarePlan, Contact, PlannedFeed, Role, Slot};
use perchlight::domain::plan::parts::{Author, PartKind, Side};
use perchlight::domain::plan::plan_line::PlanLine;
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::{Celsius, Grams, Millilitres, Percent};
use perchlight::domain::time::moment::{Day, Moment, Offset, WallTime};
use perchlight::share::card::card_to_link_text;
use perchlight::share::import::{Imported, read_text};
use perchlight::words::Language;
use perchlight::words::format::Writing;
use proptest::collection::vec;
use proptest::prelude::*;

const CHICK: ChickId = ChickId([7; 12]);

fn plan() -> CarePlan {
    CarePlan::default_for(Species::GreenWingedMacaw)
}

/// A chick added by its breeder on day 0 at 05:00.
fn added() -> Phone {
    Phone(Scenario::new(CHICK, plan(), Day::from_number(20_000), Offset::UTC).journal())
}

/// What one phone holds.
#[derive(Debug, Clone)]
struct Phone(Journal);

impl Phone {
    fn at(day: i32, hour: i32, minute: i32) -> Moment {
        let day = i64::from(20_000 + day) * 86_400;
        Moment::from_seconds(day).plus_minutes(i64::from(hour * 60 + minute))
    }

    fn plans(&self) -> PlanRecord {
        self.0.plans(CHICK).unwrap()
    }

    fn plan(&self) -> CarePlan {
        self.plans().now().unwrap().1.clone()
    }

    fn chick(&self) -> Chick {
        Chick::from_journal(&self.0, CHICK).unwrap()
    }

    fn note(&mut self, at: Moment, by: &str, change: Change) -> Result<EntryId, Refusal> {
        let mut id = [0; 12];
        id[0] = by.bytes().next().unwrap_or_default();
        id[8..].copy_from_slice(&u32::try_from(self.0.entries().len()).unwrap().to_be_bytes());
        let entry = Entry {
            at,
            id: EntryId(id),
            chick: CHICK,
            noted_at: at,
            offset: Offset::UTC,
            by: by.to_owned(),
            change,
        };
        self.0.append(at, entry).map(|()| EntryId(id))
    }

    /// Edits the plan as a form does: only what differs is set.
    fn edit(&mut self, at: Moment, by: &str, author: Author, change: impl Fn(&mut CarePlan)) {
        let mut new = self.plans().as_left_by(author).unwrap();
        change(&mut new);
        for mut change in self.plans().sets(&new, author) {
            if self.note(at, by, change.clone()) == Err(Refusal::AskTheBreeder) {
                if let Change::PartSet { is_carer, .. } = &mut change {
                    *is_carer = false;
                }
                self.note(at, by, change).unwrap();
            }
        }
    }

    fn card(&self) -> Vec<Entry> {
        self.0.entries_of_plan(CHICK)
    }

    fn join(&mut self, entries: Vec<Entry>) {
        self.0.join(&Journal::from_entries(entries));
    }
}

/// The breeder's first card says 10 %, her next one 6 %; the owner finds the first one in the chat
/// again and taps it.
#[test]
fn an_old_card_tapped_again_rolls_nothing_back() {
    let mut breeder = added();
    let first = breeder.card();
    breeder.edit(Phone::at(3, 9, 0), "Bea", Author::BREEDER, |plan| {
        plan.loss_limit = Percent::whole(6);
    });
    let mut owner = Phone(Journal::from_entries(first.clone()));
    owner.join(breeder.card());
    assert_eq!(owner.plan().loss_limit, Percent::whole(6));
    let before = owner.chick();
    let found = incoming(&owner.0, &first, true, Phone::at(5, 9, 0));
    assert!(found[0].is_older && found[0].changes.is_empty() && found[0].taken.is_empty());
    // Day 20,003 from 1970 is 7 October 2024: 20,003 - 19,723 (1 January 2024) = day 280 of the year, from 0.
    let said = Writing::metric(Language::English).nothing_changes(&found[0]);
    assert!(
        said.starts_with("Older than yours (") && said.contains("7 Oct"),
        "{said}"
    );
    owner.join(first);
    assert_eq!(owner.chick(), before);
    assert_eq!(owner.plan().loss_limit, Percent::whole(6));
}

#[test]
fn a_card_comes_back_from_its_link_with_what_was_set_since() {
    let mut breeder = added();
    breeder.edit(Phone::at(3, 9, 0), "Bea", Author::BREEDER, |plan| {
        plan.loss_limit = Percent::whole(6);
        plan.contacts.push(Contact {
            role: Role::Breeder,
            name: "Bea".to_owned(),
            number: "+1 555 0100".to_owned(),
        });
    });
    let Ok(Imported::Card(entries)) = read_text(&card_to_link_text(&breeder.card())) else {
        panic!("no card");
    };
    assert_eq!(Phone(Journal::from_entries(entries)).plan(), breeder.plan());
}

/// One writes the standing text at home, the other the room's temperature on the way.
#[test]
fn two_carers_who_edit_different_parts_both_keep_what_they_wrote() {
    let (mut one, mut two) = (added(), added());
    one.edit(Phone::at(3, 9, 0), "Ann", Author::OWNER, |plan| {
        plan.note = "Left side.".to_owned();
    });
    two.edit(Phone::at(3, 10, 0), "Ben", Author::OWNER, |plan| {
        plan.room_to = Celsius::whole(29);
    });
    one.join(two.card());
    let plan = one.plan();
    assert_eq!(
        (plan.note.as_str(), plan.room_to),
        ("Left side.", Celsius::whole(29))
    );
    assert_eq!(one.plans().proposals(), []);
}

fn volume(plan: &mut CarePlan, slot: Slot, ml: i32) {
    let feeds = plan.feeds.iter_mut();
    for feed in feeds.filter(|feed| feed.slot == slot) {
        feed.volume = Millilitres::whole(ml);
    }
}

/// Both change the feeds on one evening without hearing of each other.
#[test]
fn of_two_edits_of_one_part_the_later_holds_and_the_other_waits_to_be_taken() {
    let (mut one, mut two) = (added(), added());
    one.edit(Phone::at(3, 9, 0), "Ann", Author::OWNER, |plan| {
        volume(plan, Slot::Midday, 70);
    });
    two.edit(Phone::at(3, 10, 0), "Ben", Author::OWNER, |plan| {
        volume(plan, Slot::Bedtime, 50);
    });
    one.join(two.card());
    let of = |phone: &Phone, slot| phone.plan().feed(slot).unwrap().volume;
    let was = plan().feed(Slot::Midday).unwrap().volume;
    assert_eq!(of(&one, Slot::Midday), was);
    assert_eq!(of(&one, Slot::Bedtime), Millilitres::whole(50));
    let waiting = one.plans().proposals();
    // Of what Ann wrote only her own line is proposed: the bedtime feed is not.
    assert_eq!(waiting.len(), 1);
    assert_eq!(
        (waiting[0].by.as_str(), &waiting[0].lines),
        ("Ann", &vec![PlanLine::Feed(Slot::Midday)])
    );
    for (is_taken, midday) in [(true, Millilitres::whole(70)), (false, was)] {
        let mut phone = one.clone();
        let answer = phone
            .plans()
            .answer(waiting[0].id, is_taken, Author::OWNER)
            .unwrap();
        phone.note(Phone::at(3, 11, 0), "Ann", answer).unwrap();
        assert_eq!(of(&phone, Slot::Midday), midday);
        assert_eq!(of(&phone, Slot::Bedtime), Millilitres::whole(50));
        assert_eq!(phone.plans().proposals(), []);
    }
}

/// The limit is the breeder's: hers holds although the owner wrote later. The vets are the owner's.
#[test]
fn of_two_sides_the_one_whose_part_it_is_holds() {
    let (mut breeder, mut owner) = (added(), added());
    let vet = |name: &str| Contact {
        role: Role::AvianVet,
        name: name.to_owned(),
        number: String::new(),
    };
    breeder.edit(Phone::at(3, 9, 0), "Bea", Author::BREEDER, |plan| {
        plan.loss_limit = Percent::whole(6);
        plan.contacts = vec![vet("Far")];
    });
    owner.edit(Phone::at(3, 8, 0), "Ann", Author::OWNER, |plan| {
        plan.contacts = vec![vet("Near")];
    });
    owner.edit(Phone::at(3, 11, 0), "Ann", Author::OWNER, |plan| {
        plan.loss_limit = Percent::whole(12);
    });
    owner.join(breeder.card());
    assert_eq!(owner.plan().loss_limit, Percent::whole(6));
    assert_eq!(owner.plan().contacts, vec![vet("Near")]);
    let lines: Vec<PlanLine> = owner
        .plans()
        .proposals()
        .into_iter()
        .flat_map(|waits| waits.lines)
        .collect();
    assert_eq!(
        lines,
        [PlanLine::Contact(Role::AvianVet), PlanLine::LossLimit]
    );
}

/// A breeder far away sends another volume with her report.
#[test]
fn what_comes_from_afar_changes_nothing_until_it_is_taken() {
    let (mut breeder, mut owner) = (added(), added());
    breeder.edit(Phone::at(3, 9, 0), "Bea", Author::BREEDER_AFAR, |plan| {
        volume(plan, Slot::Bedtime, 40);
    });
    let before = owner.plan();
    assert_eq!(breeder.plan(), before);
    let sent = breeder.card();
    // In a report it waits.
    let report = incoming(&owner.0, &sent, false, Phone::at(3, 12, 0));
    assert!(report[0].changes.is_empty() && report[0].taken.is_empty());
    assert_eq!(report[0].proposals, 1);
    owner.join(sent.clone());
    assert_eq!(owner.plan(), before);
    // As a card somebody takes it, and sees first what it changes and who wrote it when.
    let card = incoming(&added().0, &sent, true, Phone::at(3, 12, 0));
    let was = before.feed(Slot::Bedtime).unwrap().volume.tenths() / 10;
    let lines = Writing::metric(Language::English).incoming(&card[0]);
    assert_eq!(lines.len(), 1);
    let line = format!("Bedtime feed: 21:00, {was}\u{a0}ml → 21:00, 40\u{a0}ml (Bea, ");
    assert!(
        lines[0].starts_with(&line) && lines[0].ends_with("09:00)"),
        "{lines:?}"
    );
    let sets = card[0].taken.clone();
    owner
        .note(Phone::at(3, 12, 0), "Ann", Change::PartTaken { sets })
        .unwrap();
    assert_eq!(
        owner.plan().feed(Slot::Bedtime).unwrap().volume,
        Millilitres::whole(40)
    );
    // In force from when it was taken, not from when it was written.
    let (noon, now) = (Phone::at(3, 11, 59), Phone::at(4, 0, 0));
    assert_eq!(owner.chick().plan_at(noon, now), &before);
    assert_eq!(
        owner.chick().plan_at(Phone::at(3, 12, 0), now),
        &owner.plan()
    );
}

#[test]
fn a_report_tells_every_line_of_the_breeder_s_plan_that_it_would_change() {
    let (breeder, mut owner) = (added(), added());
    owner.edit(Phone::at(2, 18, 30), "Ann", Author::OWNER, |plan| {
        plan.loss_limit = Percent::whole(12);
        plan.ten_spoons = Some(Grams::whole(80));
    });
    let report = incoming(&breeder.0, owner.0.entries(), false, Phone::at(3, 12, 0));
    let lines = Writing::metric(Language::English).incoming(&report[0]);
    assert_eq!(lines.len(), 2);
    assert!(
        lines[1]
            .starts_with("Call the breeder at this weight loss: 10.0\u{a0}% → 12.0\u{a0}% (Ann, "),
        "{lines:?}"
    );
}

#[test]
fn what_adds_a_chick_cannot_be_taken_back() {
    let mut phone = added();
    let id = phone.0.entries()[0].id;
    let refused = phone.note(Phone::at(1, 0, 0), "", Change::Retracted { id });
    assert_eq!(refused, Err(Refusal::ChickStays));
    // Nor by an entry that came from elsewhere.
    let mut entry = phone.0.entries()[0].clone();
    entry.id = EntryId([1; 12]);
    entry.change = Change::Retracted { id };
    phone.join(vec![entry]);
    assert_eq!(phone.0.chicks(), [CHICK]);
    assert_eq!(phone.plan(), plan());
}

#[test]
fn only_the_newest_set_of_a_part_can_be_undone_and_the_one_before_returns() {
    let mut phone = added();
    let set = |phone: &mut Phone, hour, pct| {
        let before = phone.chick();
        phone.edit(Phone::at(3, hour, 0), "Ann", Author::OWNER, |plan| {
            plan.loss_limit = Percent::whole(pct);
        });
        (before, phone.0.entries().last().unwrap().id)
    };
    let (_, first) = set(&mut phone, 9, 8);
    let (before, second) = set(&mut phone, 10, 6);
    let undo = |id| Change::Retracted { id };
    assert_eq!(
        phone.note(Phone::at(3, 11, 0), "", undo(first)),
        Err(Refusal::PlanIsNewer)
    );
    phone.note(Phone::at(3, 11, 0), "", undo(second)).unwrap();
    assert_eq!(phone.plan(), before.plan);
    assert_eq!(phone.plan().loss_limit, Percent::whole(8));
    phone.note(Phone::at(3, 12, 0), "", undo(first)).unwrap();
    assert_eq!(phone.plan(), plan());
}

/// Added at 19:30 for 17:00: it was not missed today, and is due tomorrow.
#[test]
fn a_feed_added_in_the_evening_for_the_afternoon_was_not_missed_today() {
    let mut phone = added();
    phone.edit(Phone::at(3, 19, 30), "Bea", Author::BREEDER, |plan| {
        let mut feeds = plan.feeds.clone();
        feeds.insert(
            2,
            PlannedFeed {
                slot: Slot::Afternoon,
                time: WallTime::new(17, 0).unwrap(),
                volume: Millilitres::whole(60),
            },
        );
        plan.set_feeds(feeds);
    });
    let now = Phone::at(3, 19, 31);
    let zone = perchlight::domain::time::zone::Zone::fixed(Offset::UTC);
    let seen = outlook(now, &phone.0, CHICK, &zone).unwrap();
    let afternoons: Vec<(i32, &FeedState)> = seen
        .feeds
        .iter()
        .filter(|feed| feed.slot == Slot::Afternoon)
        .map(|feed| (feed.day.since(seen.lived.day), &feed.state))
        .collect();
    assert_eq!(afternoons, [(1, &FeedState::Upcoming)]);
}

#[test]
fn another_time_of_a_feed_leaves_the_order_of_drops_as_it_is() {
    let order = vec![Slot::Bedtime, Slot::Midday, Slot::Morning];
    let mut plan = plan();
    plan.drop_order.clone_from(&order);
    let mut feeds = plan.feeds.clone();
    feeds[1].time = WallTime::new(14, 30).unwrap();
    plan.set_feeds(feeds.clone());
    assert_eq!(plan.drop_order, order);
    feeds.remove(1);
    plan.set_feeds(feeds);
    assert_eq!(plan.drop_order, [Slot::Bedtime, Slot::Morning]);
}

#[test]
fn a_name_without_a_number_is_kept() {
    let mut phone = added();
    let contact = Contact {
        role: Role::AvianVet,
        name: "The clinic by the park".to_owned(),
        number: String::new(),
    };
    let named = contact.clone();
    phone.edit(Phone::at(1, 9, 0), "Ann", Author::OWNER, |plan| {
        plan.contacts = vec![named.clone()];
    });
    assert_eq!(phone.plan().contacts, [contact]);
    // Nobody is told to ring it.
    assert_eq!(phone.plan().contact(Role::AvianVet), None);
}

#[test]
fn the_short_name_of_a_plan_counts_what_was_set_and_is_the_same_on_both_phones() {
    let mut breeder = added();
    assert_eq!(breeder.plans().version().number, 1);
    breeder.edit(Phone::at(1, 9, 0), "Bea", Author::BREEDER, |plan| {
        plan.loss_limit = Percent::whole(8);
    });
    breeder.edit(Phone::at(2, 9, 0), "Bea", Author::BREEDER, |plan| {
        plan.loss_limit = Percent::whole(6);
    });
    breeder.edit(Phone::at(4, 9, 0), "Bea", Author::BREEDER, |plan| {
        plan.note = "Left side.".to_owned();
    });
    let version = breeder.plans().version();
    assert_eq!(
        (version.number, version.lived.day),
        (4, Day::from_number(20_004))
    );
    let owner = Phone(Journal::from_entries(breeder.card()));
    assert_eq!(owner.plans().version(), version);
}

/// What somebody does to a plan.
#[derive(Debug, Clone)]
enum Act {
    Edit(PartKind, i32),
    Undo,
    Answer(bool),
    TakeAll,
}

fn act() -> impl Strategy<Value = (usize, i32, Act)> {
    let kinds = prop::sample::select(vec![PartKind::Feeds, PartKind::Weight, PartKind::Equipment]);
    let act = prop_oneof![
        4 => (kinds, 1..9).prop_map(|(kind, value)| Act::Edit(kind, value)),
        2 => Just(Act::Undo),
        2 => any::<bool>().prop_map(Act::Answer),
        2 => Just(Act::TakeAll),
    ];
    // Who, and by how many minutes that phone's clock is wrong.
    (0..3_usize, -600..600, act)
}

fn change(plan: &mut CarePlan, kind: PartKind, value: i32) {
    match kind {
        PartKind::Feeds => volume(
            plan,
            [Slot::Morning, Slot::Midday][usize::from(value % 2 == 0)],
            40 + value,
        ),
        PartKind::Weight => plan.loss_limit = Percent::whole(value),
        PartKind::Equipment => plan.scale_step = Grams::whole(value),
        PartKind::Chick
        | PartKind::People
        | PartKind::Vets
        | PartKind::Formula
        | PartKind::Weaning
        | PartKind::Home
        | PartKind::Journey
        | PartKind::Words => {}
    }
}

const AUTHORS: [(&str, Author); 3] = [
    ("Ann", Author::OWNER),
    ("Ben", Author::OWNER),
    ("Cea", Author::BREEDER_AFAR),
];

/// Three phones that live apart and now and then take everything of another.
fn live(acts: &[(usize, i32, Act)]) -> Vec<Phone> {
    let mut phones = vec![added(); 3];
    for (minute, (who, wrong, act)) in acts.iter().enumerate() {
        let at =
            Phone::at(2, 0, 0).plus_minutes(i64::try_from(minute).unwrap() + i64::from(*wrong));
        let (by, author) = AUTHORS[*who];
        let other = phones[(who + 1) % 3].clone();
        let phone = &mut phones[*who];
        match act {
            Act::Edit(kind, value) => {
                phone.edit(at, by, author, |plan| change(plan, *kind, *value));
            }
            Act::Undo => {
                let sets = phone.plans().sets_in_force();
                if let Some(id) = sets.first() {
                    // Refused where a proposal was written after it; then nothing happens.
                    let undone = phone.note(at, by, Change::Retracted { id: *id });
                    assert!(matches!(undone, Ok(_) | Err(Refusal::PlanIsNewer)));
                }
            }
            Act::Answer(is_taken) => {
                let waiting = phone.plans().proposals();
                let answer = waiting
                    .first()
                    .and_then(|first| phone.plans().answer(first.id, *is_taken, author));
                if let Some(answer) = answer {
                    // What an owner asks for no owner can take.
                    let answered = phone.note(at, by, answer);
                    assert!(matches!(answered, Ok(_) | Err(Refusal::AskTheBreeder)));
                }
            }
            Act::TakeAll => {
                let found = incoming(&phone.0, other.0.entries(), author.is_carer, at);
                phone.join(other.0.entries().to_vec());
                if let Some(sets) = found
                    .first()
                    .map(|found| found.taken.clone())
                    .filter(|sets| !sets.is_empty())
                {
                    phone.note(at, by, Change::PartTaken { sets }).unwrap();
                }
            }
        }
    }
    phones
}

proptest! {
    #[test]
    fn the_plan_is_the_same_in_whatever_order_its_sets_come_once_or_twice(
        acts in vec(act(), 0..14),
        turn in 0..40_usize,
    ) {
        let phones = live(&acts);
        let mut all = Journal::default();
        for phone in &phones {
            all.join(&phone.0);
        }
        let whole = Phone(all.clone());
        let mut entries = [all.entries(), all.entries()].concat();
        let length = entries.len();
        entries.rotate_left(turn % length);
        let mut again = Journal::default();
        for entry in entries {
            again.insert(entry);
        }
        prop_assert_eq!(Phone(again).plans(), whole.plans());
        let mut other_way = Journal::default();
        for phone in phones.iter().rev() {
            other_way.join(&phone.0);
        }
        prop_assert_eq!(Phone(other_way).plans(), whole.plans());
        let chick = whole.chick();
        prop_assert_eq!(chick.plan_at(Moment::LATEST, Moment::EARLIEST), &chick.plan);
    }

    #[test]
    fn undoing_what_was_just_set_gives_the_plan_from_before(
        acts in vec(act(), 0..14),
        value in 1..9,
        who in 0..3_usize,
    ) {
        let mut phone = live(&acts).swap_remove(who);
        let (by, author) = AUTHORS[who];
        let at = Phone::at(9, 0, 0);
        let (before, count) = (phone.plans(), phone.0.entries().len());
        phone.edit(at, by, author, |plan| change(plan, PartKind::Weight, value));
        if phone.0.entries().len() > count {
            let id = phone.0.entries().iter().rev()
                .find(|entry| matches!(entry.change, Change::PartSet { .. }) && entry.at == at).unwrap().id;
            phone.note(at, by, Change::Retracted { id }).unwrap();
        }
        prop_assert_eq!(phone.plans(), before);
    }

    /// What phone 0 had at some time is what an old card brings, and it has it still.
    #[test]
    fn an_older_plan_that_comes_in_again_changes_nothing(
        acts in vec(act(), 0..14),
        cut in 0..14_usize,
    ) {
        let old = live(&acts[..cut.min(acts.len())]).swap_remove(0);
        let mut phone = live(&acts).swap_remove(0);
        let before = phone.chick();
        let found = incoming(&phone.0, &old.card(), true, Phone::at(9, 0, 0));
        prop_assert!(found[0].changes.is_empty() && found[0].taken.is_empty());
        phone.join(old.card());
        prop_assert_eq!(phone.chick(), before);
    }

    #[test]
    fn no_edit_is_lost_in_silence(acts in vec(act(), 0..14)) {
        let phones = live(&acts);
        let mut all = Journal::default();
        for phone in &phones {
            all.join(&phone.0);
        }
        let plans = all.plans(CHICK).unwrap();
        // Every set that lives and that no later one names either holds, or waits, or says the same.
        let dead = all.retracted();
        let held = plans.sets_in_force();
        let now = plans.now().unwrap().1.clone();
        let waiting: Vec<EntryId> = plans.proposals().into_iter().map(|waits| waits.id).collect();
        let named = |id: &EntryId| all.entries().iter().any(|entry| {
            let Change::PartSet { replaces, .. } = &entry.change else { return false };
            !dead.contains(&entry.id) && replaces.contains(id)
        });
        for entry in all.entries() {
            let Change::PartSet { part, .. } = &entry.change else { continue };
            if dead.contains(&entry.id) || named(&entry.id) {
                continue;
            }
            let is_seen = held.contains(&entry.id) || waiting.contains(&entry.id);
            let mut proposed = now.clone();
            proposed.set_part(part.as_ref().clone());
            // What it changed itself may hold already, so that nothing of it is left to propose.
            prop_assert!(is_seen || plans.answer(entry.id, true, Author::OWNER).is_some(), "{:?}", entry);
        }
    }
}

#[test]
fn a_part_belongs_to_one_side() {
    let owners: Vec<PartKind> = PartKind::ALL
        .into_iter()
        .filter(|kind| kind.side() == Side::Owner)
        .collect();
    assert_eq!(owners, [PartKind::Vets, PartKind::Equipment]);
}

//! An owner who wants another value in a breeder's part asks, does and tells, or notes what she said.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

use perchlight::domain::journal::entries::{Change, ChickId, Entry, EntryId, Journal, Refusal};
use perchlight::domain::journal::incoming::incoming;
use perchlight::domain::journal::plan_record::PlanRecord;
use perchlight::domain::outlook::outlook;
use perchlight::domain::plan::ask_first::AskFirst;
use perchlight::domain::plan::care_plan::{CarePlan, Slot};
use perchlight::domain::plan::parts::{Author, PartKind};
use perchlight::domain::plan::plan_line::PlanLine;
use perchlight::domain::plan::species::Species;
use perchlight::domain::quantity::units::{Celsius, Millilitres, Percent};
use perchlight::domain::time::moment::{Moment, Offset};
use perchlight::domain::time::zone::Zone;
use perchlight::share::html_file::report_html;
use perchlight::share::vet_page::vet_page_html;
use perchlight::words::Language;
use perchlight::words::format::Writing;

const CHICK: ChickId = ChickId([7; 12]);

/// So many hours after 2026-10-31T05:00:00Z.
fn at(hour: i64) -> Moment {
    Moment::from_seconds(1_793_422_800).plus_minutes(60 * hour)
}

/// What one phone holds.
#[derive(Debug, Clone, Default)]
struct Phone(Journal);

impl Phone {
    fn plans(&self) -> PlanRecord {
        self.0.plans(CHICK).unwrap()
    }

    fn plan(&self) -> CarePlan {
        self.plans().now().unwrap().1.clone()
    }

    fn midday_ml(&self) -> i32 {
        self.plan().feed(Slot::Midday).unwrap().volume.tenths() / 10
    }

    /// What the midday feed held at an hour, as it is known at 9.
    fn midday_held(&self, hour: i64) -> Millilitres {
        let plans = self.plans();
        let plan = plans.at(at(hour), at(9)).unwrap();
        plan.feed(Slot::Midday).unwrap().volume
    }

    fn note(&mut self, hour: i64, by: &str, change: Change) -> Result<EntryId, Refusal> {
        let mut id = [0; 12];
        id[0] = by.bytes().next().unwrap_or_default();
        id[8..].copy_from_slice(&u32::try_from(self.0.entries().len()).unwrap().to_be_bytes());
        let entry = Entry {
            at: at(hour),
            id: EntryId(id),
            chick: CHICK,
            noted_at: at(hour),
            offset: Offset::UTC,
            by: by.to_owned(),
            change,
        };
        self.0.append(at(hour), entry).map(|()| EntryId(id))
    }

    fn edited(&self, change: impl Fn(&mut CarePlan)) -> CarePlan {
        let mut new = self.plan();
        change(&mut new);
        new
    }

    /// Ann does and tells.
    fn tell(&mut self, hour: i64, change: impl Fn(&mut CarePlan)) -> Result<EntryId, Refusal> {
        let new = self.edited(change);
        let mut sets = self.plans().sets(&new, Author::OWNER);
        assert_eq!(sets.len(), 1);
        self.note(hour, "Ann", sets.remove(0))
    }

    /// Ann asks.
    fn ask(&mut self, hour: i64, change: impl Fn(&mut CarePlan)) -> EntryId {
        let new = self.edited(change);
        let mut asks = self.plans().asks(&new);
        assert_eq!(asks.len(), 1);
        self.note(hour, "Ann", asks.remove(0)).unwrap()
    }

    fn join(&mut self, other: &Self) {
        self.0.join(&other.0);
    }

    /// What is not agreed, line by line.
    fn not_agreed(&self) -> Vec<PlanLine> {
        let sets = self.plans().not_agreed().into_iter();
        sets.flat_map(|set| set.lines).collect()
    }
}

/// 50 ml at 07:00, 14:00 and 21:00, 39.0 to 40.5 °C, a call at 10 %. The breeder's phone, and Ann's, on which
/// her card was taken.
fn two() -> (Phone, Phone) {
    let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
    for feed in &mut plan.feeds {
        feed.volume = Millilitres::whole(50);
    }
    let mut breeder = Phone::default();
    let added = breeder
        .note(0, "Bea", Change::ChickAdded(Box::new(plan)))
        .unwrap();
    let (sets, said_by) = (vec![added], String::new());
    breeder
        .note(0, "Bea", Change::PartAgreed { sets, said_by })
        .unwrap();
    let mut owner = Phone::default();
    let card = breeder.0.entries_of_plan(CHICK);
    let sets = incoming(&owner.0, &card, true, at(1))[0].taken.clone();
    owner.0.join(&Journal::from_entries(card));
    owner.note(1, "Ann", Change::PartTaken { sets }).unwrap();
    (breeder, owner)
}

fn midday(ml: i32) -> impl Fn(&mut CarePlan) {
    move |plan| {
        for feed in plan
            .feeds
            .iter_mut()
            .filter(|feed| feed.slot == Slot::Midday)
        {
            feed.volume = Millilitres::whole(ml);
        }
    }
}

fn cooler(plan: &mut CarePlan) {
    plan.serve_to = Celsius::whole(40);
}

fn said(phone: &Phone) -> String {
    Writing::metric(Language::English).plan_version(phone.plans().version())
}

#[test]
fn what_is_asked_for_changes_nothing_until_the_breeder_says_yes() {
    let (mut breeder, mut owner) = two();
    owner.ask(5, midday(60));
    assert_eq!(owner.midday_ml(), 50);
    assert_eq!(owner.not_agreed(), []);
    let zone = Zone::fixed(Offset::UTC);
    let seen = outlook(at(6), &owner.0, CHICK, &zone).unwrap();
    let feeds = seen.feeds.iter().filter(|feed| feed.slot == Slot::Midday);
    assert!(feeds.clone().count() > 0);
    assert!(
        feeds
            .clone()
            .all(|feed| feed.volume == Millilitres::whole(50))
    );
    // It stands on the breeder's phone once the report is there, as a question to her.
    breeder.join(&owner);
    let asked = breeder.plans().proposals();
    assert_eq!(asked.len(), 1);
    assert_eq!((asked[0].is_asked, asked[0].by.as_str()), (true, "Ann"));
    assert_eq!(asked[0].lines, [PlanLine::Feed(Slot::Midday)]);
    let yes = breeder
        .plans()
        .answer(asked[0].id, true, Author::BREEDER_AFAR);
    breeder.note(8, "Bea", yes.unwrap()).unwrap();
    owner.join(&breeder);
    for phone in [&breeder, &owner] {
        assert_eq!(phone.midday_ml(), 60);
        assert_eq!(phone.plans().proposals(), []);
        assert!(phone.plans().version().is_agreed);
        // From her answer on, not from when it was asked.
        assert_eq!(
            (phone.midday_held(7), phone.midday_held(8)),
            (Millilitres::whole(50), Millilitres::whole(60))
        );
    }
}

#[test]
fn a_no_to_what_is_asked_ends_the_question_and_changes_nothing() {
    let (mut breeder, mut owner) = two();
    let id = owner.ask(5, midday(60));
    breeder.join(&owner);
    let no = breeder.plans().answer(id, false, Author::BREEDER_AFAR);
    breeder.note(8, "Bea", no.unwrap()).unwrap();
    owner.join(&breeder);
    for phone in [&breeder, &owner] {
        assert_eq!(phone.midday_ml(), 50);
        assert_eq!(phone.plans().proposals(), []);
        assert_eq!(phone.not_agreed(), []);
    }
}

#[test]
fn two_things_asked_for_in_one_part_are_answered_one_by_one() {
    let (mut breeder, mut owner) = two();
    owner.ask(5, midday(60));
    owner.ask(6, |plan| {
        for feed in plan
            .feeds
            .iter_mut()
            .filter(|feed| feed.slot == Slot::Bedtime)
        {
            feed.volume = Millilitres::whole(55);
        }
    });
    breeder.join(&owner);
    for hour in [8, 9] {
        let asked = breeder.plans().proposals();
        let yes = breeder
            .plans()
            .answer(asked[0].id, true, Author::BREEDER_AFAR);
        breeder.note(hour, "Bea", yes.unwrap()).unwrap();
    }
    // The second yes joins both, and is taken as what she writes from afar is.
    owner.join(&breeder);
    let waiting = owner.plans().proposals();
    assert_eq!(waiting.len(), 1);
    assert!(!waiting[0].is_asked);
    let sets = owner.plans().untaken();
    owner.note(10, "Ann", Change::PartTaken { sets }).unwrap();
    assert_eq!(owner.midday_ml(), 60);
    assert_eq!(
        owner.plan().feed(Slot::Bedtime).unwrap().volume,
        Millilitres::whole(55)
    );
    assert!(owner.plans().version().is_agreed);
}

#[test]
fn a_card_never_takes_what_an_owner_asks_for() {
    let (_, mut owner) = two();
    owner.ask(5, midday(60));
    let card = owner.0.entries_of_plan(CHICK);
    let partner = Phone::default();
    let found = incoming(&partner.0, &card, true, at(6));
    assert_eq!(
        found[0].new.feed(Slot::Midday).unwrap().volume,
        Millilitres::whole(50)
    );
    let (breeder, _) = two();
    assert_eq!(incoming(&breeder.0, &card, true, at(6))[0].taken, []);
}

#[test]
fn what_is_done_and_told_holds_on_every_phone_and_is_marked_until_she_answers() {
    let (mut breeder, mut owner) = two();
    assert!(!said(&owner).contains("not agreed"));
    owner.tell(5, cooler).unwrap();
    breeder.join(&owner);
    for phone in [&breeder, &owner] {
        assert_eq!(phone.plan().serve_to, Celsius::whole(40));
        assert_eq!(phone.not_agreed(), [PlanLine::ServingWindow]);
        assert!(said(phone).ends_with(", not agreed"), "{}", said(phone));
    }
    // Also on a phone that has only the card.
    let card = Journal::from_entries(owner.0.entries_of_plan(CHICK));
    let mut third = Phone(card);
    let sets = vec![third.plans().added().id];
    third.note(6, "Cy", Change::PartTaken { sets }).unwrap();
    assert_eq!(third.not_agreed(), [PlanLine::ServingWindow]);
    let yes = breeder
        .plans()
        .answer_told(PartKind::Formula, true, Author::BREEDER_AFAR);
    breeder.note(8, "Bea", yes.unwrap()).unwrap();
    owner.join(&breeder);
    for phone in [&breeder, &owner] {
        assert_eq!(phone.plan().serve_to, Celsius::whole(40));
        assert_eq!(phone.not_agreed(), []);
        assert!(!said(phone).contains("not agreed"));
    }
}

#[test]
fn a_no_writes_her_value_anew_and_the_mark_goes_when_it_is_taken() {
    let (mut breeder, mut owner) = two();
    owner.tell(5, cooler).unwrap();
    breeder.join(&owner);
    assert!(!breeder.plans().not_agreed()[0].is_declined);
    let no = breeder
        .plans()
        .answer_told(PartKind::Formula, false, Author::BREEDER_AFAR);
    breeder.note(8, "Bea", no.unwrap()).unwrap();
    owner.join(&breeder);
    for phone in [&breeder, &owner] {
        assert_eq!(phone.plan().serve_to, Celsius::whole(40));
        assert!(phone.plans().not_agreed()[0].is_declined);
    }
    let waiting = owner.plans().proposals();
    assert_eq!(waiting[0].lines, [PlanLine::ServingWindow]);
    for (is_taken, tenths) in [(true, 405), (false, 400)] {
        let mut phone = owner.clone();
        let answer = phone.plans().answer(waiting[0].id, is_taken, Author::OWNER);
        phone.note(9, "Ann", answer.unwrap()).unwrap();
        assert_eq!(phone.plan().serve_to.tenths(), tenths);
        assert_eq!(phone.plans().version().is_agreed, is_taken);
    }
}

#[test]
fn more_hotter_looser_less_and_fewer_are_never_done_and_told() {
    let (_, mut owner) = two();
    let edits: [&dyn Fn(&mut CarePlan); 5] = [
        &|plan| midday(51)(plan),
        &|plan| midday(49)(plan),
        &|plan| {
            plan.feeds.remove(1);
        },
        &|plan| plan.serve_to = Celsius::whole(41),
        &|plan| plan.loss_limit = Percent::whole(11),
    ];
    let before = owner.plan();
    for edit in edits {
        assert_eq!(owner.tell(5, edit), Err(Refusal::AskTheBreeder));
        assert_eq!(owner.plan(), before);
    }
    assert_eq!(
        owner
            .tell(5, |plan| plan.loss_limit = Percent::whole(9))
            .map(drop),
        Ok(())
    );
    // Back to what she gave is no more than she gave.
    assert_eq!(
        owner
            .tell(6, |plan| plan.loss_limit = Percent::whole(10))
            .map(drop),
        Ok(())
    );
    assert_eq!(owner.not_agreed(), []);
}

#[test]
fn what_she_said_on_the_telephone_holds_at_once_and_is_agreed() {
    let (mut breeder, mut owner) = two();
    let part = owner.edited(midday(60)).part(PartKind::Feeds);
    let risks = [AskFirst::MoreFood(Slot::Midday)];
    assert_eq!(owner.plans().ask_first(&part), risks);
    let id = owner.ask(5, midday(60));
    let agreed = Change::PartAgreed {
        sets: vec![id],
        said_by: "Bea".to_owned(),
    };
    // She said so an hour before it was written down: the feeds of that hour were not of it.
    owner.note(4, "Ann", agreed.clone()).unwrap();
    breeder.join(&owner);
    for phone in [&breeder, &owner] {
        assert_eq!(phone.midday_ml(), 60);
        assert_eq!(phone.not_agreed(), []);
        assert_eq!(
            (phone.midday_held(4), phone.midday_held(5)),
            (Millilitres::whole(50), Millilitres::whole(60))
        );
    }
    let writing = Writing::metric(Language::English);
    assert!(writing.change(&agreed, None).contains("Bea"));
}

#[test]
fn an_owner_who_typed_the_chick_in_asks_nobody() {
    let plan = CarePlan::default_for(Species::GreenWingedMacaw);
    let mut owner = Phone::default();
    owner
        .note(0, "Ann", Change::ChickAdded(Box::new(plan)))
        .unwrap();
    // A partner takes her card, and nobody has become a breeder by that.
    let mut partner = Phone(Journal::from_entries(owner.0.entries_of_plan(CHICK)));
    let sets = vec![partner.plans().added().id];
    partner.note(1, "Cy", Change::PartTaken { sets }).unwrap();
    owner.join(&partner);
    owner.tell(5, midday(70)).unwrap();
    assert_eq!(owner.midday_ml(), 70);
    assert_eq!(owner.not_agreed(), []);
}

#[test]
fn a_breeder_s_smaller_feed_can_be_left_open_but_not_turned_into_more() {
    let (mut breeder, mut owner) = two();
    let new = breeder.edited(midday(40));
    for change in breeder.plans().sets(&new, Author::BREEDER_AFAR) {
        breeder.note(5, "Bea", change).unwrap();
    }
    owner.join(&breeder);
    let id = owner.plans().proposals()[0].id;
    let keep = owner.plans().answer(id, false, Author::OWNER).unwrap();
    owner.note(6, "Ann", keep).unwrap();
    assert_eq!(owner.midday_ml(), 50);
    assert_eq!(owner.not_agreed(), [PlanLine::Feed(Slot::Midday)]);
    assert_eq!(owner.tell(7, midday(51)), Err(Refusal::AskTheBreeder));
}

#[test]
fn report_and_vet_page_show_what_is_asked_for_and_what_is_not_agreed() {
    let (_, mut owner) = two();
    owner.ask(5, midday(60));
    owner.tell(6, cooler).unwrap();
    let seen = outlook(at(7), &owner.0, CHICK, &Zone::fixed(Offset::UTC)).unwrap();
    let writing = Writing::metric(Language::English);
    let report = report_html(writing, &seen, owner.0.entries(), None);
    let (not_agreed, asked) = (
        "Not agreed: Feed at: 39.0–40.5\u{a0}°C → 39.0–40.0\u{a0}°C (Ann, ",
        "Asked for: Midday feed: 14:00, 50\u{a0}ml → 14:00, 60\u{a0}ml",
    );
    for page in [report.clone(), vet_page_html(writing, &seen)] {
        assert!(page.contains(not_agreed) && page.contains(asked), "{page}");
    }
    assert!(report.contains(", not agreed"));
}

//! One life: acts are done at home, and after each the laws are asked.

use perchlight::domain::instruction::answer::Instruction;
use perchlight::domain::instruction::first::First;
use perchlight::domain::journal::chick::{FeedNote, Noted, WeaningStep};
use perchlight::domain::journal::entries::{Change, CropState, EntryId};
use perchlight::domain::outlook::Outlook;
use perchlight::domain::plan::care_plan::{Role, Slot};
use perchlight::domain::quantity::units::Millilitres;
use perchlight::domain::time::moment::Moment;
use perchlight::words::Language;

use crate::acts::{Act, Edit, Who};
use crate::counts;
use crate::home::Home;
use crate::laws::{self, Field};
use crate::pages;

/// Acts at which the costly laws are asked: every so many.
const COSTLY_EVERY: usize = 5;

/// Acts after which pages are made of the record: every so many.
const PAGES_EVERY: usize = 15;

/// Feeds that a journey moved go back to their wall times for so long, minutes: two weeks.
const MOVING_FOR: i64 = 14 * 24 * 60;

/// While they do, law 8 allows so much more, minutes: the smallest half hour that 3,000 lives need.
const MOVING_MINUTES: i64 = 120;

/// Minutes between two looks at the phone while time goes on.
const HALF_HOUR: i64 = 30;

#[derive(Debug, Clone)]
pub(crate) struct Life {
    home: Home,
    /// Feeds dropped on the owner's phone, as they were decided there.
    dropped: Vec<Slot>,
    /// When the owner was last told what to do.
    told: Moment,
    /// The longest gap of the plan in the time since then, minutes: a feed brought back shortens it.
    gap_since_told: i64,
    /// Until when feeds that a journey moved may still be on the move.
    moving_until: Moment,
    acts: usize,
    /// What the last act noted on the owner's phone, and the outlook before it.
    undoable: Option<(Vec<EntryId>, Box<Outlook>)>,
}

impl Life {
    pub(crate) fn begun() -> Self {
        counts::a_life();
        let home = Home::handed_over();
        Self {
            told: home.now,
            gap_since_told: 0,
            moving_until: home.now,
            home,
            dropped: Vec::new(),
            acts: 0,
            undoable: None,
        }
    }

    pub(crate) fn lives_through(&mut self, act: Act) {
        self.acts += 1;
        counts::an_act();
        let journals = [self.home.owner.clone(), self.home.partner.clone()];
        let before = self.home.outlook(Who::Owner);
        self.home.last = None;
        let undoable = self.undoable.take();
        if act == Act::Undone {
            self.undo(undoable);
        } else {
            self.act(act, &before);
        }
        for (before, after) in journals.iter().zip([&self.home.owner, &self.home.partner]) {
            laws::no_entry_is_lost(before, after);
        }
        if let Some((Who::Owner, ids)) = self.home.last.clone()
            && before.now == self.home.now
            && act != Act::Undone
        {
            self.undoable = Some((ids, Box::new(before)));
        }
        let after = self.home.outlook(Who::Owner);
        laws::no_feed_is_asked_for_while_something_forbids_it(&after);
        laws::no_dropped_feed_is_asked_for(&self.home, &self.dropped);
        pages::silence_is_never_settled(&self.home);
        if self.acts.is_multiple_of(COSTLY_EVERY) {
            laws::order_of_joining_does_not_matter(&self.home, self.acts);
            laws::when_a_note_was_typed_does_not_matter(&self.home);
        }
        if self.acts.is_multiple_of(PAGES_EVERY) {
            let language = Language::ALL[self.acts / PAGES_EVERY % 2];
            pages::every_page_says_the_same(&self.home, language);
        }
    }

    fn act(&mut self, act: Act, before: &Outlook) {
        match act {
            Act::OrdinaryDays(days) => self.ordinary_days(days),
            Act::Silence(hours) => self.pass(i64::from(hours) * 60),
            Act::Wait(minutes) => self.wait(i64::from(minutes)),
            Act::Feed {
                who,
                late_minutes,
                share_pct,
                noted_after,
            } => {
                self.feed(
                    who,
                    i64::from(late_minutes),
                    i32::from(share_pct),
                    i64::from(noted_after),
                );
            }
            Act::NotedTwice(minutes) => self.noted_twice(i64::from(minutes)),
            Act::Refused(who) => self.home.refused(who),
            Act::PassedOver => self.home.passed_over(),
            Act::Weighed(who, off) => self.home.weighed(who, off),
            Act::Crop(state) => self.home.crop_of(Who::Owner, state),
            Act::Seen(sign) => {
                self.home
                    .note(Who::Owner, self.home.now, Change::SignSeen { sign });
            }
            Act::Gone => self.home.gone(),
            Act::Droppings(look) => {
                self.home
                    .note(Who::Owner, self.home.now, Change::DroppingsSeen { look });
            }
            Act::Counted(paper, count) => {
                let change = Change::DroppingsCounted { paper, count };
                self.home.note(Who::Owner, self.home.now, change);
            }
            Act::Dropped => {
                self.home.dropped();
                self.decided();
            }
            Act::BroughtBack => {
                self.home.brought_back();
                self.decided();
            }
            Act::Edited(who, edit) => {
                self.home.edited(who, edit);
                self.edited(before, who, edit);
            }
            Act::BreederEdits(edit) => {
                self.home.breeder_edits(edit);
                self.edited(before, Who::Owner, edit);
            }
            Act::OldCard(who) => {
                let plan = self.home.chick(who).plan;
                self.home.old_card(who);
                laws::law(2, plan == self.home.chick(who).plan, || {
                    "an old card changed the plan".to_owned()
                });
            }
            Act::Joined => {
                self.home.joined();
                self.decided();
            }
            Act::Reported => self.home.reported(),
            Act::Undone => {}
            Act::Travelled(hours) => {
                self.home.clock_moved(i32::from(hours) * 60);
                self.moving_until = self.home.now.plus_minutes(MOVING_FOR);
            }
            Act::ClocksChanged(minutes) => {
                let was = self.home.outlook(Who::Owner);
                self.home.clock_moved(i32::from(minutes));
                laws::a_small_change_of_the_clock_changes_no_count(
                    &was,
                    &self.home.outlook(Who::Owner),
                );
            }
            Act::Called => {
                let (whom, agreed) = (Role::Breeder, String::new());
                self.home
                    .note(Who::Owner, self.home.now, Change::Called { whom, agreed });
            }
            Act::Remark => {
                let text = "a remark".to_owned();
                self.home
                    .note(Who::Owner, self.home.now, Change::Noted { text });
            }
        }
        self.is_about_what_it_says(before);
    }

    /// Law 1 for the entry that the act noted on the owner's phone.
    fn is_about_what_it_says(&self, before: &Outlook) {
        let Some((Who::Owner, ids)) = &self.home.last else {
            return;
        };
        let after = self.home.outlook(Who::Owner);
        if before.now != after.now {
            return;
        }
        let noted = self
            .home
            .owner
            .entries()
            .iter()
            .filter(|entry| ids.contains(&entry.id));
        let may: Vec<Field> = noted
            .flat_map(|entry| laws::may_touch(&entry.change))
            .copied()
            .collect();
        laws::an_act_changes_nothing_it_is_not_about(before, &after, &may);
    }

    fn edited(&self, before: &Outlook, who: Who, edit: Edit) {
        if who == Who::Owner && matches!(edit, Edit::VetNumber | Edit::LossLimit(_)) {
            laws::an_edit_of_people_or_limits_moves_no_feed(before, &self.home.outlook(Who::Owner));
        }
    }

    /// Drops and bring-backs as they stand decided now.
    fn decided(&mut self) {
        let weaning = self.home.chick(Who::Owner).weaning;
        self.dropped.clear();
        for step in weaning {
            match step.what {
                WeaningStep::Dropped { slot, .. } => self.dropped.push(slot),
                WeaningStep::BroughtBack { slot } => {
                    self.dropped.retain(|gone| *gone != slot);
                }
            }
        }
    }

    /// Time goes on; every half hour it is asked whether anybody is told what to do.
    fn pass(&mut self, minutes: i64) {
        let end = self.home.now.plus_minutes(minutes);
        while self.home.now < end {
            self.home.now = self.home.now.plus_minutes(HALF_HOUR).min(end);
            self.is_told_in_time();
        }
    }

    fn is_told_in_time(&mut self) {
        let outlook = self.home.outlook(Who::Owner);
        if laws::is_told(&outlook) {
            self.told = self.home.now;
            self.gap_since_told = 0;
        }
        // Who fed unasked has told themselves: from three hours before its time on food is a feed, and
        // the next one follows from it. A chick waits from its food on and not from what a screen said.
        if let Some(fed) = laws::last_feed(&outlook) {
            self.told = self.told.max(fed);
        }
        let silent = self.home.now.minutes_since(self.told);
        let gap = laws::longest_gap_minutes(&outlook);
        self.gap_since_told = self.gap_since_told.max(gap);
        let is_moving = self.home.now < self.moving_until;
        let most = self.gap_since_told + 120 + if is_moving { MOVING_MINUTES } else { 0 };
        laws::law(8, silent <= most, || {
            format!(
                "nothing to do for {silent} min, at most {most}: {:?}",
                outlook.instruction
            )
        });
    }

    /// Until something is to be done, at most so long.
    fn wait(&mut self, minutes: i64) {
        let until = self.home.now.plus_minutes(minutes);
        let next = self.home.outlook(Who::Owner).next_feed;
        let due = next.map_or(until, |feed| feed.due.max(self.home.now));
        self.pass(due.min(until).minutes_since(self.home.now));
    }

    /// What has to come before the feed is done, as the screen asks for it.
    fn does_first(&mut self, who: Who) {
        for _ in 0..3 {
            match self.home.outlook(who).instruction {
                Instruction::First(First::LookAtCrop) => self.home.crop_of(who, CropState::Flat),
                Instruction::First(First::Weigh) => self.home.weighed(who, 0),
                Instruction::First(First::Settle | First::Warm | First::Cool) => {
                    self.pass(HALF_HOUR);
                }
                Instruction::First(First::IsItGone(sign)) => {
                    self.home
                        .note(who, self.home.now, Change::SignGone { sign });
                }
                Instruction::Feed { .. }
                | Instruction::WaitUntil { .. }
                | Instruction::AskFirst { .. }
                | Instruction::DoNotFeed { .. }
                | Instruction::Nothing(_) => return,
            }
        }
    }

    /// The feed that is asked for now is given so late, and noted after that.
    fn feed(&mut self, who: Who, late: i64, share_pct: i32, noted_after: i64) {
        self.does_first(who);
        let Some(volume) = laws::asked_for(&self.home.outlook(who)) else {
            return;
        };
        if who == Who::Owner {
            laws::no_day_asks_for_more_than_the_plan_holds(&self.home, volume);
        }
        let at = self.home.now.plus_minutes(late);
        let taken = Millilitres::tenths_held((volume.tenths() * share_pct / 100).max(1));
        self.pass(late + noted_after);
        self.home.fed(who, at, taken, volume);
    }

    fn noted_twice(&mut self, minutes: i64) {
        let feeds = self.home.chick(Who::Owner).feeds;
        let Some(last) = feeds.last().cloned() else {
            return;
        };
        // A third note of it is another matter: who notes a feed twice has given two.
        let of_partner = self.home.chick(Who::Partner).feeds;
        let by_partner = |feed: &Noted<FeedNote>| feed.what.by == "partner";
        let is_near =
            |feed: &Noted<FeedNote>| by_partner(feed) && last.at.minutes_since(feed.at) < 90;
        if of_partner.iter().any(is_near) {
            return;
        }
        let is_of_owner = last.what.by == "owner";
        if !is_of_owner
            || !last.what.outcome.is_food()
            || self.home.now.minutes_since(last.at) > 180
        {
            return;
        }
        // What the partner fed meanwhile is no matter of this note.
        self.home.joined();
        let volume = last.what.outcome.taken();
        let at = last.at.plus_minutes(minutes).min(self.home.now);
        let before = self.home.outlook(Who::Owner);
        if self.home.fed(Who::Partner, at, volume, volume) {
            self.home.joined();
            laws::a_feed_noted_twice_raises_no_alarm(&before, &self.home.outlook(Who::Owner));
        }
    }

    /// Days on which everything is done as it is asked for.
    fn ordinary_days(&mut self, days: u8) {
        let end = self.home.now.plus_minutes(i64::from(days) * 24 * 60);
        let mut weighed = None;
        while self.home.now < end {
            let today = laws::care_day(&self.home, self.home.now);
            if weighed != Some(today) && self.home.outlook(Who::Owner).is_to_be_weighed() {
                self.home.weighed(Who::Owner, 0);
                weighed = Some(today);
            }
            let before = self.home.now;
            self.wait(end.minutes_since(before));
            self.feed(Who::Owner, 0, 100, 0);
            if self.home.now == before {
                self.pass(HALF_HOUR);
            }
        }
    }

    /// Undo follows its act at once, or does nothing.
    fn undo(&mut self, undoable: Option<(Vec<EntryId>, Box<Outlook>)>) {
        let Some((ids, before)) = undoable.filter(|(_, before)| before.now == self.home.now) else {
            return;
        };
        for id in ids {
            self.home
                .note(Who::Owner, self.home.now, Change::Retracted { id });
        }
        laws::undo_gives_back_the_outlook(&before, &self.home.outlook(Who::Owner));
        self.decided();
    }
}

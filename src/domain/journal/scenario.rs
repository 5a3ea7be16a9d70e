//! Builds the journal of a made-up chick, day by day: for the chick that first-time users may look
//! at, and for tests.

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::{
    Change, ChickId, CropAtWeighing, Entry, EntryId, Journal, Response, WhyPassedOver,
};
use crate::domain::plan::care_plan::{CarePlan, Slot};
use crate::domain::plan::parts::Author;
use crate::domain::quantity::units::{Grams, Millilitres};
use crate::domain::time::moment::{Day, Moment, Offset};
use crate::domain::time::zone::Zone;

/// A journal in the making. Day 0 is the day on which the chick is added, at 05:00.
#[derive(Debug, Clone)]
pub struct Scenario {
    chick: ChickId,
    offset: Offset,
    day_zero: Day,
    entries: Vec<Entry>,
}

impl Scenario {
    /// A chick with this plan, added at 05:00 on `day_zero`; everything happens at one offset.
    pub fn new(chick: ChickId, plan: CarePlan, day_zero: Day, offset: Offset) -> Self {
        let mut scenario = Self {
            chick,
            offset,
            day_zero,
            entries: Vec::new(),
        };
        scenario.note(0, 5, 0, Change::ChickAdded(Box::new(plan)));
        scenario
    }

    /// The zone in which everything happens.
    pub const fn zone(&self) -> Zone {
        Zone::fixed(self.offset)
    }

    /// The moment of an hour and minute on a day of the scenario.
    pub fn at(&self, day: i32, hour: i32, minute: i32) -> Moment {
        let midnight = i64::from(self.day_zero.plus(day).number()) * 86_400;
        Moment::from_seconds(midnight - i64::from(self.offset.minutes()) * 60)
            .plus_minutes(i64::from(hour) * 60 + i64::from(minute))
    }

    /// Notes a change; its id counts up, so that the same script gives the same journal.
    pub fn note(&mut self, day: i32, hour: i32, minute: i32, change: Change) -> &mut Self {
        let at = self.at(day, hour, minute);
        let mut id = self.chick.0;
        let count = u32::try_from(self.entries.len() + 1)
            .unwrap_or(u32::MAX)
            .to_be_bytes();
        for (byte, counted) in id.iter_mut().rev().zip(count.into_iter().rev()) {
            *byte ^= counted;
        }
        let (chick, offset) = (self.chick, self.offset);
        self.entries.push(Entry {
            at,
            id: EntryId(id),
            chick,
            noted_at: at,
            offset,
            by: String::new(),
            change,
        });
        self
    }

    /// Sets every part in which `plan` differs from the plan so far.
    pub fn set_plan(
        &mut self,
        day: i32,
        hour: i32,
        minute: i32,
        plan: &CarePlan,
        author: Author,
    ) -> &mut Self {
        let plans = self.journal().plans(self.chick);
        let changes = plans.map(|plans| plans.sets(plan, author));
        for change in changes.unwrap_or_default() {
            self.note(day, hour, minute, change);
        }
        self
    }

    /// Notes a morning weighing with an empty crop at 06:45.
    pub fn weigh(&mut self, day: i32, grams: i32) -> &mut Self {
        let crop = CropAtWeighing::Empty;
        self.note(
            day,
            6,
            45,
            Change::Weighed {
                weight: Grams::whole(grams),
                crop,
            },
        )
    }

    /// Notes food taken in full, which a person said to be of this planned feed.
    pub fn feed(&mut self, day: i32, hour: i32, minute: i32, slot: Slot, ml: i32) -> &mut Self {
        self.note(day, hour, minute, given(Some(slot), ml))
    }

    /// Notes food taken in full, which counts by its time.
    pub fn food(&mut self, day: i32, hour: i32, minute: i32, ml: i32) -> &mut Self {
        self.note(day, hour, minute, given(None, ml))
    }

    /// Notes that this planned feed of the day was left out.
    pub fn leave_out(
        &mut self,
        day: i32,
        hour: i32,
        minute: i32,
        slot: Slot,
        why: WhyPassedOver,
    ) -> &mut Self {
        let of = self.day_zero.plus(day);
        self.note(
            day,
            hour,
            minute,
            Change::FeedPassedOver { slot, day: of, why },
        )
    }

    /// Says who noted the entry that was noted last.
    pub fn by(&mut self, name: &str) -> &mut Self {
        if let Some(entry) = self.entries.last_mut() {
            name.clone_into(&mut entry.by);
        }
        self
    }

    /// The journal so far.
    pub fn journal(&self) -> Journal {
        Journal::from_entries(self.entries.clone())
    }

    /// The chick so far.
    pub fn chick(&self) -> Option<Chick> {
        Chick::from_journal(&self.journal(), self.chick)
    }
}

const fn given(counts_as: Option<Slot>, ml: i32) -> Change {
    let volume = Millilitres::whole(ml);
    Change::Fed {
        counts_as,
        taken: volume,
        offered: volume,
        served_at: None,
        response: Response::Eager,
    }
}

//! The feed under way: what it holds, and the ways on and out of it.

use leptos::prelude::*;

use crate::domain::feeding::food::{counts_for, said};
use crate::domain::formula::serving_heat::Serving;
use crate::domain::instruction::feed_session::{FeedSession, Step};
use crate::domain::journal::entries::{Change, Response, WhyPassedOver};
use crate::domain::plan::care_plan::Slot;
use crate::domain::quantity::units::Millilitres;
use crate::ui::route::Route;
use crate::ui::state::AppState;
use crate::ui::{clock, platform};

/// The feed under way and what may be done with it.
#[derive(Debug, Clone, Copy)]
pub struct Feed {
    /// The app.
    pub state: AppState,
    /// Where it stands.
    pub guide: RwSignal<FeedSession>,
    /// What was counted since the screen was opened, latest last, so that it can be taken back.
    pub counted: RwSignal<Vec<Millilitres>>,
    /// Whether the ways out are shown.
    pub is_stopping: RwSignal<bool>,
    /// Whether the day's weighing was put off.
    pub is_weighed_later: RwSignal<bool>,
    /// Whether the call that comes first was passed by.
    pub is_called_later: RwSignal<bool>,
    /// The plan's serving window.
    pub serving: Serving,
}

impl Feed {
    /// Changes the guide and puts it away at once, so that a reload finds it.
    pub fn change(self, change: impl FnOnce(&mut FeedSession)) {
        self.guide.update(change);
        let copies = self.state.copies;
        self.guide
            .with_untracked(|guide| copies.remember_guide(guide));
    }

    fn to(self, step: Step) {
        self.change(|guide| guide.step = step);
        // Only once the step is drawn: what is drawn anew loses the focus.
        request_animation_frame(platform::focus_heading);
    }

    /// Shows the ways out, or the step again, from its heading on.
    pub fn stop_or_go_on(self) {
        self.is_stopping.update(|stopping| *stopping = !*stopping);
        request_animation_frame(platform::focus_heading);
    }

    /// Counts a draw.
    pub fn give(self, draw: Millilitres) {
        let before = self.guide.with_untracked(|guide| guide.given);
        self.change(|guide| guide.give(draw));
        let given = self.guide.with_untracked(|guide| guide.given);
        let counted = Millilitres::tenths_held(given.tenths() - before.tenths());
        self.counted.update(|draws| draws.push(counted));
    }

    /// The draw that was counted last; after a reload the last full syringe, or what there is of it.
    pub fn last_draw(self, syringe: Millilitres) -> Option<Millilitres> {
        let given = self.guide.with(|guide| guide.given);
        let last = self.counted.with(|draws| draws.last().copied());
        let draw = last.unwrap_or(syringe).min(given);
        (draw.tenths() > 0).then_some(draw)
    }

    /// Takes the draw back that was counted last.
    pub fn take_back(self, draw: Millilitres) {
        self.change(|guide| guide.take_back(draw));
        self.counted.update(|draws| {
            draws.pop();
        });
    }

    /// Goes back to the cup, to measure it again.
    pub fn measure_again(self) {
        self.to(Step::Warmth);
    }

    /// Goes to the step before; from the first one out of the guide, which stays where it is.
    pub fn step_back(self) {
        if self.is_stopping.get_untracked() {
            return self.stop_or_go_on();
        }
        match self.guide.with_untracked(|guide| guide.step.before()) {
            Some(before) => self.to(before),
            None => self.state.go(Route::Now),
        }
    }

    /// Puts the feed away as it is, so that it goes on here after the weighing, and opens the scale's screen.
    pub fn weigh(self) {
        self.change(|_| {});
        self.state.go(Route::Weigh);
    }

    /// Goes to the next step.
    pub fn step_on(self) {
        if let Some(next) = self.guide.with_untracked(|guide| guide.step.next()) {
            self.to(next);
        }
    }

    /// Forgets this feed under way and begins it anew, by the plan in force.
    pub fn begin_anew(self) {
        let now = clock::now();
        let slot = self.guide.with_untracked(|guide| guide.slot);
        if let Some(outlook) = self.state.outlook.get_untracked() {
            let plan = outlook.plan_of_feed(slot);
            self.change(|guide| *guide = FeedSession::begin(now, guide.chick, &plan, slot));
            self.counted.set(Vec::new());
            self.is_stopping.set(false);
            request_animation_frame(platform::focus_heading);
        }
    }

    /// Notes how the feed ended and leaves the guide.
    fn end(self, change: Change, said: String) {
        if self.state.note(change, said) {
            let chick = self.guide.with_untracked(|guide| guide.chick);
            self.state.copies.forget_guide(chick);
            self.state.go(Route::Now);
        }
    }

    /// Notes that the chick does not want any, or what went in before it stopped.
    pub fn refused(self) {
        let guide = self.guide.get_untracked();
        if guide.given.tenths() > 0 {
            return self.log(Response::Slow);
        }
        let told = self.state.language().feed_refused(Some(guide.slot));
        let (counts_as, offered) = (self.said(guide.slot), guide.volume);
        self.end(Change::FeedRefused { counts_as, offered }, told);
    }

    /// Notes a look at the chick after the feed, beside the feed.
    pub fn look(self, seen: Change) {
        if let Err(refusal) = self.state.dispatch(seen) {
            self.state.say_refusal(&refusal);
        }
    }

    /// Notes what was given.
    pub fn log(self, response: Response) {
        let guide = self.guide.get_untracked();
        let served_at = guide.served_at(clock::now());
        let (slot, taken, offered) = (guide.slot, guide.given, guide.volume);
        let change = Change::Fed {
            counts_as: self.said(slot),
            taken,
            offered,
            served_at,
            response,
        };
        self.end(
            change,
            self.state.writing_now().feed_noted(Some(slot), taken),
        );
    }

    /// Leaves the feed out; what went in so far is logged, not left out.
    pub fn leave_out(self, why: WhyPassedOver) {
        if self.guide.with_untracked(|guide| guide.given.tenths() > 0) {
            return self.log(Response::Slow);
        }
        let slot = self.guide.with_untracked(|guide| guide.slot);
        let told = self.state.language().feed_left_out(slot, why);
        let outlook = self.state.outlook.get_untracked();
        let feed = outlook.and_then(|outlook| {
            counts_for(clock::now(), Some(slot), &outlook.chick, &outlook.zone)
        });
        if let Some(day) = feed.map(|feed| feed.day) {
            self.end(Change::FeedPassedOver { slot, day, why }, told);
        }
    }

    /// The feed of this guide, where its time alone would not tell it.
    fn said(self, slot: Slot) -> Option<Slot> {
        let outlook = self.state.outlook.get_untracked()?;
        said(clock::now(), slot, &outlook.chick, &outlook.zone)
    }
}

/// Notes what went in of a feed under way, and ends it: when something goes wrong, a vet asks for it.
pub fn note_what_went_in(state: AppState) {
    let now = clock::now();
    let guide = state.outlook.with_untracked(|outlook| {
        let outlook = outlook.as_ref()?;
        let guide = state.copies.guide(outlook.chick.id)?;
        let is_given = guide.is_under_way(now, &outlook.chick) && guide.given.tenths() > 0;
        let counts_as = said(now, guide.slot, &outlook.chick, &outlook.zone);
        is_given.then_some((guide, counts_as))
    });
    let Some((guide, counts_as)) = guide else {
        return;
    };
    let noted = state.dispatch(Change::Fed {
        counts_as,
        taken: guide.given,
        offered: guide.volume,
        served_at: guide.served_at(now),
        response: Response::Slow,
    });
    if noted.is_ok() {
        state.copies.forget_guide(guide.chick);
    }
}

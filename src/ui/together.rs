//! Keeping the two copies together: each is given what only the other has, in steps, so that the page
//! can answer a tap in between. It comes with [`Piece::Due`](crate::ui::pieces::Piece): without that
//! piece nobody can note anything.

use std::collections::BTreeSet;

use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;

use crate::domain::journal::entries::{Entry, Journal};
use crate::store::StoreError;
use crate::store::line::{Line, Name};
use crate::store::second_copy::{SecondCopy, SecondCopyError};
use crate::ui::copies::{Copies, Keeping};
use crate::ui::glance::{leave_a_glance, leave_a_glance_when_left};
use crate::ui::parts::live::on_change;
use crate::ui::platform::WAKES;
use crate::ui::state::AppState;
use crate::ui::{clock, platform};

/// How many entries are read or written before the page may answer a tap. Ours: less than 50 ms on a slow
/// phone.
const LINES_A_STEP: usize = 250;

/// The names of the lines that the second copy holds.
type Names = BTreeSet<Name>;

/// Opens the first copy, and hears in the same task already of what another tab keeps after it.
pub fn open_records(state: AppState) {
    state.open();
    follow_other_tabs(state);
    state.program.get_value().glance.set(Some(leave_a_glance));
    leave_a_glance_when_left(state);
    let wake = move |_: web_sys::Event| {
        if !document().hidden() {
            state.copies.retry();
        }
    };
    for name in WAKES {
        // It listens as long as the page lives.
        drop(window_event_listener_untyped(name, wake));
    }
}

fn follow_other_tabs(state: AppState) {
    let kept_there = move |event: web_sys::Event| {
        let Ok(event) = event.dyn_into::<web_sys::StorageEvent>() else {
            return;
        };
        let entries = state
            .copies
            .from_other_tab(event.key().as_deref(), event.new_value().as_deref());
        if !state.is_demo.get_untracked() {
            state.import(entries, false);
        }
    };
    drop(window_event_listener_untyped("storage", kept_there));
}

/// Opens the second copy, and from then on gives either copy after each act what it lacks.
pub fn keep_together(state: AppState) {
    let copies = state.copies;
    let acts = copies.inner.with_value(|inner| inner.acts);
    spawn_local(join_second(state));
    on_change(move || acts.get(), move |_| after_act(state));
    // At the end of an act and with everything in both copies, once a day at most. What cannot be folded
    // today stays as it is and is folded another day.
    on_change(
        move || copies.keeping.get() == Keeping::Kept,
        move |is_kept| {
            if is_kept {
                copies
                    .inner
                    .update_value(|inner| drop(inner.store.fold_finished_weeks(clock::now())));
            }
        },
    );
}

/// Opens the second copy, and joins what only it has to what is on screen.
async fn join_second(state: AppState) {
    let healed = state.copies.open_second(state.journal).await;
    if state.is_demo.get_untracked() {
        state.copies.set_aside(&Journal::from_entries(healed));
    } else {
        state.import(healed, false);
    }
}

fn after_act(state: AppState) {
    let (mut opens_again, mut behind) = (false, None);
    state.copies.update(|inner| {
        opens_again =
            inner.store.newer_version().is_none() && inner.tracker.opens_again(clock::now());
        if inner.tracker.is_behind() {
            inner.tracker.catching_up();
            behind.clone_from(&inner.second);
        }
    });
    if opens_again {
        spawn_local(join_second(state));
    }
    if let Some(second) = behind {
        spawn_local(state.copies.catch_up(second, None, state.journal));
    }
    state.copies.heal_first();
}

impl Copies {
    /// Opens the second copy, gives back what only it has, and sends it what it lacks.
    async fn open_second(self, journal: RwSignal<Journal>) -> Vec<Entry> {
        let Ok((second, names, lines)) = self.read_second(journal).await else {
            self.update(|inner| inner.tracker.second_is_missing(clock::now()));
            return Vec::new();
        };
        let only_there = lines.iter().map(|line| line.entry.clone()).collect();
        let mut may_write = false;
        self.update(|inner| {
            if let Some(version) = inner.store.newer_version() {
                inner.trouble = Some(StoreError::NewerVersion { version });
                inner.tracker.second_is_missing(clock::now());
                return;
            }
            may_write = true;
            inner.second = Some(second.clone());
            inner.store.set_to_heal(lines);
        });
        if may_write {
            spawn_local(self.catch_up(second, Some(names), journal));
            self.heal_first();
        }
        only_there
    }

    /// The second copy, the names of its lines, and the lines that neither the first copy nor the journal
    /// has, read in steps.
    async fn read_second(
        self,
        journal: RwSignal<Journal>,
    ) -> Result<(SecondCopy, Names, Vec<Line>), SecondCopyError> {
        let second = SecondCopy::open().await?;
        let names = second.names().await?;
        let mut unknown = self.inner.with_value(|inner| inner.store.unknown(&names));
        let mut only_there = Vec::new();
        let mut last = None;
        while !unknown.is_empty() {
            let read = second.lines_after(last.as_deref(), LINES_A_STEP).await?;
            let Some((name, _)) = read.last() else { break };
            last = Some(name.clone());
            journal.with_untracked(|journal| {
                for (name, text) in read {
                    if Name::from_text(&name).is_some_and(|name| unknown.remove(&name)) {
                        let line = self.read_line(&name, &text);
                        only_there.extend(line.filter(|line| !journal.holds(&line.entry)));
                    }
                }
            });
        }
        Ok((second, names, only_there))
    }

    /// A line of the second copy; one that cannot be read is left there and told.
    fn read_line(self, name: &str, text: &str) -> Option<Line> {
        match Line::read(text) {
            Ok(line) => Some(line),
            Err(why) => {
                if let Some(version) = why.newer_version() {
                    self.inner
                        .update_value(|inner| inner.store.found_newer(version));
                }
                self.damaged
                    .update(|all| all.extend(["# ", name, "\n", text, "\n"]));
                None
            }
        }
    }

    /// Sends the second copy what it lacks, again until nothing was noted meanwhile. `names` are those
    /// that it was just seen to hold.
    async fn catch_up(
        self,
        second: SecondCopy,
        mut names: Option<Names>,
        journal: RwSignal<Journal>,
    ) {
        let mut is_to_repeat = true;
        while is_to_repeat {
            self.update(|inner| inner.tracker.catching_up());
            let answer = self.send_lacking(&second, names.take(), journal).await;
            self.update(|inner| {
                is_to_repeat = inner.tracker.caught_up(answer.is_ok());
                inner.let_go_of_closed(&answer);
            });
        }
    }

    /// Sends the second copy in steps what it lacks. They are all on their way before the first is waited
    /// for.
    async fn send_lacking(
        self,
        second: &SecondCopy,
        names: Option<Names>,
        journal: RwSignal<Journal>,
    ) -> Result<(), SecondCopyError> {
        let names = match names {
            Some(names) => names,
            None => second.names().await?,
        };
        if self
            .inner
            .with_value(|inner| inner.store.is_whole_in(&names))
        {
            return Ok(());
        }
        // The made-up chick may be on screen, and what is ours set aside.
        let aside = self.inner.with_value(|inner| inner.aside.clone());
        let journals = [aside, journal.get_untracked()];
        let steps = journals
            .iter()
            .flat_map(|journal| journal.entries().chunks(LINES_A_STEP));
        let mut answers = Vec::new();
        for (count, entries) in steps.enumerate() {
            if count > 0 {
                platform::next_task().await;
            }
            let lines = self
                .inner
                .with_value(|inner| inner.store.lacking_in(&names, entries));
            if !lines.is_empty() {
                answers.push(second.put_all(&lines));
            }
        }
        for answer in answers {
            answer.await?;
        }
        Ok(())
    }

    /// Begins to give the first copy what only the second has, unless nothing was noted yet or the copy
    /// cannot be written.
    fn heal_first(self) {
        let mut is_to_begin = false;
        self.update(|inner| {
            is_to_begin = inner.store.is_to_heal() && inner.tracker.begins_healing();
        });
        if is_to_begin {
            spawn_local(self.heal_in_steps());
        }
    }

    async fn heal_in_steps(self) {
        let mut is_to_go_on = true;
        while is_to_go_on {
            platform::next_task().await;
            self.update(|inner| {
                let answer = inner.store.heal_step(clock::now());
                is_to_go_on = answer == Ok(true);
                if !is_to_go_on {
                    inner.trouble = inner.trouble.take().or(answer.err());
                    inner.tracker.first_healed(inner.trouble.is_none());
                }
            });
        }
    }
}

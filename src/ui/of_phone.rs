//! What this phone knows of its chicks beside their records: who cares for them, which were removed, and
//! the questions that are still open. Kept on this device, never joined nor sent.

use std::collections::BTreeMap;

use leptos::prelude::*;

use crate::domain::journal::entries::ChickId;
use crate::domain::time::moment::Moment;
use crate::store::setting::{OF_CHICKS, Setting};
use crate::ui::copies::Copies;

/// The lists of chicks, copied freely.
#[derive(Debug, Clone, Copy)]
pub struct OfPhone {
    times: RwSignal<BTreeMap<Setting, BTreeMap<ChickId, Moment>>>,
}

impl OfPhone {
    /// Before they are opened.
    pub fn unopened() -> Self {
        Self {
            times: RwSignal::new(BTreeMap::new()),
        }
    }

    /// Opens them as they were kept.
    pub fn open(self, copies: Copies) {
        let mut times = BTreeMap::new();
        times.extend(OF_CHICKS.map(|setting| (setting, copies.chick_times(setting))));
        self.times.set(times);
    }

    /// Since or from when a chick is in a list; `None` when it is not. Follows.
    pub fn at(self, setting: Setting, chick: ChickId) -> Option<Moment> {
        self.times
            .with(|times| times.get(&setting)?.get(&chick).copied())
    }

    /// The same without following.
    pub fn at_untracked(self, setting: Setting, chick: ChickId) -> Option<Moment> {
        untrack(|| self.at(setting, chick))
    }

    /// Follows every list.
    pub fn track(self) {
        self.times.track();
    }

    /// The chicks of a list; follows.
    pub fn chicks(self, setting: Setting) -> Vec<ChickId> {
        self.times.with(|times| {
            let of = times.get(&setting);
            of.map(|of| of.keys().copied().collect())
                .unwrap_or_default()
        })
    }

    /// Puts a chick into a list with its moment, or takes it out.
    pub fn set(self, copies: Copies, setting: Setting, chick: ChickId, at: Option<Moment>) {
        self.times.update(|times| {
            let of = times.entry(setting).or_default();
            match at {
                Some(at) => of.insert(chick, at),
                None => of.remove(&chick),
            };
            copies.remember_chick_times(setting, of);
        });
    }
}

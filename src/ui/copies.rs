//! The two copies of the journal in this browser, kept together, and the small values of this device.

use std::collections::{BTreeMap, BTreeSet};

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::domain::formula::heat_balance::CupStuff;
use crate::domain::formula::serving_heat::TemperatureUnit;
use crate::domain::instruction::feed_session::FeedSession;
use crate::domain::journal::entries::{ChickId, Entry, Journal};
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::quantity::order::set_of;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::Moment;
use crate::store::breeder_text::{plans_from_text, plans_to_text};
use crate::store::browser::LocalKeyValue;
use crate::store::chick_times::{times_from_text, times_to_text};
use crate::store::cup_text::{cup_from_text, cup_to_text};
use crate::store::guide_text::{guide_of, with_guide, without_guide};
use crate::store::id_text::{id_from_text, id_to_text};
use crate::store::key_value::KeyValueError;
use crate::store::line::Line;
use crate::store::open::open;
use crate::store::save_state::{SaveState, SaveTracker};
use crate::store::saved::backup::OfBreeder;
use crate::store::second_copy::{SecondCopy, SecondCopyError};
use crate::store::sent_text::{sent_of, with_sent};
use crate::store::setting::Setting;
use crate::store::{Store, StoreError};
use crate::ui::{clock, platform};
use crate::words::Language;
use crate::words::format::{DecimalSign, MassUnit, Writing};

/// What the person is told about everything noted so far.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Keeping {
    /// Nothing was noted since the start.
    Nothing,
    /// The second copy has not answered yet.
    Working,
    /// Both copies have everything.
    Kept,
    /// Only one of the two copies has everything.
    OneCopyOnly,
    /// Something is only in memory: storage is forbidden.
    MemoryBlocked,
    /// Something is only in memory: storage is full.
    MemoryFull,
    /// Records of a newer version are here, so nothing is written.
    NewerRecords,
}

/// Everything that is not a signal, in one place.
pub(super) struct Inner {
    pub(super) store: Store<LocalKeyValue>,
    pub(super) tracker: SaveTracker,
    pub(super) second: Option<SecondCopy>,
    /// What was on screen before the made-up chick.
    pub(super) aside: Journal,
    pub(super) trouble: Option<StoreError>,
    /// Acts so far, and times that keeping was tried again: after each the copies are brought together.
    pub(super) acts: RwSignal<usize>,
}

/// Both copies, copied freely.
#[derive(Debug, Clone, Copy)]
pub struct Copies {
    pub(super) inner: StoredValue<Inner, LocalStorage>,
    /// What the person is told.
    pub keeping: RwSignal<Keeping>,
    /// Texts that could not be read, to be saved by the person; empty when there are none.
    pub damaged: RwSignal<String>,
}

impl Copies {
    /// Before the first copy is opened. Nothing is read.
    pub fn unopened() -> Self {
        let inner = Inner {
            store: Store::unopened(LocalKeyValue),
            tracker: SaveTracker::new(),
            second: None,
            aside: Journal::default(),
            acts: RwSignal::new(0),
            trouble: None,
        };
        Self {
            keeping: RwSignal::new(Keeping::Nothing),
            inner: StoredValue::new_local(inner),
            damaged: RwSignal::new(String::new()),
        }
    }

    /// Opens the first copy. Nothing is written.
    pub fn open(self) -> Journal {
        let opened = open(LocalKeyValue);
        let report = opened.report;
        let damaged: Vec<String> = report
            .unreadable
            .iter()
            .map(|text| format!("# {}\n{}\n", text.key, text.text))
            .collect();
        self.damaged.set(damaged.concat());
        self.update(|inner| {
            inner.trouble = match (report.storage, report.newer_version) {
                (_, Some(version)) => Some(StoreError::NewerVersion { version }),
                (storage, None) => storage.map(StoreError::Storage),
            };
            inner.tracker.first_tried_again(inner.trouble.is_none());
            inner.store.open_as(opened.store);
        });
        opened.journal
    }

    /// Keeps what was noted in one act: the first copy at once, the second as soon as it answers.
    pub fn keep(self, act: &[Entry]) {
        let mut single = None;
        self.update(|inner| {
            inner.trouble = inner.store.keep(act).err();
            inner.tracker.noted(inner.trouble.is_none());
            single.clone_from(&inner.second);
            single.take_if(|_| !inner.tracker.sends_singly());
        });
        self.count_act();
        if let Some(second) = single {
            let answer = second.put_all(&named_lines(act));
            spawn_local(async move {
                let answer = answer.await;
                self.update(|inner| {
                    inner.tracker.second_answered(answer.is_ok());
                    inner.let_go_of_closed(&answer);
                });
            });
        }
    }

    fn count_act(self) {
        let acts = self.inner.with_value(|inner| inner.acts);
        acts.update(|count| *count += 1);
    }

    /// Tries again what could not be kept.
    pub fn retry(self) {
        self.update(|inner| {
            if inner.trouble.is_some() {
                inner.trouble = inner.store.retry().err();
                inner.tracker.first_tried_again(inner.trouble.is_none());
            }
        });
        self.count_act();
    }

    /// The entries that another tab has just kept.
    pub fn from_other_tab(self, key: Option<&str>, text: Option<&str>) -> Vec<Entry> {
        let mut entries = Vec::new();
        self.inner
            .update_value(|inner| entries = inner.store.entries_from_event(key, text));
        entries
    }

    /// Puts entries aside while the made-up chick is on screen.
    pub fn set_aside(self, entries: &Journal) {
        self.inner.update_value(|inner| {
            inner.aside.join(entries);
        });
    }

    /// Erases all entries of these chicks, `entries`, from both copies; whether all of them are gone.
    ///
    /// The second copy goes first: what only the first still has can be erased by the next try, while what
    /// only the second has would come back at the next start.
    pub async fn erase(self, chicks: &BTreeSet<ChickId>, entries: &[Entry]) -> bool {
        let names: Vec<String> = named_lines(entries)
            .into_iter()
            .map(|(name, _)| name)
            .collect();
        let second = self.inner.with_value(|inner| inner.second.clone());
        if let Some(second) = second
            && second.remove_all(&names).await.is_err()
        {
            return false;
        }
        let mut is_erased = false;
        self.update(|inner| {
            inner.aside = inner.aside.without(chicks);
            is_erased = inner.store.erase(chicks).is_ok();
        });
        is_erased
    }

    /// Every entry of this browser: what was put aside, and what is kept, read again.
    pub fn journal_again(self) -> Journal {
        let mut journal = open(LocalKeyValue).journal;
        self.inner.with_value(|inner| {
            journal.join(&inner.aside);
        });
        journal
    }

    /// Everything of ours in this browser as plain text.
    pub fn everything_as_text(self) -> String {
        self.inner
            .with_value(|inner| inner.store.everything_as_text())
    }

    pub(super) fn update(self, change: impl FnOnce(&mut Inner)) {
        let mut told = Keeping::Nothing;
        self.inner.update_value(|inner| {
            change(inner);
            told = inner.told();
        });
        if self.keeping.get_untracked() != told {
            self.keeping.set(told);
        }
    }

    fn setting(self, setting: Setting) -> Option<String> {
        self.inner
            .with_value(|inner| inner.store.read_setting(setting).ok().flatten())
    }

    fn remember(self, setting: Setting, text: &str) {
        // A setting that cannot be kept holds until the page closes; the store remembers it meanwhile.
        self.inner
            .update_value(|inner| drop(inner.store.write_setting(setting, text)));
    }

    /// What the person who notes is called.
    pub fn carer(self) -> String {
        self.setting(Setting::Carer).unwrap_or_default()
    }

    /// Remembers what the person who notes is called, 60 characters at most.
    pub fn remember_carer(self, name: &str) {
        let short: String = name.trim().chars().take(CarePlan::SHORT_TEXT).collect();
        self.remember(Setting::Carer, &short);
    }

    /// The chick shown last.
    pub fn remembered_chick(self) -> Option<ChickId> {
        id_from_text(&self.setting(Setting::ChickShown)?).map(ChickId)
    }

    /// Remembers the chick on screen.
    pub fn remember_chick(self, id: ChickId) {
        self.remember(Setting::ChickShown, &id_to_text(id.0));
    }

    /// Whether the breeder of a chick holds this device.
    pub fn is_bred_here(self, id: ChickId) -> bool {
        let ids = self.setting(Setting::BredHere).unwrap_or_default();
        ids.split(' ').any(|text| text == id_to_text(id.0))
    }

    /// Remembers that the breeder of a chick holds this device.
    pub fn remember_bred_here(self, id: ChickId) {
        let ids = self.setting(Setting::BredHere).unwrap_or_default();
        self.remember(Setting::BredHere, &format!("{ids} {}", id_to_text(id.0)));
    }

    /// Whether a breeder holds this device, who has typed her own details.
    pub fn is_breeder(self) -> bool {
        self.setting(Setting::Breeder)
            .is_some_and(|text| !text.is_empty())
    }

    /// What a breeder says once for every chick; `None` on an owner's device.
    pub fn own_words(self) -> Option<CarePlan> {
        plans_from_text(&self.setting(Setting::Breeder)?).pop()
    }

    /// Remembers what a breeder says once for every chick.
    pub fn remember_own_words(self, own: &CarePlan) {
        self.remember(Setting::Breeder, &plans_to_text(std::slice::from_ref(own)));
    }

    /// The breeder's templates, the last used first.
    pub fn templates(self) -> Vec<CarePlan> {
        plans_from_text(&self.setting(Setting::Templates).unwrap_or_default())
    }

    /// Puts a template first, in place of that of its species.
    pub fn remember_template(self, template: &CarePlan) {
        let mut templates = self.templates();
        templates.retain(|known| known.species != template.species);
        templates.insert(0, template.clone());
        self.remember(Setting::Templates, &plans_to_text(&templates));
    }

    /// What a breeder typed once for every chick, as it goes into her backup; empty on an owner's device.
    pub fn of_breeder(self) -> OfBreeder {
        let own = self.own_words();
        let name = own.as_ref().map(|_| self.carer()).unwrap_or_default();
        let bred = self.setting(Setting::BredHere).unwrap_or_default();
        let bred = bred.split_whitespace();
        let bred = bred.filter_map(|text| id_from_text(text).map(ChickId));
        OfBreeder {
            name,
            own,
            templates: self.templates(),
            bred: set_of(bred).into_iter().collect(),
        }
    }

    /// Remembers all that a breeder typed once, in place of what was here.
    pub fn remember_of_breeder(self, of_breeder: &OfBreeder) {
        if let Some(own) = &of_breeder.own {
            self.remember_own_words(own);
        }
        if self.carer().is_empty() {
            self.remember_carer(&of_breeder.name);
        }
        self.remember(Setting::Templates, &plans_to_text(&of_breeder.templates));
        for id in &of_breeder.bred {
            if !self.is_bred_here(*id) {
                self.remember_bred_here(*id);
            }
        }
    }

    /// Language and units: the remembered ones, else the browser's language with grams and Celsius,
    /// and Fahrenheit for the United States.
    pub fn writing(self) -> Writing {
        let tag = platform::language_tag();
        let kept = self.setting(Setting::Units).unwrap_or_default();
        let has = |word: &str| kept.split(' ').any(|kept| kept == word);
        let language = if has("es") {
            Language::Spanish
        } else if has("en") {
            Language::English
        } else {
            Language::from_tag(&tag)
        };
        let is_fahrenheit = has("f") || (!has("c") && tag.ends_with("-US"));
        Writing {
            language,
            decimal: DecimalSign::of(language, &tag),
            mass: if has("oz") {
                MassUnit::Ounce
            } else {
                MassUnit::Gram
            },
            temperature: if is_fahrenheit {
                TemperatureUnit::Fahrenheit
            } else {
                TemperatureUnit::Celsius
            },
        }
    }

    /// Remembers language and units.
    pub fn remember_writing(self, writing: Writing) {
        let mass = match writing.mass {
            MassUnit::Gram => "g",
            MassUnit::Ounce => "oz",
        };
        let temperature = match writing.temperature {
            TemperatureUnit::Celsius => "c",
            TemperatureUnit::Fahrenheit => "f",
        };
        self.remember(
            Setting::Units,
            &format!("{} {mass} {temperature}", writing.language.tag()),
        );
    }

    /// The theme: `auto`, `night` or `day`.
    pub fn theme(self) -> String {
        self.setting(Setting::Theme)
            .unwrap_or_else(|| "auto".to_owned())
    }

    /// Remembers the theme.
    pub fn remember_theme(self, theme: &str) {
        self.remember(Setting::Theme, theme);
    }

    /// Whether the caution was accepted on this device.
    pub fn is_caution_accepted(self) -> bool {
        self.setting(Setting::CautionAccepted).is_some()
    }

    /// Remembers that the caution was accepted.
    pub fn accept_caution(self) {
        self.remember(
            Setting::CautionAccepted,
            &clock::now().seconds().to_string(),
        );
    }

    /// The feed of a chick that was begun last, over or not.
    pub fn guide(self, chick: ChickId) -> Option<FeedSession> {
        guide_of(&self.setting(Setting::GuideStep)?, chick)
    }

    /// Remembers the feed under way of its chick.
    pub fn remember_guide(self, guide: &FeedSession) {
        let text = self.setting(Setting::GuideStep).unwrap_or_default();
        self.remember(Setting::GuideStep, &with_guide(&text, guide));
    }

    /// Forgets the feed under way of a chick.
    pub fn forget_guide(self, chick: ChickId) {
        let text = self.setting(Setting::GuideStep).unwrap_or_default();
        self.remember(Setting::GuideStep, &without_guide(&text, chick));
    }

    /// When the records of a chick were last sent to another phone.
    pub fn last_sent(self, chick: ChickId) -> Option<Moment> {
        sent_of(&self.setting(Setting::Sent)?, chick)
    }

    /// Remembers that the records of a chick were sent to another phone now.
    pub fn remember_sent(self, chick: ChickId) {
        let text = self.setting(Setting::Sent).unwrap_or_default();
        self.remember(Setting::Sent, &with_sent(&text, chick, clock::now()));
    }

    /// The chicks of a setting that lists some, each with its moment.
    pub fn chick_times(self, setting: Setting) -> BTreeMap<ChickId, Moment> {
        times_from_text(&self.setting(setting).unwrap_or_default())
    }

    /// Remembers the chicks of such a setting.
    pub fn remember_chick_times(self, setting: Setting, times: &BTreeMap<ChickId, Moment>) {
        self.remember(setting, &times_to_text(times));
    }

    /// The empty cup that formula is mixed in, and what it is made of.
    pub fn cup(self) -> Option<(Grams, CupStuff)> {
        cup_from_text(&self.setting(Setting::Cup)?)
    }

    /// Remembers the cup that formula is mixed in; none forgets it.
    pub fn remember_cup(self, cup: Option<(Grams, CupStuff)>) {
        if cup != self.cup() {
            let text = cup.map(|(mass, stuff)| cup_to_text(mass, stuff));
            self.remember(Setting::Cup, &text.unwrap_or_default());
        }
    }

    /// What was typed of a new chick before it was kept.
    pub fn draft(self) -> String {
        self.setting(Setting::Draft).unwrap_or_default()
    }

    /// Remembers what is typed of a new chick; nothing forgets it.
    pub fn remember_draft(self, text: &str) {
        self.remember(Setting::Draft, text);
    }

    /// Remembers what the page shows before the app is there: a time and a few words.
    pub fn remember_glance(self, text: &str) {
        self.remember(Setting::Glance, text);
    }

    fn moment(self, setting: Setting) -> Option<Moment> {
        let seconds = self.setting(setting)?.parse().ok()?;
        Some(Moment::from_seconds(seconds))
    }

    /// When a backup was last read back and found whole.
    pub fn last_backup(self) -> Option<Moment> {
        self.moment(Setting::LastBackup)
    }

    /// Until when the reminder of a backup was put off.
    pub fn nudge_put_off_until(self) -> Option<Moment> {
        self.moment(Setting::NudgeDismissed)
    }

    /// Puts the reminder of a backup off.
    pub fn put_nudge_off(self, until: Moment) {
        self.remember(Setting::NudgeDismissed, &until.seconds().to_string());
    }

    /// Remembers that a backup was read back and found whole.
    pub fn remember_backup(self) {
        self.remember(Setting::LastBackup, &clock::now().seconds().to_string());
    }
}

impl Inner {
    /// A second copy that the browser has closed is opened again with a later act.
    pub(super) fn let_go_of_closed(&mut self, answer: &Result<(), SecondCopyError>) {
        if *answer == Err(SecondCopyError::Closed) {
            self.second = None;
            self.tracker.second_is_missing(clock::now());
        }
    }

    fn told(&self) -> Keeping {
        match (self.tracker.state(), &self.trouble) {
            (_, Some(StoreError::NewerVersion { .. })) => Keeping::NewerRecords,
            (SaveState::Unchanged, None) => Keeping::Nothing,
            (SaveState::Keeping, _) => Keeping::Working,
            (SaveState::KeptInBoth, _) => Keeping::Kept,
            (SaveState::KeptInOne(_), _) => Keeping::OneCopyOnly,
            (_, Some(StoreError::Storage(KeyValueError::Full))) => Keeping::MemoryFull,
            (SaveState::Unchanged | SaveState::OnlyInMemory, _) => Keeping::MemoryBlocked,
        }
    }
}

/// The names and lines of entries for the second copy; an entry that cannot be written is left to the
/// first copy's own report.
fn named_lines(entries: &[Entry]) -> Vec<(String, String)> {
    let lines = entries.iter().filter_map(|entry| Line::of(entry).ok());
    lines.map(|line| (line.name.text(), line.text)).collect()
}

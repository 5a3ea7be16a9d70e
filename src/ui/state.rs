//! What the app knows while it runs, and the one door through which it changes.

use std::sync::Arc;
use std::time::Duration;

use leptos::prelude::*;

use crate::domain::homecoming::departure::is_gone;
use crate::domain::homecoming::reports::last_heard;
use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::{Carer, Change, ChickId, Entry, EntryId, Journal, Refusal};
use crate::domain::outlook::{Outlook, outlook};
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::plan::parts::Author;
use crate::domain::quantity::order::set_of;
use crate::domain::time::moment::Moment;
use crate::domain::time::zone::Zone;
use crate::store::browser::LocalKeyValue;
use crate::store::setting::Setting;
use crate::ui::copies::{Copies, Keeping};
use crate::ui::of_phone::OfPhone;
use crate::ui::route::Route;
use crate::ui::{clock, platform};
use crate::words::Language;
use crate::words::format::{DecimalSign, Writing};

/// The browser is asked not to clear the storage by itself after this many entries: browsers decide
/// by use, so a first visit would be refused.
const ENTRIES_BEFORE_ASKING: usize = 3;

/// How long a notice stays. What it tells stands in the journal too, with the way to take it back.
const NOTICE_STAYS: Duration = Duration::from_secs(10);

/// Judges a chick: [`judge_here`].
pub type Judge = fn(Moment, &Journal, ChickId, &Zone, bool) -> Option<Outlook>;

/// The outlook of a chick on this phone. One that is only followed is judged at the moment it was last heard of.
pub fn judge_here(
    now: Moment,
    journal: &Journal,
    chick: ChickId,
    zone: &Zone,
    is_followed: bool,
) -> Option<Outlook> {
    let heard = is_followed
        .then(|| last_heard(now, journal, chick))
        .flatten();
    outlook(heard.unwrap_or(now), journal, chick, zone)
}

/// What was just done, shown at the foot of the screen with a way back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Notice {
    /// When it was said.
    pub at: Moment,
    /// Whether the task that said it still runs, and may lead to another screen.
    pub is_new: bool,
    /// What was noted.
    pub text: String,
    /// Entries that Undo takes back.
    pub undo: Vec<EntryId>,
}

/// Everything that screens read and the acts they may call. Signals only; copied freely.
#[derive(Debug, Clone, Copy)]
pub struct AppState {
    /// Every entry on this phone, or of the made-up chick.
    pub journal: RwSignal<Journal>,
    /// The chick on screen.
    pub chick: RwSignal<Option<ChickId>>,
    /// Now, moved on once a second while the page is visible.
    pub now: RwSignal<Moment>,
    /// The zone the phone is in.
    pub zone: RwSignal<Zone>,
    /// The screen.
    pub route: RwSignal<Route>,
    /// Language and units.
    pub writing: RwSignal<Writing>,
    /// Whether the made-up chick is shown, which is never kept.
    pub is_demo: RwSignal<bool>,
    /// A text of ours that the app was opened with, until the take-in screen fetches it.
    pub link: RwSignal<Option<String>>,
    /// The chick whose card the next new one starts from, until the form fetches it.
    pub template: RwSignal<Option<ChickId>>,
    /// What this phone knows of its chicks beside their records: role, removal, questions still open.
    pub of_phone: OfPhone,
    /// What was just done.
    pub notice: RwSignal<Option<Notice>>,
    /// Everything about the chick on screen, worked out anew each minute and after each entry.
    pub outlook: Memo<Option<Arc<Outlook>>>,
    /// Keeps the journal.
    pub copies: Copies,
    /// The program itself.
    pub program: StoredValue<Program>,
}

/// How far the program is, whichever chick is on screen.
#[derive(Debug, Clone, Copy)]
pub struct Program {
    /// Whether a new version of the app waits.
    pub is_update_ready: RwSignal<bool>,
    /// Whether there may be records that are not opened yet.
    pub is_unopened: RwSignal<bool>,
    /// Leaves what the page shows before the app; comes with the records.
    pub glance: RwSignal<Option<fn(AppState)>>,
    /// Until when the answer holds that the page shows before the app; `None` before one was left.
    pub glance_until: RwSignal<Option<Moment>>,
}

fn new_id() -> EntryId {
    EntryId(platform::random_id())
}

impl AppState {
    /// At the present moment, before the records are opened; it judges as soon as it can.
    pub fn new(copies: Copies, zone: Zone, judge: RwSignal<Option<Judge>>) -> Self {
        let now_at_start = clock::now();
        let journal = RwSignal::new(Journal::default());
        let chick = RwSignal::new(None);
        let now = RwSignal::new(now_at_start);
        let zone = RwSignal::new(zone);
        let of_phone = OfPhone::unopened();
        let minute = Memo::new(move |_| now.get().seconds().div_euclid(60));
        let outlook = Memo::new_with_compare(
            move |_| {
                minute.get();
                let judge = judge.get()?;
                let id = chick.get()?;
                let now = now.get_untracked();
                let is_followed = of_phone.at(Setting::Followed, id).is_some();
                let outlook = journal
                    .with(|journal| zone.with(|zone| judge(now, journal, id, zone, is_followed)));
                outlook.map(Arc::new)
            },
            |_, _| true,
        );
        Self {
            journal,
            chick,
            now,
            zone,
            route: RwSignal::new(Route::from_hash(&platform::hash())),
            writing: RwSignal::new(copies.writing()),
            is_demo: RwSignal::new(false),
            link: RwSignal::new(None),
            template: RwSignal::new(None),
            of_phone,
            notice: RwSignal::new(None),
            outlook,
            copies,
            program: StoredValue::new(Program {
                is_update_ready: RwSignal::new(false),
                is_unopened: RwSignal::new(LocalKeyValue.may_hold_records()),
                glance: RwSignal::new(None),
                glance_until: RwSignal::new(None),
            }),
        }
    }

    /// Opens the records of this phone.
    pub fn open(self) {
        self.of_phone.open(self.copies);
        self.journal.set(self.copies.open());
        self.choose_chick();
        self.program.get_value().is_unopened.set(false);
    }

    /// The state of the app, from any component below it.
    pub fn here() -> Self {
        expect_context()
    }

    /// The language and units now; screens are built anew when they change.
    pub fn writing_now(self) -> Writing {
        self.writing.get_untracked()
    }

    /// The language now.
    pub fn language(self) -> Language {
        self.writing_now().language
    }

    /// Notes a change for the chick on screen at the present moment.
    ///
    /// # Errors
    /// A [`Refusal`]; nothing was then changed.
    pub fn dispatch(self, change: Change) -> Result<EntryId, Refusal> {
        self.dispatch_at(clock::now(), change)
    }

    /// Notes a change for the chick on screen at a given moment.
    ///
    /// # Errors
    /// A [`Refusal`]; nothing was then changed.
    pub fn dispatch_at(self, at: Moment, change: Change) -> Result<EntryId, Refusal> {
        let chick = self.chick.get_untracked().ok_or(Refusal::NoSuchChick)?;
        let ids = self.dispatch_for(chick, vec![(at, change)])?;
        ids.first().copied().ok_or(Refusal::NoSuchEntry)
    }

    /// Notes several changes of one act: all of them or none.
    ///
    /// # Errors
    /// The first [`Refusal`]; nothing was then changed.
    pub fn dispatch_for(
        self,
        chick: ChickId,
        changes: Vec<(Moment, Change)>,
    ) -> Result<Vec<EntryId>, Refusal> {
        let named = changes.into_iter();
        let named = named.map(|(at, change)| (new_id(), at, change));
        self.dispatch_named(chick, named.collect())
    }

    fn dispatch_named(
        self,
        chick: ChickId,
        changes: Vec<(EntryId, Moment, Change)>,
    ) -> Result<Vec<EntryId>, Refusal> {
        let noted_at = clock::now();
        let mut journal = self.journal.get_untracked();
        let mut entries = Vec::new();
        for (id, at, change) in changes {
            let offset = self.zone.with_untracked(|zone| zone.offset_at(at));
            let entry = Entry {
                at,
                id,
                chick,
                noted_at,
                offset,
                by: self.copies.carer(),
                change,
            };
            journal.append(noted_at, entry.clone())?;
            entries.push(entry);
        }
        let ids = entries.iter().map(|entry| entry.id).collect();
        if !self.is_demo.get_untracked() {
            self.copies.keep(&entries);
            if journal.entries().len() == ENTRIES_BEFORE_ASKING {
                leptos::task::spawn_local(async {
                    platform::ask_to_persist().await;
                });
            }
        }
        self.now.set(noted_at);
        self.journal.set(journal);
        self.leave_a_glance();
        Ok(ids)
    }

    /// As whom the plan of a chick is set on this device: a breeder cares for it until it has arrived.
    pub fn author(self, chick: ChickId) -> Author {
        if !self.copies.is_bred_here(chick) {
            return Author::OWNER;
        }
        let has_arrived = self.journal.with_untracked(|journal| {
            let chick = Chick::from_journal(journal, chick);
            chick.is_some_and(|chick| chick.arrived.is_some())
        });
        if has_arrived {
            Author::BREEDER_AFAR
        } else {
            Author::BREEDER
        }
    }

    /// The name of the breeder whom the plan wants asked before a feed goes that may go, unless she holds this phone.
    pub fn ask_before_drop(self, outlook: &Outlook) -> Option<&str> {
        outlook
            .ask_before_drop()
            .filter(|_| !self.is_breeder_here())
    }

    /// Whether who holds this phone is the breeder of the chick on screen: she typed it in as hers, or follows
    /// it after it was handed to its owner.
    pub fn is_breeder_here(self) -> bool {
        let Some(id) = self
            .chick
            .get_untracked()
            .filter(|_| !self.is_demo.get_untracked())
        else {
            return false;
        };
        let is_in = |setting| self.of_phone.at_untracked(setting, id).is_some();
        if self.copies.is_bred_here(id) {
            return true;
        }
        if !is_in(Setting::Followed) || is_in(Setting::Card) {
            return false;
        }
        let chick = self
            .journal
            .with_untracked(|journal| Chick::from_journal(journal, id));
        chick.is_some_and(|chick| {
            let mut handed = chick.handed_over.iter();
            handed.any(|handed| handed.what.to == Carer::Owner)
        })
    }

    /// The route on screen: the one of the address, unless it needs a chick and there is none. Before the records
    /// are opened nobody knows.
    pub fn shown(self) -> Route {
        let route = self.route.get();
        let may_have_chick =
            self.chick.get().is_some() || self.program.get_value().is_unopened.get();
        if route == Route::Now && self.is_breeders_view() {
            Route::Chicks
        } else if may_have_chick || route.needs_no_chick() {
            route
        } else {
            Route::Start
        }
    }

    /// Whether this phone shows a breeder's list in place of what is due: she cares for no chick on screen but those
    /// she bred herself, which ask for no feeds here. Follows.
    pub fn is_breeders_view(self) -> bool {
        let is_carer = |id: ChickId| self.is_with_me(id) && !self.copies.is_bred_here(id);
        self.copies.is_breeder() && !self.is_demo.get() && !self.chick.get().is_some_and(is_carer)
    }

    /// A breeder's phone follows every chick of hers that has left: its feeds and alarms are on the phone of whoever
    /// has it. One that was given back to her is with her again.
    pub fn follow_what_left(self) {
        let now = clock::now();
        for id in untrack(|| self.chicks()) {
            if !self.copies.is_bred_here(id) {
                continue;
            }
            let journal = self.journal;
            let chick = journal.with_untracked(|journal| Chick::from_journal(journal, id));
            let is_gone = chick.is_some_and(|chick| is_gone(now, &chick));
            let is_followed = self.of_phone.at_untracked(Setting::Followed, id).is_some();
            if is_gone && self.is_with_me(id) {
                self.set_of_phone(Setting::Followed, id, Some(now));
            } else if !is_gone && is_followed {
                self.set_of_phone(Setting::Followed, id, None);
            }
        }
    }

    /// Erases the whole record of a removed chick from both copies of this phone. It stays on the list of
    /// removed chicks, so that what comes back of it stays hidden. Once it is gone, `then` gets what went and what is
    /// left.
    pub fn erase_chick(self, id: ChickId, then: fn(&[Entry], &Journal)) {
        let entries: Vec<Entry> = self.journal.with_untracked(|journal| {
            let entries = journal.of_chick(id).into_iter();
            entries.cloned().collect()
        });
        let chicks = set_of(entries.iter().map(|entry| entry.chick).chain([id]));
        let say = self.language();
        leptos::task::spawn_local(async move {
            if self.copies.erase(&chicks, &entries).await {
                self.journal
                    .update(|journal| *journal = journal.without(&chicks));
                self.journal
                    .with_untracked(|journal| then(&entries, journal));
                self.copies.forget_guide(id);
                self.copies.remember_glance("");
                self.choose_chick();
                self.leave_a_glance();
                self.say(say.life_erased().to_owned(), Vec::new());
            } else {
                self.say(say.life_erase_failed().to_owned(), Vec::new());
            }
        });
    }

    /// Sets what differs in `plan` from the plan of a chick as this device left it; all or nothing.
    ///
    /// # Errors
    /// A [`Refusal`]; nothing was then changed.
    pub fn set_plan(self, chick: ChickId, plan: &CarePlan) -> Result<Vec<EntryId>, Refusal> {
        let author = self.author(chick);
        let plans = self.journal.with_untracked(|journal| journal.plans(chick));
        let changes = plans.ok_or(Refusal::NoSuchChick)?.sets(plan, author);
        let now = clock::now();
        self.dispatch_for(
            chick,
            changes.into_iter().map(|change| (now, change)).collect(),
        )
    }

    /// Adds a chick that is typed in here, by its breeder or its owner.
    ///
    /// # Errors
    /// A [`Refusal`]; nothing was then changed.
    pub fn add_chick(
        self,
        chick: ChickId,
        plan: CarePlan,
        is_breeder: bool,
    ) -> Result<Vec<EntryId>, Refusal> {
        let (now, added) = (clock::now(), new_id());
        let mut named = vec![(added, now, Change::ChickAdded(Box::new(plan)))];
        if is_breeder {
            self.copies.remember_bred_here(chick);
            let (sets, said_by) = (vec![added], String::new());
            named.push((new_id(), now, Change::PartAgreed { sets, said_by }));
        }
        if is_breeder && self.copies.is_breeder() {
            let (to, name) = (Carer::Breeder, self.copies.carer());
            named.push((new_id(), now, Change::HandedOver { to, name }));
        }
        self.dispatch_named(chick, named)
    }

    /// Asks the breeder for what differs in `plan` from the plan in force, or notes who said so on the
    /// telephone and when; all or nothing.
    ///
    /// # Errors
    /// A [`Refusal`]; nothing was then changed.
    pub fn ask_for(
        self,
        chick: ChickId,
        plan: &CarePlan,
        said: Option<(Moment, String)>,
    ) -> Result<Vec<EntryId>, Refusal> {
        let plans = self.journal.with_untracked(|journal| journal.plans(chick));
        let asks = plans.ok_or(Refusal::NoSuchChick)?.asks(plan).into_iter();
        let now = clock::now();
        let mut named: Vec<(EntryId, Moment, Change)> =
            asks.map(|change| (new_id(), now, change)).collect();
        if let Some((at, said_by)) = said {
            let is_asked =
                |change: &Change| matches!(change, Change::PartSet { is_carer, .. } if !is_carer);
            let asked = named.iter().filter(|(_, _, change)| is_asked(change));
            let sets = asked.map(|(id, _, _)| *id).collect();
            named.push((new_id(), at, Change::PartAgreed { sets, said_by }));
        }
        self.dispatch_named(chick, named)
    }

    fn leave_a_glance(self) {
        if let Some(leave) = self.program.get_value().glance.get_untracked() {
            leave(self);
        }
    }

    /// Says what was just done, with a way back.
    pub fn say(self, text: String, undo: Vec<EntryId>) {
        let mut notice = Notice {
            at: clock::now(),
            is_new: true,
            text,
            undo,
        };
        self.notice.set(Some(notice.clone()));
        notice.is_new = false;
        let is_said = move || {
            self.notice.update_untracked(|now| {
                if let Some(now) = now {
                    now.is_new = false;
                }
            });
        };
        set_timeout(is_said, Duration::ZERO);
        let leave = move || {
            let is_shown = self.notice.get_untracked().as_ref() == Some(&notice);
            if is_shown && !platform::has_focus(".status-line") {
                self.notice.set(None);
            }
        };
        set_timeout(leave, NOTICE_STAYS);
    }

    /// With the next screen the notice leaves, unless it was said on the way there.
    pub fn leave_notice(self) {
        let notice = self.notice.get_untracked();
        if notice.is_some_and(|notice| !notice.is_new) {
            self.notice.set(None);
        }
    }

    /// Says why a change is refused.
    pub fn say_refusal(self, refusal: &Refusal) {
        self.say(self.language().refusal(refusal).to_owned(), Vec::new());
    }

    /// Notes a change now and says so with a way back, or says why it is refused; whether it was taken.
    pub fn note(self, change: Change, said: String) -> bool {
        match self.dispatch(change) {
            Ok(id) => {
                self.say(said, vec![id]);
                true
            }
            Err(refusal) => {
                self.say_refusal(&refusal);
                false
            }
        }
    }

    /// Takes entries back and says so; taking the retractions back again undoes it.
    pub fn take_back(self, ids: &[EntryId]) {
        let Some(chick) = self.chick.get_untracked() else {
            return;
        };
        let now = clock::now();
        let changes = ids
            .iter()
            .map(|id| (now, Change::Retracted { id: *id }))
            .collect();
        match self.dispatch_for(chick, changes) {
            Ok(undo) => self.say(self.language().status_taken_back().to_owned(), undo),
            Err(refusal) => self.say_refusal(&refusal),
        }
    }

    /// Takes in entries from elsewhere: a backup, a report, another tab, the second copy.
    pub fn import(self, entries: Vec<Entry>, keep: bool) -> usize {
        let mut journal = self.journal.get_untracked();
        let new: Vec<Entry> = entries
            .into_iter()
            .filter(|entry| !journal.holds(entry))
            .collect();
        let count = journal.join(&Journal::from_entries(new.clone()));
        if count > 0 {
            if keep {
                self.copies.keep(&new);
            }
            self.journal.set(journal);
            self.choose_chick();
        }
        count
    }

    /// Follows the address: a screen, or a text of ours, which is taken out of the address at once so
    /// that it does not stay in the history.
    pub fn follow_address(self) {
        let hash = platform::hash();
        // A text of a newer build is taken up too: the answer then says that it is newer.
        let version = hash
            .strip_prefix("#pl")
            .and_then(|text| text.bytes().next());
        if version.is_some_and(|byte| byte.is_ascii_digit()) {
            self.link.set(Some(hash));
            platform::replace_hash(&Route::Import.to_hash());
            self.route.set(Route::Import);
            return;
        }
        let route = Route::from_hash(&hash);
        if self.route.get_untracked() != route {
            self.route.set(route);
        }
    }

    /// The text that the app was opened with; once.
    pub fn take_link(self) -> Option<String> {
        let link = self.link.get_untracked();
        self.link.set(None);
        link
    }

    /// Opens the form of a new chick, filled from the card of another one.
    pub fn start_from(self, id: ChickId) {
        self.template.set(Some(id));
        self.go(Route::WholePlan);
    }

    /// The plan that the form of a new chick starts from; once.
    pub fn take_template(self) -> Option<CarePlan> {
        let id = self.template.get_untracked()?;
        self.template.set(None);
        let chick = self
            .journal
            .with_untracked(|journal| Chick::from_journal(journal, id))?;
        Some(chick.plan.as_template())
    }

    /// Goes to a screen.
    pub fn go(self, route: Route) {
        platform::set_hash(&route.to_hash());
        self.route.set(route);
    }

    /// The chicks of this phone that were not removed from it; follows both.
    pub fn chicks(self) -> Vec<ChickId> {
        let mut chicks = self.journal.with(Journal::chicks);
        if !self.is_demo.get() {
            chicks.retain(|id| self.of_phone.at(Setting::Removed, *id).is_none());
        }
        chicks
    }

    /// Removes a chick from this phone, or shows it again. Its records stay as they are.
    pub fn set_removed(self, id: ChickId, is_removed: bool) {
        let at = is_removed.then(clock::now);
        self.set_of_phone(Setting::Removed, id, at);
        self.choose_chick();
    }

    /// Puts a chick into a list of this phone with its moment, or takes it out.
    pub fn set_of_phone(self, setting: Setting, chick: ChickId, at: Option<Moment>) {
        self.of_phone.set(self.copies, setting, chick, at);
    }

    /// After a card was taken in: whether the chick is home, and whether it was typed in before, is asked.
    pub fn card_taken(self, chick: ChickId) {
        let now = clock::now();
        self.set_of_phone(Setting::Card, chick, Some(now));
        self.ask_home(chick);
        if !self.typed_chicks().is_empty() {
            self.set_of_phone(Setting::AskSame, chick, Some(now));
        }
    }

    /// Asks whether a chick that came in is home, until it is answered or its arrival is noted.
    pub fn ask_home(self, chick: ChickId) {
        self.set_of_phone(Setting::AskHome, chick, Some(clock::now()));
    }

    /// The chicks that were typed in here and have no card yet.
    pub fn typed_chicks(self) -> Vec<ChickId> {
        let mut chicks = untrack(|| self.chicks());
        chicks.retain(|id| {
            let is_card = self.of_phone.at_untracked(Setting::Card, *id).is_some();
            let journal = self.journal;
            !is_card && journal.with_untracked(|journal| journal.check_typed(*id).is_ok())
        });
        chicks
    }

    /// Whether this phone cares for a chick and has it here.
    pub fn is_with_me(self, id: ChickId) -> bool {
        [Setting::Followed, Setting::Away]
            .iter()
            .all(|setting| self.of_phone.at_untracked(*setting, id).is_none())
    }

    /// Whether what came in is of a removed chick: then the settings ask whether to show it again.
    pub fn shows_removed(self, id: ChickId) -> bool {
        let is_removed = self.of_phone.at_untracked(Setting::Removed, id).is_some();
        if is_removed {
            let name = self.name_of(id);
            let pattern = self.language().life_removed_came();
            self.say(self.writing_now().about(pattern, &name), Vec::new());
            self.go(Route::Settings);
        }
        is_removed
    }

    /// The name of a chick; empty when it has none.
    pub fn name_of(self, id: ChickId) -> String {
        let chick = self
            .journal
            .with_untracked(|journal| Chick::from_journal(journal, id));
        chick.map(|chick| chick.plan.name).unwrap_or_default()
    }

    /// Puts a chick on screen: the one remembered, else the first.
    pub fn choose_chick(self) {
        let chicks = untrack(|| self.chicks());
        let current = self
            .chick
            .get_untracked()
            .or_else(|| self.copies.remembered_chick());
        let chosen = current
            .filter(|id| chicks.contains(id))
            .or(chicks.first().copied());
        if self.chick.get_untracked() != chosen {
            self.chick.set(chosen);
        }
    }

    /// Shows another chick and remembers it.
    pub fn show_chick(self, id: ChickId) {
        self.chick.set(Some(id));
        if !self.is_demo.get_untracked() {
            self.copies.remember_chick(id);
        }
        self.leave_a_glance();
    }

    /// Shows a made-up chick; the kept journal waits untouched.
    pub fn show_demo(self) {
        let now = clock::now();
        let typed = self.language().demo_typed();
        let journal = self
            .zone
            .with_untracked(|zone| crate::domain::journal::demo::journal(now, zone, typed));
        if !self.is_demo.get_untracked() {
            self.journal
                .with_untracked(|kept| self.copies.set_aside(kept));
        }
        self.is_demo.set(true);
        self.chick.set(journal.chicks().first().copied());
        self.journal.set(journal);
        self.now.set(now);
        self.notice.set(None);
        self.go(Route::Now);
    }

    /// Leaves the made-up chick and shows what is kept.
    pub fn leave_demo(self) {
        self.is_demo.set(false);
        self.chick.set(None);
        self.journal.set(self.copies.journal_again());
        self.notice.set(None);
        self.choose_chick();
        self.go(Route::Now);
    }

    /// Changes language or units and remembers them; the decimal sign follows the language.
    pub fn set_writing(self, writing: Writing) {
        let decimal = DecimalSign::of(writing.language, &platform::language_tag());
        let writing = Writing { decimal, ..writing };
        self.copies.remember_writing(writing);
        self.writing.set(writing);
        self.leave_a_glance();
    }

    /// How far the last entry is kept.
    pub fn keeping(self) -> Keeping {
        self.copies.keeping.get()
    }
}

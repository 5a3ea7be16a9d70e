//! A new chick typed in by its owner, one question group a screen. What is typed stays until the plan is kept,
//! also when the page is left; an amount is never preset, and what nobody is sure of stays unconfirmed.

use std::mem;
use std::time::Duration;

use leptos::prelude::*;

use crate::domain::journal::entries::ChickId;
use crate::domain::plan::care_plan::{
    CarePlan, Contact, PlanFault, PlanField, PlannedFeed, Reference, Role, Slot, Tool,
    is_phone_number,
};
use crate::domain::plan::species::Species;
use crate::domain::plan::usual_times::{MOST_USUAL, USUAL, usual_times};
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::{Day, WallTime};
use crate::store::draft_text::{Draft, draft_from_text, draft_to_text};
use crate::ui::parts::button::button;
use crate::ui::parts::choice::Choice;
use crate::ui::parts::field::FieldKind;
use crate::ui::parts::live::{live, on_change};
use crate::ui::parts::page::Heading;
use crate::ui::parts::plan_checks::{TypedNumbers, typed_doubt};
use crate::ui::parts::species_field::SpeciesField;
use crate::ui::route::Route;
use crate::ui::screens::plan_form::reading;
use crate::ui::screens::plan_form::text::{AtFault, Text, TextField};
use crate::ui::state::AppState;
use crate::ui::{clock, platform};

/// A group of questions.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Group {
    Who,
    Hatched,
    Fed,
    Weight,
    Call,
}

const GROUPS: [Group; 5] = [
    Group::Who,
    Group::Hatched,
    Group::Fed,
    Group::Weight,
    Group::Call,
];

/// One feed's time and amount.
#[derive(Debug, Clone, Copy)]
struct FeedText {
    slot: Slot,
    time: RwSignal<String>,
    amount: Text,
}

/// Everything typed so far.
#[derive(Debug, Clone, Copy)]
struct Typed {
    state: AppState,
    /// The place of the group on screen.
    at: RwSignal<usize>,
    /// The groups that were passed by.
    unsure: RwSignal<Vec<usize>>,
    name: Text,
    species: RwSignal<Option<usize>>,
    species_fault: RwSignal<String>,
    hatched: Text,
    /// Feeds a day less one.
    count: RwSignal<Option<usize>>,
    feeds: StoredValue<[FeedText; 6]>,
    feeds_fault: RwSignal<String>,
    tool: RwSignal<Option<usize>>,
    weight: Text,
    weight_day: Text,
    breeder: Text,
    breeder_number: Text,
    vet_number: Text,
    fault: RwSignal<String>,
    /// The plan is kept: what is drawn anew after it is no draft any more.
    is_kept: StoredValue<bool>,
}

/// Names of the fields of the six feeds in the draft.
const FEED_FIELDS: [(&str, &str); 6] = [
    ("time-1", "ml-1"),
    ("time-2", "ml-2"),
    ("time-3", "ml-3"),
    ("time-4", "ml-4"),
    ("time-5", "ml-5"),
    ("time-6", "ml-6"),
];

impl Typed {
    fn new(state: AppState, draft: &Draft) -> Self {
        let of = |field: &str| draft.get(field).cloned();
        let text = |field: &str| Text::new(of(field).unwrap_or_default());
        let number = |field: &str| of(field).and_then(|value| value.parse::<usize>().ok());
        let count = number("feeds").filter(|count| *count < MOST_USUAL);
        let count = count.unwrap_or(USUAL - 1);
        let usual = usual_times(count + 1);
        let mut fields = FEED_FIELDS.into_iter();
        let feeds = Slot::ALL.map(|slot| {
            let (time, amount) = fields.next().unwrap_or_default();
            let preset = usual.iter().find(|(of, _)| *of == slot);
            let preset = preset.map(|(_, time)| time.text());
            FeedText {
                slot,
                time: RwSignal::new(of(time).or(preset).unwrap_or_default()),
                amount: text(amount),
            }
        });
        let unsure = of("unsure").unwrap_or_default();
        let unsure = unsure.split(' ').filter_map(|place| place.parse().ok());
        let weight_day = of("weighed").unwrap_or_else(|| today(state).iso());
        Self {
            state,
            at: RwSignal::new(number("group").unwrap_or(0).min(GROUPS.len() - 1)),
            unsure: RwSignal::new(unsure.collect()),
            name: text("name"),
            species: RwSignal::new(number("species").filter(|place| *place < Species::ALL.len())),
            species_fault: RwSignal::new(String::new()),
            hatched: text("hatched"),
            count: RwSignal::new(Some(count)),
            feeds: StoredValue::new(feeds),
            feeds_fault: RwSignal::new(String::new()),
            tool: RwSignal::new(Some(number("tool").unwrap_or(0).min(Tool::ALL.len() - 1))),
            weight: text("weight"),
            weight_day: Text::new(weight_day),
            breeder: text("breeder"),
            breeder_number: text("breeder-number"),
            vet_number: text("vet-number"),
            fault: RwSignal::new(String::new()),
            is_kept: StoredValue::new(false),
        }
    }

    /// All of it as it stands; follows.
    fn draft(self) -> String {
        let place = |place: Option<usize>| place.map(|place| place.to_string()).unwrap_or_default();
        let unsure = self.unsure.get().into_iter();
        let unsure: Vec<String> = unsure.map(|place| place.to_string()).collect();
        let mut fields = vec![
            ("group", self.at.get().to_string()),
            ("unsure", unsure.join(" ")),
            ("name", self.name.text.get()),
            ("species", place(self.species.get())),
            ("hatched", self.hatched.text.get()),
            ("feeds", place(self.count.get())),
            ("tool", place(self.tool.get())),
            ("weight", self.weight.text.get()),
            ("weighed", self.weight_day.text.get()),
            ("breeder", self.breeder.text.get()),
            ("breeder-number", self.breeder_number.text.get()),
            ("vet-number", self.vet_number.text.get()),
        ];
        for (row, (time, amount)) in self.feeds.get_value().into_iter().zip(FEED_FIELDS) {
            fields.push((time, row.time.get()));
            fields.push((amount, row.amount.text.get()));
        }
        let fields = fields.into_iter();
        let mut draft = Draft::new();
        draft.extend(fields.map(|(field, value)| (field.to_owned(), value)));
        draft_to_text(&draft)
    }

    fn is_unsure(self, group: Group) -> bool {
        let unsure = self.unsure.get_untracked();
        unsure
            .into_iter()
            .any(|place| GROUPS.get(place) == Some(&group))
    }

    /// The rows of the feeds that there are; follows their count.
    fn rows(self) -> Vec<FeedText> {
        let count = self.count.get().unwrap_or_default();
        let slots = usual_times(count + 1);
        let mut rows = self.feeds.get_value().to_vec();
        rows.retain(|row| slots.iter().any(|(slot, _)| *slot == row.slot));
        rows
    }

    /// Times that nobody changed follow the count of feeds.
    fn follow_count(self, before: Option<usize>) {
        let usual = |count: Option<usize>, slot| {
            let times = usual_times(count.unwrap_or_default() + 1).into_iter();
            let mut times = times.filter(|(of, _)| *of == slot);
            times.next().map(|(_, time)| time.text())
        };
        for row in self.feeds.get_value() {
            let now = row.time.get_untracked();
            let is_untouched = now.is_empty() || Some(now) == usual(before, row.slot);
            if is_untouched && let Some(time) = usual(self.count.get_untracked(), row.slot) {
                row.time.set(time);
            }
        }
    }

    fn who(self) -> Option<(Species, String)> {
        let say = self.state.language();
        let species = self.species.get_untracked();
        let species = species.and_then(|index| Species::ALL.get(index).copied());
        let fault = if species.is_none() {
            say.fault_species_needed()
        } else {
            ""
        };
        self.species_fault.set(fault.to_owned());
        let name = self.name.take(if self.name.is_empty() {
            Err(say.fault_name_needed().to_owned())
        } else {
            Ok(self.name.get())
        });
        species.zip(name)
    }

    fn hatch_day(self) -> Result<Option<Day>, AtFault> {
        if self.is_unsure(Group::Hatched) {
            self.hatched.fault.set(String::new());
            return Ok(None);
        }
        let say = self.state.language();
        let day = if self.hatched.is_empty() {
            Err(say.group_day_needed())
        } else {
            reading::hatched(say, today(self.state), &self.hatched.get())
        };
        let day = self.hatched.take(day.map_err(str::to_owned));
        day.map(Some).ok_or(AtFault)
    }

    /// The feeds, none where nobody is sure of them.
    fn planned(self) -> Option<Vec<PlannedFeed>> {
        let writing = self.state.writing_now();
        let say = writing.language;
        self.feeds_fault.set(String::new());
        let rows = untrack(|| self.rows());
        if self.is_unsure(Group::Fed) {
            for row in rows {
                row.amount.fault.set(String::new());
            }
            return Some(Vec::new());
        }
        let mut feeds = Vec::new();
        let mut fault = None;
        for row in rows {
            let time = WallTime::parse(row.time.get_untracked().trim());
            let amount = if row.amount.is_empty() {
                Err(say.group_amount_needed().to_owned())
            } else {
                Millilitres::parse(&row.amount.get()).map_err(|error| writing.number_error(error))
            };
            let is_wrong = amount.is_err();
            row.amount.fault.set(if is_wrong {
                "!".to_owned()
            } else {
                String::new()
            });
            match (time, amount) {
                (Some(time), Ok(volume)) => feeds.push(PlannedFeed {
                    slot: row.slot,
                    time,
                    volume,
                }),
                (None, _) => fault = Some(say.fault_no_time().to_owned()),
                (Some(_), Err(error)) => fault = fault.or(Some(error)),
            }
        }
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        plan.feeds.clone_from(&feeds);
        let of_feeds = [PlanFault::FeedsOutOfOrder, PlanFault::FeedVolume];
        let found = plan
            .faults()
            .into_iter()
            .find(|fault| of_feeds.contains(fault));
        let fault = fault.or(found.map(|fault| say.plan_fault(fault).to_owned()));
        match fault {
            Some(fault) => {
                self.feeds_fault.set(fault);
                None
            }
            None => Some(feeds),
        }
    }

    fn reference(self, hatched: Option<Day>) -> Result<Option<Reference>, AtFault> {
        let writing = self.state.writing_now();
        let say = writing.language;
        if self.is_unsure(Group::Weight) {
            self.weight.fault.set(String::new());
            self.weight_day.fault.set(String::new());
            return Ok(None);
        }
        let weight = self.weight.take(if self.weight.is_empty() {
            Err(say.group_weight_needed().to_owned())
        } else {
            reading::handover_weight(writing, &self.weight.get())
        });
        let day = reading::weighed_day(say, today(self.state), hatched, &self.weight_day.get());
        let day = self.weight_day.take(day.map_err(str::to_owned));
        let reference = weight.zip(day);
        reference
            .map(|(weight, day)| Some(Reference { weight, day }))
            .ok_or(AtFault)
    }

    fn contacts(self) -> Option<Vec<Contact>> {
        let say = self.state.language();
        let read = |number: Text| {
            let fault = say.plan_fault(PlanFault::ContactNumber).to_owned();
            let is_sound = number.is_empty() || is_phone_number(&number.get());
            number.take(if is_sound {
                Ok(number.get())
            } else {
                Err(fault)
            })
        };
        let (breeder, vet) = (read(self.breeder_number), read(self.vet_number));
        let (breeder, vet) = (breeder?, vet?);
        if breeder.is_empty() && !self.is_unsure(Group::Call) {
            let fault = say.group_number_needed().to_owned();
            self.breeder_number.fault.set(fault);
            return None;
        }
        let contact = |role, name, number| Contact { role, name, number };
        let contacts = [
            contact(Role::Breeder, self.breeder.get(), breeder),
            contact(Role::AvianVet, String::new(), vet),
        ];
        let is_there = |contact: &Contact| !contact.name.is_empty() || !contact.number.is_empty();
        Some(contacts.into_iter().filter(is_there).collect())
    }

    /// Whether a group is answered or passed by; else its fields say what is wrong.
    fn is_answered(self, group: Group) -> bool {
        match group {
            Group::Who => self.who().is_some(),
            Group::Hatched => self.hatch_day().is_ok(),
            Group::Fed => self.planned().is_some(),
            Group::Weight => self.reference(self.hatch_day().ok().flatten()).is_ok(),
            Group::Call => self.contacts().is_some(),
        }
    }

    /// The plan as answered; `None` when a group is not.
    fn plan(self) -> Option<CarePlan> {
        let (species, name) = self.who()?;
        let hatched = self.hatch_day().ok()?;
        let (feeds, reference) = (self.planned()?, self.reference(hatched).ok()?);
        let mut plan = CarePlan::default_for(species);
        (plan.name, plan.hatched, plan.reference) = (name, hatched, reference);
        if !feeds.is_empty() {
            plan.unconfirmed.remove(&PlanField::Feeds);
        }
        // In the usual order: that of the default plan knows three feeds only.
        plan.drop_order.clear();
        plan.set_feeds(feeds);
        let tool = self.tool.get_untracked();
        let tool = tool.and_then(|index| Tool::ALL.get(index).copied());
        if let Some(tool) = tool.filter(|tool| *tool != plan.tool) {
            plan.tool = tool;
            plan.unconfirmed.remove(&PlanField::Tool);
        }
        plan.contacts = self.contacts()?;
        Some(plan)
    }

    /// Goes on from the group on screen, to the next one or to the first screen.
    fn go_on(self, is_unsure: bool) {
        let place = self.at.get_untracked();
        let Some(group) = GROUPS.get(place).copied() else {
            return;
        };
        self.unsure.update(|unsure| {
            unsure.retain(|other| *other != place);
            if is_unsure {
                unsure.push(place);
            }
        });
        if !self.is_answered(group) {
            return;
        }
        if place + 1 < GROUPS.len() {
            self.show(place + 1);
        } else {
            self.keep();
        }
    }

    fn show(self, place: usize) {
        self.at.set(place);
        set_timeout(platform::focus_heading, Duration::ZERO);
    }

    fn keep(self) {
        let open = GROUPS.iter().position(|group| !self.is_answered(*group));
        if let Some(open) = open {
            return self.show(open);
        }
        let Some(plan) = self.plan() else { return };
        let (state, name) = (self.state, plan.name.clone());
        let chick = ChickId(platform::random_id());
        match state.add_chick(chick, plan, false) {
            Ok(_) => {
                self.is_kept.set_value(true);
                state.copies.remember_draft("");
                state.show_chick(chick);
                state.ask_home(chick);
                state.say(name, Vec::new());
                state.go(Route::Now);
            }
            Err(refusal) => self
                .fault
                .set(state.language().refusal(&refusal).to_owned()),
        }
    }
}

fn today(state: AppState) -> Day {
    let now = clock::now();
    state.zone.with_untracked(|zone| zone.lived(now)).day
}

/// A new chick, one group of questions a screen.
#[component]
pub fn FirstGroupsScreen() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let draft = draft_from_text(&state.copies.draft());
    let typed = Typed::new(state, &draft);
    let (at, count) = (typed.at, typed.count);
    on_change(
        move || typed.draft(),
        move |draft| {
            if !typed.is_kept.get_value() {
                state.copies.remember_draft(&draft);
            }
        },
    );
    let mut before = count.get_untracked();
    on_change(
        move || count.get(),
        move |now| typed.follow_count(mem::replace(&mut before, now).or(Some(USUAL - 1))),
    );
    let is_draft = RwSignal::new(!draft.is_empty());
    let group = move || GROUPS.get(at.get()).copied().unwrap_or(Group::Who);
    let body = live(move || {
        let group = group();
        let (title, fields) = match group {
            Group::Who => (say.group_who(), who_fields(&typed).into_any()),
            Group::Hatched => (say.group_hatched(), hatched_fields(&typed).into_any()),
            Group::Fed => (say.group_fed(), fed_fields(&typed).into_any()),
            Group::Weight => (say.group_weight(), weight_fields(&typed).into_any()),
            Group::Call => (say.group_call(), call_fields(&typed).into_any()),
        };
        view! { <Heading text=title /> {fields} }
    });
    let back = move |_| match at.get_untracked() {
        0 => state.go(Route::Start),
        place => typed.show(place - 1),
    };
    let bars = live(move || {
        let bars = GROUPS.iter().enumerate();
        let bars = bars
            .map(|(place, _)| view! { <span data-done=(place <= at.get()).to_string()></span> });
        bars.collect_view()
    });
    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        is_draft.set(false);
        typed.go_on(false);
    };
    let not_sure = live(move || {
        (group() != Group::Who).then(|| button(say.group_not_sure(), move |_| typed.go_on(true)))
    });
    let word = live(move || match group() {
        Group::Call => say.group_start(),
        Group::Who | Group::Hatched | Group::Fed | Group::Weight => say.group_next(),
    });
    let known = live(move || {
        let is_shown = is_draft.get();
        is_shown.then(|| view! { <p class="hint" role="status">{say.group_draft()}</p> })
    });
    view! {
        <div class="scroll groups">
            <header class="groups__head">
                <button type="button" class="page__back" on:click=back aria-label=say.back()>
                    <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
                        <path d="M15 4L7 12L15 20"></path>
                    </svg>
                </button>
                <p class="hint">{move || writing.group_of(at.get() + 1, GROUPS.len())}</p>
            </header>
            <div class="guide__bars" aria-hidden="true">{bars}</div>
            <form class="form groups__form" id="group" on:submit=submit novalidate>
                {body}
                {known}
                <p class="fault" role="alert">{move || typed.fault.get()}</p>
            </form>
        </div>
        <div class="dock groups__dock">
            {not_sure}
            <button type="submit" form="group" class="button button--main">{word}</button>
        </div>
    }
}

fn who_fields(typed: &Typed) -> impl IntoView + use<> {
    let typed = *typed;
    let say = typed.state.language();
    view! {
        <TextField id="name" label=say.plan_name() text=typed.name kind=FieldKind::Text />
        <SpeciesField chosen=typed.species fault=typed.species_fault />
        <a class="button" href=Route::WholePlan.to_hash()>{say.group_all_fields()}</a>
    }
}

fn hatched_fields(typed: &Typed) -> impl IntoView + use<> {
    let typed = *typed;
    let say = typed.state.language();
    view! {
        <p class="hint">{say.group_hatched_hint()}</p>
        <TextField id="hatched" label=say.log_day() text=typed.hatched kind=FieldKind::Day />
    }
}

fn fed_fields(typed: &Typed) -> impl IntoView + use<> {
    let typed = *typed;
    let say = typed.state.language();
    let counts = vec!["1", "2", "3", "4", "5"];
    let tools = Tool::ALL.map(|tool| say.tool(tool)).to_vec();
    let rows = live(move || {
        let rows = typed.rows().into_iter();
        rows.map(|row| feed_row(typed.state, row)).collect_view()
    });
    view! {
        <p class="hint">{say.group_fed_hint()}</p>
        <Choice legend=say.group_feeds_a_day() name="feeds" options=counts chosen=typed.count />
        <fieldset class="choice">
            <legend>{say.group_when()}</legend>
            <div class="feed-lines">{rows}</div>
            <p class="fault" id="feeds-fault" role="alert">{move || typed.feeds_fault.get()}</p>
        </fieldset>
        <Choice legend=say.group_tool() name="tool" options=tools chosen=typed.tool />
    }
}

/// A word at the beginning of a line.
fn capital(word: &str) -> String {
    let mut rest = word.chars();
    let first = rest.next().into_iter().flat_map(char::to_uppercase);
    first.chain(rest).collect()
}

/// One feed in one line: its name, its time, its amount.
fn feed_row(state: AppState, row: FeedText) -> impl IntoView {
    let say = state.language();
    let name = say.feed(row.slot);
    let place = Slot::ALL.iter().position(|slot| *slot == row.slot);
    let place = place.unwrap_or_default() + 1;
    let (time, text) = (row.time, row.amount.text);
    let (of_time, of_amount) = (
        format!("{name}, {}", say.plan_time()),
        format!("{name}, {}", say.plan_volume()),
    );
    view! {
        <div class="feed-line">
            <span aria-hidden="true">{capital(say.slot(row.slot))}</span>
            <input
                id=format!("time-{place}")
                type="time"
                aria-label=of_time
                prop:value=move || time.get()
                on:input=move |event| time.set(event_target_value(&event))
            />
            <span class="feed-line__amount">
                <input
                    id=format!("volume-{place}")
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    aria-label=of_amount
                    aria-describedby="feeds-fault"
                    aria-invalid=move || (!row.amount.fault.get().is_empty()).to_string()
                    prop:value=move || text.get()
                    on:input=move |event| text.set(event_target_value(&event))
                />
                <span aria-hidden="true">{say.plan_volume()}</span>
            </span>
        </div>
    }
}

fn weight_fields(typed: &Typed) -> impl IntoView + use<> {
    let typed = *typed;
    let writing = typed.state.writing_now();
    let say = writing.language;
    let doubts = live(move || {
        let rows = typed.rows().into_iter();
        let feeds = rows.map(|row| (row.slot, row.time.get(), row.amount.text.get()));
        let species = typed.species.get();
        let numbers = TypedNumbers {
            species: species.and_then(|index| Species::ALL.get(index).copied()),
            weight: typed.weight.text.get(),
            feeds: feeds.collect(),
            mix: (String::new(), String::new()),
            window: (String::new(), String::new()),
        };
        let doubt = writing.amount_doubt(typed_doubt(writing, &numbers)?)?;
        Some(view! { <p class="fault">{doubt}</p> })
    });
    view! {
        <p class="hint">{say.group_weight_hint()}</p>
        <TextField
            id="handover-weight"
            label=say.weigh_field()
            text=typed.weight
            kind=FieldKind::Number
            unit=writing.mass_unit()
        />
        <TextField id="handover-day" label=say.plan_weight_day() text=typed.weight_day kind=FieldKind::Day />
        <div aria-live="polite">{doubts}</div>
    }
}

fn call_fields(typed: &Typed) -> impl IntoView + use<> {
    let typed = *typed;
    let say = typed.state.language();
    view! {
        <p class="hint">{say.group_call_hint()}</p>
        <TextField id="breeder-name" label=say.group_breeder() text=typed.breeder kind=FieldKind::Text />
        <TextField
            id="breeder-number"
            label=say.group_breeder_number()
            text=typed.breeder_number
            kind=FieldKind::Telephone
        />
        <TextField
            id="vet-number"
            label=say.group_vet_number()
            text=typed.vet_number
            kind=FieldKind::Telephone
            hint=say.optional()
        />
    }
}

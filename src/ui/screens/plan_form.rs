//! The breeder's numbers, typed in for a new chick or changed for this one.

use leptos::prelude::*;

use crate::domain::journal::entries::ChickId;
use crate::domain::plan::care_plan::{
    CarePlan, Contact, PlanFault, PlanField, PlannedFeed, Reference, Role, Slot, Tool,
    is_phone_number,
};
use crate::domain::plan::species::Species;
use crate::domain::quantity::units::{Millilitres, NumberError, Percent};
use crate::domain::time::moment::{Day, WallTime};
use crate::ui::parts::field::FieldKind;
use crate::ui::parts::live::live;
use crate::ui::parts::page::Page;
use crate::ui::parts::plan_checks::{TypedNumbers, typed_checks};
use crate::ui::parts::species_field::SpeciesField;
use crate::ui::route::Route;
use crate::ui::screens::plan_form::also::{AlsoRows, AlsoText};
use crate::ui::screens::plan_form::asking::{AskingRows, AskingText};
use crate::ui::screens::plan_form::drop_order::{DropOrder, DropOrderRows};
use crate::ui::screens::plan_form::journey::{JourneyRows, JourneyText};
use crate::ui::screens::plan_form::mixing::{MixingRows, MixingText};
use crate::ui::screens::plan_form::said::{SaidRows, SaidText};
use crate::ui::screens::plan_form::text::{AtFault, Text, TextField, is_any_at_fault, optional};
use crate::ui::state::AppState;
use crate::ui::{clock, platform};
use crate::words::format::Writing;

pub mod also;
pub mod asking;
pub mod drop_order;
pub mod journey;
pub mod mixing;
pub mod reading;
pub mod said;
pub mod text;

/// One feed's time and volume.
#[derive(Debug, Clone, Copy)]
struct FeedText {
    slot: Slot,
    time: Text,
    volume: Text,
}

/// One contact's name and number.
#[derive(Debug, Clone, Copy)]
struct ContactText {
    role: Role,
    name: Text,
    number: Text,
}

/// Everything typed on this screen.
#[derive(Debug, Clone, Copy)]
struct Form {
    state: AppState,
    base: StoredValue<CarePlan>,
    species: RwSignal<Option<usize>>,
    species_fault: RwSignal<String>,
    name: Text,
    ring: Text,
    hatched: Text,
    weight: Text,
    weight_day: Text,
    feeds: StoredValue<Vec<FeedText>>,
    feeds_fault: RwSignal<String>,
    contacts: StoredValue<Vec<ContactText>>,
    powder: Text,
    loss: Text,
    tool: RwSignal<Tool>,
    syringe: Text,
    serve_from: Text,
    serve_to: Text,
    settle: Text,
    waiting: Text,
    room_from: Text,
    room_to: Text,
    mixing: MixingText,
    journey: JourneyText,
    solids: Text,
    note: Text,
    also: AlsoText,
    order: DropOrder,
    said: SaidText,
    is_breeder: RwSignal<bool>,
    asking: AskingText,
    fault: RwSignal<String>,
}

impl Form {
    fn new(state: AppState, plan: &CarePlan, is_blank: bool) -> Self {
        let writing = state.writing_now();
        let today = state
            .zone
            .with_untracked(|zone| zone.lived(clock::now()))
            .day;
        let number = |tenths: i32| writing.tenths(tenths).replace('\u{202f}', "");
        let feeds = Slot::ALL.map(|slot| {
            let feed = plan.feed(slot).filter(|_| !is_blank);
            FeedText {
                slot,
                time: Text::new(feed.map(|feed| feed.time.text()).unwrap_or_default()),
                volume: Text::new(
                    feed.map(|feed| number(feed.volume.tenths()))
                        .unwrap_or_default(),
                ),
            }
        });
        let contacts = CONTACTS.map(|(role, place)| {
            let mut of_role = plan.contacts.iter().filter(|contact| contact.role == role);
            let contact = of_role.nth(place);
            ContactText {
                role,
                name: Text::new(
                    contact
                        .map(|contact| contact.name.clone())
                        .unwrap_or_default(),
                ),
                number: Text::new(
                    contact
                        .map(|contact| contact.number.clone())
                        .unwrap_or_default(),
                ),
            }
        });
        let reference = plan.reference;
        Self {
            state,
            base: StoredValue::new(plan.clone()),
            species: RwSignal::new(if is_blank {
                None
            } else {
                Species::ALL.iter().position(|known| *known == plan.species)
            }),
            species_fault: RwSignal::new(String::new()),
            name: Text::new(plan.name.clone()),
            ring: Text::new(plan.ring.clone()),
            hatched: Text::new(plan.hatched.map(Day::iso).unwrap_or_default()),
            weight: Text::new(
                reference
                    .map(|reference| writing.mass_typed(reference.weight))
                    .unwrap_or_default(),
            ),
            weight_day: Text::new(reference.map_or(today, |reference| reference.day).iso()),
            feeds: StoredValue::new(feeds.to_vec()),
            feeds_fault: RwSignal::new(String::new()),
            contacts: StoredValue::new(contacts.to_vec()),
            powder: Text::new(number(plan.powder_fraction.tenths())),
            loss: Text::new(number(plan.loss_limit.tenths())),
            tool: RwSignal::new(plan.tool),
            syringe: Text::new(number(plan.syringe.tenths())),
            serve_from: Text::new(writing.temperature_number(plan.serve_from)),
            serve_to: Text::new(writing.temperature_number(plan.serve_to)),
            settle: Text::new(plan.settle_in_days.to_string()),
            waiting: Text::new(plan.waiting_days.to_string()),
            room_from: Text::new(writing.temperature_number(plan.room_from)),
            room_to: Text::new(writing.temperature_number(plan.room_to)),
            mixing: MixingText::new(writing, plan),
            journey: JourneyText::new(state, plan.journey),
            solids: Text::new(plan.solids.clone()),
            note: Text::new(plan.note.clone()),
            also: AlsoText::new(writing, plan),
            order: DropOrder::new(plan),
            said: SaidText::new(plan),
            is_breeder: RwSignal::new(state.copies.is_breeder()),
            asking: AskingText::new(state),
            fault: RwSignal::new(String::new()),
        }
    }

    /// The plan as typed; `None` when a field is at fault, which then says so.
    fn plan(self) -> Option<CarePlan> {
        let writing = self.state.writing_now();
        let say = writing.language;
        let today = self
            .state
            .zone
            .with_untracked(|zone| zone.lived(clock::now()))
            .day;
        self.fault.set(String::new());
        self.species_fault.set(String::new());
        let species = self
            .species
            .get_untracked()
            .and_then(|index| Species::ALL.get(index).copied());
        if species.is_none() {
            self.species_fault
                .set(say.fault_species_needed().to_owned());
        }
        let name = self.name.take(if self.name.is_empty() {
            Err(say.fault_name_needed().to_owned())
        } else {
            Ok(self.name.get())
        });
        let hatched = self.hatched.take(optional(self.hatched, |text| {
            reading::hatched(say, today, text)
        }));
        let reference = self.reference(writing, hatched.flatten());
        let feeds = self.feed_list(writing);
        let contacts = self.contact_list();
        let journey = self.journey.journey(self.state);
        let mixing = self.mixing.parts(writing);
        let more = self.more(
            writing,
            species.unwrap_or(self.base.with_value(|base| base.species)),
        );
        let (species, name, hatched, reference, feeds, contacts, mut plan) = (
            species?,
            name?,
            hatched?,
            reference.ok()?,
            feeds?,
            contacts?,
            more?,
        );
        plan.species = species;
        plan.name = name;
        plan.ring = self.ring.get();
        plan.hatched = hatched;
        plan.reference = reference;
        plan.set_feeds(feeds);
        plan.unconfirmed.remove(&PlanField::Feeds);
        plan.contacts = contacts;
        plan.journey = journey.ok()?;
        let mixing = mixing.ok()?;
        if mixing.mixing_water != plan.mixing_water {
            plan.unconfirmed.remove(&PlanField::MixingWater);
        }
        plan.mixing_water = mixing.mixing_water;
        plan.fat_supplement_per_100_ml = mixing.fat_supplement_per_100_ml;
        plan.powder_label = mixing.powder_label;
        plan.ten_spoons = mixing.ten_spoons;
        plan.solids = self.solids.get();
        plan.note = self.note.get();
        self.also.put(writing, &mut plan).ok()?;
        self.said.put(&mut plan);
        if let Some(order) = self.order.moved(|slot| plan.feed(slot).is_some()) {
            plan.unconfirmed.remove(&PlanField::DropOrder);
            plan.drop_order = order;
        }
        Some(plan)
    }

    fn reference(
        self,
        writing: Writing,
        hatched: Option<Day>,
    ) -> Result<Option<Reference>, AtFault> {
        let say = writing.language;
        // Who has not touched a weight has not rounded it either, as ounces would.
        let known = self.base.with_value(|plan| plan.reference);
        let known = known.map(|reference| reference.weight);
        let is_known = |text: &str| known.filter(|known| writing.mass_typed(*known) == text);
        let weight = self.weight.take(optional(self.weight, |text| {
            if let Some(known) = is_known(text) {
                return Ok(known);
            }
            reading::handover_weight(writing, text)
        }));
        let today = self
            .state
            .zone
            .with_untracked(|zone| zone.lived(clock::now()))
            .day;
        let day = reading::weighed_day(say, today, hatched, &self.weight_day.get());
        let day = self.weight_day.take(day.map_err(str::to_owned));
        let (Some(weight), Some(day)) = (weight, day) else {
            return Err(AtFault);
        };
        Ok(weight.map(|weight| Reference { weight, day }))
    }

    fn feed_list(self, writing: Writing) -> Option<Vec<PlannedFeed>> {
        let say = writing.language;
        self.feeds_fault.set(String::new());
        let rows = self.feeds.get_value();
        let mut feeds = Vec::new();
        let mut is_sound = true;
        for row in rows {
            row.time.fault.set(String::new());
            row.volume.fault.set(String::new());
            if row.time.is_empty() && row.volume.is_empty() {
                continue;
            }
            let time = row
                .time
                .take(WallTime::parse(&row.time.get()).ok_or(say.fault_no_time().to_owned()));
            let volume = row.volume.take(
                Millilitres::parse(&row.volume.get()).map_err(|error| writing.number_error(error)),
            );
            match (time, volume) {
                (Some(time), Some(volume)) => feeds.push(PlannedFeed {
                    slot: row.slot,
                    time,
                    volume,
                }),
                (None, _) | (_, None) => is_sound = false,
            }
        }
        if is_sound && feeds.is_empty() {
            self.feeds_fault.set(say.fault_no_feeds().to_owned());
        }
        (is_sound && !feeds.is_empty()).then_some(feeds)
    }

    fn contact_list(self) -> Option<Vec<Contact>> {
        let say = self.state.language();
        let mut contacts = Vec::new();
        let mut is_sound = true;
        for row in self.contacts.get_value() {
            row.number.fault.set(String::new());
            let (name, number) = (row.name.get(), row.number.get());
            if name.is_empty() && number.is_empty() {
                continue;
            }
            // Who is known by name only is kept until somebody finds the number.
            if number.is_empty() || is_phone_number(&number) {
                contacts.push(Contact {
                    role: row.role,
                    name,
                    number,
                });
            } else {
                let fault = say.plan_fault(PlanFault::ContactNumber);
                row.number.fault.set(fault.to_owned());
                is_sound = false;
            }
        }
        let shown = |contact: &Contact, place: usize| CONTACTS.contains(&(contact.role, place));
        self.base.with_value(|base| {
            for (place, contact) in base.contacts.iter().enumerate() {
                let before = base.contacts.iter().take(place);
                let place = before.filter(|other| other.role == contact.role).count();
                if !shown(contact, place) {
                    contacts.push(contact.clone());
                }
            }
        });
        is_sound.then_some(contacts)
    }

    /// The numbers typed so far beside their limits; follows every key.
    fn checks(self) -> Option<AnyView> {
        let species = self.species.get();
        let rows = self.feeds.get_value().into_iter();
        let feeds = rows.map(|row| (row.slot, row.time.text.get(), row.volume.text.get()));
        let typed = TypedNumbers {
            species: species.and_then(|index| Species::ALL.get(index).copied()),
            weight: self.weight.text.get(),
            feeds: feeds.collect(),
            mix: (self.mixing.water.text.get(), self.powder.text.get()),
            window: (self.serve_from.text.get(), self.serve_to.text.get()),
        };
        typed_checks(self.state.writing_now(), &typed)
    }

    /// The rest of the plan; a field that was changed counts as confirmed.
    fn more(self, writing: Writing, species: Species) -> Option<CarePlan> {
        let base = self.base.get_value();
        let is_new_species = base.species != species;
        let mut plan = if is_new_species {
            CarePlan {
                name: base.name.clone(),
                ..CarePlan::default_for(species)
            }
        } else {
            base.clone()
        };
        let number = |error: NumberError| writing.number_error(error);
        let celsius = |text: Text| text.take(writing.read_temperature(&text.get()).map_err(number));
        let days = |text: Text| {
            let parsed = text.get().parse::<u8>().ok().filter(|days| *days <= 60);
            text.take(parsed.ok_or(writing.language.fault_days().to_owned()))
        };
        let powder = self
            .powder
            .take(Percent::parse(&self.powder.get()).map_err(number));
        let loss = self
            .loss
            .take(Percent::parse(&self.loss.get()).map_err(number));
        let syringe = self
            .syringe
            .take(Millilitres::parse(&self.syringe.get()).map_err(number));
        let (from, to) = (celsius(self.serve_from), celsius(self.serve_to));
        let (room_from, room_to) = (celsius(self.room_from), celsius(self.room_to));
        let (settle_in, pause) = (days(self.settle), days(self.waiting));
        let mut set = |field: PlanField, is_changed: bool| {
            if is_changed {
                plan.unconfirmed.remove(&field);
            }
        };
        let (powder, loss, syringe) = (powder?, loss?, syringe?);
        if loss != base.loss_limit && !CarePlan::LOSS_LIMITS.contains(&loss.tenths()) {
            let fault = writing.language.plan_fault(PlanFault::LossLimit);
            self.loss.fault.set(fault.to_owned());
            return None;
        }
        let (from, to, settle_in, pause) = (from?, to?, settle_in?, pause?);
        let (room_from, room_to) = (room_from?, room_to?);
        set(PlanField::PowderShare, powder != base.powder_fraction);
        set(PlanField::LossLimit, loss != base.loss_limit);
        let tool = self.tool.get_untracked();
        set(PlanField::Tool, tool != base.tool);
        set(
            PlanField::ServingWindow,
            (from, to) != (base.serve_from, base.serve_to),
        );
        set(
            PlanField::Room,
            (room_from, room_to) != (base.room_from, base.room_to),
        );
        set(PlanField::SettleIn, settle_in != base.settle_in_days);
        set(PlanField::WaitingDays, pause != base.waiting_days);
        plan.powder_fraction = powder;
        plan.loss_limit = loss;
        (plan.tool, plan.syringe) = (tool, syringe);
        (plan.serve_from, plan.serve_to) = (from, to);
        (plan.room_from, plan.room_to) = (room_from, room_to);
        (plan.settle_in_days, plan.waiting_days) = (settle_in, pause);
        let faults = plan.faults();
        let at_fields = [
            (PlanFault::RoomUpsideDown, self.room_to),
            (PlanFault::WindowUpsideDown, self.serve_to),
            (PlanFault::WindowOutside, self.serve_to),
        ];
        for (fault, field) in at_fields {
            if faults.contains(&fault) {
                let sentence = writing.language.plan_fault(fault);
                field.fault.set(sentence.to_owned());
                return None;
            }
        }
        Some(plan)
    }

    fn keep(self, is_new: bool) {
        let say = self.state.language();
        let Some(plan) = self.plan() else {
            return self.fault.set(say.fault_look_above().to_owned());
        };
        let (state, name, template) = (self.state, plan.name.clone(), plan.as_template());
        let kept = if is_new {
            let chick = ChickId(platform::random_id());
            let kept = state.add_chick(chick, plan, self.is_breeder.get_untracked());
            kept.map(|_| (chick, Vec::new(), ""))
        } else {
            let Some(chick) = state.chick.get_untracked() else {
                return;
            };
            let Some(kept) = self.asking.keep(state, chick, &plan) else {
                return;
            };
            kept.map(|(ids, said)| (chick, ids, said))
        };
        match kept {
            Ok((chick, ids, told)) => {
                state.show_chick(chick);
                let is_breeder = state.copies.is_breeder() && state.copies.is_bred_here(chick);
                if is_new && is_breeder {
                    state.copies.remember_template(&template);
                } else if is_new {
                    state.ask_home(chick);
                }
                let is_proposed = !ids.is_empty() && !state.author(chick).is_carer;
                let said = if is_proposed {
                    say.plan_is_proposed().to_owned()
                } else if !told.is_empty() {
                    told.to_owned()
                } else {
                    name
                };
                state.say(said, ids);
                state.go(match (is_new, is_breeder) {
                    (true, false) => Route::Now,
                    (false, false) => Route::Settings,
                    (_, true) => Route::Chick,
                });
            }
            Err(refusal) => self.fault.set(say.refusal(&refusal).to_owned()),
        }
    }
}

/// A new chick, typed in.
#[component]
pub fn TypeInScreen() -> impl IntoView {
    let state = AppState::here();
    let template = state.take_template();
    let is_blank = template.is_none();
    let mut plan = template.unwrap_or_else(|| CarePlan::default_for(Species::GreenWingedMacaw));
    if let Some(own) = state.copies.own_words() {
        plan = plan.with_own_words(&own);
    }
    view! { <PlanForm plan is_new=true is_blank /> }
}

/// The plan of the chick on screen.
#[component]
pub fn PlanScreen() -> impl IntoView {
    let state = AppState::here();
    let plan = state.outlook.get_untracked().and_then(|outlook| {
        let chick = &outlook.chick;
        chick.plans.as_left_by(state.author(chick.id))
    });
    plan.map(|plan| view! { <PlanForm plan is_new=false is_blank=false /> })
}

#[component]
fn PlanForm(plan: CarePlan, is_new: bool, is_blank: bool) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let form = Form::new(state, &plan, is_blank);
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        form.keep(is_new);
    };
    let back = if is_new {
        Route::Start
    } else {
        Route::Settings
    };
    let button = if is_new {
        say.plan_keep()
    } else {
        say.plan_save()
    };
    let stand = (!is_new).then(|| stand_of(state));
    view! {
        <Page
            title=say.plan_title()
            back
            dock=move || view! { <button type="submit" form="plan" class="button button--main">{button}</button> }.into_any()
        >
            {stand}
            <form class="form" id="plan" on:submit=keep novalidate>
                <SpeciesField chosen=form.species fault=form.species_fault />
                <TextField id="name" label=say.plan_name() text=form.name kind=FieldKind::Text />
                <TextField id="hatched" label=say.plan_hatched() text=form.hatched kind=FieldKind::Day hint=say.optional() />
                <TextField
                    id="handover-weight"
                    label=say.plan_weight()
                    text=form.weight
                    kind=FieldKind::Number
                    unit=writing.mass_unit()
                    hint=say.optional()
                />
                <TextField id="handover-day" label=say.plan_weight_day() text=form.weight_day kind=FieldKind::Day />
                <FeedRows form is_new />
                {move || form.checks()}
                <ContactRows form />
                <JourneyRows journey=form.journey />
                <MoreOfThePlan form />
                {is_new.then(|| view! {
                    <label class="choice__option">
                        <input
                            type="checkbox"
                            id="is-breeder"
                            prop:checked=move || form.is_breeder.get()
                            on:change=move |event| form.is_breeder.set(event_target_checked(&event))
                        />
                        <span>{say.plan_is_breeder()}</span>
                    </label>
                })}
                <AskingRows asking=form.asking />
                <p class="fault" role="alert">{move || form.fault.get()}</p>
            </form>
        </Page>
    }
}

/// The plan's short name, then what of it is not agreed or asked for.
fn stand_of(state: AppState) -> Option<impl IntoView> {
    let writing = state.writing_now();
    let outlook = state.outlook.get_untracked()?;
    let lines = writing.plan_open(&outlook.chick).into_iter();
    let lines = lines.map(|line| view! { <li>{line}</li> });
    Some(view! {
        <p class="hint" data-plan="version">{writing.plan_version(outlook.chick.plans.version())}</p>
        <ul class="plain-list">{lines.collect_view()}</ul>
    })
}

/// Ids of the fields of the six feeds.
const FEED_IDS: [(&str, &str); 6] = [
    ("time-1", "volume-1"),
    ("time-2", "volume-2"),
    ("time-3", "volume-3"),
    ("time-4", "volume-4"),
    ("time-5", "volume-5"),
    ("time-6", "volume-6"),
];

#[component]
fn FeedRows(form: Form, is_new: bool) -> impl IntoView {
    let writing = form.state.writing_now();
    let say = writing.language;
    let outlook = form.state.outlook.get_untracked().filter(|_| !is_new);
    let drops = outlook.map_or_else(Vec::new, |outlook| outlook.chick.drops(outlook.now));
    let rows = form.feeds.get_value().into_iter().zip(FEED_IDS).map(|(row, (time_id, volume_id))| {
        let name = say.feed(row.slot);
        let dropped = drops.iter().find(|(slot, _)| *slot == row.slot);
        let dropped = dropped.map(|(_, on)| {
            view! { <span class="hint" data-dropped="true">" · " {writing.stays_dropped(*on)}</span> }
        });
        view! {
            <fieldset class="feed-row">
                <legend>{name} {dropped}</legend>
                <TextField id=time_id label=say.plan_time() text=row.time kind=FieldKind::Time />
                <TextField id=volume_id label=say.plan_volume() text=row.volume kind=FieldKind::Number unit="ml" />
            </fieldset>
        }
    });
    view! {
        <fieldset class="group">
            <legend>{say.plan_feeds()}</legend>
            <p class="hint">{say.plan_feeds_hint()}</p>
            {rows.collect_view()}
            <p class="fault" role="alert">{move || form.feeds_fault.get()}</p>
        </fieldset>
    }
}

/// The contacts that have fields, each by its role and its place among those of that role: the second
/// breeder is who is rung when the first does not answer.
const CONTACTS: [(Role, usize); 4] = [
    (Role::Breeder, 0),
    (Role::Breeder, 1),
    (Role::AvianVet, 0),
    (Role::EmergencyVet, 0),
];

/// Ids of the fields of the contacts.
const CONTACT_IDS: [(&str, &str); 4] = [
    ("breeder-name", "breeder-number"),
    ("second-name", "second-number"),
    ("vet-name", "vet-number"),
    ("night-vet-name", "night-vet-number"),
];

#[component]
fn ContactRows(form: Form) -> impl IntoView {
    let say = form.state.language();
    let rows = form
        .contacts
        .get_value()
        .into_iter()
        .zip(CONTACTS)
        .zip(CONTACT_IDS);
    let rows = rows.map(|((row, (role, place)), (name_id, number_id))| {
        let legend = if place == 0 { say.role(role) } else { say.plan_second_contact() };
        view! {
            <fieldset class="contact-row">
                <legend>{legend}</legend>
                <TextField id=name_id label=say.plan_contact_name() text=row.name kind=FieldKind::Text />
                <TextField id=number_id label=say.plan_contact_number() text=row.number kind=FieldKind::Telephone />
            </fieldset>
        }
    });
    view! {
        <fieldset class="group">
            <legend>{say.plan_breeder()}</legend>
            {rows.collect_view()}
        </fieldset>
    }
}

#[component]
fn MoreOfThePlan(form: Form) -> impl IntoView {
    let writing = form.state.writing_now();
    let say = writing.language;
    let unconfirmed = form.base.with_value(|base| base.unconfirmed.clone());
    let hint = |field: PlanField| {
        if unconfirmed.contains(&field) {
            say.plan_default()
        } else {
            ""
        }
    };
    let degree = writing.temperature_unit();
    let times = form
        .feeds
        .with_value(|feeds| feeds.iter().map(|feed| (feed.slot, feed.time)).collect());
    let mut all = vec![
        form.powder,
        form.loss,
        form.syringe,
        form.serve_from,
        form.serve_to,
    ];
    all.extend([form.settle, form.waiting, form.room_from, form.room_to]);
    all.extend(form.mixing.all());
    all.extend(form.also.all());
    let is_at_fault = is_any_at_fault(all);
    let species = Signal::derive(move || {
        let chosen = form.species.get()?;
        Species::ALL.get(chosen).copied()
    });
    let tools = Tool::ALL.into_iter().enumerate().map(|(index, tool)| {
        view! {
            <option value=index.to_string() selected=move || form.tool.get() == tool>
                {say.tool(tool)}
            </option>
        }
    });
    let tools = tools.collect_view();
    let choose_tool = move |event| {
        let chosen = event_target_value(&event).parse().ok();
        if let Some(tool) = chosen.and_then(|index: usize| Tool::ALL.get(index)) {
            form.tool.set(*tool);
        }
    };
    let powder_answer = live(move || {
        let (look, doubt) = writing.powder_typed(&form.powder.text.get())?;
        let doubt = doubt.map(|doubt| view! { <p class="fault">{doubt}</p> });
        Some(view! { <p class="hint">{look}</p> {doubt} })
    });
    view! {
        <details class="group" prop:open=is_at_fault>
            <summary>{say.plan_more()}</summary>
            <TextField id="ring" label=say.plan_ring() text=form.ring kind=FieldKind::Text />
            <TextField id="powder" label=say.plan_powder() text=form.powder kind=FieldKind::Number unit="%" hint=hint(PlanField::PowderShare) />
            <div id="powder-answer" aria-live="polite">{powder_answer}</div>
            <TextField id="loss" label=say.plan_loss() text=form.loss kind=FieldKind::Number unit="%" hint=hint(PlanField::LossLimit) />
            <div class="field">
                <label for="tool">{say.plan_part_tool()}</label>
                <select id="tool" on:change=choose_tool>{tools}</select>
                <p class="hint">{hint(PlanField::Tool)}</p>
            </div>
            <TextField id="syringe" label=say.plan_syringe() text=form.syringe kind=FieldKind::Number unit="ml" />
            <TextField id="serve-from" label=say.plan_serve_from() text=form.serve_from kind=FieldKind::Number unit=degree hint=hint(PlanField::ServingWindow) />
            <TextField id="serve-to" label=say.plan_serve_to() text=form.serve_to kind=FieldKind::Number unit=degree />
            <TextField id="room-from" label=say.plan_room_from() text=form.room_from kind=FieldKind::Number unit=degree hint=hint(PlanField::Room) />
            <TextField id="room-to" label=say.plan_room_to() text=form.room_to kind=FieldKind::Number unit=degree />
            <MixingRows mixing=form.mixing powder=form.powder species water_mark=hint(PlanField::MixingWater) />
            <DropOrderRows order=form.order times mark=hint(PlanField::DropOrder) />
            <TextField id="settle" label=say.plan_settle() text=form.settle kind=FieldKind::Number hint=hint(PlanField::SettleIn) />
            <TextField id="waiting" label=say.plan_waiting() text=form.waiting kind=FieldKind::Number hint=hint(PlanField::WaitingDays) />
            <TextField id="solids" label=say.plan_solids() text=form.solids kind=FieldKind::Text />
            <TextField id="note" label=say.plan_note() text=form.note kind=FieldKind::Text />
            <AlsoRows also=form.also />
            <SaidRows said=form.said />
        </details>
    }
}

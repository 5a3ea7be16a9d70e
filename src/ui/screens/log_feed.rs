//! Log a feed in one tap: the volume is the plan's, the time is now, and which feed it was is known by it.

use leptos::prelude::*;

use crate::domain::feeding::food::{counts_for, said};
use crate::domain::feeding::scheduled::ScheduledFeed;
use crate::domain::instruction::holds::{Hold, Why};
use crate::domain::journal::entries::{Change, Refusal, Response, WhyPassedOver};
use crate::domain::plan::care_plan::Slot;
use crate::domain::quantity::units::{Celsius, Millilitres};
use crate::domain::time::moment::Moment;
use crate::ui::clock;
use crate::ui::parts::button::button;
use crate::ui::parts::call_card::call_buttons;
use crate::ui::parts::choice::Choice;
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::parts::instruction_card::hold_list;
use crate::ui::parts::live::{live, on_change};
use crate::ui::parts::page::Page;
use crate::ui::parts::when::{When, WhenText};
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::state::AppState;
use crate::words::format::Writing;

const RESPONSES: [Response; 2] = [Response::Eager, Response::Slow];
const REASONS: [WhyPassedOver; 4] = [
    WhyPassedOver::CropNotEmpty,
    WhyPassedOver::NotFit,
    WhyPassedOver::Advised,
    WhyPassedOver::NotPossible,
];

/// What became of the feed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Act {
    Given,
    Refused,
    PassedOver(WhyPassedOver),
}

/// Everything typed on this screen.
#[derive(Debug, Clone, Copy)]
struct Form {
    state: AppState,
    slots: StoredValue<Vec<Slot>>,
    /// The feed that the person says it is; nothing while its time tells.
    chosen: RwSignal<Option<usize>>,
    /// The planned feed that it counts for.
    counted: Memo<Option<ScheduledFeed>>,
    taken: RwSignal<String>,
    /// The volume of the plan that the field was filled with.
    filled: StoredValue<String>,
    taken_fault: RwSignal<String>,
    served_at: RwSignal<String>,
    served_fault: RwSignal<String>,
    response: RwSignal<Option<usize>>,
    when: WhenText,
    fault: RwSignal<String>,
    /// Whether it was asked if food was given although something forbids it.
    is_warned: RwSignal<bool>,
}

impl Form {
    fn new(state: AppState, wanted: Option<Slot>) -> Self {
        let outlook = state.outlook.get_untracked();
        let slots: Vec<Slot> = outlook
            .as_ref()
            .map(|outlook| {
                outlook
                    .chick
                    .plan
                    .feeds
                    .iter()
                    .map(|feed| feed.slot)
                    .collect()
            })
            .unwrap_or_default();
        let otherwise = wanted.zip(outlook).and_then(|(wanted, outlook)| {
            said(clock::now(), wanted, &outlook.chick, &outlook.zone)
        });
        let chosen = otherwise.and_then(|slot| slots.iter().position(|known| *known == slot));
        let (slots, chosen) = (StoredValue::new(slots), RwSignal::new(chosen));
        let when = WhenText::now(state);
        let counted = Memo::new(move |_| {
            let (at, outlook) = (when.followed(state)?, state.outlook.get()?);
            let said = slots.with_value(|slots| slots.get(chosen.get()?).copied());
            counts_for(at, said, &outlook.chick, &outlook.zone)
        });
        let form = Self {
            state,
            slots,
            chosen,
            counted,
            taken: RwSignal::new(String::new()),
            filled: StoredValue::new(String::new()),
            taken_fault: RwSignal::new(String::new()),
            served_at: RwSignal::new(String::new()),
            served_fault: RwSignal::new(String::new()),
            response: RwSignal::new(None),
            when,
            fault: RwSignal::new(String::new()),
            is_warned: RwSignal::new(false),
        };
        form.fill();
        on_change(move || form.slot(), move |_| form.fill());
        form
    }

    /// Puts the volume of this feed's plan into the field, unless something else was typed there.
    fn fill(self) {
        if self.taken.get_untracked() == self.filled.get_value() {
            let writing = self.state.writing_now();
            let text = self.planned().map(|volume| writing.tenths(volume.tenths()));
            let text = text.unwrap_or_default();
            self.filled.set_value(text.clone());
            self.taken.set(text);
        }
    }

    /// The feed that the person says it is.
    fn said(self) -> Option<Slot> {
        let chosen = self.chosen.get()?;
        self.slots.with_value(|slots| slots.get(chosen).copied())
    }

    /// The planned feed that it counts for, by its time or as said.
    fn slot(self) -> Option<Slot> {
        let counted = self
            .counted
            .with(|feed| feed.as_ref().map(|feed| feed.slot));
        self.said().or(counted)
    }

    fn planned(self) -> Option<Millilitres> {
        let slot = untrack(|| self.slot())?;
        let outlook = self.state.outlook.get_untracked()?;
        let plan = outlook.plan_of_feed(slot);
        plan.feed(slot).map(|feed| feed.volume)
    }

    /// Notes what became of the feed and goes back, or says at its field what is wrong.
    fn act(self, act: Act) {
        self.fault.set(String::new());
        let Some(at) = self.when.moment(self.state) else {
            return;
        };
        if act == Act::Given && self.is_held() && !self.is_warned.get_untracked() {
            return self.is_warned.set(true);
        }
        let Some((change, told)) = untrack(|| self.change(act, at)) else {
            return;
        };
        let say = self.state.language();
        match self.state.dispatch_at(at, change) {
            Ok(id) => {
                self.state.say(told, vec![id]);
                self.state.go(Route::Now);
            }
            Err(refusal @ (Refusal::InTheFuture | Refusal::BeforeHatching)) => {
                self.when.say_fault(say.refusal(&refusal));
            }
            Err(refusal) => self.fault.set(say.refusal(&refusal).to_owned()),
        }
    }

    /// What is to be noted, and how it is said; `None` when a field holds what cannot be, and says so.
    fn change(self, act: Act, at: Moment) -> Option<(Change, String)> {
        let say = self.state.language();
        match act {
            Act::Given => self.given(),
            Act::Refused => {
                let offered = self.planned().unwrap_or(Millilitres::whole(0));
                let counts_as = self.said();
                let told = say.feed_refused(self.slot());
                Some((Change::FeedRefused { counts_as, offered }, told))
            }
            Act::PassedOver(why) => {
                let outlook = self.state.outlook.get_untracked()?;
                let (chick, zone) = (&outlook.chick, &outlook.zone);
                let next = outlook.next_feed.clone();
                let feed = counts_for(at, self.said(), chick, zone).or(next)?;
                let (slot, day) = (feed.slot, feed.day);
                let told = say.feed_left_out(slot, why);
                Some((Change::FeedPassedOver { slot, day, why }, told))
            }
        }
    }

    fn given(self) -> Option<(Change, String)> {
        let writing = self.state.writing_now();
        self.taken_fault.set(String::new());
        self.served_fault.set(String::new());
        let planned = self.planned();
        let taken = match Millilitres::parse(&self.taken.get_untracked()) {
            Ok(taken) => taken,
            Err(error) => {
                self.taken_fault.set(writing.number_error(error));
                return None;
            }
        };
        let served_at = match served_at(&self.served_at.get_untracked(), writing) {
            Ok(served_at) => served_at,
            Err(fault) => {
                self.served_fault.set(fault);
                return None;
            }
        };
        let offered = planned.unwrap_or(taken).max(taken);
        let chosen = self
            .response
            .get_untracked()
            .and_then(|index| RESPONSES.get(index).copied());
        let change = Change::Fed {
            counts_as: self.said(),
            taken,
            offered,
            served_at,
            response: chosen.unwrap_or(Response::NotNoted),
        };
        Some((change, writing.feed_noted(self.slot(), taken)))
    }

    /// Whether something keeps food back now, other than the hour.
    fn is_held(self) -> bool {
        let outlook = self.state.outlook.get_untracked();
        outlook.is_some_and(|outlook| {
            let is_of_chick = |hold: &Hold| hold.is_against_food() && hold.why != Why::FedLately;
            outlook.holds.iter().any(is_of_chick)
        })
    }

    /// Whether the question of [`WasItGiven`] stands open.
    fn is_asking(self) -> bool {
        self.is_warned.get()
    }
}

fn served_at(text: &str, writing: Writing) -> Result<Option<Celsius>, String> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    writing
        .read_temperature(text)
        .map(Some)
        .map_err(|error| writing.number_error(error))
}

/// Log a feed.
#[component]
pub fn LogFeedScreen(
    /// The feed that was asked for.
    wanted: Option<Slot>,
) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let form = Form::new(state, wanted);
    let done = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        form.act(Act::Given);
    };
    let act = move |act| {
        move |event: web_sys::MouseEvent| {
            form.act(act);
            platform::show_answer(&event);
        }
    };
    let reasons = REASONS.map(|why| button(say.why_passed_over(why), act(Act::PassedOver(why))));
    let pressed = move || {
        let acts = move || {
            (!form.is_asking()).then(|| {
                view! {
                    <button type="button" form="log-feed" class="button" on:click=act(Act::Refused)>
                        {say.log_refused()}
                    </button>
                    <button type="submit" form="log-feed" class="button button--main">{say.log_done()}</button>
                }
            })
        };
        acts.into_any()
    };
    view! {
        <Page title=say.log_title() back=Route::Now dock=pressed>
            <form class="form" id="log-feed" on:submit=done>
                <Field
                    id="taken"
                    label=say.log_taken()
                    kind=FieldKind::Number
                    text=form.taken
                    unit="ml"
                    fault=form.taken_fault
                />
                <When when=form.when />
                <CountsAs form />
                <details class="when" prop:open=move || !form.served_fault.get().is_empty()>
                    <summary>{say.log_more()}</summary>
                    <Field
                        id="served-at"
                        label=say.log_served_at()
                        kind=FieldKind::Number
                        text=form.served_at
                        unit=writing.temperature_unit()
                        hint=say.optional()
                        fault=form.served_fault
                    />
                    <Choice
                        legend=say.log_response()
                        name="response"
                        options=RESPONSES.map(|response| say.response(response)).to_vec()
                        chosen=form.response
                    />
                </details>
                <p class="fault" role="alert">{move || form.fault.get()}</p>
                <WasItGiven form />
                <details class="when">
                    <summary>{say.log_passed_over()}</summary>
                    <p>{say.log_why()}</p>
                    <div class="acts">{reasons.collect_view()}</div>
                </details>
            </form>
        </Page>
    }
}

/// What keeps food back now, in words; and once food is to be noted, the question whether it was given.
#[component]
fn WasItGiven(form: Form) -> impl IntoView {
    let say = form.state.language();
    let given = move |_| form.act(Act::Given);
    let not = move |_| form.state.go(Route::Now);
    move || {
        let outlook = form.state.outlook.get()?;
        form.is_held().then(|| {
            let title = form.state.writing_now().instruction_title(&outlook);
            let acts = form.is_asking().then(|| {
                view! {
                    <div class="acts">
                        {button(say.log_held_given(), given)}
                        {button(say.log_held_not(), not)}
                    </div>
                }
            });
            view! {
                <div class="question" role="alert" data-held="true">
                    <p><strong>{title}</strong></p>
                    {outlook.level.is_call().then(|| call_buttons(outlook.level, Some(&outlook.chick.plan)))}
                    {hold_list(&outlook.holds)}
                    <p>{say.log_held()}</p>
                    {acts}
                </div>
            }
        })
    }
}

/// Which planned feed it counts for, and the way to say otherwise.
#[component]
fn CountsAs(form: Form) -> impl IntoView {
    let state = form.state;
    let writing = state.writing_now();
    let say = writing.language;
    let names = form
        .slots
        .with_value(|slots| slots.iter().map(|slot| say.feed(*slot)).collect::<Vec<_>>());
    let counts_as = live(move || {
        let planned = form
            .counted
            .with(|feed| feed.as_ref().map(|feed| (feed.slot, feed.planned)));
        let lived = |moment| state.zone.with_untracked(|zone| zone.lived(moment)).time;
        match planned {
            Some((slot, planned)) => writing.counts_as(Some((slot, lived(planned)))),
            None => form
                .said()
                .map_or(say.counts_as_extra().to_owned(), |slot| {
                    say.feed(slot).to_owned()
                }),
        }
    });
    let done_already = live(move || {
        let sitting = form
            .counted
            .with(|feed| feed.as_ref()?.sitting().cloned())?;
        sitting
            .food_at
            .map(|_| view! { <p class="hint">{say.log_noted_already()}</p> })
    });
    view! {
        <details class="when" data-counts="true">
            <summary>{counts_as}</summary>
            <Choice legend=say.log_which() name="slot" options=names chosen=form.chosen />
        </details>
        {done_already}
    }
}

//! Log a feed in one tap: the volume is the plan's, the time is now.

use leptos::prelude::*;

use crate::domain::feeding::feed_meant::{WhichFeed, feed_meant, is_noted, which_feed};
use crate::domain::instruction::holds::{Hold, Why};
use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::{Change, Refusal, Response, WhyPassedOver};
use crate::domain::plan::care_plan::Slot;
use crate::domain::quantity::units::{Celsius, Millilitres};
use crate::domain::time::moment::Moment;
use crate::domain::time::zone::Zone;
use crate::ui::clock;
use crate::ui::parts::choice::Choice;
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::parts::instruction_card::hold_list;
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

/// The question back when the hour speaks for another feed than the one named.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Question {
    act: Act,
    at: Moment,
    which: WhichFeed,
}

/// Everything typed on this screen.
#[derive(Debug, Clone, Copy)]
struct Form {
    state: AppState,
    slots: StoredValue<Vec<Slot>>,
    slot: RwSignal<Option<usize>>,
    taken: RwSignal<String>,
    /// The volume of the plan that the field was filled with.
    filled: StoredValue<String>,
    taken_fault: RwSignal<String>,
    served_at: RwSignal<String>,
    served_fault: RwSignal<String>,
    response: RwSignal<Option<usize>>,
    when: WhenText,
    fault: RwSignal<String>,
    question: RwSignal<Option<Question>>,
    /// Whether it was asked if food was given although something forbids it.
    is_warned: RwSignal<bool>,
}

impl Form {
    fn new(state: AppState, wanted: Option<Slot>) -> Self {
        let outlook = state.outlook.get_untracked();
        let meant = outlook.as_ref().and_then(|outlook| {
            let chick = &outlook.chick;
            let meant = |zone: &Zone| feed_meant(clock::now(), chick, zone);
            state.zone.with_untracked(meant)
        });
        let slots: Vec<Slot> = outlook
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
        let slot = wanted
            .or(meant.map(|meant| meant.feed.slot))
            .and_then(|slot| slots.iter().position(|known| *known == slot))
            .or(Some(0));
        let form = Self {
            state,
            slots: StoredValue::new(slots),
            slot: RwSignal::new(slot),
            taken: RwSignal::new(String::new()),
            filled: StoredValue::new(String::new()),
            taken_fault: RwSignal::new(String::new()),
            served_at: RwSignal::new(String::new()),
            served_fault: RwSignal::new(String::new()),
            response: RwSignal::new(None),
            when: WhenText::now(state),
            fault: RwSignal::new(String::new()),
            question: RwSignal::new(None),
            is_warned: RwSignal::new(false),
        };
        form.fill();
        // Whatever is changed meanwhile is another question, or none.
        let answered = move || {
            form.slot.track();
            form.taken.track();
            form.served_at.track();
            form.when.followed(state);
        };
        let ask_anew = move |(): &(), _: Option<&()>, _| form.question.set(None);
        Effect::watch(answered, ask_anew, false);
        Effect::watch(move || form.slot.get(), move |_, _, _| form.fill(), false);
        form
    }

    /// Puts the volume of the chosen feed's plan into the field, unless something else was typed there.
    fn fill(self) {
        if self.taken.get_untracked() == self.filled.get_value() {
            let writing = self.state.writing_now();
            let planned = self.chosen_slot().and_then(|slot| self.planned_of(slot));
            let text = planned.map(|volume| writing.tenths(volume.tenths()));
            let text = text.unwrap_or_default();
            self.filled.set_value(text.clone());
            self.taken.set(text);
        }
    }

    fn chosen_slot(self) -> Option<Slot> {
        self.slots
            .with_value(|slots| slots.get(self.slot.get_untracked()?).copied())
    }

    fn planned_of(self, slot: Slot) -> Option<Millilitres> {
        let outlook = self.state.outlook.get_untracked()?;
        outlook
            .plan_of_feed(slot)
            .feed(slot)
            .map(|feed| feed.volume)
    }

    /// Notes what became of the feed, asks back which feed it was, or says at its field what is wrong.
    fn act(self, act: Act) {
        let Some((named, at)) = self.chosen_slot().zip(self.when.moment(self.state)) else {
            return;
        };
        if self.change(act, named).is_none() {
            return;
        }
        if act == Act::Given && self.is_held() && !self.is_warned.get_untracked() {
            return self.is_warned.set(true);
        }
        let which = self
            .about_chick(|chick, zone| which_feed(at, named, chick, zone))
            .flatten();
        match which {
            Some(which) => self.question.set(Some(Question { act, at, which })),
            None => self.note(act, named, at),
        }
    }

    /// Whether something keeps food back now, other than the hour.
    fn is_held(self) -> bool {
        let outlook = self.state.outlook.get_untracked();
        outlook.is_some_and(|outlook| {
            let is_of_chick = |hold: &Hold| hold.is_against_food() && hold.why != Why::FedLately;
            outlook.holds.iter().any(is_of_chick)
        })
    }

    /// Notes it under the name of this feed and goes back, or says at its field what is wrong.
    fn note(self, act: Act, slot: Slot, at: Moment) {
        self.question.set(None);
        self.fault.set(String::new());
        let Some((change, said)) = self.change(act, slot) else {
            return;
        };
        let say = self.state.language();
        match self.state.dispatch_at(at, change) {
            Ok(id) => {
                self.state.say(said, vec![id]);
                self.state.go(Route::Now);
            }
            Err(refusal @ (Refusal::InTheFuture | Refusal::BeforeHatching)) => {
                self.when.say_fault(say.refusal(&refusal));
            }
            Err(refusal) => self.fault.set(say.refusal(&refusal).to_owned()),
        }
    }

    /// What is to be noted, and how it is said; `None` when a field holds what cannot be, and says so.
    fn change(self, act: Act, slot: Slot) -> Option<(Change, String)> {
        let say = self.state.language();
        match act {
            Act::Given => self.given(slot),
            Act::Refused => Some((Change::FeedRefused { slot }, say.feed_refused(slot))),
            Act::PassedOver(why) => {
                let said = say.feed_left_out(slot, why);
                Some((Change::FeedPassedOver { slot, why }, said))
            }
        }
    }

    fn given(self, slot: Slot) -> Option<(Change, String)> {
        let writing = self.state.writing_now();
        self.taken_fault.set(String::new());
        self.served_fault.set(String::new());
        let planned = self.planned_of(slot);
        let typed = self.taken.get_untracked();
        // A volume that nobody touched is that of the feed's plan, whichever feed it turns out to be.
        let untouched = planned.filter(|_| typed == self.filled.get_value());
        let taken = match untouched.map_or_else(|| Millilitres::parse(&typed), Ok) {
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
            slot,
            taken,
            offered,
            served_at,
            response: chosen.unwrap_or(Response::NotNoted),
        };
        Some((change, writing.feed_noted(slot, taken)))
    }

    /// Whether the question of [`WasItGiven`] stands open.
    fn is_asking(self) -> bool {
        self.is_warned.get() && self.question.with(Option::is_none)
    }

    /// What a button does: [`Form::act`], and the answer comes into view.
    fn on_tap(self, act: Act) -> impl Fn(web_sys::MouseEvent) + 'static {
        move |event| {
            self.act(act);
            platform::show_answer(&event);
        }
    }

    /// Asks the domain about the chick on screen.
    fn about_chick<T>(self, ask: impl FnOnce(&Chick, &Zone) -> T) -> Option<T> {
        let outlook = self.state.outlook.get_untracked()?;
        let zone = self.state.zone;
        Some(zone.with_untracked(|zone| ask(&outlook.chick, zone)))
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
    let names = form
        .slots
        .with_value(|slots| slots.iter().map(|slot| say.feed(*slot)).collect::<Vec<_>>());
    let done = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        form.act(Act::Given);
    };
    let done_already = move || {
        form.slot.track();
        state.outlook.track();
        let (slot, at) = form.chosen_slot().zip(form.when.followed(state))?;
        form.about_chick(|chick, zone| is_noted(at, slot, chick, zone))?
            .then(|| view! { <p class="hint">{say.log_noted_already()}</p> })
    };
    view! {
        <Page title=say.log_title() back=Route::Now>
            <form class="form" on:submit=done>
                <Choice legend=say.log_which() name="slot" options=names chosen=form.slot />
                {done_already}
                <Field
                    id="taken"
                    label=say.log_taken()
                    kind=FieldKind::Number
                    text=form.taken
                    unit="ml"
                    fault=form.taken_fault
                />
                <When when=form.when />
                <HowItWent form />
                <p class="fault" role="alert">{move || form.fault.get()}</p>
                <WhichFeedWasIt form />
                <WasItGiven form />
                <div class="form__acts" hidden=move || form.question.get().is_some() || form.is_asking()>
                    <button type="button" class="button" on:click=form.on_tap(Act::Refused)>{say.log_refused()}</button>
                    <button type="submit" class="button button--main">{say.log_done()}</button>
                </div>
                <WhyLeftOut form />
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
                        <button type="button" class="button" on:click=given>{say.log_held_given()}</button>
                        <button type="button" class="button" on:click=not>{say.log_held_not()}</button>
                    </div>
                }
            });
            view! {
                <div class="question" role="alert" data-held="true">
                    <p><strong>{title}</strong></p>
                    {hold_list(&outlook.holds)}
                    <p>{say.log_held()}</p>
                    {acts}
                </div>
            }
        })
    }
}

/// How warm it was served and how the chick took it, both optional.
#[component]
fn HowItWent(form: Form) -> impl IntoView {
    let writing = form.state.writing_now();
    let say = writing.language;
    view! {
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
    }
}

/// One button for each reason to leave the feed out.
#[component]
fn WhyLeftOut(form: Form) -> impl IntoView {
    let say = form.state.language();
    let reasons = REASONS.map(|why| {
        let noted = form.on_tap(Act::PassedOver(why));
        view! {
            <button type="button" class="button" on:click=noted>
                {say.why_passed_over(why)}
            </button>
        }
    });
    view! {
        <details class="when">
            <summary>{say.log_passed_over()}</summary>
            <p>{say.log_why()}</p>
            <div class="acts">{reasons.collect_view()}</div>
        </details>
    }
}

/// The question back: the feed that the hour speaks for, or the one named.
#[component]
fn WhichFeedWasIt(form: Form) -> impl IntoView {
    let writing = form.state.writing_now();
    let answer = move |question: &Question, slot: Slot| {
        let (act, at) = (question.act, question.at);
        let said = form.change(act, slot).map(|(_, said)| said);
        let note = move |_| form.note(act, slot, at);
        view! { <button type="button" class="button" on:click=note>{said}</button> }
    };
    move || {
        form.question.get().map(|question| {
            let zone = form.state.zone;
            let time = |moment| zone.with_untracked(|zone| zone.lived(moment)).time;
            let meant = &question.which.meant;
            let asked = writing.which_feed(time(question.at), meant, time(meant.feed.planned));
            view! {
                <div class="question" role="alert">
                    <p>{asked}</p>
                    <div class="acts">
                        {answer(&question, meant.feed.slot)}
                        {answer(&question, question.which.other)}
                    </div>
                </div>
            }
        })
    }
}

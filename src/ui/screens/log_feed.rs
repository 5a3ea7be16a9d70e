//! Log a feed in one tap: the volume is the plan's, the time is now.

use leptos::prelude::*;

use crate::domain::journal::{Change, Refusal, Response, WhyPassedOver};
use crate::domain::plan::Slot;
use crate::domain::schedule::FeedState;
use crate::domain::units::{Celsius, Millilitres};
use crate::ui::parts::choice::Choice;
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::parts::page::Page;
use crate::ui::parts::when::{When, WhenText};
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
}

impl Form {
    fn new(state: AppState, wanted: Option<Slot>) -> Self {
        let outlook = state.outlook.get_untracked();
        let next = outlook
            .as_ref()
            .and_then(|outlook| outlook.next_feed.as_ref().map(|feed| feed.slot));
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
            .or(next)
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
        };
        form.fill();
        Effect::watch(move || form.slot.get(), move |_, _, _| form.fill(), false);
        form
    }

    /// Puts the volume of the chosen feed's plan into the field, unless something else was typed there.
    fn fill(self) {
        if self.taken.get_untracked() == self.filled.get_value() {
            let writing = self.state.writing_now();
            let planned = self.planned();
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

    fn planned(self) -> Option<Millilitres> {
        let slot = self.chosen_slot()?;
        let outlook = self.state.outlook.get_untracked()?;
        outlook
            .plan_of_feed(slot)
            .feed(slot)
            .map(|feed| feed.volume)
    }

    /// Notes what became of the feed and goes back, or says at its field what is wrong.
    fn note(self, change: Change, said: String) {
        self.fault.set(String::new());
        let Some(at) = self.when.moment(self.state) else {
            return;
        };
        match self.state.dispatch_at(at, change) {
            Ok(id) => {
                self.state.say(said, vec![id]);
                self.state.go(Route::Now);
            }
            Err(refusal @ (Refusal::InTheFuture | Refusal::BeforeHatching)) => {
                self.when.say_fault(self.state.language().refusal(&refusal));
            }
            Err(refusal) => self
                .fault
                .set(self.state.language().refusal(&refusal).to_owned()),
        }
    }

    fn given(self) {
        let writing = self.state.writing_now();
        self.taken_fault.set(String::new());
        self.served_fault.set(String::new());
        let Some(slot) = self.chosen_slot() else {
            return;
        };
        let taken = match Millilitres::parse(&self.taken.get_untracked()) {
            Ok(taken) => taken,
            Err(error) => return self.taken_fault.set(writing.number_error(error)),
        };
        let served_at = match served_at(&self.served_at.get_untracked(), writing) {
            Ok(served_at) => served_at,
            Err(fault) => return self.served_fault.set(fault),
        };
        let offered = self.planned().unwrap_or(taken).max(taken);
        let chosen = self
            .response
            .get_untracked()
            .and_then(|index| RESPONSES.get(index).copied());
        let response = chosen.unwrap_or(Response::NotNoted);
        let change = Change::Fed {
            slot,
            taken,
            offered,
            served_at,
            response,
        };
        self.note(change, writing.feed_noted(slot, taken));
    }

    fn refused(self) {
        if let Some(slot) = self.chosen_slot() {
            let said = self.state.language().feed_refused(slot);
            self.note(Change::FeedRefused { slot }, said);
        }
    }

    fn passed_over(self, why: WhyPassedOver) {
        if let Some(slot) = self.chosen_slot() {
            let said = self.state.language().feed_left_out(slot, why);
            self.note(Change::FeedPassedOver { slot, why }, said);
        }
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
        form.given();
    };
    let reasons = REASONS.map(|why| {
        view! {
            <button type="button" class="button" on:click=move |_| form.passed_over(why)>
                {say.why_passed_over(why)}
            </button>
        }
    });
    let done_already = move || {
        let outlook = state.outlook.get()?;
        let slot = form
            .slots
            .with_value(|slots| slots.get(form.slot.get()?).copied())?;
        let today = outlook
            .feeds
            .iter()
            .find(|feed| feed.day == outlook.lived.day && feed.slot == slot)?;
        matches!(today.state, FeedState::Done(_))
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
                <details class="when">
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
                <div class="form__acts">
                    <button type="button" class="button" on:click=move |_| form.refused()>{say.log_refused()}</button>
                    <button type="submit" class="button button--main">{say.log_done()}</button>
                </div>
                <details class="when">
                    <summary>{say.log_passed_over()}</summary>
                    <p>{say.log_why()}</p>
                    <div class="acts">{reasons.collect_view()}</div>
                </details>
            </form>
        </Page>
    }
}

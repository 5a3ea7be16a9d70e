//! Enter a weight: the digits, the crop, one button; a question back when it does not fit.

use std::sync::Arc;

use leptos::prelude::*;

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::{Change, CropAtWeighing, Refusal};
use crate::domain::quantity::units::{Grams, NumberError};
use crate::domain::weight::doubt::{Doubt, doubt};
use crate::domain::weight::typed::with_thousands;
use crate::ui::parts::button::button;
use crate::ui::parts::choice::Choice;
use crate::ui::parts::live::live;
use crate::ui::parts::page::Page;
use crate::ui::parts::when::{When, WhenText};
use crate::ui::route::Route;
use crate::ui::screens::weigh_result::{Outcome, WeighResult};
use crate::ui::state::AppState;
use crate::ui::{clock, platform};
use crate::words::format::MassUnit;

const CROPS: [CropAtWeighing; 3] = [
    CropAtWeighing::Empty,
    CropAtWeighing::AfterFeed,
    CropAtWeighing::NotSure,
];

/// Everything typed on this screen.
#[derive(Debug, Clone, Copy)]
struct Form {
    state: AppState,
    text: RwSignal<String>,
    fault: RwSignal<String>,
    crop: RwSignal<Option<usize>>,
    crop_fault: RwSignal<String>,
    when: WhenText,
    question: RwSignal<Option<(Grams, Doubt)>>,
    outcome: RwSignal<Option<Outcome>>,
}

impl Form {
    /// Empty, with the crop that is to be expected: before the first feed of the day it is empty. It tells
    /// of this weight only.
    fn new(state: AppState, outcome: RwSignal<Option<Outcome>>) -> Self {
        let outlook = state.outlook.get_untracked();
        let is_early = outlook.is_some_and(|outlook| outlook.is_before_first_feed());
        Self {
            state,
            text: RwSignal::new(String::new()),
            fault: RwSignal::new(String::new()),
            crop: RwSignal::new(is_early.then_some(0)),
            crop_fault: RwSignal::new(String::new()),
            when: WhenText::now(state),
            question: RwSignal::new(None),
            outcome,
        }
    }

    fn press(self, key: char) {
        self.question.set(None);
        self.text.update(|text| {
            if key == ERASE {
                text.pop();
            } else if text.len() < 8 {
                text.push(key);
            }
        });
    }

    /// The weight typed; a sign between thousands is understood where the weight then fits.
    fn weight(self, text: &str) -> Result<Grams, NumberError> {
        let writing = self.state.writing_now();
        match writing.read_mass(text) {
            Err(NumberError::ThousandsOrDecimals) if writing.mass == MassUnit::Gram => self
                .chick()
                .and_then(|chick| with_thousands(clock::now(), &chick, text))
                .ok_or(NumberError::ThousandsOrDecimals),
            read => read,
        }
    }

    fn keep(self, is_confirmed: bool) {
        let writing = self.state.writing_now();
        self.fault.set(String::new());
        self.crop_fault.set(String::new());
        let weight = match self.weight(&self.text.get_untracked()) {
            Ok(weight) => weight,
            Err(error) => return self.fault.set(writing.number_error(error)),
        };
        let Some(crop) = self
            .crop
            .get_untracked()
            .and_then(|index| CROPS.get(index).copied())
        else {
            return self
                .crop_fault
                .set(writing.language.fault_choose().to_owned());
        };
        if !is_confirmed
            && let Some(doubt) = self
                .chick()
                .and_then(|chick| doubt(clock::now(), &chick, weight))
        {
            return self.question.set(Some((weight, doubt)));
        }
        let Some(at) = self.when.moment(self.state) else {
            return;
        };
        let before = self.state.outlook.get_untracked();
        match self.state.dispatch_at(at, Change::Weighed { weight, crop }) {
            Ok(id) => {
                self.state.notice.set(None);
                let after = self.state.outlook.get_untracked();
                let outcome = before
                    .zip(after)
                    .map(|(before, after)| Outcome::of(id, &before, &after));
                self.outcome.set(outcome.flatten());
                request_animation_frame(platform::focus_heading);
            }
            Err(refusal @ (Refusal::InTheFuture | Refusal::BeforeHatching)) => {
                self.when.say_fault(writing.language.refusal(&refusal));
            }
            Err(refusal) => {
                self.question.set(None);
                self.fault
                    .set(writing.language.refusal(&refusal).to_owned());
            }
        }
    }

    fn chick(self) -> Option<Arc<Chick>> {
        self.state
            .outlook
            .get_untracked()
            .map(|outlook| outlook.chick.clone())
    }
}

const ERASE: char = '\u{232b}';

/// Enter a weight, then read what it means.
#[component]
pub fn WeighScreen() -> impl IntoView {
    let state = AppState::here();
    let outcome = RwSignal::new(None::<Outcome>);
    move || match outcome.get() {
        Some(shown) => view! { <WeighResult shown outcome /> }.into_any(),
        None => view! { <Entry form=Form::new(state, outcome) /> }.into_any(),
    }
}

#[component]
fn Entry(form: Form) -> impl IntoView {
    let writing = form.state.writing_now();
    let say = writing.language;
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        form.keep(false);
    };
    let crops = vec![say.weigh_empty(), say.weigh_after(), say.weigh_not_sure()];
    view! {
        <Page
            title=say.weigh_title()
            back=Route::Now
            beside=move || view! { <When when=form.when is_chip=true /> }.into_any()
            dock=move || view! { <button type="submit" form="weigh" class="button button--main">{say.keep()}</button> }.into_any()
        >
            <form class="form weigh" id="weigh" on:submit=keep>
                <div class="weigh__entry">
                    <label class="only-read" for="weight">{say.weigh_field()}</label>
                    <input
                        id="weight"
                        class="weigh__field"
                        type="text"
                        inputmode="none"
                        autocomplete="off"
                        aria-describedby="weight-meaning weight-fault"
                        aria-invalid=move || (!form.fault.get().is_empty()).to_string()
                        prop:value=move || form.text.get()
                        on:input=move |event| {
                            form.question.set(None);
                            form.text.set(event_target_value(&event));
                        }
                    />
                    <span class="weigh__unit">{writing.mass_unit()}</span>
                </div>
                <Meaning form />
                <p class="fault" id="weight-fault" role="alert">{move || form.fault.get()}</p>
                <Pad form />
                <Choice legend=say.weigh_crop() name="crop" options=crops chosen=form.crop fault=form.crop_fault />
                <Question form />
            </form>
        </Page>
    }
}

/// What the typed number means against the handover weight; before anything is typed, the last weighing.
#[component]
fn Meaning(form: Form) -> impl IntoView {
    let writing = form.state.writing_now();
    let say = writing.language;
    let against = move |weight: Grams| {
        let outlook = form.state.outlook.get()?;
        let reference = outlook.chick.plan.reference?.weight;
        let loss = weight.since(reference).loss_pct_of(reference)?;
        (loss.abs() < 60.0).then(|| writing.against_handover(loss))
    };
    let last = move || {
        let outlook = form.state.outlook.get()?;
        let Some(weighing) = outlook.chick.weighings.last() else {
            return Some(say.weigh_hint().to_owned());
        };
        let weight = weighing.what.weight;
        Some(writing.last_weighing(weight, weighing.lived(), outlook.lived.day))
    };
    let meaning = live(move || {
        let text = form.text.get();
        if text.trim().is_empty() {
            return last();
        }
        let is_plain = writing.read_mass(&text).is_ok();
        match form.weight(&text) {
            Ok(weight) if is_plain => against(weight),
            Ok(weight) => Some(writing.understood(weight, against(weight))),
            Err(NumberError::ThousandsOrDecimals) => Some(writing.thousands_or_tenths()),
            Err(_) => None,
        }
    });
    view! { <output class="weigh__meaning" id="weight-meaning" for="weight">{meaning}</output> }
}

/// The question back when the number does not fit.
#[component]
fn Question(form: Form) -> impl IntoView {
    let writing = form.state.writing_now();
    let say = writing.language;
    move || {
        form.question.get().map(|(typed, doubt)| {
            let meant = doubt.meant.map(|meant| {
                let text = writing.mass_typed(meant);
                let take = move |_| {
                    form.text.set(text.clone());
                    form.question.set(None);
                };
                button(writing.weight_meant(meant), take)
            });
            view! {
                <div class="question" role="alert">
                    <p>{writing.weight_question(typed, doubt.last)}</p>
                    <div class="acts">
                        {meant}
                        {button(say.weigh_yes(), move |_| form.keep(true))}
                    </div>
                </div>
            }
        })
    }
}

/// The number pad.
#[component]
fn Pad(form: Form) -> impl IntoView {
    let say = form.state.language();
    let decimal = if form.state.writing_now().tenths(5).contains(',') {
        ','
    } else {
        '.'
    };
    let keys = ['1', '2', '3', '4', '5', '6', '7', '8', '9', decimal, '0', ERASE].map(|key| {
        let label = (key == ERASE).then(|| say.weigh_erase());
        let face = if key == ERASE {
            view! {
                <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
                    <path d="M9 5H21V19H9L3 12zM12 9.500L17 14.500M17 9.500L12 14.500"></path>
                </svg>
            }
            .into_any()
        } else {
            key.to_string().into_any()
        };
        view! {
            <button type="button" class="pad__key" aria-label=label on:click=move |_| form.press(key)>
                {face}
            </button>
        }
    });
    view! { <div class="pad">{keys.collect_view()}</div> }
}

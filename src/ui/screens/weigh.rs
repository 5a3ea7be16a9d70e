//! Enter a weight: large digits, the crop question, and a question back when it does not fit.

use leptos::prelude::*;

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::{Change, CropAtWeighing, Refusal};
use crate::domain::quantity::units::Grams;
use crate::domain::weight::doubt::{Doubt, doubt};
use crate::ui::clock;
use crate::ui::parts::choice::Choice;
use crate::ui::parts::page::Page;
use crate::ui::parts::when::{When, WhenText};
use crate::ui::route::Route;
use crate::ui::state::AppState;

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
}

impl Form {
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

    fn keep(self, is_confirmed: bool) {
        let writing = self.state.writing_now();
        self.fault.set(String::new());
        self.crop_fault.set(String::new());
        let weight = match writing.read_mass(&self.text.get_untracked()) {
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
        match self.state.dispatch_at(at, Change::Weighed { weight, crop }) {
            Ok(id) => {
                self.state.say(writing.mass(weight), vec![id]);
                self.state.go(Route::Weight);
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

    fn chick(self) -> Option<Chick> {
        self.state
            .outlook
            .get_untracked()
            .map(|outlook| outlook.chick.clone())
    }
}

const ERASE: char = '\u{232b}';

/// Enter a weight.
#[component]
pub fn WeighScreen() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let form = Form {
        state,
        text: RwSignal::new(String::new()),
        fault: RwSignal::new(String::new()),
        crop: RwSignal::new(None),
        crop_fault: RwSignal::new(String::new()),
        when: WhenText::now(state),
        question: RwSignal::new(None),
    };
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        form.keep(false);
    };
    let crops = vec![say.weigh_empty(), say.weigh_after(), say.weigh_not_sure()];
    view! {
        <Page title=say.weigh_title() back=Route::Now>
            <form class="form weigh" on:submit=keep>
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
                <Question form />
                <Choice legend=say.weigh_crop() name="crop" options=crops chosen=form.crop fault=form.crop_fault />
                <Pad form />
                <When when=form.when />
                <div class="form__acts">
                    <button type="submit" class="button button--main">{say.keep()}</button>
                </div>
                <p class="hint">{say.weigh_hint()}</p>
            </form>
        </Page>
    }
}

/// What the typed number means against the handover weight, and the last reading.
#[component]
fn Meaning(form: Form) -> impl IntoView {
    let writing = form.state.writing_now();
    let say = writing.language;
    let against = move || {
        let chick = form.state.outlook.get()?.chick.clone();
        let reference = chick.plan.reference?.weight;
        let weight = writing.read_mass(&form.text.get()).ok()?;
        let loss = weight.since(reference).loss_pct_of(reference)?;
        let is_close = loss.abs() < 60.0;
        is_close.then(|| {
            writing.against_handover_with_limit(loss, chick.plan.loss_limit_in_force().as_pct())
        })
    };
    let last = move || {
        let outlook = form.state.outlook.get()?;
        let weighing = outlook.chick.weighings.last()?;
        Some(format!(
            "{}: {} · {}",
            say.weigh_last(),
            writing.mass(weighing.what.weight),
            writing.lived(weighing.lived())
        ))
    };
    view! {
        <output class="weigh__meaning" id="weight-meaning" for="weight">{against}</output>
        <p class="hint">{last}</p>
    }
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
                view! { <button type="button" class="button" on:click=take>{writing.weight_meant(meant)}</button> }
            });
            view! {
                <div class="question" role="alert">
                    <p>{writing.weight_question(typed, doubt.last)}</p>
                    <div class="acts">
                        {meant}
                        <button type="button" class="button" on:click=move |_| form.keep(true)>{say.weigh_yes()}</button>
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
        view! {
            <button type="button" class="pad__key" aria-label=label on:click=move |_| form.press(key)>
                {key.to_string()}
            </button>
        }
    });
    view! { <div class="pad">{keys.collect_view()}</div> }
}

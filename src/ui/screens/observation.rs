//! Small looks noted in two taps: crop, droppings, solids.

use leptos::prelude::*;

use crate::domain::journal::entries::{
    Change, CropFeel, CropState, Droppings, Refusal, SolidsEaten,
};
use crate::ui::parts::choice::Choice;
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::parts::page::Page;
use crate::ui::parts::when::{When, WhenText};
use crate::ui::route::Route;
use crate::ui::state::AppState;

const FEELS: [CropFeel; 2] = [CropFeel::Soft, CropFeel::Firm];
const EATEN: [SolidsEaten; 3] = [SolidsEaten::Played, SolidsEaten::Little, SolidsEaten::Meal];

/// Notes a look and goes back, or says what is wrong.
fn note(state: AppState, when: WhenText, fault: RwSignal<String>, change: Change, said: String) {
    fault.set(String::new());
    let Some(at) = when.moment(state) else { return };
    match state.dispatch_at(at, change) {
        Ok(id) => {
            state.say(said, vec![id]);
            state.go(Route::Now);
        }
        Err(refusal @ (Refusal::InTheFuture | Refusal::BeforeHatching)) => {
            when.say_fault(state.language().refusal(&refusal));
        }
        Err(refusal) => fault.set(state.language().refusal(&refusal).to_owned()),
    }
}

#[component]
fn ObservationForm(
    title: &'static str,
    when: WhenText,
    fault: RwSignal<String>,
    on_keep: Callback<()>,
    children: Children,
) -> impl IntoView {
    let say = AppState::here().language();
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        on_keep.run(());
    };
    view! {
        <Page title back=Route::Now>
            <form class="form" on:submit=keep>
                {children()}
                <When when />
                <p class="fault" role="alert">{move || fault.get()}</p>
                <div class="form__acts">
                    <button type="submit" class="button button--main">{say.keep()}</button>
                </div>
            </form>
        </Page>
    }
}

/// A look at the crop.
#[component]
pub fn CropScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let (when, fault) = (WhenText::now(state), RwSignal::new(String::new()));
    let (seen, felt) = (RwSignal::new(None), RwSignal::new(None));
    let keep = Callback::new(move |()| {
        let Some(crop) = seen
            .get_untracked()
            .and_then(|index: usize| CropState::ALL.get(index).copied())
        else {
            return fault.set(say.fault_choose().to_owned());
        };
        let feel = felt
            .get_untracked()
            .and_then(|index: usize| FEELS.get(index).copied());
        let said = format!("{}: {}", say.now_crop(), say.crop_state(crop));
        let change = Change::CropSeen {
            state: crop,
            feel: feel.unwrap_or(CropFeel::NotNoted),
        };
        note(state, when, fault, change, said);
    });
    view! {
        <ObservationForm title=say.look_title_crop() when fault on_keep=keep>
            <Choice
                legend=say.look_crop_state()
                name="crop-state"
                options=CropState::ALL.map(|crop| say.crop_state(crop)).to_vec()
                chosen=seen
            />
            <Choice
                legend=say.look_crop_feel()
                name="crop-feel"
                options=FEELS.map(|feel| say.crop_feel(feel)).to_vec()
                chosen=felt
            />
        </ObservationForm>
    }
}

/// A look at the droppings.
#[component]
pub fn DroppingsScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let (when, fault) = (WhenText::now(state), RwSignal::new(String::new()));
    let seen = RwSignal::new(None);
    let keep = Callback::new(move |()| {
        let Some(look) = seen
            .get_untracked()
            .and_then(|index: usize| Droppings::OFFERED.get(index).copied())
        else {
            return fault.set(say.fault_choose().to_owned());
        };
        let said = format!("{}: {}", say.now_droppings(), say.droppings(look));
        note(state, when, fault, Change::DroppingsSeen { look }, said);
    });
    view! {
        <ObservationForm title=say.look_title_droppings() when fault on_keep=keep>
            <Choice
                legend=say.look_droppings_look()
                name="droppings"
                options=Droppings::OFFERED.map(|look| say.droppings(look)).to_vec()
                chosen=seen
            />
        </ObservationForm>
    }
}

/// Solids seen.
#[component]
pub fn SolidsScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let (when, fault) = (WhenText::now(state), RwSignal::new(String::new()));
    let (what, eaten) = (RwSignal::new(String::new()), RwSignal::new(None));
    let offered = state
        .outlook
        .get_untracked()
        .map(|outlook| outlook.chick.plan.solids.clone());
    let drank = move |_| {
        let said = say.entry_drinking().to_owned();
        note(state, when, fault, Change::DrinkingSeen, said);
    };
    let keep = Callback::new(move |()| {
        let Some(amount) = eaten
            .get_untracked()
            .and_then(|index: usize| EATEN.get(index).copied())
        else {
            return fault.set(say.fault_choose().to_owned());
        };
        let food = what.get_untracked().trim().to_owned();
        let said = format!("{}: {}", say.now_solids(), say.solids_eaten(amount));
        note(
            state,
            when,
            fault,
            Change::SolidsSeen {
                what: food,
                eaten: amount,
            },
            said,
        );
    });
    view! {
        <ObservationForm title=say.look_title_solids() when fault on_keep=keep>
            <button type="button" class="button" on:click=drank>{say.life_drinking_yes()}</button>
            <Field
                id="food"
                label=say.look_solids_what()
                kind=FieldKind::Text
                text=what
                hint=offered.unwrap_or_default()
            />
            <Choice
                legend=say.look_solids_eaten()
                name="eaten"
                options=EATEN.map(|amount| say.solids_eaten(amount)).to_vec()
                chosen=eaten
            />
        </ObservationForm>
    }
}

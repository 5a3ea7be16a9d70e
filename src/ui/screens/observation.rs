//! Small looks noted in two taps: crop, droppings, solids.

use leptos::prelude::*;

use crate::domain::journal::entries::{
    Change, CropFeel, CropState, Droppings, Paper, Refusal, SolidsEaten,
};
use crate::domain::journal::photo::PhotoOf;
use crate::domain::plan::topic::Topic;
use crate::ui::clock;
use crate::ui::parts::bird::Bird;
use crate::ui::parts::breeders_word::breeders_words;
use crate::ui::parts::button::button;
use crate::ui::parts::choice::Choice;
use crate::ui::parts::droppings_drawing::{DroppingsDrawing, DroppingsParts};
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::parts::live::live;
use crate::ui::parts::page::Page;
use crate::ui::parts::photo_field::PhotoField;
use crate::ui::parts::when::{When, WhenText};
use crate::ui::route::Route;
use crate::ui::state::AppState;

const FEELS: [CropFeel; 2] = [CropFeel::Soft, CropFeel::Firm];
const EATEN: [SolidsEaten; 3] = [SolidsEaten::Played, SolidsEaten::Little, SolidsEaten::Meal];

/// What may be seen, to be chosen by its drawing.
fn look_choice(
    group: &'static str,
    index: usize,
    seen: RwSignal<Option<usize>>,
    drawing: AnyView,
    word: &'static str,
) -> AnyView {
    view! {
        <label class="look">
            <input
                type="radio"
                name=group
                prop:checked=move || seen.get() == Some(index)
                on:change=move |_| seen.set(Some(index))
            />
            {drawing}
            <span>{word}</span>
        </label>
    }
    .into_any()
}

/// Notes a look and goes back, or says what is wrong.
fn note(state: AppState, when: WhenText, fault: RwSignal<String>, change: Change, said: String) {
    note_all(state, when, fault, vec![change], said);
}

/// Notes all of what was seen at once and goes back, or says what is wrong.
fn note_all(
    state: AppState,
    when: WhenText,
    fault: RwSignal<String>,
    changes: Vec<Change>,
    said: String,
) {
    fault.set(String::new());
    let Some(at) = when.moment(state) else { return };
    let chick = state.chick.get_untracked().ok_or(Refusal::NoSuchChick);
    let changes = changes.into_iter().map(|change| (at, change)).collect();
    match chick.and_then(|chick| state.dispatch_for(chick, changes)) {
        Ok(ids) => {
            state.say(said, ids);
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
        <Page
            title
            back=Route::Now
            dock=move || view! { <button type="submit" form="look" class="button button--main">{say.keep()}</button> }.into_any()
        >
            <form class="form" id="look" on:submit=keep>
                {children()}
                <When when />
                <p class="fault" role="alert">{move || fault.get()}</p>
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
    let states = CropState::ALL.into_iter().enumerate();
    let states = states.map(move |(index, crop)| {
        let drawing = view! { <Bird crop /> }.into_any();
        look_choice("crop-state", index, seen, drawing, say.crop_state(crop))
    });
    view! {
        <ObservationForm title=say.look_title_crop() when fault on_keep=keep>
            <fieldset class="choice">
                <legend>{say.look_crop_state()}</legend>
                <div class="looks">{states.collect_view()}</div>
            </fieldset>
            {breeders_words(&[Topic::RoundCrop])}
            <Choice
                legend=say.look_crop_feel()
                name="crop-feel"
                options=FEELS.map(|feel| say.crop_feel(feel)).to_vec()
                chosen=felt
            />
            {photo_fold(PhotoOf::Crop)}
        </ObservationForm>
    }
}

/// Fields for a photo beside what was seen.
fn photo_fold(of: PhotoOf) -> impl IntoView {
    let say = AppState::here().language();
    view! {
        <details class="group">
            <summary>{say.photo_take()}</summary>
            <PhotoField of />
        </details>
    }
}

/// The place in [`Droppings::OFFERED`] of the look chosen, as a look.
fn offered_at(index: Option<usize>) -> Option<Droppings> {
    index.and_then(|index| Droppings::OFFERED.get(index).copied())
}

/// A look at the droppings, and how many lay on the paper.
#[component]
pub fn DroppingsScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let (when, fault) = (WhenText::now(state), RwSignal::new(String::new()));
    let (seen, red_food) = (RwSignal::new(None), RwSignal::new(None));
    let (count, count_fault) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let lived = state.zone.with_untracked(|zone| zone.lived(clock::now()));
    let likely = Paper::likely_at(lived.time);
    let paper = RwSignal::new(Paper::ALL.iter().position(|one| *one == likely));
    let keep = Callback::new(move |()| {
        count_fault.set(String::new());
        let look = offered_at(seen.get_untracked());
        let look = look.map(|look| look.with_red_food(red_food.get_untracked() == Some(0)));
        let mut changes: Vec<Change> = look
            .map(|look| Change::DroppingsSeen { look })
            .into_iter()
            .collect();
        let typed = count.get_untracked();
        if !typed.trim().is_empty() {
            let Ok(count) = typed.trim().parse() else {
                return count_fault.set(say.fault_count().to_owned());
            };
            let paper = paper
                .get_untracked()
                .and_then(|index| Paper::ALL.get(index).copied());
            let paper = paper.unwrap_or(likely);
            changes.push(Change::DroppingsCounted { paper, count });
        }
        if changes.is_empty() {
            return fault.set(say.fault_choose().to_owned());
        }
        let writing = state.writing_now();
        let said: Vec<String> = changes
            .iter()
            .map(|change| writing.change(change, None))
            .collect();
        note_all(state, when, fault, changes, said.join(". "));
    });
    let looks = Droppings::OFFERED.into_iter().enumerate();
    let looks = looks.map(move |(index, look)| {
        let drawing = view! { <DroppingsDrawing look /> }.into_any();
        look_choice(
            "droppings",
            index,
            seen,
            drawing,
            say.droppings_choice(look),
        )
    });
    let asks = Memo::new(move |_| offered_at(seen.get()).is_some_and(Droppings::asks_for_red_food));
    let is_counted = Memo::new(move |_| !count.with(|typed| typed.trim().is_empty()));
    view! {
        <ObservationForm title=say.look_title_droppings() when fault on_keep=keep>
            <DroppingsParts names=[say.dropping_stool(), say.dropping_white(), say.dropping_clear()] />
            <fieldset class="choice">
                <legend>{say.look_droppings_look()}</legend>
                <div class="looks">{looks.collect_view()}</div>
            </fieldset>
            {move || asks.get().then(|| view! {
                <Choice
                    legend=say.look_red_food()
                    name="red-food"
                    options=vec![say.advice_yes(), say.advice_no(), say.weigh_not_sure()]
                    chosen=red_food
                />
                <p class="hint">{say.look_red_food_hint()}</p>
            })}
            <Field
                id="count"
                label=say.look_droppings_count()
                kind=FieldKind::Number
                text=count
                hint=say.look_droppings_count_hint()
                fault=count_fault
            />
            {move || is_counted.get().then(|| view! {
                <Choice
                    legend=say.look_droppings_paper()
                    name="paper"
                    options=Paper::ALL.map(|paper| say.paper(paper)).to_vec()
                    chosen=paper
                />
            })}
            {photo_fold(PhotoOf::Droppings)}
        </ObservationForm>
    }
}

/// Most foods of a plan that are offered by name.
const MOST_FOODS: usize = 12;

/// The foods of a plan's line, one each.
fn foods(line: &str) -> Vec<String> {
    let foods = line.split([',', ';', '\n']).map(str::trim);
    let foods = foods.filter(|food| !food.is_empty()).take(MOST_FOODS);
    foods.map(str::to_owned).collect()
}

/// The plan's foods and another one, which is typed; without any in the plan only the field.
#[component]
fn FoodChips(
    offered: StoredValue<Vec<String>>,
    chosen: RwSignal<Option<usize>>,
    what: RwSignal<String>,
) -> impl IntoView {
    let say = AppState::here().language();
    let foods = offered.get_value();
    let count = foods.len();
    let names = foods
        .into_iter()
        .chain([say.look_solids_other().to_owned()]);
    let chips = names.enumerate().map(|(index, name)| {
        view! {
            <label class="choice__option">
                <input
                    type="radio"
                    name="food"
                    prop:checked=move || chosen.get() == Some(index)
                    on:change=move |_| chosen.set(Some(index))
                />
                <span>{name}</span>
            </label>
        }
    });
    let field = live(move || {
        let is_other = count == 0 || chosen.get() == Some(count);
        is_other.then(|| {
            view! { <Field id="food" label=say.look_solids_what() kind=FieldKind::Text text=what /> }
        })
    });
    view! {
        {(count > 0).then(|| view! {
            <fieldset class="choice">
                <legend>{say.look_solids_what()}</legend>
                <div class="choice__options">{chips.collect_view()}</div>
            </fieldset>
        })}
        {field}
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
        .map(|outlook| foods(&outlook.chick.plan.solids))
        .unwrap_or_default();
    let (offered, chosen) = (StoredValue::new(offered), RwSignal::new(None::<usize>));
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
        let listed = offered.with_value(|foods| foods.get(chosen.get_untracked()?).cloned());
        let food = listed.unwrap_or_else(|| what.get_untracked().trim().to_owned());
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
            {button(say.life_drinking_yes(), drank)}
            <FoodChips offered chosen what />
            <Choice
                legend=say.look_solids_eaten()
                name="eaten"
                options=EATEN.map(|amount| say.solids_eaten(amount)).to_vec()
                chosen=eaten
            />
        </ObservationForm>
    }
}

//! What a weight means, right after it was kept: number, difference, where it stands, one instruction.

use leptos::prelude::*;

use crate::domain::journal::entries::{Change, CropAtWeighing, EntryId};
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::{Lived, Moment};
use crate::domain::warnings::level::Level;
use crate::domain::weight::doubt::is_high;
use crate::ui::clock;
use crate::ui::parts::button::{button, main_button};
use crate::ui::parts::call_card::call_buttons;
use crate::ui::parts::correct::correct;
use crate::ui::parts::level_mark::{LevelMark, level_name};
use crate::ui::parts::page::Page;
use crate::ui::parts::ruler::{Mark, MarkKind, Ruler};
use crate::ui::parts::shell::kept_words;
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::state::AppState;
use crate::words::rules::call_first;

/// What is asked of a reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Again {
    /// Nothing: it fits.
    No,
    /// A second weighing.
    Low,
    /// A third one: two differ by more than the scale can.
    Apart,
    /// Whether the crop held food.
    High,
}

/// A weight that was kept, and what it means.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    id: EntryId,
    at: Moment,
    weight: Grams,
    crop: CropAtWeighing,
    today: Lived,
    before: Option<(Grams, Lived)>,
    handover: Option<Grams>,
    call_at: Option<Grams>,
    level: Option<Level>,
    /// The level of all, where the weight alone says nothing.
    other: Option<Level>,
    /// Whether a call comes before everything else, be it about the weight or not.
    is_call_next: bool,
    again: Again,
    plan: CarePlan,
}

impl Outcome {
    /// The outcome of the entry that stands between two outlooks; `None` when it is not there.
    pub fn of(id: EntryId, before: &Outlook, after: &Outlook) -> Option<Self> {
        let weighings = after.chick.weighings.iter();
        let is_empty = |crop| crop == CropAtWeighing::Empty;
        let kept = weighings.clone().find(|weighing| weighing.id == id)?;
        let mut earlier = weighings.rev().filter(|weighing| {
            weighing.at <= kept.at && weighing.id != id && is_empty(weighing.what.crop)
        });
        let level = after.weight_level();
        let again = if !is_empty(kept.what.crop) {
            Again::No
        } else if let Some(second) = after.weight.second_weighing {
            if second.weighings < 2 {
                Again::Low
            } else {
                Again::Apart
            }
        } else if is_high(&before.chick, kept.at, kept.what.weight) {
            Again::High
        } else {
            Again::No
        };
        Some(Self {
            id,
            at: kept.at,
            weight: kept.what.weight,
            crop: kept.what.crop,
            today: after.lived,
            before: earlier.next().map(|one| (one.what.weight, one.lived())),
            handover: after.chick.plan.reference.map(|handed| handed.weight),
            call_at: after.weight.call_at,
            level: level.filter(|_| is_empty(kept.what.crop)),
            other: (after.level > Level::Settled).then_some(after.level),
            is_call_next: after.is_call_next(),
            again,
            plan: after.chick.plan.clone(),
        })
    }

    /// What stands on the ruler: nothing for a weight that is not compared.
    fn marks(&self) -> Vec<Mark> {
        let mark = |kind, weight: Option<Grams>| weight.map(|weight| Mark { kind, weight });
        let before = self.before.map(|(weight, _)| weight);
        let marks = [
            mark(MarkKind::Call, self.call_at),
            mark(MarkKind::Handover, self.handover),
            mark(MarkKind::Before, before),
            mark(MarkKind::Now, Some(self.weight)),
        ];
        let marks: Vec<Mark> = marks.into_iter().flatten().collect();
        let is_compared = self.crop == CropAtWeighing::Empty && marks.len() > 1;
        if is_compared { marks } else { Vec::new() }
    }

    /// Whether the level is the vet's: then nobody waits for a second weighing.
    fn is_for_vet(&self) -> bool {
        self.level.is_some_and(|level| level >= Level::VetToday)
    }
}

/// A weight that was kept.
#[component]
pub fn WeighResult(
    /// The outcome.
    shown: Outcome,
    /// The place of the outcome: emptied to weigh again.
    outcome: RwSignal<Option<Outcome>>,
) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let change = match (shown.crop, shown.before) {
        (CropAtWeighing::AfterFeed | CropAtWeighing::NotSure, _) => {
            say.weigh_not_compared().to_owned()
        }
        (CropAtWeighing::Empty, None) => say.weigh_first().to_owned(),
        (CropAtWeighing::Empty, Some((before, when))) => {
            writing.changed_since(shown.weight, before, when.day, shown.today.day)
        }
    };
    let marks = shown.marks();
    let ruler = (!marks.is_empty()).then(|| view! { <Ruler marks /> });
    let number = writing.mass_number(shown.weight);
    view! {
        <Page title=say.weigh_title() back=Route::Now>
            <p class="weigh__kept">
                <strong>{number}</strong>
                " "
                <span class="weigh__unit">{writing.mass_unit()}</span>
            </p>
            <p class="weigh__change">{change}</p>
            <Kept shown=shown.clone() outcome />
            {ruler}
            <Next shown=shown.clone() outcome />
        </Page>
    }
}

/// Back to the feed that waits for the scale, else to what is due.
fn go_on(state: AppState) {
    let outlook = state.outlook.get_untracked();
    let is_feeding = outlook.is_some_and(|outlook| {
        let guide = state.copies.guide(outlook.chick.id);
        guide.is_some_and(|guide| guide.is_under_way(outlook.now, &outlook.chick))
    });
    state.go(if is_feeding { Route::Guide } else { Route::Now });
}

/// How far it is kept, and the way back.
#[component]
fn Kept(shown: Outcome, outcome: RwSignal<Option<Outcome>>) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let time = state.zone.with_untracked(|zone| zone.lived(shown.at)).time;
    let noted = writing.noted_weight(shown.weight, time);
    let undo = move |_| {
        state.take_back(&[shown.id]);
        outcome.set(None);
        request_animation_frame(platform::focus_heading);
    };
    view! {
        <p class="weigh__undo">
            <span role="status">{noted} " " {move || kept_words(state)}</span>
            {button(say.undo(), undo)}
        </p>
    }
}

/// The one instruction, and what is pressed next.
#[component]
fn Next(shown: Outcome, outcome: RwSignal<Option<Outcome>>) -> impl IntoView {
    let state = AppState::here();
    // Nobody is asked to weigh again, or told that no call is needed, before a call that comes first.
    if shown.is_for_vet() || shown.is_call_next {
        return view! { <Told shown outcome /> }.into_any();
    }
    match shown.again {
        Again::Low | Again::Apart => {
            view! { <OnceMore again=shown.again id=shown.id outcome /> }.into_any()
        }
        Again::High => {
            let full = move |_| was_full(state, &shown, outcome);
            let say = state.language();
            let empty = move |_| go_on(state);
            view! {
                <section class="group" role="status">
                    <h2>{say.weigh_full_title()}</h2>
                    <p>{say.weigh_full_text()}</p>
                </section>
                <div class="dock">
                    {button(say.weigh_full_no(), empty)}
                    {button(say.weigh_full_yes(), full)}
                </div>
            }
            .into_any()
        }
        Again::No => view! { <Told shown outcome /> }.into_any(),
    }
}

/// The crop held food: the weight is kept as such.
fn was_full(state: AppState, shown: &Outcome, outcome: RwSignal<Option<Outcome>>) {
    let right = Change::Weighed {
        weight: shown.weight,
        crop: CropAtWeighing::AfterFeed,
    };
    let said = state.language().crop_at_weighing(CropAtWeighing::AfterFeed);
    match correct(state, shown.id, shown.at, right, said.to_owned()) {
        Ok(()) => {
            outcome.update(|outcome| {
                if let Some(outcome) = outcome {
                    outcome.crop = CropAtWeighing::AfterFeed;
                    outcome.level = None;
                    outcome.again = Again::No;
                }
            });
            request_animation_frame(platform::focus_heading);
        }
        Err(refusal) => state.say_refusal(&refusal),
    }
}

/// A second or third weighing at once, one tap away.
#[component]
fn OnceMore(again: Again, id: EntryId, outcome: RwSignal<Option<Outcome>>) -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let (title, text) = if again == Again::Apart {
        (say.weigh_third_title(), say.weigh_third_text())
    } else {
        (say.weigh_again_title(), say.weigh_again_text())
    };
    let once_more = move |_| {
        outcome.set(None);
        request_animation_frame(platform::focus_heading);
    };
    // It counts as it is, and may call at once.
    let not_now = move |_| match state.dispatch_at(clock::now(), Change::WeightStands { id }) {
        Ok(_) => go_on(state),
        Err(refusal) => state.say_refusal(&refusal),
    };
    view! {
        <section class="group" role="status">
            <h2>{title}</h2>
            <p>{text}</p>
        </section>
        <p class="hint">{say.weigh_again_help()}</p>
        <div class="dock">
            {button(say.weigh_not_now(), not_now)}
            {main_button(say.weigh_again(), once_more)}
        </div>
    }
}

/// What the weight means, whom to call where it is due, and on.
#[component]
fn Told(shown: Outcome, outcome: RwSignal<Option<Outcome>>) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let of_weight = shown.level.filter(|level| level.is_call());
    // What comes before everything else is said, be it about the weight or not.
    let next = shown.other.filter(|_| shown.is_call_next);
    let level = next.or(shown.level).or(shown.other);
    let is_doubted = matches!(shown.again, Again::Low | Again::Apart);
    let told = level.map(|level| {
        let act = match (next, of_weight, shown.level) {
            (Some(next), _, _) => say.call_now(next),
            (None, Some(level), _) => call_first(say, level),
            (None, None, Some(level)) => writing.weigh_next(level),
            (None, None, None) => say.weight_now_other(),
        };
        let why = next.filter(|next| of_weight != Some(*next)).map(|_| {
            if of_weight.is_some() || is_doubted {
                say.weight_now_more()
            } else {
                say.weight_now_other()
            }
        });
        view! {
            <section class="group weigh__told" role="status" data-level=level_name(level)>
                <h2>
                    <LevelMark level />
                    {say.level(level)}
                </h2>
                <p>{act}</p>
                {why.map(|why| view! { <p class="hint">{why}</p> })}
                {shown.is_for_vet().then(|| view! { <p>{say.weigh_call_first()}</p> })}
            </section>
        }
    });
    let calls = of_weight
        .max(next)
        .map(|level| call_buttons(level, Some(&shown.plan)));
    let is_call = calls.is_some();
    let done = move |_| go_on(state);
    let once_more = move |_| {
        outcome.set(None);
        request_animation_frame(platform::focus_heading);
    };
    let beside = if is_doubted {
        view! { <button type="button" class="button" on:click=once_more>{say.weigh_again()}</button> }.into_any()
    } else {
        view! { <a class="button" href=Route::Weight.to_hash()>{say.weigh_chart()}</a> }.into_any()
    };
    view! {
        {told}
        <div class="dock" class:dock--calls=is_call>
            {calls}
            {beside}
            <button type="button" class="button" class:button--main=!is_call on:click=done>{say.weigh_done()}</button>
        </div>
    }
}

//! The order in which feeds go.

use leptos::prelude::*;

use crate::domain::plan::care_plan::{CarePlan, Slot};
use crate::ui::parts::live::live;
use crate::ui::screens::plan_form::text::Text;
use crate::ui::state::AppState;

/// The feeds, first to go first. Those that the plan names come first.
#[derive(Debug, Clone, Copy)]
pub struct DropOrder {
    order: RwSignal<Vec<Slot>>,
    is_moved: RwSignal<bool>,
}

impl DropOrder {
    /// The order of a plan.
    pub fn new(plan: &CarePlan) -> Self {
        let mut order = plan.drop_order.clone();
        let others = Slot::ALL.into_iter();
        order.extend(others.filter(|slot| !plan.drop_order.contains(slot)));
        Self {
            order: RwSignal::new(order),
            is_moved: RwSignal::new(false),
        }
    }

    /// The order of the feeds that are given; `None` when nobody has changed it.
    pub fn moved(self, is_given: impl Fn(Slot) -> bool) -> Option<Vec<Slot>> {
        let mut order = self.order.get_untracked();
        order.retain(|slot| is_given(*slot));
        self.is_moved.get_untracked().then_some(order)
    }

    fn earlier(self, slot: Slot, given: &[Slot]) {
        let place = given.iter().position(|one| *one == slot);
        let before = place.and_then(|place| given.get(place.checked_sub(1)?));
        let Some(before) = before.copied() else {
            return;
        };
        self.is_moved.set(true);
        self.order.update(|order| {
            order.retain(|one| *one != slot);
            let place = order.iter().position(|one| *one == before);
            order.insert(place.unwrap_or_default(), slot);
        });
    }
}

/// The feeds in the order in which they go, each with a button that lets it go earlier.
#[component]
pub fn DropOrderRows(
    /// The order.
    order: DropOrder,
    /// The time typed for each feed; a feed without one is not given.
    times: Vec<(Slot, Text)>,
    /// What says that nobody has confirmed it.
    mark: &'static str,
) -> impl IntoView {
    let say = AppState::here().language();
    let rows = live(move || {
        let mut given = order.order.get();
        given.retain(|slot| {
            let mut times = times.iter();
            times.any(|(one, time)| one == slot && !time.text.get().is_empty())
        });
        let row = |(place, slot): (usize, Slot)| {
            let of_row = given.clone();
            let earlier = (place > 0).then(|| {
                let label = format!("{}: {}", say.slot(slot), say.plan_earlier());
                view! {
                    <button type="button" class="button" aria-label=label on:click=move |_| order.earlier(slot, &of_row)>
                        {say.plan_earlier()}
                    </button>
                }
            });
            view! { <li class="drop-order"><span>{say.slot(slot)}</span> {earlier}</li> }
        };
        given
            .clone()
            .into_iter()
            .enumerate()
            .map(row)
            .collect_view()
    });
    view! {
        <fieldset class="field">
            <legend>{say.plan_part_order()}</legend>
            <ol class="plain-list" aria-live="polite">{rows}</ol>
            <p class="hint">{mark}</p>
        </fieldset>
    }
}

//! The way to the new home, and the order of things after the arrival.

use leptos::prelude::*;

use crate::domain::homecoming::first_days::SETTLE_MINUTES;
use crate::domain::homecoming::first_days::{
    first_feed_powder, first_feed_since, first_feed_volumes,
};
use crate::domain::homecoming::transit::TransitVerdict;
use crate::domain::journal::entries::Change;
use crate::domain::outlook::Outlook;
use crate::ui::parts::button::main_button;
use crate::ui::route::Route;
use crate::ui::state::AppState;

/// Notes the arrival.
#[component]
pub fn ArrivedButton() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let arrived = move |_| {
        state.note(Change::Arrived, say.entry_arrived().to_owned());
    };
    main_button(say.home_arrived(), arrived)
}

/// Where the chick is on its way, with the act that notes its arrival.
pub fn on_the_way(outlook: &Outlook) -> impl IntoView + use<> {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let way = outlook.transit?;
    let (left, expected) = state.zone.with_untracked(|zone| {
        (
            zone.lived(way.journey.left),
            zone.lived(way.journey.expected),
        )
    });
    let is_long = way.planned_verdict() != TransitVerdict::AsPlanned;
    let arrives = writing.expected(expected, way.journey.expected.minutes_since(outlook.now));
    let lines = [
        is_long.then(|| writing.long_journey(way.minutes_at_arrival, way.levels.plan)),
        Some(writing.transit_levels(way.levels)),
        Some(say.home_order().to_owned()),
    ];
    let lines = lines
        .into_iter()
        .flatten()
        .map(|line| view! { <p>{line}</p> })
        .collect_view();
    let title = if way.has_left {
        say.way_on()
    } else {
        say.way_before()
    };
    let without = way.has_left.then(|| writing.without_feed(way.minutes));
    let acts = way.has_left.then(|| {
        view! {
            <ArrivedButton />
            <a class="button" href=Route::Log(None).to_hash()>{say.way_log()}</a>
        }
    });
    Some(view! {
        <section class="group" data-way="true">
            <h2>{title}</h2>
            <p class="guide__number">{without}</p>
            <p>{writing.leaves(left, way.has_left)} " " {arrives}</p>
            {acts}
            {lines}
        </section>
    })
}

/// The order of things between the arrival and the first feed.
pub fn first_feed(outlook: &Outlook) -> impl IntoView + use<> {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let arrived = first_feed_since(outlook.now, &outlook.chick)?;
    let slot = outlook.next_feed.as_ref()?.slot;
    let plan = &outlook.chick.plan;
    let usual = plan.feed(slot)?.volume;
    let warm = arrived.plus_minutes(SETTLE_MINUTES);
    let until = state.zone.with_untracked(|zone| zone.lived(warm)).time;
    let steps = [
        writing.warm_until(until, warm <= outlook.now),
        say.way_dry().to_owned(),
        writing.first_feed(
            first_feed_volumes(usual),
            usual,
            first_feed_powder(plan.powder_fraction),
        ),
    ];
    let steps = steps.map(|step| view! { <li>{step}</li> }).collect_view();
    Some(view! {
        <section class="group" data-first="true">
            <h2>{say.way_first()}</h2>
            <ol class="numbered">{steps}</ol>
            <p class="hint">{say.home_same()}</p>
        </section>
    })
}

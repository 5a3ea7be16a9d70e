//! The first days in the new home, powder in stock, and cleaning.

use leptos::prelude::*;

use crate::domain::formula::day_energy::day_energy;
use crate::domain::formula::stock::stock;
use crate::domain::homecoming::first_days::first_days;
use crate::domain::journal::entries::Change;
use crate::domain::outlook::Outlook;
use crate::domain::quantity::units::NumberError;
use crate::ui::parts::arrival::ArrivedButton;
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::parts::live::live;
use crate::ui::parts::page::Page;
use crate::ui::route::Route;
use crate::ui::state::AppState;
use crate::words::format::Writing;

/// First days, powder, hygiene.
#[component]
pub fn HomeScreen() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let arrival = live(move || state.outlook.get().map(|outlook| arrival_of(&outlook)));
    let powder = live(move || state.outlook.get().map(|outlook| powder_of(&outlook)));
    let cleaning = say.cleaning().map(|step| view! { <li>{step}</li> });
    view! {
        <Page title=say.home_title() back=Route::Now>
            {arrival}
            <a class="button" href=Route::FirstWeeks(None).to_hash()>{say.weeks_title()}</a>
            <section class="group">
                <NumberForm id="room" label=say.home_room() unit=writing.temperature_unit() parse=room_from />
            </section>
            <section class="group">
                <h2>{say.home_powder()}</h2>
                {powder}
                <NumberForm id="powder-stock" label=say.home_powder_field() unit=writing.mass_unit() parse=powder_from />
            </section>
            <section class="group">
                <h2>{say.home_hygiene()}</h2>
                <ol class="plain-list">{cleaning.collect_view()}</ol>
                <p class="hint">{say.home_clean_source()}</p>
            </section>
        </Page>
    }
}

/// The dates from the arrival, or the act that notes it.
fn arrival_of(outlook: &Outlook) -> impl IntoView + use<> {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let dates = state
        .zone
        .with_untracked(|zone| first_days(&outlook.chick, zone));
    let body = if let Some(dates) = dates {
        let lines = writing.first_dates(dates, outlook.lived.day);
        let lines = lines.map(|line| view! { <li>{line}</li> });
        view! {
            <ul class="plain-list">{lines.collect_view()}</ul>
            <p class="hint">{say.home_same()}</p>
        }
        .into_any()
    } else {
        view! {
            <p>{say.home_not_arrived()}</p>
            <p>{say.home_order()}</p>
            <p>{say.home_first_feed()}</p>
            <ArrivedButton />
        }
        .into_any()
    };
    view! {
        <section class="group">
            <h2>{say.home_arrival()}</h2>
            {body}
        </section>
    }
}

fn powder_of(outlook: &Outlook) -> impl IntoView + use<> {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    let lines = match stock(outlook.now, &outlook.chick) {
        None => vec![say.home_powder_none().to_owned()],
        Some(stock) => {
            let order = stock.order_in_days.map(|days| match days {
                0 => say.home_powder_order().to_owned(),
                days => writing.order_in(days),
            });
            [Some(writing.powder_left(&stock)), order]
                .into_iter()
                .flatten()
                .collect()
        }
    };
    let energy = day_energy(outlook.now, &outlook.chick).map(|day| writing.day_energy(day));
    lines
        .into_iter()
        .chain(energy)
        .map(|line| view! { <p>{line}</p> })
        .collect_view()
}

/// A form of one number and its Keep button.
#[component]
fn NumberForm(
    id: &'static str,
    label: &'static str,
    unit: &'static str,
    parse: fn(&str, Writing) -> Result<Change, NumberError>,
) -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let (text, fault) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        match parse(&text.get_untracked(), writing) {
            Err(error) => fault.set(writing.number_error(error)),
            Ok(change) => note(state, change, text, fault),
        }
    };
    view! {
        <form class="form" on:submit=keep>
            <Field id label kind=FieldKind::Number text unit fault />
            <button type="submit" class="button">{writing.language.keep()}</button>
        </form>
    }
}

fn powder_from(text: &str, writing: Writing) -> Result<Change, NumberError> {
    writing
        .read_mass(text)
        .map(|powder| Change::StockOpened { powder })
}

fn room_from(text: &str, writing: Writing) -> Result<Change, NumberError> {
    writing
        .read_temperature(text)
        .map(|room| Change::RoomSeen { room })
}

/// Notes a change and empties its field, or says at the field what is wrong.
fn note(state: AppState, change: Change, text: RwSignal<String>, fault: RwSignal<String>) {
    let said = state.writing_now().change(&change, None);
    match state.dispatch(change) {
        Ok(id) => {
            text.set(String::new());
            fault.set(String::new());
            state.say(said, vec![id]);
        }
        Err(refusal) => fault.set(state.language().refusal(&refusal).to_owned()),
    }
}

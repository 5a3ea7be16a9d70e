//! Chicks, contacts, units, light, language, storage and the caution.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::domain::formula::serving_heat::TemperatureUnit;
use crate::ui::parts::chick_name::{beside_name, name_shown, named_chicks};
use crate::ui::parts::choice::Choice;
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::parts::file_delivery::FileDelivery;
use crate::ui::parts::life::{RemovedChicks, ThisChick};
use crate::ui::parts::live::{live, on_change};
use crate::ui::parts::page::Page;
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::screens::first_start::Caution;
use crate::ui::state::AppState;
use crate::words::Language;
use crate::words::format::MassUnit;

const MASSES: [MassUnit; 2] = [MassUnit::Gram, MassUnit::Ounce];
const TEMPERATURES: [TemperatureUnit; 2] = [TemperatureUnit::Celsius, TemperatureUnit::Fahrenheit];
const THEMES: [&str; 3] = ["auto", "night", "day"];

/// Chicks and settings.
#[component]
pub fn SettingsScreen() -> impl IntoView {
    let say = AppState::here().language();
    view! {
        <Page title=say.settings_title() back=Route::Now>
            <div class="columns">
                <div class="column">
                    <Chicks />
                    <ThisChick />
                    <RemovedChicks />
                    <Units />
                </div>
                <div class="column">
                    <Light />
                    <Carer />
                    <Storage />
                    <Caution />
                </div>
            </div>
            <div class="rows">
                <a class="row" href=Route::Sources(None).to_hash()>{say.manual_title()}</a>
            </div>
        </Page>
    }
}

#[component]
fn Chicks() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let names = move || {
        let chicks = state.chicks().into_iter();
        state.journal.with(|journal| {
            let named = chicks.map(|id| {
                let chick = crate::domain::journal::chick::Chick::from_journal(journal, id);
                (id, chick.map(|chick| chick.plan.name).unwrap_or_default())
            });
            named.collect::<Vec<_>>()
        })
    };
    let buttons = live(move || {
        let named = named_chicks(state);
        let buttons = names().into_iter().map(|(id, name)| {
            let beside = beside_name(&named, id);
            let is_shown = state.chick.get() == Some(id);
            let show = move |_| {
                state.show_chick(id);
                state.go(Route::Now);
            };
            view! {
                <button type="button" class="button" aria-pressed=is_shown.to_string() on:click=show>{name_shown(&name)} {beside}</button>
            }
        });
        buttons.collect_view()
    });
    let has_chick = state.chick.get_untracked().is_some();
    let breeder = if state.copies.is_breeder() {
        say.breeder_details()
    } else {
        say.start_breeder()
    };
    view! {
        <section class="group">
            <h2>{say.settings_chicks()}</h2>
            <div class="acts">{buttons}</div>
            <div class="rows">
                {has_chick.then(|| {
                    view! { <a class="row" href=Route::Plan.to_hash()>{say.settings_plan()}</a> }
                })}
                <a class="row" href=Route::Start.to_hash()>{say.settings_add()}</a>
                <a class="row" href=Route::FirstWeeks(None).to_hash()>{say.weeks_title()}</a>
                <a class="row" href=Route::Breeder.to_hash()>{breeder}</a>
            </div>
        </section>
    }
}

#[component]
fn Units() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let mass = RwSignal::new(MASSES.iter().position(|unit| *unit == writing.mass));
    let temperature = RwSignal::new(
        TEMPERATURES
            .iter()
            .position(|unit| *unit == writing.temperature),
    );
    let language = RwSignal::new(
        Language::ALL
            .iter()
            .position(|known| *known == writing.language),
    );
    on_change(
        move || (mass.get(), temperature.get(), language.get()),
        move |(mass, temperature, language)| {
            let mut writing = state.writing_now();
            if let Some(unit) = mass.and_then(|index| MASSES.get(index)) {
                writing.mass = *unit;
            }
            if let Some(unit) = temperature.and_then(|index| TEMPERATURES.get(index)) {
                writing.temperature = *unit;
            }
            if let Some(chosen) = language.and_then(|index| Language::ALL.get(index)) {
                writing.language = *chosen;
            }
            state.set_writing(writing);
        },
    );
    view! {
        <section class="group">
            <h2>{say.settings_units()}</h2>
            <Choice legend=say.settings_mass() name="mass" options=vec!["g", "oz"] chosen=mass />
            <Choice legend=say.settings_temperature() name="temperature" options=vec!["°C", "°F"] chosen=temperature />
            <Choice
                legend=say.settings_language()
                name="language"
                options=vec![say.settings_language_english(), say.settings_language_spanish()]
                chosen=language
            />
        </section>
    }
}

#[component]
fn Light() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let theme = state.copies.theme();
    let chosen = RwSignal::new(THEMES.iter().position(|known| *known == theme));
    on_change(
        move || chosen.get(),
        move |chosen| {
            if let Some(theme) = chosen.and_then(|index| THEMES.get(index)) {
                state.copies.remember_theme(theme);
                platform::set_root_attribute("data-theme", theme);
            }
        },
    );
    let options = vec![
        say.settings_theme_auto(),
        say.settings_theme_night(),
        say.settings_theme_day(),
    ];
    view! {
        <section class="group">
            <Choice legend=say.settings_theme() name="theme" options chosen />
        </section>
    }
}

#[component]
fn Carer() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let name = RwSignal::new(state.copies.carer());
    on_change(
        move || name.get(),
        move |name| state.copies.remember_carer(&name),
    );
    view! {
        <section class="group">
            <Field
                id="carer"
                label=say.settings_carer()
                kind=FieldKind::Text
                text=name
                hint=say.settings_carer_hint()
            />
        </section>
    }
}

#[component]
fn Storage() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let delivery = FileDelivery::new(say);
    let everything = move || {
        let text = state.copies.everything_as_text();
        platform::text_file("perchlight-everything.txt", "text/plain", &text)
    };
    let is_persisted = RwSignal::new(false);
    spawn_local(async move { is_persisted.set(platform::is_persisted().await) });
    let promise = live(move || {
        if is_persisted.get() {
            say.settings_persisted()
        } else {
            say.settings_not_persisted()
        }
    });
    view! {
        <section class="group">
            <h2>{say.settings_storage()}</h2>
            <p>{say.handover_backup_text()}</p>
            <p>{promise}</p>
            {platform::is_iphone().then(|| view! { <p class="hint">{say.settings_install_text()}</p> })}
            <a class="button" href=Route::Handover.to_hash()>{say.save_backup()}</a>
            {delivery.button(say.settings_save_all(), true, Box::new(everything))}
            {delivery.answer()}
        </section>
    }
}

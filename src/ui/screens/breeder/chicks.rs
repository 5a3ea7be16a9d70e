//! A breeder's home: her chicks in groups, who needs a call first; a table where the window has room for one.

use leptos::prelude::*;

use crate::domain::homecoming::clutch::{Clutch, clutches};
use crate::domain::homecoming::placement::Place;
use crate::domain::plan::species::Species;
use crate::share::breeder_table::{BreederRow, Filter};
use crate::share::chicks_csv::chicks_csv;
use crate::share::file_name::{FileKind, file_name};
use crate::ui::parts::chick_name::name_shown;
use crate::ui::parts::file_delivery::FileDelivery;
use crate::ui::parts::live::live;
use crate::ui::parts::page::Heading;
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::screens::breeder::chick::chosen_chick;
use crate::ui::screens::breeder::row::{
    curve, facts, mark, of_bird, owner_call, rows_now, vet_word,
};
use crate::ui::state::AppState;

/// A row and what stands beside the name of a namesake.
type Told = (BreederRow, String);

/// The list.
#[component]
pub fn ChicksScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    state.follow_what_left();
    let minute = Memo::new(move |_| state.now.get().seconds().div_euclid(60));
    let rows = Memo::new_with_compare(
        move |_| {
            minute.get();
            state.journal.track();
            state.of_phone.track();
            rows_now(state)
        },
        |_, _| true,
    );
    let filter = RwSignal::new(Filter::default());
    let is_table = following(platform::is_wide_for_table);
    let is_wide = following(platform::is_wide);
    let shown = Memo::new(move |_| {
        let filter = filter.get();
        let mut rows = rows.get();
        rows.retain(|(row, _)| filter.shows(row));
        rows
    });
    let list = live(move || {
        if rows.with(Vec::is_empty) {
            view! { <p>{say.breeder_none()}</p> }.into_any()
        } else if shown.with(Vec::is_empty) {
            view! { <p>{say.breeder_none_here()}</p> }.into_any()
        } else if is_table.get() {
            table(state, &shown.get()).into_any()
        } else {
            let is_one_group = filter.get().place.is_some();
            cards(state, &shown.get(), is_one_group, is_wide.get()).into_any()
        }
    });
    let has_chosen = move || is_wide.get() && state.chick.get().is_some();
    let chosen = live(move || {
        has_chosen().then(|| view! { <aside class="chosen">{chosen_chick(state, rows)}</aside> })
    });
    view! {
        <div class="scroll chicks">
            <div class="chicks__all">
                <Heading text=say.breeder_title() />
                {filters(state, rows, filter)}
                {list}
                {move || rows.with(|rows| !rows.is_empty()).then(|| csv(state, rows))}
            </div>
            {chosen}
        </div>
        <div class="dock">
            <a class="button" href=Route::Reports.to_hash()>{say.breeder_import()}</a>
            <a class="button button--main" href=Route::NewCard.to_hash()>{say.breeder_new_card()}</a>
        </div>
    }
}

/// Whether the window has room for something; follows.
fn following(has_room: fn() -> bool) -> RwSignal<bool> {
    let is_wide = RwSignal::new(has_room());
    let listener = window_event_listener_untyped("resize", move |_| {
        let now = has_room();
        if is_wide.get_untracked() != now {
            is_wide.set(now);
        }
    });
    on_cleanup(move || listener.remove());
    is_wide
}

/// The groups as chips, and clutch and species where there is more than one.
fn filters(state: AppState, rows: Memo<Vec<Told>>, filter: RwSignal<Filter>) -> impl IntoView {
    let writing = state.writing_now();
    let say = writing.language;
    let chips = live(move || {
        let count =
            |place| rows.with(|rows| rows.iter().filter(|(row, _)| row.place == place).count());
        let all = rows.with(Vec::len);
        let chip = |word: String, place: Option<Place>| {
            let is_on = move || (filter.get().place == place).to_string();
            let choose = move |_| filter.update(|filter| filter.place = place);
            view! { <button type="button" class="chip" aria-pressed=is_on on:click=choose>{word}</button> }
        };
        let places = Place::ALL.map(|place| (place, count(place)));
        let places = places.into_iter().filter(|(_, count)| 0 < *count);
        let places =
            places.map(|(place, count)| chip(writing.place_count(place, count), Some(place)));
        let places: Vec<_> = places.collect();
        view! { {chip(format!("{} ({all})", say.breeder_all()), None)} {places} }
    });
    let found = Memo::new(move |_| {
        rows.with(|rows| {
            let chicks = rows.iter().map(|(row, _)| (row.species, row.hatched));
            let clutches = clutches(chicks);
            let mut species: Vec<Species> = Species::ALL.to_vec();
            species.retain(|species| rows.iter().any(|(row, _)| row.species == *species));
            (clutches, species)
        })
    });
    let selects = live(move || {
        let (clutches, species) = found.get();
        let choose_clutch = {
            let clutches = clutches.clone();
            move |event| {
                let chosen = chosen(&clutches, &event_target_value(&event));
                filter.update(|filter| filter.clutch = chosen);
            }
        };
        let choose_species = {
            let species = species.clone();
            move |event| {
                let chosen = chosen(&species, &event_target_value(&event));
                filter.update(|filter| filter.species = chosen);
            }
        };
        let of_clutch = options(&clutches, |clutch: &Clutch| writing.clutch(*clutch));
        let of_species = options(&species, |species: &Species| {
            say.species(*species).to_owned()
        });
        let clutch = (1 < clutches.len()).then(|| {
            view! {
                <div class="field">
                    <label for="filter-clutch">{say.breeder_filter_clutch()}</label>
                    <select id="filter-clutch" on:change=choose_clutch>
                        <option value="">{say.breeder_all_clutches()}</option>
                        {of_clutch}
                    </select>
                </div>
            }
        });
        let species = (1 < species.len()).then(|| {
            view! {
                <div class="field">
                    <label for="filter-species">{say.breeder_filter_species()}</label>
                    <select id="filter-species" on:change=choose_species>
                        <option value="">{say.breeder_all_species()}</option>
                        {of_species}
                    </select>
                </div>
            }
        });
        let has_clutch = clutch.is_some();
        (has_clutch || species.is_some()).then(|| {
            view! {
                <details class="fold">
                <summary>{say.breeder_filters()}</summary>
                <div class="filters">{clutch} {species}</div>
            </details>
            }
        })
    });
    view! {
        <div class="chips">{chips}</div>
        {selects}
    }
}

fn chosen<T: Copy>(items: &[T], value: &str) -> Option<T> {
    let place: usize = value.parse().ok()?;
    items.get(place).copied()
}

fn options<T>(items: &[T], word: impl Fn(&T) -> String) -> Vec<AnyView> {
    let options = items.iter().enumerate().map(|(place, item)| {
        view! { <option value=place.to_string()>{word(item)}</option> }.into_any()
    });
    options.collect()
}

/// Cards: who needs a call, then the groups. Beside the chosen chick its card is marked.
fn cards(
    state: AppState,
    rows: &[Told],
    is_one_group: bool,
    is_beside: bool,
) -> impl IntoView + use<> {
    let say = state.language();
    let (need, others): (Vec<&Told>, Vec<&Told>) =
        rows.iter().partition(|(row, _)| row.needs_call());
    let section = |title: String, rows: &[&Told]| {
        let cards = rows
            .iter()
            .map(|told| card(state, told, is_beside))
            .collect::<Vec<_>>();
        (!cards.is_empty()).then(|| {
            view! {
                <section class="chick-group">
                    <h2>{title}</h2>
                    <ul class="plain-list">{cards}</ul>
                </section>
            }
        })
    };
    let has_need = !need.is_empty();
    let need = section(say.breeder_need().to_owned(), &need);
    let rest = if is_one_group {
        vec![section(say.breeder_others().to_owned(), &others)]
    } else {
        let groups = Place::ALL.map(|place| {
            let of: Vec<&Told> = others
                .iter()
                .copied()
                .filter(|(row, _)| row.place == place)
                .collect();
            section(say.place(place).to_owned(), &of)
        });
        groups.into_iter().collect()
    };
    let calm = (!has_need && rows.iter().any(|(row, _)| row.place.is_elsewhere()))
        .then(|| view! { <p class="hint">{say.breeder_no_need()}</p> });
    view! { {need} {calm} {rest} }
}

/// Puts a chick on screen and opens its page; where there is room it is shown beside the list.
fn open(state: AppState, row: &BreederRow) -> impl Fn(web_sys::MouseEvent) + use<> {
    let id = row.row.chick;
    move |_| {
        state.show_chick(id);
        if !platform::is_wide() {
            state.go(Route::Chick);
        }
    }
}

fn day_and_owner(state: AppState, row: &BreederRow) -> String {
    let day = row
        .placed_days
        .map(|days| state.writing_now().placed_day(days));
    day.map(|day| format!(" {day}")).unwrap_or_default()
}

fn card(state: AppState, (row, beside): &Told, is_beside: bool) -> impl IntoView + use<> {
    let writing = state.writing_now();
    let (word, reason) = writing.breeder_state(row.place, row.row.state, row.reason.as_ref());
    let has_owner = !row.owner.is_empty() || !row.owner_number.is_empty();
    let id = row.row.chick;
    let is_chosen = move || is_beside.then(|| (state.chick.get() == Some(id)).to_string());
    view! {
        <li class="chick-card" data-chick=row.row.name.clone() data-chosen=is_chosen>
            <button type="button" class="chick-card__open" aria-pressed=is_chosen on:click=open(state, row)>
                {mark(row)}
                <span class="chick-card__words">
                    <span>
                        <strong class="chick-card__name">{name_shown(&row.row.name)}</strong>
                        " " <bdi class="beside-name">{beside.clone()}</bdi>
                        <span class="hint">{day_and_owner(state, row)}</span>
                    </span>
                    <span class="hint"><bdi>{of_bird(state, row)}</bdi></span>
                    <span data-state="true"><strong>{word}</strong> " " {reason}</span>
                    <span class="hint">{facts(state, row)}</span>
                </span>
            </button>
            <div class="chick-card__side">
                {curve(row.curve.as_ref())}
                {has_owner.then(|| owner_call(state, row))}
            </div>
        </li>
    }
}

fn table(state: AppState, rows: &[Told]) -> impl IntoView + use<> {
    let say = state.language();
    let headings = [
        say.breeder_column_chick(),
        say.breeder_owner(),
        say.breeder_column_stage(),
        say.breeder_column_days(),
        say.breeder_column_weight(),
        say.breeder_column_change(),
        say.breeder_column_eaten(),
        say.breeder_column_report(),
        say.breeder_column_plan(),
        say.breeder_column_vet(),
    ];
    let headings = headings.map(|heading| view! { <th scope="col">{heading}</th> });
    let lines: Vec<_> = rows.iter().map(|told| line(state, told)).collect();
    view! {
        <div class="chick-table__frame" tabindex="0" role="region" aria-label=say.breeder_title()>
        <table class="chick-table">
            <caption class="only-read">{say.breeder_title()}</caption>
            <thead><tr>{headings.collect_view()}</tr></thead>
            <tbody>{lines}</tbody>
        </table>
        </div>
        <p class="hint">{say.breeder_sorted()}</p>
    }
}

fn line(state: AppState, (row, beside): &Told) -> impl IntoView + use<> {
    let writing = state.writing_now();
    let (word, reason) = writing.breeder_state(row.place, row.row.state, row.reason.as_ref());
    let id = row.row.chick;
    let is_chosen = move || (state.chick.get() == Some(id)).to_string();
    let feeds = if row.place.is_elsewhere() && row.place != Place::Archived {
        writing.stage_and_feeds(row.stage, row.row.feeds_left)
    } else {
        writing.language.place(row.place).to_lowercase()
    };
    let asks = writing.asks(row.asks);
    let report = match row.place {
        Place::WithMe | Place::Reserved => "\u{2013}".to_owned(),
        Place::OnTheWay | Place::Placed | Place::Weaned | Place::Archived => {
            writing.heard(row.row.quiet_days)
        }
    };
    let eaten = match row.place {
        Place::Placed => writing.eaten(row.eaten_pct),
        Place::WithMe | Place::Reserved | Place::OnTheWay | Place::Weaned | Place::Archived => {
            "\u{2013}".to_owned()
        }
    };
    let change = row
        .row
        .handover_loss_pct
        .map(|loss| writing.handover_change(loss));
    view! {
        <tr data-chick=row.row.name.clone() data-chosen=is_chosen>
            <th scope="row">
                <button type="button" class="chick-table__open" aria-pressed=is_chosen on:click=open(state, row)>
                    {mark(row)}
                    <span>
                        <strong class="chick-card__name">{name_shown(&row.row.name)}</strong>
                        " " <bdi class="beside-name">{beside.clone()}</bdi>
                        <span class="hint chick-table__bird"><bdi>{of_bird(state, row)}</bdi></span>
                        <span data-state="true"><strong>{word}</strong> " " {reason} " " {asks}</span>
                    </span>
                </button>
            </th>
            <td>{owner_call(state, row)}</td>
            <td>{feeds}</td>
            <td class="number">{row.placed_days.map(|days| days.to_string())}</td>
            <td class="number"><strong>{row.weight.map(|weight| writing.mass(weight))}</strong></td>
            <td class="number"><span class="change-and-curve">{change} {curve(row.curve.as_ref())}</span></td>
            <td class="number">{eaten}</td>
            <td>{report}</td>
            <td>{writing.plan_held(row.row.plan.number, row.is_plan_current)}</td>
            <td>{vet_word(state, row)}</td>
        </tr>
    }
}

/// Every chick as one table for a spreadsheet, whatever is filtered.
fn csv(state: AppState, rows: Memo<Vec<Told>>) -> impl IntoView {
    let say = state.language();
    let delivery = FileDelivery::new(say);
    let make = move || {
        let rows: Vec<BreederRow> = rows
            .get_untracked()
            .into_iter()
            .map(|(row, _)| row)
            .collect();
        let text = chicks_csv(state.writing_now(), &rows);
        let now = state.now.get_untracked();
        let today = state.zone.with_untracked(|zone| zone.lived(now)).day;
        let kind = FileKind::Chicks;
        platform::text_file(&file_name("", kind, today), kind.media_type(), &text)
    };
    view! {
        <p class="hint">{say.breeder_filter_hint()}</p>
        <div class="acts">{delivery.button(say.breeder_table(), true, Box::new(make))}</div>
        {delivery.answer()}
    }
}

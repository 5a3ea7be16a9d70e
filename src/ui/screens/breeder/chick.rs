//! One chick of a breeder: how it is, its chart, its owner's questions, her card and her remarks.

use leptos::prelude::*;

use crate::domain::homecoming::placement::Place;
use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::{Carer, Change, ChickId, Entry};
use crate::domain::outlook::{Outlook, outlook};
use crate::domain::plan::care_plan::{CarePlan, PlanFault, is_phone_number};
use crate::share::breeder_table::BreederRow;
use crate::store::setting::Setting;
use crate::ui::clock;
use crate::ui::parts::button::{button, main_button};
use crate::ui::parts::call_card::tel_link;
use crate::ui::parts::chart_card::ChartCard;
use crate::ui::parts::chick_name::name_shown;
use crate::ui::parts::field::FieldKind;
use crate::ui::parts::live::live;
use crate::ui::parts::page::Page;
use crate::ui::parts::text_area::TextArea;
use crate::ui::route::Route;
use crate::ui::screens::breeder::row::{facts, mark, of_bird, owner_call, rows_now};
use crate::ui::screens::handover::{card_of, proposals_of, told_of};
use crate::ui::screens::plan_form::text::{Text, TextField};
use crate::ui::screens::weight::chart;
use crate::ui::state::AppState;
use crate::words::names::isolated;

/// The page of the chick on screen.
#[component]
pub fn ChickScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    state.follow_what_left();
    let rows = Memo::new_with_compare(
        move |_| {
            state.journal.track();
            state.of_phone.track();
            rows_now(state)
        },
        |_, _| true,
    );
    let dock = move || dock(state, rows);
    // Its name, and what tells it from its namesakes, as a text: the heading takes no markup.
    let title = untrack(|| told_now(state, rows)).map(|(row, beside)| {
        format!("{} {beside}", isolated(&row.row.name))
            .trim()
            .to_owned()
    });
    let title = title.unwrap_or_else(|| say.breeder_column_chick().to_owned());
    view! {
        <Page title back=Route::Chicks dock>
            {chosen_chick(state, rows)}
        </Page>
    }
}

type Told = (BreederRow, String);

fn told_now(state: AppState, rows: Memo<Vec<Told>>) -> Option<Told> {
    let id = state.chick.get()?;
    rows.with(|rows| rows.iter().find(|(row, _)| row.row.chick == id).cloned())
}

/// What is pressed on the page: sending the card of a chick that is still here, calling the owner of another.
fn dock(state: AppState, rows: Memo<Vec<Told>>) -> AnyView {
    let say = state.language();
    let acts = live(move || {
        let (row, _) = told_now(state, rows)?;
        Some(if row.place.is_elsewhere() {
            let number = row.owner_number.clone();
            let call = (!number.is_empty()).then(|| view! {
                <a class="button button--main" href=tel_link(&number)>{say.breeder_call()} " " {name_shown(&row.owner)}</a>
            });
            view! {
                <a class="button" href=Route::Reports.to_hash()>{say.breeder_import()}</a>
                {call}
            }
            .into_any()
        } else {
            view! {
                <a class="button" href=Route::Weigh.to_hash()>{say.breeder_weigh()}</a>
                {main_button(say.breeder_send_card(), move |_| show_card())}
            }
            .into_any()
        })
    });
    view! { {acts} }.into_any()
}

/// Opens the card and brings it into view.
fn show_card() {
    let card = document().query_selector(".card-of details").ok().flatten();
    if let Some(card) = card {
        // An attribute that cannot be set leaves the card to be opened by its own line.
        drop(card.set_attribute("open", ""));
        card.scroll_into_view();
    }
}

/// How the chick on screen is as of now, or of its last report; follows.
fn outlook_shown(state: AppState) -> Option<Outlook> {
    state.outlook.get().map(|outlook| outlook.as_ref().clone())
}

/// The chick on screen, for its page or beside the table.
pub fn chosen_chick(state: AppState, rows: Memo<Vec<Told>>) -> impl IntoView {
    let writing = state.writing_now();
    let chart = Memo::new(move |_| {
        let outlook = state.outlook.get()?;
        chart(&outlook, writing)
    });
    let told = Memo::new(move |_| told_now(state, rows));
    let head = live(move || told.get().map(|(row, beside)| head(state, &row, beside)));
    let questions = live(move || {
        state.journal.track();
        let outlook = outlook_shown(state)?;
        Some(view! { {told_of(state, &outlook)} {proposals_of(state, &outlook)} })
    });
    let has_chart = Memo::new(move |_| chart.with(Option::is_some));
    let drawn = live(move || {
        has_chart
            .get()
            .then(|| view! { <ChartCard chart>""</ChartCard> })
    });
    // Built anew for another chick or plan only, so that what is opened or half typed stays.
    let chick = Memo::new(move |_| state.chick.get());
    let place = Memo::new(move |_| told.get().map(|(row, _)| row.place));
    let rest = live(move || {
        let (id, place) = (chick.get()?, place.get()?);
        Some(view! { {card(state, id, place)} {acts(state, id, place)} })
    });
    let remarks = live(move || chick.get().map(|id| remarks(state, id)));
    view! {
        <div class="chosen-chick">
            {head}
            {questions}
            {drawn}
            {rest}
            {remarks}
        </div>
    }
}

fn head(state: AppState, row: &BreederRow, beside: String) -> impl IntoView + use<> {
    let writing = state.writing_now();
    let say = writing.language;
    let (word, reason) = writing.breeder_state(row.place, row.row.state, row.reason.as_ref());
    let day = row
        .placed_days
        .map(|days| format!(", {}", writing.placed_day(days)));
    let has_owner = !row.owner.is_empty() || !row.owner_number.is_empty();
    let owner = has_owner.then(|| view! {
        <p class="chosen-chick__owner">{say.breeder_owner()} ": " {owner_call(state, row)} {day}</p>
    });
    view! {
        <header class="chosen-chick__head">
            <h2>{name_shown(&row.row.name)} " " <bdi class="beside-name">{beside}</bdi></h2>
            <p class="hint"><bdi>{of_bird(state, row)}</bdi></p>
            {owner}
        </header>
        <p class="chosen-chick__state">
            {mark(row)}
            <span data-state="true"><strong>{word}</strong> " " {reason}</span>
        </p>
        <p class="hint">{facts(state, row)}</p>
    }
}

/// The card to be sent, folded until it is asked for.
fn card(state: AppState, id: ChickId, place: Place) -> Option<AnyView> {
    let is_here = match place {
        Place::WithMe | Place::Reserved | Place::OnTheWay | Place::Placed => true,
        Place::Weaned | Place::Archived => false,
    };
    let now = clock::now();
    let judged = state.journal.with_untracked(|journal| {
        state
            .zone
            .with_untracked(|zone| outlook(now, journal, id, zone))
    });
    let judged = judged.filter(|_| is_here)?;
    Some(view! { <div class="card-of">{card_of(state, &judged)}</div> }.into_any())
}

fn acts(state: AppState, id: ChickId, place: Place) -> impl IntoView {
    let say = state.language();
    let is_put_away = state.of_phone.at_untracked(Setting::PutAway, id).is_some();
    let put_away = move |_| {
        let at = (!is_put_away).then(clock::now);
        state.set_of_phone(Setting::PutAway, id, at);
    };
    let put_away_word = if is_put_away {
        say.breeder_take_out()
    } else {
        say.breeder_put_away()
    };
    let left = move |_| {
        let (to, name) = (Carer::Owner, owner_of(state, id));
        if state.note(
            Change::HandedOver { to, name },
            say.breeder_left_noted().to_owned(),
        ) {
            state.follow_what_left();
        }
    };
    let template = move |_| {
        let chick = state
            .journal
            .with_untracked(|journal| Chick::from_journal(journal, id));
        if let Some(chick) = chick {
            state.copies.remember_template(&chick.plan.as_template());
            state.say(say.breeder_template_saved().to_owned(), Vec::new());
        }
    };
    let is_here = !place.is_elsewhere();
    let word = if is_here {
        say.breeder_reserve()
    } else {
        say.breeder_its_owner()
    };
    let reserve = (place != Place::Archived).then(|| reserve(state, id, word));
    let leave = is_here.then(|| button(say.breeder_left(), left));
    view! {
        {reserve}
        <div class="acts">
            {leave}
            <a class="button" href=Route::Plan.to_hash()>{say.breeder_its_plan()}</a>
            <a class="button" href=Route::Journal.to_hash()>{say.breeder_its_journal()}</a>
            <a class="button" href=Route::Handover.to_hash()>{say.breeder_its_report()}</a>
            {button(say.breeder_use_template(), template)}
            {button(put_away_word, put_away)}
        </div>
        <p class="hint">{say.breeder_put_away_hint()}</p>
    }
}

fn owner_of(state: AppState, id: ChickId) -> String {
    let chick = state
        .journal
        .with_untracked(|journal| Chick::from_journal(journal, id));
    chick.map(|chick| chick.plan.owner_name).unwrap_or_default()
}

/// Who takes or has the chick: a name reserves one that is still here. The owner's own word wins later.
fn reserve(state: AppState, id: ChickId, word: &'static str) -> impl IntoView {
    let say = state.language();
    let chick = state
        .journal
        .with_untracked(|journal| Chick::from_journal(journal, id));
    let plan = chick.and_then(|chick| chick.plans.as_left_by(state.author(id)));
    let typed = |of: fn(&CarePlan) -> String| Text::new(plan.as_ref().map(of).unwrap_or_default());
    let (name, number) = (
        typed(|plan| plan.owner_name.clone()),
        typed(|plan| plan.owner_number.clone()),
    );
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        number.fault.set(String::new());
        if !number.is_empty() && !is_phone_number(&number.get()) {
            return number
                .fault
                .set(say.plan_fault(PlanFault::ContactNumber).to_owned());
        }
        let chick = state
            .journal
            .with_untracked(|journal| Chick::from_journal(journal, id));
        let Some(chick) = chick else { return };
        let left = chick.plans.as_left_by(state.author(id));
        let mut plan = left.unwrap_or(chick.plan);
        (plan.owner_name, plan.owner_number) = (name.get(), number.get());
        match state.set_plan(id, &plan) {
            Ok(ids) => state.say(say.breeder_reserved().to_owned(), ids),
            Err(refusal) => state.say_refusal(&refusal),
        }
    };
    view! {
        <details class="group">
            <summary>{word}</summary>
            <form class="form" on:submit=keep novalidate>
                <TextField id="owner" label=say.breeder_owner() text=name kind=FieldKind::Text />
                <TextField id="owner-number" label=say.plan_contact_number() text=number kind=FieldKind::Telephone />
                <button type="submit" class="button">{say.breeder_save()}</button>
            </form>
        </details>
    }
}

/// The breeder's own remarks, latest first, and the field for a new one.
fn remarks(state: AppState, id: ChickId) -> impl IntoView {
    let say = state.language();
    let text = RwSignal::new(String::new());
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let typed = text.get_untracked().trim().to_owned();
        if !typed.is_empty()
            && state.note(
                Change::Remarked { text: typed },
                say.breeder_remarks().to_owned(),
            )
        {
            text.set(String::new());
        }
    };
    let own = live(move || {
        let writing = state.writing_now();
        state.journal.with(|journal| {
            let dead = journal.retracted();
            let of_chick = journal.of_chick(id).into_iter().rev();
            let alive = of_chick.filter(|entry: &&Entry| !dead.contains(&entry.id));
            let lines = alive.filter_map(|entry| {
                let Change::Remarked { text } = &entry.change else {
                    return None;
                };
                let day = writing.day(entry.lived().day);
                Some(view! { <li><span class="hint">{day}</span> " " <bdi>{text.clone()}</bdi></li> })
            });
            lines.collect::<Vec<_>>()
        })
    });
    view! {
        <section class="group" data-remarks="true">
            <h2>{say.breeder_remarks()}</h2>
            <p class="hint">{say.breeder_remarks_hint()}</p>
            <ul class="plain-list">{own}</ul>
            <form class="form" on:submit=keep novalidate>
                <TextArea id="remark" label=say.breeder_remark() rows="2" text />
                <button type="submit" class="button">{say.breeder_remark_keep()}</button>
            </form>
        </section>
    }
}

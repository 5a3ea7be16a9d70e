//! The weight: one sentence, the chart, the figures, and the table of all readings.

use std::sync::Arc;

use leptos::prelude::*;

use crate::domain::journal::entries::CropAtWeighing;
use crate::domain::outlook::Outlook;
use crate::domain::time::moment::Moment;
use crate::share::weight_picture::{chart_meaning, chart_svg};
use crate::ui::parts::page::Heading;
use crate::ui::route::Route;
use crate::ui::screens::weight_picture::PictureToSend;
use crate::ui::state::AppState;
use crate::words::format::Writing;

/// Weight curve and table.
#[component]
pub fn WeightScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let body = move || {
        state.outlook.get().map(|outlook| {
            if outlook.chick.weighings.is_empty() {
                view! { <p>{say.weight_none()}</p> }.into_any()
            } else {
                view! { <WeightBody outlook /> }.into_any()
            }
        })
    };
    let has_weights = Memo::new(move |_| {
        let outlook = state.outlook.get();
        outlook.is_some_and(|outlook| !outlook.chick.weighings.is_empty())
    });
    let picture = move || has_weights.get().then(|| view! { <PictureToSend /> });
    view! {
        <Heading text=say.weight_title() />
        {body}
        {picture}
        <p class="acts">
            <a class="button button--main" href=Route::Weigh.to_hash()>{say.now_weigh()}</a>
        </p>
    }
}

#[component]
fn WeightBody(outlook: Arc<Outlook>) -> impl IntoView {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    let meaning = chart_meaning(writing, &outlook);
    let table = table(&outlook, writing);
    view! {
        <figure class="chart">
            <figcaption>{meaning}</figcaption>
            <div class="chart__picture" role="img" aria-label=say.weight_chart() inner_html=chart_svg(writing, &outlook).unwrap_or_default()></div>
        </figure>
        <ul class="plain-list">
            {figures(&outlook, writing).into_iter().map(|figure| view! { <li>{figure}</li> }).collect_view()}
        </ul>
        <p class="hint">{say.weight_key()}</p>
        <h2>{say.weight_table()}</h2>
        {table}
    }
}

/// Pace, chances and the day the limit would be reached, as sentences.
fn figures(outlook: &Outlook, writing: Writing) -> Vec<String> {
    let trend = &outlook.weight.trend;
    let pace = trend.slope.map(|slope| writing.pace(slope.g_per_day.value));
    let level = trend.now.map(|now| writing.level_now(now.grams, now.sd_g));
    let peak = trend
        .peak_loss_pct
        .map(|loss| writing.below_peak(loss.value));
    let chances = trend
        .below_limit
        .map(|below| writing.chances_below_limit(below.now, below.in_days));
    let crossing = trend.crossing.map(|crossing| {
        let day = |moment: Moment| outlook.day_of(moment);
        writing.crossing(
            day(crossing.earliest),
            day(crossing.likely),
            crossing.latest.map(day),
        )
    });
    let too_few = trend
        .now
        .is_none()
        .then(|| writing.language.weight_too_few().to_owned());
    let growth = writing.growth(trend);
    [level, pace, peak, chances, crossing, too_few, growth]
        .into_iter()
        .flatten()
        .collect()
}

fn table(outlook: &Outlook, writing: Writing) -> impl IntoView + use<> {
    let state = AppState::here();
    let say = writing.language;
    let reference = outlook
        .chick
        .plan
        .reference
        .map(|reference| reference.weight);
    let rows = outlook.chick.weighings.iter().rev().map(|weighing| {
        let weight = weighing.what.weight;
        let loss = reference.and_then(|reference| weight.since(reference).loss_pct_of(reference));
        let is_empty = weighing.what.crop == CropAtWeighing::Empty;
        let against = loss.filter(|_| is_empty).map(|loss| writing.against_handover(loss));
        let id = weighing.id;
        let when = writing.lived(weighing.lived());
        let label = format!("{} {when}", say.remove());
        view! {
            <tr>
                <th scope="row">{when}</th>
                <td class="number">{writing.mass(weight)}</td>
                <td>
                    {say.crop_at_weighing(weighing.what.crop)}
                    {against.map(|against| view! { <br /> {against} })}
                </td>
                <td>
                    <button type="button" class="button button--icon" aria-label=label on:click=move |_| state.take_back(&[id])>
                        <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
                            <path d="M6 6L18 18M18 6L6 18"></path>
                        </svg>
                    </button>
                </td>
            </tr>
        }
    });
    let rows = rows.collect_view();
    view! {
        <div class="table-frame" tabindex="0" role="region" aria-label=say.weight_table()>
            <table class="table">
                <thead>
                    <tr>
                        <th scope="col">{say.weight_when()}</th>
                        <th scope="col">{say.weight_weight()}</th>
                        <th scope="col">{say.weight_against()}</th>
                        <td></td>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
}

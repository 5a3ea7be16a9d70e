//! The weight: one sentence, the chart, the figures, and the table of all readings.

use std::sync::Arc;

use leptos::prelude::*;

use crate::domain::chick::{Noted, Weighing};
use crate::domain::count::rounded;
use crate::domain::journal::CropAtWeighing;
use crate::domain::moment::{Day, Moment};
use crate::domain::outlook::Outlook;
use crate::domain::units::Grams;
use crate::share::weight_chart::{Dot, WeightChart};
use crate::ui::parts::page::Heading;
use crate::ui::route::Route;
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
    view! {
        <Heading text=say.weight_title() />
        {body}
        <p class="acts">
            <a class="button button--main" href=Route::Weigh.to_hash()>{say.now_weigh()}</a>
        </p>
    }
}

#[component]
fn WeightBody(outlook: Arc<Outlook>) -> impl IntoView {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    let limit = outlook.chick.plan.loss_limit.as_pct();
    let meaning = outlook.weight.latest.as_ref().map(|latest| {
        writing.weight_meaning(
            latest.what.weight,
            outlook.weight.handover_loss_pct,
            limit,
            outlook.level,
        )
    });
    let table = table(&outlook, writing);
    view! {
        <figure class="chart">
            <figcaption>{meaning}</figcaption>
            <div class="chart__picture" role="img" aria-label=say.weight_chart() inner_html=chart_svg(&outlook, writing)></div>
        </figure>
        <h2>{say.weight_table()}</h2>
        {table}
    }
}

/// The chart's picture; empty when there is nothing to draw. Holds numbers and dates only.
fn chart_svg(outlook: &Outlook, writing: Writing) -> String {
    let chick = &outlook.chick;
    let reference = chick.plan.reference;
    let first_reading = chick
        .weighings
        .first()
        .map_or(outlook.lived.day, |weighing| weighing.lived().day);
    let first_day = reference.map_or(first_reading, |reference| reference.day.min(first_reading));
    let zone_start = |day: Day| i64::from(day.number()) * 86_400;
    let day_of = |weighing: &Noted<Weighing>| {
        let lived = weighing.lived();
        let minutes =
            (zone_start(lived.day) - zone_start(first_day)) / 60 + i64::from(lived.time.minutes());
        Moment::EARLIEST
            .plus_minutes(minutes)
            .days_since(Moment::EARLIEST)
    };
    let readings = chick.weighings.iter().map(|weighing| {
        let dot = match weighing.what.crop {
            CropAtWeighing::Empty => Dot::Empty,
            CropAtWeighing::AfterFeed | CropAtWeighing::NotSure => Dot::AfterFeed,
        };
        (day_of(weighing), weighing.what.weight.as_g(), dot)
    });
    let handover = reference.map(|reference| reference.weight.as_g());
    let limit_share = 1.0 - chick.plan.loss_limit.as_pct() / 100.0;
    let chart = WeightChart {
        readings: readings.collect(),
        handover,
        limit: handover.map(|grams| grams * limit_share),
        last_day: f64::from(outlook.lived.day.since(first_day) + 1),
        ..WeightChart::default()
    };
    let day_label = |day: i32| {
        let (_, month, date) = first_day.plus(day).date();
        format!("{date}.{month}.")
    };
    let weight_label = |grams: f64| writing.mass_number(Grams::tenths_held(rounded(grams * 10.0)));
    chart.to_svg(&day_label, &weight_label).unwrap_or_default()
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
                <td>{say.crop_at_weighing(weighing.what.crop)}</td>
                <td>{against}</td>
                <td>
                    <button type="button" class="button button--small" aria-label=label on:click=move |_| state.take_back(&[id])>
                        {say.remove()}
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
                        <th scope="col">{say.weight_crop()}</th>
                        <th scope="col">{say.weight_against()}</th>
                        <td></td>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
}

//! The temperature of a cup on a line: where the aim lies, where it is, where it burns.

use leptos::prelude::*;

use crate::domain::formula::serving_heat::{BURN_C, Serving};
use crate::ui::parts::live::live;
use crate::ui::state::AppState;

/// Width of the drawing, in its own units.
const WIDTH: f64 = 312.0;
/// Room at both ends.
const ENDS: f64 = 8.0;
/// Degrees that the line shows on either side of aim and burn.
const ROOM_C: f64 = 3.0;

/// The line; its words say the same.
#[component]
pub fn HeatScale(
    /// The plan's serving window.
    serving: Serving,
    /// The last reading, °C.
    #[prop(into)]
    reading: Signal<Option<f64>>,
) -> impl IntoView {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    let (low, high) = (serving.from_c - ROOM_C, BURN_C + ROOM_C / 2.0);
    let x = move |celsius: f64| {
        let share = ((celsius - low) / (high - low)).clamp(0.0, 1.0);
        ENDS + share * (WIDTH - 2.0 * ENDS)
    };
    let (from, to, burn) = (x(serving.from_c), x(serving.to_c), x(BURN_C));
    let mark = live(move || {
        reading.get().map(|celsius| {
            let at = x(celsius);
            let path = format!("M{at} 46V18M{} 6H{}L{at} 18Z", at - 8.0, at + 8.0);
            view! { <path class="heat__mark" d=path></path> }
        })
    });
    view! {
        <div class="heat">
            <svg class="heat__line" viewBox=format!("0 0 {WIDTH} 56") aria-hidden="true">
                <path class="heat__bar" d=format!("M{ENDS} 34H{}", WIDTH - ENDS)></path>
                <path class="heat__aim" d=format!("M{from} 34H{to}")></path>
                <path class="heat__burn" d=format!("M{burn} 20V48")></path>
                {mark}
            </svg>
            <p class="heat__words">
                <span>{say.guide_scale_cool()}</span>
                <strong>{say.guide_scale_aim()}</strong>
                <span class="heat__burns">{writing.burns_from()}</span>
            </p>
        </div>
    }
}

//! The weight chart, read point by point: by touch, by the arrow keys, by two buttons.

use leptos::prelude::*;
use wasm_bindgen::JsCast;

use crate::share::weight_chart::SIZE;
use crate::ui::parts::live::live;
use crate::ui::state::AppState;

/// One weighing on the chart, ready to show.
#[derive(Debug, Clone, PartialEq)]
pub struct ChartPoint {
    /// Where it stands, in the picture's own units.
    pub place: (f64, f64),
    /// Its day and weight.
    pub title: String,
    /// What changed since the one before, or what there is to say of it.
    pub detail: String,
}

/// A chart, ready to show.
#[derive(Debug, Clone, PartialEq)]
pub struct ChartShown {
    /// The drawing.
    pub svg: String,
    /// Its weighings, from the first to the last.
    pub points: Vec<ChartPoint>,
    /// Feeds dropped, one a line.
    pub drops: Vec<String>,
}

/// The point that is nearest to a place along the chart.
fn nearest(points: &[ChartPoint], x: f64) -> Option<usize> {
    let far = |point: &ChartPoint| (point.place.0 - x).abs();
    let places = points.iter().map(far).enumerate();
    let nearest = places.min_by(|one, other| one.1.total_cmp(&other.1));
    nearest.map(|(place, _)| place)
}

/// Where a finger is along the chart, in the picture's own units.
fn along(event: &web_sys::PointerEvent) -> Option<f64> {
    let target = event.current_target()?;
    let target: web_sys::Element = target.dyn_into().ok()?;
    let frame = target.get_bounding_client_rect();
    let share = (f64::from(event.client_x()) - frame.left()) / frame.width();
    Some(share * f64::from(SIZE.0))
}

/// Which weighing is pointed at; the last one until somebody points.
#[derive(Debug, Clone, Copy)]
struct Pointer {
    chart: Signal<Option<ChartShown>>,
    pointed: RwSignal<Option<usize>>,
}

impl Pointer {
    fn last(self) -> usize {
        let points = |chart: &ChartShown| chart.points.len();
        let count = self.chart.with(|chart| chart.as_ref().map_or(0, points));
        count.saturating_sub(1)
    }

    fn place(self) -> usize {
        let last = self.last();
        self.pointed.get().unwrap_or(last).min(last)
    }

    fn point(self) -> Option<ChartPoint> {
        let place = self.place();
        self.chart
            .with(|chart| chart.as_ref()?.points.get(place).cloned())
    }

    fn earlier(self) {
        self.pointed
            .set(Some(untrack(|| self.place()).saturating_sub(1)));
    }

    fn later(self) {
        let (place, last) = untrack(|| (self.place(), self.last()));
        self.pointed.set(Some((place + 1).min(last)));
    }

    fn by_key(self, event: &web_sys::KeyboardEvent) {
        match event.key().as_str() {
            "ArrowLeft" => self.earlier(),
            "ArrowRight" => self.later(),
            "Home" => self.pointed.set(Some(0)),
            "End" => self.pointed.set(Some(untrack(|| self.last()))),
            _ => return,
        }
        event.prevent_default();
    }

    fn by_finger(self, event: &web_sys::PointerEvent) {
        let found = self
            .chart
            .with_untracked(|chart| nearest(&chart.as_ref()?.points, along(event)?));
        if found.is_some() {
            self.pointed.set(found);
        }
    }
}

/// The chart with the reading that is pointed at above it, never under the finger.
#[component]
pub fn ChartCard(
    /// What it shows; nothing before the first weighing.
    #[prop(into)]
    chart: Signal<Option<ChartShown>>,
    /// What stands below it.
    children: Children,
) -> impl IntoView {
    let say = AppState::here().language();
    let pointer = Pointer {
        chart,
        pointed: RwSignal::new(None),
    };
    let svg = Memo::new(move |_| {
        let svg = |chart: &ChartShown| chart.svg.clone();
        chart.with(|chart| chart.as_ref().map(svg).unwrap_or_default())
    });
    let cursor = live(move || {
        pointer.pointed.get()?;
        let (x, y) = pointer.point()?.place;
        let foot = SIZE.1.saturating_sub(32);
        Some(view! {
            <path class="chart__line" d=format!("M{x} 20V{foot}")></path>
            <circle class="chart__ring" cx=x cy=y r="10"></circle>
        })
    });
    let drops = live(move || {
        let drops = chart.with(|chart| chart.as_ref().map(|chart| chart.drops.clone()));
        let drops = drops.unwrap_or_default().into_iter();
        let drops = drops.map(|drop| {
            view! {
                <p class="chart__drop hint">
                    <span class="chart__mark" aria-hidden="true"><svg viewBox="0 0 12 10"><path d="M0 0H12L6 10z"></path></svg></span>
                    {drop}
                </p>
            }
        });
        drops.collect_view()
    });
    let moved = move |event: web_sys::PointerEvent| {
        if event.buttons() != 0 {
            pointer.by_finger(&event);
        }
    };
    view! {
        <section class="chart" aria-label=say.weight_chart()>
            <ReadOut pointer />
            <div
                class="chart__picture"
                role="group"
                tabindex="0"
                aria-label=say.weight_steps()
                on:keydown=move |event| pointer.by_key(&event)
                on:pointerdown=move |event| pointer.by_finger(&event)
                on:pointermove=moved
            >
                <div role="img" aria-label=say.weight_chart() inner_html=svg></div>
                <svg class="chart__cursor" viewBox=format!("0 0 {} {}", SIZE.0, SIZE.1) aria-hidden="true">{cursor}</svg>
            </div>
            {drops}
            {children()}
        </section>
    }
}

/// The weighing that is pointed at, and a step to either side.
#[component]
fn ReadOut(pointer: Pointer) -> impl IntoView {
    let say = AppState::here().language();
    let title = live(move || pointer.point().map(|point| point.title));
    let detail = live(move || pointer.point().map(|point| point.detail));
    let is_first = move || (pointer.place() == 0).to_string();
    let is_last = move || (pointer.place() >= pointer.last()).to_string();
    view! {
        <div class="chart__read">
            <button
                type="button"
                class="chart__step"
                aria-label=say.weight_earlier()
                aria-disabled=is_first
                on:click=move |_| pointer.earlier()
            >
                <svg class="icon" viewBox="0 0 24 24" aria-hidden="true"><path d="M15 5L8 12L15 19"></path></svg>
            </button>
            <p class="chart__point" role="status">
                <strong>{title}</strong>
                <span>{detail}</span>
            </p>
            <button
                type="button"
                class="chart__step"
                aria-label=say.weight_later()
                aria-disabled=is_last
                on:click=move |_| pointer.later()
            >
                <svg class="icon" viewBox="0 0 24 24" aria-hidden="true"><path d="M9 5L16 12L9 19"></path></svg>
            </button>
        </div>
    }
}

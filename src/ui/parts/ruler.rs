//! A weight between the call line and the handover weight, as a line with marks.

use leptos::prelude::*;

use crate::domain::quantity::order::sorted_by;
use crate::domain::quantity::units::Grams;
use crate::ui::state::AppState;

/// What a mark on the ruler stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MarkKind {
    /// The weight at which the plan wants a call.
    Call,
    /// The handover weight.
    Handover,
    /// The weighing before.
    Before,
    /// This weighing.
    Now,
}

impl MarkKind {
    /// Its name in attributes that the style sheet looks at.
    const fn name(self) -> &'static str {
        match self {
            Self::Call => "call",
            Self::Handover => "handover",
            Self::Before => "before",
            Self::Now => "now",
        }
    }
}

/// A weight on the ruler.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Mark {
    /// What it stands for.
    pub kind: MarkKind,
    /// The weight.
    pub weight: Grams,
}

/// Width of the drawing, in its own units.
const WIDTH: f64 = 328.0;
/// Room at both ends.
const ENDS: f64 = 26.0;
/// Height of the line.
const LINE: f64 = 28.0;

/// Where the weights lie along the line.
struct Along {
    low: f64,
    high: f64,
}

impl Along {
    fn of(marks: &[Mark]) -> Self {
        let grams = marks.iter().map(|mark| mark.weight.as_g());
        let widened = |(low, high): (f64, f64), grams: f64| (low.min(grams), high.max(grams));
        let (low, high) = grams.fold((f64::INFINITY, f64::NEG_INFINITY), widened);
        Self { low, high }
    }

    fn x(&self, weight: Grams) -> f64 {
        let span = self.high - self.low;
        let share = if span > 0.0 {
            (weight.as_g() - self.low) / span
        } else {
            0.5
        };
        ENDS + share * (WIDTH - 2.0 * ENDS)
    }
}

/// The ruler, with its marks named below it in the order of their weights.
#[component]
pub fn Ruler(
    /// The marks.
    marks: Vec<Mark>,
) -> impl IntoView {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    let along = Along::of(&marks);
    let place = |kind| {
        let found = marks.iter().find(|mark| mark.kind == kind);
        found.map(|mark| along.x(mark.weight))
    };
    let call = place(MarkKind::Call).map(|x| {
        view! {
            <path class="ruler__below" d=below(x)></path>
            <path class="ruler__call" d=format!("M{x} 14V42")></path>
        }
    });
    let handover = place(MarkKind::Handover)
        .map(|x| view! { <path class="ruler__handover" d=format!("M{x} 14V42")></path> });
    let step = place(MarkKind::Before)
        .zip(place(MarkKind::Now))
        .map(|(from, to)| {
            view! {
                <path class="ruler__step" d=arrow(from, to)></path>
                <circle class="ruler__before" cx=from cy=LINE r="6"></circle>
            }
        });
    let now = place(MarkKind::Now)
        .map(|x| view! { <circle class="ruler__now" cx=x cy=LINE r="9"></circle> });
    let in_order = sorted_by(marks, |one, other| one.weight.cmp(&other.weight));
    let names = in_order.into_iter().map(|mark| {
        let word = match mark.kind {
            MarkKind::Call => say.weigh_mark_call(),
            MarkKind::Handover => say.weigh_mark_handover(),
            MarkKind::Before => say.weigh_mark_before(),
            MarkKind::Now => say.weigh_mark_now(),
        };
        view! {
            <li class="ruler__name" data-mark=mark.kind.name()>
                <strong>{writing.mass_number(mark.weight)}</strong>
                " "
                <span>{word}</span>
            </li>
        }
    });
    view! {
        <section class="ruler" aria-label=say.weigh_ruler()>
            <svg class="ruler__line" viewBox=format!("0 0 {WIDTH} 56") aria-hidden="true">
                <path class="ruler__bar" d=format!("M4 {LINE}H{}", WIDTH - 4.0)></path>
                {call}
                {handover}
                {step}
                {now}
            </svg>
            <ul class="ruler__names">{names.collect_view()}</ul>
        </section>
    }
}

/// Slanted lines from the left end to the call line.
fn below(x: f64) -> String {
    let count = ((x - 4.0) / 8.0).floor();
    let mut at = 0.0;
    let mut path = String::new();
    while at < count {
        let left = 4.0 + at * 8.0;
        path = format!("{path}M{left} 36L{} 20", left + 8.0);
        at += 1.0;
    }
    path
}

/// From the weighing before to this one; nothing where they lie too near.
fn arrow(from: f64, to: f64) -> String {
    let ahead = if to < from { -1.0 } else { 1.0 };
    if (to - from).abs() < 26.0 {
        return String::new();
    }
    let (start, end) = (from + ahead * 6.0, to - ahead * 12.0);
    let back = end - ahead * 8.0;
    format!("M{start} {LINE}H{end}M{back} 22L{end} {LINE}L{back} 34")
}

//! Day and time of an entry: now unless it is changed.

use leptos::prelude::*;

use crate::domain::moment::{Day, Moment, WallTime};
use crate::ui::clock;
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::state::AppState;

/// When something happened, as typed.
#[derive(Debug, Clone, Copy)]
pub struct WhenText {
    day: RwSignal<String>,
    time: RwSignal<String>,
    fault: RwSignal<String>,
    is_touched: RwSignal<bool>,
}

impl WhenText {
    /// Now.
    pub fn now(state: AppState) -> Self {
        let now = clock::now();
        let lived = state.zone.with_untracked(|zone| zone.lived(now));
        Self {
            day: RwSignal::new(lived.day.iso()),
            time: RwSignal::new(lived.time.text()),
            fault: RwSignal::new(String::new()),
            is_touched: RwSignal::new(false),
        }
    }

    /// The moment meant: the present one when neither field was touched. `None` when a field holds no
    /// day or time; the field then says so.
    pub fn moment(self, state: AppState) -> Option<Moment> {
        let say = state.language();
        self.fault.set(String::new());
        let now = clock::now();
        let lived = state.zone.with_untracked(|zone| zone.lived(now));
        let (day_text, time_text) = (self.day.get_untracked(), self.time.get_untracked());
        if !self.is_touched.get_untracked() {
            return Some(now);
        }
        let Some(day) = Day::parse_iso(&day_text) else {
            self.fault.set(say.fault_no_date().to_owned());
            return None;
        };
        let Some(time) = WallTime::parse(&time_text) else {
            self.fault.set(say.fault_no_time().to_owned());
            return None;
        };
        if (day, time) == (lived.day, lived.time) {
            return Some(now);
        }
        Some(state.zone.with_untracked(|zone| zone.moment_of(day, time)))
    }

    /// Says what is wrong with the time.
    pub fn say_fault(self, text: &str) {
        self.fault.set(text.to_owned());
    }
}

/// Two fields, closed until they are wanted: most entries are made at once.
#[component]
pub fn When(
    /// What they hold.
    when: WhenText,
) -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let summary = move || {
        let is_now = !when.is_touched.get();
        if is_now {
            say.when_now().to_owned()
        } else {
            format!("{} {}", when.day.get(), when.time.get())
        }
    };
    let is_open = move || !when.fault.get().is_empty();
    view! {
        <details class="when" prop:open=is_open on:input=move |_| when.is_touched.set(true)>
            <summary>{say.log_when()} ": " {summary}</summary>
            <div class="when__fields">
                <Field id="when-day" label=say.log_day() kind=FieldKind::Day text=when.day />
                <Field id="when-time" label=say.log_time() kind=FieldKind::Time text=when.time fault=when.fault />
            </div>
        </details>
    }
}

//! Day and time of an entry: now unless it is changed.

use leptos::prelude::*;

use crate::domain::time::moment::{Day, Moment, WallTime};
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
        self.fault.set(String::new());
        match self.read(state) {
            Ok(moment) => Some(moment),
            Err(fault) => {
                self.say_fault(fault);
                None
            }
        }
    }

    /// The moment meant, as long as the fields hold one; follows what is typed.
    pub fn followed(self, state: AppState) -> Option<Moment> {
        self.is_touched.track();
        self.day.track();
        self.time.track();
        self.read(state).ok()
    }

    fn read(self, state: AppState) -> Result<Moment, &'static str> {
        let say = state.language();
        let now = clock::now();
        if !self.is_touched.get_untracked() {
            return Ok(now);
        }
        let day = self.day.with_untracked(|text| Day::parse_iso(text));
        let day = day.ok_or_else(|| say.fault_no_date())?;
        let time = self.time.with_untracked(|text| WallTime::parse(text));
        let time = time.ok_or_else(|| say.fault_no_time())?;
        Ok(state.zone.with_untracked(|zone| {
            let lived = zone.lived(now);
            if (day, time) == (lived.day, lived.time) {
                now
            } else {
                zone.moment_of(day, time)
            }
        }))
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
    /// Whether it is as small as a chip beside a heading.
    #[prop(optional)]
    is_chip: bool,
) -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let summary = move || {
        let is_now = !when.is_touched.get();
        if is_now && is_chip {
            let time = state.zone.with(|zone| zone.lived(state.now.get())).time;
            format!("{}, {}", say.when_now(), time.text())
        } else if is_now {
            say.when_now().to_owned()
        } else {
            format!("{} {}", when.day.get(), when.time.get())
        }
    };
    let is_open = move || !when.fault.get().is_empty();
    view! {
        <details class="when" class:when--chip=is_chip prop:open=is_open on:input=move |_| when.is_touched.set(true)>
            <summary><span class:only-read=is_chip>{say.log_when()} ": "</span> {summary}</summary>
            <div class="when__fields">
                <Field id="when-day" label=say.log_day() kind=FieldKind::Day text=when.day />
                <Field id="when-time" label=say.log_time() kind=FieldKind::Time text=when.time fault=when.fault />
            </div>
        </details>
    }
}

//! The journey: when it leaves and arrives, and how feeds come to the owner's clock.

use leptos::prelude::*;

use crate::domain::homecoming::journey::{journey_fault, offset_text, parse_offset};
use crate::domain::plan::care_plan::{ClockShift, Journey};
use crate::domain::time::moment::{Day, Moment, WallTime};
use crate::domain::time::zone::Zone;
use crate::ui::parts::choice::Choice;
use crate::ui::parts::field::FieldKind;
use crate::ui::screens::plan_form::text::{AtFault, Text, TextField, is_any_at_fault, optional};
use crate::ui::state::AppState;

const SHIFTS: [ClockShift; 2] = [ClockShift::Gradual, ClockShift::AtOnce];

/// The journey as typed.
#[derive(Debug, Clone, Copy)]
pub struct JourneyText {
    left: [Text; 2],
    expected: [Text; 2],
    offset: Text,
    shift: RwSignal<Option<usize>>,
}

impl JourneyText {
    /// The fields of a journey that is there, or empty ones.
    pub fn new(state: AppState, journey: Option<Journey>) -> Self {
        let shift = journey.map_or(ClockShift::Gradual, |journey| journey.shift);
        let texts = |pick: fn(Journey) -> Moment| {
            let lived = journey.map(|journey| pick(journey).lived(journey.breeder_offset));
            let texts = lived.map(|lived| [lived.day.iso(), lived.time.text()]);
            texts.unwrap_or_default().map(Text::new)
        };
        let offset = journey.filter(|journey| {
            let here = state
                .zone
                .with_untracked(|zone| zone.offset_at(journey.left));
            here != journey.breeder_offset
        });
        let offset = offset.map(|journey| offset_text(journey.breeder_offset));
        Self {
            left: texts(|journey| journey.left),
            expected: texts(|journey| journey.expected),
            offset: Text::new(offset.unwrap_or_default()),
            shift: RwSignal::new(SHIFTS.iter().position(|known| *known == shift)),
        }
    }

    /// The journey as typed; none when day and time of leaving and arriving are all empty.
    ///
    /// # Errors
    /// [`AtFault`] when a field says what is wrong with it.
    pub fn journey(self, state: AppState) -> Result<Option<Journey>, AtFault> {
        let say = state.language();
        let offset = self.offset.take(optional(self.offset, |text| {
            parse_offset(text).ok_or(say.fault_offset())
        }));
        let [left_day, left_time] = self.left;
        let [expected_day, expected_time] = self.expected;
        let all = [left_day, left_time, expected_day, expected_time];
        for text in all {
            text.fault.set(String::new());
        }
        if all.iter().all(|text| text.is_empty()) {
            return offset.map(|_| None).ok_or(AtFault);
        }
        if let Some(empty) = all.iter().find(|text| text.is_empty()) {
            empty.fault.set(say.fault_journey_half().to_owned());
            return Err(AtFault);
        }
        let day = |text: Text| {
            text.take(Day::parse_iso(&text.get()).ok_or(say.fault_no_date().to_owned()))
        };
        let time = |text: Text| {
            text.take(WallTime::parse(&text.get()).ok_or(say.fault_no_time().to_owned()))
        };
        let read = (
            day(left_day),
            time(left_time),
            day(expected_day),
            time(expected_time),
        );
        let (Some(left_on), Some(left_at), Some(expected_on), Some(expected_at)) = read else {
            return Err(AtFault);
        };
        let here = state
            .zone
            .with_untracked(|zone| zone.offset_at(zone.moment_of(left_on, left_at)));
        let breeder_offset = offset.ok_or(AtFault)?.unwrap_or(here);
        let clock = Zone::fixed(breeder_offset);
        let left = clock.moment_of(left_on, left_at);
        let expected = clock.moment_of(expected_on, expected_at);
        if let Some(fault) = journey_fault(left, expected) {
            expected_day.fault.set(say.journey_fault(fault).to_owned());
            return Err(AtFault);
        }
        let shift = self.shift.get_untracked();
        let shift = shift.and_then(|index| SHIFTS.get(index).copied());
        Ok(Some(Journey {
            left,
            expected,
            breeder_offset,
            shift: shift.unwrap_or(ClockShift::Gradual),
        }))
    }
}

/// The fields of the journey.
#[component]
pub fn JourneyRows(
    /// What is typed.
    journey: JourneyText,
) -> impl IntoView {
    let say = AppState::here().language();
    let [left_day, left_time] = journey.left;
    let [expected_day, expected_time] = journey.expected;
    let all = vec![
        left_day,
        left_time,
        expected_day,
        expected_time,
        journey.offset,
    ];
    let is_filled = !left_day.is_empty();
    let is_at_fault = is_any_at_fault(all);
    let is_open = move || is_filled || is_at_fault.get();
    let options = vec![say.plan_shift_gradual(), say.plan_shift_at_once()];
    view! {
        <details class="group" prop:open=is_open>
            <summary>{say.plan_journey()}</summary>
            <p class="hint">{say.plan_journey_hint()}</p>
            <TextField id="left-day" label=say.plan_left_day() text=left_day kind=FieldKind::Day />
            <TextField id="left-time" label=say.plan_left_time() text=left_time kind=FieldKind::Time />
            <TextField id="expected-day" label=say.plan_expected_day() text=expected_day kind=FieldKind::Day />
            <TextField id="expected-time" label=say.plan_expected_time() text=expected_time kind=FieldKind::Time />
            <TextField
                id="breeder-offset"
                label=say.plan_offset()
                text=journey.offset
                kind=FieldKind::Text
                hint=say.plan_offset_hint()
            />
            <Choice legend=say.plan_shift() name="shift" options chosen=journey.shift />
        </details>
    }
}

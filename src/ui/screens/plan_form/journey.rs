//! The journey: when it leaves and arrives, and how feeds come to the owner's clock.

use leptos::prelude::*;

use crate::domain::homecoming::journey::{journey_fault, offset_text, parse_offset};
use crate::domain::plan::care_plan::{ClockShift, Journey};
use crate::domain::quantity::units::Millilitres;
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
    fed: [Text; 3],
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
            fed: {
                let fed = journey.and_then(|journey| Some((journey, journey.last_fed?)));
                let texts = fed.map(|(journey, (at, volume))| {
                    let lived = at.lived(journey.breeder_offset);
                    let volume = state.writing_now().tenths(volume.tenths());
                    [lived.day.iso(), lived.time.text(), volume]
                });
                texts.unwrap_or_default().map(Text::new)
            },
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
        for text in all.iter().chain(&self.fed) {
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
        let last_fed = self.last_fed(state, &clock, left)?;
        let shift = self.shift.get_untracked();
        let shift = shift.and_then(|index| SHIFTS.get(index).copied());
        Ok(Some(Journey {
            left,
            expected,
            breeder_offset,
            shift: shift.unwrap_or(ClockShift::Gradual),
            last_fed,
        }))
    }

    /// The last feed before leaving as typed; none when its fields are empty.
    fn last_fed(
        self,
        state: AppState,
        clock: &Zone,
        left: Moment,
    ) -> Result<Option<(Moment, Millilitres)>, AtFault> {
        let writing = state.writing_now();
        let say = writing.language;
        let [day, time, volume] = self.fed;
        if self.fed.iter().all(|text| text.is_empty()) {
            return Ok(None);
        }
        if let Some(empty) = self.fed.iter().find(|text| text.is_empty()) {
            empty.fault.set(say.fault_fed_half().to_owned());
            return Err(AtFault);
        }
        let on = day.take(Day::parse_iso(&day.get()).ok_or(say.fault_no_date().to_owned()));
        let at = time.take(WallTime::parse(&time.get()).ok_or(say.fault_no_time().to_owned()));
        let read = Millilitres::parse(&volume.get());
        let ml = volume.take(read.map_err(|error| writing.number_error(error)));
        let (Some(on), Some(at), Some(ml)) = (on, at, ml) else {
            return Err(AtFault);
        };
        let fed = clock.moment_of(on, at);
        if !(0..=1_440).contains(&left.minutes_since(fed)) {
            day.fault.set(say.fault_fed_late().to_owned());
            return Err(AtFault);
        }
        Ok(Some((fed, ml)))
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
    let [fed_day, fed_time, fed_ml] = journey.fed;
    let all = vec![
        left_day,
        left_time,
        expected_day,
        expected_time,
        journey.offset,
        fed_day,
        fed_time,
        fed_ml,
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
            <TextField id="fed-day" label=say.plan_fed_day() text=fed_day kind=FieldKind::Day />
            <TextField id="fed-time" label=say.plan_fed_time() text=fed_time kind=FieldKind::Time />
            <TextField id="fed-ml" label=say.plan_fed_ml() text=fed_ml kind=FieldKind::Number unit="ml" />
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

//! The only reader of the browser's clock and zone rules.

use js_sys::Date;
use wasm_bindgen::JsValue;

use crate::domain::quantity::count::whole;
use crate::domain::time::moment::{Moment, Offset};
use crate::domain::time::zone::{OffsetChange, Zone};

/// Days before and after now for which the zone table holds the browser's rules.
const REACH_DAYS: i64 = 400;
/// Step of the search for changes of the offset, days: shorter than any span between two changes.
const STEP_DAYS: i64 = 7;
const DAY_SECONDS: i64 = 86_400;

/// Now.
pub fn now() -> Moment {
    Moment::from_seconds(whole(Date::now() / 1_000.0))
}

/// The zone the phone is in, as a table made from the browser's own rules.
pub fn zone(now: Moment) -> Zone {
    let start = now.seconds() - REACH_DAYS * DAY_SECONDS;
    let first = offset_at(start);
    let mut changes = Vec::new();
    let mut before = (start, first);
    for step in 1..=(2 * REACH_DAYS / STEP_DAYS) {
        let seconds = start + step * STEP_DAYS * DAY_SECONDS;
        let offset = offset_at(seconds);
        if offset != before.1 {
            let from = Moment::from_seconds(change_between(before, seconds));
            changes.push(OffsetChange { from, offset });
        }
        before = (seconds, offset);
    }
    Zone::new(first, changes)
}

/// The first whole minute after `before.0` at which the offset is no longer `before.1`.
fn change_between(before: (i64, Offset), after: i64) -> i64 {
    let (mut low, mut high) = (before.0 / 60, after / 60);
    while high - low > 1 {
        let middle = low.midpoint(high);
        if offset_at(middle * 60) == before.1 {
            low = middle;
        } else {
            high = middle;
        }
    }
    high * 60
}

fn offset_at(seconds: i64) -> Offset {
    let date = Date::new(&JsValue::from_f64(
        crate::domain::quantity::count::seconds_as_f64(seconds) * 1_000.0,
    ));
    Offset::from_minutes(-crate::domain::quantity::count::rounded(
        date.get_timezone_offset(),
    ))
}

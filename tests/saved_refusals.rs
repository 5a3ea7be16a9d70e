//! What a saved text may hold and what is refused: from a damaged place, an edited file, a foreign link.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

#[path = "common/entries.rs"]
mod entries;

use perchlight::domain::journal::entries::{Change, Entry, Refusal};
use perchlight::domain::plan::care_plan::PlanFault;
use perchlight::store::line::Line;
use perchlight::store::saved::{
    Limits, entries_from_text, entries_to_text, entry_from_text, entry_to_text,
};
use perchlight::store::saved_error::SavedError;
use proptest::prelude::*;
use serde_json::{Value, json};

const SAVED_V1: &str = include_str!("fixtures/saved-v1.json");

fn saved_v1() -> Vec<Entry> {
    entries_from_text(SAVED_V1, Limits::FILE).unwrap()
}

/// An entry of the fixture with another change.
fn entry(change: Change) -> Entry {
    let arrived = saved_v1().swap_remove(2);
    Entry { change, ..arrived }
}

/// The line of the fixture with this number, changed at one place.
fn changed(number: usize, path: &str, value: Value) -> Result<Entry, SavedError> {
    let mut saved: Value = serde_json::from_str(SAVED_V1).unwrap();
    let mut entry = saved["entries"][number - 1].take();
    let (parent, field) = path.rsplit_once('/').unwrap();
    let parent = entry.pointer_mut(parent).unwrap();
    assert!(parent.is_object());
    parent[field] = value;
    entry_from_text(&entry.to_string())
}

#[test]
fn a_number_out_of_range_is_refused_with_its_field() {
    for (number, path, field, sound, bad) in [
        (4, "/at", "at", 631_152_000_i64, 631_151_999_i64),
        (4, "/at", "at", 7_258_118_400, 7_258_118_401),
        (4, "/late_s", "late_s", -1_162_364_400, -1_162_364_401),
        (4, "/tz", "tz", 1_440, 1_441),
        (4, "/tz", "tz", -1_440, -1_441),
        (4, "/tz", "tz", 0, i64::MAX),
        (17, "/powder_g10", "powder_g10", 200_000, 200_001),
        (17, "/powder_g10", "powder_g10", 0, -1),
        (5, "/c10", "c10", 1_300, 1_301),
        (19, "/c10", "c10", -400, -401),
        (1, "/plan/powder_pct10", "powder_pct10", 1_000, 1_001),
        (1, "/plan/syringe_ml10", "syringe_ml10", 20_000, 20_001),
        (1, "/plan/settle_in_days", "settle_in_days", 255, 256),
        (1, "/plan/waiting_days", "waiting_days", 0, -1),
        (1, "/plan/label_per_100_g/kcal", "kcal", 65_535, 65_536),
        (1, "/plan/journey/left", "left", 631_152_000, i64::MIN),
    ] {
        assert!(
            changed(number, path, json!(sound)).is_ok(),
            "{path} {sound}"
        );
        let refused = SavedError::OutOfRange { field, value: bad };
        assert_eq!(changed(number, path, json!(bad)), Err(refused), "{path}");
    }
}

#[test]
fn a_text_that_is_no_day_time_or_id_is_refused() {
    for (number, path, field, bad) in [
        (1, "/plan/hatched", "hatched", "2026-02-29"),
        (1, "/plan/hatched", "hatched", "2026-8-22"),
        (1, "/plan/reference/day", "day", "yesterday"),
        (4, "/id", "id", "AAAAAAAAAAAAAAA"),
        (4, "/id", "id", "AAAAAAAAAAAAAAA+"),
        (4, "/chick", "chick", "AAAAAAAAAAAAAAAAA"),
        (21, "/entry", "entry", "ÄÄÄÄÄÄÄÄ"),
    ] {
        assert_eq!(
            changed(number, path, json!(bad)),
            Err(SavedError::BadText { field }),
            "{bad}"
        );
    }
    let long = "x".repeat(1_001);
    let refused = Err(SavedError::BadText { field: "text" });
    assert_eq!(changed(20, "/text", json!(long)), refused);
    assert!(changed(20, "/text", json!(&long[1..])).is_ok());
}

#[test]
fn an_unknown_word_or_field_and_a_missing_field_are_refused() {
    let tag = "hungry".to_owned();
    let refused = SavedError::UnknownTag { field: "did", tag };
    assert_eq!(changed(4, "/did", json!("hungry")), Err(refused));
    let tag = "Empty".to_owned();
    let refused = SavedError::UnknownTag { field: "crop", tag };
    assert_eq!(changed(4, "/crop", json!("Empty")), Err(refused));
    let field = "mood".to_owned();
    assert_eq!(
        changed(4, "/mood", json!(1)),
        Err(SavedError::UnknownField { field })
    );
    let field = "mood".to_owned();
    assert_eq!(
        changed(1, "/plan/mood", json!(1)),
        Err(SavedError::UnknownField { field })
    );
    for field in ["id", "chick", "at", "tz", "did", "g10", "crop"] {
        let mut saved: Value = serde_json::from_str(SAVED_V1).unwrap();
        let mut entry = saved["entries"][3].take();
        entry.as_object_mut().unwrap().remove(field).unwrap();
        let answer = entry_from_text(&entry.to_string());
        assert!(
            matches!(answer, Err(SavedError::Missing { field: found }) if found == field),
            "{field}"
        );
    }
    for (path, field, kind) in [
        ("/at", "at", json!("1793516400")),
        ("/at", "at", json!(1_793_516_400.0)),
        ("/g10", "g10", json!(null)),
        ("/crop", "crop", json!(0)),
    ] {
        assert_eq!(
            changed(4, path, kind),
            Err(SavedError::WrongKind { field }),
            "{path}"
        );
    }
}

#[test]
fn what_the_journal_would_refuse_is_refused_from_outside_too() {
    let refused = |refusal| Err(SavedError::Refused(refusal));
    assert_eq!(
        changed(4, "/g10", json!(30_001)),
        refused(Refusal::WeightOutOfRange)
    );
    assert_eq!(
        changed(5, "/ml10", json!(601)),
        refused(Refusal::MoreTakenThanOffered)
    );
    let upside_down = Refusal::Plan(vec![PlanFault::WindowUpsideDown]);
    assert_eq!(
        changed(1, "/plan/serve_from_c10", json!(405)),
        refused(upside_down)
    );
}

/// The window of the saved plan is 39.0 to 40.5 °C; a plan lies within 37 to 41 °C.
#[test]
fn a_window_of_before_is_held_and_water_above_50_degrees_is_refused() {
    let window = |path, tenths| {
        let entry = changed(1, path, json!(tenths)).unwrap();
        let plan = entry.change.plan().unwrap();
        (plan.serve_from.tenths(), plan.serve_to.tenths())
    };
    assert_eq!(window("/plan/serve_to_c10", 409), (390, 409));
    assert_eq!(window("/plan/serve_to_c10", 410), (390, 410));
    assert_eq!(window("/plan/serve_to_c10", 430), (390, 410));
    assert_eq!(window("/plan/serve_from_c10", 360), (370, 405));
    let water = |tenths| {
        let entry = changed(1, "/plan/mixing_water_c10", json!(tenths))?;
        Ok(entry.change.plan().unwrap().mixing_water.tenths())
    };
    assert_eq!([water(499), water(500)], [Ok(499), Ok(500)]);
    let too_hot = Refusal::Plan(vec![PlanFault::WaterTooHot]);
    assert_eq!(water(501), Err(SavedError::Refused(too_hot)));
}

#[test]
fn a_newer_version_is_told_apart_from_damage() {
    let newer = SavedError::Newer { version: 2 };
    assert_eq!(changed(4, "/v", json!(2)), Err(newer.clone()));
    assert_eq!(
        entries_from_text(r#"{"v":2,"new":true}"#, Limits::FILE),
        Err(newer)
    );
    assert_eq!(
        entries_from_text(r#"{"entries":[]}"#, Limits::FILE),
        Err(SavedError::NoVersion)
    );
    assert_eq!(
        entries_from_text("Perchlight", Limits::FILE),
        Err(SavedError::NotJson)
    );
    assert_eq!(
        entries_from_text("", Limits::FILE),
        Err(SavedError::NotJson)
    );
}

#[test]
fn too_much_is_refused_before_it_is_read() {
    let entries = saved_v1();
    let text = entries_to_text(&entries);
    let limits = |bytes, entries| Limits { bytes, entries };
    let (bytes, count) = (text.len(), entries.len());
    assert_eq!(entries_from_text(&text, limits(bytes, count)), Ok(entries));
    let limit = bytes - 1;
    let refused = Err(SavedError::TooLarge { bytes, limit });
    assert_eq!(entries_from_text(&text, limits(limit, count)), refused);
    let limit = count - 1;
    assert_eq!(
        entries_from_text(&text, limits(bytes, limit)),
        Err(SavedError::TooMany { limit })
    );
    let wide = format!("[{}]", "0,".repeat(30_000));
    let limit = 100;
    assert_eq!(
        entries_from_text(&wide, limits(1 << 20, limit)),
        Err(SavedError::TooMany { limit })
    );
    let deep = "[".repeat(9);
    let limit = 8;
    assert_eq!(
        entries_from_text(&deep, Limits::LINK),
        Err(SavedError::TooDeep { limit })
    );
    // Brackets and commas inside of texts are text.
    let bracketed = Change::Noted {
        text: "\"[,\\".repeat(250),
    };
    let bracketed = vec![entry(bracketed)];
    assert_eq!(
        entries_from_text(&entries_to_text(&bracketed), limits(1 << 20, 1)),
        Ok(bracketed)
    );
}

#[test]
fn a_text_too_long_to_come_back_is_no_line() {
    let mut by = entry(Change::Arrived);
    by.by = "x".repeat(1_001);
    assert!(Line::of(&by).is_err());
    by.by.pop();
    assert!(Line::of(&by).is_ok());
}

proptest! {
    #[test]
    fn an_entry_comes_back_from_its_line_as_it_was(entry in entries::entry()) {
        let line = Line::of(&entry).unwrap();
        prop_assert!(!line.text.contains('\n'));
        prop_assert_eq!(&line, &Line::read(&line.text).unwrap());
        prop_assert_eq!(line.entry, entry);
    }

    #[test]
    fn entries_come_back_from_their_text_as_they_were(entries in prop::collection::vec(entries::entry(), 0..6)) {
        let text = entries_to_text(&entries);
        prop_assert!(serde_json::from_str::<Value>(&text).is_ok());
        prop_assert_eq!(entries_from_text(&text, Limits::LINK), Ok(entries));
    }

    #[test]
    fn any_bytes_are_answered_without_panic(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        let text = String::from_utf8_lossy(&bytes);
        prop_assert!(entry_from_text(&text).is_err());
        prop_assert!(entries_from_text(&text, Limits::LINK).is_err());
        prop_assert!(Line::read(&text).is_err());
    }

    #[test]
    fn a_text_with_any_bytes_changed_is_answered_without_panic(
        entry in entries::entry(),
        places in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..4),
    ) {
        let mut bytes = entry_to_text(&entry).into_bytes();
        for (place, byte) in places {
            let place = place.index(bytes.len());
            bytes[place] = byte;
        }
        let text = String::from_utf8_lossy(&bytes);
        if let Ok(read) = entry_from_text(&text) {
            prop_assert_eq!(entry_from_text(&entry_to_text(&read)), Ok(read));
        }
    }
}

//! Saved entries of earlier versions become entries of the present one, step by step.

use serde_json::Value;

use crate::store::saved::SavedError;

/// One step: an entry of one version, as an entry of the next. The version number itself is set by
/// [`to_current`].
pub type Migration = fn(Value) -> Result<Value, SavedError>;

/// The steps in order; the first goes from version 1 to 2. A change of the saved form adds a step here
/// and a fixture of the version before it, which is never edited again.
const MIGRATIONS: [Migration; 0] = [];

/// The version written today.
pub const VERSION: i64 = 1;

/// An entry of any version known, as an entry of the present version.
///
/// # Errors
/// [`SavedError::NoVersion`] without a version from 1 up; [`SavedError::Newer`] when a later build
/// wrote it, so that it must be left as it is; whatever a step refuses.
pub fn to_current(value: Value) -> Result<Value, SavedError> {
    run(value, &MIGRATIONS, VERSION)
}

fn run(mut value: Value, steps: &[Migration], newest: i64) -> Result<Value, SavedError> {
    let found = value.get("v").and_then(Value::as_i64);
    let version = found.filter(|version| *version >= 1);
    let mut version = version.ok_or(SavedError::NoVersion)?;
    if version > newest {
        return Err(SavedError::Newer { version });
    }
    let done = usize::try_from(version - 1).unwrap_or(usize::MAX);
    for step in steps.iter().skip(done) {
        value = step(value)?;
        version += 1;
        if let Value::Object(fields) = &mut value {
            fields.insert("v".to_owned(), version.into());
        }
    }
    Ok(value)
}

#[cfg(test)]
mod tests {
    use serde_json::{Value, json};

    use crate::store::migrate::{MIGRATIONS, Migration, VERSION, run, to_current};
    use crate::store::saved::SavedError;

    fn append(value: &Value, mark: &str) -> Value {
        let before = value["marks"].as_str().unwrap_or_default();
        json!({ "v": value["v"], "marks": format!("{before}{mark}") })
    }

    const MADE_UP: [Migration; 2] = [
        |value| Ok(append(&value, "a")),
        |value| Ok(append(&value, "b")),
    ];

    #[test]
    fn steps_run_in_order_from_the_version_found() {
        for (from, marks) in [(1, "ab"), (2, "b"), (3, "")] {
            let value = run(json!({ "v": from, "marks": "" }), &MADE_UP, 3);
            assert_eq!(value, Ok(json!({ "v": 3, "marks": marks })), "from {from}");
        }
    }

    #[test]
    fn a_version_ahead_of_ours_is_named_and_left_alone() {
        let newer = SavedError::Newer { version: 4 };
        assert_eq!(run(json!({ "v": 4 }), &MADE_UP, 3), Err(newer));
        let next = VERSION + 1;
        let newer = SavedError::Newer { version: next };
        assert_eq!(to_current(json!({ "v": next })), Err(newer));
    }

    #[test]
    fn a_text_without_a_sound_version_is_refused() {
        for value in [
            json!({}),
            json!({ "v": 0 }),
            json!({ "v": -1 }),
            json!({ "v": "1" }),
            json!([1]),
        ] {
            assert_eq!(to_current(value), Err(SavedError::NoVersion));
        }
    }

    #[test]
    fn the_version_written_is_one_past_the_last_step() {
        assert_eq!(VERSION, i64::try_from(MIGRATIONS.len()).unwrap() + 1);
    }
}

//! Saved entries of earlier versions become entries of the present one, step by step.

use std::borrow::Cow;

use crate::store::json::Json;
use crate::store::saved_error::{SavedError, VERSION};

/// One step: an entry of one version, as an entry of the next. The version number itself is set by
/// [`to_current`].
pub type Migration = for<'text> fn(Json<'text>) -> Result<Json<'text>, SavedError>;

/// The steps in order; the first goes from version 1 to 2. A change of the saved form adds a step here
/// and a fixture of the version before it, which is never edited again.
const MIGRATIONS: [Migration; 0] = [];

/// An entry of any version known, as an entry of the present version.
///
/// # Errors
/// [`SavedError::NoVersion`] without a version from 1 up; [`SavedError::Newer`] when a later build
/// wrote it, so that it must be left as it is; whatever a step refuses.
pub fn to_current(value: Json<'_>) -> Result<Json<'_>, SavedError> {
    run(value, &MIGRATIONS, VERSION)
}

fn run<'text>(
    mut value: Json<'text>,
    steps: &[Migration],
    newest: i64,
) -> Result<Json<'text>, SavedError> {
    let found = value.get("v").and_then(Json::whole);
    let version = found.filter(|version| *version >= 1);
    let mut version = version.ok_or(SavedError::NoVersion)?;
    if version > newest {
        return Err(SavedError::Newer { version });
    }
    let done = usize::try_from(version - 1).unwrap_or(usize::MAX);
    for step in steps.iter().skip(done) {
        value = step(value)?;
        version += 1;
        if let Json::Object(fields) = &mut value {
            fields.retain(|(name, _)| name != "v");
            fields.push((Cow::Borrowed("v"), Json::Whole(version)));
        }
    }
    Ok(value)
}

#[cfg(test)]
mod tests {
    use std::borrow::Cow;

    use crate::store::json::{Bounds, Json};
    use crate::store::migrate::{MIGRATIONS, Migration, run, to_current};
    use crate::store::saved_error::{SavedError, VERSION};

    fn json(text: &str) -> Json<'_> {
        let bounds = Bounds {
            levels: 8,
            marks: 100,
            entries: 1,
        };
        Json::read(text, bounds).unwrap()
    }

    fn append<'text>(value: &Json<'text>, mark: &str) -> Json<'text> {
        let mut marks = String::new();
        if let Some(Json::Text(before)) = value.get("marks") {
            marks.push_str(before);
        }
        marks.push_str(mark);
        let version = value.get("v").cloned().unwrap_or(Json::Null);
        Json::Object(vec![
            (Cow::Borrowed("v"), version),
            (Cow::Borrowed("marks"), Json::Text(Cow::Owned(marks))),
        ])
    }

    const MADE_UP: [Migration; 2] = [
        |value| Ok(append(&value, "a")),
        |value| Ok(append(&value, "b")),
    ];

    #[test]
    fn steps_run_in_order_from_the_version_found() {
        for (from, marks) in [(1, "ab"), (2, "b"), (3, "")] {
            let text = format!(r#"{{"v":{from},"marks":""}}"#);
            let value = run(json(&text), &MADE_UP, 3).unwrap();
            assert_eq!(value.get("v"), Some(&Json::Whole(3)), "from {from}");
            let marks = Json::Text(Cow::Borrowed(marks));
            assert_eq!(value.get("marks"), Some(&marks), "from {from}");
        }
    }

    #[test]
    fn a_version_ahead_of_ours_is_named_and_left_alone() {
        let newer = SavedError::Newer { version: 4 };
        assert_eq!(run(json(r#"{"v":4}"#), &MADE_UP, 3), Err(newer));
        let next = VERSION + 1;
        let newer = SavedError::Newer { version: next };
        assert_eq!(to_current(json(&format!(r#"{{"v":{next}}}"#))), Err(newer));
    }

    #[test]
    fn a_text_without_a_sound_version_is_refused() {
        for text in ["{}", r#"{"v":0}"#, r#"{"v":-1}"#, r#"{"v":"1"}"#, "[1]"] {
            assert_eq!(to_current(json(text)), Err(SavedError::NoVersion), "{text}");
        }
    }

    #[test]
    fn the_version_written_is_one_past_the_last_step() {
        assert_eq!(VERSION, i64::try_from(MIGRATIONS.len()).unwrap() + 1);
    }
}

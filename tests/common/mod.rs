//! Reads the check files, shared by the tests that compare with outside values.

use std::path::PathBuf;

/// The check file of that name, from the folder `PERCHLIGHT_CHECKS` or else `tests/fixtures/checks/`.
///
/// # Panics
/// When the file cannot be read or is not JSON; the message names it.
pub fn checks_file(name: &str) -> serde_json::Value {
    let folder = std::env::var_os("PERCHLIGHT_CHECKS").map_or_else(
        || PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/fixtures/checks"),
        PathBuf::from,
    );
    let path = folder.join(name);
    let text = std::fs::read_to_string(&path)
        .unwrap_or_else(|error| panic!("cannot read {}: {error}", path.display()));
    serde_json::from_str(&text)
        .unwrap_or_else(|error| panic!("cannot parse {}: {error}", path.display()))
}

//! Rows for the table of faults, collected by `.build/prove.mjs`.

use std::fs::OpenOptions;
use std::io::Write as _;

/// Whether every trial is to be made, not only those that a usual test run has time for.
pub(crate) fn is_whole_run() -> bool {
    std::env::var_os("FAULT_LINES").is_some()
}

/// Adds a cell of it: what was tried how often without a browser, with nothing lost, since a test that loses stops before it
/// comes here; and what the person is told.
pub(crate) fn tell(fault: &str, trials: usize, said: &str) {
    let Some(path) = std::env::var_os("FAULT_LINES") else {
        return;
    };
    let row = serde_json::json!({ "fault": fault, "engine": "native", "trials": trials, "lost": 0, "said": said });
    let mut file = OpenOptions::new()
        .create(true)
        .append(true)
        .open(path)
        .unwrap();
    // In one go: tests run side by side.
    file.write_all(format!("{row}\n").as_bytes()).unwrap();
}

//! The page before the app says what the app says.

#![allow(clippy::expect_used, reason = "a test stops at the first surprise")]

use std::fs;
use std::path::Path;

use perchlight::words::Language;

/// The longest text of the first screen stands on the page from the start: nothing jumps when the
/// program arrives, and who waits for it reads the caution.
#[test]
fn the_page_before_the_app_holds_the_whole_caution() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/index.html");
    let page = fs::read_to_string(path).expect("the page is there");
    assert!(page.contains(Language::English.caution_text()));
}

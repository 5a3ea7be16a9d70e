//! Starts Perchlight in the browser.

#[cfg(feature = "ui")]
fn main() {
    console_error_panic_hook::set_once();
    perchlight::ui::start();
}

#[cfg(not(feature = "ui"))]
fn main() {}

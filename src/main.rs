//! Starts Perchlight in the browser.

fn main() {}

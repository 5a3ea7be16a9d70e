//! Pasted texts: anything, as it is.
#![no_main]

use libfuzzer_sys::fuzz_target;
use perchlight_fuzz::pasted_text;

fuzz_target!(|text: &str| pasted_text(text));

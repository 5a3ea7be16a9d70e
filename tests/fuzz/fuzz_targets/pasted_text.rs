//! Pasted texts: anything, as it is.
#![no_main]

use libfuzzer_sys::fuzz_target;
use perchlight_fuzz::read_and_show;

fuzz_target!(|text: &str| read_and_show(text));

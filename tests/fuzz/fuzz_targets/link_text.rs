//! Links: the first byte chooses the kind, the rest is content with a right check sum.
#![no_main]

use libfuzzer_sys::fuzz_target;
use perchlight_fuzz::link_text;

fuzz_target!(|bytes: &[u8]| link_text(bytes));

//! Record lines: the text as a line, and as the content of a line with a right check sum.
#![no_main]

use libfuzzer_sys::fuzz_target;
use perchlight_fuzz::record_line;

fuzz_target!(|text: &str| record_line(text));

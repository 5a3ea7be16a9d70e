//! Files: the text as a plain backup, and as the data of a page with a right check sum.
#![no_main]

use libfuzzer_sys::fuzz_target;
use perchlight_fuzz::file_text;

fuzz_target!(|text: &str| file_text(text));

//! Files: the text as a plain backup, and as the data of a page with a right check sum.
#![no_main]

use libfuzzer_sys::fuzz_target;
use perchlight::share::data_block;
use perchlight_fuzz::read_and_show;

fuzz_target!(|json: &str| {
    read_and_show(json);
    read_and_show(&format!("<!DOCTYPE html>{}</html>", data_block::write(json)));
});

//! Links: the first byte chooses the kind, the rest is content with a right check sum.
#![no_main]

use libfuzzer_sys::fuzz_target;
use perchlight_fuzz::{read_and_show, sealed_link};

fuzz_target!(|bytes: &[u8]| {
    if let Some((kind, content)) = bytes.split_first() {
        read_and_show(&sealed_link(*kind, content));
    }
});

//! Record lines: the text as a line, and as the content of a line with a right check sum.
#![no_main]

use libfuzzer_sys::fuzz_target;
use perchlight::store::line::{Line, entries_in, read_each};
use perchlight::store::record::encode;

fuzz_target!(|text: &str| {
    let entries = entries_in(text);
    let read: Vec<_> = read_each(text).flatten().map(|line| line.entry).collect();
    assert!(read.len() <= text.lines().count() && entries.len() <= text.lines().count());
    if let Ok(line) = Line::read(&encode(text)) {
        // What is taken is written the same way again, under the same name or a settled one.
        let again = Line::of(&line.entry).expect("an entry that was read can be written");
        assert_eq!(again.entry, line.entry);
        assert_eq!(Line::of(&again.entry), Ok(again));
    }
});

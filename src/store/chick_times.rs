//! Of which chicks something is true on this device, and since or from when, as text, one line a chick.
//!
//! Form: `chick seconds`. A line that is not whole is left out.

use std::collections::BTreeMap;

use crate::domain::journal::entries::ChickId;
use crate::domain::time::moment::Moment;
use crate::store::id_text::{id_from_text, id_to_text};

/// The chicks of a text, each with its moment.
pub fn times_from_text(text: &str) -> BTreeMap<ChickId, Moment> {
    let line = |line: &str| {
        let (chick, seconds) = line.split_once(' ')?;
        let seconds: i64 = seconds.parse().ok()?;
        let at = Moment::from_seconds(seconds);
        let chick = ChickId(id_from_text(chick)?);
        (at.seconds() == seconds).then_some((chick, at))
    };
    let mut times = BTreeMap::new();
    times.extend(text.lines().filter_map(line));
    times
}

/// The text of these chicks.
pub fn times_to_text(times: &BTreeMap<ChickId, Moment>) -> String {
    let lines = times
        .iter()
        .map(|(chick, at)| format!("{} {}", id_to_text(chick.0), at.seconds()));
    lines.collect::<Vec<_>>().join("\n")
}

#[cfg(test)]
mod tests {
    use crate::store::chick_times::*;

    #[test]
    fn every_chick_comes_back_with_its_moment_and_a_broken_line_is_left_out() {
        let mut times = BTreeMap::new();
        times.insert(ChickId([1; 12]), Moment::from_seconds(1_793_739_600));
        times.insert(ChickId([2; 12]), Moment::from_seconds(0));
        let text = times_to_text(&times);
        assert_eq!(text.lines().count(), 2);
        assert_eq!(times_from_text(&text), times);
        assert_eq!(times_from_text(&format!("{text}\nxx 1\n")), times);
        assert!(times_from_text("").is_empty());
    }
}

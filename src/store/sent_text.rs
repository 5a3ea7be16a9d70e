//! When the records of each chick were last sent to another phone, as text, one line a chick.
//!
//! Form: `chick seconds`. A line that is not whole is left out: everything is then sent again, which
//! does no harm.

use crate::domain::journal::entries::ChickId;
use crate::domain::time::moment::Moment;
use crate::store::id_text::{id_from_text, id_to_text};

/// Most chicks that are remembered. Ours: a season of a breeder.
const MOST_CHICKS: usize = 64;

/// When the records of a chick were last sent; `None` when they never were.
pub fn sent_of(text: &str, chick: ChickId) -> Option<Moment> {
    let mut sent = text.lines().filter_map(sent_from_line);
    sent.find(|(of, _)| *of == chick).map(|(_, at)| at)
}

/// The text with this sending in place of its chick's former one.
pub fn with_sent(text: &str, chick: ChickId, at: Moment) -> String {
    let known = text.lines().filter_map(sent_from_line);
    let others = known.filter(|(of, _)| *of != chick).take(MOST_CHICKS - 1);
    let lines = [(chick, at)].into_iter().chain(others);
    let lines = lines.map(|(of, at)| format!("{} {}", id_to_text(of.0), at.seconds()));
    lines.collect::<Vec<_>>().join("\n")
}

fn sent_from_line(line: &str) -> Option<(ChickId, Moment)> {
    let (chick, seconds) = line.split_once(' ')?;
    let seconds: i64 = seconds.parse().ok()?;
    let at = Moment::from_seconds(seconds);
    let chick = ChickId(id_from_text(chick)?);
    (at.seconds() == seconds).then_some((chick, at))
}

#[cfg(test)]
mod tests {
    use crate::store::sent_text::*;

    #[test]
    fn each_chick_has_its_own_last_sending() {
        let (one, other) = (ChickId([1; 12]), ChickId([2; 12]));
        let at = Moment::from_seconds;
        let text = with_sent("", one, at(1_700_001_000));
        let text = with_sent(&text, other, at(1_700_002_000));
        let text = with_sent(&text, one, at(1_700_003_000));
        assert_eq!(text.lines().count(), 2);
        assert_eq!(sent_of(&text, one), Some(at(1_700_003_000)));
        assert_eq!(sent_of(&text, other), Some(at(1_700_002_000)));
        assert_eq!(sent_of(&text, ChickId([3; 12])), None);
    }

    #[test]
    fn what_is_not_whole_counts_as_never_sent() {
        let chick = ChickId([1; 12]);
        let whole = with_sent("", chick, Moment::from_seconds(1_700_001_000));
        for text in [
            "",
            "AQEB 1700001000",
            whole.trim_end_matches(" 1700001000"),
            &whole.replace("1700001000", "1.7e9"),
        ] {
            assert_eq!(sent_of(text, chick), None, "{text:?}");
        }
    }

    #[test]
    fn the_chick_sent_longest_ago_is_forgotten_first() {
        let chick = |number: u8| ChickId([number; 12]);
        let text = (0..=64).fold(String::new(), |text, number| {
            with_sent(&text, chick(number), Moment::from_seconds(1_700_001_000))
        });
        assert_eq!(text.lines().count(), 64);
        assert_eq!(sent_of(&text, chick(0)), None);
        assert!(sent_of(&text, chick(1)).is_some());
    }
}

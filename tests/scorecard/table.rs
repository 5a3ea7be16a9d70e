//! The table as Markdown.

use crate::simulator::life::DAYS;
use crate::simulator::score::{FOUND_WITHIN, Kind, Score};

/// Both tables: false calls of chicks that stay well, delays of chicks that fall ill.
pub(crate) fn markdown(
    healthy: &[(Kind, [Score; 3])],
    ill: &[(Kind, [Score; 3])],
    seed: u64,
    chicks: u32,
) -> String {
    let mut text = format!(
        "{chicks} made-up green-winged macaws a row, watched for {DAYS} mornings, seed {seed}.\n\n\
         False calls in a hundred weeks of a healthy chick:\n\n\
         | chicks that stay well | one reading below 90 % | median of three below 90 % | Perchlight |\n\
         | --- | --- | --- | --- |\n"
    );
    for (kind, scores) in healthy {
        row(&mut text, kind.name, &scores.each_ref().map(false_calls));
    }
    let all = |way: usize| {
        let of_way = healthy.iter().filter_map(|(_, scores)| scores.get(way));
        Score::joined(of_way)
    };
    row(
        &mut text,
        "all of these",
        &[all(0), all(1), all(2)].each_ref().map(false_calls),
    );
    let second = format!(
        "\nDays from the onset to the first call, half of the chicks / nine of ten / mean, and the share \
         never found within {FOUND_WITHIN} days:\n\n\
         | chicks that fall ill | one reading below 90 % | median of three below 90 % | Perchlight |\n\
         | --- | --- | --- | --- |\n"
    );
    text.push_str(&second);
    for (kind, scores) in ill {
        row(&mut text, kind.name, &scores.each_ref().map(delays));
    }
    text
}

fn row(text: &mut String, name: &str, cells: &[String; 3]) {
    text.push_str("| ");
    text.push_str(name);
    for cell in cells {
        text.push_str(" | ");
        text.push_str(cell);
    }
    text.push_str(" |\n");
}

fn false_calls(score: &Score) -> String {
    format!("{:.1}", score.false_calls_per_100_weeks())
}

fn delays(score: &Score) -> String {
    let days = |share| {
        let days = score.delay(share);
        days.map_or_else(|| "never".to_owned(), |days| days.to_string())
    };
    let never = score.never_found_pct();
    let mean = score.mean_delay();
    format!("{} / {} / {mean:.1}, {never:.1} %", days(0.5), days(0.9))
}

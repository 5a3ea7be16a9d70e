//! The table as Markdown.

use crate::simulator::life::{DAYS, LONG_DAYS};
use crate::simulator::score::{Chicks, Estimate, FIRST_KINDS, FOUND_WITHIN, Kind, Score};
use crate::simulator::watch::Way;

/// Both tables: false calls of chicks that stay well, delays of chicks that fall ill.
pub(crate) fn markdown(
    healthy: &[(Kind, Chicks)],
    ill: &[((Kind, f64), Chicks)],
    seed: u64,
    chicks: u32,
) -> String {
    let mut text = format!(
        "{chicks} made-up chicks a row, green-winged macaws unless a weight is named, watched for {DAYS} or \
         {LONG_DAYS} mornings, seed {seed}; ± is half of the 95 % interval.\n\n\
         False calls in a hundred weeks of a healthy chick, one of how many days is at watch, and second \
         weighings asked for in a hundred weeks:\n\n\
         | chicks that stay well | one reading below 90 % | median of three below 90 % | Perchlight, weights \
         alone | with what was eaten | a day at watch in | second weighings |\n\
         | --- | --- | --- | --- | --- | --- | --- |\n"
    );
    for (kind, chicks) in healthy {
        row(&mut text, kind.name, &well(std::iter::once(chicks)));
    }
    let first = || healthy.iter().take(FIRST_KINDS).map(|(_, chicks)| chicks);
    row(&mut text, "all of the first seven", &well(first()));
    let second = format!(
        "\nDays from the onset to the first call, half of the chicks / nine of ten / mean, and the share \
         never found within {FOUND_WITHIN} days:\n\n\
         | chicks that fall ill | one reading below 90 % | median of three below 90 % | Perchlight, weights \
         alone | with what was eaten | the limit |\n\
         | --- | --- | --- | --- | --- | --- |\n"
    );
    text.push_str(&second);
    for ((kind, a_day), chicks) in ill {
        let single = joined(first(), |chicks| chicks.score(Way::Single));
        let most = single.false_calls_per_100_weeks().value;
        let scores = [
            chicks.score(Way::Single),
            chicks.score(Way::Median),
            chicks.score(Way::Perchlight),
            chicks.score_with_eaten(),
            limit(first(), chicks, *a_day, most),
        ];
        row(&mut text, kind.name, &scores.each_ref().map(delays));
    }
    text
}

/// The limit with the threshold at which it rings as often falsely.
fn limit<'a>(
    healthy: impl Iterator<Item = &'a Chicks>,
    ill: &Chicks,
    a_day: f64,
    most: f64,
) -> Score {
    let healthy: Vec<_> = healthy
        .map(|chicks| (chicks, chicks.ln_ratios(a_day)))
        .collect();
    let (mut low, mut high) = (0.0, 50.0);
    for _ in 0..20 {
        let middle = f64::midpoint(low, high);
        let scores = healthy.iter();
        let scores: Vec<Score> = scores
            .map(|(chicks, ratios)| chicks.score_limit(ratios, middle))
            .collect();
        let calls = Score::joined(scores.iter())
            .false_calls_per_100_weeks()
            .value;
        if most < calls {
            low = middle;
        } else {
            high = middle;
        }
    }
    ill.score_limit(&ill.ln_ratios(a_day), high)
}

fn joined<'a>(chicks: impl Iterator<Item = &'a Chicks>, score: impl Fn(&Chicks) -> Score) -> Score {
    let scores: Vec<Score> = chicks.map(score).collect();
    Score::joined(scores.iter())
}

fn well<'a>(chicks: impl Iterator<Item = &'a Chicks>) -> [String; 6] {
    let chicks: Vec<&Chicks> = chicks.collect();
    let of = |score: &dyn Fn(&Chicks) -> Score| joined(chicks.iter().copied(), score);
    let way = |way| of(&|chicks| chicks.score(way));
    let (perchlight, eaten) = (way(Way::Perchlight), of(&Chicks::score_with_eaten));
    let calls = |score: &Score| plus_minus(score.false_calls_per_100_weeks());
    [
        calls(&way(Way::Single)),
        calls(&way(Way::Median)),
        calls(&perchlight),
        calls(&eaten),
        format!("{:.0}", perchlight.days_for_one_at_watch()),
        format!("{:.0}", perchlight.asked_per_100_weeks()),
    ]
}

fn row(text: &mut String, name: &str, cells: &[String]) {
    text.push_str("| ");
    text.push_str(name);
    for cell in cells {
        text.push_str(" | ");
        text.push_str(cell);
    }
    text.push_str(" |\n");
}

fn plus_minus(estimate: Estimate) -> String {
    format!("{:.1} ± {:.1}", estimate.value, estimate.half)
}

fn delays(score: &Score) -> String {
    let days = |share| {
        let days = score.delay(share);
        days.map_or_else(|| "never".to_owned(), |days| days.to_string())
    };
    let never = score.never_found_pct();
    let Estimate { value, half } = score.mean_delay();
    format!(
        "{} / {} / {value:.1} ± {half:.1}, {never:.1} %",
        days(0.5),
        days(0.9)
    )
}

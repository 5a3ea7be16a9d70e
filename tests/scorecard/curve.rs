//! False calls against delay as a picture: what other odds for a call would give.

use crate::simulator::score::{Chicks, Kind, Score};
use crate::simulator::watch::Way;

/// Odds along the curve.
const ODDS: [f64; 9] = [
    10.0, 20.0, 40.0, 70.0, 100.0, 150.0, 300.0, 1_000.0, 10_000.0,
];

/// The picture, px, and its plot within.
const WIDTH: f64 = 640.0;
const HEIGHT: f64 = 360.0;
const LEFT: f64 = 60.0;
const TOP: f64 = 20.0;
const BOTTOM: f64 = 310.0;
const RIGHT: f64 = 500.0;

/// False calls in a hundred weeks and days at the ends of the axes.
const MOST_CALLS: f64 = 8.0;
const MOST_DAYS: f64 = 10.0;

fn x(calls: f64) -> f64 {
    LEFT + (RIGHT - LEFT) * calls.min(MOST_CALLS) / MOST_CALLS
}

fn y(days: f64) -> f64 {
    BOTTOM - (BOTTOM - TOP) * days.min(MOST_DAYS) / MOST_DAYS
}

/// The curves of all illnesses against the false calls of all healthy kinds but the last, which is fat.
pub(crate) fn svg(healthy: &[&Chicks], ill: &[(Kind, &Chicks)]) -> String {
    let calls = |score: &dyn Fn(&Chicks) -> Score| {
        let scores: Vec<Score> = healthy.iter().map(|chicks| score(chicks)).collect();
        Score::joined(scores.iter())
            .false_calls_per_100_weeks()
            .value
    };
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} {HEIGHT}\" font-family=\"sans-serif\" \
         font-size=\"13\"><title>Mean days from the onset to the first call against false calls in a hundred \
         healthy weeks</title><rect width=\"{WIDTH}\" height=\"{HEIGHT}\" fill=\"#fff\"/>\
         <path d=\"M{LEFT} {TOP}V{BOTTOM}H{RIGHT}\" fill=\"none\" stroke=\"#333\"/>\
         <text x=\"{LEFT}\" y=\"350\">false calls in a hundred healthy weeks; line: odds 10 to 10,000, ring: the \
         odds in use, cross: one reading below 90 %</text>\
         <text x=\"8\" y=\"14\">days</text>\n"
    );
    for tick in 0..=4 {
        let tick = f64::from(tick);
        let (calls, days) = (tick * MOST_CALLS / 4.0, tick * MOST_DAYS / 4.0);
        let text = format!(
            "<text x=\"{:.0}\" y=\"328\" text-anchor=\"middle\">{calls}</text>\
             <text x=\"52\" y=\"{:.0}\" text-anchor=\"end\">{days}</text>\n",
            x(calls),
            y(days) + 4.0
        );
        svg.push_str(&text);
    }
    let along: Vec<f64> = ODDS
        .iter()
        .map(|odds| calls(&|chicks| chicks.score_with_odds(*odds)))
        .collect();
    let (used, single) = (
        calls(&|chicks| chicks.score(Way::Perchlight)),
        calls(&|chicks| chicks.score(Way::Single)),
    );
    for ((kind, chicks), colour) in ill.iter().zip(["#b3261e", "#7a5900", "#0b57d0"]) {
        let days = ODDS.map(|odds| chicks.score_with_odds(odds).mean_delay().value);
        let points = along.iter().zip(days);
        let points: Vec<String> = points
            .map(|(calls, days)| format!("{:.1},{:.1}", x(*calls), y(days)))
            .collect();
        let own = chicks.score(Way::Perchlight).mean_delay().value;
        let paper = chicks.score(Way::Single).mean_delay().value;
        let text = format!(
            "<polyline points=\"{}\" fill=\"none\" stroke=\"{colour}\" stroke-width=\"2\"/>\
             <circle cx=\"{:.1}\" cy=\"{:.1}\" r=\"6\" fill=\"none\" stroke=\"{colour}\" stroke-width=\"2\"/>\
             <path d=\"M{:.1} {:.1}l10 10m0 -10l-10 10\" stroke=\"{colour}\" stroke-width=\"2\"/>\
             <text x=\"{:.0}\" y=\"{:.0}\" fill=\"{colour}\">{}</text>\n",
            points.join(" "),
            x(used),
            y(own),
            x(single) - 5.0,
            y(paper) - 5.0,
            RIGHT - 20.0,
            y(own) + 4.0,
            kind.name
        );
        svg.push_str(&text);
    }
    svg.push_str("</svg>\n");
    svg
}

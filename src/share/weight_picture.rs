//! The weight chart as a picture that says by itself whose it is and what it means.

use crate::domain::count::rounded;
use crate::domain::outlook::Outlook;
use crate::domain::units::Grams;
use crate::share::chart_of::chart_of;
use crate::share::markup::escape;
use crate::share::report_parts::name_of;
use crate::share::weight_chart::SIZE;
use crate::words::format::Writing;

/// Most letters on a line of the title at its size. Ours, for the width of the picture.
const TITLE_LETTERS: usize = 38;
/// The same for the sentence below it.
const TEXT_LETTERS: usize = 54;
/// Height of a line, in the picture's own units.
const LINE: u32 = 18;
/// Room at both sides of the text.
const EDGE: u32 = 10;

/// A picture for other apps.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WeightPicture {
    /// The SVG text, on white paper.
    pub svg: String,
    /// Width in its own units.
    pub width: u32,
    /// Height in its own units.
    pub height: u32,
    /// What it means, for those who do not see it and for the caption.
    pub meaning: String,
}

/// The chart alone; `None` when there is nothing to draw. Holds numbers and dates only.
pub fn chart_svg(writing: Writing, outlook: &Outlook) -> Option<String> {
    let (chart, first_day) = chart_of(outlook);
    let day_label = |day: i32| {
        let (_, month, date) = first_day.plus(day).date();
        format!("{date}.{month}.")
    };
    let weight_label = |grams: f64| writing.mass_number(Grams::tenths_held(rounded(grams * 10.0)));
    chart.to_svg(&day_label, &weight_label).ok()
}

/// What the chart means, in one sentence; `None` before the first weighing with an empty crop.
pub fn chart_meaning(writing: Writing, outlook: &Outlook) -> Option<String> {
    let latest = outlook.weight.latest.as_ref()?;
    Some(writing.weight_meaning(
        latest.what.weight,
        outlook.weight.handover_loss_pct,
        outlook.chick.plan.loss_limit.as_pct(),
        outlook.level,
    ))
}

/// The chart below the chick's name, the day and what it means; `None` when there is nothing to draw.
pub fn weight_picture(writing: Writing, outlook: &Outlook) -> Option<WeightPicture> {
    let chart = chart_svg(writing, outlook)?;
    let meaning = chart_meaning(writing, outlook).unwrap_or_default();
    let title = format!(
        "{} \u{b7} {}",
        name_of(writing, &outlook.chick),
        writing.date(outlook.lived.day)
    );
    let strong = lines(&title, TITLE_LETTERS).into_iter();
    let plain = lines(&meaning, TEXT_LETTERS).into_iter();
    let lines = strong
        .map(|line| (line, 15, 700))
        .chain(plain.map(|line| (line, 12, 400)));
    let mut foot = EDGE;
    let text = lines.map(|(line, size, weight)| {
        foot += LINE;
        let line = escape(&line);
        format!(
            r##"<text x="{EDGE}" y="{foot}" font-family="sans-serif" font-size="{size}" font-weight="{weight}" fill="#1C2A30">{line}</text>"##
        )
    });
    let text: String = text.collect();
    let top = foot + EDGE;
    let (width, height) = (SIZE.0, SIZE.1 + top);
    let svg = format!(
        r##"<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{height}" viewBox="0 0 {width} {height}"><rect width="{width}" height="{height}" fill="#FFFFFF"/>{text}<g transform="translate(0 {top})">{chart}</g></svg>"##
    );
    Some(WeightPicture {
        svg,
        width,
        height,
        meaning,
    })
}

/// A text in lines of at most `most` letters, broken between words; a longer word is cut.
fn lines(text: &str, most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split(' ') {
        let word: String = word.chars().take(most).collect();
        match lines.last_mut() {
            Some(line) if line.chars().count() + word.chars().count() < most => {
                line.push(' ');
                line.push_str(&word);
            }
            Some(_) | None => lines.push(word),
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use crate::share::weight_picture::*;

    #[test]
    fn lines_break_between_words_and_never_run_over() {
        assert_eq!(lines("one two three", 7), ["one two", "three"]);
        assert_eq!(lines("one two three", 8), ["one two", "three"]);
        assert_eq!(lines("abcdefgh", 5), ["abcde"]);
    }
}

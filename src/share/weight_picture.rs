//! The weight chart as a picture that says by itself whose it is and what it means.

use crate::domain::outlook::Outlook;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::Grams;
use crate::domain::warnings::level::Level;
use crate::share::chart_of::chart_of;
use crate::share::markup::escape;
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
    let of_weight = outlook
        .findings
        .iter()
        .filter(|finding| finding.rule.is_of_weight());
    // What rings for another reason is no word about the weight, neither a bad nor a good one.
    let is_settled = outlook.level == Level::Settled;
    let level = of_weight.map(|finding| finding.level).max();
    let level = level.or(is_settled.then_some(Level::Settled));
    Some(writing.weight_meaning(
        latest.what.weight,
        outlook.weight.handover_loss_pct,
        outlook.chick.plan.loss_limit_in_force().as_pct(),
        level,
    ))
}

/// The chart below the chick's name, the day and what it means; `None` when there is nothing to draw.
pub fn weight_picture(writing: Writing, outlook: &Outlook) -> Option<WeightPicture> {
    let chart = chart_svg(writing, outlook)?;
    let meaning = chart_meaning(writing, outlook).unwrap_or_default();
    let title = format!(
        "{} \u{b7} {}",
        writing.name_of(&outlook.chick),
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
    use crate::domain::journal::entries::{Change, ChickId};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::journal::signs::Sign;
    use crate::domain::outlook::outlook;
    use crate::domain::plan::care_plan::{CarePlan, Reference};
    use crate::domain::plan::species::Species;
    use crate::domain::time::moment::{Day, Offset};
    use crate::share::weight_picture::*;
    use crate::words::Language;

    /// What is said of a chick handed over at 1,000 g with this weight and, if any, this sign.
    fn meaning(grams: i32, sign: Option<Sign>) -> String {
        let day = Day::from_date(2026, 11, 2).unwrap();
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let weight = Grams::whole(1_000);
        plan.reference = Some(Reference { weight, day });
        let chick = ChickId([7; 12]);
        let mut script = Scenario::new(chick, plan, day, Offset::UTC);
        script.weigh(0, grams);
        if let Some(sign) = sign {
            script.note(0, 6, 50, Change::SignSeen { sign });
        }
        let outlook = outlook(
            script.at(0, 6, 55),
            &script.journal(),
            chick,
            &script.zone(),
        );
        chart_meaning(Writing::metric(Language::English), &outlook.unwrap())
            .unwrap()
            .replace('\u{a0}', " ")
    }

    #[test]
    fn the_word_after_the_weight_is_about_the_weight() {
        let settled = "1005 g: 0.5 % above handover (limit 10.0 %). Settled.";
        assert_eq!(meaning(1_005, None), settled);
        // a cold chick is an emergency, its weight is none
        let cold = "1005 g: 0.5 % above handover (limit 10.0 %).";
        assert_eq!(meaning(1_005, Some(Sign::Cold)), cold);
        let lost = "890 g: 11.0 % below handover (limit 10.0 %). Call the breeder.";
        assert_eq!(meaning(890, None), lost);
        assert_eq!(meaning(890, Some(Sign::Cold)), lost);
    }

    #[test]
    fn lines_break_between_words_and_never_run_over() {
        assert_eq!(lines("one two three", 7), ["one two", "three"]);
        assert_eq!(lines("one two three", 8), ["one two", "three"]);
        assert_eq!(lines("abcdefgh", 5), ["abcde"]);
    }
}

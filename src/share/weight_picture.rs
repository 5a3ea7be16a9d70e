//! The weight chart as a picture that says by itself whose it is and what it means.

use crate::domain::outlook::Outlook;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::Day;
use crate::share::chart_of::{chart_of, plain_chart_of};
use crate::share::level_shape::{level_colour, level_shape};
use crate::share::markup::escape;
use crate::share::weight_chart::{ChartNames, Drawn, SIZE, WeightChart};
use crate::words::format::Writing;

/// Most letters on a line of the title at its size. Ours, for the width of the picture.
const TITLE_LETTERS: usize = 32;
/// The same for the sentence below it.
const TEXT_LETTERS: usize = 40;
/// Height of a line, in the picture's own units.
const LINE: u32 = 20;
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

/// The chart alone, as it is shown, sent and printed; `None` when there is nothing to draw. Holds numbers
/// and dates only.
pub fn chart_drawn(writing: Writing, outlook: &Outlook) -> Option<Drawn> {
    draw(writing, outlook, plain_chart_of(outlook))
}

/// The chart with the level, its band and the forecast.
pub fn full_chart_svg(writing: Writing, outlook: &Outlook) -> Option<String> {
    draw(writing, outlook, chart_of(outlook)).map(|drawn| drawn.svg)
}

fn draw(
    writing: Writing,
    outlook: &Outlook,
    (chart, first_day): (WeightChart, Day),
) -> Option<Drawn> {
    let mass = |grams: f64| Grams::tenths_held(rounded(grams * 10.0));
    let told = |weight: Option<Grams>, name: &dyn Fn(f64) -> String| {
        weight.map(|weight| name(weight.as_g())).unwrap_or_default()
    };
    let handover = outlook.chick.plan.reference.map(|handed| handed.weight);
    let last = chart.readings.last().map(|(_, grams, _)| *grams);
    let day = |day: i32| writing.day_and_month(first_day.plus(day));
    let weight = |grams: f64| writing.mass_number(mass(grams));
    let names = ChartNames {
        unit: writing.mass_unit(),
        handover: told(handover, &|grams| writing.handover_name(grams)),
        limit: told(outlook.weight.call_at, &|grams| writing.call_name(grams)),
        last: told(last.map(mass), &|grams| writing.mass(mass(grams))),
    };
    chart.draw(&names, &day, &weight).ok()
}

/// The chart below the chick's name, the day, the highest level of all, which need not be the weight's,
/// and what the weight means; `None` when there is nothing to draw.
pub fn weight_picture(writing: Writing, outlook: &Outlook) -> Option<WeightPicture> {
    let chart = chart_drawn(writing, outlook)?.svg;
    let level = writing.language.level(outlook.level);
    let state = writing.weight_state(outlook);
    let state = state.map(|state| state.whole()).unwrap_or_default();
    let title = format!(
        "{} \u{b7} {}",
        writing.name_of(&outlook.chick),
        writing.date(outlook.lived.day)
    );
    let mut foot = EDGE;
    let mut line_of = |line: &str, left: u32, size: u32, weight: u32| {
        foot += LINE;
        let line = escape(line);
        format!(
            r##"<text x="{left}" y="{foot}" font-family="sans-serif" font-size="{size}" font-weight="{weight}" fill="#1C2A30">{line}</text>"##
        )
    };
    let mut text = String::new();
    let title = lines(&title, TITLE_LETTERS);
    for line in &title {
        text += &line_of(line, EDGE, 16, 700);
    }
    text += &line_of(level, EDGE + 24, 16, 700);
    let above_level = (1..=title.len()).fold(EDGE, |foot, _| foot + LINE);
    for line in lines(&state, TEXT_LETTERS) {
        text += &line_of(&line, EDGE, 14, 400);
    }
    let shape = format!(
        r#"<path transform="translate({EDGE} {}) scale(0.75)" fill-rule="evenodd" fill="{}" d="{}"/>"#,
        above_level + LINE - 15,
        level_colour(outlook.level),
        level_shape(outlook.level)
    );
    let top = foot + EDGE;
    let (width, height) = (SIZE.0, SIZE.1 + top + EDGE);
    let svg = format!(
        r##"<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{height}" viewBox="0 0 {width} {height}"><rect width="{width}" height="{height}" fill="#FFFFFF"/>{text}{shape}<g transform="translate(0 {top})">{chart}</g></svg>"##
    );
    let meaning = format!("{level}. {state}").trim_end().to_owned();
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
            // half an hour later a single weighing counts
            script.at(0, 7, 20),
            &script.journal(),
            chick,
            &script.zone(),
        );
        weight_picture(Writing::metric(Language::English), &outlook.unwrap())
            .unwrap()
            .meaning
            .replace('\u{a0}', " ")
    }

    #[test]
    fn the_picture_carries_the_highest_level_and_the_sentence_that_of_the_weight() {
        // 1,005 is 0.5 % above 1,000; 5 % of 1,005 g within a day are for a call, at 954.75 g and below; the plan's limit
        // of 10 % is reached at 900 g.
        let above = "1005 g: 5 g (0.5 %) above handover.";
        let call = "Call the breeder at 954 g.";
        let settled = meaning(1_005, None);
        assert!(
            settled.starts_with(&format!("Settled. {above} Normal")),
            "{settled}"
        );
        assert!(settled.ends_with(call), "{settled}");
        // a cold chick is an emergency, its weight is none
        let cold = format!("Emergency. {above} {call}");
        assert_eq!(meaning(1_005, Some(Sign::Cold)), cold);
        let below = "890 g: 110 g (11.0 %) below handover.";
        let at = "The weight to call at is 900 g.";
        let calls = format!("Call the breeder. {below} Call the breeder. {at}");
        assert_eq!(meaning(890, None), calls);
        // Nothing beside the vet says to call the breeder.
        let cold = format!("Emergency. {below} {at}");
        assert_eq!(meaning(890, Some(Sign::Cold)), cold);
    }

    #[test]
    fn lines_break_between_words_and_never_run_over() {
        assert_eq!(lines("one two three", 7), ["one two", "three"]);
        assert_eq!(lines("one two three", 8), ["one two", "three"]);
        assert_eq!(lines("abcdefgh", 5), ["abcde"]);
    }
}

//! The last days of a chick as rows of a table: weight, food, crop, droppings, signs and events.

use crate::domain::feeding::day_food::{DayFood, day_foods};
use crate::domain::journal::chick::{Chick, CropLook, Noted, WeaningStep};
use crate::domain::journal::entries::CropFeel;
use crate::domain::outlook::Outlook;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::{Day, Lived, WallTime};
use crate::domain::weight::mornings::mornings;
use crate::share::report_parts::against_handover;
use crate::words::exchange::labelled;
use crate::words::format::Writing;

/// Days in the table, today among them.
pub(crate) const DAYS: i32 = 14;
/// Until then a look at the crop is the morning's. Ours.
const MORNING_ENDS: WallTime = WallTime::from_hour(12);
/// Letters on a line of the widest column, in print.
const EVENT_LETTERS: usize = 37;
/// The same of the column of droppings.
const DROPPINGS_LETTERS: usize = 16;
/// The same of the column of the crop.
const CROP_LETTERS: usize = 13;
/// Parts of a line, and how many of them the rule between two rows takes.
const LINE_PARTS: usize = 5;
const RULE_PARTS: usize = 1;
/// Most letters of one event.
const MOST_EVENT: usize = 90;
/// Lines of events on one of the latest days and on an earlier one.
const MOST_LINES: (usize, usize) = (3, 2);
/// How many days are the latest ones.
const LATEST: usize = 3;

/// One day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct DayRow {
    /// Day, weight, share of handover, eaten, crop, droppings, signs and events.
    pub(crate) cells: Vec<String>,
    /// Whether its weight was taken with food in the crop, or with the crop not felt.
    pub(crate) has_food: bool,
}

impl DayRow {
    /// What it takes in print: its lines and its rule, in parts of a line.
    fn parts(&self) -> usize {
        self.lines() * LINE_PARTS + RULE_PARTS
    }

    /// Lines that it takes in print.
    fn lines(&self) -> usize {
        let widths = [CROP_LETTERS, DROPPINGS_LETTERS, EVENT_LETTERS];
        let cells = self.cells.iter().skip(4).zip(widths);
        let lines = cells.map(|(cell, width)| cell.chars().count().div_ceil(width));
        lines.max().unwrap_or(1).max(1)
    }
}

/// The food of the last [`DAYS`] as far as something was noted in them, earliest first.
pub(crate) fn food_of_days(outlook: &Outlook) -> Vec<DayFood> {
    let (now, chick) = (outlook.now, &outlook.chick);
    let today = outlook.lived.care_day();
    let begun = begun(chick).unwrap_or(today);
    let first = begun.max(today.plus(1 - DAYS)).min(today);
    day_foods(now, chick, &outlook.zone, first, today)
}

/// Whether somebody felt the crop this morning.
pub(crate) fn is_crop_seen(outlook: &Outlook) -> bool {
    crop(outlook, outlook.lived.care_day()).is_some()
}

/// The days of this food, the latest first: as many as take `lines` in print, one at least.
pub(crate) fn vet_days(
    writing: Writing,
    outlook: &Outlook,
    food: &[DayFood],
    lines: usize,
) -> Vec<DayRow> {
    let today = outlook.lived.care_day();
    let days = Days {
        writing,
        outlook,
        today,
    };
    let mut left = lines * LINE_PARTS;
    let mut rows = Vec::new();
    for (place, food) in food.iter().rev().enumerate() {
        let most = if place < LATEST {
            MOST_LINES.0
        } else {
            MOST_LINES.1
        };
        let row = days.row(food, most);
        match left.checked_sub(row.parts()) {
            Some(rest) => left = rest,
            None if rows.is_empty() => left = 0,
            None => break,
        }
        rows.push(row);
    }
    rows
}

/// The first look at the crop of a morning.
fn crop(outlook: &Outlook, day: Day) -> Option<CropLook> {
    let mut looks = outlook.chick.crops.iter();
    let look = looks.find(|look| {
        let lived = look.lived();
        look.at <= outlook.now
            && lived.day == day
            && lived.care_day() == day
            && lived.time < MORNING_ENDS
    })?;
    Some(look.what)
}

/// The day of the first thing noted of how it does.
fn begun(chick: &Chick) -> Option<Day> {
    let weighings = chick.weighings.first().map(Noted::lived);
    let feeds = chick.feeds.first().map(Noted::lived);
    let arrived = chick.arrived.as_ref().map(Noted::lived);
    let first = [weighings, feeds, arrived].into_iter().flatten();
    first.map(Lived::care_day).min()
}

#[derive(Debug, Clone, Copy)]
struct Days<'a> {
    writing: Writing,
    outlook: &'a Outlook,
    today: Day,
}

impl<'a> Days<'a> {
    fn row(self, food: &DayFood, most_lines: usize) -> DayRow {
        let (writing, say) = (self.writing, self.writing.language);
        let (weight, against, has_food) = self.weight(food.day);
        let crop = self.crop(food.day);
        let cells = vec![
            writing.day(food.day),
            weight,
            against,
            writing.eaten_of_plan(food, food.day == self.today),
            crop.unwrap_or_else(|| say.vet_not_noted().to_owned()),
            self.droppings(food.day),
            events(writing, self.events(food), most_lines),
        ];
        DayRow { cells, has_food }
    }

    /// What was noted on a day of care, up to now.
    fn of_day<T>(self, noted: &'a [Noted<T>], day: Day) -> impl Iterator<Item = &'a Noted<T>> {
        let now = self.outlook.now;
        let is_of = move |one: &&Noted<T>| one.at <= now && one.lived().care_day() == day;
        noted.iter().filter(is_of)
    }

    /// The morning's weight with an empty crop and how far it is from handover; else one with food, marked.
    fn weight(self, day: Day) -> (String, String, bool) {
        let (writing, chick) = (self.writing, &self.outlook.chick);
        let mornings = mornings(self.outlook.now, chick);
        let empty = mornings.iter().find(|morning| morning.day == day);
        if let Some(morning) = empty {
            let weight = Grams::tenths_held(rounded(morning.grams * 10.0));
            let against = against_handover(chick, weight);
            let against = against.map(|loss| writing.signed_pct(loss));
            let weight = writing.mass_number(weight);
            return (weight, against.unwrap_or_default(), false);
        }
        let with_food = self.of_day(&chick.weighings, day).last();
        let weight = with_food.map(|one| format!("{}*", writing.mass_number(one.what.weight)));
        let has_food = weight.is_some();
        (
            weight.unwrap_or_else(|| "\u{2013}".to_owned()),
            String::new(),
            has_food,
        )
    }

    /// What was felt of the crop in the morning.
    fn crop(self, day: Day) -> Option<String> {
        let say = self.writing.language;
        let look = crop(self.outlook, day)?;
        let state = say.crop_state(look.state);
        Some(match look.feel {
            CropFeel::Firm => format!("{state}, {}", say.crop_feel(CropFeel::Firm)),
            CropFeel::Soft | CropFeel::NotNoted => state.to_owned(),
        })
    }

    /// What was not as usual, else that it was; and how many lay there.
    fn droppings(self, day: Day) -> String {
        let (say, chick) = (self.writing.language, &self.outlook.chick);
        let looks: Vec<_> = self
            .of_day(&chick.droppings, day)
            .map(|look| look.what)
            .collect();
        let mut told: Vec<String> = Vec::new();
        let unusual = looks.iter().rev().filter(|look| !look.is_usual());
        for look in unusual.chain(looks.last().filter(|last| last.is_usual())) {
            let look = say.clinical_droppings(*look).to_owned();
            if !told.contains(&look) {
                told.push(look);
            }
        }
        let counts = self.of_day(&chick.droppings_counts, day);
        told.extend(counts.map(|counted| say.count_of_day(counted.what)));
        if told.is_empty() {
            told.push(say.vet_not_noted().to_owned());
        }
        told.join("; ")
    }

    /// Signs, then what was said, then feeds, then what was decided: what a vet asks first stands first.
    fn events(self, food: &DayFood) -> Vec<String> {
        let (writing, say) = (self.writing, self.writing.language);
        let (chick, day) = (&self.outlook.chick, food.day);
        let mut told = Vec::new();
        let signs: Vec<_> = self.of_day(&chick.signs, day).collect();
        for (place, seen) in signs.iter().enumerate() {
            let is_again = signs
                .iter()
                .skip(place + 1)
                .any(|later| later.what == seen.what);
            if !is_again {
                let gone = chick.signs_gone.get(&seen.what);
                let is_gone = gone.is_some_and(|gone| *gone >= seen.at);
                let gone = if is_gone { say.vet_gone() } else { "" };
                told.push(format!("{}{gone}", say.clinical_sign(seen.what)));
            }
        }
        told.extend(
            self.of_day(&chick.advice, day)
                .map(|one| writing.advice_line(one)),
        );
        told.extend(self.of_day(&chick.calls, day).map(|call| {
            let called = format!("{} {}", say.entry_rang(), say.role(call.what.whom));
            labelled(&called, &call.what.agreed)
        }));
        told.extend(
            self.of_day(&chick.vet_visits, day)
                .map(|visit| labelled(say.entry_vet_seen(), &visit.what)),
        );
        told.extend(writing.feed_events(&food.feeds));
        told.extend(
            self.of_day(&chick.weaning, day)
                .map(|step| match step.what {
                    WeaningStep::Dropped { slot, .. } => {
                        format!("{} {}", say.slot(slot), say.entry_dropped())
                    }
                    WeaningStep::BroughtBack { slot } => {
                        format!("{} {}", say.slot(slot), say.entry_brought_back())
                    }
                }),
        );
        let home = chick
            .arrived
            .iter()
            .filter(|home| home.lived().care_day() == day);
        told.extend(home.map(|_| say.entry_arrived().to_owned()));
        told.extend(
            self.of_day(&chick.handed_over, day)
                .map(|handed| labelled(say.handed_to(handed.what.to), &handed.what.name)),
        );
        told
    }
}

/// The events that fit, and how many more there are.
fn events(writing: Writing, told: Vec<String>, most_lines: usize) -> String {
    let most = most_lines * EVENT_LETTERS;
    let count = told.len();
    let mut line = String::new();
    for (place, event) in told.into_iter().enumerate() {
        let event = clipped(&event, MOST_EVENT);
        let gap = if line.is_empty() { "" } else { "; " };
        let more = writing.and_more(count - place);
        // Room for the words that say how many more there are, unless this is the last one.
        let kept = if place + 1 == count {
            0
        } else {
            more.chars().count() + 2
        };
        if most < line.chars().count() + gap.len() + event.chars().count() + kept {
            return format!("{line}{gap}{more}");
        }
        line += gap;
        line += &event;
    }
    line
}

/// A text of at most so many letters; a longer one ends with an ellipsis.
pub(crate) fn clipped(text: &str, most: usize) -> String {
    if text.chars().count() <= most {
        return text.to_owned();
    }
    let start: String = text.chars().take(most.saturating_sub(1)).collect();
    format!("{}\u{2026}", start.trim_end())
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{
        Change, ChickId, CropAtWeighing, CropState, Droppings, Paper, Response, WhyPassedOver,
    };
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::journal::signs::Sign;
    use crate::domain::outlook::outlook;
    use crate::domain::plan::care_plan::{CarePlan, Reference, Role, Slot};
    use crate::domain::plan::species::Species;
    use crate::domain::quantity::units::Millilitres;
    use crate::domain::time::moment::Offset;
    use crate::share::vet_days::*;
    use crate::words::Language;

    const CHICK: ChickId = ChickId([7; 12]);

    /// Handed over at 1,010 g on 1 December 2026, fed 60 ml at 07:00, 14:00 and 21:00.
    fn chick() -> Scenario {
        let day = Day::from_date(2026, 12, 1).unwrap();
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let weight = Grams::whole(1_010);
        plan.reference = Some(Reference { weight, day });
        for feed in &mut plan.feeds {
            feed.volume = Millilitres::whole(60);
        }
        Scenario::new(CHICK, plan, day, Offset::UTC)
    }

    fn days(
        script: &Scenario,
        language: Language,
        day: i32,
        hour: i32,
        lines: usize,
    ) -> Vec<DayRow> {
        let now = script.at(day, hour, 0);
        let seen = outlook(now, &script.journal(), CHICK, &script.zone()).unwrap();
        vet_days(
            Writing::metric(language),
            &seen,
            &food_of_days(&seen),
            lines,
        )
    }

    /// The rows of 08:00 on a day, with plain spaces.
    fn rows(script: &Scenario, day: i32) -> Vec<Vec<String>> {
        let plain = |row: DayRow| {
            let cells = row.cells.into_iter();
            cells.map(|cell| cell.replace('\u{a0}', " ")).collect()
        };
        let days = days(script, Language::English, day, 8, 40);
        days.into_iter().map(plain).collect()
    }

    fn part(taken: i32) -> Change {
        Change::Fed {
            counts_as: None,
            taken: Millilitres::whole(taken),
            offered: Millilitres::whole(60),
            served_at: None,
            response: Response::Slow,
        }
    }

    fn crop(state: CropState) -> Change {
        let feel = CropFeel::Soft;
        Change::CropSeen { state, feel }
    }

    #[test]
    fn a_day_tells_weight_food_crop_droppings_and_what_happened() {
        let mut script = chick();
        script.weigh(1, 998).note(1, 6, 50, crop(CropState::Flat));
        script.food(1, 7, 0, 60).note(1, 14, 0, part(30));
        script.note(1, 21, 0, Change::refused(Some(Slot::Bedtime)));
        let look = Droppings::Watery;
        script.note(1, 9, 0, Change::DroppingsSeen { look });
        let (paper, count) = (Paper::Day, 18);
        script.note(1, 21, 30, Change::DroppingsCounted { paper, count });
        let sign = Sign::Dull;
        script.note(1, 16, 0, Change::SignSeen { sign });
        let (whom, agreed) = (Role::Breeder, "wait until morning".to_owned());
        script.note(1, 21, 40, Change::Called { whom, agreed });
        let found = rows(&script, 2);
        // (998 - 1010) / 1010 = -1.188 %; 60 + 30 + 0 of 180 ml are 50 %
        let events = "fluffed up, lethargic; Called: Breeder: wait until morning; midday 30 of 60 ml; bedtime refused";
        let expected = [
            "Wed 2 Dec",
            "998",
            "\u{2212}1.2",
            "50 %",
            "flat",
            "polyuria, stool formed; 18",
            events,
        ];
        assert_eq!(found[1], expected);
        // The day after, at 08:00: the morning feed of 07:00 has come, and nothing else was noted.
        let today = [
            "Thu 3 Dec",
            "\u{2013}",
            "",
            "0 of 60 ml",
            "not noted",
            "not noted",
            "",
        ];
        assert_eq!(found[0], today);
    }

    #[test]
    fn a_weight_with_food_is_marked_and_compared_with_nothing() {
        let mut script = chick();
        let weight = Grams::whole(1_019);
        let after = CropAtWeighing::AfterFeed;
        script.note(
            1,
            7,
            40,
            Change::Weighed {
                weight,
                crop: after,
            },
        );
        let found = days(&script, Language::English, 1, 8, 40);
        assert_eq!(found[0].cells[1..3], ["1019*", ""]);
        assert!(found[0].has_food);
        // An empty-crop weight of the same day counts before it.
        script.weigh(1, 1_000);
        let found = days(&script, Language::English, 1, 8, 40);
        // (1000 - 1010) / 1010 = -0.99 %
        assert_eq!(found[0].cells[1..3], ["1000", "\u{2212}1.0"]);
        assert!(!found[0].has_food);
    }

    #[test]
    fn a_feed_nobody_noted_makes_the_share_a_least_and_one_left_out_says_why() {
        let mut script = chick();
        script.food(1, 7, 0, 60);
        script.leave_out(1, 14, 0, Slot::Midday, WhyPassedOver::CropNotEmpty);
        let found = rows(&script, 2);
        // 60 of 180 ml: 33 %
        assert_eq!(found[1][3], "\u{2265} 33 %");
        assert!(
            found[1][6].starts_with("midday left out ("),
            "{}",
            found[1][6]
        );
        assert!(
            found[1][6].ends_with("bedtime not noted"),
            "{}",
            found[1][6]
        );
    }

    #[test]
    fn fourteen_days_are_told_and_no_day_before_the_first_note() {
        let mut script = chick();
        for day in 3..=20 {
            script.weigh(day, 1_000);
        }
        assert_eq!(rows(&script, 20).len(), 14);
        assert_eq!(rows(&script, 8).len(), 6);
        assert_eq!(rows(&script, 20)[13][0], "Tue 8 Dec");
    }

    #[test]
    fn the_earliest_days_go_where_there_is_no_room() {
        let mut script = chick();
        for day in 1..=14 {
            script.weigh(day, 1_000);
        }
        let count = |lines| days(&script, Language::English, 14, 8, lines).len();
        // A row of one line takes 1.2 of them: 12 lines hold ten.
        assert_eq!((count(40), count(12), count(1)), (14, 10, 1));
    }

    #[test]
    fn events_end_with_how_many_more_there_are() {
        let writing = Writing::metric(Language::English);
        let told = |count: usize| vec!["twenty letters long.".to_owned(); count];
        // 37 letters a line: 20 + 2 + 20 = 42
        let both = "twenty letters long.; twenty letters long.";
        assert_eq!(events(writing, told(2), 2), both);
        let first = "twenty letters long.; and 1 more";
        assert_eq!(events(writing, told(2), 1), first);
        let long = vec!["x".repeat(200)];
        assert_eq!(events(writing, long, 4).chars().count(), MOST_EVENT);
    }

    #[test]
    fn a_day_of_years_of_events_keeps_to_its_lines() {
        let mut script = chick();
        script.weigh(1, 1_000);
        for minute in 0..50 {
            let (whom, agreed) = (Role::AvianVet, "word ".repeat(100));
            script.note(1, 8, minute, Change::Called { whom, agreed });
        }
        for language in Language::ALL {
            let found = days(&script, language, 2, 8, 40);
            assert!(found[1].lines() <= MOST_LINES.0);
        }
    }
}

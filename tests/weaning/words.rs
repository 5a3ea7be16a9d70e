//! What a person reads of weaning.

use perchlight::domain::journal::entries::{Change, Droppings};
use perchlight::domain::journal::signs::Sign;
use perchlight::domain::plan::care_plan::Slot;
use perchlight::domain::weaning::Weaning;
use perchlight::words::Language;
use perchlight::words::format::Writing;

use crate::script::{
    Without, arrived, at, dropped, droppings, evening, good_days, judged, plan, ready, sign,
};

/// With no-break spaces as spaces.
fn answer(language: Language, weaning: &Weaning) -> String {
    Writing::metric(language)
        .weaning_answer(weaning, None)
        .replace('\u{a0}', " ")
}

fn falling() -> Weaning {
    let mut script = arrived(plan());
    good_days(&mut script, 1, 4, Without::Nothing);
    good_days(&mut script, 5, 9, Without::Weight);
    for (day, grams) in (5..=9).zip([1_050, 1_035, 1_020, 1_005, 990]) {
        script.weigh(day, grams);
    }
    judged(&script, script.at(9, 22, 0), &[], Some(91.2))
}

#[test]
fn the_answer_comes_first_with_its_number_and_its_day() {
    // 15 g a day of a middle weight of 1,020 g: 1.47 %; days 10 and 11 are 12 and 13 November.
    assert_eq!(
        answer(Language::English, &falling()),
        "Not yet. Weight is 91.2 % of its highest and falling by 1.5 % a day; two more steady mornings \
         needed. At the earliest on Fri 13 Nov."
    );
    assert_eq!(
        answer(Language::Spanish, &falling()),
        "Todavía no. El peso es un 91,2 % de su máximo y baja un 1,5 % al día; faltan dos mañanas \
         estables más. Como pronto, el vie 13 nov."
    );
}

#[test]
fn a_drop_and_a_return_name_the_feed() {
    let ready = evening(&ready());
    assert_eq!(
        answer(Language::English, &ready),
        "You may drop the midday feed: every check below says yes."
    );
    assert!(answer(Language::Spanish, &ready).starts_with("Puede quitar la toma del mediodía: "));
    let mut script = crate::script::ready();
    script.note(9, 10, 0, dropped(Slot::Midday));
    script.note(10, 10, 0, sign(Sign::BegsAllDay));
    script.note(11, 10, 0, sign(Sign::BegsAllDay));
    script.note(11, 11, 0, droppings(Droppings::SmallOrFew));
    assert_eq!(
        answer(Language::English, &at(&script, 11, 12, 0)),
        "Offer the midday feed again: it begs all day; droppings are small, dark or few."
    );
}

// The heading let a feed go, and the line below it said to ask the breeder first.
#[test]
fn a_feed_that_is_asked_about_is_never_said_to_go() {
    let ready = evening(&ready());
    let asked = |language, name| Writing::metric(language).weaning_answer(&ready, Some(name));
    assert_eq!(
        asked(Language::English, "Ana"),
        "The midday feed could go next. Ask Ana first."
    );
    assert_eq!(
        asked(Language::English, " "),
        "The midday feed could go next. Ask the breeder first."
    );
    assert_eq!(
        asked(Language::Spanish, "Ana"),
        "Se podría quitar la toma del mediodía. Pregunte antes a Ana."
    );
    assert_eq!(
        asked(Language::Spanish, ""),
        "Se podría quitar la toma del mediodía. Pregunte antes al criador."
    );
}

#[test]
fn the_order_ends_with_the_last_feed() {
    let order = [Slot::Midday, Slot::Morning, Slot::Bedtime];
    let text = |order: &[Slot]| Language::English.weaning_order_text(order);
    assert_eq!(
        text(&order),
        "Next to go: midday. Then morning, bedtime last."
    );
    assert_eq!(text(&order[2..]), "Next to go: bedtime.");
    assert_eq!(text(&[]), "");
}

#[test]
fn every_line_has_its_number_in_both_languages() {
    let mut script = ready();
    script.note(2, 10, 0, sign(Sign::UndigestedFood));
    script.note(9, 10, 0, dropped(Slot::Midday));
    script.note(9, 11, 0, Change::FeedBroughtBack { slot: Slot::Midday });
    script.note(9, 12, 0, dropped(Slot::Morning));
    script.weigh(10, 990);
    let weaning = at(&script, 10, 8, 0);
    for language in Language::ALL {
        let writing = Writing::metric(language);
        let checks = weaning
            .checks
            .iter()
            .map(|check| writing.weaning_check_line(check, Slot::Midday));
        let triggers = weaning
            .triggers
            .iter()
            .map(|check| writing.weaning_trigger_line(check));
        for line in checks.chain(triggers) {
            let has_number = line.contains(|letter: char| letter.is_ascii_digit());
            let of_looks = line.contains("small") || line.contains("pequeñas");
            assert!(has_number || of_looks, "{line}");
            assert!(!line.contains('–'), "{line}");
        }
    }
}

#[test]
fn what_is_met_needs_no_change_and_what_is_not_says_what_would_do() {
    let weaning = falling();
    let writing = Writing::metric(Language::English);
    let changes: Vec<String> = weaning
        .checks
        .iter()
        .filter_map(|check| writing.weaning_check_change(check))
        .collect();
    assert_eq!(
        changes,
        [
            "Weigh every morning with an empty crop. The weight must stay the same. On Fri 13 Nov at the earliest."
        ]
    );
}

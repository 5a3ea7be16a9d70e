//! Weighings, feeds and droppings of a chick as tables for spreadsheets.
//!
//! Numbers have a point and no unit, days are `YYYY-MM-DD`, times the wall clock's: the same in every
//! language and with every chosen unit, so that tables of two people fit together. The file begins
//! with a byte order mark, without which some spreadsheets misread accents.

use crate::domain::journal::chick::{Chick, FeedOutcome};
use crate::domain::outlook::Outlook;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::order::sorted;
use crate::domain::time::moment::Lived;
use crate::share::csv::{Cell, push_row};
use crate::share::report_parts::against_handover;
use crate::words::Language;

const BYTE_ORDER_MARK: char = '\u{feff}';

/// Weighings, oldest first.
pub fn weights_csv(language: Language, chick: &Chick) -> String {
    let headings = [
        language.table_chick(),
        language.table_date(),
        language.table_time(),
        language.table_weight(),
        language.table_crop(),
        language.table_loss(),
    ];
    let mut table = started(&headings);
    for weighing in &chick.weighings {
        let (date, time) = date_and_time(weighing.lived());
        let weight = weighing.what.weight;
        let loss = against_handover(chick, weight).map(|loss| plain(rounded(loss * 10.0)));
        push_row(
            &mut table,
            &[
                Cell::Typed(&chick.plan.name),
                Cell::Exact(&date),
                Cell::Exact(&time),
                Cell::Exact(&plain(weight.tenths())),
                Cell::Exact(language.crop_at_weighing(weighing.what.crop)),
                Cell::Exact(&loss.unwrap_or_default()),
            ],
        );
    }
    table
}

/// Feeds given, refused and left out, oldest first.
pub fn feeds_csv(language: Language, outlook: &Outlook) -> String {
    let (chick, names) = (&outlook.chick, outlook.food());
    let headings = [
        language.table_chick(),
        language.table_date(),
        language.table_time(),
        language.table_feed(),
        language.table_outcome(),
        language.table_taken(),
        language.table_offered(),
        language.table_served(),
        language.table_response(),
    ];
    let mut table = started(&headings);
    for feed in &chick.feeds {
        let (date, time) = date_and_time(feed.lived());
        let cells = outcome_cells(language, feed.what.outcome);
        let [outcome, taken, offered, served, response] = &cells;
        push_row(
            &mut table,
            &[
                Cell::Typed(&chick.plan.name),
                Cell::Exact(&date),
                Cell::Exact(&time),
                Cell::Exact(language.slot_or_extra(names.get(&feed.id).copied())),
                Cell::Exact(outcome),
                Cell::Exact(taken),
                Cell::Exact(offered),
                Cell::Exact(served),
                Cell::Exact(response),
            ],
        );
    }
    table
}

/// Looks at the droppings and counts of them, oldest first.
pub fn droppings_csv(language: Language, chick: &Chick) -> String {
    let looks = chick.droppings.iter().map(|look| {
        let cells = [
            language.droppings(look.what).to_owned(),
            String::new(),
            String::new(),
        ];
        (look.at, look.lived(), cells)
    });
    let counts = chick.droppings_counts.iter().map(|counted| {
        let (count, paper) = (counted.what.count.to_string(), counted.what.paper);
        let cells = [String::new(), count, language.paper(paper).to_owned()];
        (counted.at, counted.lived(), cells)
    });
    let headings = [
        language.table_chick(),
        language.table_date(),
        language.table_time(),
        language.table_look(),
        language.table_count(),
        language.table_paper(),
    ];
    let mut table = started(&headings);
    for (_, lived, [look, count, paper]) in sorted(looks.chain(counts).collect()) {
        let (date, time) = date_and_time(lived);
        push_row(
            &mut table,
            &[
                Cell::Typed(&chick.plan.name),
                Cell::Exact(&date),
                Cell::Exact(&time),
                Cell::Exact(&look),
                Cell::Exact(&count),
                Cell::Exact(&paper),
            ],
        );
    }
    table
}

fn outcome_cells(language: Language, outcome: FeedOutcome) -> [String; 5] {
    match outcome {
        FeedOutcome::Given {
            taken,
            offered,
            served_at,
            response,
        } => {
            let served = served_at.map(|served| plain(served.tenths()));
            [
                language.table_given().to_owned(),
                plain(taken.tenths()),
                plain(offered.tenths()),
                served.unwrap_or_default(),
                language.response(response).to_owned(),
            ]
        }
        FeedOutcome::Refused { .. } => without_numbers(language.strip_refused().to_owned()),
        FeedOutcome::PassedOver { why, .. } => {
            let (left_out, why) = (language.entry_left_out(), language.why_passed_over(why));
            without_numbers(format!("{left_out}: {why}"))
        }
    }
}

const fn without_numbers(outcome: String) -> [String; 5] {
    [
        outcome,
        String::new(),
        String::new(),
        String::new(),
        String::new(),
    ]
}

/// A table with its headings, after the byte order mark.
pub(crate) fn started(headings: &[&str]) -> String {
    let mut table = String::from(BYTE_ORDER_MARK);
    let cells: Vec<Cell<'_>> = headings.iter().map(|text| Cell::Exact(text)).collect();
    push_row(&mut table, &cells);
    table
}

fn date_and_time(lived: Lived) -> (String, String) {
    (lived.day.iso(), lived.time.text())
}

/// Tenths with a point: `1012`, `84.5`, `-2.7`.
pub(crate) fn plain(tenths: i32) -> String {
    let sign = if tenths < 0 { "-" } else { "" };
    let (whole, tenth) = (tenths.unsigned_abs() / 10, tenths.unsigned_abs() % 10);
    match tenth {
        0 => format!("{sign}{whole}"),
        tenth => format!("{sign}{whole}.{tenth}"),
    }
}

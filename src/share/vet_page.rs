//! One page for the avian vet, in the order in which a vet asks.

use crate::domain::feeding::crop;
use crate::domain::journal::chick::{Chick, Noted};
use crate::domain::journal::signs::Sign;
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::Slot;
use crate::domain::plan::plan_line::PlanLine;
use crate::share::page::{Page, Paper};
use crate::share::report_parts::{put_chart, put_contacts, put_feeds, put_findings, put_weighings};
use crate::words::exchange::labelled;
use crate::words::format::Writing;
use crate::words::signs;

/// Rows of each list: what fits on one A4 page beside the chart.
const ROWS: usize = 6;
/// Rows of the lists at the end.
const FEW: usize = 3;

/// The page as HTML for print; it carries no data.
pub fn vet_page_html(writing: Writing, outlook: &Outlook) -> String {
    let say = writing.language;
    let chick = &outlook.chick;
    let mut page = Page::new(say, &writing.name_of(chick), Paper::OneA4);
    page.paragraph("small", &writing.made_at(outlook.lived));
    page.pairs(&writing.signalment(outlook));
    page.heading(say.vet_reason());
    put_findings(&mut page, writing, outlook, ROWS);
    page.heading(say.weight_title());
    page.pairs(&writing.figures(outlook));
    put_chart(&mut page, writing, outlook);
    put_weighings(&mut page, writing, chick, ROWS);
    page.heading(say.vet_feeding());
    page.pairs(&lines(writing, chick, &FEEDING));
    let open = writing.plan_open(chick).into_iter().take(FEW);
    page.list(&open.collect::<Vec<_>>());
    put_feeds(&mut page, writing, outlook, ROWS);
    page.heading(say.now_crop());
    let emptying = crop::usual_minutes(outlook.now, chick);
    let emptying =
        emptying.map(|minutes| (say.vet_emptying().to_owned(), writing.minutes(minutes)));
    page.pairs(emptying.as_slice());
    put_seen(
        &mut page,
        writing,
        &seen(writing, ROWS, &chick.crops, |look| {
            let (state, feel) = (say.crop_state(look.state), say.crop_feel(look.feel));
            format!("{state}, {feel}")
        }),
    );
    page.heading(say.now_droppings());
    put_seen(
        &mut page,
        writing,
        &seen(writing, ROWS, &chick.droppings, |look| {
            say.droppings(*look).to_owned()
        }),
    );
    page.pairs(writing.usual_droppings(outlook.now, chick).as_slice());
    page.list(&seen(writing, FEW, &chick.droppings_counts, |counted| {
        say.counted(*counted)
    }));
    page.heading(say.vet_signs());
    put_seen(&mut page, writing, &signs_seen(writing, chick));
    page.heading(say.vet_environment());
    page.pairs(&lines(writing, chick, &ENVIRONMENT));
    page.list(&seen(writing, FEW, &chick.rooms, |room| {
        writing.temperature(*room)
    }));
    page.list(&seen(writing, FEW, &chick.solids, |look| {
        let eaten = say.solids_eaten(look.eaten);
        labelled(eaten, &look.what)
    }));
    page.list(&seen(writing, FEW, &chick.calls, |call| {
        let whom = say.role(call.whom);
        let rang = format!("{} {whom}", say.entry_rang());
        labelled(&rang, &call.agreed)
    }));
    put_contacts(&mut page, writing, chick);
    page.paragraph("small", say.caution_short());
    page.finish(None)
}

const FEEDING: [PlanLine; 15] = [
    PlanLine::Feed(Slot::EarlyMorning),
    PlanLine::Feed(Slot::Morning),
    PlanLine::Feed(Slot::Midday),
    PlanLine::Feed(Slot::Afternoon),
    PlanLine::Feed(Slot::Evening),
    PlanLine::Feed(Slot::Bedtime),
    PlanLine::PowderShare,
    PlanLine::FatSupplement,
    PlanLine::PowderLabel,
    PlanLine::MixingWater,
    PlanLine::ServingWindow,
    PlanLine::Tool,
    PlanLine::Syringe,
    PlanLine::Note,
    PlanLine::NoteForChick,
];

const ENVIRONMENT: [PlanLine; 3] = [PlanLine::Room, PlanLine::Journey, PlanLine::Solids];

fn lines(writing: Writing, chick: &Chick, parts: &[PlanLine]) -> Vec<(String, String)> {
    let line = |part: &PlanLine| {
        let value = writing.plan_value(&chick.plan, *part)?;
        Some((writing.plan_label(*part).to_owned(), value))
    };
    parts.iter().filter_map(line).collect()
}

/// A list, or a line that says that nothing was noted: a vet need not ask.
fn put_seen(page: &mut Page, writing: Writing, lines: &[String]) {
    if lines.is_empty() {
        page.paragraph("", writing.language.vet_none());
    }
    page.list(lines);
}

/// The latest signs; one that was noted as gone after this sighting says so.
fn signs_seen(writing: Writing, chick: &Chick) -> Vec<String> {
    let say = writing.language;
    let line = |seen: &Noted<Sign>| {
        let gone = chick.signs_gone.get(&seen.what);
        let is_gone = gone.is_some_and(|gone| *gone >= seen.at);
        let gone = if is_gone { say.vet_gone() } else { "" };
        let (lived, sign) = (seen.lived(), signs::sign(say, seen.what).seen);
        format!("{}: {sign}{gone}", writing.lived(lived))
    };
    chick.signs.iter().rev().take(ROWS).map(line).collect()
}

/// The latest sightings, each with when it was, latest first.
fn seen<T>(
    writing: Writing,
    most: usize,
    noted: &[Noted<T>],
    words: impl Fn(&T) -> String,
) -> Vec<String> {
    let latest = noted.iter().rev().take(most);
    let line = |one: &Noted<T>| format!("{}: {}", writing.lived(one.lived()), words(&one.what));
    latest.map(line).collect()
}

//! One A4 page for the avian vet: who, why, the last days, what it eats, how it lives, what is not known.
//!
//! Typed texts are cut where they would run over the page; the report holds them whole.

use crate::domain::feeding::crop;
use crate::domain::feeding::day_food::{Intake, intake};
use crate::domain::journal::chick::{Chick, FeedOutcome, Noted};
use crate::domain::outlook::Outlook;
use crate::domain::plan::care_plan::Role;
use crate::domain::plan::plan_line::PlanLine;
use crate::domain::plan::topic::Topic;
use crate::share::page::{Page, Paper};
use crate::share::photos::{MOST_FOR_VET, Pictures, latest_photos, put_photos};
use crate::share::report_parts::put_findings;
use crate::share::vet_days::{VetDays, clipped, vet_days};
use crate::share::weight_picture::chart_drawn;
use crate::words::exchange::labelled;
use crate::words::format::Writing;

/// Findings beside the reason.
const FINDINGS: usize = 3;
/// Lines of the table of days, and how many of them a row of photos takes.
const TABLE_LINES: usize = 27;
const PHOTO_LINES: usize = 7;
/// Letters of a line of the reason, in print.
const REASON_LETTERS: usize = 95;
/// Most letters of the reason, of a text of the plan, and of a list of people.
const MOST_REASON: usize = 380;
const MOST_TEXT: usize = 130;
/// Most people of a role.
const MOST_PEOPLE: usize = 2;
/// Lines of the plan that are asked for or not agreed.
const PLAN_OPEN: usize = 2;
/// Solids told, the latest first.
const SOLIDS: usize = 3;

/// The page as HTML for print, without pictures of photos; it carries no data.
pub fn vet_page_html(writing: Writing, outlook: &Outlook) -> String {
    vet_page_with_photos_html(writing, outlook, &Pictures::new())
}

/// The page as HTML for print, with the latest photos whose pictures are at hand; it carries no data.
pub fn vet_page_with_photos_html(
    writing: Writing,
    outlook: &Outlook,
    pictures: &Pictures,
) -> String {
    let say = writing.language;
    let chick = &outlook.chick;
    let photos = latest_photos(outlook.now, chick, MOST_FOR_VET);
    let has_photos = photos
        .iter()
        .any(|photo| pictures.contains_key(&photo.what.hash));
    let mut page = Page::new(say, &writing.name_of(chick), Paper::OneA4);
    page.open("top");
    page.paragraph("small", &writing.history_title(outlook.lived));
    put_people(&mut page, writing, chick);
    page.close();
    let reason_lines = put_reason(&mut page, writing, outlook);
    let photo_lines = if has_photos { PHOTO_LINES } else { 0 };
    let days = vet_days(
        writing,
        outlook,
        TABLE_LINES.saturating_sub(photo_lines + reason_lines),
    );
    page.open("two");
    page.pairs(&writing.signalment(outlook));
    page.pairs(&figures(writing, outlook));
    page.close();
    put_days(&mut page, writing, &days);
    page.open("two");
    if let Some(drawn) = chart_drawn(writing, outlook) {
        page.picture("chart", say.weight_chart(), &drawn.svg);
    }
    page.open("life");
    let eaten = intake(outlook.now, chick, &days.food);
    page.heading(say.vet_diet());
    page.pairs(&diet(writing, chick, eaten));
    let open = writing.plan_open(chick).into_iter().take(PLAN_OPEN);
    let open = open.map(|line| clipped(&line, MOST_TEXT));
    page.list(&open.collect::<Vec<_>>());
    page.heading(say.vet_surroundings());
    page.pairs(&surroundings(writing, outlook));
    page.heading(say.vet_not_known());
    let not_known = writing.not_known(outlook, days.is_crop_seen, &days.food);
    page.paragraph("", &not_known.join("; "));
    page.close();
    page.close();
    put_photos(&mut page, writing, &photos, pictures);
    let plan = writing.plan_version(chick.plans.version());
    page.paragraph("small", &format!("{} {plan}.", say.vet_no_judge()));
    page.paragraph("small", say.caution_short());
    page.finish(None)
}

/// Owner, breeder and vets, with their numbers.
fn put_people(page: &mut Page, writing: Writing, chick: &Chick) {
    let (say, plan) = (writing.language, &chick.plan);
    page.open("people");
    if !plan.owner_name.is_empty() || !plan.owner_number.is_empty() {
        page.contact(say.vet_owner(), &plan.owner_name, &plan.owner_number);
    }
    for role in [Role::Breeder, Role::AvianVet, Role::EmergencyVet] {
        let people = plan.contacts.iter().filter(|contact| contact.role == role);
        for contact in people.take(MOST_PEOPLE) {
            page.contact(say.role(role), &contact.name, &contact.number);
        }
    }
    page.close();
}

/// Why it is seen, as typed; what the app says of it. Returns how many lines more than one the reason takes.
fn put_reason(page: &mut Page, writing: Writing, outlook: &Outlook) -> usize {
    let say = writing.language;
    page.open("reason");
    page.heading(say.vet_reason());
    let reason = outlook.chick.visit_reason.as_ref();
    let reason = reason.filter(|reason| reason.at <= outlook.now);
    let reason = reason.map(|reason| {
        let text = clipped(&reason.what, MOST_REASON);
        format!("{text} ({})", writing.lived(reason.lived()))
    });
    let reason = reason.unwrap_or_else(|| say.vet_reason_none().to_owned());
    page.paragraph("asked", &reason);
    put_findings(page, writing, outlook, FINDINGS);
    page.close();
    reason.chars().count() / REASON_LETTERS
}

/// Weights, what it is fed, when it ate last, and what is usual for it.
fn figures(writing: Writing, outlook: &Outlook) -> Vec<(String, String)> {
    let (say, now, chick) = (writing.language, outlook.now, &outlook.chick);
    let last = chick.last_given(now).map(|feed| {
        let served = match feed.what.outcome {
            FeedOutcome::Given { served_at, .. } => served_at,
            FeedOutcome::Refused { .. } | FeedOutcome::PassedOver { .. } => None,
        };
        let served = served.map(|served| format!(", {}", writing.temperature(served)));
        let volume = writing.volume(feed.what.outcome.taken());
        let lived = writing.lived(feed.lived());
        format!("{volume}{}, {lived}", served.unwrap_or_default())
    });
    let emptying = crop::usual_minutes(now, chick);
    let peak = writing.plan_value(&chick.plan, PlanLine::Peak);
    let more = [
        (writing.plan_label(PlanLine::Peak), peak),
        (say.vet_last_food(), last),
        (
            say.vet_emptying(),
            emptying.map(|minutes| writing.minutes(minutes)),
        ),
    ];
    let more = more
        .into_iter()
        .filter_map(|(label, value)| Some((label.to_owned(), value?)));
    let droppings = writing.usual_droppings(now, chick);
    writing
        .figures(outlook)
        .into_iter()
        .chain(more)
        .chain(droppings)
        .collect()
}

fn put_days(page: &mut Page, writing: Writing, days: &VetDays) {
    let say = writing.language;
    let headings = [
        say.vet_day(),
        writing.mass_unit(),
        say.vet_of_handover(),
        say.vet_eaten(),
        say.vet_crop_morning(),
        say.now_droppings(),
        say.vet_signs(),
    ];
    let rows: Vec<Vec<String>> = days.rows.iter().map(|row| row.cells.clone()).collect();
    page.table("days", &writing.last_days(rows.len()), &headings, &rows);
    if days.rows.iter().any(|row| row.has_food) {
        page.paragraph("small", say.vet_with_food());
    }
}

/// Labels of what is there.
fn there<const N: usize>(pairs: [(&str, Option<String>); N]) -> Vec<(String, String)> {
    let there = pairs.into_iter().filter_map(|(label, value)| {
        let value = value.filter(|value| !value.is_empty())?;
        Some((label.to_owned(), value))
    });
    there.collect()
}

/// Formula by name, with what was eaten of it by weight, and solids.
fn diet(writing: Writing, chick: &Chick, eaten: Option<Intake>) -> Vec<(String, String)> {
    let (say, plan) = (writing.language, &chick.plan);
    let typed = |text: &str| clipped(text, MOST_TEXT);
    let value = |part| writing.plan_value(plan, part);
    let fat = value(PlanLine::FatSupplement).map(|fat| labelled(say.entry_fat(), &fat));
    let formula = [
        Some(typed(plan.said(Topic::PowderName))),
        value(PlanLine::PowderShare),
        value(PlanLine::PowderLabel),
        fat,
    ];
    let formula: Vec<String> = formula
        .into_iter()
        .flatten()
        .filter(|part| !part.is_empty())
        .collect();
    let looks = chick.solids.iter().rev();
    let looks = looks.filter(|look| look.what.eaten.is_swallowed());
    let solids = looks.take(SOLIDS).map(|look| {
        let what = labelled(say.solids_eaten(look.what.eaten), &typed(&look.what.what));
        format!("{what} ({})", writing.day_and_month(look.lived().day))
    });
    let solids: Vec<String> = solids.collect();
    let notes = [&plan.note, &plan.note_for_chick].map(|note| typed(note));
    let notes: Vec<String> = notes.into_iter().filter(|note| !note.is_empty()).collect();
    there([
        (say.vet_formula(), Some(formula.join("; "))),
        (
            say.vet_eaten_per_kg(),
            eaten.map(|eaten| writing.intake(eaten)),
        ),
        (say.vet_solids_seen(), Some(solids.join("; "))),
        (say.vet_solids_offered(), Some(typed(&plan.solids))),
        (say.vet_breeder_says(), Some(notes.join("; "))),
    ])
}

/// What was measured, apart from what is only planned.
fn surroundings(writing: Writing, outlook: &Outlook) -> Vec<(String, String)> {
    let (say, chick) = (writing.language, &outlook.chick);
    let mut rooms = chick.rooms.iter().rev();
    let room = rooms.find(|room| room.at <= outlook.now);
    let room = room.map(|room: &Noted<_>| {
        let (warmth, lived) = (writing.temperature(room.what), writing.lived(room.lived()));
        format!("{warmth} {} {lived}", say.vet_measured())
    });
    let planned = writing.plan_value(&chick.plan, PlanLine::Room);
    let planned = planned.map(|planned| format!("{planned} ({})", say.vet_planned()));
    let room = [room, planned].into_iter().flatten();
    let room: Vec<String> = room.collect();
    let typed = |topic| Some(clipped(chick.plan.said(topic), MOST_TEXT));
    there([
        (say.entry_room(), Some(room.join("; "))),
        (say.topic(Topic::Wings), typed(Topic::Wings)),
        (say.topic(Topic::Papers), typed(Topic::Papers)),
        (say.topic(Topic::Night), typed(Topic::Night)),
    ])
}

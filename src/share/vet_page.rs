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
use crate::share::vet_days::{DayRow, clipped, food_of_days, is_crop_seen, vet_days};
use crate::share::weight_picture::chart_drawn;
use crate::words::exchange::labelled;
use crate::words::format::Writing;

/// Findings beside the reason.
const FINDINGS: usize = 3;
/// Lines of the page in print, with a margin for fonts that run wider than the one measured with.
const PAGE_LINES: usize = 74;
/// Lines of what is always there: name, titles, level, rules between the parts, the head of the table, the foot.
const FIXED_LINES: usize = 10;
/// Lines of the chart, and of a row of photos.
const CHART_LINES: usize = 14;
const PHOTO_LINES: usize = 9;
/// Letters of a line over the whole page, of the reason, which is larger, of a label, and of what stands beside it.
const PAGE_LETTERS: usize = 105;
const REASON_LETTERS: usize = 88;
const LABEL_LETTERS: usize = 19;
const VALUE_LETTERS: usize = 34;
/// Most letters of the reason, and of a typed text.
const MOST_REASON: usize = 380;
const MOST_TEXT: usize = 75;
/// Most people of a role.
const MOST_PEOPLE: usize = 2;
/// Lines of the plan that are asked for or not agreed.
const PLAN_OPEN: usize = 2;
/// Solids told, the latest first, and their letters.
const SOLIDS: usize = 3;
const MOST_SOLIDS: usize = 110;

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
    let reason = reason(writing, outlook);
    let who = [writing.signalment(outlook), figures(writing, outlook)].map(short);
    let food = food_of_days(outlook);
    let not_known = writing
        .not_known(outlook, is_crop_seen(outlook), &food)
        .join("; ");
    let (diet, surroundings) = (
        diet(writing, chick, intake(outlook.now, chick, &food)),
        surroundings(writing, outlook),
    );
    let open = writing.plan_open(chick).into_iter().take(PLAN_OPEN);
    let open: Vec<String> = open.map(|line| clipped(&line, MOST_TEXT)).collect();
    // What the days may take is what everything else leaves.
    let [of_signalment, of_figures] = who.each_ref().map(|pairs| pair_lines(pairs));
    let below_chart = CHART_LINES + 2 + pair_lines(&surroundings);
    let beside = 4
        + pair_lines(&diet)
        + open
            .iter()
            .map(|line| lines(line, VALUE_LETTERS))
            .sum::<usize>()
        + lines(&not_known, LABEL_LETTERS + VALUE_LETTERS);
    let has_photos = photos
        .iter()
        .any(|photo| pictures.contains_key(&photo.what.hash));
    let taken = FIXED_LINES
        + people(chick).len()
        + lines(&reason, REASON_LETTERS)
        + outlook.findings.len().min(FINDINGS)
        + lines(&writing.instruction_line(outlook), PAGE_LETTERS)
        + of_signalment.max(of_figures)
        + below_chart.max(beside)
        + if has_photos { PHOTO_LINES } else { 1 };
    let days = vet_days(writing, outlook, &food, PAGE_LINES.saturating_sub(taken));

    let mut page = Page::new(say, &writing.name_of(chick), Paper::OneA4);
    page.open("top");
    page.paragraph("small", &writing.history_title(outlook.lived));
    page.open("people");
    for (role, name, number) in people(chick) {
        let role = role.map_or(say.vet_owner(), |role| say.role(role));
        page.contact(role, name, number);
    }
    page.close();
    page.close();
    page.open("reason");
    page.heading(say.vet_reason());
    page.paragraph("asked", &reason);
    put_findings(&mut page, writing, outlook, FINDINGS);
    page.close();
    page.open("two");
    for pairs in &who {
        page.pairs(pairs);
    }
    page.close();
    put_days(&mut page, writing, &days);
    page.open("two");
    page.open("seen");
    if let Some(drawn) = chart_drawn(writing, outlook) {
        page.picture("chart", say.weight_chart(), &drawn.svg);
    }
    page.heading(say.vet_surroundings());
    page.pairs(&surroundings);
    page.close();
    page.open("eats");
    page.heading(say.vet_diet());
    page.pairs(&diet);
    page.list(&open);
    page.heading(say.vet_not_known());
    page.paragraph("", &not_known);
    page.close();
    page.close();
    put_photos(&mut page, writing, &photos, pictures);
    let plan = writing.plan_version(chick.plans.version());
    page.paragraph("small", &format!("{} {plan}.", say.vet_no_judge()));
    page.paragraph("small", say.caution_short());
    page.finish(None)
}

/// Lines that a text takes.
fn lines(text: &str, letters: usize) -> usize {
    text.chars().count().div_ceil(letters)
}

/// Lines that labels and values take beside one another.
fn pair_lines(pairs: &[(String, String)]) -> usize {
    let of_pair = |(label, value): &(String, String)| {
        lines(label, LABEL_LETTERS).max(lines(value, VALUE_LETTERS))
    };
    pairs.iter().map(of_pair).sum()
}

/// Owner (without a role), breeder and vets, with their numbers.
fn people(chick: &Chick) -> Vec<(Option<Role>, &str, &str)> {
    let plan = &chick.plan;
    let owner = (None, plan.owner_name.as_str(), plan.owner_number.as_str());
    let has_owner = !plan.owner_name.is_empty() || !plan.owner_number.is_empty();
    let mut people: Vec<(Option<Role>, &str, &str)> =
        Some(owner).filter(|_| has_owner).into_iter().collect();
    for role in [Role::Breeder, Role::AvianVet, Role::EmergencyVet] {
        let of_role = plan.contacts.iter().filter(|contact| contact.role == role);
        let of_role = of_role.take(MOST_PEOPLE);
        people.extend(of_role.map(|one| (Some(role), one.name.as_str(), one.number.as_str())));
    }
    people
}

/// Why it is seen, as typed and when.
fn reason(writing: Writing, outlook: &Outlook) -> String {
    let reason = outlook.chick.visit_reason.as_ref();
    let reason = reason.filter(|reason| reason.at <= outlook.now);
    let reason = reason.map(|reason| {
        let text = clipped(&reason.what, MOST_REASON);
        format!("{text} ({})", writing.lived(reason.lived()))
    });
    reason.unwrap_or_else(|| writing.language.vet_reason_none().to_owned())
}

/// Pairs whose values are cut to what a typed text may take.
fn short(pairs: Vec<(String, String)>) -> Vec<(String, String)> {
    let cut = |(label, value): (String, String)| (label, clipped(&value, MOST_TEXT));
    pairs.into_iter().map(cut).collect()
}

/// Weights, what it is fed, when it ate last, and what is usual for it.
fn figures(writing: Writing, outlook: &Outlook) -> Vec<(String, String)> {
    let (say, now, chick) = (writing.language, outlook.now, &outlook.chick);
    let weight = outlook.weight.latest.as_ref().map(|latest| {
        let (mass, lived) = (
            writing.mass(latest.what.weight),
            writing.lived(latest.lived()),
        );
        format!("{mass}, {lived}")
    });
    let loss = outlook.weight.handover_loss_pct;
    let one_day = outlook.weight.one_day_loss_pct.map(|loss| {
        let pct = writing.signed_pct(loss);
        format!("{pct}\u{a0}%")
    });
    let feeds = chick.feeds_in_force(now);
    let feeds: Vec<String> = feeds
        .iter()
        .map(|feed| {
            format!(
                "{} {}",
                writing.time(feed.time),
                writing.volume(feed.volume)
            )
        })
        .collect();
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
    let emptying = crop::usual_minutes(now, chick).map(|minutes| writing.minutes(minutes));
    let value = |part| writing.plan_value(&chick.plan, part);
    let droppings = writing.usual_droppings(now, chick);
    there([
        (say.vet_weight(), weight),
        (
            say.vet_change(),
            loss.map(|loss| writing.against_handover(loss)),
        ),
        (say.vet_one_day(), one_day),
        (say.vet_handover(), value(PlanLine::Reference)),
        (say.vet_peak(), value(PlanLine::Peak)),
        (say.vet_feeds(), Some(feeds.join(", "))),
        (say.vet_last_food(), last),
        (say.vet_emptying(), emptying),
        (say.vet_usual_droppings(), droppings.map(|(_, about)| about)),
    ])
}

fn put_days(page: &mut Page, writing: Writing, days: &[DayRow]) {
    let say = writing.language;
    let headings = [
        say.vet_day(),
        writing.mass_unit(),
        say.vet_of_handover(),
        say.vet_eaten(),
        say.vet_crop_morning(),
        say.vet_droppings(),
        say.vet_signs(),
    ];
    let rows: Vec<Vec<String>> = days.iter().map(|row| row.cells.clone()).collect();
    page.table("days", &writing.last_days(rows.len()), &headings, &rows);
    if days.iter().any(|row| row.has_food) {
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
    let notes = [plan.note_for_chick.as_str(), plan.note.as_str()];
    let notes: Vec<&str> = notes.into_iter().filter(|note| !note.is_empty()).collect();
    there([
        (say.vet_formula(), Some(formula.join("; "))),
        (
            say.vet_eaten_per_kg(),
            eaten.map(|eaten| writing.intake(eaten)),
        ),
        (
            say.vet_solids_seen(),
            Some(clipped(&solids.join("; "), MOST_SOLIDS)),
        ),
        (say.vet_solids_offered(), Some(typed(&plan.solids))),
        (say.vet_breeder_says(), Some(typed(&notes.join("; ")))),
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
        (say.vet_wings(), typed(Topic::Wings)),
        (say.vet_tests(), typed(Topic::Papers)),
    ])
}

//! What report and vet page both show: chart, weighings, feeds, notes, people.

use crate::domain::instruction::lifting::advice_in_force;
use crate::domain::journal::chick::{Chick, FeedNote, FeedOutcome, Noted, Weighing};
use crate::domain::journal::entries::{Change, Entry, Journal};
use crate::domain::outlook::Outlook;
use crate::domain::quantity::order::set_of;
use crate::domain::quantity::units::Grams;
use crate::share::page::Page;
use crate::share::weight_picture::chart_drawn;
use crate::words::format::Writing;
use crate::words::rules::finding_title;

/// The weight chart, when there is a weighing, with the highest level of all and what the weight means.
pub(crate) fn put_chart(page: &mut Page, writing: Writing, outlook: &Outlook) {
    if let Some(drawn) = chart_drawn(writing, outlook) {
        let level = writing.language.level(outlook.level);
        let state = writing.weight_state(outlook);
        let state = state.map(|state| state.whole()).unwrap_or_default();
        page.picture("chart", writing.language.weight_chart(), &drawn.svg);
        page.paragraph("", format!("{level}. {state}").trim_end());
    }
}

/// The level in a word, and each finding with its number and limit.
pub(crate) fn put_findings(page: &mut Page, writing: Writing, outlook: &Outlook, most: usize) {
    page.paragraph("level", writing.language.level(outlook.level));
    page.paragraph("instruction", &writing.instruction_line(outlook));
    if let Some(advice) = advice_in_force(outlook.now, &outlook.chick) {
        page.paragraph("", &writing.advice_line(advice));
    }
    let findings = outlook.findings.iter().take(most);
    let titles: Vec<String> = findings
        .map(|finding| finding_title(writing, finding))
        .collect();
    if titles.is_empty() {
        page.paragraph("", writing.language.report_nothing_found());
    }
    page.list(&titles);
}

/// How far a weighing is from the handover weight.
pub(crate) fn against_handover(chick: &Chick, weight: Grams) -> Option<f64> {
    let reference = chick.plan.reference?;
    weight.since(reference.weight).loss_pct_of(reference.weight)
}

/// Weighings, latest first.
pub(crate) fn put_weighings(page: &mut Page, writing: Writing, chick: &Chick, most: usize) {
    let say = writing.language;
    let row = |weighing: &Noted<Weighing>| {
        let Weighing { weight, crop } = weighing.what;
        let against = against_handover(chick, weight);
        let against = against.map(|loss| writing.against_handover(loss));
        vec![
            writing.lived(weighing.lived()),
            writing.mass(weight),
            say.crop_at_weighing(crop).to_owned(),
            against.unwrap_or_default(),
        ]
    };
    let rows: Vec<Vec<String>> = chick.weighings.iter().rev().take(most).map(row).collect();
    let headings = [
        say.weight_when(),
        say.weight_weight(),
        say.now_crop(),
        say.weight_against(),
    ];
    page.table("weighings", say.weight_table(), &headings, &rows);
}

/// Feeds, latest first.
pub(crate) fn put_feeds(page: &mut Page, writing: Writing, outlook: &Outlook, most: usize) {
    let say = writing.language;
    let names = outlook.food();
    let row = |feed: &Noted<FeedNote>| {
        let name = say.slot_or_extra(names.get(&feed.id).copied());
        let mut row = vec![writing.lived(feed.lived()), name.to_owned()];
        row.extend(outcome_cells(writing, feed.what.outcome));
        row
    };
    let rows: Vec<Vec<String>> = outlook
        .chick
        .feeds
        .iter()
        .rev()
        .take(most)
        .map(row)
        .collect();
    let headings = [
        say.weight_when(),
        say.report_feed(),
        say.log_taken(),
        say.report_offered(),
        say.report_served(),
        say.report_how(),
    ];
    page.table("feeds", say.report_feeds(), &headings, &rows);
}

fn outcome_cells(writing: Writing, outcome: FeedOutcome) -> [String; 4] {
    let say = writing.language;
    match outcome {
        FeedOutcome::Given {
            taken,
            offered,
            served_at,
            response,
        } => {
            let served = served_at.map(|served| writing.temperature(served));
            [
                writing.volume(taken),
                writing.volume(offered),
                served.unwrap_or_default(),
                say.response(response).to_owned(),
            ]
        }
        FeedOutcome::Refused { .. } => {
            let refused = say.strip_refused().to_owned();
            [refused, String::new(), String::new(), String::new()]
        }
        FeedOutcome::PassedOver { why, .. } => {
            let (left_out, why) = (say.entry_left_out(), say.why_passed_over(why));
            let left_out = format!("{left_out}: {why}");
            [left_out, String::new(), String::new(), String::new()]
        }
    }
}

/// Everything else that was noted about this chick and not taken back, latest first.
pub(crate) fn put_notes(page: &mut Page, writing: Writing, chick: &Chick, entries: &[Entry]) {
    let say = writing.language;
    let journal = Journal::from_entries(entries.to_vec());
    let dead = journal.retracted();
    let of_chick = set_of(journal.of_chick(chick.id).into_iter().map(|entry| entry.id));
    let is_shown = |entry: &&Entry| {
        of_chick.contains(&entry.id)
            && !dead.contains(&entry.id)
            && !matches!(
                entry.change,
                Change::Weighed { .. }
                    | Change::Fed { .. }
                    | Change::FeedRefused { .. }
                    | Change::FeedPassedOver { .. }
                    | Change::Retracted { .. }
            )
    };
    let notes = journal.entries().iter().rev().filter(is_shown);
    let row = |entry: &Entry| {
        vec![
            writing.lived(entry.lived()),
            writing.change(&entry.change, None),
            entry.by.clone(),
        ]
    };
    let rows: Vec<Vec<String>> = notes.map(row).collect();
    let headings = [say.weight_when(), say.report_what(), say.report_by()];
    page.table("typed", say.report_notes(), &headings, &rows);
}

/// The plan's short name.
pub(crate) fn put_plan_version(page: &mut Page, writing: Writing, chick: &Chick) {
    page.paragraph("small", &writing.plan_version(chick.plans.version()));
}

/// What of the plan is not agreed or asked for.
pub(crate) fn put_plan_open(page: &mut Page, writing: Writing, chick: &Chick) {
    let open = writing.plan_open(chick);
    if !open.is_empty() {
        page.list(&open);
    }
}

/// Whom to ring.
pub(crate) fn put_contacts(page: &mut Page, writing: Writing, chick: &Chick) {
    if chick.plan.contacts.is_empty() {
        return;
    }
    page.heading(writing.language.settings_contacts());
    for contact in &chick.plan.contacts {
        let role = writing.language.role(contact.role);
        page.contact(role, &contact.name, &contact.number);
    }
}

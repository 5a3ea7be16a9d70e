//! The report as one file: anyone can read it with any browser, and the app takes its data
//! in again. A report with all entries is the backup.

use crate::domain::homecoming::since_report::since_report;
use crate::domain::journal::entries::Entry;
use crate::domain::outlook::Outlook;
use crate::domain::time::moment::Moment;
use crate::share::data_block;
use crate::share::page::{Page, Paper};
use crate::share::photos::{MOST_IN_REPORT, Pictures, latest_photos, put_photos};
use crate::share::report_parts::{
    put_chart, put_contacts, put_feeds, put_findings, put_notes, put_plan_open, put_plan_version,
    put_weighings,
};
use crate::store::saved::entries_to_text;
use crate::words::advice::advice;
use crate::words::format::Writing;
use crate::words::rules::call_first;
use crate::words::sources::source_line;

/// The report of one chick at the outlook's moment, without pictures of photos.
///
/// On top stands what happened since `last`, when the report before went.
pub fn report_html(
    writing: Writing,
    outlook: &Outlook,
    entries: &[Entry],
    last: Option<Moment>,
) -> String {
    report_with_photos_html(writing, outlook, entries, last, &Pictures::new())
}

/// The report of one chick at the outlook's moment.
///
/// It shows this chick with the latest photos whose pictures are at hand; `entries` is what the app takes in from it, of as many chicks as they are.
pub fn report_with_photos_html(
    writing: Writing,
    outlook: &Outlook,
    entries: &[Entry],
    last: Option<Moment>,
    pictures: &Pictures,
) -> String {
    let say = writing.language;
    let chick = &outlook.chick;
    let plan = &chick.plan;
    let mut page = Page::new(say, &writing.report_who(outlook), Paper::A4);
    page.paragraph("small", &writing.made_at(outlook.lived));
    if !plan.owner_name.is_empty() || !plan.owner_number.is_empty() {
        page.contact(say.report_of(), &plan.owner_name, &plan.owner_number);
    }
    put_findings(&mut page, writing, outlook, usize::MAX);
    page.paragraph("", call_first(say, outlook.level));
    put_plan_open(&mut page, writing, chick);
    let since = since_report(outlook.now, outlook.offset, chick, last);
    page.heading(&writing.since_title(&since));
    page.pairs(&writing.since_lines(outlook, &since));
    put_advice(&mut page, writing, outlook);
    page.heading(say.report_figures());
    page.pairs(&writing.figures(outlook));
    page.heading(say.weight_title());
    put_chart(&mut page, writing, outlook);
    page.paragraph("small", say.report_chart_key());
    put_weighings(&mut page, writing, chick, usize::MAX);
    put_feeds(&mut page, writing, outlook, usize::MAX);
    put_notes(&mut page, writing, chick, entries);
    let photos = latest_photos(outlook.now, chick, MOST_IN_REPORT);
    put_photos(&mut page, writing, &photos, pictures);
    page.heading(say.plan_title());
    put_plan_version(&mut page, writing, chick);
    page.pairs(&writing.plan_lines(&chick.plan));
    put_contacts(&mut page, writing, chick);
    page.heading(say.report_cautions());
    page.paragraph("", say.caution_text());
    page.paragraph("small", say.report_holds_data());
    page.finish(Some(&data_block::write(&entries_to_text(entries))))
}

fn put_advice(page: &mut Page, writing: Writing, outlook: &Outlook) {
    let say = writing.language;
    let calls = outlook
        .findings
        .iter()
        .filter(|finding| finding.level.is_call());
    let lines: Vec<String> = calls
        .map(|finding| {
            let advice = advice(say, finding.rule);
            let source = source_line(say, finding);
            format!("{} {} {source}", advice.act, advice.avoid)
        })
        .collect();
    page.list(&lines);
}

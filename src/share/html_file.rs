//! Report and card as one file each: anyone can read it with any browser, and the app takes its data
//! in again. A report with all entries is the backup.

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::Entry;
use crate::domain::outlook::Outlook;
use crate::share::card::{card_to_link_text, qr_card};
use crate::share::data_block;
use crate::share::page::{Page, Paper};
use crate::share::photos::{MOST_IN_REPORT, Pictures, latest_photos, put_photos};
use crate::share::qr;
use crate::share::report_parts::{
    put_chart, put_contacts, put_feeds, put_findings, put_notes, put_plan_version, put_weighings,
};
use crate::store::saved::entries_to_text;
use crate::words::advice::advice;
use crate::words::exchange::labelled;
use crate::words::format::Writing;
use crate::words::rules::call_first;
use crate::words::sources::source_line;

/// The report of one chick at the outlook's moment, without pictures of photos.
///
/// It shows this chick; `entries` is what the app takes in from it, of as many chicks as they are.
pub fn report_html(writing: Writing, outlook: &Outlook, entries: &[Entry]) -> String {
    report_with_photos_html(writing, outlook, entries, &Pictures::new())
}

/// The report of one chick at the outlook's moment.
///
/// It shows this chick with the latest photos whose pictures are at hand; `entries` is what the app takes in from it, of as many chicks as they are.
pub fn report_with_photos_html(
    writing: Writing,
    outlook: &Outlook,
    entries: &[Entry],
    pictures: &Pictures,
) -> String {
    let say = writing.language;
    let chick = &outlook.chick;
    let mut page = Page::new(say, &writing.name_of(chick), Paper::A4);
    page.paragraph("small", &writing.made_at(outlook.lived));
    put_findings(&mut page, writing, outlook, usize::MAX);
    page.paragraph("", call_first(say, outlook.level));
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

/// A handover card to print for the carrier and to send as a file. `entries` are those of its plan.
///
/// `app` is the address of the app without anything after `#`; with an empty one the QR code holds
/// the card's text alone, to be pasted. A card too long for a QR code says so and
/// has its link only.
pub fn card_html(writing: Writing, app: &str, chick: &Chick, entries: &[Entry]) -> String {
    let say = writing.language;
    let plan = &chick.plan;
    let title = labelled(say.exchange_card(), &plan.name);
    let mut page = Page::new(say, &title, Paper::A5);
    let link = card_to_link_text(entries);
    let address = |text: &str| match app {
        "" => text.to_owned(),
        app => format!("{app}#{text}"),
    };
    let code = qr_card(entries).and_then(|card| {
        let picture = qr::picture(&address(&card.text()), say.card_code()).ok()?;
        Some((picture.svg, card.is_whole))
    });
    if let Some((svg, is_whole)) = code {
        page.picture("code", say.card_code(), &svg);
        page.paragraph("small", say.card_scan());
        if !is_whole {
            page.paragraph("small", say.card_short_hint());
        }
    } else {
        page.paragraph("small", say.card_too_long());
    }
    put_plan_version(&mut page, writing, chick);
    page.pairs(&writing.plan_lines(plan));
    page.paragraph("small", say.caution_text());
    page.paragraph("small", say.card_anyone());
    page.link(&address(&link));
    // The text of a link holds nothing that JSON would escape.
    page.finish(Some(&data_block::write(&format!("\"{link}\""))))
}

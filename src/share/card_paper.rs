//! The card on paper: a QR code, the numbers to call, the feeds of a week with boxes to tick, and what else
//! is on it on a second page. A5 or A4, whatever the printer holds.

use crate::domain::formula::mixing::{MixWanted, mix_amounts};
use crate::domain::homecoming::first_days::{SETTLE_MINUTES, first_feed_volumes};
use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::Entry;
use crate::domain::plan::care_plan::{CarePlan, Contact, PlannedFeed, Role};
use crate::domain::plan::plan_line::PlanLine;
use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::Grams;
use crate::domain::time::moment::{Day, Moment, Offset};
use crate::domain::warnings::call_weight::call_weight_at_handover;
use crate::share::card::{card_to_link_text, qr_card};
use crate::share::data_block;
use crate::share::page::{Page, Paper, Week};
use crate::share::qr::{self, QrPicture};
use crate::share::report_parts::{put_plan_open, put_plan_version};
use crate::words::card::{breeder_name, shortened};
use crate::words::exchange::labelled;
use crate::words::format::Writing;

/// Days with boxes to tick.
const DAYS: i32 = 7;
/// Feeds of a day from which on their rows are lower, so that all of them stay on the first page.
const MANY_FEEDS: usize = 5;
/// Characters of values that a second page of A5 holds in two columns of 8 pt. Ours, with a third to spare.
const MOST_CHARACTERS: usize = 1_700;
/// How long a value may be on paper: the most of these with which all of them fit.
const LONGEST: [usize; 9] = [1_000, 600, 400, 250, 150, 100, 60, 40, 20];
/// Characters of a name or ring on the first page.
const MOST_OF_NAME: usize = 24;

/// A handover card to print for the carrier and to send as a file. `entries` are those of its plan, `now` and
/// `offset` say which day it is.
///
/// `app` is the address of the app without anything after `#`; with an empty one the QR code holds
/// the card's text alone, to be pasted. A card of which not even the least fits a QR code says so and
/// has its link only.
pub fn card_html(
    writing: Writing,
    app: &str,
    chick: &Chick,
    entries: &[Entry],
    (now, offset): (Moment, Offset),
) -> String {
    let say = writing.language;
    let plan = &chick.plan;
    let title = labelled(say.exchange_card(), &plan.name);
    let mut page = Page::new(say, &title, Paper::Card);
    let link = card_to_link_text(entries);
    let address = |text: &str| match app {
        "" => text.to_owned(),
        app => format!("{app}#{text}"),
    };
    let code = qr_card(entries).and_then(|card| {
        let picture = qr::picture(&address(&card.text()), say.card_code()).ok()?;
        Some((without_margin(&picture), card.is_whole))
    });
    page.open("top");
    if let Some((svg, _)) = &code {
        page.picture("code", say.card_code(), svg);
    }
    page.open("who");
    put_who(&mut page, writing, chick);
    page.close();
    page.close();
    page.paragraph(
        "small",
        match code {
            Some((_, true)) => say.card_scan(),
            Some((_, false)) => say.card_scan_short(),
            None => say.card_too_long(),
        },
    );
    put_week(&mut page, writing, chick, now, offset);
    put_numbers(&mut page, writing, plan);
    page.paragraph("never", &writing.card_never());
    page.paragraph("small", say.card_not_advice());
    page.open("more");
    page.heading(say.card_everything());
    put_plan_open(&mut page, writing, chick);
    put_everything(&mut page, writing, plan);
    page.close();
    page.open("screen");
    page.paragraph("small", say.caution_text());
    page.paragraph("small", say.card_anyone());
    page.link(&address(&link));
    page.close();
    // The text of a link holds nothing that JSON would escape.
    page.finish(Some(&data_block::write(&format!("\"{link}\""))))
}

/// The drawing without its clear margin, which the paper itself is.
fn without_margin(picture: &QrPicture) -> String {
    let modules = 17 + 4 * u32::from(picture.version);
    let whole = format!("viewBox=\"0 0 {0} {0}\"", modules + 8);
    let bare = format!("viewBox=\"4 4 {modules} {modules}\"");
    picture.svg.replacen(&whole, &bare, 1)
}

/// Who the chick is, and the numbers to call.
fn put_who(page: &mut Page, writing: Writing, chick: &Chick) {
    let say = writing.language;
    let plan = &chick.plan;
    put_plan_version(page, writing, chick);
    let hatched = plan.hatched.map(|day| {
        let date = writing.date(day);
        labelled(say.plan_part_hatched(), &date)
    });
    let ring = (!plan.ring.is_empty())
        .then(|| labelled(say.plan_ring(), &shortened(&plan.ring, MOST_OF_NAME)));
    let species = say.species(plan.species).to_owned();
    let lines = [Some(species), hatched, ring].into_iter().flatten();
    page.paragraph("small", &lines.collect::<Vec<_>>().join(", "));
    let breeder = plan.contact(Role::Breeder);
    let first = writing.card_call_first(&first_name(writing, plan));
    put_number(page, &first, breeder);
    if !plan.breeder_hours.is_empty() {
        page.paragraph("small", &plan.breeder_hours);
    }
    put_number(page, say.card_vet(), plan.contact(Role::AvianVet));
    put_number(page, say.card_vet_night(), plan.contact(Role::EmergencyVet));
}

/// The breeder's name, which stands in whole on the second page.
fn first_name(writing: Writing, plan: &CarePlan) -> String {
    shortened(&breeder_name(writing.language, plan), MOST_OF_NAME)
}

/// A number in large type, or a line to write it on.
fn put_number(page: &mut Page, label: &str, contact: Option<&Contact>) {
    page.paragraph("label", label);
    match contact {
        Some(contact) => page.number(&contact.number),
        None => page.paragraph("blank", "\u{a0}"),
    }
}

/// The feeds in large type, with a box for each of the first days at home.
fn put_week(page: &mut Page, writing: Writing, chick: &Chick, now: Moment, offset: Offset) {
    let say = writing.language;
    let plan = &chick.plan;
    let journey = plan.journey;
    let today = now.lived(offset).day;
    let home = journey.map(|journey| journey.expected.lived(journey.breeder_offset));
    let first = home.map_or(today, |home| home.day.max(today));
    let days: Vec<Day> = (0..DAYS).map(|day| first.plus(day)).collect();
    let feeds = chick.feeds_in_force(now);
    // Feeds of the day of travel that lie before the arrival are the breeder's.
    let is_past =
        |feed: &PlannedFeed| home.is_some_and(|home| home.day == first && feed.time < home.time);
    let rows: Vec<(String, String, bool)> = feeds
        .iter()
        .map(|feed| {
            (
                writing.time(feed.time),
                writing.volume(feed.volume),
                is_past(feed),
            )
        })
        .collect();
    page.heading(say.card_tick());
    // The month is the same as on the line above, or the next.
    let short = |day: Day| {
        let day = writing.day(day);
        let short = day.rsplit_once(' ').map(|(short, _)| short.to_owned());
        short.unwrap_or(day)
    };
    let days: Vec<String> = days.into_iter().map(short).collect();
    page.open(if feeds.len() < MANY_FEEDS {
        "few"
    } else {
        "many"
    });
    page.week(&Week {
        days: &days,
        rows: &rows,
        weight: say.card_weight(),
        unit: writing.mass_unit(),
    });
    page.close();
    let fed = journey.and_then(|journey| journey.last_fed);
    let fed = fed.map(|(at, volume)| {
        let (at, volume) = (writing.lived(at.lived(offset)), writing.volume(volume));
        format!("{} {at}, {volume}.", say.card_last_fed())
    });
    let next = feeds.iter().find(|feed| !is_past(feed));
    let usual = match home {
        Some(_) => next.or(feeds.first()).map(|feed| feed.volume),
        None => feeds.iter().map(|feed| feed.volume).min(),
    };
    let first = usual.map(|usual| {
        let (least, most) = first_feed_volumes(usual);
        writing.card_first_feed(least, most, SETTLE_MINUTES)
    });
    let lines: Vec<String> = fed.into_iter().chain(first).collect();
    page.paragraph("", &lines.join(" "));
}

/// How warm, what to mix, and the weight to call at.
fn put_numbers(page: &mut Page, writing: Writing, plan: &CarePlan) {
    let say = writing.language;
    let largest = plan.feeds.iter().map(|feed| feed.volume).max();
    let mix = largest.and_then(|volume| {
        let wanted = MixWanted::of_plan(plan, volume.as_ml(), 0.0);
        let out = mix_amounts(&wanted).and_then(|amounts| amounts.on_the_scale());
        let amounts = out.ok()?.amounts;
        let grams = |value: f64| writing.grams(Grams::tenths_held(rounded(value * 10.0)));
        let both = writing.card_mix(&grams(amounts.powder_g), &grams(amounts.water_g));
        let water = writing.card_water(volume, plan.mixing_water);
        Some((both, water))
    });
    page.open("numbers");
    let window = writing.warmth(plan.serve_from, plan.serve_to);
    page.fact(say.card_serve(), &window, say.card_measured());
    if let Some((both, water)) = mix {
        page.fact(say.card_mix_label(), &both, &water);
    }
    if let Some((call, reference)) = call_weight_at_handover(plan).zip(plan.reference) {
        let whom = writing.card_call_at(&first_name(writing, plan));
        let handover = writing.card_handover(reference.weight);
        page.fact(&whom, &writing.mass(call), &handover);
    }
    page.close();
}

/// Whether a line holds words that may be cut on paper: never a number, a name or whom to call.
const fn may_be_cut(line: PlanLine) -> bool {
    matches!(
        line,
        PlanLine::Solids | PlanLine::Said(_) | PlanLine::Note | PlanLine::NoteForChick
    )
}

/// Every line of the plan: whole on screen, and on paper with long texts cut where they would need a third
/// page.
fn put_everything(page: &mut Page, writing: Writing, plan: &CarePlan) {
    let lines = writing.plan_lines(plan);
    let there = PlanLine::ALL.into_iter();
    let there = there.filter(|line| writing.plan_value(plan, *line).is_some());
    let shown: Vec<(bool, &(String, String))> = there.map(may_be_cut).zip(&lines).collect();
    let cut = |most: usize| {
        let cut = |(may_be_cut, (_, value)): &(bool, &(String, String))| {
            let most = if *may_be_cut { most } else { usize::MAX };
            shortened(value, most)
        };
        shown.iter().map(cut).collect::<Vec<String>>()
    };
    let fits = |values: &[String]| {
        let all = values.iter().map(|value| value.chars().count());
        all.sum::<usize>() <= MOST_CHARACTERS
    };
    let mut longest = LONGEST.into_iter().map(cut);
    let values = longest
        .find(|values| fits(values))
        .unwrap_or_else(|| cut(0));
    let is_cut = values
        .iter()
        .zip(&lines)
        .any(|(value, (_, whole))| value != whole);
    page.open("screen");
    page.pairs(&lines);
    page.close();
    page.open("paper");
    for ((label, _), value) in lines.iter().zip(&values) {
        page.pair(label, value);
    }
    if is_cut {
        page.paragraph("", writing.language.card_cut());
    }
    page.close();
}

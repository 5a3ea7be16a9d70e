//! What the pages made of a record say, against what the owner's phone says at the same moment.

use perchlight::domain::homecoming::life_stage::Reminder;
use perchlight::domain::homecoming::reports::last_heard;
use perchlight::domain::journal::entries::Journal;
use perchlight::domain::outlook::{Outlook, outlook};
use perchlight::domain::time::moment::Moment;
use perchlight::domain::warnings::level::Level;
use perchlight::domain::warnings::placed_state::PlacedState;
use perchlight::share::html_file::report_html;
use perchlight::share::import::{Imported, read_text};
use perchlight::share::placed::{Placed, PlacedRow, placed_state, rows};
use perchlight::share::vet_page::vet_page_html;
use perchlight::share::weight_picture::chart_drawn;
use perchlight::words::Language;
use perchlight::words::format::Writing;

use crate::acts::Who;
use crate::home::{CHICK, Home};
use crate::laws::law;

/// The longest time between two reports that nobody asked for otherwise, and 12 h: a report a week once
/// the chick is weaned.
const SURELY_SILENT: i64 = (7 * 24 + 12) * 60;

/// A state older than this is told with its day, minutes.
const DAY: i64 = 24 * 60;

/// When the breeder's phone last heard of the chick: the latest entry that it did not write itself, or
/// the handover.
fn heard_by(breeder: &Journal) -> Moment {
    let of_others = breeder
        .entries()
        .iter()
        .filter(|entry| entry.by != "breeder");
    let handed_over = breeder.entries().iter().map(|entry| entry.noted_at).min();
    let latest = of_others.map(|entry| entry.noted_at).max();
    latest.or(handed_over).expect("the breeder added the chick")
}

/// Law 12: on the phone that only follows the chick silence is never "Settled", an older state has no
/// colour, and nothing is told as of today.
pub(crate) fn silence_is_never_settled(home: &Home) {
    let heard = last_heard(home.now, &home.breeder, CHICK);
    let at = heard.unwrap_or(home.now);
    let outlook = outlook(at, &home.breeder, CHICK, &home.zone).expect("the chick is there");
    let followed = Some(heard);
    let state = placed_state(home.now, &Placed { outlook, followed });
    let quiet = home.now.minutes_since(heard_by(&home.breeder));
    let is_silent = matches!(state, PlacedState::Silent { .. });
    let died = home.breeders_chick().died.is_some();
    law(12, died || is_silent || quiet <= SURELY_SILENT, || {
        format!("{quiet} min without a word and {state:?}")
    });
    law(12, state.level_now().is_none() || quiet <= DAY, || {
        format!("{quiet} min without a word and {state:?} now")
    });
    for language in Language::ALL {
        let said = Writing::metric(language).placed_state(state);
        let calm = language.level(Level::Settled);
        law(12, !(is_silent && said.contains(calm)), || said.clone());
    }
}

fn row(home: &Home, journal: &Journal) -> PlacedRow {
    let outlook = outlook(home.now, journal, CHICK, &home.zone).expect("the chick is there");
    let followed = None;
    let mut rows = rows(home.now, &[Placed { outlook, followed }]);
    rows.remove(0)
}

/// Law 14: report, vet page and table say of level, loss and plan what Now says; so does the phone that
/// took the report in.
pub(crate) fn every_page_says_the_same(home: &Home, language: Language) {
    let outlook = home.outlook(Who::Owner);
    let own = row(home, &home.owner);
    let loss = outlook.weight.handover_loss_pct;
    law(14, own.state == PlacedState::Now(outlook.level), || {
        format!("the table says {:?}, Now {:?}", own.state, outlook.level)
    });
    law(14, own.handover_loss_pct == loss, || {
        format!("the table says {:?}, Now {loss:?}", own.handover_loss_pct)
    });
    let writing = Writing::metric(language);
    let report = report_html(writing, &outlook, home.owner.entries(), None);
    let vet_page = vet_page_html(writing, &outlook);
    let level = format!("\"level\"><bdi>{}</bdi>", language.level(outlook.level));
    for page in [&report, &vet_page] {
        law(14, page.contains(&level), || {
            format!("a page does not say {level}")
        });
        let against = loss.map(|loss| writing.against_handover(loss));
        law(14, against.is_none_or(|loss| page.contains(&loss)), || {
            format!("a page does not say a loss of {loss:?} per cent")
        });
    }
    let pages = [report.as_str(), vet_page.as_str()];
    the_weight_is_told_alike(writing, &outlook, pages);
    let plan = writing.plan_version(outlook.chick.plans.version());
    law(14, report.contains(&plan), || {
        format!("the report does not say {plan}")
    });
    let taken_in = match read_text(&report) {
        Ok(Imported::Entries(entries)) => Journal::from_entries(entries),
        other => panic!("law 14: the report is not read back: {other:?}"),
    };
    let far = row(home, &taken_in);
    law(14, far == own, || {
        format!("who takes the report in reads {far:?}, here it is {own:?}")
    });
}

/// Law 14, of the weight: the same figures on report and vet page, and one weight to call at, in the sentences of
/// Now and Weight as on the chart of both pages.
fn the_weight_is_told_alike(writing: Writing, outlook: &Outlook, pages: [&str; 2]) {
    let [report, vet_page] = pages;
    let say = writing.language;
    let of_vet = [
        say.report_latest(),
        say.weight_against(),
        say.report_one_day(),
        say.report_still_fed(),
    ];
    for (label, value) in writing.figures(outlook) {
        let is_for_vet = of_vet.contains(&label.as_str());
        let is_told = report.contains(&value) && (!is_for_vet || vet_page.contains(&value));
        law(14, is_told, || {
            format!("a page does not say {label}: {value}")
        });
    }
    let Some(call_at) = outlook.weight.call_at else {
        return;
    };
    let (named, limit) = (writing.call_name(call_at.as_g()), writing.mass(call_at));
    let is_drawn = chart_drawn(writing, outlook).is_some();
    let is_named = pages.iter().all(|page| page.contains(&named));
    law(14, !is_drawn || is_named, || {
        format!("a chart does not say {named}")
    });
    let state = writing.weight_state(outlook);
    let is_said = state.is_none_or(|state| state.means.contains(&limit));
    law(14, is_said, || format!("Weight does not say {limit}"));
    let is_now = outlook.stage.reminds(Reminder::Weighing) && outlook.weight.latest.is_some();
    let today = writing.weight_today(outlook);
    law(14, !is_now || today.contains(&limit), || {
        format!("Now says {today:?}, the weight to call at is {limit}")
    });
}

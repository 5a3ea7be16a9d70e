//! The 24 hours of today as one band, and the same as a list.

use leptos::prelude::*;

use crate::domain::feeding::food::food_since;
use crate::domain::feeding::scheduled::{FeedState, ScheduledFeed};
use crate::domain::journal::chick::{FeedNote, FeedOutcome, Noted};
use crate::domain::outlook::Outlook;
use crate::domain::quantity::order::sorted_by;
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::{Moment, WallTime};
use crate::ui::state::AppState;
use crate::words::format::Writing;

/// Width of the band in its own units: one a minute, so that places are minutes.
const WIDTH: i32 = 1_440;

/// One mark of the band, with its words for the list.
struct Mark {
    /// Minutes since midnight.
    at: i32,
    /// Kind, for the style sheet.
    kind: &'static str,
    /// How full the drop is, 0 to 100 %.
    filled: i32,
    /// Wall time and words.
    words: String,
}

/// Today's feeds, weighings and crop checks.
pub fn day_strip(outlook: &Outlook) -> impl IntoView + use<> {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    let mut marks = feed_marks(outlook, writing);
    marks.extend(other_marks(outlook, writing));
    let marks = sorted_by(marks, |one, other| one.at.cmp(&other.at));
    let now = outlook.lived.time.minutes();
    let drawn: Vec<_> = marks.iter().map(draw).collect();
    let list = marks
        .into_iter()
        .map(|mark| view! { <li data-kind=mark.kind>{mark.words}</li> });
    view! {
        <section class="day-strip" aria-label=say.now_strip()>
            <svg class="day-strip__band" viewBox="0 0 1440 190" aria-hidden="true">
                <rect class="day-strip__day" x="0" y="40" width="1440" height="90" rx="45"></rect>
                <path class="day-strip__night" d="M45 40H360V130H45A45 45 0 0 1 45 40z"></path>
                <path class="day-strip__night" d="M1260 40H1395A45 45 0 0 1 1395 130H1260z"></path>
                {drawn}
                <path class="day-strip__now" d=format!("M{now} 20V150")></path>
                {hour_labels()}
            </svg>
            <ul class="day-strip__list">{list.collect_view()}</ul>
        </section>
    }
}

fn hour_labels() -> impl IntoView {
    let label =
        |hour: i32| view! { <text class="day-strip__hour" x=hour * 60 y="182">{hour}</text> };
    [label(6), label(12), label(18)]
}

fn draw(mark: &Mark) -> impl IntoView + use<> {
    let x = mark.at.clamp(30, WIDTH - 30);
    let shape = match mark.kind {
        // a small pan
        "weighed" => format!(
            "M{} 70H{}M{x} 70V88M{} 88H{}A26 26 0 0 1 {} 88z",
            x - 26,
            x + 26,
            x - 26,
            x + 26,
            x - 26
        ),
        "crop" => format!("M{} 85a14 14 0 1 0 28 0a14 14 0 1 0 -28 0z", x - 14),
        _ => drop_shape(x),
    };
    let fill_height = 66 * mark.filled / 100;
    let strike = (mark.kind == "passed").then(|| {
        view! { <path class="day-strip__strike" d=format!("M{} 118L{} 52", x - 34, x + 34)></path> }
    });
    let clip = format!("day-strip-{}-{}", mark.kind, mark.at);
    let filled = (mark.filled > 0).then(|| {
        view! {
            <clipPath id=clip.clone()>
                <rect x=x - 40 y=118 - fill_height width="80" height=fill_height></rect>
            </clipPath>
            <path class="day-strip__fill" d=drop_shape(x) clip-path=format!("url(#{clip})")></path>
        }
    });
    view! {
        <g data-kind=mark.kind>
            <path class="day-strip__mark" d=shape></path>
            {filled}
            {strike}
        </g>
    }
}

/// A drop whose lowest point is at 118 and tip at 52.
fn drop_shape(x: i32) -> String {
    format!(
        "M{x} 52C{} 78 {} 88 {} 98A22 22 0 1 1 {} 98C{} 88 {} 78 {x} 52z",
        x + 8,
        x + 20,
        x + 22,
        x - 22,
        x - 20,
        x - 8
    )
}

/// Today's feeds, and whatever else was noted of feeds today: a second helping, a bedtime feed after
/// midnight, a feed that was dropped and given all the same.
fn feed_marks(outlook: &Outlook, writing: Writing) -> Vec<Mark> {
    let say = writing.language;
    let today = outlook.lived.day;
    let is_todays = |feed: &&ScheduledFeed| {
        feed.day == today || (feed.is_open() && feed.due.lived(outlook.offset).day == today)
    };
    let todays: Vec<&ScheduledFeed> = outlook.feeds.iter().filter(is_todays).collect();
    let names = food_since(today.plus(-1), outlook.now, &outlook.chick, &outlook.zone);
    let is_told = |note: &Noted<FeedNote>| match note.what.outcome {
        FeedOutcome::PassedOver { .. } => true,
        FeedOutcome::Given { .. } | FeedOutcome::Refused { .. } => {
            let tells = |feed: &&ScheduledFeed| match feed.sitting() {
                Some(own) => own.notes.contains(&note.id),
                None => false,
            };
            todays.iter().any(tells)
        }
    };
    let notes = outlook.chick.feeds.iter().rev();
    let notes = notes.take_while(|note| note.lived().day.since(today) >= -1);
    let others = notes.filter(|note| note.lived().day == today && !is_told(note));
    let others: Vec<Mark> = others
        .map(|note| {
            let slot = names.get(&note.id).copied();
            let plan = slot.map(|slot| outlook.plan_of_feed(slot));
            let planned = plan.and_then(|plan| Some(plan.feed(slot?)?.volume));
            let (name, taken) = (say.feed_or_food(slot), note.what.outcome.taken());
            given_mark(note.lived().time, name, taken, planned, writing)
        })
        .collect();
    let feeds = todays.iter().map(|feed| feed_mark(outlook, feed, writing));
    feeds.chain(others).collect()
}

fn feed_mark(outlook: &Outlook, feed: &ScheduledFeed, writing: Writing) -> Mark {
    let say = writing.language;
    let lived = feed.due.lived(outlook.offset);
    let (due, is_after_midnight) = (lived.time, lived.day > outlook.lived.day);
    let name = say.feed(feed.slot);
    let open = |kind, word: &str| Mark {
        at: due.minutes() + if is_after_midnight { WIDTH } else { 0 },
        kind,
        filled: 0,
        words: format!(
            "{} {name}: {word}, {}",
            due.text(),
            writing.volume(feed.volume)
        ),
    };
    let at = |moment: Moment| moment.lived(outlook.offset).time;
    let passed = |time: WallTime, word: &str| Mark {
        at: time.minutes(),
        kind: "passed",
        filled: 0,
        words: format!("{} {name}: {word}", time.text()),
    };
    let is_held = outlook.instruction.forbids();
    match &feed.state {
        FeedState::Upcoming | FeedState::Due | FeedState::Late | FeedState::TryAgain(_)
            if is_held =>
        {
            open("due", say.strip_held())
        }
        FeedState::Upcoming | FeedState::TryAgain(_) if is_after_midnight => {
            open("due", say.strip_after_midnight())
        }
        FeedState::Upcoming => open("due", say.strip_upcoming()),
        // It may be given a little early; the countdown above still runs.
        FeedState::Due if outlook.now < feed.due => open("due", say.strip_upcoming()),
        FeedState::TryAgain(_) => open("due", say.strip_try_again()),
        FeedState::Due => open("due", say.strip_due()),
        FeedState::Late => open("due", say.strip_late()),
        FeedState::Unanswered => open("passed", say.strip_not_noted()),
        FeedState::PutOff => open("passed", say.strip_put_off()),
        FeedState::OnTheWay => open("passed", say.strip_on_the_way()),
        FeedState::LeftOut(why) => passed(at(feed.planned), say.why_passed_over(*why)),
        FeedState::Refused(own) => passed(at(own.at), say.strip_refused()),
        FeedState::Done(own) => given_mark(at(own.at), name, own.taken, Some(feed.volume), writing),
    }
}

fn given_mark(
    time: WallTime,
    name: &str,
    taken: Millilitres,
    planned: Option<Millilitres>,
    writing: Writing,
) -> Mark {
    if taken.tenths() == 0 {
        return Mark {
            at: time.minutes(),
            kind: "passed",
            filled: 0,
            words: format!(
                "{} {name}: {}",
                time.text(),
                writing.language.strip_refused()
            ),
        };
    }
    let planned = planned.unwrap_or(taken).tenths().max(1);
    let share = taken.tenths() * 100 / planned;
    Mark {
        at: time.minutes(),
        kind: "given",
        filled: share.clamp(10, 100),
        words: format!("{} {name}: {}", time.text(), writing.volume(taken)),
    }
}

fn other_marks(outlook: &Outlook, writing: Writing) -> Vec<Mark> {
    let say = writing.language;
    let today = outlook.lived.day;
    let mark = |time: WallTime, kind, words: String| Mark {
        at: time.minutes(),
        kind,
        filled: 0,
        words: format!("{} {words}", time.text()),
    };
    let weighed = outlook
        .chick
        .weighings
        .iter()
        .filter(|weighing| weighing.lived().day == today);
    let weighed = weighed.map(|weighing| {
        let crop = say.crop_at_weighing(weighing.what.crop);
        let words = format!(
            "{}: {}, {crop}",
            say.strip_weighed(),
            writing.mass(weighing.what.weight)
        );
        mark(weighing.lived().time, "weighed", words)
    });
    let crops = outlook
        .chick
        .crops
        .iter()
        .filter(|crop| crop.lived().day == today);
    let crops = crops.map(|crop| {
        let words = format!("{}: {}", say.now_crop(), say.crop_state(crop.what.state));
        mark(crop.lived().time, "crop", words)
    });
    weighed.chain(crops).collect()
}

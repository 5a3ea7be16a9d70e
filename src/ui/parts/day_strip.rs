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

/// Minutes of the band.
const DAY: i32 = 1_440;

/// Width of the band in its own units: as many as pixels on a phone of 360.
const WIDTH: i32 = 328;

/// Marks stand at least so far apart, so that none lies over another.
const APART: i32 = 22;

/// Times below the band stand at least so far apart.
const LABELS_APART: i32 = 50;

/// One mark of the band, with its words for the list.
struct Mark {
    /// Minutes since midnight.
    at: i32,
    /// Kind, for the style sheet.
    kind: &'static str,
    /// How full the drop is, 0 to 100 %.
    filled: i32,
    /// Its wall time.
    time: String,
    /// Wall time and words.
    words: String,
}

/// Today's feeds above the band, weighings and crop checks below it, and the same as a list that is read out.
pub fn day_strip(outlook: &Outlook) -> impl IntoView + use<> {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    let by_time = |marks: Vec<Mark>| sorted_by(marks, |one, other| one.at.cmp(&other.at));
    let feeds = by_time(feed_marks(outlook, writing));
    let others = by_time(other_marks(outlook, writing));
    let now = place(outlook.lived.time.minutes());
    let places = apart(&feeds);
    let times = labels(&feeds, &places, now, say.strip_now());
    let drops: Vec<_> = feeds
        .iter()
        .zip(&places)
        .map(|(mark, x)| drop_mark(mark, *x))
        .collect();
    let below: Vec<_> = others
        .iter()
        .zip(apart(&others))
        .map(|(mark, x)| small_mark(mark, x))
        .collect();
    let all = by_time(feeds.into_iter().chain(others).collect());
    let list = all
        .into_iter()
        .map(|mark| view! { <li data-kind=mark.kind>{mark.words}</li> });
    view! {
        <section class="day-strip" aria-label=say.now_strip()>
            <svg class="day-strip__band" viewBox="0 0 328 78" aria-hidden="true">
                <rect class="day-strip__night" x="0" y="30" width="328" height="8" rx="4"></rect>
                <path class="day-strip__day" d=format!("M{} 34H{}", place(6 * 60), place(21 * 60))></path>
                {drops}
                {below}
                <path class="day-strip__now" d=format!("M{now} 26V42")></path>
                {times}
            </svg>
            <ul class="only-read day-strip__list">{list.collect_view()}</ul>
        </section>
    }
}

/// The place of a minute of the day.
fn place(minutes: i32) -> i32 {
    minutes.clamp(0, DAY) * WIDTH / DAY
}

/// Where marks in order of time stand, moved on to the right as far as needed, and back from the end.
fn apart(marks: &[Mark]) -> Vec<i32> {
    let half = APART / 2;
    let mut from = half;
    let mut places: Vec<i32> = Vec::new();
    for mark in marks {
        let x = place(mark.at).max(from);
        from = x + APART;
        places.push(x);
    }
    let mut to = WIDTH - half;
    for x in places.iter_mut().rev() {
        *x = (*x).min(to).max(half);
        to = *x - APART;
    }
    places
}

/// The times of the feeds below the band, those to come first, and "now" where there is room.
fn labels(marks: &[Mark], places: &[i32], now: i32, now_word: &'static str) -> Vec<AnyView> {
    let feeds = marks.iter().zip(places);
    let feeds = feeds.map(|(mark, x)| (mark.kind == "due", *x, mark.time.clone()));
    let open = feeds.clone().filter(|(is_open, _, _)| *is_open);
    let over = feeds.filter(|(is_open, _, _)| !*is_open);
    let now = std::iter::once((true, now, now_word.to_owned()));
    let mut taken: Vec<i32> = Vec::new();
    let mut drawn = Vec::new();
    for (is_lit, x, text) in open.chain(now).chain(over) {
        let x = x.clamp(LABELS_APART / 2, WIDTH - LABELS_APART / 2);
        if taken.iter().any(|other| (other - x).abs() < LABELS_APART) {
            continue;
        }
        taken.push(x);
        drawn.push(
            view! { <text class="day-strip__hour" class:day-strip__hour--lit=is_lit x=x y="72">{text}</text> }
                .into_any(),
        );
    }
    drawn
}

fn drop_mark(mark: &Mark, x: i32) -> impl IntoView + use<> {
    let height = 22 * mark.filled / 100;
    let clip = format!("day-strip-{}-{x}", mark.kind);
    let filled = (mark.filled > 0).then(|| {
        view! {
            <clipPath id=clip.clone()>
                <rect x=x - 10 y=26 - height width="20" height=height></rect>
            </clipPath>
            <path class="day-strip__fill" d=drop_shape(x) clip-path=format!("url(#{clip})")></path>
        }
    });
    let strike = (mark.kind == "passed").then(|| {
        view! { <path class="day-strip__strike" d=format!("M{} 27L{} 4", x - 9, x + 9)></path> }
    });
    view! {
        <g data-kind=mark.kind>
            <path class="day-strip__mark" d=drop_shape(x)></path>
            {filled}
            {strike}
        </g>
    }
}

/// A pan for a weighing, a crop for a look at it.
fn small_mark(mark: &Mark, x: i32) -> impl IntoView + use<> {
    let shape = if mark.kind == "weighed" {
        format!("M{} 43H{}M{} 43a6 6 0 0 0 12 0", x - 9, x + 9, x - 6)
    } else {
        format!("M{} 42c0 3-3 4-3 7a5 5 0 0 0 10 0c0-3-3-4-3-7", x - 2)
    };
    view! { <path class="day-strip__mark day-strip__mark--small" data-kind=mark.kind d=shape></path> }
}

/// A drop whose lowest point is at 26 and tip at 4.
fn drop_shape(x: i32) -> String {
    format!(
        "M{x} 4C{} 11 {} 14 {} 18A8 8 0 1 1 {} 18C{} 14 {} 11 {x} 4z",
        x + 3,
        x + 7,
        x + 8,
        x - 8,
        x - 7,
        x - 3
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
        at: due.minutes() + if is_after_midnight { DAY } else { 0 },
        kind,
        filled: 0,
        time: due.text(),
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
        time: time.text(),
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
            time: time.text(),
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
        time: time.text(),
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
        time: time.text(),
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

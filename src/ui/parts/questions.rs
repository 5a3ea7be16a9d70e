//! Questions of the journal that only a person can answer: was a feed given, is food noted twice.

use leptos::prelude::*;

use crate::domain::feeding::same_food::{notes_of, questions};
use crate::domain::feeding::scheduled::ScheduledFeed;
use crate::domain::journal::entries::{Change, EntryId, Response, SameFoodAnswer, WhyPassedOver};
use crate::domain::outlook::Outlook;
use crate::domain::time::moment::Moment;
use crate::ui::route::Route;
use crate::ui::state::AppState;

/// So long after its time a feed is asked about here, minutes: a day. Ours.
const ASKED_MINUTES: i64 = 24 * 60;

/// Feeds asked about at the same time. Ours.
const ASKED_AT_ONCE: usize = 3;

const ANSWERS: [SameFoodAnswer; 3] = [
    SameFoodAnswer::NotedTwice,
    SameFoodAnswer::TwoParts,
    SameFoodAnswer::TwoFeeds,
];

/// The feeds of the last day without a note, latest first, each with its four answers.
pub fn was_it_given(outlook: &Outlook) -> Vec<AnyView> {
    let asked = outlook.feeds.iter().rev();
    asked
        .filter(|feed| feed.is_asked() && !outlook.is_away())
        .filter(|feed| outlook.now.minutes_since(feed.planned) <= ASKED_MINUTES)
        .take(ASKED_AT_ONCE)
        .map(|feed| one_feed(outlook, feed))
        .collect()
}

fn one_feed(outlook: &Outlook, feed: &ScheduledFeed) -> AnyView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let (slot, day, volume) = (feed.slot, feed.day, feed.volume);
    let at = feed.due.min(outlook.now);
    let note = move |at: Moment, change: Change, told: String| match state.dispatch_at(at, change) {
        Ok(id) => state.say(told, vec![id]),
        Err(refusal) => state.say_refusal(&refusal),
    };
    let given = move |_| {
        let change = Change::Fed {
            counts_as: Some(slot),
            taken: volume,
            offered: volume,
            served_at: None,
            response: Response::NotNoted,
        };
        note(at, change, writing.feed_noted(Some(slot), volume));
    };
    let refused = move |_| {
        let change = Change::FeedRefused {
            counts_as: Some(slot),
            offered: volume,
        };
        note(at, change, say.feed_refused(Some(slot)));
    };
    let now = outlook.now;
    let left_out = move |why| {
        move |_| {
            let change = Change::FeedPassedOver { slot, day, why };
            note(now, change, say.feed_left_out(slot, why));
        }
    };
    let asked = writing.was_it_given(slot, feed.planned.lived(outlook.offset));
    view! {
        <section class="question" data-given="true">
            <p>{asked}</p>
            <div class="acts">
                <button type="button" class="button" on:click=given>
                    {say.asked_given()} ", " {writing.volume(volume)}
                </button>
                <button type="button" class="button" on:click=refused>{say.log_refused()}</button>
                <button type="button" class="button" on:click=left_out(WhyPassedOver::NotPossible)>
                    {say.asked_not_given()}
                </button>
                <button type="button" class="button" on:click=left_out(WhyPassedOver::NotKnown)>
                    {say.asked_not_known()}
                </button>
            </div>
            <p class="hint"><a href=Route::Log(Some(slot)).to_hash()>{say.asked_otherwise()}</a></p>
        </section>
    }
    .into_any()
}

/// Notes of food near to each other that may be of the same food.
pub fn same_food(outlook: &Outlook) -> Vec<AnyView> {
    let asked = questions(outlook.now, &outlook.chick).into_iter();
    asked.map(|notes| one_question(outlook, &notes)).collect()
}

fn one_question(outlook: &Outlook, asked: &[EntryId]) -> AnyView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let notes: Vec<String> = notes_of(&outlook.chick, asked)
        .into_iter()
        .map(|note| {
            let volume = writing.volume(note.what.outcome.taken());
            let by = Some(note.what.by.as_str()).filter(|by| !by.is_empty());
            let by = by.map(|by| format!(" ({by})")).unwrap_or_default();
            format!("{} {volume}{by}", writing.lived(note.lived()))
        })
        .collect();
    let answers = ANSWERS.map(|answer| {
        let notes = asked.to_vec();
        let reply = move |_| {
            let notes = notes.clone();
            let change = Change::SameFood { notes, answer };
            state.note(change, say.same_food_answer(answer).to_owned());
        };
        view! {
            <button type="button" class="button" on:click=reply>{say.same_food_answer(answer)}</button>
        }
    });
    view! {
        <section class="question" data-same="true">
            <p>{writing.same_food(&notes)}</p>
            <p class="hint">{say.same_food_until()}</p>
            <div class="acts">{answers.collect_view()}</div>
        </section>
    }
    .into_any()
}

//! Questions of the journal that only a person can answer: was a feed given, is food noted twice.

use leptos::prelude::*;

use crate::domain::feeding::same_food::{notes_of, questions};
use crate::domain::feeding::scheduled::ScheduledFeed;
use crate::domain::instruction::answer::Instruction;
use crate::domain::instruction::first::First;
use crate::domain::instruction::holds::Why;
use crate::domain::journal::entries::{Change, EntryId, Response, SameFoodAnswer, WhyPassedOver};
use crate::domain::outlook::Outlook;
use crate::domain::time::moment::Moment;
use crate::ui::parts::button::button;
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

/// The feeds of the last day without a note, latest first, each with its four answers; but not the one that
/// the card of the next feed asks about and offers.
pub fn was_it_given(outlook: &Outlook) -> Vec<AnyView> {
    let offered = outlook.next_feed.as_ref().filter(|_| offers(outlook));
    let asked = outlook.feeds.iter().rev();
    asked
        .filter(|feed| is_in_question(outlook, feed) && Some(*feed) != offered)
        .take(ASKED_AT_ONCE)
        .map(|feed| {
            view! { <section class="question" data-given="true">{answers(outlook, feed)}</section> }
                .into_any()
        })
        .collect()
}

/// Whether the card of the next feed offers it, rather than what keeps it back.
pub fn offers(outlook: &Outlook) -> bool {
    match outlook.instruction {
        Instruction::Feed { .. }
        | Instruction::WaitUntil {
            why: Why::NotYetDue,
            ..
        }
        | Instruction::First(First::LookAtCrop | First::Weigh | First::Settle) => true,
        Instruction::WaitUntil { .. }
        | Instruction::First(First::Cool | First::Warm | First::IsItGone(_))
        | Instruction::AskFirst { .. }
        | Instruction::DoNotFeed { .. }
        | Instruction::Nothing(_) => false,
    }
}

/// Whether it is asked here if this feed was given.
fn is_in_question(outlook: &Outlook, feed: &ScheduledFeed) -> bool {
    feed.is_asked()
        && !outlook.is_away()
        && outlook.now.minutes_since(feed.planned) <= ASKED_MINUTES
}

/// For the card of the next feed: the question whether it was given, and that it may be given still.
pub fn given_or_still_to_give(outlook: &Outlook, feed: &ScheduledFeed) -> Option<AnyView> {
    let say = AppState::here().language();
    is_in_question(outlook, feed).then(|| {
        view! {
            <div class="next-feed__asked" data-given="true">
                {answers(outlook, feed)}
                {(!outlook.is_call_next()).then(|| view! { <p data-still="true">{say.asked_still()}</p> })}
            </div>
        }
        .into_any()
    })
}

/// The question whether a feed was given, and its answers.
fn answers(outlook: &Outlook, feed: &ScheduledFeed) -> impl IntoView + use<> {
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
        <p>{asked}</p>
        <div class="acts">
            <button type="button" class="button" on:click=given>
                {say.asked_given()} ", " {writing.volume(volume)}
            </button>
            {button(say.log_refused(), refused)}
            {button(say.asked_not_given(), left_out(WhyPassedOver::NotPossible))}
            {button(say.asked_not_known(), left_out(WhyPassedOver::NotKnown))}
        </div>
        <p class="hint"><a href=Route::Log(Some(slot)).to_hash()>{say.asked_otherwise()}</a></p>
    }
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
        button(say.same_food_answer(answer), reply)
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

//! What holds in every life, whatever people do. A law that is broken stops the life with its number.

use std::sync::OnceLock;

use perchlight::domain::instruction::answer::Instruction;
use perchlight::domain::instruction::holds::Hold;
use perchlight::domain::journal::entries::{Change, CropState, Journal};
use perchlight::domain::journal::signs::Sign;
use perchlight::domain::outlook::{Outlook, WeightNow, outlook};
use perchlight::domain::quantity::units::Millilitres;
use perchlight::domain::time::moment::{Day, Moment};
use perchlight::domain::warnings::level::RuleId;

use crate::acts::Who;
use crate::counts;
use crate::home::{CHICK, Home};

/// Stops the life unless what law `number` asks for holds. `LAWS` ("1,6") asks only some of them.
pub(crate) fn law(number: u8, holds: bool, told: impl FnOnce() -> String) {
    counts::a_law();
    if !holds && is_asked(number) {
        panic!("law {number}: {}", told());
    }
}

fn is_asked(number: u8) -> bool {
    static ASKED: OnceLock<Option<Vec<u8>>> = OnceLock::new();
    let asked = ASKED.get_or_init(|| {
        let text = std::env::var("LAWS").ok()?;
        Some(
            text.split(',')
                .filter_map(|number| number.trim().parse().ok())
                .collect(),
        )
    });
    asked.as_ref().is_none_or(|asked| asked.contains(&number))
}

/// A day of care begins at this hour of the wall clock.
const CARE_DAY_STARTS: i32 = 4;

/// A part of the outlook that an act may touch.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Field {
    Plan,
    Feeds,
    Weight,
    Findings,
    Weaning,
}

const ALL: [Field; 5] = [
    Field::Plan,
    Field::Feeds,
    Field::Weight,
    Field::Findings,
    Field::Weaning,
];

/// Law 1: what each kind of change may touch. Retractions may touch what the entry taken back may.
pub(crate) fn may_touch(change: &Change) -> &'static [Field] {
    use Field::{Feeds, Findings, Weaning, Weight};
    match change {
        Change::ChickAdded(_)
        | Change::PartSet { .. }
        | Change::PartTaken { .. }
        | Change::PartAgreed { .. }
        | Change::SameChick { .. }
        | Change::Retracted { .. } => &ALL,
        // The stage of life decides which rules hold.
        Change::Grown | Change::Died => &[Feeds, Findings, Weaning],
        Change::DrinkingSeen => &[Findings, Weaning],
        Change::SameFood { .. } => &[Feeds, Weight, Findings, Weaning],
        Change::AdviceNoted { .. } | Change::HandedOver { .. } => &[],
        // The first feed at home follows from the arrival, and loss over the journey with it.
        Change::Arrived => &[Feeds, Findings, Weaning],
        Change::Weighed { .. } | Change::WeightStands { .. } => &[Weight, Findings, Weaning],
        // A weight after a feed is reduced by what was fed.
        Change::Fed { .. } => &[Feeds, Weight, Findings, Weaning],
        Change::FeedRefused { .. } | Change::FeedPassedOver { .. } => &[Feeds, Findings, Weaning],
        Change::CropSeen { .. }
        | Change::DroppingsSeen { .. }
        | Change::DroppingsCounted { .. }
        | Change::SolidsSeen { .. }
        | Change::RoomSeen { .. } => &[Findings, Weaning],
        // No try follows a cough or food that came back.
        Change::SignSeen { .. } | Change::SignGone { .. } => &[Feeds, Findings, Weaning],
        Change::FeedDropped { .. } | Change::FeedBroughtBack { .. } => {
            &[Feeds, Weight, Findings, Weaning]
        }
        // A visit answers the question for the first one, an appointment until its time.
        Change::VetSeen { .. } | Change::VetBooked { .. } => &[Findings],
        Change::Called { .. }
        | Change::MixMade { .. }
        | Change::StockOpened { .. }
        | Change::PhotoTaken(_)
        | Change::VisitReason { .. }
        | Change::Remarked { .. }
        | Change::Noted { .. } => &[],
    }
}

/// What the scale says. What was eaten speaks in the odds of a fall, and so in the weight to call at and in what
/// is weighed again: these are findings.
fn weighed(outlook: &Outlook) -> WeightNow {
    let mut weight = outlook.weight.clone();
    (weight.call_at, weight.second_weighing) = (None, None);
    (weight.trend.fall, weight.trend.falls_from_g) = (None, None);
    weight
}

fn judged(outlook: &Outlook) -> impl PartialEq + use<> {
    let weight = &outlook.weight;
    let odds = (weight.trend.fall, weight.trend.falls_from_g);
    let asked = (weight.call_at, weight.second_weighing);
    (outlook.level, outlook.findings.clone(), odds, asked)
}

/// Which parts differ between two outlooks of the same moment.
fn touched(before: &Outlook, after: &Outlook) -> Vec<Field> {
    assert_eq!(
        before.now, after.now,
        "outlooks of two moments are not compared"
    );
    ALL.into_iter()
        .filter(|field| match field {
            Field::Plan => before.chick.plan != after.chick.plan,
            Field::Feeds => before.feeds != after.feeds || before.next_feed != after.next_feed,
            Field::Weight => weighed(before) != weighed(after),
            Field::Findings => judged(before) != judged(after),
            Field::Weaning => before.weaning != after.weaning,
        })
        .collect()
}

pub(crate) fn an_act_changes_nothing_it_is_not_about(
    before: &Outlook,
    after: &Outlook,
    may: &[Field],
) {
    let touched = touched(before, after);
    let strange: Vec<&Field> = touched
        .iter()
        .filter(|field| !may.contains(field))
        .collect();
    law(1, strange.is_empty(), || {
        format!("{strange:?} moved, only {may:?} may")
    });
}

/// Law 1 for an edit of the plan that is about no feed: no feed moves, none comes back.
pub(crate) fn an_edit_of_people_or_limits_moves_no_feed(before: &Outlook, after: &Outlook) {
    law(1, before.feeds == after.feeds, || {
        "feeds moved by an edit that is about none".to_owned()
    });
    law(1, before.weaning.dropped == after.weaning.dropped, || {
        "drops changed by an edit".to_owned()
    });
}

/// Law 2: the same entries in any order, once or twice, give the same outlook.
pub(crate) fn order_of_joining_does_not_matter(home: &Home, turn: usize) {
    let entries = home.owner.entries();
    let middle = turn % entries.len().max(1);
    let mut turned = Journal::default();
    for entry in entries[middle..]
        .iter()
        .chain(&entries[..middle])
        .chain(&entries[middle..])
    {
        turned.insert(entry.clone());
    }
    let again = outlook(home.now, &turned, CHICK, &home.zone).expect("the chick is there");
    law(2, again == home.outlook(Who::Owner), || {
        "joined in another order".to_owned()
    });
}

/// Law 3: undo with nothing between gives the outlook from before.
pub(crate) fn undo_gives_back_the_outlook(before: &Outlook, after: &Outlook) {
    law(3, before.level == after.level, || {
        "the level after undo".to_owned()
    });
    law(3, before.findings == after.findings, || {
        "the findings after undo".to_owned()
    });
    law(3, before.feeds == after.feeds, || {
        "the feeds after undo".to_owned()
    });
    law(3, before.weight == after.weight, || {
        "the weight after undo".to_owned()
    });
    law(3, before.weaning == after.weaning, || {
        "weaning after undo".to_owned()
    });
    law(3, before.chick.plan == after.chick.plan, || {
        "the plan after undo".to_owned()
    });
}

/// Law 4: notes typed later end in the same outlook.
pub(crate) fn when_a_note_was_typed_does_not_matter(home: &Home) {
    let later = |minutes: i64| {
        let entries = home.owner.entries().iter().cloned().map(|mut entry| {
            let is_plan = entry.change.plan().is_some();
            if !is_plan {
                entry.noted_at = entry.noted_at.plus_minutes(minutes);
            }
            entry
        });
        Journal::from_entries(entries.collect())
    };
    let again = outlook(home.now, &later(90), CHICK, &home.zone).expect("the chick is there");
    law(4, again == home.outlook(Who::Owner), || {
        "typed 90 min later".to_owned()
    });
}

/// How much the screen asks to feed at this moment; `None` when it does not.
pub(crate) fn asked_for(outlook: &Outlook) -> Option<Millilitres> {
    if let Instruction::Feed { volume, .. } = outlook.instruction {
        Some(volume)
    } else {
        None
    }
}

/// Signs after which nothing is fed before somebody was asked, from the first-aid pages of avian vets
/// (Duerr & Gage 2020, p. 5; Romagnano; Rivera 2008). A part of the list: those that are never in doubt.
const NEVER_FED: [Sign; 6] = [
    Sign::LabouredBreathing,
    Sign::WentDownWrong,
    Sign::Limp,
    Sign::SeizureOrTrauma,
    Sign::SourCrop,
    Sign::Cold,
];

/// Law 6: "feed" is never answered while something forbids it.
pub(crate) fn no_feed_is_asked_for_while_something_forbids_it(outlook: &Outlook) {
    if asked_for(outlook).is_none() {
        return;
    }
    let held = outlook
        .holds
        .iter()
        .find(|hold| Hold::is_against_food(hold));
    law(6, held.is_none(), || {
        format!("a feed is asked for against {held:?}")
    });
    let day_ago = outlook.now.plus_minutes(-24 * 60);
    let seen = outlook.chick.signs_present(day_ago);
    let sign = seen.iter().find(|seen| NEVER_FED.contains(&seen.what));
    law(6, sign.is_none(), || {
        format!("a feed is asked for with {sign:?}")
    });
    let look = outlook
        .chick
        .crops
        .iter()
        .rev()
        .find(|look| look.at <= outlook.now);
    let is_full = look.is_some_and(|look| look.what.state == CropState::HalfOrMore);
    law(6, !is_full, || {
        format!("a feed is asked for on a full crop: {look:?}")
    });
}

/// Law 8: at home, with a feed in force, somebody is told what to do at least every so often: the plan's
/// longest gap and two hours. What forbids a feed says whom to call.
pub(crate) fn is_told(outlook: &Outlook) -> bool {
    match outlook.instruction {
        Instruction::Feed { .. }
        | Instruction::First(_)
        | Instruction::AskFirst { .. }
        | Instruction::DoNotFeed { .. } => true,
        Instruction::WaitUntil { .. } => false,
        // Nothing is to be fed: no law.
        Instruction::Nothing(_) => true,
    }
}

/// When the chick last ate a quarter of a feed or more, as far as this phone knows.
pub(crate) fn last_feed(outlook: &Outlook) -> Option<Moment> {
    let volumes = outlook.chick.plan.feeds.iter().map(|feed| feed.volume);
    let quarter = volumes.max()?.tenths() / 4;
    let mut feeds = outlook.chick.feeds.iter().rev();
    let last = feeds.find(|feed| feed.what.outcome.taken().tenths() >= quarter)?;
    Some(last.at.min(outlook.now))
}

/// The longest time between two feeds that are still given, minutes; a day with one feed.
pub(crate) fn longest_gap_minutes(outlook: &Outlook) -> i64 {
    let feeds = outlook.chick.feeds_in_force(outlook.now);
    let times: Vec<i64> = feeds
        .iter()
        .map(|feed| i64::from(feed.time.minutes()))
        .collect();
    let next = times
        .iter()
        .skip(1)
        .copied()
        .chain(times.first().map(|first| first + 1_440));
    times
        .iter()
        .zip(next)
        .map(|(time, next)| (next - time).rem_euclid(1_440))
        .map(|gap| if gap == 0 { 1_440 } else { gap })
        .max()
        .unwrap_or(1_440)
}

/// The day of care that a moment belongs to, by the wall clock of that moment: four hours before it may
/// be on another clock.
pub(crate) fn care_day(home: &Home, at: Moment) -> Day {
    let lived = home.zone.lived(at);
    let is_night = lived.time.minutes() < CARE_DAY_STARTS * 60;
    lived.day.plus(-i32::from(is_night))
}

/// Law 7: what is asked for and was given in a day of care is never more than the plan holds. A day that a
/// journey west makes longer has room for more feeds by law 8: there any 24 h hold no more than the plan.
/// A journey east of more than an hour may push yesterday's last feed past the hour at which a day of care
/// begins, its gap kept; it stays yesterday's: one feed, within 24 h of the journey. Or it is given so late
/// that it counts for today's first, in its own amount: there as many feeds, each as the plan's largest.
pub(crate) fn no_day_asks_for_more_than_the_plan_holds(home: &Home, asked: Millilitres) {
    let outlook = home.outlook(Who::Owner);
    let today = care_day(home, home.now);
    // What the other phone asked for before the two were joined is not of this one.
    let is_counted = |by: &str, at| {
        let is_today = care_day(home, at) == today && home.now.minutes_since(at) < 24 * 60;
        by == "owner" && is_today
    };
    let offset = |at| home.zone.offset_at(at).minutes();
    let is_put_forward = offset(home.now) - offset(home.now.plus_minutes(-24 * 60)) > 60;
    let before_today = outlook.feeds.iter().rev().find(|feed| feed.day < today);
    let pushed = before_today.filter(|_| is_put_forward);
    let pushed = pushed.and_then(|feed| feed.sitting());
    let is_pushed = |id| pushed.is_some_and(|own| own.notes.contains(&id));
    let feeds = outlook.chick.feeds.iter();
    let eaten = feeds.filter(|feed| is_counted(&feed.what.by, feed.at) && !is_pushed(feed.id));
    let eaten: i32 = eaten.map(|feed| feed.what.outcome.taken().tenths()).sum();
    let volumes = outlook.chick.plan.feeds.iter();
    let volumes: Vec<i32> = volumes.map(|feed| feed.volume.tenths()).collect();
    let largest = volumes.iter().max().copied().unwrap_or_default();
    let plan: i32 = if is_put_forward {
        volumes.iter().map(|_| largest).sum()
    } else {
        volumes.iter().sum()
    };
    law(7, eaten + asked.tenths() <= plan, || {
        format!(
            "{eaten} tenths of a ml given, {} more asked for, the plan holds {plan}",
            asked.tenths()
        )
    });
}

/// Law 9: a dropped feed is not asked for until it is brought back.
pub(crate) fn no_dropped_feed_is_asked_for(
    home: &Home,
    dropped: &[perchlight::domain::plan::care_plan::Slot],
) {
    let outlook = home.outlook(Who::Owner);
    if let Some(next) = &outlook.next_feed {
        law(9, !dropped.contains(&next.slot), || {
            format!("{:?} was dropped and is asked for", next.slot)
        });
    }
}

/// Law 10: a feed noted by two carers raises no alarm.
pub(crate) fn a_feed_noted_twice_raises_no_alarm(before: &Outlook, after: &Outlook) {
    let is_of_two = |rule: RuleId| matches!(rule, RuleId::GapTooShort | RuleId::VolumeOverCeiling);
    let new: Vec<RuleId> = after
        .findings
        .iter()
        .filter(|finding| is_of_two(finding.rule) && !before.findings.contains(finding))
        .map(|finding| finding.rule)
        .collect();
    law(10, new.is_empty(), || {
        format!("a feed noted twice raises {new:?}")
    });
}

/// Law 13: joining and undoing lose no entry.
pub(crate) fn no_entry_is_lost(before: &Journal, after: &Journal) {
    law(
        13,
        before.entries().iter().all(|entry| after.holds(entry)),
        || "an entry is gone".to_owned(),
    );
}

/// Law 15: a clock that moves by an hour or less changes no count of feeds of a day.
pub(crate) fn a_small_change_of_the_clock_changes_no_count(before: &Outlook, after: &Outlook) {
    let count = |outlook: &Outlook, day: Day| {
        let of_day = outlook.feeds.iter().filter(|feed| feed.day == day);
        of_day.count()
    };
    // Both lists reach from the day before yesterday to tomorrow.
    let (one, other) = (before.lived.day, after.lived.day);
    let (first, last) = (one.max(other).plus(-2), one.min(other).plus(1));
    for day in (0..=last.since(first)).map(|days| first.plus(days)) {
        law(15, count(before, day) == count(after, day), || {
            format!("feeds of {}", day.iso())
        });
    }
}

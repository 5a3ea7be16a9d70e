//! *Watches* the time between the last two feeds that put food into the chick.
//!
//! *Limit* the gap that the schedule keeps: 4 h by day or three quarters of a shorter plan's own
//! gap, 6 h over the night. Watch; below half of it: ring the breeder.
//!
//! *Why* food on top of food stretches the crop and slows it.
//!
//! *Sources* feed when the crop is empty or nearly so, and 6 h off at night: avian pediatric nutrition
//! page of a US animal clinic; overfilling leads to stasis: Rivera 2008. The steps: ours.
//!
//! *Wrong when* a feed was split into two parts and noted twice.

use crate::domain::chick::{FeedNote, Noted};
use crate::domain::evidence::Standing;
use crate::domain::level::{Finding, Level, RuleId, Value};
use crate::domain::rules::{Facts, Rule};
use crate::domain::schedule::FeedState;

/// The finding is shown for this long after the second feed, minutes. Ours.
const SHOWN_MINUTES: i64 = 12 * 60;

/// The rule.
pub const RULE: Rule = Rule {
    name: "gap-too-short",
    limits: "gap between two feeds: watch below the schedule's own gap (at most 4 h by day, 6 h at night), ring the breeder below half of it",
    standing: Standing::Ours,
    source: "6 h at night: clinic page on avian pediatric nutrition; stasis from overfilling: Rivera 2008; the steps: ours",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let given: Vec<&Noted<FeedNote>> = facts
        .chick
        .feeds
        .iter()
        .filter(|feed| feed.what.outcome.taken().tenths() > 0)
        .collect();
    let [.., before, latest] = given.as_slice() else {
        return Vec::new();
    };
    let scheduled = facts.feeds.iter().find(|feed| match &feed.state {
        FeedState::Done(note) => note.id == latest.id,
        FeedState::Upcoming | FeedState::Due | FeedState::Late | FeedState::NotNoted => false,
    });
    let Some(scheduled) = scheduled else {
        return Vec::new();
    };
    let gap = latest.at.minutes_since(before.at);
    if gap >= scheduled.gap_minutes || facts.now.minutes_since(latest.at) > SHOWN_MINUTES {
        return Vec::new();
    }
    let (level, limit) = if gap < scheduled.gap_minutes / 2 {
        (Level::RingBreeder, scheduled.gap_minutes / 2)
    } else {
        (Level::Watch, scheduled.gap_minutes)
    };
    vec![Finding {
        rule: RuleId::GapTooShort,
        level,
        value: Value::Minutes(gap),
        limit: Value::Minutes(limit),
        standing: Standing::Ours,
    }]
}

//! *Watches* feeds of the plan that nobody noted, in a row up to now.
//!
//! *Limit* one: watch; two: ring the breeder; three: vet today. A feed passed over counts as missed
//! unless breeder or vet advised it; a feed refused is another rule's.
//!
//! *Why* a part-weaned chick cannot make up for feeds by itself, and a feed is never doubled.
//!
//! *Sources* three feeds or 24 h without food as an alarm: common practice; one and two: ours.
//!
//! *Wrong when* the feeds were given and not noted.

use crate::domain::chick::FeedOutcome;
use crate::domain::evidence::Standing;
use crate::domain::journal::WhyPassedOver;
use crate::domain::level::{Finding, Level, RuleId, Value};
use crate::domain::rules::{Facts, Rule};
use crate::domain::schedule::FeedState;

/// The rule.
pub const RULE: Rule = Rule {
    name: "missed-feeds",
    limits: "feeds in a row that were not given: watch at 1, ring the breeder at 2, vet today at 3",
    standing: Standing::CommonPractice,
    source: "three feeds or 24 h: common practice; one and two: ours",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let mut missed = 0_usize;
    for feed in facts.feeds.iter().filter(|feed| feed.due <= facts.now) {
        match &feed.state {
            FeedState::Upcoming | FeedState::Due => {}
            FeedState::Late | FeedState::NotNoted => missed += 1,
            FeedState::Done(note) => match note.what.outcome {
                FeedOutcome::Given { .. }
                | FeedOutcome::Refused
                | FeedOutcome::PassedOver(WhyPassedOver::Advised) => {
                    missed = 0;
                }
                FeedOutcome::PassedOver(
                    WhyPassedOver::CropNotEmpty
                    | WhyPassedOver::NotFit
                    | WhyPassedOver::NotPossible,
                ) => missed += 1,
            },
        }
    }
    let (level, limit, standing) = match missed {
        0 => return Vec::new(),
        1 => (Level::Watch, 1, Standing::Ours),
        2 => (Level::RingBreeder, 2, Standing::Ours),
        _ => (Level::VetToday, 3, Standing::CommonPractice),
    };
    let (value, limit) = (Value::Count(missed), Value::Count(limit));
    vec![Finding {
        rule: RuleId::MissedFeeds,
        level,
        value,
        limit,
        standing,
    }]
}

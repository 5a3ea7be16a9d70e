//! *Watches* the signs of trouble that somebody saw.
//!
//! *Limit* none: each sign has its own level, below. A sign counts for 24 h, or until it is noted as
//! gone.
//!
//! *Why* a bird hides illness; what can be seen is late already.
//!
//! *Sources* signs: Duerr & Gage 2020; Romagnano; Rivera 2008; practice pages of avian vets. The
//! levels: ours.
//!
//! *Wrong when* a sign was mistaken; noting it as gone ends the finding.

use crate::domain::evidence::Standing;
use crate::domain::level::{Finding, Level, RuleId, Value};
use crate::domain::rules::{Facts, Rule};
use crate::domain::signs::Sign;

/// How long a sign counts, minutes.
pub const SHOWN_MINUTES: i64 = 24 * 60;

/// The rule.
pub const RULE: Rule = Rule {
    name: "sign-seen",
    limits: "each sign has its own level and counts for 24 h or until it is gone",
    standing: Standing::Ours,
    source: "signs: Duerr & Gage 2020, Romagnano, Rivera 2008; the levels: ours",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let present = facts
        .chick
        .signs_present(facts.now.plus_minutes(-SHOWN_MINUTES));
    let finding = |sign: Sign| Finding {
        rule: RuleId::SignSeen(sign),
        level: level(sign),
        value: Value::Seen,
        limit: Value::Seen,
        standing: Standing::Ours,
    };
    present
        .into_iter()
        .filter(|seen| seen.at <= facts.now)
        .map(|seen| finding(seen.what))
        .collect()
}

/// How worried to be about one sign by itself.
pub const fn level(sign: Sign) -> Level {
    match sign {
        Sign::BroughtBackOnce | Sign::UndigestedFood | Sign::Overheated | Sign::BegsAllDay => {
            Level::Watch
        }
        Sign::ClickCleared | Sign::NoDroppingFourHours => Level::RingBreeder,
        Sign::Vomiting
        | Sign::NoDroppingEightHours
        | Sign::BadDroppingsOverADay
        | Sign::BloodInDroppings
        | Sign::Dull
        | Sign::StaysOverheated
        | Sign::Dehydrated
        | Sign::FedTooHot
        | Sign::Lame
        | Sign::SwallowedObject => Level::VetToday,
        Sign::LabouredBreathing
        | Sign::ClickStays
        | Sign::SourCrop
        | Sign::CropPatch
        | Sign::Limp
        | Sign::Cold
        | Sign::WentDownWrong
        | Sign::Bleeding
        | Sign::SeizureOrTrauma => Level::Emergency,
    }
}

//! *Watches* the signs of trouble that somebody saw.
//!
//! *Limit* none: each sign has its own level, below. A sign counts until it is noted as gone, at the
//! longest for 24 h, or for 72 h when it is one for the vet or food may have gone down wrong. Food that came
//! back just after a feed is a watch; twice in a day or on two days running: call the breeder.
//!
//! *Why* a bird hides illness; what can be seen is late already.
//!
//! *Sources* signs: Duerr & Gage 2020; Romagnano; Rivera 2008; practice pages of avian vets. Food that comes
//! back in healthy chicks near their peak: Groffen 2008; the harmless and the ill kind: a clinic's page; twice: common
//! practice. Three days of watching after food went down wrong: common practice. The
//! other levels and hours: ours.
//!
//! *Wrong when* a sign was mistaken; noting it as gone ends the finding.

use crate::domain::journal::chick::{Chick, Noted};
use crate::domain::journal::signs::Sign;
use crate::domain::quantity::evidence::Standing;
use crate::domain::time::moment::Moment;
use crate::domain::warnings::level::{Finding, Level, RuleId, Value};
use crate::domain::warnings::rules::{Facts, Limit, Rule};

/// How long a sign counts, minutes.
pub const SHOWN_MINUTES: i64 = 24 * 60;

/// How long a sign for the vet, or of food in the airway, counts, minutes: it must not lapse because nobody
/// looked again.
pub const SHOWN_VET_MINUTES: i64 = 72 * 60;

/// Returns of food, in a day or on two days running, that want a call. Common practice.
pub(crate) const RETURNS: usize = 2;

/// The rule.
pub const RULE: Rule = Rule {
    name: "sign-seen",
    limits: &[
        Limit::new(Level::Watch, Value::Minutes(SHOWN_MINUTES)),
        Limit::new(Level::CallBreeder, Value::Count(RETURNS)),
        Limit::new(Level::VetToday, Value::Minutes(SHOWN_VET_MINUTES)),
        Limit::new(Level::Emergency, Value::Seen),
    ],
    standing: Standing::Ours,
    source: "signs: Duerr & Gage 2020, Romagnano, Rivera 2008; food that comes back: Groffen 2008; the levels and hours: our own",
    check,
};

fn check(facts: &Facts<'_>) -> Vec<Finding> {
    let finding = |seen: Noted<Sign>| Finding {
        rule: RuleId::SignSeen(seen.what),
        level: if is_return_again(facts.chick, &seen) {
            Level::CallBreeder
        } else {
            level(seen.what)
        },
        value: Value::Seen,
        limit: Value::Seen,
        standing: Standing::Ours,
    };
    let present = present(facts.now, facts.chick).into_iter();
    present.map(finding).collect()
}

/// Whether food came back just after a feed and had done so earlier that day or on the day before.
pub fn is_return_again(chick: &Chick, seen: &Noted<Sign>) -> bool {
    let sign = Sign::BroughtBackOnce;
    let day = seen.lived().day;
    let mut earlier = chick.signs.iter().filter(|other| other.what == sign);
    seen.what == sign
        && earlier.any(|other| {
            other.id != seen.id
                && other.at <= seen.at
                && (other.lived().day == day || other.lived().day == day.plus(-1))
        })
}

/// The signs that count at `now`, each once with its latest sighting.
pub fn present(now: Moment, chick: &Chick) -> Vec<Noted<Sign>> {
    let mut present = chick.signs_present(now.plus_minutes(-SHOWN_VET_MINUTES));
    present.retain(|seen| seen.at <= now && now.minutes_since(seen.at) <= shown_minutes(seen.what));
    present
}

/// How long a sign counts, minutes.
pub fn shown_minutes(sign: Sign) -> i64 {
    if level(sign) >= Level::VetToday || sign == Sign::ClickCleared {
        SHOWN_VET_MINUTES
    } else {
        SHOWN_MINUTES
    }
}

/// How worried to be about one sign by itself.
pub const fn level(sign: Sign) -> Level {
    match sign {
        Sign::BroughtBackOnce | Sign::UndigestedFood | Sign::Overheated | Sign::BegsAllDay => {
            Level::Watch
        }
        Sign::ClickCleared | Sign::NoDroppingFourHours => Level::CallBreeder,
        Sign::Vomiting
        | Sign::NoDroppingEightHours
        | Sign::BadDroppingsOverADay
        | Sign::BloodInDroppings
        | Sign::Dull
        | Sign::StaysOverheated
        | Sign::Dehydrated
        | Sign::FedTooHot
        | Sign::Lame
        | Sign::SwallowedObject
        | Sign::Wobbles
        | Sign::Discharge
        | Sign::MouthPlaques
        | Sign::Bruised => Level::VetToday,
        Sign::LabouredBreathing
        | Sign::ClickStays
        | Sign::SourCrop
        | Sign::CropPatch
        | Sign::Limp
        | Sign::Cold
        | Sign::WentDownWrong
        | Sign::Bleeding
        | Sign::SeizureOrTrauma
        | Sign::Prolapse
        | Sign::Shock
        | Sign::FeatherBleeds => Level::Emergency,
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::Change;
    use crate::domain::warnings::rules::sign_seen::*;
    use crate::domain::warnings::rules::trial::{found, level_of, macaw, sign};

    #[test]
    fn a_sign_counts_for_a_day_and_a_sign_for_the_vet_for_three() {
        let shown = |seen, hours: i32, minutes| {
            let mut script = macaw();
            script.note(1, 8, 0, sign(seen));
            level_of(&RULE, &script, script.at(1, 8 + hours, minutes)).is_some()
        };
        assert!(shown(Sign::BegsAllDay, 24, 0));
        assert!(!shown(Sign::BegsAllDay, 24, 1));
        assert!(shown(Sign::NoDroppingFourHours, 24, 0));
        assert!(!shown(Sign::NoDroppingFourHours, 24, 1));
        assert!(shown(Sign::ClickCleared, 72, 0));
        assert!(!shown(Sign::ClickCleared, 72, 1));
        assert!(shown(Sign::Vomiting, 72, 0));
        assert!(!shown(Sign::Vomiting, 72, 1));
        assert!(shown(Sign::CropPatch, 72, 0));
    }

    #[test]
    fn a_sign_noted_as_gone_ends_and_comes_back_when_seen_again() {
        let mut script = macaw();
        script.note(1, 8, 0, sign(Sign::Cold));
        script.note(1, 9, 0, Change::SignGone { sign: Sign::Cold });
        assert_eq!(level_of(&RULE, &script, script.at(1, 10, 0)), None);
        script.note(1, 11, 0, sign(Sign::Cold));
        let now = script.at(1, 12, 0);
        assert_eq!(level_of(&RULE, &script, now), Some(Level::Emergency));
    }

    #[test]
    fn food_that_came_back_after_a_feed_is_a_call_the_second_time() {
        let level = |again: Option<(i32, i32)>| {
            let mut script = macaw();
            script.note(1, 8, 0, sign(Sign::BroughtBackOnce));
            let (day, hour) = again.unwrap_or((1, 8));
            if again.is_some() {
                script.note(day, hour, 0, sign(Sign::BroughtBackOnce));
            }
            level_of(&RULE, &script, script.at(day, hour, 5))
        };
        assert_eq!(level(None), Some(Level::Watch));
        assert_eq!(level(Some((1, 22))), Some(Level::CallBreeder));
        assert_eq!(level(Some((2, 23))), Some(Level::CallBreeder));
        assert_eq!(level(Some((3, 0))), Some(Level::Watch));
    }

    #[test]
    fn a_sign_seen_twice_is_one_finding_and_two_signs_are_two() {
        let mut script = macaw();
        script.note(1, 8, 0, sign(Sign::Dull));
        script.note(1, 9, 0, sign(Sign::Dull));
        script.note(1, 9, 5, sign(Sign::Lame));
        assert_eq!(found(&RULE, &script, script.at(1, 10, 0)).len(), 2);
    }

    #[test]
    fn each_sign_has_the_level_of_the_trades_ladder() {
        // Signs for a look, the breeder, the vet and at once; source: the works named above, the
        // order of the levels ours.
        let by_level = |wanted| {
            Sign::ALL
                .into_iter()
                .filter(move |sign| level(*sign) == wanted)
        };
        assert_eq!(
            by_level(Level::Watch).collect::<Vec<_>>(),
            [
                Sign::BroughtBackOnce,
                Sign::UndigestedFood,
                Sign::Overheated,
                Sign::BegsAllDay
            ]
        );
        assert_eq!(
            by_level(Level::CallBreeder).collect::<Vec<_>>(),
            [Sign::ClickCleared, Sign::NoDroppingFourHours]
        );
        assert_eq!(by_level(Level::VetToday).count(), 14);
        assert_eq!(by_level(Level::Emergency).count(), 12);
        assert_eq!(by_level(Level::Settled).count(), 0);
    }
}

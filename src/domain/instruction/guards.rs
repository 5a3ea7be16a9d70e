//! Reasons that forbid a feed now, for the feed guide. Pure looks at what was noted and measured.
//!
//! **Invariant.** A guard can only stop a feed; nothing here ever calls for one.

use crate::domain::feeding::crop;
use crate::domain::homecoming::first_days::SETTLE_MINUTES;
use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::CropState;
use crate::domain::journal::signs::Sign;
use crate::domain::quantity::order::sorted;
use crate::domain::quantity::units::Celsius;
use crate::domain::time::moment::Moment;
use crate::domain::warnings::level::Level;
use crate::domain::warnings::rules::{served_hot, sign_seen};

/// After a feed the crop counts as full for this long without a look, minutes: half the usual emptying
/// time of 4 h. Ours.
pub const FED_LATELY_MINUTES: i64 = 120;

/// A look that found food counts for this long, minutes; after that the crop must be looked at again.
/// Ours.
pub const LOOK_MINUTES: i64 = 24 * 60;

/// A reason that forbids a feed now, most dangerous first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Guard {
    /// It breathes badly, or formula went down wrong: more would go into the airway.
    Breathing,
    /// It clicked or coughed at a feed and is clear again: nothing more before the breeder is rung.
    Clicked,
    /// It is limp, had a seizure or was hurt: it cannot swallow safely.
    CannotSwallow,
    /// It is cold: the gut stands still.
    Cold,
    /// It vomits.
    Vomiting,
    /// The crop smells sour, holds gas or does not move.
    CropStill,
    /// The crop leaks or has a patch over it.
    CropPatch,
    /// The crop still holds food.
    CropNotEmpty,
    /// It was fed a short while ago.
    FedLately,
    /// It has just arrived and is to get warm first.
    JustArrived,
    /// It is overheated and is to cool down first.
    Overheated,
    /// Formula above the window.
    TooHot,
    /// Formula below the window.
    TooCool,
}

impl Guard {
    /// Every guard, most dangerous first.
    pub const ALL: [Self; 13] = [
        Self::Breathing,
        Self::Clicked,
        Self::CannotSwallow,
        Self::Cold,
        Self::Vomiting,
        Self::CropStill,
        Self::CropPatch,
        Self::CropNotEmpty,
        Self::FedLately,
        Self::JustArrived,
        Self::Overheated,
        Self::TooHot,
        Self::TooCool,
    ];

    /// How worried to be: guards that only ask to wait are at *Watch*.
    pub const fn level(self) -> Level {
        match self {
            Self::Breathing | Self::CannotSwallow | Self::Cold | Self::CropPatch => {
                Level::Emergency
            }
            Self::Vomiting => Level::VetToday,
            Self::Clicked | Self::CropStill => Level::RingBreeder,
            Self::CropNotEmpty
            | Self::FedLately
            | Self::JustArrived
            | Self::Overheated
            | Self::TooHot
            | Self::TooCool => Level::Watch,
        }
    }
}

/// Every reason that forbids feeding this chick now, most dangerous first; empty when none is known.
///
/// `formula` is the temperature of the formula at hand, when it was measured: without one its guards
/// are silent, and the guide must ask. The window is the plan's, but never above
/// [`served_hot::REFUSE_ABOVE`].
///
/// Source: when not to feed: Duerr & Gage 2020, p. 5; Romagnano; Rivera 2008; the hours: ours.
pub fn feeding_guards(now: Moment, chick: &Chick, formula: Option<Celsius>) -> Vec<Guard> {
    let mut guards: Vec<Guard> = sign_seen::present(now, chick)
        .into_iter()
        .filter_map(|seen| sign_guard(seen.what))
        .collect();
    guards.extend(crop_guard(now, chick));
    let is_new = chick
        .arrived
        .as_ref()
        .is_some_and(|arrived| (0..SETTLE_MINUTES).contains(&now.minutes_since(arrived.at)));
    if is_new {
        guards.push(Guard::JustArrived);
    }
    if let Some(formula) = formula {
        if formula > chick.plan.serve_to.min(served_hot::REFUSE_ABOVE) {
            guards.push(Guard::TooHot);
        }
        if formula < chick.plan.serve_from {
            guards.push(Guard::TooCool);
        }
    }
    let mut guards = sorted(guards);
    guards.dedup();
    guards
}

const fn sign_guard(sign: Sign) -> Option<Guard> {
    match sign {
        Sign::LabouredBreathing | Sign::ClickStays | Sign::WentDownWrong => Some(Guard::Breathing),
        Sign::ClickCleared => Some(Guard::Clicked),
        Sign::Limp | Sign::SeizureOrTrauma => Some(Guard::CannotSwallow),
        Sign::Cold => Some(Guard::Cold),
        Sign::Vomiting => Some(Guard::Vomiting),
        Sign::SourCrop => Some(Guard::CropStill),
        Sign::CropPatch => Some(Guard::CropPatch),
        Sign::Overheated | Sign::StaysOverheated => Some(Guard::Overheated),
        Sign::BroughtBackOnce
        | Sign::NoDroppingFourHours
        | Sign::NoDroppingEightHours
        | Sign::BadDroppingsOverADay
        | Sign::UndigestedFood
        | Sign::BloodInDroppings
        | Sign::Dull
        | Sign::Dehydrated
        | Sign::BegsAllDay
        | Sign::FedTooHot
        | Sign::Lame
        | Sign::SwallowedObject
        | Sign::Bleeding => None,
    }
}

fn crop_guard(now: Moment, chick: &Chick) -> Option<Guard> {
    let look = crop::latest_look(now, chick);
    let fed = chick.last_given(now).map(|feed| feed.at);
    let is_after_feed = |at: Moment| fed.is_none_or(|fed| at > fed);
    let fresh = look.filter(|look| now.minutes_since(look.at) <= LOOK_MINUTES);
    match fresh.map(|look| (look.what.state, is_after_feed(look.at))) {
        Some((CropState::NotMoving, _)) => Some(Guard::CropStill),
        Some((CropState::Emptying, _)) => Some(Guard::CropNotEmpty),
        Some((CropState::Empty, true)) => None,
        Some((CropState::Empty, false)) | None => fed
            .is_some_and(|fed| now.minutes_since(fed) < FED_LATELY_MINUTES)
            .then_some(Guard::FedLately),
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::instruction::guards::*;
    use crate::domain::journal::entries::Change;
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::warnings::rules::trial::{crop, macaw, plan, sign, with_plan};

    fn guards(script: &Scenario, hour: i32, minute: i32) -> Vec<Guard> {
        feeding_guards(script.at(1, hour, minute), &script.chick().unwrap(), None)
    }

    #[test]
    fn nothing_noted_forbids_nothing() {
        assert_eq!(guards(&macaw(), 7, 0), []);
    }

    #[test]
    fn a_crop_with_food_forbids_a_feed_until_it_is_seen_empty() {
        let mut script = macaw();
        script.note(1, 7, 0, crop(CropState::Emptying));
        assert_eq!(guards(&script, 8, 0), [Guard::CropNotEmpty]);
        script.note(1, 9, 0, crop(CropState::NotMoving));
        assert_eq!(guards(&script, 9, 30), [Guard::CropStill]);
        script.note(1, 10, 0, crop(CropState::Empty));
        assert_eq!(guards(&script, 10, 0), []);
    }

    #[test]
    fn a_feed_of_the_last_two_hours_forbids_another() {
        let mut script = macaw();
        script.note(1, 6, 50, crop(CropState::Empty));
        script.feed(1, 7, 0, Slot::Morning, 80);
        assert_eq!(guards(&script, 8, 59), [Guard::FedLately]);
        assert_eq!(guards(&script, 9, 0), []);
    }

    #[test]
    fn bad_signs_forbid_a_feed_and_come_most_dangerous_first() {
        let mut script = macaw();
        script.note(1, 7, 0, sign(Sign::Vomiting));
        script.note(1, 7, 0, sign(Sign::Cold));
        script.note(1, 7, 0, sign(Sign::ClickStays));
        script.note(1, 7, 0, sign(Sign::LabouredBreathing));
        script.note(1, 7, 0, sign(Sign::BegsAllDay));
        assert_eq!(
            guards(&script, 7, 10),
            [Guard::Breathing, Guard::Cold, Guard::Vomiting]
        );
        let sign = Sign::Cold;
        script.note(1, 7, 30, Change::SignGone { sign });
        assert_eq!(guards(&script, 8, 0), [Guard::Breathing, Guard::Vomiting]);
    }

    #[test]
    fn a_chick_just_arrived_gets_warm_first() {
        let mut script = macaw();
        script.note(1, 12, 0, Change::Arrived);
        assert_eq!(guards(&script, 12, 29), [Guard::JustArrived]);
        assert_eq!(guards(&script, 12, 30), []);
    }

    #[test]
    fn formula_outside_the_plans_window_is_not_given() {
        // the plan's window is 39.0 to 40.5 °C
        let at = |tenths: i32| {
            let script = macaw();
            let formula = Some(Celsius::tenths_held(tenths));
            feeding_guards(script.at(1, 7, 0), &script.chick().unwrap(), formula)
        };
        assert_eq!(at(389), [Guard::TooCool]);
        assert_eq!(at(390), []);
        assert_eq!(at(405), []);
        assert_eq!(at(406), [Guard::TooHot]);
    }

    #[test]
    fn no_plan_allows_formula_above_the_safety_limit() {
        let mut plan = plan();
        plan.serve_to = Celsius::whole(45);
        let script = with_plan(plan);
        let at = |tenths: i32| {
            let formula = Some(Celsius::tenths_held(tenths));
            feeding_guards(script.at(1, 7, 0), &script.chick().unwrap(), formula)
        };
        assert_eq!(at(415), []);
        assert_eq!(at(416), [Guard::TooHot]);
    }

    #[test]
    fn the_list_holds_every_guard_in_its_order() {
        assert!(Guard::ALL.is_sorted());
    }
}

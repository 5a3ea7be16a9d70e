//! When a chick left its breeder, and from when on its new home reports.

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::Carer;
use crate::domain::time::moment::Moment;

/// Whether its breeder noted that she has it and nothing says that it left: nobody took its card or handed
/// it over, and it has arrived nowhere.
pub fn has_not_left(chick: &Chick) -> bool {
    let is_hers = |to: Carer| match to {
        Carer::Breeder => true,
        Carer::Owner | Carer::Sitter | Carer::Clinic => false,
    };
    let mut handed = chick.handed_over.iter();
    chick.arrived.is_none()
        && chick.plans.is_with_its_breeder()
        && !chick.handed_over.is_empty()
        && handed.all(|handed| is_hers(handed.what.to))
}

/// When the chick left its breeder: the earliest of what says so. `None` when nothing does.
pub fn left_at(chick: &Chick) -> Option<Moment> {
    let journey = chick.plan.journey.map(|journey| journey.left);
    let arrived = chick.arrived.as_ref().map(|arrived| arrived.at);
    let mut handed = chick.handed_over.iter();
    let handed = handed.find(|handed| handed.what.to == Carer::Owner);
    let handed = handed.map(|handed| handed.at);
    let taken = chick.plans.taken_over();
    [journey, arrived, handed, taken]
        .into_iter()
        .flatten()
        .min()
}

/// Whether it was given back to its breeder after it had left, and not handed on by `now`.
pub fn is_back(now: Moment, chick: &Chick) -> bool {
    let mut handed = chick.handed_over.iter().rev();
    let last = handed.find(|handed| handed.at <= now);
    let last = last.filter(|last| last.what.to == Carer::Breeder);
    last.is_some_and(|last| left_at(chick).is_some_and(|left| left < last.at))
}

/// Whether a chick of this phone's breeder is with somebody else at `now`: it left, and was not handed back to her.
pub fn is_gone(now: Moment, chick: &Chick) -> bool {
    left_at(chick).is_some_and(|left| left <= now) && !is_back(now, chick)
}

/// From when on reports of a chick are due: since it is in its new home.
pub fn reports_from(chick: &Chick) -> Moment {
    let handed = chick.handed_over.last().map(|handed| handed.at);
    chick.home_since().max(handed.unwrap_or(Moment::EARLIEST))
}

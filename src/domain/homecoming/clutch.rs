//! Which chicks hatched together, told by their species and hatch days.

use crate::domain::plan::species::Species;
use crate::domain::quantity::order::sorted;
use crate::domain::time::moment::Day;

/// Chicks of one species belong to one clutch while no more days than these lie between two hatchings.
///
/// Ours: parrots lay every second or third day, so that one egg in between may stay without a chick.
pub const MOST_DAYS_BETWEEN: i32 = 6;

/// Chicks that hatched together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Clutch {
    /// Day of the first hatching.
    pub first: Day,
    /// Day of the last hatching.
    pub last: Day,
    /// The species.
    pub species: Species,
}

impl Clutch {
    /// Whether a chick of this species and hatch day belongs to it.
    pub fn holds(&self, species: Species, hatched: Option<Day>) -> bool {
        let is_within = |day| self.first <= day && day <= self.last;
        species == self.species && hatched.is_some_and(is_within)
    }
}

/// The clutches of these chicks, the latest first; a chick without a hatch day is in none.
pub fn clutches(chicks: impl Iterator<Item = (Species, Option<Day>)>) -> Vec<Clutch> {
    let known = chicks.filter_map(|(species, hatched)| Some((species, hatched?)));
    let mut found: Vec<Clutch> = Vec::new();
    for (species, day) in sorted(known.collect()) {
        let last = found.last_mut().filter(|clutch| clutch.species == species);
        match last.filter(|clutch| day.since(clutch.last) <= MOST_DAYS_BETWEEN) {
            Some(clutch) => clutch.last = day,
            None => found.push(Clutch {
                first: day,
                last: day,
                species,
            }),
        }
    }
    let mut latest_first = sorted(found);
    latest_first.reverse();
    latest_first
}

#[cfg(test)]
mod tests {
    use crate::domain::homecoming::clutch::*;

    const DAY: i32 = 20_000;

    fn found(chicks: &[(Species, i32)]) -> Vec<(i32, i32)> {
        let chicks = chicks.iter();
        let chicks = chicks.map(|(species, day)| (*species, Some(Day::from_number(*day))));
        let days = |clutch: Clutch| (clutch.first.number() - DAY, clutch.last.number() - DAY);
        clutches(chicks).into_iter().map(days).collect()
    }

    #[test]
    fn hatchings_up_to_six_days_apart_are_one_clutch() {
        let of = |gap| {
            found(&[
                (Species::ScarletMacaw, DAY),
                (Species::ScarletMacaw, DAY + gap),
            ])
        };
        assert_eq!(of(5), [(0, 5)]);
        assert_eq!(of(6), [(0, 6)]);
        assert_eq!(of(7), [(7, 7), (0, 0)]);
    }

    #[test]
    fn a_clutch_reaches_from_chick_to_chick_and_never_over_two_species() {
        let macaw = Species::ScarletMacaw;
        assert_eq!(
            found(&[(macaw, DAY + 8), (macaw, DAY), (macaw, DAY + 4)]),
            [(0, 8)]
        );
        assert_eq!(found(&[(macaw, DAY), (Species::Cockatiel, DAY)]).len(), 2);
    }

    #[test]
    fn a_chick_without_a_hatch_day_is_in_no_clutch() {
        assert_eq!(clutches([(Species::ScarletMacaw, None)].into_iter()), []);
        let clutch = Clutch {
            first: Day::from_number(DAY),
            last: Day::from_number(DAY + 3),
            species: Species::ScarletMacaw,
        };
        let holds = |day| clutch.holds(Species::ScarletMacaw, Some(Day::from_number(day)));
        assert!(!clutch.holds(Species::ScarletMacaw, None));
        assert_eq!(
            [DAY - 1, DAY, DAY + 3, DAY + 4].map(holds),
            [false, true, true, false]
        );
        assert!(!clutch.holds(Species::Cockatiel, Some(Day::from_number(DAY))));
    }
}

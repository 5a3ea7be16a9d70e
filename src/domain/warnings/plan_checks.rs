//! What can be checked of a plan while it is written, before any chick is fed by it.
//!
//! The same limits as those of the rules that watch the chick, so that a card which passes here does
//! not ring on its first day.

use crate::domain::feeding::planned::NIGHT_GAP_MINUTES;
use crate::domain::formula::heat_balance::hottest_water;
use crate::domain::plan::care_plan::{CarePlan, Role};
use crate::domain::quantity::units::{Celsius, Grams, Millilitres, Percent};
use crate::domain::warnings::rules::volume_over_ceiling::{CEILING_PCT, USUAL_PCT, share};

/// The longest night without a feed that a card carries without a question, minutes: 12 h. Ours: a crop is empty
/// 4 to 6 h after a feed (Doneley 2018, p. 592).
pub const LONGEST_NIGHT_MINUTES: i64 = 12 * 60;

/// Where a number of the plan stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CheckVerdict {
    /// Within its limits.
    InOrder,
    /// More than usual, still allowed: the owner's app watches.
    Unusual,
    /// Past its limit.
    Over,
}

/// One number of the plan beside its limits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PlanCheck {
    /// The largest feed against the handover weight.
    LargestFeed {
        /// The largest feed.
        most: Millilitres,
        /// The handover weight, crop empty.
        weight: Grams,
        /// 10 % of it.
        usual: Millilitres,
        /// 12 % of it.
        by_weight: Millilitres,
        /// The most for the species, whatever it weighs.
        by_species: Option<Millilitres>,
    },
    /// There is no handover weight to check volumes against.
    NoWeight,
    /// From the last feed of a day to the first of the next, minutes.
    NightGap {
        /// Minutes.
        minutes: i64,
    },
    /// The water to mix with.
    Water {
        /// How warm.
        water: Celsius,
        /// Powder in the mix, by weight.
        powder: Percent,
        /// The hottest with which a mix of that share stays under the burn line.
        hottest: Celsius,
    },
    /// The serving window.
    Window {
        /// Its low end.
        from: Celsius,
        /// Its high end.
        to: Celsius,
    },
}

impl PlanCheck {
    /// Where it stands; every limit still counts as kept at the limit itself.
    pub fn verdict(self) -> CheckVerdict {
        let over_unless = |is_kept| {
            if is_kept {
                CheckVerdict::InOrder
            } else {
                CheckVerdict::Over
            }
        };
        match self {
            Self::LargestFeed {
                most,
                usual,
                by_weight,
                by_species,
                ..
            } => {
                let is_over = by_weight < most || by_species.is_some_and(|limit| limit < most);
                match (is_over, usual < most) {
                    (true, _) => CheckVerdict::Over,
                    (false, true) => CheckVerdict::Unusual,
                    (false, false) => CheckVerdict::InOrder,
                }
            }
            Self::NoWeight => CheckVerdict::Unusual,
            Self::NightGap { minutes } if LONGEST_NIGHT_MINUTES < minutes => CheckVerdict::Unusual,
            Self::NightGap { minutes } => over_unless(NIGHT_GAP_MINUTES <= minutes),
            Self::Water { water, hottest, .. } => {
                if water <= hottest {
                    CheckVerdict::InOrder
                } else if water <= CarePlan::HOTTEST_WATER {
                    CheckVerdict::Unusual
                } else {
                    CheckVerdict::Over
                }
            }
            Self::Window { from, to } => {
                let (least, most) = CarePlan::SERVE_WITHIN;
                over_unless(least <= from && from < to && to <= most)
            }
        }
    }
}

/// The check of the water for a mix of that share of powder; nothing for a mix without water.
pub fn water_check(water: Celsius, powder: Percent) -> Option<PlanCheck> {
    let hottest = hottest_water(powder)?;
    Some(PlanCheck::Water {
        water,
        powder,
        hottest,
    })
}

/// Everything that can be checked of a plan, the feeds first.
///
/// # Examples
/// ```
/// use perchlight::domain::plan::care_plan::CarePlan;
/// use perchlight::domain::warnings::plan_checks::{CheckVerdict, plan_checks};
/// use perchlight::domain::plan::species::Species;
///
/// let plan = CarePlan::default_for(Species::ScarletMacaw);
/// let verdicts: Vec<_> = plan_checks(&plan).into_iter().map(|check| check.verdict()).collect();
/// // No weight yet; 07:00 after 21:00 is 10 h; water of 44 °C for 25 % powder; 39.0 to 40.5 °C.
/// let in_order = CheckVerdict::InOrder;
/// assert_eq!(verdicts, [CheckVerdict::Unusual, in_order, in_order, in_order]);
/// ```
pub fn plan_checks(plan: &CarePlan) -> Vec<PlanCheck> {
    let mut checks = Vec::new();
    let most = plan.feeds.iter().map(|feed| feed.volume).max();
    if let Some(most) = most {
        let ceiling = plan.species.profile().feed_ceiling;
        checks.push(match plan.reference.map(|reference| reference.weight) {
            Some(weight) => PlanCheck::LargestFeed {
                most,
                weight,
                usual: share(weight, USUAL_PCT),
                by_weight: share(weight, CEILING_PCT),
                by_species: ceiling.map(|ceiling| ceiling.value),
            },
            None => PlanCheck::NoWeight,
        });
    }
    checks.extend(
        plan.night_minutes()
            .map(|minutes| PlanCheck::NightGap { minutes }),
    );
    checks.extend(water_check(plan.mixing_water, plan.powder_fraction));
    let (from, to) = (plan.serve_from, plan.serve_to);
    checks.push(PlanCheck::Window { from, to });
    checks
}

/// Why a card does not go out as it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stop {
    /// A number of the plan.
    Number(PlanCheck),
    /// Nobody who reared the chick can be called.
    NoBreedersNumber,
}

impl Stop {
    /// Whether its breeder may know better: she then says so, and it goes out.
    pub const fn may_be_said_again(self) -> bool {
        match self {
            Self::Number(PlanCheck::LargestFeed { .. } | PlanCheck::NightGap { .. }) => true,
            Self::Number(
                PlanCheck::NoWeight | PlanCheck::Water { .. } | PlanCheck::Window { .. },
            )
            | Self::NoBreedersNumber => false,
        }
    }
}

/// What keeps a plan's card from going out: a feed above a ceiling, a night of less than 6 or more than 12 h, a
/// serving window outside its limits, no handover weight, no number of the breeder's.
pub fn stops(plan: &CarePlan) -> Vec<Stop> {
    let is_stop = |check: &PlanCheck| match check {
        PlanCheck::NoWeight => true,
        PlanCheck::NightGap { .. } => check.verdict() != CheckVerdict::InOrder,
        PlanCheck::LargestFeed { .. } | PlanCheck::Water { .. } | PlanCheck::Window { .. } => {
            check.verdict() == CheckVerdict::Over
        }
    };
    let numbers = plan_checks(plan).into_iter().filter(is_stop);
    let mut stops: Vec<Stop> = numbers.map(Stop::Number).collect();
    let mut breeders = plan.contacts.iter();
    if !breeders.any(|one| one.role == Role::Breeder && !one.number.is_empty()) {
        stops.push(Stop::NoBreedersNumber);
    }
    stops
}

#[cfg(test)]
mod tests {
    use crate::domain::plan::care_plan::{Contact, PlannedFeed, Reference, Slot};
    use crate::domain::plan::species::Species;
    use crate::domain::time::moment::{Day, WallTime};
    use crate::domain::warnings::plan_checks::*;

    /// A green-winged macaw on three feeds: 07:00, 14:00, 21:00.
    fn plan(weight_g: i32, tenth_ml: i32) -> CarePlan {
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        plan.reference = Some(Reference {
            weight: Grams::whole(weight_g),
            day: Day::from_number(20_000),
        });
        for feed in &mut plan.feeds {
            feed.volume = Millilitres::tenths_held(tenth_ml);
        }
        plan
    }

    fn volume_verdict(weight_g: i32, tenth_ml: i32) -> CheckVerdict {
        let checks = plan_checks(&plan(weight_g, tenth_ml));
        let volume = checks
            .iter()
            .find(|check| matches!(check, PlanCheck::LargestFeed { .. }));
        volume.unwrap().verdict()
    }

    #[test]
    fn sixty_millilitres_three_times_at_a_kilogram_are_in_order() {
        // 10 % is 100 ml, 12 % is 120 ml, which is the ceiling of the large macaws too.
        assert_eq!(volume_verdict(1_000, 600), CheckVerdict::InOrder);
        let checks = plan_checks(&plan(1_000, 600));
        let wanted = PlanCheck::LargestFeed {
            most: Millilitres::whole(60),
            weight: Grams::whole(1_000),
            usual: Millilitres::whole(100),
            by_weight: Millilitres::whole(120),
            by_species: Some(Millilitres::whole(120)),
        };
        assert_eq!(checks.first(), Some(&wanted));
    }

    #[test]
    fn a_feed_is_judged_below_at_and_above_each_ceiling() {
        // 900 g: 90.0 and 108.0 ml.
        for (tenth_ml, wanted) in [
            (899, CheckVerdict::InOrder),
            (900, CheckVerdict::InOrder),
            (901, CheckVerdict::Unusual),
            (1_080, CheckVerdict::Unusual),
            (1_081, CheckVerdict::Over),
        ] {
            assert_eq!(volume_verdict(900, tenth_ml), wanted, "{tenth_ml}");
        }
        // 1,300 g: 130.0 ml are 10 %, yet 120 ml are the most for the species.
        assert_eq!(volume_verdict(1_300, 1_200), CheckVerdict::InOrder);
        assert_eq!(volume_verdict(1_300, 1_201), CheckVerdict::Over);
    }

    #[test]
    fn the_largest_of_the_feeds_counts() {
        let mut uneven = plan(900, 400);
        if let Some(feed) = uneven.feeds.get_mut(1) {
            feed.volume = Millilitres::whole(109);
        }
        let verdict = plan_checks(&uneven).first().unwrap().verdict();
        assert_eq!(verdict, CheckVerdict::Over);
    }

    #[test]
    fn the_night_is_six_hours_at_least() {
        let night = |first: i32, last: i32| {
            let feed = |slot, minutes| PlannedFeed {
                slot,
                time: WallTime::from_minutes(minutes),
                volume: Millilitres::whole(60),
            };
            let mut plan = plan(1_000, 600);
            plan.feeds = vec![feed(Slot::Morning, first), feed(Slot::Bedtime, last)];
            let checks = plan_checks(&plan);
            checks.get(1).map(|check| (*check, check.verdict()))
        };
        let gap = |minutes, verdict| Some((PlanCheck::NightGap { minutes }, verdict));
        // 23:00 to 05:00 are 360 min.
        assert_eq!(night(301, 23 * 60), gap(361, CheckVerdict::InOrder));
        assert_eq!(night(300, 23 * 60), gap(360, CheckVerdict::InOrder));
        assert_eq!(night(299, 23 * 60), gap(359, CheckVerdict::Over));
        // 20:00 to 08:00 are 720 min; our own limit.
        assert_eq!(night(479, 20 * 60), gap(719, CheckVerdict::InOrder));
        assert_eq!(night(480, 20 * 60), gap(720, CheckVerdict::InOrder));
        assert_eq!(night(481, 20 * 60), gap(721, CheckVerdict::Unusual));
    }

    #[test]
    fn the_window_lies_within_37_and_41_degrees() {
        let window = |from, to| {
            let (from, to) = (Celsius::tenths_held(from), Celsius::tenths_held(to));
            PlanCheck::Window { from, to }.verdict()
        };
        assert_eq!(window(370, 410), CheckVerdict::InOrder);
        assert_eq!(window(369, 410), CheckVerdict::Over);
        assert_eq!(window(370, 411), CheckVerdict::Over);
        assert_eq!(window(400, 400), CheckVerdict::Over);
        assert_eq!(window(371, 409), CheckVerdict::InOrder);
    }

    /// 45.5, 46.4 and 47.4 °C are the hottest for 20, 25 and 30 % powder; a plan takes none above 50.
    #[test]
    fn water_is_asked_about_above_what_its_mix_bears() {
        let water = |pct, tenths| {
            let water = Celsius::tenths_held(tenths);
            water_check(water, Percent::whole(pct)).unwrap().verdict()
        };
        for (pct, hottest) in [(20, 455), (25, 464), (30, 474)] {
            assert_eq!(water(pct, hottest - 1), CheckVerdict::InOrder);
            assert_eq!(water(pct, hottest), CheckVerdict::InOrder);
            assert_eq!(water(pct, hottest + 1), CheckVerdict::Unusual);
            assert_eq!(water(pct, 500), CheckVerdict::Unusual);
            assert_eq!(water(pct, 501), CheckVerdict::Over);
        }
        let mut plan = plan(1_000, 600);
        plan.mixing_water = Celsius::whole(47);
        let is_asked = |check: &PlanCheck| {
            matches!(check, PlanCheck::Water { .. }) && check.verdict() == CheckVerdict::Unusual
        };
        assert_eq!(
            plan_checks(&plan)
                .iter()
                .filter(|one| is_asked(one))
                .count(),
            1
        );
    }

    #[test]
    fn a_card_is_stopped_by_what_could_hurt_and_goes_out_again_where_its_breeder_may_know_better() {
        let with_number = |mut plan: CarePlan| {
            plan.contacts = vec![Contact {
                role: Role::Breeder,
                name: "Example breeder".to_owned(),
                number: "+1 555 0100".to_owned(),
            }];
            plan
        };
        let sound = with_number(plan(1_000, 600));
        assert_eq!(stops(&sound), []);
        let of = |change: &dyn Fn(&mut CarePlan)| {
            let mut plan = sound.clone();
            change(&mut plan);
            let stops = stops(&plan);
            assert_eq!(stops.len(), 1, "{stops:?}");
            stops[0].may_be_said_again()
        };
        // Above 12 % of 1,000 g; 07:00 after 18:00 are 13 h; nothing to check against; nobody to call; 42 °C.
        assert!(of(
            &|plan| plan.feeds[0].volume = Millilitres::tenths_held(1_201)
        ));
        assert!(of(&|plan| {
            let mut feeds = plan.feeds.clone();
            feeds.pop();
            feeds.iter_mut().last().unwrap().time = WallTime::from_hour(18);
            plan.feeds = feeds;
        }));
        assert!(!of(&|plan| plan.reference = None));
        assert!(!of(&|plan| plan.contacts.clear()));
        assert!(!of(&|plan| plan.serve_to = Celsius::whole(42)));
    }

    #[test]
    fn a_plan_without_a_weight_says_that_its_volumes_cannot_be_checked() {
        let mut plan = plan(1_000, 600);
        plan.reference = None;
        assert_eq!(plan_checks(&plan).first(), Some(&PlanCheck::NoWeight));
    }
}

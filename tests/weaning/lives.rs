//! Random lives of a chick: mostly good days, an owner who follows the offers or not, and a breeder who
//! sometimes decides otherwise. What must hold is worked out here from the days themselves.

use perchlight::domain::journal::entries::{Change, Droppings, SolidsEaten};
use perchlight::domain::journal::scenario::Scenario;
use perchlight::domain::journal::signs::Sign;
use perchlight::domain::outlook::{Outlook, outlook};
use perchlight::domain::plan::care_plan::{CarePlan, Slot};
use perchlight::domain::time::moment::Moment;
use perchlight::domain::warnings::level::Level;
use perchlight::domain::weaning::{Verdict, may_offer_drop};
use proptest::prelude::{Just, Strategy, prop};
use proptest::prop_oneof;

use crate::script::{CHICK, arrived, day, droppings, plan, sign, solids, took};

const SLOTS: [(Slot, i32); 3] = [(Slot::Morning, 7), (Slot::Midday, 14), (Slot::Bedtime, 21)];

/// What a feed came to: ml taken of 60; below zero for a feed nobody noted.
type Taken = i32;

/// What happens on one day.
#[derive(Debug, Clone)]
pub(crate) struct OneDay {
    pub(crate) weighed: bool,
    pub(crate) change_g: i32,
    pub(crate) taken: [Taken; 3],
    pub(crate) solids: Option<SolidsEaten>,
    pub(crate) droppings: Option<Droppings>,
    pub(crate) sign: Option<Sign>,
    pub(crate) follows_offer: bool,
    pub(crate) breeder_drops: Option<Slot>,
    pub(crate) brings_back: Option<Slot>,
}

fn mostly<T: Clone + std::fmt::Debug + 'static>(
    usual: T,
    odd: impl Strategy<Value = T> + 'static,
    odd_in_20: u32,
) -> impl Strategy<Value = T> {
    prop_oneof![20 - odd_in_20 => Just(usual), odd_in_20 => odd]
}

fn any_slot() -> impl Strategy<Value = Option<Slot>> {
    prop::sample::select(vec![
        Some(Slot::Morning),
        Some(Slot::Midday),
        Some(Slot::Bedtime),
    ])
}

/// A day, mostly a good one.
pub(crate) fn one_day() -> impl Strategy<Value = OneDay> {
    let taken = || mostly(0, prop::sample::select(vec![-1, 29, 30, 60]), 3);
    let solids = prop::sample::select(vec![
        None,
        Some(SolidsEaten::Played),
        Some(SolidsEaten::Meal),
    ]);
    let looks = vec![None, Some(Droppings::SmallOrFew), Some(Droppings::Watery)];
    let signs = vec![
        Some(Sign::BegsAllDay),
        Some(Sign::BegsAllDay),
        Some(Sign::Dull),
        Some(Sign::UndigestedFood),
    ];
    (
        mostly(true, Just(false), 1),
        mostly(0, -35..30, 3),
        [taken(), taken(), taken()],
        mostly(Some(SolidsEaten::Little), solids, 1),
        mostly(Some(Droppings::Normal), prop::sample::select(looks), 1),
        mostly(None, prop::sample::select(signs), 1),
        mostly(true, Just(false), 6),
        mostly(None, any_slot(), 1),
        mostly(None, any_slot(), 1),
    )
        .prop_map(
            |(
                weighed,
                change_g,
                taken,
                solids,
                droppings,
                sign,
                follows_offer,
                breeder_drops,
                brings_back,
            )| OneDay {
                weighed,
                change_g,
                taken,
                solids,
                droppings,
                sign,
                follows_offer,
                breeder_drops,
                brings_back,
            },
        )
}

/// A life as it goes on: the journal, and beside it what the checks need in plain lists.
pub(crate) struct Life {
    pub(crate) script: Scenario,
    settle_in_days: i64,
    waiting_days: i64,
    order: Vec<Slot>,
    pub(crate) gone: Vec<Slot>,
    last_change: Option<Moment>,
    begging: Vec<i32>,
    look: Option<(Moment, Droppings)>,
    weights: Vec<(i32, i32)>,
    at_drop: Option<(i32, i32)>,
    pub(crate) offers: usize,
    pub(crate) bring_backs: usize,
}

impl Life {
    pub(crate) fn new(
        settle_in_days: u8,
        waiting_days: u8,
        order: Vec<Slot>,
        hatched_days: i32,
    ) -> Self {
        let plan = CarePlan {
            settle_in_days,
            waiting_days,
            drop_order: order.clone(),
            hatched: Some(day(-hatched_days)),
            ..plan()
        };
        Self {
            script: arrived(plan),
            settle_in_days: i64::from(settle_in_days),
            waiting_days: i64::from(waiting_days),
            order,
            gone: Vec::new(),
            last_change: None,
            begging: Vec::new(),
            look: None,
            weights: Vec::new(),
            at_drop: None,
            offers: 0,
            bring_backs: 0,
        }
    }

    pub(crate) fn outlook(&self, now: Moment) -> Outlook {
        outlook(now, &self.script.journal(), CHICK, &self.script.zone()).unwrap()
    }

    fn drop_feed(&mut self, day: i32, hour: i32, slot: Slot, by_breeder: bool) {
        let change = Change::FeedDropped { slot, by_breeder };
        self.script.note(day, hour, 1, change);
        self.last_change = Some(self.script.at(day, hour, 1));
        self.gone.retain(|gone| *gone != slot);
        self.gone.push(slot);
        let latest = self.weights.last().filter(|(weighed, _)| *weighed == day);
        self.at_drop = latest.copied();
    }

    fn bring_back(&mut self, day: i32, hour: i32, slot: Slot) {
        self.script
            .note(day, hour, 2, Change::FeedBroughtBack { slot });
        self.last_change = Some(self.script.at(day, hour, 2));
        self.gone.retain(|gone| *gone != slot);
        self.begging.clear();
        self.look = None;
        // The drop before that one is not followed up here.
        self.at_drop = None;
    }

    /// Lives one day; the days so far are the evidence for the checks at its hours.
    pub(crate) fn live(&mut self, day: i32, grams: i32, days: &[OneDay]) -> Result<(), String> {
        let today = &days[usize::try_from(day - 1).unwrap()];
        if today.weighed {
            self.script.weigh(day, grams);
            self.weights.push((day, grams));
        }
        self.check(
            day,
            6,
            &days[..days.len().min(usize::try_from(day - 1).unwrap())],
        )?;
        if let Some(look) = today.droppings {
            self.script.note(day, 9, 30, droppings(look));
            self.look = Some((self.script.at(day, 9, 30), look));
        }
        if let Some(seen) = today.sign {
            self.script.note(day, 10, 0, sign(seen));
            if seen == Sign::BegsAllDay {
                self.begging.push(day);
            }
        }
        if let Some(eaten) = today.solids {
            self.script.note(day, 16, 0, solids(eaten));
        }
        for ((slot, hour), taken) in SLOTS.into_iter().zip(today.taken) {
            if self.gone.contains(&slot) || taken < 0 {
                continue;
            }
            let change = match taken {
                0 => Change::refused(Some(slot)),
                ml => took(slot, ml),
            };
            self.script.note(day, hour, 0, change);
        }
        let weaning = self.check(day, 22, &days[..usize::try_from(day).unwrap()])?;
        match weaning {
            Verdict::MayDrop(slot) if today.follows_offer => self.drop_feed(day, 22, slot, false),
            Verdict::BringBack { slot, .. } if today.follows_offer => {
                self.bring_back(day, 22, slot);
            }
            _ => {}
        }
        if let Some(slot) = today.breeder_drops.filter(|slot| !self.gone.contains(slot)) {
            self.drop_feed(day, 23, slot, true);
        }
        if let Some(slot) = today.brings_back.filter(|slot| self.gone.contains(slot)) {
            self.bring_back(day, 23, slot);
        }
        Ok(())
    }

    /// Whether a feed must be offered again, from the notes themselves.
    fn must_come_back(&self, day: i32, now: Moment, days: &[OneDay]) -> bool {
        if self.gone.is_empty() {
            return false;
        }
        let weights = |from: i32, to: i32| {
            let inside = self
                .weights
                .iter()
                .filter(move |(day, _)| (from..=to).contains(day));
            inside.map(|(_, grams)| *grams)
        };
        let latest = weights(0, day).next_back();
        let has_lost = self.at_drop.is_some_and(|(dropped, at_drop)| {
            let loses = |grams: i32| grams * 100 <= at_drop * 97;
            let in_time = weights(dropped + 1, dropped + 3).next_back();
            in_time.is_some_and(loses) && latest.is_some_and(loses)
        });
        // Four mornings in a row under 90 % of the handover weight of 1,000 g.
        let four: Vec<i32> = weights(day - 3, day).collect();
        let is_light = four.len() == 4 && four.iter().all(|grams| *grams < 900);
        let begged = self
            .begging
            .iter()
            .filter(|begged| day - **begged < 3)
            .count();
        let is_small = self.look.is_some_and(|(seen, look)| {
            look == Droppings::SmallOrFew && now.minutes_since(seen) < 2 * 1_440
        });
        // a sign counts for 24 h in the ladder; seen at 10:00
        let is_dull = days
            .last()
            .is_some_and(|today| today.sign == Some(Sign::Dull));
        has_lost || is_light || begged >= 2 || is_small || is_dull
    }

    fn check(&mut self, day: i32, hour: i32, days: &[OneDay]) -> Result<Verdict, String> {
        let now = self.script.at(day, hour, 59);
        let seen = self.outlook(now);
        let weaning = &seen.weaning;
        let fail = |what: &str| Err(format!("day {day}, {hour}:59: {what}: {weaning:?}"));
        if let Verdict::MayDrop(slot) = weaning.verdict {
            self.offers += 1;
            let minutes = |days: i64| days * 1_440;
            if now.minutes_since(self.script.at(0, 12, 0)) < minutes(self.settle_in_days) {
                return fail("offered while the chick settles in");
            }
            if seen.level >= Level::CallBreeder {
                return fail("offered at a call level");
            }
            let waiting = minutes(self.waiting_days.max(5));
            if self
                .last_change
                .is_some_and(|last| now.minutes_since(last) < waiting)
            {
                return fail("offered within the waiting days");
            }
            if self.order.iter().find(|slot| !self.gone.contains(slot)) != Some(&slot) {
                return fail("offered out of order");
            }
            if !is_borne_out(slot, days) {
                return fail("offered without three days of refusing, solids and droppings");
            }
            for other in Slot::ALL {
                if may_offer_drop(weaning, other) != (other == slot) {
                    return fail("offers another feed too");
                }
            }
        }
        let is_forbidden = seen.instruction.forbids();
        let must_come_back = !is_forbidden && self.must_come_back(day, now, days);
        match &weaning.verdict {
            Verdict::BringBack { slot, .. } => {
                self.bring_backs += 1;
                if is_forbidden {
                    return fail("brings a feed back while feeding is forbidden");
                }
                if self.gone.last() != Some(slot) {
                    return fail("brings back a feed that did not go last");
                }
            }
            _ if must_come_back => {
                return fail("does not bring a feed back");
            }
            _ if self.gone.len() == 3 && weaning.verdict != Verdict::NothingToDrop => {
                return fail("has something to drop");
            }
            _ => {}
        }
        Ok(weaning.verdict.clone())
    }
}

/// Whether the last three days, or the three before today, speak for dropping the slot.
fn is_borne_out(slot: Slot, days: &[OneDay]) -> bool {
    let place = SLOTS.iter().position(|(one, _)| *one == slot).unwrap();
    let in_a_row = |is_for: &dyn Fn(&OneDay) -> bool| {
        let holds = |skipped: usize| {
            let before = days.iter().rev().skip(skipped).take(3);
            before.clone().count() == 3 && before.clone().all(is_for)
        };
        holds(0) || holds(1)
    };
    in_a_row(&|day| (0..30).contains(&day.taken[place]))
        && in_a_row(&|day| matches!(day.solids, Some(SolidsEaten::Little | SolidsEaten::Meal)))
        && in_a_row(&|day| day.droppings == Some(Droppings::Normal))
}

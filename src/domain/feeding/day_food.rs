//! What went into the chick on each day beside what was planned: for whoever looks back, as a vet does.

use crate::domain::feeding::schedule::feeds;
use crate::domain::feeding::scheduled::{FeedState, ScheduledFeed};
use crate::domain::feeding::sittings::sittings;
use crate::domain::formula::mixing::{MixWanted, mix_amounts};
use crate::domain::formula::nutrition::mix_contents;
use crate::domain::formula::powder::Powder;
use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::WhyPassedOver;
use crate::domain::quantity::units::Millilitres;
use crate::domain::time::moment::{CARE_DAY_STARTS, Day, Moment};
use crate::domain::time::zone::Zone;
use crate::domain::weight::readings;

/// Days whose food is told as one figure: as many as show a change of appetite. Ours.
const INTAKE_DAYS: usize = 3;

/// One day of care, from 04:00.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DayFood {
    /// The day.
    pub day: Day,
    /// What the plan wanted of the feeds whose time has come, without those that breeder or vet said to
    /// leave out.
    pub planned: Millilitres,
    /// All that was eaten, extra food too.
    pub eaten: Millilitres,
    /// Its planned feeds, in order.
    pub feeds: Vec<ScheduledFeed>,
}

impl DayFood {
    /// What was eaten of what was planned, per cent; `None` when nothing was.
    pub fn share_pct(&self) -> Option<f64> {
        let planned = f64::from(self.planned.tenths());
        (planned > 0.0).then(|| f64::from(self.eaten.tenths()) * 100.0 / planned)
    }

    /// How many feeds nobody has answered for.
    pub fn unanswered(&self) -> usize {
        let open = self.feeds.iter().filter(|feed| match feed.state {
            FeedState::Unanswered | FeedState::LeftOut(WhyPassedOver::NotKnown) => true,
            FeedState::Upcoming
            | FeedState::Due
            | FeedState::Late
            | FeedState::TryAgain(_)
            | FeedState::PutOff
            | FeedState::OnTheWay
            | FeedState::LeftOut(_)
            | FeedState::Refused(_)
            | FeedState::Done(_) => false,
        });
        open.count()
    }

    /// Whether every feed of it is over.
    fn is_over(&self) -> bool {
        self.feeds.iter().all(|feed| !feed.is_open())
    }
}

/// Whether a feed's time has come, so that what the plan wanted of it counts.
const fn counts(feed: &ScheduledFeed) -> bool {
    match feed.state {
        FeedState::Due
        | FeedState::Late
        | FeedState::TryAgain(_)
        | FeedState::Unanswered
        | FeedState::Refused(_)
        | FeedState::Done(_)
        | FeedState::LeftOut(
            WhyPassedOver::CropNotEmpty
            | WhyPassedOver::NotFit
            | WhyPassedOver::NotPossible
            | WhyPassedOver::NotKnown,
        ) => true,
        FeedState::Upcoming
        | FeedState::PutOff
        | FeedState::OnTheWay
        | FeedState::LeftOut(WhyPassedOver::Advised) => false,
    }
}

/// The food of each day of care from `first` to `last`, as it stands at `now`.
pub fn day_foods(now: Moment, chick: &Chick, zone: &Zone, first: Day, last: Day) -> Vec<DayFood> {
    let mut scheduled = feeds(now, chick, zone, first, last);
    let from = zone.moment_of(first, CARE_DAY_STARTS);
    let sittings = sittings(chick, from, now);
    let sum = |tenths: i32, more: Millilitres| tenths.saturating_add(more.tenths());
    let days = (0..=last.since(first)).map(|ago| {
        let day = first.plus(ago);
        let of_day = |feed: &mut ScheduledFeed| feed.day == day;
        let feeds: Vec<ScheduledFeed> = scheduled.extract_if(.., of_day).collect();
        let planned = feeds.iter().filter(|feed| counts(feed));
        let planned = planned.map(|feed| feed.volume).fold(0, sum);
        let eaten = sittings
            .iter()
            .filter(|sitting| sitting.at.lived(zone.offset_at(sitting.at)).care_day() == day);
        let eaten = eaten.map(|sitting| sitting.taken).fold(0, sum);
        DayFood {
            day,
            planned: Millilitres::tenths_held(planned),
            eaten: Millilitres::tenths_held(eaten),
            feeds,
        }
    });
    days.collect()
}

/// What was eaten in a day by weight, the mean of some days.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Intake {
    /// The first of the days.
    pub first: Day,
    /// The last of them.
    pub last: Day,
    /// Millilitres a day for each kilogram.
    pub ml_per_kg: f64,
    /// What they hold when mixed as the plan says, kcal a day for each kilogram; `None` where no such mix can
    /// be made.
    pub kcal_per_kg: Option<f64>,
    /// Whether the plan holds the powder's label; else a usual powder is taken.
    pub has_label: bool,
}

/// The intake of the latest days of these, three at most, that are over, with every feed answered; for the latest
/// empty-crop weight or else the handover weight.
pub fn intake(now: Moment, chick: &Chick, days: &[DayFood]) -> Option<Intake> {
    let whole = days.iter().rev().filter(|day| {
        let is_known = day.planned.tenths() > 0 || day.eaten.tenths() > 0;
        is_known && day.is_over() && day.unanswered() == 0
    });
    let whole: Vec<&DayFood> = whole.take(INTAKE_DAYS).collect();
    let (first, last) = (whole.last()?.day, whole.first()?.day);
    let latest = readings::latest_empty(now, chick).map(|latest| latest.what.weight);
    let weight = latest.or(chick.plan.reference.map(|reference| reference.weight))?;
    let ml: f64 = whole
        .iter()
        .map(|day| f64::from(day.eaten.tenths()) / 10.0)
        .sum();
    let days = whole.iter().fold(0.0, |days, _| days + 1.0);
    let ml_per_kg = ml / days / weight.as_g() * 1_000.0;
    Some(Intake {
        first,
        last,
        ml_per_kg,
        kcal_per_kg: kcal_per_ml(chick).map(|kcal| kcal * ml_per_kg),
        has_label: chick.plan.powder_label.is_some(),
    })
}

/// Energy of a millilitre mixed as the plan says, kcal.
fn kcal_per_ml(chick: &Chick) -> Option<f64> {
    // A litre of it: only the energy of a millilitre counts.
    let amounts = mix_amounts(&MixWanted::of_plan(&chick.plan, 1_000.0, 0.0)).ok()?;
    let contents = mix_contents(&amounts, &Powder::of_plan(&chick.plan)?).ok()?;
    Some(contents.kcal_per_ml)
}

#[cfg(test)]
mod tests {
    use crate::domain::feeding::day_food::*;
    use crate::domain::journal::entries::{Change, Response};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::Slot;
    use crate::domain::warnings::rules::trial::{day_zero, plan, with_plan};

    /// Three feeds of 80 ml, and a handover weight of 1,000 g.
    fn macaw() -> Scenario {
        let mut plan = plan();
        for feed in &mut plan.feeds {
            feed.volume = Millilitres::whole(80);
        }
        with_plan(plan)
    }

    fn of_days(script: &Scenario, day: i32, hour: i32, minute: i32) -> Vec<DayFood> {
        let chick = script.chick().unwrap();
        let (first, last) = (day_zero().plus(1), day_zero().plus(day));
        day_foods(
            script.at(day, hour, minute),
            &chick,
            &script.zone(),
            first,
            last,
        )
    }

    fn part(taken: i32) -> Change {
        Change::Fed {
            counts_as: None,
            taken: Millilitres::whole(taken),
            offered: Millilitres::whole(80),
            served_at: None,
            response: Response::Slow,
        }
    }

    #[test]
    fn a_day_is_what_was_eaten_of_what_was_planned_with_extra_food() {
        let mut script = macaw();
        script.food(1, 7, 0, 80).note(1, 14, 0, part(40));
        script.food(1, 21, 0, 80).food(1, 10, 30, 10);
        let days = of_days(&script, 2, 6, 0);
        // 80 + 40 + 80 + 10 = 210 of 240 ml: 87.5 %
        assert_eq!(days[0].eaten, Millilitres::whole(210));
        assert_eq!(days[0].planned, Millilitres::whole(240));
        assert_eq!(days[0].share_pct(), Some(87.5));
        assert_eq!(days[0].unanswered(), 0);
        // At 06:00 none of the day's feeds has come.
        assert_eq!(days[1].share_pct(), None);
    }

    #[test]
    fn bedtime_after_midnight_is_of_the_evening_before() {
        let mut script = macaw();
        script.food(2, 0, 30, 80);
        let days = of_days(&script, 2, 6, 0);
        assert_eq!(days[0].eaten, Millilitres::whole(80));
        assert_eq!(days[1].eaten, Millilitres::whole(0));
    }

    #[test]
    fn a_feed_without_an_answer_is_counted_as_such() {
        let mut script = macaw();
        script.food(1, 7, 0, 80).food(1, 21, 0, 80);
        let days = of_days(&script, 2, 6, 0);
        assert_eq!(days[0].unanswered(), 1);
        // 160 of 240 ml
        assert_eq!(days[0].share_pct().map(f64::round), Some(67.0));
    }

    #[test]
    fn a_feed_that_the_vet_said_to_leave_out_was_not_planned() {
        let mut script = macaw();
        script.food(1, 7, 0, 80).food(1, 21, 0, 80);
        script.leave_out(1, 14, 0, Slot::Midday, WhyPassedOver::Advised);
        assert_eq!(of_days(&script, 2, 6, 0)[0].share_pct(), Some(100.0));
    }

    #[test]
    fn the_intake_is_of_the_last_three_whole_days_and_of_the_latest_weight() {
        let mut script = macaw();
        for day in 1..=4 {
            for hour in [7, 14, 21] {
                script.food(day, hour, 0, if day == 1 { 80 } else { 60 });
            }
        }
        script.weigh(4, 900).food(5, 7, 0, 10);
        let days = of_days(&script, 5, 12, 0);
        let found = intake(script.at(5, 12, 0), &script.chick().unwrap(), &days).unwrap();
        assert_eq!(found.first, day_zero().plus(2));
        assert_eq!(found.last, day_zero().plus(4));
        // 180 ml a day / 0.9 kg = 200 ml for each kg
        assert!((found.ml_per_kg - 200.0).abs() < 1e-9);
        // 1 ml x 1.062 g/ml x 0.25 x 3.6 kcal/g (a usual powder, ours) = 0.956 kcal; x 200 = 191
        let kcal = found.kcal_per_kg.unwrap();
        assert!((kcal - 191.2).abs() < 0.5, "{kcal}");
        assert!(!found.has_label);
    }

    #[test]
    fn days_with_a_feed_unanswered_tell_no_intake() {
        let mut script = macaw();
        script.food(1, 7, 0, 80).food(1, 21, 0, 80);
        let days = of_days(&script, 2, 6, 0);
        let found = intake(script.at(2, 6, 0), &script.chick().unwrap(), &days);
        assert_eq!(found, None);
    }
}

//! The breeder's table: every chick that was placed, the most worrying first.

use crate::domain::homecoming::departure::reports_from;
use crate::domain::homecoming::reports::{is_silent, report_due};
use crate::domain::journal::chick::Noted;
use crate::domain::journal::entries::ChickId;
use crate::domain::journal::plan_record::PlanVersion;
use crate::domain::outlook::Outlook;
use crate::domain::quantity::order::sorted_by;
use crate::domain::time::moment::{Lived, Moment};
use crate::domain::warnings::placed_state::PlacedState;

/// A state older than this is told with its day, minutes.
const FRESH_MINUTES: i64 = 1_440;

/// One chick of this phone, judged.
#[derive(Debug, Clone, PartialEq)]
pub struct Placed {
    /// The chick: as it is now where this phone cares for it, else as it was when it was last heard of.
    pub outlook: Outlook,
    /// For a chick that this phone follows: when it was last heard of, if ever. `None` for one that it
    /// cares for.
    pub followed: Option<Option<Moment>>,
}

/// How a chick is that this phone follows, at `now`, told by the outlook of when it was last heard of.
pub fn placed_state(now: Moment, placed: &Placed) -> PlacedState {
    let outlook = &placed.outlook;
    if outlook.chick.died.is_some() {
        return PlacedState::Died;
    }
    let Some(heard) = placed.followed else {
        return PlacedState::Now(outlook.level);
    };
    let due = report_due(&outlook.chick, outlook.stage, heard);
    let last = heard.map(|heard| (outlook.level, heard.lived(outlook.offset)));
    if is_silent(now, due) {
        let since = heard.unwrap_or_else(|| reports_from(&outlook.chick));
        let days = now.minutes_since(since).max(0) / 1_440;
        return PlacedState::Silent { last, days };
    }
    match heard.zip(last) {
        None => PlacedState::Unheard,
        Some((heard, (level, _))) if now.minutes_since(heard) <= FRESH_MINUTES => {
            PlacedState::Now(level)
        }
        Some((_, (level, lived))) => PlacedState::On(level, lived),
    }
}

/// One chick in the table.
#[derive(Debug, Clone, PartialEq)]
pub struct PlacedRow {
    /// The chick.
    pub chick: ChickId,
    /// Its name; may be empty.
    pub name: String,
    /// Its ring or chip number; may be empty.
    pub ring: String,
    /// How it is.
    pub state: PlacedState,
    /// Loss against the handover weight, per cent; below zero for a gain.
    pub handover_loss_pct: Option<f64>,
    /// When it was last weighed with an empty crop, as it was lived there.
    pub last_weighed: Option<Lived>,
    /// Whole days since it was last heard of; none when it never was, or when this phone cares for it.
    pub quiet_days: Option<i64>,
    /// Feeds that are still given.
    pub feeds_left: usize,
    /// Its plan's short name.
    pub plan: PlanVersion,
}

/// The table at `now` of these chicks, by need, then by loss, then by how long nothing was heard.
pub fn rows(now: Moment, placed: &[Placed]) -> Vec<PlacedRow> {
    let rows: Vec<PlacedRow> = placed.iter().map(|placed| row(now, placed)).collect();
    let loss = |row: &PlacedRow| row.handover_loss_pct.unwrap_or(f64::NEG_INFINITY);
    sorted_by(rows, |one, other| {
        let by_need = other.state.need().cmp(&one.state.need());
        let by_loss = || loss(other).total_cmp(&loss(one));
        let by_quiet = || other.quiet_days.cmp(&one.quiet_days);
        by_need
            .then_with(by_loss)
            .then_with(by_quiet)
            .then_with(|| one.name.cmp(&other.name))
            .then_with(|| one.chick.cmp(&other.chick))
    })
}

fn row(now: Moment, placed: &Placed) -> PlacedRow {
    let outlook = &placed.outlook;
    let chick = &outlook.chick;
    let heard = placed.followed.flatten();
    PlacedRow {
        chick: chick.id,
        name: chick.plan.name.clone(),
        ring: chick.plan.ring.clone(),
        state: placed_state(now, placed),
        handover_loss_pct: outlook.weight.handover_loss_pct,
        last_weighed: outlook.weight.latest.as_ref().map(Noted::lived),
        quiet_days: heard.map(|heard| now.minutes_since(heard).max(0) / 1_440),
        feeds_left: chick.feeds_in_force(outlook.now).len(),
        plan: chick.plans.version(),
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::homecoming::reports::last_heard;
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::outlook::outlook;
    use crate::domain::plan::care_plan::{CarePlan, Reference, Slot};
    use crate::domain::plan::parts::Author;
    use crate::domain::plan::species::Species;
    use crate::domain::quantity::units::{Grams, Millilitres, Percent};
    use crate::domain::time::moment::{Day, Offset};
    use crate::domain::warnings::level::Level;
    use crate::share::placed::*;

    fn script(number: u8, name: &str) -> Scenario {
        let day = Day::from_date(2026, 11, 2).unwrap();
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        name.clone_into(&mut plan.name);
        for feed in &mut plan.feeds {
            feed.volume = Millilitres::whole(60);
        }
        plan.reference = Some(Reference {
            weight: Grams::whole(1_000),
            day,
        });
        Scenario::new(ChickId([number; 12]), plan, day, Offset::UTC)
    }

    /// A chick whose owner noted everything for so many days and then nothing.
    fn silent(number: u8, name: &str, days: i32) -> Scenario {
        let mut script = script(number, name);
        for day in 0..days {
            script.weigh(day, 1_000).feed(day, 7, 0, Slot::Morning, 60);
            script
                .feed(day, 14, 0, Slot::Midday, 60)
                .feed(day, 21, 0, Slot::Bedtime, 60);
        }
        script
    }

    fn followed(script: &Scenario, now: Moment) -> Placed {
        let (journal, chick) = (script.journal(), script.chick().unwrap());
        let heard = last_heard(now, &journal, chick.id);
        let at = heard.unwrap_or_else(|| chick.home_since());
        Placed {
            outlook: outlook(at, &journal, chick.id, &script.zone()).unwrap(),
            followed: Some(heard),
        }
    }

    /// A chick of this phone that weighed 1,000 g at handover and `grams` on day 1.
    fn cared_for(number: u8, name: &str, grams: i32) -> Placed {
        let mut script = script(number, name);
        script.weigh(1, grams).feed(1, 7, 0, Slot::Morning, 60);
        let (now, chick) = (script.at(1, 8, 0), script.chick().unwrap().id);
        Placed {
            outlook: outlook(now, &script.journal(), chick, &script.zone()).unwrap(),
            followed: None,
        }
    }

    #[test]
    fn the_most_worrying_chick_comes_first() {
        let placed = [
            cared_for(1, "Basil", 1_005),
            cared_for(2, "Cumin", 850),
            cared_for(3, "Anise", 990),
        ];
        let rows = rows(placed[0].outlook.now, &placed);
        let names: Vec<&str> = rows.iter().map(|row| row.name.as_str()).collect();
        assert_eq!(names, ["Cumin", "Anise", "Basil"]);
        // 150 g of 1,000 g.
        assert_eq!(rows[0].handover_loss_pct, Some(15.0));
        assert!(rows[0].state.level() > rows[1].state.level());
        assert_eq!(rows[0].feeds_left, 3);
        assert_eq!(rows[0].last_weighed.unwrap().time.text(), "06:45");
    }

    /// Law 12: silence is never settled, and it is no call for the breeder either.
    #[test]
    fn eight_days_of_silence_are_silence_and_neither_settled_nor_a_call() {
        let script = silent(1, "Basil", 3);
        let state = |day, hour| {
            let now = script.at(day, hour, 0);
            placed_state(now, &followed(&script, now))
        };
        assert_eq!(state(2, 22), PlacedState::Now(Level::Settled));
        let lived = script.at(2, 21, 0).lived(Offset::UTC);
        // due on day 3 at 21:00, silent from day 4 at 09:00
        assert_eq!(state(4, 8), PlacedState::On(Level::Settled, lived));
        let last = Some((Level::Settled, lived));
        assert_eq!(state(4, 9), PlacedState::Silent { last, days: 1 });
        assert_eq!(state(10, 22), PlacedState::Silent { last, days: 8 });
    }

    #[test]
    fn a_change_of_the_plan_leaves_a_silent_chick_as_it_was_last_heard_of() {
        let mut script = silent(1, "Basil", 3);
        let mut plan = script.chick().unwrap().plan;
        plan.loss_limit = Percent::whole(8);
        script.set_plan(10, 9, 0, &plan, Author::BREEDER_AFAR);
        let now = script.at(10, 22, 0);
        let rows = rows(now, &[followed(&script, now)]);
        assert!(matches!(
            rows[0].state,
            PlacedState::Silent {
                last: Some((Level::Settled, _)),
                days: 8
            }
        ));
        assert_eq!(rows[0].quiet_days, Some(8));
    }

    #[test]
    fn silence_stands_above_a_settled_chick_and_below_a_call() {
        let fresh = silent(1, "Basil", 10);
        let mut ill = silent(2, "Cumin", 10);
        ill.weigh(10, 800);
        let (quiet, now) = (silent(3, "Dill", 3), fresh.at(10, 8, 0));
        let placed = [&fresh, &quiet, &ill].map(|script| followed(script, now));
        let names: Vec<String> = rows(now, &placed).into_iter().map(|row| row.name).collect();
        assert_eq!(names, ["Cumin", "Dill", "Basil"]);
    }

    #[test]
    fn a_chick_never_heard_of_is_unheard_and_then_silent() {
        let script = script(1, "Basil");
        let state = |day, hour| {
            let now = script.at(day, hour, 0);
            placed_state(now, &followed(&script, now))
        };
        // added on day 0 at 05:00
        assert_eq!(state(1, 16), PlacedState::Unheard);
        assert_eq!(
            state(1, 17),
            PlacedState::Silent {
                last: None,
                days: 1
            }
        );
    }
}

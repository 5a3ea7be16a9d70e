//! The breeder's table: every chick that was placed, the most worrying first.

use crate::domain::journal::chick::Noted;
use crate::domain::journal::entries::{ChickId, Journal};
use crate::domain::journal::plan_record::PlanVersion;
use crate::domain::outlook::Outlook;
use crate::domain::quantity::order::sorted_by;
use crate::domain::time::moment::{Lived, Moment};
use crate::domain::warnings::level::Level;

/// One chick in the table.
#[derive(Debug, Clone, PartialEq)]
pub struct PlacedRow {
    /// The chick.
    pub chick: ChickId,
    /// Its name; may be empty.
    pub name: String,
    /// Its ring or chip number; may be empty.
    pub ring: String,
    /// How worried to be.
    pub level: Level,
    /// Loss against the handover weight, per cent; below zero for a gain.
    pub handover_loss_pct: Option<f64>,
    /// When it was last weighed with an empty crop, as it was lived there.
    pub last_weighed: Option<Lived>,
    /// Whole days since anything at all was noted; none when nothing was.
    pub quiet_days: Option<i64>,
    /// Feeds that are still given.
    pub feeds_left: usize,
    /// Its plan's short name.
    pub plan: PlanVersion,
}

/// The moment of the last entry about a chick, up to `now`: a breeder knows of a placed chick only up
/// to its owner's last report, and what was not reported is not a feed missed.
pub fn last_heard(now: Moment, journal: &Journal, chick: ChickId) -> Moment {
    let entries = journal.entries().iter();
    let of_chick = entries.filter(|entry| entry.chick == chick && entry.at <= now);
    of_chick.map(|entry| entry.at).max().unwrap_or(now)
}

/// The table at `now` of these chicks, by level, then by loss, then by how long nothing was heard.
///
/// The level is that of each outlook's own moment, [`last_heard`]; how long it is since then stands
/// beside it.
pub fn rows(now: Moment, outlooks: &[Outlook]) -> Vec<PlacedRow> {
    let rows: Vec<PlacedRow> = outlooks.iter().map(|outlook| row(now, outlook)).collect();
    let loss = |row: &PlacedRow| row.handover_loss_pct.unwrap_or(f64::NEG_INFINITY);
    sorted_by(rows, |one, other| {
        let by_level = other.level.cmp(&one.level);
        let by_loss = || loss(other).total_cmp(&loss(one));
        let by_quiet = || other.quiet_days.cmp(&one.quiet_days);
        by_level
            .then_with(by_loss)
            .then_with(by_quiet)
            .then_with(|| one.name.cmp(&other.name))
            .then_with(|| one.chick.cmp(&other.chick))
    })
}

fn row(now: Moment, outlook: &Outlook) -> PlacedRow {
    let chick = &outlook.chick;
    let noted = [
        chick.weighings.iter().map(|noted| noted.at).max(),
        chick.feeds.iter().map(|noted| noted.at).max(),
        chick.crops.iter().map(|noted| noted.at).max(),
        chick.droppings.iter().map(|noted| noted.at).max(),
        chick.solids.iter().map(|noted| noted.at).max(),
        chick.signs.iter().map(|noted| noted.at).max(),
        chick.weaning.iter().map(|noted| noted.at).max(),
        chick.calls.iter().map(|noted| noted.at).max(),
        chick.rooms.iter().map(|noted| noted.at).max(),
        chick.arrived.as_ref().map(|noted| noted.at),
    ];
    let last = noted.into_iter().flatten().max();
    PlacedRow {
        chick: chick.id,
        name: chick.plan.name.clone(),
        ring: chick.plan.ring.clone(),
        level: outlook.level,
        handover_loss_pct: outlook.weight.handover_loss_pct,
        last_weighed: outlook.weight.latest.as_ref().map(Noted::lived),
        quiet_days: last.map(|last| now.minutes_since(last).max(0) / 1_440),
        feeds_left: chick.feeds_in_force(outlook.now).len(),
        plan: chick.plans.version(),
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::outlook::outlook;
    use crate::domain::plan::care_plan::{CarePlan, Reference, Slot};
    use crate::domain::plan::species::Species;
    use crate::domain::quantity::units::Grams;
    use crate::domain::time::moment::{Day, Offset};
    use crate::share::placed::*;

    /// A chick of this name that weighed 1,000 g at handover and `grams` on day 1.
    fn placed(number: u8, name: &str, grams: i32) -> Outlook {
        let day = Day::from_date(2026, 11, 2).unwrap();
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        name.clone_into(&mut plan.name);
        plan.reference = Some(Reference {
            weight: Grams::whole(1_000),
            day,
        });
        let chick = ChickId([number; 12]);
        let mut script = Scenario::new(chick, plan, day, Offset::UTC);
        script.weigh(1, grams).feed(1, 7, 0, Slot::Morning, 60);
        let now = script.at(1, 8, 0);
        outlook(now, &script.journal(), chick, &script.zone()).unwrap()
    }

    #[test]
    fn the_most_worrying_chick_comes_first() {
        let outlooks = [
            placed(1, "Basil", 1_005),
            placed(2, "Cumin", 850),
            placed(3, "Anise", 990),
        ];
        let rows = rows(outlooks[0].now, &outlooks);
        let names: Vec<&str> = rows.iter().map(|row| row.name.as_str()).collect();
        assert_eq!(names, ["Cumin", "Anise", "Basil"]);
        // 150 g of 1,000 g.
        assert_eq!(rows[0].handover_loss_pct, Some(15.0));
        assert!(rows[0].level > rows[1].level);
        assert_eq!(rows[0].feeds_left, 3);
        assert_eq!(rows[0].quiet_days, Some(0));
        assert_eq!(rows[0].last_weighed.unwrap().time.text(), "06:45");
    }

    #[test]
    fn a_chick_without_news_keeps_the_level_of_its_last_report() {
        let day = Day::from_date(2026, 11, 2).unwrap();
        let chick = ChickId([1; 12]);
        let plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let mut script = Scenario::new(chick, plan, day, Offset::UTC);
        for day in 0..3 {
            script.weigh(day, 1_000).feed(day, 7, 0, Slot::Morning, 60);
            script
                .feed(day, 14, 0, Slot::Midday, 60)
                .feed(day, 21, 0, Slot::Bedtime, 60);
        }
        let (now, journal) = (script.at(4, 21, 0), script.journal());
        let heard = last_heard(now, &journal, chick);
        assert_eq!(heard, script.at(2, 21, 0));
        assert_eq!(
            last_heard(script.at(1, 8, 0), &journal, chick),
            script.at(1, 7, 0)
        );
        let at = |moment| outlook(moment, &journal, chick, &script.zone()).unwrap();
        assert!(at(now).level.is_call(), "by silence alone");
        let rows = rows(now, &[at(heard)]);
        assert_eq!(
            (rows[0].level, rows[0].quiet_days),
            (Level::Settled, Some(2))
        );
    }
}

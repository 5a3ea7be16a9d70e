//! What somebody who follows a chick from afar knows of it: when it was last heard of, and when a report
//! is overdue.
//!
//! **Invariants.** Only what whoever is with the chick can note counts as news: neither a change of its
//! plan nor a remark. Silence is a state of its own and never a calm one.

use crate::domain::homecoming::departure::reports_from;
use crate::domain::homecoming::life_stage::{LifeStage, Reminder};
use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::{ChickId, Entry, Journal};
use crate::domain::time::moment::Moment;

/// Reports are due daily for so many days after the coming home. Common practice of breeders.
pub const DAILY_DAYS: i64 = 7;

/// Days between two reports from then on, until the chick is weaned. Ours.
const DAYS_UNTIL_WEANED: i64 = 3;

/// Days between two reports of a weaned bird. Ours: it is weighed once a week.
const DAYS_ONCE_WEANED: i64 = 7;

/// A report so many minutes overdue is silence, 12 h. Ours.
pub const OVERDUE_MINUTES: i64 = 12 * 60;

/// When the last news of a chick was lived, up to `now`; `None` when there is none.
pub fn last_heard(now: Moment, journal: &Journal, chick: ChickId) -> Option<Moment> {
    let dead = journal.retracted();
    let leading = journal.leading(&dead);
    let is_news = |entry: &&Entry| {
        let of = leading.get(&entry.chick).unwrap_or(&entry.chick);
        *of == chick && entry.at <= now && entry.change.is_of_care() && !dead.contains(&entry.id)
    };
    let mut latest_first = journal.entries().iter().rev();
    latest_first.find(is_news).map(|entry| entry.at)
}

/// When the next report is due: by the breeder's days where she set any; `None` in a stage in which none is.
pub fn report_due(chick: &Chick, stage: LifeStage, heard: Option<Moment>) -> Option<Moment> {
    if !stage.reminds(Reminder::Report) {
        return None;
    }
    let home = reports_from(chick);
    let from = heard.map_or(home, |heard| heard.max(home));
    let wanted = chick.plan.report_days.filter(|days| 0 < *days);
    let days = match stage {
        LifeStage::Weaned => DAYS_ONCE_WEANED,
        LifeStage::WithBreeder
        | LifeStage::OnTheWay
        | LifeStage::SettlingIn
        | LifeStage::Weaning
        | LifeStage::Grown
        | LifeStage::Died => {
            if from.minutes_since(home) < DAILY_DAYS * 1_440 {
                1
            } else {
                DAYS_UNTIL_WEANED
            }
        }
    };
    let days = wanted.map_or(days, i64::from);
    Some(from.plus_minutes(days * 1_440))
}

/// Whether a report that was due is so much overdue that it counts as silence.
pub fn is_silent(now: Moment, due: Option<Moment>) -> bool {
    due.is_some_and(|due| now.minutes_since(due) >= OVERDUE_MINUTES)
}

#[cfg(test)]
mod tests {
    use crate::domain::homecoming::reports::*;
    use crate::domain::journal::entries::Change;
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::parts::Author;
    use crate::domain::quantity::units::Percent;
    use crate::domain::warnings::rules::trial::{macaw, plan, with_plan};

    fn heard(script: &Scenario, day: i32) -> Option<Moment> {
        let journal = script.journal();
        last_heard(script.at(day, 23, 0), &journal, script.chick().unwrap().id)
    }

    #[test]
    fn a_change_of_the_plan_or_a_remark_of_ones_own_is_no_news_of_the_chick() {
        let mut script = macaw();
        assert_eq!(heard(&script, 0), None, "adding it is no news");
        script.weigh(1, 1_000);
        let weighed = Some(script.at(1, 6, 45));
        let mut changed = plan();
        changed.loss_limit = Percent::whole(8);
        script.set_plan(5, 9, 0, &changed, Author::OWNER);
        let text = "rang, nobody there".to_owned();
        script.note(6, 9, 0, Change::Noted { text });
        assert_eq!(heard(&script, 6), weighed);
        assert_eq!(heard(&script, 0), None);
    }

    /// Reports due by their day and silent from their day, hour on, of a chick that came home on day 0 at
    /// 05:00 and was last heard of on `day` at 06:45.
    #[test]
    fn reports_are_due_daily_then_every_third_day_then_weekly() {
        let due = |day: i32, stage| {
            let mut script = macaw();
            script.weigh(day, 1_000);
            let at = report_due(&script.chick().unwrap(), stage, heard(&script, day)).unwrap();
            let hours = at.minutes_since(script.at(day, 6, 45)) / 60;
            assert!(!is_silent(at.plus_minutes(719), Some(at)));
            assert!(is_silent(at.plus_minutes(720), Some(at)));
            hours
        };
        assert_eq!(due(1, LifeStage::SettlingIn), 24);
        assert_eq!(due(6, LifeStage::SettlingIn), 24);
        assert_eq!(due(7, LifeStage::Weaning), 72);
        assert_eq!(due(60, LifeStage::Weaned), 168);
    }

    #[test]
    fn the_breeder_s_own_days_between_reports_hold_in_every_stage() {
        let mut wanted = plan();
        wanted.report_days = Some(2);
        let mut script = with_plan(wanted);
        script.weigh(9, 1_000);
        let (chick, heard) = (script.chick().unwrap(), heard(&script, 9));
        for stage in [LifeStage::SettlingIn, LifeStage::Weaning, LifeStage::Weaned] {
            let due = report_due(&chick, stage, heard);
            assert_eq!(due, Some(script.at(11, 6, 45)), "{stage:?}");
        }
    }

    #[test]
    fn the_breeder_s_days_go_before_the_usual_ones() {
        let mut script = macaw();
        script.weigh(1, 1_000);
        let mut chick = script.chick().unwrap();
        chick.plan.report_days = Some(2);
        let due = report_due(&chick, LifeStage::SettlingIn, heard(&script, 1));
        assert_eq!(due, Some(script.at(3, 6, 45)));
    }

    #[test]
    fn no_report_is_due_before_leaving_when_grown_or_after_death() {
        let chick = macaw().chick().unwrap();
        for stage in [LifeStage::WithBreeder, LifeStage::Grown, LifeStage::Died] {
            assert_eq!(report_due(&chick, stage, None), None);
            assert!(!is_silent(Moment::EARLIEST, None));
        }
    }

    #[test]
    fn a_chick_never_heard_of_is_due_a_day_after_its_coming_home() {
        let script = macaw();
        let due = report_due(&script.chick().unwrap(), LifeStage::SettlingIn, None);
        assert_eq!(due, Some(script.at(1, 5, 0)));
    }
}

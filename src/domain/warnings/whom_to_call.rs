//! Whom to call at a level, first to call first.

use crate::domain::plan::care_plan::{CarePlan, Contact, Role};
use crate::domain::time::moment::{Lived, WallTime};
use crate::domain::warnings::level::Level;

/// Somebody with a number.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Callee {
    /// A person of the plan.
    Contact(Contact),
    /// Who has the chick at home.
    Owner {
        /// The name; may be empty.
        name: String,
        /// The number.
        number: String,
    },
}

/// Whether a practice is likely closed at this wall time: at night and on weekends. The plan does not say the
/// vet's hours. Ours: 08:00 to 18:00, Monday to Friday.
pub fn is_practice_closed(lived: Lived) -> bool {
    let open = WallTime::from_hour(8)..WallTime::from_hour(18);
    lived.day.weekday() >= 5 || !open.contains(&lived.time)
}

/// The people to call, whoever answers now first. A breeder is not told to call herself: she sees the owner's number where others see
/// hers.
pub fn whom_to_call(
    level: Level,
    plan: &CarePlan,
    is_breeder: bool,
    is_closed: bool,
) -> Vec<Callee> {
    let roles: &[Role] = match level {
        Level::Settled | Level::Watch | Level::CallBreeder => &[Role::Breeder, Role::AvianVet],
        Level::VetToday | Level::Emergency if is_closed => {
            &[Role::EmergencyVet, Role::AvianVet, Role::Breeder]
        }
        Level::VetToday | Level::Emergency => &[Role::AvianVet, Role::EmergencyVet, Role::Breeder],
    };
    let mut callees = Vec::new();
    for role in roles {
        if is_breeder && *role == Role::Breeder {
            if !plan.owner_number.is_empty() {
                let (name, number) = (plan.owner_name.clone(), plan.owner_number.clone());
                callees.push(Callee::Owner { name, number });
            }
            continue;
        }
        let people = plan.contacts_with_number(*role);
        callees.extend(people.cloned().map(Callee::Contact));
    }
    callees
}

#[cfg(test)]
mod tests {
    use crate::domain::plan::species::Species;
    use crate::domain::time::moment::Day;
    use crate::domain::warnings::whom_to_call::*;

    const LEVELS: [Level; 5] = [
        Level::Settled,
        Level::Watch,
        Level::CallBreeder,
        Level::VetToday,
        Level::Emergency,
    ];

    fn plan() -> CarePlan {
        let contact = |role, number: &str| Contact {
            role,
            name: String::new(),
            number: number.to_owned(),
        };
        let mut plan = CarePlan::default_for(Species::GreyParrot);
        plan.contacts = vec![
            contact(Role::Breeder, "5550100"),
            contact(Role::Breeder, "5550101"),
            contact(Role::AvianVet, "5550102"),
            contact(Role::EmergencyVet, "5550103"),
        ];
        plan.owner_number = "5550104".to_owned();
        plan
    }

    fn numbers(level: Level, plan: &CarePlan, is_breeder: bool) -> Vec<String> {
        numbers_at(level, plan, is_breeder, false)
    }

    fn numbers_at(level: Level, plan: &CarePlan, is_breeder: bool, is_closed: bool) -> Vec<String> {
        let callees = whom_to_call(level, plan, is_breeder, is_closed).into_iter();
        let number = |callee| match callee {
            Callee::Contact(contact) => contact.number,
            Callee::Owner { number, .. } => number,
        };
        callees.map(number).collect()
    }

    #[test]
    fn a_breeder_sees_the_owner_s_number_where_an_owner_sees_hers() {
        let plan = plan();
        let owner = numbers(Level::CallBreeder, &plan, false);
        assert_eq!(owner, ["5550100", "5550101", "5550102"]);
        let breeder = numbers(Level::CallBreeder, &plan, true);
        assert_eq!(breeder, ["5550104", "5550102"]);
        let emergency = numbers(Level::Emergency, &plan, true);
        assert_eq!(emergency, ["5550102", "5550103", "5550104"]);
    }

    #[test]
    fn who_answers_now_stands_first() {
        let plan = plan();
        for level in [Level::VetToday, Level::Emergency] {
            let by_day = numbers_at(level, &plan, false, false);
            assert_eq!(by_day, ["5550102", "5550103", "5550100", "5550101"]);
            let by_night = numbers_at(level, &plan, false, true);
            assert_eq!(by_night, ["5550103", "5550102", "5550100", "5550101"]);
        }
    }

    #[test]
    fn a_practice_is_open_from_eight_to_six_on_working_days() {
        // 27 November 2026 is a Friday.
        let at = |date, hour, minute| Lived {
            day: Day::from_date(2026, 11, date).unwrap(),
            time: WallTime::new(hour, minute).unwrap(),
        };
        assert!(is_practice_closed(at(27, 7, 59)));
        assert!(!is_practice_closed(at(27, 8, 0)));
        assert!(!is_practice_closed(at(27, 17, 59)));
        assert!(is_practice_closed(at(27, 18, 0)));
        assert!(is_practice_closed(at(28, 12, 0)));
        assert!(is_practice_closed(at(29, 12, 0)));
        assert!(!is_practice_closed(at(30, 12, 0)));
    }

    #[test]
    fn vet_today_names_the_out_of_hours_vet_too() {
        let seen = numbers(Level::VetToday, &plan(), false);
        assert_eq!(seen, ["5550102", "5550103", "5550100", "5550101"]);
        let mut no_day_vet = plan();
        no_day_vet
            .contacts
            .retain(|contact| contact.role != Role::AvianVet);
        let seen = numbers(Level::VetToday, &no_day_vet, false);
        assert_eq!(seen, ["5550103", "5550100", "5550101"]);
    }

    #[test]
    fn nobody_is_told_to_call_themselves_at_any_level() {
        let plan = plan();
        for level in LEVELS {
            let seen = numbers(level, &plan, true);
            assert!(!seen.contains(&"5550100".to_owned()), "{level:?}");
            assert!(!seen.contains(&"5550101".to_owned()), "{level:?}");
            let seen = numbers(level, &plan, false);
            assert!(!seen.contains(&"5550104".to_owned()), "{level:?}");
        }
    }
}

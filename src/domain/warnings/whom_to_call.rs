//! Whom to call at a level, first to call first.

use crate::domain::plan::care_plan::{CarePlan, Contact, Role};
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

/// The people to call. A breeder is not told to call herself: she sees the owner's number where others see
/// hers.
pub fn whom_to_call(level: Level, plan: &CarePlan, is_breeder: bool) -> Vec<Callee> {
    let roles: &[Role] = match level {
        Level::Settled | Level::Watch | Level::CallBreeder => &[Role::Breeder, Role::AvianVet],
        // The day vet may be closed.
        Level::VetToday => &[Role::AvianVet, Role::EmergencyVet, Role::Breeder],
        Level::Emergency => &[Role::EmergencyVet, Role::AvianVet, Role::Breeder],
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
        let callees = whom_to_call(level, plan, is_breeder).into_iter();
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
        assert_eq!(emergency, ["5550103", "5550102", "5550104"]);
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

//! A card as the template of the next one.

use crate::domain::plan::care_plan::{CarePlan, Role};
use crate::domain::plan::parts::PartKind;
use crate::domain::plan::topic::Topic;

impl CarePlan {
    /// The same plan for another chick: how this breeder feeds, without what belongs to one bird or
    /// one home.
    ///
    /// Left out: name, ring, hatch day, weights, journey, what is said of this chick only, the owner, and
    /// the vets, since a vet far from the next home would be rung in vain. The breeder stays, and so does what was confirmed.
    ///
    /// # Examples
    /// ```
    /// use perchlight::domain::plan::care_plan::CarePlan;
    /// use perchlight::domain::plan::species::Species;
    ///
    /// let mut plan = CarePlan::default_for(Species::ScarletMacaw);
    /// plan.name = "Ember".to_owned();
    /// let template = plan.as_template();
    /// assert_eq!((template.name.as_str(), &template.feeds), ("", &plan.feeds));
    /// ```
    #[must_use]
    pub fn as_template(&self) -> Self {
        let is_of_breeder = |role| match role {
            Role::Breeder => true,
            Role::AvianVet | Role::EmergencyVet => false,
        };
        let mut template = Self {
            name: String::new(),
            ring: String::new(),
            hatched: None,
            reference: None,
            peak: None,
            target: None,
            owner_name: String::new(),
            owner_number: String::new(),
            note_for_chick: String::new(),
            journey: None,
            ..self.clone()
        };
        template.said.retain(|topic, _| !topic.is_of_chick());
        template
            .contacts
            .retain(|contact| is_of_breeder(contact.role));
        template
    }

    /// The same plan with what a breeder says once for every chick: who she is and when she can be called, how
    /// often she wants a report, what to do after a refusal, and whether she wants to be asked before a drop.
    ///
    /// What she left empty in `own` stays as it is here.
    #[must_use]
    pub fn with_own_words(mut self, own: &Self) -> Self {
        let fill = |here: &mut String, said: &str| {
            if !said.is_empty() {
                said.clone_into(here);
            }
        };
        if own.contacts.iter().any(|one| one.role == Role::Breeder) {
            self.set_part(own.part(PartKind::People));
        }
        fill(&mut self.note, &own.note);
        if !own.said(Topic::AfterRefusal).is_empty() {
            self.say(Topic::AfterRefusal, own.said(Topic::AfterRefusal));
        }
        self.ask_before_drop |= own.ask_before_drop;
        self
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::plan::care_plan::{CarePlan, Contact, PlanField, Reference, Role};
    use crate::domain::plan::species::Species;
    use crate::domain::plan::topic::Topic;
    use crate::domain::quantity::units::{Grams, Percent};
    use crate::domain::time::moment::Day;

    #[test]
    fn what_belongs_to_one_bird_or_one_home_is_left_out_and_the_rest_stays() {
        let contact = |role| Contact {
            role,
            name: "Made up".to_owned(),
            number: "+1 555 0100".to_owned(),
        };
        let mut plan = CarePlan::default_for(Species::HyacinthMacaw);
        plan.powder_fraction = Percent::whole(28);
        plan.unconfirmed.remove(&PlanField::PowderShare);
        plan.contacts = vec![contact(Role::Breeder)];
        plan.note = "Hold the head level.".to_owned();
        plan.say(Topic::Bath, "Warm spray at noon");
        let wanted = plan.clone();
        plan.name = "Ember".to_owned();
        plan.ring = "GB 12".to_owned();
        plan.say(Topic::Wings, "Clipped on the left");
        plan.hatched = Some(Day::from_number(20_000));
        plan.reference = Some(Reference {
            weight: Grams::whole(1_040),
            day: Day::from_number(20_090),
        });
        plan.contacts.push(contact(Role::AvianVet));
        plan.contacts.push(contact(Role::EmergencyVet));
        assert_eq!(plan.as_template(), wanted);
    }

    #[test]
    fn her_own_words_go_into_every_card_and_nothing_else_changes() {
        let contact = |role, name: &str| Contact {
            role,
            name: name.to_owned(),
            number: "+1 555 0100".to_owned(),
        };
        let mut own = CarePlan::default_for(Species::ScarletMacaw);
        own.contacts = vec![contact(Role::Breeder, "Ana"), contact(Role::Breeder, "Bo")];
        own.breeder_hours = "8 to 22".to_owned();
        own.note = "Wash your hands.".to_owned();
        own.say(Topic::AfterRefusal, "Wait an hour");
        own.ask_before_drop = true;
        let mut template = CarePlan::default_for(Species::HyacinthMacaw);
        template.powder_fraction = Percent::whole(28);
        template.contacts = vec![contact(Role::Breeder, "Old")];
        let mut wanted = template.clone();
        wanted.contacts = own.contacts.clone();
        wanted.breeder_hours = "8 to 22".to_owned();
        wanted.note = "Wash your hands.".to_owned();
        wanted.say(Topic::AfterRefusal, "Wait an hour");
        wanted.ask_before_drop = true;
        assert_eq!(template.clone().with_own_words(&own), wanted);
        let nothing = CarePlan::default_for(Species::ScarletMacaw);
        assert_eq!(wanted.clone().with_own_words(&nothing), wanted);
    }
}

//! A plan of which some parts were left out, as a QR code carries it, and how it is joined with another of
//! the same plan.

use std::collections::{BTreeMap, BTreeSet};

use crate::domain::plan::care_plan::CarePlan;
use crate::domain::plan::parts::{Part, PartKind, changed_parts};
use crate::domain::plan::species::Species;
use crate::domain::plan::topic::Topic;

impl CarePlan {
    /// What stands in the place of whatever is left out: no feed, and defaults that nobody has confirmed.
    pub fn blank() -> Self {
        Self {
            feeds: Vec::new(),
            ..Self::default_for(Species::GreenWingedMacaw)
        }
    }

    /// Whether a part says anything, beside what is said about its topics.
    pub fn holds(&self, kind: PartKind) -> bool {
        self.bare(kind) != Self::blank().part(kind)
    }

    /// These parts alone, and of what is said in words these topics alone.
    #[must_use]
    pub fn with_only(&self, kinds: &BTreeSet<PartKind>, topics: &BTreeSet<Topic>) -> Self {
        let mut only = Self::blank();
        for kind in kinds {
            only.set_part(self.bare(*kind));
        }
        only.said.clone_from(&self.said);
        only.said.retain(|topic, _| topics.contains(topic));
        only
    }

    /// What this plan and `other` hold together; `None` where they are not of one plan: a part or a topic
    /// is in both and not the same.
    pub fn together(&self, other: &Self) -> Option<Self> {
        let mut both = Self::blank();
        for kind in PartKind::ALL {
            let (one, two) = (self.bare(kind), other.bare(kind));
            if self.holds(kind) && other.holds(kind) && one != two {
                return None;
            }
            both.set_part(if self.holds(kind) { one } else { two });
        }
        both.said = said_together(&self.said, &other.said)?;
        // The order of the contacts is kept where one of the two holds everything.
        let whole = [self, other].into_iter();
        let whole = whole.filter(|plan| changed_parts(plan, &both).is_empty());
        Some(whole.max().cloned().unwrap_or(both))
    }

    fn bare(&self, kind: PartKind) -> Part {
        let mut plan = Self::blank();
        plan.set_part(self.part(kind));
        plan.said.clear();
        plan.part(kind)
    }
}

fn said_together(
    one: &BTreeMap<Topic, String>,
    other: &BTreeMap<Topic, String>,
) -> Option<BTreeMap<Topic, String>> {
    let mut both = one.clone();
    for (topic, text) in other {
        if both.entry(*topic).or_insert_with(|| text.clone()) != text {
            return None;
        }
    }
    Some(both)
}

#[cfg(test)]
mod tests {
    use crate::domain::plan::partial::*;
    use crate::domain::quantity::units::{Millilitres, Percent};

    fn whole() -> CarePlan {
        let mut plan = CarePlan::default_for(Species::GreyParrot);
        plan.name = "Ember".to_owned();
        plan.feeds[0].volume = Millilitres::whole(31);
        plan.note = "Slowly.".to_owned();
        plan.say(Topic::AfterRefusal, "Wait, then half.");
        plan.say(Topic::Bath, "Warm spray");
        plan.unconfirmed.clear();
        plan
    }

    fn feeds_and_chick(plan: &CarePlan) -> CarePlan {
        let kinds = BTreeSet::from([PartKind::Chick, PartKind::Feeds]);
        plan.with_only(&kinds, &BTreeSet::from([Topic::AfterRefusal]))
    }

    #[test]
    fn what_is_left_out_is_blank_and_nothing_else_changes() {
        let (whole, short) = (whole(), feeds_and_chick(&whole()));
        for kind in PartKind::ALL {
            let is_there = matches!(kind, PartKind::Chick | PartKind::Feeds);
            assert_eq!(short.holds(kind), is_there, "{kind:?}");
        }
        assert_eq!(short.part(PartKind::Feeds), whole.part(PartKind::Feeds));
        assert_eq!(short.name, "Ember");
        assert!(!short.said.contains_key(&Topic::Bath));
        assert_eq!(short.faults(), []);
    }

    #[test]
    fn together_with_the_whole_plan_it_is_the_whole_plan_either_way() {
        let (whole, short) = (whole(), feeds_and_chick(&whole()));
        assert_eq!(short.together(&whole), Some(whole.clone()));
        assert_eq!(whole.together(&short), Some(whole.clone()));
        let words = whole.with_only(&BTreeSet::from([PartKind::Words]), &BTreeSet::new());
        let both = short.together(&words).unwrap();
        assert!(both.holds(PartKind::Words) && both.holds(PartKind::Feeds));
    }

    #[test]
    fn plans_that_say_two_things_are_not_one() {
        let mut other = whole();
        other.loss_limit = Percent::whole(8);
        assert_eq!(whole().together(&other), None);
        let mut other = whole();
        other.say(Topic::Bath, "None");
        assert_eq!(other.together(&whole()), None);
    }
}

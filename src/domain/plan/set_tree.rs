//! Who set a part of a plan, after whom, and which of the sets holds.
//!
//! **Invariants.** A set names every set that it was written after, so what descends is newer whatever
//! the clocks say. The answer depends on which sets there are, never on the order in which they came.

use std::collections::{BTreeMap, BTreeSet};

use crate::domain::plan::care_plan::CarePlan;
use crate::domain::plan::parts::{Part, PartKind, Side};
use crate::domain::plan::plan_line::plan_difference;
use crate::domain::quantity::order::{set_of, sorted_by};
use crate::domain::time::moment::{Lived, Moment, Offset};

/// A part of a plan as somebody set it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlanSet<Id> {
    /// Its name.
    pub id: Id,
    /// What was set.
    pub part: Part,
    /// The sets that it was written after. The root, which every set comes after, is not named.
    pub replaces: BTreeSet<Id>,
    /// On whose side it was written.
    pub side: Side,
    /// Who wrote it, as that person calls themselves; may be empty.
    pub by: String,
    /// When it was written.
    pub at: Moment,
    /// The wall clock's offset where it was written.
    pub offset: Offset,
    /// From when on it is in force; `None` for a set that no carer has taken.
    pub from: Option<Moment>,
}

impl<Id> PlanSet<Id> {
    /// The day and wall time at which it was written.
    pub fn lived(&self) -> Lived {
        self.at.lived(self.offset)
    }
}

/// The sets of one part of one plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SetTree<Id> {
    kind: PartKind,
    /// Each with everything that it descends from.
    sets: Vec<PlanSet<Id>>,
    /// Which set held from when on; the last holds now.
    turns: Vec<(Moment, usize)>,
}

impl<Id: Copy + Ord> SetTree<Id> {
    /// The tree of these sets of one part, in whatever order they come; those `undone` only join what
    /// was written before them to what was written after.
    pub fn new(kind: PartKind, sets: Vec<PlanSet<Id>>, undone: &BTreeSet<Id>) -> Self {
        let mut sets = with_all_ancestors(sets);
        sets.retain(|set| !undone.contains(&set.id));
        let mut tree = Self {
            kind,
            sets,
            turns: Vec::new(),
        };
        tree.turns = tree.take_turns();
        tree
    }

    /// What it is about.
    pub const fn kind(&self) -> PartKind {
        self.kind
    }

    /// Every set that was not undone.
    pub fn sets(&self) -> impl Iterator<Item = &PlanSet<Id>> {
        self.sets.iter()
    }

    /// Whether no set is left.
    pub const fn is_empty(&self) -> bool {
        self.sets.is_empty()
    }

    /// The set in force; `None` while the root holds.
    ///
    /// Of sets that do not descend from one another it is that of the side whose part it is; of two by
    /// one side the later written, then that of the higher id.
    pub fn in_force(&self) -> Option<&PlanSet<Id>> {
        let (_, place) = self.turns.last()?;
        self.sets.get(*place)
    }

    /// Which set held from when on, in order. Before the first of them the root held.
    ///
    /// A set holds no earlier than those that it replaces, however its clock was set.
    pub fn turns(&self) -> impl Iterator<Item = (Moment, &PlanSet<Id>)> {
        let turns = self.turns.iter();
        turns.filter_map(|(from, place)| Some((*from, self.sets.get(*place)?)))
    }

    /// The sets that neither hold nor are replaced by what was written after them: each waits for an
    /// answer, a set that is written after both.
    pub fn proposals(&self) -> Vec<&PlanSet<Id>> {
        let in_force = self.in_force();
        let is_open = |set: &&PlanSet<Id>| {
            let is_in_force = in_force.is_some_and(|held| held.id == set.id);
            !is_in_force
                && !self
                    .sets
                    .iter()
                    .any(|newer| newer.replaces.contains(&set.id))
        };
        self.sets.iter().filter(is_open).collect()
    }

    /// Everything that a set names which is written after `set`: that set and what it descends from.
    pub fn with_ancestors(set: &PlanSet<Id>) -> BTreeSet<Id> {
        let mut all = set.replaces.clone();
        all.insert(set.id);
        all
    }

    /// What both sets are written after: the newest such set that is here, `None` for the root.
    pub fn last_common(&self, one: &PlanSet<Id>, other: &PlanSet<Id>) -> Option<&PlanSet<Id>> {
        let other = Self::with_ancestors(other);
        let one = Self::with_ancestors(one);
        let both: Vec<&PlanSet<Id>> = self
            .sets
            .iter()
            .filter(|set| one.contains(&set.id) && other.contains(&set.id))
            .collect();
        let deepest = |set: &&&PlanSet<Id>| (set.replaces.len(), set.at, set.id);
        both.iter().max_by_key(deepest).copied()
    }

    fn take_turns(&self) -> Vec<(Moment, usize)> {
        let mut froms: BTreeMap<Id, Moment> = BTreeMap::new();
        for set in &self.sets {
            if let Some(from) = set.from {
                froms.insert(set.id, from);
            }
        }
        let places = self.sets.iter().enumerate();
        let begins = places.filter_map(|(place, set)| {
            let named = set.replaces.iter().filter_map(|id| froms.get(id));
            let earlier = named.copied().max();
            Some((
                set.from?.max(earlier.unwrap_or(Moment::EARLIEST)),
                place,
                set,
            ))
        });
        let begins = sorted_by(
            begins.collect(),
            |one: &(Moment, usize, &PlanSet<Id>), other| {
                (one.0, one.2.at, one.2.id).cmp(&(other.0, other.2.at, other.2.id))
            },
        );
        let mut heads: Vec<(usize, &PlanSet<Id>)> = Vec::new();
        let mut turns: Vec<(Moment, usize)> = Vec::new();
        for (from, place, set) in begins {
            heads.retain(|(_, head)| !set.replaces.contains(&head.id));
            if !heads
                .iter()
                .any(|(_, head)| head.replaces.contains(&set.id))
            {
                heads.push((place, set));
            }
            let rank =
                |(_, set): &&(usize, &PlanSet<Id>)| (set.side == self.kind.side(), set.at, set.id);
            if let Some((place, _)) = heads.iter().max_by_key(rank)
                && turns.last().is_none_or(|(_, held)| held != place)
            {
                turns.push((from, *place));
            }
        }
        turns
    }
}

/// Sets with all that they descend from, through undone ones too. A set that names itself in a ring,
/// which no phone writes, does not replace itself.
fn with_all_ancestors<Id: Copy + Ord>(mut sets: Vec<PlanSet<Id>>) -> Vec<PlanSet<Id>> {
    let mut named: BTreeMap<Id, BTreeSet<Id>> = BTreeMap::new();
    for set in &sets {
        named.entry(set.id).or_default().extend(&set.replaces);
    }
    for set in &mut sets {
        let mut waiting: Vec<Id> = set.replaces.iter().copied().collect();
        while let Some(id) = waiting.pop() {
            let more = named.get(&id).into_iter().flatten();
            let more: Vec<Id> = more
                .filter(|id| !set.replaces.contains(id))
                .copied()
                .collect();
            set.replaces.extend(&more);
            waiting.extend(more);
        }
        set.replaces.remove(&set.id);
    }
    sets
}

/// The part in force with the lines that `proposed` changed since `common`, so that taking a proposal
/// loses nothing of what was set meanwhile.
///
/// `base` fills what no part holds, and does not show in the answer.
pub fn merged(base: &CarePlan, common: Part, in_force: Part, proposed: Part) -> Part {
    let kind = in_force.kind();
    let with = |part: Part| {
        let mut plan = base.clone();
        plan.set_part(part);
        plan
    };
    let (common, mut held, proposed) = (with(common), with(in_force), with(proposed));
    for line in plan_difference(&common, &proposed) {
        line.copy(&proposed, &mut held);
    }
    let confirmed = |field| proposed.unconfirmed.contains(field);
    held.unconfirmed = set_of(
        held.unconfirmed
            .iter()
            .filter(|field| confirmed(field))
            .copied(),
    );
    held.part(kind)
}

//! The plan of one chick as its entries tell it: what was added, what was set since, what waits for an
//! answer.
//!
//! What an owner wants otherwise in a part of the breeder's is a set on the owner's side. *Asked for* (not as
//! a carer), it is a proposal until a [`Change::PartAgreed`] names it. *Done and told* (as a carer), it is in
//! force at once and not agreed until such an entry names it. Her "no" to the first is a set of hers that
//! names the asked one and changes nothing; to the second it is her former value, written anew, which waits
//! to be taken like all that she writes from afar.

use std::collections::{BTreeMap, BTreeSet};

use crate::domain::journal::entries::{Change, ChickId, Entry, EntryId, Journal};
use crate::domain::plan::ask_first::{AskFirst, ask_first};
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::plan::parts::{Author, Part, PartKind, Side, changed_parts};
use crate::domain::plan::plan_line::{PlanLine, plan_difference};
use crate::domain::plan::set_tree::{PlanSet, SetTree, merged};
use crate::domain::quantity::order::{set_of, sorted_by};
use crate::domain::time::moment::{Lived, Moment};

/// A plan's short name: how many times it was set, and when last.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PlanVersion {
    /// 1 for the plan as it was added, one more for each set since.
    pub number: usize,
    /// When the newest of these was written.
    pub lived: Lived,
    /// Whether the breeder wrote or agreed to all of it.
    pub is_agreed: bool,
}

/// A set that waits for an answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Proposal {
    /// The set.
    pub id: EntryId,
    /// What it is about.
    pub kind: PartKind,
    /// Who wrote it; may be empty.
    pub by: String,
    /// When it was written.
    pub lived: Lived,
    /// Whether an owner asks the breeder for it: then she answers, else a carer does.
    pub is_asked: bool,
    /// The plan as it would be.
    pub plan: CarePlan,
    /// The lines that it would change.
    pub lines: Vec<PlanLine>,
}

/// A part of the breeder's that an owner set, and to which she has not agreed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NotAgreed {
    /// What it is about.
    pub kind: PartKind,
    /// Who set it; may be empty.
    pub by: String,
    /// When it was set.
    pub lived: Lived,
    /// The plan with the part as she last gave it.
    pub plan: CarePlan,
    /// The lines that are otherwise now.
    pub lines: Vec<PlanLine>,
    /// Whether she has said no: her value, written anew, waits to be taken.
    pub is_declined: bool,
}

/// The plans of one chick.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlanRecord {
    added: Entry,
    /// When a carer first took the chick's card.
    taken_over: Option<Moment>,
    /// Sets of an owner to which the breeder agreed, and what added the chick where she typed it in.
    agreed: BTreeSet<EntryId>,
    trees: Vec<SetTree<EntryId>>,
    /// The plan from when on; the last is in force now.
    turns: Vec<(Moment, CarePlan)>,
}

impl PlanRecord {
    /// The plans that these entries of one chick tell of, in the order of a journal; `None` when none
    /// of them adds the chick. `dead` are the entries that were taken back: whoever adds a chick is not.
    pub fn new<'a>(
        entries: impl Iterator<Item = &'a Entry>,
        dead: &BTreeSet<EntryId>,
    ) -> Option<Self> {
        let mut added: Option<&Entry> = None;
        let mut sets: BTreeMap<PartKind, Vec<PlanSet<EntryId>>> = BTreeMap::new();
        let mut taken: BTreeMap<EntryId, Moment> = BTreeMap::new();
        let mut agreed: BTreeMap<EntryId, Moment> = BTreeMap::new();
        for entry in entries {
            if let Change::ChickAdded(plan) = &entry.change {
                let Some(first) = added else {
                    added = Some(entry);
                    continue;
                };
                // Somebody else's plan of the same chick: nothing says which of the two is newer.
                for part in first
                    .change
                    .plan()
                    .map(|own| changed_parts(own, plan))
                    .unwrap_or_default()
                {
                    let set = plan_set(entry, part, Side::Breeder);
                    sets.entry(set.part.kind()).or_default().push(set);
                }
            } else if let Change::PartSet {
                part,
                replaces,
                side,
                is_carer,
            } = &entry.change
            {
                let mut set = plan_set(entry, part.as_ref().clone(), *side);
                set.replaces.extend(replaces);
                set.from = is_carer.then_some(entry.at);
                sets.entry(part.kind()).or_default().push(set);
            } else if !dead.contains(&entry.id) {
                if let Change::PartTaken { sets } = &entry.change {
                    put_earliest(&mut taken, sets, entry.at);
                } else if let Change::PartAgreed { sets, .. } = &entry.change {
                    put_earliest(&mut agreed, sets, entry.at);
                }
            }
        }
        let added = added?.clone();
        for set in sets.values_mut().flatten() {
            set.from = set.from.or_else(|| {
                if is_of_owner_in_hers(set) {
                    // What was said before it was written holds from its writing on.
                    agreed.get(&set.id).map(|at| set.at.max(*at))
                } else {
                    taken.get(&set.id).copied()
                }
            });
        }
        let trees = sets
            .into_iter()
            .map(|(kind, sets)| SetTree::new(kind, sets, dead));
        let trees: Vec<SetTree<EntryId>> = trees.filter(|tree| !tree.is_empty()).collect();
        let turns = turns(added.change.plan()?, &trees);
        Some(Self {
            taken_over: taken.get(&added.id).copied(),
            agreed: agreed.into_keys().collect(),
            added,
            trees,
            turns,
        })
    }

    /// The entry that added the chick.
    pub const fn added(&self) -> &Entry {
        &self.added
    }

    /// From when on the chick is cared for by this plan: when its card was first taken, else when it was
    /// added.
    pub fn begun(&self) -> Moment {
        self.taken_over.unwrap_or(self.added.at)
    }

    /// When a carer first took the chick's card; `None` while nobody did.
    pub const fn taken_over(&self) -> Option<Moment> {
        self.taken_over
    }

    /// Whether its breeder typed the chick in and nobody has taken its card.
    pub fn is_with_its_breeder(&self) -> bool {
        self.agreed.contains(&self.added.id) && self.taken_over.is_none()
    }

    /// The plan in force, and since when it is.
    pub fn now(&self) -> Option<(Moment, &CarePlan)> {
        self.turns.last().map(|(from, plan)| (*from, plan))
    }

    /// The plan that was in force at `moment`, as it stands at `now`: what was set with a clock ahead of
    /// this one holds now all the same.
    pub fn at(&self, moment: Moment, now: Moment) -> Option<&CarePlan> {
        let past = self.turns.iter().rev().find(|(from, _)| *from <= moment);
        let turn = if moment < now {
            past.or(self.turns.first())
        } else {
            self.turns.last()
        };
        turn.map(|(_, plan)| plan)
    }

    /// Every plan there was, with the moment from which it held, in order.
    pub fn turns(&self) -> &[(Moment, CarePlan)] {
        &self.turns
    }

    /// The set of a part that is in force; `None` while it is as the chick was added with it.
    pub fn in_force(&self, kind: PartKind) -> Option<&PlanSet<EntryId>> {
        self.tree(kind)?.in_force()
    }

    fn tree(&self, kind: PartKind) -> Option<&SetTree<EntryId>> {
        self.trees.iter().find(|tree| tree.kind() == kind)
    }

    /// Who wrote the set of a part that is in force, and when.
    pub fn written(&self, kind: PartKind) -> (String, Lived) {
        self.in_force(kind).map_or_else(
            || (self.added.by.clone(), self.added.lived()),
            |set| (set.by.clone(), set.lived()),
        )
    }

    /// Proposals that no carer has taken, by their names. What an owner asks for is answered by the breeder
    /// and never taken with a card.
    pub fn untaken(&self) -> Vec<EntryId> {
        let open = self.trees.iter().flat_map(SetTree::proposals);
        open.filter(|set| set.from.is_none() && !is_of_owner_in_hers(set))
            .map(|set| set.id)
            .collect()
    }

    /// The names of all sets in force.
    pub fn sets_in_force(&self) -> Vec<EntryId> {
        let held = self.trees.iter().filter_map(SetTree::in_force);
        held.map(|set| set.id).collect()
    }

    /// The plan's short name.
    pub fn version(&self) -> PlanVersion {
        let held: Vec<&PlanSet<EntryId>> =
            self.trees.iter().filter_map(SetTree::in_force).collect();
        let numbers = held.iter().map(|set| 1 + set.replaces.len());
        let newest = held.iter().max_by_key(|set| set.at);
        PlanVersion {
            number: 1 + numbers.sum::<usize>(),
            lived: newest.map_or_else(|| self.added.lived(), |set| set.lived()),
            is_agreed: self.not_agreed().is_empty(),
        }
    }

    /// Whether the plan came from a breeder: she said so when she typed the chick in, by a
    /// [`Change::PartAgreed`] that names what added it, or set a part since. A chick that its owner typed in
    /// has nobody to agree, also where a partner took its card.
    pub fn is_from_breeder(&self) -> bool {
        let mut sets = self.trees.iter().flat_map(SetTree::sets);
        self.agreed.contains(&self.added.id) || sets.any(|set| set.side == Side::Breeder)
    }

    /// What an owner has to ask for before this part is in force, given what is in force now.
    pub fn ask_first(&self, part: &Part) -> Vec<AskFirst> {
        let named = self.in_force(part.kind()).map(SetTree::with_ancestors);
        let named: Vec<EntryId> = named.into_iter().flatten().collect();
        self.ask_first_after(part, &named)
    }

    /// The same for a part that is written after these sets. What any of her newest words or the plan in
    /// force allows need not be asked for.
    pub fn ask_first_after(&self, part: &Part, named: &[EntryId]) -> Vec<AskFirst> {
        let kind = part.kind();
        let Some((_, plan)) = self.now() else {
            return Vec::new();
        };
        if kind.side() == Side::Owner || !self.is_from_breeder() {
            return Vec::new();
        }
        let mut asked = ask_first(&plan.part(kind), part);
        for hers in self.hers(kind, &set_of(named.iter().copied())) {
            let of_hers = ask_first(&hers, part);
            asked.retain(|one| of_hers.contains(one));
        }
        asked
    }

    /// The part as the breeder last gave it, among these sets: more than one where she wrote on two phones.
    fn hers(&self, kind: PartKind, named: &BTreeSet<EntryId>) -> Vec<Part> {
        let newest = self.newest_of_hers(kind, named);
        if newest.is_empty() {
            let root = self.added.change.plan();
            return root.map(|plan| plan.part(kind)).into_iter().collect();
        }
        newest.into_iter().map(|set| set.part.clone()).collect()
    }

    fn newest_of_hers(&self, kind: PartKind, named: &BTreeSet<EntryId>) -> Vec<&PlanSet<EntryId>> {
        let sets = self.tree(kind).into_iter().flat_map(SetTree::sets);
        let is_hers = |set: &&PlanSet<EntryId>| {
            named.contains(&set.id) && (set.side == Side::Breeder || self.agreed.contains(&set.id))
        };
        let hers: Vec<&PlanSet<EntryId>> = sets.filter(is_hers).collect();
        let is_newest =
            |set: &&PlanSet<EntryId>| !hers.iter().any(|newer| newer.replaces.contains(&set.id));
        hers.iter().copied().filter(is_newest).collect()
    }

    /// The sets that an owner has done and told, and to which the breeder has not agreed.
    pub fn not_agreed(&self) -> Vec<NotAgreed> {
        let Some((_, plan)) = self.now().filter(|_| self.is_from_breeder()) else {
            return Vec::new();
        };
        let of = |tree: &SetTree<EntryId>| {
            let (kind, held) = (tree.kind(), tree.in_force()?);
            if kind.side() == Side::Owner {
                return None;
            }
            let with = |part: Part| {
                let mut plan = plan.clone();
                plan.set_part(part);
                plan
            };
            let hers = self.hers(kind, &SetTree::with_ancestors(held));
            let mut lines = plan_difference(&with(hers.last()?.clone()), plan);
            for part in &hers {
                let differs = plan_difference(&with(part.clone()), plan);
                lines.retain(|line| differs.contains(line));
            }
            let says_no = |set: &PlanSet<EntryId>| {
                set.side == Side::Breeder && set.replaces.contains(&held.id)
            };
            (!lines.is_empty()).then(|| NotAgreed {
                kind,
                by: held.by.clone(),
                lived: held.lived(),
                plan: with(hers.last().cloned().unwrap_or_else(|| plan.part(kind))),
                lines,
                is_declined: tree.sets().any(says_no),
            })
        };
        self.trees.iter().filter_map(of).collect()
    }

    /// What waits for an answer, with what it would change; sets that change nothing are left out.
    pub fn proposals(&self) -> Vec<Proposal> {
        let Some((_, plan)) = self.now() else {
            return Vec::new();
        };
        let open = self.trees.iter().flat_map(|tree| {
            let sets = tree.proposals().into_iter();
            sets.map(move |set| (tree, set))
        });
        let proposal = |(tree, set): (&SetTree<EntryId>, &PlanSet<EntryId>)| {
            let mut proposed = plan.clone();
            proposed.set_part(self.merged(tree, set)?);
            let lines = plan_difference(plan, &proposed);
            (!lines.is_empty()).then(|| Proposal {
                id: set.id,
                kind: tree.kind(),
                by: set.by.clone(),
                lived: set.lived(),
                is_asked: set.from.is_none() && is_of_owner_in_hers(set),
                plan: proposed,
                lines,
            })
        };
        open.filter_map(proposal).collect()
    }

    /// The plan as `author` left it: what is in force, and what that side proposed and nobody took yet.
    pub fn as_left_by(&self, author: Author) -> Option<CarePlan> {
        let (_, plan) = self.now()?;
        let mut plan = plan.clone();
        if !author.is_carer {
            for set in self.own_proposals(author) {
                plan.set_part(set.part.clone());
            }
        }
        Some(plan)
    }

    fn own_proposals(&self, author: Author) -> impl Iterator<Item = &PlanSet<EntryId>> {
        let open = self.trees.iter().flat_map(SetTree::proposals);
        open.filter(move |set| set.side == author.side && set.from.is_none())
    }

    /// The change that sets a part, written after what is in force and after what the author's own side
    /// proposed before.
    pub fn set(&self, part: Part, author: Author) -> Change {
        let kind = part.kind();
        let own = self.own_proposals(author).filter(|_| !author.is_carer);
        let named = self
            .in_force(kind)
            .into_iter()
            .chain(own.filter(|set| set.part.kind() == kind));
        part_set(part, named, author)
    }

    /// The changes that make `new` of the plan as `author` left it: one for each part that differs.
    pub fn sets(&self, new: &CarePlan, author: Author) -> Vec<Change> {
        let old = self.as_left_by(author);
        let parts = old.map(|old| changed_parts(&old, new)).unwrap_or_default();
        parts
            .into_iter()
            .map(|part| self.set(part, author))
            .collect()
    }

    /// The changes by which an owner asks the breeder for what is otherwise in `new`: one for each part; the
    /// owner's own are set at once. What was asked for before stands beside it.
    pub fn asks(&self, new: &CarePlan) -> Vec<Change> {
        let parts = self.now().map(|(_, plan)| changed_parts(plan, new));
        let parts = parts.into_iter().flatten();
        let asked = |part: Part| match part.kind().side() {
            Side::Owner => self.set(part, Author::OWNER),
            Side::Breeder => {
                let held = self.in_force(part.kind()).into_iter();
                part_set(part, held, Author::OWNER_ASKING)
            }
        };
        parts.map(asked).collect()
    }

    /// The change by which the breeder agrees to what was done and told, or writes her own value anew; `None`
    /// when that part holds nothing to answer.
    pub fn answer_told(&self, kind: PartKind, is_agreed: bool, author: Author) -> Option<Change> {
        let held = self.in_force(kind)?;
        if is_agreed {
            return Some(agreed(held.id));
        }
        let hers = self.hers(kind, &SetTree::with_ancestors(held));
        Some(self.set(hers.last()?.clone(), author))
    }

    /// The change that takes or declines a proposal: a set that is written after both.
    ///
    /// Taken, what the proposal changed is put into what is in force; what was asked for and is newer than
    /// all else is agreed to as it is. `None` for a set that waits for no answer.
    pub fn answer(&self, id: EntryId, is_taken: bool, author: Author) -> Option<Change> {
        let mut open = self.trees.iter().flat_map(|tree| {
            let sets = tree.proposals().into_iter();
            sets.map(move |set| (tree, set))
        });
        let (tree, set) = open.find(|(_, set)| set.id == id)?;
        let held = tree.in_force();
        let is_newest = held.is_none_or(|held| set.replaces.contains(&held.id));
        if is_taken && is_newest && is_of_owner_in_hers(set) && author.side == Side::Breeder {
            return Some(agreed(set.id));
        }
        let part = if is_taken {
            self.merged(tree, set)?
        } else {
            self.now()?.1.part(tree.kind())
        };
        Some(part_set(part, held.into_iter().chain([set]), author))
    }

    fn merged(&self, tree: &SetTree<EntryId>, set: &PlanSet<EntryId>) -> Option<Part> {
        let (_, plan) = self.now()?;
        let held = tree.in_force();
        let common = held.and_then(|held| tree.last_common(held, set));
        let common = match common {
            Some(common) => common.part.clone(),
            None => self.added.change.plan()?.part(tree.kind()),
        };
        Some(merged(
            plan,
            common,
            plan.part(tree.kind()),
            set.part.clone(),
        ))
    }

    /// What has to go with a plan so that another phone has the same: the entry that adds the chick, the
    /// sets in force, the breeder's newest, the proposals, and what was taken of and agreed to in these.
    pub fn entries_of_plan(&self, entries: &[Entry], dead: &BTreeSet<EntryId>) -> Vec<Entry> {
        let open = self
            .trees
            .iter()
            .flat_map(SetTree::proposals)
            .map(|set| set.id);
        let hers = self.trees.iter().flat_map(|tree| {
            let named = tree.in_force().map(SetTree::with_ancestors);
            self.newest_of_hers(tree.kind(), &named.unwrap_or_default())
        });
        let hers = hers.map(|set| set.id);
        let sent: BTreeSet<EntryId> =
            set_of(self.sets_in_force().into_iter().chain(open).chain(hers));
        let is_of_hers = |entry: &Entry| {
            matches!(&entry.change, Change::PartAgreed { sets, .. } if sets.contains(&self.added.id))
                && !dead.contains(&entry.id)
        };
        let is_sent = |entry: &&Entry| {
            let is_taken = matches!(&entry.change,
                Change::PartTaken { sets } | Change::PartAgreed { sets, .. } if !dead.contains(&entry.id) && sets.iter().any(|id| sent.contains(id)));
            entry.chick == self.added.chick
                && (entry.id == self.added.id
                    || sent.contains(&entry.id)
                    || is_taken
                    || is_of_hers(entry))
        };
        entries.iter().filter(is_sent).cloned().collect()
    }
}

impl Journal {
    /// The plans of a chick; `None` when the journal never added it.
    pub fn plans(&self, chick: ChickId) -> Option<PlanRecord> {
        let entries = self.entries().iter().filter(|entry| entry.chick == chick);
        PlanRecord::new(entries, &self.retracted())
    }

    /// The plan of a chick that is in force; `None` when the journal never added it.
    pub fn plan_of(&self, chick: ChickId) -> Option<CarePlan> {
        self.plans(chick)?.now().map(|(_, plan)| plan.clone())
    }

    /// The entries that another phone needs to have the plan of a chick as it is here.
    pub fn entries_of_plan(&self, chick: ChickId) -> Vec<Entry> {
        let plans = self.plans(chick);
        let sent = plans.map(|plans| plans.entries_of_plan(self.entries(), &self.retracted()));
        sent.unwrap_or_default()
    }
}

fn plan_set(entry: &Entry, part: Part, side: Side) -> PlanSet<EntryId> {
    PlanSet {
        id: entry.id,
        part,
        replaces: BTreeSet::new(),
        side,
        by: entry.by.clone(),
        at: entry.at,
        offset: entry.offset,
        from: None,
    }
}

/// An owner's set of a part of the breeder's: hers to answer.
fn is_of_owner_in_hers(set: &PlanSet<EntryId>) -> bool {
    set.side == Side::Owner && set.part.kind().side() == Side::Breeder
}

/// The breeder agrees on her own phone.
fn agreed(set: EntryId) -> Change {
    Change::PartAgreed {
        sets: vec![set],
        said_by: String::new(),
    }
}

fn put_earliest(moments: &mut BTreeMap<EntryId, Moment>, sets: &[EntryId], at: Moment) {
    for id in sets {
        let first = moments.entry(*id).or_insert(at);
        *first = at.min(*first);
    }
}

fn part_set<'a>(
    part: Part,
    named: impl Iterator<Item = &'a PlanSet<EntryId>>,
    author: Author,
) -> Change {
    Change::PartSet {
        part: Box::new(part),
        replaces: set_of(named.flat_map(SetTree::with_ancestors))
            .into_iter()
            .collect(),
        side: author.side,
        is_carer: author.is_carer,
    }
}

/// The plan from when on, as the parts took turns.
fn turns(added: &CarePlan, trees: &[SetTree<EntryId>]) -> Vec<(Moment, CarePlan)> {
    let parts = trees.iter().flat_map(SetTree::turns);
    let parts = sorted_by(
        parts.collect(),
        |one: &(Moment, &PlanSet<EntryId>), other| one.0.cmp(&other.0),
    );
    let mut turns = vec![(Moment::EARLIEST, added.clone())];
    for (from, set) in parts {
        let Some((last, plan)) = turns.last_mut() else {
            break;
        };
        if *last == from {
            plan.set_part(set.part.clone());
        } else {
            let mut plan = plan.clone();
            plan.set_part(set.part.clone());
            turns.push((from, plan));
        }
    }
    turns
}

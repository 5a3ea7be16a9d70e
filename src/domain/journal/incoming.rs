//! What entries from elsewhere would do to the plans here, before any of them is taken in.

use crate::domain::journal::entries::{Change, ChickId, Entry, EntryId, Journal};
use crate::domain::journal::plan_record::{PlanRecord, PlanVersion};
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::plan::parts::{PartKind, Side};
use crate::domain::plan::plan_line::{PlanLine, plan_difference};
use crate::domain::time::moment::{Lived, Moment, Offset};

/// A line of the plan that would change, and who wrote it when.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChangedLine {
    /// The line.
    pub line: PlanLine,
    /// Who wrote it; may be empty.
    pub by: String,
    /// When it was written.
    pub lived: Lived,
}

/// What would come in of one chick.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Incoming {
    /// The chick.
    pub chick: ChickId,
    /// Its plan as it is here; `None` for a chick that is new here.
    pub old: Option<CarePlan>,
    /// Its plan as it would be.
    pub new: CarePlan,
    /// The lines that would change, in the order in which a card is read.
    pub changes: Vec<ChangedLine>,
    /// What would wait for an answer, and changes nothing before.
    pub proposals: usize,
    /// Sets that have to be taken, and of a new chick what adds it, which is said by a [`Change::PartTaken`].
    pub taken: Vec<EntryId>,
    /// The short name of the plan here, or of the new chick's.
    pub version: PlanVersion,
    /// Whether it holds an older plan than the one here.
    pub is_older: bool,
}

/// What taking in these entries would do to the plan of each chick that they tell of.
///
/// With `is_taken`, as a person takes a card, what somebody proposes from afar is taken with it; else it
/// waits for an answer of its own.
pub fn incoming(
    journal: &Journal,
    entries: &[Entry],
    is_taken: bool,
    now: Moment,
) -> Vec<Incoming> {
    let sent = Journal::from_entries(entries.to_vec());
    let mut joined = journal.clone();
    joined.join(&sent);
    let mut chicks: Vec<ChickId> = Vec::new();
    for entry in entries {
        if !chicks.contains(&entry.chick) {
            chicks.push(entry.chick);
        }
    }
    let of_chick = |chick| {
        let here = journal.plans(chick);
        let waits_here = here.as_ref().map(PlanRecord::proposals).unwrap_or_default();
        let is_new = |id: &EntryId| !waits_here.iter().any(|here| here.id == *id);
        let proposed = joined.plans(chick)?.untaken();
        let mut taken: Vec<EntryId> = proposed
            .into_iter()
            .filter(|id| is_taken && is_new(id))
            .collect();
        // Whoever takes the card of a new chick begins to care for it.
        if is_taken && here.is_none() {
            taken.push(joined.plans(chick)?.added().id);
        }
        let mut after = joined.clone();
        if !taken.is_empty() {
            after.insert(part_taken(chick, taken.clone(), now));
        }
        let after = after.plans(chick)?;
        let (_, new) = after.now()?;
        let old = here
            .as_ref()
            .and_then(PlanRecord::now)
            .map(|(_, plan)| plan.clone());
        let lines = old
            .as_ref()
            .map(|old| plan_difference(old, new))
            .unwrap_or_default();
        let changed = |line: PlanLine| {
            let (by, lived) = after.written(line.part());
            ChangedLine { line, by, lived }
        };
        let proposals = after.proposals();
        let version = here.as_ref().unwrap_or(&after).version();
        let theirs = sent.plans(chick);
        Some(Incoming {
            chick,
            new: new.clone(),
            changes: lines.into_iter().map(changed).collect(),
            proposals: proposals
                .iter()
                .filter(|proposal| is_new(&proposal.id))
                .count(),
            taken,
            is_older: here
                .zip(theirs)
                .is_some_and(|(here, theirs)| is_older(&theirs, &here)),
            old,
            version,
        })
    };
    chicks.into_iter().filter_map(of_chick).collect()
}

/// Whether a part of the breeder's is here as it was written after what `theirs` holds of it. What the
/// owner alone writes is in no card of the breeder's, and what a short card leaves out is not asked for.
fn is_older(theirs: &PlanRecord, here: &PlanRecord) -> bool {
    let is_short = theirs.added().change != here.added().change;
    let left_out = |kind| is_short && theirs.now().is_none_or(|(_, plan)| !plan.holds(kind));
    let mut kinds = PartKind::ALL.into_iter();
    kinds.any(|kind| match (theirs.in_force(kind), here.in_force(kind)) {
        _ if kind.side() == Side::Owner => false,
        (_, None) => false,
        (None, Some(_)) => !left_out(kind),
        (Some(theirs), Some(here)) => here.replaces.contains(&theirs.id),
    })
}

/// The entry that would say so.
fn part_taken(chick: ChickId, sets: Vec<EntryId>, now: Moment) -> Entry {
    Entry {
        at: now,
        id: EntryId([0; 12]),
        chick,
        noted_at: now,
        offset: Offset::UTC,
        by: String::new(),
        change: Change::PartTaken { sets },
    }
}

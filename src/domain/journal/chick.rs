//! One chick as the journal tells it: a fold of its entries, retracted ones left out.

use std::collections::BTreeMap;

use std::collections::BTreeSet;

use crate::domain::journal::entries::{
    Carer, Change, ChickId, CropAtWeighing, CropFeel, CropState, Droppings, Entry, EntryId,
    Journal, Paper, Response, SameFoodAnswer, SolidsEaten, WhyPassedOver,
};
use crate::domain::journal::photo::Photo;
use crate::domain::journal::plan_record::{PlanRecord, Proposal};
use crate::domain::journal::signs::Sign;
use crate::domain::plan::care_plan::{CarePlan, PlannedFeed, Role, Slot};
use crate::domain::quantity::units::{Celsius, Grams, Millilitres};
use crate::domain::time::moment::{Day, Lived, Moment, Offset};

/// Something noted, with its entry and when it was lived.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Noted<T> {
    /// The entry it comes from.
    pub id: EntryId,
    /// When it happened.
    pub at: Moment,
    /// The wall clock's offset then.
    pub offset: Offset,
    /// What was noted.
    pub what: T,
}

impl<T> Noted<T> {
    /// The day and wall time at which it happened, as it was lived then.
    pub fn lived(&self) -> Lived {
        self.at.lived(self.offset)
    }
}

/// A weighing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Weighing {
    /// The reading.
    pub weight: Grams,
    /// What the crop held.
    pub crop: CropAtWeighing,
}

/// What became of a feed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FeedOutcome {
    /// It was given.
    Given {
        /// What went into the chick.
        taken: Millilitres,
        /// What was offered.
        offered: Millilitres,
        /// Temperature at serving.
        served_at: Option<Celsius>,
        /// How it was taken.
        response: Response,
    },
    /// The chick refused it.
    Refused {
        /// What was offered; nothing when nobody noted it.
        offered: Millilitres,
    },
    /// A planned feed was left out.
    PassedOver {
        /// Why.
        why: WhyPassedOver,
        /// The day of care of that feed.
        day: Day,
    },
}

impl FeedOutcome {
    /// Whether anything went into the chick.
    pub fn is_food(&self) -> bool {
        self.taken().tenths() > 0
    }

    /// What went into the chick; nothing for a feed refused or passed over.
    pub fn taken(&self) -> Millilitres {
        match self {
            Self::Given { taken, .. } => *taken,
            Self::Refused { .. } | Self::PassedOver { .. } => Millilitres::whole(0),
        }
    }
}

/// What became of food that was offered, or of a planned feed that was left out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FeedNote {
    /// The planned feed that a person said it is; [`crate::domain::feeding::food`] tells the others.
    pub counts_as: Option<Slot>,
    /// What became of it.
    pub outcome: FeedOutcome,
    /// Who noted it, as that person calls themselves; may be empty.
    pub by: String,
}

/// An answer to the question what notes of food near to each other are.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SameFood {
    /// Which notes.
    pub notes: Vec<EntryId>,
    /// What they are.
    pub answer: SameFoodAnswer,
}

/// A look at the crop.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CropLook {
    /// What was seen.
    pub state: CropState,
    /// What was felt.
    pub feel: CropFeel,
}

/// A feed given up or offered again.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WeaningStep {
    /// Given up; by the breeder against the criteria when the flag is set.
    Dropped {
        /// Which feed.
        slot: Slot,
        /// Whether the breeder decided it against the criteria.
        by_breeder: bool,
    },
    /// Offered again.
    BroughtBack {
        /// Which feed.
        slot: Slot,
    },
}

/// Powder used in one mix.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Mix {
    /// Dry powder.
    pub powder: Grams,
    /// Water.
    pub water: Grams,
    /// Fat supplement.
    pub fat_supplement: Grams,
}

/// Droppings counted since the paper was changed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DroppingsCount {
    /// Which paper.
    pub paper: Paper,
    /// How many.
    pub count: u8,
}

/// Solids seen.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SolidsLook {
    /// Which food.
    pub what: String,
    /// How much.
    pub eaten: SolidsEaten,
}

/// A call that was made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Call {
    /// Whom.
    pub whom: Role,
    /// What was agreed.
    pub agreed: String,
}

/// A care that went to somebody else.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HandedOver {
    /// To whom.
    pub to: Carer,
    /// What that person or place is called; may be empty.
    pub name: String,
}

/// What the breeder or a vet said about feeding.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Advice {
    /// Who said it.
    pub who: Role,
    /// What was said, in the words of whoever noted it.
    pub about: String,
    /// Whether it may be fed.
    pub may_feed: bool,
    /// How much a feed may hold; `None` for as much as the plan wants.
    pub ml: Option<Millilitres>,
    /// Until when it holds; `None` until something else is said.
    pub until: Option<Moment>,
}

/// One chick: its plan in force and everything noted, each list in order of time.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Chick {
    /// Its id.
    pub id: ChickId,
    /// When its card was first taken, else when it was added.
    pub added_at: Moment,
    /// The plan in force.
    pub plan: CarePlan,
    /// When the plan in force was set.
    pub plan_since: Moment,
    /// Every plan it had, who set it, and what waits for an answer.
    pub plans: PlanRecord,
    /// When it arrived in its new home.
    pub arrived: Option<Noted<()>>,
    /// Weighings.
    pub weighings: Vec<Noted<Weighing>>,
    /// Feeds given, refused and passed over.
    pub feeds: Vec<Noted<FeedNote>>,
    /// What notes of food near to each other are.
    pub same_food: Vec<SameFood>,
    /// Looks at the crop.
    pub crops: Vec<Noted<CropLook>>,
    /// Looks at the droppings.
    pub droppings: Vec<Noted<Droppings>>,
    /// Droppings counted.
    pub droppings_counts: Vec<Noted<DroppingsCount>>,
    /// Solids seen.
    pub solids: Vec<Noted<SolidsLook>>,
    /// Signs seen.
    pub signs: Vec<Noted<Sign>>,
    /// Signs that are no longer there, by the latest such note.
    pub signs_gone: BTreeMap<Sign, Moment>,
    /// Feeds dropped and brought back.
    pub weaning: Vec<Noted<WeaningStep>>,
    /// Mixes made.
    pub mixes: Vec<Noted<Mix>>,
    /// Powder opened or weighed.
    pub stock: Vec<Noted<Grams>>,
    /// Room temperatures.
    pub rooms: Vec<Noted<Celsius>>,
    /// Calls made.
    pub calls: Vec<Noted<Call>>,
    /// Times at which it was seen to drink.
    pub drinking: Vec<Noted<()>>,
    /// When somebody said that it is grown.
    pub grown: Option<Noted<()>>,
    /// When it died.
    pub died: Option<Noted<()>>,
    /// To whom the care went, by time.
    pub handed_over: Vec<Noted<HandedOver>>,
    /// What was said about feeding.
    pub advice: Vec<Noted<Advice>>,
    /// Weighings that count as they are, though a second one was asked for.
    pub standing: BTreeSet<EntryId>,
    /// Photos taken.
    pub photos: Vec<Noted<Photo>>,
    /// Why a vet is to see it, as last written.
    pub visit_reason: Option<Noted<String>>,
    /// Examinations by a vet, each with what the vet said.
    pub vet_visits: Vec<Noted<String>>,
    /// The appointment at a vet's that was noted last.
    pub vet_booked: Option<Noted<Lived>>,
}

impl Chick {
    /// The chick of this id; `None` when the journal never added it.
    pub fn from_journal(journal: &Journal, id: ChickId) -> Option<Self> {
        let dead = journal.retracted();
        let leading = journal.leading(&dead);
        if leading.contains_key(&id) {
            return None;
        }
        let is_of = |chick: ChickId| chick == id || leading.get(&chick) == Some(&id);
        let alive: Vec<&Entry> = journal
            .entries()
            .iter()
            .filter(|entry| is_of(entry.chick) && !dead.contains(&entry.id))
            .collect();
        let of_card = alive.iter().copied().filter(|entry| entry.chick == id);
        let record = PlanRecord::new(of_card, &dead)?;
        let (plan_since, plan) = record.now()?;
        let mut chick = Self::new(id, plan_since.max(record.begun()), plan.clone(), record);
        // Where a card has joined a typed chick its plan leads; the typed one fills what is empty.
        let of_typed = alive.iter().copied().filter(|entry| entry.chick != id);
        if let Some(record) = PlanRecord::new(of_typed, &dead) {
            chick.added_at = chick.added_at.min(record.begun());
            if let Some((_, typed)) = record.now() {
                chick.plan.fill_from(typed);
            }
        }
        for entry in alive {
            chick.note(entry);
        }
        Some(chick)
    }

    fn new(id: ChickId, plan_since: Moment, plan: CarePlan, plans: PlanRecord) -> Self {
        Self {
            id,
            added_at: plans.begun(),
            plan,
            plan_since,
            plans,
            arrived: None,
            weighings: Vec::new(),
            feeds: Vec::new(),
            same_food: Vec::new(),
            crops: Vec::new(),
            droppings: Vec::new(),
            droppings_counts: Vec::new(),
            solids: Vec::new(),
            signs: Vec::new(),
            signs_gone: BTreeMap::new(),
            weaning: Vec::new(),
            mixes: Vec::new(),
            stock: Vec::new(),
            rooms: Vec::new(),
            calls: Vec::new(),
            drinking: Vec::new(),
            grown: None,
            died: None,
            handed_over: Vec::new(),
            advice: Vec::new(),
            standing: BTreeSet::new(),
            photos: Vec::new(),
            visit_reason: None,
            vet_visits: Vec::new(),
            vet_booked: None,
        }
    }

    fn note(&mut self, entry: &Entry) {
        match &entry.change {
            Change::ChickAdded(_)
            | Change::PartSet { .. }
            | Change::PartTaken { .. }
            | Change::PartAgreed { .. }
            | Change::SameChick { .. }
            | Change::Noted { .. }
            | Change::Remarked { .. }
            | Change::Retracted { .. } => {}
            Change::WeightStands { id } => {
                self.standing.insert(*id);
            }
            Change::PhotoTaken(photo) => self.photos.push(noted(entry, *photo)),
            Change::VisitReason { text } => {
                let reason = (!text.is_empty()).then(|| noted(entry, text.clone()));
                self.visit_reason = reason;
            }
            Change::VetSeen { said } => self.vet_visits.push(noted(entry, said.clone())),
            Change::VetBooked { on } => self.vet_booked = Some(noted(entry, *on)),
            Change::DrinkingSeen => self.drinking.push(noted(entry, ())),
            Change::Grown => self.grown = Some(noted(entry, ())),
            Change::Died => self.died = Some(noted(entry, ())),
            Change::HandedOver { to, name } => {
                let (to, name) = (*to, name.clone());
                self.handed_over.push(noted(entry, HandedOver { to, name }));
            }
            Change::Arrived => self.arrived = Some(noted(entry, ())),
            &Change::Weighed { weight, crop } => {
                let weighing = Weighing { weight, crop };
                self.weighings.push(noted(entry, weighing));
            }
            Change::Fed { .. } | Change::FeedRefused { .. } | Change::FeedPassedOver { .. } => {
                if let Some(note) = feed_note(entry) {
                    self.feeds.push(noted(entry, note));
                }
            }
            Change::SameFood { notes, answer } => self.same_food.push(SameFood {
                notes: notes.clone(),
                answer: *answer,
            }),
            &Change::CropSeen { state, feel } => {
                self.crops.push(noted(entry, CropLook { state, feel }));
            }
            &Change::DroppingsSeen { look } => self.droppings.push(noted(entry, look)),
            &Change::DroppingsCounted { paper, count } => {
                let counted = DroppingsCount { paper, count };
                self.droppings_counts.push(noted(entry, counted));
            }
            Change::SolidsSeen { what, eaten } => {
                let (what, eaten) = (what.clone(), *eaten);
                self.solids.push(noted(entry, SolidsLook { what, eaten }));
            }
            &Change::SignSeen { sign } => self.signs.push(noted(entry, sign)),
            &Change::SignGone { sign } => {
                self.signs_gone.insert(sign, entry.at);
            }
            &Change::FeedDropped { slot, by_breeder } => {
                let step = WeaningStep::Dropped { slot, by_breeder };
                self.weaning.push(noted(entry, step));
            }
            &Change::FeedBroughtBack { slot } => {
                let step = WeaningStep::BroughtBack { slot };
                self.weaning.push(noted(entry, step));
            }
            &Change::MixMade {
                powder,
                water,
                fat_supplement,
            } => {
                let mix = Mix {
                    powder,
                    water,
                    fat_supplement,
                };
                self.mixes.push(noted(entry, mix));
            }
            &Change::StockOpened { powder } => self.stock.push(noted(entry, powder)),
            Change::Called { whom, agreed } => {
                let (whom, agreed) = (*whom, agreed.clone());
                self.calls.push(noted(entry, Call { whom, agreed }));
            }
            Change::AdviceNoted {
                who,
                about,
                may_feed,
                ml,
                until,
            } => {
                let advice = Advice {
                    who: *who,
                    about: about.clone(),
                    may_feed: *may_feed,
                    ml: *ml,
                    until: *until,
                };
                self.advice.push(noted(entry, advice));
            }
            &Change::RoomSeen { room } => self.rooms.push(noted(entry, room)),
        }
    }

    /// The plan that was in force at `moment`, as it stands at `now`.
    pub fn plan_at(&self, moment: Moment, now: Moment) -> &CarePlan {
        self.plans.at(moment, now).unwrap_or(&self.plan)
    }

    /// Sets of parts of the plan that wait for an answer.
    pub fn proposals(&self) -> Vec<Proposal> {
        self.plans.proposals()
    }

    /// The feeds still given: those of the plan that are not dropped at `moment`.
    pub fn feeds_in_force(&self, moment: Moment) -> Vec<PlannedFeed> {
        let dropped = self.dropped_slots(moment);
        self.plan
            .feeds
            .iter()
            .filter(|feed| !dropped.contains(&feed.slot))
            .copied()
            .collect()
    }

    /// The slots given up at `moment`, in the order in which they went. Only bringing one back ends a
    /// drop: no plan that is set later does.
    pub fn dropped_slots(&self, moment: Moment) -> Vec<Slot> {
        self.drops(moment)
            .into_iter()
            .map(|(slot, _)| slot)
            .collect()
    }

    /// The slots given up at `moment` and when each of them went, in that order.
    pub fn drops(&self, moment: Moment) -> Vec<(Slot, Lived)> {
        let mut dropped: Vec<(Slot, Lived)> = Vec::new();
        for step in self.weaning.iter().filter(|step| step.at <= moment) {
            match step.what {
                WeaningStep::Dropped { slot, .. } => {
                    if !dropped.iter().any(|(gone, _)| *gone == slot) {
                        dropped.push((slot, step.lived()));
                    }
                }
                WeaningStep::BroughtBack { slot } => dropped.retain(|(gone, _)| *gone != slot),
            }
        }
        dropped
    }

    /// The signs seen since `from` that nobody has noted as gone, each once with its latest sighting.
    pub fn signs_present(&self, from: Moment) -> Vec<Noted<Sign>> {
        let mut present: Vec<Noted<Sign>> = Vec::new();
        for seen in self.signs.iter().filter(|seen| seen.at >= from) {
            if self
                .signs_gone
                .get(&seen.what)
                .is_some_and(|gone| *gone >= seen.at)
            {
                continue;
            }
            present.retain(|earlier| earlier.what != seen.what);
            present.push(seen.clone());
        }
        present
    }

    /// From when on the chick is looked after here: its arrival; until that is noted, the arrival that
    /// the journey expects; without a journey, when it was added. Never before it was added.
    pub fn home_since(&self) -> Moment {
        let arrived = self.arrived.as_ref().map(|arrived| arrived.at);
        let expected = self.plan.journey.map(|journey| journey.expected);
        arrived
            .or(expected)
            .map_or(self.added_at, |home| home.max(self.added_at))
    }

    /// The last feed that put something into the chick, up to `moment`.
    pub fn last_given(&self, moment: Moment) -> Option<&Noted<FeedNote>> {
        self.feeds
            .iter()
            .rev()
            .find(|feed| feed.at <= moment && feed.what.outcome.is_food())
    }
}

/// What an entry says of food or of a planned feed.
fn feed_note(entry: &Entry) -> Option<FeedNote> {
    let (counts_as, outcome) = if let Change::Fed {
        counts_as,
        taken,
        offered,
        served_at,
        response,
    } = &entry.change
    {
        let outcome = FeedOutcome::Given {
            taken: *taken,
            offered: *offered,
            served_at: *served_at,
            response: *response,
        };
        (*counts_as, outcome)
    } else if let Change::FeedRefused { counts_as, offered } = &entry.change {
        (*counts_as, FeedOutcome::Refused { offered: *offered })
    } else if let Change::FeedPassedOver { slot, day, why } = &entry.change {
        let (why, day) = (*why, *day);
        (Some(*slot), FeedOutcome::PassedOver { why, day })
    } else {
        return None;
    };
    let by = entry.by.clone();
    Some(FeedNote {
        counts_as,
        outcome,
        by,
    })
}

fn noted<T>(entry: &Entry, what: T) -> Noted<T> {
    Noted {
        id: entry.id,
        at: entry.at,
        offset: entry.offset,
        what,
    }
}

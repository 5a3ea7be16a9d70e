//! The journal: an append-only set of entries. State is a fold of it; joining two journals is union.
//!
//! Nothing is ever edited or taken out. A correction is a new entry and a retraction of the old one,
//! so what was believed when stays known, and a union never brings a deleted entry back.

use std::collections::{BTreeMap, BTreeSet};

use crate::domain::journal::photo::{MOST_PHOTO_BYTES, Photo};
use crate::domain::journal::signs::Sign;
use crate::domain::plan::care_plan::{CarePlan, PlanFault, Role, Slot};
use crate::domain::plan::parts::{Part, Side};
use crate::domain::quantity::order::{set_of, sorted};
use crate::domain::quantity::units::{Celsius, Grams, Millilitres};
use crate::domain::time::moment::{CARE_DAY_STARTS, Day, Lived, Moment, Offset, WallTime};

/// 96 random bits that name an entry, so that two phones never choose the same.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EntryId(pub [u8; 12]);

/// 96 random bits that name a chick.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ChickId(pub [u8; 12]);

/// What the crop held when the chick was weighed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CropAtWeighing {
    /// Empty, as in the morning before the first feed.
    Empty,
    /// Full or filling, after a feed.
    AfterFeed,
    /// The person did not know.
    NotSure,
}

/// How the chick took a feed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Response {
    /// Bobbing and swallowing.
    Eager,
    /// Takes it slowly or with pauses.
    Slow,
    /// Nobody noted it.
    NotNoted,
}

/// Why a feed was left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum WhyPassedOver {
    /// The crop still held food.
    CropNotEmpty,
    /// The chick was cold, breathing badly or otherwise not fit to be fed.
    NotFit,
    /// Breeder or vet said so.
    Advised,
    /// It was forgotten or nobody was there.
    NotPossible,
    /// Nobody knows whether it was given.
    NotKnown,
}

/// What two notes of food near to each other are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SameFoodAnswer {
    /// The same food, noted by two people.
    NotedTwice,
    /// One feed, given in parts.
    TwoParts,
    /// Two feeds.
    TwoFeeds,
}

/// How much food is felt in the crop, least first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CropState {
    /// Nothing to be felt; the pouch may hang.
    Flat,
    /// A soft teaspoon, under about 10 % of the last feed.
    Trace,
    /// About a quarter of a full crop.
    Quarter,
    /// Half of a full crop or more.
    HalfOrMore,
}

impl CropState {
    /// Every state, least food first.
    pub const ALL: [Self; 4] = [Self::Flat, Self::Trace, Self::Quarter, Self::HalfOrMore];

    /// Whether it is empty or nearly so: little or nothing is felt.
    pub fn is_nearly_empty(self) -> bool {
        self <= Self::Trace
    }
}

/// What the crop feels like.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CropFeel {
    /// Like a soft balloon of soup.
    Soft,
    /// Doughy or hard.
    Firm,
    /// Nobody noted it.
    NotNoted,
}

/// What droppings look like.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Droppings {
    /// Formed, with white urates; as usual for this chick.
    Normal,
    /// Small, dark or few.
    SmallOrFew,
    /// Much clear water around a formed stool: more urine than usual.
    Watery,
    /// Green or black all over, which older notes did not tell apart.
    GreenOrBlack,
    /// Undigested food in them.
    Undigested,
    /// Red without red food: blood.
    Bloody,
    /// Emerald green with little stool.
    EmeraldGreen,
    /// Black-green, sticky, like tar.
    TarBlack,
    /// The white part is yellow-green.
    LimeUrates,
    /// Very wet after fruit or a fright, the stool still formed.
    WetAfterFruit,
    /// Red after beet, berries or dyed pellets.
    RedAfterFood,
    /// The stool itself is liquid, without form: diarrhoea.
    LiquidStool,
}

impl Droppings {
    /// Every look that is offered, the usual one first. [`Self::GreenOrBlack`] is only read; red ones are
    /// offered as [`Self::Bloody`], and what was eaten tells [`Self::RedAfterFood`].
    pub const OFFERED: [Self; 10] = [
        Self::Normal,
        Self::SmallOrFew,
        Self::Watery,
        Self::WetAfterFruit,
        Self::LiquidStool,
        Self::EmeraldGreen,
        Self::TarBlack,
        Self::LimeUrates,
        Self::Undigested,
        Self::Bloody,
    ];

    /// Every look.
    pub const ALL: [Self; 12] = [
        Self::Normal,
        Self::SmallOrFew,
        Self::Watery,
        Self::GreenOrBlack,
        Self::Undigested,
        Self::Bloody,
        Self::EmeraldGreen,
        Self::TarBlack,
        Self::LimeUrates,
        Self::WetAfterFruit,
        Self::RedAfterFood,
        Self::LiquidStool,
    ];

    /// Whether the look needs the question what was eaten.
    pub fn asks_for_red_food(self) -> bool {
        self == Self::Bloody
    }

    /// The look when red food was eaten in the last 24 h, or not, or nobody knows: only a yes explains red.
    #[must_use]
    pub fn with_red_food(self, was_eaten: bool) -> Self {
        if self.asks_for_red_food() && was_eaten {
            Self::RedAfterFood
        } else {
            self
        }
    }

    /// Whether what the chick ate explains it.
    pub const fn is_usual(self) -> bool {
        match self {
            Self::Normal | Self::WetAfterFruit | Self::RedAfterFood => true,
            Self::SmallOrFew
            | Self::Watery
            | Self::GreenOrBlack
            | Self::Undigested
            | Self::Bloody
            | Self::EmeraldGreen
            | Self::TarBlack
            | Self::LimeUrates
            | Self::LiquidStool => false,
        }
    }
}

/// Which paper droppings were counted on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Paper {
    /// That of the waking day: laid in the morning, counted at bedtime or when it was changed.
    Day,
    /// That of the night: counted in the morning.
    Night,
}

impl Paper {
    /// Every one.
    pub const ALL: [Self; 2] = [Self::Day, Self::Night];

    /// Until then what lies there is of the night or of the day before. Ours.
    pub const MORNING_ENDS: WallTime = WallTime::from_hour(12);

    /// The one that is mostly counted at this time: the night's in the morning.
    pub fn likely_at(time: WallTime) -> Self {
        if (CARE_DAY_STARTS..Self::MORNING_ENDS).contains(&time) {
            Self::Night
        } else {
            Self::Day
        }
    }
}

/// How much solid food went into the chick, by what was seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SolidsEaten {
    /// Played with it only.
    Played,
    /// Swallowed a little.
    Little,
    /// Ate; solids can be felt in the crop.
    Meal,
}

impl SolidsEaten {
    /// Whether any of it was swallowed.
    pub const fn is_swallowed(self) -> bool {
        match self {
            Self::Little | Self::Meal => true,
            Self::Played => false,
        }
    }
}

/// Who cares for a chick after it was handed over.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Carer {
    /// Its owner, for good.
    Owner,
    /// Its breeder again.
    Breeder,
    /// Somebody for some days.
    Sitter,
    /// A vet's practice, for as long as it is treated there.
    Clinic,
}

/// One thing that happened or was decided.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Change {
    /// The chick is looked after with this plan from here on.
    ChickAdded(Box<CarePlan>),
    /// One part of the plan was set.
    PartSet {
        /// The part.
        part: Box<Part>,
        /// Every set of this part that it was written after; the plan that the chick was added with is
        /// not named.
        replaces: Vec<EntryId>,
        /// On whose side it was written.
        side: Side,
        /// Whether who wrote it cared for the chick then: what a carer sets is in force at once. An owner's
        /// set of a breeder's part without it is asked for, and waits for [`Change::PartAgreed`].
        is_carer: bool,
    },
    /// A carer took what somebody else had set.
    PartTaken {
        /// The sets.
        sets: Vec<EntryId>,
    },
    /// The breeder agrees to what an owner set or asked for in a part of hers: said on her own phone, or on
    /// the telephone and noted by whoever heard it. What was asked for is in force from then on; what was set
    /// before no longer counts as not agreed. Of what adds a chick it says that she wrote the plan.
    PartAgreed {
        /// The sets.
        sets: Vec<EntryId>,
        /// Who said so on the telephone; empty when the breeder noted it herself.
        said_by: String,
    },
    /// The chick arrived in its new home.
    Arrived,
    /// It was weighed.
    Weighed {
        /// The reading.
        weight: Grams,
        /// What the crop held.
        crop: CropAtWeighing,
    },
    /// Food was given.
    Fed {
        /// The planned feed that a person said it is; mostly its time tells.
        counts_as: Option<Slot>,
        /// What went into the chick.
        taken: Millilitres,
        /// What was offered.
        offered: Millilitres,
        /// Temperature at serving, when it was measured.
        served_at: Option<Celsius>,
        /// How it was taken.
        response: Response,
    },
    /// The chick refused what was offered.
    FeedRefused {
        /// The planned feed that a person said it is; mostly its time tells.
        counts_as: Option<Slot>,
        /// What was offered; nothing when nobody noted it.
        offered: Millilitres,
    },
    /// A planned feed was left out. Food that is noted later may still be of it.
    FeedPassedOver {
        /// Which feed of the plan.
        slot: Slot,
        /// Its day of care.
        day: Day,
        /// Why.
        why: WhyPassedOver,
    },
    /// What two notes of food near to each other are.
    SameFood {
        /// Which notes.
        notes: Vec<EntryId>,
        /// What they are.
        answer: SameFoodAnswer,
    },
    /// Somebody looked at the crop.
    CropSeen {
        /// What was seen.
        state: CropState,
        /// What was felt.
        feel: CropFeel,
    },
    /// Somebody looked at the droppings.
    DroppingsSeen {
        /// What was seen.
        look: Droppings,
    },
    /// Somebody counted the droppings since the paper was last changed; about is enough.
    DroppingsCounted {
        /// Which paper.
        paper: Paper,
        /// How many.
        count: u8,
    },
    /// Somebody watched the chick with solid food.
    SolidsSeen {
        /// Which food, in the owner's words.
        what: String,
        /// How much.
        eaten: SolidsEaten,
    },
    /// A sign of trouble was seen.
    SignSeen {
        /// Which one.
        sign: Sign,
    },
    /// A sign is no longer there.
    SignGone {
        /// Which one.
        sign: Sign,
    },
    /// A feed is given up.
    FeedDropped {
        /// Which feed.
        slot: Slot,
        /// Whether the breeder decided it against the criteria.
        by_breeder: bool,
    },
    /// A feed is offered again.
    FeedBroughtBack {
        /// Which feed.
        slot: Slot,
    },
    /// Formula was mixed.
    MixMade {
        /// Dry powder used.
        powder: Grams,
        /// Water used.
        water: Grams,
        /// Fat supplement used.
        fat_supplement: Grams,
    },
    /// A container of powder was opened, or what is left was weighed.
    StockOpened {
        /// Powder in it.
        powder: Grams,
    },
    /// Somebody was rung.
    Called {
        /// Whom.
        whom: Role,
        /// What was agreed.
        agreed: String,
    },
    /// The breeder or a vet said whether it may be fed.
    AdviceNoted {
        /// Who said it.
        who: Role,
        /// What was said, in the words of whoever noted it.
        about: String,
        /// Whether it may be fed.
        may_feed: bool,
        /// How much a feed may hold; `None` for as much as the plan wants.
        ml: Option<Millilitres>,
        /// Until when it holds; `None` until something else is said.
        until: Option<Moment>,
    },
    /// The room was measured.
    RoomSeen {
        /// Its temperature.
        room: Celsius,
    },
    /// It was seen to drink.
    DrinkingSeen,
    /// It counts as grown: somebody said so.
    Grown,
    /// It died.
    Died,
    /// From here on somebody else cares for it.
    HandedOver {
        /// Who that is.
        to: Carer,
        /// What that person or place is called; may be empty.
        name: String,
    },
    /// A chick typed in by its owner and the chick of the breeder's card are the same bird.
    SameChick {
        /// The chick that was typed in.
        typed: ChickId,
        /// The chick of the card, under whose id all is told.
        card: ChickId,
    },
    /// A weight that is to be weighed again counts as it is: nobody weighs it again now.
    WeightStands {
        /// The weighing.
        id: EntryId,
    },
    /// A photo was taken. The picture is kept by its hash and is no part of the entry.
    PhotoTaken(Photo),
    /// Why a vet is to see it, in the words of whoever cares for it; the latest holds.
    VisitReason {
        /// The text; empty when there is no reason any more.
        text: String,
    },
    /// A vet examined it, which a call is not.
    VetSeen {
        /// What the vet said, as noted; may be empty.
        said: String,
    },
    /// An appointment at a vet's; the latest holds.
    VetBooked {
        /// For when, by the clock there.
        on: Lived,
    },
    /// A remark.
    Noted {
        /// The text.
        text: String,
    },
    /// A remark of the breeder's own: it goes into her backup and to nobody else.
    Remarked {
        /// The text.
        text: String,
    },
    /// An earlier entry does not hold.
    Retracted {
        /// Which one.
        id: EntryId,
    },
}

impl Change {
    /// A refusal of which nobody noted how much was offered.
    pub const fn refused(counts_as: Option<Slot>) -> Self {
        let offered = Millilitres::whole(0);
        Self::FeedRefused { counts_as, offered }
    }

    /// The plan with which this change adds a chick.
    pub fn plan(&self) -> Option<&CarePlan> {
        if let Self::ChickAdded(plan) = self {
            Some(plan)
        } else {
            None
        }
    }

    /// The hatch day that this change names.
    fn hatched(&self) -> Option<Day> {
        if let Self::PartSet { part, .. } = self
            && let Part::Chick(chick) = part.as_ref()
        {
            chick.hatched
        } else {
            self.plan().and_then(|plan| plan.hatched)
        }
    }

    /// Whether it tells how the chick is doing: what only who is with it can note. A plan, a call, a remark
    /// or a handing over may come from anybody.
    pub const fn is_of_care(&self) -> bool {
        match self {
            Self::Arrived
            | Self::Weighed { .. }
            | Self::Fed { .. }
            | Self::FeedRefused { .. }
            | Self::FeedPassedOver { .. }
            | Self::CropSeen { .. }
            | Self::DroppingsSeen { .. }
            | Self::DroppingsCounted { .. }
            | Self::SolidsSeen { .. }
            | Self::SignSeen { .. }
            | Self::SignGone { .. }
            | Self::MixMade { .. }
            | Self::StockOpened { .. }
            | Self::RoomSeen { .. }
            | Self::DrinkingSeen
            | Self::Grown
            | Self::Died
            | Self::WeightStands { .. }
            | Self::PhotoTaken(_)
            | Self::SameFood { .. } => true,
            Self::ChickAdded(_)
            | Self::PartSet { .. }
            | Self::PartTaken { .. }
            | Self::PartAgreed { .. }
            | Self::FeedDropped { .. }
            | Self::FeedBroughtBack { .. }
            | Self::Called { .. }
            | Self::AdviceNoted { .. }
            | Self::HandedOver { .. }
            | Self::SameChick { .. }
            | Self::VisitReason { .. }
            | Self::VetSeen { .. }
            | Self::VetBooked { .. }
            | Self::Noted { .. }
            | Self::Remarked { .. }
            | Self::Retracted { .. } => false,
        }
    }

    /// One change of two that tell the same act, of which each may leave parts of a plan out, or sets that
    /// it was written after; `None` for two acts.
    fn together(&self, other: &Self) -> Option<Self> {
        if let (Self::ChickAdded(plan), Self::ChickAdded(more)) = (self, other) {
            return plan.together(more).map(Box::new).map(Self::ChickAdded);
        }
        let (
            Self::PartSet {
                part,
                replaces,
                side,
                is_carer,
            },
            Self::PartSet {
                part: more,
                replaces: others,
                side: other_side,
                is_carer: is_other_carer,
            },
        ) = (self, other)
        else {
            return None;
        };
        if part.kind() != more.kind() || (side, is_carer) != (other_side, is_other_carer) {
            return None;
        }
        let of = |part: &Part| CarePlan::of_part(part.clone());
        let both = of(part).together(&of(more))?.part(part.kind());
        Some(Self::PartSet {
            part: Box::new(both),
            replaces: set_of(replaces.iter().chain(others).copied())
                .into_iter()
                .collect(),
            side: *side,
            is_carer: *is_carer,
        })
    }

    /// The entry that this change takes back.
    pub fn retracts(&self) -> Option<EntryId> {
        if let Self::Retracted { id } = self {
            Some(*id)
        } else {
            None
        }
    }
}

/// One line of the journal. Ordered by when it happened, then by its id.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Entry {
    /// When it happened.
    pub at: Moment,
    /// Its name.
    pub id: EntryId,
    /// The chick it is about.
    pub chick: ChickId,
    /// When it was typed.
    pub noted_at: Moment,
    /// The wall clock's offset where and when it happened.
    pub offset: Offset,
    /// Who noted it, as that person calls themselves; may be empty.
    pub by: String,
    /// What happened.
    pub change: Change,
}

impl Entry {
    /// The day and wall time at which it happened, as it was lived then.
    pub fn lived(&self) -> Lived {
        self.at.lived(self.offset)
    }

    /// This entry and `other` as one: the same entry, or the same act of which one of the two, or both,
    /// leave parts out ([`CarePlan::together`]). `None` for two entries.
    pub fn together(&self, other: &Self) -> Option<Self> {
        if self == other {
            return Some(self.clone());
        }
        let act = |entry: &Self| {
            (
                entry.at,
                entry.id,
                entry.chick,
                entry.noted_at,
                entry.offset,
            )
        };
        if act(self) != act(other) || self.by != other.by {
            return None;
        }
        Some(Self {
            change: self.change.together(&other.change)?,
            ..self.clone()
        })
    }
}

/// Why an entry is not taken. Data for the form; nothing was changed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Refusal {
    /// It lies more than [`Journal::CLOCK_SLACK_MINUTES`] ahead.
    InTheFuture,
    /// It lies before the chick's hatch day.
    BeforeHatching,
    /// No chick of that id.
    NoSuchChick,
    /// A chick of that id is there already.
    ChickIsThere,
    /// A chick to be joined to a card was not typed in here, or has a card already.
    NotTyped,
    /// No entry of that id to retract.
    NoSuchEntry,
    /// What adds a chick cannot be taken back.
    ChickStays,
    /// A later set of the same part stands; that one is to be undone first.
    PlanIsNewer,
    /// The breeder has to be asked first: [`crate::domain::plan::ask_first`].
    AskTheBreeder,
    /// A weight no chick of any species here has, below 5 g or above 3,000 g.
    WeightOutOfRange,
    /// More than 300 ml in one feed.
    VolumeOutOfRange,
    /// More was taken than was offered.
    MoreTakenThanOffered,
    /// A photo without bytes, or with more than [`MOST_PHOTO_BYTES`].
    PhotoSize,
    /// A text over [`CarePlan::LONG_TEXT`] characters.
    TextTooLong,
    /// The plan has faults.
    Plan(Vec<PlanFault>),
}

/// The set of all entries on this phone.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Journal {
    entries: Vec<Entry>,
}

impl Journal {
    /// How far ahead of the clock an entry may lie, in minutes: clocks of two phones differ.
    pub const CLOCK_SLACK_MINUTES: i64 = 5;

    /// A journal of these entries, in order, each once.
    pub fn from_entries(entries: Vec<Entry>) -> Self {
        Self {
            entries: each_once(entries),
        }
    }

    /// Every entry in order, retracted ones too.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// Whether everything that this entry says is here.
    pub fn holds(&self, entry: &Entry) -> bool {
        match self.entries.binary_search(entry) {
            Ok(_) => true,
            Err(place) => self
                .beside(place)
                .any(|here| here.together(entry).as_ref() == Some(here)),
        }
    }

    /// The entries before and after a place where one would stand.
    fn beside(&self, place: usize) -> impl Iterator<Item = &Entry> {
        let before = place.checked_sub(1);
        let places = before.into_iter().chain([place]);
        places.filter_map(|place| self.entries.get(place))
    }

    /// Whether nothing was ever noted.
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }

    /// Whether an entry lies further ahead of the clock than [`Journal::CLOCK_SLACK_MINUTES`]: the clock
    /// was set back, or was ahead when it was noted.
    pub fn is_ahead_of(&self, now: Moment) -> bool {
        let latest = now.plus_minutes(Self::CLOCK_SLACK_MINUTES);
        self.entries.last().is_some_and(|entry| entry.at > latest)
    }

    /// Adds an entry after checking it against the journal and the clock.
    ///
    /// # Errors
    /// A [`Refusal`]; the journal is then unchanged.
    pub fn append(&mut self, now: Moment, entry: Entry) -> Result<(), Refusal> {
        self.check(now, &entry)?;
        self.insert(entry);
        Ok(())
    }

    /// Adds an entry that was checked when it was first noted.
    pub fn insert(&mut self, entry: Entry) {
        if let Err(place) = self.entries.binary_search(&entry) {
            if self.beside(place).any(|here| here.id == entry.id) {
                self.entries.push(entry);
                self.entries = each_once(std::mem::take(&mut self.entries));
            } else {
                self.entries.insert(place, entry);
            }
        }
    }

    /// Takes every entry of `other` that is not here yet, or not with all its parts; returns how many there
    /// were.
    pub fn join(&mut self, other: &Self) -> usize {
        let is_new = |entry: &&Entry| !self.holds(entry);
        let new: Vec<Entry> = other.entries.iter().filter(is_new).cloned().collect();
        let count = new.len();
        self.entries.extend(new);
        self.entries = each_once(std::mem::take(&mut self.entries));
        count
    }

    /// The ids of all entries that a retraction in force takes back.
    ///
    /// A retraction is in force unless another one in force takes it back, whatever the clocks of the
    /// two say, so the answer depends neither on the order in which entries arrived nor on their
    /// times. Retractions that take each other back in a ring, which no phone writes, are all in force.
    pub fn retracted(&self) -> BTreeSet<EntryId> {
        let mut targets: BTreeMap<EntryId, Vec<EntryId>> = BTreeMap::new();
        for entry in &self.entries {
            if let Some(target) = entry.change.retracts() {
                targets.entry(entry.id).or_default().push(target);
            }
        }
        let mut waiting: BTreeMap<EntryId, usize> = BTreeMap::new();
        waiting.extend(targets.keys().map(|id| (*id, 0)));
        for target in targets.values().flatten() {
            if let Some(count) = waiting.get_mut(target) {
                *count += 1;
            }
        }
        // Those that nothing takes back are settled first, then those whose takers are all settled.
        let mut settled: Vec<EntryId> = waiting
            .iter()
            .filter(|(_, count)| **count == 0)
            .map(|(id, _)| *id)
            .collect();
        let mut dead = BTreeSet::new();
        while let Some(id) = settled.pop() {
            let is_in_force = !dead.contains(&id);
            for target in targets.remove(&id).unwrap_or_default() {
                if is_in_force {
                    dead.insert(target);
                }
                if let Some(count) = waiting.get_mut(&target) {
                    *count = count.saturating_sub(1);
                    if *count == 0 {
                        settled.push(target);
                    }
                }
            }
        }
        dead.extend(targets.into_values().flatten());
        dead
    }

    /// The chicks in the order in which they were added; one that was typed in and has a card stands under
    /// the id of its card.
    pub fn chicks(&self) -> Vec<ChickId> {
        let leading = self.leading(&self.retracted());
        let mut chicks = Vec::new();
        for entry in &self.entries {
            let chick = leading.get(&entry.chick).unwrap_or(&entry.chick);
            if entry.change.plan().is_some() && !chicks.contains(chick) {
                chicks.push(*chick);
            }
        }
        chicks
    }

    /// Every entry of a chick in order, retracted ones too, with those of the typed chick that its card has
    /// taken over.
    pub fn of_chick(&self, chick: ChickId) -> Vec<&Entry> {
        let leading = self.leading(&self.retracted());
        let of = |entry: &Entry| *leading.get(&entry.chick).unwrap_or(&entry.chick);
        let entries = self.entries.iter();
        entries.filter(|entry| of(entry) == chick).collect()
    }

    /// The id under which a chick is told: that of its card where it was typed in first.
    pub fn leading_id(&self, chick: ChickId) -> ChickId {
        let leading = self.leading(&self.retracted());
        leading.get(&chick).copied().unwrap_or(chick)
    }

    /// For each typed chick that is joined to a card: the id of that card.
    ///
    /// Of two cards for one typed chick the first one noted counts, so that the answer is the same in
    /// whatever order entries came in; a chain of joins ends at its first card.
    pub(crate) fn leading(&self, dead: &BTreeSet<EntryId>) -> BTreeMap<ChickId, ChickId> {
        let mut leading: BTreeMap<ChickId, ChickId> = BTreeMap::new();
        for entry in self
            .entries
            .iter()
            .filter(|entry| !dead.contains(&entry.id))
        {
            let Change::SameChick { typed, card } = entry.change else {
                continue;
            };
            let card = leading.get(&card).copied().unwrap_or(card);
            if typed == card || leading.contains_key(&typed) {
                continue;
            }
            for led in leading.values_mut().filter(|led| **led == typed) {
                *led = card;
            }
            leading.insert(typed, card);
        }
        leading
    }

    fn check(&self, now: Moment, entry: &Entry) -> Result<(), Refusal> {
        if entry.at > now.plus_minutes(Self::CLOCK_SLACK_MINUTES) {
            return Err(Refusal::InTheFuture);
        }
        let is_there = |chick| {
            let mut of_chick = self.entries.iter().filter(|entry| entry.chick == chick);
            of_chick.any(|entry| entry.change.plan().is_some())
        };
        match (&entry.change, is_there(entry.chick)) {
            (Change::ChickAdded(_), true) => return Err(Refusal::ChickIsThere),
            (Change::ChickAdded(_), false) | (_, true) => {}
            (_, false) => return Err(Refusal::NoSuchChick),
        }
        if let Change::SameChick { typed, card } = entry.change
            && (typed == card || !is_there(typed) || !is_there(card))
        {
            return Err(Refusal::NoSuchChick);
        }
        if let Change::SameChick { typed, .. } = entry.change {
            self.check_typed(typed)?;
        }
        check_change(&entry.change)?;
        self.check_asked(entry)?;
        if self
            .hatched(entry)
            .is_some_and(|hatched| entry.lived().day < hatched)
        {
            return Err(Refusal::BeforeHatching);
        }
        entry
            .change
            .retracts()
            .map_or(Ok(()), |id| self.check_undo(id))
    }

    /// Whether a chick was typed in and has no card: twins have a card each, and two cards are never joined.
    ///
    /// # Errors
    /// [`Refusal::NotTyped`] when its own card was taken or is its breeder's, when it stands under another
    /// card already, or when a typed chick stands under it.
    pub fn check_typed(&self, chick: ChickId) -> Result<(), Refusal> {
        let dead = self.retracted();
        let leading = self.leading(&dead);
        let is_joined = leading.contains_key(&chick) || leading.values().any(|led| *led == chick);
        let is_card = self.entries.iter().any(|entry| {
            let is_answer = matches!(&entry.change,
                Change::PartTaken { sets } | Change::PartAgreed { sets, .. } if self.adds(chick, sets));
            is_answer && !dead.contains(&entry.id)
        });
        if is_joined || is_card {
            Err(Refusal::NotTyped)
        } else {
            Ok(())
        }
    }

    /// Whether one of these entries adds the chick.
    fn adds(&self, chick: ChickId, sets: &[EntryId]) -> bool {
        let of_chick = self.entries.iter().filter(|entry| entry.chick == chick);
        let mut added = of_chick.filter(|entry| entry.change.plan().is_some());
        added.any(|entry| sets.contains(&entry.id))
    }

    /// Every entry but those of these chicks.
    #[must_use]
    pub fn without(&self, chicks: &BTreeSet<ChickId>) -> Self {
        let kept = self
            .entries
            .iter()
            .filter(|entry| !chicks.contains(&entry.chick));
        Self {
            entries: kept.cloned().collect(),
        }
    }

    /// What could harm the chick is never in force by an owner's word alone, so what was eaten is always
    /// judged against amounts that the breeder gave or agreed to.
    fn check_asked(&self, entry: &Entry) -> Result<(), Refusal> {
        if let Change::PartSet {
            part,
            replaces,
            side: Side::Owner,
            is_carer: true,
        } = &entry.change
            && let Some(plans) = self.plans(entry.chick)
            && !plans.ask_first_after(part, replaces).is_empty()
        {
            return Err(Refusal::AskTheBreeder);
        }
        Ok(())
    }

    /// The earliest hatch day that a plan of the chick of `entry` names, this entry's among them: what is
    /// too early by each of them is refused, whichever plan is in force.
    fn hatched(&self, entry: &Entry) -> Option<Day> {
        let of_chick = self.entries.iter().filter(|one| one.chick == entry.chick);
        of_chick
            .chain([entry])
            .filter_map(|one| one.change.hatched())
            .min()
    }

    /// Whether an entry can be taken back: it is there, it adds no chick, and nothing was set after it.
    ///
    /// # Errors
    /// [`Refusal::NoSuchEntry`], [`Refusal::ChickStays`] or [`Refusal::PlanIsNewer`].
    pub fn check_undo(&self, id: EntryId) -> Result<(), Refusal> {
        let target = self.entries.iter().find(|entry| entry.id == id);
        let target = target.ok_or(Refusal::NoSuchEntry)?;
        let takes_over = |sets: &[EntryId]| {
            let is_added =
                |entry: &Entry| entry.change.plan().is_some() && sets.contains(&entry.id);
            self.entries.iter().any(is_added)
        };
        if target.change.plan().is_some()
            || matches!(&target.change, Change::PartTaken { sets } if takes_over(sets))
        {
            return Err(Refusal::ChickStays);
        }
        if !matches!(target.change, Change::PartSet { .. }) {
            return Ok(());
        }
        let dead = self.retracted();
        let is_newer = |entry: &Entry| {
            let Change::PartSet { replaces, .. } = &entry.change else {
                return false;
            };
            replaces.contains(&id) && !dead.contains(&entry.id)
        };
        if self.entries.iter().any(is_newer) {
            Err(Refusal::PlanIsNewer)
        } else {
            Ok(())
        }
    }
}

/// Entries in the order of a journal, each once.
fn each_once(entries: Vec<Entry>) -> Vec<Entry> {
    let mut entries = sorted(entries);
    entries.dedup_by(|next, kept| {
        let both = (next.id == kept.id).then(|| kept.together(next)).flatten();
        let is_one = both.is_some();
        if let Some(both) = both {
            *kept = both;
        }
        is_one
    });
    entries
}

/// Lowest weight taken for a chick. Ours: below any part-weaned chick of the table.
const LEAST_WEIGHT: Grams = Grams::whole(5);
/// Highest weight taken for a chick. Ours: above any bird of the table with a full crop.
const MOST_WEIGHT: Grams = Grams::whole(3_000);
/// Highest volume taken for one feed. Ours: twice the ceiling of the largest species.
const MOST_VOLUME: Millilitres = Millilitres::whole(300);

/// Checks what a change says by itself, without journal or clock.
///
/// # Errors
/// [`Refusal::WeightOutOfRange`], [`Refusal::VolumeOutOfRange`], [`Refusal::MoreTakenThanOffered`],
/// [`Refusal::TextTooLong`] or [`Refusal::Plan`].
pub fn check_change(change: &Change) -> Result<(), Refusal> {
    match change {
        Change::ChickAdded(plan) => check_plan(plan),
        Change::PartSet { part, .. } => {
            // A default has no fault, so what is found is the part's own.
            check_plan(&CarePlan::of_part(part.as_ref().clone()))
        }
        Change::Weighed { weight, .. } if !(LEAST_WEIGHT..=MOST_WEIGHT).contains(weight) => {
            Err(Refusal::WeightOutOfRange)
        }
        Change::Fed { taken, offered, .. } if *taken > MOST_VOLUME || *offered > MOST_VOLUME => {
            Err(Refusal::VolumeOutOfRange)
        }
        Change::FeedRefused { offered, .. } if *offered > MOST_VOLUME => {
            Err(Refusal::VolumeOutOfRange)
        }
        Change::Fed { taken, offered, .. } if taken > offered => Err(Refusal::MoreTakenThanOffered),
        Change::AdviceNoted { ml: Some(ml), .. } if *ml > MOST_VOLUME => {
            Err(Refusal::VolumeOutOfRange)
        }
        Change::PhotoTaken(photo) if !(1..=MOST_PHOTO_BYTES).contains(&photo.bytes) => {
            Err(Refusal::PhotoSize)
        }
        Change::Noted { text }
        | Change::Remarked { text }
        | Change::VisitReason { text }
        | Change::VetSeen { said: text }
        | Change::AdviceNoted { about: text, .. }
        | Change::Called { agreed: text, .. }
        | Change::SolidsSeen { what: text, .. }
        | Change::HandedOver { name: text, .. }
        | Change::PartAgreed { said_by: text, .. }
            if text.chars().count() > CarePlan::LONG_TEXT =>
        {
            Err(Refusal::TextTooLong)
        }
        Change::Arrived
        | Change::PartTaken { .. }
        | Change::PartAgreed { .. }
        | Change::Weighed { .. }
        | Change::Fed { .. }
        | Change::FeedRefused { .. }
        | Change::FeedPassedOver { .. }
        | Change::SameFood { .. }
        | Change::CropSeen { .. }
        | Change::DroppingsSeen { .. }
        | Change::DroppingsCounted { .. }
        | Change::SolidsSeen { .. }
        | Change::SignSeen { .. }
        | Change::SignGone { .. }
        | Change::FeedDropped { .. }
        | Change::FeedBroughtBack { .. }
        | Change::MixMade { .. }
        | Change::StockOpened { .. }
        | Change::Called { .. }
        | Change::AdviceNoted { .. }
        | Change::RoomSeen { .. }
        | Change::DrinkingSeen
        | Change::Grown
        | Change::Died
        | Change::HandedOver { .. }
        | Change::SameChick { .. }
        | Change::WeightStands { .. }
        | Change::PhotoTaken(_)
        | Change::VisitReason { .. }
        | Change::VetSeen { .. }
        | Change::VetBooked { .. }
        | Change::Noted { .. }
        | Change::Remarked { .. }
        | Change::Retracted { .. } => Ok(()),
    }
}

fn check_plan(plan: &CarePlan) -> Result<(), Refusal> {
    let faults = plan.faults();
    if faults.is_empty() {
        Ok(())
    } else {
        Err(Refusal::Plan(faults))
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use crate::domain::journal::entries::*;
    use crate::domain::plan::species::Species;

    const CHICK: ChickId = ChickId([7; 12]);

    fn now() -> Moment {
        Moment::from_seconds(1_790_000_000)
    }

    fn entry(number: u8, at: Moment, change: Change) -> Entry {
        Entry {
            at,
            id: EntryId([number; 12]),
            chick: CHICK,
            noted_at: at,
            offset: Offset::UTC,
            by: String::new(),
            change,
        }
    }

    fn weighed(grams: i32) -> Change {
        Change::Weighed {
            weight: Grams::whole(grams),
            crop: CropAtWeighing::Empty,
        }
    }

    fn with_chick() -> Journal {
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        plan.hatched = Some(now().lived(Offset::UTC).day.plus(-90));
        let mut journal = Journal::default();
        let added = entry(
            1,
            now().plus_minutes(-60),
            Change::ChickAdded(Box::new(plan)),
        );
        journal.append(now(), added).unwrap();
        journal
    }

    #[test]
    fn a_journal_more_than_five_minutes_ahead_of_the_clock_is_seen() {
        let journal = Journal::from_entries(vec![entry(2, now(), weighed(1_000))]);
        assert!(!Journal::default().is_ahead_of(now()));
        assert!(!journal.is_ahead_of(now()));
        assert!(!journal.is_ahead_of(now().plus_minutes(-5)));
        assert!(journal.is_ahead_of(now().plus_minutes(-6)));
    }

    #[test]
    fn an_entry_more_than_five_minutes_ahead_is_refused() {
        let mut journal = with_chick();
        let ahead = |minutes| entry(2, now().plus_minutes(minutes), weighed(1_000));
        assert_eq!(journal.append(now(), ahead(6)), Err(Refusal::InTheFuture));
        assert_eq!(journal.entries().len(), 1);
        assert_eq!(journal.append(now(), ahead(5)), Ok(()));
    }

    #[test]
    fn an_entry_before_the_hatch_day_is_refused() {
        let mut journal = with_chick();
        let early = entry(2, now().plus_minutes(-91 * 1_440), weighed(40));
        assert_eq!(journal.append(now(), early), Err(Refusal::BeforeHatching));
    }

    #[test]
    fn only_a_yes_to_red_food_explains_red() {
        assert_eq!(
            Droppings::Bloody.with_red_food(true),
            Droppings::RedAfterFood
        );
        assert_eq!(Droppings::Bloody.with_red_food(false), Droppings::Bloody);
        for look in Droppings::OFFERED {
            let is_red = look.asks_for_red_food();
            assert_eq!(is_red, look == Droppings::Bloody);
            assert_eq!(look.with_red_food(true) == look, !is_red);
        }
        assert!(!Droppings::OFFERED.contains(&Droppings::RedAfterFood));
    }

    #[test]
    fn the_paper_of_the_night_is_the_likely_one_in_the_morning() {
        let likely = |hour, minute| Paper::likely_at(WallTime::new(hour, minute).unwrap());
        assert_eq!(likely(7, 0), Paper::Night);
        assert_eq!(likely(11, 59), Paper::Night);
        assert_eq!(likely(12, 0), Paper::Day);
        assert_eq!(likely(22, 30), Paper::Day);
        // A late bedtime belongs to the day before.
        assert_eq!(likely(0, 30), Paper::Day);
    }

    #[test]
    fn weights_are_taken_from_5_to_3000_g() {
        for (grams, is_taken) in [
            (0, false),
            (4, false),
            (5, true),
            (3_000, true),
            (3_001, false),
            (10_120, false),
        ] {
            let answer = with_chick().append(now(), entry(2, now(), weighed(grams)));
            assert_eq!(answer.is_ok(), is_taken, "{grams} g");
        }
    }

    #[test]
    fn more_taken_than_offered_is_refused() {
        let fed = |taken, offered| Change::Fed {
            counts_as: None,
            taken: Millilitres::whole(taken),
            offered: Millilitres::whole(offered),
            served_at: None,
            response: Response::NotNoted,
        };
        assert_eq!(
            with_chick().append(now(), entry(2, now(), fed(61, 60))),
            Err(Refusal::MoreTakenThanOffered)
        );
        assert_eq!(
            with_chick().append(now(), entry(2, now(), fed(60, 60))),
            Ok(())
        );
        assert_eq!(
            with_chick().append(now(), entry(2, now(), fed(301, 301))),
            Err(Refusal::VolumeOutOfRange)
        );
    }

    #[test]
    fn an_entry_for_an_unknown_chick_is_refused() {
        let answer = Journal::default().append(now(), entry(2, now(), weighed(1_000)));
        assert_eq!(answer, Err(Refusal::NoSuchChick));
        let again = entry(
            3,
            now(),
            Change::ChickAdded(Box::new(CarePlan::default_for(Species::ScarletMacaw))),
        );
        assert_eq!(
            with_chick().append(now(), again),
            Err(Refusal::ChickIsThere)
        );
    }

    #[test]
    fn a_retraction_taken_back_brings_the_entry_back() {
        let mut journal = with_chick();
        journal
            .append(now(), entry(2, now(), weighed(1_000)))
            .unwrap();
        journal
            .append(
                now(),
                entry(
                    3,
                    now(),
                    Change::Retracted {
                        id: EntryId([2; 12]),
                    },
                ),
            )
            .unwrap();
        assert!(journal.retracted().contains(&EntryId([2; 12])));
        journal
            .append(
                now(),
                entry(
                    4,
                    now(),
                    Change::Retracted {
                        id: EntryId([3; 12]),
                    },
                ),
            )
            .unwrap();
        assert!(!journal.retracted().contains(&EntryId([2; 12])));
    }

    #[test]
    fn undo_and_undo_again_in_the_same_second_leave_the_entry_whichever_way_the_ids_fall() {
        for (first, second) in [(3, 4), (4, 3)] {
            let mut journal = with_chick();
            journal
                .append(now(), entry(2, now(), weighed(1_000)))
                .unwrap();
            let undo = Change::Retracted {
                id: EntryId([2; 12]),
            };
            journal.append(now(), entry(first, now(), undo)).unwrap();
            let again = Change::Retracted {
                id: EntryId([first; 12]),
            };
            journal.append(now(), entry(second, now(), again)).unwrap();
            assert!(
                !journal.retracted().contains(&EntryId([2; 12])),
                "{first} {second}"
            );
        }
    }

    #[test]
    fn retractions_in_a_ring_end_and_take_each_other_back() {
        let ring = |number: u8, target: u8| {
            entry(
                number,
                now(),
                Change::Retracted {
                    id: EntryId([target; 12]),
                },
            )
        };
        let journal = Journal::from_entries(vec![ring(3, 4), ring(4, 3)]);
        assert_eq!(
            journal.retracted(),
            [EntryId([3; 12]), EntryId([4; 12])].into()
        );
    }

    #[test]
    fn a_day_lived_in_another_zone_stays_that_day() {
        let mut late = entry(
            2,
            Day::from_date(2026, 11, 2).map(midnight).unwrap(),
            weighed(1_000),
        );
        late.offset = Offset::from_minutes(-480);
        assert_eq!(late.lived().day.date(), (2026, 11, 1));
    }

    fn midnight(day: Day) -> Moment {
        Moment::from_seconds(i64::from(day.number()) * 86_400)
    }

    prop_compose! {
        fn any_entries()(parts in prop::collection::vec((0_i64..500, 0_u8..40, 0_u8..4, 5_i32..2_000), 0..40)) -> Journal {
            let entries = parts.into_iter().map(|(minutes, number, kind, grams)| {
                let change = match kind {
                    0 => Change::Retracted { id: EntryId([number / 2; 12]) },
                    1 => Change::Noted { text: format!("note {number}") },
                    _ => weighed(grams),
                };
                entry(number, now().plus_minutes(-minutes), change)
            });
            Journal::from_entries(entries.collect())
        }
    }

    proptest! {
        #[test]
        fn joining_is_union(first in any_entries(), second in any_entries(), third in any_entries()) {
            let joined = |left: &Journal, right: &Journal| {
                let mut sum = left.clone();
                sum.join(right);
                sum
            };
            prop_assert_eq!(joined(&first, &second), joined(&second, &first));
            prop_assert_eq!(
                joined(&joined(&first, &second), &third),
                joined(&first, &joined(&second, &third))
            );
            prop_assert_eq!(joined(&first, &first), first.clone());
            prop_assert_eq!(joined(&first, &second).retracted(), joined(&second, &first).retracted());
        }

        #[test]
        fn inserting_one_by_one_in_any_order_gives_the_same_journal(journal in any_entries(), turn in 0_usize..40) {
            let mut entries = journal.entries().to_vec();
            let middle = turn.min(entries.len());
            entries.rotate_left(middle);
            let mut again = Journal::default();
            for entry in entries {
                again.insert(entry);
            }
            prop_assert_eq!(again, journal);
        }
    }
}

//! The care plan: the breeder's numbers for one chick.

use std::collections::{BTreeMap, BTreeSet};

use crate::domain::plan::species::Species;
use crate::domain::plan::topic::Topic;
use crate::domain::quantity::order::{set_of, sorted};
use crate::domain::quantity::units::{Celsius, Grams, Millilitres, Percent};
use crate::domain::time::moment::{Day, Moment, Offset, WallTime};

/// A feed of the day by its place in the day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Slot {
    /// The first feed of a chick on five or six feeds.
    EarlyMorning,
    /// The morning feed.
    Morning,
    /// The midday feed.
    Midday,
    /// The afternoon feed.
    Afternoon,
    /// The evening feed.
    Evening,
    /// The last feed before the night.
    Bedtime,
}

impl Slot {
    /// Every slot in the order of the day.
    pub const ALL: [Self; 6] = [
        Self::EarlyMorning,
        Self::Morning,
        Self::Midday,
        Self::Afternoon,
        Self::Evening,
        Self::Bedtime,
    ];

    /// The order in which feeds are given up unless the breeder says otherwise: from the middle of
    /// the day outwards, bedtime last.
    ///
    /// Common practice of the trade; one rescue protocol keeps the bedtime feed too (Duerr & Gage
    /// 2020, p. 596).
    pub const DROP_ORDER: [Self; 6] = [
        Self::Midday,
        Self::Afternoon,
        Self::EarlyMorning,
        Self::Evening,
        Self::Morning,
        Self::Bedtime,
    ];
}

/// One feed of the day in the plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PlannedFeed {
    /// Which feed of the day.
    pub slot: Slot,
    /// When, on the wall clock.
    pub time: WallTime,
    /// How much.
    pub volume: Millilitres,
}

/// The longest time from one of these feeds to the next, minutes, round the clock: a day for a single one;
/// `None` without a feed.
pub fn longest_gap_minutes(feeds: &[PlannedFeed]) -> Option<i64> {
    let times = feeds.iter().map(|feed| i64::from(feed.time.minutes()));
    let times = sorted(times.collect::<Vec<i64>>());
    let next_day = times.first().map(|first| first + 24 * 60);
    let nexts = times.iter().copied().skip(1).chain(next_day);
    times
        .iter()
        .zip(nexts)
        .map(|(time, next)| next - time)
        .max()
}

/// The weight that later weights are judged against.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Reference {
    /// Empty-crop weight.
    pub weight: Grams,
    /// The day it was weighed.
    pub day: Day,
}

/// What the powder's label says, per 100 g.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PowderLabel {
    /// Metabolisable energy, kcal.
    pub energy_kcal: u16,
    /// Fat.
    pub fat: Percent,
    /// Protein.
    pub protein: Percent,
}

/// What formula is given with. Tubes and needles are left out: a swallowed tube is the commonest reason for
/// opening a chick's crop (MSD Veterinary Manual, older page); they are for trained hands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Tool {
    /// A feeding syringe of the given size.
    Syringe,
    /// A spoon.
    Spoon,
    /// A spoon with its sides bent up.
    BentSpoon,
}

impl Tool {
    /// Every tool.
    pub const ALL: [Self; 3] = [Self::Syringe, Self::Spoon, Self::BentSpoon];
}

/// Whom a number reaches.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Role {
    /// The breeder who reared the chick.
    Breeder,
    /// The avian vet who sees it.
    AvianVet,
    /// A vet who is there at night.
    EmergencyVet,
}

/// A person to ring.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Contact {
    /// What for.
    pub role: Role,
    /// Name as written by the breeder or owner.
    pub name: String,
    /// Telephone number as written; kept as digits with an optional leading plus.
    pub number: String,
}

/// How feed times move from the breeder's clock to the owner's.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ClockShift {
    /// The plan's times are the owner's wall times from the day of arrival.
    AtOnce,
    /// By at most 60 minutes a day.
    Gradual,
}

/// The way from the breeder to the new home.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Journey {
    /// When the chick leaves, with its last feed before.
    pub left: Moment,
    /// When it should arrive.
    pub expected: Moment,
    /// The breeder's offset from UTC.
    pub breeder_offset: Offset,
    /// How feed times move.
    pub shift: ClockShift,
    /// The last feed before it leaves, and how much; `None` when nobody said.
    pub last_fed: Option<(Moment, Millilitres)>,
}

/// A part of the plan that can still be a default.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PlanField {
    /// Times and volumes of the feeds.
    Feeds,
    /// Share of powder in the mix.
    PowderShare,
    /// Serving window.
    ServingWindow,
    /// Loss limit.
    LossLimit,
    /// Order in which feeds are dropped.
    DropOrder,
    /// Settle-in days.
    SettleIn,
    /// Days between two drops.
    WaitingDays,
    /// Room temperature.
    Room,
    /// What formula is given with.
    Tool,
    /// Water to mix with.
    MixingWater,
}

impl PlanField {
    /// Every field that has a default.
    pub const ALL: [Self; 10] = [
        Self::Feeds,
        Self::PowderShare,
        Self::ServingWindow,
        Self::LossLimit,
        Self::DropOrder,
        Self::SettleIn,
        Self::WaitingDays,
        Self::Room,
        Self::Tool,
        Self::MixingWater,
    ];
}

/// What the breeder hands over for one chick.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct CarePlan {
    /// The species.
    pub species: Species,
    /// The chick's name.
    pub name: String,
    /// Ring or chip number.
    pub ring: String,
    /// The day it hatched, when known.
    pub hatched: Option<Day>,
    /// Handover weight.
    pub reference: Option<Reference>,
    /// Highest weight so far, as the breeder weighed it.
    pub peak: Option<Reference>,
    /// The weight it should come to, or its parents'.
    pub target: Option<Grams>,
    /// Step of the scale at home.
    pub scale_step: Grams,
    /// Feeds in the order of the day.
    pub feeds: Vec<PlannedFeed>,
    /// Shortest gap between two feeds, minutes, when the breeder gives one.
    pub shortest_gap_minutes: Option<u16>,
    /// Minutes after a refusal at which the feed is offered again, rising.
    pub retries_minutes: Vec<u16>,
    /// Powder as a share of the mix by mass.
    pub powder_fraction: Percent,
    /// Peanut butter or other fat supplement in 100 ml of mix.
    pub fat_supplement_per_100_ml: Grams,
    /// The powder's label, when known.
    pub powder_label: Option<PowderLabel>,
    /// Powder in ten level spoons, weighed once.
    pub ten_spoons: Option<Grams>,
    /// How warm the water is that the powder is stirred into: hotter than the mix is served.
    pub mixing_water: Celsius,
    /// Lowest temperature to serve at.
    pub serve_from: Celsius,
    /// Highest temperature to serve at.
    pub serve_to: Celsius,
    /// What formula is given with.
    pub tool: Tool,
    /// Nominal size of the syringe.
    pub syringe: Millilitres,
    /// Loss against the handover weight at which the breeder wants a call.
    pub loss_limit: Percent,
    /// Order in which feeds are dropped, first to go first.
    pub drop_order: Vec<Slot>,
    /// Days after arrival without any drop.
    pub settle_in_days: u8,
    /// Days between two drops.
    pub waiting_days: u8,
    /// Whether the breeder wants to be asked before any drop.
    pub ask_before_drop: bool,
    /// Lowest room temperature.
    pub room_from: Celsius,
    /// Highest room temperature.
    pub room_to: Celsius,
    /// The way to the new home.
    pub journey: Option<Journey>,
    /// Whom to ring.
    pub contacts: Vec<Contact>,
    /// When the breeder can be rung, as written.
    pub breeder_hours: String,
    /// Days between two reports, when the breeder wants others than usual.
    pub report_days: Option<u8>,
    /// The owner's own name.
    pub owner_name: String,
    /// The owner's own number.
    pub owner_number: String,
    /// Solid foods on offer.
    pub solids: String,
    /// Anything else, in the breeder's words: for every chick.
    pub note: String,
    /// The same for this chick only.
    pub note_for_chick: String,
    /// What is said about each topic; never an empty text.
    pub said: BTreeMap<Topic, String>,
    /// Fields that still hold a default which nobody has confirmed.
    pub unconfirmed: BTreeSet<PlanField>,
}

impl CarePlan {
    /// Longest text of a short field (name, ring, contact), in characters.
    pub const SHORT_TEXT: usize = 60;
    /// Longest text of a long field (solids, note), in characters.
    pub const LONG_TEXT: usize = 1_000;
    /// Most feeds in a day.
    pub const MOST_FEEDS: usize = 6;
    /// Most contacts.
    pub const MOST_CONTACTS: usize = 6;
    /// Minutes after a refusal at which a feed is offered again, unless the breeder says otherwise.
    /// Ours.
    pub const RETRIES_MINUTES: [u16; 2] = [45, 150];
    /// Most retries of one feed.
    pub const MOST_RETRIES: usize = 4;
    /// Longest gap or wait for a retry, minutes: a day.
    pub const LONGEST_WAIT_MINUTES: u16 = 1_440;
    /// Low end of a plan's room, 24 °C. Source: 75 to 80 °F for feathered chicks, Watchbird, Parrot
    /// pediatrics.
    pub const ROOM_FROM: Celsius = Celsius::whole(24);
    /// High end of a plan's room, 27 °C. Same source.
    pub const ROOM_TO: Celsius = Celsius::whole(27);

    /// Water to mix with unless the breeder says otherwise, 44 °C: a mix of 25 % starts at about 41 °C and
    /// cools into the window. Source: breeders mix at 43 to 49 °C and let it cool; common practice.
    pub const MIXING_WATER: Celsius = Celsius::whole(44);
    /// Hottest water that a plan may mix with, 50 °C. Ours: a mix of 30 % would start at 45 °C.
    pub const HOTTEST_WATER: Celsius = Celsius::whole(50);
    /// Where a plan's serving window lies, 37 to 41 °C. Source: vets' and breeders' sheets serve at 38 to
    /// 41 °C; 37 °C is ours, for a breeder who serves cooler.
    pub const SERVE_WITHIN: (Celsius, Celsius) = (Celsius::whole(37), Celsius::whole(41));
    /// The window of a new plan, 39.0 to 40.5 °C. Source: *Vet Times* 18 Feb 2019, 39 to 41 °C.
    pub const SERVE_USUALLY: (Celsius, Celsius) = (Celsius::whole(39), Celsius::tenths_held(405));

    /// What is said about a topic; empty for nothing.
    pub fn said(&self, topic: Topic) -> &str {
        self.said.get(&topic).map_or("", String::as_str)
    }

    /// Says something about a topic; nothing but spaces takes back what was said.
    pub fn say(&mut self, topic: Topic, text: &str) {
        if text.trim().is_empty() {
            self.said.remove(&topic);
        } else {
            self.said.insert(topic, text.to_owned());
        }
    }

    /// A plan of defaults for a feathered, part-weaned chick of `species`, all unconfirmed.
    ///
    /// Feeds: three a day of 8 % of the mean adult mass, rounded down to 5 ml and held below the
    /// feed ceiling. Standing: times and share are ours within common practice (9 to 12 weeks: two
    /// to three feeds of 8 to 10 % of body weight, 25 % powder); the 10 % loss limit is the one
    /// published figure (Duerr & Gage 2020, p. 599).
    pub fn default_for(species: Species) -> Self {
        let profile = species.profile();
        let usual_tenth_ml = profile.adult.value.tenths() * 8 / 100;
        let ceiling = profile
            .feed_ceiling
            .map_or(Millilitres::HIGH, |ceiling| ceiling.value.tenths());
        let volume = Millilitres::tenths_held((usual_tenth_ml / 50 * 50).clamp(10, ceiling));
        let feed = |slot, hour| PlannedFeed {
            slot,
            time: WallTime::from_minutes(hour * 60),
            volume,
        };
        let feeds = vec![
            feed(Slot::Morning, 7),
            feed(Slot::Midday, 14),
            feed(Slot::Bedtime, 21),
        ];
        Self {
            species,
            name: String::new(),
            ring: String::new(),
            hatched: None,
            reference: None,
            peak: None,
            target: None,
            scale_step: Grams::whole(1),
            feeds,
            shortest_gap_minutes: None,
            retries_minutes: Self::RETRIES_MINUTES.to_vec(),
            powder_fraction: Percent::whole(25),
            fat_supplement_per_100_ml: Grams::whole(0),
            powder_label: None,
            ten_spoons: None,
            mixing_water: Self::MIXING_WATER,
            serve_from: Self::SERVE_USUALLY.0,
            serve_to: Self::SERVE_USUALLY.1,
            tool: Tool::Syringe,
            syringe: Millilitres::whole(30),
            loss_limit: Percent::whole(10),
            drop_order: vec![Slot::Midday, Slot::Morning, Slot::Bedtime],
            settle_in_days: 7,
            waiting_days: 5,
            ask_before_drop: false,
            room_from: Self::ROOM_FROM,
            room_to: Self::ROOM_TO,
            journey: None,
            contacts: Vec::new(),
            breeder_hours: String::new(),
            report_days: None,
            owner_name: String::new(),
            owner_number: String::new(),
            solids: String::new(),
            note: String::new(),
            note_for_chick: String::new(),
            said: BTreeMap::new(),
            unconfirmed: PlanField::ALL.into(),
        }
    }

    /// Fills what is empty here from another plan of the same bird: what only its owner could type.
    pub fn fill_from(&mut self, other: &Self) {
        if self.name.is_empty() {
            self.name.clone_from(&other.name);
        }
        self.hatched = self.hatched.or(other.hatched);
        self.reference = self.reference.or(other.reference);
        self.ten_spoons = self.ten_spoons.or(other.ten_spoons);
        for contact in &other.contacts {
            let is_new = self.contacts.iter().all(|known| known.role != contact.role);
            if is_new && self.contacts.len() < Self::MOST_CONTACTS {
                self.contacts.push(contact.clone());
            }
        }
    }

    /// The planned feed of a slot.
    pub fn feed(&self, slot: Slot) -> Option<&PlannedFeed> {
        self.feeds.iter().find(|feed| feed.slot == slot)
    }

    /// The first contact of a role that has a number.
    pub fn contact(&self, role: Role) -> Option<&Contact> {
        self.contacts_with_number(role).next()
    }

    /// The contacts of a role that have a number, first to be rung first.
    pub fn contacts_with_number(&self, role: Role) -> impl Iterator<Item = &Contact> {
        let contacts = self.contacts.iter();
        contacts.filter(move |contact| contact.role == role && !contact.number.is_empty())
    }

    /// Changes the feeds. The order in which they go stays; feeds that are new go last of all, by
    /// [`Slot::DROP_ORDER`].
    pub fn set_feeds(&mut self, feeds: Vec<PlannedFeed>) {
        self.feeds = feeds;
        let feeds = &self.feeds;
        let is_there = |slot: &Slot| feeds.iter().any(|feed| feed.slot == *slot);
        self.drop_order.retain(is_there);
        for slot in Slot::DROP_ORDER.into_iter().filter(is_there) {
            if !self.drop_order.contains(&slot) {
                self.drop_order.push(slot);
            }
        }
    }

    /// Whether somebody said when and how much is fed. A chick whose feeds nobody named is not one that needs none.
    pub fn are_feeds_known(&self) -> bool {
        !self.feeds.is_empty() || !self.unconfirmed.contains(&PlanField::Feeds)
    }

    /// Minutes from the last feed of a day to the first of the next; `None` without a feed.
    pub fn night_minutes(&self) -> Option<i64> {
        let (first, last) = (self.feeds.first()?, self.feeds.last()?);
        Some(i64::from(
            1_440 + first.time.care_minutes() - last.time.care_minutes(),
        ))
    }

    /// Loss limits that a plan may set, in tenths of a per cent: 3 to 15 %, where the vet's levels begin. Ours.
    pub const LOSS_LIMITS: std::ops::RangeInclusive<i32> = 30..=150;

    /// The loss limit that is in force: a plan of before may name a smaller or a larger one.
    pub fn loss_limit_in_force(&self) -> Percent {
        let (least, most) = (*Self::LOSS_LIMITS.start(), *Self::LOSS_LIMITS.end());
        Percent::tenths_held(self.loss_limit.tenths().clamp(least, most))
    }

    /// A serving window of a plan of before, held within [`Self::SERVE_WITHIN`]; the usual one where
    /// nothing of it lies there.
    pub fn serving_held(from: Celsius, to: Celsius) -> (Celsius, Celsius) {
        let (least, most) = Self::SERVE_WITHIN;
        let held = (from.clamp(least, most), to.clamp(least, most));
        if from < to && held.0 == held.1 {
            return Self::SERVE_USUALLY;
        }
        held
    }

    /// What is wrong with this plan; empty when it can be taken.
    ///
    /// Checks what a form or a received card may get wrong: every value is in its own range by type.
    pub fn faults(&self) -> Vec<PlanFault> {
        let mut faults = Vec::new();
        let is_long = |text: &str, limit: usize| text.chars().count() > limit;
        if self.feeds.len() > Self::MOST_FEEDS {
            faults.push(PlanFault::TooManyFeeds);
        }
        let slots = set_of(self.feeds.iter().map(|feed| feed.slot));
        if slots.len() != self.feeds.len() {
            faults.push(PlanFault::SlotTwice);
        }
        let slots_rise = self
            .feeds
            .is_sorted_by(|earlier, later| earlier.slot <= later.slot);
        let times_rise = self
            .feeds
            .is_sorted_by(|earlier, later| earlier.time.care_minutes() < later.time.care_minutes());
        if !slots_rise || !times_rise {
            faults.push(PlanFault::FeedsOutOfOrder);
        }
        if self
            .feeds
            .iter()
            .any(|feed| feed.volume.tenths() < 5 || feed.volume.tenths() > 3_000)
        {
            faults.push(PlanFault::FeedVolume);
        }
        if self.serve_from >= self.serve_to {
            faults.push(PlanFault::WindowUpsideDown);
        }
        if self.serve_from < Self::SERVE_WITHIN.0 || Self::SERVE_WITHIN.1 < self.serve_to {
            faults.push(PlanFault::WindowOutside);
        }
        if Self::HOTTEST_WATER < self.mixing_water {
            faults.push(PlanFault::WaterTooHot);
        }
        if self.room_from > self.room_to {
            faults.push(PlanFault::RoomUpsideDown);
        }
        if self.tool == Tool::Syringe && self.syringe.tenths() < 10 {
            faults.push(PlanFault::SyringeTooSmall);
        }
        if self.loss_limit.tenths() < 10 || self.loss_limit.tenths() > 250 {
            faults.push(PlanFault::LossLimit);
        }
        let is_rising = self.retries_minutes.is_sorted_by(|one, next| one < next);
        let mut waits = self
            .retries_minutes
            .iter()
            .chain(&self.shortest_gap_minutes);
        if self.retries_minutes.len() > Self::MOST_RETRIES
            || !is_rising
            || waits.any(|minutes| !(1..=Self::LONGEST_WAIT_MINUTES).contains(minutes))
        {
            faults.push(PlanFault::Waits);
        }
        // Who has only a name so far must not lose it.
        let numbers = self.contacts.iter().map(|contact| &contact.number);
        let is_wrong = |number: &String| !number.is_empty() && !is_phone_number(number);
        if self.contacts.len() > Self::MOST_CONTACTS
            || numbers.chain([&self.owner_number]).any(is_wrong)
        {
            faults.push(PlanFault::ContactNumber);
        }
        let short = [
            &self.name,
            &self.ring,
            &self.breeder_hours,
            &self.owner_name,
        ]
        .into_iter()
        .chain(self.contacts.iter().map(|contact| &contact.name));
        if short
            .into_iter()
            .any(|text| is_long(text, Self::SHORT_TEXT))
            || [&self.solids, &self.note, &self.note_for_chick]
                .into_iter()
                .chain(self.said.values())
                .any(|text| is_long(text, Self::LONG_TEXT))
        {
            faults.push(PlanFault::TextTooLong);
        }
        faults
    }
}

/// What a form or a received card got wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PlanFault {
    /// More than [`CarePlan::MOST_FEEDS`] feeds.
    TooManyFeeds,
    /// Two feeds with the same place in the day.
    SlotTwice,
    /// The feeds do not stand in the order of the day of care, by slot and by time.
    FeedsOutOfOrder,
    /// A feed below 0.5 ml or above 300 ml.
    FeedVolume,
    /// The serving window's low end is not below its high end.
    WindowUpsideDown,
    /// The serving window reaches outside [`CarePlan::SERVE_WITHIN`].
    WindowOutside,
    /// Water to mix with above [`CarePlan::HOTTEST_WATER`].
    WaterTooHot,
    /// The room's low end is above its high end.
    RoomUpsideDown,
    /// A syringe below 1 ml.
    SyringeTooSmall,
    /// A loss limit below 1 % or above 25 %.
    LossLimit,
    /// Too many retries, or not in rising order; one of them or the gap is none or above a day.
    Waits,
    /// Too many contacts, or a number that is no telephone number.
    ContactNumber,
    /// A text longer than its field takes.
    TextTooLong,
}

/// Whether `text` can be rung: 3 to 20 digits, with a leading plus and the usual separators allowed.
///
/// # Examples
/// ```
/// use perchlight::domain::plan::care_plan::is_phone_number;
/// assert!(is_phone_number("+1 (555) 010-0199"));
/// assert!(!is_phone_number("ring me"));
/// ```
pub fn is_phone_number(text: &str) -> bool {
    let text = text.trim();
    let rest = text.strip_prefix('+').unwrap_or(text);
    let digits = rest.bytes().filter(u8::is_ascii_digit).count();
    let is_plain = rest.bytes().all(|byte| {
        byte.is_ascii_digit() || matches!(byte, b' ' | b'-' | b'(' | b')' | b'.' | b'/')
    });
    is_plain && (3..=20).contains(&digits)
}

#[cfg(test)]
mod tests {
    use crate::domain::plan::care_plan::*;

    #[test]
    fn the_longest_gap_goes_round_the_clock_and_past_midnight() {
        let gap = |hours: &[i32]| {
            let feed = |(slot, hour): (&Slot, &i32)| PlannedFeed {
                slot: *slot,
                time: WallTime::from_minutes(hour * 60),
                volume: Millilitres::whole(60),
            };
            let feeds: Vec<PlannedFeed> = Slot::ALL.iter().zip(hours).map(feed).collect();
            longest_gap_minutes(&feeds)
        };
        // 21:00 to 07:00; 14:00 to midnight
        assert_eq!(gap(&[7, 14, 21]), Some(600));
        assert_eq!(gap(&[7, 14, 0]), Some(600));
        assert_eq!(gap(&[7]), Some(1_440));
        assert_eq!(gap(&[]), None);
    }

    #[test]
    fn a_default_plan_has_no_fault_and_nothing_confirmed() {
        for species in Species::ALL {
            let plan = CarePlan::default_for(species);
            assert_eq!(plan.faults(), [], "{}", species.profile().latin);
            assert_eq!(plan.unconfirmed.len(), PlanField::ALL.len());
        }
    }

    #[test]
    fn a_default_feed_stays_within_a_tenth_of_the_adult_mass() {
        for species in Species::ALL {
            let plan = CarePlan::default_for(species);
            let adult_tenth_g = species.profile().adult.value.tenths();
            assert!(
                plan.feeds
                    .iter()
                    .all(|feed| feed.volume.tenths() <= adult_tenth_g / 10),
                "{species:?}"
            );
        }
    }

    #[test]
    fn each_fault_of_a_plan_is_named() {
        let good = CarePlan::default_for(Species::GreenWingedMacaw);
        let fault = |change: &dyn Fn(&mut CarePlan)| {
            let mut plan = good.clone();
            change(&mut plan);
            plan.faults()
        };
        assert_eq!(
            fault(&|plan| plan.feeds.swap(0, 2)),
            [PlanFault::FeedsOutOfOrder]
        );
        assert_eq!(
            fault(&|plan| plan.feeds[0].time = WallTime::new(15, 0).unwrap()),
            [PlanFault::FeedsOutOfOrder]
        );
        assert_eq!(
            fault(&|plan| plan.feeds[1].slot = Slot::Morning),
            [PlanFault::SlotTwice]
        );
        assert_eq!(
            fault(&|plan| plan.feeds[1].volume = Millilitres::whole(301)),
            [PlanFault::FeedVolume]
        );
        assert_eq!(
            fault(&|plan| plan.serve_to = plan.serve_from),
            [PlanFault::WindowUpsideDown]
        );
        let window = |from, to| {
            fault(&|plan| {
                (plan.serve_from, plan.serve_to) =
                    (Celsius::tenths_held(from), Celsius::tenths_held(to));
            })
        };
        assert_eq!(window(371, 409), []);
        assert_eq!(window(370, 410), []);
        assert_eq!(window(369, 400), [PlanFault::WindowOutside]);
        assert_eq!(window(390, 411), [PlanFault::WindowOutside]);
        let water = |tenths| fault(&|plan| plan.mixing_water = Celsius::tenths_held(tenths));
        assert_eq!([water(499), water(500)], [[], []]);
        assert_eq!(water(501), [PlanFault::WaterTooHot]);
        assert_eq!(
            fault(&|plan| plan.loss_limit = Percent::tenths_held(9)),
            [PlanFault::LossLimit]
        );
        assert_eq!(
            fault(&|plan| plan.loss_limit = Percent::tenths_held(251)),
            [PlanFault::LossLimit]
        );
        assert_eq!(
            fault(&|plan| plan.name = "x".repeat(61)),
            [PlanFault::TextTooLong]
        );
    }

    #[test]
    fn a_window_of_before_is_held_within_37_and_41_degrees() {
        let held = |from, to| {
            let (from, to) = (Celsius::tenths_held(from), Celsius::tenths_held(to));
            let (from, to) = CarePlan::serving_held(from, to);
            (from.tenths(), to.tenths())
        };
        assert_eq!(held(370, 410), (370, 410));
        assert_eq!(held(371, 409), (371, 409));
        assert_eq!(held(369, 411), (370, 410));
        // Nothing of 35 to 37 and of 41 to 43 °C is left.
        assert_eq!(held(350, 370), (390, 405));
        assert_eq!(held(410, 430), (390, 405));
        // Upside down stays so, and is refused as such.
        assert_eq!(held(400, 400), (400, 400));
        assert_eq!(held(400, 390), (400, 390));
    }

    #[test]
    fn letters_in_a_telephone_number_are_refused() {
        for number in [
            "",
            "12",
            "555-CALL",
            "+",
            "1234567890123456789012",
            "tel:123",
        ] {
            assert!(!is_phone_number(number), "{number}");
        }
        assert!(is_phone_number("112"));
    }
}

//! The cards of the first weeks: which there are, when each is for today, and how well founded it is.
//!
//! **Never:** a card is never the only place of a warning; the rules judge without it.

use crate::domain::homecoming::life_stage::{LifeStage, life_stage};
use crate::domain::journal::chick::{Chick, FeedOutcome};
use crate::domain::journal::signs::Sign;
use crate::domain::quantity::evidence::{Cited, Standing};
use crate::domain::quantity::order::sorted_by;
use crate::domain::time::moment::Moment;
use crate::domain::time::zone::Zone;

/// Days after a hot feed within which a burn of the crop can still show. Seen: a case at day 12, and a
/// range of hours to 14 days.
pub const BURN_SHOWS_DAYS: Cited<i32> =
    Cited::new(14, Standing::Published, "Vet Times, 18 Feb 2019");

/// Days for which a refusal or any other sign brings its card. Ours.
const SEEN_DAYS: i32 = 2;

const MINUTES_A_DAY: i64 = 1_440;

/// A card of the first weeks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Card {
    /// Carrier and car.
    Carrier,
    /// The first night.
    FirstNight,
    /// It refuses after the move.
    Refusal,
    /// Weighing.
    Weighing,
    /// The first visit to the vet.
    VetVisit,
    /// Perch, floor and warm spot.
    Perch,
    /// Fumes.
    Air,
    /// The other dangers of a room.
    Room,
    /// Other birds, and the wait apart from them.
    OtherBirds,
    /// Holding and feeding posture.
    Holding,
    /// Which solid foods, how, and for how long.
    Foods,
    /// What is poison.
    Poisons,
    /// Spoon and syringe.
    Tool,
    /// The water dish.
    Water,
    /// Droppings.
    Droppings,
    /// Cleaning beak, chest and tools.
    Cleaning,
    /// The breastbone by touch.
    Keel,
    /// Begging: hunger or company.
    Begging,
    /// Storing the powder.
    Powder,
    /// Looking for a burn of the crop.
    CropBurn,
    /// Food that comes back.
    ReturnedFood,
    /// Flying and wings.
    Flying,
    /// Bath and feathers.
    Bath,
    /// A second carer, a holiday.
    SecondCarer,
    /// The papers that belong to the bird.
    Papers,
    /// The weeks after weaning.
    AfterWeaning,
    /// The powder runs out, or is another brand.
    PowderGone,
    /// The scale or the thermometer fails.
    ToolFails,
    /// The vet prescribed something.
    Prescribed,
}

/// When a card is for today.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shown {
    /// Before the chick is home.
    Coming,
    /// On these days at home, both included; the day of arrival is 0.
    AtHome(i32, i32),
    /// Once it is weaned.
    Weaned,
    /// When something that the card speaks of was noted lately.
    Seen,
}

/// Where a card comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Source {
    /// Breeders' common practice, many pages that agree.
    Breeders,
    /// Client pages of avian clinics and vets.
    VetPages,
    /// Duerr & Gage 2020, a vets' book.
    DuerrGage2020,
    /// Doneley 2018, a vets' congress.
    Doneley2018,
    /// Rivera 2008, articles for vets.
    Rivera2008,
    /// Wissman 2012, a vet's magazine article.
    Wissman2012,
    /// Vet Times, 18 February 2019.
    VetTimes2019,
    /// Kramer 2015, a vets' congress.
    Kramer2015,
    /// Shuster and others 2012, a journal.
    Shuster2012,
    /// Groffen and others 2008, a journal.
    Groffen2008,
    /// Roudybush 1986, a research report.
    Roudybush1986,
    /// Harrison 1994, a vets' book.
    Harrison1994,
    /// Romagnano, a vet's article.
    Romagnano,
    /// Digney 1998 in a teaching manual.
    Digney1998,
    /// Muser 1995, a symposium.
    Muser1995,
    /// Watchbird, a magazine of aviculture.
    Watchbird,
    /// Governments' pages on protected species.
    Governments,
}

/// What is drawn where looking beats reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Picture {
    /// Breast cut across: hollow, flat, round.
    Keel,
    /// Low perch, and the half of the floor that is warm.
    WarmSpot,
    /// Scale with a tared box.
    Scale,
    /// Upright on a table, a hand behind the head.
    Holding,
    /// Where the crop lies, and where a burn shows.
    CropPlaces,
}

impl Card {
    /// Every card: first what is for the first days.
    pub const ALL: [Self; 29] = [
        Self::Carrier,
        Self::FirstNight,
        Self::Refusal,
        Self::Weighing,
        Self::VetVisit,
        Self::Perch,
        Self::Air,
        Self::Room,
        Self::OtherBirds,
        Self::Holding,
        Self::Foods,
        Self::Poisons,
        Self::Tool,
        Self::Water,
        Self::Droppings,
        Self::Cleaning,
        Self::Keel,
        Self::Begging,
        Self::Powder,
        Self::CropBurn,
        Self::ReturnedFood,
        Self::Flying,
        Self::Bath,
        Self::SecondCarer,
        Self::Papers,
        Self::AfterWeaning,
        Self::PowderGone,
        Self::ToolFails,
        Self::Prescribed,
    ];

    /// When it is for today.
    pub const fn shown(self) -> &'static [Shown] {
        match self {
            Self::Carrier => &[Shown::Coming],
            Self::FirstNight => &[Shown::AtHome(0, 1)],
            Self::Refusal => &[Shown::AtHome(0, 0), Shown::Seen],
            Self::Weighing | Self::VetVisit | Self::Prescribed => &[Shown::AtHome(1, 3)],
            Self::Perch => &[Shown::Coming, Shown::AtHome(0, 1)],
            Self::Air => &[Shown::Coming, Shown::AtHome(0, 0)],
            Self::Room | Self::OtherBirds => &[Shown::Coming, Shown::AtHome(1, 2)],
            Self::Holding => &[Shown::AtHome(0, 1), Shown::Seen],
            Self::Foods | Self::Poisons => &[Shown::AtHome(2, 4)],
            Self::Tool | Self::ToolFails => &[Shown::AtHome(3, 5)],
            Self::Water => &[Shown::AtHome(4, 6)],
            Self::Droppings => &[Shown::AtHome(5, 7), Shown::Seen],
            Self::Cleaning => &[Shown::AtHome(6, 8)],
            Self::Keel => &[Shown::AtHome(7, 9)],
            Self::Begging => &[Shown::AtHome(8, 10), Shown::Seen],
            Self::Powder | Self::PowderGone => &[Shown::AtHome(9, 11)],
            Self::CropBurn => &[Shown::AtHome(10, 12), Shown::Seen],
            Self::ReturnedFood => &[Shown::AtHome(11, 13), Shown::Seen],
            Self::Flying => &[Shown::AtHome(12, 14)],
            Self::Bath => &[Shown::AtHome(13, 15)],
            Self::SecondCarer => &[Shown::AtHome(14, 16)],
            Self::Papers => &[Shown::Coming, Shown::AtHome(14, 16)],
            Self::AfterWeaning => &[Shown::Weaned],
        }
    }

    /// How well founded it is: the weakest of what it tells to do.
    pub const fn standing(self) -> Standing {
        match self {
            Self::Carrier
            | Self::FirstNight
            | Self::Refusal
            | Self::Weighing
            | Self::VetVisit
            | Self::Perch
            | Self::OtherBirds
            | Self::Holding
            | Self::Foods
            | Self::Tool
            | Self::Water
            | Self::Droppings
            | Self::Cleaning
            | Self::Keel
            | Self::Begging
            | Self::Powder
            | Self::ReturnedFood
            | Self::Flying
            | Self::Bath
            | Self::Papers
            | Self::AfterWeaning
            | Self::PowderGone
            | Self::Poisons
            | Self::Room => Standing::CommonPractice,
            Self::Air | Self::CropBurn => Standing::Published,
            Self::SecondCarer | Self::ToolFails | Self::Prescribed => Standing::Ours,
        }
    }

    /// Where it comes from.
    pub const fn sources(self) -> &'static [Source] {
        match self {
            Self::Carrier => &[Source::Breeders, Source::Digney1998],
            Self::FirstNight | Self::Room | Self::Bath | Self::AfterWeaning => {
                &[Source::Breeders, Source::VetPages]
            }
            Self::Refusal => &[Source::Breeders, Source::Doneley2018],
            Self::Weighing => &[Source::DuerrGage2020, Source::Breeders],
            Self::VetVisit | Self::Droppings => &[Source::VetPages, Source::Kramer2015],
            Self::Perch => &[
                Source::DuerrGage2020,
                Source::Watchbird,
                Source::VetPages,
                Source::Shuster2012,
            ],
            Self::Air => &[Source::VetPages, Source::Shuster2012],
            Self::OtherBirds => &[Source::VetPages, Source::Muser1995],
            Self::Holding => &[Source::DuerrGage2020, Source::Rivera2008, Source::Breeders],
            Self::Foods => &[Source::Roudybush1986, Source::VetPages, Source::Breeders],
            Self::Poisons => &[Source::VetPages, Source::DuerrGage2020],
            Self::Tool => &[Source::Breeders, Source::DuerrGage2020, Source::VetPages],
            Self::Water | Self::Powder | Self::SecondCarer | Self::PowderGone => {
                &[Source::Breeders]
            }
            Self::ToolFails => &[Source::Breeders, Source::VetPages],
            Self::Prescribed => &[Source::VetPages],
            Self::Cleaning => &[Source::Muser1995, Source::VetPages, Source::Breeders],
            Self::Keel => &[Source::VetPages, Source::Romagnano, Source::Doneley2018],
            Self::Begging => &[
                Source::Harrison1994,
                Source::Doneley2018,
                Source::DuerrGage2020,
                Source::Breeders,
            ],
            Self::CropBurn => &[
                Source::Rivera2008,
                Source::VetTimes2019,
                Source::Wissman2012,
            ],
            Self::ReturnedFood => &[Source::Groffen2008, Source::VetPages, Source::DuerrGage2020],
            Self::Flying => &[Source::DuerrGage2020, Source::Watchbird, Source::Breeders],
            Self::Papers => &[Source::Governments, Source::Breeders],
        }
    }

    /// Its drawing.
    pub const fn picture(self) -> Option<Picture> {
        match self {
            Self::Keel => Some(Picture::Keel),
            Self::Perch => Some(Picture::WarmSpot),
            Self::Weighing => Some(Picture::Scale),
            Self::Holding => Some(Picture::Holding),
            Self::CropBurn => Some(Picture::CropPlaces),
            Self::Carrier
            | Self::FirstNight
            | Self::Refusal
            | Self::VetVisit
            | Self::Air
            | Self::Room
            | Self::OtherBirds
            | Self::Foods
            | Self::Poisons
            | Self::Tool
            | Self::Water
            | Self::Droppings
            | Self::Cleaning
            | Self::Begging
            | Self::Powder
            | Self::ReturnedFood
            | Self::Flying
            | Self::Bath
            | Self::SecondCarer
            | Self::Papers
            | Self::AfterWeaning
            | Self::PowderGone
            | Self::ToolFails
            | Self::Prescribed => None,
        }
    }

    /// The card that tells more of a sign. None beside an emergency in which reading costs time.
    pub const fn of_sign(sign: Sign) -> Option<Self> {
        match sign {
            Sign::BroughtBackOnce | Sign::Vomiting => Some(Self::ReturnedFood),
            Sign::FedTooHot | Sign::CropPatch => Some(Self::CropBurn),
            Sign::BegsAllDay => Some(Self::Begging),
            Sign::ClickCleared => Some(Self::Holding),
            Sign::NoDroppingFourHours
            | Sign::NoDroppingEightHours
            | Sign::BadDroppingsOverADay
            | Sign::UndigestedFood => Some(Self::Droppings),
            Sign::LabouredBreathing
            | Sign::ClickStays
            | Sign::SourCrop
            | Sign::BloodInDroppings
            | Sign::Dull
            | Sign::Limp
            | Sign::Cold
            | Sign::Overheated
            | Sign::StaysOverheated
            | Sign::Dehydrated
            | Sign::WentDownWrong
            | Sign::Lame
            | Sign::SwallowedObject
            | Sign::Bleeding
            | Sign::SeizureOrTrauma
            | Sign::Prolapse
            | Sign::Wobbles
            | Sign::Discharge
            | Sign::MouthPlaques
            | Sign::Shock
            | Sign::Bruised
            | Sign::FeatherBleeds => None,
        }
    }

    /// Minutes for which something noted brings the card.
    fn seen_minutes(self) -> i64 {
        let days = if self == Self::CropBurn {
            BURN_SHOWS_DAYS.value
        } else {
            SEEN_DAYS
        };
        i64::from(days) * MINUTES_A_DAY
    }
}

/// The cards for today, the most wanted first: those of something noted lately, then those whose days
/// began last, in the order of [`Card::ALL`].
pub fn for_today(now: Moment, chick: &Chick, zone: &Zone) -> Vec<Card> {
    let stage = life_stage(now, chick, zone);
    let day = zone
        .lived(now)
        .day
        .since(zone.lived(chick.home_since()).day);
    let wanted: Vec<(i32, Card)> = Card::ALL
        .into_iter()
        .filter_map(|card| {
            let since = card
                .shown()
                .iter()
                .filter_map(|shown| wanted_since(*shown, card, stage, day, now, chick));
            since.max().map(|since| (since, card))
        })
        .collect();
    let wanted = sorted_by(wanted, |(one, _), (other, _)| other.cmp(one));
    wanted.into_iter().map(|(_, card)| card).collect()
}

/// The day at home since which a card is for today; later than any day when it was noted.
fn wanted_since(
    shown: Shown,
    card: Card,
    stage: LifeStage,
    day: i32,
    now: Moment,
    chick: &Chick,
) -> Option<i32> {
    let (is_coming, is_home, is_weaned) = match stage {
        LifeStage::WithBreeder | LifeStage::OnTheWay => (true, false, false),
        LifeStage::SettlingIn | LifeStage::Weaning => (false, true, false),
        LifeStage::Weaned => (false, true, true),
        LifeStage::Grown | LifeStage::Died => (false, false, false),
    };
    match shown {
        Shown::Coming => is_coming.then_some(0),
        Shown::AtHome(from, to) => (is_home && (from..=to).contains(&day)).then_some(from),
        Shown::Weaned => is_weaned.then_some(day),
        Shown::Seen => (is_home && is_seen(card, now, chick)).then_some(i32::MAX),
    }
}

fn is_seen(card: Card, now: Moment, chick: &Chick) -> bool {
    let from = now.plus_minutes(-card.seen_minutes());
    let mut signs = chick.signs_present(from).into_iter();
    let is_sign = signs.any(|sign| sign.at <= now && Card::of_sign(sign.what) == Some(card));
    let mut feeds = chick
        .feeds
        .iter()
        .filter(|feed| (from..=now).contains(&feed.at));
    let is_refused = |outcome: &FeedOutcome| match outcome {
        FeedOutcome::Refused { .. } => true,
        FeedOutcome::Given { .. } | FeedOutcome::PassedOver { .. } => false,
    };
    is_sign || (card == Card::Refusal && feeds.any(|feed| is_refused(&feed.what.outcome)))
}

#[cfg(test)]
mod tests {
    use crate::domain::homecoming::first_weeks::*;
    use crate::domain::journal::entries::{Change, ChickId};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::{CarePlan, ClockShift, Journey, Slot};
    use crate::domain::plan::species::Species;
    use crate::domain::time::moment::{Day, Offset};

    fn home() -> Scenario {
        let plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let day = Day::from_date(2026, 11, 2).unwrap();
        let mut script = Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC);
        script.note(0, 15, 0, Change::Arrived);
        script
    }

    fn cards(script: &Scenario, day: i32) -> Vec<Card> {
        let chick = script.chick().unwrap();
        for_today(script.at(day, 20, 0), &chick, &script.zone())
    }

    #[test]
    fn every_day_of_the_first_two_weeks_has_a_card_and_the_first_night_comes_first() {
        let script = home();
        assert_eq!(cards(&script, 0)[0], Card::FirstNight);
        assert_eq!(cards(&script, 1)[0], Card::Weighing);
        for day in 0..=14 {
            assert!(!cards(&script, day).is_empty(), "day {day}");
        }
        assert!(cards(&script, 17).is_empty());
    }

    #[test]
    fn every_card_has_its_time_and_is_listed_once() {
        let mut all = Card::ALL.to_vec();
        all.sort_unstable();
        all.dedup();
        assert_eq!(all.len(), Card::ALL.len());
        for card in Card::ALL {
            assert!(!card.shown().is_empty(), "{card:?}");
            assert!(!card.sources().is_empty(), "{card:?}");
        }
    }

    #[test]
    fn what_must_be_ready_is_shown_before_it_is_home() {
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        let day = Day::from_date(2026, 11, 2).unwrap();
        let empty = Scenario::new(ChickId([7; 12]), plan.clone(), day, Offset::UTC);
        plan.journey = Some(Journey {
            left: empty.at(1, 9, 0),
            expected: empty.at(1, 15, 0),
            breeder_offset: Offset::UTC,
            shift: ClockShift::AtOnce,
            last_fed: None,
        });
        let script = Scenario::new(ChickId([7; 12]), plan, day, Offset::UTC);
        let coming = cards(&script, 0);
        assert_eq!(coming[0], Card::Carrier);
        for card in [
            Card::Air,
            Card::Room,
            Card::Perch,
            Card::OtherBirds,
            Card::Papers,
        ] {
            assert!(coming.contains(&card), "{card:?}");
        }
        assert!(!coming.contains(&Card::FirstNight));
    }

    #[test]
    fn a_refusal_and_a_sign_bring_their_card_to_the_top_for_two_days() {
        let mut script = home();
        script.note(5, 19, 0, Change::refused(Some(Slot::Evening)));
        assert_eq!(cards(&script, 5)[0], Card::Refusal);
        assert_eq!(cards(&script, 6)[0], Card::Refusal);
        assert!(!cards(&script, 8).contains(&Card::Refusal));
        let sign = Sign::BroughtBackOnce;
        script.note(8, 9, 0, Change::SignSeen { sign });
        assert_eq!(cards(&script, 8)[0], Card::ReturnedFood);
        script.note(8, 10, 0, Change::SignGone { sign });
        assert!(!cards(&script, 8).contains(&Card::ReturnedFood));
    }

    /// The case of the source was seen on day 12; hours to 14 days is its range.
    #[test]
    fn after_a_hot_feed_the_burn_is_looked_for_through_two_weeks() {
        let mut script = home();
        let sign = Sign::FedTooHot;
        script.note(16, 20, 0, Change::SignSeen { sign });
        assert_eq!(cards(&script, 28)[0], Card::CropBurn);
        assert_eq!(cards(&script, 30)[0], Card::CropBurn);
        assert!(!cards(&script, 31).contains(&Card::CropBurn));
    }
}
